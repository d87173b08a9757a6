//! What is kept of a class here, by the address of its server: the seat, what was last heard, and which attempts are of
//! the class.

use super::address::ServerAddress;
use crate::attempts::StorageError;
use detent_class_protocol::{
    AttemptId, ClassId, ClassView, Digest, SealedScenario, SealedText, SecretToken,
};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// What is kept of the class at one address.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct KeptClass {
    /// What opens the seat; none before it is taken and after it is left.
    #[serde(default)]
    pub token: Option<SecretToken>,
    /// What the server said last.
    #[serde(default)]
    pub view: Option<ClassView>,
    /// The number of the last notice that was put away.
    #[serde(default)]
    pub read_notice: u32,
    /// Attempts that were begun from the class's list, by the names of their files when they are finished.
    #[serde(default)]
    pub attempts: BTreeMap<String, KeptAttempt>,
    /// Sealed jobs, closed as they came.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub sealed_jobs: Vec<KeptSealedJob>,
}

/// A sealed job as it was handed out.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct KeptSealedJob {
    /// Whose it is.
    pub seat: Seat,
    /// The name that it has in the class.
    pub job: String,
    /// Its scenario.
    pub sealed: SealedText,
}

/// Who sits in which class. A server may have another class tomorrow.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Seat {
    /// Which class; none in what was kept before classes were told apart.
    #[serde(default)]
    pub id: Option<ClassId>,
    /// What the class is called.
    pub class: String,
    /// Who sits there.
    pub name: String,
}

impl Seat {
    /// The seat that the server speaks of.
    pub fn of(view: &ClassView) -> Seat {
        Seat {
            id: view.class,
            class: view.title.clone(),
            name: view.name.clone(),
        }
    }
}

/// An attempt that was begun from the class's list.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct KeptAttempt {
    /// What the server calls it.
    pub attempt: AttemptId,
    /// Whose it is.
    pub seat: Seat,
    /// The job, by its scenario's file name without folder and ending; empty for a round of a drill.
    pub job: String,
    /// The drill, by the fixed name of its skill, where it is a round of one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub drill: Option<String>,
    /// The last question of the round is answered. Of an attempt its name says that.
    #[serde(default)]
    pub is_finished: bool,
    /// Version of the program that it was begun with.
    pub program: String,
    /// Digest of the content that it was begun with.
    pub content: Digest,
    /// What it was worth is not shown before the class is closed.
    pub sealed: bool,
    /// All of it is there, to its end: there is nothing to ask or to send any more.
    pub is_there: bool,
}

impl KeptClass {
    /// The seat that is taken, as far as the server has told.
    pub fn seat(&self) -> Option<Seat> {
        self.token?;
        self.view.as_ref().map(Seat::of)
    }

    /// Whether the seat that is taken is this one.
    pub fn sits_in(&self, seat: &Seat) -> bool {
        let view = self.view.as_ref().filter(|_| self.token.is_some());
        view.is_some_and(|view| {
            (&seat.id, &seat.class, &seat.name) == (&view.class, &view.title, &view.name)
        })
    }

    /// Takes in what the server says of the class now. What is sealed is opened once its class is over.
    pub fn take_in(&mut self, view: ClassView) {
        let sealed = view.kind.keeps_results_back(view.standing);
        for KeptAttempt {
            seat, sealed: is, ..
        } in self.attempts.values_mut()
        {
            // What was kept before classes were told apart is of the class that has its title.
            if seat.id.is_none() && seat.class == view.title {
                seat.id = view.class;
            }
            // Where another class is, this one is over.
            *is &= sealed && seat.id == view.class;
        }
        self.view = Some(view);
    }

    /// The sealed jobs that there are here, those of this seat first, with what is in them; one that was damaged is left out.
    pub fn sealed_scenarios(&self) -> Vec<(&str, SealedScenario)> {
        let is_ours = |kept: &&KeptSealedJob| self.sits_in(&kept.seat);
        let ours = self.sealed_jobs.iter().filter(is_ours);
        let others = self.sealed_jobs.iter().filter(|kept| !is_ours(kept));
        let all = ours.chain(others);
        let opened = all.filter_map(|kept| {
            let opened = SealedScenario::open(&kept.sealed, &kept.job);
            Some((kept.job.as_str(), opened.ok()?))
        });
        opened.collect()
    }

    /// Whether the scenario of this sealed job of this class is here.
    pub fn has_scenario(&self, job: &str) -> bool {
        let mut kept = self.sealed_jobs.iter();
        kept.any(|kept| kept.job == job && self.sits_in(&kept.seat))
    }

    /// The next job of this class whose scenario is not here yet.
    pub fn missing_job(&self) -> Option<&str> {
        let view = self.view.as_ref().filter(|_| self.token.is_some())?;
        let mut sealed = view.jobs.iter().filter(|job| job.is_sealed);
        let missing = sealed.find(|job| !self.has_scenario(&job.job));
        missing.map(|job| job.job.as_str())
    }

    /// Whether what a job of this class is worth is kept back now.
    pub fn is_sealed(&self) -> bool {
        let view = self.view.as_ref();
        view.is_some_and(|view| view.kind.keeps_results_back(view.standing))
    }
}

/// Keeps that, by the address of the server.
pub trait ClassStore: Send + Sync {
    /// What is kept; nothing where it cannot be read.
    fn read(&self, address: &ServerAddress) -> Option<KeptClass>;
    /// Keep this from now on.
    ///
    /// # Errors
    /// Why it is not kept.
    fn keep(&self, address: &ServerAddress, kept: &KeptClass) -> Result<(), StorageError>;
}

#[cfg(not(target_family = "wasm"))]
pub use folder::ClassFolder;

#[cfg(not(target_family = "wasm"))]
mod folder {
    use super::{ClassStore, KeptClass, ServerAddress, StorageError};
    use detent_content::disk;
    use std::path::{Path, PathBuf};
    use std::{fs, io};

    /// Seats as files in a folder that only this user can look into.
    pub struct ClassFolder {
        path: PathBuf,
    }

    impl ClassFolder {
        /// The one in the folder of the attempts; made when the first seat is taken.
        pub fn beside(attempts: &Path) -> ClassFolder {
            ClassFolder {
                path: attempts.join("classes"),
            }
        }

        fn file(&self, address: &ServerAddress) -> PathBuf {
            let text = address.to_string();
            let sound = |c: char| {
                if c.is_ascii_alphanumeric() || c == '.' || c == '-' {
                    c
                } else {
                    '_'
                }
            };
            self.path.join(format!(
                "{}.json",
                text.chars().map(sound).collect::<String>()
            ))
        }

        fn write(&self, address: &ServerAddress, bytes: &[u8]) -> io::Result<()> {
            if let Some(above) = self.path.parent() {
                fs::create_dir_all(above)?;
            }
            make_private_folder(&self.path)?;
            disk::write_whole(&self.file(address), bytes)
        }
    }

    /// Whoever has what is kept there has the seat.
    #[cfg(unix)]
    fn make_private_folder(path: &Path) -> io::Result<()> {
        use std::os::unix::fs::{DirBuilderExt, PermissionsExt};
        const OWNER_ONLY: u32 = 0o700;
        match fs::DirBuilder::new().mode(OWNER_ONLY).create(path) {
            Err(error) if error.kind() == io::ErrorKind::AlreadyExists => {
                fs::set_permissions(path, fs::Permissions::from_mode(OWNER_ONLY))
            }
            done => done,
        }
    }

    /// The data folder of a user is the user's alone.
    #[cfg(not(unix))]
    fn make_private_folder(path: &Path) -> io::Result<()> {
        fs::create_dir_all(path)
    }

    impl ClassStore for ClassFolder {
        fn read(&self, address: &ServerAddress) -> Option<KeptClass> {
            let bytes = fs::read(self.file(address)).ok()?;
            serde_json::from_slice(&bytes).ok()
        }

        fn keep(&self, address: &ServerAddress, kept: &KeptClass) -> Result<(), StorageError> {
            let written = serde_json::to_vec_pretty(kept).map_err(io::Error::from);
            let written = written.and_then(|bytes| self.write(address, &bytes));
            written.map_err(|error| StorageError::System {
                file: self.file(address).display().to_string(),
                reason: (&error).into(),
            })
        }
    }
}

#[cfg(all(test, unix))]
mod tests {
    use super::*;
    use crate::class::shown::demo_view;
    use detent_class_protocol::{ClassKind, Standing};
    use std::os::unix::fs::PermissionsExt;

    #[test]
    fn a_seat_is_kept_by_its_server_and_nobody_else_can_look() {
        let folder = tempfile::tempdir().expect("a folder");
        let attempts = folder.path().join("attempts");
        let store = ClassFolder::beside(&attempts);
        let address: ServerAddress = "host:8080".parse().expect("an address");
        assert_eq!(store.read(&address), None);
        let kept = KeptClass {
            token: Some(SecretToken::of_bytes([7; 32])),
            view: Some(demo_view(ClassKind::Practice)),
            ..KeptClass::default()
        };
        store.keep(&address, &kept).expect("there is room");
        assert_eq!(store.read(&address), Some(kept));
        assert_eq!(store.read(&"host:8081".parse().expect("an address")), None);
        let private = attempts.join("classes");
        let mode = private
            .metadata()
            .expect("it is there")
            .permissions()
            .mode();
        assert_eq!(mode & 0o077, 0, "{mode:o}");
    }

    #[test]
    fn what_is_sealed_is_opened_when_its_class_is_over() {
        let examination = demo_view(ClassKind::Examination);
        let attempt = KeptAttempt {
            attempt: AttemptId::of_bytes([1; 16]),
            seat: Seat::of(&examination),
            job: "drain-code".to_owned(),
            drill: None,
            is_finished: false,
            program: "0.1.0".to_owned(),
            content: Digest::NONE,
            sealed: true,
            is_there: true,
        };
        let closed = ClassView {
            standing: Standing::Closed,
            ..examination.clone()
        };
        let paused = ClassView {
            standing: Standing::Paused,
            ..examination.clone()
        };
        // Of the same title.
        let another = ClassView {
            class: Some(ClassId::of_bytes([9; 16])),
            ..examination.clone()
        };
        for (view, sealed) in [
            (examination, true),
            (paused, true),
            (closed, false),
            (another, false),
        ] {
            let mut kept = KeptClass::default();
            kept.attempts
                .insert("drain-code-1.attempt".to_owned(), attempt.clone());
            kept.take_in(view.clone());
            let now = &kept.attempts["drain-code-1.attempt"];
            assert_eq!(now.sealed, sealed, "{view:?}");
        }
    }

    /// What a program wrote that did not tell classes of one title apart.
    #[test]
    fn a_seat_that_was_kept_by_its_title_goes_on_in_the_class_of_that_title() {
        let view = demo_view(ClassKind::Examination);
        let attempt = KeptAttempt {
            attempt: AttemptId::of_bytes([1; 16]),
            seat: Seat::of(&view),
            job: "drain-code".to_owned(),
            drill: None,
            is_finished: false,
            program: "0.1.0".to_owned(),
            content: Digest::NONE,
            sealed: true,
            is_there: false,
        };
        let mut kept = KeptClass {
            token: Some(SecretToken::of_bytes([7; 32])),
            view: Some(view.clone()),
            ..KeptClass::default()
        };
        let of_another = Seat {
            class: "Wednesday".to_owned(),
            ..attempt.seat.clone()
        };
        kept.attempts
            .insert("1.attempt".to_owned(), attempt.clone());
        kept.attempts.insert(
            "2.attempt".to_owned(),
            KeptAttempt {
                seat: of_another,
                ..attempt
            },
        );
        let mut written = serde_json::to_value(&kept).expect("JSON");
        let object = |value: &mut serde_json::Value, key: &str| {
            let object = value.as_object_mut().expect("an object");
            assert!(object.remove(key).is_some(), "{key}");
        };
        object(&mut written["view"], "class");
        for name in ["1.attempt", "2.attempt"] {
            object(&mut written["attempts"][name]["seat"], "id");
        }
        let mut read: KeptClass = serde_json::from_value(written).expect("it is read");
        let before = read.seat().expect("a seat");
        assert_eq!(before.id, None);
        assert_eq!(read.attempts["1.attempt"].seat, before);
        read.take_in(view);
        assert_eq!(
            read.attempts["1.attempt"].seat,
            read.seat().expect("a seat")
        );
        assert!(read.attempts["1.attempt"].sealed);
        assert_eq!(read.attempts["2.attempt"].seat.id, None);
        assert!(!read.attempts["2.attempt"].sealed);
    }
}
