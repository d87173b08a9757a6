//! `detent sheet` and `detent parts`: what the panels show, as text.

use super::output::Output;
use super::{Failure, LibraryFolder};
use detent_content::{
    ContentLibrary, FileKind, Language, Texts, Value, disk, read_board, script_line,
};
use detent_simulation::controller::{Board, Sign, Signs, USUAL_CODES};
use detent_training::bench::script::entry_steps;
use detent_training::lesson::Mains;
use std::path::Path;

#[derive(Debug, clap::Args)]
pub(super) struct SheetArgs {
    #[arg(value_name = "NAME_OR_FILE", conflicts_with = "board")]
    of: Option<String>,
    #[arg(long, default_value = "arc-dial")]
    board: String,
}

/// The board that `of` names or is about, or else the one of this name. `of` may be a board's or a scenario's file, or the
/// name of either; then the supply of a scenario comes with it.
pub(super) fn board_of(
    content_library: &ContentLibrary,
    of: Option<&str>,
    name: &str,
) -> Result<(Board, Option<Mains>), Failure> {
    let Some(of) = of else {
        return Ok((board(content_library, name)?.clone(), None));
    };
    let path = Path::new(of);
    if disk::is_there(path)? {
        let bytes = disk::read_bytes(path)?;
        if FileKind::of(of, &bytes) == FileKind::Board {
            return Ok((read_board(of, &bytes).map_err(Failure::Library)?, None));
        }
    } else if let Some(board) = content_library.board(of) {
        return Ok((board.clone(), None));
    }
    let scenario = content_library.scenario(of)?.scenario;
    let board = board(content_library, &scenario.board)?.clone();
    Ok((board, Some(scenario.mains)))
}

/// The board of this name.
pub(super) fn board<'a>(
    content_library: &'a ContentLibrary,
    name: &str,
) -> Result<&'a Board, Failure> {
    content_library.board(name).ok_or_else(|| {
        let names: Vec<&str> = content_library
            .boards
            .iter()
            .map(|board| board.id.as_str())
            .collect();
        Failure::NoBoard {
            name: name.to_owned(),
            known: names.join(", "),
        }
    })
}

fn put(lines: &[String]) -> Result<(), Failure> {
    let mut out = Output::standard();
    lines.iter().try_for_each(|line| out.line(line))
}

/// The service sheet: gesture, codes with suspects and checks, menu, pins.
pub(super) fn sheet(
    args: &SheetArgs,
    library: &LibraryFolder,
    language: Language,
) -> Result<(), Failure> {
    let content_library = library.open()?;
    let (board, mains) = board_of(&content_library, args.of.as_deref(), &args.board)?;
    let mut texts = Texts::load(language);
    // A board made for one supply is sold where people have one word for things.
    let only = match board.mains[..] {
        [only] => Some(only),
        _ => mains,
    };
    if let Some(only) = only {
        texts = texts.for_supply(only.rating().volts as u32);
    }
    let mut lines = vec![
        texts.get(&board.name),
        String::new(),
        texts.get("sheet-entry-before"),
    ];
    lines.extend(
        entry_steps(&board.gesture)
            .iter()
            .map(|step| format!("  {}", script_line(step))),
    );
    for (step, number) in board.gesture.steps.iter().zip(1..) {
        lines.push(format!("  {number}. {}", texts.gesture_step(step)));
    }
    let notes = texts.gesture_notes(&board.gesture).into_iter();
    lines.extend(notes.map(|note| format!("  {note}")));
    lines.push(format!("  ≤ {} ms", board.gesture.within_ms));
    lines.extend([String::new(), texts.get("sheet-entry-click")]);
    lines.extend([String::new(), texts.get("sheet-reset")]);
    let ways = texts.hold_resets(&board.resets);
    lines.extend(ways.iter().map(|(_, way)| format!("  {way}")));
    lines.extend([
        String::new(),
        texts.get(&format!("signs-{}", board.lamps.signs.key())),
    ]);
    lines.extend(example(&board));
    if board.service.stored_codes != USUAL_CODES {
        let codes = Value::from(board.service.stored_codes);
        lines.push(texts.with("sheet-stored-codes", &[("codes", codes)]));
    }
    lines.extend([String::new(), texts.get("sheet-codes-intro")]);
    for code in &board.codes {
        lines.push(format!(
            "  {:02}  {}",
            code.code,
            texts.get(&format!("code-{}", code.monitor))
        ));
        for entry in board.sheet.iter().filter(|e| e.monitor == code.monitor) {
            let suspects: Vec<String> = entry
                .suspects
                .iter()
                .map(|c| texts.get(&format!("component-{c}")))
                .collect();
            lines.push(format!("      {}", suspects.join(" · ")));
            lines.extend(
                entry
                    .checks
                    .iter()
                    .map(|check| format!("      – {}", texts.get(check))),
            );
        }
    }
    lines.extend([String::new(), texts.get("sheet-menu-intro")]);
    for entry in &board.menu {
        lines.push(format!(
            "  {:>2}  {}",
            entry.position,
            texts.get(&format!("routine-{}", entry.routine))
        ));
    }
    lines.extend(
        board
            .programs
            .iter()
            .map(|p| format!("  {:>2}  ({})", p.position, texts.get(&p.name))),
    );
    lines.extend([String::new(), texts.get("sheet-pins-intro")]);
    for connector in &board.connectors {
        for pin in &connector.pins {
            lines.push(format!(
                "  {}.{:<2} {:<3} {}",
                connector.label, pin.pin, pin.label, pin.terminal
            ));
        }
    }
    put(&lines)
}

/// How a number looks on the lamps, where that can be drawn in letters: lit, blinking, dark.
fn example(board: &Board) -> Vec<String> {
    let signs = &board.lamps.signs;
    let drawn = |sign: Sign| -> String {
        let bits = (0..signs.lamps()).rev().map(|bit| 1_u16 << bit);
        bits.map(|bit| match (sign.lit & bit != 0, sign.blinks & bit != 0) {
            (true, _) => '●',
            (false, true) => '◐',
            (false, false) => '○',
        })
        .collect()
    };
    let row = |weights: &[u8]| weights.iter().map(u8::to_string).collect::<String>();
    match signs {
        Signs::Weights { tens, units } => vec![format!("  {} {}", row(tens), row(units))],
        Signs::Pictures { .. } => (0..=99)
            .filter_map(|number| Some((number, signs.sign(number)?)))
            .map(|(number, sign)| format!("  {number:02}  {}", drawn(sign)))
            .collect(),
        Signs::InTurn { digits, .. } => (digits.iter().enumerate())
            .map(|(digit, sign)| format!("  {digit}  {}", drawn(*sign)))
            .collect(),
        Signs::Segments | Signs::Flashes { .. } => Vec::new(),
    }
}

/// The parts counter.
pub(super) fn parts(library: &LibraryFolder, language: Language) -> Result<(), Failure> {
    let content_library = library.open()?;
    let texts = Texts::load(language);
    let line = |part: &detent_training::bench::Part| {
        let price = texts.with("parts-price", &[("price", Value::from(part.price))]);
        let wait = texts.with("parts-wait", &[("hours", Value::from(part.wait_hours))]);
        let number = part.revision.map_or_else(
            || part.number.clone(),
            |letter| {
                let letter = Value::from(letter.to_string());
                let revision = texts.with("parts-revision", &[("revision", letter)]);
                format!("{} {revision}", part.number)
            },
        );
        let mut words = vec![texts.get(&part.name_key)];
        words.extend(texts.part_state(part));
        words.extend([price, wait]);
        let note = part
            .note_key
            .as_ref()
            .map_or(String::new(), |key| format!("  ({})", texts.get(key)));
        format!("{number}  {}{note}", words.join(", "))
    };
    let rates = content_library.parts.rates;
    let mut lines: Vec<String> = content_library.parts.parts.iter().map(line).collect();
    lines.push(texts.with(
        "parts-rates",
        &[
            ("labour", Value::from(rates.labour_per_hour)),
            ("fee", Value::from((100.0 * rates.return_fee_share).round())),
            ("limit", Value::from(rates.repair_limit().round())),
        ],
    ));
    put(&lines)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_board_goes_by_its_name_by_a_job_on_it_or_by_a_file() {
        let content_library = ContentLibrary::builtin().expect("the built-in content is sound");
        let of = |of: Option<&str>| {
            let found = board_of(&content_library, of, "lone-lamp");
            found.map(|(board, mains)| (board.id, mains))
        };
        let job = content_library.scenario("drain-code-several-causes");
        let job = job.expect("built in").scenario;
        for (named, board, mains) in [
            (None, "lone-lamp", None),
            (Some("key-pad"), "key-pad", None),
            (
                Some("drain-code-several-causes"),
                job.board.as_str(),
                Some(job.mains),
            ),
        ] {
            let found = of(named).expect("there is one");
            assert_eq!(found, (board.to_owned(), mains), "{named:?}");
        }
        assert!(of(Some("nope")).is_err());
    }
}
