//! A contact counts only after it has rested in its new state.

use serde::Serialize;

/// One contact.
#[derive(Clone, Copy, Debug, Default, Serialize)]
pub(super) struct Debounce {
    closed: bool,
    unlike: u16,
}

impl Debounce {
    /// A contact already resting in `closed`.
    pub fn resting(closed: bool) -> Debounce {
        Debounce { closed, unlike: 0 }
    }

    /// One tick. Answers the new state in the tick in which it is believed.
    pub fn step(&mut self, raw: bool, ticks: u16) -> Option<bool> {
        if raw == self.closed {
            self.unlike = 0;
        } else {
            self.unlike += 1;
            if self.unlike >= ticks {
                self.closed = raw;
                self.unlike = 0;
                return Some(raw);
            }
        }
        None
    }

    /// The believed state.
    pub fn closed(&self) -> bool {
        self.closed
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bounce_shorter_than_the_rest_time_is_not_seen() {
        let mut contact = Debounce::default();
        for raw in [true, true, false, true, true, false] {
            assert_eq!(contact.step(raw, 3), None);
        }
        assert_eq!(contact.step(true, 3), None);
        assert_eq!(contact.step(true, 3), None);
        assert_eq!(contact.step(true, 3), Some(true));
        assert!(contact.closed());
    }
}
