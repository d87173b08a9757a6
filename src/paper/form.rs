//! The form for what is found: blank, the same for every job of a board.

use super::document::Sheet;
use super::draft::{BODY, Cell, Draft, Drawing, SMALL, STRONG, TableShape};
use super::lamps::{self, Lit};
use detent_training::practice::drill::safe_work::SafeStep;

/// Rows to fill in.
const SIGHTS: usize = 3;
const CAUSES: usize = 4;
const READINGS: usize = 7;

/// What makes the machine safe before hands go in, in this order; the meter is tried before and after (common
/// practice, no source).
const SAFE: [SafeStep; 9] = [
    SafeStep::Unplug,
    SafeStep::ShutTaps,
    SafeStep::BailOut,
    SafeStep::OpenPanels,
    SafeStep::WaitAMinute,
    SafeStep::Discharge,
    SafeStep::TestMeter,
    SafeStep::MeasureCharge,
    SafeStep::TestMeter,
];

pub(super) fn form(draft: &mut Draft, sheet: &Sheet<'_>) {
    let texts = sheet.texts;
    draft.page();
    draft.heading(2, &texts.get("paper-findings"), 60.0);
    draft.paragraph(&texts.get("paper-findings-safe"), STRONG);
    let boxes: Vec<(Option<String>, String)> = SAFE
        .iter()
        .map(|step| (None, texts.safe_step(*step)))
        .collect();
    draft.list(&boxes, 2, BODY);
    sights(draft, sheet);
    blank(
        draft,
        &texts.get("paper-causes"),
        (&[0.06, 0.34, 0.3, 0.3], 19.0, CAUSES),
        &[
            "#".to_owned(),
            texts.get("paper-cause"),
            texts.get("paper-cause-for"),
            texts.get("paper-cause-against"),
        ],
    );
    blank(
        draft,
        &texts.get("paper-readings"),
        (&[0.06, 0.19, 0.19, 0.14, 0.2, 0.11, 0.11], 19.0, READINGS),
        &[
            "#".to_owned(),
            texts.get("paper-red"),
            texts.get("paper-black"),
            texts.get("paper-setting"),
            texts.get("paper-state"),
            texts.get("paper-expected"),
            texts.get("paper-read"),
        ],
    );
    draft.paragraph(&texts.get("paper-repair"), STRONG);
    let shape = TableShape {
        about: &texts.get("paper-repair"),
        columns: &[0.32, 0.68],
        heads: &[],
        row: 19.0,
        row_heads: true,
    };
    let rows: Vec<Vec<Cell<'_>>> = [
        "paper-repair-cause",
        "paper-repair-part",
        "paper-repair-verified",
        "paper-repair-cost",
        "paper-repair-customer",
    ]
    .iter()
    .map(|key| vec![Cell::Strong(texts.get(key)), Cell::Blank])
    .collect();
    draft.table(&shape, &rows);
}

/// Lamps to shade, and what they mean.
fn sights(draft: &mut Draft, sheet: &Sheet<'_>) {
    let (texts, signs) = (sheet.texts, &sheet.library.board.lamps.signs);
    let about = texts.get("paper-sights");
    draft.paragraph(&about, STRONG);
    draft.paragraph(&texts.get("paper-sights-how"), SMALL);
    let heads = ["paper-lamps", "paper-mode", "paper-code"].map(|key| texts.get(key));
    let shape = TableShape {
        about: &about,
        columns: &[0.42, 0.36, 0.22],
        heads: &heads,
        row: 27.0,
        row_heads: false,
    };
    let rows: Vec<Vec<Cell<'_>>> = (0..SIGHTS)
        .map(|_| {
            let drawing: Drawing<'_> =
                Box::new(|canvas, area| lamps::picture(canvas, area, signs, Lit::Blank));
            let lamps = Cell::Picture(texts.get("paper-lamps-blank"), 23.0, drawing);
            vec![lamps, Cell::Blank, Cell::Blank]
        })
        .collect();
    draft.table(&shape, &rows);
}

/// A table with numbered rows to fill in.
fn blank(
    draft: &mut Draft,
    about: &str,
    (columns, row, rows): (&[f32], f32, usize),
    heads: &[String],
) {
    draft.need(row * (rows as f32 + 1.0) + 14.0);
    draft.paragraph(about, STRONG);
    let shape = TableShape {
        about,
        columns,
        heads,
        row,
        row_heads: true,
    };
    let rows: Vec<Vec<Cell<'_>>> = (1..=rows)
        .map(|n| {
            let mut row = vec![Cell::Text(n.to_string())];
            row.extend((1..columns.len()).map(|_| Cell::Blank));
            row
        })
        .collect();
    draft.table(&shape, &rows);
}
