//! Does an attempt again on a fresh bench.

use super::attempt::{Answer, Attempt, Footer, Seal, Timed};
use crate::bench::{Bench, Refusal};
use crate::slices::{SliceEnd, wait, without_breaks};
use detent_simulation::units::Time;
use std::ops::Range;

/// Where a replay leaves the recording. None says what the recording should have been.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum Divergence {
    /// An action that was done then is refused now.
    #[error("line {line}, at {at}: {refusal}; the attempt was not made on this machine")]
    Refused {
        /// Line of the action.
        line: usize,
        /// When.
        at: Time,
        /// Why.
        refusal: Refusal,
    },
    /// An action begins before the last one has ended.
    #[error(
        "line {line}, at {at}, begins while the line before is still being done (until {busy})"
    )]
    Overlap {
        /// Line of the action.
        line: usize,
        /// When.
        at: Time,
        /// End of the action before.
        busy: Time,
    },
    /// The end lies before the last action is done.
    #[error("line {line}: the attempt ends while its last action is still being done")]
    EndsEarly {
        /// Line of the end.
        line: usize,
    },
    /// The machine's state at the end differs.
    #[error("line {line}: these deeds do not lead to the state of the machine that stands here")]
    State {
        /// Line of the end.
        line: usize,
    },
    /// The answer was shown and should not have been, or the other way round.
    #[error("line {line}: with this report the answer is not as it says here")]
    Answer {
        /// Line of the end.
        line: usize,
    },
    /// The score differs.
    #[error("line {line}: these deeds are not worth the score that stands here")]
    Score {
        /// Line of the end.
        line: usize,
    },
    /// The first visit goes another way.
    #[error("first visit: {0}")]
    FirstVisit(Box<Divergence>),
    /// Nobody calls back after the first visit, so that there is no second one.
    #[error("the customer does not call back after this first visit")]
    NoCallBack,
    /// The digest is not that of the lines.
    #[error(
        "line {line}: the digest is not that of the lines above it: the file was changed after the attempt was finished; restore it from a copy"
    )]
    Seal {
        /// Line of the end.
        line: usize,
    },
}

/// Does all actions at their times, and waits to the end if the attempt was finished.
///
/// # Errors
/// The first action that cannot be done as recorded.
pub fn replay(bench: &mut Bench, attempt: &Attempt) -> Result<(), Divergence> {
    without_breaks(replay_in_slices(bench, attempt))
}

/// The same in slices of a few milliseconds each.
///
/// # Errors
/// As [`replay`].
pub async fn replay_in_slices(bench: &mut Bench, attempt: &Attempt) -> Result<(), Divergence> {
    replay_deeds_in_slices(bench, attempt, 0..attempt.actions.len()).await?;
    replay_end_in_slices(bench, attempt).await
}

/// Does these deeds of the attempt, counted from 0, at their times on a bench where all before them are done.
///
/// # Errors
/// The first one that cannot be done as recorded.
pub async fn replay_deeds_in_slices(
    bench: &mut Bench,
    attempt: &Attempt,
    deeds: Range<usize>,
) -> Result<(), Divergence> {
    let lines = (FIRST_DEED_LINE..).zip(&attempt.actions);
    for (line, Timed { at, action }) in lines.take(deeds.end).skip(deeds.start) {
        let (at, busy) = (*at, bench.now());
        if at < busy {
            return Err(Divergence::Overlap { line, at, busy });
        }
        wait(bench, at.since(busy)).await;
        let done = bench.act_in_slices(action).await;
        done.map_err(|refusal| Divergence::Refused { line, at, refusal })?;
        SliceEnd::default().await;
    }
    Ok(())
}

/// Waits for the end of the attempt on a bench where all its deeds are done; an unfinished one has none.
///
/// # Errors
/// The end lies before that.
pub async fn replay_end_in_slices(bench: &mut Bench, attempt: &Attempt) -> Result<(), Divergence> {
    if let Some(footer) = &attempt.footer {
        if footer.at < bench.now() {
            let line = attempt.end_line();
            return Err(Divergence::EndsEarly { line });
        }
        wait(bench, footer.at.since(bench.now())).await;
    }
    Ok(())
}

/// Line of the first deed: the header stands above it.
const FIRST_DEED_LINE: usize = 2;

/// Holds the end of the replay against what the attempt says, and its lines against its digest. An
/// unfinished attempt says nothing.
///
/// # Errors
/// What differs first.
pub fn compare(attempt: &Attempt, end: &Footer) -> Result<(), Divergence> {
    let Some(recorded) = &attempt.footer else {
        return Ok(());
    };
    let line = attempt.end_line();
    if recorded.state != end.state {
        return Err(Divergence::State { line });
    }
    match (recorded.answer, end.answer) {
        (Answer::Shown { score }, Answer::Shown { score: again }) => {
            if (score - again).abs() > 1e-9 {
                return Err(Divergence::Score { line });
            }
        }
        // An older program showed it in any case.
        (Answer::Shown { .. }, Answer::Withheld) if attempt.seal == Seal::Without => {}
        (Answer::Withheld, Answer::Withheld) => {}
        (Answer::Shown { .. }, Answer::Withheld) | (Answer::Withheld, Answer::Shown { .. }) => {
            return Err(Divergence::Answer { line });
        }
    }
    if attempt.seal == Seal::Broken {
        return Err(Divergence::Seal { line });
    }
    Ok(())
}
