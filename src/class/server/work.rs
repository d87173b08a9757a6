//! What goes on beside the questions: attempts are watched as they come in, and done again when they are finished.

use super::{Shared, lock};
use crate::verify::{Submitted, verified};
use crate::watch::Watch;
use detent_class_protocol::{AttemptId, Verdict};
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

/// Begins the threads: one watches, the others do again.
pub(super) fn begin(shared: &Arc<Shared>, verifiers: usize) -> Vec<JoinHandle<()>> {
    let watcher = Arc::clone(shared);
    let mut threads = vec![thread::spawn(move || watch(&watcher))];
    threads.extend((0..verifiers).map(|_| {
        let shared = Arc::clone(shared);
        thread::spawn(move || verify(&shared))
    }));
    threads
}

fn watch(shared: &Shared) {
    let mut watches: BTreeMap<AttemptId, (u64, Watch)> = BTreeMap::new();
    let mut looks = 0;
    while let Some(attempt) = shared.work.next(|waiting| waiting.to_watch.pop_first()) {
        let text = shared.read_here(|store| Ok((store.text(attempt)?, store.attempt(attempt)?)));
        // What cannot be read now is looked at again when more of it comes.
        let Ok((Some((text, ..)), Some(kept))) = text else {
            continue;
        };
        looks += 1;
        let (looked, watch) = watches.entry(attempt).or_default();
        *looked = looks;
        watch.follow(&shared.verifier(), &text);
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
        let read = shared.read_here(|store| Ok((store.text(attempt)?, store.attempt(attempt)?)));
        let Ok((Some((text, program, content)), Some(kept))) = read else {
            continue;
        };
        let submitted = Submitted {
            seat: kept.seat,
            program: &program,
            content,
            text: &text,
        };
        let began = Instant::now();
        let found = shared
            .verifier()
            .verify_in_full(&submitted, || began.elapsed() < LONGEST_REPLAY);
        keep(shared, (kept.seat, attempt), found);
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
