//! When the window draws its next frame: soon while something moves, otherwise when somebody does
//! something. Whoever moves something asks for the next frame in each frame.

use bevy::prelude::*;
use bevy::render::view::screenshot::Screenshot;
use bevy::window::WindowEvent;
use bevy::winit::{UpdateMode, WinitSettings};
use bevy_egui::{EguiInput, EguiInputSet, EguiPreUpdateSet, egui};
use std::time::Duration;

/// Between two frames while something moves: sixty a second at most, so that no processor gets hot.
const MOVING: Duration = Duration::from_micros(16_600);
/// The same while the person works in another window.
const MOVING_UNFOCUSED: Duration = Duration::from_millis(33);
/// While nothing moves. Not `Duration::MAX`: `bevy_winit` adds it to an instant, and where that
/// overflows it sets no timeout at all and goes on as it did.
const RESTING: Duration = Duration::from_secs(3_600);
/// Frames after the last event: what was clicked passes through states, texts and two passes of egui
/// before it is seen.
const SETTLING_FRAMES: u8 = 4;

/// Longest frame that the clocks make good while something moves; after a longer one they have stood
/// still. A gesture at the machine is timed, so they keep up with a slow screen.
pub const LONGEST_FRAME: Duration = Duration::from_secs(3);

/// Whether the next frame is wanted soon.
#[derive(Resource, Default)]
pub struct NextFrame {
    asked: bool,
    settling: u8,
}

impl NextFrame {
    /// Something moves: the next frame is wanted soon.
    pub fn ask(&mut self) {
        self.asked = true;
    }
}

/// `bevy_egui` reports the modifier keys in every frame, and egui draws again after every event, so that
/// it would draw for ever. Only a change is passed on.
fn drop_unchanged_modifiers(
    mut inputs: Query<&mut EguiInput>,
    mut known: Local<Option<egui::Modifiers>>,
) {
    for mut input in &mut inputs {
        input.events.retain(|event| match event {
            egui::Event::ModifiersChanged(modifiers) => {
                known.replace(*modifiers) != Some(*modifiers)
            }
            _ => true,
        });
    }
}

/// What came from the window system is seen through.
fn settle(mut events: MessageReader<WindowEvent>, mut next: ResMut<NextFrame>) {
    if events.read().count() > 0 {
        next.settling = SETTLING_FRAMES;
    }
}

/// A picture of the window is taken in a later frame.
fn ask_for_screenshots(pictures: Query<(), With<Screenshot>>, mut next: ResMut<NextFrame>) {
    if !pictures.is_empty() {
        next.ask();
    }
}

/// At the end of a frame: how long to wait for the next.
fn choose_wait(
    mut next: ResMut<NextFrame>,
    mut settings: ResMut<WinitSettings>,
    mut clock: ResMut<Time<Virtual>>,
) {
    let soon = std::mem::take(&mut next.asked) || next.settling > 0;
    next.settling = next.settling.saturating_sub(1);
    let (focused, unfocused, longest) = if soon {
        let focused = UpdateMode::reactive(MOVING);
        let unfocused = UpdateMode::reactive_low_power(MOVING_UNFOCUSED);
        (focused, unfocused, LONGEST_FRAME)
    } else {
        let resting = UpdateMode::reactive_low_power(RESTING);
        // No clock goes on from where it stood as if the rest had been one long frame.
        (resting, resting, MOVING)
    };
    if (settings.focused_mode, settings.unfocused_mode) != (focused, unfocused) {
        (settings.focused_mode, settings.unfocused_mode) = (focused, unfocused);
    }
    if clock.max_delta() != longest {
        clock.set_max_delta(longest);
    }
}

/// Waits.
pub fn plugin(app: &mut App) {
    app.init_resource::<NextFrame>()
        .init_resource::<WinitSettings>()
        .add_systems(
            PreUpdate,
            (
                settle,
                drop_unchanged_modifiers
                    .after(EguiInputSet::WriteEguiEvents)
                    .in_set(EguiPreUpdateSet::ProcessInput),
            ),
        )
        .add_systems(Last, (ask_for_screenshots, choose_wait).chain());
}
