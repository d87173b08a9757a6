//! What 24 variants of a job take on two cores, for a job of each board, with all that the command does for them: the
//! content is read, the original judged, drafts are drawn and proved until there are enough. It fails where that takes
//! longer than anybody should wait.

#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    clippy::disallowed_macros,
    reason = "a benchmark looks at the clock"
)]

use detent_content::{ContentLibrary, JobVariant, VariantSeries};
use detent_training::without_breaks;
use rayon::ThreadPoolBuilder;
use rayon::prelude::*;
use std::process::ExitCode;
use std::time::Instant;

/// Cores of the machine that it must be quick on.
const CORES: usize = 2;
/// Longest that they may take, s.
const MOST_S: f64 = 10.0;
const VARIANTS: usize = 24;
/// Most drafts that are proved at once, and no more than twice what is missing, as the command line has it.
const AT_ONCE: u64 = 16;
const SEED: u64 = 1;
/// A job of each board.
const JOBS: [&str; 3] = ["drain-code", "motor-overcurrent", "lock-clicks-and-stops"];

fn main() -> ExitCode {
    let threads = ThreadPoolBuilder::new().num_threads(CORES).build();
    let threads = threads.expect("the system gives threads");
    let longest_s = (JOBS.iter())
        .map(|job| threads.install(|| report(job)))
        .fold(0.0, f64::max);
    if longest_s > MOST_S {
        eprintln!("{longest_s:.1} s: {VARIANTS} variants may take {MOST_S} s");
        return ExitCode::FAILURE;
    }
    ExitCode::SUCCESS
}

/// How long the variants of this job take, s.
fn report(job: &str) -> f64 {
    let (began, used_before_s) = (Instant::now(), processor_s());
    let content_library = ContentLibrary::builtin().expect("the built-in content is sound");
    let original = content_library.scenario(job).expect("a built-in job");
    let begun = VariantSeries::begin_in_slices(&content_library, &original, SEED);
    let series = without_breaks(begun).expect("the original can be judged");
    let begun_s = began.elapsed().as_secs_f64();
    let (mut variants, mut drafts) = (Vec::new(), 0);
    while variants.len() < VARIANTS {
        let wanted = 2 * (VARIANTS - variants.len()) as u64;
        let next = drafts + wanted.min(AT_ONCE);
        let proved: Vec<Option<JobVariant>> = (drafts..next)
            .into_par_iter()
            .map(|n| {
                let proved = without_breaks(series.prove_in_slices(&content_library, n));
                let variant = proved.expect("it can be tried").ok()?;
                Some(series.job(&content_library, variant).expect("a sound job"))
            })
            .collect();
        drafts = next;
        variants.extend(proved.into_iter().flatten());
    }
    let took_s = began.elapsed().as_secs_f64();
    println!(
        "{}, {job}: {} variants of {drafts} drafts in {took_s:.2} s on {CORES} cores, {begun_s:.2} s of them before the \
         first draft; {:.1} s of processor time",
        original.scenario.board,
        variants.len(),
        processor_s() - used_before_s,
    );
    took_s
}

/// Processor time that this process has had, s: where the machine is busy with other work, it tells what a free one would
/// need. Not a number where the system does not say it as Linux does, in hundredths of a second (proc(5), from memory).
fn processor_s() -> f64 {
    let stat = std::fs::read_to_string("/proc/self/stat").unwrap_or_default();
    let after_name = stat.rsplit(')').next().unwrap_or_default();
    let field = |n| after_name.split_whitespace().nth(n)?.parse::<f64>().ok();
    match (field(11), field(12)) {
        (Some(user), Some(system)) => (user + system) / 100.0,
        _ => f64::NAN,
    }
}
