//! The report: cause, part, proof.

use super::meter::reading_text;
use super::{Face, kit};
use crate::app::state::Tab;
use crate::app::tokens as t;
use crate::bench::{Action, Report};
use bevy_egui::egui::{ComboBox, RichText, Ui};

pub(super) fn report_ui(ui: &mut Ui, face: &mut Face) {
    if face.bench.view().finished {
        kit::card(ui, |ui| ui.label(face.text("report-done")));
        if kit::main_button(ui, face.text("report-see-score"), true).clicked() {
            face.desk.tab = Tab::Score;
        }
        return;
    }
    let job = face.bench.job().clone();
    let choice =
        |on: bool, text: String| RichText::new(text).color(if on { t::ON_AMBER } else { t::TEXT });
    kit::card(ui, |ui| {
        kit::heading(ui, face.text("report-cause"));
        let shown = match &face.desk.draft.cause {
            None => face.text("report-choose"),
            Some(None) => face.text("report-nothing-wrong"),
            Some(Some(id)) => job
                .causes
                .iter()
                .find(|c| c.id == *id)
                .map_or(id.clone(), |c| face.text(&c.name_key())),
        };
        ComboBox::from_id_salt("cause")
            .width(ui.available_width() - 8.0)
            .height(430.0)
            .selected_text(shown)
            .show_ui(ui, |ui| {
                let none = Some(None);
                let on = face.desk.draft.cause == none;
                if ui
                    .selectable_label(on, choice(on, face.text("report-nothing-wrong")))
                    .clicked()
                {
                    face.desk.draft.cause = none;
                }
                for cause in &job.causes {
                    let this = Some(Some(cause.id.clone()));
                    let on = face.desk.draft.cause == this;
                    if ui
                        .selectable_label(on, choice(on, face.text(&cause.name_key())))
                        .clicked()
                    {
                        face.desk.draft.cause = this;
                    }
                }
            });
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
                for part in &job.parts {
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
            .notebook
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
    let draft = face.desk.draft.clone();
    let ready = draft.cause.is_some() && draft.part.is_some();
    if kit::main_button(ui, face.text("report-hand-in"), ready).clicked()
        && let (Some(cause), Some(part)) = (draft.cause, draft.part)
    {
        face.act(Action::Report(Report {
            cause,
            part,
            proof: draft.proof.into_iter().collect(),
        }));
        face.desk.tab = Tab::Score;
    }
    if !ready {
        kit::quiet(ui, face.text("report-not-ready"));
    }
}
