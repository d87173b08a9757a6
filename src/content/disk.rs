//! Content from files on disk. Together with [`super::attempt_file`] the only place that opens any.

#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    reason = "this file opens files for the whole member"
)]

use super::error::{ContentError, Problem};
use super::error_words::english;
use super::reader::LONGEST_BYTES;
use super::{Catalogue, KnownBoard, Nominal, Parts};
use super::{read_catalogue, read_machine, read_parts, read_scenario};
use detent_training::lesson::Scenario;
use detent_training::record::{
    Attempt, LONGEST_ATTEMPT_BYTES, RecordError, SystemReason, read_attempt,
};
use std::fs::File;
use std::io::{self, Read, Write};
use std::path::Path;
#[cfg(not(target_family = "wasm"))]
use std::path::PathBuf;

/// Largest profile that is read; a year's answers make less than one tenth of it.
pub(super) const LONGEST_PROFILE_BYTES: usize = 64 << 20;

/// Where this user's programs keep their data: `~/.local/share/detent` on Linux. It need not exist; none
/// when the system names no such folder.
#[cfg(not(target_family = "wasm"))]
pub fn data_folder() -> Option<PathBuf> {
    directories::BaseDirs::new().map(|user| user.data_dir().join("detent"))
}

/// Where this user's programs keep what can be made again: `~/.cache/detent` on Linux. It need not exist;
/// none when the system names no such folder.
#[cfg(not(target_family = "wasm"))]
pub fn cache_folder() -> Option<PathBuf> {
    directories::BaseDirs::new().map(|user| user.cache_dir().join("detent"))
}

/// Where learners' profiles are: `DETENT_PROFILES`, else in the data folder.
#[cfg(not(target_family = "wasm"))]
pub fn profiles_folder() -> Option<PathBuf> {
    let own = std::env::var_os("DETENT_PROFILES").filter(|value| !value.is_empty());
    own.map(PathBuf::from)
        .or_else(|| data_folder().map(|folder| folder.join("learners")))
}

/// A file's bytes.
///
/// # Errors
/// [`Problem::Io`] with the system's reason, [`Problem::TooLong`].
pub fn read_bytes(path: &Path) -> Result<Vec<u8>, ContentError> {
    read_at_most(path, LONGEST_BYTES)
}

/// The bytes of a learner's profile.
///
/// # Errors
/// [`Problem::Io`] with the system's reason, [`Problem::TooLong`].
pub fn profile_bytes(path: &Path) -> Result<Vec<u8>, ContentError> {
    read_at_most(path, LONGEST_PROFILE_BYTES)
}

/// The bytes of an attempt.
///
/// # Errors
/// [`Problem::Io`] with the system's reason, [`Problem::TooLong`].
pub fn attempt_bytes(path: &Path) -> Result<Vec<u8>, ContentError> {
    read_at_most(path, LONGEST_ATTEMPT_BYTES)
}

/// Tries whether the files of a folder can be listed.
///
/// # Errors
/// [`Problem::Io`] with the system's reason.
pub fn check_listable(folder: &Path) -> Result<(), ContentError> {
    let listed = std::fs::read_dir(folder).map(drop);
    listed.map_err(|error| no_line(folder, Problem::Io(SystemReason::from(&error))))
}

/// Whether there is a file of this name; none for nothing at all.
///
/// # Errors
/// [`Problem::NoFile`] for a folder, a device or a pipe, [`Problem::Io`] where the system cannot tell, as for
/// links that lead in a circle.
pub fn is_there(path: &Path) -> Result<bool, ContentError> {
    match std::fs::metadata(path) {
        Ok(what) if what.is_file() => Ok(true),
        Ok(_) => Err(no_line(path, Problem::NoFile)),
        // The browser has no files at all.
        Err(error)
            if matches!(
                error.kind(),
                io::ErrorKind::NotFound | io::ErrorKind::Unsupported
            ) =>
        {
            Ok(false)
        }
        Err(error) => Err(no_line(path, Problem::Io(SystemReason::from(&error)))),
    }
}

fn no_line(path: &Path, problem: Problem) -> ContentError {
    ContentError {
        file: name(path),
        line: 0,
        column: 0,
        field: String::new(),
        problem,
        source_line: None,
    }
}

fn read_at_most(path: &Path, most: usize) -> Result<Vec<u8>, ContentError> {
    let error = |problem| no_line(path, problem);
    let read = || -> io::Result<Vec<u8>> {
        let mut bytes = Vec::new();
        // One byte more than allowed tells an endless device from a file that just fits.
        let file = File::open(path)?.take(most as u64 + 1);
        io::BufReader::new(file).read_to_end(&mut bytes)?;
        Ok(bytes)
    };
    let bytes = read().map_err(|e| error(Problem::Io(SystemReason::from(&e))))?;
    if bytes.len() > most {
        return Err(error(Problem::TooLong { most }));
    }
    Ok(bytes)
}

/// [`read_parts`] from disk.
///
/// # Errors
/// As there, or [`Problem::Io`].
pub fn parts(path: &Path) -> Result<Parts, ContentError> {
    read_parts(&name(path), &read_bytes(path)?)
}

/// [`read_catalogue`] from disk.
///
/// # Errors
/// As there, or [`Problem::Io`].
pub fn catalogue(path: &Path, parts: &Parts) -> Result<Catalogue, ContentError> {
    read_catalogue(&name(path), &read_bytes(path)?, parts)
}

/// [`read_machine`] from disk.
///
/// # Errors
/// As there, or [`Problem::Io`].
pub fn machine(path: &Path) -> Result<Nominal, ContentError> {
    read_machine(&name(path), &read_bytes(path)?)
}

/// [`read_scenario`] from disk.
///
/// # Errors
/// As there, or [`Problem::Io`].
pub fn scenario(
    path: &Path,
    catalogue: &Catalogue,
    parts: &Parts,
    boards: &[KnownBoard],
) -> Result<Scenario, ContentError> {
    read_scenario(&name(path), &read_bytes(path)?, catalogue, parts, boards)
}

/// Why an attempt could not be read from disk.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("{}", english().attempt_read_error(self))]
pub enum AttemptReadError {
    /// The file itself.
    File(#[from] ContentError),
    /// What is in it.
    Record(#[from] RecordError),
}

/// [`read_attempt`] from disk.
///
/// # Errors
/// As there, or [`Problem::Io`].
pub fn attempt(path: &Path) -> Result<Attempt, AttemptReadError> {
    Ok(read_attempt(&name(path), &attempt_bytes(path)?)?)
}

/// Writes a whole file: to a temporary one beside it, synced, then renamed, so that `path` is never
/// half there. Makes the folder where it is missing.
///
/// # Errors
/// The system's reason.
pub fn write_whole(path: &Path, bytes: &[u8]) -> io::Result<()> {
    if let Some(folder) = path.parent() {
        std::fs::create_dir_all(folder)?;
    }
    let mut temporary = path.as_os_str().to_owned();
    // Two programs that write at once must not share one.
    temporary.push(format!(".{}.tmp", std::process::id()));
    let mut file = File::create(&temporary)?;
    file.write_all(bytes)?;
    file.sync_all()?;
    std::fs::rename(&temporary, path)?;
    sync_folder(path)
}

/// Writes a whole file where there is none yet: to a temporary one beside it, synced, then renamed.
///
/// # Errors
/// The system's reason; [`io::ErrorKind::AlreadyExists`] where there is one.
#[cfg(not(target_family = "wasm"))]
pub fn write_new(path: &Path, bytes: &[u8]) -> io::Result<()> {
    let mut file = new_beside(path)?;
    file.write_all(bytes)?;
    file.as_file().sync_all()?;
    file.persist_noclobber(path)?;
    sync_folder(path)
}

/// Tries whether files can be written to a folder.
///
/// # Errors
/// The system's reason.
#[cfg(not(target_family = "wasm"))]
pub fn check_folder(folder: &Path) -> io::Result<()> {
    tempfile::tempfile_in(folder).map(drop)
}

/// Make a rename in the file's folder last through a power failure.
pub(super) fn sync_folder(path: &Path) -> io::Result<()> {
    // Only Unix lets a folder be opened and synced; elsewhere the file system sees to it.
    if cfg!(unix) {
        File::open(folder_of(path))?.sync_all()?;
    }
    Ok(())
}

/// A new file in the folder of `path`, that whoever may read other files there may read too. It is
/// deleted unless it gets a lasting name.
#[cfg(not(target_family = "wasm"))]
pub(super) fn new_beside(path: &Path) -> io::Result<tempfile::NamedTempFile> {
    let mut file = tempfile::Builder::new();
    file.prefix(".detent-").suffix(".tmp");
    #[cfg(unix)]
    file.permissions(std::os::unix::fs::PermissionsExt::from_mode(0o666));
    file.tempfile_in(folder_of(path))
}

/// The folder that a file is in.
pub(super) fn folder_of(path: &Path) -> &Path {
    let folder = path.parent().filter(|f| !f.as_os_str().is_empty());
    folder.unwrap_or(Path::new("."))
}

/// A path as people write it.
pub fn name(path: &Path) -> String {
    path.display().to_string()
}
