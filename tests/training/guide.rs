//! Guides: what they show can be done as it is shown, reaches every goal in order, hurts nobody and earns the job.

use crate::stage::Stage;
use detent_content::{Language, ScenarioSource, Texts};
use detent_simulation::units::Span;
use detent_training::bench::{Action, Bench};
use detent_training::lesson::{Goal, Guide, judge, set_up};

/// Every job with a guide.
fn guided(stage: &Stage) -> Vec<(ScenarioSource, Guide)> {
    let content_library = stage.content_library();
    let jobs = content_library.scenarios().expect("sound jobs").into_iter();
    jobs.filter_map(|job| {
        let guide = content_library.guide(&job).expect("a sound guide")?;
        Some((job, guide))
    })
    .collect()
}

fn begin(stage: &Stage, job: &ScenarioSource) -> Bench {
    let library = stage.content_library().library(&job.scenario);
    set_up(&job.scenario, &library, job.scenario.seed).expect("it fits")
}

#[test]
fn whoever_does_what_a_guide_shows_reaches_every_goal_and_does_the_job_well() {
    let stage = Stage::new();
    let jobs = guided(&stage);
    assert!(!jobs.is_empty());
    for (job, guide) in jobs {
        let mut bench = begin(&stage, &job);
        for (n, step) in guide.steps.iter().enumerate() {
            assert_eq!(
                guide.place(bench.log()).steps_done,
                n,
                "before: {}",
                step.say.en
            );
            assert_eq!(guide.place(bench.log()).astray, None, "{}", step.say.en);
            for line in &step.shown {
                line.run(&mut bench)
                    .unwrap_or_else(|error| panic!("{}: {line:?}: {error}", step.say.en));
            }
            assert_eq!(
                guide.place(bench.log()).steps_done,
                n + 1,
                "after: {}",
                step.say.en
            );
        }
        assert!(bench.events().iter().next().is_none(), "nobody was hurt");
        let score = judge(&job.scenario, &bench).total();
        assert!(score >= 90.0, "{}: {score}", job.file);
    }
}

/// What a step marks is on the screen under that name, in both languages.
#[test]
fn everything_that_a_guide_marks_has_its_text() {
    let stage = Stage::new();
    for texts in Language::ALL.map(Texts::load) {
        for (job, guide) in guided(&stage) {
            for key in guide.steps.iter().flat_map(|step| &step.mark) {
                let text = texts.get(key);
                assert!(!text.contains('‹'), "{}: {key}: {text}", job.file);
            }
        }
    }
}

/// A step that was not done is not skipped, whatever else is done, and one that was done stays done.
#[test]
fn a_step_waits_for_its_goal_and_stays_done() {
    let stage = Stage::new();
    let (job, guide) = guided(&stage).swap_remove(0);
    let mut bench = begin(&stage, &job);
    let run = |bench: &mut Bench, n: usize| {
        for line in &guide.steps[n].shown {
            line.run(bench).expect("a person can do this");
        }
    };
    // The plug is out; that the control forgets takes its time.
    run(&mut bench, 0);
    assert_eq!(guide.steps[1].goal, Goal::Rested);
    bench.wait(Span::from_s(5));
    run(&mut bench, 2);
    assert_eq!(
        guide.place(bench.log()).steps_done,
        1,
        "five seconds are no rest"
    );
    run(&mut bench, 0);
    run(&mut bench, 1);
    assert_eq!(guide.place(bench.log()).steps_done, 2);
    run(&mut bench, 2);
    assert_eq!(guide.place(bench.log()).steps_done, 3);
    run(&mut bench, 0);
    assert_eq!(
        guide.place(bench.log()).steps_done,
        3,
        "a plug pulled again undoes nothing"
    );
}

/// Each way astray of a built-in guide is told when it is gone, and no longer once the step is done.
#[test]
fn what_leads_away_is_told_until_the_step_is_done() {
    let stage = Stage::new();
    let (job, guide) = guided(&stage).swap_remove(0);
    let told = |bench: &Bench| {
        let place = guide.place(bench.log());
        let step = guide.steps.get(place.steps_done)?;
        place.astray.map(|n| step.astray[n].after.clone())
    };
    let mut bench = begin(&stage, &job);
    let act = |bench: &mut Bench, action: Action| bench.act(&action).expect("it can be done");
    assert_eq!(told(&bench), None);
    act(&mut bench, Action::OpenCabinet);
    assert_eq!(told(&bench), Some(Goal::Did(Action::OpenCabinet)));
    act(&mut bench, Action::Unplug);
    assert_eq!(told(&bench), None, "the step is done");
    act(&mut bench, Action::Plug);
    assert_eq!(told(&bench), Some(Goal::Did(Action::Plug)));
    act(&mut bench, Action::Unplug);
    bench.wait(Span::from_s(60));
    assert_eq!(guide.place(bench.log()).steps_done, 2);
    assert_eq!(told(&bench), None);
    act(&mut bench, Action::Plug);
    bench.wait(Span::from_s(3));
    act(&mut bench, Action::Order("P-1801".to_owned()));
    assert_eq!(told(&bench), Some(Goal::Ordered));
}
