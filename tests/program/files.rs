//! The program and files that are spoiled, misplaced or not to be trusted: it says so, shows nothing that
//! it should not, and loses nothing.

use super::printed_json::fits;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

/// A technician looks, notes a code and is not done yet.
const BEGINNING: &str = "Unplug\nWait(s: 2)\nPlug\nNoteCode(11)\nLook\n";

struct WorkingFolder {
    folder: tempfile::TempDir,
}

impl WorkingFolder {
    fn new() -> WorkingFolder {
        let folder = tempfile::tempdir().expect("a folder");
        WorkingFolder { folder }
    }

    fn file(&self, name: &str, text: &str) -> PathBuf {
        let path = self.folder.path().join(name);
        fs::write(&path, text).expect("the folder can be written");
        path
    }

    /// Runs the program here.
    fn detent(&self, args: &[&str]) -> Output {
        Command::new(env!("CARGO_BIN_EXE_detent"))
            .args(args)
            .current_dir(self.folder.path())
            .output()
            .expect("the program starts")
    }

    #[track_caller]
    fn good(&self, args: &[&str]) -> String {
        let out = self.detent(args);
        assert!(out.status.success(), "{args:?}: {}", said(&out));
        String::from_utf8(out.stdout).expect("text")
    }

    /// Runs it; it must end with `status`, and what it said about that is returned.
    #[track_caller]
    fn bad(&self, args: &[&str], status: i32) -> String {
        let out = self.detent(args);
        assert_eq!(out.status.code(), Some(status), "{args:?}: {}", said(&out));
        said(&out)
    }

    fn names(&self) -> Vec<String> {
        let entries = fs::read_dir(self.folder.path()).expect("the folder");
        let name = |entry: std::io::Result<fs::DirEntry>| entry.expect("listed").file_name();
        let mut names: Vec<String> = entries.map(|e| name(e).display().to_string()).collect();
        names.sort();
        names
    }
}

fn said(out: &Output) -> String {
    String::from_utf8_lossy(&out.stderr).into_owned()
}

#[test]
fn a_step_that_no_job_has_time_for_is_refused_at_once() {
    let work = WorkingFolder::new();
    work.file("a.script", "Wait(s: 1)\nWait(s: 10000000)\n");
    let said = work.bad(&["play", "drain-code", "a.script"], 2);
    assert!(
        said.contains("a.script:2:") && said.contains("48 h"),
        "{said}"
    );
    // A wait for something that comes soon may be as long as a job.
    work.file(
        "b.script",
        "Until(what: FaultHold, limit_s: 172800)\nWait(s: 1)\n",
    );
    work.good(&["play", "drain-code", "b.script"]);
    assert_eq!(
        work.detent(&["simulate", "drain-code", "--seconds", "10000000"])
            .status
            .code(),
        Some(2)
    );
}

#[test]
fn nothing_is_given_away_before_a_report_that_concludes() {
    let work = WorkingFolder::new();
    let empty = "Report((causes: [], part: None, proof: []))\n";
    for (name, end) in [("none.script", ""), ("empty.script", empty)] {
        work.file(name, &format!("{BEGINNING}{end}"));
        let saved = format!("{name}.attempt");
        let text = work.good(&["play", "drain-code", name, "--save", &saved]);
        // Any two digits may stand in a hash.
        let lines = text.lines().filter(|line| !line.starts_with("state hash"));
        let text: String = lines.collect::<Vec<_>>().join("\n");
        for secret in ["score", "drain-pump", "seized", "23", "%"] {
            assert!(!text.contains(secret), "{secret} in {text}");
        }
        let json = fits(
            "play-1",
            &work.good(&["play", "drain-code", name, "--json"]),
        );
        assert!(json["answer"].is_null());
        let attempt = fs::read_to_string(work.folder.path().join(&saved)).expect("kept");
        assert!(attempt.contains("answer:Withheld"), "{attempt}");
        let replayed = work.good(&["replay", &saved]);
        assert!(
            replayed.contains("was not shown") && !replayed.contains("score "),
            "{replayed}"
        );
    }
    for end in [
        "Report((causes: [], part: None, proof: [], verdict: GivenUp))\n",
        "Report((causes: [], part: None, proof: [], verdict: NothingWrong))\n",
        "Report((causes: [\"belt.broken\"], part: None, proof: []))\n",
    ] {
        work.file("done.script", &format!("{BEGINNING}{end}"));
        let _ = fs::remove_file(work.folder.path().join("done.attempt"));
        let args = [
            "play",
            "drain-code",
            "done.script",
            "--json",
            "--save",
            "done.attempt",
        ];
        let json = fits("play-1", &work.good(&args));
        assert!(json["answer"]["total"].is_number(), "{end}");
        let attempt = fs::read_to_string(work.folder.path().join("done.attempt")).expect("kept");
        assert!(attempt.contains("answer:Shown(score:"), "{attempt}");
    }
}

#[test]
fn a_failed_script_prints_what_came_before_and_can_be_gone_on_with() {
    let work = WorkingFolder::new();
    work.file(
        "a.script",
        &format!("{BEGINNING}Point(to: 99, every_ms: 200)\nUnplug\n"),
    );
    let out = work.detent(&[
        "play",
        "drain-code",
        "a.script",
        "--json",
        "--save",
        "a.attempt",
    ]);
    assert_eq!(out.status.code(), Some(1), "{}", said(&out));
    let json = fits("play-1", &String::from_utf8_lossy(&out.stdout));
    assert_eq!(json["failed"]["line"], 6);
    assert_eq!(json["failed"]["step"], "Point(to:99,every_ms:200)");
    let why = |args: &[&str]| {
        let out = work.detent(&[&["play", "drain-code", "a.script", "--json"], args].concat());
        fits("play-1", &String::from_utf8_lossy(&out.stdout))["failed"]["error"].clone()
    };
    assert_eq!(why(&["--lang", "en"]), json["failed"]["error"]);
    assert_ne!(why(&["--lang", "es"]), json["failed"]["error"]);
    assert_eq!(json["codes_noted"], serde_json::json!([11]));
    assert!(said(&out).contains("a.attempt.part"), "{}", said(&out));
    assert_eq!(work.names(), ["a.attempt.part", "a.script"]);
    let text = work.detent(&["play", "drain-code", "a.script"]);
    assert!(String::from_utf8_lossy(&text.stdout).contains("lamps"));

    // Going on from there is the same as not having been broken off.
    work.file("rest.script", "Wait(s: 3)\nNoteCode(12)\n");
    let seed = work.bad(
        &[
            "play",
            "drain-code",
            "rest.script",
            "--save",
            "a.attempt",
            "--resume",
            "--seed",
            "99",
        ],
        2,
    );
    assert!(seed.contains("--seed"), "{seed}");
    let on = [
        "play",
        "drain-code",
        "rest.script",
        "--json",
        "--save",
        "a.attempt",
        "--resume",
    ];
    let json = fits("play-1", &work.good(&on));
    assert_eq!(json["codes_noted"], serde_json::json!([11, 12]));
    assert_eq!(work.names(), ["a.attempt", "a.script", "rest.script"]);
    assert!(
        work.good(&["replay", "a.attempt"])
            .contains("same state and score")
    );

    // An unfinished attempt stands in nobody's way, a finished one does.
    work.detent(&["play", "drain-code", "a.script", "--save", "b.attempt"]);
    work.good(&["play", "drain-code", "rest.script", "--save", "b.attempt"]);
    let said = work.bad(
        &["play", "drain-code", "rest.script", "--save", "b.attempt"],
        2,
    );
    assert!(said.contains("b.attempt"), "{said}");
}

#[test]
fn a_replay_says_where_an_attempt_was_changed_and_never_what_would_pass() {
    let work = WorkingFolder::new();
    let end = "Report((causes: [\"drain-pump.seized\"], part: None, proof: []))\n";
    work.file("a.script", &format!("{BEGINNING}{end}"));
    work.good(&["play", "drain-code", "a.script", "--save", "a.attempt"]);
    let text = fs::read_to_string(work.folder.path().join("a.attempt")).expect("kept");
    let score = text
        .split("score:")
        .nth(1)
        .and_then(|rest| rest.split(')').next());
    let score = score.expect("a score").to_owned();
    let state = text
        .split("state:\"")
        .nth(1)
        .and_then(|rest| rest.split('"').next());
    let state = state.expect("a state").to_owned();
    let last = text.lines().count();
    for (old, new, place) in [
        // What changes neither state nor score is seen by the digest.
        ("NoteCode(11)".to_owned(), "NoteCode(12)", last),
        ("do:Unplug".to_owned(), "do:OpenCabinet", 3),
        ("drain-pump.seized".to_owned(), "belt.broken", last),
        ("program:\"0".to_owned(), "program:\"7", last),
        (format!("score:{score}"), "score:100", last),
        (state.clone(), "00ff", last),
        (format!("Shown(score:{score})"), "Withheld", last),
        ("do:Plug)".to_owned(), "do:Unplug)", 3),
    ] {
        let changed = text.replacen(&old, new, 1);
        assert_ne!(changed, text, "{old}");
        work.file("b.attempt", &changed);
        let out = work.detent(&["replay", "b.attempt"]);
        let all = format!("{}{}", said(&out), String::from_utf8_lossy(&out.stdout));
        assert_eq!(out.status.code(), Some(1), "{new}: {all}");
        assert!(all.contains(&format!("line {place}")), "{new}: {all}");
        assert!(
            !all.contains(&state) && !all.contains(&score),
            "{new}: {all}"
        );
    }
    // An unfinished attempt tells neither.
    let part: Vec<&str> = text.lines().take(last - 1).collect();
    work.file("c.attempt.part", &format!("{}\n", part.join("\n")));
    let told = work.good(&["replay", "c.attempt.part"]);
    assert!(!told.contains("state") && !told.contains("score"), "{told}");
}

#[test]
fn a_replay_opens_scenarios_only_and_finds_those_that_were_moved() {
    let work = WorkingFolder::new();
    let scenario = Path::new(env!("CARGO_MANIFEST_DIR")).join("scenarios/drain-code.ron");
    let text = fs::read_to_string(scenario).expect("it is there");
    let own = text.replacen("seed: ", "seed: 1", 1);
    assert_ne!(own, text);
    work.file("own.ron", &own);
    work.file("a.script", BEGINNING);
    work.good(&["play", "own.ron", "a.script", "--save", "a.attempt"]);
    work.good(&["replay", "a.attempt"]);
    // Beside the attempt.
    let other = work.folder.path().join("other");
    fs::create_dir(&other).expect("a folder");
    for name in ["own.ron", "a.attempt"] {
        fs::rename(work.folder.path().join(name), other.join(name)).expect("moved");
    }
    work.good(&["replay", "other/a.attempt"]);
    // Another text, and none at all.
    work.file("other/own.ron", &text);
    let said = work.bad(&["replay", "other/a.attempt"], 2);
    assert!(
        said.contains("own.ron") && said.contains("--scenario"),
        "{said}"
    );
    fs::remove_file(other.join("own.ron")).expect("there");
    let said = work.bad(&["replay", "other/a.attempt"], 2);
    assert!(said.contains("--scenario"), "{said}");
    // Built in, whatever stands in the folder under its name.
    work.good(&["play", "drain-code", "a.script", "--save", "b.attempt"]);
    fs::create_dir(work.folder.path().join("scenarios")).expect("a folder");
    work.file("scenarios/drain-code.ron", "not a scenario: my diary\n");
    work.good(&["replay", "b.attempt"]);
    // An attempt cannot have any other file read out.
    let attempt = fs::read_to_string(work.folder.path().join("b.attempt")).expect("kept");
    let diary = work.file("diary.txt", "my diary\n");
    let given = ["replay", "b.attempt", "--scenario", "diary.txt"];
    let said = work.bad(&given, 2);
    assert!(
        said.contains("diary.txt") && !said.contains("my diary"),
        "{said}"
    );
    work.good(&["replay", "b.attempt", "--scenario", "drain-code"]);
    for name in [diary.to_str().expect("plain"), "scenarios/diary.ron"] {
        work.file("scenarios/diary.ron", "my diary\n");
        work.file(
            "c.attempt",
            &attempt.replace("scenarios/drain-code.ron", name),
        );
        let said = work.bad(&["replay", "c.attempt"], 2);
        assert!(!said.contains("my diary"), "{said}");
    }
}

#[test]
fn folders_and_links_in_a_circle_are_told_from_nothing() {
    let work = WorkingFolder::new();
    work.file("a.script", BEGINNING);
    fs::create_dir(work.folder.path().join("folder.ron")).expect("a folder");
    let said = work.bad(&["play", "folder.ron", "a.script"], 2);
    assert!(
        said.contains("folder.ron") && said.contains("not a file"),
        "{said}"
    );
    assert!(!said.contains("there is no such file"), "{said}");
    #[cfg(unix)]
    {
        let link = work.folder.path().join("loop.ron");
        std::os::unix::fs::symlink(&link, &link).expect("a link");
        let said = work.bad(&["play", "loop.ron", "a.script"], 2);
        assert!(!said.contains("there is no such file"), "{said}");
    }
    let said = work.bad(&["play", "nothing.ron", "a.script"], 2);
    assert!(said.contains("there is no such file"), "{said}");
}

#[test]
fn control_characters_of_a_file_never_reach_the_terminal() {
    let work = WorkingFolder::new();
    let steers = |text: &[u8]| {
        let text = String::from_utf8_lossy(text).into_owned();
        text.chars().any(|c| c.is_control() && c != '\n') || text.contains('\u{202e}')
    };
    let scenario = Path::new(env!("CARGO_MANIFEST_DIR")).join("scenarios/drain-code.ron");
    let text = fs::read_to_string(scenario).expect("it is there");
    let evil = "\u{1b}]0;owned\u{7}\u{9b}2J\u{202e}";
    work.file(
        "evil.ron",
        &text.replacen("title: (en: \"", &format!("title: (en: \"{evil}"), 1),
    );
    work.file(
        "bad.ron",
        &text.replacen("board: \"", &format!("board: \"{evil}"), 1),
    );
    work.file("a.script", BEGINNING);
    work.file("bad.script", &format!("Order(\"{evil}\")\n"));
    work.file("worse.script", &format!("Kick{evil}\n"));
    work.file(
        "bad.attempt",
        &format!("DetentAttempt(format:2,{evil}:3)\n"),
    );
    work.file(
        "bad.learner",
        &format!("Learner(format:1,name:\"{evil}\",target:0.75,answers:[])"),
    );
    for args in [
        &["play", "evil.ron", "a.script"][..],
        &["play", "evil.ron", "a.script", "--json"],
        &["play", "bad.ron", "a.script"],
        &["play", "drain-code", "bad.script"],
        &["play", "drain-code", "bad.script", "--json"],
        &["play", "drain-code", "worse.script"],
        &["replay", "bad.attempt"],
        &["practice", "bad.learner"],
    ] {
        let out = work.detent(args);
        assert!(
            !steers(&out.stdout),
            "{args:?}: {:?}",
            String::from_utf8_lossy(&out.stdout)
        );
        assert!(!steers(&out.stderr), "{args:?}: {:?}", said(&out));
    }
    let shown = work.good(&["play", "evil.ron", "a.script"]);
    assert!(shown.contains("\\u{1b}]0;owned"), "{shown}");
}

#[test]
fn what_a_board_has_not_is_refused() {
    let work = WorkingFolder::new();
    work.file("a.script", "Wait(s: 1)\nTap(More)\n");
    let said = work.bad(&["play", "drain-code", "a.script"], 1);
    assert!(
        said.contains("a.script:2:") && said.contains("More"),
        "{said}"
    );
}

/// Answers of so many learners as the window saves them; every third answer is wrong at first, later none is.
fn saved_answers(folder: &WorkingFolder, learners: usize, answers: usize) -> Vec<String> {
    let file = |n: usize| {
        let mut text = "at,skill,right,took_s\n".to_owned();
        for at in 0..answers {
            let right = u8::from(at > answers / 2 || !(at + n).is_multiple_of(3));
            text += &format!("2026-11-27T12:{:02}:00Z,proof,{right},20\n", at % 60);
        }
        let name = format!("{n}.csv");
        folder.file(&name, &text);
        name
    };
    (0..learners).map(file).collect()
}

#[test]
fn parameters_are_fitted_to_saved_answers() {
    let folder = WorkingFolder::new();
    let files = saved_answers(&folder, 12, 20);
    let args = ["practice", "--fit"].into_iter();
    let args: Vec<&str> = args.chain(files.iter().map(String::as_str)).collect();
    let told = folder.good(&args);
    let row = told
        .lines()
        .find(|line| line.starts_with("Proving the fault"));
    let row: Vec<&str> = row.expect("a row").split_whitespace().collect();
    let rates: Vec<f64> = (row[3..7].iter())
        .map(|rate| rate.parse().expect("a rate"))
        .collect();
    assert!(
        rates.iter().all(|rate| (0.0..=1.0).contains(rate)),
        "{told}"
    );
    assert!(rates[2] < 0.5 && rates[3] < 0.5, "{told}");
    assert_eq!(&row[7..9], ["12", "240"], "{told}");
    assert!(
        told.contains("too few answers: 0 from 0 learners"),
        "{told}"
    );

    let told = folder.good(&[&args[..], &["--json"]].concat());
    let told = fits("practice-fit-1", &told);
    let skills = told["skills"].as_array().expect("skills");
    let proof = skills.iter().find(|skill| skill["skill"] == "proof");
    let fitted = &proof.expect("it was fitted")["fitted"];
    assert_eq!(
        format!("{:.3}", fitted["slip"].as_f64().expect("a chance")),
        row[6]
    );
    let others = skills.iter().filter(|skill| skill["skill"] != "proof");
    assert!(others.into_iter().all(|skill| skill["fitted"].is_null()));
}

/// Whoever asks for Spanish hears what is wrong with a file in Spanish.
#[test]
fn mistakes_in_files_are_told_in_the_language_that_is_asked_for() {
    let work = WorkingFolder::new();
    work.file("a.script", BEGINNING);
    work.file("bad.script", "Unplug\nWait(s: x)\n");
    work.file(
        "bad.ron",
        "(\n    title: (en: \"A\", es: \"A\"),\n    board: 7,\n)\n",
    );
    work.file("bad.learner", "(\n    format: 1,\n    name: \"\",\n)\n");
    work.file("bad.attempt", "DetentAttempt(format:9)\n");
    work.file("bad.csv", "at,skill,right,took_s\nnever,proof,1,20\n");
    for (args, place, spanish) in [
        (
            &["play", "bad.ron", "a.script"][..],
            "bad.ron:3: board:",
            "aquí va un texto",
        ),
        (
            &["play", "drain-code", "bad.script"],
            "bad.script:2: Wait:",
            "README tiene ejemplos",
        ),
        (
            &["play", "gone.ron", "a.script"],
            "gone.ron:",
            "no hay tal archivo",
        ),
        (
            &["play", "drain-code", "gone.script"],
            "gone.script:",
            "no se puede leer: no existe",
        ),
        (
            &["practice", "bad.learner"],
            "bad.learner:1: target:",
            "falta el campo «target»",
        ),
        (
            &["practice", "--fit", "bad.csv"],
            "bad.csv:2: at:",
            "es «never»; escriba un momento",
        ),
        (
            &["replay", "bad.attempt"],
            "bad.attempt:1: format:",
            "use un Detent más nuevo",
        ),
    ] {
        let told = ["en", "es"].map(|language| {
            let args = [args, &["--lang", language]].concat();
            work.bad(&args, 2)
        });
        for told in &told {
            assert!(told.contains(place), "{place} is not in: {told}");
        }
        assert!(told[1].contains(spanish), "{}", told[1]);
        assert!(!told[0].contains(spanish), "{}", told[0]);
    }
}

#[test]
fn the_line_of_a_mistake_is_shown_with_a_mark_under_it() {
    let work = WorkingFolder::new();
    work.file("a.script", BEGINNING);
    work.file("bad.script", "Unplug\n  Wait(s: x) // soon\n");
    let scenario = Path::new(env!("CARGO_MANIFEST_DIR")).join("scenarios/drain-code.ron");
    let text = fs::read_to_string(scenario).expect("it is there");
    let line = |text: &str, start: &str| {
        let found = text
            .lines()
            .position(|line| line.trim_start().starts_with(start));
        found.expect("there is such a line") + 1
    };
    let board = text.replacen("board: \"", "board: \"x", 1);
    work.file("board.ron", &board);
    let comma = text.replacen("seed: ", "seed: 1\n    was: ", 1);
    work.file("comma.ron", &comma);
    for language in ["en", "es"] {
        let told = |scenario: &str, script: &str| {
            work.bad(&["play", scenario, script, "--lang", language], 2)
        };
        let said = told("board.ron", "a.script");
        let shown: Vec<&str> = said.lines().skip(1).collect();
        let [margin, shown, mark] = shown[..] else {
            panic!("{said}")
        };
        let number = line(&board, "board:").to_string();
        assert!(
            shown.starts_with(&format!(" {number} |     board: \"x")),
            "{said}"
        );
        assert_eq!(margin.trim(), "|");
        // The mark is as long as the text and stands under it.
        let (start, end) = (shown.find('"'), shown.rfind('"'));
        assert_eq!((mark.find('^'), mark.rfind('^')), (start, end), "{said}");

        let said = told("comma.ron", "a.script");
        let number = line(&comma, "seed:").to_string();
        let blanks = " ".repeat(number.len());
        let expected = format!(" {number} |     seed: 1\n {blanks} |            ^\n");
        assert!(said.contains(&expected), "{said}");

        let said = told("drain-code", "bad.script");
        assert!(
            said.contains(" 2 |   Wait(s: x) // soon\n   |           ^\n"),
            "{said}"
        );
        // Where no line is to blame none is shown.
        assert_eq!(told("gone.ron", "a.script").lines().count(), 1);
    }
}

#[test]
fn too_few_answers_and_bad_files_are_refused() {
    let folder = WorkingFolder::new();
    let few = saved_answers(&folder, 1, 10);
    folder.file("bad.csv", "at,skill,right,took_s\nnever,proof,1,20\n");
    for (file, words) in [
        (few[0].as_str(), "too few answers: 10 from 1 learners"),
        ("bad.csv", "bad.csv:2: at: is \"never\""),
        ("gone.csv", "gone.csv"),
    ] {
        let out = folder.detent(&["practice", "--fit", file]);
        let told = String::from_utf8_lossy(&out.stderr).into_owned();
        assert_eq!(out.status.code(), Some(2), "{told}");
        assert!(told.contains(words), "{told}");
        assert!(out.stdout.is_empty());
    }
}
