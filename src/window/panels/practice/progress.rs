//! Progress: four charts, and what can be carried away of it.

use super::charts::{self, Curve};
use super::{PanelContext, kit, skill_name};
use crate::attempts::Attempts;
use crate::port::JobSource;
use crate::practice::{LearnerRes, ahead_s, now};
use crate::tokens as t;
use bevy::prelude::{Rect as Part, Vec2 as Point};
use bevy_egui::egui::{
    self, Align2, Color32, CornerRadius, Frame, Margin, Rect, RichText, Ui, UiBuilder, pos2, vec2,
};
use detent_content::Value;
use detent_training::practice::{Standing, rhythm_by_day};

/// How many there are.
const CHARTS: usize = 4;
/// Room between the charts.
const GAP: f32 = 8.0;
/// Room for a skill's name.
const NAME_WIDTH: f32 = 215.0;
/// Room for what is told of it.
const TOLD_WIDTH: f32 = 135.0;
/// Least height of two charts, one above the other.
const LEAST: f32 = 560.0;
/// Least width of two charts side by side.
const BESIDE: f32 = 640.0;

/// Draws it.
pub(super) fn progress_ui(
    ui: &mut Ui,
    context: &mut PanelContext,
    learner: &mut LearnerRes,
    jobs: &dyn JobSource,
) {
    export_ui(ui, context, learner, jobs);
    egui::ScrollArea::vertical()
        .id_salt("progress")
        .auto_shrink(false)
        .show(ui, |ui| {
            let width = ui.available_width();
            let columns = if width < BESIDE { 1 } else { 2 };
            let rows = CHARTS / columns;
            let height = ui.available_height().max(LEAST * rows as f32 / 2.0);
            let (rect, _) = ui.allocate_exact_size(vec2(width, height), egui::Sense::hover());
            learner.ui_state.charts = part(rect.intersect(ui.clip_rect()));
            let size = vec2(
                (width - GAP * (columns - 1) as f32) / columns as f32,
                (height - GAP * (rows - 1) as f32) / rows as f32,
            );
            let cell = |nth: usize| {
                let across = (size.x + GAP) * (nth % columns) as f32;
                let down = (size.y + GAP) * (nth / columns) as f32;
                Rect::from_min_size(rect.min + vec2(across, down), size)
            };
            let learner = &*learner;
            let curves = charts::retention_curves(learner.learner(), now());
            in_cell(ui, cell(0), |ui| known_ui(ui, context, learner, &curves));
            in_cell(ui, cell(1), |ui| {
                retention_ui(ui, context, learner, &curves);
            });
            in_cell(ui, cell(2), |ui| rhythm_ui(ui, context, learner));
            in_cell(ui, cell(3), |ui| confusion_ui(ui, context, learner));
        });
}

fn part(rect: Rect) -> Part {
    Part::from_corners(
        Point::new(rect.left(), rect.top()),
        Point::new(rect.right(), rect.bottom()),
    )
}

fn in_cell(ui: &mut Ui, cell: Rect, contents: impl FnOnce(&mut Ui)) {
    ui.scope_builder(UiBuilder::new().max_rect(cell), |ui| {
        Frame::new()
            .fill(t::CARD)
            .corner_radius(CornerRadius::same(10))
            .inner_margin(Margin::symmetric(12, 8))
            .show(ui, |ui| {
                ui.set_width(cell.width() - 24.0);
                ui.set_height(cell.height() - 16.0);
                ui.spacing_mut().item_spacing.y = 3.0;
                contents(ui);
            });
    });
}

/// Buttons that save, and where it went.
fn export_ui(ui: &mut Ui, context: &PanelContext, learner: &mut LearnerRes, jobs: &dyn JobSource) {
    ui.horizontal_wrapped(|ui| {
        if ui.button(context.text("practice-export-csv")).clicked() {
            learner.export_csv(jobs.attempts().and_then(Attempts::file_exchange));
        }
        if ui.button(context.text("practice-export-png")).clicked() {
            learner.ui_state.picture = Some(learner.ui_state.charts);
        }
        match &learner.ui_state.exported {
            Some(Ok(place)) => {
                let args = [("place", Value::from(place.as_str()))];
                kit::quiet(ui, context.with("practice-exported", &args));
            }
            Some(Err(detail)) => {
                let args = [("detail", Value::from(detail.as_str()))];
                let words = RichText::new(context.with("practice-not-exported", &args));
                ui.label(words.size(t::SMALL).color(t::BAD));
            }
            None => {}
        }
    });
}

/// The skills, each with its number and colour in the other chart, and a bar.
fn known_ui(ui: &mut Ui, context: &PanelContext, learner: &LearnerRes, curves: &[Curve]) {
    let name = learner.name().map(str::to_owned);
    let name = name.unwrap_or_else(|| context.text("practice-guest"));
    let args = [("name", Value::from(name))];
    kit::heading(ui, context.with("practice-chart-known", &args));
    let standings = learner.learner().standings();
    let height = (ui.available_height() / standings.len() as f32 - 3.0).min(48.0);
    let now = now();
    for standing in standings {
        let ink = charts::curve_ink(curves, standing.skill().index());
        known_row(ui, context, standing, (standing.known(now), ink), height);
    }
}

fn known_row(
    ui: &mut Ui,
    context: &PanelContext,
    standing: &Standing,
    (known, ink): (f64, Color32),
    height: f32,
) {
    let (rect, painter) = kit::canvas(ui, height);
    let n = standing.skill().index();
    // Where there is little room across, the bar stands below the name.
    let below = rect.width() < NAME_WIDTH + TOLD_WIDTH + 120.0;
    let line = if below {
        rect.top() + 10.0
    } else {
        rect.center().y
    };
    let write = |x, anchor, colour, text: String| {
        kit::write(&painter, x, line, anchor, t::SMALL, colour, text);
    };
    let left = rect.left();
    let number = (n + 1).to_string();
    write(left, Align2::LEFT_CENTER, ink, number);
    let name = skill_name(context, standing.skill());
    write(left + 20.0, Align2::LEFT_CENTER, t::TEXT, name.clone());
    let told = if standing.answers == 0 {
        context.text("practice-new")
    } else {
        context.texts.percent(known, 0)
    };
    write(rect.right(), Align2::RIGHT_CENTER, t::TEXT, told.clone());
    let bar = if below {
        Rect::from_min_max(
            pos2(left + 20.0, line + 11.0),
            pos2(rect.right(), line + 23.0),
        )
    } else {
        Rect::from_min_max(
            pos2(left + NAME_WIDTH, line - 7.0),
            pos2(rect.right() - TOLD_WIDTH, line + 7.0),
        )
    };
    painter.rect_filled(bar, CornerRadius::same(5), t::INK);
    if standing.answers > 0 {
        let mut full = bar;
        full.set_width(bar.width() * known.clamp(0.0, 1.0) as f32);
        painter.rect_filled(full, CornerRadius::same(5), ink);
    }
    ui.interact(rect, ui.id().with(("skill", n)), egui::Sense::hover())
        .on_hover_text(context.with(
            "practice-answers",
            &[
                ("right", Value::from(standing.right)),
                ("count", Value::from(standing.answers)),
            ],
        ))
        .widget_info(|| {
            let label = format!("{name}: {told}");
            egui::WidgetInfo::labeled(egui::WidgetType::Label, true, label)
        });
}

fn retention_ui(ui: &mut Ui, context: &PanelContext, learner: &LearnerRes, curves: &[Curve]) {
    kit::heading(ui, context.text("practice-chart-retention"));
    if learner.answers().is_empty() {
        ui.label(context.text("practice-chart-retention-none"));
        return;
    }
    kit::quiet(ui, context.text("practice-rates-unfitted"));
    let axis = context.text("practice-chart-retention-axis");
    charts::retention(ui, curves, axis, context.texts);
}

fn rhythm_ui(ui: &mut Ui, context: &PanelContext, learner: &LearnerRes) {
    kit::heading(ui, context.text("practice-chart-rhythm"));
    let days = rhythm_by_day(learner.answers(), ahead_s());
    if days.is_empty() {
        ui.label(context.text("practice-chart-rhythm-none"));
        return;
    }
    kit::quiet(ui, context.text("practice-chart-rhythm-axis"));
    charts::rhythm(ui, &days, context.texts);
}

fn confusion_ui(ui: &mut Ui, context: &PanelContext, learner: &LearnerRes) {
    kit::heading(ui, context.text("practice-chart-confusion"));
    let confusion = learner.learner().confusion();
    if confusion.is_empty() {
        ui.label(context.text("practice-chart-confusion-none"));
        return;
    }
    let told = match confusion.worst() {
        Some((shown, read, count)) => context.with(
            "practice-chart-confusion-worst",
            &[
                ("shown", Value::from(shown)),
                ("read", Value::from(read)),
                ("count", Value::from(count)),
            ],
        ),
        None => context.text("practice-chart-confusion-sound"),
    };
    kit::quiet(ui, told);
    let shown = context.text("practice-chart-confusion-shown");
    let read = context.text("practice-chart-confusion-read");
    charts::confusion(ui, confusion, &shown, &read);
}
