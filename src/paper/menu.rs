//! The menu of service mode, and the programs.

use super::canvas::{Anchor, Area, BLACK, Canvas};
use super::document::Sheet;
use super::draft::{BODY, Cell, Draft, NOTE, STRONG, TableShape};
use detent_content::Value;
use detent_simulation::controller::{Board, Selector};

pub(super) fn menu(draft: &mut Draft, sheet: &Sheet<'_>) {
    let (texts, board) = (sheet.texts, sheet.library.board);
    draft.heading(2, &texts.get("sheet-menu"), 80.0);
    draft.paragraph(&texts.get("sheet-menu-intro"), BODY);
    let how = texts.get(match board.panel.selector {
        Selector::Dial { .. } => "choose-dial",
        Selector::Switch { .. } => "choose-switch",
        Selector::Steps => "choose-steps",
    });
    draft.paragraph(&how, BODY);
    if let Some(stops) = board.panel.selector.turn() {
        let alt = texts.with("paper-knob", &[("positions", Value::from(stops))]);
        draft.figure(&alt, 124.0, |canvas, area| knob(canvas, area, board, stops));
    }
    let menu: Vec<(u8, String)> = (board.menu.iter())
        .map(|entry| {
            let routine = texts.get(&format!("routine-{}", entry.routine));
            (entry.position, routine)
        })
        .collect();
    let heads = ["paper-position", "paper-does"].map(|key| texts.get(key));
    positions(draft, (&texts.get("sheet-menu"), &heads), menu);
    let seconds = Value::from(f64::from(board.service.clear_hold_ms) / 1000.0);
    draft.paragraph(
        &texts.with("sheet-menu-clear", &[("seconds", seconds)]),
        BODY,
    );
    let about = texts.get("sheet-programs");
    draft.heading(3, &about, 50.0);
    let programs: Vec<(u8, String)> = (board.programs.iter())
        .map(|program| (program.position, texts.get(&program.name)))
        .collect();
    positions(draft, (&about, &heads), programs);
}

fn positions(draft: &mut Draft, (about, heads): (&str, &[String]), of: Vec<(u8, String)>) {
    let shape = TableShape {
        about,
        columns: &[0.16, 0.84],
        heads,
        row: 14.5,
        row_heads: true,
    };
    let rows: Vec<Vec<Cell<'_>>> = (of.into_iter())
        .map(|(position, text)| vec![Cell::Strong(position.to_string()), Cell::Text(text)])
        .collect();
    draft.table(&shape, &rows);
}

/// The knob from the front, at position 0, with the positions that do something in bold.
fn knob(canvas: &mut Canvas<'_>, area: Area, board: &Board, stops: u8) {
    let (x, y) = area.middle();
    let r = 40.0;
    canvas.circle((x, y), r, None, Some((BLACK, 1.2)));
    canvas.line(&[(x, y), (x, y - r * 0.85)], 2.4);
    for i in 0..stops {
        let turned = f32::from(i) / f32::from(stops) * 2.0 * std::f32::consts::PI;
        let (sin, cos) = libm::sincosf(turned);
        let at = |r: f32| (x + sin * r, y - cos * r);
        canvas.line(&[at(r + 2.5), at(r + 6.0)], 0.8);
        let style = match board.routine_at(i) {
            Some(_) => STRONG,
            None => NOTE,
        };
        let (tx, ty) = at(r + 15.0);
        canvas.text((tx, ty + 3.2), Anchor::Middle, style, &i.to_string());
    }
}
