//! Turns a scenario into a bench: draws the fault, lets the customer's last wash go wrong.

use super::draw_filter::FoundBy;
use super::scenario::{Hidden, Scenario};
use crate::bench::{Bench, Billing, LOOK, Part, Rates, Setup};
use crate::slices::{SliceEnd, without_breaks};
use detent_simulation::controller::{Board, Calibration, Code, ControlMode, Memory, StoredCode};
use detent_simulation::interface::{Button, Direction, Rating};
use detent_simulation::plant::{FailureMode, Param, Params};
use detent_simulation::units::Span;
use detent_simulation::units::uniform;
use rand::SeedableRng;
use rand_chacha::ChaCha8Rng;

/// The longest that the customer let the last wash go on.
const LAST_WASH: Span = Span::from_s(70 * 60);
/// How long the machine then stood before the technician came to it.
const STOOD: Span = Span::from_s(90);
/// A stale code is at least this many washes old.
const STALE_CYCLES: u32 = 40;

/// What scenarios draw on.
#[derive(Clone, Copy, Debug)]
pub struct Library<'a> {
    /// The scenario's board.
    pub board: &'a Board,
    /// The sound machine for the scenario's supply.
    pub sound: &'a Params,
    /// The catalogue.
    pub modes: &'a [FailureMode],
    /// What the watches of a control find of it.
    pub found_by: &'a FoundBy,
    /// The counter's list.
    pub parts: &'a [Part],
    /// What the shop charges.
    pub rates: Rates,
    /// What its invoices add.
    pub billing: Billing,
}

impl<'a> Library<'a> {
    /// The failure modes that a job on this board may hide.
    ///
    /// # Errors
    /// As [`candidates`].
    pub fn candidates(&self, hidden: &Hidden) -> Result<Vec<&'a FailureMode>, SetUpError> {
        candidates(hidden, self.modes, (&self.board.codes, self.found_by))
    }

    /// A board as it leaves the factory: calibrated for the sound machine, nothing stored.
    fn factory_memory(&self) -> Memory {
        Memory {
            calibration: Some(Calibration {
                zero_v: self.sound.get(Param::PressureZeroV),
                cam_ms_per_deg: self.board.clutch_actuator.ms_per_deg,
                inertia_ms: self.board.recalibration.inertia_ms.0,
            }),
            ..Memory::default()
        }
    }

    /// A machine fresh from the factory but for these faults, with a new dial, live tests allowed.
    pub fn setup(&self, rating: Rating, faults: Vec<FailureMode>, seed: u64) -> Setup {
        Setup {
            board: self.board.clone(),
            memory: self.factory_memory(),
            sound: self.sound.clone(),
            rating,
            dial_wear: 0.0,
            faults,
            modes: self.modes.to_vec(),
            parts: self.parts.to_vec(),
            rates: self.rates,
            billing: self.billing,
            seed,
            customer_limit: None,
            live_tests_allowed: true,
            hints_allowed: true,
            lead_open: false,
        }
    }
}

/// A scenario that cannot be set up.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum SetUpError {
    /// The catalogue lacks the named fault.
    #[error("no failure mode is called \"{0}\"; `detent faults` lists them all")]
    UnknownMode(String),
    /// Nothing to draw from.
    #[error("the scenario draws a fault but names none to draw from")]
    EmptyDraw,
}

/// The failure modes that a job on a board with these codes may hide: of one that draws, each of them alone; else all of
/// them at once. In the order in which they are drawn.
///
/// # Errors
/// It names a fault that the catalogue lacks.
pub fn candidates<'a>(
    hidden: &Hidden,
    modes: &'a [FailureMode],
    (codes, found_by): (&[Code], &FoundBy),
) -> Result<Vec<&'a FailureMode>, SetUpError> {
    match hidden {
        Hidden::Draw => Ok(modes.iter().collect()),
        Hidden::DrawWhere(filter) => {
            let modes = modes.iter();
            Ok(modes.filter(|m| filter.takes(m, codes, found_by)).collect())
        }
        Hidden::Named(_) | Hidden::DrawFrom(_) | Hidden::Several(_) | Hidden::Nothing => {
            let named = hidden.names().iter().map(|id| {
                let mode = modes.iter().find(|mode| mode.id == *id);
                mode.ok_or_else(|| SetUpError::UnknownMode(id.clone()))
            });
            named.collect()
        }
    }
}

/// The failure modes that this scenario and seed hide. The same seed gives the same ones.
///
/// # Errors
/// The scenario names a fault that the catalogue lacks, or there is none to draw from.
pub fn draw<'a>(
    scenario: &Scenario,
    library: &Library<'a>,
    seed: u64,
) -> Result<Vec<&'a FailureMode>, SetUpError> {
    let from = library.candidates(&scenario.fault)?;
    if !scenario.fault.is_drawn() {
        return Ok(from);
    }
    let total: f64 = from.iter().map(|m| m.weight).sum();
    let mut rng = ChaCha8Rng::seed_from_u64(seed);
    let mut left = total * uniform(&mut rng);
    for mode in &from {
        left -= mode.weight;
        if left < 0.0 {
            return Ok(vec![mode]);
        }
    }
    let last = from.last().ok_or(SetUpError::EmptyDraw)?;
    Ok(vec![last])
}

/// Sets the bench up: the hidden fault is in the machine, and the customer's last wash has been
/// tried, so that the control has found what it could by itself.
///
/// # Errors
/// The scenario does not fit the library.
pub fn set_up(scenario: &Scenario, library: &Library<'_>, seed: u64) -> Result<Bench, SetUpError> {
    without_breaks(set_up_in_slices(scenario, library, seed))
}

/// The same in slices of a few milliseconds each, so that whoever waits can do something else in between.
///
/// # Errors
/// As [`set_up`].
pub async fn set_up_in_slices(
    scenario: &Scenario,
    library: &Library<'_>,
    seed: u64,
) -> Result<Bench, SetUpError> {
    let mut bench = prepare(scenario, library, seed)?;
    customer_washes(&mut bench, &mut unwatched).await;
    bench.begin();
    Ok(bench)
}

/// The customer's last wash, and the time that the machine then stands until the technician comes.
/// `after_tick` sees the bench after each tick and changes nothing.
pub(super) async fn customer_washes(bench: &mut Bench, after_tick: &mut impl FnMut(&Bench)) {
    wash_in_slices(bench, LAST_WASH, after_tick).await;
    watch(bench, STOOD, after_tick).await;
}

/// Nobody looks at the single ticks.
pub(super) fn unwatched(_: &Bench) {}

/// The machine with its hidden fault, plugged in, nothing tried yet.
///
/// # Errors
/// The scenario does not fit the library.
pub fn prepare(scenario: &Scenario, library: &Library<'_>, seed: u64) -> Result<Bench, SetUpError> {
    let faults: Vec<FailureMode> = draw(scenario, library, seed)?
        .into_iter()
        .cloned()
        .collect();
    Ok(Bench::new(Setup {
        memory: customers_memory(scenario, library),
        dial_wear: scenario.dial_wear,
        customer_limit: Some(scenario.budget),
        live_tests_allowed: scenario.live_tests_allowed,
        hints_allowed: scenario.hints_allowed,
        lead_open: scenario.worn_lead,
        ..library.setup(scenario.mains.rating(), faults, seed)
    }))
}

/// The board of a machine in use: calibrated in the factory, with what it has stored since.
fn customers_memory(scenario: &Scenario, library: &Library<'_>) -> Memory {
    Memory {
        codes: scenario
            .stale_codes
            .iter()
            .take(usize::from(library.board.service.stored_codes))
            .zip(0..)
            .map(|(code, n)| StoredCode {
                code: *code,
                cycles_ago: STALE_CYCLES * (n + 1),
            })
            .collect(),
        cycles: 400,
        ..library.factory_memory()
    }
}

/// The customer's wash, to its end, to the fault hold or to `limit`.
pub fn wash(bench: &mut Bench, limit: Span) {
    without_breaks(wash_in_slices(bench, limit, &mut unwatched));
}

async fn wash_in_slices(bench: &mut Bench, limit: Span, after_tick: &mut impl FnMut(&Bench)) {
    start_watched(bench, after_tick);
    SliceEnd::default().await;
    let began = bench.now();
    while bench.now().since(began) < limit
        && bench.machine().control().control_status().mode == ControlMode::Program
    {
        watch(bench, Span::from_s(1), after_tick).await;
    }
}

/// Lets so many whole seconds pass under the customer's eyes, in slices of one.
async fn watch(bench: &mut Bench, span: Span, after_tick: &mut impl FnMut(&Bench)) {
    for _ in 0..span.0 / Span::from_s(1).0 {
        for _ in 0..Span::from_s(1).0 / LOOK.0 {
            wait(bench, LOOK, after_tick);
            bench.customer_looks();
        }
        SliceEnd::default().await;
    }
}

fn wait(bench: &mut Bench, span: Span, after_tick: &mut impl FnMut(&Bench)) {
    for _ in 0..span.0 {
        bench.step();
        after_tick(bench);
    }
}

/// The customer chooses the board's first program and starts it.
pub fn start_wash(bench: &mut Bench) {
    start_watched(bench, &mut unwatched);
}

fn start_watched(bench: &mut Bench, after_tick: &mut impl FnMut(&Bench)) {
    let program = bench
        .machine()
        .board()
        .programs
        .first()
        .map_or(0, |p| p.position);
    wait(bench, Span::from_s(3), after_tick);
    let turns = bench.machine().board().panel.selector.turn().is_some();
    while turns && bench.machine().plant().dial_position() != program {
        bench.machine_mut().detent(Direction::Right);
        wait(bench, Span::from_ms(400), after_tick);
    }
    // Without a knob the list stands at its first program when power comes.
    bench.machine_mut().press(Button::Start, true);
    wait(bench, Span::from_ms(300), after_tick);
    bench.machine_mut().press(Button::Start, false);
    wait(bench, Span::from_s(2), after_tick);
}
