//! The service sheet: printed paper with pictures.

mod gesture;
mod signs;
mod wires;

use super::meter::code_entry;
use super::{PanelContext, kit};
use crate::state::Page;
use crate::tokens as t;
use bevy_egui::egui::{self, Align2, RichText, Ui, Vec2, vec2};
use detent_content::Value;
use detent_simulation::controller::{Board, Code, Selector};
use std::f32::consts::{PI, TAU};

pub(super) use gesture::{entry, glyph};
pub(super) use signs::{example, in_turn, picture, weighted};

/// The pages, and the index of the one with the codes: they stay where they are while the page is scrolled.
pub(super) fn pages_ui(ui: &mut Ui, context: &mut PanelContext) {
    let pages = [
        (Page::Entry, "sheet-entry"),
        (Page::Lamps, "sheet-lamps"),
        (Page::Codes, "sheet-codes"),
        (Page::Menu, "sheet-menu"),
        (Page::Pins, "sheet-pins"),
    ];
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 4.0;
        ui.spacing_mut().button_padding.x = 4.0;
        let width = (ui.available_width() - 16.0) / 5.0;
        for (page, key) in pages {
            if kit::tab(
                ui,
                context.ui_state.page == page,
                context.text(key),
                vec2(width, 30.0),
            )
            .clicked()
            {
                context.ui_state.page = page;
            }
        }
    });
    if context.ui_state.page == Page::Codes && lies_there(context) {
        index_ui(ui, context);
    }
}

/// The page lies on the bench: in an examination not all of them do.
fn lies_there(context: &PanelContext) -> bool {
    let examined = context.ui_state.examined.as_ref();
    examined.is_none_or(|examined| examined.sheet.contains(&context.ui_state.page))
}

/// The board's codes, lowest first.
fn sorted_codes(board: &Board) -> Vec<&Code> {
    let mut codes: Vec<&Code> = board.codes.iter().collect();
    codes.sort_by_key(|code| code.code);
    codes
}

/// A search among the codes, and each of them to go to.
fn index_ui(ui: &mut Ui, context: &mut PanelContext) {
    let label = context.texts.fixed("search");
    kit::search(ui, &label, &mut context.ui_state.code_search);
    let mut wanted = None;
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = vec2(4.0, 4.0);
        ui.spacing_mut().button_padding.x = 5.0;
        for code in sorted_codes(&context.bench.job().board) {
            if ui.button(format!("{:02}", code.code)).clicked() {
                wanted = Some(code.code);
            }
        }
    });
    if wanted.is_some() {
        context.ui_state.code_search.clear();
        context.ui_state.code_wanted = wanted;
    }
    ui.add_space(4.0);
}

pub(super) fn sheet_ui(ui: &mut Ui, context: &mut PanelContext) {
    if !lies_there(context) {
        kit::card(ui, |ui| {
            ui.label(context.fixed("examination-no-page"));
            code_entry(ui, context);
        });
        return;
    }
    // What the lamps show is written down while it is read.
    if context.ui_state.page == Page::Lamps && !context.bench.view().finished {
        kit::card(ui, |ui| code_entry(ui, context));
    }
    kit::paper(ui, |ui| {
        ui.horizontal(|ui| {
            let board = &context.bench.job().board;
            kit::print_heading(ui, context.text(&board.name));
        });
        ui.label(
            RichText::new(context.text("sheet-invented"))
                .size(t::SMALL)
                .color(t::PRINT_QUIET),
        );
        ui.add_space(4.0);
        match context.ui_state.page {
            Page::Entry => gesture::entry(ui, context),
            Page::Lamps => signs::lamps(ui, context),
            Page::Codes => codes(ui, context),
            Page::Menu => menu(ui, context),
            Page::Pins => wires::wires(ui, context),
        }
    });
}

/// Whether a code's entry says what is looked for.
fn says(context: &PanelContext, code: &Code, wanted: &str) -> bool {
    if wanted.is_empty() {
        return true;
    }
    let entries = context.bench.job().board.sheet.iter();
    let mut told = vec![
        format!("{:02}", code.code),
        context.text(&format!("monitor-{}", code.monitor)),
    ];
    for entry in entries.filter(|entry| entry.monitor == code.monitor) {
        told.extend(entry.suspects.iter().map(|suspect| context.part(*suspect)));
        told.extend(entry.checks.iter().map(|check| context.text(check)));
    }
    told.iter().any(|text| text.to_lowercase().contains(wanted))
}

fn codes(ui: &mut Ui, context: &mut PanelContext) {
    ui.label(context.text("sheet-codes-intro"));
    let wanted = context.ui_state.code_search.trim().to_lowercase();
    let to = context.ui_state.code_wanted.take();
    let context = &*context;
    let board = &context.bench.job().board;
    let codes: Vec<&Code> = (sorted_codes(board).into_iter())
        .filter(|code| says(context, code, &wanted))
        .collect();
    if codes.is_empty() {
        ui.label(context.text("sheet-none-found"));
    }
    for (n, code) in codes.into_iter().enumerate() {
        let fill = if n % 2 == 0 { t::PAPER_SHADE } else { t::PAPER };
        let entry = egui::Frame::new()
            .fill(fill)
            .inner_margin(egui::Margin::symmetric(8, 6))
            .corner_radius(4)
            .show(ui, |ui| {
                ui.set_width(ui.available_width());
                ui.horizontal_top(|ui| {
                    ui.label(
                        RichText::new(format!("{:02}", code.code))
                            .size(24.0)
                            .color(t::PRINT_ACCENT),
                    );
                    ui.vertical(|ui| {
                        ui.label(
                            RichText::new(context.text(&format!("monitor-{}", code.monitor)))
                                .color(t::PRINT)
                                .strong(),
                        );
                        for entry in board.sheet.iter().filter(|e| e.monitor == code.monitor) {
                            let suspects: Vec<String> =
                                entry.suspects.iter().map(|c| context.part(*c)).collect();
                            ui.label(
                                RichText::new(suspects.join(" · "))
                                    .size(t::SMALL)
                                    .color(t::PRINT_QUIET),
                            );
                            for check in &entry.checks {
                                let text = format!("– {}", context.text(check));
                                ui.label(RichText::new(text).size(t::SMALL));
                            }
                        }
                    });
                });
            });
        if to == Some(code.code) {
            entry.response.scroll_to_me(Some(egui::Align::TOP));
        }
    }
}

fn menu(ui: &mut Ui, context: &PanelContext) {
    ui.label(context.text("sheet-menu-intro"));
    let board = &context.bench.job().board;
    let selector = board.panel.selector;
    ui.label(context.text(match selector {
        Selector::Dial { .. } => "choose-dial",
        Selector::Switch { .. } => "choose-switch",
        Selector::Steps => "choose-steps",
    }));
    if let Some(stops) = selector.turn() {
        let (rect, painter) = kit::canvas(ui, 196.0);
        let middle = rect.center();
        gesture::knob(&painter, middle, 60.0, selector);
        for i in 0..stops {
            let used = board.routine_at(i).is_some();
            let turned = f32::from(i) / f32::from(stops) * TAU - PI / 2.0;
            let p = middle + Vec2::angled(turned) * 84.0;
            let (size, ink) = if used {
                (16.0, t::PRINT_ACCENT)
            } else {
                (12.0, t::PRINT_QUIET)
            };
            kit::write(&painter, p.x, p.y, Align2::CENTER_CENTER, size, ink, i);
        }
    }
    let routines = (board.menu.iter()).map(|entry| {
        (
            entry.position,
            context.text(&format!("routine-{}", entry.routine)),
        )
    });
    positions(ui, "menu", routines);
    let seconds = Value::from(f64::from(board.service.clear_hold_ms) / 1000.0);
    ui.label(context.with("sheet-menu-clear", &[("seconds", seconds)]));
    ui.label(RichText::new(context.text("sheet-programs")).color(t::PRINT_ACCENT));
    let programs = (board.programs.iter()).map(|p| (p.position, context.text(&p.name)));
    positions(ui, "programs", programs);
}

/// A table of positions.
fn positions(ui: &mut Ui, id: &str, rows: impl Iterator<Item = (u8, String)>) {
    egui::Grid::new(id)
        .num_columns(2)
        .striped(true)
        .spacing([14.0, 7.0])
        .show(ui, |ui| {
            for (position, text) in rows {
                let number = RichText::new(position.to_string()).size(18.0);
                ui.label(number.color(t::PRINT_ACCENT));
                ui.label(text);
                ui.end_row();
            }
        });
}
