//! What stands in the room: all of it made in code.

pub mod console;
pub mod displayed;
mod fitted;
pub mod grips;
pub mod inside;
mod laundry;
pub mod lights;
mod maker;
pub mod measures;
pub mod mesh;
pub mod motion;
pub mod paint;
pub mod probes;
pub mod room;
mod still;
pub mod strokes;
pub mod washer;

use bevy::prelude::*;
use paint::Paint;

fn mix_paint(
    mut commands: Commands,
    mut images: ResMut<Assets<Image>>,
    mut materials: ResMut<Assets<StandardMaterial>>,
) {
    commands.insert_resource(Paint::new(&mut images, &mut materials));
}

/// The whole scene.
pub fn plugin(app: &mut App) {
    app.add_systems(PreStartup, mix_paint).add_plugins((
        displayed::plugin,
        lights::plugin,
        room::plugin,
        washer::plugin,
        console::plugin,
        grips::plugin,
        inside::plugin,
        probes::plugin,
        fitted::plugin,
    ));
}
