//! Long work while frames go on: on a thread of its own, in a browser between two frames.

use std::pin::Pin;

/// Work in slices of a few milliseconds each.
pub type Work<T> = Pin<Box<dyn Future<Output = T> + Send>>;

/// The work, until it is done.
#[cfg(not(target_family = "wasm"))]
type Running<T> = bevy::tasks::Task<T>;
/// A page has one thread: the work is done slice by slice.
#[cfg(target_family = "wasm")]
pub struct Running<T> {
    work: std::sync::Mutex<Work<T>>,
    /// When the last slices ended.
    since: bevy::platform::time::Instant,
}

/// Work in the background, or what came of it.
pub enum Background<T> {
    /// Not done yet.
    Running(Running<T>),
    /// Done.
    Done(T),
}

impl<T: Send + 'static> Background<T> {
    /// Begins the work.
    #[cfg(not(target_family = "wasm"))]
    pub fn begin(work: Work<T>) -> Background<T> {
        use bevy::tasks::{AsyncComputeTaskPool, TaskPool};
        use detent_training::without_breaks;
        // The thread has nothing else to do: handing it back after each slice only costs time.
        let work = async move { without_breaks(work) };
        Background::Running(AsyncComputeTaskPool::get_or_init(TaskPool::default).spawn(work))
    }

    /// Begins work that is broken off between two slices when this is dropped.
    #[cfg(not(target_family = "wasm"))]
    pub fn begin_to_break_off(work: Work<T>) -> Background<T> {
        use bevy::tasks::{AsyncComputeTaskPool, TaskPool};
        Background::Running(AsyncComputeTaskPool::get_or_init(TaskPool::default).spawn(work))
    }

    /// Begins work that is broken off between two slices when this is dropped.
    #[cfg(target_family = "wasm")]
    pub fn begin_to_break_off(work: Work<T>) -> Background<T> {
        Background::begin(work)
    }

    /// Begins the work.
    #[cfg(target_family = "wasm")]
    pub fn begin(work: Work<T>) -> Background<T> {
        Background::Running(Running {
            work: std::sync::Mutex::new(work),
            since: bevy::platform::time::Instant::now(),
        })
    }

    /// Once a frame: takes the result in when the work is done.
    pub fn go_on(&mut self) {
        if let Background::Running(running) = self
            && let Some(done) = poll(running)
        {
            *self = Background::Done(done);
        }
    }

    /// Waits until it is done.
    #[cfg(test)]
    pub fn wait(&mut self) {
        if let Background::Running(running) = self {
            *self = Background::Done(bevy::tasks::block_on(running));
        }
    }
}

#[cfg(not(target_family = "wasm"))]
fn poll<T>(running: &mut Running<T>) -> Option<T> {
    bevy::tasks::futures::check_ready(running)
}

/// As many slices as a frame has room for; where frames take long anyway, half as long again, or the work
/// would never end.
#[cfg(target_family = "wasm")]
fn poll<T>(running: &mut Running<T>) -> Option<T> {
    use bevy::platform::time::Instant;
    use std::sync::PoisonError;
    use std::time::Duration;

    /// With the frame itself less than the 50 ms after which a page is felt to hang.
    const ROOM: Duration = Duration::from_millis(24);
    let began = Instant::now();
    let until = began + ROOM.max((began - running.since) / 2);
    let work = (running.work)
        .get_mut()
        .unwrap_or_else(PoisonError::into_inner);
    let done = loop {
        let done = bevy::tasks::futures::check_ready(work);
        if done.is_some() || Instant::now() > until {
            break done;
        }
    };
    running.since = Instant::now();
    done
}
