//! `detent check`: jobs, boards, guides and examinations held against readers, simulator and language files.

use super::library_folder::with_table;
use super::output::Output;
use super::{Failure, LibraryFolder};
use detent_content::{
    ContentLibrary, FileKind, FileProof, FileReport, GUIDE_ENDING, KnownBoards, Language, OwnFile,
    OwnPlace, Texts, Value, Words, check_file_in_slices, disk,
};
use detent_training::authoring::{GestureShare, GuideProof, MachineProof, ScenarioProof, Severity};
use detent_training::lesson::{Mains, Scenario};
use detent_training::reason::PathPoint;
use detent_training::without_breaks;
use rayon::prelude::*;
use schemars::JsonSchema;
use serde::Serialize;
use std::path::{Path, PathBuf};

#[derive(Debug, clap::Args)]
pub(super) struct CheckArgs {
    #[arg(value_name = "NAME_OR_FILE")]
    files: Vec<PathBuf>,
    #[command(flatten)]
    how: HowToReport,
}

/// What counts as failed, and in which form it is told.
#[derive(Debug, clap::Args)]
pub(super) struct HowToReport {
    #[arg(long)]
    pub strict: bool,
    #[arg(long)]
    pub json: bool,
    #[arg(long, conflicts_with = "json")]
    pub quiet: bool,
}

/// Version of what `--json` prints.
const VERSION: u32 = 1;
/// Rivals that are printed.
const TOP: usize = 5;
/// Failure modes to draw from that are printed.
const MOST_DRAWN: usize = 24;

pub(super) fn check(
    args: &CheckArgs,
    library: &LibraryFolder,
    language: Language,
) -> Result<(), Failure> {
    let texts = Texts::load(language);
    let mut content_library = library.open()?;
    let files = files(&mut content_library, &args.files)?;
    let reports = proved(&mut content_library, &files, &texts);
    let (errors, warnings) = counts(&reports);
    let mut out = Output::standard();
    if args.how.json {
        out.json(&Told::of(&reports, (errors, warnings), &texts))?;
    } else {
        print_all(
            &mut out,
            &reports,
            (&content_library, &texts),
            args.how.quiet,
        )?;
    }
    judge(&reports, args.how.strict)
}

/// Reports of these files, with what the simulator says of each.
pub(super) fn proved(
    content_library: &mut ContentLibrary,
    files: &[(String, Vec<u8>)],
    texts: &Texts,
) -> Vec<FileReport> {
    let known = known(content_library, files, texts);
    let reports = files.par_iter().map(|(file, bytes)| {
        let checked = check_file_in_slices(content_library, &known, file, bytes);
        without_breaks(checked)
    });
    reports.collect()
}

/// Errors and warnings in all files.
pub(super) fn counts(reports: &[FileReport]) -> (usize, usize) {
    let count = |severity| reports.iter().map(|report| report.count(severity)).sum();
    (count(Severity::Error), count(Severity::Warning))
}

/// Every file, then how many errors and warnings there are.
pub(super) fn print_all(
    out: &mut Output,
    reports: &[FileReport],
    (content_library, texts): (&ContentLibrary, &Texts),
    quiet: bool,
) -> Result<(), Failure> {
    for report in reports {
        print(out, report, (content_library, texts), quiet)?;
    }
    let (errors, warnings) = counts(reports);
    let counts = [
        ("files", Value::from(reports.len().to_string())),
        ("errors", Value::from(errors.to_string())),
        ("warnings", Value::from(warnings.to_string())),
    ];
    out.line(texts.with("cli-check-total", &counts))
}

/// Fails for errors, and for warnings too where they count.
pub(super) fn judge(reports: &[FileReport], strict: bool) -> Result<(), Failure> {
    let (errors, warnings) = counts(reports);
    if errors > 0 || strict && warnings > 0 {
        return Err(Failure::Check { errors, warnings });
    }
    Ok(())
}

/// The files that are named, those of the folders that are, and the library's jobs of these names, each with its text;
/// the whole library where none is named. Boards and parts among them are put beside the library's, so that jobs may name them.
fn files(
    content_library: &mut ContentLibrary,
    named: &[PathBuf],
) -> Result<Vec<(String, Vec<u8>)>, Failure> {
    if named.is_empty() {
        return Ok(content_library.files());
    }
    let mut files: Vec<(String, Vec<u8>)> = Vec::new();
    for path in named {
        if path.exists() {
            for file in disk::ron_files(path)? {
                let guide = guide_beside(&file)?;
                for file in [Some(file), guide].into_iter().flatten() {
                    if !files.iter().any(|(known, _)| *known == file) {
                        let bytes = disk::read_bytes(Path::new(&file))?;
                        files.push((file, bytes));
                    }
                }
            }
        } else {
            let named = content_library.job_text(&path.to_string_lossy())?;
            if !files.iter().any(|(known, _)| *known == named.0) {
                files.push(named);
            }
        }
    }
    let place = |kind| match kind {
        FileKind::Board => Some(OwnPlace::Boards),
        FileKind::Parts => Some(OwnPlace::Parts),
        FileKind::Scenario
        | FileKind::Guide
        | FileKind::Examination
        | FileKind::Course
        | FileKind::Plan => None,
    };
    let own = files.iter().filter_map(|(file, bytes)| {
        Some(OwnFile {
            place: place(FileKind::of(file, bytes))?,
            file: file.clone(),
            bytes: bytes.clone(),
        })
    });
    // What is wrong with them is told when their turn comes.
    let own: Vec<OwnFile> = own.collect();
    content_library.add_boards_and_parts(&own);
    Ok(files)
}

/// The guide that lies beside a job, if this is a job and there is one.
fn guide_beside(file: &str) -> Result<Option<String>, Failure> {
    let job = file.strip_suffix(".ron");
    let guide = job.map(|job| format!("{job}{GUIDE_ENDING}"));
    Ok(match guide {
        Some(guide) if disk::is_there(Path::new(&guide))? => Some(guide),
        Some(_) | None => None,
    })
}

/// What is known of the faults on the boards that the jobs among these files name.
fn known(
    content_library: &mut ContentLibrary,
    files: &[(String, Vec<u8>)],
    texts: &Texts,
) -> KnownBoards {
    let mut wanted: Vec<(String, Mains)> = Vec::new();
    for (file, bytes) in files {
        if FileKind::of(file, bytes) != FileKind::Scenario {
            continue;
        }
        if let Some((board, mains)) = content_library.board_of_job(file, bytes)
            && !wanted.contains(&(board.clone(), mains))
        {
            wanted.push((board, mains));
        }
    }
    for (board, mains) in &wanted {
        with_table(content_library, board, *mains, texts);
    }
    let learned = wanted.par_iter().map(|(board, mains)| {
        let mut known = KnownBoards::default();
        known.learn(content_library, board, *mains);
        known
    });
    learned.reduce(KnownBoards::default, KnownBoards::with)
}

/// One file: findings first, then how it goes.
fn print(
    out: &mut Output,
    report: &FileReport,
    (content_library, texts): (&ContentLibrary, &Texts),
    quiet: bool,
) -> Result<(), Failure> {
    for finding in &report.findings {
        let (line, character) = finding.range.start;
        let field = match finding.field.as_str() {
            "" => String::new(),
            field => format!(" {field}:"),
        };
        out.line(format!(
            "{}:{}:{}: {}:{field} {}",
            report.file,
            line + 1,
            character + 1,
            texts.get(&format!("author-severity-{}", finding.severity())),
            texts.file_finding(finding)
        ))?;
    }
    if quiet {
        return Ok(());
    }
    match &report.proof {
        FileProof::Scenario(scenario, proof) => {
            print_job(out, report, (scenario, proof), (content_library, texts))
        }
        FileProof::Board(proof) => {
            out.line(heading(report, texts))?;
            out.line(gesture(&proof.gesture, texts))
        }
        FileProof::Guide(proof) => {
            out.line(heading(report, texts))?;
            print_guide(out, proof, texts)
        }
        FileProof::None if report.findings.is_empty() => out.line(heading(report, texts)),
        FileProof::None => Ok(()),
    }
}

/// What was proved of a guide, and what could not be.
fn print_guide(out: &mut Output, proof: &GuideProof, texts: &Texts) -> Result<(), Failure> {
    let count = |n: usize| Value::from(n.to_string());
    let args = [
        ("proved", count(proof.proved)),
        ("steps", count(proof.steps)),
    ];
    out.line(format!("  {}", texts.with("author-guide-proved", &args)))?;
    let mut note = |key: &str, args: &[(&'static str, Value<'_>)]| {
        out.line(format!("  {}", texts.with(key, args)))
    };
    match proof.share {
        Some(share) => {
            let share = texts.percent(share, 0);
            note("author-guide-share", &[("share", share.into())])?;
        }
        // Where a step fails, that is told as an error.
        None if proof.proved + proof.about_window == proof.steps => {
            note("author-guide-ends-early", &[])?;
        }
        None => {}
    }
    for (key, stated) in [
        ("author-guide-about-window", proof.about_window),
        ("author-guide-ways-astray", proof.ways_astray),
    ] {
        if stated > 0 {
            note(key, &[("count", count(stated))])?;
        }
    }
    Ok(())
}

fn heading(report: &FileReport, texts: &Texts) -> String {
    let kind = texts.get(&format!("file-kind-{}", report.kind));
    format!("{} ({kind})", report.file)
}

fn print_job(
    out: &mut Output,
    report: &FileReport,
    (scenario, proof): (&Scenario, &ScenarioProof),
    (content_library, texts): (&ContentLibrary, &Texts),
) -> Result<(), Failure> {
    out.line(heading(report, texts))?;
    let library = content_library.library(scenario);
    if !proof.drawn_from.is_empty() {
        out.line(format!("  {}", drawn_from(proof, texts)))?;
    }
    for machine in &proof.machines {
        out.line(format!("  {}", texts.proved_machine(machine)))?;
        out.line(format!("    {}", texts.machine_shows(machine)))?;
        for rival in machine.rivals.iter().take(TOP) {
            out.line(format!("    {}", texts.rival(rival)))?;
        }
        out.line(format!("    {}", texts.expert_needs(machine, scenario)))?;
        if let Some(review) = &machine.review {
            let words = Words::of(
                (&review.repair_costs, &review.modes),
                texts,
                library.parts,
                None,
            );
            for (key, way) in [("author-way", &review.yours), ("review-best", &review.best)] {
                out.line(format!("    {}:", texts.get(key)))?;
                way.iter()
                    .try_for_each(|stop| out.line(way_point(stop, &words, texts)))?;
            }
        }
        if let Some(line) = texts.simulated_learners(machine) {
            out.line(format!("    {line}"))?;
        }
    }
    out.line(gesture(&proof.gesture, texts))
}

/// What may be drawn: all of it, or of much how much.
fn drawn_from(proof: &ScenarioProof, texts: &Texts) -> String {
    let modes = &proof.drawn_from;
    let count = ("count", Value::from(modes.len()));
    if modes.len() > MOST_DRAWN {
        let machines = ("machines", Value::from(proof.machines.len()));
        return texts.with("author-drawn-from-many", &[count, machines]);
    }
    let modes: Vec<String> = modes.iter().map(|mode| texts.mode(mode)).collect();
    texts.with(
        "author-drawn-from",
        &[count, ("modes", modes.join("; ").into())],
    )
}

fn way_point(stop: &PathPoint, words: &Words<'_>, texts: &Texts) -> String {
    let minutes = texts.digits(format!("{:>5.1}", stop.minutes));
    let money = texts.whole_money(stop.money);
    format!("      {minutes} min {money:>8}  {}", words.deed(&stop.deed))
}

fn gesture(shares: &[GestureShare], texts: &Texts) -> String {
    format!("  {}", texts.gesture_shares(shares))
}

/// All of it, for other programs.
#[derive(Serialize, JsonSchema)]
#[schemars(title = "Report of `detent check --json`")]
#[serde(deny_unknown_fields)]
struct Told {
    /// Version of this format.
    #[schemars(extend("const" = VERSION))]
    version: u32,
    /// Errors in all files: none of those should be given to a class.
    errors: usize,
    /// Warnings in all files.
    warnings: usize,
    /// The files, in the order in which they were checked.
    files: Vec<ToldFile>,
}

/// One file.
#[derive(Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct ToldFile {
    /// The file as it was named.
    file: String,
    /// What it is: scenario, board, guide, examination, parts or course.
    kind: &'static str,
    /// What is wrong, in the order of the file.
    findings: Vec<ToldFinding>,
    /// The machines of a scenario that were tried.
    machines: Vec<ToldMachine>,
    /// How often simulated hands meet the entry gesture of a scenario or board.
    gesture: Vec<ToldGesture>,
    /// What was proved of a guide; none for other files, and where its job is not at hand.
    guide: Option<ToldGuide>,
}

/// What was proved of a guide by doing what its steps show.
#[derive(Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ToldGuide {
    /// All its steps.
    steps: usize,
    /// Steps whose goal was reached at the bench.
    proved: usize,
    /// Steps whose goal is the window's: nothing here proves them.
    about_window: usize,
    /// Ways astray: nothing here proves them.
    ways_astray: usize,
    /// Share of the points of whoever does what it shows, 0 to 1; none where it ends before the report.
    share: Option<f64>,
}

/// One finding.
#[derive(Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ToldFinding {
    /// error or warning.
    severity: &'static str,
    /// Its fixed name.
    code: &'static str,
    /// Path of the field; empty for the file as a whole.
    field: String,
    /// Where in the text, as language servers have it.
    range: ToldRange,
    /// In words.
    message: String,
}

/// A stretch of the text.
#[derive(Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ToldRange {
    /// Its beginning.
    start: ToldPlace,
    /// Behind its end.
    end: ToldPlace,
}

/// A place in the text.
#[derive(Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ToldPlace {
    /// Line, from 0.
    line: usize,
    /// Character, from 0, in UTF-16 code units.
    character: usize,
}

/// One machine of a scenario.
#[derive(Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ToldMachine {
    /// Seed of its draws.
    seed: u64,
    /// Hidden failure modes.
    modes: Vec<String>,
    /// By what it shows itself first: nothing, codes, wash, tests or never.
    shown: &'static str,
    /// Codes that the customer's wash stored.
    codes: Vec<u8>,
    /// The likely causes besides the hidden one.
    rivals: Vec<ToldRival>,
    /// The scripted expert; none where the machine refused a step.
    expert: Option<ToldExpert>,
    /// Share of the simulated learners who pass, 0 to 1.
    chance_of_passing: Option<f64>,
    /// Simulated learners by level.
    learners: Vec<ToldLearners>,
}

/// A cause that is likely after the customer's wash.
#[derive(Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ToldRival {
    /// The failure mode; none for nothing wrong.
    mode: Option<String>,
    /// How likely, 0 to 1.
    share: f64,
    /// Whether something that is allowed tells it from the hidden fault.
    told: bool,
    /// Whether one repair cures both.
    same_repair: bool,
}

/// What the expert needs.
#[derive(Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ToldExpert {
    /// Work, min.
    minutes: f64,
    /// Bill, whole units of money.
    bill: f64,
    /// Share of the points kept, 0 to 1.
    share: f64,
}

/// Simulated learners of one level.
#[derive(Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ToldLearners {
    /// beginner, middle or advanced.
    level: &'static str,
    /// Share who pass, 0 to 1.
    passing: f64,
    /// Mean share of the points, 0 to 1.
    mean_share: f64,
    /// Standard deviation of that share.
    spread: f64,
}

/// Simulated hands of one skill.
#[derive(Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ToldGesture {
    /// Spread of the hand's steps, share of their mean.
    spread: f64,
    /// The time of a step at which it gets in most often, ms.
    best_ms: f64,
    /// Share of its tries at that pace that get in, 0 to 1.
    share: f64,
}

impl Told {
    fn of(reports: &[FileReport], (errors, warnings): (usize, usize), texts: &Texts) -> Told {
        Told {
            version: VERSION,
            errors,
            warnings,
            files: reports.iter().map(|r| ToldFile::of(r, texts)).collect(),
        }
    }
}

impl ToldFile {
    pub fn of(report: &FileReport, texts: &Texts) -> ToldFile {
        let (machines, gesture) = match &report.proof {
            FileProof::Scenario(_, proof) => (&proof.machines[..], &proof.gesture[..]),
            FileProof::Board(proof) => (&[][..], &proof.gesture[..]),
            FileProof::Guide(_) | FileProof::None => (&[][..], &[][..]),
        };
        let guide = match &report.proof {
            FileProof::Guide(proof) => Some(ToldGuide {
                steps: proof.steps,
                proved: proof.proved,
                about_window: proof.about_window,
                ways_astray: proof.ways_astray,
                share: proof.share,
            }),
            FileProof::Scenario(..) | FileProof::Board(_) | FileProof::None => None,
        };
        let place = |(line, character)| ToldPlace { line, character };
        ToldFile {
            file: report.file.clone(),
            kind: report.kind.name(),
            findings: (report.findings.iter())
                .map(|finding| ToldFinding {
                    severity: finding.severity().name(),
                    code: finding.name(),
                    field: finding.field.clone(),
                    range: ToldRange {
                        start: place(finding.range.start),
                        end: place(finding.range.end),
                    },
                    message: texts.file_finding(finding),
                })
                .collect(),
            machines: machines.iter().map(ToldMachine::of).collect(),
            gesture: (gesture.iter())
                .map(|hand| ToldGesture {
                    spread: hand.spread,
                    best_ms: hand.best_ms,
                    share: hand.share,
                })
                .collect(),
            guide,
        }
    }
}

impl ToldMachine {
    fn of(machine: &MachineProof) -> ToldMachine {
        let difficulty = machine.difficulty.as_ref();
        ToldMachine {
            seed: machine.seed,
            modes: machine.modes.clone(),
            shown: machine.shown.name(),
            codes: machine.codes.clone(),
            rivals: (machine.rivals.iter())
                .map(|rival| ToldRival {
                    mode: rival.mode.clone(),
                    share: rival.share,
                    told: rival.told,
                    same_repair: rival.same_repair,
                })
                .collect(),
            expert: difficulty.zip(machine.bill).map(|(d, bill)| ToldExpert {
                minutes: d.expert_minutes,
                bill,
                share: d.expert_share,
            }),
            chance_of_passing: difficulty.map(|d| d.chance_of_passing),
            learners: (machine.learners.iter())
                .map(|group| ToldLearners {
                    level: group.level.name(),
                    passing: group.passing,
                    mean_share: group.mean_share,
                    spread: group.spread,
                })
                .collect(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::kept_file;

    #[test]
    fn the_kept_schema_is_that_of_the_program() {
        kept_file::check_printed::<Told>("check", VERSION);
    }

    #[test]
    fn a_built_in_job_goes_by_its_name_and_is_checked_once() {
        let mut content_library = ContentLibrary::builtin().expect("the built-in content is sound");
        let mut named = |names: &[&str]| {
            let names: Vec<PathBuf> = names.iter().map(PathBuf::from).collect();
            files(&mut content_library, &names)
        };
        let found = named(&["drain-code", "scenarios/drain-code.ron", "no-hot-water"]);
        let found = found.expect("all are there");
        let names: Vec<&str> = found.iter().map(|(file, _)| file.as_str()).collect();
        assert_eq!(
            names,
            ["scenarios/drain-code.ron", "scenarios/no-hot-water.ron"]
        );
        assert!(named(&["no/such.ron"]).is_err());
    }
}
