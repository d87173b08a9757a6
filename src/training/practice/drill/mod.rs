//! Drills: short exercises of one skill each, on boards drawn at random. Every drill asks from a seed (the
//! same seed, the same task) and marks an answer; it knows no window and no clock.

pub mod entry;
pub mod hazard;
pub mod lamps;
pub mod look_up;
mod marker;
pub mod meter;
pub mod next_test;
pub mod part;
pub mod proof;
mod round;
pub mod safe_work;
mod task;
pub use marker::RoundMarker;
pub use round::{Done, MOST_QUESTIONS, QUESTIONS, Round};
pub use task::{Given, MOST_DEEDS, QuestionSource, Task};

use crate::draws::{below, between, one_of, shuffle, within};
use crate::lesson::{Library, Mains};
use rand::SeedableRng;
use rand_chacha::ChaCha8Rng;

/// A board at one supply that it is made for, with all that a question about it draws on.
#[derive(Clone, Copy, Debug)]
pub struct SuppliedBoard<'a> {
    /// Board, sound machine for this supply, catalogue and counter.
    pub library: Library<'a>,
    /// Supply.
    pub mains: Mains,
}

/// Which board at which supply a task is about: the board's short name and the supply.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SuppliedBoardId {
    /// The board's short name.
    pub board: String,
    /// Supply.
    pub mains: Mains,
}

impl SuppliedBoard<'_> {
    /// Its place.
    pub fn place(&self) -> SuppliedBoardId {
        SuppliedBoardId {
            board: self.library.board.id.clone(),
            mains: self.mains,
        }
    }
}

/// Draws one: first the board, so that one made for two supplies does not come up twice as often.
///
/// # Panics
/// There are none to draw from.
fn supplied_board<'a, 's>(
    supplied_boards: &'a [SuppliedBoard<'s>],
    rng: &mut ChaCha8Rng,
) -> &'a SuppliedBoard<'s> {
    let mut boards: Vec<&str> = Vec::new();
    for supplied_board in supplied_boards {
        if !boards.contains(&supplied_board.library.board.id.as_str()) {
            boards.push(&supplied_board.library.board.id);
        }
    }
    let board = one_of(&boards, rng);
    let here: Vec<&SuppliedBoard<'s>> = (supplied_boards.iter())
        .filter(|supplied_board| Some(supplied_board.library.board.id.as_str()) == board)
        .collect();
    one_of(&here, rng).expect("a drill has at least one board")
}

/// The source of every draw of a task.
fn draws(seed: u64) -> ChaCha8Rng {
    ChaCha8Rng::seed_from_u64(seed)
}
