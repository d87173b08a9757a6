//! The workshop: a job of one's own, written field by field, undone, tried and kept.

#[cfg(not(target_family = "wasm"))]
mod paper;
mod proof;
#[cfg(not(target_family = "wasm"))]
pub use paper::{JobPaper, PrintedJob};
pub use proof::{LiveProof, ProvedJob};

use super::attempts::StorageError;
use super::board_workshop::{BoardPage, BoardWorkshop};
use super::library::LibraryPlace;
use super::panels::tutorial::Tutorial;
use bevy::prelude::Resource;
use bevy_egui::egui::util::undoer::Undoer;
use detent_content::{
    ContentError, ContentLibrary, OwnFile, ScenarioChange, ScenarioDraft, ScenarioSource,
};
use detent_simulation::interface::Component;
use detent_training::lesson::Scenario;
use std::sync::Arc;

/// Where jobs, or boards, of one's own are kept.
pub trait OwnTexts: Send + Sync {
    /// Where the one of this name is, or would be, for people.
    fn file(&self, stem: &str) -> String;
    /// The names of all of them.
    fn stems(&self) -> Vec<String>;
    /// The text of one.
    ///
    /// # Errors
    /// Why it cannot be read.
    fn read(&self, stem: &str) -> Result<String, ContentError>;
    /// Whether there is a job of this name.
    ///
    /// # Errors
    /// Why that cannot be told.
    fn is_there(&self, stem: &str) -> Result<bool, StorageError>;
    /// Whether a job with a mistake can be kept here: a library with one is not opened at all.
    fn takes_unfinished(&self) -> bool;
    /// Keeps one, in the place of the one of this name if there is one; where it is now.
    ///
    /// # Errors
    /// Why it is not kept; the one that was there before still is.
    fn keep(&self, stem: &str, text: &str) -> Result<String, StorageError>;
    /// The file of this whole name that lies beside the jobs, if there is one.
    ///
    /// # Errors
    /// Why that cannot be told.
    #[cfg(not(target_family = "wasm"))]
    fn beside(&self, name: &str) -> Result<Option<String>, StorageError>;
    /// Puts a file of this whole name beside the jobs, in the place of another only where `replace` says so; where it is
    /// now.
    ///
    /// # Errors
    /// Why it is not there; another one is as it was.
    #[cfg(not(target_family = "wasm"))]
    fn put_beside(&self, name: &str, bytes: &[u8], replace: bool) -> Result<String, StorageError>;
}

/// What is on the workshop's bench.
#[derive(Resource, Default)]
pub struct WorkshopRes {
    /// The job that is being written.
    pub open: Option<Workshop>,
    /// A job that was just kept: it is to be on offer.
    pub kept: Option<ScenarioSource>,
    /// The job that is to be copied.
    pub original: usize,
    /// The board that is being described.
    pub board: Option<Box<BoardWorkshop>>,
    /// A board that was just kept: jobs are to be written for it.
    pub kept_board: Option<OwnFile>,
    /// The board that is to be copied, by its id.
    pub original_board: String,
    /// The tutorial, while it is read.
    pub tutorial: Option<Tutorial>,
}

/// What is written in the workshop when the window opens.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Written {
    /// A copy of the job at the bench, open at this page.
    Job(WorkshopPage),
    /// A copy of a board, with this page of it in front.
    Board(BoardPage),
}

impl Written {
    /// By its name on the command line.
    #[cfg(not(target_family = "wasm"))]
    pub fn named(name: &str) -> Option<Written> {
        let job = match name {
            "workshop-job" => WorkshopPage::Job,
            "workshop-proof" => WorkshopPage::Proof,
            "workshop-wash" => WorkshopPage::Wash,
            "workshop-paper" => WorkshopPage::Paper,
            _ => return BoardPage::named(name).map(Written::Board),
        };
        Some(Written::Job(job))
    }
}

/// What became of the last wish to keep the job.
#[derive(Clone, Debug, PartialEq)]
pub enum KeptJob {
    /// It is there.
    In(String),
    /// There is another job of this name.
    Taken,
    /// The name is none.
    NoName,
    /// Something is wrong with it, and this place takes sound ones alone.
    Unfinished,
    /// The system refused.
    Failed(StorageError),
    /// Its file was changed elsewhere, and here too: this is not kept yet.
    ChangedElsewhere,
}

/// How a text is kept that somebody writes.
#[derive(Default)]
pub struct KeptText {
    /// The text as it is kept, and under which name.
    kept_as: Option<(String, String)>,
    /// What became of the last wish to keep it.
    pub last: Option<KeptJob>,
}

impl KeptText {
    /// One that was kept under this name.
    pub fn under(stem: &str, text: &str) -> KeptText {
        KeptText {
            kept_as: Some((stem.to_owned(), text.to_owned())),
            last: None,
        }
    }

    /// Whether this text is kept under this name.
    pub fn is(&self, stem: &str, text: &str) -> bool {
        let kept_as = self.kept_as.as_ref();
        kept_as.is_some_and(|(kept_as, kept)| (kept_as.as_str(), kept.as_str()) == (stem, text))
    }

    /// Name and text of its file, where that has another text now than the one that was kept.
    pub fn changed(&self, place: Option<&dyn OwnTexts>) -> Option<(String, String)> {
        let (stem, kept) = self.kept_as.as_ref()?;
        let text = place?.read(stem).ok()?;
        (text != *kept).then(|| (stem.clone(), text))
    }

    /// Keeps a text, sound or not where the place takes both: where it is now, if it is kept.
    pub fn keep(
        &mut self,
        stem: &str,
        text: &str,
        is_sound: bool,
        place: &dyn OwnTexts,
    ) -> Option<String> {
        if !is_file_name(stem) {
            self.last = Some(KeptJob::NoName);
            return None;
        }
        if !is_sound && !place.takes_unfinished() {
            self.last = Some(KeptJob::Unfinished);
            return None;
        }
        let own = (self.kept_as.as_ref()).is_some_and(|(kept_as, _)| kept_as == stem);
        let taken = match own {
            true => Ok(false),
            false => place.is_there(stem),
        };
        let kept = taken.and_then(|taken| (!taken).then(|| place.keep(stem, text)).transpose());
        match kept {
            Ok(None) => {
                self.last = Some(KeptJob::Taken);
                None
            }
            Ok(Some(file)) => {
                self.kept_as = Some((stem.to_owned(), text.to_owned()));
                self.last = Some(KeptJob::In(file.clone()));
                Some(file)
            }
            Err(error) => {
                self.last = Some(KeptJob::Failed(error));
                None
            }
        }
    }
}

/// A page of the job that is being written.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum WorkshopPage {
    /// What the job says.
    #[default]
    Job,
    /// What reader and simulator say of it.
    Proof,
    /// The customer's wash.
    Wash,
    /// Handout and key on paper.
    Paper,
}

/// What the workshop's panels remember of a job.
#[derive(Default)]
pub struct WorkshopView {
    /// The page.
    pub page: WorkshopPage,
    /// What is looked for among the faults.
    pub fault_search: String,
    /// The component whose faults are listed; all where none was chosen.
    pub component: Option<Component>,
    /// Which of the proved machines is told about.
    pub machine: usize,
    /// The moment of the wash that is looked at, min; the most telling one where none was chosen.
    pub moment_min: Option<f64>,
}

/// A job that is being written.
pub struct Workshop {
    draft: ScenarioDraft,
    /// Its text, which every frame asks for.
    text: String,
    /// What the text says; every change leaves it readable.
    scenario: Scenario,
    /// The same held against everything that a scenario has to be.
    checked: Result<ScenarioSource, ContentError>,
    undoer: Undoer<String>,
    /// How it is kept.
    pub kept: KeptText,
    /// What reader and simulator say of it.
    proof: LiveProof,
    /// What is printed of it.
    #[cfg(not(target_family = "wasm"))]
    pub paper: JobPaper,
    /// What the panels remember of it.
    pub view: WorkshopView,
}

/// Whether a job's file can be called so: small letters, digits and hyphens, as the built-in ones are.
pub fn is_file_name(stem: &str) -> bool {
    /// Longest name, characters.
    const LONGEST: usize = 60;
    let known = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
    !stem.is_empty()
        && stem.len() <= LONGEST
        && stem.chars().all(known)
        && !stem.starts_with('-')
        && !stem.ends_with('-')
}

/// What a draft says, read anew only where it is not sound.
fn said(
    draft: &ScenarioDraft,
    checked: &Result<ScenarioSource, ContentError>,
) -> Result<Scenario, ContentError> {
    match checked {
        Ok(source) => Ok(source.scenario.clone()),
        Err(_) => draft.scenario(),
    }
}

impl Workshop {
    /// Takes a draft up.
    ///
    /// # Errors
    /// What it says cannot be read.
    pub fn begin(draft: ScenarioDraft, library: &ContentLibrary) -> Result<Workshop, ContentError> {
        let checked = draft.checked(library);
        Ok(Workshop {
            scenario: said(&draft, &checked)?,
            checked,
            text: draft.text().to_owned(),
            undoer: Undoer::default(),
            kept: KeptText::default(),
            proof: LiveProof::default(),
            #[cfg(not(target_family = "wasm"))]
            paper: JobPaper::default(),
            view: WorkshopView::default(),
            draft,
        })
    }

    /// Takes a copy of a job up.
    ///
    /// # Errors
    /// What it says cannot be read.
    pub fn copy_of(
        source: &ScenarioSource,
        library: &ContentLibrary,
    ) -> Result<Workshop, ContentError> {
        let stem = format!("{}-own", source.stem());
        Workshop::begin(ScenarioDraft::copy_of(source, &stem), library)
    }

    /// Goes on with a job that is kept under this name.
    ///
    /// # Errors
    /// What it says cannot be read.
    pub fn go_on(
        stem: &str,
        text: &str,
        library: &ContentLibrary,
    ) -> Result<Workshop, ContentError> {
        let draft = ScenarioDraft::of_text(stem, text)?;
        let kept = KeptText::under(stem, text);
        let begun = Workshop::begin(draft, library)?;
        Ok(Workshop { kept, ..begun })
    }

    /// What it says.
    pub fn scenario(&self) -> &Scenario {
        &self.scenario
    }

    /// The job, or what is wrong with it first.
    pub fn checked(&self) -> Result<&ScenarioSource, &ContentError> {
        self.checked.as_ref()
    }

    /// The name of its file without folder and ending.
    pub fn stem(&mut self) -> &mut String {
        &mut self.draft.stem
    }

    /// The whole text.
    pub fn text(&self) -> &str {
        &self.text
    }

    /// Whether it is kept as it is.
    pub fn is_kept(&self) -> bool {
        self.kept.is(&self.draft.stem, self.text())
    }

    /// Changes one field.
    pub fn change(&mut self, library: &ContentLibrary, change: &ScenarioChange) {
        let changed = self.draft.change(change);
        debug_assert!(changed.is_ok(), "{change:?}: {changed:?}");
        self.read_again(library);
    }

    fn read_again(&mut self, library: &ContentLibrary) {
        self.kept.last = None;
        self.text = self.draft.text().to_owned();
        self.checked = self.draft.checked(library);
        if let Ok(scenario) = said(&self.draft, &self.checked) {
            self.scenario = scenario;
        }
    }

    /// Looks whether there is something to take back, and has the job proved; `now_s` counts the window's time, s.
    pub fn watch(&mut self, now_s: f64, library: &Arc<ContentLibrary>) {
        self.undoer.feed_state(now_s, &self.text);
        let scenario = self.checked.as_ref().ok().map(|source| &source.scenario);
        (self.proof).watch(now_s, (&self.text, scenario), library);
    }

    /// Whether something is being worked out for it.
    pub fn is_busy(&self) -> bool {
        #[cfg(not(target_family = "wasm"))]
        if self.paper.is_printing() {
            return true;
        }
        self.proof.step().is_some()
    }

    /// What reader and simulator say of it.
    pub fn proof(&self) -> &LiveProof {
        &self.proof
    }

    /// Waits until it is proved.
    #[cfg(test)]
    pub fn wait_for_proof(&mut self, library: &Arc<ContentLibrary>) {
        let scenario = self.checked.as_ref().ok().map(|source| &source.scenario);
        self.proof.wait((&self.text, scenario), library);
    }

    /// Whether a change can be taken back.
    pub fn can_undo(&self) -> bool {
        self.undoer.has_undo(&self.text)
    }

    /// Whether a change that was taken back can be done again.
    pub fn can_redo(&self) -> bool {
        self.undoer.has_redo(&self.text)
    }

    /// Takes the last change back.
    pub fn undo(&mut self, library: &ContentLibrary) {
        let before = self.undoer.undo(&self.text).cloned();
        self.put(before, library);
    }

    /// Does it again.
    pub fn redo(&mut self, library: &ContentLibrary) {
        let after = self.undoer.redo(&self.text).cloned();
        self.put(after, library);
    }

    /// Another library is open, or files of this one were changed: holds the job against what is there now. A job that is
    /// kept as it is follows its file; the undo takes that back.
    pub fn follow(&mut self, library: &ContentLibrary, own_jobs: Option<&dyn OwnTexts>) {
        // What was proved, and what is known of the board's faults, was so in the library before.
        self.proof = LiveProof::default();
        let Some((stem, text)) = self.kept.changed(own_jobs) else {
            return self.read_again(library);
        };
        let follows = self.is_kept() && ScenarioDraft::of_text(&stem, &text).is_ok();
        self.kept = KeptText::under(&stem, &text);
        if follows {
            self.put(Some(text), library);
        } else {
            self.read_again(library);
            self.kept.last = Some(KeptJob::ChangedElsewhere);
        }
    }

    fn put(&mut self, text: Option<String>, library: &ContentLibrary) {
        let put = text.map(|text| self.draft.put_text(&text));
        debug_assert!(!matches!(put, Some(Err(_))), "it was read before");
        self.read_again(library);
    }

    /// Keeps it, finished or not where the place takes both: what is wrong with it stands beside it. The job that is
    /// now on offer, if it can be.
    pub fn keep(&mut self, own_jobs: &dyn OwnTexts) -> Option<ScenarioSource> {
        let is_sound = self.checked.is_ok();
        let file = (self.kept).keep(&self.draft.stem, &self.text, is_sound, own_jobs)?;
        let checked = self.checked.clone().ok()?;
        Some(ScenarioSource { file, ..checked })
    }
}

/// Where jobs from the workshop go beside this library.
#[cfg(not(target_family = "wasm"))]
pub fn own_jobs_beside(place: &LibraryPlace) -> Option<Box<dyn OwnTexts>> {
    OwnTextFolder::jobs_beside(place).map(|folder| Box::new(folder) as Box<dyn OwnTexts>)
}

/// Where boards from the workshop go beside this library.
#[cfg(not(target_family = "wasm"))]
pub fn own_boards_beside(place: &LibraryPlace) -> Option<Box<dyn OwnTexts>> {
    OwnTextFolder::boards_beside(place).map(|folder| Box::new(folder) as Box<dyn OwnTexts>)
}

/// Where jobs from the workshop go: a browser keeps them, whatever library is open.
#[cfg(target_family = "wasm")]
pub fn own_jobs_beside(_place: &LibraryPlace) -> Option<Box<dyn OwnTexts>> {
    Some(Box::new(super::web::BrowserTexts::JOBS))
}

/// Where boards from the workshop go: a browser keeps them, whatever library is open.
#[cfg(target_family = "wasm")]
pub fn own_boards_beside(_place: &LibraryPlace) -> Option<Box<dyn OwnTexts>> {
    Some(Box::new(super::web::BrowserTexts::BOARDS))
}

#[cfg(not(target_family = "wasm"))]
pub use folder::OwnTextFolder;

#[cfg(not(target_family = "wasm"))]
mod folder {
    use super::{LibraryPlace, OwnTexts, StorageError};
    use detent_content::{ContentError, disk};
    use detent_training::record::SystemReason;
    use std::path::{Path, PathBuf};

    /// A folder with a file for each job.
    pub struct OwnTextFolder {
        folder: PathBuf,
        takes_unfinished: bool,
    }

    impl OwnTextFolder {
        /// It need not exist yet.
        pub fn new(folder: PathBuf) -> OwnTextFolder {
            OwnTextFolder {
                folder,
                takes_unfinished: true,
            }
        }

        /// Among the jobs of a library that is a folder, else `DETENT_JOBS`, else in the user's data folder.
        pub fn jobs_beside(place: &LibraryPlace) -> Option<OwnTextFolder> {
            match place {
                LibraryPlace::Folder(library) if library.is_dir() => {
                    Some(OwnTextFolder::of_library(library))
                }
                LibraryPlace::BuiltIn | LibraryPlace::Folder(_) | LibraryPlace::Carried(_) => {
                    OwnTextFolder::named("DETENT_JOBS", "jobs")
                }
            }
        }

        /// Among the boards of a library that is a folder, else `DETENT_BOARDS`, else in the user's data folder.
        pub fn boards_beside(place: &LibraryPlace) -> Option<OwnTextFolder> {
            match place {
                LibraryPlace::Folder(library) if library.is_dir() => {
                    Some(OwnTextFolder::boards_of_library(library))
                }
                LibraryPlace::BuiltIn | LibraryPlace::Folder(_) | LibraryPlace::Carried(_) => {
                    OwnTextFolder::named("DETENT_BOARDS", "boards")
                }
            }
        }

        /// The folder that this variable names, else this one in the user's data folder.
        fn named(variable: &str, folder: &str) -> Option<OwnTextFolder> {
            let own = std::env::var_os(variable).filter(|value| !value.is_empty());
            own.map(PathBuf::from)
                .or_else(|| disk::data_folder().map(|data| data.join(folder)))
                .map(OwnTextFolder::new)
        }

        /// The boards of a library.
        pub fn boards_of_library(library: &Path) -> OwnTextFolder {
            OwnTextFolder {
                folder: library.join("boards"),
                takes_unfinished: false,
            }
        }

        /// The jobs of a library.
        pub fn of_library(library: &Path) -> OwnTextFolder {
            OwnTextFolder {
                folder: library.join("scenarios"),
                takes_unfinished: false,
            }
        }

        fn path(&self, stem: &str) -> PathBuf {
            self.folder.join(format!("{stem}.ron"))
        }
    }

    impl OwnTexts for OwnTextFolder {
        fn file(&self, stem: &str) -> String {
            disk::name(&self.path(stem))
        }

        fn stems(&self) -> Vec<String> {
            let mut stems = disk::ron_stems(&self.folder);
            stems.retain(|stem| super::is_file_name(stem));
            stems.sort();
            stems
        }

        fn read(&self, stem: &str) -> Result<String, ContentError> {
            let bytes = disk::read_bytes(&self.path(stem))?;
            Ok(String::from_utf8_lossy(&bytes).into_owned())
        }

        fn is_there(&self, stem: &str) -> Result<bool, StorageError> {
            disk::is_there(&self.path(stem)).map_err(StorageError::File)
        }

        fn takes_unfinished(&self) -> bool {
            self.takes_unfinished
        }

        fn keep(&self, stem: &str, text: &str) -> Result<String, StorageError> {
            let file = self.path(stem);
            let refused = |error: std::io::Error| StorageError::System {
                file: disk::name(&file),
                reason: SystemReason::from(&error),
            };
            disk::write_whole(&file, text.as_bytes()).map_err(refused)?;
            Ok(disk::name(&file))
        }

        fn beside(&self, name: &str) -> Result<Option<String>, StorageError> {
            let file = self.folder.join(name);
            let there = disk::is_there(&file).map_err(StorageError::File)?;
            Ok(there.then(|| disk::name(&file)))
        }

        fn put_beside(
            &self,
            name: &str,
            bytes: &[u8],
            replace: bool,
        ) -> Result<String, StorageError> {
            let file = self.folder.join(name);
            let written = match replace {
                true => disk::write_whole(&file, bytes),
                false => std::fs::create_dir_all(&self.folder)
                    .and_then(|()| disk::write_new(&file, bytes)),
            };
            let refused = |error: std::io::Error| StorageError::System {
                file: disk::name(&file),
                reason: SystemReason::from(&error),
            };
            written.map_err(refused)?;
            Ok(disk::name(&file))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use detent_content::{Language, ScenarioSentence};
    use detent_training::lesson::Mains;

    fn library() -> Arc<ContentLibrary> {
        Arc::new(ContentLibrary::builtin().expect("the built-in content is sound"))
    }

    fn copy() -> (Arc<ContentLibrary>, Workshop) {
        let library = library();
        let source = library.scenario("drain-code").expect("built in");
        let draft = ScenarioDraft::copy_of(&source, "own-job");
        let workshop = Workshop::begin(draft, &library).expect("readable");
        (library, workshop)
    }

    #[test]
    fn what_was_changed_is_taken_back_and_done_again() {
        let (library, mut workshop) = copy();
        let first = workshop.text().to_owned();
        workshop.watch(0.0, &library);
        assert!(!workshop.can_undo());
        workshop.change(&library, &ScenarioChange::ParMinutes(111.0));
        let second = workshop.text().to_owned();
        workshop.watch(1.0, &library);
        workshop.watch(3.0, &library);
        workshop.change(&library, &ScenarioChange::Budget(222.0));
        workshop.watch(4.0, &library);
        workshop.undo(&library);
        assert_eq!(workshop.text(), second);
        workshop.undo(&library);
        assert_eq!(workshop.text(), first);
        assert_eq!(workshop.scenario().par_minutes, 80.0);
        workshop.redo(&library);
        workshop.redo(&library);
        assert_eq!(workshop.scenario().budget, 222.0);
        assert!(!workshop.can_redo());
    }

    #[test]
    fn a_mistake_stands_beside_what_is_written_and_goes_with_it() {
        let (library, mut workshop) = copy();
        assert!(workshop.checked().is_ok());
        let title = |text: &str| {
            let title = ScenarioSentence::Title;
            ScenarioChange::Sentence(title, Language::Es, text.to_owned())
        };
        workshop.change(&library, &title(" "));
        let error = workshop.checked().expect_err("no title");
        assert_eq!(error.field, "title.es");
        assert_eq!(workshop.scenario().title.es, " ");
        workshop.change(&library, &title("Agua parada"));
        assert!(workshop.checked().is_ok());
    }

    #[test]
    fn a_job_is_kept_under_its_name_and_over_no_other() {
        let folder = tempfile::tempdir().expect("a folder");
        let own_jobs = OwnTextFolder::new(folder.path().join("deeper").join("jobs"));
        let (library, mut workshop) = copy();
        for name in ["", "Own", "a/b", "..", "a b", "-a", "a-", &"a".repeat(61)] {
            *workshop.stem() = name.to_owned();
            assert_eq!(workshop.keep(&own_jobs), None, "{name}");
            assert_eq!(workshop.kept.last, Some(KeptJob::NoName), "{name}");
        }
        *workshop.stem() = "own-job".to_owned();
        assert!(!workshop.is_kept());
        let offered = workshop.keep(&own_jobs).expect("on offer");
        assert!(workshop.is_kept());
        let text = std::fs::read_to_string(&offered.file).expect("kept");
        assert_eq!(text, workshop.text());
        // Its own file it may write again, another's not.
        workshop.change(&library, &ScenarioChange::Mains(Mains::V230Hz50));
        assert!(!workshop.is_kept());
        assert!(workshop.keep(&own_jobs).is_some());
        let (_, mut other) = copy();
        assert_eq!(other.keep(&own_jobs), None);
        assert_eq!(other.kept.last, Some(KeptJob::Taken));
        assert_eq!(own_jobs.stems(), ["own-job"]);
        let text = own_jobs.read("own-job").expect("there");
        let mut gone_on = Workshop::go_on("own-job", &text, &library).expect("readable");
        assert!(gone_on.is_kept());
        gone_on.change(&library, &ScenarioChange::Budget(333.0));
        assert!(gone_on.keep(&own_jobs).is_some());
    }

    /// An unfinished job is kept all the same, and is not on offer.
    #[test]
    fn an_unfinished_job_is_kept_and_not_on_offer() {
        let folder = tempfile::tempdir().expect("a folder");
        let own_jobs = OwnTextFolder::new(folder.path().to_owned());
        let library = library();
        let draft = ScenarioDraft::new("unfinished", Language::En);
        let mut workshop = Workshop::begin(draft, &library).expect("readable");
        assert_eq!(workshop.keep(&own_jobs), None);
        assert!(matches!(workshop.kept.last, Some(KeptJob::In(_))));
        assert!(folder.path().join("unfinished.ron").is_file());
    }

    /// A library with a mistake in it is not opened: no job with one gets into it, and a sound one does.
    #[test]
    fn a_library_gets_no_unfinished_job() {
        let folder = tempfile::tempdir().expect("a folder");
        let own_jobs = OwnTextFolder::of_library(folder.path());
        let draft = ScenarioDraft::new("unfinished", Language::En);
        let mut workshop = Workshop::begin(draft, &library()).expect("readable");
        assert_eq!(workshop.keep(&own_jobs), None);
        assert_eq!(workshop.kept.last, Some(KeptJob::Unfinished));
        assert_eq!(own_jobs.stems(), [""; 0]);
        let (_, mut sound) = copy();
        assert!(sound.keep(&own_jobs).is_some());
        let opened = ContentLibrary::open(Some(folder.path())).expect("sound");
        assert!(opened.scenario("own-job").is_ok());
    }

    #[test]
    fn a_folder_that_cannot_be_written_to_says_so() {
        let folder = tempfile::tempdir().expect("a folder");
        let in_the_way = folder.path().join("file");
        std::fs::write(&in_the_way, "").expect("a file");
        let own_jobs = OwnTextFolder::new(in_the_way.join("jobs"));
        let (_, mut workshop) = copy();
        assert_eq!(workshop.keep(&own_jobs), None);
        assert!(matches!(workshop.kept.last, Some(KeptJob::Failed(_))));
        assert!(!workshop.is_kept());
    }
}
