//! An attempt done again. What a learner's program says about its score is never believed.

use super::definition::ClassDefinition;
use super::drawing::DrawnJob;
use detent_class_protocol::{Digest, UnverifiedReason, Verdict};
use detent_content::{ContentLibrary, ScenarioSource, replay_attempt_in_slices};
use detent_gradebook::AttemptResult;
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
    /// The seat's own scenarios, where the class's are sealed.
    pub drawn: &'a [DrawnJob],
}

/// What is said of an attempt that came out as it says.
pub fn verified(result: &AttemptResult) -> Verdict {
    Verdict::Verified {
        points: Some(result.score.total()),
    }
}

/// What is said of an attempt or a round that cannot be read.
pub(crate) fn unreadable(error: &RecordError) -> Verdict {
    match error.problem {
        Damage::NewerFormat { .. } => Verdict::Unverified(UnverifiedReason::OtherProgram),
        _ => Verdict::Mismatch,
    }
}

/// The job that an attempt says it is at: the name of a scenario's file without folder and ending. Whatever else stands
/// there, no path is ever opened by it.
pub fn job_of(header: &Header) -> Option<&str> {
    Path::new(&header.scenario).file_stem()?.to_str()
}

impl Verifier<'_> {
    /// Does it again. `go_on` is asked after each slice of a few milliseconds; where it says no, the attempt takes too long.
    pub fn verify(&self, submitted: &Submitted<'_>, go_on: impl FnMut() -> bool) -> Verdict {
        match self.verify_in_full(submitted, go_on) {
            Ok(result) => verified(&result),
            Err(verdict) => verdict,
        }
    }

    /// The same; all that a sound attempt has shown.
    ///
    /// # Errors
    /// What is said of an attempt that is not verified, and of any round of a drill.
    pub fn verify_in_full(
        &self,
        submitted: &Submitted<'_>,
        go_on: impl FnMut() -> bool,
    ) -> Result<AttemptResult, Verdict> {
        if submitted.program != self.program {
            return Err(Verdict::Unverified(UnverifiedReason::OtherProgram));
        }
        if submitted.content != self.content {
            return Err(Verdict::Unverified(UnverifiedReason::OtherContent));
        }
        if is_drill_round(submitted.text) {
            return Err(self.verify_round(submitted, go_on));
        }
        let attempt = read_attempt("handed-in.attempt", submitted.text.as_bytes());
        let attempt = attempt.map_err(|error| unreadable(&error))?;
        let Some(scenario_source) = self.scenario_of(&attempt, submitted.drawn) else {
            return Err(Verdict::Mismatch);
        };
        let work = replay_attempt_in_slices(
            self.library,
            &scenario_source,
            "handed-in.attempt",
            &attempt,
        );
        match within(work, go_on) {
            None => Err(Verdict::Unverified(UnverifiedReason::TooLong)),
            Some(Err(_)) => Err(Verdict::Mismatch),
            Some(Ok(_)) if !self.is_assigned(submitted, &scenario_source, &attempt) => {
                Err(Verdict::NotAssigned)
            }
            Some(Ok(replayed)) => Ok(AttemptResult::of(
                self.definition
                    .original_of(&scenario_source.stem())
                    .unwrap_or(&scenario_source.stem()),
                replayed.first.is_some(),
                &replayed.bench,
                replayed.score,
            )),
        }
    }

    /// The scenario that was attempted: the seat's own of this name and text, the library's, or the one that the attempt
    /// carries.
    pub fn scenario_of(&self, attempt: &Attempt, drawn: &[DrawnJob]) -> Option<ScenarioSource> {
        let header = &attempt.header;
        if let Some(drawn) = drawn_of(header, drawn) {
            let text = drawn.text.clone().into_bytes();
            return (self.library.scenario_source(header.scenario.clone(), text)).ok();
        }
        let of_library = self.own_scenario(header);
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
    fn is_assigned(
        &self,
        submitted: &Submitted<'_>,
        scenario_source: &ScenarioSource,
        attempt: &Attempt,
    ) -> bool {
        let header = &attempt.header;
        if header.scenario_text.is_some() {
            return false;
        }
        if self.definition.machines.are_sealed() {
            return drawn_of(header, submitted.drawn)
                .is_some_and(|drawn| drawn.seed == header.seed);
        }
        (self.definition.jobs_of(submitted.seat).iter())
            .any(|job| job.job == scenario_source.stem() && job.seed == header.seed)
    }
}

/// The same of the text of an attempt, whole or not.
pub(crate) fn scenario_in<'d>(drawn: &'d [DrawnJob], text: &str) -> Option<&'d DrawnJob> {
    // Watched, it may lack its end and that of its last line.
    let attempt = read_attempt("watched.attempt.part", text.as_bytes()).ok()?;
    drawn_of(&attempt.header, drawn)
}

/// The one of these scenarios that an attempt is at.
fn drawn_of<'d>(header: &Header, drawn: &'d [DrawnJob]) -> Option<&'d DrawnJob> {
    let job = job_of(header)?;
    let mut drawn = drawn.iter().filter(|drawn| drawn.job == job);
    drawn.find(|drawn| sha256_hex(drawn.text.as_bytes()) == header.scenario_sha256)
}

/// Does work in slices as long as `go_on` says so; nothing where it was broken off.
pub(crate) fn within<T>(
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
