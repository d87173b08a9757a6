//! A piece of an attempt on its way.

use super::digest::{AttemptId, Digest};
use serde::{Deserialize, Serialize};

/// Longest text of a segment, bytes.
pub const LONGEST_SEGMENT_BYTES: usize = 64 << 10;
/// Largest attempt that a class takes, bytes. A deed takes some 40, so that an hour at two deeds a second is 0.3 million;
/// a second visit carries the first.
pub const MOST_ATTEMPT_BYTES: usize = 4 << 20;

/// Whole lines of an attempt's text, bound to the segment before.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Segment {
    /// Of which attempt.
    pub attempt: AttemptId,
    /// Its place there, from 0.
    pub sequence: u32,
    /// Digest of the segment before; [`Digest::NONE`] for the first.
    pub previous: Digest,
    /// Digest of all that this segment says, `previous` too.
    pub digest: Digest,
    /// Version of the program that it was made with.
    pub program: String,
    /// Digest of the content that the attempt is made with.
    pub content: Digest,
    /// The lines, each with its line break.
    pub text: String,
}

/// Why a segment is none.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, thiserror::Error)]
pub enum SegmentFault {
    /// Its digest is another.
    #[error(
        "the digest of this segment is not that of what it says: it was damaged on its way or changed"
    )]
    Digest,
    /// It says nothing, too much, or ends within a line.
    #[error("a segment has whole lines, at least one, and at most {LONGEST_SEGMENT_BYTES} bytes")]
    Text,
    /// The first one follows none, every other one does.
    #[error("the first segment of an attempt follows none, and every other one does")]
    Place,
}

impl Segment {
    /// The next segment after `previous`, with these lines.
    pub fn new(
        attempt: AttemptId,
        (sequence, previous): (u32, Digest),
        (program, content): (&str, Digest),
        text: &str,
    ) -> Segment {
        let mut segment = Segment {
            attempt,
            sequence,
            previous,
            digest: Digest::NONE,
            program: program.to_owned(),
            content,
            text: text.to_owned(),
        };
        segment.digest = segment.digest_of_all();
        segment
    }

    /// Cuts a text that comes after this place into segments of whole lines, each as long as may be. What stands behind the
    /// last line break is left out, and so is all from a line on that is longer than a segment.
    pub fn cut(
        attempt: AttemptId,
        mut after: (u32, Digest),
        made_with: (&str, Digest),
        mut text: &str,
    ) -> impl Iterator<Item = Segment> {
        std::iter::from_fn(move || {
            let room = text.floor_char_boundary(LONGEST_SEGMENT_BYTES);
            let (lines, rest) = text.split_at(text[..room].rfind('\n')? + 1);
            let segment = Segment::new(attempt, after, made_with, lines);
            after = (segment.sequence + 1, segment.digest);
            text = rest;
            Some(segment)
        })
    }

    fn digest_of_all(&self) -> Digest {
        Digest::of_parts(&[
            b"segment",
            self.attempt.bytes(),
            &self.sequence.to_be_bytes(),
            self.previous.bytes(),
            self.program.as_bytes(),
            self.content.bytes(),
            self.text.as_bytes(),
        ])
    }

    /// Whether it is one.
    ///
    /// # Errors
    /// What is wrong with it.
    pub fn check(&self) -> Result<(), SegmentFault> {
        let length = self.text.len();
        if length > LONGEST_SEGMENT_BYTES || !self.text.ends_with('\n') {
            return Err(SegmentFault::Text);
        }
        if (self.sequence == 0) != (self.previous == Digest::NONE) {
            return Err(SegmentFault::Place);
        }
        if self.digest != self.digest_of_all() {
            return Err(SegmentFault::Digest);
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn segment() -> Segment {
        let previous = Digest::of_parts(&[b"before"]);
        Segment::new(
            AttemptId::of_bytes([1; 16]),
            (3, previous),
            ("0.1.0", Digest::NONE),
            "one\ntwo\n",
        )
    }

    #[test]
    fn everything_that_it_says_is_bound() {
        let sound = segment();
        assert_eq!(sound.check(), Ok(()));
        let changes: [fn(&mut Segment); 6] = [
            |s| s.attempt = AttemptId::of_bytes([2; 16]),
            |s| s.sequence = 4,
            |s| s.previous = Digest::of_parts(&[b"other"]),
            |s| s.program = "0.1.1".to_owned(),
            |s| s.content = Digest::of_parts(&[b"other"]),
            |s| s.text = "one\nTwo\n".to_owned(),
        ];
        for (n, change) in changes.into_iter().enumerate() {
            let mut changed = sound.clone();
            change(&mut changed);
            assert_eq!(changed.check(), Err(SegmentFault::Digest), "{n}");
        }
    }

    #[test]
    fn what_is_no_segment_is_refused() {
        let with = |text: &str| {
            let s = segment();
            Segment::new(
                s.attempt,
                (s.sequence, s.previous),
                (&s.program, s.content),
                text,
            )
        };
        for text in ["", "no end", &"x\n".repeat(LONGEST_SEGMENT_BYTES / 2 + 1)] {
            assert_eq!(with(text).check(), Err(SegmentFault::Text));
        }
        let s = segment();
        let first = Segment::new(s.attempt, (0, s.previous), (&s.program, s.content), "one\n");
        assert_eq!(first.check(), Err(SegmentFault::Place));
        let second = Segment::new(
            s.attempt,
            (1, Digest::NONE),
            (&s.program, s.content),
            "one\n",
        );
        assert_eq!(second.check(), Err(SegmentFault::Place));
    }
}
