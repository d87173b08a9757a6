//! The proof of a draft: cheap reasons to refuse it first.

use super::difficulty::{Band, Difficulty, PeopleAtWork};
use super::draft::Draft;
use super::known_faults::KnownFaults;
use super::learners::Demands;
use super::maker::VariantError;
use super::refusal::VariantRefusal;
use crate::bench::Bench;
use crate::bench::cost::LONGEST_JOB;
use crate::lesson::technician::{Persona, work_in_slices};
use crate::lesson::{
    CustomerAccount, Dimension, Loss, PASS_SHARE, Scenario, Score, judge, set_up_in_slices,
};
use crate::practice::drill::SuppliedBoard;
use crate::reason::evidence::{End, Outcome};
use crate::slices::SliceEnd;
use detent_simulation::interface::Component;

/// A good technician may take this many times the expert's time, as in the course.
const PAR_FACTOR: f64 = 4.0 / 3.0;
/// Par times are whole multiples of this, min; budgets of the other, whole units of money.
const PAR_STEP: f64 = 5.0;
const BUDGET_STEP: f64 = 10.0;

/// What a proved draft has come to.
pub(super) struct Proved {
    /// The job with its par time and budget.
    pub scenario: Scenario,
    /// The machine after the customer's wash.
    pub bench: Bench,
    pub account: CustomerAccount,
    pub difficulty: Difficulty,
}

/// A refusal, or how far the proof came.
type Step<T> = Result<Result<T, VariantRefusal>, VariantError>;

/// Whatever the tables alone can say against a draft.
pub(super) fn refuted(
    draft: &Draft,
    original: &Scenario,
    board: &SuppliedBoard<'_>,
    known: &KnownFaults,
) -> Result<Option<VariantRefusal>, VariantError> {
    let scenario = &draft.scenario;
    let same_machine = scenario.board == original.board && scenario.mains == original.mains;
    if same_machine && scenario.fault == original.fault {
        return Ok(Some(VariantRefusal::SameJob));
    }
    let live = scenario.live_tests_allowed;
    if draft.hypotheses.iter().any(|h| !known.shows(*h, live)) {
        return Ok(Some(VariantRefusal::NeverShows));
    }
    for h in &draft.hypotheses {
        let Some(usual) = known.usual_outcome(*h) else {
            return Ok(Some(VariantRefusal::NeverShows));
        };
        let belief = known.belief(&board.library, usual)?;
        if !known.tells_from_rivals(board.library.modes, *h, &belief, live) {
            return Ok(Some(VariantRefusal::RivalsAlike));
        }
    }
    Ok(None)
}

/// Tries a draft: the customer's wash, the planner, the expert, the others. Without a band, as for an original, all
/// that counts is that the expert passes.
pub(super) async fn tried(
    draft: &Draft,
    board: &SuppliedBoard<'_>,
    known: &KnownFaults,
    band: Option<&Band>,
) -> Step<Proved> {
    let library = &board.library;
    let mut scenario = draft.scenario.clone();
    let live = scenario.live_tests_allowed;
    let bench = set_up_in_slices(&scenario, library, scenario.seed).await?;
    let outcome = Outcome::of_wash(&bench);
    let belief = known.belief(library, &outcome)?;
    if band.is_some() {
        let dial = |h: &usize| h.checked_sub(1).map(|n| library.modes[n].component);
        let mut dials = draft.hypotheses.iter().map(dial);
        if outcome.end == End::NotAskedFor && !dials.any(|c| c == Some(Component::Dial)) {
            return Ok(Err(VariantRefusal::DialSlipped));
        }
        if let [h] = draft.hypotheses[..]
            && !known.tells_from_rivals(library.modes, h, &belief, live)
        {
            return Ok(Err(VariantRefusal::RivalsAlike));
        }
    }
    SliceEnd::default().await;
    let planned_cost = known.planned_cost(&belief, live)?;
    if let Some(band) = band {
        if planned_cost < band.planned_cost.0 {
            return Ok(Err(VariantRefusal::PlanTooCheap));
        }
        if planned_cost > band.planned_cost.1 {
            return Ok(Err(VariantRefusal::PlanTooDear));
        }
    }
    SliceEnd::default().await;
    let (done, score) = match experts_way(&mut scenario, &bench).await {
        Ok(way) => way,
        Err(reason) => return Ok(Err(reason)),
    };
    if band.is_some() && !proves(&score) {
        return Ok(Err(VariantRefusal::RivalsAlike));
    }
    let faults = draft.hypotheses.len();
    if band.is_some() && faults > 1 && done.noted_codes().len() < faults {
        return Ok(Err(VariantRefusal::OneHidesTheOther));
    }
    // The guesser's way can only let more learners pass: what is too easy without it need not be tried by more people.
    let at_least = Demands::of(&done, &score, None).share_passing();
    if band.is_some_and(|band| at_least > band.chance_of_passing.1) {
        return Ok(Err(VariantRefusal::TooEasy));
    }
    let people = PeopleAtWork::at(&scenario, &bench).await;
    let difficulty = Difficulty::of(planned_cost, (&done, &score), &people);
    if let Some(reason) = band.and_then(|band| band.refuses(&difficulty)) {
        return Ok(Err(reason));
    }
    Ok(Ok(Proved {
        account: CustomerAccount::of(&bench),
        scenario,
        bench,
        difficulty,
    }))
}

/// The expert does the job, which gets its par time and budget from that.
async fn experts_way(
    scenario: &mut Scenario,
    bench: &Bench,
) -> Result<(Bench, Score), VariantRefusal> {
    let stuck = |_| VariantRefusal::ExpertStuck;
    let mut done = work_in_slices(Persona::Expert, scenario, bench.clone())
        .await
        .map_err(stuck)?;
    scenario.par_minutes = up_to(PAR_FACTOR * done.minutes(), PAR_STEP);
    // Whether a repair is worth its money depends on the time that it should take.
    if advised_wrongly(&judge(scenario, &done)) {
        done = work_in_slices(Persona::Expert, scenario, bench.clone())
            .await
            .map_err(stuck)?;
    }
    let minutes = done.minutes().max(scenario.par_minutes);
    let beside_work = done.spent() + done.consumables();
    scenario.budget = up_to(beside_work + done.rates().labour(minutes), BUDGET_STEP);
    let longest_min = LONGEST_JOB.seconds() / 60.0;
    if done.minutes() > scenario.par_minutes || scenario.par_minutes > longest_min {
        return Err(VariantRefusal::ExpertTooSlow);
    }
    let score = judge(scenario, &done);
    if score.passed() {
        Ok((done, score))
    } else {
        Err(VariantRefusal::ExpertFails)
    }
}

/// Whether a passing share of the points for proving it is kept.
fn proves(score: &Score) -> bool {
    let mut sides = score.dimensions.iter();
    sides.all(|d| d.dimension != Dimension::Proof || d.kept >= PASS_SHARE * d.of)
}

fn advised_wrongly(score: &Score) -> bool {
    let lost = score.dimensions.iter().flat_map(|d| &d.lost);
    lost.map(|lost| &lost.loss)
        .any(|loss| matches!(loss, Loss::WrongAdvice { .. }))
}

/// The next whole multiple of a step.
fn up_to(value: f64, step: f64) -> f64 {
    step * (value / step).ceil()
}
