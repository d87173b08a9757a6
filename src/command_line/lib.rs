//! The commands. Without one, the window opens.

#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    clippy::disallowed_macros,
    reason = "the command line reads its surroundings and prints"
)]

mod best;
mod check;
#[cfg(feature = "class")]
mod class;
mod coached;
mod course;
mod failure;
mod help;
mod job;
mod jobs;
#[cfg(test)]
mod kept_file;
mod learners;
mod library_folder;
mod names;
mod outcome;
mod output;
mod paper;
mod play;
mod practice;
mod print;
mod reference;
mod replay;
mod sheet;
mod simulate;
mod source_excerpt;
mod table;
mod template;
mod tutorial;
mod usage;
mod wash;
mod ways;

use clap::{CommandFactory, Parser, Subcommand};
use detent_content::{Language, Texts};
use failure::Failure;
use library_folder::LibraryFolder;
use std::ffi::OsString;
use std::path::PathBuf;
use std::process::ExitCode;

/// The program's arguments. Their words are the texts `help-…`: see [`help`].
#[derive(Debug, Parser)]
#[command(name = "detent", version, disable_help_subcommand = true)]
pub struct Cli {
    #[arg(long, global = true)]
    lang: Option<String>,
    #[arg(long, global = true, value_name = "LIBRARY")]
    library: Option<PathBuf>,
    #[command(subcommand)]
    command: Option<Command>,
}

#[derive(Debug, Subcommand)]
enum Command {
    Window(WindowArgs),
    Scenarios,
    Sheet(sheet::SheetArgs),
    Parts,
    Play(play::PlayArgs),
    Replay(replay::ReplayArgs),
    Simulate(simulate::SimulateArgs),
    Wash(wash::WashArgs),
    Faults(table::FaultsArgs),
    Best(best::BestArgs),
    Jobs(jobs::JobsArgs),
    Check(check::CheckArgs),
    Course(course::CourseArgs),
    #[cfg(feature = "class")]
    Class(class::ClassArgs),
    New(template::NewArgs),
    Tutorial,
    Names(names::NamesArgs),
    Reference(reference::ReferenceArgs),
    Print(paper::PrintArgs),
    Practice(practice::PracticeArgs),
    Help(HelpArgs),
}

#[derive(Debug, clap::Args)]
struct HelpArgs {
    #[arg(value_name = "COMMAND")]
    of: Vec<String>,
}

/// How the window opens.
#[derive(Debug, Default, Clone, clap::Args)]
pub struct WindowArgs {
    /// Start with this scenario instead of the start screen.
    #[arg(long)]
    pub scenario: Option<String>,
    /// The own library, a folder or one zip: the option of that name, which every command takes.
    #[arg(skip)]
    pub library: Option<PathBuf>,
    /// Seed of the random draws [default: the scenario's own].
    #[arg(long)]
    pub seed: Option<u64>,
    /// Join the class whose server is at this address, such as http://192.168.1.20:8080.
    #[arg(long, value_name = "ADDRESS")]
    pub join: Option<String>,
    /// Watch this attempt, finished or not, as a film.
    #[arg(long, value_name = "FILE")]
    pub watch: Option<PathBuf>,
    /// Draw the machine flat, which is lighter on slow computers.
    #[arg(long)]
    pub flat: bool,
    /// Draw without a graphics card, on the processor; so it is where none is found.
    #[arg(long)]
    pub software: bool,
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
    let args: Vec<OsString> = std::env::args_os().collect();
    let cli = match Cli::try_parse_from(&args) {
        Ok(cli) => cli,
        // In the language that they ask for, as far as they can be read.
        Err(error) => {
            let asked = asked_language(&args).and_then(|code| of_code(&code));
            return refuse(&args, error, asked.unwrap_or_else(of_system));
        }
    };
    let language = match language(cli.lang.as_deref()) {
        Ok(language) => language,
        Err(failure) => return fail(&failure, of_system()),
    };
    let asked = cli.lang.is_some().then_some(language);
    let library = LibraryFolder(cli.library.or_else(library_folder::in_environment));
    let done = match cli.command {
        None => open(window, WindowArgs::default(), library, asked),
        Some(Command::Window(args)) => open(window, args, library, asked),
        Some(Command::Scenarios) => print::scenarios(&library, language),
        Some(Command::Sheet(args)) => sheet::sheet(&args, &library, language),
        Some(Command::Parts) => sheet::parts(&library, language),
        Some(Command::Play(args)) => play::play(&args, &library, language),
        Some(Command::Replay(args)) => replay::check(&args, &library, language),
        Some(Command::Simulate(args)) => simulate::simulate(&args, &library),
        Some(Command::Wash(args)) => wash::wash(&args, &library, language),
        Some(Command::Faults(args)) => table::faults(&args, &library),
        Some(Command::Best(args)) => best::best(&args, &library, language),
        Some(Command::Jobs(args)) => jobs::jobs(&args, &library, language),
        Some(Command::Check(args)) => check::check(&args, &library, language),
        Some(Command::Course(args)) => course::course(&args, language),
        #[cfg(feature = "class")]
        Some(Command::Class(args)) => class::class(&args, &library, language),
        Some(Command::New(args)) => template::begin(&args, language),
        Some(Command::Tutorial) => tutorial::tutorial(language),
        Some(Command::Names(args)) => names::names(&args, &library, language),
        Some(Command::Reference(args)) => reference::reference(&args, language),
        Some(Command::Print(args)) => paper::print(&args, &library, language),
        Some(Command::Practice(args)) => practice::practice(&args, language),
        Some(Command::Help(asked)) => return explain(asked.of, language),
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

/// Tells what is wrong with the arguments; prints help and version.
fn refuse(args: &[OsString], error: clap::Error, language: Language) -> ExitCode {
    let texts = Texts::load(language);
    // Words for every command are made only where they are wanted.
    let commands = help::in_words(Cli::command(), &texts);
    let error = commands.try_get_matches_from(args).err().unwrap_or(error);
    match usage::words(&error, &texts) {
        Some(told) => {
            tell(&told);
            ExitCode::from(2)
        }
        None => error.exit(),
    }
}

/// Prints the help of a command, named with the one that it belongs to, or of all of them.
fn explain(command: Vec<String>, language: Language) -> ExitCode {
    let args = ["detent".to_owned()].into_iter().chain(command);
    let args: Vec<OsString> = args.chain(["--help".to_owned()]).map(Into::into).collect();
    match Cli::try_parse_from(&args) {
        Ok(_) => ExitCode::SUCCESS,
        Err(error) => refuse(&args, error, language),
    }
}

/// What stands behind `--lang`.
fn asked_language(args: &[OsString]) -> Option<String> {
    let mut args = args.iter().map(|arg| arg.to_string_lossy().into_owned());
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
    if let Some((line, source)) = failure.source_line() {
        for line in source_excerpt::source_excerpt(line, source) {
            eprintln!("{line}");
        }
    }
    failure.exit_code()
}

fn tell(problem: &str) {
    for line in problem.lines() {
        eprintln!("{}", output::plain(&format!("detent: {line}")));
    }
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
    library: LibraryFolder,
    language: Option<Language>,
) -> Result<(), Failure> {
    let args = WindowArgs {
        library: library.0,
        ..args
    };
    match window {
        Some(open) => open(args, language).map_err(Failure::Window),
        None => Err(Failure::NoWindow),
    }
}
