//! The language of lamps: how a board shows a number, and what it shows in each of its modes.

use super::lamps::blink;
use super::segments::{DIGITS, segments_of};
use crate::units::Span;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What the lamps show and when.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LampRules {
    /// How a number from 0 to 99 is shown.
    pub signs: Signs,
    /// Whether there is a lock lamp beside them: lit while the lock is proven, blinking in a fault hold.
    pub lock_lamp: bool,
    /// One full blink, lit and dark, ms. From 1.4 to 2.8 blinks a second (IEC 60073, from a secondary source).
    #[schemars(range(min = 358, max = 714))]
    pub blink_ms: u32,
    /// Time for which each of two pictures in turn is shown, ms. No lamp flashes more than three times a second (WCAG
    /// 2.2, success criterion 2.3.1).
    #[schemars(range(min = 167))]
    pub turns_ms: u32,
    /// While the control waits for Start. Its number is the length of the chosen program, min.
    pub idle: SignReading,
    /// While a program runs. Its number is the time left, min.
    pub program: SignReading,
    /// While the control has stopped with a fault.
    pub hold: SignReading,
    /// While service mode waits. Its number is the chosen position.
    pub service: SignReading,
    /// While the test of a load runs. Its number is the time left, s.
    pub test: SignReading,
    /// While recalibration runs. Its number is the stage, from 1.
    pub recalibration: SignReading,
    /// How the lamps that show numbers stand on the console. Only for `Pictures` and `InTurn`; the other signs have
    /// places of their own.
    #[serde(default, skip_serializing_if = "LampPlacement::is_usual")]
    #[schemars(extend("default" = "Usual"))]
    pub placement: LampPlacement,
}

/// How the lamps that show numbers stand on the console. The first lamp is the highest bit.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub enum LampPlacement {
    /// As is usual for this kind of signs.
    #[default]
    Usual,
    /// Side by side, the first at the left.
    Row,
    /// One below the other, the first at the top.
    Column,
    /// Row by row from the top, each from the left.
    Grid {
        /// Lamps in a full row, at most as many as there are lamps.
        #[schemars(range(min = 1))]
        columns: u8,
    },
    /// Where each stands in the field that is free for lamps: hundredths of its width from the left, and of its
    /// height from the top, 0 to 100. Keep them 15 apart, or 25 one above the other. Each has its number, from 1 in
    /// the order given, printed beside it.
    Free(Vec<(u8, u8)>),
}

impl LampPlacement {
    /// The file says nothing of it.
    pub fn is_usual(&self) -> bool {
        *self == LampPlacement::Usual
    }

    /// Where each of `lamps` stands, the first first: column and row of a row, a column or a grid, hundredths of
    /// the free field where they stand freely; none where the kind of signs says it.
    pub fn places(&self, lamps: u8) -> Option<Vec<(u8, u8)>> {
        let by = |columns: u8| (0..lamps).map(|n| (n % columns, n / columns)).collect();
        match self {
            LampPlacement::Usual => None,
            LampPlacement::Row => Some(by(lamps.max(1))),
            LampPlacement::Column => Some(by(1)),
            LampPlacement::Grid { columns } => Some(by((*columns).max(1))),
            LampPlacement::Free(places) => Some(places.clone()),
        }
    }

    /// How many columns and rows such places take, one of each at least.
    pub fn columns_and_rows(places: &[(u8, u8)]) -> (u8, u8) {
        let most = |of: fn(&(u8, u8)) -> u8| places.iter().map(of).max();
        let count = |most: Option<u8>| most.map_or(1, |last| last.saturating_add(1));
        (count(most(|place| place.0)), count(most(|place| place.1)))
    }
}

/// Lamps that together mean something: some lit, some blinking, the others dark.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Sign {
    /// Lamps that are lit, a bit each: lamp 0 is 1, lamp 1 is 2, lamp 2 is 4.
    #[serde(default)]
    pub lit: u16,
    /// Lamps that blink, a bit each; none of them is lit.
    #[serde(default)]
    pub blinks: u16,
}

impl Sign {
    /// Lamps lit at `at` since the sign began to be shown, blinking with this period, ms.
    pub fn at(self, at: Span, blink_ms: u32) -> u16 {
        let on = self.blinks != 0 && blink(at.0 as u32, blink_ms);
        self.lit | if on { self.blinks } else { 0 }
    }
}

/// How a number from 0 to 99 is shown, on 1 to 16 lamps. Lamps are numbered from the right: lamp 0 is bit 0, which
/// counts 1 in a picture, lamp 1 counts 2, lamp 2 counts 4.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub enum Signs {
    /// All at once: each digit is the sum of the weights of its lit lamps. Weights are written from
    /// left to right, the tens' lamps left of the units'.
    Weights {
        /// Weights of the lamps for the tens, which add up to each of 0 to 9.
        tens: Vec<u8>,
        /// Weights of the lamps for the units, which add up to each of 0 to 9.
        units: Vec<u8>,
    },
    /// Two digits of seven segments: the units in bits 0 to 6, the tens in bits 7 to 13.
    Segments,
    /// A picture for each number, as drawn in the service sheet; other numbers stay dark. Every code, and every place
    /// in the list of stored codes, needs a picture of its own.
    Pictures {
        /// Number of lamps.
        #[schemars(range(min = 1, max = 16))]
        lamps: u8,
        /// Number and picture.
        table: Vec<(u8, u16)>,
        /// Number and those lamps that blink in its picture; they are not lit in `table`.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        #[schemars(extend("default" = []))]
        blinks: Vec<(u8, u16)>,
        /// One full blink of these, lit and dark, ms. From 358 to 714 where anything blinks.
        #[serde(default, skip_serializing_if = "is_zero")]
        #[schemars(extend("default" = 0))]
        blink_ms: u32,
    },
    /// One lamp, one flash after another: long ones count the tens, short ones the units; then a pause, and again.
    /// Not more than three flashes a second.
    Flashes {
        /// A long flash, ms. At least twice as long as a short one.
        long_ms: u32,
        /// A short flash, ms.
        short_ms: u32,
        /// Dark between two flashes, ms.
        gap_ms: u32,
        /// Dark between tens and units, ms. At least twice `gap_ms`.
        between_ms: u32,
        /// Dark before it all begins again, ms. Longer than `between_ms`.
        pause_ms: u32,
    },
    /// One digit after the other on the same lamps: the tens, then the units; then a pause, and again.
    InTurn {
        /// Number of lamps.
        #[schemars(range(min = 1, max = 16))]
        lamps: u8,
        /// What stands for each digit, 0 to 9: ten signs, each its own and none dark.
        #[schemars(length(equal = 10))]
        digits: Vec<Sign>,
        /// Time for which each digit is shown, ms. At least two blinks.
        digit_ms: u32,
        /// Dark between tens and units, ms. At least one blink.
        gap_ms: u32,
        /// Dark before it all begins again, ms. At least twice `gap_ms`.
        pause_ms: u32,
        /// One full blink, lit and dark, ms.
        #[schemars(range(min = 358, max = 714))]
        blink_ms: u32,
    },
}

fn is_zero(value: &u32) -> bool {
    *value == 0
}

/// What is shown in a mode.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub enum SignReading {
    /// Nothing.
    Dark,
    /// Every lamp.
    All,
    /// The mode's number.
    Number,
    /// The mode's number and a picture in turn. Not with signs that take time to read.
    NumberAnd(u16),
    /// The mode's number as so many lamps lit from the left.
    Bar,
    /// Every lamp, blinking.
    Blink,
    /// A picture.
    Still(u16),
    /// Two pictures in turn.
    Turns(u16, u16),
    /// Two characters on seven segments, the left one first; a blank is dark.
    Letters(char, char),
}

/// What the lamps are to show at a moment; blinking and flashing follow from the time since it began.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
pub(super) enum Picture {
    #[default]
    Dark,
    All,
    Blink,
    Number(u8),
    NumberAnd(u8, u16),
    Turns(u16, u16),
}

impl SignReading {
    /// The picture of a mode whose number is `number`, of at most `of`.
    pub(super) fn of(self, number: u32, of: u32, signs: &Signs) -> Picture {
        let still = |picture| Picture::Turns(picture, picture);
        match self {
            SignReading::Dark => Picture::Dark,
            SignReading::All => Picture::All,
            SignReading::Blink => Picture::Blink,
            SignReading::Number => Picture::Number(number.min(99) as u8),
            SignReading::NumberAnd(picture) => Picture::NumberAnd(number.min(99) as u8, picture),
            SignReading::Bar => {
                let lamps = u32::from(signs.lamps());
                let lit = (number * lamps / of.max(1)).min(lamps);
                still((signs.all() >> (lamps - lit)) << (lamps - lit))
            }
            SignReading::Still(picture) => still(picture),
            SignReading::Turns(a, b) => Picture::Turns(a, b),
            SignReading::Letters(left, right) => still(letters(left, right)),
        }
    }
}

/// Lamps lit for two characters on seven segments. What these cannot show is dark: a board's check refuses it.
pub fn letters(left: char, right: char) -> u16 {
    let [left, right] = [left, right].map(|character| segments_of(character).unwrap_or_default());
    left << 7 | right
}

impl Signs {
    /// Number of lamps.
    pub fn lamps(&self) -> u8 {
        match self {
            Signs::Weights { tens, units } => (tens.len() + units.len()) as u8,
            Signs::Segments => 14,
            Signs::Pictures { lamps, .. } | Signs::InTurn { lamps, .. } => *lamps,
            Signs::Flashes { .. } => 1,
        }
    }

    /// Short key of the kind.
    pub fn key(&self) -> &'static str {
        match self {
            Signs::Weights { .. } => "weights",
            Signs::Segments => "segments",
            Signs::Pictures { .. } => "pictures",
            Signs::Flashes { .. } => "flashes",
            Signs::InTurn { .. } => "in-turn",
        }
    }

    /// A number is read over time, not at a glance.
    pub fn take_time(&self) -> bool {
        match self {
            Signs::Weights { .. } | Signs::Segments => false,
            Signs::Pictures { blinks, .. } => !blinks.is_empty(),
            Signs::Flashes { .. } | Signs::InTurn { .. } => true,
        }
    }

    /// Time after which a number begins anew; none where it does not change.
    pub fn period(&self, number: u8) -> Option<Span> {
        match self {
            Signs::Weights { .. } | Signs::Segments => None,
            Signs::Pictures { blink_ms, .. } => {
                let blinks = self.sign(number).is_some_and(|sign| sign.blinks != 0);
                blinks.then(|| Span::from_ms(u64::from(*blink_ms)))
            }
            Signs::Flashes { .. } => {
                let whole = Span(self.flashes(number).map(|(_, span)| span.0).sum());
                (whole != Span::ZERO).then_some(whole)
            }
            Signs::InTurn {
                digit_ms,
                gap_ms,
                pause_ms,
                ..
            } => {
                let ms = 2 * u64::from(*digit_ms) + u64::from(*gap_ms) + u64::from(*pause_ms);
                Some(Span::from_ms(ms))
            }
        }
    }

    /// The lamps that stand for a whole number, of a list of pictures that has it.
    pub fn sign(&self, number: u8) -> Option<Sign> {
        let Signs::Pictures { table, blinks, .. } = self else {
            return None;
        };
        let of = |list: &[(u8, u16)]| list.iter().find(|(n, _)| *n == number).map(|(_, l)| *l);
        let (lit, blinks) = (of(table), of(blinks));
        (lit.is_some() || blinks.is_some()).then_some(Sign {
            lit: lit.unwrap_or_default(),
            blinks: blinks.unwrap_or_default(),
        })
    }

    /// Every lamp lit.
    pub fn all(&self) -> u16 {
        ((1_u32 << self.lamps().min(16)) - 1) as u16
    }

    /// Lamps lit for `number` at `at` since it began to be shown.
    pub fn lit(&self, number: u8, at: Span) -> u16 {
        let (tens_of, units_of) = (number.min(99) / 10, number.min(99) % 10);
        match self {
            Signs::Weights { tens, units } => {
                weighed(tens, tens_of) << units.len() | weighed(units, units_of)
            }
            Signs::Segments => DIGITS[usize::from(tens_of)] << 7 | DIGITS[usize::from(units_of)],
            Signs::Pictures { blink_ms, .. } => {
                self.sign(number).map_or(0, |sign| sign.at(at, *blink_ms))
            }
            Signs::InTurn {
                digits,
                digit_ms,
                gap_ms,
                blink_ms,
                ..
            } => {
                let (shown, dark) = (u64::from(*digit_ms), u64::from(*gap_ms));
                let (shown, dark) = (Span::from_ms(shown), Span::from_ms(dark));
                let Some(whole) = self.period(number).filter(|whole| *whole != Span::ZERO) else {
                    return 0;
                };
                let at = Span(at.0 % whole.0);
                let units_from = shown.0 + dark.0;
                let (digit, since) = if at < shown {
                    (tens_of, at)
                } else if (units_from..units_from + shown.0).contains(&at.0) {
                    (units_of, Span(at.0 - units_from))
                } else {
                    return 0;
                };
                (digits.get(usize::from(digit))).map_or(0, |sign| sign.at(since, *blink_ms))
            }
            Signs::Flashes { .. } => {
                let Some(whole) = self.period(number) else {
                    return 0;
                };
                let mut left = at.0 % whole.0;
                for (on, span) in self.flashes(number) {
                    if left < span.0 {
                        return u16::from(on);
                    }
                    left -= span.0;
                }
                0
            }
        }
    }

    /// The digit that these segments draw, bit 0 to 6; none where they draw no digit, or for other signs.
    pub fn digit(&self, lit: u16) -> Option<u8> {
        match self {
            Signs::Segments => DIGITS
                .iter()
                .position(|drawn| *drawn == lit)
                .map(|digit| digit as u8),
            Signs::Weights { .. }
            | Signs::Pictures { .. }
            | Signs::Flashes { .. }
            | Signs::InTurn { .. } => None,
        }
    }

    /// The flashes of a number, lit or dark and how long; nothing for other signs.
    pub fn flashes(&self, number: u8) -> impl Iterator<Item = (bool, Span)> {
        let (tens, units) = (
            u32::from(number.min(99) / 10),
            u32::from(number.min(99) % 10),
        );
        let (long, short, gap, between, pause) = match *self {
            Signs::Flashes {
                long_ms,
                short_ms,
                gap_ms,
                between_ms,
                pause_ms,
            } => (long_ms, short_ms, gap_ms, between_ms, pause_ms),
            Signs::Weights { .. }
            | Signs::Segments
            | Signs::Pictures { .. }
            | Signs::InTurn { .. } => (0, 0, 0, 0, 0),
        };
        (0..tens + units).flat_map(move |n| {
            let on_ms = if n < tens { long } else { short };
            let off_ms = if n + 1 == tens + units {
                pause
            } else if n + 1 == tens {
                between
            } else {
                gap
            };
            let span = |ms| Span::from_ms(u64::from(ms));
            [(true, span(on_ms)), (false, span(off_ms))]
        })
    }
}

/// The fewest lamps, the heaviest first, whose weights add up to `digit`; the leftmost is the highest bit.
fn weighed(weights: &[u8], digit: u8) -> u16 {
    let mut order: Vec<usize> = (0..weights.len()).collect();
    order.sort_by_key(|i| std::cmp::Reverse(weights[*i]));
    let mut left = digit;
    let mut lit = 0;
    for i in order {
        if weights[i] > 0 && weights[i] <= left {
            left -= weights[i];
            lit |= 1 << (weights.len() - 1 - i);
        }
    }
    lit
}

/// The digit that the lamps of one place add up to.
pub(super) fn sum(weights: &[u8], lit: u16) -> u32 {
    let lamps = weights.iter().rev().enumerate();
    lamps
        .filter(|(bit, _)| lit & (1 << bit) != 0)
        .map(|(_, weight)| u32::from(*weight))
        .sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn binary() -> Signs {
        Signs::Weights {
            tens: vec![8, 4, 2, 1],
            units: vec![8, 4, 2, 1],
        }
    }

    #[test]
    fn weights_add_up_to_the_digits() {
        assert_eq!(binary().lit(47, Span::ZERO), 0b0100_0111);
        assert_eq!(binary().lit(5, Span::ZERO), 0b0000_0101);
        let five = Signs::Weights {
            tens: vec![5, 3, 1],
            units: vec![5, 3, 1],
        };
        assert_eq!(five.lit(98, Span::ZERO), 0b111_110);
    }

    #[test]
    fn flashes_count_tens_long_and_units_short_and_begin_again() {
        let signs = Signs::Flashes {
            long_ms: 900,
            short_ms: 300,
            gap_ms: 400,
            between_ms: 1200,
            pause_ms: 2500,
        };
        let text = |number| {
            let lit = |tick| signs.lit(number, Span(tick)) != 0;
            (0..2000)
                .step_by(10)
                .map(|tick| if lit(tick) { '#' } else { '.' })
                .collect::<String>()
        };
        let once = format!(
            "{}{}{}{}",
            "#########....#########............",
            "###....###....",
            "###",
            ".".repeat(25)
        );
        assert!(
            text(23).starts_with(&format!("{once}{once}")),
            "{}",
            text(23)
        );
        assert!(text(0).chars().all(|c| c == '.'));
        assert!(text(40).starts_with("#########....#########....#########....#########....."));
    }
}
