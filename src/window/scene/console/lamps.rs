//! Lamps on the face: dark lenses that gain a bright disc, a ring and a halo, or bars that light up.

use super::layout::{Form, Lamp, LampId};
use crate::camera::{MainCamera, SceneTarget, to_window};
use crate::scene::displayed::{DisplayedMachine, display};
use crate::scene::maker::{Maker, at};
use crate::scene::mesh::{Shape, arc_band, card, edge, lathe, rounded_xy, stamp};
use crate::scene::paint;
use crate::scene::still::Apart;
use crate::scene::strokes::polyline;
use crate::state::UiState;
use crate::tokens;
use bevy::light::NotShadowCaster;
use bevy::prelude::*;
use bevy_egui::egui::Color32;
use detent_simulation::controller::Signs;
use std::f32::consts::{PI, TAU};

/// What shows one lamp's state: hidden or shown with it.
#[derive(Component)]
#[require(Apart)]
struct Lit(LampId);

/// Where a lamp is, with its lens.
#[derive(Component)]
pub struct Place {
    /// Which.
    pub id: LampId,
    form: Form,
    colour: Color32,
}

/// A lit lamp in the window, points.
pub struct Shine {
    /// Middle.
    pub at: Vec2,
    /// Radius of its lens; half the thickness of a bar.
    pub radius: f32,
    /// Corners of a bar; none for a round lamp.
    pub corners: Vec<Vec2>,
    /// Colour.
    pub colour: Color32,
}

/// Lit lamps for the panels to draw, where the scene does not.
#[derive(Resource, Default)]
pub struct Shining(pub Vec<Shine>);

/// The colour in which the code lamps of a board light up.
pub fn colour_of(signs: &Signs) -> Color32 {
    match signs {
        Signs::Weights { .. } | Signs::Pictures { .. } | Signs::InTurn { .. } => tokens::LAMP_LIT,
        Signs::Segments => tokens::DIGIT_LIT,
        Signs::Flashes { .. } => tokens::STATUS_LIT,
    }
}

fn linear(colour: Color32) -> LinearRgba {
    paint::scene_color(colour).to_linear()
}

struct Look {
    lit: Handle<StandardMaterial>,
    halo: Handle<StandardMaterial>,
    ring: Handle<StandardMaterial>,
    off: Handle<StandardMaterial>,
    bar_off: Handle<StandardMaterial>,
}

/// `halo`: how strong the glow around a lit lamp is; bars stand too close together for much of it.
fn lamp_materials(make: &mut Maker, colour: Color32, halo: f32) -> Look {
    let image = make.images.add(paint::glow());
    let lit = make.materials.add(StandardMaterial {
        base_color: (linear(colour) * 0.25).into(),
        emissive: linear(colour) * (0.75 + 0.27 * halo),
        ..default()
    });
    let halo = make.materials.add(StandardMaterial {
        base_color: (linear(colour) * halo).into(),
        base_color_texture: Some(image),
        unlit: true,
        alpha_mode: AlphaMode::Add,
        depth_bias: 4.0,
        ..default()
    });
    let ring = make.materials.add(StandardMaterial {
        base_color: linear(tokens::LAMP_RING).into(),
        perceptual_roughness: 0.35,
        metallic: 0.6,
        ..default()
    });
    let off = make.materials.add(StandardMaterial {
        base_color: Color::srgb_u8(0x1d, 0x1a, 0x16),
        perceptual_roughness: 0.12,
        ..default()
    });
    let bar_off = make.materials.add(StandardMaterial {
        base_color: Color::srgb_u8(0x1c, 0x22, 0x26),
        perceptual_roughness: 0.16,
        ..default()
    });
    Look {
        lit,
        halo,
        ring,
        off,
        bar_off,
    }
}

fn dome(radius: f32, height: f32) -> Shape {
    let profile: Vec<(f32, f32)> = edge(1.0, 5)
        .map(|(inset, rise)| (radius * (1.0 - inset), height * rise))
        .collect();
    let segments = if radius > 0.02 { 48 } else { 24 };
    lathe(&profile, segments).moved(Transform::from_rotation(Quat::from_rotation_x(PI / 2.0)))
}

/// A round lamp; `spot` is its middle. What is there only when it is lit.
fn round(make: &mut Maker, spot: Entity, radius: f32, look: &Look) -> Vec<Entity> {
    let rim = radius.min(0.012);
    let bezel = lathe(
        &[
            (radius, 0.0),
            (radius + rim * 0.28, 0.0),
            (radius + rim * 0.26, 0.0022),
            (radius + rim * 0.08, 0.003),
            (radius, 0.001),
        ],
        if radius > 0.02 { 56 } else { 28 },
    )
    .moved(Transform::from_rotation(Quat::from_rotation_x(PI / 2.0)));
    make.add(spot, bezel, &look.ring, Transform::IDENTITY);
    let height = (radius * 0.26).clamp(0.0022, 0.008);
    make.add(spot, dome(radius, height), &look.off, Transform::IDENTITY);
    let disc = dome(radius * 1.02, height + 0.0008);
    let band = arc_band(radius + rim * 0.52, rim * 0.17, 0.0, TAU, 0.0012);
    let across = radius + rim * 7.0;
    vec![
        make.add(spot, disc, &look.lit, Transform::IDENTITY),
        make.add(spot, band, &look.lit, Transform::IDENTITY),
        make.add(
            spot,
            card(across, across),
            &look.halo,
            at(0.0, 0.0, height + 0.0025),
        ),
    ]
}

/// A bar of a digit.
fn bar(make: &mut Maker, spot: Entity, corners: &[Vec2], look: &Look) -> Vec<Entity> {
    make.add(
        spot,
        stamp(corners, 0.0010, 0.0003),
        &look.bar_off,
        Transform::IDENTITY,
    );
    let size = corners.iter().fold(Vec2::ZERO, |m, p| m.max(p.abs())) * 2.0;
    let glow = size + Vec2::splat(size.min_element() * 1.6);
    vec![
        make.add(
            spot,
            stamp(corners, 0.0016, 0.0005),
            &look.lit,
            Transform::IDENTITY,
        ),
        make.add(spot, card(glow.x, glow.y), &look.halo, at(0.0, 0.0, 0.0030)),
    ]
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

/// Puts the lamps on the face, `z` above its middle.
pub fn build(
    make: &mut Maker,
    context: Entity,
    lamps: &[Lamp],
    colour: Color32,
    print: &Handle<StandardMaterial>,
    z: f32,
) {
    let bars = (lamps.iter()).any(|lamp| matches!(lamp.form, Form::Bar(_)));
    let code = lamp_materials(make, colour, if bars { 0.45 } else { 1.5 });
    let lock = lamp_materials(make, tokens::LOCK_LIT, 1.5);
    for lamp in lamps {
        let (look, colour) = match lamp.id {
            LampId::Code(_) => (&code, colour),
            LampId::Lock => (&lock, tokens::LOCK_LIT),
        };
        let spot = make.group(Some(context), at(lamp.at.x, lamp.at.y, z));
        make.commands.entity(spot).insert(Place {
            id: lamp.id,
            form: lamp.form.clone(),
            colour,
        });
        let shown = match &lamp.form {
            Form::Round(radius) => round(make, spot, *radius, look),
            Form::Bar(corners) => bar(make, spot, corners, look),
        };
        for entity in shown {
            make.commands.entity(entity).insert((
                Lit(lamp.id),
                NotShadowCaster,
                Visibility::Hidden,
            ));
        }
        if lamp.id == LampId::Lock {
            make.add(
                context,
                padlock(),
                print,
                at(lamp.at.x, lamp.at.y - 0.033, z),
            );
        }
    }
}

fn show(
    displayed: Res<DisplayedMachine>,
    lens: Res<SceneTarget>,
    mut lit: Query<(&Lit, &mut Visibility)>,
) {
    let lamps = displayed.lamps;
    for (Lit(id), mut visibility) in &mut lit {
        let on = !lens.software && id.lit(lamps);
        visibility.set_if_neq(if on {
            Visibility::Inherited
        } else {
            Visibility::Hidden
        });
    }
}

/// The lamp as it stands in the window; none when it is behind the eye.
pub fn in_window(
    place: &Place,
    spot: &GlobalTransform,
    (camera, eye): (&Camera, &GlobalTransform),
    stage: Rect,
) -> Option<Shine> {
    let to = |p: Vec2| {
        let p = spot.transform_point(p.extend(0.002));
        let seen = camera.world_to_viewport(eye, p).ok()?;
        Some(to_window(camera, stage, seen))
    };
    let middle = to(Vec2::ZERO)?;
    let (corners, radius) = match &place.form {
        Form::Round(radius) => (Vec::new(), to(Vec2::X * *radius)?.distance(middle)),
        Form::Bar(corners) => {
            let seen: Vec<Vec2> = corners.iter().filter_map(|p| to(*p)).collect();
            // The second corner and the last face each other across the bar.
            let across = seen.get(1).zip(seen.last());
            let radius = across.map_or(0.0, |(a, b)| a.distance(*b) / 2.0);
            (seen, radius)
        }
    };
    Some(Shine {
        at: middle,
        radius,
        corners,
        colour: place.colour,
    })
}

/// Where the lit lamps are in the window.
fn shine(
    displayed: Res<DisplayedMachine>,
    lens: Res<SceneTarget>,
    ui_state: Res<UiState>,
    eye: Single<(&Camera, &GlobalTransform), With<MainCamera>>,
    places: Query<(&Place, &GlobalTransform)>,
    mut shining: ResMut<Shining>,
) {
    shining.0.clear();
    if lens.software {
        let lamps = displayed.lamps;
        let lit = places.iter().filter(|(place, _)| place.id.lit(lamps));
        shining
            .0
            .extend(lit.filter_map(|(place, spot)| in_window(place, spot, *eye, ui_state.stage)));
    }
}

/// Lamps.
pub fn plugin(app: &mut App) {
    app.init_resource::<Shining>()
        .add_systems(Update, (show, shine).after(display));
}
