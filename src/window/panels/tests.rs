//! Panels by what they say and do, without a window.

use super::*;
use crate::attempts::Folder;
use crate::background::Background;
use crate::demo::{DemoBench, DemoJobs};
use crate::first_job::FirstJob;
use crate::pointing::{Pick, Pointing};
use crate::practice::{coached, now};
use crate::scene::grips::{GripKind, Outline, SceneGrip};
use crate::state::{Examined, Guidance, Onward, Page, PinGroup, VariantList, say};
use crate::tokens;
use crate::workbench::LibraryJobs;
use crate::{AppOptions, plugin, without_window_system};
use bevy::time::TimeUpdateStrategy;
use bevy_egui::egui::accesskit::Role;
use bevy_egui::egui::epaint::ColorMode;
use detent_content::{Language, ProfileFolder, builtin, read_board, read_script};
use detent_simulation::controller::{Board, ControlMode, Selector};
use detent_simulation::interface::{Button, Pin, Side, Terminal};
use detent_training::bench::script::{ScriptStep, reset_steps};
use detent_training::bench::{
    Advice, Grip, HintRung, Incident, MeterMode, Question, Quote, Report, Verdict,
};
use detent_training::lesson::{BenchGoal, Goal, Score};
use detent_training::practice::{Answer, Detail, Examination, Exercise, Learner, Moment, Skill};
use detent_training::without_breaks;
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;
use std::sync::Arc;
use std::time::Duration;

mod class_panels;
mod film;
mod newcomer;
mod places;
mod reach;
mod screen_reader;
mod states;
mod tree;
mod whole_exercise;

/// A panel under test with all that it needs.
pub(super) struct Fixture {
    pub texts: Texts,
    pub bench: BenchRes,
    pub ui_state: UiState,
}

impl Fixture {
    pub fn context(&mut self) -> PanelContext<'_> {
        PanelContext {
            texts: &self.texts,
            bench: &mut self.bench,
            ui_state: &mut self.ui_state,
        }
    }
}

pub(super) fn fixture(language: Language) -> Fixture {
    fixture_at(DemoBench::new(), language)
}

/// Every board of the program.
fn boards() -> Vec<Board> {
    builtin::in_folder("assets/boards")
        .map(|(path, text)| read_board(&path, text.as_bytes()).expect("built-in boards are sound"))
        .collect()
}

/// The board of this name.
fn board(id: &str) -> Board {
    let found = boards().into_iter().find(|board| board.id == id);
    found.unwrap_or_else(|| panic!("there is no {id}"))
}

fn fixture_at(bench: DemoBench, language: Language) -> Fixture {
    fixture_of(BenchRes::new(Box::new(bench)), language)
}

fn fixture_of(mut bench: BenchRes, language: Language) -> Fixture {
    bench.refresh();
    bench.wait_for_review();
    Fixture {
        texts: Texts::load(language),
        bench,
        ui_state: UiState {
            language,
            ..UiState::default()
        },
    }
}

/// Does it at once, whatever caution stands against it.
fn do_now(bench: &mut BenchRes, action: Action) {
    bench.push(action);
    bench.tick();
    if bench.asked.is_some() {
        bench.go_on();
        bench.tick();
    }
    bench.refresh();
}

fn harness<'a>(
    fixture: Fixture,
    panel: impl FnMut(&mut Ui, &mut PanelContext) + 'a,
) -> Harness<'a, Fixture> {
    harness_of([430.0, 1400.0], fixture, panel)
}

fn harness_of<'a>(
    size: [f32; 2],
    fixture: Fixture,
    mut panel: impl FnMut(&mut Ui, &mut PanelContext) + 'a,
) -> Harness<'a, Fixture> {
    let mut harness = Harness::builder().with_size(size).build_ui_state(
        move |ui, fixture: &mut Fixture| {
            kit::apply_theme(ui.ctx());
            panel(ui, &mut fixture.context());
        },
        fixture,
    );
    harness.run_steps(2);
    harness
}

/// What hands can do with a part stands beside its name, within the panel, on two lines at most.
#[test]
fn what_hands_do_with_a_part_can_be_read_in_both_languages() {
    const ROOM: f32 = 412.0 - 20.0;
    for language in Language::ALL {
        let mut harness = harness_of([ROOM, 2400.0], fixture(language), look::look_ui);
        let look = harness.state().texts.get("look");
        harness.get_by_label(&look).click();
        harness.run_steps(4);
        let deeds: Vec<egui::Rect> = (harness.get_all_by_role(Role::Button))
            .map(|node| node.rect())
            .collect();
        assert!(deeds.len() > 30, "{}", deeds.len());
        for deed in deeds {
            assert!(deed.height() < 60.0 && deed.right() <= ROOM, "{deed:?}");
        }
    }
}

/// The side panels are as wide as they are: nothing in them may ask for more.
#[test]
fn every_tab_stays_within_its_panel_in_both_languages() {
    const ROOM: f32 = 412.0 - 20.0;
    let tabs_of = [Tab::Sheet, Tab::Meter, Tab::Parts, Tab::Report];
    let screens = tabs_of.into_iter().flat_map(|tab| {
        let pages = if tab == Tab::Sheet {
            Page::ALL
        } else {
            &Page::ALL[..1]
        };
        pages.iter().map(move |page| (tab, *page))
    });
    for language in Language::ALL {
        for (tab, page) in screens.clone() {
            let mut fixture = fixture(language);
            (fixture.ui_state.tab, fixture.ui_state.page) = (tab, page);
            let harness = harness_of([ROOM, 1400.0], fixture, tabs);
            let wide: Vec<String> = harness
                .query_all_by(|node| {
                    let place = node.raw_bounds();
                    place.is_some_and(|place| place.x1 > f64::from(ROOM) + 0.5 || place.x0 < -0.5)
                })
                .map(|node| format!("{node:?}"))
                .collect();
            assert!(wide.is_empty(), "{language:?} {tab:?} {page:?}: {wide:#?}");
        }
    }
}

#[test]
fn the_ticket_pulls_the_plug() {
    let mut harness = harness(fixture(Language::En), ticket::ticket_ui);
    harness.get_by_label("Unplug (P)").click();
    harness.run_steps(2);
    assert_eq!(
        harness.state().bench.queue.back().map(|q| q.action.clone()),
        Some(Action::Unplug)
    );
}

#[test]
fn the_ticket_speaks_spanish() {
    let harness = harness(fixture(Language::Es), ticket::ticket_ui);
    harness.get_by_label("Desenchufar (P)");
}

#[test]
fn a_code_is_noted_as_read() {
    let mut harness = harness(fixture(Language::En), meter::meter_ui);
    harness.state_mut().ui_state.digits = [2, 3];
    harness.get_by_label("Record code").click();
    harness.run_steps(2);
    assert_eq!(
        harness.state().bench.queue.back().map(|q| q.action.clone()),
        Some(Action::NoteCode(23))
    );
}

/// The action that was pushed last.
fn last(harness: &Harness<'_, Fixture>) -> Option<Action> {
    let queue = &harness.state().bench.queue;
    queue.back().map(|queued| queued.action.clone())
}

#[test]
fn the_meter_is_tried_held_and_kept_by_the_fingers() {
    let mut harness = harness(fixture(Language::En), meter::meter_ui);
    let click = |harness: &mut Harness<'_, Fixture>, label: &str| {
        harness.get_by_label(label).click();
        harness.run_steps(2);
    };
    let done = |harness: &mut Harness<'_, Fixture>| {
        let bench = &mut harness.state_mut().bench;
        bench.tick();
        bench.refresh();
        harness.run_steps(2);
    };
    click(&mut harness, "Check the meter on a proving unit");
    assert_eq!(last(&harness), Some(Action::TestMeter));
    done(&mut harness);
    harness.get_by_label("The meter reads the known source.");
    click(&mut harness, "Use the spare leads");
    assert_eq!(last(&harness), Some(Action::ReplaceLeads));
    done(&mut harness);

    let (red, black) = (Pin::BulkPlus, Pin::BulkMinus);
    (
        harness.state_mut().ui_state.red,
        harness.state_mut().ui_state.black,
    ) = (Some(red), Some(black));
    click(&mut harness, "Continuity");
    click(&mut harness, "Fingers");
    click(&mut harness, "Measure and record");
    let expected = Action::Probe {
        mode: MeterMode::Continuity,
        red,
        black,
        grip: Grip::Fingers,
    };
    assert_eq!(last(&harness), Some(expected));
    done(&mut harness);
    // 14.2 Ω, as the made-up bench shows: the beep is written, and so are the fingers.
    harness.get_by_label("beeps");
    harness.get_by_label_contains("fingers on the tips");
    click(&mut harness, "Hold the reading");
    done(&mut harness);
    click(&mut harness, "Release hold");
    assert_eq!(last(&harness), Some(Action::ReleaseDisplay));
}

#[test]
fn a_part_in_the_hand_can_go_back() {
    let mut harness = harness(fixture(Language::En), parts::parts_ui);
    harness.get_by_label("Return part").click();
    harness.run_steps(2);
    assert_eq!(last(&harness), Some(Action::Return("C24-330".to_owned())));
}

#[test]
fn the_bill_counts_parts_and_work() {
    // 46 for parts and 15 for work, as the made-up bench says.
    let harness = harness(fixture(Language::En), ticket::ticket_ui);
    harness.get_by_label("¤61 of ¤180");
    harness.get_by_label("¤300");
}

#[test]
fn two_causes_can_be_named_and_taken_back() {
    let mut harness = harness(fixture(Language::En), report::report_ui);
    let choose = |harness: &mut Harness<'_, Fixture>, cause: &str| {
        harness.get_by_role_and_label(Role::Button, cause).click();
        harness.run_steps(3);
    };
    let (seized, hose) = ("Drain pump: rotor seized", "Drain hose blocked");
    harness.state_mut().ui_state.draft.part = Some(None);
    harness.run_steps(2);
    choose(&mut harness, seized);
    choose(&mut harness, hose);
    let both = ["drain-pump.seized", "drain-hose.blocked"].map(str::to_owned);
    assert_eq!(harness.state().ui_state.draft.causes, both);
    harness.get_by_label(&format!("{seized}; {hose}"));
    choose(&mut harness, seized);
    assert_eq!(harness.state().ui_state.draft.causes, both[1..]);
    choose(&mut harness, "Nothing was wrong");
    let draft = &harness.state().ui_state.draft;
    assert!(draft.causes.is_empty());
    assert_eq!(draft.verdict, Some(Verdict::NothingWrong));
}

#[test]
fn a_job_can_be_given_up_without_naming_a_cause_or_a_part() {
    let mut fixture = fixture(Language::En);
    fixture.ui_state.draft.part = Some(None);
    let mut harness = harness(fixture, report::report_ui);
    harness.get_by_label("I’m giving up the job").click();
    harness.run_steps(3);
    harness.get_by_label("Close the job").click();
    harness.run_steps(2);
    let queued = harness.state().bench.queue.back().map(|q| q.action.clone());
    let given_up = Report {
        causes: Vec::new(),
        part: None,
        proof: Vec::new(),
        looks: Vec::new(),
        advice: Advice::None,
        verdict: Verdict::GivenUp,
    };
    assert_eq!(queued, Some(Action::Report(given_up)));
}

#[test]
fn a_look_is_taken_and_what_is_found_is_told() {
    let mut harness = harness(fixture(Language::En), meter::meter_ui);
    harness.get_by_label_contains("Look, feel").click();
    harness.run_steps(20);
    let look = harness.get_all_by_label("Inspect").next();
    look.expect("one for each component").click();
    harness.run_steps(2);
    let fixture = harness.state_mut();
    let queued = fixture.bench.queue.back().map(|q| q.action.clone());
    assert_eq!(queued, Some(Action::Inspect(Part::Supply)));
    fixture.bench.tick();
    fixture.bench.refresh();
    harness.run_steps(2);
    harness.get_by_label("The pump’s impeller will not turn.");
}

#[test]
fn an_ordered_part_can_be_fitted_and_another_ordered() {
    let mut harness = harness(fixture(Language::En), parts::parts_ui);
    harness.get_by_label("Install").click();
    harness.run_steps(2);
    assert_eq!(
        harness.state().bench.queue.back().map(|q| q.action.clone()),
        Some(Action::Fit("C24-330".to_owned()))
    );
}

#[test]
fn a_report_needs_cause_and_part() {
    let mut harness = harness(fixture(Language::En), report::report_ui);
    harness.get_by_label("Close the job").click();
    harness.run_steps(2);
    assert!(harness.state().bench.queue.is_empty());
    harness
        .state_mut()
        .ui_state
        .draft
        .toggle("drain-pump.seized");
    harness.state_mut().ui_state.draft.part = Some(None);
    harness.state_mut().ui_state.draft.proof.insert(1);
    harness.state_mut().ui_state.draft.looks.insert(0);
    harness.state_mut().ui_state.draft.advice = Advice::LevelMachine;
    harness.run_steps(2);
    harness.get_by_label("Close the job").click();
    harness.run_steps(2);
    let expected = Report {
        causes: vec!["drain-pump.seized".to_owned()],
        part: None,
        proof: vec![1],
        looks: vec![0],
        advice: Advice::LevelMachine,
        verdict: Verdict::CausesNamed,
    };
    assert_eq!(
        harness.state().bench.queue.back().map(|q| q.action.clone()),
        Some(Action::Report(expected))
    );
}

#[test]
fn a_caution_asks_and_stepping_back_does_nothing() {
    let mut fixture = fixture(Language::En);
    fixture.bench.push(Action::OpenCabinet);
    fixture.bench.tick();
    assert!(fixture.bench.asked.is_some());
    let mut harness = harness(fixture, |ui, context| {
        caution::caution_ui(ui.ctx(), context)
    });
    harness.get_by_label("DANGER");
    harness.get_by_label("Step back").click();
    harness.run_steps(2);
    let state = harness.state_mut();
    assert!(state.bench.asked.is_none());
    state.bench.tick();
    state.bench.refresh();
    assert!(!state.bench.view().cabinet_open);
}

#[test]
fn a_caution_can_be_overruled() {
    let mut fixture = fixture(Language::En);
    fixture.bench.push(Action::OpenCabinet);
    fixture.bench.tick();
    let mut harness = harness(fixture, |ui, context| {
        caution::caution_ui(ui.ctx(), context)
    });
    harness.get_by_label("Continue").click();
    harness.run_steps(2);
    let state = harness.state_mut();
    state.bench.tick();
    state.bench.refresh();
    assert!(state.bench.view().cabinet_open);
}

#[test]
fn every_page_and_tab_has_all_its_texts_in_both_languages() {
    for language in Language::ALL {
        for board in boards() {
            for page in Page::ALL.iter().copied() {
                let harness = sheet(&board, page, language);
                nothing_missing(&harness, &format!("{}: {page:?}", board.id));
            }
            let fixture = fixture_at(DemoBench::at(board), language);
            nothing_missing(&harness(fixture, stage::hands_ui), "hands");
        }
        nothing_missing(&harness(fixture(language), ticket::ticket_ui), "ticket");
        nothing_missing(&harness(fixture(language), meter::meter_ui), "meter");
        nothing_missing(&harness(fixture(language), parts::parts_ui), "parts");
        nothing_missing(&harness(fixture(language), report::report_ui), "report");
        let mut finished = fixture(language);
        finished.bench.push(Action::Report(Report {
            causes: Vec::new(),
            part: None,
            proof: Vec::new(),
            looks: Vec::new(),
            advice: Advice::None,
            verdict: Verdict::NothingWrong,
        }));
        finished.bench.tick();
        finished.bench.refresh();
        nothing_missing(&harness(finished, score::score_ui), "score");
    }
}

/// A page of a board's service sheet.
fn sheet(board: &Board, page: Page, language: Language) -> Harness<'static, Fixture> {
    let mut fixture = fixture_at(DemoBench::at(board.clone()), language);
    fixture.ui_state.page = page;
    harness(fixture, sheet::sheet_ui)
}

#[test]
fn the_wiring_diagram_takes_the_probes() {
    for board in boards() {
        let mut harness = sheet(&board, Page::Pins, Language::En);
        let pins = [Side::Board, Side::Load].map(|side| Pin::Wire(Terminal::CordLine, side));
        for pin in pins {
            let name = harness.state_mut().context().pin(pin);
            harness.get_by_label(&name).click();
            harness.run();
        }
        let ui_state = &harness.state().ui_state;
        assert_eq!(
            (ui_state.red, ui_state.black),
            (Some(pins[0]), Some(pins[1])),
            "{}",
            board.id
        );
    }
}

#[test]
fn the_sheet_tells_each_board_s_way_into_service_mode() {
    for (id, steps) in [
        (
            "arc-dial",
            &[
                "Turn 6 detents left",
                "Press Stop",
                "Hold Start for 1 to 2.5 s",
            ][..],
        ),
        (
            "key-pad",
            &[
                "Press More and keep it down",
                "Press Less 2 times",
                "Release More",
            ],
        ),
        (
            "lone-lamp",
            &[
                "Hold Start down and plug in",
                "Open the lid",
                "Release Start",
            ],
        ),
    ] {
        let page = sheet(&board(id), Page::Entry, Language::En);
        for step in steps {
            assert!(
                page.query_all_by_label_contains(step).count() > 0,
                "{id}: {step}"
            );
        }
    }
}

#[test]
fn the_sheet_tells_which_reset_works_and_which_does_nothing() {
    for (id, works, nothing) in [
        (
            "arc-dial",
            "Hold Stop for 2 s.",
            "Moving the lid does nothing",
        ),
        (
            "key-pad",
            "Hold Start for 4 s.",
            "Moving the lid does nothing",
        ),
        (
            "lone-lamp",
            "close the lid 3 times within 8 s.",
            "Holding a button does nothing",
        ),
    ] {
        let page = sheet(&board(id), Page::Lamps, Language::En);
        page.get_by_label_contains(works);
        page.get_by_label_contains(nothing);
    }
}

#[test]
fn the_sheet_names_the_button_that_turns_the_page() {
    sheet(&board("key-pad"), Page::Lamps, Language::En).get_by_label_contains("press of More goes");
    sheet(&board("arc-dial"), Page::Lamps, Language::En)
        .get_by_label_contains("press of Start goes");
}

#[test]
fn no_sheet_tells_of_what_the_board_has_not() {
    for board in boards() {
        let mut absent = Vec::new();
        if !matches!(board.panel.selector, Selector::Dial { .. }) {
            absent.extend(["Turn the dial", "detent"]);
        }
        if !matches!(board.panel.selector, Selector::Switch { .. }) {
            absent.push("Turn the switch");
        }
        if !board.panel.buttons.contains(&Button::More) {
            absent.extend(["More and Less", "of More", "Press More", "Press Less"]);
        }
        if !board.lamps.lock_lamp {
            absent.push("lock lamp blinks");
        }
        for page in Page::ALL.iter().copied() {
            let sheet = sheet(&board, page, Language::En);
            for words in &absent {
                let told = sheet.query_all_by_label_contains(words).count();
                assert_eq!(told, 0, "{}: {page:?} tells of \"{words}\"", board.id);
            }
        }
    }
}

#[test]
fn a_button_that_stays_down_says_so_and_is_let_go_by_a_press() {
    let mut fixture = fixture_at(DemoBench::at(board("lone-lamp")), Language::En);
    fixture.ui_state.held.push(Button::Start, true);
    let mut harness = harness(fixture, stage::hands_ui);
    harness.get_by_label("Switch at 2");
    harness.get_by_label("Start held down").click();
    harness.run_steps(2);
    assert!(harness.query_by_label("Start held down").is_none());
    let queued = harness.state().bench.queue.back().map(|q| q.action.clone());
    assert_eq!(queued, Some(Action::Up(Button::Start)));
    harness.get_by_label("Keep a button down").click();
    harness.run_steps(2);
    assert!(harness.state().ui_state.held.keep_next);
}

/// Over the debrief stands nothing that hands could still do.
#[test]
fn at_a_job_that_is_done_no_hands_are_offered() {
    let jobs = LibraryJobs::new(None, None).expect("the built-in jobs are sound");
    let keep = Texts::load(Language::En).get("keep-next");
    let offered = |bench: BenchRes| {
        let mut fixture = fixture_of(bench, Language::En);
        fixture.ui_state.tab = Tab::Score;
        let bench_panels = |ui: &mut Ui, context: &mut PanelContext| {
            let overlay = ConsoleOverlay {
                lit: &[],
                print: &[],
                grips: &[],
            };
            bench_ui(
                ui,
                context,
                (&jobs, &mut ClassRes::default()),
                &Pointing::default(),
                &overlay,
                0.0,
            );
        };
        let harness = harness_of([1366.0, 768.0], fixture, bench_panels);
        harness.query_by_label(&keep).is_some()
    };
    let mut bench = BenchRes::new(open(&jobs, 0, 101));
    let given_up = ScriptStep::Do(Action::Report(Report::given_up()));
    bench.run(&given_up).expect("a job can be given up");
    assert!(!offered(bench));
    assert!(offered(BenchRes::new(open(&jobs, 0, 101))));
}

/// Both hands are needed: Start stays down while the plug goes in and the lid moves.
#[test]
fn the_plain_board_s_gesture_can_be_done_with_a_button_kept_down() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let text = builtin::text("scenarios/drain-code.ron").expect("a built-in job");
    let path = folder.path().join("plain.ron");
    let text = text.replace("board: \"arc-dial\"", "board: \"lone-lamp\"");
    std::fs::write(&path, text).expect("the folder can be written");
    let jobs = LibraryJobs::new(Some(&path.to_string_lossy()), None).expect("the jobs are sound");
    let mut bench = BenchRes::new(open(&jobs, 0, 11));
    let mut ui_state = UiState::default();
    let run = |bench: &mut BenchRes, ticks: u32| {
        (0..ticks).for_each(|_| bench.tick());
        bench.refresh();
        assert!(bench.asked.is_none() && bench.refused.is_none());
    };
    // This board keeps its fault hold without power.
    for step in reset_steps(&bench.job().board.resets) {
        bench.run(&step).expect("the lid is free");
    }
    bench.push(Action::Unplug);
    run(&mut bench, 20_000);
    bench.queue_some(ui_state.held.push(Button::Start, true));
    bench.queue_some(ui_state.held.release(Button::Start));
    run(&mut bench, 50);
    bench.push(Action::Plug);
    run(&mut bench, 100);
    for up in [true, false, true, false] {
        assert_eq!(bench.lid_will_be_up(), !up);
        bench.push(if up {
            Action::OpenLid
        } else {
            Action::CloseLid
        });
        run(&mut bench, 60);
    }
    assert_eq!(bench.view().machine.control.mode, ControlMode::Idle);
    bench.queue_some(ui_state.held.push(Button::Start, false));
    run(&mut bench, 60);
    assert_eq!(bench.view().machine.control.mode, ControlMode::Service);
}

/// A finished job with every classic mistake, at the real bench.
fn mistakes(language: Language) -> Fixture {
    let jobs = LibraryJobs::new(Some("exam-120-v-dial"), None).expect("the jobs are sound");
    let mut bench = BenchRes::new(open(&jobs, 0, 137));
    let script = include_str!("../../../tests/scripts/classic-mistakes.script");
    let steps = read_script("classic-mistakes.script", script.as_bytes()).expect("a good script");
    for (line, step) in steps {
        bench
            .run(&step)
            .unwrap_or_else(|e| panic!("line {line}: {e}"));
    }
    fixture_of(bench, language)
}

#[test]
fn a_finished_job_is_thought_over_in_both_languages() {
    for language in Language::ALL {
        let fixture = mistakes(language);
        let review = fixture.bench.review().expect("a built-in board");
        let text = |key: &str| fixture.texts.get(key);
        let (yours, best, lamps) = (
            text("review-yours"),
            text("review-best"),
            fixture
                .texts
                .with("misread-lamps", &[("count", Value::from(4))]),
        );
        let costs: Vec<String> = (review.yours.iter().chain(&review.best))
            .map(|stop| match language {
                Language::En => format!("{:.0} min · ¤{:.0}", stop.minutes, stop.money),
                Language::Es => format!("{:.0} min · {:.0}\u{a0}¤", stop.minutes, stop.money),
            })
            .collect();
        let job = fixture.bench.job();
        let words = Words::of(
            (&review.repair_costs, &review.modes),
            &fixture.texts,
            &job.parts,
            Some(&job.board),
        );
        let accounts: Vec<String> = (review.accounts.iter())
            .map(|account| words.account(account))
            .collect();
        let score = harness(fixture, score::score_ui);
        nothing_missing(&score, "score");
        for account in &accounts {
            assert!(
                score.query_all_by_label(account).next().is_some(),
                "{account}"
            );
        }
        assert!(score.query_by_label(&lamps).is_some(), "{lamps}");
        let room = egui::Rect::from_min_size(egui::Pos2::ZERO, egui::vec2(596.0, 1400.0));
        let ways = harness(mistakes(language), move |ui, context| {
            review::review_ui(ui, room, context);
        });
        nothing_missing(&ways, "review");
        for heading in [yours, best] {
            assert!(ways.query_by_label(&heading).is_some(), "{heading}");
        }
        // Sums stand in the shop's money, as on the invoice.
        for cost in costs {
            assert!(ways.query_all_by_label(&cost).next().is_some(), "{cost}");
        }
    }
}

/// Each rung is told once it was paid for, the next at its price; what happens meanwhile asks for a new look.
#[test]
fn a_hint_is_taken_rung_by_rung_in_both_languages() {
    for language in Language::ALL {
        let jobs = LibraryJobs::new(Some("drain-code-several-causes"), None).expect("sound jobs");
        let bench = BenchRes::new(open(&jobs, 0, 409));
        let mut harness = harness(fixture_of(bench, language), hint::hint_ui);
        let text = |key: &str| Texts::load(language).get(key);
        harness.get_by_label(&text("hint-look")).click();
        harness.run();
        harness.state_mut().bench.wait_for_hint();
        harness.run();
        let topics = [
            "leave-fault-hold-where",
            "leave-fault-hold-ask",
            "leave-fault-hold-do",
        ];
        let points = harness.state().bench.job().points;
        for (n, rung) in HintRung::ALL.iter().enumerate() {
            let told = |topic: &str| text(&format!("hint-{topic}"));
            assert!(harness.query_by_label(&told(topics[n])).is_none());
            let price = (10.0 * points.taken_by_hint(*rung)).round() / 10.0;
            let args = [
                ("rung", Value::from(text(&format!("hint-rung-{rung}")))),
                ("points", Value::from(price)),
            ];
            let label = Texts::load(language).with("hint-rung-with-price", &args);
            harness.get_by_label(&label).click();
            harness.run();
            harness.state_mut().bench.tick();
            harness.run();
            for topic in &topics[..=n] {
                assert!(harness.query_by_label(&told(topic)).is_some(), "{topic}");
            }
        }
        nothing_missing(&harness, "hint");
        let taken = harness.state().bench.history();
        let taken = taken
            .iter()
            .filter(|(_, a)| matches!(a, Action::TakeHint(_)));
        assert_eq!(taken.count(), 3);
        // Nothing new is to be told about the same thing, and it need not be paid for twice.
        harness.get_by_label(&text("hint-look-again")).click();
        harness.run();
        harness.state_mut().bench.wait_for_hint();
        harness.run();
        let told = text("hint-leave-fault-hold-do");
        assert!(harness.query_by_label(&told).is_some());
    }
}

/// Somebody's own board, of whose faults there is no table.
#[test]
fn a_board_without_a_table_offers_no_hint() {
    for language in Language::ALL {
        let texts = Texts::load(language);
        let fixture = fixture_at(DemoBench::without_table(), language);
        let harness = harness(fixture, hint::hint_ui);
        harness.get_by_label(&texts.get("hint-none-no-table"));
        assert!(harness.query_by_label(&texts.get("hint-look")).is_none());
    }
}

#[test]
fn an_examination_offers_no_hint() {
    let jobs = LibraryJobs::new(Some("exam-120-v-dial"), None).expect("sound jobs");
    let bench = BenchRes::new(open(&jobs, 0, 137));
    let harness = harness(fixture_of(bench, Language::En), hint::hint_ui);
    let look = Texts::load(Language::En).get("hint-look");
    assert!(harness.query_by_label(&look).is_none());
}

/// The dearest loss stands with the drill that trains it, a click away; below it the same job again, and the next.
#[test]
fn the_coach_says_one_thing_and_leads_to_it() {
    let jobs = LibraryJobs::new(None, None).expect("the built-in jobs are sound");
    for language in Language::ALL {
        let bench = given_up(&jobs);
        let coached = coached(&bench, &Learner::default(), &jobs).expect("points were lost");
        let Exercise::Drill(skill) = coached.advice.exercise else {
            panic!("a drill trains what was lost most");
        };
        let mut fixture = fixture_of(bench, language);
        fixture.ui_state.coached = Some(coached.clone());
        let name = Value::from(fixture.texts.get(&format!("skill-{skill}")));
        let label = fixture.texts.with("coach-drill", &[("skill", name)]);
        let mut harness = harness(fixture, score::score_ui);
        harness.get_by_label(&label).click();
        harness.run();
        let onward = harness.state().ui_state.onward.clone();
        assert_eq!(onward, Some(Onward::Exercise(coached.advice.exercise)));
        let texts = Texts::load(language);
        let again = Exercise::Job(harness.state().bench.job().file.clone());
        for (key, onward) in [
            ("coach-again", Onward::Exercise(again)),
            ("coach-next-job", Onward::NextJob),
        ] {
            harness.get_by_label(&texts.get(key)).click();
            harness.run();
            assert_eq!(harness.state().ui_state.onward, Some(onward), "{key}");
        }
    }
}

/// The first job, given up at once.
fn given_up(jobs: &LibraryJobs) -> BenchRes {
    let mut bench = BenchRes::new(open(jobs, 0, 101));
    let given_up = ScriptStep::Do(Action::Report(Report::given_up()));
    bench.run(&given_up).expect("a job can be given up");
    bench
}

/// Nothing is drilled again that is mastered: a job trains it, by its title and a click away.
#[test]
fn whoever_has_mastered_what_was_lost_is_sent_to_a_job() {
    let jobs = LibraryJobs::new(None, None).expect("the built-in jobs are sound");
    let bench = given_up(&jobs);
    let right = |day: i64, n: i64, skill: &Skill| Answer {
        at: Moment(now().0 - 86_400 * (2 - day) + 60 * n),
        skill: *skill,
        right: true,
        took_s: 5.0,
        detail: Detail::None,
    };
    let mut answers = Vec::new();
    for day in 0..2 {
        for n in 0..12 {
            answers.extend(Skill::ALL.iter().map(|skill| right(day, n, skill)));
        }
    }
    let sent_to = |answers: &[Answer]| {
        let coached = coached(&bench, &Learner::of(answers), &jobs).expect("points were lost");
        match &coached.advice.exercise {
            Exercise::Job(file) => (file.clone(), coached),
            Exercise::Drill(skill) => panic!("{skill} is mastered"),
        }
    };
    let done = bench.job().file.clone();
    assert_eq!(sent_to(&answers).0, done, "nothing else is open");
    let (file, kept) = (done.clone(), 1.0);
    answers.push(Answer {
        detail: Detail::Job { file, kept },
        ..right(1, 99, &Skill::Proof)
    });
    let (next, coached) = sent_to(&answers);
    assert_ne!(next, done);
    let title = coached.title.clone().expect("it is on offer");
    let mut fixture = fixture_of(bench, Language::En);
    fixture.ui_state.coached = Some(coached.clone());
    let label = fixture
        .texts
        .with("coach-job", &[("title", title.en.into())]);
    let mut harness = harness(fixture, score::score_ui);
    harness.get_by_label(&label).click();
    harness.run();
    let onward = harness.state().ui_state.onward.clone();
    assert_eq!(onward, Some(Onward::Exercise(coached.advice.exercise)));
}

/// The customer is asked, told what it comes to, and billed.
#[test]
fn the_customer_is_asked_quoted_and_billed_in_both_languages() {
    let jobs = LibraryJobs::new(None, None).expect("the built-in jobs are sound");
    for language in Language::ALL {
        let texts = Texts::load(language);
        let fixture = fixture_of(BenchRes::new(open(&jobs, 0, 101)), language);
        let mut asking = harness(fixture, customer::questions_ui);
        asking.get_by_label(&texts.get("ask")).click();
        asking.run();
        asking
            .get_by_label(&texts.question(Question::Panel))
            .click();
        asking.run();
        assert_eq!(last(&asking), Some(Action::Ask(Question::Panel)));
        asking.state_mut().bench.tick();
        asking.run();
        let bench = &asking.state().bench;
        let intake = bench.job().intake.clone().expect("a customer");
        let answer = texts.answer(&intake.answer(Question::Panel, bench.view().log));
        assert!(asking.query_by_label(&answer).is_some(), "{answer}");
        nothing_missing(&asking, "questions");

        let mut fixture = fixture_of(BenchRes::new(open(&jobs, 0, 101)), language);
        fixture.ui_state.quoted.parts = vec!["P-1801".to_owned()];
        let mut quoting = harness(fixture, parts::parts_ui);
        quoting.get_by_label(&texts.get("do-quote")).click();
        quoting.run();
        let quote = Quote {
            parts: vec!["P-1801".to_owned()],
            minutes: 60,
        };
        assert_eq!(last(&quoting), Some(Action::Quote(quote)));
        quoting.state_mut().bench.tick();
        quoting.run();
        let bench = &quoting.state().bench;
        let given = bench.view().log.quotes().last().cloned().expect("a quote");
        assert!(given.approved);
        assert!(quoting.query_by_label(&texts.quote_given(&given)).is_some());
        nothing_missing(&quoting, "parts");

        let finished = mistakes(language);
        let invoice = finished.bench.invoice().cloned().expect("a finished job");
        let parts = finished.bench.job().parts.clone();
        let score = harness_of([430.0, 4000.0], finished, score::score_ui);
        let too_wide = score.query_all_by(|node| {
            let place = node.raw_bounds();
            place.is_some_and(|place| place.x1 > 430.5)
        });
        assert_eq!(too_wide.count(), 0, "{language:?}");
        for row in texts.for_supply(120).invoice(&invoice, &parts) {
            assert!(
                score.query_all_by_label(&row.label).next().is_some(),
                "{}",
                row.label
            );
        }
        nothing_missing(&score, "score");
    }
}

/// Drawn one after the other, each with what the customer says and how hard it is, and begun like any job.
#[test]
fn variants_are_listed_as_they_are_proved() {
    let jobs = LibraryJobs::new(None, None).expect("the built-in jobs are sound");
    for language in Language::ALL {
        let mut fixture = fixture(language);
        fixture.ui_state.seed = "7".to_owned();
        fixture.ui_state.variants = Some(VariantList::new(0, 7, 2));
        let mut harness = harness(fixture, |ui, context| {
            start::start_ui(
                ui,
                context,
                &mut LearnerRes::default(),
                (&jobs, &mut ClassRes::default()),
            );
        });
        for _ in 0..2 {
            let list = harness.state_mut().ui_state.variants.as_mut();
            let list = list.expect("the list stays");
            list.drawing.as_mut().expect("one is on its way").wait();
            harness.run_steps(2);
        }
        nothing_missing(&harness, "variants");
        let begin = Texts::load(language).get("start-begin");
        assert_eq!(harness.query_all_by_label(&begin).count(), 2);
        let list = harness.state().ui_state.variants.as_ref();
        let drawn = &list.expect("the list stays").drawn;
        let complaint = say(language, &drawn[1].source.scenario.complaint).to_owned();
        assert!(harness.query_by_label_contains(&complaint).is_some());
        let last = harness.query_all_by_label(&begin).last();
        last.expect("the second one").click();
        harness.run_steps(2);
        assert!(harness.state().ui_state.opening.is_some());
    }
}

/// A variant is another machine than the job's own, comes again with its seed, and is kept with its attempt.
#[test]
fn a_variant_of_a_job_can_be_opened() {
    let folder = tempfile::tempdir().expect("a folder");
    let jobs = library_jobs(folder.path());
    let drawn = |seed| {
        let draw = without_breaks(jobs.draw_variant(0, seed, None));
        let (_, variant) = draw.unwrap_or_else(|error| panic!("{error:?}"));
        let variant = variant.expect("one can be proved");
        let opened = without_breaks(jobs.open_variant(&variant));
        opened.unwrap_or_else(|error| panic!("{error:?}"))
    };
    let mut one = drawn(7);
    assert!(one.job().is_variant && !open(&jobs, 0, 101).job().is_variant);
    assert_eq!(one.job().complaint, drawn(7).job().complaint);
    assert_ne!(one.job().file, open(&jobs, 0, 101).job().file);
    one.act(Action::Unplug).expect("the plug is in");
    let complaint = one.job().complaint.clone();
    drop(one);
    let kept = names(&jobs);
    assert_eq!(kept.len(), 1);
    let again = without_breaks(jobs.resume(&kept[0]));
    let again = again.unwrap_or_else(|error| panic!("{error:?}"));
    assert!(again.job().is_variant && again.job().complaint == complaint);
    let listed = jobs.kept(&kept[0]).expect("it is listed");
    assert_eq!(listed.title.as_ref(), Some(&again.job().title));
}

#[test]
fn the_next_job_is_the_one_after_it_on_offer() {
    let jobs = LibraryJobs::new(None, None).expect("the built-in jobs are sound");
    let bench = open(&jobs, 0, 101);
    assert_eq!(job_after(bench.job(), &jobs), Some(1));
    let last = Job {
        file: jobs.offers().last().expect("jobs").course.file.clone(),
        ..Job::clone(bench.job())
    };
    assert_eq!(job_after(&last, &jobs), None);
}

/// The whole window without a window system, its frames a tenth of a second apart.
fn whole_window(options: &AppOptions) -> App {
    let jobs = LibraryJobs::new(None, None).expect("the built-in jobs are sound");
    whole_window_with(options, jobs)
}

/// The same with these jobs.
fn whole_window_with(options: &AppOptions, jobs: LibraryJobs) -> App {
    let mut app = without_window_system(options, false);
    let first = FirstJob::open(options, jobs).expect("the first job is sound");
    plugin(&mut app, options, first);
    let frame = Duration::from_millis(100);
    app.insert_resource(TimeUpdateStrategy::ManualDuration(frame));
    app.finish();
    app.cleanup();
    (0..3).for_each(|_| app.update());
    app
}

fn screen(app: &App) -> Screen {
    *app.world().resource::<State<Screen>>().get()
}

/// The next job is chosen where it can be read, and nothing is begun.
#[test]
fn the_next_job_is_chosen_on_the_start_screen() {
    let mut app = whole_window(&AppOptions {
        start: Some((0, 101)),
        ..AppOptions::default()
    });
    let mut ui_state = app.world_mut().resource_mut::<UiState>();
    (ui_state.guidance, ui_state.content_library) = (Guidance::EveryStep, true);
    ui_state.onward = Some(Onward::NextJob);
    (0..3).for_each(|_| app.update());
    assert_eq!(screen(&app), Screen::Start);
    let second = app.world().resource::<JobSourceRes>().0.offers()[1].seed;
    let ui_state = app.world().resource::<UiState>();
    assert!(ui_state.opening.is_none() && !ui_state.content_library);
    assert_eq!((ui_state.offer, &ui_state.seed), (1, &second.to_string()));

    let jobs = LibraryJobs::new(None, None).expect("the built-in jobs are sound");
    let mut start = fixture(Language::En);
    start.ui_state.offer = 1;
    let begin = harness(start, |ui, context| {
        start::start_ui(
            ui,
            context,
            &mut LearnerRes::default(),
            (&jobs, &mut ClassRes::default()),
        );
    });
    begin.get_by_label(say(Language::En, &jobs.offers()[1].complaint));
    begin.get_by_label("Begin the job");
}

/// Leaving a job leads to where it was begun, also when it was done once more in between.
#[test]
fn a_job_leads_back_to_where_it_was_begun() {
    for (options, from) in [
        (AppOptions::default(), Screen::Start),
        (
            AppOptions {
                practice: Some(false),
                ..AppOptions::default()
            },
            Screen::Practice,
        ),
    ] {
        let mut app = whole_window(&options);
        assert_eq!(screen(&app), from);
        for _ in 0..2 {
            let seed = app.world().resource::<JobSourceRes>().0.offers()[0].seed;
            let opening = app.world().resource::<JobSourceRes>().0.open(0, seed);
            let mut ui_state = app.world_mut().resource_mut::<UiState>();
            ui_state.open(opening);
            ui_state.opening.as_mut().expect("it is opened").wait();
            (0..3).for_each(|_| app.update());
            assert_eq!(screen(&app), Screen::Bench);
        }
        app.world_mut().resource_mut::<UiState>().leave = true;
        (0..3).for_each(|_| app.update());
        assert_eq!(screen(&app), from);
    }
}

/// With all of its steps the first time, with half of them later, alone once it was passed.
#[test]
fn a_guided_job_that_was_broken_off_goes_on_with_its_guide() {
    for (kept, guidance) in [
        (None, Guidance::EveryStep),
        (Some(0.2), Guidance::EveryOther),
        (Some(1.0), Guidance::Nothing),
    ] {
        let mut app = whole_window(&AppOptions::default());
        let jobs = LibraryJobs::new(None, None).expect("the built-in jobs are sound");
        let guided = jobs.offers().iter().position(|offer| offer.guided);
        let guided = guided.expect("one has a guide");
        let file = &jobs.offers()[guided].course.file;
        let done = kept.map(|kept| job_done(file, kept));
        app.insert_resource(LearnerRes::guest(done.into_iter().collect()));
        let mut bench = open(&jobs, guided, 101);
        bench.act(Action::Unplug).expect("plugged in");
        let mut ui_state = app.world_mut().resource_mut::<UiState>();
        ui_state.open(Box::pin(async move { Ok(bench) }));
        ui_state.opening.as_mut().expect("it is opened").wait();
        (0..3).for_each(|_| app.update());
        assert_eq!(app.world().resource::<UiState>().guidance, guidance);
    }
}

/// What is in the hand or in the machine need not arrive any more.
#[test]
fn a_part_that_is_here_does_not_arrive() {
    let jobs = LibraryJobs::new(None, None).expect("the built-in jobs are sound");
    for language in Language::ALL {
        let mut fixture = fixture_of(BenchRes::new(open(&jobs, 0, 101)), language);
        fixture.ui_state.part_search = "P-1801".to_owned();
        let belt = (fixture.bench.job().parts.iter()).find(|part| part.number == "P-1801");
        let hours = Value::from(belt.expect("it is in the list").wait_hours);
        let wait = fixture.texts.with("parts-wait", &[("hours", hours)]);
        let mut harness = harness(fixture, parts::parts_ui);
        let arrives =
            |harness: &Harness<'_, Fixture>| harness.query_all_by_label_contains(&wait).count();
        assert_eq!(arrives(&harness), 1);
        let belt = || "P-1801".to_owned();
        for action in [Action::Order(belt()), Action::Fit(belt())] {
            let bench = &mut harness.state_mut().bench;
            if matches!(action, Action::Fit(_)) {
                bench
                    .run(&ScriptStep::Do(Action::Unplug))
                    .expect("plugged in");
                bench
                    .run(&ScriptStep::Do(Action::OpenCabinet))
                    .expect("closed");
            }
            bench.run(&ScriptStep::Do(action)).expect("it can be done");
            harness.run_steps(2);
            assert_eq!(arrives(&harness), 0, "{language:?}");
        }
    }
}

/// Parts are found by a piece of their name or number.
#[test]
fn parts_have_a_search() {
    let jobs = LibraryJobs::new(None, None).expect("the built-in jobs are sound");
    for language in Language::ALL {
        let fixture = fixture_of(BenchRes::new(open(&jobs, 0, 101)), language);
        let texts = Texts::load(language);
        let (belt, hose) = (texts.get("part-belt"), texts.get("part-drain-hose"));
        let mut harness = harness_of([430.0, 9000.0], fixture, parts::parts_ui);
        let there = |harness: &Harness<'_, Fixture>, name: &str| {
            harness.query_all_by_label(name).next().is_some()
        };
        assert!(there(&harness, &belt) && there(&harness, &hose));
        harness.get_by_label(&texts.get("search"));
        for wanted in [belt.to_uppercase(), " p-1801 ".to_owned()] {
            harness.state_mut().ui_state.part_search = wanted;
            harness.run_steps(3);
            assert!(there(&harness, &belt) && !there(&harness, &hose));
        }
        harness.state_mut().ui_state.part_search = "no such thing".to_owned();
        harness.run_steps(3);
        assert!(!there(&harness, &belt));
        harness.get_by_label(&texts.get("parts-none-found"));
    }
}

/// A code that was noted can be struck out, and stays to be seen.
#[test]
fn a_noted_code_is_struck_out_where_it_stands() {
    let jobs = LibraryJobs::new(None, None).expect("the built-in jobs are sound");
    for language in Language::ALL {
        let texts = Texts::load(language);
        let mut fixture = fixture_of(BenchRes::new(open(&jobs, 0, 101)), language);
        let note = ScriptStep::Do(Action::NoteCode(43));
        fixture.bench.run(&note).expect("it can be done");
        let mut harness = harness(fixture, meter::meter_ui);
        let strike = texts.get("note-strike");
        harness.get_by_label(&strike).click();
        harness.run();
        assert_eq!(last(&harness), Some(Action::StrikeCode(43)));
        harness.state_mut().bench.tick();
        harness.run();
        assert!(harness.query_by_label("43").is_some());
        assert!(harness.query_by_label(&strike).is_none());
    }
}

/// What the learner has passed and tried stands in the list of jobs, with who is working.
#[test]
fn the_start_screen_tells_what_was_done_and_by_whom() {
    let jobs = LibraryJobs::new(None, None).expect("the built-in jobs are sound");
    for language in Language::ALL {
        let mut learner = LearnerRes::default();
        for (offer, kept) in [(0, 1.0), (1, 0.2)] {
            learner.note(job_done(&jobs.offers()[offer].course.file, kept));
        }
        let harness = harness(fixture(language), |ui, context| {
            start::start_ui(ui, context, &mut learner, (&jobs, &mut ClassRes::default()));
        });
        let texts = Texts::load(language);
        let guest = Value::from(texts.get("practice-guest"));
        assert!(
            harness
                .query_by_label(&texts.with("start-who", &[("name", guest)]))
                .is_some()
        );
        for key in ["start-passed", "start-tried"] {
            assert_eq!(
                harness.query_all_by_label(&texts.get(key)).count(),
                1,
                "{key}"
            );
        }
        // Beside them the best score in points.
        for best in ["100", "20"] {
            assert_eq!(harness.query_all_by_label(best).count(), 1, "{best}");
        }
    }
}

/// What was done leaves the titles their room.
#[test]
fn a_job_that_was_done_has_a_row_as_high_as_before() {
    let jobs = LibraryJobs::new(None, None).expect("the built-in jobs are sound");
    for language in Language::ALL {
        let heights = |kept: Option<f64>| -> Vec<f32> {
            let mut learner = LearnerRes::default();
            for offer in jobs.offers() {
                if let Some(kept) = kept {
                    learner.note(job_done(&offer.course.file, kept));
                }
            }
            // As wide as the smallest window.
            let shown = harness_of([800.0, 8000.0], fixture(language), |ui, context| {
                start::start_ui(ui, context, &mut learner, (&jobs, &mut ClassRes::default()));
            });
            let titles = (jobs.offers().iter()).map(|offer| say(language, &offer.title));
            let rows = titles.map(|title| shown.get_by_role_and_label(Role::RadioButton, title));
            rows.map(|row| row.rect().height()).collect()
        };
        let before = heights(None);
        assert_eq!(heights(Some(1.0)), before);
        assert_eq!(heights(Some(0.25)), before);
    }
}

fn job_done(file: &str, kept: f64) -> Answer {
    let file = file.to_owned();
    Answer {
        at: Moment(7),
        skill: Skill::EntryTiming,
        right: kept > 0.7,
        took_s: 60.0,
        detail: Detail::Job { file, kept },
    }
}

/// A missing text shows as its key in angle quotes.
#[track_caller]
fn nothing_missing(harness: &Harness<'_, Fixture>, panel: &str) {
    let missing: Vec<String> = harness
        .query_all_by(|node| {
            let says = |text: Option<String>| text.is_some_and(|t| t.contains('‹'));
            says(node.label()) || says(node.value())
        })
        .map(|node| format!("{node:?}"))
        .collect();
    assert!(missing.is_empty(), "{panel}: {missing:#?}");
}

#[test]
fn the_start_screen_offers_every_job() {
    let harness = harness(fixture(Language::En), |ui, context| {
        start::start_ui(
            ui,
            context,
            &mut LearnerRes::default(),
            (&DemoJobs::default(), &mut ClassRes::default()),
        );
    });
    harness.get_by_role_and_label(egui::accesskit::Role::RadioButton, "The tub stays full");
    harness.get_by_label("Begin the job");
}

/// On a new computer: the language, a name, and one button.
#[test]
fn whoever_comes_first_gives_a_name_and_begins() {
    for language in Language::ALL {
        let folder = tempfile::tempdir().expect("a temporary folder");
        let store = ProfileFolder::new(folder.path().to_owned());
        let mut learner = LearnerRes::kept_in(Box::new(store.clone()), None);
        learner.ui_state.name = "Inés".to_owned();
        let texts = Texts::load(language);
        let jobs = LibraryJobs::new(None, None).expect("the built-in jobs are sound");
        let mut harness = harness(fixture(language), |ui, context| {
            start::start_ui(ui, context, &mut learner, (&jobs, &mut ClassRes::default()));
        });
        harness.get_by_label(&texts.get("start-name"));
        for key in ["start-begin", "start-practice", "start-examination"] {
            assert!(harness.query_by_label(&texts.get(key)).is_none(), "{key}");
        }
        nothing_missing(&harness, "first start");
        harness.get_by_label(&texts.get("start-first")).click();
        harness.run_steps(2);
        assert!(harness.state().ui_state.opening.is_some());
        assert_eq!(
            harness.state().ui_state.guidance,
            Guidance::EveryStep,
            "with every step"
        );
        drop(harness);
        assert_eq!(learner.name(), Some("Inés"));

        // Whoever looks for something else finds it behind one button.
        let empty = tempfile::tempdir().expect("a temporary folder");
        let store = ProfileFolder::new(empty.path().to_owned());
        let mut guest = LearnerRes::kept_in(Box::new(store), None);
        let mut harness = self::harness(fixture(language), |ui, context| {
            start::start_ui(ui, context, &mut guest, (&jobs, &mut ClassRes::default()));
        });
        harness.get_by_label(&texts.get("start-everything")).click();
        harness.run_steps(2);
        harness.get_by_label(&texts.get("start-begin"));
    }
}

fn open(jobs: &LibraryJobs, offer: usize, seed: u64) -> Box<dyn BenchPort> {
    let opened = without_breaks(jobs.open(offer, seed));
    opened.unwrap_or_else(|error| panic!("{error:?}"))
}

/// The real jobs, with attempts kept in `folder`.
fn library_jobs(folder: &std::path::Path) -> LibraryJobs {
    let attempts = Arc::new(Folder::new(folder.join("attempts")));
    LibraryJobs::new(None, Some(attempts)).expect("the built-in jobs are sound")
}

fn names(jobs: &LibraryJobs) -> Vec<String> {
    jobs.attempts().expect("they are kept").names()
}

/// The start screen.
fn start_screen(jobs: &LibraryJobs) -> Harness<'_, Fixture> {
    harness(fixture(Language::En), |ui, context| {
        start::start_ui(
            ui,
            context,
            &mut LearnerRes::default(),
            (jobs, &mut ClassRes::default()),
        );
    })
}

/// Three lines that say what went wrong push no button out of the window.
#[test]
fn a_job_can_be_begun_below_a_message_in_a_low_window() {
    const SIZE: [f32; 2] = [1280.0, 720.0];
    let jobs = LibraryJobs::new(None, None).expect("the built-in jobs are sound");
    for language in Language::ALL {
        let mut fixture = fixture(language);
        fixture.ui_state.everything = true;
        fixture.ui_state.message = Some(("what went wrong ".repeat(9), 0.0));
        let begin = fixture.texts.get("start-begin");
        let about = fixture.texts.get("start-about");
        let harness = harness_of(SIZE, fixture, |ui, context| {
            start::start_ui(
                ui,
                context,
                &mut LearnerRes::default(),
                (&jobs, &mut ClassRes::default()),
            );
        });
        let (begin, about) = (harness.get_by_label(&begin), harness.get_by_label(&about));
        assert!(begin.rect().bottom() <= about.rect().top(), "{language:?}");
        assert!(about.rect().bottom() <= SIZE[1], "{language:?}");
    }
}

#[test]
fn an_attempt_that_was_broken_off_goes_on_where_it_was() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let jobs = library_jobs(folder.path());
    let mut bench = open(&jobs, 0, 5);
    assert!(names(&jobs).is_empty(), "only looked at");
    bench.act(Action::Unplug).expect("plugged in");
    (0..300).for_each(|_| bench.step());
    bench.act(Action::OpenLid).expect("not locked");
    let before = bench.view().machine.time_s;
    drop(bench);

    let mut harness = start_screen(&jobs);
    harness.get_by_label("Continue where you left off").click();
    harness.run_steps(2);
    harness.get_by_label("Setting up the machine…");
    let mut opening = harness.state_mut().ui_state.opening.take();
    opening.as_mut().expect("something is opened").wait();
    let Some(Background::Done(Ok(mut bench))) = opening else {
        panic!("the attempt is sound");
    };
    let view = bench.view();
    assert!(!view.machine.plugged && view.machine.lid_open);
    assert!((view.machine.time_s - before).abs() < 0.011);
    bench.act(Action::CloseLid).expect("it is open");
    let report = Report {
        causes: Vec::new(),
        part: None,
        proof: Vec::new(),
        looks: Vec::new(),
        advice: Advice::None,
        verdict: Verdict::NothingWrong,
    };
    bench.act(Action::Report(report)).expect("submitted");
    let score = bench.score().expect("a score").total();

    let names = names(&jobs);
    assert_eq!(names.len(), 1, "{names:?}");
    let kept = jobs.kept(&names[0]).expect("finished and sound");
    assert_eq!((kept.actions, kept.finished), (4, true));
    let again = without_breaks(jobs.resume(&names[0]));
    let again = again.unwrap_or_else(|error| panic!("{error:?}"));
    assert_eq!(again.score().map(|s| s.total()), Some(score));
}

/// The belt is named and not replaced: the customer calls, and the button leads back to the same machine.
#[test]
fn the_customer_who_called_back_is_visited_again_and_the_visit_is_kept() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let jobs = library_jobs(folder.path());
    let mut bench = open(&jobs, 0, 101);
    bench.act(Action::Unplug).expect("plugged in");
    let report = Report {
        causes: vec!["belt.broken".to_owned()],
        part: None,
        proof: Vec::new(),
        looks: Vec::new(),
        advice: Advice::None,
        verdict: Verdict::CausesNamed,
    };
    bench.act(Action::Report(report)).expect("submitted");
    let first = names(&jobs);
    let fixture = fixture_of(BenchRes::new(bench), Language::En);
    let mut harness = harness_of([430.0, 2400.0], fixture, score::score_ui);
    harness.get_by_label_contains("labor under your warranty is free");
    harness.get_by_label("Go back to the machine").click();
    harness.run_steps(2);
    let mut opening = harness.state_mut().ui_state.opening.take();
    opening.as_mut().expect("something is opened").wait();
    let Some(Background::Done(Ok(mut second))) = opening else {
        panic!("the customer has called");
    };
    let call = harness.state().bench.call_back().flatten();
    let call = call.expect("it is known by now");
    assert!(second.job().guide.is_none() && second.second_visit(call).is_none());
    let view = second.view();
    assert!(view.machine.plugged && !view.finished);
    assert!(second.job().hints_allowed && !second.job().hints_at_hand);
    assert_eq!(names(&jobs), first, "only looked at");
    second.act(Action::Unplug).expect("plugged in");

    let kept: Vec<String> = (names(&jobs).into_iter())
        .filter(|name| !first.contains(name))
        .collect();
    assert_eq!(kept.len(), 1, "{kept:?}");
    let listed = jobs.kept(&kept[0]).expect("sound");
    assert!(listed.second_visit && !listed.finished);
    let again = without_breaks(jobs.resume(&kept[0]));
    let again = again.unwrap_or_else(|error| panic!("{error:?}"));
    assert!(again.job().called_back.is_some() && again.job().guide.is_none());

    let shown = fixture_of(BenchRes::new(again), Language::En);
    let ticket = harness_of([430.0, 1400.0], shown, |ui, context| {
        ticket(ui, context, &jobs)
    });
    ticket.get_by_label_contains("Second visit");
    // What could only be looked for in vain is not offered.
    let texts = Texts::load(Language::En);
    ticket.get_by_label(&texts.get("hint-none-second-visit"));
    for key in ["hint", "hint-look", "hint-look-again"] {
        assert!(ticket.query_by_label(&texts.get(key)).is_none(), "{key}");
    }
    ticket.get_by_label_contains("Cause reported: Drive belt broken");
}

#[test]
fn attempts_that_cannot_be_used_say_so_and_can_be_deleted() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let jobs = library_jobs(folder.path());
    let attempts = folder.path().join("attempts");
    let mut bench = open(&jobs, 0, 5);
    bench.act(Action::Unplug).expect("plugged in");
    drop(bench);
    let sound = names(&jobs).remove(0);
    let text = std::fs::read_to_string(attempts.join(&sound)).expect("kept");
    std::fs::remove_file(attempts.join(&sound)).expect("kept");
    let cases = [
        (
            "newer-1.attempt.part",
            text.replacen("format:2", "format:99", 1),
        ),
        ("damaged-1.attempt.part", text.replace("Unplug", "Unplgu")),
        ("foreign-1.attempt", "a letter to my aunt\n".to_owned()),
    ];
    assert!(cases.iter().all(|(_, changed)| *changed != text), "{text}");
    for (name, changed) in &cases {
        std::fs::write(attempts.join(name), changed).expect("the folder can be written");
    }

    let mut harness = start_screen(&jobs);
    harness.get_by_label("My attempts (3)").click();
    harness.run_steps(2);
    for words in [
        "made by a newer Detent",
        "is damaged",
        "is not a Detent attempt",
    ] {
        harness.get_by_label_contains(words);
    }
    assert!(harness.query_by_label("Continue").is_none());
    for left in [2, 1, 0] {
        let delete = harness.get_all_by_label("Delete").next();
        delete.expect("one is left").click();
        harness.run_steps(2);
        harness.get_by_label("Delete permanently?").click();
        harness.run_steps(2);
        let there = std::fs::read_dir(&attempts).expect("the folder").count();
        assert_eq!(there, left);
    }
    harness.get_by_label_contains("Nothing here yet");
}

#[test]
fn every_sign_that_the_panels_draw_is_in_the_fonts() {
    let harness = harness(fixture(Language::En), ticket::ticket_ui);
    let font = egui::FontId::proportional(16.0);
    for sign in ['⏺', '○', '×', '−', 'Ω', 'µ', '·', '“', '”', '…', '–'] {
        let there = harness.ctx.fonts_mut(|fonts| fonts.has_glyph(&font, sign));
        assert!(there, "{sign}");
    }
}

/// From the start screen into the guide, closed and opened again, and through it by "Show me" alone.
#[test]
fn a_guide_leads_through_a_whole_job_and_shows_how() {
    let jobs = LibraryJobs::new(None, None).expect("the built-in jobs are sound");
    let mut harness = start_screen(&jobs);
    let begin = harness.get_by_label("Begin: a first job with a guide");
    begin.click();
    harness.run_steps(2);
    let guidance = harness.state().ui_state.guidance;
    assert_eq!(guidance, Guidance::EveryStep);
    let mut opening = harness.state_mut().ui_state.opening.take();
    opening.as_mut().expect("something is opened").wait();
    let Some(Background::Done(Ok(bench))) = opening else {
        panic!("the first job can be set up");
    };
    drop(bench);
    for language in Language::ALL {
        is_led_through(&jobs, language);
    }
}

/// The first job by "Show me" alone, in a ticket as wide as it is.
#[track_caller]
fn is_led_through(jobs: &LibraryJobs, language: Language) {
    const ROOM: f32 = 272.0 - 20.0;
    let bench = open(jobs, 0, 101);
    let steps = bench.job().guide.as_ref().map_or(0, |g| g.steps.len());
    assert!(steps > 10);
    let title = say(language, &bench.job().title).to_owned();
    let texts = Texts::load(language);
    let fixture = fixture_of(BenchRes::new(bench), language);
    let mut harness = harness_of([ROOM, 1400.0], fixture, |ui, context| {
        guide::guide_ui(ui, context);
        ticket::ticket_ui(ui, context);
    });
    let show = texts.get("guide-show");
    let mut places = Vec::new();
    assert!(harness.query_by_label(&show).is_none());
    harness.get_by_label(&texts.get("guide-open")).click();
    harness.run_steps(2);
    for step in 1..=steps {
        let args = [
            ("step", Value::from(step as u64)),
            ("steps", Value::from(steps as u64)),
        ];
        harness.get_by_label(&texts.with("guide-step", &args));
        let too_wide = harness.query_all_by(|node| {
            let place = node.raw_bounds();
            place.is_some_and(|place| place.x1 > f64::from(ROOM) + 0.5)
        });
        assert_eq!(too_wide.count(), 0, "{language:?}, step {step}");
        let below = harness.get_by_label(&title).rect();
        places.push((harness.get_by_label(&show).rect(), below));
        harness.get_by_label(&show).click();
        harness.run_steps(2);
        for _ in 0..600 {
            if harness.state().ui_state.showing.is_empty() {
                break;
            }
            harness.step();
        }
        harness.run_steps(2);
        assert_eq!(harness.state().ui_state.message, None);
    }
    // However long the text is, its button and what stands below it stay under the pointer.
    assert!(places.iter().all(|place| *place == places[0]), "{places:?}");
    harness.get_by_label(&texts.get("guide-done"));
    // The same job comes again with half of its steps left open.
    let again = texts.get("guide-again-half");
    harness.get_by_label(&again).click();
    harness.run_steps(2);
    let ui_state = &harness.state().ui_state;
    assert_eq!(ui_state.guidance, Guidance::EveryOther);
    let file = harness.state().bench.job().file.clone();
    assert_eq!(ui_state.onward, Some(Onward::Exercise(Exercise::Job(file))));
    let score = harness.state().bench.score().expect("handed in").total();
    assert!(score >= 90.0, "{score}");
}

/// The guide on the left and the open tab on the right, low as on a small screen.
fn guide_and_tabs(ui: &mut Ui, context: &mut PanelContext) {
    let left = fixed(egui::Panel::left("ticket"), 280.0, (10, 2));
    left.show(ui, |ui| guide::guide_ui(ui, context));
    tabs(ui, context);
}

/// The first job on a low screen, the guide before the step of this goal, with this tab open.
fn guided_to(goal: &Goal, tab: Tab) -> Harness<'static, Fixture> {
    let jobs = LibraryJobs::new(None, None).expect("the built-in jobs are sound");
    let mut fixture = fixture_of(BenchRes::new(open(&jobs, 0, 101)), Language::En);
    let guide = fixture.bench.job().guide.clone().expect("it has a guide");
    let until = guide.steps.iter().position(|step| step.goal == *goal);
    let before = &guide.steps[..until.expect("a step of the guide")];
    for line in before.iter().flat_map(|step| &step.shown) {
        fixture.bench.run(line).expect("a person can do this");
    }
    fixture.bench.refresh();
    fixture.ui_state.looks_seen = fixture.bench.view().log.found().len();
    fixture.ui_state.guidance = Guidance::EveryStep;
    let mut harness = harness_of(LOW, fixture, guide_and_tabs);
    harness.state_mut().ui_state.tab = tab;
    harness.run_steps(60);
    harness
}

/// Size of that screen, logical pixels.
const LOW: [f32; 2] = [692.0, 420.0];

/// Whether a ring of the guide's light is drawn round this.
fn is_ringed(harness: &Harness<'_, Fixture>, place: egui::Rect) -> bool {
    harness
        .output()
        .shapes
        .iter()
        .any(|clipped| match &clipped.shape {
            egui::Shape::Rect(ring) => {
                ring.stroke == egui::Stroke::new(2.0, crate::tokens::SKY) && ring.rect == place
            }
            _ => false,
        })
}

/// The tab that leads there is marked until it is open. Then the control is brought into sight once, and the page is the
/// person's own.
#[test]
fn the_guide_s_light_is_in_sight() {
    let tried = Goal::Bench(BenchGoal::Did(Action::TestMeter));
    let mut harness = guided_to(&tried, Tab::Sheet);
    let tab = |harness: &Harness<'_, Fixture>, name: &str| {
        harness.get_by_role_and_label(Role::Button, name).rect()
    };
    let meter = tab(&harness, "Meter");
    assert!(is_ringed(&harness, meter));
    harness.get_by_role_and_label(Role::Button, "Meter").click();
    harness.run_steps(60);
    assert!(!is_ringed(&harness, tab(&harness, "Meter")));
    let control = |harness: &Harness<'_, Fixture>| {
        let label = "Check the meter on a proving unit";
        harness.get_by_label(label).rect()
    };
    let seen = control(&harness);
    assert!(is_ringed(&harness, seen));
    assert!(
        seen.top() > meter.bottom() && seen.bottom() <= LOW[1],
        "{seen:?}"
    );
    // Whoever scrolls away is not brought back.
    harness.event(egui::Event::PointerMoved(egui::pos2(500.0, 300.0)));
    harness.event(egui::Event::MouseWheel {
        unit: egui::MouseWheelUnit::Point,
        delta: egui::vec2(0.0, 4000.0),
        phase: egui::TouchPhase::Move,
        modifiers: egui::Modifiers::NONE,
    });
    harness.run_steps(60);
    let left = control(&harness);
    assert!(left.top() > LOW[1], "{left:?}");
    harness.run_steps(60);
    assert_eq!(control(&harness), left);
}

/// The list to inspect from lies at the foot of its tab, and what was found is told below it.
#[test]
fn the_guide_leads_to_the_list_of_parts_and_the_finding_is_in_sight() {
    let inspected = Goal::Bench(BenchGoal::Did(Action::Inspect(Part::Belt)));
    let mut harness = guided_to(&inspected, Tab::Meter);
    let within = |place: egui::Rect| place.top() > 40.0 && place.bottom() <= LOW[1];
    let list = harness.get_by_label("Look, feel, turn by hand");
    assert!(within(list.rect()), "{:?}", list.rect());
    assert!(is_ringed(&harness, list.rect()));
    list.click();
    harness.run_steps(60);
    let list = harness.get_by_label("Look, feel, turn by hand").rect();
    assert!(!is_ringed(&harness, list), "it is open");
    let belt = harness.get_all_by_label("Drive belt").next();
    let belt = belt.expect("in the list").rect();
    assert!(within(belt) && is_ringed(&harness, belt), "{belt:?}");
    let fixture = harness.state_mut();
    let look = ScriptStep::Do(Action::Inspect(Part::Belt));
    fixture
        .bench
        .run(&look)
        .expect("the circuit was proved dead");
    fixture.bench.refresh();
    harness.run_steps(60);
    let texts = Texts::load(Language::En);
    let found = harness.state().bench.view().log.found().last().cloned();
    let finding = found.expect("it was looked at").findings[0];
    let finding = texts.get(&format!("finding-{finding}"));
    let told = harness.get_by_label(&finding).rect();
    assert!(within(told), "{told:?}");
}

/// A step that was left open tells its number and nothing else until it is asked; what leads astray is told all the same.
#[test]
fn a_step_that_is_left_open_is_told_on_request() {
    for language in Language::ALL {
        let jobs = LibraryJobs::new(None, None).expect("the built-in jobs are sound");
        let texts = Texts::load(language);
        let mut fixture = fixture_of(BenchRes::new(open(&jobs, 0, 101)), language);
        fixture.ui_state.guidance = Guidance::EveryOther;
        let guide = fixture.bench.job().guide.clone().expect("it has a guide");
        // The first steps are about the window's own controls.
        let unplug = |goal: &Goal| *goal == Goal::Bench(BenchGoal::Did(Action::Unplug));
        let first = guide.steps.iter().position(|step| unplug(&step.goal));
        let rest = first.expect("the job begins with the plug") + 1;
        let said = |step: usize| say(language, &guide.steps[step].say);
        let mut harness = harness(fixture, guide::guide_ui);
        let your_turn = texts.get("guide-your-turn");
        assert!(harness.query_by_label(said(0)).is_some());
        assert!(harness.query_by_label(&your_turn).is_none());
        for step in [Action::Unplug, Action::Plug] {
            harness
                .state_mut()
                .bench
                .run(&ScriptStep::Do(step))
                .expect("it can be done");
        }
        harness.run_steps(2);
        assert!(harness.query_by_label(said(rest)).is_none());
        assert!(harness.query_by_label(&your_turn).is_some());
        let astray = say(language, &guide.steps[rest].astray[0].say);
        assert!(harness.query_by_label(astray).is_some());
        harness.get_by_label(&texts.get("guide-tell")).click();
        harness.run_steps(2);
        assert!(harness.query_by_label(said(rest)).is_some());
    }
}

/// A shock stops everything until it was read; what was merely risky does not.
#[test]
fn a_shock_is_felt_and_nothing_goes_on_until_it_was_read() {
    let jobs = LibraryJobs::new(None, None).expect("the built-in jobs are sound");
    let mut bench = BenchRes::new(open(&jobs, 0, 101));
    let dares = |bench: &mut BenchRes, action: Action| {
        bench.push(action);
        bench.tick();
        assert!(bench.asked.is_some(), "cautioned before");
        bench.go_on();
        bench.tick();
    };
    dares(&mut bench, Action::OpenCabinet);
    assert_eq!(bench.incident, None, "opened live, and nobody hurt");
    dares(&mut bench, Action::Inspect(Part::Motor));
    assert_eq!(bench.incident, Some(Incident::Shock));
    assert!(!bench.runs(1));
    let time_s = bench.view().machine.time_s;
    bench.tick();
    assert_eq!(bench.view().machine.time_s, time_s, "the clock stands");

    let fixture = fixture_of(bench, Language::En);
    let mut harness = harness(fixture, |ui, context| {
        incident::incident_ui(ui.ctx(), context);
    });
    harness.get_by_label("Electric shock");
    harness.get_by_label_contains("Unplug the machine, keep the plug under your control");
    harness.get_by_label("Continue").click();
    harness.run_steps(2);
    let bench = &harness.state().bench;
    assert!(bench.incident.is_none() && bench.runs(1));
}

/// The causes of a report are found by a search, and stand under the component that fails.
#[test]
fn causes_are_searched_and_stand_by_component() {
    let mut harness = harness(fixture(Language::En), report::report_ui);
    harness.get_by_label("Drain hose blocked");
    harness.state_mut().ui_state.cause_search = "ROTOR".to_owned();
    harness.run_steps(3);
    harness.get_by_label("Drain pump: rotor seized");
    assert!(harness.query_by_label("Drain hose blocked").is_none());
    let components = harness.query_all_by_label("Drain pump").count();
    assert!(components >= 1, "the component stands above its causes");
    harness.state_mut().ui_state.cause_search = "no such thing".to_owned();
    harness.run_steps(3);
    harness.get_by_label("No cause of that name.");
}

/// What was fitted need not be looked for again.
#[test]
fn the_part_that_was_fitted_is_chosen_in_the_report() {
    let mut fixture = fixture(Language::En);
    let number = fixture.bench.job().parts[0].number.clone();
    fixture.bench.push(Action::Order(number.clone()));
    fixture.bench.push(Action::Fit(number.clone()));
    fixture.bench.tick();
    let held = fixture.bench.view().parts.iter().rev().find(|p| p.fitted);
    let fitted = held.expect("a part is fitted").number.clone();
    let harness = harness(fixture, report::report_ui);
    assert_eq!(harness.state().ui_state.draft.part, Some(Some(fitted)));
}

/// The index of codes leads to one, and a search leaves those that say it.
#[test]
fn codes_have_a_search_and_an_index() {
    let mut fixture = fixture(Language::En);
    (fixture.ui_state.tab, fixture.ui_state.page) = (Tab::Sheet, Page::Codes);
    let codes: Vec<u8> = fixture
        .bench
        .job()
        .board
        .codes
        .iter()
        .map(|c| c.code)
        .collect();
    let highest = *codes.iter().max().expect("a board has codes");
    let mut harness = harness_of([392.0, 500.0], fixture, tabs);
    let index = format!("{highest:02}");
    let button = |harness: &Harness<'_, Fixture>| {
        let place = harness.get_by_role_and_label(Role::Button, &index).rect();
        assert!(
            place.bottom() < 250.0,
            "the index stays above the page: {place:?}"
        );
        place
    };
    let before = button(&harness);
    harness.get_by_role_and_label(Role::Button, &index).click();
    harness.run_steps(30);
    assert_eq!(button(&harness), before);
    // The entry has come under the index.
    let label = harness.get_by_role_and_label(Role::Label, &index).rect();
    assert!(
        label.top() > before.bottom() && label.bottom() < 500.0,
        "{label:?}"
    );
    let monitor = {
        let code = (harness.state().bench.job().board.codes.iter()).find(|c| c.code == highest);
        harness
            .state()
            .texts
            .get(&format!("monitor-{}", code.expect("there").monitor))
    };
    harness.state_mut().ui_state.code_search = monitor.to_uppercase();
    harness.run_steps(5);
    harness.get_by_label(&monitor);
    let shown = (codes.iter()).filter(|code| {
        harness
            .query_by_role_and_label(Role::Label, &format!("{code:02}"))
            .is_some()
    });
    assert_eq!(shown.count(), 1);
}

/// Nothing moves under the pointer: whatever can be done now, buttons stay where they are.
#[test]
fn the_buttons_of_the_hands_keep_their_places() {
    let places = |fixture: Fixture| {
        let harness = harness_of([272.0, 1400.0], fixture, ticket::ticket_ui);
        let labels = ["Discharge capacitor (D)", "Check for leaks", "10 s"];
        labels.map(|label| harness.get_by_label(label).rect())
    };
    let closed = places(fixture(Language::En));
    let mut open = fixture(Language::En);
    let action = if open.bench.view().cabinet_open {
        Action::CloseCabinet
    } else {
        Action::OpenCabinet
    };
    open.bench.push(action);
    open.bench.tick();
    assert_eq!(places(open), closed);
    let mut waiting = fixture(Language::En);
    waiting.bench.wait_ticks = 100;
    assert_eq!(places(waiting), closed);
}

/// A pin under a probe is as wide as before: the next one stays under the pointer.
#[test]
fn a_chosen_pin_keeps_its_width() {
    let mut fixture = fixture(Language::En);
    fixture.ui_state.pin_group = PinGroup::Plug;
    (fixture.ui_state.red, fixture.ui_state.black) = (None, None);
    let pin = fixture.texts.pin(&fixture.bench.job().board, Pin::PlugLine);
    let mut harness = harness(fixture, meter::meter_ui);
    let width = |harness: &Harness<'_, Fixture>| {
        let button = harness.get_by_role_and_label(Role::Button, &pin);
        button.rect().width()
    };
    let before = width(&harness);
    harness.get_by_role_and_label(Role::Button, &pin).click();
    harness.run_steps(3);
    assert_eq!(harness.state().ui_state.red, Some(Pin::PlugLine));
    assert_eq!(width(&harness), before);
}

/// A deed is done while the clock is paused; the console is not worked, and that is said.
#[test]
fn nothing_queues_while_the_clock_is_paused() {
    let mut fixture = fixture(Language::En);
    let plugged = fixture.bench.view().machine.plugged;
    let deed = if plugged {
        Action::Unplug
    } else {
        Action::Plug
    };
    fixture.bench.push(Action::Down(Button::Start));
    fixture.bench.push(deed);
    fixture.bench.do_while_paused();
    assert!(fixture.bench.queue.is_empty());
    assert!(fixture.bench.refused_while_paused);
    assert_ne!(fixture.bench.view().machine.plugged, plugged);
}

fn examined(job: &str, sheet: &[Page]) -> Option<Examined> {
    Some(Examined {
        job: job.to_owned(),
        until: Moment(now().0 + 600),
        sheet: sheet.to_vec(),
    })
}

/// Under examination neither a score nor a trace of the tries is shown, a guide and hints stay away, and pages of
/// the sheet that are not allowed are not there.
#[test]
fn an_examination_tells_nothing_before_it_is_closed() {
    let mut fixture = fixture(Language::En);
    let job = fixture.bench.job().file.clone();
    fixture.ui_state.examined = examined(&job, &[Page::Codes]);
    fixture.ui_state.tab = Tab::Score;
    let mut harness = harness_of([392.0, 900.0], fixture, tabs);
    harness.get_by_label_contains("no score");
    assert!(harness.query_by_label_contains("of 100").is_none());
    harness.get_by_label("Back to the examination").click();
    harness.run_steps(2);
    assert!(harness.state().ui_state.examine);
    let ui_state = &mut harness.state_mut().ui_state;
    (ui_state.tab, ui_state.page) = (Tab::Sheet, Page::Entry);
    harness.run_steps(3);
    harness.get_by_label("This page of the service sheet is not allowed in this examination.");
    harness.state_mut().ui_state.page = Page::Codes;
    harness.run_steps(3);
    assert!(harness.query_by_label_contains("not allowed").is_none());
}

/// The examination screen with what it needs, and where it led.
struct Sat {
    fixture: Fixture,
    learner: LearnerRes,
    jobs: LibraryJobs,
    to: Option<Screen>,
}

/// The examination screen where no attempts are kept.
fn examination_harness(fixture: Fixture, learner: LearnerRes) -> Harness<'static, Sat> {
    let sat = Sat {
        fixture,
        learner,
        jobs: LibraryJobs::new(None, None).expect("sound jobs"),
        to: None,
    };
    let size = [900.0, 1400.0];
    Harness::builder().with_size(size).build_ui_state(
        |ui, sat: &mut Sat| {
            kit::apply_theme(ui.ctx());
            let mut context = sat.fixture.context();
            let to = examination::examination_ui(ui, &mut context, &mut sat.learner, &sat.jobs);
            sat.to = sat.to.or(to);
        },
        sat,
    )
}

/// A sitting from its beginning to its result: jobs begin once, the score shows only when the set is closed, and
/// answers count only then.
#[test]
fn an_examination_is_sat_and_closed() {
    let mut harness = examination_harness(fixture(Language::En), LearnerRes::default());
    harness.run_steps(2);
    let (_, set): &(String, Examination) = (harness.state().jobs.examinations().iter())
        .find(|(file, _)| file == "first-examination")
        .expect("it is built in");
    let jobs = set.jobs.clone();
    harness.get_by_label("Take “First examination”").click();
    harness.run_steps(2);
    harness.get_by_label_contains(" left");
    harness
        .get_all_by_label("Begin this job")
        .next()
        .expect("two jobs")
        .click();
    harness.run_steps(1);
    let at = harness.state().fixture.ui_state.examined.clone();
    assert_eq!(at.map(|at| at.job), Some(jobs[0].clone()));
    assert!(harness.state().fixture.ui_state.opening.is_some());
    harness.state_mut().fixture.ui_state.opening = None;
    let score = Score {
        dimensions: vec![detent_training::lesson::DimensionScore {
            dimension: detent_training::lesson::Dimension::Reading,
            of: 100.0,
            kept: 90.0,
            lost: Vec::new(),
        }],
    };
    let first = jobs[0].clone();
    let learner = &mut harness.state_mut().learner;
    assert!(learner.in_sitting(|sitting| {
        sitting.hand_in(&first, &score, now(), 60.0)?;
        Ok(true)
    }));
    assert!(
        learner.answers().is_empty(),
        "nothing counts before the end"
    );
    harness.run_steps(2);
    harness.get_by_label("Handed in.");
    assert!(harness.query_by_label_contains("90").is_none());
    harness.get_by_label("Close the examination").click();
    harness.run_steps(2);
    harness.get_by_label_contains("One job is not handed in");
    harness.get_by_label("Close it for good").click();
    harness.run_steps(2);
    harness.get_by_label_contains("90 of 100 points, passed");
    harness.get_by_label_contains("not handed in");
    assert!(!harness.state().learner.answers().is_empty());
    assert!(harness.state().learner.sitting().is_none());
}

/// A guest's bench keeps nothing: a job that was worked on can be gone on with while it lies there, and has no second
/// bench.
#[test]
fn a_job_that_is_kept_nowhere_has_no_second_bench() {
    let mut fixture = fixture(Language::En);
    let job = Arc::clone(fixture.bench.job());
    let mut learner = LearnerRes::default();
    learner.sit(
        &job.file,
        &Examination::of_job(job.title.clone(), job.file.clone()),
    );
    assert!(learner.in_sitting(|sitting| {
        sitting.begin_job(&job.file, false, now())?;
        sitting.note_work(&job.file, None, now())
    }));
    fixture.ui_state.examined = examined(&job.file, &[]);
    let mut harness = examination_harness(fixture, learner);
    harness.run_steps(2);
    harness.get_by_label_contains("Attempts are not kept here.");
    harness.get_by_label_contains("Begun, and kept nowhere");
    harness.get_by_label("Resume this job").click();
    harness.run_steps(2);
    assert_eq!(harness.state().to, Some(Screen::Bench));
    assert!(harness.state().fixture.ui_state.opening.is_none());
    // Another bench has taken its place, or the program was ended.
    harness.state_mut().fixture.ui_state.examined = None;
    harness.run_steps(2);
    harness.get_by_label("Broken off. This try is over and counts for nothing.");
    assert!(harness.query_by_label("Resume this job").is_none());
    assert!(harness.query_by_label("Begin this job").is_none());
    harness.state_mut().learner.close_sitting();
    harness.run_steps(2);
    harness.get_by_label_contains("broken off, counts for nothing");
}

#[test]
fn arrow_keys_leave_the_focus_where_it_is() {
    let mut harness = Harness::new_ui(|ui| {
        kit::wide(ui, "one");
        kit::wide(ui, "two");
        super::keep_focus(ui.ctx());
    });
    for key in [egui::Key::Tab, egui::Key::ArrowDown, egui::Key::ArrowRight] {
        harness.key_press(key);
        harness.run_steps(2);
        assert!(harness.get_by_label("one").is_focused(), "{key:?}");
    }
    harness.key_press(egui::Key::Tab);
    harness.run_steps(2);
    assert!(harness.get_by_label("two").is_focused());
}

/// What a step needs of the machine has a line round it in the scene, and nothing else there.
#[test]
fn the_guide_lights_what_it_needs_of_the_machine() {
    let at = |x| bevy::math::Vec2::new(x, 300.0);
    let ring = |pick, x| SceneGrip {
        kind: GripKind::Pick(pick),
        outline: Outline::Ring(at(x), 40.0),
    };
    let field = |kind, x| SceneGrip {
        kind,
        outline: Outline::Corners([at(x), at(x + 10.0), at(x + 20.0), at(x + 30.0)]),
    };
    let grips = [
        ring(Pick::Knob, 100.0),
        ring(Pick::Button(Button::Start), 200.0),
        ring(Pick::Button(Button::Stop), 300.0),
        ring(Pick::Plug, 400.0),
        field(GripKind::Lamps, 500.0),
        field(GripKind::Pick(Pick::Lid), 600.0),
    ];
    for language in Language::ALL {
        for (marked, lit) in [
            (vec!["name-dial", "name-stop"], vec![100.0, 300.0]),
            (vec!["do-plug"], vec![400.0]),
            (vec!["do-unplug"], vec![400.0]),
            (vec!["sheet-lamps", "note-code-do"], vec![500.0]),
            (vec!["do-open-lid"], vec![600.0]),
            (vec!["do-close-lid"], vec![600.0]),
            (vec!["tab-meter"], vec![]),
        ] {
            let overlay = stage::ConsoleOverlay {
                lit: &[],
                print: &[],
                grips: &grips,
            };
            let mut fixture = fixture(language);
            fixture.ui_state.guidance = Guidance::EveryStep;
            let harness = harness(fixture, |ui, context| {
                let labels = marked.iter().map(|key| context.text(key)).collect();
                kit::mark(ui.ctx(), (0, 0), labels);
                let rest = ui.max_rect();
                stage::stage_ui(ui, rest, context, &Pointing::default(), &overlay, 0.0);
            });
            let lines: Vec<f32> = (harness.output().shapes.iter())
                .filter_map(|shape| match &shape.shape {
                    egui::Shape::Circle(circle) if circle.stroke.color == tokens::SKY => {
                        Some(circle.center.x)
                    }
                    egui::Shape::Path(path)
                        if path.stroke.color == ColorMode::Solid(tokens::SKY) =>
                    {
                        path.points.first().map(|point| point.x)
                    }
                    _ => None,
                })
                .collect();
            assert_eq!(lines, lit, "{marked:?}");
        }
    }
}
