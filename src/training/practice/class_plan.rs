//! The plan of a class: what is to be done in it, for how long, and by how many.

use super::Skill;
use detent_simulation::names;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

names! {
    /// What a class is for.
    #[derive(Default)]
    #[derive(JsonSchema)]
    ClassPurpose {
        /// Everything that the bench explains is there.
        #[default]
        Practice = "practice",
        /// No best path, no hidden fault and no score before the close.
        Examination = "examination",
    }
}

/// Most learners of a class.
pub const MOST_SEATS: u32 = 2_000;

/// A drill of a class. Each learner gets questions of their own.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PlannedDrill {
    /// The skill that is practiced.
    pub skill: Skill,
    /// Questions in a round, 1 to 50.
    #[schemars(range(min = 1, max = 50))]
    #[serde(default = "usual_questions")]
    pub questions: u32,
}

/// As many as a round has without a class.
fn usual_questions() -> u32 {
    super::drill::QUESTIONS as u32
}

/// A class as somebody plans it. Names of learners are no part of it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ClassPlan {
    /// What the class is called.
    pub title: String,
    /// What it is for.
    #[serde(default)]
    pub kind: ClassPurpose,
    /// The jobs, by file name without folder and ending, in the order in which they are to be done; no two alike.
    #[serde(default)]
    pub jobs: Vec<String>,
    /// The drills, no two of one skill.
    #[serde(default)]
    pub drills: Vec<PlannedDrill>,
    /// Time from the start of the server until the class opens by itself, min. Without it the class is open at once.
    #[schemars(range(min = 1, max = 1440))]
    #[serde(default)]
    pub opens_in_minutes: Option<u32>,
    /// Time from when it opens by itself until it closes by itself, min. Without it the class stays open.
    #[schemars(range(min = 1, max = 43200))]
    #[serde(default)]
    pub minutes: Option<u32>,
    /// Most learners, 1 to 2000; without a number 60.
    #[schemars(range(min = 1, max = 2000))]
    #[serde(default)]
    pub seats: Option<u32>,
    /// Nobody joins whose name is not on the list of names.
    #[serde(default)]
    pub only_listed: bool,
}
