//! `detent faults`: what each fault of the catalogue does, found by running the machine.

use super::Failure;
use detent_content::Shelf;
use detent_training::lesson::{Mains, survey};
use rayon::prelude::*;
use std::io::Write;

#[derive(Debug, clap::Args)]
pub(super) struct FaultsArgs {
    /// Board.
    #[arg(long, default_value = "arc-dial")]
    board: String,
    /// Use the 230 V, 50 Hz machine.
    #[arg(long)]
    v230: bool,
}

pub(super) fn faults(args: &FaultsArgs) -> Result<(), Failure> {
    let shelf = Shelf::builtin()?;
    let mains = if args.v230 {
        Mains::V230Hz50
    } else {
        Mains::V120Hz60
    };
    let board = super::sheet::board(&shelf, &args.board)?;
    // A board made for one supply needs no word about it.
    let mains = match board.mains[..] {
        [only] => only,
        _ => mains,
    };
    let library = shelf.library_of(board, mains);
    let modes = library.modes.par_iter();
    let rows: Vec<_> = modes
        .map(|mode| survey::row(&library, mains.rating(), mode))
        .collect();
    let mut out = std::io::stdout().lock();
    for line in survey::table(&rows) {
        writeln!(out, "{line}").map_err(|e| Failure::Write("the table".to_owned(), e))?;
    }
    Ok(())
}
