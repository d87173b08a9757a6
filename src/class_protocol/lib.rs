//! What a class's server and a learner's bench say to each other.
//!
//! An attempt is sent in segments: whole lines of its text, each bound to the segment before it by a digest. A segment
//! may be sent any number of times and in any order; the server keeps the first that fits, and answers once it has
//! committed it. Nothing here reads a clock, a file or a socket: the same code runs on both sides, and in tests
//! between a network and a disk that fail.

mod digest;
mod join_code;
mod messages;
mod sealed_text;
mod segment;
mod upload;

pub use digest::{AttemptId, ClassId, Digest, NotHexadecimal, SecretToken};
pub use join_code::{JoinCode, NotACode};
pub use messages::{
    AttemptStatus, ClassDrill, ClassJob, ClassKind, ClassNotice, ClassView, DrillStatus,
    JoinAnswer, JoinRefusal, JoinRequest, LONGEST_NAME, SealedJobAnswer, SegmentAnswer, Standing,
    UnverifiedReason, Verdict, WatchedAttempt, WatchedScenario, sealed_scenario_file,
};
pub use sealed_text::{
    LARGEST_SEALED_TEXT, NONCE_BYTES, NotSealed, SealedScenario, SealedText, TooLarge,
};
pub use segment::{LONGEST_SEGMENT_BYTES, MOST_ATTEMPT_BYTES, Segment, SegmentFault};
pub use upload::{Upload, UploadState};

/// Version of everything that both sides say; raised when one of them would misread the other.
pub const PROTOCOL_VERSION: u32 = 2;
