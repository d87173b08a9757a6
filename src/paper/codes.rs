//! The codes of the board: what each says, what may lie behind it, and the checks that tell, each of which is printed
//! once.

use super::document::Sheet;
use super::draft::{BODY, Cell, Draft, SMALL, TableShape};
use detent_simulation::controller::{Board, Code};

pub(super) fn codes(draft: &mut Draft, sheet: &Sheet<'_>) {
    let (texts, board) = (sheet.texts, sheet.library.board);
    let about = texts.get("sheet-codes");
    draft.heading(2, &about, 120.0);
    draft.paragraph(&texts.get("sheet-codes-intro"), BODY);
    let codes = sorted(board);
    let checks = numbered_checks(board, &codes);
    let heads = [
        "paper-code",
        "paper-meaning",
        "paper-suspects",
        "paper-check",
    ];
    let heads = heads.map(|key| texts.get(key));
    let shape = TableShape {
        about: &about,
        columns: &[0.09, 0.36, 0.4, 0.15],
        heads: &heads,
        row: 15.5,
        row_heads: true,
    };
    let rows: Vec<Vec<Cell<'_>>> = (codes.iter())
        .map(|code| {
            let (mut suspects, mut numbers) = (Vec::new(), Vec::new());
            for entry in board.sheet.iter().filter(|e| e.monitor == code.monitor) {
                suspects.extend(entry.suspects.iter().map(|c| texts.component(*c)));
                let places = entry.checks.iter().filter_map(|check| {
                    let place = checks.iter().position(|other| *other == check)?;
                    Some((place + 1).to_string())
                });
                numbers.extend(places);
            }
            vec![
                Cell::Strong(format!("{:02}", code.code)),
                Cell::Text(texts.get(&format!("monitor-{}", code.monitor))),
                Cell::Text(suspects.join(" · ")),
                Cell::Text(numbers.join(", ")),
            ]
        })
        .collect();
    draft.table(&shape, &rows);
    draft.heading(2, &texts.get("paper-checks"), 60.0);
    draft.paragraph(&texts.get("paper-checks-names"), SMALL);
    let checks: Vec<(Option<String>, String)> = (checks.iter().enumerate())
        .map(|(n, check)| (Some(format!("{}.", n + 1)), texts.get(check)))
        .collect();
    draft.list(&checks, 1, SMALL);
}

/// The board's codes, lowest first.
fn sorted(board: &Board) -> Vec<&Code> {
    let mut codes: Vec<&Code> = board.codes.iter().collect();
    codes.sort_by_key(|code| code.code);
    codes
}

/// The checks of all codes in the order in which they are first named.
fn numbered_checks<'a>(board: &'a Board, codes: &[&Code]) -> Vec<&'a String> {
    let mut checks: Vec<&String> = Vec::new();
    for code in codes {
        let entries = board.sheet.iter().filter(|e| e.monitor == code.monitor);
        for check in entries.flat_map(|entry| &entry.checks) {
            if !checks.contains(&check) {
                checks.push(check);
            }
        }
    }
    checks
}
