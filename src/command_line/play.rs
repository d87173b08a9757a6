//! `detent play`: a script on a scenario, without a window.

use super::coached::Coached;
use super::library_folder::with_table;
use super::outcome::{FailedStep, Outcome};
use super::output::Output;
use super::print::Look;
use super::{Failure, LibraryFolder, print};
use detent_content::attempt_file::AttemptWriter;
use detent_content::{
    ContentLibrary, Language, ReplayedAttempt, ScenarioSource, Texts, disk, read_profile,
    read_script, replay_attempt, script_line,
};
use detent_simulation::units::Span;
use detent_training::bench::Bench;
use detent_training::bench::script::{ScriptStep, StepError};
use detent_training::lesson::{CustomerAccount, EarlierVisit, Intake, call_back, judge, set_up};
use detent_training::record::{Footer, Header, read_attempt};
use std::path::{Path, PathBuf};

#[derive(Debug, clap::Args)]
pub(super) struct PlayArgs {
    scenario: String,
    script: PathBuf,
    #[arg(long)]
    seed: Option<u64>,
    #[arg(long)]
    json: bool,
    #[arg(long)]
    save: Option<PathBuf>,
    #[arg(long, requires = "save")]
    resume: bool,
    #[arg(long, value_name = "ATTEMPT", conflicts_with_all = ["resume", "seed"])]
    call_back: Option<PathBuf>,
    #[arg(long, value_name = "FILE")]
    learner: Option<PathBuf>,
}

pub(super) fn play(
    args: &PlayArgs,
    library: &LibraryFolder,
    language: Language,
) -> Result<(), Failure> {
    let mut content_library = library.open()?;
    let scenario_source = content_library.scenario(&args.scenario)?;
    if !args.json {
        let (board, mains) = (
            &scenario_source.scenario.board,
            scenario_source.scenario.mains,
        );
        with_table(&mut content_library, board, mains, &Texts::load(language));
    }
    let name = args.script.to_string_lossy();
    let steps = read_script(&name, &disk::read_bytes(&args.script)?)?;
    let mut job = match (&args.call_back, &args.save) {
        (Some(first), save) => {
            Job::called_back(save.as_deref(), first, &content_library, &scenario_source)?
        }
        (None, Some(path)) if args.resume => {
            Job::resume(path, args.seed, &content_library, &scenario_source)?
        }
        (None, save) => {
            let seed = args.seed.unwrap_or(scenario_source.scenario.seed);
            Job::begin(save.as_deref(), seed, &content_library, &scenario_source)?
        }
    };
    let answers = match &args.learner {
        Some(path) => {
            let name = path.to_string_lossy();
            read_profile(&name, &disk::profile_bytes(path)?)?.answers
        }
        None => Vec::new(),
    };
    let mut failed = None;
    for (line, step) in &steps {
        if let Err(error) = job.take(step)? {
            failed = Some((*line, step, error));
            break;
        }
    }

    let (scenario, seed, bench) = (&scenario_source.scenario, job.seed, &job.bench);
    let score = judge(scenario, bench);
    let called = call_back(bench);
    let kept = match job.log {
        Some(log) if failed.is_some() => Some(log.part().display().to_string()),
        Some(log) => {
            log.finish(&Footer::of(bench, &score))?;
            None
        }
        None => None,
    };
    let mut out = Output::standard();
    if args.json {
        let failed = failed.as_ref().map(|(line, step, error)| FailedStep {
            line: *line,
            step: script_line(step),
            error: Texts::load(language).step_error(error),
        });
        let outcome = Outcome::of(
            (&scenario_source, seed),
            (bench, job.first.as_ref()),
            (&score, called.as_ref()),
            (&job.looks, &job.intake),
            failed,
        );
        out.json(&outcome)?;
    } else {
        let concluded = bench.report().is_some_and(|report| report.concludes());
        let review = if concluded {
            content_library.review((scenario, seed), bench, &score)?
        } else {
            None
        };
        let coached = Coached::after(
            (&scenario_source, &score),
            &answers,
            &content_library.scenarios()?,
        );
        print::outcome(
            &mut out,
            (&scenario_source, seed),
            (bench, &score, called.as_ref()),
            (&job.intake, job.first.as_ref()),
            &job.looks,
            (review.as_ref(), coached.as_ref()),
            language,
        )?;
    }
    match failed {
        None => Ok(()),
        Some((line, _, error)) => Err(Failure::Step {
            script: name.into_owned(),
            line,
            error,
            kept,
        }),
    }
}

/// A job being done, and kept as it goes if it is to be.
struct Job {
    bench: Bench,
    seed: u64,
    log: Option<AttemptWriter>,
    /// What the customer can tell.
    intake: Intake,
    /// The first visit and what the customer called back for, if this is a second one.
    first: Option<(EarlierVisit, CustomerAccount)>,
    /// Actions in the log.
    kept: usize,
    looks: Vec<Look>,
}

impl Job {
    fn begin(
        save: Option<&Path>,
        seed: u64,
        content_library: &ContentLibrary,
        scenario_source: &ScenarioSource,
    ) -> Result<Job, Failure> {
        let header = scenario_source.header(seed);
        let bench = set_up(
            &scenario_source.scenario,
            &content_library.library(&scenario_source.scenario),
            seed,
        )?;
        let log = save.map(|path| AttemptWriter::replace(path, &header));
        Ok(Job {
            first: None,
            intake: Intake::of(&bench),
            bench,
            seed,
            log: log.transpose()?,
            kept: 0,
            looks: Vec::new(),
        })
    }

    /// The second visit after a finished attempt.
    fn called_back(
        save: Option<&Path>,
        path: &Path,
        content_library: &ContentLibrary,
        scenario_source: &ScenarioSource,
    ) -> Result<Job, Failure> {
        let file = path.display().to_string();
        let bytes = disk::attempt_bytes(path)?;
        let attempt = read_attempt(&file, &bytes)?;
        let seed = attempt.header.seed;
        let first = replay_attempt(content_library, scenario_source, &file, &attempt)?;
        let header = Header::of_second_visit(&file, &bytes)?;
        let Some(call) = call_back(&first.bench) else {
            return Err(Failure::NoCallBack(file));
        };
        let log = save.map(|path| AttemptWriter::replace(path, &header));
        Ok(Job {
            first: Some((call.earlier, call.account)),
            intake: Intake::of(&call.bench),
            bench: call.bench,
            seed,
            log: log.transpose()?,
            kept: 0,
            looks: Vec::new(),
        })
    }

    /// As far as the unfinished attempt went that will be called `path`.
    fn resume(
        path: &Path,
        asked: Option<u64>,
        content_library: &ContentLibrary,
        scenario_source: &ScenarioSource,
    ) -> Result<Job, Failure> {
        let (log, attempt) = AttemptWriter::resume(path)?;
        let file = log.part().display().to_string();
        // Another text of the scenario is said before another seed.
        attempt.check_scenario(&file, &scenario_source.text)?;
        let seed = attempt.header.seed;
        if asked.is_some_and(|asked| asked != seed) {
            return Err(Failure::OtherSeed { file, seed });
        }
        let ReplayedAttempt {
            first,
            intake,
            bench,
            ..
        } = replay_attempt(content_library, scenario_source, &file, &attempt)?;
        Ok(Job {
            first,
            intake,
            bench,
            seed,
            log: Some(log),
            kept: attempt.actions.len(),
            looks: Vec::new(),
        })
    }

    /// Does one step and keeps what was done, also of a step that could not be done to its end.
    fn take(&mut self, step: &ScriptStep) -> Result<Result<(), StepError>, Failure> {
        let done = match step {
            ScriptStep::Watch { s } => self.watch(step, Span::from_s(*s)),
            step => step.run(&mut self.bench),
        };
        if *step == ScriptStep::Look {
            let lamps = self.bench.machine().outputs().lamps;
            self.looks.push((self.bench.now(), lamps));
        }
        if let Some(log) = &mut self.log {
            for (at, action) in self.bench.history().starting_at(self.kept).iter() {
                log.push(at, action)?;
                self.kept += 1;
            }
        }
        Ok(done)
    }

    /// Notes the lamps at once and whenever they change.
    fn watch(&mut self, step: &ScriptStep, span: Span) -> Result<(), StepError> {
        step.add_to(self.bench.now().since(Default::default()))?;
        let mut last = None;
        for _ in 0..span.0 {
            let lamps = self.bench.machine().outputs().lamps;
            if last != Some(lamps) {
                self.looks.push((self.bench.now(), lamps));
                last = Some(lamps);
            }
            self.bench.step();
        }
        Ok(())
    }
}
