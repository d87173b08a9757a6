//! What the pointer is over, and what pressing, dragging and scrolling do there.

use super::scene::console::{KnobFeel, knob_middle};
use super::state::{BenchRes, Desk, Screen, Spot, Tab, ViewKind};
use super::views::{Eye, to_picture, to_window};
use bevy::input::mouse::{MouseScrollUnit, MouseWheel};
use bevy::input::touch::Touches;
use bevy::light::NotShadowCaster;
use bevy::picking::mesh_picking::ray_cast::{MeshRayCast, MeshRayCastSettings, RayCastVisibility};
use bevy::prelude::*;
use bevy::window::PrimaryWindow;
use bevy_egui::input::EguiWantsInput;
use detent_simulation::interface::{Button, Component as Part, Direction, Terminal};
use detent_training::bench::Action;
use std::f32::consts::{PI, TAU};

/// What a mesh stands for.
#[derive(Component, Clone, Copy, PartialEq, Eq, Debug)]
pub enum Pick {
    /// The knob: dial or rotary switch.
    Knob,
    /// A button on the console.
    Button(Button),
    /// The lid.
    Lid,
    /// The mains plug.
    Plug,
    /// A component.
    Part(Part),
}

/// Skin of a component, shown under the pointer or when chosen.
#[derive(Component)]
pub struct Outline(pub Part);

/// What the pointer does.
#[derive(Resource, Default)]
pub struct Pointing {
    /// What lies under the pointer.
    pub over: Option<Pick>,
    /// Where the pointer is, logical pixels of the window.
    pub at: Vec2,
    grip: Option<Pick>,
    angle: f32,
    turned: f32,
    scrolled: f32,
}

/// The pins to show for a component.
fn spot_of(part: Part) -> Option<Spot> {
    match part {
        Part::LineFuse => Some(Spot::Fuse),
        Part::Board => Some(Spot::Bulk),
        part => Terminal::ALL
            .iter()
            .any(|t| t.component() == part)
            .then_some(Spot::Load(part)),
    }
}

/// The pointer: mouse, or the first finger.
fn hand(
    window: &Window,
    mouse: &ButtonInput<MouseButton>,
    touches: &Touches,
) -> (Option<Vec2>, bool, bool, bool) {
    let mut fingers = touches.iter().chain(touches.iter_just_released());
    if let Some(touch) = fingers.next() {
        let down = touches.get_pressed(touch.id()).is_some();
        // On a slow frame a tap begins and ends at once.
        let new = touches.just_pressed(touch.id());
        return (Some(touch.position()), new, down, !down);
    }
    let left = MouseButton::Left;
    (
        window.cursor_position(),
        mouse.just_pressed(left),
        mouse.pressed(left),
        mouse.just_released(left),
    )
}

#[allow(clippy::too_many_arguments)]
fn look(
    screen: Res<State<Screen>>,
    window: Single<&Window, With<PrimaryWindow>>,
    mouse: Res<ButtonInput<MouseButton>>,
    keys: Res<ButtonInput<KeyCode>>,
    touches: Res<Touches>,
    wants: Res<EguiWantsInput>,
    eye: Single<(&Camera, &GlobalTransform), With<Eye>>,
    picks: Query<&Pick>,
    solid: Query<(), Without<NotShadowCaster>>,
    mut rays: MeshRayCast,
    mut pointing: ResMut<Pointing>,
    mut bench: ResMut<BenchRes>,
    mut desk: ResMut<Desk>,
    mut feel: ResMut<KnobFeel>,
    mut wheel: MessageReader<MouseWheel>,
) {
    let (place, pressed, down, released) = hand(&window, &mouse, &touches);
    let (camera, eye) = *eye;
    let working = *screen.get() == Screen::Bench && bench.asked.is_none();
    let free = working
        && !desk.covered
        && !wants.is_using_pointer()
        && place.is_some_and(|p| desk.stage.contains(p));
    if let Some(place) = place {
        pointing.at = place;
    }
    pointing.over = None;
    if free
        && let Some(place) = place
        && let Ok(ray) = camera.viewport_to_world(eye, to_picture(camera, desk.stage, place))
    {
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
    if pressed && free {
        pointing.grip = pointing.over;
        match pointing.over {
            Some(Pick::Button(button)) => {
                let keep = keys.any_pressed([KeyCode::ShiftLeft, KeyCode::ShiftRight]);
                bench.queue_some(desk.held.push(button, keep));
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
                desk.selected = Some(part);
                desk.tab = Tab::Meter;
                if let Some(spot) = spot_of(part) {
                    desk.spot = spot;
                }
            }
            _ => {}
        }
    }
    // The other mouse button keeps a button down, or lets it go.
    if free
        && mouse.just_pressed(MouseButton::Right)
        && let Some(Pick::Button(button)) = pointing.over
    {
        bench.queue_some(desk.held.push(button, true));
    }
    let stops = bench.job().board.panel.selector.turn();
    let around_knob = place
        .zip(knob_middle(&bench.job().board))
        .and_then(|(place, middle)| {
            let middle = camera.world_to_viewport(eye, middle).ok()?;
            Some((place, to_window(camera, desk.stage, middle)))
        });
    if let Some((place, middle)) = around_knob
        && let Some(stops) = stops
        && pointing.grip == Some(Pick::Knob)
        && down
    {
        let angle = (place - middle).to_angle();
        if !pressed {
            let mut by = (angle - pointing.angle).rem_euclid(TAU);
            if by > PI {
                by -= TAU;
            }
            pointing.turned += by / (TAU / f32::from(stops));
            while pointing.turned.abs() >= 0.6 {
                let way = if pointing.turned > 0.0 {
                    Direction::Right
                } else {
                    Direction::Left
                };
                bench.push(Action::Detent(way));
                pointing.turned -= pointing.turned.signum();
            }
            feel.strain = pointing.turned;
        }
        pointing.angle = angle;
    }
    if released || !down {
        if let Some(Pick::Button(button)) = pointing.grip {
            bench.queue_some(desk.held.release(button));
        }
        pointing.grip = None;
        pointing.turned = 0.0;
        feel.strain = 0.0;
    }
    for message in wheel.read() {
        let near = pointing.over == Some(Pick::Knob) || (free && desk.view == ViewKind::Panel);
        if stops.is_some() && near {
            pointing.scrolled += match message.unit {
                MouseScrollUnit::Line => message.y,
                MouseScrollUnit::Pixel => message.y / 50.0,
            };
            while pointing.scrolled.abs() >= 1.0 {
                bench.push(Action::Detent(if pointing.scrolled > 0.0 {
                    Direction::Right
                } else {
                    Direction::Left
                }));
                pointing.scrolled -= pointing.scrolled.signum();
            }
        }
    }
}

fn outline(
    pointing: Res<Pointing>,
    desk: Res<Desk>,
    bench: Res<BenchRes>,
    mut outlines: Query<(&Outline, &mut Visibility)>,
) {
    for (Outline(part), mut visibility) in &mut outlines {
        let on = bench.view().cabinet_open
            && (pointing.over == Some(Pick::Part(*part)) || desk.selected == Some(*part));
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
            look.after(bevy::input::InputSystems)
                .after(bevy_egui::EguiPreUpdateSet::ProcessInput),
        )
        .add_systems(Update, outline);
}
