//! Practice by what it says and does, without a window.

use super::*;
use crate::attempts::Folder;
use crate::demo::DemoJobs;
use crate::panels::tests::{Fixture as PanelsFixture, fixture};
use crate::state::BenchRes;
use crate::workbench::LibraryJobs;
use detent_content::{Language, ProfileFolder};
use detent_training::bench::{Action, Advice, Report, Verdict};
use detent_training::practice::review::DAY_S;
use detent_training::practice::simulated::invented;
use detent_training::practice::{Answer, Detail, Moment};
use detent_training::without_breaks;
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;
use std::path::Path;
use std::sync::Arc;

/// The screen under test with all that it needs.
struct Fixture {
    panels: PanelsFixture,
    learner: LearnerRes,
    drill: DrillRes,
    to: Option<Screen>,
}

fn harness_of(
    size: [f32; 2],
    language: Language,
    learner: LearnerRes,
    jobs: impl JobSource + 'static,
) -> Harness<'static, Fixture> {
    let fixture = Fixture {
        panels: fixture(language),
        learner,
        drill: DrillRes::default(),
        to: None,
    };
    let mut harness = Harness::builder().with_size(size).build_ui_state(
        move |ui, fixture: &mut Fixture| {
            kit::apply_theme(ui.ctx());
            let (learner, drill) = (&mut fixture.learner, &mut fixture.drill);
            let context = &mut fixture.panels.context();
            if let Some(to) = practice_ui(ui, context, learner, drill, &jobs) {
                fixture.to = Some(to);
            }
        },
        fixture,
    );
    harness.run_steps(3);
    harness
}

fn harness(language: Language, learner: LearnerRes) -> Harness<'static, Fixture> {
    harness_of([1280.0, 720.0], language, learner, DemoJobs::default())
}

fn kept_in(folder: &Path) -> LearnerRes {
    let store = ProfileFolder::new(folder.to_owned());
    LearnerRes::kept_in(Box::new(store), Some(folder.join("exports")))
}

fn click(harness: &mut Harness<'_, Fixture>, label: &str) {
    harness.get_by_label(label).click();
    harness.run_steps(3);
}

fn answer(skill: Skill, right: bool) -> Answer {
    Answer {
        at: now(),
        skill,
        right,
        took_s: 5.0,
        detail: Detail::None,
    }
}

#[test]
fn a_learner_is_added_kept_and_really_deleted() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let mut harness = harness(Language::En, kept_in(folder.path()));
    harness.get_by_label_contains("A guest’s answers are not saved");
    harness.state_mut().learner.ui_state.name = "Inés".to_owned();
    harness.run_steps(2);
    click(&mut harness, "Add");
    let learner = &mut harness.state_mut().learner;
    assert_eq!(learner.name(), Some("Inés"));
    learner.note(answer(Skill::Metering, true));
    assert_eq!(learner.storage_error, None);

    // Another run of the program finds her, and what she answered.
    let mut again = kept_in(folder.path());
    assert_eq!(again.known()[0].name(), "Inés");
    assert_eq!(again.go_on(), Some(Language::En), "who worked here last");
    assert_eq!(again.name(), Some("Inés"));
    assert_eq!(again.answers().len(), 1);
    again.choose(None);
    assert_eq!(kept_in(folder.path()).go_on(), None, "the guest did");
    let stem = again.known()[0].stem.clone();
    again.choose(Some(&stem));

    click(&mut harness, "Delete this learner");
    click(&mut harness, "Keep");
    assert_eq!(harness.state().learner.name(), Some("Inés"));
    click(&mut harness, "Delete this learner");
    click(&mut harness, "Delete Inés and all answers permanently?");
    assert_eq!(harness.state().learner.name(), None);
    assert!(files(folder.path()).is_empty());
}

fn files(folder: &Path) -> Vec<String> {
    let entries = std::fs::read_dir(folder).expect("the folder").flatten();
    let names = entries.map(|entry| entry.file_name().to_string_lossy().into_owned());
    names.collect()
}

#[test]
fn a_file_damaged_meanwhile_is_told_of_and_left_alone() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let mut learner = kept_in(folder.path());
    learner.ui_state.name = "Bruno Gil".to_owned();
    learner.create(Language::En);
    let path = folder.path().join("bruno-gil.learner");
    std::fs::write(&path, "scrawl").expect("the folder can be written");
    learner.note(answer(Skill::Metering, true));
    let harness = harness(Language::En, learner);
    harness.get_by_label_contains("was changed or deleted in the meantime");
    assert_eq!(std::fs::read_to_string(&path).expect("there"), "scrawl");
}

#[test]
fn the_suggestion_gives_its_reason_and_begins() {
    let mut harness = harness(Language::En, LearnerRes::default());
    harness.get_by_label_contains("Every job starts with the entry gesture");
    click(&mut harness, "Begin");
    assert_eq!(harness.state().to, Some(Screen::Drill));
    harness.state_mut().to = None;
    click(&mut harness, "Begin: Using the meter");
    assert_eq!(harness.state().to, Some(Screen::Drill));
}

#[test]
fn a_job_is_begun_when_the_drills_are_mastered() {
    let on_day = |days_ago: i64, skill: Skill| Answer {
        at: Moment(now().0 - days_ago * DAY_S),
        ..answer(skill, true)
    };
    let days = [1, 0].into_iter();
    let answers = days.flat_map(|days_ago| {
        let skills = Skill::ALL.iter();
        skills.flat_map(move |skill| vec![on_day(days_ago, *skill); 15])
    });
    let learner = LearnerRes::guest(answers.collect());
    let mut harness = harness(Language::En, learner);
    harness.get_by_label("The tub stays full");
    click(&mut harness, "Begin");
    assert_eq!(harness.state().to, None, "the bench is being set up");
    assert!(harness.state().panels.ui_state.opening.is_some());
}

#[test]
fn every_text_is_there_and_everything_within_the_screen() {
    for language in Language::ALL {
        for size in [[1280.0, 720.0], [1366.0, 768.0], [820.0, 1180.0]] {
            for progress in [false, true] {
                let mut learner = LearnerRes::guest(invented(7, 14, now()));
                learner.ui_state.progress = progress;
                let harness = harness_of(size, language, learner, DemoJobs::default());
                let wrong: Vec<String> = harness
                    .query_all_by(|node| {
                        let says = |text: Option<String>| text.is_some_and(|t| t.contains('‹'));
                        let place = node.raw_bounds();
                        let beyond = |place: egui::accesskit::Rect| {
                            place.x1 > f64::from(size[0]) + 0.5 || place.x0 < -0.5
                        };
                        says(node.label()) || says(node.value()) || place.is_some_and(beyond)
                    })
                    .map(|node| format!("{node:?}"))
                    .collect();
                assert!(wrong.is_empty(), "{language:?} {size:?}: {wrong:#?}");
            }
        }
    }
}

#[test]
fn progress_tells_what_is_known_and_confused() {
    let mut answers = vec![answer(Skill::LampReading, true); 12];
    answers[3].detail = Detail::Lamps {
        shown: 42,
        read: 48,
    };
    let mut learner = LearnerRes::guest(answers);
    learner.ui_state.progress = true;
    let harness = harness(Language::En, learner);
    harness.get_by_label("Reading lamps: 100%");
    harness.get_by_label("Using the meter: not practiced yet");
    harness.get_by_label("Most often confused: 2 read as 8 (× 1).");
    harness.get_by_label("No try at an entry gesture has been timed yet.");
}

/// Who is kept here stands side by side; a profile that cannot be used hides no other.
#[test]
fn learners_stand_side_by_side() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let mut learner = kept_in(folder.path());
    for name in ["Inés", "Zoe"] {
        learner.ui_state.name = name.to_owned();
        learner.create(Language::En);
    }
    let at = Moment(1_700_000_000);
    for days in [0, 1] {
        for n in 0..4 {
            learner.note(Answer {
                at: Moment(at.0 + days * DAY_S + n),
                ..answer(Skill::Metering, true)
            });
        }
    }
    std::fs::write(folder.path().join("torn.learner"), "(").expect("it can be written");
    let known = learner.known();
    let mut harness = Harness::builder().with_size([420.0, 300.0]).build_ui_state(
        move |ui, panels: &mut PanelsFixture| {
            kit::apply_theme(ui.ctx());
            let later = Moment(at.0 + 365 * DAY_S);
            learners::learners_ui(ui, &panels.context(), &known, later, 0);
        },
        fixture(Language::En),
    );
    harness.run_steps(2);
    harness.get_by_label("Inés: nothing practiced yet");
    harness.get_by_label("torn: this profile cannot be read");
    let mastered = "Zoe: 1 of 8 skills mastered, 1 due for review, last practiced 2023-11-15";
    harness.get_by_label(mastered);
}

#[test]
fn answers_are_saved_where_it_is_said() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let mut learner = kept_in(folder.path());
    learner.ui_state.progress = true;
    learner.note(answer(Skill::Metering, true));
    let mut harness = harness(Language::En, learner);
    click(&mut harness, "Save answers (CSV)");
    let told = harness.state().learner.ui_state.exported.clone();
    let path = told.expect("told").expect("saved");
    harness.get_by_label(&format!("Saved: {path}"));
    let table = std::fs::read_to_string(path).expect("it is there");
    assert!(table.starts_with("at,skill,right") && table.contains("metering,1,5"));
    // A picture is asked for; only a window can take it.
    click(&mut harness, "Save picture (PNG)");
    let wanted = harness.state().learner.ui_state.picture.expect("asked for");
    assert!(wanted.width() > 1000.0 && wanted.height() > 500.0);
}

#[test]
fn a_job_counts_once_and_a_replayed_one_not_at_all() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let attempts = Arc::new(Folder::new(folder.path().to_owned()));
    let jobs = LibraryJobs::new(None, Some(attempts)).expect("the built-in jobs are sound");
    let mut bench = BenchRes::new(without_breaks(jobs.open(0, 5)).expect("the first job"));
    bench.refresh();
    assert_eq!(bench.take_result(), None);
    bench.push(Action::Report(Report {
        causes: Vec::new(),
        part: None,
        proof: Vec::new(),
        looks: Vec::new(),
        advice: Advice::None,
        verdict: Verdict::NothingWrong,
    }));
    bench.tick();
    bench.refresh();
    let (file, score, _) = bench.take_result().expect("submitted");
    assert_eq!(file, jobs.offers()[0].course.file);
    assert_eq!(Some(&score), bench.score());
    assert_eq!(bench.take_result(), None);
    let name = jobs.attempts().expect("kept").names().remove(0);
    let again = without_breaks(jobs.resume(&name)).expect("sound");
    let mut again = BenchRes::new(again);
    again.refresh();
    assert!(again.score().is_some());
    assert_eq!(again.take_result(), None);
}
