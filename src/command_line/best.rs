//! `detent best`: what to believe and do next on a scenario's machine.

use super::{Failure, ways};
use detent_content::{Language, Shelf, Texts, Titled, Words, builtin, disk, table_file};
use detent_simulation::controller::GestureStep;
use detent_simulation::plant::FailureMode;
use detent_simulation::units::Span;
use detent_training::bench::Bench;
use detent_training::lesson::{Library, Mains, draw, set_up};
use detent_training::reason::evidence::{self, Outcome, Table};
use detent_training::reason::{
    Course, Hand, Plan, Posterior, Trade, Verdict, WORK, best_costs, code_buyer, control_on_trial,
    control_swapper, expected, order_costs, suspicion,
};
use rayon::prelude::*;
use std::io::Write;
use std::path::{Path, PathBuf};

#[derive(Debug, clap::Args)]
pub(super) struct BestArgs {
    /// Scenario: a file, or the name of a built-in one.
    #[arg(required_unless_present_any = ["course", "tables"])]
    scenario: Option<String>,
    /// Seed of the random draws (default: the scenario's own).
    #[arg(long)]
    seed: Option<u64>,
    /// Print a table for every built-in scenario instead.
    #[arg(long, conflicts_with_all = ["scenario", "seed"])]
    course: bool,
    /// Make the tables that the program brings with it: what each fault shows on each built-in board. Into
    /// this folder, `assets/tables` in the source.
    #[arg(long, conflicts_with_all = ["scenario", "seed", "course"])]
    tables: Option<PathBuf>,
    /// Keep what the runs of a board showed here (default: the user's cache folder).
    #[arg(long, env = "DETENT_CACHE")]
    cache: Option<PathBuf>,
}

/// Hypotheses and actions that are printed.
const TOP: usize = 5;
/// Time from one detent to the next that the decision on failed tries is printed for.
const PACE: Span = Span::from_ms(200);

pub(super) fn best(args: &BestArgs, language: Language) -> Result<(), Failure> {
    let shelf = Shelf::builtin()?;
    let texts = Texts::load(language);
    if let Some(folder) = &args.tables {
        return ship(&shelf, folder);
    }
    let folder = args.cache.clone().or_else(disk::cache_folder);
    match &args.scenario {
        Some(name) => {
            let titled = shelf.scenario(name)?;
            let seed = args.seed.unwrap_or(titled.scenario.seed);
            let job = Job::of(&shelf, &titled, seed, folder.as_ref())?;
            job.print(&texts)
        }
        None => ways::course(&shelf, &texts, folder.as_ref()),
    }
}

/// The tables of all boards and supplies.
fn ship(shelf: &Shelf, folder: &Path) -> Result<(), Failure> {
    for board in &shelf.boards {
        for mains in &board.mains {
            let library = shelf.library_of(board, *mains);
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

/// The table of this board and supply, made now on all cores.
fn make(library: &Library<'_>, mains: Mains) -> Table {
    let rating = mains.rating();
    let points = evidence::points(library, rating);
    let seen = (0..=library.modes.len())
        .into_par_iter()
        .map(|n| evidence::observe(library, rating, &points, n))
        .collect();
    Table::of(library, rating, points, seen)
}

/// The table of this board and supply: that which the program brings with it, the kept one, or made now
/// and kept.
fn table(library: &Library<'_>, mains: Mains, folder: Option<&PathBuf>) -> Table {
    let rating = mains.rating();
    if let Some(shipped) = builtin::table(library, rating) {
        return shipped;
    }
    let key = evidence::key(library, rating);
    let file = folder.map(|f| table_file::path(f, &library.board.id, rating.volts));
    if let Some(kept) = file.as_ref().and_then(|file| table_file::load(file, &key)) {
        return kept;
    }
    let made = make(library, mains);
    if let Some(file) = file
        && let Err(error) = table_file::save(&file, &key, &made)
    {
        // It is only slower next time.
        eprintln!("detent: {}: {error}; kept nothing", file.display());
    }
    made
}

/// A scenario's machine after the customer's wash, and what is known of it.
pub(super) struct Job<'a> {
    titled: &'a Titled,
    library: Library<'a>,
    seed: u64,
    /// The hidden fault's hypothesis; none for several at once.
    pub truth: Option<usize>,
    /// Codes that the wash left.
    pub codes: Vec<u8>,
    prior: Vec<f64>,
    /// Belief after the wash.
    pub belief: Posterior,
    /// What can be done.
    pub trade: Trade,
}

impl<'a> Job<'a> {
    pub fn of(
        shelf: &'a Shelf,
        titled: &'a Titled,
        seed: u64,
        folder: Option<&PathBuf>,
    ) -> Result<Job<'a>, Failure> {
        let scenario = &titled.scenario;
        let library = shelf.library(scenario);
        let table = table(&library, scenario.mains, folder);
        let bench: Bench = set_up(scenario, &library, seed)?;
        let outcome = Outcome::of_wash(&bench);
        let prior = evidence::prior(library.modes);
        let mut belief = Posterior::from_weights(&prior)?;
        let prior = belief.shares();
        belief.update(&table.wash(&outcome))?;
        let place = |mode: &FailureMode| library.modes.iter().position(|m| m.id == mode.id);
        let truth = match draw(scenario, library.modes, seed)?[..] {
            [] => Some(0),
            [mode] => place(mode).map(|n| n + 1),
            _ => None,
        };
        Ok(Job {
            trade: Trade::of(&library, &table, scenario.live_tests_allowed),
            titled,
            library,
            seed,
            truth,
            codes: outcome.codes,
            prior,
            belief,
        })
    }

    pub fn plan(&self) -> Result<Plan, Failure> {
        let course = Course::begin(&self.belief.shares());
        Ok(self.trade.problem.plan(&course, WORK)?)
    }

    /// Cost under each hypothesis of the best plan, a code-buyer and a control-swapper.
    pub fn ways(&self) -> Result<[Vec<f64>; 3], Failure> {
        let (shares, trade) = (self.belief.shares(), &self.trade);
        let (board, parts) = (self.library.board, self.library.parts);
        let buyer = code_buyer(trade, board, parts, &self.codes, &shares);
        let swapper = control_swapper(trade, board, parts, &self.codes, &shares);
        Ok([
            best_costs(&trade.problem, &Course::begin(&shares), WORK)?,
            order_costs(&trade.problem, &buyer),
            order_costs(&trade.problem, &swapper),
        ])
    }

    fn print(&self, texts: &Texts) -> Result<(), Failure> {
        let plan = self.plan()?;
        let [best, ..] = self.ways()?;
        let modes: Vec<String> = self.library.modes.iter().map(|m| m.id.clone()).collect();
        let words = Words {
            texts,
            trade: &self.trade,
            parts: self.library.parts,
            modes: &modes,
            board: None,
        };
        let mut out = std::io::stdout().lock();
        let mut put = |line: String| {
            writeln!(out, "{line}").map_err(|e| Failure::Write("the plan".to_owned(), e))
        };
        put(format!(
            "{} ({} {})",
            self.titled.file,
            texts.get("cli-seed"),
            self.seed
        ))?;
        let codes: Vec<String> = self.codes.iter().map(|c| format!("{c:02}")).collect();
        let codes = if codes.is_empty() {
            "—".to_owned()
        } else {
            codes.join(", ")
        };
        put(format!("{}: {codes}", texts.get("best-codes")))?;
        put(format!("{}:", texts.get("best-belief")))?;
        for (n, share) in self.belief.ranked().into_iter().take(TOP) {
            let before = 100.0 * self.prior[n];
            let after = 100.0 * share;
            put(format!(
                "  {before:>5.1} % → {after:>5.1} %  {}",
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
            expected(&self.belief.shares(), &best),
            plan.lower
        ))?;
        put(texts.with("best-tries", &[("tries", self.tries_needed().into())]))
    }

    /// Failed tries in a row after which the control is suspect, at a calm pace on this dial, where
    /// controls fail as often as the catalogue says.
    fn tries_needed(&self) -> usize {
        let turned = |step: &GestureStep| match step {
            GestureStep::Turn { detents, .. } => usize::from(*detents),
            _ => 0,
        };
        let detents: usize = self.library.board.gesture.steps.iter().map(turned).sum();
        let gaps = std::iter::repeat_n(PACE, detents.saturating_sub(1));
        let hand = Hand::at_pace(gaps, self.titled.scenario.dial_wear);
        // The risks are constants that Wald's test takes.
        let Ok(test) = control_on_trial(self.library.modes) else {
            return 0;
        };
        let mut failures = Vec::new();
        while suspicion(test, &failures).verdict() == Verdict::GoOn {
            failures.push(hand);
        }
        failures.len()
    }
}
