//! The console, built from the board's data: knob, lamps and buttons on a leaning face.

mod buttons;
mod knob;
pub mod lamps;
pub mod layout;
pub mod print;

use super::maker::{Maker, at};
use super::measures::{DECK, DECK_Y, WIDTH};
use super::mesh::{arc_band, fillet, rounded_xy, stamp};
use super::still::Still;
use bevy::prelude::*;
use detent_simulation::controller::Board;
use std::f32::consts::PI;

pub use knob::KnobFeel;
use layout::{FACE_SIZE, Knob, Layout, Plate};
use print::Ink;

/// Middle of the console's face.
pub const FACE: Vec3 = Vec3::new(0.0, 1.055, -0.212);
/// The face leans back by this angle, rad.
pub const LEAN: f32 = -0.395;

/// Where the face looks, as a place in the world.
pub fn face() -> Transform {
    Transform::from_translation(FACE).with_rotation(Quat::from_rotation_x(LEAN))
}

/// Middle of the knob in the world, as far out as a hand grips it.
pub fn knob_middle(board: &Board) -> Option<Vec3> {
    let knob = Knob::of(board.panel.selector)?;
    Some(face().transform_point(knob.middle.extend(0.03)))
}

/// The console's body, the same for every board.
pub fn body(make: &mut Maker, root: Entity) {
    let paint = make.paint.clone();
    let base = DECK_Y + DECK;
    let profile = fillet(
        &[
            Vec2::new(0.145, base - 0.01),
            Vec2::new(0.152, base + 0.012),
            Vec2::new(0.255, base + 0.252),
            Vec2::new(0.325, base + 0.246),
            Vec2::new(0.331, base - 0.01),
        ],
        0.022,
    );
    let half = stamp(&profile, WIDTH / 2.0 - 0.004, 0.016)
        .moved(Transform::from_rotation(Quat::from_rotation_y(PI / 2.0)));
    let body = half
        .clone()
        .with(half, Transform::from_scale(Vec3::new(-1.0, 1.0, 1.0)));
    make.add(root, body, &paint.enamel, Transform::IDENTITY);
}

/// Builds the board's face on the console.
pub fn build(make: &mut Maker, root: Entity, board: &Board) {
    let paint = make.paint.clone();
    let layout = Layout::of(&board.panel, &board.lamps);
    let context = make.group(Some(root), face());
    make.commands.entity(context).insert(Still);
    let (plate, pale, first) = match layout.plate {
        Plate::Glass => (&paint.glass, Ink::pale(&paint), Ink::amber(&paint)),
        Plate::Painted => (&paint.slate, Ink::pale(&paint), Ink::amber(&paint)),
        Plate::Steel => (&paint.satin, Ink::dark(&paint), Ink::dark(&paint)),
    };
    make.add(
        context,
        stamp(&rounded_xy(FACE_SIZE.x, FACE_SIZE.y, 0.026), 0.006, 0.003),
        plate,
        Transform::IDENTITY,
    );
    let mut depth = 0.0065;
    if let Some((middle, size)) = layout.window {
        let pane = |grow: f32| {
            stamp(
                &rounded_xy(size.x + grow, size.y + grow, 0.012),
                0.0012,
                0.0006,
            )
        };
        make.add(
            context,
            pane(0.006),
            &paint.chrome,
            at(middle.x, middle.y, 0.0056),
        );
        make.add(
            context,
            pane(0.0),
            &paint.glass,
            at(middle.x, middle.y, 0.0062),
        );
        depth = 0.0076;
    }
    for (text, place) in &layout.marks {
        let height = layout::mark_height(text);
        let place = at(place.x, place.y, 0.0068);
        print::text(make, context, text, height, &pale, place);
    }
    for (middle, radius, from, to) in &layout.braces {
        let brace = arc_band(*radius, 0.0011, *from, *to, 0.0068);
        make.add(context, brace, &pale.material, at(middle.x, middle.y, 0.0));
    }
    let colour = lamps::colour_of(&board.lamps.signs);
    lamps::build(make, context, &layout.lamps, colour, &pale.material, depth);
    if let Some(knob) = &layout.knob {
        knob::build(make, context, knob, &pale, &first);
    }
    for (button, place, cap) in &layout.buttons {
        buttons::build(make, context, *button, *place, *cap);
    }
}

/// The console.
pub fn plugin(app: &mut App) {
    lamps::plugin(app);
    print::plugin(app);
    knob::plugin(app);
    buttons::plugin(app);
}
