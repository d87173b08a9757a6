//! Between egui and the accessibility interface of the window system, through AccessKit.

use crate::rest::NextFrame;
use bevy::a11y::{AccessibilityRequested, ActionRequest};
use bevy::prelude::*;
use bevy::window::WindowFocused;
use bevy_egui::{EguiContext, EguiInput, EguiPreUpdateSet, PrimaryEguiContext, egui};
use std::time::Duration;

/// Reading software says on another thread that it is there, soon after the window has got the focus; nothing wakes
/// the window then.
const AWAKE_AFTER_FOCUS: Duration = Duration::from_secs(3);

/// egui gathers its tree only for somebody.
fn gather_when_asked(
    requested: Res<AccessibilityRequested>,
    mut contexts: Query<&mut EguiContext, With<PrimaryEguiContext>>,
    mut gathers: Local<Option<bool>>,
    mut next: ResMut<NextFrame>,
) {
    let asked = requested.get();
    if *gathers == Some(asked) {
        return;
    }
    for mut context in &mut contexts {
        let context = context.get_mut();
        match asked {
            true => context.enable_accesskit(),
            false => context.disable_accesskit(),
        }
        context.request_repaint();
        *gathers = Some(asked);
        next.ask();
    }
}

/// What reading software asks for is done as if a hand did it.
fn take_requests(
    mut requests: MessageReader<ActionRequest>,
    mut inputs: Query<&mut EguiInput, With<PrimaryEguiContext>>,
    mut next: ResMut<NextFrame>,
) {
    for ActionRequest(request) in requests.read() {
        for mut input in &mut inputs {
            let request = egui::Event::AccessKitActionRequest(request.clone());
            input.events.push(request);
        }
        next.settle();
    }
}

/// Requests come in on another thread, which does not wake the window: while somebody may send some, it looks for
/// them.
fn look_for_requests(
    requested: Res<AccessibilityRequested>,
    time: Res<Time<Real>>,
    mut focused: MessageReader<WindowFocused>,
    mut awake: Local<Duration>,
    mut next: ResMut<NextFrame>,
) {
    *awake = awake.saturating_sub(time.delta());
    if focused.read().any(|window| window.focused) {
        *awake = AWAKE_AFTER_FOCUS;
    }
    if requested.get() || !awake.is_zero() {
        next.watch();
    }
}

pub(super) fn plugin(app: &mut App) {
    app.init_resource::<AccessibilityRequested>()
        .add_message::<ActionRequest>()
        .add_systems(
            PreUpdate,
            (
                gather_when_asked
                    .after(EguiPreUpdateSet::InitContexts)
                    .before(EguiPreUpdateSet::BeginPass),
                take_requests
                    .after(EguiPreUpdateSet::ProcessInput)
                    .before(EguiPreUpdateSet::BeginPass),
            ),
        )
        .add_systems(Update, look_for_requests);
}
