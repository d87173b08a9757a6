//! The score, and the timing of each try at the entry gesture as a picture.

use super::coach::{coach_ui, onward_ui};
use super::control_suspicion::doubt_ui;
use super::customer::{call_back_ui, invoice_ui};
use super::examination::sealed_ui;
use super::misread::misread_ui;
use super::sheet::glyph;
use super::{PanelContext, kit};
use crate::state::say;
use crate::tokens as t;
use bevy_egui::egui::{
    self, Align2, Color32, CornerRadius, Painter, Pos2, Rect, RichText, Stroke, Ui, pos2, vec2,
};
use detent_content::Value;
use detent_simulation::controller::{GestureInput, LidMove, Outcome, Try};
use detent_simulation::units::{Span, Time};
use detent_training::lesson::{
    Deduction, DimensionScore, Loss, PASS_SAFETY_SHARE, PASS_SHARE, Score,
};
use detent_training::reason::Account;

pub(super) fn score_ui(ui: &mut Ui, context: &mut PanelContext) {
    if context.ui_state.is_under_examination() {
        sealed_ui(ui, context);
        return;
    }
    match context.bench.score() {
        None => {
            kit::card(ui, |ui| ui.label(context.text("score-not-yet")));
        }
        Some(score) => {
            total_ui(ui, context, score);
            coach_ui(ui, context);
            onward_ui(ui, context);
            invoice_ui(ui, context);
            call_back_ui(ui, context);
        }
    }
    let context = &*context;
    if let Some(score) = context.bench.score() {
        losses_ui(ui, context, score);
    }
    doubt_ui(ui, context);
    let tries = context.bench.view().machine.control.tries;
    if !tries.is_empty() {
        kit::card(ui, |ui| {
            kit::heading(ui, context.text("tries"));
            kit::quiet(ui, context.text("tries-intro"));
            for (n, one) in tries.iter().enumerate() {
                trace(ui, context, n + 1, one);
            }
        });
    }
}

/// What was won, and whether that is a pass.
pub(super) fn total_told(ui: &mut Ui, context: &PanelContext, score: &Score) {
    let args = [
        ("kept", Value::from(score.total().round())),
        ("of", Value::from(score.of().round())),
    ];
    let total = RichText::new(context.with("score-total", &args));
    ui.label(total.size(t::HEADING).color(t::AMBER));
}

/// The points that a loss cost, as they are written; with nothing left to lose, the reason still counts.
pub(super) fn points_lost(context: &PanelContext, loss: &Deduction) -> String {
    if loss.points > 0.05 {
        context.texts.digits(format!("−{:.1}", loss.points))
    } else {
        "−".to_owned()
    }
}

/// What was won, and on which side.
fn total_ui(ui: &mut Ui, context: &PanelContext, score: &Score) {
    kit::card(ui, |ui| {
        if let Some(failed) = score.failed_by() {
            let why = Value::from(context.texts.loss(&failed.loss));
            let words = context.with("score-failed", &[("why", why)]);
            ui.label(RichText::new(words).color(t::BAD).strong());
        }
        let total = context.with(
            "score-total",
            &[
                ("kept", Value::from(score.total().round())),
                ("of", Value::from(score.of().round())),
            ],
        );
        ui.label(RichText::new(total).size(28.0).color(t::AMBER));
        if score.failed_by().is_none() {
            let (key, colour, share) = if score.passed() {
                ("score-passed", t::GOOD, PASS_SHARE)
            } else if score.is_safe_enough() {
                ("score-not-passed", t::BAD, PASS_SHARE)
            } else {
                ("score-not-safe", t::BAD, PASS_SAFETY_SHARE)
            };
            let pass = Value::from((share * 100.0).round());
            let words = context.with(key, &[("percent", pass)]);
            ui.label(RichText::new(words).color(colour));
        }
        let goal = Value::from(say(context.ui_state.language, &context.bench.job().goal));
        kit::quiet(ui, context.with("score-goal", &[("goal", goal)]));
        for dimension in &score.dimensions {
            bar(ui, context, dimension);
        }
    });
}

/// Every lost point with its account.
fn losses_ui(ui: &mut Ui, context: &PanelContext, score: &Score) {
    kit::card(ui, |ui| {
        kit::heading(ui, context.text("score-losses"));
        let mut losses: Vec<(&Deduction, Option<&Account>)> = Vec::new();
        for side in &score.dimensions {
            for (place, loss) in side.lost.iter().enumerate() {
                let review = context.bench.review();
                let its = review.and_then(|r| r.account(side.dimension, place));
                losses.push((loss, its));
            }
        }
        losses.sort_by_key(|(loss, _)| loss.at);
        if losses.is_empty() {
            ui.label(context.text("score-none-lost"));
        }
        for (loss, account) in losses {
            lost(ui, context, loss, account);
        }
    });
}

fn bar(ui: &mut Ui, context: &PanelContext, dimension: &DimensionScore) {
    let (rect, painter) = kit::canvas(ui, 40.0);
    let name = context.text(&format!("dimension-{}", dimension.dimension));
    let points = format!("{:.0} / {:.0}", dimension.kept, dimension.of);
    kit::write(
        &painter,
        rect.left(),
        rect.top() + 2.0,
        Align2::LEFT_TOP,
        t::BODY,
        t::TEXT,
        name,
    );
    kit::write(
        &painter,
        rect.right(),
        rect.top() + 2.0,
        Align2::RIGHT_TOP,
        t::BODY,
        t::TEXT,
        points,
    );
    let whole = Rect::from_min_max(
        pos2(rect.left(), rect.bottom() - 14.0),
        pos2(rect.right(), rect.bottom() - 3.0),
    );
    painter.rect_filled(whole, CornerRadius::same(5), t::INK);
    let share = if dimension.of > 0.0 {
        (dimension.kept / dimension.of) as f32
    } else {
        1.0
    };
    let mut kept = whole;
    kept.set_width(whole.width() * share.clamp(0.0, 1.0));
    painter.rect_filled(
        kept,
        CornerRadius::same(5),
        if share >= 0.75 { t::GOOD } else { t::AMBER },
    );
}

fn lost(ui: &mut Ui, context: &PanelContext, loss: &Deduction, account: Option<&Account>) {
    let points = points_lost(context, loss);
    ui.horizontal_top(|ui| {
        ui.label(RichText::new(points).color(t::BAD).strong());
        ui.vertical(|ui| {
            ui.label(context.texts.loss(&loss.loss));
            if let Loss::Misread { noted, shown } = &loss.loss {
                misread_ui(ui, context, *noted, shown);
            }
            if let Some((account, review)) = account.zip(context.bench.review()) {
                let words = RichText::new(context.words(review).account(account)).size(t::SMALL);
                ui.label(words.color(t::SKY));
            }
            // As the ways beside it count: from the arrival on.
            let view = context.bench.view();
            let left_s = view.machine.time_s - loss.at.seconds();
            let minutes = (view.minutes - left_s / 60.0).max(0.0);
            let minutes = Value::from(format!("{minutes:.1}"));
            kit::quiet(ui, context.with("score-at", &[("minutes", minutes)]));
        });
    });
}

fn mark(painter: &Painter, at: Pos2, input: GestureInput, ink: Color32) {
    match input {
        GestureInput::Detent(way) => {
            let s = f32::from(way.sign());
            let points = [
                vec2(-3.5 * s, -5.0),
                vec2(4.5 * s, 0.0),
                vec2(-3.5 * s, 5.0),
            ]
            .map(|v| at + v);
            painter.add(egui::Shape::line(points.to_vec(), Stroke::new(2.2, ink)));
        }
        GestureInput::Down(button) => glyph(painter, at, 6.0, button, ink),
        GestureInput::Up(button) => {
            glyph(painter, at, 6.0, button, ink);
            glyph(painter, at, 3.4, button, t::INK);
        }
        GestureInput::PowerUp(_) => {
            let points = [
                vec2(2.0, -7.0),
                vec2(-3.5, 1.0),
                vec2(3.0, -0.5),
                vec2(-2.0, 7.0),
            ];
            let points = points.map(|v| at + v);
            painter.add(egui::Shape::line(points.to_vec(), Stroke::new(2.2, ink)));
        }
        GestureInput::Lid(way) => {
            let s = if way == LidMove::Up { 1.0 } else { -1.0 };
            let points = [
                at + vec2(-5.0, 4.0 * s),
                at + vec2(0.0, -4.0 * s),
                at + vec2(5.0, 4.0 * s),
            ];
            painter.add(egui::Shape::line(points.to_vec(), Stroke::new(2.2, ink)));
        }
    }
}

/// One try: time runs to the right, the whole window is shaded, each input is a mark with its own
/// window under it, and what broke is flagged.
fn trace(ui: &mut Ui, context: &PanelContext, number: usize, one: &Try) {
    let within = context.bench.job().board.gesture.within_ms;
    let (words, colour) = match one.outcome {
        Outcome::Entered => (context.text("try-entered"), t::GOOD),
        Outcome::Open => (context.text("try-open"), t::SKY),
        Outcome::Broken(broke) => (context.texts.broken_rule_by(broke), t::BAD),
        Outcome::InHold => (
            context.texts.try_in_hold(&context.bench.job().board.resets),
            t::AMBER,
        ),
    };
    let at = Time::ZERO + Span::from_s(u64::from(one.began_s));
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new(format!("{number}.")).color(t::AMBER));
        kit::quiet(ui, at.to_string());
        ui.label(RichText::new(words).color(colour));
    });
    let (rect, painter) = kit::canvas(ui, 84.0);
    kit::frame(&painter, rect, t::INK, t::LINE);
    let last = one
        .lines
        .iter()
        .map(|l| l.at_ms)
        .max()
        .unwrap_or(0)
        .max(within);
    let span = last as f32 * 1.06;
    let x = |ms: u32| rect.left() + 12.0 + (rect.width() - 24.0) * ms as f32 / span;
    let shade = Rect::from_min_max(
        pos2(x(0), rect.top() + 4.0),
        pos2(x(within), rect.bottom() - 22.0),
    );
    painter.rect_filled(shade, CornerRadius::same(3), t::SKY.gamma_multiply(0.16));
    let axis = rect.bottom() - 22.0;
    painter.line_segment(
        [pos2(x(0), axis), pos2(x(last), axis)],
        Stroke::new(1.0, t::EDGE),
    );
    for second in 0..=(last / 1000) {
        let sx = x(second * 1000);
        painter.line_segment(
            [pos2(sx, axis), pos2(sx, axis + 5.0)],
            Stroke::new(1.0, t::EDGE),
        );
        kit::write(
            &painter,
            sx,
            rect.bottom() - 1.0,
            Align2::CENTER_BOTTOM,
            13.0,
            t::QUIET,
            second,
        );
    }
    for line in &one.lines {
        let lx = x(line.at_ms);
        let (y, own) = (rect.top() + 24.0, rect.top() + 46.0);
        if line.from_ms > 0 {
            painter.line_segment(
                [
                    pos2(x(line.from_ms), own),
                    pos2(x(line.until_ms.min(last)), own),
                ],
                Stroke::new(4.0, t::SKY),
            );
        }
        let ink = if line.broke.is_some() {
            t::BAD
        } else {
            t::TEXT
        };
        if let Some(input) = line.got {
            mark(&painter, pos2(lx, y), input, ink);
        }
        painter.line_segment(
            [pos2(lx, y + 10.0), pos2(lx, axis)],
            Stroke::new(1.0, ink.gamma_multiply(0.7)),
        );
        if line.broke.is_some() {
            let flag = [
                pos2(lx, rect.top() + 4.0),
                pos2(lx + 12.0, rect.top() + 8.0),
                pos2(lx, rect.top() + 12.0),
            ];
            painter.add(egui::Shape::convex_polygon(
                flag.to_vec(),
                t::BAD,
                Stroke::NONE,
            ));
            painter.line_segment(
                [pos2(lx, rect.top() + 4.0), pos2(lx, axis)],
                Stroke::new(2.0, t::BAD),
            );
        }
    }
}
