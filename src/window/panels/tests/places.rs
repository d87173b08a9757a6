//! Nothing moves under the pointer: every list, row and button keeps its place and width whatever its state.

use super::*;
use detent_simulation::interface::WaterPipe;
use egui::Rect;

/// As wide as the page of a tab.
const PAGE: f32 = 412.0 - 20.0;

/// Does it at once.
fn done(harness: &mut Harness<'_, Fixture>, action: Action) {
    do_now(&mut harness.state_mut().bench, action);
    harness.run_steps(3);
}

/// Where these texts stand, whatever they stand on.
fn places(harness: &Harness<'_, Fixture>, labels: &[String]) -> Vec<(String, Rect)> {
    let place = |label: &String| {
        let mut found = harness.query_all_by_label(label);
        let first = found
            .next()
            .unwrap_or_else(|| panic!("{label} is not there"));
        (label.clone(), first.rect())
    };
    labels.iter().map(place).collect()
}

fn texts(harness: &Harness<'_, Fixture>, keys: &[&str]) -> Vec<String> {
    let texts = &harness.state().texts;
    keys.iter().map(|key| texts.get(key)).collect()
}

/// A job of the library at which everything may be done.
fn job(language: Language) -> Fixture {
    let jobs = LibraryJobs::new(None, None).expect("the built-in jobs are sound");
    let mut fixture = fixture_of(BenchRes::new(open(&jobs, 0, 101)), language);
    for action in [Action::Unplug, Action::OpenCabinet] {
        do_now(&mut fixture.bench, action);
    }
    fixture
}

#[test]
fn rows_of_the_meter_page_keep_their_places() {
    for language in Language::ALL {
        let mut harness = harness_of([PAGE, 2400.0], job(language), meter::meter_ui);
        let keys = [
            "do-measure",
            "do-lift",
            "do-meter-fuse",
            "do-test-meter",
            "do-leads",
            "note-code-do",
            "notebook",
            "look",
        ];
        let labels = texts(&harness, &keys);
        let before = places(&harness, &labels);
        let probe = |red, black| Action::Probe {
            mode: MeterMode::VoltsDc,
            red,
            black,
            grip: Grip::Clips,
        };
        let mut actions = vec![Action::TestMeter, probe(Pin::BulkPlus, Pin::BulkMinus)];
        actions.extend([Action::HoldDisplay, Action::ReleaseDisplay]);
        actions.extend((0..5).map(|_| probe(Pin::FuseIn, Pin::BulkMinus)));
        actions.extend((11..19).map(Action::NoteCode));
        actions.push(Action::LiftProbes);
        actions.push(Action::Inspect(Part::DrainPump));
        for action in actions {
            done(&mut harness, action.clone());
            assert_eq!(places(&harness, &labels), before, "{action:?}");
        }
    }
}

#[test]
fn what_hands_do_with_a_part_keeps_its_place() {
    for language in Language::ALL {
        let mut harness = harness_of([PAGE, 3000.0], job(language), look::look_ui);
        let look = harness.state().texts.get("look");
        harness.get_by_label(&look).click();
        harness.run_steps(6);
        let buttons = |harness: &Harness<'_, Fixture>| -> Vec<Rect> {
            let buttons = harness.get_all_by_role(Role::Button);
            buttons.map(|button| button.rect()).collect()
        };
        let before = buttons(&harness);
        for action in [
            Action::ShutTaps,
            Action::BucketTest(WaterPipe::Cold),
            Action::Inspect(Part::DrainPump),
            Action::Inspect(Part::Belt),
        ] {
            done(&mut harness, action.clone());
            assert_eq!(buttons(&harness).len(), before.len(), "{action:?}");
            assert_eq!(buttons(&harness), before, "{action:?}");
        }
    }
}

#[test]
fn the_ticket_s_buttons_keep_their_places() {
    for language in Language::ALL {
        let mut harness = harness_of([272.0, 2400.0], job(language), ticket::ticket_ui);
        let ask = harness.state().texts.get("ask");
        harness.get_by_label(&ask).click();
        harness.run_steps(6);
        let mut labels = texts(
            &harness,
            &["do-plug", "do-open-lid", "do-discharge", "leave-job"],
        );
        let questions = Question::ALL.iter();
        labels.extend(questions.map(|question| harness.state().texts.question(*question)));
        let before: Vec<Rect> = (labels.iter())
            .map(|label| {
                // A question that was asked is told again with its answer.
                let button = harness
                    .query_all_by_role_and_label(Role::Button, label)
                    .next();
                button.unwrap_or_else(|| harness.get_by_label(label)).rect()
            })
            .collect();
        for question in Question::ALL {
            done(&mut harness, Action::Ask(*question));
            for (label, place) in labels.iter().zip(&before) {
                let button = harness
                    .query_all_by_role_and_label(Role::Button, label)
                    .next();
                let now = button.unwrap_or_else(|| harness.get_by_label(label)).rect();
                assert_eq!(now, *place, "{question}: {label}");
            }
        }
    }
}

#[test]
fn the_parts_keep_their_places_whatever_is_quoted_or_ordered() {
    for language in Language::ALL {
        let mut harness = harness_of([PAGE, 6000.0], job(language), parts::parts_ui);
        let parts = harness.state().bench.job().parts.clone();
        let labels: Vec<String> = (parts.iter())
            .map(|part| harness.state().texts.get(&part.name_key))
            .collect();
        let before = places(&harness, &labels);
        harness.state_mut().ui_state.quoted.parts = vec![parts[0].number.clone()];
        harness.run_steps(3);
        assert_eq!(places(&harness, &labels), before);
        let quote = Quote {
            parts: vec![parts[0].number.clone()],
            minutes: 60,
        };
        for action in [Action::Quote(quote), Action::Order(parts[0].number.clone())] {
            done(&mut harness, action.clone());
            assert_eq!(places(&harness, &labels), before, "{action:?}");
        }
    }
}

#[test]
fn the_report_keeps_its_places_whatever_is_named() {
    for language in Language::ALL {
        let mut harness = harness_of([PAGE, 1600.0], job(language), report::report_ui);
        let labels = texts(
            &harness,
            &[
                "report-part",
                "report-proof",
                "report-advice",
                "report-hand-in",
            ],
        );
        let before = places(&harness, &labels);
        let causes = harness.state().bench.job().causes.clone();
        for cause in causes.iter().take(2) {
            harness.state_mut().ui_state.draft.toggle(&cause.id);
            harness.run_steps(3);
            assert_eq!(places(&harness, &labels), before, "{}", cause.id);
        }
    }
}

/// A hint lengthens the ticket below all that can be pressed there.
#[test]
fn a_hint_moves_nothing() {
    let jobs = LibraryJobs::new(None, None).expect("the built-in jobs are sound");
    let fixture = fixture_of(BenchRes::new(open(&jobs, 0, 101)), Language::En);
    let mut harness = harness_of([272.0, 2400.0], fixture, |ui, context| {
        super::super::ticket(ui, context, &jobs);
    });
    let labels = texts(&harness, &["do-unplug", "do-open-lid", "leave-job", "hint"]);
    let before = places(&harness, &labels);
    let bench = &mut harness.state_mut().bench;
    bench.look_for_hint();
    bench.wait_for_hint();
    bench.take_hint();
    bench.tick();
    bench.refresh();
    harness.run_steps(3);
    assert_eq!(places(&harness, &labels), before);
    let hint = harness.state().bench.hint();
    assert_eq!(hint.map(|hint| hint.taken().len()), Some(1));
}

/// What is noted beside the lamps moves no line of the page that explains them.
#[test]
fn the_sheet_keeps_its_place_whatever_is_noted() {
    for language in Language::ALL {
        let mut fixture = job(language);
        fixture.ui_state.page = Page::Lamps;
        let mut harness = harness_of([PAGE, 2400.0], fixture, sheet::sheet_ui);
        let labels = texts(&harness, &["note-code-do", "sheet-invented"]);
        let before = places(&harness, &labels);
        for code in 11..19 {
            done(&mut harness, Action::NoteCode(code));
            done(&mut harness, Action::StrikeCode(code));
            assert_eq!(places(&harness, &labels), before, "{code}");
        }
    }
}
