//! Lamps in words: which are lit, never what they mean.

use super::text::{Texts, Value};
use detent_simulation::controller::{LampPlacement, LampRules, Lamps, Sign, Signs, letter_of};
use detent_simulation::units::Span;

/// Segments of a digit, in the order of their bits.
const BARS: [&str; 7] = [
    "lamps-bar-top",
    "lamps-bar-upper-right",
    "lamps-bar-lower-right",
    "lamps-bar-bottom",
    "lamps-bar-lower-left",
    "lamps-bar-upper-left",
    "lamps-bar-middle",
];

impl Texts {
    /// What is lit of a console's lamps, the lock lamp last.
    pub fn lamps(&self, rules: &LampRules, lamps: Lamps) -> String {
        let code = self.placed_lamps(&rules.signs, &rules.placement, lamps.code);
        if !rules.lock_lamp {
            return code;
        }
        let lock = self.get(match lamps.lock {
            true => "lamps-lock-lit",
            false => "lamps-lock-dark",
        });
        format!("{code}; {lock}")
    }

    /// Two pictures that the lamps show in turn; a lamp that blinks goes on and off in them.
    pub fn lamps_in_turn(&self, rules: &LampRules, [first, then]: [Lamps; 2]) -> String {
        let [code, other] = [first, then]
            .map(|lamps| self.placed_lamps(&rules.signs, &rules.placement, lamps.code));
        let code = if first.code == then.code {
            code
        } else {
            let args = [("first", Value::from(code)), ("then", Value::from(other))];
            self.with("lamps-in-turn", &args)
        };
        if !rules.lock_lamp {
            return code;
        }
        let lock = self.get(match (first.lock, then.lock) {
            (true, true) => "lamps-lock-lit",
            (false, false) => "lamps-lock-dark",
            (true, false) | (false, true) => "lamps-lock-blinking",
        });
        format!("{code}; {lock}")
    }

    /// The flashes of a lamp before a pause, each long or short.
    pub fn lamp_flashes(&self, long: &[bool]) -> String {
        let flashes = long.iter().map(|long| match long {
            true => self.get("lamps-flash-long"),
            false => self.get("lamps-flash-short"),
        });
        let flashes = flashes.collect::<Vec<_>>().join(", ");
        self.with("lamps-flashes", &[("flashes", Value::from(flashes))])
    }

    /// The signs of one number, one after the other, each with a pause behind it: of digits in turn the tens' and the
    /// units'.
    pub fn lamp_signs(&self, signs: &Signs, placement: &LampPlacement, shown: &[Sign]) -> String {
        let one = |sign: &Sign| {
            let lit = self.placed_lamps(signs, placement, sign.lit);
            let blinking = self.placed_lamps(signs, placement, sign.blinks);
            let args = |key, value| self.with(key, &[("lamps", Value::from(value))]);
            match (sign.lit, sign.blinks) {
                (_, 0) => lit,
                (0, _) => args("lamps-blinking", blinking),
                _ => format!("{lit}; {}", args("lamps-blinking", blinking)),
            }
        };
        let shown: Vec<String> = shown.iter().map(one).collect();
        match &shown[..] {
            [only] => only.clone(),
            _ => {
                let shown = shown.join(&format!(" — {} ", self.get("lamps-then")));
                self.with(
                    "lamps-one-after-the-other",
                    &[("signs", Value::from(shown))],
                )
            }
        }
    }

    /// What the lamps show of a number, as an eye sees it: which are lit, or one flash or digit after the other.
    pub fn number_on_lamps(&self, signs: &Signs, placement: &LampPlacement, number: u8) -> String {
        match signs {
            Signs::Flashes { long_ms, .. } => {
                let flashes = signs.flashes(number).filter(|(on, _)| *on);
                let long = Span::from_ms(u64::from(*long_ms));
                let flashes: Vec<bool> = flashes.map(|(_, lit)| lit == long).collect();
                self.lamp_flashes(&flashes)
            }
            Signs::InTurn { digits, .. } => {
                let of = |digit: u8| digits.get(usize::from(digit)).copied().unwrap_or_default();
                self.lamp_signs(signs, placement, &[of(number / 10), of(number % 10)])
            }
            Signs::Pictures { .. } => {
                let sign = signs.sign(number).unwrap_or_default();
                self.lamp_signs(signs, placement, &[sign])
            }
            Signs::Weights { .. } | Signs::Segments => {
                let lit = signs.lit(number, Span::ZERO);
                self.placed_lamps(signs, placement, lit)
            }
        }
    }

    /// What is lit of the lamps that show numbers, a bit each.
    pub fn code_lamps(&self, signs: &Signs, lit: u16) -> String {
        self.placed_lamps(signs, &LampPlacement::Usual, lit)
    }

    fn placed_lamps(&self, signs: &Signs, placement: &LampPlacement, lit: u16) -> String {
        match signs {
            Signs::Weights { tens, units } => {
                let args = [
                    ("tens", Value::from(self.weights(tens, lit >> units.len()))),
                    ("units", Value::from(self.weights(units, lit))),
                ];
                self.with("lamps-weights", &args)
            }
            Signs::Segments => {
                let args = [
                    ("left", Value::from(self.digit(lit >> 7 & 0x7f))),
                    ("right", Value::from(self.digit(lit & 0x7f))),
                ];
                self.with("lamps-digits", &args)
            }
            Signs::Pictures { lamps, .. } | Signs::InTurn { lamps, .. } => {
                let first_on = (1..=*lamps).filter(|n| lit & (1 << (lamps - n)) != 0);
                let args = [
                    ("lit", Value::from(self.listed(first_on))),
                    ("lamps", Value::from(*lamps)),
                ];
                let key = match placement {
                    LampPlacement::Usual | LampPlacement::Row => "lamps-row",
                    LampPlacement::Column => "lamps-column",
                    LampPlacement::Grid { .. } => "lamps-grid",
                    LampPlacement::Free(_) => "lamps-free",
                };
                self.with(key, &args)
            }
            Signs::Flashes { .. } => self.get(match lit & 1 {
                0 => "lamps-one-dark",
                _ => "lamps-one-lit",
            }),
        }
    }

    /// The numbers printed beside the lit lamps of one group, from left to right.
    fn weights(&self, weights: &[u8], lit: u16) -> String {
        let lamps = weights.iter().rev().enumerate().rev();
        self.listed(lamps.filter_map(|(bit, weight)| (lit & (1 << bit) != 0).then_some(*weight)))
    }

    fn listed(&self, numbers: impl Iterator<Item = u8>) -> String {
        let numbers: Vec<String> = numbers.map(|number| number.to_string()).collect();
        match numbers.is_empty() {
            true => self.get("lamps-none"),
            false => numbers.join(", "),
        }
    }

    /// What stands in the place of one digit: the digit, the letter, or the bars that are lit.
    fn digit(&self, lit: u16) -> String {
        if lit == 0 {
            return self.get("lamps-none");
        }
        if let Some(digit) = Signs::Segments.digit(lit) {
            return digit.to_string();
        }
        if let Some(letter) = letter_of(lit) {
            return letter.to_string();
        }
        let bars = BARS.iter().enumerate();
        let lit = bars.filter(|(bit, _)| lit & (1 << bit) != 0);
        let names: Vec<String> = lit.map(|(_, key)| self.get(key)).collect();
        self.with("lamps-bars", &[("bars", Value::from(names.join(", ")))])
    }
}
