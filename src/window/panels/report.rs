//! The report: causes, part, proof, advice.

use super::meter::reading_text;
use super::{PanelContext, kit};
use crate::state::Tab;
use crate::tokens as t;
use bevy_egui::egui::{ComboBox, RichText, Ui};
use detent_training::bench::{Action, Advice, Verdict};
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
        let draft = &context.ui_state.draft;
        let shown = match draft.verdict {
            None => context.text("report-choose"),
            Some(Verdict::NothingWrong) => context.text("report-nothing-wrong"),
            Some(Verdict::GivenUp) => context.text("report-given-up"),
            Some(Verdict::CausesNamed) => {
                let names: Vec<String> = draft.causes.iter().map(|id| name(context, id)).collect();
                names.join("; ")
            }
        };
        ComboBox::from_id_salt("cause")
            .width(ui.available_width() - 8.0)
            .height(430.0)
            .wrap()
            .selected_text(shown)
            .show_ui(ui, |ui| {
                for (verdict, key) in [
                    (Verdict::NothingWrong, "report-nothing-wrong"),
                    (Verdict::GivenUp, "report-given-up"),
                ] {
                    let on = context.ui_state.draft.verdict == Some(verdict);
                    let text = choice(on, context.text(key));
                    if ui.selectable_label(on, text).clicked() {
                        context.ui_state.draft.conclude(verdict);
                    }
                }
                for cause in &job.causes {
                    let on = context.ui_state.draft.causes.contains(&cause.id);
                    let text = choice(on, context.text(&cause.name_key()));
                    if ui.selectable_label(on, text).clicked() {
                        context.ui_state.draft.toggle(&cause.id);
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
    let report = context.ui_state.draft.report();
    let ready = report.is_some();
    if kit::main_button(ui, context.text("report-hand-in"), ready).clicked()
        && let Some(report) = report
    {
        context.act(Action::Report(report));
        context.ui_state.tab = Tab::Score;
    }
    if !ready {
        kit::quiet(ui, context.text("report-not-ready"));
    }
}
