//! The learners that are kept here, side by side.

use super::{PanelContext, kit};
use crate::tokens as t;
use bevy_egui::egui::{RichText, Ui};
use detent_content::{ListedLearner, Value, day};
use detent_training::practice::{Moment, Skill};

/// Draws a line for each: skills mastered, reviews due at `now`, and the day of the last answer on clocks that are so many
/// seconds ahead of UTC.
pub(super) fn learners_ui(
    ui: &mut Ui,
    context: &PanelContext,
    learners: &[ListedLearner],
    now: Moment,
    ahead_s: i64,
) {
    kit::heading(ui, context.text("practice-learners"));
    for one in learners {
        let name = ("name", Value::from(one.name()));
        let Ok(learner) = &one.read else {
            let damaged = context.with("practice-learner-damaged", &[name]);
            ui.label(RichText::new(damaged).color(t::BAD));
            continue;
        };
        let summary = &learner.summary;
        let told = match summary.last {
            Some(last) => {
                let args = [
                    name,
                    ("mastered", Value::from(summary.mastered.len())),
                    ("skills", Value::from(Skill::ALL.len())),
                    ("due", Value::from(summary.due(now).len())),
                    ("day", Value::from(day(last, ahead_s))),
                ];
                context.with("practice-learner-row", &args)
            }
            None => context.with("practice-learner-new", &[name]),
        };
        ui.label(told);
    }
}
