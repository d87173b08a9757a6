//! The window: a 3D bench and its panels. The only room that names Bevy and egui.

#![cfg_attr(
    target_family = "wasm",
    allow(unsafe_code, reason = "what wasm-bindgen writes for the page")
)]
#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    clippy::disallowed_macros,
    reason = "screens may look at the clock, and what they draw need not be the same to the bit"
)]

mod access;
mod attempts;
mod background;
mod board_workshop;
mod camera;
mod class;
#[cfg(test)]
mod demo;
mod drill;
mod examination;
mod film;
mod first_job;
mod flat;
mod hands;
mod hints;
mod input;
mod key_bindings;
mod key_strokes;
mod library;
#[cfg(not(target_family = "wasm"))]
mod native;
mod one_thread;
mod pace;
pub mod panels;
mod pick;
mod pointing;
pub mod port;
mod practice;
mod preferences;
mod rest;
mod scene;
mod shots;
mod software;
mod sound;
pub mod state;
mod stops;
pub mod tokens;
mod views;
#[cfg(target_family = "wasm")]
mod web;
mod workbench;
mod workshop;

#[cfg(not(target_family = "wasm"))]
pub use native::run;

use bevy::app::PluginGroupBuilder;
use bevy::log::{Level, LogPlugin};
use bevy::prelude::*;
use bevy::render::RenderPlugin;
use bevy::render::settings::WgpuSettings;
use bevy::time::TimeUpdateStrategy;
use bevy::winit::WinitPlugin;
use bevy_egui::EguiPlugin;
use detent_content::{Language, Texts};
use detent_training::bench::script::ScriptStep;
use detent_training::practice::simulated::invented;
use std::path::PathBuf;
use std::time::Duration;

use board_workshop::BoardWorkshop;
use class::ClassRes;
use class::shown::ShownClass;
use first_job::{FirstJob, window_with_bench};
use port::JobSource;
use state::{BenchRes, JobSourceRes, Page, Screen, SettingsPage, Tab, TextsRes, UiState, ViewKind};
use workbench::LibraryJobs;
use workshop::{Workshop, WorkshopRes, Written};

/// How the window opens.
#[derive(Clone, Debug)]
pub struct AppOptions {
    /// Take these pictures, one after the other, and leave.
    pub pictures: Vec<Picture>,
    /// Frames before each picture.
    pub after_frames: u32,
    /// Language.
    pub language: Language,
    /// Open straight at the bench with this offer and seed.
    pub start: Option<(usize, u64)>,
    /// Camera.
    pub view: ViewKind,
    /// Right tab.
    pub tab: Tab,
    /// Page of the service sheet.
    pub page: Page,
    /// Side panels hidden.
    pub hidden: bool,
    /// Size of the window, logical pixels.
    pub size: (u32, u32),
    /// Open in this drill.
    pub drill: Option<drill::Shown>,
    /// Done before the first frame.
    pub script: Vec<(usize, ScriptStep)>,
    /// Open straight at practice with invented answers; at progress if true.
    pub practice: Option<bool>,
    /// Open with this page of the settings.
    pub settings: Option<SettingsPage>,
    /// Open straight at the examinations.
    pub examination: bool,
    /// Open with this of an invented class.
    pub class: Option<class::shown::ShownClass>,
    /// Where a film that is opened stands still, for a picture of it.
    pub film: Option<film::ShownFilm>,
    /// Open straight in the workshop; with something on its bench or with nothing.
    pub workshop: Option<Option<Written>>,
    /// The machine is drawn flat instead of as a scene; else that is chosen where there is no graphics card.
    pub flat: Option<bool>,
    /// No graphics card is asked for: the processor draws, and the machine is flat.
    pub software: bool,
}

/// A picture of the window.
#[derive(Clone, Debug)]
pub struct Picture {
    /// Where it is saved.
    pub path: PathBuf,
    /// Camera.
    pub view: ViewKind,
    /// Right tab, page of the service sheet, and whether the side panels are hidden.
    pub tab: (Tab, Page, bool),
    /// The drill that it shows, if it shows one.
    pub drill: Option<drill::Shown>,
    /// Where the film stands in it, if it is of one.
    pub film: Option<film::ShownFilm>,
    /// Done before it, after those of the pictures before.
    pub script: Vec<(usize, ScriptStep)>,
}

impl Default for AppOptions {
    fn default() -> Self {
        AppOptions {
            pictures: Vec::new(),
            after_frames: 14,
            language: Language::En,
            start: None,
            view: ViewKind::Machine,
            tab: Tab::Sheet,
            page: Page::Entry,
            hidden: false,
            size: (1280, 720),
            drill: None,
            script: Vec::new(),
            practice: None,
            settings: None,
            examination: false,
            class: None,
            film: None,
            workshop: None,
            flat: None,
            software: false,
        }
    }
}

/// The window itself, with nothing in it.
pub fn window(options: &AppOptions) -> App {
    let mut settings = WgpuSettings::default();
    if options.software {
        settings.backends = None;
    }
    let mut app = App::new();
    app.add_plugins(plugins(options, settings));
    app
}

/// The same without a window system: each call of [`App::update`] makes the next frame. What is meant for
/// the window goes nowhere; with `draws` false nothing is drawn at all and no graphics driver is needed.
pub fn without_window_system(options: &AppOptions, draws: bool) -> App {
    let mut settings = WgpuSettings::default();
    if !draws {
        settings.backends = None;
    }
    let mut app = App::new();
    app.add_plugins(plugins(options, settings).disable::<WinitPlugin>());
    app
}

fn plugins(options: &AppOptions, settings: WgpuSettings) -> PluginGroupBuilder {
    // A picture waits for its shaders; a window shows what it has.
    let render = RenderPlugin {
        render_creation: settings.into(),
        synchronous_pipeline_compilation: !options.pictures.is_empty(),
        ..default()
    };
    // What a device lacks is no business of whoever sits in front of it; RUST_LOG shows it.
    let log = LogPlugin {
        level: Level::ERROR,
        // Without a renderer its parts say that it is missing.
        filter: "detent_window=info,bevy_render::extract_resource=off".to_owned(),
        ..default()
    };
    DefaultPlugins.set(render).set(log).set(WindowPlugin {
        primary_window: Some(Window {
            title: "Detent".to_owned(),
            resolution: (options.size.0, options.size.1).into(),
            // Smaller, not even one thing at a time has room.
            resize_constraints: WindowResizeConstraints {
                min_width: 360.0,
                min_height: 360.0,
                ..default()
            },
            canvas: Some("#bench".to_owned()),
            fit_canvas_to_parent: true,
            // The page decides which keys are ours and when the bench has the focus.
            prevent_default_event_handling: false,
            focused: !cfg!(target_family = "wasm"),
            ..default()
        }),
        ..default()
    })
}

/// Every built-in job; attempts are not kept.
///
/// # Errors
/// A sentence that says what is wrong with a file.
fn built_in_jobs(options: &AppOptions) -> Result<LibraryJobs, String> {
    LibraryJobs::new(None, None)
        .map_err(|error| Texts::load(options.language).content_error(&error))
}

/// The window with the bench and the built-in jobs; attempts are not kept.
///
/// # Errors
/// A sentence that says what is wrong with a file or the script.
pub fn bench_window(options: &AppOptions) -> Result<App, String> {
    window_with_bench(options, built_in_jobs(options)?)
}

/// Fills an app with the bench and the built-in jobs; attempts are not kept.
///
/// # Errors
/// A sentence that says what is wrong with a file or the script.
pub fn add_bench(app: &mut App, options: &AppOptions) -> Result<(), String> {
    let first = FirstJob::open(options, built_in_jobs(options)?)?;
    plugin(app, options, first);
    Ok(())
}

/// Everything but the window itself.
fn plugin(app: &mut App, options: &AppOptions, first: FirstJob) {
    if !options.pictures.is_empty() {
        // Nothing but what eases into its place needs the time.
        app.insert_resource(TimeUpdateStrategy::ManualDuration(Duration::from_millis(
            250,
        )));
    }
    let FirstJob { jobs, bench, start } = first;
    let (offer, seed) = start;
    let mut drill_res = practice::DrillRes::new(jobs.content());
    if let Some(shown) = options.drill {
        drill_res.show(shown, seed);
    }
    let texts = Texts::load(options.language).for_supply(bench.job().mains_v);
    let mut workshop = WorkshopRes::default();
    match options.workshop.flatten() {
        Some(Written::Job(page)) => {
            let original = jobs.scenario_source(offer);
            let open = original.and_then(|source| Workshop::copy_of(source, &jobs.content()).ok());
            workshop.open = open.map(|mut open| {
                open.view.page = page;
                open
            });
        }
        Some(Written::Board(page)) => {
            workshop.board = BoardWorkshop::shown(page, &texts, &jobs.content());
        }
        None => {}
    }
    app.insert_resource(BenchRes::new(bench))
        .insert_resource(JobSourceRes(Box::new(jobs)))
        .insert_resource(TextsRes(texts))
        .insert_resource(learner(options))
        .insert_resource(drill_res)
        .insert_resource(workshop)
        .insert_resource(options.class.map(ClassRes::shown).unwrap_or_default())
        .insert_resource(UiState {
            language: options.language,
            view: options.view,
            tab: options.tab,
            page: options.page,
            hidden: options.hidden,
            keys: options.settings.is_some(),
            settings_page: options.settings.unwrap_or_default(),
            // A picture is of its tab.
            ticket_in_front: options.pictures.is_empty(),
            flat: options.software || options.flat.unwrap_or_default(),
            software: options.software,
            // A picture shows the moment at which its script ended.
            speed: if options.pictures.is_empty() { 1 } else { 0 },
            offer,
            seed: seed.to_string(),
            shown_film: options.film,
            stage: Rect::new(0.0, 0.0, options.size.0 as f32, options.size.1 as f32),
            ..UiState::default()
        })
        .add_plugins((EguiPlugin::default(), one_thread::OneThreadPlugin))
        .insert_state(if options.practice.is_some() {
            Screen::Practice
        } else if options.workshop.is_some() {
            Screen::Workshop
        } else if options.class == Some(ShownClass::Join) {
            Screen::Join
        } else if options.class == Some(ShownClass::Paused) {
            Screen::Bench
        } else if options.class.is_some() {
            Screen::Start
        } else if options.examination {
            Screen::Examination
        } else if options.drill.is_some() {
            Screen::Drill
        } else if options.start.is_some() {
            Screen::Bench
        } else {
            Screen::Start
        });
    rest::plugin(app);
    access::plugin(app);
    pace::plugin(app);
    scene::plugin(app);
    views::plugin(app);
    if options.flat.is_none() && !options.software {
        app.add_systems(PostStartup, flat::draw_flat_without_card);
    }
    pick::plugin(app);
    flat::plugin(app);
    software::plugin(app, options);
    input::plugin(app);
    key_bindings::plugin(app);
    preferences::plugin(app);
    panels::plugin(app);
    practice::plugin(app);
    examination::plugin(app);
    class::plugin(app);
    library::plugin(app);
    film::plugin(app);
    sound::plugin(app);
    shots::plugin(app, options);
}

/// A guest; one with invented answers where a picture of practice is wanted.
fn learner(options: &AppOptions) -> practice::LearnerRes {
    let Some(progress) = options.practice else {
        return practice::LearnerRes::default();
    };
    let answers = invented(DEMO_SEED, DEMO_DAYS, practice::now());
    let mut learner = practice::LearnerRes::guest(answers);
    learner.ui_state.progress = progress;
    learner
}

/// Seed of the invented answers in pictures.
const DEMO_SEED: u64 = 7;
/// Days over which they were given.
const DEMO_DAYS: u32 = 5;
