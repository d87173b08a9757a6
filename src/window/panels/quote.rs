//! What the customer is told that the repair will come to, and what the customer says.

use super::icon::Icon;
use super::{PanelContext, kit, spoken};
use crate::tokens as t;
use bevy_egui::egui::{RichText, Ui};
use detent_content::Value;
use detent_training::bench::{Action, Quote};

/// Labor is quoted in steps of this, min.
const STEP_MIN: u16 = 5;
/// Room for two lines of text: what is quoted, and what the customer says to it.
const TWO_LINES: f32 = 44.0;
/// Most that can be quoted, min.
const MOST_MIN: u16 = 600;

pub(super) fn quote_ui(ui: &mut Ui, context: &mut PanelContext) {
    kit::card(ui, |ui| {
        kit::heading(ui, context.fixed("quote"));
        kit::quiet(ui, context.fixed("quote-intro"));
        let names = ["quote-less", "quote-more"].map(|key| context.texts.fixed(key));
        let quoted = &mut context.ui_state.quoted;
        ui.horizontal(|ui| {
            if kit::stepper(ui, "−", &names[0]).clicked() {
                quoted.minutes = quoted.minutes.saturating_sub(STEP_MIN);
            }
            if kit::stepper(ui, "+", &names[1]).clicked() {
                quoted.minutes = (quoted.minutes + STEP_MIN).min(MOST_MIN);
            }
            let minutes = Value::from(quoted.minutes);
            let minutes = ui.label(context.texts.with("quote-minutes", &[("minutes", minutes)]));
            spoken::when_changed(ui, &minutes);
        });
        let job = context.bench.job();
        let quoted = &context.ui_state.quoted;
        let amount = quoted.amount(&job.parts, &job.rates);
        let parts = match quoted.parts.as_slice() {
            [] => context.text("quote-no-part"),
            parts => parts.join(", "),
        };
        let args = [
            ("parts", Value::from(parts)),
            ("amount", Value::from(context.texts.money(amount))),
        ];
        kit::reserved(ui, TWO_LINES, |ui| {
            ui.label(context.with("quote-comes-to", &args));
        });
        if kit::deed(ui, Icon::Paper, context.fixed("do-quote")).clicked() {
            context.act(Action::Quote(context.ui_state.quoted.clone()));
        }
        kit::reserved(ui, TWO_LINES, |ui| {
            if let Some(given) = context.bench.view().log.quotes().last() {
                let colour = if given.approved { t::GOOD } else { t::BAD };
                ui.label(RichText::new(context.texts.quote_given(given)).color(colour));
            }
        });
    });
}

/// Whether a part is in the quote that is being made; pressed, it is put in or taken out.
pub(super) fn quote_part_ui(ui: &mut Ui, context: &mut PanelContext, number: &str) {
    let Quote { parts, .. } = &mut context.ui_state.quoted;
    let place = parts.iter().position(|part| part == number);
    let label = context.texts.fixed("quote-part");
    if kit::choice(ui, place.is_some(), label).clicked() {
        match place {
            Some(place) => {
                parts.remove(place);
            }
            None => parts.push(number.to_owned()),
        }
    }
}
