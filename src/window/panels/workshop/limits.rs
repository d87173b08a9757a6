//! What counts in a job: time, money, what is allowed, and the points of each side.

use super::{Changes, flag_ui, number_ui};
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
        let minutes = number_ui(
            ui,
            context.text("workshop-minutes"),
            scenario.par_minutes,
            1.0..=2_000.0,
            5.0,
        );
        changes.extend(minutes.map(ScenarioChange::ParMinutes));
        let budget = number_ui(
            ui,
            context.text("workshop-budget"),
            scenario.budget,
            1.0..=9_999.0,
            10.0,
        );
        changes.extend(budget.map(ScenarioChange::Budget));
        let live = context.text("workshop-live");
        let live = flag_ui(ui, live, scenario.live_tests_allowed);
        changes.extend(live.map(ScenarioChange::LiveTests));
        let hints = context.text("workshop-hints");
        let hints = flag_ui(ui, hints, scenario.hints_allowed);
        changes.extend(hints.map(ScenarioChange::Hints));
    });
    kit::card(ui, |ui| {
        kit::heading(ui, context.text("workshop-points"));
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
    });
}
