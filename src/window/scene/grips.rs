//! Where hands and eyes find knob, buttons, lamps, lid and plug in the window: for the guide's light, and for whoever
//! drives the page.

use super::console::layout::Layout;
use super::console::{face, knob_middle};
use super::inside::{PLUG_IN, PLUG_OUT};
use super::washer::{LID_SIZE, Lid};
use crate::camera::{MainCamera, to_window};
use crate::flat::FlatScene;
use crate::pointing::Pick;
use crate::port::Job;
use crate::state::{BenchRes, UiState};
use bevy::prelude::*;
use detent_simulation::controller::Board;
use std::sync::Arc;

/// How far out a ring goes round the knob, a button and the plug, m.
const ROUND_KNOB_M: f32 = 0.062;
const ROUND_BUTTON_M: f32 = 0.034;
const ROUND_PLUG_M: f32 = 0.075;
/// How far round the lamps a line goes, m.
const ROUND_LAMPS_M: f32 = 0.022;

/// What a step can need of the scene.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GripKind {
    /// What a hand takes hold of.
    Pick(Pick),
    /// The code lamps, to be read.
    Lamps,
}

/// A line round it.
#[derive(Clone, Copy, Debug)]
pub enum Outline<Place> {
    /// A ring of this radius.
    Ring(Place, f32),
    /// Through four corners.
    Corners([Place; 4]),
}

/// Something of the scene, as it is seen.
#[derive(Clone, Copy, Debug)]
pub struct SceneGrip {
    /// What.
    pub kind: GripKind,
    /// A line round it, points of the window.
    pub outline: Outline<Vec2>,
}

/// Those of the machine at the bench, in this frame.
#[derive(Resource, Default)]
pub struct SceneGrips(pub Vec<SceneGrip>);

/// Where they are in the world, m.
type Places = Vec<(GripKind, Outline<Vec3>)>;

/// The corners of what lies in this rectangle.
fn corners(of: Rect, place: impl Fn(Vec2) -> Vec3) -> Outline<Vec3> {
    let corner = |x, y| place(Vec2::new(x, y));
    Outline::Corners([
        corner(of.min.x, of.min.y),
        corner(of.max.x, of.min.y),
        corner(of.max.x, of.max.y),
        corner(of.min.x, of.max.y),
    ])
}

fn on_console(board: &Board) -> Places {
    let layout = Layout::of(&board.panel, &board.lamps);
    let on_face = |place: Vec2| face().transform_point(place.extend(0.015));
    let buttons = layout
        .buttons_by_line()
        .into_iter()
        .map(|(button, place, _)| {
            let ring = Outline::Ring(on_face(place), ROUND_BUTTON_M);
            (GripKind::Pick(Pick::Button(button)), ring)
        });
    let knob = knob_middle(board).map(|middle| {
        let ring = Outline::Ring(middle, ROUND_KNOB_M);
        (GripKind::Pick(Pick::Knob), ring)
    });
    let field = layout.code_field().map(|field| {
        let line = corners(field.inflate(ROUND_LAMPS_M), on_face);
        (GripKind::Lamps, line)
    });
    knob.into_iter().chain(buttons).chain(field).collect()
}

/// The console is laid out once for each job; in every frame it is only looked at.
fn find(
    eye: Single<(&Camera, &GlobalTransform), With<MainCamera>>,
    lids: Query<&GlobalTransform, With<Lid>>,
    ui_state: Res<UiState>,
    flat: Res<FlatScene>,
    bench: Res<BenchRes>,
    mut laid_out: Local<Option<(Arc<Job>, Places)>>,
    mut grips: ResMut<SceneGrips>,
) {
    grips.0.clear();
    if ui_state.flat {
        let places = flat.places.iter();
        grips.0.extend(places.map(|(kind, place)| SceneGrip {
            kind: *kind,
            outline: place.outline(),
        }));
        return;
    }
    let job = bench.job();
    if !(laid_out.as_ref()).is_some_and(|(of, _)| Arc::ptr_eq(of, job)) {
        *laid_out = Some((Arc::clone(job), on_console(&job.board)));
    }
    let plug = match bench.view().machine.plugged {
        true => PLUG_IN,
        false => PLUG_OUT,
    };
    let plug = (
        GripKind::Pick(Pick::Plug),
        Outline::Ring(plug, ROUND_PLUG_M),
    );
    let lids = lids.iter().map(|hinge| {
        let lid = Rect::from_corners(
            Vec2::new(0.0, -LID_SIZE.y / 2.0),
            Vec2::new(LID_SIZE.x, LID_SIZE.y / 2.0),
        );
        let line = corners(lid, |at| hinge.transform_point(Vec3::new(at.x, 0.0, at.y)));
        (GripKind::Pick(Pick::Lid), line)
    });
    let (camera, eye) = *eye;
    let seen = |place: Vec3| {
        let place = camera.world_to_viewport(eye, place).ok()?;
        Some(to_window(camera, ui_state.stage, place))
    };
    let places = laid_out
        .iter()
        .flat_map(|(_, places)| places.iter().copied());
    let found = places
        .chain([plug])
        .chain(lids)
        .filter_map(|(kind, outline)| {
            let outline = match outline {
                Outline::Ring(place, round_m) => {
                    let middle = seen(place)?;
                    let edge = seen(place + round_m * Vec3::from(eye.right()))?;
                    Outline::Ring(middle, edge.distance(middle))
                }
                Outline::Corners([a, b, c, d]) => {
                    Outline::Corners([seen(a)?, seen(b)?, seen(c)?, seen(d)?])
                }
            };
            Some(SceneGrip { kind, outline })
        });
    grips.0.extend(found);
}

/// Where they are.
pub fn plugin(app: &mut App) {
    app.init_resource::<SceneGrips>().add_systems(Update, find);
}
