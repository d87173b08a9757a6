//! `detent faults`: what each fault of the catalogue does, found by running the machine.

use super::Failure;
use super::output::Output;
use detent_content::ContentLibrary;
use detent_training::lesson::{Mains, survey};
use rayon::prelude::*;

#[derive(Debug, clap::Args)]
pub(super) struct FaultsArgs {
    #[arg(long, default_value = "arc-dial")]
    board: String,
    #[arg(long)]
    v230: bool,
}

pub(super) fn faults(args: &FaultsArgs) -> Result<(), Failure> {
    let content_library = ContentLibrary::builtin()?;
    let board = super::sheet::board(&content_library, &args.board)?;
    let mains = match board.mains[..] {
        _ if args.v230 => Mains::V230Hz50,
        // A board made for one supply needs no word about it.
        [only] => only,
        _ => Mains::V120Hz60,
    };
    if !board.mains.contains(&mains) {
        return Err(Failure::NotThisSupply(board.id.clone()));
    }
    let library = content_library.library_of(board, mains);
    let modes = library.modes.par_iter();
    let rows: Vec<_> = modes
        .map(|mode| survey::row(&library, mains.rating(), mode))
        .collect();
    let mut out = Output::standard();
    survey::table(&rows)
        .iter()
        .try_for_each(|line| out.line(line))
}
