//! The gesture along the time: a lane for each step, from the earliest moment at which it can begin to the latest at
//! which it must have ended.

use crate::panels::kit;
use crate::tokens as t;
use bevy_egui::egui::{Align2, CornerRadius, Rect, Stroke, Ui, pos2};
use detent_content::Texts;
use detent_simulation::controller::{Gesture, GestureStep};

/// Height of a lane, and of the axis below, points.
const LANE: f32 = 20.0;
const AXIS: f32 = 24.0;
/// Room for the numbers of the steps.
const NAMES: f32 = 26.0;

/// When a step can be done, ms since the first input.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Span {
    /// The earliest moment at which it can begin.
    pub from_ms: u32,
    /// So long it takes at least.
    pub least_ms: u32,
    /// The latest moment at which it must have ended.
    pub until_ms: u32,
}

/// When each step can be done. A step without a window of its own has all the time that is left.
pub(super) fn spans(gesture: &Gesture) -> Vec<Span> {
    let within_ms = gesture.within_ms;
    let (mut from_ms, mut latest_ms) = (0_u32, 0_u32);
    let span = |step: &GestureStep| {
        let least_ms = match *step {
            GestureStep::Hold { min_ms, .. }
            | GestureStep::Release { min_ms, .. }
            | GestureStep::Pause { min_ms }
            | GestureStep::Together { min_ms, .. } => min_ms,
            GestureStep::Turn { .. }
            | GestureStep::Press { .. }
            | GestureStep::Push { .. }
            | GestureStep::Lid { .. }
            | GestureStep::PowerUp { .. } => 0,
        };
        latest_ms = match (step, step.window_ms()) {
            // The time begins with it.
            (GestureStep::PowerUp { .. }, _) => latest_ms,
            (_, Some(window_ms)) => latest_ms.saturating_add(window_ms),
            (_, None) => within_ms,
        };
        latest_ms = latest_ms.min(within_ms);
        let span = Span {
            from_ms,
            least_ms,
            until_ms: latest_ms,
        };
        from_ms = from_ms.saturating_add(least_ms);
        span
    };
    gesture.steps.iter().map(span).collect()
}

/// Draws it; the chosen step stands out.
pub(super) fn timeline_ui(ui: &mut Ui, texts: &Texts, gesture: &Gesture, chosen: usize) {
    let lanes = gesture.steps.len() as f32;
    let (rect, painter) = kit::canvas(ui, lanes * LANE + AXIS);
    let whole_ms = gesture.within_ms.max(1) as f32;
    let (left, right) = (rect.left() + NAMES, rect.right() - 14.0);
    let x = |ms: u32| left + (right - left) * (ms as f32 / whole_ms).min(1.0);
    let low = rect.bottom() - AXIS;
    // About six marks, on whole seconds.
    let every_s = (gesture.within_ms / 6_000).max(1);
    for second in (0..=gesture.within_ms / 1000).step_by(every_s as usize) {
        let at = x(second * 1000);
        let line = [pos2(at, rect.top()), pos2(at, low + 4.0)];
        painter.line_segment(line, Stroke::new(1.0, t::LINE));
        let told = texts.digits(format!("{second} s"));
        kit::write(
            &painter,
            at,
            low + 5.0,
            Align2::CENTER_TOP,
            t::SMALL,
            t::QUIET,
            told,
        );
    }
    for (n, span) in spans(gesture).into_iter().enumerate() {
        let middle = rect.top() + LANE * (n as f32 + 0.5);
        let ink = if n == chosen { t::AMBER } else { t::SKY };
        kit::write(
            &painter,
            rect.left() + 4.0,
            middle,
            Align2::LEFT_CENTER,
            t::SMALL,
            ink,
            n + 1,
        );
        let bar = |from: f32, to: f32| {
            let to = to.max(from + 3.0);
            Rect::from_x_y_ranges(from..=to, middle - 6.0..=middle + 6.0)
        };
        let corner = CornerRadius::same(3);
        let (from, until) = (x(span.from_ms), x(span.until_ms));
        painter.rect_filled(bar(from, until), corner, ink.gamma_multiply(0.35));
        let held = x(span.from_ms.saturating_add(span.least_ms));
        painter.rect_filled(bar(from, held.min(until.max(from))), corner, ink);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use detent_simulation::interface::Button;

    #[test]
    fn a_step_has_its_window_or_all_the_time_that_is_left() {
        let button = Button::Stop;
        let gesture = Gesture {
            within_ms: 12_000,
            steps: vec![
                GestureStep::PowerUp {
                    holding: Some(button),
                    standing: None,
                },
                GestureStep::Release {
                    button,
                    min_ms: 1_500,
                    window_ms: Some(3_000),
                },
                GestureStep::Pause { min_ms: 2_000 },
                GestureStep::Press {
                    button,
                    times: 2,
                    max_ms: 800,
                    window_ms: Some(4_000),
                },
            ],
            ..Gesture::default()
        };
        let told: Vec<(u32, u32, u32)> = (spans(&gesture).iter())
            .map(|span| (span.from_ms, span.least_ms, span.until_ms))
            .collect();
        let expected = [
            (0, 0, 0),
            (0, 1_500, 3_000),
            (1_500, 2_000, 12_000),
            (3_500, 0, 12_000),
        ];
        assert_eq!(told, expected);
    }
}
