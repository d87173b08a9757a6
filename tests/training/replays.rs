//! A thousand attempts by somebody who tries everything: done again from their records they end in the
//! same state with the same score, and in the same ones in every build profile and on every platform.

use crate::stage::Stage;
use crate::stage::attempts::random_attempt;
use detent_content::replay_attempt;
use detent_training::record::{read_attempt, sha256_hex};
use rayon::prelude::*;
use std::collections::BTreeSet;

const ATTEMPTS: u64 = 1000;
/// One line for each attempt: seed, scenario, points, and a digest of state and score. Measured on x86-64
/// Linux with rustc 1.95; debug and release are alike. A change to the bench, the plant, the firmware or
/// the scenarios changes it, and then it is written anew by running this test with `DETENT_UPDATE_KEPT=1`.
const KEPT: &str = concat!(
    env!("CARGO_MANIFEST_DIR"),
    "/../../tests/training/replays.txt"
);
const UPDATE: &str = "DETENT_UPDATE_KEPT";
/// Digits of a digest that are kept: enough that no change of one attempt goes unseen.
const DIGITS: usize = 12;

#[test]
fn a_thousand_attempts_end_in_the_same_state_when_done_again() {
    let stage = Stage::new();
    let content_library = stage.content_library();
    let scenarios = content_library.scenarios().expect("the built-in scenarios");
    let boards: BTreeSet<&str> = scenarios
        .iter()
        .map(|t| t.scenario.board.as_str())
        .collect();
    assert_eq!(
        boards.len(),
        content_library.boards.len(),
        "a board is left out"
    );

    let (ends, actions): (Vec<String>, Vec<usize>) = (0..ATTEMPTS)
        .into_par_iter()
        .map(|seed| {
            let scenario_source = &scenarios[seed as usize % scenarios.len()];
            let recorded = random_attempt(content_library, scenario_source, seed, 10);
            let name = format!("{seed}.attempt");
            let attempt = read_attempt(&name, &recorded.bytes).expect("it reads back");
            let again = replay_attempt(content_library, scenario_source, &name, &attempt);
            // `replay_attempt` itself compares with the end that the attempt carries.
            let again = again.unwrap_or_else(|error| panic!("{}: {error}", scenario_source.file));
            assert_eq!(again.end, recorded.footer);
            let points = again.score.total();
            let digest = sha256_hex(format!("{} {points:.6}", again.end.state).as_bytes());
            let job = scenario_source.file.trim_start_matches("scenarios/");
            let line = format!("{seed} {job} {points:.2} {}", &digest[..DIGITS]);
            (line, recorded.actions)
        })
        .unzip();
    let actions: usize = actions.iter().sum();
    println!("{ATTEMPTS} attempts, {actions} actions");
    assert!(actions > 10 * ATTEMPTS as usize, "{actions} actions");

    if std::env::var_os(UPDATE).is_some() {
        std::fs::write(KEPT, ends.join("\n") + "\n").expect("the kept ends can be written");
    }
    let kept = std::fs::read_to_string(KEPT).expect("the ends are kept");
    let kept: Vec<&str> = kept.lines().collect();
    assert_eq!(kept.len(), ends.len(), "lines in {KEPT}");
    let differ: Vec<String> = (kept.iter().zip(&ends))
        .filter(|(kept, end)| *kept != end)
        .map(|(kept, end)| format!("kept: {kept}, now: {end}"))
        .collect();
    assert!(
        differ.is_empty(),
        "{} attempts end in another way; the first: {:#?}",
        differ.len(),
        &differ[..differ.len().min(10)]
    );
}
