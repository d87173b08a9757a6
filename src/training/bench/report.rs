//! The written report at the end of the job.

use detent_simulation::names;
use schemars::JsonSchema;
use serde::de::{self, SeqAccess, Visitor};
use serde::{Deserialize, Deserializer, Serialize};
use std::fmt;

names! {
    /// What the customer is told for the time after the repair.
    #[derive(JsonSchema)]
    Advice {
        /// Nothing.
        None = "none",
        /// To keep both taps fully open.
        KeepTapOpen = "keep-tap-open",
        /// To clean the inlet screens from time to time.
        CleanStrainer = "clean-strainer",
        /// To use less detergent.
        LessDetergent = "less-detergent",
        /// To have an electrician check the outlet.
        CheckOutlet = "check-outlet",
        /// To level the machine.
        LevelMachine = "level-machine",
        /// To plug the machine straight into the outlet.
        NoExtensionCord = "no-extension-cord",
        /// To have a plumber look at the water supply.
        CheckWater = "check-water",
        /// To replace the machine rather than repair it.
        Replace = "replace",
    }
}

/// What a report concludes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub enum Verdict {
    /// It names what failed; one that names nothing concludes nothing.
    #[default]
    CausesNamed,
    /// Nothing is wrong with the machine.
    NothingWrong,
    /// The job is given up.
    GivenUp,
}

/// The written report at the end of the job.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Report {
    /// The failure modes that are named as causes. Older reports say `cause` and name one or none.
    #[serde(alias = "cause", deserialize_with = "one_or_more")]
    pub causes: Vec<String>,
    /// Number of the part that was needed, or none.
    pub part: Option<String>,
    /// Readings in the notebook, by number, that prove it.
    pub proof: Vec<usize>,
    /// Looks in the notebook, by number, that prove it. Older reports cite none.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[schemars(extend("default" = []))]
    pub looks: Vec<usize>,
    /// What the customer is told.
    #[serde(default = "no_advice")]
    pub advice: Advice,
    /// What it concludes.
    #[serde(default)]
    pub verdict: Verdict,
}

impl Report {
    /// The job is given up, and nothing else is said.
    pub fn given_up() -> Report {
        Report {
            causes: Vec::new(),
            part: None,
            proof: Vec::new(),
            looks: Vec::new(),
            advice: Advice::None,
            verdict: Verdict::GivenUp,
        }
    }

    /// Whether the customer was told that the machine washes again.
    pub fn calls_it_repaired(&self) -> bool {
        self.concludes() && self.verdict != Verdict::GivenUp && self.advice != Advice::Replace
    }

    /// Whether it comes to a conclusion: it names a cause, says that nothing is wrong, or gives the job up.
    /// Only such a report is answered.
    pub fn concludes(&self) -> bool {
        match self.verdict {
            Verdict::CausesNamed => !self.causes.is_empty(),
            Verdict::NothingWrong | Verdict::GivenUp => true,
        }
    }
}

fn no_advice() -> Advice {
    Advice::None
}

/// A list of names, one name or none.
fn one_or_more<'de, D: Deserializer<'de>>(from: D) -> Result<Vec<String>, D::Error> {
    struct Names;
    impl<'de> Visitor<'de> for Names {
        type Value = Vec<String>;
        fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
            f.write_str("a list of causes, or one cause or none")
        }
        fn visit_none<E: de::Error>(self) -> Result<Vec<String>, E> {
            Ok(Vec::new())
        }
        fn visit_some<D: Deserializer<'de>>(self, from: D) -> Result<Vec<String>, D::Error> {
            String::deserialize(from).map(|name| vec![name])
        }
        fn visit_seq<A: SeqAccess<'de>>(self, mut seq: A) -> Result<Vec<String>, A::Error> {
            let mut names = Vec::new();
            while let Some(name) = seq.next_element()? {
                names.push(name);
            }
            Ok(names)
        }
    }
    from.deserialize_any(Names)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> Report {
        ron::from_str(text).unwrap_or_else(|e| panic!("{text}: {e}"))
    }

    #[test]
    fn a_report_of_the_older_form_says_the_same() {
        let one = read(r#"(cause: Some("belt.broken"), part: None, proof: [2])"#);
        assert_eq!(
            one,
            read(r#"(causes: ["belt.broken"], part: None, proof: [2], advice: None)"#)
        );
        let nothing = read("(cause: None, part: None, proof: [])");
        assert!(nothing.causes.is_empty() && nothing.advice == Advice::None);
        let two = read(r#"(causes: ["a", "b"], part: Some("P-1"), proof: [], advice: Replace)"#);
        assert_eq!((two.causes.len(), two.advice), (2, Advice::Replace));
    }

    #[test]
    fn a_report_reads_back_from_what_was_written() {
        let report =
            read(r#"(causes: ["a", "b"], part: Some("P-1"), proof: [0], advice: CleanStrainer)"#);
        let written = ron::to_string(&report).expect("plain data");
        assert_eq!(read(&written), report);
        // One that cites no look is written as it was before looks could be cited.
        assert!(!written.contains("looks"), "{written}");
        let looked = read(r#"(causes: ["a"], part: None, proof: [], looks: [2])"#);
        let written = ron::to_string(&looked).expect("plain data");
        assert_eq!(
            (looked.looks.as_slice(), read(&written)),
            (&[2][..], looked.clone())
        );
    }
}
