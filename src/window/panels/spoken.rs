//! The machine for whoever does not see it: its knob and buttons as things that can have the focus, its lamps and
//! what is heard as lines that are read out when they change.

use super::PanelContext;
use super::stage::name_of;
use crate::access::lamps::LampSight;
use crate::pointing::Pick;
use crate::scene::grips::{GripKind, Outline, SceneGrip};
use bevy_egui::egui::accesskit::{Action as Asked, ActionData, Live, Orientation, Role};
use bevy_egui::egui::{Id, Pos2, Rect, Response, Sense, Ui, Vec2, WidgetInfo, WidgetType};
use detent_simulation::interface::{Button, Direction};
use detent_training::bench::Action;

/// How long reading software presses a button, s.
const TAP_S: f32 = 0.25;

/// A button that reading software pressed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tapped {
    button: Button,
    /// When it is let go, s.
    until_s: f32,
}

/// The box round an outline.
fn area_of(outline: &Outline<bevy::math::Vec2>) -> Rect {
    match outline {
        Outline::Ring(middle, radius) => {
            Rect::from_center_size(Pos2::new(middle.x, middle.y), Vec2::splat(2.0 * radius))
        }
        Outline::Corners(corners) => {
            let corners = corners.map(|at| Pos2::new(at.x, at.y));
            Rect::from_points(&corners)
        }
    }
}

/// Something of the machine that can have the focus; the pointer is not its business, since hands in the scene are.
fn grip(ui: &Ui, id: Id, area: Rect, rest: Rect) -> Response {
    ui.interact(area.intersect(rest), id, Sense::focusable_noninteractive())
}

fn asks(ui: &Ui, id: Id, action: Asked) -> usize {
    ui.input(|input| input.num_accesskit_action_requests(id, action))
}

fn knob_ui(ui: &Ui, context: &mut PanelContext, area: Rect, rest: Rect) {
    let Some(stops) = context.bench.job().board.panel.selector.turn() else {
        return;
    };
    let id = ui.id().with("knob");
    let position = context.bench.view().machine.dial_position;
    let response = grip(ui, id, area, rest);
    response.widget_info(|| {
        WidgetInfo::slider(true, f64::from(position), name_of(context, Pick::Knob))
    });
    ui.ctx().accesskit_node_builder(id, |node| {
        node.set_orientation(Orientation::Horizontal);
        node.set_min_numeric_value(0.0);
        node.set_max_numeric_value(f64::from(stops - 1));
        node.set_numeric_value_step(1.0);
        node.add_action(Asked::Increment);
        node.add_action(Asked::Decrement);
        node.add_action(Asked::SetValue);
    });
    // Some interfaces only know how to set a value: the hand goes there click by click, the shorter way round.
    let set = ui.input(|input| {
        let asked = input.accesskit_action_requests(id, Asked::SetValue);
        let numbers = asked.filter_map(|request| match &request.data {
            Some(ActionData::NumericValue(number)) => Some(*number),
            _ => None,
        });
        numbers.last()
    });
    if let Some(wanted) = set {
        for way in clicks_to(position, wanted, stops) {
            context.act(Action::Detent(way));
        }
    }
    for (asked, way) in [
        (Asked::Increment, Direction::Right),
        (Asked::Decrement, Direction::Left),
    ] {
        for _ in 0..asks(ui, id, asked) {
            context.act(Action::Detent(way));
        }
    }
}

/// The clicks from one position to another, the shorter way round; none to where there is no position.
fn clicks_to(position: u8, wanted: f64, stops: u8) -> Vec<Direction> {
    let (position, stops) = (i32::from(position), i32::from(stops));
    let wanted = wanted.round() as i32;
    if !(0..stops).contains(&wanted) {
        return Vec::new();
    }
    let right = (wanted - position).rem_euclid(stops);
    let (way, clicks) = match right <= stops - right {
        true => (Direction::Right, right),
        false => (Direction::Left, stops - right),
    };
    vec![way; clicks as usize]
}

fn button_ui(
    ui: &Ui,
    context: &mut PanelContext,
    button: Button,
    area: Rect,
    rest: Rect,
    now: f32,
) {
    let id = ui.id().with(("console", button));
    let response = grip(ui, id, area, rest);
    let down = context.ui_state.held.down()[button.index()];
    response.widget_info(|| {
        let name = name_of(context, Pick::Button(button));
        WidgetInfo::selected(WidgetType::Button, true, down, name)
    });
    ui.ctx()
        .accesskit_node_builder(id, |node| node.add_action(Asked::Click));
    if response.has_focus() {
        context.ui_state.focused_button = Some(button);
    }
    if asks(ui, id, Asked::Click) > 0 {
        let action = context.ui_state.held.push(button, false);
        context.bench.queue_some(action);
        context.ui_state.tapped = Some(Tapped {
            button,
            until_s: now + TAP_S,
        });
    }
}

/// Whatever is shown of the bench: the lamps are watched, the finger of reading software goes, and no button has the
/// focus until it is found to have it.
pub(super) fn follow_machine(context: &mut PanelContext, now: f32) {
    let machine = &context.bench.view().machine;
    let at_ms = (machine.time_s * 1000.0) as u64;
    let rules = &context.bench.job().board.lamps;
    context.ui_state.lamps.watch(at_ms, machine.lamps, rules);
    context.ui_state.focused_button = None;
    if let Some(tapped) = context
        .ui_state
        .tapped
        .filter(|tapped| now >= tapped.until_s)
    {
        context.ui_state.tapped = None;
        let action = context.ui_state.held.release(tapped.button);
        context.bench.queue_some(action);
    }
}

/// What stands here is read out when it changes.
pub(super) fn when_changed(ui: &Ui, label: &Response) {
    ui.ctx()
        .accesskit_node_builder(label.id, |node| node.set_live(Live::Polite));
}

/// A line that is read out when it changes; put in words only where somebody listens.
pub(super) fn live_line(ui: &Ui, name: &str, area: Rect, live: Live, text: impl Fn() -> String) {
    let id = ui.id().with(name);
    let response = ui.interact(area, id, Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(WidgetType::Label, true, text()));
    ui.ctx().accesskit_node_builder(id, |node| {
        node.set_role(Role::Label);
        node.set_live(live);
    });
}

/// What the lamps show, in words: which are lit, and whether they stand, blink or flash.
fn lamps_line(context: &PanelContext, seen: &LampSight) -> String {
    let rules = &context.bench.job().board.lamps;
    let lamps = match seen {
        LampSight::Still(lamps) => context.texts.lamps(rules, *lamps),
        LampSight::InTurn(turns) => context.texts.lamps_in_turn(rules, *turns),
        LampSight::Flashes(flashes) => context.texts.lamp_flashes(flashes),
        LampSight::Digits(digits) => {
            let (signs, placement) = (&rules.signs, &rules.placement);
            context.texts.lamp_signs(signs, placement, digits)
        }
    };
    context.with("lamps-seen", &[("lamps", lamps.into())])
}

/// Knob, buttons and lamps of the console.
pub(super) fn console_ui(
    ui: &Ui,
    rest: Rect,
    context: &mut PanelContext,
    grips: &[SceneGrip],
    now: f32,
) {
    let watched = context.bench.film().is_some();
    for SceneGrip { kind, outline } in grips {
        let area = area_of(outline);
        match *kind {
            // Whoever watches has no hands at the console.
            GripKind::Pick(_) if watched => {}
            GripKind::Pick(Pick::Knob) => knob_ui(ui, context, area, rest),
            GripKind::Pick(Pick::Button(button)) => {
                button_ui(ui, context, button, area, rest, now);
            }
            // The ticket has a button for each, and the meter's page a list.
            GripKind::Pick(Pick::Lid | Pick::Plug | Pick::Part(_)) => {}
            GripKind::Lamps => {
                if let Some(seen) = context.ui_state.lamps.seen() {
                    let line = || lamps_line(context, seen);
                    live_line(ui, "lamps", area.intersect(rest), Live::Polite, line);
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::clicks_to;
    use detent_simulation::interface::Direction::{Left, Right};

    #[test]
    fn a_position_that_is_asked_for_is_reached_the_shorter_way_round() {
        assert_eq!(clicks_to(2, 4.0, 12), [Right; 2]);
        assert_eq!(clicks_to(2, 11.0, 12), [Left; 3]);
        assert_eq!(clicks_to(0, 6.0, 12), [Right; 6]);
        assert_eq!(clicks_to(5, 5.0, 12), []);
        for nowhere in [-1.0, 12.0, 1e30, f64::INFINITY] {
            assert_eq!(clicks_to(5, nowhere, 12), [], "{nowhere}");
        }
    }
}
