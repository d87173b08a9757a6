//! Words for what is found in jobs and boards that read well.

use super::files::number;
use crate::file_check::{FileFinding, Found};
use crate::text::{Texts, Value};
use detent_simulation::controller::Monitor;
use detent_training::authoring::AuthoringFinding;
use detent_training::lesson::{Loss, Mains};

impl Texts {
    /// What was found in a file.
    pub fn file_finding(&self, finding: &FileFinding) -> String {
        match &finding.found {
            Found::Unreadable(problem) => self.problem(problem),
            Found::Authoring(finding) => self.authoring_finding(finding),
        }
    }

    /// What was found in a job or a board that reads well, and what to do.
    pub fn authoring_finding(&self, finding: &AuthoringFinding) -> String {
        let key = format!("author-{}", finding.name());
        let decimal =
            |of: f64, decimals: usize| Value::from(self.digits(format!("{of:.decimals$}")));
        match finding {
            AuthoringFinding::NeverShows { mode } => {
                self.with(&key, &[("mode", self.mode(mode).into())])
            }
            AuthoringFinding::OtherCodeThanDrawn { mode, codes } => self.with(
                &key,
                &[
                    ("mode", self.mode(mode).into()),
                    ("id", mode.as_str().into()),
                    ("codes", self.codes(codes).into()),
                ],
            ),
            AuthoringFinding::OtherCodes { expected, raised } => self.with(
                &key,
                &[
                    ("expected", self.codes(expected).into()),
                    ("raised", self.codes(raised).into()),
                ],
            ),
            AuthoringFinding::RivalAlike {
                mode,
                rival,
                share,
                same_repair,
            } => {
                let key = if *same_repair {
                    "author-rival-alike-same-repair"
                } else {
                    "author-rival-alike"
                };
                let args = [
                    ("mode", self.mode(mode).into()),
                    ("rival", self.cause(rival.as_deref()).into()),
                    ("share", self.percent(*share, 0).into()),
                ];
                self.with(key, &args)
            }
            AuthoringFinding::DialSlipped
            | AuthoringFinding::NoDialToWear
            | AuthoringFinding::SameInBothLanguages
            | AuthoringFinding::NoControlToBuy
            | AuthoringFinding::NoJobForGuide
            | AuthoringFinding::NoTable => self.get(&key),
            AuthoringFinding::ExpertStuck(error) => {
                let why = self.step_error(error);
                self.with(&key, &[("why", why.into())])
            }
            AuthoringFinding::ExpertFails { by, share } => {
                self.fails("author-expert-fails", by.as_deref(), *share)
            }
            AuthoringFinding::TooSlow { minutes, par } => self.with(
                &key,
                &[("minutes", decimal(*minutes, 1)), ("par", decimal(*par, 0))],
            ),
            AuthoringFinding::TooDear { bill, budget } => self.with(
                &key,
                &[("bill", decimal(*bill, 2)), ("budget", decimal(*budget, 2))],
            ),
            AuthoringFinding::GestureHardlyMet { share } => {
                self.with(&key, &[("share", self.percent(*share, 0).into())])
            }
            AuthoringFinding::GivesAway { component, word } => self.with(
                &key,
                &[
                    ("component", self.component(*component).into()),
                    ("word", word.as_str().into()),
                ],
            ),
            AuthoringFinding::UnknownText(text) => {
                self.with(&key, &[("key", text.as_str().into())])
            }
            AuthoringFinding::SoundMachineAccused { mains, monitors } => {
                let monitor = |monitor: &Monitor| self.get(&format!("code-{monitor}"));
                let all: Vec<String> = monitors.iter().map(monitor).collect();
                let args = [
                    ("volts", volts(*mains)),
                    ("monitors", all.join(" · ").into()),
                ];
                self.with(&key, &args)
            }
            AuthoringFinding::SoundMachineNeverDone { mains }
            | AuthoringFinding::SoundMachineNotRecalibrated { mains } => {
                self.with(&key, &[("volts", volts(*mains))])
            }
            AuthoringFinding::ChangedSincePacked(path) => {
                self.with(&key, &[("path", path.as_str().into())])
            }
            AuthoringFinding::GuideGoalMissed { step }
            | AuthoringFinding::GuideGoalAlready { step }
            | AuthoringFinding::GuideStraysItself { step } => {
                self.with(&key, &[("step", number_of(*step))])
            }
            AuthoringFinding::GuideStepRefused { step, why } => {
                let why = self.step_error(why);
                self.with(&key, &[("step", number_of(*step)), ("why", why.into())])
            }
            AuthoringFinding::GuideDoesHarm { step, loss } => {
                let why = self.loss(loss);
                self.with(&key, &[("step", number_of(*step)), ("why", why.into())])
            }
            AuthoringFinding::GuideFails { by, share } => {
                self.fails("author-guide-fails", by.as_deref(), *share)
            }
            AuthoringFinding::NoPlan(why) => self.with(&key, &[("why", why.as_str().into())]),
        }
    }

    /// That somebody does not pass, under `key`, or under `{key}-by` where one thing fails the whole job.
    fn fails(&self, key: &str, by: Option<&Loss>, share: f64) -> String {
        let share = self.percent(share, 0);
        match by {
            Some(loss) => {
                let why = self.loss(loss);
                let args = [("share", share.into()), ("why", why.into())];
                self.with(&format!("{key}-by"), &args)
            }
            None => self.with(key, &[("share", share.into())]),
        }
    }

    /// A failure mode, or that nothing is wrong.
    pub fn cause(&self, mode: Option<&str>) -> String {
        mode.map_or_else(|| self.get("author-nothing-wrong"), |mode| self.mode(mode))
    }

    /// Codes as the trade writes them.
    pub fn codes(&self, codes: &[u8]) -> String {
        let all: Vec<String> = codes.iter().map(|code| format!("{code:02}")).collect();
        if all.is_empty() {
            "—".to_owned()
        } else {
            all.join(", ")
        }
    }
}

fn number_of(step: usize) -> Value<'static> {
    Value::from(step.to_string())
}

fn volts(mains: Mains) -> Value<'static> {
    number(mains.rating().volts)
}
