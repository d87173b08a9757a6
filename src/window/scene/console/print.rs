//! What is printed on the console's face: numbers and the ticks of a scale. While the scene is drawn small, the panels
//! draw the print over it, so that it can be read at all times.

use crate::camera::{MainCamera, SceneTarget, to_window};
use crate::scene::displayed::{DisplayedMachine, display};
use crate::scene::maker::Maker;
use crate::scene::paint::Paint;
use crate::scene::strokes::{Line, letters, letters_width, stroked};
use crate::state::{Screen, UiState, ViewKind};
use crate::tokens;
use bevy::prelude::*;
use bevy_egui::egui::Color32;

/// What print is made of in the scene, and its color in the window.
#[derive(Clone)]
pub struct Ink {
    /// In the scene.
    pub material: Handle<StandardMaterial>,
    color: Color32,
}

impl Ink {
    /// Pale, on glass and dark paint.
    pub fn pale(paint: &Paint) -> Ink {
        Ink {
            material: paint.print.clone(),
            color: tokens::CONSOLE_PRINT,
        }
    }

    /// Amber, for what comes first on a scale.
    pub fn amber(paint: &Paint) -> Ink {
        Ink {
            material: paint.print_amber.clone(),
            color: tokens::CONSOLE_AMBER,
        }
    }

    /// Dark, on steel and light plastic.
    pub fn dark(paint: &Paint) -> Ink {
        Ink {
            material: paint.ink.clone(),
            color: tokens::CONSOLE_INK,
        }
    }
}

/// Strokes on the plane of the place that they hang on, m, and their width, m.
#[derive(Component)]
struct Print {
    strokes: Vec<Line>,
    width_m: f32,
    color: Color32,
}

/// A printed stroke in the window, points.
pub struct PrintedStroke {
    /// Its points.
    pub points: Vec<Vec2>,
    /// Its width.
    pub width: f32,
    /// Its color.
    pub color: Color32,
}

/// Print for the panels to draw; none while the scene is sharp.
#[derive(Resource, Default)]
pub struct SharpPrint(pub Vec<PrintedStroke>);

/// Prints text, `height_m` tall.
pub fn text(
    make: &mut Maker,
    parent: Entity,
    text: &str,
    height_m: f32,
    ink: &Ink,
    place: Transform,
) {
    let (strokes, width_m) = (letters(text, height_m), letters_width(height_m));
    lay(make, parent, strokes, width_m, ink, place);
}

/// Prints a line.
pub fn stroke(
    make: &mut Maker,
    parent: Entity,
    points: &[Vec2],
    width_m: f32,
    ink: &Ink,
    place: Transform,
) {
    lay(make, parent, vec![points.to_vec()], width_m, ink, place);
}

/// Puts strokes on the face, in the scene and for the panels.
fn lay(
    make: &mut Maker,
    parent: Entity,
    strokes: Vec<Line>,
    width_m: f32,
    ink: &Ink,
    place: Transform,
) {
    make.add(parent, stroked(&strokes, width_m), &ink.material, place);
    let print = Print {
        strokes,
        width_m,
        color: ink.color,
    };
    let spot = make.group(Some(parent), place);
    make.commands.entity(spot).insert(print);
}

/// Where the print is in the window while the console is looked at and the scene is drawn small. An open lid stands
/// before the console: then the scene shows what is left of it.
fn sharpen(
    displayed: Res<DisplayedMachine>,
    lens: Res<SceneTarget>,
    ui_state: Res<UiState>,
    screen: Res<State<Screen>>,
    eye: Single<(&Camera, &GlobalTransform), With<MainCamera>>,
    prints: Query<(&Print, &GlobalTransform)>,
    mut sharp: ResMut<SharpPrint>,
) {
    sharp.0.clear();
    let console = *screen.get() == Screen::Bench && ui_state.view == ViewKind::Panel;
    if !lens.coarse || !console || displayed.lid_open {
        return;
    }
    let (camera, eye) = *eye;
    for (print, place) in &prints {
        let to = |point: Vec2| {
            let seen = camera.world_to_viewport(eye, place.transform_point(point.extend(0.0)));
            Some(to_window(camera, ui_state.stage, seen.ok()?))
        };
        for stroke in &print.strokes {
            let points: Vec<Vec2> = stroke.iter().filter_map(|point| to(*point)).collect();
            let beside = stroke
                .first()
                .and_then(|p| to(*p + Vec2::X * print.width_m));
            if let (Some(first), Some(beside)) = (points.first(), beside) {
                let width = first.distance(beside);
                sharp.0.push(PrintedStroke {
                    points,
                    width,
                    color: print.color,
                });
            }
        }
    }
}

/// Print.
pub fn plugin(app: &mut App) {
    app.init_resource::<SharpPrint>()
        .add_systems(Update, sharpen.after(display));
}
