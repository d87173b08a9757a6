//! The whole job from scripts, through the real program: an expert who does it right on a fault
//! drawn at random, and the classic mistakes, each scored down.

use serde_json::Value;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

fn script(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("tests/scripts")
        .join(name)
}

fn detent(args: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_detent"))
        .args(args)
        .output()
        .expect("the program starts")
}

#[track_caller]
fn play(scenario: &str, name: &str, seed: &str) -> Value {
    let path = script(name);
    let out = detent(&[
        "play",
        scenario,
        path.to_str().expect("a plain path"),
        "--seed",
        seed,
        "--json",
    ]);
    assert!(
        out.status.success(),
        "{}",
        String::from_utf8_lossy(&out.stderr)
    );
    serde_json::from_slice(&out.stdout).expect("JSON")
}

/// Reasons for which this dimension lost points.
fn lost(result: &Value, dimension: &str) -> Vec<String> {
    let dimensions = result["answer"]["dimensions"]
        .as_array()
        .expect("dimensions");
    let d = dimensions
        .iter()
        .find(|d| d["dimension"] == dimension)
        .expect("the dimension");
    let reasons = d["lost"].as_array().expect("losses");
    reasons
        .iter()
        .map(|l| l["reason"].as_str().expect("a reason").to_owned())
        .collect()
}

/// What the machine went through: kind, and the monitor or the code that belongs to it.
fn milestones(result: &Value) -> Vec<String> {
    let all = result["answer"]["milestones"].as_array();
    let told = |milestone: &Value| {
        let kind = milestone["kind"].as_str().expect("a kind");
        let monitor = milestone["monitor"].as_str().map(str::to_owned);
        let code = milestone["code"].as_u64().map(|code| code.to_string());
        [Some(kind.to_owned()), monitor, code]
            .into_iter()
            .flatten()
            .collect::<Vec<_>>()
            .join(" ")
    };
    all.expect("milestones").iter().map(told).collect()
}

#[test]
fn an_expert_does_the_whole_job_on_a_drawn_fault() {
    let result = play("exam-120-v-dial", "whole-job.script", "137");
    let seen = milestones(&result);
    // Stopped by itself, rest, entry, recalibration that fails, code read, recalibration that
    // passes, proving cycle: in this order.
    let mut rest = seen.iter();
    for wanted in [
        "held lock-not-proven",
        "power-reset",
        "service-entered",
        "calibration-failed lock-not-proven",
        "code-shown 42",
        "calibration-passed",
        "program-finished",
    ] {
        assert!(
            rest.any(|kind| *kind == wanted),
            "{wanted} is missing or too late in {seen:?}"
        );
    }
    let tries = result["tries"].as_array().expect("tries");
    assert!(
        (tries.iter()).any(|t| t["broken_rule"] == "hold-too-short" && t["by_ms"] == 400),
        "one try failed, and its trace says by how much: {tries:?}"
    );
    let readings = result["readings"].as_array().expect("readings");
    assert!(readings.len() >= 6);
    let answer = &result["answer"];
    assert_eq!(answer["hidden"][0], "lid-lock.contact-open");
    assert_eq!(answer["total"], answer["of"], "{answer:#}");
}

#[test]
fn each_classic_mistake_costs_points() {
    let result = play("exam-120-v-dial", "classic-mistakes.script", "137");
    for (dimension, reason) in [
        ("entry", "rest-too-short"),
        ("entry", "failed-try"),
        ("reading", "misread"),
        ("reading", "code-not-noted"),
        ("reasoning", "bought-on-the-code"),
        ("reasoning", "good-board-replaced"),
        ("reasoning", "not-cured"),
        ("reasoning", "wrong-cause"),
        ("reasoning", "wrong-part-named"),
        ("safety", "opened-live"),
        ("safety", "ohms-on-live"),
        ("safety", "shock"),
        ("safety", "not-proved-dead"),
        ("cost", "not-cured"),
        ("proof", "no-evidence"),
        ("proof", "not-recalibrated"),
        ("proof", "no-proving-run"),
    ] {
        assert!(
            lost(&result, dimension).iter().any(|r| r == reason),
            "{dimension}: {reason} in {:#}",
            result["answer"]
        );
    }
    let (total, of) = (
        result["answer"]["total"].as_f64().expect("points"),
        result["answer"]["of"].as_f64().expect("points"),
    );
    assert!(total < 0.2 * of, "{total} of {of}");
}

#[test]
fn the_same_script_on_another_seed_meets_another_fault() {
    let path = script("whole-job.script");
    let path = path.to_str().expect("a plain path");
    let out = detent(&["play", "exam-120-v-dial", path, "--seed", "5", "--json"]);
    // The expert's script was made for a lock fault; on a pump fault it cannot cure the machine.
    if out.status.success() {
        let result: Value = serde_json::from_slice(&out.stdout).expect("JSON");
        assert_eq!(result["answer"]["hidden"][0], "drain-pump.open-winding");
        assert!(lost(&result, "reasoning").iter().any(|r| r == "not-cured"));
    } else {
        assert_eq!(out.status.code(), Some(1));
        assert!(String::from_utf8_lossy(&out.stderr).contains("whole-job.script:"));
    }
}

#[test]
fn steps_and_reports_that_make_no_sense_are_refused_with_their_line() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("odd.script");
    for (line, status, words) in [
        ("Point(to: 99, every_ms: 200)", 1, "cannot be chosen"),
        ("Turn(way: Up, detents: 1, every_ms: 200)", 2, "Left"),
        ("Tap(Go)", 2, "Start"),
        (
            "Report((cause: Some(\"foo\"), part: None, proof: []))",
            1,
            "detent faults",
        ),
        (
            "Report((cause: None, part: Some(\"P-XXXX\"), proof: []))",
            1,
            "P-XXXX",
        ),
        (
            "Report((cause: None, part: None, proof: [77]))",
            1,
            "no reading 77",
        ),
    ] {
        std::fs::write(&path, format!("Wait(s: 1)\n{line}\n")).expect("a file");
        let out = detent(&["play", "drain-code", path.to_str().expect("a plain path")]);
        let said = String::from_utf8_lossy(&out.stderr).into_owned();
        assert_eq!(out.status.code(), Some(status), "{line}: {said}");
        assert!(
            said.contains("odd.script:2:") && said.contains(words),
            "{line}: {said}"
        );
    }
}

#[test]
fn sheet_and_parts_say_what_a_script_needs() {
    let sheet = String::from_utf8(detent(&["sheet"]).stdout).expect("text");
    for needed in ["42", "lid-lock.1", "22", "X2"] {
        assert!(sheet.contains(needed), "{needed}");
    }
    let parts = String::from_utf8(detent(&["--lang", "es", "parts"]).stdout).expect("text");
    assert!(parts.contains("P-0701") && parts.contains('¤'));
    assert_eq!(detent(&["sheet", "--board", "nope"]).status.code(), Some(2));
    assert_eq!(detent(&["sheet", "nope"]).status.code(), Some(2));
    // A board by its name, and by a job on it.
    let of = |args: &[&str]| detent(&[&["sheet"], args].concat()).stdout;
    assert_eq!(of(&["key-pad"]), of(&["--board", "key-pad"]));
    assert_ne!(of(&["key-pad"]), of(&["arc-dial"]));
}

#[test]
fn a_saved_attempt_replays_to_the_same_state_and_score() {
    let folder = tempfile::tempdir().expect("a folder");
    let saved = folder.path().join("job.attempt");
    let saved = saved.to_str().expect("a plain path");
    let path = script("whole-job.script");
    let out = detent(&[
        "play",
        "exam-120-v-dial",
        path.to_str().expect("a plain path"),
        "--seed",
        "137",
        "--save",
        saved,
    ]);
    assert!(
        out.status.success(),
        "{}",
        String::from_utf8_lossy(&out.stderr)
    );
    let out = detent(&["replay", saved]);
    assert!(
        out.status.success(),
        "{}",
        String::from_utf8_lossy(&out.stderr)
    );
    assert!(String::from_utf8_lossy(&out.stdout).contains("same state and score"));

    // Another action is another attempt: the replay says so.
    let text = std::fs::read_to_string(saved).expect("the attempt");
    let changed = text.replacen("NoteCode(42)", "NoteCode(43)", 1);
    assert_ne!(changed, text);
    let other = folder.path().join("changed.attempt");
    std::fs::write(&other, changed).expect("a file");
    let out = detent(&["replay", other.to_str().expect("a plain path")]);
    assert_eq!(
        out.status.code(),
        Some(1),
        "{}",
        String::from_utf8_lossy(&out.stdout)
    );
}

#[test]
fn wrong_use_is_told_apart_from_failed_work() {
    let path = script("whole-job.script");
    let path = path.to_str().expect("a plain path");
    let status = |args: &[&str]| {
        (
            detent(args).status.code(),
            String::from_utf8_lossy(&detent(args).stderr).into_owned(),
        )
    };
    let (code, said) = status(&["play", "no-such-scenario", path]);
    assert_eq!(code, Some(2));
    assert!(said.contains("no-such-scenario"), "{said}");
    let (code, said) = status(&["replay", path]);
    assert_eq!(code, Some(2), "{said}");
    assert!(said.contains("whole-job.script"), "{said}");
    assert_eq!(status(&["--lang", "xx", "scenarios"]).0, Some(2));
    assert_eq!(status(&["simulate"]).0, Some(2));
}

#[test]
fn wrong_use_is_told_in_the_language_that_it_asks_for() {
    for (args, told) in [
        (&["--lang", "es", "play", "--sed"][..], "ninguna opción"),
        (&["simulate", "--lang=es"], "Falta: <TRABAJO>"),
        (&["--lang", "en", "play", "--sed"], "There is no option"),
    ] {
        let out = detent(args);
        assert_eq!(out.status.code(), Some(2), "{args:?}");
        let said = String::from_utf8_lossy(&out.stderr);
        assert!(said.contains(told), "{args:?}: {said}");
    }
}

#[test]
fn simulate_writes_signals_as_csv() {
    let out = detent(&[
        "simulate",
        "drain-code",
        "--seconds",
        "240",
        "--every-ms",
        "10000",
        "--csv",
    ]);
    assert!(out.status.success());
    let mut table = csv::Reader::from_reader(out.stdout.as_slice());
    let headers = table.headers().expect("a header").clone();
    let column = |name: &str| headers.iter().position(|h| h == name).expect("the column");
    let (level, mode) = (column("level_mm"), column("mode"));
    let rows: Vec<csv::StringRecord> = table.records().map(|r| r.expect("a row")).collect();
    assert_eq!(rows.len(), 24);
    assert!(
        rows.iter()
            .any(|r| r[level].parse::<f64>().expect("a number") > 290.0),
        "the tub fills"
    );
    assert!(rows.iter().all(|r| !r[mode].is_empty()));
}

#[test]
fn every_shipped_scenario_is_listed_and_can_be_set_up() {
    let out = detent(&["scenarios", "--lang", "es"]);
    let text = String::from_utf8(out.stdout).expect("text");
    let jobs: Vec<&str> = text.lines().filter(|l| l.starts_with("  ")).collect();
    assert!(jobs.len() >= 30, "{} jobs", jobs.len());
    let folder = tempfile::tempdir().expect("a folder");
    let nothing = folder.path().join("nothing.script");
    std::fs::write(&nothing, "// look, do nothing\nWait(s: 1)\n").expect("a file");
    for line in jobs {
        let name = line.split_whitespace().next().expect("a name");
        let out = detent(&[
            "play",
            name,
            nothing.to_str().expect("a plain path"),
            "--json",
        ]);
        assert!(
            out.status.success(),
            "{name}: {}",
            String::from_utf8_lossy(&out.stderr)
        );
        let result: Value = serde_json::from_slice(&out.stdout).expect("JSON");
        assert!(result["answer"].is_null(), "no answers before the report");
    }
}
