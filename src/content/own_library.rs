//! An own library: boards, scenarios and parts of the instructor's, beside the built-in ones.

use super::board_file::read_board;
use super::content_library::ContentLibrary;
use super::error::{ContentError, Problem};
use super::parts::read_added_parts;
use detent_simulation::controller::Board;
use detent_training::bench::Part;
use std::path::Path;

/// What a file of an own library is, by where it lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OwnPlace {
    /// In `boards`.
    Boards,
    /// In `scenarios`: jobs, guides and examinations.
    Scenarios,
    /// `parts.ron`.
    Parts,
}

impl OwnPlace {
    /// The folders of a library.
    pub const FOLDERS: [(&'static str, OwnPlace); 2] = [
        ("boards", OwnPlace::Boards),
        ("scenarios", OwnPlace::Scenarios),
    ];
    /// The one file beside them.
    pub const PARTS_FILE: &'static str = "parts.ron";
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
    /// Whether it is a job, a guide or an examination.
    pub(super) fn is_lesson(&self) -> bool {
        self.place == OwnPlace::Scenarios
    }
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
