//! The camera and the three places it stands at.

use super::camera::{MainCamera, SceneTarget};
use super::pointing::{Pick, Pointing};
use super::rest::NextFrame;
use super::scene::console;
use super::scene::console::KnobFeel;
use super::scene::displayed::DisplayedMachine;
use super::scene::lights;
use super::scene::motion::Easing;
use super::shots::Shot;
use super::state::{BenchRes, Screen, UiState, ViewKind};
use bevy::anti_alias::fxaa::Fxaa;
use bevy::camera::visibility::RenderLayers;
use bevy::camera::{ImageRenderTarget, RenderTarget};
use bevy::core_pipeline::prepass::DepthPrepass;
use bevy::core_pipeline::tonemapping::{DebandDither, Tonemapping};
use bevy::prelude::*;
use bevy::render::render_resource::{Extent3d, TextureFormat};
use bevy::render::renderer::RenderAdapterInfo;
use bevy::window::PrimaryWindow;
use bevy_egui::{EguiGlobalSettings, EguiZoomFactor, PrimaryEguiContext};
use detent_simulation::controller::Lamps;
use detent_simulation::interface::{Button, Component as Part, Connector, Pin};
use detent_training::bench::BenchView;

/// Where an eye stands: what it looks at, from where, and how much it must take in (m).
#[derive(Clone, Copy)]
struct CameraPose {
    target: Vec3,
    away: Vec3,
    size: Vec2,
}

const FIELD: f32 = 0.50;

/// How long the scene goes on being drawn after the last change, s: longer than any easing.
const SETTLE_S: f32 = 2.2;

/// Smallest and largest size of moving things without a graphics card, of the screen's pixels.
const COARSE: (f32, f32) = (0.45, 0.8);

/// Frames that take this long while something moves are too slow, or fast enough for more, s.
const SLOW_S: f32 = 0.16;
const FAST_S: f32 = 0.07;

/// The size at which the next frame is drawn, after one that took so long.
fn adapt(coarse: f32, frame_s: f32) -> f32 {
    let by = if frame_s > SLOW_S {
        0.8
    } else if frame_s < FAST_S {
        1.1
    } else {
        1.0
    };
    (coarse * by).clamp(COARSE.0, COARSE.1)
}

/// Whether the eye draws, and how sharply.
#[derive(Resource)]
struct Attention {
    /// How small: pixels of the picture for each of the screen.
    coarse: f32,
    awake_s: f32,
    sharp_frames: u32,
    seen: Option<Seen>,
    lamps: Option<Lamps>,
}

/// All that the scene shows; drawn again when it changes.
#[derive(PartialEq)]
struct Seen {
    dial: u8,
    /// Level, mm; basket and agitator, hundredths of a turn; motor, rev/min; shaking, tenths of mm.
    moving: [i64; 5],
    open: [bool; 5],
    held: [bool; Button::ALL.len()],
    strain: i32,
    pulled: Vec<Connector>,
    probes: [Option<Pin>; 4],
    over: Option<Pick>,
    selected: Option<Part>,
    view: ViewKind,
    screen: Screen,
    size: UVec2,
}

fn seen_things(
    view: BenchView<'_>,
    displayed: &DisplayedMachine,
    ui_state: &UiState,
    over: Option<Pick>,
    strain: f32,
    screen: Screen,
    size: UVec2,
) -> Seen {
    let machine = displayed;
    let round = |value: f64, per: f64| (value * per).round() as i64;
    let touching = view.probes.map(|(_, red, black)| (red, black)).unzip();
    Seen {
        dial: machine.dial_position,
        moving: [
            round(machine.level_mm, 1.0),
            round(machine.basket_rev, 100.0),
            round(machine.agitator_rev, 100.0),
            round(machine.motor_rpm, 1.0),
            round(machine.shake_mm, 10.0),
        ],
        open: [
            machine.plugged,
            machine.lid_open,
            view.machine.lid_bolted,
            machine.cabinet_open,
            machine.laundry,
        ],
        held: machine.held,
        strain: (strain * 100.0) as i32,
        pulled: view.pulled.to_vec(),
        probes: [touching.0, touching.1, ui_state.red, ui_state.black],
        over: over.filter(|pick| matches!(pick, Pick::Part(_))),
        selected: ui_state.selected,
        view: ui_state.view,
        screen,
        size,
    }
}

fn camera_pose(view: ViewKind, screen: Screen) -> CameraPose {
    if screen == Screen::Drill {
        return CameraPose {
            target: console::FACE,
            away: Vec3::new(0.0, 0.5, 1.0),
            size: Vec2::new(0.61, 0.25),
        };
    }
    if screen != Screen::Bench {
        return CameraPose {
            target: Vec3::new(-0.36, 0.78, 0.0),
            away: Vec3::new(0.52, 0.34, 1.0),
            size: Vec2::new(2.0, 1.46),
        };
    }
    match view {
        ViewKind::Panel => CameraPose {
            target: console::FACE + Vec3::new(0.0, -0.012, 0.0),
            away: Vec3::new(0.05, 0.56, 1.0),
            size: Vec2::new(0.67, 0.42),
        },
        ViewKind::Machine => CameraPose {
            target: Vec3::new(0.06, 0.62, 0.0),
            away: Vec3::new(0.56, 0.46, 1.0),
            size: Vec2::new(1.42, 1.66),
        },
        ViewKind::Cabinet => CameraPose {
            target: Vec3::new(0.04, 0.55, 0.0),
            away: Vec3::new(0.50, 0.20, 1.0),
            size: Vec2::new(1.16, 1.36),
        },
    }
}

fn spawn_cameras(
    mut commands: Commands,
    mut images: ResMut<Assets<Image>>,
    mut settings: ResMut<EguiGlobalSettings>,
    adapter: Option<Res<RenderAdapterInfo>>,
    picture: Option<Res<Shot>>,
) {
    settings.auto_create_primary_context = false;
    let software = adapter.is_some_and(|info| format!("{:?}", info.device_type) == "Cpu");
    // Without a graphics card a window draws the scene at half its size and without extra samples.
    // A picture may take its time.
    let cheap = software && picture.is_none();
    let image = images.add(Image::new_target_texture(
        640,
        480,
        TextureFormat::Rgba8UnormSrgb,
        None,
    ));
    let first = camera_pose(ViewKind::Machine, Screen::Start);
    let eye = commands
        .spawn((
            Camera3d::default(),
            Camera {
                clear_color: ClearColorConfig::Custom(Color::srgb_u8(0x18, 0x20, 0x25)),
                order: -1,
                ..default()
            },
            RenderTarget::Image(ImageRenderTarget::from(image.clone())),
            Projection::Perspective(PerspectiveProjection {
                fov: FIELD,
                near: 0.05,
                far: 20.0,
                ..default()
            }),
            Tonemapping::TonyMcMapface,
            DebandDither::Enabled,
            lights::shadow_edges(),
            lights::surroundings(&mut images),
            MainCamera {
                target: first.target,
                away: first.away,
                size: first.size,
            },
            Transform::from_xyz(1.0, 1.5, 3.0).looking_at(first.target, Vec3::Y),
        ))
        .id();
    if cheap {
        commands.entity(eye).insert((Msaa::Off, Fxaa::default()));
    } else {
        // The depth comes first, so that no pixel is lit that something else covers.
        commands.entity(eye).insert((Msaa::Sample4, DepthPrepass));
    }
    commands.insert_resource(SceneTarget {
        image,
        software: cheap,
        coarse: false,
    });
    commands.insert_resource(Attention {
        coarse: COARSE.1,
        awake_s: SETTLE_S,
        sharp_frames: 0,
        seen: None,
        lamps: None,
    });
    commands.spawn((
        PrimaryEguiContext,
        Camera2d,
        RenderLayers::none(),
        Msaa::Off,
        Camera {
            order: 1,
            clear_color: ClearColorConfig::Custom(Color::srgb_u8(0x18, 0x22, 0x29)),
            ..default()
        },
    ));
}

/// The eye draws only while something moves or has just changed.
#[allow(clippy::too_many_arguments)]
fn throttle_rendering(
    bench: Res<BenchRes>,
    displayed: Res<DisplayedMachine>,
    ui_state: Res<UiState>,
    pointing: Res<Pointing>,
    feel: Res<KnobFeel>,
    screen: Res<State<Screen>>,
    time: Res<Time>,
    window: Single<&Window, With<PrimaryWindow>>,
    zoom: Single<&EguiZoomFactor, With<PrimaryEguiContext>>,
    mut images: ResMut<Assets<Image>>,
    picture: Option<Res<Shot>>,
    mut lens: ResMut<SceneTarget>,
    mut attention: ResMut<Attention>,
    mut next: ResMut<NextFrame>,
    mut eye: Single<&mut Camera, With<MainCamera>>,
) {
    let pixels_per_point = window.scale_factor() * zoom.zoom_factor;
    let stage = (ui_state.stage.size() * pixels_per_point).as_uvec2();
    let seen = seen_things(
        bench.view(),
        &displayed,
        &ui_state,
        pointing.over,
        feel.strain,
        *screen.get(),
        stage,
    );
    if attention.seen.as_ref() != Some(&seen) {
        attention.awake_s = SETTLE_S;
        attention.seen = Some(seen);
    } else {
        attention.awake_s -= time.delta_secs();
    }
    // A lamp is lit or not: nothing eases, and a machine that blinks for hours is no reason to draw all the
    // time. Where every pixel is dear the panels draw the lamps.
    let lamps = Some(displayed.lamps);
    let blinks = attention.lamps != lamps && !lens.software;
    attention.lamps = lamps;
    // Shaders may still be on their way in the first seconds.
    let awake = attention.awake_s > 0.0 || time.elapsed_secs() < 8.0;
    if awake || blinks {
        attention.sharp_frames = 3;
    } else {
        attention.sharp_frames = attention.sharp_frames.saturating_sub(1);
    }
    let small = lens.software && awake;
    if small {
        attention.coarse = adapt(attention.coarse, time.delta_secs());
    }
    lens.coarse = small;
    let scale = pixels_per_point * if small { attention.coarse } else { 1.0 };
    let size = (ui_state.stage.size() * scale)
        .as_uvec2()
        .clamp(UVec2::splat(16), UVec2::splat(4096));
    if images
        .get(&lens.image)
        .is_some_and(|image| image.size() != size)
        && let Some(mut image) = images.get_mut(&lens.image)
    {
        image.resize(Extent3d {
            width: size.x,
            height: size.y,
            depth_or_array_layers: 1,
        });
    }
    // What is practised covers the whole scene, but for a drill at a console.
    let covered = ui_state.flat
        || match screen.get() {
            Screen::Start | Screen::Bench | Screen::Join => false,
            Screen::Drill => !displayed.of_drill || lens.software,
            Screen::Practice | Screen::Examination | Screen::Workshop => true,
        };
    let moving = !covered && (awake || attention.sharp_frames > 0);
    if moving || picture.is_some() {
        next.ask();
    }
    let active = match &picture {
        Some(picture) => picture.near() && !covered,
        None => moving,
    };
    if eye.is_active != active {
        eye.is_active = active;
    }
}

fn move_camera(
    ui_state: Res<UiState>,
    screen: Res<State<Screen>>,
    easing: Easing,
    eye: Single<(&mut Transform, &mut MainCamera)>,
) {
    let (mut place, mut eye) = eye.into_inner();
    let goal = camera_pose(ui_state.view, *screen.get());
    let size = ui_state.stage.size();
    let share = easing.share(0.22);
    eye.target = eye.target.lerp(goal.target, share);
    eye.away = eye.away.lerp(goal.away, share);
    eye.size = eye.size.lerp(goal.size, share);
    let aspect = size.x / size.y.max(1.0);
    let tan = (FIELD / 2.0).tan();
    let distance = (eye.size.y / 2.0 / tan).max(eye.size.x / 2.0 / (tan * aspect));
    let now = Transform::from_translation(eye.target + eye.away.normalize() * distance)
        .looking_at(eye.target, Vec3::Y);
    place.set_if_neq(now);
}

/// Camera.
pub fn plugin(app: &mut App) {
    app.add_systems(Startup, spawn_cameras)
        .add_systems(Update, move_camera)
        .add_systems(
            PostUpdate,
            throttle_rendering.before(bevy::camera::CameraUpdateSystems),
        );
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::AppOptions;
    use crate::rest::tests::{paused, set_zoom};

    /// Otherwise the scene would be stretched, and its print blurred.
    #[test]
    fn the_picture_has_a_pixel_for_each_of_the_screen_however_large_the_panels_are() {
        let mut app = paused(&AppOptions {
            start: Some((0, 71)),
            ..AppOptions::default()
        });
        app.update();
        let mut heights = Vec::new();
        for zoom in [1.0, 1.3, 0.8] {
            set_zoom(&mut app, zoom);
            (0..10).for_each(|_| app.update());
            let world = app.world();
            let picture = world.resource::<SceneTarget>().image.clone();
            let images = world.resource::<Assets<Image>>();
            let picture = images.get(&picture).expect("a picture").size();
            let stage = world.resource::<UiState>().stage;
            assert_eq!(picture, (stage.size() * zoom).as_uvec2(), "zoom {zoom}");
            // The bars above and below the stage grow with the zoom, and the window is as it was.
            heights.push(picture.y);
        }
        assert!(
            heights[1] < heights[0] && heights[0] < heights[2],
            "{heights:?}"
        );
    }
}
