//! The limit on how fast a lamp may flash, and the blink within it.

use super::io::Lamps;
use crate::units::Span;
use serde::Serialize;

/// Shortest time between two lightings of one lamp, ticks. Three a second is the most that
/// WCAG 2.2, success criterion 2.3.1, allows; a fast turn of the dial must not pass it either.
const RELIGHT_TICKS: u8 = 34;

/// Lamps that show numbers, and the lock lamp.
const LAMPS: usize = 17;
const LOCK: u32 = 1 << 16;

/// Keeps every lamp under the flash limit, whatever is shown: a lamp that has just been lit may
/// go out at once but waits before it lights again.
#[derive(Clone, Debug, Default, Serialize)]
pub(super) struct Governor {
    shown: u32,
    /// Ticks for which each lamp must not light anew.
    wait: [u8; LAMPS],
}

impl Governor {
    /// One tick: lamps that may be lit out of those wanted.
    pub fn step(&mut self, wanted: Lamps) -> Lamps {
        let lock = if wanted.lock { LOCK } else { 0 };
        let wanted = u32::from(wanted.code) | lock;
        let mut shown = 0;
        for (index, wait) in self.wait.iter_mut().enumerate() {
            let bit = 1 << index;
            *wait = wait.saturating_sub(1);
            if wanted & bit == 0 {
                continue;
            }
            if self.shown & bit != 0 {
                shown |= bit;
            } else if *wait == 0 {
                shown |= bit;
                *wait = RELIGHT_TICKS;
            }
        }
        self.shown = shown;
        Lamps {
            code: shown as u16,
            lock: shown & LOCK != 0,
        }
    }
}

/// Whether a blinking lamp is lit, `ticks` after the blinking began.
pub(super) fn blink(ticks: u32, period_ms: u32) -> bool {
    let period = Span::from_ms(u64::from(period_ms)).0.max(2);
    u64::from(ticks) % period < period / 2
}
