//! What every fault shows on each board, for the drill of the next test.

use detent_content::builtin;
use detent_training::practice::drill::{SuppliedBoard, SuppliedBoardId};
use detent_training::reason::evidence::Table;

/// The tables that are there.
#[derive(Default)]
pub struct Tables {
    kept: Vec<(SuppliedBoardId, Table)>,
    read: bool,
}

impl Tables {
    /// Reads them, once.
    pub fn read(&mut self, supplied_boards: &[SuppliedBoard<'_>]) {
        if !std::mem::replace(&mut self.read, true) {
            let kept = supplied_boards.iter().filter_map(|supplied_board| {
                let table = builtin::table(&supplied_board.library, supplied_board.mains.rating())?;
                Some((supplied_board.place(), table))
            });
            self.kept = kept.collect();
        }
    }

    /// The table of a place.
    pub fn at(&self, place: &SuppliedBoardId) -> Option<&Table> {
        let here = self.kept.iter().find(|(other, _)| other == place);
        here.map(|(_, table)| table)
    }
}
