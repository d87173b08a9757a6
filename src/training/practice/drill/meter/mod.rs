//! The meter: a check of the service sheet, how it is made safely, and what its reading says.

mod checks;
pub use checks::{Kind, MeterCheck, Range, State, all, pump_a};

use super::{
    SuppliedBoard, SuppliedBoardId, below, draws, one_of, shuffle, supplied_board, within,
};
use crate::bench::{Display, MeterMode, meter};
use detent_simulation::units::uniform;
use rand_chacha::ChaCha8Rng;
use serde::{Deserialize, Serialize};

/// Settings to choose from. The others would do for some of the checks too, or for none.
pub const MODES: [MeterMode; 6] = [
    MeterMode::VoltsAc,
    MeterMode::VoltsDc,
    MeterMode::AmpsClamp,
    MeterMode::Ohms,
    MeterMode::Hertz,
    MeterMode::Microfarads,
];
/// Ranges to choose from.
const RANGES: usize = 4;
/// Share of the readings that are within tolerance.
const SOUND: f64 = 0.4;
/// A reading lies off the limits by so many times the meter's own widest error.
const CLEAR: f64 = 3.0;
/// Least that an ohmmeter with its leads shows, Ω.
const LEADS_OHMS: f64 = 0.2;
/// Draws of a reading before the middle of the range is taken.
const DRAWS: usize = 100;

/// A check and its reading.
#[derive(Clone, Debug, PartialEq)]
pub struct MeterTask {
    /// Board and supply.
    pub place: SuppliedBoardId,
    /// The check.
    pub check: MeterCheck,
    /// What a sound one shows.
    pub sound: Range,
    /// Ranges to choose from, each with the setting that shows it.
    pub ranges: Vec<(MeterMode, Range)>,
    /// What the meter shows.
    pub shown: Display,
}

/// An answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Given {
    /// State of the machine.
    pub state: State,
    /// Meter setting.
    pub mode: MeterMode,
    /// The range that a sound one shows, by its place.
    pub range: usize,
    /// The reading is within tolerance.
    pub within: bool,
}

/// An answer, judged, with the right one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Marked {
    /// All four are right.
    pub right: bool,
    /// The answer that would be.
    pub should: Given,
    /// The answer given.
    pub given: Given,
}

/// Draws a task.
pub fn ask(supplied_boards: &[SuppliedBoard<'_>], seed: u64) -> MeterTask {
    let rng = &mut draws(seed);
    let supplied_board = supplied_board(supplied_boards, rng);
    let on_sheet = |check: &MeterCheck| {
        let mut checks = supplied_board
            .library
            .board
            .sheet
            .iter()
            .flat_map(|entry| &entry.checks);
        checks.any(|text_key| text_key == check.text_key)
    };
    let checks: Vec<MeterCheck> = all().into_iter().filter(on_sheet).collect();
    // There are many wires and few pumps: what is measured is drawn first.
    let mut kinds: Vec<&str> = checks.iter().map(|check| check.kind.key()).collect();
    kinds.sort_unstable();
    kinds.dedup();
    let kind = one_of(&kinds, rng);
    let here: Vec<MeterCheck> = (checks.iter().copied())
        .filter(|check| Some(check.kind.key()) == kind)
        .collect();
    let check = one_of(&here, rng).expect("a board's sheet has checks with a meter");
    let sound = check.sound(&supplied_board.library, supplied_board.mains);
    let shown = reading(&check, sound, rng);
    MeterTask {
        place: supplied_board.place(),
        check,
        sound,
        ranges: ranges(supplied_boards, &check, sound, rng),
        shown,
    }
}

/// Whether a display lies within a range.
pub fn is_within(shown: Display, range: Range) -> bool {
    match (shown, range) {
        (Display::Value(value), Range::Between(low, high)) => (low..=high).contains(&value),
        (Display::OverRange, Range::Open) => true,
        _ => false,
    }
}

/// The one right answer.
pub fn solve(task: &MeterTask) -> Given {
    let own = (task.check.mode, task.sound);
    Given {
        state: task.check.state,
        mode: task.check.mode,
        range: task
            .ranges
            .iter()
            .position(|range| *range == own)
            .unwrap_or_default(),
        within: is_within(task.shown, task.sound),
    }
}

/// Judges an answer.
pub fn mark(task: &MeterTask, given: Given) -> Marked {
    let should = solve(task);
    Marked {
        right: given == should,
        should,
        given,
    }
}

/// A reading of a sound one or of a faulty one, clear of the limits either way.
fn reading(check: &MeterCheck, sound: Range, rng: &mut ChaCha8Rng) -> Display {
    let is_sound = uniform(rng) < SOUND;
    let middle = match sound {
        Range::Open => Display::OverRange,
        Range::Between(low, high) => shown(check.mode, (low + high) / 2.0),
    };
    let draw = |rng: &mut ChaCha8Rng| match sound {
        Range::Open if is_sound => Display::OverRange,
        Range::Open => shown(check.mode, within(0.3, 9.0, rng)),
        // The leads alone show as much as a wire.
        Range::Between(low, high) if is_sound && low <= 0.0 => {
            shown(check.mode, within(LEADS_OHMS, high, rng))
        }
        Range::Between(low, high) if is_sound => shown(check.mode, within(low, high, rng)),
        Range::Between(low, high) => faulty(check, low, high, rng),
    };
    (0..DRAWS)
        .map(|_| draw(rng))
        .find(|shown| is_within(*shown, sound) == is_sound && is_clear(check.mode, *shown, sound))
        .unwrap_or(middle)
}

/// A value as the display shows it.
fn shown(mode: MeterMode, value: f64) -> Display {
    meter::noisy(Display::Value(value), mode, 0.0)
}

/// Nobody can take the reading for within when it is out, or for out when it is within.
fn is_clear(mode: MeterMode, shown: Display, sound: Range) -> bool {
    match (shown, sound) {
        (Display::Value(value), Range::Between(low, high)) => {
            let error = CLEAR * meter::accuracy(mode, value);
            // No reading lies below nothing: that limit cannot be missed.
            let clear = |limit: f64| limit <= 0.0 || (value - limit).abs() > error;
            clear(low) && clear(high)
        }
        _ => true,
    }
}

/// What a faulty one shows: open, shorted, drifted, starved.
fn faulty(check: &MeterCheck, low: f64, high: f64, rng: &mut ChaCha8Rng) -> Display {
    let value =
        |low: f64, high: f64, rng: &mut ChaCha8Rng| shown(check.mode, within(low, high, rng));
    let open = Display::OverRange;
    let which = below(3, rng);
    match (check.kind, which) {
        (Kind::Winding(_) | Kind::Thermistor, 0) => open,
        (Kind::Winding(_) | Kind::Thermistor, 1) => value(0.3 * low, 0.7 * low, rng),
        (Kind::Winding(_) | Kind::Thermistor, _) => value(1.5 * high, 2.5 * high, rng),
        // Worn out, or a winding of it gone: never above its value.
        (Kind::Capacitor, 0) => value(0.0, 0.01 * low, rng),
        (Kind::Capacitor, _) => value(0.3 * low, 0.85 * low, rng),
        (Kind::Wire | Kind::Fuse, 0) => value(4.0, 60.0, rng),
        (Kind::Wire | Kind::Fuse, _) => open,
        (Kind::Mains, _) => value(0.6 * low, 0.93 * low, rng),
        (Kind::Driven | Kind::Rail | Kind::Bulk | Kind::Pulses, 0) => {
            value(0.3 * low, 0.85 * low, rng)
        }
        (Kind::Driven | Kind::Rail | Kind::Bulk | Kind::Pulses, _) => value(0.0, 0.002 * low, rng),
        (Kind::Level, 0) => value(0.0, 0.05, rng),
        (Kind::Level, _) => value(1.4 * high, 4.0 * high, rng),
        (Kind::Input, 0) => value(0.0, 0.02, rng),
        (Kind::Input, _) => value(4.9, 5.0, rng),
        (Kind::Current, 0) => value(0.0, 0.0, rng),
        (Kind::Current, _) => value(1.3 * high, 1.6 * high, rng),
        (Kind::Open, _) => value(0.3, 9.0, rng),
    }
}

/// The right range among others that stand clear of it: most of them of the same setting, so that the
/// unit alone does not tell.
fn ranges(
    supplied_boards: &[SuppliedBoard<'_>],
    check: &MeterCheck,
    sound: Range,
    rng: &mut ChaCha8Rng,
) -> Vec<(MeterMode, Range)> {
    let mut all: Vec<(MeterMode, Range)> = Vec::new();
    for supplied_board in supplied_boards {
        for other in checks::all() {
            all.push((
                other.mode,
                other.sound(&supplied_board.library, supplied_board.mains),
            ));
        }
    }
    // What a load without voltage or current shows.
    all.extend([
        (MeterMode::VoltsAc, Range::Between(0.0, 2.0)),
        (MeterMode::VoltsDc, Range::Between(0.0, 0.2)),
        (MeterMode::AmpsClamp, Range::Between(3.0, 5.0)),
        (MeterMode::AmpsClamp, Range::Between(0.0, 0.1)),
        (MeterMode::Hertz, Range::Between(45.0, 65.0)),
        (MeterMode::Hertz, Range::Between(350.0, 450.0)),
    ]);
    shuffle(&mut all, rng);
    let mut chosen = vec![(check.mode, sound)];
    for same in [true, false] {
        // One place is left for another unit.
        let room = if same { RANGES - 1 } else { RANGES };
        for candidate in &all {
            let fits = (candidate.0 == check.mode) == same;
            if chosen.len() < room && fits && chosen.iter().all(|other| apart(*other, *candidate)) {
                chosen.push(*candidate);
            }
        }
    }
    shuffle(&mut chosen, rng);
    chosen
}

/// Two ranges that nobody mixes up.
fn apart(a: (MeterMode, Range), b: (MeterMode, Range)) -> bool {
    if a.0 != b.0 {
        return true;
    }
    match (a.1, b.1) {
        (Range::Between(low, high), Range::Between(other_low, other_high)) => {
            high * 1.1 < other_low || other_high * 1.1 < low
        }
        (a, b) => a != b,
    }
}
