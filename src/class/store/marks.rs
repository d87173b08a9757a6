//! What instructors change about marks, and what stands for learners' names.

use super::{Store, StoreError};
use crate::moment::Moment;
use detent_gradebook::{ClassLearner, InstructorMark};
use rusqlite::params;
use serde::Serialize;
use std::collections::BTreeMap;

/// Who changes marks: a class on one computer knows one instructor's key and no names behind it.
const INSTRUCTOR: &str = "instructor";

/// What an instructor wants a learner's job to have.
#[derive(Clone, Debug, PartialEq)]
pub struct MarkRequest {
    /// Whose seat.
    pub seat: u32,
    /// Which job.
    pub job: String,
    /// Number of the last change that the instructor saw; 0 for none.
    pub version: u32,
    /// Points in the place of those that are computed; none for those.
    pub points: Option<f64>,
    /// The comment; empty for none.
    pub comment: String,
    /// Why the points change.
    pub reason: String,
}

/// What of a mark was changed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum MarkPart {
    /// The points.
    Mark,
    /// The comment.
    Comment,
}

impl MarkPart {
    const ALL: [MarkPart; 2] = [MarkPart::Mark, MarkPart::Comment];

    /// As the table has it, and the record of a learner.
    pub const fn name(self) -> &'static str {
        match self {
            MarkPart::Mark => "mark",
            MarkPart::Comment => "comment",
        }
    }

    fn named(name: &str) -> Result<MarkPart, StoreError> {
        let mut all = MarkPart::ALL.into_iter();
        let found = all.find(|part| part.name() == name);
        found.ok_or_else(|| StoreError::Row(name.to_owned()))
    }
}

/// One line of what instructors changed.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct MarkChange {
    /// Its number, from 1.
    pub number: u32,
    /// Whose seat.
    pub seat: u32,
    /// Which job.
    pub job: String,
    /// What of it.
    pub what: MarkPart,
    /// Who.
    pub who: String,
    /// When, ms since 1970, UTC.
    pub at_ms: u64,
    /// What stood there; of a mark what was shown, empty for none.
    pub from: String,
    /// What stands there from then on; empty for the computed mark, or no comment.
    pub to: String,
    /// Why.
    pub reason: String,
}

/// What became of a change.
#[derive(Clone, Debug, PartialEq)]
pub enum Changed {
    /// It is kept; this is the number of the last change now.
    Kept(u32),
    /// The points differ, and no reason was given. Nothing was written.
    NoReason,
    /// Somebody else had changed it meanwhile; so it stands. Nothing was written.
    Stale(InstructorMark),
}

fn points_text(points: Option<f64>) -> String {
    points.map(|points| points.to_string()).unwrap_or_default()
}

fn points_of(text: &str) -> Result<Option<f64>, StoreError> {
    match text {
        "" => Ok(None),
        text => text
            .parse()
            .map(Some)
            .map_err(|_| StoreError::Row(text.to_owned())),
    }
}

impl Store<'_> {
    /// Every change, the oldest first; those of one seat where it is named.
    ///
    /// # Errors
    /// What the database says.
    pub fn mark_changes(&self, seat: Option<u32>) -> Result<Vec<MarkChange>, StoreError> {
        let (tenant, class) = self.ours();
        let mut rows = self.connection.prepare_cached(
            "SELECT number, seat, job, what, who, at_ms, from_value, to_value, reason FROM mark_change \
             WHERE tenant = ?1 AND class = ?2 AND (?3 IS NULL OR seat = ?3) ORDER BY number",
        )?;
        let mut rows = rows.query(params![tenant, class, seat])?;
        let mut changes = Vec::new();
        while let Some(row) = rows.next()? {
            changes.push(MarkChange {
                number: row.get(0)?,
                seat: row.get(1)?,
                job: row.get(2)?,
                what: MarkPart::named(&row.get::<_, String>(3)?)?,
                who: row.get(4)?,
                at_ms: row.get(5)?,
                from: row.get(6)?,
                to: row.get(7)?,
                reason: row.get(8)?,
            });
        }
        Ok(changes)
    }

    /// What instructors have said, by seat and job; of one seat where it is named.
    ///
    /// # Errors
    /// What the database says.
    pub fn instructor_marks(
        &self,
        seat: Option<u32>,
    ) -> Result<BTreeMap<(u32, String), InstructorMark>, StoreError> {
        let mut marks: BTreeMap<(u32, String), InstructorMark> = BTreeMap::new();
        for change in self.mark_changes(seat)? {
            let mark = marks.entry((change.seat, change.job)).or_default();
            mark.version = change.number;
            match change.what {
                MarkPart::Mark => {
                    mark.points = points_of(&change.to)?;
                    mark.changed_ms = mark.points.map(|_| change.at_ms);
                }
                MarkPart::Comment => mark.comment = change.to,
            }
        }
        Ok(marks)
    }

    /// An instructor changes a mark, its comment or both; what differs is added to what was changed before. `computed` are
    /// the points that are shown without a change.
    ///
    /// # Errors
    /// What the database says.
    pub fn change_mark(
        &self,
        request: &MarkRequest,
        computed: Option<f64>,
        now: Moment,
    ) -> Result<Changed, StoreError> {
        let key = (request.seat, request.job.clone());
        let marks = self.instructor_marks(Some(request.seat))?;
        let standing = marks.get(&key).cloned().unwrap_or_default();
        if standing.version != request.version {
            return Ok(Changed::Stale(standing));
        }
        if standing.points != request.points && request.reason.is_empty() {
            return Ok(Changed::NoReason);
        }
        let mut version = standing.version;
        if standing.points != request.points {
            let shown = points_text(standing.points.or(computed));
            let to = points_text(request.points);
            version = self.add_change(request, MarkPart::Mark, (&shown, &to), now)?;
        }
        if standing.comment != request.comment {
            let change = (standing.comment.as_str(), request.comment.as_str());
            version = self.add_change(request, MarkPart::Comment, change, now)?;
        }
        Ok(Changed::Kept(version))
    }

    fn add_change(
        &self,
        request: &MarkRequest,
        what: MarkPart,
        (from, to): (&str, &str),
        now: Moment,
    ) -> Result<u32, StoreError> {
        let (tenant, class) = self.ours();
        let number = self.connection.query_row(
            "INSERT INTO mark_change (tenant, class, number, seat, job, what, who, at_ms, from_value, to_value, reason) \
             VALUES (?1, ?2, (SELECT coalesce(max(number), 0) + 1 FROM mark_change WHERE tenant = ?1 AND class = ?2), \
             ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10) RETURNING number",
            params![
                tenant,
                class,
                request.seat,
                request.job,
                what.name(),
                INSTRUCTOR,
                now.0,
                from,
                to,
                request.reason
            ],
            |row| row.get(0),
        )?;
        Ok(number)
    }

    /// Gives every seat that has none a pseudonym out of `draw`, which is asked again where one is taken.
    ///
    /// # Errors
    /// What the database says.
    pub fn give_pseudonyms(&self, mut draw: impl FnMut() -> String) -> Result<(), StoreError> {
        let (tenant, class) = self.ours();
        let mut rows = self.connection.prepare_cached(
            "SELECT s.seat FROM seat s WHERE s.tenant = ?1 AND s.class = ?2 AND NOT EXISTS \
             (SELECT 1 FROM pseudonym p WHERE p.tenant = s.tenant AND p.class = s.class AND p.seat = s.seat) \
             ORDER BY s.seat",
        )?;
        let without = rows.query_map(params![tenant, class], |row| row.get(0))?;
        let without: Vec<u32> = without.collect::<Result<_, _>>()?;
        for seat in without {
            let mut is_given = false;
            while !is_given {
                let added = self.connection.execute(
                    "INSERT INTO pseudonym (tenant, class, seat, pseudonym) VALUES (?1, ?2, ?3, ?4) \
                     ON CONFLICT DO NOTHING",
                    params![tenant, class, seat, draw()],
                )?;
                is_given = added == 1;
            }
        }
        Ok(())
    }

    /// Every learner with a pseudonym, in the order of the seats.
    ///
    /// # Errors
    /// What the database says.
    pub fn learners(&self) -> Result<Vec<ClassLearner>, StoreError> {
        let (tenant, class) = self.ours();
        let mut rows = self.connection.prepare_cached(
            "SELECT s.seat, s.name, p.pseudonym FROM seat s JOIN pseudonym p \
             ON p.tenant = s.tenant AND p.class = s.class AND p.seat = s.seat \
             WHERE s.tenant = ?1 AND s.class = ?2 ORDER BY s.seat",
        )?;
        let learners = rows.query_map(params![tenant, class], |row| {
            Ok(ClassLearner {
                seat: row.get(0)?,
                name: row.get(1)?,
                pseudonym: row.get(2)?,
            })
        })?;
        Ok(learners.collect::<Result<_, _>>()?)
    }
}
