//! A misread code, lamp by lamp: what the lamps had shown beside what was noted.

use super::sheet::{in_turn, picture};
use super::{PanelContext, kit};
use crate::scene::console::lamps::colour_of;
use crate::tokens as t;
use bevy_egui::egui::{Align2, CornerRadius, Painter, Rect, Stroke, Ui, pos2, vec2};
use detent_content::Value;
use detent_simulation::controller::Signs;
use detent_simulation::units::Span;

/// Draws the number noted under the one shown that differs from it least.
pub(super) fn misread_ui(ui: &mut Ui, context: &PanelContext, noted: u8, shown: &[u8]) {
    let signs = &context.bench.job().board.lamps.signs;
    let lit = |number| signs.lit(number, Span::ZERO);
    let apart = |number: &u8| match signs {
        // At any one moment the lamps look the same for many: the digits differ.
        Signs::Flashes { .. } | Signs::InTurn { .. } => {
            u32::from(number / 10).abs_diff(u32::from(noted / 10))
                + u32::from(number % 10).abs_diff(u32::from(noted % 10))
        }
        _ => (lit(*number) ^ lit(noted)).count_ones(),
    };
    let shown = shown.iter().copied().min_by_key(apart);
    let wrong = match signs {
        Signs::InTurn { .. } => 0,
        _ => shown.map_or(0, |shown| lit(shown) ^ lit(noted)),
    };
    for (number, key) in shown
        .map(|shown| (shown, "misread-shown"))
        .into_iter()
        .chain([(noted, "misread-noted")])
    {
        let (rect, painter) = kit::canvas(ui, 54.0);
        kit::frame(&painter, rect, t::GLASS, t::LINE);
        let text = context.with(key, &[("code", Value::from(format!("{number:02}")))]);
        let (x, y) = (rect.left() + 10.0, rect.center().y);
        kit::write(&painter, x, y, Align2::LEFT_CENTER, t::SMALL, t::TEXT, text);
        let lamps = Rect::from_min_max(
            pos2(rect.left() + rect.width() * 0.42, rect.top() + 3.0),
            rect.max - vec2(8.0, 3.0),
        );
        match signs {
            Signs::Flashes { .. } => flashes(&painter, lamps, signs, number),
            Signs::InTurn { .. } => {
                let placement = &context.bench.job().board.lamps.placement;
                in_turn(&painter, lamps, signs, placement, number);
            }
            _ => {
                picture(&painter, lamps, signs, lit(number));
                flag(&painter, lamps, signs, wrong);
            }
        }
    }
    let differing = if shown.is_some() && wrong != 0 {
        context.with(
            "misread-lamps",
            &[("count", Value::from(wrong.count_ones()))],
        )
    } else {
        context.text("misread-count")
    };
    kit::quiet(ui, differing);
}

/// A bar under each lamp that differs; seven segments are compared by eye.
fn flag(painter: &Painter, rect: Rect, signs: &Signs, wrong: u16) {
    let places: Vec<(f32, u8)> = match signs {
        Signs::Weights { tens, units } => {
            let xs = super::sheet::weighted(rect, tens.len(), units.len());
            let count = xs.len() as u8;
            xs.into_iter().zip((0..count).rev()).collect()
        }
        Signs::Pictures { lamps, .. } => (0..*lamps)
            .map(|n| {
                let share = (f32::from(n) + 0.5) / f32::from(*lamps);
                (rect.left() + rect.width() * share, *lamps - 1 - n)
            })
            .collect(),
        _ => Vec::new(),
    };
    for (x, bit) in places {
        if wrong & (1 << bit) != 0 {
            let y = rect.bottom() - 3.0;
            let ends = [pos2(x - 7.0, y), pos2(x + 7.0, y)];
            painter.line_segment(ends, Stroke::new(3.0, t::BAD));
        }
    }
}

/// Flashes as blocks: time runs to the right.
fn flashes(painter: &Painter, rect: Rect, signs: &Signs, number: u8) {
    // As long as the longest number that is ever counted here, so that two strips have one scale.
    let longest: u64 = signs.flashes(55).map(|(_, span)| span.0).sum();
    let x = |ticks: u64| rect.left() + rect.width() * (ticks as f32 / longest as f32).min(1.0);
    let mut at = 0;
    for (on, span) in signs.flashes(number) {
        if on {
            let block = Rect::from_min_max(
                pos2(x(at), rect.top() + 12.0),
                pos2(x(at + span.0).max(x(at) + 1.5), rect.bottom() - 12.0),
            );
            painter.rect_filled(block, CornerRadius::same(1), colour_of(signs));
        }
        at += span.0;
    }
}
