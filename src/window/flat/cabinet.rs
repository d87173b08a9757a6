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
    let boxes = boxes(stage.shrink2(vec2(GAP, MARGIN))).into_iter();
    let boxes = boxes.map(|(part, area)| (GripKind::Pick(Pick::Part(part)), Place::Box(area)));
    boxes.collect()
}

/// Every component with its box within `all`, row by row.
pub fn boxes(all: Area) -> Vec<(Part, Area)> {
    let size = vec2(all.width() / COLUMNS as f32, all.height() / ROWS as f32);
    let mut cells: Vec<(usize, usize, Part)> = (Part::ALL.iter())
        .filter_map(|part| cell(*part).map(|(column, row)| (row, column, *part)))
        .collect();
    cells.sort_unstable();
    let area = |(row, column, part): (usize, usize, Part)| {
        let corner = all.min + vec2(column as f32 * size.x, row as f32 * size.y);
        (part, Area::from_min_size(corner, size).shrink(GAP / 2.0))
    };
    cells.into_iter().map(area).collect()
}

/// A sign smaller than this to each side is left out, points.
const LEAST_SIGN: f32 = 6.0;

/// Draws a component's box with its name, in letters of this size, and its sign where there is room below the name.
pub fn paint_box(
    painter: &Painter,
    (part, area): (Part, Area),
    (name, letters): (String, f32),
    line: Stroke,
) {
    painter.rect(area, 6.0, t::CARD, line, StrokeKind::Inside);
    let font = FontId::proportional(letters);
    let mut job = LayoutJob::simple(name, font, t::TEXT, area.width() - 8.0);
    job.halign = Align::Center;
    let name = painter.layout_job(job);
    let low = area.top() + 8.0 + name.size().y;
    painter.galley(pos2(area.center().x, area.top() + 8.0), name, t::TEXT);
    let half = (area.height() * 0.19).min(26.0);
    let half = half.min((area.bottom() - 4.0 - low) / 2.0);
    if half >= LEAST_SIGN {
        let middle = (area.center().y + 6.0).max(low + half);
        symbol::paint(painter, pos2(area.center().x, middle), half, part);
    }
}

/// Where each pin of a component is on its box, in order.
fn spots(area: Area, part: Part) -> impl Iterator<Item = (Pin, Pos2)> {
    let pins: Vec<Pin> = Pin::all().filter(|pin| part_of(*pin) == part).collect();
    // The board has too many for one row.
    let rows = if pins.len() > 12 { 3 } else { 1 };
    let columns = pins.len().div_ceil(rows).max(1);
    pins.into_iter().enumerate().map(move |(nth, pin)| {
        let (column, row) = (nth % columns, nth / columns);
        let x = area.left() + area.width() * (column as f32 + 0.5) / columns as f32;
        (pin, pos2(x, area.bottom() - 9.0 - 9.0 * row as f32))
    })
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
        paint_box(
            painter,
            (part, area),
            (shown.texts.component(part), 15.0),
            line,
        );
        for (_, at) in spots(area, part) {
            painter.circle_filled(at, 2.5, t::QUIET);
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
        let part = part_of(pin);
        if let Some(Place::Box(area)) = flat.place(Pick::Part(part))
            && let Some((_, at)) = spots(area, part).find(|(other, _)| *other == pin)
        {
            let handle = at + vec2(lean, -22.0);
            painter.line_segment([at, handle], Stroke::new(7.0, t::TEXT));
            painter.line_segment([at, handle], Stroke::new(5.0, ink));
            painter.circle(at, 4.0, ink, Stroke::new(1.5, t::TEXT));
        }
    }
}
