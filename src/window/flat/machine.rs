//! The machine from the front, with tub and laundry as if through glass.

use super::console::Face;
use super::{GripKind, Place, Shown};
use crate::pointing::Pick;
use crate::scene::console::layout::FACE_SIZE;
use crate::tokens as t;
use bevy_egui::egui::epaint::CubicBezierShape;
use bevy_egui::egui::{
    Color32, Painter, Pos2, Rect as Area, Shape, Stroke, StrokeKind, pos2, vec2,
};
use std::f32::consts::TAU;

/// What is drawn of the room: from left to right and from the floor up, m.
const ROOM: Area = Area {
    min: Pos2 { x: -0.72, y: -0.08 },
    max: Pos2 { x: 0.80, y: 1.52 },
};
/// The cabinet, the tub and the basket, m.
const CABINET: Area = Area {
    min: Pos2 { x: -0.34, y: 0.02 },
    max: Pos2 { x: 0.34, y: 0.93 },
};
const TUB: Area = Area {
    min: Pos2 { x: -0.28, y: 0.30 },
    max: Pos2 { x: 0.28, y: 0.88 },
};
const BASKET: Area = Area {
    min: Pos2 {
        x: -0.245,
        y: 0.335,
    },
    max: Pos2 { x: 0.245, y: 0.86 },
};
/// Middle of the console's face, m.
const FACE_AT: Pos2 = pos2(0.0, 1.06);
/// The lid, shut and open, m.
const LID_SHUT: Area = Area {
    min: Pos2 { x: -0.26, y: 0.915 },
    max: Pos2 { x: 0.26, y: 0.945 },
};
const LID_OPEN: Area = Area {
    min: Pos2 { x: -0.385, y: 0.93 },
    max: Pos2 { x: -0.345, y: 1.42 },
};
/// The plug in its outlet and on the floor, and its size, m.
const PLUG_IN: Pos2 = pos2(0.60, 1.02);
const PLUG_OUT: Pos2 = pos2(0.60, 0.05);
const PLUG_SIZE: f32 = 0.075;
/// Where the cord leaves the cabinet, m.
const CORD: Pos2 = pos2(0.34, 0.36);

/// Where the room is in the window.
#[derive(Clone, Copy)]
pub struct Frame {
    foot: Pos2,
    /// Points for a meter.
    per_m: f32,
}

impl Frame {
    /// As large as it can be within `stage`.
    pub fn within(stage: Area) -> Frame {
        let per_m = (stage.width() / ROOM.width()).min(stage.height() / ROOM.height());
        let foot = stage.center() + vec2(-ROOM.center().x, ROOM.center().y) * per_m;
        Frame { foot, per_m }
    }

    fn to_window(self, at: Pos2) -> Pos2 {
        self.foot + vec2(at.x, -at.y) * self.per_m
    }

    fn area(self, of: Area) -> Area {
        Area::from_two_pos(self.to_window(of.min), self.to_window(of.max))
    }

    /// The console's face on the machine.
    pub fn face(self) -> Face {
        let per_m = self.per_m * (CABINET.width() - 0.04) / FACE_SIZE.x;
        Face::at(self.to_window(FACE_AT), per_m)
    }

    /// What hands find.
    pub fn places(self, plugged: bool, lid_open: bool) -> Vec<(GripKind, Place)> {
        let lid = self.area(if lid_open { LID_OPEN } else { LID_SHUT });
        let plug = self.to_window(if plugged { PLUG_IN } else { PLUG_OUT });
        let size = (PLUG_SIZE * self.per_m).max(24.0);
        vec![
            (GripKind::Pick(Pick::Lid), Place::Box(lid.expand(6.0))),
            (
                GripKind::Pick(Pick::Plug),
                Place::Box(Area::from_center_size(plug, vec2(size, size))),
            ),
        ]
    }
}

/// A hose or a cord: from its first point to its last, drawn towards those between.
fn curve(painter: &Painter, points: [Pos2; 4], line: Stroke) {
    let curve = CubicBezierShape::from_points_stroke(points, false, Color32::TRANSPARENT, line);
    painter.add(curve);
}

/// Draws it.
pub fn paint(painter: &Painter, frame: Frame, shown: &Shown) {
    let displayed = shown.displayed;
    let line = Stroke::new(1.5, t::EDGE);
    let thick = Stroke::new(4.0, t::LINE);
    // Floor and wall.
    let floor = frame.to_window(pos2(0.0, 0.0)).y;
    painter.hline(
        painter.clip_rect().x_range(),
        floor,
        Stroke::new(2.0, t::LINE),
    );
    if shown.bench.view().machine.floor_l > 0.0 {
        let puddle = Area::from_two_pos(
            frame.to_window(pos2(-0.55, 0.012)),
            frame.to_window(pos2(0.55, -0.012)),
        );
        painter.rect_filled(puddle, 6.0, t::SKY);
    }
    // Taps and hoses, drain hose and standpipe.
    for (x, ink) in [(-0.62, t::SKY), (-0.52, t::BAD)] {
        let tap = frame.to_window(pos2(x, 1.30));
        let into = frame.to_window(pos2(CABINET.min.x, 0.80));
        let (down, across) = (pos2(x, 0.75), pos2(x + 0.1, 0.80));
        curve(
            painter,
            [tap, frame.to_window(down), frame.to_window(across), into],
            thick,
        );
        painter.circle(tap, 0.028 * frame.per_m, ink, line);
    }
    let standpipe = frame.area(Area::from_min_max(pos2(-0.70, 0.02), pos2(-0.65, 0.86)));
    painter.rect(standpipe, 3.0, t::PANEL, line, StrokeKind::Inside);
    let drain = [
        (-0.34, 0.12),
        (-0.46, 0.10),
        (-0.56, 0.5),
        (-0.60, 0.92),
        (-0.675, 0.94),
        (-0.675, 0.80),
    ];
    painter.add(Shape::line(
        drain.map(|(x, y)| frame.to_window(pos2(x, y))).to_vec(),
        thick,
    ));
    // Cord, outlet and plug.
    let outlet = Area::from_center_size(frame.to_window(PLUG_IN), vec2(0.12, 0.12) * frame.per_m);
    painter.rect(outlet, 6.0, t::CARD, line, StrokeKind::Inside);
    let plug = frame.to_window(if displayed.plugged { PLUG_IN } else { PLUG_OUT });
    let sag = [
        (0.44, 0.20),
        (0.60, if displayed.plugged { 0.40 } else { 0.0 }),
    ];
    let [from, to] = sag.map(|(x, y)| frame.to_window(pos2(x, y)));
    curve(painter, [frame.to_window(CORD), from, to, plug], thick);
    let body = Area::from_center_size(plug, vec2(PLUG_SIZE, PLUG_SIZE) * frame.per_m);
    painter.rect(
        body,
        8.0,
        t::FIELD,
        Stroke::new(2.0, t::TEXT),
        StrokeKind::Inside,
    );
    for x in [-0.014, 0.014] {
        let from = plug + vec2(x, -0.014) * frame.per_m;
        let to = plug + vec2(x, 0.010) * frame.per_m;
        painter.line_segment([from, to], Stroke::new(3.0, t::TEXT));
    }
    // Cabinet, tub, water, basket and laundry.
    let shake = displayed.shake_mm as f32 / 1000.0
        * frame.per_m
        * (displayed.basket_rev as f32 * TAU).sin();
    let shaken = |of: Area| frame.area(of).translate(vec2(shake, 0.0));
    painter.rect(
        shaken(CABINET),
        8.0,
        t::CARD,
        Stroke::new(2.0, t::EDGE),
        StrokeKind::Inside,
    );
    let tub = shaken(TUB);
    painter.rect(tub, 10.0, t::INK, line, StrokeKind::Inside);
    let level = (displayed.level_mm as f32 / 1000.0).clamp(0.0, TUB.height());
    if level > 0.0 {
        let top = tub.bottom() - level * frame.per_m;
        let water = Area::from_min_max(pos2(tub.left(), top), tub.max).shrink2(vec2(1.5, 0.0));
        painter.rect_filled(water, 4.0, t::SKY.gamma_multiply(0.45));
    }
    if displayed.laundry {
        let spots = [
            (-0.15, 0.06),
            (-0.04, 0.09),
            (0.08, 0.06),
            (0.17, 0.10),
            (0.02, 0.16),
        ];
        for ((x, y), ink) in spots.into_iter().zip(t::CAUSES.into_iter().cycle()) {
            let at = frame.to_window(pos2(x, BASKET.min.y + y)) + vec2(shake, 0.0);
            painter.circle_filled(at, 0.055 * frame.per_m, ink.gamma_multiply(0.5));
        }
    }
    let basket = shaken(BASKET);
    painter.rect_stroke(basket, 8.0, line, StrokeKind::Inside);
    // The basket's holes pass by as it turns; only those in front are seen.
    for n in 0..12 {
        let angle = TAU * (n as f32 / 12.0 + displayed.basket_rev.fract() as f32);
        if angle.cos() > 0.0 {
            let x = basket.center().x + angle.sin() * basket.width() / 2.0;
            painter.vline(x, basket.y_range(), Stroke::new(1.0, t::LINE));
        }
    }
    let agitator = basket.center_bottom() - vec2(0.0, 4.0);
    let swing = (TAU * displayed.agitator_rev.fract() as f32).sin() * 0.08 * frame.per_m;
    let fin = vec![
        agitator + vec2(-0.06, 0.0) * frame.per_m,
        agitator + vec2(swing, -0.30 * frame.per_m),
        agitator + vec2(0.06, 0.0) * frame.per_m,
    ];
    painter.add(Shape::convex_polygon(fin, t::FIELD, line));
    // Lid.
    let lid = shaken(if displayed.lid_open {
        LID_OPEN
    } else {
        LID_SHUT
    });
    painter.rect(
        lid,
        4.0,
        t::QUIET,
        Stroke::new(2.0, t::TEXT),
        StrokeKind::Inside,
    );
}
