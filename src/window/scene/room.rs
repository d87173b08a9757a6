//! The workshop corner.

use super::maker::{Maker, at};
use super::mesh::{Shape, block, card, drum, lathe, rounded_xy, stamp, tube, wall};
use super::paint::{contact_shadow, noise, texture};
use super::still::Still;
use bevy::light::NotShadowCaster;
use bevy::math::Affine2;
use bevy::prelude::*;
use std::f32::consts::PI;

/// Distance of the wall behind the machine, m.
pub const WALL_Z: f32 = -0.56;

fn tiles(make: &mut Maker) -> Handle<StandardMaterial> {
    let image = make.images.add(texture(256, |u, v| {
        let (x, y) = (u * 4.0, v * 4.0);
        let tile = (x.floor() as i32, y.floor() as i32);
        let inside = x
            .fract()
            .min(y.fract())
            .min(1.0 - x.fract())
            .min(1.0 - y.fract());
        let checker = if (tile.0 + tile.1) % 2 == 0 {
            1.0
        } else {
            0.80
        };
        let grain = 0.94 + 0.06 * noise((u * 256.0) as i32, (v * 256.0) as i32);
        let shade = (0.93 + 0.07 * noise(tile.0 + 9, tile.1 + 4)) * checker * grain;
        let grout = ((inside - 0.012) / 0.012).clamp(0.35, 1.0);
        let c = [168.0, 132.0, 106.0].map(|c| (c * shade * grout) as u8);
        [c[0], c[1], c[2], 255]
    }));
    make.materials.add(StandardMaterial {
        base_color_texture: Some(image),
        perceptual_roughness: 0.42,
        reflectance: 0.4,
        uv_transform: Affine2::from_scale(Vec2::splat(5.0)),
        ..default()
    })
}

fn plaster(make: &mut Maker) -> Handle<StandardMaterial> {
    let image = make.images.add(texture(128, |u, v| {
        let (x, y) = ((u * 128.0) as i32, (v * 128.0) as i32);
        let soft = noise(x / 6, y / 6) * 0.5 + noise(x / 2, y / 2) * 0.3 + noise(x, y) * 0.2;
        let shade = 0.97 + 0.04 * soft;
        [
            (48.0 * shade) as u8,
            (98.0 * shade) as u8,
            (112.0 * shade) as u8,
            255,
        ]
    }));
    make.materials.add(StandardMaterial {
        base_color_texture: Some(image),
        perceptual_roughness: 0.9,
        uv_transform: Affine2::from_scale(Vec2::new(6.0, 3.0)),
        ..default()
    })
}

fn pegboard(make: &mut Maker) -> Handle<StandardMaterial> {
    let image = make.images.add(texture(64, |u, v| {
        let d = ((u - 0.5).powi(2) + (v - 0.5).powi(2)).sqrt();
        let dark = if d < 0.1 { 0.28 } else { 1.0 };
        let n = 0.96 + 0.04 * noise((u * 64.0) as i32, (v * 64.0) as i32);
        [
            (199.0 * dark * n) as u8,
            (160.0 * dark * n) as u8,
            (112.0 * dark * n) as u8,
            255,
        ]
    }));
    make.materials.add(StandardMaterial {
        base_color_texture: Some(image),
        perceptual_roughness: 0.75,
        uv_transform: Affine2::from_scale(Vec2::new(20.0, 13.0)),
        ..default()
    })
}

/// A flat bar between two points of the XY plane.
fn bar(from: Vec2, to: Vec2, width: f32, depth: f32) -> Shape {
    let length = from.distance(to);
    let outline = rounded_xy(length, width, width * 0.45);
    stamp(&outline, depth, depth * 0.3).moved(
        Transform::from_translation(((from + to) / 2.0).extend(0.0))
            .with_rotation(Quat::from_rotation_z((to - from).to_angle())),
    )
}

fn spanner(length: f32) -> Shape {
    let jaw = |turn: f32| {
        let outside: Vec<Vec2> = (0..=14)
            .map(|i| Vec2::from_angle((0.18 + 1.64 * i as f32 / 14.0) * PI) * 0.022)
            .collect();
        let laid = Quat::from_rotation_z(turn) * Quat::from_rotation_x(PI / 2.0);
        wall(&outside, 0.006, 0.012).moved(Transform::from_rotation(laid))
    };
    bar(
        Vec2::new(0.0, -length / 2.0),
        Vec2::new(0.0, length / 2.0),
        0.014,
        0.005,
    )
    .with(jaw(PI / 2.0), at(0.0, length / 2.0 + 0.014, 0.0))
    .with(jaw(-PI / 2.0), at(0.0, -length / 2.0 - 0.014, 0.0))
}

fn hang_tools(make: &mut Maker, board: Entity) {
    let paint = make.paint.clone();
    for (i, length) in [0.15, 0.18, 0.21, 0.24].into_iter().enumerate() {
        let place = at(-0.36 + 0.075 * i as f32, 0.10 - length / 2.0 + 0.10, 0.02)
            .with_rotation(Quat::from_rotation_z(0.05 * (i as f32 - 1.5)));
        make.add(board, spanner(length), &paint.chrome, place);
    }
    for (i, handle) in [&paint.red, &paint.amber, &paint.blue]
        .into_iter()
        .enumerate()
    {
        let x = 0.02 + 0.06 * i as f32;
        let grip = lathe(
            &[
                (0.0, 0.0),
                (0.012, 0.002),
                (0.014, 0.03),
                (0.010, 0.055),
                (0.014, 0.075),
                (0.012, 0.1),
                (0.0, 0.104),
            ],
            14,
        );
        make.add(board, grip, handle, at(x, 0.1, 0.03));
        make.add(
            board,
            drum(0.004, 0.13, 0.001, 8),
            &paint.chrome,
            at(x, -0.03, 0.03),
        );
    }
    for side in [-1.0f32, 1.0] {
        let arm = tube(
            &[
                Vec3::new(side * 0.008, 0.12, 0.0),
                Vec3::new(side * 0.012, 0.06, 0.0),
                Vec3::new(side * 0.03, -0.02, 0.0),
                Vec3::new(side * 0.028, -0.08, 0.0),
            ],
            0.009,
            10,
        );
        make.add(board, arm, &paint.teal, at(0.27, 0.05, 0.025));
        let jaw = bar(
            Vec2::new(side * 0.006, 0.1),
            Vec2::new(side * 0.004, 0.17),
            0.016,
            0.014,
        );
        make.add(board, jaw, &paint.cast, at(0.27, 0.05, 0.018));
    }
    let coil: Vec<Vec3> = (0..52)
        .map(|i| {
            let a = i as f32 / 13.0 * PI * 2.0;
            let r = 0.085 + 0.006 * (i as f32 * 0.7).sin();
            Vec3::new(a.cos() * r, a.sin() * r, 0.012 + i as f32 * 0.0009)
        })
        .collect();
    make.add(
        board,
        tube(&coil, 0.007, 8),
        &paint.amber,
        at(0.29, -0.17, 0.01),
    );
    for (i, (w, colour)) in [(0.16, &paint.teal), (0.13, &paint.red)]
        .into_iter()
        .enumerate()
    {
        let tray = block(w, 0.055, 0.075, 0.008, 0.004);
        make.add(board, tray, colour, at(-0.3 + 0.19 * i as f32, -0.26, 0.04));
    }
}

fn content_library(make: &mut Maker, root: Entity) {
    let paint = make.paint.clone();
    let content_library = make.group(Some(root), at(-1.02, 1.42, WALL_Z + 0.11));
    make.add(
        content_library,
        block(0.78, 0.026, 0.22, 0.01, 0.004),
        &paint.wood,
        at(0.0, 0.0, 0.0),
    );
    for x in [-0.3, 0.3] {
        make.add(
            content_library,
            block(0.02, 0.12, 0.16, 0.004, 0.003),
            &paint.dark,
            at(x, -0.12, -0.02),
        );
    }
    let jar = lathe(
        &[
            (0.0, 0.0),
            (0.042, 0.002),
            (0.046, 0.02),
            (0.046, 0.10),
            (0.034, 0.125),
            (0.034, 0.14),
            (0.0, 0.14),
        ],
        24,
    );
    let lid = drum(0.037, 0.02, 0.004, 24);
    for (x, colour) in [
        (-0.29, &paint.amber),
        (-0.18, &paint.copper),
        (-0.07, &paint.chrome),
    ] {
        make.add(content_library, jar.clone(), colour, at(x, 0.026, 0.0));
        make.add(content_library, lid.clone(), &paint.dark, at(x, 0.166, 0.0));
    }
    for (i, (h, colour)) in [
        (0.21, &paint.red),
        (0.19, &paint.light),
        (0.22, &paint.teal),
        (0.2, &paint.dark),
    ]
    .into_iter()
    .enumerate()
    {
        let lean = if i == 3 { 0.13 } else { 0.0 };
        make.add(
            content_library,
            block(0.034, h, 0.15, 0.004, 0.003),
            colour,
            at(0.08 + 0.042 * i as f32 + lean * 0.1, 0.027, -0.01)
                .with_rotation(Quat::from_rotation_z(-lean)),
        );
    }
}

fn bucket(make: &mut Maker, root: Entity) {
    let paint = make.paint.clone();
    let body = lathe(
        &[
            (0.0, 0.0),
            (0.10, 0.0),
            (0.105, 0.01),
            (0.135, 0.25),
            (0.142, 0.252),
            (0.142, 0.262),
            (0.132, 0.262),
            (0.128, 0.25),
            (0.1, 0.02),
            (0.0, 0.02),
        ],
        36,
    );
    let stand = make.group(Some(root), at(-0.82, 0.0, 0.12));
    make.add(stand, body, &paint.blue, Transform::IDENTITY);
    let handle: Vec<Vec3> = (0..=12)
        .map(|i| {
            let a = i as f32 / 12.0 * PI;
            Vec3::new(a.cos() * 0.138, 0.25 - a.sin() * 0.05, a.sin() * 0.125)
        })
        .collect();
    make.add(
        stand,
        tube(&handle, 0.004, 8),
        &paint.chrome,
        Transform::IDENTITY,
    );
}

/// Dark soft patch under something standing on the floor.
pub fn ground(make: &mut Maker, root: Entity, place: Transform, width: f32, depth: f32) {
    let image = make.images.add(contact_shadow());
    let material = make.materials.add(StandardMaterial {
        base_color_texture: Some(image),
        base_color: Color::WHITE,
        unlit: true,
        alpha_mode: AlphaMode::Blend,
        ..default()
    });
    let patch = make.add(
        root,
        card(width, depth),
        &material,
        place * Transform::from_rotation(Quat::from_rotation_x(-PI / 2.0)),
    );
    make.commands.entity(patch).insert(NotShadowCaster);
}

fn spawn(mut make: Maker) {
    let make = &mut make;
    let paint = make.paint.clone();
    let root = make.group(None, Transform::IDENTITY);
    make.commands.entity(root).insert(Still);
    let floor = tiles(make);
    let wall = plaster(make);
    let peg = pegboard(make);
    make.add(
        root,
        card(8.0, 8.0),
        &floor,
        Transform::from_rotation(Quat::from_rotation_x(-PI / 2.0))
            .with_translation(Vec3::new(0.0, 0.0, 2.0)),
    );
    make.add(root, card(8.0, 4.0), &wall, at(0.0, 2.0, WALL_Z));
    let side = Transform::from_rotation(Quat::from_rotation_y(PI / 2.0))
        .with_translation(Vec3::new(-1.75, 2.0, 2.0));
    make.add(root, card(6.0, 4.0), &wall, side);
    // Skirting and a rail that ties the room together.
    make.add(
        root,
        block(8.0, 0.11, 0.02, 0.004, 0.004),
        &paint.enamel,
        at(0.0, 0.0, WALL_Z + 0.01),
    );
    make.add(
        root,
        block(0.02, 0.11, 6.0, 0.004, 0.004),
        &paint.enamel,
        at(-1.74, 0.0, 2.0),
    );
    make.add(
        root,
        block(8.0, 0.05, 0.024, 0.006, 0.005),
        &paint.wood,
        at(0.0, 1.215, WALL_Z + 0.012),
    );

    let board = make.group(Some(root), at(0.86, 1.62, WALL_Z + 0.02));
    make.add(board, card(0.98, 0.64), &peg, at(0.0, 0.0, 0.008));
    for (w, h, x, y) in [
        (1.03, 0.03, 0.0, 0.33),
        (1.03, 0.03, 0.0, -0.33),
        (0.03, 0.69, 0.5, 0.0),
        (0.03, 0.69, -0.5, 0.0),
    ] {
        make.add(
            board,
            stamp(&rounded_xy(w, h, 0.006), 0.022, 0.005),
            &paint.wood,
            at(x, y, 0.0),
        );
    }
    hang_tools(make, board);
    content_library(make, root);
    bucket(make, root);

    // Outlet and taps behind the machine.
    let outlet = make.group(Some(root), at(0.60, 1.02, WALL_Z));
    make.add(
        outlet,
        stamp(&rounded_xy(0.085, 0.125, 0.012), 0.010, 0.004),
        &paint.light,
        Transform::IDENTITY,
    );
    for (x, colour) in [(-0.16, &paint.blue), (-0.04, &paint.red)] {
        let tap = make.group(Some(root), at(x - 0.12, 1.14, WALL_Z));
        make.add(
            tap,
            drum(0.014, 0.07, 0.003, 16),
            &paint.chrome,
            Transform::from_rotation(Quat::from_rotation_x(PI / 2.0)),
        );
        make.add(
            tap,
            drum(0.024, 0.014, 0.004, 16),
            colour,
            at(0.0, 0.02, 0.05),
        );
    }
    ground(make, root, at(0.0, 0.003, 0.0), 1.18, 1.14);
    ground(make, root, at(-0.82, 0.002, 0.12), 0.42, 0.42);
}

/// The room.
pub fn plugin(app: &mut App) {
    app.add_systems(Startup, spawn);
}
