//! Seats, their tokens, and what the teacher says to them.

use super::{Store, StoreError};
use crate::moment::Moment;
use crate::name::name_key;
use detent_class_protocol::{Digest, JoinRefusal, SecretToken};
use rusqlite::{OptionalExtension, Row, params};
use std::time::Duration;

/// How long a word holds that the teacher gives.
const WORD_HOLDS: Duration = Duration::from_secs(15 * 60);
/// Most devices in one seat at a time: the one that was taken first loses it.
const MOST_TOKENS: i64 = 4;

/// One seat as it is kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KeptSeat {
    /// Its number, from 1.
    pub seat: u32,
    /// Who sits there.
    pub name: String,
    /// When somebody joined, if somebody has.
    pub joined: Option<Moment>,
}

/// Something that the teacher said.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KeptNotice {
    /// Its number, from 1.
    pub number: u32,
    /// To which seat; to all where there is none.
    pub seat: Option<u32>,
    /// What.
    pub text: String,
}

/// The words that whoever joins gives.
pub struct Words<'a> {
    /// The name, as it is shown.
    pub name: &'a str,
    /// The teacher's word for coming back.
    pub word: Option<&'a str>,
}

/// What is kept of a teacher's word: it is said aloud and typed in, so that case and spaces do not count.
fn word_digest(word: &str) -> Digest {
    let plain: String = word
        .chars()
        .filter(|c| c.is_alphanumeric())
        .flat_map(char::to_lowercase)
        .collect();
    Digest::of_parts(&[b"word", plain.as_bytes()])
}

fn seat_of(row: &Row<'_>) -> rusqlite::Result<KeptSeat> {
    Ok(KeptSeat {
        seat: row.get(0)?,
        name: row.get(1)?,
        joined: row.get::<_, Option<u64>>(2)?.map(Moment),
    })
}

impl Store<'_> {
    /// Every seat, in order.
    ///
    /// # Errors
    /// What the database says.
    pub fn seats(&self) -> Result<Vec<KeptSeat>, StoreError> {
        let (tenant, class) = self.ours();
        let mut rows = self.connection.prepare_cached(
            "SELECT seat, name, joined_ms FROM seat WHERE tenant = ?1 AND class = ?2 ORDER BY seat",
        )?;
        let seats = rows.query_map(params![tenant, class], seat_of)?;
        Ok(seats.collect::<Result<_, _>>()?)
    }

    /// Whether there is this seat.
    ///
    /// # Errors
    /// What the database says.
    pub fn has_seat(&self, seat: u32) -> Result<bool, StoreError> {
        let (tenant, class) = self.ours();
        let there = (self.connection)
            .prepare_cached("SELECT 1 FROM seat WHERE tenant = ?1 AND class = ?2 AND seat = ?3")?
            .exists(params![tenant, class, seat])?;
        Ok(there)
    }

    /// The seat that this token opens.
    ///
    /// # Errors
    /// What the database says.
    pub fn seat_of_token(&self, token: &SecretToken) -> Result<Option<u32>, StoreError> {
        let (tenant, class) = self.ours();
        let seat = (self.connection)
            .prepare_cached(
                "SELECT seat FROM token WHERE tenant = ?1 AND class = ?2 AND token = ?3",
            )?
            .query_row(params![tenant, class, token.digest().bytes()], |row| {
                row.get(0)
            })
            .optional()?;
        Ok(seat)
    }

    /// Whether this is the teacher's token.
    ///
    /// # Errors
    /// What the database says.
    pub fn is_teacher(&self, token: &SecretToken) -> Result<bool, StoreError> {
        let (tenant, class) = self.ours();
        let kept: Option<Vec<u8>> = (self.connection)
            .prepare_cached("SELECT teacher_token FROM class WHERE tenant = ?1 AND class = ?2")?
            .query_row(params![tenant, class], |row| row.get(0))
            .optional()?;
        // Digests are compared: how long that takes tells nothing about the token.
        Ok(kept.as_deref() == Some(token.digest().bytes()))
    }

    /// Adds names to the list; those that are there already are left as they are. How many were added.
    ///
    /// # Errors
    /// What the database says.
    pub fn add_names(&self, names: &[String], most: u32) -> Result<u32, StoreError> {
        let mut added = 0;
        for name in names {
            if self.seat_named(name)?.is_none() && self.new_seat(name, None, most)?.is_some() {
                added += 1;
            }
        }
        Ok(added)
    }

    /// A new seat for this name, unless all are taken.
    fn new_seat(
        &self,
        name: &str,
        joined: Option<Moment>,
        most: u32,
    ) -> Result<Option<u32>, StoreError> {
        let (tenant, class) = self.ours();
        let last: u32 = self.connection.query_row(
            "SELECT coalesce(max(seat), 0) FROM seat WHERE tenant = ?1 AND class = ?2",
            params![tenant, class],
            |row| row.get(0),
        )?;
        if last >= most {
            return Ok(None);
        }
        let joined = joined.map(|joined| joined.0);
        self.connection.execute(
            "INSERT INTO seat (tenant, class, seat, name, name_key, joined_ms) VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
            params![tenant, class, last + 1, name, name_key(name), joined],
        )?;
        Ok(Some(last + 1))
    }

    /// The seat of this name; what is kept of the word for it, and until when that holds.
    #[expect(clippy::type_complexity, reason = "one row, taken apart at once")]
    fn seat_named(
        &self,
        name: &str,
    ) -> Result<Option<(KeptSeat, Option<Vec<u8>>, Option<Moment>)>, StoreError> {
        let (tenant, class) = self.ours();
        let row = (self.connection)
            .prepare_cached(
                "SELECT seat, name, joined_ms, word, word_until_ms FROM seat \
                 WHERE tenant = ?1 AND class = ?2 AND name_key = ?3",
            )?
            .query_row(params![tenant, class, name_key(name)], |row| {
                Ok((
                    seat_of(row)?,
                    row.get(3)?,
                    row.get::<_, Option<u64>>(4)?.map(Moment),
                ))
            })
            .optional()?;
        Ok(row)
    }

    /// Somebody joins with this name and gets this token; the seat, as it is kept from then on.
    ///
    /// # Errors
    /// What the database says.
    pub fn join(
        &self,
        words: &Words<'_>,
        token: &SecretToken,
        (only_listed, most): (bool, u32),
        now: Moment,
    ) -> Result<Result<KeptSeat, JoinRefusal>, StoreError> {
        let (tenant, class) = self.ours();
        let joined = match self.seat_named(words.name)? {
            None if only_listed => return Ok(Err(JoinRefusal::NotOnList)),
            None => match self.new_seat(words.name, Some(now), most)? {
                Some(seat) => KeptSeat {
                    seat,
                    name: words.name.to_owned(),
                    joined: Some(now),
                },
                None => return Ok(Err(JoinRefusal::Full)),
            },
            Some((kept, word, until)) => {
                match (words.word, kept.joined) {
                    (None, None) => {}
                    (None, Some(_)) => return Ok(Err(JoinRefusal::NameTaken)),
                    (Some(given), _) => {
                        let holds = until.is_some_and(|until| now <= until);
                        if !holds || word.as_deref() != Some(word_digest(given).bytes()) {
                            return Ok(Err(JoinRefusal::WrongWord));
                        }
                    }
                }
                self.connection.execute(
                    "UPDATE seat SET joined_ms = coalesce(joined_ms, ?4), word = NULL, word_until_ms = NULL \
                     WHERE tenant = ?1 AND class = ?2 AND seat = ?3",
                    params![tenant, class, kept.seat, now.0],
                )?;
                KeptSeat {
                    joined: kept.joined.or(Some(now)),
                    ..kept
                }
            }
        };
        self.connection.execute(
            "INSERT INTO token (tenant, class, token, seat, since_ms) VALUES (?1, ?2, ?3, ?4, ?5)",
            params![tenant, class, token.digest().bytes(), joined.seat, now.0],
        )?;
        self.connection.execute(
            "DELETE FROM token WHERE tenant = ?1 AND class = ?2 AND seat = ?3 AND token NOT IN \
             (SELECT token FROM token WHERE tenant = ?1 AND class = ?2 AND seat = ?3 \
              ORDER BY since_ms DESC, token LIMIT ?4)",
            params![tenant, class, joined.seat, MOST_TOKENS],
        )?;
        Ok(Ok(joined))
    }

    /// The teacher gives a word with which whoever says it comes back to this seat, once. Whether there is such a seat.
    ///
    /// # Errors
    /// What the database says.
    pub fn give_word(&self, seat: u32, word: &str, now: Moment) -> Result<bool, StoreError> {
        let (tenant, class) = self.ours();
        let changed = self.connection.execute(
            "UPDATE seat SET word = ?4, word_until_ms = ?5 WHERE tenant = ?1 AND class = ?2 AND seat = ?3",
            params![tenant, class, seat, word_digest(word).bytes(), now.after(WORD_HOLDS).0],
        )?;
        Ok(changed == 1)
    }

    /// The teacher says something to a seat or to all; its number.
    ///
    /// # Errors
    /// What the database says.
    pub fn say(&self, seat: Option<u32>, text: &str, now: Moment) -> Result<u32, StoreError> {
        let (tenant, class) = self.ours();
        let number: u32 = self.connection.query_row(
            "INSERT INTO notice (tenant, class, number, seat, text, at_ms) VALUES (?1, ?2, \
             (SELECT coalesce(max(number), 0) + 1 FROM notice WHERE tenant = ?1 AND class = ?2), ?3, ?4, ?5) \
             RETURNING number",
            params![tenant, class, seat, text, now.0],
            |row| row.get(0),
        )?;
        Ok(number)
    }

    /// What was said to this seat and to all, the newest last; at most the last 20.
    ///
    /// # Errors
    /// What the database says.
    pub fn notices(&self, seat: u32) -> Result<Vec<KeptNotice>, StoreError> {
        let (tenant, class) = self.ours();
        let mut rows = self.connection.prepare_cached(
            "SELECT number, seat, text FROM notice \
             WHERE tenant = ?1 AND class = ?2 AND (seat IS NULL OR seat = ?3) ORDER BY number DESC LIMIT 20",
        )?;
        let notices = rows.query_map(params![tenant, class, seat], |row| {
            Ok(KeptNotice {
                number: row.get(0)?,
                seat: row.get(1)?,
                text: row.get(2)?,
            })
        })?;
        let mut notices: Vec<KeptNotice> = notices.collect::<Result<_, _>>()?;
        notices.reverse();
        Ok(notices)
    }
}
