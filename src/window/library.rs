//! The library that is open beside what is built in: opened, closed, and read again when its files change.

use super::background::{Background, Work};
use super::class::ClassRes;
use super::practice::DrillRes;
use super::rest::NextFrame;
use super::state::{JobSourceRes, UiState};
use super::workbench::OfferedJobs;
use super::workshop::WorkshopRes;
use bevy::platform::time::Instant;
use bevy::prelude::*;
#[cfg(not(target_family = "wasm"))]
use detent_content::disk;
use detent_content::{ContentError, ContentLibrary};
use std::path::PathBuf;
use std::sync::Arc;
#[cfg(not(target_family = "wasm"))]
use std::time::Duration;

/// Where the library that is open is.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub enum LibraryPlace {
    /// What is built in, and nothing beside it.
    #[default]
    BuiltIn,
    /// In this folder, or a course in this zip.
    Folder(PathBuf),
    /// Carried into a page.
    Carried(Arc<CarriedLibrary>),
}

/// A library that somebody gave to a page, which has no folders.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CarriedLibrary {
    /// What its folder or its zip is called.
    pub name: String,
    /// What is in it.
    pub files: CarriedFiles,
}

/// What is in a library that was carried into a page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum CarriedFiles {
    /// A course as one zip.
    Zip(Vec<u8>),
    /// All that lay in the folder, by paths inside it.
    Folder(Vec<(String, Vec<u8>)>),
}

impl LibraryPlace {
    /// Where that is, for people; none where nothing is open.
    pub fn name(&self) -> Option<String> {
        match self {
            LibraryPlace::BuiltIn => None,
            LibraryPlace::Folder(folder) => Some(folder.display().to_string()),
            LibraryPlace::Carried(carried) => Some(carried.name.clone()),
        }
    }

    /// Reads it, and `first` before all other jobs if given.
    fn read(&self, first: Option<String>) -> Work<Reading> {
        let place = self.clone();
        Box::pin(async move {
            let content_library = match &place {
                LibraryPlace::BuiltIn => ContentLibrary::open(None),
                LibraryPlace::Folder(folder) => ContentLibrary::open(Some(folder)),
                LibraryPlace::Carried(carried) => match &carried.files {
                    CarriedFiles::Zip(bytes) => ContentLibrary::of_zip(&carried.name, bytes),
                    CarriedFiles::Folder(all) => {
                        ContentLibrary::of_files(&carried.name, all.clone())
                    }
                },
            }?;
            OfferedJobs::of(content_library, first.as_deref()).map_err(|error| vec![error])
        })
    }
}

/// What is on offer in it, or every mistake in its files.
type Reading = Result<OfferedJobs, Vec<ContentError>>;

/// What the panels show of the library, and what they ask for.
#[derive(Default)]
pub struct LibraryUiState {
    /// The one that is open.
    pub place: LibraryPlace,
    /// What is wrong with its files now. What was read before that stays on offer.
    pub mistakes: Vec<ContentError>,
    /// Another one is to be opened.
    pub wanted: Option<LibraryPlace>,
    /// Its folder, as typed.
    pub typed: String,
    /// It is being read.
    pub reading: bool,
    /// Folders can be opened by their names.
    pub has_folders: bool,
}

#[cfg(target_family = "wasm")]
impl LibraryUiState {
    /// Opens the library that the browser has kept, if it has one; where something is wrong with it, only what is built in.
    ///
    /// # Errors
    /// What is wrong with what is built in.
    pub fn open_kept(
        kept: Option<CarriedLibrary>,
    ) -> Result<(OfferedJobs, LibraryUiState), ContentError> {
        let place = kept.map_or(LibraryPlace::BuiltIn, |carried| {
            LibraryPlace::Carried(Arc::new(carried))
        });
        let mut library = LibraryUiState::default();
        match detent_training::without_breaks(place.read(None)) {
            Ok(offered) => {
                library.place = place;
                Ok((offered, library))
            }
            Err(mistakes) => {
                library.mistakes = mistakes;
                let offered = OfferedJobs::of(ContentLibrary::builtin()?, None)?;
                Ok((offered, library))
            }
        }
    }
}

/// Reads the library.
#[derive(Resource, Default)]
pub struct LibraryRes {
    /// A file of somebody's own, which stands before all other jobs.
    first: Option<String>,
    reading: Option<(LibraryPlace, Background<Reading>)>,
    /// Something in its folder was changed: when it is to be read again. An editor may write in several steps.
    due: Option<Instant>,
}

impl LibraryRes {
    /// With this file before all other jobs.
    #[cfg(not(target_family = "wasm"))]
    pub fn with_first(first: Option<String>) -> LibraryRes {
        LibraryRes {
            first,
            ..LibraryRes::default()
        }
    }

    fn read(&mut self, place: LibraryPlace) {
        let work = place.read(self.first.clone());
        self.reading = Some((place, Background::begin(work)));
    }
}

/// How long after the last change the files are read.
#[cfg(not(target_family = "wasm"))]
const SETTLED_AFTER: Duration = Duration::from_millis(120);

/// Begins to read what is wanted or was changed.
fn begin_reading(
    mut library: ResMut<LibraryRes>,
    mut ui_state: ResMut<UiState>,
    mut next: ResMut<NextFrame>,
) {
    if ui_state.library.wanted.is_some()
        && let Some(wanted) = ui_state.library.wanted.take()
    {
        library.due = None;
        library.read(wanted);
    }
    if let Some(due) = library.due {
        next.watch();
        if Instant::now() >= due && library.reading.is_none() {
            library.due = None;
            let place = ui_state.library.place.clone();
            library.read(place);
        }
    }
    let reads = library.reading.is_some();
    if ui_state.library.reading != reads {
        ui_state.library.reading = reads;
    }
}

/// Takes in what was read. A library with a mistake changes nothing but what is told of it.
fn finish_reading(
    mut library: ResMut<LibraryRes>,
    mut ui_state: ResMut<UiState>,
    mut jobs: ResMut<JobSourceRes>,
    mut drill: ResMut<DrillRes>,
    mut workshop: ResMut<WorkshopRes>,
    mut class: ResMut<ClassRes>,
    mut next: ResMut<NextFrame>,
) {
    let Some((place, mut reading)) = library.reading.take() else {
        return;
    };
    next.watch();
    reading.go_on();
    let read = match reading {
        Background::Done(read) => read,
        running @ Background::Running(_) => {
            library.reading = Some((place, running));
            return;
        }
    };
    next.settle();
    ui_state.library.reading = false;
    let offered = match read {
        Ok(offered) => offered,
        Err(mistakes) => {
            ui_state.library.mistakes = mistakes;
            return;
        }
    };
    ui_state.library.mistakes.clear();
    let jobs = &mut jobs.0;
    let file = |offer: usize| {
        jobs.scenario_source(offer)
            .map(|source| source.file.clone())
    };
    let [chosen, original] = [ui_state.offer, workshop.original].map(file);
    drill.take_content(offered.content());
    jobs.take_library(offered, &place);
    class.know_content(jobs.content_digest());
    let found = |file: Option<String>| {
        let file = file?;
        (0..jobs.offers().len())
            .find(|offer| (jobs.scenario_source(*offer)).is_some_and(|source| source.file == file))
    };
    workshop.original = found(original).unwrap_or_default();
    match found(chosen) {
        Some(offer) => ui_state.offer = offer,
        None => {
            ui_state.offer = 0;
            let seed = jobs.offers().first().map(|offer| offer.seed.to_string());
            ui_state.seed = seed.unwrap_or_default();
        }
    }
    ui_state.offer_seen = None;
    // They are like a job that may be another one now; titles of kept attempts may be, too.
    ui_state.variants = None;
    ui_state.kept = None;
    if let Some(open) = &mut workshop.open {
        open.follow(&drill.content(), jobs.own_jobs());
    }
    if let Some(open) = &mut workshop.board {
        open.follow(&drill.content(), jobs.own_boards());
    }
    #[cfg(not(target_family = "wasm"))]
    if ui_state.library.place != place && ui_state.library.has_folders {
        remember(&place);
    }
    #[cfg(target_family = "wasm")]
    super::web::keep_library(&place);
    ui_state.library.place = place;
}

/// The file that names the folder of the library that was opened last.
#[cfg(not(target_family = "wasm"))]
fn remembered_in() -> Option<PathBuf> {
    disk::data_folder().map(|folder| folder.join("library.txt"))
}

/// The library's folder that was opened last in the window, if one was and it was not closed again.
#[cfg(not(target_family = "wasm"))]
pub fn remembered_library() -> Option<PathBuf> {
    let bytes = disk::read_bytes(&remembered_in()?).ok()?;
    let name = String::from_utf8(bytes).ok()?;
    Some(name.trim_end())
        .filter(|name| !name.is_empty())
        .map(PathBuf::from)
}

/// It is open the next time too; where that cannot be written down, it is only opened again by hand.
#[cfg(not(target_family = "wasm"))]
fn remember(place: &LibraryPlace) {
    let name = place.name().unwrap_or_default();
    if let Some(file) = remembered_in()
        && let Err(error) = disk::write_whole(&file, name.as_bytes())
    {
        warn!("{}: {error}", file.display());
    }
}

/// A folder or a zip that is dropped on the window is opened.
#[cfg(not(target_family = "wasm"))]
fn take_what_is_dropped(
    mut dropped: MessageReader<bevy::window::FileDragAndDrop>,
    mut ui_state: ResMut<UiState>,
) {
    for event in dropped.read() {
        if let bevy::window::FileDragAndDrop::DroppedFile { path_buf, .. } = event
            && (path_buf.is_dir() || path_buf.extension().is_some_and(|ending| ending == "zip"))
        {
            ui_state.library.wanted = Some(LibraryPlace::Folder(path_buf.clone()));
        }
    }
}

/// Opens, closes and reads again.
pub fn plugin(app: &mut App) {
    app.init_resource::<LibraryRes>()
        .add_systems(Update, (begin_reading, finish_reading).chain());
    #[cfg(not(target_family = "wasm"))]
    app.add_systems(Update, take_what_is_dropped.before(begin_reading));
    #[cfg(not(target_family = "wasm"))]
    watch::plugin(app);
}

#[cfg(not(target_family = "wasm"))]
mod watch {
    use super::{Instant, LibraryPlace, LibraryRes, SETTLED_AFTER, UiState};
    use bevy::prelude::*;
    use bevy::winit::{EventLoopProxyWrapper, WinitUserEvent};
    use notify::{Event, RecommendedWatcher, RecursiveMode, Watcher};
    use std::ffi::OsStr;
    use std::path::{Path, PathBuf};
    use std::sync::Arc;
    use std::sync::atomic::{AtomicBool, Ordering};

    /// Looks after the folder or the zip of the library that is open.
    #[derive(Default)]
    struct Watch {
        /// The library, and what looks after it; none where the system cannot.
        folder: Option<(PathBuf, Option<RecommendedWatcher>)>,
        /// Something was changed since the last frame.
        changed: Arc<AtomicBool>,
    }

    /// What the library is read from, is made, changed, moved or deleted: files in its folder, or the `zip` of this name.
    /// That it was read is no change.
    fn is_change(event: &Event, zip: Option<&OsStr>) -> bool {
        let is_read = |path: &PathBuf| match zip {
            Some(zip) => path.file_name() == Some(zip),
            None => {
                let ending = path.extension().map(|ending| ending.to_string_lossy());
                // Whole folders come and go too.
                ending.is_none_or(|ending| ending == "ron")
            }
        };
        !event.kind.is_access() && (event.need_rescan() || event.paths.iter().any(is_read))
    }

    /// Looks after this folder or zip from now on, and wakes the window at rest when something changes there.
    fn watcher(
        library: &Path,
        changed: &Arc<AtomicBool>,
        proxy: Option<&EventLoopProxyWrapper>,
    ) -> notify::Result<RecommendedWatcher> {
        let changed = Arc::clone(changed);
        let proxy = proxy.map(|proxy| (**proxy).clone());
        // Another zip in its place is another file of the same name: the folder around it knows.
        let zip = library.file_name().filter(|_| library.is_file());
        let (watched, depth) = match zip {
            Some(_) => (folder_around(library), RecursiveMode::NonRecursive),
            None => (library, RecursiveMode::Recursive),
        };
        let zip = zip.map(OsStr::to_owned);
        let mut watcher = notify::recommended_watcher(move |event: notify::Result<Event>| {
            if event.is_ok_and(|event| is_change(&event, zip.as_deref())) {
                changed.store(true, Ordering::Relaxed);
                if let Some(proxy) = &proxy {
                    // A window that is closed has nothing left to show.
                    let _ = proxy.send_event(WinitUserEvent::WakeUp);
                }
            }
        })?;
        watcher.watch(watched, depth)?;
        Ok(watcher)
    }

    /// The folder that a file lies in.
    fn folder_around(file: &Path) -> &Path {
        let folder = file.parent().unwrap_or(file);
        match folder.as_os_str().is_empty() {
            true => Path::new("."),
            false => folder,
        }
    }

    fn look_after(
        ui_state: Res<UiState>,
        mut library: ResMut<LibraryRes>,
        proxy: Option<Res<EventLoopProxyWrapper>>,
        mut watch: Local<Watch>,
    ) {
        // From before it is read: nothing is changed unseen in between.
        let reading = library.reading.as_ref().map(|(place, _)| place);
        let wanted = ui_state.library.wanted.as_ref().or(reading);
        let open = match wanted.unwrap_or(&ui_state.library.place) {
            LibraryPlace::BuiltIn | LibraryPlace::Carried(_) => None,
            LibraryPlace::Folder(folder) => Some(folder),
        };
        if watch.folder.as_ref().map(|(folder, _)| folder) != open {
            watch.folder = open.map(|folder| {
                let watcher = watcher(folder, &watch.changed, proxy.as_deref());
                if let Err(error) = &watcher {
                    warn!("{}: {error}", folder.display());
                }
                (folder.clone(), watcher.ok())
            });
        }
        if watch.changed.swap(false, Ordering::Relaxed) {
            library.due = Some(Instant::now() + SETTLED_AFTER);
        }
    }

    pub fn plugin(app: &mut App) {
        app.add_systems(Update, look_after.before(super::begin_reading));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::AppOptions;
    use crate::rest::tests::paused;
    use std::fs;
    use std::path::Path;

    /// A bench with this library open.
    fn bench(folder: &Path) -> App {
        let mut app = paused(&AppOptions::default());
        let mut ui_state = app.world_mut().resource_mut::<UiState>();
        ui_state.library.wanted = Some(LibraryPlace::Folder(folder.to_owned()));
        frames_until(&mut app, |app| {
            !library(app).reading && library(app).wanted.is_none()
        });
        app
    }

    fn library(app: &App) -> &LibraryUiState {
        &app.world().resource::<UiState>().library
    }

    /// Frames until that is so; how long it took.
    fn frames_until(app: &mut App, is_so: impl Fn(&App) -> bool) -> Duration {
        let began = Instant::now();
        app.update();
        while !is_so(app) {
            app.update();
            assert!(began.elapsed() < Duration::from_secs(60), "it never came");
        }
        began.elapsed()
    }

    fn titles(app: &App) -> Vec<String> {
        let offers = app.world().resource::<JobSourceRes>().0.offers();
        offers.iter().map(|offer| offer.title.en.clone()).collect()
    }

    /// The text of a copy of a built-in job under another title.
    fn job(title: &str) -> String {
        use detent_content::{Language, ScenarioChange, ScenarioDraft, ScenarioSentence};
        let builtin = ContentLibrary::builtin().expect("it is sound");
        let source = builtin.scenario("drain-code").expect("built in");
        let mut draft = ScenarioDraft::copy_of(&source, "own-job");
        let title = title.to_owned();
        let change = ScenarioChange::Sentence(ScenarioSentence::Title, Language::En, title);
        draft.change(&change).expect("a title");
        draft.text().to_owned()
    }

    #[test]
    fn what_is_changed_in_an_editor_shows_in_the_open_window_and_a_mistake_leaves_what_was() {
        let folder = tempfile::tempdir().expect("a folder");
        let scenarios = folder.path().join("scenarios");
        fs::create_dir(&scenarios).expect("a folder");
        let file = scenarios.join("own-job.ron");
        fs::write(&file, job("First title")).expect("written");
        let mut app = bench(folder.path());
        let built_in = titles(&app).len() - 1;
        assert!(titles(&app).contains(&"First title".to_owned()));
        let place = titles(&app).iter().position(|title| title == "First title");
        app.world_mut().resource_mut::<UiState>().offer = place.expect("on offer");
        // A further job comes in front of it, and the one that was chosen stays chosen.
        fs::write(scenarios.join("another-job.ron"), job("Another title")).expect("written");
        frames_until(&mut app, |app| titles(app).len() == built_in + 2);
        let chosen = app.world().resource::<UiState>().offer;
        assert_eq!(titles(&app)[chosen], "First title");
        let took = frames_until_changed(&mut app, &file, &job("Second title"), |app| {
            titles(app).contains(&"Second title".to_owned())
        });
        println!("an editor's change is on offer after {took:?}");
        assert!(!titles(&app).contains(&"First title".to_owned()));
        // A mistake is told at its place, and what was read before stays on offer.
        let spoiled = job("Third title").replacen("par_minutes: 80", "par_minutes: eighty", 1);
        let line = spoiled.lines().position(|line| line.contains("eighty"));
        frames_until_changed(&mut app, &file, &spoiled, |app| {
            !library(app).mistakes.is_empty()
        });
        let mistake = &library(&app).mistakes[0];
        assert_eq!(Some(mistake.line), line.map(|line| line + 1));
        assert!(mistake.file.ends_with("own-job.ron"), "{mistake:?}");
        assert!(titles(&app).contains(&"Second title".to_owned()));
        frames_until_changed(&mut app, &file, &job("Third title"), |app| {
            library(app).mistakes.is_empty()
        });
        assert!(titles(&app).contains(&"Third title".to_owned()));
        // A job that is deleted is no longer on offer; another one is chosen then.
        fs::remove_file(&file).expect("deleted");
        frames_until(&mut app, |app| titles(app).len() == built_in + 1);
        let mut ui_state = app.world_mut().resource_mut::<UiState>();
        assert_eq!(ui_state.offer, 0);
        ui_state.library.wanted = Some(LibraryPlace::BuiltIn);
        frames_until(&mut app, |app| titles(app).len() == built_in);
    }

    /// A course that is one zip, put in the place of the one that is open as a program does that: written beside it and
    /// given its name.
    #[test]
    fn a_zip_that_is_replaced_is_read_anew_and_a_broken_one_leaves_what_was() {
        let folder = tempfile::tempdir().expect("a folder");
        let zip = folder.path().join("course.zip");
        let put = |bytes: &[u8]| {
            let beside = folder.path().join("being-written");
            fs::write(&beside, bytes).expect("written");
            fs::rename(&beside, &zip).expect("in its place");
        };
        put(&course(&job("First title")));
        let mut app = bench(&zip);
        assert!(titles(&app).contains(&"First title".to_owned()));
        put(&course(&job("Second title")));
        frames_until(&mut app, |app| {
            titles(app).contains(&"Second title".to_owned())
        });
        assert!(!titles(&app).contains(&"First title".to_owned()));
        put(b"no zip at all");
        frames_until(&mut app, |app| !library(app).mistakes.is_empty());
        assert!(titles(&app).contains(&"Second title".to_owned()));
        put(&course(&job("Third title")));
        frames_until(&mut app, |app| {
            titles(app).contains(&"Third title".to_owned())
        });
        assert!(library(&app).mistakes.is_empty());
    }

    /// A course of one job, as one zip.
    fn course(job: &str) -> Vec<u8> {
        use detent_content::{OwnFile, OwnPlace, pack_course};
        let manifest = "(format: 1, title: (en: \"One job\", es: \"Un trabajo\"), author: \"A. Instructor\", \
                        license: \"CC-BY-4.0\", version: \"1.0\")";
        let own = |place, file: &str, text: &str| OwnFile {
            place,
            file: file.to_owned(),
            bytes: text.as_bytes().to_owned(),
        };
        let files = [
            own(OwnPlace::Course, "course.ron", manifest),
            own(OwnPlace::Scenarios, "scenarios/own-job.ron", job),
        ];
        pack_course("course.zip", &files).expect("it is sound")
    }

    fn frames_until_changed(
        app: &mut App,
        file: &Path,
        text: &str,
        is_so: impl Fn(&App) -> bool,
    ) -> Duration {
        fs::write(file, text).expect("written");
        frames_until(app, is_so)
    }

    #[test]
    fn a_folder_that_is_none_is_told_and_changes_nothing() {
        let folder = tempfile::tempdir().expect("a folder");
        let app = bench(&folder.path().join("nowhere"));
        assert_eq!(library(&app).mistakes.len(), 1);
        assert_eq!(library(&app).place, LibraryPlace::BuiltIn);
    }

    /// What has been kept in the workshop follows its file; what was changed here too is not lost.
    #[test]
    fn a_job_on_the_workshops_bench_follows_its_file() {
        use crate::workshop::{KeptJob, OwnTextFolder, Workshop};
        use detent_content::ScenarioChange;
        let folder = tempfile::tempdir().expect("a folder");
        let own_jobs = OwnTextFolder::new(folder.path().to_owned());
        let builtin = Arc::new(ContentLibrary::builtin().expect("it is sound"));
        let file = folder.path().join("own-job.ron");
        fs::write(&file, job("First title")).expect("written");
        let mut open = Workshop::go_on("own-job", &job("First title"), &builtin).expect("readable");
        fs::write(&file, job("Second title")).expect("written");
        open.wait_for_proof(&builtin);
        assert!(open.proof().of_now().is_some());
        open.follow(&builtin, Some(&own_jobs));
        // What was proved in another library is proved no longer.
        assert!(open.proof().of_now().is_none());
        assert_eq!(open.scenario().title.en, "Second title");
        assert!(open.is_kept());
        open.change(&builtin, &ScenarioChange::Budget(321.0));
        fs::write(&file, job("Third title")).expect("written");
        open.follow(&builtin, Some(&own_jobs));
        assert_eq!(open.kept.last, Some(KeptJob::ChangedElsewhere));
        assert_eq!(open.scenario().title.en, "Second title");
        assert_eq!(open.scenario().budget, 321.0);
        assert!(!open.is_kept());
        assert!(open.keep(&own_jobs).is_some());
        let text = fs::read_to_string(&file).expect("there");
        assert_eq!(text, open.text());
    }
}
