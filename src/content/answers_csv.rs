//! A learner's answers as a table for other programs.

use super::error::Allowed;
use super::error_words::english;
use chrono::DateTime;
use detent_training::practice::{Answer, Detail, Moment, Skill};
use std::str::FromStr;

/// The answers as comma-separated values (RFC 4180), one a row, moments in UTC (ISO 8601). What a kind of
/// answer does not have stays empty.
pub fn answers_csv(answers: &[Answer]) -> Vec<u8> {
    let mut table = csv::Writer::from_writer(Vec::new());
    let mut put = |row: [String; 11]| {
        // Memory takes every row.
        let _ = table.write_record(row);
    };
    put([
        "at",
        "skill",
        "right",
        "took_s",
        "shown",
        "read",
        "mean_ms",
        "spread_ms",
        "odds",
        "job",
        "kept",
    ]
    .map(str::to_owned));
    for answer in answers {
        let mut row: [String; 11] = Default::default();
        row[0] = date(answer.at).format("%Y-%m-%dT%H:%M:%SZ").to_string();
        row[1] = answer.skill.to_string();
        row[2] = u8::from(answer.right).to_string();
        row[3] = answer.took_s.to_string();
        match &answer.detail {
            Detail::None => {}
            Detail::Lamps { shown, read } => {
                row[4] = format!("{shown:02}");
                row[5] = format!("{read:02}");
            }
            Detail::Rhythm {
                mean_ms,
                spread_ms,
                odds,
            } => {
                row[6] = format!("{mean_ms:.1}");
                row[7] = format!("{spread_ms:.1}");
                row[8] = format!("{odds:.4}");
            }
            Detail::Job { file, kept } => {
                row[9] = file.clone();
                row[10] = format!("{kept:.4}");
            }
        }
        put(row);
    }
    table.into_inner().unwrap_or_default()
}

/// A file of answers that cannot be used.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{}", english().answers_csv_error(self))]
pub struct AnswersCsvError {
    /// The file.
    pub file: String,
    /// The line, counted from 1.
    pub line: u64,
    /// What is wrong there.
    pub problem: AnswersCsvProblem,
}

/// What is wrong in a file of answers.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum AnswersCsvProblem {
    /// No comma-separated values.
    NoTable(String),
    /// A column is not there.
    NoColumn(&'static str),
    /// A field says nothing sensible.
    Field {
        /// The column.
        column: &'static str,
        /// As written.
        found: String,
        /// What can stand there.
        allowed: Allowed,
    },
}

/// Reads answers that [`answers_csv`] wrote, in the order of the file. What only some kinds of answers have is left out:
/// moment, skill, whether it was right and how long it took are read.
///
/// # Errors
/// The first mistake in the file.
pub fn read_answers_csv(file: &str, bytes: &[u8]) -> Result<Vec<Answer>, AnswersCsvError> {
    let at = |line: u64, problem| AnswersCsvError {
        file: file.to_owned(),
        line,
        problem,
    };
    let no_table = |error: csv::Error| {
        let line = error.position().map_or(1, csv::Position::line);
        at(line, AnswersCsvProblem::NoTable(error.to_string()))
    };
    let mut reader = csv::Reader::from_reader(bytes);
    let head = reader.headers().map_err(no_table)?.clone();
    let column = |name: &'static str| {
        let place = head.iter().position(|column| column == name);
        place.ok_or_else(|| at(1, AnswersCsvProblem::NoColumn(name)))
    };
    let places = (
        column("at")?,
        column("skill")?,
        column("right")?,
        column("took_s")?,
    );
    let mut answers = Vec::new();
    for row in reader.records() {
        let row = row.map_err(no_table)?;
        let line = row.position().map_or(1, csv::Position::line);
        let wrong = |column, found: &str, allowed| {
            let found = found.to_owned();
            let problem = AnswersCsvProblem::Field {
                column,
                found,
                allowed,
            };
            at(line, problem)
        };
        let (when, skill, right, took) = (
            &row[places.0],
            &row[places.1],
            &row[places.2],
            &row[places.3],
        );
        let moment = DateTime::parse_from_rfc3339(when)
            .map_err(|_| wrong("at", when, Allowed::WrittenMoment))?;
        let took_s = f64::from_str(took)
            .ok()
            .filter(|s| s.is_finite() && *s >= 0.0);
        answers.push(Answer {
            at: Moment(moment.timestamp()),
            skill: Skill::from_str(skill).map_err(|_| wrong("skill", skill, Allowed::Skill))?,
            right: match right {
                "1" => true,
                "0" => false,
                other => return Err(wrong("right", other, Allowed::RightOrWrong)),
            },
            took_s: took_s.ok_or_else(|| wrong("took_s", took, Allowed::Seconds))?,
            detail: Detail::None,
        });
    }
    Ok(answers)
}

/// A moment as part of a file name: `2026-11-25-2107`, UTC.
pub fn file_date(at: Moment) -> String {
    date(at).format("%Y-%m-%d-%H%M").to_string()
}

/// A moment for people: `2026-11-25 21:07`, on clocks that are so many seconds ahead of UTC.
pub fn day_and_time(at: Moment, ahead_s: i64) -> String {
    local(at, ahead_s).format("%Y-%m-%d %H:%M").to_string()
}

/// The day of a moment, `2026-11-25`, on clocks that are so many seconds ahead of UTC.
pub fn day(at: Moment, ahead_s: i64) -> String {
    local(at, ahead_s).format("%Y-%m-%d").to_string()
}

/// What clocks show that are so many seconds ahead of UTC.
fn local(at: Moment, ahead_s: i64) -> DateTime<chrono::Utc> {
    date(Moment(at.0.saturating_add(ahead_s)))
}

/// Moments that no calendar holds stand at its start.
fn date(at: Moment) -> DateTime<chrono::Utc> {
    DateTime::from_timestamp(at.0, 0).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use detent_training::practice::Skill;

    #[test]
    fn each_answer_is_a_row_that_a_reader_of_csv_reads() {
        let file = "mine, \"new\"".to_owned();
        let details = [
            Detail::Lamps { shown: 7, read: 17 },
            Detail::Job { file, kept: 0.5 },
        ];
        let answers: Vec<Answer> = (0..)
            .zip(details)
            .map(|(n, detail)| Answer {
                at: Moment(1_669_725_000 + n),
                skill: Skill::LampReading,
                right: n == 0,
                took_s: 2.5,
                detail,
            })
            .collect();
        let bytes = answers_csv(&answers);
        let mut reader = csv::Reader::from_reader(&bytes[..]);
        let head = reader.headers().expect("a heading").clone();
        assert_eq!((head.len(), &head[0], &head[10]), (11, "at", "kept"));
        let rows: Vec<_> = reader.records().map(|row| row.expect("a row")).collect();
        // 1669725000 s is 2022-11-29 12:30 UTC, as `date -u` says.
        assert_eq!(&rows[0][0], "2022-11-29T12:30:00Z");
        assert_eq!((&rows[0][4], &rows[0][5], &rows[0][2]), ("07", "17", "1"));
        assert_eq!((&rows[1][9], &rows[1][10]), ("mine, \"new\"", "0.5000"));
        assert_eq!(file_date(answers[0].at), "2022-11-29-1230");
        assert_eq!(day_and_time(answers[0].at, 3600), "2022-11-29 13:30");
        let again = read_answers_csv("mine.csv", &bytes).expect("as it was written");
        let plain = answers.into_iter().map(|answer| Answer {
            detail: Detail::None,
            ..answer
        });
        assert_eq!(again, plain.collect::<Vec<_>>());
    }

    #[test]
    fn a_bad_file_is_refused_by_file_line_and_column() {
        let head = "at,skill,right,took_s\n";
        let good = "2026-11-27T12:30:00Z,proof,1,20\n";
        for (text, line, words) in [
            ("at,skill,right\n".to_owned(), 1, "took_s"),
            (
                format!("{head}{good}yesterday,proof,1,20\n"),
                3,
                "yesterday",
            ),
            (
                format!("{head}2026-11-27T12:30:00Z,juggling,1,20\n"),
                2,
                "juggling",
            ),
            (
                format!("{head}2026-11-27T12:30:00Z,proof,yes,20\n"),
                2,
                "1 or 0",
            ),
            (
                format!("{head}{good}{good}2026-11-27T12:30:00Z,proof,1,NaN\n"),
                4,
                "seconds",
            ),
            (
                format!("{head}2026-11-27T12:30:00Z,proof\n"),
                2,
                "comma-separated",
            ),
        ] {
            let error = read_answers_csv("mine.csv", text.as_bytes()).expect_err(words);
            assert_eq!(
                (error.file.as_str(), error.line),
                ("mine.csv", line),
                "{error}"
            );
            assert!(error.to_string().contains(words), "{error}");
        }
    }
}
