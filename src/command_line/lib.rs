//! The commands. Without one, the window opens.

#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    clippy::disallowed_macros,
    reason = "the command line reads its surroundings and prints"
)]

mod best;
mod coached;
mod failure;
mod job;
mod jobs;
#[cfg(test)]
mod kept_schema;
mod learners;
mod outcome;
mod output;
mod play;
mod practice;
mod print;
mod replay;
mod sheet;
mod simulate;
mod table;
mod usage;
mod ways;

use clap::{Parser, Subcommand};
use detent_content::{Language, Texts};
use failure::Failure;
use std::ffi::OsString;
use std::path::PathBuf;
use std::process::ExitCode;

/// A training bench for people who repair washing machines.
///
/// Every machine, board, code, part and customer in it is invented. It does not replace local
/// codes, lockout rules or a licensed electrician's work.
#[derive(Debug, Parser)]
#[command(name = "detent", version, about, after_help = EXIT_CODES)]
pub struct Cli {
    /// Language of the texts: en or es [default: from LANG, else en].
    #[arg(long, global = true)]
    lang: Option<String>,
    #[command(subcommand)]
    command: Option<Command>,
}

const EXIT_CODES: &str = "Exit status: 0 success; 1 the script, replay or check failed; 2 wrong usage, or a file that cannot be used.";

#[derive(Debug, Subcommand)]
enum Command {
    /// Open the bench in a window (the same as no command).
    Window(WindowArgs),
    /// List the built-in scenarios.
    Scenarios,
    /// Print a board's service sheet: entry gesture, codes, checks, menu, pins.
    Sheet(sheet::SheetArgs),
    /// Print the price list of the parts counter.
    Parts,
    /// Run a script on a scenario without a window; print the machine's state, the readings and the score.
    Play(play::PlayArgs),
    /// Repeat a recorded attempt and check that the machine's state and the score are the same.
    Replay(replay::ReplayArgs),
    /// Run the customer's wash on a scenario's machine and print its signals.
    Simulate(simulate::SimulateArgs),
    /// Print every fault with the codes it raises and the readings that tell it apart.
    Faults(table::FaultsArgs),
    /// Print the likely causes on a scenario's machine, the best next steps and the expected cost of
    /// repair; or a table of costs for every scenario.
    Best(best::BestArgs),
    /// Draw variants of a job, each proved before it is offered; print them or write them to files.
    Jobs(jobs::JobsArgs),
    /// Print how a learner is doing in each skill, or how well adaptive practice works for simulated learners.
    Practice(practice::PracticeArgs),
}

/// How the window opens.
#[derive(Debug, Default, Clone, clap::Args)]
pub struct WindowArgs {
    /// Start with this scenario instead of the start screen.
    #[arg(long)]
    pub scenario: Option<String>,
    /// Seed of the random draws [default: the scenario's own].
    #[arg(long)]
    pub seed: Option<u64>,
    /// Save a picture here after some frames and exit. Several times: one picture after the other,
    /// each in its view, at its tab and after its script, which are given in the same order.
    #[arg(long, hide = true)]
    pub shot: Vec<PathBuf>,
    /// View for the picture; the last one serves the pictures that are left.
    #[arg(long, hide = true)]
    pub view: Vec<String>,
    /// Panel tab for the picture; the last one serves the pictures that are left.
    #[arg(long, hide = true)]
    pub tab: Vec<String>,
    /// Window size for the picture, such as 1366x768.
    #[arg(long, hide = true)]
    pub size: Option<String>,
    /// Frames to draw before the picture.
    #[arg(long, hide = true)]
    pub frames: Option<u32>,
    /// Script to run before the picture, on top of those before it.
    #[arg(long, hide = true)]
    pub script: Vec<PathBuf>,
}

/// Opens the window, in the language asked for if one was. This room knows no window: the program
/// hands it in.
pub type OpenWindow = fn(WindowArgs, Option<Language>) -> Result<(), String>;

/// Runs the program. `window` is none in a program that was built without it.
pub fn run(window: Option<OpenWindow>) -> ExitCode {
    let cli = match Cli::try_parse() {
        Ok(cli) => cli,
        Err(error) => return refuse(&error),
    };
    let language = match language(cli.lang.as_deref()) {
        Ok(language) => language,
        Err(failure) => return fail(&failure, of_system()),
    };
    let asked = cli.lang.is_some().then_some(language);
    let done = match cli.command {
        None => open(window, WindowArgs::default(), asked),
        Some(Command::Window(args)) => open(window, args, asked),
        Some(Command::Scenarios) => print::scenarios(language),
        Some(Command::Sheet(args)) => sheet::sheet(&args, language),
        Some(Command::Parts) => sheet::parts(language),
        Some(Command::Play(args)) => play::play(&args, language),
        Some(Command::Replay(args)) => replay::check(&args, language),
        Some(Command::Simulate(args)) => simulate::simulate(&args),
        Some(Command::Faults(args)) => table::faults(&args),
        Some(Command::Best(args)) => best::best(&args, language),
        Some(Command::Jobs(args)) => jobs::jobs(&args, language),
        Some(Command::Practice(args)) => practice::practice(&args, language),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        // The reader of a pipe went away: nothing is wrong.
        Err(Failure::Output(error)) if error.kind() == std::io::ErrorKind::BrokenPipe => {
            ExitCode::SUCCESS
        }
        Err(failure) => fail(&failure, language),
    }
}

/// Tells what is wrong with the arguments in the language that they ask for, as far as they can be read; prints help
/// and version.
fn refuse(error: &clap::Error) -> ExitCode {
    let language = asked_language(std::env::args_os()).and_then(|code| of_code(&code));
    match usage::words(error, &Texts::load(language.unwrap_or_else(of_system))) {
        Some(told) => {
            tell(&told);
            ExitCode::from(2)
        }
        None => error.exit(),
    }
}

/// What stands behind `--lang`.
fn asked_language(args: impl Iterator<Item = OsString>) -> Option<String> {
    let mut args = args.map(|arg| arg.to_string_lossy().into_owned());
    while let Some(arg) = args.next() {
        match arg.strip_prefix("--lang") {
            Some("") => return args.next(),
            Some(rest) if rest.starts_with('=') => return Some(rest[1..].to_owned()),
            Some(_) | None => {}
        }
    }
    None
}

fn fail(failure: &Failure, language: Language) -> ExitCode {
    tell(&failure.words(&Texts::load(language)));
    failure.exit_code()
}

fn tell(problem: &str) {
    eprintln!("{}", output::plain(&format!("detent: {problem}")));
}

fn language(asked: Option<&str>) -> Result<Language, Failure> {
    match asked {
        Some(code) => of_code(code).ok_or_else(|| Failure::NoLanguage(code.to_owned())),
        None => Ok(of_system()),
    }
}

/// The language of this two-letter code.
fn of_code(code: &str) -> Option<Language> {
    Language::ALL.into_iter().find(|l| l.code() == code)
}

/// The language that the system is set to, if the program speaks it, else English.
fn of_system() -> Language {
    let lang = std::env::var("LANG").unwrap_or_default();
    lang.get(..2).and_then(of_code).unwrap_or_default()
}

fn open(
    window: Option<OpenWindow>,
    args: WindowArgs,
    language: Option<Language>,
) -> Result<(), Failure> {
    match window {
        Some(open) => open(args, language).map_err(Failure::Window),
        None => Err(Failure::NoWindow),
    }
}
