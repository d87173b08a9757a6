//! What the pointer is over, and what pressing, dragging and scrolling do there.

use super::camera::{MainCamera, to_picture, to_window};
use super::flat::{FlatScene, is_flat};
use super::pointing::{Hand, Outline, Pick, Pointing};
use super::scene::console::{KnobFeel, knob_middle};
use super::state::{BenchRes, PinGroup, Screen, Tab, UiState, ViewKind};
use bevy::input::ButtonState;
use bevy::input::common_conditions::input_just_pressed;
use bevy::input::mouse::{MouseScrollUnit, MouseWheel};
use bevy::input::touch::{TouchPhase, Touches};
use bevy::light::NotShadowCaster;
use bevy::picking::mesh_picking::ray_cast::{MeshRayCast, MeshRayCastSettings, RayCastVisibility};
use bevy::prelude::*;
use bevy::window::{CursorMoved, PrimaryWindow, WindowEvent};
use bevy_egui::input::EguiWantsInput;
use bevy_egui::{EguiZoomFactor, PrimaryEguiContext};
use detent_simulation::interface::{Component as Part, Direction, Terminal};
use detent_training::bench::Action;
use std::f32::consts::{PI, TAU};

/// The pins to show for a component.
fn pin_group_of(part: Part) -> Option<PinGroup> {
    match part {
        Part::LineFuse => Some(PinGroup::Fuse),
        Part::Board => Some(PinGroup::Bulk),
        part => Terminal::ALL
            .iter()
            .any(|t| t.component() == part)
            .then_some(PinGroup::Load(part)),
    }
}

/// The mouse, or the first finger with its number; its place in logical pixels of the window.
fn hand(
    window: &Window,
    mouse: &ButtonInput<MouseButton>,
    touches: &Touches,
) -> (Hand, Option<u64>) {
    let mut fingers = touches.iter().chain(touches.iter_just_released());
    if let Some(touch) = fingers.next() {
        let down = touches.get_pressed(touch.id()).is_some();
        let hand = Hand {
            place: Some(touch.position()),
            // On a slow frame a tap begins and ends at once.
            pressed: touches.just_pressed(touch.id()),
            down,
            released: !down,
        };
        return (hand, Some(touch.id()));
    }
    let left = MouseButton::Left;
    let hand = Hand {
        place: window.cursor_position(),
        pressed: mouse.just_pressed(left),
        down: mouse.pressed(left),
        released: mouse.just_released(left),
    };
    (hand, None)
}

/// Where the mouse or this finger went since the last frame, in order, logical pixels of the window: on a slow screen
/// that is a long way. Begins where it came down, if it did.
fn trace_path<'a>(
    events: impl Iterator<Item = &'a WindowEvent>,
    finger: Option<u64>,
    path: &mut Vec<Vec2>,
) {
    // The mouse is pressed where it was last.
    let mut last = path.last().copied();
    path.clear();
    for event in events {
        let came_down = match (event, finger) {
            (WindowEvent::CursorMoved(CursorMoved { position, .. }), None) => {
                last = Some(*position);
                false
            }
            (WindowEvent::MouseButtonInput(input), None) if input.button == MouseButton::Left => {
                input.state == ButtonState::Pressed
            }
            (WindowEvent::TouchInput(touch), Some(finger)) if touch.id == finger => {
                last = Some(touch.position);
                touch.phase == TouchPhase::Started
            }
            _ => continue,
        };
        if came_down {
            path.clear();
        }
        path.extend(last);
    }
    if path.is_empty() {
        path.extend(last);
    }
}

/// Where the hand is, and whether it can work at the scene.
#[allow(clippy::too_many_arguments)]
fn follow_hand(
    screen: Res<State<Screen>>,
    window: Single<&Window, With<PrimaryWindow>>,
    mouse: Res<ButtonInput<MouseButton>>,
    touches: Res<Touches>,
    wants: Res<EguiWantsInput>,
    bench: Res<BenchRes>,
    ui_state: Res<UiState>,
    zoom: Single<&EguiZoomFactor, With<PrimaryEguiContext>>,
    mut events: MessageReader<WindowEvent>,
    mut path: Local<Vec<Vec2>>,
    mut pointing: ResMut<Pointing>,
) {
    let (mut hand, finger) = hand(&window, &mouse, &touches);
    trace_path(events.read(), finger, &mut path);
    // Whoever looks at the hand from here on counts in points, as the panels do.
    let to_points = |place: Vec2| place / zoom.zoom_factor;
    hand.place = hand.place.map(to_points);
    pointing.path.clear();
    pointing.path.extend(path.iter().copied().map(to_points));
    let watched = bench.film().is_some();
    let working = *screen.get() == Screen::Bench && !bench.is_held_up() && !watched;
    let place = if hand.pressed {
        pointing.path.first().copied()
    } else {
        hand.place
    };
    pointing.free = working
        && !ui_state.covered
        && !wants.is_using_pointer()
        && place.is_some_and(|p| ui_state.stage.contains(p));
    if let Some(place) = place {
        pointing.at = place;
    }
    pointing.hand = hand;
    pointing.over = None;
}

/// What lies under the pointer.
fn point(
    eye: Single<(&Camera, &GlobalTransform), With<MainCamera>>,
    picks: Query<&Pick>,
    solid: Query<(), Without<NotShadowCaster>>,
    bench: Res<BenchRes>,
    ui_state: Res<UiState>,
    mut rays: MeshRayCast,
    mut pointing: ResMut<Pointing>,
) {
    let (camera, eye) = *eye;
    let at = to_picture(camera, ui_state.stage, pointing.at);
    let Ok(ray) = camera.viewport_to_world(eye, at) else {
        return;
    };
    let cabinet = bench.view().cabinet_open;
    let filter = |entity: Entity| {
        match picks.get(entity) {
            Ok(Pick::Part(_)) => cabinet,
            Ok(_) => true,
            // What casts no shadow is glass, glow or water: the hand reaches through.
            Err(_) => solid.contains(entity),
        }
    };
    let settings = MeshRayCastSettings::default()
        .with_filter(&filter)
        .with_visibility(RayCastVisibility::Visible);
    pointing.over = rays
        .cast_ray(ray, &settings)
        .first()
        .and_then(|(entity, _)| picks.get(*entity).ok().copied());
}

/// What lies under the pointer where the machine is drawn flat.
fn point_flat(flat: Res<FlatScene>, mut pointing: ResMut<Pointing>) {
    pointing.over = flat.at(pointing.at);
}

/// The hand takes hold of what is under it.
fn press(
    keys: Res<ButtonInput<KeyCode>>,
    mut pointing: ResMut<Pointing>,
    mut bench: ResMut<BenchRes>,
    mut ui_state: ResMut<UiState>,
) {
    pointing.grip = pointing.over;
    match pointing.over {
        Some(Pick::Button(button)) => {
            let keep = keys.any_pressed([KeyCode::ShiftLeft, KeyCode::ShiftRight]);
            bench.queue_some(ui_state.held.push(button, keep));
        }
        Some(Pick::Lid) => {
            let up = bench.lid_will_be_up();
            bench.push(if up {
                Action::CloseLid
            } else {
                Action::OpenLid
            });
        }
        Some(Pick::Plug) => {
            let plugged = bench.view().machine.plugged;
            bench.push(if plugged {
                Action::Unplug
            } else {
                Action::Plug
            });
        }
        Some(Pick::Part(part)) => {
            ui_state.selected = Some(part);
            ui_state.tab = Tab::Meter;
            if let Some(pin_group) = pin_group_of(part) {
                ui_state.pin_group = pin_group;
            }
        }
        Some(Pick::Knob) | None => {}
    }
}

/// The other mouse button keeps a button down, or lets it go.
fn keep_button(
    pointing: Res<Pointing>,
    mut bench: ResMut<BenchRes>,
    mut ui_state: ResMut<UiState>,
) {
    if let Some(Pick::Button(button)) = pointing.over {
        bench.queue_some(ui_state.held.push(button, true));
    }
}

/// How far the hand has turned the knob on its way to the next stop.
#[derive(Default)]
struct Twist {
    /// Of the hand round the knob's middle, rad.
    angle: f32,
    /// Stops.
    turned: f32,
}

/// The hand drags the knob round its middle.
fn turn_knob(
    eye: Single<(&Camera, &GlobalTransform), With<MainCamera>>,
    pointing: Res<Pointing>,
    ui_state: Res<UiState>,
    flat: Res<FlatScene>,
    mut bench: ResMut<BenchRes>,
    mut feel: ResMut<KnobFeel>,
    mut twist: Local<Twist>,
) {
    let board = &bench.job().board;
    let middle = if ui_state.flat {
        flat.place(Pick::Knob).map(|place| place.middle())
    } else {
        let (camera, eye) = *eye;
        let middle = knob_middle(board).and_then(|at| camera.world_to_viewport(eye, at).ok());
        middle.map(|middle| to_window(camera, ui_state.stage, middle))
    };
    let (Some(middle), Some(stops)) = (middle, board.panel.selector.turn()) else {
        return;
    };
    let mut angles = pointing
        .path
        .iter()
        .map(|place| (place - middle).to_angle());
    if pointing.hand.pressed {
        let Some(angle) = angles.next() else { return };
        *twist = Twist { angle, turned: 0.0 };
    }
    for angle in angles {
        let mut by = (angle - twist.angle).rem_euclid(TAU);
        if by > PI {
            by -= TAU;
        }
        twist.angle = angle;
        twist.turned += by / (TAU / f32::from(stops));
        while twist.turned.abs() >= 0.6 {
            bench.push(Action::Detent(way(twist.turned)));
            twist.turned -= twist.turned.signum();
        }
    }
    feel.strain = twist.turned;
}

/// The hand lets go.
fn let_go(
    mut pointing: ResMut<Pointing>,
    mut bench: ResMut<BenchRes>,
    mut ui_state: ResMut<UiState>,
    mut feel: ResMut<KnobFeel>,
) {
    if let Some(Pick::Button(button)) = pointing.grip.take() {
        bench.queue_some(ui_state.held.release(button));
    }
    feel.strain = 0.0;
}

/// The wheel turns the knob under the pointer, and in the close-up from anywhere.
fn scroll(
    pointing: Res<Pointing>,
    ui_state: Res<UiState>,
    mut bench: ResMut<BenchRes>,
    mut wheel: MessageReader<MouseWheel>,
    mut scrolled: Local<f32>,
) {
    let turns = bench.job().board.panel.selector.turn().is_some();
    let near =
        pointing.over == Some(Pick::Knob) || (pointing.free && ui_state.view == ViewKind::Panel);
    for message in wheel.read().filter(|_| turns && near) {
        *scrolled += match message.unit {
            MouseScrollUnit::Line => message.y,
            MouseScrollUnit::Pixel => message.y / 50.0,
        };
        while scrolled.abs() >= 1.0 {
            bench.push(Action::Detent(way(*scrolled)));
            *scrolled -= scrolled.signum();
        }
    }
}

/// Right for what is above zero.
fn way(amount: f32) -> Direction {
    if amount > 0.0 {
        Direction::Right
    } else {
        Direction::Left
    }
}

// When each of these has something to do.

fn is_free(pointing: Res<Pointing>) -> bool {
    pointing.free
}

fn is_pressed(pointing: Res<Pointing>) -> bool {
    pointing.hand.pressed
}

fn holds_knob(pointing: Res<Pointing>) -> bool {
    pointing.grip == Some(Pick::Knob)
}

fn lets_go(pointing: Res<Pointing>) -> bool {
    pointing.grip.is_some() && (pointing.hand.released || !pointing.hand.down)
}

fn outline(
    pointing: Res<Pointing>,
    ui_state: Res<UiState>,
    bench: Res<BenchRes>,
    mut outlines: Query<(&Outline, &mut Visibility)>,
) {
    for (Outline(part), mut visibility) in &mut outlines {
        let on = bench.view().cabinet_open
            && (pointing.over == Some(Pick::Part(*part)) || ui_state.selected == Some(*part));
        visibility.set_if_neq(if on {
            Visibility::Inherited
        } else {
            Visibility::Hidden
        });
    }
}

/// What the pointer does in the scene.
#[derive(SystemSet, Clone, PartialEq, Eq, Hash, Debug)]
pub struct PointingSystems;

/// Pointer in the scene.
pub fn plugin(app: &mut App) {
    app.init_resource::<Pointing>()
        .add_systems(
            PreUpdate,
            (
                follow_hand,
                point.run_if(is_free).run_if(not(is_flat)),
                point_flat.run_if(is_free).run_if(is_flat),
                press.run_if(is_free).run_if(is_pressed),
                keep_button
                    .run_if(is_free)
                    .run_if(input_just_pressed(MouseButton::Right)),
                turn_knob.run_if(holds_knob),
                let_go.run_if(lets_go),
                scroll.run_if(on_message::<MouseWheel>),
            )
                .chain()
                .in_set(PointingSystems)
                .after(bevy::input::InputSystems)
                .after(bevy_egui::EguiPreUpdateSet::ProcessInput),
        )
        .add_systems(Update, outline);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::AppOptions;
    use crate::rest::tests::{paused, send, set_zoom, window};
    use bevy::input::touch::TouchInput;

    /// A finger put down on the knob at twelve o'clock goes a quarter of the way round and is lifted, all before
    /// the next frame.
    #[track_caller]
    fn check_quarter_turn(zoom: f32, flat: bool) {
        let mut app = paused(&AppOptions {
            start: Some((0, 71)),
            view: ViewKind::Panel,
            // As many points whatever the zoom, so that the console is as large.
            size: ((1280.0 * zoom) as u32, (720.0 * zoom) as u32),
            flat: Some(flat),
            ..AppOptions::default()
        });
        app.update();
        set_zoom(&mut app, zoom);
        (0..100).for_each(|_| app.update());
        let world = app.world_mut();
        let board = world.resource::<BenchRes>().job().board.clone();
        let stops = board.panel.selector.turn().expect("a dial");
        let before = world.resource::<BenchRes>().view().machine.dial_position;
        let stage = world.resource::<UiState>().stage;
        let mut cameras = world.query_filtered::<(&Camera, &GlobalTransform), With<MainCamera>>();
        let (camera, eye) = cameras.single(world).expect("one camera");
        let middle = knob_middle(&board).expect("a knob");
        let middle = camera.world_to_viewport(eye, middle).expect("in view");
        let mut middle = to_window(camera, stage, middle);
        if flat {
            let drawn = world.resource::<FlatScene>().place(Pick::Knob);
            middle = drawn.expect("a knob").middle();
        }
        let entity = window(&mut app);
        let touch = |degrees: f32, phase| TouchInput {
            phase,
            position: zoom * (middle + 25.0 * Vec2::from_angle((degrees - 90.0).to_radians())),
            window: entity,
            force: None,
            id: 7,
        };
        send(&mut app, touch(0.0, TouchPhase::Started));
        for degrees in [20.0, 45.0, 70.0, 90.0] {
            send(&mut app, touch(degrees, TouchPhase::Moved));
        }
        send(&mut app, touch(90.0, TouchPhase::Ended));
        app.world_mut().resource_mut::<UiState>().speed = 1;
        (0..60).for_each(|_| app.update());
        let after = app
            .world()
            .resource::<BenchRes>()
            .view()
            .machine
            .dial_position;
        assert_eq!(
            after,
            (before + stops / 4) % stops,
            "zoom {zoom}, flat: {flat}"
        );
    }

    #[test]
    fn a_slow_frame_swallows_no_detent() {
        check_quarter_turn(1.0, false);
        check_quarter_turn(1.0, true);
    }

    #[test]
    fn the_hand_meets_what_it_points_at_however_large_the_panels_are() {
        for flat in [false, true] {
            check_quarter_turn(1.3, flat);
            check_quarter_turn(0.8, flat);
        }
    }
}
