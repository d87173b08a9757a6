//! `detent print`: handouts and answer keys as PDF files.

use super::output::Output;
use super::{Failure, LibraryFolder, jobs};
use detent_content::{ContentLibrary, JobVariant, Language, ScenarioSource, Texts, Value, disk};
use detent_paper::{PaperError, PaperSize, SheetJob, answer_key, handout};
use std::collections::BTreeSet;
use std::path::PathBuf;

#[derive(Debug, clap::Args)]
pub(super) struct PrintArgs {
    #[arg(required = true, value_name = "SCENARIO")]
    scenarios: Vec<String>,
    #[arg(long)]
    out: PathBuf,
    #[arg(long)]
    paper: Option<String>,
    #[arg(long, value_name = "COUNT")]
    variants: Option<u64>,
    #[arg(long)]
    seed: Option<u64>,
}

/// Most variants in one document.
const MOST_VARIANTS: u64 = 200;
/// Seed of the draws of variants, as for `detent jobs`.
const VARIANT_SEED: u64 = 1;

/// What goes into one handout and its key.
struct Order {
    original: ScenarioSource,
    handout: PathBuf,
    key: PathBuf,
}

pub(super) fn print(
    args: &PrintArgs,
    library: &LibraryFolder,
    language: Language,
) -> Result<(), Failure> {
    let paper = paper_size(args.paper.as_deref())?;
    if let Some(found) = args.variants
        && !(1..=MOST_VARIANTS).contains(&found)
    {
        let most = MOST_VARIANTS;
        return Err(Failure::Count { found, most });
    }
    let content_library = library.open_with_tables(&Texts::load(language))?;
    let scenarios = args.scenarios.iter();
    let orders: Vec<Order> = scenarios
        .map(|name| order(&content_library, name, args))
        .collect::<Result<_, Failure>>()?;
    disk::check_folder(&args.out)
        .map_err(|error| Failure::Folder(args.out.display().to_string(), error))?;
    // Before the first is written, so that a name that is taken leaves no half of them behind.
    let mut taken = BTreeSet::new();
    for path in orders.iter().flat_map(|order| [&order.handout, &order.key]) {
        if !taken.insert(path) {
            return Err(Failure::SameFile(path.display().to_string()));
        }
        if disk::is_there(path)? {
            return Err(Failure::AlreadyThere(path.display().to_string()));
        }
    }
    let texts = Texts::load(language);
    let mut out = Output::standard();
    for order in &orders {
        let variants = match args.variants {
            Some(count) => {
                let seed = args.seed.unwrap_or(VARIANT_SEED);
                jobs::variants(&content_library, &order.original, (count, seed))?
            }
            None => Vec::new(),
        };
        let jobs = sheet_jobs(&order.original, &variants, args);
        type Make = fn(
            &ContentLibrary,
            &[SheetJob<'_>],
            Language,
            PaperSize,
        ) -> Result<Vec<u8>, PaperError>;
        let documents: [(&PathBuf, Make); 2] =
            [(&order.handout, handout), (&order.key, answer_key)];
        // Both are made before the first is written: no handout without its key.
        let made = documents.map(|(path, make)| {
            let bytes = make(&content_library, &jobs, language, paper);
            bytes.map_err(|error| Failure::Paper(path.display().to_string(), error))
        });
        let [handout, key] = made;
        for (path, bytes) in [(&order.handout, handout?), (&order.key, key?)] {
            jobs::keep(path, &bytes)?;
            let kilobytes = Value::from(bytes.len().div_ceil(1000).to_string());
            let file = Value::from(path.display().to_string());
            out.line(texts.with("cli-printed", &[("file", file), ("kilobytes", kilobytes)]))?;
        }
    }
    Ok(())
}

fn paper_size(name: Option<&str>) -> Result<PaperSize, Failure> {
    let Some(name) = name else {
        return Ok(PaperSize::default());
    };
    let mut sizes = PaperSize::ALL.into_iter();
    let known = sizes.find(|size| size.name() == name);
    known.ok_or_else(|| Failure::NoPaper(name.to_owned()))
}

fn order(content_library: &ContentLibrary, name: &str, args: &PrintArgs) -> Result<Order, Failure> {
    let original = content_library.scenario(name)?;
    let stem = match args.variants {
        Some(_) => format!("{}-variants", original.stem()),
        None => original.stem(),
    };
    Ok(Order {
        handout: args.out.join(format!("{stem}-handout.pdf")),
        key: args.out.join(format!("{stem}-key.pdf")),
        original,
    })
}

/// The variants, or where there are none the job itself.
fn sheet_jobs<'a>(
    original: &'a ScenarioSource,
    variants: &'a [JobVariant],
    args: &PrintArgs,
) -> Vec<SheetJob<'a>> {
    if variants.is_empty() {
        let seed = args.seed.unwrap_or(original.scenario.seed);
        return vec![SheetJob {
            source: original,
            seed,
            variant: None,
        }];
    }
    let drawn_with = args.seed.unwrap_or(VARIANT_SEED);
    let jobs = variants.iter().map(|variant| SheetJob {
        source: &variant.source,
        seed: variant.source.scenario.seed,
        variant: Some((variant.number, drawn_with)),
    });
    jobs.collect()
}
