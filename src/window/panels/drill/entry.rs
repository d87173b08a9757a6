//! Entry timing: the gesture, a knob and buttons to do it with, a metronome that is seen, and what the rhythm
//! of the hand promises.

use super::{
    Above, MARGIN, beside, console_height, console_ui, foot_height, place_text, top_height,
};
use crate::drill::Trial;
use crate::input::button_of;
use crate::key_bindings::KeyBindings;
#[cfg(target_family = "wasm")]
use crate::key_bindings::code_in_panels;
use crate::panels::keep_focus;
use crate::panels::{PanelContext, kit, sheet};
use crate::tokens as t;
use bevy_egui::egui::{
    self, CornerRadius, Event, Key, Label, MouseWheelUnit, PointerButton, Rect, Response, RichText,
    Sense, Stroke, StrokeKind, Ui, Vec2, pos2, vec2,
};
use detent_content::{KeyAction, Value};
use detent_simulation::controller::{GestureStep, Outcome};
use detent_simulation::interface::{Button, Direction};
use detent_simulation::units::TICK_MS;
use detent_training::bench::Action;
use detent_training::practice::drill::entry::{Marked, buttons, needs_keeping};
use egui_plot::{Line, LineStyle, Plot, PlotPoints, Points, VLine};
use std::f32::consts::{PI, TAU};

/// Longest frame that the bench makes good, s; after a longer one it has stood still.
const LONGEST_FRAME_S: f64 = 3.0;
/// A lamp lights up with each beat only if beats are no closer than this, ms: three flashes in a second are the
/// most (WCAG 2.2, 2.3.1). Quicker beats have a moving mark alone.
const QUICKEST_FLASH_MS: f64 = 334.0;
/// Room that controls, rhythm, head and foot of the window take.
const TAKEN_HEIGHT: f32 = 564.0;
/// Scrolled points that are one detent, as on the bench.
const DETENT_POINTS: f32 = 50.0;

pub(super) fn entry_ui(
    ui: &mut Ui,
    context: &mut PanelContext,
    trial: &mut Trial,
    tries: &[Marked],
) {
    let free = trial.marked.is_none();
    if free {
        keys(ui, &context.ui_state.key_bindings, trial);
        keep_focus(ui.ctx());
    }
    beside(
        ui,
        context,
        trial,
        Above::Right,
        |ui, context, trial| {
            kit::paper(ui, |ui| {
                kit::print_heading(ui, place_text(context, &trial.task.place));
                if let Some(worn) = trial.task.wear {
                    let wear = Value::from(context.texts.percent(worn, 0));
                    ui.label(context.with("drill-entry-wear", &[("wear", wear)]));
                }
                let of_trial = PanelContext {
                    texts: context.texts,
                    bench: &mut trial.bench,
                    ui_state: context.ui_state,
                };
                sheet::entry(ui, &of_trial);
            });
        },
        |ui, context, trial| {
            let top = ui.cursor().top();
            let rest = ui.ctx().content_rect().height() - TAKEN_HEIGHT;
            let height = rest.min(console_height(ui)).max(150.0);
            let in_scene = console_ui(ui, context, height);
            kit::card(ui, |ui| controls_ui(ui, context, trial, free, in_scene));
            ui.add_space(8.0);
            kit::card(ui, |ui| {
                told_ui(ui, context, trial);
                let used = ui.cursor().top() - top;
                rhythm_ui(ui, context, trial, tries, Some(used));
            });
        },
    );
    step(ui, trial);
}

/// A try by itself, without a console beside it: the hands, how it ended, and what its rhythm promises.
pub(in crate::panels) fn try_ui(
    ui: &mut Ui,
    context: &mut PanelContext,
    trial: &mut Trial,
    tries: &[Marked],
) {
    let free = trial.marked.is_none();
    if free && !ui.ctx().text_edit_focused() {
        keys(ui, &context.ui_state.key_bindings, trial);
        keep_focus(ui.ctx());
    }
    kit::card(ui, |ui| controls_ui(ui, context, trial, free, false));
    kit::card(ui, |ui| {
        told_ui(ui, context, trial);
        rhythm_ui(ui, context, trial, tries, None);
    });
    step(ui, trial);
}

/// Turns and presses of this frame's keys, in their order.
fn keys(ui: &Ui, bindings: &KeyBindings, trial: &mut Trial) {
    let events = ui.input(|i| i.events.clone());
    for event in events {
        let Event::Key {
            key,
            physical_key,
            pressed,
            repeat,
            modifiers,
        } = event
        else {
            continue;
        };
        let key = physical_key.unwrap_or(key);
        let age = age(key, pressed);
        let action = if !pressed {
            let stands_for = bindings.stands_for_in_panels(key);
            let button = stands_for.and_then(button_of);
            button.and_then(|button| trial.held.release(button))
        } else if repeat {
            None
        } else {
            let done = arrow_turn(key).or_else(|| bindings.done_in_panels(key, modifiers));
            done.and_then(|done| deed(done, modifiers.shift, trial))
        };
        if let Some(action) = action {
            trial.bench.push_aged(action, age);
        }
    }
}

/// The way in which an arrow key turns the knob.
fn arrow_turn(key: Key) -> Option<KeyAction> {
    match key {
        Key::ArrowRight | Key::ArrowDown => Some(KeyAction::TurnRight),
        Key::ArrowLeft | Key::ArrowUp => Some(KeyAction::TurnLeft),
        _ => None,
    }
}

/// What a key does to the machine of the trial.
fn deed(done: KeyAction, keep: bool, trial: &mut Trial) -> Option<Action> {
    let turns = trial.task.selector.turn().is_some();
    match done {
        KeyAction::TurnLeft => turns.then_some(Action::Detent(Direction::Left)),
        KeyAction::TurnRight => turns.then_some(Action::Detent(Direction::Right)),
        KeyAction::Lid => Some(lid(trial)),
        KeyAction::Plug => Some(plug(trial)),
        other => {
            let button = button_of(other)?;
            let has = trial.bench.job().board.panel.buttons.contains(&button);
            has.then(|| trial.held.push(button, keep))?
        }
    }
}

fn lid(trial: &Trial) -> Action {
    if trial.bench.lid_will_be_up() {
        Action::CloseLid
    } else {
        Action::OpenLid
    }
}

fn plug(trial: &Trial) -> Action {
    if trial.bench.view().machine.plugged {
        Action::Unplug
    } else {
        Action::Plug
    }
}

/// How long before the frame's clock the key moved, ticks, where the page knows it.
#[cfg(target_family = "wasm")]
fn age(key: Key, down: bool) -> Option<i64> {
    let code = match key {
        Key::ArrowLeft | Key::ArrowRight | Key::ArrowUp | Key::ArrowDown => format!("{key:?}"),
        key => format!("{:?}", code_in_panels(key)?),
    };
    crate::web::key_age_ticks(&code, down)
}

/// A window system hands keys over at once.
#[cfg(not(target_family = "wasm"))]
fn age(_: Key, _: bool) -> Option<i64> {
    None
}

/// Runs the bench up to now; what came in since the last frame is spread over it.
fn step(ui: &Ui, trial: &mut Trial) {
    let now_s = ui.input(|i| i.time);
    let stepped_s = *trial.stepped_s.get_or_insert(now_s);
    let frame_s = (now_s - stepped_s).clamp(0.0, LONGEST_FRAME_S);
    let tick_s = TICK_MS as f64 / 1000.0;
    let ticks = (frame_s / tick_s) as u64;
    // What is left of a tick waits for the next frame.
    trial.stepped_s = Some(now_s - (frame_s - ticks as f64 * tick_s));
    if trial.marked.is_none() {
        trial.bench.spread(ticks);
        for _ in 0..ticks {
            trial.bench.tick();
        }
        trial.bench.refresh();
        ui.ctx().request_repaint();
    } else if trial.metronome {
        ui.ctx().request_repaint();
    }
}

/// Knob, buttons, lid and plug, as far as the gesture needs them, and the metronome.
fn controls_ui(ui: &mut Ui, context: &PanelContext, trial: &mut Trial, free: bool, in_scene: bool) {
    let gesture = trial.task.gesture.clone();
    let turns = gesture
        .steps
        .iter()
        .any(|s| matches!(s, GestureStep::Turn { .. }))
        || gesture.standing().is_some();
    let lid_moves = gesture
        .steps
        .iter()
        .any(|s| matches!(s, GestureStep::Lid { .. }));
    let plugs = gesture
        .steps
        .iter()
        .any(|s| matches!(s, GestureStep::PowerUp { .. }));
    let top = ui.cursor().top();
    if turns {
        knob_ui(ui, context, trial, free, in_scene);
    }
    ui.horizontal_wrapped(|ui| {
        for button in buttons(&gesture) {
            button_ui(ui, context, trial, button, free);
        }
        if plugs {
            let key = if trial.bench.view().machine.plugged {
                "do-unplug"
            } else {
                "do-plug"
            };
            let action = plug(trial);
            if hand_ui(ui, &context.text(key)).clicked() && free {
                trial.bench.push(action);
            }
        }
        if lid_moves {
            let up = trial.bench.lid_will_be_up();
            let key = if up { "do-close-lid" } else { "do-open-lid" };
            let action = lid(trial);
            if hand_ui(ui, &context.text(key)).clicked() && free {
                trial.bench.push(action);
            }
        }
    });
    if needs_keeping(&gesture) {
        let on = trial.held.keep_next;
        let keep = kit::choice(ui, on, context.text("keep-next"));
        if keep.on_hover_text(context.text("keep-how")).clicked() {
            trial.held.keep_next = !on;
        }
    }
    let hands = Rect::from_x_y_ranges(ui.max_rect().x_range(), top..=ui.cursor().top());
    if turns && free {
        wheel(ui, hands, trial);
    }
    ui.add_space(4.0);
    metronome_ui(ui, context, trial);
}

/// The wheel over the controls turns the knob, step by step.
fn wheel(ui: &Ui, hands: Rect, trial: &mut Trial) {
    if !ui.rect_contains_pointer(hands) {
        return;
    }
    for event in ui.input(|i| i.events.clone()) {
        if let Event::MouseWheel { unit, delta, .. } = event {
            trial.scrolled += match unit {
                MouseWheelUnit::Point => delta.y / DETENT_POINTS,
                MouseWheelUnit::Line | MouseWheelUnit::Page => delta.y,
            };
        }
    }
    while trial.scrolled.abs() >= 1.0 {
        let way = if trial.scrolled > 0.0 {
            Direction::Right
        } else {
            Direction::Left
        };
        trial.bench.push(Action::Detent(way));
        trial.scrolled -= trial.scrolled.signum();
    }
    // The page under it stays where it is.
    ui.input_mut(|i| i.smooth_scroll_delta = Vec2::ZERO);
}

/// The knob between a button for each way; the buttons alone where the scene shows the knob.
fn knob_ui(ui: &mut Ui, context: &PanelContext, trial: &mut Trial, free: bool, in_scene: bool) {
    let between = if in_scene { 24.0 } else { 120.0 };
    let high = if in_scene { 56.0 } else { 88.0 };
    let side = ((ui.available_width() - between) / 2.0).max(80.0);
    ui.horizontal(|ui| {
        for (way, key) in [
            (Direction::Left, "drill-entry-left"),
            (Direction::Right, "drill-entry-right"),
        ] {
            if way == Direction::Right && !in_scene {
                let (rect, _) = ui.allocate_exact_size(vec2(88.0, 88.0), Sense::hover());
                knob(ui, rect, trial);
            }
            let id = ui.id().with(key);
            let (rect, response) =
                ui.allocate_exact_size(vec2(side, high), Sense::drag() | Sense::click());
            let text = context.text(key);
            plate(ui, rect, &response, false, &text);
            let down = pressed(ui, id, &response);
            // A finger turns when it comes down: lifting it is not part of the turn.
            if free && (down == Some(true) || by_no_pointer(ui, &response)) {
                trial.bench.push(Action::Detent(way));
            }
        }
    });
}

/// The knob from the front, where it stands.
fn knob(ui: &Ui, rect: Rect, trial: &Trial) {
    let stops = trial.task.selector.turn().unwrap_or(24);
    let at = trial.bench.view().machine.dial_position;
    let (middle, radius) = (rect.center(), 30.0);
    for n in 0..stops {
        let out = Vec2::angled(f32::from(n) / f32::from(stops) * TAU - PI / 2.0);
        let ink = Stroke::new(1.5, t::EDGE);
        ui.painter()
            .line_segment([middle + out * 35.0, middle + out * 40.0], ink);
    }
    ui.painter()
        .circle(middle, radius, t::FIELD, Stroke::new(2.0, t::EDGE));
    let out = Vec2::angled(f32::from(at) / f32::from(stops) * TAU - PI / 2.0);
    let ink = Stroke::new(5.0, t::AMBER);
    ui.painter()
        .line_segment([middle + out * 8.0, middle + out * 27.0], ink);
}

/// A button of the console that is down as long as a finger is on it.
fn button_ui(ui: &mut Ui, context: &PanelContext, trial: &mut Trial, button: Button, free: bool) {
    let id = ui.id().with(("button", button.name()));
    let sense = Sense::drag() | Sense::click();
    let (rect, response) = ui.allocate_exact_size(vec2(116.0, 64.0), sense);
    let on = trial.held.down()[button.index()];
    let action = match button {
        Button::Start => KeyAction::Start,
        Button::Stop => KeyAction::Stop,
        Button::More => KeyAction::More,
        Button::Less => KeyAction::Less,
    };
    let name = context.text(&format!("button-{button}"));
    let text = match context.ui_state.key_bindings.hint(action) {
        Some(hint) => format!("{name} ({hint})"),
        None => name,
    };
    plate(ui, rect, &response, on, &text);
    if !free {
        return;
    }
    let other = ui.input(|i| i.pointer.button_down(PointerButton::Secondary) || i.modifiers.shift);
    let action = match pressed(ui, id, &response) {
        Some(true) => trial.held.push(button, other),
        Some(false) => trial.held.release(button),
        // Without a pointer a button can only be kept down and let go.
        None if by_no_pointer(ui, &response) => trial.held.push(button, true),
        None => None,
    };
    trial.bench.queue_some(action);
}

/// A button for a hand: lid or plug.
fn hand_ui(ui: &mut Ui, text: &str) -> Response {
    ui.add(egui::Button::new(text).min_size(vec2(150.0, 64.0)))
}

/// A big plate with a word on it.
fn plate(ui: &Ui, rect: Rect, response: &Response, on: bool, text: &str) {
    let (fill, ink) = match on {
        true => (t::AMBER, t::ON_AMBER),
        false if response.hovered() => (t::FIELD_HOT, t::TEXT),
        false => (t::FIELD, t::TEXT),
    };
    let edge = Stroke::new(1.5, t::EDGE);
    ui.painter()
        .rect(rect, CornerRadius::same(9), fill, edge, StrokeKind::Inside);
    let middle = rect.center();
    kit::write(
        ui.painter(),
        middle.x,
        middle.y,
        egui::Align2::CENTER_CENTER,
        t::BODY,
        ink,
        text,
    );
    response.widget_info(|| egui::WidgetInfo::labeled(egui::WidgetType::Button, true, text));
}

/// Whether the pointer has just come down on it, or has just been lifted from it.
fn pressed(ui: &Ui, id: egui::Id, response: &Response) -> Option<bool> {
    let down = response.is_pointer_button_down_on();
    let was = ui.data_mut(|data| {
        let was: &mut bool = data.get_temp_mut_or_default(id);
        std::mem::replace(was, down)
    });
    (was != down).then_some(down)
}

/// A click that no pointer made.
fn by_no_pointer(ui: &Ui, response: &Response) -> bool {
    response.clicked() && !ui.input(|i| i.pointer.any_released())
}

/// A beat to be seen: a mark that swings from side to side, one way a step, and the number of the step.
fn metronome_ui(ui: &mut Ui, context: &PanelContext, trial: &mut Trial) {
    let best_ms = trial.curve.best_ms;
    ui.horizontal_wrapped(|ui| {
        if kit::choice(ui, trial.metronome, context.text("drill-entry-metronome")).clicked() {
            trial.metronome = !trial.metronome;
        }
        let ms = Value::from(best_ms.round());
        kit::quiet(ui, context.with("drill-entry-every", &[("ms", ms)]));
    });
    if !trial.metronome {
        return;
    }
    let beats = ui.input(|i| i.time) * 1000.0 / best_ms;
    let (rect, painter) = kit::canvas(ui, 34.0);
    let track = Rect::from_center_size(rect.center(), vec2(rect.width() - 90.0, 4.0));
    painter.rect_filled(track, CornerRadius::same(2), t::LINE);
    for x in [track.left(), track.right()] {
        let ink = Stroke::new(2.0, t::EDGE);
        painter.line_segment(
            [pos2(x, rect.top() + 5.0), pos2(x, rect.bottom() - 5.0)],
            ink,
        );
    }
    let swing = (0.5 - 0.5 * (beats * f64::from(PI)).cos()) as f32;
    painter.circle_filled(
        pos2(track.left() + swing * track.width(), rect.center().y),
        9.0,
        t::AMBER,
    );
    let count = (beats as u64 % 4) + 1;
    let at = rect.right() - 18.0;
    kit::write(
        &painter,
        at,
        rect.center().y,
        egui::Align2::CENTER_CENTER,
        20.0,
        t::TEXT,
        count,
    );
    if best_ms >= QUICKEST_FLASH_MS {
        let lit = beats.fract() < 0.35;
        kit::lamp(
            &painter,
            rect.left() + 18.0,
            rect.center().y,
            9.0,
            lit,
            t::LAMP_LIT,
        );
    }
}

/// How the try ended.
fn told_ui(ui: &mut Ui, context: &PanelContext, trial: &Trial) {
    let Some(marked) = &trial.marked else { return };
    if let Outcome::Broken(rule) = marked.outcome {
        let rule = Value::from(context.texts.broken_rule(rule));
        let text = context.with("drill-entry-broke", &[("rule", rule)]);
        ui.add(Label::new(RichText::new(text).color(t::BAD)).wrap());
    }
}

/// How high the curve of odds is where there is room, and at least.
const CURVE_HEIGHT: f32 = 180.0;
const LEAST_CURVE_HEIGHT: f32 = 90.0;
/// Room between the last mark of the curve's axis and the frame, so that its words stay within, of the axis.
const AXIS_ROOM: f64 = 0.06;

/// How high the curve may be so that it and its caption end above the foot of the window; `used` is what the column
/// takes above it.
fn curve_height(ui: &Ui, caption: &str, used: f32) -> f32 {
    let font = egui::FontId::proportional(t::SMALL);
    let width = ui.available_width();
    let caption = ui
        .painter()
        .layout(caption.to_owned(), font, t::QUIET, width);
    // Below the caption come the card's edge and the page's.
    let below = ui.spacing().item_spacing.y + caption.size().y + 10.0 + MARGIN.1;
    let page =
        ui.ctx().content_rect().height() - top_height(ui.ctx()) - foot_height(ui.ctx()) - MARGIN.1;
    (page - used - below).clamp(LEAST_CURVE_HEIGHT, CURVE_HEIGHT)
}

/// Rhythm, spread and odds of the last try, and the curve of odds with the tries on it; `above` is what the column takes
/// above it, where all is to be seen at once.
pub(super) fn rhythm_ui(
    ui: &mut Ui,
    context: &PanelContext,
    trial: &Trial,
    tries: &[Marked],
    above: Option<f32>,
) {
    let top = ui.cursor().top();
    let last = tries.iter().rev().find_map(|m| Some((m.rhythm?, m.odds?)));
    match last {
        Some((rhythm, odds)) => {
            let args = [
                ("mean", Value::from(rhythm.mean_ms.round())),
                ("spread", Value::from(rhythm.spread_ms.round())),
                ("odds", Value::from(context.texts.percent(odds, 0))),
            ];
            ui.add(
                Label::new(
                    RichText::new(context.with("drill-entry-rhythm", &args)).color(t::AMBER),
                )
                .wrap(),
            );
        }
        None => kit::quiet(ui, context.text("drill-entry-no-rhythm")),
    }
    let curve: Vec<[f64; 2]> = (trial.curve.points.iter())
        .map(|(ms, odds)| [*ms, 100.0 * odds])
        .collect();
    let own: Vec<[f64; 2]> = tries
        .iter()
        .filter_map(|m| Some([m.rhythm?.mean_ms, 100.0 * m.odds?]))
        .collect();
    let right = curve.last().map_or(1000.0, |point| point[0]);
    let of_last = own.last().copied();
    let caption = context.text("drill-entry-plot");
    let height = above.map_or(CURVE_HEIGHT, |above| {
        curve_height(ui, &caption, above + ui.cursor().top() - top)
    });
    let chart = Plot::new("odds")
        .height(height)
        .show_x(false)
        .show_y(false)
        .allow_zoom(false)
        .allow_drag(false)
        .allow_scroll(false)
        .allow_boxed_zoom(false)
        .allow_double_click_reset(false)
        .sense(Sense::hover())
        .default_x_bounds(0.0, right * (1.0 + AXIS_ROOM))
        .default_y_bounds(-4.0, 108.0)
        .x_axis_formatter(|mark, _| format!("{:.0} ms", mark.value))
        .y_axis_formatter(|mark, _| {
            if (0.0..=100.0).contains(&mark.value) {
                context.texts.percent(mark.value / 100.0, 0)
            } else {
                String::new()
            }
        });
    kit::looked_at(ui, |ui| {
        chart.show(ui, |plot| {
            let best = VLine::new("best", trial.curve.best_ms);
            plot.vline(
                best.color(t::GOOD)
                    .style(LineStyle::dashed_loose())
                    .width(2.0),
            );
            plot.line(
                Line::new("odds", PlotPoints::from(curve))
                    .color(t::SKY)
                    .width(2.5),
            );
            plot.points(
                Points::new("tries", PlotPoints::from(own))
                    .color(t::QUIET)
                    .radius(4.0),
            );
            if let Some(last) = of_last {
                plot.points(Points::new("last", vec![last]).color(t::AMBER).radius(7.0));
            }
        })
    });
    kit::quiet(ui, caption);
}
