//! Where attempts are kept: what the window asks of it, and the one that is a folder.

use detent_content::{ContentError, ReplayError, Texts, Value};
use detent_simulation::units::Time;
use detent_training::bench::Action;
use detent_training::lesson::SetUpError;
use detent_training::record::{
    Divergence, Footer, Header, LogError, PART, RecordError, SystemReason,
};

/// The name that an attempt has when it is finished.
pub fn whole_name(name: &str) -> &str {
    name.strip_suffix(PART).unwrap_or(name)
}

/// The whole text of an attempt, finished or not, whichever of its two names is given.
///
/// # Errors
/// Why it cannot be read under the name that it has when it is finished; nor can it under the other.
pub fn read_text(attempts: &dyn Attempts, name: &str) -> Result<Vec<u8>, StorageError> {
    let whole = whole_name(name);
    let found = attempts.read(whole);
    found.or_else(|error| attempts.read(&format!("{whole}{PART}")).map_err(|_| error))
}

/// Keeps attempts by name: `JOB-N.attempt` when finished, with `.part` behind it until then.
pub trait Attempts: Send + Sync {
    /// Where that is, for people, if it can be pointed at.
    fn place(&self) -> Option<String>;
    /// All of them, the one changed last first.
    fn names(&self) -> Vec<String>;
    /// The whole text of one.
    ///
    /// # Errors
    /// Why it cannot be read.
    fn read(&self, name: &str) -> Result<Vec<u8>, StorageError>;
    /// How far the clock had come when the attempt was broken off, if that is known.
    fn seen_until(&self, name: &str) -> Option<Time>;
    /// Begin an attempt at `job`.
    ///
    /// # Errors
    /// Why it cannot be kept.
    fn begin(&self, job: &str, header: &Header) -> Result<Box<dyn AttemptSink>, StorageError>;
    /// Go on with an unfinished one.
    ///
    /// # Errors
    /// Why it cannot be gone on with.
    fn go_on(&self, name: &str) -> Result<Box<dyn AttemptSink>, StorageError>;
    /// Keep a round of a drill under this name, `text` being all of it so far. It is read as attempts are, and is not
    /// among their names.
    ///
    /// # Errors
    /// Why it is not kept; what was kept of it before still is.
    fn keep_round(&self, name: &str, text: &str) -> Result<(), StorageError>;
    /// Delete one for good.
    ///
    /// # Errors
    /// Why it is still there.
    fn remove(&self, name: &str) -> Result<(), StorageError>;
    /// What carries copies in and out, where people cannot reach the attempts themselves.
    fn file_exchange(&self) -> Option<&dyn FileExchange>;
    /// What is wrong with keeping attempts, since it went wrong.
    fn storage_error(&self) -> Option<StorageError>;
    /// Say what went wrong with keeping one.
    fn complain(&self, storage_error: StorageError);
}

/// One attempt being kept as it goes.
pub trait AttemptSink: Send + Sync {
    /// The name it has now.
    fn name(&self) -> String;
    /// Keep one action.
    ///
    /// # Errors
    /// Why it is not kept.
    fn push(&mut self, at: Time, action: &Action) -> Result<(), StorageError>;
    /// Remember how far the clock has come.
    fn mark(&mut self, at: Time);
    /// Keep the end; the name that the attempt has from now on.
    ///
    /// # Errors
    /// Why it is not kept.
    fn finish(self: Box<Self>, footer: &Footer) -> Result<String, StorageError>;
}

/// How a library comes into a browser.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LibraryForm {
    /// A folder.
    Folder,
    /// A course as one zip.
    Zip,
}

/// Carries copies of attempts in and out of a browser.
pub trait FileExchange {
    /// Hand a copy to the person.
    fn save_copy(&self, name: &str, bytes: &[u8]);
    /// Ask the person for a file.
    fn ask_for_file(&self);
    /// Ask the person for a library: a folder, or a course as one zip.
    fn ask_for_library(&self, form: LibraryForm);
    /// The next file that the person gave: name and content.
    fn arrived(&self) -> Option<(String, Vec<u8>)>;
    /// Keep an attempt that came from elsewhere under a free name, which is returned.
    ///
    /// # Errors
    /// Why it is not kept.
    fn take_in(&self, name: &str, bytes: &[u8]) -> Result<String, StorageError>;
}

/// Why an attempt is not kept or not read.
#[derive(Clone, Debug, PartialEq)]
pub enum StorageError {
    /// The browser gives no storage, with its reason.
    Refused(String),
    /// The storage is full.
    Full(String),
    /// Another window took over.
    Elsewhere,
    /// Nothing of this name.
    Gone(String),
    /// The scenario of an attempt is not here.
    NoScenario(String),
    /// It is damaged, or of a newer program.
    Damaged(RecordError),
    /// It cannot be done again here as it was recorded.
    Differs {
        /// The attempt.
        file: String,
        /// Where.
        divergence: Divergence,
    },
    /// Its file cannot be read.
    File(ContentError),
    /// The scenario cannot be set up.
    SetUp(SetUpError),
    /// A line could not be added.
    Log(LogError),
    /// The system refused something with this file or folder.
    System {
        /// The file or folder.
        file: String,
        /// The system's reason.
        reason: SystemReason,
    },
    /// Every name that an attempt at this job could have here is taken.
    NoName(String),
}

impl StorageError {
    /// What is wrong, in a sentence.
    pub fn words(&self, texts: &Texts) -> String {
        let (key, detail) = self.key_and_detail(texts);
        texts.with(key, &[("detail", Value::from(detail))])
    }

    /// Key of the sentence, and what goes into it.
    fn key_and_detail(&self, texts: &Texts) -> (&'static str, String) {
        use detent_training::record::Damage;
        match self {
            StorageError::Refused(detail) => ("trouble-refused", detail.clone()),
            StorageError::Full(detail) => ("trouble-full", detail.clone()),
            StorageError::Elsewhere => ("trouble-elsewhere", String::new()),
            StorageError::Gone(name) => ("trouble-gone", name.clone()),
            StorageError::NoScenario(name) => ("trouble-no-scenario", name.clone()),
            StorageError::Damaged(error) => match error.problem {
                Damage::NewerFormat { .. } => ("trouble-newer", error.file.clone()),
                Damage::Foreign | Damage::Empty => ("trouble-foreign", error.file.clone()),
                Damage::ScenarioChanged { .. } => ("trouble-changed", error.file.clone()),
                _ => ("trouble-damaged", texts.record_error(error)),
            },
            StorageError::Differs { file, divergence } => {
                let told = texts.divergence(divergence);
                ("trouble-differs", format!("{file}: {told}"))
            }
            StorageError::File(error) => ("trouble-other", texts.content_error(error)),
            StorageError::SetUp(error) => ("trouble-other", texts.set_up_error(error)),
            StorageError::Log(error) => ("trouble-other", texts.log_error(error)),
            StorageError::System { file, reason } => {
                let told = texts.system_reason(reason);
                ("trouble-other", format!("{file}: {told}"))
            }
            StorageError::NoName(place) => ("trouble-no-name", place.clone()),
        }
    }
}

impl From<ReplayError> for StorageError {
    fn from(error: ReplayError) -> StorageError {
        match error {
            ReplayError::Record(error) => StorageError::Damaged(error),
            ReplayError::Differs { file, divergence } => StorageError::Differs { file, divergence },
            ReplayError::SetUp(error) => StorageError::SetUp(error),
        }
    }
}

impl From<RecordError> for StorageError {
    fn from(error: RecordError) -> StorageError {
        StorageError::Damaged(error)
    }
}

/// `job-N.attempt` with the first N that is free.
pub fn free_name(job: &str, taken: impl Fn(&str) -> bool) -> Option<String> {
    (1..10_000)
        .map(|n| format!("{job}-{n}.attempt"))
        .find(|name| !taken(name) && !taken(&format!("{name}{PART}")))
}

#[cfg(not(target_family = "wasm"))]
pub use folder::Folder;

#[cfg(not(target_family = "wasm"))]
mod folder {
    use super::{
        Action, AttemptSink, Attempts, FileExchange, Footer, Header, PART, StorageError, Time,
        free_name, whole_name,
    };
    use detent_content::attempt_file::{AttemptFileError, AttemptWriter};
    use detent_content::disk;
    use std::path::{Path, PathBuf};
    use std::sync::{Mutex, PoisonError};
    use std::{fs, io};

    /// Attempts as files in a folder.
    pub struct Folder {
        path: PathBuf,
        storage_error: Mutex<Option<StorageError>>,
    }

    impl Folder {
        /// The folder; made when the first attempt is.
        pub fn new(path: PathBuf) -> Folder {
            Folder {
                path,
                storage_error: Mutex::new(None),
            }
        }
    }

    /// What the system says of a file or folder.
    fn refused(path: &Path, error: &io::Error) -> StorageError {
        StorageError::System {
            file: path.display().to_string(),
            reason: error.into(),
        }
    }

    impl From<AttemptFileError> for StorageError {
        fn from(error: AttemptFileError) -> StorageError {
            match error {
                AttemptFileError::Io { file, reason } => StorageError::System { file, reason },
                AttemptFileError::Exists(file) => StorageError::NoName(file),
                AttemptFileError::Log { source, .. } => StorageError::Log(source),
                AttemptFileError::File(error) => StorageError::File(error),
                AttemptFileError::Damaged(error) => StorageError::Damaged(error),
            }
        }
    }

    impl Attempts for Folder {
        fn place(&self) -> Option<String> {
            Some(self.path.display().to_string())
        }

        fn names(&self) -> Vec<String> {
            let Ok(entries) = fs::read_dir(&self.path) else {
                return Vec::new();
            };
            let mut found: Vec<_> = entries
                .flatten()
                .filter_map(|entry| {
                    let name = entry.file_name().into_string().ok()?;
                    let changed = entry.metadata().and_then(|m| m.modified()).ok()?;
                    let whole = whole_name(&name);
                    whole.ends_with(".attempt").then_some((changed, name))
                })
                .collect();
            found.sort();
            found.into_iter().rev().map(|(_, name)| name).collect()
        }

        fn read(&self, name: &str) -> Result<Vec<u8>, StorageError> {
            disk::attempt_bytes(&self.path.join(name)).map_err(StorageError::File)
        }

        fn seen_until(&self, _: &str) -> Option<Time> {
            None
        }

        fn begin(&self, job: &str, header: &Header) -> Result<Box<dyn AttemptSink>, StorageError> {
            fs::create_dir_all(&self.path).map_err(|e| refused(&self.path, &e))?;
            loop {
                let name = free_name(job, |name| self.path.join(name).exists())
                    .ok_or_else(|| StorageError::NoName(self.path.display().to_string()))?;
                match AttemptWriter::create(&self.path.join(&name), header) {
                    Ok(writer) => return Ok(Box::new(File { name, writer })),
                    // Another program has taken it since.
                    Err(AttemptFileError::Exists(_)) => {}
                    Err(error) => return Err(error.into()),
                }
            }
        }

        fn go_on(&self, name: &str) -> Result<Box<dyn AttemptSink>, StorageError> {
            let name = whole_name(name).to_owned();
            let (writer, _) = AttemptWriter::resume(&self.path.join(&name))?;
            Ok(Box::new(File { name, writer }))
        }

        fn keep_round(&self, name: &str, text: &str) -> Result<(), StorageError> {
            fs::create_dir_all(&self.path).map_err(|e| refused(&self.path, &e))?;
            let path = self.path.join(name);
            disk::write_whole(&path, text.as_bytes()).map_err(|e| refused(&path, &e))
        }

        fn remove(&self, name: &str) -> Result<(), StorageError> {
            let path = self.path.join(name);
            fs::remove_file(&path).map_err(|e| refused(&path, &e))
        }

        fn file_exchange(&self) -> Option<&dyn FileExchange> {
            None
        }

        fn storage_error(&self) -> Option<StorageError> {
            self.storage_error
                .lock()
                .unwrap_or_else(PoisonError::into_inner)
                .clone()
        }

        fn complain(&self, storage_error: StorageError) {
            *self
                .storage_error
                .lock()
                .unwrap_or_else(PoisonError::into_inner) = Some(storage_error);
        }
    }

    struct File {
        name: String,
        writer: AttemptWriter,
    }

    impl AttemptSink for File {
        fn name(&self) -> String {
            format!("{}{PART}", self.name)
        }

        fn push(&mut self, at: Time, action: &Action) -> Result<(), StorageError> {
            Ok(self.writer.push(at, action)?)
        }

        fn mark(&mut self, _: Time) {}

        fn finish(self: Box<Self>, footer: &Footer) -> Result<String, StorageError> {
            self.writer.finish(footer)?;
            Ok(self.name)
        }
    }
}
