//! `detent wash`: the customer's wash as a timeline, with the codes that it stores and how it ends.

use super::output::Output;
use super::{Failure, LibraryFolder};
use detent_content::{Language, ScenarioSource, Texts, Value};
use detent_simulation::controller::{LampRules, PhaseKind};
use detent_training::lesson::{StoredCode, WashEnd, WashSample, WashTrace, wash_trace};
use schemars::JsonSchema;
use serde::Serialize;

#[derive(Debug, clap::Args)]
pub(super) struct WashArgs {
    scenario: String,
    #[arg(long)]
    seed: Option<u64>,
    #[arg(long)]
    json: bool,
}

/// Version of what `--json` prints.
const VERSION: u32 = 1;
/// Most rows that are printed only because time has passed, and the gaps that are tried for it, min.
const MOST_ROWS: usize = 32;
const GAPS_MIN: [f64; 5] = [1.0, 2.0, 5.0, 10.0, 20.0];
/// Stands for the lamps of a row where they are as in the row above.
const SAME_LAMPS: &str = "″";

pub(super) fn wash(
    args: &WashArgs,
    library: &LibraryFolder,
    language: Language,
) -> Result<(), Failure> {
    let content_library = library.open()?;
    let scenario_source = content_library.scenario(&args.scenario)?;
    let scenario = &scenario_source.scenario;
    let seed = args.seed.unwrap_or(scenario.seed);
    let library = content_library.library(scenario);
    let trace = wash_trace(library, scenario, seed)?;
    let mut out = Output::standard();
    if args.json {
        return out.json(&Told::of(&scenario_source, seed, &trace));
    }
    let volts = scenario.mains.rating().volts;
    let texts = Texts::load(language).for_supply(volts as u32);
    out.line(format!(
        "{} ({} {seed})",
        scenario_source.file,
        texts.get("cli-seed"),
    ))?;
    let lines = lines(&trace, &library.board.lamps, &texts);
    lines.iter().try_for_each(|line| out.line(line))
}

/// The table with the lamps where they changed, the codes between its rows where they were stored, and the end.
fn lines(trace: &WashTrace, rules: &LampRules, texts: &Texts) -> Vec<String> {
    let heads = [
        "wash-trace-axis-time",
        "wash-phase",
        "wash-trace-axis-level",
        "wash-trace-axis-speed",
        "wash-trace-axis-current",
    ]
    .map(|key| texts.get(key));
    let row = |cells: [String; 5], lamps: &str| {
        let widths = heads.iter().map(|head| head.chars().count().max(12));
        let cells = cells.iter().zip(widths);
        let cells: Vec<String> = cells.map(|(cell, w)| format!("{cell:>w$}")).collect();
        format!("{}  {lamps}", cells.join("  "))
    };
    let mut lines = vec![
        texts.get("wash-trace-title"),
        row(heads.clone(), &texts.get("wash-trace-lamps")),
    ];
    let mut codes = trace.stored.iter().peekable();
    let mut last_lamps = None;
    for sample in rows(trace) {
        while let Some(stored) = codes.next_if(|stored| stored.time <= sample.time) {
            lines.push(format!("  → {}", texts.wash_code(stored)));
        }
        let number = |value: f64, decimals| texts.digits(format!("{value:.decimals$}"));
        let phase = sample.phase.map(|phase| texts.wash_phase(phase));
        let lamps = texts.lamps(rules, sample.lamps);
        let changed = last_lamps.as_ref() != Some(&lamps);
        lines.push(row(
            [
                number(sample.time.seconds() / 60.0, 1),
                phase.unwrap_or_else(|| "—".to_owned()),
                number(sample.level_mm, 0),
                number(sample.basket_rpm, 0),
                number(sample.mains_current_a, 2),
            ],
            if changed { &lamps } else { SAME_LAMPS },
        ));
        last_lamps = Some(lamps);
    }
    if !trace.stale.is_empty() {
        let codes: Vec<String> = trace.stale.iter().map(|c| format!("{c:02}")).collect();
        let args = [("codes", Value::from(codes.join(", ")))];
        lines.push(texts.with("wash-trace-stale", &args));
    }
    lines.push(texts.wash_end(trace.end));
    lines
}

/// The first and last sample, those at a change of phase or behind a code, and between them one now and then.
fn rows(trace: &WashTrace) -> Vec<&WashSample> {
    let mut found = Vec::new();
    for gap_min in GAPS_MIN {
        found = rows_every(trace, gap_min);
        if found.len() <= MOST_ROWS {
            break;
        }
    }
    found
}

fn rows_every(trace: &WashTrace, gap_min: f64) -> Vec<&WashSample> {
    let mut rows: Vec<&WashSample> = Vec::new();
    let mut codes = trace.stored.iter().peekable();
    let mut phase = None;
    for (n, sample) in trace.samples.iter().enumerate() {
        let mut stored = false;
        while codes.next_if(|code| code.time <= sample.time).is_some() {
            stored = true;
        }
        let changed = phase.replace(sample.phase) != Some(sample.phase);
        let long_ago =
            |last: &&WashSample| sample.time.since(last.time).seconds() >= 60.0 * gap_min;
        let is_last = n + 1 == trace.samples.len();
        if changed || stored || is_last || rows.last().is_none_or(long_ago) {
            rows.push(sample);
        }
    }
    rows
}

/// All of it, for other programs.
#[derive(Serialize, JsonSchema)]
#[schemars(title = "The customer's wash of `detent wash --json`")]
#[serde(deny_unknown_fields)]
struct Told<'a> {
    /// Version of this format.
    #[schemars(extend("const" = VERSION))]
    version: u32,
    /// File of the scenario.
    scenario: &'a str,
    /// Seed of the draws.
    seed: u64,
    /// How the wash ended.
    end: &'static str,
    /// What the control stopped it for; null where it did not.
    stopped_by: Option<&'static str>,
    /// Codes that were stored before the wash, newest first.
    stale: &'a [u8],
    /// Codes that the wash stored, in order of time.
    stored: Vec<ToldCode>,
    /// The machine every so many seconds, and at the end.
    samples: Vec<ToldSample>,
}

/// A code that the wash stored.
#[derive(Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ToldCode {
    /// When, s from the plug in the outlet.
    time_s: f64,
    /// Two digits.
    code: u8,
}

/// The machine at one moment.
#[derive(Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ToldSample {
    /// When, s from the plug in the outlet.
    time_s: f64,
    /// The program's phase; null while none runs.
    phase: Option<&'static str>,
    /// Water depth in the tub, mm.
    level_mm: f64,
    /// Basket speed, rev/min.
    basket_rpm: f64,
    /// Current that the machine draws, A rms.
    mains_current_a: f64,
    /// The lamps that show numbers and are lit at this moment, a bit each.
    lamps: u16,
    /// The lock lamp is lit at this moment.
    lock_lamp: bool,
    /// The bolt of the lid lock is out.
    locked: bool,
}

impl<'a> Told<'a> {
    fn of(source: &'a ScenarioSource, seed: u64, trace: &'a WashTrace) -> Told<'a> {
        Told {
            version: VERSION,
            scenario: &source.file,
            seed,
            end: trace.end.name(),
            stopped_by: match trace.end {
                WashEnd::Stopped(monitor) => Some(monitor.name()),
                WashEnd::Finished
                | WashEnd::NeverStarted
                | WashEnd::WentDark
                | WashEnd::CalledOff
                | WashEnd::StillRunning => None,
            },
            stale: &trace.stale,
            stored: trace.stored.iter().map(ToldCode::from).collect(),
            samples: trace.samples.iter().map(ToldSample::from).collect(),
        }
    }
}

impl From<&StoredCode> for ToldCode {
    fn from(stored: &StoredCode) -> ToldCode {
        ToldCode {
            time_s: stored.time.seconds(),
            code: stored.code,
        }
    }
}

impl From<&WashSample> for ToldSample {
    fn from(sample: &WashSample) -> ToldSample {
        ToldSample {
            time_s: sample.time.seconds(),
            phase: sample.phase.map(PhaseKind::name),
            level_mm: sample.level_mm,
            basket_rpm: sample.basket_rpm,
            mains_current_a: sample.mains_current_a,
            lamps: sample.lamps.code,
            lock_lamp: sample.lamps.lock,
            locked: sample.locked,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::kept_file;
    use detent_content::ContentLibrary;

    #[test]
    fn the_kept_schema_is_that_of_the_program() {
        kept_file::check_printed::<Told<'_>>("wash", VERSION);
    }

    #[test]
    fn every_wash_is_a_short_table_with_its_codes_and_its_end() {
        let content_library = ContentLibrary::builtin().expect("the built-in content is sound");
        for name in ["drain-code", "exam-120-v-dial"] {
            let source = content_library.scenario(name).expect("it is built in");
            let library = content_library.library(&source.scenario);
            let trace = wash_trace(library, &source.scenario, source.scenario.seed);
            let trace = trace.expect("it can be set up");
            for texts in Language::ALL.map(Texts::load) {
                let told = lines(&trace, &library.board.lamps, &texts);
                assert!((4..=44).contains(&told.len()), "{name}: {told:#?}");
                assert_eq!(told.last(), Some(&texts.wash_end(trace.end)), "{name}");
                for stored in &trace.stored {
                    let line = format!("  → {}", texts.wash_code(stored));
                    assert!(told.contains(&line), "{name}: {line} is not in {told:#?}");
                }
                // The rows without an arrow, below the two heads; the lamps stand last.
                let rows: Vec<&String> = (told.iter().skip(2))
                    .filter(|line| line.starts_with(' ') && !line.starts_with("  →"))
                    .collect();
                let same = rows.iter().filter(|row| row.ends_with(SAME_LAMPS)).count();
                assert!(!rows[0].ends_with(SAME_LAMPS) && same > 0, "{told:#?}");
                let lamps = |row: &&String| row.rsplit("  ").next().map(str::to_owned);
                let told_lamps: Vec<_> = (rows.iter().map(lamps))
                    .filter(|lamps| lamps.as_deref() != Some(SAME_LAMPS))
                    .collect();
                assert!(told_lamps.is_sorted_by(|a, b| a != b), "{told_lamps:?}");
                let told = told.join("\n");
                assert!(!told.contains(['‹', '{']), "{told}");
            }
        }
    }
}
