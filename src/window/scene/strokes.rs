//! A small stroke alphabet of our own for marks on the machine.

use super::mesh::Shape;
use bevy::prelude::*;
use std::f32::consts::PI;

/// Points of one stroke.
pub type Line = Vec<Vec2>;

fn line(points: &[(f32, f32)]) -> Line {
    points.iter().map(|(x, y)| Vec2::new(*x, *y)).collect()
}

/// Part of an ellipse, angles in half turns from +X.
fn bow(cx: f32, cy: f32, rx: f32, ry: f32, from: f32, to: f32) -> Line {
    (0..=14)
        .map(|i| {
            let a = (from + (to - from) * i as f32 / 14.0) * PI;
            Vec2::new(cx + rx * a.cos(), cy + ry * a.sin())
        })
        .collect()
}

/// Strokes of one character in a box 0.6 wide and 1 high.
fn strokes(mark: char) -> Vec<Line> {
    match mark {
        '0' => vec![bow(0.3, 0.5, 0.3, 0.5, 0.0, 2.0)],
        '1' => vec![line(&[(0.1, 0.8), (0.34, 1.0), (0.34, 0.0)])],
        '2' => {
            let mut top = bow(0.3, 0.7, 0.28, 0.3, 0.95, -0.15);
            top.extend(line(&[(0.02, 0.0), (0.6, 0.0)]));
            vec![top]
        }
        '3' => vec![
            bow(0.28, 0.75, 0.26, 0.25, 0.85, -0.5),
            bow(0.28, 0.26, 0.31, 0.26, 0.5, -0.85),
        ],
        '4' => vec![line(&[(0.46, 0.0), (0.46, 1.0), (0.0, 0.3), (0.62, 0.3)])],
        '5' => {
            let mut whole = line(&[(0.54, 1.0), (0.1, 1.0), (0.06, 0.55)]);
            whole.extend(bow(0.27, 0.32, 0.32, 0.32, 0.65, -0.8));
            vec![whole]
        }
        '6' => vec![
            bow(0.3, 0.32, 0.3, 0.32, 0.0, 2.0),
            line(&[(0.02, 0.38), (0.12, 0.72), (0.42, 1.0)]),
        ],
        '7' => vec![line(&[(0.02, 1.0), (0.6, 1.0), (0.2, 0.0)])],
        '8' => vec![
            bow(0.3, 0.76, 0.25, 0.24, 0.0, 2.0),
            bow(0.3, 0.26, 0.3, 0.26, 0.0, 2.0),
        ],
        '9' => vec![
            bow(0.3, 0.68, 0.3, 0.32, 0.0, 2.0),
            line(&[(0.58, 0.62), (0.48, 0.28), (0.18, 0.0)]),
        ],
        'A' => vec![
            line(&[(0.0, 0.0), (0.3, 1.0), (0.6, 0.0)]),
            line(&[(0.11, 0.36), (0.49, 0.36)]),
        ],
        'B' => vec![
            line(&[(0.04, 0.0), (0.04, 1.0), (0.3, 1.0)]),
            bow(0.3, 0.76, 0.24, 0.24, 0.5, -0.5),
            bow(0.3, 0.26, 0.28, 0.26, 0.5, -0.5),
            line(&[(0.04, 0.52), (0.3, 0.52)]),
            line(&[(0.04, 0.0), (0.3, 0.0)]),
        ],
        'C' => vec![bow(0.34, 0.5, 0.32, 0.5, 0.28, 1.72)],
        'D' => vec![
            line(&[(0.2, 0.0), (0.04, 0.0), (0.04, 1.0), (0.2, 1.0)]),
            bow(0.2, 0.5, 0.38, 0.5, 0.5, -0.5),
        ],
        'E' => vec![
            line(&[(0.56, 1.0), (0.04, 1.0), (0.04, 0.0), (0.56, 0.0)]),
            line(&[(0.04, 0.52), (0.46, 0.52)]),
        ],
        'F' => vec![
            line(&[(0.56, 1.0), (0.04, 1.0), (0.04, 0.0)]),
            line(&[(0.04, 0.52), (0.46, 0.52)]),
        ],
        'G' => vec![
            bow(0.33, 0.5, 0.31, 0.5, 0.28, 1.9),
            line(&[(0.36, 0.44), (0.62, 0.44), (0.62, 0.16)]),
        ],
        'H' => vec![
            line(&[(0.02, 0.0), (0.02, 1.0)]),
            line(&[(0.58, 0.0), (0.58, 1.0)]),
            line(&[(0.02, 0.5), (0.58, 0.5)]),
        ],
        'I' => vec![line(&[(0.3, 0.0), (0.3, 1.0)])],
        'J' => vec![
            line(&[(0.5, 1.0), (0.5, 0.26)]),
            bow(0.27, 0.26, 0.23, 0.26, 0.0, -1.0),
        ],
        'K' => vec![
            line(&[(0.04, 0.0), (0.04, 1.0)]),
            line(&[(0.56, 1.0), (0.04, 0.42)]),
            line(&[(0.22, 0.60), (0.58, 0.0)]),
        ],
        'L' => vec![line(&[(0.06, 1.0), (0.06, 0.0), (0.56, 0.0)])],
        'M' => vec![line(&[
            (0.0, 0.0),
            (0.0, 1.0),
            (0.3, 0.4),
            (0.6, 1.0),
            (0.6, 0.0),
        ])],
        'N' => vec![line(&[(0.02, 0.0), (0.02, 1.0), (0.58, 0.0), (0.58, 1.0)])],
        'O' => vec![bow(0.3, 0.5, 0.3, 0.5, 0.0, 2.0)],
        'P' => vec![
            line(&[(0.04, 0.0), (0.04, 1.0), (0.3, 1.0)]),
            bow(0.3, 0.74, 0.27, 0.26, 0.5, -0.5),
            line(&[(0.3, 0.48), (0.04, 0.48)]),
        ],
        'Q' => vec![
            bow(0.3, 0.5, 0.3, 0.5, 0.0, 2.0),
            line(&[(0.34, 0.28), (0.62, -0.06)]),
        ],
        'R' => vec![
            line(&[(0.04, 0.0), (0.04, 1.0), (0.3, 1.0)]),
            bow(0.3, 0.74, 0.27, 0.26, 0.5, -0.5),
            line(&[(0.04, 0.48), (0.3, 0.48), (0.58, 0.0)]),
        ],
        'S' => vec![
            bow(0.3, 0.75, 0.26, 0.25, 0.2, 1.5),
            bow(0.3, 0.25, 0.28, 0.25, 0.5, -0.8),
        ],
        'T' => vec![
            line(&[(0.0, 1.0), (0.6, 1.0)]),
            line(&[(0.3, 1.0), (0.3, 0.0)]),
        ],
        'U' => vec![
            line(&[(0.02, 1.0), (0.02, 0.3)]),
            bow(0.3, 0.3, 0.28, 0.3, 1.0, 2.0),
            line(&[(0.58, 0.3), (0.58, 1.0)]),
        ],
        'V' => vec![line(&[(0.0, 1.0), (0.3, 0.0), (0.6, 1.0)])],
        'W' => vec![line(&[
            (0.0, 1.0),
            (0.14, 0.0),
            (0.3, 0.7),
            (0.46, 0.0),
            (0.6, 1.0),
        ])],
        'X' => vec![
            line(&[(0.0, 0.0), (0.6, 1.0)]),
            line(&[(0.0, 1.0), (0.6, 0.0)]),
        ],
        'Y' => vec![
            line(&[(0.0, 1.0), (0.3, 0.5), (0.6, 1.0)]),
            line(&[(0.3, 0.5), (0.3, 0.0)]),
        ],
        'Z' => vec![line(&[(0.02, 1.0), (0.58, 1.0), (0.02, 0.0), (0.58, 0.0)])],
        '×' => vec![
            line(&[(0.1, 0.15), (0.5, 0.6)]),
            line(&[(0.1, 0.6), (0.5, 0.15)]),
        ],
        _ => Vec::new(),
    }
}

/// Flat polyline of `width` with round ends on the XY plane, facing +Z.
pub fn polyline(points: &[Vec2], width: f32) -> Shape {
    let mut shape = Shape::default();
    for pair in points.windows(2) {
        let side = (pair[1] - pair[0]).normalize_or_zero().perp() * width / 2.0;
        let [a, b, c, d] = [
            pair[0] - side,
            pair[1] - side,
            pair[1] + side,
            pair[0] + side,
        ]
        .map(|p| p.extend(0.0));
        shape.tri(a, b, c);
        shape.tri(a, c, d);
    }
    for point in points {
        for i in 0..10 {
            let at = |k: usize| {
                (*point + Vec2::from_angle(k as f32 / 5.0 * PI) * width / 2.0).extend(0.0)
            };
            shape.tri(point.extend(0.0), at(i), at(i + 1));
        }
    }
    shape
}

/// From one letter to the next, and the width of a stroke, of the letters' height.
const ADVANCE: f32 = 0.84;
const WEIGHT: f32 = 0.14;

/// Width of the strokes of letters `height` tall.
pub fn letters_width(height: f32) -> f32 {
    WEIGHT * height
}

/// Strokes of `text` centred on the origin of the XY plane, `height` tall.
pub fn letters(text: &str, height: f32) -> Vec<Line> {
    let count = text.chars().count() as f32;
    let left = -(count * ADVANCE - (ADVANCE - 0.6)) / 2.0;
    let placed = |(i, mark)| {
        let x = left + i as f32 * ADVANCE;
        let place = move |stroke: Line| {
            let points = stroke.into_iter();
            points
                .map(|p| Vec2::new(x + p.x, p.y - 0.5) * height)
                .collect()
        };
        strokes(mark).into_iter().map(place)
    };
    text.chars().enumerate().flat_map(placed).collect()
}

/// Flat strokes of `width` with round ends on the XY plane, facing +Z.
pub fn stroked(strokes: &[Line], width: f32) -> Shape {
    (strokes.iter()).fold(Shape::default(), |shape, stroke| {
        shape.with(polyline(stroke, width), Transform::IDENTITY)
    })
}

/// `text` centred on the origin of the XY plane, facing +Z, `height` tall.
pub fn write(text: &str, height: f32) -> Shape {
    stroked(&letters(text, height), letters_width(height))
}

#[cfg(test)]
mod tests {
    use super::*;
    use detent_content::{builtin, read_board};

    #[test]
    fn every_board_s_labels_can_be_written() {
        for (path, text) in builtin::in_folder("assets/boards") {
            let board = read_board(&path, text.as_bytes()).expect("built-in boards are sound");
            for mark in board.connectors.iter().flat_map(|c| c.label.chars()) {
                assert!(!strokes(mark).is_empty(), "{}: {mark}", board.id);
            }
        }
    }
}
