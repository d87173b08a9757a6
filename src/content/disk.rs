//! Content from files on disk. Together with [`super::attempt_file`] the only place that opens any.

use super::error::{ContentError, Problem};
use super::reader::LONGEST_BYTES;
use super::{Catalogue, KnownBoard, Nominal, Parts};
use super::{read_catalogue, read_machine, read_parts, read_scenario};
use detent_training::lesson::Scenario;
use detent_training::record::{Attempt, RecordError, read_attempt};
use std::fs::File;
use std::io::{self, Read, Write};
use std::path::Path;
#[cfg(not(target_family = "wasm"))]
use std::path::PathBuf;

/// Largest attempt or profile that is read; an hour of hasty turning, or a year's answers, makes less than
/// one tenth of it.
pub(super) const LONGEST_RECORD_BYTES: usize = 64 << 20;

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

/// The bytes of a file that grows with use: an attempt or a profile.
///
/// # Errors
/// [`Problem::Io`] with the system's reason, [`Problem::TooLong`].
pub fn read_longer(path: &Path) -> Result<Vec<u8>, ContentError> {
    read_at_most(path, LONGEST_RECORD_BYTES)
}

fn read_at_most(path: &Path, most: usize) -> Result<Vec<u8>, ContentError> {
    let error = |problem| ContentError {
        file: name(path),
        line: 0,
        column: 0,
        field: String::new(),
        problem,
    };
    let read = || -> io::Result<Vec<u8>> {
        let mut bytes = Vec::new();
        // One byte more than allowed tells an endless device from a file that just fits.
        let file = File::open(path)?.take(most as u64 + 1);
        io::BufReader::new(file).read_to_end(&mut bytes)?;
        Ok(bytes)
    };
    let bytes = read().map_err(|e| error(Problem::Io(e.to_string())))?;
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
    boards: &[KnownBoard],
) -> Result<Scenario, ContentError> {
    read_scenario(&name(path), &read_bytes(path)?, catalogue, boards)
}

/// Why an attempt could not be read from disk.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum AttemptReadError {
    /// The file itself.
    #[error(transparent)]
    File(#[from] ContentError),
    /// What is in it.
    #[error(transparent)]
    Record(#[from] RecordError),
}

/// [`read_attempt`] from disk.
///
/// # Errors
/// As there, or [`Problem::Io`].
pub fn attempt(path: &Path) -> Result<Attempt, AttemptReadError> {
    Ok(read_attempt(&name(path), &read_longer(path)?)?)
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

/// Make a rename in the file's folder last through a power failure.
pub(super) fn sync_folder(path: &Path) -> io::Result<()> {
    // Only Unix lets a folder be opened and synced; elsewhere the file system sees to it.
    if cfg!(unix) {
        let folder = path.parent().filter(|f| !f.as_os_str().is_empty());
        File::open(folder.unwrap_or(Path::new(".")))?.sync_all()?;
    }
    Ok(())
}

/// A path as people write it.
pub(super) fn name(path: &Path) -> String {
    path.display().to_string()
}
