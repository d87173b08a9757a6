//! Everything that is kept of one learner: to be handed out, and to be erased.

#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    reason = "copies of the database are files beside it"
)]

use super::attempts::fixed;
use super::{Database, MarkChange, PATIENCE, Store, StoreError};
use detent_class_protocol::{AttemptId, Digest};
use rusqlite::types::ValueRef;
use rusqlite::{Connection, OptionalExtension, params};
use serde::Serialize;
use serde_json::{Map, Value};
use std::collections::BTreeMap;
use std::path::PathBuf;

/// Everything that is kept of one learner but secrets: tokens and words are kept as digests, which tell nothing. Moments
/// are ms since 1970, UTC.
#[derive(Debug, Serialize)]
pub struct LearnerRecord {
    /// Number of the seat.
    pub seat: u32,
    /// Name as it was typed.
    pub name: String,
    /// What stands for the name in exports.
    pub pseudonym: Option<String>,
    /// When somebody joined.
    pub joined_ms: Option<u64>,
    /// When each device that has the seat got it.
    pub devices_since_ms: Vec<u64>,
    /// What was said to this seat alone.
    pub notices: Vec<KeptMessage>,
    /// Attempts, the oldest first.
    pub attempts: Vec<AttemptRecord>,
    /// What instructors changed about marks.
    pub mark_changes: Vec<MarkChange>,
    /// Rows of every other table that knows of this seat, by its name; bytes are hexadecimal.
    pub others: BTreeMap<String, Vec<Map<String, Value>>>,
}

/// A message.
#[derive(Debug, Serialize)]
pub struct KeptMessage {
    /// When.
    pub at_ms: u64,
    /// What.
    pub text: String,
}

/// An attempt with all that is kept of it.
#[derive(Debug, Serialize)]
pub struct AttemptRecord {
    /// Which one.
    pub attempt: AttemptId,
    /// When its first segment came.
    pub begun_ms: u64,
    /// When its last one did.
    pub last_ms: u64,
    /// Whether its end is there.
    pub closed: bool,
    /// Its text.
    pub text: String,
    /// What doing it again has shown, each time.
    pub verdicts: Vec<JudgedRecord>,
}

/// What doing an attempt again with one program and content has shown.
#[derive(Debug, Serialize)]
pub struct JudgedRecord {
    /// Version of the program.
    pub program: String,
    /// The content.
    pub content: Digest,
    /// When.
    pub at_ms: u64,
    /// The verdict.
    pub verdict: Value,
    /// All that it showed, of a verified attempt.
    pub result: Option<Value>,
}

/// Tables with a seat whose rows have a type of their own in [`LearnerRecord`].
const TYPED: [&str; 6] = [
    "attempt",
    "mark_change",
    "notice",
    "pseudonym",
    "seat",
    "token",
];

impl Store<'_> {
    /// Everything that is kept of the learner in this seat; none where there is none.
    ///
    /// # Errors
    /// What the database says.
    pub fn learner_record(&self, seat: u32) -> Result<Option<LearnerRecord>, StoreError> {
        let (tenant, class) = self.ours();
        let row = (self.connection)
            .prepare_cached(
                "SELECT s.name, s.joined_ms, (SELECT p.pseudonym FROM pseudonym p WHERE p.tenant = s.tenant \
                 AND p.class = s.class AND p.seat = s.seat) FROM seat s \
                 WHERE s.tenant = ?1 AND s.class = ?2 AND s.seat = ?3",
            )?
            .query_row(params![tenant, class, seat], |row| {
                Ok((row.get(0)?, row.get(1)?, row.get(2)?))
            })
            .optional()?;
        let Some((name, joined_ms, pseudonym)) = row else {
            return Ok(None);
        };
        let mut devices = self.connection.prepare_cached(
            "SELECT since_ms FROM token WHERE tenant = ?1 AND class = ?2 AND seat = ?3 ORDER BY since_ms",
        )?;
        let devices = devices.query_map(params![tenant, class, seat], |row| row.get(0))?;
        let mut notices = self.connection.prepare_cached(
            "SELECT at_ms, text FROM notice WHERE tenant = ?1 AND class = ?2 AND seat = ?3 ORDER BY number",
        )?;
        let notices = notices.query_map(params![tenant, class, seat], |row| {
            Ok(KeptMessage {
                at_ms: row.get(0)?,
                text: row.get(1)?,
            })
        })?;
        let mut attempts = Vec::new();
        for kept in self.attempts_of(seat)?.into_iter().rev() {
            let attempt = kept.status.attempt;
            attempts.push(AttemptRecord {
                attempt,
                begun_ms: kept.begun.0,
                last_ms: kept.last.0,
                closed: kept.status.closed,
                text: self
                    .text(attempt)?
                    .map(|(text, ..)| text)
                    .unwrap_or_default(),
                verdicts: self.judged_records(attempt)?,
            });
        }
        let mut others = BTreeMap::new();
        for table in self.tables_with("seat")? {
            if !TYPED.contains(&table.as_str()) {
                let rows = self.rows_of_seat(&table, seat)?;
                others.insert(table, rows);
            }
        }
        Ok(Some(LearnerRecord {
            seat,
            name,
            pseudonym,
            joined_ms,
            devices_since_ms: devices.collect::<Result<_, _>>()?,
            notices: notices.collect::<Result<_, _>>()?,
            attempts,
            mark_changes: self.mark_changes(Some(seat))?,
            others,
        }))
    }

    fn judged_records(&self, attempt: AttemptId) -> Result<Vec<JudgedRecord>, StoreError> {
        let (tenant, class) = self.ours();
        let mut rows = self.connection.prepare_cached(
            "SELECT v.program, v.content, v.at_ms, v.verdict, (SELECT r.result FROM attempt_result r \
             WHERE r.tenant = v.tenant AND r.class = v.class AND r.attempt = v.attempt AND r.program = v.program \
             AND r.content = v.content) FROM verdict v \
             WHERE v.tenant = ?1 AND v.class = ?2 AND v.attempt = ?3 ORDER BY v.at_ms",
        )?;
        let mut rows = rows.query(params![tenant, class, attempt.bytes()])?;
        let mut records = Vec::new();
        while let Some(row) = rows.next()? {
            let result: Option<String> = row.get(4)?;
            records.push(JudgedRecord {
                program: row.get(0)?,
                content: Digest::of_bytes(fixed(row, 1)?),
                at_ms: row.get(2)?,
                verdict: serde_json::from_str(&row.get::<_, String>(3)?)?,
                result: (result.as_deref().map(serde_json::from_str)).transpose()?,
            });
        }
        Ok(records)
    }

    /// Tables that have a column of this name, whoever added them.
    fn tables_with(&self, column: &str) -> Result<Vec<String>, StoreError> {
        let mut rows = self.connection.prepare_cached(
            "SELECT t.name FROM sqlite_schema t JOIN pragma_table_info(t.name) c ON c.name = ?1 \
             WHERE t.type = 'table' ORDER BY t.name",
        )?;
        let names = rows.query_map(params![column], |row| row.get(0))?;
        Ok(names.collect::<Result<_, _>>()?)
    }

    /// The rows of this seat in a table that has no type of its own here.
    fn rows_of_seat(&self, table: &str, seat: u32) -> Result<Vec<Map<String, Value>>, StoreError> {
        let (tenant, class) = self.ours();
        // The name comes from the database's own list.
        let mut statement = self.connection.prepare(&format!(
            "SELECT * FROM {table} WHERE tenant = ?1 AND class = ?2 AND seat = ?3"
        ))?;
        let columns: Vec<String> = (statement.column_names()).map(str::to_owned).collect();
        let mut rows = statement.query(params![tenant, class, seat])?;
        let mut found = Vec::new();
        while let Some(row) = rows.next()? {
            let mut values = Map::new();
            for (place, column) in columns.iter().enumerate() {
                let value = match row.get_ref(place)? {
                    ValueRef::Null => Value::Null,
                    ValueRef::Integer(number) => number.into(),
                    ValueRef::Real(number) => number.into(),
                    ValueRef::Text(text) => String::from_utf8_lossy(text).into(),
                    ValueRef::Blob(bytes) => {
                        let hex: String = bytes.iter().map(|byte| format!("{byte:02x}")).collect();
                        hex.into()
                    }
                };
                values.insert(column.clone(), value);
            }
            found.push(values);
        }
        Ok(found)
    }

    /// Takes every row of the learner in this seat out, whatever table it is in; whether there was one. [`Eraser::wipe`]
    /// takes the bytes.
    ///
    /// # Errors
    /// What the database says.
    pub fn erase_learner(&self, seat: u32) -> Result<bool, StoreError> {
        let (tenant, class) = self.ours();
        let was_there = self.has_seat(seat)?;
        let of_seat = self.tables_with("seat")?;
        // What belongs to attempts goes before they do: it is found by them.
        let of_attempts = self.tables_with("attempt")?;
        for table in of_attempts.iter().filter(|table| !of_seat.contains(table)) {
            self.connection.execute(
                &format!(
                    "DELETE FROM {table} WHERE tenant = ?1 AND class = ?2 AND attempt IN \
                     (SELECT attempt FROM attempt WHERE tenant = ?1 AND class = ?2 AND seat = ?3)"
                ),
                params![tenant, class, seat],
            )?;
        }
        for table in of_seat {
            self.connection.execute(
                &format!("DELETE FROM {table} WHERE tenant = ?1 AND class = ?2 AND seat = ?3"),
                params![tenant, class, seat],
            )?;
        }
        Ok(was_there)
    }
}

/// Takes out of the files what was deleted from the tables.
#[derive(Clone, Debug)]
pub struct Eraser {
    path: PathBuf,
}

/// The folder beside the database where copies of it are kept.
pub const COPIES: &str = "copies";

impl Database {
    /// What takes deleted rows out of this database's files.
    pub fn eraser(&self) -> Eraser {
        Eraser {
            path: self.path.clone(),
        }
    }
}

impl Eraser {
    /// Writes the database anew without what was deleted, empties its log, and deletes every copy of it: they hold what was
    /// deleted. Others may read and write meanwhile, and wait a moment.
    ///
    /// # Errors
    /// What the database or the system says; the log could not be emptied.
    pub fn wipe(&self) -> Result<(), StoreError> {
        self.delete_copies()?;
        let connection = Connection::open(&self.path)?;
        connection.busy_timeout(PATIENCE)?;
        // What is overwritten is overwritten with zeros.
        connection.pragma_update(None, "secure_delete", true)?;
        connection.execute_batch("VACUUM")?;
        let is_busy: bool =
            connection.query_row("PRAGMA wal_checkpoint(TRUNCATE)", (), |row| row.get(0))?;
        match is_busy {
            false => Ok(()),
            true => Err(StoreError::Busy),
        }
    }

    fn delete_copies(&self) -> Result<(), StoreError> {
        let folder = self.path.with_file_name(COPIES);
        let system = |error: std::io::Error| StoreError::System {
            file: folder.clone(),
            reason: error.to_string(),
        };
        let entries = match std::fs::read_dir(&folder) {
            Ok(entries) => entries,
            Err(error) if error.kind() == std::io::ErrorKind::NotFound => return Ok(()),
            Err(error) => return Err(system(error)),
        };
        for entry in entries {
            let path = entry.map_err(system)?.path();
            if path.is_file() {
                std::fs::remove_file(&path).map_err(system)?;
            }
        }
        Ok(())
    }
}
