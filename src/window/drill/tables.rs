//! What every fault shows on each board, for the drill of the next test.

use detent_content::builtin;
use detent_training::practice::drill::{Place, Site};
use detent_training::reason::evidence::Table;

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
            let kept = sites.iter().filter_map(|site| {
                let table = builtin::table(&site.library, site.mains.rating())?;
                Some((site.place(), table))
            });
            self.kept = kept.collect();
        }
    }

    /// The table of a place.
    pub fn at(&self, place: &Place) -> Option<&Table> {
        let here = self.kept.iter().find(|(other, _)| other == place);
        here.map(|(_, table)| table)
    }
}
