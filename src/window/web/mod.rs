//! The bench in a web page: what the page calls, and what it is asked for.

mod class_items;
mod learners;
mod local_items;
mod mirror;
mod names;
mod own_texts;
mod storage;

pub(crate) use own_texts::BrowserTexts;
pub(crate) use storage::keep_library;

use super::AppOptions;
use super::attempts::Attempts;
use super::class;
use super::film::Follower;
use super::first_job::window_with_bench;
use super::library::{CarriedFiles, CarriedLibrary, LibraryPlace, LibraryUiState};
use super::practice::{self, LearnerRes};
use super::rest::NextFrame;
use super::state::{JobSourceRes, Screen, UiState};
use super::workbench::LibraryJobs;
use bevy::platform::time::Instant;
use bevy::prelude::*;
use bevy::time::TimeSystems;
use bevy::winit::{EventLoopProxyWrapper, WinitUserEvent};
use detent_class_protocol::AttemptId;
use detent_content::{ContentLibrary, Language, Texts};
use detent_simulation::units::TICK_MS;
use detent_training::record::{PART, read_attempt};
use std::cell::{Cell, RefCell};
use std::sync::Arc;
use wasm_bindgen::prelude::*;

/// What the page does for the bench.
#[wasm_bindgen]
extern "C" {
    /// Hands a copy of a file to the person.
    #[wasm_bindgen(js_namespace = detentPage, js_name = saveCopy)]
    fn save_copy(name: &str, bytes: &[u8]);
    /// Asks the person for a file; it comes back through [`take_file`].
    #[wasm_bindgen(js_namespace = detentPage, js_name = askForFile)]
    fn ask_for_file();
    /// Asks the person for a library, a folder or else a zip; it comes back through [`take_folder`] or [`take_file`].
    #[wasm_bindgen(js_namespace = detentPage, js_name = askForLibrary)]
    fn ask_for_library(folder: bool);
    /// The first frame that answers is there.
    #[wasm_bindgen(js_namespace = detentPage, js_name = firstFrame)]
    fn first_frame();
    /// Where the server of the class is that this page belongs to, if it belongs to one.
    #[wasm_bindgen(js_namespace = detentPage, js_name = classServer)]
    fn class_server() -> Option<String>;
    /// The attempt of the class that the address asks to watch, if it does.
    #[wasm_bindgen(js_namespace = detentPage, js_name = watchedAttempt)]
    fn watched_attempt() -> Option<String>;
    /// The bench has stopped for good.
    #[wasm_bindgen(js_namespace = detentPage, js_name = stopped)]
    fn stopped(reason: &str);
    /// How long ago a key, by its code, went down or up, ms; NaN when that is not known.
    #[wasm_bindgen(js_namespace = detentPage, js_name = keyAge)]
    fn page_key_age(code: &str, down: bool) -> f64;
    #[wasm_bindgen(js_namespace = Date, js_name = now)]
    fn date_now() -> f64;
}

thread_local! {
    /// Wakes a window at rest.
    static WAKER: RefCell<Option<Box<dyn Fn()>>> = const { RefCell::new(None) };
    /// What this frame's clock shows.
    static CLOCK: Cell<Option<Instant>> = const { Cell::new(None) };
}

/// Something came from the page or its database: the window at rest has to look.
pub(super) fn wake() {
    WAKER.with_borrow(|waker| {
        if let Some(waker) = waker {
            waker();
        }
    });
}

/// Opens the bench in the page's canvas, in the language of this code (English when it is none of
/// ours), which the address `asked` for or the browser speaks. With `named`, [`where_is`] can find what stands
/// on the screen; with `flat` the machine is drawn flat, with `software` without WebGL. Where the page has `lost` its
/// graphics in the middle of a job, that goes on by itself.
///
/// # Errors
/// A sentence that says what is wrong.
#[wasm_bindgen]
pub async fn open(
    language: String,
    asked: bool,
    named: bool,
    flat: bool,
    software: bool,
    lost: bool,
) -> Result<(), JsError> {
    let kept_library = storage::open().await;
    let options = AppOptions {
        language: Language::ALL
            .into_iter()
            .find(|known| known.code() == language)
            .unwrap_or_default(),
        // Whoever asks where things are knows what is drawn.
        flat: (flat || named).then_some(flat),
        software,
        ..AppOptions::default()
    };
    let attempts = Arc::new(storage::Browser) as Arc<dyn Attempts>;
    let (offered, library) = LibraryUiState::open_kept(kept_library)
        .map_err(|error| JsError::new(&Texts::load(options.language).content_error(&error)))?;
    let jobs = LibraryJobs::offering(offered, Some(attempts))
        .with_own_boards(Box::new(BrowserTexts::BOARDS))
        .with_own_jobs(Box::new(BrowserTexts::JOBS));
    let report = std::panic::take_hook();
    std::panic::set_hook(Box::new(move |info| {
        report(info);
        stopped(&info.to_string());
    }));
    let mut app = window_with_bench(&options, jobs).map_err(|e| JsError::new(&e))?;
    app.world_mut().resource_mut::<UiState>().library = library;
    let learner = LearnerRes::kept_in(Box::new(learners::BrowserLearners), None);
    practice::welcome(&mut app, learner, asked);
    let server = class_server().and_then(|address| address.parse().ok());
    let watched: Option<AttemptId> = watched_attempt().and_then(|attempt| attempt.parse().ok());
    match (server, watched) {
        // Whoever watches takes no seat.
        (Some(_), Some(attempt)) => app.world_mut().resource_mut::<Follower>().want(attempt),
        (Some(server), None) => {
            class::join(&mut app, server, Some(Box::new(class_items::ClassItems)));
        }
        (None, Some(_) | None) => {}
    }
    if lost && watched.is_none() {
        go_on(app.world_mut());
    }
    app.add_systems(First, note_clock.after(TimeSystems))
        .add_systems(Update, take_library)
        .add_systems(Last, count_frames);
    mirror::plugin(&mut app);
    if named {
        names::plugin(&mut app);
    }
    if let Some(event_loop) = app.world().get_resource::<EventLoopProxyWrapper>() {
        let event_loop = (**event_loop).clone();
        WAKER.set(Some(Box::new(move || {
            // A window that has closed has nothing left to show.
            let _ = event_loop.send_event(WinitUserEvent::WakeUp);
        })));
    }
    app.run();
    Ok(())
}

/// Opens the job that was broken off last, or the examination that it may belong to.
fn go_on(world: &mut World) {
    if world.resource::<LearnerRes>().sitting().is_some() {
        let mut next = world.resource_mut::<NextState<Screen>>();
        next.set(Screen::Examination);
        return;
    }
    let jobs = world.resource::<JobSourceRes>().0.as_ref();
    let names = jobs.attempts().map(Attempts::names).unwrap_or_default();
    let last = names.first().filter(|name| name.ends_with(PART));
    if let Some(work) = last.map(|name| jobs.resume(name)) {
        world.resource_mut::<UiState>().open(work);
    }
}

/// How long before this frame's clock this key went down or up, ticks, if the page saw it. The clock shows
/// when the last frame had been drawn, so what came in since has a negative age.
pub(super) fn key_age_ticks(code: &str, down: bool) -> Option<i64> {
    let age_ms = page_key_age(code, down);
    let behind = CLOCK.get().map(|clock| clock.elapsed());
    let behind_ms = behind.unwrap_or_default().as_secs_f64() * 1_000.0;
    (age_ms >= 0.0).then(|| ((age_ms - behind_ms) / TICK_MS as f64).round() as i64)
}

fn note_clock(time: Res<Time<Real>>) {
    CLOCK.set(time.last_update());
}

/// The second update has seen what came in during the first frame.
fn count_frames(mut frame: Local<u32>) {
    *frame += 1;
    if *frame == 2 {
        first_frame();
    }
}

/// Takes a file that the person gave to the page.
#[wasm_bindgen]
pub fn take_file(name: String, bytes: Vec<u8>) {
    storage::arrive(name, bytes);
    wake();
}

/// Takes a folder that the person gave to the page: its name, and for each file in it the path inside it and what is in it.
#[wasm_bindgen]
pub fn take_folder(name: String, paths: Vec<String>, contents: Vec<js_sys::Uint8Array>) {
    let contents = contents.iter().map(js_sys::Uint8Array::to_vec);
    let files = CarriedFiles::Folder(paths.into_iter().zip(contents).collect());
    storage::arrive_library(CarriedLibrary { name, files });
    wake();
}

/// A library that the person gave is opened.
fn take_library(mut ui_state: ResMut<UiState>, mut next: ResMut<NextFrame>) {
    if let Some(carried) = storage::arrived_library() {
        ui_state.library.wanted = Some(LibraryPlace::Carried(Arc::new(carried)));
        // It came from the page, which wakes the window for one frame.
        next.settle();
    }
}

/// Another tab has taken the attempts over: nothing more is written from here.
#[wasm_bindgen]
pub fn let_go() {
    storage::let_go();
    wake();
}

/// What reading software wants of an element of the mirror: `focus`, `show`, `click`, `increment`, `decrement`, or
/// `number` or `text` with its value.
#[wasm_bindgen]
pub fn ask(id: &str, what: &str, value: &str) {
    mirror::ask(id, what, value);
}

/// Where the things with this label stand, in CSS pixels of the canvas: left, top, right and bottom
/// of each, one after the other, the topmost first.
#[wasm_bindgen]
pub fn where_is(label: &str) -> Vec<f64> {
    names::where_is(label).concat()
}

/// Every label on the screen.
#[wasm_bindgen]
pub fn labels() -> Vec<String> {
    names::labels()
}

/// The label of what has the keys; empty where nothing has.
#[wasm_bindgen]
pub fn focused() -> String {
    names::focused().map_or_else(String::new, |(label, _)| label)
}

/// Where it stands, as [`where_is`] says it.
#[wasm_bindgen]
pub fn focused_at() -> Vec<f64> {
    names::focused().map_or_else(Vec::new, |(_, place)| place.to_vec())
}

/// What a person at the bench sees, as JSON.
#[wasm_bindgen]
pub fn seen() -> String {
    names::seen()
}

/// Does a recorded attempt again; the machine's state and the score as `state score`.
///
/// # Errors
/// Why it cannot be done again, in a sentence.
#[wasm_bindgen]
pub fn replay_attempt(name: &str, bytes: &[u8]) -> Result<String, JsError> {
    let attempt = read_attempt(name, bytes)?;
    let content_library = ContentLibrary::builtin()?;
    let scenario_source = match content_library.carried_scenario(&attempt.header)? {
        Some(carried) => carried,
        None => content_library.scenario(&attempt.header.scenario)?,
    };
    let done = detent_content::replay_attempt(&content_library, &scenario_source, name, &attempt)?;
    Ok(format!("{} {:.6}", done.end.state, done.score.total()))
}
