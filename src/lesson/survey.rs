//! Runs the machine with each fault of the catalogue and writes down what the control raises by
//! itself and what a meter shows: the table of faults, made by simulation.

use super::set_up::{self, Library};
use crate::bench::script::{Condition, Step, entry_steps};
use crate::bench::{Bench, Display, LandmarkKind, MeterMode, meter};
use crate::controller::{Monitor, Routine};
use crate::plant::{Button, Component, Connector, FailureMode, Pin, Rating, Side, Terminal};
use crate::units::Span;

/// The longest wash that is waited for.
const WASH: Span = Span::from_s(75 * 60);
/// The longest recalibration that is waited for.
const RECALIBRATION_S: u64 = 600;

/// One fault and what it does.
#[derive(Clone, Debug)]
pub struct Row {
    /// The failure mode.
    pub mode: FailureMode,
    /// Codes that the control raised by itself, in order, in a wash and in a recalibration.
    pub codes: Vec<(u8, Monitor)>,
    /// Every standard reading.
    pub readings: Vec<Taken>,
}

/// A standard reading.
#[derive(Clone, Debug, PartialEq)]
pub struct Taken {
    /// State of the machine: `cold`, `test-pump`…
    pub state: &'static str,
    /// Meter setting.
    pub mode: MeterMode,
    /// Pin under the red probe.
    pub red: Pin,
    /// Pin under the black probe.
    pub black: Pin,
    /// What the meter shows.
    pub shown: Display,
}

/// Makes a bench with one steady fault, or none, and a calibrated board.
pub fn bench_with(
    library: &Library<'_>,
    rating: Rating,
    mode: Option<&FailureMode>,
    seed: u64,
) -> Bench {
    let faults = mode.cloned().into_iter().collect();
    Bench::new(library.setup(rating, faults, seed))
}

/// A row for every failure mode of the library.
pub fn survey(library: &Library<'_>, rating: Rating) -> Vec<Row> {
    library
        .modes
        .iter()
        .map(|mode| row(library, rating, mode))
        .collect()
}

/// Runs one failure mode: a wash, a recalibration, and every standard reading.
pub fn row(library: &Library<'_>, rating: Rating, mode: &FailureMode) -> Row {
    let mut bench = bench_with(library, rating, Some(mode), 1);
    wash(&mut bench);
    let mut codes = raised(&bench);
    let mut bench = bench_with(library, rating, Some(mode), 2);
    bench.wait(Span::from_s(3));
    if recalibrate(&mut bench) {
        for code in raised(&bench) {
            if !codes.contains(&code) {
                codes.push(code);
            }
        }
    }
    Row {
        mode: mode.clone(),
        codes,
        readings: readings(library, rating, mode),
    }
}

/// The customer's wash, to its end or to the fault hold.
pub fn wash(bench: &mut Bench) {
    set_up::wash(bench, WASH);
}

/// Enters service mode and recalibrates; false when service mode cannot be entered.
pub fn recalibrate(bench: &mut Bench) -> bool {
    if !enter_service(bench) || !routine(bench, Routine::Recalibrate) {
        return false;
    }
    Step::Until {
        what: Condition::ServiceReady,
        limit_s: RECALIBRATION_S,
    }
    .run(bench)
    .is_ok()
}

/// Does the board's entry gesture; true when service mode is entered.
pub fn enter_service(bench: &mut Bench) -> bool {
    for step in entry_steps(&bench.machine().board().gesture) {
        if step.run(bench).is_err() {
            return false;
        }
    }
    bench.machine().control().glance().mode == "service"
}

/// Starts a routine from the menu; false when the board lacks it.
fn routine(bench: &mut Bench, wanted: Routine) -> bool {
    let Some(position) = bench
        .machine()
        .board()
        .menu
        .iter()
        .find(|m| m.routine == wanted)
        .map(|m| m.position)
    else {
        return false;
    };
    [
        Step::Point {
            to: position,
            every_ms: 200,
        },
        Step::Wait { s: 1 },
        Step::Tap(Button::Start),
    ]
    .iter()
    .all(|step| step.run(bench).is_ok())
}

fn raised(bench: &Bench) -> Vec<(u8, Monitor)> {
    let board = bench.machine().board();
    bench
        .landmarks()
        .iter()
        .filter_map(|l| match l.kind {
            LandmarkKind::Held(m) | LandmarkKind::CalibrationFailed(m) => {
                board.code_of(m).map(|c| (c, m))
            }
            _ => None,
        })
        .collect()
}

/// Every standard reading: resistances on the dead machine with connectors pulled, and voltages,
/// currents and pulses while service mode drives one load after another.
pub fn readings(library: &Library<'_>, rating: Rating, mode: &FailureMode) -> Vec<Taken> {
    let mut taken = Vec::new();
    dead_readings(&mut bench_with(library, rating, Some(mode), 3), &mut taken);
    let mut bench = bench_with(library, rating, Some(mode), 4);
    bench.wait(Span::from_s(3));
    live_readings(&mut bench, &mut taken);
    taken
}

fn take(
    bench: &Bench,
    state: &'static str,
    mode: MeterMode,
    red: Pin,
    black: Pin,
    taken: &mut Vec<Taken>,
) {
    let shown = meter::ideal(&bench.machine().plant().probed(), mode, red, black);
    taken.push(Taken {
        state,
        mode,
        red,
        black,
        shown,
    });
}

const fn load(t: Terminal) -> Pin {
    Pin::Wire(t, Side::Load)
}

/// The two terminals of each load that an ohmmeter tests.
const LOADS: [(Terminal, Terminal); 11] = [
    (Terminal::Cold1, Terminal::Cold2),
    (Terminal::Hot1, Terminal::Hot2),
    (Terminal::Pump1, Terminal::Pump2),
    (Terminal::MotorA, Terminal::MotorCommon),
    (Terminal::MotorB, Terminal::MotorCommon),
    (Terminal::Cap1, Terminal::Cap2),
    (Terminal::Shift1, Terminal::Shift2),
    (Terminal::LockCoil1, Terminal::LockCoil2),
    (Terminal::LockLineIn, Terminal::LockLineOut),
    (Terminal::Therm1, Terminal::Therm2),
    (Terminal::LidSwitch1, Terminal::LidSwitch2),
];

fn dead_readings(bench: &mut Bench, taken: &mut Vec<Taken>) {
    let ohms = MeterMode::Ohms;
    let plant = bench.machine_mut().plant_mut();
    plant.set_plugged(false);
    plant.discharge();
    bench.wait(Span::from_s(60));
    for t in Terminal::ALL {
        take(
            bench,
            "dead",
            ohms,
            Pin::Wire(*t, Side::Board),
            load(*t),
            taken,
        );
    }
    take(bench, "dead", ohms, Pin::PlugLine, Pin::FuseIn, taken);
    take(bench, "dead", ohms, Pin::FuseIn, Pin::FuseOut, taken);
    take(
        bench,
        "dead",
        ohms,
        Pin::FuseOut,
        load(Terminal::CordLine),
        taken,
    );
    for component in Component::ALL {
        bench
            .machine_mut()
            .plant_mut()
            .set_connector(&Connector::Load(*component), &[], true);
    }
    bench.wait(Span::from_ms(100));
    for (a, b) in LOADS {
        take(bench, "pulled", ohms, load(a), load(b), taken);
    }
}

fn live_readings(bench: &mut Bench, taken: &mut Vec<Taken>) {
    let neutral = Pin::Wire(Terminal::CordNeutral, Side::Board);
    let sensor = |bench: &Bench, state, taken: &mut Vec<Taken>| {
        for (t, ground) in [
            (Terminal::PressureOut, Terminal::PressureGround),
            (Terminal::Therm1, Terminal::Therm2),
            (Terminal::PickupOut, Terminal::PickupGround),
            (Terminal::Cam1, Terminal::Cam2),
        ] {
            for side in [Side::Board, Side::Load] {
                take(
                    bench,
                    state,
                    MeterMode::VoltsDc,
                    Pin::Wire(t, side),
                    Pin::Wire(ground, Side::Board),
                    taken,
                );
            }
        }
    };
    take(
        bench,
        "idle",
        MeterMode::VoltsAc,
        Pin::Wire(Terminal::CordLine, Side::Board),
        neutral,
        taken,
    );
    for relayed in [
        Terminal::Cold1,
        Terminal::Hot1,
        Terminal::Pump1,
        Terminal::LockCoil1,
    ] {
        take(
            bench,
            "idle",
            MeterMode::VoltsAc,
            load(relayed),
            neutral,
            taken,
        );
    }
    sensor(bench, "idle", taken);
    if !enter_service(bench) {
        return;
    }
    let tests = [
        (
            Routine::TestCold,
            "test-cold",
            Terminal::Cold1,
            Terminal::Cold2,
            40,
        ),
        (
            Routine::TestPump,
            "test-pump",
            Terminal::Pump1,
            Terminal::Pump2,
            6,
        ),
        (
            Routine::TestHot,
            "test-hot",
            Terminal::Hot1,
            Terminal::Hot2,
            25,
        ),
        (
            Routine::TestShifter,
            "test-shifter",
            Terminal::Shift1,
            Terminal::Shift2,
            5,
        ),
        (
            Routine::TestLock,
            "test-lock",
            Terminal::LockCoil1,
            Terminal::LockCoil2,
            3,
        ),
        (
            Routine::TestMotorA,
            "test-motor-a",
            Terminal::MotorA,
            Terminal::MotorCommon,
            6,
        ),
        (
            Routine::TestMotorB,
            "test-motor-b",
            Terminal::MotorB,
            Terminal::MotorCommon,
            6,
        ),
    ];
    for (which, state, hot, cold, seconds) in tests {
        if !routine(bench, which) {
            continue;
        }
        watch_peak(bench, seconds);
        take(
            bench,
            state,
            MeterMode::VoltsAc,
            load(hot),
            load(cold),
            taken,
        );
        take(
            bench,
            state,
            MeterMode::AmpsClamp,
            load(hot),
            load(cold),
            taken,
        );
        take(
            bench,
            state,
            MeterMode::VoltsAc,
            Pin::Wire(Terminal::LockLineOut, Side::Board),
            neutral,
            taken,
        );
        take(
            bench,
            state,
            MeterMode::VoltsAc,
            load(Terminal::LockLineOut),
            neutral,
            taken,
        );
        take(
            bench,
            state,
            MeterMode::VoltsAc,
            load(Terminal::Cap1),
            load(Terminal::Cap2),
            taken,
        );
        take(
            bench,
            state,
            MeterMode::AmpsClamp,
            load(Terminal::MotorCommon),
            neutral,
            taken,
        );
        take(
            bench,
            state,
            MeterMode::Hertz,
            Pin::Wire(Terminal::PickupOut, Side::Board),
            Pin::Wire(Terminal::PickupGround, Side::Board),
            taken,
        );
        take(
            bench,
            state,
            MeterMode::Hertz,
            load(Terminal::PickupOut),
            Pin::Wire(Terminal::PickupGround, Side::Board),
            taken,
        );
        sensor(bench, state, taken);
        if Step::Tap(Button::Stop).run(bench).is_err() {
            return;
        }
        bench.wait(Span::from_s(12));
        if bench.machine().control().glance().mode != "service" && !enter_service(bench) {
            return;
        }
    }
}

/// Waits, but stops in the middle of a motor stroke, when the readings mean most.
fn watch_peak(bench: &mut Bench, seconds: u64) {
    bench.wait(Span::from_s(seconds));
    for _ in 0..300 {
        let relays = bench.machine().outputs().relays;
        let motor =
            relays.has(crate::plant::Relay::MotorA) || relays.has(crate::plant::Relay::MotorB);
        if motor {
            bench.wait(Span::from_ms(350));
            return;
        }
        bench.step();
    }
}

/// A reading that tells two rows apart, if there is one: the widest difference comes first.
pub fn telling(a: &Row, b: &Row) -> Option<(Taken, Display)> {
    let mut best: Option<(f64, Taken, Display)> = None;
    for (x, y) in a.readings.iter().zip(&b.readings) {
        let same_place = (x.state, x.mode, x.red, x.black) == (y.state, y.mode, y.red, y.black);
        if !same_place || !meter::differ(x.mode, x.shown, y.shown) {
            continue;
        }
        let ratio = match (x.shown, y.shown) {
            (Display::Value(p), Display::Value(q)) => {
                (p.abs() + 0.1).max(q.abs() + 0.1) / (p.abs() + 0.1).min(q.abs() + 0.1)
            }
            _ => 1e3,
        };
        if best.as_ref().is_none_or(|(r, ..)| ratio > *r) {
            best = Some((ratio, x.clone(), y.shown));
        }
    }
    best.map(|(_, taken, other)| (taken, other))
}

/// The rows as lines of text.
pub fn table(rows: &[Row]) -> Vec<String> {
    let mut lines = vec![format!(
        "{:<34} {:<26} telling reading against each fault with a code in common",
        "fault", "codes"
    )];
    for row in rows {
        let codes: Vec<String> = row
            .codes
            .iter()
            .map(|(c, m)| format!("{c:02} {m}"))
            .collect();
        lines.push(format!(
            "{:<34} {}",
            row.mode.id,
            if codes.is_empty() {
                "none".to_owned()
            } else {
                codes.join(", ")
            }
        ));
        for other in rows
            .iter()
            .filter(|o| o.mode.id != row.mode.id && share_code(row, o))
        {
            let line = match telling(row, other) {
                Some((t, there)) => format!(
                    "    {:<32} {:?} {} / {} in {}: {} here, {} there",
                    other.mode.id,
                    t.mode,
                    t.red,
                    t.black,
                    t.state,
                    show(t.shown),
                    show(there)
                ),
                None => format!("    {:<32} NOTHING TELLS THEM APART", other.mode.id),
            };
            lines.push(line);
        }
    }
    lines
}

/// Whether two faults can show the same code (or are both silent).
pub fn share_code(a: &Row, b: &Row) -> bool {
    a.codes.iter().any(|c| b.codes.contains(c)) || a.codes.is_empty() && b.codes.is_empty()
}

fn show(d: Display) -> String {
    match d {
        Display::Value(v) => format!("{v:.3}"),
        Display::OverRange => "OL".to_owned(),
        Display::Dead => "dead".to_owned(),
    }
}
