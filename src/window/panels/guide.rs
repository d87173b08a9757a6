//! The guide through a job: the step to do next, how it is done, and what to use for it.

use super::top::{clock_label, view_label};
use super::{PanelContext, kit, tab_key};
use crate::state::{Guidance, Onward, ViewKind, say};
use crate::tokens as t;
use bevy_egui::egui::{Id, RichText, TextStyle, Ui};
use detent_content::{Language, Value};
use detent_training::bench::script::ScriptStep;
use detent_training::lesson::{Bilingual, Goal, Guide, WindowGoal, WindowState};
use detent_training::practice::Exercise;
use std::sync::Arc;

/// The longest piece of machine time that is shown in one frame, s.
const PIECE_S: u64 = 10;

/// Draws the guide, if this job has one and it is wanted, and marks what its step needs.
pub(super) fn guide_ui(ui: &mut Ui, context: &mut PanelContext) {
    let job = Arc::clone(context.bench.job());
    let guide = (job.guide.as_ref()).filter(|_| !context.ui_state.is_under_examination());
    let Some(guide) = guide else {
        kit::mark_nothing(ui.ctx());
        return;
    };
    let guidance = context.ui_state.guidance;
    if guidance == Guidance::Nothing {
        kit::mark_nothing(ui.ctx());
        if !context.bench.view().finished && kit::go(ui, context.fixed("guide-open")).clicked() {
            context.ui_state.guidance = Guidance::EveryStep;
        }
        ui.add_space(4.0);
        return;
    }
    show_on(ui, context);
    let window = WindowState {
        view: context.ui_state.view.of_guide(),
        tab: context.ui_state.tab,
        clock_speed: context.ui_state.speed,
    };
    let place = context.bench.guide_place(guide, window);
    let Some(step) = guide.steps.get(place.steps_done) else {
        kit::mark_nothing(ui.ctx());
        done_ui(ui, context, guidance);
        return;
    };
    let astray = place.astray.and_then(|n| step.astray.get(n));
    let told = guidance.tells(place.steps_done) || context.ui_state.told == Some(place.steps_done);
    if told {
        let keys = step.mark.iter().map(|key| context.text(key));
        let control = match &step.goal {
            Goal::Window(goal) => Some(window_label(context, *goal)),
            Goal::Bench(_) => None,
        };
        let begun = (context.ui_state.visit, place.steps_done);
        kit::mark(ui.ctx(), begun, keys.chain(control).collect());
    } else {
        kit::mark_nothing(ui.ctx());
    }
    kit::card(ui, |ui| {
        let args = [
            ("step", Value::from(place.steps_done as u64 + 1)),
            ("steps", Value::from(guide.steps.len() as u64)),
        ];
        kit::heading(ui, context.with("guide-step", &args));
        // Above the text: however long it is, the buttons stay under the pointer.
        ui.horizontal_wrapped(|ui| {
            if !told {
                if ui.button(context.fixed("guide-tell")).clicked() {
                    context.ui_state.told = Some(place.steps_done);
                }
            } else {
                let idle = context.ui_state.showing.is_empty() && context.bench.is_free();
                let show = bevy_egui::egui::Button::new(context.fixed("guide-show"));
                if ui.add_enabled(idle, show).clicked() {
                    let back = astray.into_iter().flat_map(|way| &way.shown);
                    context.ui_state.showing = back.chain(&step.shown).cloned().collect();
                    if let Goal::Window(goal) = &step.goal {
                        show_in_window(context, *goal);
                    }
                }
            }
            if ui.button(context.fixed("guide-hide")).clicked() {
                context.ui_state.guidance = Guidance::Nothing;
            }
        });
        // A press that the machine answers with the next step is not followed by one on a neighbor.
        let room = tallest_step(ui, context, guide);
        kit::reserved(ui, room, |ui| {
            if told {
                let text = say(context.ui_state.language, &step.say);
                ui.label(RichText::new(text).color(t::TEXT));
            } else {
                ui.label(RichText::new(context.fixed("guide-your-turn")).color(t::TEXT));
            }
            if let Some(astray) = astray {
                let text = say(context.ui_state.language, &astray.say);
                ui.label(RichText::new(text).color(t::BAD));
            }
        });
    });
}

/// Room for the longest step of a guide, points; a way back, which is seldom told, may move what stands below. It is
/// laid out anew only when its lines could break elsewhere.
fn tallest_step(ui: &Ui, context: &PanelContext, guide: &Guide) -> f32 {
    let width = ui.available_width();
    let language = context.ui_state.language;
    let asked = (context.ui_state.visit, width.to_bits(), language);
    let id = Id::new("guide-room");
    let known = ui.data(|data| data.get_temp::<((u32, u32, Language), f32)>(id));
    if let Some((_, room)) = known.filter(|(of, _)| *of == asked) {
        return room;
    }
    let font = TextStyle::Body.resolve(ui.style());
    let height = |sentence: &Bilingual| {
        let text = say(language, sentence).to_owned();
        let galley = ui.fonts_mut(|fonts| fonts.layout(text, font.clone(), t::TEXT, width));
        galley.size().y
    };
    let steps = guide.steps.iter().map(|step| height(&step.say));
    let room = steps.fold(0.0, f32::max);
    ui.data_mut(|data| data.insert_temp(id, (asked, room)));
    room
}

/// The label of the window's own control that leads to a goal.
fn window_label(context: &PanelContext, goal: WindowGoal) -> String {
    match goal {
        WindowGoal::Looked(view) => view_label(context, ViewKind::named_by_guide(view)),
        WindowGoal::Opened(tab) => context.text(tab_key(tab)),
        WindowGoal::ClockAt(speed) => clock_label(speed),
    }
}

/// Does what a goal of the window asks.
fn show_in_window(context: &mut PanelContext, goal: WindowGoal) {
    match goal {
        WindowGoal::Looked(view) => context.ui_state.view = ViewKind::named_by_guide(view),
        WindowGoal::Opened(tab) => context.ui_state.tab = tab,
        WindowGoal::ClockAt(speed) => context.ui_state.speed = speed,
    }
}

/// The guide is at its end: the same job once more, with less of it.
fn done_ui(ui: &mut Ui, context: &mut PanelContext, guidance: Guidance) {
    let Some(next) = guidance.next() else {
        return;
    };
    let again = kit::card(ui, |ui| {
        kit::heading(ui, context.fixed("guide-done"));
        let label = match next {
            Guidance::EveryStep | Guidance::EveryOther => "guide-again-half",
            Guidance::Nothing => "guide-again-alone",
        };
        kit::main_button(ui, context.text(label), true).clicked()
    });
    if again {
        context.ui_state.guidance = next;
        let file = context.bench.job().file.clone();
        context.ui_state.onward = Some(Onward::Exercise(Exercise::Job(file)));
    }
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
