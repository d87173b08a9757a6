//! The words of a job, in both languages.

use super::{Changes, field};
use crate::panels::{PanelContext, kit};
use crate::state::say;
use crate::workshop::Workshop;
use bevy_egui::egui::{Align, TextEdit, Ui, vec2};
use detent_content::{Language, ScenarioChange, ScenarioSentence};

/// Longest sentence, characters.
const LONGEST: usize = 600;

/// Draws them.
pub(super) fn sentences_ui(
    ui: &mut Ui,
    context: &PanelContext,
    open: &Workshop,
    changes: &mut Changes,
) {
    kit::card(ui, |ui| {
        for sentence in ScenarioSentence::ALL {
            let (key, rows) = match sentence {
                ScenarioSentence::Title => ("workshop-sentence-title", 1),
                ScenarioSentence::Complaint => ("workshop-sentence-complaint", 3),
                ScenarioSentence::Goal => ("workshop-sentence-goal", 3),
            };
            kit::heading(ui, context.text(key));
            let both = sentence.of(open.scenario());
            for language in Language::ALL {
                let mut text = say(language, both).to_owned();
                let path = format!("{}.{}", sentence.field(), language.code());
                let changed = field(ui, &path, |ui| {
                    let label = ui.label(language.own_name());
                    let edit = if rows == 1 {
                        TextEdit::singleline(&mut text).vertical_align(Align::Center)
                    } else {
                        TextEdit::multiline(&mut text).desired_rows(rows)
                    };
                    let edit = edit
                        .min_size(vec2(0.0, 28.0))
                        .char_limit(LONGEST)
                        .desired_width(ui.available_width())
                        .id_salt((key, language.code()));
                    ui.add(edit).labelled_by(label.id).changed()
                });
                if changed {
                    changes.push(ScenarioChange::Sentence(sentence, language, text));
                }
            }
            ui.add_space(4.0);
        }
    });
}
