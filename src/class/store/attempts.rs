//! Attempts, as the segments in which they came, and what doing them again has shown.

use super::{Store, StoreError};
use crate::moment::Moment;
use detent_class_protocol::{
    AttemptId, AttemptStatus, Digest, MOST_ATTEMPT_BYTES, Segment, SegmentAnswer, Verdict,
};
use detent_training::record::{DRILL_ROUND_BEGINS, is_end};
use rusqlite::types::{FromSqlError, Type};
use rusqlite::{OptionalExtension, Row, params};

/// Most attempts of one seat.
pub const MOST_ATTEMPTS_OF_SEAT: i64 = 400;

/// An attempt as it is kept.
#[derive(Clone, Debug, PartialEq)]
pub struct KeptAttempt {
    /// What is there.
    pub status: AttemptStatus,
    /// Whose it is.
    pub seat: u32,
    /// When its first segment came.
    pub begun: Moment,
    /// When its last one did.
    pub last: Moment,
}

/// What became of a segment.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Appended {
    /// What is answered.
    pub answer: SegmentAnswer,
    /// Whether it is new.
    pub is_new: bool,
    /// Whether it brought the end of its attempt.
    pub closes: bool,
}

fn answered(answer: SegmentAnswer) -> Result<Appended, StoreError> {
    Ok(Appended {
        answer,
        is_new: false,
        closes: false,
    })
}

pub(super) fn fixed<const N: usize>(row: &Row<'_>, column: usize) -> rusqlite::Result<[u8; N]> {
    let bytes: Vec<u8> = row.get(column)?;
    let length = bytes.len();
    bytes.try_into().map_err(|_| {
        let error = FromSqlError::InvalidBlobSize {
            expected_size: N,
            blob_size: length,
        };
        rusqlite::Error::FromSqlConversionFailure(column, Type::Blob, Box::new(error))
    })
}

const COLUMNS: &str = "a.attempt, a.seat, a.begun_ms, a.last_ms, a.next, a.digest, a.bytes, a.closed, \
    (SELECT v.verdict FROM verdict v WHERE v.tenant = a.tenant AND v.class = a.class AND v.attempt = a.attempt \
     ORDER BY v.at_ms DESC LIMIT 1)";

fn attempt_of(row: &Row<'_>) -> rusqlite::Result<KeptAttempt> {
    let verdict: Option<String> = row.get(8)?;
    let verdict = verdict.map_or(Ok(Verdict::Waiting), |text| {
        serde_json::from_str(&text).map_err(|error| {
            rusqlite::Error::FromSqlConversionFailure(8, Type::Text, Box::new(error))
        })
    })?;
    Ok(KeptAttempt {
        status: AttemptStatus {
            attempt: AttemptId::of_bytes(fixed(row, 0)?),
            job: None,
            drill: None,
            next: row.get(4)?,
            digest: Digest::of_bytes(fixed(row, 5)?),
            bytes: row.get(6)?,
            text: None,
            closed: row.get(7)?,
            verdict,
        },
        seat: row.get(1)?,
        begun: Moment(row.get(2)?),
        last: Moment(row.get(3)?),
    })
}

impl Store<'_> {
    /// Adds a segment of this seat to its attempt. It was checked by itself; here it is held against what is there.
    ///
    /// # Errors
    /// What the database says.
    pub fn append(
        &self,
        seat: u32,
        segment: &Segment,
        now: Moment,
    ) -> Result<Appended, StoreError> {
        let (tenant, class) = self.ours();
        let id = segment.attempt.bytes();
        let there = self.attempt(segment.attempt)?;
        let (next, digest, bytes) = match &there {
            Some(kept) if kept.seat != seat => return answered(SegmentAnswer::NotYours),
            Some(kept) => (kept.status.next, kept.status.digest, kept.status.bytes),
            // Whoever sat there was erased while this was on its way.
            None if !self.has_seat(seat)? => return answered(SegmentAnswer::NotYours),
            None => (0, Digest::NONE, 0),
        };
        if segment.sequence < next {
            let kept = self.segment_digest(segment.attempt, segment.sequence)?;
            return answered(match kept == Some(segment.digest) {
                true => SegmentAnswer::Kept { next },
                false => SegmentAnswer::OtherBody {
                    sequence: segment.sequence,
                },
            });
        }
        if there.as_ref().is_some_and(|kept| kept.status.closed) {
            return answered(SegmentAnswer::Finished);
        }
        if segment.sequence > next {
            return answered(SegmentAnswer::Gap { next });
        }
        if segment.previous != digest {
            return answered(SegmentAnswer::OtherBody {
                sequence: next.saturating_sub(1),
            });
        }
        let whole = bytes + segment.text.len() as u64;
        if whole > MOST_ATTEMPT_BYTES as u64 || (there.is_none() && !self.has_room(seat)?) {
            return answered(SegmentAnswer::TooMuch);
        }
        let closes = segment.text.lines().any(is_end);
        self.connection
            .prepare_cached(
                "INSERT INTO segment (tenant, class, attempt, sequence, previous, digest, program, content, text, at_ms) \
                 VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)",
            )?
            .execute(params![
                tenant,
                class,
                id,
                segment.sequence,
                segment.previous.bytes(),
                segment.digest.bytes(),
                segment.program,
                segment.content.bytes(),
                segment.text,
                now.0
            ])?;
        self.connection
            .prepare_cached(
                "INSERT INTO attempt (tenant, class, attempt, seat, begun_ms, last_ms, next, digest, bytes, closed) \
                 VALUES (?1, ?2, ?3, ?4, ?5, ?5, ?6, ?7, ?8, ?9) \
                 ON CONFLICT (tenant, class, attempt) DO UPDATE SET \
                 last_ms = excluded.last_ms, next = excluded.next, digest = excluded.digest, \
                 bytes = excluded.bytes, closed = excluded.closed",
            )?
            .execute(params![tenant, class, id, seat, now.0, next + 1, segment.digest.bytes(), whole, closes])?;
        Ok(Appended {
            answer: SegmentAnswer::Kept { next: next + 1 },
            is_new: true,
            closes,
        })
    }

    /// Digest of the segment that stands in this place.
    ///
    /// # Errors
    /// What the database says.
    pub fn segment_digest(
        &self,
        attempt: AttemptId,
        sequence: u32,
    ) -> Result<Option<Digest>, StoreError> {
        let (tenant, class) = self.ours();
        let digest = (self.connection)
            .prepare_cached(
                "SELECT digest FROM segment WHERE tenant = ?1 AND class = ?2 AND attempt = ?3 AND sequence = ?4",
            )?
            .query_row(params![tenant, class, attempt.bytes(), sequence], |row| fixed(row, 0).map(Digest::of_bytes))
            .optional()?;
        Ok(digest)
    }

    /// Whether this seat may begin another attempt.
    fn has_room(&self, seat: u32) -> Result<bool, StoreError> {
        let (tenant, class) = self.ours();
        let attempts: i64 = (self.connection)
            .prepare_cached(
                "SELECT count(*) FROM attempt WHERE tenant = ?1 AND class = ?2 AND seat = ?3",
            )?
            .query_row(params![tenant, class, seat], |row| row.get(0))?;
        Ok(attempts < MOST_ATTEMPTS_OF_SEAT)
    }

    /// One attempt, if something of it is there.
    ///
    /// # Errors
    /// What the database says.
    pub fn attempt(&self, attempt: AttemptId) -> Result<Option<KeptAttempt>, StoreError> {
        let (tenant, class) = self.ours();
        let kept = (self.connection)
            .prepare_cached(&format!(
                "SELECT {COLUMNS} FROM attempt a WHERE a.tenant = ?1 AND a.class = ?2 AND a.attempt = ?3"
            ))?
            .query_row(params![tenant, class, attempt.bytes()], attempt_of)
            .optional()?;
        Ok(kept)
    }

    /// The attempts of one seat, the newest first.
    ///
    /// # Errors
    /// What the database says.
    pub fn attempts_of(&self, seat: u32) -> Result<Vec<KeptAttempt>, StoreError> {
        let (tenant, class) = self.ours();
        let mut rows = self.connection.prepare_cached(&format!(
            "SELECT {COLUMNS} FROM attempt a WHERE a.tenant = ?1 AND a.class = ?2 AND a.seat = ?3 \
             ORDER BY a.begun_ms DESC, a.attempt"
        ))?;
        let attempts = rows.query_map(params![tenant, class, seat], attempt_of)?;
        Ok(attempts.collect::<Result<_, _>>()?)
    }

    /// Every attempt, the oldest first.
    ///
    /// # Errors
    /// What the database says.
    pub fn attempts(&self) -> Result<Vec<KeptAttempt>, StoreError> {
        let (tenant, class) = self.ours();
        let mut rows = self.connection.prepare_cached(&format!(
            "SELECT {COLUMNS} FROM attempt a WHERE a.tenant = ?1 AND a.class = ?2 ORDER BY a.begun_ms, a.attempt"
        ))?;
        let attempts = rows.query_map(params![tenant, class], attempt_of)?;
        Ok(attempts.collect::<Result<_, _>>()?)
    }

    /// The text of an attempt so far; the program and the content that its last segment was made with.
    ///
    /// # Errors
    /// What the database says.
    pub fn text(&self, attempt: AttemptId) -> Result<Option<(String, String, Digest)>, StoreError> {
        let (tenant, class) = self.ours();
        let mut rows = self.connection.prepare_cached(
            "SELECT text, program, content FROM segment \
             WHERE tenant = ?1 AND class = ?2 AND attempt = ?3 ORDER BY sequence",
        )?;
        let mut rows = rows.query(params![tenant, class, attempt.bytes()])?;
        let mut whole: Option<(String, String, Digest)> = None;
        while let Some(row) = rows.next()? {
            let (program, content) = (row.get(1)?, Digest::of_bytes(fixed(row, 2)?));
            let mut text = whole.map_or_else(String::new, |(text, ..)| text);
            text.push_str(row.get_ref(0)?.as_str().map_err(rusqlite::Error::from)?);
            whole = Some((text, program, content));
        }
        Ok(whole)
    }

    /// Finished attempts that were not yet done again with this program and content, the oldest first; also those at jobs
    /// that were verified before what that shows was kept.
    ///
    /// # Errors
    /// What the database says.
    pub fn to_verify(&self, program: &str, content: Digest) -> Result<Vec<AttemptId>, StoreError> {
        let (tenant, class) = self.ours();
        let mut rows = self.connection.prepare_cached(
            "SELECT a.attempt FROM attempt a WHERE a.tenant = ?1 AND a.class = ?2 AND a.closed AND NOT EXISTS \
             (SELECT 1 FROM verdict v WHERE v.tenant = a.tenant AND v.class = a.class AND v.attempt = a.attempt \
              AND v.program = ?3 AND v.content = ?4 AND (v.verdict NOT LIKE '{\"Verified\"%' OR EXISTS \
              (SELECT 1 FROM attempt_result r WHERE r.tenant = v.tenant AND r.class = v.class \
               AND r.attempt = v.attempt AND r.program = v.program AND r.content = v.content) OR EXISTS \
              (SELECT 1 FROM segment s WHERE s.tenant = v.tenant AND s.class = v.class AND s.attempt = v.attempt \
               AND s.sequence = 0 AND substr(s.text, 1, length(?5)) = ?5))) \
             ORDER BY a.last_ms, a.attempt",
        )?;
        let values = params![tenant, class, program, content.bytes(), DRILL_ROUND_BEGINS];
        let attempts = rows.query_map(values, |row| Ok(AttemptId::of_bytes(fixed(row, 0)?)))?;
        Ok(attempts.collect::<Result<_, _>>()?)
    }

    /// Keeps what doing an attempt again with this program and content has shown; the first verdict stays. Whether this is
    /// the first.
    ///
    /// # Errors
    /// What the database says.
    pub fn judge(
        &self,
        attempt: AttemptId,
        (program, content): (&str, Digest),
        verdict: &Verdict,
        now: Moment,
    ) -> Result<bool, StoreError> {
        let (tenant, class) = self.ours();
        let verdict = serde_json::to_string(verdict)?;
        let added = self.connection.execute(
            "INSERT INTO verdict (tenant, class, attempt, program, content, verdict, at_ms) \
             VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7) ON CONFLICT DO NOTHING",
            params![
                tenant,
                class,
                attempt.bytes(),
                program,
                content.bytes(),
                verdict,
                now.0
            ],
        )?;
        Ok(added == 1)
    }
}
