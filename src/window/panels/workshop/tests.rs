//! A job is written by clicks and typed words alone, in both languages.

use super::*;
use crate::panels::tests::{Fixture, fixture};
use crate::workbench::LibraryJobs;
use crate::workshop::OwnJobFolder;
use bevy_egui::egui::accesskit::Role;
use detent_content::{Language, Texts};
use detent_training::lesson::{Hidden, Mains};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;
use std::path::Path;
use std::sync::Arc;

pub(super) struct Bench {
    pub panels: Fixture,
    pub jobs: LibraryJobs,
    pub library: Arc<ContentLibrary>,
    pub workshop: WorkshopRes,
}

/// A workshop that keeps jobs in this folder, and boards in `boards` in it.
pub(super) fn bench(language: Language, folder: &Path) -> Harness<'static, Bench> {
    let jobs = LibraryJobs::new(None, None).expect("the built-in jobs are sound");
    let boards = OwnJobFolder::new(folder.join("boards"));
    let jobs = jobs.with_own_boards(Box::new(boards));
    let jobs = jobs.with_own_jobs(Box::new(OwnJobFolder::new(folder.to_owned())));
    let bench = Bench {
        panels: fixture(language),
        library: jobs.content(),
        jobs,
        workshop: WorkshopRes::default(),
    };
    let mut harness = Harness::builder()
        .with_size([1180.0, 1800.0])
        .build_ui_state(
            |ui, bench: &mut Bench| {
                kit::apply_theme(ui.ctx());
                let (jobs, library) = (&bench.jobs, &bench.library);
                let mut context = bench.panels.context();
                workshop_ui(ui, &mut context, &mut bench.workshop, jobs, library);
                if let Some(kept) = bench.workshop.kept.take() {
                    bench.jobs.take_in(kept);
                }
                if let Some(kept) = bench.workshop.kept_board.take() {
                    bench.library = bench.jobs.take_in_board(kept).expect("sound");
                }
            },
            bench,
        );
    harness.run_steps(3);
    harness
}

pub(super) fn click(harness: &mut Harness<'_, Bench>, label: &str) {
    harness.get_by_label(label).click();
    harness.run_steps(4);
}

fn write(harness: &mut Harness<'_, Bench>, nth: usize, text: &str) {
    let fields: Vec<_> = (harness.get_all_by_role(Role::TextInput))
        .chain(harness.get_all_by_role(Role::MultilineTextInput))
        .collect();
    let mut fields = fields;
    fields.sort_by(|a, b| a.rect().top().total_cmp(&b.rect().top()));
    let left: Vec<_> = fields
        .iter()
        .filter(|field| field.rect().left() < 300.0)
        .collect();
    left[nth].focus();
    harness.run_steps(2);
    harness.event(egui::Event::Text(text.to_owned()));
    harness.run_steps(2);
}

/// Types into the search above the faults.
fn look_for(harness: &mut Harness<'_, Bench>, name: &str) {
    let fields: Vec<_> = harness.get_all_by_role(Role::TextInput).collect();
    let search = fields.iter().filter(|field| field.rect().left() > 500.0);
    let search = search.min_by(|a, b| a.rect().top().total_cmp(&b.rect().top()));
    search.expect("a search").focus();
    harness.run_steps(2);
    harness.event(egui::Event::Text(name.to_owned()));
    harness.run_steps(3);
}

fn words(language: Language) -> [&'static str; 6] {
    match language {
        Language::En | Language::Es => [
            "Water in the drum",
            "Agua en el tambor",
            "It hums, and the water stays.",
            "Zumba, y el agua no se va.",
            "Tell a pump that is stuck from a hose that is blocked.",
            "Distinguir una bomba agarrotada de una manguera obstruida.",
        ],
    }
}

#[test]
fn a_job_is_written_tried_and_kept_by_clicks_and_words_alone() {
    for language in Language::ALL {
        let folder = tempfile::tempdir().expect("a folder");
        let texts = Texts::load(language);
        let text = |key: &str| texts.get(key);
        let mut harness = bench(language, folder.path());
        let offers = harness.state().jobs.offers().len();
        click(&mut harness, &text("workshop-new"));
        // It says what is missing, and cannot be tried before.
        let wrong = harness.state().workshop.open.as_ref().expect("open");
        assert_eq!(wrong.checked().expect_err("no words").field, "title.en");
        click(&mut harness, &text("workshop-try"));
        assert!(harness.state().panels.ui_state.opening.is_none());
        for (nth, sentence) in words(language).into_iter().enumerate() {
            write(&mut harness, nth, sentence);
        }
        click(&mut harness, &text("board-key-pad"));
        click(&mut harness, "230 V, 50 Hz");
        click(&mut harness, &text("workshop-fault-draw-from"));
        let blocked = texts.mode("drain-hose.blocked");
        look_for(&mut harness, &blocked);
        click(&mut harness, &blocked);
        click(&mut harness, &text("workshop-live"));
        harness.get_by_label(&text("workshop-sound"));
        // What was ticked by mistake is taken back.
        click(&mut harness, &text("workshop-worn-lead"));
        let open = |harness: &Harness<'_, Bench>| {
            let open = harness.state().workshop.open.as_ref();
            open.expect("open").scenario().clone()
        };
        assert!(open(&harness).worn_lead);
        click(&mut harness, &text("workshop-undo"));
        assert!(!open(&harness).worn_lead);
        click(&mut harness, &text("workshop-keep"));
        let file = folder.path().join("own-job.ron");
        let kept = std::fs::read_to_string(&file).expect("kept");
        let state = harness.state();
        let source = state
            .library
            .scenario(&file.to_string_lossy())
            .expect("sound");
        assert_eq!(source.text, kept);
        let scenario = &source.scenario;
        let [en, es, ..] = words(language);
        assert_eq!(
            (scenario.title.en.as_str(), scenario.title.es.as_str()),
            (en, es)
        );
        assert_eq!(
            (scenario.board.as_str(), scenario.mains),
            ("key-pad", Mains::V230Hz50)
        );
        let faults = ["drain-pump.open-winding", "drain-hose.blocked"].map(str::to_owned);
        assert_eq!(scenario.fault, Hidden::DrawFrom(faults.to_vec()));
        assert!(scenario.live_tests_allowed && !scenario.worn_lead);
        // It is on offer from now on, once however often it is kept.
        assert_eq!(state.jobs.offers().len(), offers + 1);
        click(&mut harness, &text("workshop-hints"));
        click(&mut harness, &text("workshop-keep"));
        assert_eq!(harness.state().jobs.offers().len(), offers + 1);
        click(&mut harness, &text("workshop-try"));
        let opening = harness.state_mut().panels.ui_state.opening.take();
        let mut opening = opening.expect("it is being set up");
        opening.wait();
        let crate::background::Background::Done(Ok(tried)) = opening else {
            panic!("a sound job can be set up");
        };
        assert_eq!(tried.job().title, scenario_title(&harness));
        assert_eq!(tried.kept_as(), None);
    }
}

fn scenario_title(harness: &Harness<'_, Bench>) -> detent_training::lesson::Bilingual {
    let open = harness.state().workshop.open.as_ref();
    open.expect("open").scenario().title.clone()
}

/// One's own job is found again, and a copy of a built-in one is begun.
#[test]
fn what_was_kept_is_gone_on_with_and_a_built_in_job_is_copied() {
    let folder = tempfile::tempdir().expect("a folder");
    let texts = Texts::load(Language::En);
    let mut harness = bench(Language::En, folder.path());
    click(&mut harness, &texts.get("workshop-copy-do"));
    let open = harness.state().workshop.open.as_ref().expect("a copy");
    assert!(open.checked().is_ok() && !open.is_kept());
    click(&mut harness, &texts.get("workshop-keep"));
    click(&mut harness, &texts.get("workshop-leave"));
    assert!(harness.state().workshop.open.is_none());
    let stem = harness.state().jobs.offers()[0].course.file.clone();
    click(&mut harness, &format!("{stem}-own"));
    let open = harness
        .state()
        .workshop
        .open
        .as_ref()
        .expect("gone on with");
    assert!(open.is_kept());
}

/// A file that somebody spoiled is told with its line; nothing is lost of it.
#[test]
fn a_job_that_cannot_be_read_says_where() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("spoiled.ron");
    std::fs::write(&file, "(\n    title: 7,\n)\n").expect("written");
    let mut harness = bench(Language::En, folder.path());
    click(&mut harness, "spoiled");
    let state = harness.state();
    assert!(state.workshop.open.is_none());
    let (message, _) = state.panels.ui_state.message.as_ref().expect("told");
    assert!(message.contains("spoiled.ron:2"), "{message}");
    assert_eq!(
        std::fs::read_to_string(&file).expect("there"),
        "(\n    title: 7,\n)\n"
    );
}
