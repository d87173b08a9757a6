//! A scenario's machine after the customer's wash, and what is known of it.

use super::Failure;
use super::output::plain;
use detent_content::{ContentLibrary, ScenarioSource, Texts, table_file};
use detent_simulation::controller::GestureStep;
use detent_simulation::plant::FailureMode;
use detent_simulation::units::Span;
use detent_training::bench::Bench;
use detent_training::lesson::{Library, Mains, draw, set_up};
use detent_training::reason::evidence::{self, End, Outcome, Table};
use detent_training::reason::{
    Course, Hand, HandPractice, Plan, Posterior, RepairCosts, WORK, best_costs, code_buyer,
    control_on_trial, control_swapper, failures_needed, order_costs,
};
use rayon::prelude::*;
use std::path::PathBuf;

/// Time from one detent to the next that the decision on failed tries is made for.
const PACE: Span = Span::from_ms(200);

/// The table of this board and supply, made now on all cores.
pub(super) fn make(library: &Library<'_>, mains: Mains) -> Table {
    let rating = mains.rating();
    let points = evidence::points(library, rating);
    let seen = (0..=library.modes.len())
        .into_par_iter()
        .map(|n| evidence::observe(library, rating, &points, n))
        .collect();
    Table::of(library, rating, points, seen)
}

/// The table of this board and supply: that of the library, the kept one, or made now
/// and kept.
fn table(
    content_library: &ContentLibrary,
    (library, mains): (&Library<'_>, Mains),
    folder: Option<&PathBuf>,
    texts: &Texts,
) -> Table {
    let rating = mains.rating();
    if let Some(there) = content_library.table(library, mains) {
        return there;
    }
    let key = evidence::key(library, rating);
    let file = folder.map(|f| table_file::path(f, &library.board.id, rating.volts));
    if let Some(kept) = file.as_ref().and_then(|file| table_file::load(file, &key)) {
        return kept;
    }
    let made = make(library, mains);
    if let Some(file) = file
        && let Err(error) = table_file::save(&file, &key, &made)
    {
        // It is only slower next time.
        let told = Failure::Write(file.display().to_string(), error).words(texts);
        eprintln!("{}", plain(&format!("detent: {told}")));
    }
    made
}

/// A scenario's machine after the customer's wash, and what is known of it.
pub(super) struct Job<'a> {
    pub scenario_source: &'a ScenarioSource,
    pub library: Library<'a>,
    pub seed: u64,
    /// The hidden fault's hypothesis; none for several at once.
    pub truth: Option<usize>,
    /// How many faults the machine has.
    pub faults: usize,
    /// How the wash ended.
    pub end: End,
    /// Codes that the wash left.
    pub codes: Vec<u8>,
    pub prior: Vec<f64>,
    /// Belief after the wash.
    pub belief: Posterior,
    /// What can be done.
    pub repair_costs: RepairCosts,
}

impl<'a> Job<'a> {
    pub fn of(
        content_library: &'a ContentLibrary,
        scenario_source: &'a ScenarioSource,
        seed: u64,
        folder: Option<&PathBuf>,
        texts: &Texts,
    ) -> Result<Job<'a>, Failure> {
        let scenario = &scenario_source.scenario;
        let library = content_library.library(scenario);
        let supplied = (&library, scenario.mains);
        let table = table(content_library, supplied, folder, texts);
        let bench: Bench = set_up(scenario, &library, seed)?;
        let outcome = Outcome::of_wash(&bench);
        let prior = evidence::prior(library.modes);
        let mut belief = Posterior::from_weights(&prior)?;
        let prior = belief.shares();
        belief.update(&table.wash(&outcome))?;
        let place = |mode: &FailureMode| library.modes.iter().position(|m| m.id == mode.id);
        let hidden = draw(scenario, &library, seed)?;
        let truth = match hidden[..] {
            [] => Some(0),
            [mode] => place(mode).map(|n| n + 1),
            _ => None,
        };
        Ok(Job {
            repair_costs: RepairCosts::of(&library, &table, scenario.live_tests_allowed),
            scenario_source,
            library,
            seed,
            truth,
            faults: hidden.len(),
            end: outcome.end,
            codes: outcome.codes,
            prior,
            belief,
        })
    }

    pub fn plan(&self) -> Result<Plan, Failure> {
        let course = Course::begin(&self.belief.shares());
        Ok(self.repair_costs.problem.plan(&course, WORK)?)
    }

    /// Cost under each hypothesis of the best plan, a code-buyer and a control-swapper.
    pub fn ways(&self) -> Result<[Vec<f64>; 3], Failure> {
        let (shares, repair_costs) = (self.belief.shares(), &self.repair_costs);
        let (board, parts) = (self.library.board, self.library.parts);
        let buyer = code_buyer(repair_costs, board, parts, &self.codes, &shares);
        let swapper = control_swapper(repair_costs, board, parts, &self.codes, &shares);
        Ok([
            best_costs(&repair_costs.problem, &Course::begin(&shares), WORK)?,
            order_costs(&repair_costs.problem, &buyer),
            order_costs(&repair_costs.problem, &swapper),
        ])
    }

    /// Failed tries in a row after which the control is suspect, at a calm pace on this dial, where
    /// controls fail as often as the catalogue says. None on a dial that lets nobody in.
    pub fn tries_needed(&self, practice: HandPractice) -> usize {
        let turned = |step: &GestureStep| match step {
            GestureStep::Turn { detents, .. } => usize::from(*detents),
            _ => 0,
        };
        let detents: usize = self.library.board.gesture.steps.iter().map(turned).sum();
        let gaps = std::iter::repeat_n(PACE, detents.saturating_sub(1));
        let wear = self.scenario_source.scenario.dial_wear;
        let hand = Hand::at_pace(gaps, wear, practice.success());
        // The risks are constants that Wald's test takes.
        control_on_trial(self.library.modes).map_or(0, |test| failures_needed(test, hand))
    }
}
