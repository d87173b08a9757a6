//! Between egui and the accessibility interface of the window system, through AccessKit.

use crate::rest::NextFrame;
use bevy::a11y::{
    AccessibilityRequested, AccessibilitySystems, ActionRequest, ManageAccessibilityUpdates,
};
use bevy::ecs::system::NonSendMarker;
use bevy::prelude::*;
use bevy::window::PrimaryWindow;
use bevy::winit::accessibility::{ACCESS_KIT_ADAPTERS, WinitActionRequestHandlers};
use bevy::winit::{EventLoopProxyWrapper, WinitUserEvent};
use bevy_egui::input::EguiInputEvent;
use bevy_egui::{
    EguiContext, EguiInputSet, EguiOutput, EguiPreUpdateSet, PrimaryEguiContext, egui,
};
use std::sync::{Arc, PoisonError};
use std::thread;
use std::time::Duration;

/// How often a thread looks whether reading software is there or wants something.
const LOOK_EVERY: Duration = Duration::from_millis(50);

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
        next.settle();
    }
}

/// What egui has gathered goes to the window system. Bevy's own tree, which knows nothing of the panels, stays out.
fn hand_tree_over(
    outputs: Query<&EguiOutput, (With<PrimaryEguiContext>, Changed<EguiOutput>)>,
    windows: Query<Entity, With<PrimaryWindow>>,
    mut bevys_own: ResMut<ManageAccessibilityUpdates>,
    _main_thread: NonSendMarker,
) {
    for output in &outputs {
        let Some(update) = &output.platform_output.accesskit_update else {
            continue;
        };
        bevys_own.set(false);
        ACCESS_KIT_ADAPTERS.with_borrow_mut(|adapters| {
            for window in &windows {
                if let Some(adapter) = adapters.get_mut(&window) {
                    adapter.update_if_active(|| update.clone());
                }
            }
        });
    }
}

/// What reading software asks for is done as if a hand did it.
fn take_requests(
    context: Single<Entity, With<PrimaryEguiContext>>,
    mut requests: MessageReader<ActionRequest>,
    mut events: MessageWriter<EguiInputEvent>,
) {
    let context = *context;
    events.write_batch(requests.read().map(|ActionRequest(request)| {
        let event = egui::Event::AccessKitActionRequest(request.clone());
        EguiInputEvent { context, event }
    }));
}

/// Requests are handed over at the end of a frame, and seen through in those after it.
fn see_requests_through(mut requests: MessageReader<ActionRequest>, mut next: ResMut<NextFrame>) {
    if requests.read().count() > 0 {
        next.settle();
    }
}

/// Reading software comes, goes and asks on a thread of its own, which does not wake a window that rests: another one
/// does.
fn wake_for_requests(
    handlers: Option<Res<WinitActionRequestHandlers>>,
    proxy: Option<Res<EventLoopProxyWrapper>>,
    requested: Res<AccessibilityRequested>,
    mut watches: Local<bool>,
) {
    let (Some(handlers), Some(proxy)) = (handlers, proxy) else {
        return;
    };
    let Some(handler) = handlers.values().next().filter(|_| !*watches) else {
        return;
    };
    *watches = true;
    let (handler, proxy) = (Arc::clone(handler), (**proxy).clone());
    let (requested, mut known) = (requested.clone(), false);
    thread::spawn(move || {
        loop {
            thread::sleep(LOOK_EVERY);
            let asks = {
                let handler = handler.lock().unwrap_or_else(PoisonError::into_inner);
                !handler.is_empty()
            };
            let now = requested.get();
            if (asks || now != known) && proxy.send_event(WinitUserEvent::WakeUp).is_err() {
                // The window is closed.
                return;
            }
            known = now;
        }
    });
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
                    .in_set(EguiPreUpdateSet::ProcessInput)
                    .in_set(EguiInputSet::ReadBevyMessages),
            ),
        )
        .add_systems(Last, hand_tree_over)
        .add_systems(Update, wake_for_requests)
        .add_systems(
            PostUpdate,
            see_requests_through.after(AccessibilitySystems::Update),
        );
}
