//! The charts themselves.

use super::kit;
use crate::panels::plots::{marks, plot};
use crate::tokens as t;
use bevy_egui::egui::{
    Align2, Color32, CornerRadius, Rect, RichText, Stroke, StrokeKind, Ui, pos2, vec2,
};
use chrono::Datelike;
use detent_content::{Texts, Value};
use detent_training::practice::review::DAY_S;
use detent_training::practice::{Confusion, DayRhythm, Learner, Moment};
use egui_plot::{GridMark, Line, LineStyle, PlotPoint, PlotPoints, Points, Text};

/// How far the forgetting curves look ahead, days.
const AHEAD_DAYS: u32 = 30;

/// Colour of the n-th skill; its number tells it apart as well.
fn ink(n: usize) -> Color32 {
    let inks = [
        t::AMBER,
        t::SKY,
        t::GOOD,
        t::BAD,
        t::TEXT,
        t::LAMP_RING,
        t::STATUS_LIT,
        t::LOCK_LIT,
    ];
    inks[n % inks.len()]
}

/// One drawn curve: the skills that share it, and its points in days and %.
pub(super) struct Curve {
    skills: Vec<usize>,
    points: Vec<[f64; 2]>,
}

impl Curve {
    fn ink(&self) -> Color32 {
        ink(self.skills[0])
    }

    /// The numbers of its skills.
    fn numbers(&self) -> String {
        let numbers: Vec<String> = self.skills.iter().map(|n| (n + 1).to_string()).collect();
        numbers.join(", ")
    }

    /// Where it ends, %.
    fn end(&self) -> f64 {
        self.points.last().map_or(0.0, |point| point[1])
    }
}

/// Curves nearer to one another than this everywhere are drawn as one, %.
const SAME_CURVE: f64 = 3.0;

/// Curves that the eye cannot tell apart, drawn once with all their skills.
fn told_apart(curves: Vec<(usize, Vec<[f64; 2]>)>) -> Vec<Curve> {
    let mut groups: Vec<Curve> = Vec::new();
    for (n, points) in curves {
        let same = groups.iter_mut().find(|curve| {
            let mut pairs = curve.points.iter().zip(&points);
            pairs.all(|(a, b)| (a[1] - b[1]).abs() < SAME_CURVE)
        });
        match same {
            Some(curve) => curve.skills.push(n),
            None => groups.push(Curve {
                skills: vec![n],
                points,
            }),
        }
    }
    groups
}

/// How likely each practised skill will be known over the coming days, from what is known now, %.
pub(super) fn retention_curves(learner: &Learner, now: Moment) -> Vec<Curve> {
    let practised = learner.standings().iter().filter_map(|standing| {
        let curve = standing.forgetting_curve(now, AHEAD_DAYS)?;
        let points = curve.into_iter().map(|(days, known)| [days, 100.0 * known]);
        Some((standing.skill().index(), points.collect()))
    });
    told_apart(practised.collect())
}

/// Colour of a skill: its curve's, which it may share.
pub(super) fn curve_ink(curves: &[Curve], n: usize) -> Color32 {
    let of = curves.iter().find(|curve| curve.skills.contains(&n));
    of.map_or(ink(n), Curve::ink)
}

/// Heights for labels that would stand at `wanted`: as near to them as `apart` from one to the next allows, within
/// 0 and 100, in the order of `wanted`.
fn spread(wanted: &[f64], apart: f64) -> Vec<f64> {
    let mut order: Vec<usize> = (0..wanted.len()).collect();
    order.sort_by(|a, b| wanted[*a].total_cmp(&wanted[*b]));
    let mut heights = wanted.to_vec();
    let mut least = 0.0_f64;
    for n in &order {
        heights[*n] = heights[*n].max(least);
        least = heights[*n] + apart;
    }
    let mut most = 100.0_f64;
    for n in order.iter().rev() {
        heights[*n] = heights[*n].min(most);
        most = heights[*n] - apart;
    }
    heights
}

/// The curves, each with its numbers behind its end, where no curve runs through them.
pub(super) fn retention(ui: &mut Ui, curves: &[Curve], axis: String, texts: &Texts) {
    let numbers = curves.iter().map(|curve| kit::width(ui, &curve.numbers()));
    let numbers = f64::from(numbers.fold(0.0_f32, f32::max)) + 12.0;
    let days = f64::from(AHEAD_DAYS);
    // The axes take the rest of the room.
    let across = (f64::from(ui.available_width()) - 60.0 - numbers).max(100.0);
    let high = (f64::from(ui.available_height()) - 50.0).max(60.0);
    let behind = days * numbers / across;
    let line = 100.0 * f64::from(t::BODY) / high;
    let ends: Vec<f64> = curves.iter().map(Curve::end).collect();
    let heights = spread(&ends, line);
    let step = if ui.available_width() > 500.0 {
        5.0
    } else {
        10.0
    };
    let chart = plot("retention")
        .x_axis_label(axis)
        .include_x(0.0)
        .include_x(days + behind)
        .include_y(0.0)
        .include_y(100.0)
        .x_grid_spacer(move |input| {
            let mut marks = marks(input, step);
            marks.retain(|mark| mark.value <= days);
            marks
        })
        .y_grid_spacer(|input| marks(input, 20.0))
        .y_axis_formatter(|mark: GridMark, _| texts.percent(mark.value / 100.0, 0));
    kit::looked_at(ui, |ui| {
        chart.show(ui, |plot| {
            for (curve, height) in curves.iter().zip(heights) {
                let n = curve.skills[0];
                let style = match n % 3 {
                    0 => LineStyle::Solid,
                    1 => LineStyle::dashed_loose(),
                    _ => LineStyle::dotted_dense(),
                };
                let line = Line::new(format!("skill {n}"), curve.points.clone());
                plot.line(line.color(curve.ink()).width(2.0).style(style));
                let text = RichText::new(curve.numbers()).size(t::BODY);
                let spot = PlotPoint::new(days + behind * 6.0 / numbers, height);
                let text = Text::new(format!("numbers {n}"), spot, text.color(curve.ink()));
                plot.text(text.anchor(Align2::LEFT_CENTER));
            }
        })
    });
}

/// Mean time from step to step on each practice day, with its spread up and down.
pub(super) fn rhythm(ui: &mut Ui, days: &[DayRhythm], texts: &Texts) {
    let dates: Vec<String> = days.iter().map(|one| date(one.day, texts)).collect();
    let label = move |mark: GridMark, _: &std::ops::RangeInclusive<f64>| {
        let whole = (mark.value - mark.value.round()).abs() < 1e-6 && mark.value >= 0.0;
        let name = dates.get(mark.value.round() as usize).filter(|_| whole);
        name.cloned().unwrap_or_default()
    };
    let last = days.len().saturating_sub(1) as f64;
    // A date needs about so much room.
    let named = (f64::from(ui.available_width()) / 90.0).max(1.0);
    let chart = plot("rhythm")
        .include_y(0.0)
        .include_x(-0.5)
        .include_x(last + 0.5)
        .x_axis_formatter(label)
        .x_grid_spacer(move |input| {
            let days = input.bounds.1 - input.bounds.0;
            marks(input, (days / named).ceil().max(1.0))
        });
    kit::looked_at(ui, |ui| {
        chart.show(ui, |plot| {
            for (n, day) in days.iter().enumerate() {
                let x = n as f64;
                let ends = [
                    [x, (day.mean_ms - day.spread_ms).max(0.0)],
                    [x, day.mean_ms + day.spread_ms],
                ];
                let spread = Line::new(format!("spread {n}"), PlotPoints::from(ends.to_vec()));
                plot.line(spread.color(t::SKY).width(5.0));
            }
            let means: Vec<[f64; 2]> = days
                .iter()
                .enumerate()
                .map(|(n, day)| [n as f64, day.mean_ms])
                .collect();
            let line = Line::new("mean line", PlotPoints::from(means.clone()));
            plot.line(line.color(t::AMBER).width(1.5));
            let points = Points::new("mean", PlotPoints::from(means));
            plot.points(points.color(t::AMBER).radius(4.5));
        })
    });
}

/// Day and month, as the language writes them.
fn date(day: i64, texts: &Texts) -> String {
    let date = chrono::DateTime::from_timestamp(day * DAY_S, 0).unwrap_or_default();
    let args = [
        ("day", Value::from(date.day())),
        ("month", Value::from(date.month())),
    ];
    texts.with("practice-chart-date", &args)
}

/// A grid of counts: a row for each digit shown, a column for each digit read.
pub(super) fn confusion(ui: &mut Ui, confusion: &Confusion, shown: &str, read: &str) {
    let (rect, painter) = kit::canvas(ui, ui.available_height());
    let (head, side) = (20.0, 92.0);
    let cell = vec2(
        (rect.width() - side) / 10.0,
        (rect.height() - head).max(10.0) / 10.0,
    );
    let at = |row: usize, column: usize| {
        let x = rect.left() + side + column as f32 * cell.x;
        let y = rect.top() + head + row as f32 * cell.y;
        Rect::from_min_size(pos2(x, y), cell)
    };
    let write = |x, y, anchor, colour, text: String| {
        kit::write(&painter, x, y, anchor, t::SMALL, colour, text);
    };
    let corner = rect.left_top();
    write(
        corner.x,
        corner.y + head,
        Align2::LEFT_TOP,
        t::QUIET,
        shown.to_owned(),
    );
    write(
        rect.left() + side - 10.0,
        corner.y,
        Align2::RIGHT_TOP,
        t::QUIET,
        read.to_owned(),
    );
    for digit in 0..10 {
        let (row, column) = (at(digit, 0), at(0, digit));
        let name = digit.to_string();
        let x = rect.left() + side - 10.0;
        write(
            x,
            row.center().y,
            Align2::RIGHT_CENTER,
            t::TEXT,
            name.clone(),
        );
        write(
            column.center().x,
            corner.y,
            Align2::CENTER_TOP,
            t::TEXT,
            name,
        );
    }
    for row in 0..10 {
        let all = confusion.shown(row).max(1) as f32;
        for column in 0..10 {
            let count = confusion.count(row, column);
            let share = count as f32 / all;
            let place = at(row, column).shrink(1.0);
            let hue = if row == column { t::GOOD } else { t::BAD };
            // A shade that text still stands out from.
            let fill = t::INK.lerp_to_gamma(hue, 0.5 * share.sqrt());
            painter.rect(
                place,
                CornerRadius::same(3),
                fill,
                Stroke::new(1.0, t::LINE),
                StrokeKind::Inside,
            );
            if count > 0 {
                let middle = place.center();
                write(
                    middle.x,
                    middle.y,
                    Align2::CENTER_CENTER,
                    t::TEXT,
                    count.to_string(),
                );
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use detent_content::Language;

    #[test]
    fn labels_stand_apart_and_within_the_chart() {
        for wanted in [
            vec![50.0, 50.0, 50.0, 51.0],
            vec![2.0, 0.0, 1.0],
            vec![99.0, 98.0, 100.0, 40.0],
        ] {
            let mut heights = spread(&wanted, 8.0);
            // The order of the curves stays that of their numbers.
            for (n, a) in wanted.iter().enumerate() {
                for (m, b) in wanted.iter().enumerate() {
                    assert!(a >= b || heights[n] < heights[m], "{wanted:?}: {heights:?}");
                }
            }
            heights.sort_by(f64::total_cmp);
            assert!(heights[0] >= 0.0 && heights[heights.len() - 1] <= 100.0);
            let gaps = heights.windows(2).map(|pair| pair[1] - pair[0]);
            gaps.for_each(|gap| assert!(gap > 8.0 - 1e-9, "{wanted:?}: {heights:?}"));
        }
        assert_eq!(spread(&[10.0, 90.0], 8.0), [10.0, 90.0]);
    }

    #[test]
    fn a_day_is_written_as_the_language_writes_it() {
        let day = chrono::NaiveDate::from_ymd_opt(2026, 11, 22).expect("a day");
        let days = day.and_time(chrono::NaiveTime::MIN).and_utc().timestamp() / DAY_S;
        assert_eq!(date(days, &Texts::load(Language::En)), "11/22");
        assert_eq!(date(days, &Texts::load(Language::Es)), "22/11");
    }

    #[test]
    fn curves_that_look_the_same_are_drawn_once() {
        let curve = |from: f64| {
            (0..5)
                .map(|day| [f64::from(day), from - f64::from(day)])
                .collect()
        };
        let groups = told_apart(vec![(0, curve(90.0)), (2, curve(92.5)), (3, curve(60.0))]);
        let named: Vec<&[usize]> = groups.iter().map(|curve| curve.skills.as_slice()).collect();
        assert_eq!(named, [&[0, 2][..], &[3]]);
        assert_eq!(groups[0].numbers(), "1, 3");
        // Skills of one curve have its color in the bars as well; one without a curve has its own.
        assert_eq!(curve_ink(&groups, 2), curve_ink(&groups, 0));
        assert_ne!(curve_ink(&groups, 3), curve_ink(&groups, 0));
        assert_eq!(curve_ink(&groups, 1), ink(1));
        // One that crosses another is another.
        let falling = vec![[0.0, 90.0], [1.0, 60.0]];
        let level = vec![[0.0, 90.0], [1.0, 90.0]];
        assert_eq!(told_apart(vec![(0, falling), (1, level)]).len(), 2);
    }
}
