//! Examination: a set of jobs within a time on the clock on the wall, one try at each, no help, and no score
//! until the whole set is closed.

use super::{Answer, Moment, answers_of_job};
use crate::lesson::{Bilingual, Score};
use detent_simulation::names;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

names! {
    /// A page of the service sheet.
    #[derive(Default)]
    #[derive(JsonSchema)]
    SheetPage {
        /// Getting into service mode.
        #[default]
        Entry = "entry",
        /// Reading the lamps.
        Lamps = "lamps",
        /// The table of codes.
        Codes = "codes",
        /// The menu by position.
        Menu = "menu",
        /// The table of pins.
        Pins = "pins",
    }
}

/// A pause of the machine's clock shorter than this is none, s.
const SHORTEST_PAUSE_S: i64 = 2;

/// A set of jobs that can be sat as an examination.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Examination {
    /// What the trainee sees in the list.
    pub title: Bilingual,
    /// The jobs, by file name without folder and ending; at least one, no two alike.
    #[schemars(length(min = 1))]
    pub jobs: Vec<String>,
    /// Time for all of them together on the clock on the wall, min. At most a working day.
    #[schemars(range(min = 1, max = 480))]
    pub minutes: u32,
    /// The pages of the service sheet that lie on the bench, no two alike.
    pub sheet: Vec<SheetPage>,
    /// Seed of every job; without one each sitting draws its own, so that no two have the same machines.
    #[serde(default)]
    pub seed: Option<u64>,
}

impl Examination {
    /// One job by itself, with the whole sheet.
    pub fn of_job(title: Bilingual, job: String) -> Examination {
        /// Time for a single job, min. Our own choice.
        const MINUTES: u32 = 30;
        Examination {
            title,
            jobs: vec![job],
            minutes: MINUTES,
            sheet: SheetPage::ALL.to_vec(),
            seed: None,
        }
    }
}

/// Why something cannot be done in an examination.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum ExaminationError {
    /// The set is closed.
    #[error("the examination is closed")]
    Closed,
    /// The time is over.
    #[error("the time is over")]
    TimeOver,
    /// There is one try at each job, and this one was handed in.
    #[error("this job was handed in; there is one try at each")]
    OneTry,
    /// Work on the job was broken off and is kept nowhere: that was the one try.
    #[error("this job was broken off and is kept nowhere; there is one try at each")]
    BrokenOff,
    /// The job is not in the set.
    #[error("this job is not in the examination")]
    NotInSet,
}

/// A sitting of an examination, as it is kept with the learner.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ExaminationSitting {
    /// The examination's file name without folder and ending, or that of its one job.
    pub file: String,
    /// When it began.
    pub began: Moment,
    /// When its time is over.
    pub until: Moment,
    /// Seed of its jobs.
    pub seed: u64,
    /// The pages of the service sheet that lie on the bench.
    pub sheet: Vec<SheetPage>,
    /// Its jobs.
    pub jobs: Vec<SittingJob>,
    /// When it was closed.
    pub closed: Option<Moment>,
}

/// One job of a sitting.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SittingJob {
    /// Its scenario's file name without folder and ending.
    pub job: String,
    /// When it was begun, if it was.
    pub begun: Option<Moment>,
    /// When the first thing was done at its bench, if anything was.
    #[serde(default)]
    pub worked_on: Option<Moment>,
    /// The name under which all that was done is kept, if it is.
    pub attempt: Option<String>,
    /// Pauses of the machine's clock during the job.
    pub pauses: Vec<Pause>,
    /// What it was worth, once it was handed in.
    pub result: Option<JobResult>,
}

/// Where a job of a sitting stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum JobStanding<'a> {
    /// Nobody has begun it.
    NotBegun,
    /// It was begun, and nothing was done at its bench: a new bench is the same.
    NothingDone,
    /// What was done is kept under this name, to be gone on with.
    Kept(&'a str),
    /// Something was done and is kept nowhere: once it has left the bench, the try is over and counts nothing.
    NotKept,
    /// It was handed in.
    HandedIn(&'a JobResult),
}

impl SittingJob {
    /// Where it stands.
    pub fn standing(&self) -> JobStanding<'_> {
        match (&self.result, &self.attempt, self.worked_on, self.begun) {
            (Some(result), ..) => JobStanding::HandedIn(result),
            (None, Some(attempt), ..) => JobStanding::Kept(attempt),
            (None, None, Some(_), _) => JobStanding::NotKept,
            (None, None, None, Some(_)) => JobStanding::NothingDone,
            (None, None, None, None) => JobStanding::NotBegun,
        }
    }
}

/// A time during which the machine's clock stood still and that on the wall went on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Pause {
    /// When it began.
    pub at: Moment,
    /// How long it was, s.
    pub seconds: i64,
}

/// What a job was worth. Nobody is told before the set is closed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct JobResult {
    /// When it was handed in.
    pub at: Moment,
    /// Points kept.
    pub kept: f64,
    /// Points possible.
    pub of: f64,
    /// Whether that is a pass.
    pub passed: bool,
    /// The time ran out, and the job was given up for that.
    pub out_of_time: bool,
    /// What it says about skills; counted when the set is closed.
    pub answers: Vec<Answer>,
}

/// What a closed sitting comes to. A job that was not handed in counts nothing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SittingResult {
    /// Jobs passed.
    pub passed: usize,
    /// Jobs in the set.
    pub jobs: usize,
    /// Pauses in all of them.
    pub pauses: usize,
    /// How long these were together, s.
    pub paused_s: i64,
}

impl ExaminationSitting {
    /// Begins an examination. `drawn_seed` is its jobs' seed where the examination gives none.
    pub fn begin(
        file: String,
        examination: &Examination,
        drawn_seed: u64,
        now: Moment,
    ) -> ExaminationSitting {
        let jobs = examination.jobs.iter().map(|job| SittingJob {
            job: job.clone(),
            begun: None,
            worked_on: None,
            attempt: None,
            pauses: Vec::new(),
            result: None,
        });
        ExaminationSitting {
            file,
            began: now,
            until: Moment(now.0 + i64::from(examination.minutes) * 60),
            seed: examination.seed.unwrap_or(drawn_seed),
            sheet: examination.sheet.clone(),
            jobs: jobs.collect(),
            closed: None,
        }
    }

    /// It is not closed.
    pub fn is_open(&self) -> bool {
        self.closed.is_none()
    }

    /// Time left, s; 0 when it is over.
    pub fn left_s(&self, now: Moment) -> i64 {
        (self.until.0 - now.0).max(0)
    }

    /// The job of this name.
    pub fn job(&self, job: &str) -> Option<&SittingJob> {
        self.jobs.iter().find(|one| one.job == job)
    }

    fn job_mut(&mut self, job: &str) -> Result<&mut SittingJob, ExaminationError> {
        let found = self.jobs.iter_mut().find(|one| one.job == job);
        found.ok_or(ExaminationError::NotInSet)
    }

    /// The job of this name, if it can still be worked on.
    fn open_job(&mut self, job: &str) -> Result<&mut SittingJob, ExaminationError> {
        if self.closed.is_some() {
            return Err(ExaminationError::Closed);
        }
        let found = self.job_mut(job)?;
        if found.result.is_some() {
            return Err(ExaminationError::OneTry);
        }
        Ok(found)
    }

    /// Begins a job, or goes on with it. `on_bench` is whether its bench is still there as it was left.
    ///
    /// # Errors
    /// It was handed in or broken off, the time is over, or the set is closed.
    pub fn begin_job(
        &mut self,
        job: &str,
        on_bench: bool,
        now: Moment,
    ) -> Result<(), ExaminationError> {
        let over = self.left_s(now) == 0;
        let job = self.open_job(job)?;
        if over {
            return Err(ExaminationError::TimeOver);
        }
        if !on_bench && job.standing() == JobStanding::NotKept {
            return Err(ExaminationError::BrokenOff);
        }
        job.begun.get_or_insert(now);
        Ok(())
    }

    /// Notes that something was done at a job's bench, and the name under which all of it is kept, if it is;
    /// whether either is new.
    ///
    /// # Errors
    /// The job is not in the set.
    pub fn note_work(
        &mut self,
        job: &str,
        attempt: Option<&str>,
        now: Moment,
    ) -> Result<bool, ExaminationError> {
        let found = self.job_mut(job)?;
        let is_new = found.worked_on.is_none() || found.attempt.as_deref() != attempt;
        if is_new {
            found.worked_on.get_or_insert(now);
            found.attempt = attempt.map(str::to_owned);
        }
        Ok(is_new)
    }

    /// Notes a pause of the machine's clock that ends now; whether it was long enough to be one.
    ///
    /// # Errors
    /// The job is not at hand.
    pub fn note_pause(
        &mut self,
        job: &str,
        since: Moment,
        now: Moment,
    ) -> Result<bool, ExaminationError> {
        let seconds = now.0 - since.0;
        if seconds < SHORTEST_PAUSE_S {
            return Ok(false);
        }
        let found = self.job_mut(job)?;
        found.pauses.push(Pause { at: since, seconds });
        Ok(true)
    }

    /// Takes a job that was handed in, after `took_s` of the machine's own time.
    ///
    /// # Errors
    /// It was handed in before, or the set is closed.
    pub fn hand_in(
        &mut self,
        job: &str,
        score: &Score,
        now: Moment,
        took_s: f64,
    ) -> Result<(), ExaminationError> {
        let out_of_time = self.left_s(now) == 0;
        let answers = answers_of_job(job, score, now, took_s);
        self.open_job(job)?.result = Some(JobResult {
            at: now,
            kept: score.total(),
            of: score.of(),
            passed: score.passed(),
            out_of_time,
            answers,
        });
        Ok(())
    }

    /// Closes the set: what its jobs say about skills, in the order in which they were handed in.
    ///
    /// # Errors
    /// It is closed.
    pub fn close(&mut self, now: Moment) -> Result<Vec<Answer>, ExaminationError> {
        if self.closed.is_some() {
            return Err(ExaminationError::Closed);
        }
        self.closed = Some(now);
        let results = self.jobs.iter().filter_map(|job| job.result.as_ref());
        let mut answers: Vec<Answer> = results.flat_map(|r| r.answers.iter().cloned()).collect();
        answers.sort_by_key(|answer| answer.at);
        Ok(answers)
    }

    /// What it comes to; none before it is closed.
    pub fn result(&self) -> Option<SittingResult> {
        self.closed?;
        let results = self.jobs.iter().filter_map(|job| job.result.as_ref());
        let pauses = || self.jobs.iter().flat_map(|job| &job.pauses);
        Some(SittingResult {
            passed: results.filter(|result| result.passed).count(),
            jobs: self.jobs.len(),
            pauses: pauses().count(),
            paused_s: pauses().map(|pause| pause.seconds).sum(),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lesson::{Dimension, DimensionScore};

    fn score(kept: f64) -> Score {
        let side = DimensionScore {
            dimension: Dimension::Reading,
            of: 100.0,
            kept,
            lost: Vec::new(),
        };
        Score {
            dimensions: vec![side],
        }
    }

    fn sitting() -> ExaminationSitting {
        let title = Bilingual {
            en: "Two jobs".to_owned(),
            es: "Dos trabajos".to_owned(),
        };
        let examination = Examination {
            title,
            jobs: vec!["first".to_owned(), "second".to_owned()],
            minutes: 10,
            sheet: vec![SheetPage::Entry],
            seed: None,
        };
        ExaminationSitting::begin("two".to_owned(), &examination, 5, Moment(1_000))
    }

    #[test]
    fn each_job_has_one_try_and_nothing_is_told_before_the_set_is_closed() {
        let mut sitting = sitting();
        assert_eq!(
            (sitting.seed, sitting.left_s(Moment(1_100))),
            (5, 500),
            "ten minutes from the beginning"
        );
        (sitting.begin_job("first", false, Moment(1_010))).expect("open");
        (sitting.begin_job("first", true, Moment(1_020))).expect("gone on with");
        assert_eq!(
            sitting.job("first").and_then(|job| job.begun),
            Some(Moment(1_010))
        );
        sitting
            .hand_in("first", &score(80.0), Moment(1_200), 900.0)
            .expect("open");
        assert_eq!(sitting.result(), None);
        let again = sitting.begin_job("first", false, Moment(1_210));
        assert_eq!(again, Err(ExaminationError::OneTry));
        let twice = sitting.hand_in("first", &score(100.0), Moment(1_210), 900.0);
        assert_eq!(twice, Err(ExaminationError::OneTry));
        let other = sitting.begin_job("third", false, Moment(1_210));
        assert_eq!(other, Err(ExaminationError::NotInSet));
        let answers = sitting.close(Moment(1_300)).expect("open until now");
        assert!(!answers.is_empty() && answers.iter().all(|answer| answer.at == Moment(1_200)));
        let result = sitting.result().expect("closed");
        assert_eq!((result.passed, result.jobs), (1, 2));
        let late = sitting.begin_job("second", false, Moment(1_310));
        assert_eq!(late, Err(ExaminationError::Closed));
    }

    #[test]
    fn a_job_cannot_begin_after_the_time_and_one_at_hand_is_marked_for_it() {
        let mut sitting = sitting();
        (sitting.begin_job("first", false, Moment(1_010))).expect("open");
        let late = sitting.begin_job("second", false, Moment(1_600));
        assert_eq!(late, Err(ExaminationError::TimeOver));
        sitting
            .hand_in("first", &score(30.0), Moment(1_600), 900.0)
            .expect("given up");
        let result = sitting.jobs[0].result.as_ref().expect("handed in");
        assert!(result.out_of_time && !result.passed);
    }

    /// A new bench is no second try: it is had only by whoever did nothing at the first one.
    #[test]
    fn a_job_that_was_worked_on_is_gone_on_with_where_it_is_kept_and_nowhere_else() {
        let mut sitting = sitting();
        let standing = |sitting: &ExaminationSitting| {
            let job = sitting.job("first").expect("in the set");
            format!("{:?}", job.standing())
        };
        assert_eq!(standing(&sitting), "NotBegun");
        (sitting.begin_job("first", false, Moment(1_010))).expect("open");
        assert_eq!(standing(&sitting), "NothingDone");
        (sitting.begin_job("first", false, Moment(1_020))).expect("nothing was done");
        let kept = Some("first-1.attempt.part");
        let note = |sitting: &mut ExaminationSitting, attempt, at| {
            (sitting.note_work("first", attempt, Moment(at))).expect("in the set")
        };
        assert!(note(&mut sitting, kept, 1_030));
        assert!(!note(&mut sitting, kept, 1_040), "noted once");
        assert_eq!(standing(&sitting), "Kept(\"first-1.attempt.part\")");
        (sitting.begin_job("first", false, Moment(1_050))).expect("it is kept");
        // Keeping it failed: what is kept is not all of it.
        assert!(note(&mut sitting, None, 1_060));
        assert_eq!(standing(&sitting), "NotKept");
        (sitting.begin_job("first", true, Moment(1_070))).expect("it is on the bench");
        let again = sitting.begin_job("first", false, Moment(1_080));
        assert_eq!(again, Err(ExaminationError::BrokenOff));
        let first = sitting.job("first").map(|job| (job.begun, job.worked_on));
        assert_eq!(first, Some((Some(Moment(1_010)), Some(Moment(1_030)))));
        (sitting.begin_job("second", false, Moment(1_090))).expect("the others go on");
        assert_eq!(sitting.close(Moment(1_100)), Ok(Vec::new()));
        let result = sitting.result().expect("closed");
        assert_eq!((result.passed, result.jobs), (0, 2));
    }

    #[test]
    fn pauses_are_noted_from_two_seconds_on() {
        let mut sitting = sitting();
        let short = sitting.note_pause("first", Moment(1_020), Moment(1_021));
        assert_eq!(short, Ok(false));
        let long = sitting.note_pause("first", Moment(1_030), Moment(1_075));
        assert_eq!(long, Ok(true));
        sitting.close(Moment(1_100)).expect("open");
        let result = sitting.result().expect("closed");
        assert_eq!((result.pauses, result.paused_s), (1, 45));
    }
}
