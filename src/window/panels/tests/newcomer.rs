//! What a newcomer stumbled over at the first try, so that it does not come back.

use super::*;
use crate::practice::welcome;
use crate::scene::displayed::DisplayedMachine;
use bevy::window::{PrimaryWindow, Window};
use detent_training::bench::script::entry_steps;
use egui::Rect;
use egui_kittest::kittest::NodeT;

fn library() -> LibraryJobs {
    LibraryJobs::new(None, None).expect("the built-in jobs are sound")
}

/// The fault hold of the guided job: the entry page, the ticket and the page on the menu say the way out, and what is
/// still to be done once the codes are cleared.
#[test]
fn the_way_out_of_a_hold_is_told_wherever_it_is_met() {
    let jobs = library();
    let guided = jobs.offers().iter().position(|offer| offer.guided);
    let guided = guided.expect("one has a guide");
    for language in Language::ALL {
        let told = |page: Option<Page>| {
            let mut fixture = fixture_of(BenchRes::new(open(&jobs, guided, 101)), language);
            fixture.ui_state.page = page.unwrap_or_default();
            match page {
                Some(_) => harness_of([430.0, 2400.0], fixture, sheet::sheet_ui),
                None => harness_of([272.0, 2400.0], fixture, ticket::ticket_ui),
            }
        };
        let ticket = told(None);
        let texts = &ticket.state().texts;
        let board = &ticket.state().bench.job().board;
        let way = texts.out_of_hold(&board.resets).expect("there is a way");
        let way = [("way", Value::from(way))];
        ticket.get_by_label(&texts.with("ticket-hold", &way));
        told(Some(Page::Entry)).get_by_label(&texts.with("sheet-entry-hold", &way));
        let seconds = Value::from(f64::from(board.service.clear_hold_ms) / 1000.0);
        let cleared = texts.with("sheet-menu-clear", &[("seconds", seconds)]);
        told(Some(Page::Menu)).get_by_label(&cleared);
    }
}

/// Time stands under the list of keys, under a caution, and while another window has the keys.
#[test]
fn time_stands_while_nobody_can_see_the_bench() {
    let mut app = whole_window(&AppOptions {
        start: Some((0, 101)),
        ..AppOptions::default()
    });
    app.world_mut().resource_mut::<UiState>().speed = 1;
    let runs = |app: &mut App| {
        let now = |app: &App| app.world().resource::<BenchRes>().view().machine.time_s;
        // What was set takes a frame to be seen.
        app.update();
        let before = now(app);
        (0..4).for_each(|_| app.update());
        now(app) > before
    };
    assert!(runs(&mut app));
    for keys in [true, false] {
        app.world_mut().resource_mut::<UiState>().keys = keys;
        assert_eq!(runs(&mut app), !keys);
    }
    for focused in [false, true] {
        let mut windows = app
            .world_mut()
            .query_filtered::<&mut Window, bevy::prelude::With<PrimaryWindow>>();
        let mut window = windows.single_mut(app.world_mut()).expect("one window");
        window.focused = focused;
        assert_eq!(runs(&mut app), focused);
    }
    let mut bench = app.world_mut().resource_mut::<BenchRes>();
    assert!(bench.view().machine.plugged);
    bench.push(Action::OpenCabinet);
    (0..3).for_each(|_| app.update());
    assert!(app.world().resource::<BenchRes>().asked.is_some());
    assert!(!runs(&mut app));
    app.world_mut().resource_mut::<BenchRes>().step_back();
    assert!(runs(&mut app));
}

/// A page that was scrolled in one job begins at its top in the next.
#[test]
fn a_job_begins_at_the_top_of_each_page() {
    let mut start = fixture(Language::En);
    start.ui_state.tab = Tab::Parts;
    let mut harness = harness_of([392.0, 500.0], start, tabs);
    let label = harness.state().texts.get("parts-intro");
    let intro = |harness: &Harness<'_, Fixture>| harness.get_by_label(&label).rect().top();
    let before = intro(&harness);
    let last = harness
        .state()
        .bench
        .job()
        .parts
        .last()
        .cloned()
        .expect("parts");
    let name = harness.state().texts.get(&last.name_key);
    harness.get_by_label(&name).scroll_to_me();
    harness.run_steps(40);
    assert!(intro(&harness) < before - 50.0, "it was scrolled");
    harness.state_mut().ui_state.visit += 1;
    harness.run_steps(4);
    assert_eq!(intro(&harness), before);
}

/// The list of a box opens where the box is, and within the window.
#[test]
fn a_list_opens_at_its_box() {
    let size = [392.0, 600.0];
    let mut harness = harness_of(size, fixture(Language::En), meter::meter_ui);
    let list = harness.get_by_role(Role::ComboBox);
    let place = list.rect();
    list.click();
    harness.run_steps(6);
    let plug = harness.state().texts.get("pin-group-plug");
    let row = harness.get_by_label(&plug).rect();
    let window = Rect::from_min_size(egui::Pos2::ZERO, size.into());
    assert!(window.contains_rect(row), "{row}");
    assert!(place.x_range().intersects(row.x_range()), "{place} {row}");
    let gap = (row.top() - place.bottom()).max(place.top() - row.bottom());
    assert!(gap < 120.0, "{place} {row}");
}

/// The start screen shows a shut machine, however the last one was left.
#[test]
fn the_start_screen_shows_a_shut_machine() {
    let mut app = whole_window(&AppOptions {
        start: Some((0, 101)),
        ..AppOptions::default()
    });
    for action in [Action::Unplug, Action::OpenCabinet, Action::OpenLid] {
        let mut bench = app.world_mut().resource_mut::<BenchRes>();
        do_now(&mut bench, action);
    }
    (0..2).for_each(|_| app.update());
    let shown = |app: &App| *app.world().resource::<DisplayedMachine>();
    let left = shown(&app);
    assert!(left.cabinet_open && left.lid_open && left.probes && !left.plugged);
    app.world_mut().resource_mut::<UiState>().leave = true;
    (0..3).for_each(|_| app.update());
    assert_eq!(screen(&app), Screen::Start);
    let now = shown(&app);
    assert!(!now.cabinet_open && !now.lid_open && !now.probes && now.plugged);
}

/// The chosen job is scrolled to, wherever it stands in the list, and tells the minutes that its ticket tells.
#[test]
fn the_chosen_job_is_in_sight_with_the_minutes_of_its_ticket() {
    let jobs = library();
    let last = jobs.offers().len() - 1;
    for offer in [0, last / 2, last] {
        let mut harness = harness_of([1366.0, 768.0], fixture(Language::En), |ui, context| {
            start::start_ui(
                ui,
                context,
                &mut LearnerRes::default(),
                (&jobs, &mut ClassRes::default()),
            );
        });
        // As after a job, when the next one is chosen; the list glides there.
        let ui_state = &mut harness.state_mut().ui_state;
        (ui_state.offer, ui_state.offer_seen) = (offer, None);
        harness.run_steps(40);
        let chosen = &jobs.offers()[offer];
        let title = say(Language::En, &chosen.title);
        let row = harness
            .get_by_role_and_label(Role::RadioButton, title)
            .rect();
        let begin = harness.get_by_label("Begin the job").rect();
        assert!(
            row.top() > 0.0 && row.bottom() <= begin.top(),
            "{title}: {row}"
        );
        let work = BenchRes::new(open(&jobs, offer, chosen.seed));
        assert_eq!(work.job().par_minutes, chosen.minutes, "{title}");
    }
}

/// The window is never so small that the panels leave nothing of the machine.
#[test]
fn the_window_has_a_least_size() {
    let mut app = whole_window(&AppOptions::default());
    let mut windows = app
        .world_mut()
        .query_filtered::<&Window, bevy::prelude::With<PrimaryWindow>>();
    let least = windows
        .single(app.world())
        .expect("one window")
        .resize_constraints;
    assert!(
        least.min_width >= 360.0 && least.min_height >= 360.0,
        "{least:?}"
    );
}

/// What the lamps show is noted beside the page that explains them, and a look is ticked as proof like a reading.
#[test]
fn codes_are_noted_beside_the_lamps_and_a_look_is_a_proof() {
    let lamps = sheet(&board("arc-dial"), Page::Lamps, Language::En);
    let note = lamps.state().texts.get("note-code-do");
    lamps.get_by_label(&note);

    let jobs = library();
    let mut fixture = fixture_of(BenchRes::new(open(&jobs, 0, 101)), Language::En);
    for action in [
        Action::Unplug,
        Action::OpenLid,
        Action::Inspect(Part::Laundry),
    ] {
        do_now(&mut fixture.bench, action);
    }
    let name = fixture.texts.component(Part::Laundry);
    let mut report = harness(fixture, report::report_ui);
    let look = report.get_by_role(Role::CheckBox);
    assert!(
        look.accesskit_node()
            .label()
            .is_some_and(|label| label.contains(&name))
    );
    look.click();
    report.run_steps(2);
    assert!(report.state().ui_state.draft.looks.contains(&0));
}

/// From a finished job it goes on: once more, or to the next.
#[test]
fn a_finished_job_leads_to_the_next_or_to_itself_again() {
    let file = mistakes(Language::En).bench.job().file.clone();
    for (key, onward) in [
        ("coach-again", Onward::Exercise(Exercise::Job(file))),
        ("coach-next-job", Onward::NextJob),
    ] {
        let mut score = harness_of([430.0, 4000.0], mistakes(Language::En), score::score_ui);
        let label = score.state().texts.get(key);
        score.get_by_label(&label).click();
        score.run_steps(2);
        assert_eq!(score.state().ui_state.onward, Some(onward), "{key}");
    }
}

/// Whoever worked here last is at work again after a new start, in their own language.
#[test]
fn a_new_start_keeps_the_learner() {
    let folder = tempfile::tempdir().expect("a folder");
    let store = || Box::new(ProfileFolder::new(folder.path().to_owned()));
    let mut before = LearnerRes::kept_in(store(), None);
    before.ui_state.name = "Ana".to_owned();
    before.create(Language::Es);
    for (asked, language) in [(false, Language::Es), (true, Language::En)] {
        let mut app = App::new();
        app.insert_resource(UiState::default());
        welcome(&mut app, LearnerRes::kept_in(store(), None), asked);
        assert_eq!(app.world().resource::<LearnerRes>().name(), Some("Ana"));
        assert_eq!(app.world().resource::<UiState>().language, language);
    }
}

/// Whoever has the machine drawn flat finds it so in the next job, as the language and the chosen job.
#[test]
fn the_next_job_is_drawn_as_the_last_one() {
    for (flat, software) in [(false, false), (true, false), (true, true)] {
        let mut start = fixture(Language::Es);
        (start.ui_state.flat, start.ui_state.offer) = (flat, 3);
        start.ui_state.software = software;
        let jobs = library();
        let mut opened = Some(open(&jobs, 0, 71));
        let harness = harness(start, |_, context| {
            if let Some(opened) = opened.take() {
                open_job(context, &Learner::default(), opened, &ClassRes::default());
            }
        });
        let ui_state = &harness.state().ui_state;
        assert_eq!((ui_state.flat, ui_state.offer), (flat, 3));
        assert_eq!(ui_state.software, software);
        assert_eq!((ui_state.language, ui_state.visit), (Language::Es, 1));
    }
}

/// Where the processor draws there is no scene to go to.
#[test]
fn the_scene_can_be_chosen_only_where_there_is_one() {
    for software in [false, true] {
        let mut fixture = fixture(Language::En);
        (fixture.ui_state.flat, fixture.ui_state.software) = (true, software);
        let choice = fixture.texts.get("view-flat");
        let mut top = harness_of([1366.0, 60.0], fixture, |ui, context| {
            top::top_ui(ui, context, BenchRoom::Wide);
        });
        let button = top.get_by_label(&choice);
        assert_eq!(button.accesskit_node().is_disabled(), software);
        button.click();
        top.run_steps(2);
        assert_eq!(top.state().ui_state.flat, software);
    }
}

/// A gesture during a fault hold leaves its trace, which says why nothing could come of it and what ends the hold.
#[test]
fn a_try_in_a_hold_says_so_in_its_trace() {
    let jobs = library();
    let guided = jobs.offers().iter().position(|offer| offer.guided);
    for language in Language::ALL {
        let work = open(&jobs, guided.expect("one has a guide"), 101);
        let mut fixture = fixture_of(BenchRes::new(work), language);
        let gesture = fixture.bench.job().board.gesture.clone();
        for step in entry_steps(&gesture) {
            // Nothing of it has to come off.
            let _ = fixture.bench.run(&step);
        }
        fixture.bench.refresh();
        let told = (fixture.texts).try_in_hold(&fixture.bench.job().board.resets);
        let score = harness_of([430.0, 2400.0], fixture, score::score_ui);
        assert!(score.query_all_by_label(&told).next().is_some(), "{told}");
    }
}

/// What was fitted is not taken back at the counter.
#[test]
fn a_fitted_part_offers_no_return() {
    let mut fixture = fixture_of(BenchRes::new(open(&library(), 0, 101)), Language::En);
    let lock = fixture
        .bench
        .job()
        .parts
        .iter()
        .find(|part| part.component == Part::LidLock);
    let number = lock.expect("there is one").number.clone();
    for action in [
        Action::Unplug,
        Action::OpenCabinet,
        Action::Order(number.clone()),
    ] {
        do_now(&mut fixture.bench, action);
    }
    let mut parts = harness_of([430.0, 6000.0], fixture, parts::parts_ui);
    let back = parts.state().texts.get("do-return");
    let fitted = parts.state().texts.get("parts-fitted");
    let offers =
        |parts: &Harness<'_, Fixture>, label: &str| parts.query_all_by_label(label).count();
    assert_eq!((offers(&parts, &back), offers(&parts, &fitted)), (1, 0));
    do_now(&mut parts.state_mut().bench, Action::Fit(number));
    parts.run_steps(3);
    assert_eq!((offers(&parts, &back), offers(&parts, &fitted)), (0, 1));
}

/// Ctrl with plus, minus and 0 is for the size of what is drawn; the theme leaves it so.
#[test]
fn the_panels_are_zoomed_with_the_keys() {
    use egui::{Key, Modifiers};
    let mut harness = harness(fixture(Language::En), ticket::ticket_ui);
    let mut zoom = |key| {
        harness.key_press_modifiers(Modifiers::COMMAND, key);
        harness.run_steps(3);
        harness.ctx.zoom_factor()
    };
    assert!(zoom(Key::Plus) > 1.05);
    assert!((zoom(Key::Minus) - 1.0).abs() < 1e-3);
    assert!(zoom(Key::Minus) < 0.95);
    assert!((zoom(Key::Num0) - 1.0).abs() < 1e-3);
}
