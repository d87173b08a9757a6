//! The built-in examinations, sat from their beginning to their end by the scripted expert: in time, out of time and
//! broken off.

use crate::stage::{Stage, act};
use detent_content::ScenarioSource;
use detent_training::bench::{Action, Bench, Report};
use detent_training::lesson::technician::{Persona, work};
use detent_training::lesson::{Score, judge, set_up};
use detent_training::practice::{
    Examination, ExaminationError, ExaminationSitting, JobStanding, Learner, Moment, answers_of_job,
};
use detent_training::record::{AttemptLog, Header, read_attempt, replay};

/// The machine's clock runs this many times as fast as that on the wall: a speed that the window offers.
const SPEED: f64 = 10.0;
/// Seed of the sittings.
const SEED: u64 = 21;

/// The examinations on a stage.
struct Sets {
    stage: Stage,
    jobs: Vec<ScenarioSource>,
    examinations: Vec<(String, Examination)>,
}

impl Sets {
    fn new() -> Sets {
        let stage = Stage::new();
        let jobs = stage.content_library().scenarios().expect("sound jobs");
        let examinations = stage.content_library().examinations(&jobs);
        let examinations = examinations.expect("sound examinations");
        assert!(!examinations.is_empty());
        Sets {
            stage,
            jobs,
            examinations,
        }
    }

    /// Every examination, just begun.
    fn begin(&self) -> impl Iterator<Item = (&Examination, ExaminationSitting)> {
        self.examinations.iter().map(|(file, examination)| {
            let sitting =
                ExaminationSitting::begin(file.clone(), examination, SEED, Moment(1_000_000));
            (examination, sitting)
        })
    }

    fn job(&self, name: &str) -> &ScenarioSource {
        let file = format!("/{name}.ron");
        let job = self.jobs.iter().find(|job| job.file.ends_with(&file));
        job.unwrap_or_else(|| panic!("no job {name}"))
    }

    /// The job's bench, nothing done yet.
    fn bench(&self, name: &str, seed: u64) -> Bench {
        let scenario = &self.job(name).scenario;
        let library = self.stage.content_library().library(scenario);
        set_up(scenario, &library, seed).expect("it fits")
    }

    fn expert(&self, name: &str, seed: u64) -> Bench {
        let scenario = &self.job(name).scenario;
        work(Persona::Expert, scenario, self.bench(name, seed)).expect("the expert goes on")
    }

    fn score(&self, name: &str, bench: &Bench) -> Score {
        judge(&self.job(name).scenario, bench)
    }
}

/// The wall's clock after this much work at the bench.
fn after(now: Moment, bench: &Bench) -> Moment {
    Moment(now.0 + (60.0 * bench.minutes() / SPEED) as i64)
}

#[test]
fn an_expert_passes_every_built_in_examination_in_its_time() {
    let sets = Sets::new();
    for (examination, mut sitting) in sets.begin() {
        let mut now = sitting.began;
        let mut expected = Vec::new();
        for job in &examination.jobs {
            assert!(!sets.job(job).scenario.hints_allowed, "{job}");
            (sitting.begin_job(job, false, now)).expect("time is left");
            let done = sets.expert(job, sitting.seed);
            now = after(now, &done);
            let (score, took_s) = (sets.score(job, &done), 60.0 * done.minutes());
            (sitting.hand_in(job, &score, now, took_s)).expect("its one try");
            expected.extend(answers_of_job(job, &score, now, took_s));
            assert_eq!(sitting.result(), None, "nothing is told before the end");
        }
        assert!(sitting.left_s(now) > 0, "{}", examination.title.en);
        let answers = sitting.close(now).expect("open");
        assert_eq!(answers, expected);
        let result = sitting.result().expect("closed");
        assert_eq!(
            (result.passed, result.jobs),
            (examination.jobs.len(), examination.jobs.len()),
            "{}: {sitting:?}",
            examination.title.en
        );
        let learner = Learner::of(&answers);
        assert_eq!(learner.jobs_done(), examination.jobs.len());
    }
}

/// The job on the bench is given up for the time, what comes after it cannot begin, and what was handed in before counts.
#[test]
fn whoever_runs_out_of_time_gives_up_the_job_on_the_bench() {
    let sets = Sets::new();
    for (examination, mut sitting) in sets.begin() {
        let [first, second, rest @ ..] = &examination.jobs[..] else {
            panic!("{}: one job", examination.title.en);
        };
        let began = sitting.began;
        (sitting.begin_job(first, false, began)).expect("time is left");
        let done = sets.expert(first, sitting.seed);
        let now = after(began, &done);
        let score = sets.score(first, &done);
        (sitting.hand_in(first, &score, now, 60.0)).expect("its one try");
        (sitting.begin_job(second, false, now)).expect("time is left");
        let mut bench = sets.bench(second, sitting.seed);
        act(&mut bench, [Action::Unplug]);
        let over = sitting.until;
        assert_eq!(sitting.left_s(over), 0);
        act(&mut bench, [Action::Report(Report::given_up())]);
        let score = sets.score(second, &bench);
        (sitting.hand_in(second, &score, over, 60.0)).expect("given up");
        for job in rest {
            let late = sitting.begin_job(job, false, over);
            assert_eq!(late, Err(ExaminationError::TimeOver), "{job}");
        }
        let answers = sitting.close(over).expect("open");
        let result = sitting.result().expect("closed");
        assert_eq!((result.passed, result.jobs), (1, examination.jobs.len()));
        let out_of_time = sitting.jobs.iter().map(|job| match job.standing() {
            JobStanding::HandedIn(result) => (result.passed, result.out_of_time),
            _ => (false, false),
        });
        assert_eq!(
            out_of_time.take(2).collect::<Vec<_>>(),
            [(true, false), (false, true)]
        );
        let learner = Learner::of(&answers);
        assert_eq!((learner.jobs_done(), learner.jobs_passed()), (2, 1));
    }
}

/// A job that is kept goes on where it was broken off and is worth what it would have been; one that is kept nowhere has no
/// second bench.
#[test]
fn a_job_broken_off_goes_on_where_it_is_kept_and_counts_nothing_where_it_is_not() {
    let sets = Sets::new();
    let (examination, mut sitting) = sets.begin().next().expect("some examination");
    let [first, second, ..] = &examination.jobs[..] else {
        panic!("{}: one job", examination.title.en);
    };
    let now = sitting.began;
    (sitting.begin_job(first, false, now)).expect("time is left");
    // Half of what the expert does, as it is kept.
    let undisturbed = sets.expert(first, sitting.seed);
    let job = sets.job(first);
    let header = Header::new(&job.file, &job.text, sitting.seed);
    let mut log = AttemptLog::begin(Vec::new(), &header).expect("memory takes it");
    let half = undisturbed.history().len() / 2;
    for (at, action) in undisturbed.history().iter().take(half) {
        log.push(at, action).expect("memory takes it");
    }
    let name = format!("{first}-1.attempt.part");
    (sitting.note_work(first, Some(&name), now)).expect("in the set");
    // The program ends here and begins again.
    let kept = ron::to_string(&sitting).expect("it can be written");
    let mut sitting: ExaminationSitting = ron::from_str(&kept).expect("as written");
    (sitting.begin_job(first, false, now)).expect("it is kept");
    let standing = sitting.job(first).map(|job| job.standing());
    assert_eq!(standing, Some(JobStanding::Kept(&name)));
    let attempt = read_attempt(&name, &log.into_inner()).expect("it reads back");
    let mut bench = sets.bench(first, attempt.header.seed);
    replay(&mut bench, &attempt).expect("it can be done again");
    assert_eq!(bench.history().len(), half);
    for (at, action) in undisturbed.history().starting_at(half).iter() {
        bench.wait(at.since(bench.now()));
        act(&mut bench, [action.clone()]);
    }
    let score = sets.score(first, &bench);
    assert_eq!(score, sets.score(first, &undisturbed));
    (sitting.hand_in(first, &score, now, 60.0)).expect("its one try");

    (sitting.begin_job(second, false, now)).expect("time is left");
    (sitting.note_work(second, None, now)).expect("in the set");
    let again = sitting.begin_job(second, false, now);
    assert_eq!(again, Err(ExaminationError::BrokenOff));
    let answers = sitting.close(now).expect("open");
    let result = sitting.result().expect("closed");
    assert_eq!((result.passed, result.jobs), (1, examination.jobs.len()));
    let learner = Learner::of(&answers);
    assert!(!learner.tried(second), "nothing is known of it");
}
