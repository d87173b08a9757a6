//! Where hands find the knob and the buttons in the window: for the guide's light, and for whoever drives the page.

use super::layout::Layout;
use super::{context, knob_middle};
use crate::camera::{MainCamera, to_window};
use crate::pointing::Pick;
use crate::port::Job;
use crate::state::{BenchRes, UiState};
use bevy::prelude::*;
use detent_simulation::controller::Board;
use std::sync::Arc;

/// How far out a ring goes round the knob and round a button, m.
const ROUND_KNOB_M: f32 = 0.062;
const ROUND_BUTTON_M: f32 = 0.034;

/// The knob or a button, as it is seen.
#[derive(Clone, Copy, Debug)]
pub struct ConsoleGrip {
    /// Which.
    pub pick: Pick,
    /// Its middle, points of the window.
    pub middle: Vec2,
    /// Radius of a ring round it there, points.
    pub radius: f32,
}

/// Those of the board at the bench, in this frame.
#[derive(Resource, Default)]
pub struct ConsoleGrips(pub Vec<ConsoleGrip>);

/// Where they are in the world, and how far out a ring goes round them, m.
type Places = Vec<(Pick, Vec3, f32)>;

fn in_world(board: &Board) -> Places {
    let layout = Layout::of(&board.panel, &board.lamps);
    let buttons = layout.buttons.into_iter().map(|(button, place, _)| {
        let middle = context().transform_point(place.extend(0.015));
        (Pick::Button(button), middle, ROUND_BUTTON_M)
    });
    let knob = knob_middle(board).map(|middle| (Pick::Knob, middle, ROUND_KNOB_M));
    buttons.chain(knob).collect()
}

/// The console is laid out once for each job; in every frame it is only looked at.
fn find(
    eye: Single<(&Camera, &GlobalTransform), With<MainCamera>>,
    ui_state: Res<UiState>,
    bench: Res<BenchRes>,
    mut laid_out: Local<Option<(Arc<Job>, Places)>>,
    mut grips: ResMut<ConsoleGrips>,
) {
    let job = bench.job();
    if !(laid_out.as_ref()).is_some_and(|(of, _)| Arc::ptr_eq(of, job)) {
        *laid_out = Some((Arc::clone(job), in_world(&job.board)));
    }
    let (camera, eye) = *eye;
    let seen = |place: Vec3| {
        let place = camera.world_to_viewport(eye, place).ok()?;
        Some(to_window(camera, ui_state.stage, place))
    };
    let places = laid_out.iter().flat_map(|(_, places)| places);
    let found = places.filter_map(|(pick, place, round_m)| {
        let middle = seen(*place)?;
        let radius = seen(*place + *round_m * Vec3::from(eye.right()))?.distance(middle);
        Some(ConsoleGrip {
            pick: *pick,
            middle,
            radius,
        })
    });
    grips.0.clear();
    grips.0.extend(found);
}

/// Where they are.
pub fn plugin(app: &mut App) {
    app.init_resource::<ConsoleGrips>()
        .add_systems(Update, find);
}
