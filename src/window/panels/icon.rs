//! Small pictures on the buttons that do something to the machine.

use bevy_egui::egui::{
    Color32, CornerRadius, Painter, Pos2, Rect, Shape, Stroke, StrokeKind, pos2, vec2,
};

/// Width and height, points.
pub const SIZE: f32 = 18.0;

/// What a deed is done to, or with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Icon {
    /// The plug and its outlet.
    Plug,
    /// The lid.
    Lid,
    /// The cabinet's panels.
    Panels,
    /// A capacitor.
    Capacitor,
    /// A bucket.
    Bucket,
    /// A laundry basket.
    Basket,
    /// A drop of water.
    Drop,
    /// Time that passes.
    Clock,
    /// An eye that looks.
    Eye,
    /// A wrench.
    Wrench,
    /// A faucet.
    Faucet,
    /// The outlet's reset button.
    Outlet,
    /// A probe on a pin.
    Probe,
    /// A part in its box.
    Box,
    /// A part that goes back.
    Back,
    /// A sheet of paper.
    Paper,
}

impl Icon {
    /// Draws it into `rect`.
    pub fn paint(self, painter: &Painter, rect: Rect, ink: Color32) {
        let stroke = Stroke::new(1.6, ink);
        let at = |x: f32, y: f32| rect.min + vec2(x, y) * (rect.width() / 18.0);
        let line = |points: &[(f32, f32)]| {
            let points: Vec<Pos2> = points.iter().map(|(x, y)| at(*x, *y)).collect();
            painter.add(Shape::line(points, stroke));
        };
        let ring = |x: f32, y: f32, radius: f32| {
            painter.circle_stroke(at(x, y), radius * rect.width() / 18.0, stroke);
        };
        let dot = |x: f32, y: f32, radius: f32| {
            painter.circle_filled(at(x, y), radius * rect.width() / 18.0, ink);
        };
        let frame = |left: f32, top: f32, right: f32, low: f32| {
            let frame = Rect::from_min_max(at(left, top), at(right, low));
            painter.rect_stroke(frame, CornerRadius::same(2), stroke, StrokeKind::Middle);
        };
        match self {
            Icon::Plug => {
                line(&[(1.0, 9.0), (5.0, 9.0)]);
                frame(5.0, 4.5, 10.5, 13.5);
                line(&[(10.5, 7.0), (15.5, 7.0)]);
                line(&[(10.5, 11.0), (15.5, 11.0)]);
            }
            Icon::Lid => {
                frame(2.0, 10.0, 16.0, 16.0);
                line(&[(2.0, 10.0), (12.0, 2.0)]);
            }
            Icon::Panels => {
                frame(2.0, 2.0, 10.5, 16.0);
                frame(10.5, 4.0, 16.5, 14.0);
                dot(13.5, 9.0, 1.2);
            }
            Icon::Capacitor => {
                line(&[(1.0, 9.0), (7.0, 9.0)]);
                line(&[(7.0, 3.0), (7.0, 15.0)]);
                line(&[(11.0, 3.0), (11.0, 15.0)]);
                line(&[(11.0, 9.0), (17.0, 9.0)]);
            }
            Icon::Bucket => {
                line(&[
                    (3.0, 6.5),
                    (5.0, 16.0),
                    (13.0, 16.0),
                    (15.0, 6.5),
                    (3.0, 6.5),
                ]);
                line(&[(3.0, 6.5), (6.0, 2.5), (12.0, 2.5), (15.0, 6.5)]);
            }
            Icon::Basket => {
                line(&[
                    (1.5, 6.0),
                    (16.5, 6.0),
                    (14.5, 16.0),
                    (3.5, 16.0),
                    (1.5, 6.0),
                ]);
                for (top, low) in [(6.0, 6.6), (9.0, 9.0), (12.0, 11.4)] {
                    line(&[(top, 6.0), (low, 16.0)]);
                }
            }
            Icon::Drop => {
                line(&[
                    (9.0, 1.5),
                    (4.8, 8.5),
                    (4.2, 11.5),
                    (5.8, 14.8),
                    (9.0, 16.2),
                    (12.2, 14.8),
                    (13.8, 11.5),
                    (13.2, 8.5),
                    (9.0, 1.5),
                ]);
            }
            Icon::Clock => {
                ring(9.0, 9.0, 7.0);
                line(&[(9.0, 4.8), (9.0, 9.0), (12.2, 11.0)]);
            }
            Icon::Eye => {
                line(&[(1.0, 9.0), (5.0, 5.0), (9.0, 3.8), (13.0, 5.0), (17.0, 9.0)]);
                line(&[
                    (1.0, 9.0),
                    (5.0, 13.0),
                    (9.0, 14.2),
                    (13.0, 13.0),
                    (17.0, 9.0),
                ]);
                dot(9.0, 9.0, 2.4);
            }
            Icon::Wrench => {
                line(&[(3.0, 15.0), (10.5, 7.5)]);
                line(&[
                    (14.5, 2.2),
                    (11.0, 3.0),
                    (10.0, 6.6),
                    (12.0, 8.0),
                    (15.2, 7.0),
                    (15.8, 3.5),
                ]);
            }
            Icon::Faucet => {
                line(&[(6.0, 3.0), (12.0, 3.0)]);
                line(&[(9.0, 3.0), (9.0, 7.0)]);
                line(&[(2.0, 7.0), (13.0, 7.0), (15.0, 9.0), (15.0, 12.0)]);
                line(&[(2.0, 11.0), (11.5, 11.0), (11.5, 12.0)]);
                dot(13.2, 15.2, 1.4);
            }
            Icon::Outlet => {
                frame(3.0, 1.5, 15.0, 16.5);
                line(&[(7.0, 5.0), (7.0, 8.0)]);
                line(&[(11.0, 5.0), (11.0, 8.0)]);
                dot(9.0, 12.5, 1.8);
            }
            Icon::Probe => {
                line(&[(16.0, 2.0), (11.0, 7.0)]);
                line(&[(12.5, 8.5), (9.5, 5.5)]);
                line(&[(10.0, 8.0), (4.0, 14.0)]);
                ring(3.2, 14.8, 1.8);
            }
            Icon::Box => {
                frame(2.5, 5.5, 15.5, 16.0);
                line(&[(2.5, 5.5), (5.0, 2.0), (13.0, 2.0), (15.5, 5.5)]);
                line(&[(9.0, 2.0), (9.0, 9.0)]);
            }
            Icon::Back => {
                line(&[(7.0, 3.0), (2.5, 7.5), (7.0, 12.0)]);
                line(&[(2.5, 7.5), (12.0, 7.5), (15.5, 10.5), (15.5, 15.5)]);
            }
            Icon::Paper => {
                frame(3.5, 1.5, 14.5, 16.5);
                for y in [5.5, 9.0, 12.5] {
                    line(&[(6.0, y), (12.0, y)]);
                }
            }
        }
    }
}

/// A ring: begun.
pub fn ring(painter: &Painter, rect: Rect, ink: Color32) {
    painter.circle_stroke(rect.center(), 0.32 * rect.width(), Stroke::new(2.0, ink));
}

/// A tick: done.
pub fn tick(painter: &Painter, rect: Rect, ink: Color32) {
    let at = |x: f32, y: f32| rect.min + vec2(x, y) * rect.size();
    let points = vec![at(0.1, 0.55), at(0.4, 0.85), at(0.92, 0.18)];
    painter.add(Shape::line(points, Stroke::new(2.2, ink)));
}

/// An arrow head that says: this goes somewhere.
pub fn onward(painter: &Painter, rect: Rect, ink: Color32) {
    let middle = rect.center();
    let points = vec![
        middle + vec2(-2.5, -5.0),
        pos2(middle.x + 2.5, middle.y),
        middle + vec2(-2.5, 5.0),
    ];
    painter.add(Shape::line(points, Stroke::new(2.0, ink)));
}
