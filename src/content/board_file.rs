//! Boards.

use super::error::{ContentError, Problem};
use super::reader::read_checked;
use super::scenario_file::KnownBoard;
use detent_simulation::controller::Board;

/// Read a board and hold it against its own rules.
///
/// # Errors
/// Every mistake in the file, in its order; at least one.
pub fn read_board(file: &str, bytes: &[u8]) -> Result<Board, Vec<ContentError>> {
    read_checked(file, bytes, |board: &Board| {
        let problems = board.check().into_iter();
        problems
            .map(|problem| (problem.field, Problem::Board(Box::new(problem.fault))))
            .collect()
    })
}

impl KnownBoard {
    /// What scenarios must know of this board.
    pub fn of(board: &Board) -> KnownBoard {
        KnownBoard {
            name: board.id.clone(),
            mains: board.mains.clone(),
            codes: board.codes.iter().map(|code| code.code).collect(),
        }
    }
}
