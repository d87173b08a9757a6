//! Laundry in the basket while the control learns the machine: it weighs on the basket, and comes out by hand.

use crate::stage::{MAINS, Stage, act};
use detent_simulation::controller::Monitor;
use detent_simulation::interface::Component;
use detent_simulation::units::Span;
use detent_training::bench::{Action, Bench, Caution, Finding, MilestoneKind, Refusal};
use detent_training::lesson::technician::{Persona, work};
use detent_training::lesson::{Dimension, LossKind, Mains, Scenario, judge, set_up, survey};

fn bench(stage: &Stage, mains: Mains, fault: Option<&str>) -> Bench {
    stage.awake(mains, fault, 5)
}

fn unload(bench: &mut Bench) {
    act(
        bench,
        [Action::OpenLid, Action::UnloadBasket, Action::CloseLid],
    );
}

/// Time to speed up that the control learned with what lies in the basket, ms; none where it broke the recalibration
/// off.
fn learned_ms(bench: &mut Bench) -> Option<u32> {
    let began = bench.now();
    survey::recalibrate_as_it_is(bench);
    let passed = bench.passed(MilestoneKind::CalibrationPassed, began);
    let learned = bench.machine().control().memory().calibration;
    learned.filter(|_| passed).map(|learned| learned.inertia_ms)
}

/// A basket with laundry in it takes longer to speed up (moment of inertia, closed form): whoever recalibrates so
/// teaches the control a wrong figure, and taking the laundry out and recalibrating again puts it right.
#[test]
fn laundry_in_the_basket_teaches_a_wrong_inertia_until_it_is_taken_out() {
    let stage = Stage::new();
    for mains in MAINS {
        let mut bench = bench(&stage, mains, None);
        let with = learned_ms(&mut bench).expect("a sound machine");
        // Out of service mode and in again.
        act(&mut bench, [Action::Unplug]);
        bench.wait(Span::from_s(120));
        act(&mut bench, [Action::Plug]);
        bench.wait(Span::from_s(3));
        unload(&mut bench);
        let without = learned_ms(&mut bench).expect("a sound machine");
        assert!(
            f64::from(without) < 0.9 * f64::from(with),
            "{without} ms empty, {with} ms with laundry"
        );
    }
}

/// A packed basket the control does not take: empty, the same machine is learned.
#[test]
fn a_packed_basket_is_not_learned_and_an_empty_one_is() {
    let stage = Stage::new();
    let packed = Some("laundry.overload");
    let mut bench = bench(&stage, Mains::V120Hz60, packed);
    let began = bench.now();
    assert_eq!(learned_ms(&mut bench), None);
    let stopped = bench.milestones().iter().filter(|m| m.at >= began);
    let stopped: Vec<Monitor> = stopped.filter_map(|m| m.kind.stopped_by()).collect();
    assert!(!stopped.is_empty());
    let mut emptied = self::bench(&stage, Mains::V120Hz60, packed);
    unload(&mut emptied);
    assert!(learned_ms(&mut emptied).is_some());
    // It is no cure: the customer's laundry is still too much.
    assert_eq!(emptied.machine().plant().faults().count(), 1);
    assert!(emptied.repairs().is_empty());
}

/// What the judge holds against the proof of somebody who did nothing but this.
fn lost(scenario: &Scenario, bench: &Bench) -> Vec<LossKind> {
    let score = judge(scenario, bench);
    let proof = (score.dimensions.iter()).find(|side| side.dimension == Dimension::Proof);
    let lost = &proof.expect("it scores the proof").lost;
    lost.iter().map(|lost| lost.loss.kind()).collect()
}

/// A recalibration that weighed the laundry in is lost points until one with an empty basket has passed; that the
/// laundry goes back in afterwards changes nothing.
#[test]
fn who_recalibrates_with_laundry_has_to_do_it_again() {
    let stage = Stage::new();
    let source = (stage.content_library()).scenario("reset-after-a-power-cut");
    let scenario = source.expect("built in").scenario;
    let library = stage.content_library().library(&scenario);
    let mut bench = set_up(&scenario, &library, scenario.seed).expect("sound");
    assert!(lost(&scenario, &bench).contains(&LossKind::NotRecalibrated));
    survey::recalibrate_as_it_is(&mut bench);
    let told = lost(&scenario, &bench);
    assert!(told.contains(&LossKind::CalibratedWithLaundry), "{told:?}");
    assert!(!told.contains(&LossKind::NotRecalibrated), "{told:?}");
    act(&mut bench, [Action::Unplug]);
    bench.wait(Span::from_s(120));
    act(&mut bench, [Action::Plug]);
    bench.wait(Span::from_s(3));
    unload(&mut bench);
    assert!(lost(&scenario, &bench).contains(&LossKind::CalibratedWithLaundry));
    survey::recalibrate(&mut bench);
    survey::load_basket(&mut bench);
    assert!(!bench.view().basket_empty);
    let told = lost(&scenario, &bench);
    assert!(!told.contains(&LossKind::CalibratedWithLaundry), "{told:?}");
}

/// Common practice, no source: the control learns the machine with the basket empty, and a wash with laundry proves it.
#[test]
fn the_expert_recalibrates_empty_and_proves_with_laundry() {
    let stage = Stage::new();
    for job in ["reset-by-moving-the-lid", "entry-dial-and-two-buttons"] {
        let source = stage.content_library().scenario(job).expect("built in");
        let scenario = source.scenario;
        let library = stage.content_library().library(&scenario);
        let bench = set_up(&scenario, &library, scenario.seed).expect("sound");
        let done = work(Persona::Expert, &scenario, bench).expect("it works");
        let passed = |kind| {
            let last = done.milestones().iter().rfind(|m| m.kind == kind);
            last.unwrap_or_else(|| panic!("{job}: no {kind:?}")).at
        };
        let was_empty = |kind| done.log().basket_was_empty(passed(kind));
        assert!(was_empty(MilestoneKind::CalibrationPassed), "{job}");
        assert!(!was_empty(MilestoneKind::ProgramFinished), "{job}");
        let score = judge(&scenario, &done);
        assert!(score.total() >= 85.0, "{job}: {}", score.total());
    }
}

#[test]
fn laundry_goes_out_and_in_through_the_open_lid() {
    let stage = Stage::new();
    let mut bench = bench(&stage, Mains::V120Hz60, Some("laundry.uneven"));
    assert_eq!(bench.act(&Action::UnloadBasket), Err(Refusal::LidClosed));
    act(&mut bench, [Action::OpenLid]);
    assert_eq!(bench.act(&Action::LoadBasket), Err(Refusal::AlreadySo));
    let look = |bench: &mut Bench| {
        act(bench, [Action::Inspect(Component::Laundry)]);
        bench.found().last().expect("just done").findings.clone()
    };
    assert_eq!(look(&mut bench), [Finding::LaundryOneSided]);
    act(&mut bench, [Action::UnloadBasket]);
    assert_eq!(bench.act(&Action::UnloadBasket), Err(Refusal::AlreadySo));
    assert_eq!(look(&mut bench), []);
    act(&mut bench, [Action::LoadBasket]);
    assert_eq!(look(&mut bench), [Finding::LaundryOneSided]);
    assert_ne!(
        bench.caution(&Action::UnloadBasket),
        Some(Caution::Moving),
        "it stands"
    );
}
