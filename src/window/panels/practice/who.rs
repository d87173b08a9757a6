//! Who practises: chosen, added, deleted; and the share of right answers to aim at.

use super::{PanelContext, kit, learners, per_cent};
use crate::practice::{LearnerRes, ahead_s, now};
use crate::tokens as t;
use bevy_egui::egui::{Key, RichText, Slider, TextEdit, Ui};
use detent_content::{LONGEST_NAME, Value};
use detent_training::practice::Target;

/// Draws it.
pub(super) fn who_ui(ui: &mut Ui, context: &mut PanelContext, learner: &mut LearnerRes) {
    kit::card(ui, |ui| {
        kit::heading(ui, context.text("practice-choose"));
        if learner.keeps() {
            choose_ui(ui, context, learner);
            add_ui(ui, context, learner);
        } else {
            kit::quiet(ui, context.text("practice-unkept"));
        }
    });
    kit::card(ui, |ui| {
        let target = learner.target();
        let args = [("target", per_cent(target.share()))];
        let heading = kit::heading(ui, context.with("practice-target", &args));
        let mut share = (100.0 * target.share()).round();
        ui.spacing_mut().slider_width = ui.available_width() - 16.0;
        let range = 100.0 * Target::LOWEST..=100.0 * Target::HIGHEST;
        let slider = Slider::new(&mut share, range).step_by(5.0);
        let slider = ui.add(slider.show_value(false)).labelled_by(heading.id);
        if let Ok(target) = Target::new(share / 100.0)
            && (slider.changed() || slider.drag_stopped())
        {
            // While it is dragged it changes at every frame.
            learner.aim(target, !slider.dragged());
        }
        kit::quiet(ui, context.text("practice-target-note"));
    });
    delete_ui(ui, context, learner);
    let known = learner.known();
    // One alone stands beside nobody.
    if known.len() > 1 {
        kit::card(ui, |ui| {
            learners::learners_ui(ui, context, &known, now(), ahead_s());
        });
    }
}

fn choose_ui(ui: &mut Ui, context: &mut PanelContext, learner: &mut LearnerRes) {
    let known = learner.known();
    ui.horizontal_wrapped(|ui| {
        let guest = learner.name().is_none();
        if kit::choice(ui, guest, context.text("practice-guest")).clicked() {
            learner.choose(None);
        }
        for one in known.iter() {
            let on = learner.stem() == Some(&one.stem);
            if kit::choice(ui, on, one.name()).clicked()
                && let Some(language) = learner.choose(Some(&one.stem))
            {
                context.ui_state.language = language;
            }
        }
    });
    if learner.name().is_none() {
        kit::quiet(ui, context.text("practice-guest-note"));
    }
}

fn add_ui(ui: &mut Ui, context: &PanelContext, learner: &mut LearnerRes) {
    ui.add_space(4.0);
    let label = ui.label(context.text("practice-name"));
    ui.horizontal(|ui| {
        let edit = TextEdit::singleline(&mut learner.ui_state.name)
            .char_limit(LONGEST_NAME)
            .min_size([0.0, 30.0].into())
            .vertical_align(bevy_egui::egui::Align::Center)
            .desired_width(ui.available_width() - 110.0);
        let edit = ui.add(edit).labelled_by(label.id);
        let entered = edit.lost_focus() && ui.input(|i| i.key_pressed(Key::Enter));
        let named = learner.ui_state.name.chars().any(char::is_alphanumeric);
        let add = RichText::new(context.text("practice-create"));
        let added = ui.add_enabled(named, bevy_egui::egui::Button::new(add));
        if added.clicked() || entered && named {
            learner.create(context.ui_state.language);
        }
    });
    match learner.place() {
        Some(place) => {
            let args = [("place", Value::from(place))];
            kit::quiet(ui, context.with("practice-folder", &args));
        }
        None => kit::quiet(ui, context.text("practice-browser")),
    }
}

fn delete_ui(ui: &mut Ui, context: &PanelContext, learner: &mut LearnerRes) {
    let Some(name) = learner.name().map(str::to_owned) else {
        return;
    };
    if !learner.ui_state.deleting {
        if kit::wide(ui, context.text("practice-delete")).clicked() {
            learner.ui_state.deleting = true;
        }
        return;
    }
    if kit::wide(ui, context.text("practice-delete-keep")).clicked() {
        learner.ui_state.deleting = false;
    }
    let sure = context.with("practice-delete-sure", &[("name", Value::from(name))]);
    let sure = RichText::new(sure).color(t::BAD);
    if ui
        .add_sized(
            [ui.available_width(), 32.0],
            bevy_egui::egui::Button::new(sure).wrap(),
        )
        .clicked()
    {
        learner.delete();
    }
}
