//! The tables of tests/SOURCES.md: what they name is there, and the limits of voltage stand where they say.

use crate::rust_files::{root, rust_files};
use std::collections::BTreeSet;
use std::fs;

/// Names of the tests in a source: the functions behind `#[test]`.
fn tests_in(text: &str) -> impl Iterator<Item = &str> {
    text.split("#[test]").skip(1).filter_map(|behind| {
        let (_, name) = behind.split_once("fn ")?;
        name.split_once('(').map(|(name, _)| name)
    })
}

/// What stands between backquotes.
fn quoted(text: &str) -> impl Iterator<Item = &str> {
    text.split('`').skip(1).step_by(2)
}

/// The cells of each row of a file's tables, head and rule left out.
fn rows(text: &str) -> impl Iterator<Item = Vec<&str>> {
    let lines = text.lines().collect::<Vec<_>>();
    let is_rule = |line: &str| line.starts_with("| ---");
    let heads: BTreeSet<usize> = (1..lines.len()).filter(|n| is_rule(lines[*n])).collect();
    let is_row = move |n: usize, line: &str| {
        line.starts_with('|') && !is_rule(line) && !heads.contains(&(n + 1))
    };
    let rows = lines.into_iter().enumerate();
    rows.filter(move |(n, line)| is_row(*n, line))
        .map(|(_, line)| line.trim_matches('|').split(" | ").map(str::trim).collect())
}

/// Tests named in the tables that no file has. `column` is the place of the tests in a row, from the end.
fn unknown_tests<'a>(table: &'a str, known: &BTreeSet<&str>) -> Vec<&'a str> {
    rows(table)
        .flat_map(|cells| quoted(cells[cells.len() - 1]).collect::<Vec<_>>())
        .filter(|name| !known.contains(name))
        .collect()
}

#[test]
fn every_test_that_the_sources_name_is_there() {
    let files: Vec<_> = ["src", "tests"].into_iter().flat_map(rust_files).collect();
    let known: BTreeSet<&str> = files.iter().flat_map(|(_, text)| tests_in(text)).collect();
    let table = fs::read_to_string(root().join("tests/SOURCES.md")).expect("it is there");
    let all = rows(&table).collect::<Vec<_>>();
    assert!(all.len() > 150, "{} rows", all.len());
    for row in &all {
        assert_eq!(row.len(), 4, "what, where, source, test: {row:?}");
        assert!(row.iter().all(|cell| !cell.is_empty()), "{row:?}");
        let last = row[3];
        let has_test = quoted(last).next().is_some();
        assert!(has_test || last.starts_with("none"), "{row:?}");
    }
    assert_eq!(unknown_tests(&table, &known), [""; 0]);
}

#[test]
fn a_test_that_is_not_there_is_noticed() {
    let source = "#[test]\nfn it_is_here() {}\n\nfn no_test() {}";
    let known: BTreeSet<&str> = tests_in(source).collect();
    let table = "| what | test |\n| --- | --- |\n| `a` | `it_is_here`, `no_test` |\n\
        | b | none |\n| c | `it_is_gone` |";
    assert_eq!(unknown_tests(table, &known), ["no_test", "it_is_gone"]);
}

/// What can hurt is told by two constants, each at one place, with the clause that it is from.
#[test]
fn each_limit_of_voltage_stands_once_with_its_source() {
    let files = rust_files("src");
    for (constant, clauses) in [
        (
            "TOUCH_V: f64 = 50.0",
            &["29 CFR 1910.303(g)(2)(i)", "IEC 61140", "120 V"][..],
        ),
        ("BLADES_V: f64 = 34.0", &["IEC 60335-1, 22.5"]),
    ] {
        let mut found = files.iter().filter_map(|(_, text)| {
            let (before, _) = text.split_once(&format!("const {constant};"))?;
            let lines = before.lines().rev().skip(1);
            let comment: Vec<&str> = lines.take_while(|line| line.starts_with("///")).collect();
            Some(comment.into_iter().rev().collect::<Vec<_>>().join(" "))
        });
        let comment = found.next();
        let comment = comment.unwrap_or_else(|| panic!("no {constant}"));
        for clause in clauses {
            assert!(comment.contains(clause), "{clause} is not in: {comment}");
        }
        assert_eq!(found.next(), None, "{constant} stands twice");
    }
    // No other constant in volts is one of these limits; the proving unit's 50 V are no limit.
    let volts = |line: &str| {
        let (_, rest) = line.split_once("const ")?;
        let (name, value) = rest.split_once(": f64 = ")?;
        let value: f64 = value.trim_end_matches(';').parse().ok()?;
        (name.ends_with("_V") && [34.0, 50.0, 60.0, 120.0].contains(&value))
            .then(|| name.to_owned())
    };
    let lines = files.iter().flat_map(|(_, text)| text.lines());
    let limits: BTreeSet<String> = lines.filter_map(volts).collect();
    let known = ["BLADES_V", "KNOWN_V", "TOUCH_V"].map(str::to_owned);
    assert_eq!(limits, BTreeSet::from(known));
    // And no text tells of another limit.
    let readme = fs::read_to_string(root().join("README.md")).expect("it is there");
    let en = fs::read_to_string(root().join("assets/lang/en.ftl")).expect("it is there");
    let es = fs::read_to_string(root().join("assets/lang/es.ftl")).expect("it is there");
    for text in [readme, en, es] {
        assert!(!text.contains(" 60 V") && !text.contains("61140"));
    }
}
