//! Questions and answers, as JSON over HTTP.
//!
//! | question | answer |
//! | --- | --- |
//! | `POST /api/join` with [`JoinRequest`] | [`JoinAnswer`] or [`JoinRefusal`] |
//! | `GET /api/seat` | [`ClassView`] |
//! | `POST /api/segments` with a [`Segment`](crate::Segment) | [`SegmentAnswer`] |
//! | `GET /api/attempts/ID` | [`AttemptStatus`] |
//! | `GET /api/jobs/JOB` | [`SealedJobAnswer`] |
//! | `GET /api/teacher/attempts/ID/watch` | [`WatchedAttempt`] |
//!
//! The last one carries the teacher's cookie, all others but the first the token of the seat in
//! `Authorization: Bearer TOKEN`. Moments are told as how long they are
//! away, in seconds: a learner's clock may stand anywhere.

use super::digest::{AttemptId, ClassId, Digest, SecretToken};
use super::sealed_text::SealedText;
use super::segment::SegmentFault;
use serde::{Deserialize, Serialize};

/// Longest name, characters.
pub const LONGEST_NAME: usize = 60;

/// A seat is asked for.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct JoinRequest {
    /// [`PROTOCOL_VERSION`](crate::PROTOCOL_VERSION) of whoever asks.
    pub protocol: u32,
    /// The code as it was typed.
    pub code: String,
    /// The name as it was typed: on the teacher's list, or chosen where there is none.
    pub name: String,
    /// The word that the teacher gave, to come back to a seat that was taken on another device.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub word: Option<String>,
}

/// A seat is given.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct JoinAnswer {
    /// What opens the seat from now on.
    pub token: SecretToken,
    /// What there is to do.
    pub view: ClassView,
}

/// No seat is given.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, thiserror::Error)]
pub enum JoinRefusal {
    /// The server speaks another version.
    #[error(
        "the server speaks version {server} of the class protocol; use the program that the class was made with"
    )]
    Protocol {
        /// The server's.
        server: u32,
    },
    /// The code is another.
    #[error("that is not the code of this class; read it off the board again")]
    WrongCode,
    /// Too many wrong codes came in.
    #[error("too many wrong codes; try again in {wait_s} s")]
    TooManyTries {
        /// How long to wait, s.
        wait_s: u32,
    },
    /// The name is empty, too long or has no letter.
    #[error("a name has at least one letter and at most {LONGEST_NAME} characters")]
    Name,
    /// The teacher's list has no such name.
    #[error("that name is not on the list of this class; type it as your instructor has it")]
    NotOnList,
    /// Somebody sits there.
    #[error(
        "somebody with this name has joined already; if that was you, ask your instructor for a word to come back with"
    )]
    NameTaken,
    /// The word is another, was used, or is too old.
    #[error(
        "that is not the word that your instructor gave for this name, or it was used or is too old; ask for another"
    )]
    WrongWord,
    /// Every seat is taken.
    #[error("every seat of this class is taken; tell your instructor")]
    Full,
    /// The class is over.
    #[error("this class is closed")]
    Closed,
}

/// What a class is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum ClassKind {
    /// Everything that the bench explains is there.
    Practice,
    /// No best path, no hidden fault and no score before the close.
    Examination,
}

impl ClassKind {
    /// Whether what a job is worth is kept back while the class stands there.
    pub fn keeps_results_back(self, standing: Standing) -> bool {
        self == ClassKind::Examination && standing != Standing::Closed
    }
}

/// Where the class stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Standing {
    /// It opens later.
    NotOpen {
        /// In how long, s.
        in_s: u32,
    },
    /// Work goes on.
    Open {
        /// How long still, s, where it ends by itself.
        left_s: Option<u32>,
    },
    /// The teacher has stopped everybody for a moment.
    Paused,
    /// It is over; what was done before it was still comes in.
    Closed,
}

impl Standing {
    /// Whether both say the same, but for the time that goes by.
    pub fn differs_in_time_alone(self, other: Standing) -> bool {
        std::mem::discriminant(&self) == std::mem::discriminant(&other)
    }
}

/// One thing to do.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct ClassJob {
    /// Name of the scenario's file, without folder and ending; of a sealed job one that says nothing.
    pub job: String,
    /// The seed of this learner's own machine.
    pub seed: u64,
    /// Its scenario is this seat's alone and is asked for by itself: [`SealedJobAnswer`].
    #[serde(default)]
    pub is_sealed: bool,
}

/// File name of the scenario in an attempt at a sealed job.
pub fn sealed_scenario_file(job: &str) -> String {
    format!("{job}.ron")
}

/// The scenario of a sealed job, if it can be had.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum SealedJobAnswer {
    /// This is its text, closed for the name of the job.
    Ready(SealedText),
    /// It is still being drawn, or the class is not open yet: to be asked for again.
    NotYet,
    /// There is no such job for this seat.
    NoJob,
}

/// A drill of the class.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct ClassDrill {
    /// The fixed name of its skill.
    pub drill: String,
    /// Questions in a round.
    pub questions: u32,
    /// The seed of this learner's first round; each further one has the next seed.
    pub seed: u64,
}

/// How far a round of a drill has come, as marking it again has shown.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct DrillStatus {
    /// The fixed name of its skill.
    pub drill: String,
    /// Answers that came in.
    pub done: u32,
    /// Questions that the round has.
    pub questions: u32,
    /// Right ones among the answers; none while they are not to be shown, or cannot be marked.
    pub right: Option<u32>,
}

/// A word from the teacher.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct ClassNotice {
    /// Its number: later ones are higher.
    pub number: u32,
    /// What it says; plain text.
    pub text: String,
}

/// What a learner's bench is told about the class.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ClassView {
    /// [`PROTOCOL_VERSION`](crate::PROTOCOL_VERSION) of the server.
    pub protocol: u32,
    /// Version of the server's program.
    pub program: String,
    /// Digest of the content that the class is made with.
    pub content: Digest,
    /// Which class it is; none in what was kept before classes were told apart.
    #[serde(default)]
    pub class: Option<ClassId>,
    /// What the class is called.
    pub title: String,
    /// Who sits here.
    pub name: String,
    /// What it is for.
    pub kind: ClassKind,
    /// Where it stands.
    pub standing: Standing,
    /// What there is to do, in order.
    pub jobs: Vec<ClassJob>,
    /// Drills that there are to do besides.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub drills: Vec<ClassDrill>,
    /// What the teacher said to this seat or to all, the newest last.
    pub notices: Vec<ClassNotice>,
    /// The attempts that came in from this seat.
    pub attempts: Vec<AttemptStatus>,
}

/// What doing an attempt again has shown.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Verdict {
    /// It is not finished, or not done again yet.
    Waiting,
    /// It came out as it says.
    Verified {
        /// Points of 100; none while they are not to be shown.
        points: Option<f64>,
    },
    /// It comes out another way than it says: it was damaged or changed.
    Mismatch,
    /// It came out as it says, but it is at no job of this class, or at another learner's machine.
    NotAssigned,
    /// It cannot be done again here. Never a zero.
    Unverified(UnverifiedReason),
}

/// Why an attempt cannot be done again.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum UnverifiedReason {
    /// It was made with another version of the program.
    OtherProgram,
    /// It was made with other content.
    OtherContent,
    /// It would take longer than a class takes for one attempt.
    TooLong,
}

/// What the server has of an attempt.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct AttemptStatus {
    /// Which one.
    pub attempt: AttemptId,
    /// The job that it is at, where that is known.
    pub job: Option<String>,
    /// How far it has come, where it is a round of a drill and that is known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub drill: Option<DrillStatus>,
    /// Segments that are there: the number of the next one.
    pub next: u32,
    /// Digest of the last one; [`Digest::NONE`] before the first.
    pub digest: Digest,
    /// Bytes of text that are there.
    pub bytes: u64,
    /// Digest of that text, where the attempt was asked for by itself: [`Digest::of_text`].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub text: Option<Digest>,
    /// Whether its end is there.
    pub closed: bool,
    /// What came of it.
    pub verdict: Verdict,
}

impl AttemptStatus {
    /// Of an attempt of which nothing is there.
    pub fn nothing_of(attempt: AttemptId) -> AttemptStatus {
        AttemptStatus {
            attempt,
            job: None,
            drill: None,
            next: 0,
            digest: Digest::NONE,
            bytes: 0,
            text: Some(Digest::of_text("")),
            closed: false,
            verdict: Verdict::Waiting,
        }
    }
}

/// What became of a segment.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum SegmentAnswer {
    /// It is committed, now or since it came the first time.
    Kept {
        /// Number of the segment that comes next.
        next: u32,
    },
    /// One before it is missing.
    Gap {
        /// Number of the segment that comes next.
        next: u32,
    },
    /// Another one stands in this place, or before it.
    OtherBody {
        /// The place.
        sequence: u32,
    },
    /// It is none.
    Faulty(SegmentFault),
    /// The attempt is another seat's.
    NotYours,
    /// The attempt has its end already.
    Finished,
    /// The attempt is larger than a class takes, or this seat has too many.
    TooMuch,
    /// The server cannot keep it now, its disk being full or broken: to be sent again.
    NotNow,
}

/// All of an attempt so far, for whoever watches it at the bench.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct WatchedAttempt {
    /// Its text so far: whole lines.
    pub text: String,
    /// Its scenario, where that is in no library that the page has.
    pub scenario: Option<WatchedScenario>,
    /// Digest of the content that the attempt was made with.
    pub content: Digest,
}

/// The scenario of an attempt that is watched.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct WatchedScenario {
    /// Name of its file, as the attempt names it.
    pub file: String,
    /// All of its text.
    pub text: String,
}
