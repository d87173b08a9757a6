//! The way into a class, the class on the start screen, and what stands in the place of a score.

use super::*;
use crate::class::driver::{Answer, JoinProblem, SendState};
use crate::class::shown::{ShownClass, demo_view, with_drills};
use detent_class_protocol::{
    ClassKind, ClassView, Digest, JoinRefusal, JoinRequest, PROTOCOL_VERSION, Standing,
};
use std::cell::RefCell;
use std::collections::BTreeSet;
use std::rc::Rc;

type Class = Rc<RefCell<ClassRes>>;

fn class(shown: ShownClass) -> Class {
    Rc::new(RefCell::new(ClassRes::shown(shown)))
}

fn way_in(language: Language, class: &Class) -> Harness<'static, Fixture> {
    let class = Rc::clone(class);
    harness(fixture(language), move |ui, context| {
        class::join_ui(ui, context, &mut class.borrow_mut());
    })
}

fn start_screen(language: Language, class: &Class) -> Harness<'static, Fixture> {
    let class = Rc::clone(class);
    let jobs = LibraryJobs::new(None, None).expect("the built-in jobs are sound");
    harness_of([470.0, 3000.0], fixture(language), move |ui, context| {
        let class = &mut class.borrow_mut();
        start::start_ui(ui, context, &mut LearnerRes::default(), (&jobs, class));
    })
}

/// The server of this class answers so to the next question.
fn answer(class: &Class, answer: Answer) {
    let mut class = class.borrow_mut();
    let driver = &mut class.link.as_mut().expect("a class").driver;
    let now = Duration::ZERO;
    assert!(
        driver.next(now, &mut |_| None).is_some(),
        "something is asked"
    );
    driver.answered(now, Ok(answer), (0.0, true));
}

fn ask_for_seat(class: &Class) {
    let request = JoinRequest {
        protocol: PROTOCOL_VERSION,
        code: "ACDEFG".to_owned(),
        name: "Rosa".to_owned(),
        word: None,
    };
    let mut class = class.borrow_mut();
    let link = class.link.as_mut().expect("a class");
    link.driver.join(request, Duration::ZERO);
}

#[test]
fn each_refusal_of_a_seat_has_a_sentence_of_its_own() {
    let refusals = [
        JoinRefusal::Protocol { server: 9 },
        JoinRefusal::WrongCode,
        JoinRefusal::TooManyTries { wait_s: 40 },
        JoinRefusal::Name,
        JoinRefusal::NotOnList,
        JoinRefusal::NameTaken,
        JoinRefusal::WrongWord,
        JoinRefusal::Full,
        JoinRefusal::Closed,
    ];
    let keys = [
        "join-refused-protocol",
        "join-refused-code",
        "join-refused-tries",
        "join-refused-name",
        "join-refused-not-on-list",
        "join-refused-taken",
        "join-refused-word",
        "join-refused-full",
        "join-refused-closed",
    ];
    let mut told = BTreeSet::new();
    for language in Language::ALL {
        for (refusal, key) in refusals.iter().zip(keys) {
            let class = class(ShownClass::Join);
            ask_for_seat(&class);
            answer(&class, Answer::Refused(refusal.clone()));
            let harness = way_in(language, &class);
            let seconds = [("seconds", Value::from(40))];
            let sentence = harness.state().texts.with(key, &seconds);
            harness.get_by_label(&sentence);
            assert!(told.insert(sentence), "{refusal:?}");
        }
    }
}

#[test]
fn what_cannot_be_a_code_or_a_name_is_not_asked_with() {
    for language in Language::ALL {
        let class = class(ShownClass::Join);
        let mut harness = way_in(language, &class);
        let text = |harness: &Harness<'_, Fixture>, key: &str| harness.state().texts.get(key);
        for (code, name, told) in [
            ("", "Rosa", Some("join-mistake-code")),
            ("ACDEF0", "Rosa", Some("join-mistake-code")),
            ("acd efg", " 12 ", Some("join-refused-name")),
            ("acd efg", "Rosa", None),
        ] {
            {
                let desk = &mut class.borrow_mut().desk;
                (desk.code, desk.name) = (code.to_owned(), name.to_owned());
            }
            harness.get_by_label(&text(&harness, "join-go")).click();
            harness.run_steps(3);
            if let Some(told) = told {
                harness.get_by_label(&text(&harness, told));
            }
            let class = class.borrow();
            let joining = class
                .link
                .as_ref()
                .is_some_and(|link| link.driver.is_joining());
            assert_eq!(joining, told.is_none(), "{code} {name}");
        }
        harness.get_by_label(&text(&harness, "join-asking"));
    }
}

#[test]
fn whoever_goes_on_without_a_class_can_join_it_later() {
    let class = class(ShownClass::Join);
    let mut harness = way_in(Language::En, &class);
    assert!(class.borrow().wants_seat());
    harness.get_by_label("Go on without a class").click();
    harness.run_steps(2);
    assert!(!class.borrow().wants_seat());
    let mut harness = start_screen(Language::En, &class);
    harness.get_by_label("Begin the job");
    harness.get_by_label("Join the class").click();
    harness.run_steps(2);
    assert!(class.borrow().wants_seat());
}

#[test]
fn the_class_comes_first_on_the_start_screen_and_its_jobs_have_their_own_machines() {
    for language in Language::ALL {
        let class = class(ShownClass::Seat(ClassKind::Practice));
        let mut harness = start_screen(language, &class);
        let view = demo_view(ClassKind::Practice);
        let texts = Texts::load(language);
        let with =
            |key: &str, name: &str, value: &str| texts.with(key, &[(name, Value::from(value))]);
        let time = texts.with("seat-time-minutes", &[("minutes", Value::from(42))]);
        let points = [("points", Value::from(82.0))];
        for shown in [
            view.title.clone(),
            with("seat-you", "name", &view.name),
            with("seat-open-left", "time", &time),
            with("seat-notice", "text", &view.notices[0].text),
            texts.with("seat-job-verified-points", &points),
            texts.get("seat-job-missing"),
            texts.get("seat-sent"),
            texts.get("start-begin"),
        ] {
            let below = harness.get_by_label(&shown).rect().top();
            let first = harness.get_by_label(&view.title).rect().top();
            assert!(below >= first, "{shown}");
        }
        harness.get_by_label(&texts.get("seat-notice-read")).click();
        harness.run_steps(2);
        let notice = with("seat-notice", "text", &view.notices[0].text);
        assert!(harness.query_by_label(&notice).is_none(), "it was put away");
        let begin = texts.get("seat-job-begin");
        let begins = harness.get_all_by_label(&begin).next();
        begins.expect("a job that is not begun").click();
        harness.run_steps(2);
        let ui_state = &harness.state().ui_state;
        assert!(ui_state.opening.is_some());
        assert_eq!(ui_state.opening_class_job.as_ref(), Some(&view.jobs[1].job));
    }
}

#[test]
fn while_an_examination_is_open_nothing_else_is_on_offer() {
    for language in Language::ALL {
        let texts = Texts::load(language);
        let class = class(ShownClass::Seat(ClassKind::Examination));
        let harness = start_screen(language, &class);
        harness.get_by_label(&texts.get("seat-examination-only"));
        harness.get_by_label(&texts.get("seat-job-verified"));
        for key in ["start-begin", "start-practice", "seat-job-again"] {
            assert!(harness.query_by_label(&texts.get(key)).is_none(), "{key}");
        }
        let closed = ClassView {
            standing: Standing::Closed,
            ..demo_view(ClassKind::Examination)
        };
        answer(&class, Answer::Seat(Box::new(closed)));
        let harness = start_screen(language, &class);
        harness.get_by_label(&texts.get("seat-closed"));
        harness.get_by_label(&texts.get("start-begin"));
        let begin = texts.get("seat-job-begin");
        assert!(harness.query_by_label(&begin).is_none(), "it is over");
    }
}

#[test]
fn other_content_is_told_before_a_job_is_begun() {
    let class = class(ShownClass::Seat(ClassKind::Practice));
    let texts = Texts::load(Language::En);
    let differs = texts.get("seat-content-differs");
    let harness = start_screen(Language::En, &class);
    assert!(harness.query_by_label(&differs).is_none());
    let view = ClassView {
        content: Digest::of_parts(&[b"other"]),
        ..demo_view(ClassKind::Practice)
    };
    answer(&class, Answer::Seat(Box::new(view)));
    let harness = start_screen(Language::En, &class);
    harness.get_by_label(&differs);
    let begin = texts.get("seat-job-begin");
    assert!(
        harness.query_all_by_label(&begin).count() > 0,
        "it is not refused"
    );
}

#[test]
fn a_seat_is_left_after_a_question() {
    let class = class(ShownClass::Seat(ClassKind::Practice));
    let mut harness = start_screen(Language::En, &class);
    for (label, joined) in [("Leave this seat", true), ("Leave it", false)] {
        harness.get_by_label(label).click();
        harness.run_steps(3);
        assert_eq!(class.borrow().joined().is_some(), joined);
    }
    let class = class.borrow();
    let link = class.link.as_ref().expect("a class");
    assert_eq!(link.driver.problem(), None::<&JoinProblem>);
    assert_eq!(link.driver.send_state(), SendState::Sent);
}

#[test]
fn what_a_job_is_worth_is_not_shown_before_the_class_is_closed() {
    for language in Language::ALL {
        let mut fixture = fixture(language);
        let given_up = ScriptStep::Do(Action::Report(Report::given_up()));
        fixture.bench.run(&given_up).expect("a job can be given up");
        fixture.ui_state.sealed = true;
        let harness = harness(fixture, score::score_ui);
        let texts = &harness.state().texts;
        harness.get_by_label(&texts.get("seat-sealed-handed-in"));
        for key in ["coach", "invoice", "tries"] {
            assert!(harness.query_by_label(&texts.get(key)).is_none(), "{key}");
        }
    }
}

#[test]
fn drills_stand_beside_the_jobs_with_what_came_of_them() {
    for language in Language::ALL {
        let texts = Texts::load(language);
        let class = class(ShownClass::Drills);
        let mut harness = start_screen(language, &class);
        let named = |skill: &str| {
            let skill = texts.get(&format!("skill-{skill}"));
            texts.with("seat-drill", &[("skill", Value::from(skill))])
        };
        harness.get_by_label(&named("lamp-reading"));
        harness.get_by_label(&named("safe-work"));
        let args = [("right", Value::from(8)), ("questions", Value::from(10))];
        harness.get_by_label(&texts.with("seat-drill-verified-right", &args));
        // The one that this program has, and the one that it has not.
        let not_begun = texts.with("seat-drill-not-begun", &args[1..]);
        assert_eq!(harness.query_all_by_label(&not_begun).count(), 2);
        harness.get_by_label(&texts.get("seat-drill-missing"));
        // Jobs come first: of those that can be begun, the last is the drill.
        let begin = texts.get("seat-job-begin");
        let last = harness.query_all_by_label(&begin).last();
        last.expect("a drill to begin").click();
        harness.run_steps(3);
        let asked = class
            .borrow_mut()
            .to_begin
            .take()
            .expect("it was asked for");
        assert_eq!((asked.drill.as_str(), asked.questions), ("safe-work", 10));
    }
}

#[test]
fn in_an_examination_a_drill_has_one_round_and_no_score() {
    let texts = Texts::load(Language::En);
    let class = class(ShownClass::Seat(ClassKind::Examination));
    let view = with_drills(demo_view(ClassKind::Examination));
    answer(&class, Answer::Seat(Box::new(view)));
    let harness = start_screen(Language::En, &class);
    let again = texts.get("seat-job-again");
    assert!(harness.query_by_label(&again).is_none());
    let verified = texts.get("seat-job-verified");
    assert!(harness.query_all_by_label(&verified).count() >= 1);
    let right = harness.query_all_by_label_contains("8 of 10").count();
    assert_eq!(right, 0, "it is told what was right");
}
