//! The window as a program of its own: options from the command line, attempts in a folder.

use super::attempts::{Attempts, Folder, StorageError};
use super::class;
use super::class::address::ServerAddress;
use super::class::kept::{ClassFolder, ClassStore};
use super::class::shown::ShownClass;
use super::drill::Shown;
use super::film::ShownFilm;
use super::first_job::window_with_bench;
use super::library::{LibraryPlace, LibraryRes, LibraryUiState, remembered_library};
use super::port::{JobSource, OpeningWork, RecordedAttempt};
use super::practice::{self, LearnerRes};
use super::software::card;
use super::state::{Page, SettingsPage, Tab, UiState, ViewKind};
use super::workbench::LibraryJobs;
use super::workshop::{Written, own_boards_beside, own_jobs_beside};
use super::{AppOptions, Picture};
use bevy::prelude::*;
use detent_command_line::WindowArgs;
use detent_content::{ContentLibrary, Language, ProfileFolder, Texts, disk, read_script};
use std::path::PathBuf;
use std::sync::Arc;

/// Options from the command line's arguments.
fn options(
    args: &WindowArgs,
    language: Option<Language>,
    texts: &Texts,
) -> Result<AppOptions, String> {
    let mut options = AppOptions {
        language: language.unwrap_or_default(),
        flat: args.flat.then_some(true),
        software: args.software,
        ..default()
    };
    options.after_frames = args.frames.unwrap_or(options.after_frames);
    let views = args
        .view
        .iter()
        .map(|name| view(name, texts))
        .collect::<Result<Vec<_>, _>>()?;
    options.view = views.first().copied().unwrap_or(options.view);
    let tabs = (args.tab.iter())
        .map(|name| tab(name, texts))
        .collect::<Result<Vec<_>, _>>()?;
    (options.tab, options.page, options.hidden) = tabs.first().copied().unwrap_or(NO_TAB_GIVEN);
    options.practice = match args.tab.first().map(String::as_str) {
        Some("practice") => Some(false),
        Some("progress") => Some(true),
        _ => None,
    };
    options.settings = match args.tab.first().map(String::as_str) {
        Some("settings") => Some(SettingsPage::Keys),
        Some("settings-display") => Some(SettingsPage::Display),
        _ => None,
    };
    options.examination = args.tab.first().is_some_and(|name| name == "examination");
    options.class = args.tab.first().and_then(|name| ShownClass::named(name));
    options.workshop = match args.tab.first().map(String::as_str) {
        Some("workshop") => Some(None),
        Some(name) => Written::named(name).map(Some),
        None => None,
    };
    let films: Vec<Option<ShownFilm>> =
        args.tab.iter().map(|name| ShownFilm::named(name)).collect();
    options.film = films.first().copied().flatten();
    let drills: Vec<Option<Shown>> = args.tab.iter().map(|name| Shown::named(name)).collect();
    options.drill = drills.first().copied().flatten();
    if let Some(size) = &args.size {
        let parts = size
            .split_once('x')
            .and_then(|(w, h)| Some((w.parse().ok()?, h.parse().ok()?)));
        let told = || texts.with("cli-window-no-size", &[("size", size.as_str().into())]);
        options.size = parts.ok_or_else(told)?;
    }
    let mut scripts = Vec::new();
    for path in &args.script {
        let name = path.to_string_lossy();
        let bytes = disk::read_bytes(path).map_err(|e| texts.content_error(&e))?;
        scripts.push(read_script(&name, &bytes).map_err(|e| texts.content_error(&e))?);
    }
    let mut scripts = scripts.into_iter();
    options.script = scripts.next().unwrap_or_default();
    for (n, path) in args.shot.iter().enumerate() {
        // The first script is done before the first frame.
        let script = (n > 0).then(|| scripts.next()).flatten();
        options.pictures.push(Picture {
            path: path.clone(),
            view: views.get(n).or(views.last()).copied().unwrap_or_default(),
            tab: tabs.get(n).or(tabs.last()).copied().unwrap_or(NO_TAB_GIVEN),
            drill: drills.get(n).or(drills.last()).copied().flatten(),
            film: films.get(n).or(films.last()).copied().flatten(),
            script: script.unwrap_or_default(),
        });
    }
    Ok(options)
}

/// A tab, a page of the service sheet, and whether the side panels are hidden.
const NO_TAB_GIVEN: (Tab, Page, bool) = (Tab::Sheet, Page::Entry, false);

fn tab(name: &str, texts: &Texts) -> Result<(Tab, Page, bool), String> {
    let (tab, page) = match name {
        "sheet" | "none" => (Tab::Sheet, Page::Entry),
        "lamps" => (Tab::Sheet, Page::Lamps),
        "codes" => (Tab::Sheet, Page::Codes),
        "menu" => (Tab::Sheet, Page::Menu),
        "pins" => (Tab::Sheet, Page::Pins),
        "meter" => (Tab::Meter, Page::Entry),
        "parts" => (Tab::Parts, Page::Entry),
        "report" => (Tab::Report, Page::Entry),
        "score" => (Tab::Score, Page::Entry),
        // These are no tabs of the bench, but screens.
        "practice" | "progress" | "examination" | "settings" | "settings-display" | "workshop" => {
            (Tab::Sheet, Page::Entry)
        }
        film if ShownFilm::named(film).is_some() => (Tab::Score, Page::Entry),
        class if ShownClass::named(class).is_some() => (Tab::Sheet, Page::Entry),
        written if Written::named(written).is_some() => (Tab::Sheet, Page::Entry),
        drill if Shown::named(drill).is_some() => (Tab::Sheet, Page::Entry),
        other => {
            return Err(texts.with("cli-window-no-tab", &[("tab", other.into())]));
        }
    };
    Ok((tab, page, name == "none"))
}

fn view(name: &str, texts: &Texts) -> Result<ViewKind, String> {
    match name {
        "machine" => Ok(ViewKind::Machine),
        "panel" => Ok(ViewKind::Panel),
        "cabinet" => Ok(ViewKind::Cabinet),
        other => Err(texts.with("cli-window-no-view", &[("view", other.into())])),
    }
}

/// Where finished attempts go: `DETENT_ATTEMPTS`, else the user's data folder.
fn attempts_folder() -> Option<PathBuf> {
    let own = std::env::var_os("DETENT_ATTEMPTS").filter(|value| !value.is_empty());
    own.map(PathBuf::from)
        .or_else(|| disk::data_folder().map(|folder| folder.join("attempts")))
}

/// The film that is asked for, on its way. What is wrong with the file is known before there is a window.
fn watched(args: &WindowArgs, jobs: &LibraryJobs) -> Result<Option<OpeningWork>, StorageError> {
    let Some(path) = &args.watch else {
        return Ok(None);
    };
    let record = RecordedAttempt::file(path);
    jobs.read_recorded(record.clone())?;
    Ok(Some(jobs.watch(record)))
}

/// Opens the window and stays until it is closed.
///
/// # Errors
/// A sentence that says what in the arguments or files is wrong.
pub fn run(args: WindowArgs, language: Option<Language>) -> Result<(), String> {
    let texts = Texts::load(language.unwrap_or_default());
    let mut options = options(&args, language, &texts)?;
    let server = match &args.join {
        Some(address) => Some(address.parse::<ServerAddress>().map_err(|_| {
            texts.with(
                "cli-window-no-address",
                &[("address", address.as_str().into())],
            )
        })?),
        None => None,
    };
    // Asked while the jobs are read; a driver that breaks down over it is none.
    let has_card = (!options.software).then(|| std::thread::spawn(card::is_there));
    // A picture is no attempt.
    let keep = if options.pictures.is_empty() {
        attempts_folder()
    } else {
        None
    };
    let asked = args.library.as_deref();
    let remembered = (keep.is_some() && asked.is_none())
        .then(remembered_library)
        .flatten();
    let mut folder = asked.or(remembered.as_deref());
    let mut mistakes = Vec::new();
    let content_library = match (ContentLibrary::open(folder), asked) {
        (Ok(content_library), _) => content_library,
        (Err(errors), Some(_)) => {
            let told: Vec<String> = errors.iter().map(|e| texts.content_error(e)).collect();
            return Err(told.join("\n"));
        }
        // Nobody has asked for it today: it does not keep the window shut.
        (Err(errors), None) => {
            (mistakes, folder) = (errors, None);
            ContentLibrary::builtin().map_err(|error| texts.content_error(&error))?
        }
    };
    let place = folder.map_or(LibraryPlace::BuiltIn, |folder| {
        LibraryPlace::Folder(folder.to_owned())
    });
    let own_jobs = keep.as_ref().and_then(|_| own_jobs_beside(&place));
    let own_boards = keep.as_ref().and_then(|_| own_boards_beside(&place));
    let mut jobs = LibraryJobs::of(
        content_library,
        args.scenario.as_deref(),
        keep.clone()
            .map(|folder| Arc::new(Folder::new(folder)) as Arc<dyn Attempts>),
    )
    .map_err(|e| texts.content_error(&e))?;
    if let Some(own_boards) = own_boards {
        jobs = jobs.with_own_boards(own_boards);
    }
    if let Some(own_jobs) = own_jobs {
        jobs = jobs.with_own_jobs(own_jobs);
    }
    if args.scenario.is_some()
        || args.seed.is_some()
        || !options.script.is_empty()
        || !args.tab.is_empty()
        || !args.view.is_empty()
    {
        let seed = args
            .seed
            .unwrap_or_else(|| jobs.offers().first().map_or(1, |o| o.seed));
        options.start = Some((0, seed));
    }
    if cfg!(target_os = "linux")
        && ["DISPLAY", "WAYLAND_DISPLAY"]
            .iter()
            .all(|name| std::env::var_os(name).is_none())
    {
        return Err(texts.get("cli-window-no-display"));
    }
    options.software |= has_card.is_some_and(|asked| !asked.join().unwrap_or(false));
    let watched = watched(&args, &jobs).map_err(|error| error.words(&texts))?;
    let mut app = window_with_bench(&options, jobs)?;
    app.insert_resource(LibraryRes::with_first(args.scenario.clone()));
    let mut ui_state = app.world_mut().resource_mut::<UiState>();
    if let Some(watched) = watched {
        ui_state.open(watched);
    }
    ui_state.library = LibraryUiState {
        place,
        mistakes,
        has_folders: true,
        typed: remembered.map_or_else(String::new, |folder| folder.display().to_string()),
        ..LibraryUiState::default()
    };
    if options.pictures.is_empty()
        && options.practice.is_none()
        && let Some(folder) = disk::profiles_folder()
    {
        let exports = folder.join("exports");
        let store = Box::new(ProfileFolder::new(folder));
        let learner = LearnerRes::kept_in(store, Some(exports));
        practice::welcome(&mut app, learner, language.is_some());
    }
    if let Some(server) = server {
        let store =
            keep.map(|folder| Box::new(ClassFolder::beside(&folder)) as Box<dyn ClassStore>);
        class::join(&mut app, server, store);
    }
    match app.run() {
        AppExit::Success => Ok(()),
        AppExit::Error(code) => {
            Err(texts.with("cli-window-ended", &[("code", code.to_string().into())]))
        }
    }
}
