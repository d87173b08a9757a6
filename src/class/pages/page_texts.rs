//! The words of the pages in one language, and what the scripts get of them.

use super::seat_state::{IDLE_S, SILENT_S, SeatState};
use super::shown::shown;
use crate::board::{AttemptView, BoardView};
use detent_class_protocol::{ClassKind, Standing, UnverifiedReason, Verdict};
use detent_content::{ContentError, ContentLibrary, Language, Texts, Value};
use detent_training::practice::Skill;
use serde::Serialize;
use std::collections::BTreeMap;

/// Texts that the scripts show besides those of the states. What is filled in stays open, as `{name}`.
const OF_SCRIPTS: &[&str] = &[
    "pages-attempt-running",
    "pages-back-online",
    "pages-book-mark-reason-missing",
    "pages-book-mark-saved",
    "pages-book-mark-stale",
    "pages-book-mark-wrong",
    "pages-download-newest",
    "pages-drill-so-far",
    "pages-hand-in-done",
    "pages-hand-in-none",
    "pages-lost",
    "pages-message-none",
    "pages-message-sent",
    "pages-minutes",
    "pages-minutes-hours",
    "pages-minutes-less",
    "pages-more-of",
    "pages-names-added",
    "pages-names-none",
    "pages-names-refused",
    "pages-no-answer",
    "pages-not-done",
    "pages-projector-joined",
    "pages-result-mismatch",
    "pages-result-not-assigned",
    "pages-result-other-content",
    "pages-result-other-program",
    "pages-result-too-long",
    "pages-result-verified",
    "pages-result-verified-points",
    "pages-result-verified-right",
    "pages-result-waiting",
    "pages-seat",
    "pages-sign-in-none",
    "pages-sign-in-refused",
    "pages-signed-out",
    "pages-standing-closed",
    "pages-standing-not-open",
    "pages-standing-open",
    "pages-standing-open-now",
    "pages-standing-open-until",
    "pages-standing-paused",
    "pages-standing-set-open",
    "pages-summary-here",
    "pages-summary-stuck",
    "pages-summary-unsafe",
    "pages-told-stuck",
    "pages-told-unsafe",
    "pages-trouble",
    "pages-undrawn",
    "pages-word-is",
];

/// What is filled into them.
const FILLED_IN: [&str; 16] = [
    "comment", "count", "done", "file", "hours", "minutes", "name", "number", "of", "points",
    "result", "right", "seat", "time", "what", "word",
];

/// The words of the pages in one language. Made once for each language: the texts are read and the scenarios gone through.
#[derive(Debug)]
pub struct PageTexts {
    pub(super) texts: Texts,
    /// Titles of the jobs, by the name of their file without folder and ending.
    titles: BTreeMap<String, String>,
}

/// What a script is told about its page.
#[derive(Serialize)]
struct ScriptData<'a> {
    language: &'static str,
    texts: BTreeMap<String, String>,
    titles: &'a BTreeMap<String, String>,
    /// Names of the drills, by the fixed names of their skills.
    drills: BTreeMap<&'static str, String>,
    /// Names and signs of the states, those who need help soonest first.
    states: [(&'static str, &'static str); SeatState::ALL.len()],
    idle_s: u32,
    silent_s: u32,
    board: Option<&'a BoardView>,
    attempt: Option<String>,
}

/// A job's name without folder and ending.
fn stem(job: &str) -> &str {
    let name = job.rsplit(['/', '\\']).next().unwrap_or(job);
    name.strip_suffix(".ron").unwrap_or(name)
}

impl PageTexts {
    /// The words in this language, with the titles of the library's jobs.
    ///
    /// # Errors
    ///
    /// As [`ContentLibrary::scenarios`].
    pub fn new(language: Language, library: &ContentLibrary) -> Result<PageTexts, ContentError> {
        let scenarios = library.scenarios()?.into_iter();
        let titles = scenarios.map(|source| {
            let title = match language {
                Language::En => source.scenario.title.en,
                Language::Es => source.scenario.title.es,
            };
            (stem(&source.file).to_owned(), title)
        });
        Ok(PageTexts {
            texts: Texts::load(language),
            titles: titles.collect(),
        })
    }

    /// The words in each language.
    ///
    /// # Errors
    ///
    /// As [`ContentLibrary::scenarios`].
    pub fn in_each_language(
        library: &ContentLibrary,
    ) -> Result<[PageTexts; Language::ALL.len()], ContentError> {
        let [english, spanish] = Language::ALL.map(|language| PageTexts::new(language, library));
        Ok([english?, spanish?])
    }

    /// The language.
    pub fn language(&self) -> Language {
        self.texts.language()
    }

    pub(super) fn get(&self, key: &str) -> String {
        self.texts.get(key)
    }

    pub(super) fn with(&self, key: &str, args: &[(&str, String)]) -> String {
        let args: Vec<(&str, Value<'_>)> = (args.iter())
            .map(|(name, value)| (*name, Value::from(value.as_str())))
            .collect();
        self.texts.with(key, &args)
    }

    /// What a job is called, by the name of its file.
    pub(super) fn job(&self, job: &str) -> String {
        let stem = stem(job);
        (self.titles.get(stem)).map_or_else(|| shown(stem), Clone::clone)
    }

    /// What a drill is called, by the fixed name of its skill.
    fn drill(&self, skill: &str) -> String {
        let known = Skill::ALL.iter().any(|known| known.name() == skill);
        match known {
            true => self.get(&format!("skill-{skill}")),
            false => shown(skill),
        }
    }

    /// What an attempt is at.
    pub(super) fn work(&self, attempt: &AttemptView) -> String {
        match &attempt.drill {
            Some(drill) => self.drill(&drill.drill),
            None => self.job(&attempt.job),
        }
    }

    /// How far an attempt has come that is not finished, or what came of it.
    pub(super) fn come_to(&self, attempt: &AttemptView) -> String {
        let right = attempt.drill.as_ref().and_then(|drill| {
            let right = ("right", drill.right?.to_string());
            let args = [
                right,
                ("done", drill.done.to_string()),
                ("of", drill.questions.to_string()),
            ];
            Some(args)
        });
        match (&attempt.verdict, attempt.closed, right) {
            (_, false, Some(args)) => self.with("pages-drill-so-far", &args),
            (_, false, None) => self.get("pages-attempt-running"),
            (Verdict::Verified { .. }, true, Some(args)) => {
                self.with("pages-result-verified-right", &args)
            }
            (verdict, true, _) => self.verdict(verdict),
        }
    }

    /// A duration in whole minutes.
    pub(super) fn duration(&self, seconds: u32) -> String {
        let minutes = ("minutes", (seconds / 60 % 60).to_string());
        match (seconds / 3600, seconds / 60 % 60) {
            (0, 0) => self.get("pages-minutes-less"),
            (0, _) => self.with("pages-minutes", &[minutes]),
            (hours, _) => {
                let hours = ("hours", hours.to_string());
                self.with("pages-minutes-hours", &[hours, minutes])
            }
        }
    }

    pub(super) fn kind(&self, kind: ClassKind) -> String {
        self.get(match kind {
            ClassKind::Practice => "pages-kind-practice",
            ClassKind::Examination => "pages-kind-examination",
        })
    }

    pub(super) fn standing(&self, standing: Standing) -> String {
        let after = |key, seconds| self.with(key, &[("time", self.duration(seconds))]);
        match standing {
            Standing::NotOpen { in_s } => after("pages-standing-not-open", in_s),
            Standing::Open { left_s: Some(left) } => after("pages-standing-open-until", left),
            Standing::Open { left_s: None } => self.get("pages-standing-open"),
            Standing::Paused => self.get("pages-standing-paused"),
            Standing::Closed => self.get("pages-standing-closed"),
        }
    }

    /// What came of a finished attempt.
    pub(super) fn verdict(&self, verdict: &Verdict) -> String {
        self.get(match verdict {
            Verdict::Waiting => "pages-result-waiting",
            Verdict::Verified {
                points: Some(points),
            } => {
                let tenths = (points * 10.0).round() / 10.0;
                let points = ("points", self.texts.digits(tenths.to_string()));
                return self.with("pages-result-verified-points", &[points]);
            }
            Verdict::Verified { points: None } => "pages-result-verified",
            Verdict::Mismatch => "pages-result-mismatch",
            Verdict::NotAssigned => "pages-result-not-assigned",
            Verdict::Unverified(UnverifiedReason::OtherProgram) => "pages-result-other-program",
            Verdict::Unverified(UnverifiedReason::OtherContent) => "pages-result-other-content",
            Verdict::Unverified(UnverifiedReason::TooLong) => "pages-result-too-long",
        })
    }

    /// What the script of a page is told, as JSON.
    pub(super) fn for_script(&self, board: Option<&BoardView>, attempt: Option<String>) -> String {
        let open: Vec<(&str, String)> =
            FILLED_IN.map(|name| (name, format!("{{{name}}}"))).to_vec();
        let of_states = SeatState::ALL.map(SeatState::key);
        let texts = (OF_SCRIPTS.iter().map(|key| (*key).to_owned()))
            .chain(of_states)
            .map(|key| {
                let text = self.with(&key, &open);
                (key, text)
            });
        let data = ScriptData {
            language: self.language().code(),
            texts: texts.collect(),
            titles: &self.titles,
            drills: (Skill::ALL.iter())
                .map(|skill| (skill.name(), self.drill(skill.name())))
                .collect(),
            states: SeatState::ALL.map(|state| (state.name(), state.sign())),
            idle_s: IDLE_S,
            silent_s: SILENT_S,
            board,
            attempt,
        };
        serde_json::to_string(&data).unwrap_or_default()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::pages::tests::page_texts;

    #[test]
    fn durations_are_whole_minutes() {
        let texts = page_texts(Language::En);
        for (seconds, told) in [
            (0, "< 1 min"),
            (59, "< 1 min"),
            (60, "1 min"),
            (3599, "59 min"),
            (3600, "1 h 0 min"),
            (7325, "2 h 2 min"),
        ] {
            assert_eq!(texts.duration(seconds), told);
        }
    }

    #[test]
    fn points_are_written_as_the_language_writes_them() {
        let told = |language, points| {
            page_texts(language).verdict(&Verdict::Verified {
                points: Some(points),
            })
        };
        assert_eq!(told(Language::En, 84.0), "Verified: 84 of 100");
        assert_eq!(told(Language::En, 69.96), "Verified: 70 of 100");
        assert_eq!(told(Language::Es, 69.94), "Verificado: 69,9 de 100");
    }

    #[test]
    fn jobs_are_told_by_their_titles_and_strange_ones_by_their_names() {
        let texts = page_texts(Language::Es);
        for job in [
            "blinking-lock-lamp",
            "blinking-lock-lamp.ron",
            "scenarios/blinking-lock-lamp.ron",
        ] {
            assert_eq!(texts.job(job), "El candado que parpadea", "{job}");
        }
        assert_eq!(texts.job("own/<b>\u{202e}x.ron"), "<b>x");
    }

    #[test]
    fn every_text_of_the_scripts_is_there_and_used() {
        let scripts = [
            include_str!("board.js"),
            include_str!("gradebook.js"),
            include_str!("page.js"),
            include_str!("projector.js"),
            include_str!("sign_in.js"),
        ]
        .concat();
        let named = |key: &str| scripts.split(['"', '`']).any(|literal| literal == key);
        for key in OF_SCRIPTS {
            assert!(named(key), "no script shows {key}");
        }
        let is_sent = |key: &str| {
            OF_SCRIPTS.contains(&key)
                || key == "pages-state-${state}"
                || SeatState::ALL.iter().any(|state| state.key() == key)
        };
        let literals = scripts.split(['"', '`']);
        for key in literals.filter(|literal| literal.starts_with("pages-")) {
            assert!(is_sent(key), "{key} is not sent");
        }
        for texts in Language::ALL.map(page_texts) {
            for key in OF_SCRIPTS {
                assert!(texts.texts.has(key), "{key}");
            }
            let data = texts.for_script(None, None);
            assert!(!data.contains("{$"), "something is not filled in: {data}");
        }
    }
}
