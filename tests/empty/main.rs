//! A window with the bench's plugins and nothing in it.

use bevy::prelude::*;
use bevy_egui::{EguiContexts, EguiPlugin, EguiPrimaryContextPass, egui};

#[cfg(target_family = "wasm")]
#[wasm_bindgen::prelude::wasm_bindgen]
extern "C" {
    #[wasm_bindgen(js_namespace = detentPage, js_name = firstFrame)]
    fn first_frame();
}

#[cfg(not(target_family = "wasm"))]
fn first_frame() {
    info!("the first frame is there");
}

fn hello(mut contexts: EguiContexts) -> Result {
    egui::Window::new("Empty").show(contexts.ctx_mut()?, |ui| ui.label("Empty"));
    Ok(())
}

fn count_frames(mut frame: Local<u32>) {
    *frame += 1;
    if *frame == 2 {
        first_frame();
    }
}

fn main() {
    App::new()
        .add_plugins(DefaultPlugins.set(WindowPlugin {
            primary_window: Some(Window {
                canvas: Some("#bench".to_owned()),
                fit_canvas_to_parent: true,
                prevent_default_event_handling: false,
                ..default()
            }),
            ..default()
        }))
        .add_plugins((EguiPlugin::default(), MeshPickingPlugin))
        .add_systems(Startup, |mut commands: Commands| {
            commands.spawn(Camera3d::default());
        })
        .add_systems(EguiPrimaryContextPass, hello)
        .add_systems(Last, count_frames)
        .run();
}
