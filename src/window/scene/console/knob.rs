//! The knob: a dial with an index mark, or a rotary switch with a pointer and printed positions.

use super::layout::Knob;
use super::print::{self, Ink};
use crate::pointing::Pick;
use crate::scene::displayed::{DisplayedMachine, display};
use crate::scene::maker::{Maker, at};
use crate::scene::mesh::{fillet, lathe, stamp};
use crate::scene::motion::{Easing, put};
use crate::scene::still::{Apart, Still};
use crate::scene::strokes::polyline;
use bevy::prelude::*;
use std::f32::consts::{PI, TAU};

/// The turning knob.
#[derive(Component)]
#[require(Apart, Still)]
struct Turning;

/// How the knob moves under the hand.
#[derive(Resource, Default)]
pub struct KnobFeel {
    /// Part of a detent by which the hand strains against it, -0.5 to 0.5.
    pub strain: f32,
    angle: f32,
    speed: f32,
    started: bool,
}

fn facing(shape: crate::scene::mesh::Shape) -> crate::scene::mesh::Shape {
    shape.moved(Transform::from_rotation(Quat::from_rotation_x(PI / 2.0)))
}

/// Every how many stops one is longer, and every how many one is numbered: numbers need room, and none may be
/// read as the number of a lamp over the dial.
fn major(stops: u8) -> (u8, u8) {
    if stops > 16 { (3, 6) } else { (1, 1) }
}

/// Ticks and numbers round the knob.
fn scale(make: &mut Maker, hub: Entity, knob: &Knob, print: &Ink, first: &Ink) {
    for stop in 0..knob.stops {
        let out = knob.towards(stop);
        let (longer, numbered) = major(knob.stops);
        let (from, to, width) = if stop % longer == 0 {
            (0.0605, 0.0695, 0.0019)
        } else {
            (0.0615, 0.0665, 0.0012)
        };
        let ink = if stop == 0 { first } else { print };
        let tick = [out * from, out * to];
        print::stroke(make, hub, &tick, width, ink, at(0.0, 0.0, 0.0006));
        if stop % numbered == 0 {
            let height = if knob.switch { 0.0112 } else { 0.0082 };
            let p = out * if knob.switch { 0.0835 } else { 0.0785 };
            let place = at(p.x, p.y, 0.0006);
            print::text(make, hub, &stop.to_string(), height, ink, place);
        }
    }
}

/// Fluted skirt, brushed cap, a grip with a line.
fn dial(make: &mut Maker, hub: Entity, turning: Entity, stops: u8) -> Vec<Entity> {
    let paint = make.paint.clone();
    let well = facing(lathe(
        &[(0.0, 0.0), (0.0585, 0.0), (0.057, 0.0025), (0.0, 0.0025)],
        64,
    ));
    make.add(hub, well, &paint.dark, Transform::IDENTITY);
    let outline: Vec<Vec2> = (0..144)
        .map(|i| {
            let a = i as f32 / 144.0 * TAU;
            let flute = (0.5 + 0.5 * (a * f32::from(stops)).cos()).powi(2);
            Vec2::from_angle(a) * (0.0535 - 0.0012 * flute)
        })
        .collect();
    let cap = facing(lathe(
        &[
            (0.0462, 0.0),
            (0.0456, 0.012),
            (0.0440, 0.0150),
            (0.0415, 0.0158),
            (0.030, 0.0145),
            (0.0, 0.0138),
        ],
        72,
    ));
    let grip = fillet(
        &[
            Vec2::new(-0.0075, -0.042),
            Vec2::new(0.0075, -0.042),
            Vec2::new(0.0062, 0.044),
            Vec2::new(-0.0062, 0.044),
        ],
        0.005,
    );
    let line =
        |from: f32, to: f32, width| polyline(&[Vec2::new(0.0, from), Vec2::new(0.0, to)], width);
    vec![
        make.add(
            turning,
            stamp(&outline, 0.016, 0.003),
            &paint.dark,
            Transform::IDENTITY,
        ),
        make.add(turning, cap, &paint.brushed, at(0.0, 0.0, 0.0145)),
        make.add(
            turning,
            stamp(&grip, 0.013, 0.004),
            &paint.dark,
            at(0.0, 0.0, 0.0275),
        ),
        make.add(
            turning,
            line(0.016, 0.0385, 0.0038),
            &paint.print_amber,
            at(0.0, 0.0, 0.0409),
        ),
        make.add(
            turning,
            line(0.0485, 0.0525, 0.0030),
            &paint.print_amber,
            at(0.0, 0.0, 0.0163),
        ),
    ]
}

/// A low round base and a pointer whose nose reaches the printed positions.
fn switch(make: &mut Maker, hub: Entity, turning: Entity) -> Vec<Entity> {
    let paint = make.paint.clone();
    let base = facing(lathe(
        &[
            (0.0, 0.0),
            (0.0575, 0.0),
            (0.0570, 0.0018),
            (0.0555, 0.0024),
            (0.0, 0.0024),
        ],
        64,
    ));
    make.add(hub, base, &paint.primer, Transform::IDENTITY);
    let skirt = facing(lathe(
        &[
            (0.0430, 0.0),
            (0.0430, 0.0055),
            (0.0405, 0.0085),
            (0.0, 0.0090),
        ],
        56,
    ));
    let pointer = fillet(
        &[
            Vec2::new(-0.0100, -0.036),
            Vec2::new(0.0100, -0.036),
            Vec2::new(0.0135, 0.004),
            Vec2::new(0.0022, 0.0555),
            Vec2::new(-0.0022, 0.0555),
            Vec2::new(-0.0135, 0.004),
        ],
        0.007,
    );
    let line = polyline(&[Vec2::new(0.0, -0.012), Vec2::new(0.0, 0.0500)], 0.0042);
    vec![
        make.add(turning, skirt, &paint.dark, at(0.0, 0.0, 0.0)),
        make.add(
            turning,
            stamp(&pointer, 0.022, 0.005),
            &paint.rubber,
            at(0.0, 0.0, 0.0065),
        ),
        make.add(turning, line, &paint.print, at(0.0, 0.0, 0.0288)),
    ]
}

/// Puts the knob on the face.
pub fn build(make: &mut Maker, context: Entity, knob: &Knob, print: &Ink, first: &Ink) {
    let hub = make.group(Some(context), at(knob.middle.x, knob.middle.y, 0.007));
    scale(make, hub, knob, print, first);
    let turning = make.group(Some(hub), at(0.0, 0.0, 0.003));
    make.commands.entity(turning).insert(Turning);
    let parts = if knob.switch {
        switch(make, hub, turning)
    } else {
        dial(make, hub, turning, knob.stops)
    };
    for entity in parts {
        make.commands.entity(entity).insert(Pick::Knob);
    }
}

/// So near its stop, rad, and so slow, rad/s, the knob stands still.
const AT_STOP: f32 = 1e-4;

/// The knob follows the machine's with a spring that overshoots a little at each stop.
fn turn(
    displayed: Res<DisplayedMachine>,
    easing: Easing,
    mut feel: ResMut<KnobFeel>,
    mut knob: Single<&mut Transform, With<Turning>>,
) {
    let Some(stops) = displayed.dial_stops else {
        return;
    };
    let step = TAU / f32::from(stops.max(1));
    let goal = f32::from(displayed.dial_position) * step + feel.strain * step * 0.8;
    if !feel.started || easing.is_still() {
        (feel.angle, feel.speed) = (goal, 0.0);
        feel.started = true;
    }
    let mut away = (goal - feel.angle).rem_euclid(TAU);
    if away > PI {
        away -= TAU;
    }
    let (mut angle, mut speed) = (feel.angle, feel.speed);
    let target = angle + away;
    let pieces = 8;
    let dt = easing.frame_s().min(0.1) / pieces as f32;
    for _ in 0..pieces {
        speed += ((target - angle) * 2_400.0 - speed * 46.0) * dt;
        angle += speed * dt;
    }
    if (target - angle).abs() < AT_STOP && speed.abs() < AT_STOP {
        (angle, speed) = (target, 0.0);
    }
    feel.angle = angle.rem_euclid(TAU);
    feel.speed = speed;
    put(&mut knob, |place| {
        place.with_rotation(Quat::from_rotation_z(-feel.angle))
    });
}

/// Knob.
pub fn plugin(app: &mut App) {
    app.init_resource::<KnobFeel>()
        .add_systems(Update, turn.after(display));
}
