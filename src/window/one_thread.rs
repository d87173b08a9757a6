//! Systems run one after the other. Each of ours takes microseconds, and handing it to another thread costs more than that;
//! the picture is still made beside the next frame.

use bevy::ecs::schedule::{Schedules, SingleThreadedExecutor};
use bevy::prelude::*;
use bevy::render::RenderApp;

/// Sets the schedules once every plugin has added its own.
pub struct OneThreadPlugin;

fn run_in_turn(world: &mut World) {
    let mut schedules = world.resource_mut::<Schedules>();
    for (_, schedule) in schedules.iter_mut() {
        schedule.set_executor(SingleThreadedExecutor::new());
    }
}

impl Plugin for OneThreadPlugin {
    fn build(&self, _: &mut App) {}

    fn finish(&self, app: &mut App) {
        run_in_turn(app.world_mut());
        if let Some(render) = app.get_sub_app_mut(RenderApp) {
            run_in_turn(render.world_mut());
        }
    }
}
