//! "Is the control bad, or is it my hand?": the odds after each failed try, between Wald's two bounds.

use super::{PanelContext, kit};
use crate::tokens as t;
use bevy_egui::egui::{Align2, CornerRadius, Rect, Shape, Stroke, Ui, pos2, vec2};
use detent_content::Value;

/// Beyond a bound by this much, as logarithm of odds, nothing more is drawn.
const MARGIN: f64 = 2.0;

pub(super) fn doubt_ui(ui: &mut Ui, context: &PanelContext) {
    let Some(control_suspicion) = context
        .bench
        .control_suspicion()
        .filter(|d| d.log_odds.len() > 1)
    else {
        return;
    };
    kit::card(ui, |ui| {
        kit::heading(ui, context.text("doubt"));
        let (rect, painter) = kit::canvas(ui, 150.0);
        kit::frame(&painter, rect, t::INK, t::LINE);
        let plot = rect.shrink2(vec2(16.0, 12.0));
        let (least, most) = (
            control_suspicion
                .log_odds
                .iter()
                .copied()
                .fold(control_suspicion.lower, f64::min)
                - MARGIN,
            control_suspicion
                .log_odds
                .iter()
                .copied()
                .fold(control_suspicion.upper, f64::max)
                + MARGIN,
        );
        let (least, most) = (
            least.max(control_suspicion.lower - 8.0),
            most.min(control_suspicion.upper + 8.0),
        );
        let y = |log: f64| {
            let share = ((log.clamp(least, most) - least) / (most - least)) as f32;
            plot.bottom() - share * plot.height()
        };
        let zone = |from: f64, to: f64| {
            Rect::from_min_max(pos2(plot.left(), y(to)), pos2(plot.right(), y(from)))
        };
        let shade = CornerRadius::same(3);
        painter.rect_filled(
            zone(control_suspicion.upper, most),
            shade,
            t::BAD.gamma_multiply(0.22),
        );
        painter.rect_filled(
            zone(least, control_suspicion.lower),
            shade,
            t::GOOD.gamma_multiply(0.18),
        );
        for (bound, colour, key, anchor, off) in [
            (
                control_suspicion.upper,
                t::BAD,
                "doubt-control",
                Align2::LEFT_BOTTOM,
                -2.0,
            ),
            (
                control_suspicion.lower,
                t::GOOD,
                "doubt-hand",
                Align2::LEFT_TOP,
                2.0,
            ),
        ] {
            let ends = [pos2(plot.left(), y(bound)), pos2(plot.right(), y(bound))];
            painter.extend(Shape::dashed_line(
                &ends,
                Stroke::new(1.5, colour),
                6.0,
                4.0,
            ));
            let (x, y) = (plot.left() + 6.0, y(bound) + off);
            kit::write(&painter, x, y, anchor, t::SMALL, colour, context.text(key));
        }
        let step = plot.width() / control_suspicion.log_odds.len() as f32;
        let at = |n: usize, log: f64| pos2(plot.left() + (n as f32 + 0.5) * step, y(log));
        let points: Vec<_> = (control_suspicion.log_odds.iter().enumerate())
            .map(|(n, log)| at(n, *log))
            .collect();
        painter.add(Shape::line(points.clone(), Stroke::new(2.0, t::AMBER)));
        for point in &points {
            painter.circle_filled(*point, 4.0, t::AMBER);
        }
        let last = control_suspicion.log_odds.last().copied().unwrap_or(0.0);
        let share = 100.0 / (1.0 + (-last).exp());
        let (key, tries) = if control_suspicion.cleared {
            ("doubt-cleared", control_suspicion.log_odds.len() - 1)
        } else if last >= control_suspicion.upper {
            ("doubt-suspect", control_suspicion.log_odds.len() - 1)
        } else {
            ("doubt-go-on", control_suspicion.log_odds.len() - 1)
        };
        let share = format!("{share:.*}", usize::from(share < 10.0));
        let args = [("tries", Value::from(tries)), ("share", Value::from(share))];
        ui.label(context.with(key, &args));
        let [newcomer, practised] = control_suspicion.needed;
        let args = [
            ("newcomer", Value::from(newcomer)),
            ("practised", Value::from(practised)),
        ];
        kit::quiet(ui, context.with("doubt-needed", &args));
        let hand = control_suspicion.hand;
        if hand.tries > 0 {
            let args = [
                ("entered", Value::from(hand.entered)),
                ("tries", Value::from(hand.tries)),
                ("needed", Value::from(control_suspicion.needed_of_hand)),
            ];
            kit::quiet(ui, context.with("doubt-own", &args));
        }
        kit::quiet(ui, context.text("doubt-intro"));
    });
}
