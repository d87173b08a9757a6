//! The way into service mode: a picture for each step, and the same in words.

use crate::panels::{PanelContext, kit};
use crate::tokens as t;
use bevy_egui::egui::{
    self, Align2, Color32, CornerRadius, Painter, Pos2, Rect, RichText, Stroke, StrokeKind, Ui,
    Vec2, pos2, vec2,
};
use detent_content::{Texts, Value};
use detent_simulation::controller::{GestureStep, LidMove, Selector};
use detent_simulation::interface::Button;
use detent_training::practice::drill::entry::needs_keeping;
use std::f32::consts::{PI, TAU};

/// Height of a step's picture, and how many stand side by side at most.
const TILE: f32 = 96.0;
const ABREAST: usize = 4;

fn arrow(painter: &Painter, points: &[Pos2], stroke: Stroke) {
    match *points {
        [from, to] => painter.line_segment([from, to], stroke),
        _ => painter.add(egui::Shape::line(points.to_vec(), stroke)),
    };
    if let [.., a, b] = points {
        let back = (*a - *b).normalized() * 8.0;
        for turn in [0.5f32, -0.5] {
            let (sin, cos) = turn.sin_cos();
            let side = vec2(back.x * cos - back.y * sin, back.x * sin + back.y * cos);
            painter.line_segment([*b, *b + side], stroke);
        }
    }
}

/// The board's knob as seen from the front, at position 0.
pub(in crate::panels) fn knob(painter: &Painter, middle: Pos2, radius: f32, selector: Selector) {
    let stops = selector.turn().unwrap_or(0);
    for i in 0..stops {
        let out = Vec2::angled(f32::from(i) / f32::from(stops) * TAU - PI / 2.0);
        painter.line_segment(
            [middle + out * (radius + 2.5), middle + out * (radius + 5.5)],
            Stroke::new(1.0, t::PRINT_QUIET),
        );
    }
    let edge = Stroke::new(1.6, t::PRINT);
    painter.circle(middle, radius, t::PAPER_SHADE, edge);
    if let Selector::Switch { .. } = selector {
        let nose = [
            vec2(-0.26, 0.72),
            vec2(-0.30, 0.0),
            vec2(0.0, -0.98),
            vec2(0.30, 0.0),
            vec2(0.26, 0.72),
        ]
        .map(|v| middle + v * radius);
        painter.add(egui::Shape::convex_polygon(
            nose.to_vec(),
            t::PRINT,
            Stroke::NONE,
        ));
    } else {
        painter.line_segment(
            [middle, middle - vec2(0.0, radius * 0.85)],
            Stroke::new(3.0, t::PRINT),
        );
    }
}

/// The glyph on a button.
pub(in crate::panels) fn glyph(
    painter: &Painter,
    middle: Pos2,
    size: f32,
    button: Button,
    ink: Color32,
) {
    let stairs = |up: f32| {
        for y in [0.72, -0.18] {
            let points = [
                vec2(-0.95, y * up),
                vec2(0.0, (y - 0.62) * up),
                vec2(0.95, y * up),
            ]
            .map(|v| middle + v * size);
            painter.add(egui::Shape::line(
                points.to_vec(),
                Stroke::new(size * 0.34, ink),
            ));
        }
    };
    match button {
        Button::Start => {
            let points =
                [vec2(-0.7, -1.0), vec2(1.0, 0.0), vec2(-0.7, 1.0)].map(|v| middle + v * size);
            painter.add(egui::Shape::convex_polygon(
                points.to_vec(),
                ink,
                Stroke::NONE,
            ));
        }
        Button::Stop => {
            painter.rect_filled(
                Rect::from_center_size(middle, Vec2::splat(size * 1.8)),
                CornerRadius::same(2),
                ink,
            );
        }
        Button::More => stairs(1.0),
        Button::Less => stairs(-1.0),
    }
}

/// A button, with an arrow onto it or away from it.
fn button_tile(painter: &Painter, middle: Pos2, button: Button, onto: bool, ink: Stroke) {
    let edge = Stroke::new(1.6, t::PRINT);
    let at = middle + vec2(0.0, 6.0);
    painter.circle(at, 18.0, t::PAPER_SHADE, edge);
    glyph(painter, at, 7.0, button, t::PRINT);
    let (far, near) = (middle - vec2(0.0, 34.0), middle - vec2(0.0, 15.0));
    arrow(painter, &if onto { [far, near] } else { [near, far] }, ink);
}

/// What is written at the foot of a tile.
fn foot(painter: &Painter, rect: Rect, text: impl ToString) {
    let (x, y) = (rect.center().x, rect.bottom() - 2.0);
    kit::write(
        painter,
        x,
        y,
        Align2::CENTER_BOTTOM,
        15.0,
        t::PRINT_ACCENT,
        text,
    );
}

/// A bar along the foot: the button stays down.
fn stays(painter: &Painter, rect: Rect) {
    let bar = Rect::from_min_max(
        pos2(rect.left() + 8.0, rect.bottom() - 22.0),
        pos2(rect.right() - 8.0, rect.bottom() - 17.0),
    );
    painter.rect_filled(bar, CornerRadius::same(2), t::PRINT_ACCENT);
}

fn tile(painter: &Painter, rect: Rect, step: &GestureStep, selector: Selector, texts: &Texts) {
    kit::frame(painter, rect, Color32::WHITE, t::PRINT_QUIET);
    let middle = rect.center() - vec2(0.0, 4.0);
    let ink = Stroke::new(2.6, t::PRINT_ACCENT);
    match *step {
        GestureStep::Turn { to, detents, .. } => {
            let at = middle + vec2(0.0, 8.0);
            knob(painter, at, 17.0, selector);
            let sweep = f32::from(detents) / f32::from(selector.turn().unwrap_or(24)) * TAU;
            let sign = f32::from(to.sign());
            let points: [Pos2; 17] = std::array::from_fn(|i| {
                at + Vec2::angled(-PI / 2.0 + sign * sweep * i as f32 / 16.0) * 29.0
            });
            arrow(painter, &points, ink);
            kit::write(
                painter,
                rect.right() - 5.0,
                rect.bottom() - 4.0,
                Align2::RIGHT_BOTTOM,
                17.0,
                t::PRINT_ACCENT,
                format!("{detents}×"),
            );
        }
        GestureStep::Press { button, times, .. } => {
            button_tile(painter, middle, button, true, ink);
            if times > 1 {
                foot(painter, rect, format!("{times}×"));
            }
        }
        GestureStep::Hold {
            button,
            min_ms,
            max_ms,
            ..
        } => {
            button_tile(painter, middle - vec2(0.0, 5.0), button, true, ink);
            stays(painter, rect);
            let seconds = |ms| f64::from(ms) / 1000.0;
            let range = format!("{}–{} s", seconds(min_ms), seconds(max_ms));
            foot(painter, rect, texts.digits(range));
        }
        GestureStep::Push { button, .. } => {
            button_tile(painter, middle, button, true, ink);
            stays(painter, rect);
        }
        GestureStep::Release { button, .. } => button_tile(painter, middle, button, false, ink),
        GestureStep::Lid { to, .. } => {
            let base = Rect::from_center_size(middle + vec2(0.0, 16.0), vec2(50.0, 18.0));
            painter.rect_stroke(
                base,
                CornerRadius::same(2),
                Stroke::new(1.6, t::PRINT),
                StrokeKind::Inside,
            );
            painter.line_segment(
                [base.left_top(), base.left_top() + vec2(32.0, -30.0)],
                Stroke::new(3.0, t::PRINT),
            );
            let (a, b) = (
                base.right_top() - vec2(6.0, 4.0),
                base.right_top() - vec2(14.0, 28.0),
            );
            arrow(
                painter,
                &if to == LidMove::Up { [a, b] } else { [b, a] },
                ink,
            );
        }
        GestureStep::PowerUp { holding, .. } => {
            // A plug on its way into an outlet, over the button that is down.
            let at = middle - vec2(0.0, if holding.is_some() { 22.0 } else { 0.0 });
            let edge = Stroke::new(2.0, t::PRINT);
            let body = Rect::from_center_size(at - vec2(13.0, 0.0), vec2(17.0, 19.0));
            painter.rect_filled(body, CornerRadius::same(4), t::PRINT);
            for y in [-5.0, 5.0] {
                let from = pos2(body.right(), at.y + y);
                painter.line_segment([from, from + vec2(9.0, 0.0)], edge);
            }
            arrow(painter, &[at + vec2(9.0, 0.0), at + vec2(17.0, 0.0)], ink);
            let wall = Rect::from_center_size(at + vec2(22.0, 0.0), vec2(5.0, 28.0));
            painter.rect_filled(wall, CornerRadius::same(1), t::PRINT_QUIET);
            if let Some(button) = holding {
                let at = middle + vec2(0.0, 15.0);
                painter.circle(at, 14.0, t::PAPER_SHADE, Stroke::new(1.6, t::PRINT));
                glyph(painter, at, 6.0, button, t::PRINT);
                stays(painter, rect.translate(vec2(0.0, 12.0)));
            }
        }
        GestureStep::Pause { min_ms } => {
            for x in [-7.0, 7.0] {
                let bar = Rect::from_center_size(middle + vec2(x, 0.0), vec2(7.0, 30.0));
                painter.rect_filled(bar, CornerRadius::same(1), t::PRINT_ACCENT);
            }
            let least = format!("≥ {} s", f64::from(min_ms) / 1000.0);
            foot(painter, rect, texts.digits(least));
        }
        GestureStep::Together {
            buttons: (one, other),
            min_ms,
            max_ms,
            ..
        } => {
            for (button, x) in [(one, -20.0), (other, 20.0)] {
                button_tile(painter, middle + vec2(x, -5.0), button, true, ink);
            }
            stays(painter, rect);
            let seconds = |ms| f64::from(ms) / 1000.0;
            let range = format!("{}–{} s", seconds(min_ms), seconds(max_ms));
            foot(painter, rect, texts.digits(range));
        }
    }
}

pub(in crate::panels) fn entry(ui: &mut Ui, context: &PanelContext) {
    let board = &context.bench.job().board;
    let gesture = &board.gesture;
    let from_power = matches!(gesture.steps.first(), Some(GestureStep::PowerUp { .. }));
    ui.label(context.fixed(if from_power {
        "sheet-entry-before-power"
    } else {
        "sheet-entry-before"
    }));
    if let Some(from) = gesture.from {
        ui.label(context.with("sheet-entry-from", &[("position", Value::from(from))]));
    }
    let rows = gesture.steps.len().div_ceil(ABREAST).max(1);
    let abreast = gesture.steps.len().div_ceil(rows).max(1);
    let (rect, painter) = kit::canvas(ui, rows as f32 * (TILE + 6.0) - 6.0);
    let width = (rect.width() - 6.0 * (abreast as f32 - 1.0)) / abreast as f32;
    let width = width.min(108.0);
    for (i, step) in gesture.steps.iter().enumerate() {
        let place = vec2(
            (i % abreast) as f32 * (width + 6.0),
            (i / abreast) as f32 * (TILE + 6.0),
        );
        let tile_rect = Rect::from_min_size(rect.min + place, vec2(width, TILE));
        tile(
            &painter,
            tile_rect,
            step,
            board.panel.selector,
            context.texts,
        );
        let corner = tile_rect.min + vec2(6.0, 3.0);
        kit::write(
            &painter,
            corner.x,
            corner.y,
            Align2::LEFT_TOP,
            14.0,
            t::PRINT_QUIET,
            i + 1,
        );
    }
    for (i, step) in gesture.steps.iter().enumerate() {
        ui.label(format!("{}.  {}", i + 1, context.texts.gesture_step(step)));
    }
    for note in context.texts.gesture_notes(gesture) {
        ui.label(note);
    }
    ui.add_space(4.0);
    let within = Value::from(f64::from(gesture.within_ms) / 1000.0);
    let rest = Value::from(f64::from(gesture.rest_ms) / 1000.0);
    ui.label(
        RichText::new(context.with("sheet-entry-window", &[("seconds", within)]))
            .color(t::PRINT_ACCENT),
    );
    if from_power {
        ui.label(context.fixed("sheet-entry-again"));
    } else {
        ui.label(context.with("sheet-entry-rest", &[("seconds", rest)]));
    }
    if let Selector::Dial { .. } = board.panel.selector {
        ui.label(context.fixed("sheet-entry-skip"));
    }
    let both = needs_keeping(gesture);
    if both {
        ui.label(context.fixed("keep-how"));
    }
    ui.label(context.fixed("sheet-entry-click"));
    if let Some(way) = context.texts.out_of_hold(&board.resets) {
        ui.label(context.with("sheet-entry-hold", &[("way", Value::from(way))]));
    }
}
