//! Codes, how long what is behind them has to last, and what the sheet says of them.

use super::{count_ui, seconds_ui};
use crate::board_workshop::BoardWorkshop;
use crate::panels::workshop::flag_ui;
use crate::panels::{PanelContext, kit};
use crate::tokens as t;
use bevy_egui::egui::{Button, RichText, Ui};
use detent_simulation::controller::{Board, Monitor};
use detent_simulation::interface::Component;

/// Longest time for a condition or a rest, s.
const LONGEST_S: f64 = 3_600.0;

/// Draws it.
pub(super) fn codes_ui(
    ui: &mut Ui,
    context: &PanelContext,
    open: &mut BoardWorkshop,
    board: &mut Board,
) {
    let name = |monitor: Monitor| context.text(&format!("monitor-{monitor}"));
    kit::card(ui, |ui| {
        kit::heading(ui, name(open.monitor));
        ui.label(context.text(&format!("code-{}", open.monitor)));
        code_ui(ui, context, open.monitor, board);
    });
    kit::card(ui, |ui| {
        kit::heading(ui, context.text("workshop-board-page-codes"));
        let mut codes = board.codes.clone();
        codes.sort_by_key(|code| code.code);
        for code in codes {
            let on = code.monitor == open.monitor;
            let ink = if on { t::ON_AMBER } else { t::TEXT };
            let told = format!("{:02}  {}", code.code, name(code.monitor));
            let row = Button::selectable(on, RichText::new(told).color(ink)).wrap();
            if ui.add(row).clicked() {
                open.monitor = code.monitor;
                open.number = code.code;
                open.shown_since_s = None;
            }
        }
    });
}

/// The code of a monitor, its rule and its line of the sheet.
fn code_ui(ui: &mut Ui, context: &PanelContext, monitor: Monitor, board: &mut Board) {
    let text = |key: &str| context.text(key);
    let mut codes = board.codes.iter_mut();
    if let Some(code) = codes.find(|code| code.monitor == monitor) {
        count_ui(
            ui,
            text("workshop-board-code-number"),
            &mut code.code,
            1..=99,
        );
    }
    let mut rules = board.monitors.iter_mut();
    if let Some(rule) = rules.find(|rule| rule.monitor == monitor) {
        seconds_ui(
            ui,
            text("workshop-board-delay"),
            &mut rule.delay_ms,
            LONGEST_S,
        );
        count_ui(
            ui,
            text("workshop-board-retries"),
            &mut rule.retries,
            0..=20,
        );
        if rule.retries > 0 {
            let rest = text("workshop-board-rest-between");
            seconds_ui(ui, rest, &mut rule.rest_ms, LONGEST_S);
        }
        let drain = flag_ui(ui, text("workshop-board-drain"), rule.drain);
        rule.drain = drain.unwrap_or(rule.drain);
    }
    let mut sheet = board.sheet.iter_mut();
    if let Some(entry) = sheet.find(|entry| entry.monitor == monitor) {
        ui.label(text("workshop-board-suspects"));
        ui.horizontal_wrapped(|ui| {
            for component in Component::ALL.iter().copied() {
                let on = entry.suspects.contains(&component);
                if kit::choice(ui, on, context.part(component)).clicked() {
                    match on {
                        true => entry.suspects.retain(|there| *there != component),
                        false => entry.suspects.push(component),
                    }
                }
            }
        });
    }
}
