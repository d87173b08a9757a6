//! What an eye makes of lamps over time: still, blinking, or one flash after the other. It decodes nothing.

use detent_simulation::controller::{LampRules, Lamps, Sign, Signs};

/// As long as this without a change, lamps are still, ms. Longer than any picture of two in turn stands.
const STILL_MS: u64 = 1_000;
/// No picture of two in turn stands longer than this, ms.
const LONGEST_TURN_MS: u64 = 1_200;
/// Flashes alike, one after the other, beyond which they count nothing: no digit is higher than nine.
const MOST_ALIKE: usize = 9;

/// What is seen.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LampSight {
    /// Nothing changes.
    Still(Lamps),
    /// Two pictures in turn, the fuller one first.
    InTurn([Lamps; 2]),
    /// Flashes of one lamp up to a pause: long or not.
    Flashes(Vec<bool>),
    /// Digits one after the other, up to a pause.
    Digits([Sign; 2]),
}

/// One lamp or several, watched.
#[derive(Clone, Debug, Default)]
pub struct LampWatch {
    /// When each of the last pictures began, the newest last.
    pictures: Vec<(u64, Lamps)>,
    /// Flashes since the last pause, each long or not.
    flashes: Vec<bool>,
    /// The lamp is in the pause behind flashes that were told.
    pauses: bool,
    /// Of digits in turn, those since the last pause.
    digits: Vec<Sign>,
    /// The digit that is being shown: since when, ms, lamps that were lit in it at all times, and at any time.
    digit: Option<(u64, u16, u16)>,
    seen: Option<LampSight>,
}

impl LampWatch {
    /// The lamps at this moment of the machine's clock, ms. Moments only go on; at an earlier one everything begins
    /// anew.
    pub fn watch(&mut self, at_ms: u64, lamps: Lamps, rules: &LampRules) {
        if self
            .pictures
            .last()
            .is_some_and(|(since, _)| at_ms < *since)
        {
            *self = LampWatch::default();
        }
        let before = self.pictures.last().copied();
        if before.is_none_or(|(_, shown)| shown != lamps) {
            if self.pictures.len() == 4 {
                self.pictures.remove(0);
            }
            self.pictures.push((at_ms, lamps));
        }
        let now = match rules.signs {
            Signs::Flashes {
                long_ms,
                short_ms,
                between_ms,
                pause_ms,
                ..
            } => {
                let long_ms = u64::from(long_ms);
                if let Some((since, shown)) = before
                    && shown.code != 0
                    && lamps.code == 0
                {
                    self.note_flash(at_ms - since, long_ms, u64::from(short_ms));
                }
                let pause_ms = u64::from(between_ms + pause_ms) / 2;
                self.one_lamp(at_ms, long_ms, pause_ms)
            }
            Signs::Weights { .. } | Signs::Segments | Signs::Pictures { .. } => self.all(at_ms),
            Signs::InTurn {
                digit_ms,
                gap_ms,
                pause_ms,
                ..
            } => {
                let [digit_ms, gap_ms, pause_ms] = [digit_ms, gap_ms, pause_ms].map(u64::from);
                self.in_turn(at_ms, lamps, digit_ms, gap_ms, pause_ms)
            }
        };
        if now.is_some() {
            self.seen = now;
        }
    }

    /// What was seen last.
    pub fn seen(&self) -> Option<&LampSight> {
        self.seen.as_ref()
    }

    fn note_flash(&mut self, lit_ms: u64, long_ms: u64, short_ms: u64) {
        // Longer than any flash, it was simply lit.
        if lit_ms * 2 >= long_ms * 3 {
            self.flashes.clear();
        } else {
            self.flashes.push(lit_ms * 2 >= long_ms + short_ms);
        }
    }

    fn all(&self, at_ms: u64) -> Option<LampSight> {
        let (since, lamps) = *self.pictures.last()?;
        if let [(t0, a), (t1, b), (t2, c), (t3, d)] = self.pictures[..]
            && (a, b) == (c, d)
            && [t1 - t0, t2 - t1, t3 - t2, at_ms - t3]
                .iter()
                .all(|stood| *stood <= LONGEST_TURN_MS)
        {
            let mut turns = [c, d];
            turns.sort_by_key(|lamps| std::cmp::Reverse((lamps.code, lamps.lock)));
            return Some(LampSight::InTurn(turns));
        }
        (at_ms - since >= STILL_MS).then_some(LampSight::Still(lamps))
    }

    /// Digits, one after the other; what stands or blinks longer than one is no digit.
    fn in_turn(
        &mut self,
        at_ms: u64,
        lamps: Lamps,
        digit_ms: u64,
        gap_ms: u64,
        pause_ms: u64,
    ) -> Option<LampSight> {
        let (since, _) = *self.pictures.last()?;
        let stood_ms = at_ms - since;
        if lamps.code != 0 {
            let (began, always, ever) = self.digit.unwrap_or((since, lamps.code, 0));
            let before = self.pictures.iter().rev().nth(1);
            // The dark before a digit is no half of a blink.
            let came_back = since > began && before.is_some_and(|(_, before)| before.code == 0);
            let always = if came_back { 0 } else { always & lamps.code };
            self.digit = Some((began, always, ever | lamps.code));
            if 2 * stood_ms > 3 * digit_ms {
                (self.digit, self.digits) = (None, Vec::new());
                return Some(LampSight::Still(lamps));
            }
            if 2 * (at_ms - began) > 3 * digit_ms {
                self.digits.clear();
                return self.all(at_ms);
            }
            return None;
        }
        // Shorter than a gap, it is the dark half of a blink.
        if 4 * stood_ms >= 3 * gap_ms
            && let Some((_, lit, ever)) = self.digit.take()
        {
            let blinks = ever & !lit;
            self.digits.push(Sign { lit, blinks });
        }
        if 2 * stood_ms < gap_ms + pause_ms {
            return None;
        }
        match std::mem::take(&mut self.digits)[..] {
            [tens, units] => {
                self.pauses = true;
                Some(LampSight::Digits([tens, units]))
            }
            _ if self.pauses && stood_ms < 2 * pause_ms => None,
            _ => {
                self.pauses = false;
                (stood_ms >= STILL_MS).then_some(LampSight::Still(lamps))
            }
        }
    }

    fn one_lamp(&mut self, at_ms: u64, long_ms: u64, pause_ms: u64) -> Option<LampSight> {
        let (since, lamps) = *self.pictures.last()?;
        let stood_ms = at_ms - since;
        let alike = match self.flashes.last() {
            Some(last) => self
                .flashes
                .iter()
                .rev()
                .take_while(|flash| *flash == last)
                .count(),
            None => 0,
        };
        if alike > MOST_ALIKE {
            let lit = Lamps { code: 1, ..lamps };
            let dark = Lamps { code: 0, ..lamps };
            if stood_ms >= pause_ms {
                self.flashes.clear();
            }
            return Some(LampSight::InTurn([lit, dark]));
        }
        if lamps.code != 0 {
            self.pauses = false;
            return (stood_ms * 2 >= long_ms * 3).then_some(LampSight::Still(lamps));
        }
        if self.flashes.is_empty() {
            let dark_ms = if self.pauses { 2 * pause_ms } else { STILL_MS };
            return (stood_ms >= dark_ms).then_some(LampSight::Still(lamps));
        }
        (stood_ms >= pause_ms).then(|| {
            self.pauses = true;
            LampSight::Flashes(std::mem::take(&mut self.flashes))
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use detent_content::{ContentLibrary, read_board};
    use detent_simulation::units::Span;

    fn rules(board: &str) -> LampRules {
        let library = ContentLibrary::builtin().expect("sound boards");
        let board = library.boards.iter().find(|known| known.id == board);
        board.expect("there is one").lamps.clone()
    }

    /// What is seen, one after the other, of lamps that show this at each moment, looked at every 50 ms.
    fn seen(rules: &LampRules, for_ms: u64, lit: impl Fn(u64) -> Lamps) -> Vec<LampSight> {
        let mut watch = LampWatch::default();
        let mut told = Vec::new();
        for at_ms in (0..for_ms).step_by(50) {
            watch.watch(at_ms, lit(at_ms), rules);
            if let Some(now) = watch.seen()
                && told.last() != Some(now)
            {
                told.push(now.clone());
            }
        }
        told
    }

    fn code(code: u16) -> Lamps {
        Lamps { code, lock: false }
    }

    #[test]
    fn lamps_that_stand_are_told_once() {
        let told = seen(&rules("arc-dial"), 20_000, |at| {
            code(if at < 6_000 { 0x21 } else { 0x42 })
        });
        assert_eq!(
            told,
            [LampSight::Still(code(0x21)), LampSight::Still(code(0x42))]
        );
    }

    #[test]
    fn two_pictures_in_turn_are_told_as_such() {
        let rules = rules("arc-dial");
        let turns_ms = u64::from(rules.turns_ms);
        let told = seen(&rules, 20_000, |at| {
            code(if (at / turns_ms).is_multiple_of(2) {
                0x0f
            } else {
                0xf0
            })
        });
        assert_eq!(told, [LampSight::InTurn([code(0xf0), code(0x0f)])]);
        let told = seen(&rules, 20_000, |at| Lamps {
            code: 0,
            lock: (at / 250).is_multiple_of(2),
        });
        let [lit, dark] = [true, false].map(|lock| Lamps { code: 0, lock });
        assert_eq!(told, [LampSight::InTurn([lit, dark])]);
    }

    /// Every number of two digits, one flash after the other, comes out as it was flashed.
    #[test]
    fn flashes_are_told_one_by_one_at_the_pause() {
        let rules = rules("lone-lamp");
        for number in [1, 9, 10, 23, 40, 90, 99] {
            let told = seen(&rules, 90_000, |at| {
                code(rules.signs.lit(number, Span::from_ms(at)))
            });
            let tens = vec![true; usize::from(number / 10)];
            let units = vec![false; usize::from(number % 10)];
            let flashes = [tens, units].concat();
            assert_eq!(told, [LampSight::Flashes(flashes)], "{number}");
        }
    }

    /// A column of five lamps that counts one to five and blinks for six to nine, tens first, then units.
    fn tower() -> LampRules {
        let text = include_bytes!("../../../tests/boards/tower.ron");
        let board = read_board("tower.ron", text).expect("a sound board");
        board.lamps
    }

    /// Every number, one digit after the other, comes out once for all its rounds, as it was shown, whether its lamps
    /// are lit or blink.
    #[test]
    fn digits_in_turn_are_told_at_the_pause() {
        let rules = tower();
        let Signs::InTurn { digits, .. } = &rules.signs else {
            panic!("its digits come in turn");
        };
        for number in [1, 10, 11, 23, 40, 66, 67, 78, 90, 99] {
            let told = seen(&rules, 60_000, |at| {
                code(rules.signs.lit(number, Span::from_ms(at)))
            });
            let [tens, units] = [number / 10, number % 10].map(|n| digits[usize::from(n)]);
            assert_eq!(told, [LampSight::Digits([tens, units])], "{number}");
        }
    }

    #[test]
    fn lamps_for_digits_that_stand_or_blink_are_no_digits() {
        let rules = tower();
        let (still, blink) = (LampSight::Still(code(3)), [code(3), code(0)]);
        assert_eq!(seen(&rules, 20_000, |_| code(3)), [still]);
        let half_ms = u64::from(rules.blink_ms) / 2;
        let told = seen(&rules, 20_000, |at| {
            code(if (at / half_ms).is_multiple_of(2) {
                3
            } else {
                0
            })
        });
        assert_eq!(told, [LampSight::InTurn(blink)]);
        // One digit and no other is none; the dark behind it is told as what it is.
        let told = seen(&rules, 20_000, |at| code(if at < 2_000 { 3 } else { 0 }));
        assert_eq!(told, [LampSight::Still(code(0))]);
        // What comes behind a wait is read as from the start.
        let told = seen(&rules, 40_000, |at| match at.checked_sub(10_000) {
            None => code(0),
            Some(at) => code(rules.signs.lit(23, Span::from_ms(at))),
        });
        let Signs::InTurn { digits, .. } = &rules.signs else {
            panic!("its digits come in turn");
        };
        let number = LampSight::Digits([digits[2], digits[3]]);
        assert_eq!(told, [LampSight::Still(code(0)), number]);
    }

    #[test]
    fn a_lamp_that_blinks_counts_nothing() {
        let rules = rules("lone-lamp");
        let half_ms = u64::from(rules.blink_ms) / 2;
        let told = seen(&rules, 30_000, |at| {
            code(u16::from((at / half_ms).is_multiple_of(2)))
        });
        assert_eq!(told, [LampSight::InTurn([code(1), code(0)])]);
        let turns_ms = u64::from(rules.turns_ms);
        let told = seen(&rules, 8_000, |at| {
            code(u16::from((at / turns_ms).is_multiple_of(2)))
        });
        let still = [code(1), code(0)].map(LampSight::Still);
        assert_eq!(told, [still.clone(), still].concat());
    }
}
