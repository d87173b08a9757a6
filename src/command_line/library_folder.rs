//! The own library that `--library` names, and the tables that its boards need.

use super::Failure;
use super::job::make;
use super::output::plain;
use detent_content::{ContentLibrary, Texts, Value, disk, table_file};
use detent_training::lesson::Mains;
use detent_training::reason::evidence;
use std::path::PathBuf;

/// The folder of an own library, or the zip of a course, if one is named.
pub(super) struct LibraryFolder(pub Option<PathBuf>);

/// The library that `DETENT_LIBRARY` names; an empty variable names none.
pub(super) fn in_environment() -> Option<PathBuf> {
    let named = std::env::var_os("DETENT_LIBRARY").filter(|value| !value.is_empty());
    named.map(PathBuf::from)
}

impl LibraryFolder {
    /// What is built in, and the own library beside it.
    pub fn open(&self) -> Result<ContentLibrary, Failure> {
        ContentLibrary::open(self.0.as_deref()).map_err(Failure::Library)
    }

    /// The same with the tables of every own board. One that is missing or of other content is made, which takes a
    /// while, and kept in the library's folder.
    pub fn open_with_tables(&self, texts: &Texts) -> Result<ContentLibrary, Failure> {
        let mut content_library = self.open()?;
        let boards = content_library.boards.iter();
        let own = boards.filter(|board| content_library.is_own(board));
        let wanted: Vec<(String, Mains)> = own
            .flat_map(|board| board.mains.iter().map(|mains| (board.id.clone(), *mains)))
            .collect();
        for (board, mains) in wanted {
            with_table(&mut content_library, &board, mains, texts);
        }
        Ok(content_library)
    }
}

/// Sees to it that there is a table of this board and supply. One of a built-in board is there.
pub(super) fn with_table(
    content_library: &mut ContentLibrary,
    board: &str,
    mains: Mains,
    texts: &Texts,
) {
    let rating = mains.rating();
    let Some(of_board) = content_library.board(board) else {
        return;
    };
    let library = content_library.library_of(of_board, mains);
    if content_library.table(&library, mains).is_some() {
        return;
    }
    let name = table_file::name(board, rating.volts);
    // A board in a zip or in a loose file has its table with what else can be made again.
    let folder = match content_library.folder() {
        Some(folder) if content_library.is_own(of_board) => {
            Some(table_file::folder_of_library(folder))
        }
        _ => disk::cache_folder(),
    };
    let file = folder.map(|folder| folder.join(&name));
    let key = evidence::key(&library, rating);
    let kept = file.as_ref().and_then(|file| table_file::load(file, &key));
    let bytes = match kept {
        Some(table) => table.to_bytes(&key),
        None => {
            let args = [
                ("board", Value::from(board)),
                ("volts", Value::from(rating.volts)),
            ];
            tell(&texts.with("cli-table-making", &args));
            let bytes = make(&library, mains).to_bytes(&key);
            if let Some(file) = file
                && let Err(error) = disk::write_whole(&file, &bytes)
            {
                // It is only slower next time.
                tell(&Failure::Write(file.display().to_string(), error).words(texts));
            }
            bytes
        }
    };
    content_library.keep_table(name, bytes);
}

fn tell(line: &str) {
    eprintln!("{}", plain(&format!("detent: {line}")));
}
