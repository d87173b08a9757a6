//! A hint for whoever is stuck: three rungs, each at its price.

use super::{PanelContext, kit};
use bevy_egui::egui::Ui;
use detent_content::{Value, Words};

pub(super) fn hint_ui(ui: &mut Ui, context: &mut PanelContext) {
    let (job, view) = (context.bench.job(), context.bench.view());
    let examined = context.ui_state.is_under_examination();
    if !job.hints_allowed || view.finished || examined {
        return;
    }
    if !job.hints_at_hand {
        let key = match job.called_back {
            Some(_) => "hint-none-second-visit",
            None => "hint-none-no-table",
        };
        kit::quiet(ui, context.fixed(key));
        return;
    }
    let (look, take) = kit::card(ui, |ui| {
        kit::heading(ui, context.fixed("hint"));
        kit::quiet(ui, context.fixed("hint-intro"));
        let (mut look, mut take) = (false, false);
        match context.bench.hint() {
            None => look = kit::wide(ui, context.fixed("hint-look")).clicked(),
            Some(shown) if shown.is_looking() => kit::quiet(ui, context.fixed("hint-thinking")),
            Some(shown) => {
                let job = context.bench.job();
                if let Some(hint) = shown.hint() {
                    let board = Some(&job.board);
                    let words = Words::of(
                        (&hint.repair_costs, &hint.modes),
                        context.texts,
                        &job.parts,
                        board,
                    );
                    for rung in shown.taken() {
                        ui.label(words.hint(hint, *rung));
                    }
                }
                match shown.next().filter(|_| shown.is_of_now(view.log)) {
                    Some(rung) => {
                        let points = (10.0 * job.points.taken_by_hint(rung)).round() / 10.0;
                        let name = Value::from(context.text(&format!("hint-rung-{rung}")));
                        let args = [("rung", name), ("points", Value::from(points))];
                        let label = context.with("hint-rung-with-price", &args);
                        take = kit::wide(ui, label).clicked();
                    }
                    None => look = kit::wide(ui, context.fixed("hint-look-again")).clicked(),
                }
            }
        }
        (look, take)
    });
    if look {
        context.bench.look_for_hint();
    }
    if take {
        context.bench.take_hint();
    }
}
