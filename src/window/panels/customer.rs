//! The customer: questions and answers before and during the job, the invoice after it, and the call three days later.

use super::{PanelContext, kit};
use crate::tokens as t;
use bevy_egui::egui::{self, Align, Label, Layout, RichText, Ui, vec2};
use detent_training::bench::{Action, Question};
use detent_training::lesson::Intake;

/// Room for the answers: the latest one is in sight.
const ANSWERS_HEIGHT: f32 = 110.0;
/// Room for an amount, logical pixels.
const AMOUNT_WIDTH: f32 = 80.0;

/// Questions to the customer, each with its answer once it was asked.
pub(super) fn questions_ui(ui: &mut Ui, context: &mut PanelContext) {
    let Some(intake) = &context.bench.job().intake else {
        return;
    };
    let mut asks = None;
    let heading = context.text("ask");
    let list = egui::CollapsingHeader::new(&heading)
        .id_salt("ask")
        .show(ui, |ui| {
            let actions = context.bench.view().log.actions();
            let of_it = |question| move |action: &Action| *action == Action::Ask(question);
            for question in Question::ALL {
                let words = context.texts.question(*question);
                let is_it = of_it(*question);
                let asked = actions.iter().any(|(_, action)| is_it(action));
                let open = !asked || question.can_be_asked_again();
                let ink = if open { t::TEXT } else { t::QUIET };
                let label = RichText::new(words.clone()).color(ink);
                let button = ui.add_enabled(open, egui::Button::new(label).wrap());
                if kit::mark_as(ui, &words, button).clicked() {
                    asks = Some(*question);
                }
            }
            kit::growing_list(ui, "answers", ANSWERS_HEIGHT, |ui| {
                answers_ui(ui, context, intake)
            });
        });
    if list.fully_closed() {
        kit::mark_as(ui, &heading, list.header_response);
    }
    if let Some(question) = asks {
        context.act(Action::Ask(question));
    }
}

/// The answers so far, the latest last: a question that was asked again stands where it was asked last.
fn answers_ui(ui: &mut Ui, context: &PanelContext, intake: &Intake) {
    let log = context.bench.view().log;
    let mut asked: Vec<Question> = Vec::new();
    for (_, action) in log.actions().iter() {
        if let Action::Ask(question) = action {
            asked.retain(|other| other != question);
            asked.push(*question);
        }
    }
    for question in asked {
        kit::quiet(ui, context.texts.question(question));
        let answer = context.texts.answer(&intake.answer(question, log));
        ui.label(RichText::new(answer).italics());
    }
}

/// What the customer pays, line by line, once the job is handed in.
pub(super) fn invoice_ui(ui: &mut Ui, context: &PanelContext) {
    let Some(invoice) = context.bench.invoice() else {
        return;
    };
    let parts = &context.bench.job().parts;
    kit::card(ui, |ui| {
        kit::heading(ui, context.text("invoice"));
        for row in context.texts.invoice(invoice, parts) {
            match row.amount {
                Some(amount) => {
                    ui.horizontal_top(|ui| {
                        // A long line wraps; its amount keeps its place.
                        let width = ui.available_width() - AMOUNT_WIDTH;
                        let down = Layout::top_down(Align::Min);
                        ui.allocate_ui_with_layout(vec2(width, 0.0), down, |ui| {
                            ui.set_width(width);
                            ui.add(Label::new(row.label).wrap());
                        });
                        let right = Layout::right_to_left(Align::Min);
                        ui.with_layout(right, |ui| ui.label(amount));
                    });
                }
                None => kit::quiet(ui, row.label),
            }
        }
    });
}

/// What the customer says three days later.
pub(super) fn call_back_ui(ui: &mut Ui, context: &mut PanelContext) {
    let Some(called) = context.bench.call_back() else {
        return;
    };
    let goes_back = kit::card(ui, |ui| {
        let Some(call) = called else {
            kit::quiet(ui, context.fixed("call-back-none"));
            return false;
        };
        kit::heading(ui, context.fixed("call-back"));
        ui.label(RichText::new(context.texts.call_back(&call.account)).italics());
        if context.bench.job().called_back.is_some() {
            return false;
        }
        kit::quiet(ui, context.fixed("call-back-how"));
        if context.ui_state.opening.is_some() {
            kit::quiet(ui, context.fixed("start-opening"));
            return false;
        }
        kit::go(ui, context.fixed("call-back-go")).clicked()
    });
    if goes_back && let Some(work) = context.bench.second_visit() {
        context.ui_state.open(work);
    }
}
