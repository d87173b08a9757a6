//! Keys, and the fixed 100 Hz loop that drains actions and steps the bench.

use super::scene::console::Held;
use super::state::{BenchRes, Desk, Screen, Tab, ViewKind};
use crate::bench::{Action, Turn};
use crate::plant::Button;
use crate::units::TICK_MS;
use bevy::input::ButtonState;
use bevy::input::keyboard::KeyboardInput;
use bevy::platform::time::Instant;
use bevy::prelude::*;
use bevy_egui::input::EguiWantsInput;
use std::time::Duration;

/// Longest time that stepping may take in one frame; what is left over is simply slower time.
const FRAME_BUDGET: Duration = Duration::from_millis(28);

/// How often the clock of an unfinished attempt is remembered, s.
const MARK_EVERY_S: f32 = 5.0;

/// When this frame's stepping began.
#[derive(Resource)]
struct Budget {
    until: Instant,
}

/// Turns and presses, event by event: at a low frame rate one frame holds several.
fn hands(
    mut events: MessageReader<KeyboardInput>,
    wants: Res<EguiWantsInput>,
    time: Res<Time<Real>>,
    desk: Res<Desk>,
    mut bench: ResMut<BenchRes>,
    mut held: ResMut<Held>,
) {
    let busy = wants.wants_any_keyboard_input() || bench.asked.is_some() || desk.keys;
    for event in events.read() {
        let pressed = event.state == ButtonState::Pressed;
        let button = match event.key_code {
            KeyCode::KeyS => Some(Button::Start),
            KeyCode::KeyX => Some(Button::Stop),
            _ => None,
        };
        if let Some(button) = button {
            let down = &mut held.0[button.index()];
            // A key that is let go always lets its button go.
            if pressed && !busy && !*down {
                *down = true;
                bench.push(Action::Down(button));
            } else if !pressed && *down {
                *down = false;
                bench.push(Action::Up(button));
            }
            continue;
        }
        let turn = match event.key_code {
            KeyCode::ArrowRight | KeyCode::ArrowDown | KeyCode::BracketRight => Turn::Right,
            KeyCode::ArrowLeft | KeyCode::ArrowUp | KeyCode::BracketLeft => Turn::Left,
            _ => continue,
        };
        if pressed && !event.repeat && !busy {
            bench.push(Action::Detent(turn));
        }
    }
    bench.spread((time.delta_secs() * 1000.0) as u64 / TICK_MS);
}

fn keys(
    keys: Res<ButtonInput<KeyCode>>,
    wants: Res<EguiWantsInput>,
    mut bench: ResMut<BenchRes>,
    mut desk: ResMut<Desk>,
) {
    if keys.just_pressed(KeyCode::F1) {
        desk.keys = !desk.keys;
    }
    if keys.just_pressed(KeyCode::Escape) {
        if bench.asked.is_some() {
            bench.step_back();
        } else if bench.wait_ticks > 0 {
            bench.wait_ticks = 0;
        } else if !desk.keys {
            desk.selected = None;
        }
    }
    if wants.wants_any_keyboard_input() || bench.asked.is_some() || desk.keys {
        return;
    }
    let any = |list: &[KeyCode]| keys.any_just_pressed(list.iter().copied());
    let view = bench.view();
    let (lid, plugged, open) = (
        view.machine.lid_open,
        view.machine.plugged,
        view.cabinet_open,
    );
    let either = |now: bool, off: Action, on: Action| if now { off } else { on };
    for (key, action) in [
        (
            KeyCode::KeyL,
            either(lid, Action::CloseLid, Action::OpenLid),
        ),
        (KeyCode::KeyP, either(plugged, Action::Unplug, Action::Plug)),
        (
            KeyCode::KeyC,
            either(open, Action::CloseCabinet, Action::OpenCabinet),
        ),
        (KeyCode::KeyD, Action::Discharge),
    ] {
        if keys.just_pressed(key) {
            bench.push(action);
        }
    }
    for (key, kind) in [
        (KeyCode::Digit1, ViewKind::Panel),
        (KeyCode::Digit2, ViewKind::Machine),
        (KeyCode::Digit3, ViewKind::Cabinet),
    ] {
        if keys.just_pressed(key) {
            desk.view = kind;
        }
    }
    for (key, tab) in [
        (KeyCode::KeyV, Tab::Sheet),
        (KeyCode::KeyM, Tab::Meter),
        (KeyCode::KeyB, Tab::Parts),
        (KeyCode::KeyR, Tab::Report),
        (KeyCode::KeyG, Tab::Score),
    ] {
        if keys.just_pressed(key) {
            desk.tab = tab;
        }
    }
    if keys.just_pressed(KeyCode::KeyH) {
        desk.hidden = !desk.hidden;
    }
    if keys.just_pressed(KeyCode::KeyT) {
        bench.wait_ticks += 6_000;
    }
    if keys.just_pressed(KeyCode::KeyY) {
        bench.wait_ticks += 60_000;
    }
    let speeds = [0, 1, 10, 60];
    let place = speeds.iter().position(|s| *s == desk.speed).unwrap_or(1);
    if any(&[KeyCode::Equal, KeyCode::NumpadAdd]) {
        desk.speed = speeds[(place + 1).min(3)];
    }
    if any(&[KeyCode::Minus, KeyCode::NumpadSubtract]) {
        desk.speed = speeds[place.saturating_sub(1)];
    }
}

fn start_budget(mut budget: ResMut<Budget>) {
    budget.until = Instant::now() + FRAME_BUDGET;
}

/// Within the time allowed, runs `ticks`; false when time ran out or a caution came up.
fn run(bench: &mut BenchRes, ticks: u64, until: Instant) -> u64 {
    for done in 0..ticks {
        if bench.asked.is_some() || (done % 16 == 15 && Instant::now() > until) {
            return done;
        }
        bench.tick();
    }
    ticks
}

fn step(mut bench: ResMut<BenchRes>, desk: Res<Desk>, budget: Res<Budget>) {
    run(&mut bench, u64::from(desk.speed), budget.until);
}

/// Once a frame: what is left to wait, then a fresh look.
fn look(mut bench: ResMut<BenchRes>, budget: Res<Budget>) {
    if bench.wait_ticks > 0 {
        let ticks = bench.wait_ticks.min(6_000);
        let done = run(&mut bench, ticks, budget.until);
        bench.wait_ticks -= done;
    }
    bench.refresh();
}

/// A bench that is broken off goes on from about where it was.
fn mark(mut bench: ResMut<BenchRes>, time: Res<Time<Real>>, mut since_s: Local<f32>) {
    *since_s += time.delta_secs();
    if *since_s > MARK_EVERY_S {
        *since_s = 0.0;
        bench.mark();
    }
}

/// Keys and time.
pub fn plugin(app: &mut App) {
    app.insert_resource(Time::<Fixed>::from_duration(Duration::from_millis(TICK_MS)))
        .insert_resource(Budget {
            until: Instant::now(),
        })
        .add_systems(First, start_budget)
        .add_systems(
            PreUpdate,
            (hands, keys)
                .chain()
                .after(bevy::input::InputSystems)
                .after(bevy_egui::EguiPreUpdateSet::ProcessInput)
                .run_if(in_state(Screen::Bench)),
        )
        .add_systems(FixedUpdate, step.run_if(in_state(Screen::Bench)))
        .add_systems(Last, mark.run_if(in_state(Screen::Bench)))
        .add_systems(
            RunFixedMainLoop,
            look.in_set(RunFixedMainLoopSystems::AfterFixedMainLoop)
                .run_if(in_state(Screen::Bench)),
        );
}
