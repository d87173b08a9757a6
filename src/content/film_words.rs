//! What somebody did at the bench and what came of it, deed by deed, in words: for whoever watches an attempt.

use super::text::{Texts, Value};
use detent_simulation::controller::Board;
use detent_simulation::interface::{Button, Connector, Direction};
use detent_simulation::units::Span;
use detent_training::bench::{
    Action, Grip, LogEntry, MeterMode, MilestoneKind, Part, Report, Verdict,
};

/// What words for deeds need to know of a job.
#[derive(Clone, Copy)]
pub struct DeedWords<'a> {
    /// Texts.
    pub texts: &'a Texts,
    /// The board whose sheet names the pins.
    pub board: &'a Board,
    /// What the counter sells.
    pub parts: &'a [Part],
}

impl DeedWords<'_> {
    /// A deed.
    pub fn deed(&self, action: &Action) -> String {
        let texts = self.texts;
        let get = |name: &str| texts.get(&format!("film-did-{name}"));
        let with = |name: &str, argument: &str, value: String| {
            texts.with(
                &format!("film-did-{name}"),
                &[(argument, Value::from(value))],
            )
        };
        let part =
            |name: &str, number: &str| with(name, "part", texts.numbered(number, self.parts));
        let code = |name: &str, code: u8| with(name, "code", format!("{code:02}"));
        match action {
            Action::Plug => get("plug"),
            Action::Unplug => get("unplug"),
            Action::OpenLid => get("open-lid"),
            Action::CloseLid => get("close-lid"),
            Action::Detent(way) => self.turned(*way, 1),
            Action::Down(button) => with("button-down", "button", texts.button(*button)),
            Action::Up(button) => with("button-up", "button", texts.button(*button)),
            Action::OpenCabinet => get("open-cabinet"),
            Action::CloseCabinet => get("close-cabinet"),
            Action::Discharge => get("discharge"),
            Action::BailOut => get("bail-out"),
            Action::Pull(connector) => with("pull", "connector", self.connector(connector)),
            Action::Seat(connector) => with("seat", "connector", self.connector(connector)),
            Action::Probe {
                mode,
                red,
                black,
                grip,
            } => {
                let name = match (mode, grip) {
                    (MeterMode::AmpsClamp, _) => "clamp",
                    (_, Grip::Clips) => "probe",
                    (_, Grip::Fingers) => "probe-fingers",
                };
                let args = [
                    ("mode", Value::from(texts.meter_mode(*mode))),
                    ("red", Value::from(texts.pin(self.board, *red))),
                    ("black", Value::from(texts.pin(self.board, *black))),
                ];
                texts.with(&format!("film-did-{name}"), &args)
            }
            Action::LiftProbes => get("lift-probes"),
            Action::HoldDisplay => get("hold-display"),
            Action::ReleaseDisplay => get("release-display"),
            Action::TestMeter => get("test-meter"),
            Action::ReplaceMeterFuse => get("replace-meter-fuse"),
            Action::Inspect(component) => with("inspect", "component", texts.component(*component)),
            Action::PutRight(component) => {
                let work = texts.get(&format!("hand-work-{component}"));
                let args = [
                    ("component", Value::from(texts.component(*component))),
                    ("work", Value::from(work)),
                ];
                texts.with("film-did-put-right", &args)
            }
            Action::ReplaceLeads => get("replace-leads"),
            Action::Order(number) => part("order", number),
            Action::Return(number) => part("return", number),
            Action::Fit(number) => part("fit", number),
            Action::NoteCode(noted) => code("note-code", *noted),
            Action::StrikeCode(struck) => code("strike-code", *struck),
            Action::Report(report) => self.report(report),
            Action::ShutTaps => get("shut-taps"),
            Action::TakeHint(rung) => {
                with("take-hint", "rung", texts.get(&format!("hint-rung-{rung}")))
            }
            Action::Quote(_) => get("quote"),
            Action::CheckForLeaks => get("check-for-leaks"),
            Action::ResetOutlet => get("reset-outlet"),
            Action::Ask(question) => with("ask", "question", texts.question(*question)),
            Action::UnloadBasket => get("unload-basket"),
            Action::LoadBasket => get("load-basket"),
            Action::BucketTest(pipe) => get(&format!("bucket-{pipe}")),
        }
    }

    /// So many detents one after the other.
    pub fn turned(&self, way: Direction, detents: usize) -> String {
        let key = match way {
            Direction::Left => "film-did-turn-left",
            Direction::Right => "film-did-turn-right",
        };
        self.texts.with(key, &[("detents", Value::from(detents))])
    }

    /// A button pressed for so long and let go.
    pub fn pressed(&self, button: Button, held: Span) -> String {
        let texts = self.texts;
        let seconds = texts.digits(format!("{:.1}", held.seconds()));
        let args = [
            ("button", Value::from(texts.button(button))),
            ("seconds", Value::from(seconds)),
        ];
        texts.with("film-did-press", &args)
    }

    fn connector(&self, connector: &Connector) -> String {
        match connector {
            Connector::Board(label) => label.clone(),
            Connector::Load(component) => self.texts.component(*component),
        }
    }

    fn report(&self, report: &Report) -> String {
        let texts = self.texts;
        match report.verdict {
            Verdict::CausesNamed => {
                let causes: Vec<String> = report.causes.iter().map(|id| texts.mode(id)).collect();
                let causes = Value::from(causes.join("; "));
                texts.with("film-did-report", &[("causes", causes)])
            }
            Verdict::NothingWrong => texts.get("film-did-report-nothing-wrong"),
            Verdict::GivenUp => texts.get("film-did-report-given-up"),
        }
    }

    /// What a deed brought to light, as it stands in the bench's log; nothing for what shows by itself.
    pub fn came_of_it(&self, entry: &LogEntry) -> Option<String> {
        let texts = self.texts;
        match entry {
            LogEntry::Reading(reading) => Some(texts.display(reading.shown, reading.mode)),
            LogEntry::MeterTest(test) => Some(texts.get(match test.is_good() {
                true => "meter-test-good",
                false => "meter-test-bad",
            })),
            LogEntry::Found(found) if found.findings.is_empty() => {
                Some(texts.get("finding-nothing"))
            }
            LogEntry::Found(found) => {
                let findings = found.findings.iter();
                let findings: Vec<String> = findings
                    .map(|finding| texts.get(&format!("finding-{finding}")))
                    .collect();
                Some(findings.join(" "))
            }
            LogEntry::Quoted(given) => Some(texts.quote_given(given)),
            LogEntry::BucketTested(test) => Some(texts.bucket_test(test)),
            LogEntry::LeakChecked(check) => Some(texts.leak_check(check)),
            LogEntry::Action { .. }
            | LogEntry::Milestone(_)
            | LogEntry::Ran(_)
            | LogEntry::Event(_)
            | LogEntry::Repair { .. } => None,
        }
    }
}

impl Texts {
    /// What the machine went through. `answers` are told only where they no longer give anything away: which code the
    /// lamps showed.
    pub fn milestone(&self, kind: MilestoneKind, answers: bool) -> String {
        let key = match kind {
            MilestoneKind::PowerReset => "film-milestone-power-reset",
            MilestoneKind::ServiceEntered => "film-milestone-service-entered",
            MilestoneKind::ProgramStarted => "film-milestone-program-started",
            MilestoneKind::ProgramCancelled => "film-milestone-program-canceled",
            MilestoneKind::ProgramFinished => "film-milestone-program-finished",
            MilestoneKind::Held(_) => "film-milestone-held",
            MilestoneKind::CalibrationStarted => "film-milestone-calibration-started",
            MilestoneKind::CalibrationPassed => "film-milestone-calibration-passed",
            MilestoneKind::CalibrationFailed(_) => "film-milestone-calibration-failed",
            MilestoneKind::CodeShown(code) if answers => {
                let code = Value::from(format!("{code:02}"));
                return self.with("film-milestone-code-shown", &[("code", code)]);
            }
            MilestoneKind::CodeShown(_) => "film-milestone-some-code-shown",
            MilestoneKind::CodesCleared => "film-milestone-codes-cleared",
        };
        self.get(key)
    }
}
