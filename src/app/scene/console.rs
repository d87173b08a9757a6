//! Console: dial with 24 detents, arc of eight lamps, lock lamp, two buttons.

use super::mesh::{Shape, arc_band, card, drum, edge, fillet, lathe, rounded_xy, stamp};
use super::strokes::{polyline, write};
use super::washer::{DECK, DECK_Y, WIDTH};
use super::{Maker, at, ease, paint};
use crate::app::pick::Pick;
use crate::app::state::{BenchRes, Desk};
use crate::app::tokens;
use crate::app::views::{Eye, Lens, to_window};
use crate::controller::Lamps;
use crate::plant::Button;
use bevy::light::NotShadowCaster;
use bevy::prelude::*;
use std::f32::consts::{PI, TAU};

/// Number of detents in one turn.
pub const DETENTS: u8 = 24;
/// Middle of the console's face.
pub const FACE: Vec3 = Vec3::new(0.0, 1.055, -0.212);
/// The face leans back by this angle, rad.
pub const LEAN: f32 = -0.395;
/// Dial centre on the face.
pub const DIAL: Vec2 = Vec2::new(0.0, -0.026);

/// Where the face looks, as a place in the world.
pub fn face() -> Transform {
    Transform::from_translation(FACE).with_rotation(Quat::from_rotation_x(LEAN))
}

/// What shows one lamp's state: hidden or shown with it.
#[derive(Component)]
struct Lit(LampId);

#[derive(Clone, Copy, PartialEq)]
enum LampId {
    Arc(u8),
    Lock,
}

/// Where a lamp is, with the radius of its lens, m.
#[derive(Component)]
struct Place(LampId, f32);

/// A lit lamp in the window: middle and radius, logical pixels, and its colour.
pub type Shine = (Vec2, f32, bevy_egui::egui::Color32);

/// Lit lamps for the panels to draw, where the scene does not.
#[derive(Resource, Default)]
pub struct Shining(pub Vec<Shine>);

/// Colour of the lit lock lamp.
const LOCK_LIT: bevy_egui::egui::Color32 = bevy_egui::egui::Color32::from_rgb(0xff, 0x9a, 0x66);

/// The turning knob.
#[derive(Component)]
pub struct Dial;

/// A moving cap.
#[derive(Component)]
struct Cap(Button);

/// How the dial moves under the hand.
#[derive(Resource, Default)]
pub struct DialFeel {
    /// Part of a detent by which the hand strains against it, -0.5 to 0.5.
    pub strain: f32,
    angle: f32,
    speed: f32,
    started: bool,
}

/// Which buttons the hand holds down.
#[derive(Resource, Default)]
pub struct Held(pub [bool; 2]);

fn glow_material(
    make: &mut Maker,
    colour: bevy_egui::egui::Color32,
    strength: f32,
) -> Handle<StandardMaterial> {
    let image = make.images.add(paint::glow());
    let base = Color::srgb_u8(colour.r(), colour.g(), colour.b()).to_linear() * strength;
    make.materials.add(StandardMaterial {
        base_color: base.into(),
        base_color_texture: Some(image),
        unlit: true,
        alpha_mode: AlphaMode::Add,
        depth_bias: 4.0,
        ..default()
    })
}

struct LampLook {
    lit: Handle<StandardMaterial>,
    halo: Handle<StandardMaterial>,
    ring: Handle<StandardMaterial>,
    off: Handle<StandardMaterial>,
}

fn lamp_look(make: &mut Maker, colour: bevy_egui::egui::Color32) -> LampLook {
    let to = |c: bevy_egui::egui::Color32| Color::srgb_u8(c.r(), c.g(), c.b());
    let lit = make.materials.add(StandardMaterial {
        base_color: (to(colour).to_linear() * 0.25).into(),
        emissive: to(colour).to_linear() * 1.15,
        ..default()
    });
    let ring = make.materials.add(StandardMaterial {
        base_color: to(tokens::LAMP_RING),
        perceptual_roughness: 0.35,
        metallic: 0.6,
        ..default()
    });
    let off = make.materials.add(StandardMaterial {
        base_color: Color::srgb_u8(0x1d, 0x1a, 0x16),
        perceptual_roughness: 0.12,
        ..default()
    });
    LampLook {
        lit,
        halo: glow_material(make, colour, 1.5),
        ring,
        off,
    }
}

/// A lamp on the face: dark lens in a ring; lit it gains a bright disc, an outer ring and a halo.
fn lamp(
    make: &mut Maker,
    face: Entity,
    id: LampId,
    place: Transform,
    radius: f32,
    look: &LampLook,
) {
    let spot = make.group(Some(face), place);
    make.commands.entity(spot).insert(Place(id, radius));
    let bezel = lathe(
        &[
            (radius * 1.0, 0.0),
            (radius * 1.28, 0.0),
            (radius * 1.26, 0.0022),
            (radius * 1.08, 0.003),
            (radius * 1.0, 0.001),
        ],
        28,
    )
    .moved(Transform::from_rotation(Quat::from_rotation_x(PI / 2.0)));
    make.add(spot, bezel, &look.ring, Transform::IDENTITY);
    let dome = |r: f32, h: f32| {
        let profile: Vec<(f32, f32)> = edge(1.0, 5)
            .map(|(inset, rise)| (r * (1.0 - inset), h * rise))
            .collect();
        lathe(&profile, 24).moved(Transform::from_rotation(Quat::from_rotation_x(PI / 2.0)))
    };
    make.add(spot, dome(radius, 0.0022), &look.off, Transform::IDENTITY);
    let disc = make.add(
        spot,
        dome(radius * 1.02, 0.0030),
        &look.lit,
        Transform::IDENTITY,
    );
    let ring = make.add(
        spot,
        arc_band(radius * 1.52, radius * 0.17, 0.0, TAU, 0.0012),
        &look.lit,
        Transform::IDENTITY,
    );
    let halo = make.add(
        spot,
        card(radius * 8.0, radius * 8.0),
        &look.halo,
        at(0.0, 0.0, 0.0045),
    );
    for entity in [disc, ring, halo] {
        make.commands
            .entity(entity)
            .insert((Lit(id), NotShadowCaster, Visibility::Hidden));
    }
}

fn padlock() -> Shape {
    let body = stamp(&rounded_xy(0.016, 0.0125, 0.002), 0.0012, 0.0005).moved(at(0.0, -0.005, 0.0));
    let shackle: Vec<Vec2> = std::iter::once(Vec2::new(0.0048, 0.0))
        .chain(
            (0..=10)
                .map(|i| Vec2::new(0.0, 0.004) + Vec2::from_angle(i as f32 / 10.0 * PI) * 0.0048),
        )
        .chain(std::iter::once(Vec2::new(-0.0048, 0.0)))
        .collect();
    body.with(polyline(&shackle, 0.0024), at(0.0, 0.0012, 0.0009))
}

fn dial(make: &mut Maker, face: Entity) {
    let paint = make.paint.clone();
    let hub = make.group(Some(face), at(DIAL.x, DIAL.y, 0.007));
    for i in 0..DETENTS {
        let angle = PI / 2.0 - f32::from(i) * TAU / f32::from(DETENTS);
        let major = i % 3 == 0;
        let (from, to, width) = if major {
            (0.0605, 0.0695, 0.0019)
        } else {
            (0.0615, 0.0665, 0.0012)
        };
        let out = Vec2::from_angle(angle);
        let colour = if i == 0 {
            &paint.print_amber
        } else {
            &paint.print
        };
        make.add(
            hub,
            polyline(&[out * from, out * to], width),
            colour,
            at(0.0, 0.0, 0.0006),
        );
        if major {
            let p = out * 0.0785;
            make.add(
                hub,
                write(&i.to_string(), 0.0082),
                colour,
                at(p.x, p.y, 0.0006),
            );
        }
    }
    let well = lathe(
        &[(0.0, 0.0), (0.0585, 0.0), (0.057, 0.0025), (0.0, 0.0025)],
        64,
    )
    .moved(Transform::from_rotation(Quat::from_rotation_x(PI / 2.0)));
    make.add(hub, well, &paint.dark, Transform::IDENTITY);
    let knob = make.group(Some(hub), at(0.0, 0.0, 0.003));
    make.commands.entity(knob).insert(Dial);
    // Fluted skirt, brushed cap.
    let outline: Vec<Vec2> = (0..144)
        .map(|i| {
            let a = i as f32 / 144.0 * TAU;
            Vec2::from_angle(a) * (0.0535 - 0.0012 * (0.5 + 0.5 * (a * 24.0).cos()).powi(2))
        })
        .collect();
    let skirt = make.add(
        knob,
        stamp(&outline, 0.016, 0.003),
        &paint.dark,
        Transform::IDENTITY,
    );
    let cap = lathe(
        &[
            (0.0462, 0.0),
            (0.0456, 0.012),
            (0.0440, 0.0150),
            (0.0415, 0.0158),
            (0.030, 0.0145),
            (0.0, 0.0138),
        ],
        72,
    )
    .moved(Transform::from_rotation(Quat::from_rotation_x(PI / 2.0)));
    let cap = make.add(knob, cap, &paint.brushed, at(0.0, 0.0, 0.0145));
    let grip = fillet(
        &[
            Vec2::new(-0.0075, -0.042),
            Vec2::new(0.0075, -0.042),
            Vec2::new(0.0062, 0.044),
            Vec2::new(-0.0062, 0.044),
        ],
        0.005,
    );
    let grip = make.add(
        knob,
        stamp(&grip, 0.013, 0.004),
        &paint.dark,
        at(0.0, 0.0, 0.0275),
    );
    let pointer = make.add(
        knob,
        polyline(&[Vec2::new(0.0, 0.016), Vec2::new(0.0, 0.0385)], 0.0038),
        &paint.print_amber,
        at(0.0, 0.0, 0.0409),
    );
    let tip = make.add(
        knob,
        polyline(&[Vec2::new(0.0, 0.0485), Vec2::new(0.0, 0.0525)], 0.0030),
        &paint.print_amber,
        at(0.0, 0.0, 0.0163),
    );
    for entity in [skirt, cap, grip, pointer, tip] {
        make.commands.entity(entity).insert(Pick::Dial);
    }
}

fn lamps(make: &mut Maker, face: Entity) {
    let paint = make.paint.clone();
    let look = lamp_look(make, tokens::LAMP_LIT);
    let step = 13.5f32.to_radians();
    let gap = 22.0f32.to_radians();
    let half = (6.0 * step + gap) / 2.0;
    for bit in (0..8u8).rev() {
        let place = f32::from(7 - bit);
        let extra = if bit < 4 { gap - step } else { 0.0 };
        let angle = PI / 2.0 + half - place * step - extra;
        let out = Vec2::from_angle(angle);
        let p = DIAL + out * 0.1125;
        lamp(
            make,
            face,
            LampId::Arc(bit),
            at(p.x, p.y, 0.0065),
            0.0084,
            &look,
        );
        let weight = 1 << (bit % 4);
        let q = DIAL + out * 0.0935;
        make.add(
            face,
            write(&weight.to_string(), 0.0082),
            &paint.print,
            at(q.x, q.y, 0.0068),
        );
    }
    for (sign, text) in [(1.0f32, "×10"), (-1.0, "×1")] {
        let near = PI / 2.0 + sign * gap / 2.0 - sign * 0.06;
        let far = PI / 2.0 + sign * (half + 0.06);
        let (from, to) = (near.min(far), near.max(far));
        make.add(
            face,
            arc_band(0.1285, 0.0011, from, to, 0.0068),
            &paint.print,
            at(DIAL.x, DIAL.y, 0.0),
        );
        let p = DIAL + Vec2::from_angle(PI / 2.0 + sign * (half + 0.27)) * 0.123;
        make.add(
            face,
            write(text, 0.0092),
            &paint.print,
            at(p.x, p.y, 0.0068),
        );
    }
    let look = lamp_look(make, LOCK_LIT);
    let p = Vec2::new(-0.205, -0.012);
    lamp(
        make,
        face,
        LampId::Lock,
        at(p.x, p.y, 0.0065),
        0.0105,
        &look,
    );
    make.add(face, padlock(), &paint.print, at(p.x, p.y - 0.033, 0.0062));
}

fn buttons(make: &mut Maker, face: Entity) {
    let paint = make.paint.clone();
    for (button, y, colour) in [
        (Button::Start, 0.022f32, &paint.green),
        (Button::Stop, -0.056, &paint.red),
    ] {
        let place = at(0.205, y, 0.006);
        let spot = make.group(Some(face), place);
        let bezel = lathe(
            &[
                (0.0, 0.0),
                (0.0300, 0.0),
                (0.0295, 0.004),
                (0.0275, 0.0055),
                (0.0262, 0.004),
                (0.0, 0.002),
            ],
            44,
        )
        .moved(Transform::from_rotation(Quat::from_rotation_x(PI / 2.0)));
        make.add(spot, bezel, &paint.chrome, Transform::IDENTITY);
        let moving = make.group(Some(spot), at(0.0, 0.0, 0.0));
        make.commands.entity(moving).insert(Cap(button));
        let cap = drum(0.0252, 0.013, 0.004, 40)
            .moved(Transform::from_rotation(Quat::from_rotation_x(PI / 2.0)));
        let cap = make.add(moving, cap, colour, Transform::IDENTITY);
        let glyph = match button {
            Button::Start => fillet(
                &[
                    Vec2::new(-0.006, -0.0095),
                    Vec2::new(0.0105, 0.0),
                    Vec2::new(-0.006, 0.0095),
                ],
                0.002,
            ),
            Button::Stop => rounded_xy(0.0155, 0.0155, 0.0022),
        };
        let glyph = make.add(
            moving,
            stamp(&glyph, 0.0012, 0.0005),
            &paint.light,
            at(0.0, 0.0, 0.0128),
        );
        for entity in [cap, glyph] {
            make.commands.entity(entity).insert(Pick::Button(button));
        }
    }
}

/// Builds the console on the machine.
pub fn build(make: &mut Maker, root: Entity) {
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
    let face = make.group(Some(root), face());
    make.add(
        face,
        stamp(&rounded_xy(0.575, 0.222, 0.026), 0.006, 0.003),
        &paint.glass,
        Transform::IDENTITY,
    );
    dial(make, face);
    lamps(make, face);
    buttons(make, face);
}

impl LampId {
    fn lit(self, lamps: Lamps) -> bool {
        match self {
            LampId::Arc(bit) => lamps.arc & (1 << bit) != 0,
            LampId::Lock => lamps.lock,
        }
    }
}

fn show_lamps(bench: Res<BenchRes>, lens: Res<Lens>, mut lit: Query<(&Lit, &mut Visibility)>) {
    let lamps = bench.view().machine.lamps;
    for (Lit(id), mut visibility) in &mut lit {
        let on = !lens.software && id.lit(lamps);
        visibility.set_if_neq(if on {
            Visibility::Inherited
        } else {
            Visibility::Hidden
        });
    }
}

/// Where the lit lamps are in the window.
fn shine(
    bench: Res<BenchRes>,
    lens: Res<Lens>,
    desk: Res<Desk>,
    eye: Single<(&Camera, &GlobalTransform), With<Eye>>,
    places: Query<(&Place, &GlobalTransform)>,
    mut shining: ResMut<Shining>,
) {
    shining.0.clear();
    if !lens.software {
        return;
    }
    let (camera, eye) = *eye;
    let lamps = bench.view().machine.lamps;
    for (Place(id, radius), place) in places.iter().filter(|(p, _)| p.0.lit(lamps)) {
        let middle = place.translation();
        let side = middle + *place.right() * *radius;
        if let (Ok(a), Ok(b)) = (
            camera.world_to_viewport(eye, middle),
            camera.world_to_viewport(eye, side),
        ) {
            let (a, b) = (
                to_window(camera, desk.stage, a),
                to_window(camera, desk.stage, b),
            );
            let colour = if *id == LampId::Lock {
                LOCK_LIT
            } else {
                tokens::LAMP_LIT
            };
            shining.0.push((a, a.distance(b), colour));
        }
    }
}

/// The knob follows the machine's dial with a spring that overshoots a little at each detent.
fn turn_dial(
    bench: Res<BenchRes>,
    time: Res<Time>,
    mut feel: ResMut<DialFeel>,
    mut dial: Single<&mut Transform, With<Dial>>,
) {
    let step = TAU / f32::from(DETENTS);
    let goal = f32::from(bench.view().machine.dial_position) * step + feel.strain * step * 0.8;
    if !feel.started {
        feel.angle = goal;
        feel.started = true;
    }
    let mut away = (goal - feel.angle).rem_euclid(TAU);
    if away > PI {
        away -= TAU;
    }
    let (mut angle, mut speed) = (feel.angle, feel.speed);
    let target = angle + away;
    let pieces = 8;
    let dt = time.delta_secs().min(0.1) / pieces as f32;
    for _ in 0..pieces {
        speed += ((target - angle) * 2_400.0 - speed * 46.0) * dt;
        angle += speed * dt;
    }
    feel.angle = angle.rem_euclid(TAU);
    feel.speed = speed;
    dial.rotation = Quat::from_rotation_z(-angle);
}

fn push_buttons(held: Res<Held>, time: Res<Time>, mut caps: Query<(&Cap, &mut Transform)>) {
    for (Cap(button), mut place) in &mut caps {
        let goal = if held.0[button.index()] { -0.0062 } else { 0.0 };
        place.translation.z = ease(place.translation.z, goal, 0.03, time.delta_secs());
    }
}

/// The console.
pub fn plugin(app: &mut App) {
    app.init_resource::<DialFeel>()
        .init_resource::<Held>()
        .init_resource::<Shining>()
        .add_systems(Update, (show_lamps, shine, turn_dial, push_buttons));
}
