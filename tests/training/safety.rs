//! Whatever a person does to it, in whatever order: the control keeps its promises, nothing panics,
//! and the same deeds end in the same state.
//!
//! The promises are those of the firmware's interlocks. They hold for a sound machine and for faults
//! that leave the interlock itself whole (a welded lock contact or motor switch does not).

use crate::stage::Stage;
use crate::stage::hands::{HandAction, after_entry, choose, entry, lists, perform, tap};
use detent_simulation::controller::ControlMode;
use detent_simulation::interface::{Button, Component, Direction, Relay, Relays};
use detent_simulation::machine::Machine;
use detent_simulation::plant::{FailureMode, Op, Param, Presence};
use detent_simulation::units::{Span, Time};
use detent_training::bench::Bench;
use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;

/// Things that come to mind in a run; each is one deed or several.
const THOUGHTS: usize = 1000;
/// A basket that turns faster can hurt, rev/min.
const TURNING_RPM: f64 = 30.0;
/// The lid switch is believed after its debounce; a deed of the control may follow one tick later.
const NOTICED: u64 = 8;
/// Without supply the bolt falls back at once and the basket runs out by itself: the promise about
/// the lid holds again after this long, s (longer than any run-out).
const RUN_OUT_S: u64 = 30;

/// `None` is the sound machine.
const FAULTS: [Option<&str>; 15] = [
    None,
    Some("pickup.no-output"),
    None,
    Some("harness.lock-return-loose"),
    None,
    Some("belt.broken"),
    Some("run-capacitor.open"),
    None,
    Some("inlet-cold.stuck-open"),
    Some("drain-pump.seized"),
    None,
    Some("pressure-sensor.no-output"),
    Some("clutch-actuator.cam-switch-closed"),
    Some("lid-lock.contact-open"),
    Some("thermistor.open"),
];

/// What a run went through, to show that the promises were put to the test.
#[derive(Clone, Copy, Debug, Default)]
struct Seen {
    driven: u64,
    spinning: u64,
    filling: u64,
    lid_open: u64,
    holds: u64,
    service: u64,
}

impl Seen {
    fn add(&mut self, other: Seen) {
        self.driven += other.driven;
        self.spinning += other.spinning;
        self.filling += other.filling;
        self.lid_open += other.lid_open;
        self.holds += other.holds;
        self.service += other.service;
    }
}

struct Watcher {
    what: String,
    sound: bool,
    last_mode: Option<ControlMode>,
    driven_at: [Option<Time>; 2],
    lid_open_since: Option<Time>,
    supply_lost: Option<Time>,
    seen: Seen,
}

impl Watcher {
    fn new(what: String, sound: bool) -> Watcher {
        Watcher {
            what,
            sound,
            last_mode: None,
            driven_at: [None; 2],
            lid_open_since: None,
            supply_lost: None,
            seen: Seen::default(),
        }
    }

    /// Every promise, after every tick.
    fn look(&mut self, machine: &Machine) {
        let (plant, now, what) = (machine.plant(), machine.now(), &self.what);
        let on = machine.outputs().relays;
        let has = |relay| on.has(relay);
        let motor = has(Relay::MotorA) || has(Relay::MotorB);
        let control_status = machine.control().control_status();

        if motor {
            assert!(
                has(Relay::Lock) && plant.bolted(),
                "{what}, {now}: the motor is driven with the lock not driven and proven"
            );
            assert!(
                !plant.lid_open(),
                "{what}, {now}: the motor is driven with the lid open"
            );
            assert!(
                !(has(Relay::MotorA) && has(Relay::MotorB)),
                "{what}, {now}: both directions at once"
            );
            assert!(
                !has(Relay::Clutch),
                "{what}, {now}: the clutch actuator moves under the motor"
            );
        }
        if has(Relay::Cold) || has(Relay::Hot) {
            assert!(
                has(Relay::Lock) && plant.bolted(),
                "{what}, {now}: water runs with the lock not driven and proven"
            );
        }
        let reverse = Span::from_ms(u64::from(machine.board().motor.reverse_ms));
        for (way, relay) in [Relay::MotorA, Relay::MotorB].into_iter().enumerate() {
            if !has(relay) {
                continue;
            }
            if let Some(at) = self.driven_at[1 - way] {
                assert!(
                    now.since(at) >= reverse,
                    "{what}, {now}: reversed without a rest"
                );
            }
            self.driven_at[way] = Some(now);
        }

        self.lid_open_since = plant.lid_open().then(|| self.lid_open_since.unwrap_or(now));
        let lid_noticed = self
            .lid_open_since
            .is_some_and(|since| now.since(since) >= Span(NOTICED));
        if control_status.mode == ControlMode::Program && lid_noticed {
            let allowed = Relays::NONE.with(Relay::Lock, has(Relay::Lock));
            assert_eq!(
                on, allowed,
                "{what}, {now}: a program works with the lid open"
            );
        }
        // The tick in which the mode changes may still have the old mode's relays.
        let settled = self.last_mode == Some(control_status.mode);
        if settled
            && (control_status.mode == ControlMode::Idle || control_status.mode.is_without_supply())
        {
            assert!(
                !(has(Relay::Cold) || has(Relay::Hot) || has(Relay::Pump) || motor),
                "{what}, {now}: a load is driven in mode {}",
                control_status.mode
            );
        }
        if settled && control_status.mode == ControlMode::Hold {
            assert!(
                !(has(Relay::Cold) || has(Relay::Hot) || motor),
                "{what}, {now}: water or motor in a fault hold"
            );
        }
        if self.sound {
            assert_eq!(
                plant.water().floor_l,
                0.0,
                "{what}, {now}: water on the floor"
            );
        }

        // The bolt is held by current: nobody can promise anything without the plug.
        if !plant.plugged() || control_status.mode.is_without_supply() {
            self.supply_lost = Some(now);
        }
        let supplied = self
            .supply_lost
            .is_none_or(|at| now.since(at) >= Span::from_s(RUN_OUT_S));
        let rpm = if plant.basket_coupled() {
            plant.drive().pulley_rpm()
        } else {
            0.0
        };
        if supplied {
            assert!(
                !(plant.lid_open() && rpm > TURNING_RPM),
                "{what}, {now}: the lid is open over a basket at {rpm:.0} rev/min"
            );
        }

        self.seen.driven += u64::from(motor);
        self.seen.spinning += u64::from(rpm > 100.0);
        self.seen.filling += u64::from(has(Relay::Cold) || has(Relay::Hot));
        self.seen.lid_open += u64::from(plant.lid_open());
        self.seen.holds += u64::from(control_status.mode == ControlMode::Hold);
        self.seen.service += u64::from(control_status.mode == ControlMode::Service);
        self.last_mode = Some(control_status.mode);
    }
}

/// The next thing that comes to mind; wild, but often enough what makes the machine work.
fn think(bench: &Bench, rng: &mut ChaCha8Rng) -> Vec<HandAction> {
    let mut below = |n: u32| rng.next_u32() % n;
    let machine = bench.machine();
    let board = machine.board();
    let at = match board.panel.selector.turn() {
        Some(_) => machine.plant().dial_position(),
        None => machine.control().position(),
    };
    let (programs, menu) = lists(board);
    let any_button = |n: u32| board.panel.buttons[n as usize % board.panel.buttons.len()];
    let mut deeds = Vec::new();
    match below(100) {
        0..20 => deeds.push(HandAction::Wait(u64::from(1 + below(300)))),
        20..28 => deeds.push(HandAction::Wait(u64::from(1000 + below(4000)))),
        28..40 => {
            let way = [Direction::Right, Direction::Left][below(2) as usize];
            for _ in 0..1 + below(9) {
                deeds.extend([
                    HandAction::Detent(way),
                    HandAction::Wait(u64::from(below(30))),
                ]);
            }
        }
        40..50 => {
            let button = any_button(below(100));
            deeds.extend(tap(button, u64::from(1 + below(320))));
        }
        50..56 => {
            let button = any_button(below(100));
            deeds.push(HandAction::Press(button, below(2) == 0));
        }
        56..64 => deeds.push(HandAction::Lid(true)),
        64..76 => deeds.push(HandAction::Lid(false)),
        76..78 => {
            deeds.extend([
                HandAction::Plug(false),
                HandAction::Wait(u64::from(1 + below(900))),
            ]);
            deeds.extend([HandAction::Plug(true), HandAction::Wait(200)]);
        }
        78 => {
            let all = [
                Component::Thermistor,
                Component::DrainPump,
                Component::InletCold,
            ];
            let component = all[below(3) as usize];
            deeds.extend([
                HandAction::Connector(component, true),
                HandAction::Wait(u64::from(1 + below(2000))),
                HandAction::Connector(component, false),
            ]);
        }
        79 => deeds.push(HandAction::BailOut),
        80..90 => {
            // A program, most often one that soon spins.
            deeds.push(HandAction::Lid(false));
            let nth = if below(2) == 0 {
                programs.len() - 1
            } else {
                below(programs.len() as u32) as usize
            };
            deeds.extend(tap(Button::Stop, 230));
            deeds.extend(choose(board, &programs, at, programs[nth]));
            deeds.extend(tap(Button::Start, 20));
            deeds.push(HandAction::Wait(u64::from(below(6000))));
        }
        _ => {
            deeds.extend(entry(board));
            let item = below(menu.len() as u32) as usize;
            let from = after_entry(board, at);
            deeds.extend(choose(board, &menu, from, menu[item]));
            deeds.extend(tap(Button::Start, 20));
            deeds.push(HandAction::Wait(u64::from(below(4000))));
        }
    }
    deeds
}

fn bench(stage: &Stage, seed: u64) -> (Bench, Watcher) {
    let fault = FAULTS[seed as usize % FAULTS.len()];
    let board = stage.board();
    let mains = board.mains[(seed / 3) as usize % board.mains.len()];
    let name = fault.unwrap_or("sound");
    let what = format!("{}, seed {seed}, {mains:?}, {name}", board.id);
    (
        stage.bench(mains, fault, seed),
        Watcher::new(what, fault.is_none()),
    )
}

fn check_runs(board: usize, seeds: std::ops::Range<u64>) {
    let stage = Stage::with(board);
    let mut seen = Seen::default();
    let (mut ticks, mut deeds) = (0, 0);
    for seed in seeds {
        let mut rng = ChaCha8Rng::seed_from_u64(seed);
        let (mut first, mut watcher) = bench(&stage, seed);
        perform(first.machine_mut(), &HandAction::Wait(300), |m| {
            watcher.look(m)
        });
        let mut done = Vec::new();
        for _ in 0..THOUGHTS {
            for deed in think(&first, &mut rng) {
                perform(first.machine_mut(), &deed, |m| watcher.look(m));
                done.push(deed);
            }
        }
        let (mut second, _) = bench(&stage, seed);
        perform(second.machine_mut(), &HandAction::Wait(300), |_| ());
        for deed in &done {
            perform(second.machine_mut(), deed, |_| ());
        }
        assert_eq!(
            first.machine().state_hash(),
            second.machine().state_hash(),
            "{}: done again it ends elsewhere",
            watcher.what
        );
        seen.add(watcher.seen);
        ticks += first.now().0;
        deeds += done.len();
    }
    println!("{deeds} deeds in {ticks} ticks, of them {seen:?}");
    for (what, count) in [
        ("driven", seen.driven),
        ("spinning", seen.spinning),
        ("filling", seen.filling),
        ("lid open", seen.lid_open),
        ("fault hold", seen.holds),
        ("service", seen.service),
    ] {
        assert!(
            count > 1000,
            "{what} only {count} ticks: the promises were not put to the test"
        );
    }
}

#[test]
fn the_first_board_keeps_its_promises_whatever_is_done_1() {
    check_runs(0, 0..15);
}

#[test]
fn the_first_board_keeps_its_promises_whatever_is_done_2() {
    check_runs(0, 15..30);
}

#[test]
fn the_second_board_keeps_its_promises_whatever_is_done_1() {
    check_runs(1, 0..15);
}

#[test]
fn the_second_board_keeps_its_promises_whatever_is_done_2() {
    check_runs(1, 15..30);
}

#[test]
fn the_third_board_keeps_its_promises_whatever_is_done_1() {
    check_runs(2, 0..15);
}

#[test]
fn the_third_board_keeps_its_promises_whatever_is_done_2() {
    check_runs(2, 15..30);
}

#[test]
fn every_board_is_put_to_the_test() {
    assert_eq!(Stage::every().len(), 3, "a new board wants its runs above");
}

/// The watcher itself must be able to see: an interlock that breaks under way is found out.
#[test]
#[should_panic(expected = "the motor is driven with the lock not driven and proven")]
fn a_lock_that_lets_go_while_its_contact_sticks_is_seen() {
    let stage = Stage::new();
    let (mut bench, mut watcher) = bench(&stage, 0);
    let board = stage.board();
    let (programs, _) = lists(board);
    let mut deeds = vec![HandAction::Wait(300)];
    deeds.extend(choose(board, &programs, 0, programs[programs.len() - 1]));
    deeds.extend(tap(Button::Start, 20));
    for deed in &deeds {
        perform(bench.machine_mut(), deed, |m| watcher.look(m));
    }
    // The lid is locked and the basket still stands: once it turns, the bolt stays where it is.
    while !bench.machine().plant().bolted() {
        perform(bench.machine_mut(), &HandAction::Wait(10), |m| {
            watcher.look(m)
        });
    }
    bench.machine_mut().plant_mut().inject_fault(&FailureMode {
        id: "lid-lock.broken-bolt".to_owned(),
        component: Component::LidLock,
        weight: 1.0,
        cured_by: "P-0701".to_owned(),
        by_hand: false,
        changes: vec![
            (Param::LockContactOpenOhms, Op::Set(0.04)),
            (Param::LockCoilOhms, Op::Set(1e8)),
        ],
        presence: Presence::Steady,
    });
    perform(bench.machine_mut(), &HandAction::Wait(6000), |m| {
        watcher.look(m)
    });
}
