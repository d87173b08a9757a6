//! The list of keys.

use super::{PanelContext, kit};
use crate::tokens as t;
use bevy_egui::egui::{self, Grid, Id, Modal, RichText};

/// Keys and what they do, as text keys.
const KEYS: [(&str, &str); 18] = [
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
    ("− +", "key-speed"),
    ("Tab  Enter", "key-focus"),
    ("Esc", "key-back"),
    ("F1", "key-keys"),
];

pub(super) fn help_ui(ctx: &egui::Context, context: &mut PanelContext) {
    let shown = Modal::new(Id::new("keys")).show(ctx, |ui| {
        ui.set_width(470.0);
        kit::heading(ui, context.text("keys-title"));
        Grid::new("keys")
            .num_columns(2)
            .spacing([24.0, 4.0])
            .show(ui, |ui| {
                for (key, text) in KEYS {
                    ui.label(RichText::new(key).monospace().size(t::BODY).color(t::AMBER));
                    ui.label(context.text(text));
                    ui.end_row();
                }
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
