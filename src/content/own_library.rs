//! An own library: boards, scenarios and parts of the instructor's, beside the built-in ones. With a manifest it is a
//! course.

use super::board_file::read_board;
use super::content_library::ContentLibrary;
use super::course_zip::{CourseZip, read_course_zip};
use super::digest::sha256;
use super::disk;
use super::error::{ContentError, Problem};
use super::parts::read_added_parts;
use detent_simulation::controller::Board;
use detent_training::bench::Part;
use std::path::Path;

/// The most files of an own library, and the most bytes in all of them: a hundred times the built-in course.
pub(super) const MOST_FILES: usize = 1000;
pub(super) const MOST_BYTES: usize = 32 << 20;

/// What a file of an own library is, by where it lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OwnPlace {
    /// In `boards`.
    Boards,
    /// In `scenarios`: jobs, guides and examinations.
    Scenarios,
    /// `parts.ron`.
    Parts,
    /// `course.ron`.
    Course,
}

impl OwnPlace {
    /// The folders of a library.
    pub const FOLDERS: [(&'static str, OwnPlace); 2] = [
        ("boards", OwnPlace::Boards),
        ("scenarios", OwnPlace::Scenarios),
    ];
    /// The parts, beside them.
    pub const PARTS_FILE: &'static str = "parts.ron";
    /// The manifest of a course, beside them.
    pub const COURSE_FILE: &'static str = "course.ron";

    /// What the file at this path inside a library is, `/` between folder and name; none where nothing reads one.
    pub fn of(path: &str) -> Option<OwnPlace> {
        match path.split_once('/') {
            None if path == OwnPlace::PARTS_FILE => Some(OwnPlace::Parts),
            None if path == OwnPlace::COURSE_FILE => Some(OwnPlace::Course),
            None => None,
            Some((folder, name)) => {
                let (_, place) = OwnPlace::FOLDERS.into_iter().find(|(f, _)| *f == folder)?;
                (is_read(name) && !name.contains('/')).then_some(place)
            }
        }
    }

    /// Its folder inside the library; none for a file at the top.
    fn folder(self) -> Option<&'static str> {
        let mut folders = OwnPlace::FOLDERS.into_iter();
        let here = folders.find(|(_, place)| *place == self);
        here.map(|(folder, _)| folder)
    }
}

/// Whether a file of this name is read, and not passed over.
pub(super) fn is_read(name: &str) -> bool {
    name.ends_with(".ron") && !name.starts_with('.')
}

/// A file of an own library.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OwnFile {
    /// Where it lies.
    pub place: OwnPlace,
    /// Its path as it is told.
    pub file: String,
    /// What is in it.
    pub bytes: Vec<u8>,
}

impl OwnFile {
    /// Its path inside the library, such as `boards/key-pad.ron`.
    pub fn inner_path(&self) -> String {
        let name = self.file.rsplit(['/', std::path::MAIN_SEPARATOR]).next();
        let name = name.unwrap_or(&self.file);
        match self.place.folder() {
            Some(folder) => format!("{folder}/{name}"),
            None => name.to_owned(),
        }
    }

    /// SHA-256 of what is in it.
    pub(super) fn digest(&self) -> [u8; 32] {
        sha256(&self.bytes)
    }

    /// Whether it is a job, a guide or an examination.
    pub(super) fn is_lesson(&self) -> bool {
        self.place == OwnPlace::Scenarios
    }
}

/// The files of an own library called `root`, out of all that lie in its folder, by their paths inside it with `/`
/// between folder and name. Hidden ones, and files of other kinds, are passed over.
///
/// # Errors
/// [`Problem::Misplaced`] for a `.ron` file where none is read, [`Problem::TooMuch`].
pub fn own_files(
    root: &str,
    mut all: Vec<(String, Vec<u8>)>,
) -> Result<Vec<OwnFile>, ContentError> {
    all.sort();
    let (mut files, mut bytes_in_all): (Vec<OwnFile>, usize) = (Vec::new(), 0);
    for (path, bytes) in all {
        let file = format!("{root}/{path}");
        let Some(place) = OwnPlace::of(&path) else {
            if is_read(&path) && !path.contains('/') {
                return Err(ContentError::of_file(&file, Problem::Misplaced));
            }
            continue;
        };
        bytes_in_all += bytes.len();
        check_amount(root, files.len() + 1, bytes_in_all)?;
        files.push(OwnFile { place, file, bytes });
    }
    Ok(files)
}

/// The files of an own library on the disk, and whether it is a folder; else it is a course in one zip.
///
/// # Errors
/// What [`read_course_zip`] and [`disk::library_files`] give.
pub(super) fn files_at(path: &Path) -> Result<(Vec<OwnFile>, bool), Vec<ContentError>> {
    let one = |error| vec![error];
    if disk::is_there(path).is_ok_and(|there| there) {
        let bytes = disk::zip_bytes(path).map_err(one)?;
        let CourseZip { files, .. } = read_course_zip(&disk::name(path), &bytes)?;
        return Ok((files, false));
    }
    Ok((disk::library_files(path).map_err(one)?, true))
}

/// Refuses more than a library may hold.
pub(super) fn check_amount(root: &str, files: usize, bytes: usize) -> Result<(), ContentError> {
    if files <= MOST_FILES && bytes <= MOST_BYTES {
        return Ok(());
    }
    let (files, bytes) = (MOST_FILES, MOST_BYTES);
    Err(ContentError::of_file(
        root,
        Problem::TooMuch { files, bytes },
    ))
}

/// Boards and parts of an own library.
pub(super) struct OwnContent {
    pub boards: Vec<Board>,
    pub parts: Vec<Part>,
}

/// Reads boards and parts, which may take no name that is in `there`; what is wrong with them goes to `errors`.
pub(super) fn read(
    there: &ContentLibrary,
    files: &[OwnFile],
    errors: &mut Vec<ContentError>,
) -> OwnContent {
    let of = |place: OwnPlace| files.iter().filter(move |file| file.place == place);
    let mut boards: Vec<Board> = Vec::new();
    for OwnFile { file, bytes, .. } in of(OwnPlace::Boards) {
        match read_own_board(file, bytes) {
            Ok(board) if there.board(&board.id).is_some() => {
                let problem = Problem::NameTaken(board.id);
                errors.push(ContentError::of_file(file, problem));
            }
            Ok(board) => boards.push(board),
            Err(found) => errors.extend(found),
        }
    }
    let names: Vec<&str> = boards.iter().map(|board| board.id.as_str()).collect();
    let mut parts = Vec::new();
    for OwnFile { file, bytes, .. } in of(OwnPlace::Parts) {
        match read_added_parts(file, bytes, &there.parts, &names) {
            Ok(added) => parts.extend(added),
            Err(found) => errors.extend(found),
        }
    }
    OwnContent { boards, parts }
}

/// A board that is called as its file is.
///
/// # Errors
/// Every mistake in the file.
pub fn read_own_board(file: &str, bytes: &[u8]) -> Result<Board, Vec<ContentError>> {
    let board = read_board(file, bytes)?;
    let stem = Path::new(file).file_stem().unwrap_or_default();
    let wanted = stem.to_string_lossy();
    if board.id != wanted {
        let problem = Problem::BoardName {
            found: board.id.into(),
            wanted: wanted.as_ref().into(),
        };
        let error = ContentError::of_file(file, problem);
        return Err(vec![ContentError {
            field: "id".to_owned(),
            ..error
        }]);
    }
    Ok(board)
}
