//! The wiring diagram and the pin table. Wires run straight from the board's pins to the terminals, those of one component
//! together, so that none crosses another; those that carry line voltage are thick.

use super::canvas::{Anchor, Area, BLACK, Canvas, SHADE};
use super::document::Sheet;
use super::draft::{BODY, Cell, Draft, NOTE, SMALL, STRONG, TableShape};
use detent_content::Texts;
use detent_content::wiring::{ELEMENTS, Element, terminal_number, wire_groups};
use detent_simulation::controller::{BoardConnector, BoardPin};
use detent_simulation::interface::Component;

/// Height of a wire's row, of the gap between components, and of a connector's name.
const ROW: f32 = 15.0;
const GAP: f32 = 7.0;
const NAME: f32 = 16.0;
/// From the column's left edge: the board's edge, the connector's halves, the terminal, its number, the first of
/// what lies between terminals, and the component's name.
const EDGE_X: f32 = 50.0;
const PLUG_X: f32 = 74.0;
const TERMINAL_X: f32 = 106.0;
const NUMBER_X: f32 = 111.0;
const ELEMENT_X: f32 = 136.0;
const ELEMENT_STEP: f32 = 24.0;
const NAME_X: f32 = 184.0;

/// A wire that carries line voltage, and one that does not, pt.
const LINE_VOLTAGE: f32 = 1.9;
const LOW_VOLTAGE: f32 = 0.8;

pub(super) fn wires(draft: &mut Draft, sheet: &Sheet<'_>) {
    let (texts, board) = (sheet.texts, sheet.library.board);
    draft.page();
    draft.heading(2, &texts.get("sheet-pins"), 200.0);
    draft.paragraph(&texts.get("paper-wires-intro"), BODY);
    let (left, right) = halves(&board.connectors);
    let height = column_height(left).max(column_height(right)) + 6.0;
    draft.figure(&texts.get("paper-wires-alt"), height, |canvas, area| {
        let wide = area.width / 2.0;
        column(canvas, area.left, (area.top, wide - 8.0), left, texts);
        let second = area.left + wide + 4.0;
        column(canvas, second, (area.top, wide - 4.0), right, texts);
    });
    pins(draft, texts, &board.connectors);
}

fn connector_height(connector: &BoardConnector) -> f32 {
    let groups = wire_groups(connector).len() as f32;
    NAME + ROW * connector.pins.len() as f32 + GAP * groups
}

fn column_height(connectors: &[BoardConnector]) -> f32 {
    connectors.iter().map(connector_height).sum()
}

/// The connectors in two columns whose heights differ least; their order stays.
fn halves(connectors: &[BoardConnector]) -> (&[BoardConnector], &[BoardConnector]) {
    let higher = |n: &usize| {
        let (left, right) = connectors.split_at(*n);
        column_height(left).max(column_height(right))
    };
    let best = (0..=connectors.len()).min_by(|a, b| higher(a).total_cmp(&higher(b)));
    connectors.split_at(best.unwrap_or_default())
}

fn column(
    canvas: &mut Canvas<'_>,
    left: f32,
    (top, wide): (f32, f32),
    connectors: &[BoardConnector],
    texts: &Texts,
) {
    let mut y = top;
    for connector in connectors {
        let height = connector_height(connector);
        let block = Area {
            left,
            top: y + 2.0,
            width: EDGE_X,
            height: height - 6.0,
        };
        canvas.rect(block, Some(SHADE), Some((BLACK, 0.9)));
        let middle = (left + EDGE_X / 2.0, y + 13.5);
        canvas.text(middle, Anchor::Middle, STRONG, &connector.label);
        y += NAME;
        for (component, pins) in wire_groups(connector) {
            group(canvas, (left, y), wide, (component, &pins), texts);
            y += ROW * pins.len() as f32 + GAP;
        }
    }
}

/// The wires that end at one component.
fn group(
    canvas: &mut Canvas<'_>,
    (left, top): (f32, f32),
    wide: f32,
    (component, pins): (Component, &[&BoardPin]),
    texts: &Texts,
) {
    let height = |row: usize| top + ROW * (row as f32 + 0.5);
    for (row, pin) in pins.iter().enumerate() {
        wire(canvas, left, height(row), pin);
    }
    let row_of = |terminal| pins.iter().position(|pin| pin.terminal == terminal);
    for (from, to, element, place) in ELEMENTS {
        if let (Some(a), Some(b)) = (row_of(from), row_of(to)) {
            let x = left + ELEMENT_X + ELEMENT_STEP * f32::from(place);
            let from = left + NUMBER_X + 10.0;
            draw(
                canvas,
                (from, x),
                (height(a.min(b)), height(a.max(b))),
                element,
            );
        }
    }
    let frame = Area {
        left: left + TERMINAL_X,
        top: top + 0.5,
        width: wide - TERMINAL_X,
        height: ROW * pins.len() as f32 - 1.0,
    };
    canvas.rect(frame, None, Some((BLACK, 0.5)));
    for (row, _) in pins.iter().enumerate() {
        canvas.circle(
            (left + TERMINAL_X, height(row)),
            2.4,
            Some(255),
            Some((BLACK, 0.9)),
        );
    }
    let middle = (left + NAME_X, top + ROW * pins.len() as f32 / 2.0);
    let name = texts.component(component);
    canvas.block(middle, wide - NAME_X - 3.0, Anchor::Left, SMALL, &name);
}

/// A wire with its pin's number and mark, and the halves of the plug on the board.
fn wire(canvas: &mut Canvas<'_>, left: f32, y: f32, pin: &BoardPin) {
    let width = match pin.terminal.is_mains() {
        true => LINE_VOLTAGE,
        false => LOW_VOLTAGE,
    };
    canvas.text(
        (left + 16.0, y + 2.8),
        Anchor::Right,
        SMALL,
        &pin.pin.to_string(),
    );
    canvas.text(
        (left + 22.0, y + 2.8),
        Anchor::Left,
        STRONG_SMALL,
        &pin.label,
    );
    canvas.line(&[(left + EDGE_X, y), (left + TERMINAL_X - 2.4, y)], width);
    for x in [PLUG_X, PLUG_X + 4.0] {
        let tip = left + x + 3.0;
        canvas.line(&[(tip - 3.0, y - 4.0), (tip, y), (tip - 3.0, y + 4.0)], 0.9);
    }
    let number = terminal_number(pin.terminal);
    canvas.text((left + NUMBER_X, y + 2.8), Anchor::Left, NOTE, number);
}

const STRONG_SMALL: super::canvas::Style = super::canvas::Style {
    size: SMALL.size,
    ..STRONG
};

/// What lies between two terminals, drawn upright at `x`.
fn draw(canvas: &mut Canvas<'_>, (from, x): (f32, f32), (top, bottom): (f32, f32), of: Element) {
    let ink = 0.9;
    let middle = (top + bottom) / 2.0;
    if of == Element::Sensor {
        let body = Area {
            left: x - 11.0,
            top: top - 4.0,
            width: 22.0,
            height: bottom - top + 8.0,
        };
        canvas.line(&[(from, top), (body.left, top)], ink);
        canvas.line(&[(from, bottom), (body.left, bottom)], ink);
        canvas.line(&[(from, middle), (body.left, middle)], ink);
        canvas.rect(body, None, Some((BLACK, ink)));
        return;
    }
    let half = ((bottom - top) / 2.0 - 1.0).clamp(4.0, 6.5);
    canvas.line(&[(from, top), (x, top), (x, middle - half)], ink);
    canvas.line(&[(x, middle + half), (x, bottom), (from, bottom)], ink);
    match of {
        Element::Winding => {
            let turn = half * 2.0 / 3.0;
            for n in 0..3 {
                let from = middle - half + turn * n as f32;
                canvas.bump(x, (from, from + turn), ink);
            }
        }
        Element::Contact => {
            for y in [middle - half, middle + half] {
                canvas.circle((x, y), 1.5, Some(BLACK), None);
            }
            canvas.line(&[(x, middle + half), (x + 6.0, middle - half + 1.0)], ink);
        }
        Element::Capacitor => {
            for y in [-2.0, 2.0] {
                canvas.line(&[(x - 7.0, middle + y), (x + 7.0, middle + y)], 1.4);
            }
            canvas.line(&[(x, middle - half), (x, middle - 2.0)], ink);
            canvas.line(&[(x, middle + 2.0), (x, middle + half)], ink);
        }
        Element::Thermistor => {
            let body = Area {
                left: x - 3.5,
                top: middle - half,
                width: 7.0,
                height: half * 2.0,
            };
            canvas.rect(body, Some(255), Some((BLACK, ink)));
            canvas.line(&[(x - 7.5, middle + 5.0), (x + 7.5, middle - 5.0)], ink);
        }
        Element::Sensor => {}
    }
}

/// Every pin, in the board's order.
fn pins(draft: &mut Draft, texts: &Texts, connectors: &[BoardConnector]) {
    let about = texts.get("paper-pins");
    draft.heading(2, &about, 80.0);
    let heads = ["paper-pin", "paper-mark", "paper-terminal", "paper-voltage"];
    let heads = heads.map(|key| texts.get(key));
    let shape = TableShape {
        about: &about,
        columns: &[0.14, 0.14, 0.46, 0.26],
        heads: &heads,
        row: 15.0,
        row_heads: true,
    };
    let mut rows = Vec::new();
    for connector in connectors {
        for pin in &connector.pins {
            let terminal = pin.terminal;
            let component = texts.component(terminal.component());
            let voltage = match terminal.is_mains() {
                true => "paper-voltage-line",
                false => "paper-voltage-low",
            };
            rows.push(vec![
                Cell::Strong(format!("{}-{}", connector.label, pin.pin)),
                Cell::Text(pin.label.clone()),
                // With its name as the checks and scripts write it.
                Cell::Text(format!(
                    "{component} {} ({terminal})",
                    terminal_number(terminal)
                )),
                Cell::Text(texts.get(voltage)),
            ]);
        }
    }
    draft.table(&shape, &rows);
}
