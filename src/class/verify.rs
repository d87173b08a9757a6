//! An attempt done again. What a learner's program says about its score is never believed.

use super::definition::ClassDefinition;
use detent_class_protocol::{Digest, UnverifiedReason, Verdict};
use detent_content::{ContentLibrary, ScenarioSource, replay_attempt_in_slices};
use detent_training::record::{
    Attempt, Damage, Header, RecordError, is_drill_round, read_attempt, sha256_hex,
};
use std::future::Future;
use std::path::Path;
use std::pin::pin;
use std::task::{Context, Poll, Waker};

/// What the server does attempts again with.
pub struct Verifier<'a> {
    /// Version of its program.
    pub program: &'a str,
    /// Its content.
    pub library: &'a ContentLibrary,
    /// Digest of that.
    pub content: Digest,
    /// The class.
    pub definition: &'a ClassDefinition,
}

/// A finished attempt as it came in.
pub struct Submitted<'a> {
    /// Whose seat.
    pub seat: u32,
    /// Version of the program that it was made with.
    pub program: &'a str,
    /// The content that it was made with.
    pub content: Digest,
    /// All of its text.
    pub text: &'a str,
}

/// The job that an attempt says it is at: the name of a scenario's file without folder and ending. Whatever else stands
/// there, no path is ever opened by it.
pub fn job_of(header: &Header) -> Option<&str> {
    Path::new(&header.scenario).file_stem()?.to_str()
}

impl Verifier<'_> {
    /// Does it again. `go_on` is asked after each slice of a few milliseconds; where it says no, the attempt takes too long.
    pub fn verify(&self, submitted: &Submitted<'_>, go_on: impl FnMut() -> bool) -> Verdict {
        if submitted.program != self.program {
            return Verdict::Unverified(UnverifiedReason::OtherProgram);
        }
        if submitted.content != self.content {
            return Verdict::Unverified(UnverifiedReason::OtherContent);
        }
        if is_drill_round(submitted.text) {
            return self.verify_round(submitted, go_on);
        }
        let attempt = match read_attempt("handed-in.attempt", submitted.text.as_bytes()) {
            Ok(attempt) => attempt,
            Err(RecordError {
                problem: Damage::NewerFormat { .. },
                ..
            }) => {
                return Verdict::Unverified(UnverifiedReason::OtherProgram);
            }
            Err(_) => return Verdict::Mismatch,
        };
        let Some(scenario_source) = self.scenario_of(&attempt) else {
            return Verdict::Mismatch;
        };
        let work = replay_attempt_in_slices(
            self.library,
            &scenario_source,
            "handed-in.attempt",
            &attempt,
        );
        match within(work, go_on) {
            None => Verdict::Unverified(UnverifiedReason::TooLong),
            Some(Err(_)) => Verdict::Mismatch,
            Some(Ok(_)) if !self.is_assigned(submitted.seat, &scenario_source, &attempt) => {
                Verdict::NotAssigned
            }
            Some(Ok(replayed)) => Verdict::Verified {
                points: Some(replayed.score.total()),
            },
        }
    }

    /// The scenario that was attempted: the library's own of this name and text, or the one that the attempt carries.
    pub fn scenario_of(&self, attempt: &Attempt) -> Option<ScenarioSource> {
        let of_library = self.own_scenario(&attempt.header);
        of_library.or_else(|| {
            self.library
                .carried_scenario(&attempt.header)
                .ok()
                .flatten()
        })
    }

    fn own_scenario(&self, header: &Header) -> Option<ScenarioSource> {
        let found = self.library.scenario(job_of(header)?).ok()?;
        (sha256_hex(found.text.as_bytes()) == header.scenario_sha256).then_some(found)
    }

    /// Whether it is a job of the class at this seat's own machine: a machine that the learner drew, or a scenario that an
    /// attempt carries, is none.
    fn is_assigned(&self, seat: u32, scenario_source: &ScenarioSource, attempt: &Attempt) -> bool {
        let header = &attempt.header;
        header.scenario_text.is_none()
            && (self.definition.jobs_of(seat).iter())
                .any(|job| job.job == scenario_source.stem() && job.seed == header.seed)
    }
}

/// Does work in slices as long as `go_on` says so; nothing where it was broken off.
pub(super) fn within<T>(
    work: impl Future<Output = T>,
    mut go_on: impl FnMut() -> bool,
) -> Option<T> {
    let mut work = pin!(work);
    let mut context = Context::from_waker(Waker::noop());
    loop {
        match work.as_mut().poll(&mut context) {
            Poll::Ready(done) => return Some(done),
            Poll::Pending if go_on() => {}
            Poll::Pending => return None,
        }
    }
}
