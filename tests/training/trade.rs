//! Facts of the trade that the machine must bear out. Those marked "common practice, no source" are
//! what practised people say; the odds are computed from the dial's own wear model.

use crate::stage::{MAINS, Stage, drive};
use detent_simulation::controller::{ControlMode, EntryError, Gesture, GestureStep, Outcome};
use detent_simulation::interface::{Button, Component, Pin, Relay, Side, Terminal};
use detent_simulation::machine::Sound;
use detent_simulation::plant::dial::{clean_chance, error_chances};
use detent_simulation::plant::supply::discharge_v;
use detent_simulation::plant::{FailureMode, Op, Param, Params, Plant, Presence, Probes};
use detent_simulation::units::Span;
use detent_training::bench::script::{ScriptStep, entry_steps};
use detent_training::bench::{Action, Bench, Caution, Finding, TOUCH_V, meter, visible_findings};
use detent_training::lesson::survey::wash;
use detent_training::lesson::{Mains, start_wash};

#[track_caller]
fn run(bench: &mut Bench, steps: &[ScriptStep]) {
    for step in steps {
        step.run(bench).expect("a person can do this");
    }
}

/// A machine in service mode: something that a reset takes away.
fn in_service(stage: &Stage, mains: Mains) -> Bench {
    let mut bench = stage.bench(mains, None, 4);
    bench.wait(Span::from_s(3));
    let steps = entry_steps(&bench.machine().board().gesture);
    run(&mut bench, &steps);
    assert_eq!(
        bench.machine().control().control_status().mode,
        ControlMode::Service
    );
    bench
}

fn unplug(bench: &mut Bench, span: Span) -> f64 {
    bench.machine_mut().plant_mut().set_plugged(false);
    bench.wait(span);
    bench.machine().plant().supply().bulk_v
}

fn plug(bench: &mut Bench) -> ControlMode {
    bench.machine_mut().plant_mut().set_plugged(true);
    bench.wait(Span::from_s(3));
    bench.machine().control().control_status().mode
}

/// Every board on every supply that it is made for, in service mode, with its name and its sound parameters.
fn every_machine_in_service() -> Vec<(String, Params, Bench)> {
    let mut machines = Vec::new();
    for stage in Stage::every() {
        for mains in &stage.board().mains {
            let what = format!("{} {mains:?}", stage.board().id);
            machines.push((
                what,
                stage.sound(*mains).clone(),
                in_service(&stage, *mains),
            ));
        }
    }
    machines
}

/// Common practice, no source: "unplug it and wait a minute". The minute is really needed: after three quarters
/// of it the charge can still hurt, and the control still remembers.
#[test]
fn a_minute_without_the_plug_empties_the_stored_charge_and_resets_the_control() {
    for (what, _, mut bench) in every_machine_in_service() {
        let mut too_early = bench.clone();
        let left_v = unplug(&mut too_early, Span::from_s(45));
        println!("{what}: {left_v:.1} V after 45 s");
        assert!(left_v > TOUCH_V, "{what}: {left_v} V");
        assert_eq!(plug(&mut too_early), ControlMode::Service, "{what}");

        let left_v = unplug(&mut bench, Span::from_s(60));
        let machine = bench.machine();
        let supply_rules = machine.board().supply_rules(machine.plant().rating());
        let reset_v = supply_rules.reset_v;
        println!("{what}: {left_v:.1} V after a minute, the control resets below {reset_v} V");
        assert!(left_v < reset_v && left_v < TOUCH_V, "{what}: {left_v} V");
        assert_eq!(plug(&mut bench), ControlMode::Idle, "{what}");
    }
}

/// The other half of it: pulled and put back, nothing is reset and the charge is still there.
#[test]
fn five_seconds_without_the_plug_reset_nothing() {
    for (what, _, mut bench) in every_machine_in_service() {
        let left_v = unplug(&mut bench, Span::from_s(5));
        assert!(left_v > TOUCH_V, "{what}: {left_v} V");
        assert_eq!(
            bench.machine().outputs().lamps,
            Default::default(),
            "the lamps are dark"
        );
        assert_eq!(
            plug(&mut bench),
            ControlMode::Service,
            "{what}: it looked dead but it remembers"
        );
    }
}

/// 29 CFR 1910.303(g)(2)(i) guards live parts from 50 V on (read in OSHA's letter of interpretation of September 4, 2015);
/// for ripple-free direct voltage IEC 61140 allows 120 V (from memory). The bench warns by the lower of the two, to a
/// tenth of a volt.
#[test]
fn stored_charge_can_hurt_from_fifty_volts_on_and_not_below() {
    const GUARDED_FROM_V: f64 = 50.0;
    const RIPPLE_FREE_V: f64 = 120.0;
    for (what, _, mut bench) in every_machine_in_service() {
        let mut left_v = unplug(&mut bench, Span::from_s(5));
        let (mut lowest_warned_v, mut highest_unwarned_v) = (f64::INFINITY, 0.0);
        while left_v > GUARDED_FROM_V - 1.0 {
            let warned = bench.caution(&Action::OpenCabinet) == Some(Caution::StoredCharge);
            if warned {
                lowest_warned_v = left_v.min(lowest_warned_v);
            } else {
                highest_unwarned_v = left_v.max(highest_unwarned_v);
            }
            left_v = unplug(&mut bench, Span::from_ms(20));
        }
        let near = |volts: f64| (volts - GUARDED_FROM_V).abs() < 0.1;
        assert!(
            near(lowest_warned_v) && near(highest_unwarned_v),
            "{what}: {lowest_warned_v} V, {highest_unwarned_v} V"
        );
        assert!(highest_unwarned_v < lowest_warned_v && lowest_warned_v < RIPPLE_FREE_V);
    }
}

/// Once the control has gone to sleep only the bleeder is left: the closed form of a capacitor's
/// discharge, V = V₀ exp(−t/RC).
#[test]
fn the_last_of_the_charge_follows_the_closed_form() {
    for (what, p, mut bench) in every_machine_in_service() {
        let from_v = unplug(&mut bench, Span::from_s(15));
        let (farads, ohms) = (p.get(Param::BulkFarads), p.get(Param::BulkBleederOhms));
        let expected_v = discharge_v(from_v, farads, ohms, 45.0);
        let exact_v = from_v * libm::exp(-45.0 / (farads * ohms));
        assert!((expected_v / exact_v - 1.0).abs() < 1e-12);
        bench.wait(Span::from_s(45));
        let left_v = bench.machine().plant().supply().bulk_v;
        assert!(
            (left_v / exact_v - 1.0).abs() < 2e-3,
            "{what}: {left_v} V, {exact_v} V"
        );
    }
}

/// Common practice, no source: time alone proves nothing. With its bleeder open a control stays charged and keeps
/// what it remembers beyond the minute; with its supply dead it is dark all along and holds the full charge.
#[test]
fn a_minute_is_not_enough_where_the_bleeder_is_open_or_the_supply_is_dead() {
    for stage in Stage::every() {
        for mains in &stage.board().mains {
            for fault in ["board.bleeder-open", "board.supply-dead"] {
                let what = format!("{} {mains:?}, {fault}", stage.board().id);
                let mut bench = stage.bench(*mains, Some(fault), 4);
                bench.wait(Span::from_s(3));
                let full_v = bench.machine().plant().supply().bulk_v;
                let peak_v = mains.rating().volts * std::f64::consts::SQRT_2;
                assert!((full_v / peak_v - 1.0).abs() < 0.03, "{what}: {full_v} V");
                let dark = bench.machine().control().control_status().mode == ControlMode::Off;
                assert_eq!(dark, fault == "board.supply-dead", "{what}");
                let left_v = unplug(&mut bench, Span::from_s(60));
                println!("{what}: {left_v:.1} V after a minute");
                assert!(left_v > 1.1 * TOUCH_V, "{what}: {left_v} V");
                let mode = bench.machine().control().control_status().mode;
                assert_eq!(mode == ControlMode::Off, dark, "{what}: {mode}");
            }
        }
    }
}

/// Alternating voltage between two pins of the machine as it is, V rms.
fn volts(plant: &Plant, red: Pin, black: Pin) -> f64 {
    Probes::on(red, black).volts_ac(&plant.probed(), meter::INPUT_OHMS)
}

/// A loose joint loses volts under load and browns; it does not glow. Ohm's and Joule's laws are the outside check:
/// I·R across the joint, of which the load misses no more, and I²R of some watts. That browning begins at a few
/// watts and that some tens burn a joint open is common practice, no source.
#[test]
fn a_loose_joint_shows_as_a_drop_under_load_and_as_browning() {
    let wire = |terminal, side| Pin::Wire(terminal, side);
    let (line, neutral) = (
        wire(Terminal::CordLine, Side::Board),
        wire(Terminal::CordNeutral, Side::Board),
    );
    let (common, common_load) = (
        wire(Terminal::MotorCommon, Side::Board),
        wire(Terminal::MotorCommon, Side::Load),
    );
    let stage = Stage::new();
    for mains in MAINS {
        let running = |fault: Option<&str>| {
            let mut plant = stage.plant(mains);
            if let Some(id) = fault {
                plant.inject_fault(stage.mode(id));
            }
            drive(&mut plant, &[Relay::Lock], Span::from_s(2));
            let idle_v = volts(&plant, line, neutral);
            // As long as a stroke of the agitator: the motor still draws much.
            drive(
                &mut plant,
                &[Relay::Lock, Relay::MotorA],
                Span::from_ms(300),
            );
            (plant, idle_v)
        };
        let (sound, sound_idle_v) = running(None);
        let sound_drop_v = sound_idle_v - volts(&sound, line, neutral);
        for (fault, component, finding, param, of) in [
            (
                "supply.loose-outlet",
                Component::Supply,
                Finding::OutletBrowned,
                Param::SupplyOhms,
                Pin::FuseOut,
            ),
            (
                "cord.weak-joint",
                Component::Cord,
                Finding::CordBrowned,
                Param::CordLineOhms,
                Pin::FuseOut,
            ),
            (
                "harness.motor-common-burnt",
                Component::Harness,
                Finding::PinBurnt,
                Param::ContactOhms(Terminal::MotorCommon),
                common,
            ),
        ] {
            let (plant, idle_v) = running(Some(fault));
            let ohms = plant.params().get(param) - sound.params().get(param);
            assert!((0.3..=1.0).contains(&ohms), "{fault}: {ohms} Ω more");
            let amps = Probes::on(of, neutral).amps(&plant.probed());
            let amps = amps.expect("a wire to clamp");
            let (lost_v, watts) = (amps * ohms, amps * amps * ohms);
            let drop_v = if of == common {
                volts(&plant, common, common_load) - volts(&sound, common, common_load)
            } else {
                idle_v - volts(&plant, line, neutral) - sound_drop_v
            };
            println!("{mains:?} {fault}: {drop_v:.1} V of {lost_v:.1} V, {watts:.0} W");
            assert!((2.0..60.0).contains(&watts), "{fault}: {watts} W");
            assert!(
                drop_v > 0.3 * lost_v && drop_v < 1.1 * lost_v,
                "{mains:?} {fault}: {drop_v} V of {lost_v} V"
            );
            let seen = |plant: &Plant| visible_findings(plant, plant.params(), component);
            assert_eq!(seen(&plant), [finding], "{fault}");
            assert_eq!(seen(&sound), [], "{fault}");
        }
    }
}

/// A hand at work: a detent or a button's movement each `key`, `home` for going from dial to button.
#[derive(Clone, Copy, Debug)]
struct Hand {
    key_ms: u64,
    home_ms: u64,
}

impl Hand {
    /// Does the gesture; true when service mode is entered.
    fn enter(self, bench: &mut Bench, gesture: &Gesture) -> bool {
        bench.wait(Span::from_ms(2000));
        for (n, step) in gesture.steps.iter().enumerate() {
            if n > 0 {
                bench.wait(Span::from_ms(self.home_ms));
            }
            match step {
                GestureStep::Turn { to, detents, .. } => {
                    for _ in 0..*detents {
                        bench.act(&Action::Detent(*to)).expect("the dial turns");
                        bench.wait(Span::from_ms(self.key_ms));
                    }
                }
                GestureStep::Press { button, .. } => self.press(bench, *button, 100),
                GestureStep::Hold { button, min_ms, .. } => {
                    self.press(bench, *button, u64::from(*min_ms) + 100);
                }
                other => unreachable!("this board's gesture has no {other:?} in it"),
            }
        }
        bench.machine().control().control_status().mode == ControlMode::Service
    }

    fn press(self, bench: &mut Bench, button: Button, ms: u64) {
        bench
            .act(&Action::Down(button))
            .expect("the button goes down");
        bench.wait(Span::from_ms(ms));
        bench.act(&Action::Up(button)).expect("the button comes up");
        bench.wait(Span::from_ms(self.key_ms));
    }
}

/// Leaves service mode, so that another try can begin.
fn leave(bench: &mut Bench) {
    run(
        bench,
        &[ScriptStep::Tap(Button::Stop), ScriptStep::Wait { s: 1 }],
    );
    assert_eq!(
        bench.machine().control().control_status().mode,
        ControlMode::Idle
    );
}

/// Common practice, no source: a relay of a control that gets its supply clicks as the plug goes in; one whose
/// own supply is dead stays silent.
#[test]
fn a_relay_clicks_when_the_control_comes_up_and_only_then() {
    let heard_ticks = |bench: &mut Bench| {
        let hears = |_| {
            bench.step();
            bench.machine().view().sounds.has(Sound::RelayClick)
        };
        (0..Span::from_s(5).0)
            .map(hears)
            .filter(|heard| *heard)
            .count()
    };
    let stage = Stage::new();
    for mains in &stage.board().mains {
        for (fault, clicks) in [(None, true), (Some("board.supply-dead"), false)] {
            let mut bench = stage.bench(*mains, fault, 4);
            bench.wait(Span::from_s(20));
            assert_eq!(heard_ticks(&mut bench), 0, "{mains:?} {fault:?}");
            bench.act(&Action::Unplug).expect("the plug is in");
            bench.wait(Span::from_s(90));
            bench.act(&Action::Plug).expect("the plug is out");
            let ticks = heard_ticks(&mut bench);
            assert_eq!(ticks > 0, clicks, "{mains:?} {fault:?}");
            assert!(ticks < 100, "a click is short: {ticks} ticks");
        }
    }
}

/// Common practice, no source: an entry window of three to six seconds can be met. Held against the
/// keystroke-level model of Card, Moran and Newell, *The Psychology of Human-Computer Interaction*
/// (1983): K 0.20 to 0.28 s for a practised key action, H 0.40 s to home the hand (from a secondary
/// source). A practised hand needs no mental operator here.
#[test]
fn a_practised_hand_meets_the_entry_window() {
    const HOME_MS: u64 = 400;
    let stage = Stage::new();
    let mut bench = stage.bench(Mains::V120Hz60, None, 6);
    let gesture = bench.machine().board().gesture.clone();
    assert!(
        (3000..=6000).contains(&gesture.within_ms),
        "{} ms",
        gesture.within_ms
    );
    bench.wait(Span::from_s(3));
    for key_ms in (180..=280).step_by(20) {
        for home_ms in [0, HOME_MS] {
            let hand = Hand { key_ms, home_ms };
            assert!(hand.enter(&mut bench, &gesture), "{hand:?}");
            let tries = bench.machine().tries();
            let last = tries.last().expect("a try was made");
            assert_eq!(last.outcome, Outcome::Entered, "{hand:?}");
            let took_ms = last.lines.last().expect("a try has inputs").at_ms;
            println!("{hand:?}: entered in {took_ms} ms of {}", gesture.within_ms);
            assert!(took_ms <= gesture.within_ms);
            leave(&mut bench);
        }
    }
    // The window is a window: twice that time for each detent is too slow, and the trace says so.
    let slow = Hand {
        key_ms: 560,
        home_ms: HOME_MS,
    };
    let before = bench.machine().tries().len();
    assert!(!slow.enter(&mut bench, &gesture));
    let outcome = bench
        .machine()
        .tries()
        .iter()
        .nth(before)
        .expect("one more")
        .outcome;
    let late = matches!(
        outcome,
        Outcome::Broken(EntryError::Late { .. } | EntryError::WindowOver { .. })
    );
    assert!(late, "{outcome:?}");
}

fn detents(gesture: &Gesture) -> u32 {
    let of = |step: &GestureStep| match step {
        GestureStep::Turn { detents, .. } => u32::from(*detents),
        _ => 0,
    };
    gesture.steps.iter().map(of).sum()
}

/// Common practice, no source: twenty failed tries in a row under a sound dial are strong evidence
/// of a bad control; under a worn dial turned in haste they are none. The odds come from the wear
/// model; the powers are independent arithmetic.
#[test]
fn twenty_failed_tries_speak_against_the_control_only_under_a_sound_dial() {
    let power = |p: f64| (0..20).fold(1.0, |all, _| all * p);
    for (p, known) in [
        (0.5, 9.5367e-7),
        (0.8, 0.011_529_2),
        (0.9, 0.121_577),
        (0.95, 0.358_486),
    ] {
        assert!((power(p) / known - 1.0).abs() < 1e-4, "{p}: {}", power(p));
    }
    // None of twenty seen: with 95 % confidence the chance of one is at most 1 − 0.05^(1/20).
    let bound = 1.0 - libm::pow(0.05, 1.0 / 20.0);
    assert!((bound - 0.139_108).abs() < 1e-6);

    let stage = Stage::new();
    let detents = detents(&stage.content_library().boards[0].gesture);
    // Chance that the dial spoils a try, and that it spoils twenty in a row.
    let spoiled = |wear, gap_ms| {
        let fails = 1.0 - clean_chance(wear, Span::from_ms(gap_ms), detents);
        let twenty = power(fails);
        println!(
            "wear {wear:.1}, {gap_ms:>3} ms a detent: a try fails {fails:.4}, twenty {twenty:.2e}"
        );
        (fails, twenty)
    };
    // A sound dial at a human pace never spoils a try; a hurried one spoils one in twenty or so.
    assert_eq!(spoiled(0.0, 180).0, 0.0);
    assert_eq!(spoiled(0.0, 280).0, 0.0);
    assert!(spoiled(0.0, 90).1 < 1e-20);
    // Even a hand that by itself botches every second try would not fail twenty times: see above,
    // one in a million. So the sound dial leaves the control.
    // Half worn and worn out at a calm pace: still strong evidence.
    assert!(spoiled(0.5, 180).1 < 1e-9);
    assert!(spoiled(1.0, 180).1 < 1e-6);
    // Well worn and in haste: twenty failures are what one expects now and then. Turn slower first.
    let (fails, twenty) = spoiled(1.0, 70);
    assert!(fails > 0.9 && twenty > 0.05, "{fails} {twenty}");
    assert!(
        1.0 - fails < bound,
        "twenty failures do not even speak against this dial"
    );
}

/// Chance that the contacts report just `n` steps for `n` detents, the first after a long gap: an
/// exact count over skips and doubles, which may make up for each other.
fn right_count_chance(wear: f64, gap: Span, n: usize) -> f64 {
    let mut chance = vec![0.0; 2 * n + 3];
    chance[0] = 1.0;
    for detent in 0..n {
        let gap = if detent == 0 { Span::from_s(1) } else { gap };
        let (skip, double) = error_chances(wear, gap);
        let mut next = vec![0.0; chance.len()];
        for (steps, p) in chance.iter().enumerate().filter(|(_, p)| **p > 0.0) {
            next[steps] += p * skip;
            next[steps + 1] += p * (1.0 - skip - double);
            next[steps + 2] += p * double;
        }
        chance = next;
    }
    chance[n]
}

/// The whole way, dial to firmware, fails as often as the wear model says.
#[test]
fn a_worn_dial_fails_on_the_bench_at_the_rate_of_its_model() {
    const TRIES: u32 = 1000;
    let stage = Stage::new();
    for (wear, key_ms) in [(0.0, 200), (0.5, 180), (0.8, 70), (0.3, 90)] {
        let mut bench = stage.bench(Mains::V120Hz60, None, 8);
        let plant = bench.machine_mut().plant_mut();
        plant.set_condition(Param::DialWear, wear);
        bench.wait(Span::from_s(3));
        let gesture = bench.machine().board().gesture.clone();
        let hand = Hand { key_ms, home_ms: 0 };
        let mut entered = 0;
        for _ in 0..TRIES {
            if hand.enter(&mut bench, &gesture) {
                entered += 1;
                leave(&mut bench);
            }
        }
        let gap = Span::from_ms(key_ms);
        let expected: f64 = gesture
            .steps
            .iter()
            .map(|step| match step {
                GestureStep::Turn { detents, .. } => {
                    right_count_chance(wear, gap, usize::from(*detents))
                }
                _ => 1.0,
            })
            .product();
        let seen = f64::from(entered) / f64::from(TRIES);
        let sigma = (expected * (1.0 - expected) / f64::from(TRIES)).sqrt();
        println!(
            "wear {wear}, {key_ms} ms: {seen:.3} entered, the model says {expected:.3} ± {sigma:.3}"
        );
        assert!(
            (seen - expected).abs() <= 4.0 * sigma,
            "wear {wear}: {seen} {expected}"
        );
    }
}

/// Common practice, no source: a motor's protector is for what goes wrong. In a wash of a sound machine it stays well
/// below its trip.
#[test]
fn no_sound_wash_comes_near_the_motors_protector() {
    for stage in Stage::every() {
        for mains in &stage.board().mains {
            let mut bench = stage.bench(*mains, None, 3);
            start_wash(&mut bench);
            let mut hottest_c: f64 = 0.0;
            let mode = |bench: &Bench| bench.machine().control().control_status().mode;
            while mode(&bench) == ControlMode::Program {
                bench.wait(Span::from_s(1));
                let motor = bench.machine().plant().drive();
                hottest_c = hottest_c.max(motor.winding_c + motor.copper_rise_k);
            }
            let trip_c = bench.machine().plant().params().get(Param::MotorTripC);
            println!("{} {mains:?}: {hottest_c:.0} °C", stage.board().id);
            assert!(hottest_c < trip_c - 15.0, "{hottest_c} °C");
        }
    }
}

/// Over the wait for a part a machine cools, loses its charge and what leaks, as it would by standing there: half an
/// hour in one step against half an hour of ticks, and a day after which nothing is left.
#[test]
fn a_machine_that_waits_for_a_part_cools_and_loses_its_charge_and_what_leaks() {
    let stage = Stage::new();
    let standing = |fault: Option<&str>, deed: &dyn Fn(&mut Bench)| {
        let mut bench = stage.bench(Mains::V120Hz60, fault, 1);
        wash(&mut bench);
        bench.act(&Action::Unplug).expect("plugged in");
        bench.wait(Span::from_s(60));
        deed(&mut bench);
        bench
    };
    for fault in [
        "drain-pump.seized",
        "board.bleeder-open",
        "motor.shorted-turns",
    ] {
        let began = standing(Some(fault), &|_| {});
        let ticks = standing(Some(fault), &|b| b.wait(Span::from_s(1800)));
        let once = standing(Some(fault), &|b| b.machine_mut().plant_mut().stand(1800.0));
        let state = |bench: &Bench| {
            let plant = bench.machine().plant();
            let (water, drive) = (plant.water(), plant.drive());
            [
                water.tub_l,
                water.water_c,
                drive.winding_c,
                plant.supply().bulk_v,
                plant.supply().filter_v,
            ]
        };
        for (before, (slow, quick)) in state(&began)
            .into_iter()
            .zip(state(&ticks).into_iter().zip(state(&once)))
        {
            let moved = (before - slow).abs().max(1.0);
            assert!(
                (slow - quick).abs() < 0.02 * moved,
                "{fault}: {before}, {slow}, {quick}"
            );
        }
    }
    // A day's wait for a pump, ordered with hot water in the tub and the charge not discharged.
    let day = |fault: &str| {
        standing(Some(fault), &|b| {
            b.act(&Action::Order("P-1001".to_owned())).expect("sold");
        })
    };
    let bench = day("board.bleeder-open");
    let plant = bench.machine().plant();
    assert!(plant.supply().bulk_v < 1.0, "{}", plant.supply().bulk_v);
    assert!(
        bench.minutes() < 120.0,
        "a wait is no work: {}",
        bench.minutes()
    );
    let bench = day("drain-pump.seized");
    let plant = bench.machine().plant();
    let room_c = plant.params().get(Param::AmbientC);
    assert!((plant.water().water_c - room_c).abs() < 0.1 && plant.water().tub_l > 5.0);
    let leaking = Op::Set(0.05);
    let mut bench = standing(Some("drain-pump.seized"), &|b| {
        let mode = FailureMode {
            id: "tub.seeping".to_owned(),
            component: Component::Tub,
            weight: 1.0,
            cured_by: "P-1901".to_owned(),
            by_hand: false,
            changes: vec![(Param::TubLeakKv, leaking)],
            presence: Presence::Steady,
        };
        b.machine_mut().plant_mut().inject_fault(&mode);
    });
    bench
        .act(&Action::Order("P-1001".to_owned()))
        .expect("sold");
    assert!(bench.machine().plant().water().tub_l < 0.1, "it seeped out");
}
