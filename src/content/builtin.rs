//! The files that are built into the program, so that it runs from any folder.

use super::error::{ContentError, Problem};
use super::table_file;
use super::{Catalogue, KnownBoard, Nominal, Parts};
use super::{read_catalogue, read_machine, read_parts, read_scenario};
use detent_simulation::interface::Rating;
use detent_training::lesson::{Library, Scenario};
use detent_training::reason::evidence::{self, Table};
use include_dir::{Dir, include_dir};

/// Folders whose files are found by being there, by their path from the project's folder. A new board,
/// handbook, language, table or scenario needs no line here.
static FOLDERS: [(&str, Dir<'static>); 6] = [
    (
        "assets/boards",
        include_dir!("$CARGO_MANIFEST_DIR/../../assets/boards"),
    ),
    (
        "assets/guide",
        include_dir!("$CARGO_MANIFEST_DIR/../../assets/guide"),
    ),
    (
        "assets/lang",
        include_dir!("$CARGO_MANIFEST_DIR/../../assets/lang"),
    ),
    (
        "assets/tables",
        include_dir!("$CARGO_MANIFEST_DIR/../../assets/tables"),
    ),
    (
        "assets/templates",
        include_dir!("$CARGO_MANIFEST_DIR/../../assets/templates"),
    ),
    (
        "scenarios",
        include_dir!("$CARGO_MANIFEST_DIR/../../scenarios"),
    ),
];

/// Files that stand alone.
const FILES: [(&str, &[u8]); 3] = [
    (
        "assets/catalogue.ron",
        include_bytes!("../../assets/catalogue.ron"),
    ),
    (
        "assets/machine.ron",
        include_bytes!("../../assets/machine.ron"),
    ),
    ("assets/parts.ron", include_bytes!("../../assets/parts.ron")),
];

/// Every built-in file: path from the project's folder, and bytes; in each folder by name.
pub fn files() -> impl Iterator<Item = (String, &'static [u8])> {
    let alone = FILES
        .into_iter()
        .map(|(path, bytes)| (path.to_owned(), bytes));
    let folders = FOLDERS.iter().flat_map(|(folder, dir)| {
        let mut files: Vec<_> = dir
            .files()
            .map(|file| {
                (
                    format!("{folder}/{}", file.path().display()),
                    file.contents(),
                )
            })
            .collect();
        files.sort();
        files
    });
    alone.chain(folders)
}

/// The bytes of a built-in file.
fn bytes(path: &str) -> Option<&'static [u8]> {
    let alone = FILES.iter().find(|(name, _)| *name == path);
    alone.map(|(_, bytes)| *bytes).or_else(|| {
        let (folder, name) = path.rsplit_once('/')?;
        let (_, dir) = FOLDERS.iter().find(|(name, _)| *name == folder)?;
        Some(dir.get_file(name)?.contents())
    })
}

/// The table of what each fault shows on this board at this supply, if one made for this content is built
/// in. Tables are runs of the simulator, made by `detent best --tables assets/tables`.
pub fn table(library: &Library<'_>, rating: Rating) -> Option<Table> {
    let bytes = table_bytes(&table_file::name(&library.board.id, rating.volts))?;
    Table::from_bytes(bytes, &evidence::key(library, rating)).ok()
}

/// The built-in file of a table, by its name, whatever content it was made for.
pub(super) fn table_bytes(name: &str) -> Option<&'static [u8]> {
    bytes(&format!("assets/tables/{name}"))
}

/// The text of a built-in file.
///
/// # Errors
/// [`Problem::NotBuiltIn`].
pub fn text(path: &str) -> Result<&'static str, ContentError> {
    let text = bytes(path).and_then(|bytes| std::str::from_utf8(bytes).ok());
    text.ok_or_else(|| {
        let texts = files().filter(|(_, bytes)| std::str::from_utf8(bytes).is_ok());
        let names: Vec<String> = texts.map(|(name, _)| name).collect();
        ContentError::of_file(path, Problem::NotBuiltIn(names.join(", ")))
    })
}

/// Built-in texts directly in a folder, such as `scenarios`, by name.
pub fn in_folder(folder: &str) -> impl Iterator<Item = (String, &'static str)> {
    files().filter_map(move |(path, bytes)| {
        let rest = path.strip_prefix(folder)?.strip_prefix('/')?;
        let directly = !rest.contains('/');
        let text = std::str::from_utf8(bytes).ok()?;
        directly.then_some((path, text))
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
    read_scenario(
        path,
        text(path)?.as_bytes(),
        &catalogue()?,
        &parts()?,
        boards,
    )
}
