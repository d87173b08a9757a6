//! Does an attempt again on a fresh bench.

use super::attempt::{Attempt, Timed};
use crate::bench::{Bench, Refusal};
use detent_simulation::units::Time;

/// Where a replay leaves the recording.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum Divergence {
    /// An action that was done then is refused now.
    #[error("action {number} at {at}: {refusal}; the attempt was not made on this machine")]
    Refused {
        /// Number of the action, from 1.
        number: usize,
        /// When.
        at: Time,
        /// Why.
        refusal: Refusal,
    },
    /// An action begins before the last one has ended.
    #[error(
        "action {number} at {at} begins while the one before is still being done (until {busy})"
    )]
    Overlap {
        /// Number of the action, from 1.
        number: usize,
        /// When.
        at: Time,
        /// End of the action before.
        busy: Time,
    },
    /// The machine's state at the end differs.
    #[error("the machine ends in state {found}, the attempt says {recorded}")]
    State {
        /// Hash in the attempt.
        recorded: String,
        /// Hash of the replay.
        found: String,
    },
    /// The score differs.
    #[error("the replay scores {found:.3}, the attempt says {recorded:.3}")]
    Score {
        /// Points in the attempt.
        recorded: f64,
        /// Points of the replay.
        found: f64,
    },
}

/// Does all actions at their times, and waits to the end if the attempt was finished.
///
/// # Errors
/// The first action that cannot be done as recorded.
pub fn replay(bench: &mut Bench, attempt: &Attempt) -> Result<(), Divergence> {
    for (number, Timed { at, action }) in (1..).zip(&attempt.actions) {
        let (at, busy) = (*at, bench.now());
        if at < busy {
            return Err(Divergence::Overlap { number, at, busy });
        }
        bench.wait(at.since(busy));
        bench.act(action).map_err(|refusal| Divergence::Refused {
            number,
            at,
            refusal,
        })?;
    }
    if let Some(footer) = &attempt.footer {
        bench.wait(footer.at.since(bench.now()));
    }
    Ok(())
}

/// Holds the replay's end against what the attempt says.
///
/// # Errors
/// State or score differ.
pub fn compare(attempt: &Attempt, state: &str, score: f64) -> Result<(), Divergence> {
    let Some(footer) = &attempt.footer else {
        return Ok(());
    };
    if footer.state != state {
        return Err(Divergence::State {
            recorded: footer.state.clone(),
            found: state.to_owned(),
        });
    }
    if (footer.score - score).abs() > 1e-9 {
        return Err(Divergence::Score {
            recorded: footer.score,
            found: score,
        });
    }
    Ok(())
}
