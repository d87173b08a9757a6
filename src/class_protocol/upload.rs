//! Sending an attempt, with a network that comes and goes.

use super::digest::{AttemptId, Digest};
use super::messages::{AttemptStatus, SegmentAnswer};
use super::segment::Segment;

/// How far an attempt has come to the server.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum UploadState {
    /// What is there is not known: it is to be asked for.
    Unknown,
    /// This is there; the rest is to be sent.
    Sending {
        /// Number of the next segment.
        next: u32,
        /// Digest of the last one.
        digest: Digest,
        /// Bytes that are there.
        bytes: u64,
    },
    /// It is refused for good, with what was answered last; it can still be handed in as a file.
    Refused(SegmentAnswer),
    /// What is there is more than what is kept here, or another text.
    Differs,
}

/// An attempt that is being sent.
///
/// Nothing of it needs to be kept over a restart: what is there is asked for, and the rest of the text is cut anew.
#[derive(Clone, Debug)]
pub struct Upload {
    attempt: AttemptId,
    program: String,
    content: Digest,
    state: UploadState,
    /// The segment that is on its way, until an answer to it came: it is sent again as it is.
    on_its_way: Option<Segment>,
}

impl Upload {
    /// Of this attempt, made with this program and content.
    pub fn new(attempt: AttemptId, program: &str, content: Digest) -> Upload {
        Upload {
            attempt,
            program: program.to_owned(),
            content,
            state: UploadState::Unknown,
            on_its_way: None,
        }
    }

    /// Which attempt.
    pub const fn attempt(&self) -> AttemptId {
        self.attempt
    }

    /// How far it has come.
    pub const fn state(&self) -> UploadState {
        self.state
    }

    /// Whether all of the whole lines of `text` are there.
    pub fn is_there(&self, text: &str) -> bool {
        let whole = text.rfind('\n').map_or(0, |end| end + 1);
        matches!(self.state, UploadState::Sending { bytes, .. } if bytes == whole as u64)
    }

    /// The segment to send now, if it is known what is there and something is not: of `text`, all that is kept here. Until
    /// it is answered, the same one.
    pub fn segment(&mut self, text: &str) -> Option<&Segment> {
        let UploadState::Sending {
            next,
            digest,
            bytes,
        } = self.state
        else {
            return None;
        };
        if self.on_its_way.is_none() {
            let Some(rest) = usize::try_from(bytes)
                .ok()
                .and_then(|bytes| text.get(bytes..))
            else {
                self.state = UploadState::Differs;
                return None;
            };
            let made_with = (self.program.as_str(), self.content);
            self.on_its_way = Segment::cut(self.attempt, (next, digest), made_with, rest).next();
        }
        self.on_its_way.as_ref()
    }

    /// The server told what it has of the attempt of which `text` is all that is kept here.
    pub fn told(&mut self, status: &AttemptStatus, text: &str) {
        if status.attempt != self.attempt {
            return;
        }
        self.on_its_way = None;
        let there = usize::try_from(status.bytes)
            .ok()
            .and_then(|bytes| text.get(..bytes));
        if there.map(Digest::of_text) != status.text {
            self.state = UploadState::Differs;
            return;
        }
        self.state = UploadState::Sending {
            next: status.next,
            digest: status.digest,
            bytes: status.bytes,
        };
    }

    /// The server answered to the segment with this digest.
    pub fn answered(&mut self, segment: Digest, answer: SegmentAnswer) {
        // An answer that comes late, to a segment that was settled since, says nothing new.
        let Some(sent) = self.on_its_way.take_if(|sent| sent.digest == segment) else {
            return;
        };
        let UploadState::Sending { bytes, .. } = self.state else {
            return;
        };
        self.state = match answer {
            SegmentAnswer::Kept { .. } => UploadState::Sending {
                next: sent.sequence + 1,
                digest: sent.digest,
                bytes: bytes + sent.text.len() as u64,
            },
            SegmentAnswer::NotNow => {
                self.on_its_way = Some(sent);
                return;
            }
            // What was sent before a restart came late, another window of this seat has sent in between, the server was
            // set back to an older copy, or the segment was damaged on its way: what is there is asked for, and the rest
            // cut anew.
            SegmentAnswer::OtherBody { .. }
            | SegmentAnswer::Gap { .. }
            | SegmentAnswer::Faulty(_) => UploadState::Unknown,
            SegmentAnswer::NotYours | SegmentAnswer::Finished | SegmentAnswer::TooMuch => {
                UploadState::Refused(answer)
            }
        };
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::LONGEST_SEGMENT_BYTES;
    use proptest::prelude::*;

    /// A server in memory.
    #[derive(Default)]
    struct Server {
        segments: Vec<Segment>,
    }

    impl Server {
        fn text(&self) -> String {
            self.segments
                .iter()
                .map(|segment| segment.text.as_str())
                .collect()
        }

        fn status(&self, attempt: AttemptId) -> AttemptStatus {
            AttemptStatus {
                next: self.segments.len() as u32,
                digest: self
                    .segments
                    .last()
                    .map_or(Digest::NONE, |last| last.digest),
                bytes: self.text().len() as u64,
                text: Some(Digest::of_text(&self.text())),
                ..AttemptStatus::nothing_of(attempt)
            }
        }

        fn keep(&mut self, segment: &Segment) -> SegmentAnswer {
            assert_eq!(segment.check(), Ok(()));
            let next = self.segments.len() as u32;
            match self.segments.get(segment.sequence as usize) {
                Some(kept) if kept == segment => SegmentAnswer::Kept { next },
                Some(_) => SegmentAnswer::OtherBody {
                    sequence: segment.sequence,
                },
                None if segment.sequence > next => SegmentAnswer::Gap { next },
                None => {
                    assert_eq!(segment.previous, self.status(segment.attempt).digest);
                    self.segments.push(segment.clone());
                    SegmentAnswer::Kept { next: next + 1 }
                }
            }
        }
    }

    fn upload() -> Upload {
        Upload::new(AttemptId::of_bytes([1; 16]), "0.1.0", Digest::NONE)
    }

    proptest! {
        /// Whatever is lost, comes twice, late or after a restart: all of the text arrives, in its order, once.
        #[test]
        fn everything_arrives_once(steps in prop::collection::vec(0u8..8, 0..200), seed in 0u64..1000) {
            let (mut server, mut upload) = (Server::default(), upload());
            let mut text = String::new();
            let mut late: Vec<(Segment, bool)> = Vec::new();
            for (n, step) in steps.into_iter().enumerate() {
                match step {
                    0 | 1 => text.push_str(&format!("line {n} of {seed} é\n")),
                    // A line is half written.
                    2 => text.push_str("half "),
                    3 => upload.told(&server.status(upload.attempt()), &text),
                    // It arrives, and so does the answer.
                    4 => {
                        if let Some(segment) = upload.segment(&text).cloned() {
                            let answer = server.keep(&segment);
                            upload.answered(segment.digest, answer);
                        }
                    }
                    // It arrives, the answer does not; or it comes once more much later.
                    5 => {
                        if let Some(segment) = upload.segment(&text).cloned() {
                            server.keep(&segment);
                            late.push((segment, n % 2 == 0));
                        }
                    }
                    6 => {
                        if let Some((segment, answered)) = late.pop() {
                            let answer = server.keep(&segment);
                            if answered {
                                upload.answered(segment.digest, answer);
                            }
                        }
                    }
                    // The program is started again.
                    _ => upload = Upload::new(upload.attempt(), "0.1.0", Digest::NONE),
                }
                prop_assert!(text.starts_with(&server.text()));
                prop_assert!(!matches!(upload.state(), UploadState::Refused(_) | UploadState::Differs));
            }
            text.push('\n');
            for _ in 0..3 {
                match upload.state() {
                    UploadState::Unknown => upload.told(&server.status(upload.attempt()), &text),
                    _ => while let Some(segment) = upload.segment(&text).cloned() {
                        let answer = server.keep(&segment);
                        upload.answered(segment.digest, answer);
                    },
                }
            }
            prop_assert_eq!(server.text(), text.clone());
            prop_assert!(upload.is_there(&text));
        }
    }

    #[test]
    fn a_long_text_goes_in_several_segments() {
        let (mut server, mut upload) = (Server::default(), upload());
        let text = "é line of an attempt\n".repeat(10_000);
        upload.told(&server.status(upload.attempt()), &text);
        while let Some(segment) = upload.segment(&text).cloned() {
            let answer = server.keep(&segment);
            upload.answered(segment.digest, answer);
        }
        assert_eq!(server.text(), text);
        assert_eq!(
            server.segments.len(),
            text.len().div_ceil(LONGEST_SEGMENT_BYTES)
        );
    }

    #[test]
    fn what_is_refused_for_good_is_not_sent_again() {
        let mut upload = upload();
        upload.told(&AttemptStatus::nothing_of(upload.attempt()), "line\n");
        let digest = upload.segment("line\n").expect("something to send").digest;
        upload.answered(digest, SegmentAnswer::NotNow);
        assert_eq!(
            upload.segment("line\nmore\n").map(|same| same.digest),
            Some(digest)
        );
        upload.answered(digest, SegmentAnswer::NotYours);
        assert_eq!(upload.segment("line\n"), None);
        assert!(!upload.is_there("line\n"));
    }

    #[test]
    fn another_text_than_what_is_there_is_told() {
        let mut upload = upload();
        let with = |text: &str| AttemptStatus {
            next: 1,
            bytes: text.len() as u64,
            text: Some(Digest::of_text(text)),
            ..AttemptStatus::nothing_of(upload.attempt())
        };
        let (same, longer, other) = (with("on"), with("one line\ntwo\n"), with("other\n"));
        for (status, state) in [(longer, true), (other, true), (same, false)] {
            upload.told(&status, "one line\n");
            assert_eq!(upload.state() == UploadState::Differs, state, "{status:?}");
        }
    }
}
