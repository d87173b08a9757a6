//! `detent practice --learners`: a folder of learners side by side. All names and answers are invented.

use super::printed_json::fits;
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::process::{Command, Output};

/// Right answers on two days master a skill; one job was passed and one lost for its proof.
const ANA: &str = r#"(
    format: 2,
    name: "Ana",
    target: 0.75,
    answers: [
        (at: 1700000000, skill: Metering, right: true, took_s: 9.0, detail: None),
        (at: 1700000020, skill: Metering, right: true, took_s: 9.0, detail: None),
        (at: 1700000040, skill: Metering, right: true, took_s: 9.0, detail: None),
        (at: 1700100000, skill: Metering, right: true, took_s: 9.0, detail: None),
        (at: 1700100020, skill: Metering, right: true, took_s: 9.0, detail: None),
        (at: 1700100040, skill: Metering, right: true, took_s: 9.0, detail: None),
        (at: 1700200000, skill: Proof, right: false, took_s: 900.0, detail: Job(file: "drain-code", kept: 0.2)),
        (at: 1700300000, skill: Proof, right: true, took_s: 900.0, detail: Job(file: "drain-code", kept: 0.9)),
    ],
    sittings: [
        (
            file: "exam", began: 1700300000, until: 1700303600, seed: 7, sheet: [], closed: Some(1700303000),
            jobs: [
                (job: "drain-code", begun: Some(1700300100), attempt: None, pauses: [], result: Some(
                    (at: 1700301000, kept: 80.0, of: 100.0, passed: true, out_of_time: false, answers: []),
                )),
                (job: "fill-code", begun: None, attempt: None, pauses: [], result: None),
            ],
        ),
    ],
)"#;

const BEN: &str = "(format: 1, name: \"Ben\", target: 0.75, answers: [])";

fn practice(folder: &Path, more: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_detent"))
        .args([
            "practice",
            "--learners",
            folder.to_str().expect("a plain path"),
        ])
        .args(more)
        .output()
        .expect("the program starts")
}

/// Every file of a folder with what is in it.
fn contents(folder: &Path) -> BTreeMap<String, Vec<u8>> {
    let entries = fs::read_dir(folder).expect("a folder");
    let file = |entry: std::io::Result<fs::DirEntry>| {
        let entry = entry.expect("a file");
        let name = entry.file_name().into_string().expect("a plain name");
        (name, fs::read(entry.path()).expect("it can be read"))
    };
    entries.map(file).collect()
}

#[test]
fn learners_stand_side_by_side_and_a_damaged_one_hides_no_other() {
    let folder = tempfile::tempdir().expect("a folder");
    for (name, text) in [
        ("ana.learner", ANA),
        ("ben.learner", BEN),
        ("torn.learner", "(format: 2, name: \"Cleo\",\n"),
        ("notes.txt", "not a learner"),
    ] {
        fs::write(folder.path().join(name), text).expect("it can be written");
    }
    let before = contents(folder.path());

    let out = practice(folder.path(), &["--lang", "en"]);
    let told = String::from_utf8(out.stdout).expect("text");
    assert!(out.status.success(), "{told}");
    let lines: Vec<&str> = told.lines().collect();
    let cells = |line: &str| -> Vec<String> {
        let cells = line.split("  ").map(str::trim);
        cells
            .filter(|cell| !cell.is_empty())
            .map(str::to_owned)
            .collect()
    };
    assert_eq!(
        cells(lines[0]),
        [
            "Learner",
            "Jobs passed",
            "Last day",
            "Skills mastered",
            "Examinations",
            "Lost most often in jobs"
        ]
    );
    assert_eq!(
        cells(lines[1]),
        [
            "Ana",
            "1/2",
            "2023-11-18",
            "1/2",
            "1: 1/2",
            "Proving the fault 1/2"
        ]
    );
    assert_eq!(cells(lines[2]), ["Ben", "0/0", "—", "0/0", "0: 0/0", "—"]);
    assert!(lines[3].starts_with("Ana: mastered: "), "{told}");
    assert!(
        lines[3].ends_with("being worked on: Proving the fault"),
        "{told}"
    );
    assert!(lines[5].contains("torn.learner:"), "{told}");
    assert_eq!(lines.len(), 6, "{told}");

    let out = practice(folder.path(), &["--lang", "es"]);
    let spanish = String::from_utf8(out.stdout).expect("text");
    assert!(spanish.starts_with("Aprendiz"), "{spanish}");
    assert!(
        spanish.contains("torn.learner:") && spanish.contains("corrija aquí"),
        "{spanish}"
    );

    let out = practice(folder.path(), &["--json"]);
    let json = fits("practice-learners-1", &String::from_utf8_lossy(&out.stdout));
    let ana = &json["learners"][0];
    assert_eq!(ana["name"], "Ana");
    assert_eq!(ana["mastered"], serde_json::json!(["metering"]));
    assert_eq!(ana["most_lost"]["skill"], "proof");
    assert_eq!(ana["sittings"][0]["passed"], 1);
    assert_eq!(json["learners"][1]["last_day"], serde_json::Value::Null);
    let damaged = json["damaged"].as_array().expect("a list");
    assert_eq!(damaged.len(), 1);
    assert!(
        damaged[0]["file"]
            .as_str()
            .is_some_and(|file| file.ends_with("torn.learner"))
    );

    assert_eq!(contents(folder.path()), before, "nothing is written");
}

#[test]
fn a_folder_without_learners_says_what_to_give() {
    let folder = tempfile::tempdir().expect("a folder");
    let out = practice(folder.path(), &["--lang", "en"]);
    assert_eq!(out.status.code(), Some(2));
    let told = String::from_utf8_lossy(&out.stderr).into_owned();
    assert!(told.contains(".learner"), "{told}");
    let gone = folder.path().join("gone");
    let out = practice(&gone, &["--lang", "es"]);
    assert_eq!(out.status.code(), Some(2));
    let told = String::from_utf8_lossy(&out.stderr).into_owned();
    assert!(told.contains("gone: no se puede leer: no existe"), "{told}");
}
