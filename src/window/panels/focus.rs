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
    /// What had the keys within it last.
    within: Option<Id>,
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
            let elsewhere = now.is_some() && now != below.within;
            if let (false, Some(id)) = (elsewhere, below.id) {
                ctx.memory_mut(|memory| memory.request_focus(id));
            }
        }
        (false, false) => below.id = now,
        // In the pass in which it opened, what had the keys was still read.
        (false | true, true) => below.within = now,
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::panels::kit;
    use bevy_egui::egui::{Key, Modal};
    use egui_kittest::Harness;
    use egui_kittest::kittest::Queryable;

    /// A list of three rows, a button that opens a dialog, and what came of them.
    #[derive(Default)]
    struct Page {
        chosen: usize,
        dialog: bool,
    }

    fn page() -> Harness<'static, Page> {
        let mut harness = Harness::builder().with_size([400.0, 400.0]).build_ui_state(
            |ui, page: &mut Page| {
                kit::apply_theme(ui.ctx());
                give_back(ui.ctx());
                let rows = ["one", "two", "three"].map(str::to_owned);
                let (chosen, shown) = (Some(page.chosen), rows[page.chosen].as_str());
                let (list, taken) = kit::drop_down(ui, "list", 200.0, shown, (&rows, chosen));
                list.widget_info(|| {
                    egui::WidgetInfo::labeled(egui::WidgetType::ComboBox, true, "list")
                });
                page.chosen = taken.unwrap_or(page.chosen);
                page.dialog |= ui.button("ask").clicked();
                if page.dialog {
                    let shown = Modal::new(Id::new("dialog")).show(ui.ctx(), |ui| {
                        let _ = ui.button("yes");
                    });
                    page.dialog = !shown.should_close();
                }
            },
            Page::default(),
        );
        harness.run_steps(3);
        harness
    }

    fn press(harness: &mut Harness<'_, Page>, key: Key) {
        harness.key_press(key);
        harness.run_steps(4);
    }

    /// The arrow keys go through an open list and nothing behind it, and the keys are on the list again when it is closed.
    #[test]
    fn an_open_list_is_gone_through_by_keys_alone() {
        let mut harness = page();
        harness.get_by_label("list").focus();
        harness.run_steps(2);
        press(&mut harness, Key::Enter);
        press(&mut harness, Key::ArrowDown);
        press(&mut harness, Key::Tab);
        press(&mut harness, Key::ArrowDown);
        press(&mut harness, Key::ArrowDown);
        press(&mut harness, Key::ArrowUp);
        assert!(!harness.get_by_label("ask").is_focused());
        press(&mut harness, Key::Enter);
        assert_eq!(harness.state().chosen, 1);
        assert!(harness.get_by_label("list").is_focused());
        // It begins at the row that is chosen, and Escape leaves that as it was.
        press(&mut harness, Key::Enter);
        press(&mut harness, Key::ArrowDown);
        press(&mut harness, Key::Escape);
        assert_eq!(harness.state().chosen, 1);
        assert!(harness.get_by_label("list").is_focused());
        press(&mut harness, Key::Enter);
        press(&mut harness, Key::ArrowDown);
        press(&mut harness, Key::Enter);
        assert_eq!(harness.state().chosen, 2);
    }

    #[test]
    fn keys_go_back_to_what_had_them_before_a_dialog() {
        let mut harness = page();
        harness.get_by_label("ask").focus();
        harness.run_steps(2);
        press(&mut harness, Key::Enter);
        assert!(harness.state().dialog);
        press(&mut harness, Key::Tab);
        assert!(harness.get_by_label("yes").is_focused());
        press(&mut harness, Key::Escape);
        assert!(!harness.state().dialog);
        assert!(harness.get_by_label("ask").is_focused());
    }
}
