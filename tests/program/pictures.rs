//! Pictures that the program itself draws of each board's console and cabinet: they have the size
//! asked for, they are not blank, and the lamps that are lit on the bench are bright in the picture,
//! in their colour and in their place, and no others. They stay in the target folder to be looked at.
//!
//! They need a display and a graphics adapter (a software one will do). Without them they are
//! skipped and say so, except when `CI=true`: there a missing adapter is a failure.

use detent_content::{ContentLibrary, ScenarioSource, read_script, script_line};
use detent_simulation::controller::{Board, Lamps, Routine, Signs};
use detent_simulation::interface::{Button, Pin, Side, Terminal};
use detent_simulation::units::Span;
use detent_training::bench::Bench;
use detent_training::bench::script::{Condition, ScriptStep, entry_steps, reset_steps};
use detent_training::bench::{Action, Grip, MeterMode};
use detent_training::lesson::set_up;
use std::path::{Path, PathBuf};
use std::process::Command;

/// The job that every picture is of: the machine stands in a fault hold.
const JOB: &str = "drain-code";
const SEED: u64 = 11;

/// An 8-bit RGB picture.
struct Picture {
    width: usize,
    height: usize,
    rgb: Vec<[u8; 3]>,
}

impl Picture {
    fn read(path: &Path) -> Picture {
        let bytes = std::fs::read(path).expect("the program wrote the picture");
        let image = image::load_from_memory(&bytes)
            .expect("the picture is a PNG")
            .to_rgb8();
        let (width, height) = (image.width() as usize, image.height() as usize);
        let rgb = image.pixels().map(|pixel| pixel.0).collect();
        Picture { width, height, rgb }
    }

    fn pixels(&self, x: std::ops::Range<usize>, y: std::ops::Range<usize>) -> Vec<[u8; 3]> {
        y.flat_map(|row| x.clone().map(move |col| row * self.width + col))
            .map(|i| self.rgb[i])
            .collect()
    }

    /// Pixels not farther than `reach` from a place.
    fn around(&self, (x, y): (f32, f32), reach: f32) -> Vec<[u8; 3]> {
        let range = |at: f32, end: usize| {
            let from = (at - reach).round().max(0.0) as usize;
            from..((at + reach).round() as usize + 1).min(end)
        };
        self.pixels(range(x, self.width), range(y, self.height))
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

/// Mean of each channel.
fn mean(pixels: &[[u8; 3]]) -> [f64; 3] {
    std::array::from_fn(|c| {
        pixels.iter().map(|p| f64::from(p[c])).sum::<f64>() / pixels.len() as f64
    })
}

/// What an eye makes of a lamp's lens.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Glow {
    Dark,
    Amber,
    Mint,
    Blue,
    Other,
}

/// The glow of a lens whose pixels have this mean: bright, and of which colour.
fn glow([r, g, b]: [f64; 3]) -> Glow {
    if r.max(g).max(b) < 150.0 {
        Glow::Dark
    } else if r > b + 25.0 && r >= g {
        Glow::Amber
    } else if g > r + 8.0 && g > b + 4.0 {
        Glow::Mint
    } else if b > r + 12.0 && b >= g {
        Glow::Blue
    } else {
        Glow::Other
    }
}

/// The glow in which the code lamps of a board light up.
fn lit_glow(board: &Board) -> Glow {
    match board.lamps.signs {
        Signs::Weights { .. } | Signs::Pictures { .. } | Signs::InTurn { .. } => Glow::Amber,
        Signs::Segments => Glow::Mint,
        Signs::Flashes { .. } => Glow::Blue,
    }
}

/// What the program says where it finds no graphics adapter.
const WITHOUT_CARD: &str = "drawn without a graphics card";

/// Whether no window can be opened here.
fn cannot_draw(output: &str) -> bool {
    [
        "failed to create event loop",
        "XOpenDisplay",
        "neither WAYLAND_DISPLAY",
    ]
    .iter()
    .any(|words| output.contains(words))
}

/// What draws, and what is drawn of the machine.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Drawing {
    /// The card, the scene.
    Scene,
    /// The card, a flat drawing.
    Flat,
    /// The processor, a flat drawing, since the program finds no card.
    Software,
}

impl Drawing {
    const ALL: [Drawing; 3] = [Drawing::Scene, Drawing::Flat, Drawing::Software];

    /// Name of a picture of this kind of a board.
    fn name(self, board: &str, kind: &str) -> String {
        match self {
            Drawing::Scene => format!("{board}-{kind}"),
            Drawing::Flat => format!("{board}-flat-{kind}"),
            Drawing::Software => format!("{board}-software-{kind}"),
        }
    }
}

/// One picture of a row: its name, the view and tab it is taken at, and the script before it.
struct Shot {
    name: String,
    view: &'static str,
    tab: &'static str,
    script: Vec<ScriptStep>,
}

fn folder() -> PathBuf {
    let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join("pictures");
    std::fs::create_dir_all(&folder).expect("the target folder can be written");
    folder
}

/// Draws a row of pictures in one run; false when there is nothing to draw with and that is allowed here.
fn draw(scenario: &str, shots: &[Shot], more: &[&str]) -> bool {
    draw_as(Drawing::Scene, scenario, shots, more)
}

/// The same, drawn in this way.
fn draw_as(drawing: Drawing, scenario: &str, shots: &[Shot], more: &[&str]) -> bool {
    let must = std::env::var("CI").is_ok_and(|ci| ci == "true");
    let shown = ["DISPLAY", "WAYLAND_DISPLAY"]
        .iter()
        .any(|v| std::env::var_os(v).is_some());
    if !shown {
        assert!(!must, "no display: start Xvfb and set DISPLAY");
        eprintln!("skipped: no display (set DISPLAY, for example to one of Xvfb)");
        return false;
    }
    let folder = folder();
    let mut command = Command::new(env!("CARGO_BIN_EXE_detent"));
    command.args([
        "window",
        "--scenario",
        scenario,
        "--seed",
        &SEED.to_string(),
    ]);
    for shot in shots {
        let lines: Vec<String> = shot.script.iter().map(script_line).collect();
        let script = folder.join(format!("{}.script", shot.name));
        std::fs::write(&script, lines.join("\n")).expect("the folder can be written");
        let path = folder.join(format!("{}.png", shot.name));
        command.args(["--view", shot.view, "--tab", shot.tab, "--shot"]);
        command.arg(path).arg("--script").arg(script);
    }
    match drawing {
        Drawing::Scene => {}
        Drawing::Flat => {
            command.arg("--flat");
        }
        Drawing::Software => {
            // Where Vulkan's loader looks for drivers.
            for variable in ["VK_DRIVER_FILES", "VK_ICD_FILENAMES"] {
                command.env(variable, "/nowhere");
            }
        }
    }
    let output = command.args(more).output().expect("the program starts");
    let said = String::from_utf8_lossy(&output.stderr).into_owned()
        + &String::from_utf8_lossy(&output.stdout);
    if drawing != Drawing::Software && said.contains(WITHOUT_CARD) {
        assert!(!must, "no graphics adapter: {said}");
        eprintln!("skipped: no graphics adapter: {said}");
        return false;
    }
    if !output.status.success() && cannot_draw(&said) && !must {
        eprintln!("skipped: no window: {said}");
        return false;
    }
    assert!(output.status.success(), "{scenario}: {said}");
    assert_eq!(drawing == Drawing::Software, said.contains(WITHOUT_CARD));
    true
}

fn picture(name: &str) -> Picture {
    Picture::read(&folder().join(format!("{name}.png")))
}

/// What the scene says stands where: the words of each line.
fn places(name: &str, kind: &str) -> Vec<Vec<String>> {
    let text = std::fs::read_to_string(folder().join(format!("{name}.places")));
    let text = text.expect("the program says what stands where");
    let lines = text.lines().filter_map(|line| line.strip_prefix(kind));
    lines
        .map(|line| line.split_whitespace().map(str::to_owned).collect())
        .collect()
}

fn number(word: &str) -> f32 {
    word.parse()
        .unwrap_or_else(|_| panic!("{word} is a number"))
}

/// The job at the board of this name, as a file of its own and as a bench.
fn job(content_library: &ContentLibrary, board: &Board) -> (PathBuf, ScenarioSource) {
    let theirs = content_library.scenario(JOB).expect("the job is built in");
    let mains = format!("mains: {:?}", board.mains[0]);
    let text = (theirs.text)
        .replace("board: \"arc-dial\"", &format!("board: \"{}\"", board.id))
        .replace("mains: V120Hz60", &mains);
    let path = folder().join(format!("{}.ron", board.id));
    std::fs::write(&path, text).expect("the folder can be written");
    let mine = content_library.scenario(&path.to_string_lossy());
    (path, mine.expect("the job fits the board"))
}

/// Does the steps on the bench too, so that it is known what the picture must show.
fn also(bench: &mut Bench, script: &[ScriptStep]) -> Lamps {
    for step in script {
        step.run(bench)
            .unwrap_or_else(|error| panic!("{}: {error}", script_line(step)));
    }
    bench.view().machine.lamps
}

/// Every lamp has the glow that the bench says it has; the names of those that are lit.
fn check_lamps(board: &Board, name: &str, lamps: Lamps) {
    let picture = picture(name);
    let places = places(name, "lamp ");
    let count = usize::from(board.lamps.signs.lamps()) + usize::from(board.lamps.lock_lamp);
    assert_eq!(places.len(), count, "{name}");
    for words in &places {
        let (at, radius) = ((number(&words[1]), number(&words[2])), number(&words[3]));
        let (lit, colour) = match words[0].strip_prefix("code.") {
            Some(bit) => {
                let bit: u16 = bit.parse().expect("a bit");
                (lamps.code & (1 << bit) != 0, lit_glow(board))
            }
            None => (lamps.lock, Glow::Amber),
        };
        assert!(
            (280.0..870.0).contains(&at.0) && (90.0..700.0).contains(&at.1),
            "{name}: {words:?}"
        );
        assert!(radius > 2.0, "{name}: {words:?} can be seen");
        let mean = mean(&picture.around(at, (radius * 0.5).max(1.0)));
        let expected = if lit { colour } else { Glow::Dark };
        assert_eq!(glow(mean), expected, "{name}: {words:?} {mean:?}");
    }
}

/// Console in a fault hold, in service mode, with a code and at rest; then the open cabinet.
#[track_caller]
fn check_board(id: &str, drawing: Drawing) {
    let content_library = ContentLibrary::builtin().expect("the built-in content is sound");
    let board = content_library
        .board(id)
        .expect("the board is built in")
        .clone();
    let (scenario, scenario_source) = job(&content_library, &board);
    let mut bench = set_up(
        &scenario_source.scenario,
        &content_library.library(&scenario_source.scenario),
        SEED,
    )
    .expect("the job can be set up");
    let mut shots: Vec<(Shot, Lamps)> = Vec::new();
    let mut shoot = |kind: &str, view, tab, script: Vec<ScriptStep>, lamps| {
        let name = drawing.name(id, kind);
        shots.push((
            Shot {
                name,
                view,
                tab,
                script,
            },
            lamps,
        ));
    };
    let rest = |ms| ScriptStep::Rest { ms };

    // A blinking lamp is pictured while it is lit.
    let until_lit = |bench: &mut Bench, script: &mut Vec<ScriptStep>| {
        for _ in 0..200 {
            let lamps = also(bench, &[rest(50)]);
            script.push(rest(50));
            if lamps != Lamps::default() {
                return lamps;
            }
        }
        panic!("{id}: no lamp was ever lit");
    };
    let mut script = vec![ScriptStep::Until {
        what: Condition::FaultHold,
        limit_s: 1,
    }];
    also(&mut bench, &script);
    let lamps = until_lit(&mut bench, &mut script);
    shoot("hold", "panel", "lamps", script, lamps);

    // Some boards keep their hold without power.
    let kept = Some(&board.resets).filter(|resets| resets.kept);
    let mut script: Vec<ScriptStep> = kept.map(reset_steps).unwrap_or_default();
    script.push(ScriptStep::PowerDown);
    let down = script.len();
    script.extend(entry_steps(&board.gesture));
    let powered = script.contains(&ScriptStep::Do(Action::Plug));
    if !powered {
        script.splice(
            down..down,
            [ScriptStep::Do(Action::Plug), ScriptStep::Wait { s: 5 }],
        );
    }
    script.push(ScriptStep::Until {
        what: Condition::ServiceReady,
        limit_s: 10,
    });
    also(&mut bench, &script);
    let lamps = until_lit(&mut bench, &mut script);
    shoot("service", "panel", "sheet", script, lamps);

    let recall = board.position_of(Routine::Recall);
    let to = recall.expect("codes can be recalled");
    let mut script = vec![
        ScriptStep::Point { to, every_ms: 300 },
        ScriptStep::Tap(Button::Start),
        rest(300),
    ];
    also(&mut bench, &script);
    let lamps = until_lit(&mut bench, &mut script);
    let stored = bench.view().machine.control.stored[0].code;
    let whole = board.lamps.signs.lit(stored, Span::ZERO);
    assert!(
        whole != 0 && lamps.code == whole,
        "{id}: {lamps:?} shows {stored}"
    );
    shoot("code", "panel", "codes", script, lamps);

    let script = vec![
        ScriptStep::PowerDown,
        ScriptStep::Do(Action::Plug),
        ScriptStep::Wait { s: 5 },
    ];
    let lamps = also(&mut bench, &script);
    shoot("idle", "panel", "menu", script, lamps);

    // The probes stand where they cover no connector.
    let pump = |terminal| Pin::Wire(terminal, Side::Load);
    let script = vec![
        ScriptStep::PowerDown,
        ScriptStep::Do(Action::OpenCabinet),
        ScriptStep::Wait { s: 60 },
        ScriptStep::Do(Action::Probe {
            mode: MeterMode::Ohms,
            red: pump(Terminal::Pump1),
            black: pump(Terminal::Pump2),
            grip: Grip::default(),
        }),
    ];
    let lamps = also(&mut bench, &script);
    assert_eq!(lamps, Lamps::default(), "{id}: no power, no lamp");
    shoot("cabinet", "cabinet", "meter", script, lamps);

    let (shots, lamps): (Vec<Shot>, Vec<Lamps>) = shots.into_iter().unzip();
    if !draw_as(drawing, &scenario.to_string_lossy(), &shots, &[]) {
        return;
    }
    for (shot, lamps) in shots.iter().zip(lamps) {
        let picture = picture(&shot.name);
        assert_eq!(
            (picture.width, picture.height),
            (1280, 720),
            "{}",
            shot.name
        );
        let scene = variance(&picture.pixels(290..860, 100..650));
        assert!(scene > 200.0, "{}: the scene is flat: {scene}", shot.name);
        if shot.view == "panel" {
            check_lamps(&board, &shot.name, lamps);
        }
    }
    match drawing {
        Drawing::Scene => check_connectors(&board, &drawing.name(id, "cabinet")),
        Drawing::Flat => {}
        Drawing::Software => check_like_the_card(id),
    }
}

/// What the processor draws is what the card draws, but for a shade that nobody sees.
#[track_caller]
fn check_like_the_card(id: &str) {
    for kind in ["hold", "service", "code", "idle", "cabinet"] {
        let [by_card, by_processor] =
            [Drawing::Flat, Drawing::Software].map(|drawing| picture(&drawing.name(id, kind)));
        let differences = by_card.rgb.iter().zip(&by_processor.rgb).map(|(a, b)| {
            let channels = a.iter().zip(b).map(|(a, b)| a.abs_diff(*b));
            channels.fold(0, u8::max)
        });
        let differences: Vec<u8> = differences.collect();
        let above = |least: u8| differences.iter().filter(|d| **d > least).count();
        println!(
            "{id}, {kind}: of {} pixels {} differ, {} by more than 3 of 255",
            differences.len(),
            above(0),
            above(3)
        );
        assert!(above(3) < differences.len() / 10_000, "{id}, {kind}");
    }
}

/// Every pin of the board's file stands in the picture, one beside the other, and between its board's
/// side and its harness's the plug is light.
fn check_connectors(board: &Board, name: &str) {
    let picture = picture(name);
    let pins = places(name, "pin ");
    let count: usize = board.connectors.iter().map(|c| c.pins.len()).sum();
    assert_eq!(pins.len(), 2 * count, "{name}");
    let mut last = 0.0;
    for (n, pair) in pins.chunks(2).enumerate() {
        let place = |words: &[String]| (number(&words[2]), number(&words[3]));
        let (board_side, harness) = (place(&pair[0]), place(&pair[1]));
        assert!(n == 0 || board_side.0 > last + 2.0, "{name}: {pair:?}");
        last = board_side.0;
        let at = |share: f32| {
            let mix = |a: f32, b: f32| a + (b - a) * share;
            (mix(harness.0, board_side.0), mix(harness.1, board_side.1))
        };
        let [r, g, b] = mean(&picture.around(at(0.3), 1.0));
        assert!(
            r.min(g).min(b) > 110.0,
            "{name}: no plug at {pair:?}: {r} {g} {b}"
        );
    }
}

#[test]
fn the_arc_dial_board_shows_what_the_bench_says() {
    for drawing in Drawing::ALL {
        check_board("arc-dial", drawing);
    }
}

#[test]
fn the_key_pad_board_shows_what_the_bench_says() {
    for drawing in Drawing::ALL {
        check_board("key-pad", drawing);
    }
}

#[test]
fn the_lone_lamp_board_shows_what_the_bench_says() {
    for drawing in Drawing::ALL {
        check_board("lone-lamp", drawing);
    }
}

#[test]
fn the_inside_is_drawn_in_spanish_at_another_size() {
    let shots = [Shot {
        name: "cabinet-es".to_owned(),
        view: "cabinet",
        tab: "meter",
        script: vec![ScriptStep::Rest { ms: 10 }],
    }];
    if !draw(JOB, &shots, &["--lang", "es", "--size", "1366x768"]) {
        return;
    }
    let picture = picture("cabinet-es");
    assert_eq!((picture.width, picture.height), (1366, 768));
    let scene = variance(&picture.pixels(290..940, 100..700));
    assert!(scene > 200.0, "the scene is flat: {scene}");
}

#[test]
fn the_eye_tells_lit_from_dark_and_colours_apart() {
    assert_eq!(glow([255.0, 235.0, 150.0]), Glow::Amber);
    assert_eq!(glow([200.0, 255.0, 225.0]), Glow::Mint);
    assert_eq!(glow([190.0, 225.0, 255.0]), Glow::Blue);
    assert_eq!(glow([255.0, 255.0, 255.0]), Glow::Other);
    assert_eq!(glow([60.0, 58.0, 52.0]), Glow::Dark);
    assert!(variance(&[[9, 9, 9]; 4]) < 1e-9);
    assert!(variance(&[[0, 0, 0], [200, 200, 200]]) > 200.0);
}

/// Practice and progress of an invented learner, in both languages and a tablet's size too. There is no machine on them,
/// so that the processor draws them much sooner.
#[test]
fn practice_and_progress_are_drawn() {
    for (tab, language, size) in [
        ("practice", "en", (1280, 720)),
        ("progress", "es", (1366, 768)),
        ("progress", "en", (820, 1180)),
    ] {
        let name = format!("{tab}-{language}-{}", size.0);
        let shots = [Shot {
            name: name.clone(),
            view: "machine",
            tab,
            script: vec![ScriptStep::Rest { ms: 10 }],
        }];
        let asked = format!("{}x{}", size.0, size.1);
        let more = ["--lang", language, "--size", &asked];
        if !draw_as(Drawing::Software, JOB, &shots, &more) {
            return;
        }
        let picture = picture(&name);
        assert_eq!((picture.width, picture.height), size, "{name}");
        let (width, height) = size;
        for (x, y) in [(0, 0), (1, 0), (0, 1), (1, 1)] {
            let across = x * width / 2..(x + 1) * width / 2;
            let down = y * height / 2..(y + 1) * height / 2;
            let quarter = variance(&picture.pixels(across, down));
            assert!(quarter > 60.0, "{name}: a quarter is empty: {quarter}");
        }
    }
}

/// Every drill, asked and answered, one language each way; those with a console in the scene too.
#[test]
fn each_drill_is_drawn() {
    const DRILLS: [(&str, &str); 9] = [
        ("drill-entry", "drill-entry-answered"),
        ("drill-lamps", "drill-lamps-answered"),
        ("drill-meter", "drill-meter-answered"),
        ("drill-look-up", "drill-look-up-answered"),
        ("drill-next-test", "drill-next-test-answered"),
        ("drill-part", "drill-part-answered"),
        ("drill-safe-work", "drill-safe-work-answered"),
        ("drill-hazard", "drill-hazard-answered"),
        ("drill-proof", "drill-proof-answered"),
    ];
    let asked = DRILLS.map(|(asked, _)| asked);
    let answered = DRILLS.map(|(_, answered)| answered);
    for (drawing, language, tabs) in [
        (Drawing::Scene, "en", &answered[..2]),
        (Drawing::Software, "en", &answered[..]),
        (Drawing::Software, "es", &asked[..]),
    ] {
        let shots: Vec<Shot> = (tabs.iter())
            .map(|tab| Shot {
                name: drawing.name(tab, language),
                view: "machine",
                tab,
                script: vec![ScriptStep::Rest { ms: 10 }],
            })
            .collect();
        if !draw_as(drawing, JOB, &shots, &["--lang", language]) {
            return;
        }
        let mut seen: Vec<Vec<[u8; 3]>> = Vec::new();
        for shot in &shots {
            let picture = picture(&shot.name);
            let (width, height) = (picture.width, picture.height);
            assert_eq!((width, height), (1280, 720), "{}", shot.name);
            for half in [0..width / 2, width / 2..width] {
                let told = variance(&picture.pixels(half, 60..height / 2));
                assert!(told > 60.0, "{}: a half is empty: {told}", shot.name);
            }
            let all = picture.pixels(0..width, 0..height);
            assert!(!seen.contains(&all), "{} looks like another", shot.name);
            seen.push(all);
        }
    }
}

/// A finished job thought over, in both languages and at a tablet's size too.
#[test]
fn the_result_is_drawn() {
    let script = include_str!("../scripts/classic-mistakes.script");
    let steps = read_script("classic-mistakes.script", script.as_bytes()).expect("a good script");
    let steps: Vec<ScriptStep> = steps.into_iter().map(|(_, step)| step).collect();
    for (language, size) in [("en", (1280, 720)), ("es", (820, 1180))] {
        let name = format!("result-{language}");
        let shots = [Shot {
            name: name.clone(),
            view: "machine",
            tab: "score",
            script: steps.clone(),
        }];
        let asked = format!("{}x{}", size.0, size.1);
        let more = ["--lang", language, "--size", &asked];
        if !draw_as(Drawing::Software, JOB, &shots, &more) {
            return;
        }
        let picture = picture(&name);
        assert_eq!((picture.width, picture.height), size, "{name}");
        // Bars of the cause that it was, in the colour that says so.
        let green = |p: &&[u8; 3]| p[1] > 190 && p[0] < 160 && p[2] < 190;
        let all = picture.pixels(0..size.0, 0..size.1);
        let lit = all.iter().filter(green).count();
        assert!(lit > 1500, "{name}: {lit} green pixels");
    }
}
