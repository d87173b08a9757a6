//! The parts counter.

use super::icon::Icon;
use super::quote::{quote_part_ui, quote_ui};
use super::{PanelContext, kit};
use crate::tokens as t;
use bevy_egui::egui::{Align, Label, Layout, RichText, Ui, vec2};
use detent_content::Value;
use detent_training::bench::{Action, Part};
use std::sync::Arc;

/// Room for a price, logical pixels.
const PRICE_WIDTH: f32 = 64.0;
/// Room for two lines of facts about a part.
const FACTS_HEIGHT: f32 = 40.0;

pub(super) fn parts_ui(ui: &mut Ui, context: &mut PanelContext) {
    kit::card(ui, |ui| {
        kit::heading(ui, context.text("parts"));
        kit::quiet(ui, context.text("parts-intro"));
        let rates = context.bench.job().rates;
        let fee = (100.0 * rates.return_fee_share).round();
        let rates = context.with(
            "parts-rates",
            &[
                ("labour", Value::from(rates.labour_per_hour)),
                ("fee", Value::from(fee)),
                ("limit", Value::from(rates.repair_limit().round())),
            ],
        );
        kit::quiet(ui, rates);
    });
    quote_ui(ui, context);
    let label = context.texts.fixed("search");
    kit::search(ui, &label, &mut context.ui_state.part_search);
    let wanted = context.ui_state.part_search.trim().to_lowercase();
    let job = Arc::clone(context.bench.job());
    let says = |text: &str| text.to_lowercase().contains(&wanted);
    let rows: Vec<(String, &Part)> = (job.parts.iter())
        .map(|row| (context.text(&row.name_key), row))
        .filter(|(name, row)| says(name) || says(&row.number))
        .collect();
    if rows.is_empty() {
        kit::quiet(ui, context.fixed("parts-none-found"));
    }
    for (name, row) in rows {
        kit::card(ui, |ui| {
            let held = (context.bench.view().parts.iter().rev())
                .find(|part| part.number == row.number)
                .cloned();
            ui.horizontal_top(|ui| {
                // A long name wraps; the price keeps its place.
                let width = ui.available_width() - PRICE_WIDTH;
                ui.allocate_ui_with_layout(vec2(width, 0.0), Layout::top_down(Align::Min), |ui| {
                    ui.set_width(width);
                    let label = ui.add(Label::new(RichText::new(&name).strong()).wrap());
                    kit::mark_as(ui, &name, label);
                });
                let price = context.with("parts-price", &[("price", Value::from(row.price))]);
                ui.with_layout(Layout::right_to_left(Align::Min), |ui| {
                    ui.label(RichText::new(price).color(t::AMBER));
                });
            });
            let state = context.texts.part_state(row);
            if !state.is_empty() {
                kit::quiet(ui, state.join("   "));
            }
            if let Some(note) = &row.note_key {
                kit::quiet(ui, context.text(note));
            }
            ui.horizontal(|ui| {
                // Two lines beside the buttons, whichever those are: nothing below moves.
                ui.set_min_height(FACTS_HEIGHT);
                // What is here already need not arrive.
                let wait = match &held {
                    Some(_) => String::new(),
                    None => context.with("parts-wait", &[("hours", Value::from(row.wait_hours))]),
                };
                let revision = row.revision.map_or(String::new(), |letter| {
                    let letter = Value::from(letter.to_string());
                    context.with("parts-revision", &[("revision", letter)])
                });
                ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
                    kit::end_of_line(ui, ui.unique_id(), |ui| match held {
                        Some(part) if part.fitted => {
                            ui.label(RichText::new(context.text("parts-fitted")).color(t::GOOD));
                        }
                        Some(_) => {
                            if kit::small_deed(ui, Icon::Back, context.text("do-return")).clicked()
                            {
                                context.act(Action::Return(row.number.clone()));
                            }
                            if kit::small_deed(ui, Icon::Wrench, context.text("do-fit")).clicked() {
                                context.act(Action::Fit(row.number.clone()));
                            }
                        }
                        None => {
                            quote_part_ui(ui, context, &row.number);
                            if kit::small_deed(ui, Icon::Box, context.text("do-order")).clicked() {
                                context.act(Action::Order(row.number.clone()));
                            }
                        }
                    });
                    // It wraps beside the buttons.
                    let facts = format!("{} {revision}   {wait}", row.number);
                    let left = Layout::left_to_right(Align::Center).with_main_wrap(true);
                    ui.with_layout(left, |ui| kit::quiet(ui, facts));
                });
            });
        });
    }
}
