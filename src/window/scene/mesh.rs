//! Solids from rings of points. Everything in the scene is made with these few moves.

use bevy::asset::RenderAssetUsages;
use bevy::mesh::{Indices, PrimitiveTopology};
use bevy::platform::collections::HashMap;
use bevy::prelude::*;
use std::f32::consts::{PI, TAU};

/// Triangles under construction. Positions in metres.
#[derive(Clone, Default)]
pub struct Shape {
    points: Vec<Vec3>,
    uvs: Vec<Vec2>,
    tris: Vec<[u32; 3]>,
}

/// Normal and texture place of a vertex, in whole steps.
type Look = ([i32; 3], [i32; 2]);

/// The nearest whole numbers. `Vec3::round` calls the C library three times.
fn nearest(steps: Vec3) -> IVec3 {
    (steps + 0.5 * steps.signum()).as_ivec3()
}

/// Ends a chain of vertices.
const NO_VERTEX: u32 = u32::MAX;

impl Shape {
    fn push(&mut self, point: Vec3, uv: Vec2) -> u32 {
        self.points.push(point);
        self.uvs.push(uv);
        self.points.len() as u32 - 1
    }

    /// A triangle, anticlockwise seen from outside.
    pub fn tri(&mut self, a: Vec3, b: Vec3, c: Vec3) {
        let first = self.push(a, Vec2::ZERO);
        self.push(b, Vec2::X);
        self.push(c, Vec2::Y);
        self.tris.push([first, first + 1, first + 2]);
    }

    /// Skin through `rings`, each with the same number of points. Rings whose angle grows from +X
    /// to +Z and that climb along +Y show their outside. `closed` joins last point to first.
    pub fn loft(rings: &[Vec<Vec3>], closed: bool) -> Shape {
        let mut shape = Shape::default();
        let count = rings[0].len();
        let columns = if closed { count + 1 } else { count };
        for (i, ring) in rings.iter().enumerate() {
            for j in 0..columns {
                let u = j as f32 / (columns - 1) as f32;
                let v = i as f32 / (rings.len() - 1).max(1) as f32;
                shape.push(ring[j % count], Vec2::new(u, v));
            }
        }
        for i in 0..rings.len() - 1 {
            for j in 0..columns - 1 {
                let at = |i: usize, j: usize| (i * columns + j) as u32;
                shape.tris.push([at(i, j), at(i + 1, j), at(i + 1, j + 1)]);
                shape.tris.push([at(i, j), at(i + 1, j + 1), at(i, j + 1)]);
            }
        }
        shape
    }

    /// Close `ring` with a fan; `up` for the side that looks to where the rings climb.
    pub fn cap(&mut self, ring: &[Vec3], up: bool) {
        let centre = ring.iter().sum::<Vec3>() / ring.len() as f32;
        let middle = self.push(centre, Vec2::splat(0.5));
        let first = self.points.len() as u32;
        for point in ring {
            let d = *point - centre;
            self.push(*point, Vec2::new(d.x, d.z));
        }
        let count = ring.len() as u32;
        for j in 0..count {
            let (a, b) = (first + j, first + (j + 1) % count);
            self.tris
                .push(if up { [middle, b, a] } else { [middle, a, b] });
        }
    }

    /// Add `other`, moved.
    #[must_use]
    pub fn with(mut self, other: Shape, place: Transform) -> Shape {
        let first = self.points.len() as u32;
        let matrix = place.to_matrix();
        self.points
            .extend(other.points.iter().map(|p| matrix.transform_point3(*p)));
        self.uvs.extend(other.uvs);
        let mirrored = matrix.determinant() < 0.0;
        self.tris.extend(other.tris.iter().map(|t| {
            let [a, b, c] = t.map(|i| i + first);
            if mirrored { [a, c, b] } else { [a, b, c] }
        }));
        self
    }

    /// The same, moved.
    #[must_use]
    pub fn moved(self, place: Transform) -> Shape {
        Shape::default().with(self, place)
    }

    /// For each point the number of its place, and how many places there are: points closer than a twentieth of a
    /// millimetre share one.
    fn places(&self) -> (Vec<usize>, usize) {
        let mut known: HashMap<[i32; 3], usize> = HashMap::with_capacity(self.points.len());
        let places = (self.points.iter())
            .map(|point| {
                let next = known.len();
                let steps = *point * 20_000.0;
                *known.entry(nearest(steps).to_array()).or_insert(next)
            })
            .collect();
        (places, known.len())
    }

    /// A thin skin around the shape, turned inside out: drawn without its near faces it is an outline.
    pub fn hull(&self, by: f32) -> Mesh {
        let mut out = self.clone();
        for tri in &mut out.tris {
            tri.swap(1, 2);
        }
        let (place_of, places) = self.places();
        let mut normals = vec![Vec3::ZERO; places];
        for tri in &self.tris {
            let [a, b, c] = tri.map(|j| self.points[j as usize]);
            let normal = (b - a).cross(c - a).normalize_or_zero();
            for j in tri {
                normals[place_of[*j as usize]] += normal;
            }
        }
        for (point, place) in out.points.iter_mut().zip(&place_of) {
            *point += normals[*place].normalize_or_zero() * by;
        }
        out.mesh(180.0)
    }

    /// Ready to draw: edges sharper than `crease_deg` stay sharp, others are shaded smooth.
    pub fn mesh(self, crease_deg: f32) -> Mesh {
        let (place_of, places) = self.places();
        let faces: Vec<(Vec3, Vec3)> = (self.tris.iter())
            .map(|tri| {
                let [a, b, c] = tri.map(|j| self.points[j as usize]);
                let cross = (b - a).cross(c - a);
                (cross, cross.normalize_or_zero())
            })
            .collect();
        // The faces at each place lie side by side.
        let corners = || {
            (self.tris.iter().enumerate())
                .flat_map(|(face, tri)| tri.map(|j| (face, place_of[j as usize])))
        };
        let mut ends = vec![0; places + 1];
        corners().for_each(|(_, place)| ends[place + 1] += 1);
        for place in 0..places {
            ends[place + 1] += ends[place];
        }
        let starts = ends.clone();
        let mut faces_at = vec![0; self.tris.len() * 3];
        for (face, place) in corners() {
            faces_at[ends[place]] = face;
            ends[place] += 1;
        }
        let limit = crease_deg.to_radians().cos();
        let half_limit = (0.5 * crease_deg.to_radians()).cos();
        // Where every face lies within half the crease of their mean, none is sharp against another: one sum for
        // all. The middle of a disc has hundreds.
        let smooth: Vec<Option<Vec3>> = (0..places)
            .map(|place| {
                let here = || faces_at[starts[place]..ends[place]].iter();
                let sum: Vec3 = here().map(|f| faces[*f].0).sum();
                let mean = sum.normalize_or_zero();
                (here().all(|f| faces[*f].1.dot(mean) > half_limit)).then_some(sum)
            })
            .collect();
        let mut positions = Vec::new();
        let mut normals = Vec::new();
        let mut uvs = Vec::new();
        let mut indices = Vec::with_capacity(self.tris.len() * 3);
        // The vertices of each place are chained, the newest first.
        let mut newest = vec![NO_VERTEX; places];
        let mut chain: Vec<(Look, u32)> = Vec::new();
        for (i, tri) in self.tris.iter().enumerate() {
            if faces[i].1 == Vec3::ZERO {
                continue;
            }
            for j in tri.map(|j| j as usize) {
                let place = place_of[j];
                let normal = smooth[place].unwrap_or_else(|| {
                    (faces_at[starts[place]..ends[place]].iter())
                        .filter(|f| faces[**f].1.dot(faces[i].1) >= limit)
                        .map(|f| faces[*f].0)
                        .sum()
                });
                let normal = normal.normalize_or(faces[i].1);
                let uv = self.uvs[j];
                // Corners that are the same in every way are one vertex.
                let look: Look = (
                    nearest(normal * 500.0).to_array(),
                    nearest((uv * 4_000.0).extend(0.0)).truncate().to_array(),
                );
                let mut vertex = newest[place];
                while vertex != NO_VERTEX && chain[vertex as usize].0 != look {
                    vertex = chain[vertex as usize].1;
                }
                if vertex == NO_VERTEX {
                    vertex = chain.len() as u32;
                    chain.push((look, newest[place]));
                    newest[place] = vertex;
                    positions.push(self.points[j]);
                    normals.push(normal);
                    uvs.push(uv);
                }
                indices.push(vertex);
            }
        }
        Mesh::new(
            PrimitiveTopology::TriangleList,
            RenderAssetUsages::MAIN_WORLD | RenderAssetUsages::RENDER_WORLD,
        )
        .with_inserted_attribute(Mesh::ATTRIBUTE_POSITION, positions)
        .with_inserted_attribute(Mesh::ATTRIBUTE_NORMAL, normals)
        .with_inserted_attribute(Mesh::ATTRIBUTE_UV_0, uvs)
        .with_inserted_indices(Indices::U32(indices))
    }
}

/// Rounded rectangle in X and Z.
pub fn rounded(width: f32, depth: f32, radius: f32, per_corner: usize) -> Vec<Vec2> {
    let radius = radius.min(width / 2.0).min(depth / 2.0).max(1e-4);
    let corners = [(1.0, 1.0), (-1.0, 1.0), (-1.0, -1.0), (1.0, -1.0)];
    let mut points = Vec::new();
    for (i, (sx, sz)) in corners.into_iter().enumerate() {
        let centre = Vec2::new(sx * (width / 2.0 - radius), sz * (depth / 2.0 - radius));
        for k in 0..=per_corner {
            let angle = (i as f32 + k as f32 / per_corner as f32) * PI / 2.0;
            points.push(centre + Vec2::from_angle(angle) * radius);
        }
    }
    points
}

/// Circle in X and Z.
pub fn circle(radius: f32, count: usize) -> Vec<Vec2> {
    (0..count)
        .map(|i| Vec2::from_angle(i as f32 / count as f32 * TAU) * radius)
        .collect()
}

/// `outline` lifted to height `y`.
pub fn ring(outline: &[Vec2], y: f32) -> Vec<Vec3> {
    outline.iter().map(|p| Vec3::new(p.x, y, p.y)).collect()
}

/// Solid of revolution around Y through (radius, height) pairs, from the bottom outwards and up.
pub fn lathe(profile: &[(f32, f32)], segments: usize) -> Shape {
    let rings: Vec<_> = profile
        .iter()
        .map(|(r, y)| ring(&circle(r.max(1e-5), segments), *y))
        .collect();
    Shape::loft(&rings, true)
}

/// Quarter-round steps (inset, rise) from the side to the top of an edge of `radius`.
pub fn edge(radius: f32, steps: usize) -> impl Iterator<Item = (f32, f32)> {
    (0..=steps).map(move |i| {
        let a = i as f32 / steps as f32 * PI / 2.0;
        (radius * (1.0 - a.cos()), radius * a.sin())
    })
}

/// Box standing on y = 0 with rounded upright edges and softened top and bottom.
pub fn block(width: f32, height: f32, depth: f32, corner: f32, soft: f32) -> Shape {
    let at = |inset: f32, y: f32| {
        ring(
            &rounded(
                width - 2.0 * inset,
                depth - 2.0 * inset,
                (corner - inset).max(soft * 0.2),
                4,
            ),
            y,
        )
    };
    let mut rings: Vec<_> = edge(soft, 3)
        .collect::<Vec<_>>()
        .into_iter()
        .rev()
        .map(|(inset, rise)| at(inset, soft - rise))
        .collect();
    rings.extend(edge(soft, 3).map(|(inset, rise)| at(inset, height - soft + rise)));
    let mut shape = Shape::loft(&rings, true);
    shape.cap(&rings[0], false);
    shape.cap(&rings[rings.len() - 1], true);
    shape
}

/// Cylinder standing on y = 0 with softened rims.
pub fn drum(radius: f32, height: f32, soft: f32, segments: usize) -> Shape {
    let mut profile = vec![(0.0, 0.0)];
    profile.extend(
        edge(soft, 3)
            .collect::<Vec<_>>()
            .into_iter()
            .rev()
            .map(|(inset, rise)| (radius - inset, soft - rise)),
    );
    profile.extend(edge(soft, 3).map(|(inset, rise)| (radius - inset, height - soft + rise)));
    profile.push((0.0, height));
    lathe(&profile, segments)
}

/// Plate in X and Z, from y = 0 up to `height`, with a rounded hole; both rims softened.
pub fn plate_with_hole(
    outer: (f32, f32, f32),
    hole: (f32, f32, f32, Vec2),
    height: f32,
    soft: f32,
) -> Shape {
    let out = |inset: f32| {
        rounded(
            outer.0 - 2.0 * inset,
            outer.1 - 2.0 * inset,
            outer.2 - inset,
            8,
        )
    };
    let inn = |grow: f32| -> Vec<Vec2> {
        rounded(hole.0 + 2.0 * grow, hole.1 + 2.0 * grow, hole.2 + grow, 8)
            .into_iter()
            .map(|p| p + hole.3)
            .collect()
    };
    let mut rings = vec![ring(&out(0.0), 0.0)];
    rings.extend(edge(soft, 4).map(|(inset, rise)| ring(&out(inset), height - soft + rise)));
    let rim: Vec<_> = edge(soft, 4).collect();
    rings.extend(
        rim.iter()
            .rev()
            .map(|(inset, rise)| ring(&inn(*inset), height - soft + rise)),
    );
    rings.push(ring(&inn(0.0), 0.0));
    Shape::loft(&rings, true)
}

/// Wall of `thickness` standing on y = 0 along `path` in X and Z; outside to the left of travel
/// as the angle grows from +X to +Z.
pub fn wall(path: &[Vec2], height: f32, thickness: f32) -> Shape {
    let normals: Vec<Vec2> = (0..path.len())
        .map(|i| {
            let a = path[i.saturating_sub(1)];
            let b = path[(i + 1).min(path.len() - 1)];
            let t = (b - a).normalize_or_zero();
            Vec2::new(t.y, -t.x)
        })
        .collect();
    let inner: Vec<Vec2> = path
        .iter()
        .zip(&normals)
        .map(|(p, n)| *p - *n * thickness)
        .collect();
    let rings = [
        ring(&inner, 0.0),
        ring(path, 0.0),
        ring(path, height),
        ring(&inner, height),
        ring(&inner, 0.0),
    ];
    let mut shape = Shape::loft(&rings, false);
    for (end, first) in [(0, true), (path.len() - 1, false)] {
        let quad = [rings[0][end], rings[1][end], rings[2][end], rings[3][end]];
        shape.cap(&quad, first);
    }
    shape
}

/// Flat-based prism on the XY plane, growing `depth` towards +Z, its front edge softened.
/// `outline` runs anticlockwise.
pub fn stamp(outline: &[Vec2], depth: f32, soft: f32) -> Shape {
    let count = outline.len();
    let offset = |by: f32| -> Vec<Vec2> {
        (0..count)
            .map(|i| {
                let a = outline[(i + count - 1) % count];
                let b = outline[i];
                let c = outline[(i + 1) % count];
                let n = |p: Vec2, q: Vec2| {
                    let t = (q - p).normalize_or_zero();
                    Vec2::new(-t.y, t.x)
                };
                let m = (n(a, b) + n(b, c)).normalize_or_zero();
                b + m * by
            })
            .collect()
    };
    // Mirrored so that the outline's sense fits the loft's, then laid from Y to Z.
    let lift = |points: Vec<Vec2>, y: f32| -> Vec<Vec3> {
        points
            .iter()
            .rev()
            .map(|p| Vec3::new(p.x, y, -p.y))
            .collect()
    };
    let mut rings = vec![lift(outline.to_vec(), 0.0)];
    rings.extend(edge(soft, 3).map(|(inset, rise)| lift(offset(inset), depth - soft + rise)));
    let mut shape = Shape::loft(&rings, true);
    shape.cap(&rings[rings.len() - 1], true);
    shape.moved(Transform::from_rotation(Quat::from_rotation_x(PI / 2.0)))
}

/// Convex outline as a path anticlockwise in XY: a rounded rectangle.
pub fn rounded_xy(width: f32, height: f32, radius: f32) -> Vec<Vec2> {
    rounded(width, height, radius, 6)
}

/// `outline` with every corner rounded.
pub fn fillet(outline: &[Vec2], radius: f32) -> Vec<Vec2> {
    let count = outline.len();
    let mut points = Vec::new();
    for i in 0..count {
        let (a, b, c) = (
            outline[(i + count - 1) % count],
            outline[i],
            outline[(i + 1) % count],
        );
        let cut = radius.min(a.distance(b) / 2.2).min(c.distance(b) / 2.2);
        let (from, to) = (b + (a - b).normalize() * cut, b + (c - b).normalize() * cut);
        for k in 0..=5 {
            let t = k as f32 / 5.0;
            points.push(from.lerp(b, t).lerp(b.lerp(to, t), t));
        }
    }
    points
}

/// Flat ring on the XY plane, facing +Z, from angle `from` to `to` (radians from +X).
pub fn arc_band(radius: f32, width: f32, from: f32, to: f32, z: f32) -> Shape {
    let steps = (((to - from).abs() / TAU * 72.0).ceil() as usize).max(2);
    let mut shape = Shape::default();
    let at = |i: usize, r: f32| {
        (Vec2::from_angle(from + (to - from) * i as f32 / steps as f32) * r).extend(z)
    };
    let (inner, outer) = (radius - width / 2.0, radius + width / 2.0);
    for i in 0..steps {
        shape.tri(at(i, inner), at(i, outer), at(i + 1, outer));
        shape.tri(at(i, inner), at(i + 1, outer), at(i + 1, inner));
    }
    shape
}

/// Flat rectangle on the XY plane facing +Z.
pub fn card(width: f32, height: f32) -> Shape {
    let (x, y) = (width / 2.0, height / 2.0);
    let mut shape = Shape::default();
    let corner = |sx: f32, sy: f32| {
        (
            Vec3::new(sx * x, sy * y, 0.0),
            Vec2::new(sx * 0.5 + 0.5, 0.5 - sy * 0.5),
        )
    };
    let ids = [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)].map(|(sx, sy)| {
        let (p, uv) = corner(sx, sy);
        shape.push(p, uv)
    });
    shape.tris.push([ids[0], ids[1], ids[2]]);
    shape.tris.push([ids[0], ids[2], ids[3]]);
    shape
}

/// Round bar along `points`, smoothed.
pub fn tube(points: &[Vec3], radius: f32, sides: usize) -> Shape {
    let path = smooth(points);
    let mut rings = Vec::with_capacity(path.len());
    let mut normal = Vec3::Y;
    for i in 0..path.len() {
        let a = path[i.saturating_sub(1)];
        let b = path[(i + 1).min(path.len() - 1)];
        let along = (b - a).normalize_or(Vec3::X);
        normal = (normal - along * normal.dot(along)).normalize_or(along.any_orthonormal_vector());
        let side = along.cross(normal);
        rings.push(
            (0..sides)
                .map(|j| {
                    let (sin, cos) = (j as f32 / sides as f32 * TAU).sin_cos();
                    path[i] + (side * cos + normal * sin) * radius
                })
                .collect::<Vec<_>>(),
        );
    }
    let mut shape = Shape::loft(&rings, true);
    shape.cap(&rings[0], false);
    shape.cap(&rings[rings.len() - 1], true);
    shape
}

/// What a piece of a smooth curve may turn, rad: less is not seen.
const TURN_OF_A_PIECE: f32 = 0.16;

/// Catmull–Rom curve through `points`, in one to eight pieces between each pair, as it bends.
fn smooth(points: &[Vec3]) -> Vec<Vec3> {
    if points.len() < 3 {
        return points.to_vec();
    }
    let mut path = Vec::new();
    for i in 0..points.len() - 1 {
        let p0 = points[i.saturating_sub(1)];
        let (p1, p2) = (points[i], points[i + 1]);
        let p3 = points[(i + 2).min(points.len() - 1)];
        let turn = (p2 - p0).angle_between(p2 - p1) + (p2 - p1).angle_between(p3 - p1);
        let steps = ((turn / TURN_OF_A_PIECE).ceil() as usize).clamp(1, 8);
        for k in 0..steps {
            let t = k as f32 / steps as f32;
            path.push(
                0.5 * (2.0 * p1
                    + (p2 - p0) * t
                    + (2.0 * p0 - 5.0 * p1 + 4.0 * p2 - p3) * t * t
                    + (3.0 * p1 - p0 - 3.0 * p2 + p3) * t * t * t),
            );
        }
    }
    path.push(points[points.len() - 1]);
    path
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Volume by the divergence theorem; positive only when the faces look outwards.
    fn volume(shape: &Shape) -> f32 {
        shape
            .tris
            .iter()
            .map(|t| {
                let [a, b, c] = t.map(|i| shape.points[i as usize]);
                a.dot(b.cross(c)) / 6.0
            })
            .sum()
    }

    #[test]
    fn solids_look_outwards_and_have_their_volume() {
        let cube = block(1.0, 1.0, 1.0, 0.01, 0.01);
        assert!((volume(&cube) - 1.0).abs() < 0.01, "{}", volume(&cube));
        let can = drum(1.0, 1.0, 0.01, 64);
        assert!((volume(&can) - PI).abs() < 0.05, "{}", volume(&can));
        let bar = tube(&[Vec3::ZERO, Vec3::X], 0.1, 32);
        assert!((volume(&bar) - 0.0314).abs() < 0.001, "{}", volume(&bar));
        let ring = plate_with_hole((2.0, 2.0, 0.1), (1.0, 1.0, 0.1, Vec2::ZERO), 1.0, 0.01);
        assert!((volume(&ring) - 3.0).abs() < 0.05, "{}", volume(&ring));
        let fence = wall(&[Vec2::new(1.0, 0.0), Vec2::new(-1.0, 0.0)], 1.0, 0.1);
        assert!((volume(&fence) - 0.2).abs() < 0.01, "{}", volume(&fence));
    }

    #[test]
    fn a_stamp_grows_towards_the_eye() {
        let shape = stamp(&rounded_xy(1.0, 1.0, 0.01), 0.5, 0.01);
        let top = shape.points.iter().map(|p| p.z).fold(0.0, f32::max);
        assert!((top - 0.5).abs() < 1e-5);
    }
}
