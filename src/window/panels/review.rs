//! Two ways through a finished job side by side: what each deed made likely, and what it cost.

use super::{PanelContext, kit};
use crate::tokens as t;
use bevy_egui::egui::{
    self, Align2, Color32, CornerRadius, Frame, Margin, Painter, Pos2, Rect, RichText, ScrollArea,
    Stroke, Ui, pos2, vec2,
};
use detent_content::{Value, Words};
use detent_training::reason::{PathPoint, PlanStep, Review};

/// Causes that have a colour of their own beside those that the machine had.
const RIVALS: usize = 4;
/// A cause is worth a colour once it was at least this likely.
const LEAST: f64 = 0.05;
/// Height of a bar, of the picture of costs.
const BAR: f32 = 20.0;
const COSTS: f32 = 132.0;

/// A cause with its colour, and the letter that stands in its part of a bar.
struct Cause {
    hypothesis: usize,
    colour: Color32,
    letter: char,
}

/// The causes to be told apart, those that the machine had first.
fn causes(review: &Review) -> Vec<Cause> {
    let stops = || review.yours.iter().chain(&review.best);
    let highest = |h: &usize| stops().map(|s| s.shares[*h]).fold(0.0, f64::max);
    let last = review.best.last().map(|s| &s.shares);
    let truth = |h: &usize| last.is_some_and(|shares| shares[*h] > 0.99);
    let mut all: Vec<usize> = (0..=review.modes.len()).collect();
    all.sort_by(|a, b| highest(b).total_cmp(&highest(a)).then(a.cmp(b)));
    let (had, others): (Vec<usize>, Vec<usize>) = all.into_iter().partition(truth);
    let others = others.into_iter().filter(|h| highest(h) >= LEAST);
    let others = others.take(RIVALS).zip(t::CAUSES);
    let had = had.into_iter().map(|h| (h, t::GOOD));
    had.chain(others)
        .zip('A'..)
        .map(|((hypothesis, colour), letter)| Cause {
            hypothesis,
            colour,
            letter,
        })
        .collect()
}

/// Fills the room that the scene leaves.
pub(super) fn review_ui(ui: &mut Ui, room: Rect, context: &PanelContext) {
    let frame = Frame::new()
        .fill(t::PANEL)
        .inner_margin(Margin::symmetric(12, 8));
    let mut ui = ui.new_child(egui::UiBuilder::new().max_rect(room));
    frame.show(&mut ui, |ui| {
        ui.set_min_size(ui.available_size());
        let Some(review) = context.bench.review() else {
            let key = if context.bench.is_reviewing() {
                "review-working"
            } else {
                "review-none"
            };
            kit::quiet(ui, context.text(key));
            return;
        };
        ScrollArea::vertical()
            .id_salt("review")
            .auto_shrink(false)
            .show(ui, |ui| ways(ui, context, review));
    });
}

fn ways(ui: &mut Ui, context: &PanelContext, review: &Review) {
    let words = context.words(review);
    let causes = causes(review);
    kit::heading(ui, context.text("review-title"));
    costs(ui, context, review);
    kit::quiet(ui, context.text("review-intro"));
    let named = (causes.iter()).map(|c| (Some(c), words.hypothesis(c.hypothesis)));
    ui.scope(|ui| {
        ui.spacing_mut().interact_size.y = BAR;
        ui.spacing_mut().item_spacing.y = 3.0;
        for (cause, name) in named.chain([(None, context.text("review-others"))]) {
            ui.horizontal(|ui| {
                let (rect, _) = ui.allocate_exact_size(vec2(BAR, BAR), egui::Sense::hover());
                match cause {
                    Some(cause) => part(ui.painter(), rect, cause),
                    None => {
                        let painter = ui.painter();
                        painter.rect_filled(rect, CornerRadius::same(3), t::LINE);
                    }
                }
                ui.add(egui::Label::new(name).wrap());
            });
        }
    });
    ui.add_space(4.0);
    ui.columns(2, |columns| {
        let both = [
            ("review-yours", &review.yours),
            ("review-best", &review.best),
        ];
        for (ui, (key, way)) in columns.iter_mut().zip(both) {
            // Columns would stretch each line to their width.
            ui.with_layout(egui::Layout::top_down(egui::Align::Min), |ui| {
                kit::heading(ui, context.text(key));
                for stop in way {
                    one(ui, context, &words, stop, &causes);
                }
            });
        }
    });
}

/// A deed with its bar.
fn one(ui: &mut Ui, context: &PanelContext, words: &Words<'_>, stop: &PathPoint, causes: &[Cause]) {
    ui.add_space(4.0);
    ui.add(egui::Label::new(words.deed(&stop.deed)).wrap());
    // Where a part was ordered, a test that would have been better is worth naming.
    if let Some(step) = stop.sound.filter(|step| matches!(step, PlanStep::Test(_))) {
        let step = Value::from(words.step(step));
        let text = context.with("review-sound", &[("step", step)]);
        ui.add(egui::Label::new(RichText::new(text).size(t::SMALL).color(t::SKY)).wrap());
    }
    let (rect, painter) = kit::canvas(ui, BAR);
    bar(&painter, rect, &stop.shares, causes);
    kit::quiet(ui, cost_so_far(context, stop));
}

/// Work and money up to here, in words.
fn cost_so_far(context: &PanelContext, stop: &PathPoint) -> String {
    let args = [
        ("minutes", Value::from(format!("{:.0}", stop.minutes))),
        ("money", Value::from(context.texts.whole_money(stop.money))),
    ];
    context.with("review-stop", &args)
}

/// Shares of belief from left to right.
fn bar(painter: &Painter, rect: Rect, shares: &[f64], causes: &[Cause]) {
    painter.rect_filled(rect, CornerRadius::same(3), t::LINE);
    let mut left = rect.left();
    for cause in causes {
        let width = rect.width() * shares[cause.hypothesis] as f32;
        let share = Rect::from_min_size(pos2(left, rect.top()), vec2(width, rect.height()));
        part(painter, share, cause);
        left += width;
    }
}

fn part(painter: &Painter, rect: Rect, cause: &Cause) {
    if rect.width() < 1.0 {
        return;
    }
    painter.rect_filled(rect, CornerRadius::same(3), cause.colour);
    if rect.width() >= 14.0 {
        let Pos2 { x, y } = rect.center();
        let ink = t::ON_AMBER;
        kit::write(
            painter,
            x,
            y,
            Align2::CENTER_CENTER,
            t::SMALL,
            ink,
            cause.letter,
        );
    }
}

/// Cost so far over work, both ways.
fn costs(ui: &mut Ui, context: &PanelContext, review: &Review) {
    let (rect, painter) = kit::canvas(ui, COSTS);
    kit::frame(&painter, rect, t::INK, t::LINE);
    let stops = || review.yours.iter().chain(&review.best);
    let most = |of: fn(&PathPoint) -> f64| stops().map(of).fold(1.0, f64::max) as f32;
    let (minutes, money) = (most(|s| s.minutes), most(|s| s.money));
    let plot = Rect::from_min_max(rect.min + vec2(14.0, 30.0), rect.max - vec2(14.0, 28.0));
    let at = |stop: &PathPoint| {
        pos2(
            plot.left() + plot.width() * stop.minutes as f32 / minutes,
            plot.bottom() - plot.height() * stop.money as f32 / money,
        )
    };
    painter.line_segment(
        [plot.left_bottom(), plot.right_bottom()],
        Stroke::new(1.0, t::EDGE),
    );
    let title = context.text("review-cost");
    let (left, top) = (rect.left() + 10.0, rect.top() + 5.0);
    kit::write(
        &painter,
        left,
        top,
        Align2::LEFT_TOP,
        t::SMALL,
        t::QUIET,
        title,
    );
    let both = [
        (
            &review.best,
            t::GOOD,
            "review-best",
            Align2::LEFT_BOTTOM,
            rect.left() + 10.0,
        ),
        (
            &review.yours,
            t::AMBER,
            "review-yours",
            Align2::RIGHT_BOTTOM,
            rect.right() - 10.0,
        ),
    ];
    for (way, colour, key, anchor, x) in both {
        let mut points: Vec<Pos2> = Vec::new();
        for stop in way {
            // Money is spent at the end of a deed.
            if let Some(last) = points.last() {
                points.push(pos2(at(stop).x, last.y));
            }
            points.push(at(stop));
        }
        painter.add(egui::Shape::line(points, Stroke::new(2.5, colour)));
        if let Some(end) = way.last() {
            painter.circle_filled(at(end), 4.5, colour);
            let sum = cost_so_far(context, end);
            let text = format!("{}: {sum}", context.text(key));
            kit::write(
                &painter,
                x,
                rect.bottom() - 4.0,
                anchor,
                t::SMALL,
                colour,
                text,
            );
        }
    }
}
