//! The customer's wash in words.

use super::text::{Texts, Value};
use detent_simulation::controller::PhaseKind;
use detent_training::lesson::{StoredCode, WashEnd};

impl Texts {
    /// How the wash ended.
    pub fn wash_end(&self, end: WashEnd) -> String {
        let key = format!("wash-end-{}", end.name());
        match end {
            WashEnd::Stopped(monitor) => {
                let monitor = self.get(&format!("monitor-{monitor}"));
                self.with(&key, &[("monitor", Value::from(monitor))])
            }
            WashEnd::Finished
            | WashEnd::NeverStarted
            | WashEnd::WentDark
            | WashEnd::CalledOff
            | WashEnd::StillRunning => self.get(&key),
        }
    }

    /// The phase of a program.
    pub fn wash_phase(&self, phase: PhaseKind) -> String {
        self.get(&format!("wash-phase-{phase}"))
    }

    /// A code that the wash stored, and when.
    pub fn wash_code(&self, stored: &StoredCode) -> String {
        let minutes = self.digits(format!("{:.1}", stored.time.seconds() / 60.0));
        let args = [
            ("code", Value::from(format!("{:02}", stored.code))),
            ("minutes", Value::from(minutes)),
        ];
        self.with("wash-trace-code", &args)
    }
}
