//! The components behind the panels, each a box with its name and its terminals.

use super::{FlatScene, GripKind, Place, Shown, edge, part_of, probes, symbol};
use crate::pointing::Pick;
use crate::tokens as t;
use bevy_egui::egui::{
    Align, Color32, FontId, Painter, Pos2, Rect as Area, Stroke, StrokeKind, pos2, text::LayoutJob,
    vec2,
};
use detent_simulation::interface::{Component as Part, Connector, Pin};

/// Boxes across and down.
const COLUMNS: usize = 4;
const ROWS: usize = 5;
/// Around each box, points.
const GAP: f32 = 8.0;
/// Room for captions above and below, points.
const MARGIN: f32 = 44.0;

/// Where a component's box is: column from the left, row from the top. None for what is not behind the panels.
const fn cell(part: Part) -> Option<(usize, usize)> {
    match part {
        Part::InletCold => Some((0, 0)),
        Part::InletHot => Some((1, 0)),
        Part::PressureSensor => Some((2, 0)),
        Part::LidLock => Some((3, 0)),
        Part::LineFuse => Some((0, 1)),
        Part::Filter => Some((1, 1)),
        Part::PressureHose => Some((2, 1)),
        Part::Board => Some((3, 1)),
        Part::Cord => Some((0, 2)),
        Part::RunCapacitor => Some((1, 2)),
        Part::Thermistor => Some((2, 2)),
        Part::Harness => Some((3, 2)),
        Part::Tub => Some((0, 3)),
        Part::Motor => Some((1, 3)),
        Part::Belt => Some((2, 3)),
        Part::Pickup => Some((3, 3)),
        Part::DrainHose => Some((0, 4)),
        Part::DrainPump => Some((1, 4)),
        Part::ClutchActuator => Some((2, 4)),
        Part::Dial => Some((3, 4)),
        Part::Supply | Part::Laundry | Part::Taps | Part::InletHoses | Part::Floor => None,
    }
}

/// Every box.
pub fn places(stage: Area) -> Vec<(GripKind, Place)> {
    let all = stage.shrink2(vec2(GAP, MARGIN));
    let size = vec2(all.width() / COLUMNS as f32, all.height() / ROWS as f32);
    let boxes = Part::ALL.iter().filter_map(|part| {
        let (column, row) = cell(*part)?;
        let corner = all.min + vec2(column as f32 * size.x, row as f32 * size.y);
        let area = Area::from_min_size(corner, size).shrink(GAP / 2.0);
        Some((GripKind::Pick(Pick::Part(*part)), Place::Box(area)))
    });
    boxes.collect()
}

/// A component's pins on its own box, in order.
fn pins_of(part: Part) -> impl Iterator<Item = Pin> {
    Pin::all().filter(move |pin| part_of(*pin) == part)
}

/// Where a pin is on its component's box.
fn spot(area: Area, pin: Pin) -> Pos2 {
    let part = part_of(pin);
    let count = pins_of(part).count();
    let nth = pins_of(part).position(|other| other == pin).unwrap_or(0);
    // The board has many: in two rows.
    let rows = if count > 12 { 3 } else { 1 };
    let (column, row, columns) = (
        nth % count.div_ceil(rows),
        nth / count.div_ceil(rows),
        count.div_ceil(rows),
    );
    let x = area.left() + area.width() * (column as f32 + 0.5) / columns as f32;
    pos2(x, area.bottom() - 9.0 - 9.0 * row as f32)
}

/// Draws the boxes, the pins and the probes.
pub fn paint(painter: &Painter, flat: &FlatScene, shown: &Shown) {
    let view = shown.bench.view();
    for (kind, place) in &flat.places {
        let (GripKind::Pick(Pick::Part(part)), Place::Box(area)) = (*kind, *place) else {
            continue;
        };
        let chosen = shown.ui_state.selected == Some(part);
        let line = if chosen {
            Stroke::new(2.5, t::SKY)
        } else {
            Stroke::new(1.5, t::EDGE)
        };
        painter.rect(area, 6.0, t::CARD, line, StrokeKind::Inside);
        let mut job = LayoutJob::simple(
            shown.texts.component(part),
            FontId::proportional(15.0),
            t::TEXT,
            area.width() - 12.0,
        );
        job.halign = Align::Center;
        let name = painter.layout_job(job);
        painter.galley(pos2(area.center().x, area.top() + 8.0), name, t::TEXT);
        let sign = area.center() + vec2(0.0, 6.0);
        symbol::paint(painter, sign, (area.height() * 0.19).min(26.0), part);
        for pin in pins_of(part) {
            painter.circle_filled(spot(area, pin), 2.5, t::QUIET);
        }
    }
    for connector in view.pulled {
        // What is pulled hangs beside its component.
        let part = match connector {
            Connector::Load(part) => *part,
            Connector::Board(_) => Part::Board,
        };
        if let Some(Place::Box(area)) = flat.place(Pick::Part(part)) {
            edge(
                painter,
                Place::Box(area.shrink(5.0)),
                Stroke::new(2.0, t::AMBER),
            );
        }
    }
    let inks = [(t::PROBE_RED, 18.0), (Color32::BLACK, -18.0)];
    for (pin, (ink, lean)) in probes(shown).into_iter().zip(inks) {
        let Some(pin) = pin else { continue };
        if let Some(Place::Box(area)) = flat.place(Pick::Part(part_of(pin))) {
            let at = spot(area, pin);
            let handle = at + vec2(lean, -22.0);
            painter.line_segment([at, handle], Stroke::new(7.0, t::TEXT));
            painter.line_segment([at, handle], Stroke::new(5.0, ink));
            painter.circle(at, 4.0, ink, Stroke::new(1.5, t::TEXT));
        }
    }
}
