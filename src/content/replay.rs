//! A recorded attempt done again on the machine that its scenario draws.

use super::content_library::{ContentLibrary, ScenarioSource};
use super::error_words::english;
use detent_training::bench::Bench;
use detent_training::lesson::{
    CustomerAccount, EarlierVisit, Intake, Scenario, Score, SetUpError, call_back_in_slices, judge,
    set_up_in_slices,
};
use detent_training::record::{
    Attempt, Divergence, Footer, RecordError, compare, replay_in_slices,
};
use detent_training::without_breaks;

/// Why an attempt could not be done again.
#[derive(Debug, thiserror::Error)]
#[error("{}", english().replay_error(self))]
pub enum ReplayError {
    /// It belongs to another text of the scenario.
    Record(#[from] RecordError),
    /// The scenario cannot be set up.
    SetUp(#[from] SetUpError),
    /// It goes another way than it was recorded.
    Differs {
        /// The attempt's file.
        file: String,
        /// Where.
        divergence: Divergence,
    },
}

/// An attempt done again, up to its end or its last action.
pub struct ReplayedAttempt {
    /// The first visit and what the customer called back for, where this is the second one.
    pub first: Option<(EarlierVisit, CustomerAccount)>,
    /// What the customer answers to questions: it tells of the machine as it was before anybody worked on it.
    pub intake: Intake,
    /// The bench afterwards.
    pub bench: Bench,
    /// Where it ended.
    pub end: Footer,
    /// Score.
    pub score: Score,
}

/// Does `attempt`, which `file` names, again at `scenario_source`; a finished one must end in the state and
/// with the score that it says, and its lines must be those that its digest was made of. A second visit begins with
/// the first one done again in the same way, and the customer must call back after it.
///
/// # Errors
/// Another scenario, or the first difference.
pub fn replay_attempt(
    content_library: &ContentLibrary,
    scenario_source: &ScenarioSource,
    file: &str,
    attempt: &Attempt,
) -> Result<ReplayedAttempt, ReplayError> {
    without_breaks(replay_attempt_in_slices(
        content_library,
        scenario_source,
        file,
        attempt,
    ))
}

/// The same in slices of a few milliseconds each, so that whoever waits can do something else in between.
///
/// # Errors
/// As [`replay_attempt`].
pub async fn replay_attempt_in_slices(
    content_library: &ContentLibrary,
    scenario_source: &ScenarioSource,
    file: &str,
    attempt: &Attempt,
) -> Result<ReplayedAttempt, ReplayError> {
    let arrival = arrive_in_slices(content_library, scenario_source, file, attempt).await?;
    let ArrivalAtJob {
        first,
        intake,
        mut bench,
    } = arrival;
    let done = do_again(&scenario_source.scenario, &mut bench, attempt).await;
    let (end, score) = done.map_err(|divergence| ReplayError::Differs {
        file: file.to_owned(),
        divergence,
    })?;
    Ok(ReplayedAttempt {
        first,
        intake,
        bench,
        end,
        score,
    })
}

/// The bench at which the technician of an attempt arrives.
pub struct ArrivalAtJob {
    /// The first visit and what the customer called back for, where this is the second one.
    pub first: Option<(EarlierVisit, CustomerAccount)>,
    /// What the customer answers to questions.
    pub intake: Intake,
    /// The bench, with nothing done at it yet.
    pub bench: Bench,
}

/// Sets up the bench for `attempt`, which `file` names, in slices of a few milliseconds each. A second visit begins with
/// the first one done again.
///
/// # Errors
/// Another scenario, or what differs in the first visit.
pub async fn arrive_in_slices(
    content_library: &ContentLibrary,
    scenario_source: &ScenarioSource,
    file: &str,
    attempt: &Attempt,
) -> Result<ArrivalAtJob, ReplayError> {
    attempt.check_scenario(file, &scenario_source.text)?;
    let scenario = &scenario_source.scenario;
    let library = content_library.library(scenario);
    let mut bench = set_up_in_slices(scenario, &library, attempt.header.seed).await?;
    let differs = |divergence| ReplayError::Differs {
        file: file.to_owned(),
        divergence,
    };
    let mut first = None;
    if let Some(visit) = &attempt.first_visit {
        do_again(scenario, &mut bench, visit)
            .await
            .map_err(|divergence| differs(Divergence::FirstVisit(Box::new(divergence))))?;
        let call = call_back_in_slices(&bench)
            .await
            .ok_or_else(|| differs(Divergence::NoCallBack))?;
        bench = call.bench;
        first = Some((call.earlier, call.account));
    }
    Ok(ArrivalAtJob {
        first,
        intake: Intake::of(&bench),
        bench,
    })
}

/// Does one visit again and holds its end against what the attempt says.
async fn do_again(
    scenario: &Scenario,
    bench: &mut Bench,
    attempt: &Attempt,
) -> Result<(Footer, Score), Divergence> {
    replay_in_slices(bench, attempt).await?;
    let score = judge(scenario, bench);
    let end = Footer::of(bench, &score);
    compare(attempt, &end)?;
    Ok((end, score))
}
