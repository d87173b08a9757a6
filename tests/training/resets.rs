//! Ways out of a fault hold: what one board understands, another does not.

use crate::stage::Stage;
use detent_content::{Language, Texts};
use detent_simulation::controller::ControlMode;
use detent_simulation::interface::Button;
use detent_simulation::units::Span;
use detent_training::bench::script::ScriptStep;
use detent_training::bench::{Action, Bench};
use detent_training::lesson::set_up;

/// The machine of a job as the customer left it: it holds its fault.
fn held(stage: &Stage, job: &str) -> Bench {
    let source = stage.content_library().scenario(job).expect("built in");
    let library = stage.content_library().library(&source.scenario);
    let bench = set_up(&source.scenario, &library, source.scenario.seed).expect("sound");
    assert_eq!(mode(&bench), ControlMode::Hold, "{job}");
    bench
}

fn mode(bench: &Bench) -> ControlMode {
    bench.machine().control().control_status().mode
}

/// The plug out until the control has forgotten what it can forget, and in again.
fn power_cut(bench: &mut Bench) {
    for step in [
        ScriptStep::PowerDown,
        ScriptStep::Do(Action::Plug),
        ScriptStep::Wait { s: 3 },
    ] {
        step.run(bench).expect("the plug is free");
    }
}

/// Opens and closes the lid so many times, one second each way.
fn move_lid(bench: &mut Bench, times: usize) {
    for _ in 0..times {
        for deed in [Action::OpenLid, Action::CloseLid] {
            bench.act(&deed).expect("the lid is free");
        }
    }
}

/// The board of this job has the reset by the lid and keeps its hold without power: the plug does nothing, three times
/// the lid does, and the control takes a program again. Twice is nothing, and what was stored stays stored.
#[test]
fn a_board_that_keeps_its_hold_wants_the_lid_and_not_the_plug() {
    let stage = Stage::new();
    let mut bench = held(&stage, "reset-by-moving-the-lid");
    let codes = bench.machine().control().memory().codes.clone();
    assert!(!codes.is_empty());
    let stops = |bench: &Bench| {
        let stops = bench.milestones().iter();
        stops.filter(|m| m.kind.stopped_by().is_some()).count()
    };
    let before = stops(&bench);
    power_cut(&mut bench);
    assert_eq!(mode(&bench), ControlMode::Hold);
    assert_eq!(stops(&bench), before, "it is still the same stop");
    move_lid(&mut bench, 2);
    assert_eq!(mode(&bench), ControlMode::Hold);
    bench.wait(Span::from_s(20));
    move_lid(&mut bench, 3);
    assert_eq!(mode(&bench), ControlMode::Idle);
    assert_eq!(bench.machine().control().memory().codes, codes);
    // And it washes again as soon as a program is started.
    let start = [ScriptStep::Tap(Button::Start), ScriptStep::Wait { s: 2 }];
    for step in start {
        step.run(&mut bench).expect("it has the button");
    }
    assert_eq!(mode(&bench), ControlMode::Program);
}

/// Once the hold is left it is gone from the memory too, and the sheet of each board says what its plug does.
#[test]
fn a_hold_that_was_left_does_not_come_back_with_the_power() {
    let stage = Stage::new();
    let mut bench = held(&stage, "reset-by-moving-the-lid");
    move_lid(&mut bench, 3);
    power_cut(&mut bench);
    assert_eq!(mode(&bench), ControlMode::Idle);
    let mut bench = held(&stage, "reset-that-this-board-lacks");
    power_cut(&mut bench);
    assert_eq!(mode(&bench), ControlMode::Idle, "this board forgets it");
    for board in &stage.content_library().boards {
        for texts in Language::ALL.map(Texts::load) {
            let ways = texts.hold_resets(&board.resets);
            let [_, _, (does, told)] = &ways;
            assert_eq!(*does, !board.resets.kept, "{}: {told}", board.id);
            assert!(!told.contains('‹'), "{told}");
            assert!(ways.iter().any(|(does, _)| *does), "{}", board.id);
        }
    }
}

/// On the board of this job the lid does nothing, however often; its button does.
#[test]
fn a_board_without_it_takes_no_notice_of_the_lid() {
    let stage = Stage::new();
    let mut bench = held(&stage, "reset-that-this-board-lacks");
    move_lid(&mut bench, 10);
    assert_eq!(mode(&bench), ControlMode::Hold);
    let button = Button::Stop;
    (ScriptStep::Hold { button, ms: 2500 })
        .run(&mut bench)
        .expect("it has the button");
    assert_eq!(mode(&bench), ControlMode::Idle);
}
