//! Pictures on request: show so many frames, save one, go on to the next, leave.

use super::camera::{MainCamera, to_window};
use super::film::{Film, ShownFilm};
use super::flat::FlatScene;
use super::practice::DrillRes;
use super::scene::console::lamps::{Place, in_window};
use super::scene::console::layout::LampId;
use super::scene::inside::pin_place;
use super::software::{SoftwareDrawing, SoftwarePicture};
use super::state::{BenchRes, Screen, UiState};
use super::workshop::WorkshopRes;
use super::{AppOptions, Picture};
use bevy::app::AppExit;
use bevy::platform::time::Instant;
use bevy::prelude::*;
use bevy::render::view::screenshot::{Capturing, Screenshot, save_to_disk};
use bevy::window::{CursorMoved, PrimaryWindow};
use bevy_egui::EguiPreUpdateSet;
use detent_simulation::interface::{Pin, Side};
use std::collections::VecDeque;
use std::fmt::Write;
use std::path::Path;

/// The pictures asked for, the one at hand first.
#[derive(Resource)]
pub struct Shot {
    pictures: VecDeque<Picture>,
    after_frames: u32,
    frame: u32,
    taken: bool,
    since: Option<(Instant, u32)>,
}

/// Frames that the lights take to find their places once the eye draws.
const LIGHTS: u32 = 5;

impl Shot {
    /// The picture comes in a few frames: only those need be drawn.
    pub fn near(&self) -> bool {
        !self.taken && self.frame + LIGHTS >= self.after_frames
    }
}

/// What stands where in the picture, one a line, in pixels: lamps of the console with middle, radius
/// and whether they are lit; pins of the board's connectors, while the cabinet is open.
fn places(
    bench: &BenchRes,
    ui_state: &UiState,
    eye: (&Camera, &GlobalTransform),
    lamps: Query<(&Place, &GlobalTransform)>,
    flat: &FlatScene,
) -> String {
    let mut text = String::new();
    let seen: Vec<(LampId, Vec2, f32)> = if ui_state.flat {
        flat.lamps().collect()
    } else {
        let in_scene = |(place, spot): (&Place, _)| {
            let lamp = in_window(place, spot, eye, ui_state.stage)?;
            Some((place.id, lamp.at, lamp.radius))
        };
        lamps.iter().filter_map(in_scene).collect()
    };
    for (id, at, radius) in seen {
        let name = match id {
            LampId::Code(bit) => format!("code.{bit}"),
            LampId::Lock => "lock".to_owned(),
        };
        let lit = match id.lit(bench.view().machine.lamps) {
            true => "lit",
            false => "dark",
        };
        // Writing to a string cannot fail.
        let _ = writeln!(
            text,
            "lamp {name} {:.1} {:.1} {radius:.1} {lit}",
            at.x, at.y
        );
    }
    if !bench.view().cabinet_open {
        return text;
    }
    let (camera, eye) = eye;
    let board = &bench.job().board;
    for connector in &board.connectors {
        for pin in &connector.pins {
            for side in [Side::Board, Side::Harness] {
                let place = pin_place(board, Pin::Wire(pin.terminal, side));
                if let Ok(seen) = camera.world_to_viewport(eye, place) {
                    let at = to_window(camera, ui_state.stage, seen);
                    let name = format!("{}-{}", connector.label, pin.pin);
                    let _ = writeln!(text, "pin {name} {side} {:.1} {:.1}", at.x, at.y);
                }
            }
        }
    }
    text
}

/// Saves what the processor has drawn.
pub(crate) fn save(drawn: &SoftwarePicture, path: &Path) -> Result<(), String> {
    let image = drawn.image().try_into_dynamic();
    let image = image.map_err(|error| error.to_string())?;
    image.save(path).map_err(|error| error.to_string())
}

#[allow(clippy::too_many_arguments)]
fn take(
    mut commands: Commands,
    mut shot: ResMut<Shot>,
    mut bench: ResMut<BenchRes>,
    mut ui_state: ResMut<UiState>,
    eye: Single<(&Camera, &GlobalTransform), With<MainCamera>>,
    lamps: Query<(&Place, &GlobalTransform)>,
    flat: Res<FlatScene>,
    capturing: Query<(), With<Capturing>>,
    drawn: Option<Res<SoftwarePicture>>,
    (mut drill, workshop): (ResMut<DrillRes>, Res<WorkshopRes>),
    mut screen: ResMut<NextState<Screen>>,
    mut exit: MessageWriter<AppExit>,
) {
    let Some(path) = shot.pictures.front().map(|picture| picture.path.clone()) else {
        return;
    };
    let unproved = (workshop.open.as_ref()).is_some_and(|open| open.proof().is_under_way());
    let filming = ui_state.opening.is_some() || bench.film().is_some_and(Film::is_busy);
    if bench.is_thinking() || unproved || filming {
        return;
    }
    shot.frame += 1;
    // The first frames compile shaders; how long the later ones take is worth knowing.
    if !shot.taken && shot.frame == shot.after_frames / 2 {
        shot.since = Some((Instant::now(), shot.frame));
    }
    if !shot.taken && shot.frame >= shot.after_frames {
        if let Some((start, frame)) = shot.since {
            let each = start.elapsed() / (shot.frame - frame).max(1);
            info!("{} frames, {each:.1?} each", shot.frame - frame);
        }
        shot.taken = true;
        shot.frame = 0;
        let beside = path.with_extension("places");
        if let Err(error) = std::fs::write(&beside, places(&bench, &ui_state, *eye, lamps, &flat)) {
            error!("{}: {error}", beside.display());
            exit.write(AppExit::error());
        }
        match &drawn {
            Some(drawn) => {
                if let Err(error) = save(drawn, &path) {
                    error!("{}: {error}", path.display());
                    exit.write(AppExit::error());
                }
            }
            None => {
                commands
                    .spawn(Screenshot::primary_window())
                    .observe(save_to_disk(path));
            }
        }
    } else if shot.taken && shot.frame > 3 && capturing.is_empty() && path.exists() {
        shot.pictures.pop_front();
        shot.taken = false;
        shot.frame = 0;
        let Some(next) = shot.pictures.front() else {
            exit.write(AppExit::Success);
            return;
        };
        ui_state.view = next.view;
        (ui_state.tab, ui_state.page, ui_state.hidden) = next.tab;
        if let (Some(shown), Some(film)) = (next.film, bench.film_mut()) {
            film.show(shown);
            ui_state.film_ways = shown == ShownFilm::Ways;
        }
        if let Some(shown) = next.drill {
            let seed = ui_state.seed.parse().unwrap_or_default();
            drill.show(shown, seed);
            screen.set(Screen::Drill);
        } else {
            screen.set(Screen::Bench);
        }
        for (line, step) in &next.script {
            if let Err(error) = bench.run(step) {
                error!("line {line}: {error}");
                exit.write(AppExit::error());
                return;
            }
        }
    }
}

/// Whatever hand is over the window by chance does not get into its picture.
fn leave_hand_out(
    mut window: Single<&mut Window, With<PrimaryWindow>>,
    mut moved: ResMut<Messages<CursorMoved>>,
) {
    moved.clear();
    if window.cursor_position().is_some() {
        window.set_cursor_position(None);
    }
}

/// Takes the pictures that the options ask for.
pub fn plugin(app: &mut App, options: &AppOptions) {
    if options.pictures.is_empty() {
        return;
    }
    for picture in &options.pictures {
        let _ = std::fs::remove_file(&picture.path);
    }
    app.insert_resource(Shot {
        pictures: options.pictures.clone().into(),
        after_frames: options.after_frames,
        frame: 0,
        taken: false,
        since: None,
    })
    .add_systems(
        PreUpdate,
        leave_hand_out.before(EguiPreUpdateSet::ProcessInput),
    )
    .add_systems(Last, take.after(SoftwareDrawing));
}
