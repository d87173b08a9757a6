//! The attempt log: what was done in one job and when, so that it can be replayed.
//!
//! An attempt is text, one RON value in each line:
//!
//! ```text
//! DetentAttempt(format:2,program:"0.1.0",scenario:"scenarios/dry-tub.ron",scenario_sha256:"9f2c…",seed:7)
//! (at:120,do:Plug)
//! (at:340,do:Detent(Right))
//! End(at:90210,state:"51c8…",answer:Shown(score:87.5),digest:"07ab…")
//! ```
//!
//! The header of a second visit, after the customer called back, carries the whole text of the first one
//! (`first_visit`, format 4); that of a drawn job carries its scenario (`scenario_text`, format 3).
//!
//! The digest binds scenario text, seed, version, deeds, report and result; what it proves and what
//! not, its own file says.
//!
//! This room works on bytes and on any [`std::io::Write`]; where they are kept (a folder, a
//! browser's storage) is another room's matter.

mod attempt;
mod chain;
mod drill_round;
mod error;
mod log;
mod replay;
pub mod ron_text;

pub use attempt::{
    Answer, Attempt, FORMAT, Footer, Header, LATEST, LONGEST_ATTEMPT_BYTES,
    LONGEST_FIRST_VISIT_BYTES, Seal, Timed, is_end, read_attempt,
};
pub use chain::sha256_hex;
pub use drill_round::{
    DRILL_ROUND_BEGINS, DrillAnswer, DrillHeader, DrillRecord, DrillText, LONGEST_ROUND_BYTES,
    is_drill_round, read_drill_round,
};
pub use error::{Damage, RecordError};
pub use log::{AttemptLog, LogError, SystemReason};
pub use replay::{
    Divergence, compare, replay, replay_deeds_in_slices, replay_end_in_slices, replay_in_slices,
};

/// Ending of the name of a round of a drill.
pub const ROUND: &str = ".round";
/// Ending of the name of a log that is not finished.
pub const PART: &str = ".part";
