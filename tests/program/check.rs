//! What `detent check` finds: each finding in a file that was spoiled for it and in no good one; the course is clean.

use detent_content::{
    ContentLibrary, FileProof, FileReport, KnownBoards, Language, Texts, check_file_in_slices,
};
use detent_training::authoring::{Severity, Shown};
use detent_training::lesson::Mains;
use detent_training::without_breaks;
use serde_json::Value;
use std::path::Path;
use std::process::{Command, Output};
use std::sync::LazyLock;

static LIBRARY: LazyLock<ContentLibrary> =
    LazyLock::new(|| ContentLibrary::builtin().expect("the built-in content is sound"));

static KNOWN: LazyLock<KnownBoards> = LazyLock::new(|| {
    let mut known = KnownBoards::default();
    for (board, mains) in [
        ("arc-dial", Mains::V120Hz60),
        ("key-pad", Mains::V230Hz50),
        ("arc-dial", Mains::V230Hz50),
    ] {
        known.learn(&LIBRARY, board, mains);
    }
    known
});

fn built_in(file: &str) -> String {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    std::fs::read_to_string(root.join(file)).expect("the file is there")
}

/// The file with each of these stretches changed; they must be there.
#[track_caller]
fn spoiled(file: &str, changes: &[(&str, &str)]) -> String {
    let text = built_in(file);
    changes.iter().fold(text, |text, (from, to)| {
        assert!(text.contains(from), "{from} is not in {file}");
        text.replacen(from, to, 1)
    })
}

fn report(file: &str, text: &str) -> FileReport {
    without_breaks(check_file_in_slices(
        &LIBRARY,
        &KNOWN,
        file,
        text.as_bytes(),
    ))
}

/// Name, field and line (from 0) of each finding.
fn findings(report: &FileReport) -> Vec<(&'static str, &str, usize)> {
    let told = report.findings.iter();
    told.map(|f| (f.name(), f.field.as_str(), f.range.start.0))
        .collect()
}

/// What is found in a spoiled file, and nothing in the good one. The line is where `at` stands in the spoiled file. Words
/// for it are there in both languages, and say what is named.
#[track_caller]
fn check(file: &str, changes: &[(&str, &str)], name: &str, field: &str, at: &str) -> FileReport {
    let text = spoiled(file, changes);
    let line = text.lines().position(|line| line.contains(at));
    let line = line.expect("it is in the file");
    let report = report(file, &text);
    let found = findings(&report);
    assert!(
        found.contains(&(name, field, line)),
        "{name} at {field}, line {line}, is not in {found:?}"
    );
    let told = Language::ALL.map(|language| {
        let texts = Texts::load(language);
        let finding = report.findings.iter().find(|f| f.name() == name);
        let told = texts.file_finding(finding.expect("it was found"));
        assert!(!told.contains(['‹', '{']), "{told}");
        told
    });
    assert_ne!(told[0], told[1]);
    report
}

const JOB: &str = "scenarios/drain-code.ron";
/// A job on a board without a dial, and how its dial is worn all the same.
const KEYS: &str = "scenarios/control-after-a-surge.ron";
const WORN_KEYS: [(&str, &str); 1] = [("dial_wear: 0.0", "dial_wear: 0.3")];
const BOARD: &str = "assets/boards/lone-lamp.ron";

#[test]
fn a_good_job_and_a_good_board_have_no_finding() {
    let good = report(JOB, &built_in(JOB));
    assert_eq!(findings(&good), []);
    let FileProof::Scenario(_, proof) = &good.proof else {
        panic!("it is a job");
    };
    let [machine] = &proof.machines[..] else {
        panic!("its fault is named");
    };
    assert_eq!(
        (machine.shown, &machine.codes[..]),
        (Shown::Codes, &[23][..])
    );
    assert!(machine.rivals.iter().all(|rival| rival.told));
    let difficulty = machine.difficulty.as_ref().expect("the expert does it");
    assert!(difficulty.expert_minutes < 80.0);
    // Who knows more passes more often.
    let passing: Vec<f64> = machine.learners.iter().map(|group| group.passing).collect();
    assert!(
        passing.is_sorted() && passing[0] < passing[2],
        "{passing:?}"
    );
    // A steadier hand gets in as often or more often.
    assert!(proof.gesture.is_sorted_by(|a, b| a.share >= b.share));
    assert_eq!(findings(&report(BOARD, &built_in(BOARD))), []);
    // The same again is the same to the bit.
    assert_eq!(good, report(JOB, &built_in(JOB)));
}

#[test]
fn what_the_simulator_says_against_a_job_is_found() {
    let expected = "stale_codes: [],\n    expected_codes: Some([11, 23]),";
    check(
        JOB,
        &[("stale_codes: [],", expected)],
        "other-codes",
        "expected_codes",
        "expected_codes",
    );
    check(
        JOB,
        &[("80.0", "60.0")],
        "too-slow",
        "par_minutes",
        "par_minutes",
    );
    check(JOB, &[("150.0", "100.0")], "too-dear", "budget", "budget");
    // The line contact and the relay before it leave the same open circuit where nothing may be measured live.
    let lock = [
        ("drain-pump.open-winding", "lid-lock.contact-open"),
        ("80.0", "600.0"),
        ("150.0", "900.0"),
    ];
    let report = check(JOB, &lock, "rival-alike", "fault", "fault:");
    let told = Texts::load(Language::En).file_finding(&report.findings[0]);
    assert!(told.contains("Control board: lock relay"), "{told}");
    // With live tests they are told apart.
    let live = [
        &lock[..],
        &[("live_tests_allowed: false", "live_tests_allowed: true")],
    ]
    .concat();
    let live = self::report(JOB, &spoiled(JOB, &live));
    assert_eq!(findings(&live), []);
}

/// A draw that says what it wants is held against every fault that it may draw, and told with all of them.
#[test]
fn a_draw_with_a_filter_is_proved_over_all_that_it_takes() {
    let job = "scenarios/drain-code-several-causes.ron";
    let list =
        "DrawFrom([\"drain-pump.seized\", \"drain-hose.blocked\", \"harness.pump-wire-open\"])";
    let filter = "DrawWhere((components: [DrainPump, DrainHose, Harness], codes: [36], \
                  without: [\"drain-pump.fouled\"]))";
    let filtered = report(job, &spoiled(job, &[(list, filter)]));
    let FileProof::Scenario(scenario, proof) = &filtered.proof else {
        panic!("it is a job: {:?}", filtered.findings);
    };
    assert_eq!(proof.machines.len(), 3);
    let content = ContentLibrary::builtin().expect("sound");
    let taken = content.library(scenario).candidates(&scenario.fault);
    let taken: Vec<&str> = (taken.expect("known").iter())
        .map(|mode| mode.id.as_str())
        .collect();
    assert!(taken.contains(&"drain-hose.kinked") && !taken.contains(&"drain-pump.fouled"));
    assert_eq!(proof.drawn_from, taken);
    for machine in &proof.machines {
        assert!(taken.contains(&machine.modes[0].as_str()));
    }
    // At 230 V this board stores another code for a low outlet than at 120 V.
    let changes = [
        (list, "DrawWhere((codes: [48]))"),
        ("budget: 160.0", "budget: 400.0"),
    ];
    let at = "fault: ";
    let off = check(job, &changes, "other-code-than-drawn", "fault.codes", at);
    let told = off
        .findings
        .iter()
        .filter(|f| f.name() == "other-code-than-drawn");
    assert_eq!(told.count(), 1, "{:?}", off.findings);
}

#[test]
fn the_codes_that_the_author_expects_may_stand_in_any_order() {
    let right = "stale_codes: [],\n    expected_codes: Some([23]),";
    let right = report(JOB, &spoiled(JOB, &[("stale_codes: [],", right)]));
    assert_eq!(findings(&right), []);
}

#[test]
fn wear_where_there_is_no_dial_is_found_and_wear_where_there_is_one_lets_fewer_tries_in() {
    let report = check(
        KEYS,
        &WORN_KEYS,
        "no-dial-to-wear",
        "dial_wear",
        "dial_wear",
    );
    assert_eq!(report.count(Severity::Warning), report.findings.len());
    let shares = |wear: &str| -> Vec<f64> {
        let worn = spoiled(JOB, &[("dial_wear: 0.0", wear)]);
        match self::report(JOB, &worn).proof {
            FileProof::Scenario(_, proof) => proof.gesture.iter().map(|hand| hand.share).collect(),
            FileProof::Board(_) | FileProof::Guide(_) | FileProof::None => panic!("it is a job"),
        }
    };
    let (new, worn) = (shares("dial_wear: 0.0"), shares("dial_wear: 1.0"));
    let fewer = new.iter().zip(&worn).all(|(new, worn)| worn < new);
    assert!(fewer, "{new:?} {worn:?}");
}

#[test]
fn words_that_give_the_component_away_are_found_in_both_languages() {
    let en = [("a light started blinking", "the pump hummed")];
    check(JOB, &en, "gives-away", "complaint.en", "the pump hummed");
    let es = [("con una luz parpadeando", "con la bomba zumbando")];
    check(JOB, &es, "gives-away", "complaint.es", "la bomba zumbando");
    let phrase = [("a light started blinking", "the drain pump hummed")];
    check(JOB, &phrase, "gives-away", "complaint.en", "the drain pump");
    // Another component gives nothing away, nor does a longer word.
    let other = [(
        "a light started blinking",
        "the motor hummed, and the pumpkin soup boiled over",
    )];
    assert_eq!(findings(&report(JOB, &spoiled(JOB, &other))), []);
    let text = built_in(JOB);
    let es = text
        .lines()
        .find(|line| line.contains("es: \"Lea un código"));
    let en = text
        .lines()
        .find(|line| line.contains("en: \"Read one code"));
    let (es, en) = (es.expect("a goal"), en.expect("a goal"));
    let same = [(es, en.replacen("en:", "es:", 1))];
    let same: Vec<(&str, &str)> = same.iter().map(|(a, b)| (*a, b.as_str())).collect();
    check(
        JOB,
        &same,
        "same-in-both-languages",
        "goal.es",
        "es: \"Read one code",
    );
}

#[test]
fn every_mistake_that_the_reader_finds_is_told_with_its_stretch() {
    let changes = [
        ("dial_wear: 0.0", "dial_wear: 7.5"),
        ("entry: 15.0", "entry: -1.0"),
        ("drain-pump.open-winding", "drain-pump.gone"),
    ];
    let text = spoiled(JOB, &changes);
    let report = report(JOB, &text);
    let fields: Vec<&str> = report.findings.iter().map(|f| f.field.as_str()).collect();
    assert_eq!(fields, ["fault", "dial_wear", "points.entry"]);
    let lines: Vec<&str> = text.lines().collect();
    for (finding, stretch) in
        report
            .findings
            .iter()
            .zip(["Named(\"drain-pump.gone\")", "7.5", "-1.0"])
    {
        let ((line, from), (end, to)) = (finding.range.start, finding.range.end);
        assert_eq!(line, end);
        let units: Vec<u16> = lines[line].encode_utf16().collect();
        let told = String::from_utf16(&units[from..to]).expect("whole characters");
        // The only value in brackets takes their path.
        assert!(stretch.contains(&told) && !told.is_empty(), "{told}");
    }
    // Behind what is no letter of one unit: the Language Server Protocol counts in UTF-16.
    let wide = spoiled(JOB, &[("title: (en: \"", "title: (en: \"🧺\", fr: \"")]);
    let wide = self::report(JOB, &wide);
    assert_eq!(wide.count(Severity::Error), 1);
    assert_eq!(wide.findings[0].range.start.0, 2);
}

#[test]
fn what_the_simulator_says_against_a_board_is_found() {
    let spoils: [(&str, &str, &str, &str, &str); 8] = [
        (
            "monitor: DrainSlow, delay_ms: 330000",
            "monitor: DrainSlow, delay_ms: 100",
            "sound-machine-accused",
            "monitors",
            "monitors: [",
        ),
        (
            "minutes: 9.0",
            "minutes: 90.0",
            "sound-machine-never-done",
            "programs[0]",
            "position: 1,",
        ),
        (
            "zero_v: (0.25, 0.8)",
            "zero_v: (0.25, 0.26)",
            "sound-machine-not-recalibrated",
            "recalibration",
            "recalibration: (",
        ),
        (
            "within_ms: 14000",
            "within_ms: 5600",
            "gesture-hardly-met",
            "gesture",
            "gesture: (",
        ),
        (
            "check-taps-and-strainers",
            "check-no-such",
            "unknown-text",
            "sheet[0].checks[0]",
            "check-no-such",
        ),
        (
            "        (position: 1, routine: Recall),\n",
            "",
            "unreadable",
            "menu",
            "menu: [",
        ),
        (
            "id: \"lone-lamp\"",
            "id: \"new-lamp\"",
            "no-control-to-buy",
            "id",
            "id: ",
        ),
        (
            "blink_ms: 440",
            "blink_ms: 90",
            "unreadable",
            "lamps.blink_ms",
            "blink_ms: 90",
        ),
    ];
    for (from, to, name, field, at) in spoils {
        let text = spoiled(BOARD, &[(from, to)]);
        let report = report(BOARD, &text);
        let found = findings(&report);
        let there = found.iter().find(|(n, f, _)| (*n, *f) == (name, field));
        let (_, _, line) = there.unwrap_or_else(|| panic!("{name} is not in {found:?}"));
        let lines: Vec<&str> = text.lines().collect();
        // A list of structs begins on the line of its name, its first entry on the next.
        let near = lines[line.saturating_sub(1)..=(line + 1)].join("\n");
        assert!(near.contains(at), "{name}: {near}");
        for language in Language::ALL {
            for finding in &report.findings {
                let told = Texts::load(language).file_finding(finding);
                assert!(!told.contains(['‹', '{']), "{told}");
            }
        }
    }
}

#[test]
fn a_guide_without_a_job_and_an_examination_that_names_none_are_found() {
    let guide = "scenarios/entry-dial-and-two-buttons.guide.ron";
    assert_eq!(findings(&report(guide, &built_in(guide))), []);
    let alone = report("nowhere/alone.guide.ron", &built_in(guide));
    let found = findings(&alone);
    assert!(
        matches!(found[..], [("no-job-for-guide", "", _)]),
        "{found:?}"
    );
    let sat = "scenarios/first-examination.examination.ron";
    assert_eq!(findings(&report(sat, &built_in(sat))), []);
    let text = built_in(sat);
    let first = text
        .split('"')
        .find(|word| word.contains('-'))
        .expect("a job");
    let report = report(sat, &text.replacen(first, "no-such-job", 1));
    assert!(
        findings(&report)
            .iter()
            .any(|(name, field, _)| (*name, *field) == ("unreadable", "jobs[0]")),
        "{:?}",
        findings(&report)
    );
}

const GUIDE: &str = "scenarios/entry-dial-and-two-buttons.guide.ron";

#[test]
fn a_guide_whose_steps_do_not_do_what_they_say_is_found() {
    let missed = [("shown: [\"Wait(s: 60)\"]", "shown: [\"Wait(s: 6)\"]")];
    let goal = "goal: Bench(Rested)";
    check(GUIDE, &missed, "guide-goal-missed", "steps[11].goal", goal);
    let refused = [("shown: [\"OpenCabinet\"]", "shown: [\"CloseCabinet\"]")];
    check(
        GUIDE,
        &refused,
        "guide-step-refused",
        "steps[18].shown",
        "shown: [\"CloseCabinet\"]",
    );
    let already = [("Window(Looked(Console))", "Window(Looked(Machine))")];
    let goal = "goal: Window(Looked(Machine))";
    check(GUIDE, &already, "guide-goal-already", "steps[0].goal", goal);
    let live = [(
        "shown: [\"NoteCode(56)\", \"Tap(Stop)\"",
        "shown: [\"NoteCode(56)\", \"OpenCabinet\"",
    )];
    let shown = "\"OpenCabinet\"";
    let live = check(GUIDE, &live, "guide-does-harm", "steps[15].shown", shown);
    let mut astray = live.findings.iter();
    let astray = astray.find(|finding| finding.name() == "guide-strays-itself");
    let astray = astray.expect("the next step warns of open panels");
    assert_eq!(astray.field, "steps[16].astray[0]");
    assert_eq!(astray.severity(), Severity::Warning);
    let told = Texts::load(Language::En).file_finding(astray);
    assert!(told.contains("step 17"), "{told}");
    let wrong = [(r#"[\"belt.broken\"]"#, r#"[\"motor.seized\"]"#)];
    check(GUIDE, &wrong, "guide-fails", "steps", "steps: [");
}

#[test]
fn the_command_checks_the_guide_beside_a_job_and_says_what_it_cannot_prove() {
    let folder = tempfile::tempdir().expect("a folder");
    let write = |name: &str, text: &str| {
        let path = folder.path().join(name);
        std::fs::write(&path, text).expect("it can be written");
        path.to_str().expect("a plain path").to_owned()
    };
    let job = write(
        "first.ron",
        &built_in("scenarios/entry-dial-and-two-buttons.ron"),
    );
    let guide = write("first.guide.ron", &built_in(GUIDE));
    let out = detent(&["check", "--json", &job]);
    assert!(out.status.success());
    let printed = String::from_utf8(out.stdout).expect("text");
    let told = super::printed_json::fits("check-1", &printed);
    let files = told["files"].as_array().expect("files");
    assert_eq!(files.len(), 2, "the guide comes with its job");
    assert_eq!(
        (&files[0]["guide"], &files[0]["file"]),
        (&Value::Null, &job.into())
    );
    let proved = &files[1]["guide"];
    assert_eq!(
        (&files[1]["file"], &proved["about_window"]),
        (&guide.clone().into(), &8.into())
    );
    let sum = proved["proved"]
        .as_u64()
        .zip(proved["about_window"].as_u64());
    assert_eq!(sum.map(|(a, b)| a + b), proved["steps"].as_u64());
    for (language, notes) in [
        ("en", ["can only be stated, not proved", "of the points"]),
        (
            "es",
            ["Solo se pueden enunciar, no demostrar", "de los puntos"],
        ),
    ] {
        let out = detent(&["check", "--lang", language, &guide]);
        let told = String::from_utf8_lossy(&out.stdout);
        assert!(out.status.success(), "{told}");
        for note in notes {
            assert!(told.contains(note) && !told.contains('‹'), "{told}");
        }
    }
    // A step that does not reach its goal is an error with its line.
    let short = spoiled(
        GUIDE,
        &[("shown: [\"Wait(s: 60)\"]", "shown: [\"Wait(s: 6)\"]")],
    );
    std::fs::write(&guide, short).expect("it can be written");
    let out = detent(&["check", "--lang", "en", "--quiet", &guide]);
    let told = String::from_utf8_lossy(&out.stdout);
    assert_eq!(out.status.code(), Some(1), "{told}");
    assert!(told.contains("first.guide.ron:107:"), "{told}");
    assert!(
        told.contains("what step 12 shows does not reach its goal"),
        "{told}"
    );
}

fn detent(args: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_detent"))
        .args(args)
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .output()
        .expect("the program starts")
}

#[test]
fn the_command_ends_with_1_for_errors_and_with_strict_for_warnings() {
    let folder = tempfile::tempdir().expect("a folder");
    let write = |name: &str, text: &str| {
        let path = folder.path().join(name);
        std::fs::write(&path, text).expect("it can be written");
        path.to_str().expect("a plain path").to_owned()
    };
    let good = write("good.ron", &built_in(JOB));
    let warned = write("warned.ron", &spoiled(KEYS, &WORN_KEYS));
    let bad = write("bad.ron", &spoiled(JOB, &[("150.0", "100.0")]));
    let code = |args: &[&str]| detent(&[&["check"], args].concat()).status.code();
    assert_eq!(code(&[&good]), Some(0));
    assert_eq!(code(&["--strict", &good]), Some(0));
    assert_eq!(code(&[&warned]), Some(0));
    assert_eq!(code(&["--strict", &warned]), Some(1));
    assert_eq!(code(&[&bad]), Some(1));
    assert_eq!(code(&["no/such.ron"]), Some(2));
    // A built-in job goes by its name, and is not checked twice.
    let out = detent(&[
        "check",
        "--quiet",
        "--lang",
        "en",
        "drain-code",
        "scenarios/drain-code.ron",
    ]);
    let told = String::from_utf8_lossy(&out.stdout);
    assert_eq!(told.trim(), "Files checked: 1. Errors: 0. Warnings: 0.");
    // A folder stands for what is in it, and the report says which is which.
    let whole = folder.path().to_str().expect("a plain path");
    let out = detent(&["check", "--json", "--lang", "en", whole]);
    assert_eq!(out.status.code(), Some(1));
    let told: Value = serde_json::from_slice(&out.stdout).expect("JSON");
    assert_eq!(told["errors"], 1);
    let files = told["files"].as_array().expect("files");
    let names: Vec<&str> = files
        .iter()
        .filter_map(|file| file["file"].as_str())
        .collect();
    assert_eq!(names, [&bad, &good, &warned]);
    let finding = &files[0]["findings"][0];
    assert_eq!(
        (&finding["code"], &finding["severity"]),
        (&"too-dear".into(), &"error".into())
    );
    assert_eq!(finding["range"]["start"]["line"], 19);
    assert_eq!(
        out.stdout,
        detent(&["check", "--json", "--lang", "en", whole]).stdout
    );
    // The way is printed, in both languages.
    for (language, way) in [("en", "The expert’s way"), ("es", "El camino del experto")] {
        let out = detent(&["check", "--lang", language, &good]);
        let told = String::from_utf8_lossy(&out.stdout);
        assert!(told.contains(way) && !told.contains('‹'), "{told}");
    }
}

#[test]
fn the_whole_course_is_clean() {
    let out = detent(&["check", "--strict", "--quiet", "--lang", "en"]);
    let told = String::from_utf8_lossy(&out.stdout);
    assert!(out.status.success(), "{told}");
    // Every built-in board, job, guide and examination.
    let count = |folder: &str| {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join(folder);
        std::fs::read_dir(folder).expect("it is there").count()
    };
    let files = count("scenarios") + count("assets/boards");
    assert_eq!(
        told.trim(),
        format!("Files checked: {files}. Errors: 0. Warnings: 0.")
    );
}

#[test]
fn a_new_file_of_each_kind_is_clean_and_never_written_over_another() {
    let folder = tempfile::tempdir().expect("a folder");
    let run = |args: &[&str]| {
        let out = Command::new(env!("CARGO_BIN_EXE_detent"))
            .args(args)
            .current_dir(folder.path())
            .output();
        out.expect("the program starts")
    };
    for language in ["en", "es"] {
        for (kind, file) in [
            ("scenario", "new-job.ron"),
            ("board", "new-board.ron"),
            ("guide", "new-job.guide.ron"),
            ("course", "course.ron"),
            ("examination", "new.examination.ron"),
            ("plan", "new.plan.ron"),
        ] {
            let written = run(&["new", kind, "--lang", language]);
            assert!(written.status.success(), "{kind}");
            let path = folder.path().join(file);
            let text = std::fs::read_to_string(&path).expect("it was written");
            assert!(text.starts_with("// "), "{kind}");
            let again = run(&["new", kind, "--lang", language]);
            assert_eq!(again.status.code(), Some(2), "{kind}");
            let kept = std::fs::read_to_string(&path).expect("it is still there");
            assert_eq!(text, kept);
        }
        let checked = run(&["check", "--quiet", "--lang", language, "."]);
        let told = String::from_utf8_lossy(&checked.stdout);
        assert!(checked.status.success(), "{told}");
        // The new board has no part at the counter yet; nothing else is to be said.
        assert_eq!(told.lines().count(), 2, "{told}");
        assert!(told.contains("new-board.ron:"), "{told}");
        let written = [
            "new-job.ron",
            "new-board.ron",
            "new-job.guide.ron",
            "course.ron",
            "new.examination.ron",
            "new.plan.ron",
        ];
        for file in written {
            std::fs::remove_file(folder.path().join(file)).expect("it is there");
        }
    }
    // In both languages the same but for the remarks.
    for kind in ["scenario", "guide", "course", "examination", "plan"] {
        let plain = |language: &str| -> Vec<String> {
            let text = built_in(&format!("assets/templates/{kind}.{language}.ron"));
            let lines = text.lines().map(str::trim);
            lines
                .filter(|line| !line.starts_with("//"))
                .map(str::to_owned)
                .collect()
        };
        assert_eq!(plain("en"), plain("es"));
    }
}

#[test]
fn names_are_listed_in_both_languages() {
    let listed = |args: &[&str]| {
        let out = detent(&[&["names"], args].concat());
        assert!(out.status.success(), "{args:?}");
        String::from_utf8(out.stdout).expect("text")
    };
    assert!(listed(&["--lang", "en"]).contains("faults"));
    let faults = listed(&["faults", "--lang", "es"]);
    assert!(faults.contains("drain-pump.open-winding") && faults.contains("Bomba de desagüe"));
    let codes = listed(&["codes", "--board", "key-pad", "--lang", "en"]);
    assert!(codes.lines().count() > 10, "{codes}");
    let json: Value = serde_json::from_str(&listed(&["components", "--json"])).expect("JSON");
    let first = &json["names"][0];
    assert_eq!(
        (&json["kind"], &first["name"]),
        (&"components".into(), &"Supply".into())
    );
    assert_eq!(
        (&first["en"], &first["es"]),
        (&"Outlet".into(), &"Toma de corriente".into())
    );
    assert_eq!(detent(&["names", "nothing"]).status.code(), Some(2));
}
