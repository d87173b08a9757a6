//! An attempt log kept in a folder.
//!
//! While the job lasts the log grows in `NAME.part`. When it ends, the whole attempt is written to
//! a temporary file beside it, synced and given the name `NAME` unless that is taken, so that `NAME` is
//! never half there and never written over.

#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    reason = "an attempt grows in a file of its own"
)]

use super::disk;
use super::error::ContentError;
use super::error_words::english;
use detent_simulation::units::Time;
use detent_training::bench::Action;
use detent_training::record::{
    Attempt, AttemptLog, Footer, Header, LogError, PART, RecordError, SystemReason, read_attempt,
};
use std::fs::{self, File, OpenOptions};
use std::io::{self, Seek, SeekFrom, Write};
use std::path::{Path, PathBuf};
use tempfile::PersistError;

/// Why an attempt file could not be written.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("{}", english().attempt_file_error(self))]
pub enum AttemptFileError {
    /// The disk or the system refused.
    Io {
        /// The file that was meant.
        file: String,
        /// The system's reason.
        reason: SystemReason,
    },
    /// Another attempt has this name.
    Exists(String),
    /// The line could not be written.
    Log {
        /// The log's file.
        file: String,
        /// Why.
        source: LogError,
    },
    /// The unfinished log cannot be read.
    File(#[from] ContentError),
    /// The unfinished log is damaged.
    Damaged(#[from] RecordError),
}

/// An attempt that is being recorded to disk.
#[derive(Debug)]
pub struct AttemptWriter {
    log: AttemptLog<File>,
    path: PathBuf,
    part: PathBuf,
}

impl AttemptWriter {
    /// Begin an attempt that will be called `path` when it is finished.
    ///
    /// # Errors
    /// When the name is taken or the folder cannot be written.
    pub fn create(path: &Path, header: &Header) -> Result<AttemptWriter, AttemptFileError> {
        let part = with_ending(path, PART);
        refuse_existing(path)?;
        let file = OpenOptions::new()
            .write(true)
            .create_new(true)
            .open(&part)
            .map_err(|source| match source.kind() {
                io::ErrorKind::AlreadyExists => AttemptFileError::Exists(disk::name(&part)),
                _ => io_error(&part, source),
            })?;
        let log = AttemptLog::begin(file, header).map_err(|e| log_error(&part, e))?;
        let path = path.to_owned();
        Ok(AttemptWriter { log, path, part })
    }

    /// Begin an attempt as [`Self::create`] does, in the place of an unfinished one of this name.
    ///
    /// # Errors
    /// When a finished attempt has the name, or the folder cannot be written.
    pub fn replace(path: &Path, header: &Header) -> Result<AttemptWriter, AttemptFileError> {
        refuse_existing(path)?;
        let part = with_ending(path, PART);
        match fs::remove_file(&part) {
            Err(error) if error.kind() != io::ErrorKind::NotFound => Err(io_error(&part, error)),
            _ => AttemptWriter::create(path, header),
        }
    }

    /// Go on with the unfinished attempt that will be called `path`; a torn last line is cut off.
    ///
    /// # Errors
    /// When there is none, it is damaged, or it was finished already.
    pub fn resume(path: &Path) -> Result<(AttemptWriter, Attempt), AttemptFileError> {
        let part = with_ending(path, PART);
        refuse_existing(path)?;
        let attempt = read_attempt(&disk::name(&part), &disk::attempt_bytes(&part)?)?;
        let open = || -> io::Result<File> {
            let mut file = OpenOptions::new().write(true).open(&part)?;
            file.set_len(attempt.whole_bytes as u64)?;
            file.seek(SeekFrom::End(0))?;
            Ok(file)
        };
        let file = open().map_err(|e| io_error(&part, e))?;
        let log = AttemptLog::resume(file, &attempt).map_err(|e| log_error(&part, e))?;
        let path = path.to_owned();
        Ok((AttemptWriter { log, path, part }, attempt))
    }

    /// Add one action; it is in the file when this returns.
    ///
    /// # Errors
    /// When the disk refuses, or `at` lies before the last action.
    pub fn push(&mut self, at: Time, action: &Action) -> Result<(), AttemptFileError> {
        self.log
            .push(at, action)
            .map_err(|e| log_error(&self.part, e))
    }

    /// Where the unfinished log is.
    pub fn part(&self) -> &Path {
        &self.part
    }

    /// Add the end and give the file its name, which is returned.
    ///
    /// # Errors
    /// When the disk refuses; the unfinished log then stays.
    pub fn finish(self, footer: &Footer) -> Result<PathBuf, AttemptFileError> {
        let AttemptWriter { log, path, part } = self;
        drop(log);
        let bytes = disk::attempt_bytes(&part)?;
        let attempt = read_attempt(&disk::name(&part), &bytes)?;
        let whole = bytes[..attempt.whole_bytes].to_vec();
        let finished = AttemptLog::resume(whole, &attempt)
            .and_then(|log| log.finish(footer))
            .map_err(|e| log_error(&part, e))?;

        let mut temporary = disk::new_beside(&path).map_err(|e| io_error(&path, e))?;
        temporary
            .write_all(&finished)
            .and_then(|()| temporary.as_file().sync_all())
            .map_err(|e| io_error(temporary.path(), e))?;
        // Looked at and named in one step: another program may be finishing one of the same name.
        temporary
            .persist_noclobber(&path)
            .map_err(|PersistError { error, .. }| match error.kind() {
                io::ErrorKind::AlreadyExists => AttemptFileError::Exists(disk::name(&path)),
                _ => io_error(&path, error),
            })?;
        disk::sync_folder(&path).map_err(|e| io_error(&path, e))?;
        fs::remove_file(&part).map_err(|e| io_error(&part, e))?;
        Ok(path)
    }
}

fn refuse_existing(path: &Path) -> Result<(), AttemptFileError> {
    match path.try_exists() {
        Ok(false) => Ok(()),
        Ok(true) => Err(AttemptFileError::Exists(disk::name(path))),
        Err(source) => Err(io_error(path, source)),
    }
}

fn with_ending(path: &Path, ending: &str) -> PathBuf {
    let mut name = path.as_os_str().to_owned();
    name.push(ending);
    name.into()
}

fn io_error(path: &Path, source: io::Error) -> AttemptFileError {
    let file = disk::name(path);
    let reason = SystemReason::from(&source);
    AttemptFileError::Io { file, reason }
}

fn log_error(path: &Path, source: LogError) -> AttemptFileError {
    let file = disk::name(path);
    AttemptFileError::Log { file, source }
}
