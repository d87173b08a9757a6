//! The language files say the same things in every language, and everything that the program asks
//! them for.

use detent_content::{ContentLibrary, Language, Texts, builtin};
use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement};
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

/// Key of each message with the arguments in its text; attributes count as keys of their own. Left out are
/// words that one language changes with the supply (`word-…`) and the supply itself, which every text is given.
type Keys = BTreeMap<String, BTreeSet<String>>;

#[test]
fn every_language_has_the_same_keys_with_the_same_arguments() {
    let english = keys(Language::En);
    for language in Language::ALL {
        let other = keys(language);
        let names = |keys: &Keys| keys.keys().cloned().collect::<BTreeSet<_>>();
        let only_en: Vec<_> = names(&english)
            .difference(&names(&other))
            .cloned()
            .collect();
        let only_other: Vec<_> = names(&other)
            .difference(&names(&english))
            .cloned()
            .collect();
        assert!(only_en.is_empty(), "{} lacks {only_en:?}", language.file());
        assert!(only_other.is_empty(), "en.ftl lacks {only_other:?}");
        for (key, arguments) in &english {
            assert_eq!(&other[key], arguments, "{}: {key}", language.file());
        }
    }
}

#[test]
fn sections_stand_in_alphabetical_order_and_no_key_stands_twice() {
    for language in Language::ALL {
        let file = language.file();
        let source = builtin::text(file).expect("the language files are built in");
        let sections: Vec<&str> = source
            .lines()
            .filter_map(|l| l.strip_prefix("## "))
            .collect();
        assert!(!sections.is_empty(), "{file} has sections");
        assert!(sections.is_sorted(), "{file}: {sections:?}");

        let mut keys = keys_in_order(language);
        let count = keys.len();
        keys.sort();
        keys.dedup();
        assert_eq!(keys.len(), count, "{file}: a key stands twice");
    }
}

#[test]
fn every_text_can_be_shown() {
    for language in Language::ALL {
        let texts = Texts::load(language);
        for key in keys_in_order(language) {
            assert!(texts.has(&key), "{}: {key}", language.file());
            let shown = texts.get(&key);
            assert!(
                !shown.trim().is_empty(),
                "{}: {key} is empty",
                language.file()
            );
            assert!(
                !shown.contains(['\u{2068}', '\u{2069}']),
                "{key} has isolation marks"
            );
        }
    }
}

#[test]
fn english_speaks_of_faucets_and_ground_at_120_v_and_of_taps_and_earth_elsewhere() {
    let at = |volts, key| Texts::load(Language::En).for_supply(volts).get(key);
    assert_eq!(at(120, "component-taps"), "Faucets");
    assert_eq!(at(230, "component-taps"), "Taps");
    assert_eq!(
        at(120, "finding-cold-tap-shut"),
        "The cold faucet is shut off."
    );
    assert_eq!(
        at(230, "finding-cold-tap-shut"),
        "The cold tap is shut off."
    );
    assert_eq!(at(120, "pin-plug-earth"), "Plug, ground");
    assert_eq!(at(230, "pin-plug-earth"), "Plug, earth");
    for volts in [120, 230] {
        let texts = Texts::load(Language::En).for_supply(volts);
        let foreign = if volts == 120 { " tap" } else { "faucet" };
        for key in keys_in_order(Language::En) {
            let shown = texts.get(&key);
            assert!(!shown.contains(foreign), "{volts} V, {key}: {shown}");
        }
    }
}

/// One spelling throughout: American. British forms that these texts could come to use; from memory.
#[test]
fn english_is_spelled_the_american_way() {
    let british = [
        "afterwards",
        "authorised",
        "burnt",
        "cancelled",
        "catalogue",
        "centre",
        "colour",
        "discoloured",
        "grey",
        "jewellery",
        "kilometres",
        "labelled",
        "labour",
        "licence",
        "litre",
        "litres",
        "metre",
        "metres",
        "neighbour",
        "practise",
        "practised",
        "practising",
        "programme",
        "programmes",
        "recognised",
    ];
    let check = |place: &str, shown: &str| {
        let shown = shown.to_lowercase();
        for word in shown.split(|c: char| !c.is_alphabetic()) {
            assert!(!british.contains(&word), "{place} has {word}: {shown}");
        }
    };
    let texts = Texts::load(Language::En);
    for key in keys_in_order(Language::En) {
        // What stands in braces is the name of an argument.
        let shown = texts.get(&key);
        let words: String = shown.split(['{', '}']).step_by(2).collect();
        check(&key, &words);
    }
    let scenarios = ContentLibrary::builtin().and_then(|library| library.scenarios());
    for source in scenarios.expect("the built-in scenarios are sound") {
        let told = source.scenario;
        for text in [&told.title, &told.complaint, &told.goal] {
            check(&source.file, &text.en);
        }
    }
}

/// A customer calls things by the names that the machine at the door has.
#[test]
fn no_complaint_names_what_the_machine_has_not() {
    // The machine is a top loader without drawer, drum, door, window or heater of its own.
    let absent = [
        "drawer",
        "drum",
        "door",
        "porthole",
        "heater",
        "cajón",
        "tambor",
        "puerta",
        "resistencia",
        "wool",
        "lana",
        "cotton",
        "algodón",
        "eco",
    ];
    let scenarios = ContentLibrary::builtin().and_then(|library| library.scenarios());
    for source in scenarios.expect("the built-in scenarios are sound") {
        for text in [&source.scenario.complaint.en, &source.scenario.complaint.es] {
            let words = text.to_lowercase();
            let words: Vec<&str> = words.split(|c: char| !c.is_alphabetic()).collect();
            for name in absent {
                assert!(!words.contains(&name), "{}: {name} in {text}", source.file);
            }
        }
    }
}

#[test]
fn every_key_that_the_source_names_is_there() {
    let root = Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/../.."));
    let mut folders = vec![root.join("src")];
    let mut missing = Vec::new();
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(&folder).expect("src can be listed") {
            let path = entry.expect("src can be listed").path();
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|e| e == "rs") {
                let text = fs::read_to_string(&path).expect("a source is UTF-8");
                // Unit tests ask for keys that are not there on purpose.
                let program = text.split("#[cfg(test)]").next().unwrap_or("");
                missing.extend(missing_keys(program).map(|key| (path.clone(), key)));
            }
        }
    }
    assert!(missing.is_empty(), "no such texts: {missing:#?}");
}

#[test]
fn a_key_that_is_missing_is_noticed_in_every_way_of_asking() {
    for code in [
        "tr!(\"no-such-key\")",
        "texts.get(\"no-such-key\")",
        "self.texts.with(\n  \"no-such-key\", &[])",
        "t.text(\"common-yes\"); texts.get( \"no-such-key\" )",
    ] {
        assert_eq!(
            missing_keys(code).collect::<Vec<_>>(),
            ["no-such-key"],
            "{code}"
        );
    }
    assert_eq!(
        missing_keys("texts.get(key); texts.get(\"common-yes\")").count(),
        0
    );
}

#[test]
fn every_part_on_the_counter_has_its_texts() {
    let parts = builtin::parts().expect("the built-in list of parts is sound");
    for language in Language::ALL {
        let texts = Texts::load(language);
        for part in &parts.parts {
            for key in part.note_key.iter().chain([&part.name_key]) {
                assert!(
                    texts.has(key),
                    "{}: {key} of {}",
                    language.file(),
                    part.number
                );
            }
        }
    }
}

/// Keys named in `code` that some language lacks.
fn missing_keys(code: &str) -> impl Iterator<Item = String> {
    let all: Vec<Texts> = Language::ALL.map(Texts::load).into();
    let mut asked = BTreeSet::new();
    for call in ["tr!(", "texts.get(", "texts.with(", "texts.has("] {
        for (at, _) in code.match_indices(call) {
            // `include_str!(` is no way of asking.
            if code[..at].ends_with(|c: char| c.is_alphanumeric() || c == '_') {
                continue;
            }
            let argument = code[at + call.len()..].trim_start();
            if let Some(literal) = argument.strip_prefix('"') {
                asked.extend(literal.split('"').next().map(str::to_owned));
            }
        }
    }
    asked
        .into_iter()
        .filter(move |key| all.iter().any(|texts| !texts.has(key)))
}

fn keys(language: Language) -> Keys {
    let mut keys = Keys::new();
    each_pattern(language, |key, pattern| {
        let mut arguments = BTreeSet::new();
        arguments_of(pattern, &mut arguments);
        arguments.retain(|name| name != "$mains" && !name.starts_with("word-"));
        if !key.starts_with("word-") {
            keys.insert(key, arguments);
        }
    });
    keys
}

fn keys_in_order(language: Language) -> Vec<String> {
    let mut keys = Vec::new();
    each_pattern(language, |key, _| {
        if !key.contains('.') {
            keys.push(key);
        }
    });
    keys
}

fn each_pattern(language: Language, mut each: impl FnMut(String, &Pattern<&str>)) {
    let file = language.file();
    let source = builtin::text(file).expect("the language files are built in");
    let resource = fluent_syntax::parser::parse(source)
        .unwrap_or_else(|(_, errors)| panic!("{file} has mistakes: {errors:?}"));
    let mut messages = 0;
    for entry in &resource.body {
        let Entry::Message(message) = entry else {
            continue;
        };
        let key = message.id.name;
        let value = message.value.as_ref();
        each(
            key.to_owned(),
            value.unwrap_or_else(|| panic!("{file}: {key} is empty")),
        );
        for attribute in &message.attributes {
            each(format!("{key}.{}", attribute.id.name), &attribute.value);
        }
        messages += 1;
    }
    assert!(messages > 0, "{file} has texts");
}

/// Placeables: `$name` for arguments, `name` for other messages and terms, wherever they stand.
fn arguments_of(pattern: &Pattern<&str>, out: &mut BTreeSet<String>) {
    for element in &pattern.elements {
        if let PatternElement::Placeable { expression } = element {
            in_expression(expression, out);
        }
    }
}

fn in_expression(expression: &Expression<&str>, out: &mut BTreeSet<String>) {
    match expression {
        Expression::Inline(inline) => in_inline(inline, out),
        Expression::Select { selector, variants } => {
            in_inline(selector, out);
            for variant in variants {
                arguments_of(&variant.value, out);
            }
        }
    }
}

fn in_inline(inline: &InlineExpression<&str>, out: &mut BTreeSet<String>) {
    match inline {
        InlineExpression::VariableReference { id } => {
            out.insert(format!("${}", id.name));
        }
        InlineExpression::MessageReference { id, .. } => {
            out.insert(id.name.to_owned());
        }
        InlineExpression::TermReference { id, .. } => {
            out.insert(format!("-{}", id.name));
        }
        InlineExpression::FunctionReference { id, arguments } => {
            out.insert(format!("{}()", id.name));
            for argument in &arguments.positional {
                in_inline(argument, out);
            }
        }
        InlineExpression::Placeable { expression } => in_expression(expression, out),
        InlineExpression::StringLiteral { .. } | InlineExpression::NumberLiteral { .. } => {}
    }
}
