//! Everything built in, and an own library beside it if there is one, read once; scenarios by name or path.

use super::course_file::{Course, read_course};
use super::course_zip::read_course_zip;
use super::digest::{digest_of_files, sha256};
use super::drill_source::{DrillContent, DrillSource};
use super::error::{ContentError, Problem};
use super::error_words::english;
use super::own_library::{OwnFile, OwnPlace};
use super::variants::VARIANT_MARK;
use super::{
    Catalogue, EXAMINATION_ENDING, GUIDE_ENDING, KnownBoard, Nominal, Parts, builtin, disk,
    own_library, read_board, read_examination, read_guide, read_own_board, read_scenario,
    table_file,
};
use detent_simulation::controller::Board;
use detent_training::bench::Bench;
use detent_training::lesson::{CoursePart, Guide, Library, Mains, Scenario, Score};
use detent_training::practice::drill::SuppliedBoard;
use detent_training::practice::{CourseJob, Examination};
use detent_training::reason::evidence::{self, Table};
use detent_training::reason::{Hint, PathError, Review, hint_in_slices, review_in_slices};
use detent_training::record::{Attempt, Header, sha256_hex};
use detent_training::variant::KnownFaults;
use detent_training::without_breaks;
use std::borrow::Cow;
use std::collections::BTreeMap;
use std::path::Path;
use std::sync::Arc;

/// The content: what is built in, and beside it that of an own library, if one was opened.
#[derive(Clone, Debug)]
pub struct ContentLibrary {
    /// The parts counter's list, the own library's parts last.
    pub parts: Parts,
    /// The failure modes.
    pub catalogue: Catalogue,
    /// The sound machine.
    pub machine: Nominal,
    /// Boards, those of the own library last.
    pub boards: Vec<Board>,
    /// What of it is built in.
    built_in: BuiltIn,
    /// Scenarios, guides and examinations.
    lessons: Arc<[LessonFile]>,
    /// Tables of the own library's boards, by the names of their files.
    tables: BTreeMap<String, Arc<[u8]>>,
    /// The files of the own library's boards, and its manifest.
    own_boards: Arc<[OwnFile]>,
    /// SHA-256 of every file of the own library, by its path inside it.
    own_digests: BTreeMap<String, [u8; 32]>,
    /// What the own library says of itself, where it is a course.
    course: Option<Arc<Course>>,
    /// The own library's folder.
    folder: Option<Arc<Path>>,
    /// What was read of all that for drills.
    drills: Arc<DrillContent>,
}

/// How an examination's file ends before `.ron`.
const EXAMINATION_STEM: &str = ".examination";

/// What of all that there is is built in.
#[derive(Clone, Debug)]
struct BuiltIn {
    /// So many boards, which stand first.
    boards: usize,
    /// The parts, which stand first.
    counter: Arc<Parts>,
}

/// The text of a scenario, a guide or an examination.
#[derive(Clone, Debug)]
struct LessonFile {
    /// Path as it is told.
    file: String,
    text: Cow<'static, [u8]>,
    /// Whether it is of the own library.
    own: bool,
}

impl LessonFile {
    /// File name without folder and `.ron`.
    fn stem(&self) -> &str {
        let name = self.file.rsplit(['/', '\\']).next().unwrap_or(&self.file);
        name.strip_suffix(".ron").unwrap_or(name)
    }

    fn is_scenario(&self) -> bool {
        !self.file.ends_with(GUIDE_ENDING) && !self.file.ends_with(EXAMINATION_ENDING)
    }
}

/// A scenario with the file name and the text that it was read from.
#[derive(Clone, Debug, PartialEq)]
pub struct ScenarioSource {
    /// As given, or the built-in path.
    pub file: String,
    /// The whole text.
    pub text: String,
    /// What it says.
    pub scenario: Scenario,
}

/// Why the scenario of an attempt is not at hand. None repeats anything out of a file that is no scenario.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("{}", english().attempt_source_error(self))]
pub enum AttemptSourceError {
    /// The attempt names a file that can be none.
    NoScenarioName {
        /// The attempt.
        file: String,
        /// As named there.
        scenario: String,
    },
    /// There is no such file.
    NoScenario {
        /// The attempt.
        file: String,
        /// As named there.
        scenario: String,
    },
    /// What is called so has another text.
    AnotherText {
        /// The attempt.
        file: String,
        /// As named there.
        scenario: String,
    },
    /// The scenario has a mistake.
    Content(#[from] ContentError),
}

impl ScenarioSource {
    /// Whether the program drew it: then it is in no file that could be counted on.
    pub fn is_variant(&self) -> bool {
        self.text.starts_with(VARIANT_MARK)
    }

    /// File name without folder and ending.
    pub fn stem(&self) -> String {
        let stem = Path::new(&self.file).file_stem();
        stem.map_or_else(|| "job".to_owned(), |s| s.to_string_lossy().into_owned())
    }

    /// What practice needs to know of it.
    pub fn course_job(&self) -> CourseJob {
        CourseJob {
            file: self.stem(),
            after: (self.scenario.course.iter())
                .flat_map(|course| course.after.clone())
                .collect(),
            points: self.scenario.points,
        }
    }

    /// First line of an attempt at it. A variant goes with its attempt.
    pub fn header(&self, seed: u64) -> Header {
        if self.is_variant() {
            Header::with_scenario(&self.file, &self.text, seed)
        } else {
            Header::new(&self.file, &self.text, seed)
        }
    }
}

impl ContentLibrary {
    /// Reads everything that is built in.
    ///
    /// # Errors
    /// The first mistake found.
    pub fn builtin() -> Result<ContentLibrary, ContentError> {
        let mut boards = Vec::new();
        for (path, text) in builtin::in_folder("assets/boards") {
            let board =
                read_board(&path, text.as_bytes()).map_err(|mut errors| errors.swap_remove(0))?;
            boards.push(board);
        }
        let parts = builtin::parts()?;
        let lessons = builtin::in_folder("scenarios").map(|(file, text)| LessonFile {
            file,
            text: Cow::Borrowed(text.as_bytes()),
            own: false,
        });
        Ok(ContentLibrary {
            built_in: BuiltIn {
                boards: boards.len(),
                counter: Arc::new(parts.clone()),
            },
            parts,
            catalogue: builtin::catalogue()?,
            machine: builtin::machine()?,
            boards,
            lessons: lessons.collect(),
            tables: BTreeMap::new(),
            own_boards: Arc::default(),
            own_digests: BTreeMap::new(),
            course: None,
            folder: None,
            drills: Arc::default(),
        })
    }

    /// What is built in, and beside it the own library at `path` if one is given: a folder, or a course as one zip.
    ///
    /// # Errors
    /// Every mistake found.
    pub fn open(path: Option<&Path>) -> Result<ContentLibrary, Vec<ContentError>> {
        let Some(path) = path else {
            return ContentLibrary::builtin().map_err(|error| vec![error]);
        };
        let mut content_library = ContentLibrary::builtin().map_err(|error| vec![error])?;
        let (files, is_folder) = own_library::files_at(path)?;
        content_library.add(files)?;
        let tables = match is_folder {
            true => {
                content_library.folder = Some(path.into());
                Some(table_file::folder_of_library(path))
            }
            false => disk::table_folder(),
        };
        if let Some(tables) = tables {
            for (name, bytes) in content_library.kept_tables(&tables) {
                content_library.keep_table(name, bytes);
            }
        }
        Ok(content_library)
    }

    /// What is built in, and beside it a course as one zip, which is called `file`. Nothing is unpacked to a disk.
    ///
    /// # Errors
    /// What [`read_course_zip`] gives, and every mistake in the files.
    pub fn of_zip(file: &str, bytes: &[u8]) -> Result<ContentLibrary, Vec<ContentError>> {
        let mut content_library = ContentLibrary::builtin().map_err(|error| vec![error])?;
        content_library.add(read_course_zip(file, bytes)?.files)?;
        Ok(content_library)
    }

    /// What is built in, and beside it an own library called `root`, given as all that lies in its folder, by paths inside
    /// it with `/` between folder and name.
    ///
    /// # Errors
    /// What [`own_library::own_files`] gives, and every mistake in the files.
    pub fn of_files(
        root: &str,
        all: Vec<(String, Vec<u8>)>,
    ) -> Result<ContentLibrary, Vec<ContentError>> {
        let one = |error| vec![error];
        let mut content_library = ContentLibrary::builtin().map_err(one)?;
        content_library.add(own_library::own_files(root, all).map_err(one)?)?;
        Ok(content_library)
    }

    /// Puts the files of an own library beside what is there. Nothing that is there is changed by them.
    ///
    /// # Errors
    /// Every mistake in them; nothing is then added. Before them, [`Problem::NewerProgram`] where a newer program has packed
    /// them.
    pub fn add(&mut self, files: Vec<OwnFile>) -> Result<(), Vec<ContentError>> {
        let (with_own, mut errors) = self.beside(&files);
        // A wrong board would be told again by every scenario that names it.
        if errors.is_empty() {
            with_own.check_lessons(&mut errors);
        }
        if !errors.is_empty() {
            let manifest = files.iter().find(|own| own.place == OwnPlace::Course);
            let newer = with_own.course().and_then(Course::newer_program);
            if let Some((manifest, newer)) = manifest.zip(newer) {
                errors.insert(0, ContentError::of_file(&manifest.file, newer));
            }
            return Err(errors);
        }
        *self = with_own;
        Ok(())
    }

    /// The files of an own library beside what is there, boards, parts and manifest as far as they are sound, with what
    /// is wrong with them. Whether jobs, guides and examinations are is not yet known.
    pub fn beside(&self, files: &[OwnFile]) -> (ContentLibrary, Vec<ContentError>) {
        let mut with_own = self.clone();
        let mut errors = with_own.add_boards_and_parts(files);
        let taken: Vec<&str> = self.lessons.iter().map(LessonFile::stem).collect();
        let mut lessons = self.lessons.to_vec();
        for OwnFile { file, bytes, .. } in files.iter().filter(|file| file.is_lesson()) {
            let lesson = LessonFile {
                file: file.clone(),
                text: Cow::Owned(bytes.clone()),
                own: true,
            };
            if taken.contains(&lesson.stem()) {
                let problem = Problem::NameTaken(lesson.stem().to_owned());
                errors.push(ContentError::of_file(file, problem));
            }
            lessons.push(lesson);
        }
        with_own.lessons = lessons.into();
        with_own.drills = Arc::default();
        let jobs: Vec<&str> = with_own.stems().collect();
        let mut course = None;
        for own in files.iter().filter(|own| own.place == OwnPlace::Course) {
            match read_course(&own.file, &own.bytes, Some(&jobs)) {
                Ok(read) => course = Some(Arc::new(read)),
                Err(found) => errors.extend(found),
            }
        }
        with_own.course = course;
        let others = [OwnPlace::Boards, OwnPlace::Course];
        let others = files.iter().filter(|own| others.contains(&own.place));
        with_own.own_boards = others.cloned().collect();
        let digests = files.iter().map(|own| (own.inner_path(), own.digest()));
        with_own.own_digests = digests.collect();
        (with_own, errors)
    }

    /// What the own library says of itself, where it is a course.
    pub fn course(&self) -> Option<&Course> {
        self.course.as_deref()
    }

    /// File names of all jobs, without folder and ending.
    pub fn stems(&self) -> impl Iterator<Item = &str> {
        let jobs = self.lessons.iter().filter(|lesson| lesson.is_scenario());
        jobs.map(LessonFile::stem)
    }

    /// Puts the boards and parts among these files beside what is there, as far as they are sound; tells what is wrong
    /// with the others.
    pub fn add_boards_and_parts(&mut self, files: &[OwnFile]) -> Vec<ContentError> {
        let mut errors = Vec::new();
        let read = own_library::read(self, files, &mut errors);
        self.boards.extend(read.boards);
        self.parts.parts.extend(read.parts);
        self.drills = Arc::default();
        errors
    }

    /// Every file of the library that can be checked, by its path, with its text.
    pub fn files(&self) -> Vec<(String, Vec<u8>)> {
        let boards = builtin::in_folder("assets/boards");
        let boards = boards.map(|(file, text)| (file, text.as_bytes().to_vec()));
        let own = self.own_boards.iter();
        let own = own.map(|own| (own.file.clone(), own.bytes.clone()));
        let lessons = self.lessons.iter();
        let lessons = lessons.map(|lesson| (lesson.file.clone(), lesson.text.to_vec()));
        boards.chain(own).chain(lessons).collect()
    }

    /// The file of this board and its text.
    pub fn board_text(&self, id: &str) -> Option<(String, String)> {
        let boards = builtin::in_folder("assets/boards");
        let boards = boards.map(|(file, text)| (file, text.to_owned()));
        let own = self.own_boards.iter();
        let own = own.map(|own| {
            let text = String::from_utf8_lossy(&own.bytes).into_owned();
            (own.file.clone(), text)
        });
        boards
            .chain(own)
            .find(|(file, _)| Path::new(file).file_stem().is_some_and(|stem| stem == id))
    }

    /// Puts a board of one's own beside the others, or in the place of the own one of its name.
    ///
    /// # Errors
    /// Every mistake in it; nothing is then changed.
    pub fn take_in_board(&mut self, file: OwnFile) -> Result<(), Vec<ContentError>> {
        let board = read_own_board(&file.file, &file.bytes)?;
        if self.is_built_in(&board.id) {
            let taken = Problem::NameTaken(board.id);
            return Err(vec![ContentError::of_file(&file.file, taken)]);
        }
        let mut own_boards = self.own_boards.to_vec();
        match self.boards.iter_mut().find(|there| there.id == board.id) {
            Some(there) => {
                let stem = Path::new(&file.file).file_stem();
                own_boards.retain(|own| Path::new(&own.file).file_stem() != stem);
                *there = board;
            }
            None => self.boards.push(board),
        }
        if let Some(digest) = self.own_digests.get_mut(&file.inner_path()) {
            *digest = file.digest();
        }
        own_boards.push(file);
        self.own_boards = own_boards.into();
        Ok(())
    }

    /// SHA-256 over path and bytes of every file of the content that is built in, and of every file of the own library. A folder, and the same course as one zip, have the same.
    ///
    /// Tables of the own library's boards follow from it and are not in it. Neither is a board that was taken in
    /// beside it: no job of the library is on such a one.
    pub fn digest(&self) -> [u8; 32] {
        let built_in = builtin::files().map(|(file, bytes)| (file, sha256(bytes)));
        let own = self.own_digests.iter();
        let own = own.map(|(path, digest)| (format!("own/{path}"), *digest));
        digest_of_files(built_in.chain(own))
    }

    /// What is known of the faults on this board at this supply; none without a table.
    pub fn known_faults(&self, board: &Board, mains: Mains) -> Option<KnownFaults> {
        let library = self.library_of(board, mains);
        let table = self.table(&library, mains)?;
        Some(KnownFaults::of(&library, table))
    }

    /// Board and supply of a job, if it can be read.
    pub fn board_of_job(&self, file: &str, bytes: &[u8]) -> Option<(String, Mains)> {
        let scenario = self
            .scenario_source(file.to_owned(), bytes.to_vec())
            .ok()?
            .scenario;
        Some((scenario.board, scenario.mains))
    }

    /// The parts that are built in.
    pub(super) fn built_in_parts(&self) -> &Parts {
        &self.built_in.counter
    }

    /// Names of the jobs that may be asked for: those of the library, and those in this folder.
    pub(super) fn job_names(&self, folder: &Path) -> Vec<String> {
        let mut names: Vec<String> = self.stems().map(str::to_owned).collect();
        names.extend(disk::ron_stems(folder));
        names
    }

    /// Reads what was added.
    fn check_lessons(&self, errors: &mut Vec<ContentError>) {
        let mut scenarios = Vec::new();
        for lesson in self.lessons.iter().filter(|l| l.is_scenario()) {
            match self.scenario_source(lesson.file.clone(), lesson.text.to_vec()) {
                Ok(scenario_source) => scenarios.push(scenario_source),
                Err(error) => errors.push(error),
            }
        }
        let guides = self.lessons.iter().filter(|l| l.own);
        for guide in guides.filter(|l| l.file.ends_with(GUIDE_ENDING)) {
            errors.extend(read_guide(&guide.file, &guide.text).err());
        }
        if errors.is_empty() {
            sort_by_course(&mut scenarios);
            errors.extend(check_course(&scenarios).err());
            errors.extend(self.examinations(&scenarios).err());
        }
    }

    /// The folder of the own library, if one was opened.
    pub fn folder(&self) -> Option<&Path> {
        self.folder.as_deref()
    }

    /// Whether this board is of the own library.
    pub fn is_own(&self, board: &Board) -> bool {
        !self.is_built_in(&board.id)
    }

    /// Whether the board of this id is built in.
    pub fn is_built_in(&self, id: &str) -> bool {
        let built_in = &self.boards[..self.built_in.boards];
        built_in.iter().any(|board| board.id == id)
    }

    /// Tables of the own library's boards that lie in this folder, by the names of their files.
    fn kept_tables(&self, folder: &Path) -> Vec<(String, Vec<u8>)> {
        let own = self.boards[self.built_in.boards..].iter();
        let names = own.flat_map(|board| {
            let volts = board.mains.iter().map(|mains| mains.rating().volts);
            volts.map(|volts| table_file::name(&board.id, volts))
        });
        names
            .filter_map(|name| {
                let bytes = disk::read_bytes(&folder.join(&name)).ok()?;
                Some((name, bytes))
            })
            .collect()
    }

    /// Takes the table of an own board, as the bytes of its file.
    pub fn keep_table(&mut self, name: String, bytes: Vec<u8>) {
        self.tables.insert(name, bytes.into());
    }

    /// The bytes of this board's table, whatever content it was made for.
    fn table_bytes(&self, board: &str, volts: f64) -> Option<&[u8]> {
        let name = table_file::name(board, volts);
        let own = || self.tables.get(&name).map(|bytes| &**bytes);
        builtin::table_bytes(&name).or_else(own)
    }

    /// The table of what each fault shows on this board at this supply, if one of this content is built in or was
    /// taken.
    pub fn table(&self, library: &Library<'_>, mains: Mains) -> Option<Table> {
        let rating = mains.rating();
        let bytes = self.table_bytes(&library.board.id, rating.volts)?;
        Table::from_bytes(bytes, &evidence::key(library, rating)).ok()
    }

    /// Names and codes of the boards, for checking scenarios.
    pub fn known_boards(&self) -> Vec<KnownBoard> {
        self.boards.iter().map(KnownBoard::of).collect()
    }

    /// The scenario in this file, or the built-in one of this name (`drain-code` or
    /// `scenarios/drain-code.ron`).
    ///
    /// # Errors
    /// There is none, or it has a mistake.
    pub fn scenario(&self, name: &str) -> Result<ScenarioSource, ContentError> {
        let (file, bytes) = self.job_text(name)?;
        self.scenario_source(file, bytes)
    }

    /// Name and bytes of the scenario's file of this name, or of the one of this name in the library. Nothing is read.
    ///
    /// # Errors
    /// There is none.
    pub fn job_text(&self, name: &str) -> Result<(String, Vec<u8>), ContentError> {
        if let Some(lesson) = self.lessons.iter().find(|l| l.own && l.file == name) {
            return Ok((name.to_owned(), lesson.text.to_vec()));
        }
        let path = Path::new(name);
        if disk::is_there(path)? {
            return Ok((name.to_owned(), disk::read_bytes(path)?));
        }
        let short = name.strip_prefix("scenarios/").unwrap_or(name);
        let short = short.strip_suffix(".ron").unwrap_or(short);
        let lesson = self.lessons.iter().find(|lesson| lesson.stem() == short);
        let lesson = lesson.ok_or_else(|| ContentError::of_file(name, Problem::NoScenario))?;
        Ok((lesson.file.clone(), lesson.text.to_vec()))
    }

    /// A scenario out of its text, checked against this library.
    ///
    /// # Errors
    /// What is wrong with it.
    pub fn scenario_source(
        &self,
        file: String,
        bytes: Vec<u8>,
    ) -> Result<ScenarioSource, ContentError> {
        let scenario = read_scenario(
            &file,
            &bytes,
            &self.catalogue,
            &self.parts,
            &self.known_boards(),
        )?;
        Ok(ScenarioSource {
            file,
            text: String::from_utf8_lossy(&bytes).into_owned(),
            scenario,
        })
    }

    /// The scenario that somebody names for the attempt in the file `path`, held against its text before it is
    /// read any further.
    ///
    /// # Errors
    /// There is none, or it has another text.
    pub fn scenario_named(
        &self,
        name: &str,
        path: &Path,
        attempt: &Attempt,
    ) -> Result<ScenarioSource, AttemptSourceError> {
        let (place, bytes) = self.job_text(name)?;
        if sha256_hex(&bytes) != attempt.header.scenario_sha256 {
            let (file, scenario) = (disk::name(path), name.to_owned());
            return Err(AttemptSourceError::AnotherText { file, scenario });
        }
        Ok(self.scenario_source(place, bytes)?)
    }

    /// The scenario that an attempt carries with it, if it does.
    ///
    /// # Errors
    /// It has a mistake.
    pub fn carried_scenario(
        &self,
        header: &Header,
    ) -> Result<Option<ScenarioSource>, ContentError> {
        let carried = header
            .scenario_text
            .as_ref()
            .map(|text| self.scenario_source(header.scenario.clone(), text.as_bytes().to_vec()));
        carried.transpose()
    }

    /// The scenario of the attempt in the file `path`: the one that it carries, or in the file that it names, in one
    /// of that name beside the attempt, in the own library or built in; the first whose text is the one that was attempted. What else is found is
    /// read no further than that.
    ///
    /// # Errors
    /// There is none, or only with another text.
    pub fn scenario_of(
        &self,
        path: &Path,
        attempt: &Attempt,
    ) -> Result<ScenarioSource, AttemptSourceError> {
        if let Some(carried) = self.carried_scenario(&attempt.header)? {
            return Ok(carried);
        }
        let named = Path::new(&attempt.header.scenario);
        let (file, scenario) = (disk::name(path), attempt.header.scenario.clone());
        let Some(name) = named
            .file_name()
            .filter(|_| named.extension().is_some_and(|ending| ending == "ron"))
        else {
            return Err(AttemptSourceError::NoScenarioName { file, scenario });
        };
        let on_disk = [named.to_owned(), path.with_file_name(name)];
        let on_disk = on_disk.into_iter().filter_map(|place| {
            let there = disk::is_there(&place).is_ok_and(|there| there);
            let bytes = there.then(|| disk::read_bytes(&place).ok()).flatten()?;
            Some((disk::name(&place), bytes))
        });
        let in_library = named.file_stem().and_then(|stem| stem.to_str());
        let in_library = (self.lessons.iter())
            .find(|lesson| in_library == Some(lesson.stem()))
            .map(|lesson| (lesson.file.clone(), lesson.text.to_vec()));
        let mut another_text = false;
        for (place, bytes) in on_disk.chain(in_library) {
            if sha256_hex(&bytes) == attempt.header.scenario_sha256 {
                return Ok(self.scenario_source(place, bytes)?);
            }
            another_text = true;
        }
        Err(if another_text {
            AttemptSourceError::AnotherText { file, scenario }
        } else {
            AttemptSourceError::NoScenario { file, scenario }
        })
    }

    /// The scenarios in the order of the course, those outside it last.
    ///
    /// # Errors
    /// One of them has a mistake.
    pub fn scenarios(&self) -> Result<Vec<ScenarioSource>, ContentError> {
        let mut all: Vec<ScenarioSource> = (self.lessons.iter())
            .filter(|lesson| lesson.is_scenario())
            .map(|lesson| self.scenario(&lesson.file))
            .collect::<Result<_, _>>()?;
        sort_by_course(&mut all);
        check_course(&all)?;
        Ok(all)
    }

    /// The boards that the course teaches to read, in its order.
    ///
    /// # Errors
    /// As [`ContentLibrary::scenarios`].
    pub fn boards_to_read(&self) -> Result<Vec<&Board>, ContentError> {
        let mut boards: Vec<&Board> = Vec::new();
        for ScenarioSource { scenario, .. } in self.scenarios()? {
            let reading = (scenario.course.as_ref())
                .is_some_and(|course| course.part == CoursePart::ReadingDrill);
            let board = self.board(&scenario.board).filter(|_| reading);
            boards.extend(board.filter(|board| !boards.iter().any(|b| b.id == board.id)));
        }
        Ok(boards)
    }

    /// The guide that lies beside a scenario, in the own library, on the disk or built in, if there is one.
    ///
    /// # Errors
    /// It has a mistake.
    pub fn guide(&self, scenario: &ScenarioSource) -> Result<Option<Guide>, ContentError> {
        let Some(stem) = scenario.file.strip_suffix(".ron") else {
            return Ok(None);
        };
        let file = format!("{stem}{GUIDE_ENDING}");
        let path = Path::new(&file);
        let lesson = self.lessons.iter().find(|lesson| lesson.file == file);
        match lesson {
            Some(lesson) if lesson.own => read_guide(&file, &lesson.text).map(Some),
            _ if disk::is_there(path)? => read_guide(&file, &disk::read_bytes(path)?).map(Some),
            lesson => lesson
                .map(|lesson| read_guide(&file, &lesson.text))
                .transpose(),
        }
    }

    /// The examinations, the shortest first, which name jobs among `scenarios`, each with its file name
    /// without folder and ending.
    ///
    /// # Errors
    /// One of them has a mistake.
    pub fn examinations(
        &self,
        scenarios: &[ScenarioSource],
    ) -> Result<Vec<(String, Examination)>, ContentError> {
        let stems = scenarios
            .iter()
            .filter_map(|s| Path::new(&s.file).file_stem());
        let known: Vec<&str> = stems.filter_map(|stem| stem.to_str()).collect();
        let mut all = (self.lessons.iter())
            .filter(|lesson| lesson.file.ends_with(EXAMINATION_ENDING))
            .map(|lesson| {
                let stem = lesson.stem();
                let name = stem.strip_suffix(EXAMINATION_STEM).unwrap_or(stem);
                let read = read_examination(&lesson.file, &lesson.text, &known);
                read.map(|examination| (name.to_owned(), examination))
            })
            .collect::<Result<Vec<_>, _>>()?;
        all.sort_by_key(|(_, examination)| examination.minutes);
        Ok(all)
    }

    /// Thinks a finished job over; none where no table of its board and supply is built in, nor for a second visit,
    /// which begins on a machine that somebody has worked on.
    ///
    /// # Errors
    /// The job was not done on this scenario and seed.
    pub fn review(
        &self,
        (scenario, seed): (&Scenario, u64),
        bench: &Bench,
        score: &Score,
    ) -> Result<Option<Review>, PathError> {
        without_breaks(self.review_in_slices((scenario, seed), bench, score))
    }

    /// The same in slices of a few milliseconds each, so that whoever waits can do something else in between.
    ///
    /// # Errors
    /// As [`ContentLibrary::review`].
    pub async fn review_in_slices(
        &self,
        (scenario, seed): (&Scenario, u64),
        bench: &Bench,
        score: &Score,
    ) -> Result<Option<Review>, PathError> {
        let library = self.library(scenario);
        match self.table_for(&library, scenario, bench) {
            Some(table) => review_in_slices((scenario, seed), library, &table, bench, score)
                .await
                .map(Some),
            None => Ok(None),
        }
    }

    /// What could be told to somebody who is stuck in a job, in slices of a few milliseconds each; none once the
    /// report is in, on a second visit, or where no table of this board and supply is built in.
    ///
    /// # Errors
    /// The job was not done on this scenario and seed.
    pub async fn hint_in_slices(
        &self,
        (scenario, seed): (&Scenario, u64),
        bench: &Bench,
    ) -> Result<Option<Hint>, PathError> {
        let library = self.library(scenario);
        match self.table_for(&library, scenario, bench) {
            Some(table) => hint_in_slices((scenario, seed), library, &table, bench).await,
            None => Ok(None),
        }
    }

    /// Whether there can be hints for this job as it stands on `bench`, and a review of it.
    pub fn can_be_thought_over(&self, scenario: &Scenario, bench: &Bench) -> bool {
        self.table_for(&self.library(scenario), scenario, bench)
            .is_some()
    }

    /// The table that a job is thought over with; none for a second visit, which begins on a machine that somebody
    /// has worked on.
    fn table_for(
        &self,
        library: &Library<'_>,
        scenario: &Scenario,
        bench: &Bench,
    ) -> Option<Table> {
        if bench.is_called_back() {
            return None;
        }
        self.table(library, scenario.mains)
    }

    /// The board of this name.
    pub fn board(&self, name: &str) -> Option<&Board> {
        self.boards.iter().find(|board| board.id == name)
    }

    /// This board with the sound machine for `mains`, the catalogue and the counter. The parts of an own library are
    /// on the counter of its own boards alone, so that it changes no built-in machine.
    pub fn library_of<'a>(&'a self, board: &'a Board, mains: Mains) -> Library<'a> {
        let parts = match self.is_own(board) {
            true => &self.parts.parts[..],
            false => &self.built_in.counter.parts[..],
        };
        Library {
            board,
            sound: self.machine.params(mains),
            modes: &self.catalogue.modes,
            found_by: &self.catalogue.found_by,
            parts,
            rates: self.parts.rates,
            billing: self.parts.billing,
        }
    }

    /// What the questions of drills are drawn from.
    pub fn drill_source(&self) -> DrillSource<'_> {
        DrillSource::new(self, &self.drills)
    }

    /// Every board at every supply that it is made for.
    pub fn supplied_boards(&self) -> Vec<SuppliedBoard<'_>> {
        let boards = self.boards.iter();
        boards
            .flat_map(|board| board.mains.iter().map(move |mains| (board, *mains)))
            .map(|(board, mains)| SuppliedBoard {
                library: self.library_of(board, mains),
                mains,
            })
            .collect()
    }

    /// Of these those with a table: on them variants can be drawn.
    pub fn boards_with_tables(&self) -> Vec<SuppliedBoard<'_>> {
        let mut boards = self.supplied_boards();
        boards.retain(|supplied| {
            let volts = supplied.mains.rating().volts;
            self.table_bytes(&supplied.library.board.id, volts)
                .is_some()
        });
        boards
    }

    /// What a checked scenario draws on.
    ///
    /// # Panics
    /// The scenario names a board that is not here: it was not read through this shelf.
    pub fn library(&self, scenario: &Scenario) -> Library<'_> {
        let board = self.board(&scenario.board);
        let board = board.expect("a checked scenario names a known board");
        self.library_of(board, scenario.mains)
    }
}

/// Puts scenarios in the order of the course, those outside it last.
fn sort_by_course(scenarios: &mut [ScenarioSource]) {
    let place = |scenario_source: &ScenarioSource| {
        let course = scenario_source.scenario.course.as_ref();
        course.map_or((usize::MAX, 0), |c| (c.part.index(), c.number))
    };
    scenarios.sort_by_key(place);
}

/// The jobs of each part of the course, given in order, are numbered from 1 without gaps.
fn check_course(sorted: &[ScenarioSource]) -> Result<(), ContentError> {
    let (mut last, mut expected) = (None, 0);
    for scenario_source in sorted {
        let Some(course) = &scenario_source.scenario.course else {
            continue;
        };
        expected = if last == Some(course.part) {
            expected + 1
        } else {
            1
        };
        last = Some(course.part);
        if usize::from(course.number) != expected {
            let problem = Problem::CourseNumber {
                part: course.part,
                found: course.number,
                expected,
            };
            return Err(ContentError {
                field: "course.number".to_owned(),
                ..ContentError::of_file(&scenario_source.file, problem)
            });
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_gap_in_the_course_and_two_jobs_at_one_place_are_found() {
        let content_library = ContentLibrary::builtin().expect("the built-in content is sound");
        let sound = content_library.scenarios().expect("they are sound");
        let at = |n: usize, number: u8| {
            let mut all = sound.clone();
            let course = all[n].scenario.course.as_mut().expect("in the course");
            course.number = number;
            check_course(&all).map_err(|error| error.problem)
        };
        let part = sound[0]
            .scenario
            .course
            .as_ref()
            .expect("in the course")
            .part;
        let wrong = |found, expected| {
            Err(Problem::CourseNumber {
                part,
                found,
                expected,
            })
        };
        assert_eq!(at(1, 2), Ok(()));
        assert_eq!(at(1, 3), wrong(3, 2));
        assert_eq!(at(1, 1), wrong(1, 2));
        assert_eq!(at(0, 0), wrong(0, 1));
    }
}
