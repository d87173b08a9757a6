//! What comes after a job: the one thing to work on, with the drill that trains it, the same job again, or the next.

use super::{PanelContext, kit, practice};
use crate::state::Onward;
use bevy_egui::egui::Ui;
use detent_content::Value;
use detent_training::practice::{Exercise, coach};

pub(super) fn coach_ui(ui: &mut Ui, context: &mut PanelContext) {
    let Some(score) = context.bench.score() else {
        return;
    };
    let Some(advice) = coach(score) else {
        return;
    };
    let (side, place) = advice.loss;
    let Some(lost) = (score.dimensions.iter())
        .find(|of| of.dimension == side)
        .and_then(|of| of.lost.get(place))
    else {
        return;
    };
    let begun = kit::card(ui, |ui| {
        kit::heading(ui, context.text("coach"));
        ui.label(context.texts.loss(&lost.loss));
        if advice.points > 0.05 {
            let points = Value::from((10.0 * advice.points).round() / 10.0);
            kit::quiet(ui, context.with("coach-cost", &[("points", points)]));
        }
        let label = match &advice.exercise {
            Exercise::Drill(skill) => {
                let skill = Value::from(practice::skill_name(context, *skill));
                context.with("coach-drill", &[("skill", skill)])
            }
            // The button for that stands below.
            Exercise::Job(_) => return false,
        };
        kit::main_button(ui, label, true).clicked()
    });
    if begun {
        context.ui_state.onward = Some(Onward::Exercise(advice.exercise));
    }
}

/// On from a finished job: once more, or to the next.
pub(super) fn onward_ui(ui: &mut Ui, context: &mut PanelContext) {
    let job = context.bench.job();
    let (again, next) = kit::card(ui, |ui| {
        (
            !job.is_variant && kit::go(ui, context.fixed("coach-again")).clicked(),
            kit::go(ui, context.fixed("coach-next-job")).clicked(),
        )
    });
    if again {
        let file = context.bench.job().file.clone();
        context.ui_state.onward = Some(Onward::Exercise(Exercise::Job(file)));
    } else if next {
        context.ui_state.onward = Some(Onward::NextJob);
    }
}
