//! Rounds of drills marked again, and rounds that were forged.

use super::{begin, definition, join};
use detent_class::definition::ClassDefinition;
use detent_class::moment::Moment as ServerMoment;
use detent_class::protocol::{
    AttemptId, ClassDrill, ClassKind, Digest, Segment, UnverifiedReason, Verdict,
};
use detent_class::verify::{Submitted, Verifier};
use detent_class::watch::{Watch, WatchedDrill};
use detent_content::ContentLibrary;
use detent_simulation::units::{Span, Time};
use detent_training::bench::script::{ScriptStep, entry_steps};
use detent_training::practice::drill::{
    Given, QuestionSource, RoundMarker, Task, lamps, look_up, meter, next_test, part, proof,
};
use detent_training::practice::{Moment, PlannedDrill, Skill};
use detent_training::record::{DrillAnswer, DrillHeader, DrillText, Timed};
use detent_training::without_breaks;

const PROGRAM: &str = env!("CARGO_PKG_VERSION");
/// Questions of each drill of the class.
const QUESTIONS: u32 = 3;

/// The class of these tests: every drill, and one job.
pub fn class_of_drills(kind: ClassKind) -> ClassDefinition {
    let drills = Skill::ALL.iter().map(|skill| PlannedDrill {
        skill: *skill,
        questions: QUESTIONS,
    });
    ClassDefinition {
        kind,
        drills: drills.collect(),
        ..definition()
    }
}

/// The drill of this skill that a seat has.
fn drill_of(class: &ClassDefinition, seat: u32, skill: Skill) -> ClassDrill {
    let mut drills = class.drills_of(seat).into_iter();
    let found = drills.find(|drill| drill.drill == skill.name());
    found.expect("it is one of the class")
}

/// An answer to this question, right or not as far as that can be chosen: a hand on a worn dial has luck.
fn answer_to(source: &dyn QuestionSource, task: &Task, right: bool) -> Given {
    let other = |should: usize, choices: usize| match right {
        true => Given::Choice(should),
        false => Given::Choice((should + 1) % choices),
    };
    match task {
        Task::Lamps(task) => {
            let shown = lamps::mark(task, 0).shown;
            Given::Number(if right { shown } else { (shown + 1) % 100 })
        }
        Task::Meter(task) => {
            let should = meter::solve(task);
            Given::Meter(meter::Given {
                within: should.within == right,
                ..should
            })
        }
        Task::LookUp(task) => {
            let should = look_up::mark(task, &[]).missed;
            let wrong = task.options.iter().find(|one| !should.contains(one));
            Given::Components(match right {
                true => should,
                false => wrong.copied().into_iter().collect(),
            })
        }
        Task::NextTest(task) => other(next_test::mark(task, 0).should, task.options.len()),
        Task::Part(task) => other(part::mark(task, 0).should, task.options.len()),
        Task::Proof(task) => other(proof::mark(task, 0).should, task.choices()),
        Task::SafeWork(task) => {
            let mut places = task.solve();
            if !right {
                places.reverse();
                if let [place] = &mut places[..] {
                    *place = (*place + 1) % task.choices();
                }
            }
            Given::Places(places)
        }
        Task::Entry(task) => {
            let mut boards = source.supplied_boards().iter();
            let board = boards.find(|board| board.place() == task.place);
            let mut bench = task.bench(board.expect("it is there"));
            let steps = entry_steps(&task.gesture);
            let steps = steps.iter().filter(|step| **step != ScriptStep::PowerDown);
            let steps: Vec<&ScriptStep> = steps.collect();
            // Half of it, and then nothing: the control gives up waiting.
            let count = if right { steps.len() } else { steps.len() / 2 };
            for step in &steps[..count] {
                step.run(&mut bench).expect("it can be done");
            }
            if !right {
                for button in detent_training::practice::drill::entry::buttons(&task.gesture) {
                    let _ = bench.act(&detent_training::bench::Action::Up(button));
                }
                bench.wait(Span::from_ms(u64::from(task.gesture.within_ms) + 4_000));
            }
            let deeds = bench.history().iter().map(|(at, action)| Timed {
                at,
                action: action.clone(),
            });
            Given::hand(deeds.collect(), bench.now())
        }
    }
}

/// A round of this drill, of which every second answer is meant to be wrong; its text and what is right in it.
pub fn round(library: &ContentLibrary, drill: &ClassDrill, number: u64) -> (String, usize) {
    let skill: Skill = drill.drill.parse().expect("a skill");
    let (questions, seed) = (drill.questions as usize, drill.seed + number);
    let header = DrillHeader::new(skill, questions, seed);
    let mut text = DrillText::begin(&header).expect("words");
    let source = library.drill_source();
    let mut marker = RoundMarker::begin(skill, questions, seed);
    for n in 0..drill.questions {
        let task = marker.next_task(&source).expect("a question");
        let given = answer_to(&source, &task, n % 2 == 0);
        let done = without_breaks(marker.mark_in_slices(&source, &given, 1.5));
        let done = done.unwrap_or_else(|| panic!("{skill}: {given:?} is no answer to {task:?}"));
        if skill != Skill::EntryTiming {
            assert_eq!(done.right, n % 2 == 0, "{skill}: {given:?} to {task:?}");
        }
        let answer = DrillAnswer {
            at: Moment(1_790_000_000 + i64::from(n)),
            took_ms: 1_500,
            given,
        };
        text.push(&answer).expect("words");
    }
    let right = marker.round().right();
    text.end(right).expect("words");
    (text.text().to_owned(), right)
}

fn judge(library: &ContentLibrary, class: &ClassDefinition, seat: u32, text: &str) -> Verdict {
    judge_while(library, class, seat, (PROGRAM, Digest::NONE), text, true)
}

fn judge_while(
    library: &ContentLibrary,
    class: &ClassDefinition,
    seat: u32,
    (program, content): (&str, Digest),
    text: &str,
    go_on: bool,
) -> Verdict {
    let verifier = Verifier {
        program: PROGRAM,
        library,
        content: Digest::NONE,
        definition: class,
    };
    let submitted = Submitted {
        seat,
        program,
        content,
        text,
        drawn: &[],
    };
    verifier.verify(&submitted, || go_on)
}

/// A text with its end made anew for these lines, as somebody does who has taken the program apart.
fn sealed_anew(lines: &[&str], right: usize) -> String {
    let lines: String = lines.iter().map(|line| format!("{line}\n")).collect();
    let mut text = DrillText::go_on(&lines);
    text.end(right).expect("words");
    text.text().to_owned()
}

#[test]
fn an_honest_round_of_every_drill_is_verified_and_no_forged_one_is() {
    let library = ContentLibrary::builtin().expect("sound");
    let class = class_of_drills(ClassKind::Practice);
    for skill in Skill::ALL.iter().copied() {
        let drill = drill_of(&class, 1, skill);
        let (text, right) = round(&library, &drill, 0);
        let points = 100.0 * right as f64 / f64::from(QUESTIONS);
        let verified = Verdict::Verified {
            points: Some(points),
        };
        assert_eq!(judge(&library, &class, 1, &text), verified, "{skill}");
        // Somebody else hands it in.
        let of_another = judge(&library, &class, 2, &text);
        assert_eq!(of_another, Verdict::NotAssigned, "{skill}");
        // Each line taken out, put in twice, or told of another question.
        let lines: Vec<&str> = text.lines().collect();
        let (end, answers) = lines.split_last().expect("an end");
        for n in 0..lines.len() {
            let without = [&lines[..n], &lines[n + 1..]].concat().join("\n") + "\n";
            let twice = [&lines[..=n], &lines[n..]].concat().join("\n") + "\n";
            for changed in [without, twice] {
                let found = judge(&library, &class, 1, &changed);
                assert_eq!(found, Verdict::Mismatch, "{skill}, line {n}");
            }
        }
        // More right answers than there are; with a digest of its own, too.
        let claimed = right + 1;
        for forged in [
            text.replacen(&format!("right:{right}"), &format!("right:{claimed}"), 1),
            sealed_anew(answers, claimed),
        ] {
            assert_ne!(forged, text);
            assert_eq!(
                judge(&library, &class, 1, &forged),
                Verdict::Mismatch,
                "{skill}"
            );
        }
        assert_eq!(sealed_anew(answers, right), text, "the end is {end}");
        // Answers of another kind, or to a choice that is not there.
        for nonsense in [
            "given:Choice(99)",
            "given:Places([0,0])",
            "given:Number(255)",
        ] {
            let from = answers[1].find("given:").expect("an answer");
            let line = format!("{}{nonsense})", &answers[1][..from]);
            let forged = [&answers[..1], &[line.as_str()], &answers[2..]].concat();
            let found = judge(&library, &class, 1, &sealed_anew(&forged, right));
            assert_eq!(found, Verdict::Mismatch, "{skill}: {nonsense}");
        }
        // The same answers to other questions: another seed, sealed anew.
        let header = answers[0].replacen(
            &format!("seed:{}", drill.seed),
            &format!("seed:{}", drill.seed ^ (1 << 40)),
            1,
        );
        let forged = [&[header.as_str()], &answers[1..]].concat();
        let found = judge(&library, &class, 1, &sealed_anew(&forged, right));
        assert!(
            matches!(found, Verdict::Mismatch | Verdict::NotAssigned),
            "{skill}: {found:?}"
        );
    }
}

#[test]
fn another_round_is_for_practice_alone() {
    let library = ContentLibrary::builtin().expect("sound");
    for (kind, verdict) in [
        (ClassKind::Practice, None),
        (ClassKind::Examination, Some(Verdict::NotAssigned)),
    ] {
        let class = class_of_drills(kind);
        let drill = drill_of(&class, 1, Skill::CodeLookUp);
        let (text, right) = round(&library, &drill, 1);
        let points = Some(100.0 * right as f64 / f64::from(QUESTIONS));
        let expected = verdict.unwrap_or(Verdict::Verified { points });
        assert_eq!(judge(&library, &class, 1, &text), expected);
    }
    // Without the drill it is none of the class.
    let drill = drill_of(&class_of_drills(ClassKind::Practice), 1, Skill::CodeLookUp);
    let (text, _) = round(&library, &drill, 0);
    assert_eq!(
        judge(&library, &definition(), 1, &text),
        Verdict::NotAssigned
    );
}

#[test]
fn what_cannot_be_marked_again_is_never_a_zero() {
    let library = ContentLibrary::builtin().expect("sound");
    let class = class_of_drills(ClassKind::Practice);
    let (text, _) = round(&library, &drill_of(&class, 1, Skill::Metering), 0);
    let other = Digest::of_parts(&[b"other"]);
    let newer = text.replacen("format:", "format:9", 1);
    for (made_with, text, go_on, reason) in [
        (
            ("9.9.9", Digest::NONE),
            &text,
            true,
            UnverifiedReason::OtherProgram,
        ),
        (
            (PROGRAM, other),
            &text,
            true,
            UnverifiedReason::OtherContent,
        ),
        (
            (PROGRAM, Digest::NONE),
            &newer,
            true,
            UnverifiedReason::OtherProgram,
        ),
        (
            (PROGRAM, Digest::NONE),
            &text,
            false,
            UnverifiedReason::TooLong,
        ),
    ] {
        let found = judge_while(&library, &class, 1, made_with, text, go_on);
        assert_eq!(found, Verdict::Unverified(reason));
    }
    // A hand that is said to have turned for a year.
    let (text, right) = round(&library, &drill_of(&class, 1, Skill::EntryTiming), 0);
    let lines: Vec<&str> = text.lines().collect();
    let from = lines[1].find("given:").expect("an answer");
    let until = Time(Span::from_s(365 * 24 * 60 * 60).0).0;
    let line = format!("{}given:Hand(deeds:[],until:{until}))", &lines[1][..from]);
    let forged = [&lines[..1], &[line.as_str()], &lines[2..lines.len() - 1]].concat();
    let found = judge(&library, &class, 1, &sealed_anew(&forged, right));
    assert_eq!(found, Verdict::Mismatch);
}

/// What is watched line by line comes to the same as what is watched at once, and as what was right.
#[test]
fn a_round_is_watched_as_it_comes_in() {
    let library = ContentLibrary::builtin().expect("sound");
    let class = class_of_drills(ClassKind::Practice);
    let (text, right) = round(&library, &drill_of(&class, 1, Skill::PartChoice), 0);
    let verifier = Verifier {
        program: PROGRAM,
        library: &library,
        content: Digest::NONE,
        definition: &class,
    };
    let (mut by_line, mut at_once) = (Watch::default(), Watch::default());
    let (mut so_far, mut told) = (String::new(), Vec::new());
    for line in text.lines() {
        so_far.push_str(line);
        so_far.push('\n');
        by_line.follow(&verifier, &[], &so_far);
        let drill = by_line.watched().drill.expect("a round");
        told.push((drill.done, drill.right));
    }
    assert_eq!(
        told,
        [
            (0, Some(0)),
            (1, Some(1)),
            (2, Some(1)),
            (3, Some(2)),
            (3, Some(2))
        ]
    );
    at_once.follow(&verifier, &[], &text);
    assert_eq!(by_line.watched(), at_once.watched());
    let whole = WatchedDrill {
        skill: Skill::PartChoice,
        questions: QUESTIONS as usize,
        done: QUESTIONS as usize,
        right: Some(right),
    };
    assert_eq!(at_once.watched().drill, Some(whole));
    // An answer that is none is counted, and nothing behind it is marked.
    let mut blind = Watch::default();
    let nonsense = text.replacen("Choice(", "Number(", 1);
    blind.follow(&verifier, &[], &nonsense);
    let drill = blind.watched().drill.expect("a round");
    assert_eq!((drill.done, drill.right), (QUESTIONS as usize, None));
}

/// A verified round keeps its verdict alone; it is not marked again each time the class is started.
#[test]
fn a_verified_round_is_not_marked_again() {
    let folder = tempfile::tempdir().expect("a folder");
    let disk = begin(&folder.path().join("class.sqlite"));
    let seat = join(&disk, "Ann", 1);
    let class = class_of_drills(ClassKind::Practice);
    let library = ContentLibrary::builtin().expect("sound");
    let (text, _) = round(&library, &drill_of(&class, seat, Skill::LampReading), 0);
    let made_with = (PROGRAM, Digest::NONE);
    let id = AttemptId::of_bytes([1; 16]);
    for segment in Segment::cut(id, (0, Digest::NONE), made_with, &text) {
        disk.store()
            .append(seat, &segment, ServerMoment(2))
            .expect("kept");
    }
    let to_verify = |program: &str| disk.store().to_verify(program, Digest::NONE).expect("read");
    assert_eq!(to_verify(PROGRAM), [id]);
    let verdict = Verdict::Verified {
        points: Some(100.0),
    };
    let judged = (disk.store()).judge(id, made_with, &verdict, ServerMoment(3));
    assert!(judged.expect("kept"));
    assert_eq!(to_verify(PROGRAM), []);
    assert_eq!(to_verify("9.9.9"), [id], "another program looks again");
}
