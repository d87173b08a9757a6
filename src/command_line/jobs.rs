//! `detent jobs`: variants of a job, each proved before it is offered.

use super::output::Output;
use super::print::said;
use super::{Failure, LibraryFolder};
use detent_content::{
    ContentLibrary, JobVariant, JobVariantError, Language, MOST_REFUSED, ScenarioSource, Texts,
    Value, VariantSeries, disk,
};
use detent_training::lesson::Bilingual;
use detent_training::variant::{Band, Difficulty, Spread, Tally, Variant, VariantRefusal};
use detent_training::without_breaks;
use rayon::prelude::*;
use schemars::JsonSchema;
use serde::Serialize;
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

#[derive(Debug, clap::Args)]
pub(super) struct JobsArgs {
    #[arg(long)]
    like: String,
    #[arg(long, default_value_t = 24)]
    count: u64,
    #[arg(long, default_value_t = 1)]
    seed: u64,
    #[arg(long, conflicts_with = "survey")]
    out: Option<PathBuf>,
    #[arg(long)]
    json: bool,
    #[arg(long, value_name = "DRAFTS", conflicts_with = "count")]
    survey: Option<u64>,
}

/// Version of what `--json` prints.
const VERSION: u32 = 1;
/// Most variants in one run.
const MOST_VARIANTS: u64 = 10_000;
/// Most drafts in one survey.
const MOST_DRAFTS: u64 = 1_000_000;
/// Drafts that are proved at once.
const AT_ONCE: u64 = 16;

pub(super) fn jobs(
    args: &JobsArgs,
    library: &LibraryFolder,
    language: Language,
) -> Result<(), Failure> {
    let (wanted, found, most) = match args.survey {
        Some(drafts) => (Wanted::Survey(drafts), drafts, MOST_DRAFTS),
        None => (Wanted::Variants(args.count), args.count, MOST_VARIANTS),
    };
    if found == 0 || found > most {
        return Err(Failure::Count { found, most });
    }
    let content_library = library.open_with_tables(&Texts::load(language))?;
    let original = content_library.scenario(&args.like)?;
    if let Some(folder) = &args.out {
        disk::check_folder(folder)
            .map_err(|error| Failure::Folder(folder.display().to_string(), error))?;
    }
    let begun = VariantSeries::begin_in_slices(&content_library, &original, args.seed);
    let series = without_breaks(begun)?;
    let (variants, tally) = prove(&content_library, &series, wanted)?;
    let variants = variants.into_iter();
    let variants: Vec<JobVariant> = variants
        .map(|variant| series.job(&content_library, variant))
        .collect::<Result<_, JobVariantError>>()?;
    if let Some(folder) = &args.out {
        // Before the first is written, so that a name that is taken leaves no half of them behind.
        for variant in &variants {
            let path = folder.join(&variant.source.file);
            if disk::is_there(&path)? {
                return Err(Failure::AlreadyThere(path.display().to_string()));
            }
        }
        for variant in &variants {
            let source = &variant.source;
            keep(&folder.join(&source.file), source.text.as_bytes())?;
        }
    }
    let mut out = Output::standard();
    if args.json {
        return out.json(&Told::of(&original, args, &series, &variants, &tally));
    }
    let texts = Texts::load(language);
    for variant in &variants {
        print(&mut out, variant, &texts)?;
    }
    report(&mut out, &series, &tally, &texts)?;
    let wanted = args.count;
    if args.survey.is_none() && (variants.len() as u64) < wanted {
        let found = variants.len();
        return Err(Failure::FewVariants { found, wanted });
    }
    Ok(())
}

/// The first variants of a job, as many as asked for.
pub(super) fn variants(
    content_library: &ContentLibrary,
    original: &ScenarioSource,
    (count, seed): (u64, u64),
) -> Result<Vec<JobVariant>, Failure> {
    let begun = VariantSeries::begin_in_slices(content_library, original, seed);
    let series = without_breaks(begun)?;
    let (variants, _) = prove(content_library, &series, Wanted::Variants(count))?;
    if (variants.len() as u64) < count {
        let (found, wanted) = (variants.len(), count);
        return Err(Failure::FewVariants { found, wanted });
    }
    let variants = variants.into_iter();
    let jobs = variants.map(|variant| series.job(content_library, variant));
    Ok(jobs.collect::<Result<_, JobVariantError>>()?)
}

/// What is asked for.
#[derive(Clone, Copy)]
enum Wanted {
    /// So many variants.
    Variants(u64),
    /// So many drafts, of which none is kept.
    Survey(u64),
}

/// Proves drafts until there are as many variants as asked for, or, for a survey, so many drafts.
fn prove(
    content_library: &ContentLibrary,
    series: &VariantSeries,
    wanted: Wanted,
) -> Result<(Vec<Variant>, Tally), Failure> {
    let (mut variants, mut tally) = (Vec::new(), Tally::default());
    let (mut next, mut in_vain) = (0, 0);
    let goes_on = |variants: &[Variant], drawn: u64, in_vain: u64| match wanted {
        Wanted::Survey(drafts) => drawn < drafts,
        Wanted::Variants(count) => (variants.len() as u64) < count && in_vain < MOST_REFUSED,
    };
    while goes_on(&variants, tally.drawn, in_vain) {
        // Of those that are asked for last, no more than are likely to be needed.
        let likely = match wanted {
            Wanted::Survey(drafts) => drafts - tally.drawn,
            Wanted::Variants(count) => 2 * (count - variants.len() as u64),
        };
        let numbers: Vec<u64> = (next..next + likely.min(AT_ONCE)).collect();
        next += numbers.len() as u64;
        let proved: Vec<_> = (numbers.par_iter())
            .map(|n| without_breaks(series.prove_in_slices(content_library, *n)))
            .collect::<Result<_, JobVariantError>>()?;
        for came_of_it in proved {
            if !goes_on(&variants, tally.drawn, in_vain) {
                break;
            }
            tally.count(&came_of_it);
            in_vain = if came_of_it.is_ok() { 0 } else { in_vain + 1 };
            if let (Ok(variant), Wanted::Variants(_)) = (came_of_it, wanted) {
                variants.push(variant);
            }
        }
    }
    Ok((variants, tally))
}

/// Writes a file where there is none: whole or not at all.
pub(super) fn keep(path: &Path, bytes: &[u8]) -> Result<(), Failure> {
    let file = || path.display().to_string();
    disk::write_new(path, bytes).map_err(|error| match error.kind() {
        std::io::ErrorKind::AlreadyExists => Failure::AlreadyThere(file()),
        _ => Failure::Write(file(), error),
    })
}

fn print(out: &mut Output, variant: &JobVariant, texts: &Texts) -> Result<(), Failure> {
    let scenario = &variant.source.scenario;
    let volts = scenario.mains.rating().volts;
    out.line(format!(
        "{}  {}, {volts:.0} V  {:.0} min, {:.0}  ({})",
        variant.source.file,
        texts.board_name(&scenario.board),
        scenario.par_minutes,
        scenario.budget,
        texts.variant_difficulty(&variant.difficulty),
    ))?;
    out.line(format!(
        "    {}",
        said(&scenario.complaint, texts.language())
    ))
}

/// A figure of difficulty, and what is allowed of it.
struct Figure {
    /// Text key of its name.
    key: &'static str,
    of: fn(&Difficulty) -> f64,
    band: Option<(f64, f64)>,
}

/// How many drafts passed, why the others did not, and how the difficulties are spread.
fn report(
    out: &mut Output,
    series: &VariantSeries,
    tally: &Tally,
    texts: &Texts,
) -> Result<(), Failure> {
    let count = |count: u64| Value::from(count.to_string());
    let args = [
        ("drawn", count(tally.drawn)),
        ("passed", count(tally.passed.len() as u64)),
    ];
    out.line(texts.with("variant-drawn", &args))?;
    let mut refused: Vec<(u64, VariantRefusal)> = (VariantRefusal::ALL.iter())
        .map(|reason| (tally.refused(*reason), *reason))
        .filter(|(count, _)| *count > 0)
        .collect();
    refused.sort_by(|a, b| b.0.cmp(&a.0).then(a.1.cmp(&b.1)));
    for (count, reason) in refused {
        let why = texts.get(&format!("variant-refused-{reason}"));
        out.line(format!("  {count:>6}  {why}"))?;
    }
    let Band {
        planned_cost,
        mean_share,
        chance_of_passing,
    } = series.band();
    let percent = |(least, most): &(f64, f64)| (100.0 * least, 100.0 * most.min(1.0));
    let figures = [
        Figure {
            key: "variant-planned-cost",
            of: |d| d.planned_cost,
            band: Some(*planned_cost),
        },
        Figure {
            key: "variant-mean-share",
            of: |d| 100.0 * d.mean_share(),
            band: Some(percent(mean_share)),
        },
        Figure {
            key: "variant-chance-of-passing",
            of: |d| 100.0 * d.chance_of_passing,
            band: Some(percent(chance_of_passing)),
        },
        Figure {
            key: "variant-expert-minutes",
            of: |d| d.expert_minutes,
            band: None,
        },
    ];
    for Figure { key, of, band } in figures {
        let own: Vec<String> = (series.own().iter())
            .map(|d| format!("{:.0}", of(d)))
            .collect();
        let spread = tally.spread(of);
        let whole = |of: fn(&Spread) -> f64| {
            let told = spread.as_ref().map(|s| format!("{:.0}", of(s)));
            Value::from(told.unwrap_or_else(|| "—".to_owned()))
        };
        let band = band.map(|(least, most)| format!("{:.0}–{most:.0}", least.max(0.0)));
        let band = band.unwrap_or_else(|| "—".to_owned());
        let args = [
            ("what", Value::from(texts.get(key))),
            ("least", whole(|s| s.least)),
            ("median", whole(|s| s.median)),
            ("greatest", whole(|s| s.greatest)),
            ("own", Value::from(own.join(", "))),
            ("band", Value::from(band)),
        ];
        out.line(texts.with("variant-spread", &args))?;
    }
    Ok(())
}

/// All of it, for other programs. Nothing in it gives an answer away.
#[derive(Serialize, JsonSchema)]
#[schemars(title = "Variants of `detent jobs --json`")]
#[serde(deny_unknown_fields)]
struct Told<'a> {
    /// Version of this format.
    #[schemars(extend("const" = VERSION))]
    version: u32,
    /// File of the job that they are variants of.
    like: &'a str,
    /// Seed of the draws.
    seed: u64,
    /// Drafts that were drawn and tried.
    drawn: u64,
    /// Drafts that can be offered.
    passed: usize,
    /// How many drafts were refused for each reason.
    refused: BTreeMap<&'static str, u64>,
    /// Least and greatest expected cost of repair that is offered.
    planned_cost: [f64; 2],
    /// Least and greatest mean share of the points that the scripted people keep, 0 to 1, that is offered.
    success: [f64; 2],
    /// Least and greatest chance of passing of simulated learners, 0 to 1, that is offered.
    chance_of_passing: [f64; 2],
    /// The variants.
    variants: Vec<ToldVariant<'a>>,
}

/// One variant.
#[derive(Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ToldVariant<'a> {
    /// File name of its scenario, as `--out` writes it.
    file: &'a str,
    /// What it is called.
    title: ToldText<'a>,
    /// What the customer says.
    complaint: ToldText<'a>,
    /// Its board.
    board: &'a str,
    /// Supply, V.
    volts: f64,
    /// Time that the job should take, min.
    par_minutes: f64,
    /// The customer's limit, whole units of money.
    budget: f64,
    /// Expected cost of repair, whole units of money.
    planned_cost: f64,
    /// Mean share of the points that the scripted people keep, 0 to 1.
    success: f64,
    /// Share of simulated learners who pass, 0 to 1.
    chance_of_passing: f64,
}

/// A text in both languages.
#[derive(Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ToldText<'a> {
    /// English.
    en: &'a str,
    /// Spanish.
    es: &'a str,
}

impl<'a> From<&'a Bilingual> for ToldText<'a> {
    fn from(text: &'a Bilingual) -> ToldText<'a> {
        ToldText {
            en: &text.en,
            es: &text.es,
        }
    }
}

impl<'a> Told<'a> {
    fn of(
        original: &'a ScenarioSource,
        args: &JobsArgs,
        series: &VariantSeries,
        variants: &'a [JobVariant],
        tally: &Tally,
    ) -> Told<'a> {
        let reasons = VariantRefusal::ALL.iter();
        let Band {
            planned_cost,
            mean_share,
            chance_of_passing,
        } = series.band();
        Told {
            version: VERSION,
            like: &original.file,
            seed: args.seed,
            drawn: tally.drawn,
            passed: tally.passed.len(),
            refused: reasons.map(|r| (r.name(), tally.refused(*r))).collect(),
            planned_cost: (*planned_cost).into(),
            success: (*mean_share).into(),
            chance_of_passing: (*chance_of_passing).into(),
            variants: variants.iter().map(ToldVariant::of).collect(),
        }
    }
}

impl ToldVariant<'_> {
    fn of(variant: &JobVariant) -> ToldVariant<'_> {
        let scenario = &variant.source.scenario;
        ToldVariant {
            file: &variant.source.file,
            title: (&scenario.title).into(),
            complaint: (&scenario.complaint).into(),
            board: &scenario.board,
            volts: scenario.mains.rating().volts,
            par_minutes: scenario.par_minutes,
            budget: scenario.budget,
            planned_cost: variant.difficulty.planned_cost,
            success: variant.difficulty.mean_share(),
            chance_of_passing: variant.difficulty.chance_of_passing,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::kept_file;

    #[test]
    fn the_kept_schema_is_that_of_the_program() {
        kept_file::check_printed::<Told<'_>>("jobs", VERSION);
    }
}
