//! Variants of a job: what is offered can be told apart, repaired and passed, the same seed draws the same, and over
//! the whole course every fault is drawn that a job can be made of.

use crate::complaints::{gives_nothing_away, telltale};
use detent_content::{ContentLibrary, JobVariant, Language, ScenarioSource, Texts, VariantSeries};
use detent_training::lesson::technician::{Persona, work};
use detent_training::lesson::{
    CoursePart, CustomerAccount, Hidden, Mains, Scenario, judge, set_up,
};
use detent_training::variant::VariantRefusal;
use detent_training::without_breaks;
use rayon::prelude::*;
use std::collections::{BTreeMap, BTreeSet};

/// Variants of each job that are looked at.
const VARIANTS: usize = 3;
/// Drafts of one job that are looked through for faults that no other reached: about twice through its cards.
const DRAFTS: u64 = 1300;
/// Drafts of one job in which every board comes at both supplies.
const DRAFTS_AT_BOTH: u64 = 60;

fn library() -> ContentLibrary {
    ContentLibrary::builtin().expect("the built-in content is sound")
}

fn job(library: &ContentLibrary, name: &str) -> ScenarioSource {
    library.scenario(name).expect("a built-in job")
}

fn series(library: &ContentLibrary, original: &ScenarioSource, seed: u64) -> VariantSeries {
    let begun = VariantSeries::begin_in_slices(library, original, seed);
    without_breaks(begun).unwrap_or_else(|e| panic!("{}: {e}", original.file))
}

fn variants(library: &ContentLibrary, name: &str, seed: u64, count: usize) -> Vec<JobVariant> {
    let mut series = series(library, &job(library, name), seed);
    let mut next = || without_breaks(series.next_in_slices(library)).expect("drafts can be tried");
    (0..count)
        .map(|_| next().unwrap_or_else(|| panic!("{name} has variants")))
        .collect()
}

#[test]
fn the_same_seed_draws_the_same_variants_and_another_seed_others() {
    let library = library();
    let drawn = |seed| variants(&library, "lock-code-several-causes", seed, VARIANTS);
    let (one, again, other) = (drawn(5), drawn(5), drawn(6));
    assert_eq!(one, again);
    let texts = |all: &[JobVariant]| {
        all.iter()
            .map(|v| v.source.text.clone())
            .collect::<Vec<_>>()
    };
    assert_ne!(texts(&one), texts(&other));
}

#[test]
fn an_expert_passes_every_variant_in_its_time_and_for_its_money() {
    let library = library();
    let jobs = [
        "drain-code",
        "codes-on-a-used-machine",
        "entry-two-keys",
        "two-faults-two-codes",
        "exam-no-live-tests",
        "repair-or-replace",
    ];
    let offered = jobs.par_iter();
    let offered: Vec<(&str, Vec<JobVariant>)> = offered
        .map(|name| (*name, variants(&library, name, 11, VARIANTS)))
        .collect();
    let languages = [Language::En, Language::Es];
    for (name, variants) in offered {
        let original = job(&library, name).scenario;
        for variant in variants {
            let JobVariant { source, .. } = &variant;
            // What was written is what is read.
            let scenario = &source.scenario;
            let library_of = library.library(scenario);
            let bench = set_up(scenario, &library_of, scenario.seed).expect("a sound scenario");
            let done = work(Persona::Expert, scenario, bench.clone()).expect("the expert goes on");
            let score = judge(scenario, &done);
            assert!(score.passed(), "{}: {score:?}", source.file);
            assert!(done.minutes() <= scenario.par_minutes, "{}", source.file);
            assert!(done.bill() <= scenario.budget, "{}", source.file);
            assert_eq!(scenario.live_tests_allowed, original.live_tests_allowed);
            assert_eq!(scenario.points, original.points);
            assert_eq!(scenario.course, None, "a variant is outside the course");
            // Nothing of it gives an answer away, and what the customer says is so.
            let account = CustomerAccount::of(&bench);
            assert!(!account.noticed.is_empty());
            for language in languages {
                let texts = Texts::load(language);
                let told = match language {
                    Language::En => [
                        &scenario.title.en,
                        &scenario.complaint.en,
                        &scenario.goal.en,
                    ],
                    Language::Es => [
                        &scenario.title.es,
                        &scenario.complaint.es,
                        &scenario.goal.es,
                    ],
                };
                for mode in bench.hidden() {
                    gives_nothing_away(told[1], &telltale(language), Some(mode), &texts);
                    assert!(!source.file.contains(&mode.id), "{}", source.file);
                }
                assert!(
                    told.iter()
                        .all(|text| !text.trim().is_empty() && !text.contains('‹'))
                );
            }
        }
    }
}

#[test]
fn a_drill_keeps_its_panel_and_other_jobs_do_not() {
    let library = library();
    let boards = |name: &str| -> BTreeSet<String> {
        let series = series(&library, &job(&library, name), 3);
        let drafts = (0..40).filter_map(|n| series.draft(&library, n));
        drafts.map(|draft| draft.scenario.board).collect()
    };
    assert_eq!(
        boards("entry-two-keys"),
        BTreeSet::from(["key-pad".to_owned()])
    );
    assert_eq!(boards("drain-code").len(), library.boards.len());
}

/// So that what carries over to another board is not mixed up with another voltage.
#[test]
fn every_board_comes_at_both_supplies() {
    let library = library();
    let all: BTreeSet<(String, Mains)> = (library.boards.iter())
        .flat_map(|board| Mains::ALL.map(|mains| (board.id.clone(), mains)))
        .collect();
    for name in ["drain-code", "exam-230-v-keys", "entry-two-keys"] {
        let original = job(&library, name);
        let series = series(&library, &original, 3);
        let drafts = (0..DRAFTS_AT_BOTH).filter_map(|n| series.draft(&library, n));
        let drawn = drafts.map(|draft| (draft.scenario.board, draft.scenario.mains));
        let drawn: BTreeSet<(String, Mains)> = drawn.collect();
        let is_a_drill = name.starts_with("entry");
        let expected = all
            .iter()
            .filter(|(board, _)| !is_a_drill || *board == original.scenario.board);
        assert_eq!(drawn, expected.cloned().collect(), "{name}");
    }
}

#[test]
fn variants_are_proved_on_every_board_at_both_supplies() {
    let library = library();
    let series = series(&library, &job(&library, "drain-code"), 3);
    let mut of_machine: BTreeMap<(String, Mains), Vec<u64>> = BTreeMap::new();
    for n in 0..DRAFTS {
        if let Some(draft) = series.draft(&library, n) {
            let machine = (draft.scenario.board, draft.scenario.mains);
            of_machine.entry(machine).or_default().push(n);
        }
    }
    assert_eq!(of_machine.len(), library.boards.len() * Mains::ALL.len());
    let found = of_machine.par_iter().map(|(machine, drafts)| {
        let mut proved = drafts.iter().map(|n| {
            let proved = series.prove_in_slices(&library, *n);
            without_breaks(proved).expect("it is tried").is_ok()
        });
        (machine, proved.any(|proved| proved))
    });
    let missing: Vec<_> = found.filter(|(_, found)| !found).collect();
    assert_eq!(missing, []);
}

#[test]
fn no_fault_comes_twice_on_a_board_before_all_of_its_pile_have_come() {
    let library = library();
    let series = series(&library, &job(&library, "drain-code"), 3);
    let drafts: Vec<_> = (0..32).filter_map(|n| series.draft(&library, n)).collect();
    let machines = drafts.iter().map(|draft| (draft.board, &draft.hypotheses));
    assert_eq!(machines.collect::<BTreeSet<_>>().len(), 32);
}

/// Least chance of passing of simulated learners at a job of the course, so that none is out of reach. Our own choice.
const LEAST_CHANCE: f64 = 0.05;

/// Run it with `--nocapture` for the table.
#[test]
fn every_named_job_lies_in_its_own_band_and_within_reach_of_learners() {
    let library = library();
    let jobs = library.scenarios().expect("the built-in jobs");
    let named = |job: &&ScenarioSource| matches!(job.scenario.fault, Hidden::Named(_));
    let named: Vec<&ScenarioSource> = jobs.iter().filter(named).collect();
    assert!(named.len() > 20, "{}", named.len());
    let judged = named.par_iter().map(|job| {
        let series = series(&library, job, 1);
        (job.file.as_str(), series.own().to_vec(), *series.band())
    });
    let judged: Vec<_> = judged.collect();
    let within = |x: f64, (least, most): (f64, f64)| x >= least && x <= most;
    let mut chances = BTreeSet::new();
    for (file, own, band) in judged {
        for own in own {
            let (cost, chance) = (own.planned_cost, own.chance_of_passing);
            println!(
                "{file:<40} best plan {cost:>5.0} ({:.0} to {:.0}), pass {:>3.0} % ({:.0} to {:.0}), share {:>3.0} %",
                band.planned_cost.0,
                band.planned_cost.1,
                100.0 * chance,
                100.0 * band.chance_of_passing.0,
                100.0 * band.chance_of_passing.1,
                100.0 * own.mean_share(),
            );
            assert!(within(cost, band.planned_cost), "{file}");
            assert!(within(chance, band.chance_of_passing), "{file}");
            assert!(within(own.mean_share(), band.mean_share), "{file}");
            assert!(chance >= LEAST_CHANCE, "{file}: {chance}");
            chances.insert((1000.0 * chance) as u64);
        }
    }
    // It tells jobs apart.
    assert!(chances.len() > 5, "{chances:?}");
}

#[test]
fn the_work_can_be_handed_from_thread_to_thread() {
    fn check<T: Send>(_: &T) {}
    let library = library();
    let original = job(&library, "drain-code");
    let work = async {
        let mut series = VariantSeries::begin_in_slices(&library, &original, 1).await?;
        series.next_in_slices(&library).await
    };
    check(&work);
}

/// Whether a job hides this fault by its name.
fn names(scenario: &Scenario, id: &str) -> bool {
    match &scenario.fault {
        Hidden::Named(named) => named == id,
        Hidden::DrawFrom(named) | Hidden::Several(named) => named.iter().any(|named| named == id),
        Hidden::Draw | Hidden::DrawWhere(_) | Hidden::Nothing => false,
    }
}

#[test]
fn every_fault_of_the_catalogue_comes_in_some_variant() {
    let library = library();
    let mut all = library.scenarios().expect("the built-in jobs");
    // Whatever can be drawn is of an exam's kin; single faults are the next widest.
    let place = |part| match part {
        Some(CoursePart::Exam) => 0,
        Some(CoursePart::SingleFault) => 1,
        _ => 2,
    };
    all.sort_by_key(|s| place(s.scenario.course.as_ref().map(|c| c.part)));
    let id = |h: &usize| library.catalogue.modes[h - 1].id.as_str();
    let modes = library.catalogue.modes.iter();
    let mut missing: BTreeMap<usize, BTreeSet<VariantRefusal>> = (modes.enumerate())
        .map(|(n, _)| (n + 1, BTreeSet::new()))
        .collect();
    // The first exam takes nearly all; what it does not take is as difficult as the jobs about it.
    let mut next = 0;
    while !all.is_empty() {
        let original = all.remove(next);
        let series = series(&library, &original, 21);
        let drafts = (0..DRAFTS).filter_map(|n| Some((n, series.draft(&library, n)?)));
        let mut of_mode: BTreeMap<usize, Vec<u64>> = BTreeMap::new();
        for (n, draft) in drafts {
            if let [h] = draft.hypotheses[..]
                && missing.contains_key(&h)
            {
                of_mode.entry(h).or_default().push(n);
            }
        }
        let tried: Vec<(usize, Result<(), BTreeSet<VariantRefusal>>)> = (of_mode.par_iter())
            .map(|(h, drafts)| {
                let mut refused = BTreeSet::new();
                for n in drafts {
                    match without_breaks(series.prove_in_slices(&library, *n)).expect("it is tried")
                    {
                        Ok(_) => return (*h, Ok(())),
                        Err(reason) => refused.extend([reason]),
                    }
                }
                (*h, Err(refused))
            })
            .collect();
        for (h, tried) in tried {
            match tried {
                Ok(()) => drop(missing.remove(&h)),
                Err(reasons) => missing.entry(h).or_default().extend(reasons),
            }
        }
        println!("{}: {} faults left", original.file, missing.len());
        if missing.is_empty() {
            break;
        }
        let named = |job: &ScenarioSource| {
            let left = missing.keys();
            left.filter(|h| names(&job.scenario, id(h))).count()
        };
        // Of equals the first.
        let by_names = (0..all.len()).rev().max_by_key(|n| named(&all[*n]));
        next = by_names.unwrap_or(0);
    }
    let missing: Vec<(&str, Vec<VariantRefusal>)> = (missing.iter())
        .map(|(h, reasons)| (id(h), reasons.iter().copied().collect()))
        .collect();
    assert_eq!(missing, [], "no job can be made of these");
}
