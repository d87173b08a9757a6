//! Runs the machine with each fault of the catalogue and writes down what the control raises by
//! itself, what a meter shows and what is found by looking: the table of faults, made by simulation.

use super::machine_state::MachineState;
use super::set_up::{self, Library};
use crate::bench::script::{Condition, ScriptStep, entry_steps, reset_steps};
use crate::bench::{
    Action, Bench, Display, Finding, Grip, MeterMode, MilestoneKind, Refusal, SupplyStrength,
    meter, visible_findings,
};
use detent_simulation::controller::{Board, ControlMode, Monitor, Routine};
use detent_simulation::interface::{
    Button, Component, Connector, Pin, Rating, Side, Terminal, WaterPipe,
};
use detent_simulation::plant::{FailureMode, Presence, Probes};
use detent_simulation::units::Span;

/// The longest wash that is waited for.
const WASH: Span = Span::from_s(75 * 60);
/// Seeds of the washes that a fault is given which is not always there.
const SEEDS: std::ops::RangeInclusive<u64> = 1..=4;
/// The longest recalibration that is waited for.
const RECALIBRATION_S: u64 = 600;

/// One fault and what it does.
#[derive(Clone, Debug)]
pub struct Row {
    /// The failure mode.
    pub mode: FailureMode,
    /// Codes that the control raised by itself, in order, in a wash and in a recalibration.
    pub codes: Vec<(u8, Monitor)>,
    /// What the machine shows while the fault is there, whole.
    pub looks: Observations,
    /// What it shows while the fault is away, for one that is not always there.
    pub between: Option<Observations>,
}

/// All that a person can learn of a machine without its codes.
#[derive(Clone, Debug, PartialEq)]
pub struct Observations {
    /// Every standard reading.
    pub readings: Vec<ReferenceReading>,
    /// What is found at each component that shows something.
    pub findings: Vec<(Component, Vec<Finding>)>,
    /// What a bucket test at the cold tap and one at the hot tap come to.
    pub buckets: [SupplyStrength; 2],
}

/// A standard reading.
#[derive(Clone, Debug, PartialEq)]
pub struct ReferenceReading {
    /// State of the machine.
    pub state: MachineState,
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

/// Runs one failure mode at its worst: a wash, a recalibration, every standard reading and a look
/// everywhere. One that is not always there also has washes as it comes, and is looked at while it
/// is away.
pub fn row(library: &Library<'_>, rating: Rating, mode: &FailureMode) -> Row {
    let worst = mode.at_its_worst();
    let mut bench = bench_with(library, rating, Some(&worst), 1);
    wash(&mut bench);
    let mut codes = raised(&bench);
    let mut bench = bench_with(library, rating, Some(&worst), 2);
    bench.wait(Span::from_s(3));
    if recalibrate(&mut bench) {
        codes.extend(raised(&bench));
    }
    let sometimes = mode.presence != Presence::Steady;
    if sometimes {
        codes.extend(in_time(library, rating, mode));
    }
    let mut seen = Vec::new();
    codes.retain(|code| {
        let new = !seen.contains(code);
        seen.push(*code);
        new
    });
    Row {
        mode: mode.clone(),
        codes,
        looks: looks(library, rating, Some(&worst)),
        between: sometimes.then(|| looks(library, rating, None)),
    }
}

/// What a fault that is not always there makes the control raise in a few washes.
pub fn in_time(library: &Library<'_>, rating: Rating, mode: &FailureMode) -> Vec<(u8, Monitor)> {
    let mut codes = Vec::new();
    for seed in SEEDS {
        let mut bench = bench_with(library, rating, Some(mode), seed);
        wash(&mut bench);
        codes.extend(raised(&bench));
    }
    codes
}

/// All that can be learned of a machine with one fault, or none, without its codes.
pub fn looks(library: &Library<'_>, rating: Rating, mode: Option<&FailureMode>) -> Observations {
    looks_drawn(library, rating, mode, 3)
}

/// The same with other random draws, for a fault that is not always there.
pub fn looks_drawn(
    library: &Library<'_>,
    rating: Rating,
    mode: Option<&FailureMode>,
    seed: u64,
) -> Observations {
    let bench = bench_with(library, rating, mode, seed + 2);
    let plant = bench.machine().plant();
    let findings = Component::ALL
        .iter()
        .map(|c| (*c, visible_findings(plant, plant.params(), *c)))
        .filter(|(_, findings)| !findings.is_empty())
        .collect();
    let bucket = |pipe| SupplyStrength::of(plant.into_bucket(pipe).0);
    Observations {
        buckets: [WaterPipe::Cold, WaterPipe::Hot].map(bucket),
        readings: readings(library, rating, mode, seed),
        findings,
    }
}

/// The customer's wash, to its end or to the fault hold.
pub fn wash(bench: &mut Bench) {
    set_up::wash(bench, WASH);
}

/// The board's shortest program with the customer's laundry in the basket, as whoever repaired the machine proves it;
/// false when it does not end well.
pub fn proving_run(bench: &mut Bench) -> bool {
    load_basket(bench);
    let short = shortest(bench.machine().board());
    let began = bench.now();
    let start = [
        ScriptStep::Point {
            to: short,
            every_ms: 200,
        },
        ScriptStep::Tap(Button::Start),
        ScriptStep::Wait { s: 2 },
    ];
    if start.iter().any(|step| step.run(bench).is_err()) {
        return false;
    }
    while bench.now().since(began) < WASH
        && bench.machine().control().control_status().mode == ControlMode::Program
    {
        bench.wait(Span::from_s(1));
    }
    bench.passed(MilestoneKind::ProgramFinished, began)
}

/// Position of the program that takes least time: `program-short` where there is one.
fn shortest(board: &Board) -> u8 {
    let short = board.programs.iter().find(|p| p.name == "program-short");
    short.or(board.programs.first()).map_or(0, |p| p.position)
}

/// Takes the laundry out, as far as the lid lets one.
pub fn empty_basket(bench: &mut Bench) {
    through_the_lid(bench, Action::UnloadBasket);
}

/// Puts the laundry back in, as far as the lid lets one.
pub fn load_basket(bench: &mut Bench) {
    through_the_lid(bench, Action::LoadBasket);
}

/// Opens the lid, does this and shuts it; leaves the lid alone where it is so already.
fn through_the_lid(bench: &mut Bench, action: Action) {
    if bench.refuse(&action) == Err(Refusal::AlreadySo) {
        return;
    }
    for action in [Action::OpenLid, action, Action::CloseLid] {
        // A lid that holds keeps the laundry where it is.
        let _ = bench.act(&action);
    }
}

/// Takes the laundry out, enters service mode and recalibrates; false when service mode cannot be entered.
pub fn recalibrate(bench: &mut Bench) -> bool {
    empty_basket(bench);
    recalibrate_as_it_is(bench)
}

/// The same with whatever lies in the basket.
pub fn recalibrate_as_it_is(bench: &mut Bench) -> bool {
    if !enter_service(bench) || !start_routine(bench, Routine::Recalibrate) {
        return false;
    }
    ScriptStep::Until {
        what: Condition::ServiceReady,
        limit_s: RECALIBRATION_S,
    }
    .run(bench)
    .is_ok()
}

/// Leaves a fault hold that is kept without power, in the board's own way; does nothing on other boards.
pub fn leave_kept_hold(bench: &mut Bench) {
    let resets = &bench.machine().board().resets;
    let mode = bench.machine().control().control_status().mode;
    if !resets.kept || mode != ControlMode::Hold {
        return;
    }
    for step in reset_steps(resets) {
        // Behind a locked lid the hold stays.
        let _ = step.run(bench);
    }
    bench.wait(Span::from_s(1));
}

/// Does the board's entry gesture; true when service mode is entered.
pub fn enter_service(bench: &mut Bench) -> bool {
    for step in entry_steps(&bench.machine().board().gesture) {
        if step.run(bench).is_err() {
            return false;
        }
    }
    bench.machine().control().control_status().mode == ControlMode::Service
}

/// Starts a routine from the menu; false when the board lacks it.
pub fn start_routine(bench: &mut Bench, routine: Routine) -> bool {
    let Some(to) = bench.machine().board().position_of(routine) else {
        return false;
    };
    [
        ScriptStep::Point { to, every_ms: 200 },
        ScriptStep::Wait { s: 1 },
        ScriptStep::Tap(Button::Start),
    ]
    .iter()
    .all(|step| step.run(bench).is_ok())
}

fn raised(bench: &Bench) -> Vec<(u8, Monitor)> {
    let board = bench.machine().board();
    let stops = bench.milestones().iter().filter_map(|l| {
        let monitor = l.kind.stopped_by()?;
        board.code_of(monitor).map(|code| (code, monitor))
    });
    // Some codes are stored without stopping anything.
    let stored = &bench.machine().control().memory().codes;
    let stored = stored
        .iter()
        .filter_map(|s| board.monitor_of(s.code).map(|m| (s.code, m)));
    let mut codes: Vec<(u8, Monitor)> = Vec::new();
    for code in stops.chain(stored) {
        if !codes.contains(&code) {
            codes.push(code);
        }
    }
    codes
}

/// Every standard reading: resistances on the dead machine with connectors pulled, and voltages,
/// currents and pulses while service mode drives one load after another.
fn readings(
    library: &Library<'_>,
    rating: Rating,
    mode: Option<&FailureMode>,
    seed: u64,
) -> Vec<ReferenceReading> {
    let mut taken = Vec::new();
    dead_readings(&mut bench_with(library, rating, mode, seed), &mut taken);
    let mut bench = bench_with(library, rating, mode, seed + 1);
    bench.wait(Span::from_s(3));
    live_readings(&mut bench, &mut taken);
    taken
}

fn take(
    bench: &Bench,
    state: MachineState,
    mode: MeterMode,
    red: Pin,
    black: Pin,
    taken: &mut Vec<ReferenceReading>,
) {
    let at = bench.machine().plant().probed();
    let shown = meter::ideal(&at, mode, &mut Probes::on(red, black), Grip::Clips);
    taken.push(ReferenceReading {
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
pub const LOADS: [(Terminal, Terminal); 12] = [
    (Terminal::Cold1, Terminal::Cold2),
    (Terminal::Hot1, Terminal::Hot2),
    (Terminal::Pump1, Terminal::Pump2),
    (Terminal::MotorA, Terminal::MotorCommon),
    (Terminal::MotorB, Terminal::MotorCommon),
    (Terminal::Cap1, Terminal::Cap2),
    (Terminal::Clutch1, Terminal::Clutch2),
    (Terminal::LockCoil1, Terminal::LockCoil2),
    (Terminal::LockLineIn, Terminal::LockLineOut),
    (Terminal::Therm1, Terminal::Therm2),
    (Terminal::LidSwitch1, Terminal::LidSwitch2),
    (Terminal::Cam1, Terminal::Cam2),
];

/// Points that an insulation tester is put on, against the cabinet.
pub const INSULATED: [Pin; 3] = [load(Terminal::Pump1), load(Terminal::MotorA), Pin::FuseOut];

fn dead_readings(bench: &mut Bench, taken: &mut Vec<ReferenceReading>) {
    let ohms = MeterMode::Ohms;
    // What blows the fuse has blown it.
    bench.wait(Span::from_s(1));
    let plant = bench.machine_mut().plant_mut();
    plant.set_plugged(false);
    plant.discharge();
    bench.wait(Span::from_s(60));
    for t in Terminal::ALL {
        take(
            bench,
            MachineState::Dead,
            ohms,
            Pin::Wire(*t, Side::Board),
            load(*t),
            taken,
        );
    }
    take(
        bench,
        MachineState::Dead,
        ohms,
        Pin::PlugLine,
        Pin::FuseIn,
        taken,
    );
    take(
        bench,
        MachineState::Dead,
        ohms,
        Pin::FuseIn,
        Pin::FuseOut,
        taken,
    );
    take(
        bench,
        MachineState::Dead,
        ohms,
        Pin::FuseOut,
        load(Terminal::CordLine),
        taken,
    );
    let neutral = load(Terminal::CordNeutral);
    take(
        bench,
        MachineState::Dead,
        ohms,
        Pin::FuseOut,
        neutral,
        taken,
    );
    let (plus, minus) = (Pin::BulkPlus, Pin::BulkMinus);
    take(bench, MachineState::Dead, ohms, plus, minus, taken);
    let ground = Pin::PlugEarth;
    let insulation = MeterMode::Insulation;
    take(
        bench,
        MachineState::Dead,
        insulation,
        Pin::PlugNeutral,
        ground,
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
        take(bench, MachineState::Pulled, ohms, load(a), load(b), taken);
    }
    for red in INSULATED {
        take(bench, MachineState::Pulled, insulation, red, ground, taken);
    }
}

fn live_readings(bench: &mut Bench, taken: &mut Vec<ReferenceReading>) {
    let neutral = Pin::Wire(Terminal::CordNeutral, Side::Board);
    let sensor = |bench: &Bench, state, taken: &mut Vec<ReferenceReading>| {
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
        MachineState::Idle,
        MeterMode::VoltsAc,
        Pin::Wire(Terminal::CordLine, Side::Board),
        neutral,
        taken,
    );
    let (plus, minus) = (Pin::BulkPlus, Pin::BulkMinus);
    take(
        bench,
        MachineState::Idle,
        MeterMode::VoltsDc,
        plus,
        minus,
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
            MachineState::Idle,
            MeterMode::VoltsAc,
            load(relayed),
            neutral,
            taken,
        );
    }
    sensor(bench, MachineState::Idle, taken);
    if !enter_service(bench) {
        return;
    }
    let tests = [
        (MachineState::TestCold, Terminal::Cold1, Terminal::Cold2, 40),
        (MachineState::TestPump, Terminal::Pump1, Terminal::Pump2, 6),
        (MachineState::TestHot, Terminal::Hot1, Terminal::Hot2, 25),
        (
            MachineState::TestClutch,
            Terminal::Clutch1,
            Terminal::Clutch2,
            5,
        ),
        (
            MachineState::TestLock,
            Terminal::LockCoil1,
            Terminal::LockCoil2,
            3,
        ),
        (
            MachineState::TestMotorA,
            Terminal::MotorA,
            Terminal::MotorCommon,
            6,
        ),
        (
            MachineState::TestMotorB,
            Terminal::MotorB,
            Terminal::MotorCommon,
            6,
        ),
    ];
    for (state, hot, cold, seconds) in tests {
        if !state
            .routine()
            .is_some_and(|which| start_routine(bench, which))
        {
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
        // What the motor's own connector loses.
        take(
            bench,
            state,
            MeterMode::VoltsAc,
            Pin::Wire(Terminal::MotorCommon, Side::Board),
            load(Terminal::MotorCommon),
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
        if ScriptStep::Tap(Button::Stop).run(bench).is_err() {
            return;
        }
        bench.wait(Span::from_s(12));
        if bench.machine().control().control_status().mode != ControlMode::Service
            && !enter_service(bench)
        {
            return;
        }
    }
}

/// Waits, but stops in the middle of a motor stroke, when the readings mean most.
fn watch_peak(bench: &mut Bench, seconds: u64) {
    bench.wait(Span::from_s(seconds));
    for _ in 0..300 {
        let relays = bench.machine().outputs().relays;
        let motor = relays.has(detent_simulation::interface::Relay::MotorA)
            || relays.has(detent_simulation::interface::Relay::MotorB);
        if motor {
            bench.wait(Span::from_ms(350));
            return;
        }
        bench.step();
    }
}

/// What tells one fault from another.
#[derive(Clone, Debug, PartialEq)]
pub enum Telling {
    /// A reading here, and what the meter shows there.
    Reading(ReferenceReading, Display),
    /// What is found at a component here and there.
    Found(Component, Vec<Finding>, Vec<Finding>),
    /// What a bucket test at a tap comes to here and there.
    Bucket(WaterPipe, SupplyStrength, SupplyStrength),
}

/// What tells two faults apart, if anything does, and whether one of them must be away for it.
pub fn telling(a: &Row, b: &Row) -> Option<(Telling, bool)> {
    let away = || match (&a.between, &b.between) {
        (Some(rested), None) => tell(rested, &b.looks),
        (None, Some(rested)) => tell(&a.looks, rested),
        // Two that come and go could both be away.
        _ => None,
    };
    let there = tell(&a.looks, &b.looks).map(|telling| (telling, false));
    there.or_else(|| away().map(|telling| (telling, true)))
}

/// What tells two machines apart: the reading that differs most widely, else a finding, else a
/// bucket.
pub fn tell(a: &Observations, b: &Observations) -> Option<Telling> {
    if let Some((taken, other)) = widest(&a.readings, &b.readings) {
        return Some(Telling::Reading(taken, other));
    }
    let at = |looks: &Observations, component| {
        let found = looks.findings.iter().find(|(c, _)| *c == component);
        found.map_or(Vec::new(), |(_, findings)| findings.clone())
    };
    let found = Component::ALL
        .iter()
        .map(|c| Telling::Found(*c, at(a, *c), at(b, *c)))
        .find(|t| matches!(t, Telling::Found(_, here, there) if here != there));
    let bucket = |pipe: &WaterPipe| {
        let [here, there] = [a, b].map(|looks| looks.buckets[pipe.index()]);
        (here != there).then_some(Telling::Bucket(*pipe, here, there))
    };
    found.or_else(|| WaterPipe::ALL.iter().find_map(bucket))
}

fn widest(
    here: &[ReferenceReading],
    there: &[ReferenceReading],
) -> Option<(ReferenceReading, Display)> {
    let mut best: Option<(f64, ReferenceReading, Display)> = None;
    for x in here {
        let same_place = |y: &&ReferenceReading| {
            (x.state, x.mode, x.red, x.black) == (y.state, y.mode, y.red, y.black)
        };
        let Some(y) = there.iter().find(same_place) else {
            continue;
        };
        if !meter::differ(x.mode, x.shown, y.shown) {
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
        "{:<34} {:<26} what tells it from each fault with a code in common",
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
            let told = match telling(row, other) {
                Some((telling, false)) => say(&telling),
                Some((telling, true)) => format!("{} (while one is away)", say(&telling)),
                None => "NOTHING TELLS THEM APART".to_owned(),
            };
            lines.push(format!("    {:<32} {told}", other.mode.id));
        }
    }
    lines
}

fn say(telling: &Telling) -> String {
    match telling {
        Telling::Reading(t, there) => format!(
            "{:?} {} / {} in {}: {} here, {} there",
            t.mode,
            t.red,
            t.black,
            t.state,
            show(t.shown),
            show(*there)
        ),
        Telling::Found(component, here, there) => {
            let list = |findings: &[Finding]| match findings {
                [] => "nothing to see".to_owned(),
                some => some.iter().map(|f| f.name()).collect::<Vec<_>>().join(", "),
            };
            format!(
                "look at {component}: {} here, {} there",
                list(here),
                list(there)
            )
        }
        Telling::Bucket(pipe, here, there) => {
            format!("bucket at the {pipe} tap: {here} here, {there} there")
        }
    }
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
