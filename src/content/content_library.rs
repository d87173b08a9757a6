//! Everything built in, read once, and scenarios by name or path.

use super::error::{ContentError, Problem};
use super::error_words::english;
use super::variants::VARIANT_MARK;
use super::{
    Catalogue, EXAMINATION_ENDING, GUIDE_ENDING, KnownBoard, Nominal, Parts, builtin, disk,
    read_board, read_examination, read_guide, read_scenario,
};
use detent_simulation::controller::Board;
use detent_training::bench::Bench;
use detent_training::lesson::{CoursePart, Guide, Library, Mains, Scenario, Score};
use detent_training::practice::drill::SuppliedBoard;
use detent_training::practice::{CourseJob, Examination};
use detent_training::reason::evidence::Table;
use detent_training::reason::{Hint, PathError, Review, hint_in_slices, review_in_slices};
use detent_training::record::{Attempt, Header, sha256_hex};
use detent_training::without_breaks;
use std::path::Path;

/// The built-in content.
#[derive(Clone, Debug)]
pub struct ContentLibrary {
    /// The parts counter's list.
    pub parts: Parts,
    /// The failure modes.
    pub catalogue: Catalogue,
    /// The sound machine.
    pub machine: Nominal,
    /// Boards.
    pub boards: Vec<Board>,
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
        Ok(ContentLibrary {
            parts: builtin::parts()?,
            catalogue: builtin::catalogue()?,
            machine: builtin::machine()?,
            boards,
        })
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
        let (file, bytes) = Self::find(name)?;
        self.scenario_source(file, bytes)
    }

    /// Name and bytes of the file of this name, or of the built-in one.
    fn find(name: &str) -> Result<(String, Vec<u8>), ContentError> {
        let path = Path::new(name);
        Ok(if disk::is_there(path)? {
            (name.to_owned(), disk::read_bytes(path)?)
        } else {
            let short = name.strip_prefix("scenarios/").unwrap_or(name);
            let short = short.strip_suffix(".ron").unwrap_or(short);
            let built_in = format!("scenarios/{short}.ron");
            let text = builtin::text(&built_in).map_err(|mut error| {
                error.file = name.to_owned();
                error.problem = Problem::NoScenario;
                error
            })?;
            (built_in, text.as_bytes().to_vec())
        })
    }

    pub(super) fn scenario_source(
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
        let (place, bytes) = Self::find(name)?;
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
    /// of that name beside the attempt, or built in; the first whose text is the one that was attempted. What else is found is
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
        let built_in = format!("scenarios/{}", name.to_string_lossy());
        let built_in = builtin::text(&built_in)
            .ok()
            .map(|text| (built_in, text.as_bytes().to_vec()));
        let mut another_text = false;
        for (place, bytes) in on_disk.chain(built_in) {
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

    /// The built-in scenarios in the order of the course, those outside it last.
    ///
    /// # Errors
    /// One of them has a mistake.
    pub fn scenarios(&self) -> Result<Vec<ScenarioSource>, ContentError> {
        let mut all: Vec<ScenarioSource> = builtin::in_folder("scenarios")
            .filter(|(path, _)| {
                !path.ends_with(GUIDE_ENDING) && !path.ends_with(EXAMINATION_ENDING)
            })
            .map(|(path, _)| self.scenario(&path))
            .collect::<Result<_, _>>()?;
        let place = |scenario_source: &ScenarioSource| {
            let course = scenario_source.scenario.course.as_ref();
            course.map_or((usize::MAX, 0), |c| (c.part.index(), c.number))
        };
        all.sort_by_key(place);
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

    /// The guide that lies beside a scenario, on the disk or built in, if there is one.
    ///
    /// # Errors
    /// It has a mistake.
    pub fn guide(&self, scenario: &ScenarioSource) -> Result<Option<Guide>, ContentError> {
        let Some(stem) = scenario.file.strip_suffix(".ron") else {
            return Ok(None);
        };
        let file = format!("{stem}{GUIDE_ENDING}");
        let path = Path::new(&file);
        if disk::is_there(path)? {
            return read_guide(&file, &disk::read_bytes(path)?).map(Some);
        }
        let built_in = builtin::text(&file).ok();
        built_in
            .map(|text| read_guide(&file, text.as_bytes()))
            .transpose()
    }

    /// The built-in examinations, the shortest first, which name jobs among `scenarios`, each with its file name
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
        let mut all = builtin::in_folder("scenarios")
            .filter_map(|(path, text)| {
                let name = path.strip_suffix(EXAMINATION_ENDING)?;
                let name = name.rsplit('/').next().unwrap_or(name).to_owned();
                let read = read_examination(&path, text.as_bytes(), &known);
                Some(read.map(|examination| (name, examination)))
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
        match table_for(&library, scenario, bench) {
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
        match table_for(&library, scenario, bench) {
            Some(table) => hint_in_slices((scenario, seed), library, &table, bench).await,
            None => Ok(None),
        }
    }

    /// Whether there can be hints for this job as it stands on `bench`, and a review of it.
    pub fn can_be_thought_over(&self, scenario: &Scenario, bench: &Bench) -> bool {
        table_for(&self.library(scenario), scenario, bench).is_some()
    }

    /// The board of this name.
    pub fn board(&self, name: &str) -> Option<&Board> {
        self.boards.iter().find(|board| board.id == name)
    }

    /// This board with the sound machine for `mains`, the catalogue and the counter.
    pub fn library_of<'a>(&'a self, board: &'a Board, mains: Mains) -> Library<'a> {
        Library {
            board,
            sound: self.machine.params(mains),
            modes: &self.catalogue.modes,
            parts: &self.parts.parts,
            rates: self.parts.rates,
            billing: self.parts.billing,
        }
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
            return Err(ContentError {
                file: scenario_source.file.clone(),
                line: 0,
                column: 0,
                field: "course.number".to_owned(),
                problem: Problem::CourseNumber {
                    part: course.part,
                    found: course.number,
                    expected,
                },
                source_line: None,
            });
        }
    }
    Ok(())
}

/// The table that a job is thought over with; none for a second visit, which begins on a machine that somebody has
/// worked on.
fn table_for(library: &Library<'_>, scenario: &Scenario, bench: &Bench) -> Option<Table> {
    if bench.is_called_back() {
        return None;
    }
    builtin::table(library, scenario.mains.rating())
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
