//! Moments as other programs read them.

use chrono::{DateTime, SecondsFormat, Utc};

/// The moment `ms` after the beginning of 1970, UTC; the beginning itself for one that no calendar has.
fn moment(ms: u64) -> DateTime<Utc> {
    let ms = i64::try_from(ms).unwrap_or(i64::MAX);
    DateTime::from_timestamp_millis(ms).unwrap_or_default()
}

/// As RFC 3339 has it, UTC, with milliseconds: `2026-03-02T08:15:00.000Z`.
pub(crate) fn timestamp(ms: u64) -> String {
    moment(ms).to_rfc3339_opts(SecondsFormat::Millis, true)
}

/// The same to the minute, as people read it: `2026-03-02 08:15`.
pub fn utc_minute(ms: u64) -> String {
    moment(ms).format("%Y-%m-%d %H:%M").to_string()
}

/// The day in UTC as ISO 8601 has it: `2026-03-02`.
pub(crate) fn day(ms: u64) -> String {
    moment(ms).format("%Y-%m-%d").to_string()
}

/// A length of time as ISO 8601 has it, in whole seconds: `PT1830S`.
pub(crate) fn duration(minutes: f64) -> String {
    format!("PT{:.0}S", (60.0 * minutes).max(0.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// RFC 3339, section 5.8, has these moments; their seconds since 1970 are from GNU `date`, run once.
    #[test]
    fn moments_are_written_as_rfc_3339_has_them() {
        for (ms, written) in [
            (482_196_050_520, "1985-04-12T23:20:50.520Z"),
            (851_042_397_000, "1996-12-20T00:39:57.000Z"),
            (0, "1970-01-01T00:00:00.000Z"),
        ] {
            assert_eq!(timestamp(ms), written);
            assert_eq!(day(ms), written[..10]);
            assert_eq!(utc_minute(ms), written[..16].replace('T', " "));
        }
        assert_eq!(timestamp(u64::MAX), "1970-01-01T00:00:00.000Z");
        assert_eq!(duration(30.5), "PT1830S");
        assert_eq!(duration(-1.0), "PT0S");
    }
}
