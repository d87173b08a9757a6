//! Where a film's attempt comes from, and what comes in of it while somebody works at it.

use super::Film;
use crate::attempts::{Attempts, StorageError, read_text};
use crate::port::RecordedAttempt;
use crate::rest::NextFrame;
use crate::state::{BenchRes, JobSourceRes, Screen, TextsRes, UiState};
use bevy::platform::time::Instant;
use bevy::prelude::*;
use detent_class_protocol::{AttemptId, WatchedAttempt};
use detent_training::record::PART;
#[cfg(not(target_family = "wasm"))]
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, PoisonError};
use std::time::Duration;

/// Between two looks for what is new of an attempt that is not finished.
const LOOK_EVERY: Duration = Duration::from_secs(2);
/// An answer from the server that takes longer is none.
const TIMEOUT: Duration = Duration::from_secs(10);

/// Where the attempt of a film comes from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FilmSource {
    /// It is kept with the learner's own, under the film's name.
    Kept,
    /// A file.
    #[cfg(not(target_family = "wasm"))]
    File(PathBuf),
    /// The class's server, which serves this page too.
    Class(AttemptId),
}

/// The whole text of an attempt in a file, finished meanwhile or not.
#[cfg(not(target_family = "wasm"))]
fn file_text(path: &Path) -> Result<Vec<u8>, StorageError> {
    use detent_content::disk;
    let name = path.to_string_lossy();
    let whole = name.strip_suffix(PART).map(PathBuf::from);
    disk::attempt_bytes(path)
        .or_else(|error| match &whole {
            Some(whole) => disk::attempt_bytes(whole).map_err(|_| error),
            None => Err(error),
        })
        .map_err(StorageError::File)
}

impl RecordedAttempt {
    /// A kept attempt.
    pub fn kept(attempts: &dyn Attempts, name: &str) -> RecordedAttempt {
        RecordedAttempt {
            name: name.to_owned(),
            text: read_text(attempts, name),
            scenario: None,
            source: FilmSource::Kept,
        }
    }

    /// A file.
    #[cfg(not(target_family = "wasm"))]
    pub fn file(path: &Path) -> RecordedAttempt {
        RecordedAttempt {
            name: path.display().to_string(),
            text: file_text(path),
            scenario: None,
            source: FilmSource::File(path.to_owned()),
        }
    }

    /// What the class's server says of this attempt.
    fn of_class(attempt: AttemptId, watched: WatchedAttempt) -> RecordedAttempt {
        let scenario = watched.scenario;
        RecordedAttempt {
            name: format!("{attempt}.attempt{PART}"),
            text: Ok(watched.text.into_bytes()),
            scenario: scenario.map(|scenario| (scenario.file, scenario.text)),
            source: FilmSource::Class(attempt),
        }
    }
}

/// An answer of the server, or why there is none.
type Answer = Result<WatchedAttempt, StorageError>;

/// What is asked of the class's server, and what is to be watched there.
#[derive(Resource, Default)]
pub struct Follower {
    /// An attempt that is to be opened once its text is there.
    wanted: Option<AttemptId>,
    /// Where the answer to a question that is on its way comes in.
    waiting: Option<Arc<Mutex<Option<Answer>>>>,
    /// When was looked last.
    looked: Option<Instant>,
}

impl Follower {
    /// Opens this attempt of the class's as soon as its server has told it.
    #[cfg(target_family = "wasm")]
    pub fn want(&mut self, attempt: AttemptId) {
        self.wanted = Some(attempt);
    }

    fn ask(&mut self, attempt: AttemptId) {
        let waiting = Arc::<Mutex<Option<Answer>>>::default();
        self.waiting = Some(Arc::clone(&waiting));
        // Of this page's own server alone, which knows the teacher by a cookie.
        let request = ehttp::Request::get(format!("/api/teacher/attempts/{attempt}/watch"));
        #[cfg(target_family = "wasm")]
        let request = request.with_credentials(ehttp::Credentials::SameOrigin);
        ehttp::fetch(request.with_timeout(Some(TIMEOUT)), move |response| {
            let answer = answer_of(attempt, response);
            *waiting.lock().unwrap_or_else(PoisonError::into_inner) = Some(answer);
            #[cfg(target_family = "wasm")]
            crate::web::wake();
        });
    }

    /// The answer that has come in since, if one has.
    fn take_answer(&mut self) -> Option<Answer> {
        let waiting = self.waiting.as_ref()?;
        let answer = waiting
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .take()?;
        self.waiting = None;
        Some(answer)
    }
}

fn answer_of(attempt: AttemptId, response: ehttp::Result<ehttp::Response>) -> Answer {
    let gone = || StorageError::Gone(attempt.to_string());
    let response = response.map_err(|_| gone())?;
    if !response.ok {
        return Err(gone());
    }
    serde_json::from_slice(&response.bytes).map_err(|_| gone())
}

/// The film that is watched and may get longer.
fn live_film(bench: &BenchRes) -> Option<&Film> {
    bench
        .film()
        .filter(|film| film.is_live() && !film.is_busy())
}

/// Looks for what is new, and opens what was wanted of the class's server.
fn follow(
    mut follower: ResMut<Follower>,
    mut bench: ResMut<BenchRes>,
    mut ui_state: ResMut<UiState>,
    (jobs, texts): (Res<JobSourceRes>, Res<TextsRes>),
    screen: Res<State<Screen>>,
    time: Res<Time<Real>>,
    mut next: ResMut<NextFrame>,
) {
    let answer = follower.take_answer();
    if let Some(attempt) = follower.wanted {
        match answer {
            Some(Ok(watched)) => {
                follower.wanted = None;
                ui_state.open(jobs.0.watch(RecordedAttempt::of_class(attempt, watched)));
            }
            Some(Err(error)) => {
                follower.wanted = None;
                let now = time.elapsed_secs();
                ui_state.message = Some((error.words(&texts.0), now));
            }
            None if follower.waiting.is_none() => follower.ask(attempt),
            None => {}
        }
        next.watch();
        return;
    }
    if let (Some(Ok(watched)), Some(film)) = (answer, bench.film_mut()) {
        // What cannot be read now may be read the next time.
        let _ = film.take_in(watched.text.as_bytes());
    }
    if *screen.get() != Screen::Bench {
        return;
    }
    let Some(film) = live_film(&bench) else {
        return;
    };
    next.wake_in(LOOK_EVERY);
    let due = follower
        .looked
        .is_none_or(|looked| looked.elapsed() >= LOOK_EVERY);
    if !due || follower.waiting.is_some() {
        return;
    }
    follower.looked = Some(Instant::now());
    let text = match film.source() {
        FilmSource::Kept => {
            let attempts = jobs.0.attempts();
            attempts.and_then(|attempts| read_text(attempts, film.name()).ok())
        }
        #[cfg(not(target_family = "wasm"))]
        FilmSource::File(path) => file_text(path).ok(),
        FilmSource::Class(attempt) => {
            let attempt = *attempt;
            follower.ask(attempt);
            None
        }
    };
    if let (Some(text), Some(film)) = (text, bench.film_mut()) {
        // A line that is half written is whole the next time.
        let _ = film.take_in(&text);
    }
}

/// Films that follow their attempts.
pub fn plugin(app: &mut App) {
    app.init_resource::<Follower>().add_systems(Update, follow);
}
