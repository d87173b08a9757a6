//! The course: an expert passes every job of it, whoever guesses does worse, and whoever swaps a sound
//! control fails.
//!
//! The table of it: `cargo test -p detent-training --test training course -- --nocapture`.

use crate::stage::Stage;
use detent_content::{ContentLibrary, Language, ScenarioSource, Texts};
use detent_simulation::interface::Component;
use detent_simulation::plant::FailureMode;
use detent_training::bench::{Advice, Bench, Incident, MilestoneKind};
use detent_training::lesson::technician::{Persona, work};
use detent_training::lesson::{
    Course, CoursePart, Hidden, LossKind, Mains, Score, draw, judge, set_up,
};
use rayon::prelude::*;
use std::fmt::Write;

/// Share of the points that the expert keeps in every job.
const EXPERT_SHARE: f64 = 0.85;
/// Seeds of a job that draws from the whole catalogue.
const DRAWS: u64 = 6;
/// The last seed that is looked at for a fault of a short list that was not drawn yet.
const LAST_SEED: u64 = 200;

fn scenarios(content_library: &ContentLibrary) -> Vec<ScenarioSource> {
    content_library
        .scenarios()
        .expect("the built-in scenarios are sound")
}

fn short(scenario_source: &ScenarioSource) -> &str {
    let name = scenario_source.file.strip_prefix("scenarios/");
    let name = name.and_then(|name| name.strip_suffix(".ron"));
    name.expect("a built-in scenario")
}

fn course(scenario_source: &ScenarioSource) -> &Course {
    let course = scenario_source.scenario.course.as_ref();
    course.unwrap_or_else(|| panic!("{} has its place in the course", scenario_source.file))
}

/// The scenario's own seed, and others until every fault of a short list was drawn.
fn seeds(content_library: &ContentLibrary, scenario_source: &ScenarioSource) -> Vec<u64> {
    let scenario = &scenario_source.scenario;
    let own = scenario.seed;
    match &scenario.fault {
        Hidden::Draw => (own..own + DRAWS).collect(),
        Hidden::DrawFrom(ids) => {
            let mut missing = ids.clone();
            let mut seeds = Vec::new();
            for seed in own..own + LAST_SEED {
                let drawn = draw(scenario, &content_library.library(scenario), seed)
                    .expect("a sound scenario");
                let before = missing.len();
                missing.retain(|id| drawn.iter().all(|m| m.id != *id));
                if missing.len() < before {
                    seeds.push(seed);
                }
            }
            assert_eq!(missing, [""; 0], "{} draws them all", scenario_source.file);
            seeds
        }
        _ => vec![own],
    }
}

/// How the three do at one job.
struct Played {
    scenario: usize,
    seed: u64,
    hidden: Vec<FailureMode>,
    expert: (Bench, Score),
    guesser: Score,
    swapper: Score,
}

fn play(
    content_library: &ContentLibrary,
    all: &[ScenarioSource],
    scenario: usize,
    seed: u64,
) -> Played {
    let scenario_source = &all[scenario].scenario;
    let bench = set_up(
        scenario_source,
        &content_library.library(scenario_source),
        seed,
    )
    .expect("a sound scenario");
    let play = |persona| {
        let bench = work(persona, scenario_source, bench.clone()).unwrap_or_else(|error| {
            panic!(
                "{}, seed {seed}: {persona:?} cannot go on: {error}",
                all[scenario].file
            )
        });
        let score = judge(scenario_source, &bench);
        (bench, score)
    };
    Played {
        scenario,
        seed,
        hidden: bench.hidden().to_vec(),
        expert: play(Persona::Expert),
        guesser: play(Persona::Guesser).1,
        swapper: play(Persona::Swapper).1,
    }
}

/// Every job with each of its seeds, shared out over the processor's cores.
fn play_all(content_library: &ContentLibrary, all: &[ScenarioSource]) -> Vec<Played> {
    let jobs: Vec<(usize, u64)> = (all.iter().enumerate())
        .flat_map(|(n, scenario_source)| {
            seeds(content_library, scenario_source)
                .into_iter()
                .map(move |seed| (n, seed))
        })
        .collect();
    let jobs = jobs.par_iter();
    jobs.map(|(n, seed)| play(content_library, all, *n, *seed))
        .collect()
}

fn share(score: &Score) -> f64 {
    score.total() / score.of()
}

fn losses(score: &Score) -> String {
    let mut text = String::new();
    for dimension in &score.dimensions {
        for loss in dimension.lost.iter().filter(|loss| loss.points > 0.05) {
            write!(text, " {:.1} {:?};", loss.points, loss.loss).expect("memory takes it");
        }
    }
    text
}

#[test]
fn the_expert_passes_every_job_and_whoever_swaps_a_sound_control_none() {
    let content_library = ContentLibrary::builtin().expect("the built-in content is sound");
    let all = scenarios(&content_library);
    let played = play_all(&content_library, &all);
    println!(
        "{:<22} {:>5} {:<46} expert guesser swapper  of 100; expert's minutes, bill, codes",
        "job", "seed", "hidden"
    );
    let mut wrong = Vec::new();
    for p in &played {
        let scenario_source = &all[p.scenario];
        let hidden: Vec<&str> = p.hidden.iter().map(|m| m.id.as_str()).collect();
        let (bench, expert) = &p.expert;
        let job = format!(
            "{:<22} {:>5} {:<46}",
            short(scenario_source),
            p.seed,
            hidden.join(" ")
        );
        let bill = bench.bill();
        let codes: Vec<u8> = bench.noted_codes().iter().map(|(_, code)| code).collect();
        println!(
            "{job} {:6.0} {:7.0} {:7.0}   {:.0} of {:.0} min, {bill:.0} of {:.0}, {codes:?}",
            100.0 * share(expert),
            100.0 * share(&p.guesser),
            100.0 * share(&p.swapper),
            bench.minutes(),
            scenario_source.scenario.par_minutes,
            scenario_source.scenario.budget,
        );
        if share(expert) < EXPERT_SHARE || !expert.passed() {
            wrong.push(format!("{job} the expert loses{}", losses(expert)));
        }
        let given_up = bench.report().is_some_and(|r| r.advice == Advice::Replace);
        if !given_up && !bench.passed(MilestoneKind::ProgramFinished, bench.began()) {
            wrong.push(format!("{job} the expert never sees it wash"));
        }
        // The second fault shows itself once the first is gone.
        let double = course(scenario_source).part == CoursePart::Doubles;
        if double && !given_up && codes.len() < 2 {
            wrong.push(format!("{job} one code alone: {codes:?}"));
        }
        let bad_control = |m: &FailureMode| m.component == Component::Board && !m.needs_no_part();
        if p.swapper.passed() && !p.hidden.iter().any(bad_control) {
            wrong.push(format!(
                "{job} a sound control was swapped: {}",
                losses(&p.swapper)
            ));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    let mean = |of: fn(&Played) -> &Score| {
        played.iter().map(|p| share(of(p))).sum::<f64>() / played.len() as f64
    };
    let (expert, guesser, swapper) = (
        mean(|p| &p.expert.1),
        mean(|p| &p.guesser),
        mean(|p| &p.swapper),
    );
    println!(
        "{} attempts each; mean {expert:.2}, {guesser:.2}, {swapper:.2}",
        played.len()
    );
    assert!(guesser < expert && swapper < expert);
}

/// How the expert and each bad habit do at these jobs, by their own seeds: mean shares of the points. Nobody
/// passes with a shock, or with hands in a circuit or a machine handed back that was not proved.
fn habits(content_library: &ContentLibrary, jobs: &[ScenarioSource]) -> Vec<(Persona, f64)> {
    let personas = [
        Persona::Expert,
        Persona::SkipsProof,
        Persona::SkipsRun,
        Persona::Touches,
        Persona::WaitsTooShort,
    ];
    let scored = |persona, job: &ScenarioSource| {
        let scenario = &job.scenario;
        let bench = set_up(scenario, &content_library.library(scenario), scenario.seed);
        let done = work(persona, scenario, bench.expect("a sound scenario"));
        let done = done.unwrap_or_else(|e| panic!("{}: {persona:?} cannot go on: {e}", job.file));
        let score = judge(scenario, &done);
        let shocked = done
            .events()
            .iter()
            .any(|event| event.what == Incident::Shock);
        assert!(
            !(shocked && score.passed()),
            "{}: passed with a shock",
            job.file
        );
        let unproved = [
            LossKind::NotProvedDead,
            LossKind::DischargedUnmeasured,
            LossKind::NoProvingRun,
        ];
        let mut lost = score.dimensions.iter().flat_map(|side| &side.lost);
        assert!(
            !(score.passed() && lost.any(|lost| unproved.contains(&lost.loss.kind()))),
            "{}: {persona:?} passed with a circuit or a repair that was not proved",
            job.file
        );
        score
    };
    let each = personas.into_iter().map(|persona| {
        let scores: Vec<Score> = jobs.par_iter().map(|job| scored(persona, job)).collect();
        let mean = scores.iter().map(share).sum::<f64>() / scores.len() as f64;
        let passed = scores.iter().filter(|score| score.passed()).count();
        println!(
            "{persona:?}: mean {mean:.3}, {passed} of {} jobs passed",
            scores.len()
        );
        (persona, mean)
    });
    each.collect()
}

#[track_caller]
fn check_habits(content_library: &ContentLibrary, jobs: &[ScenarioSource]) {
    let found = habits(content_library, jobs);
    let [(_, expert), habits @ ..] = &found[..] else {
        panic!("the expert is among them");
    };
    for (persona, mean) in habits {
        assert!(mean < expert, "{persona:?} does as well as the expert");
    }
}

#[test]
fn each_bad_habit_costs_points_and_a_shock_the_job() {
    let content_library = ContentLibrary::builtin().expect("the built-in content is sound");
    let jobs = scenarios(&content_library);
    let single = |job: &ScenarioSource| {
        course(job).part == CoursePart::SingleFault && course(job).number <= 3
    };
    let jobs: Vec<ScenarioSource> = jobs.into_iter().filter(single).collect();
    assert_eq!(jobs.len(), 3);
    check_habits(&content_library, &jobs);
}

#[test]
#[ignore = "every job four times: a table for a change of prices, over a minute"]
fn each_bad_habit_costs_points_on_the_whole_course() {
    let content_library = ContentLibrary::builtin().expect("the built-in content is sound");
    let jobs = scenarios(&content_library);
    check_habits(&content_library, &jobs);
}

#[test]
fn the_course_is_whole_and_each_job_comes_after_what_it_builds_on() {
    let content_library = Stage::new().content_library().clone();
    let all = scenarios(&content_library);
    assert!(all.len() >= 30, "{} jobs", all.len());
    for part in CoursePart::ALL {
        let numbers: Vec<u8> = (all.iter().map(course))
            .filter(|c| c.part == *part)
            .map(|c| c.number)
            .collect();
        // In order, from 1, without a gap or a number twice: what comes earlier is no matter of chance.
        assert!(numbers.len() >= 3, "{part}: {numbers:?}");
        assert!(
            numbers.iter().copied().eq(1..=numbers.len() as u8),
            "{part}: {numbers:?}"
        );
    }
    for board in &content_library.boards {
        let on_it = all.iter().filter(|t| t.scenario.board == board.id).count();
        assert!(
            4 * on_it >= all.len(),
            "{}: {on_it} of {}",
            board.id,
            all.len()
        );
        // So that what carries over to another board is not mixed up with another voltage.
        for mains in Mains::ALL {
            let at_it =
                |t: &ScenarioSource| t.scenario.board == board.id && t.scenario.mains == mains;
            assert!(all.iter().any(at_it), "{} {mains:?}", board.id);
        }
    }
    // Each names only earlier jobs, so none can come back to itself.
    for (n, scenario_source) in all.iter().enumerate() {
        for before in &course(scenario_source).after {
            let place = all.iter().position(|t| short(t) == before);
            let place =
                place.unwrap_or_else(|| panic!("{}: no job {before}", scenario_source.file));
            assert!(place < n, "{}: {before} comes later", scenario_source.file);
        }
        let of = scenario_source.scenario.points;
        let of = of.entry + of.reading + of.reasoning + of.safety + of.cost + of.proof;
        assert!(
            (of - 100.0).abs() < 1e-9,
            "{}: {of} points",
            scenario_source.file
        );
        let first = scenario_source.text.lines().next();
        assert!(first.is_some_and(|line| line.starts_with("// ") && line.contains("invented")));
    }
}

/// Words of a component's name that say nothing of it.
const COMMON: [&str; 5] = ["cold", "water", "agua", "fría", "caliente"];

#[test]
fn a_complaint_does_not_name_what_failed() {
    let content_library = ContentLibrary::builtin().expect("the built-in content is sound");
    let mut checked = 0;
    for language in Language::ALL {
        let texts = Texts::load(language);
        for scenario_source in scenarios(&content_library) {
            let scenario = &scenario_source.scenario;
            let said = match language {
                Language::En => &scenario.complaint.en,
                Language::Es => &scenario.complaint.es,
            };
            let words = |text: &str| -> Vec<String> {
                let text = text.to_lowercase();
                let words = text
                    .split(|c: char| !c.is_alphanumeric())
                    .map(str::to_owned);
                words.filter(|word| word.chars().count() > 3).collect()
            };
            let said = words(said);
            let ids: Vec<&String> = match &scenario.fault {
                Hidden::Named(id) => vec![id],
                Hidden::DrawFrom(ids) | Hidden::Several(ids) => ids.iter().collect(),
                Hidden::Draw | Hidden::DrawWhere(_) | Hidden::Nothing => Vec::new(),
            };
            for id in ids {
                let mode = content_library
                    .catalogue
                    .mode(id)
                    .expect("a checked scenario");
                let name = texts.get(&format!("component-{}", mode.component));
                for word in words(&name)
                    .iter()
                    .filter(|w| !COMMON.contains(&w.as_str()))
                {
                    checked += 1;
                    assert!(
                        !said.contains(word),
                        "{} says \"{word}\"",
                        scenario_source.file
                    );
                }
            }
        }
    }
    assert!(checked > 50, "{checked} words");
}
