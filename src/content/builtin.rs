//! The files that are built into the program, so that it runs from any folder.

use super::error::{ContentError, Problem};
use super::table_file;
use super::{Catalogue, KnownBoard, Nominal, Parts};
use super::{read_catalogue, read_machine, read_parts, read_scenario};
use crate::lesson::{Library, Scenario};
use crate::plant::Rating;
use crate::reason::evidence::{self, Table};

/// Makes a table of names and texts from paths below the project's folder.
macro_rules! files {
    ($($path:literal),* $(,)?) => {
        &[$(($path, include_str!(concat!("../../", $path)))),*]
    };
}

/// The same for tables below `assets/tables`, as bytes.
macro_rules! tables {
    ($($name:literal),* $(,)?) => {
        &[$(($name, include_bytes!(concat!("../../assets/tables/", $name)).as_slice())),*]
    };
}

/// Every built-in file: path from the project's folder, and text. A new asset or scenario is one
/// line here; a test compares the list with the folders.
pub const FILES: &[(&str, &str)] = files![
    "assets/boards/arc-dial.ron",
    "assets/boards/key-pad.ron",
    "assets/boards/lone-lamp.ron",
    "assets/catalogue.ron",
    "assets/lang/en.ftl",
    "assets/lang/es.ftl",
    "assets/machine.ron",
    "assets/parts.ron",
    "scenarios/a-neighbours-verdict.ron",
    "scenarios/after-the-blackout.ron",
    "scenarios/after-the-third-load.ron",
    "scenarios/any-machine.ron",
    "scenarios/arc-of-lamps.ron",
    "scenarios/blinking-lock.ron",
    "scenarios/brain-on-trial.ron",
    "scenarios/clicks-and-quits.ron",
    "scenarios/cold-and-still.ron",
    "scenarios/cold-as-the-sea.ron",
    "scenarios/dead-as-a-stone.ron",
    "scenarios/fever-or-frost.ron",
    "scenarios/figures-on-glass.ron",
    "scenarios/five-volts-somewhere.ron",
    "scenarios/ghosts-of-winter.ron",
    "scenarios/gives-up-at-once.ron",
    "scenarios/hard-weather.ron",
    "scenarios/hums-and-trips.ron",
    "scenarios/it-forgot-everything.ron",
    "scenarios/lid-twice.ron",
    "scenarios/long-and-short.ron",
    "scenarios/lukewarm-truth.ron",
    "scenarios/mice-in-the-cellar.ron",
    "scenarios/never-stops-pouring.ron",
    "scenarios/new-kitchen.ron",
    "scenarios/not-when-dry.ron",
    "scenarios/not-worth-it.ron",
    "scenarios/old-codes.ron",
    "scenarios/one-behind-the-other.ron",
    "scenarios/picks-its-own.ron",
    "scenarios/plug-in-hand.ron",
    "scenarios/puddle-in-the-hall.ron",
    "scenarios/shaken-not-broken.ron",
    "scenarios/sheets-in-soup.ron",
    "scenarios/slow-to-fill.ron",
    "scenarios/soap-mountain.ron",
    "scenarios/standing-water.ron",
    "scenarios/tens-and-units.ron",
    "scenarios/thinks-it-is-empty.ron",
    "scenarios/tired-dial.ron",
    "scenarios/two-dashes.ron",
    "scenarios/two-keys-at-once.ron",
    "scenarios/walks-to-the-door.ron",
    "scenarios/weaker-by-the-minute.ron",
    "scenarios/whirr-and-nothing.ron",
    "scenarios/will-not-wring.ron",
];

/// Tables of what each fault shows on each built-in board, by name of the file and bytes: runs of the
/// simulator, made by `detent best --tables assets/tables`. One of other content is not used.
const TABLES: &[(&str, &[u8])] = tables![
    "arc-dial-120.table",
    "arc-dial-230.table",
    "key-pad-230.table",
    "lone-lamp-120.table",
];

/// The table of this board and supply, if one made for this content is built in.
pub fn table(library: &Library<'_>, rating: Rating) -> Option<Table> {
    let name = table_file::name(&library.board.id, rating.volts);
    let (_, bytes) = TABLES.iter().find(|(file, _)| *file == name)?;
    Table::from_bytes(bytes, &evidence::key(library, rating)).ok()
}

/// The text of a built-in file.
///
/// # Errors
/// [`Problem::NotBuiltIn`].
pub fn text(path: &str) -> Result<&'static str, ContentError> {
    match FILES.iter().find(|(name, _)| *name == path) {
        Some((_, text)) => Ok(text),
        None => {
            let names: Vec<&str> = FILES.iter().map(|(name, _)| *name).collect();
            Err(ContentError {
                file: path.to_owned(),
                line: 0,
                column: 0,
                field: String::new(),
                problem: Problem::NotBuiltIn(names.join(", ")),
            })
        }
    }
}

/// Built-in files directly in a folder, such as `scenarios`, in the table's order.
pub fn in_folder(folder: &str) -> impl Iterator<Item = (&'static str, &'static str)> {
    FILES.iter().copied().filter(move |(path, _)| {
        let rest = path.strip_prefix(folder).and_then(|r| r.strip_prefix('/'));
        rest.is_some_and(|name| !name.contains('/'))
    })
}

/// The parts counter's list.
///
/// # Errors
/// A mistake in the file.
pub fn parts() -> Result<Parts, ContentError> {
    let path = "assets/parts.ron";
    read_parts(path, text(path)?.as_bytes())
}

/// The catalogue of failure modes.
///
/// # Errors
/// A mistake in the file.
pub fn catalogue() -> Result<Catalogue, ContentError> {
    let path = "assets/catalogue.ron";
    read_catalogue(path, text(path)?.as_bytes(), &parts()?)
}

/// The machine's nominal values.
///
/// # Errors
/// A mistake in the file.
pub fn machine() -> Result<Nominal, ContentError> {
    let path = "assets/machine.ron";
    read_machine(path, text(path)?.as_bytes())
}

/// A scenario by its path, such as `scenarios/first-call.ron`.
///
/// # Errors
/// A mistake in the file.
pub fn scenario(path: &str, boards: &[KnownBoard]) -> Result<Scenario, ContentError> {
    read_scenario(path, text(path)?.as_bytes(), &catalogue()?, boards)
}
