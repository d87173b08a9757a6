//! Learners' profiles in a folder.

#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    reason = "profiles are kept in a folder"
)]

use super::disk;
use super::profile_file::{ENDING, ProfileError, ProfileStore};
use detent_training::record::SystemReason;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};

/// The file that holds the stem of whoever worked here last.
const LAST: &str = "last-learner";

/// Profiles as files in a folder.
#[derive(Clone, Debug)]
pub struct ProfileFolder {
    path: PathBuf,
}

impl ProfileFolder {
    /// The folder; made when the first profile is.
    pub fn new(path: PathBuf) -> ProfileFolder {
        ProfileFolder { path }
    }

    /// The folder.
    pub fn path(&self) -> &Path {
        &self.path
    }

    fn path_of(&self, stem: &str) -> PathBuf {
        self.path.join(format!("{stem}{ENDING}"))
    }

    fn refused(&self, stem: &str, error: &io::Error) -> ProfileError {
        ProfileError::Refused {
            file: self.file(stem),
            reason: SystemReason::from(error),
        }
    }

    /// Names of the files here.
    fn names(&self) -> Vec<String> {
        let Ok(entries) = fs::read_dir(&self.path) else {
            return Vec::new();
        };
        let names = entries.flatten();
        let names = names.filter_map(|entry| entry.file_name().into_string().ok());
        let mut names: Vec<String> = names.collect();
        names.sort();
        names
    }
}

impl ProfileStore for ProfileFolder {
    fn place(&self) -> Option<String> {
        Some(disk::name(&self.path))
    }

    fn stems(&self) -> Vec<String> {
        let names = self.names().into_iter();
        let stems = names.filter_map(|name| Some(name.strip_suffix(ENDING)?.to_owned()));
        stems.collect()
    }

    fn file(&self, stem: &str) -> String {
        disk::name(&self.path_of(stem))
    }

    fn read(&self, stem: &str) -> Result<Option<Vec<u8>>, ProfileError> {
        let path = self.path_of(stem);
        match path.try_exists() {
            Ok(false) => Ok(None),
            Ok(true) => Ok(Some(disk::profile_bytes(&path)?)),
            Err(error) => Err(self.refused(stem, &error)),
        }
    }

    fn write(&self, stem: &str, text: &[u8]) -> Result<(), ProfileError> {
        let written = disk::write_whole(&self.path_of(stem), text);
        written.map_err(|error| self.refused(stem, &error))
    }

    fn remove(&self, stem: &str) -> Result<(), ProfileError> {
        if !self.stems().iter().any(|known| known == stem) {
            return Err(ProfileError::Changed(self.file(stem)));
        }
        // What a broken-off writing left holds the answers too.
        let own = format!("{stem}{ENDING}");
        let halves = format!("{own}.");
        let removed = self
            .names()
            .into_iter()
            .filter(|name| *name == own || (name.starts_with(&halves) && name.ends_with(".tmp")))
            .try_for_each(|name| -> io::Result<()> { fs::remove_file(self.path.join(name)) })
            .and_then(|()| disk::sync_folder(&self.path_of(stem)));
        removed.map_err(|error| self.refused(stem, &error))
    }

    fn last_stem(&self) -> Option<String> {
        let last = disk::profile_bytes(&self.path.join(LAST)).ok()?;
        let last = String::from_utf8(last).ok()?;
        self.stems().into_iter().find(|stem| *stem == last)
    }

    fn keep_last_stem(&self, stem: Option<&str>) -> Result<(), ProfileError> {
        let path = self.path.join(LAST);
        let kept = match stem {
            Some(stem) => disk::write_whole(&path, stem.as_bytes()),
            None if path.exists() => fs::remove_file(&path),
            None => Ok(()),
        };
        kept.map_err(|error| ProfileError::Refused {
            file: disk::name(&path),
            reason: SystemReason::from(&error),
        })
    }
}
