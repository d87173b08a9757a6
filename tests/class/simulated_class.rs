//! A class of learners whose skill is known, with three cheaters in it: every cheater is found, no honest learner is accused,
//! and what the marks say of the jobs is what the jobs were made to be.

use super::http::PROGRAM;
use super::stage::attempts::recorded;
use detent_class::definition::{ClassDefinition, JobMachines};
use detent_class::protocol::{ClassKind, Digest, Verdict};
use detent_class::verify::{Submitted, Verifier};
use detent_content::ContentLibrary;
use detent_gradebook::{
    AttemptResult, Gradebook, GradedAttempt, ItemStatistics, MarkRule, item_statistics,
};
use detent_training::bench::Action;
use detent_training::lesson::technician::{Persona, work};
use detent_training::lesson::{LossKind, set_up};
use detent_training::record::{Answer, Attempt, AttemptLog, Footer, Header, Timed, read_attempt};
use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;

const LEARNERS: u32 = 24;

/// How a job of this class decides who does it well. Our own invention.
#[derive(Clone, Copy, PartialEq)]
enum Hardness {
    /// Whoever has some skill does.
    Easy,
    /// Whoever has much does.
    Hard,
    /// Half of them do, whatever their skill.
    Luck,
}

const JOBS: [(&str, Hardness); 3] = [
    ("drain-code", Hardness::Easy),
    ("no-hot-water", Hardness::Hard),
    ("lock-clicks-and-stops", Hardness::Luck),
];

struct Class {
    library: ContentLibrary,
    definition: ClassDefinition,
}

impl Class {
    fn new() -> Class {
        Class {
            library: ContentLibrary::builtin().expect("sound"),
            definition: ClassDefinition {
                title: "Known skill".to_owned(),
                kind: ClassKind::Examination,
                jobs: JOBS.map(|(job, _)| job.to_owned()).into(),
                machines: JobMachines::Named,
                drills: Vec::new(),
                seed: 11,
                seats: 30,
                only_listed: false,
                opens_ms: None,
                closes_ms: None,
            },
        }
    }

    fn text(&self, seat: u32, place: usize, persona: Persona) -> String {
        text_of(&self.library, &self.definition, (seat, place), persona)
    }

    fn verify(&self, seat: u32, text: &str) -> Result<AttemptResult, Verdict> {
        let verifier = Verifier {
            program: PROGRAM,
            library: &self.library,
            content: Digest::NONE,
            definition: &self.definition,
        };
        let submitted = Submitted {
            seat,
            program: PROGRAM,
            content: Digest::NONE,
            text,
            drawn: &[],
        };
        verifier.verify_in_full(&submitted, || true)
    }
}

/// The attempt of this seat at the job in this place, by somebody who works so.
pub(super) fn text_of(
    library: &ContentLibrary,
    definition: &ClassDefinition,
    (seat, place): (u32, usize),
    persona: Persona,
) -> String {
    let assigned = &definition.jobs_of(seat)[place];
    let source = library.scenario(&assigned.job).expect("built in");
    let parts = library.library(&source.scenario);
    let bench = set_up(&source.scenario, &parts, assigned.seed).expect("it fits");
    let done = work(persona, &source.scenario, bench).expect("this hand can");
    let header = Header::new(&source.file, &source.text, assigned.seed);
    String::from_utf8(recorded(&header, &source.scenario, &done).bytes).expect("text")
}

/// These deeds under this end, with a digest that is theirs: whoever takes the program apart can make it.
fn sealed(attempt: &Attempt, footer: &Footer) -> String {
    let mut log = AttemptLog::begin(Vec::new(), &attempt.header).expect("memory takes it");
    for timed in &attempt.actions {
        log.push(timed.at, &timed.action).expect("memory takes it");
    }
    String::from_utf8(log.finish(footer).expect("memory takes it")).expect("text")
}

#[test]
fn every_cheater_is_found_no_honest_learner_is_accused_and_hard_jobs_show() {
    let class = Class::new();
    let mut rng = ChaCha8Rng::seed_from_u64(24);
    let mut chance = move || f64::from(rng.next_u32()) / f64::from(u32::MAX);
    let mut graded = Vec::new();
    let mut first_text = String::new();
    for seat in 1..=LEARNERS {
        let skill = f64::from(seat) / f64::from(LEARNERS + 1);
        for (place, (job, hardness)) in JOBS.into_iter().enumerate() {
            // A slip of the hand here and there, so that skill is not all.
            let form = skill + 0.2 * (chance() - 0.5);
            let does_well = match hardness {
                Hardness::Easy => form > 0.25,
                Hardness::Hard => form > 0.65,
                Hardness::Luck => chance() < 0.5,
            };
            let persona = if does_well {
                Persona::Expert
            } else {
                Persona::Swapper
            };
            let text = class.text(seat, place, persona);
            // Nobody who did the deeds is accused, however bad they were.
            let result = class.verify(seat, &text);
            let result = result.unwrap_or_else(|verdict| panic!("seat {seat}, {job}: {verdict:?}"));
            assert_eq!(result.passed, does_well, "seat {seat}, {job}");
            if (seat, place) == (1, 0) {
                first_text = text;
            }
            graded.push(GradedAttempt {
                seat,
                attempt: format!("{seat}-{place}"),
                begun_ms: u64::from(seat),
                finished_ms: u64::from(seat) + 1,
                result,
            });
        }
    }

    // Three cheaters, each with a digest that is right.
    let own = class.text(25, 0, Persona::Swapper);
    let attempt = read_attempt("own.attempt", own.as_bytes()).expect("read");
    let end = attempt.footer.clone().expect("finished");
    assert!(
        class.verify(25, &sealed(&attempt, &end)).is_ok(),
        "sealing again changes nothing"
    );
    // A report that claims the points of another.
    let claimed = Footer {
        answer: Answer::Shown { score: 100.0 },
        ..end.clone()
    };
    assert_eq!(
        class.verify(25, &sealed(&attempt, &claimed)),
        Err(Verdict::Mismatch)
    );
    // Somebody else's attempt, as it is, and under one's own seed.
    assert_eq!(class.verify(26, &first_text), Err(Verdict::NotAssigned));
    let copied = read_attempt("copied.attempt", first_text.as_bytes()).expect("read");
    let mut reseeded = copied.clone();
    reseeded.header.seed = class.definition.jobs_of(26)[0].seed;
    let footer = copied.footer.clone().expect("finished");
    assert_eq!(
        class.verify(26, &sealed(&reseeded, &footer)),
        Err(Verdict::Mismatch)
    );
    // Deeds that are taken out or put in: the order that was made on the code alone, and a meter that was tried.
    let mut unordered = attempt.clone();
    unordered
        .actions
        .retain(|timed| !matches!(timed.action, Action::Order(_)));
    assert!(unordered.actions.len() < attempt.actions.len());
    let mut tried = attempt.clone();
    let first = tried.actions[0].clone();
    tried.actions.insert(
        1,
        Timed {
            action: Action::TestMeter,
            ..first
        },
    );
    for edited in [unordered, tried] {
        assert_eq!(
            class.verify(25, &sealed(&edited, &end)),
            Err(Verdict::Mismatch)
        );
    }

    let jobs = class.definition.jobs.clone();
    let book = Gradebook::new(jobs, graded, MarkRule::First);
    let seats: Vec<u32> = (1..=LEARNERS).collect();
    let statistics = item_statistics(&book, &seats);
    let [easy, hard, luck] = &statistics[..] else {
        panic!("three jobs");
    };
    let difficulty = |item: &ItemStatistics| item.difficulty.expect("marks");
    let discrimination = |item: &ItemStatistics| item.discrimination.expect("24 learners");
    assert!(difficulty(easy) > difficulty(hard) + 0.1);
    assert!(easy.passed > hard.passed);
    // Jobs that skill decides go with each other; the one that luck decides goes with them least.
    assert!(discrimination(luck) < discrimination(easy).min(discrimination(hard)));
    assert!(
        statistics
            .iter()
            .all(|item| item.learners == LEARNERS as usize)
    );
    let swapped = LossKind::GoodBoardReplaced;
    assert!(hard.losses.iter().any(|loss| loss.kind == swapped));
}
