//! The report: causes, part, proof, advice.

use super::meter::reading_text;
use super::{Face, kit};
use crate::state::Tab;
use crate::tokens as t;
use bevy_egui::egui::{ComboBox, RichText, Ui};
use detent_training::bench::{Action, Advice, Report, Verdict};
use std::sync::Arc;

pub(super) fn report_ui(ui: &mut Ui, face: &mut Face) {
    if face.bench.view().finished {
        kit::card(ui, |ui| ui.label(face.text("report-done")));
        if kit::main_button(ui, face.text("report-see-score"), true).clicked() {
            face.desk.tab = Tab::Score;
        }
        return;
    }
    let job = Arc::clone(face.bench.job());
    let choice =
        |on: bool, text: String| RichText::new(text).color(if on { t::ON_AMBER } else { t::TEXT });
    kit::card(ui, |ui| {
        kit::heading(ui, face.text("report-cause"));
        let name = |face: &Face, id: &str| {
            let cause = job.causes.iter().find(|c| c.id == id);
            cause.map_or_else(|| id.to_owned(), |c| face.text(&c.name_key()))
        };
        let shown = match &face.desk.draft.causes {
            None => face.text("report-choose"),
            Some(causes) if causes.is_empty() => face.text("report-nothing-wrong"),
            Some(causes) => {
                let names: Vec<String> = causes.iter().map(|id| name(face, id)).collect();
                names.join("; ")
            }
        };
        ComboBox::from_id_salt("cause")
            .width(ui.available_width() - 8.0)
            .height(430.0)
            .wrap()
            .selected_text(shown)
            .show_ui(ui, |ui| {
                let on = face.desk.draft.causes.as_ref().is_some_and(Vec::is_empty);
                let nothing = choice(on, face.text("report-nothing-wrong"));
                if ui.selectable_label(on, nothing).clicked() {
                    face.desk.draft.causes = Some(Vec::new());
                }
                for cause in &job.causes {
                    let on = (face.desk.draft.causes.as_ref())
                        .is_some_and(|chosen| chosen.contains(&cause.id));
                    let text = choice(on, face.text(&cause.name_key()));
                    if ui.selectable_label(on, text).clicked() {
                        let chosen = face.desk.draft.causes.take().unwrap_or_default();
                        face.desk.draft.causes = toggled(chosen, &cause.id);
                    }
                }
            });
        kit::quiet(ui, face.text("report-cause-again"));
        kit::heading(ui, face.text("report-part"));
        let shown = match &face.desk.draft.part {
            None => face.text("report-choose"),
            Some(None) => face.text("report-no-part"),
            Some(Some(number)) => job
                .parts
                .iter()
                .find(|p| p.number == *number)
                .map_or(number.clone(), |p| face.text(&p.name_key)),
        };
        ComboBox::from_id_salt("part")
            .width(ui.available_width() - 8.0)
            .height(430.0)
            .selected_text(shown)
            .show_ui(ui, |ui| {
                let on = face.desk.draft.part == Some(None);
                if ui
                    .selectable_label(on, choice(on, face.text("report-no-part")))
                    .clicked()
                {
                    face.desk.draft.part = Some(None);
                }
                for part in job.parts.iter().filter(|p| p.superseded_by.is_none()) {
                    let this = Some(Some(part.number.clone()));
                    let on = face.desk.draft.part == this;
                    let text = format!("{}  {}", part.number, face.text(&part.name_key));
                    if ui.selectable_label(on, choice(on, text)).clicked() {
                        face.desk.draft.part = this;
                    }
                }
            });
    });
    kit::card(ui, |ui| {
        kit::heading(ui, face.text("report-proof"));
        kit::quiet(ui, face.text("report-proof-intro"));
        let readings: Vec<String> = face
            .bench
            .view()
            .log
            .readings()
            .iter()
            .map(|r| {
                format!(
                    "{}   {} – {}",
                    reading_text(r),
                    face.pin(r.red),
                    face.pin(r.black)
                )
            })
            .collect();
        if readings.is_empty() {
            kit::quiet(ui, face.text("notebook-empty"));
        }
        for (n, text) in readings.into_iter().enumerate() {
            let mut on = face.desk.draft.proof.contains(&n);
            if ui
                .checkbox(
                    &mut on,
                    RichText::new(format!("{}   {text}", n + 1)).size(t::SMALL),
                )
                .changed()
            {
                if on {
                    face.desk.draft.proof.insert(n);
                } else {
                    face.desk.draft.proof.remove(&n);
                }
            }
        }
    });
    kit::card(ui, |ui| {
        kit::heading(ui, face.text("report-advice"));
        let words = |face: &Face, advice: Advice| face.text(&format!("advice-{advice}"));
        ComboBox::from_id_salt("advice")
            .width(ui.available_width() - 8.0)
            .selected_text(words(face, face.desk.draft.advice))
            .show_ui(ui, |ui| {
                for advice in Advice::ALL {
                    let on = face.desk.draft.advice == *advice;
                    let text = choice(on, words(face, *advice));
                    if ui.selectable_label(on, text).clicked() {
                        face.desk.draft.advice = *advice;
                    }
                }
            });
    });
    let draft = &face.desk.draft;
    let ready = draft.causes.is_some() && draft.part.is_some();
    if kit::main_button(ui, face.text("report-hand-in"), ready).clicked()
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
        face.act(Action::Report(report));
        face.desk.tab = Tab::Score;
    }
    if !ready {
        kit::quiet(ui, face.text("report-not-ready"));
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
