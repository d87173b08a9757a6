//! The dial: real detents, and contacts that skip or double one when it is turned fast or worn.

use crate::interface::Direction;
use crate::units::Span;
use crate::units::uniform;
use rand::Rng;
use serde::{Deserialize, Serialize};

/// Mechanical state of the dial.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Dial {
    /// Detents in one turn.
    pub detents: u8,
    /// Where the pointer stands, in detents clockwise from the index.
    pub position: u8,
}

/// What the contacts reported for one detent.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Report {
    /// Steps reported, positive to the right: 1 when all is well, 0 when skipped, 2 when doubled.
    pub steps: i8,
    /// The pointer came to the index contact.
    pub index: bool,
}

/// Chance that one detent is skipped, and that it is doubled, when it follows the last one after
/// `gap`. Invented; shaped so that a sound dial turned at a human pace never errs.
pub fn error_chances(wear: f64, gap: Span) -> (f64, f64) {
    let wear = wear.clamp(0.0, 1.0);
    let haste = (1.0 - gap.seconds() / 0.140).clamp(0.0, 1.0);
    let skip = (0.02 + 0.5 * wear) * haste * haste + 0.03 * wear;
    (skip, 0.5 * skip)
}

/// Chance that `detents` in a row are all reported right.
pub fn clean_chance(wear: f64, gap: Span, detents: u32) -> f64 {
    let (skip, double) = error_chances(wear, gap);
    let mut chance = 1.0;
    for _ in 0..detents {
        chance *= 1.0 - skip - double;
    }
    chance
}

impl Default for Dial {
    fn default() -> Dial {
        Dial {
            detents: 24,
            position: 0,
        }
    }
}

impl Dial {
    /// Turns by one detent, `gap` after the last one.
    pub fn detent(&mut self, way: Direction, gap: Span, wear: f64, rng: &mut impl Rng) -> Report {
        let (skip, double) = error_chances(wear, gap);
        let drawn = uniform(rng);
        let count = if drawn < skip {
            0
        } else if drawn < skip + double {
            2
        } else {
            1
        };
        let turn = match way {
            Direction::Left => self.detents - 1,
            Direction::Right => 1,
        };
        self.position = (self.position + turn) % self.detents;
        Report {
            steps: way.sign() * count,
            index: self.position == 0,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use rand::SeedableRng;
    use rand_chacha::ChaCha8Rng;

    #[test]
    fn a_sound_dial_at_a_human_pace_reports_every_detent() {
        let mut rng = ChaCha8Rng::seed_from_u64(1);
        let mut dial = Dial::default();
        for _ in 0..10_000 {
            assert_eq!(
                dial.detent(Direction::Right, Span::from_ms(180), 0.0, &mut rng)
                    .steps,
                1
            );
        }
    }

    #[test]
    fn a_worn_dial_turned_fast_errs_as_often_as_its_model_says() {
        let mut rng = ChaCha8Rng::seed_from_u64(2);
        let gap = Span::from_ms(70);
        let mut dial = Dial::default();
        let wrong = (0..20_000)
            .filter(|_| dial.detent(Direction::Right, gap, 0.8, &mut rng).steps != 1)
            .count();
        let (skip, double) = error_chances(0.8, gap);
        assert!((wrong as f64 / 20_000.0 - skip - double).abs() < 0.01);
    }

    #[test]
    fn the_index_is_reported_once_a_turn() {
        let mut rng = ChaCha8Rng::seed_from_u64(3);
        let mut dial = Dial::default();
        let hits = (0..48)
            .filter(|_| {
                dial.detent(Direction::Right, Span::from_ms(200), 0.0, &mut rng)
                    .index
            })
            .count();
        assert_eq!(hits, 2);
    }
}
