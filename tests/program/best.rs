//! What `detent best` prints.

use std::path::Path;

#[test]
fn the_program_says_it_in_both_languages_from_the_built_in_table() {
    let folder = tempfile::tempdir().expect("a folder");
    for (language, found) in [
        ("en", "Drain pump: rotor seized"),
        ("es", "Bomba de desagüe"),
    ] {
        let out = std::process::Command::new(env!("CARGO_BIN_EXE_detent"))
            .args(["best", "drain-code", "--lang", language, "--cache"])
            .arg(folder.path())
            .output()
            .expect("the program starts");
        let told = String::from_utf8_lossy(&out.stdout);
        assert!(
            out.status.success(),
            "{}",
            String::from_utf8_lossy(&out.stderr)
        );
        assert!(told.contains(found) && !told.contains('‹'), "{told}");
        // Codes, five beliefs, five actions, the cost, the tries, and three headings and names.
        assert_eq!(told.lines().count(), 16, "{told}");
    }
}

#[test]
fn a_wash_that_a_worn_dial_never_started_blames_nothing() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let text = std::fs::read_to_string(root.join("scenarios/drain-code.ron")).expect("there");
    let folder = tempfile::tempdir().expect("a folder");
    for wear in ["0.7", "0.8", "0.9", "1.0"] {
        let (before, rest) = text.split_once("dial_wear: ").expect("it has a dial");
        let (_, after) = rest.split_once(',').expect("a value");
        let worn = format!("{before}dial_wear: {wear},{after}");
        std::fs::write(folder.path().join("worn.ron"), worn).expect("the folder can be written");
        let best = |seed: &str| {
            let out = std::process::Command::new(env!("CARGO_BIN_EXE_detent"))
                .args(["best", "worn.ron", "--seed", seed, "--cache"])
                .arg(folder.path())
                .current_dir(folder.path())
                .output()
                .expect("the program starts");
            String::from_utf8(out.stdout).expect("text")
        };
        let told = best("5");
        assert!(
            told.contains("never started: the worn dial slipped"),
            "{told}"
        );
        let changed = |line: &&str| match line.split_once("→") {
            Some((before, after)) => {
                let share = |text: &str| text.trim().split(' ').next().map(str::to_owned);
                share(before) != share(after)
            }
            None => false,
        };
        assert!(!told.lines().any(|line| changed(&line)), "{told}");
    }
}

#[test]
fn a_job_with_several_faults_is_said_to_have_them() {
    for (job, several) in [("repair-or-replace", true), ("drain-code", false)] {
        let folder = tempfile::tempdir().expect("a folder");
        let out = std::process::Command::new(env!("CARGO_BIN_EXE_detent"))
            .args(["best", job, "--lang", "en", "--cache"])
            .arg(folder.path())
            .output()
            .expect("the program starts");
        let told = String::from_utf8_lossy(&out.stdout);
        assert_eq!(told.contains("2 faults at once"), several, "{told}");
    }
}
