//! The cabinet, its lid, the tub, the basket and the water.

use super::displayed::{DisplayedMachine, display};
use super::laundry::{Laundry, laundry};
use super::maker::{Maker, at};
use super::measures::{DECK, DECK_Y, DEPTH, TUB_R, TUB_Y, WIDTH};
use super::mesh::{
    Shape, arc_band, block, circle, drum, edge, fillet, lathe, plate_with_hole, ring, rounded,
    rounded_xy, stamp, wall,
};
use super::motion::{Easing, Motion, put};
use super::still::{Apart, Still};
use crate::pointing::Pick;
use bevy::light::NotShadowCaster;
use bevy::prelude::*;
use std::f32::consts::{PI, TAU};

/// The whole machine; it shakes.
#[derive(Component)]
#[require(Still)]
pub struct Washer;

/// Sheet metal that comes off: where it goes.
#[derive(Component)]
#[require(Apart, Still)]
struct Panel {
    home: Transform,
    away: Transform,
    lift: Vec3,
}

/// Width and depth of the lid, m.
pub const LID_SIZE: Vec2 = Vec2::new(0.52, 0.45);

/// The lid's hinge.
#[derive(Component)]
#[require(Apart, Still)]
pub struct Lid;

/// Turns with the basket.
#[derive(Component)]
#[require(Apart, Still)]
struct BasketPart;

/// Turns with the agitator.
#[derive(Component)]
#[require(Apart, Still)]
struct AgitatorPart;

/// Water column, scaled by level.
#[derive(Component)]
#[require(Apart)]
struct Water;

fn arc(centre: Vec2, radius: f32, from: f32, to: f32) -> impl Iterator<Item = Vec2> {
    (0..=10).map(move |i| centre + Vec2::from_angle(from + (to - from) * i as f32 / 10.0) * radius)
}

fn sheet_metal(make: &mut Maker, root: Entity) {
    let paint = make.paint.clone();
    let (w, d, r) = (WIDTH / 2.0, DEPTH / 2.0, 0.045);
    let height = DECK_Y - 0.055;
    let mut bend: Vec<Vec2> = vec![Vec2::new(w, d - r - 0.012)];
    bend.extend(arc(Vec2::new(w - r, d - r), r, 0.0, PI / 2.0));
    bend.extend(arc(Vec2::new(r - w, d - r), r, PI / 2.0, PI));
    bend.push(Vec2::new(-w, d - r - 0.012));
    let front_home = at(0.0, 0.052, 0.0);
    let front = make.group(Some(root), front_home);
    make.add(
        front,
        wall(&bend, height, 0.004),
        &paint.enamel,
        Transform::IDENTITY,
    );
    make.add(
        front,
        stamp(&rounded_xy(0.53, 0.70, 0.05), 0.007, 0.007),
        &paint.enamel,
        at(0.0, 0.42, d - 0.0005),
    );
    make.add(
        front,
        stamp(&rounded_xy(0.09, 0.022, 0.011), 0.004, 0.002),
        &paint.brushed,
        at(0.19, 0.735, d + 0.006),
    );
    make.commands.entity(front).insert(Panel {
        home: front_home,
        away: at(-1.32, 0.03, -0.10)
            .with_rotation(Quat::from_rotation_y(1.15) * Quat::from_rotation_x(-0.12)),
        lift: Vec3::new(-0.1, 0.16, 0.75),
    });
    let side = |x: f32| {
        let (from, to) = if x > 0.0 {
            (-d, d - r - 0.014)
        } else {
            (d - r - 0.014, -d)
        };
        wall(&[Vec2::new(x, from), Vec2::new(x, to)], height, 0.004)
    };
    let right_home = at(0.0, 0.052, 0.0);
    let right = make.group(Some(root), right_home);
    make.add(right, side(w), &paint.enamel, Transform::IDENTITY);
    make.commands.entity(right).insert(Panel {
        home: right_home,
        away: at(0.72, 0.02, -0.78)
            .with_rotation(Quat::from_rotation_y(-1.45) * Quat::from_rotation_z(0.0)),
        lift: Vec3::new(0.55, 0.1, 0.35),
    });
    make.add(root, side(-w), &paint.enamel, at(0.0, 0.052, 0.0));
    let back = wall(&[Vec2::new(-w, -d), Vec2::new(w, -d)], height, 0.004);
    make.add(root, back, &paint.primer, at(0.0, 0.052, 0.0));
    // Base frame, feet, corner posts.
    let frame = plate_with_hole(
        (WIDTH - 0.012, DEPTH - 0.012, 0.05),
        (WIDTH - 0.12, DEPTH - 0.12, 0.03, Vec2::ZERO),
        0.03,
        0.004,
    );
    make.add(root, frame, &paint.dark, at(0.0, 0.024, 0.0));
    for (x, z) in [(-1.0, -1.0), (1.0, -1.0), (-1.0, 1.0), (1.0, 1.0)] {
        make.add(
            root,
            drum(0.026, 0.028, 0.006, 20),
            &paint.rubber,
            at(x * (w - 0.07), 0.0, z * (d - 0.07)),
        );
        let post = block(0.022, DECK_Y - 0.05, 0.022, 0.004, 0.002);
        make.add(
            root,
            post,
            &paint.primer,
            at(x * (w - 0.022), 0.05, z * (d - 0.034)),
        );
    }
    make.add(
        root,
        block(WIDTH - 0.06, 0.03, 0.016, 0.003, 0.002),
        &paint.primer,
        at(0.0, DECK_Y - 0.032, d - 0.026),
    );
}

fn deck(make: &mut Maker, root: Entity) {
    let paint = make.paint.clone();
    let hole = Vec2::new(0.0, 0.045);
    let top = plate_with_hole(
        (WIDTH + 0.006, DEPTH + 0.006, 0.05),
        (0.47, 0.40, 0.07, hole),
        DECK,
        0.011,
    );
    make.add(root, top, &paint.enamel, at(0.0, DECK_Y, 0.0));
    // Funnel from the opening to the tub.
    let rim: Vec<Vec2> = rounded(0.468, 0.398, 0.07, 8)
        .into_iter()
        .map(|p| p + hole)
        .collect();
    let round: Vec<Vec2> = rim
        .iter()
        .map(|p| Vec2::from_angle((*p - hole).to_angle()) * 0.222)
        .collect();
    let lower: Vec<Vec2> = rim
        .iter()
        .zip(&round)
        .map(|(a, b)| a.lerp(*b, 0.8))
        .collect();
    let funnel = Shape::loft(
        &[
            ring(&rim, DECK_Y + 0.012),
            ring(&rim, DECK_Y - 0.004),
            ring(&lower, DECK_Y - 0.03),
            ring(&round, DECK_Y - 0.052),
        ],
        true,
    );
    make.add(root, funnel, &paint.light, Transform::IDENTITY);
    // Lid: enamel frame with a smoked pane, hinged at the left.
    let hinge = make.group(Some(root), at(-0.258, DECK_Y + DECK + 0.004, 0.045));
    make.commands.entity(hinge).insert(Lid);
    let frame = plate_with_hole(
        (LID_SIZE.x, LID_SIZE.y, 0.055),
        (0.41, 0.34, 0.04, Vec2::ZERO),
        0.020,
        0.007,
    );
    let frame = make.add(hinge, frame, &paint.enamel, at(0.26, 0.0, 0.0));
    let pane = make.add(
        hinge,
        block(0.415, 0.006, 0.345, 0.042, 0.001),
        &paint.smoked,
        at(0.26, 0.009, 0.0),
    );
    make.commands.entity(pane).insert(NotShadowCaster);
    let grip = make.add(
        hinge,
        block(0.022, 0.010, 0.12, 0.010, 0.004),
        &paint.brushed,
        at(0.52, 0.006, 0.0),
    );
    for entity in [frame, pane, grip] {
        make.commands.entity(entity).insert(Pick::Lid);
    }
    for z in [-0.15, 0.15] {
        let pin = drum(0.009, 0.05, 0.002, 14)
            .moved(Transform::from_rotation(Quat::from_rotation_x(PI / 2.0)));
        make.add(
            root,
            pin,
            &paint.chrome,
            at(-0.262, DECK_Y + DECK + 0.004, 0.045 + z - 0.025),
        );
    }
    make.add(
        root,
        block(0.03, 0.008, 0.05, 0.004, 0.002),
        &paint.dark,
        at(0.262, DECK_Y + DECK - 0.004, 0.045),
    );
}

fn tub(make: &mut Maker, root: Entity) {
    let paint = make.paint.clone();
    let shell = lathe(
        &[
            (0.03, TUB_Y - 0.03),
            (TUB_R - 0.05, TUB_Y - 0.026),
            (TUB_R - 0.012, TUB_Y),
            (TUB_R, TUB_Y + 0.03),
            (TUB_R, 0.845),
            (TUB_R + 0.008, 0.85),
            (TUB_R + 0.008, 0.862),
        ],
        56,
    );
    let shell = make.add(root, shell, &paint.tub, Transform::IDENTITY);
    make.commands.entity(shell).insert(NotShadowCaster);
    let band = lathe(
        &[
            (TUB_R + 0.001, 0.84),
            (TUB_R + 0.012, 0.842),
            (TUB_R + 0.012, 0.862),
            (TUB_R - 0.02, 0.866),
            (TUB_R - 0.03, 0.86),
        ],
        56,
    );
    make.add(root, band, &paint.light, Transform::IDENTITY);
    // Suspension rods from the corners.
    for (x, z) in [(-1.0f32, -1.0f32), (1.0, -1.0), (-1.0, 1.0), (1.0, 1.0)] {
        let (top, foot) = (
            Vec3::new(x * 0.285, DECK_Y - 0.02, z * 0.265),
            Vec3::new(x * 0.19, TUB_Y - 0.02, z * 0.19),
        );
        let rod = super::mesh::tube(&[top, foot], 0.005, 8);
        make.add(root, rod, &paint.chrome, Transform::IDENTITY);
        make.add(
            root,
            drum(0.02, 0.05, 0.004, 16),
            &paint.dark,
            at(foot.x, foot.y - 0.02, foot.z),
        );
    }
    let spider = lathe(
        &[
            (0.0, TUB_Y - 0.09),
            (0.05, TUB_Y - 0.088),
            (0.06, TUB_Y - 0.05),
            (0.20, TUB_Y - 0.04),
            (0.20, TUB_Y - 0.028),
            (0.0, TUB_Y - 0.028),
        ],
        40,
    );
    make.add(root, spider, &paint.cast, Transform::IDENTITY);

    let basket = make.group(Some(root), Transform::IDENTITY);
    make.commands.entity(basket).insert(BasketPart);
    let side = lathe(
        &[(0.226, TUB_Y + 0.02), (0.232, TUB_Y + 0.05), (0.232, 0.80)],
        56,
    );
    make.add(basket, side, &paint.sieve, Transform::IDENTITY);
    let floor = lathe(
        &[
            (0.228, TUB_Y + 0.022),
            (0.19, TUB_Y + 0.016),
            (0.0, TUB_Y + 0.03),
        ],
        48,
    );
    make.add(basket, floor, &paint.brushed, Transform::IDENTITY);
    let rim = lathe(
        &[
            (0.236, 0.775),
            (0.242, 0.79),
            (0.242, 0.822),
            (0.232, 0.834),
            (0.212, 0.834),
            (0.206, 0.82),
            (0.222, 0.79),
            (0.226, 0.775),
        ],
        56,
    );
    make.add(basket, rim, &paint.light, Transform::IDENTITY);
    for i in 0..3 {
        let mark = arc_band(0.222, 0.016, 0.0, 0.24, 0.0).moved(
            Transform::from_rotation(
                Quat::from_rotation_y(i as f32 * TAU / 3.0) * Quat::from_rotation_x(-PI / 2.0),
            )
            .with_translation(Vec3::Y * 0.8348),
        );
        make.add(basket, mark, &paint.teal, Transform::IDENTITY);
    }

    laundry(make, basket);

    let agitator = make.group(Some(root), Transform::IDENTITY);
    make.commands.entity(agitator).insert(AgitatorPart);
    let mut profile = vec![
        (0.165, TUB_Y + 0.03),
        (0.17, TUB_Y + 0.045),
        (0.10, TUB_Y + 0.075),
        (0.062, TUB_Y + 0.12),
        (0.05, TUB_Y + 0.20),
        (0.042, TUB_Y + 0.30),
    ];
    profile.extend(edge(0.03, 4).map(|(inset, rise)| (0.042 - inset, TUB_Y + 0.30 + rise)));
    profile.push((0.0, TUB_Y + 0.331));
    make.add(
        agitator,
        lathe(&profile, 40),
        &paint.teal,
        Transform::IDENTITY,
    );
    let fin = fillet(
        &[
            Vec2::new(0.02, 0.0),
            Vec2::new(0.155, 0.0),
            Vec2::new(0.145, 0.05),
            Vec2::new(0.08, 0.11),
            Vec2::new(0.056, 0.24),
            Vec2::new(0.02, 0.26),
        ],
        0.02,
    );
    for i in 0..4 {
        let shape = stamp(&fin, 0.007, 0.0065);
        let shape = shape
            .clone()
            .with(shape, Transform::from_scale(Vec3::new(1.0, 1.0, -1.0)));
        make.add(
            agitator,
            shape,
            &paint.teal,
            at(0.0, TUB_Y + 0.036, 0.0).with_rotation(Quat::from_rotation_y(i as f32 * PI / 2.0)),
        );
    }
    let column = make.add(
        root,
        {
            let round = circle(TUB_R - 0.006, 56);
            let rings = [ring(&round, 0.0), ring(&round, 1.0)];
            let mut shape = Shape::loft(&rings, true);
            shape.cap(&rings[1], true);
            shape
        },
        &paint.water,
        at(0.0, TUB_Y - 0.01, 0.0),
    );
    make.commands
        .entity(column)
        .insert((Water, NotShadowCaster));
}

fn spawn(mut make: Maker) {
    let make = &mut make;
    let root = make.group(None, Transform::IDENTITY);
    make.commands.entity(root).insert(Washer);
    sheet_metal(make, root);
    deck(make, root);
    tub(make, root);
    super::console::body(make, root);
}

#[allow(clippy::type_complexity)]
fn animate(
    displayed: Res<DisplayedMachine>,
    easing: Easing,
    mut motion: ResMut<Motion>,
    mut parts: ParamSet<(
        Single<&mut Transform, With<Lid>>,
        Query<(&mut Transform, &Panel)>,
        Query<&mut Transform, With<BasketPart>>,
        Query<&mut Transform, With<AgitatorPart>>,
        Single<(&mut Transform, &mut Visibility), With<Water>>,
        Single<&mut Transform, With<Washer>>,
        Single<&mut Visibility, With<Laundry>>,
    )>,
) {
    let machine = &*displayed;
    let goal = |on: bool| if on { 1.0 } else { 0.0 };
    motion.lid = easing.toward(motion.lid, goal(machine.lid_open), 0.16);
    motion.cabinet = easing.toward(motion.cabinet, goal(machine.cabinet_open), 0.35);
    motion.level_mm = easing.toward(motion.level_mm, machine.level_mm as f32, 0.1);
    let lid = Quat::from_rotation_z(motion.lid * 1.82);
    put(&mut parts.p0(), |place| place.with_rotation(lid));
    let t = motion.cabinet;
    for (mut place, panel) in &mut parts.p1() {
        let arc = (t * PI).sin();
        let (home, away) = (panel.home, panel.away);
        let along = home
            .translation
            .lerp(away.translation, t * t * (3.0 - 2.0 * t));
        let turned = home.rotation.slerp(away.rotation, t * t);
        put(&mut place, |place| {
            place
                .with_translation(along + panel.lift * arc)
                .with_rotation(turned)
        });
    }
    let turn = |revolutions: f64| Quat::from_rotation_y(-(revolutions.fract() as f32) * TAU);
    for mut place in &mut parts.p2() {
        put(&mut place, |place| {
            place.with_rotation(turn(machine.basket_rev))
        });
    }
    for mut place in &mut parts.p3() {
        put(&mut place, |place| {
            place.with_rotation(turn(machine.agitator_rev))
        });
    }
    let seen = |there: bool| match there {
        true => Visibility::Inherited,
        false => Visibility::Hidden,
    };
    let depth = motion.level_mm / 1000.0;
    {
        let mut water = parts.p4();
        let scale = Vec3::new(1.0, depth.max(0.001), 1.0);
        put(&mut water.0, |place| place.with_scale(scale));
        water.1.set_if_neq(seen(depth > 0.004));
    }
    parts.p6().set_if_neq(seen(machine.laundry));
    let shake = (machine.shake_mm as f32 / 1000.0).min(0.012);
    let phase = machine.basket_rev as f32 * TAU;
    let shaken = Vec3::new(phase.cos(), 0.0, phase.sin()) * shake;
    put(&mut parts.p5(), |place| place.with_translation(shaken));
}

/// The machine.
pub fn plugin(app: &mut App) {
    app.init_resource::<Motion>()
        .add_systems(Startup, spawn)
        .add_systems(Update, animate.after(display));
}
