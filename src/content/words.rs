//! Deeds, steps and accounts of a job in words.

use super::text::{Texts, Value};
use detent_simulation::controller::Board;
use detent_simulation::interface::Pin;
use detent_training::bench::{Action, HintRung, MeterMode, Part, current};
use detent_training::lesson::Dimension;
use detent_training::reason::evidence::{End, Outcome};
use detent_training::reason::{
    Account, Hint, HintTopic, PathStep, PlanStep, Probe, Remedy, RepairCosts, SoundChoice, Worth,
};

/// What words need to know of a job.
#[derive(Clone, Copy)]
pub struct Words<'a> {
    /// Texts.
    pub texts: &'a Texts,
    /// What steps stand for.
    pub repair_costs: &'a RepairCosts,
    /// What the counter sells.
    pub parts: &'a [Part],
    /// Names of the failure modes.
    pub modes: &'a [String],
    /// The board whose sheet names the pins; without one they are named as in scripts.
    pub board: Option<&'a Board>,
}

impl<'a> Words<'a> {
    /// For what carries its own names of steps and failure modes: a review, or a hint.
    pub fn of(
        (repair_costs, modes): (&'a RepairCosts, &'a [String]),
        texts: &'a Texts,
        parts: &'a [Part],
        board: Option<&'a Board>,
    ) -> Words<'a> {
        Words {
            texts,
            repair_costs,
            parts,
            modes,
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
    pub fn step(&self, step: PlanStep) -> String {
        match step {
            PlanStep::LastResort => self.texts.get("best-new-machine"),
            PlanStep::Repair(r) => self
                .texts
                .remedy(&self.repair_costs.remedies[r], self.parts),
            PlanStep::Test(t) => self.texts.test(&self.repair_costs.probes[t], self.board),
        }
    }

    /// A deed, where it is one that words are made for.
    pub fn deed(&self, deed: &PathStep) -> String {
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
            PathStep::Arrived(outcome) if outcome.end == End::NotAskedFor => {
                texts.get("deed-arrived-not-asked-for")
            }
            PathStep::Arrived(outcome) => ended("deed-arrived", outcome),
            PathStep::Ran(outcome) => ended("deed-ran", outcome),
            PathStep::Recalibrated(outcome) => ended("deed-recalibrated", outcome),
            PathStep::Reported => texts.get("deed-report"),
            PathStep::ReadCodes => texts.get("deed-read-codes"),
            PathStep::Planned(step) => self.step(*step),
            PathStep::Did(action) => self.action(action),
        }
    }

    fn action(&self, action: &Action) -> String {
        let texts = self.texts;
        let part = |key: &str, number: &str| {
            texts.with(
                key,
                &[("part", Value::from(texts.numbered(number, self.parts)))],
            )
        };
        match action {
            Action::Probe {
                mode, red, black, ..
            } => texts.probe(*mode, *red, *black, self.board),
            Action::Inspect(c) => texts.test(&Probe::Inspect(*c), self.board),
            Action::BucketTest(pipe) => texts.test(&Probe::BucketTest(*pipe), self.board),
            Action::PutRight(c) => texts.remedy(&Remedy::PutRight(*c), self.parts),
            Action::Quote(quote) => {
                let parts = quote.parts.iter();
                let parts: Vec<String> = parts.map(|n| texts.numbered(n, self.parts)).collect();
                texts.with("deed-quote", &[("parts", Value::from(parts.join(", ")))])
            }
            Action::ShutTaps => texts.get("deed-shut-taps"),
            Action::CheckForLeaks => texts.get("deed-check-for-leaks"),
            Action::Ask(_) => texts.get("deed-show-customer"),
            Action::Order(number) => part("deed-order", number),
            Action::Fit(number) => part("deed-fit", number),
            Action::NoteCode(code) => {
                let code = Value::from(format!("{code:02}"));
                texts.with("deed-note-code", &[("code", code)])
            }
            _ => texts.get("deed-report"),
        }
    }

    /// One rung of a hint.
    pub fn hint(&self, hint: &Hint, rung: HintRung) -> String {
        let texts = self.texts;
        let rest = match rung {
            HintRung::WhereToLook => "where",
            HintRung::WhatToAsk => "ask",
            HintRung::WhatToDo => "do",
        };
        let say = |topic: &str, args: &[(&str, Value<'_>)]| {
            texts.with(&format!("hint-{topic}-{rest}"), args)
        };
        match &hint.topic {
            HintTopic::LeaveFaultHold => say("leave-fault-hold", &[]),
            HintTopic::EnterServiceMode => say("enter-service-mode", &[]),
            HintTopic::ReadCodes => say("read-codes", &[]),
            HintTopic::StartWash => say("start-wash", &[]),
            HintTopic::OpenCabinet => say("open-cabinet", &[]),
            HintTopic::ResetOutlet => say("reset-outlet", &[]),
            HintTopic::OpenTaps => say("open-taps", &[]),
            HintTopic::EmptyBasket => say("empty-basket", &[]),
            HintTopic::Recalibrate => say("recalibrate", &[]),
            HintTopic::ProveByRun => say("prove-by-run", &[]),
            HintTopic::CheckForLeaks => say("check-for-leaks", &[]),
            HintTopic::ShowCustomer => say("show-customer", &[]),
            HintTopic::MakeSafe(practice) => {
                let practice = Value::from(texts.good_practice(*practice));
                say("make-safe", &[("practice", practice)])
            }
            HintTopic::RenewFuse(number) => {
                let part = Value::from(texts.numbered(number, self.parts));
                say("renew-fuse", &[("part", part)])
            }
            HintTopic::QuotePart(number) => {
                let part = Value::from(texts.numbered(number, self.parts));
                say("quote-part", &[("part", part)])
            }
            HintTopic::FitPart(number) => {
                let part = Value::from(texts.numbered(number, self.parts));
                say("fit-part", &[("part", part)])
            }
            HintTopic::WriteReport => match (rung, hint.causes.first()) {
                (HintRung::WhatToDo, None) => texts.get("hint-write-report-do-none"),
                (_, cause) => {
                    let cause = cause.map_or_else(String::new, |(n, _)| self.hypothesis(*n));
                    say("write-report", &[("cause", Value::from(cause))])
                }
            },
            HintTopic::Step(step) => match rung {
                HintRung::WhereToLook => match hint.area {
                    Some(area) => {
                        let area = Value::from(texts.get(&format!("area-{area}")));
                        texts.with("hint-where", &[("area", area)])
                    }
                    None => texts.get("hint-where-wide"),
                },
                HintRung::WhatToAsk => self.question(&hint.causes),
                HintRung::WhatToDo => {
                    let key = match (step, hint.causes.len()) {
                        (PlanStep::LastResort, _) => "hint-do-last-resort",
                        (PlanStep::Repair(_), _) => "hint-do-repair",
                        (PlanStep::Test(_), 2) => "hint-do-apart",
                        (PlanStep::Test(_), _) => "hint-do-cheap",
                    };
                    texts.with(key, &[("step", Value::from(self.step(*step)))])
                }
            },
        }
    }

    /// What is to be decided between these causes, with the belief in each.
    fn question(&self, causes: &[(usize, f64)]) -> String {
        let share = |share: f64| Value::from((100.0 * share).round());
        match causes {
            [] => self.texts.get("hint-ask-none"),
            [(one, likely)] => {
                let cause = Value::from(self.hypothesis(*one));
                let args = [("cause", cause), ("share", share(*likely))];
                self.texts.with("hint-ask-one", &args)
            }
            [(one, likely), (other, as_likely), ..] => {
                let args = [
                    ("cause", Value::from(self.hypothesis(*one))),
                    ("share", share(*likely)),
                    ("other", Value::from(self.hypothesis(*other))),
                    ("other-share", share(*as_likely)),
                ];
                self.texts.with("hint-ask-two", &args)
            }
        }
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
            SoundChoice::Step(step) => self.step(step),
            SoundChoice::Practice(practice) => texts.good_practice(practice),
        };
        let (Worth::Saves { minutes, money } | Worth::Takes { minutes, money }) = account.worth;
        let key = match account.worth {
            _ if minutes < WORTH_SAYING_MIN && money < WORTH_SAYING => "account-owed",
            Worth::Saves { .. } if minutes < WORTH_SAYING_MIN => "account-saves-money",
            Worth::Saves { .. } => "account-saves",
            Worth::Takes { .. } => "account-takes",
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

/// Less than this is not worth saying: minutes, and whole units of money.
const WORTH_SAYING_MIN: f64 = 0.25;
const WORTH_SAYING: f64 = 0.5;
/// Causes less likely than this are not named.
const LEAST_NAMED: f64 = 0.02;

impl Texts {
    /// A repair.
    pub fn remedy(&self, remedy: &Remedy, parts: &[Part]) -> String {
        match remedy {
            Remedy::Part(number) => {
                format!("{}: {}", self.get("best-fit"), self.numbered(number, parts))
            }
            Remedy::PutRight(c) => {
                let (deed, takes) = (self.get("best-put-right"), self.hand_work_takes(*c));
                format!("{deed}: {} ({takes})", self.component(*c))
            }
            Remedy::Recalibrate => self.get("best-hand-back"),
        }
    }

    /// A test, its pins as the board's sheet names them or, without one, as scripts do.
    pub fn test(&self, probe: &Probe, board: Option<&Board>) -> String {
        match probe {
            Probe::Inspect(c) => format!("{}: {}", self.get("best-inspect"), self.component(*c)),
            Probe::BucketTest(pipe) => self.get(&format!("best-bucket-{pipe}")),
            Probe::Recalibrate => self.get("best-recalibrate"),
            Probe::Read(point) => {
                let reading = self.probe(point.mode, point.red, point.black, board);
                format!(
                    "{reading} ({})",
                    self.get(&format!("best-at-{}", point.state))
                )
            }
        }
    }

    fn probe(&self, mode: MeterMode, red: Pin, black: Pin, board: Option<&Board>) -> String {
        let pin = |pin: Pin| match board {
            Some(board) => self.pin(board, pin),
            None => pin.to_string(),
        };
        let (name, red) = (self.meter_mode(mode), pin(red));
        if mode == MeterMode::AmpsClamp {
            return format!("{name} {red}");
        }
        format!("{name} {red} – {}", pin(black))
    }

    /// Number and name of a part.
    pub(super) fn numbered(&self, number: &str, parts: &[Part]) -> String {
        let part = current(parts, number);
        let name = part.map_or_else(String::new, |p| self.get(&p.name_key));
        format!("{number} {name}")
    }
}
