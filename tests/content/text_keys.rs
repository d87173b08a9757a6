//! Every text that the rooms outside the window can ask for is there in every language. The keys
//! are taken from the program itself: its types, its content, and the literals in its source.

use detent_content::{Language, Texts, Value, builtin, read_board};
use detent_simulation::controller::{Broke, Monitor};
use detent_simulation::interface::{Component, Side};
use detent_simulation::machine::Sound;
use detent_simulation::plant::Param;
use detent_training::bench::{Advice, Condition, Finding, Happening};
use detent_training::lesson::{Dimension, Mains};
use detent_training::practice::{Skill, Why};
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

#[test]
fn every_board_has_its_texts() {
    let mut keys = Vec::new();
    for (path, text) in builtin::in_folder("assets/boards") {
        let board = read_board(&path, text.as_bytes()).expect("built-in boards are sound");
        keys.extend(board.text_keys());
    }
    assert!(keys.iter().any(|key| key.starts_with("check-")));
    check(keys);
}

#[test]
fn everything_in_the_machine_has_its_texts() {
    let modes = builtin::catalogue()
        .expect("the built-in catalogue is sound")
        .modes;
    let named = |prefix: &str, name: &str| format!("{prefix}-{}", name.replace('.', "-"));
    check(Component::ALL.iter().map(|c| named("component", c.name())));
    check(Monitor::ALL.iter().map(|m| named("monitor", m.name())));
    check(Side::ALL.iter().map(|s| named("side", s.name())));
    check(modes.iter().map(|mode| named("mode", &mode.id)));
    check(Finding::ALL.iter().map(|f| named("finding", f.name())));
    check(["finding-nothing"]);
    let parts = builtin::parts().expect("the built-in list of parts is sound");
    check(
        parts
            .parts
            .iter()
            .flat_map(|p| p.note_key.iter().chain([&p.name_key])),
    );
    check(Advice::ALL.iter().map(|a| named("advice", a.name())));
    let conditions = [Condition::New, Condition::Used, Condition::Rebuilt];
    check(conditions.map(|c| named("condition", c.name())));
    check(Sound::ALL.iter().map(|s| named("sound", s.name())));
}

#[test]
fn everything_that_can_happen_at_the_bench_has_its_texts() {
    let view = source("src/training/bench/view.rs");
    let happenings = variants(&view, "Happening");
    assert!(happenings.contains(&format!("{:?}", Happening::OhmsOnLive)));
    check(happenings.iter().map(|name| kebab("happening", name)));
    let refusals = variants(&view, "Refusal");
    assert!(refusals.len() > 5, "{refusals:?}");
    check(refusals.iter().map(|name| kebab("refusal", name)));
}

#[test]
fn every_caution_has_a_text_and_a_signal_word() {
    let cautions = literals(&source("src/training/bench/workplace.rs"), "caution-");
    assert!(cautions.len() > 5, "{cautions:?}");
    check(&cautions);
    check(cautions.iter().map(|key| format!("{key}-word")));
    // The four signal words of ANSI Z535.4; the translations are common practice, no source.
    let words = [
        (Language::En, ["DANGER", "WARNING", "CAUTION", "NOTICE"]),
        (
            Language::Es,
            ["PELIGRO", "ADVERTENCIA", "ATENCIÓN", "AVISO"],
        ),
    ];
    for (language, words) in words {
        let texts = Texts::load(language);
        for key in &cautions {
            let word = texts.get(&format!("{key}-word"));
            assert!(words.contains(&word.as_str()), "{key}: {word}");
        }
    }
}

#[test]
fn every_broken_rule_and_every_dimension_has_its_text() {
    let rules = literals(
        after(
            &source("src/simulation/controller/gesture.rs"),
            "pub fn key(",
        ),
        "",
    );
    let late = Broke::Late { step: 0, by_ms: 1 };
    assert!(rules.contains(late.key()), "{rules:?}");
    check(rules.iter().map(|rule| format!("rule-{rule}")));
    check(Dimension::ALL.iter().map(|d| format!("dimension-{d}")));
    check(["mode-nothing"]);
}

#[test]
fn every_point_lost_is_told_with_just_its_arguments() {
    let reasons = reasons(&source("src/training/lesson/judge.rs"));
    assert!(reasons.len() > 20, "{reasons:?}");
    assert_eq!(
        reasons["lost-misread"],
        ["noted", "shown"].map(str::to_owned).into()
    );
    check(reasons.keys());
    for language in Language::ALL {
        let texts = Texts::load(language);
        for (key, names) in &reasons {
            let marks: Vec<(&str, String)> = names
                .iter()
                .map(|name| (name.as_str(), format!("<{name}>")))
                .collect();
            let args: Vec<(&str, Value<'_>)> = marks
                .iter()
                .map(|(name, mark)| (*name, Value::from(mark.as_str())))
                .collect();
            let told = texts.with(key, &args);
            for (_, mark) in &marks {
                assert!(
                    told.contains(mark),
                    "{}: {key} leaves out {mark}",
                    language.file()
                );
            }
            // An argument that was not given shows in braces.
            assert!(!told.contains('{'), "{}: {told}", language.file());
        }
    }
}

#[test]
fn the_commands_have_their_texts() {
    let keys = literals(&source("src/command_line/print.rs"), "cli-");
    assert!(keys.contains("cli-score"), "{keys:?}");
    check(keys);
    let keys = literals(&source("src/command_line/practice.rs"), "cli-practice-");
    assert!(keys.contains("cli-practice-random"), "{keys:?}");
    check(keys);
}

#[test]
fn every_skill_and_every_reason_to_practise_has_its_text() {
    check(Skill::ALL.iter().map(|skill| format!("skill-{skill}")));
    check(Why::ALL.map(Why::key));
}

#[test]
fn the_service_sheet_tells_the_values_of_the_sound_machine() {
    let machine = builtin::machine().expect("the built-in machine is sound");
    let told = [
        ("check-inlet-coil-ohms", Param::ColdCoilOhms),
        ("check-inlet-coil-ohms", Param::HotCoilOhms),
        ("check-lock-coil-ohms", Param::LockCoilOhms),
        ("check-motor-winding-ohms", Param::MotorAOhms),
        ("check-motor-winding-ohms", Param::MotorBOhms),
        ("check-pump-coil-ohms", Param::PumpCoilOhms),
        ("check-shifter-coil-ohms", Param::ShiftCoilOhms),
    ];
    for language in Language::ALL {
        let texts = Texts::load(language);
        let written = |value: f64, unit: &str| match language {
            Language::En => format!(" {value} {unit}"),
            Language::Es => format!(" {value} {unit}").replace('.', ","),
        };
        let check = |key: &str, value: f64, unit: &str| {
            let (told, value) = (texts.get(key), written(value, unit));
            assert!(told.contains(&value), "{key} lacks{value}: {told}");
        };
        for mains in [Mains::V120Hz60, Mains::V230Hz50] {
            let sound = machine.params(mains);
            for (key, param) in told {
                check(key, sound.get(param), "Ω");
            }
            let kilo = sound.get(Param::ThermR25Ohms) / 1000.0;
            check("check-thermistor-ohms", kilo, "kΩ");
            check(
                "check-pressure-output",
                sound.get(Param::PressureZeroV),
                "V",
            );
            check(
                "check-pressure-output",
                sound.get(Param::PressureVPerKpa),
                "V",
            );
            check("check-pickup-supply", sound.get(Param::RailV), "V");
            check("check-pressure-supply", sound.get(Param::RailV), "V");
            check("check-drain-hose-height", sound.get(Param::StandpipeM), "m");
        }
    }
}

#[test]
fn a_missing_text_is_noticed() {
    assert_eq!(missing(["common-yes", "no-such-key"]), ["no-such-key"]);
    let made_up = "self.lose(d, 1.0, \"lost-a\", vec![(\"n\", x)]);\nself.lose(\"lost-b\", y);";
    let found = reasons(made_up);
    assert_eq!(found["lost-a"], BTreeSet::from(["n".to_owned()]));
    assert!(found["lost-b"].is_empty());
    assert_eq!(
        variants("pub enum A {\n    /// B\n    C(u8),\n    D,\n}", "A"),
        ["C", "D"]
    );
    assert_eq!(kebab("x", "OhmsOnLive"), "x-ohms-on-live");
}

#[track_caller]
fn check<S: AsRef<str>>(keys: impl IntoIterator<Item = S>) {
    let missing = missing(keys);
    assert!(missing.is_empty(), "no such texts: {missing:#?}");
}

/// Those of `keys` that some language lacks.
fn missing<S: AsRef<str>>(keys: impl IntoIterator<Item = S>) -> Vec<String> {
    let all = Language::ALL.map(Texts::load);
    let mut missing: Vec<String> = keys
        .into_iter()
        .map(|key| key.as_ref().to_owned())
        .filter(|key| all.iter().any(|texts| !texts.has(key)))
        .collect();
    missing.sort();
    missing.dedup();
    missing
}

/// A source without its unit tests.
fn source(path: &str) -> String {
    let path = Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/../..")).join(path);
    let text = fs::read_to_string(&path).unwrap_or_else(|e| panic!("{}: {e}", path.display()));
    text.split("#[cfg(test)]").next().unwrap_or("").to_owned()
}

/// The function or type of which `head` is the beginning, up to its closing brace.
fn after<'a>(code: &'a str, head: &str) -> &'a str {
    let at = code.find(head).unwrap_or_else(|| panic!("no `{head}`"));
    let line = code[..at].rfind('\n').map_or(0, |newline| newline + 1);
    let indent = " ".repeat(code[line..].len() - code[line..].trim_start().len());
    let end = code[at..].find(&format!("\n{indent}}}"));
    &code[at..at + end.unwrap_or_else(|| panic!("`{head}` does not end"))]
}

/// String literals in `code` that begin with `prefix`.
fn literals(code: &str, prefix: &str) -> BTreeSet<String> {
    let quoted = code.split('"').skip(1).step_by(2);
    quoted
        .filter(|text| text.starts_with(prefix))
        .map(str::to_owned)
        .collect()
}

/// Names of an enum's variants, in order.
fn variants(code: &str, name: &str) -> Vec<String> {
    after(code, &format!("pub enum {name} {{"))
        .lines()
        .filter_map(|line| line.strip_prefix("    "))
        .filter(|line| line.starts_with(char::is_uppercase))
        .map(|line| {
            line.split(|c: char| !c.is_alphanumeric())
                .next()
                .unwrap_or("")
                .to_owned()
        })
        .collect()
}

/// `prefix` and the words of a variant's name, joined by hyphens.
fn kebab(prefix: &str, name: &str) -> String {
    let mut key = prefix.to_owned();
    for letter in name.chars() {
        if letter.is_uppercase() {
            key.push('-');
        }
        key.extend(letter.to_lowercase());
    }
    key
}

/// Each reason for a loss in `code`, with the names of the arguments made since the reason before.
fn reasons(code: &str) -> BTreeMap<String, BTreeSet<String>> {
    let mut reasons = BTreeMap::new();
    let mut from = 0;
    for (at, _) in code.match_indices("\"lost-") {
        let key = code[at + 1..].split('"').next().unwrap_or("").to_owned();
        let end = at + end_of_call(&code[at..]);
        let names = code[from..end].split("(\"").skip(1);
        let names = names.filter_map(|rest| rest.split_once("\","));
        let names = names.map(|(name, _)| name).filter(|name| {
            !name.starts_with("lost-") && name.chars().all(|c| c.is_ascii_lowercase() || c == '_')
        });
        reasons
            .entry(key)
            .or_insert_with(BTreeSet::new)
            .extend(names.map(str::to_owned));
        from = end;
    }
    reasons
}

/// Where the call ends in whose arguments `code` begins.
fn end_of_call(code: &str) -> usize {
    let mut depth = 0;
    let end = code.find(|c| {
        depth += i32::from(c == '(') - i32::from(c == ')');
        depth < 0
    });
    end.unwrap_or(code.len())
}
