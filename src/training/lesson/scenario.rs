//! A scenario: the job ticket, the hidden fault and what counts.

use super::course::Course;
use super::draw_filter::DrawFilter;
use super::loss::Loss;
use super::score::Dimension;
use crate::bench::HintRung;
use crate::bench::cost::LONGEST_JOB;
pub use detent_simulation::interface::Mains;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A sentence in both languages.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Bilingual {
    /// In English; never empty.
    pub en: String,
    /// In Spanish; never empty.
    pub es: String,
}

/// Which fault the machine has.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub enum Hidden {
    /// This failure mode: `detent names faults` lists them.
    Named(String),
    /// One drawn from the whole catalogue by relative weight, from the attempt's seed.
    Draw,
    /// One drawn from these; at least one, no two alike.
    DrawFrom(Vec<String>),
    /// One drawn from those of the catalogue that this takes.
    DrawWhere(DrawFilter),
    /// All of these at once; at least one, no two alike.
    Several(Vec<String>),
    /// Nothing is wrong.
    Nothing,
}

impl Hidden {
    /// The failure modes that are named: all of them at once, or those among which is drawn.
    pub fn names(&self) -> &[String] {
        match self {
            Hidden::Named(name) => std::slice::from_ref(name),
            Hidden::DrawFrom(names) | Hidden::Several(names) => names,
            Hidden::Draw | Hidden::DrawWhere(_) | Hidden::Nothing => &[],
        }
    }

    /// Whether chance decides among several.
    pub const fn is_drawn(&self) -> bool {
        match self {
            Hidden::Draw | Hidden::DrawFrom(_) | Hidden::DrawWhere(_) => true,
            Hidden::Named(_) | Hidden::Several(_) | Hidden::Nothing => false,
        }
    }
}

/// One job.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Scenario {
    /// What the trainee sees in the list of jobs. It must not give the fault away.
    pub title: Bilingual,
    /// What the customer sees and hears, in the customer's own words.
    pub complaint: Bilingual,
    /// What the trainee should learn.
    pub goal: Bilingual,
    /// Its place in the course; none for a job outside it. Within a part the numbers run from 1 without a gap.
    #[serde(default)]
    pub course: Option<Course>,
    /// The board: `detent names boards` lists them.
    pub board: String,
    /// Mains supply at the customer's home, one that the board is made for.
    pub mains: Mains,
    /// Seed of every random draw, unless the player gives another.
    pub seed: u64,
    /// The hidden fault.
    pub fault: Hidden,
    /// Wear of the dial: 0 is new, 1 is worn out.
    #[serde(default)]
    #[schemars(range(min = 0.0, max = 1.0))]
    pub dial_wear: f64,
    /// Codes left in the list from long ago, newest first: `detent names codes --board BOARD` lists them.
    #[serde(default)]
    #[schemars(inner(range(max = 99)))]
    pub stale_codes: Vec<u8>,
    /// Codes that the author expects of the customer's wash with the job's own seed, in any order, for `detent
    /// check`; none where nothing is expected in particular.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schemars(extend("default" = null), inner(range(max = 99)))]
    pub expected_codes: Option<Vec<u8>>,
    /// Time that a good technician should need, min. At least what the report and the cheapest repair of the fault
    /// take.
    #[schemars(extend("exclusiveMinimum" = 0.0, "maximum" = LONGEST_JOB.ms() / 60_000))]
    pub par_minutes: f64,
    /// What the customer will pay at most for parts and work, money. At least what the cheapest repair of the fault
    /// costs.
    #[schemars(extend("exclusiveMinimum" = 0.0, "maximum" = 1_000_000))]
    pub budget: f64,
    /// Whether meter work on the live machine is allowed in this job.
    #[serde(default)]
    pub live_tests_allowed: bool,
    /// Whether hints may be taken in this job.
    #[serde(default = "allowed")]
    pub hints_allowed: bool,
    /// Whether a lead of the technician's meter is broken inside its insulation.
    #[serde(default)]
    pub worn_lead: bool,
    /// Highest points for each side of the work, 100 together.
    pub points: Points,
}

fn allowed() -> bool {
    true
}

/// Points for each side of the work, 100 together.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Points {
    /// Getting into service mode, points.
    #[schemars(range(min = 0.0))]
    pub entry: f64,
    /// Reading the codes, points.
    #[schemars(range(min = 0.0))]
    pub reading: f64,
    /// Choosing tests and the part, points.
    #[schemars(range(min = 0.0))]
    pub reasoning: f64,
    /// Working safely, points.
    #[schemars(range(min = 0.0))]
    pub safety: f64,
    /// Time and money, points.
    #[schemars(range(min = 0.0))]
    pub cost: f64,
    /// Proving the fault and the repair, points.
    #[schemars(range(min = 0.0))]
    pub proof: f64,
}

impl Points {
    /// Highest points of a side.
    pub fn of(&self, side: Dimension) -> f64 {
        match side {
            Dimension::Entry => self.entry,
            Dimension::Reading => self.reading,
            Dimension::Reasoning => self.reasoning,
            Dimension::Safety => self.safety,
            Dimension::Cost => self.cost,
            Dimension::Proof => self.proof,
        }
    }

    /// The side that a job is most about: hints take their points there.
    pub(super) fn main_side(&self) -> Dimension {
        let sides = Dimension::ALL.iter().rev().copied();
        sides
            .max_by(|a, b| self.of(*a).total_cmp(&self.of(*b)))
            .unwrap_or(Dimension::Reasoning)
    }

    /// Points that a hint takes.
    pub fn taken_by_hint(&self, rung: HintRung) -> f64 {
        let side = self.main_side();
        Loss::HintTaken { rung }.share(side) * self.of(side)
    }
}
