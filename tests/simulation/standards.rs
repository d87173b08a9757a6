//! The running machine against published standards and handbook formulas, each named at its test.

use crate::stage::hands::{HandAction, choose, entry, lists, perform, tap};
use crate::stage::{MAINS, Stage, drive};
use detent_simulation::controller::{ControlMode, Phase, PhaseKind, Routine, Selector};
use detent_simulation::interface::{Button, Direction, Pin, Relay};
use detent_simulation::machine::Machine;
use detent_simulation::plant::drive::relative_centrifugal_force;
use detent_simulation::plant::{Param, Plant, Probes};
use detent_simulation::units::{Span, TICKS_PER_S};
use detent_training::bench::Bench;
use detent_training::lesson::{Mains, start_wash, survey};
use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::collections::VecDeque;

/// IEC 60335-1, 22.5: not more than 34 V between the pins of the plug, one second after it was
/// pulled (limit and "at the peak of the wave" from a secondary source, clause from memory).
const PLUG_PINS_V: f64 = 34.0;

/// What stands on the plug's pins one second after it was pulled, by stepping the plant; checked
/// with a voltmeter's input across them as well.
fn plug_pins_v(mut plant: Plant) -> f64 {
    drive(&mut plant, &[], Span::from_s(5));
    plant.set_plugged(false);
    drive(&mut plant, &[], Span::from_s(1));
    let charge_v = plant.supply().filter_v;
    let metered_v = Probes::on(Pin::PlugLine, Pin::PlugNeutral).volts_dc(&plant.probed(), 10e6);
    assert!(
        (metered_v - charge_v).abs() < 0.02 * charge_v + 0.01,
        "{metered_v} {charge_v}"
    );
    charge_v
}

#[test]
fn plug_pins_are_safe_one_second_after_unplugging() {
    let stage = Stage::new();
    for mains in MAINS {
        let rating = mains.rating();
        let sound = stage.sound(mains);
        let pins_v = plug_pins_v(stage.plant(mains));
        let farads = sound.get(Param::FilterXFarads);
        let ohms = sound.get(Param::FilterBleederOhms);
        let exact_v = rating.volts * 2.0_f64.sqrt() * libm::exp(-1.0 / (farads * ohms));
        println!("{mains:?}: {pins_v:.2} V on the plug's pins after 1 s, limit {PLUG_PINS_V} V");
        assert!((pins_v / exact_v - 1.0).abs() < 1e-6, "{pins_v} {exact_v}");
        assert!(pins_v <= PLUG_PINS_V);

        let mut open = sound.clone();
        open.set(Param::FilterBleederOhms, 1e9);
        let pins_v = plug_pins_v(crate::stage::plant(&open, rating));
        assert!(pins_v > PLUG_PINS_V, "without its bleeder {pins_v} V");
    }
    // 0.47 µF and 1 MΩ: 20.21 V at 120 V pass, 38.74 V at 230 V do not. Independent arithmetic,
    // which an ngspice transient confirmed.
    for (mains, known_v) in [(Mains::V120Hz60, 20.21), (Mains::V230Hz50, 38.74)] {
        let mut p = stage.sound(mains).clone();
        p.set(Param::FilterXFarads, 0.47e-6);
        p.set(Param::FilterBleederOhms, 1e6);
        let pins_v = plug_pins_v(crate::stage::plant(&p, mains.rating()));
        assert!((pins_v - known_v).abs() < 0.01, "{mains:?}: {pins_v}");
    }
}

/// Lamps that show numbers, and the lock lamp.
const LAMPS: usize = 17;

/// Follows every lamp and keeps its changes of the last second. WCAG 2.2, success criterion 2.3.1
/// (W3C): nothing flashes more than three times in any one second; a flash is a pair of opposing
/// changes.
#[derive(Default)]
struct FlashWatch {
    lit: u32,
    changes: [VecDeque<(u64, bool)>; LAMPS],
    most: usize,
    lightings: u64,
}

impl FlashWatch {
    #[track_caller]
    fn look(&mut self, machine: &Machine) {
        let lamps = machine.outputs().lamps;
        let lit = u32::from(lamps.code) | u32::from(lamps.lock) << 16;
        let now = machine.now().0;
        for (lamp, changes) in self.changes.iter_mut().enumerate() {
            let bit = 1 << lamp;
            while changes
                .front()
                .is_some_and(|(at, _)| at + TICKS_PER_S <= now)
            {
                changes.pop_front();
            }
            if (lit ^ self.lit) & bit != 0 {
                let on = lit & bit != 0;
                changes.push_back((now, on));
                self.lightings += u64::from(on);
                let flashes = changes.len() / 2;
                let lightings = changes.iter().filter(|(_, on)| *on).count();
                self.most = self.most.max(flashes).max(lightings);
                assert!(
                    flashes <= 3 && lightings <= 3,
                    "lamp {lamp} at {}: {flashes} flashes, {lightings} lightings in a second: {changes:?}",
                    machine.now()
                );
            }
        }
        self.lit = lit;
    }

    #[track_caller]
    fn wait(&mut self, bench: &mut Bench, span: Span) {
        for _ in 0..span.0 {
            bench.step();
            self.look(bench.machine());
        }
    }

    /// A press, and the hand's way back.
    #[track_caller]
    fn hold(&mut self, bench: &mut Bench, button: Button, span: Span) {
        self.perform(bench, &tap(button, span.0));
    }

    #[track_caller]
    fn perform(&mut self, bench: &mut Bench, deeds: &[HandAction]) {
        for deed in deeds {
            perform(bench.machine_mut(), deed, |machine| self.look(machine));
        }
    }

    /// Dial and buttons as wild as hands can be, and wilder.
    #[track_caller]
    fn go_wild(&mut self, bench: &mut Bench, rng: &mut ChaCha8Rng, span: Span, buttons: bool) {
        for _ in 0..span.0 {
            match rng.next_u32() % 8 {
                0..3 => bench.machine_mut().detent(Direction::Right),
                3 => bench.machine_mut().detent(Direction::Left),
                4 if buttons => bench
                    .machine_mut()
                    .press(Button::Start, rng.next_u32() & 1 == 0),
                5 if buttons => bench
                    .machine_mut()
                    .press(Button::Stop, rng.next_u32() & 7 == 0),
                _ => {}
            }
            self.wait(bench, Span(1));
        }
        bench.machine_mut().press(Button::Start, false);
        bench.machine_mut().press(Button::Stop, false);
        self.wait(bench, Span::from_s(1));
    }
}

/// Into service mode, watching the lamps; false when the gesture was not taken.
fn enter(bench: &mut Bench, watch: &mut FlashWatch) -> bool {
    let deeds = entry(bench.machine().board());
    watch.perform(bench, &deeds);
    bench.machine().control().control_status().mode == ControlMode::Service
}

/// Chooses a routine; a dial goes once past its index, which sets right what haste miscounted.
fn point(bench: &mut Bench, watch: &mut FlashWatch, to: u8) {
    let board = bench.machine().board().clone();
    let (_, menu) = lists(&board);
    let targets = match board.panel.selector {
        Selector::Dial { .. } => vec![0, to],
        _ => vec![to],
    };
    for target in targets {
        let from = match board.panel.selector.turn() {
            Some(_) => bench.machine().plant().dial_position(),
            None => bench.machine().control().position(),
        };
        watch.perform(bench, &choose(&board, &menu, from, target));
    }
}

/// Leaves a fault hold in the way that works on this board.
fn reset(bench: &mut Bench, watch: &mut FlashWatch) {
    let resets = bench.machine().board().resets.clone();
    if let Some(hold) = resets.hold {
        watch.hold(bench, hold.button, Span::from_ms(u64::from(hold.ms) + 500));
    } else if let Some(lid) = resets.lid_cycle {
        for _ in 0..lid.cycles {
            watch.perform(
                bench,
                &[
                    HandAction::Lid(true),
                    HandAction::Wait(60),
                    HandAction::Lid(false),
                    HandAction::Wait(60),
                ],
            );
        }
    }
    assert_eq!(
        bench.machine().control().control_status().mode,
        ControlMode::Idle
    );
}

#[test]
fn no_lamp_flashes_more_than_three_times_in_a_second_in_idle_and_in_a_program() {
    let seen: Vec<(u64, usize)> = Stage::every().iter().map(idle_and_program).collect();
    assert!(
        seen.iter().all(|(lightings, _)| *lightings > 0)
            && seen
                .iter()
                .any(|(lightings, most)| *lightings > 1000 && *most == 3),
        "the lamps were put to the test: {seen:?}"
    );
}

/// Lightings, and the most of one lamp in a second.
fn idle_and_program(stage: &Stage) -> (u64, usize) {
    let mut rng = ChaCha8Rng::seed_from_u64(11);
    let mut watch = FlashWatch::default();
    let mut bench = stage.bench(stage.board().mains[0], None, 1);
    watch.go_wild(&mut bench, &mut rng, Span::from_s(60), false);
    // Turned at every even pace that a hand has.
    for every in 1..60 {
        for _ in 0..40 {
            bench.machine_mut().detent(Direction::Right);
            watch.wait(&mut bench, Span(every));
        }
    }
    // A fresh start, with the first program chosen.
    for plugged in [false, true] {
        bench.machine_mut().plant_mut().set_plugged(plugged);
        watch.wait(&mut bench, Span::from_s(150));
    }
    let (programs, _) = lists(stage.board());
    let from = bench.machine().control().position();
    watch.perform(
        &mut bench,
        &choose(stage.board(), &programs, from, programs[0]),
    );
    watch.hold(&mut bench, Button::Start, Span::from_ms(300));
    assert_eq!(
        bench.machine().control().control_status().mode,
        ControlMode::Program
    );
    for _ in 0..8 {
        watch.go_wild(&mut bench, &mut rng, Span::from_s(20), true);
        watch.wait(&mut bench, Span::from_s(60));
    }
    // The plug in and out.
    for ms in [50, 100, 200, 400, 800, 1500, 3000, 60_000] {
        for plugged in [false, true, false, true] {
            bench.machine_mut().plant_mut().set_plugged(plugged);
            watch.wait(&mut bench, Span::from_ms(ms));
        }
    }
    (watch.lightings, watch.most)
}

#[test]
fn no_lamp_flashes_more_than_three_times_in_a_second_in_a_whole_wash() {
    for stage in Stage::every() {
        let mut watch = FlashWatch::default();
        let mut bench = stage.bench(stage.board().mains[0], None, 1);
        start_wash(&mut bench);
        watch.wait(&mut bench, Span::from_s(45 * 60));
        assert!(watch.lightings >= 1, "{}", stage.board().id);
    }
}

#[test]
fn no_lamp_flashes_more_than_three_times_in_a_second_in_any_service_routine() {
    Stage::every().iter().for_each(service_routines);
}

fn service_routines(stage: &Stage) {
    let mains = stage.board().mains[0];
    let mut rng = ChaCha8Rng::seed_from_u64(12);
    for menu in &stage.board().menu {
        let mut watch = FlashWatch::default();
        // A fault gives the code list something to show and recalibration something to fail on.
        let mut bench = stage.bench(mains, Some("thermistor.open"), 1);
        survey::wash(&mut bench);
        reset(&mut bench, &mut watch);
        assert!(enter(&mut bench, &mut watch), "{:?}", menu.routine);
        watch.go_wild(&mut bench, &mut rng, Span::from_s(5), false);
        point(&mut bench, &mut watch, menu.position);
        watch.hold(&mut bench, Button::Start, Span::from_ms(200));
        let routine = bench.machine().control().control_status().routine;
        assert_eq!(routine, Some(menu.routine));
        watch.wait(&mut bench, Span::from_s(20));
        // Pages leafed through as fast as a button goes.
        for _ in 0..30 {
            watch.hold(&mut bench, stage.board().service.page, Span::from_ms(60));
        }
        watch.go_wild(&mut bench, &mut rng, Span::from_s(10), true);
        watch.wait(&mut bench, Span::from_s(20));
        assert!(
            watch.lightings > 0,
            "{}: {:?}",
            stage.board().id,
            menu.routine
        );
    }
    // And a recalibration that passes, from end to end.
    let mut watch = FlashWatch::default();
    let mut bench = stage.bench(mains, None, 1);
    watch.wait(&mut bench, Span::from_s(3));
    assert!(enter(&mut bench, &mut watch));
    let at = bench.machine().board().position_of(Routine::Recalibrate);
    let at = at.expect("the board recalibrates");
    point(&mut bench, &mut watch, at);
    watch.hold(&mut bench, Button::Start, Span::from_ms(200));
    watch.wait(&mut bench, Span::from_s(200));
    assert_eq!(bench.machine().control().control_status().calibrations, 1);
}

/// IEC 60073 (from a secondary source): normal flashing is 1.4 to 2.8 Hz, about as long lit as dark.
#[test]
fn the_lock_lamp_blinks_at_the_standard_rate_in_a_fault_hold() {
    Stage::every().iter().for_each(blinks_in_a_hold);
}

fn blinks_in_a_hold(stage: &Stage) {
    // The lamp that blinks for a hold: the lock lamp, or the one lamp there is.
    let blinks = |bench: &Bench| {
        let lamps = bench.machine().outputs().lamps;
        if stage.board().lamps.lock_lamp {
            lamps.lock
        } else {
            lamps.code != 0
        }
    };
    for fault in [
        "thermistor.open",
        "drain-pump.seized",
        "lid-lock.contact-open",
    ] {
        let mut bench = stage.bench(stage.board().mains[0], Some(fault), 1);
        survey::wash(&mut bench);
        assert_eq!(
            bench.machine().control().control_status().mode,
            ControlMode::Hold
        );
        let (mut lightings, mut lit_ticks, mut last) = (0, 0, blinks(&bench));
        let seconds = 20;
        for _ in 0..seconds * TICKS_PER_S {
            bench.step();
            let lit = blinks(&bench);
            lightings += u64::from(lit && !last);
            lit_ticks += u64::from(lit);
            last = lit;
        }
        let hz = lightings as f64 / seconds as f64;
        let share = lit_ticks as f64 / (seconds * TICKS_PER_S) as f64;
        println!("{fault}: {hz} Hz, lit {share:.2} of the time");
        assert!((1.4..=2.8).contains(&hz), "{hz} Hz");
        assert!((0.4..=0.6).contains(&share), "{share}");
    }
}

/// Runs the wash to its last spin and looks at the motor there: mean speed while it is driven at
/// speed, rev/min, and the basket's highest, rev/min.
fn last_spin(stage: &Stage, mains: Mains) -> (f64, f64) {
    let mut bench = stage.bench(mains, None, 1);
    start_wash(&mut bench);
    let phases = bench.machine().board().programs[0].phases.clone();
    let last = phases.last().expect("a program has phases");
    assert!(matches!(last, Phase::Spin { .. }));
    while bench.machine().control().control_status().mode == ControlMode::Program {
        let view = bench.machine().control().view();
        if view.phase == Some(PhaseKind::Spin)
            && bench.now().seconds() > 30.0 * 60.0
            && view.rpm > 500.0
        {
            break;
        }
        bench.wait(Span(100));
    }
    bench.wait(Span::from_s(90));
    let (mut sum, mut ticks, mut basket) = (0.0, 0, 0.0_f64);
    for _ in 0..60 * TICKS_PER_S {
        bench.step();
        let machine = bench.machine();
        basket = basket.max(machine.view().basket_rpm);
        if machine.outputs().relays.has(Relay::MotorA) {
            sum += machine.plant().drive().motor_rad_s * 30.0 / std::f64::consts::PI;
            ticks += 1;
        }
    }
    assert!(ticks > 200, "the motor was driven for {ticks} ticks only");
    (sum / f64::from(ticks), basket)
}

/// n = 120 f / p (any electrical machines handbook); an induction motor of this size runs at one to
/// eight per cent slip (common practice, no source).
#[test]
fn the_motor_settles_a_little_below_synchronous_speed() {
    let stage = Stage::new();
    for mains in MAINS {
        let synchronous_rpm = 120.0 * mains.rating().hz / 4.0;
        let (rpm, basket_rpm) = last_spin(&stage, mains);
        let slip = 1.0 - rpm / synchronous_rpm;
        // RCF = 1.118e-5 r[cm] n², the rule of centrifuge handbooks.
        let radius_m = 0.21;
        let g = relative_centrifugal_force(radius_m, basket_rpm);
        let rule = 1.118e-5 * radius_m * 100.0 * basket_rpm * basket_rpm;
        println!(
            "{mains:?}: {rpm:.0} of {synchronous_rpm} rev/min, slip {:.1} %; basket {basket_rpm:.0} rev/min, {g:.0} g",
            slip * 100.0
        );
        assert!((0.01..=0.08).contains(&slip), "slip {slip}");
        assert!((g / rule - 1.0).abs() < 1e-3, "{g} {rule}");
    }
}

/// Relative centrifugal force, RCF = 1.118e-5 r[cm] n² (centrifuge handbooks), at every spin speed of
/// the board: water leaves the load, and no spin is slower than one g, where laundry would fall.
#[test]
fn every_spin_speed_presses_the_laundry_to_the_wall() {
    let stage = Stage::new();
    let board = stage.library(Mains::V120Hz60).board;
    let mut speeds = 0;
    for phase in board.programs.iter().flat_map(|p| &p.phases) {
        if let Phase::Spin { rpm, .. } = phase {
            let g = relative_centrifugal_force(0.21, *rpm);
            let rule = 1.118e-5 * 21.0 * rpm * rpm;
            assert!((g / rule - 1.0).abs() < 1e-3, "{rpm}: {g} {rule}");
            assert!(g > 1.0);
            speeds += 1;
        }
    }
    assert!(speeds > 3);
    // 1 g at 59.81 rev/min and 0.25 m: the same rule, turned round.
    assert!((relative_centrifugal_force(0.25, 59.81) - 1.0).abs() < 1e-3);
}

/// Q [m³/h] = Kv √(Δp [bar]) for cold water (IEC 60534-2-1, from memory), through the running plant: relay,
/// network, coil, armature, water.
#[test]
fn valves_fill_at_the_rate_of_their_flow_coefficient() {
    let stage = Stage::new();
    for mains in MAINS {
        for (relay, kv, kpa, nth) in [
            (Relay::Cold, Param::ColdKv, Param::SupplyColdKpa, 0),
            (Relay::Hot, Param::HotKv, Param::SupplyHotKpa, 1),
        ] {
            let p = stage.sound(mains);
            let l_min = p.get(kv) * (p.get(kpa) / 100.0).sqrt() * 1000.0 / 60.0;
            let mut plant = stage.plant(mains);
            drive(&mut plant, &[], Span::from_s(1));
            assert_eq!(plant.water().tub_l, 0.0);
            drive(&mut plant, &[relay], Span::from_s(120));
            let water = plant.water();
            assert!((water.flows_l_min[nth] / l_min - 1.0).abs() < 1e-9);
            // The first tick is the armature's.
            assert!(
                (water.tub_l / (2.0 * l_min) - 1.0).abs() < 2e-3,
                "{} L",
                water.tub_l
            );
        }
    }
}

/// The pump works where its curve H = H₀ (1 − (Q/Q₀)²) meets the lift and the loss of the hose,
/// (Q/Kv)² bar (IEC 60534-2-1 turned round, from memory; how pump and system curves meet is in any handbook). Found
/// here by bisection.
#[test]
fn the_pump_drains_where_its_curve_meets_the_hose() {
    let stage = Stage::new();
    let p = stage.sound(Mains::V120Hz60);
    let mut plant = stage.plant(Mains::V120Hz60);
    drive(&mut plant, &[Relay::Cold, Relay::Hot], Span::from_s(120));
    drive(&mut plant, &[Relay::Pump], Span::from_s(1));
    let mut last = f64::INFINITY;
    for _ in 0..5 {
        let level_m = plant.water().level_mm() / 1000.0;
        drive(&mut plant, &[Relay::Pump], Span(1));
        let flow_l_min = plant.water().flows_l_min[2];
        let (h0_m, q0) = (p.get(Param::PumpHeadM), p.get(Param::PumpFlowLMin));
        let lift_m = p.get(Param::StandpipeM) - level_m;
        // Head to spare at a flow of q L/min, m.
        let spare = |q: f64| {
            let m3_h = q * 60.0 / 1000.0;
            let loss_bar = (m3_h / p.get(Param::DrainHoseKv)) * (m3_h / p.get(Param::DrainHoseKv));
            h0_m * (1.0 - (q / q0) * (q / q0)) - lift_m - loss_bar * 1e5 / (1000.0 * 9.806_65)
        };
        let (mut low, mut high) = (0.0, q0);
        for _ in 0..60 {
            let mid = 0.5 * (low + high);
            if spare(mid) > 0.0 {
                low = mid;
            } else {
                high = mid;
            }
        }
        println!(
            "at {:.0} mm: {flow_l_min:.3} L/min, by bisection {low:.3}",
            level_m * 1000.0
        );
        assert!((flow_l_min / low - 1.0).abs() < 1e-6);
        assert!(flow_l_min < last, "the deeper the water, the faster");
        last = flow_l_min;
        drive(&mut plant, &[Relay::Pump], Span::from_s(10));
    }
}
