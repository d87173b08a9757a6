//! Questions of the drills of safe work and of proof in words.

use super::text::{Texts, Value};
use detent_training::bench::{Display, MeterMode, Part, WrittenDisplay};
use detent_training::lesson::LossKind;
use detent_training::practice::drill::hazard::{BenchObject, ObjectState, PlannedWork};
use detent_training::practice::drill::proof::{HistoryStep, Shown};
use detent_training::practice::drill::safe_work::{ChargeStep, Facts, SafeStep, Stumble};
use detent_training::reason::Probe;
use detent_training::reason::evidence::{End, Outcome};

impl Texts {
    /// A step of safe work.
    pub fn safe_step(&self, step: SafeStep) -> String {
        self.get(&format!("safe-step-{step}"))
    }

    /// What a deed brings, in short; none: nothing.
    pub fn safe_outcome(&self, brings: Option<LossKind>) -> String {
        match brings {
            Some(kind) => self.get(&format!("safe-outcome-{kind}")),
            None => self.get("safe-outcome-none"),
        }
    }

    /// Why an order of steps is not safe.
    pub fn safe_stumble(&self, stumble: &Stumble) -> String {
        match stumble {
            Stumble::Refused(refusal) => self.refusal(refusal),
            Stumble::Brings(kind) => self.safe_outcome(Some(*kind)),
            Stumble::Caution(caution) => self.caution(*caution),
        }
    }

    /// What is about to be done at a bench in a picture.
    pub fn planned_work(&self, work: PlannedWork) -> String {
        self.get(&format!("safe-planned-{work}"))
    }

    /// A thing in the picture.
    pub fn bench_object(&self, object: BenchObject) -> String {
        self.get(&format!("safe-object-{object}"))
    }

    /// What is seen of a thing in the picture; `card_v`: what a card on the capacitor says, V.
    pub fn object_state(&self, state: ObjectState, card_v: f64) -> String {
        let shown = self.display(Display::Value(card_v), MeterMode::VoltsDc);
        let args = [("shown", Value::from(shown))];
        self.with(&format!("safe-state-{state}"), &args)
    }

    /// Why a thing in the picture is a hazard, and what to do about it.
    pub fn hazard(&self, state: ObjectState) -> String {
        self.get(&format!("safe-hazard-{state}"))
    }

    /// What is known of a machine, one sentence each.
    pub fn safe_facts(&self, facts: &Facts) -> Vec<String> {
        let mut told = Vec::new();
        told.push(match facts.unplugged_s {
            None => self.get("safe-fact-plugged"),
            Some(s) => self.with(
                "safe-fact-unplugged",
                &[("seconds", Value::from(s.round()))],
            ),
        });
        if facts.panels_off {
            told.push(self.get("safe-fact-panels-off"));
        }
        if facts.bleeder_open {
            told.push(self.get("safe-fact-bleeder-open"));
        }
        told.push(self.get(if facts.taps_shut {
            "safe-fact-taps-shut"
        } else {
            "safe-fact-taps-open"
        }));
        told.push(self.get(if facts.live_tests_allowed {
            "safe-fact-live-tests"
        } else {
            "safe-fact-no-live-tests"
        }));
        if let Some(turns) = facts.basket_turns {
            told.push(self.get("safe-fact-lock-failed"));
            told.push(self.get(if turns {
                "safe-fact-basket-turns"
            } else {
                "safe-fact-basket-stands"
            }));
        }
        told.push(self.get(if facts.lid_open {
            "safe-fact-lid-open"
        } else {
            "safe-fact-lid-closed"
        }));
        told.push(match facts.water {
            None => self.get("safe-fact-dry"),
            Some((mm, celsius)) => {
                let args = [
                    ("depth", Value::from((mm / 10.0).round())),
                    ("celsius", Value::from(celsius.round())),
                    ("fahrenheit", Value::from((celsius * 1.8 + 32.0).round())),
                ];
                self.with("safe-fact-water", &args)
            }
        });
        told.extend(facts.proof.iter().map(|step| match step {
            ChargeStep::MeterChecked(true) => self.get("safe-fact-meter-good"),
            ChargeStep::MeterChecked(false) => self.get("safe-fact-meter-bad"),
            ChargeStep::Discharged => self.get("safe-fact-discharged"),
            ChargeStep::Measured(shown) => {
                let shown = Value::from(self.display(*shown, MeterMode::VoltsDc));
                self.with("safe-fact-measured", &[("shown", shown)])
            }
        }));
        told
    }

    /// What is to be said of a repair's proof; none: it is proved.
    pub fn proof_gap(&self, gap: Option<LossKind>) -> String {
        match gap {
            Some(kind) => self.get(&format!("proof-gap-{kind}")),
            None => self.get("proof-gap-none"),
        }
    }

    /// One thing that was done around a repair.
    pub fn proof_step(&self, step: &HistoryStep, parts: &[Part]) -> String {
        let ended = |key: &str, outcome: &Outcome| {
            let code = outcome.codes.first().map(|code| format!("{code:02}"));
            let end = match (outcome.end, &code) {
                (End::Finished, _) => "finished",
                (End::Stopped, Some(_)) => "stopped",
                (End::Dark, _) => "dark",
                (End::Stopped | End::Open | End::NotAskedFor, _) => "open",
            };
            let code = Value::from(code.unwrap_or_default());
            self.with(&format!("{key}-{end}"), &[("code", code)])
        };
        match step {
            HistoryStep::Fitted(number) => {
                let part = Value::from(self.numbered(number, parts));
                self.with("proof-did-fit", &[("part", part)])
            }
            HistoryStep::Recalibrated(outcome) => ended("deed-recalibrated", outcome),
            HistoryStep::Ran(outcome) => ended("deed-ran", outcome),
            HistoryStep::LookedForLeaks { level_mm, wet } => {
                let key = if *wet {
                    "proof-did-look-wet"
                } else {
                    "proof-did-look-dry"
                };
                self.with(key, &[("depth", Value::from((level_mm / 10.0).round()))])
            }
        }
    }

    /// What a reading, a look or a bucket shows.
    pub fn proof_shows(&self, probe: &Probe, shown: &Shown) -> String {
        match (probe, shown) {
            (Probe::Read(point), Shown::Reading(shown)) => self.display(*shown, point.mode),
            (_, Shown::Findings(found)) if found.is_empty() => self.get("finding-nothing"),
            (_, Shown::Findings(found)) => {
                let found = found.iter().map(|f| self.get(&format!("finding-{f}")));
                found.collect::<Vec<_>>().join(" ")
            }
            (_, Shown::Bucket(strength)) => self.get(&format!("bucket-{strength}")),
            // A look shows no reading.
            (Probe::Inspect(_) | Probe::BucketTest(_) | Probe::Recalibrate, Shown::Reading(_)) => {
                String::new()
            }
        }
    }

    /// What is on a meter's display, with its unit: `OL`, or a dash where it is dead.
    pub fn display(&self, shown: Display, mode: MeterMode) -> String {
        let WrittenDisplay {
            digits,
            prefix,
            unit,
        } = shown.written(mode);
        match shown {
            Display::Dead => "—".to_owned(),
            Display::OverRange => digits,
            Display::Value(_) => {
                let digits = self.digits(digits);
                format!("{digits}\u{a0}{prefix}{unit}")
            }
        }
    }
}
