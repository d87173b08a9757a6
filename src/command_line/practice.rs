//! `detent practice`: how a learner stands, what answers say about the parameters, or what practice does for simulated
//! learners.

use super::output::Output;
use super::{Failure, learners};
use detent_content::{Language, Texts, Value, disk, read_answers_csv, read_profile};
use detent_training::practice::fit::{self, Fitted, TooFew};
use detent_training::practice::simulated::{
    Help, LOST_OVERNIGHT, Policy, Recovery, SESSION, Simulated, exercises_of_beginner,
    exercises_to_mastery, recover,
};
use detent_training::practice::{Answer, Learner, Moment, Skill, Target};
use rayon::prelude::*;
use schemars::JsonSchema;
use serde::Serialize;
use std::path::PathBuf;

#[derive(Debug, clap::Args)]
#[command(group = clap::ArgGroup::new("what").required(true))]
pub(super) struct PracticeArgs {
    #[arg(group = "what")]
    profile: Option<PathBuf>,
    #[arg(long, group = "what")]
    simulate: bool,
    #[arg(long, group = "what", num_args = 1.., value_name = "FILE")]
    fit: Vec<PathBuf>,
    #[arg(long, group = "what", value_name = "FOLDER")]
    learners: Option<PathBuf>,
    #[arg(long, conflicts_with_all = ["profile", "simulate"])]
    json: bool,
    #[arg(long, default_value_t = 200, value_name = "COUNT", value_parser = clap::value_parser!(u64).range(1..=100_000))]
    simulated: u64,
    #[arg(long, default_value_t = 500, value_parser = clap::value_parser!(u64).range(1..=10_000))]
    sessions: u64,
    #[arg(long, default_value_t = 0.75)]
    target: f64,
    #[arg(long, default_value_t = 1)]
    seed: u64,
}

/// Rates of the learners: the model's own, and up to half more or less.
const SPREADS: [f64; 2] = [0.0, 0.5];
/// Sessions after which most has been learnt.
const EARLY: usize = 20;
/// Exercises of one skill in a row in the fixed orders that are tried.
const BLOCKS: [usize; 4] = [1, 2, 5, 10];

pub(super) fn practice(args: &PracticeArgs, language: Language) -> Result<(), Failure> {
    let texts = Texts::load(language);
    if let Some(folder) = &args.learners {
        return learners::learners(folder, args.json, &texts);
    }
    let mut lines = Vec::new();
    match &args.profile {
        Some(path) => {
            let name = path.to_string_lossy();
            let profile = read_profile(&name, &disk::profile_bytes(path)?)?;
            let learner = Learner::of(&profile.answers);
            // Nobody says what time it is: the last answer's.
            let now = profile.answers.last().map_or(Moment(0), |last| last.at);
            lines.push(texts.with("cli-practice-learner", &[("name", profile.name.into())]));
            for standing in learner.standings() {
                let skill = texts.get(&format!("skill-{}", standing.skill()));
                let (right, answers) = (standing.right, standing.answers);
                let known = texts.percent(standing.known(now), 1);
                lines.push(format!("{skill:<30} {known:>7}  {right:>5}/{answers}"));
            }
            lines.push(texts.get("practice-rates-unfitted"));
        }
        None if !args.fit.is_empty() => return fitted(args, &texts),
        None => {
            let target = Target::new(args.target)?;
            for spread in SPREADS {
                lines.extend(simulate(args, target, spread, &texts));
            }
            lines.extend(beginners(args, &texts));
        }
    }
    let mut out = Output::standard();
    lines.iter().try_for_each(|line| out.line(line))
}

/// Prints the parameters of each skill, fitted to these files of answers; skills with too few answers say so.
fn fitted(args: &PracticeArgs, texts: &Texts) -> Result<(), Failure> {
    let read = |path: &PathBuf| -> Result<Vec<Answer>, Failure> {
        let bytes = disk::profile_bytes(path)?;
        Ok(read_answers_csv(&path.to_string_lossy(), &bytes)?)
    };
    let learners: Vec<Vec<Answer>> = args.fit.iter().map(read).collect::<Result<_, _>>()?;
    let all = Skill::ALL.iter().map(|skill| fit::fit(*skill, &learners));
    let all: Vec<Result<Fitted, TooFew>> = all.collect();
    let mut out = Output::standard();
    // Where nothing can be fitted, the skill with most answers says best what is missing.
    if all.iter().all(Result::is_err) {
        let most = all.into_iter().filter_map(Result::err);
        return match most.max_by_key(|few| few.answers) {
            Some(few) => Err(few.into()),
            None => Ok(()),
        };
    }
    if args.json {
        return out.json(&ToldFit::of(&all));
    }
    out.line(texts.get("cli-practice-fit-heading"))?;
    all.iter().try_for_each(|one| match one {
        Ok(fitted) => out.line(row(fitted, texts)),
        Err(few) => {
            let skill = texts.get(&format!("skill-{}", few.skill));
            let args = [
                ("answers", Value::from(few.answers)),
                ("learners", Value::from(few.learners)),
            ];
            let told = texts.with("cli-practice-fit-skipped", &args);
            out.line(format!("{skill:<30} {told}"))
        }
    })
}

/// Version of what `--fit --json` prints.
const FIT_VERSION: u32 = 1;

/// Fitted parameters, for other programs.
#[derive(Serialize, JsonSchema)]
#[schemars(title = "Parameters of `detent practice --fit --json`")]
#[serde(deny_unknown_fields)]
struct ToldFit {
    /// Version of this format.
    #[schemars(extend("const" = FIT_VERSION))]
    version: u32,
    /// Every skill.
    skills: Vec<ToldSkill>,
}

/// One skill.
#[derive(Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ToldSkill {
    /// The skill.
    skill: &'static str,
    /// Learners who answered.
    learners: usize,
    /// Their answers.
    answers: usize,
    /// What was fitted; none where there are too few learners or answers.
    fitted: Option<ToldRates>,
}

/// Parameters of knowledge tracing, each a chance from 0 to 1.
#[derive(Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ToldRates {
    /// That the skill is known before the first answer.
    known: f64,
    /// That an exercise teaches it.
    learn: f64,
    /// Of a right answer by one who does not know it.
    guess: f64,
    /// Of a wrong answer by one who knows it.
    slip: f64,
    /// Guess or slip ended at its bound: the answers do not tell them well apart.
    at_bound: bool,
    /// Rounds of fitting.
    rounds: usize,
    /// Natural logarithm of how likely the answers are under these parameters; none where it is not known.
    log_likelihood: Option<f64>,
    /// The same under the parameters that the program brings.
    built_in_log_likelihood: f64,
}

impl ToldFit {
    fn of(all: &[Result<Fitted, TooFew>]) -> ToldFit {
        let skill = |one: &Result<Fitted, TooFew>| match one {
            Ok(fitted) => ToldSkill {
                skill: fitted.skill.name(),
                learners: fitted.learners,
                answers: fitted.answers,
                fitted: Some(ToldRates {
                    known: fitted.rates.known(),
                    learn: fitted.rates.learn(),
                    guess: fitted.rates.guess(),
                    slip: fitted.rates.slip(),
                    at_bound: fitted.at_bound,
                    rounds: fitted.log_likelihoods.len().saturating_sub(1),
                    log_likelihood: fitted.log_likelihoods.last().copied(),
                    built_in_log_likelihood: fitted.built_in,
                }),
            },
            Err(few) => ToldSkill {
                skill: few.skill.name(),
                learners: few.learners,
                answers: few.answers,
                fitted: None,
            },
        };
        ToldFit {
            version: FIT_VERSION,
            skills: all.iter().map(skill).collect(),
        }
    }
}

/// One skill's parameters.
fn row(fitted: &Fitted, texts: &Texts) -> String {
    let skill = texts.get(&format!("skill-{}", fitted.skill));
    let rates = &fitted.rates;
    let end = fitted.log_likelihoods.last().copied().unwrap_or(f64::NAN);
    let bound = if fitted.at_bound {
        format!("  {}", texts.get("cli-practice-fit-bound"))
    } else {
        String::new()
    };
    format!(
        "{skill:<30} {:.3}  {:.3}  {:.3}  {:.3}  {:>6} {:>8} {:>6}  {end:>11.1} {:>11.1}{bound}",
        rates.known(),
        rates.learn(),
        rates.guess(),
        rates.slip(),
        fitted.learners,
        fitted.answers,
        fitted.log_likelihoods.len().saturating_sub(1),
        fitted.built_in,
    )
}

/// What hints and a coach save beginners.
fn beginners(args: &PracticeArgs, texts: &Texts) -> Vec<String> {
    let mean = |help| {
        let need = (0..args.simulated)
            .into_par_iter()
            .filter_map(|n| exercises_of_beginner(help, args.seed.wrapping_add(n)));
        let need: Vec<usize> = need.collect();
        need.iter().sum::<usize>() as f64 / need.len().max(1) as f64
    };
    let mut lines = vec![texts.get("cli-practice-beginners")];
    for (hints, coach, key) in [
        (false, false, "cli-practice-beginners-alone"),
        (true, false, "cli-practice-beginners-hints"),
        (false, true, "cli-practice-beginners-coach"),
        (true, true, "cli-practice-beginners-both"),
    ] {
        let mean = mean(Help { hints, coach });
        lines.push(format!("  {mean:>7.1}  {}", texts.get(key)));
    }
    lines
}

/// Both questions, for learners whose rates are this far from the model's.
fn simulate(args: &PracticeArgs, target: Target, spread: f64, texts: &Texts) -> Vec<String> {
    let learner = |n| Simulated::new(args.seed.wrapping_add(n), spread, LOST_OVERNIGHT);
    let seen = (0..args.simulated)
        .into_par_iter()
        .map(|n| recover(learner(n), target, n, EARLY, args.sessions as usize))
        .reduce(Default::default, |mut all: [Recovery; 2], one| {
            all.iter_mut().zip(&one).for_each(|(all, one)| all.add(one));
            all
        });
    let mut lines = vec![texts.with(
        "cli-practice-heading",
        &[
            ("learners", Value::from(args.simulated)),
            ("sessions", Value::from(args.sessions)),
            ("exercises", Value::from(SESSION)),
            ("spread", Value::from(100.0 * spread)),
        ],
    )];
    let early = texts.with("cli-practice-early", &[("sessions", Value::from(EARLY))]);
    for (name, seen) in [early, texts.get("cli-practice-all")].iter().zip(&seen) {
        let per_cent = |share: f64| Value::from(format!("{:.1}", 100.0 * share));
        let told = texts.with(
            "cli-practice-recovery",
            &[
                ("believed", per_cent(seen.believed())),
                ("known", per_cent(seen.known())),
                ("rmse", Value::from(format!("{:.3}", seen.rmse()))),
                ("verdict", per_cent(seen.verdict())),
            ],
        );
        lines.push(format!("{name}: {told}"));
        for (looks, believed, known) in seen.calibration() {
            lines.push(format!("  {believed:>6.3} {known:>6.3} {looks:>8}"));
        }
    }
    let mean = |policy| {
        let need = (0..args.simulated)
            .into_par_iter()
            .map(|n| exercises_to_mastery(learner(n), policy, n));
        let need: Vec<Option<usize>> = need.collect();
        let done: Vec<f64> = need.iter().flatten().map(|n| *n as f64).collect();
        let mean = done.iter().sum::<f64>() / done.len().max(1) as f64;
        (mean, need.len() - done.len())
    };
    let fixed = BLOCKS.map(|block| (block, mean(Policy::Fixed(block))));
    let best = fixed.into_iter().min_by(|a, b| a.1.0.total_cmp(&b.1.0));
    let (block, best) = best.unwrap_or((1, (f64::NAN, 0)));
    let block = Value::from(block);
    lines.push(texts.get("cli-practice-needs"));
    for (name, (mean, given_up)) in [
        (
            texts.get("cli-practice-adaptive"),
            mean(Policy::Adaptive(target)),
        ),
        (texts.with("cli-practice-fixed", &[("block", block)]), best),
        (texts.get("cli-practice-random"), mean(Policy::Random)),
        (texts.get("cli-practice-one-by-one"), mean(Policy::OneByOne)),
    ] {
        let given_up = match given_up {
            0 => String::new(),
            count => texts.with("cli-practice-given-up", &[("count", Value::from(count))]),
        };
        lines.push(format!("  {mean:>7.1}  {name} {given_up}"));
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::kept_file;

    #[test]
    fn the_kept_schema_is_that_of_the_program() {
        kept_file::check_printed::<ToldFit>("practice-fit", FIT_VERSION);
    }
}
