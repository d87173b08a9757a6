//! A thousand attempts by somebody who tries everything: done again from their records they end in the
//! same state with the same score, and in the same ones in every build profile and on every platform.

#![allow(
    clippy::disallowed_methods,
    reason = "each attempt has a machine of its own, so threads cannot touch its run"
)]

mod stage;
#[path = "stage/attempts.rs"]
mod stage_attempts;

use detent::content::redo;
use detent::record::read_attempt;
use sha2::{Digest, Sha256};
use stage::Stage;
use stage_attempts::random_attempt;
use std::collections::BTreeSet;
use std::sync::atomic::{AtomicU64, AtomicUsize, Ordering};

const ATTEMPTS: u64 = 1000;
/// SHA-256 over the ends of all attempts. Measured on x86-64 Linux with rustc 1.95, debug and release
/// alike; a change to the bench, the plant, the firmware or the scenarios changes it, and then it is
/// measured anew in both profiles.
const ENDS: &str = "ca62f7fc3368d64afa8da22ab878f364d0cbf10669cd2cecf9501c8817616f36";

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

    let (next, actions) = (AtomicU64::new(0), AtomicUsize::new(0));
    let work = || {
        let mut ends = Vec::new();
        loop {
            let seed = next.fetch_add(1, Ordering::Relaxed);
            if seed >= ATTEMPTS {
                return ends;
            }
            let titled = &scenarios[seed as usize % scenarios.len()];
            let recorded = random_attempt(shelf, titled, seed, 10);
            actions.fetch_add(recorded.actions, Ordering::Relaxed);
            let name = format!("{seed}.attempt");
            let attempt = read_attempt(&name, &recorded.bytes).expect("it reads back");
            let again = redo(shelf, titled, &name, &attempt);
            // `redo` itself compares with the end that the attempt carries.
            let again = again.unwrap_or_else(|error| panic!("{}: {error}", titled.file));
            assert_eq!(again.state, recorded.footer.state);
            ends.push((seed, format!("{} {:.6}", again.state, again.score.total())));
        }
    };
    let threads = std::thread::available_parallelism().map_or(1, |n| n.get().min(8));
    let mut ends: Vec<(u64, String)> = std::thread::scope(|scope| {
        let workers: Vec<_> = (0..threads).map(|_| scope.spawn(work)).collect();
        let done = workers.into_iter();
        done.flat_map(|worker| worker.join().expect("no attempt failed"))
            .collect()
    });
    ends.sort();
    let actions = actions.into_inner();
    println!("{ATTEMPTS} attempts, {actions} actions");
    assert!(actions > 10 * ATTEMPTS as usize, "{actions} actions");

    let mut digest = Sha256::new();
    ends.iter().for_each(|(_, end)| digest.update(end));
    let digest: String = digest
        .finalize()
        .iter()
        .map(|b| format!("{b:02x}"))
        .collect();
    assert_eq!(digest, ENDS);
}
