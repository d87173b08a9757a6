//! The scenarios of sealed jobs.

use super::{Store, StoreError};
use crate::drawing::DrawnJob;
use crate::moment::Moment;
use rusqlite::params;

impl Store<'_> {
    /// Keeps a scenario that was drawn for this seat; the first one for a job stays.
    ///
    /// # Errors
    /// What the database says.
    pub fn keep_drawn(&self, seat: u32, drawn: &DrawnJob, now: Moment) -> Result<(), StoreError> {
        let (tenant, class) = self.ours();
        self.connection.execute(
            "INSERT INTO sealed_job (tenant, class, seat, job, seed, draft, text, at_ms) \
             VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8) ON CONFLICT DO NOTHING",
            params![
                tenant,
                class,
                seat,
                drawn.job,
                drawn.seed,
                drawn.draft,
                drawn.text,
                now.0
            ],
        )?;
        Ok(())
    }

    /// The scenarios that were drawn for this seat.
    ///
    /// # Errors
    /// What the database says.
    pub fn drawn_of(&self, seat: u32) -> Result<Vec<DrawnJob>, StoreError> {
        let (tenant, class) = self.ours();
        let mut rows = self.connection.prepare_cached(
            "SELECT job, text, seed, draft FROM sealed_job WHERE tenant = ?1 AND class = ?2 AND seat = ?3 ORDER BY job",
        )?;
        let drawn = rows.query_map(params![tenant, class, seat], |row| {
            Ok(DrawnJob {
                job: row.get(0)?,
                text: row.get(1)?,
                seed: row.get(2)?,
                draft: row.get(3)?,
            })
        })?;
        Ok(drawn.collect::<Result<_, _>>()?)
    }

    /// The variants that were drawn: the job, and the number of its draft.
    ///
    /// # Errors
    /// What the database says.
    pub fn drawn_drafts(&self) -> Result<Vec<(String, u64)>, StoreError> {
        let (tenant, class) = self.ours();
        let mut rows = self.connection.prepare_cached(
            "SELECT job, draft FROM sealed_job WHERE tenant = ?1 AND class = ?2 AND draft IS NOT NULL ORDER BY job, draft",
        )?;
        let drafts =
            rows.query_map(params![tenant, class], |row| Ok((row.get(0)?, row.get(1)?)))?;
        Ok(drafts.collect::<Result<_, _>>()?)
    }
}
