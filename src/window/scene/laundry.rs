//! The laundry in the basket: a soft heap round the agitator, with a few folded pieces on top.

use super::maker::{Maker, at};
use super::measures::TUB_Y;
use super::mesh::{Shape, circle, ring, rounded};
use super::still::{Apart, Still};
use bevy::prelude::*;
use std::f32::consts::{PI, TAU};

/// What lies in the basket; hidden when it was taken out.
#[derive(Component)]
#[require(Apart, Still)]
pub struct Laundry;

/// Where the heap ends: at the agitator and at the basket's wall, m.
const INNER: f32 = 0.03;
const OUTER: f32 = 0.222;
/// Rings and corners of each piece: enough for soft edges.
const RINGS: usize = 8;
const CORNERS: usize = 5;

/// Muted colours of washed cloth: linen, slate, sage, rose, sand.
const CLOTH: [[u8; 3]; 5] = [
    [0xd3, 0xcb, 0xba],
    [0x7d, 0x90, 0xa2],
    [0x97, 0xa5, 0x90],
    [0xa8, 0x8d, 0x88],
    [0xc2, 0xad, 0x86],
];

/// The pieces on top: cloth, angle round the agitator in parts of a turn, distance from it and height of the middle
/// above the tub's bottom (m), width and depth (m), angle about itself in parts of a turn.
const PIECES: [(usize, f32, f32, f32, f32, f32, f32); 9] = [
    (3, 0.02, 0.115, 0.385, 0.16, 0.13, 0.05),
    (2, 0.14, 0.120, 0.378, 0.15, 0.12, 0.21),
    (0, 0.26, 0.112, 0.395, 0.17, 0.13, 0.33),
    (3, 0.37, 0.120, 0.382, 0.15, 0.12, 0.02),
    (4, 0.49, 0.115, 0.390, 0.16, 0.12, 0.47),
    (1, 0.61, 0.120, 0.380, 0.15, 0.12, 0.11),
    (0, 0.72, 0.112, 0.392, 0.17, 0.13, 0.29),
    (2, 0.83, 0.120, 0.384, 0.15, 0.12, 0.38),
    (1, 0.93, 0.060, 0.420, 0.14, 0.11, 0.16),
];

/// How far a fold lifts or sinks the cloth there, −1 to 1.
fn fold(place: Vec3, phase: f32) -> f32 {
    let along = (38.0 * place.x + 21.0 * place.z + phase).sin();
    let across = (27.0 * place.z - 17.0 * place.x + 1.7 * phase).sin();
    0.6 * along + 0.4 * across
}

/// A folded piece around the origin, plump in the middle.
fn piece(width: f32, depth: f32, height: f32, phase: f32) -> Shape {
    let outline = rounded(width, depth, 0.4 * depth, CORNERS);
    let rings: Vec<Vec<Vec3>> = (0..=RINGS)
        .map(|n| {
            let (rise, reach) = (PI * (n as f32 / RINGS as f32 - 0.5)).sin_cos();
            // A square root keeps the sides steep and the top broad.
            let scaled: Vec<Vec2> = (outline.iter())
                .map(|p| *p * reach.max(0.0).sqrt().max(0.03))
                .collect();
            let mut points = ring(&scaled, 0.5 * height * rise);
            for point in &mut points {
                point.y += 0.22 * height * fold(*point, phase);
            }
            points
        })
        .collect();
    closed(&rings)
}

/// The heap that fills the basket below them.
fn heap() -> Shape {
    let profile = [
        (OUTER - 0.006, 0.035),
        (OUTER, 0.10),
        (OUTER, 0.31),
        (OUTER - 0.012, 0.355),
        (OUTER - 0.05, 0.375),
        (0.12, 0.375),
        (INNER, 0.37),
    ];
    let rings: Vec<Vec<Vec3>> = (profile.iter().enumerate())
        .map(|(n, (radius, height))| {
            let mut points = ring(&circle(*radius, 48), TUB_Y + height);
            for point in &mut points {
                // The wall keeps it round; the top is uneven.
                let free = n.saturating_sub(2).min(2) as f32 * 0.008;
                point.y += free * fold(*point, 0.4);
            }
            points
        })
        .collect();
    Shape::loft(&rings, true)
}

fn closed(rings: &[Vec<Vec3>]) -> Shape {
    let mut shape = Shape::loft(rings, true);
    if let [first, .., last] = rings {
        shape.cap(first, false);
        shape.cap(last, true);
    }
    shape
}

/// Puts the laundry into the basket, with which it turns.
pub fn laundry(make: &mut Maker, basket: Entity) {
    let cloth = CLOTH.map(|[r, g, b]| {
        make.materials.add(StandardMaterial {
            base_color: Color::srgb_u8(r, g, b),
            perceptual_roughness: 0.95,
            reflectance: 0.2,
            ..default()
        })
    });
    let all = make.group(Some(basket), Transform::IDENTITY);
    make.commands.entity(all).insert(Laundry);
    make.add(all, heap(), &cloth[0], Transform::IDENTITY);
    for (n, (colour, angle, away, height, width, depth, turned)) in PIECES.into_iter().enumerate() {
        let place = Vec2::from_angle(angle * TAU) * away;
        let phase = n as f32 * 1.9;
        let tilt = 0.16 * fold(Vec3::new(place.x, 0.0, place.y), phase);
        let lies = Quat::from_rotation_y(turned * TAU) * Quat::from_rotation_x(tilt);
        let place = at(place.x, TUB_Y + height, place.y).with_rotation(lies);
        make.add(
            all,
            piece(width, depth, 0.062, phase),
            &cloth[colour],
            place,
        );
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::state::BenchRes;
    use crate::{AppOptions, add_bench, without_window_system};
    use bevy::time::TimeUpdateStrategy;
    use detent_training::bench::Action;
    use detent_training::bench::script::ScriptStep;
    use std::time::Duration;

    /// What was taken out of the basket is not seen in it, and what was put back is.
    #[test]
    fn laundry_is_seen_while_it_is_in_the_basket() {
        let options = AppOptions {
            start: Some((0, 101)),
            ..AppOptions::default()
        };
        let mut app = without_window_system(&options, false);
        add_bench(&mut app, &options).expect("the built-in jobs are sound");
        let frame = Duration::from_millis(100);
        app.insert_resource(TimeUpdateStrategy::ManualDuration(frame));
        app.finish();
        app.cleanup();
        let seen = |app: &mut App| {
            app.update();
            app.update();
            let mut laundry = app
                .world_mut()
                .query_filtered::<&Visibility, With<Laundry>>();
            *laundry.single(app.world()).expect("one heap") != Visibility::Hidden
        };
        let run = |app: &mut App, step: ScriptStep| {
            let mut bench = app.world_mut().resource_mut::<BenchRes>();
            bench
                .run(&step)
                .unwrap_or_else(|problem| panic!("{problem}"));
        };
        assert!(seen(&mut app));
        for step in [
            ScriptStep::Do(Action::Unplug),
            ScriptStep::Wait { s: 60 },
            ScriptStep::Do(Action::OpenLid),
            ScriptStep::Do(Action::UnloadBasket),
        ] {
            assert!(seen(&mut app));
            run(&mut app, step);
        }
        assert!(!seen(&mut app));
        run(&mut app, ScriptStep::Do(Action::LoadBasket));
        assert!(seen(&mut app));
    }
}
