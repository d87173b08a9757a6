//! The list of keys.

use super::{PanelContext, kit};
use crate::tokens as t;
use bevy_egui::egui::{self, Grid, Id, Modal, RichText, ScrollArea};

/// Keys and what they do, as text keys.
const KEYS: [(&str, &str); 19] = [
    ("← → [ ]", "key-turn"),
    ("S", "key-start"),
    ("X", "key-stop"),
    ("I  K", "key-more-less"),
    ("Shift", "key-keep"),
    ("L", "key-lid"),
    ("P", "key-plug"),
    ("C", "key-cabinet"),
    ("D", "key-discharge"),
    ("1 2 3", "key-views"),
    ("H", "key-hide"),
    ("V M B R G", "key-tabs"),
    ("T", "key-wait"),
    ("Y", "key-wait-long"),
    ("U", "key-wait-until"),
    ("− +", "key-speed"),
    ("Tab  Enter", "key-focus"),
    ("Esc", "key-back"),
    ("F1", "key-keys"),
];

pub(super) fn help_ui(ctx: &egui::Context, context: &mut PanelContext) {
    let shown = Modal::new(Id::new("keys")).show(ctx, |ui| {
        let room = ui.ctx().content_rect().size();
        // Side by side where there is room for it; what is still too long scrolls.
        let columns = if room.x > 900.0 { 2 } else { 1 };
        ui.set_width(430.0 * columns as f32);
        let title = kit::heading(ui, context.text("keys-title"));
        kit::dialog(ui, &title);
        ScrollArea::vertical()
            .max_height(room.y - 170.0)
            .show(ui, |ui| {
                Grid::new("keys")
                    .num_columns(2 * columns)
                    .spacing([18.0, 4.0])
                    .show(ui, |ui| {
                        let rows = KEYS.len().div_ceil(columns);
                        for row in 0..rows {
                            for (key, text) in KEYS.iter().skip(row).step_by(rows) {
                                let key = RichText::new(*key).monospace().size(t::BODY);
                                ui.label(key.color(t::AMBER));
                                ui.label(context.text(text));
                            }
                            ui.end_row();
                        }
                    });
            });
        ui.add_space(6.0);
        if kit::main_button(ui, context.text("common-close"), true).clicked() {
            context.ui_state.keys = false;
        }
    });
    if shown.should_close() {
        context.ui_state.keys = false;
    }
}
