//! Buttons: caps that give way, each with its glyph.

use super::layout::Cap;
use crate::pointing::Pick;
use crate::scene::displayed::{DisplayedMachine, display};
use crate::scene::maker::{Maker, at};
use crate::scene::mesh::{Shape, drum, fillet, lathe, rounded_xy, stamp};
use crate::scene::motion::{Easing, put};
use crate::scene::still::{Apart, Still};
use crate::scene::strokes::polyline;
use bevy::prelude::*;
use detent_simulation::interface::Button;
use std::f32::consts::PI;

/// A moving cap.
#[derive(Component)]
#[require(Apart, Still)]
struct Moving(Button);

/// The sign on a button, in a square of side 2 about its middle.
fn sign(button: Button, size: f32) -> Shape {
    let p = |x: f32, y: f32| Vec2::new(x, y) * size;
    let solid = |outline: &[Vec2]| stamp(outline, 0.0012, 0.0005);
    // Two steps, one over the other: up the list or down it.
    let stairs = |up: f32| {
        let stair = |y: f32| {
            polyline(
                &[p(-0.95, y * up), p(0.0, (y + 0.62) * up), p(0.95, y * up)],
                size * 0.34,
            )
        };
        stair(-0.72)
            .with(stair(0.18), Transform::IDENTITY)
            .moved(at(0.0, 0.0, 0.0012))
    };
    match button {
        Button::Start => solid(&fillet(
            &[p(-0.60, -0.95), p(1.05, 0.0), p(-0.60, 0.95)],
            size * 0.2,
        )),
        Button::Stop => solid(&rounded_xy(size * 1.55, size * 1.55, size * 0.22)),
        Button::More => stairs(1.0),
        Button::Less => stairs(-1.0),
    }
}

fn round(
    make: &mut Maker,
    spot: Entity,
    moving: Entity,
    radius: f32,
    button: Button,
) -> Vec<Entity> {
    let paint = make.paint.clone();
    let facing =
        |shape: Shape| shape.moved(Transform::from_rotation(Quat::from_rotation_x(PI / 2.0)));
    let bezel = lathe(
        &[
            (0.0, 0.0),
            (radius + 0.0048, 0.0),
            (radius + 0.0043, 0.004),
            (radius + 0.0023, 0.0055),
            (radius + 0.0010, 0.004),
            (0.0, 0.002),
        ],
        44,
    );
    make.add(spot, facing(bezel), &paint.chrome, Transform::IDENTITY);
    let colour = match button {
        Button::Start => &paint.green,
        Button::Stop => &paint.red,
        Button::More | Button::Less => &paint.dark,
    };
    vec![
        make.add(
            moving,
            facing(drum(radius, 0.013, 0.004, 40)),
            colour,
            Transform::IDENTITY,
        ),
        make.add(
            moving,
            sign(button, 0.010),
            &paint.light,
            at(0.0, 0.0, 0.0128),
        ),
    ]
}

fn pad(make: &mut Maker, spot: Entity, moving: Entity, size: Vec2, button: Button) -> Vec<Entity> {
    let paint = make.paint.clone();
    let bed = stamp(
        &rounded_xy(size.x + 0.006, size.y + 0.006, 0.016),
        0.002,
        0.001,
    );
    make.add(spot, bed, &paint.dark, Transform::IDENTITY);
    let (colour, ink) = match button {
        Button::Start => (&paint.green, &paint.light),
        Button::Stop => (&paint.red, &paint.light),
        Button::More | Button::Less => (&paint.light, &paint.ink),
    };
    let cap = stamp(&rounded_xy(size.x, size.y, 0.014), 0.0085, 0.0035);
    vec![
        make.add(moving, cap, colour, Transform::IDENTITY),
        make.add(moving, sign(button, 0.014), ink, at(0.0, 0.0, 0.0083)),
    ]
}

fn key(make: &mut Maker, spot: Entity, moving: Entity, size: Vec2, button: Button) -> Vec<Entity> {
    let paint = make.paint.clone();
    let frame = stamp(
        &rounded_xy(size.x + 0.010, size.y + 0.010, 0.005),
        0.004,
        0.002,
    );
    make.add(spot, frame, &paint.chrome, Transform::IDENTITY);
    let stripe = match button {
        Button::Start => &paint.green,
        Button::Stop => &paint.red,
        Button::More | Button::Less => &paint.teal,
    };
    let across = size.y.min(size.x);
    let cap = stamp(&rounded_xy(size.x, size.y, 0.003), 0.0120, 0.0025);
    let band = stamp(
        &rounded_xy(size.x - 0.014, across * 0.16, 0.002),
        0.0010,
        0.0004,
    );
    vec![
        make.add(moving, cap, &paint.dark, Transform::IDENTITY),
        make.add(moving, band, stripe, at(0.0, -across * 0.31, 0.0118)),
        make.add(
            moving,
            sign(button, across * 0.21),
            &paint.light,
            at(0.0, across * 0.10, 0.0118),
        ),
    ]
}

/// Puts a button on the face.
pub fn build(make: &mut Maker, context: Entity, button: Button, place: Vec2, cap: Cap) {
    let spot = make.group(Some(context), at(place.x, place.y, 0.006));
    let moving = make.group(Some(spot), Transform::IDENTITY);
    make.commands.entity(moving).insert(Moving(button));
    let parts = match cap {
        Cap::Round(radius) => round(make, spot, moving, radius, button),
        Cap::Pad(size) => pad(make, spot, moving, size, button),
        Cap::Key(size) => key(make, spot, moving, size, button),
    };
    for entity in parts {
        make.commands.entity(entity).insert(Pick::Button(button));
    }
}

fn give_way(
    displayed: Res<DisplayedMachine>,
    easing: Easing,
    mut caps: Query<(&Moving, &mut Transform)>,
) {
    let down = displayed.held;
    for (Moving(button), mut place) in &mut caps {
        let goal = if down[button.index()] { -0.0062 } else { 0.0 };
        put(&mut place, |mut place| {
            place.translation.z = easing.toward(place.translation.z, goal, 0.03);
            place
        });
    }
}

/// Buttons.
pub fn plugin(app: &mut App) {
    app.add_systems(Update, give_way.after(display));
}
