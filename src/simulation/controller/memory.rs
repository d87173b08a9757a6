//! What the board keeps without power.

use super::monitor::Monitor;
use serde::{Deserialize, Serialize};

/// Stored codes that a board keeps if its file does not say how many.
pub const USUAL_CODES: u8 = 4;

/// The non-volatile memory.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Memory {
    /// Stored codes, newest first.
    pub codes: Vec<StoredCode>,
    /// Programs begun so far.
    pub cycles: u32,
    /// What recalibration learned, or none before the first.
    pub calibration: Option<Calibration>,
    /// The service program is damaged: it answers no gesture and keeps no trace of one.
    #[serde(default)]
    pub service_lost: bool,
    /// The fault hold, on a board that keeps it.
    #[serde(default)]
    pub hold: Option<Monitor>,
}

/// One stored fault.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StoredCode {
    /// Two digits.
    pub code: u8,
    /// Programs begun since.
    pub cycles_ago: u32,
}

/// What recalibration learns.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Calibration {
    /// Pressure input with no water, V.
    pub zero_v: f64,
    /// Time for one degree of the clutch actuator's cam, ms.
    pub cam_ms_per_deg: f64,
    /// Time from the lower to the upper test speed in the short spin, ms.
    pub inertia_ms: u32,
}

impl Memory {
    /// Stores a code as the newest of at most `most`. The same code twice running is kept once.
    pub fn store(&mut self, code: u8, most: u8) {
        if self.codes.first().is_some_and(|c| c.code == code) {
            self.codes.remove(0);
        }
        self.codes.insert(
            0,
            StoredCode {
                code,
                cycles_ago: 0,
            },
        );
        self.codes.truncate(usize::from(most));
    }

    /// Counts a program and makes every stored code one cycle older.
    pub fn begin_cycle(&mut self) {
        self.cycles += 1;
        for stored in &mut self.codes {
            stored.cycles_ago = stored.cycles_ago.saturating_add(1);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_list_is_newest_first_short_and_without_repeats() {
        let mut memory = Memory::default();
        for code in [11, 11, 22, 33, 44, 55, 66, 77, 77] {
            memory.store(code, 4);
        }
        let codes: Vec<u8> = memory.codes.iter().map(|c| c.code).collect();
        assert_eq!(codes, [77, 66, 55, 44]);
    }

    #[test]
    fn a_code_ages_with_each_program_and_is_fresh_when_it_comes_again() {
        let mut memory = Memory::default();
        memory.store(21, USUAL_CODES);
        memory.begin_cycle();
        memory.begin_cycle();
        assert_eq!(memory.codes[0].cycles_ago, 2);
        memory.store(21, USUAL_CODES);
        assert_eq!(
            memory.codes,
            [StoredCode {
                code: 21,
                cycles_ago: 0
            }]
        );
    }
}
