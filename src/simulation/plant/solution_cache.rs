//! Solutions of the mains network that were met before. A wash strokes to and fro through the same
//! few speeds thousands of times; the solution is a pure function of the switching and the
//! parameters, so looking it up gives what solving would, to the bit.

use super::mains::Switching;
use super::solution::Solution;
use crate::interface::Relay;

/// Places: a motor speed each, for either direction of drive.
const PLACES: usize = 1024;

/// One solution for each place; a newer one takes the place of an older.
#[derive(Clone, Debug, Default)]
pub struct SolutionCache {
    places: Vec<Option<(Switching, Solution)>>,
}

impl SolutionCache {
    /// Forgets everything: the parameters changed.
    pub fn clear(&mut self) {
        self.places.fill(None);
    }

    /// The solution for exactly this switching, if it is still there.
    pub fn get(&self, switching: &Switching) -> Option<Solution> {
        match self.places.get(place(switching)) {
            Some(Some((known, solution))) if known == switching => Some(*solution),
            _ => None,
        }
    }

    /// Keeps a solution.
    pub fn keep(&mut self, switching: Switching, solution: Solution) {
        if self.places.is_empty() {
            self.places.resize(PLACES, None);
        }
        self.places[place(&switching)] = Some((switching, solution));
    }
}

fn place(switching: &Switching) -> usize {
    let speed = (switching.speed_step & 0x1ff) as usize;
    let way = usize::from(switching.relays.has(Relay::MotorB));
    (speed | way << 9) % PLACES
}
