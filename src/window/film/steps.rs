//! The deeds of an attempt as somebody watches them: clicks of the knob one after the other are one turn, a button that
//! goes down and up is one press.

use detent_content::DeedWords;
use detent_simulation::interface::{Button, Direction};
use detent_simulation::units::{Span, Time};
use detent_training::bench::Action;
use detent_training::record::Timed;
use std::ops::Range;

/// Longest time between two clicks of one turn.
const ONE_TURN: Span = Span::from_s(2);

/// Some deeds that are watched as one.
#[derive(Clone, Debug, PartialEq)]
pub struct FilmStep {
    /// The deeds, counted from 0.
    pub deeds: Range<usize>,
    /// When it begins.
    pub at: Time,
    what: StepKind,
}

#[derive(Clone, Debug, PartialEq)]
enum StepKind {
    Turn(Direction),
    Press(Button, Span),
    Deed(Action),
}

impl FilmStep {
    /// It in words.
    pub fn words(&self, words: &DeedWords<'_>) -> String {
        match &self.what {
            StepKind::Turn(way) => words.turned(*way, self.deeds.len()),
            StepKind::Press(button, held) => words.pressed(*button, *held),
            StepKind::Deed(action) => words.deed(action),
        }
    }
}

/// Puts deeds together.
pub fn steps_of(deeds: &[Timed]) -> Vec<FilmStep> {
    let mut steps = Vec::new();
    let mut next = 0;
    while let Some(Timed { at, action }) = deeds.get(next) {
        let rest = &deeds[next..];
        let (count, what) = match action {
            Action::Detent(way) => (clicks(rest), StepKind::Turn(*way)),
            Action::Down(button) => match rest.get(1) {
                Some(Timed {
                    at: let_go,
                    action: Action::Up(same),
                }) if same == button => (2, StepKind::Press(*button, let_go.since(*at))),
                Some(_) | None => (1, StepKind::Deed(action.clone())),
            },
            action => (1, StepKind::Deed(action.clone())),
        };
        steps.push(FilmStep {
            deeds: next..next + count,
            at: *at,
            what,
        });
        next += count;
    }
    steps
}

/// So many of these deeds are clicks the same way as the first, none of them long after the one before.
fn clicks(deeds: &[Timed]) -> usize {
    let pairs = deeds.windows(2);
    let joined = pairs.take_while(|pair| {
        pair[1].action == pair[0].action && pair[1].at.since(pair[0].at) <= ONE_TURN
    });
    1 + joined.count()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn clicks_of_one_turn_and_a_press_are_one_step_each() {
        let deeds = |list: &[(u64, Action)]| -> Vec<Timed> {
            let timed = |(at, action): &(u64, Action)| Timed {
                at: Time(*at),
                action: action.clone(),
            };
            list.iter().map(timed).collect()
        };
        let (left, right) = (
            Action::Detent(Direction::Left),
            Action::Detent(Direction::Right),
        );
        let (down, up) = (Action::Down(Button::Start), Action::Up(Button::Start));
        let ranges = |list: &[(u64, Action)]| -> Vec<Range<usize>> {
            let steps = steps_of(&deeds(list));
            steps.into_iter().map(|step| step.deeds).collect()
        };
        assert!(ranges(&[]).is_empty());
        let gesture = [
            (0, Action::Plug),
            (500, left.clone()),
            (520, left.clone()),
            (540, left.clone()),
            (560, right.clone()),
            (600, down.clone()),
            (780, up.clone()),
            // After a rest it is another turn.
            (900, right.clone()),
            (1200, right),
        ];
        assert_eq!(ranges(&gesture), [0..1, 1..4, 4..5, 5..7, 7..8, 8..9]);
        // A button kept down while something else is done.
        let kept = [(0, down), (10, left), (20, up)];
        assert_eq!(ranges(&kept), [0..1, 1..2, 2..3]);
        let press = &steps_of(&deeds(&gesture))[3];
        assert_eq!(press.what, StepKind::Press(Button::Start, Span(180)));
    }
}
