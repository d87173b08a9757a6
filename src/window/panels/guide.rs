//! The guide through a job: the step to do next, how it is done, and what to use for it.

use super::{PanelContext, kit};
use crate::state::say;
use crate::tokens as t;
use bevy_egui::egui::{RichText, Ui};
use detent_content::Value;
use detent_training::bench::script::ScriptStep;
use std::sync::Arc;

/// The longest piece of machine time that is shown in one frame, s.
const PIECE_S: u64 = 10;

/// Draws the guide, if this job has one and it is wanted, and marks what its step needs.
pub(super) fn guide_ui(ui: &mut Ui, context: &mut PanelContext) {
    let job = Arc::clone(context.bench.job());
    let Some(guide) = &job.guide else {
        kit::mark(ui.ctx(), None);
        return;
    };
    if !context.ui_state.guided {
        kit::mark(ui.ctx(), None);
        if kit::wide(ui, context.fixed("guide-open")).clicked() {
            context.ui_state.guided = true;
        }
        ui.add_space(4.0);
        return;
    }
    show_on(ui, context);
    let done = context.bench.steps_done(guide);
    let step = guide.steps.get(done);
    let labels = step.map(|step| step.mark.iter().map(|key| context.text(key)).collect());
    kit::mark(ui.ctx(), labels);
    kit::card(ui, |ui| {
        let Some(step) = step else {
            kit::heading(ui, context.fixed("guide-done"));
            return;
        };
        let args = [
            ("step", Value::from(done as u64 + 1)),
            ("steps", Value::from(guide.steps.len() as u64)),
        ];
        kit::heading(ui, context.with("guide-step", &args));
        let text = say(context.ui_state.language, &step.say);
        ui.label(RichText::new(text).color(t::TEXT));
        ui.horizontal_wrapped(|ui| {
            let idle = context.ui_state.showing.is_empty() && context.bench.is_free();
            let show = bevy_egui::egui::Button::new(context.fixed("guide-show"));
            if ui.add_enabled(idle, show).clicked() {
                context.ui_state.showing = step.shown.iter().cloned().collect();
            }
            if ui.button(context.fixed("guide-hide")).clicked() {
                context.ui_state.guided = false;
            }
        });
    });
}

/// What is shown is done line by line, one in a frame, and what takes long in pieces.
fn show_on(ui: &Ui, context: &mut PanelContext) {
    let Some(line) = context.ui_state.showing.pop_front() else {
        return;
    };
    ui.ctx().request_repaint();
    let (now, later) = match line {
        ScriptStep::Wait { s } if s > PIECE_S => {
            let rest = ScriptStep::Wait { s: s - PIECE_S };
            (ScriptStep::Wait { s: PIECE_S }, Some(rest))
        }
        ScriptStep::Until { what, limit_s } if limit_s > PIECE_S => {
            let until = |limit_s| ScriptStep::Until { what, limit_s };
            (until(PIECE_S), Some(until(limit_s - PIECE_S)))
        }
        short => (short, None),
    };
    let waits = matches!(now, ScriptStep::Until { .. });
    match (context.bench.run(&now), later) {
        // What was waited for has come.
        (Ok(()), Some(_)) if waits => {}
        (Ok(()), None) => {}
        (_, Some(rest)) => context.ui_state.showing.push_front(rest),
        (Err(problem), None) => {
            context.ui_state.showing.clear();
            context.ui_state.message = Some((problem, ui.input(|i| i.time) as f32));
        }
    }
}
