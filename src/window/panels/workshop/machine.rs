//! The machine of a job: its board, its supply, and what time has done to it.

use super::{Changes, field, flag_ui, number_ui};
use crate::panels::{PanelContext, kit};
use crate::workshop::Workshop;
use bevy_egui::egui::Ui;
use detent_content::{ContentLibrary, ScenarioChange};
use detent_training::lesson::Mains;

/// Draws it.
pub(super) fn machine_ui(
    ui: &mut Ui,
    context: &PanelContext,
    open: &Workshop,
    library: &ContentLibrary,
    changes: &mut Changes,
) {
    let scenario = open.scenario();
    kit::card(ui, |ui| {
        kit::heading(ui, context.text("workshop-machine"));
        let boards = library.boards.iter();
        let boards: Vec<(&str, String)> = boards
            .map(|board| (board.id.as_str(), context.text(&board.name)))
            .collect();
        let board = field(ui, "board", |ui| {
            kit::choices(ui, scenario.board.as_str(), boards)
        });
        if let Some(board) = board {
            changes.push(ScenarioChange::Board(board.to_owned()));
        }
        let supplies = Mains::ALL.map(|mains| {
            let rating = mains.rating();
            (mains, format!("{:.0} V, {:.0} Hz", rating.volts, rating.hz))
        });
        let mains = field(ui, "mains", |ui| kit::choices(ui, scenario.mains, supplies));
        if let Some(mains) = mains {
            changes.push(ScenarioChange::Mains(mains));
        }
        let wear = field(ui, "dial_wear", |ui| {
            let name = context.text("workshop-wear");
            number_ui(ui, name, scenario.dial_wear, 0.0..=1.0, 0.05)
        });
        changes.extend(wear.map(ScenarioChange::DialWear));
        let seed = field(ui, "seed", |ui| {
            let name = context.text("workshop-seed");
            number_ui(ui, name, scenario.seed as f64, 0.0..=999_999.0, 1.0)
        });
        changes.extend(seed.map(|seed| ScenarioChange::Seed(seed as u64)));
        let worn = flag_ui(ui, context.text("workshop-worn-lead"), scenario.worn_lead);
        changes.extend(worn.map(ScenarioChange::WornLead));
        let board = library.board(&scenario.board);
        let codes = board.map_or(&[][..], |board| &board.codes[..]);
        let known: Vec<u8> = codes.iter().map(|code| code.code).collect();
        ui.label(context.text("workshop-stale"));
        let stale = field(ui, "stale_codes", |ui| {
            codes_ui(ui, &known, &scenario.stale_codes)
        });
        changes.extend(stale.map(ScenarioChange::StaleCodes));
        expected_codes_ui(ui, context, open, &known, changes);
    });
}

/// What the author expects the customer's wash to store, for the proof to hold against it.
fn expected_codes_ui(
    ui: &mut Ui,
    context: &PanelContext,
    open: &Workshop,
    known: &[u8],
    changes: &mut Changes,
) {
    let expected = open.scenario().expected_codes.as_ref();
    field(ui, "expected_codes", |ui| {
        let name = context.text("workshop-expects-codes");
        if let Some(expects) = flag_ui(ui, name, expected.is_some()) {
            // As the proof has them, where it is of this job.
            let proof = open.proof().of_now().and_then(|proved| proved.proof());
            let raised = proof.and_then(|(_, proof)| proof.machines.first());
            let raised = raised.map_or_else(Vec::new, |machine| machine.codes.clone());
            changes.push(ScenarioChange::ExpectedCodes(expects.then_some(raised)));
        }
        if let Some(expected) = expected {
            let codes = codes_ui(ui, known, expected);
            changes.extend(codes.map(|codes| ScenarioChange::ExpectedCodes(Some(codes))));
        }
    });
}

/// Codes put on a list and taken off it: the new list, where it was changed.
fn codes_ui(ui: &mut Ui, known: &[u8], listed: &[u8]) -> Option<Vec<u8>> {
    // What no board has can at least be taken off.
    let unknown = listed.iter().filter(|code| !known.contains(code));
    let mut changed = None;
    ui.horizontal_wrapped(|ui| {
        for code in known.iter().chain(unknown) {
            let on = listed.contains(code);
            if kit::choice(ui, on, format!("{code:02}")).clicked() {
                let mut codes = listed.to_vec();
                match on {
                    true => codes.retain(|there| there != code),
                    false => codes.push(*code),
                }
                changed = Some(codes);
            }
        }
    });
    changed
}
