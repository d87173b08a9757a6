//! What the questions of drills are drawn from: the same for the window that asks and for whoever marks answers again.

#![allow(
    clippy::disallowed_types,
    reason = "what is read once it is needed follows from the library that it is in, and from nothing else"
)]

use super::{ContentLibrary, builtin};
use detent_simulation::controller::Board;
use detent_training::practice::drill::{QuestionSource, SuppliedBoard, SuppliedBoardId};
use detent_training::reason::evidence::Table;
use std::sync::OnceLock;

/// What is read of the content for drills, once it is needed.
#[derive(Debug, Default)]
pub(crate) struct DrillContent {
    /// Boards that the course teaches to read, by their short names.
    to_read: OnceLock<Vec<String>>,
    /// What every fault shows on each board.
    tables: OnceLock<Vec<(SuppliedBoardId, Table)>>,
}

/// The content as drills draw on it.
#[derive(Debug)]
pub struct DrillSource<'a> {
    library: &'a ContentLibrary,
    content: &'a DrillContent,
    supplied_boards: Vec<SuppliedBoard<'a>>,
    course: Vec<&'a Board>,
}

impl<'a> DrillSource<'a> {
    /// Of this content.
    pub(crate) fn new(library: &'a ContentLibrary, content: &'a DrillContent) -> DrillSource<'a> {
        let to_read = content.to_read.get_or_init(|| {
            // A mistake in a scenario is told where the jobs are listed.
            let boards = library.boards_to_read().unwrap_or_default();
            boards.iter().map(|board| board.id.clone()).collect()
        });
        let course = to_read.iter().filter_map(|id| library.board(id));
        DrillSource {
            library,
            content,
            supplied_boards: library.supplied_boards(),
            course: course.collect(),
        }
    }
}

impl QuestionSource for DrillSource<'_> {
    fn supplied_boards(&self) -> &[SuppliedBoard<'_>] {
        &self.supplied_boards
    }

    fn course(&self) -> &[&Board] {
        &self.course
    }

    /// Only what is built in: tables of an own library are made where they are needed, so that one place has them and
    /// another has not.
    fn table(&self, place: &SuppliedBoardId) -> Option<&Table> {
        let tables = self.content.tables.get_or_init(|| {
            let boards = self.library.supplied_boards().into_iter();
            let read = boards.filter_map(|board| {
                let table = builtin::table(&board.library, board.mains.rating())?;
                Some((board.place(), table))
            });
            read.collect()
        });
        let mut here = tables.iter().filter(|(other, _)| other == place);
        here.next().map(|(_, table)| table)
    }
}
