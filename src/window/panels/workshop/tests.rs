//! A job is written by clicks and typed words alone, in both languages.

use super::*;
use crate::panels::tests::{Fixture, fixture};
use crate::workbench::LibraryJobs;
use crate::workshop::{OwnTextFolder, PrintedJob};
use bevy_egui::egui::accesskit::Role;
use detent_content::{Found, Language, Texts};
use detent_simulation::interface::Component;
use detent_training::authoring::AuthoringFinding;
use detent_training::lesson::{Hidden, Mains};
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT, Queryable};
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
    let boards = OwnTextFolder::new(folder.join("boards"));
    let jobs = jobs.with_own_boards(Box::new(boards));
    let jobs = jobs.with_own_jobs(Box::new(OwnTextFolder::new(folder.to_owned())));
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
        harness.get_by_label_contains(&text("workshop-sound"));
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

/// A copy of a sound job on the bench, proved.
fn proved_copy(language: Language, folder: &Path) -> Harness<'static, Bench> {
    let mut harness = bench(language, folder);
    let texts = Texts::load(language);
    let bench = harness.state_mut();
    let mut offers = bench.jobs.offers().iter();
    let original = offers.position(|offer| offer.course.file == "drain-code");
    bench.workshop.original = original.expect("built in");
    click(&mut harness, &texts.get("workshop-copy-do"));
    wait_for_proof(&mut harness);
    harness
}

/// By its tab: a side of the score may be called so too.
fn open_page(harness: &mut Harness<'_, Bench>, name: &str) {
    let tab = harness.get_by_role_and_label(Role::Button, name);
    tab.click();
    harness.run_steps(4);
}

fn wait_for_proof(harness: &mut Harness<'_, Bench>) {
    let bench = harness.state_mut();
    let open = bench.workshop.open.as_mut().expect("open");
    open.wait_for_proof(&bench.library);
    harness.run_steps(3);
}

fn change(harness: &mut Harness<'_, Bench>, change: &ScenarioChange) {
    let bench = harness.state_mut();
    let open = bench.workshop.open.as_mut().expect("open");
    open.change(&bench.library, change);
    harness.run_steps(3);
}

fn open<'a>(harness: &'a Harness<'_, Bench>) -> &'a Workshop {
    harness.state().workshop.open.as_ref().expect("open")
}

/// The proof tells what is wrong, leads to what changes it, and is marked while it is of an earlier state.
#[test]
fn what_the_proof_finds_leads_to_its_field() {
    for language in Language::ALL {
        let folder = tempfile::tempdir().expect("a folder");
        let texts = Texts::load(language);
        let mut harness = proved_copy(language, folder.path());
        open_page(&mut harness, &texts.get("workshop-page-proof"));
        harness.get_by_label(&texts.get("workshop-proof-sound"));
        let (scenario, proof) = (open(&harness).proof().of_now())
            .and_then(|proved| proved.proof())
            .expect("proved");
        let needs = texts.expert_needs(&proof.machines[0], scenario);
        let difficulty = proof.machines[0].difficulty.as_ref();
        let expert_min = difficulty.expect("the expert can do it").expert_minutes;
        harness.get_by_label(&needs);
        harness.get_by_label(&texts.get("author-way"));
        // Too little time for the job: what stands there is marked as that of the job before.
        change(&mut harness, &ScenarioChange::ParMinutes(expert_min - 1.0));
        harness.get_by_label(&texts.get("workshop-proof-stale"));
        wait_for_proof(&mut harness);
        assert!(
            harness
                .query_by_label(&texts.get("workshop-proof-stale"))
                .is_none()
        );
        let findings = &(open(&harness).proof().of_now())
            .expect("proved")
            .report
            .findings;
        let slow = findings.iter().find(|finding| {
            matches!(
                finding.found,
                Found::Authoring(AuthoringFinding::TooSlow { .. })
            )
        });
        let slow = slow.expect("the expert needs a minute more");
        let told = format!(
            "{}: {}: {}",
            texts.get("author-severity-error"),
            texts.get("workshop-field-par-minutes"),
            texts.file_finding(slow)
        );
        click(&mut harness, &told);
        assert_eq!(open(&harness).view.page, WorkshopPage::Job);
        let minutes = harness.get_by_label(&texts.get("workshop-minutes")).rect();
        let focused = harness
            .ctx
            .memory(egui::Memory::focused)
            .expect("led there");
        let focused = harness.ctx.read_response(focused).expect("laid out").rect;
        assert!(
            focused.y_range().contains(minutes.center().y),
            "{focused:?}, {minutes:?}"
        );
        // What it expects of the wash is what the wash stores.
        click(&mut harness, &texts.get("workshop-expects-codes"));
        let proved = open(&harness).scenario().expected_codes.clone();
        let stored = &open(&harness).proof().last().expect("proved").wash;
        let stored: Vec<u8> = (stored.as_ref().expect("washed").stored.iter())
            .map(|stored| stored.code)
            .collect();
        assert_eq!(proved, Some(stored));
    }
}

/// The job is tried from any deed of the expert's on: what was done before is done, with its time.
#[test]
fn a_job_is_tried_from_a_deed_of_the_experts_on() {
    let folder = tempfile::tempdir().expect("a folder");
    let texts = Texts::load(Language::En);
    let mut harness = proved_copy(Language::En, folder.path());
    open_page(&mut harness, &texts.get("workshop-page-proof"));
    let proved = open(&harness).proof().of_now().expect("proved");
    let (_, proof) = proved.proof().expect("proved");
    let way = &proof.machines[0].review.as_ref().expect("a way").yours;
    let stop = way[way.len() / 2].clone();
    let minutes = texts.digits(format!("{:.1}", stop.minutes));
    let told = format!("{minutes} min, {}: ", texts.whole_money(stop.money));
    let labels: Vec<egui::Rect> = (harness.get_all_by_role(Role::Button))
        .filter(|node| {
            let label = node.accesskit_node().label();
            label.is_some_and(|label| label.starts_with(&told))
        })
        .map(|node| node.rect())
        .collect();
    assert!(!labels.is_empty(), "{told}");
    let deed = labels[0].center();
    harness.hover_at(deed);
    harness.drag_at(deed);
    harness.drop_at(deed);
    harness.run_steps(4);
    let opening = harness.state_mut().panels.ui_state.opening.take();
    let mut opening = opening.expect("it is being set up");
    opening.wait();
    let crate::background::Background::Done(Ok(tried)) = opening else {
        panic!("a sound job can be set up");
    };
    assert!(tried.score().is_none());
    let view = tried.view();
    assert!(
        (view.minutes - stop.minutes).abs() < 0.2,
        "{} {stop:?}",
        view.minutes
    );
    assert!(tried.history().iter().count() > 3);
    assert_eq!(tried.kept_as(), None);
}

/// The wash as it goes: in words, and at any moment of it.
#[test]
fn the_customers_wash_is_told_at_any_moment() {
    let folder = tempfile::tempdir().expect("a folder");
    for language in Language::ALL {
        let texts = Texts::load(language);
        let mut harness = proved_copy(language, folder.path());
        change(
            &mut harness,
            &ScenarioChange::Fault(Hidden::Named("drain-pump.seized".to_owned())),
        );
        wait_for_proof(&mut harness);
        click(&mut harness, &texts.get("workshop-page-wash"));
        let wash = (open(&harness).proof().of_now()).and_then(|proved| proved.wash.clone());
        let wash = wash.expect("washed");
        harness.get_by_label(&texts.wash_end(wash.end));
        assert!(!wash.stored.is_empty(), "a pump that is stuck is noticed");
        for stored in &wash.stored {
            harness.get_by_label(&texts.wash_code(stored));
        }
        let told = |harness: &Harness<'_, Bench>| {
            let told = harness.get_by_label_contains(" mm, ");
            let node = told.accesskit_node();
            node.label().or(node.value()).expect("words")
        };
        let before = told(&harness);
        // Nobody has chosen a moment yet: that of the first code is shown, of the next wash too.
        assert!(open(&harness).view.moment_min.is_none());
        let slider = harness.get_by_role(Role::Slider);
        slider.focus();
        harness.run_steps(2);
        for _ in 0..4 {
            harness.key_press(egui::Key::ArrowLeft);
            harness.run_steps(2);
        }
        assert!(open(&harness).view.moment_min.is_some());
        assert_ne!(told(&harness), before);
    }
}

/// A component in the drawing filters the faults; a second time it shows them all again.
#[test]
fn a_component_in_the_drawing_filters_the_faults() {
    let folder = tempfile::tempdir().expect("a folder");
    for language in Language::ALL {
        let texts = Texts::load(language);
        let mut harness = proved_copy(language, folder.path());
        let library = Arc::clone(&harness.state().library);
        let modes = &library.catalogue.modes;
        let of = |part: Component| modes.iter().filter(move |mode| mode.component == part);
        let pump = Component::DrainPump;
        let args = [
            ("part", Value::from(texts.component(pump))),
            ("count", of(pump).count().into()),
        ];
        let boxed = texts.with("workshop-cabinet-part", &args);
        let other = texts.mode("belt.broken");
        click(&mut harness, &boxed);
        assert_eq!(open(&harness).view.component, Some(pump));
        assert!(harness.query_by_label(&other).is_none());
        let seized = texts.mode("drain-pump.seized");
        click(&mut harness, &seized);
        let fault = Hidden::Named("drain-pump.seized".to_owned());
        assert_eq!(open(&harness).scenario().fault, fault);
        click(&mut harness, &boxed);
        assert_eq!(open(&harness).view.component, None);
        assert!(open(&harness).view.fault_search.is_empty());
    }
}

/// Handout and key lie beside the job at one press; a second one asks.
#[test]
fn handout_and_key_are_printed_by_clicks() {
    let folder = tempfile::tempdir().expect("a folder");
    let texts = Texts::load(Language::En);
    let mut harness = proved_copy(Language::En, folder.path());
    click(&mut harness, &texts.get("workshop-page-paper"));
    click(&mut harness, &texts.get("workshop-paper-letter"));
    let print = |harness: &mut Harness<'_, Bench>, key: &str| {
        click(harness, &texts.get(key));
        let bench = harness.state_mut();
        let open = bench.workshop.open.as_mut().expect("open");
        open.paper.wait(bench.jobs.own_jobs().expect("a folder"));
        harness.run_steps(3);
        open_printed(harness)
    };
    let printed = print(&mut harness, "workshop-paper-do");
    let Some(PrintedJob::In(files)) = printed else {
        panic!("{printed:?}");
    };
    let args = [("place", Value::from(files[0].as_str()))];
    harness.get_by_label(&texts.with("workshop-kept", &args));
    for file in &files {
        assert!(std::fs::read(file).expect("there").starts_with(b"%PDF-"));
    }
    let printed = print(&mut harness, "workshop-paper-do");
    assert_eq!(printed, Some(PrintedJob::Taken(files.to_vec())));
    click(&mut harness, &texts.get("workshop-paper-leave"));
    assert_eq!(open_printed(&harness), None);
    let printed = print(&mut harness, "workshop-paper-do");
    assert!(matches!(printed, Some(PrintedJob::Taken(_))));
    let printed = print(&mut harness, "workshop-paper-replace");
    assert_eq!(printed, Some(PrintedJob::In(files)));
}

fn open_printed(harness: &Harness<'_, Bench>) -> Option<PrintedJob> {
    open(harness).paper.last().cloned()
}
