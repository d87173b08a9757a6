//! The report: causes, part, proof, advice.

use super::{PanelContext, kit};
use crate::port::{CauseRow, Job};
use crate::state::Tab;
use crate::tokens as t;
use bevy_egui::egui::{Button, RichText, ScrollArea, Ui, vec2};
use detent_training::bench::{Action, Advice, Verdict};
use std::collections::BTreeSet;
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
    kit::card(ui, |ui| {
        kit::heading(ui, context.text("report-cause"));
        causes_ui(ui, context, &job);
        let heading = kit::heading(ui, context.text("report-part"));
        // What was fitted is what it took, unless the report says otherwise.
        let fitted = context
            .bench
            .view()
            .parts
            .iter()
            .rev()
            .find(|part| part.fitted);
        if let (None, Some(fitted)) = (&context.ui_state.draft.part, fitted) {
            context.ui_state.draft.part = Some(Some(fitted.number.clone()));
        }
        let shown = match &context.ui_state.draft.part {
            None => context.text("report-choose"),
            Some(None) => context.text("report-no-part"),
            Some(Some(number)) => job
                .parts
                .iter()
                .find(|p| p.number == *number)
                .map_or(number.clone(), |p| context.text(&p.name_key)),
        };
        // Nothing was fitted, or one of these.
        let on_sale = || job.parts.iter().filter(|p| p.superseded_by.is_none());
        let parts: Vec<Option<String>> = std::iter::once(None)
            .chain(on_sale().map(|part| Some(part.number.clone())))
            .collect();
        let rows: Vec<String> = std::iter::once(context.text("report-no-part"))
            .chain(
                on_sale().map(|part| format!("{}  {}", part.number, context.text(&part.name_key))),
            )
            .collect();
        let named = context.ui_state.draft.part.as_ref();
        let chosen = named.and_then(|named| parts.iter().position(|part| part == named));
        let width = ui.available_width() - 8.0;
        let (list, taken) = kit::drop_down(ui, "part", width, &shown, (&rows, chosen));
        if let Some(part) = taken.and_then(|taken| parts.get(taken).cloned()) {
            context.ui_state.draft.part = Some(part);
        }
        list.labelled_by(heading.id);
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
                    context.texts.display(r.shown, r.mode),
                    context.pin(r.red),
                    context.pin(r.black)
                )
            })
            .collect();
        if readings.is_empty() {
            kit::quiet(ui, context.text("notebook-empty"));
        }
        ticks(ui, &mut context.ui_state.draft.proof, &readings);
        let looks: Vec<String> = (context.bench.view().log.found().iter())
            .map(|look| {
                let findings = (look.findings.iter())
                    .map(|finding| context.text(&format!("finding-{finding}")));
                let seen = if look.findings.is_empty() {
                    context.text("finding-nothing")
                } else {
                    findings.collect::<Vec<_>>().join(" ")
                };
                format!("{}: {seen}", context.part(look.component))
            })
            .collect();
        ticks(ui, &mut context.ui_state.draft.looks, &looks);
    });
    kit::card(ui, |ui| {
        let heading = kit::heading(ui, context.text("report-advice"));
        let words =
            |context: &PanelContext, advice: Advice| context.text(&format!("advice-{advice}"));
        let now = context.ui_state.draft.advice;
        let rows: Vec<String> = Advice::ALL
            .iter()
            .map(|advice| words(context, *advice))
            .collect();
        let chosen = Advice::ALL.iter().position(|advice| *advice == now);
        let (width, shown) = (ui.available_width() - 8.0, words(context, now));
        let (list, taken) = kit::drop_down(ui, "advice", width, &shown, (&rows, chosen));
        if let Some(advice) = taken.and_then(|taken| Advice::ALL.get(taken)) {
            context.ui_state.draft.advice = *advice;
        }
        list.labelled_by(heading.id);
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

/// A list, numbered from 1, to tick what proves it. `chosen`: places in the list.
fn ticks(ui: &mut Ui, chosen: &mut BTreeSet<usize>, list: &[String]) {
    for (n, text) in list.iter().enumerate() {
        let mut on = chosen.contains(&n);
        let text = RichText::new(format!("{}   {text}", n + 1)).size(t::SMALL);
        if kit::checkbox(ui, &mut on, text).changed() {
            if on {
                chosen.insert(n);
            } else {
                chosen.remove(&n);
            }
        }
    }
}

/// Room for the causes that are chosen: three lines.
const NAMED_HEIGHT: f32 = 66.0;
/// Room for the list of causes, logical pixels.
const CAUSES_HEIGHT: f32 = 250.0;

/// What the report concludes: nothing wrong, given up, or causes by component. What is chosen stands above the list,
/// which a search makes shorter.
fn causes_ui(ui: &mut Ui, context: &mut PanelContext, job: &Job) {
    for (verdict, key) in [
        (Verdict::NothingWrong, "report-nothing-wrong"),
        (Verdict::GivenUp, "report-given-up"),
    ] {
        let on = context.ui_state.draft.verdict == Some(verdict);
        let size = vec2(ui.available_width(), 30.0);
        if kit::choice_sized(ui, on, context.text(key), size).clicked() {
            context.ui_state.draft.conclude(verdict);
        }
    }
    let chosen: Vec<&CauseRow> = (job.causes.iter())
        .filter(|cause| context.ui_state.draft.causes.contains(&cause.id))
        .collect();
    let names: Vec<String> = (chosen.iter())
        .map(|cause| context.text(&cause.name_key()))
        .collect();
    let named = if names.is_empty() {
        context.text("report-no-cause")
    } else {
        names.join("; ")
    };
    kit::reserved(ui, NAMED_HEIGHT, |ui| {
        ui.label(RichText::new(named).color(t::AMBER));
    });
    let label = context.texts.fixed("search");
    kit::search(ui, &label, &mut context.ui_state.cause_search);
    let wanted = context.ui_state.cause_search.trim().to_lowercase();
    let rows: Vec<(String, &CauseRow)> = (job.causes.iter())
        .map(|cause| (context.text(&cause.name_key()), cause))
        .filter(|(name, _)| wanted.is_empty() || name.to_lowercase().contains(&wanted))
        .collect();
    ScrollArea::vertical()
        .id_salt("causes")
        .max_height(CAUSES_HEIGHT)
        .min_scrolled_height(CAUSES_HEIGHT)
        .auto_shrink(false)
        .show(ui, |ui| {
            ui.spacing_mut().item_spacing.y = 2.0;
            ui.spacing_mut().interact_size.y = 24.0;
            ui.spacing_mut().button_padding.y = 2.0;
            if rows.is_empty() {
                kit::quiet(ui, context.fixed("report-none-found"));
            }
            let mut last = None;
            for (name, cause) in rows {
                if last != Some(cause.component) {
                    last = Some(cause.component);
                    kit::quiet(ui, context.part(cause.component));
                }
                let on = context.ui_state.draft.causes.contains(&cause.id);
                let ink = if on { t::ON_AMBER } else { t::TEXT };
                let row = Button::selectable(on, RichText::new(name).color(ink));
                if ui.add(row.wrap()).clicked() {
                    context.ui_state.draft.toggle(&cause.id);
                }
            }
        });
}
