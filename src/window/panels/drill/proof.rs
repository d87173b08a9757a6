//! Proof: a cause with its rivals and readings, or a repair and what was done around it.

use super::{Look, digit_pressed, option_ui, place_text};
use crate::drill::Question;
use crate::panels::{PanelContext, kit};
use crate::tokens as t;
use bevy_egui::egui::{Label, RichText, Ui};
use detent_content::Value;
use detent_simulation::controller::Board;
use detent_training::practice::drill::proof::{Candidate, GAPS, Marked, ProofTask, ReadingTask};

/// The question of this drill.
type Asked = Question<ProofTask, Option<usize>, Marked>;

pub(super) fn proof_ui(
    ui: &mut Ui,
    context: &mut PanelContext,
    board: Option<&Board>,
    q: &mut Asked,
) {
    if q.marked.is_none() {
        let chosen = digit_pressed(ui, context).filter(|n| *n < q.task.choices());
        q.given = chosen.or(q.given);
    }
    kit::card(ui, |ui| match &q.task {
        ProofTask::Reading(task) => {
            kit::quiet(ui, place_text(context, &task.place));
            let args = [
                ("code", Value::from(format!("{:02}", task.code))),
                ("cause", Value::from(context.texts.mode(&task.cause))),
            ];
            ui.label(RichText::new(context.with("drill-proof-ask-reading", &args)).size(18.0));
            let rivals: Vec<String> = task
                .rivals
                .iter()
                .map(|id| context.texts.mode(id))
                .collect();
            let args = [("rivals", Value::from(rivals.join("; ")))];
            ui.label(context.with("drill-proof-rivals", &args));
        }
        ProofTask::Repair(task) => {
            kit::quiet(ui, place_text(context, &task.place));
            let args = [("cause", Value::from(context.texts.mode(&task.cause)))];
            ui.label(RichText::new(context.with("drill-proof-ask-repair", &args)).size(18.0));
            ui.label(context.text("drill-proof-did"));
            for (n, step) in task.history.iter().enumerate() {
                let step = context.texts.proof_step(step, &context.bench.job().parts);
                ui.add(Label::new(format!("{}.  {step}", n + 1)).wrap());
            }
        }
    });
    ui.add_space(4.0);
    let Question {
        task,
        given,
        marked,
    } = q;
    let should = marked.map(|marked| marked.should);
    let labels: Vec<String> = match &*task {
        ProofTask::Reading(task) => (task.options.iter())
            .map(|option| context.texts.test(&option.probe, board))
            .collect(),
        ProofTask::Repair(_) => GAPS
            .iter()
            .map(|gap| context.texts.proof_gap(*gap))
            .collect(),
    };
    for (n, text) in labels.iter().enumerate() {
        let look = Look::of(n, *given, should);
        let response = option_ui(ui, n + 1, look, text, |ui| {
            if let (ProofTask::Reading(task), Some(_)) = (&*task, should) {
                shown_ui(ui, context, task, &task.options[n]);
            }
        });
        if response.clicked() {
            *given = Some(n);
        }
    }
}

/// What a reading shows with the cause and with each rival.
fn shown_ui(ui: &mut Ui, context: &PanelContext, task: &ReadingTask, candidate: &Candidate) {
    let texts = context.texts;
    let line = |id: &str, shown: String| {
        let args = [
            ("cause", Value::from(texts.mode(id))),
            ("shown", Value::from(shown)),
        ];
        context.with("drill-proof-with", &args)
    };
    let own = texts.proof_shows(&candidate.probe, &candidate.with_cause);
    kit::quiet(ui, line(&task.cause, own));
    for (id, (shown, out)) in task.rivals.iter().zip(&candidate.with_rivals) {
        let text = line(id, texts.proof_shows(&candidate.probe, shown));
        let colour = if *out { t::GOOD } else { t::QUIET };
        ui.label(RichText::new(text).color(colour));
    }
}
