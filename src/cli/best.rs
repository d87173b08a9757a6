//! `detent best`: what to believe and do next on a scenario's machine.

use super::{Failure, print};
use crate::bench::{Bench, MeterMode};
use crate::content::{Language, Shelf, Texts, Titled, disk, table_file};
use crate::controller::GestureStep;
use crate::lesson::{Library, Mains, draw, set_up};
use crate::plant::{Component, FailureMode};
use crate::reason::evidence::{self, Outcome, Table};
use crate::reason::{
    Course, Hand, Plan, Posterior, Probe, Remedy, Sprt, Step, Trade, Verdict, best_costs,
    code_buyer, control_swapper, expected, order_costs, suspicion,
};
use crate::units::Span;
use rayon::prelude::*;
use std::io::Write;
use std::path::PathBuf;

#[derive(Debug, clap::Args)]
pub(super) struct BestArgs {
    /// Scenario: a file, or the name of a built-in one.
    #[arg(required_unless_present = "course")]
    scenario: Option<String>,
    /// Seed of the random draws (default: the scenario's own).
    #[arg(long)]
    seed: Option<u64>,
    /// Print a table for every built-in scenario instead.
    #[arg(long, conflicts_with_all = ["scenario", "seed"])]
    course: bool,
    /// Keep what the runs of a board showed here (default: the user's cache folder).
    #[arg(long, env = "DETENT_CACHE")]
    cache: Option<PathBuf>,
}

/// Beliefs that the search for one next action may look at.
const WORK: u32 = 4000;
/// Hypotheses and actions that are printed.
const TOP: usize = 5;
/// Risks of the decision on failed tries: 5 % either way.
const RISK: f64 = 0.05;
/// Time from one detent to the next that the decision on failed tries is printed for.
const PACE: Span = Span::from_ms(200);

pub(super) fn best(args: &BestArgs, language: Language) -> Result<(), Failure> {
    let shelf = Shelf::builtin()?;
    let texts = Texts::load(language);
    let folder = args.cache.clone().or_else(disk::cache_folder);
    match &args.scenario {
        Some(name) => {
            let titled = shelf.scenario(name)?;
            let seed = args.seed.unwrap_or(titled.scenario.seed);
            let job = Job::of(&shelf, &titled, seed, folder.as_ref())?;
            job.print(&texts)
        }
        None => course(&shelf, &texts, folder.as_ref()),
    }
}

/// The table of this board and supply: the kept one, or made now on all cores and kept.
fn table(library: &Library<'_>, mains: Mains, folder: Option<&PathBuf>) -> Table {
    let rating = mains.rating();
    let key = evidence::key(library, rating);
    let file = folder.map(|f| table_file::path(f, &library.board.id, rating.volts));
    if let Some(kept) = file.as_ref().and_then(|file| table_file::load(file, &key)) {
        return kept;
    }
    let points = evidence::points(library, rating);
    let seen = (0..=library.modes.len())
        .into_par_iter()
        .map(|n| evidence::observe(library, rating, &points, n))
        .collect();
    let made = Table::of(library, rating, points, seen);
    if let Some(file) = file
        && let Err(error) = table_file::save(&file, &key, &made)
    {
        // It is only slower next time.
        eprintln!("detent: {}: {error}; kept nothing", file.display());
    }
    made
}

/// A scenario's machine after the customer's wash, and what is known of it.
struct Job<'a> {
    titled: &'a Titled,
    library: Library<'a>,
    seed: u64,
    /// The hidden fault's hypothesis; none for several at once.
    truth: Option<usize>,
    codes: Vec<u8>,
    prior: Vec<f64>,
    belief: Posterior,
    trade: Trade,
}

impl<'a> Job<'a> {
    fn of(
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

    fn plan(&self) -> Result<Plan, Failure> {
        let course = Course::begin(&self.belief.shares());
        Ok(self.trade.problem.plan(&course, WORK)?)
    }

    /// Cost under each hypothesis of the best plan, a code-buyer and a control-swapper.
    fn ways(&self) -> Result<[Vec<f64>; 3], Failure> {
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

    fn hypothesis(&self, n: usize, texts: &Texts) -> String {
        let mode = n.checked_sub(1).map(|n| &self.library.modes[n]);
        mode.map_or_else(
            || texts.get("mode-nothing"),
            |mode| texts.get(&format!("mode-{}", mode.id.replace('.', "-"))),
        )
    }

    fn step(&self, step: Step, texts: &Texts) -> String {
        let component = |c| texts.get(&format!("component-{c}"));
        match step {
            Step::LastResort => texts.get("best-new-machine"),
            Step::Repair(r) => match &self.trade.remedies[r] {
                Remedy::Part(number) => {
                    let part = self.library.parts.iter().find(|p| p.number == *number);
                    let name = part.map_or_else(String::new, |p| texts.get(&p.name_key));
                    format!("{}: {number} {name}", texts.get("best-fit"))
                }
                Remedy::PutRight(c) => format!("{}: {}", texts.get("best-put-right"), component(c)),
                Remedy::Recalibrate => texts.get("best-hand-back"),
            },
            Step::Test(t) => match &self.trade.probes[t] {
                Probe::Inspect(c) => format!("{}: {}", texts.get("best-inspect"), component(c)),
                Probe::Recalibrate => texts.get("best-recalibrate"),
                Probe::Read(point) => {
                    let (name, _) = print::mode(point.mode);
                    let at = texts.get(&format!("best-at-{}", point.state));
                    let on = if point.mode == MeterMode::AmpsClamp {
                        point.red.to_string()
                    } else {
                        format!("{} / {}", point.red, point.black)
                    };
                    format!("{name} {on} ({at})")
                }
            },
        }
    }

    fn print(&self, texts: &Texts) -> Result<(), Failure> {
        let plan = self.plan()?;
        let [best, ..] = self.ways()?;
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
                self.hypothesis(n, texts)
            ))?;
        }
        put(format!("{}:", texts.get("best-next")))?;
        for choice in plan.choices.iter().take(TOP) {
            let (lower, upper) = (choice.lower, choice.upper);
            put(format!(
                "  {upper:>7.1} (≥ {lower:>6.1})  {}",
                self.step(choice.step, texts)
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
        // Both risks are constants that Wald's test takes.
        let Ok(test) = Sprt::new(RISK, RISK) else {
            return 0;
        };
        let modes = self.library.modes.iter().enumerate();
        let bad = modes.filter(|(_, mode)| mode.component == Component::Board);
        let bad: f64 = bad.map(|(n, _)| self.prior[n + 1]).sum();
        let test = test.with_odds(bad / (1.0 - bad));
        let mut failures = Vec::new();
        while suspicion(test, &failures).verdict() == Verdict::GoOn {
            failures.push(hand);
        }
        failures.len()
    }
}

/// One line for each scenario: what is expected of each way of working, and what it costs on the hidden
/// fault.
fn course(shelf: &Shelf, texts: &Texts, folder: Option<&PathBuf>) -> Result<(), Failure> {
    let mut out = std::io::stdout().lock();
    let failed = |e| Failure::Write("the table".to_owned(), e);
    let columns = ["best-optimum", "best-code-buyer", "best-control-swapper"];
    let mut heading = format!("{:<24}", texts.get("best-scenario"));
    for column in columns {
        heading += &format!(" {:>26}", texts.get(column));
    }
    writeln!(out, "{heading}\n{}", texts.get("best-columns")).map_err(failed)?;
    for titled in &shelf.scenarios()? {
        let job = Job::of(shelf, titled, titled.scenario.seed, folder)?;
        let shares = job.belief.shares();
        let mut line = format!("{:<24}", job.titled.file.trim_start_matches("scenarios/"));
        for (n, costs) in job.ways()?.iter().enumerate() {
            let here = job
                .truth
                .map_or_else(|| "—".to_owned(), |t| format!("{:.0}", costs[t]));
            let mean = expected(&shares, costs);
            let cell = if n == 0 {
                format!("{mean:.1} (≥ {:.1}) / {here}", job.plan()?.lower)
            } else {
                format!("{mean:.1} / {here}")
            };
            line += &format!(" {cell:>26}");
        }
        writeln!(out, "{line}").map_err(failed)?;
    }
    Ok(())
}
