//! The meter: how a check is made, what a sound one shows, and what the reading says.

use super::{Above, Look, beside, digit_pressed, pick_ui, place_text};
use crate::drill::{MeterGiven, Question};
use crate::panels::{PanelContext, kit};
use crate::tokens as t;
use bevy_egui::egui::{Align2, Label, Rect, RichText, Ui, pos2, vec2};
use detent_content::Value;
use detent_training::bench::MeterMode;
use detent_training::practice::drill::meter::{Kind, MODES, Marked, MeterTask, Range, State};

/// The question of this drill.
type Asked = Question<MeterTask, MeterGiven, Marked>;

pub(super) fn meter_ui(ui: &mut Ui, context: &mut PanelContext, q: &mut Asked) {
    if q.marked.is_none()
        && let Some(n) = digit_pressed(ui, context)
    {
        choose_next(q, n);
    }
    kit::card(ui, |ui| {
        kit::quiet(ui, place_text(context, &q.task.place));
        ui.label(RichText::new(question(context, &q.task)).size(18.0));
    });
    ui.add_space(6.0);
    beside(
        ui,
        context,
        q,
        Above::Left,
        |ui,
         context,
         Question {
             task,
             given,
             marked,
         }| {
            let should = marked.as_ref().map(|marked| marked.should);
            let open = !given.is_set();
            let names = State::ALL.map(|s| context.text(&format!("drill-meter-state-{}", s.key())));
            let right = should.map(|s| s.state);
            let title = context.text("drill-meter-state");
            choose_ui(
                ui,
                &title,
                (&State::ALL, &names),
                &mut given.state,
                right,
                open,
            );

            let names = MODES.map(|mode| context.texts.meter_mode(mode));
            let right = should.map(|s| s.mode);
            let title = context.text("drill-meter-mode");
            choose_ui(ui, &title, (&MODES, &names), &mut given.mode, right, open);

            let right = should.map(|s| s.range);
            let names: Vec<String> = task
                .ranges
                .iter()
                .map(|(m, r)| range_text(context, *m, *r))
                .collect();
            let title = context.text("drill-meter-range");
            let chosen = row_ui(ui, &title, &names, given.range, right, open);
            given.range = chosen.or(given.range);
        },
        |ui,
         context,
         Question {
             task,
             given,
             marked,
         }| {
            let should = marked.as_ref().map(|marked| marked.should);
            if given.is_set() {
                kit::card(ui, |ui| {
                    ui.label(context.text("drill-meter-reading"));
                    display_ui(ui, task);
                    let names = [
                        context.text("drill-meter-within"),
                        context.text("drill-meter-out"),
                    ];
                    let place = |within: bool| usize::from(!within);
                    let right = should.map(|s| place(s.within));
                    let verdict = given.within.map(place);
                    let title = context.text("drill-meter-verdict");
                    let chosen = row_ui(ui, &title, &names, verdict, right, marked.is_none());
                    given.within = chosen.map(|n| n == 0).or(given.within);
                });
            } else {
                kit::card(ui, |ui| kit::quiet(ui, context.text("drill-meter-first")));
            }
            if let Some(marked) = marked {
                ui.add_space(8.0);
                told_ui(ui, context, task, marked);
            }
        },
    );
}

/// A digit chooses in the first row that is open.
fn choose_next(q: &mut Asked, n: usize) {
    let given = &mut q.given;
    if given.state.is_none() {
        given.state = State::ALL.get(n).copied();
    } else if given.mode.is_none() {
        given.mode = MODES.get(n).copied();
    } else if given.range.is_none() {
        given.range = Some(n).filter(|n| *n < q.task.ranges.len());
    } else {
        given.within = match n {
            0 => Some(true),
            1 => Some(false),
            _ => given.within,
        };
    }
}

/// A row of things, each with its name, of which one is chosen.
fn choose_ui<T: Copy + PartialEq>(
    ui: &mut Ui,
    title: &str,
    (all, names): (&[T], &[String]),
    given: &mut Option<T>,
    should: Option<T>,
    open: bool,
) {
    let place = |wanted: Option<T>| all.iter().position(|one| Some(*one) == wanted);
    let chosen = row_ui(ui, title, names, place(*given), place(should), open);
    *given = chosen.map(|n| all[n]).or(*given);
}

/// A row of choices under its title; the one that was clicked. Closed rows only show.
fn row_ui(
    ui: &mut Ui,
    title: &str,
    names: &[String],
    on: Option<usize>,
    should: Option<usize>,
    open: bool,
) -> Option<usize> {
    ui.label(RichText::new(title).color(t::QUIET));
    let mut clicked = None;
    ui.horizontal_wrapped(|ui| {
        for (n, name) in names.iter().enumerate() {
            let look = Look::of(n, on, should);
            if pick_ui(ui, look, &format!("{}  {name}", n + 1)) && open {
                clicked = Some(n);
            }
        }
    });
    ui.add_space(6.0);
    clicked
}

/// What is to be found out, between which pins.
fn question(context: &PanelContext, task: &MeterTask) -> String {
    let check = &task.check;
    let key = format!("drill-meter-ask-{}", check.kind.key());
    let pins = if check.mode == MeterMode::AmpsClamp {
        check.red.to_string()
    } else {
        format!("{} – {}", check.red, check.black)
    };
    let args = [
        ("component", Value::from(context.part(check.component))),
        ("pins", Value::from(pins)),
    ];
    match check.kind {
        // The harness and the mains have no component to name.
        Kind::Wire | Kind::Fuse | Kind::Mains | Kind::Bulk | Kind::Input => {
            context.with(&key, &args[1..])
        }
        _ => context.with(&key, &args),
    }
}

/// The meter's display.
fn display_ui(ui: &mut Ui, task: &MeterTask) {
    let (rect, painter) = kit::canvas(ui, 84.0);
    kit::frame(&painter, rect, t::LCD, t::EDGE);
    let written = task.shown.written(task.check.mode);
    let place = Rect::from_min_max(
        rect.min + vec2(10.0, 16.0),
        pos2(rect.right() - 62.0, rect.bottom() - 16.0),
    );
    kit::segments(&painter, place, &written.digits, t::LCD_ON);
    let at = rect.right_bottom() - vec2(12.0, 14.0);
    kit::write(
        &painter,
        at.x,
        at.y,
        Align2::RIGHT_BOTTOM,
        22.0,
        t::LCD_ON,
        format!("{}{}", written.prefix, written.unit),
    );
}

/// Limits of a range in words.
fn range_text(context: &PanelContext, mode: MeterMode, range: Range) -> String {
    match range {
        Range::Open => context.text("drill-meter-open"),
        Range::Between(low, high) => {
            let (scale, prefix) = match mode {
                MeterMode::Ohms if high >= 1e6 => (1e6, "M"),
                MeterMode::Ohms if high >= 1e3 => (1e3, "k"),
                _ => (1.0, ""),
            };
            let (low, high) = (number(low / scale), number(high / scale));
            format!("{low} – {high} {prefix}{}", mode.unit())
        }
    }
}

/// Three figures at most, none that says nothing.
fn number(value: f64) -> String {
    let digits = match value.abs() {
        v if v >= 99.5 => 0,
        v if v >= 9.95 => 1,
        _ => 2,
    };
    let text = format!("{value:.digits$}");
    match text.contains('.') {
        true => text.trim_end_matches('0').trim_end_matches('.').to_owned(),
        false => text,
    }
}

/// What was wrong, and what the sheet says.
fn told_ui(ui: &mut Ui, context: &PanelContext, task: &MeterTask, marked: &Marked) {
    let (given, should) = (marked.given, marked.should);
    kit::card(ui, |ui| {
        for (right, key) in [
            (
                given.state == should.state,
                format!("drill-meter-why-{}", should.state.key()),
            ),
            (given.mode == should.mode, "drill-meter-why-mode".to_owned()),
            (
                given.range == should.range,
                "drill-meter-why-range".to_owned(),
            ),
            (
                given.within == should.within,
                format!(
                    "drill-meter-why-{}",
                    if should.within { "within" } else { "out" }
                ),
            ),
        ] {
            if !right {
                ui.add(Label::new(RichText::new(context.text(&key)).color(t::BAD)).wrap());
            }
        }
        kit::quiet(ui, context.text("drill-meter-sheet"));
        ui.add(Label::new(context.text(task.check.text_key)).wrap());
    });
}
