//! Solids that never move against each other become one mesh for each material: what a frame costs grows
//! with the number of things in it.

use crate::pointing::Pick;
use bevy::light::NotShadowCaster;
use bevy::prelude::*;

/// Everything under this entity keeps its place against it, but for what is [`Apart`].
#[derive(Component, Default)]
pub struct Still;

/// Moves, hides or is replaced by itself, with all that hangs on it.
#[derive(Component, Default)]
pub struct Apart;

/// What solids must share to be drawn as one.
#[derive(PartialEq)]
struct Alike {
    material: Handle<StandardMaterial>,
    pick: Option<Pick>,
    casts_shadow: bool,
}

/// The solids of one kind under one entity, and their meshes in its space.
struct Group {
    alike: Alike,
    solids: Vec<Entity>,
    mesh: Mesh,
}

type Solid = (
    &'static Mesh3d,
    &'static MeshMaterial3d<StandardMaterial>,
    Option<&'static Pick>,
    Has<NotShadowCaster>,
);

/// Joins what hangs on each new [`Still`] entity.
pub fn join(
    new: Query<Entity, Added<Still>>,
    children: Query<&Children>,
    apart: Query<(), With<Apart>>,
    places: Query<&Transform>,
    solids: Query<Solid>,
    mut meshes: ResMut<Assets<Mesh>>,
    mut commands: Commands,
) {
    let below = |entity: Entity, place: Transform| {
        let children = children.get(entity).into_iter().flatten();
        children.map(move |child| (*child, place))
    };
    for root in &new {
        let mut groups: Vec<Group> = Vec::new();
        let mut left: Vec<(Entity, Transform)> = below(root, Transform::IDENTITY).collect();
        while let Some((entity, above)) = left.pop() {
            if apart.contains(entity) {
                continue;
            }
            let place = places.get(entity).map_or(above, |own| above * *own);
            left.extend(below(entity, place));
            let Ok((mesh, material, pick, shadowless)) = solids.get(entity) else {
                continue;
            };
            let Some(mesh) = meshes.get(&mesh.0).cloned() else {
                continue;
            };
            let mesh = mesh.transformed_by(place);
            let alike = Alike {
                material: material.0.clone(),
                pick: pick.copied(),
                casts_shadow: !shadowless,
            };
            match groups.iter_mut().find(|group| group.alike == alike) {
                // One with other attributes than the rest stays by itself.
                Some(group) => {
                    if group.mesh.merge(&mesh).is_ok() {
                        group.solids.push(entity);
                    }
                }
                None => groups.push(Group {
                    alike,
                    solids: vec![entity],
                    mesh,
                }),
            }
        }
        for group in groups.into_iter().filter(|group| group.solids.len() > 1) {
            for solid in group.solids {
                if children.contains(solid) {
                    let mut solid = commands.entity(solid);
                    solid.remove::<(Mesh3d, MeshMaterial3d<StandardMaterial>)>();
                } else {
                    commands.entity(solid).despawn();
                }
            }
            let Alike {
                material,
                pick,
                casts_shadow,
            } = group.alike;
            let mesh = Mesh3d(meshes.add(group.mesh));
            let mut joined = commands.spawn((mesh, MeshMaterial3d(material), ChildOf(root)));
            if let Some(pick) = pick {
                joined.insert(pick);
            }
            if !casts_shadow {
                joined.insert(NotShadowCaster);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::mesh::block;

    #[test]
    fn what_never_moves_is_drawn_as_one_and_where_it_was() {
        let mut app = App::new();
        app.add_plugins((MinimalPlugins, AssetPlugin::default()))
            .init_asset::<Mesh>()
            .init_asset::<StandardMaterial>()
            .add_systems(Update, join);
        let world = app.world_mut();
        let mesh = world
            .resource_mut::<Assets<Mesh>>()
            .add(block(0.2, 0.2, 0.2, 0.01, 0.005).mesh(40.0));
        let mut materials = world.resource_mut::<Assets<StandardMaterial>>();
        let [red, blue] = [(); 2].map(|()| materials.add(StandardMaterial::default()));
        let root = world
            .spawn((Still, Transform::from_xyz(5.0, 0.0, 0.0)))
            .id();
        let content_library = world
            .spawn((Transform::from_xyz(0.0, 1.0, 0.0), ChildOf(root)))
            .id();
        let mut add = |material: &Handle<StandardMaterial>, x: f32, parent| {
            let solid = (Mesh3d(mesh.clone()), MeshMaterial3d(material.clone()));
            let place = Transform::from_xyz(x, 0.0, 0.0);
            world.spawn((solid, place, ChildOf(parent))).id()
        };
        add(&red, 0.0, root);
        add(&red, 2.0, content_library);
        let alone = add(&blue, 0.0, root);
        let lid = add(&red, 0.0, root);
        world.entity_mut(lid).insert(Apart);
        app.update();

        let world = app.world_mut();
        let mut solids = world.query::<(Entity, &Mesh3d, &MeshMaterial3d<StandardMaterial>)>();
        let found: Vec<_> = solids
            .iter(world)
            .map(|(entity, mesh, material)| (entity, mesh.0.clone(), material.0.clone()))
            .collect();
        assert_eq!(found.len(), 3, "two became one");
        let (_, joined, _) = found
            .iter()
            .find(|(entity, ..)| ![alone, lid].contains(entity))
            .expect("the two red ones");
        let joined = world.resource::<Assets<Mesh>>().get(joined);
        let points = joined.and_then(|mesh| mesh.attribute(Mesh::ATTRIBUTE_POSITION));
        let points = points
            .and_then(|points| points.as_float3())
            .expect("places");
        let (mut least, mut most) = (Vec3::INFINITY, Vec3::NEG_INFINITY);
        for point in points {
            least = least.min(Vec3::from_array(*point));
            most = most.max(Vec3::from_array(*point));
        }
        assert!((most.x - 2.1).abs() < 0.01 && (least.x + 0.1).abs() < 0.01);
        assert!(most.y > 1.0 && least.y < 0.01);
    }
}
