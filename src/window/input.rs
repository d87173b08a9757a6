//! Keys, and the fixed 100 Hz loop that drains actions and steps the bench.

use super::film::Film;
use super::key_strokes::{self, KeyStroke, KeyStrokes};
use super::pick::PointingSystems;
use super::practice::LearnerRes;
use super::rest::NextFrame;
use super::shots::Shot;
use super::state::{BenchRes, MESSAGE_S, Screen, Tab, UiState, ViewKind};
use super::stops::{Glance, Stop};
use super::workshop::{Workshop, WorkshopRes};
use bevy::input::ButtonState;
use bevy::input::keyboard::KeyboardInput;
use bevy::platform::time::Instant;
use bevy::prelude::*;
use bevy::window::PrimaryWindow;
use bevy_egui::{EguiInput, EguiPreUpdateSet, egui};
use detent_content::KeyAction;
use detent_simulation::interface::{Button, Direction};
use detent_simulation::units::TICK_MS;
use detent_training::bench::Action;
use std::sync::Arc;
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

/// The button that an action works, if it does.
pub(super) const fn button_of(action: KeyAction) -> Option<Button> {
    match action {
        KeyAction::Start => Some(Button::Start),
        KeyAction::Stop => Some(Button::Stop),
        KeyAction::More => Some(Button::More),
        KeyAction::Less => Some(Button::Less),
        KeyAction::TurnLeft
        | KeyAction::TurnRight
        | KeyAction::Lid
        | KeyAction::Plug
        | KeyAction::Cabinet
        | KeyAction::Discharge
        | KeyAction::ViewConsole
        | KeyAction::ViewMachine
        | KeyAction::ViewInside
        | KeyAction::HidePanels
        | KeyAction::TabSheet
        | KeyAction::TabMeter
        | KeyAction::TabParts
        | KeyAction::TabReport
        | KeyAction::TabScore
        | KeyAction::WaitMinute
        | KeyAction::WaitTenMinutes
        | KeyAction::WaitUntilStop
        | KeyAction::Slower
        | KeyAction::Faster => None,
    }
}

/// What a key says now is not meant for the machine: a field or a question has it.
fn is_for_others(bench: &BenchRes, ui_state: &UiState) -> bool {
    ui_state.typing || bench.is_held_up() || ui_state.keys
}

/// The clock stands while nobody can see it. A browser draws nothing in a tab that is not shown, and so runs nothing.
fn set_aside(
    window: Single<&Window, With<PrimaryWindow>>,
    ui_state: Res<UiState>,
    picture: Option<Res<Shot>>,
    mut bench: ResMut<BenchRes>,
) {
    // Nobody need look while a picture is taken.
    let elsewhere = !cfg!(target_family = "wasm") && !window.focused && picture.is_none();
    // A film is watched from afar, whatever else has the focus.
    bench.set_aside = ui_state.keys || (elsewhere && bench.film().is_none());
}

/// The way in which an arrow key turns the knob; these keys type nothing and are nobody else's.
fn arrow_turn(stroke: &KeyStroke) -> Option<KeyAction> {
    let free = stroke.is_press() && !stroke.command && !stroke.alt_gr;
    match stroke.event.key_code {
        KeyCode::ArrowRight | KeyCode::ArrowDown if free => Some(KeyAction::TurnRight),
        KeyCode::ArrowLeft | KeyCode::ArrowUp if free => Some(KeyAction::TurnLeft),
        _ => None,
    }
}

/// The button that has the focus, or had it when the key went down.
fn pressed_in_focus(event: &KeyboardInput, ui_state: &mut UiState) -> Option<Button> {
    if !matches!(event.key_code, KeyCode::Space | KeyCode::Enter) {
        return None;
    }
    match event.state {
        ButtonState::Pressed => {
            ui_state.focused_press = ui_state.focused_button.or(ui_state.focused_press);
            ui_state.focused_button
        }
        ButtonState::Released => ui_state.focused_press.take(),
    }
}

/// Turns, presses and moves of the lid, event by event: at a low frame rate one frame holds several.
fn hands(strokes: Res<KeyStrokes>, mut ui_state: ResMut<UiState>, mut bench: ResMut<BenchRes>) {
    let busy = is_for_others(&bench, &ui_state) || bench.film().is_some();
    let job = Arc::clone(bench.job());
    let panel = &job.board.panel;
    for stroke in strokes.all() {
        let event = &stroke.event;
        let focused = pressed_in_focus(event, &mut ui_state);
        if event.state == ButtonState::Released {
            // A key that is let go always lets its button go.
            let stands_for = ui_state.key_bindings.stands_for(event.key_code);
            let button = stands_for.and_then(button_of).or(focused);
            let action = button.and_then(|button| ui_state.held.release(button));
            if let Some(action) = action {
                bench.push_aged(action, age(event));
            }
        }
        if busy {
            continue;
        }
        let done = arrow_turn(stroke).or_else(|| ui_state.key_bindings.done_by(stroke));
        let turns = panel.selector.turn().is_some();
        let action = match done {
            Some(KeyAction::TurnLeft) if turns => Some(Action::Detent(Direction::Left)),
            Some(KeyAction::TurnRight) if turns => Some(Action::Detent(Direction::Right)),
            Some(KeyAction::Lid) if bench.lid_will_be_up() => Some(Action::CloseLid),
            Some(KeyAction::Lid) => Some(Action::OpenLid),
            done => (done.and_then(button_of))
                .or(focused.filter(|_| stroke.is_press() && !stroke.command && !stroke.alt_gr))
                .filter(|button| panel.buttons.contains(button))
                .and_then(|button| ui_state.held.push(button, stroke.shift)),
        };
        if let Some(action) = action {
            bench.push_aged(action, age(event));
        }
    }
}

/// How long before the frame's clock the key moved, ticks, where the page knows it: a browser that draws
/// slowly hands keys over in heaps.
#[cfg(target_family = "wasm")]
fn age(event: &KeyboardInput) -> Option<i64> {
    let down = event.state == ButtonState::Pressed;
    super::web::key_age_ticks(&format!("{:?}", event.key_code), down)
}

/// A window system hands keys over at once.
#[cfg(not(target_family = "wasm"))]
fn age(_: &KeyboardInput) -> Option<i64> {
    None
}

/// The list of keys and what else somebody can choose: on every screen but a drill, whose keys are its own.
fn show_settings(
    keys: Res<ButtonInput<KeyCode>>,
    screen: Res<State<Screen>>,
    mut ui_state: ResMut<UiState>,
) {
    if keys.just_pressed(KeyCode::F1) && *screen.get() != Screen::Drill {
        ui_state.keys = !ui_state.keys;
        ui_state.rebinding = None;
    }
}

fn keys(
    keys: Res<ButtonInput<KeyCode>>,
    strokes: Res<KeyStrokes>,
    mut bench: ResMut<BenchRes>,
    mut ui_state: ResMut<UiState>,
) {
    if keys.just_pressed(KeyCode::Escape) {
        if bench.asked.is_some() {
            bench.step_back();
        } else if bench.wait_ticks > 0 {
            bench.stop_waiting();
        } else if !ui_state.keys {
            ui_state.selected = None;
        }
    }
    if is_for_others(&bench, &ui_state) {
        return;
    }
    for stroke in strokes.all() {
        if let Some(done) = ui_state.key_bindings.done_by(stroke) {
            do_at_desk(done, &mut bench, &mut ui_state);
        }
    }
}

/// Speeds of the clock; 0: it is paused.
const SPEEDS: [u32; 4] = [0, 1, 10, 60];

/// What a key does besides working the machine.
fn do_at_desk(done: KeyAction, bench: &mut BenchRes, ui_state: &mut UiState) {
    if let Some(film) = bench.film_mut() {
        let faster = match done {
            KeyAction::Slower => Some(false),
            KeyAction::Faster => Some(true),
            _ => None,
        };
        if let Some(faster) = faster {
            film.change_speed(faster);
            return;
        }
    }
    let view = bench.view();
    let (plugged, open) = (view.machine.plugged, view.cabinet_open);
    let either = |now: bool, off: Action, on: Action| if now { off } else { on };
    let speed = SPEEDS
        .iter()
        .position(|s| *s == ui_state.speed)
        .unwrap_or(1);
    match done {
        KeyAction::Plug => bench.push(either(plugged, Action::Unplug, Action::Plug)),
        KeyAction::Cabinet => {
            bench.push(either(open, Action::CloseCabinet, Action::OpenCabinet));
        }
        KeyAction::Discharge => bench.push(Action::Discharge),
        KeyAction::ViewConsole => ui_state.show_view(ViewKind::Panel),
        KeyAction::ViewMachine => ui_state.show_view(ViewKind::Machine),
        KeyAction::ViewInside => ui_state.show_view(ViewKind::Cabinet),
        KeyAction::HidePanels => ui_state.hidden = !ui_state.hidden,
        KeyAction::TabSheet => ui_state.open_tab(Tab::Sheet),
        KeyAction::TabMeter => ui_state.open_tab(Tab::Meter),
        KeyAction::TabParts => ui_state.open_tab(Tab::Parts),
        KeyAction::TabReport => ui_state.open_tab(Tab::Report),
        KeyAction::TabScore => ui_state.open_tab(Tab::Score),
        KeyAction::WaitMinute => bench.wait(6_000),
        KeyAction::WaitTenMinutes => bench.wait(60_000),
        KeyAction::WaitUntilStop => bench.wait_until_it_stops(),
        KeyAction::Slower => ui_state.speed = SPEEDS[speed.saturating_sub(1)],
        KeyAction::Faster => ui_state.speed = SPEEDS[(speed + 1).min(SPEEDS.len() - 1)],
        // Hands do these, in the order of the strokes.
        KeyAction::TurnLeft
        | KeyAction::TurnRight
        | KeyAction::Start
        | KeyAction::Stop
        | KeyAction::More
        | KeyAction::Less
        | KeyAction::Lid => {}
    }
}

/// A tap or click that begins and ends within one frame can be gone before a panel saw it: its end
/// waits for the next frame.
fn hold_taps_back(
    mut inputs: Query<&mut EguiInput>,
    mut late: Local<Vec<egui::Event>>,
    mut next: ResMut<NextFrame>,
) {
    for mut input in &mut inputs {
        let new = std::mem::take(&mut input.events);
        input.events = std::mem::take(&mut *late);
        input.events.extend(new);
        *late = end_of_tap(&mut input.events);
    }
    if !late.is_empty() {
        next.ask();
    }
}

/// Takes out what ends a tap, if it also begins here.
fn end_of_tap(events: &mut Vec<egui::Event>) -> Vec<egui::Event> {
    let button = |event: &egui::Event, down: bool| match event {
        egui::Event::PointerButton { pressed, .. } => *pressed == down,
        _ => false,
    };
    let Some(begins) = events.iter().position(|event| button(event, true)) else {
        return Vec::new();
    };
    let ends = (events[begins..].iter()).position(|event| button(event, false));
    ends.map_or_else(Vec::new, |n| events.split_off(begins + n))
}

/// The machine's clock runs, the job is being thought over, or a message on the bench has its time.
fn ask_for_next_frame(
    bench: Res<BenchRes>,
    ui_state: Res<UiState>,
    time: Res<Time>,
    mut next: ResMut<NextFrame>,
) {
    let message = (ui_state.message.as_ref())
        .is_some_and(|(_, since_s)| time.elapsed_secs() - since_s < MESSAGE_S);
    let runs = bench.runs(ui_state.speed);
    if bench
        .film()
        .is_some_and(|film| film.is_busy() || (runs && film.speed() > 1))
    {
        next.ask();
    }
    // A fast clock has too much to do for a few frames a second.
    if bench.is_thinking() || (runs && (ui_state.speed > 1 || bench.wait_ticks > 0)) {
        next.ask();
    }
    if runs || message {
        next.watch();
    }
}

/// A job is being set up, from whichever screen, or one on the workshop's bench is not proved yet.
fn ask_while_opening(
    ui_state: Res<UiState>,
    (screen, workshop): (Res<State<Screen>>, Res<WorkshopRes>),
    mut next: ResMut<NextFrame>,
) {
    let open = workshop.open.as_ref();
    let open = open.filter(|_| *screen.get() == Screen::Workshop);
    if ui_state.opening.is_some() || open.is_some_and(Workshop::is_busy) {
        next.ask();
    }
    // It is proved once its writer pauses.
    if open.is_some_and(|open| open.proof().is_under_way()) {
        next.watch();
    }
}

fn start_budget(mut budget: ResMut<Budget>) {
    budget.until = Instant::now() + FRAME_BUDGET;
}

/// Within the time allowed, runs `ticks`: how many were run, and what ended the run, if something did: there it breaks
/// off.
fn run(bench: &mut BenchRes, ticks: u64, until: Instant) -> (u64, Option<Stop>) {
    let mut before = Glance::of(bench);
    for done in 0..ticks {
        if bench.is_held_up() || (done % 16 == 15 && Instant::now() > until) {
            return (done, None);
        }
        bench.tick();
        let now = Glance::of(bench);
        if let Some(stop) = now.stop_since(before, bench) {
            return (done + 1, Some(stop));
        }
        before = now;
    }
    (ticks, None)
}

/// Something came that ends a run. Whoever waited for it, or let a fast clock run, finds it paused: the customer pays
/// for every minute that nobody needs. A wait for a time is broken off, and the clock is as it was before. Nobody is
/// paused who is under examination, where pauses are noted.
fn break_off(bench: &mut BenchRes, ui_state: &mut UiState, stop: Stop) {
    let (fast, waits) = (ui_state.speed > 1, bench.wait_ticks > 0);
    if !fast && !waits {
        return;
    }
    if ui_state.examined.is_some() {
        ui_state.speed = ui_state.speed.min(1);
        bench.broken_off = Some(stop);
    } else if fast || bench.waits_for_stop() {
        ui_state.speed = 0;
        ui_state.stopped = Some(stop);
    } else {
        bench.broken_off = Some(stop);
    }
    bench.stop_waiting();
}

/// Before the ticks of a frame: what came in since the last one.
fn spread(mut bench: ResMut<BenchRes>, ui_state: Res<UiState>, time: Res<Time<Virtual>>) {
    let frame = time.delta().as_millis() as u64;
    bench.spread(frame / TICK_MS * u64::from(ui_state.speed));
}

/// Within the time allowed, so many ticks of the film.
fn run_film(bench: &mut BenchRes, until: Instant) {
    let ticks = bench.film().map_or(0, Film::speed);
    for done in 0..ticks {
        if !bench.runs(0) || (done % 16 == 15 && Instant::now() > until) {
            return;
        }
        bench.tick();
    }
}

fn step(mut bench: ResMut<BenchRes>, mut ui_state: ResMut<UiState>, budget: Res<Budget>) {
    if bench.film().is_some() {
        run_film(&mut bench, budget.until);
        return;
    }
    let (_, stop) = run(&mut bench, u64::from(ui_state.speed), budget.until);
    if let Some(stop) = stop {
        break_off(&mut bench, &mut ui_state, stop);
    }
}

/// Within the time allowed, a piece of what is left to wait.
fn wait_on(bench: &mut BenchRes, ui_state: &mut UiState, until: Instant) {
    let waits_for_stop = bench.waits_for_stop();
    let (done, stop) = run(bench, bench.wait_ticks.min(6_000), until);
    if let Some(stop) = stop {
        break_off(bench, ui_state, stop);
        return;
    }
    // What hurt somebody has left nothing of it.
    let left = bench.wait_ticks.saturating_sub(done);
    if left == 0 && waits_for_stop && !bench.is_held_up() {
        break_off(bench, ui_state, Stop::NothingCame);
    }
    bench.wait_ticks = left;
}

/// Once a frame: what is left to wait, then a fresh look.
fn finish_frame(
    mut bench: ResMut<BenchRes>,
    mut ui_state: ResMut<UiState>,
    learner: Res<LearnerRes>,
    budget: Res<Budget>,
) {
    if bench.runs(ui_state.speed) {
        ui_state.stopped = None;
    }
    if let Some(film) = bench.film_mut() {
        film.go_on();
    } else if bench.wait_ticks > 0 {
        wait_on(&mut bench, &mut ui_state, budget.until);
    } else if ui_state.speed == 0 {
        bench.do_while_paused();
    }
    bench.know_hand(learner.hand());
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
    key_strokes::plugin(app);
    app.insert_resource(Time::<Fixed>::from_duration(Duration::from_millis(TICK_MS)))
        .insert_resource(Budget {
            until: Instant::now(),
        })
        .add_systems(First, start_budget)
        .add_systems(
            PreUpdate,
            (set_aside, hands, keys)
                .chain()
                .after(show_settings)
                .before(PointingSystems)
                .after(key_strokes::read)
                .after(EguiPreUpdateSet::ProcessInput)
                .run_if(in_state(Screen::Bench)),
        )
        .add_systems(
            PreUpdate,
            show_settings
                .after(key_strokes::read)
                .after(EguiPreUpdateSet::ProcessInput),
        )
        .add_systems(
            PreUpdate,
            hold_taps_back
                .after(EguiPreUpdateSet::ProcessInput)
                .before(EguiPreUpdateSet::BeginPass),
        )
        .add_systems(FixedUpdate, step.run_if(in_state(Screen::Bench)))
        .add_systems(Last, mark.run_if(in_state(Screen::Bench)))
        .add_systems(
            PostUpdate,
            (
                ask_for_next_frame.run_if(in_state(Screen::Bench)),
                ask_while_opening,
            ),
        )
        .add_systems(
            RunFixedMainLoop,
            spread
                .in_set(RunFixedMainLoopSystems::BeforeFixedMainLoop)
                .run_if(in_state(Screen::Bench)),
        )
        .add_systems(
            RunFixedMainLoop,
            finish_frame
                .in_set(RunFixedMainLoopSystems::AfterFixedMainLoop)
                .run_if(in_state(Screen::Bench)),
        );
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::AppOptions;
    use crate::port::JobSource;
    use crate::rest::tests::{paused, send_key};
    use crate::state::Examined;
    use crate::workbench::LibraryJobs;
    use bevy::input::keyboard::Key;
    use detent_simulation::controller::ControlMode;
    use detent_simulation::interface::Component;
    use detent_training::bench::Incident;
    use detent_training::bench::script::ScriptStep;
    use detent_training::practice::Moment;
    use detent_training::without_breaks;

    fn finger(pressed: bool) -> egui::Event {
        egui::Event::PointerButton {
            pos: egui::pos2(10.0, 10.0),
            button: egui::PointerButton::Primary,
            pressed,
            modifiers: egui::Modifiers::NONE,
        }
    }

    #[track_caller]
    fn check(events: &[egui::Event], now: usize) {
        let mut kept = events.to_vec();
        let late = end_of_tap(&mut kept);
        assert_eq!(kept, events[..now]);
        assert_eq!(late, events[now..]);
    }

    #[test]
    fn what_is_pressed_and_let_go_within_a_frame_is_let_go_in_the_next() {
        let gone = egui::Event::PointerGone;
        check(&[], 0);
        check(&[finger(true)], 1);
        check(&[finger(false), gone.clone()], 2);
        check(&[finger(true), finger(false), gone.clone()], 1);
        check(&[finger(true), finger(false)], 1);
        // A tap that ends, and another that begins.
        check(&[finger(false), gone, finger(true)], 3);
    }

    fn hand_over(app: &mut App, keys: &[(KeyCode, Key, ButtonState)]) {
        for (key_code, logical_key, state) in keys.iter().cloned() {
            send_key(app, key_code, logical_key, state);
        }
    }

    /// Hands keys over within one frame at a bench whose clock stands: the speed then, whether the lid is up, and
    /// whether a hand was at the console.
    #[track_caller]
    fn check_keys(keys: &[(KeyCode, Key, ButtonState)], speed: u32, lid_up: bool, turned: bool) {
        let mut app = paused(&AppOptions {
            start: Some((0, 71)),
            ..AppOptions::default()
        });
        (0..5).for_each(|_| app.update());
        hand_over(&mut app, keys);
        (0..5).for_each(|_| app.update());
        let ui_state = app.world().resource::<UiState>();
        assert_eq!(ui_state.speed, speed);
        assert_eq!(ui_state.message.is_some(), turned, "{:?}", ui_state.message);
        let bench = app.world().resource::<BenchRes>();
        assert_eq!(bench.view().machine.lid_open, lid_up);
    }

    fn letter(code: KeyCode, letter: &str, state: ButtonState) -> (KeyCode, Key, ButtonState) {
        (code, Key::Character(letter.into()), state)
    }

    const DOWN: ButtonState = ButtonState::Pressed;
    const UP: ButtonState = ButtonState::Released;

    #[test]
    fn a_key_belongs_to_the_modifier_keys_that_were_held_with_it_however_slow_the_frame() {
        let lid = |state| letter(KeyCode::KeyL, "l", state);
        let plus = |state| letter(KeyCode::Equal, "+", state);
        let knob = |state| (KeyCode::ArrowRight, Key::ArrowRight, state);
        check_keys(&[lid(DOWN), lid(UP)], 0, true, false);
        check_keys(&[plus(DOWN), plus(UP)], 1, false, false);
        check_keys(&[knob(DOWN), knob(UP)], 0, false, true);
        for (code, key) in [
            (KeyCode::ControlLeft, Key::Control),
            (KeyCode::ControlRight, Key::Control),
            // The layout makes another key of it.
            (KeyCode::CapsLock, Key::Control),
            (KeyCode::AltLeft, Key::Alt),
            (KeyCode::SuperLeft, Key::Super),
        ] {
            let with = |state| (code, key.clone(), state);
            for letter in [lid, plus, knob] {
                // Held before and let go first, or last.
                check_keys(
                    &[with(DOWN), letter(DOWN), with(UP), letter(UP)],
                    0,
                    false,
                    false,
                );
                check_keys(
                    &[with(DOWN), letter(DOWN), letter(UP), with(UP)],
                    0,
                    false,
                    false,
                );
            }
            // Let go before, or held only after.
            check_keys(&[with(DOWN), with(UP), lid(DOWN), lid(UP)], 0, true, false);
            check_keys(&[lid(DOWN), with(DOWN), with(UP), lid(UP)], 0, true, false);
        }
    }

    /// On a Spanish keyboard the brackets are typed with AltGr, on a German one with AltGr on digits.
    #[test]
    fn what_is_typed_with_alt_gr_counts_and_its_key_does_not() {
        let alt_gr = |state| vec![(KeyCode::AltRight, Key::AltGraph, state)];
        // As some systems tell of it.
        let both = |state| {
            vec![
                (KeyCode::ControlLeft, Key::Control, state),
                (KeyCode::AltRight, Key::Alt, state),
            ]
        };
        for with in [alt_gr, both] {
            let typed = |code, text| {
                let strokes = [letter(code, text, DOWN), letter(code, text, UP)];
                [with(DOWN), strokes.to_vec(), with(UP)].concat()
            };
            check_keys(&typed(KeyCode::BracketLeft, "["), 0, false, true);
            check_keys(&typed(KeyCode::Digit9, "]"), 0, false, true);
            check_keys(&typed(KeyCode::KeyL, "ł"), 0, false, false);
            check_keys(&typed(KeyCode::BracketRight, "~"), 0, false, false);
        }
    }

    #[test]
    fn shift_keeps_a_button_down_even_where_both_are_let_go_in_the_frame() {
        for (shift_first, kept) in [(true, true), (false, false)] {
            let mut app = paused(&AppOptions {
                start: Some((0, 71)),
                ..AppOptions::default()
            });
            (0..5).for_each(|_| app.update());
            let shift = [DOWN, UP].map(|state| (KeyCode::ShiftLeft, Key::Shift, state));
            let button = [DOWN, UP].map(|state| letter(KeyCode::KeyS, "S", state));
            let [[a, d], [b, c]] = [shift, button];
            let order = match shift_first {
                true => [a, b, c, d],
                false => [a, d, b, c],
            };
            hand_over(&mut app, &order);
            app.update();
            let held = &app.world().resource::<UiState>().held;
            assert_eq!(held.kept().next().is_some(), kept, "{held:?}");
        }
    }

    fn first_job() -> BenchRes {
        let jobs = LibraryJobs::new(None, None).expect("the built-in jobs are sound");
        let opened = without_breaks(jobs.open(0, 101));
        BenchRes::new(opened.unwrap_or_else(|error| panic!("{error:?}")))
    }

    #[test]
    fn a_wait_is_over_when_somebody_is_hurt() {
        let (mut bench, mut ui_state) = (first_job(), UiState::default());
        let long = Instant::now() + Duration::from_secs(60);
        for action in [Action::OpenCabinet, Action::Inspect(Component::Motor)] {
            bench.push(action);
            bench.wait_ticks = 30_000;
            wait_on(&mut bench, &mut ui_state, long);
            assert!(bench.asked.is_some(), "cautioned before");
            assert_eq!(bench.wait_ticks, 29_999, "a caution holds a wait up");
            bench.go_on();
            wait_on(&mut bench, &mut ui_state, long);
        }
        assert_eq!(bench.incident, Some(Incident::Shock));
        assert_eq!(bench.wait_ticks, 0);
    }

    /// The first job with a program begun. Its belt is broken, so that the control stops.
    fn washing() -> BenchRes {
        let mut bench = first_job();
        for line in [
            ScriptStep::PowerDown,
            ScriptStep::Do(Action::Plug),
            ScriptStep::Wait { s: 3 },
            ScriptStep::Point {
                to: 10,
                every_ms: 250,
            },
            ScriptStep::Tap(Button::Start),
        ] {
            bench.run(&line).expect("a person can do this");
        }
        bench
    }

    /// Runs the clock at this speed or waits until a run breaks off: the speed then, why it was paused, and what is
    /// told otherwise.
    fn broken_off(
        mut bench: BenchRes,
        speed: u32,
        examined: bool,
    ) -> (u32, Option<Stop>, Option<Stop>) {
        let mut ui_state = UiState {
            speed,
            examined: examined.then(|| Examined {
                job: String::new(),
                until: Moment(i64::MAX),
                sheet: Vec::new(),
            }),
            ..UiState::default()
        };
        let long = Instant::now() + Duration::from_secs(60);
        let waits = bench.wait_ticks > 0;
        for _ in 0..100_000 {
            if waits {
                wait_on(&mut bench, &mut ui_state, long);
            } else if let (_, Some(stop)) = run(&mut bench, u64::from(speed), long) {
                break_off(&mut bench, &mut ui_state, stop);
            }
            if ui_state.stopped.is_some() || bench.broken_off.is_some() {
                break;
            }
        }
        assert_eq!(bench.wait_ticks, 0);
        (ui_state.speed, ui_state.stopped, bench.broken_off)
    }

    #[test]
    fn whoever_lets_time_run_finds_the_clock_paused_where_the_control_stops_and_is_told_why() {
        let until = || {
            let mut bench = washing();
            bench.wait_until_it_stops();
            bench
        };
        let held = Some(Stop::Held);
        for speed in [0, 1, 10, 60] {
            assert_eq!(broken_off(until(), speed, false), (0, held, None));
        }
        for speed in [10, 60] {
            assert_eq!(broken_off(washing(), speed, false), (0, held, None));
        }
        // A wait for a time is no order to pause.
        let mut bench = washing();
        bench.wait_ticks = 200_000;
        assert_eq!(broken_off(bench, 1, false), (1, None, held));
        // A pause would be noted against somebody who did not ask for one.
        assert_eq!(broken_off(until(), 60, true), (1, None, held));
    }

    /// At its own speed the clock goes on: somebody watches.
    #[test]
    fn nothing_pauses_a_clock_that_nobody_hurried() {
        let (mut bench, mut ui_state) = (washing(), UiState::default());
        break_off(&mut bench, &mut ui_state, Stop::Held);
        let told = (ui_state.speed, ui_state.stopped, bench.broken_off);
        assert_eq!(told, (1, None, None));
    }

    #[test]
    fn a_wait_in_vain_ends_after_two_hours() {
        let mut bench = first_job();
        bench.run(&ScriptStep::PowerDown).expect("there is a plug");
        bench.wait_until_it_stops();
        let stop = Some(Stop::NothingCame);
        assert_eq!(broken_off(bench, 1, false), (0, stop, None));
    }

    /// The gesture of the first board: six detents left, Stop, three left, Start held.
    #[test]
    fn service_mode_that_nobody_uses_ends_a_wait_when_it_is_left() {
        let turn = |detents| ScriptStep::Turn {
            way: Direction::Left,
            detents,
            every_ms: 200,
        };
        let mut bench = first_job();
        for line in [
            ScriptStep::PowerDown,
            ScriptStep::Do(Action::Plug),
            ScriptStep::Wait { s: 3 },
            turn(6),
            ScriptStep::Tap(Button::Stop),
            turn(3),
            ScriptStep::Hold {
                button: Button::Start,
                ms: 1700,
            },
            ScriptStep::Wait { s: 1 },
        ] {
            bench.run(&line).expect("a person can do this");
        }
        let mode = bench.view().machine.control.mode;
        assert_eq!(mode, ControlMode::Service);
        bench.wait_until_it_stops();
        let stop = Some(Stop::ServiceLeft);
        assert_eq!(broken_off(bench, 1, false), (0, stop, None));
    }
}
