//! What a person who knows the catalogue should believe and do next: posterior over the faults, the
//! expected cost of repair, and when failed tries speak against the control.

mod account;
pub mod evidence;
mod hand;
mod path;
mod plan;
mod policy;
mod posterior;
mod slices;
mod trade;
mod wald;
pub use account::{Account, GoodPractice, Review, Sound, Worth, review, review_in_slices};
pub use hand::{Doubt, Hand, control_on_trial, suspicion};
pub use path::{Deed, PathError, Stop, WORK};
pub use plan::{Choice, Course, MOST_REPAIRS, Needs, Plan, PlanError, Problem, Repair, Step, Test};
pub use policy::{best_costs, expected, order_costs};
pub use posterior::{Posterior, PosteriorError};
pub use slices::without_breaks;
pub use trade::{LIVE_TEST_RISK, Probe, Remedy, Trade, WAIT_PER_HOUR, code_buyer, control_swapper};
pub use wald::{Lines, Sprt, Verdict, WaldError};
