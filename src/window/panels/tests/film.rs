//! What plays a film, and what is on its way, by what it says and does.

use super::*;
use crate::film::tests::{CLASSIC_MISTAKES, Kept, WHOLE_JOB};
use crate::port::RecordedAttempt;
use crate::rest::tests::{paused, send_key};
use crate::state::JobSourceRes;
use bevy::input::ButtonState;
use bevy::input::keyboard::{Key, KeyCode};
use detent_content::DeedWords;
use egui_kittest::kittest::NodeT;

/// A film of somebody who works by this script, with so many of its lines done, at its beginning.
pub(super) fn film_of(script: &str, lines: usize) -> BenchRes {
    let kept = Kept::new();
    let name = kept.work(script, lines);
    let mut bench = BenchRes::new(kept.watch(kept.record(&name)));
    go_behind(&mut bench, 0);
    bench
}

fn go_behind(bench: &mut BenchRes, steps: usize) {
    let film = bench.film_mut().expect("a film");
    film.go_behind(steps);
    film.wait();
}

fn settle(harness: &mut Harness<'_, Fixture>) {
    harness.run_steps(3);
    harness.state_mut().bench.film_mut().expect("a film").wait();
    harness.run_steps(3);
}

fn strip(fixture: Fixture) -> Harness<'static, Fixture> {
    harness_of([1000.0, 300.0], fixture, |ui, context| {
        crate::panels::film::strip_ui(ui, context, BenchRoom::Wide);
    })
}

fn done(harness: &Harness<'_, Fixture>) -> usize {
    harness.state().bench.film().expect("a film").steps_done()
}

#[test]
fn a_film_is_played_by_buttons_and_by_keys() {
    for language in Language::ALL {
        let mut harness = strip(fixture_of(film_of(WHOLE_JOB, usize::MAX), language));
        let texts = Texts::load(language);
        let say = |key: &str| texts.get(key);
        settle(&mut harness);
        harness.get_by_label(&say("film-before-first"));
        harness.get_by_label(&say("film-next")).click();
        settle(&mut harness);
        assert_eq!(done(&harness), 1);
        harness.get_by_label_contains(&say("film-did-unplug"));
        harness.key_press(egui::Key::ArrowRight);
        settle(&mut harness);
        assert_eq!(done(&harness), 2);
        harness.key_press(egui::Key::ArrowLeft);
        settle(&mut harness);
        assert_eq!(done(&harness), 1);
        harness.get_by_label(&say("film-previous")).click();
        settle(&mut harness);
        assert_eq!(done(&harness), 0);
        // The space bar plays and pauses where nothing has the keys.
        let playing = |harness: &Harness<'_, Fixture>| {
            harness.state().bench.film().expect("a film").is_playing()
        };
        for now in [true, false] {
            harness.key_press(egui::Key::Space);
            settle(&mut harness);
            assert_eq!(playing(&harness), now);
        }
        harness.get_by_label(&say("film-play")).click();
        settle(&mut harness);
        assert!(playing(&harness));
        harness.get_by_label(&say("film-pause")).click();
        settle(&mut harness);
        assert!(!playing(&harness));
        harness.get_by_label("×60").click();
        settle(&mut harness);
        let film = harness.state().bench.film().expect("a film");
        assert_eq!(film.speed(), 60);
        let count = film.steps().len();
        // The timeline is a slider, whose value the keys of reading software set.
        let label = say("film-timeline");
        let timeline = harness.get_by_label(&label);
        assert_eq!(timeline.accesskit_node().role(), Role::Slider);
        // It tells its value and its limits (WAI-ARIA 1.2, slider; from memory).
        let node = timeline.accesskit_node();
        let told = [
            node.min_numeric_value(),
            node.numeric_value(),
            node.max_numeric_value(),
        ];
        assert_eq!(told, [Some(0.0), Some(0.0), Some(count as f64)]);
        timeline.click();
        settle(&mut harness);
        let clicked = done(&harness);
        assert!(0 < clicked && clicked < count, "{clicked} of {count}");
        harness.get_by_label(&say("film-leave")).click();
        settle(&mut harness);
        assert!(harness.state().ui_state.leave);
    }
}

#[test]
fn every_deed_and_what_came_of_it_is_told_in_both_languages() {
    for language in Language::ALL {
        let texts = Texts::load(language);
        let mut readings = 0;
        for script in [WHOLE_JOB, CLASSIC_MISTAKES] {
            let mut harness = strip(fixture_of(film_of(script, usize::MAX), language));
            let count = harness.state().bench.film().expect("a film").steps().len();
            for steps in 1..=count {
                go_behind(&mut harness.state_mut().bench, steps);
                let bench = &harness.state().bench;
                let (film, job) = (bench.film().expect("a film"), bench.job());
                let words = DeedWords {
                    texts: &texts,
                    board: &job.board,
                    parts: &job.parts,
                };
                let deed = film.steps()[steps - 1].words(&words);
                let came = film
                    .came_of_it()
                    .filter_map(|entry| words.came_of_it(entry));
                let told: Vec<String> = std::iter::once(deed).chain(came).collect();
                readings += usize::from(told.iter().any(|told| told.contains('Ω')));
                for told in told {
                    assert!(!told.contains(['‹', '{']) && !told.is_empty(), "{told}");
                }
            }
            settle(&mut harness);
        }
        assert!(readings > 3, "{readings}");
    }
}

fn page(fixture: Fixture) -> Harness<'static, Fixture> {
    harness(fixture, crate::panels::film::page_ui)
}

#[test]
fn a_lost_point_leads_to_its_deed() {
    let mut harness = page(fixture_of(
        film_of(CLASSIC_MISTAKES, usize::MAX),
        Language::En,
    ));
    settle(&mut harness);
    let film = harness.state().bench.film().expect("a film");
    let losses = film.losses();
    let loss = losses.iter().find(|loss| loss.at > film.arrival());
    let loss = loss.expect("a mistake on the way");
    let (at, words) = (loss.at, Texts::load(Language::En).loss(&loss.loss));
    let before = film.now();
    harness.get_by_label_contains(&words).click();
    settle(&mut harness);
    let film = harness.state().bench.film().expect("a film");
    assert!(before < film.now() && film.now() <= at, "{at}");
}

/// What would give a job away is not told before its end, nor while a class is open: lost points, and which code the
/// lamps showed.
#[test]
fn what_gives_a_job_away_is_told_only_where_the_answer_was_shown() {
    let texts = Texts::load(Language::En);
    let code = texts.with("film-milestone-code-shown", &[("code", Value::from(""))]);
    let (code, some) = (code.trim_end(), texts.get("film-milestone-some-code-shown"));
    for (lines, sealed, told) in [
        (usize::MAX, false, true),
        (usize::MAX, true, false),
        (40, false, false),
    ] {
        let mut fixture = fixture_of(film_of(WHOLE_JOB, lines), Language::En);
        fixture.ui_state.sealed = sealed;
        let mut harness = page(fixture);
        settle(&mut harness);
        let labels = |part: &str| harness.query_all_by_label_contains(part).count();
        let total = texts.get("film-losses-later");
        assert_eq!(labels(code) > 0, told, "{lines} lines, sealed: {sealed}");
        assert_eq!(labels(&some) > 0, !told, "{lines} lines, sealed: {sealed}");
        assert_eq!(labels(&total) > 0, !told && !sealed);
        let sealed_told = texts.get("film-losses-sealed");
        assert_eq!(labels(&sealed_told) > 0, sealed);
    }
}

/// In the window itself: opened from the kept attempts, played, and left with nothing changed.
#[test]
fn a_film_runs_at_the_bench_and_takes_no_hand() {
    let kept = Kept::new();
    let name = kept.work(WHOLE_JOB, usize::MAX);
    let mut app = paused(&AppOptions {
        start: Some((0, 71)),
        ..AppOptions::default()
    });
    app.update();
    let record: RecordedAttempt = kept.record(&name);
    let work = kept.jobs.watch(record);
    app.world_mut().resource_mut::<UiState>().open(work);
    app.insert_resource(JobSourceRes(Box::new(kept.jobs)));
    for _ in 0..2_000 {
        app.update();
        if app.world().resource::<BenchRes>().film().is_some() {
            break;
        }
        std::thread::sleep(Duration::from_millis(5));
    }
    (0..4).for_each(|_| app.update());
    let film = |app: &App| {
        let bench = app.world().resource::<BenchRes>();
        let film = bench.film().expect("it is opened");
        (film.now(), film.steps_done(), film.is_playing())
    };
    assert_eq!(
        *app.world().resource::<State<Screen>>().get(),
        Screen::Bench
    );
    // Nothing glides for whoever wants it so, and no film begins by itself; here it does.
    assert!(film(&app).2);
    let began = film(&app).0;
    // What takes long is done on another thread.
    let until = |app: &mut App, comes: &dyn Fn(&App) -> bool| {
        for _ in 0..2_000 {
            app.update();
            if comes(app) {
                return;
            }
            std::thread::sleep(Duration::from_millis(5));
        }
        panic!("it never comes");
    };
    until(&mut app, &|app| film(app).0 > began && film(app).1 > 0);
    let tap = |app: &mut App, code: KeyCode, key: Key| {
        send_key(app, code, key.clone(), ButtonState::Pressed);
        app.update();
        send_key(app, code, key, ButtonState::Released);
        (0..4).for_each(|_| app.update());
    };
    tap(&mut app, KeyCode::Space, Key::Space);
    assert!(!film(&app).2);
    // What was on its way arrives.
    until(&mut app, &|app| {
        let bench = app.world().resource::<BenchRes>();
        bench.film().is_some_and(|film| !film.is_busy())
    });
    let (now, steps, _) = film(&app);
    let state_of = |app: &App| -> (bool, bool) {
        let view = app.world().resource::<BenchRes>().view();
        (view.machine.plugged, view.machine.lid_open)
    };
    let before = state_of(&app);
    for (code, letter) in [
        (KeyCode::KeyL, "l"),
        (KeyCode::KeyP, "p"),
        (KeyCode::KeyS, "s"),
    ] {
        tap(&mut app, code, Key::Character(letter.into()));
    }
    assert_eq!((film(&app).0, state_of(&app)), (now, before));
    let message = app.world().resource::<UiState>().message.clone();
    let told = Texts::load(Language::En).get("film-no-hands");
    assert_eq!(message.map(|(told, _)| told), Some(told));
    tap(&mut app, KeyCode::ArrowRight, Key::ArrowRight);
    until(&mut app, &|app| film(app).1 == steps + 1);
}
