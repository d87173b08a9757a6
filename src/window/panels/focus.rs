//! What has the keys: brought into sight when they move to it, and ringed so that it is seen on every ground.

use crate::tokens as t;
use bevy_egui::egui::accesskit::{Action, ActionRequest, TreeId};
use bevy_egui::egui::{self, CornerRadius, Event, Id, Rect, Stroke, StrokeKind};

/// Passes after a move in which it is brought into sight: a list within a list takes one for each.
const PASSES: u8 = 3;
/// How far outside its edge the ring lies, points.
const RING_GAP: f32 = 2.0;

/// What had the keys in the last pass, and in how many passes it may still be brought into sight.
#[derive(Clone, Copy, Default)]
struct Followed {
    id: Option<Id>,
    passes: u8,
}

/// What had the keys before a dialog or an open list lay over it.
#[derive(Clone, Copy, Default)]
struct Below {
    covered: bool,
    id: Option<Id>,
}

/// Before anything is laid out: once the last dialog or list has closed, the keys go back to what had them before it.
pub(super) fn give_back(ctx: &egui::Context) {
    let place = Id::new("focus below");
    let mut below: Below = ctx.data(|data| data.get_temp(place)).unwrap_or_default();
    let now = ctx.memory(egui::Memory::focused);
    let dialog = ctx.memory(|memory| memory.top_modal_layer().is_some());
    let covered = dialog || egui::Popup::is_any_open(ctx);
    match (below.covered, covered) {
        (true, false) => {
            if let (None, Some(id)) = (now, below.id) {
                ctx.memory_mut(|memory| memory.request_focus(id));
            }
        }
        (false, false) => below.id = now,
        // In the pass in which it opened, what had the keys was still read.
        (false | true, true) => {}
    }
    below.covered = covered;
    ctx.data_mut(|data| data.insert_temp(place, below));
}

/// Before anything is laid out: what got the keys in the last pass scrolls into sight.
pub(super) fn bring_into_sight(ctx: &egui::Context) {
    let id = ctx.memory(egui::Memory::focused);
    let place = Id::new("followed focus");
    let mut followed: Followed = ctx.data(|data| data.get_temp(place)).unwrap_or_default();
    if followed.id != id {
        followed = Followed { id, passes: PASSES };
    }
    let widget = id.and_then(|id| ctx.viewport(|v| v.prev_pass.widgets.get(id).copied()));
    if let Some(widget) = widget
        && followed.passes > 0
    {
        let seen = widget.interact_rect.expand(1.0).contains_rect(widget.rect);
        followed.passes = if seen { 0 } else { followed.passes - 1 };
        if !seen {
            let request = ActionRequest {
                action: Action::ScrollIntoView,
                target_tree: TreeId::ROOT,
                target_node: widget.id.accesskit_id(),
                data: None,
            };
            ctx.input_mut(|i| i.events.push(Event::AccessKitActionRequest(request)));
            ctx.request_repaint();
        }
    }
    ctx.data_mut(|data| data.insert_temp(place, followed));
}

/// After everything is laid out: a ring round what has the keys, bright within dark, so that one of the two stands out
/// from whatever it lies on.
pub(super) fn ring(ctx: &egui::Context) {
    let Some(id) = ctx.memory(egui::Memory::focused) else {
        return;
    };
    let widget = ctx.viewport(|v| v.this_pass.widgets.get(id).copied());
    if let Some(widget) = widget.filter(|widget| widget.interact_rect.is_positive()) {
        let painter = ctx.layer_painter(widget.layer_id);
        let corners = CornerRadius::same(8);
        let rect = ring_around(widget.interact_rect, painter.clip_rect());
        let middle = StrokeKind::Middle;
        painter.rect_stroke(rect, corners, Stroke::new(5.0, t::INK), middle);
        painter.rect_stroke(rect, corners, Stroke::new(2.5, t::SKY), middle);
    }
}

/// Where the ring lies: round it, but within the window.
fn ring_around(widget: Rect, window: Rect) -> Rect {
    widget.expand(RING_GAP).intersect(window.shrink(RING_GAP))
}
