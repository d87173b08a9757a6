//! Words for what can be wrong with attempts: their files, and doing them again.

use super::files::{number, placed};
use crate::content_library::AttemptSourceError;
use crate::disk::AttemptReadError;
use crate::replay::ReplayError;
use crate::text::{Texts, Value};
use detent_simulation::units::Time;
use detent_training::record::{Damage, Divergence, LogError, RecordError};

impl Texts {
    /// An attempt file that cannot be used: file, line, field, what is wrong and what to do.
    pub fn record_error(&self, error: &RecordError) -> String {
        let problem = self.damage(&error.problem);
        placed(&error.file, error.line as u64, &error.field, &problem)
    }

    /// What is wrong with an attempt file.
    pub fn damage(&self, damage: &Damage) -> String {
        let changed = |problem: String| self.with("record-line", &[("problem", problem.into())]);
        match damage {
            Damage::Empty => self.get("record-empty"),
            Damage::Foreign => self.get("record-foreign"),
            Damage::NotText => self.get("record-not-text"),
            Damage::NewerFormat { found, known } => self.with(
                "record-newer-format",
                &[("found", number(found)), ("known", number(known))],
            ),
            Damage::NoSuchFormat(format) => {
                self.with("record-no-such-format", &[("format", number(format))])
            }
            Damage::NoSuchRound { questions } => {
                self.with("record-no-such-round", &[("questions", number(questions))])
            }
            Damage::UnknownAction(name) => {
                self.with("record-unknown-action", &[("name", name.as_str().into())])
            }
            Damage::Line(error) => changed(self.ron_error(error)),
            Damage::IntegerRange(range) => changed(self.wrong_integer(range)),
            Damage::NotFinite(found) => {
                self.with("record-not-finite", &[("found", found.as_str().into())])
            }
            Damage::OtherText => self.get("record-other-text"),
            Damage::InFirstVisit { line, problem } => self.with(
                "record-in-first-visit",
                &[
                    ("line", number(line)),
                    ("problem", self.damage(problem).into()),
                ],
            ),
            Damage::OtherFirstVisit => self.get("record-other-first-visit"),
            Damage::SecondVisit => self.get("record-second-visit"),
            Damage::NotAHash(found) => {
                self.with("record-not-a-hash", &[("found", found.as_str().into())])
            }
            Damage::TimeBackwards { before, found } => self.with(
                "record-backwards",
                &[("before", time(*before)), ("found", time(*found))],
            ),
            Damage::TooLate(at) => self.with("record-too-late", &[("tick", number(at.0))]),
            Damage::TooLong { most } => self.with("record-too-long", &[("most", number(most))]),
            Damage::Truncated => self.get("record-truncated"),
            Damage::AfterEnd => self.get("record-after-end"),
            Damage::ScenarioChanged { scenario } => self.with(
                "record-scenario-changed",
                &[("scenario", scenario.as_str().into())],
            ),
        }
    }

    /// Where a replay leaves the recording.
    pub fn divergence(&self, divergence: &Divergence) -> String {
        let line = |key: &str, line: &usize| self.with(key, &[("line", number(line))]);
        match divergence {
            Divergence::Refused { line, at, refusal } => self.with(
                "record-refused",
                &[
                    ("line", number(line)),
                    ("at", time(*at)),
                    ("refusal", self.refusal(refusal).into()),
                ],
            ),
            Divergence::Overlap { line, at, busy } => self.with(
                "record-overlap",
                &[
                    ("line", number(line)),
                    ("at", time(*at)),
                    ("busy", time(*busy)),
                ],
            ),
            Divergence::EndsEarly { line: at } => line("record-ends-early", at),
            Divergence::State { line: at } => line("record-state", at),
            Divergence::Answer { line: at } => line("record-answer", at),
            Divergence::Score { line: at } => line("record-score", at),
            Divergence::Seal { line: at } => line("record-seal", at),
            Divergence::FirstVisit(divergence) => self.with(
                "record-first-visit",
                &[("problem", self.divergence(divergence).into())],
            ),
            Divergence::NoCallBack => self.get("record-no-call-back"),
        }
    }

    /// An attempt that could not be read from disk.
    pub fn attempt_read_error(&self, error: &AttemptReadError) -> String {
        match error {
            AttemptReadError::File(error) => self.content_error(error),
            AttemptReadError::Record(error) => self.record_error(error),
        }
    }

    /// An attempt that could not be done again.
    pub fn replay_error(&self, error: &ReplayError) -> String {
        match error {
            ReplayError::Record(error) => self.record_error(error),
            ReplayError::SetUp(error) => self.set_up_error(error),
            ReplayError::Differs { file, divergence } => {
                placed(file, 0, "", &self.divergence(divergence))
            }
        }
    }

    /// Why the scenario of an attempt is not at hand.
    pub fn attempt_source_error(&self, error: &AttemptSourceError) -> String {
        let (key, file, scenario) = match error {
            AttemptSourceError::NoScenarioName { file, scenario } => {
                ("record-no-scenario-name", file, scenario)
            }
            AttemptSourceError::NoScenario { file, scenario } => {
                ("record-no-scenario", file, scenario)
            }
            AttemptSourceError::AnotherText { file, scenario } => {
                ("record-another-text", file, scenario)
            }
            AttemptSourceError::Content(error) => return self.content_error(error),
        };
        let told = self.with(key, &[("scenario", scenario.as_str().into())]);
        placed(file, 1, "scenario", &told)
    }

    /// A line that could not be added to an attempt.
    pub fn log_error(&self, error: &LogError) -> String {
        match error {
            LogError::Io(reason) => {
                let reason = self.system_reason(reason);
                self.with("file-not-written", &[("reason", reason.into())])
            }
            LogError::Ron(error) => {
                let problem = self.ron_error(error);
                self.with("record-no-words", &[("problem", problem.into())])
            }
            LogError::TimeBackwards { before, found } => self.with(
                "record-log-backwards",
                &[("before", number(before.0)), ("found", number(found.0))],
            ),
            LogError::TooLate(at) => self.with("record-log-too-late", &[("tick", number(at.0))]),
            LogError::Finished => self.get("record-finished"),
            LogError::Broken => self.get("record-broken"),
        }
    }
}

#[cfg(not(target_family = "wasm"))]
impl Texts {
    /// An attempt file that could not be written.
    pub fn attempt_file_error(&self, error: &crate::attempt_file::AttemptFileError) -> String {
        use crate::attempt_file::AttemptFileError;
        match error {
            AttemptFileError::Io { file, reason } => self.not_written(file, reason),
            AttemptFileError::Exists(file) => placed(file, 0, "", &self.get("record-exists")),
            AttemptFileError::Log { file, source } => placed(file, 0, "", &self.log_error(source)),
            AttemptFileError::File(error) => self.content_error(error),
            AttemptFileError::Damaged(error) => self.record_error(error),
        }
    }
}

/// Machine time as everywhere in attempts and their lists.
fn time(at: Time) -> Value<'static> {
    number(at)
}
