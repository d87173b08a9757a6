//! Handouts and answer keys as PDF, read again and drawn by an independent program: Poppler (Debian package
//! `poppler-utils`). Where it is missing the tests that need it say that they are skipped; with `CI=true` they fail instead.

#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    clippy::disallowed_macros,
    reason = "tests open files, run programs and print"
)]

mod answers;
mod pages;
mod poppler;
mod structure;

use detent_content::{ContentLibrary, Language, ScenarioSource};
use detent_paper::{PaperError, PaperSize, SheetJob, answer_key, handout};

/// Every language on every size of paper.
const EDITIONS: [(Language, PaperSize); 4] = [
    (Language::En, PaperSize::A4),
    (Language::En, PaperSize::Letter),
    (Language::Es, PaperSize::A4),
    (Language::Es, PaperSize::Letter),
];

fn content() -> ContentLibrary {
    ContentLibrary::builtin().expect("the built-in content is sound")
}

fn job(source: &ScenarioSource) -> SheetJob<'_> {
    SheetJob {
        source,
        seed: source.scenario.seed,
        variant: None,
    }
}

type Edition = (Language, PaperSize);

fn handout_of(
    content_library: &ContentLibrary,
    source: &ScenarioSource,
    (language, paper): Edition,
) -> Result<Vec<u8>, PaperError> {
    handout(content_library, &[job(source)], language, paper)
}

fn key_of(
    content_library: &ContentLibrary,
    source: &ScenarioSource,
    (language, paper): Edition,
) -> Result<Vec<u8>, PaperError> {
    answer_key(content_library, &[job(source)], language, paper)
}

/// Jobs that show every board at every supply that a job has.
fn one_for_each_board(content_library: &ContentLibrary) -> Vec<ScenarioSource> {
    let mut seen = Vec::new();
    let mut jobs = content_library.scenarios().expect("they are sound");
    jobs.retain(|job| {
        let of = (job.scenario.board.clone(), job.scenario.mains);
        let first = !seen.contains(&of);
        seen.push(of);
        first
    });
    assert!(jobs.len() >= content_library.boards.len());
    jobs
}

/// A text without the places where its lines are broken.
fn flowing(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}
