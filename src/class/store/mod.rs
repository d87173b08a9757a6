//! What a class keeps, in SQLite.
//!
//! One thread writes ([`Writer`]); each write is answered once it is on the disk. Everything takes the moment as an
//! argument and draws nothing at random, so that a test can do it again.

mod attempts;
mod error;
mod learner_record;
mod marks;
mod place;
mod scores;
mod sealed_jobs;
mod seats;
mod writer;

pub use attempts::{Appended, KeptAttempt, MOST_ATTEMPTS_OF_SEAT};
pub use error::StoreError;
pub use learner_record::{AttemptRecord, COPIES, Eraser, JudgedRecord, KeptMessage, LearnerRecord};
pub use marks::{Changed, MarkChange, MarkPart, MarkRequest};
pub use seats::{KeptNotice, KeptSeat, Words};
pub use writer::{Disk, Ending, Writer};

use super::definition::{ClassDefinition, TeacherStanding};
use super::moment::Moment;
use detent_class_protocol::{JoinCode, SecretToken};
use rusqlite::{Connection, OpenFlags, OptionalExtension, params};
use std::path::{Path, PathBuf};
use std::time::Duration;

/// Layout of the tables, kept in the database's `user_version`.
const LAYOUT: i64 = 2;
/// What each layout adds to the one before it, from the first on.
const LAYOUTS: [&str; LAYOUT as usize] = [include_str!("schema.sql"), include_str!("layout_2.sql")];
/// Marks the database as a class's, in its `application_id`: "DtCl".
const APPLICATION: i64 = 0x4474_436c;
/// How long a statement waits for another program that holds the database.
const PATIENCE: Duration = Duration::from_secs(5);

/// Whose rows are meant.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Scope {
    /// School or district; one computer has one.
    pub tenant: String,
    /// The class.
    pub class: String,
}

/// The rows of one class in an open database.
pub struct Store<'c> {
    connection: &'c Connection,
    scope: &'c Scope,
}

/// A database that no other server has open.
pub struct Database {
    connection: Connection,
    path: PathBuf,
    /// Held as long as the database is open.
    _lock: place::Lock,
}

/// A class as it was kept.
#[derive(Clone, Debug, PartialEq)]
pub struct KeptClass {
    /// What it is.
    pub definition: ClassDefinition,
    /// The code to join with.
    pub code: JoinCode,
}

impl Database {
    /// Opens the database at this path, which is made if it is not there.
    ///
    /// # Errors
    /// [`StoreError::Taken`] where another server has it open, [`StoreError::NetworkShare`] on a disk of another computer,
    /// [`StoreError::Foreign`], [`StoreError::Newer`] or [`StoreError::Damaged`] for a file that is no sound database of a
    /// class.
    pub fn open(path: &Path) -> Result<Database, StoreError> {
        let at = |error| StoreError::of_file(path, &error);
        if let Some(kind) = place::network_share(path) {
            return Err(StoreError::NetworkShare {
                file: path.to_owned(),
                kind,
            });
        }
        let lock = place::lock(path)?;
        let mut connection = Connection::open(path).map_err(at)?;
        connection.busy_timeout(PATIENCE).map_err(at)?;
        let number = |connection: &Connection, name: &str| {
            connection.pragma_query_value(None, name, |row| row.get::<_, i64>(0))
        };
        let application = number(&connection, "application_id").map_err(|error| {
            match error.sqlite_error_code() {
                Some(rusqlite::ErrorCode::NotADatabase) => StoreError::Foreign(path.to_owned()),
                _ => at(error),
            }
        })?;
        let tables: i64 = connection
            .query_row("SELECT count(*) FROM sqlite_schema", (), |row| row.get(0))
            .map_err(at)?;
        match application {
            APPLICATION => {
                let layout = number(&connection, "user_version").map_err(at)?;
                if layout > LAYOUT {
                    return Err(StoreError::Newer(path.to_owned()));
                }
                let found: String = connection
                    .pragma_query_value(None, "quick_check", |row| row.get(0))
                    .map_err(at)?;
                if found != "ok" {
                    return Err(StoreError::Damaged {
                        file: path.to_owned(),
                        found,
                    });
                }
                lay_out(&mut connection, layout).map_err(at)?;
            }
            _ if tables > 0 => return Err(StoreError::Foreign(path.to_owned())),
            _ => {
                connection
                    .pragma_update(None, "journal_mode", "WAL")
                    .map_err(at)?;
                lay_out(&mut connection, 0).map_err(at)?;
            }
        }
        // In WAL mode a commit is only on the disk when the log was synced with it.
        connection
            .pragma_update(None, "synchronous", "FULL")
            .map_err(at)?;
        Ok(Database {
            connection,
            path: path.to_owned(),
            _lock: lock,
        })
    }

    /// What opens further connections, which only read.
    pub fn readers(&self) -> impl Fn() -> Result<Connection, StoreError> + Send + Sync + 'static {
        let path = self.path.clone();
        move || {
            let flags = OpenFlags::SQLITE_OPEN_READ_ONLY | OpenFlags::SQLITE_OPEN_NO_MUTEX;
            let reader = Connection::open_with_flags(&path, flags)?;
            reader.busy_timeout(PATIENCE)?;
            Ok(reader)
        }
    }

    /// The rows of this class.
    pub fn store<'c>(&'c self, scope: &'c Scope) -> Store<'c> {
        Store::new(&self.connection, scope)
    }
}

/// Brings the tables from this layout, 0 for none, to [`LAYOUT`]: all at once or not at all.
fn lay_out(connection: &mut Connection, from: i64) -> rusqlite::Result<()> {
    let missing = usize::try_from(from)
        .ok()
        .and_then(|from| LAYOUTS.get(from..));
    let Some(missing @ [_, ..]) = missing else {
        return Ok(());
    };
    let transaction = connection.transaction()?;
    for layout in missing {
        transaction.execute_batch(layout)?;
    }
    transaction.pragma_update(None, "application_id", APPLICATION)?;
    transaction.pragma_update(None, "user_version", LAYOUT)?;
    transaction.commit()
}

/// A whole copy of the database while it is in use; `to` must not be there.
///
/// # Errors
/// What the system says.
pub fn back_up(reader: &Connection, to: &Path) -> Result<(), StoreError> {
    let name = to.to_str().ok_or_else(|| StoreError::Name(to.to_owned()))?;
    reader.execute("VACUUM INTO ?1", params![name])?;
    Ok(())
}

impl<'c> Store<'c> {
    /// The rows of this class, read or written through this connection.
    pub fn new(connection: &'c Connection, scope: &'c Scope) -> Store<'c> {
        Store { connection, scope }
    }

    fn ours(&self) -> (&str, &str) {
        (&self.scope.tenant, &self.scope.class)
    }

    /// The class, if there is one.
    ///
    /// # Errors
    /// What the database says.
    pub fn class(&self) -> Result<Option<KeptClass>, StoreError> {
        let (tenant, class) = self.ours();
        let row = (self.connection)
            .prepare_cached("SELECT definition, code FROM class WHERE tenant = ?1 AND class = ?2")?
            .query_row(params![tenant, class], |row| {
                Ok((row.get::<_, String>(0)?, row.get::<_, String>(1)?))
            })
            .optional()?;
        let Some((definition, code)) = row else {
            return Ok(None);
        };
        Ok(Some(KeptClass {
            definition: serde_json::from_str(&definition)?,
            code: code.parse().map_err(|_| StoreError::Row(code))?,
        }))
    }

    /// When the class was made.
    ///
    /// # Errors
    /// What the database says; there is none.
    pub fn begun(&self) -> Result<Moment, StoreError> {
        let (tenant, class) = self.ours();
        let begun = (self.connection)
            .prepare_cached("SELECT begun_ms FROM class WHERE tenant = ?1 AND class = ?2")?
            .query_row(params![tenant, class], |row| row.get(0))?;
        Ok(Moment(begun))
    }

    /// Makes the class.
    ///
    /// # Errors
    /// What the database says; there is one already.
    pub fn begin(
        &self,
        definition: &ClassDefinition,
        code: JoinCode,
        teacher: &SecretToken,
        now: Moment,
    ) -> Result<(), StoreError> {
        let (tenant, class) = self.ours();
        let definition = serde_json::to_string(definition)?;
        self.connection.execute(
            "INSERT INTO class (tenant, class, definition, code, teacher_token, begun_ms) VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
            params![tenant, class, definition, code.to_string(), teacher.digest().bytes(), now.0],
        )?;
        Ok(())
    }

    /// From now on this is the teacher's token.
    ///
    /// # Errors
    /// What the database says.
    pub fn give_teacher(&self, token: &SecretToken) -> Result<(), StoreError> {
        let (tenant, class) = self.ours();
        self.connection.execute(
            "UPDATE class SET teacher_token = ?3 WHERE tenant = ?1 AND class = ?2",
            params![tenant, class, token.digest().bytes()],
        )?;
        Ok(())
    }

    /// What the teacher has done about the class last; none where nothing was.
    ///
    /// # Errors
    /// What the database says.
    pub fn standing(&self) -> Result<Option<TeacherStanding>, StoreError> {
        let (tenant, class) = self.ours();
        let last = (self.connection)
            .prepare_cached(
                "SELECT standing FROM standing WHERE tenant = ?1 AND class = ?2 ORDER BY number DESC LIMIT 1",
            )?
            .query_row(params![tenant, class], |row| row.get::<_, String>(0))
            .optional()?;
        match last.as_deref() {
            None => Ok(None),
            Some("open") => Ok(Some(TeacherStanding::Open)),
            Some("paused") => Ok(Some(TeacherStanding::Paused)),
            Some("closed") => Ok(Some(TeacherStanding::Closed)),
            Some(other) => Err(StoreError::Row(other.to_owned())),
        }
    }

    /// The teacher opens, pauses or closes the class.
    ///
    /// # Errors
    /// What the database says.
    pub fn set_standing(&self, standing: TeacherStanding, now: Moment) -> Result<(), StoreError> {
        let (tenant, class) = self.ours();
        let word = match standing {
            TeacherStanding::Open => "open",
            TeacherStanding::Paused => "paused",
            TeacherStanding::Closed => "closed",
        };
        self.connection.execute(
            "INSERT INTO standing (tenant, class, number, standing, at_ms) VALUES (?1, ?2, \
             (SELECT coalesce(max(number), 0) + 1 FROM standing WHERE tenant = ?1 AND class = ?2), ?3, ?4)",
            params![tenant, class, word, now.0],
        )?;
        Ok(())
    }
}
