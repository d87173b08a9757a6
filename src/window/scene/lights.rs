//! Warm key from a pendant, cool window, soft surroundings.

use super::paint;
use crate::camera::SceneTarget;
use bevy::light::{DirectionalLightShadowMap, ShadowFilteringMethod};
use bevy::prelude::*;

/// Light every camera sees the room by.
pub fn surroundings(images: &mut Assets<Image>) -> EnvironmentMapLight {
    EnvironmentMapLight {
        diffuse_map: images.add(paint::environment(8, Some(1.6))),
        specular_map: images.add(paint::environment(64, None)),
        intensity: 680.0,
        ..default()
    }
}

/// Shadows with soft edges; a browser's share of the graphics card is too small for them.
const SOFT: bool = cfg!(not(target_family = "wasm"));

/// How the edges of shadows are drawn.
pub fn shadow_edges() -> ShadowFilteringMethod {
    if SOFT {
        ShadowFilteringMethod::Gaussian
    } else {
        ShadowFilteringMethod::Hardware2x2
    }
}

fn spawn(mut commands: Commands) {
    commands.insert_resource(GlobalAmbientLight::NONE);
    commands.insert_resource(DirectionalLightShadowMap {
        size: if SOFT { 2048 } else { 1024 },
    });
    commands.spawn((
        SpotLight {
            color: Color::srgb(1.0, 0.93, 0.83),
            intensity: 1_750_000.0,
            range: 12.0,
            inner_angle: 0.30,
            outer_angle: 0.62,
            shadow_maps_enabled: true,
            shadow_depth_bias: 0.015,
            shadow_normal_bias: 1.2,
            ..default()
        },
        Transform::from_xyz(-1.7, 3.1, 2.5).looking_at(Vec3::new(0.05, 0.55, -0.05), Vec3::Y),
    ));
    commands.spawn((
        DirectionalLight {
            color: Color::srgb(0.74, 0.87, 1.0),
            illuminance: 2_400.0,
            ..default()
        },
        Transform::from_xyz(3.2, 1.5, -0.9).looking_at(Vec3::new(0.0, 0.6, 0.0), Vec3::Y),
    ));
}

/// Without a graphics card the shadows go first, so that there is time for more pixels; the dark patch on the
/// floor stays.
fn save_shadows(lens: Res<SceneTarget>, mut lights: Query<&mut SpotLight, Added<SpotLight>>) {
    for mut light in &mut lights {
        light.shadow_maps_enabled &= !lens.software;
    }
}

/// Lights.
pub fn plugin(app: &mut App) {
    app.add_systems(Startup, spawn)
        .add_systems(Update, save_shadows);
}
