//! Look-up: which components can be behind a code, by the service sheet of the board.

use super::{SuppliedBoard, SuppliedBoardId, draws, one_of, shuffle, supplied_board};
use detent_simulation::controller::{Board, Code, Monitor, SheetEntry};
use detent_simulation::interface::Component;

/// Components to choose from, where the sheet does not list more.
const CHOICES: usize = 9;
/// At least so many are none.
const LEAST_WRONG: usize = 2;

/// A line of the service sheet's page of codes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SheetLine {
    /// The code.
    pub code: u8,
    /// What it stands for.
    pub monitor: Monitor,
    /// Components that can be behind it, as the sheet lists them.
    pub suspects: Vec<Component>,
}

/// A code, and components to tick.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CodeLookUpTask {
    /// Board and supply.
    pub place: SuppliedBoardId,
    /// The code.
    pub code: u8,
    /// What it stands for.
    pub monitor: Monitor,
    /// The board's page of codes, by code.
    pub page: Vec<SheetLine>,
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
    let entries: Vec<&SheetEntry> = board.sheet.iter().collect();
    let entry = one_of(&entries, rng).expect("a board's sheet has entries");
    let code = board.code_of(entry.monitor).unwrap_or_default();
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
        page: page(board),
        options,
        suspects: entry.suspects.clone(),
    }
}

/// The page of codes of a board's service sheet, by code.
fn page(board: &Board) -> Vec<SheetLine> {
    let lines = board.codes.iter().map(|Code { code, monitor }| {
        let listed = board.sheet.iter().filter(|entry| entry.monitor == *monitor);
        SheetLine {
            code: *code,
            monitor: *monitor,
            suspects: listed.flat_map(|entry| entry.suspects.clone()).collect(),
        }
    });
    let mut lines: Vec<SheetLine> = lines.collect();
    lines.sort_unstable_by_key(|line| line.code);
    lines
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
