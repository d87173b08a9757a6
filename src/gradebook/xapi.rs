//! Attempts for a learning record store: xAPI 2.0 (IEEE 9274.1.1-2023), one statement a line.
//!
//! Whoever learned is told by an account that holds the pseudonym, never by a name or a mail address. Identifiers lie in a
//! domain that nobody can register (RFC 2606), since a class on one computer has none.

use super::class_grades::MOST_POINTS;
use super::utc::{duration, timestamp};
use super::{ClassGrades, ClassLearner, GradedAttempt};
use detent_training::lesson::Bilingual;
use serde_json::{Map, Value, json};
use sha2::{Digest, Sha256};

/// Where all identifiers begin.
const HOME: &str = "https://detent.example";

/// A name for the statement about this attempt that is the same each time: a UUID of version 8 (RFC 9562, section 5.8) out
/// of the SHA-256 of what it tells.
fn statement_id(class_key: &str, attempt: &str) -> String {
    let digest = Sha256::digest(format!("{class_key}/{attempt}").as_bytes());
    let mut bytes: [u8; 16] = [0; 16];
    bytes.copy_from_slice(&digest[..16]);
    bytes[6] = bytes[6] & 0x0f | 0x80;
    bytes[8] = bytes[8] & 0x3f | 0x80;
    let mut id = String::with_capacity(36);
    for (n, byte) in bytes.iter().enumerate() {
        if matches!(n, 4 | 6 | 8 | 10) {
            id.push('-');
        }
        id.push_str(&format!("{byte:02x}"));
    }
    id
}

/// A part of an identifier: whatever is no plain letter, digit, `-`, `.` or `_` is written by its bytes (RFC 3986,
/// section 2.1).
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for byte in text.bytes() {
        if byte.is_ascii_alphanumeric() || matches!(byte, b'-' | b'.' | b'_') {
            out.push(char::from(byte));
        } else {
            out.push_str(&format!("%{byte:02X}"));
        }
    }
    out
}

/// What one attempt tells.
fn statement(
    class_key: &str,
    learner: &ClassLearner,
    attempt: &GradedAttempt,
    title: Option<&Bilingual>,
) -> Value {
    let result = &attempt.result;
    let (verb, english, spanish) = if result.passed {
        ("passed", "passed", "aprobó")
    } else {
        ("failed", "failed", "no aprobó")
    };
    let mut definition = json!({"type": format!("{HOME}/activity-types/repair-job")});
    if let Some(title) = title {
        definition["name"] = json!({"en": title.en, "es": title.es});
    }
    let sides: Map<String, Value> = (result.score.dimensions.iter())
        .filter(|side| side.of > 0.0)
        .map(|side| {
            let kept = json!({"kept": side.kept, "of": side.of});
            (side.dimension.name().to_owned(), kept)
        })
        .collect();
    json!({
        "id": statement_id(class_key, &attempt.attempt),
        "actor": {
            "objectType": "Agent",
            "account": {
                "homePage": format!("{HOME}/classes/{}", escaped(class_key)),
                "name": learner.pseudonym,
            },
        },
        "verb": {
            "id": format!("{HOME}/verbs/{verb}"),
            "display": {"en": english, "es": spanish},
        },
        "object": {
            "objectType": "Activity",
            "id": format!("{HOME}/jobs/{}", escaped(&result.job)),
            "definition": definition,
        },
        "result": {
            "score": {
                "scaled": result.share(),
                "raw": MOST_POINTS * result.share(),
                "min": 0,
                "max": MOST_POINTS,
            },
            "success": result.passed,
            "completion": result.named.is_some(),
            "duration": duration(result.work_min),
        },
        "context": {
            "platform": "Detent",
            "extensions": {format!("{HOME}/extensions/sides"): sides},
        },
        "timestamp": timestamp(attempt.finished_ms),
        "version": "2.0.0",
    })
}

/// Every verified attempt as a statement, one a line. `class_key` tells this class from others and names nobody; `title` is
/// a job's. What an instructor changed is no deed of a learner and is not told.
pub fn xapi_lines<'t>(
    grades: &ClassGrades,
    class_key: &str,
    title: impl Fn(&str) -> Option<&'t Bilingual>,
) -> String {
    let mut lines = String::new();
    for learner in &grades.learners {
        for attempt in grades.book.attempts_of(learner.seat) {
            let title = title(&attempt.result.job);
            lines.push_str(&statement(class_key, learner, attempt, title).to_string());
            lines.push('\n');
        }
    }
    lines
}
