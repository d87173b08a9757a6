//! Pictures that the program itself draws: they have the size asked for, they are not blank, and
//! lit lamps are bright. They stay in the target folder to be looked at.
//!
//! They need a display and a graphics adapter (a software one will do). Without them they are
//! skipped and say so, except when `CI=true`: there a missing adapter is a failure.
#![cfg(feature = "window")]

use std::path::{Path, PathBuf};
use std::process::Command;

/// An 8-bit RGB picture.
struct Picture {
    width: usize,
    height: usize,
    rgb: Vec<[u8; 3]>,
}

impl Picture {
    fn read(path: &Path) -> Picture {
        let bytes = std::fs::read(path).expect("the program wrote the picture");
        let image = bevy::image::Image::from_buffer(
            &bytes,
            bevy::image::ImageType::Extension("png"),
            bevy::image::CompressedImageFormats::NONE,
            true,
            bevy::image::ImageSampler::Default,
            bevy::asset::RenderAssetUsages::MAIN_WORLD,
        )
        .expect("the picture is a PNG");
        let data = image.data.as_ref().expect("the picture has pixels");
        let (width, height) = (image.width() as usize, image.height() as usize);
        let depth = data.len() / (width * height);
        let rgb = data.chunks(depth).map(|p| [p[0], p[1], p[2]]).collect();
        Picture { width, height, rgb }
    }

    fn pixels(&self, x: std::ops::Range<usize>, y: std::ops::Range<usize>) -> Vec<[u8; 3]> {
        y.flat_map(|row| x.clone().map(move |col| row * self.width + col))
            .map(|i| self.rgb[i])
            .collect()
    }
}

/// Variance of the brightness, 0 for one flat colour.
fn variance(pixels: &[[u8; 3]]) -> f64 {
    let grey: Vec<f64> = pixels
        .iter()
        .map(|p| p.iter().map(|c| f64::from(*c)).sum::<f64>() / 3.0)
        .collect();
    let mean = grey.iter().sum::<f64>() / grey.len() as f64;
    grey.iter().map(|g| (g - mean) * (g - mean)).sum::<f64>() / grey.len() as f64
}

/// Pixels as bright and amber as a lit lamp's disc.
fn amber(pixels: &[[u8; 3]]) -> usize {
    pixels
        .iter()
        .filter(|[r, g, b]| *r > 235 && *g > 170 && *b < 215 && *r > *b + 30)
        .count()
}

/// Why no picture can be drawn here, if so.
fn cannot_draw(output: &str) -> bool {
    [
        "Unable to find a GPU",
        "NotFound",
        "failed to create event loop",
        "XOpenDisplay",
        "neither WAYLAND_DISPLAY",
    ]
    .iter()
    .any(|words| output.contains(words))
}

/// Draws one picture; none when there is nothing to draw with and that is allowed here.
fn draw(name: &str, args: &[&str]) -> Option<Picture> {
    let must = std::env::var("CI").is_ok_and(|ci| ci == "true");
    let shown = ["DISPLAY", "WAYLAND_DISPLAY"]
        .iter()
        .any(|v| std::env::var_os(v).is_some());
    if !shown {
        assert!(!must, "no display: start Xvfb and set DISPLAY");
        eprintln!("skipped: {name}: no display (set DISPLAY, for example to one of Xvfb)");
        return None;
    }
    let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join("pictures");
    std::fs::create_dir_all(&folder).expect("the target folder can be written");
    let path = folder.join(format!("{name}.png"));
    let output = Command::new(env!("CARGO_BIN_EXE_detent"))
        .args([
            "window",
            "--scenario",
            "standing-water",
            "--frames",
            "40",
            "--shot",
        ])
        .arg(&path)
        .args(args)
        .output()
        .expect("the program starts");
    let said = String::from_utf8_lossy(&output.stderr).into_owned()
        + &String::from_utf8_lossy(&output.stdout);
    if !output.status.success() && cannot_draw(&said) && !must {
        eprintln!("skipped: {name}: no graphics adapter: {said}");
        return None;
    }
    assert!(output.status.success(), "{name}: {said}");
    Some(Picture::read(&path))
}

#[test]
fn the_console_shows_its_lamps() {
    // Before service mode the lock lamp blinks; the picture is of the whole console, lit or not.
    let Some(picture) = draw("panel-en", &["--view", "panel", "--tab", "lamps"]) else {
        return;
    };
    assert_eq!((picture.width, picture.height), (1280, 720));
    let scene = picture.pixels(290..860, 60..650);
    assert!(
        variance(&scene) > 200.0,
        "the scene is flat: {}",
        variance(&scene)
    );
    // The service sheet's example lights five lamps of the eight.
    let sheet = picture.pixels(870..1270, 60..700);
    assert!(
        amber(&sheet) > 400,
        "lit lamps are not bright: {} pixels",
        amber(&sheet)
    );
}

#[test]
fn the_inside_is_drawn_in_spanish_at_another_size() {
    let args = [
        "--view", "cabinet", "--tab", "meter", "--lang", "es", "--size", "1366x768",
    ];
    let Some(picture) = draw("cabinet-es", &args) else {
        return;
    };
    assert_eq!((picture.width, picture.height), (1366, 768));
    let scene = picture.pixels(290..940, 60..700);
    assert!(
        variance(&scene) > 200.0,
        "the scene is flat: {}",
        variance(&scene)
    );
}

#[test]
fn the_eye_for_amber_tells_lit_from_dark() {
    assert_eq!(amber(&[[255, 200, 99], [40, 30, 20], [255, 255, 255]]), 1);
    assert!(variance(&[[9, 9, 9]; 4]) < 1e-9);
}
