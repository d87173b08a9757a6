//! What to work on after a job: the reason that cost most, and the exercise that trains it.

use super::{Exercise, Skill};
use crate::lesson::{Dimension, LossKind, Score};

/// One thing to work on.
#[derive(Clone, Debug, PartialEq)]
pub struct CoachAdvice {
    /// The side on which the reason stands, and its place among that side's losses: the dearest of its kind.
    pub loss: (Dimension, usize),
    /// Points that its kind took over the whole job.
    pub points: f64,
    /// What trains it.
    pub exercise: Exercise,
}

/// The skill that keeps points of this kind. Time and money follow from what is tested and bought.
pub const fn trained_by(kind: LossKind) -> Skill {
    match kind {
        LossKind::FailedTry | LossKind::NeverEntered | LossKind::RestTooShort => Skill::EntryTiming,
        LossKind::Misread | LossKind::CodeNotNoted | LossKind::CodeSlip => Skill::LampReading,
        LossKind::GoodBoardReplaced
        | LossKind::BoughtOnTheCode
        | LossKind::NotCured
        | LossKind::NoReport
        | LossKind::WrongCause
        | LossKind::LuckyRepair
        | LossKind::Slow
        | LossKind::NoEvidence
        | LossKind::RivalsLeft
        | LossKind::HintTaken => Skill::NextTest,
        LossKind::WrongPart
        | LossKind::WrongPartNamed
        | LossKind::OverRepaired
        | LossKind::Overspent
        | LossKind::OverBudget
        | LossKind::OverRepairLimit
        | LossKind::NotApproved
        | LossKind::OverQuote => Skill::PartChoice,
        LossKind::OhmsOnLive | LossKind::LiveNotAllowed => Skill::Metering,
        LossKind::Shock
        | LossKind::TesterShock
        | LossKind::TouchedCharge
        | LossKind::OpenedLive
        | LossKind::Flood
        | LossKind::OpenedUnderPressure
        | LossKind::LidSpinning
        | LossKind::DischargedLive
        | LossKind::HandInDrive
        | LossKind::Scald
        | LossKind::DischargedUnmeasured
        | LossKind::NotProvedDead
        | LossKind::MeterNotProved => Skill::SafeWork,
        LossKind::WrongAdvice
        | LossKind::NotRecalibrated
        | LossKind::CalibratedWithLaundry
        | LossKind::NoProvingRun
        | LossKind::RunFallsShort
        | LossKind::NoLeakCheck => Skill::Proof,
    }
}

/// What to work on after a job; none where no point was lost. What failed the job comes before everything else.
pub fn coach(score: &Score) -> Option<CoachAdvice> {
    let losses = || {
        score.dimensions.iter().flat_map(|side| {
            let lost = side.lost.iter().enumerate();
            lost.map(move |(place, loss)| (side.dimension, place, loss))
        })
    };
    let taken_by = |kind: LossKind| -> f64 {
        let of_kind = losses().filter(|(_, _, lost)| lost.loss.kind() == kind);
        of_kind.map(|(_, _, lost)| lost.points).sum()
    };
    let weight = |kind: LossKind| (kind.fails_the_job(), taken_by(kind));
    let kinds = losses().map(|(_, _, lost)| lost.loss.kind());
    let (kind, (fails, points)) = kinds
        .map(|kind| (kind, weight(kind)))
        .reduce(|best, other| if other.1 > best.1 { other } else { best })?;
    if points <= 0.0 && !fails {
        return None;
    }
    let of_kind = losses().filter(|(_, _, lost)| lost.loss.kind() == kind);
    let (side, place, _) = of_kind.reduce(|best, other| {
        if other.2.points > best.2.points {
            other
        } else {
            best
        }
    })?;
    Some(CoachAdvice {
        loss: (side, place),
        points,
        exercise: Exercise::Drill(trained_by(kind)),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::HintRung;
    use crate::lesson::{Deduction, DimensionScore, Loss};
    use detent_simulation::units::Time;

    fn score(lost: Vec<(Dimension, f64, Loss)>) -> Score {
        let mut dimensions: Vec<DimensionScore> = Dimension::ALL
            .iter()
            .map(|side| DimensionScore {
                dimension: *side,
                of: 20.0,
                kept: 20.0,
                lost: Vec::new(),
            })
            .collect();
        for (side, points, loss) in lost {
            let at = Time(7);
            let side = &mut dimensions[side.index()];
            side.kept -= points;
            side.lost.push(Deduction { at, points, loss });
        }
        Score { dimensions }
    }

    fn misread() -> Loss {
        Loss::Misread {
            noted: 7,
            shown: vec![17],
        }
    }

    #[test]
    fn the_dearest_reason_is_named_with_what_trains_it() {
        let lost = vec![
            (Dimension::Reading, 6.0, misread()),
            (Dimension::Proof, 5.0, Loss::NoProvingRun),
            (Dimension::Reading, 2.0, misread()),
        ];
        let advice = coach(&score(lost)).expect("points were lost");
        assert_eq!(advice.loss, (Dimension::Reading, 0));
        assert_eq!(advice.points, 8.0);
        assert_eq!(advice.exercise, Exercise::Drill(Skill::LampReading));
    }

    #[test]
    fn what_failed_the_job_comes_first() {
        let lost = vec![
            (Dimension::Reading, 19.0, misread()),
            // The side had nothing left to lose.
            (Dimension::Safety, 0.0, Loss::Shock),
        ];
        let advice = coach(&score(lost)).expect("the job was failed");
        assert_eq!(advice.loss, (Dimension::Safety, 0));
        assert_eq!(advice.exercise, Exercise::Drill(Skill::SafeWork));
    }

    #[test]
    fn nothing_lost_is_nothing_to_work_on() {
        assert_eq!(coach(&score(Vec::new())), None);
        let rung = HintRung::WhereToLook;
        let free = vec![(Dimension::Reasoning, 0.0, Loss::HintTaken { rung })];
        assert_eq!(coach(&score(free)), None);
    }
}
