//! The language files say the same things in every language, and everything that the program asks
//! them for.

use crate::rust_files::rust_files;
use detent_content::{ContentLibrary, Language, Texts, builtin, read_board};
use detent_simulation::controller::Monitor;
use detent_simulation::interface::Component;
use detent_training::bench::Caution;
use detent_training::reason::Remedy;
use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement};
use std::collections::{BTreeMap, BTreeSet};

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

/// What was once said otherwise and reads better as it stands: wrong or clumsy words of the trade, each with the text that
/// has the better ones now (from memory, no source).
#[test]
fn words_that_were_replaced_do_not_come_back() {
    let (en, es) = (Texts::load(Language::En), Texts::load(Language::Es));
    let of = |texts: &Texts, language| -> Vec<String> {
        let keys = keys_in_order(language);
        keys.iter().map(|key| texts.get(key)).collect()
    };
    let (english, spanish) = (of(&en, Language::En), of(&es, Language::Es));
    let is_said = |texts: &[String], words: &str| {
        let words = words.to_lowercase();
        texts
            .iter()
            .any(|text| text.to_lowercase().contains(&words))
    };
    for (old, better) in [
        ("Beep", "Continuity"),
        ("V ~ 10k", "LoZ V~"),
        ("V =", "V DC"),
        ("Not worth more than", "Repair limit"),
        ("of it, work", "Labor"),
        ("Two at once", "Multiple faults"),
        ("Getting in", "Service-mode entry"),
        ("Now and then", "Intermittent faults"),
        ("Odd calls", "No part needed"),
        ("Bleed the stored charge", "Discharge capacitor"),
        ("Look and feel", "Inspect"),
        ("Put right", "Correct"),
        ("Take it back", "Return part"),
        ("Wald", "decision limits"),
        ("control is bad with", "chance the control is faulty"),
        ("Not right", "Incorrect"),
        ("Nothing to see", "No visible fault"),
        ("lock switch dead", "lock relay won’t close"),
        ("hoses swapped", "hot and cold hoses reversed"),
        ("Lock not proven", "Lock not confirmed"),
        ("lost in the run", "lost while running"),
        ("Unbalance", "Out of balance"),
        ("can go back for", "restocking fee"),
        ("Hand the machine back", "Close the job"),
        ("proving source", "proving unit"),
        ("Sound:", "Expected:"),
        ("It is so already", "Already done"),
        ("Well worked", "No points lost"),
        ("Let the display go", "Release hold"),
        ("deep in one another", "nesting"),
        ("in a circle", "supersession loop"),
        ("mode shifter", "clutch actuator"),
    ] {
        let back = english.iter().find(|text| text.contains(old));
        assert_eq!(back, None, "{old} for {better}");
        assert!(is_said(&english, better), "no text says {better}");
    }
    for (old, better) in [
        ("Pitido", "Continuidad"),
        ("Reserva", "condensador principal"),
        ("tina", "cuba"),
        ("cordón", "cable"),
        ("rev/min", "r/min"),
        ("Paro", "Parada"),
        ("perilla", "selector"),
        ("fallas", "fallo"),
        ("la falla", "fallo"),
        ("de eso, trabajo", "mano de obra"),
        ("bobinado abierto", "bobinado cortado"),
        ("devanado abierto", "cortado"),
    ] {
        let whole = |text: &&String| {
            let at = |c: Option<char>| c.is_none_or(|c| !c.is_alphabetic());
            text.match_indices(old).any(|(n, _)| {
                at(text[..n].chars().next_back()) && at(text[n + old.len()..].chars().next())
            })
        };
        let back = spanish.iter().find(whole);
        assert_eq!(back, None, "{old} for {better}");
        assert!(is_said(&spanish, better), "no text says {better}");
    }
}

/// Each caution says its own: none ends like another, that local codes come first stands where the machine is presented
/// and not here, and what protects is named before hands go in or a probe is set (IEC 61010-1 for the meter's category,
/// from memory; the rest common practice, no source).
#[test]
fn each_caution_ends_in_its_own_words_and_names_what_protects() {
    for (language, named) in [
        (
            Language::En,
            [
                ("caution-live-test", "CAT II"),
                ("caution-live-test", "with the machine unplugged"),
                ("caution-live-test", "belt and pulleys"),
                ("caution-heavy", "drain or bail out"),
                ("caution-hot-water", "Shut off both"),
                ("ticket-protect", "safety glasses"),
                ("ticket-protect", "gloves"),
                (
                    "start-about",
                    "local codes and licensed practice come first",
                ),
                (
                    "sheet-invented",
                    "local codes and licensed practice come first",
                ),
            ],
        ),
        (
            Language::Es,
            [
                ("caution-live-test", "CAT II"),
                ("caution-live-test", "desenchufada"),
                ("caution-live-test", "correa"),
                ("caution-heavy", "agua"),
                ("caution-hot-water", "Cierre"),
                ("ticket-protect", "gafas"),
                ("ticket-protect", "guantes"),
                ("start-about", "normas locales"),
                ("sheet-invented", "normas locales"),
            ],
        ),
    ] {
        let texts = Texts::load(language);
        for (key, what) in named {
            let told = texts.get(key);
            assert!(told.contains(what), "{key}: {what} is not in: {told}");
        }
        let cautions = Caution::ALL.iter();
        let cautions: Vec<String> = cautions
            .map(|caution| texts.get(&format!("caution-{caution}")))
            .collect();
        let last = |text: &String| {
            let text = text.trim_end_matches('.').to_owned();
            text.rsplit(". ").next().unwrap_or("").to_owned()
        };
        let ends: BTreeSet<String> = cautions.iter().map(last).collect();
        assert_eq!(ends.len(), cautions.len(), "{language:?}: two end alike");
        let of_codes =
            |text: &&String| text.contains("local code") || text.contains("normas locales");
        assert_eq!(cautions.iter().find(of_codes), None);
    }
}

/// Common practice, no source: the control is recalibrated first, and where that does not finish the codes are read.
#[test]
fn every_sheet_sends_to_recalibration_and_from_there_to_the_codes() {
    let first = "check-recalibrate-first";
    for (path, text) in builtin::in_folder("assets/boards") {
        let board = read_board(&path, text.as_bytes()).expect("built-in boards are sound");
        let sheet = board.sheet.iter();
        let mut of_learning = sheet.filter(|entry| entry.monitor == Monitor::CalibrationMissing);
        assert!(
            of_learning.any(|entry| entry.checks.first().is_some_and(|key| key == first)),
            "{path}"
        );
    }
    for (language, codes) in [
        (Language::En, "read the codes"),
        (Language::Es, "lea los códigos"),
    ] {
        let told = Texts::load(language).get(first);
        assert!(told.contains(codes), "{told}");
    }
}

/// Common practice, no source: a basket in order is felt against its brake, and two thirds of the voltage is a loose neutral
/// upstream, which an electrician sees to.
#[test]
fn a_braked_basket_and_a_loose_neutral_are_told_as_what_they_are() {
    let library = ContentLibrary::builtin().expect("sound content");
    let mode = library.catalogue.mode("supply.low-mains");
    let mode = mode.expect("in the catalogue");
    let part = library.parts.part(&mode.cured_by).expect("at the counter");
    assert_eq!(part.component, Component::Supply);
    for (language, brake, neutral, electrician) in [
        (Language::En, "drag of its brake", "neutral", "electrician"),
        (Language::Es, "freno", "neutro", "electricista"),
    ] {
        let texts = Texts::load(language);
        for (told, word) in [
            (texts.get("check-drum-turns-by-hand"), brake),
            (texts.mode(&mode.id), neutral),
            (texts.get(&part.name_key), electrician),
        ] {
            assert!(told.contains(word), "{word} is not in: {told}");
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
    let mut missing = Vec::new();
    for (path, text) in rust_files("src") {
        // Unit tests ask for keys that are not there on purpose.
        let program = text.split("#[cfg(test)]").next().unwrap_or("");
        missing.extend(missing_keys(program).map(|key| (path.clone(), key)));
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

/// Whoever is about to clean or to seat something again reads how long it takes and what it uses up.
#[test]
fn work_by_hand_names_its_time_and_what_it_uses_up() {
    let takes = |language, component| Texts::load(language).hand_work_takes(component);
    for (component, en, es) in [
        (
            Component::Harness,
            "10 min, contact cleaner",
            "10 min, limpiador de contactos",
        ),
        (
            Component::InletCold,
            "8 min, descaler, hose washer",
            "8 min, antical, junta de manguera",
        ),
        (Component::Laundry, "4 min", "4 min"),
    ] {
        assert_eq!(takes(Language::En, component), en);
        assert_eq!(takes(Language::Es, component), es);
        let remedy = Remedy::PutRight(component);
        let told = Texts::load(Language::En).remedy(&remedy, &[]);
        assert!(told.ends_with(&format!("({en})")), "{told}");
    }
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
