//! The camera and the three places it stands at.

use super::scene::console;
use super::scene::{ease, lights};
use super::shots::Shot;
use super::state::{Desk, Screen, ViewKind};
use bevy::anti_alias::fxaa::Fxaa;
use bevy::camera::visibility::RenderLayers;
use bevy::camera::{CameraOutputMode, Viewport};
use bevy::core_pipeline::tonemapping::{DebandDither, Tonemapping};
use bevy::light::ShadowFilteringMethod;
use bevy::prelude::*;
use bevy::render::render_resource::BlendState;
use bevy::render::renderer::RenderAdapterInfo;
use bevy::window::PrimaryWindow;
use bevy_egui::{EguiGlobalSettings, PrimaryEguiContext};

/// The camera that sees the room.
#[derive(Component)]
pub struct Eye {
    target: Vec3,
    away: Vec3,
    size: Vec2,
}

/// Where an eye stands: what it looks at, from where, and how much it must take in (m).
#[derive(Clone, Copy)]
struct Stand {
    target: Vec3,
    away: Vec3,
    size: Vec2,
}

const FIELD: f32 = 0.50;

fn stand(view: ViewKind, screen: Screen, time: f32) -> Stand {
    if screen == Screen::Start {
        let sway = (time * 0.12).sin() * 0.22;
        return Stand {
            target: Vec3::new(-0.36, 0.78, 0.0),
            away: Vec3::new(0.52 + sway, 0.34, 1.0),
            size: Vec2::new(2.0, 1.46),
        };
    }
    match view {
        ViewKind::Panel => Stand {
            target: console::FACE + Vec3::new(0.0, -0.012, 0.0),
            away: Vec3::new(0.05, 0.56, 1.0),
            size: Vec2::new(0.67, 0.42),
        },
        ViewKind::Machine => Stand {
            target: Vec3::new(0.06, 0.62, 0.0),
            away: Vec3::new(0.56, 0.46, 1.0),
            size: Vec2::new(1.42, 1.66),
        },
        ViewKind::Cabinet => Stand {
            target: Vec3::new(0.04, 0.55, 0.0),
            away: Vec3::new(0.50, 0.20, 1.0),
            size: Vec2::new(1.16, 1.36),
        },
    }
}

fn spawn(
    mut commands: Commands,
    mut images: ResMut<Assets<Image>>,
    mut settings: ResMut<EguiGlobalSettings>,
    adapter: Option<Res<RenderAdapterInfo>>,
    picture: Option<Res<Shot>>,
) {
    settings.auto_create_primary_context = false;
    let first = stand(ViewKind::Machine, Screen::Start, 0.0);
    let eye = commands
        .spawn((
            Camera3d::default(),
            Camera {
                clear_color: ClearColorConfig::Custom(Color::srgb_u8(0x18, 0x20, 0x25)),
                ..default()
            },
            Projection::Perspective(PerspectiveProjection {
                fov: FIELD,
                near: 0.05,
                far: 20.0,
                ..default()
            }),
            Tonemapping::TonyMcMapface,
            DebandDither::Enabled,
            ShadowFilteringMethod::Hardware2x2,
            lights::surroundings(&mut images),
            Eye {
                target: first.target,
                away: first.away,
                size: first.size,
            },
            Transform::from_xyz(1.0, 1.5, 3.0).looking_at(first.target, Vec3::Y),
        ))
        .id();
    // Four samples a pixel cost a software adapter two thirds of its frame; it gets the cheap kind,
    // except for pictures, which may take their time.
    let software = adapter.is_some_and(|info| format!("{:?}", info.device_type) == "Cpu");
    if software && picture.is_none() {
        commands.entity(eye).insert((Msaa::Off, Fxaa::default()));
    } else {
        commands.entity(eye).insert(Msaa::Sample4);
    }
    commands.spawn((
        PrimaryEguiContext,
        Camera2d,
        RenderLayers::none(),
        Msaa::Off,
        Camera {
            order: 1,
            output_mode: CameraOutputMode::Write {
                blend_state: Some(BlendState::ALPHA_BLENDING),
                clear_color: ClearColorConfig::None,
            },
            clear_color: ClearColorConfig::Custom(Color::NONE),
            ..default()
        },
    ));
}

fn walk(
    desk: Res<Desk>,
    screen: Res<State<Screen>>,
    time: Res<Time>,
    window: Single<&Window, With<PrimaryWindow>>,
    eye: Single<(&mut Camera, &mut Transform, &mut Eye)>,
) {
    let (mut camera, mut place, mut eye) = eye.into_inner();
    let scale = window.scale_factor();
    let limit = UVec2::new(window.physical_width(), window.physical_height());
    let from = (desk.stage.min * scale).as_uvec2().min(limit - UVec2::ONE);
    let size = ((desk.stage.size() * scale).as_uvec2())
        .max(UVec2::splat(16))
        .min(limit - from);
    let same = camera
        .viewport
        .as_ref()
        .is_some_and(|v| v.physical_position == from && v.physical_size == size);
    if !same {
        camera.viewport = Some(Viewport {
            physical_position: from,
            physical_size: size,
            ..default()
        });
    }
    let goal = stand(desk.view, *screen.get(), time.elapsed_secs());
    let dt = time.delta_secs();
    let lag = 0.22;
    let toward = |a: Vec3, b: Vec3| {
        Vec3::new(
            ease(a.x, b.x, lag, dt),
            ease(a.y, b.y, lag, dt),
            ease(a.z, b.z, lag, dt),
        )
    };
    eye.target = toward(eye.target, goal.target);
    eye.away = toward(eye.away, goal.away);
    eye.size = Vec2::new(
        ease(eye.size.x, goal.size.x, lag, dt),
        ease(eye.size.y, goal.size.y, lag, dt),
    );
    let aspect = size.x as f32 / size.y.max(1) as f32;
    let tan = (FIELD / 2.0).tan();
    let distance = (eye.size.y / 2.0 / tan).max(eye.size.x / 2.0 / (tan * aspect));
    *place = Transform::from_translation(eye.target + eye.away.normalize() * distance)
        .looking_at(eye.target, Vec3::Y);
}

/// Camera.
pub fn plugin(app: &mut App) {
    app.add_systems(Startup, spawn).add_systems(Update, walk);
}
