//! A scenario that is being written: its text, changed field by field, with comments and order as they are.

use super::error::ContentError;
use super::reader::{Page, document_of};
use super::{ContentLibrary, Language, ScenarioSource, builtin};
use detent_syntax::document::Document;
use detent_syntax::error::{EditError, SyntaxError};
use detent_training::lesson::{Bilingual, Dimension, Hidden, Mains, Scenario};
use serde::Serialize;

/// Every field of a scenario, in the order in which one is written.
const FIELDS: [&str; 17] = [
    "title",
    "complaint",
    "goal",
    "course",
    "board",
    "mains",
    "seed",
    "fault",
    "dial_wear",
    "stale_codes",
    "expected_codes",
    "par_minutes",
    "budget",
    "live_tests_allowed",
    "hints_allowed",
    "worn_lead",
    "points",
];

/// A sentence of a scenario.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ScenarioSentence {
    /// Its title.
    Title,
    /// What the customer says.
    Complaint,
    /// What the trainee should learn.
    Goal,
}

impl ScenarioSentence {
    /// All of them, in the order of the file.
    pub const ALL: [ScenarioSentence; 3] = [
        ScenarioSentence::Title,
        ScenarioSentence::Complaint,
        ScenarioSentence::Goal,
    ];

    /// Its field in the file.
    pub const fn field(self) -> &'static str {
        match self {
            ScenarioSentence::Title => "title",
            ScenarioSentence::Complaint => "complaint",
            ScenarioSentence::Goal => "goal",
        }
    }

    /// As the scenario has it.
    pub fn of(self, scenario: &Scenario) -> &Bilingual {
        match self {
            ScenarioSentence::Title => &scenario.title,
            ScenarioSentence::Complaint => &scenario.complaint,
            ScenarioSentence::Goal => &scenario.goal,
        }
    }
}

/// One field with its new value.
#[derive(Clone, Debug, PartialEq)]
pub enum ScenarioChange {
    /// A sentence in one language.
    Sentence(ScenarioSentence, Language, String),
    /// The board, by its file name.
    Board(String),
    /// The supply.
    Mains(Mains),
    /// The seed of every draw.
    Seed(u64),
    /// The hidden fault.
    Fault(Hidden),
    /// Wear of the dial, 0 to 1.
    DialWear(f64),
    /// Codes left from long ago, newest first.
    StaleCodes(Vec<u8>),
    /// Codes that the author expects of the customer's wash; none where nothing is expected in particular.
    ExpectedCodes(Option<Vec<u8>>),
    /// Minutes a good technician should need.
    ParMinutes(f64),
    /// Money the customer will pay at most, whole units.
    Budget(f64),
    /// Whether meter work on the live machine is allowed.
    LiveTests(bool),
    /// Whether hints may be taken.
    Hints(bool),
    /// Whether a lead of the meter is broken inside.
    WornLead(bool),
    /// Highest points of a side.
    Points(Dimension, f64),
}

impl ScenarioChange {
    /// Path of the field that is changed, and the text of its new value.
    fn place_and_text(&self) -> (String, String) {
        let (place, text) = match self {
            ScenarioChange::Sentence(sentence, language, text) => {
                let path = format!("{}.{}", sentence.field(), language.code());
                return (path, written(text));
            }
            ScenarioChange::Points(side, points) => {
                return (format!("points.{side}"), written(points));
            }
            ScenarioChange::Board(board) => ("board", written(board)),
            ScenarioChange::Mains(mains) => ("mains", written(mains)),
            ScenarioChange::Seed(seed) => ("seed", written(seed)),
            ScenarioChange::Fault(fault) => ("fault", written(fault)),
            ScenarioChange::DialWear(wear) => ("dial_wear", written(wear)),
            ScenarioChange::StaleCodes(codes) => ("stale_codes", listed(codes)),
            ScenarioChange::ExpectedCodes(codes) => {
                let codes = codes
                    .as_deref()
                    .map(|codes| format!("Some({})", listed(codes)));
                ("expected_codes", codes.unwrap_or_else(|| "None".to_owned()))
            }
            ScenarioChange::ParMinutes(minutes) => ("par_minutes", written(minutes)),
            ScenarioChange::Budget(budget) => ("budget", written(budget)),
            ScenarioChange::LiveTests(allowed) => ("live_tests_allowed", written(allowed)),
            ScenarioChange::Hints(allowed) => ("hints_allowed", written(allowed)),
            ScenarioChange::WornLead(worn) => ("worn_lead", written(worn)),
        };
        (place.to_owned(), text)
    }
}

/// Codes as RON.
fn listed(codes: &[u8]) -> String {
    let codes: Vec<String> = codes.iter().map(written).collect();
    format!("[{}]", codes.join(", "))
}

/// A value as RON. Numbers, names, texts and lists of them cannot fail to be written.
fn written<T: Serialize + ?Sized>(value: &T) -> String {
    ron::to_string(value).unwrap_or_default()
}

/// A scenario that is being written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ScenarioDraft {
    /// The name of its file without folder and ending.
    pub stem: String,
    document: Document,
}

impl ScenarioDraft {
    /// The file that `detent new` begins with, without its words and without the codes that it expects: both are the
    /// writer's. Its comments are in this language.
    ///
    /// # Panics
    /// Never: a test reads both.
    pub fn new(stem: &str, language: Language) -> ScenarioDraft {
        let path = format!("assets/templates/scenario.{}.ron", language.code());
        let template = builtin::text(&path).expect("built in");
        let document = Document::parse(template).expect("the template is sound");
        let stem = stem.to_owned();
        let mut draft = ScenarioDraft { stem, document };
        draft.remove("expected_codes");
        for sentence in ScenarioSentence::ALL {
            for language in Language::ALL {
                let change = ScenarioChange::Sentence(sentence, language, String::new());
                let changed = draft.change(&change);
                debug_assert!(changed.is_ok(), "{changed:?}");
            }
        }
        draft
    }

    /// Takes a field out, if it is there.
    fn remove(&mut self, field: &str) {
        if self.document.value(field).is_some() {
            let removed = self.document.remove(field);
            debug_assert!(removed.is_ok(), "{removed:?}");
        }
    }

    /// A copy of a scenario, under another name. A place in a course is not copied: there is one for each job.
    ///
    /// # Panics
    /// Never: what was read as a scenario is RON.
    pub fn copy_of(source: &ScenarioSource, stem: &str) -> ScenarioDraft {
        let mut draft = ScenarioDraft::again(source);
        draft.stem = stem.to_owned();
        draft.remove("course");
        draft
    }

    /// A scenario of one's own, to be gone on with.
    ///
    /// # Panics
    /// Never: what was read as a scenario is RON.
    pub fn again(source: &ScenarioSource) -> ScenarioDraft {
        let document = Document::parse(&source.text).expect("read before");
        let stem = source.stem();
        ScenarioDraft { stem, document }
    }

    /// One from a file of this name, sound or not.
    ///
    /// # Errors
    /// A field of it cannot be read.
    pub fn of_text(stem: &str, text: &str) -> Result<ScenarioDraft, ContentError> {
        let file = format!("{stem}.ron");
        let page = Page::open(&file, text.as_bytes())?;
        page.parse::<Scenario>()?;
        let document = document_of(&file, text)?;
        let stem = stem.to_owned();
        Ok(ScenarioDraft { stem, document })
    }

    /// The whole text.
    pub fn text(&self) -> &str {
        self.document.text()
    }

    /// The text of an earlier or a later state of this draft.
    ///
    /// # Errors
    /// It is no RON; the draft is as it was.
    pub fn put_text(&mut self, text: &str) -> Result<(), SyntaxError> {
        self.document = Document::parse(text)?;
        Ok(())
    }

    /// Its file's name.
    pub fn file(&self) -> String {
        format!("{}.ron", self.stem)
    }

    /// What it says, sound or not: every field can be read.
    ///
    /// # Errors
    /// A field that cannot.
    pub fn scenario(&self) -> Result<Scenario, ContentError> {
        Page::open(&self.file(), self.text().as_bytes())?.parse()
    }

    /// The same, held against everything that a scenario has to be.
    ///
    /// # Errors
    /// The first mistake in the text.
    pub fn checked(&self, library: &ContentLibrary) -> Result<ScenarioSource, ContentError> {
        library.scenario_source(self.file(), self.text().as_bytes().to_vec())
    }

    /// Changes one field and leaves every other byte alone. What is already so is not written anew.
    ///
    /// # Errors
    /// The text has no such place; it is as it was.
    pub fn change(&mut self, change: &ScenarioChange) -> Result<(), EditError> {
        let (path, value) = change.place_and_text();
        if self.document.value(&path).is_some() {
            return self.document.set(&path, &value);
        }
        let (whole, name) = path.rsplit_once('.').unwrap_or(("", &path));
        let before: Vec<&str> = FIELDS
            .into_iter()
            .take_while(|field| *field != name)
            .collect();
        self.document.insert_field(whole, name, &value, &before)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use detent_simulation::interface::Component;
    use detent_simulation::plant::{FaultKind, PresenceKind};
    use detent_training::lesson::DrawFilter;

    fn library() -> ContentLibrary {
        ContentLibrary::builtin().expect("the built-in content is sound")
    }

    fn changes() -> Vec<ScenarioChange> {
        let sentence = |sentence, language| {
            let text = "A \"quoted\" word, a \\ and an ñ\nover two lines".to_owned();
            ScenarioChange::Sentence(sentence, language, text)
        };
        let mut changes: Vec<ScenarioChange> = ScenarioSentence::ALL
            .into_iter()
            .flat_map(|s| Language::ALL.map(|language| sentence(s, language)))
            .collect();
        changes.extend([
            ScenarioChange::Board("key-pad".to_owned()),
            ScenarioChange::Mains(Mains::V230Hz50),
            ScenarioChange::Seed(7_001),
            ScenarioChange::Fault(Hidden::Several(vec![
                "drain-pump.seized".to_owned(),
                "belt.broken".to_owned(),
            ])),
            ScenarioChange::Fault(Hidden::DrawWhere(DrawFilter {
                components: vec![Component::DrainPump, Component::Harness],
                codes: vec![23],
                kinds: vec![FaultKind::Open],
                presences: vec![PresenceKind::Steady],
                least_weight: 1.5,
                without: vec!["harness.cold-wire-open".to_owned()],
                ..DrawFilter::default()
            })),
            ScenarioChange::Fault(Hidden::DrawWhere(DrawFilter::default())),
            ScenarioChange::DialWear(0.35),
            ScenarioChange::StaleCodes(vec![65, 11]),
            ScenarioChange::ExpectedCodes(Some(vec![23, 4])),
            ScenarioChange::ExpectedCodes(None),
            ScenarioChange::ParMinutes(123.0),
            ScenarioChange::Budget(321.0),
            ScenarioChange::LiveTests(true),
            ScenarioChange::Hints(false),
            ScenarioChange::WornLead(true),
        ]);
        changes.extend(
            Dimension::ALL
                .iter()
                .map(|s| ScenarioChange::Points(*s, 12.5)),
        );
        changes
    }

    /// The same done to the value itself.
    fn apply(scenario: &mut Scenario, change: &ScenarioChange) {
        match change.clone() {
            ScenarioChange::Sentence(sentence, language, text) => {
                let both = match sentence {
                    ScenarioSentence::Title => &mut scenario.title,
                    ScenarioSentence::Complaint => &mut scenario.complaint,
                    ScenarioSentence::Goal => &mut scenario.goal,
                };
                match language {
                    Language::En => both.en = text,
                    Language::Es => both.es = text,
                }
            }
            ScenarioChange::Board(board) => scenario.board = board,
            ScenarioChange::Mains(mains) => scenario.mains = mains,
            ScenarioChange::Seed(seed) => scenario.seed = seed,
            ScenarioChange::Fault(fault) => scenario.fault = fault,
            ScenarioChange::DialWear(wear) => scenario.dial_wear = wear,
            ScenarioChange::StaleCodes(codes) => scenario.stale_codes = codes,
            ScenarioChange::ExpectedCodes(codes) => scenario.expected_codes = codes,
            ScenarioChange::ParMinutes(minutes) => scenario.par_minutes = minutes,
            ScenarioChange::Budget(budget) => scenario.budget = budget,
            ScenarioChange::LiveTests(allowed) => scenario.live_tests_allowed = allowed,
            ScenarioChange::Hints(allowed) => scenario.hints_allowed = allowed,
            ScenarioChange::WornLead(worn) => scenario.worn_lead = worn,
            ScenarioChange::Points(side, points) => {
                let of = &mut scenario.points;
                *match side {
                    Dimension::Entry => &mut of.entry,
                    Dimension::Reading => &mut of.reading,
                    Dimension::Reasoning => &mut of.reasoning,
                    Dimension::Safety => &mut of.safety,
                    Dimension::Cost => &mut of.cost,
                    Dimension::Proof => &mut of.proof,
                } = points;
            }
        }
    }

    /// Lines of comment in a text.
    fn comments(text: &str) -> Vec<&str> {
        let comment = |line: &&str| line.trim_start().starts_with("//");
        text.lines().filter(comment).collect()
    }

    #[test]
    fn each_change_changes_just_its_field_in_every_scenario() {
        let library = library();
        let sources = library.scenarios().expect("sound");
        assert!(sources.len() > 50);
        for source in &sources {
            for change in changes() {
                let mut draft = ScenarioDraft::again(source);
                assert_eq!(draft.text(), source.text);
                draft.change(&change).expect("every scenario has the place");
                let mut expected = source.scenario.clone();
                apply(&mut expected, &change);
                assert_eq!(
                    draft.scenario(),
                    Ok(expected),
                    "{}: {change:?}",
                    source.file
                );
                assert_eq!(comments(draft.text()), comments(&source.text));
            }
        }
    }

    #[test]
    fn what_was_changed_back_is_the_same_to_the_byte() {
        let source = library()
            .scenario("drain-code-several-causes")
            .expect("sound");
        let mut draft = ScenarioDraft::again(&source);
        for mains in [Mains::V120Hz60, Mains::V230Hz50] {
            draft.change(&ScenarioChange::Mains(mains)).expect("there");
        }
        assert_eq!(draft.text(), source.text);
    }

    #[test]
    fn a_copy_has_no_place_in_the_course_and_everything_else() {
        let library = library();
        for source in library.scenarios().expect("sound") {
            let copy = ScenarioDraft::copy_of(&source, "own");
            let checked = copy.checked(&library).expect("as sound as its original");
            assert_eq!(checked.file, "own.ron");
            let expected = Scenario {
                course: None,
                ..source.scenario.clone()
            };
            assert_eq!(checked.scenario, expected, "{}", source.file);
        }
    }

    /// A new one lacks its words, and with them it is the job that `detent new` begins with, comments and all.
    #[test]
    fn a_new_scenario_lacks_nothing_but_its_words() {
        let library = library();
        for written_in in Language::ALL {
            let code = written_in.code();
            let template = builtin::text(&format!("assets/templates/scenario.{code}.ron"));
            let template = ScenarioDraft::of_text("own", template.expect("built in"));
            let template = template.expect("sound");
            let mut draft = ScenarioDraft::new("own", written_in);
            let error = draft.checked(&library).expect_err("no words");
            assert_eq!((error.line, error.field.as_str()), (4, "title.en"));
            let mut expected = template.scenario().expect("sound");
            expected.expected_codes = None;
            for sentence in ScenarioSentence::ALL {
                for language in Language::ALL {
                    let text = "Words".to_owned();
                    let change = ScenarioChange::Sentence(sentence, language, text);
                    draft.change(&change).expect("there");
                    apply(&mut expected, &change);
                }
            }
            let checked = draft.checked(&library).expect("sound");
            assert_eq!(checked.scenario, expected);
            let left = comments(draft.text()).len();
            assert_eq!(left + 1, comments(template.text()).len());
        }
    }

    #[test]
    fn a_text_that_is_no_ron_is_not_put_in() {
        let mut draft = ScenarioDraft::new("own", Language::En);
        let before = draft.clone();
        assert!(draft.put_text("(title: ").is_err());
        assert_eq!(draft, before);
    }
}
