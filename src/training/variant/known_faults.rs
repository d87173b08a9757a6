//! What is known of every fault on one board and supply: its table, and what the planner makes of it.

use super::maker::VariantError;
use crate::lesson::Library;
use crate::reason::evidence::{self, Outcome, Table};
use crate::reason::{Course, Posterior, RepairCosts};
use detent_simulation::controller::{Board, Monitor};
use detent_simulation::plant::{FailureMode, Presence};

/// Two faults are told apart by a test whose outcomes overlap by no more than the rest of this (total variation
/// distance). Our own choice: a fault that is there a quarter of the time is found by looking a few times.
const TOLD: f64 = 0.2;
/// A cause less likely than this is no rival.
const RIVAL: f64 = 0.02;
/// Beliefs that the planner may look at for the expected cost.
const WORK: u32 = 400;

/// The faults on one board at one supply.
#[derive(Clone, Debug)]
pub struct KnownFaults {
    table: Table,
    /// Without live tests, and with them.
    repair_costs: [RepairCosts; 2],
}

impl KnownFaults {
    /// What follows from the table of this library's board and supply.
    pub fn of(library: &Library<'_>, table: Table) -> KnownFaults {
        KnownFaults {
            repair_costs: [false, true].map(|live| RepairCosts::of(library, &table, live)),
            table,
        }
    }

    /// The table.
    pub fn table(&self) -> &Table {
        &self.table
    }

    /// How the wash ends most often under hypothesis `h`: 0 is the sound machine, `n + 1` failure mode `n`.
    pub(super) fn usual_outcome(&self, h: usize) -> Option<&Outcome> {
        let washes = &self.table.seen[h].washes;
        let times = |outcome: &Outcome| washes.iter().filter(|o| *o == outcome).count();
        // Of equals the first.
        washes.iter().rev().max_by_key(|outcome| times(outcome))
    }

    /// The watches that find it in its washes.
    pub fn monitors(&self, board: &Board, h: usize) -> Vec<Monitor> {
        let codes = self.table.seen[h].washes.iter().flat_map(|o| &o.codes);
        let mut monitors: Vec<Monitor> = codes.filter_map(|code| board.monitor_of(*code)).collect();
        monitors.sort_unstable();
        monitors.dedup();
        monitors
    }

    /// Whether a test that is allowed, or how washes end, tells one hypothesis from another.
    pub fn tells(&self, one: usize, other: usize, live: bool) -> bool {
        let tests = self.repair_costs[usize::from(live)].problem.tests.iter();
        let mut apart = tests.map(|test| {
            let outcomes = test.chances.iter();
            0.5 * outcomes.map(|of| (of[one] - of[other]).abs()).sum::<f64>()
        });
        apart.any(|distance| distance >= TOLD)
    }

    /// Whether the fault can be noticed at all: in the wash, or by a test that is allowed.
    pub fn shows(&self, h: usize, live: bool) -> bool {
        let [here, sound] = [h, 0].map(|h| self.usual_outcome(h));
        h == 0 || here != sound || self.tells(h, 0, live)
    }

    /// Belief after a wash that ended so.
    ///
    /// # Errors
    /// Nothing can be believed.
    pub fn belief(
        &self,
        library: &Library<'_>,
        outcome: &Outcome,
    ) -> Result<Vec<f64>, VariantError> {
        let mut belief = Posterior::from_weights(&evidence::prior(library.modes))?;
        belief.update(&self.table.wash(outcome))?;
        Ok(belief.shares())
    }

    /// Whether every likely rival under this belief can be told from it. That nothing is wrong is proved by a machine
    /// that washes; and what comes and goes shows in no table what it shows while it is there, so that only the expert
    /// can tell.
    pub(super) fn tells_from_rivals(
        &self,
        modes: &[FailureMode],
        h: usize,
        belief: &[f64],
        live: bool,
    ) -> bool {
        let mut rivals = self.rivals(h, belief);
        !self.is_steady(modes, h) || rivals.all(|(r, _)| self.tells(h, r, live))
    }

    /// Whether hypothesis `h` is a fault that is always there.
    pub fn is_steady(&self, modes: &[FailureMode], h: usize) -> bool {
        let steady = |n: usize| modes[n].presence == Presence::Steady;
        h.checked_sub(1).is_some_and(steady)
    }

    /// The likely causes under this belief besides `h`, each with its share.
    pub fn rivals(&self, h: usize, belief: &[f64]) -> impl Iterator<Item = (usize, f64)> {
        let all = belief.iter().copied().enumerate();
        all.filter(move |(r, share)| *r != h && *share >= RIVAL)
    }

    /// Whether one repair cures both.
    pub fn same_repair(&self, one: usize, other: usize) -> bool {
        let [without_live, _] = &self.repair_costs;
        let mut repairs = without_live.problem.repairs.iter();
        repairs.any(|repair| [one, other].iter().all(|h| repair.cures.contains(h)))
    }

    /// Expected cost of repair under this belief if the best step is taken each time, whole units of money.
    ///
    /// # Errors
    /// Nothing can be planned.
    pub fn planned_cost(&self, belief: &[f64], live: bool) -> Result<f64, VariantError> {
        let problem = &self.repair_costs[usize::from(live)].problem;
        Ok(problem.plan(&Course::begin(belief), WORK)?.upper)
    }
}
