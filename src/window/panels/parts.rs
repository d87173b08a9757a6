//! The parts counter.

use super::{Face, kit};
use crate::tokens as t;
use bevy_egui::egui::{Align, Label, Layout, RichText, Ui, vec2};
use detent_content::Value;
use detent_training::bench::Action;
use std::sync::Arc;

/// Room for a price, logical pixels.
const PRICE_WIDTH: f32 = 100.0;

pub(super) fn parts_ui(ui: &mut Ui, face: &mut Face) {
    kit::card(ui, |ui| {
        kit::heading(ui, face.text("parts"));
        kit::quiet(ui, face.text("parts-intro"));
        let rates = face.bench.job().rates;
        let fee = (100.0 * rates.return_fee_share).round();
        let rates = face.with(
            "parts-rates",
            &[
                ("labour", Value::from(rates.labour_per_hour)),
                ("fee", Value::from(fee)),
                ("limit", Value::from(rates.repair_limit().round())),
            ],
        );
        kit::quiet(ui, rates);
    });
    let job = Arc::clone(face.bench.job());
    for row in &job.parts {
        kit::card(ui, |ui| {
            ui.horizontal_top(|ui| {
                // A long name wraps; the price keeps its place.
                let width = ui.available_width() - PRICE_WIDTH;
                ui.allocate_ui_with_layout(vec2(width, 0.0), Layout::top_down(Align::Min), |ui| {
                    ui.set_width(width);
                    ui.add(Label::new(RichText::new(face.text(&row.name_key)).strong()).wrap());
                });
                let price = face.with("parts-price", &[("price", Value::from(row.price))]);
                ui.label(RichText::new(price).color(t::AMBER));
            });
            let state = face.texts.part_state(row);
            if !state.is_empty() {
                kit::quiet(ui, state.join("   "));
            }
            if let Some(note) = &row.note_key {
                kit::quiet(ui, face.text(note));
            }
            ui.horizontal(|ui| {
                let wait = face.with("parts-wait", &[("hours", Value::from(row.wait_hours))]);
                let revision = row.revision.map_or(String::new(), |letter| {
                    let letter = Value::from(letter.to_string());
                    face.with("parts-revision", &[("revision", letter)])
                });
                kit::quiet(ui, format!("{} {revision}   {wait}", row.number));
                ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
                    let held = face
                        .bench
                        .view()
                        .parts
                        .iter()
                        .rev()
                        .find(|p| p.number == row.number)
                        .cloned();
                    match held {
                        Some(part) if part.fitted => {
                            ui.label(RichText::new(face.text("parts-fitted")).color(t::GOOD));
                        }
                        Some(_) => {
                            if kit::choice(ui, true, face.text("do-fit")).clicked() {
                                face.act(Action::Fit(row.number.clone()));
                            }
                            if ui.button(face.text("do-return")).clicked() {
                                face.act(Action::Return(row.number.clone()));
                            }
                        }
                        None => {
                            if ui.button(face.text("do-order")).clicked() {
                                face.act(Action::Order(row.number.clone()));
                            }
                        }
                    }
                });
            });
        });
    }
}
