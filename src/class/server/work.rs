//! What goes on beside the questions: attempts are watched as they come in, and done again when they are finished; the
//! scenarios of sealed jobs are drawn.

use super::{Shared, lock};
use crate::definition::JobMachines;
use crate::drawing::{DrawingError, DrawnJob, JobDrawing};
use crate::store::KeptAttempt;
use crate::verify::{Submitted, verified};
use crate::watch::Watch;
use detent_class_protocol::{AttemptId, Digest, Verdict};
use detent_gradebook::AttemptResult;
use std::collections::{BTreeMap, BTreeSet, VecDeque};
use std::sync::{Arc, Condvar, Mutex, PoisonError};
use std::thread::{self, JoinHandle};
use std::time::{Duration, Instant};
use tokio::sync::Notify;

/// Longest that doing one attempt again may take.
const LONGEST_REPLAY: Duration = Duration::from_secs(120);
/// Most machines that are kept in memory for watching; beyond, the one that was looked at longest ago is begun anew.
const MOST_WATCHED: usize = 64;

#[derive(Default)]
struct Waiting {
    to_watch: BTreeSet<AttemptId>,
    to_verify: VecDeque<AttemptId>,
    /// Jobs, by their places in the class, and the seats that need them.
    to_draw: BTreeSet<(usize, u32)>,
    is_over: bool,
}

/// What is to be done.
#[derive(Default)]
pub(super) struct Queues {
    waiting: Mutex<Waiting>,
    more: Condvar,
    over: Notify,
}

impl Queues {
    fn put(&self, put: impl FnOnce(&mut Waiting)) {
        put(&mut lock(&self.waiting));
        self.more.notify_all();
    }

    /// Something new of this attempt came in.
    pub fn watch(&self, attempt: AttemptId) {
        self.put(|waiting| {
            waiting.to_watch.insert(attempt);
        });
    }

    /// The end of this attempt came in.
    pub fn verify(&self, attempt: AttemptId) {
        self.put(|waiting| waiting.to_verify.push_back(attempt));
    }

    /// These seats need a scenario for each of the jobs in these places.
    pub fn draw(&self, jobs: std::ops::Range<usize>, seats: impl Iterator<Item = u32> + Clone) {
        self.put(|waiting| {
            for job in jobs {
                waiting
                    .to_draw
                    .extend(seats.clone().map(|seat| (job, seat)));
            }
        });
    }

    fn is_over(&self) -> bool {
        lock(&self.waiting).is_over
    }

    /// Nothing more is to be done.
    pub fn end(&self) {
        self.put(|waiting| waiting.is_over = true);
        self.over.notify_waiters();
    }

    /// Waits until nothing more is to be done.
    pub async fn ended(&self) {
        let notified = self.over.notified();
        if lock(&self.waiting).is_over {
            return;
        }
        notified.await;
    }

    /// Waits for the next thing that `take` takes; none once it is over.
    fn next<T>(&self, take: impl Fn(&mut Waiting) -> Option<T>) -> Option<T> {
        let mut waiting = lock(&self.waiting);
        loop {
            if waiting.is_over {
                return None;
            }
            if let Some(next) = take(&mut waiting) {
                return Some(next);
            }
            waiting = self
                .more
                .wait(waiting)
                .unwrap_or_else(PoisonError::into_inner);
        }
    }
}

/// Begins the threads: one watches, one draws where there is something to draw, the others do again.
pub(super) fn begin(shared: &Arc<Shared>, verifiers: usize) -> Vec<JoinHandle<()>> {
    let watcher = Arc::clone(shared);
    let mut threads = vec![thread::spawn(move || watch(&watcher))];
    if shared.definition.machines.are_sealed() {
        let shared = Arc::clone(shared);
        threads.push(thread::spawn(move || draw(&shared)));
    }
    threads.extend((0..verifiers).map(|_| {
        let shared = Arc::clone(shared);
        thread::spawn(move || verify(&shared))
    }));
    threads
}

/// An attempt as far as it has come in.
struct Incoming {
    text: String,
    program: String,
    content: Digest,
    kept: KeptAttempt,
    /// The seat's own scenarios, where the class's are sealed.
    drawn: Vec<DrawnJob>,
}

/// Reads it; none where it is not there, or cannot be read now.
fn read(shared: &Shared, attempt: AttemptId) -> Option<Incoming> {
    let is_sealed = shared.definition.machines.are_sealed();
    let read = shared.read_here(|store| {
        let (Some((text, program, content)), Some(kept)) =
            (store.text(attempt)?, store.attempt(attempt)?)
        else {
            return Ok(None);
        };
        let drawn = match is_sealed {
            true => store.drawn_of(kept.seat)?,
            false => Vec::new(),
        };
        Ok(Some(Incoming {
            text,
            program,
            content,
            kept,
            drawn,
        }))
    });
    read.ok().flatten()
}

fn watch(shared: &Shared) {
    let mut watches: BTreeMap<AttemptId, (u64, Watch)> = BTreeMap::new();
    let mut looks = 0;
    while let Some(attempt) = shared.work.next(|waiting| waiting.to_watch.pop_first()) {
        // What cannot be read now is looked at again when more of it comes.
        let Some(Incoming {
            text, kept, drawn, ..
        }) = read(shared, attempt)
        else {
            continue;
        };
        looks += 1;
        let (looked, watch) = watches.entry(attempt).or_default();
        *looked = looks;
        watch.follow(&shared.verifier(), &drawn, &text);
        shared.change(|live| live.watched(kept.seat, attempt, watch.watched()));
        if kept.status.closed {
            watches.remove(&attempt);
        } else if watches.len() > MOST_WATCHED {
            let oldest = watches
                .iter()
                .min_by_key(|(_, (looked, _))| *looked)
                .map(|(attempt, _)| *attempt);
            oldest.map(|oldest| watches.remove(&oldest));
        }
    }
}

fn verify(shared: &Shared) {
    while let Some(attempt) = shared.work.next(|waiting| waiting.to_verify.pop_front()) {
        let Some(incoming) = read(shared, attempt) else {
            continue;
        };
        let submitted = Submitted {
            seat: incoming.kept.seat,
            program: &incoming.program,
            content: incoming.content,
            text: &incoming.text,
            drawn: &incoming.drawn,
        };
        let began = Instant::now();
        let found = shared
            .verifier()
            .verify_in_full(&submitted, || began.elapsed() < LONGEST_REPLAY);
        keep(shared, (submitted.seat, attempt), found);
    }
}

/// Keeps what doing an attempt again has shown. Where that cannot be, it is found again when the class is started the next
/// time.
fn keep(shared: &Shared, (seat, attempt): (u32, AttemptId), found: Result<AttemptResult, Verdict>) {
    let verdict = found.as_ref().map_or_else(Clone::clone, verified);
    let (now, content, kept) = (shared.now(), shared.content, verdict.clone());
    let written = shared.writer.write_here(move |store| {
        let made_with = (env!("CARGO_PKG_VERSION"), content);
        if let Ok(result) = &found {
            store.keep_result(attempt, made_with, result, now)?;
        }
        store.judge(attempt, made_with, &kept, now)
    });
    if written.is_ok() {
        shared.change(|live| live.judged(seat, attempt, verdict));
    }
}

/// Draws what is asked for, job by job.
fn draw(shared: &Shared) {
    let definition = &shared.definition;
    let Ok(drafts) = shared.read_here(|store| store.drawn_drafts()) else {
        return;
    };
    let taken = drafts
        .iter()
        .filter_map(|(job, draft)| Some((definition.place_of(job)?, *draft)));
    let mut drawing = JobDrawing::new(&shared.library, definition, taken);
    while let Some((place, seat)) = shared.work.next(|waiting| waiting.to_draw.pop_first()) {
        // Whoever was erased may have left the number of the seat to somebody else.
        match shared.read_here(|store| store.drawn_of(seat)) {
            Ok(drawn)
                if drawn
                    .iter()
                    .any(|drawn| definition.place_of(&drawn.job) == Some(place)) =>
            {
                continue;
            }
            Ok(_) => {}
            // It is asked for again.
            Err(_) => continue,
        }
        let made = match drawing.draw(place, seat, || !shared.work.is_over()) {
            Ok(Some(made)) => made,
            Ok(None) => continue,
            Err(DrawingError::BrokenOff) => return,
            Err(DrawingError::Content(error)) => {
                // Every scenario was read when the class began.
                shared.change(|live| live.set_trouble(Some(error.to_string())));
                continue;
            }
        };
        if definition.machines == JobMachines::SealedVariants && made.draft.is_none() {
            let job = definition.jobs[place].clone();
            shared.change(|live| live.set_undrawn(job));
        }
        let now = shared.now();
        let written = (shared.writer).write_here(move |store| store.keep_drawn(seat, &made, now));
        // It is asked for again, and drawn again.
        if let Err(error) = written {
            shared.change(|live| live.set_trouble(Some(error.to_string())));
        }
    }
}
