//! Settings: which key does what, and hands, motion, sound and the size of text.

use super::{PanelContext, kit};
use crate::key_bindings::{KeyTaken, action_text, print_on};
use crate::practice::LearnerRes;
use crate::preferences::zoom_that_fits;
use crate::sound;
use crate::state::SettingsPage;
use crate::tokens as t;
use bevy_egui::egui::{
    self, Button, Id, Key, Label, Modal, Modifiers, RichText, ScrollArea, Ui, WidgetInfo,
    WidgetType, vec2,
};
use detent_content::{CharacterKeys, KeyAction, Motion, Preferences, SoundVolume, TextSize, Value};
use std::collections::BTreeMap;

/// Keys that are the same for everybody, and what they do, as text keys.
const FIXED_KEYS: [(&str, &str); 6] = [
    ("← → ↑ ↓", "key-turn"),
    ("Shift", "key-keep"),
    ("Tab  Enter", "key-focus"),
    ("PgUp  PgDn", "key-page"),
    ("Esc", "key-back"),
    ("F1", "key-keys"),
];

/// Width of a key in the list.
const KEY_WIDTH: f32 = 96.0;

/// Draws them over everything else.
pub(super) fn settings_ui(
    ctx: &egui::Context,
    context: &mut PanelContext,
    learner: &mut LearnerRes,
) {
    let waits = context.ui_state.rebinding.is_some();
    let gives_up = waits && ctx.input_mut(|i| i.consume_key(Modifiers::NONE, Key::Escape));
    if gives_up {
        context.ui_state.rebinding = None;
    }
    let opens = ctx.memory(|memory| memory.top_modal_layer().is_none());
    let shown = Modal::new(Id::new("settings")).show(ctx, |ui| {
        let room = ui.ctx().content_rect().size();
        // Side by side where there is room for it; what is still too long scrolls.
        let columns = if room.x > 900.0 { 2 } else { 1 };
        ui.set_width((430.0 * columns as f32).min(room.x - 40.0));
        let title = kit::heading(ui, context.text("settings-title"));
        kit::dialog(ui, &title);
        ui.horizontal_wrapped(|ui| {
            for (page, key) in [
                (SettingsPage::Keys, "settings-tab-keys"),
                (SettingsPage::Display, "settings-tab-display"),
            ] {
                let on = context.ui_state.settings_page == page;
                let tab = kit::tab(ui, on, context.text(key), vec2(0.0, 34.0));
                if opens && on {
                    tab.request_focus();
                }
                if tab.clicked() {
                    context.ui_state.settings_page = page;
                    context.ui_state.rebinding = None;
                }
            }
        });
        ScrollArea::vertical()
            .id_salt(context.ui_state.settings_page as usize)
            .max_height((room.y - 150.0).max(80.0))
            .show(ui, |ui| {
                ui.set_width(ui.available_width());
                match context.ui_state.settings_page {
                    SettingsPage::Keys => keys_ui(ui, context, learner, columns),
                    SettingsPage::Display => display_ui(ui, context, learner),
                }
                kit::scroll_by_keys(ui, true);
            });
        ui.add_space(6.0);
        if kit::main_button(ui, context.text("common-close"), true).clicked() {
            close(context);
        }
    });
    if shown.should_close() && !gives_up {
        close(context);
    }
}

fn close(context: &mut PanelContext) {
    context.ui_state.keys = false;
    context.ui_state.rebinding = None;
    context.ui_state.key_taken = None;
}

fn keys_ui(ui: &mut Ui, context: &mut PanelContext, learner: &mut LearnerRes, columns: usize) {
    ui.label(context.text("settings-characters"));
    let choices = CharacterKeys::ALL.map(|choice| {
        let key = match choice {
            CharacterKeys::On => "settings-characters-on",
            CharacterKeys::WithAlt => "settings-characters-alt",
            CharacterKeys::Off => "settings-characters-off",
        };
        (choice, context.text(key))
    });
    let now = context.ui_state.preferences.character_keys;
    if let Some(character_keys) = kit::choices(ui, now, choices) {
        learner.prefer(Preferences {
            character_keys,
            ..context.ui_state.preferences.clone()
        });
    }
    // Room for two lines, so that no row moves under the pointer.
    kit::reserved(ui, 44.0, |ui| told_ui(ui, context));
    let rows = KeyAction::ALL.len().div_ceil(columns);
    ui.columns(columns, |columns| {
        for (ui, actions) in columns.iter_mut().zip(KeyAction::ALL.chunks(rows)) {
            for action in actions {
                key_ui(ui, context, *action);
            }
        }
    });
    ui.add_space(6.0);
    for (key, text) in FIXED_KEYS {
        ui.horizontal(|ui| {
            let key = Label::new(RichText::new(key).color(t::AMBER));
            ui.add_sized([KEY_WIDTH, 20.0], key);
            ui.add(Label::new(context.text(text)).wrap());
        });
    }
    ui.add_space(6.0);
    let changed = !context.ui_state.preferences.keys.is_empty();
    let reset = Button::new(context.text("settings-reset"));
    if ui.add_enabled(changed, reset).clicked() {
        context.ui_state.key_taken = None;
        learner.prefer(Preferences {
            keys: BTreeMap::new(),
            ..context.ui_state.preferences.clone()
        });
    }
}

/// What is to be pressed next, or why the last key was not taken.
fn told_ui(ui: &mut Ui, context: &PanelContext) {
    if let Some(action) = context.ui_state.rebinding {
        let action = Value::from(context.text(action_text(action)));
        let text = context.with("settings-press", &[("action", action)]);
        ui.add(Label::new(RichText::new(text).color(t::AMBER)).wrap());
    } else if let Some((key, KeyTaken(other))) = context.ui_state.key_taken {
        let other = Value::from(context.text(action_text(other)));
        let args = [("key", Value::from(print_on(key))), ("action", other)];
        let text = context.with("settings-taken", &args);
        ui.add(Label::new(RichText::new(text).color(t::BAD)).wrap());
    } else {
        kit::quiet(ui, context.text("settings-keys-note"));
    }
}

/// An action with its key, which another takes the place of.
fn key_ui(ui: &mut Ui, context: &mut PanelContext, action: KeyAction) {
    ui.horizontal(|ui| {
        let name = context.text(action_text(action));
        let key = context.ui_state.key_bindings.key(action);
        let key = key.map_or_else(
            || context.text("settings-no-key"),
            |key| print_on(key).to_owned(),
        );
        let waits = context.ui_state.rebinding == Some(action);
        let shown = if waits { "…" } else { &key };
        let size = vec2(KEY_WIDTH, 28.0);
        let button = kit::choice_sized(ui, waits, shown, size);
        button.widget_info(|| {
            WidgetInfo::labeled(WidgetType::Button, true, format!("{name}: {key}"))
        });
        if button.clicked() {
            context.ui_state.rebinding = (!waits).then_some(action);
            context.ui_state.key_taken = None;
        }
        ui.add(Label::new(&name).wrap());
    });
}

fn display_ui(ui: &mut Ui, context: &mut PanelContext, learner: &mut LearnerRes) {
    let mut preferences = context.ui_state.preferences.clone();
    ui.label(context.text("settings-text-size"));
    let sizes = TextSize::ALL.map(|size| {
        let share = f64::from(size.percent()) / 100.0;
        (size, context.texts.percent(share, 0))
    });
    if let Some(size) = kit::choices(ui, preferences.text_size, sizes) {
        preferences.text_size = size;
    }
    let width = ui.ctx().content_rect().width() * ui.ctx().zoom_factor();
    let wanted = f32::from(preferences.text_size.percent()) / 100.0;
    let note = match zoom_that_fits(preferences.text_size, width) < wanted {
        true => "settings-text-fits",
        false => "settings-text-note",
    };
    kit::quiet(ui, context.text(note));
    ui.add_space(8.0);
    ui.label(context.text("settings-motion"));
    let motions = Motion::ALL.map(|motion| {
        let key = match motion {
            Motion::AsSystem => "settings-motion-system",
            Motion::Reduced => "settings-motion-reduced",
            Motion::Full => "settings-motion-full",
        };
        (motion, context.text(key))
    });
    if let Some(motion) = kit::choices(ui, preferences.motion, motions) {
        preferences.motion = motion;
    }
    ui.add_space(8.0);
    ui.label(context.text("settings-sound"));
    let volumes = SoundVolume::ALL.map(|volume| {
        let key = match volume {
            SoundVolume::Off => "settings-sound-off",
            SoundVolume::Low => "settings-sound-low",
            SoundVolume::Full => "settings-sound-full",
        };
        (volume, context.text(key))
    });
    if let Some(volume) = kit::choices(ui, preferences.sound, volumes) {
        preferences.sound = volume;
    }
    let key = match sound::IS_PLAYED {
        true => "settings-sound-note",
        false => "settings-sound-none",
    };
    kit::quiet(ui, context.text(key));
    ui.add_space(8.0);
    let left_handed = context.text("settings-left-handed");
    kit::checkbox(ui, &mut preferences.left_handed, left_handed);
    kit::quiet(ui, context.text("settings-left-note"));
    ui.add_space(8.0);
    let key = match learner.name() {
        Some(_) => "settings-kept",
        None => "settings-guest",
    };
    kit::quiet(ui, context.text(key));
    if preferences != context.ui_state.preferences {
        learner.prefer(preferences);
    }
}
