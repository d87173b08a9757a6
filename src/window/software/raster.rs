//! The panels' triangles drawn on the processor, blended as a graphics card blends them into an sRGB picture: so both
//! ways of drawing show the same.

use bevy::math::{IRect, IVec2};
use bevy_egui::egui::epaint::{ClippedPrimitive, Primitive, Vertex};
use bevy_egui::egui::{Color32, Rect, TextureId};
use std::sync::LazyLock;

/// Subpixels of a pixel in each direction: a graphics card has 256 too.
const SUBPIXELS: i64 = 256;

/// Linear light that 8 bits of sRGB stand for, 0 to [`FULL`] (IEC 61966-2-1).
static LINEAR: LazyLock<[u32; 256]> = LazyLock::new(|| {
    std::array::from_fn(|gamma| {
        let gamma = gamma as f64 / 255.0;
        let linear = match gamma {
            dark if dark <= 0.040_45 => dark / 12.92,
            light => ((light + 0.055) / 1.055).powf(2.4),
        };
        (linear * f64::from(FULL)).round() as u32
    })
});
const FULL: u32 = 65_535;

/// The way back, by the upper bits of the light: fine enough that each 8 bits find back to themselves.
static GAMMA: LazyLock<[u8; 4096]> = LazyLock::new(|| {
    std::array::from_fn(|upper| {
        let linear = (upper as f64 * 16.0 + 8.0) / f64::from(FULL);
        let gamma = match linear {
            dark if dark <= 0.003_130_8 => dark * 12.92,
            light => 1.055 * light.powf(1.0 / 2.4) - 0.055,
        };
        (gamma.min(1.0) * 255.0).round() as u8
    })
});

/// Premultiplied sRGB with alpha.
type Rgba = [u8; 4];

fn packed([r, g, b, _]: Rgba) -> u32 {
    u32::from(r) << 16 | u32::from(g) << 8 | u32::from(b)
}

fn channels(pixel: u32) -> [u8; 3] {
    [(pixel >> 16) as u8, (pixel >> 8) as u8, pixel as u8]
}

fn blend(pixel: &mut u32, color: Rgba) {
    match color {
        [.., 255] => *pixel = packed(color),
        [0, 0, 0, 0] => {}
        [r, g, b, alpha] => {
            let rest = u32::from(255 - alpha);
            let under = channels(*pixel);
            let over = [r, g, b];
            let [r, g, b] = std::array::from_fn(|i| {
                let light = |gamma: u8| LINEAR[usize::from(gamma)];
                let sum = light(over[i]) + (light(under[i]) * rest + 127) / 255;
                GAMMA[(sum.min(FULL) >> 4) as usize]
            });
            *pixel = packed([r, g, b, 255]);
        }
    }
}

fn product(color: Rgba, texel: Rgba) -> Rgba {
    std::array::from_fn(|i| ((u32::from(color[i]) * u32::from(texel[i]) + 127) / 255) as u8)
}

/// What triangles are filled from.
#[derive(Clone, Copy)]
pub struct Texture<'a> {
    /// Columns and rows.
    pub size: [usize; 2],
    /// Row by row, premultiplied sRGB with alpha, 4 bytes each.
    pub rgba: &'a [u8],
}

impl Texture<'_> {
    /// The texel in this column and row, or the nearest at the edge.
    fn texel(&self, column: i64, row: i64) -> Rgba {
        let within = |at: i64, size: usize| at.clamp(0, size as i64 - 1) as usize;
        let at = within(row, self.size[1]) * self.size[0] + within(column, self.size[0]);
        std::array::from_fn(|i| self.rgba[at * 4 + i])
    }

    /// Between the four nearest texels, as light.
    fn between(&self, [u, v]: [f32; 2]) -> Rgba {
        let (u, v) = (u - 0.5, v - 0.5);
        let (column, row) = (u.floor(), v.floor());
        let (right, down) = (u - column, v - row);
        let texel = |c: i64, r: i64| self.texel(column as i64 + c, row as i64 + r);
        let [a, b, c, d] = [texel(0, 0), texel(1, 0), texel(0, 1), texel(1, 1)];
        let mixed = |of: &dyn Fn(Rgba) -> f32| {
            let above = of(a) * (1.0 - right) + of(b) * right;
            let below = of(c) * (1.0 - right) + of(d) * right;
            (above * (1.0 - down) + below * down).round()
        };
        std::array::from_fn(|i| match i {
            3 => mixed(&|texel| f32::from(texel[3])) as u8,
            _ => {
                let light = mixed(&|texel| LINEAR[usize::from(texel[i])] as f32);
                GAMMA[(light as usize).min(FULL as usize) >> 4]
            }
        })
    }
}

/// A corner of a triangle.
#[derive(Clone, Copy)]
struct Corner {
    /// Subpixels.
    at: [i64; 2],
    /// Texels.
    uv: [f32; 2],
    color: Rgba,
}

impl Corner {
    fn of(vertex: &Vertex, pixels_per_point: f32, texture: &Texture) -> Corner {
        let at = |points: f32| (points * pixels_per_point * SUBPIXELS as f32).round() as i64;
        let texels = |share: f32, size: usize| share * size as f32;
        Corner {
            at: [at(vertex.pos.x), at(vertex.pos.y)],
            uv: [
                texels(vertex.uv.x, texture.size[0]),
                texels(vertex.uv.y, texture.size[1]),
            ],
            color: vertex.color.to_array(),
        }
    }
}

/// A value that grows evenly across a triangle.
#[derive(Clone, Copy)]
struct Plane {
    /// At the middle of the pixel at the top left of the window.
    origin: f32,
    across: f32,
    down: f32,
}

impl Plane {
    fn at(self, x: i64, y: i64) -> f32 {
        self.origin + self.across * x as f32 + self.down * y as f32
    }
}

/// A triangle, clockwise as it is seen.
struct Triangle {
    corners: [Corner; 3],
    /// Twice the area, square subpixels.
    area: i64,
}

/// How the pixels of a triangle get their color.
enum Fill {
    /// All the same.
    Solid(Rgba),
    /// From corner to corner.
    Shaded([Plane; 4], Rgba),
    /// A texel for each pixel: columns and rows from a pixel's place to its texel's.
    Copied([i64; 2], Rgba),
    /// Whatever else.
    Textured([Plane; 4], [Plane; 2]),
}

impl Triangle {
    /// None where it has no area.
    fn new([a, b, c]: [Corner; 3]) -> Option<Triangle> {
        let [[ax, ay], [bx, by], [cx, cy]] = [a.at, b.at, c.at];
        let area = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
        match area {
            0 => None,
            1.. => Some(Triangle {
                corners: [a, b, c],
                area,
            }),
            _ => Some(Triangle {
                corners: [a, c, b],
                area: -area,
            }),
        }
    }

    fn plane(&self, of: impl Fn(&Corner) -> f32) -> Plane {
        // Corners may lie far outside the window, where a float would be too coarse.
        let pixels = |subpixels: i64| subpixels as f64 / SUBPIXELS as f64;
        let [a, b, c] = &self.corners;
        let value = f64::from(of(a));
        let (to_b, to_c) = (f64::from(of(b)) - value, f64::from(of(c)) - value);
        let way = |to: &Corner, axis: usize| pixels(to.at[axis] - a.at[axis]);
        let area = pixels(self.area) / SUBPIXELS as f64;
        let across = (to_b * way(c, 1) - to_c * way(b, 1)) / area;
        let down = (to_c * way(b, 0) - to_b * way(c, 0)) / area;
        let middle = |axis: usize| 0.5 - pixels(a.at[axis]);
        Plane {
            origin: (value + across * middle(0) + down * middle(1)) as f32,
            across: across as f32,
            down: down as f32,
        }
    }

    fn color_planes(&self) -> [Plane; 4] {
        std::array::from_fn(|i| self.plane(|corner| f32::from(corner.color[i])))
    }

    fn fill(&self, texture: &Texture) -> Fill {
        let [a, b, c] = &self.corners;
        let one_color = a.color == b.color && a.color == c.color;
        if a.uv == b.uv && a.uv == c.uv {
            let texel = texture.texel(a.uv[0].floor() as i64, a.uv[1].floor() as i64);
            return match one_color {
                true => Fill::Solid(product(a.color, texel)),
                false => Fill::Shaded(self.color_planes(), texel),
            };
        }
        let uv = [0, 1].map(|axis| self.plane(|corner| corner.uv[axis]));
        // Close enough to copy: letters are laid out on whole pixels.
        let near = |value: f32, to: f32, reach: f32| (value - to).abs() < reach;
        let offsets = uv.map(|plane| plane.origin - 0.5);
        let straight = near(uv[0].across, 1.0, 1e-3)
            && near(uv[1].down, 1.0, 1e-3)
            && near(uv[0].down, 0.0, 1e-3)
            && near(uv[1].across, 0.0, 1e-3);
        if one_color && straight && offsets.iter().all(|o| near(*o, o.round(), 0.05)) {
            return Fill::Copied(offsets.map(|offset| offset.round() as i64), a.color);
        }
        Fill::Textured(self.color_planes(), uv)
    }

    /// The pixels of this row whose middle lies inside, from the first to before the last; a middle on an edge belongs to
    /// the triangle below or to the right of it.
    fn row(&self, y: i64) -> [i64; 2] {
        let middle = y * SUBPIXELS + SUBPIXELS / 2;
        let mut span = [i64::MIN, i64::MAX];
        for side in 0..3 {
            let [from, to] = [self.corners[side].at, self.corners[(side + 1) % 3].at];
            let [right, down] = [to[0] - from[0], to[1] - from[1]];
            let owns_edge = down < 0 || down == 0 && right > 0;
            // Inside is where slope * x + rest is not negative.
            let slope = -down * SUBPIXELS;
            let rest = right * (middle - from[1]) + down * (from[0] - SUBPIXELS / 2)
                - i64::from(!owns_edge);
            match slope {
                0 if rest < 0 => return [0, 0],
                0 => {}
                1.. => span[0] = span[0].max(-rest.div_euclid(slope)),
                _ => span[1] = span[1].min(rest.div_euclid(-slope) + 1),
            }
        }
        span
    }
}

/// A picture of a window.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Canvas {
    size: IVec2,
    /// Row by row, 0x00RRGGBB.
    pixels: Vec<u32>,
}

impl Canvas {
    /// A picture of this many columns and rows.
    pub fn new(size: IVec2) -> Canvas {
        Canvas {
            size,
            pixels: vec![0; (size.x * size.y) as usize],
        }
    }

    /// Columns and rows.
    pub fn size(&self) -> IVec2 {
        self.size
    }

    /// Row by row, 0x00RRGGBB.
    pub fn pixels(&self) -> &[u32] {
        &self.pixels
    }

    /// Row by row, red, green, blue and full alpha.
    pub fn rgba(&self) -> Vec<u8> {
        let bytes = self.pixels.iter().flat_map(|pixel| {
            let [r, g, b] = channels(*pixel);
            [r, g, b, 255]
        });
        bytes.collect()
    }

    /// The whole of it.
    pub fn area(&self) -> IRect {
        IRect::from_corners(IVec2::ZERO, self.size)
    }

    fn row_mut(&mut self, y: i64, [from, to]: [i64; 2]) -> &mut [u32] {
        let start = y * i64::from(self.size.x);
        &mut self.pixels[(start + from) as usize..(start + to) as usize]
    }

    /// Draws this part of the picture anew: the ground, and on it what is painted, in order. What has no texture is left out.
    pub fn paint<'a>(
        &mut self,
        part: IRect,
        ground: Color32,
        painted: &[ClippedPrimitive],
        pixels_per_point: f32,
        textures: impl Fn(TextureId) -> Option<Texture<'a>>,
    ) {
        let part = part.intersect(self.area());
        let columns = [i64::from(part.min.x), i64::from(part.max.x)];
        for y in part.min.y..part.max.y {
            let row = self.row_mut(i64::from(y), columns);
            row.fill(packed(ground.to_array()));
        }
        for primitive in painted {
            let Primitive::Mesh(mesh) = &primitive.primitive else {
                continue;
            };
            let within = pixels_of(primitive.clip_rect, pixels_per_point).intersect(part);
            if within.is_empty() {
                continue;
            }
            let Some(texture) = textures(mesh.texture_id) else {
                continue;
            };
            for corners in mesh.indices.as_chunks::<3>().0 {
                let vertices = corners.map(|i| &mesh.vertices[i as usize]);
                if covers(vertices, pixels_per_point)
                    .intersect(within)
                    .is_empty()
                {
                    continue;
                }
                let corners = vertices.map(|v| Corner::of(v, pixels_per_point, &texture));
                if let Some(triangle) = Triangle::new(corners) {
                    self.fill(within, &triangle, &texture);
                }
            }
        }
    }

    fn fill(&mut self, within: IRect, triangle: &Triangle, texture: &Texture) {
        let fill = triangle.fill(texture);
        let rows = triangle.corners.map(|corner| corner.at[1]);
        let first = rows.into_iter().fold(i64::MAX, i64::min) / SUBPIXELS;
        let last = rows.into_iter().fold(i64::MIN, i64::max) / SUBPIXELS;
        let [first, last] = [
            first.max(i64::from(within.min.y)),
            (last + 1).min(i64::from(within.max.y)),
        ];
        for y in first..last {
            let [from, to] = triangle.row(y);
            let from = from.max(i64::from(within.min.x));
            let to = to.min(i64::from(within.max.x));
            if from >= to {
                continue;
            }
            let row = self.row_mut(y, [from, to]);
            let pixels = row.iter_mut().zip(from..);
            match &fill {
                Fill::Solid(color @ [.., 255]) => row.fill(packed(*color)),
                Fill::Solid(color) => row.iter_mut().for_each(|pixel| blend(pixel, *color)),
                Fill::Shaded(planes, texel) => {
                    pixels.for_each(|(pixel, x)| {
                        blend(pixel, product(shade(planes, x, y), *texel));
                    });
                }
                Fill::Copied([right, down], color) => pixels.for_each(|(pixel, x)| {
                    blend(pixel, product(*color, texture.texel(x + right, y + down)));
                }),
                Fill::Textured(planes, uv) => pixels.for_each(|(pixel, x)| {
                    let texel = texture.between(uv.map(|plane| plane.at(x, y)));
                    blend(pixel, product(shade(planes, x, y), texel));
                }),
            }
        }
    }
}

fn shade(planes: &[Plane; 4], x: i64, y: i64) -> Rgba {
    // A float that is cast keeps within its bounds.
    planes.map(|plane| (plane.at(x, y) + 0.5) as u8)
}

/// The pixels in a part of the window that is given in points, as a graphics card clips it.
pub fn pixels_of(points: Rect, pixels_per_point: f32) -> IRect {
    let pixel = |points: f32| (points * pixels_per_point).round() as i32;
    // Not `IRect::new`, which would turn an empty one round.
    IRect {
        min: IVec2::new(pixel(points.min.x), pixel(points.min.y)),
        max: IVec2::new(pixel(points.max.x), pixel(points.max.y)),
    }
}

/// A box of pixels around a triangle.
pub fn covers(vertices: [&Vertex; 3], pixels_per_point: f32) -> IRect {
    let mut area = Rect::NOTHING;
    for vertex in vertices {
        area.extend_with(vertex.pos);
    }
    let pixel = |points: f32| points * pixels_per_point;
    IRect {
        min: IVec2::new(
            pixel(area.min.x).floor() as i32,
            pixel(area.min.y).floor() as i32,
        ),
        max: IVec2::new(
            pixel(area.max.x).ceil() as i32,
            pixel(area.max.y).ceil() as i32,
        ),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use bevy_egui::egui::{Mesh, Pos2, pos2};

    const GROUND: Color32 = Color32::from_rgb(24, 34, 41);

    /// White in its first texel, and beside it a letter of two texels.
    const LETTERS: Texture = Texture {
        size: [4, 2],
        rgba: &[
            255, 255, 255, 255, 0, 0, 0, 0, 64, 64, 64, 64, 255, 255, 255, 255, //
            0, 0, 0, 0, 0, 0, 0, 0, 128, 128, 128, 128, 0, 0, 0, 0,
        ],
    };

    fn everywhere() -> Rect {
        Rect::from_min_max(Pos2::ZERO, pos2(100.0, 100.0))
    }

    fn painted_within(clip_rect: Rect, mesh: Mesh) -> Canvas {
        let mut canvas = Canvas::new(IVec2::new(12, 8));
        let painted = [ClippedPrimitive {
            clip_rect,
            primitive: Primitive::Mesh(mesh),
        }];
        canvas.paint(canvas.area(), GROUND, &painted, 1.0, |_| Some(LETTERS));
        canvas
    }

    fn painted(mesh: Mesh) -> Canvas {
        painted_within(everywhere(), mesh)
    }

    fn plain(area: [f32; 4], color: Color32) -> Mesh {
        let mut mesh = Mesh::default();
        let [left, top, right, bottom] = area;
        mesh.add_colored_rect(
            Rect::from_min_max(pos2(left, top), pos2(right, bottom)),
            color,
        );
        mesh
    }

    fn pixel(canvas: &Canvas, x: i32, y: i32) -> [u8; 3] {
        channels(canvas.pixels[(y * canvas.size.x + x) as usize])
    }

    #[test]
    fn a_box_covers_the_pixels_whose_middle_it_covers_and_each_once() {
        // Half transparent: a pixel that both triangles drew would be lighter.
        let canvas = painted(plain(
            [2.5, 1.5, 6.5, 4.49],
            Color32::from_rgba_premultiplied(128, 128, 128, 128),
        ));
        let inside = pixel(&canvas, 3, 2);
        assert_ne!(inside, [24, 34, 41]);
        for y in 0..8 {
            for x in 0..12 {
                let expected = match (x, y) {
                    (2..6, 1..4) => inside,
                    _ => [24, 34, 41],
                };
                assert_eq!(pixel(&canvas, x, y), expected, "{x}, {y}");
            }
        }
    }

    /// By the formulas of IEC 61966-2-1: 128 is 0.21586 of full light and 24 is 0.00913; half of the ground shines
    /// through, so that it is 0.22041, which is 129.
    #[test]
    fn light_is_added_as_light() {
        let half = Color32::from_rgba_premultiplied(128, 128, 128, 128);
        let canvas = painted(plain([0.0, 0.0, 12.0, 8.0], half));
        assert_eq!(pixel(&canvas, 0, 0)[0], 129);
        // Over white: 0.21586 and 127 of 255 of full light are 0.71390, which is 220.
        let mut white = plain([0.0, 0.0, 12.0, 8.0], Color32::WHITE);
        white.append(plain([0.0, 0.0, 12.0, 8.0], half));
        assert_eq!(pixel(&painted(white), 5, 5), [220; 3]);
    }

    #[test]
    fn every_shade_finds_back_to_itself() {
        for gamma in 0..=255_u8 {
            let there = LINEAR[usize::from(gamma)];
            assert_eq!(GAMMA[(there >> 4) as usize], gamma);
        }
    }

    #[test]
    fn color_goes_evenly_from_corner_to_corner() {
        let mut mesh = plain([0.0, 0.0, 10.0, 8.0], Color32::BLACK);
        for vertex in &mut mesh.vertices {
            if vertex.pos.x > 5.0 {
                vertex.color = Color32::from_rgb(200, 100, 0);
            }
        }
        let canvas = painted(mesh);
        for y in 0..8 {
            for x in 0..10 {
                let share = (x as f32 + 0.5) / 10.0;
                let expected = [200.0, 100.0, 0.0].map(|full: f32| (full * share).round() as u8);
                assert_eq!(pixel(&canvas, x, y), expected, "{x}, {y}");
            }
        }
    }

    fn letter(at: [f32; 4]) -> Mesh {
        let mut mesh = Mesh::default();
        let [left, top, right, bottom] = at;
        let place = Rect::from_min_max(pos2(left, top), pos2(right, bottom));
        let uv = Rect::from_min_max(pos2(0.5, 0.0), pos2(1.0, 1.0));
        mesh.add_rect_with_uv(place, uv, Color32::from_rgb(255, 255, 0));
        mesh
    }

    #[test]
    fn a_letter_is_copied_texel_for_pixel() {
        let canvas = painted(letter([3.0, 2.0, 5.0, 4.0]));
        assert_eq!(pixel(&canvas, 4, 2), [255, 255, 0]);
        assert_eq!(pixel(&canvas, 4, 3), [24, 34, 41]);
        // A quarter and a half of the color: 64 of 255 is 0.05126 of full light, to which comes three quarters of 24's
        // 0.00913: 0.05810, which is 68.
        assert_eq!(pixel(&canvas, 3, 2)[0], 68);
        assert_eq!(pixel(&canvas, 3, 3)[0], 129);
    }

    #[test]
    fn an_enlarged_letter_is_drawn_between_its_texels() {
        // Four pixels for a texel: the fourth has five eighths of the light of 64 (0.05127) and three eighths of that of 255,
        // which is 171, with an alpha of 136; with what is left of the ground's 0.00913 that makes 172.
        let canvas = painted(letter([0.0, 0.0, 8.0, 8.0]));
        let red = |x| pixel(&canvas, x, 0)[0];
        assert_eq!([red(3), red(7)], [172, 255]);
        assert!(red(3) < red(4) && red(4) < red(5));
    }

    #[test]
    fn nothing_is_drawn_outside_the_clip_or_the_window() {
        let clip = Rect::from_min_max(pos2(2.4, 2.6), pos2(5.0, 100.0));
        let far = plain([-5_000.0, -5_000.0, 5_000.0, 5_000.0], Color32::RED);
        let canvas = painted_within(clip, far);
        for y in 0..8 {
            for x in 0..12 {
                let expected = match (x, y) {
                    (2..5, 3..) => [255, 0, 0],
                    _ => [24, 34, 41],
                };
                assert_eq!(pixel(&canvas, x, y), expected, "{x}, {y}");
            }
        }
    }

    #[test]
    fn triangles_that_share_an_edge_share_no_pixel_and_leave_none_out() {
        // A fan around a crooked middle, half transparent.
        let half = Color32::from_rgba_premultiplied(60, 60, 60, 128);
        let mut mesh = Mesh::default();
        mesh.colored_vertex(pos2(5.3, 3.7), half);
        let rim = [
            [0.0, 0.0],
            [4.1, 0.0],
            [12.0, 0.0],
            [12.0, 5.5],
            [12.0, 8.0],
            [6.6, 8.0],
            [0.0, 8.0],
            [0.0, 2.2],
        ];
        for [x, y] in rim {
            mesh.colored_vertex(pos2(x, y), half);
        }
        for i in 0..8 {
            mesh.add_triangle(0, 1 + i, 1 + (i + 1) % 8);
        }
        let canvas = painted(mesh);
        let first = pixel(&canvas, 0, 0);
        assert_ne!(first, [24, 34, 41]);
        for y in 0..8 {
            for x in 0..12 {
                assert_eq!(pixel(&canvas, x, y), first, "{x}, {y}");
            }
        }
    }
}
