//! The way into service mode: its steps with their times, how many simulated hands get in, and a try with the own hand.

use super::{count_ui, list_ui, option_ui, seconds_ui, timeline};
use crate::board_workshop::BoardWorkshop;
use crate::panels::workshop::plain_button;
use crate::panels::{PanelContext, kit};
use crate::tokens as t;
use bevy_egui::egui::{Button as Row, RichText, Ui};
use detent_content::{ContentLibrary, Value};
use detent_simulation::controller::{Board, GestureStep, LidMove, Standing};
use detent_simulation::interface::{Button, Direction};
use detent_training::practice::drill::entry::RUNS;
use std::sync::Arc;

/// Longest times of a step and of the whole gesture, s.
const LONGEST_STEP_S: f64 = 60.0;
const LONGEST_S: f64 = 300.0;
/// The window of a step that gets one, ms.
const USUAL_WINDOW_MS: u32 = 4_000;

/// A step without what it is done to and when.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Kind {
    Turn,
    Press,
    Hold,
    Push,
    Release,
    Lid,
    PowerUp,
    Pause,
    Together,
}

impl Kind {
    const ALL: [Kind; 9] = [
        Kind::Turn,
        Kind::Press,
        Kind::Hold,
        Kind::Push,
        Kind::Release,
        Kind::Lid,
        Kind::PowerUp,
        Kind::Pause,
        Kind::Together,
    ];

    const fn of(step: &GestureStep) -> Kind {
        match step {
            GestureStep::Turn { .. } => Kind::Turn,
            GestureStep::Press { .. } => Kind::Press,
            GestureStep::Hold { .. } => Kind::Hold,
            GestureStep::Push { .. } => Kind::Push,
            GestureStep::Release { .. } => Kind::Release,
            GestureStep::Lid { .. } => Kind::Lid,
            GestureStep::PowerUp { .. } => Kind::PowerUp,
            GestureStep::Pause { .. } => Kind::Pause,
            GestureStep::Together { .. } => Kind::Together,
        }
    }

    const fn key(self) -> &'static str {
        match self {
            Kind::Turn => "workshop-board-step-turn",
            Kind::Press => "workshop-board-step-press",
            Kind::Hold => "workshop-board-step-hold",
            Kind::Push => "workshop-board-step-push",
            Kind::Release => "workshop-board-step-release",
            Kind::Lid => "workshop-board-step-lid",
            Kind::PowerUp => "workshop-board-step-power-up",
            Kind::Pause => "workshop-board-step-pause",
            Kind::Together => "workshop-board-step-together",
        }
    }

    /// A step of this kind to begin with.
    fn usual(self) -> GestureStep {
        let (button, window_ms) = (Button::Start, None);
        match self {
            Kind::Turn => GestureStep::Turn {
                to: Direction::Right,
                detents: 3,
                window_ms,
            },
            Kind::Press => GestureStep::Press {
                button,
                times: 1,
                max_ms: 800,
                window_ms,
            },
            Kind::Hold => GestureStep::Hold {
                button,
                min_ms: 2_000,
                max_ms: 4_000,
                window_ms,
            },
            Kind::Push => GestureStep::Push { button, window_ms },
            Kind::Release => GestureStep::Release {
                button,
                min_ms: 0,
                window_ms,
            },
            Kind::Lid => GestureStep::Lid {
                to: LidMove::Up,
                window_ms,
            },
            Kind::PowerUp => GestureStep::PowerUp {
                holding: None,
                standing: None,
            },
            Kind::Pause => GestureStep::Pause { min_ms: 1_000 },
            Kind::Together => GestureStep::Together {
                buttons: (Button::Start, Button::Stop),
                apart_ms: 300,
                min_ms: 1_000,
                max_ms: 3_000,
                window_ms,
            },
        }
    }
}

/// Draws it.
pub(super) fn gesture_ui(
    ui: &mut Ui,
    context: &PanelContext,
    open: &mut BoardWorkshop,
    library: &Arc<ContentLibrary>,
    board: &mut Board,
) {
    kit::card(ui, |ui| {
        kit::heading(ui, context.text("workshop-board-page-gesture"));
        timeline::timeline_ui(ui, context.texts, &board.gesture, open.step);
        steps_ui(ui, context, open, board);
    });
    kit::card(ui, |ui| {
        kit::heading(ui, context.text("workshop-board-hands"));
        // A place of its own: what comes after keeps the keys when the shares are known.
        ui.scope(|ui| hands_ui(ui, context, open, library));
        let sound = open.mistakes().is_empty();
        if kit::main_button(ui, context.text("workshop-board-hand-try"), sound).clicked() {
            open.try_by_hand(library);
        }
    });
    kit::card(ui, |ui| {
        kit::heading(ui, context.text("workshop-board-whole"));
        let gesture = &mut board.gesture;
        let within = context.text("workshop-board-within");
        seconds_ui(ui, within, &mut gesture.within_ms, LONGEST_S);
        let rest = context.text("workshop-board-rest");
        seconds_ui(ui, rest, &mut gesture.rest_ms, LONGEST_STEP_S);
        let gap = context.text("workshop-board-gap");
        seconds_ui(ui, gap, &mut gesture.gap_ms, LONGEST_STEP_S);
        let from = context.text("workshop-board-from");
        option_ui(
            ui,
            from,
            &mut gesture.from,
            || 0,
            |ui, from| {
                count_ui(ui, context.text("workshop-board-position"), from, 0..=99);
            },
        );
        for note in context.texts.gesture_notes(gesture) {
            kit::quiet(ui, note);
        }
    });
}

/// How many of the simulated hands get in.
fn hands_ui(
    ui: &mut Ui,
    context: &PanelContext,
    open: &mut BoardWorkshop,
    library: &Arc<ContentLibrary>,
) {
    let is_sound = open.mistakes().is_empty();
    let shares = open.shares(library);
    if shares.is_none() && !is_sound {
        return kit::quiet(ui, context.text("workshop-board-hands-wrong"));
    }
    if shares.is_none() {
        ui.ctx().request_repaint();
    }
    let keys = [
        "workshop-board-hand-practiced",
        "workshop-board-hand-usual",
        "workshop-board-hand-unsteady",
    ];
    // Until they are known the same lines stand there, so that nothing moves when they are.
    for (n, key) in keys.into_iter().enumerate() {
        let share = shares.and_then(|shares| shares.get(n));
        let (inside, best_ms, color) = match share {
            None => (Value::from("…"), Value::from("…"), t::QUIET),
            Some(share) => {
                let inside = (share.share * f64::from(RUNS)).round();
                let color = if share.share < 0.5 { t::BAD } else { t::TEXT };
                (inside.into(), share.best_ms.round().into(), color)
            }
        };
        let args = [("in", inside), ("of", RUNS.into()), ("ms", best_ms)];
        ui.label(RichText::new(context.with(key, &args)).color(color));
    }
}

/// The steps, and the one that is chosen.
fn steps_ui(ui: &mut Ui, context: &PanelContext, open: &mut BoardWorkshop, board: &mut Board) {
    let steps = &mut board.gesture.steps;
    open.step = open.step.min(steps.len().saturating_sub(1));
    for (n, step) in steps.iter().enumerate() {
        let on = n == open.step;
        let ink = if on { t::ON_AMBER } else { t::TEXT };
        let told = format!("{}.  {}", n + 1, context.texts.gesture_step(step));
        let row = Row::selectable(on, RichText::new(told).color(ink)).wrap();
        if ui.add(row).clicked() {
            open.step = n;
        }
    }
    let chosen = open.step;
    let last = steps.len().saturating_sub(1);
    ui.horizontal_wrapped(|ui| {
        let button = |ui: &mut Ui, key: &str, enabled| plain_button(ui, context.text(key), enabled);
        if button(ui, "workshop-board-step-add", true) {
            let place = (chosen + 1).min(steps.len());
            steps.insert(place, Kind::Press.usual());
            open.step = place;
        }
        if button(ui, "workshop-board-step-earlier", chosen > 0) {
            steps.swap(chosen, chosen - 1);
            open.step = chosen - 1;
        }
        if button(ui, "workshop-board-step-later", chosen < last) {
            steps.swap(chosen, chosen + 1);
            open.step = chosen + 1;
        }
        if button(ui, "workshop-board-step-remove", last > 0) {
            steps.remove(chosen);
            open.step = chosen.min(last - 1);
        }
    });
    let chosen = open.step;
    if let Some(step) = steps.get_mut(chosen) {
        step_ui(ui, context, step);
    }
}

/// What a step asks for.
fn step_ui(ui: &mut Ui, context: &PanelContext, step: &mut GestureStep) {
    let text = |key: &str| context.text(key);
    let kinds = Kind::ALL.map(|kind| (kind, text(kind.key())));
    let name = text("workshop-board-step-kind");
    if let Some(kind) = list_ui(ui, "step-kind", &name, Kind::of(step), &kinds) {
        *step = kind.usual();
    }
    let seconds = |ui: &mut Ui, key: &str, ms: &mut u32| {
        seconds_ui(ui, text(key), ms, LONGEST_STEP_S);
    };
    match step {
        GestureStep::Turn { to, detents, .. } => {
            let ways = [
                (Direction::Left, text("drill-entry-left")),
                (Direction::Right, text("drill-entry-right")),
            ];
            if let Some(way) = kit::choices(ui, *to, ways) {
                *to = way;
            }
            count_ui(ui, text("workshop-board-step-detents"), detents, 1..=99);
        }
        GestureStep::Press {
            button,
            times,
            max_ms,
            ..
        } => {
            button_ui(ui, context, button);
            count_ui(ui, text("workshop-board-step-times"), times, 1..=20);
            seconds(ui, "workshop-board-step-no-longer", max_ms);
        }
        GestureStep::Hold {
            button,
            min_ms,
            max_ms,
            ..
        } => {
            button_ui(ui, context, button);
            seconds(ui, "workshop-board-step-no-shorter", min_ms);
            seconds(ui, "workshop-board-step-no-longer", max_ms);
        }
        GestureStep::Push { button, .. } => button_ui(ui, context, button),
        GestureStep::Release { button, min_ms, .. } => {
            button_ui(ui, context, button);
            seconds(ui, "workshop-board-step-not-before", min_ms);
        }
        GestureStep::Lid { to, .. } => {
            let ways = [
                (LidMove::Up, text("step-lid-up")),
                (LidMove::Down, text("step-lid-down")),
            ];
            if let Some(way) = kit::choices(ui, *to, ways) {
                *to = way;
            }
        }
        GestureStep::PowerUp { holding, standing } => {
            let name = text("workshop-board-step-holding");
            option_ui(
                ui,
                name,
                holding,
                || Button::Start,
                |ui, button| {
                    button_ui(ui, context, button);
                },
            );
            let usual = || Standing {
                at: 0,
                min_ms: 2_000,
            };
            let name = text("workshop-board-step-standing");
            option_ui(ui, name, standing, usual, |ui, standing| {
                let position = text("workshop-board-position");
                count_ui(ui, position, &mut standing.at, 0..=99);
                seconds(ui, "workshop-board-step-no-shorter", &mut standing.min_ms);
            });
        }
        GestureStep::Pause { min_ms } => {
            seconds(ui, "workshop-board-step-no-shorter", min_ms);
        }
        GestureStep::Together {
            buttons: (one, other),
            apart_ms,
            min_ms,
            max_ms,
            ..
        } => {
            button_ui(ui, context, one);
            ui.push_id("other", |ui| button_ui(ui, context, other));
            seconds(ui, "workshop-board-step-apart", apart_ms);
            seconds(ui, "workshop-board-step-no-shorter", min_ms);
            seconds(ui, "workshop-board-step-no-longer", max_ms);
        }
    }
    let Some(window_ms) = window_of(step) else {
        return;
    };
    let name = text("workshop-board-step-window");
    option_ui(
        ui,
        name,
        window_ms,
        || USUAL_WINDOW_MS,
        |ui, window_ms| {
            seconds(ui, "workshop-board-step-window-time", window_ms);
        },
    );
}

/// The window of a step; none where it cannot have one of its own.
fn window_of(step: &mut GestureStep) -> Option<&mut Option<u32>> {
    match step {
        GestureStep::Turn { window_ms, .. }
        | GestureStep::Press { window_ms, .. }
        | GestureStep::Hold { window_ms, .. }
        | GestureStep::Push { window_ms, .. }
        | GestureStep::Release { window_ms, .. }
        | GestureStep::Lid { window_ms, .. }
        | GestureStep::Together { window_ms, .. } => Some(window_ms),
        GestureStep::PowerUp { .. } | GestureStep::Pause { .. } => None,
    }
}

/// One of the buttons.
fn button_ui(ui: &mut Ui, context: &PanelContext, button: &mut Button) {
    let all = Button::ALL.iter().copied();
    let all = all.map(|button| (button, context.texts.button(button)));
    if let Some(chosen) = kit::choices(ui, *button, all) {
        *button = chosen;
    }
}
