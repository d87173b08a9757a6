//! Handouts and answer keys on paper: bytes of a PDF, from the same typed data as the window's sheet.
//!
//! A handout is a job ticket, a blank form for what is found, and the board's service sheet; a key says what was
//! wrong and the planner's way. What a handout says follows from the ticket, the board and the supply alone: the
//! hidden fault is not so much as looked at.
//!
//! The PDF is written by `krilla`, whose validator refuses what PDF/UA-1 forbids. Typst as a library would lay out the
//! pages too, but it is a whole typesetting language with its own fonts, pictures and scripts, some hundred crates more, where
//! these sheets are headings, tables and drawings. Nothing in here opens a file, asks for the time or needs a
//! screen: the same bytes come out on every platform, in a browser too.

mod canvas;
mod codes;
mod document;
mod draft;
mod font;
mod form;
mod gesture;
mod key;
mod lamps;
mod menu;
mod output;
mod ticket;
mod wires;

use detent_content::ScenarioSource;
use detent_training::lesson::SetUpError;
use detent_training::reason::PathError;

pub use document::{answer_key, handout};
pub use draft::PaperSize;

/// One learner's job.
#[derive(Clone, Copy, Debug)]
pub struct SheetJob<'a> {
    /// The scenario.
    pub source: &'a ScenarioSource,
    /// Seed of its draws.
    pub seed: u64,
    /// For a variant: its number, from 0, and the seed that it was drawn with.
    pub variant: Option<(u64, u64)>,
}

/// Why there is no paper.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum PaperError {
    /// The machine cannot be set up.
    #[error(transparent)]
    SetUp(#[from] SetUpError),
    /// The planner's way cannot be found.
    #[error(transparent)]
    Path(#[from] PathError),
    /// The document is none that everybody can read: a mistake of this program.
    #[error("the document was refused: {0}")]
    Refused(String),
}
