//! What stands on the screen, by name: for programs that drive the page as a person would.

use crate::pointing::Pick;
use crate::scene::grips::{GripKind, Outline, SceneGrips};
use crate::state::{BenchRes, Screen};
use bevy::prelude::*;
use bevy_egui::EguiOutput;
use bevy_egui::egui::accesskit::{Node, Role};
use std::fmt::Write;
use std::sync::{Mutex, PoisonError};

type Place = [f64; 4];

static NAMES: Mutex<Vec<(String, Place)>> = Mutex::new(Vec::new());
/// What has the keys, if anything that has a name.
static FOCUSED: Mutex<Option<(String, Place)>> = Mutex::new(None);
static SEEN: Mutex<String> = Mutex::new(String::new());

/// Left, top, right, bottom of each, the topmost first.
pub(super) fn where_is(label: &str) -> Vec<Place> {
    let names = NAMES.lock().unwrap_or_else(PoisonError::into_inner);
    let mut places: Vec<Place> = names
        .iter()
        .filter(|(name, _)| name == label)
        .map(|(_, place)| *place)
        .collect();
    places.sort_by(|a, b| a[1].total_cmp(&b[1]).then(a[0].total_cmp(&b[0])));
    places
}

/// All of them.
pub(super) fn labels() -> Vec<String> {
    let names = NAMES.lock().unwrap_or_else(PoisonError::into_inner);
    names.iter().map(|(name, _)| name.clone()).collect()
}

/// Label and place of what has the keys.
pub(super) fn focused() -> Option<(String, Place)> {
    let focused = FOCUSED.lock().unwrap_or_else(PoisonError::into_inner);
    focused.clone()
}

/// The last thing seen.
pub(super) fn seen() -> String {
    SEEN.lock().unwrap_or_else(PoisonError::into_inner).clone()
}

fn collect(outputs: Query<&EguiOutput>) {
    for output in &outputs {
        // Each update is the whole tree.
        let Some(update) = &output.platform_output.accesskit_update else {
            continue;
        };
        let mut names = NAMES.lock().unwrap_or_else(PoisonError::into_inner);
        let mut focused = FOCUSED.lock().unwrap_or_else(PoisonError::into_inner);
        names.clear();
        *focused = None;
        // A wrapped label is named once, not line by line.
        let whole = |node: &&Node| node.role() != Role::TextRun;
        for (id, node) in (update.nodes.iter()).filter(|(_, node)| whole(&node)) {
            if let (Some(label), Some(place)) = (node.label().or(node.value()), node.bounds()) {
                let place = [place.x0, place.y0, place.x1, place.y1];
                if *id == update.focus {
                    *focused = Some((label.to_owned(), place));
                }
                names.push((label.to_owned(), place));
            }
        }
    }
}

/// Knob and buttons are no panel's, but hands must find them too.
fn point_out_console(grips: Res<SceneGrips>) {
    let mut names = NAMES.lock().unwrap_or_else(PoisonError::into_inner);
    names.retain(|(name, _)| name != "dial" && !name.starts_with("button "));
    for grip in &grips.0 {
        let name = match grip.kind {
            GripKind::Pick(Pick::Button(button)) => format!("button {button}"),
            GripKind::Pick(Pick::Knob) => "dial".to_owned(),
            GripKind::Pick(Pick::Lid | Pick::Plug | Pick::Part(_)) | GripKind::Lamps => continue,
        };
        let Outline::Ring(middle, _) = grip.outline else {
            continue;
        };
        let (x, y) = (f64::from(middle.x), f64::from(middle.y));
        names.push((name, [x, y, x, y]));
    }
}

fn write_state(bench: Res<BenchRes>, screen: Res<State<Screen>>) {
    let view = bench.view();
    let machine = &view.machine;
    let mut text = String::new();
    // Writing to a string cannot fail.
    let _ = write!(
        text,
        r#"{{"screen":"{:?}","time_s":{},"dial":{},"code":{},"plugged":{},"lid_open":{},"cabinet_open":{},"readings":{},"waiting":{},"finished":{},"asked":{}}}"#,
        screen.get(),
        machine.time_s,
        machine.dial_position,
        machine.lamps.code,
        machine.plugged,
        machine.lid_open,
        view.cabinet_open,
        view.log.readings().len(),
        bench.wait_ticks,
        view.finished,
        bench.asked.is_some(),
    );
    *SEEN.lock().unwrap_or_else(PoisonError::into_inner) = text;
}

/// Names, and what is seen.
pub(super) fn plugin(app: &mut App) {
    app.add_systems(Last, (collect, point_out_console, write_state).chain());
}
