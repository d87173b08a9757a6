//! A class: what is kept, what is answered, and what happens when network, disk, clock or program fail.

#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    clippy::disallowed_macros,
    reason = "tests open files and sockets, and print"
)]

mod drills;
mod faults;
mod gradebook;
#[path = "../browser/gradebook_pages.rs"]
mod gradebook_pages;
mod http;
#[path = "../browser/class_pages.rs"]
mod pages;
mod simulated_class;
#[path = "../stage/mod.rs"]
mod stage;
mod store;
mod verified;

use detent_class::definition::{ClassDefinition, JobMachines};
use detent_class::moment::Moment;
use detent_class::protocol::{AttemptId, ClassKind, Digest, JoinCode, SecretToken, Segment};
use detent_class::store::{Database, Disk, Scope, Words};
use detent_gradebook::AttemptResult;
use detent_simulation::units::Time;
use detent_training::lesson::Score;
use std::path::Path;

/// The rows of the tests.
fn scope() -> Scope {
    Scope {
        tenant: "local".to_owned(),
        class: "class".to_owned(),
    }
}

fn definition() -> ClassDefinition {
    ClassDefinition {
        title: "Tuesday".to_owned(),
        kind: ClassKind::Practice,
        jobs: vec!["drain-code".to_owned()],
        machines: JobMachines::Named,
        drills: Vec::new(),
        seed: 7,
        seats: 3,
        only_listed: false,
        opens_ms: None,
        closes_ms: None,
    }
}

fn code() -> JoinCode {
    "ACDEFG".parse().expect("a code")
}

fn token(n: u8) -> SecretToken {
    SecretToken::of_bytes([n; 32])
}

/// A database with the class in it.
fn begin(path: &Path) -> Disk {
    let database = Database::open(path).expect("it opens");
    let scope = scope();
    let store = database.store(&scope);
    if store.class().expect("readable").is_none() {
        store
            .begin(&definition(), code(), &token(255), Moment(1))
            .expect("begun");
    }
    Disk::new(database, scope)
}

/// Somebody of this name joins.
fn join(disk: &Disk, name: &str, n: u8) -> u32 {
    let words = Words { name, word: None };
    let joined = disk
        .store()
        .join(&words, &token(n), (false, 100), Moment(2))
        .expect("kept");
    joined.expect("a seat").seat
}

/// Segments of these lines, one each.
fn segments(attempt: u8, lines: &[&str]) -> Vec<Segment> {
    let mut after = (0, Digest::NONE);
    let lines = lines.iter();
    lines
        .map(|line| {
            let attempt = AttemptId::of_bytes([attempt; 16]);
            let segment = Segment::new(
                attempt,
                after,
                ("0.1.0", Digest::NONE),
                &format!("{line}\n"),
            );
            after = (segment.sequence + 1, segment.digest);
            segment
        })
        .collect()
}

/// What doing some attempt again may have shown.
fn some_result() -> AttemptResult {
    AttemptResult {
        job: "drain-code".to_owned(),
        is_second_visit: false,
        passed: false,
        arrived: Time::ZERO,
        score: Score {
            dimensions: Vec::new(),
        },
        work_min: 0.0,
        waited_h: 0.0,
        bill: 0.0,
        named: None,
        hidden: Vec::new(),
        skills: Vec::new(),
    }
}
