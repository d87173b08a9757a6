//! What the customer can tell of the last wash: what an eye and an ear beside the machine noticed, and nothing of
//! what is behind its panels.

use crate::bench::{Bench, Milestone, MilestoneKind};
use detent_simulation::controller::{
    Board, ControlMode, LampRules, Phase, PhaseKind, Program, SignReading, Signs,
};
use detent_simulation::machine::Sound;
use detent_simulation::names;

// What follows is our own choice throughout: from when on a person who does other things meanwhile notices.

/// A sound that lasted this long in all is told, s.
const LONG_S: f64 = 20.0;
/// Shaking that lasted this long is told, s.
const SHAKEN_S: f64 = 3.0;
/// Whoever moved for less than this has not moved, s.
const STILL_S: f64 = 2.0;
/// Water that does not stand higher than this is none, mm.
const NO_WATER_MM: f64 = 15.0;
/// Water above this when the technician comes has stayed in, mm.
const WATER_LEFT_MM: f64 = 50.0;
/// So far above the highest level of the program there is too much, mm.
const TOO_HIGH_MM: f64 = 60.0;
/// Water that runs for this many times as long as the whole program usually needs "fills and fills".
const FILLS_LONG: f64 = 1.5;
/// Draining for so long while water comes in is told, s.
const DRAINS_S: f64 = 10.0;
/// Humming for so long, and for longer than anything turned, is told, s.
const HUMMED_S: f64 = 3.0;
/// Water that runs for this long while nothing is on is told, s.
const RUNS_BY_ITSELF_S: f64 = 5.0;
/// Water on the floor from which there is a puddle, L.
const PUDDLE_L: f64 = 0.2;
/// A basket below this speed has not spun, rev/min.
const NOT_SPUN_RPM: f64 = 60.0;
/// Share of the program's fastest spin below which things come out dripping.
const SPUN_SHARE: f64 = 0.75;
/// Water outside the program's limits by more than this is felt, K.
const FELT_K: f64 = 2.0;
/// So many clicks of the bolt before anything moves are told.
const CLICKS: u32 = 3;

names! {
    /// Something that the customer noticed. Ways to say it are the texts `customer-{name}-{way}`.
    CustomerObservation {
        // How it ended: one of these, first.
        /// Nothing ever lit up.
        Dark = "dark",
        /// It went dark while it washed.
        WentDark = "went-dark",
        /// It is lit, but Start began nothing.
        NeverStarted = "never-started",
        /// It stopped before its end.
        Stopped = "stopped",
        /// After more than an hour it was still at it.
        StillGoing = "still-going",
        /// It ran to its end.
        RanToEnd = "ran-to-end",
        // What it did, most telling first.
        /// The outlet's button stands out.
        OutletTripped = "outlet-tripped",
        /// There is water on the floor.
        WaterOnFloor = "water-on-floor",
        /// Water ran in while nothing was on.
        WaterRunsByItself = "water-runs-by-itself",
        /// The water stood far too high.
        TooMuchWater = "too-much-water",
        /// The water did not leave.
        WaterStayedIn = "water-stayed-in",
        /// No water came.
        NoWaterCame = "no-water-came",
        /// Water ran for much longer than usual.
        FilledForLong = "filled-for-long",
        /// It was heard to drain while water came in.
        DrainsWhileFilling = "drains-while-filling",
        /// It should have moved and never did.
        NothingMoved = "nothing-moved",
        /// It washed, but never spun.
        NeverSpun = "never-spun",
        /// It spun, but things come out dripping.
        SpunSlowly = "spun-slowly",
        /// It shook and thumped.
        Thumped = "thumped",
        /// Something hummed for long, and nothing turned.
        Hummed = "hummed",
        /// Something buzzed for long.
        Buzzed = "buzzed",
        /// Something ran and took nothing with it.
        RanFree = "ran-free",
        /// It clicked again and again.
        Clicked = "clicked",
        /// The water was colder than the program calls for.
        WashedCold = "washed-cold",
        /// The water was hotter than the program calls for.
        WashedHot = "washed-hot",
        /// Another program is on than the one that was pointed at.
        OtherProgram = "other-program",
        // What the panel shows.
        /// The little padlock blinks.
        PadlockBlinks = "padlock-blinks",
        /// Two marks take turns on the display.
        MarksTakeTurns = "marks-take-turns",
        /// The only lamp blinks.
        LampBlinks = "lamp-blinks",
        /// All lamps blink.
        LampsBlink = "lamps-blink",
        /// It shows a number.
        ShowsNumber = "shows-number",
    }
}

impl CustomerObservation {
    /// How the wash ended, rather than what was noticed on the way.
    pub const fn is_end(self) -> bool {
        self.index() <= CustomerObservation::RanToEnd.index()
    }

    /// What the panel shows.
    pub const fn is_of_panel(self) -> bool {
        self.index() >= CustomerObservation::PadlockBlinks.index()
    }
}

/// All that the customer can tell of the last wash.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CustomerAccount {
    /// What was noticed, in the order of [`CustomerObservation::ALL`]; the first is how it ended.
    pub noticed: Vec<CustomerObservation>,
    /// Time from Start to that end, min.
    pub after_min: u32,
}

impl CustomerAccount {
    /// Of the customer's last wash, on a bench at which it has been tried ([`super::set_up`]).
    pub fn of(bench: &Bench) -> CustomerAccount {
        use CustomerObservation as Noticed;
        let (machine, wash) = (bench.machine(), bench.last_wash());
        let (board, view) = (machine.board(), machine.view());
        let program = view.control.program.or(Some(view.control.position));
        let program = (board.programs.iter())
            .find(|p| Some(p.position) == program)
            .or(board.programs.first());
        let usual = Usual::of(program);
        let mode = machine.control().control_status().mode;
        let (end, after_min) = end(bench, mode);
        let meant_to_move = wash.came_to(PhaseKind::Agitate) || wash.came_to(PhaseKind::Spin);
        let moved = wash.moved_s >= STILL_S;
        let rushed_s = wash.heard_s(Sound::WaterRush);
        let spun = wash.came_to(PhaseKind::Spin) && moved;
        // Every stroke begins with a moment of humming.
        let hummed_s = wash.heard_s(Sound::MotorHum);
        let turned_s = [Sound::SpinWhirr, Sound::AgitatorSwish, Sound::MotorFree];
        let turned_s: f64 = turned_s.iter().map(|sound| wash.heard_s(*sound)).sum();
        let at_rest = mode != ControlMode::Program;
        let filled = wash.came_to(PhaseKind::Fill);
        let buzzed_s = wash.heard_s(Sound::PumpBuzz) + wash.heard_s(Sound::ValveBuzz);
        let lit = !mode.is_without_supply();
        let turns = board.panel.selector.turn().is_some();
        let is_so = |noticed: Noticed| match noticed {
            Noticed::Dark
            | Noticed::WentDark
            | Noticed::NeverStarted
            | Noticed::Stopped
            | Noticed::StillGoing
            | Noticed::RanToEnd => noticed == end,
            Noticed::OutletTripped => machine.plant().outlet_tripped(),
            Noticed::WaterOnFloor => view.floor_l >= PUDDLE_L,
            Noticed::WaterRunsByItself => wash.ran_in_at_rest_s >= RUNS_BY_ITSELF_S,
            Noticed::TooMuchWater => wash.highest_mm > usual.highest_mm + TOO_HIGH_MM,
            Noticed::WaterStayedIn => at_rest && view.level_mm > WATER_LEFT_MM,
            Noticed::NoWaterCame => filled && wash.highest_mm < NO_WATER_MM,
            Noticed::FilledForLong => rushed_s > FILLS_LONG * usual.fill_s,
            Noticed::DrainsWhileFilling => wash.drained_while_filling_s >= DRAINS_S,
            Noticed::NothingMoved => meant_to_move && !moved,
            Noticed::NeverSpun => spun && wash.fastest_rpm < NOT_SPUN_RPM,
            Noticed::SpunSlowly => {
                spun && wash.fastest_rpm >= NOT_SPUN_RPM
                    && wash.fastest_rpm < SPUN_SHARE * usual.spin_rpm
            }
            Noticed::Thumped => wash.heard_s(Sound::CabinetShake) >= SHAKEN_S,
            Noticed::Hummed => hummed_s >= HUMMED_S && hummed_s > turned_s,
            Noticed::Buzzed => buzzed_s >= LONG_S,
            Noticed::RanFree => wash.heard_s(Sound::MotorFree) >= LONG_S,
            Noticed::Clicked => wash.bolted >= CLICKS && !moved,
            Noticed::WashedCold => wash.warmest_c.is_some_and(|c| c < usual.least_c - FELT_K),
            Noticed::WashedHot => wash.warmest_c.is_some_and(|c| c > usual.most_c + FELT_K),
            Noticed::OtherProgram => {
                lit && turns && view.control.position != machine.plant().dial_position()
            }
            Noticed::PadlockBlinks
            | Noticed::MarksTakeTurns
            | Noticed::LampBlinks
            | Noticed::LampsBlink
            | Noticed::ShowsNumber => {
                mode == ControlMode::Hold && hold_sign(board) == Some(noticed)
            }
        };
        CustomerAccount {
            noticed: (Noticed::ALL.iter().copied())
                .filter(|n| is_so(*n))
                .collect(),
            after_min,
        }
    }

    /// Whether this was noticed.
    pub fn has(&self, observation: CustomerObservation) -> bool {
        self.noticed.contains(&observation)
    }
}

/// How the wash ended, and after how many minutes.
fn end(bench: &Bench, mode: ControlMode) -> (CustomerObservation, u32) {
    let washed = bench.milestones().iter();
    let mut washed = washed.take_while(|l| l.at <= bench.began());
    let started = washed
        .clone()
        .find(|l| l.kind == MilestoneKind::ProgramStarted);
    let ended = washed.find(|l| {
        l.kind.stopped_by().is_some()
            || matches!(
                l.kind,
                MilestoneKind::ProgramFinished | MilestoneKind::PowerReset
            )
    });
    let began = started.map_or(detent_simulation::units::Time::ZERO, |l| l.at);
    let until = ended.map_or(bench.began(), |l| l.at);
    let minutes = (until.since(began).seconds() / 60.0) as u32;
    let finished = |l: &Milestone| l.kind == MilestoneKind::ProgramFinished;
    let end = match (started, ended) {
        (None, _) if mode.is_without_supply() => CustomerObservation::Dark,
        (Some(_), _) if mode.is_without_supply() => CustomerObservation::WentDark,
        (_, Some(ended)) if finished(ended) => CustomerObservation::RanToEnd,
        (_, Some(_)) => CustomerObservation::Stopped,
        (Some(_), None) if !bench.machine().view().control.paused => {
            CustomerObservation::StillGoing
        }
        (_, None) => CustomerObservation::NeverStarted,
    };
    (end, minutes)
}

/// What a fault hold looks like to somebody who knows nothing of codes.
fn hold_sign(board: &Board) -> Option<CustomerObservation> {
    let LampRules {
        signs,
        lock_lamp,
        hold,
        ..
    } = &board.lamps;
    match hold {
        SignReading::Turns(..) => Some(CustomerObservation::MarksTakeTurns),
        SignReading::Blink if matches!(signs, Signs::Flashes { .. }) => {
            Some(CustomerObservation::LampBlinks)
        }
        SignReading::Blink => Some(CustomerObservation::LampsBlink),
        SignReading::Number | SignReading::NumberAnd(_) => Some(CustomerObservation::ShowsNumber),
        SignReading::Dark
        | SignReading::All
        | SignReading::Bar
        | SignReading::Still(_)
        | SignReading::Letters(..) => lock_lamp.then_some(CustomerObservation::PadlockBlinks),
    }
}

/// What a customer is used to from this program.
struct Usual {
    fill_s: f64,
    highest_mm: f64,
    spin_rpm: f64,
    /// Limits of the first water, °C.
    least_c: f64,
    most_c: f64,
}

impl Usual {
    fn of(program: Option<&Program>) -> Usual {
        let mut usual = Usual {
            fill_s: 0.0,
            highest_mm: 0.0,
            spin_rpm: 0.0,
            least_c: f64::NEG_INFINITY,
            most_c: f64::INFINITY,
        };
        for phase in program.iter().flat_map(|p| &p.phases) {
            match *phase {
                Phase::Fill {
                    level_mm,
                    min_c,
                    max_c,
                    ..
                } => {
                    if usual.fill_s == 0.0 {
                        (usual.least_c, usual.most_c) = (min_c, max_c);
                    }
                    usual.fill_s += f64::from(phase.typical_s());
                    usual.highest_mm = usual.highest_mm.max(level_mm);
                }
                Phase::Spin { rpm, .. } => usual.spin_rpm = usual.spin_rpm.max(rpm),
                Phase::Drain { .. }
                | Phase::Agitate { .. }
                | Phase::Soak { .. }
                | Phase::Rest { .. } => {}
            }
        }
        usual
    }
}
