//! Boards.

use super::error::{ContentError, NotSayable, Problem};
use super::reader::read_checked;
use super::scenario_file::KnownBoard;
use detent_simulation::controller::Board;

/// Read a board and hold it against its own rules.
///
/// # Errors
/// Every mistake in the file, in its order; at least one.
pub fn read_board(file: &str, bytes: &[u8]) -> Result<Board, Vec<ContentError>> {
    let read = read_checked(file, bytes, |board: &Board| {
        let problems = board.check().into_iter();
        problems
            .map(|problem| (problem.field, Problem::Board(Box::new(problem.fault))))
            .collect()
    });
    read.map_err(|errors| errors.into_iter().map(with_letters_named).collect())
}

/// A code that is written in letters is told as such.
fn with_letters_named(error: ContentError) -> ContentError {
    let no_number =
        matches!(&error.problem, Problem::Syntax(e) if **e == ron::Error::ExpectedInteger);
    let of_code = error.field.starts_with("codes[") && error.field.ends_with("].code");
    if no_number && of_code {
        let problem = Problem::NotSayable(NotSayable::Letters);
        ContentError { problem, ..error }
    } else {
        error
    }
}

impl KnownBoard {
    /// What scenarios must know of this board.
    pub fn of(board: &Board) -> KnownBoard {
        KnownBoard {
            name: board.id.clone(),
            mains: board.mains.clone(),
            codes: board.codes.clone(),
        }
    }
}
