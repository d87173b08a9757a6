//! The machine of a job: its board, its supply, and what time has done to it.

use super::{Changes, flag_ui, number_ui};
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
        if let Some(board) = kit::choices(ui, scenario.board.as_str(), boards) {
            changes.push(ScenarioChange::Board(board.to_owned()));
        }
        let supplies = Mains::ALL.map(|mains| {
            let rating = mains.rating();
            (mains, format!("{:.0} V, {:.0} Hz", rating.volts, rating.hz))
        });
        if let Some(mains) = kit::choices(ui, scenario.mains, supplies) {
            changes.push(ScenarioChange::Mains(mains));
        }
        let wear = number_ui(
            ui,
            context.text("workshop-wear"),
            scenario.dial_wear,
            0.0..=1.0,
            0.05,
        );
        changes.extend(wear.map(ScenarioChange::DialWear));
        let seed = number_ui(
            ui,
            context.text("workshop-seed"),
            scenario.seed as f64,
            0.0..=999_999.0,
            1.0,
        );
        changes.extend(seed.map(|seed| ScenarioChange::Seed(seed as u64)));
        let worn = flag_ui(ui, context.text("workshop-worn-lead"), scenario.worn_lead);
        changes.extend(worn.map(ScenarioChange::WornLead));
        stale_codes_ui(ui, context, open, library, changes);
    });
}

/// Codes from long ago, put on the list and taken off it.
fn stale_codes_ui(
    ui: &mut Ui,
    context: &PanelContext,
    open: &Workshop,
    library: &ContentLibrary,
    changes: &mut Changes,
) {
    let stale = &open.scenario().stale_codes;
    ui.label(context.text("workshop-stale"));
    let board = library.board(&open.scenario().board);
    let codes = board.map_or(&[][..], |board| &board.codes[..]);
    let mut codes: Vec<u8> = codes.iter().map(|code| code.code).collect();
    // What no board has can at least be taken off.
    codes.extend(
        stale
            .iter()
            .filter(|code| !codes.contains(code))
            .copied()
            .collect::<Vec<_>>(),
    );
    ui.horizontal_wrapped(|ui| {
        for code in codes {
            let on = stale.contains(&code);
            if kit::choice(ui, on, format!("{code:02}")).clicked() {
                let mut stale = stale.clone();
                match on {
                    true => stale.retain(|there| *there != code),
                    false => stale.push(code),
                }
                changes.push(ScenarioChange::StaleCodes(stale));
            }
        }
    });
}
