//! What a frame of the bench costs beside an empty scene with the same plugins, in one run.
//!
//! `cargo bench -p detent-window --bench frames` opens windows, one after the other: first frame, processor
//! time and allocations of a frame while the scene moves, and both at rest. Needs a display. Where our own
//! code allocates is listed with `--own`; that wants names:
//! `RUST_BACKTRACE=0 cargo bench --profile dev … -- --own`.
//!
//! `cargo bench -p detent-window --bench frames -- --offscreen` draws every view into textures, as fast as
//! it can: frames a second, processor time of a frame, and time on the graphics card where the driver has
//! timestamps. Needs a graphics driver and no display.
//!
//! Linux only: processor time is read from `/proc`.

#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    clippy::disallowed_macros,
    reason = "a benchmark looks at the clock"
)]

use bevy::app::{AppExit, PluginsState};
use bevy::camera::{ImageRenderTarget, RenderTarget};
use bevy::diagnostic::DiagnosticsStore;
use bevy::prelude::*;
use bevy::render::diagnostic::RenderDiagnosticsPlugin;
use bevy::render::render_resource::TextureFormat;
use bevy::render::renderer::RenderAdapterInfo;
use bevy::render::{Render, RenderApp};
use bevy_egui::{EguiPlugin, EguiPrimaryContextPass};
use detent_simulation::interface::Direction;
use detent_training::bench::Action;
use detent_training::bench::script::ScriptStep;
use detent_window::AppOptions;
use detent_window::state::{BenchRes, UiState, ViewKind};
use std::alloc::{GlobalAlloc, Layout, System};
use std::backtrace::Backtrace;
use std::cell::Cell;
use std::collections::BTreeMap;
use std::process::Command;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::sync::{Mutex, PoisonError};
use std::time::{Duration, Instant};

/// Counts what is allocated.
struct Counting;

static ALLOCATIONS: AtomicU64 = AtomicU64::new(0);

/// Whether each allocation's call stack is kept, and those kept.
static TRACING: AtomicBool = AtomicBool::new(false);
static TRACES: Mutex<Vec<Backtrace>> = Mutex::new(Vec::new());

thread_local! {
    /// What a trace itself allocates is not traced.
    static IN_TRACE: Cell<bool> = const { Cell::new(false) };
}

fn count() {
    ALLOCATIONS.fetch_add(1, Ordering::Relaxed);
    if TRACING.load(Ordering::Relaxed) && !IN_TRACE.replace(true) {
        let trace = Backtrace::force_capture();
        TRACES
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .push(trace);
        IN_TRACE.set(false);
    }
}

#[allow(
    unsafe_code,
    reason = "the trait is unsafe; every call goes on to the system's allocator"
)]
// SAFETY: each method hands its arguments on to `System` unchanged.
unsafe impl GlobalAlloc for Counting {
    unsafe fn alloc(&self, layout: Layout) -> *mut u8 {
        count();
        unsafe { System.alloc(layout) }
    }

    unsafe fn dealloc(&self, place: *mut u8, layout: Layout) {
        unsafe { System.dealloc(place, layout) }
    }

    unsafe fn realloc(&self, place: *mut u8, layout: Layout, size: usize) -> *mut u8 {
        count();
        unsafe { System.realloc(place, layout, size) }
    }
}

#[global_allocator]
static COUNTING: Counting = Counting;

/// Tells the child what to draw.
const CHILD: &str = "DETENT_FRAMES_CHILD";
/// Frames before measuring: shaders are compiled in the first ones.
const WARM_UP: u32 = 60;
/// Frames measured.
const FRAMES: u32 = 100;
/// Frames traced: two turns of the knob, to and fro.
const TRACED_FRAMES: u32 = 24;
/// Runs of each window; the median counts.
const RUNS: usize = 3;
/// How long a window may take to come to rest, and how long its rest is measured.
const SETTLING: Duration = Duration::from_secs(12);
const REST: Duration = Duration::from_secs(10);
/// Offscreen: how long to warm up and to measure, and the size of the picture, pixels.
const OFFSCREEN_WARM_UP: Duration = Duration::from_secs(10);
const OFFSCREEN: Duration = Duration::from_secs(10);
const SIZE: (u32, u32) = (1920, 1080);
/// `CLK_TCK`, the unit of `/proc/*/stat` on Linux.
const TICKS_PER_S: f64 = 100.0;

/// What is drawn.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Scene {
    Empty,
    View(ViewKind),
    /// The machine drawn flat, by the panels.
    Flat,
    /// The same, drawn on the processor.
    Software,
}

/// Every scene by name, the empty one first.
const SCENES: [(&str, Scene); 6] = [
    ("empty", Scene::Empty),
    ("machine", Scene::View(ViewKind::Machine)),
    ("console", Scene::View(ViewKind::Panel)),
    ("cabinet", Scene::View(ViewKind::Cabinet)),
    ("flat", Scene::Flat),
    ("software", Scene::Software),
];

fn main() {
    let offscreen = std::env::args().any(|arg| arg == "--offscreen");
    if std::env::args().any(|arg| arg == "--own") {
        return list_own_allocations();
    }
    match std::env::var(CHILD) {
        Ok(name) => {
            let (_, scene) = (SCENES.into_iter())
                .find(|(known, _)| *known == name)
                .expect("the parent names a scene");
            if offscreen {
                draw_offscreen(scene);
            } else {
                open_window(scene);
            }
        }
        Err(_) if offscreen => compare_offscreen(),
        Err(_) => compare_windows(),
    }
}

/// Runs this program again for one scene; what it measured, by name, and all it said.
fn run(name: &str, offscreen: bool) -> (BTreeMap<String, f64>, String) {
    let out = Command::new(std::env::current_exe().expect("this program"))
        .args(offscreen.then_some("--offscreen"))
        .env(CHILD, name)
        .output()
        .expect("the child starts");
    let text = String::from_utf8_lossy(&out.stdout).into_owned();
    let measured: BTreeMap<String, f64> = (text.lines())
        .filter_map(|line| line.strip_prefix("measured "))
        .filter_map(|line| {
            let (name, number) = line.rsplit_once(' ')?;
            Some((name.to_owned(), number.parse().ok()?))
        })
        .collect();
    assert!(
        !measured.is_empty(),
        "{name} measured nothing:\n{text}\n{}",
        String::from_utf8_lossy(&out.stderr)
    );
    (measured, text)
}

fn measured(name: &str, number: f64) {
    println!("measured {name} {number}");
}

/// What the thread that draws calls itself, so that it can be told from the driver's threads.
const DRAWS: &str = "draws";

/// Names the thread that draws, unless it is the first one. Wants the whole world: other systems may run in any thread.
fn name_drawing_thread(_: &mut World, mut named: Local<bool>) {
    if !std::mem::replace(&mut *named, true) && std::thread::current().name() != Some("main") {
        std::fs::write("/proc/thread-self/comm", DRAWS).expect("a thread may name itself");
    }
}

/// Processor time of this process so far, s: all threads, and all but those of a software rasteriser. Those are
/// `llvmpipe-*`, which fill in the pixels, and the driver's threads without a name of their own, which bear the
/// process's: they run the vertex shaders and sort the triangles. Our threads are the first one, the one that
/// draws, and those of Bevy's pools, which all have names.
fn cpu_s() -> (f64, f64) {
    let (mut all, mut ours) = (0.0, 0.0);
    let process = std::fs::read_to_string("/proc/self/comm").expect("Linux");
    let first = std::process::id().to_string();
    for task in std::fs::read_dir("/proc/self/task")
        .expect("Linux")
        .flatten()
    {
        let Ok(stat) = std::fs::read_to_string(task.path().join("stat")) else {
            continue;
        };
        let Some((head, tail)) = stat.rsplit_once(") ") else {
            continue;
        };
        let fields: Vec<f64> = tail.split(' ').map(|f| f.parse().unwrap_or(0.0)).collect();
        let spent = (fields[11] + fields[12]) / TICKS_PER_S;
        all += spent;
        let Some((id, name)) = head.split_once(" (") else {
            continue;
        };
        let rasterises =
            name.starts_with("llvmpipe") || (name == process.trim_end() && id != first);
        if !rasterises {
            ours += spent;
        }
    }
    (all, ours)
}

/// Time, processor time and allocations, so far or in between.
#[derive(Clone, Copy)]
struct Spent {
    at: Instant,
    all_s: f64,
    ours_s: f64,
    allocations: u64,
}

impl Spent {
    fn now() -> Spent {
        let (all_s, ours_s) = cpu_s();
        Spent {
            at: Instant::now(),
            all_s,
            ours_s,
            allocations: ALLOCATIONS.load(Ordering::Relaxed),
        }
    }

    /// Since then, for each of so many frames.
    fn measure(self, frames: u32) {
        let now = Spent::now();
        let each = 1.0 / f64::from(frames.max(1));
        let ms = 1000.0 * each;
        measured(
            "wall a frame, ms",
            now.at.duration_since(self.at).as_secs_f64() * ms,
        );
        measured("CPU a frame, ms", (now.all_s - self.all_s) * ms);
        measured(
            "CPU a frame without the rasteriser, ms",
            (now.ours_s - self.ours_s) * ms,
        );
        measured(
            "allocations a frame",
            (now.allocations - self.allocations) as f64 * each,
        );
    }
}

/// A window with the bench in this view, or with an empty scene.
fn window(options: &AppOptions, scene: Scene) -> App {
    let mut app = match scene {
        Scene::View(_) | Scene::Flat | Scene::Software => {
            detent_window::bench_window(options).expect("the built-in jobs")
        }
        Scene::Empty => {
            let mut app = detent_window::window(options);
            fill(&mut app, options, scene);
            app
        }
    };
    watch_drawing(&mut app);
    app
}

/// Has the thread that draws name itself, where there is a renderer: without one it is the first.
fn watch_drawing(app: &mut App) {
    if let Some(renderer) = app.get_sub_app_mut(RenderApp) {
        renderer.add_systems(Render, name_drawing_thread);
    }
}

/// The bench in this view, or an empty scene.
fn fill(app: &mut App, options: &AppOptions, scene: Scene) {
    match scene {
        Scene::View(_) | Scene::Flat | Scene::Software => {
            detent_window::add_bench(app, options).expect("the built-in jobs");
        }
        Scene::Empty => {
            app.add_plugins((EguiPlugin::default(), MeshPickingPlugin))
                .add_systems(Startup, |mut commands: Commands| {
                    commands.spawn(Camera3d::default());
                })
                .add_systems(EguiPrimaryContextPass, || {});
        }
    }
}

fn options(scene: Scene) -> AppOptions {
    let mut options = AppOptions {
        start: Some((0, 71)),
        flat: Some(matches!(scene, Scene::Flat | Scene::Software)),
        software: scene == Scene::Software,
        ..AppOptions::default()
    };
    if let Scene::View(view) = scene {
        options.view = view;
        if view == ViewKind::Cabinet {
            options.script = [Action::Unplug, Action::OpenCabinet]
                .map(|action| (0, ScriptStep::Do(action)))
                .to_vec();
        }
    }
    options
}

/// Turns the knob to and fro, so that the scene never rests.
fn keep_moving(bench: Option<ResMut<BenchRes>>, mut frame: Local<u32>) {
    *frame += 1;
    if let Some(mut bench) = bench
        && frame.is_multiple_of(12)
    {
        let way = if frame.is_multiple_of(24) {
            Direction::Right
        } else {
            Direction::Left
        };
        bench.push(Action::Detent(way));
    }
}

/// The bench's clock stands without the focus, which a display without a window manager gives nobody.
fn look(mut windows: Query<&mut Window>) {
    for mut window in &mut windows {
        window.bypass_change_detection().focused = true;
    }
}

// Windows.

fn compare_windows() {
    if std::env::var_os("DISPLAY").is_none() && std::env::var_os("WAYLAND_DISPLAY").is_none() {
        println!("frames: skipped, there is no display");
        return;
    }
    let mut columns = Vec::new();
    let names = ["machine", "flat", "software", "empty"];
    for name in names {
        let runs: Vec<_> = (0..RUNS).map(|_| run(name, false).0).collect();
        let median = |row: &String| {
            let mut numbers: Vec<f64> = runs
                .iter()
                .filter_map(|run| run.get(row).copied())
                .collect();
            numbers.sort_by(f64::total_cmp);
            (row.clone(), numbers[numbers.len() / 2])
        };
        columns.push(runs[0].keys().map(median).collect::<BTreeMap<_, _>>());
    }
    let (last, compared) = names.split_last().expect("the empty scene");
    print!("{:<40}", "");
    compared
        .iter()
        .for_each(|name| print!(" {name:>10} {:>7}", "ratio"));
    println!(" {last:>10}");
    for row in columns[0].keys() {
        print!("{row:<40}");
        let empty = columns[compared.len()].get(row);
        for column in &columns[..compared.len()] {
            let number = column[row];
            print!(" {number:>10.3}");
            match empty {
                Some(empty) => print!(" {:>7.2}", number / empty),
                None => print!(" {:>7}", "–"),
            }
        }
        match empty {
            Some(empty) => println!(" {empty:>10.3}"),
            None => println!(" {:>10}", "–"),
        }
    }
}

#[derive(Resource)]
struct Watch {
    began: Instant,
    frame: u32,
    from: Option<Spent>,
    rests: bool,
}

/// Frames drawn so far, for whoever watches the rest.
static DRAWN: AtomicU64 = AtomicU64::new(0);

fn open_window(scene: Scene) {
    let began = Instant::now();
    let options = options(scene);
    let mut app = window(&options, scene);
    app.insert_resource(Watch {
        began,
        frame: 0,
        from: None,
        rests: false,
    })
    .add_systems(First, (watch, look))
    .add_systems(
        PreUpdate,
        keep_moving.run_if(|watch: Res<Watch>| !watch.rests),
    );
    app.run();
}

// Our own allocations.

/// Opens the bench and says where our code allocates while the scene moves. With `RUST_BACKTRACE=0`, or
/// the drivers' own traces wait for ours for ever.
fn list_own_allocations() {
    let options = options(Scene::View(ViewKind::Machine));
    let mut app = window(&options, Scene::View(ViewKind::Machine));
    app.add_systems(First, (trace, look))
        .add_systems(PreUpdate, keep_moving);
    app.run();
}

fn trace(mut frame: Local<u32>) {
    *frame += 1;
    if *frame == WARM_UP {
        TRACING.store(true, Ordering::Relaxed);
    }
    if *frame < WARM_UP + TRACED_FRAMES {
        return;
    }
    TRACING.store(false, Ordering::Relaxed);
    let traces = std::mem::take(&mut *TRACES.lock().unwrap_or_else(PoisonError::into_inner));
    let mut places = BTreeMap::<String, u32>::new();
    for place in traces.iter().filter_map(own_place) {
        *places.entry(place).or_default() += 1;
    }
    let each = |count: u32| f64::from(count) / f64::from(TRACED_FRAMES);
    println!(
        "{:.1} allocations a frame, of them in our own code {:.1}:",
        traces.len() as f64 / f64::from(TRACED_FRAMES),
        each(places.values().sum())
    );
    let mut places: Vec<_> = places.into_iter().collect();
    places.sort_by_key(|(_, count)| std::cmp::Reverse(*count));
    for (place, count) in places {
        println!("{:>8.2}  {place}", each(count));
    }
    std::process::exit(0);
}

/// The function of ours, if it was one, that asked the standard library for memory.
fn own_place(trace: &Backtrace) -> Option<String> {
    let text = trace.to_string();
    let mut lines = text.lines().map(str::trim).peekable();
    while let Some(line) = lines.next() {
        let Some((_, function)) = line.split_once(": ") else {
            continue;
        };
        let place = lines
            .next_if(|next| next.starts_with("at "))
            .unwrap_or_default();
        // Without names of crates where it was inlined, so the place says whose it is.
        let bare = function.trim_start_matches(['<', '&', '_']);
        let standard = ["std:", "core:", "alloc:", "rust_", "rustc", "hashbrown:"];
        if standard.iter().any(|name| bare.starts_with(name))
            || place.contains("/library/")
            || place.contains("/benches/frames.rs")
        {
            continue;
        }
        return place
            .strip_prefix("at ./src/")
            .map(|place| format!("{place} in {function}"));
    }
    None
}

/// The beginning of the second update is the end of the first frame.
fn watch(
    mut watch: ResMut<Watch>,
    ui_state: Option<ResMut<UiState>>,
    mut exit: MessageWriter<AppExit>,
) {
    watch.frame += 1;
    DRAWN.fetch_add(1, Ordering::Relaxed);
    if watch.frame == 2 {
        measured("first frame, s", watch.began.elapsed().as_secs_f64());
    }
    if watch.frame == WARM_UP {
        watch.from = Some(Spent::now());
    }
    if watch.frame == WARM_UP + FRAMES {
        if let Some(from) = watch.from {
            from.measure(FRAMES);
        }
        match ui_state {
            // The machine's clock stands; so does everything else soon.
            Some(mut ui_state) => {
                ui_state.speed = 0;
                watch.rests = true;
                std::thread::spawn(watch_rest);
            }
            None => {
                exit.write(AppExit::Success);
            }
        }
    }
}

/// From another thread: a window at rest draws no frame that could look at anything.
fn watch_rest() {
    std::thread::sleep(SETTLING);
    let (before, drawn) = (Spent::now(), DRAWN.load(Ordering::Relaxed));
    std::thread::sleep(REST);
    let after = Spent::now();
    let frames = DRAWN.load(Ordering::Relaxed) - drawn;
    let share = (after.all_s - before.all_s) / REST.as_secs_f64();
    measured("at rest: CPU, % of a core", share * 100.0);
    measured("at rest: frames in 10 s", frames as f64);
    measured(
        "at rest: allocations in 10 s",
        (after.allocations - before.allocations) as f64,
    );
    std::process::exit(0);
}

// Textures.

fn compare_offscreen() {
    // The processor draws no textures.
    let scenes = SCENES.map(|(name, _)| name);
    let scenes = scenes.into_iter().filter(|name| *name != "software");
    let runs: Vec<_> = scenes.clone().map(|name| run(name, true)).collect();
    if let Some(adapter) = runs[0].1.lines().find_map(|l| l.strip_prefix("adapter ")) {
        println!("{adapter}, {} x {} pixels", SIZE.0, SIZE.1);
    }
    print!("{:<40}", "");
    for name in scenes {
        print!(" {name:>10}");
    }
    println!();
    let mut rows: Vec<&String> = runs.iter().flat_map(|(run, _)| run.keys()).collect();
    rows.sort();
    rows.dedup();
    for row in rows {
        print!("{row:<40}");
        for (run, _) in &runs {
            match run.get(row) {
                Some(number) => print!(" {number:>10.3}"),
                None => print!(" {:>10}", "–"),
            }
        }
        println!();
    }
}

/// The camera that would draw into the window draws into a picture.
fn draw_into_picture(mut images: ResMut<Assets<Image>>, mut cameras: Query<&mut RenderTarget>) {
    for mut target in &mut cameras {
        if matches!(*target, RenderTarget::Window(_)) {
            let image = images.add(Image::new_target_texture(
                SIZE.0,
                SIZE.1,
                TextureFormat::Rgba8UnormSrgb,
                None,
            ));
            *target = RenderTarget::Image(ImageRenderTarget::from(image));
        }
    }
}

fn draw_offscreen(scene: Scene) {
    let mut options = options(scene);
    options.size = SIZE;
    let mut app = detent_window::without_window_system(&options, true);
    app.add_plugins(RenderDiagnosticsPlugin);
    fill(&mut app, &options, scene);
    watch_drawing(&mut app);
    app.add_systems(PostStartup, draw_into_picture)
        .add_systems(PreUpdate, keep_moving);
    while app.plugins_state() == PluginsState::Adding {
        bevy::tasks::tick_global_task_pools_on_main_thread();
    }
    app.finish();
    app.cleanup();
    let began = Instant::now();
    while began.elapsed() < OFFSCREEN_WARM_UP {
        app.update();
    }
    if let Some(adapter) = app.world().get_resource::<RenderAdapterInfo>() {
        println!("adapter {} ({})", adapter.name, adapter.driver_info);
    }
    let (from, mut frames) = (Spent::now(), 0);
    let mut on_card: BTreeMap<String, f64> = BTreeMap::new();
    while from.at.elapsed() < OFFSCREEN {
        app.update();
        frames += 1;
        for diagnostic in app.world().resource::<DiagnosticsStore>().iter() {
            let path = diagnostic.path().as_str();
            if let (Some(span), Some(value)) =
                (path.strip_suffix("/elapsed_gpu"), diagnostic.value())
            {
                *on_card.entry(span.to_owned()).or_default() += value;
            }
        }
    }
    from.measure(frames);
    let seconds = from.at.elapsed().as_secs_f64();
    measured("frames a second", f64::from(frames) / seconds);
    // A span within another is counted with that.
    let outermost = on_card.iter().filter(|(span, _)| {
        let within = |other: &&String| span.starts_with(&format!("{other}/"));
        !on_card.keys().any(|other| within(&other))
    });
    let mut sum = None;
    for (span, ms) in outermost {
        let each = ms / f64::from(frames);
        measured(&format!("on the card: {span}, ms"), each);
        *sum.get_or_insert(0.0) += each;
    }
    if let Some(sum) = sum {
        measured("on the card, ms", sum);
    }
}
