//! The parts counter: numbers that took each other's place, look-alikes, used parts, returns, labour.

use crate::stage::Stage;
use detent_simulation::interface::Component;
use detent_simulation::units::Span;
use detent_training::bench::{Action, Bench, Condition, Incident, Refusal, Repair};
use detent_training::lesson::Mains;

#[track_caller]
fn act(bench: &mut Bench, action: Action) {
    (bench.act(&action)).unwrap_or_else(|refusal| panic!("{action:?}: {refusal}"));
}

fn order(number: &str) -> Action {
    Action::Order(number.to_owned())
}

fn price(bench: &Bench, number: &str) -> f64 {
    let part = bench.counter().iter().find(|part| part.number == number);
    part.expect("the counter has it").price
}

/// Plug out, charges bled, panels off.
fn dead(mut bench: Bench) -> Bench {
    bench.begin();
    for action in [Action::Unplug, Action::OpenCabinet, Action::Discharge] {
        act(&mut bench, action);
    }
    bench
}

#[test]
fn an_old_number_brings_the_part_that_took_its_place() {
    let stage = Stage::new();
    let mut bench = dead(stage.bench(Mains::V120Hz60, None, 4));
    // Two steps: P-0505, then P-0506, now P-0501.
    act(&mut bench, order("P-0505"));
    assert_eq!(bench.view().parts[0].number, "P-0501");
    assert_eq!(bench.spent(), price(&bench, "P-0501"));
    // The old number still names what is in the hand.
    act(&mut bench, Action::Fit("P-0505".to_owned()));
    let fitted = Repair::Fitted {
        part: "P-0501".to_owned(),
    };
    assert_eq!(bench.repairs().first().map(|(_, r)| r), Some(&fitted));
    // One step, and a number that nothing took the place of.
    assert_eq!(
        bench.part("P-0703").map(|p| p.number.as_str()),
        Some("P-0701")
    );
    assert_eq!(bench.part("P-0701").map(|p| p.revision), Some(Some('B')));
    assert_eq!(
        bench.act(&order("P-9999")),
        Err(Refusal::NoPart("P-9999".to_owned()))
    );
}

#[test]
fn a_look_alike_can_be_bought_and_does_not_fit() {
    let stage = Stage::new();
    let mut bench = dead(stage.bench(Mains::V120Hz60, Some("lid-lock.contact-open"), 4));
    for (look_alike, real) in [
        ("P-0702", "P-0701"),
        ("P-0511", "P-0501"),
        ("P-1002", "P-1001"),
    ] {
        act(&mut bench, order(look_alike));
        let fit = Action::Fit(look_alike.to_owned());
        assert_eq!(
            bench.act(&fit),
            Err(Refusal::DoesNotFit(look_alike.to_owned()))
        );
        let part = bench.part(real).expect("the counter has it");
        assert!(bench.fits(part), "{real}");
    }
}

#[test]
fn every_fault_can_be_cured_on_every_board() {
    let stage = Stage::new();
    for board in &stage.content_library().boards {
        let library = stage.content_library().library_of(board, Mains::V120Hz60);
        let bench = Bench::new(library.setup(Mains::V120Hz60.rating(), Vec::new(), 1));
        for mode in &stage.content_library().catalogue.modes {
            let part = bench.cure(mode);
            let sound = part.map_or(mode.needs_no_part(), |part| {
                !mode.needs_no_part() && part.component == mode.component && bench.fits(part)
            });
            assert!(sound, "{}: {}: {part:?}", board.id, mode.id);
        }
    }
}

#[test]
fn a_part_that_was_not_fitted_goes_back_for_a_fee() {
    let stage = Stage::new();
    let mut bench = dead(stage.bench(Mains::V120Hz60, None, 4));
    let back = Action::Return("P-1004".to_owned());
    assert_eq!(
        bench.act(&back),
        Err(Refusal::NotInHand("P-1004".to_owned()))
    );
    act(&mut bench, order("P-1001"));
    act(&mut bench, order("P-0701"));
    act(&mut bench, Action::Fit("P-0701".to_owned()));
    // 55 for the pump, 48 for the lock; 15 % of 55 stay at the counter: 8.25.
    assert_eq!(bench.spent(), 103.0);
    // By the number that P-1001 took the place of.
    act(&mut bench, back);
    assert!(
        (bench.spent() - (48.0 + 8.25)).abs() < 1e-9,
        "{}",
        bench.spent()
    );
    assert_eq!(bench.view().parts.len(), 1);
    let fitted = Action::Return("P-0701".to_owned());
    assert!(matches!(bench.act(&fitted), Err(Refusal::NotInHand(_))));
}

#[test]
fn work_costs_by_the_hour_and_waiting_for_parts_does_not() {
    let stage = Stage::new();
    let mut bench = stage.bench(Mains::V120Hz60, None, 4);
    bench.wait(Span::from_s(600));
    bench.begin();
    bench.wait(Span::from_s(45 * 60));
    // Three quarters of an hour at 48.
    assert!((bench.labour() - 36.0).abs() < 1e-9, "{}", bench.labour());
    act(&mut bench, order("P-0501"));
    // The board takes three days, of which the technician's own time is two minutes: 1.60.
    assert!((bench.view().labour - 37.6).abs() < 1e-9);
    assert_eq!(bench.view().waited_hours, 72.0);
    // 55 % of 640.
    assert!((bench.rates().repair_limit() - 352.0).abs() < 1e-9);
}

/// Whether a part from the counter, fitted to a sound machine, has a fault of its own.
fn bad(stage: &Stage, number: &str, seed: u64) -> bool {
    let mut bench = dead(stage.bench(Mains::V120Hz60, None, seed));
    act(&mut bench, order(number));
    act(&mut bench, Action::Fit(number.to_owned()));
    let mut faults = bench.machine().plant().faults();
    let found = faults.next().map(|fault| fault.component);
    assert!(found.is_none_or(|c| Some(c) == bench.part(number).map(|p| p.component)));
    found.is_some()
}

#[test]
fn a_used_part_may_be_bad_and_the_seed_says_whether() {
    const SEEDS: u64 = 100;
    let stage = Stage::new();
    let share =
        |number| (0..SEEDS).filter(|seed| bad(&stage, number, *seed)).count() as f64 / SEEDS as f64;
    let rates = stage.content_library().parts.rates;
    for (number, condition, component) in [
        ("P-1001", Condition::New, Component::DrainPump),
        ("P-1003", Condition::Used, Component::DrainPump),
        ("P-1103", Condition::Rebuilt, Component::Motor),
    ] {
        let part = stage
            .content_library()
            .parts
            .part(number)
            .expect("the counter has it");
        assert_eq!((part.condition, part.component), (condition, component));
        let (seen, chance) = (share(number), rates.bad(condition));
        // Four standard deviations of a count of so many draws.
        let slack = 4.0 * (chance * (1.0 - chance) / SEEDS as f64).sqrt();
        println!("{number} {condition:?}: {seen} bad, the list says {chance}");
        assert!((seen - chance).abs() <= slack, "{number}: {seen} {chance}");
    }
    for seed in 0..10 {
        assert_eq!(bad(&stage, "P-1003", seed), bad(&stage, "P-1003", seed));
    }
}

/// Contact cleaner dries a damp contact and mends no broken wire; a new harness ends both.
#[test]
fn a_kit_mends_only_what_it_is_for() {
    let stage = Stage::new();
    let faults_left = |fault: &str, number: &str| {
        let mut bench = dead(stage.bench(Mains::V120Hz60, Some(fault), 4));
        act(&mut bench, order(number));
        act(&mut bench, Action::Fit(number.to_owned()));
        let wrong = bench.events().iter().any(|e| e.what == Incident::WrongPart);
        (bench.machine().plant().faults().count(), wrong)
    };
    assert_eq!(
        faults_left("harness.thermistor-pin-damp", "P-2102"),
        (0, false)
    );
    assert_eq!(faults_left("harness.pump-wire-open", "P-2102"), (1, true));
    assert_eq!(faults_left("harness.pump-wire-open", "P-2101"), (0, false));
    assert_eq!(
        faults_left("harness.thermistor-pin-damp", "P-2101"),
        (0, false)
    );
}
