//! The end of a round: right answers, the time they took, and what the drill itself has to say.

use super::{Above, beside, entry, mark, seconds};
use crate::drill::{Asked, Sitting};
use crate::panels::{PanelContext, kit};
use crate::tokens as t;
use bevy_egui::egui::{
    self, Align2, CornerRadius, Rect, RichText, Sense, Stroke, StrokeKind, Ui, pos2, vec2,
};
use detent_content::Value;
use detent_training::practice::Skill;
use detent_training::practice::drill::Round;
use detent_training::practice::drill::lamps::{Confusion, confusion};

/// Another round, or back: what was chosen.
pub(super) fn choices_ui(ui: &mut Ui, context: &PanelContext) -> (bool, bool) {
    let back = egui::Button::new(context.text("drill-leave")).min_size(vec2(200.0, 36.0));
    ui.horizontal(|ui| {
        let width = ui.available_width() - 212.0;
        let again = ui.allocate_ui(vec2(width, 40.0), |ui| {
            kit::main_button(ui, context.text("drill-again"), true).clicked()
        });
        (again.inner, ui.add(back).clicked())
    })
    .inner
}

pub(super) fn summary_ui(ui: &mut Ui, context: &mut PanelContext, sitting: &Sitting) {
    let mut of = sitting;
    beside(
        ui,
        context,
        &mut of,
        Above::Left,
        |ui, context, of| kit::card(ui, |ui| answers_ui(ui, context, &of.round)),
        |ui, context, of| {
            kit::card(ui, |ui| match (&of.asked, of.skill) {
                (_, Skill::LampReading) => {
                    kit::heading(ui, context.text("drill-lamps-matrix"));
                    kit::quiet(ui, context.text("drill-lamps-matrix-how"));
                    matrix_ui(ui, context, &confusion(of.read.iter().copied()));
                }
                (Asked::Entry(trial), _) => entry::rhythm_ui(ui, context, trial, &of.tries, None),
                _ => kit::quiet(ui, context.text("drill-summary-more")),
            });
        },
    );
}

/// Right of ten, median, and each answer with its time as a bar.
fn answers_ui(ui: &mut Ui, context: &PanelContext, round: &Round) {
    let right = round.right();
    let args = [
        ("right", Value::from(right)),
        ("of", Value::from(round.questions())),
    ];
    let text = RichText::new(context.with("drill-summary-right", &args));
    ui.label(text.size(28.0).color(t::AMBER));
    if let Some(median_s) = round.median_s() {
        let seconds = Value::from((median_s * 10.0).round() / 10.0);
        ui.label(context.with("drill-summary-median", &[("seconds", seconds)]));
    }
    ui.add_space(6.0);
    let longest = round
        .done()
        .iter()
        .fold(1.0_f64, |most, done| most.max(done.took_s));
    for (n, done) in round.done().iter().enumerate() {
        ui.horizontal(|ui| {
            ui.add_sized(
                [26.0, 22.0],
                bevy_egui::egui::Label::new((n + 1).to_string()),
            );
            let (rect, _) = ui.allocate_exact_size(vec2(22.0, 22.0), Sense::hover());
            mark(ui, rect.center(), done.right);
            let width = (ui.available_width() - 76.0).max(20.0);
            let (rect, _) = ui.allocate_exact_size(vec2(width, 10.0), Sense::hover());
            let bar = vec2(width * (done.took_s / longest) as f32, rect.height());
            let colour = if done.right { t::GOOD } else { t::BAD };
            ui.painter().rect_filled(
                Rect::from_min_size(rect.min, bar),
                CornerRadius::same(3),
                colour,
            );
            kit::quiet(ui, seconds(context, done.took_s));
        });
    }
}

/// Rows are what was shown, columns what was read; off the diagonal are the confusions.
fn matrix_ui(ui: &mut Ui, context: &PanelContext, table: &Confusion) {
    let room = ui.available_width().min(460.0);
    let cell = (room - 34.0) / 10.0;
    let size = vec2(room, 30.0 + 10.0 * cell.min(34.0));
    let (rect, _) = ui.allocate_exact_size(size, Sense::hover());
    let high = cell.min(34.0);
    let painter = ui.painter_at(rect);
    let corner = rect.min + vec2(34.0, 30.0);
    let middle = Align2::CENTER_CENTER;
    for n in 0..10_u8 {
        let at = f32::from(n) + 0.5;
        let (x, y) = (corner.x + at * cell, corner.y + at * high);
        kit::write(
            &painter,
            x,
            rect.top() + 15.0,
            middle,
            t::SMALL,
            t::QUIET,
            n,
        );
        kit::write(
            &painter,
            rect.left() + 17.0,
            y,
            middle,
            t::SMALL,
            t::QUIET,
            n,
        );
    }
    for (row, counts) in table.iter().enumerate() {
        for (column, count) in counts.iter().enumerate() {
            let at = corner + vec2(column as f32 * cell, row as f32 * high);
            let place = Rect::from_min_size(pos2(at.x, at.y), vec2(cell, high)).shrink(1.0);
            let same = row == column;
            painter.rect_stroke(
                place,
                CornerRadius::same(3),
                Stroke::new(1.0, t::LINE),
                StrokeKind::Inside,
            );
            if *count > 0 {
                let colour = if same { t::GOOD } else { t::BAD };
                let edge = Stroke::new(2.0, colour);
                painter.rect_stroke(place, CornerRadius::same(3), edge, StrokeKind::Inside);
                let (x, y) = (place.center().x, place.center().y);
                kit::write(&painter, x, y, middle, t::BODY, colour, count);
            }
        }
    }
    let wrong: u32 = (0..10)
        .map(|n| table[n].iter().sum::<u32>() - table[n][n])
        .sum();
    let all: u32 = table.iter().flatten().sum();
    let share = if all > 0 {
        f64::from(wrong) / f64::from(all)
    } else {
        0.0
    };
    let share = Value::from(context.texts.percent(share, 0));
    ui.label(context.with("drill-lamps-share", &[("share", share)]));
}
