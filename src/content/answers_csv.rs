//! A learner's answers as a table for other programs.

use chrono::DateTime;
use detent_training::practice::{Answer, Detail, Moment};

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

/// A moment as part of a file name: `2026-11-25-2107`, UTC.
pub fn file_date(at: Moment) -> String {
    date(at).format("%Y-%m-%d-%H%M").to_string()
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
    }
}
