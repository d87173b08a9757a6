//! What to work on after a job: the reason that cost most, and the exercise that trains it.

use super::{CourseJob, Exercise, Learner, Moment, Skill, skills_of};
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
        | LossKind::NoLeakCheck
        | LossKind::NotDemonstrated => Skill::Proof,
    }
}

/// What to work on after the job of file name `done`, at `now`; none where no point was lost. What failed the job comes
/// before everything else. A skill that `learner` has mastered, and that no review is due of, is not drilled again: of
/// `jobs` the one that trains it is taken, the one that was just done last, if one is open and not passed.
pub fn coach<'a>(
    (done, score): (&str, &Score),
    learner: &Learner,
    jobs: impl IntoIterator<Item = &'a CourseJob>,
    now: Moment,
) -> Option<CoachAdvice> {
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
        exercise: exercise((trained_by(kind), side), done, learner, jobs, now),
    })
}

/// The drill of a skill; where that is mastered, of the open jobs that score it the easiest, of equals the first. `side`
/// is where its loss stands: a job speaks for some skills only by that.
fn exercise<'a>(
    (skill, side): (Skill, Dimension),
    done: &str,
    learner: &Learner,
    jobs: impl IntoIterator<Item = &'a CourseJob>,
    now: Moment,
) -> Exercise {
    let standing = learner.standing(skill);
    if !standing.mastered() || standing.due(now) {
        return Exercise::Drill(skill);
    }
    let speaks_for = |of: &&Dimension| skills_of(**of).contains(&skill);
    let sides: Vec<Dimension> = Dimension::ALL.iter().filter(speaks_for).copied().collect();
    let trains = |job: &&CourseJob| match sides.as_slice() {
        [] => job.points.of(side) > 0.0,
        sides => sides.iter().any(|side| job.points.of(*side) > 0.0),
    };
    let open = jobs.into_iter().filter(|job| job.open(learner));
    let rated = open.filter(trains).map(|job| {
        let expected = job.expected(learner, now).unwrap_or(0.0);
        // The job that was just done comes after every other.
        ((job.file != done, expected), job)
    });
    let easiest = rated.reduce(|best, other| if other.0 > best.0 { other } else { best });
    easiest.map_or(Exercise::Drill(skill), |(_, job)| {
        Exercise::Job(job.file.clone())
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::HintRung;
    use crate::lesson::{Deduction, DimensionScore, Loss, Points};
    use crate::practice::answer::given;
    use crate::practice::review::DAY_S;
    use crate::practice::{Answer, Detail};
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

    /// What a newcomer is told to whom no job is offered.
    fn newcomer(score: &Score) -> Option<CoachAdvice> {
        coach(("done", score), &Learner::default(), [], Moment(0))
    }

    #[test]
    fn the_dearest_reason_is_named_with_what_trains_it() {
        let lost = vec![
            (Dimension::Reading, 6.0, misread()),
            (Dimension::Proof, 5.0, Loss::NoProvingRun),
            (Dimension::Reading, 2.0, misread()),
        ];
        let advice = newcomer(&score(lost)).expect("points were lost");
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
        let advice = newcomer(&score(lost)).expect("the job was failed");
        assert_eq!(advice.loss, (Dimension::Safety, 0));
        assert_eq!(advice.exercise, Exercise::Drill(Skill::SafeWork));
    }

    #[test]
    fn nothing_lost_is_nothing_to_work_on() {
        assert_eq!(newcomer(&score(Vec::new())), None);
        let rung = HintRung::WhereToLook;
        let free = vec![(Dimension::Reasoning, 0.0, Loss::HintTaken { rung })];
        assert_eq!(newcomer(&score(free)), None);
    }

    /// Right answers to a skill's drill on two days.
    fn mastered(skill: Skill) -> Vec<Answer> {
        let days = [0, DAY_S].into_iter();
        days.flat_map(|day| (0..6).map(move |n| given(day + 60 * n, skill, true, Detail::None)))
            .collect()
    }

    fn job(file: &str, after: &[&str], points: Points) -> CourseJob {
        CourseJob {
            file: file.to_owned(),
            after: after.iter().map(|file| (*file).to_owned()).collect(),
            points,
        }
    }

    fn passed(file: &str, at: i64) -> Answer {
        let file = file.to_owned();
        let detail = Detail::Job { file, kept: 1.0 };
        given(at, Skill::EntryTiming, true, detail)
    }

    #[test]
    fn whoever_has_mastered_the_skill_is_sent_to_the_easiest_open_job_that_trains_it() {
        let read = |reading, reasoning| Points {
            reading,
            reasoning,
            ..Points::default()
        };
        // Lamps are mastered, the next test is not: the more a job is about lamps, the easier it is.
        let jobs = [
            job("done", &[], read(100.0, 0.0)),
            job("hard", &[], read(20.0, 80.0)),
            job(
                "proof",
                &[],
                Points {
                    proof: 100.0,
                    ..Points::default()
                },
            ),
            job("locked", &["hard"], read(100.0, 0.0)),
            job("easy", &[], read(80.0, 20.0)),
            job("easy-too", &[], read(80.0, 20.0)),
        ];
        let lost = score(vec![(Dimension::Reading, 6.0, misread())]);
        let mut answers = mastered(Skill::LampReading);
        let soon = Moment(DAY_S + 1000);
        let told = |answers: &[Answer], now| {
            let advice = coach(("done", &lost), &Learner::of(answers), &jobs, now);
            advice.expect("points were lost").exercise
        };
        let of = |file: &str| Exercise::Job(file.to_owned());
        let drill = Exercise::Drill(Skill::LampReading);
        assert_eq!(told(&answers, soon), of("easy"));
        // Whoever has not mastered it, or has a review due, drills.
        assert_eq!(told(&answers[..4], soon), drill);
        assert_eq!(told(&answers, Moment(300 * DAY_S)), drill);
        for (file, next) in [
            ("easy", "easy-too"),
            ("easy-too", "hard"),
            ("hard", "locked"),
        ] {
            answers.push(passed(file, DAY_S + 900));
            assert_eq!(told(&answers, soon), of(next));
        }
        answers.push(passed("locked", DAY_S + 900));
        assert_eq!(told(&answers, soon), of("done"), "no other is left");
        answers.push(passed("done", DAY_S + 900));
        assert_eq!(told(&answers, soon), drill);
    }

    /// No side of a job speaks for metering by itself: it shows in safe work.
    #[test]
    fn a_skill_without_a_side_of_its_own_is_trained_where_its_loss_stands() {
        let jobs = [
            job(
                "proof",
                &[],
                Points {
                    proof: 100.0,
                    ..Points::default()
                },
            ),
            job(
                "safe",
                &[],
                Points {
                    safety: 100.0,
                    ..Points::default()
                },
            ),
        ];
        let lost = score(vec![(Dimension::Safety, 6.0, Loss::OhmsOnLive)]);
        let learner = Learner::of(&mastered(Skill::Metering));
        let advice = coach(("done", &lost), &learner, &jobs, Moment(DAY_S + 1000));
        let exercise = advice.expect("points were lost").exercise;
        assert_eq!(exercise, Exercise::Job("safe".to_owned()));
    }
}
