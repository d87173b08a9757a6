//! The wiring diagram, which is the pin table too: every wire from its pin on the board to the terminal
//! where it ends, and what lies between the terminals. A click puts the next probe there.

use crate::panels::{PanelContext, kit};
use crate::tokens as t;
use bevy_egui::egui::{
    self, Align2, CornerRadius, Painter, Pos2, Rect, Sense, Stroke, StrokeKind, Ui, Vec2, pos2,
    vec2,
};
use detent_content::wiring::{ELEMENTS, Element, terminal_number, wire_groups};
use detent_simulation::controller::BoardPin;
use detent_simulation::interface::{Component, Pin, Side};
use std::f32::consts::PI;
use std::sync::Arc;

/// Height of a wire's row, and of the name above the rows of a component.
const ROW: f32 = 27.0;
const NAME: f32 = 22.0;
/// From the left edge: pin on the board, its printed mark, the connector's halves, terminal, its number,
/// and the first of what lies between terminals.
const PIN_X: f32 = 38.0;
const MARK_X: f32 = 52.0;
const PLUG_X: f32 = 112.0;
const TERMINAL_X: f32 = 216.0;
const NUMBER_X: f32 = 228.0;
const ELEMENT_X: f32 = 262.0;
const ELEMENT_STEP: f32 = 40.0;

pub(super) fn wires(ui: &mut Ui, context: &mut PanelContext) {
    ui.label(context.text("sheet-wires-intro"));
    let job = Arc::clone(context.bench.job());
    for connector in &job.board.connectors {
        kit::print_heading(ui, connector.label.clone());
        for (component, pins) in wire_groups(connector) {
            group_ui(ui, context, component, &pins);
        }
    }
}

/// The wires of one connector that end at one component.
fn group_ui(ui: &mut Ui, context: &mut PanelContext, component: Component, pins: &[&BoardPin]) {
    let (rect, painter) = kit::canvas(ui, NAME + ROW * pins.len() as f32 + 4.0);
    kit::write(
        &painter,
        rect.left(),
        rect.top() + NAME / 2.0,
        Align2::LEFT_CENTER,
        t::SMALL,
        t::PRINT_ACCENT,
        context.part(component),
    );
    let height = |row: usize| rect.top() + NAME + ROW * (row as f32 + 0.5);
    for (row, pin) in pins.iter().enumerate() {
        wire(&painter, rect.left(), height(row), pin);
    }
    let row_of = |terminal| pins.iter().position(|pin| pin.terminal == terminal);
    for (from, to, element, column) in ELEMENTS {
        if let (Some(a), Some(b)) = (row_of(from), row_of(to)) {
            let x = rect.left() + ELEMENT_X + ELEMENT_STEP * f32::from(column);
            let (top, bottom) = (height(a.min(b)), height(a.max(b)));
            draw(&painter, rect.left() + TERMINAL_X, x, top, bottom, element);
        }
    }
    for (row, pin) in pins.iter().enumerate() {
        for (x, side) in [(PIN_X, Side::Board), (TERMINAL_X, Side::Load)] {
            let at = pos2(rect.left() + x, height(row));
            probe_ui(ui, context, &painter, at, Pin::Wire(pin.terminal, side));
        }
    }
}

/// A wire with its pin's number and mark, and the halves of the plug on the board.
fn wire(painter: &Painter, left: f32, y: f32, pin: &BoardPin) {
    let ink = if pin.terminal.is_mains() {
        t::PRINT_ACCENT
    } else {
        t::PRINT
    };
    let stroke = Stroke::new(2.0, ink);
    painter.line_segment(
        [pos2(left + PIN_X, y), pos2(left + MARK_X - 6.0, y)],
        stroke,
    );
    painter.line_segment(
        [pos2(left + PLUG_X - 26.0, y), pos2(left + TERMINAL_X, y)],
        stroke,
    );
    for x in [PLUG_X, PLUG_X + 6.0] {
        let tip = pos2(left + x + 4.0, y);
        painter.line_segment([tip - vec2(4.0, 5.0), tip], stroke);
        painter.line_segment([tip - vec2(4.0, -5.0), tip], stroke);
    }
    let text = |x, anchor, colour, text: String| {
        kit::write(painter, left + x, y, anchor, t::SMALL, colour, text);
    };
    text(
        PIN_X - 12.0,
        Align2::RIGHT_CENTER,
        t::PRINT_QUIET,
        pin.pin.to_string(),
    );
    text(MARK_X, Align2::LEFT_CENTER, t::PRINT, pin.label.clone());
    let number = terminal_number(pin.terminal).to_owned();
    text(NUMBER_X, Align2::LEFT_CENTER, t::PRINT_QUIET, number);
}

/// What lies between two terminals that stand at `left`, drawn upright at `x`.
fn draw(painter: &Painter, left: f32, x: f32, top: f32, bottom: f32, element: Element) {
    let ink = Stroke::new(1.8, t::PRINT);
    let line = |from: Pos2, to: Pos2| painter.line_segment([from, to], ink);
    let middle = (top + bottom) / 2.0;
    if let Element::Sensor = element {
        let body = Rect::from_min_max(pos2(x - 14.0, top - 8.0), pos2(x + 14.0, bottom + 8.0));
        painter.rect_stroke(body, CornerRadius::same(3), ink, StrokeKind::Inside);
        return;
    }
    for y in [top, bottom] {
        line(pos2(left + 24.0, y), pos2(x, y));
    }
    let half = 11.0;
    line(pos2(x, top), pos2(x, middle - half));
    line(pos2(x, middle + half), pos2(x, bottom));
    match element {
        Element::Winding => {
            let turns = 3;
            let size = half * 2.0 / turns as f32;
            let bumps: Vec<Pos2> = (0..=turns * 8)
                .map(|i| {
                    let turn = (i / 8).min(turns - 1) as f32;
                    let a = (i as f32 / 8.0 - turn) * PI - PI / 2.0;
                    pos2(x, middle - half + size * (turn + 0.5)) + Vec2::angled(a) * size / 2.0
                })
                .collect();
            painter.add(egui::Shape::line(bumps, ink));
        }
        Element::Contact => {
            for y in [middle - half, middle + half] {
                painter.circle_filled(pos2(x, y), 2.4, t::PRINT);
            }
            line(pos2(x, middle + half), pos2(x + 9.0, middle - half + 2.0));
        }
        Element::Capacitor => {
            for y in [-3.5, 3.5] {
                line(pos2(x - 10.0, middle + y), pos2(x + 10.0, middle + y));
            }
            line(pos2(x, middle - half), pos2(x, middle - 3.5));
            line(pos2(x, middle + 3.5), pos2(x, middle + half));
        }
        Element::Thermistor => {
            let body = Rect::from_center_size(pos2(x, middle), vec2(10.0, half * 2.0));
            painter.rect_stroke(body, CornerRadius::ZERO, ink, StrokeKind::Inside);
            line(pos2(x - 11.0, middle + 8.0), pos2(x + 11.0, middle - 8.0));
        }
        Element::Sensor => {}
    }
}

/// A place for a probe, with the probe if one is there.
fn probe_ui(ui: &mut Ui, context: &mut PanelContext, painter: &Painter, at: Pos2, pin: Pin) {
    let id = ui.id().with(("pin", pin.to_string()));
    let response = ui.interact(
        Rect::from_center_size(at, Vec2::splat(24.0)),
        id,
        Sense::click(),
    );
    let name = context.pin(pin);
    response.widget_info(|| egui::WidgetInfo::labeled(egui::WidgetType::Button, true, &name));
    let (red, black) = (
        context.ui_state.red == Some(pin),
        context.ui_state.black == Some(pin),
    );
    let fill = match (red, black) {
        (true, _) => t::PROBE_RED,
        (_, true) => t::INK,
        _ if response.hovered() || response.has_focus() => t::PAPER_SHADE,
        _ => t::PAPER,
    };
    let radius = if red || black { 7.5 } else { 5.0 };
    painter.circle(at, radius, fill, Stroke::new(1.8, t::PRINT));
    if response.on_hover_text(&name).clicked() {
        context.ui_state.put_probe(pin);
    }
}
