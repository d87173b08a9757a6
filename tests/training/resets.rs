//! Ways out of a fault hold: what one board understands, another does not.

use crate::stage::Stage;
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

/// Opens and closes the lid so many times, one second each way.
fn move_lid(bench: &mut Bench, times: usize) {
    for _ in 0..times {
        for deed in [Action::OpenLid, Action::CloseLid] {
            bench.act(&deed).expect("the lid is free");
        }
    }
}

/// The board of this job has the reset by the lid: three times, and the control takes a program again without the plug.
/// Twice is nothing, and what was stored stays stored.
#[test]
fn a_board_with_the_reset_by_the_lid_needs_no_plug() {
    let stage = Stage::new();
    let mut bench = held(&stage, "reset-by-moving-the-lid");
    let codes = bench.machine().control().memory().codes.clone();
    assert!(!codes.is_empty());
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
