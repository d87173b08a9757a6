//! Deeds, steps and accounts of a job in words.

use super::text::{Texts, Value};
use crate::bench::{Action, MeterMode, Part, current};
use crate::controller::Board;
use crate::lesson::Dimension;
use crate::plant::Pin;
use crate::reason::evidence::{End, Outcome};
use crate::reason::{Account, Deed, Probe, Remedy, Review, Sound, Step, Trade, Worth};

/// What words need to know of a job.
#[derive(Clone, Copy)]
pub struct Words<'a> {
    /// Texts.
    pub texts: &'a Texts,
    /// What steps stand for.
    pub trade: &'a Trade,
    /// What the counter sells.
    pub parts: &'a [Part],
    /// Names of the failure modes.
    pub modes: &'a [String],
    /// The board whose sheet names the pins; without one they are named as in scripts.
    pub board: Option<&'a Board>,
}

impl<'a> Words<'a> {
    /// For a job that was thought over.
    pub fn of(
        review: &'a Review,
        texts: &'a Texts,
        parts: &'a [Part],
        board: Option<&'a Board>,
    ) -> Words<'a> {
        Words {
            texts,
            trade: &review.trade,
            parts,
            modes: &review.modes,
            board,
        }
    }
}

impl Words<'_> {
    /// A hypothesis: "nothing is wrong", or a failure mode.
    pub fn hypothesis(&self, n: usize) -> String {
        let mode = n.checked_sub(1).and_then(|n| self.modes.get(n));
        mode.map_or_else(|| self.texts.get("mode-nothing"), |id| self.texts.mode(id))
    }

    /// A step of the planner's.
    pub fn step(&self, step: Step) -> String {
        let texts = self.texts;
        match step {
            Step::LastResort => texts.get("best-new-machine"),
            Step::Repair(r) => match &self.trade.remedies[r] {
                Remedy::Part(number) => format!("{}: {}", texts.get("best-fit"), self.part(number)),
                Remedy::PutRight(c) => {
                    format!("{}: {}", texts.get("best-put-right"), texts.component(*c))
                }
                Remedy::Recalibrate => texts.get("best-hand-back"),
            },
            Step::Test(t) => match &self.trade.probes[t] {
                Probe::Inspect(c) => {
                    format!("{}: {}", texts.get("best-inspect"), texts.component(*c))
                }
                Probe::Recalibrate => texts.get("best-recalibrate"),
                Probe::Read(point) => {
                    let at = texts.get(&format!("best-at-{}", point.state));
                    format!("{} ({at})", self.probe(point.mode, point.red, point.black))
                }
            },
        }
    }

    /// A deed, where it is one that words are made for.
    pub fn deed(&self, deed: &Deed) -> String {
        let texts = self.texts;
        let ended = |key: &str, outcome: &Outcome| {
            let code = outcome.codes.first().map(|code| format!("{code:02}"));
            let (key, code) = match (outcome.end, code) {
                (End::Stopped, Some(code)) => (format!("{key}-stopped"), code),
                (End::Finished, _) => (format!("{key}-finished"), String::new()),
                (End::Dark, _) => (format!("{key}-dark"), String::new()),
                _ => (format!("{key}-open"), String::new()),
            };
            texts.with(&key, &[("code", Value::from(code))])
        };
        match deed {
            Deed::Arrived(outcome) => ended("deed-arrived", outcome),
            Deed::Ran(outcome) => ended("deed-ran", outcome),
            Deed::Recalibrated(outcome) => ended("deed-recalibrated", outcome),
            Deed::Reported => texts.get("deed-report"),
            Deed::ReadCodes => texts.get("deed-read-codes"),
            Deed::Planned(step) => self.step(*step),
            Deed::Did(action) => self.action(action),
        }
    }

    fn action(&self, action: &Action) -> String {
        let texts = self.texts;
        let part =
            |key: &str, number: &str| texts.with(key, &[("part", Value::from(self.part(number)))]);
        match action {
            Action::Probe {
                mode, red, black, ..
            } => self.probe(*mode, *red, *black),
            Action::Inspect(c) => format!("{}: {}", texts.get("best-inspect"), texts.component(*c)),
            Action::PutRight(c) => {
                format!("{}: {}", texts.get("best-put-right"), texts.component(*c))
            }
            Action::Order(number) => part("deed-order", number),
            Action::Fit(number) => part("deed-fit", number),
            Action::NoteCode(code) => {
                let code = Value::from(format!("{code:02}"));
                texts.with("deed-note-code", &[("code", code)])
            }
            _ => texts.get("deed-report"),
        }
    }

    fn probe(&self, mode: MeterMode, red: Pin, black: Pin) -> String {
        let pin = |pin: Pin| match self.board {
            Some(board) => self.texts.pin(board, pin),
            None => pin.to_string(),
        };
        let (name, red, black) = (self.texts.meter_mode(mode), pin(red), pin(black));
        if mode == MeterMode::AmpsClamp {
            format!("{name} {red}")
        } else {
            format!("{name} {red} – {black}")
        }
    }

    /// Number and name of a part.
    fn part(&self, number: &str) -> String {
        let part = current(self.parts, number);
        let name = part.map_or_else(String::new, |p| self.texts.get(&p.name_key));
        format!("{number} {name}")
    }

    /// What a lost point was about: what was known, what would have been sound, what that is worth.
    pub fn account(&self, account: &Account) -> String {
        let texts = self.texts;
        let known = match account.dimension {
            Dimension::Entry => texts.get("known-sheet"),
            Dimension::Safety => texts.get("known-caution"),
            _ => {
                let known = account.known.iter();
                let known = known
                    .filter(|(_, share)| *share >= LEAST_NAMED)
                    .map(|(n, share)| {
                        format!("{} {:.0}\u{a0}%", self.hypothesis(*n), 100.0 * share)
                    });
                known.collect::<Vec<_>>().join("; ")
            }
        };
        let sound = match account.sound {
            Sound::Step(step) => self.step(step),
            Sound::Rule(key) => texts.get(key),
        };
        let (key, minutes, money) = match account.worth {
            Worth::Saves { minutes, money } if minutes < 0.05 && money < 0.5 => {
                ("account-owed", 0.0, 0.0)
            }
            Worth::Takes { minutes, money } if minutes < 0.05 && money < 0.5 => {
                ("account-owed", 0.0, 0.0)
            }
            Worth::Saves { minutes, money } => ("account-saves", minutes, money),
            Worth::Takes { minutes, money } => ("account-takes", minutes, money),
        };
        let few = |value: f64| format!("{value:.*}", usize::from(value < 10.0));
        let args = [
            ("known", Value::from(known)),
            ("sound", Value::from(sound)),
            ("minutes", Value::from(few(minutes))),
            ("money", Value::from(few(money))),
        ];
        texts.with(key, &args)
    }
}

/// Causes less likely than this are not named.
const LEAST_NAMED: f64 = 0.02;
