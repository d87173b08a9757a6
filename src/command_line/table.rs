//! `detent faults`: what each fault of the catalogue does, found by running the machine.

use super::output::Output;
use super::sheet::board_of;
use super::{Failure, LibraryFolder};
use detent_simulation::controller::Board;
use detent_training::lesson::{Mains, survey};
use rayon::prelude::*;

#[derive(Debug, clap::Args)]
pub(super) struct FaultsArgs {
    #[arg(value_name = "NAME_OR_FILE", conflicts_with = "board")]
    of: Option<String>,
    #[arg(long, default_value = "arc-dial")]
    board: String,
    #[arg(long)]
    v230: bool,
}

pub(super) fn faults(args: &FaultsArgs, library: &LibraryFolder) -> Result<(), Failure> {
    let content_library = library.open()?;
    let (board, of_job) = board_of(&content_library, args.of.as_deref(), &args.board)?;
    let mains = match of_job {
        Some(mains) if !args.v230 => mains,
        _ => supply(&board, args.v230)?,
    };
    let library = content_library.library_of(&board, mains);
    let modes = library.modes.par_iter();
    let rows: Vec<_> = modes
        .map(|mode| survey::row(&library, mains.rating(), mode))
        .collect();
    let mut out = Output::standard();
    survey::table(&rows)
        .iter()
        .try_for_each(|line| out.line(line))
}

/// The supply that is asked for.
fn supply(board: &Board, v230: bool) -> Result<Mains, Failure> {
    let mains = match board.mains[..] {
        _ if v230 => Mains::V230Hz50,
        // A board made for one supply needs no word about it.
        [only] => only,
        _ => Mains::V120Hz60,
    };
    if board.mains.contains(&mains) {
        Ok(mains)
    } else {
        Err(Failure::NotThisSupply(board.id.clone()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use detent_content::ContentLibrary;

    #[test]
    fn a_board_is_run_at_the_supply_that_is_asked_for_if_it_is_made_for_it() {
        let content_library = ContentLibrary::builtin().expect("the built-in content is sound");
        let of = |mains: &[Mains]| Board {
            mains: mains.to_vec(),
            ..content_library.boards[0].clone()
        };
        let (low, high) = (Mains::V120Hz60, Mains::V230Hz50);
        for (made_for, v230, mains) in [
            (&[low, high][..], false, Some(low)),
            (&[low, high], true, Some(high)),
            (&[high], false, Some(high)),
            (&[low], false, Some(low)),
            (&[low], true, None),
        ] {
            assert_eq!(supply(&of(made_for), v230).ok(), mains, "{made_for:?}");
        }
    }
}
