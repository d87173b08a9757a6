//! Pictures on request: show so many frames, save one, leave.

use super::AppOptions;
use bevy::app::AppExit;
use bevy::platform::time::Instant;
use bevy::prelude::*;
use bevy::render::view::screenshot::{Capturing, Screenshot, save_to_disk};
use std::path::PathBuf;

/// A picture asked for.
#[derive(Resource)]
pub struct Shot {
    path: PathBuf,
    after_frames: u32,
    frame: u32,
    taken: bool,
    since: Option<(Instant, u32)>,
}

impl Shot {
    /// The picture comes in a few frames: only those need be drawn.
    pub fn near(&self) -> bool {
        self.taken || self.frame + 5 >= self.after_frames
    }
}

fn take(
    mut commands: Commands,
    mut shot: ResMut<Shot>,
    capturing: Query<(), With<Capturing>>,
    mut exit: MessageWriter<AppExit>,
) {
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
        commands
            .spawn(Screenshot::primary_window())
            .observe(save_to_disk(shot.path.clone()));
    } else if shot.taken && shot.frame > 3 && capturing.is_empty() && shot.path.exists() {
        exit.write(AppExit::Success);
    }
}

/// Takes one picture if the options ask for it.
pub fn plugin(app: &mut App, options: &AppOptions) {
    if let Some(path) = &options.screenshot {
        let _ = std::fs::remove_file(path);
        app.insert_resource(Shot {
            path: path.clone(),
            after_frames: options.after_frames,
            frame: 0,
            taken: false,
            since: None,
        })
        .add_systems(Last, take);
    }
}
