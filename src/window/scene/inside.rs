//! What is inside the cabinet, each load in its place, and where its pins are.

use super::displayed::{DisplayedMachine, display};
use super::maker::{Maker, at};
use super::measures::{TUB_R, TUB_Y};
use super::mesh::{Shape, block, card, drum, lathe, rounded_xy, stamp, tube};
use super::motion::{Easing, Motion, put};
use super::strokes::write;
use crate::pointing::{Outline, Pick};
use crate::state::BenchRes;
use bevy::prelude::*;
use detent_simulation::controller::Board;
use detent_simulation::interface::{Component as Part, Connector, Pin, Side, Terminal};
use std::f32::consts::{PI, TAU};

/// Middle of the board's plate.
const BOARD: Vec3 = Vec3::new(-0.165, 0.735, 0.286);
const BOARD_SIZE: Vec2 = Vec2::new(0.285, 0.155);
const PITCH: f32 = 0.0066;

/// A plug that can be pulled: its seat and where it hangs when pulled.
#[derive(Component)]
struct Plug {
    connector: Connector,
    seat: Vec3,
    hang: Vec3,
}

/// Turns with the motor's pulley.
#[derive(Component)]
struct MotorPulley;

/// Turns with the big pulley.
#[derive(Component)]
struct BigPulley;

/// Everything that only shows with the panels off.
#[derive(Component)]
struct Behind;

/// Where the plug is in its outlet, and where it lies when it is pulled, m.
pub const PLUG_IN: Vec3 = Vec3::new(0.60, 1.02, -0.553);
pub const PLUG_OUT: Vec3 = Vec3::new(0.595, 0.04, -0.045);

/// The mains plug in the outlet, or lying on the floor.
#[derive(Component)]
struct MainsPlug(bool);

/// Place of a component's plug, and the way it is pulled.
pub fn terminal_block(part: Part) -> Option<(Vec3, Vec3)> {
    let (x, y, z, away) = match part {
        Part::DrainPump => (-0.165, 0.168, 0.232, Vec3::new(0.0, 0.03, 0.03)),
        Part::Motor => (0.185, 0.262, 0.203, Vec3::new(0.0, 0.01, 0.04)),
        Part::RunCapacitor => (0.292, 0.425, 0.225, Vec3::new(0.0, 0.04, 0.02)),
        Part::ClutchActuator => (-0.015, 0.262, 0.142, Vec3::new(0.0, 0.03, 0.04)),
        Part::Pickup => (0.088, 0.135, 0.165, Vec3::new(0.0, 0.03, 0.03)),
        Part::InletCold => (0.305, 0.800, -0.19, Vec3::new(0.03, 0.0, 0.03)),
        Part::InletHot => (0.305, 0.690, -0.19, Vec3::new(0.03, 0.0, 0.03)),
        Part::PressureSensor => (0.312, 0.778, 0.03, Vec3::new(0.03, -0.03, 0.0)),
        Part::Thermistor => (0.165, 0.468, 0.222, Vec3::new(0.02, -0.01, 0.035)),
        Part::LidLock => (0.225, 0.838, 0.262, Vec3::new(0.0, -0.03, 0.02)),
        Part::LineFuse => (0.300, 0.560, -0.23, Vec3::new(0.03, 0.0, 0.02)),
        Part::Filter => (0.300, 0.475, -0.23, Vec3::new(0.03, 0.0, 0.02)),
        Part::Cord => (0.300, 0.400, -0.26, Vec3::new(0.03, 0.0, 0.02)),
        _ => return None,
    };
    Some((Vec3::new(x, y, z), away))
}

/// A board connector's label, its place along the board's edge, and its pins with theirs, m.
type PlacedConnector<'a> = (&'a str, f32, Vec<(Terminal, f32)>);

/// Where each connector of the board begins along its lower edge, and its pins.
fn board_pins(board: &Board) -> Vec<PlacedConnector<'_>> {
    let pins: usize = board.connectors.iter().map(|c| c.pins.len()).sum();
    let gap = 0.0075;
    let total = pins as f32 * PITCH + gap * (board.connectors.len() as f32 - 1.0);
    let mut x = -total / 2.0;
    board
        .connectors
        .iter()
        .map(|connector| {
            let start = x;
            let places = connector
                .pins
                .iter()
                .map(|pin| {
                    x += PITCH;
                    (pin.terminal, x - PITCH / 2.0)
                })
                .collect();
            x += gap;
            (connector.label.as_str(), start, places)
        })
        .collect()
}

/// Where in the world a probe touches `pin`.
pub fn pin_place(board: &Board, pin: Pin) -> Vec3 {
    let fixed =
        |part, dx: f32| terminal_block(part).map_or(BOARD, |(p, _)| p + Vec3::new(dx, 0.01, 0.008));
    match pin {
        Pin::PlugLine => Vec3::new(0.585, 0.055, -0.05),
        Pin::PlugNeutral => Vec3::new(0.605, 0.055, -0.05),
        Pin::PlugEarth => Vec3::new(0.595, 0.065, -0.05),
        Pin::FuseIn => fixed(Part::LineFuse, -0.012),
        Pin::FuseOut => fixed(Part::LineFuse, 0.012),
        Pin::BulkPlus => BOARD + Vec3::new(-0.070, 0.050, 0.034),
        Pin::BulkMinus => BOARD + Vec3::new(-0.056, 0.050, 0.034),
        Pin::Wire(terminal, Side::Load) => {
            let part = terminal.component();
            let nth = Terminal::ALL
                .iter()
                .filter(|t| t.component() == part && **t < terminal)
                .count();
            let count = Terminal::ALL
                .iter()
                .filter(|t| t.component() == part)
                .count();
            fixed(part, (nth as f32 - (count as f32 - 1.0) / 2.0) * 0.008)
        }
        Pin::Wire(terminal, side) => {
            let x = board_pins(board)
                .into_iter()
                .flat_map(|(_, _, pins)| pins)
                .find(|(t, _)| *t == terminal)
                .map_or(0.0, |(_, x)| x);
            let y = if side == Side::Board { 0.006 } else { -0.014 };
            BOARD + Vec3::new(x, y - BOARD_SIZE.y / 2.0 + 0.012, 0.016)
        }
    }
}

/// Builder of one component: pickable solids with outlines.
struct Piece<'a, 'w, 's> {
    make: &'a mut Maker<'w, 's>,
    root: Entity,
    part: Part,
    outline: Handle<StandardMaterial>,
}

impl Piece<'_, '_, '_> {
    fn add(
        &mut self,
        shape: Shape,
        material: &Handle<StandardMaterial>,
        place: Transform,
    ) -> Entity {
        let hull = self.make.meshes.add(shape.hull(0.0035));
        let entity = self.make.add(self.root, shape, material, place);
        self.make
            .commands
            .entity(entity)
            .insert(Pick::Part(self.part));
        self.make.commands.spawn((
            Mesh3d(hull),
            MeshMaterial3d(self.outline.clone()),
            Outline(self.part),
            Visibility::Hidden,
            bevy::light::NotShadowCaster,
            ChildOf(entity),
        ));
        entity
    }
}

fn lying(turn_z: bool) -> Quat {
    if turn_z {
        Quat::from_rotation_z(PI / 2.0)
    } else {
        Quat::from_rotation_x(PI / 2.0)
    }
}

fn drive(make: &mut Maker, root: Entity, outline: &Handle<StandardMaterial>) {
    let paint = make.paint.clone();
    let belt_y = 0.088;
    let (big, small) = (0.105f32, 0.030f32);
    let motor = Vec3::new(0.185, 0.0, 0.13);
    // Gear case and big pulley.
    make.add(
        root,
        lathe(
            &[
                (0.0, 0.11),
                (0.05, 0.112),
                (0.066, 0.13),
                (0.066, 0.25),
                (0.05, 0.30),
                (0.04, 0.36),
                (0.0, 0.36),
            ],
            32,
        ),
        &paint.cast,
        Transform::IDENTITY,
    );
    let wheel = make.group(Some(root), at(0.0, belt_y, 0.0));
    make.commands.entity(wheel).insert(BigPulley);
    make.add(
        wheel,
        lathe(
            &[
                (big - 0.02, -0.008),
                (big, -0.008),
                (big - 0.006, 0.0),
                (big, 0.008),
                (big - 0.02, 0.008),
            ],
            48,
        ),
        &paint.cast,
        Transform::IDENTITY,
    );
    make.add(
        wheel,
        drum(0.028, 0.026, 0.003, 24),
        &paint.cast,
        at(0.0, -0.013, 0.0),
    );
    for i in 0..5 {
        let spoke = block(0.085, 0.008, 0.018, 0.004, 0.002);
        let turn = Quat::from_rotation_y(i as f32 * TAU / 5.0);
        make.add(
            wheel,
            spoke,
            &paint.cast,
            Transform::from_rotation(turn).with_translation(turn * Vec3::new(0.055, -0.004, 0.0)),
        );
    }
    // Motor.
    let mut piece = Piece {
        make: &mut *make,
        root,
        part: Part::Motor,
        outline: outline.clone(),
    };
    let mut profile = vec![(0.0, 0.115), (0.045, 0.115)];
    profile.extend([(0.062, 0.122), (0.066, 0.14)]);
    for i in 0..5 {
        let y = 0.15 + i as f32 * 0.018;
        profile.extend([
            (0.066, y),
            (0.063, y + 0.003),
            (0.063, y + 0.009),
            (0.066, y + 0.012),
        ]);
    }
    profile.extend([(0.066, 0.262), (0.058, 0.28), (0.02, 0.292), (0.0, 0.292)]);
    piece.add(lathe(&profile, 40), &paint.dark, at(motor.x, 0.0, motor.z));
    piece.add(
        lathe(
            &[
                (0.0665, 0.176),
                (0.068, 0.178),
                (0.068, 0.232),
                (0.0665, 0.234),
            ],
            40,
        ),
        &paint.copper,
        at(motor.x, 0.0, motor.z),
    );
    make.add(
        root,
        block(0.25, 0.010, 0.17, 0.02, 0.003),
        &paint.primer,
        at(0.155, 0.104, 0.10),
    );
    let shaft = make.group(Some(root), at(motor.x, belt_y, motor.z));
    make.commands.entity(shaft).insert(MotorPulley);
    make.add(
        shaft,
        lathe(
            &[
                (0.0, -0.011),
                (small, -0.010),
                (small - 0.004, 0.0),
                (small, 0.010),
                (0.0, 0.011),
            ],
            28,
        ),
        &paint.chrome,
        Transform::IDENTITY,
    );
    make.add(
        shaft,
        block(0.012, 0.006, 0.05, 0.003, 0.001),
        &paint.amber,
        at(0.0, -0.016, 0.0),
    );
    // Belt: outer tangents of both pulleys.
    let across = Vec2::new(motor.x, motor.z);
    let (length, heading) = (across.length(), across.to_angle());
    let lean = ((big - small) / length).acos();
    let mut path: Vec<Vec3> = Vec::new();
    let mut bow = |centre: Vec2, radius: f32, from: f32, to: f32| {
        for i in 0..=16 {
            let p = centre + Vec2::from_angle(from + (to - from) * i as f32 / 16.0) * radius;
            path.push(Vec3::new(p.x, belt_y, p.y));
        }
    };
    bow(
        Vec2::ZERO,
        big - 0.002,
        heading + lean,
        heading + TAU - lean,
    );
    bow(across, small - 0.001, heading - lean, heading + lean);
    path.push(path[0]);
    let mut piece = Piece {
        make: &mut *make,
        root,
        part: Part::Belt,
        outline: outline.clone(),
    };
    piece.add(tube(&path, 0.0058, 8), &paint.rubber, Transform::IDENTITY);
    // Speed pickup at the big pulley's rim.
    let mut piece = Piece {
        make: &mut *make,
        root,
        part: Part::Pickup,
        outline: outline.clone(),
    };
    piece.add(
        block(0.026, 0.030, 0.022, 0.004, 0.002),
        &paint.blue,
        at(0.088, 0.10, 0.14),
    );
    piece.add(
        block(0.012, 0.018, 0.034, 0.003, 0.002),
        &paint.dark,
        at(0.075, 0.092, 0.112),
    );
    // Clutch actuator beside the gear case.
    let mut piece = Piece {
        make: &mut *make,
        root,
        part: Part::ClutchActuator,
        outline: outline.clone(),
    };
    piece.add(
        block(0.075, 0.05, 0.05, 0.006, 0.003),
        &paint.light,
        at(-0.015, 0.205, 0.105),
    );
    piece.add(
        drum(0.022, 0.016, 0.003, 24),
        &paint.teal,
        at(-0.03, 0.23, 0.131).with_rotation(lying(false)),
    );
    piece.add(
        block(0.012, 0.012, 0.06, 0.003, 0.002),
        &paint.chrome,
        at(0.012, 0.222, 0.07),
    );
}

fn water(make: &mut Maker, root: Entity, outside: Entity, outline: &Handle<StandardMaterial>) {
    let paint = make.paint.clone();
    let mut piece = Piece {
        make: &mut *make,
        root,
        part: Part::DrainPump,
        outline: outline.clone(),
    };
    let context = Transform::from_rotation(lying(false));
    piece.add(
        drum(0.046, 0.036, 0.008, 36),
        &paint.light,
        context.with_translation(Vec3::new(-0.165, 0.105, 0.185)),
    );
    piece.add(
        drum(0.032, 0.05, 0.006, 28),
        &paint.dark,
        context.with_translation(Vec3::new(-0.165, 0.105, 0.222)),
    );
    piece.add(
        block(0.052, 0.052, 0.024, 0.006, 0.003),
        &paint.copper,
        at(-0.165, 0.08, 0.236),
    );
    piece.add(
        drum(0.017, 0.05, 0.003, 20),
        &paint.light,
        at(-0.198, 0.11, 0.203),
    );
    piece.add(
        drum(0.030, 0.006, 0.002, 8),
        &paint.chrome,
        context.with_translation(Vec3::new(-0.165, 0.105, 0.272)),
    );
    let mut piece = Piece {
        make: &mut *make,
        root,
        part: Part::DrainHose,
        outline: outline.clone(),
    };
    let ribs = |points: &[Vec3]| tube(points, 0.0155, 12);
    piece.add(
        ribs(&[
            Vec3::new(-0.198, 0.16, 0.203),
            Vec3::new(-0.26, 0.24, 0.14),
            Vec3::new(-0.292, 0.42, -0.06),
            Vec3::new(-0.292, 0.72, -0.24),
            Vec3::new(-0.25, 0.80, -0.34),
            Vec3::new(-0.24, 0.84, -0.42),
            Vec3::new(-0.26, 0.80, -0.50),
        ]),
        &paint.rubber,
        Transform::IDENTITY,
    );
    piece.add(
        ribs(&[
            Vec3::new(-0.165, 0.105, 0.18),
            Vec3::new(-0.15, 0.14, 0.10),
            Vec3::new(-0.13, 0.26, 0.06),
            Vec3::new(-0.12, TUB_Y - 0.03, 0.05),
        ]),
        &paint.rubber,
        Transform::IDENTITY,
    );
    // Inlet valves, their supply hoses and the spout.
    for (part, y, colour) in [
        (Part::InletCold, 0.80, &paint.blue),
        (Part::InletHot, 0.69, &paint.red),
    ] {
        let mut piece = Piece {
            make: &mut *make,
            root,
            part,
            outline: outline.clone(),
        };
        piece.add(
            drum(0.019, 0.06, 0.003, 24),
            colour,
            Transform::from_rotation(lying(false)).with_translation(Vec3::new(0.283, y, -0.315)),
        );
        piece.add(
            block(0.04, 0.05, 0.038, 0.006, 0.003),
            &paint.light,
            at(0.283, y - 0.025, -0.235),
        );
        piece.add(
            block(0.028, 0.034, 0.03, 0.004, 0.002),
            &paint.copper,
            at(0.283, y - 0.016, -0.206),
        );
        let inner = tube(
            &[
                Vec3::new(0.272, y + 0.02, -0.235),
                Vec3::new(0.22, 0.855, -0.235),
                Vec3::new(0.12, 0.872, -0.235),
                Vec3::new(0.04, 0.872, -0.222),
            ],
            0.009,
            10,
        );
        make.add(root, inner, &paint.light, Transform::IDENTITY);
        let tap = if part == Part::InletCold {
            -0.28
        } else {
            -0.16
        };
        let hose = tube(
            &[
                Vec3::new(0.283, y, -0.32),
                Vec3::new(0.283, y, -0.40),
                Vec3::new(0.20, y - 0.08, -0.46),
                Vec3::new(-0.02, 0.86, -0.48),
                Vec3::new(tap + 0.02, 1.02, -0.49),
                Vec3::new(tap, 1.12, -0.50),
            ],
            0.0095,
            10,
        );
        make.add(outside, hose, colour, Transform::IDENTITY);
    }
    make.add(
        root,
        block(0.09, 0.03, 0.05, 0.01, 0.004),
        &paint.light,
        at(0.0, 0.858, -0.215),
    );
    // Pressure sensor, hose, air dome.
    let mut piece = Piece {
        make: &mut *make,
        root,
        part: Part::PressureSensor,
        outline: outline.clone(),
    };
    piece.add(
        drum(0.026, 0.022, 0.004, 28),
        &paint.dark,
        Transform::from_rotation(lying(true)).with_translation(Vec3::new(0.319, 0.80, 0.03)),
    );
    piece.add(
        drum(0.016, 0.012, 0.003, 24),
        &paint.amber,
        Transform::from_rotation(lying(true)).with_translation(Vec3::new(0.328, 0.80, 0.03)),
    );
    let mut piece = Piece {
        make: &mut *make,
        root,
        part: Part::PressureHose,
        outline: outline.clone(),
    };
    piece.add(
        tube(
            &[
                Vec3::new(0.305, 0.80, 0.03),
                Vec3::new(0.292, 0.79, 0.0),
                Vec3::new(0.290, 0.70, -0.04),
                Vec3::new(0.286, 0.58, -0.03),
                Vec3::new(0.276, 0.50, -0.02),
            ],
            0.0048,
            8,
        ),
        &paint.amber,
        Transform::IDENTITY,
    );
    piece.add(
        block(0.03, 0.055, 0.035, 0.008, 0.004),
        &paint.light,
        at(TUB_R + 0.014, TUB_Y + 0.022, -0.02),
    );
    let mut piece = Piece {
        make: &mut *make,
        root,
        part: Part::Thermistor,
        outline: outline.clone(),
    };
    let seat = Vec3::new(0.158, 0.455, 0.203);
    let out = Quat::from_rotation_arc(Vec3::Y, Vec3::new(seat.x, 0.0, seat.z).normalize());
    piece.add(
        drum(0.014, 0.016, 0.003, 20),
        &paint.rubber,
        Transform::from_translation(seat).with_rotation(out),
    );
    piece.add(
        drum(0.007, 0.024, 0.002, 16),
        &paint.green,
        Transform::from_translation(seat).with_rotation(out),
    );
}

fn electrics(make: &mut Maker, root: Entity, outline: &Handle<StandardMaterial>, board: &Board) {
    let paint = make.paint.clone();
    let mut piece = Piece {
        make: &mut *make,
        root,
        part: Part::RunCapacitor,
        outline: outline.clone(),
    };
    piece.add(
        drum(0.024, 0.095, 0.005, 28),
        &paint.chrome,
        at(0.292, 0.315, 0.225),
    );
    piece.add(
        drum(0.0245, 0.018, 0.004, 28),
        &paint.dark,
        at(0.292, 0.40, 0.225),
    );
    make.add(
        root,
        block(0.056, 0.012, 0.056, 0.006, 0.002),
        &paint.primer,
        at(0.292, 0.335, 0.225),
    );
    let mut piece = Piece {
        make: &mut *make,
        root,
        part: Part::LidLock,
        outline: outline.clone(),
    };
    piece.add(
        block(0.075, 0.036, 0.046, 0.006, 0.003),
        &paint.dark,
        at(0.225, 0.855, 0.262),
    );
    piece.add(
        block(0.02, 0.014, 0.016, 0.003, 0.002),
        &paint.chrome,
        at(0.225, 0.888, 0.255),
    );
    let mut piece = Piece {
        make: &mut *make,
        root,
        part: Part::Filter,
        outline: outline.clone(),
    };
    piece.add(
        block(0.05, 0.062, 0.045, 0.006, 0.003),
        &paint.chrome,
        at(0.288, 0.445, -0.265),
    );
    let mut piece = Piece {
        make: &mut *make,
        root,
        part: Part::LineFuse,
        outline: outline.clone(),
    };
    piece.add(
        block(0.05, 0.018, 0.034, 0.004, 0.002),
        &paint.dark,
        at(0.290, 0.545, -0.262),
    );
    piece.add(
        drum(0.007, 0.034, 0.002, 16),
        &paint.light,
        Transform::from_rotation(lying(true)).with_translation(Vec3::new(0.307, 0.568, -0.255)),
    );

    // Board in its tray.
    let tray = make.group(Some(root), Transform::from_translation(BOARD));
    make.add(
        tray,
        stamp(
            &rounded_xy(BOARD_SIZE.x + 0.018, BOARD_SIZE.y + 0.018, 0.012),
            0.008,
            0.003,
        ),
        &paint.light,
        at(0.0, 0.0, -0.010),
    );
    let mut piece = Piece {
        make: &mut *make,
        root: tray,
        part: Part::Board,
        outline: outline.clone(),
    };
    piece.add(
        stamp(&rounded_xy(BOARD_SIZE.x, BOARD_SIZE.y, 0.004), 0.003, 0.001),
        &paint.laminate,
        Transform::IDENTITY,
    );
    let stand = Transform::from_rotation(lying(false));
    for (x, y, r, h, colour) in [
        (-0.105, 0.035, 0.021, 0.036, &paint.dark),
        (-0.052, 0.045, 0.012, 0.024, &paint.teal),
        (-0.024, 0.048, 0.009, 0.02, &paint.dark),
    ] {
        piece.add(
            drum(r, h, 0.003, 26),
            colour,
            stand.with_translation(Vec3::new(x, y, 0.002)),
        );
    }
    for i in 0..7 {
        let (w, d) = if i < 2 { (0.020, 0.024) } else { (0.014, 0.02) };
        let x = 0.003 + 0.0215 * i as f32;
        piece.add(
            stamp(&rounded_xy(w, d, 0.002), 0.014, 0.002),
            if i % 2 == 0 {
                &paint.light
            } else {
                &paint.blue
            },
            at(x - 0.005, 0.003, 0.002),
        );
    }
    piece.add(
        stamp(&rounded_xy(0.034, 0.034, 0.002), 0.004, 0.001),
        &paint.rubber,
        at(0.055, 0.045, 0.002),
    );
    piece.add(
        stamp(&rounded_xy(0.026, 0.018, 0.002), 0.012, 0.002),
        &paint.amber,
        at(0.105, 0.05, 0.002),
    );
    piece.add(
        stamp(&rounded_xy(0.038, 0.03, 0.002), 0.022, 0.003),
        &paint.copper,
        at(-0.085, -0.018, 0.002),
    );
    for x in [-0.070, -0.056] {
        make.add(
            tray,
            drum(0.0028, 0.03, 0.001, 10),
            &paint.copper,
            stand.with_translation(Vec3::new(x, 0.050, 0.003)),
        );
    }
    let lower = -BOARD_SIZE.y / 2.0 + 0.012;
    for (label, start, pins) in board_pins(board) {
        let width = pins.len() as f32 * PITCH;
        let middle = start + width / 2.0;
        make.add(
            tray,
            stamp(&rounded_xy(width + 0.004, 0.015, 0.0015), 0.010, 0.001),
            &paint.dark,
            at(middle, lower, 0.002),
        );
        let seat = Vec3::new(middle, lower - 0.006, 0.006);
        let plug = make.group(Some(tray), Transform::from_translation(seat));
        make.commands.entity(plug).insert(Plug {
            connector: Connector::Board(label.to_owned()),
            seat,
            hang: seat + Vec3::new(0.0, -0.032, 0.014),
        });
        let body = make.add(
            plug,
            stamp(&rounded_xy(width + 0.002, 0.016, 0.002), 0.010, 0.002),
            &paint.light,
            Transform::IDENTITY,
        );
        make.commands.entity(body).insert(Pick::Part(Part::Harness));
        make.add(
            plug,
            card(width * 0.8, 0.002),
            &paint.amber,
            at(0.0, 0.004, 0.0105),
        );
        make.add(
            tray,
            write(label, 0.0105),
            &paint.print,
            at(middle, lower + 0.0155, 0.0042),
        );
    }
    for part in Part::ALL {
        if let Some((place, away)) = terminal_block(*part) {
            let plug = make.group(Some(root), Transform::from_translation(place));
            make.commands.entity(plug).insert(Plug {
                connector: Connector::Load(*part),
                seat: place,
                hang: place + away,
            });
            let body = make.add(
                plug,
                block(0.034, 0.016, 0.016, 0.003, 0.0015),
                &paint.light,
                at(0.0, -0.008, 0.0),
            );
            make.commands.entity(body).insert(Pick::Part(*part));
        }
    }
}

/// Wires: from the board down to a trunk along the front, then to each load.
fn harness(make: &mut Maker, root: Entity, outline: &Handle<StandardMaterial>, board: &Board) {
    let paint = make.paint.clone();
    let colours = [
        paint.red.clone(),
        paint.blue.clone(),
        paint.amber.clone(),
        paint.teal.clone(),
        paint.light.clone(),
        paint.dark.clone(),
    ];
    let mut strands = vec![Shape::default(); colours.len()];
    let mut n = 0;
    for (_, _, pins) in board_pins(board) {
        for (terminal, x) in pins {
            let Some((goal, _)) = terminal_block(terminal.component()) else {
                continue;
            };
            let spread = (n % 6) as f32 * 0.0032;
            let layer = (n / 6) as f32 * 0.0030;
            let from = BOARD + Vec3::new(x, -BOARD_SIZE.y / 2.0 - 0.006, 0.010);
            let nth = Terminal::ALL
                .iter()
                .filter(|t| t.component() == terminal.component() && **t < terminal)
                .count();
            let end = goal + Vec3::new((nth as f32 - 1.0) * 0.006, -0.002, 0.004);
            let trunk_y = 0.372 - spread;
            let trunk_z = 0.300 - layer;
            let mut path = vec![
                from,
                from + Vec3::new(0.0, -0.05, 0.004),
                Vec3::new(-0.285 + spread, 0.52, 0.294 - layer),
                Vec3::new(-0.27 + spread, trunk_y + 0.03, trunk_z),
            ];
            let right = goal.x > 0.2 && goal.y > 0.3;
            if right {
                path.push(Vec3::new(-0.1, trunk_y, trunk_z));
                path.push(Vec3::new(0.2, trunk_y, trunk_z));
                let post = Vec3::new(0.319 - layer * 0.5, trunk_y + 0.05, 0.262 - spread);
                path.push(post);
                path.push(Vec3::new(post.x, goal.y - 0.06, 0.25 - spread));
                if goal.z < 0.1 {
                    path.push(Vec3::new(
                        0.322 - layer * 0.5,
                        goal.y - 0.045 - spread,
                        goal.z + 0.09,
                    ));
                }
            } else {
                path.push(Vec3::new((goal.x - 0.27) / 2.0, trunk_y, trunk_z));
                path.push(Vec3::new(goal.x - 0.02, trunk_y - 0.02, trunk_z - 0.01));
                path.push(Vec3::new(
                    goal.x - 0.005,
                    (goal.y + trunk_y) / 2.0 + 0.01,
                    (goal.z + trunk_z) / 2.0 + 0.02,
                ));
            }
            path.push(end);
            let colour = n % colours.len();
            strands[colour] = std::mem::take(&mut strands[colour])
                .with(tube(&path, 0.0017, 5), Transform::IDENTITY);
            n += 1;
        }
    }
    for (shape, colour) in strands.into_iter().zip(&colours) {
        let entity = make.add(root, shape, colour, Transform::IDENTITY);
        make.commands
            .entity(entity)
            .insert(Pick::Part(Part::Harness));
    }
    for (x, y, z) in [
        (-0.275, 0.47, 0.292),
        (-0.02, 0.364, 0.296),
        (0.15, 0.364, 0.296),
        (0.314, 0.62, 0.246),
    ] {
        let mut piece = Piece {
            make: &mut *make,
            root,
            part: Part::Harness,
            outline: outline.clone(),
        };
        let tie = if y > 0.4 {
            block(0.026, 0.008, 0.022, 0.004, 0.002)
        } else {
            block(0.008, 0.026, 0.022, 0.004, 0.002)
        };
        piece.add(tie, &paint.rubber, at(x, y - 0.006, z));
    }
}

fn cord(make: &mut Maker, root: Entity) {
    let paint = make.paint.clone();
    let start = Vec3::new(0.30, 0.40, -0.325);
    let plug = |make: &mut Maker, group: Entity, place: Transform| {
        let spot = make.group(Some(group), place);
        let body = make.add(
            spot,
            block(0.034, 0.04, 0.03, 0.010, 0.006),
            &paint.dark,
            at(0.0, -0.04, 0.0),
        );
        make.commands.entity(body).insert(Pick::Plug);
        for (x, z) in [(-0.007, 0.0), (0.007, 0.0), (0.0, 0.009)] {
            make.add(
                spot,
                block(0.003, 0.016, 0.005, 0.001, 0.0005),
                &paint.copper,
                at(x, 0.0, z),
            );
        }
    };
    let plugged = make.group(Some(root), Transform::IDENTITY);
    make.commands.entity(plugged).insert(MainsPlug(true));
    let wire = tube(
        &[
            start,
            Vec3::new(0.34, 0.30, -0.40),
            Vec3::new(0.44, 0.30, -0.47),
            Vec3::new(0.54, 0.55, -0.50),
            Vec3::new(0.59, 0.86, -0.49),
            Vec3::new(0.60, 0.985, -0.475),
            Vec3::new(0.60, 1.02, -0.505),
        ],
        0.0055,
        10,
    );
    let entity = make.add(plugged, wire, &paint.dark, Transform::IDENTITY);
    make.commands.entity(entity).insert(Pick::Plug);
    plug(
        make,
        plugged,
        Transform::from_translation(PLUG_IN).with_rotation(Quat::from_rotation_x(-PI / 2.0)),
    );
    let pulled = make.group(Some(root), Transform::IDENTITY);
    make.commands
        .entity(pulled)
        .insert((MainsPlug(false), Visibility::Hidden));
    let wire = tube(
        &[
            start,
            Vec3::new(0.36, 0.20, -0.42),
            Vec3::new(0.46, 0.02, -0.40),
            Vec3::new(0.62, 0.007, -0.32),
            Vec3::new(0.64, 0.007, -0.16),
            Vec3::new(0.60, 0.02, -0.09),
        ],
        0.0055,
        10,
    );
    let entity = make.add(pulled, wire, &paint.dark, Transform::IDENTITY);
    make.commands.entity(entity).insert(Pick::Plug);
    plug(
        make,
        pulled,
        Transform::from_translation(PLUG_OUT).with_rotation(Quat::from_rotation_x(PI / 2.2)),
    );
}

/// Builds everything inside the cabinet.
pub fn build(make: &mut Maker, root: Entity, board: &Board) {
    let outline = make.materials.add(StandardMaterial {
        base_color: Color::srgb_u8(0xff, 0xb8, 0x4d),
        unlit: true,
        ..default()
    });
    let hidden = make.group(Some(root), Transform::IDENTITY);
    make.commands.entity(hidden).insert(Behind);
    drive(make, hidden, &outline);
    water(make, hidden, root, &outline);
    electrics(make, hidden, &outline, board);
    harness(make, hidden, &outline, board);
    cord(make, root);
}

fn turn(
    displayed: Res<DisplayedMachine>,
    time: Res<Time>,
    mut angles: Local<(f32, f32)>,
    mut small: Query<&mut Transform, (With<MotorPulley>, Without<BigPulley>)>,
    mut big: Query<&mut Transform, (With<BigPulley>, Without<MotorPulley>)>,
) {
    // Drawn at a tenth of its speed: at full speed a screen would show a standing wheel.
    let step = (displayed.motor_rpm as f32 / 60.0 * TAU * time.delta_secs()) * 0.1;
    angles.0 = (angles.0 - step).rem_euclid(TAU);
    angles.1 = (angles.1 - step * 0.028 / 0.103).rem_euclid(TAU);
    for mut place in &mut small {
        put(&mut place, |place| {
            place.with_rotation(Quat::from_rotation_y(angles.0))
        });
    }
    for mut place in &mut big {
        put(&mut place, |place| {
            place.with_rotation(Quat::from_rotation_y(angles.1))
        });
    }
}

/// So near its goal, m, a plug is there.
const SETTLED: f32 = 1e-5;

fn show_plugs(
    bench: Res<BenchRes>,
    displayed: Res<DisplayedMachine>,
    easing: Easing,
    mut plugs: Query<(&Plug, &mut Transform)>,
    mut mains: Query<(&MainsPlug, &mut Visibility)>,
) {
    let view = bench.view();
    for (plug, mut place) in &mut plugs {
        let pulled = view.pulled.contains(&plug.connector);
        let goal = if pulled { plug.hang } else { plug.seat };
        let share = easing.share(0.1);
        let tilt = if pulled { 0.5 } else { 0.0 };
        let turned = Quat::from_rotation_z(tilt) * Quat::from_rotation_x(tilt * 0.6);
        put(&mut place, |mut place| {
            if place.translation.distance(goal) < SETTLED {
                return place.with_translation(goal).with_rotation(turned);
            }
            place.translation = place.translation.lerp(goal, share);
            place.rotation = place.rotation.slerp(turned, share);
            place
        });
    }
    for (MainsPlug(on), mut visibility) in &mut mains {
        let show = *on == displayed.plugged;
        visibility.set_if_neq(if show {
            Visibility::Inherited
        } else {
            Visibility::Hidden
        });
    }
}

/// What no one can see need not be drawn.
fn reveal(motion: Res<Motion>, mut behind: Single<&mut Visibility, With<Behind>>) {
    let show = motion.cabinet > 0.002;
    behind.set_if_neq(if show {
        Visibility::Inherited
    } else {
        Visibility::Hidden
    });
}

/// The loads.
pub fn plugin(app: &mut App) {
    app.add_systems(Update, (turn, show_plugs, reveal).after(display));
}
