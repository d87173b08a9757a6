//! The meter on its stool, the two probes at their pins and the leads between.

use super::displayed::{DisplayedMachine, display};
use super::inside::pin_place;
use super::maker::{Maker, at};
use super::mesh::{block, drum, lathe, rounded_xy, stamp, tube};
use super::still::Still;
use crate::state::{BenchRes, UiState};
use bevy::prelude::*;
use detent_simulation::interface::Pin;

const METER: Vec3 = Vec3::new(0.70, 0.435, 0.26);

/// One probe: red or black.
#[derive(Component)]
struct Probe {
    red: bool,
    at: Option<Pin>,
}

/// Its lead.
#[derive(Component)]
struct Lead(bool);

fn spawn(mut make: Maker) {
    let make = &mut make;
    let paint = make.paint.clone();
    let stool = make.group(None, at(METER.x, 0.0, METER.z));
    make.commands.entity(stool).insert(Still);
    make.add(
        stool,
        drum(0.145, 0.024, 0.008, 36),
        &paint.wood,
        at(0.0, 0.40, 0.0),
    );
    for (x, z) in [(1.0f32, 1.0f32), (-1.0, 1.0), (1.0, -1.0), (-1.0, -1.0)] {
        make.add(
            stool,
            tube(
                &[
                    Vec3::new(x * 0.075, 0.40, z * 0.075),
                    Vec3::new(x * 0.115, 0.0, z * 0.115),
                ],
                0.011,
                10,
            ),
            &paint.dark,
            Transform::IDENTITY,
        );
    }
    super::room::ground(make, stool, at(0.0, 0.004, 0.0), 0.44, 0.44);
    let lean = Quat::from_rotation_y(-0.25) * Quat::from_rotation_x(-0.5);
    let meter = make.group(Some(stool), at(0.0, 0.50, 0.0).with_rotation(lean));
    make.add(
        meter,
        stamp(&rounded_xy(0.098, 0.172, 0.02), 0.036, 0.010),
        &paint.amber,
        at(0.0, 0.0, -0.036),
    );
    make.add(
        meter,
        stamp(&rounded_xy(0.082, 0.156, 0.014), 0.006, 0.003),
        &paint.dark,
        at(0.0, 0.0, -0.001),
    );
    let lcd = make.materials.add(StandardMaterial {
        base_color: Color::srgb_u8(0xb4, 0xc2, 0xa0),
        emissive: LinearRgba::rgb(0.25, 0.30, 0.2),
        perceptual_roughness: 0.3,
        ..default()
    });
    make.add(
        meter,
        stamp(&rounded_xy(0.066, 0.042, 0.005), 0.003, 0.001),
        &lcd,
        at(0.0, 0.045, 0.004),
    );
    let knob = lathe(
        &[(0.0, 0.0), (0.021, 0.0), (0.019, 0.010), (0.0, 0.011)],
        28,
    )
    .moved(Transform::from_rotation(Quat::from_rotation_x(
        std::f32::consts::FRAC_PI_2,
    )));
    make.add(meter, knob, &paint.teal, at(0.0, -0.018, 0.004));
    for (x, colour) in [(-0.018, &paint.rubber), (0.018, &paint.red)] {
        let jack = drum(0.007, 0.012, 0.002, 16).moved(Transform::from_rotation(
            Quat::from_rotation_x(std::f32::consts::FRAC_PI_2),
        ));
        make.add(meter, jack, colour, at(x, -0.062, 0.004));
    }
    for (red, colour) in [(true, &paint.red), (false, &paint.rubber)] {
        let probe = make.group(None, Transform::IDENTITY);
        make.commands
            .entity(probe)
            .insert((Probe { red, at: None }, Visibility::Hidden));
        let tip = lathe(
            &[(0.0, 0.0), (0.0012, 0.006), (0.0015, 0.022), (0.0, 0.022)],
            10,
        );
        make.add(probe, tip, &paint.chrome, Transform::IDENTITY);
        let grip = lathe(
            &[
                (0.0, 0.02),
                (0.0042, 0.021),
                (0.0078, 0.030),
                (0.0050, 0.036),
                (0.0062, 0.075),
                (0.0045, 0.10),
                (0.0, 0.102),
            ],
            16,
        );
        make.add(probe, grip, colour, Transform::IDENTITY);
        let lead = make.add(
            probe,
            block(0.001, 0.001, 0.001, 0.0004, 0.0002),
            colour,
            Transform::IDENTITY,
        );
        make.commands.entity(lead).remove::<ChildOf>();
        make.commands
            .entity(lead)
            .insert((Lead(red), Visibility::Hidden));
    }
}

/// How a probe is held: away from its pin, towards the hand.
fn hold(red: bool) -> Vec3 {
    Vec3::new(if red { 0.62 } else { 0.30 }, 0.34, 0.85).normalize()
}

fn place(
    bench: Res<BenchRes>,
    displayed: Res<DisplayedMachine>,
    ui_state: Res<UiState>,
    mut meshes: ResMut<Assets<Mesh>>,
    mut probes: Query<(&mut Probe, &mut Transform, &mut Visibility)>,
    mut leads: Query<(&Lead, &mut Mesh3d, &mut Visibility), Without<Probe>>,
) {
    let view = bench.view();
    let touching = view.probes.map(|(_, red, black)| (red, black));
    for (mut probe, mut place, mut visibility) in &mut probes {
        let chosen = if probe.red {
            ui_state.red
        } else {
            ui_state.black
        };
        let pin = touching
            .map(|(red, black)| if probe.red { red } else { black })
            .or(chosen)
            .filter(|_| displayed.probes && (view.cabinet_open || touching.is_some()));
        visibility.set_if_neq(if pin.is_some() {
            Visibility::Inherited
        } else {
            Visibility::Hidden
        });
        for (lead, _, mut shown) in &mut leads {
            if lead.0 == probe.red {
                shown.set_if_neq(if pin.is_some() {
                    Visibility::Inherited
                } else {
                    Visibility::Hidden
                });
            }
        }
        if probe.at == pin {
            continue;
        }
        probe.at = pin;
        let Some(pin) = pin else { continue };
        let spot = pin_place(&bench.job().board, pin);
        let out = hold(probe.red);
        *place =
            Transform::from_translation(spot).with_rotation(Quat::from_rotation_arc(Vec3::Y, out));
        let end = spot + out * 0.10;
        let jack = METER + Vec3::new(if probe.red { 0.02 } else { -0.016 }, 0.02, 0.03);
        let sag = (end + jack) / 2.0 + Vec3::new(0.0, -0.16, 0.10);
        let path = [
            end,
            end + out * 0.05 + Vec3::new(0.0, -0.02, 0.0),
            sag,
            jack + Vec3::new(-0.02, -0.05, 0.06),
            jack,
        ];
        for (lead, mut mesh, _) in &mut leads {
            if lead.0 == probe.red {
                mesh.0 = meshes.add(tube(&path, 0.0026, 8).mesh(40.0));
            }
        }
    }
}

/// The meter's probes.
pub fn plugin(app: &mut App) {
    app.add_systems(Startup, spawn)
        .add_systems(Update, place.after(display));
}
