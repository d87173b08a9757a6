//! What is drawn on a page: lines, shapes and text, in points from its upper left corner.

use krilla::geom::{Path, PathBuilder, Rect as OutRect};

/// A rectangle, pt.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Area {
    pub left: f32,
    pub top: f32,
    pub width: f32,
    pub height: f32,
}

impl Area {
    pub fn right(&self) -> f32 {
        self.left + self.width
    }

    pub fn bottom(&self) -> f32 {
        self.top + self.height
    }

    pub fn middle(&self) -> (f32, f32) {
        (self.left + self.width / 2.0, self.top + self.height / 2.0)
    }

    /// Smaller by this much on each side.
    pub fn shrunk(&self, by: f32) -> Area {
        Area {
            left: self.left + by,
            top: self.top + by,
            width: (self.width - 2.0 * by).max(0.0),
            height: (self.height - 2.0 * by).max(0.0),
        }
    }
}

/// A shade of gray: 0 is black, 255 white.
pub(super) type Gray = u8;

pub(super) const BLACK: Gray = 0;
/// Quiet text and thin rules; dark enough on a gray copy (WCAG 2.2, 1.4.3: 4.5 to 1 needs 118 or less).
pub(super) const QUIET: Gray = 85;
pub(super) const SHADE: Gray = 236;

/// How heavy text is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Weight {
    Regular,
    Bold,
}

impl Weight {
    /// The embedded font is a light one: its outlines are drawn along with this line, in parts of the size.
    pub fn outline(self) -> f32 {
        match self {
            Weight::Regular => 0.012,
            Weight::Bold => 0.055,
        }
    }
}

/// How text looks.
#[derive(Clone, Copy, Debug)]
pub(super) struct Style {
    pub size: f32,
    pub weight: Weight,
    pub gray: Gray,
}

/// One thing drawn.
pub(super) enum Mark {
    /// Text whose baseline begins here.
    Text {
        x: f32,
        y: f32,
        style: Style,
        text: String,
    },
    /// A shape, filled or with an outline of a width.
    Shape {
        path: Path,
        fill: Option<Gray>,
        line: Option<(Gray, f32)>,
        dashed: bool,
    },
}

/// Which point of a text is given.
#[derive(Clone, Copy, Debug)]
pub(super) enum Anchor {
    Left,
    Middle,
    Right,
}

/// Something to draw on, with the fonts that tell how wide text is.
pub(super) struct Canvas<'a> {
    pub fonts: &'a super::font::Fonts,
    pub marks: Vec<Mark>,
}

/// Handles of four cubic curves that make a circle of radius 1.
const ROUND: f32 = 0.552_285;

impl Canvas<'_> {
    /// A line through points.
    pub fn line(&mut self, points: &[(f32, f32)], width: f32) {
        self.shape(points, false, None, Some((BLACK, width)), false);
    }

    /// A thin level line.
    pub fn rule(&mut self, left: f32, right: f32, y: f32) {
        self.shape(
            &[(left, y), (right, y)],
            false,
            None,
            Some((QUIET, 0.6)),
            false,
        );
    }

    /// A dashed line through points.
    pub fn dashed(&mut self, points: &[(f32, f32)], width: f32) {
        self.shape(points, false, None, Some((QUIET, width)), true);
    }

    /// A filled polygon.
    pub fn polygon(&mut self, points: &[(f32, f32)], fill: Gray) {
        self.shape(points, true, Some(fill), None, false);
    }

    fn shape(
        &mut self,
        points: &[(f32, f32)],
        closed: bool,
        fill: Option<Gray>,
        line: Option<(Gray, f32)>,
        dashed: bool,
    ) {
        let mut path = PathBuilder::new();
        for (n, (x, y)) in points.iter().enumerate() {
            if n == 0 {
                path.move_to(*x, *y);
            } else {
                path.line_to(*x, *y);
            }
        }
        if closed {
            path.close();
        }
        self.add(path, fill, line, dashed);
    }

    fn add(
        &mut self,
        path: PathBuilder,
        fill: Option<Gray>,
        line: Option<(Gray, f32)>,
        dashed: bool,
    ) {
        // A path of no extent is none.
        self.marks.extend(path.finish().map(|path| Mark::Shape {
            path,
            fill,
            line,
            dashed,
        }));
    }

    /// A rectangle.
    pub fn rect(&mut self, area: Area, fill: Option<Gray>, line: Option<(Gray, f32)>) {
        let mut path = PathBuilder::new();
        let rect = OutRect::from_xywh(area.left, area.top, area.width, area.height);
        if let Some(rect) = rect {
            path.push_rect(rect);
            self.add(path, fill, line, false);
        }
    }

    /// A circle.
    pub fn circle(
        &mut self,
        (x, y): (f32, f32),
        r: f32,
        fill: Option<Gray>,
        line: Option<(Gray, f32)>,
    ) {
        let k = ROUND * r;
        let mut path = PathBuilder::new();
        path.move_to(x + r, y);
        path.cubic_to(x + r, y + k, x + k, y + r, x, y + r);
        path.cubic_to(x - k, y + r, x - r, y + k, x - r, y);
        path.cubic_to(x - r, y - k, x - k, y - r, x, y - r);
        path.cubic_to(x + k, y - r, x + r, y - k, x + r, y);
        path.close();
        self.add(path, fill, line, false);
    }

    /// A half circle that bulges to the right, from one height to another.
    pub fn bump(&mut self, x: f32, (top, bottom): (f32, f32), width: f32) {
        let r = (bottom - top) / 2.0;
        let k = ROUND * r;
        let mut path = PathBuilder::new();
        path.move_to(x, top);
        path.cubic_to(x + k, top, x + r, top + r - k, x + r, top + r);
        path.cubic_to(x + r, top + r + k, x + k, bottom, x, bottom);
        self.add(path, None, Some((BLACK, width)), false);
    }

    /// A line through points whose last one has an arrowhead; the last stretch is level or upright.
    pub fn arrow(&mut self, points: &[(f32, f32)], width: f32) {
        self.line(points, width);
        if let [.., a, b] = points {
            let sign = |from: f32, to: f32| match to - from {
                d if d > 0.1 => 1.0,
                d if d < -0.1 => -1.0,
                _ => 0.0,
            };
            let (dx, dy) = (sign(a.0, b.0), sign(a.1, b.1));
            let head = |side: f32| {
                let back = 4.5;
                let out = 2.6 * side;
                (b.0 - dx * back + dy * out, b.1 - dy * back + dx * out)
            };
            self.polygon(&[*b, head(1.0), head(-1.0)], BLACK);
        }
    }

    /// Text on one line; `y` is its baseline.
    pub fn text(&mut self, (x, y): (f32, f32), anchor: Anchor, style: Style, text: &str) {
        let width = self.fonts.width(text, style.size);
        let x = match anchor {
            Anchor::Left => x,
            Anchor::Middle => x - width / 2.0,
            Anchor::Right => x - width,
        };
        self.marks.push(Mark::Text {
            x,
            y,
            style,
            text: text.to_owned(),
        });
    }

    /// Text in lines no wider than `width`, the block's middle at `y`; gives back how high it is.
    pub fn block(
        &mut self,
        (x, y): (f32, f32),
        width: f32,
        anchor: Anchor,
        style: Style,
        text: &str,
    ) -> f32 {
        let lines = self.fonts.lines(text, style.size, width);
        let step = style.size * 1.2;
        let height = step * lines.len() as f32;
        for (n, line) in lines.iter().enumerate() {
            let baseline = y - height / 2.0 + step * (n as f32 + 0.78);
            self.text((x, baseline), anchor, style, line);
        }
        height
    }
}
