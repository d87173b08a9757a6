//! Which buttons are down, and which of them stay down without a hand.

use detent_simulation::interface::Button;
use detent_training::bench::Action;

const BUTTONS: usize = Button::ALL.len();

/// Hands on the buttons. A button that is kept down stays so until it is pressed again, so that both
/// hands are free for the plug, the lid or another button.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct HeldButtons {
    down: [bool; BUTTONS],
    kept: [bool; BUTTONS],
    /// The next button pressed stays down.
    pub keep_next: bool,
}

impl HeldButtons {
    /// A hand or a key pushes a button, to keep it down or not; what that does on the bench.
    pub fn push(&mut self, button: Button, keep: bool) -> Option<Action> {
        let keep = std::mem::take(&mut self.keep_next) || keep;
        let (down, kept) = (
            &mut self.down[button.index()],
            &mut self.kept[button.index()],
        );
        if *kept {
            (*down, *kept) = (false, false);
            return Some(Action::Up(button));
        }
        let new = !*down;
        (*down, *kept) = (true, keep);
        new.then_some(Action::Down(button))
    }

    /// The hand or key goes; a button that is kept down stays.
    pub fn release(&mut self, button: Button) -> Option<Action> {
        let down = &mut self.down[button.index()];
        if !*down || self.kept[button.index()] {
            return None;
        }
        *down = false;
        Some(Action::Up(button))
    }

    /// Down now, by [`Button::index`].
    pub fn down(&self) -> [bool; BUTTONS] {
        self.down
    }

    /// Buttons kept down.
    pub fn kept(&self) -> impl Iterator<Item = Button> {
        let kept = self.kept;
        (Button::ALL.iter().copied()).filter(move |button| kept[button.index()])
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_press_is_down_and_up() {
        let mut held = HeldButtons::default();
        assert_eq!(
            held.push(Button::Start, false),
            Some(Action::Down(Button::Start))
        );
        assert_eq!(held.push(Button::Start, false), None, "a key repeats");
        assert_eq!(held.release(Button::Start), Some(Action::Up(Button::Start)));
        assert_eq!(held.release(Button::Start), None);
    }

    #[test]
    fn a_kept_button_stays_until_it_is_pressed_again() {
        let mut held = HeldButtons::default();
        held.push(Button::More, true);
        assert_eq!(held.release(Button::More), None);
        held.push(Button::Less, false);
        held.release(Button::Less);
        assert!(held.down()[Button::More.index()] && !held.down()[Button::Less.index()]);
        assert_eq!(held.kept().collect::<Vec<_>>(), [Button::More]);
        assert_eq!(
            held.push(Button::More, false),
            Some(Action::Up(Button::More))
        );
        assert_eq!(held.release(Button::More), None);
        assert_eq!(held, HeldButtons::default());
    }

    #[test]
    fn the_switch_keeps_one_button() {
        let mut held = HeldButtons {
            keep_next: true,
            ..HeldButtons::default()
        };
        held.push(Button::Start, false);
        held.push(Button::Stop, false);
        assert_eq!(held.kept().collect::<Vec<_>>(), [Button::Start]);
    }
}
