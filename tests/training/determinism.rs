//! The same machine, the same seed, the same actions: the same state, to the bit, however the time
//! is cut up, whether or not solves are left out, and on every platform and build profile.

use crate::stage::Stage;
use detent_simulation::controller::{ControlMode, Routine};
use detent_simulation::interface::{Button, Component, Connector, Direction, Pin, Side, Terminal};
use detent_simulation::plant::SolvePolicy;
use detent_simulation::units::{Span, TICKS_PER_S};
use detent_training::bench::script::{Condition, ScriptStep, entry_steps};
use detent_training::bench::{Action, Advice, Bench, Grip, MeterMode, Report, Verdict};
use detent_training::lesson::{Mains, judge, set_up, start_wash};
use detent_training::record::{Answer, AttemptLog, Footer, Header, compare, read_attempt, replay};

/// Hashes of 45 minutes of washing, one for every 1000 ticks. When a fault stops the machine, the
/// customer clears it and tries again.
fn wash_hashes(bench: &mut Bench, policy: SolvePolicy) -> Vec<String> {
    bench.machine_mut().plant_mut().set_policy(policy);
    start_wash(bench);
    let mut hashes = vec![bench.machine().state_hash()];
    while bench.now().0 < 45 * 60 * TICKS_PER_S {
        bench.wait(Span(1000));
        if bench.machine().control().control_status().mode == ControlMode::Hold {
            let again = [
                ScriptStep::Hold {
                    button: Button::Stop,
                    ms: 2500,
                },
                ScriptStep::Tap(Button::Start),
            ];
            for step in again {
                step.run(bench).expect("a button can be pressed");
            }
        }
        hashes.push(bench.machine().state_hash());
    }
    hashes
}

/// Leaving out the solves in which nothing changed, or making them all, gives the same run.
#[track_caller]
fn check_policies(mains: Mains, fault: Option<&str>) {
    let stage = Stage::new();
    let mut lazy = stage.bench(mains, fault, 5);
    let mut eager = stage.bench(mains, fault, 5);
    let a = wash_hashes(&mut lazy, SolvePolicy::OnChange);
    let b = wash_hashes(&mut eager, SolvePolicy::Always);
    let what = fault.unwrap_or("sound");
    assert!(a.len() >= 240, "{what}: only {} hashes", a.len());
    let differs = a.iter().zip(&b).position(|(a, b)| a != b);
    assert_eq!(
        differs, None,
        "{what}: first differs at {differs:?} thousand ticks"
    );
    let (few, _) = lazy.machine().plant().solves();
    let (all, _) = eager.machine().plant().solves();
    assert!(
        few * 2 < all,
        "{what}: {few} solves on change, {all} when always solving"
    );
    println!(
        "{what:<32} {few} solves on change, {all} always: same {} states",
        a.len()
    );
}

#[test]
fn leaving_solves_out_changes_nothing_in_a_sound_wash() {
    check_policies(Mains::V120Hz60, None);
}

#[test]
fn leaving_solves_out_changes_nothing_in_a_sound_wash_at_230_v() {
    check_policies(Mains::V230Hz50, None);
}

#[test]
fn leaving_solves_out_changes_nothing_with_a_loose_contact() {
    check_policies(Mains::V120Hz60, Some("harness.lock-return-loose"));
}

#[test]
fn leaving_solves_out_changes_nothing_with_a_welded_switch() {
    check_policies(Mains::V120Hz60, Some("board.cold-switch-welded"));
}

#[test]
fn leaving_solves_out_changes_nothing_with_a_shorted_winding() {
    check_policies(Mains::V120Hz60, Some("motor.shorted-turns"));
}

#[test]
fn leaving_solves_out_changes_nothing_with_a_broken_belt() {
    check_policies(Mains::V230Hz50, Some("belt.broken"));
}

/// Ten minutes of the customer's wash.
fn ten_minutes(stage: &Stage, mains: Mains, seed: u64) -> Bench {
    let mut bench = stage.bench(mains, None, seed);
    start_wash(&mut bench);
    bench.wait(Span(600 * TICKS_PER_S - bench.now().0));
    bench
}

#[test]
fn the_same_seed_gives_the_same_run_and_another_seed_another() {
    for stage in Stage::every() {
        let mains = stage.board().mains[0];
        let hash = |seed| ten_minutes(&stage, mains, seed).machine().state_hash();
        assert_eq!(hash(7), hash(7));
        assert_ne!(hash(7), hash(8));
    }
}

#[test]
fn one_long_wait_equals_many_short_ones() {
    let stage = Stage::new();
    let begin = || {
        let mut bench = stage.bench(Mains::V120Hz60, Some("harness.lock-return-loose"), 3);
        start_wash(&mut bench);
        bench
    };
    let total = Span::from_s(900);
    let mut long = begin();
    long.wait(total);
    let mut single = begin();
    for _ in 0..total.0 {
        single.step();
    }
    let mut uneven = begin();
    let (end, mut piece) = (uneven.now() + total, 1);
    while uneven.now() < end {
        uneven.wait(Span(piece.min(end.since(uneven.now()).0)));
        // A view is read between pieces: looking must change nothing.
        let _ = uneven.view();
        piece = piece * 3 % 1009 + 1;
    }
    let hash = long.machine().state_hash();
    assert_eq!(single.machine().state_hash(), hash);
    assert_eq!(uneven.machine().state_hash(), hash);
}

/// Measured on x86-64 Linux with rustc 1.95, debug and release alike. Every build on every platform
/// must give these; a change to the plant or the firmware may change them, and then they are
/// measured anew in both profiles.
#[test]
fn ten_minutes_end_in_a_known_state_on_every_platform() {
    let mut found = Vec::new();
    for stage in Stage::every() {
        for mains in &stage.board().mains {
            let bench = ten_minutes(&stage, *mains, 7);
            found.push(format!(
                "{} {mains:?} {}",
                stage.board().id,
                bench.machine().state_hash()
            ));
        }
    }
    assert_eq!(
        found,
        [
            "arc-dial V120Hz60 e78e8daa79fb1996a240ac9f5b849a4c3aa6947f4babfca8ec5d4e833a65822a",
            "arc-dial V230Hz50 44b877e83ec0d374c3c8001a9f885e27921ee61eaf5b23742f983bc649ebdd9f",
            "key-pad V230Hz50 6416aee1a53631872d5fedaa63423a3cc653766eaf6d811d794b81f05bd626d8",
            "key-pad V120Hz60 649e9ac4ecdb95b5cf220e5089a2c159970d51f1830ac9b878dfbdbaf42f9459",
            "lone-lamp V120Hz60 e05c68b38de0dc4429ca0eb33dd546dbba51b10eb85a89232cda0e5c3fbc4836",
            "lone-lamp V230Hz50 cb0dca7382eba37114e5ff5c9973d9b5ed4d5f03bf8cc268ca251603aefc0e07",
        ]
    );
}

fn probe(mode: MeterMode, red: Pin, black: Pin) -> ScriptStep {
    ScriptStep::Do(Action::Probe {
        mode,
        red,
        black,
        grip: Grip::Clips,
    })
}

/// A job from the rest without power to the report, with a failed try and a wrong part in it.
fn a_job(bench: &mut Bench) {
    let board = bench.machine().board().clone();
    let recalibrate = board.position_of(Routine::Recalibrate);
    let pickup = Pin::Wire(Terminal::PickupOut, Side::Load);
    let ground = Pin::Wire(Terminal::PickupGround, Side::Load);
    let mut steps = vec![
        ScriptStep::Do(Action::Unplug),
        ScriptStep::Wait { s: 61 },
        ScriptStep::Do(Action::Plug),
        ScriptStep::Wait { s: 3 },
        // A try that goes the wrong way.
        ScriptStep::Turn {
            way: Direction::Right,
            detents: 3,
            every_ms: 90,
        },
        ScriptStep::Wait { s: 4 },
    ];
    steps.extend(entry_steps(&board.gesture));
    steps.extend([
        ScriptStep::Point {
            to: recalibrate.expect("the board recalibrates"),
            every_ms: 200,
        },
        ScriptStep::Wait { s: 1 },
        ScriptStep::Tap(Button::Start),
        ScriptStep::Until {
            what: Condition::ServiceReady,
            limit_s: 600,
        },
        ScriptStep::Do(Action::NoteCode(56)),
        ScriptStep::Tap(Button::Stop),
        ScriptStep::Do(Action::Unplug),
        ScriptStep::Wait { s: 60 },
        ScriptStep::Do(Action::OpenCabinet),
        ScriptStep::Do(Action::Discharge),
        probe(MeterMode::VoltsDc, Pin::BulkPlus, Pin::BulkMinus),
        ScriptStep::Do(Action::Pull(Connector::Load(Component::Pickup))),
        probe(MeterMode::Ohms, pickup, ground),
        ScriptStep::Do(Action::Seat(Connector::Load(Component::Pickup))),
        ScriptStep::Do(Action::Order("P-1401".to_owned())),
        ScriptStep::Do(Action::Fit("P-1401".to_owned())),
        ScriptStep::Do(Action::CloseCabinet),
        ScriptStep::Do(Action::Plug),
        ScriptStep::Wait { s: 7 },
        ScriptStep::Do(Action::Report(Report {
            causes: vec!["pickup.no-output".to_owned()],
            part: Some("P-1401".to_owned()),
            proof: vec![0, 1],
            looks: Vec::new(),
            advice: Advice::None,
            verdict: Verdict::CausesNamed,
        })),
    ]);
    for step in &steps {
        step.run(bench).expect("the job can be done");
    }
}

#[test]
fn a_recorded_attempt_replays_to_the_same_state_and_score() {
    let stage = Stage::new();
    let scenario_source = stage
        .content_library()
        .scenario("blinking-lock-lamp")
        .expect("a built-in scenario");
    let scenario = &scenario_source.scenario;
    let library = stage.content_library().library(scenario);
    let begin = || set_up(scenario, &library, 99).expect("the scenario fits its library");

    let mut bench = begin();
    a_job(&mut bench);
    let (state, score) = (
        bench.machine().state_hash(),
        judge(scenario, &bench).total(),
    );
    assert!(
        score > 0.0 && score < judge(scenario, &bench).of(),
        "{score}"
    );
    let header = Header::new(&scenario_source.file, &scenario_source.text, 99);
    let mut log = AttemptLog::begin(Vec::new(), &header).expect("memory takes it");
    for (at, action) in bench.history().iter() {
        log.push(at, action).expect("memory takes it");
    }
    let end = |bench: &Bench| Footer::of(bench, &judge(scenario, bench));
    let footer = end(&bench);
    assert_eq!(footer.answer, Answer::Shown { score });
    let bytes = log.finish(&footer).expect("memory takes it");

    let attempt = read_attempt("job.attempt", &bytes).expect("it reads back");
    assert!(attempt.actions.len() > 30, "{}", attempt.actions.len());
    let mut again = begin();
    replay(&mut again, &attempt).expect("every action can be done again");
    assert_eq!(again.machine().state_hash(), state);
    assert_eq!(judge(scenario, &again).total().to_bits(), score.to_bits());
    compare(&attempt, &end(&again)).expect("the same end");

    // An attempt with one detent taken out is found out.
    let mut altered = attempt.clone();
    let detent = altered
        .actions
        .iter()
        .position(|t| matches!(t.action, Action::Detent(_)));
    altered.actions.remove(detent.expect("the dial was turned"));
    let mut other = begin();
    let found_out =
        replay(&mut other, &altered).is_err() || compare(&altered, &end(&other)).is_err();
    assert!(found_out);
}
