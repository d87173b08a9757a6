//! What the house brings to the washer, measured with a bucket: a fill code with a sound valve.

use crate::stage::{Stage, act};
use detent_simulation::controller::Monitor;
use detent_simulation::interface::{Component, WaterPipe};
use detent_training::bench::{
    Action, Bench, Caution, Finding, Incident, Refusal, SupplyStrength, cost,
};
use detent_training::lesson::{Mains, survey};

const MAINS: Mains = Mains::V120Hz60;
const PIPES: [WaterPipe; 2] = [WaterPipe::Cold, WaterPipe::Hot];

fn bench(stage: &Stage, fault: Option<&str>) -> Bench {
    stage.awake(MAINS, fault, 5)
}

/// Flow, L/min, and what it comes to, at the cold tap and at the hot one.
fn both_buckets(bench: &mut Bench) -> [(f64, SupplyStrength); 2] {
    act(bench, [Action::ShutTaps]);
    let tests = PIPES.map(|pipe| {
        act(bench, [Action::BucketTest(pipe)]);
        let test = bench.log().bucket_tests().last().expect("just done");
        assert_eq!(test.pipe, pipe);
        (test.flow_l_min, test.strength())
    });
    act(bench, [Action::PutRight(Component::Taps)]);
    assert!(bench.events().is_empty());
    tests
}

/// A laundry tap in a sound house gives 20 to 40 L/min and a water heater 50 to 60 °C (common practice, no source). A
/// tap that was nearly shut is opened for the bucket: what is behind it is sound.
#[test]
fn a_bucket_fills_fast_where_the_house_is_sound() {
    let stage = Stage::new();
    for fault in [
        None,
        Some("inlet-cold.blocked-screen"),
        Some("inlet-cold.open-winding"),
        Some("taps.cold-throttled"),
    ] {
        let mut bench = bench(&stage, fault);
        for (flow, strength) in both_buckets(&mut bench) {
            assert!((20.0..40.0).contains(&flow), "{fault:?}: {flow} L/min");
            assert_eq!(strength, SupplyStrength::Good);
        }
        let warmth = |nth| bench.log().bucket_tests().get(nth).and_then(|t| t.water_c);
        assert!(warmth(0).is_some_and(|c| c < 20.0));
        assert!(warmth(1).is_some_and(|c| (50.0..60.0).contains(&c)));
    }
}

/// The pump of a well is felt at both taps, a pipe at its own. None of it is to be seen at the taps, and each stops the
/// wash.
#[test]
fn a_weak_house_fills_no_bucket_though_its_taps_look_right() {
    use SupplyStrength::{Good, Nothing, Weak};
    let stage = Stage::new();
    for (fault, expected, screen) in [
        (
            "taps.well-pump-weak",
            [Weak, Weak],
            "inlet-cold.blocked-screen",
        ),
        (
            "taps.cold-pipe-narrow",
            [Weak, Good],
            "inlet-cold.blocked-screen",
        ),
        (
            "taps.cold-pipe-frozen",
            [Nothing, Good],
            "inlet-cold.blocked-screen",
        ),
        (
            "taps.hot-pipe-narrow",
            [Good, Weak],
            "inlet-hot.blocked-screen",
        ),
        (
            "taps.hot-pipe-frozen",
            [Good, Nothing],
            "inlet-hot.blocked-screen",
        ),
    ] {
        let mut washed = stage.bench(MAINS, Some(fault), 5);
        survey::wash(&mut washed);
        let stopped = washed.milestones().iter();
        let stopped: Vec<Monitor> = stopped.filter_map(|m| m.kind.stopped_by()).collect();
        // Without any cold water a warm wash fills with hot alone, without hot with cold alone.
        let fill = |m: &Monitor| {
            matches!(
                m,
                Monitor::FillNone
                    | Monitor::FillSlow
                    | Monitor::WaterTooHot
                    | Monitor::WaterNotWarm
            )
        };
        assert!(stopped.iter().any(fill), "{fault}: {stopped:?}");
        let mut bench = bench(&stage, Some(fault));
        act(&mut bench, [Action::Inspect(Component::Taps)]);
        let looked = bench.found().last().expect("just done");
        assert_eq!(looked.findings, [], "{fault}");
        assert_eq!(both_buckets(&mut bench).map(|(_, s)| s), expected);
        // The valve is ruled out by it, whatever a meter would say.
        let modes = stage.content_library().catalogue.modes.clone();
        let screen = modes.iter().position(|m| m.id == screen);
        let screen = screen.expect("in the catalogue");
        let tests = bench.log().bucket_tests();
        assert!(tests.iter().any(|t| t.rules_out[screen]), "{fault}");
        // Nothing at the washer puts it right; who comes for it does.
        assert_eq!(bench.machine().plant().faults().count(), 1);
        act(
            &mut bench,
            [
                Action::Unplug,
                Action::OpenCabinet,
                Action::Order("P-0102".to_owned()),
                Action::Fit("P-0102".to_owned()),
            ],
        );
        assert_eq!(bench.machine().plant().faults().count(), 0);
    }
}

/// A tap that is shut is seen; that nothing is wrong behind it the bucket shows.
#[test]
fn a_shut_tap_is_told_from_a_house_without_water() {
    let stage = Stage::new();
    let mut bench = bench(&stage, Some("taps.cold-shut"));
    act(&mut bench, [Action::Inspect(Component::Taps)]);
    let looked = bench.found().last().expect("just done");
    assert_eq!(looked.findings, [Finding::ColdTapShut]);
    let [(_, cold), _] = both_buckets(&mut bench);
    assert_eq!(cold, SupplyStrength::Good);
}

#[test]
fn a_hose_that_comes_off_under_pressure_wets_the_floor() {
    let stage = Stage::new();
    let test = Action::BucketTest(WaterPipe::Hot);
    let mut bench = bench(&stage, None);
    assert_eq!(bench.caution(&test), Some(Caution::HotWater));
    act(&mut bench, [test.clone()]);
    let happened: Vec<Incident> = bench.events().iter().map(|e| e.what).collect();
    assert_eq!(happened, [Incident::OpenedUnderPressure]);
    act(&mut bench, [Action::ShutTaps]);
    assert_eq!(bench.act(&Action::ShutTaps), Err(Refusal::AlreadySo));
    assert_eq!(bench.caution(&test), None);
    let began = bench.now();
    act(&mut bench, [test.clone()]);
    assert_eq!(bench.now().since(began), cost::span(&test));
    assert_eq!(bench.events().len(), 1);
    // The taps are as they were: shut.
    assert!(bench.view().taps_shut);
}
