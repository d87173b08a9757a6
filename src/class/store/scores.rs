//! What doing attempts again has shown, in full.

use super::attempts::fixed;
use super::{Store, StoreError};
use crate::moment::Moment;
use detent_class_protocol::{AttemptId, Digest};
use detent_gradebook::{AttemptResult, GradedAttempt};
use rusqlite::params;

impl Store<'_> {
    /// Keeps what doing an attempt again with this program and content has shown; what is there already stays. Whether this
    /// is the first, of an attempt that is still there.
    ///
    /// # Errors
    /// What the database says.
    pub fn keep_result(
        &self,
        attempt: AttemptId,
        (program, content): (&str, Digest),
        result: &AttemptResult,
        now: Moment,
    ) -> Result<bool, StoreError> {
        let (tenant, class) = self.ours();
        let result = serde_json::to_string(result)?;
        let added = self.connection.execute(
            "INSERT INTO attempt_result (tenant, class, attempt, program, content, result, at_ms) \
             SELECT tenant, class, attempt, ?4, ?5, ?6, ?7 FROM attempt \
             WHERE tenant = ?1 AND class = ?2 AND attempt = ?3 ON CONFLICT DO NOTHING",
            params![
                tenant,
                class,
                attempt.bytes(),
                program,
                content.bytes(),
                result,
                now.0
            ],
        )?;
        Ok(added == 1)
    }

    /// What doing this attempt again has shown last, if it was verified.
    ///
    /// # Errors
    /// What the database says.
    pub fn result(&self, attempt: AttemptId) -> Result<Option<AttemptResult>, StoreError> {
        let attempts = self.graded("AND a.attempt = ?3", params![attempt.bytes()])?;
        Ok(attempts.into_iter().next().map(|graded| graded.result))
    }

    /// Every verified attempt with what it has shown last, seat by seat.
    ///
    /// # Errors
    /// What the database says.
    pub fn graded_attempts(&self) -> Result<Vec<GradedAttempt>, StoreError> {
        self.graded("", params![])
    }

    /// The verified attempts of one seat.
    ///
    /// # Errors
    /// As [`Self::graded_attempts`].
    pub fn graded_attempts_of(&self, seat: u32) -> Result<Vec<GradedAttempt>, StoreError> {
        self.graded("AND a.seat = ?3", params![seat])
    }

    fn graded(
        &self,
        which: &str,
        more: &[&dyn rusqlite::ToSql],
    ) -> Result<Vec<GradedAttempt>, StoreError> {
        let (tenant, class) = self.ours();
        let mut rows = self.connection.prepare_cached(&format!(
            "SELECT a.attempt, a.seat, a.begun_ms, a.last_ms, (SELECT r.result FROM attempt_result r \
             WHERE r.tenant = a.tenant AND r.class = a.class AND r.attempt = a.attempt \
             ORDER BY r.at_ms DESC LIMIT 1) AS result FROM attempt a \
             WHERE a.tenant = ?1 AND a.class = ?2 {which} AND result IS NOT NULL ORDER BY a.seat, a.begun_ms, a.attempt"
        ))?;
        let mut values: Vec<&dyn rusqlite::ToSql> = vec![&tenant, &class];
        values.extend(more);
        let mut rows = rows.query(&values[..])?;
        let mut found = Vec::new();
        while let Some(row) = rows.next()? {
            found.push(GradedAttempt {
                seat: row.get(1)?,
                attempt: AttemptId::of_bytes(fixed(row, 0)?).to_string(),
                begun_ms: row.get(2)?,
                finished_ms: row.get(3)?,
                result: serde_json::from_str(
                    row.get_ref(4)?.as_str().map_err(rusqlite::Error::from)?,
                )?,
            });
        }
        Ok(found)
    }
}
