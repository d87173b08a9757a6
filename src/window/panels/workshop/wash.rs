//! The customer's wash as a timeline: level, speed, current and lamps, with the codes that it stores, and in words.

use crate::flat;
use crate::panels::plots::{marks, plot};
use crate::panels::{PanelContext, kit};
use crate::tokens as t;
use crate::workshop::Workshop;
use bevy_egui::egui::{Align2, Color32, RichText, Slider, Ui};
use detent_content::{ContentLibrary, Texts, Value};
use detent_simulation::controller::Board;
use detent_training::lesson::{WashSample, WashTrace};
use egui_plot::{GridMark, Line, LineStyle, PlotPoint, Points, Text, VLine};

/// Height of a plot, points.
const PLOT: f32 = 112.0;
/// Height of the picture of the console, points.
const CONSOLE: f32 = 130.0;
/// Room for the numbers of every plot's upward axis, so that one moment stands at one place in all, points.
const AXIS: f32 = 44.0;
/// A lamp that lights again so soon blinks: its row goes on, s.
const BLINKS_S: f64 = 4.0;
/// From one moment to the next, min.
const STEP_MIN: f64 = 0.1;
/// Seconds in a minute.
const MINUTE_S: f64 = 60.0;

/// A figure of the wash: the key of its name, its color, what its axis reaches to at the least, and what it is in a
/// sample.
type Figure = (&'static str, Color32, f64, fn(&WashSample) -> f64);

const FIGURES: [Figure; 3] = [
    ("wash-trace-axis-level", t::SKY, 100.0, |sample| {
        sample.level_mm
    }),
    ("wash-trace-axis-speed", t::GOOD, 100.0, |sample| {
        sample.basket_rpm
    }),
    ("wash-trace-axis-current", t::AMBER, 1.0, |sample| {
        sample.mains_current_a
    }),
];

/// Draws it.
pub(super) fn wash_ui(
    ui: &mut Ui,
    context: &PanelContext,
    open: &mut Workshop,
    library: &ContentLibrary,
) {
    let mut moment_min = open.view.moment_min;
    kit::card(ui, |ui| {
        kit::heading(ui, context.text("wash-trace-title"));
        if open.proof().is_under_way() {
            let key = match open.proof().last() {
                Some(_) => "workshop-proof-stale",
                None => "workshop-proof-wash",
            };
            kit::quiet(ui, context.text(key));
        }
        let board = library.board(&open.scenario().board);
        let wash = open.proof().last().and_then(|proved| proved.wash.as_ref());
        match (wash, board) {
            (Some(wash), Some(board)) => trace_ui(ui, context, (wash, board), &mut moment_min),
            _ if open.checked().is_err() => {
                ui.label(context.text("workshop-wash-none"));
            }
            _ => {}
        }
    });
    open.view.moment_min = moment_min;
}

/// The wash of a machine with this board.
fn trace_ui(
    ui: &mut Ui,
    context: &PanelContext,
    (wash, board): (&WashTrace, &Board),
    moment_min: &mut Option<f64>,
) {
    let texts = context.texts;
    let end_min = wash.samples.last().map_or(0.0, minutes);
    ui.label(texts.wash_end(wash.end));
    for stored in &wash.stored {
        ui.label(RichText::new(texts.wash_code(stored)).color(t::BAD));
    }
    if wash.stored.is_empty() {
        kit::quiet(ui, context.text("workshop-wash-no-codes"));
    }
    if !wash.stale.is_empty() {
        let args = [("codes", Value::from(texts.codes(&wash.stale)))];
        kit::quiet(ui, context.with("wash-trace-stale", &args));
    }
    let first = wash.stored.first();
    let telling = first.map_or(end_min, |stored| stored.time.seconds() / MINUTE_S);
    let mut at_min = moment_min.unwrap_or(telling).clamp(0.0, end_min);
    // The slider goes in steps, and to the next one by itself: nobody has moved it then, and the moment stays.
    let mut slid_min = at_min;
    let label = ui.label(context.text("workshop-wash-moment"));
    let slider = ui.scope(|ui| {
        ui.spacing_mut().slider_width = (ui.available_width() - 90.0).clamp(60.0, 420.0);
        let slider = Slider::new(&mut slid_min, 0.0..=end_min)
            .step_by(STEP_MIN)
            .custom_formatter(|minutes, _| texts.digits(format!("{minutes:.1}")))
            .custom_parser(|typed| typed.replace(',', ".").parse().ok());
        ui.add(slider).labelled_by(label.id)
    });
    if slider.inner.changed() && (slid_min - at_min).abs() > STEP_MIN / 2.0 + 1e-9 {
        at_min = slid_min;
        *moment_min = Some(at_min);
    }
    let nearest = |sample: &&WashSample| minutes(sample) <= at_min + 0.5 / MINUTE_S;
    if let Some(sample) = wash.samples.iter().rev().find(nearest) {
        ui.label(sample_words(texts, sample, board));
        let (rect, painter) = kit::canvas(ui, CONSOLE);
        flat::paint_lamps(&painter, rect, board, sample.lamps);
    }
    let across = (wash, at_min, end_min);
    for figure in FIGURES {
        kit::quiet(ui, context.text(figure.0));
        figure_ui(ui, texts, figure, across);
    }
    kit::quiet(ui, context.text("workshop-wash-lamps"));
    lamps_ui(ui, board, across);
    kit::quiet(ui, context.text("wash-trace-axis-time"));
}

/// The time of a sample, min.
fn minutes(sample: &WashSample) -> f64 {
    sample.time.seconds() / MINUTE_S
}

/// All that stands at one moment.
fn sample_words(texts: &Texts, sample: &WashSample, board: &Board) -> String {
    let number =
        |value: f64, decimals: usize| Value::from(texts.digits(format!("{value:.decimals$}")));
    let phase = sample.phase.map(|phase| texts.wash_phase(phase));
    let phase = phase.unwrap_or_else(|| texts.get("workshop-wash-no-phase"));
    let args = [
        ("minutes", number(minutes(sample), 1)),
        ("phase", phase.into()),
        ("level", number(sample.level_mm, 0)),
        ("speed", number(sample.basket_rpm, 0)),
        ("current", number(sample.mains_current_a, 1)),
        ("lamps", texts.lamps(&board.lamps, sample.lamps).into()),
    ];
    texts.with("workshop-wash-sample", &args)
}

/// Steps between the marks of the time, min: no more marks than there is room for.
fn step_min(end_min: f64, width: f32) -> f64 {
    let most = f64::from(width / 50.0).max(2.0);
    let steps = [1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0];
    let fits = steps.into_iter().find(|step| end_min / step <= most);
    fits.unwrap_or(200.0)
}

/// One figure over the wash, with its codes and the moment that is looked at.
fn figure_ui(
    ui: &mut Ui,
    texts: &Texts,
    (name, color, least, of): Figure,
    (wash, at_min, end_min): (&WashTrace, f64, f64),
) {
    let points = wash.samples.iter();
    let points: Vec<[f64; 2]> = points.map(|s| [minutes(s), of(s)]).collect();
    let top = points.iter().map(|point| point[1]).fold(least, f64::max);
    let step = step_min(end_min, ui.available_width());
    let chart = plot(name)
        .height(PLOT)
        .include_x(0.0)
        .include_x(end_min)
        .include_y(0.0)
        .include_y(top)
        .y_axis_min_width(AXIS)
        .x_grid_spacer(move |input| marks(input, step))
        .y_grid_spacer(move |input| marks(input, round_step(top)))
        .y_axis_formatter(move |mark: GridMark, _: &std::ops::RangeInclusive<f64>| {
            let decimals = usize::from(round_step(top) < 1.0);
            texts.digits(format!("{:.decimals$}", mark.value))
        });
    kit::looked_at(ui, |ui| {
        chart.show(ui, |plot| {
            plot.line(Line::new(name, points).color(color).width(1.5));
            upright(plot, wash, at_min);
            for stored in &wash.stored {
                let spot = PlotPoint::new(stored.time.seconds() / MINUTE_S, top);
                let code = RichText::new(format!("{:02}", stored.code)).size(t::SMALL);
                let code = Text::new("code", spot, code.color(t::BAD));
                plot.text(code.anchor(Align2::RIGHT_TOP));
            }
        })
    });
}

/// Upright lines: codes as they are stored, and the moment that is looked at.
fn upright(plot: &mut egui_plot::PlotUi<'_>, wash: &WashTrace, at_min: f64) {
    for stored in &wash.stored {
        let line = VLine::new("code", stored.time.seconds() / MINUTE_S);
        plot.vline(line.color(t::BAD).style(LineStyle::dashed_loose()));
    }
    plot.vline(VLine::new("moment", at_min).color(t::TEXT).width(1.0));
}

/// A round step between so many marks as a low plot has room for.
fn round_step(top: f64) -> f64 {
    let steps = [0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0];
    let fits = steps.into_iter().find(|step| top / step <= 4.0);
    fits.unwrap_or(1_000.0)
}

/// A row for each lamp of the console, the lock lamp highest: where it is lit or blinks.
fn lamps_ui(ui: &mut Ui, board: &Board, (wash, at_min, end_min): (&WashTrace, f64, f64)) {
    let rows = flat::lamps_of(board);
    let step = step_min(end_min, ui.available_width());
    let chart = plot("lamps")
        .height((rows.len() as f32).mul_add(9.0, 40.0))
        .include_x(0.0)
        .include_x(end_min)
        .include_y(0.0)
        .include_y(rows.len() as f64 + 1.0)
        .y_axis_min_width(AXIS)
        .x_grid_spacer(move |input| marks(input, step))
        .y_grid_spacer(|_| Vec::<GridMark>::new());
    kit::looked_at(ui, |ui| {
        chart.show(ui, |plot| {
            for (n, lamp) in rows.iter().enumerate() {
                let row = n as f64 + 1.0;
                let lit = wash.samples.iter().filter(|s| lamp.lit(s.lamps));
                for (from, to) in runs(lit.map(|s| s.time.seconds())) {
                    let ends = [from, to].map(|s| [s / MINUTE_S, row]);
                    if from < to {
                        let line = Line::new("lit", ends.to_vec());
                        plot.line(line.color(t::LAMP_LIT).width(4.0));
                    } else {
                        let point = Points::new("lit", vec![ends[0]]);
                        plot.points(point.color(t::LAMP_LIT).radius(2.0));
                    }
                }
            }
            upright(plot, wash, at_min);
        })
    });
}

/// Stretches of these moments, in order, within which none is further from the next than a lamp that blinks leaves
/// dark.
fn runs(moments: impl Iterator<Item = f64>) -> Vec<(f64, f64)> {
    let mut runs: Vec<(f64, f64)> = Vec::new();
    for at in moments {
        match runs.last_mut() {
            Some((_, to)) if at - *to <= BLINKS_S => *to = at,
            _ => runs.push((at, at)),
        }
    }
    runs
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_lamp_that_blinks_is_one_stretch_and_one_that_went_out_is_two() {
        let moments = [1.0, 2.0, 5.0, 9.0, 30.0, 60.0, 61.0];
        let expected = [(1.0, 9.0), (30.0, 30.0), (60.0, 61.0)];
        assert_eq!(runs(moments.into_iter()), expected);
        assert_eq!(runs(std::iter::empty()), []);
    }

    #[test]
    fn marks_are_round_and_have_room() {
        for (end_min, width, step) in [(8.0, 600.0, 1.0), (43.0, 600.0, 5.0), (43.0, 300.0, 10.0)] {
            assert_eq!(step_min(end_min, width), step, "{end_min} min on {width}");
        }
        assert_eq!(
            [0.9, 4.1, 290.0, 700.0].map(round_step),
            [0.5, 2.0, 100.0, 200.0]
        );
    }
}
