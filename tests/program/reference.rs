//! `detent reference` and the names that come from it.

use serde_json::Value;
use std::fs;
use std::path::Path;
use std::process::{Command, Output};

fn detent(args: &[&str]) -> Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_detent"));
    command.args(args).output().expect("the program starts")
}

#[track_caller]
fn printed(args: &[&str]) -> String {
    let out = detent(args);
    assert!(out.status.success(), "{args:?}");
    String::from_utf8(out.stdout).expect("text")
}

fn kept(path: &str) -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(path);
    fs::read_to_string(path).expect("it is kept")
}

#[test]
fn page_and_schema_are_printed_as_they_are_kept() {
    for kind in [
        "scenario",
        "board",
        "guide",
        "examination",
        "parts",
        "course",
        "plan",
    ] {
        let page = printed(&["reference", kind, "--lang", "es"]);
        assert_eq!(page, kept(&format!("assets/reference/{kind}.md")));
        let schema = printed(&["reference", kind, "--json"]);
        assert_eq!(schema, kept(&format!("assets/schema/{kind}.json")));
    }
    let kinds = printed(&["reference", "--lang", "es"]);
    assert!(
        kinds.lines().count() == 7 && kinds.contains("placa"),
        "{kinds}"
    );
    assert_eq!(detent(&["reference", "wash"]).status.code(), Some(2));
}

#[test]
fn fields_and_goals_of_guides_are_listed() {
    let fields = printed(&["names", "fields", "--lang", "en"]);
    let line = |name: &str| {
        let found = fields
            .lines()
            .find(|line| line.split_whitespace().next() == Some(name));
        let said = found
            .unwrap_or_else(|| panic!("{name} is listed"))
            .split_whitespace();
        said.skip(1).collect::<Vec<_>>().join(" ")
    };
    for (name, said) in [
        (
            "scenario.par_minutes",
            "number, min, more than 0, at most 2880",
        ),
        ("scenario.hints_allowed", "true or false, true if left out"),
        ("board.codes", "[Code]"),
        ("board.Code.code", "whole number, 1 to 99"),
        ("board.supply", "{Mains: SupplyRules}"),
        (
            "board.GestureStep.Turn.window_ms",
            "Some(whole number) or None, ms, None if left out",
        ),
        ("guide.Step.say", "Bilingual"),
        ("examination.minutes", "whole number, min, 1 to 480"),
        ("parts.Part.price", "number, units of money, 0 to 1000000"),
    ] {
        assert_eq!(line(name), said, "{name}");
    }
    let goals = printed(&["names", "guide-goals", "--json"]);
    let goals: Value = serde_json::from_str(&goals).expect("JSON");
    let goals = goals["names"].as_array().expect("a list");
    for name in ["Bench(Rested)", "Bench(Did(…))", "Window(ClockAt(…))"] {
        assert!(
            goals.iter().any(|goal| goal["name"] == name),
            "{name}: {goals:?}"
        );
    }
}
