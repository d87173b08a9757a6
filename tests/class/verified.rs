//! Attempts done again, and attempts that were forged.

use super::definition;
use super::stage::attempts::random_attempt;
use detent_class::definition::{ClassDefinition, JobMachines};
use detent_class::drawing::{DrawnJob, JobDrawing};
use detent_class::protocol::{Digest, UnverifiedReason, Verdict};
use detent_class::verify::{Submitted, Verifier};
use detent_class::watch::Watch;
use detent_content::ContentLibrary;
use detent_training::record::sha256_hex;

const PROGRAM: &str = env!("CARGO_PKG_VERSION");

struct Room {
    library: ContentLibrary,
}

impl Room {
    fn new() -> Room {
        Room {
            library: ContentLibrary::builtin().expect("sound"),
        }
    }

    fn judge(&self, seat: u32, text: &str) -> Verdict {
        self.judge_made_with(seat, (PROGRAM, Digest::NONE), text)
    }

    fn verifier<'a>(&'a self, definition: &'a ClassDefinition) -> Verifier<'a> {
        Verifier {
            program: PROGRAM,
            library: &self.library,
            content: Digest::NONE,
            definition,
        }
    }

    fn judge_made_with(
        &self,
        seat: u32,
        (program, content): (&str, Digest),
        text: &str,
    ) -> Verdict {
        let definition = definition();
        let verifier = self.verifier(&definition);
        verifier.verify(
            &Submitted {
                seat,
                program,
                content,
                text,
                drawn: &[],
            },
            || true,
        )
    }

    /// An attempt of this seat at its own machine; its points.
    fn attempt(&self, seat: u32) -> (String, f64) {
        let scenario_source = self.library.scenario("drain-code").expect("built in");
        let seed = definition().jobs_of(seat)[0].seed;
        let recorded = random_attempt(&self.library, &scenario_source, seed, 12);
        (
            String::from_utf8(recorded.bytes).expect("text"),
            recorded.score,
        )
    }
}

#[test]
fn an_honest_attempt_is_verified_with_its_points_and_no_forged_one_is() {
    let room = Room::new();
    let (text, points) = room.attempt(1);
    let Verdict::Verified {
        points: Some(found),
    } = room.judge(1, &text)
    else {
        panic!("{:?}", room.judge(1, &text));
    };
    assert!((found - points).abs() < 1e-9, "{found} {points}");

    // Somebody else hands it in: it is at another learner's machine.
    assert_eq!(room.judge(2, &text), Verdict::NotAssigned);
    // Each line taken out, put in twice, or changed.
    let lines: Vec<&str> = text.lines().collect();
    for n in 1..lines.len() {
        let without: Vec<&str> = [&lines[..n], &lines[n + 1..]].concat();
        let twice: Vec<&str> = [&lines[..=n], &lines[n..]].concat();
        for changed in [without, twice] {
            let changed = changed.join("\n") + "\n";
            assert_eq!(room.judge(1, &changed), Verdict::Mismatch, "line {n}");
        }
    }
    let end = lines.last().expect("an end");
    let better = end.replacen("score:", "score:1", 1);
    assert_ne!(&better, end);
    assert_eq!(
        room.judge(1, &text.replace(end, &better)),
        Verdict::Mismatch
    );
    // Other version, other content, or what is none.
    let other = Digest::of_parts(&[b"other"]);
    let unverified = Verdict::Unverified;
    assert_eq!(
        room.judge_made_with(1, ("9.9.9", Digest::NONE), &text),
        unverified(UnverifiedReason::OtherProgram)
    );
    assert_eq!(
        room.judge_made_with(1, (PROGRAM, other), &text),
        unverified(UnverifiedReason::OtherContent)
    );
    let newer = text.replacen("format:", "format:9", 1);
    assert_eq!(
        room.judge(1, &newer),
        unverified(UnverifiedReason::OtherProgram)
    );
    for wrong in ["", "\n", "x\n", &text[..text.len() / 2]] {
        assert_eq!(room.judge(1, wrong), Verdict::Mismatch);
    }
}

/// An attempt at an easier scenario that it carries with it is sound, but no job of the class.
#[test]
fn a_scenario_that_comes_with_the_attempt_is_no_job_of_the_class() {
    let room = Room::new();
    let (text, _) = room.attempt(1);
    let source = room.library.scenario("drain-code").expect("built in");
    let carried = format!("scenario_text:Some({:?}),first_visit", source.text);
    let header = text.lines().next().expect("a header");
    assert!(header.contains(&sha256_hex(source.text.as_bytes())));
    let with_text = header.replacen(
        ")",
        &format!(",{})", carried.trim_end_matches(",first_visit")),
        1,
    );
    let forged = text.replacen(header, &with_text, 1);
    // Its digest is that of other lines.
    assert_eq!(room.judge(1, &forged), Verdict::Mismatch);
    // A job of the course that the class does not do.
    let other = room.library.scenario("no-hot-water").expect("built in");
    let recorded = random_attempt(&room.library, &other, definition().jobs_of(1)[0].seed, 3);
    let text = String::from_utf8(recorded.bytes).expect("text");
    assert_eq!(room.judge(1, &text), Verdict::NotAssigned);
}

#[test]
fn doing_it_again_ends_when_it_is_told_to() {
    let room = Room::new();
    let (text, _) = room.attempt(1);
    let definition = definition();
    let verifier = room.verifier(&definition);
    let submitted = Submitted {
        seat: 1,
        program: PROGRAM,
        content: Digest::NONE,
        text: &text,
        drawn: &[],
    };
    assert_eq!(
        verifier.verify(&submitted, || false),
        Verdict::Unverified(UnverifiedReason::TooLong)
    );
}

/// What is watched line by line comes to the same as what is watched at once.
#[test]
fn an_attempt_is_watched_as_it_comes_in() {
    let room = Room::new();
    let (text, _) = room.attempt(1);
    let definition = definition();
    let verifier = room.verifier(&definition);
    let (mut by_line, mut at_once) = (Watch::default(), Watch::default());
    let mut so_far = String::new();
    for line in text.lines() {
        so_far.push_str(line);
        so_far.push('\n');
        by_line.follow(&verifier, &[], &so_far);
    }
    at_once.follow(&verifier, &[], &text);
    assert_eq!(by_line.watched(), at_once.watched());
    let watched = at_once.watched();
    assert_eq!(watched.job.as_deref(), Some("drain-code"));
    assert_eq!(watched.deeds as usize, text.lines().count() - 2);
    assert!(watched.machine_s > 0);
    // Nonsense is nothing to follow, and no reason to stop.
    let mut blind = Watch::default();
    blind.follow(&verifier, &[], "nonsense\n");
    assert_eq!(blind.watched().deeds, 0);
}

/// In an examination only the seat's own sealed machine counts; the same job out of the library is none of the class's.
#[test]
fn a_sealed_job_counts_at_the_machine_that_was_drawn_for_the_seat() {
    let room = Room::new();
    let definition = ClassDefinition {
        machines: JobMachines::SealedVariants,
        ..definition()
    };
    let mut drawing = JobDrawing::new(&room.library, &definition, []);
    let drawn: Vec<DrawnJob> = (1..=2)
        .map(|seat| {
            let drawn = drawing.draw(0, seat, || true).expect("nothing is wrong");
            drawn.expect("there is such a job")
        })
        .collect();
    let at = |drawn: &DrawnJob, seed: u64| {
        let source =
            (room.library).scenario_source("job-1.ron".to_owned(), drawn.text.clone().into());
        let recorded = random_attempt(&room.library, &source.expect("sound"), seed, 6);
        (
            String::from_utf8(recorded.bytes).expect("text"),
            recorded.score,
        )
    };
    let judge = |seat: u32, text: &str| {
        let submitted = Submitted {
            seat,
            program: PROGRAM,
            content: Digest::NONE,
            text,
            drawn: &drawn[seat as usize - 1..seat as usize],
        };
        room.verifier(&definition).verify(&submitted, || true)
    };
    let (text, points) = at(&drawn[0], drawn[0].seed);
    let Verdict::Verified {
        points: Some(found),
    } = judge(1, &text)
    else {
        panic!("{:?}", judge(1, &text));
    };
    assert!((found - points).abs() < 1e-9, "{found} {points}");
    // Nothing in it tells the fault: not even by a digest of something that everybody has.
    let original = room.library.scenario("drain-code").expect("built in");
    assert!(!text.contains(&sha256_hex(original.text.as_bytes())));
    assert!(!text.contains("fault") && !text.contains("drain-code"));
    // The neighbor's scenario is not this seat's, nor is another seed; nor is the library's own job.
    assert_eq!(judge(2, &text), Verdict::Mismatch);
    let (other_seed, _) = at(&drawn[0], drawn[0].seed ^ 1);
    assert_eq!(judge(1, &other_seed), Verdict::NotAssigned);
    let own_seed = definition.jobs_of(1)[0].seed;
    let recorded = random_attempt(&room.library, &original, own_seed, 3);
    let named = String::from_utf8(recorded.bytes).expect("text");
    assert_eq!(judge(1, &named), Verdict::NotAssigned);
    // It is watched as any other.
    let mut watch = Watch::default();
    watch.follow(&room.verifier(&definition), &drawn[..1], &text);
    assert_eq!(watch.watched().job.as_deref(), Some("job-1"));
    assert!(watch.watched().machine_s > 0);
}
