//! A field of a file changed by the lossless tree: all other bytes stay, and the reader reads that change
//! and no other.

use detent_content::builtin;
use detent_syntax::document::{Document, ValueKind};
use detent_training::lesson::Scenario;
use detent_training::record::ron_text::{self, Outline};
use std::collections::{BTreeMap, BTreeSet};

type Scenarios = Vec<(String, &'static str)>;

fn scenarios() -> Scenarios {
    let files = builtin::in_folder("scenarios");
    let jobs = files.filter(|(name, _)| name.matches('.').count() == 1);
    jobs.collect()
}

/// Every value in a scenario that has none in it, by path, as the reader read it.
fn read(text: &str) -> Option<BTreeMap<String, String>> {
    let scenario: Scenario = ron_text::parse(&ron_text::options(), text).ok()?;
    let written = ron::to_string(&scenario).expect("a scenario can be written");
    let document = Document::parse(&written).expect("it is RON");
    let scalars = document.values().into_iter();
    let scalars = scalars.filter(|value| value.kind == ValueKind::Scalar);
    Some(
        scalars
            .map(|value| (value.path, written[value.range].to_owned()))
            .collect(),
    )
}

/// All that stands at a path in any scenario: names of an enumeration are taken from each other.
fn everything_at(scenarios: &Scenarios) -> BTreeMap<String, BTreeSet<String>> {
    let mut at: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    for (_, text) in scenarios {
        let document = Document::parse(text).expect("it is RON");
        for value in document.values() {
            let written = text[value.range].to_owned();
            at.entry(value.path).or_default().insert(written);
        }
    }
    at
}

/// Other values for what is written, of the same kind.
fn others(written: &str, at_path: &BTreeSet<String>) -> Vec<String> {
    let first = written.chars().next().expect("a value is not empty");
    match first {
        '"' => vec!["\"zz \\\" // }\"".to_owned()],
        '0'..='9' if written.contains('.') => vec![format!("1{written}")],
        '0'..='9' => vec![if written == "3" { "4" } else { "3" }.to_owned()],
        _ if written == "true" => vec!["false".to_owned()],
        _ if written == "false" => vec!["true".to_owned()],
        _ => {
            let names = at_path.iter().filter(|name| *name != written);
            names.cloned().collect()
        }
    }
}

#[test]
fn every_field_of_every_scenario_is_changed_alone() {
    let scenarios = scenarios();
    assert!(scenarios.len() > 50);
    let everything = everything_at(&scenarios);
    let mut changed = 0;
    for (file, text) in &scenarios {
        let before = read(text).unwrap_or_else(|| panic!("{file} is not read"));
        let document = Document::parse(text).expect("it is RON");
        let scalars = document.values().into_iter();
        for value in scalars.filter(|value| value.kind == ValueKind::Scalar) {
            let (path, range) = (&value.path, value.range);
            for other in others(&text[range.clone()], &everything[path]) {
                let mut document = document.clone();
                document.set(path, &other).expect("a value");
                let expected = format!("{}{other}{}", &text[..range.start], &text[range.end..]);
                assert_eq!(document.text(), expected, "{file}: {path}");
                // What is written otherwise is read otherwise, at this path and what is in it alone.
                let after = read(document.text());
                let after = after.unwrap_or_else(|| panic!("{file}: {path}: {other} is not read"));
                let paths: BTreeSet<&String> = before.keys().chain(after.keys()).collect();
                let differ = paths
                    .into_iter()
                    .filter(|path| before.get(*path) != after.get(*path));
                let differ: Vec<&String> = differ.collect();
                assert!(
                    !differ.is_empty(),
                    "{file}: {path}: {other} changes nothing"
                );
                let inside = |found: &&String| {
                    let rest = found.strip_prefix(path.as_str());
                    rest.is_some_and(|rest| rest.is_empty() || rest.starts_with(['.', '[']))
                };
                assert!(
                    differ.iter().all(inside),
                    "{file}: {path}: {other}: {differ:?}"
                );
                changed += 1;
            }
        }
    }
    assert!(changed > 1000, "{changed}");
}

#[test]
fn a_field_left_out_is_put_in_and_taken_out_again() {
    for (file, text) in scenarios() {
        let before = read(text).unwrap_or_else(|| panic!("{file} is not read"));
        let document = Document::parse(text).expect("it is RON");
        let names = document.fields("").expect("a scenario is a struct");
        for (name, value) in [
            ("worn_lead", "true"),
            ("stale_codes", "[11, 12]"),
            ("dial_wear", "0.5"),
        ] {
            if names.iter().any(|there| there == name) {
                continue;
            }
            let mut with = document.clone();
            with.insert_field("", name, value, &["fault", "seed"])
                .expect("a struct");
            let line = format!("    {name}: {value},\n");
            assert_eq!(with.text().len(), text.len() + line.len(), "{file}");
            assert!(with.text().contains(&format!("\n{line}")), "{file}");
            let after = read(with.text()).unwrap_or_else(|| panic!("{file}: {name} is not read"));
            let mut known = after.clone();
            known.retain(|path, _| !path.starts_with(name));
            let mut others = before.clone();
            others.retain(|path, _| !path.starts_with(name));
            assert_eq!(known, others, "{file}");
            assert_ne!(after, before, "{file}");
            with.remove(name).expect("it was put in");
            assert_eq!(with.text(), text, "{file}");
        }
    }
}

#[test]
fn the_outline_and_the_tree_place_every_value_alike() {
    let files = builtin::files().filter(|(name, _)| name.ends_with(".ron"));
    let mut places = 0;
    for (file, bytes) in files {
        let text = std::str::from_utf8(bytes).expect("a text");
        let document = Document::parse(text).unwrap_or_else(|error| panic!("{file}: {error}"));
        let outline = Outline::of(text).places();
        for value in document.values() {
            // The outline has no path of its own for the only value in a pair of brackets.
            let alone = value.path.strip_suffix(".0");
            if alone.is_some_and(|around| document.range(&format!("{around}.1")).is_none()) {
                continue;
            }
            let there = document.position(&value.path).expect("it is there");
            let told = outline.position(&value.path);
            assert_eq!(
                (told.line, told.column),
                (there.line, there.column),
                "{file}: {}",
                value.path
            );
            places += 1;
        }
    }
    assert!(places > 5000, "{places}");
}
