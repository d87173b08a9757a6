//! A finished job is thought over while frames go on: on a thread of its own, in a browser between
//! two frames.

use super::port::ReviewWork;
use detent_training::reason::Review;

/// The thinking, until it is done.
#[cfg(not(target_family = "wasm"))]
type Running = bevy::tasks::Task<Option<Review>>;
/// A page has one thread: the work is done slice by slice.
#[cfg(target_family = "wasm")]
type Running = std::sync::Mutex<ReviewWork>;

/// The review of a finished job, or the work on it.
pub enum Reviewing {
    /// Not done yet.
    Running(Running),
    /// Done; none where no table of the board's faults is at hand.
    Done(Option<Box<Review>>),
}

impl Reviewing {
    /// Begins the work.
    #[cfg(not(target_family = "wasm"))]
    pub fn begin(work: ReviewWork) -> Reviewing {
        use bevy::tasks::{AsyncComputeTaskPool, TaskPool};
        use detent_training::reason::without_breaks;
        // The thread has nothing else to do: handing it back after each slice only costs time.
        let work = async move { without_breaks(work) };
        Reviewing::Running(AsyncComputeTaskPool::get_or_init(TaskPool::default).spawn(work))
    }

    /// Begins the work.
    #[cfg(target_family = "wasm")]
    pub fn begin(work: ReviewWork) -> Reviewing {
        Reviewing::Running(std::sync::Mutex::new(work))
    }

    /// Once a frame: takes the review in when it is done.
    pub fn go_on(&mut self) {
        if let Reviewing::Running(running) = self
            && let Some(done) = poll(running)
        {
            *self = Reviewing::Done(done.map(Box::new));
        }
    }

    /// Waits until it is done.
    #[cfg(test)]
    pub fn wait(&mut self) {
        if let Reviewing::Running(running) = self {
            *self = Reviewing::Done(bevy::tasks::block_on(running).map(Box::new));
        }
    }
}

#[cfg(not(target_family = "wasm"))]
fn poll(running: &mut Running) -> Option<Option<Review>> {
    bevy::tasks::futures::check_ready(running)
}

/// As many slices as a frame has room for.
#[cfg(target_family = "wasm")]
fn poll(running: &mut Running) -> Option<Option<Review>> {
    use bevy::platform::time::Instant;
    use std::sync::PoisonError;
    use std::time::Duration;

    /// What a frame leaves of its 16 ms.
    const ROOM: Duration = Duration::from_millis(8);
    let work = running.get_mut().unwrap_or_else(PoisonError::into_inner);
    let until = Instant::now() + ROOM;
    loop {
        let done = bevy::tasks::futures::check_ready(work);
        if done.is_some() || Instant::now() > until {
            return done;
        }
    }
}
