//! Panels by what they say and do, without a window.

use super::*;
use crate::app::demo::{DemoBench, DemoShop};
use crate::bench::Report;
use crate::content::Language;
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;

/// A panel under test with all that it needs.
struct Stand {
    texts: Texts,
    bench: BenchRes,
    desk: Desk,
}

fn stand(language: Language) -> Stand {
    let mut bench = BenchRes::new(Box::new(DemoBench::new()));
    bench.refresh();
    Stand {
        texts: Texts::load(language),
        bench,
        desk: Desk {
            language,
            ..Desk::default()
        },
    }
}

fn harness<'a>(stand: Stand, panel: impl Fn(&mut Ui, &mut Face) + 'a) -> Harness<'a, Stand> {
    let mut harness = Harness::builder()
        .with_size([430.0, 1400.0])
        .build_ui_state(
            move |ui, stand: &mut Stand| {
                kit::dress(ui.ctx());
                let mut face = Face {
                    texts: &stand.texts,
                    bench: &mut stand.bench,
                    desk: &mut stand.desk,
                };
                panel(ui, &mut face);
            },
            stand,
        );
    harness.run_steps(2);
    harness
}

#[test]
fn the_ticket_pulls_the_plug() {
    let mut harness = harness(stand(Language::En), ticket::ticket_ui);
    harness.get_by_label("Pull the plug (P)").click();
    harness.run_steps(2);
    assert_eq!(
        harness.state().bench.queue.back().map(|(a, _)| a.clone()),
        Some(Action::Unplug)
    );
}

#[test]
fn the_ticket_speaks_spanish() {
    let harness = harness(stand(Language::Es), ticket::ticket_ui);
    harness.get_by_label("Desenchufar (P)");
}

#[test]
fn a_code_is_noted_as_read() {
    let mut harness = harness(stand(Language::En), meter::meter_ui);
    harness.state_mut().desk.digits = [2, 3];
    harness.get_by_label("Note it").click();
    harness.run_steps(2);
    assert_eq!(
        harness.state().bench.queue.back().map(|(a, _)| a.clone()),
        Some(Action::NoteCode(23))
    );
}

#[test]
fn an_ordered_part_can_be_fitted_and_another_ordered() {
    let mut harness = harness(stand(Language::En), parts::parts_ui);
    harness.get_by_label("Fit it").click();
    harness.run_steps(2);
    assert_eq!(
        harness.state().bench.queue.back().map(|(a, _)| a.clone()),
        Some(Action::Fit("C24-330".to_owned()))
    );
}

#[test]
fn a_report_needs_cause_and_part() {
    let mut harness = harness(stand(Language::En), report::report_ui);
    harness.get_by_label("Hand the machine back").click();
    harness.run_steps(2);
    assert!(harness.state().bench.queue.is_empty());
    harness.state_mut().desk.draft.cause = Some(Some("drain-pump.seized".to_owned()));
    harness.state_mut().desk.draft.part = Some(None);
    harness.state_mut().desk.draft.proof.insert(1);
    harness.run_steps(2);
    harness.get_by_label("Hand the machine back").click();
    harness.run_steps(2);
    let expected = Report {
        cause: Some("drain-pump.seized".to_owned()),
        part: None,
        proof: vec![1],
    };
    assert_eq!(
        harness.state().bench.queue.back().map(|(a, _)| a.clone()),
        Some(Action::Report(expected))
    );
}

#[test]
fn a_caution_asks_and_stepping_back_does_nothing() {
    let mut stand = stand(Language::En);
    stand.bench.push(Action::OpenCabinet);
    stand.bench.tick();
    assert!(stand.bench.asked.is_some());
    let mut harness = harness(stand, |ui, face| caution::caution_ui(ui.ctx(), face));
    harness.get_by_label("DANGER");
    harness.get_by_label("Step back").click();
    harness.run_steps(2);
    let state = harness.state_mut();
    assert!(state.bench.asked.is_none());
    state.bench.tick();
    state.bench.refresh();
    assert!(!state.bench.view().cabinet_open);
}

#[test]
fn a_caution_can_be_overruled() {
    let mut stand = stand(Language::En);
    stand.bench.push(Action::OpenCabinet);
    stand.bench.tick();
    let mut harness = harness(stand, |ui, face| caution::caution_ui(ui.ctx(), face));
    harness.get_by_label("Go on").click();
    harness.run_steps(2);
    let state = harness.state_mut();
    state.bench.tick();
    state.bench.refresh();
    assert!(state.bench.view().cabinet_open);
}

#[test]
fn every_page_and_tab_has_all_its_texts_in_both_languages() {
    use crate::app::state::Page;
    for language in Language::ALL {
        for page in [
            Page::Entry,
            Page::Lamps,
            Page::Codes,
            Page::Menu,
            Page::Pins,
        ] {
            let mut stand = stand(language);
            stand.desk.page = page;
            nothing_missing(&harness(stand, sheet::sheet_ui), &format!("{page:?}"));
        }
        nothing_missing(&harness(stand(language), ticket::ticket_ui), "ticket");
        nothing_missing(&harness(stand(language), meter::meter_ui), "meter");
        nothing_missing(&harness(stand(language), parts::parts_ui), "parts");
        nothing_missing(&harness(stand(language), report::report_ui), "report");
        let mut finished = stand(language);
        finished.bench.push(Action::Report(Report {
            cause: None,
            part: None,
            proof: Vec::new(),
        }));
        finished.bench.tick();
        finished.bench.refresh();
        nothing_missing(&harness(finished, score::score_ui), "score");
    }
}

/// A missing text shows as its key in angle quotes.
#[track_caller]
fn nothing_missing(harness: &Harness<'_, Stand>, panel: &str) {
    let missing: Vec<String> = harness
        .query_all_by(|node| {
            let says = |text: Option<String>| text.is_some_and(|t| t.contains('‹'));
            says(node.label()) || says(node.value())
        })
        .map(|node| format!("{node:?}"))
        .collect();
    assert!(missing.is_empty(), "{panel}: {missing:#?}");
}

#[test]
fn the_start_screen_offers_every_job() {
    let harness = harness(stand(Language::En), |ui, face| {
        let _ = start::start_ui(ui, face, &DemoShop::default());
    });
    harness.get_by_role_and_label(egui::accesskit::Role::RadioButton, "The tub stays full");
    harness.get_by_label("Begin the job");
}
