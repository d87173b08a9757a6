//! `detent print`: what it writes, and what it refuses before anything is written.

use std::fs;
use std::path::Path;
use std::process::{Command, Output};

fn print(args: &[&str], folder: &Path) -> Output {
    Command::new(env!("CARGO_BIN_EXE_detent"))
        .arg("print")
        .args(args)
        .arg("--out")
        .arg(folder)
        .output()
        .expect("the program starts")
}

/// Names of the files in a folder.
fn files(folder: &Path) -> Vec<String> {
    let listed = fs::read_dir(folder).expect("it can be listed");
    let mut names: Vec<String> = listed
        .map(|file| file.expect("it is there").file_name())
        .map(|name| name.to_string_lossy().into_owned())
        .collect();
    names.sort();
    names
}

/// Exit status 2 in both languages with these words in both, and nothing written.
#[track_caller]
fn refused(args: &[&str], folder: &Path, named: &[&str]) {
    let before = folder.is_dir().then(|| files(folder));
    for language in ["en", "es"] {
        let out = print(&[args, &["--lang", language]].concat(), folder);
        let told = String::from_utf8(out.stderr).expect("text");
        assert_eq!(out.status.code(), Some(2), "{args:?}: {told}");
        assert!(out.stdout.is_empty(), "{args:?}");
        for name in named {
            assert!(told.contains(name), "{name} is not in: {told}");
        }
    }
    assert_eq!(before, folder.is_dir().then(|| files(folder)));
}

#[test]
fn handouts_and_keys_are_written_and_no_file_is_overwritten() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let args = [
        "drain-code",
        "no-hot-water",
        "--paper",
        "letter",
        "--lang",
        "es",
    ];
    let out = print(&args, folder.path());
    let told = String::from_utf8(out.stderr).expect("text");
    assert!(out.status.success(), "{told}");
    let written = [
        "drain-code-handout.pdf",
        "drain-code-key.pdf",
        "no-hot-water-handout.pdf",
        "no-hot-water-key.pdf",
    ];
    assert_eq!(files(folder.path()), written);
    let listed = String::from_utf8(out.stdout).expect("text");
    for name in written {
        assert!(listed.contains(name), "{listed}");
        let bytes = fs::read(folder.path().join(name)).expect("it can be read");
        assert!(bytes.starts_with(b"%PDF-1.7") && bytes.trim_ascii_end().ends_with(b"%%EOF"));
    }
    // One name is taken: the other job is not printed either.
    refused(
        &["no-hot-water"],
        folder.path(),
        &["no-hot-water-handout.pdf"],
    );
    refused(
        &["dark-machine", "drain-code"],
        folder.path(),
        &["drain-code-handout.pdf"],
    );
}

#[test]
fn variants_go_into_one_handout_and_one_key() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let args = ["drain-code", "--variants", "2", "--seed", "5"];
    let out = print(&args, folder.path());
    assert!(
        out.status.success(),
        "{}",
        String::from_utf8_lossy(&out.stderr)
    );
    let written = [
        "drain-code-variants-handout.pdf",
        "drain-code-variants-key.pdf",
    ];
    assert_eq!(files(folder.path()), written);
    let again = tempfile::tempdir().expect("a temporary folder");
    assert!(print(&args, again.path()).status.success());
    for name in written {
        let of = |folder: &Path| fs::read(folder.join(name)).expect("it can be read");
        assert_eq!(of(folder.path()), of(again.path()), "{name}");
    }
}

#[test]
fn bad_requests_are_refused_before_anything_is_written() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let here = folder.path();
    refused(&["no-such-job"], here, &["no-such-job"]);
    refused(&["drain-code", "no-such-job"], here, &["no-such-job"]);
    refused(&[], here, &[]);
    refused(
        &["drain-code", "--paper", "a5"],
        here,
        &["a5", "a4", "letter"],
    );
    refused(&["drain-code", "--variants", "0"], here, &["0", "200"]);
    refused(&["drain-code", "--variants", "201"], here, &["201", "200"]);
    refused(
        &["drain-code", "drain-code"],
        here,
        &["drain-code-handout.pdf"],
    );
    refused(&["drain-code"], &here.join("no/such"), &["no/such"]);
    let file = here.join("file");
    fs::write(&file, "").expect("it can be written");
    refused(&["drain-code"], &file, &["file"]);
}
