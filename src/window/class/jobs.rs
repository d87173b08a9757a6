//! What has come of each job of the class.

use super::kept::KeptClass;
use detent_class_protocol::{AttemptStatus, ClassJob, ClassView, UnverifiedReason, Verdict};
use detent_training::record::PART;

/// How far a job of the class has come.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum JobStanding {
    /// Nothing was done.
    NotBegun,
    /// It is under way here, or on another device.
    Begun,
    /// It is finished, and not done again yet.
    HandedIn,
    /// It came out as it says, with so many points of 100 where they may be shown.
    Verified(Option<f64>),
    /// It comes out another way than it says.
    Differs,
    /// It is at another machine than this learner's.
    NotAssigned,
    /// It cannot be done again there.
    Unverified(UnverifiedReason),
}

/// A job of the class with what has come of it.
#[derive(Clone, Debug, PartialEq)]
pub struct JobRow {
    /// The job, and the seed of this learner's machine.
    pub job: ClassJob,
    /// Whether its scenario came, where it is sealed.
    pub has_scenario: bool,
    /// What has come of it.
    pub standing: JobStanding,
    /// The attempt that is under way here, by the name that it has now.
    pub under_way: Option<String>,
    /// The attempt that was finished here last, by its name.
    pub finished: Option<String>,
}

/// Every job of the class, in order; `names` are those of the attempts that are kept here, the one changed last first. The server's word on an attempt counts before what is kept here.
pub fn job_rows(view: &ClassView, kept: &KeptClass, names: &[&str]) -> Vec<JobRow> {
    let rows = view.jobs.iter().map(|job| {
        let here = kept.attempts.iter();
        let here: Vec<_> = here
            .filter(|(_, attempt)| attempt.job == job.job && kept.sits_in(&attempt.seat))
            .collect();
        let is_of_job = |whole: &str| here.iter().any(|(name, _)| *name == whole);
        let under_way = names
            .iter()
            .find(|name| name.strip_suffix(PART).is_some_and(is_of_job));
        let finished = names.iter().find(|name| is_of_job(name));
        let is_known = |status: &&AttemptStatus| {
            let id = here.iter().any(|(_, kept)| kept.attempt == status.attempt);
            id || status.job.as_deref() == Some(job.job.as_str())
        };
        let told = view.attempts.iter().filter(is_known).map(of_status);
        let ours = [
            under_way.map(|_| JobStanding::Begun),
            finished.map(|_| JobStanding::HandedIn),
        ];
        let all = told.chain(ours.into_iter().flatten());
        JobRow {
            job: job.clone(),
            has_scenario: kept.has_scenario(&job.job),
            standing: all.fold(JobStanding::NotBegun, further),
            under_way: under_way.map(|name| (*name).to_owned()),
            finished: finished.map(|name| (*name).to_owned()),
        }
    });
    rows.collect()
}

pub(super) fn of_status(status: &AttemptStatus) -> JobStanding {
    match status.verdict {
        Verdict::Waiting if status.closed => JobStanding::HandedIn,
        Verdict::Waiting => JobStanding::Begun,
        Verdict::Verified { points } => JobStanding::Verified(points),
        Verdict::Mismatch => JobStanding::Differs,
        Verdict::NotAssigned => JobStanding::NotAssigned,
        Verdict::Unverified(reason) => JobStanding::Unverified(reason),
    }
}

/// The one that says more of a job; of two that were verified the one with more points.
pub(super) fn further(one: JobStanding, other: JobStanding) -> JobStanding {
    let rank = |standing: JobStanding| match standing {
        JobStanding::NotBegun => (0, 0.0),
        JobStanding::Begun => (1, 0.0),
        JobStanding::HandedIn => (2, 0.0),
        JobStanding::NotAssigned => (3, 0.0),
        JobStanding::Unverified(_) => (4, 0.0),
        JobStanding::Differs => (5, 0.0),
        JobStanding::Verified(points) => (6, points.unwrap_or(0.0)),
    };
    if rank(other) > rank(one) { other } else { one }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::class::shown::demo_view;
    use detent_class_protocol::{AttemptId, ClassKind};

    #[test]
    fn the_servers_word_counts_before_what_is_kept_here() {
        let mut view = demo_view(ClassKind::Practice);
        let job = view.jobs[0].job.clone();
        let first = |view: &ClassView| job_rows(view, &KeptClass::default(), &[])[0].standing;
        view.attempts.clear();
        assert_eq!(first(&view), JobStanding::NotBegun);
        let with = |closed, verdict| AttemptStatus {
            job: Some(job.clone()),
            closed,
            verdict,
            ..AttemptStatus::nothing_of(AttemptId::of_bytes([1; 16]))
        };
        let unverified = UnverifiedReason::OtherContent;
        // Each says more than all before it.
        for (closed, verdict, standing) in [
            (false, Verdict::Waiting, JobStanding::Begun),
            (true, Verdict::Waiting, JobStanding::HandedIn),
            (true, Verdict::NotAssigned, JobStanding::NotAssigned),
            (
                true,
                Verdict::Unverified(unverified),
                JobStanding::Unverified(unverified),
            ),
            (true, Verdict::Mismatch, JobStanding::Differs),
            (
                true,
                Verdict::Verified { points: None },
                JobStanding::Verified(None),
            ),
            (
                true,
                Verdict::Verified { points: Some(61.0) },
                JobStanding::Verified(Some(61.0)),
            ),
            (
                true,
                Verdict::Verified { points: Some(88.0) },
                JobStanding::Verified(Some(88.0)),
            ),
        ] {
            view.attempts.push(with(closed, verdict));
            assert_eq!(first(&view), standing);
            view.attempts.rotate_left(1);
            assert_eq!(first(&view), standing, "in any order");
        }
    }
}
