//! A thousand attempts by somebody who tries everything: done again from their records they end in the
//! same state with the same score, and in the same ones in every build profile and on every platform.

use crate::stage::Stage;
use crate::stage::attempts::random_attempt;
use detent_content::redo;
use detent_training::record::read_attempt;
use rayon::prelude::*;
use sha2::{Digest, Sha256};
use std::collections::BTreeSet;

const ATTEMPTS: u64 = 1000;
/// SHA-256 over the ends of all attempts. Measured on x86-64 Linux with rustc 1.95, debug and release
/// alike; a change to the bench, the plant, the firmware or the scenarios changes it, and then it is
/// measured anew in both profiles.
const ENDS: &str = "39c6f70a608a7db49d13c0c2eb30fda80a302efd42b16ac3461edefc0ee649c8";

#[test]
fn a_thousand_attempts_end_in_the_same_state_when_done_again() {
    let stage = Stage::new();
    let shelf = stage.shelf();
    let scenarios = shelf.scenarios().expect("the built-in scenarios");
    let boards: BTreeSet<&str> = scenarios
        .iter()
        .map(|t| t.scenario.board.as_str())
        .collect();
    assert_eq!(boards.len(), shelf.boards.len(), "a board is left out");

    let (ends, actions): (Vec<String>, Vec<usize>) = (0..ATTEMPTS)
        .into_par_iter()
        .map(|seed| {
            let titled = &scenarios[seed as usize % scenarios.len()];
            let recorded = random_attempt(shelf, titled, seed, 10);
            let name = format!("{seed}.attempt");
            let attempt = read_attempt(&name, &recorded.bytes).expect("it reads back");
            let again = redo(shelf, titled, &name, &attempt);
            // `redo` itself compares with the end that the attempt carries.
            let again = again.unwrap_or_else(|error| panic!("{}: {error}", titled.file));
            assert_eq!(again.state, recorded.footer.state);
            let end = format!("{} {:.6}", again.state, again.score.total());
            (end, recorded.actions)
        })
        .unzip();
    let actions: usize = actions.iter().sum();
    println!("{ATTEMPTS} attempts, {actions} actions");
    assert!(actions > 10 * ATTEMPTS as usize, "{actions} actions");

    let mut digest = Sha256::new();
    ends.iter().for_each(|end| digest.update(end));
    let digest: String = digest
        .finalize()
        .iter()
        .map(|b| format!("{b:02x}"))
        .collect();
    assert_eq!(digest, ENDS);
}
