//! Lamps: two decimal digits on the arc, and a blink within its limits.

use super::io::Lamps;
use crate::units::Span;
use serde::Serialize;

/// Shortest time between two lightings of one lamp, ticks. Three a second is the most that
/// WCAG 2.2, success criterion 2.3.1, allows; a fast turn of the dial must not pass it either.
const RELIGHT_TICKS: u8 = 34;

/// Keeps every lamp under the flash limit, whatever is shown: a lamp that has just been lit may
/// go out at once but waits before it lights again.
#[derive(Clone, Debug, Default, Serialize)]
pub(super) struct Governor {
    shown: u16,
    /// Ticks for which each lamp must not light anew.
    wait: [u8; 9],
}

impl Governor {
    /// One tick: lamps that may be lit out of those wanted.
    pub fn step(&mut self, wanted: Lamps) -> Lamps {
        let wanted = u16::from(wanted.arc) | (u16::from(wanted.lock) << 8);
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
            arc: shown as u8,
            lock: shown & 0x100 != 0,
        }
    }
}

/// Two decimal digits, each in binary: tens in the upper four bits, units in the lower. Larger
/// numbers show as 99.
pub(super) const fn digits(number: u32) -> u8 {
    let shown = if number > 99 { 99 } else { number as u8 };
    ((shown / 10) << 4) | (shown % 10)
}

/// Whether a blinking lamp is lit, `ticks` after the blinking began.
pub(super) fn blink(ticks: u32, period_ms: u32) -> bool {
    let period = Span::from_ms(u64::from(period_ms)).0.max(2);
    u64::from(ticks) % period < period / 2
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tens_stand_left_and_units_right() {
        assert_eq!(digits(47), 0b0100_0111);
        assert_eq!(digits(5), 0b0000_0101);
        assert_eq!(digits(300), 0b1001_1001);
    }
}
