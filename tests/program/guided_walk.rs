//! The guided first job in the page, from the first start to the score, every step with a picture. Each walk takes some ten
//! minutes where a page is drawn in software, so all are run by hand:
//! `cargo test --test program -- guided_walk --ignored`, with the variables of the other tests in a browser.

use crate::browser::{drive, folder, kept_attempt};
use detent_training::record::Answer;
use serde_json::Value;
use std::fs;

/// The guided first job, done from its first sentence to the score; every step leaves a picture.
#[track_caller]
fn guided_to_its_end(command: &str, score_tab: &str) -> Value {
    let out = folder(command);
    let found = drive(command, &out, None);
    assert_eq!(found["troubles"], serde_json::json!([]));
    let labels = found["labels"].as_array().expect("a list");
    assert!(labels.iter().any(|l| l == score_tab), "{labels:?}");
    let pictures = fs::read_dir(&out).expect("the folder is there").count();
    assert!(pictures >= 20, "{pictures} pictures");
    let kept = found["kept"].as_array().expect("a list");
    assert_eq!(kept.len(), 1, "{kept:?}");
    let attempt = kept_attempt(&kept[0]);
    let Some(Answer::Shown { score }) = attempt.footer.map(|footer| footer.answer) else {
        panic!("the job was not closed");
    };
    assert!(score > 80.0, "the guide was followed: {score}");
    found
}

#[test]
#[ignore = "needs the packed page and a browser"]
fn the_guided_job_is_done_in_spanish_with_keys_alone() {
    guided_to_its_end("guided-keys", "Nota");
}

#[test]
#[ignore = "needs the packed page and a browser"]
fn the_guided_job_is_done_with_a_finger_alone_on_a_flat_machine() {
    guided_to_its_end("guided-flat", "Score");
}

/// The canvas is never looked at nor touched.
#[test]
#[ignore = "needs the packed page and a browser"]
fn the_guided_job_is_done_through_the_elements_for_reading_software_alone() {
    let found = guided_to_its_end("guided-mirror", "Score");
    assert_eq!(found["misplaced"], serde_json::json!([]));
    assert!(found["elements"].as_u64() > Some(30), "{found}");
}
