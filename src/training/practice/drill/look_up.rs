//! Look-up: which components can be behind a code, by the service sheet of the board.

use super::{SuppliedBoard, SuppliedBoardId, draws, one_of, shuffle, supplied_board};
use detent_simulation::controller::Monitor;
use detent_simulation::interface::Component;

/// Components to choose from, where the sheet does not list more.
const CHOICES: usize = 9;
/// At least so many are none.
const LEAST_WRONG: usize = 2;
/// Codes in the excerpt of the table.
const EXCERPT: usize = 5;

/// A code, and components to tick.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CodeLookUpTask {
    /// Board and supply.
    pub place: SuppliedBoardId,
    /// The code.
    pub code: u8,
    /// What it stands for.
    pub monitor: Monitor,
    /// Some codes of the board with what they stand for, by code: the one asked for is among them.
    pub excerpt: Vec<(u8, Monitor)>,
    /// Components to choose from.
    pub options: Vec<Component>,
    /// The board's sheet lists these.
    pub suspects: Vec<Component>,
}

/// An answer, judged.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Marked {
    /// All of the suspects and nothing else.
    pub right: bool,
    /// Suspects that were not ticked.
    pub missed: Vec<Component>,
    /// Ticked, and no suspects.
    pub wrong: Vec<Component>,
}

/// Draws a task.
pub fn ask(supplied_boards: &[SuppliedBoard<'_>], seed: u64) -> CodeLookUpTask {
    let rng = &mut draws(seed);
    let supplied_board = supplied_board(supplied_boards, rng);
    let board = supplied_board.library.board;
    let entries: Vec<&detent_simulation::controller::SheetEntry> = board.sheet.iter().collect();
    let entry = one_of(&entries, rng).expect("a board's sheet has entries");
    let code = board.code_of(entry.monitor).unwrap_or_default();
    let mut others: Vec<(u8, Monitor)> = (board.codes.iter())
        .filter(|other| other.code != code)
        .map(|other| (other.code, other.monitor))
        .collect();
    shuffle(&mut others, rng);
    let mut excerpt = others;
    excerpt.truncate(EXCERPT - 1);
    excerpt.push((code, entry.monitor));
    excerpt.sort_unstable_by_key(|(code, _)| *code);
    // Only what the sheet lists behind some other code is a fair distractor.
    let listed = |c: &Component| board.sheet.iter().any(|s| s.suspects.contains(c));
    let mut wrong: Vec<Component> = (Component::ALL.iter().copied())
        .filter(|c| !entry.suspects.contains(c) && listed(c))
        .collect();
    shuffle(&mut wrong, rng);
    wrong.truncate(
        CHOICES
            .saturating_sub(entry.suspects.len())
            .max(LEAST_WRONG),
    );
    let mut options = entry.suspects.clone();
    options.extend(wrong);
    shuffle(&mut options, rng);
    CodeLookUpTask {
        place: supplied_board.place(),
        code,
        monitor: entry.monitor,
        excerpt,
        options,
        suspects: entry.suspects.clone(),
    }
}

/// Judges what was ticked.
pub fn mark(task: &CodeLookUpTask, ticked: &[Component]) -> Marked {
    let missed: Vec<Component> = (task.suspects.iter().copied())
        .filter(|c| !ticked.contains(c))
        .collect();
    let wrong: Vec<Component> = (ticked.iter().copied())
        .filter(|c| !task.suspects.contains(c))
        .collect();
    Marked {
        right: missed.is_empty() && wrong.is_empty(),
        missed,
        wrong,
    }
}
