//! Long work in slices: between two of them, whoever waits for it may do something else.

use crate::bench::Bench;
use detent_simulation::units::Span;
use std::future::Future;
use std::pin::{Pin, pin};
use std::task::{Context, Poll, Waker};

/// The end of a slice: pending once, then ready.
#[derive(Default)]
pub(crate) struct SliceEnd {
    passed: bool,
}

impl Future for SliceEnd {
    type Output = ();

    fn poll(mut self: Pin<&mut Self>, context: &mut Context<'_>) -> Poll<()> {
        if std::mem::replace(&mut self.passed, true) {
            return Poll::Ready(());
        }
        context.waker().wake_by_ref();
        Poll::Pending
    }
}

/// Machine time in one slice: a few milliseconds of work.
const SLICE: Span = Span::from_s(5);

/// Lets so much machine time pass, in slices.
pub async fn wait(bench: &mut Bench, span: Span) {
    let until = bench.now() + span;
    loop {
        let left = until.since(bench.now());
        if left <= SLICE {
            return bench.wait(left);
        }
        bench.wait(SLICE);
        SliceEnd::default().await;
    }
}

/// Does work in slices without a break between them. The work must wait for nothing else.
pub fn without_breaks<T>(work: impl Future<Output = T>) -> T {
    let mut work = pin!(work);
    let mut context = Context::from_waker(Waker::noop());
    loop {
        if let Poll::Ready(done) = work.as_mut().poll(&mut context) {
            return done;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn work_goes_on_after_each_slice() {
        let work = async {
            let mut done = 0;
            for _ in 0..3 {
                SliceEnd::default().await;
                done += 1;
            }
            done
        };
        let mut polls = 0;
        let mut work = pin!(work);
        let mut context = Context::from_waker(Waker::noop());
        while work.as_mut().poll(&mut context).is_pending() {
            polls += 1;
        }
        assert_eq!(polls, 3);
        assert_eq!(without_breaks(async { SliceEnd::default().await }), ());
    }
}
