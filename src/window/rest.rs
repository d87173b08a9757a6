//! When the window draws its next frame: soon while something moves, a little later while only the
//! machine's clock runs, otherwise when somebody does something. Whoever needs a further frame asks for
//! it in each frame.

use bevy::prelude::*;
use bevy::render::view::screenshot::Screenshot;
use bevy::window::WindowEvent;
use bevy::winit::{UpdateMode, WinitSettings};
use bevy_egui::{EguiInput, EguiInputSet, EguiPreUpdateSet, egui};
use std::time::Duration;

/// Between two frames while something moves: sixty a second at most, so that no processor gets hot.
const MOVING: Duration = Duration::from_micros(16_600);
/// The same while the person works in another window.
const MOVING_UNFOCUSED: Duration = Duration::from_millis(33);
/// While only the machine's clock runs: what changes by itself is seen this late at most. Hands wake the
/// window at once.
const WATCHING: Duration = Duration::from_millis(50);
/// Where a frame takes long, the clock's frames leave that much time between them, up to this: hands
/// must not wait behind a queue of frames that only show the clock.
const WATCHING_SLOWLY: Duration = Duration::from_millis(400);
/// While nothing moves. Not `Duration::MAX`: `bevy_winit` adds it to an instant, and where that
/// overflows it sets no timeout at all and goes on as it did.
const RESTING: Duration = Duration::from_secs(3_600);
/// Frames after the last event: what was clicked passes through states, texts and two passes of egui
/// before it is seen.
const SETTLING_FRAMES: u8 = 4;
/// Frames after the last that somebody asked for: letters that it was the first to show reach the graphics
/// card one frame later.
const FRAMES_AFTER_MOTION: u8 = 2;

/// Longest frame that the clocks make good while something moves; after a longer one they have stood
/// still. A gesture at the machine is timed, so they keep up with a slow screen.
pub const LONGEST_FRAME: Duration = Duration::from_secs(3);

/// Whether the next frame is wanted soon.
#[derive(Resource, Default)]
pub struct NextFrame {
    moving: bool,
    watching: bool,
    settling: u8,
    after_motion: u8,
    /// When the window is woken at the latest, if it is.
    wake_in: Option<Duration>,
    /// The panels stand in this frame as they were.
    panels_stand: bool,
    /// The panels do not show yet what has moved.
    panels_behind: bool,
}

impl NextFrame {
    /// Something moves: the next frame is wanted soon.
    pub fn ask(&mut self) {
        self.moving = true;
    }

    /// The panels are not laid out in this frame: what moves in it they show in a later one.
    pub fn panels_stand(&mut self) {
        self.panels_stand = true;
    }

    /// Somebody has just done something, and it is seen through.
    pub fn is_settling(&self) -> bool {
        self.settling > 0
    }

    /// Somebody has done something otherwise than through the window system.
    pub fn settle(&mut self) {
        self.settling = SETTLING_FRAMES;
    }

    /// Something may change by itself: the next frame may take a little.
    pub fn watch(&mut self) {
        self.watching = true;
    }
}

impl NextFrame {
    /// There is something to be done in that time, whoever looks: the next frame comes then, within a second.
    pub fn wake_in(&mut self, wait: Duration) {
        // A wait that is another one in each frame would ask for a frame by itself.
        let wait = Duration::from_secs(wait.as_secs() + 1);
        self.wake_in = Some(self.wake_in.map_or(wait, |sooner| sooner.min(wait)));
    }
}

/// How long frames take beyond the wait that was asked for; forgotten within a few frames.
#[derive(Default)]
struct Lateness {
    asked: Duration,
    late: Duration,
}

impl Lateness {
    /// After a frame that came so long after the one before it.
    fn note(&mut self, frame: Duration) {
        let late = frame.saturating_sub(self.asked);
        self.late = late.max(self.late.mul_f32(0.8));
    }

    /// The wait while only the clock runs.
    fn watching(&self) -> Duration {
        self.late.clamp(WATCHING, WATCHING_SLOWLY)
    }
}

/// `bevy_egui` reports the modifier keys in every frame, and egui draws again after every event, so that
/// it would draw for ever. Only a change is passed on.
fn drop_unchanged_modifiers(
    mut inputs: Query<&mut EguiInput>,
    mut known: Local<Option<egui::Modifiers>>,
) {
    for mut input in &mut inputs {
        input.events.retain(|event| match event {
            egui::Event::ModifiersChanged(modifiers) => {
                known.replace(*modifiers) != Some(*modifiers)
            }
            _ => true,
        });
    }
}

/// What came from the window system is seen through.
fn settle(mut events: MessageReader<WindowEvent>, mut next: ResMut<NextFrame>) {
    if events.read().count() > 0 {
        next.settle();
    }
}

/// A picture of the window is taken in a later frame.
fn ask_for_screenshots(pictures: Query<(), With<Screenshot>>, mut next: ResMut<NextFrame>) {
    if !pictures.is_empty() {
        next.ask();
    }
}

/// At the end of a frame: how long to wait for the next.
fn choose_wait(
    mut next: ResMut<NextFrame>,
    mut settings: ResMut<WinitSettings>,
    mut clock: ResMut<Time<Virtual>>,
    real: Res<Time<Real>>,
    mut lateness: Local<Lateness>,
) {
    let asked = std::mem::take(&mut next.moving);
    let watching = std::mem::take(&mut next.watching);
    let moved = asked || watching || next.settling > 0;
    next.panels_behind = std::mem::take(&mut next.panels_stand) && (moved || next.panels_behind);
    // Where the clock is watched there will be a next frame anyhow.
    let seen_through = (next.after_motion > 0 || next.panels_behind) && !watching;
    let moving = asked || next.settling > 0 || seen_through;
    next.settling = next.settling.saturating_sub(1);
    next.after_motion = if asked {
        FRAMES_AFTER_MOTION
    } else {
        next.after_motion.saturating_sub(1)
    };
    lateness.note(real.delta());
    let resting = next.wake_in.take().unwrap_or(RESTING);
    let (focused, unfocused, longest) = if moving {
        (MOVING, MOVING_UNFOCUSED, LONGEST_FRAME)
    } else if watching {
        let wait = lateness.watching();
        (wait, wait, LONGEST_FRAME)
    } else {
        // No clock goes on from where it stood as if the rest had been one long frame.
        (resting, resting, MOVING)
    };
    lateness.asked = focused;
    let (focused, unfocused) = if moving || watching {
        (
            UpdateMode::reactive(focused),
            UpdateMode::reactive_low_power(unfocused),
        )
    } else {
        let resting = UpdateMode::reactive_low_power(resting);
        (resting, resting)
    };
    if (settings.focused_mode, settings.unfocused_mode) != (focused, unfocused) {
        (settings.focused_mode, settings.unfocused_mode) = (focused, unfocused);
    }
    if clock.max_delta() != longest {
        clock.set_max_delta(longest);
    }
}

/// Waits.
pub fn plugin(app: &mut App) {
    app.init_resource::<NextFrame>()
        .init_resource::<WinitSettings>()
        .add_systems(
            PreUpdate,
            (
                settle,
                drop_unchanged_modifiers
                    .after(EguiInputSet::WriteEguiEvents)
                    .in_set(EguiPreUpdateSet::ProcessInput),
            ),
        )
        .add_systems(Last, (ask_for_screenshots, choose_wait).chain());
}

#[cfg(test)]
pub(crate) mod tests {
    use super::*;
    use crate::camera::{MainCamera, to_window};
    use crate::pointing::Pick;
    use crate::practice::DrillRes;
    use crate::state::{BenchRes, JobSourceRes, Screen, UiState, ViewKind};
    use crate::{AppOptions, add_bench, drill, without_window_system};
    use bevy::input::ButtonState;
    use bevy::input::keyboard::{Key, KeyboardInput};
    use bevy::input::mouse::MouseButtonInput;
    use bevy::time::TimeUpdateStrategy;
    use bevy::window::{CursorMoved, PrimaryWindow, RequestRedraw};
    use bevy_egui::{EguiContext, PrimaryEguiContext};
    use detent_simulation::interface::{Button, Direction};
    use detent_training::bench::Action;

    /// What egui got to read in the last frame.
    #[derive(Resource, Default)]
    struct Passed(Vec<egui::Event>);

    fn watch(inputs: Query<&EguiInput>, mut passed: ResMut<Passed>) {
        passed.0 = inputs
            .iter()
            .flat_map(|input| input.events.clone())
            .collect();
    }

    /// A bench whose clock stands, without anything to draw on; a tenth of a second a frame.
    fn paused_bench() -> App {
        paused(&AppOptions {
            start: Some((0, 71)),
            ..AppOptions::default()
        })
    }

    pub(crate) fn paused(options: &AppOptions) -> App {
        let mut app = without_window_system(options, false);
        add_bench(&mut app, options).expect("the built-in jobs are sound");
        let frame = Duration::from_millis(100);
        app.insert_resource(TimeUpdateStrategy::ManualDuration(frame))
            .init_resource::<Passed>()
            .add_systems(
                PreUpdate,
                watch
                    .after(EguiPreUpdateSet::ProcessInput)
                    .before(EguiPreUpdateSet::BeginPass),
            );
        app.world_mut().resource_mut::<UiState>().speed = 0;
        app.finish();
        app.cleanup();
        app
    }

    fn rests(app: &App) -> bool {
        let settings = app.world().resource::<WinitSettings>();
        let resting = UpdateMode::reactive_low_power(RESTING);
        [settings.focused_mode, settings.unfocused_mode] == [resting; 2]
    }

    fn focused_wait(app: &App) -> Duration {
        match app.world().resource::<WinitSettings>().focused_mode {
            UpdateMode::Reactive { wait, .. } => wait,
            UpdateMode::Continuous => Duration::ZERO,
        }
    }

    /// Frames until the window waits for an event.
    fn frames_until_rest(app: &mut App) -> u32 {
        (1..=200)
            .find(|_| {
                app.update();
                rests(app)
            })
            .expect("it comes to rest")
    }

    /// Hands something over as the window system does: to its own readers and to those of everything.
    pub(crate) fn send<M: Message + Clone + Into<WindowEvent>>(app: &mut App, message: M) {
        let world = app.world_mut();
        world.write_message::<WindowEvent>(message.clone().into());
        world.write_message(message);
    }

    pub(crate) fn window(app: &mut App) -> Entity {
        let mut windows = app
            .world_mut()
            .query_filtered::<Entity, With<PrimaryWindow>>();
        windows.single(app.world()).expect("one window")
    }

    /// From the next frame on everything is drawn so many times as large.
    pub(crate) fn set_zoom(app: &mut App, zoom: f32) {
        let mut contexts = app
            .world_mut()
            .query_filtered::<&mut EguiContext, With<PrimaryEguiContext>>();
        let mut context = contexts.single_mut(app.world_mut()).expect("one context");
        context.get_mut().set_zoom_factor(zoom);
    }

    /// A key goes down or up.
    pub(crate) fn send_key(app: &mut App, key_code: KeyCode, logical_key: Key, state: ButtonState) {
        let key = KeyboardInput {
            key_code,
            logical_key,
            state,
            text: None,
            repeat: false,
            window: window(app),
        };
        send(app, key);
    }

    fn shift(app: &mut App, state: ButtonState) {
        send_key(app, KeyCode::ShiftLeft, Key::Shift, state);
    }

    /// Where the middle of a button's cap is seen in the window.
    fn place_of(app: &mut App, wanted: Button) -> Vec2 {
        let stage = app.world().resource::<UiState>().stage;
        let mut caps = app.world_mut().query::<(&Pick, &GlobalTransform)>();
        let cap = caps
            .iter(app.world())
            .find(|(pick, _)| **pick == Pick::Button(wanted))
            .map(|(_, place)| place.translation())
            .expect("the board has this button");
        let mut eyes = app
            .world_mut()
            .query_filtered::<(&Camera, &GlobalTransform), With<MainCamera>>();
        let (camera, eye) = eyes.single(app.world()).expect("one eye");
        let seen = camera.world_to_viewport(eye, cap).expect("in front of it");
        to_window(camera, stage, seen)
    }

    /// Presses the left button there and lets it go, all before the next frame.
    fn click(app: &mut App, at: Vec2) {
        let entity = window(app);
        let mut seen = app.world_mut().get_mut::<Window>(entity).expect("a window");
        seen.set_cursor_position(Some(at));
        send(
            app,
            CursorMoved {
                window: entity,
                position: at,
                delta: None,
            },
        );
        for state in [ButtonState::Pressed, ButtonState::Released] {
            send(
                app,
                MouseButtonInput {
                    button: MouseButton::Left,
                    state,
                    window: entity,
                },
            );
        }
    }

    #[test]
    fn a_paused_bench_comes_to_rest_and_a_running_one_does_not() {
        let mut app = paused_bench();
        frames_until_rest(&mut app);
        // However soon one frame follows another: in some the panels are not laid out.
        for frame_ms in [5, 10, 16, 33, 100] {
            let frame = Duration::from_millis(frame_ms);
            app.insert_resource(TimeUpdateStrategy::ManualDuration(frame));
            shift(&mut app, ButtonState::Pressed);
            app.update();
            assert!(!rests(&app), "{frame:?}: a key wakes it");
            frames_until_rest(&mut app);
            shift(&mut app, ButtonState::Released);
            app.update();
            frames_until_rest(&mut app);
        }
        let mut redraws = app
            .world()
            .resource::<Messages<RequestRedraw>>()
            .get_cursor_current();
        for _ in 0..20 {
            app.update();
            assert!(rests(&app));
            assert_eq!(app.world().resource::<Passed>().0, []);
        }
        let messages = app.world().resource::<Messages<RequestRedraw>>();
        assert_eq!(redraws.read(messages).count(), 0, "egui wants nothing");
        // By then the last of the water has run out.
        let mut bench = app.world_mut().resource_mut::<BenchRes>();
        (0..60_000).for_each(|_| bench.tick());
        app.world_mut().resource_mut::<UiState>().speed = 1;
        app.insert_resource(TimeUpdateStrategy::ManualDuration(WATCHING));
        let mut waits = Vec::new();
        for _ in 0..200 {
            app.update();
            assert!(!rests(&app));
            waits.push(focused_wait(&app));
        }
        // The lock lamp blinks, which takes a few frames of its own each time.
        let quiet = waits[150..].iter().filter(|wait| **wait == WATCHING);
        assert!(quiet.count() > 10, "{waits:?}");
        app.world_mut()
            .resource_mut::<BenchRes>()
            .push(Action::Detent(Direction::Left));
        app.update();
        assert_eq!(focused_wait(&app), MOVING, "the knob turns");
    }

    /// The entry drill has a clock of its own, which runs until the gesture is marked, and the lamps of some
    /// questions flash.
    #[test]
    fn start_practice_and_drills_rest_too() {
        let drill = |name| AppOptions {
            drill: drill::Shown::named(name),
            ..AppOptions::default()
        };
        let practice = |progress| AppOptions {
            practice: Some(progress),
            ..AppOptions::default()
        };
        let screens = [
            ("start", AppOptions::default()),
            ("practice", practice(false)),
            ("progress", practice(true)),
            ("lamps", drill("drill-lamps")),
            ("meter", drill("drill-meter")),
            ("part", drill("drill-part")),
            ("look-up", drill("drill-look-up")),
            ("next test", drill("drill-next-test")),
            ("next test answered", drill("drill-next-test-answered")),
        ];
        for (screen, options) in screens {
            let mut app = paused(&options);
            // The camera comes to its place, and the first frames settle what is where.
            (0..100).for_each(|_| app.update());
            let flashes = app.world().resource::<DrillRes>().lamps_flash();
            let messages = app.world().resource::<Messages<RequestRedraw>>();
            let mut redraws = messages.get_cursor_current();
            for _ in 0..20 {
                app.update();
                let messages = app.world().resource::<Messages<RequestRedraw>>();
                let wanted = redraws.read(messages).count();
                assert_eq!(wanted, 0, "{screen}: egui wants nothing");
                assert_eq!(rests(&app), !flashes, "{screen}");
                assert!(focused_wait(&app) >= WATCHING, "{screen}");
            }
        }
    }

    #[test]
    fn on_a_slow_screen_the_clock_leaves_room_for_hands() {
        let mut lateness = Lateness {
            asked: WATCHING,
            ..Lateness::default()
        };
        assert_eq!(lateness.watching(), WATCHING);
        for (frame_ms, wait_ms) in [(60, 50), (350, 300), (300, 250), (5_000, 400)] {
            lateness.note(Duration::from_millis(frame_ms));
            let wait = lateness.watching();
            assert!(
                wait.abs_diff(Duration::from_millis(wait_ms)) < Duration::from_millis(1),
                "{wait:?}"
            );
        }
        for _ in 0..40 {
            lateness.note(WATCHING);
        }
        assert_eq!(lateness.watching(), WATCHING);
    }

    #[test]
    fn only_a_change_of_the_modifier_keys_is_passed_on() {
        let mut app = paused_bench();
        frames_until_rest(&mut app);
        let changes = |app: &App| {
            let events = &app.world().resource::<Passed>().0;
            let changes = events.iter().filter_map(|event| match event {
                egui::Event::ModifiersChanged(modifiers) => Some(modifiers.shift),
                _ => None,
            });
            changes.collect::<Vec<_>>()
        };
        for (state, told) in [(ButtonState::Pressed, true), (ButtonState::Released, false)] {
            shift(&mut app, state);
            app.update();
            assert_eq!(changes(&app), [told]);
            app.update();
            assert!(changes(&app).is_empty());
        }
    }

    #[test]
    fn the_click_that_wakes_the_window_counts() {
        let mut app = paused_bench();
        app.world_mut().resource_mut::<UiState>().view = ViewKind::Panel;
        frames_until_rest(&mut app);
        let at = place_of(&mut app, Button::Start);
        click(&mut app, at);
        app.update();
        // The clock is paused, so that the press is answered with a word.
        let said = app.world().resource::<UiState>().message.is_some();
        assert!(said || app.world().resource::<BenchRes>().refused_while_paused);
        assert!(
            !rests(&app),
            "the cap moves, and egui has to see the end of the click"
        );
    }

    #[test]
    fn what_eases_into_its_place_asks_for_the_next_frame() {
        let mut app = paused_bench();
        frames_until_rest(&mut app);
        app.world_mut().resource_mut::<UiState>().view = ViewKind::Cabinet;
        app.update();
        assert!(!rests(&app));
        let frames = frames_until_rest(&mut app);
        assert!(
            (10..60).contains(&frames),
            "{frames} frames of a tenth of a second"
        );
    }

    /// Whoever began it with a key or through reading software moves no pointer that would wake the window.
    #[test]
    fn a_job_that_is_being_set_up_opens_without_a_further_hand() {
        let mut app = paused(&AppOptions::default());
        frames_until_rest(&mut app);
        let work = app.world().resource::<JobSourceRes>().0.open(0, 101);
        app.world_mut().resource_mut::<UiState>().open(work);
        app.world_mut().resource_mut::<NextFrame>().ask();
        let mut opens = false;
        for _ in 0..3_000 {
            app.update();
            opens = *app.world().resource::<State<Screen>>().get() == Screen::Bench;
            if opens {
                break;
            }
            assert!(!rests(&app), "it is still being set up");
            std::thread::sleep(Duration::from_millis(10));
        }
        assert!(opens);
    }

    #[test]
    fn what_a_frame_shows_for_the_first_time_is_there_before_the_rest() {
        let mut app = paused_bench();
        frames_until_rest(&mut app);
        // A review is ready, say, and no hand moved.
        app.world_mut().resource_mut::<NextFrame>().ask();
        app.update();
        assert!(!rests(&app));
        for _ in 0..FRAMES_AFTER_MOTION {
            app.update();
            assert!(!rests(&app));
        }
        app.update();
        assert!(rests(&app));
    }

    /// Under the list of keys, and while another window has the focus.
    #[test]
    fn the_clock_stands_while_nobody_looks() {
        let mut app = paused_bench();
        app.world_mut().resource_mut::<UiState>().speed = 60;
        let clock = |app: &App| app.world().resource::<BenchRes>().view().machine.time_s;
        let goes_on = |app: &mut App| {
            app.update();
            let before = clock(app);
            (0..5).for_each(|_| app.update());
            clock(app) > before
        };
        assert!(goes_on(&mut app));
        app.world_mut().resource_mut::<UiState>().keys = true;
        assert!(!goes_on(&mut app), "help is open");
        app.world_mut().resource_mut::<UiState>().keys = false;
        assert!(goes_on(&mut app));
        let entity = window(&mut app);
        let focus = |app: &mut App, focused| {
            let mut window = app.world_mut().get_mut::<Window>(entity).expect("a window");
            window.focused = focused;
        };
        focus(&mut app, false);
        assert!(!goes_on(&mut app), "another window has the focus");
        focus(&mut app, true);
        assert!(goes_on(&mut app));
    }

    #[test]
    fn no_clock_makes_a_rest_good() {
        let mut app = paused_bench();
        frames_until_rest(&mut app);
        let an_hour = TimeUpdateStrategy::ManualDuration(RESTING);
        app.insert_resource(an_hour);
        app.world_mut().resource_mut::<UiState>().speed = 1;
        let clock = |app: &App| app.world().resource::<BenchRes>().view().machine.time_s;
        let before = clock(&app);
        app.update();
        assert!(clock(&app) - before < 0.05);
    }
}
