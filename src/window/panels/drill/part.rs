//! Choosing the part: the proved cause and five cards of the counter.

use super::{Look, digit_pressed, option_ui, place_text};
use crate::drill::Question;
use crate::panels::{PanelContext, kit};
use crate::tokens as t;
use bevy_egui::egui::{RichText, Ui};
use detent_content::Value;
use detent_training::bench::Part;
use detent_training::practice::drill::part::{Marked, PartChoiceTask, Wrong};

/// The question of this drill.
type Asked = Question<PartChoiceTask, Option<usize>, Marked>;

pub(super) fn part_ui(ui: &mut Ui, context: &mut PanelContext, q: &mut Asked) {
    if q.marked.is_none() {
        let chosen = digit_pressed(ui, context).filter(|n| *n < q.task.options.len());
        q.given = chosen.or(q.given);
    }
    kit::card(ui, |ui| {
        kit::quiet(ui, place_text(context, &q.task.place));
        let cause = context.text(&format!("mode-{}", q.task.cause.replace('.', "-")));
        ui.label(RichText::new(cause).size(t::HEADING).color(t::AMBER));
        ui.label(context.text("drill-part-ask"));
    });
    ui.add_space(4.0);
    let should = q.marked.as_ref().map(|marked| marked.should);
    for n in 0..q.task.options.len() {
        let (part, verdict) = (&q.task.options[n], &q.task.verdicts[n]);
        let look = Look::of(n, q.given, should);
        let name = format!("{}   {}", part.number, context.text(&part.name_key));
        let response = option_ui(ui, n + 1, look, &name, |ui| {
            kit::quiet(ui, card(context, part));
            if should.is_some() {
                let (text, colour) = match verdict {
                    None => (context.text("drill-part-right"), t::GOOD),
                    Some(wrong) => (why(context, wrong), t::QUIET),
                };
                ui.label(RichText::new(text).color(colour));
            }
        });
        if response.clicked() {
            q.given = Some(n);
        }
    }
}

/// What else stands on the part's card.
fn card(context: &PanelContext, part: &Part) -> String {
    let revision = part.revision.map(|letter| {
        let letter = Value::from(letter.to_string());
        context.with("parts-revision", &[("revision", letter)])
    });
    let price = context.with("parts-price", &[("price", Value::from(part.price))]);
    let wait = context.with("parts-wait", &[("hours", Value::from(part.wait_hours))]);
    let mut words: Vec<String> = revision.into_iter().collect();
    words.extend(context.texts.part_state(part));
    words.extend([price, wait]);
    words.extend(part.note_key.as_ref().map(|key| context.text(key)));
    words.join("  ·  ")
}

/// Why a part is not the one.
fn why(context: &PanelContext, wrong: &Wrong) -> String {
    let key = format!("drill-part-wrong-{}", wrong.key());
    match wrong {
        Wrong::OtherComponent(component) => context.with(
            &key,
            &[("component", Value::from(context.part(*component)))],
        ),
        Wrong::Superseded(number) => context.with(&key, &[("part", Value::from(number.as_str()))]),
        Wrong::NotNew(condition, chance) => {
            let state = context.text(&format!("condition-{}", condition.name()));
            let args = [
                ("condition", Value::from(state)),
                ("chance", Value::from(context.texts.percent(*chance, 0))),
            ];
            context.with(&key, &args)
        }
        Wrong::OtherBoard | Wrong::OtherFault => context.text(&key),
    }
}
