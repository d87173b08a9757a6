//! What comes after a job: the one thing to work on, with the drill or job that trains it, the same job again, or the
//! next.

use super::{PanelContext, kit, practice};
use crate::state::{Onward, say};
use bevy_egui::egui::Ui;
use detent_content::Value;
use detent_training::practice::Exercise;

pub(super) fn coach_ui(ui: &mut Ui, context: &mut PanelContext) {
    let Some(score) = context.bench.score() else {
        return;
    };
    let Some(coached) = &context.ui_state.coached else {
        return;
    };
    let advice = &coached.advice;
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
            Exercise::Job(file) => {
                let title = coached.title.as_ref();
                let title = title.map_or(file.as_str(), |t| say(context.ui_state.language, t));
                context.with("coach-job", &[("title", Value::from(title))])
            }
        };
        kit::main_button(ui, label, true).clicked()
    });
    if begun {
        context.ui_state.onward = Some(Onward::Exercise(advice.exercise.clone()));
    }
}

/// On from a finished job: once more, or to the next.
pub(super) fn onward_ui(ui: &mut Ui, context: &mut PanelContext) {
    let job = context.bench.job();
    let is_kept = context.bench.kept_as().is_some();
    let (again, next, watch) = kit::card(ui, |ui| {
        (
            !job.is_variant && kit::go(ui, context.fixed("coach-again")).clicked(),
            kit::go(ui, context.fixed("coach-next-job")).clicked(),
            is_kept && kit::go(ui, context.fixed("film-again")).clicked(),
        )
    });
    if again {
        let file = context.bench.job().file.clone();
        context.ui_state.onward = Some(Onward::Exercise(Exercise::Job(file)));
    } else if next {
        context.ui_state.onward = Some(Onward::NextJob);
    } else if watch {
        context.ui_state.onward = Some(Onward::WatchAgain);
    }
}
