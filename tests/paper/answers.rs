//! That a handout says what a learner needs and nothing of the answer, and that the key says it.

use super::{EDITIONS, content, flowing, handout_of, job, key_of, one_for_each_board, poppler};
use detent_content::{Language, ScenarioSource, Texts, VariantSeries};
use detent_paper::{PaperSize, SheetJob, answer_key, handout};
use detent_simulation::units::Time;
use detent_training::lesson::{Bilingual, Hidden, Points, draw, set_up};
use detent_training::without_breaks;

#[test]
fn a_handout_is_the_same_whatever_fault_is_hidden() {
    let content_library = content();
    for source in content_library.scenarios().expect("they are sound") {
        let mut other = source.clone();
        other.scenario.fault = Hidden::Nothing;
        other.scenario.goal = Bilingual {
            en: String::new(),
            es: String::new(),
        };
        other.scenario.stale_codes.clear();
        other.scenario.dial_wear = 0.0;
        other.scenario.worn_lead = false;
        other.scenario.points = Points::default();
        for edition in [EDITIONS[0], EDITIONS[3]] {
            let of = |source| handout_of(&content_library, source, edition).expect("it is made");
            assert!(of(&source) == of(&other), "{}", source.file);
        }
    }
}

#[test]
fn no_ticket_names_a_component_of_its_fault_and_no_page_the_fault() {
    let content_library = content();
    for source in content_library.scenarios().expect("they are sound") {
        let (scenario, seed) = (&source.scenario, source.scenario.seed);
        let library = content_library.library(scenario);
        let hidden = draw(scenario, &library, seed).expect("it can be drawn");
        for language in Language::ALL {
            let edition = (language, PaperSize::A4);
            let pdf = handout_of(&content_library, &source, edition).expect("it is made");
            let Some(all) = poppler::text(&pdf, None) else {
                return;
            };
            let (all, texts) = (flowing(&all), Texts::load(language));
            // The cautions behind it speak of tub and belt whatever is wrong.
            let ticket = all.split(&texts.get("paper-safety")).next();
            let ticket = ticket.expect("there is a ticket").to_lowercase();
            // What the customer says, and the board's name, are the author's.
            let said = [&scenario.title, &scenario.complaint].map(|said| match language {
                Language::En => said.en.as_str(),
                Language::Es => said.es.as_str(),
            });
            let board = texts.get(&format!("board-{}", scenario.board));
            let ticket = [said[0], said[1], &board]
                .iter()
                .fold(ticket, |ticket, said| {
                    ticket.replace(&flowing(said).to_lowercase(), "")
                });
            for mode in &hidden {
                let component = texts.component(mode.component).to_lowercase();
                assert!(!ticket.contains(&component), "{}: {component}", source.file);
                assert!(!all.contains(&texts.mode(&mode.id)), "{}", source.file);
            }
            assert!(!all.contains(&texts.get("paper-fault")), "{}", source.file);
        }
    }
}

#[test]
fn a_handout_says_all_that_is_needed() {
    let content_library = content();
    for source in one_for_each_board(&content_library) {
        let scenario = &source.scenario;
        let board = content_library.board(&scenario.board).expect("it is there");
        let volts = scenario.mains.rating().volts as u32;
        for (language, paper) in EDITIONS {
            let texts = Texts::load(language).for_supply(volts);
            let said = |text: &Bilingual| match language {
                Language::En => text.en.clone(),
                Language::Es => text.es.clone(),
            };
            let pdf = handout_of(&content_library, &source, (language, paper));
            let Some(text) = poppler::text(&pdf.expect("it is made"), None) else {
                return;
            };
            let text = flowing(&text);
            let mut needed = vec![
                said(&scenario.title),
                said(&scenario.complaint),
                texts.get(&board.name),
                texts.whole_money(scenario.budget),
                format!("{volts} V"),
                texts.get("paper-local-codes"),
                texts.get("paper-safety-unplug"),
                texts.get("paper-safety-charge"),
                texts.get("sheet-codes-intro"),
            ];
            needed.extend(
                board
                    .gesture
                    .steps
                    .iter()
                    .map(|step| texts.gesture_step(step)),
            );
            needed.extend(board.menu.iter().map(|entry| {
                let routine = texts.get(&format!("routine-{}", entry.routine));
                format!("{} {routine}", entry.position)
            }));
            for connector in &board.connectors {
                for pin in &connector.pins {
                    let component = texts.component(pin.terminal.component());
                    let row = format!("{}-{} {} {component}", connector.label, pin.pin, pin.label);
                    needed.push(row);
                }
            }
            needed.extend(board.codes.iter().map(|code| format!("{:02} ", code.code)));
            let checks = board.sheet.iter().flat_map(|entry| &entry.checks);
            needed.extend(checks.map(|check| texts.get(check)));
            for needed in needed {
                let needed = flowing(&needed);
                assert!(text.contains(&needed), "{needed} is not in {text}");
            }
            for missing in ['‹', '›', '{', '}'] {
                assert!(!text.contains(missing), "{missing} in {text}");
            }
        }
    }
}

#[test]
fn a_key_says_the_fault_its_codes_and_the_way() {
    let content_library = content();
    for source in content_library.scenarios().expect("they are sound") {
        let scenario = &source.scenario;
        let library = content_library.library(scenario);
        let bench = set_up(scenario, &library, scenario.seed).expect("it can be set up");
        let volts = scenario.mains.rating().volts as u32;
        let language = Language::Es;
        let texts = Texts::load(language).for_supply(volts);
        let pdf = key_of(&content_library, &source, (language, PaperSize::A4));
        let Some(text) = poppler::text(&pdf.expect("it is made"), None) else {
            return;
        };
        let text = flowing(&text);
        let mut needed: Vec<String> = (bench.hidden().iter())
            .map(|mode| texts.mode(&mode.id))
            .collect();
        if needed.is_empty() {
            needed.push(texts.get("mode-nothing"));
        }
        let fresh = bench.machine().control().memory().codes.iter();
        needed.extend(
            fresh
                .filter(|c| c.cycles_ago == 0)
                .map(|c| format!("{:02}: ", c.code)),
        );
        needed.extend(["paper-step", "best-codes", "deed-report"].map(|key| texts.get(key)));
        for needed in needed {
            let needed = flowing(&needed);
            assert!(
                text.contains(&needed),
                "{}: {needed} is not in {text}",
                source.file
            );
        }
        assert!(!text.contains('‹') && !text.contains('{'), "{text}");
        assert!(bench.machine().now() > Time::ZERO);
    }
}

#[test]
fn variants_are_one_document_with_a_sheet_for_each_learner_and_one_key() {
    let content_library = content();
    let original = content_library.scenario("drain-code").expect("built in");
    let seed = 3;
    let begun = VariantSeries::begin_in_slices(&content_library, &original, seed);
    let mut series = without_breaks(begun).expect("they can be drawn");
    let variants: Vec<_> = (0..3)
        .map(|_| {
            let next = without_breaks(series.next_in_slices(&content_library));
            next.expect("it can be tried").expect("there is one")
        })
        .collect();
    let jobs: Vec<SheetJob<'_>> = (variants.iter())
        .map(|variant| SheetJob {
            variant: Some((variant.number, seed)),
            ..job(&variant.source)
        })
        .collect();
    let (language, paper) = (Language::En, PaperSize::Letter);
    let sheets = handout(&content_library, &jobs, language, paper).expect("it is made");
    let key = answer_key(&content_library, &jobs, language, paper).expect("it is made");
    let (Some(sheets), Some(key)) = (poppler::text(&sheets, None), poppler::text(&key, None))
    else {
        return;
    };
    let (sheets, key) = (flowing(&sheets), flowing(&key));
    let texts = Texts::load(language);
    let fields = format!("{} {}", texts.get("paper-name"), texts.get("paper-date"));
    assert_eq!(sheets.matches(&fields).count(), 3);
    assert_eq!(sheets.matches("Page 1 of ").count(), 3);
    assert_eq!(key.matches(&texts.get("paper-key-intro")).count(), 1);
    for (n, variant) in variants.iter().enumerate() {
        let named = format!("Sheet {} of 3 · variant {} · seed 3", n + 1, variant.number);
        assert!(sheets.contains(&named) && key.contains(&named), "{named}");
        let complaint = flowing(&variant.source.scenario.complaint.en);
        assert!(sheets.contains(&complaint), "{complaint}");
        let hidden = hidden_of(&content_library, &variant.source);
        for mode in hidden {
            assert!(key.contains(&flowing(&texts.mode(&mode))), "{mode}");
        }
    }
}

fn hidden_of(
    content_library: &detent_content::ContentLibrary,
    source: &ScenarioSource,
) -> Vec<String> {
    let scenario = &source.scenario;
    let library = content_library.library(scenario);
    let drawn = draw(scenario, &library, scenario.seed).expect("it can be drawn");
    drawn.iter().map(|mode| mode.id.clone()).collect()
}
