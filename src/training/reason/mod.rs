//! What a person who knows the catalogue should believe and do next: posterior over the faults, the
//! expected cost of repair, and when failed tries speak against the control.

mod account;
pub mod evidence;
mod hand;
mod hint;
mod path;
mod plan;
mod policy;
mod posterior;
mod repair_costs;
mod wald;
pub use account::{Account, GoodPractice, Review, SoundChoice, Worth, review, review_in_slices};
pub use hand::{
    ControlSuspicion, Hand, HandPractice, HandRecord, control_on_trial, failures_needed,
};
pub use hint::{Area, Hint, HintTopic, LEAST_NAMED, hint, hint_in_slices};
pub use path::{PathError, PathPoint, PathStep, WORK};
pub use plan::{
    Choice, Course, MOST_REPAIRS, Needs, Plan, PlanError, PlanStep, Problem, Repair, Test,
};
pub use policy::{best_costs, expected, order_costs};
pub use posterior::{Posterior, PosteriorError};
pub use repair_costs::{
    LIVE_TEST_RISK, Probe, Remedy, RepairCosts, WAIT_PER_HOUR, code_buyer, control_swapper,
};
pub use wald::{Lines, Sprt, Verdict, WaldError};
