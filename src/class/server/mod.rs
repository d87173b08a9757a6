//! The class over HTTP: one origin for the page, the reports and the board.

#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    reason = "a server has threads, what they share, and how long they may take"
)]

mod answer;
mod bench_page;
mod events;
mod gradebook;
mod learner;
mod limits;
mod listen;
mod live;
mod teacher;
mod work;

pub use bench_page::BenchPage;
pub use listen::{certificate, listen};

use super::board::BoardView;
use super::definition::{ClassDefinition, TeacherStanding};
use super::moment::Moment;
use super::store::{Database, Disk, Eraser, KeptClass, Scope, Store, StoreError, Writer};
use super::verify::Verifier;
use crate::pages::{PageTexts, page_language};
use axum::Router;
use axum::extract::DefaultBodyLimit;
use axum::http::HeaderMap;
use axum::http::header::ACCEPT_LANGUAGE;
use axum::routing::{get, post};
use detent_class_protocol::{
    Digest, JoinCode, LONGEST_SEGMENT_BYTES, MOST_ATTEMPT_BYTES, Standing,
};
use detent_content::{ContentLibrary, Language};
use limits::Bucket;
use live::Live;
use rusqlite::Connection;
use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::thread::JoinHandle;
use std::time::Duration;
use tokio::sync::watch;
use tower_http::timeout::TimeoutLayer;

/// Longest that one question may take, its body with it.
const LONGEST_REQUEST: Duration = Duration::from_secs(20);
/// Largest segment as JSON: each of its characters may have to be escaped.
const LARGEST_SEGMENT_JSON: usize = 2 * LONGEST_SEGMENT_BYTES + 4_096;
/// Largest list of names, and other things that a teacher sends.
const LARGEST_TEXT: usize = 256 << 10;
/// Wrong codes in a row that the whole class may type, and how fast they are forgiven.
const WRONG_CODES: (f64, f64) = (30.0, 0.5);
/// Questions in a row from one seat, and how fast they are forgiven.
const QUESTIONS: (f64, f64) = (120.0, 20.0);

/// Languages of the pages.
const LANGUAGES: usize = Language::ALL.len();

/// What a server is made of.
pub struct ServerParts {
    /// Where everything is kept.
    pub database: Database,
    /// Whose rows those are.
    pub scope: Scope,
    /// The class.
    pub class: KeptClass,
    /// What attempts are done again with.
    pub library: Arc<ContentLibrary>,
    /// The packed page for browsers, if there is one.
    pub page: Option<BenchPage>,
    /// The words of the pages in each language.
    pub page_texts: [PageTexts; LANGUAGES],
    /// The address to join at.
    pub address: String,
    /// The clock.
    pub clock: fn() -> Moment,
    /// Threads that do attempts again.
    pub verifiers: usize,
}

/// A class that is being served.
#[derive(Clone)]
pub struct ClassServer {
    shared: Arc<Shared>,
}

struct Shared {
    writer: Writer,
    readers: Mutex<Vec<Connection>>,
    database: DatabaseReader,
    eraser: Eraser,
    scope: Scope,
    definition: ClassDefinition,
    code: JoinCode,
    library: Arc<ContentLibrary>,
    content: Digest,
    page: Option<BenchPage>,
    page_texts: [PageTexts; LANGUAGES],
    address: String,
    clock: fn() -> Moment,
    standing: Mutex<Option<TeacherStanding>>,
    live: Mutex<Live>,
    /// Told of each change.
    changes: watch::Sender<u64>,
    /// Tells this run of the server from the next one.
    run: u64,
    wrong_codes: Mutex<Bucket>,
    questions: Mutex<BTreeMap<u32, Bucket>>,
    work: work::Queues,
}

/// Opens further connections that read.
type DatabaseReader = Box<dyn Fn() -> Result<Connection, StoreError> + Send + Sync>;

/// The threads of a server, which end when it does.
pub struct ServerThreads {
    writing: JoinHandle<Disk>,
    working: Vec<JoinHandle<()>>,
}

impl ServerThreads {
    /// Waits until everything that was taken is kept. The server must have been dropped.
    pub fn join(self) {
        for thread in self.working {
            // What a thread panicked with was told when it did.
            let _ = thread.join();
        }
        let _ = self.writing.join();
    }
}

fn lock<T>(mutex: &Mutex<T>) -> MutexGuard<'_, T> {
    mutex.lock().unwrap_or_else(PoisonError::into_inner)
}

impl ClassServer {
    /// Begins to serve: everything that is kept is read, and what is not done again yet is.
    ///
    /// # Errors
    /// What the database says.
    pub fn begin(parts: ServerParts) -> Result<(ClassServer, ServerThreads), StoreError> {
        let content = Digest::of_bytes(parts.library.digest());
        let now = (parts.clock)();
        let (live, standing, to_verify, to_watch) = {
            let store = parts.database.store(&parts.scope);
            let attempts = store.attempts()?;
            let to_watch: Vec<_> = attempts.iter().map(|kept| kept.status.attempt).collect();
            let to_verify = store.to_verify(env!("CARGO_PKG_VERSION"), content)?;
            (
                Live::of(store.seats()?, attempts),
                store.standing()?,
                to_verify,
                to_watch,
            )
        };
        let database = parts.database.readers();
        let eraser = parts.database.eraser();
        let (writer, writing) = Writer::begin(Disk::new(parts.database, parts.scope.clone()));
        let (changes, _) = watch::channel(live.changes());
        let shared = Arc::new(Shared {
            writer,
            readers: Mutex::default(),
            database: Box::new(database),
            eraser,
            scope: parts.scope,
            definition: parts.class.definition,
            code: parts.class.code,
            library: parts.library,
            content,
            page: parts.page,
            page_texts: parts.page_texts,
            address: parts.address,
            clock: parts.clock,
            standing: Mutex::new(standing),
            live: Mutex::new(live),
            changes,
            run: now.0,
            wrong_codes: Mutex::new(Bucket::full(WRONG_CODES.0, WRONG_CODES.1, now)),
            questions: Mutex::default(),
            work: work::Queues::default(),
        });
        to_watch
            .into_iter()
            .for_each(|attempt| shared.work.watch(attempt));
        to_verify
            .into_iter()
            .for_each(|attempt| shared.work.verify(attempt));
        // Who is on the list need not wait for a machine.
        shared.draw_for(lock(&shared.live).seat_numbers());
        let working = work::begin(&shared, parts.verifiers.max(1));
        Ok((ClassServer { shared }, ServerThreads { writing, working }))
    }

    /// No more is taken; its threads end when they have done what they are at.
    pub fn end(self) {
        self.shared.work.end();
    }

    /// A whole copy of the database beside it, while it is in use.
    ///
    /// # Errors
    /// What the system says.
    pub fn back_up(&self, to: &std::path::Path) -> Result<(), StoreError> {
        super::store::back_up(&(self.shared.database)()?, to)
    }

    /// Every question that is answered.
    pub fn router(&self) -> Router {
        let segments = Router::new()
            .route("/api/segments", post(learner::segment))
            .layer(DefaultBodyLimit::max(LARGEST_SEGMENT_JSON));
        let files = Router::new()
            .route("/api/teacher/seats/{seat}/hand-in", post(teacher::hand_in))
            .layer(DefaultBodyLimit::max(MOST_ATTEMPT_BYTES + 1));
        let asked = Router::new()
            .route("/api/join", post(learner::join))
            .route("/api/seat", get(learner::seat))
            .route("/api/attempts/{attempt}", get(learner::attempt))
            .route("/api/jobs/{job}", get(learner::sealed_job))
            .route("/api/teacher/session", post(teacher::session))
            .route("/api/teacher/standing", post(teacher::standing))
            .route("/api/teacher/notices", post(teacher::notice))
            .route("/api/teacher/names", post(teacher::names))
            .route("/api/teacher/seats/{seat}/word", post(teacher::word))
            .route("/api/teacher/attempts/{attempt}", get(teacher::text))
            .route("/api/teacher/attempts/{attempt}/watch", get(teacher::watch))
            .merge(gradebook::routes())
            .layer(DefaultBodyLimit::max(LARGEST_TEXT))
            .merge(segments)
            .merge(files)
            .route("/teacher", get(teacher::sign_in))
            .route("/teacher/board", get(teacher::board))
            .route("/teacher/projector", get(teacher::projector))
            .route("/qr.svg", get(teacher::qr))
            .route("/class/{*file}", get(teacher::asset))
            .route("/", get(learner::page))
            .route("/{file}", get(learner::page_file))
            .layer(TimeoutLayer::with_status_code(
                axum::http::StatusCode::REQUEST_TIMEOUT,
                LONGEST_REQUEST,
            ));
        asked
            .route("/api/teacher/events", get(events::events))
            .layer(axum::middleware::map_response(answer::with_headers))
            .with_state(Arc::clone(&self.shared))
    }
}

impl Shared {
    fn now(&self) -> Moment {
        (self.clock)()
    }

    fn verifier(&self) -> Verifier<'_> {
        Verifier {
            program: env!("CARGO_PKG_VERSION"),
            library: &self.library,
            content: self.content,
            definition: &self.definition,
        }
    }

    /// Sealed jobs of these seats are drawn, if the class has such.
    fn draw_for(&self, seats: impl Iterator<Item = u32> + Clone) {
        if self.definition.machines.are_sealed() {
            self.work.draw(0..self.definition.jobs.len(), seats);
        }
    }

    fn standing(&self) -> Standing {
        self.definition.standing(*lock(&self.standing), self.now())
    }

    /// Changes what is live and tells of it.
    fn change(&self, change: impl FnOnce(&mut Live)) {
        let changes = {
            let mut live = lock(&self.live);
            change(&mut live);
            live.changes()
        };
        self.changes
            .send_if_modified(|known| std::mem::replace(known, changes) != changes);
    }

    /// Reads on a thread that may wait for the disk.
    async fn read<T: Send + 'static>(
        self: &Arc<Shared>,
        work: impl FnOnce(&Store<'_>) -> Result<T, StoreError> + Send + 'static,
    ) -> Result<T, StoreError> {
        let shared = Arc::clone(self);
        let done = tokio::task::spawn_blocking(move || shared.read_here(work));
        done.await.map_err(|_| StoreError::Ended)?
    }

    /// Reads on this thread.
    fn read_here<T>(
        &self,
        work: impl FnOnce(&Store<'_>) -> Result<T, StoreError>,
    ) -> Result<T, StoreError> {
        let reader = lock(&self.readers).pop();
        let reader = reader.map_or_else(|| (self.database)(), Ok)?;
        let done = work(&Store::new(&reader, &self.scope));
        lock(&self.readers).push(reader);
        done
    }

    /// Writes; what goes wrong with the disk shows on the board until it no longer does.
    async fn write<T: Send + 'static>(
        &self,
        work: impl FnOnce(&Store<'_>) -> Result<T, StoreError> + Send + 'static,
    ) -> Result<T, StoreError> {
        let done = self.writer.write(work).await;
        let trouble = done.as_ref().err().map(ToString::to_string);
        self.change(|live| live.set_trouble(trouble));
        done
    }

    /// The words of the pages in the language that this query asks for, or else the browser.
    fn page_texts(&self, query: Option<&str>, headers: &HeaderMap) -> &PageTexts {
        let accepts = headers
            .get(ACCEPT_LANGUAGE)
            .and_then(|value| value.to_str().ok());
        let language = page_language(query.unwrap_or_default(), accepts.unwrap_or_default());
        let [first, ..] = &self.page_texts;
        let mut texts = self.page_texts.iter();
        texts
            .find(|texts| texts.language() == language)
            .unwrap_or(first)
    }

    fn board(&self) -> (BoardView, u64) {
        let now = self.now();
        let standing = self.standing();
        let live = lock(&self.live);
        let board = BoardView {
            title: self.definition.title.clone(),
            kind: self.definition.kind,
            standing,
            code: self.code,
            address: self.address.clone(),
            jobs: self.definition.jobs.clone(),
            drills: (self.definition.drills.iter())
                .map(|drill| drill.skill.name().to_owned())
                .collect(),
            seats: live.seats_since(0, &self.definition, now),
            undrawn: live.undrawn().map(str::to_owned),
            has_bench: self.page.is_some(),
            trouble: live.trouble().map(str::to_owned),
        };
        (board, live.changes())
    }
}
