//! The one thing to work on after a job, with the exercise that trains it.

use super::{PanelContext, kit, practice};
use bevy_egui::egui::Ui;
use detent_content::Value;
use detent_training::practice::{Exercise, coach};

pub(super) fn coach_ui(ui: &mut Ui, context: &mut PanelContext) {
    let Some(score) = context.bench.score() else {
        return;
    };
    let Some(advice) = coach(&context.bench.job().file, score) else {
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
            let points = Value::from(format!("{:.1}", advice.points));
            kit::quiet(ui, context.with("coach-cost", &[("points", points)]));
        }
        let label = match &advice.exercise {
            Exercise::Drill(skill) => {
                let skill = Value::from(practice::skill_name(context, *skill));
                context.with("coach-drill", &[("skill", skill)])
            }
            Exercise::Job(_) => context.text("coach-again"),
        };
        kit::main_button(ui, label, true).clicked()
    });
    if begun {
        context.ui_state.train = Some(advice.exercise);
    }
}
