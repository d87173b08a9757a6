//! The window: a 3D bench and its panels. The only room that names Bevy and egui.

#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    reason = "screens may look at the clock, and what they draw need not be the same to the bit"
)]

#[cfg(test)]
mod demo;
mod input;
pub mod panels;
mod pick;
pub mod port;
mod scene;
mod shots;
pub mod state;
pub mod tokens;
mod views;
mod workbench;

use crate::bench::script::Step;
use crate::cli::WindowArgs;
use crate::content::{Language, Texts, disk, read_script};
use bevy::prelude::*;
use bevy::render::RenderPlugin;
use bevy::time::TimeUpdateStrategy;
use bevy::winit::{UpdateMode, WinitSettings};
use bevy_egui::EguiPlugin;
use std::path::PathBuf;
use std::time::Duration;

use port::Shop;
use state::{BenchRes, Desk, Page, Screen, ShopRes, Tab, TextsRes, ViewKind};
use workbench::Workshop;

/// How the window opens.
#[derive(Clone, Debug)]
pub struct AppOptions {
    /// Save one picture here and leave.
    pub screenshot: Option<PathBuf>,
    /// Frames before the picture.
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
    /// Done before the first frame.
    pub script: Vec<(usize, Step)>,
}

impl Default for AppOptions {
    fn default() -> Self {
        AppOptions {
            screenshot: None,
            after_frames: 60,
            language: Language::En,
            start: None,
            view: ViewKind::Machine,
            tab: Tab::Sheet,
            page: Page::Entry,
            hidden: false,
            size: (1280, 720),
            script: Vec::new(),
        }
    }
}

/// Options from the command line's arguments.
fn options(args: &WindowArgs, language: Option<Language>) -> Result<AppOptions, String> {
    let mut options = AppOptions {
        language: language.unwrap_or_default(),
        ..default()
    };
    options.screenshot.clone_from(&args.shot);
    options.after_frames = args.frames.unwrap_or(options.after_frames);
    options.view = match args.view.as_deref() {
        None | Some("machine") => ViewKind::Machine,
        Some("panel") => ViewKind::Panel,
        Some("cabinet") => ViewKind::Cabinet,
        Some(other) => {
            return Err(format!(
                "no view \"{other}\": use panel, machine or cabinet"
            ));
        }
    };
    let (tab, page) = match args.tab.as_deref() {
        None | Some("sheet") => (Tab::Sheet, Page::Entry),
        Some("none") => {
            options.hidden = true;
            (Tab::Sheet, Page::Entry)
        }
        Some("lamps") => (Tab::Sheet, Page::Lamps),
        Some("codes") => (Tab::Sheet, Page::Codes),
        Some("menu") => (Tab::Sheet, Page::Menu),
        Some("pins") => (Tab::Sheet, Page::Pins),
        Some("meter") => (Tab::Meter, Page::Entry),
        Some("parts") => (Tab::Parts, Page::Entry),
        Some("report") => (Tab::Report, Page::Entry),
        Some("score") => (Tab::Score, Page::Entry),
        Some(other) => {
            return Err(format!(
                "no tab \"{other}\": use sheet, lamps, codes, menu, pins, meter, parts, report, score or none"
            ));
        }
    };
    (options.tab, options.page) = (tab, page);
    if let Some(size) = &args.size {
        let parts = size
            .split_once('x')
            .and_then(|(w, h)| Some((w.parse().ok()?, h.parse().ok()?)));
        options.size = parts.ok_or(format!("no size \"{size}\": write it as 1280x720"))?;
    }
    if let Some(path) = &args.script {
        let name = path.to_string_lossy();
        let bytes = disk::read_bytes(path).map_err(|e| e.to_string())?;
        options.script = read_script(&name, &bytes).map_err(|e| e.to_string())?;
    }
    Ok(options)
}

/// Where finished attempts go: `DETENT_ATTEMPTS`, else the user's data folder.
fn attempts_folder() -> Option<PathBuf> {
    let from = |name: &str| {
        std::env::var_os(name)
            .filter(|v| !v.is_empty())
            .map(PathBuf::from)
    };
    from("DETENT_ATTEMPTS")
        .or_else(|| {
            from("XDG_DATA_HOME")
                .or_else(|| from("APPDATA"))
                .map(|p| p.join("detent/attempts"))
        })
        .or_else(|| from("HOME").map(|p| p.join(".local/share/detent/attempts")))
}

/// Opens the window and stays until it is closed.
///
/// # Errors
/// A sentence that says what in the arguments or files is wrong.
pub fn run(args: WindowArgs, language: Option<Language>) -> Result<(), String> {
    let mut options = options(&args, language)?;
    // A picture is no attempt.
    let keep = if options.screenshot.is_some() {
        None
    } else {
        attempts_folder()
    };
    let shop = Workshop::new(args.scenario.as_deref(), keep)?;
    if args.scenario.is_some()
        || args.seed.is_some()
        || !options.script.is_empty()
        || args.tab.is_some()
        || args.view.is_some()
    {
        let seed = args
            .seed
            .unwrap_or_else(|| shop.offers().first().map_or(1, |o| o.seed));
        options.start = Some((0, seed));
    }
    if cfg!(target_os = "linux")
        && ["DISPLAY", "WAYLAND_DISPLAY"]
            .iter()
            .all(|name| std::env::var_os(name).is_none())
    {
        return Err("there is no display: set DISPLAY or WAYLAND_DISPLAY, or work without a window (see detent --help)".to_owned());
    }
    let mut app = window(&options);
    plugin(&mut app, &options, Box::new(shop))?;
    match app.run() {
        AppExit::Success => Ok(()),
        AppExit::Error(code) => Err(format!("the window ended with error {code}")),
    }
}

/// The window itself, with nothing in it.
pub fn window(options: &AppOptions) -> App {
    let mut app = App::new();
    // A picture waits for its shaders; a window shows what it has.
    let render = RenderPlugin {
        synchronous_pipeline_compilation: options.screenshot.is_some(),
        ..default()
    };
    app.add_plugins(DefaultPlugins.set(render).set(WindowPlugin {
        primary_window: Some(Window {
            title: "Detent".to_owned(),
            resolution: (options.size.0, options.size.1).into(),
            ..default()
        }),
        ..default()
    }));
    app
}

/// Fills a window with the bench and the built-in jobs; attempts are not kept.
///
/// # Errors
/// As [`run`].
pub fn furnish(app: &mut App, options: &AppOptions) -> Result<(), String> {
    plugin(app, options, Box::new(Workshop::new(None, None)?))
}

/// Everything but the window itself.
///
/// # Errors
/// As [`run`].
pub fn plugin(app: &mut App, options: &AppOptions, shop: Box<dyn Shop>) -> Result<(), String> {
    if options.screenshot.is_some() {
        app.insert_resource(TimeUpdateStrategy::ManualDuration(Duration::from_millis(
            50,
        )));
    }
    let (offer, seed) = options
        .start
        .unwrap_or((0, shop.offers().first().map_or(1, |o| o.seed)));
    let mut bench = shop.open(offer, seed)?;
    for (line, step) in &options.script {
        bench
            .run(step)
            .map_err(|error| format!("line {line}: {error}"))?;
    }
    app.insert_resource(BenchRes::new(bench))
        .insert_resource(ShopRes(shop))
        .insert_resource(TextsRes(Texts::load(options.language)))
        .insert_resource(Desk {
            language: options.language,
            view: options.view,
            tab: options.tab,
            page: options.page,
            hidden: options.hidden,
            offer,
            seed: seed.to_string(),
            stage: Rect::new(0.0, 0.0, options.size.0 as f32, options.size.1 as f32),
            ..Desk::default()
        })
        // Sixty frames a second at most: a bench at rest must not heat the room.
        .insert_resource(WinitSettings {
            focused_mode: UpdateMode::reactive(Duration::from_micros(16_600)),
            unfocused_mode: UpdateMode::reactive_low_power(Duration::from_millis(33)),
        })
        .add_plugins(EguiPlugin::default())
        .insert_state(if options.start.is_some() {
            Screen::Bench
        } else {
            Screen::Start
        });
    scene::plugin(app);
    views::plugin(app);
    pick::plugin(app);
    input::plugin(app);
    panels::plugin(app);
    shots::plugin(app, options);
    Ok(())
}
