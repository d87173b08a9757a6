//! What can go wrong with keeping a class.

use rusqlite::ErrorCode;
use std::path::{Path, PathBuf};

/// Why something was not kept or not read.
#[derive(Debug, thiserror::Error)]
pub enum StoreError {
    /// Another server has the database open.
    #[error("{}: another class is running with this file; close that one, or name another folder with --data", .0.display())]
    Taken(PathBuf),
    /// The file lies on a disk of another computer, where SQLite's locks do not hold.
    #[error("{}: lies on a network share ({kind}), where a database can be damaged; name a folder on this computer's own disk with --data", file.display())]
    NetworkShare {
        /// The file.
        file: PathBuf,
        /// Kind of file system.
        kind: String,
    },
    /// The file is something else.
    #[error("{}: is no class of Detent; name another folder with --data", .0.display())]
    Foreign(PathBuf),
    /// The file was made by a newer program.
    #[error("{}: was made by a newer Detent; use that one", .0.display())]
    Newer(PathBuf),
    /// The file is damaged.
    #[error("{}: is damaged ({found}); go on with the newest copy from the folder of copies", file.display())]
    Damaged {
        /// The file.
        file: PathBuf,
        /// What SQLite says.
        found: String,
    },
    /// The disk has no room left.
    #[error(
        "the disk is full; make room, what comes in meanwhile is kept where it is made and sent again"
    )]
    Full,
    /// Something else reads all the time, so that what was deleted stays in the log for now.
    #[error(
        "what was deleted is still in the database's log, since something else reads it; try again in a moment"
    )]
    Busy,
    /// A row holds what the program never writes.
    #[error("the database holds {0:?}, which this program does not write; go on with a copy")]
    Row(String),
    /// The path is no text.
    #[error("{}: choose a path that can be written as text", .0.display())]
    Name(PathBuf),
    /// The system refused something.
    #[error("{}: {reason}", file.display())]
    System {
        /// File or folder.
        file: PathBuf,
        /// The system's words.
        reason: String,
    },
    /// Anything else that SQLite says.
    #[error("the database refuses: {0}")]
    Sqlite(rusqlite::Error),
    /// What was written together could not be committed.
    #[error("{0}")]
    Commit(String),
    /// The thread that writes has ended.
    #[error("the class is being closed")]
    Ended,
}

impl From<rusqlite::Error> for StoreError {
    fn from(error: rusqlite::Error) -> StoreError {
        match error.sqlite_error_code() {
            Some(ErrorCode::DiskFull) => StoreError::Full,
            _ => StoreError::Sqlite(error),
        }
    }
}

impl From<serde_json::Error> for StoreError {
    fn from(error: serde_json::Error) -> StoreError {
        StoreError::Row(error.to_string())
    }
}

impl StoreError {
    /// The same for everybody whom it concerns.
    pub(super) fn again(&self) -> StoreError {
        match self {
            StoreError::Full => StoreError::Full,
            StoreError::Ended => StoreError::Ended,
            other => StoreError::Commit(other.to_string()),
        }
    }

    /// The same, said of a file.
    pub(super) fn of_file(file: &Path, error: &rusqlite::Error) -> StoreError {
        let file = file.to_owned();
        match error.sqlite_error_code() {
            Some(ErrorCode::DiskFull) => StoreError::Full,
            Some(ErrorCode::NotADatabase) => StoreError::Foreign(file),
            Some(ErrorCode::DatabaseCorrupt) => StoreError::Damaged {
                file,
                found: error.to_string(),
            },
            _ => StoreError::System {
                file,
                reason: error.to_string(),
            },
        }
    }
}
