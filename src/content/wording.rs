//! Typed outcomes in words: what the window and the commands say about them. Each type has one exhaustive
//! function, so that a new case does not compile until it has its text.

use super::text::{Texts, Value};
use detent_simulation::controller::{ControlMode, EntryError, Resets};
use detent_training::bench::{Caution, Refusal, SignalWord};
use detent_training::lesson::Loss;
use detent_training::reason::GoodPractice;
use detent_training::variant::Difficulty;

impl Texts {
    /// What the control is doing.
    pub fn control_mode(&self, mode: ControlMode) -> String {
        self.get(match mode {
            ControlMode::Off => "control-off",
            ControlMode::Starved => "control-starved",
            ControlMode::Idle => "control-idle",
            ControlMode::Program => "control-program",
            ControlMode::Hold => "control-hold",
            ControlMode::Service => "control-service",
        })
    }

    /// Why points were lost.
    pub fn loss(&self, loss: &Loss) -> String {
        let code = |code: &u8| Value::from(format!("{code:02}"));
        let whole = |number: f64| Value::from(format!("{number:.0}"));
        let count = |count: usize| Value::from(count.to_string());
        let say = |args: &[(&str, Value<'_>)]| self.with(&format!("lost-{}", loss.kind()), args);
        match loss {
            Loss::FailedTry { rule } => say(&[("rule", Value::from(self.broken_rule(*rule)))]),
            Loss::RestTooShort { seconds } => say(&[("seconds", whole(*seconds))]),
            Loss::Misread { noted, shown } => {
                let shown: Vec<String> = shown.iter().map(|c| format!("{c:02}")).collect();
                say(&[
                    ("noted", code(noted)),
                    ("shown", Value::from(shown.join(", "))),
                ])
            }
            Loss::CodeNotNoted { code: missed, .. } => say(&[("code", code(missed))]),
            Loss::CodeSlip { noted } => say(&[("noted", code(noted))]),
            Loss::BoughtOnTheCode { part }
            | Loss::OverRepaired { part }
            | Loss::NotApproved { part } => say(&[("part", Value::from(part.as_str()))]),
            Loss::WrongCause { said, truth } | Loss::LuckyRepair { said, truth } => say(&[
                ("said", Value::from(self.causes(said))),
                ("truth", Value::from(self.causes(truth))),
            ]),
            Loss::WrongPartNamed { named, needed } => say(&[
                ("named", Value::from(self.numbers(named.as_slice()))),
                ("needed", Value::from(self.numbers(needed))),
            ]),
            Loss::WrongAdvice { given, due } => say(&[
                ("given", Value::from(self.get(&format!("advice-{given}")))),
                ("due", Value::from(self.get(&format!("advice-{due}")))),
            ]),
            Loss::Slow { minutes, par } => {
                say(&[("minutes", whole(*minutes)), ("par", whole(*par))])
            }
            Loss::Overspent { spent, needed, .. } => {
                say(&[("spent", whole(*spent)), ("needed", whole(*needed))])
            }
            Loss::OverBudget { bill, budget } => {
                say(&[("bill", whole(*bill)), ("budget", whole(*budget))])
            }
            Loss::OverRepairLimit { bill, limit } => {
                say(&[("bill", whole(*bill)), ("limit", whole(*limit))])
            }
            Loss::OverQuote { bill, quoted } => {
                say(&[("bill", whole(*bill)), ("quoted", whole(*quoted))])
            }
            Loss::HintTaken { rung } => {
                let rung = self.get(&format!("hint-rung-{rung}"));
                say(&[("rung", Value::from(rung))])
            }
            Loss::RivalsLeft { open, rivals } => {
                say(&[("open", count(*open)), ("rivals", count(*rivals))])
            }
            Loss::NoLeakCheck { component } => {
                say(&[("component", Value::from(self.component(*component)))])
            }
            Loss::RunFallsShort { gap } => {
                let gap = self.get(&format!("run-gap-{gap}"));
                say(&[("gap", Value::from(gap))])
            }
            Loss::NeverEntered
            | Loss::GoodBoardReplaced { .. }
            | Loss::WrongPart { .. }
            | Loss::NotCured
            | Loss::NoReport
            | Loss::Shock
            | Loss::TesterShock
            | Loss::TouchedCharge
            | Loss::OpenedLive
            | Loss::OhmsOnLive
            | Loss::LiveNotAllowed
            | Loss::Flood
            | Loss::OpenedUnderPressure
            | Loss::LidSpinning
            | Loss::DischargedLive
            | Loss::HandInDrive
            | Loss::Scald
            | Loss::DischargedUnmeasured
            | Loss::NotProvedDead
            | Loss::MeterNotProved
            | Loss::NoEvidence
            | Loss::NotRecalibrated
            | Loss::CalibratedWithLaundry
            | Loss::NoProvingRun
            | Loss::NotDemonstrated => say(&[]),
        }
    }

    /// Failure modes by name, or that nothing is wrong.
    fn causes(&self, modes: &[String]) -> String {
        if modes.is_empty() {
            return self.get("mode-nothing");
        }
        let modes: Vec<String> = modes.iter().map(|id| self.mode(id)).collect();
        modes.join("; ")
    }

    /// Part numbers, or that no part is.
    fn numbers(&self, parts: &[String]) -> String {
        if parts.is_empty() {
            return self.get("report-no-part");
        }
        parts.join(", ")
    }

    /// What was wrong with a try at the entry gesture, inside a sentence.
    pub fn broken_rule(&self, broke: EntryError) -> String {
        self.get(&format!("rule-{}", broke.rule()))
    }

    /// The same by itself, with the time by which it was missed.
    pub fn broken_rule_by(&self, broke: EntryError) -> String {
        let rule = self.get(&format!("broke-{}", broke.rule()));
        match broke {
            EntryError::Late { by_ms, .. }
            | EntryError::PressTooLong { by_ms, .. }
            | EntryError::HoldTooShort { by_ms, .. }
            | EntryError::HoldTooLong { by_ms, .. }
            | EntryError::TooSoon { by_ms, .. }
            | EntryError::StoodTooShort { by_ms, .. } => {
                format!("{rule} ({:.2} s)", f64::from(by_ms) / 1000.0)
            }
            EntryError::WrongWay { .. }
            | EntryError::TooManyDetents { .. }
            | EntryError::TooFewDetents { .. }
            | EntryError::OutOfOrder { .. }
            | EntryError::WindowOver { .. } => rule,
        }
    }

    /// Why the bench refused an action.
    pub fn refusal(&self, refusal: &Refusal) -> String {
        let part = |key: &str, number: &str| self.with(key, &[("part", Value::from(number))]);
        match refusal {
            Refusal::CabinetClosed => self.get("refusal-cabinet-closed"),
            Refusal::LidClosed => self.get("refusal-lid-closed"),
            Refusal::NeedsPart(_) => self.get("refusal-needs-part"),
            Refusal::NoButton(button) => {
                let button = Value::from(self.get(&format!("button-{button}")));
                self.with("refusal-no-button", &[("button", button)])
            }
            Refusal::LidLocked => self.get("refusal-lid-locked"),
            Refusal::NoConnector(_) => self.get("refusal-no-connector"),
            Refusal::NoPart(number) => part("refusal-no-part", number),
            Refusal::DoesNotFit(number) => part("refusal-does-not-fit", number),
            Refusal::NotInHand(number) => part("refusal-not-in-hand", number),
            Refusal::NoCause(cause) => {
                let cause = Value::from(cause.as_str());
                self.with("refusal-no-cause", &[("cause", cause)])
            }
            Refusal::NothingToHold => self.get("refusal-nothing-to-hold"),
            Refusal::NoReading(number) => {
                let reading = Value::from(number.to_string());
                self.with("refusal-no-reading", &[("reading", reading)])
            }
            Refusal::NoLook(number) => {
                let look = Value::from(number.to_string());
                self.with("refusal-no-look", &[("look", look)])
            }
            Refusal::Finished => self.get("refusal-finished"),
            Refusal::PlugInOutlet => self.get("refusal-plug-in-outlet"),
            Refusal::NotNoted(code) => {
                let code = Value::from(format!("{code:02}"));
                self.with("refusal-not-noted", &[("code", code)])
            }
            Refusal::NoHints => self.get("refusal-no-hints"),
            Refusal::AlreadySo => self.get("refusal-already-so"),
        }
    }

    /// How difficult a variant is.
    pub fn variant_difficulty(&self, difficulty: &Difficulty) -> String {
        let args = [
            (
                "cost",
                Value::from(format!("{:.0}", difficulty.planned_cost)),
            ),
            (
                "share",
                Value::from(self.percent(difficulty.mean_share(), 0)),
            ),
            (
                "chance",
                Value::from(self.percent(difficulty.chance_of_passing, 0)),
            ),
        ];
        self.with("variant-difficulty", &args)
    }

    /// The quickest way out of a fault hold on this board, if there is one.
    pub fn out_of_hold(&self, resets: &Resets) -> Option<String> {
        let ways = self.hold_resets(resets).into_iter();
        ways.filter(|(works, _)| *works).map(|(_, way)| way).next()
    }

    /// The three ways out of a fault hold, and whether each does anything on a board with these resets.
    pub fn hold_resets(&self, resets: &Resets) -> [(bool, String); 3] {
        let seconds = |ms: u32| Value::from(f64::from(ms) / 1000.0);
        let hold = match resets.hold {
            Some(hold) => {
                let button = Value::from(self.get(&format!("button-{}", hold.button)));
                let args = [("button", button), ("seconds", seconds(hold.ms))];
                self.with("reset-hold", &args)
            }
            None => self.get("reset-hold-not"),
        };
        let lid = match &resets.lid_cycle {
            Some(cycle) => {
                let times = Value::from(cycle.cycles);
                let args = [("times", times), ("seconds", seconds(cycle.within_ms))];
                self.with("reset-lid", &args)
            }
            None => match resets.lid_moves {
                Some(lid) => {
                    let times = Value::from(lid.moves);
                    let args = [("times", times), ("seconds", seconds(lid.within_ms))];
                    self.with("reset-lid-moves", &args)
                }
                None => self.get("reset-lid-not"),
            },
        };
        [
            (resets.hold.is_some(), hold),
            (
                resets.lid_cycle.is_some() || resets.lid_moves.is_some(),
                lid,
            ),
            (
                !resets.kept,
                self.get(if resets.kept {
                    "reset-power-not"
                } else {
                    "reset-power"
                }),
            ),
        ]
    }

    /// Why nothing could come of a try begun in a fault hold of a board with these resets, and the shortest way
    /// out of it.
    pub fn try_in_hold(&self, resets: &Resets) -> String {
        let ways = self.hold_resets(resets);
        let way = ways.into_iter().find_map(|(does, way)| does.then_some(way));
        let way = Value::from(way.unwrap_or_default());
        self.with("try-in-hold", &[("way", way)])
    }

    /// A caution.
    pub fn caution(&self, caution: Caution) -> String {
        self.get(&format!("caution-{caution}"))
    }

    /// A signal word.
    pub fn signal_word(&self, word: SignalWord) -> String {
        self.get(&format!("signal-{word}"))
    }

    /// What is sound in every job.
    pub fn good_practice(&self, practice: GoodPractice) -> String {
        self.get(&format!("sound-{practice}"))
    }
}
