//! Guides: what they show can be done as it is shown, reaches every goal in order, hurts nobody and earns the job.

use crate::stage::Stage;
use detent_content::{Language, ScenarioSource, Texts};
use detent_simulation::interface::{Button, Direction};
use detent_simulation::units::Span;
use detent_training::bench::script::ScriptStep;
use detent_training::bench::{Action, Bench};
use detent_training::lesson::{
    BenchGoal, Goal, Guide, WindowGoal, WindowState, WindowStepsDone, WindowTab, WindowView, judge,
    set_up,
};

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

/// The window as a job opens.
const OPENED: WindowState = WindowState {
    view: WindowView::Machine,
    tab: WindowTab::Sheet,
    clock_speed: 1,
};

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
    let (mut window, mut looked) = (OPENED, WindowStepsDone::default());
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

#[test]
fn whoever_does_what_a_guide_shows_reaches_every_goal_and_does_the_job_well() {
    let stage = Stage::new();
    let jobs = guided(&stage);
    assert!(!jobs.is_empty());
    for (job, guide) in jobs {
        let mut bench = begin(&stage, &job);
        let (mut window, mut looked) = (OPENED, WindowStepsDone::default());
        for (n, step) in guide.steps.iter().enumerate() {
            let place = guide.place(bench.log(), &looked);
            assert_eq!(place.steps_done, n, "before: {}", step.say.en);
            assert_eq!(place.astray, None, "{}", step.say.en);
            assert!(!guide.look(place, window, &mut looked), "{}", step.say.en);
            match step.goal {
                Goal::Window(goal) => show(goal, &mut window),
                Goal::Bench(_) => assert!(!step.shown.is_empty(), "{}", step.say.en),
            }
            guide.look(place, window, &mut looked);
            for line in &step.shown {
                line.run(&mut bench)
                    .unwrap_or_else(|error| panic!("{}: {line:?}: {error}", step.say.en));
            }
            let place = guide.place(bench.log(), &looked);
            assert_eq!(place.steps_done, n + 1, "after: {}", step.say.en);
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
    assert!(!guide.look(place, OPENED, &mut looked));
    let console = WindowState {
        view: WindowView::Console,
        ..OPENED
    };
    assert!(guide.look(place, console, &mut looked));
    assert!(!guide.look(place, console, &mut looked), "noted once");
    assert_eq!(guide.place(bench.log(), &looked).steps_done, 1);
    // Another view afterwards undoes nothing.
    assert!(!guide.look(guide.place(bench.log(), &looked), OPENED, &mut looked));
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
