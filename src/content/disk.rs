//! Content from files on disk. Together with [`super::attempt_file`] the only place that opens any.

#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    reason = "this file opens files for the whole member"
)]

use super::error::{ContentError, Problem};
use super::error_words::english;
use super::own_library::{MOST_BYTES, MOST_FILES, OwnFile, OwnPlace, check_amount, is_read};
use super::reader::LONGEST_BYTES;
use super::{Catalogue, KnownBoard, Nominal, Parts};
use super::{read_catalogue, read_machine, read_parts, read_scenario};
use detent_training::lesson::Scenario;
use detent_training::record::{
    Attempt, LONGEST_ATTEMPT_BYTES, RecordError, SystemReason, read_attempt,
};
use std::fs::File;
use std::io::{self, Read, Write};
use std::path::{Path, PathBuf};

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

/// Where tables are kept of boards that are in no library's folder: with what can be made again.
#[cfg(not(target_family = "wasm"))]
pub(super) fn table_folder() -> Option<PathBuf> {
    cache_folder()
}

/// Where tables are kept of boards that are in no library's folder: a page has no files.
#[cfg(target_family = "wasm")]
pub(super) fn table_folder() -> Option<PathBuf> {
    None
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

/// The bytes of a course that is one zip.
///
/// # Errors
/// [`Problem::Io`] with the system's reason, [`Problem::TooLong`].
pub fn zip_bytes(path: &Path) -> Result<Vec<u8>, ContentError> {
    read_at_most(path, MOST_BYTES)
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
        // The browser has no files at all; what stands in a zip is none either.
        Err(error)
            if matches!(
                error.kind(),
                io::ErrorKind::NotFound | io::ErrorKind::NotADirectory | io::ErrorKind::Unsupported
            ) =>
        {
            Ok(false)
        }
        Err(error) => Err(no_line(path, Problem::Io(SystemReason::from(&error)))),
    }
}

/// The files of an own library, by place and name. Entries whose name begins with a dot, and files of other kinds, are
/// passed over.
///
/// # Errors
/// [`Problem::NoFolder`], [`Problem::LeadsOut`] for a link to what lies elsewhere, [`Problem::Misplaced`] for a `.ron`
/// file where none is read, [`Problem::TooMuch`], and what [`read_bytes`] gives.
pub fn library_files(folder: &Path) -> Result<Vec<OwnFile>, ContentError> {
    let io = |path: &Path, error: io::Error| no_line(path, Problem::Io(SystemReason::from(&error)));
    if !std::fs::metadata(folder).is_ok_and(|what| what.is_dir()) {
        return Err(no_line(folder, Problem::NoFolder));
    }
    let root = std::fs::canonicalize(folder).map_err(|error| io(folder, error))?;
    let (mut files, mut bytes) = (Vec::new(), 0);
    let places = std::iter::once((folder.to_owned(), None))
        .chain(OwnPlace::FOLDERS.map(|(name, place)| (folder.join(name), Some(place))));
    for (inner, place) in places {
        if place.is_some() && !inner.exists() {
            continue;
        }
        let mut paths = Vec::new();
        for entry in std::fs::read_dir(&inner).map_err(|error| io(&inner, error))? {
            paths.push(entry.map_err(|error| io(&inner, error))?.path());
        }
        paths.sort();
        for path in paths {
            let own_name = path
                .file_name()
                .map(|own| own.to_string_lossy().into_owned());
            let own_name = own_name.unwrap_or_default();
            if !is_read(&own_name) {
                continue;
            }
            let leads_to = std::fs::canonicalize(&path).map_err(|error| io(&path, error))?;
            if !leads_to.starts_with(&root) {
                return Err(no_line(&path, Problem::LeadsOut));
            }
            let Some(place) = place.or_else(|| OwnPlace::of(&own_name)) else {
                return Err(no_line(&path, Problem::Misplaced));
            };
            if !is_there(&path)? {
                continue;
            }
            let read = read_bytes(&path)?;
            bytes += read.len();
            check_amount(&name(folder), files.len() + 1, bytes)?;
            files.push(OwnFile {
                place,
                file: name(&path),
                bytes: read,
            });
        }
    }
    Ok(files)
}

/// Names, without folder and ending, of the `.ron` files in a folder; none where it cannot be listed.
pub fn ron_stems(folder: &Path) -> Vec<String> {
    let folder = match folder.as_os_str().is_empty() {
        true => Path::new("."),
        false => folder,
    };
    let entries = std::fs::read_dir(folder).into_iter().flatten().flatten();
    let names = entries.map(|entry| entry.file_name().to_string_lossy().into_owned());
    names
        .filter_map(|name| name.strip_suffix(".ron").map(str::to_owned))
        .collect()
}

/// The files that content is written in, among what is named: a file is taken as it is, of a folder every `.ron` file
/// in it and in the folders below, by name. Links to folders are not followed.
///
/// # Errors
/// What [`is_there`] gives, [`Problem::Io`], [`Problem::TooMuch`].
pub fn ron_files(named: &Path) -> Result<Vec<String>, ContentError> {
    let mut found = Vec::new();
    let mut open = vec![named.to_owned()];
    while let Some(path) = open.pop() {
        let io = |error: io::Error| no_line(&path, Problem::Io(SystemReason::from(&error)));
        let top = path == named;
        let what = if top {
            std::fs::metadata(&path)
        } else {
            std::fs::symlink_metadata(&path)
        };
        if what.map_err(io)?.is_dir() {
            for entry in std::fs::read_dir(&path).map_err(io)? {
                open.push(entry.map_err(io)?.path());
            }
        } else if top || path.extension().is_some_and(|ending| ending == "ron") {
            found.push(name(&path));
        }
        if found.len() > MOST_FILES || open.len() > 100 * MOST_FILES {
            let (files, bytes) = (MOST_FILES, MOST_BYTES);
            return Err(no_line(named, Problem::TooMuch { files, bytes }));
        }
    }
    found.sort();
    Ok(found)
}

fn no_line(path: &Path, problem: Problem) -> ContentError {
    ContentError::of_file(&name(path), problem)
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

/// Makes a folder that is not there yet, with these files in it by their paths inside it: in a temporary one beside it,
/// which then takes its name, so that `folder` is never half there.
///
/// # Errors
/// The system's reason; [`io::ErrorKind::AlreadyExists`] where anything of this name is there.
#[cfg(not(target_family = "wasm"))]
pub fn write_folder(folder: &Path, files: &[(String, &[u8])]) -> io::Result<()> {
    if std::fs::symlink_metadata(folder).is_ok() {
        return Err(io::ErrorKind::AlreadyExists.into());
    }
    let mut temporary = tempfile::Builder::new();
    temporary.prefix(".detent-").suffix(".tmp");
    #[cfg(unix)]
    temporary.permissions(std::os::unix::fs::PermissionsExt::from_mode(0o777));
    let temporary = temporary.tempdir_in(folder_of(folder))?;
    for (path, bytes) in files {
        let path = temporary.path().join(path);
        std::fs::create_dir_all(folder_of(&path))?;
        let mut file = File::create_new(&path)?;
        file.write_all(bytes)?;
        file.sync_all()?;
    }
    std::fs::rename(temporary.path(), folder)?;
    // It has its lasting name: there is nothing left to delete.
    let _ = temporary.keep();
    sync_folder(folder)
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
