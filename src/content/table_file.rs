//! A table of what each fault shows, kept in a folder so that it is made only once for a board.

use super::disk;
use detent_training::reason::evidence::{Key, Table};
use std::io;
use std::path::{Path, PathBuf};

/// Name of the file of a board's and supply's table.
pub fn name(board: &str, volts: f64) -> String {
    format!("{board}-{volts:.0}.table")
}

/// The folder in an own library's where the tables of its boards are kept.
pub fn folder_of_library(library: &Path) -> PathBuf {
    library.join("tables")
}

/// Where the table of a board and supply is kept in `folder`.
pub fn path(folder: &Path, board: &str, volts: f64) -> PathBuf {
    folder.join(name(board, volts))
}

/// The table kept at `path` if it was made for `key`; none if there is none, it is of other content or
/// damaged: it is then made again.
pub fn load(path: &Path, key: &Key) -> Option<Table> {
    Table::from_bytes(&disk::read_bytes(path).ok()?, key).ok()
}

/// Keeps a table at `path`.
///
/// # Errors
/// The system's reason.
pub fn save(path: &Path, key: &Key, table: &Table) -> io::Result<()> {
    disk::write_whole(path, &table.to_bytes(key))
}
