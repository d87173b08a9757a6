//! Puts solids into the world.

use super::mesh::Shape;
use super::paint::Paint;
use bevy::prelude::*;

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
