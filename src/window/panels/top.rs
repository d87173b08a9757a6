//! The bar along the top: views, time, language.

use super::examination::time_left_ui;
use super::{BenchRoom, PanelContext, kit};
use crate::practice::now;
use crate::state::ViewKind;
use crate::tokens as t;
use bevy_egui::egui::{RichText, Ui, Vec2};
use detent_content::{KeyAction, Language};

/// One row, or two where one has no room; on the smallest screens as many as it takes.
pub(super) fn top_ui(ui: &mut Ui, context: &mut PanelContext, room: BenchRoom) {
    match room {
        BenchRoom::Wide => {
            ui.horizontal_centered(|ui| {
                name_ui(ui, context);
                views_ui(ui, context);
                kit::at_right_end(ui, |ui| time_ui(ui, context));
            });
        }
        BenchRoom::Narrow => {
            ui.allocate_ui([ui.available_width(), 34.0].into(), |ui| {
                ui.horizontal_centered(|ui| {
                    name_ui(ui, context);
                    views_ui(ui, context);
                });
            });
            ui.horizontal_centered(|ui| kit::at_right_end(ui, |ui| time_ui(ui, context)));
        }
        BenchRoom::Small => {
            ui.horizontal_wrapped(|ui| {
                ui.spacing_mut().item_spacing.y = 2.0;
                ui.spacing_mut().button_padding.x = 6.0;
                views_ui(ui, context);
                time_ui(ui, context);
            });
        }
    }
}

fn name_ui(ui: &mut Ui, context: &PanelContext) {
    let name = RichText::new(context.fixed("app-name"));
    ui.label(name.size(24.0).color(t::AMBER));
    ui.add_space(8.0);
}

fn views_ui(ui: &mut Ui, context: &mut PanelContext) {
    ui.spacing_mut().item_spacing.x = 6.0;
    for view in [ViewKind::Panel, ViewKind::Machine, ViewKind::Cabinet] {
        let text = view_label(context, view);
        if kit::tab(ui, context.ui_state.view == view, text, Vec2::ZERO).clicked() {
            context.ui_state.show_view(view);
        }
    }
    ui.add_space(8.0);
    let (on, choosable) = (context.ui_state.flat, !context.ui_state.software);
    let flat = ui.add_enabled_ui(choosable, |ui| {
        kit::choice(ui, on, context.fixed("view-flat"))
    });
    let flat = (flat.inner)
        .on_hover_text(context.fixed("view-flat-how"))
        .on_disabled_hover_text(context.fixed("view-flat-only"));
    if flat.clicked() {
        context.ui_state.flat = !on;
    }
}

/// What stands on the choice of a view: the key that does the same, and its name.
pub(super) fn view_label(context: &PanelContext, view: ViewKind) -> String {
    let (key, action) = match view {
        ViewKind::Panel => ("view-panel", KeyAction::ViewConsole),
        ViewKind::Machine => ("view-machine", KeyAction::ViewMachine),
        ViewKind::Cabinet => ("view-cabinet", KeyAction::ViewInside),
    };
    let name = context.text(key);
    match context.ui_state.key_bindings.hint(action) {
        Some(hint) => format!("{hint}  {name}"),
        None => name,
    }
}

/// What stands on the choice of the clock's speed; 0: it is paused.
pub(super) fn clock_label(speed: u32) -> String {
    match speed {
        0 => "||".to_owned(),
        speed => format!("×{speed}"),
    }
}

fn time_ui(ui: &mut Ui, context: &mut PanelContext) {
    ui.spacing_mut().item_spacing.x = 6.0;
    if let Some(examined) = &context.ui_state.examined {
        let left_s = (examined.until.0 - now().0).max(0);
        time_left_ui(ui, context, left_s);
    }
    let seconds = context.bench.view().machine.time_s as u64;
    let clock = format!(
        "{:02}:{:02}:{:02}",
        seconds / 3600,
        seconds / 60 % 60,
        seconds % 60
    );
    ui.label(RichText::new(clock).monospace().size(19.0).color(t::TEXT));
    // A film has its own speeds.
    let speeds: &[u32] = match context.bench.film() {
        Some(_) => &[],
        None => &[0, 1, 10, 60],
    };
    for speed in speeds.iter().copied() {
        let on = context.ui_state.speed == speed;
        let button = kit::choice(ui, on, clock_label(speed));
        let button = if speed == 0 {
            button.on_hover_ui(|ui| {
                ui.label(context.fixed("top-pause"));
            })
        } else {
            button
        };
        if button.clicked() {
            context.ui_state.speed = speed;
        }
    }
    ui.add_space(10.0);
    for (language, short) in [(Language::En, "EN"), (Language::Es, "ES")] {
        let on = context.ui_state.language == language;
        let button = kit::choice(ui, on, short).on_hover_text(language.own_name());
        if button.clicked() {
            context.ui_state.language = language;
        }
    }
    if ui.button(context.fixed("top-keys")).clicked() {
        context.ui_state.keys = true;
    }
}
