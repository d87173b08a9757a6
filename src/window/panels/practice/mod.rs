//! What was practised, how well, and what comes next.

mod charts;
mod learners;
mod next;
mod progress;
#[cfg(test)]
mod tests;
mod who;

use super::{PanelContext, kit};
use crate::port::JobSource;
use crate::practice::{DrillRes, LearnerRes, now};
use crate::state::Screen;
use crate::tokens as t;
use bevy_egui::egui::{
    self, Align, CornerRadius, Frame, Layout, Margin, RichText, ScrollArea, Ui, UiBuilder, vec2,
};
use detent_content::{ProfileError, Value};
use detent_training::practice::{Exercise, Skill};

/// Narrower than this, everything stands in one column.
const NARROW: f32 = 1000.0;

/// Narrower than this, the head takes more than one line.
const SLIM: f32 = 640.0;

/// A skill's name.
pub(super) fn skill_name(context: &PanelContext, skill: Skill) -> String {
    context.text(&format!("skill-{skill}"))
}

/// Per cent of a share.
fn per_cent(share: f64) -> Value<'static> {
    Value::from((100.0 * share).round())
}

/// Where to go from here, if anywhere.
pub(super) fn practice_ui(
    ui: &mut Ui,
    context: &mut PanelContext,
    learner: &mut LearnerRes,
    drill: &mut DrillRes,
    jobs: &dyn JobSource,
) -> Option<Screen> {
    learner.speak(context.ui_state.language);
    let all = ui.max_rect();
    ui.painter().rect_filled(all, CornerRadius::ZERO, t::PANEL);
    let place = all.shrink2(vec2(16.0, 10.0));
    let mut to = None;
    ui.scope_builder(UiBuilder::new().max_rect(place), |ui| {
        if top_ui(ui, context, learner) {
            to = Some(Screen::Start);
        }
        ui.add_space(2.0);
        if learner.ui_state.progress {
            progress::progress_ui(ui, context, learner, jobs);
        } else if let Some(chosen) = practise_ui(ui, context, learner, drill, jobs) {
            to = Some(chosen);
        }
    });
    to
}

/// Title, tabs and the way back; whether it was taken.
fn top_ui(ui: &mut Ui, context: &PanelContext, learner: &mut LearnerRes) -> bool {
    let mut back = false;
    let slim = ui.available_width() < SLIM;
    let head = |ui: &mut Ui| {
        let title = RichText::new(context.text("practice-title"));
        ui.label(title.size(28.0).color(t::AMBER));
        ui.add_space(10.0);
        for (progress, key) in [
            (false, "practice-tab-practice"),
            (true, "practice-tab-progress"),
        ] {
            let on = learner.ui_state.progress == progress;
            if kit::tab(ui, on, context.text(key), vec2(120.0, 34.0)).clicked() {
                learner.ui_state.progress = progress;
            }
        }
        let name = learner.name().map(str::to_owned);
        let name = name.unwrap_or_else(|| context.text("practice-guest"));
        let name = egui::Label::new(RichText::new(name).size(18.0)).truncate();
        let go_back =
            |ui: &mut Ui| kit::go_sized(ui, context.text("practice-back"), egui::Vec2::ZERO);
        if slim {
            back = go_back(ui).clicked();
            ui.add(name);
        } else {
            ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
                back = go_back(ui).clicked();
                ui.add(name);
            });
        }
    };
    match slim {
        true => ui.horizontal_wrapped(head),
        false => ui.horizontal(head),
    };
    if context.ui_state.opening.is_some() {
        kit::quiet(ui, context.fixed("start-opening"));
        ui.disable();
    }
    trouble_ui(ui, context, learner);
    back
}

/// Who practises on the left, what on the right; one above the other where there is little room.
fn practise_ui(
    ui: &mut Ui,
    context: &mut PanelContext,
    learner: &mut LearnerRes,
    drill: &mut DrillRes,
    jobs: &dyn JobSource,
) -> Option<Screen> {
    let mut to = None;
    let scroll = || ScrollArea::vertical().auto_shrink(false);
    if ui.available_width() < NARROW {
        scroll().id_salt("practise").show(ui, |ui| {
            who::who_ui(ui, context, learner);
            to = next::next_ui(ui, context, learner, drill, jobs);
            kit::scroll_by_keys(ui, true);
        });
        return to;
    }
    let rest = ui.available_rect_before_wrap();
    let (mut left, mut right) = (rest, rest);
    left.set_width(400.0);
    right.min.x = left.right() + 14.0;
    ui.scope_builder(UiBuilder::new().max_rect(left), |ui| {
        scroll().id_salt("who").show(ui, |ui| {
            who::who_ui(ui, context, learner);
            kit::scroll_by_keys(ui, false);
        });
    });
    ui.scope_builder(UiBuilder::new().max_rect(right), |ui| {
        scroll().id_salt("next").show(ui, |ui| {
            to = next::next_ui(ui, context, learner, drill, jobs);
            kit::scroll_by_keys(ui, true);
        });
    });
    to
}

/// Begins an exercise; where that is, unless the bench comes by itself.
pub(super) fn begin(
    context: &mut PanelContext,
    drill: &mut DrillRes,
    jobs: &dyn JobSource,
    exercise: &Exercise,
) -> Option<Screen> {
    match exercise {
        Exercise::Drill(skill) => Some(begin_drill(drill, *skill)),
        Exercise::Job(file) => begin_job(context, jobs, file),
    }
}

fn begin_drill(drill: &mut DrillRes, skill: Skill) -> Screen {
    // Every drill draws its own questions: the seed is the second at which it begins.
    drill.begin(skill, now().0.unsigned_abs());
    Screen::Drill
}

/// Begins a job; where that is, if it could not be begun: the bench comes by itself.
fn begin_job(context: &mut PanelContext, jobs: &dyn JobSource, file: &str) -> Option<Screen> {
    let offers = jobs.offers().iter();
    let Some((n, offer)) = offers.enumerate().find(|(_, o)| o.course.file == *file) else {
        // The start screen shows it.
        context.ui_state.message = Some((context.text("practice-job-gone"), 0.0));
        return Some(Screen::Start);
    };
    context.ui_state.offer = n;
    context.ui_state.seed = offer.seed.to_string();
    context.ui_state.open(jobs.open(n, offer.seed));
    None
}

/// Why the learner is not read or not kept, in words.
fn trouble_text(context: &PanelContext, storage_error: &ProfileError) -> String {
    let (key, detail) = match storage_error {
        ProfileError::Content(error) => ("learner-damaged", context.texts.content_error(error)),
        ProfileError::Refused { file, reason } => {
            let reason = context.texts.system_reason(reason);
            ("learner-refused", format!("{file}: {reason}"))
        }
        ProfileError::Changed(file) => ("learner-changed", file.clone()),
        ProfileError::NoName => ("learner-no-name", String::new()),
        ProfileError::Taken(name) => ("learner-taken", name.clone()),
    };
    context.with(key, &[("detail", Value::from(detail))])
}

/// A band that says so, if something is wrong.
pub(super) fn trouble_ui(ui: &mut Ui, context: &PanelContext, learner: &LearnerRes) {
    let Some(storage_error) = &learner.storage_error else {
        return;
    };
    let frame = Frame::new()
        .fill(t::CAUTION.0)
        .inner_margin(Margin::symmetric(12, 4));
    frame.show(ui, |ui| {
        ui.set_width(ui.available_width());
        let text = RichText::new(trouble_text(context, storage_error)).color(t::CAUTION.1);
        ui.add(egui::Label::new(text).wrap());
    });
}
