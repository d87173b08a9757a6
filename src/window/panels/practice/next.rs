//! What to practise: the suggestion with its reason, and every drill.

use super::{PanelContext, begin, begin_drill, kit, per_cent, skill_name};
use crate::port::JobSource;
use crate::practice::{DrillRes, LearnerRes, now};
use crate::state::{Screen, say};
use crate::tokens as t;
use bevy_egui::egui::{self, Align, CornerRadius, Layout, Rect, RichText, Ui, pos2, vec2};
use detent_content::Value;
use detent_training::practice::{CourseJob, Exercise, Moment, Standing, choose};

/// Where to go from here, if anywhere.
pub(super) fn next_ui(
    ui: &mut Ui,
    context: &mut PanelContext,
    learner: &LearnerRes,
    drill: &mut DrillRes,
    jobs: &dyn JobSource,
) -> Option<Screen> {
    let now = now();
    let mut to = None;
    kit::card(ui, |ui| {
        let course: Vec<CourseJob> = jobs.offers().iter().map(|o| o.course.clone()).collect();
        let choice = choose(learner.learner(), &course, learner.target(), now);
        let name = match &choice.exercise {
            Exercise::Drill(skill) => skill_name(context, *skill),
            Exercise::Job(file) => {
                let offer = jobs.offers().iter().find(|o| o.course.file == *file);
                offer.map_or_else(
                    || file.clone(),
                    |offer| say(context.ui_state.language, &offer.title).to_owned(),
                )
            }
        };
        kit::heading(ui, context.text("practice-next"));
        ui.label(RichText::new(&name).size(24.0));
        let args = [
            ("exercise", Value::from(name.as_str())),
            ("expected", per_cent(choice.expected)),
            ("target", per_cent(learner.target().share())),
        ];
        ui.label(context.with(choice.why.key(), &args));
        if kit::main_button(ui, context.text("practice-begin"), true).clicked() {
            to = begin(context, drill, jobs, &choice.exercise);
        }
    });
    kit::card(ui, |ui| {
        kit::heading(ui, context.text("practice-all"));
        kit::quiet(ui, context.text("practice-rates-unfitted"));
        for standing in learner.learner().standings() {
            if drill_ui(ui, context, standing, now) {
                to = Some(begin_drill(drill, standing.skill()));
            }
        }
    });
    to
}

/// Narrower than this, how a drill stands is told below its name.
const SLIM_ROW: f32 = 480.0;

/// One drill: its name, how it stands, and whether it is begun.
fn drill_ui(ui: &mut Ui, context: &PanelContext, standing: &Standing, now: Moment) -> bool {
    let mut begun = false;
    ui.horizontal(|ui| {
        let slim = ui.available_width() < SLIM_ROW;
        ui.set_height(if slim { 66.0 } else { 46.0 });
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
            let name = skill_name(context, standing.skill());
            let button = kit::go_sized(ui, context.text("practice-begin"), vec2(110.0, 36.0));
            // Eight buttons say the same; each is of its drill.
            button.widget_info(|| {
                let label = format!("{}: {name}", context.text("practice-begin"));
                egui::WidgetInfo::labeled(egui::WidgetType::Button, true, label)
            });
            begun = button.clicked();
            ui.with_layout(Layout::top_down(Align::Min), |ui| {
                ui.spacing_mut().item_spacing.y = 2.0;
                let (words, colour) = state(context, standing, now);
                let words = RichText::new(words).size(t::SMALL).color(colour);
                if slim {
                    ui.label(name);
                    ui.label(words);
                } else {
                    ui.horizontal(|ui| {
                        ui.label(name);
                        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
                            ui.label(words);
                        });
                    });
                }
                let practised = standing.answers > 0;
                bar(ui, if practised { standing.known(now) } else { 0.0 });
            });
        });
    });
    begun
}

/// How a skill stands, in words.
fn state(context: &PanelContext, standing: &Standing, now: Moment) -> (String, egui::Color32) {
    let known = context.with(
        "practice-known",
        &[("known", per_cent(standing.known(now)))],
    );
    if standing.answers == 0 {
        (context.text("practice-new"), t::QUIET)
    } else if standing.due(now) {
        (
            format!("{known} · {}", context.text("practice-due")),
            t::SKY,
        )
    } else if standing.mastered() {
        (
            format!("{known} · {}", context.text("practice-mastered")),
            t::GOOD,
        )
    } else {
        (known, t::TEXT)
    }
}

/// A share as a bar.
fn bar(ui: &mut Ui, share: f64) {
    let (rect, painter) = kit::canvas(ui, 12.0);
    let rect = rect.shrink2(vec2(0.0, 1.0));
    painter.rect_filled(rect, CornerRadius::same(5), t::INK);
    let end = rect.left() + rect.width() * share.clamp(0.0, 1.0) as f32;
    let full = Rect::from_min_max(rect.min, pos2(end, rect.bottom()));
    painter.rect_filled(full, CornerRadius::same(5), t::AMBER);
}
