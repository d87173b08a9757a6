//! Which part of the window has changed, by what is painted in it before and after: only that is drawn again.

use super::raster::{covers, pixels_of};
use bevy::math::IRect;
use bevy_egui::egui::epaint::{ClippedPrimitive, Mesh, Primitive, Vertex};

/// Boxes that are kept apart; more than that grow together.
const MOST: usize = 12;

/// Parts of the window that have changed, pixels. They may overlap.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Damage(Vec<IRect>);

impl Damage {
    /// Where these two paintings of a window differ.
    pub fn between(
        before: &[ClippedPrimitive],
        after: &[ClippedPrimitive],
        pixels_per_point: f32,
    ) -> Damage {
        let mut damage = Damage::default();
        for at in 0..before.len().max(after.len()) {
            match (before.get(at), after.get(at)) {
                (Some(before), Some(after)) => {
                    damage.compare(before, after, pixels_per_point);
                }
                (Some(one), None) | (None, Some(one)) => damage.add_all(one, pixels_per_point),
                (None, None) => {}
            }
        }
        damage
    }

    /// The boxes.
    pub fn parts(&self) -> &[IRect] {
        &self.0
    }

    /// This part has changed.
    pub fn add(&mut self, part: IRect) {
        if part.is_empty() {
            return;
        }
        let area = |part: &IRect| i64::from(part.width()) * i64::from(part.height());
        let growth = |other: &IRect| area(&other.union(part)) - area(other);
        let full = self.0.len() >= MOST;
        match self.0.iter_mut().min_by_key(|other| growth(other)) {
            Some(nearest) if full || growth(nearest) <= area(&part) => {
                *nearest = nearest.union(part);
            }
            Some(_) | None => self.0.push(part),
        }
    }

    fn add_all(&mut self, one: &ClippedPrimitive, pixels_per_point: f32) {
        if let Primitive::Mesh(mesh) = &one.primitive {
            let clip = pixels_of(one.clip_rect, pixels_per_point);
            for vertices in triangles(mesh) {
                self.add(covers(vertices, pixels_per_point).intersect(clip));
            }
        }
    }

    fn compare(
        &mut self,
        before: &ClippedPrimitive,
        after: &ClippedPrimitive,
        pixels_per_point: f32,
    ) {
        let (Primitive::Mesh(old), Primitive::Mesh(new)) = (&before.primitive, &after.primitive)
        else {
            return;
        };
        if before.clip_rect != after.clip_rect || old.texture_id != new.texture_id {
            self.add_all(before, pixels_per_point);
            self.add_all(after, pixels_per_point);
            return;
        }
        if old == new {
            return;
        }
        let clip = pixels_of(after.clip_rect, pixels_per_point);
        let mut differ = |vertices: [&Vertex; 3]| {
            self.add(covers(vertices, pixels_per_point).intersect(clip));
        };
        let (count, new_count) = (old.indices.len() / 3, new.indices.len() / 3);
        let same = |(old, new): &([&Vertex; 3], [&Vertex; 3])| old == new;
        if count == new_count {
            for (old, new) in triangles(old).zip(triangles(new)) {
                if old != new {
                    differ(old);
                    differ(new);
                }
            }
            return;
        }
        // Something was put in or taken out: what comes before it and after it is as it was.
        let shorter = count.min(new_count);
        let head = triangles(old).zip(triangles(new)).take_while(same).count();
        let backwards = triangles(old).rev().zip(triangles(new).rev());
        let tail = backwards.take(shorter - head).take_while(same).count();
        triangles(old)
            .take(count - tail)
            .skip(head)
            .for_each(&mut differ);
        triangles(new)
            .take(new_count - tail)
            .skip(head)
            .for_each(&mut differ);
    }
}

/// The corners of each triangle.
fn triangles(mesh: &Mesh) -> impl DoubleEndedIterator<Item = [&Vertex; 3]> + ExactSizeIterator {
    let corners = mesh.indices.as_chunks::<3>().0.iter();
    corners.map(|corners| corners.map(|i| &mesh.vertices[i as usize]))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::software::raster::{Canvas, Texture};
    use bevy::math::IVec2;
    use bevy_egui::egui::{Color32, Pos2, Rect, pos2, vec2};

    const WHITE: Texture = Texture {
        size: [1, 1],
        rgba: &[255; 4],
    };
    const SIZE: IVec2 = IVec2::new(80, 60);

    fn boxes(places: &[(f32, f32, Color32)]) -> Vec<ClippedPrimitive> {
        let mut mesh = Mesh::default();
        for (x, y, color) in places {
            let place = Rect::from_min_size(pos2(*x, *y), vec2(7.3, 5.6));
            mesh.add_colored_rect(place, *color);
        }
        vec![ClippedPrimitive {
            clip_rect: Rect::from_min_size(Pos2::ZERO, vec2(70.0, 60.0)),
            primitive: Primitive::Mesh(mesh),
        }]
    }

    fn painting(canvas: &mut Canvas, part: IRect, painted: &[ClippedPrimitive]) {
        canvas.paint(part, Color32::BLACK, painted, 1.0, |_| Some(WHITE));
    }

    /// What is drawn again is all that has changed: the picture is the one drawn from nothing.
    #[track_caller]
    fn check(before: &[ClippedPrimitive], after: &[ClippedPrimitive]) -> Damage {
        let mut canvas = Canvas::new(SIZE);
        let whole = canvas.area();
        painting(&mut canvas, whole, before);
        let damage = Damage::between(before, after, 1.0);
        for part in damage.parts() {
            painting(&mut canvas, *part, after);
        }
        let mut anew = Canvas::new(SIZE);
        painting(&mut anew, whole, after);
        assert!(canvas == anew, "{damage:?}");
        damage
    }

    const A: (f32, f32, Color32) = (3.0, 4.5, Color32::RED);
    const B: (f32, f32, Color32) = (40.2, 30.0, Color32::from_rgba_premultiplied(0, 90, 0, 128));
    const C: (f32, f32, Color32) = (66.0, 50.0, Color32::BLUE);

    #[test]
    fn nothing_is_drawn_again_where_nothing_has_changed() {
        let painted = boxes(&[A, B, C]);
        assert_eq!(check(&painted, &painted), Damage::default());
    }

    #[test]
    fn only_what_has_changed_is_drawn_again() {
        let green = (B.0, B.1, Color32::GREEN);
        let damage = check(&boxes(&[A, B, C]), &boxes(&[A, green, C]));
        assert_eq!(damage.parts(), [IRect::new(40, 30, 48, 36)]);
        // Moved: the old place and the new one.
        let moved = (12.0, 30.0, B.2);
        let damage = check(&boxes(&[A, B, C]), &boxes(&[A, moved, C]));
        let drawn: i32 = damage
            .parts()
            .iter()
            .map(|p| p.size().element_product())
            .sum();
        assert!(drawn <= 2 * 8 * 6, "{damage:?}");
    }

    #[test]
    fn what_is_put_in_or_taken_out_leaves_its_neighbours_alone() {
        let (with, without) = (boxes(&[A, B, C]), boxes(&[A, C]));
        for (before, after) in [(&with, &without), (&without, &with)] {
            let damage = check(before, after);
            assert_eq!(damage.parts(), [IRect::new(40, 30, 48, 36)]);
        }
    }

    #[test]
    fn a_new_layer_and_another_clip_are_drawn() {
        let one = boxes(&[A]);
        let mut two = one.clone();
        two.extend(boxes(&[B, C]));
        check(&one, &two);
        check(&two, &one);
        let mut clipped = two.clone();
        clipped[1].clip_rect.max.x = 44.0;
        check(&two, &clipped);
        check(&clipped, &two);
    }

    #[test]
    fn many_changes_stay_few_boxes() {
        let spread = |color: Color32| {
            let places = (0..40).map(|i| (i as f32 * 1.9, (i * 7 % 50) as f32, color));
            boxes(&places.collect::<Vec<_>>())
        };
        let damage = check(&spread(Color32::RED), &spread(Color32::BLUE));
        assert!(damage.parts().len() <= MOST);
    }
}
