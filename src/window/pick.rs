//! What the pointer is over, and what pressing, dragging and scrolling do there.

use super::camera::{MainCamera, to_picture, to_window};
use super::pointing::{Hand, Outline, Pick, Pointing};
use super::scene::console::{KnobFeel, knob_middle};
use super::state::{BenchRes, PinGroup, Screen, Tab, UiState, ViewKind};
use bevy::input::common_conditions::input_just_pressed;
use bevy::input::mouse::{MouseScrollUnit, MouseWheel};
use bevy::input::touch::Touches;
use bevy::light::NotShadowCaster;
use bevy::picking::mesh_picking::ray_cast::{MeshRayCast, MeshRayCastSettings, RayCastVisibility};
use bevy::prelude::*;
use bevy::window::PrimaryWindow;
use bevy_egui::input::EguiWantsInput;
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

/// The mouse, or the first finger.
fn hand(window: &Window, mouse: &ButtonInput<MouseButton>, touches: &Touches) -> Hand {
    let mut fingers = touches.iter().chain(touches.iter_just_released());
    if let Some(touch) = fingers.next() {
        let down = touches.get_pressed(touch.id()).is_some();
        return Hand {
            place: Some(touch.position()),
            // On a slow frame a tap begins and ends at once.
            pressed: touches.just_pressed(touch.id()),
            down,
            released: !down,
        };
    }
    let left = MouseButton::Left;
    Hand {
        place: window.cursor_position(),
        pressed: mouse.just_pressed(left),
        down: mouse.pressed(left),
        released: mouse.just_released(left),
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
    mut pointing: ResMut<Pointing>,
) {
    let hand = hand(&window, &mouse, &touches);
    let working = *screen.get() == Screen::Bench && !bench.is_held_up();
    pointing.free = working
        && !ui_state.covered
        && !wants.is_using_pointer()
        && hand.place.is_some_and(|p| ui_state.stage.contains(p));
    if let Some(place) = hand.place {
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
    mut bench: ResMut<BenchRes>,
    mut feel: ResMut<KnobFeel>,
    mut twist: Local<Twist>,
) {
    let (camera, eye) = *eye;
    let board = &bench.job().board;
    let (Some(place), Some(middle), Some(stops)) = (
        pointing.hand.place,
        knob_middle(board).and_then(|middle| camera.world_to_viewport(eye, middle).ok()),
        board.panel.selector.turn(),
    ) else {
        return;
    };
    let angle = (place - to_window(camera, ui_state.stage, middle)).to_angle();
    if pointing.hand.pressed {
        *twist = Twist { angle, turned: 0.0 };
        return;
    }
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
    pointing.grip == Some(Pick::Knob) && pointing.hand.down
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

/// Pointer in the scene.
pub fn plugin(app: &mut App) {
    app.init_resource::<Pointing>()
        .add_systems(
            PreUpdate,
            (
                follow_hand,
                point.run_if(is_free),
                press.run_if(is_free).run_if(is_pressed),
                keep_button
                    .run_if(is_free)
                    .run_if(input_just_pressed(MouseButton::Right)),
                turn_knob.run_if(holds_knob),
                let_go.run_if(lets_go),
                scroll.run_if(on_message::<MouseWheel>),
            )
                .chain()
                .after(bevy::input::InputSystems)
                .after(bevy_egui::EguiPreUpdateSet::ProcessInput),
        )
        .add_systems(Update, outline);
}
