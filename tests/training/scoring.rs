//! Each rule that the report, the bill and the proof of a dead circuit are scored by: once so that it
//! takes points, once so that it does not.

use crate::stage::{Stage, act};
use detent_simulation::controller::{ControlMode, GestureStep, Outcome};
use detent_simulation::interface::{Button, Component, Connector, Pin};
use detent_simulation::plant::Param;
use detent_simulation::units::Span;
use detent_training::bench::script::{Condition, ScriptStep, entry_steps};
use detent_training::bench::{
    Action, Advice, Bench, Caution, Grip, Incident, MeterMode, Refusal, Report, TOUCH_V, Verdict,
};
use detent_training::lesson::survey::wash;
use detent_training::lesson::technician::{Persona, work};
use detent_training::lesson::{
    Course, CoursePart, Dimension, Hidden, LossKind, Mains, PASS_SHARE, Scenario, judge, set_up,
    start_wash,
};
use detent_training::reason::{ControlSuspicion, HandRecord};

const MAINS: Mains = Mains::V120Hz60;

fn scenario(stage: &Stage) -> Scenario {
    let scenario_source = stage.content_library().scenario("exam-120-v-dial");
    scenario_source.expect("a built-in scenario").scenario
}

fn report(causes: &[&str], part: Option<&str>, advice: Advice) -> Action {
    Action::Report(Report {
        causes: causes.iter().map(|id| (*id).to_owned()).collect(),
        part: part.map(str::to_owned),
        proof: Vec::new(),
        looks: Vec::new(),
        advice,
        verdict: Verdict::CausesNamed,
    })
}

/// Points that a reason took, all together; none when it was not given.
fn lost(scenario: &Scenario, bench: &Bench, dimension: Dimension, reason: LossKind) -> Option<f64> {
    let score = judge(scenario, bench);
    let losses = &score.dimensions[dimension.index()].lost;
    let points: Vec<f64> = (losses.iter())
        .filter(|loss| loss.loss.kind() == reason)
        .map(|loss| loss.points)
        .collect();
    (!points.is_empty()).then(|| points.iter().sum())
}

fn bulk() -> Action {
    Action::Probe {
        mode: MeterMode::VoltsDc,
        red: Pin::BulkPlus,
        black: Pin::BulkMinus,
        grip: Grip::Clips,
    }
}

fn pull() -> Action {
    Action::Pull(Connector::Board("X2".to_owned()))
}

fn seat() -> Action {
    Action::Seat(Connector::Board("X2".to_owned()))
}

/// What the rules about a dead circuit took after these deeds, the plug out and the panels off.
fn dead_losses(stage: &Stage, mut bench: Bench, deeds: Vec<Action>) -> Vec<LossKind> {
    act(&mut bench, [Action::Unplug, Action::OpenCabinet]);
    act(&mut bench, deeds);
    let took =
        |reason: &LossKind| lost(&scenario(stage), &bench, Dimension::Safety, *reason).is_some();
    [NOT_PROVED, UNMEASURED, METER]
        .into_iter()
        .filter(took)
        .collect()
}

const NOT_PROVED: LossKind = LossKind::NotProvedDead;
const UNMEASURED: LossKind = LossKind::DischargedUnmeasured;
const METER: LossKind = LossKind::MeterNotProved;

/// Known source, circuit, known source, hands: NFPA 70E (2021; renumbered 2024) 120.5(7) has the tester checked before
/// and after at any voltage (number from memory), 29 CFR 1910.333(b)(2)(iv)(B) above 600 V (text from a secondary source,
/// paragraph from memory), and the circuit tested in either case.
#[test]
fn a_circuit_is_dead_when_a_meter_that_works_before_and_after_says_so() {
    let stage = Stage::new();
    let fresh = || stage.called_to(MAINS, &[]);
    let test = || Action::TestMeter;
    let bleed = || Action::Discharge;
    let losses = |deeds| dead_losses(&stage, fresh(), deeds);
    assert_eq!(losses(vec![test(), bulk(), test(), pull()]), []);
    assert_eq!(losses(vec![test(), bleed(), bulk(), test(), pull()]), []);
    // Nothing at all; the meter alone; the circuit alone; one side alone; the wrong order; too late.
    assert_eq!(losses(vec![pull()]), [NOT_PROVED]);
    assert_eq!(losses(vec![test(), test(), pull()]), [NOT_PROVED]);
    assert_eq!(losses(vec![bulk(), pull()]), [METER]);
    assert_eq!(losses(vec![test(), bulk(), pull()]), [METER]);
    assert_eq!(losses(vec![bulk(), test(), pull()]), [METER]);
    assert_eq!(losses(vec![test(), bulk(), pull(), test()]), [METER]);
    // Discharged, and the meter never on it again: not at all, or only before.
    assert_eq!(losses(vec![test(), bleed(), test(), pull()]), [UNMEASURED]);
    let before = vec![test(), bulk(), bleed(), test(), pull()];
    assert_eq!(losses(before), [UNMEASURED]);
    // Both probes on one pin, or on another circuit, show 0 V of anything.
    for (red, black) in [("bulk.plus", "bulk.plus"), ("cord.1", "cord.2")] {
        let elsewhere = Action::Probe {
            mode: MeterMode::VoltsDc,
            red: red.parse().expect("a pin"),
            black: black.parse().expect("a pin"),
            grip: Grip::Clips,
        };
        assert_eq!(
            losses(vec![test(), elsewhere, test(), pull()]),
            [NOT_PROVED]
        );
    }
    // Who looks and feels inside has hands inside; outside it is none.
    let look = |component| vec![Action::Inspect(component)];
    assert_eq!(losses(look(Component::Belt)), [NOT_PROVED]);
    assert_eq!(losses(look(Component::Taps)), []);
    // Hands that stay out of it owe no proof.
    assert_eq!(losses(vec![test()]), []);
}

#[test]
fn the_caution_before_hands_go_in_stays_until_the_circuit_is_proved_dead() {
    let stage = Stage::new();
    let mut bench = stage.called_to(MAINS, &[]);
    act(&mut bench, [Action::Unplug, Action::OpenCabinet]);
    let look = Action::Inspect(Component::Belt);
    for deed in [
        Action::TestMeter,
        Action::Discharge,
        bulk(),
        Action::TestMeter,
    ] {
        for hands in [&pull(), &look] {
            assert_eq!(
                bench.caution(hands),
                Some(Caution::NotProvedDead),
                "{deed:?}"
            );
        }
        act(&mut bench, [deed]);
    }
    assert_eq!(bench.caution(&pull()), None);
    assert_eq!(bench.caution(&look), None);
}

#[test]
fn after_the_plug_was_in_again_the_circuit_is_proved_again() {
    let stage = Stage::new();
    let proof = [Action::TestMeter, bulk(), Action::TestMeter, pull(), seat()];
    let live = [Action::Plug, Action::Unplug];
    let mut deeds = proof.to_vec();
    deeds.extend(live.clone());
    deeds.push(pull());
    let losses = |deeds| dead_losses(&stage, stage.called_to(MAINS, &[]), deeds);
    assert_eq!(losses(deeds), [NOT_PROVED]);
    let mut deeds = proof.to_vec();
    deeds.extend(live);
    deeds.push(Action::Discharge);
    deeds.extend(proof);
    assert_eq!(losses(deeds), []);
}

#[test]
fn a_meter_that_does_not_work_proves_nothing() {
    let stage = Stage::new();
    let test = || Action::TestMeter;
    // A broken lead: 0 V on the charged capacitor is no proof, however often it is read.
    let broken = || {
        let mut setup = stage.library(MAINS).setup(MAINS.rating(), Vec::new(), 4);
        setup.lead_open = true;
        let mut bench = Bench::new(setup);
        bench.begin();
        bench
    };
    let deeds = vec![test(), bulk(), test(), pull()];
    assert_eq!(dead_losses(&stage, broken(), deeds), [NOT_PROVED]);
    let deeds = vec![test(), Action::Discharge, bulk(), test(), pull()];
    assert_eq!(dead_losses(&stage, broken(), deeds), [UNMEASURED]);
    let deeds = vec![Action::ReplaceLeads, test(), bulk(), test(), pull()];
    assert_eq!(dead_losses(&stage, broken(), deeds), []);

    // A blown fuse.
    let blown = || {
        let mut bench = stage.called_to(MAINS, &[]);
        let ohms = Action::Probe {
            mode: MeterMode::Ohms,
            red: "cord.1".parse().expect("a pin"),
            black: "cord.2".parse().expect("a pin"),
            grip: Grip::Clips,
        };
        act(
            &mut bench,
            [Action::OpenCabinet, ohms, Action::CloseCabinet],
        );
        bench
    };
    let deeds = vec![test(), bulk(), test(), pull()];
    assert_eq!(dead_losses(&stage, blown(), deeds), [METER]);
    let deeds = vec![Action::ReplaceMeterFuse, test(), bulk(), test(), pull()];
    assert_eq!(dead_losses(&stage, blown(), deeds), []);
}

#[test]
fn a_discharge_with_the_plug_in_burns_the_resistor_and_discharges_nothing() {
    let stage = Stage::new();
    let mut bench = stage.called_to(MAINS, &[]);
    act(&mut bench, [Action::OpenCabinet]);
    let caution = bench.caution(&Action::Discharge);
    assert_eq!(caution, Some(Caution::DischargeLive));
    act(&mut bench, [Action::Discharge]);
    let last = bench.events().last().map(|event| event.what);
    assert_eq!(last, Some(Incident::DischargedLive));
    assert!(bench.machine().plant().supply().bulk_v > TOUCH_V);
    let reason = LossKind::DischargedLive;
    assert!(lost(&scenario(&stage), &bench, Dimension::Safety, reason).is_some());
}

/// The basket spins and the lid is up: as the program began, the lock's coil burned out and its contact stuck,
/// so that the control believes in a bolt that is not there.
fn coasting(bench: &mut Bench) {
    start_to_spin(bench);
    let plant = bench.machine_mut().plant_mut();
    plant.set_condition(Param::LockCoilOhms, 1.0e8);
    plant.set_condition(Param::LockContactOpenOhms, 0.04);
    until_it_spins(bench);
    act(bench, [Action::Unplug, Action::OpenLid]);
}

/// The last program of the board has begun, which spins in the end, and has locked the lid.
fn start_to_spin(bench: &mut Bench) {
    let board = bench.machine().board();
    let to = board.programs.last().expect("a program").position;
    for step in [
        ScriptStep::Point { to, every_ms: 200 },
        ScriptStep::Tap(Button::Start),
    ] {
        step.run(bench).expect("it begins");
    }
    for _ in 0..Span::from_s(300).0 {
        if bench.machine().plant().bolted() {
            return;
        }
        bench.step();
    }
    panic!("the lid was never locked");
}

fn until_it_spins(bench: &mut Bench) {
    let (what, limit_s) = (Condition::Spinning, 600);
    for step in [
        ScriptStep::Until { what, limit_s },
        ScriptStep::Wait { s: 30 },
    ] {
        step.run(bench).expect("it spins");
    }
}

/// Common practice, no source: whoever pulls the plug of a spinning machine cannot lift its lid before the
/// basket stands.
#[test]
fn a_lock_holds_its_bolt_while_the_basket_coasts_without_power() {
    let stage = Stage::new();
    let mut bench = stage.called_to(MAINS, &[]);
    start_to_spin(&mut bench);
    until_it_spins(&mut bench);
    act(&mut bench, [Action::Unplug]);
    let mut coasted_s = 0;
    while !bench.machine().plant().drive().stands() {
        assert!(bench.machine().plant().bolted(), "after {coasted_s} s");
        bench.wait(Span::from_s(1));
        coasted_s += 1;
    }
    println!("coasts for {coasted_s} s");
    assert!(coasted_s >= 5, "{coasted_s} s");
    bench.wait(Span::from_s(1));
    assert!(!bench.machine().plant().bolted());
    act(&mut bench, [Action::OpenLid]);
    assert!(bench.machine().plant().lid_open());
}

/// Fills the tub to a hand's depth with the hot tap alone.
fn hot_water(bench: &mut Bench) {
    let machine = bench.machine_mut();
    machine.plant_mut().set_condition(Param::HotLeakKv, 0.35);
    machine.plant_mut().set_condition(Param::SupplyHotC, 62.0);
    machine.plant_mut().set_condition(Param::PumpFree, 0.0);
    let limit_s = 900;
    let what = Condition::Filled;
    ScriptStep::Until { what, limit_s }
        .run(bench)
        .expect("it fills");
}

#[test]
fn whoever_is_hurt_or_floods_the_floor_has_failed_and_the_score_says_so_first() {
    let stage = Stage::new();
    let scenario = scenario(&stage);
    let failed_by = |bench: &Bench| {
        let score = judge(&scenario, bench);
        let failed = score.failed_by().map(|lost| lost.loss.kind());
        assert!(failed.is_none() || !score.passed());
        failed
    };
    let look = || Action::Inspect(Component::Laundry);

    let mut shock = stage.called_to(MAINS, &[]);
    act(&mut shock, [Action::OpenCabinet, pull()]);
    assert_eq!(failed_by(&shock), Some(LossKind::Shock));

    let mut charge = stage.called_to(MAINS, &[]);
    act(&mut charge, [Action::OpenCabinet, Action::Unplug, pull()]);
    assert_eq!(failed_by(&charge), Some(LossKind::TouchedCharge));

    let mut hand = stage.called_to(MAINS, &[]);
    coasting(&mut hand);
    assert_eq!(
        failed_by(&hand),
        None,
        "a lid lifted too soon is no hand inside"
    );
    assert_eq!(hand.caution(&look()), Some(Caution::Moving));
    let mut patient = hand.clone();
    act(&mut hand, [look()]);
    assert_eq!(failed_by(&hand), Some(LossKind::HandInDrive));
    patient.wait(Span::from_s(60));
    act(&mut patient, [look()]);
    assert_eq!(failed_by(&patient), None);

    let mut scald = stage.called_to(MAINS, &[]);
    hot_water(&mut scald);
    assert_eq!(scald.caution(&Action::BailOut), Some(Caution::Scald));
    act(&mut scald, [Action::BailOut]);
    assert_eq!(failed_by(&scald), Some(LossKind::Scald));

    let mut flood = stage.called_to(MAINS, &["drain-pump.open-winding"]);
    flood
        .machine_mut()
        .plant_mut()
        .set_condition(Param::ColdLeakKv, 0.35);
    let (what, limit_s) = (Condition::Filled, 900);
    ScriptStep::Until { what, limit_s }
        .run(&mut flood)
        .expect("it fills");
    let pump = "P-1001".to_owned();
    act(
        &mut flood,
        [
            Action::Unplug,
            Action::OpenCabinet,
            Action::Discharge,
            bulk(),
        ],
    );
    act(&mut flood, [Action::Order(pump.clone()), Action::Fit(pump)]);
    assert_eq!(failed_by(&flood), Some(LossKind::Flood));
}

/// Everything else done well does not make up for it.
#[test]
fn no_job_is_passed_with_a_shock() {
    let stage = Stage::new();
    let content_library = stage.content_library();
    let source = content_library
        .scenario("drain-code")
        .expect("a built-in scenario");
    let scenario = &source.scenario;
    let fresh = || {
        set_up(scenario, &content_library.library(scenario), scenario.seed)
            .expect("a sound scenario")
    };
    let finish = |bench: Bench| {
        let bench = work(Persona::Expert, scenario, bench).expect("the expert can go on");
        judge(scenario, &bench)
    };
    assert!(finish(fresh()).passed());
    let mut hurt = fresh();
    act(
        &mut hurt,
        [Action::OpenCabinet, pull(), seat(), Action::CloseCabinet],
    );
    let score = finish(hurt);
    assert!(
        score.total() >= PASS_SHARE * score.of(),
        "{:.0} points",
        score.total()
    );
    assert!(!score.passed());
    assert_eq!(
        score.failed_by().map(|lost| lost.loss.kind()),
        Some(LossKind::Shock)
    );
}

/// The bench after this report on a machine with these faults, all of them cured.
fn cured(stage: &Stage, hidden: &[&str], said: &[&str], part: Option<&str>) -> Bench {
    let mut bench = stage.called_to(MAINS, hidden);
    for id in hidden {
        bench.machine_mut().replace(stage.mode(id).component);
    }
    act(&mut bench, [report(said, part, Advice::None)]);
    bench
}

const LOCK: &str = "lid-lock.contact-open";
const LOCK_COIL: &str = "lid-lock.open-winding";
const BELT: &str = "belt.broken";
const PUMP: &str = "drain-pump.open-winding";

#[test]
fn every_cause_counts_by_its_share() {
    let stage = Stage::new();
    let scenario = scenario(&stage);
    let full = 0.40 * scenario.points.reasoning;
    for (hidden, said, share) in [
        (&[LOCK][..], &[LOCK][..], None),
        (&[], &[], None),
        (&[], &[LOCK], Some(1.0)),
        (&[LOCK, BELT], &[BELT, LOCK], None),
        // One of two missed; one of two right, and one made up.
        (&[LOCK, BELT], &[LOCK], Some(1.0 / 2.0)),
        (&[LOCK], &[LOCK, BELT], Some(1.0 / 2.0)),
        // The right component, but another way of failing.
        (&[LOCK], &[LOCK_COIL], Some(1.0)),
        (&[LOCK, BELT], &[LOCK_COIL, BELT], Some(2.0 / 3.0)),
        // By luck, which takes more: see below.
        (&[LOCK], &[BELT], None),
        (&[LOCK], &[], None),
    ] {
        let bench = cured(&stage, hidden, said, None);
        let found = lost(
            &scenario,
            &bench,
            Dimension::Reasoning,
            LossKind::WrongCause,
        );
        let expected = share.map(|share| share * full);
        let near = match (found, expected) {
            (Some(a), Some(b)) => (a - b).abs() < 1e-9,
            (a, b) => a == b,
        };
        assert!(near, "{hidden:?} {said:?}: {found:?}, not {expected:?}");
    }
}

#[test]
fn a_repair_is_lucky_where_the_report_looks_elsewhere() {
    let stage = Stage::new();
    let scenario = scenario(&stage);
    let lucky = |bench: &Bench| {
        let took = |side| lost(&scenario, bench, side, LossKind::LuckyRepair);
        let took = (took(Dimension::Reasoning), took(Dimension::Proof));
        assert_eq!(took.0.is_some(), took.1.is_some());
        took.0.is_some()
    };
    for (hidden, said, by_luck) in [
        (&[LOCK][..], &[LOCK][..], false),
        (&[LOCK], &[LOCK_COIL], false),
        (&[LOCK], &[BELT], true),
        (&[LOCK], &[], true),
        // As much right as wrong is half a conclusion; more wrong than right is a guess.
        (&[LOCK], &[LOCK, BELT], false),
        (&[LOCK], &[LOCK, BELT, PUMP], true),
        (&[LOCK, BELT], &[LOCK], false),
        (&[LOCK, BELT], &[PUMP], true),
        // Nothing was wrong, so nothing was repaired.
        (&[], &[LOCK], false),
    ] {
        let bench = cured(&stage, hidden, said, None);
        assert_eq!(lucky(&bench), by_luck, "{hidden:?} {said:?}");
    }
    // What is still in the machine was not repaired at all.
    let mut broken = stage.called_to(MAINS, &[LOCK]);
    act(&mut broken, [report(&[BELT], None, Advice::None)]);
    assert!(!lucky(&broken));
}

/// Of a job that is done well but for the cause named: the part named is the right one.
#[test]
fn a_lucky_repair_keeps_no_more_than_seventy_in_a_hundred_and_passes_no_job() {
    let stage = Stage::new();
    for scenario_source in stage
        .content_library()
        .scenarios()
        .expect("the built-in scenarios")
    {
        let keeps = |said| {
            let bench = cured(&stage, &[LOCK], &[said], Some("P-0701"));
            let score = judge(&scenario_source.scenario, &bench);
            let about_causes = [LossKind::WrongCause, LossKind::LuckyRepair];
            let takes = score.dimensions.iter().flat_map(|side| {
                let lost = side.lost.iter().map(|lost| &lost.loss);
                let lost = lost.filter(|loss| about_causes.contains(&loss.kind()));
                lost.map(|loss| loss.share(side.dimension) * side.of)
            });
            (score.of() - takes.sum::<f64>()) / score.of()
        };
        assert!(
            keeps(BELT) < PASS_SHARE,
            "{}: {}",
            scenario_source.file,
            keeps(BELT)
        );
        // Another way of failing of the right component is a mistake, but no luck.
        let other = keeps(LOCK_COIL);
        assert!(
            (PASS_SHARE..1.0).contains(&other),
            "{}: {other}",
            scenario_source.file
        );
    }
}

/// Of a job that is done well but for the run after the repair.
#[test]
fn a_machine_handed_back_without_a_run_is_no_pass_in_any_job() {
    let stage = Stage::new();
    for scenario_source in stage
        .content_library()
        .scenarios()
        .expect("the built-in scenarios")
    {
        let bench = cured(&stage, &[LOCK], &[LOCK], Some("P-0701"));
        let score = judge(&scenario_source.scenario, &bench);
        let takes = score.dimensions.iter().flat_map(|side| {
            let lost = side.lost.iter().map(|lost| &lost.loss);
            let lost = lost.filter(|loss| loss.kind() == LossKind::NoProvingRun);
            lost.map(|loss| loss.share(side.dimension) * side.of)
        });
        let keeps = (score.of() - takes.sum::<f64>()) / score.of();
        assert!(keeps < PASS_SHARE, "{}: {keeps:.2}", scenario_source.file);
        let proof = &score.dimensions[Dimension::Proof.index()];
        assert_eq!(proof.kept, 0.0, "{}", scenario_source.file);
    }
}

/// Who puts hands into a circuit that nobody proved dead has failed the job, though nothing happened; a meter that was
/// not checked once costs points alone.
#[test]
fn hands_in_an_unproved_circuit_are_no_pass() {
    let stage = Stage::new();
    let scenario = scenario(&stage);
    for (deeds, safe) in [
        (
            vec![Action::TestMeter, bulk(), Action::TestMeter, pull()],
            true,
        ),
        (vec![bulk(), pull()], true),
        (vec![Action::Discharge, pull()], false),
        (vec![pull()], false),
    ] {
        let mut bench = stage.called_to(MAINS, &[]);
        act(&mut bench, [Action::Unplug, Action::OpenCabinet]);
        // Nothing is left to shock anybody.
        bench.wait(Span::from_s(300));
        act(&mut bench, deeds.clone());
        let score = judge(&scenario, &bench);
        assert_eq!(score.failed_by(), None, "{deeds:?}");
        assert_eq!(score.is_safe_enough(), safe, "{deeds:?}");
        assert!(safe || !score.passed(), "{deeds:?}");
    }
}

#[test]
fn the_part_named_is_for_what_failed_and_fits() {
    let stage = Stage::new();
    let scenario = scenario(&stage);
    let lock = "lid-lock.contact-open";
    for (hidden, part, takes) in [
        (&[lock][..], Some("P-0701"), false),
        // By the number that it took the place of.
        (&[lock], Some("P-0703"), false),
        // For another component; a look-alike; none although one was needed.
        (&[lock], Some("P-1001"), true),
        (&[lock], Some("P-0702"), true),
        (&[lock], None, true),
        // A kit for another fault of the component.
        (&["harness.pump-wire-open"], Some("P-2101"), false),
        (&["harness.pump-wire-open"], Some("P-2102"), true),
        (&[], None, false),
        (&[], Some("P-0701"), true),
        // Hands alone cure a shut tap.
        (&["taps.cold-shut"], None, false),
        (&["taps.cold-shut"], Some("P-0801"), true),
    ] {
        let mut bench = stage.called_to(MAINS, hidden);
        act(&mut bench, [report(hidden, part, Advice::None)]);
        let reason = LossKind::WrongPartNamed;
        let found = lost(&scenario, &bench, Dimension::Reasoning, reason).is_some();
        assert_eq!(found, takes, "{hidden:?} {part:?}");
    }
}

/// Where cleaning, bending back or reseating cures, a new part cures too: it costs points and money, and is no wrong
/// part. A burned or corroded pin takes a terminal or cleaner from a kit; a whole new harness is over-repair there.
#[test]
fn a_new_part_where_hands_would_do_is_over_repair() {
    let stage = Stage::new();
    let scenario = scenario(&stage);
    let modes = &stage.content_library().catalogue.modes;
    let cases: Vec<_> = modes
        .iter()
        .filter(|m| m.by_hand && !m.cured_by.is_empty())
        .collect();
    assert!(cases.len() >= 8, "{cases:?}");
    let open = [
        Action::OpenLid,
        Action::Unplug,
        Action::OpenCabinet,
        Action::Discharge,
    ];
    let after = |fault: &str, deeds: &[Action], part: Option<&str>| {
        let mut bench = stage.called_to(MAINS, &[fault]);
        act(&mut bench, open.iter().chain(deeds).cloned());
        assert_eq!(bench.machine().plant().faults().count(), 0, "{fault}");
        act(&mut bench, [report(&[fault], part, Advice::None)]);
        let reasons = [
            (Dimension::Reasoning, LossKind::OverRepaired),
            (Dimension::Reasoning, LossKind::WrongPart),
            (Dimension::Reasoning, LossKind::WrongPartNamed),
            (Dimension::Cost, LossKind::Overspent),
        ];
        reasons.map(|(side, reason)| lost(&scenario, &bench, side, reason).is_some())
    };
    let buy = |number: &str| {
        [
            Action::Order(number.to_owned()),
            Action::ShutTaps,
            Action::Fit(number.to_owned()),
        ]
    };
    for mode in cases {
        let (id, number) = (mode.id.as_str(), mode.cured_by.as_str());
        let by_hand = [Action::ShutTaps, Action::PutRight(mode.component)];
        assert_eq!(after(id, &by_hand, None), [false; 4], "{id}");
        assert_eq!(
            after(id, &buy(number), Some(number)),
            [true, false, false, true],
            "{id}"
        );
    }
    for (fault, kit) in [
        ("harness.lock-return-burnt", "P-2103"),
        ("harness.motor-common-burnt", "P-2103"),
        ("harness.thermistor-pin-damp", "P-2102"),
    ] {
        assert_eq!(after(fault, &buy(kit), Some(kit)), [false; 4], "{fault}");
        let whole = after(fault, &buy("P-2101"), Some("P-2101"));
        assert_eq!(whole, [true, false, false, true], "{fault}");
    }
}

/// Before a part is ordered something must have told: a reading or a look that has to do with the code.
#[test]
fn a_decisive_look_is_evidence_and_an_irrelevant_reading_is_none() {
    let stage = Stage::new();
    let scenario = scenario(&stage);
    let ohms = |red: &str, black: &str| Action::Probe {
        mode: MeterMode::Ohms,
        red: red.parse().expect("a pin"),
        black: black.parse().expect("a pin"),
        grip: Grip::Clips,
    };
    for (told_by, blind) in [
        (None, true),
        (Some(ohms("thermistor.1", "thermistor.2")), true),
        (Some(Action::Inspect(Component::Belt)), true),
        (Some(ohms("drain-pump.1", "drain-pump.2")), false),
        (Some(Action::Inspect(Component::DrainPump)), false),
    ] {
        let mut bench = stage.called_to(MAINS, &["drain-pump.seized"]);
        wash(&mut bench);
        act(&mut bench, [Action::Unplug]);
        bench.wait(Span::from_s(900));
        act(
            &mut bench,
            [
                Action::OpenLid,
                Action::BailOut,
                Action::OpenCabinet,
                Action::Discharge,
            ],
        );
        act(&mut bench, told_by.clone());
        act(
            &mut bench,
            [
                Action::Order("P-1001".to_owned()),
                Action::Fit("P-1001".to_owned()),
            ],
        );
        let found = lost(
            &scenario,
            &bench,
            Dimension::Reasoning,
            LossKind::BoughtOnTheCode,
        );
        assert_eq!(found.is_some(), blind, "{told_by:?}");
    }
}

/// A rough basket bearing is four hours and a set of bearings: 192 and 175 are more than the 352 that this machine is
/// worth repairing for.
#[test]
fn a_rough_bearing_is_hours_and_bearings_and_not_worth_it_here() {
    let stage = Stage::new();
    let fault = "tub.bearing-rough";
    let mut bench = stage.called_to(MAINS, &[fault]);
    let part = bench.cure(stage.mode(fault)).expect("there is a set");
    assert_eq!(part.fitting(), Span::from_s(4 * 3600));
    act(
        &mut bench,
        [report(&[fault], Some("P-1902"), Advice::Replace)],
    );
    let score = judge(&scenario(&stage), &bench);
    let reasons = score.dimensions[Dimension::Reasoning.index()].lost.iter();
    let reasons: Vec<_> = reasons.map(|l| l.loss.kind()).collect();
    assert_eq!(reasons, []);
    // The seal alone mends a leak and leaves the bearing.
    assert!(!bench.part("P-1901").expect("sold").ends(stage.mode(fault)));
}

#[test]
fn the_customer_is_told_what_the_fault_calls_for() {
    let stage = Stage::new();
    let scenario = scenario(&stage);
    for (hidden, due) in [
        ("inlet-cold.blocked-screen", Advice::CleanStrainer),
        ("inlet-cold.open-winding", Advice::None),
        ("belt.broken", Advice::None),
        ("taps.cold-shut", Advice::KeepTapOpen),
        ("laundry.suds", Advice::LessDetergent),
        ("floor.not-level", Advice::LevelMachine),
    ] {
        for given in Advice::ALL {
            let mut bench = stage.called_to(MAINS, &[hidden]);
            act(&mut bench, [report(&[hidden], None, *given)]);
            let found = lost(
                &scenario,
                &bench,
                Dimension::Reasoning,
                LossKind::WrongAdvice,
            );
            assert_eq!(found.is_some(), *given != due, "{hidden}: {given}");
        }
    }
}

#[test]
fn a_repair_that_is_not_worth_it_is_left_and_said_so() {
    let stage = Stage::new();
    // The board at 210, and work: 104 at 130 minutes, 160 at 200; the limit is 55 % of 640, so 352.
    let fault = "board.lock-switch-open";
    let worth = scenario(&stage);
    let not_worth = Scenario {
        par_minutes: 200.0,
        ..worth.clone()
    };
    for (scenario, advice, takes_advice, takes_cure) in [
        (&worth, Advice::None, false, true),
        (&worth, Advice::Replace, true, true),
        (&not_worth, Advice::Replace, false, false),
        (&not_worth, Advice::None, true, true),
    ] {
        let mut bench = stage.called_to(MAINS, &[fault]);
        act(&mut bench, [report(&[fault], Some("P-0501"), advice)]);
        for (d, reason, takes) in [
            (Dimension::Reasoning, LossKind::WrongAdvice, takes_advice),
            (Dimension::Reasoning, LossKind::NotCured, takes_cure),
            (Dimension::Proof, LossKind::NoProvingRun, takes_cure),
        ] {
            let found = lost(scenario, &bench, d, reason).is_some();
            assert_eq!(
                found, takes,
                "{} min, {advice}: {reason}",
                scenario.par_minutes
            );
        }
    }
}

#[test]
fn the_bill_is_parts_and_work_and_has_two_limits() {
    let stage = Stage::new();
    let fault = "lid-lock.contact-open";
    for (budget, extra_minutes, over_budget, over_limit) in [
        (320.0, 0, false, false),
        // 48 for the lock; 100 for a little more than two hours.
        (140.0, 125, true, false),
        // The work alone: seven hours at 48 come to 336.
        (500.0, 420, false, true),
        (320.0, 420, true, true),
    ] {
        let scenario = Scenario {
            budget,
            ..scenario(&stage)
        };
        let mut bench = stage.called_to(MAINS, &[fault]);
        bench.wait(Span::from_s(60 * extra_minutes));
        act(
            &mut bench,
            [
                Action::Unplug,
                Action::OpenCabinet,
                Action::Discharge,
                Action::Order("P-0701".to_owned()),
                Action::Fit("P-0701".to_owned()),
                report(&[fault], Some("P-0701"), Advice::None),
            ],
        );
        let bill = bench.bill();
        for (reason, takes) in [
            (LossKind::OverBudget, over_budget),
            (LossKind::OverRepairLimit, over_limit),
        ] {
            let found = lost(&scenario, &bench, Dimension::Cost, reason).is_some();
            assert_eq!(found, takes, "{bill:.0} of {budget}: {reason}");
        }
    }
}

#[test]
fn what_was_bought_for_nothing_costs_points_and_what_went_back_costs_less() {
    let stage = Stage::new();
    let scenario = scenario(&stage);
    let fault = "lid-lock.contact-open";
    let overspent = |deeds: &[Action]| {
        let mut bench = stage.called_to(MAINS, &[fault]);
        act(
            &mut bench,
            [Action::Unplug, Action::OpenCabinet, Action::Discharge],
        );
        act(&mut bench, deeds.iter().cloned());
        act(&mut bench, [report(&[fault], Some("P-0701"), Advice::None)]);
        lost(&scenario, &bench, Dimension::Cost, LossKind::Overspent)
    };
    let lock = [
        Action::Order("P-0701".to_owned()),
        Action::Fit("P-0701".to_owned()),
    ];
    let pump = Action::Order("P-1001".to_owned());
    let back = Action::Return("P-1001".to_owned());
    assert_eq!(overspent(&lock), None);
    let kept = overspent(&[&lock[..], std::slice::from_ref(&pump)].concat()).expect("55 too many");
    let returned = overspent(&[&lock[..], &[pump, back]].concat()).expect("the fee");
    // The excess over the budget of 320 is the share lost: 55, and 15 % of it.
    let of = scenario.points.cost;
    assert!((kept - of * 55.0 / 320.0).abs() < 1e-9, "{kept}");
    assert!((returned - of * 8.25 / 320.0).abs() < 1e-9, "{returned}");
}

/// The same scenario in another part of the course.
fn in_part(scenario: &Scenario, part: CoursePart) -> Scenario {
    let course = Course {
        part,
        number: 1,
        after: Vec::new(),
    };
    Scenario {
        course: Some(course),
        ..scenario.clone()
    }
}

#[test]
fn a_reading_drill_wants_the_old_codes_too() {
    let stage = Stage::new();
    let old = Scenario {
        stale_codes: vec![23, 71],
        ..scenario(&stage)
    };
    // 42 is raised by the fault; 23 and 71 lie in the list from long ago.
    let missed = |part, noted: &[u8]| {
        let scenario = Scenario {
            fault: Hidden::Named("lid-lock.contact-open".to_owned()),
            ..in_part(&old, part)
        };
        let library = stage.content_library().library(&scenario);
        let mut bench = set_up(&scenario, &library, 4).expect("a sound scenario");
        act(&mut bench, noted.iter().map(|code| Action::NoteCode(*code)));
        let lost = lost(
            &scenario,
            &bench,
            Dimension::Reading,
            LossKind::CodeNotNoted,
        );
        lost.unwrap_or(0.0) / scenario.points.reading
    };
    let near = |share: f64, expected: f64| (share - expected).abs() < 1e-9;
    // Nothing was shown, so what is noted counts as misread as well; here only what is missing counts.
    assert!(near(missed(CoursePart::SingleFault, &[]), 1.0));
    assert!(near(missed(CoursePart::ReadingDrill, &[]), 1.0));
    assert_eq!(missed(CoursePart::SingleFault, &[42]), 0.0);
    assert!(missed(CoursePart::ReadingDrill, &[42]) > 0.0);
    assert_eq!(missed(CoursePart::ReadingDrill, &[71, 42, 23]), 0.0);
}

/// A slip in noting a code can be struck out before it does harm, and what was struck out is not noted.
#[test]
fn a_code_that_was_struck_out_in_time_costs_little() {
    let stage = Stage::new();
    let scenario = Scenario {
        fault: Hidden::Named("lid-lock.contact-open".to_owned()),
        ..scenario(&stage)
    };
    let library = stage.content_library().library(&scenario);
    let order = || Action::Order("P-0501".to_owned());
    let shares = |actions: &[Action]| {
        let mut bench = set_up(&scenario, &library, 4).expect("a sound scenario");
        act(&mut bench, actions.iter().cloned());
        let side = Dimension::Reading;
        [
            LossKind::Misread,
            LossKind::CodeSlip,
            LossKind::CodeNotNoted,
        ]
        .map(|kind| {
            let taken = lost(&scenario, &bench, side, kind);
            (taken.unwrap_or(0.0) / scenario.points.reading * 100.0).round()
        })
    };
    let (note, strike) = (Action::NoteCode, Action::StrikeCode);
    assert_eq!(shares(&[note(43)]), [50.0, 0.0, 50.0]);
    assert_eq!(shares(&[note(43), strike(43)])[..2], [0.0, 10.0]);
    assert_eq!(shares(&[note(43), order(), strike(43)])[0], 50.0);
    // 42 is stored, and nothing has shown it yet: noted it counts as a slip, struck out as missing besides.
    assert_eq!(shares(&[note(42), strike(42)]), [0.0, 10.0, 90.0]);

    let mut bench = set_up(&scenario, &library, 4).expect("a sound scenario");
    act(&mut bench, [note(43), note(43), strike(43)]);
    let notes = bench.log().notes();
    let struck: Vec<bool> = notes.iter().map(|note| note.struck.is_some()).collect();
    assert_eq!(struck, [false, true]);
    act(&mut bench, [strike(43)]);
    let again = bench.act(&strike(43));
    assert_eq!(again, Err(Refusal::NotNoted(43)));
}

#[test]
fn a_sound_control_swapped_in_a_drill_takes_what_was_drilled() {
    let stage = Stage::new();
    let base = scenario(&stage);
    let swap = |hidden: &[&str]| {
        let mut bench = stage.called_to(MAINS, hidden);
        let board = || "P-0501".to_owned();
        let deeds = [Action::Unplug, Action::OpenCabinet, Action::Discharge];
        act(&mut bench, deeds);
        act(&mut bench, [Action::Order(board()), Action::Fit(board())]);
        bench
    };
    let reason = LossKind::GoodBoardReplaced;
    let sound = swap(&["belt.broken"]);
    for (part, drilled) in [
        (CoursePart::EntryDrill, Some(Dimension::Entry)),
        (CoursePart::ReadingDrill, Some(Dimension::Reading)),
        (CoursePart::SingleFault, None),
    ] {
        let scenario = in_part(&base, part);
        for dimension in [Dimension::Entry, Dimension::Reading] {
            let found = lost(&scenario, &sound, dimension, reason).is_some();
            assert_eq!(found, Some(dimension) == drilled, "{part}: {dimension}");
        }
        assert!(lost(&scenario, &sound, Dimension::Reasoning, reason).is_some());
    }
    // A control that has failed is no sound one; one that has only forgotten is.
    for (hidden, takes) in [
        ("board.lock-switch-open", false),
        ("board.memory-lost", true),
    ] {
        let found = lost(&base, &swap(&[hidden]), Dimension::Reasoning, reason);
        assert_eq!(found.is_some(), takes, "{hidden}");
    }
}

/// The control takes no gesture during a fault hold: the tries leave their trace and are not the hand's fault.
#[test]
fn tries_during_a_fault_hold_leave_a_trace_and_cost_nothing() {
    let mut held = 0;
    for stage in Stage::every() {
        let gesture = stage.board().gesture.clone();
        // Power that is off for long enough ends the hold as well.
        if matches!(gesture.steps.first(), Some(GestureStep::PowerUp { .. })) {
            continue;
        }
        held += 1;
        let mut bench = stage.called_to(MAINS, &["lid-lock.contact-open"]);
        start_wash(&mut bench);
        let what = Condition::FaultHold;
        let hold = ScriptStep::Until { what, limit_s: 900 };
        hold.run(&mut bench).expect("the lock is not proven");
        const TRIES: usize = 4;
        for _ in 0..TRIES {
            for step in entry_steps(&gesture) {
                step.run(&mut bench).expect("the controls are there");
            }
            bench.wait(Span::from_s(3));
        }
        let outcomes: Vec<Outcome> = bench.tries().iter().map(|t| t.outcome).collect();
        assert_eq!(outcomes, [Outcome::InHold; TRIES], "{}", stage.board().id);
        let mode = bench.machine().control().control_status().mode;
        assert_eq!(mode, ControlMode::Hold, "{}", stage.board().id);
        let scenario = scenario(&stage);
        let failed = lost(&scenario, &bench, Dimension::Entry, LossKind::FailedTry);
        assert_eq!(failed, None, "{}", stage.board().id);
        let suspicion = ControlSuspicion::of(
            bench.tries(),
            scenario.dial_wear,
            bench.modes(),
            HandRecord::default(),
        );
        let odds = suspicion.expect("fixed risks").log_odds;
        assert_eq!(
            odds.len(),
            1,
            "nothing was learned of the control: {odds:?}"
        );
    }
    assert!(held > 1, "{held}");
}
