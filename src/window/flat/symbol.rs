//! A small sign for each component, as circuit diagrams draw it where they have one (IEC 60617, from memory).

use crate::tokens as t;
use bevy_egui::egui::{
    Align2, FontId, Painter, Pos2, Rect as Area, Shape, Stroke, StrokeKind, vec2,
};
use detent_simulation::interface::Component as Part;
use std::f32::consts::TAU;

/// The pencil with which a sign is drawn: its middle and half its width, points.
struct Pencil<'a> {
    painter: &'a Painter,
    middle: Pos2,
    half: f32,
}

impl Pencil<'_> {
    fn line(&self) -> Stroke {
        Stroke::new(1.5, t::QUIET)
    }

    fn at(&self, x: f32, y: f32) -> Pos2 {
        self.middle + vec2(x, -y) * self.half
    }

    fn path(&self, points: &[(f32, f32)]) {
        let points = points.iter().map(|(x, y)| self.at(*x, *y)).collect();
        self.painter.add(Shape::line(points, self.line()));
    }

    fn rect(&self, width: f32, height: f32) {
        let size = vec2(width, height) * self.half;
        let area = Area::from_center_size(self.middle, size);
        (self.painter).rect_stroke(area, 2.0, self.line(), StrokeKind::Middle);
    }

    fn circle(&self, x: f32, y: f32, radius: f32) {
        (self.painter).circle_stroke(self.at(x, y), radius * self.half, self.line());
    }

    /// A circle with a letter in it, between its two leads.
    fn lettered(&self, letter: &str) {
        self.circle(0.0, 0.0, 0.55);
        self.leads(0.55);
        let font = FontId::proportional(self.half * 0.75);
        let middle = Align2::CENTER_CENTER;
        (self.painter).text(self.middle, middle, letter, font, t::QUIET);
    }

    /// Leads to both sides from so far out.
    fn leads(&self, from: f32) {
        self.path(&[(-1.0, 0.0), (-from, 0.0)]);
        self.path(&[(from, 0.0), (1.0, 0.0)]);
    }

    fn wave(&self) {
        let points = (0..=16).map(|i| {
            let x = i as f32 / 8.0 - 1.0;
            (x, 0.3 * (x * TAU * 0.75).sin())
        });
        self.path(&points.collect::<Vec<_>>());
    }
}

/// Draws the sign of `part` about `middle`, within `half` to each side.
pub fn paint(painter: &Painter, middle: Pos2, half: f32, part: Part) {
    let pencil = Pencil {
        painter,
        middle,
        half,
    };
    match part {
        Part::Motor | Part::DrainPump => pencil.lettered("M"),
        Part::PressureSensor => pencil.lettered("p"),
        Part::Pickup => pencil.lettered("n"),
        Part::InletCold | Part::InletHot | Part::ClutchActuator => {
            // A coil.
            pencil.rect(0.9, 0.6);
            pencil.leads(0.45);
        }
        Part::LineFuse => {
            pencil.rect(1.1, 0.5);
            pencil.path(&[(-1.0, 0.0), (1.0, 0.0)]);
        }
        Part::RunCapacitor => {
            pencil.path(&[(-0.12, -0.5), (-0.12, 0.5)]);
            pencil.path(&[(0.12, -0.5), (0.12, 0.5)]);
            pencil.leads(0.12);
        }
        Part::Thermistor => {
            pencil.rect(1.0, 0.5);
            pencil.leads(0.5);
            pencil.path(&[(-0.7, -0.5), (-0.45, -0.5), (0.6, 0.55)]);
        }
        Part::LidLock => {
            pencil.path(&[(-1.0, 0.0), (-0.4, 0.0), (0.4, 0.45)]);
            pencil.path(&[(0.4, 0.0), (1.0, 0.0)]);
        }
        Part::Filter => {
            // Two coils and a capacitor between the lines.
            for y in [-0.45, 0.45] {
                pencil.path(&[(-1.0, y), (1.0, y)]);
                let area = Area::from_center_size(pencil.at(0.0, y), vec2(0.7, 0.3) * half);
                painter.rect_filled(area, 0.0, t::QUIET);
            }
        }
        Part::Board => {
            pencil.rect(1.7, 1.1);
            pencil.path(&[
                (-0.4, -0.2),
                (-0.4, 0.2),
                (0.4, 0.2),
                (0.4, -0.2),
                (-0.4, -0.2),
            ]);
        }
        Part::Cord => {
            pencil.path(&[(-1.0, 0.0), (-0.2, 0.0)]);
            pencil.path(&[
                (-0.2, -0.4),
                (-0.2, 0.4),
                (0.3, 0.4),
                (0.3, -0.4),
                (-0.2, -0.4),
            ]);
            pencil.path(&[(0.3, 0.2), (0.8, 0.2)]);
            pencil.path(&[(0.3, -0.2), (0.8, -0.2)]);
        }
        Part::Harness => {
            for y in [-0.35, 0.0, 0.35] {
                pencil.path(&[(-1.0, y), (1.0, y)]);
            }
        }
        Part::Belt => {
            pencil.circle(-0.6, 0.0, 0.2);
            pencil.circle(0.45, 0.0, 0.45);
            pencil.path(&[(-0.62, 0.22), (0.42, 0.47)]);
            pencil.path(&[(-0.62, -0.22), (0.42, -0.47)]);
        }
        Part::Tub => pencil.path(&[(-0.6, 0.6), (-0.55, -0.55), (0.55, -0.55), (0.6, 0.6)]),
        Part::Dial => {
            pencil.circle(0.0, 0.0, 0.6);
            pencil.path(&[(0.0, 0.15), (0.0, 0.6)]);
        }
        Part::DrainHose | Part::PressureHose | Part::InletHoses => pencil.wave(),
        Part::Supply | Part::Laundry | Part::Taps | Part::Floor => {}
    }
}
