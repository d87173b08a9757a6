//! Files of content held against their readers, the simulator and the language files.

use super::class_plan_file::check_class_plan;
use super::course_file::read_course;
use super::error::{ContentError, Problem};
use super::examination_file::check_examination;
use super::guide_file::check_guide;
use super::parts::read_added_parts;
use super::reader::without_mark;
use super::scenario_file::check_scenario;
use super::text::{Language, Texts};
use super::{ContentLibrary, FileKind, GUIDE_ENDING, OwnPlace, read_board};
use detent_simulation::controller::{Board, is_words};
use detent_simulation::interface::Component;
use detent_training::authoring::{
    AuthoringFinding, BoardProof, GuideProof, PlacedFinding, ScenarioProof, Severity,
    prove_board_in_slices, prove_guide_in_slices, prove_scenario_in_slices,
};
use detent_training::lesson::{Bilingual, Mains, Scenario};
use detent_training::practice::drill::SuppliedBoard;
use detent_training::record::ron_text::{Outline, TextPosition, TextRange};
use detent_training::variant::KnownFaults;
use detent_training::without_breaks;
use std::path::Path;

/// What is known of the faults on some boards, worked out once for many files.
#[derive(Debug, Default)]
pub struct KnownBoards {
    kept: Vec<(String, Mains, KnownFaults)>,
}

/// Something found in a file.
#[derive(Clone, Debug, PartialEq)]
pub struct FileFinding {
    /// Where in the text.
    pub range: TextRange,
    /// Path of the field; empty for the file as a whole.
    pub field: String,
    /// What.
    pub found: Found,
}

/// What was found.
#[derive(Clone, Debug, PartialEq)]
pub enum Found {
    /// The reader refuses the file.
    Unreadable(Problem),
    /// It reads well.
    Authoring(AuthoringFinding),
}

/// What the simulator says of a file.
#[derive(Clone, Debug, PartialEq)]
pub enum FileProof {
    /// Of a job, with what it says.
    Scenario(Box<Scenario>, Box<ScenarioProof>),
    /// Of a board.
    Board(BoardProof),
    /// Of a guide whose job is at hand.
    Guide(GuideProof),
    /// Nothing: there is nothing to simulate, or it could not be read.
    None,
}

/// All about one file.
#[derive(Clone, Debug, PartialEq)]
pub struct FileReport {
    /// The file.
    pub file: String,
    /// What it is.
    pub kind: FileKind,
    /// What is wrong, in the order of the file.
    pub findings: Vec<FileFinding>,
    /// What the simulator says.
    pub proof: FileProof,
}

impl FileFinding {
    fn of_error(text: &str, error: ContentError) -> FileFinding {
        FileFinding {
            range: range_of(text, &error),
            field: error.field,
            found: Found::Unreadable(error.problem),
        }
    }

    /// How much it weighs.
    pub fn severity(&self) -> Severity {
        match &self.found {
            Found::Unreadable(_) => Severity::Error,
            Found::Authoring(finding) => finding.severity(),
        }
    }

    /// Its fixed name, for other programs.
    pub fn name(&self) -> &'static str {
        match &self.found {
            Found::Unreadable(_) => "unreadable",
            Found::Authoring(finding) => finding.name(),
        }
    }
}

impl FileReport {
    /// Of a file that cannot be read at all.
    pub(super) fn unreadable(file: &str, kind: FileKind) -> FileReport {
        FileReport {
            file: file.to_owned(),
            kind,
            findings: Vec::new(),
            proof: FileProof::None,
        }
    }

    /// Puts an error of a reader among the findings, unless it is there.
    pub(super) fn put_error(&mut self, text: &str, error: ContentError) {
        let finding = FileFinding::of_error(text, error);
        if !self.findings.contains(&finding) {
            self.findings.push(finding);
            self.findings.sort_by_key(|finding| finding.range);
        }
    }

    /// Puts something among the findings that is about a field.
    pub(super) fn put(&mut self, text: &str, found: Vec<PlacedFinding>) {
        if found.is_empty() {
            return;
        }
        let places = Outline::of(text).places();
        self.findings
            .extend(found.into_iter().map(|placed| FileFinding {
                range: places.range(&placed.field),
                field: placed.field,
                found: Found::Authoring(placed.finding),
            }));
        self.findings.sort_by_key(|finding| finding.range);
    }

    /// How many findings weigh so much.
    pub fn count(&self, severity: Severity) -> usize {
        let findings = self.findings.iter();
        findings.filter(|f| f.severity() == severity).count()
    }
}

impl KnownBoards {
    /// Works out what is known of the faults on this board at this supply, unless it is there or there is no table.
    pub fn learn(&mut self, content_library: &ContentLibrary, board: &str, mains: Mains) {
        if self.knows(board, mains) {
            return;
        }
        let known = (content_library.board(board))
            .and_then(|board| content_library.known_faults(board, mains));
        if let Some(known) = known {
            self.kept.push((board.to_owned(), mains, known));
        }
    }

    /// Whether there is nothing to be learned of this board at this supply.
    pub fn knows(&self, board: &str, mains: Mains) -> bool {
        self.of(board, mains).is_some()
    }

    /// These and those.
    #[must_use]
    pub fn with(mut self, others: KnownBoards) -> KnownBoards {
        self.kept.extend(others.kept);
        self
    }

    fn of(&self, board: &str, mains: Mains) -> Option<&KnownFaults> {
        let mut kept = self.kept.iter();
        let here = kept.find(|(b, m, _)| (b.as_str(), *m) == (board, mains));
        here.map(|(_, _, known)| known)
    }
}

/// Checks one file: reader, simulator, words. In slices of a few milliseconds each.
pub async fn check_file_in_slices(
    content_library: &ContentLibrary,
    known: &KnownBoards,
    file: &str,
    bytes: &[u8],
) -> FileReport {
    check_in_slices(content_library, Some(known), file, bytes).await
}

/// The same without the simulator, which takes no time to speak of.
pub fn check_file_unproved(
    content_library: &ContentLibrary,
    file: &str,
    bytes: &[u8],
) -> FileReport {
    without_breaks(check_in_slices(content_library, None, file, bytes))
}

async fn check_in_slices(
    content_library: &ContentLibrary,
    known: Option<&KnownBoards>,
    file: &str,
    bytes: &[u8],
) -> FileReport {
    let kind = FileKind::of(file, bytes);
    let mut check = Check {
        content_library,
        known,
        file,
        bytes,
        placed: Vec::new(),
    };
    let checked = match kind {
        FileKind::Scenario => check.scenario().await,
        FileKind::Board => check.board().await,
        FileKind::Guide => check.guide().await,
        FileKind::Examination => check.examination().map(|()| FileProof::None),
        FileKind::Parts => check.parts().map(|()| FileProof::None),
        FileKind::Course => check.course().map(|()| FileProof::None),
        FileKind::Plan => check.plan().map(|()| FileProof::None),
    };
    let text = String::from_utf8_lossy(bytes);
    let text = without_mark(&text);
    let (unreadable, proof) = match checked {
        Ok(proof) => (Vec::new(), proof),
        Err(errors) => (errors, FileProof::None),
    };
    let mut report = FileReport {
        file: file.to_owned(),
        kind,
        findings: (unreadable.into_iter())
            .map(|error| FileFinding::of_error(text, error))
            .collect(),
        proof,
    };
    report.put(text, check.placed);
    report.findings.sort_by_key(|finding| finding.range);
    report
}

/// The stretch that a reader's error is about: the value of its field, or where the reader stopped to the end of that
/// line.
fn range_of(text: &str, error: &ContentError) -> TextRange {
    if error.line == 0 {
        return TextRange::default();
    }
    let position = TextPosition {
        line: error.line,
        column: error.column,
    };
    let places = Outline::of(text).places();
    for range in [places.range(&error.field), places.last_range(&error.field)] {
        let begins_there = range.start.0 + 1 == error.line && range.start < range.end;
        if begins_there && !error.field.is_empty() {
            return range;
        }
    }
    TextRange::rest_of_line(text, position)
}

/// The check of one file.
struct Check<'a> {
    content_library: &'a ContentLibrary,
    /// None where the simulator is left out.
    known: Option<&'a KnownBoards>,
    file: &'a str,
    bytes: &'a [u8],
    placed: Vec<PlacedFinding>,
}

impl Check<'_> {
    fn find(&mut self, field: impl Into<String>, finding: AuthoringFinding) {
        self.placed.push(PlacedFinding {
            field: field.into(),
            finding,
        });
    }

    async fn scenario(&mut self) -> Result<FileProof, Vec<ContentError>> {
        let library = self.content_library;
        let scenario = check_scenario(
            self.file,
            self.bytes,
            &library.catalogue,
            &library.parts,
            &library.known_boards(),
        )?;
        self.words(&scenario);
        let Some(known) = self.known else {
            return Ok(FileProof::None);
        };
        let Some(known) = known.of(&scenario.board, scenario.mains) else {
            self.find("board", AuthoringFinding::NoTable);
            return Ok(FileProof::None);
        };
        let board = SuppliedBoard {
            library: library.library(&scenario),
            mains: scenario.mains,
        };
        match prove_scenario_in_slices(&scenario, &board, known).await {
            Ok(proof) => {
                self.placed.extend(proof.findings.iter().cloned());
                Ok(FileProof::Scenario(Box::new(scenario), Box::new(proof)))
            }
            Err(error) => {
                self.find("fault", AuthoringFinding::NoPlan(error.to_string()));
                Ok(FileProof::None)
            }
        }
    }

    /// What title and complaint give away, and what was not translated.
    fn words(&mut self, scenario: &Scenario) {
        let hidden = hidden_components(scenario, self.content_library);
        let volts = scenario.mains.rating().volts as u32;
        let texts = |language| Texts::load(language).for_supply(volts);
        let told = [
            ("title", &scenario.title),
            ("complaint", &scenario.complaint),
        ];
        for (field, said) in told {
            for (language, said) in in_both(said) {
                let texts = texts(language);
                for component in &hidden {
                    if let Some(word) = telltale(&texts, *component, said) {
                        let component = *component;
                        let finding = AuthoringFinding::GivesAway { component, word };
                        self.find(format!("{field}.{}", language.code()), finding);
                    }
                }
            }
        }
        for (field, said) in told.into_iter().chain([("goal", &scenario.goal)]) {
            if said.en.trim() == said.es.trim() {
                self.find(format!("{field}.es"), AuthoringFinding::SameInBothLanguages);
            }
        }
    }

    async fn board(&mut self) -> Result<FileProof, Vec<ContentError>> {
        let board = read_board(self.file, self.bytes)?;
        self.board_texts(&board);
        if self.known.is_none() {
            return Ok(FileProof::None);
        }
        let supplies: Vec<SuppliedBoard<'_>> = (board.mains.iter())
            .map(|mains| SuppliedBoard {
                library: self.content_library.library_of(&board, *mains),
                mains: *mains,
            })
            .collect();
        let proof = prove_board_in_slices(&supplies).await;
        self.placed.extend(proof.findings.iter().cloned());
        Ok(FileProof::Board(proof))
    }

    /// Keys of texts that there are not.
    fn board_texts(&mut self, board: &Board) {
        let names = [("name".to_owned(), &board.name)].into_iter();
        let programs = board.programs.iter().enumerate();
        let programs = programs.map(|(n, p)| (format!("programs[{n}].name"), &p.name));
        let checks = board.sheet.iter().enumerate().flat_map(|(n, entry)| {
            let checks = entry.checks.iter().enumerate();
            checks.map(move |(k, key)| (format!("sheet[{n}].checks[{k}]"), key))
        });
        let unknown = unknown_texts(names.chain(programs).chain(checks));
        self.placed.extend(unknown);
    }

    async fn guide(&mut self) -> Result<FileProof, Vec<ContentError>> {
        let guide = check_guide(self.file, self.bytes)?;
        let marks = guide.steps.iter().enumerate().flat_map(|(n, step)| {
            let marks = step.mark.iter().enumerate();
            marks.map(move |(k, key)| (format!("steps[{n}].mark[{k}]"), key))
        });
        let unknown = unknown_texts(marks);
        self.placed.extend(unknown);
        let job = self.file.strip_suffix(GUIDE_ENDING).unwrap_or(self.file);
        let Ok(job) = self.content_library.scenario(&format!("{job}.ron")) else {
            self.find("", AuthoringFinding::NoJobForGuide);
            return Ok(FileProof::None);
        };
        let library = self.content_library.library(&job.scenario);
        match prove_guide_in_slices(&guide, &job.scenario, &library).await {
            Ok(proof) => {
                self.placed.extend(proof.findings.iter().cloned());
                Ok(FileProof::Guide(proof))
            }
            Err(error) => {
                self.find("", AuthoringFinding::NoPlan(error.to_string()));
                Ok(FileProof::None)
            }
        }
    }

    fn examination(&mut self) -> Result<(), Vec<ContentError>> {
        let folder = Path::new(self.file).parent().unwrap_or(Path::new(""));
        let stems = self.content_library.job_names(folder);
        let known: Vec<&str> = stems.iter().map(String::as_str).collect();
        let examination = check_examination(self.file, self.bytes, &known)?;
        if examination.title.en.trim() == examination.title.es.trim() {
            self.find("title.es", AuthoringFinding::SameInBothLanguages);
        }
        Ok(())
    }

    fn plan(&mut self) -> Result<(), Vec<ContentError>> {
        let known: Vec<&str> = self.content_library.stems().collect();
        check_class_plan(self.file, self.bytes, &known).map(drop)
    }

    fn course(&mut self) -> Result<(), Vec<ContentError>> {
        let folder = Path::new(self.file).parent().unwrap_or(Path::new(""));
        let scenarios = OwnPlace::FOLDERS.into_iter();
        let scenarios = scenarios.filter(|(_, place)| *place == OwnPlace::Scenarios);
        let stems: Vec<String> = scenarios
            .flat_map(|(name, _)| self.content_library.job_names(&folder.join(name)))
            .collect();
        let known: Vec<&str> = stems.iter().map(String::as_str).collect();
        let course = read_course(self.file, self.bytes, Some(&known))?;
        if course.title.en.trim() == course.title.es.trim() {
            self.find("title.es", AuthoringFinding::SameInBothLanguages);
        }
        Ok(())
    }

    fn parts(&mut self) -> Result<(), Vec<ContentError>> {
        let library = self.content_library;
        let own: Vec<&str> = (library.boards.iter())
            .filter(|board| library.is_own(board))
            .map(|board| board.id.as_str())
            .collect();
        let parts = read_added_parts(self.file, self.bytes, library.built_in_parts(), &own)?;
        let names = parts.iter().enumerate().flat_map(|(n, part)| {
            let note = part.note_key.iter();
            let note = note.map(move |key| (format!("parts[{n}].note_key"), key));
            note.chain([(format!("parts[{n}].name_key"), &part.name_key)])
        });
        let unknown = unknown_texts(names);
        self.placed.extend(unknown);
        Ok(())
    }
}

/// Keys, with the paths of their fields, under which no text stands.
fn unknown_texts<'a>(keys: impl Iterator<Item = (String, &'a String)>) -> Vec<PlacedFinding> {
    let texts = Texts::load(Language::default());
    let unknown = keys.filter(|(_, key)| !is_words(key) && !texts.has(key));
    unknown
        .map(|(field, key)| PlacedFinding {
            field,
            finding: AuthoringFinding::UnknownText(key.clone()),
        })
        .collect()
}

fn in_both(said: &Bilingual) -> [(Language, &str); 2] {
    [(Language::En, &said.en), (Language::Es, &said.es)]
}

/// The components that are sure to have failed. Where one of several is drawn, naming one of them gives nothing away.
fn hidden_components(scenario: &Scenario, content_library: &ContentLibrary) -> Vec<Component> {
    let modes = content_library
        .library(scenario)
        .candidates(&scenario.fault);
    let modes = modes.unwrap_or_default();
    let mut components: Vec<Component> = modes.iter().map(|mode| mode.component).collect();
    components.sort_unstable();
    components.dedup();
    if scenario.fault.is_drawn() && components.len() > 1 {
        Vec::new()
    } else {
        components
    }
}

/// A word in what is said that names this component, or none: its name, and the words of `telltale-…`.
fn telltale(texts: &Texts, component: Component, said: &str) -> Option<String> {
    let said = said.to_lowercase();
    let words: Vec<&str> = said.split(|c: char| !c.is_alphabetic()).collect();
    let own = texts.get(&format!("telltale-{component}"));
    let name = texts.component(component);
    let names = own.split(',').map(|word| word.trim().to_lowercase());
    let mut names = names.chain([name.to_lowercase()]);
    names.find(|name| {
        let phrase: Vec<&str> = name.split(' ').collect();
        words.windows(phrase.len()).any(|window| window == phrase)
    })
}
