//! An own library beside the built-in content, through the real program.

use std::path::{Path, PathBuf};
use std::process::{Command, Output};
use tempfile::TempDir;

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// A library with one board for 230 V, its control at the counter, and one job on it.
pub(super) struct OwnLibrary {
    pub folder: TempDir,
}

impl OwnLibrary {
    pub fn new() -> OwnLibrary {
        let folder = tempfile::tempdir().expect("a folder");
        let own = OwnLibrary { folder };
        let board = std::fs::read_to_string(root().join("assets/boards/lone-lamp.ron"));
        let board = board.expect("the board is there");
        let changes = [
            ("id: \"lone-lamp\"", "id: \"school-lamp\""),
            ("\"board-lone-lamp\"", "\"The school's lamp\""),
            ("[V120Hz60, V230Hz50]", "[V230Hz50]"),
            ("        V120Hz60: (reset_v: 52.0, sag_v: 115.0),\n", ""),
        ];
        own.write("boards/school-lamp.ron", &changed(&board, &changes));
        own.write(
            "parts.ron",
            "(parts: [(number: \"S-1\", component: Board, name_key: \"Control of the school\", \
             price: 150.0, wait_hours: 24.0, boards: [\"school-lamp\"])])",
        );
        let job = std::fs::read_to_string(root().join("scenarios/reset-by-moving-the-lid.ron"));
        let job = job.expect("the job is there");
        let course = "    course: Some((part: NothingFound, number: 10, after: [\"reset-after-a-power-cut\"])),\n";
        let changes = [
            ("\"lone-lamp\"", "\"school-lamp\""),
            ("V120Hz60", "V230Hz50"),
            (course, ""),
        ];
        own.write("scenarios/school-job.ron", &changed(&job, &changes));
        own
    }

    pub fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    pub fn write(&self, name: &str, text: &str) {
        let path = self.path(name);
        std::fs::create_dir_all(path.parent().expect("a folder")).expect("it can be made");
        std::fs::write(path, text).expect("it can be written");
    }

    pub fn read(&self, name: &str) -> String {
        std::fs::read_to_string(self.path(name)).expect("it is there")
    }

    fn detent(&self, args: &[&str]) -> Output {
        Command::new(env!("CARGO_BIN_EXE_detent"))
            .args(args)
            .args(["--lang", "en", "--library"])
            .arg(self.folder.path())
            .output()
            .expect("the program starts")
    }

    /// What is printed, where all is well.
    #[track_caller]
    fn told(&self, args: &[&str]) -> String {
        let out = self.detent(args);
        let error = String::from_utf8_lossy(&out.stderr);
        assert!(out.status.success(), "{error}");
        let told = String::from_utf8(out.stdout).expect("text");
        assert!(!told.contains('‹'), "{told}");
        told
    }

    /// What is wrong, where the library is refused.
    #[track_caller]
    fn refused(&self, named: &[&str]) {
        let out = self.detent(&["scenarios"]);
        let error = String::from_utf8_lossy(&out.stderr);
        assert_eq!(out.status.code(), Some(2), "{error}");
        for named in named {
            assert!(error.contains(named), "{named} is not in: {error}");
        }
    }
}

#[track_caller]
pub(super) fn changed(text: &str, changes: &[(&str, &str)]) -> String {
    changes.iter().fold(text.to_owned(), |text, (from, to)| {
        assert!(text.contains(from), "{from}");
        text.replacen(from, to, 1)
    })
}

/// The environment names a library for all that is called from it; an empty variable names none.
#[test]
fn a_library_can_be_named_in_the_environment() {
    let library = OwnLibrary::new();
    let listed = |value: &Path| {
        let out = Command::new(env!("CARGO_BIN_EXE_detent"))
            .args(["scenarios", "--lang", "en"])
            .env("DETENT_LIBRARY", value)
            .output()
            .expect("the program starts");
        assert!(out.status.success());
        String::from_utf8(out.stdout).expect("text")
    };
    let by_variable = listed(library.folder.path());
    assert_eq!(by_variable, library.told(&["scenarios"]));
    assert_ne!(by_variable, listed(Path::new("")));
}

#[test]
fn own_boards_jobs_and_parts_stand_beside_the_built_in_ones() {
    let own = OwnLibrary::new();
    let scenarios = own.told(&["scenarios"]);
    assert!(scenarios.contains("school-job") && scenarios.contains("drain-code"));
    assert!(own.told(&["parts"]).contains("S-1"));
    let script = own.path("nothing.script");
    own.write("nothing.script", "Wait(s: 1)\n");
    let script = script.to_str().expect("a plain path");
    own.told(&["play", "school-job", script, "--json"]);
    own.told(&["simulate", "school-job", "--seconds", "5"]);
    let sheet = own.told(&["sheet", "--board", "school-lamp"]);
    assert!(sheet.starts_with("The school's lamp\n"), "{sheet}");
    // The same by a job on it and by its file.
    assert_eq!(own.told(&["sheet", "school-job"]), sheet);
    assert_eq!(own.told(&["sheet", "school-lamp"]), sheet);
    let file = own.path("boards/school-lamp.ron");
    let by_file = own.told(&["sheet", file.to_str().expect("a plain path")]);
    assert_eq!(by_file, sheet);
    // On the counter of its own board alone: a built-in machine stays as it is.
    let built_in = Command::new(env!("CARGO_BIN_EXE_detent"))
        .args(["play", "drain-code", script, "--json"])
        .output()
        .expect("the program starts");
    let with_own = own.told(&["play", "drain-code", script, "--json"]);
    assert_eq!(with_own.as_bytes(), built_in.stdout);
}

#[test]
fn the_table_of_an_own_board_is_made_once_and_kept_in_its_folder() {
    let own = OwnLibrary::new();
    let first = own.detent(&["best", "school-job"]);
    let error = String::from_utf8_lossy(&first.stderr);
    assert!(first.status.success(), "{error}");
    assert!(error.contains("school-lamp at 230 V"), "{error}");
    assert!(own.path("tables/school-lamp-230.table").is_file());
    let second = own.detent(&["best", "school-job"]);
    assert!(second.stderr.is_empty());
    assert_eq!(first.stdout, second.stdout);
}

#[test]
fn a_name_that_is_taken_is_an_error() {
    let own = OwnLibrary::new();
    let job = own.read("scenarios/school-job.ron");
    own.write("scenarios/drain-code.ron", &job);
    own.refused(&["scenarios/drain-code.ron", "\"drain-code\" is already"]);
    let own = OwnLibrary::new();
    let board = own.read("boards/school-lamp.ron");
    own.write(
        "boards/key-pad.ron",
        &changed(&board, &[("school-lamp", "key-pad")]),
    );
    own.refused(&["boards/key-pad.ron", "\"key-pad\" is already"]);
    let own = OwnLibrary::new();
    let parts = own.read("parts.ron");
    own.write("parts.ron", &changed(&parts, &[("S-1", "P-0101")]));
    own.refused(&["parts.ron:1: parts[0].number", "P-0101"]);
}

#[test]
fn a_library_with_mistakes_names_every_one() {
    let own = OwnLibrary::new();
    let board = own.read("boards/school-lamp.ron");
    own.write("boards/other.ron", &board);
    own.write("parts.ron", "(parts: [(number: \"S-1\", component: Board, name_key: \"x\", price: -1.0, wait_hours: 24.0, boards: [\"arc-dial\"])])");
    own.refused(&[
        "boards/other.ron: id: ",
        "parts[0].price",
        "parts[0].boards[0]",
    ]);
    let own = OwnLibrary::new();
    own.write("job.ron", "()");
    own.refused(&["job.ron: ", "`scenarios`"]);
    let own = OwnLibrary::new();
    own.write("scenarios/huge.ron", &" ".repeat((1 << 20) + 1));
    own.refused(&["scenarios/huge.ron: ", "longer than"]);
    let gone = OwnLibrary::new();
    std::fs::remove_dir_all(gone.folder.path()).expect("it can be removed");
    gone.refused(&["no such folder"]);
}

#[cfg(unix)]
#[test]
fn nothing_is_read_through_a_link_that_leads_out_of_the_folder() {
    let own = OwnLibrary::new();
    let outside = root().join("scenarios/drain-code.ron");
    let link = own.path("scenarios/linked.ron");
    std::os::unix::fs::symlink(outside, link).expect("a link can be made");
    own.refused(&["scenarios/linked.ron: ", "leads out"]);
}
