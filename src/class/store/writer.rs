//! The one thread that writes: what comes in at the same time is committed together, and each is answered after that.

#![allow(clippy::disallowed_methods, reason = "a thread of its own writes")]

use super::{Database, Scope, Store, StoreError};
use rusqlite::Connection;
use std::cell::Cell;
use std::sync::mpsc::{Receiver, SyncSender, TrySendError, sync_channel};
use std::thread::JoinHandle;
use std::time::Duration;
use tokio::sync::oneshot;

/// Most writes in one commit.
const MOST_AT_ONCE: usize = 256;
/// Most writes that wait.
const MOST_WAITING: usize = 4_096;

/// Between two looks whether there is room again.
const REST: Duration = Duration::from_millis(5);

/// Answers a write, once it is known whether the commit went well.
type Reply = Box<dyn FnOnce(Result<(), &StoreError>) + Send>;
/// A write that waits for its turn.
type Task = Box<dyn FnOnce(&Disk) -> Reply + Send>;

/// The database as the writing thread has it. A test may stand something in its way.
pub struct Disk {
    database: Database,
    scope: Scope,
    ending: Cell<Option<Ending>>,
}

/// When a program ends that a test ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ending {
    /// What was written is not committed.
    BeforeCommit,
    /// It is, and nobody was told.
    AfterCommit,
}

impl Disk {
    /// The rows of this class in this database.
    pub fn new(database: Database, scope: Scope) -> Disk {
        Disk {
            database,
            scope,
            ending: Cell::new(None),
        }
    }

    /// Does these works in one transaction, this thread waiting: what came of each once that is on the disk.
    pub fn write_together<T: Send + 'static>(
        &self,
        works: Vec<impl FnOnce(&Store<'_>) -> Result<T, StoreError> + Send + 'static>,
    ) -> Vec<Result<T, StoreError>> {
        let (tasks, answers): (Vec<Task>, Vec<_>) = works.into_iter().map(to_do).unzip();
        self.write(tasks);
        let answers = answers.into_iter();
        answers
            .map(|answer| answer.blocking_recv().map_err(|_| StoreError::Ended)?)
            .collect()
    }

    /// The program ends at the next commit, as a test wants it: nobody is answered.
    pub fn end_at_next_commit(&self, ending: Ending) {
        self.ending.set(Some(ending));
    }

    /// The disk has room for so many pages of the database and no more; without a number for as many as there are bytes.
    ///
    /// # Errors
    /// What the database says.
    pub fn limit_pages(&self, pages: Option<u32>) -> Result<(), StoreError> {
        let most = pages.unwrap_or(u32::MAX - 1);
        self.connection()
            .pragma_update(None, "max_page_count", most)?;
        Ok(())
    }

    /// Pages that the database has.
    ///
    /// # Errors
    /// What the database says.
    pub fn pages(&self) -> Result<u32, StoreError> {
        Ok(self
            .connection()
            .pragma_query_value(None, "page_count", |row| row.get(0))?)
    }

    /// The rows of the class, to be read.
    pub fn store(&self) -> Store<'_> {
        Store::new(self.connection(), &self.scope)
    }

    fn connection(&self) -> &Connection {
        &self.database.connection
    }

    /// Does these writes in one transaction and answers each. One that goes wrong takes nothing from the others; where the
    /// commit goes wrong, none is kept and each is told.
    fn write(&self, tasks: Vec<Task>) {
        let begun = self.connection().execute_batch("BEGIN IMMEDIATE");
        if let Err(error) = begun {
            let error = StoreError::from(error);
            // Each work is not even begun: its own answer is asked for after nothing was done.
            return tasks
                .into_iter()
                .for_each(|task| refuse(task, self, &error));
        }
        let replies: Vec<Reply> = tasks.into_iter().map(|task| task(self)).collect();
        let ending = self.ending.take();
        let last = if ending == Some(Ending::BeforeCommit) {
            "ROLLBACK"
        } else {
            "COMMIT"
        };
        let ended = self
            .connection()
            .execute_batch(last)
            .map_err(StoreError::from);
        if ending.is_some() {
            return;
        }
        if ended.is_err() && !self.connection().is_autocommit() {
            // What cannot be undone is not there either.
            let _ = self.connection().execute_batch("ROLLBACK");
        }
        for reply in replies {
            reply(ended.as_ref().copied());
        }
    }
}

/// Answers a write that could not begin.
fn refuse(task: Task, disk: &Disk, error: &StoreError) {
    task(disk)(Err(error));
}

/// Gives writes to the thread.
#[derive(Clone)]
pub struct Writer {
    tasks: SyncSender<Task>,
}

impl Writer {
    /// Begins the thread; it ends when every writer is gone, and hands the disk back.
    pub fn begin(disk: Disk) -> (Writer, JoinHandle<Disk>) {
        let (tasks, waiting) = sync_channel(MOST_WAITING);
        let thread = std::thread::spawn(move || {
            run(&disk, &waiting);
            disk
        });
        (Writer { tasks }, thread)
    }

    /// Does this work in a transaction; its result once that is on the disk.
    ///
    /// # Errors
    /// What the work or the commit says; then nothing of the work is kept.
    pub async fn write<T: Send + 'static>(
        &self,
        work: impl FnOnce(&Store<'_>) -> Result<T, StoreError> + Send + 'static,
    ) -> Result<T, StoreError> {
        let (mut task, answered) = to_do(work);
        loop {
            match self.tasks.try_send(task) {
                Ok(()) => break,
                Err(TrySendError::Disconnected(_)) => return Err(StoreError::Ended),
                Err(TrySendError::Full(again)) => task = again,
            }
            tokio::time::sleep(REST).await;
        }
        answered.await.map_err(|_| StoreError::Ended)?
    }

    /// The same, this thread waiting.
    ///
    /// # Errors
    /// As [`Self::write`].
    pub fn write_here<T: Send + 'static>(
        &self,
        work: impl FnOnce(&Store<'_>) -> Result<T, StoreError> + Send + 'static,
    ) -> Result<T, StoreError> {
        let (task, answered) = to_do(work);
        self.tasks.send(task).map_err(|_| StoreError::Ended)?;
        answered.blocking_recv().map_err(|_| StoreError::Ended)?
    }
}

/// A write, and where its answer comes.
fn to_do<T: Send + 'static>(
    work: impl FnOnce(&Store<'_>) -> Result<T, StoreError> + Send + 'static,
) -> (Task, oneshot::Receiver<Result<T, StoreError>>) {
    let (answer, answered) = oneshot::channel();
    let task: Task = Box::new(move |disk| {
        let done = apart(disk, work);
        Box::new(move |committed| {
            let told = match committed {
                Ok(()) => done,
                // What went wrong with this work is told before what came of it for the others.
                Err(error) => done.and(Err(error.again())),
            };
            // Whoever asked may have gone.
            let _ = answer.send(told);
        })
    });
    (task, answered)
}

/// Does one work so that it is kept whole or not at all.
fn apart<T>(
    disk: &Disk,
    work: impl FnOnce(&Store<'_>) -> Result<T, StoreError>,
) -> Result<T, StoreError> {
    let connection = disk.connection();
    // The transaction could not begin, or an earlier work has ended it.
    if connection.is_autocommit() {
        return Err(StoreError::Ended);
    }
    connection.execute_batch("SAVEPOINT one")?;
    let done = work(&Store::new(connection, &disk.scope));
    match done {
        Ok(_) => connection.execute_batch("RELEASE one")?,
        // A full disk may have ended the whole transaction by itself.
        Err(_) if connection.is_autocommit() => {}
        Err(_) => connection.execute_batch("ROLLBACK TO one; RELEASE one")?,
    }
    done
}

fn run(disk: &Disk, waiting: &Receiver<Task>) {
    while let Ok(first) = waiting.recv() {
        let mut tasks = vec![first];
        tasks.extend(waiting.try_iter().take(MOST_AT_ONCE - 1));
        disk.write(tasks);
    }
}
