//! What every fault shows on each board, for the drill of the next test.

use crate::content::builtin;
use crate::practice::drill::{Place, Site};
use crate::reason::evidence::{self, Table};

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

/// The table that the program brings with it.
fn table(site: &Site<'_>) -> Option<Table> {
    let (board, rating) = (&site.library.board.id, site.mains.rating());
    let key = evidence::key(&site.library, rating);
    builtin::table(board, rating.volts, &key)
}
