//! Guides: what they show can be done as it is shown, reaches every goal in order, hurts nobody and earns the job.

use crate::stage::Stage;
use detent_content::{Language, ScenarioSource, Texts};
use detent_simulation::interface::{Button, Direction};
use detent_simulation::units::Span;
use detent_training::authoring::{GuideProof, prove_guide_in_slices};
use detent_training::bench::script::ScriptStep;
use detent_training::bench::{Action, Bench};
use detent_training::lesson::{
    BenchGoal, Goal, Guide, GuideStep, WindowGoal, WindowState, WindowStepsDone, WindowTab,
    WindowView, set_up,
};
use detent_training::without_breaks;

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

/// Place of the guide's first step that is about the machine.
fn first_of_job(guide: &Guide) -> usize {
    let unplug = |goal: &Goal| *goal == Goal::Bench(BenchGoal::Did(Action::Unplug));
    let first = guide.steps.iter().position(|step| unplug(&step.goal));
    first.expect("it begins with the plug")
}

/// Does in the window what one of its goals asks.
fn show(goal: WindowGoal, window: &mut WindowState) {
    match goal {
        WindowGoal::Looked(view) => window.view = view,
        WindowGoal::Opened(tab) => window.tab = tab,
        WindowGoal::ClockAt(speed) => window.clock_speed = speed,
    }
}

/// What somebody did who followed the first steps about the window.
fn all_looked_at(guide: &Guide, bench: &Bench) -> WindowStepsDone {
    let (mut window, mut looked) = (WindowState::OPENED, WindowStepsDone::default());
    for step in &guide.steps {
        match step.goal {
            Goal::Window(goal) => show(goal, &mut window),
            Goal::Bench(_) => break,
        }
        let place = guide.place(bench.log(), &looked);
        assert!(guide.look(place, window, &mut looked), "{}", step.say.en);
    }
    looked
}

/// Steps done by somebody who looked at nothing but the machine.
fn steps_done(guide: &Guide, bench: &Bench) -> usize {
    let place = guide.place(bench.log(), &WindowStepsDone::default());
    place.steps_done
}

fn proof(stage: &Stage, job: &ScenarioSource, guide: &Guide) -> GuideProof {
    let library = stage.content_library().library(&job.scenario);
    let proof = prove_guide_in_slices(guide, &job.scenario, &library);
    without_breaks(proof).expect("it fits")
}

/// Names of what is found, with their fields.
fn found(proof: &GuideProof) -> Vec<(&'static str, &str)> {
    let findings = proof.findings.iter();
    findings
        .map(|placed| (placed.finding.name(), placed.field.as_str()))
        .collect()
}

#[test]
fn whoever_does_what_a_guide_shows_reaches_every_goal_and_does_the_job_well() {
    let stage = Stage::new();
    let jobs = guided(&stage);
    assert!(!jobs.is_empty());
    for (job, guide) in jobs {
        let proof = proof(&stage, &job, &guide);
        assert_eq!(found(&proof), [], "{}", job.file);
        let about_window = |step: &&GuideStep| matches!(step.goal, Goal::Window(_));
        assert_eq!(
            proof.about_window,
            guide.steps.iter().filter(about_window).count()
        );
        assert_eq!(proof.proved + proof.about_window, guide.steps.len());
        let share = proof.share.expect("it ends with the report");
        assert!(share >= 0.9, "{}: {share}", job.file);
    }
}

#[test]
fn a_step_that_does_not_reach_its_goal_is_found_and_nothing_after_it_is_tried() {
    let stage = Stage::new();
    let (job, guide) = guided(&stage).swap_remove(0);
    let first = first_of_job(&guide);
    let field = |n: usize, of: &str| format!("steps[{n}].{of}");
    // Five seconds are no rest. Whoever waits there sees no later step either.
    let mut short = guide.clone();
    short.steps[first + 1].shown = vec![ScriptStep::Wait { s: 5 }];
    let short = proof(&stage, &job, &short);
    let missed = field(first + 1, "goal");
    assert_eq!(found(&short), [("guide-goal-missed", missed.as_str())]);
    assert_eq!(
        (short.proved, short.share),
        (first - short.about_window + 1, None)
    );
    // Nothing is shown at all.
    let mut bare = guide.clone();
    bare.steps[first].shown.clear();
    let missed = field(first, "goal");
    assert_eq!(
        found(&proof(&stage, &job, &bare)),
        [("guide-goal-missed", missed.as_str())]
    );
    // A plug that is out cannot be pulled.
    let mut twice = guide.clone();
    let unplug = twice.steps[first].shown.clone();
    twice.steps[first].shown.extend(unplug);
    let refused = field(first, "shown");
    assert_eq!(
        found(&proof(&stage, &job, &twice)),
        [("guide-step-refused", refused.as_str())]
    );
}

#[test]
fn what_a_guide_shows_may_harm_nobody_and_call_nobody_astray() {
    let stage = Stage::new();
    let (job, guide) = guided(&stage).swap_remove(0);
    let first = first_of_job(&guide);
    // The panels come off with the plug in, after the step that ends with the plug.
    let mut live = guide.clone();
    let open = ScriptStep::Do(Action::OpenCabinet);
    live.steps[first - 1].shown.push(open);
    let live = proof(&stage, &job, &live);
    let harm = format!("steps[{}].shown", first - 1);
    let astray = format!("steps[{first}].astray[0]");
    let expected = [
        ("guide-does-harm", harm.as_str()),
        ("guide-strays-itself", astray.as_str()),
    ];
    assert_eq!(found(&live)[..2], expected);
    // What is there when the job opens is no step.
    let mut seen = guide.clone();
    seen.steps[0].goal = Goal::Window(WindowGoal::Looked(WindowView::Machine));
    assert_eq!(
        found(&proof(&stage, &job, &seen)),
        [("guide-goal-already", "steps[0].goal")]
    );
}

#[test]
fn a_guide_to_a_report_that_does_not_pass_is_found_and_one_that_ends_before_is_none() {
    let stage = Stage::new();
    let (job, guide) = guided(&stage).swap_remove(0);
    let last = guide.steps.len() - 1;
    assert_eq!(guide.steps[last].goal, Goal::Bench(BenchGoal::Reported));
    // Straight to the report, with nothing read, measured or repaired.
    let mut hasty = guide.clone();
    hasty.steps = vec![guide.steps[last].clone()];
    for line in &mut hasty.steps[0].shown {
        if let ScriptStep::Do(Action::Report(report)) = line {
            report.looks.clear();
        }
    }
    let hasty = proof(&stage, &job, &hasty);
    assert_eq!(found(&hasty), [("guide-fails", "steps")]);
    assert!(hasty.share.is_some_and(|share| share < 0.5));
    let mut early = guide.clone();
    early.steps.truncate(last);
    let early = proof(&stage, &job, &early);
    assert_eq!((found(&early), early.share), (vec![], None));
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
    let first = first_of_job(&guide);
    run(&mut bench, first);
    assert_eq!(guide.steps[first + 1].goal, Goal::Bench(BenchGoal::Rested));
    bench.wait(Span::from_s(5));
    run(&mut bench, first + 2);
    let done = |bench: &Bench| steps_done(&guide, bench) - first;
    assert_eq!(done(&bench), 1, "five seconds are no rest");
    run(&mut bench, first);
    run(&mut bench, first + 1);
    assert_eq!(done(&bench), 2);
    run(&mut bench, first + 2);
    assert_eq!(done(&bench), 3);
    run(&mut bench, first);
    assert_eq!(done(&bench), 3, "a plug pulled again undoes nothing");
}

/// The first guided job teaches the window's controls one at a time, each before it is needed; whoever has gone on with
/// the job needs them no more.
#[test]
fn the_first_guide_begins_with_the_benchs_own_controls() {
    let stage = Stage::new();
    let (job, guide) = guided(&stage).swap_remove(0);
    let first = first_of_job(&guide);
    let taught: Vec<&Goal> = guide.steps[..first].iter().map(|s| &s.goal).collect();
    let clock = [10, 0, 1].map(WindowGoal::ClockAt);
    let views = [WindowView::Console, WindowView::Inside, WindowView::Machine];
    let knob = [Direction::Right, Direction::Left];
    let wanted: Vec<Goal> = (views.into_iter().map(WindowGoal::Looked))
        .chain(clock)
        .chain([WindowTab::Score, WindowTab::Sheet].map(WindowGoal::Opened))
        .map(Goal::Window)
        .chain(
            knob.into_iter()
                .map(|way| Goal::Bench(BenchGoal::Turned(way))),
        )
        .collect();
    assert_eq!(taught, wanted.iter().collect::<Vec<_>>());
    let mut bench = begin(&stage, &job);
    let mut looked = WindowStepsDone::default();
    let place = guide.place(bench.log(), &looked);
    // The view of a later step is no news to this one.
    assert!(!guide.look(place, WindowState::OPENED, &mut looked));
    let console = WindowState {
        view: WindowView::Console,
        ..WindowState::OPENED
    };
    assert!(guide.look(place, console, &mut looked));
    assert!(!guide.look(place, console, &mut looked), "noted once");
    assert_eq!(guide.place(bench.log(), &looked).steps_done, 1);
    // Another view afterwards undoes nothing.
    assert!(!guide.look(
        guide.place(bench.log(), &looked),
        WindowState::OPENED,
        &mut looked
    ));
    assert_eq!(guide.place(bench.log(), &looked).steps_done, 1);
    bench.act(&Action::Unplug).expect("plugged");
    assert_eq!(guide.place(bench.log(), &looked).steps_done, first + 1);
    assert_eq!(steps_done(&guide, &bench), first + 1);
}

/// Each way astray of a built-in guide is told when it is gone, and no longer once the step is done.
#[test]
fn what_leads_away_is_told_until_the_step_is_done() {
    let stage = Stage::new();
    let (job, guide) = guided(&stage).swap_remove(0);
    let looked = all_looked_at(&guide, &begin(&stage, &job));
    let told = |bench: &Bench| {
        let place = guide.place(bench.log(), &looked);
        let step = guide.steps.get(place.steps_done)?;
        place.astray.map(|n| step.astray[n].after.clone())
    };
    let mut bench = begin(&stage, &job);
    let act = |bench: &mut Bench, action: Action| bench.act(&action).expect("it can be done");
    assert_eq!(told(&bench), None);
    let first = first_of_job(&guide);
    for way in [Direction::Right, Direction::Left] {
        act(&mut bench, Action::Detent(way));
    }
    assert_eq!(guide.place(bench.log(), &looked).steps_done, first);
    act(&mut bench, Action::OpenCabinet);
    assert_eq!(told(&bench), Some(BenchGoal::Did(Action::OpenCabinet)));
    act(&mut bench, Action::Unplug);
    assert_eq!(told(&bench), None, "the step is done");
    act(&mut bench, Action::Plug);
    assert_eq!(told(&bench), Some(BenchGoal::Did(Action::Plug)));
    act(&mut bench, Action::Unplug);
    bench.wait(Span::from_s(60));
    assert_eq!(steps_done(&guide, &bench), first + 2);
    assert_eq!(told(&bench), None);
    act(&mut bench, Action::Plug);
    bench.wait(Span::from_s(3));
    act(&mut bench, Action::Order("P-1801".to_owned()));
    assert_eq!(told(&bench), Some(BenchGoal::Ordered));
}

/// A gesture cut short can start a program. The guide says so until the program is called off, and what it shows leads
/// from there into service mode.
#[test]
fn a_program_started_by_a_failed_gesture_is_called_off_first() {
    let stage = Stage::new();
    let (job, guide) = guided(&stage).swap_remove(0);
    let mut bench = begin(&stage, &job);
    let looked = all_looked_at(&guide, &bench);
    let run = |bench: &mut Bench, lines: &[ScriptStep]| {
        for line in lines {
            line.run(bench).expect("a person can do this");
        }
    };
    let first = first_of_job(&guide);
    for step in &guide.steps[first - 2..first + 3] {
        run(&mut bench, &step.shown);
    }
    let gesture = first + 3;
    let place = |bench: &Bench| guide.place(bench.log(), &looked);
    assert_eq!(guide.steps[gesture].goal, Goal::Bench(BenchGoal::Entered));
    assert_eq!(place(&bench).steps_done, gesture);
    // To the short program, and a tap of Start where it should have been held.
    let point = ScriptStep::Point {
        to: 10,
        every_ms: 200,
    };
    run(&mut bench, &[point, ScriptStep::Tap(Button::Start)]);
    bench.wait(Span::from_s(3));
    let n = place(&bench).astray.expect("a program runs");
    let way = &guide.steps[gesture].astray[n];
    assert_eq!(way.after, BenchGoal::Started);
    run(&mut bench, &way.shown);
    assert_eq!(place(&bench).astray, None, "it was called off");
    assert_eq!(place(&bench).steps_done, gesture);
    run(&mut bench, &guide.steps[gesture].shown);
    assert_eq!(place(&bench).steps_done, gesture + 1, "service mode");
}
