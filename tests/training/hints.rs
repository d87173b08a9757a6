//! Hints: they exist wherever a job stands, name nothing that the evidence does not support, know nothing that the
//! bench has not shown, and cost what they say.

use crate::stage::Stage;
use detent_content::{Language, ScenarioSource, Texts, Words, builtin};
use detent_simulation::interface::Component;
use detent_training::bench::{Action, Bench, HintRung, Quote, Refusal};
use detent_training::lesson::technician::{Persona, work};
use detent_training::lesson::{Dimension, Hidden, LossKind, judge, set_up};
use detent_training::reason::{Area, Hint, HintTopic, LEAST_NAMED, PlanStep, Probe, hint};
use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;
use rayon::prelude::*;
use std::sync::LazyLock;

static STAGE: LazyLock<Stage> = LazyLock::new(Stage::new);
static JOBS: LazyLock<Vec<ScenarioSource>> = LazyLock::new(|| {
    STAGE
        .content_library()
        .scenarios()
        .expect("sound scenarios")
});

fn job(name: &str) -> &'static ScenarioSource {
    let file = format!("scenarios/{name}.ron");
    let found = JOBS.iter().find(|job| job.file == file);
    found.unwrap_or_else(|| panic!("no job {name}"))
}

fn fresh(job: &ScenarioSource, seed: u64) -> Bench {
    let library = STAGE.content_library().library(&job.scenario);
    set_up(&job.scenario, &library, seed).expect("a sound scenario")
}

fn hint_at(job: &ScenarioSource, seed: u64, bench: &Bench) -> Option<Hint> {
    let (scenario, content_library) = (&job.scenario, STAGE.content_library());
    let library = content_library.library(scenario);
    let table = builtin::table(&library, scenario.mains.rating()).expect("a table");
    hint((scenario, seed), library, &table, bench).expect("it was done here")
}

/// A bench of its own on which the first deeds of what was `done` were done, at the moment of the next one.
fn first_deeds(job: &ScenarioSource, done: &Bench, deeds: usize) -> Bench {
    let mut bench = fresh(job, job.scenario.seed);
    for (at, action) in done.history().iter().take(deeds) {
        bench.wait(at.since(bench.now()));
        bench.act(action).expect("it was done before");
    }
    if let Some((at, _)) = done.history().get(deeds) {
        bench.wait(at.since(bench.now()));
    }
    bench
}

/// States of each job that are drawn.
const STATES: usize = 3;

/// Nothing is named that is unlikely by what was seen, or that sound readings or looks ruled out: in no rung, and in no
/// state that somebody's work goes through.
#[test]
fn no_hint_names_what_the_evidence_does_not_support() {
    let both = Language::ALL.map(Texts::load);
    let jobs: Vec<_> = JOBS.iter().enumerate().collect();
    let told: Vec<(HintTopic, usize)> = jobs
        .par_iter()
        .flat_map_iter(|(n, job)| {
            let mut rng = ChaCha8Rng::seed_from_u64(*n as u64);
            let persona = [Persona::Expert, Persona::Guesser, Persona::Swapper][n % 3];
            let done = work(persona, &job.scenario, fresh(job, job.scenario.seed));
            let done = done.unwrap_or_else(|e| panic!("{}: {e}", job.file));
            let both = &both;
            let states: Vec<usize> = (0..STATES)
                // The last deed is the report.
                .map(|_| rng.next_u32() as usize % done.history().len())
                .collect();
            states.into_iter().map(move |deeds| {
                let bench = first_deeds(job, &done, deeds);
                let hint = hint_at(job, job.scenario.seed, &bench).expect("the job goes on");
                check_causes(job, deeds, &bench, &hint);
                for texts in both {
                    check_rungs(job, deeds, &bench, &hint, texts);
                }
                (hint.topic, deeds)
            })
        })
        .collect();
    let of = |is: fn(&HintTopic) -> bool| told.iter().filter(|(topic, _)| is(topic)).count();
    // The draw is wide enough to be worth something.
    assert!(of(|t| matches!(t, HintTopic::Step(_))) >= 15, "{told:?}");
    assert!(of(|t| !matches!(t, HintTopic::Step(_))) >= 15, "{told:?}");
}

/// Causes are likely enough, and not ruled out.
#[track_caller]
fn check_causes(job: &ScenarioSource, deeds: usize, bench: &Bench, hint: &Hint) {
    let repaired = bench.repairs().first().is_some();
    for (hypothesis, share) in &hint.causes {
        assert!(*share >= LEAST_NAMED, "{}: {share}", job.file);
        let Some(mode) = hypothesis.checked_sub(1) else {
            continue;
        };
        let readings = bench.notebook().iter();
        let readings = readings.filter(|r| r.meter_sound && !r.live && r.rules_out[mode]);
        let looks = bench.found().iter().filter(|f| f.rules_out[mode]);
        let against = readings.count() + looks.count();
        assert!(
            repaired || against < 2,
            "{} after {deeds} deeds: {} was ruled out",
            job.file,
            hint.modes[mode]
        );
    }
}

/// Each rung tells of the hint's causes and of no others: the first only where to look, the last a part only if it
/// ends one of them.
#[track_caller]
fn check_rungs(job: &ScenarioSource, deeds: usize, bench: &Bench, hint: &Hint, texts: &Texts) {
    let board = Some(bench.machine().board());
    let costs = (&hint.repair_costs, &hint.modes[..]);
    let words = Words::of(costs, texts, bench.counter(), board);
    let at = format!("{} after {deeds} deeds", job.file);
    let supported: Vec<String> = (hint.causes.iter())
        .map(|(hypothesis, _)| words.hypothesis(*hypothesis))
        .collect();
    for rung in HintRung::ALL {
        let told = words.hint(hint, *rung);
        assert!(!told.contains(['‹', '{']) && told.len() > 8, "{at}: {told}");
        for mode in 1..=hint.modes.len() {
            let name = words.hypothesis(mode);
            // One name can be the beginning of another.
            let named = told.contains(&name);
            let is_supported = supported.iter().any(|cause| cause.contains(&name));
            let may_be_named = is_supported && *rung != HintRung::WhereToLook;
            assert!(!named || may_be_named, "{at}, {rung}: {told}");
        }
        let about = |number: &String| {
            let part = bench.part(number).expect("it is at the counter");
            bench.modes().iter().enumerate().any(|(n, mode)| {
                part.ends(mode)
                    && hint
                        .causes
                        .iter()
                        .any(|(hypothesis, _)| *hypothesis == n + 1)
            })
        };
        let named = bench.counter().iter().map(|part| &part.number);
        for number in named.filter(|number| told.contains(number.as_str())) {
            let last = *rung == HintRung::WhatToDo;
            assert!(last && about(number), "{at}, {rung}: {told}");
        }
    }
    let first = hint.causes.iter().find_map(|(n, _)| n.checked_sub(1));
    if let (HintTopic::Step(_), Some(area), Some(mode)) = (&hint.topic, hint.area, first) {
        assert_eq!(area, Area::of(bench.modes()[mode].component), "{at}");
        let told = words.hint(hint, HintRung::WhereToLook);
        assert!(
            told.contains(&texts.get(&format!("area-{area}"))),
            "{at}: {told}"
        );
    }
}

/// Two machines that have shown the same so far get the same hint, whatever is wrong with them.
#[test]
fn a_hint_knows_nothing_that_the_bench_has_not_shown() {
    let job = job("drain-code-several-causes");
    let Hidden::DrawFrom(ids) = &job.scenario.fault else {
        panic!("it draws");
    };
    let hints: Vec<(String, Option<Hint>)> = (ids.iter())
        .map(|id| {
            let mut job = job.clone();
            job.scenario.fault = Hidden::Named(id.clone());
            let mut bench = fresh(&job, 409);
            let codes = bench.machine().control().memory().codes.clone();
            for code in codes {
                bench.act(&Action::NoteCode(code.code)).expect("a note");
            }
            (id.clone(), hint_at(&job, 409, &bench))
        })
        .collect();
    assert!(hints.len() >= 3);
    for (id, hint) in &hints {
        assert_eq!(hint, &hints[0].1, "{id}");
    }
}

/// What the expert has done up to the report leaves nothing to hint at but the report, with the right cause.
#[test]
fn after_the_experts_work_the_report_is_left() {
    let single: Vec<_> = JOBS
        .iter()
        .filter(|job| matches!(job.scenario.fault, Hidden::Named(_) | Hidden::DrawFrom(_)))
        .collect();
    let wrong: Vec<String> = single
        .par_iter()
        .flat_map(|job| {
            let seed = job.scenario.seed;
            let done = work(Persona::Expert, &job.scenario, fresh(job, seed)).expect("it works");
            let bench = first_deeds(job, &done, done.history().len() - 1);
            let hint = hint_at(job, seed, &bench).expect("the job goes on");
            let named = hint.causes.first().and_then(|(n, _)| n.checked_sub(1));
            let named = named.map(|mode| hint.modes[mode].as_str());
            let truth = bench.hidden().first().map(|mode| mode.id.as_str());
            let repaired = bench.repairs().first().is_some();
            // Nothing may be proved; what is named is what it was.
            let told = hint.topic == HintTopic::WriteReport && (named.is_none() || named == truth);
            (repaired && !told)
                .then(|| format!("{}: {:?} {:?} {named:?}", job.file, hint.topic, hint.causes))
        })
        .collect();
    assert!(
        wrong.is_empty(),
        "{} of {}: {wrong:#?}",
        wrong.len(),
        single.len()
    );
}

/// From the console to a safe bench, to a proven repair: hints come in that order, and a reading on the dead machine
/// is asked for only when it is safe.
#[test]
fn hints_lead_from_the_console_to_a_safe_bench_and_a_proven_repair() {
    let job = job("drain-code-several-causes");
    let seed = job.scenario.seed;
    let done = work(Persona::Expert, &job.scenario, fresh(job, seed)).expect("it works");
    let mut bench = fresh(job, seed);
    let mut topics = Vec::new();
    for (at, action) in done.history().iter() {
        bench.wait(at.since(bench.now()));
        let hint = hint_at(job, seed, &bench).expect("the job goes on");
        if let HintTopic::Step(PlanStep::Test(test)) = hint.topic {
            let view = bench.view();
            match &hint.repair_costs.probes[test] {
                Probe::Read(point) => {
                    assert!(point.state.is_live() || !view.machine.plugged);
                    assert!(view.cabinet_open, "{point:?}");
                }
                Probe::Inspect(component) => {
                    assert!(view.cabinet_open || !component.is_inside());
                }
                Probe::BucketTest(_) => assert!(view.taps_shut),
                Probe::Recalibrate => {}
            }
        }
        if topics.last() != Some(&hint.topic) {
            topics.push(hint.topic);
        }
        bench.act(action).expect("it was done before");
    }
    let place = |wanted: fn(&HintTopic) -> bool| topics.iter().position(wanted);
    let order = [
        place(|t| *t == HintTopic::LeaveFaultHold),
        place(|t| *t == HintTopic::EnterServiceMode),
        place(|t| *t == HintTopic::ReadCodes),
        place(|t| matches!(t, HintTopic::MakeSafe(_))),
        place(|t| *t == HintTopic::OpenCabinet),
        place(|t| matches!(t, HintTopic::Step(PlanStep::Test(_)))),
        place(|t| *t == HintTopic::EmptyBasket),
        place(|t| *t == HintTopic::Recalibrate),
        place(|t| *t == HintTopic::ProveByRun),
        place(|t| *t == HintTopic::ShowCustomer),
        place(|t| *t == HintTopic::WriteReport),
    ];
    assert!(
        order.iter().all(Option::is_some) && order.is_sorted(),
        "{topics:?}"
    );
    assert_eq!(hint_at(job, seed, &bench), None, "the report is in");
}

/// Once the short behind a blown fuse is mended the fuse has its turn: first the customer is asked, then it is bought,
/// then it goes in. A fuse that nobody has looked at is not spoken of.
#[test]
fn behind_a_mended_short_the_hint_is_a_new_fuse() {
    let mut job = job("blown-twice").clone();
    job.scenario.fault = Hidden::Named("filter.capacitor-shorted".to_owned());
    let (job, seed) = (&job, job.scenario.seed);
    let mended = |look: bool| {
        let mut bench = fresh(job, seed);
        let part = |number: &str| number.to_owned();
        let quote = Action::Quote(Quote {
            parts: vec![part("P-0401")],
            minutes: 60,
        });
        let deeds = [
            Action::Unplug,
            Action::OpenCabinet,
            Action::Discharge,
            quote,
            Action::Order(part("P-0401")),
            Action::Fit(part("P-0401")),
        ];
        let look = look.then_some(Action::Inspect(Component::LineFuse));
        for deed in deeds.into_iter().chain(look) {
            bench.act(&deed).expect("a person can do this");
        }
        bench
    };
    let topic = |bench: &Bench| hint_at(job, seed, bench).expect("the job goes on").topic;
    assert_eq!(topic(&mended(false)), HintTopic::EmptyBasket);
    let mut bench = mended(true);
    let fuse = "P-0301".to_owned();
    assert_eq!(topic(&bench), HintTopic::QuotePart(fuse.clone()));
    let quote = Quote {
        parts: vec!["P-0401".to_owned(), fuse.clone()],
        minutes: 60,
    };
    bench.act(&Action::Quote(quote)).expect("a quote");
    assert_eq!(topic(&bench), HintTopic::RenewFuse(fuse.clone()));
    bench.act(&Action::Order(fuse.clone())).expect("it is sold");
    let next = topic(&bench);
    assert!(
        matches!(next, HintTopic::FitPart(ref number) if *number == fuse)
            || matches!(next, HintTopic::MakeSafe(_)),
        "{next:?}"
    );
    bench.act(&Action::Fit(fuse)).expect("it is in hand");
    assert_eq!(topic(&bench), HintTopic::EmptyBasket);
}

/// Water that was shut off for the work is let in again before anything is tried.
#[test]
fn taps_that_are_still_shut_off_come_before_the_recalibration() {
    let job = job("fills-without-a-call-for-water");
    let seed = job.scenario.seed;
    let done = work(Persona::Expert, &job.scenario, fresh(job, seed)).expect("it works");
    let fitted = (done.history().iter())
        .position(|(_, action)| matches!(action, Action::Fit(_)))
        .expect("a valve");
    let mut bench = first_deeds(job, &done, fitted + 1);
    assert!(bench.view().taps_shut);
    let topic = |bench: &Bench| hint_at(job, seed, bench).expect("the job goes on").topic;
    assert_eq!(topic(&bench), HintTopic::OpenTaps);
    bench
        .act(&Action::PutRight(Component::Taps))
        .expect("they open");
    assert_eq!(topic(&bench), HintTopic::EmptyBasket);
    for deed in [Action::OpenLid, Action::UnloadBasket, Action::CloseLid] {
        bench.act(&deed).expect("nothing moves");
    }
    assert_eq!(topic(&bench), HintTopic::Recalibrate);
}

/// The test that is proposed can be made: its pins are there and its state is allowed.
#[test]
fn without_live_tests_no_hint_asks_for_one() {
    let job = job("drain-code-several-causes");
    assert!(!job.scenario.live_tests_allowed);
    let hint = hint_at(job, job.scenario.seed, &fresh(job, job.scenario.seed)).expect("a hint");
    assert!(hint.repair_costs.probes.iter().all(|probe| match probe {
        Probe::Read(point) => !point.state.is_live(),
        Probe::Inspect(_) | Probe::BucketTest(_) | Probe::Recalibrate => true,
    }));
}

#[test]
fn hints_take_their_points_and_an_examination_gives_none() {
    let source = job("drain-code-several-causes");
    let scenario = &source.scenario;
    let mut bench = fresh(source, scenario.seed);
    let before = judge(scenario, &bench).total();
    for rung in [HintRung::WhereToLook, HintRung::WhatToAsk] {
        bench.act(&Action::TakeHint(rung)).expect("a hint");
    }
    let score = judge(scenario, &bench);
    let side = score
        .dimensions
        .iter()
        .find(|d| d.dimension == Dimension::Reasoning);
    let lost = &side.expect("it scores reasoning").lost;
    let taken = lost
        .iter()
        .filter(|lost| lost.loss.kind() == LossKind::HintTaken);
    assert_eq!(taken.clone().count(), 2);
    let stated = scenario.points.taken_by_hint(HintRung::WhereToLook)
        + scenario.points.taken_by_hint(HintRung::WhatToAsk);
    assert!((stated - 0.12 * scenario.points.reasoning).abs() < 1e-9);
    // Nothing was done yet, so that the side has lost its points to worse things before.
    assert!(score.total() <= before);

    let exam = job("exam-third-opinion");
    let mut bench = fresh(exam, exam.scenario.seed);
    let asked = bench.act(&Action::TakeHint(HintRung::WhereToLook));
    assert_eq!(asked, Err(Refusal::NoHints));
    assert!(bench.history().is_empty());
}

/// The rungs cost 4, 8 and 16 in a hundred of the side that a job is most about, in every job that gives hints.
/// Our own choice.
#[test]
fn each_rung_takes_its_stated_share_in_every_job() {
    let giving: Vec<_> = JOBS
        .iter()
        .filter(|job| job.scenario.hints_allowed)
        .collect();
    assert!(giving.len() > 20, "{}", giving.len());
    for job in giving {
        let points = &job.scenario.points;
        let most = Dimension::ALL.iter().map(|side| points.of(*side));
        let most = most.fold(0.0_f64, f64::max);
        for (rung, in_a_hundred) in [
            (HintRung::WhereToLook, 4.0),
            (HintRung::WhatToAsk, 8.0),
            (HintRung::WhatToDo, 16.0),
        ] {
            let taken = 100.0 * points.taken_by_hint(rung) / most;
            assert!(
                (taken - in_a_hundred).abs() < 1e-9,
                "{}: {rung}: {taken}",
                job.file
            );
        }
    }
}

/// A hint that was taken is in the score of somebody who lost nothing else.
#[test]
fn who_took_a_hint_keeps_the_rest() {
    let source = job("drain-code-several-causes");
    let scenario = &source.scenario;
    let mut bench = fresh(source, scenario.seed);
    bench
        .act(&Action::TakeHint(HintRung::WhatToDo))
        .expect("a hint");
    let done = work(Persona::Expert, scenario, bench).expect("it works");
    let alone = work(Persona::Expert, scenario, fresh(source, scenario.seed)).expect("it works");
    let lost = judge(scenario, &alone).total() - judge(scenario, &done).total();
    let stated = scenario.points.taken_by_hint(HintRung::WhatToDo);
    assert!((lost - stated).abs() < 1e-9, "{lost} of {stated}");
}
