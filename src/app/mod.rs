//! The window: a 3D bench and its panels. The only room that names Bevy and egui.

pub mod demo;
mod pick;
pub mod port;
mod scene;
mod shots;
pub mod state;
pub mod tokens;
mod views;

use bevy::prelude::*;
use bevy::time::TimeUpdateStrategy;
use bevy_egui::EguiPlugin;
use std::path::PathBuf;
use std::time::Duration;

use port::Shop;
use crate::content::Language;
use state::{BenchRes, Desk, Screen, ShopRes, Tab, ViewKind};

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
    /// Side panels hidden.
    pub hidden: bool,
    /// Size of the window, logical pixels.
    pub size: (u32, u32),
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
            hidden: false,
            size: (1280, 720),
        }
    }
}

/// Opens the window and stays until it is closed.
///
/// # Errors
/// A sentence that says why the job asked for in the options cannot be opened.
pub fn run(options: AppOptions, shop: Box<dyn Shop>) -> Result<AppExit, String> {
    let mut app = App::new();
    app.add_plugins(DefaultPlugins.set(WindowPlugin {
        primary_window: Some(Window {
            title: "Detent".to_owned(),
            resolution: (options.size.0, options.size.1).into(),
            ..default()
        }),
        ..default()
    }));
    plugin(&mut app, &options, shop)?;
    Ok(app.run())
}

/// Everything but the window itself.
///
/// # Errors
/// As [`run`].
pub fn plugin(app: &mut App, options: &AppOptions, shop: Box<dyn Shop>) -> Result<(), String> {
    if options.screenshot.is_some() {
        app.insert_resource(TimeUpdateStrategy::ManualDuration(Duration::from_millis(50)));
    }
    let (offer, seed) = options.start.unwrap_or((0, shop.offers().first().map_or(1, |o| o.seed)));
    let bench = shop.open(offer, seed)?;
    app.insert_resource(BenchRes::new(bench))
        .insert_resource(ShopRes(shop))
        .insert_resource(Desk {
            language: options.language,
            view: options.view,
            tab: options.tab,
            hidden: options.hidden,
            offer,
            seed: seed.to_string(),
            stage: Rect::new(0.0, 0.0, options.size.0 as f32, options.size.1 as f32),
            ..Desk::default()
        })
        .add_plugins(EguiPlugin::default())
        .insert_state(if options.start.is_some() { Screen::Bench } else { Screen::Start });
    scene::plugin(app);
    views::plugin(app);
    shots::plugin(app, options);
    Ok(())
}
