//! The report: causes, part, proof, advice.

use super::meter::reading_text;
use super::{PanelContext, kit};
use crate::state::Tab;
use crate::tokens as t;
use bevy_egui::egui::{ComboBox, RichText, Ui};
use detent_training::bench::{Action, Advice, Report, Verdict};
use std::sync::Arc;

pub(super) fn report_ui(ui: &mut Ui, context: &mut PanelContext) {
    if context.bench.view().finished {
        kit::card(ui, |ui| ui.label(context.text("report-done")));
        if kit::main_button(ui, context.text("report-see-score"), true).clicked() {
            context.ui_state.tab = Tab::Score;
        }
        return;
    }
    let job = Arc::clone(context.bench.job());
    let choice =
        |on: bool, text: String| RichText::new(text).color(if on { t::ON_AMBER } else { t::TEXT });
    kit::card(ui, |ui| {
        kit::heading(ui, context.text("report-cause"));
        let name = |context: &PanelContext, id: &str| {
            let cause = job.causes.iter().find(|c| c.id == id);
            cause.map_or_else(|| id.to_owned(), |c| context.text(&c.name_key()))
        };
        let shown = match &context.ui_state.draft.causes {
            None => context.text("report-choose"),
            Some(causes) if causes.is_empty() => context.text("report-nothing-wrong"),
            Some(causes) => {
                let names: Vec<String> = causes.iter().map(|id| name(context, id)).collect();
                names.join("; ")
            }
        };
        ComboBox::from_id_salt("cause")
            .width(ui.available_width() - 8.0)
            .height(430.0)
            .wrap()
            .selected_text(shown)
            .show_ui(ui, |ui| {
                let on = context
                    .ui_state
                    .draft
                    .causes
                    .as_ref()
                    .is_some_and(Vec::is_empty);
                let nothing = choice(on, context.text("report-nothing-wrong"));
                if ui.selectable_label(on, nothing).clicked() {
                    context.ui_state.draft.causes = Some(Vec::new());
                }
                for cause in &job.causes {
                    let on = (context.ui_state.draft.causes.as_ref())
                        .is_some_and(|chosen| chosen.contains(&cause.id));
                    let text = choice(on, context.text(&cause.name_key()));
                    if ui.selectable_label(on, text).clicked() {
                        let chosen = context.ui_state.draft.causes.take().unwrap_or_default();
                        context.ui_state.draft.causes = toggled(chosen, &cause.id);
                    }
                }
            });
        kit::quiet(ui, context.text("report-cause-again"));
        kit::heading(ui, context.text("report-part"));
        let shown = match &context.ui_state.draft.part {
            None => context.text("report-choose"),
            Some(None) => context.text("report-no-part"),
            Some(Some(number)) => job
                .parts
                .iter()
                .find(|p| p.number == *number)
                .map_or(number.clone(), |p| context.text(&p.name_key)),
        };
        ComboBox::from_id_salt("part")
            .width(ui.available_width() - 8.0)
            .height(430.0)
            .selected_text(shown)
            .show_ui(ui, |ui| {
                let on = context.ui_state.draft.part == Some(None);
                if ui
                    .selectable_label(on, choice(on, context.text("report-no-part")))
                    .clicked()
                {
                    context.ui_state.draft.part = Some(None);
                }
                for part in job.parts.iter().filter(|p| p.superseded_by.is_none()) {
                    let this = Some(Some(part.number.clone()));
                    let on = context.ui_state.draft.part == this;
                    let text = format!("{}  {}", part.number, context.text(&part.name_key));
                    if ui.selectable_label(on, choice(on, text)).clicked() {
                        context.ui_state.draft.part = this;
                    }
                }
            });
    });
    kit::card(ui, |ui| {
        kit::heading(ui, context.text("report-proof"));
        kit::quiet(ui, context.text("report-proof-intro"));
        let readings: Vec<String> = context
            .bench
            .view()
            .log
            .readings()
            .iter()
            .map(|r| {
                format!(
                    "{}   {} – {}",
                    reading_text(r),
                    context.pin(r.red),
                    context.pin(r.black)
                )
            })
            .collect();
        if readings.is_empty() {
            kit::quiet(ui, context.text("notebook-empty"));
        }
        for (n, text) in readings.into_iter().enumerate() {
            let mut on = context.ui_state.draft.proof.contains(&n);
            if ui
                .checkbox(
                    &mut on,
                    RichText::new(format!("{}   {text}", n + 1)).size(t::SMALL),
                )
                .changed()
            {
                if on {
                    context.ui_state.draft.proof.insert(n);
                } else {
                    context.ui_state.draft.proof.remove(&n);
                }
            }
        }
    });
    kit::card(ui, |ui| {
        kit::heading(ui, context.text("report-advice"));
        let words =
            |context: &PanelContext, advice: Advice| context.text(&format!("advice-{advice}"));
        ComboBox::from_id_salt("advice")
            .width(ui.available_width() - 8.0)
            .selected_text(words(context, context.ui_state.draft.advice))
            .show_ui(ui, |ui| {
                for advice in Advice::ALL {
                    let on = context.ui_state.draft.advice == *advice;
                    let text = choice(on, words(context, *advice));
                    if ui.selectable_label(on, text).clicked() {
                        context.ui_state.draft.advice = *advice;
                    }
                }
            });
    });
    let draft = &context.ui_state.draft;
    let ready = draft.causes.is_some() && draft.part.is_some();
    if kit::main_button(ui, context.text("report-hand-in"), ready).clicked()
        && let (Some(causes), Some(part)) = (&draft.causes, &draft.part)
    {
        let verdict = if causes.is_empty() {
            Verdict::NothingWrong
        } else {
            Verdict::CausesNamed
        };
        let report = Report {
            causes: causes.clone(),
            part: part.clone(),
            proof: draft.proof.iter().copied().collect(),
            advice: draft.advice,
            verdict,
        };
        context.act(Action::Report(report));
        context.ui_state.tab = Tab::Score;
    }
    if !ready {
        kit::quiet(ui, context.text("report-not-ready"));
    }
}

/// The causes with this one added, or taken away if it was among them; with none left, not chosen yet.
fn toggled(mut causes: Vec<String>, id: &str) -> Option<Vec<String>> {
    let before = causes.len();
    causes.retain(|cause| cause != id);
    if causes.len() == before {
        causes.push(id.to_owned());
    }
    (!causes.is_empty()).then_some(causes)
}
