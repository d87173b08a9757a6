//! Which fault a job hides: drawn by the catalogue's weights, from the seed and nothing else.

use crate::stage::Stage;
use detent_simulation::units::Span;
use detent_training::lesson::{Hidden, Mains, Scenario, draw, prepare, start_wash};
use std::collections::BTreeMap;

/// Draws in the statistical test.
const DRAWS: u64 = 30_000;
/// Upper critical value of chi-square with 60 degrees of freedom at a significance of 0.001:
/// NIST/SEMATECH e-Handbook of Statistical Methods, table 1.3.6.7.4 (from memory; the closed form
/// below agrees).
const CHI_SQUARE_60: f64 = 99.607;

fn any_machine(stage: &Stage) -> Scenario {
    let scenario_source = stage.content_library().scenario("exam-120-v-dial");
    scenario_source.expect("a built-in scenario").scenario
}

/// Chance that chi-square with 60 degrees of freedom exceeds `x`: e^(−x/2) Σ (x/2)^k / k! for k
/// under 30, the closed form for even degrees of freedom.
fn chance_beyond(x: f64) -> f64 {
    let mut term = libm::exp(-x / 2.0);
    let mut sum = 0.0;
    for k in 1..=30 {
        sum += term;
        term *= x / 2.0 / f64::from(k);
    }
    sum
}

#[test]
fn the_critical_value_agrees_with_the_closed_form() {
    assert!((chance_beyond(CHI_SQUARE_60) - 0.001).abs() < 1e-6);
}

#[test]
fn draws_follow_the_weights() {
    let stage = Stage::new();
    let scenario = any_machine(&stage);
    assert_eq!(scenario.fault, Hidden::Draw);
    let modes = &stage.content_library().catalogue.modes;
    let mut drawn: BTreeMap<&str, u64> = BTreeMap::new();
    for seed in 0..DRAWS {
        let hidden = draw(&scenario, modes, seed).expect("the catalogue is not empty");
        assert_eq!(hidden.len(), 1);
        *drawn.entry(hidden[0].id.as_str()).or_default() += 1;
    }
    // The commonest modes each make a class, and all the others together one: 61 classes.
    let total: f64 = modes.iter().map(|m| m.weight).sum();
    let mut classes: Vec<(f64, f64)> = modes
        .iter()
        .map(|m| {
            let seen = drawn.get(m.id.as_str()).copied().unwrap_or(0);
            (m.weight / total * DRAWS as f64, seen as f64)
        })
        .collect();
    classes.sort_by(|a, b| b.0.total_cmp(&a.0));
    let rare = classes.split_off(60);
    classes.push(
        rare.iter()
            .fold((0.0, 0.0), |sum, c| (sum.0 + c.0, sum.1 + c.1)),
    );
    assert_eq!(classes.len(), 61);
    // Common practice for the test: no class expects fewer than five.
    assert!(classes.iter().all(|(expected, _)| *expected >= 5.0));
    let chi_square: f64 = classes
        .iter()
        .map(|(expected, seen)| (seen - expected) * (seen - expected) / expected)
        .sum();
    println!("chi-square {chi_square:.1} with 60 degrees of freedom, limit {CHI_SQUARE_60}");
    assert!(chi_square < CHI_SQUARE_60);
    // The test can fail: against equal weights the same draws are far off.
    let equal = DRAWS as f64 / modes.len() as f64;
    let off: f64 = modes
        .iter()
        .map(|m| drawn.get(m.id.as_str()).copied().unwrap_or(0) as f64 - equal)
        .map(|d| d * d / equal)
        .sum();
    assert!(off > 10.0 * CHI_SQUARE_60, "{off}");
}

#[test]
fn the_same_seed_gives_the_same_machine() {
    let stage = Stage::new();
    let scenario = any_machine(&stage);
    let library = stage.content_library().library(&scenario);
    let run = |seed| {
        let mut bench = prepare(&scenario, &library, seed).expect("it fits");
        start_wash(&mut bench);
        bench.wait(Span::from_s(120));
        let hidden = bench.hidden()[0].id.clone();
        (hidden, bench.machine().state_hash())
    };
    for seed in [1, 2, 3, 40, 500] {
        assert_eq!(run(seed), run(seed), "seed {seed}");
    }
    let kinds: std::collections::BTreeSet<_> = (1..40).map(|seed| run(seed).0).collect();
    assert!(kinds.len() > 20, "{kinds:?}");
}

/// Every kind of presence replays bit for bit, however the time is cut up.
#[test]
fn faults_that_come_with_stress_or_grow_replay_bit_for_bit() {
    let stage = Stage::new();
    for id in [
        "motor.winding-opens-hot",
        "board.motor-a-switch-tired",
        "harness.pickup-ground-shaken",
        "lid-lock.contact-damp",
        "run-capacitor.fading",
    ] {
        let run = |piece: Span| {
            let mut bench = stage.bench(Mains::V120Hz60, Some(id), 2);
            start_wash(&mut bench);
            let end = bench.now() + Span::from_s(25 * 60);
            while bench.now() < end {
                bench.wait(Span(piece.0.min(end.since(bench.now()).0)));
            }
            bench.machine().state_hash()
        };
        assert_eq!(run(Span(1)), run(Span(7919)), "{id}");
    }
}
