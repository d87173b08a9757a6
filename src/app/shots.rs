//! Pictures on request: show so many frames, save one, go on to the next, leave.

use super::scene::console::lamps::{Place, in_window};
use super::scene::console::layout::LampId;
use super::state::{BenchRes, Desk};
use super::views::Eye;
use super::{AppOptions, Picture};
use bevy::app::AppExit;
use bevy::platform::time::Instant;
use bevy::prelude::*;
use bevy::render::view::screenshot::{Capturing, Screenshot, save_to_disk};
use std::collections::VecDeque;
use std::fmt::Write;

/// The pictures asked for, the one at hand first.
#[derive(Resource)]
pub struct Shot {
    pictures: VecDeque<Picture>,
    after_frames: u32,
    frame: u32,
    taken: bool,
    since: Option<(Instant, u32)>,
}

impl Shot {
    /// The picture comes in a few frames: only those need be drawn.
    pub fn near(&self) -> bool {
        !self.taken && self.frame + 3 >= self.after_frames
    }
}

/// The lamps of the console as they stand in the picture, one a line: name, middle and radius in
/// pixels, lit or dark.
fn lamps(
    bench: &BenchRes,
    desk: &Desk,
    eye: (&Camera, &GlobalTransform),
    places: Query<(&Place, &GlobalTransform)>,
) -> String {
    let mut text = String::new();
    for (place, spot) in &places {
        let Some(lamp) = in_window(place, spot, eye, desk.stage) else {
            continue;
        };
        let name = match place.id {
            LampId::Code(bit) => format!("code.{bit}"),
            LampId::Lock => "lock".to_owned(),
        };
        let lit = place.id.lit(bench.view().machine.lamps);
        // Writing to a string cannot fail.
        let _ = writeln!(
            text,
            "{name} {:.1} {:.1} {:.1} {}",
            lamp.at.x,
            lamp.at.y,
            lamp.radius,
            if lit { "lit" } else { "dark" }
        );
    }
    text
}

#[allow(clippy::too_many_arguments)]
fn take(
    mut commands: Commands,
    mut shot: ResMut<Shot>,
    mut bench: ResMut<BenchRes>,
    mut desk: ResMut<Desk>,
    eye: Single<(&Camera, &GlobalTransform), With<Eye>>,
    places: Query<(&Place, &GlobalTransform)>,
    capturing: Query<(), With<Capturing>>,
    mut exit: MessageWriter<AppExit>,
) {
    let Some(path) = shot.pictures.front().map(|picture| picture.path.clone()) else {
        return;
    };
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
        let beside = path.with_extension("lamps");
        if let Err(error) = std::fs::write(&beside, lamps(&bench, &desk, *eye, places)) {
            error!("{}: {error}", beside.display());
            exit.write(AppExit::error());
        }
        commands
            .spawn(Screenshot::primary_window())
            .observe(save_to_disk(path));
    } else if shot.taken && shot.frame > 3 && capturing.is_empty() && path.exists() {
        shot.pictures.pop_front();
        shot.taken = false;
        shot.frame = 0;
        let Some(next) = shot.pictures.front() else {
            exit.write(AppExit::Success);
            return;
        };
        desk.view = next.view;
        for (line, step) in &next.script {
            if let Err(error) = bench.run(step) {
                error!("line {line}: {error}");
                exit.write(AppExit::error());
                return;
            }
        }
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
    .add_systems(Last, take);
}
