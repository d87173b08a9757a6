//! `detent jobs`: variants of a job, printed and written to files, and what is refused.

use super::printed_json::fits;
use detent_content::ContentLibrary;
use detent_training::lesson::Hidden;
use std::fs;
use std::path::Path;
use std::process::{Command, Output};

fn detent(args: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_detent"))
        .args(args)
        .output()
        .expect("the program starts")
}

fn jobs(args: &[&str]) -> Output {
    detent(&[&["jobs", "--like", "drain-code"], args].concat())
}

fn path(path: &Path) -> &str {
    path.to_str().expect("a plain path")
}

/// Exit status 2 in both languages, with each of these words in both.
#[track_caller]
fn refused(args: &[&str], named: &[&str]) {
    let told = ["en", "es"].map(|language| {
        let out = detent(&[args, &["--lang", language]].concat());
        assert_eq!(out.status.code(), Some(2), "{args:?}");
        assert!(out.stdout.is_empty(), "{args:?}");
        String::from_utf8(out.stderr).expect("text")
    });
    for told in &told {
        for name in named {
            assert!(told.contains(name), "{name} is not in: {told}");
        }
    }
}

#[test]
fn bad_requests_are_refused_before_anything_is_drawn() {
    let like = ["jobs", "--like", "drain-code"];
    let asked = |more: &[&'static str]| [&like[..], more].concat();
    refused(&asked(&["--count", "0"]), &["0", "10000"]);
    refused(&asked(&["--count", "4000000000"]), &["4000000000", "10000"]);
    refused(&asked(&["--survey", "0"]), &["1000000"]);
    refused(&asked(&["--count", "-3"]), &["-3"]);
    refused(&["jobs", "--like", "no-such-job"], &["no-such-job"]);
    refused(&["jobs"], &["--like"]);
    refused(&asked(&["--out", "no/such/folder"]), &["no/such/folder"]);
    refused(&asked(&["--out", "Cargo.toml"]), &["Cargo.toml"]);
    refused(&asked(&["--out", ".", "--survey", "2"]), &["--survey"]);
}

#[test]
fn variants_are_written_once_and_played_by_their_path() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let write = [
        "--count",
        "2",
        "--seed",
        "7",
        "--json",
        "--out",
        path(folder.path()),
    ];
    let out = jobs(&write);
    assert!(
        out.status.success(),
        "{}",
        String::from_utf8_lossy(&out.stderr)
    );
    let told = fits("jobs-1", &String::from_utf8_lossy(&out.stdout));
    let variants = told["variants"].as_array().expect("variants");
    assert_eq!(variants.len(), 2);
    assert_eq!(told["passed"], 2);

    let mut names: Vec<String> = (fs::read_dir(folder.path()).expect("a folder"))
        .map(|entry| {
            entry
                .expect("a file")
                .file_name()
                .into_string()
                .expect("a plain name")
        })
        .collect();
    names.sort();
    let listed: Vec<&str> = variants.iter().filter_map(|v| v["file"].as_str()).collect();
    assert_eq!(names, listed, "these files and nothing left over");

    let library = ContentLibrary::builtin().expect("the built-in content is sound");
    let printed = String::from_utf8_lossy(&out.stdout).into_owned();
    let script = folder.path().join("look.script");
    fs::write(&script, "Look\n").expect("a script");
    let mut texts = Vec::new();
    for (name, variant) in names.iter().zip(variants) {
        let file = folder.path().join(name);
        let read = library.scenario(path(&file)).expect("a scenario");
        assert_eq!(
            variant["complaint"]["es"],
            read.scenario.complaint.es.as_str()
        );
        assert_eq!(variant["par_minutes"], read.scenario.par_minutes);
        let Hidden::Named(fault) = &read.scenario.fault else {
            panic!("one fault: {:?}", read.scenario.fault);
        };
        assert!(
            !name.contains(fault.as_str()) && !printed.contains(fault.as_str()),
            "{fault}"
        );
        let played = detent(&["play", path(&file), path(&script), "--json"]);
        assert!(
            played.status.success(),
            "{}",
            String::from_utf8_lossy(&played.stderr)
        );
        texts.push(fs::read(&file).expect("a file"));
    }

    // The same again would be the same files: they are there already, and stay as they are.
    let again = jobs(&write);
    assert_eq!(again.status.code(), Some(2));
    let told = String::from_utf8_lossy(&again.stderr).into_owned();
    assert!(told.contains(&names[0]), "{told}");
    for (name, text) in names.iter().zip(texts) {
        assert_eq!(fs::read(folder.path().join(name)).expect("a file"), text);
    }
}

/// A variant goes with its attempt: that is replayed wherever it lies, also when the variant's file is gone.
#[test]
fn an_attempt_at_a_variant_needs_no_other_file() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let place = |name: &str| folder.path().join(name);
    let out = jobs(&["--count", "1", "--json", "--out", path(folder.path())]);
    let told = fits("jobs-1", &String::from_utf8_lossy(&out.stdout));
    let file = place(told["variants"][0]["file"].as_str().expect("a name"));
    fs::write(place("look.script"), "Unplug\nWait(s: 2)\nPlug\nLook\n").expect("a script");
    let (script, attempt) = (place("look.script"), place("mine.attempt"));
    let played = detent(&["play", path(&file), path(&script), "--save", path(&attempt)]);
    assert!(
        played.status.success(),
        "{}",
        String::from_utf8_lossy(&played.stderr)
    );
    fs::remove_file(&file).expect("it is there");
    let elsewhere = tempfile::tempdir().expect("a temporary folder");
    let moved = elsewhere.path().join("moved.attempt");
    fs::rename(&attempt, &moved).expect("it can be moved");
    let replayed = detent(&["replay", path(&moved), "--lang", "en"]);
    let told = String::from_utf8_lossy(&replayed.stdout).into_owned();
    assert!(
        replayed.status.success() && told.contains("same state and score"),
        "{told}{}",
        String::from_utf8_lossy(&replayed.stderr)
    );
    // The scenario in it is held against its digest.
    let text = fs::read_to_string(&moved).expect("text");
    let changed = text.replacen("par_minutes: ", "par_minutes: 1", 1);
    assert_ne!(changed, text);
    fs::write(&moved, changed).expect("it can be written");
    let refused = detent(&["replay", path(&moved), "--lang", "en"]);
    assert_eq!(refused.status.code(), Some(2));
    let told = String::from_utf8_lossy(&refused.stderr).into_owned();
    assert!(told.contains("moved.attempt:1: scenario_text:"), "{told}");
}

#[test]
fn a_survey_accounts_for_every_draft() {
    let out = jobs(&["--survey", "12", "--json"]);
    assert!(
        out.status.success(),
        "{}",
        String::from_utf8_lossy(&out.stderr)
    );
    let told = fits("jobs-1", &String::from_utf8_lossy(&out.stdout));
    let refused = told["refused"].as_object().expect("reasons").values();
    let refused: u64 = refused.map(|count| count.as_u64().expect("a count")).sum();
    assert_eq!(told["drawn"], 12);
    assert_eq!(told["passed"].as_u64().expect("a count") + refused, 12);
    assert_eq!(told["variants"].as_array().map(Vec::len), Some(0));
    // The same in words.
    let out = jobs(&["--survey", "12", "--lang", "es"]);
    let text = String::from_utf8(out.stdout).expect("text");
    assert!(text.starts_with("12 borradores"), "{text}");
    assert!(!text.contains(['‹', '{']), "{text}");
}
