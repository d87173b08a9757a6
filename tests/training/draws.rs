//! Which fault a job hides: drawn by the catalogue's weights, from the seed and nothing else.

use crate::stage::Stage;
use detent_simulation::controller::Monitor;
use detent_simulation::interface::Component;
use detent_simulation::plant::{FailureMode, FaultKind, PresenceKind};
use detent_simulation::units::Span;
use detent_training::lesson::{
    DrawFilter, FoundBy, Hidden, Mains, Scenario, draw, prepare, start_wash,
};
use std::collections::{BTreeMap, BTreeSet};

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
    let library = stage.content_library().library(&scenario);
    let modes = library.modes;
    let mut drawn: BTreeMap<&str, u64> = BTreeMap::new();
    for seed in 0..DRAWS {
        let hidden = draw(&scenario, &library, seed).expect("the catalogue is not empty");
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
    let kinds: BTreeSet<_> = (1..40).map(|seed| run(seed).0).collect();
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

/// The kind of each failure mode as its name says it, the catalogue's own names.
const KINDS: &[(FaultKind, &str)] = &[
    (
        FaultKind::ToGround,
        "filter.line-to-ground drain-pump.winding-to-ground motor.winding-to-ground",
    ),
    (
        FaultKind::Short,
        "filter.capacitor-shorted motor.shorted-turns run-capacitor.shorted \
         clutch-actuator.cam-switch-closed thermistor.shorted lid-lock.contact-welded \
         board.cold-switch-welded board.lock-switch-welded board.pump-switch-welded",
    ),
    (
        FaultKind::Open,
        "supply.no-ground cord.open-line line-fuse.blown filter.open-choke \
         inlet-cold.open-winding inlet-hot.open-winding drain-pump.open-winding \
         motor.open-winding-a motor.open-winding-b motor.winding-opens-hot run-capacitor.open \
         clutch-actuator.open-winding clutch-actuator.cam-switch-open pickup.no-output \
         pressure-sensor.no-output thermistor.open lid-lock.open-winding lid-lock.contact-open \
         lid-lock.contact-damp lid-lock.lid-switch-open dial.encoder-dead \
         board.pump-switch-open board.motor-a-switch-open board.lock-switch-open \
         board.hot-switch-open board.clutch-actuator-switch-open board.motor-a-switch-tired \
         board.stop-button-dead board.bleeder-open harness.pump-wire-open \
         harness.cold-wire-open harness.pickup-wire-open harness.pressure-wire-open \
         harness.thermistor-wire-open harness.lock-return-burnt harness.lock-return-loose \
         harness.hot-wire-open harness.clutch-actuator-wire-open harness.lock-coil-wire-open \
         harness.motor-wire-shaken harness.pickup-ground-shaken harness.thermistor-pin-damp \
         harness.pressure-supply-wire-open",
    ),
    (
        FaultKind::Crossed,
        "supply.polarity-reversed inlet-hoses.crossed",
    ),
    (
        FaultKind::Value,
        "supply.low-mains supply.loose-outlet supply.extension-cord cord.weak-joint \
         run-capacitor.fading thermistor.drifting board.motor-b-switch-scorched \
         harness.motor-common-burnt",
    ),
    (
        FaultKind::Signal,
        "pickup.gap-wide pressure-sensor.zero-drift pressure-sensor.slope-drift \
         board.thermistor-input-drift board.current-input-drift",
    ),
    (
        FaultKind::Control,
        "board.sensor-rail-dead board.memory-lost board.service-mode-lost board.supply-dead",
    ),
    (
        FaultKind::Mechanical,
        "drain-pump.seized motor.seized motor.bearing-dry belt.broken belt.slipping \
         clutch-actuator.stripped-gear lid-lock.bolt-stiff dial.worn tub.bearing-rough \
         laundry.uneven laundry.overload floor.not-level",
    ),
    (
        FaultKind::Water,
        "taps.cold-shut taps.hot-shut taps.cold-throttled inlet-cold.blocked-screen \
         inlet-cold.stuck-open inlet-hot.stuck-open inlet-hot.blocked-screen drain-pump.fouled \
         drain-hose.blocked drain-hose.kinked drain-hose.end-low drain-hose.end-high \
         drain-hose.too-deep pressure-hose.blocked pressure-hose.leaking tub.leaking \
         laundry.suds taps.well-pump-weak taps.cold-pipe-narrow taps.cold-pipe-frozen \
         taps.hot-pipe-narrow taps.hot-pipe-frozen",
    ),
];

#[test]
fn every_failure_mode_is_of_the_kind_that_its_name_says() {
    let stage = Stage::new();
    let mut named = BTreeMap::new();
    for (kind, ids) in KINDS {
        named.extend(ids.split(' ').map(|id| (id.to_owned(), *kind)));
    }
    let modes = stage.content_library().catalogue.modes.iter();
    let found: BTreeMap<_, _> = modes.map(|mode| (mode.id.clone(), mode.kind())).collect();
    assert_eq!(found, named);
}

/// What the watches find, as the tables of the built-in machines have it.
fn found_in_tables(stage: &Stage) -> FoundBy {
    let content = stage.content_library();
    let modes = &content.catalogue.modes;
    let known: Vec<_> = (content.supplied_boards().iter())
        .map(|supplied| {
            let board = supplied.library.board;
            let known = content.known_faults(board, supplied.mains);
            (board.clone(), known.expect("a built-in table"))
        })
        .collect();
    let finds = |monitor: Monitor, h: usize| {
        let mut known = known.iter();
        known.any(|(board, known)| known.monitors(board, h).contains(&monitor))
    };
    let found_by = |monitor: Monitor| -> Vec<String> {
        let modes = modes.iter().zip(1..);
        let found = modes.filter(|(_, h)| finds(monitor, *h));
        found.map(|(mode, _)| mode.id.clone()).collect()
    };
    let all = Monitor::ALL
        .iter()
        .map(|monitor| (*monitor, found_by(*monitor)));
    all.filter(|(_, modes)| !modes.is_empty()).collect()
}

#[test]
fn the_catalogue_says_what_each_watch_finds_as_the_tables_do() {
    let stage = Stage::new();
    let expected = found_in_tables(&stage);
    assert!(
        stage.content_library().catalogue.found_by == expected,
        "the catalogue should say: {}",
        ron::ser::to_string_pretty(
            &expected,
            ron::ser::PrettyConfig::new().compact_arrays(true)
        )
        .expect("names and lists"),
    );
}

/// The failure modes that jobs with this draw have had after so many seeds.
fn drawn(stage: &Stage, filter: &DrawFilter, seeds: u64) -> BTreeSet<String> {
    let fault = Hidden::DrawWhere(filter.clone());
    let scenario = Scenario {
        fault,
        ..any_machine(stage)
    };
    let library = stage.content_library().library(&scenario);
    let drawn = (0..seeds).map(|seed| draw(&scenario, &library, seed).expect("there are some"));
    drawn.map(|hidden| hidden[0].id.clone()).collect()
}

#[test]
fn a_draw_takes_what_is_asked_for_all_of_it_and_nothing_else() {
    let stage = Stage::new();
    let modes = &stage.content_library().catalogue.modes;
    let asked = DrawFilter::default;
    let pump = DrawFilter {
        components: vec![Component::DrainPump, Component::DrainHose],
        ..asked()
    };
    let shorts = DrawFilter {
        kinds: vec![FaultKind::Short],
        ..asked()
    };
    let spells = DrawFilter {
        presences: vec![PresenceKind::Intermittent],
        ..asked()
    };
    let common = DrawFilter {
        least_weight: 4.0,
        most_weight: 5.0,
        ..asked()
    };
    // Code 23 of this board is that of a tub that is not empty in time.
    let slow = DrawFilter {
        codes: vec![23],
        without: vec!["drain-pump.seized".to_owned()],
        ..asked()
    };
    let found = &stage.content_library().catalogue.found_by[&Monitor::DrainSlow];
    type Rule<'a> = &'a dyn Fn(&FailureMode) -> bool;
    let component = |mode: &FailureMode| mode.component;
    let rules: [(&DrawFilter, Rule<'_>); 5] = [
        (&pump, &|mode| {
            [Component::DrainPump, Component::DrainHose].contains(&component(mode))
        }),
        (&shorts, &|mode| mode.kind() == FaultKind::Short),
        (&spells, &|mode| {
            mode.presence.kind() == PresenceKind::Intermittent
        }),
        (&common, &|mode| (4.0..=5.0).contains(&mode.weight)),
        (&slow, &|mode| {
            found.contains(&mode.id) && mode.id != "drain-pump.seized"
        }),
    ];
    for (filter, rule) in rules {
        let expected: BTreeSet<String> = (modes.iter())
            .filter(|mode| rule(mode))
            .map(|mode| mode.id.clone())
            .collect();
        assert!(
            (2..60).contains(&expected.len()),
            "{filter:?}: {expected:?}"
        );
        assert_eq!(drawn(&stage, filter, 2_000), expected, "{filter:?}");
    }
    // Everything that is asked for holds at once.
    let both = DrawFilter {
        kinds: vec![FaultKind::Open],
        ..pump
    };
    assert_eq!(
        drawn(&stage, &both, 50),
        BTreeSet::from(["drain-pump.open-winding".to_owned()])
    );
}

/// How a draw is written makes no machine another one.
#[test]
fn a_filter_draws_like_the_list_of_what_it_takes() {
    let stage = Stage::new();
    let filter = DrawFilter {
        components: vec![Component::Motor, Component::Belt],
        ..DrawFilter::default()
    };
    let whole = Hidden::DrawWhere(DrawFilter::default());
    let of_filter = Hidden::DrawWhere(filter);
    let scenario = any_machine(&stage);
    let library = stage.content_library().library(&scenario);
    let taken = library.candidates(&of_filter).expect("all are known");
    let taken: Vec<String> = taken.iter().map(|mode| mode.id.clone()).collect();
    for (one, other) in [(of_filter, Hidden::DrawFrom(taken)), (whole, Hidden::Draw)] {
        let hidden = |fault: &Hidden, seed| {
            let fault = fault.clone();
            let scenario = Scenario {
                fault,
                ..scenario.clone()
            };
            let drawn = draw(&scenario, &library, seed).expect("there are some");
            drawn[0].id.clone()
        };
        for seed in 0..500 {
            assert_eq!(hidden(&one, seed), hidden(&other, seed), "{one:?} {seed}");
        }
    }
}
