//! What every fault shows on each board, for the drill of the next test: too long to work out while
//! somebody waits, so only what is kept already is used.

use crate::practice::drill::{Place, Site};
use crate::reason::evidence::Table;

/// The tables that are there.
#[derive(Default)]
pub struct Tables {
    kept: Vec<(Place, Table)>,
    read: bool,
}

impl Tables {
    /// Reads them, once.
    pub fn read(&mut self, sites: &[Site<'_>]) {
        if !std::mem::replace(&mut self.read, true) {
            let kept = sites
                .iter()
                .filter_map(|site| Some((site.place(), table(site)?)));
            self.kept = kept.collect();
        }
    }

    /// The table of a place.
    pub fn at(&self, place: &Place) -> Option<&Table> {
        let here = self.kept.iter().find(|(other, _)| other == place);
        here.map(|(_, table)| table)
    }
}

/// The table that `detent best` keeps in the user's cache folder.
#[cfg(not(target_family = "wasm"))]
fn table(site: &Site<'_>) -> Option<Table> {
    use crate::content::{disk, table_file};
    let own = std::env::var_os("DETENT_CACHE").map(std::path::PathBuf::from);
    let users = || disk::user_folder(&["XDG_CACHE_HOME", "LOCALAPPDATA"], ".cache");
    let folder = own.or_else(|| users().map(|folder| folder.join("detent")))?;
    let rating = site.mains.rating();
    let path = table_file::path(&folder, &site.library.board.id, rating.volts);
    // The key takes a whole wash to work out: only for a table that is there.
    path.is_file().then_some(())?;
    let key = crate::reason::evidence::key(&site.library, rating);
    table_file::load(&path, &key)
}

/// A browser keeps none.
#[cfg(target_family = "wasm")]
fn table(_site: &Site<'_>) -> Option<Table> {
    None
}
