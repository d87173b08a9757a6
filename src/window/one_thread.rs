//! Systems run one after the other. Each of ours takes microseconds, and handing it to another thread costs more than that;
//! the picture is still made beside the next frame.

use bevy::ecs::schedule::{ScheduleLabel, Schedules, SingleThreadedExecutor};
use bevy::prelude::*;
use bevy::render::{ExtractSchedule, RenderApp};

/// Sets the schedules once every plugin has added its own.
pub struct OneThreadPlugin;

fn run_in_turn(world: &mut World) {
    let mut schedules = world.resource_mut::<Schedules>();
    // The executor of this one also knows that its commands wait for the render world's own time.
    let kept: &dyn ScheduleLabel = &ExtractSchedule;
    for (_, schedule) in (schedules.iter_mut()).filter(|(label, _)| !kept.dyn_eq(*label)) {
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
