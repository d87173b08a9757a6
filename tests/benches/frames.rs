//! CPU time of a frame and time to the first frame: the bench's window beside an empty one with the
//! same plugins, one after the other in one run. Needs a display; Linux only (it reads `/proc`).

#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    clippy::disallowed_macros,
    reason = "a benchmark looks at the clock"
)]

use bevy::app::AppExit;
use bevy::prelude::*;
use bevy_egui::{EguiPlugin, EguiPrimaryContextPass};
use detent_window::AppOptions;
use std::process::Command;
use std::time::{Duration, Instant};

/// Tells the child which window to open.
const CHILD: &str = "DETENT_FRAMES_CHILD";
/// Frames before measuring: shaders are compiled in the first ones.
const WARM_UP: u32 = 40;
/// Frames measured.
const FRAMES: u32 = 100;
const RUNS: usize = 3;
/// `CLK_TCK`, the unit of `/proc/*/stat` on Linux.
const TICKS_PER_S: f64 = 100.0;

fn main() {
    match std::env::var(CHILD).as_deref() {
        Ok("bench") => child(true),
        Ok(_) => child(false),
        Err(_) => parent(),
    }
}

fn parent() {
    if std::env::var_os("DISPLAY").is_none() && std::env::var_os("WAYLAND_DISPLAY").is_none() {
        println!("frames: skipped, there is no display");
        return;
    }
    let bench = measure("bench");
    let empty = measure("empty");
    println!("{:<34} {:>10} {:>10} {:>7}", "", "bench", "empty", "ratio");
    for (row, name) in [
        "first frame, s",
        "CPU a frame, ms",
        "CPU a frame without the rasteriser, ms",
        "wall a frame, ms",
    ]
    .iter()
    .enumerate()
    {
        println!(
            "{name:<38} {:>8.3} {:>8.3} {:>7.2}",
            bench[row],
            empty[row],
            bench[row] / empty[row]
        );
    }
}

/// Medians of several runs of one window.
fn measure(which: &str) -> [f64; 4] {
    let mut runs: Vec<[f64; 4]> = (0..RUNS)
        .map(|_| {
            let out = Command::new(std::env::current_exe().expect("this program"))
                .env(CHILD, which)
                .output()
                .expect("the child starts");
            let text = String::from_utf8_lossy(&out.stdout).into_owned();
            let line = text
                .lines()
                .find_map(|l| l.strip_prefix("measured "))
                .unwrap_or_else(|| {
                    panic!(
                        "{which} measured nothing:\n{text}\n{}",
                        String::from_utf8_lossy(&out.stderr)
                    )
                });
            let numbers: Vec<f64> = line
                .split(' ')
                .map(|n| n.parse().expect("a number"))
                .collect();
            numbers.try_into().expect("four numbers")
        })
        .collect();
    std::array::from_fn(|i| {
        runs.sort_by(|a, b| a[i].total_cmp(&b[i]));
        runs[RUNS / 2][i]
    })
}

/// CPU time of this process so far, s: all threads, and all but the software rasteriser's own.
fn cpu_s() -> (f64, f64) {
    let (mut all, mut ours) = (0.0, 0.0);
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
        if !head.contains("llvmpipe") {
            ours += spent;
        }
    }
    (all, ours)
}

#[derive(Resource)]
struct Watch {
    began: Instant,
    frame: u32,
    first: Duration,
    from: (Instant, f64, f64),
}

fn child(bench: bool) {
    let began = Instant::now();
    let options = AppOptions {
        start: Some((0, 71)),
        ..AppOptions::default()
    };
    let mut app = detent_window::window(&options);
    if bench {
        detent_window::furnish(&mut app, &options).expect("the built-in jobs");
    } else {
        app.add_plugins((EguiPlugin::default(), MeshPickingPlugin));
        app.add_systems(Startup, |mut commands: Commands| {
            commands.spawn(Camera3d::default());
        });
        app.add_systems(EguiPrimaryContextPass, || {});
    }
    app.insert_resource(Watch {
        began,
        frame: 0,
        first: Duration::ZERO,
        from: (began, 0.0, 0.0),
    });
    app.add_systems(First, watch);
    app.run();
}

/// The beginning of the second update is the end of the first frame.
fn watch(mut watch: ResMut<Watch>, mut exit: MessageWriter<AppExit>) {
    watch.frame += 1;
    if watch.frame == 2 {
        watch.first = watch.began.elapsed();
    }
    let (all, ours) = if [WARM_UP, WARM_UP + FRAMES].contains(&watch.frame) {
        cpu_s()
    } else {
        return;
    };
    if watch.frame == WARM_UP {
        watch.from = (Instant::now(), all, ours);
        return;
    }
    let each = 1000.0 / f64::from(FRAMES);
    println!(
        "measured {} {} {} {}",
        watch.first.as_secs_f64(),
        (all - watch.from.1) * each,
        (ours - watch.from.2) * each,
        watch.from.0.elapsed().as_secs_f64() * each,
    );
    exit.write(AppExit::Success);
}
