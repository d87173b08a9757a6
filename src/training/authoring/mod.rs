//! What the simulator says of a job, a board or a guide that somebody wrote: that the fault shows itself, can be told from
//! its rivals and can be repaired in time and money; that a hand can meet the gesture; how difficult it is; that what a
//! guide shows reaches its goals.
//!
//! It uses what proves variants, but judges the job as it is written: nothing in it is drawn or changed.

mod board_proof;
mod finding;
mod guide_proof;
mod scenario_proof;
pub use board_proof::{BoardProof, GestureShare, prove_board_in_slices};
pub use finding::{AuthoringFinding, PlacedFinding, Severity};
pub use guide_proof::{GuideProof, prove_guide_in_slices};
pub use scenario_proof::{MachineProof, Rival, ScenarioProof, Shown, prove_scenario_in_slices};
