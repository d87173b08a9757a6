//! What counts in a job: time, money, what is allowed, and the points of each side.

use super::{Changes, field, flag_ui, number_ui};
use crate::panels::{PanelContext, kit};
use crate::tokens as t;
use crate::workshop::Workshop;
use bevy_egui::egui::{RichText, Ui};
use detent_content::{ScenarioChange, Value};
use detent_training::lesson::Dimension;

/// Draws it.
pub(super) fn limits_ui(
    ui: &mut Ui,
    context: &PanelContext,
    open: &Workshop,
    changes: &mut Changes,
) {
    let scenario = open.scenario();
    kit::card(ui, |ui| {
        kit::heading(ui, context.text("workshop-limits"));
        let minutes = field(ui, "par_minutes", |ui| {
            let name = context.text("workshop-minutes");
            number_ui(ui, name, scenario.par_minutes, 1.0..=2_000.0, 5.0)
        });
        changes.extend(minutes.map(ScenarioChange::ParMinutes));
        let budget = field(ui, "budget", |ui| {
            let name = context.text("workshop-budget");
            number_ui(ui, name, scenario.budget, 1.0..=9_999.0, 10.0)
        });
        changes.extend(budget.map(ScenarioChange::Budget));
        let live = field(ui, "live_tests_allowed", |ui| {
            flag_ui(
                ui,
                context.text("workshop-live"),
                scenario.live_tests_allowed,
            )
        });
        changes.extend(live.map(ScenarioChange::LiveTests));
        let hints = context.text("workshop-hints");
        let hints = flag_ui(ui, hints, scenario.hints_allowed);
        changes.extend(hints.map(ScenarioChange::Hints));
    });
    kit::card(ui, |ui| {
        kit::heading(ui, context.text("workshop-points"));
        field(ui, "points", |ui| points_ui(ui, context, open, changes));
    });
}

/// The points of each side, and their sum.
fn points_ui(ui: &mut Ui, context: &PanelContext, open: &Workshop, changes: &mut Changes) {
    let scenario = open.scenario();
    for side in Dimension::ALL {
        let name = context.text(&format!("dimension-{side}"));
        let points = number_ui(ui, name, scenario.points.of(*side), 0.0..=100.0, 1.0);
        changes.extend(points.map(|points| ScenarioChange::Points(*side, points)));
    }
    let sum: f64 = Dimension::ALL
        .iter()
        .map(|side| scenario.points.of(*side))
        .sum();
    let color = if (sum - 100.0).abs() < 1e-6 {
        t::QUIET
    } else {
        t::BAD
    };
    let sum = context.with("workshop-points-sum", &[("sum", Value::from(sum))]);
    ui.label(RichText::new(sum).size(t::SMALL).color(color));
}
