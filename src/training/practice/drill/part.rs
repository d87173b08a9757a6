//! Choosing the part: the cause is proved; which number at the counter ends it?

use super::{SuppliedBoard, SuppliedBoardId, draws, one_of, shuffle, supplied_board};
use crate::bench::{Condition, Part, cure, current};
use detent_simulation::interface::Component;
use detent_simulation::plant::FailureMode;

/// Numbers to choose from.
const CHOICES: usize = 5;

/// A proved cause and part numbers.
#[derive(Clone, Debug, PartialEq)]
pub struct PartChoiceTask {
    /// Board and supply.
    pub place: SuppliedBoardId,
    /// The failure mode that is proved, by its id.
    pub cause: String,
    /// The component that failed.
    pub component: Component,
    /// Parts to choose from, as the counter's cards show them.
    pub options: Vec<Part>,
    /// For each of them why it is not the one; none for the right one.
    pub verdicts: Vec<Option<Wrong>>,
}

/// Why a part is not the one to order.
#[derive(Clone, Debug, PartialEq)]
pub enum Wrong {
    /// It is of another component.
    OtherComponent(Component),
    /// It is for other machines.
    OtherBoard,
    /// The kit mends something else.
    OtherFault,
    /// A later number has taken its place.
    Superseded(String),
    /// Sold as it was, it may bring a fault of its own: with this chance, 0 to 1.
    NotNew(Condition, f64),
}

impl Wrong {
    /// Short name, for text keys.
    pub fn key(&self) -> &'static str {
        match self {
            Wrong::OtherComponent(_) => "component",
            Wrong::OtherBoard => "board",
            Wrong::OtherFault => "fault",
            Wrong::Superseded(_) => "superseded",
            Wrong::NotNew(..) => "not-new",
        }
    }
}

/// An answer, judged.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Marked {
    /// It is the one to order.
    pub right: bool,
    /// The number that is, by its place among the options.
    pub should: usize,
    /// The number that was chosen.
    pub chosen: usize,
}

/// Draws a task.
pub fn ask(supplied_boards: &[SuppliedBoard<'_>], seed: u64) -> PartChoiceTask {
    let rng = &mut draws(seed);
    let supplied_board = supplied_board(supplied_boards, rng);
    let (library, board) = (
        &supplied_board.library,
        supplied_board.library.board.id.as_str(),
    );
    // A component fails in many ways; each comes up as often as the others.
    let curable = |mode: &&FailureMode| cure(library.parts, board, mode).is_some();
    let mut components: Vec<Component> = library
        .modes
        .iter()
        .filter(curable)
        .map(|m| m.component)
        .collect();
    components.sort_unstable();
    components.dedup();
    let component = one_of(&components, rng);
    let modes: Vec<&FailureMode> = (library.modes.iter())
        .filter(curable)
        .filter(|mode| Some(mode.component) == component)
        .collect();
    let mode = one_of(&modes, rng).expect("the counter cures something");
    let right = cure(library.parts, board, mode).expect("only curable ones are drawn");

    // What is wrong with the others is told from the counter's own rules; a whole part that would also end
    // it, where a kit is enough, is left out: it is no clear mistake.
    let mut near = Vec::new();
    let mut far = Vec::new();
    for part in library.parts {
        match verdict(supplied_board, mode, right, part) {
            Some(Wrong::OtherComponent(_)) => far.push(part),
            Some(_) => near.push(part),
            None => {}
        }
    }
    let suspects = library
        .board
        .sheet
        .iter()
        .filter(|s| s.suspects.contains(&mode.component));
    let beside: Vec<Component> = suspects.flat_map(|s| s.suspects.iter().copied()).collect();
    shuffle(&mut near, rng);
    shuffle(&mut far, rng);
    // The board and what stands beside the cause on the sheet come first: those are bought by mistake.
    far.sort_by_key(|part| !beside.contains(&part.component));
    near.truncate(CHOICES - 2);
    let mut options: Vec<Part> = std::iter::once(right)
        .chain(near.into_iter().chain(far))
        .take(CHOICES)
        .cloned()
        .collect();
    shuffle(&mut options, rng);
    let verdicts = options
        .iter()
        .map(|part| verdict(supplied_board, mode, right, part))
        .collect();
    PartChoiceTask {
        place: supplied_board.place(),
        cause: mode.id.clone(),
        component: mode.component,
        options,
        verdicts,
    }
}

/// Judges the choice, by its place among the options.
pub fn mark(task: &PartChoiceTask, chosen: usize) -> Marked {
    let should = task
        .verdicts
        .iter()
        .position(Option::is_none)
        .unwrap_or_default();
    Marked {
        right: chosen == should,
        should,
        chosen,
    }
}

/// Why `part` is not the one to order for this cause; none if nothing speaks against it.
fn verdict(
    supplied_board: &SuppliedBoard<'_>,
    mode: &FailureMode,
    right: &Part,
    part: &Part,
) -> Option<Wrong> {
    let library = &supplied_board.library;
    if part.number == right.number {
        return None;
    }
    if part.component != mode.component {
        return Some(Wrong::OtherComponent(part.component));
    }
    if !part.fits(&library.board.id) {
        return Some(Wrong::OtherBoard);
    }
    if let Some(now) = current(library.parts, &part.number).filter(|now| now.number != part.number)
    {
        return Some(Wrong::Superseded(now.number.clone()));
    }
    if !part.ends(mode) {
        return Some(Wrong::OtherFault);
    }
    let chance = library.rates.bad(part.condition);
    (part.condition != Condition::New).then_some(Wrong::NotNew(part.condition, chance))
}
