//! The packed page in a real browser, driven as a person would drive it.
//!
//! These tests need what detent-pack packs, Node.js, playwright-core and Chromium, so a plain
//! `cargo test` leaves them out; `.ci/run` provides all of it and runs them:
//!
//! ```sh
//! DETENT_BROWSER=target/browser DETENT_PLAYWRIGHT=…/node_modules/playwright-core \
//!     cargo test --test program -- browser --ignored
//! ```

use crate::stage::Stage;
use crate::stage::attempts::random_attempt;
use detent_content::{read_profile, replay_attempt};
use detent_training::practice::{Detail, Skill};
use detent_training::record::{Answer, read_attempt};
use serde_json::Value;
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
    fs::canonicalize(
        value.unwrap_or_else(|| panic!("{name} is not set; see tests/program/browser.rs")),
    )
    .unwrap_or_else(|error| panic!("{name}: {error}"))
}

/// Where pictures and attempts of a test go, to be looked at.
pub(crate) fn folder(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR"))
        .join("browser")
        .join(name);
    let _ = fs::remove_dir_all(&folder);
    fs::create_dir_all(&folder).expect("the target folder can be written");
    folder
}

/// Runs one command of tests/browser/drive.mjs.
#[track_caller]
pub(crate) fn drive(command: &str, out: &Path, argument: Option<&Path>) -> Value {
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
    let scenarios = stage
        .content_library()
        .scenarios()
        .expect("the built-in scenarios");
    let out = folder("replays");
    let mut actions = 0;
    let mut native = Vec::new();
    for seed in 0..ATTEMPTS {
        let scenario_source = &scenarios[seed as usize % scenarios.len()];
        let recorded = random_attempt(stage.content_library(), scenario_source, seed, 24);
        let name = format!("{seed:03}.attempt");
        fs::write(out.join(&name), &recorded.bytes).expect("the target folder can be written");
        actions += recorded.actions;
        native.push((
            name,
            format!("{} {:.6}", recorded.footer.state, recorded.score),
        ));
    }
    let boards: std::collections::BTreeSet<_> =
        scenarios.iter().map(|t| t.scenario.board.clone()).collect();
    assert_eq!(
        boards.len(),
        stage.content_library().boards.len(),
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
    // A figure to compare, no bound: here every frame is drawn in software within such a task.
    let tasks = found["longTasks"].as_array().expect("a list");
    let longest = tasks.iter().filter_map(Value::as_u64).max();
    println!(
        "{} tasks over 50 ms in the job, the longest {longest:?} ms",
        tasks.len()
    );
    let (before, after) = (&found["before"]["time_s"], &found["after"]["time_s"]);
    let (before, after) = (before.as_f64().expect("s"), after.as_f64().expect("s"));
    let ran = found["ran_s"].as_f64().expect("s");
    assert!(
        after <= before + ran + 1.0 && before - after < 8.0,
        "{before} s, then {after} s with the clock running for {ran} s"
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

    // The same end natively: `replay_attempt` compares state and score with what the browser wrote.
    let stage = Stage::new();
    let attempt = read_attempt(name, &bytes).expect("the format of the files");
    let footer = attempt.footer.clone().expect("it was handed in");
    let scenario_source = stage
        .content_library()
        .scenario(&attempt.header.scenario)
        .expect("built in");
    let done = replay_attempt(stage.content_library(), &scenario_source, name, &attempt)
        .expect("the same state and score");
    assert_eq!(done.end, footer);
    let score = done.score.total();
    assert_eq!(footer.answer, Answer::Shown { score });
    assert!(score > 40.0, "the right part was fitted: {score}");
}

/// An attempt that was kept in the browser, read as the file it is.
#[track_caller]
pub(crate) fn kept_attempt(kept: &Value) -> detent_training::record::Attempt {
    let (name, text) = (kept["name"].as_str(), kept["text"].as_str());
    read_attempt(name.expect("a name"), text.expect("a text").as_bytes()).expect("undamaged")
}

#[test]
#[ignore = "needs the packed page and a browser"]
fn a_learner_practises_and_is_there_again_after_a_reload() {
    let out = folder("practice");
    let found = drive("practice", &out, None);
    assert_eq!(found["troubles"], serde_json::json!([]));
    let text = found["profile"].as_str().expect("a profile");
    let profile =
        read_profile("ada-ruiz.learner", text.as_bytes()).expect("the format of the files");
    assert_eq!(profile.name, "Ada Ruiz");
    let skills: Vec<Skill> = profile.answers.iter().map(|a| a.skill).collect();
    assert_eq!(skills, [Skill::LampReading]);
    let read = &profile.answers[0].detail;
    assert!(matches!(read, Detail::Lamps { read: 47, .. }), "{read:?}");
    let picture = fs::read(out.join("progress.png")).expect("the picture was saved");
    assert!(picture.starts_with(b"\x89PNG") && picture.len() > 5_000);
    assert!(
        found["file"]
            .as_str()
            .is_some_and(|name| name.ends_with(".png"))
    );
}

#[test]
#[ignore = "needs the packed page and a browser"]
fn a_tablet_held_upright_is_worked_with_a_finger() {
    let found = drive("touch", &folder("touch"), None);
    assert_eq!(found["troubles"], serde_json::json!([]));
    let dial = |when: &str| found[when]["dial"].as_i64().expect("a position");
    // A quarter turn of a dial with 24 detents.
    let turned = (dial("turned") - dial("before")).rem_euclid(24);
    assert!((5..=7).contains(&turned), "{turned} detents");
    assert_eq!(found["pulled"]["plugged"], false);
    // Every pixel of a dense screen is drawn, upright and after it was turned.
    let pixels: Vec<u64> = found["pixels"]
        .as_array()
        .expect("a list")
        .iter()
        .filter_map(Value::as_u64)
        .collect();
    // Half pixels of the page are rounded.
    let dense = |drawn: u64, laid_out: u64| (2 * drawn).abs_diff(3 * laid_out) <= 2;
    assert!(
        dense(pixels[0], pixels[1]) && dense(pixels[2], pixels[3]),
        "{pixels:?}"
    );
    let wide = |when: &str| found[when]["width"].as_u64() > found[when]["height"].as_u64();
    assert!(!wide("upright") && wide("across"), "{found}");
}

#[test]
#[ignore = "needs the packed page and a browser"]
fn once_loaded_the_bench_opens_without_a_server() {
    let found = drive("offline", &folder("offline"), None);
    assert_eq!(found["seen"]["screen"], "Start");
    let asked: Vec<&str> = found["asked"]
        .as_array()
        .expect("a list")
        .iter()
        .filter_map(Value::as_str)
        .filter(|path| path.contains(".wasm"))
        .collect();
    // The smallest packing, once.
    assert_eq!(asked.len(), 1, "{asked:?}");
    assert!(
        asked[0].ends_with(".br") || asked[0].ends_with(".gz"),
        "{asked:?}"
    );
}

#[test]
#[ignore = "needs the packed page and a browser"]
fn the_bar_shows_how_much_has_come_in() {
    let found = drive("loading", &folder("loading"), None);
    let steps = found["steps"].as_array().expect("a list");
    let values: Vec<f64> = steps.iter().filter_map(|s| s["value"].as_f64()).collect();
    assert!(values.is_sorted(), "{values:?}");
    let between = values.iter().filter(|v| **v > 0.05 && **v < 0.95).count();
    assert!(between > 5, "{values:?}");
    let amount = steps.iter().rev().find_map(|s| s["amount"].as_str());
    assert!(amount.expect("an amount").contains(" MB"));
}

#[test]
#[ignore = "needs the packed page and a browser"]
fn the_bench_takes_the_keys_only_where_nobody_else_wants_them() {
    let found = drive("focus", &folder("focus"), None);
    assert_eq!(found["first"], "bench");
    assert_eq!(found["inside"], "bench", "Tab moves within the bench");
    assert_ne!(found["outside"], "bench", "Escape and Tab leave it");
    assert_eq!(
        (&found["around"], &found["written"]),
        (&"name".into(), &"Ada".into())
    );
}

#[test]
#[ignore = "needs the packed page and a browser"]
fn a_spanish_browser_gets_a_spanish_bench() {
    let found = drive("spanish", &folder("spanish"), None);
    assert_eq!(found["lang"], "es");
    let labels = found["labels"].as_array().expect("a list");
    assert!(labels.iter().any(|l| l == "Mis intentos (0)"), "{labels:?}");
}

#[test]
#[ignore = "needs the packed page and a browser"]
fn without_storage_the_bench_says_so_and_hands_out_a_copy() {
    let out = folder("refused");
    let found = drive("refused", &out, None);
    assert_eq!(found["start"], found["bench"]);
    let name = found["saved"].as_str().expect("a name");
    let bytes = fs::read(out.join(name)).expect("the copy was saved");
    let attempt = read_attempt(name, &bytes).expect("the format of the files");
    assert_eq!(attempt.actions.len(), 1);
}

#[test]
#[ignore = "needs the packed page and a browser"]
fn full_storage_is_said_and_made_good_once_there_is_room() {
    let found = drive("full", &folder("full"), None);
    let kept = found["kept"].as_array().expect("a list");
    assert_eq!(kept.len(), 1);
    // The action that could not be kept is there with the next one.
    assert_eq!(kept_attempt(&kept[0]).actions.len(), 3);
}

#[test]
#[ignore = "needs the packed page and a browser"]
fn attempts_that_cannot_be_used_are_named_and_hurt_nothing() {
    let stage = Stage::new();
    let scenario_source = stage
        .content_library()
        .scenario("exam-120-v-dial")
        .expect("built in");
    let sound = random_attempt(stage.content_library(), &scenario_source, 3, 4).bytes;
    let format = read_attempt("sound-1.attempt", &sound)
        .expect("just recorded")
        .header
        .format;
    let text = String::from_utf8(sound).expect("text");
    let written = format!("format:{format}");
    let newer = text.replacen(&written, "format:99", 1);
    let damaged = text.replacen("(at:", "(aft:", 1);
    assert!(newer != text && damaged != text);
    let given = folder("unusable-given");
    for (name, text) in [
        ("damaged-1.attempt", &damaged),
        ("newer-1.attempt", &newer),
        ("sound-1.attempt", &text),
    ] {
        fs::write(given.join(name), text).expect("the target folder can be written");
    }
    let found = drive("unusable", &folder("unusable"), Some(&given));
    let labels = found["labels"].as_array().expect("a list");
    let says = |words: &str| {
        let any = labels.iter().filter_map(Value::as_str);
        assert!(
            any.into_iter().any(|l| l.contains(words)),
            "{words}: {labels:?}"
        );
    };
    says("This attempt is damaged (damaged-1.attempt:2:");
    says("newer-1.attempt was made by a newer Detent");
    says("See the result");
    assert_eq!(
        (found["kept"].as_u64(), found["left"].as_u64()),
        (Some(4), Some(3))
    );
}

#[test]
#[ignore = "needs the packed page and a browser"]
fn a_tab_closed_while_saving_loses_at_most_the_last_action() {
    let found = drive("closed", &folder("closed"), None);
    assert_eq!(found["troubles"], serde_json::json!([]));
    let kept = found["kept"].as_array().expect("a list");
    assert_eq!(kept.len(), 1);
    let actions = kept_attempt(&kept[0]).actions.len();
    assert!((10..=11).contains(&actions), "{actions} of 11 actions");
}

#[test]
#[ignore = "needs the packed page and a browser"]
fn one_tab_at_a_time_has_the_bench() {
    let found = drive("tabs", &folder("tabs"), None);
    let says = |which: &str| found[which].as_str().expect("words").to_owned();
    assert!(says("refused").contains("open in another tab"));
    assert!(says("first").contains("taken over by another tab"));
    assert_eq!(found["screen"], "Start");
}

#[test]
#[ignore = "needs the packed page and a browser"]
fn the_page_names_no_folder_of_the_machine_that_built_it() {
    let page = variable("DETENT_BROWSER");
    let files = fs::read_dir(&page).expect("the packed page");
    let program = files
        .map(|entry| entry.expect("an entry").path())
        .find(|path| path.extension().is_some_and(|ending| ending == "wasm"))
        .expect("the program");
    let bytes = fs::read(program).expect("the program can be read");
    let names = |folder: &str| bytes.windows(folder.len()).any(|w| w == folder.as_bytes());
    assert!(names("/registry/src/"), "panics name their places");
    let home = std::env::home_dir().expect("a home");
    for folder in [".cargo/", ".rustup/", ".cache/"] {
        let folder = home.join(folder).display().to_string();
        assert!(!names(&folder), "{folder}");
    }
    for folder in [env!("CARGO_MANIFEST_DIR"), "/usr/src/"] {
        assert!(!names(folder), "{folder}");
    }
}

/// How many colors a picture shows.
fn colors(path: &Path) -> usize {
    let bytes = fs::read(path).expect("the picture was taken");
    let image = image::load_from_memory(&bytes).expect("a PNG").to_rgb8();
    let colors: std::collections::BTreeSet<_> = image.pixels().map(|pixel| pixel.0).collect();
    colors.len()
}

/// A course is opened in the page, kept by the browser, and closed; a zip that is none changes nothing.
#[test]
#[ignore = "needs the packed page and a browser"]
fn a_course_is_opened_in_the_page_and_is_there_again_after_a_reload() {
    let given = tempfile::tempdir().expect("a folder");
    let detent = |args: &[&str]| {
        let done = Command::new(env!("CARGO_BIN_EXE_detent"))
            .current_dir(given.path())
            .args(args)
            .output();
        let done = done.expect("the program starts");
        assert!(done.status.success(), "{args:?}: {done:?}");
    };
    detent(&["new", "course", "own/course.ron"]);
    detent(&["new", "scenario", "own/scenarios/own-job.ron"]);
    detent(&["course", "pack", "own", "--to", "course.zip"]);
    let whole = fs::read(given.path().join("course.zip")).expect("it was packed");
    fs::write(given.path().join("broken.zip"), &whole[..whole.len() / 2]).expect("written");
    let found = drive("library", &folder("library"), Some(given.path()));
    assert_eq!(found["before"], true);
    assert_eq!(found["stays"], true);
    assert_eq!(found["troubles"], serde_json::json!([]));
}

/// Where WebGL is there but drawn on the processor, the page would show a frame every few seconds.
#[test]
#[ignore = "needs the packed page and a browser"]
fn where_webgl_is_drawn_on_the_processor_the_bench_paints_for_itself() {
    let found = drive("chooses", &folder("chooses"), None);
    let drawer = found["drawn"][0]["drawer"].as_str().expect("a name");
    assert!(
        drawer.to_ascii_lowercase().contains("swiftshader"),
        "{drawer}"
    );
    let painted: Vec<bool> = (found["drawn"].as_array().expect("two").iter())
        .map(|drawn| drawn["painted"] == true)
        .collect();
    assert_eq!(painted, [true, false]);
    assert_eq!(found["troubles"], serde_json::json!([]));
}

#[test]
#[ignore = "needs the packed page and a browser"]
fn without_webgl_2_the_bench_paints_for_itself_and_hands_work() {
    let out = folder("dark");
    let found = drive("dark", &out, None);
    assert_eq!(found["webgl"], false);
    assert_eq!(found["troubles"], serde_json::json!([]));
    assert_ne!(found["turned"]["dial"], found["before"]["dial"]);
    assert_eq!(found["pulled"]["plugged"], false);
    for name in ["dark-start.png", "dark-console.png", "dark-machine.png"] {
        let colors = colors(&out.join(name));
        assert!(colors > 200, "{name}: {colors} colors");
    }
}

#[test]
#[ignore = "needs the packed page and a browser"]
fn a_job_goes_on_when_the_browser_takes_the_graphics_away() {
    let out = folder("lost");
    let found = drive("lost", &out, None);
    assert_eq!(found["webgl"], false);
    let address = found["address"].as_str().expect("an address");
    assert!(!address.contains("software"), "{address}");
    let (before, after) = (&found["before"], &found["after"]);
    assert_eq!(after["plugged"], false, "the plug lies where it lay");
    let seconds = |seen: &Value| seen["time_s"].as_f64().expect("s");
    let gone = seconds(&before["seen"]) - seconds(after);
    assert!(gone < 8.0, "{gone} s of the job are gone");
    // The same attempt, and the action after it is in it.
    let text = |kept: &Value| {
        let kept = kept.as_array().expect("a list");
        assert_eq!(kept.len(), 1, "{kept:?}");
        kept[0]["text"].as_str().expect("text").to_owned()
    };
    let (kept_before, kept) = (text(&before["kept"]), text(&found["kept"]));
    assert!(kept.starts_with(&kept_before) && kept.len() > kept_before.len());
    assert!(colors(&out.join("lost.png")) > 200);
}

/// A class is served from one computer; three browsers join. One loses its network half way, one loads its page again, one
/// hands in a file: all are verified with the points that doing their attempts again gives here.
#[cfg(feature = "class")]
#[test]
#[ignore = "needs the packed page and a browser"]
fn a_class_of_three_browsers_is_verified_whatever_happens_to_them() {
    let data = tempfile::tempdir().expect("a folder");
    let out = folder("class");
    let page = variable("DETENT_BROWSER");
    let page = page.to_str().expect("text");
    let class = crate::class::start(
        data.path(),
        &["--job", "drain-code", "--page", page, "--title", "Tuesday"],
    );
    let facts =
        serde_json::json!({"address": class.address, "code": class.code, "board": class.board});
    let file = data.path().join("class.json");
    fs::write(&file, facts.to_string()).expect("written");
    let found = drive("class", &out, Some(&file));
    assert_eq!(found["troubles"], serde_json::json!([]));
    assert!(!found["note"].as_str().expect("a note").is_empty());
    let stage = Stage::new();
    let library = stage.content_library();
    let mut seeds = Vec::new();
    for name in ["Ann", "Ben", "Cy"] {
        let kept = found["kept"][name].as_array().expect("attempts");
        assert_eq!(kept.len(), 1, "{name}");
        let text = kept[0]["text"].as_str().expect("text");
        let attempt = read_attempt("class.attempt", text.as_bytes()).expect("sound");
        let scenario_source = library.scenario("drain-code").expect("built in");
        let replayed = replay_attempt(library, &scenario_source, "class.attempt", &attempt)
            .expect("the same again");
        let points = (replayed.score.total() * 10.0).round() / 10.0;
        let row = found["rows"][name].as_str().expect("a row");
        assert!(
            row.contains(&format!("Verified: {points} of 100")),
            "{name}: {points}, {row}"
        );
        seeds.push(attempt.header.seed);
    }
    seeds.sort_unstable();
    seeds.dedup();
    assert_eq!(seeds.len(), 3, "each at a machine of their own");
}
