//! What reading software asks for, as egui's events.

use super::mirror::node_id;
use crate::rest::NextFrame;
use bevy::prelude::*;
use bevy_egui::egui::accesskit::{Action, ActionData, ActionRequest, NodeId, TreeId};
use bevy_egui::egui::{Event, Key, Modifiers};
use bevy_egui::input::EguiInputEvent;
use bevy_egui::{EguiInputSet, EguiPreUpdateSet, PrimaryEguiContext};
use std::cell::RefCell;
use std::collections::VecDeque;

thread_local! {
    /// What was asked for and is not done yet: the events of one frame each.
    static ASKED: RefCell<VecDeque<Vec<Event>>> = const { RefCell::new(VecDeque::new()) };
}

/// Reading software wants this of the element with this id, which the window does in its next frames. False, and
/// nothing is done, where the page names what there is not.
pub(crate) fn ask(id: &str, what: &str, value: &str) -> bool {
    let request = Request::named(what, value).zip(node_id(id));
    let Some((request, id)) = request else {
        return false;
    };
    ASKED.with_borrow_mut(|asked| asked.extend(request.frames(id)));
    true
}

fn hand_over(
    context: Single<Entity, With<PrimaryEguiContext>>,
    mut events: MessageWriter<EguiInputEvent>,
    mut next: ResMut<NextFrame>,
) {
    if let Some(frame) = ASKED.with_borrow_mut(VecDeque::pop_front) {
        let context = *context;
        let frame = frame.into_iter();
        events.write_batch(frame.map(|event| EguiInputEvent { context, event }));
        next.settle();
    }
}

/// What is asked for is done.
pub(crate) fn plugin(app: &mut App) {
    app.add_systems(
        PreUpdate,
        hand_over
            .in_set(EguiPreUpdateSet::ProcessInput)
            .in_set(EguiInputSet::ReadBevyMessages),
    );
}

/// What reading software can ask of an element.
#[derive(Clone, PartialEq, Debug)]
pub(crate) enum Request {
    Focus,
    Click,
    Increment,
    Decrement,
    ScrollIntoView,
    SetNumber(f64),
    SetText(String),
}

impl Request {
    /// As the page names it; `None` for what it never names.
    pub(crate) fn named(name: &str, value: &str) -> Option<Self> {
        Some(match name {
            "focus" => Self::Focus,
            "click" => Self::Click,
            "increment" => Self::Increment,
            "decrement" => Self::Decrement,
            "show" => Self::ScrollIntoView,
            "number" => Self::SetNumber(value.parse().ok().filter(|n: &f64| n.is_finite())?),
            "text" => Self::SetText(value.to_owned()),
            _ => return None,
        })
    }

    /// The events that bring it about, for each frame that it takes.
    pub(crate) fn frames(self, target_node: NodeId) -> Vec<Vec<Event>> {
        let asked = |action, data| {
            Event::AccessKitActionRequest(ActionRequest {
                action,
                target_tree: TreeId::ROOT,
                target_node,
                data,
            })
        };
        match self {
            Self::Focus => vec![vec![asked(Action::Focus, None)]],
            Self::Click => vec![vec![asked(Action::Click, None)]],
            Self::Increment => vec![vec![asked(Action::Increment, None)]],
            Self::Decrement => vec![vec![asked(Action::Decrement, None)]],
            Self::ScrollIntoView => vec![vec![asked(Action::ScrollIntoView, None)]],
            Self::SetNumber(number) => {
                let data = ActionData::NumericValue(number);
                vec![vec![asked(Action::SetValue, Some(data))]]
            }
            // egui's fields know no such request: what stands there is typed over, once the field has the keys.
            Self::SetText(text) => {
                let all = pressed(Key::A, Modifiers::COMMAND);
                let written = if text.is_empty() {
                    pressed(Key::Backspace, Modifiers::NONE)
                } else {
                    Event::Paste(text)
                };
                vec![vec![asked(Action::Focus, None)], vec![all, written]]
            }
        }
    }
}

fn pressed(key: Key, modifiers: Modifiers) -> Event {
    Event::Key {
        key,
        physical_key: None,
        pressed: true,
        repeat: false,
        modifiers,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use bevy_egui::egui::accesskit::{Node, Role};
    use bevy_egui::egui::{CentralPanel, Context, RawInput, Slider, TextEdit};

    /// What can be asked of: a button, a field, a slider.
    #[derive(Default)]
    struct Form {
        clicks: u32,
        text: String,
        share: f64,
    }

    /// One frame with these events; the nodes, and which of them has the focus.
    fn frame(ctx: &Context, form: &mut Form, events: Vec<Event>) -> (Vec<(NodeId, Node)>, NodeId) {
        let input = RawInput {
            events,
            ..RawInput::default()
        };
        ctx.enable_accesskit();
        let mut output = ctx.run_ui(input, |ui| {
            CentralPanel::default().show(ui, |ui| {
                form.clicks += u32::from(ui.button("Press").clicked());
                ui.add(TextEdit::singleline(&mut form.text));
                ui.add(Slider::new(&mut form.share, 0.0..=100.0).step_by(5.0));
            });
        });
        output.textures_delta.clear();
        let update = output.platform_output.accesskit_update;
        let update = update.expect("it was asked for");
        (update.nodes, update.focus)
    }

    /// The form after each of these was asked of what has this role; and whether that has the focus then.
    fn asked(role: Role, requests: &[Request]) -> (Form, bool) {
        let ctx = Context::default();
        let mut form = Form {
            text: "before".to_owned(),
            share: 50.0,
            ..Form::default()
        };
        let (nodes, _) = frame(&ctx, &mut form, Vec::new());
        let found = nodes.iter().find(|(_, node)| node.role() == role);
        let target = found.expect("it is there").0;
        for request in requests {
            for events in request.clone().frames(target) {
                frame(&ctx, &mut form, events);
            }
        }
        let (_, focus) = frame(&ctx, &mut form, Vec::new());
        (form, focus == target)
    }

    #[test]
    fn a_button_is_pressed_and_gets_the_focus() {
        assert_eq!(asked(Role::Button, &[Request::Click]).0.clicks, 1);
        assert!(asked(Role::Button, &[Request::Focus]).1);
        assert!(!asked(Role::Button, &[]).1);
    }

    #[test]
    fn a_field_takes_another_text_and_can_be_emptied() {
        let set = |text: &str| asked(Role::TextInput, &[Request::SetText(text.to_owned())]);
        let (form, focused) = set("after");
        assert_eq!((form.text.as_str(), focused), ("after", true));
        assert_eq!(set("").0.text, "");
        let twice = [
            Request::SetText("one".to_owned()),
            Request::SetText("two".to_owned()),
        ];
        assert_eq!(asked(Role::TextInput, &twice).0.text, "two");
    }

    #[test]
    fn a_slider_is_stepped_and_set() {
        let share = |requests: &[Request]| asked(Role::Slider, requests).0.share;
        assert_eq!(share(&[Request::Increment]), 55.0);
        assert_eq!(share(&[Request::Decrement, Request::Decrement]), 40.0);
        assert_eq!(share(&[Request::SetNumber(70.0)]), 70.0);
    }

    #[test]
    fn what_the_page_never_names_is_nothing() {
        assert_eq!(Request::named("focus", ""), Some(Request::Focus));
        assert_eq!(
            Request::named("number", "2.5"),
            Some(Request::SetNumber(2.5))
        );
        for (name, value) in [("number", "much"), ("number", "NaN"), ("press", "")] {
            assert_eq!(Request::named(name, value), None, "{name} {value}");
        }
    }
}
