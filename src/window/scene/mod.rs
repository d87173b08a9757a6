//! What stands in the room: all of it made in code.

pub mod console;
pub mod inside;
pub mod lights;
pub mod mesh;
pub mod paint;
pub mod probes;
pub mod room;
pub mod strokes;
pub mod washer;

use bevy::prelude::*;
use mesh::Shape;
use paint::Paint;

/// Everything needed to put solids into the world.
#[derive(bevy::ecs::system::SystemParam)]
pub struct Maker<'w, 's> {
    /// Spawns.
    pub commands: Commands<'w, 's>,
    /// Meshes.
    pub meshes: ResMut<'w, Assets<Mesh>>,
    /// Images.
    pub images: ResMut<'w, Assets<Image>>,
    /// Materials.
    pub materials: ResMut<'w, Assets<StandardMaterial>>,
    /// Shared materials.
    pub paint: Res<'w, Paint>,
}

impl Maker<'_, '_> {
    /// A solid thing under `parent`; edges sharper than 40° stay sharp.
    pub fn add(
        &mut self,
        parent: Entity,
        shape: Shape,
        material: &Handle<StandardMaterial>,
        place: Transform,
    ) -> Entity {
        let mesh = self.meshes.add(shape.mesh(40.0));
        self.commands
            .spawn((
                Mesh3d(mesh),
                MeshMaterial3d(material.clone()),
                place,
                ChildOf(parent),
            ))
            .id()
    }

    /// An empty place under `parent`.
    pub fn group(&mut self, parent: Option<Entity>, place: Transform) -> Entity {
        let mut entity = self.commands.spawn((place, Visibility::default()));
        if let Some(parent) = parent {
            entity.insert(ChildOf(parent));
        }
        entity.id()
    }
}

/// Shorthand for a place.
pub fn at(x: f32, y: f32, z: f32) -> Transform {
    Transform::from_xyz(x, y, z)
}

/// Moves `value` towards `goal` with time constant `lag_s`.
pub fn ease(value: f32, goal: f32, lag_s: f32, dt: f32) -> f32 {
    goal + (value - goal) * (-dt / lag_s).exp()
}

fn mix_paint(
    mut commands: Commands,
    mut images: ResMut<Assets<Image>>,
    mut materials: ResMut<Assets<StandardMaterial>>,
) {
    commands.insert_resource(Paint::new(&mut images, &mut materials));
}

/// The whole scene.
pub fn plugin(app: &mut App) {
    app.add_systems(PreStartup, mix_paint).add_plugins((
        lights::plugin,
        room::plugin,
        washer::plugin,
        console::plugin,
        inside::plugin,
        probes::plugin,
    ));
}
