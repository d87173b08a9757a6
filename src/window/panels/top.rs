//! The bar along the top: views, time, language.

use super::{Face, kit};
use crate::state::ViewKind;
use crate::tokens as t;
use bevy_egui::egui::{Align, Layout, RichText, Ui};
use detent_content::Language;

/// One row, or two where one has no room.
pub(super) fn top_ui(ui: &mut Ui, face: &mut Face, narrow: bool) {
    if narrow {
        ui.allocate_ui([ui.available_width(), 34.0].into(), |ui| {
            ui.horizontal_centered(|ui| views_ui(ui, face));
        });
        ui.horizontal_centered(|ui| time_ui(ui, face));
    } else {
        ui.horizontal_centered(|ui| {
            views_ui(ui, face);
            time_ui(ui, face);
        });
    }
}

fn views_ui(ui: &mut Ui, face: &mut Face) {
    ui.spacing_mut().item_spacing.x = 6.0;
    ui.label(
        RichText::new(face.text("app-name"))
            .size(24.0)
            .color(t::AMBER),
    );
    ui.add_space(14.0);
    for (view, key, number) in [
        (ViewKind::Panel, "view-panel", 1),
        (ViewKind::Machine, "view-machine", 2),
        (ViewKind::Cabinet, "view-cabinet", 3),
    ] {
        let text = format!("{number}  {}", face.text(key));
        if kit::choice(ui, face.desk.view == view, text).clicked() {
            face.desk.view = view;
        }
    }
}

fn time_ui(ui: &mut Ui, face: &mut Face) {
    ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
        ui.spacing_mut().item_spacing.x = 6.0;
        if ui.button(face.text("top-keys")).clicked() {
            face.desk.keys = !face.desk.keys;
        }
        for language in [Language::Es, Language::En] {
            let on = face.desk.language == language;
            let button = kit::choice(ui, on, language.code().to_uppercase())
                .on_hover_text(language.own_name());
            if button.clicked() {
                face.desk.language = language;
            }
        }
        ui.add_space(10.0);
        for speed in [60, 10, 1, 0] {
            let on = face.desk.speed == speed;
            let label = if speed == 0 {
                "||".to_owned()
            } else {
                format!("×{speed}")
            };
            let button = kit::choice(ui, on, label);
            let button = if speed == 0 {
                button.on_hover_text(face.text("top-pause"))
            } else {
                button
            };
            if button.clicked() {
                face.desk.speed = speed;
            }
        }
        let seconds = face.bench.view().machine.time_s as u64;
        let clock = format!(
            "{:02}:{:02}:{:02}",
            seconds / 3600,
            seconds / 60 % 60,
            seconds % 60
        );
        ui.label(RichText::new(clock).monospace().size(19.0).color(t::TEXT));
    });
}
