//! The packed page in a real browser, driven as a person would drive it.
//!
//! These tests need what `cargo browser` packs, Node.js, playwright-core and Chromium, so a plain
//! `cargo test` leaves them out; `.ci/run` provides all of it and runs them:
//!
//! ```sh
//! DETENT_BROWSER=target/browser DETENT_PLAYWRIGHT=…/node_modules/playwright-core \
//!     cargo test --test browser -- --ignored
//! ```

mod stage;
#[path = "stage/attempts.rs"]
mod stage_attempts;

use detent::content::redo;
use detent::record::read_attempt;
use serde_json::Value;
use stage::Stage;
use stage_attempts::random_attempt;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::sync::{Mutex, PoisonError};

/// Attempts done again on both sides.
const ATTEMPTS: u64 = 200;

/// One browser at a time: it draws in software and wants the whole machine.
static BROWSER: Mutex<()> = Mutex::new(());

fn variable(name: &str) -> PathBuf {
    let value = std::env::var_os(name);
    fs::canonicalize(value.unwrap_or_else(|| panic!("{name} is not set; see tests/browser.rs")))
        .unwrap_or_else(|error| panic!("{name}: {error}"))
}

/// Where pictures and attempts of a test go, to be looked at.
fn folder(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR"))
        .join("browser")
        .join(name);
    let _ = fs::remove_dir_all(&folder);
    fs::create_dir_all(&folder).expect("the target folder can be written");
    folder
}

/// Runs one command of tests/browser/drive.mjs.
#[track_caller]
fn drive(command: &str, out: &Path, argument: Option<&Path>) -> Value {
    let _alone = BROWSER.lock().unwrap_or_else(PoisonError::into_inner);
    let done = Command::new("node")
        .arg(Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/browser/drive.mjs"))
        .args([variable("DETENT_PLAYWRIGHT"), variable("DETENT_BROWSER")])
        .arg(out)
        .arg(command)
        .args(argument)
        .stderr(Stdio::inherit())
        .output()
        .expect("node starts");
    assert!(
        done.status.success(),
        "{command} failed; its reason is above"
    );
    let text = String::from_utf8(done.stdout).expect("UTF-8");
    let line = text.lines().last().expect("a line of JSON");
    serde_json::from_str(line).unwrap_or_else(|error| panic!("{error}: {line}"))
}

#[test]
#[ignore = "needs the packed page and a browser"]
fn recorded_attempts_end_in_the_same_state_in_the_browser() {
    let stage = Stage::new();
    let scenarios = stage.shelf().scenarios().expect("the built-in scenarios");
    let out = folder("replays");
    let mut actions = 0;
    let mut native = Vec::new();
    for seed in 0..ATTEMPTS {
        let titled = &scenarios[seed as usize % scenarios.len()];
        let recorded = random_attempt(stage.shelf(), titled, seed, 24);
        let name = format!("{seed:03}.attempt");
        fs::write(out.join(&name), &recorded.bytes).expect("the target folder can be written");
        actions += recorded.actions;
        let footer = recorded.footer;
        native.push((name, format!("{} {:.6}", footer.state, footer.score)));
    }
    let boards: std::collections::BTreeSet<_> =
        scenarios.iter().map(|t| t.scenario.board.clone()).collect();
    assert_eq!(
        boards.len(),
        stage.shelf().boards.len(),
        "a board is left out"
    );
    assert!(actions > 100 * ATTEMPTS as usize / 4, "{actions} actions");

    let found = drive("replays", &out, Some(&out));
    for (name, end) in &native {
        assert_eq!(found["ends"][name].as_str(), Some(end.as_str()), "{name}");
    }
    println!("{ATTEMPTS} attempts, {actions} actions: the same end natively and in the browser");
}

#[test]
#[ignore = "needs the packed page and a browser"]
fn the_main_job_is_done_with_mouse_wheel_and_keys_and_a_reload_in_the_middle() {
    let out = folder("job");
    let found = drive("job", &out, None);
    assert_eq!(found["troubles"], serde_json::json!([]));
    assert_eq!(found["focused"], "bench", "the bench has the keys");
    let (before, after) = (&found["before"]["time_s"], &found["after"]["time_s"]);
    let (before, after) = (before.as_f64().expect("s"), after.as_f64().expect("s"));
    assert!(
        after <= before + 1.0 && before - after < 8.0,
        "{before} s, then {after} s"
    );

    let name = found["saved"].as_str().expect("the copy has a name");
    let bytes = fs::read(out.join(name)).expect("the copy was saved");
    let kept = found["kept"].as_array().expect("a list");
    assert_eq!(kept.len(), 1, "{kept:?}");
    assert_eq!(kept[0]["name"], name);
    assert_eq!(
        kept[0]["text"].as_str().map(str::as_bytes),
        Some(&bytes[..])
    );

    // The same end natively: `redo` compares state and score with what the browser wrote.
    let stage = Stage::new();
    let attempt = read_attempt(name, &bytes).expect("the format of the files");
    let footer = attempt.footer.clone().expect("it was handed in");
    let titled = stage
        .shelf()
        .scenario(&attempt.header.scenario)
        .expect("built in");
    let done = redo(stage.shelf(), &titled, name, &attempt).expect("the same state and score");
    assert_eq!(done.state, footer.state);
    assert!((done.score.total() - footer.score).abs() < 1e-9);
    assert!(
        footer.score > 40.0,
        "the right part was fitted: {}",
        footer.score
    );
}
