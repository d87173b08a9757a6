//! `detent best`: what to believe and do next on a scenario's machine.

use super::job::{Job, make};
use super::library_folder::with_table;
use super::output::Output;
use super::{Failure, LibraryFolder, ways};
use detent_content::{ContentLibrary, Language, Texts, Value, Words, disk, table_file};
use detent_training::reason::evidence::{self, End};
use detent_training::reason::{HandPractice, expected};
use std::path::{Path, PathBuf};

#[derive(Debug, clap::Args)]
pub(super) struct BestArgs {
    #[arg(required_unless_present_any = ["course", "tables"])]
    scenario: Option<String>,
    #[arg(long)]
    seed: Option<u64>,
    #[arg(long, conflicts_with_all = ["scenario", "seed"])]
    course: bool,
    #[arg(long, conflicts_with_all = ["scenario", "seed", "course"])]
    tables: Option<PathBuf>,
    #[arg(long, env = "DETENT_CACHE")]
    cache: Option<PathBuf>,
}

/// Hypotheses and actions that are printed.
const TOP: usize = 5;

pub(super) fn best(
    args: &BestArgs,
    library: &LibraryFolder,
    language: Language,
) -> Result<(), Failure> {
    let mut content_library = library.open()?;
    if let Some(folder) = &args.tables {
        return ship(&content_library, folder);
    }
    let folder = args.cache.clone().or_else(disk::cache_folder);
    match &args.scenario {
        Some(name) => {
            let scenario_source = content_library.scenario(name)?;
            let seed = args.seed.unwrap_or(scenario_source.scenario.seed);
            let volts = scenario_source.scenario.mains.rating().volts;
            let texts = Texts::load(language).for_supply(volts as u32);
            let (board, mains) = (
                &scenario_source.scenario.board,
                scenario_source.scenario.mains,
            );
            with_table(&mut content_library, board, mains, &texts);
            let folder = folder.as_ref();
            let job = Job::of(&content_library, &scenario_source, seed, folder, &texts)?;
            print(&job, &texts)
        }
        None => {
            let texts = Texts::load(language);
            let content_library = library.open_with_tables(&texts)?;
            ways::course(&content_library, &texts, folder.as_ref())
        }
    }
}

/// The tables of all boards and supplies.
fn ship(content_library: &ContentLibrary, folder: &Path) -> Result<(), Failure> {
    for board in &content_library.boards {
        for mains in &board.mains {
            let library = content_library.library_of(board, *mains);
            let (key, file) = (
                evidence::key(&library, mains.rating()),
                table_file::path(folder, &board.id, mains.rating().volts),
            );
            table_file::save(&file, &key, &make(&library, *mains))
                .map_err(|e| Failure::Write(file.display().to_string(), e))?;
        }
    }
    Ok(())
}

/// What is known of this job and what to do next.
fn print(job: &Job<'_>, texts: &Texts) -> Result<(), Failure> {
    let plan = job.plan()?;
    let [best, ..] = job.ways()?;
    let modes: Vec<String> = job.library.modes.iter().map(|m| m.id.clone()).collect();
    let words = Words {
        texts,
        repair_costs: &job.repair_costs,
        parts: job.library.parts,
        modes: &modes,
        board: None,
    };
    let mut out = Output::standard();
    let mut put = |line: String| out.line(line);
    put(format!(
        "{} ({} {})",
        job.scenario_source.file,
        texts.get("cli-seed"),
        job.seed
    ))?;
    let codes: Vec<String> = job.codes.iter().map(|c| format!("{c:02}")).collect();
    let codes = if codes.is_empty() {
        "—".to_owned()
    } else {
        codes.join(", ")
    };
    put(format!("{}: {codes}", texts.get("best-codes")))?;
    if job.end == End::NotAskedFor {
        put(texts.get("best-not-asked-for"))?;
    }
    if job.faults > 1 {
        put(texts.with("best-several", &[("count", Value::from(job.faults))]))?;
    }
    put(format!("{}:", texts.get("best-belief")))?;
    for (n, share) in job.belief.ranked().into_iter().take(TOP) {
        let before = texts.percent(job.prior[n], 1);
        let after = texts.percent(share, 1);
        put(format!(
            "  {before:>7} → {after:>7}  {}",
            words.hypothesis(n)
        ))?;
    }
    put(format!("{}:", texts.get("best-next")))?;
    for choice in plan.choices.iter().take(TOP) {
        let (lower, upper) = (choice.lower, choice.upper);
        put(format!(
            "  {upper:>7.1} (≥ {lower:>6.1})  {}",
            words.step(choice.step)
        ))?;
    }
    put(format!(
        "{}: {:.1} (≥ {:.1})",
        texts.get("best-cost"),
        expected(&job.belief.shares(), &best),
        plan.lower
    ))?;
    put(texts.with(
        "best-tries",
        &[
            ("tries", job.tries_needed(HandPractice::Newcomer).into()),
            (
                "practised",
                job.tries_needed(HandPractice::Practised).into(),
            ),
        ],
    ))
}
