//! Reading lamps: a number is shown in a board's own language or in one invented for the question, with
//! its key; two digits are the answer.

use super::{SuppliedBoard, between, draws, one_of, shuffle, supplied_board};
use detent_simulation::controller::{Board, Signs, USUAL_CODES};
use detent_simulation::units::uniform;
use rand_chacha::ChaCha8Rng;

/// Share of the questions in a language of their own.
const INVENTED: f64 = 0.5;
/// Draws of a language before the plainest of its kind is taken.
const DRAWS: usize = 4000;
/// Numbers that the service sheet shows as examples of a language: these are told beforehand.
pub const EXAMPLES: [u8; 2] = [23, 37];
/// Most flashes of one number: more is patience, not reading.
const MOST_FLASHES: u8 = 11;

/// A number on lamps.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LampReadingTask {
    /// The board whose language it is; none for an invented one.
    pub board: Option<String>,
    /// The language.
    pub signs: Signs,
    /// The number shown.
    pub shown: u8,
}

/// An answer, judged.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Marked {
    /// Both digits are right.
    pub right: bool,
    /// The number that was shown.
    pub shown: u8,
    /// The number that was read.
    pub read: u8,
}

/// How often each digit (row) was read as each digit (column), tens and units together.
pub type Confusion = [[u32; 10]; 10];

/// Draws the task that follows `asked` others: one on each of the boards of `course`, in the order in which the course
/// teaches to read them, and after these any board's language or an invented one.
pub fn ask(
    supplied_boards: &[SuppliedBoard<'_>],
    course: &[&Board],
    asked: usize,
    seed: u64,
) -> LampReadingTask {
    let rng = &mut draws(seed);
    if let Some(board) = course.get(asked) {
        return on_board(board, rng);
    }
    let board = supplied_board(supplied_boards, rng).library.board;
    if uniform(rng) < INVENTED {
        let signs = invent(rng);
        let shown = number(&signs, &[], rng);
        return LampReadingTask {
            board: None,
            signs,
            shown,
        };
    }
    on_board(board, rng)
}

/// A number in this board's own language.
fn on_board(board: &Board, rng: &mut ChaCha8Rng) -> LampReadingTask {
    let codes: Vec<u8> = board.codes.iter().map(|c| c.code).collect();
    let signs = board.lamps.signs.clone();
    LampReadingTask {
        board: Some(board.id.clone()),
        shown: number(&signs, &codes, rng),
        signs,
    }
}

/// Judges the two digits read.
pub fn mark(task: &LampReadingTask, read: u8) -> Marked {
    Marked {
        right: read == task.shown,
        shown: task.shown,
        read,
    }
}

/// Counts shown and read numbers digit by digit.
pub fn confusion(answers: impl IntoIterator<Item = (u8, u8)>) -> Confusion {
    let mut table = Confusion::default();
    for (shown, read) in answers {
        for (shown, read) in [(shown / 10, read / 10), (shown % 10, read % 10)] {
            table[usize::from(shown.min(9))][usize::from(read.min(9))] += 1;
        }
    }
    table
}

/// A number that these signs can show and nobody waits too long for: of a list of pictures one that is in
/// it, or one of the board's `codes`; else any but the sheet's examples, so that nothing can be guessed.
fn number(signs: &Signs, codes: &[u8], rng: &mut ChaCha8Rng) -> u8 {
    let free = |n: &u8| !EXAMPLES.contains(n);
    let all: Vec<u8> = match signs {
        Signs::Pictures { .. } if !codes.is_empty() => codes.to_vec(),
        Signs::Pictures { table, blinks, .. } => {
            let drawn = table.iter().chain(blinks);
            drawn.map(|(n, _)| *n).collect()
        }
        Signs::Flashes { .. } => (1..=99)
            .filter(|n| n / 10 + n % 10 <= MOST_FLASHES)
            .filter(free)
            .collect(),
        Signs::Weights { .. } | Signs::Segments | Signs::InTurn { .. } => {
            (1..=99).filter(free).collect()
        }
    };
    one_of(&all, rng).unwrap_or(1)
}

/// Makes up a language that a board could have: what [`Signs::check`] asks of one.
fn invent(rng: &mut ChaCha8Rng) -> Signs {
    let kinds: [fn(&mut ChaCha8Rng) -> Signs; 3] = [weights, pictures, flashes];
    let Some(kind) = one_of(&kinds, rng) else {
        return Signs::Segments;
    };
    (0..DRAWS)
        .map(|_| kind(rng))
        .find(|signs| signs.check(numbers(signs).into_iter()).is_empty())
        .unwrap_or(Signs::Segments)
}

/// Numbers that an invented language has to show.
pub fn numbers(signs: &Signs) -> Vec<u8> {
    match signs {
        Signs::Pictures { table, .. } => table.iter().map(|(n, _)| *n).collect(),
        _ => (0..=USUAL_CODES).collect(),
    }
}

/// Four or five lamps for each digit. Most draws cannot make every digit.
fn weights(rng: &mut ChaCha8Rng) -> Signs {
    let mut place = || {
        let count = between(4, 5, rng);
        let mut lamps: Vec<u8> = (0..count).map(|_| between(1, 8, rng) as u8).collect();
        shuffle(&mut lamps, rng);
        lamps
    };
    Signs::Weights {
        tens: place(),
        units: place(),
    }
}

/// Six to nine lamps and a picture for each of eight numbers.
fn pictures(rng: &mut ChaCha8Rng) -> Signs {
    let lamps = between(6, 9, rng) as u8;
    let all = (1_u32 << lamps) - 1;
    let mut numbers: Vec<u8> = (1..=99).collect();
    shuffle(&mut numbers, rng);
    numbers.truncate(8);
    numbers.sort_unstable();
    let table = numbers
        .into_iter()
        .map(|number| (number, between(1, all, rng) as u16))
        .collect();
    Signs::Pictures {
        lamps,
        table,
        blinks: Vec::new(),
        blink_ms: 0,
    }
}

/// Flashes in tenths of a second and halves of one, slow enough to count.
fn flashes(rng: &mut ChaCha8Rng) -> Signs {
    let mut fifties = |least, most| 50 * between(least, most, rng);
    Signs::Flashes {
        long_ms: fifties(12, 26),
        short_ms: fifties(4, 9),
        gap_ms: fifties(5, 11),
        between_ms: fifties(20, 36),
        pause_ms: fifties(44, 70),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn digits_are_counted_where_they_were_read() {
        let table = confusion([(47, 47), (41, 47), (7, 9)]);
        assert_eq!(table[4][4], 2);
        assert_eq!(table[7][7], 1);
        assert_eq!(table[1][7], 1);
        assert_eq!(table[0][0], 1);
        assert_eq!(table[7][9], 1);
        assert_eq!(table.iter().flatten().sum::<u32>(), 6);
    }

    #[test]
    fn every_kind_of_language_is_made_up() {
        let mut kinds: Vec<&str> = (0..60).map(|seed| invent(&mut draws(seed)).key()).collect();
        kinds.sort_unstable();
        kinds.dedup();
        // Segments stand for a draw that failed.
        assert_eq!(kinds, ["flashes", "pictures", "weights"]);
    }
}
