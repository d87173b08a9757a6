//! The drills of safe work and of proof: what is right is what a real bench says, no habit answers them, and the
//! steps before hands go in are those of published lockout rules.

use detent_content::{ContentLibrary, builtin};
use detent_training::lesson::{LossKind, Mains};
use detent_training::practice::drill::hazard::{
    self, BenchObject, HazardTask, ObjectState, PlannedWork,
};
use detent_training::practice::drill::proof::{self, HistoryStep, ProofTask, Shown};
use detent_training::practice::drill::safe_work::{
    self, ChargeStep, Facts, Marked, OUTCOMES, OrderTask, SafeStep, SafeWorkTask, Stumble,
};
use detent_training::practice::drill::{SuppliedBoard, SuppliedBoardId};
use detent_training::reason::Probe;
use detent_training::reason::evidence::{End, Table};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::LazyLock;

static CONTENT_LIBRARY: LazyLock<ContentLibrary> =
    LazyLock::new(|| ContentLibrary::builtin().expect("the built-in content is sound"));

static SUPPLIED_BOARDS: LazyLock<Vec<SuppliedBoard<'static>>> =
    LazyLock::new(|| CONTENT_LIBRARY.supplied_boards());

static TABLES: LazyLock<Vec<(SuppliedBoardId, Table)>> = LazyLock::new(|| {
    let table = |board: &SuppliedBoard<'_>| {
        let table = builtin::table(&board.library, board.mains.rating());
        (board.place(), table.expect("it is of this content"))
    };
    SUPPLIED_BOARDS.iter().map(table).collect()
});

fn table(place: &SuppliedBoardId) -> Option<&'static Table> {
    let here = TABLES.iter().find(|(other, _)| other == place);
    here.map(|(_, table)| table)
}

fn safe_tasks(seeds: u64) -> Vec<SafeWorkTask> {
    (0..seeds)
        .map(|seed| safe_work::ask(&SUPPLIED_BOARDS, seed))
        .collect()
}

fn orders(seeds: u64) -> Vec<OrderTask> {
    let tasks = safe_tasks(seeds).into_iter();
    tasks
        .filter_map(|task| match task {
            SafeWorkTask::Order(order) => Some(order),
            SafeWorkTask::Deed(_) | SafeWorkTask::Hazard(_) => None,
        })
        .collect()
}

/// An order as places among the shuffled steps.
fn places(task: &OrderTask, order: &[SafeStep]) -> Vec<usize> {
    let mut places: Vec<usize> = Vec::new();
    for step in order {
        let free = |n: &usize| task.steps[*n] == *step && !places.contains(n);
        let place = (0..task.steps.len()).find(free);
        places.push(place.expect("the step is among them"));
    }
    places
}

fn stumble(task: &OrderTask, order: &[SafeStep]) -> Option<(usize, Stumble)> {
    let given = places(task, order);
    match safe_work::mark(&SafeWorkTask::Order(task.clone()), &given) {
        Marked::Order(stumble) => stumble,
        Marked::Choice { .. } => unreachable!("it is an order"),
    }
}

#[test]
fn safe_work_asks_the_same_of_the_same_seed_and_what_it_solves_is_right() {
    let mut different = BTreeSet::new();
    for (seed, task) in (0..).zip(safe_tasks(150)) {
        if seed < 20 {
            assert_eq!(task, safe_work::ask(&SUPPLIED_BOARDS, seed));
        }
        let solved = task.solve();
        assert_eq!(solved.len(), task.wanted());
        assert!(safe_work::mark(&task, &solved).right(), "{task:?}");
        if let SafeWorkTask::Deed(deed) = &task {
            assert_eq!(deed.options.len(), 5);
            let right = (0..5).filter(|n| safe_work::mark(&task, &[*n]).right());
            assert_eq!(right.count(), 1, "{deed:?}");
            let unique: BTreeSet<_> = deed.options.iter().collect();
            assert_eq!(unique.len(), 5, "{deed:?}");
        }
        if let SafeWorkTask::Hazard(_) = &task {
            let choices = 0..task.choices();
            let right = choices.filter(|n| safe_work::mark(&task, &[*n]).right());
            assert_eq!(right.count(), 1, "{task:?}");
        }
        different.insert(format!("{task:?}"));
    }
    assert!(different.len() >= 100, "{}", different.len());
}

/// The order of 29 CFR 1910.333(b)(2) and NFPA 70E 120.5 (from memory): disconnect, release stored energy, test the
/// tester, test the circuit, test the tester again, and only then work.
#[test]
fn the_sound_order_is_the_published_one() {
    for task in orders(80) {
        let at = |step| task.sound.iter().position(|s| *s == step);
        let last = |step| task.sound.iter().rposition(|s| *s == step);
        let order = [
            at(SafeStep::Unplug),
            at(SafeStep::WaitAMinute).or(at(SafeStep::Discharge)),
            at(SafeStep::MeasureCharge),
            last(SafeStep::TestMeter),
            Some(task.sound.len() - 1),
        ];
        assert!(order.iter().all(Option::is_some), "{:?}", task.sound);
        assert!(order.is_sorted_by(|a, b| a < b), "{:?}", task.sound);
        assert!(at(SafeStep::TestMeter) < at(SafeStep::MeasureCharge));
    }
}

/// Each way to leave a step out of its place is told by what it brings on the bench.
#[test]
fn an_order_with_a_step_too_late_says_what_it_brings() {
    let mut told = BTreeSet::new();
    for task in orders(80) {
        let goal = *task.sound.last().expect("there are steps");
        for step in &task.sound[..task.sound.len() - 1] {
            let mut late: Vec<SafeStep> = task.sound.clone();
            let at = late.iter().rposition(|s| s == step).expect("it is there");
            late.remove(at);
            late.push(*step);
            let brought = stumble(&task, &late);
            // The minute may pass while the panels come off, and while water is bailed out even an open bleeder's low
            // charge may fall below what hurts: only at 120 V, where the control lets go at 75 V.
            let fades = *step == SafeStep::Discharge
                && goal == SafeStep::CleanPump
                && task.place.mains == Mains::V120Hz60;
            if *step == SafeStep::WaitAMinute || fades && brought.is_none() {
                continue;
            }
            let (_, brought) =
                brought.unwrap_or_else(|| panic!("{step} after {goal}: safe at {:?}", task.place));
            if let Stumble::Brings(kind) = brought {
                told.insert(kind);
            }
        }
    }
    for kind in [
        LossKind::OpenedLive,
        LossKind::NotProvedDead,
        LossKind::MeterNotProved,
    ] {
        assert!(told.contains(&kind), "{told:?}");
    }
}

#[test]
fn every_outcome_comes_up_and_no_habit_answers_safe_work() {
    let mut right: BTreeMap<Option<LossKind>, usize> = BTreeMap::new();
    let mut by_deed: BTreeMap<SafeStep, BTreeMap<Option<LossKind>, usize>> = BTreeMap::new();
    let mut deeds = 0;
    let mut first = 0;
    for task in safe_tasks(340) {
        if let SafeWorkTask::Deed(deed) = &task {
            let should = task.solve()[0];
            *right.entry(deed.options[should]).or_default() += 1;
            let of_deed = by_deed.entry(deed.deed).or_default();
            *of_deed.entry(deed.options[should]).or_default() += 1;
            first += usize::from(should == 0);
            deeds += 1;
        }
    }
    let share = |n: usize| n as f64 / deeds as f64;
    println!("{right:?} of {deeds}, the first option {:.2}", share(first));
    for kind in OUTCOMES {
        assert!(right.contains_key(&Some(kind)), "{kind} never comes up");
    }
    // Nobody gets far who says "safe", or any one thing, to everything; nor who knows one answer for each deed.
    assert!(right.values().all(|n| share(*n) < 0.35), "{right:?}");
    let habit: usize = (by_deed.values())
        .filter_map(|answers| answers.values().max())
        .sum();
    println!("one answer for each deed: {:.2}", share(habit));
    assert!(share(habit) < 0.6, "{by_deed:?}");
    assert!(share(first) < 0.3);
}

/// Facts that decide, held against the trade's own rules rather than the bench's.
#[test]
fn what_the_facts_say_agrees_with_what_a_deed_brings() {
    let proved = |facts: &Facts| {
        let measured = facts.proof.iter().rposition(|step| {
            matches!(step, ChargeStep::Measured(detent_training::bench::Display::Value(v)) if v.abs() < 50.0)
        });
        let discharged = facts
            .proof
            .iter()
            .rposition(|s| *s == ChargeStep::Discharged);
        let checked = |from: usize, to: usize| {
            let steps = facts.proof.get(from..to).unwrap_or_default();
            steps.contains(&ChargeStep::MeterChecked(true))
        };
        measured.is_some_and(|at| {
            discharged < Some(at) && checked(0, at) && checked(at, facts.proof.len())
        })
    };
    for task in safe_tasks(300) {
        let SafeWorkTask::Deed(deed) = &task else {
            continue;
        };
        let brings = deed.options[task.solve()[0]];
        let facts = &deed.facts;
        match deed.deed {
            SafeStep::PullConnector => match facts.unplugged_s {
                None => assert_eq!(brings, Some(LossKind::Shock), "{deed:?}"),
                Some(_) if brings.is_none() => assert!(proved(facts), "{deed:?}"),
                Some(_) if proved(facts) => assert_eq!(brings, None, "{deed:?}"),
                Some(_) => {}
            },
            SafeStep::OpenPanels => {
                let live = facts.unplugged_s.is_none();
                assert_eq!(brings == Some(LossKind::OpenedLive), live, "{deed:?}");
            }
            SafeStep::CleanScreen => {
                let sprays = brings == Some(LossKind::OpenedUnderPressure);
                assert_eq!(sprays, !facts.taps_shut, "{deed:?}");
            }
            // 29 CFR 1910.212(a)(4): a revolving drum is guarded by an enclosure interlocked with its drive.
            SafeStep::ReachIntoBasket if facts.basket_turns.is_some() => {
                assert!(facts.lid_open && facts.water.is_none(), "{deed:?}");
                let caught = brings == Some(LossKind::HandInDrive);
                assert_eq!(Some(caught), facts.basket_turns, "{deed:?}");
            }
            SafeStep::OpenLid => {
                let within_reach = brings == Some(LossKind::LidSpinning);
                assert_eq!(Some(within_reach), facts.basket_turns, "{deed:?}");
            }
            SafeStep::MeasureMains => {
                let live = facts.unplugged_s.is_none();
                let forbidden = brings == Some(LossKind::LiveNotAllowed);
                assert_eq!(forbidden, live && !facts.live_tests_allowed, "{deed:?}");
            }
            SafeStep::BailOut | SafeStep::ReachIntoBasket => {
                // 120 °F burns in five minutes, 130 °F in half a minute: see the bench's own test.
                let (_, water_c) = facts.water.expect("there is water");
                if brings == Some(LossKind::Scald) {
                    assert!(water_c > 48.0, "{deed:?}");
                } else {
                    assert!(water_c < 55.0, "{deed:?}");
                }
            }
            _ => {}
        }
    }
}

fn pictures(seeds: u64) -> Vec<HazardTask> {
    (0..seeds)
        .map(|seed| hazard::ask(&SUPPLIED_BOARDS, seed))
        .collect()
}

/// The thing that is wrong in a picture.
fn wrong(task: &HazardTask) -> ObjectState {
    let solved = SafeWorkTask::Hazard(task.clone()).solve();
    task.objects[solved[0]]
}

#[test]
fn just_one_thing_in_a_picture_is_wrong_for_its_work() {
    for (seed, task) in (0..).zip(pictures(400)) {
        if seed < 20 {
            assert_eq!(task, hazard::ask(&SUPPLIED_BOARDS, seed));
        }
        let hazards = task.work.hazards();
        let is_wrong = |state: &&ObjectState| hazards.contains(state);
        assert_eq!(task.objects.iter().filter(is_wrong).count(), 1, "{task:?}");
        for state in &task.objects {
            // A covered capacitor is safe whatever is about to be done.
            let sound = task.work.sound(state.object()) == *state;
            let covered = *state == ObjectState::CapacitorCovered;
            assert!(sound || covered || *state == wrong(&task), "{task:?}");
        }
        let objects: Vec<BenchObject> = task.objects.iter().map(|s| s.object()).collect();
        // Each has a digit, and no thing stands there twice.
        assert_eq!(objects.len(), 10, "{task:?}");
        assert!(objects.is_sorted_by(|a, b| a < b), "{task:?}");
    }
}

#[test]
fn every_thing_is_a_hazard_somewhere_and_no_habit_finds_it() {
    let mut found: BTreeMap<(PlannedWork, ObjectState), usize> = BTreeMap::new();
    let mut by_object: BTreeMap<BenchObject, usize> = BTreeMap::new();
    let mut by_work: BTreeMap<PlannedWork, BTreeMap<BenchObject, usize>> = BTreeMap::new();
    let tasks = pictures(900);
    for task in &tasks {
        let hazard = wrong(task);
        *found.entry((task.work, hazard)).or_default() += 1;
        *by_object.entry(hazard.object()).or_default() += 1;
        *(by_work.entry(task.work).or_default())
            .entry(hazard.object())
            .or_default() += 1;
    }
    for work in PlannedWork::ALL {
        for hazard in work.hazards() {
            assert!(found.contains_key(&(*work, *hazard)), "{work}: {hazard}");
            assert_ne!(work.sound(hazard.object()), *hazard, "{work}: {hazard}");
        }
    }
    assert_eq!(by_object.len(), BenchObject::ALL.len(), "{by_object:?}");
    let share = |n: usize| n as f64 / tasks.len() as f64;
    assert!(by_object.values().all(|n| share(*n) < 0.3), "{by_object:?}");
    let habit: usize = by_work.values().filter_map(|of| of.values().max()).sum();
    println!("one thing for each work: {:.2}", share(habit));
    assert!(share(habit) < 0.45, "{by_work:?}");
}

/// Rules of the trade that a picture must not break: the plug is out wherever hands go in (29 CFR 1910.333(a)(1), from
/// memory), and the card on a charged capacitor says more than 50 V, on a discharged one next to nothing.
#[test]
fn pictures_agree_with_the_rules_of_the_trade() {
    for task in pictures(400) {
        let has = |state| task.objects.contains(&state);
        let hands_go_in = matches!(
            task.work,
            PlannedWork::PullConnector | PlannedWork::MeasureCharge | PlannedWork::CleanScreen
        );
        assert_eq!(
            has(ObjectState::PlugOut),
            hands_go_in && wrong(&task) != ObjectState::PlugIn
        );
        assert_eq!(
            task.card_v > 50.0,
            has(ObjectState::CapacitorCharged),
            "{task:?}"
        );
        assert!(task.card_v > 50.0 || task.card_v < 1.0, "{task:?}");
    }
}

fn proof_tasks(seeds: u64) -> Vec<ProofTask> {
    (0..seeds)
        .map(|seed| proof::ask(&SUPPLIED_BOARDS, table, seed))
        .collect()
}

#[test]
fn just_one_reading_rules_out_every_rival() {
    let mut different = BTreeSet::new();
    let mut three = 0;
    let (mut with_bucket, mut by_bucket) = (0, 0);
    for task in proof_tasks(150) {
        let ProofTask::Reading(reading) = &task else {
            continue;
        };
        assert_eq!(task.choices(), 4);
        for (n, option) in reading.options.iter().enumerate() {
            assert_eq!(option.with_rivals.len(), reading.rivals.len());
            let all = option.with_rivals.iter().all(|(_, out)| *out);
            assert_eq!(proof::mark(&task, n).right, all, "{reading:?}");
            for (shown, out) in &option.with_rivals {
                // A rival that shows just the same is never ruled out.
                assert!(!(*out && *shown == option.with_cause), "{reading:?}");
                if let Shown::Findings(found) = shown {
                    let own = &option.with_cause;
                    assert_eq!(*out, *own != Shown::Findings(found.clone()));
                }
                if let Shown::Bucket(_) = shown {
                    assert_eq!(*out, *shown != option.with_cause, "{reading:?}");
                }
            }
        }
        let bucket = |n: &usize| matches!(reading.options[*n].probe, Probe::BucketTest(_));
        let buckets: Vec<usize> = (0..task.choices()).filter(bucket).collect();
        with_bucket += usize::from(!buckets.is_empty());
        by_bucket += (buckets.iter().filter(|n| proof::mark(&task, **n).right)).count();
        three += usize::from(reading.rivals.len() == 2);
        different.insert(format!("{reading:?}"));
    }
    println!(
        "{} different ones, {three} with two rivals",
        different.len()
    );
    assert!(different.len() >= 40 && three >= 10);
    // House or valve: a bucket tells (common practice, no source).
    println!("{with_bucket} offer a bucket, {by_bucket} are proved by it");
    assert!(with_bucket >= 5 && by_bucket >= 2);
}

/// Common practice, no source: a repair is proved by a calibration and a run to the end after it, and by a look for
/// leaks where water was opened; what was done before the part went in proves nothing of it.
#[test]
fn a_repair_is_proved_by_what_was_done_after_it_and_by_nothing_else() {
    let mut gaps: BTreeMap<Option<LossKind>, usize> = BTreeMap::new();
    let mut all = 0;
    for task in proof_tasks(120) {
        let should = proof::mark(&task, 0).should;
        let ProofTask::Repair(repair) = &task else {
            continue;
        };
        let gap = proof::GAPS[should];
        all += 1;
        *gaps.entry(gap).or_default() += 1;
        let fitted = (repair.history.iter())
            .rposition(|step| matches!(step, HistoryStep::Fitted(_)))
            .expect("something was fitted");
        let after = &repair.history[fitted..];
        let passed = |wanted: fn(&HistoryStep) -> Option<End>| {
            after
                .iter()
                .filter_map(wanted)
                .any(|end| end == End::Finished)
        };
        let recalibrated = passed(|step| match step {
            HistoryStep::Recalibrated(outcome) => Some(outcome.end),
            _ => None,
        });
        let ran = passed(|step| match step {
            HistoryStep::Ran(outcome) => Some(outcome.end),
            _ => None,
        });
        match gap {
            None => assert!(recalibrated && ran, "{repair:?}"),
            Some(LossKind::NotRecalibrated) => assert!(!recalibrated && ran, "{repair:?}"),
            Some(LossKind::NoProvingRun) => assert!(recalibrated && !ran, "{repair:?}"),
            Some(LossKind::NoLeakCheck) => assert!(recalibrated && ran, "{repair:?}"),
            Some(LossKind::NotCured) => {
                let stopped = after.iter().any(|step| match step {
                    HistoryStep::Recalibrated(outcome) | HistoryStep::Ran(outcome) => {
                        outcome.end == End::Stopped && !outcome.codes.is_empty()
                    }
                    _ => false,
                });
                assert!(stopped, "{repair:?}");
            }
            Some(other) => panic!("{other} is no gap"),
        }
        for n in 0..task.choices() {
            assert_eq!(proof::mark(&task, n).right, n == should);
        }
    }
    println!("{gaps:?} of {all}");
    assert_eq!(gaps.len(), proof::GAPS.len(), "{gaps:?}");
    assert!(gaps.values().all(|n| 10 * n < 4 * all), "{gaps:?}");
}

#[test]
fn proof_asks_the_same_of_the_same_seed_and_without_a_table_about_repairs() {
    for seed in 0..12 {
        let one = proof::ask(&SUPPLIED_BOARDS, table, seed);
        assert_eq!(one, proof::ask(&SUPPLIED_BOARDS, table, seed));
        let plain = proof::ask(&SUPPLIED_BOARDS, |_| None, seed);
        assert!(matches!(plain, ProofTask::Repair(_)), "{plain:?}");
    }
}
