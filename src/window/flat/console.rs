//! The console's face, drawn flat from the same layout as the scene's.

use super::{GripKind, Place};
use crate::pointing::Pick;
use crate::scene::console::layout::{
    Cap, FACE_SIZE, Form, Knob, LampId, Layout, Plate, mark_height,
};
use crate::tokens as t;
use bevy::prelude::Vec2;
use bevy_egui::egui::{
    Align2, Color32, FontId, Painter, Pos2, Rect as Area, Shape, Stroke, StrokeKind, vec2,
};
use detent_simulation::controller::Lamps;
use detent_simulation::interface::Button;
use std::f32::consts::TAU;

/// How much wider and higher than the lamps' middles their field is, m.
const ROUND_LAMPS_M: f32 = 0.036;
/// How far the knob reaches, m.
const KNOB_M: f32 = 0.055;
/// A letter's height is so much of its font's size.
const CAP_HEIGHT: f32 = 0.70;
/// Smaller letters than this are left out, and none are smaller than that, points.
const UNREADABLE: f32 = 8.0;
const SMALLEST: f32 = 11.0;
/// Smallest radius for a finger, points.
const FINGER: f32 = 14.0;

/// What a console shows at a moment.
#[derive(Clone, Copy, Debug, Default)]
pub struct ConsoleState {
    /// Lamps lit now.
    pub lamps: Lamps,
    /// Where the knob points, in detents clockwise from the index, and how far a hand strains it beyond.
    pub turned: f32,
    /// Buttons that are down.
    pub held: [bool; Button::ALL.len()],
}

/// Where the face is in the window.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Face {
    middle: Pos2,
    /// Points for a meter.
    per_m: f32,
}

impl Face {
    /// As large as it can be within `stage`.
    pub fn alone(stage: Area) -> Face {
        let per_m = (stage.width() * 0.94 / FACE_SIZE.x).min(stage.height() * 0.8 / FACE_SIZE.y);
        Face {
            middle: stage.center(),
            per_m,
        }
    }

    /// Round this middle.
    pub fn at(middle: Pos2, per_m: f32) -> Face {
        Face { middle, per_m }
    }

    /// From a place on the face, m from its middle and up, to the window.
    fn to_window(self, place: Vec2) -> Pos2 {
        self.middle + vec2(place.x, -place.y) * self.per_m
    }

    /// From a place in the window to the face, m from its middle and up.
    pub fn to_face(self, at: Pos2) -> Vec2 {
        let way = (at - self.middle) / self.per_m;
        Vec2::new(way.x, -way.y)
    }

    fn rect(self, middle: Vec2, size: Vec2) -> Area {
        Area::from_center_size(self.to_window(middle), vec2(size.x, size.y) * self.per_m)
    }

    /// Each lamp's middle and the radius of its lens, points.
    pub fn lamps(self, layout: &Layout) -> impl Iterator<Item = (LampId, Pos2, f32)> {
        layout.lamps.iter().map(move |lamp| {
            let radius_m = match &lamp.form {
                Form::Round(radius) => *radius,
                Form::Bar(corners) => corners.iter().map(|c| c.length()).fold(f32::MAX, f32::min),
            };
            (lamp.id, self.to_window(lamp.at), radius_m * self.per_m)
        })
    }

    /// What hands and eyes find on it.
    pub fn places(self, layout: &Layout) -> Vec<(GripKind, Place)> {
        let lamps = layout.code_field().map(|field| {
            let field = self.rect(field.center(), field.size() + ROUND_LAMPS_M);
            (GripKind::Lamps, Place::Box(field))
        });
        let knob = layout.knob.map(|knob| {
            let disc = Place::Disc(self.to_window(knob.middle), KNOB_M * self.per_m);
            (GripKind::Pick(Pick::Knob), disc)
        });
        let buttons = layout
            .buttons_by_line()
            .into_iter()
            .map(|(button, at, cap)| {
                let middle = self.to_window(at);
                let place = match cap {
                    Cap::Round(radius) => Place::Disc(middle, (radius * self.per_m).max(FINGER)),
                    Cap::Pad(size) | Cap::Key(size) => Place::Box(self.rect(at, size)),
                };
                (GripKind::Pick(Pick::Button(button)), place)
            });
        lamps.into_iter().chain(knob).chain(buttons).collect()
    }
}

fn text(painter: &Painter, at: Pos2, height: f32, words: &str, ink: Color32) {
    let size = height / CAP_HEIGHT;
    if size >= UNREADABLE {
        let font = FontId::proportional(size.max(SMALLEST));
        painter.text(at, Align2::CENTER_CENTER, words, font, ink);
    }
}

/// The sign on a button, about its middle.
fn sign(painter: &Painter, middle: Pos2, size: f32, button: Button, ink: Color32) {
    let p = |x: f32, y: f32| middle + vec2(x, -y) * size;
    let stairs = |up: f32| {
        for y in [-0.5, 0.3] {
            let points = vec![p(-0.8, y * up), p(0.0, (y + 0.6) * up), p(0.8, y * up)];
            painter.add(Shape::line(points, Stroke::new(size * 0.3, ink)));
        }
    };
    match button {
        Button::Start => {
            let points = vec![p(-0.6, 0.9), p(1.0, 0.0), p(-0.6, -0.9)];
            painter.add(Shape::convex_polygon(points, ink, Stroke::NONE));
        }
        Button::Stop => {
            let square = Area::from_center_size(middle, vec2(1.5, 1.5) * size);
            painter.rect_filled(square, size * 0.2, ink);
        }
        Button::More => stairs(1.0),
        Button::Less => stairs(-1.0),
    }
}

fn knob(painter: &Painter, face: Face, knob: &Knob, turned: f32, ink: Color32, first: Color32) {
    let middle = face.to_window(knob.middle);
    let out = |towards: Vec2, far: f32| middle + vec2(towards.x, -towards.y) * far * face.per_m;
    let every = if knob.stops > 16 { 6 } else { 1 };
    for stop in 0..knob.stops {
        let (towards, ink) = (knob.towards(stop), if stop == 0 { first } else { ink });
        painter.line_segment(
            [out(towards, 0.060), out(towards, 0.068)],
            Stroke::new(1.5, ink),
        );
        if stop % every == 0 {
            text(
                painter,
                out(towards, 0.0765),
                0.0082 * face.per_m,
                &stop.to_string(),
                ink,
            );
        }
    }
    painter.circle_filled(middle, KNOB_M * face.per_m, t::FIELD);
    painter.circle_stroke(middle, KNOB_M * face.per_m, Stroke::new(2.0, t::EDGE));
    let angle = TAU * (0.25 - turned / f32::from(knob.stops.max(1)));
    let towards = Vec2::from_angle(angle);
    painter.line_segment(
        [out(towards, 0.020), out(towards, 0.052)],
        Stroke::new(0.008 * face.per_m, t::AMBER),
    );
}

/// A closed padlock, about its middle.
fn padlock(painter: &Painter, middle: Pos2, size: f32, ink: Color32) {
    let body = Area::from_center_size(middle + vec2(0.0, size * 0.35), vec2(1.5, 1.1) * size);
    painter.rect_filled(body, size * 0.2, ink);
    let bow: Vec<Pos2> = (0..=8)
        .map(|i| {
            let angle = TAU / 2.0 * i as f32 / 8.0;
            middle + vec2(angle.cos() * 0.5, -angle.sin() * 0.6 - 0.2) * size
        })
        .collect();
    painter.add(Shape::line(bow, Stroke::new(size * 0.25, ink)));
}

/// Draws the plate with its print: the ink of the print, and that of a knob's first stop.
fn plate(painter: &Painter, layout: &Layout, face: Face) -> (Color32, Color32) {
    let plate = face.rect(Vec2::ZERO, FACE_SIZE);
    let (ground, ink, first) = match layout.plate {
        Plate::Glass => (t::PANEL, t::CONSOLE_PRINT, t::CONSOLE_AMBER),
        Plate::Painted => (t::CARD, t::CONSOLE_PRINT, t::CONSOLE_AMBER),
        Plate::Steel => (t::QUIET, t::CONSOLE_INK, t::CONSOLE_INK),
    };
    let corner = 0.02 * face.per_m;
    painter.rect_filled(plate, corner, ground);
    painter.rect_stroke(plate, corner, Stroke::new(1.5, t::EDGE), StrokeKind::Inside);
    if let Some((middle, size)) = layout.window {
        painter.rect_filled(face.rect(middle, size), 0.01 * face.per_m, t::INK);
    }
    for (words, place) in &layout.marks {
        let height = mark_height(words) * face.per_m;
        text(painter, face.to_window(*place), height, words, ink);
    }
    for (middle, radius, from, to) in &layout.braces {
        let arc = (0..=16)
            .map(|i| from + (to - from) * i as f32 / 16.0)
            .map(|angle| face.to_window(*middle + Vec2::from_angle(angle) * *radius));
        painter.add(Shape::line(arc.collect(), Stroke::new(1.5, ink)));
    }
    (ink, first)
}

/// Draws the lamps, lit as they are.
fn lamps(
    painter: &Painter,
    (layout, face): (&Layout, Face),
    (lit, ink): (Color32, Color32),
    lamps: Lamps,
) {
    for lamp in &layout.lamps {
        let on = lamp.id.lit(lamps);
        let lit = match lamp.id {
            LampId::Code(_) => lit,
            LampId::Lock => t::LAMP_LIT,
        };
        let colour = if on { lit } else { t::INK };
        let middle = face.to_window(lamp.at);
        match &lamp.form {
            Form::Round(radius) => {
                let radius = radius * face.per_m;
                if on {
                    painter.circle_filled(middle, radius * 1.9, lit.gamma_multiply(0.25));
                }
                painter.circle_filled(middle, radius, colour);
                let line = Stroke::new(if on { 2.0 } else { 1.5 }, if on { lit } else { t::EDGE });
                painter.circle_stroke(middle, radius * 1.3, line);
            }
            Form::Bar(corners) => {
                let corners = corners
                    .iter()
                    .map(|corner| face.to_window(lamp.at + *corner));
                let colour = if on { lit } else { t::PANEL };
                painter.add(Shape::convex_polygon(
                    corners.collect(),
                    colour,
                    Stroke::NONE,
                ));
            }
        }
        if lamp.id == LampId::Lock {
            padlock(
                painter,
                middle + vec2(0.0, 0.030 * face.per_m),
                0.009 * face.per_m,
                ink,
            );
        }
    }
}

/// Draws the plate and its lamps alone.
pub fn paint_lamps(painter: &Painter, (layout, face): (&Layout, Face), lit: Color32, shown: Lamps) {
    let (ink, _) = plate(painter, layout, face);
    lamps(painter, (layout, face), (lit, ink), shown);
}

/// Draws the face.
pub fn paint(painter: &Painter, layout: &Layout, face: Face, lit: Color32, state: &ConsoleState) {
    let (ink, first) = plate(painter, layout, face);
    lamps(painter, (layout, face), (lit, ink), state.lamps);
    if let Some(plan) = &layout.knob {
        knob(painter, face, plan, state.turned, ink, first);
    }
    for (button, at, cap) in &layout.buttons {
        let down = state.held[button.index()];
        let (fill, sign_ink) = match (button, down) {
            (_, true) => (t::AMBER, t::ON_AMBER),
            (Button::Start, false) => (t::GOOD, t::ON_AMBER),
            (Button::Stop, false) => (t::BAD, t::ON_AMBER),
            (Button::More | Button::Less, false) => (t::FIELD, t::TEXT),
        };
        let middle = face.to_window(*at);
        let edge = Stroke::new(2.0, t::EDGE);
        let size = match cap {
            Cap::Round(radius) => {
                painter.circle(middle, radius * face.per_m, fill, edge);
                radius * 0.42
            }
            Cap::Pad(size) | Cap::Key(size) => {
                let area = face.rect(*at, *size);
                painter.rect(area, 6.0, fill, edge, StrokeKind::Inside);
                size.min_element() * 0.22
            }
        };
        sign(painter, middle, size * face.per_m, *button, sign_ink);
    }
}
