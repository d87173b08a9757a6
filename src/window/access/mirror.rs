//! egui's tree as a list of elements for the page, and from one tree to the next the least change, as JSON.
//!
//! A change is an object; what is missing in it has stayed as it was:
//! - `scale`: device pixels in a point.
//! - `gone`: ids of elements that are no more.
//! - `put`: elements that are new or say something else, whole: `id`, `kind`, `name`, `place` and what else there is.
//! - `places`: elements that stand elsewhere, by id: left, top, width and height in points.
//! - `order`: ids in reading order, by what they stand in: a dialog's or group's id, `""` for the page, `"live"` for
//!   what is read out when it changes.
//! - `focus`: the id of what has the keys; `null` where nothing has.

use bevy::prelude::*;
use bevy_egui::egui::accesskit::{Action, Live, Node, NodeId, Role, Toggled, TreeUpdate};
use bevy_egui::{EguiContexts, EguiOutput, EguiPrimaryContextPass, PrimaryEguiContext};
use serde_json::{Map, Value, json};
use std::collections::{BTreeMap, HashMap};

/// What the page makes of an element.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Kind {
    Alert,
    Button,
    CheckBox,
    ComboBox,
    Dialog,
    Group,
    Heading,
    Image,
    Link,
    Progress,
    RadioButton,
    Slider,
    SpinButton,
    Text,
    TextArea,
    TextField,
}

impl Kind {
    /// `None` for what only holds others, or is there for the eye alone.
    fn of(node: &Node) -> Option<Self> {
        Some(match node.role() {
            Role::Button
            | Role::DefaultButton
            | Role::ColorWell
            | Role::DisclosureTriangle
            | Role::ListBoxOption
            | Role::MenuItem
            | Role::MenuListOption
            | Role::Tab => Self::Button,
            Role::CheckBox | Role::Switch | Role::MenuItemCheckBox => Self::CheckBox,
            Role::RadioButton | Role::MenuItemRadio => Self::RadioButton,
            Role::ComboBox | Role::EditableComboBox => Self::ComboBox,
            Role::TextInput
            | Role::SearchInput
            | Role::PasswordInput
            | Role::EmailInput
            | Role::NumberInput
            | Role::PhoneNumberInput
            | Role::UrlInput => Self::TextField,
            Role::MultilineTextInput => Self::TextArea,
            Role::Slider => Self::Slider,
            Role::SpinButton => Self::SpinButton,
            Role::ProgressIndicator | Role::Meter => Self::Progress,
            Role::Link => Self::Link,
            Role::Image | Role::Figure | Role::GraphicsObject | Role::GraphicsSymbol => Self::Image,
            Role::Heading => Self::Heading,
            Role::Label
            | Role::Paragraph
            | Role::Caption
            | Role::Status
            | Role::Log
            | Role::Note => Self::Text,
            Role::Alert => Self::Alert,
            Role::Dialog | Role::AlertDialog | Role::Window => Self::Dialog,
            Role::Group
            | Role::RadioGroup
            | Role::Pane
            | Role::Region
            | Role::Section
            | Role::Toolbar => Self::Group,
            Role::ScrollBar | Role::Splitter | Role::TextRun => return None,
            // A plot's axis can be dragged, and has nothing to say.
            _ if node.supports_action(Action::Click) => Self::Button,
            _ if node.supports_action(Action::Focus) && node.label().is_some() => Self::Button,
            _ if node.live().is_some() => Self::Text,
            _ => return None,
        })
    }

    fn holds_others(self) -> bool {
        matches!(self, Self::Dialog | Self::Group)
    }

    /// Whether it can be worked.
    pub(crate) fn is_control(self) -> bool {
        match self {
            Self::Button
            | Self::CheckBox
            | Self::ComboBox
            | Self::Link
            | Self::RadioButton
            | Self::Slider
            | Self::SpinButton
            | Self::TextArea
            | Self::TextField => true,
            Self::Alert
            | Self::Dialog
            | Self::Group
            | Self::Heading
            | Self::Image
            | Self::Progress
            | Self::Text => false,
        }
    }

    fn name(self) -> &'static str {
        match self {
            Self::Alert => "alert",
            Self::Button => "button",
            Self::CheckBox => "checkbox",
            Self::ComboBox => "combobox",
            Self::Dialog => "dialog",
            Self::Group => "group",
            Self::Heading => "heading",
            Self::Image => "image",
            Self::Link => "link",
            Self::Progress => "progress",
            Self::RadioButton => "radio",
            Self::Slider => "slider",
            Self::SpinButton => "spinbutton",
            Self::Text => "text",
            Self::TextArea => "area",
            Self::TextField => "field",
        }
    }
}

/// What an element stands in.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
enum Within {
    Page,
    /// What is read out when it changes stands together, in a part of the page that is always there.
    Live,
    Element(NodeId),
}

impl Within {
    fn id(self) -> String {
        match self {
            Self::Page => String::new(),
            Self::Live => "live".to_owned(),
            Self::Element(id) => id_text(id),
        }
    }
}

/// A number, and between which it can be.
#[derive(Clone, Copy, PartialEq, Debug)]
struct Number {
    value: f64,
    min: Option<f64>,
    max: Option<f64>,
    step: Option<f64>,
}

/// What reading software meets at one place.
#[derive(PartialEq, Debug)]
pub(crate) struct Element {
    pub(crate) id: NodeId,
    within: Within,
    /// Left, top, width, height, points.
    pub(crate) place: [i32; 4],
    pub(crate) said: Said,
}

/// What is said of an element, wherever it stands.
#[derive(PartialEq, Debug)]
pub(crate) struct Said {
    pub(crate) kind: Kind,
    pub(crate) name: String,
    /// What else is said about it.
    description: Option<String>,
    value: Option<String>,
    number: Option<Number>,
    toggled: Option<Toggled>,
    expanded: Option<bool>,
    disabled: bool,
    modal: bool,
    level: Option<usize>,
}

impl Element {
    fn json(&self) -> Value {
        let mut object = Map::new();
        let mut put = |key: &str, value: Value| object.insert(key.to_owned(), value);
        let said = &self.said;
        put("id", id_text(self.id).into());
        put("kind", said.kind.name().into());
        put("name", said.name.as_str().into());
        put("place", json!(self.place));
        if let Some(description) = &said.description {
            put("description", description.as_str().into());
        }
        if let Some(value) = &said.value {
            put("value", value.as_str().into());
        }
        if let Some(Number {
            value,
            min,
            max,
            step,
        }) = said.number
        {
            put("number", value.into());
            for (key, bound) in [("min", min), ("max", max), ("step", step)] {
                if let Some(bound) = bound {
                    put(key, bound.into());
                }
            }
        }
        if let Some(toggled) = said.toggled {
            let state = match toggled {
                Toggled::False => "false",
                Toggled::True => "true",
                Toggled::Mixed => "mixed",
            };
            put("checked", state.into());
        }
        if let Some(expanded) = said.expanded {
            put("expanded", expanded.into());
        }
        if let Some(level) = said.level {
            put("level", level.into());
        }
        for (key, holds) in [("disabled", said.disabled), ("modal", said.modal)] {
            if holds {
                put(key, true.into());
            }
        }
        Value::Object(object)
    }
}

fn id_text(id: NodeId) -> String {
    format!("{:x}", id.0)
}

/// The node that the page means.
pub(crate) fn node_id(text: &str) -> Option<NodeId> {
    u64::from_str_radix(text, 16).ok().map(NodeId)
}

/// A tree while it is read.
struct Reading<'a> {
    nodes: HashMap<NodeId, &'a Node>,
    elements: Vec<Element>,
}

impl Reading<'_> {
    /// Text that stands in lines of its own is said in one go.
    fn runs(&self, node: &Node) -> String {
        let children = node.children().iter();
        let runs = children.filter_map(|id| self.nodes.get(id));
        let runs = runs.filter(|child| child.role() == Role::TextRun);
        runs.filter_map(|run| run.value()).collect()
    }

    fn text(&self, node: &Node) -> String {
        let text = node.label().or(node.value());
        text.map_or_else(|| self.runs(node), str::to_owned)
    }

    fn name(&self, node: &Node, kind: Kind) -> String {
        if let Some(label) = node.label().filter(|label| !label.trim().is_empty()) {
            return label.to_owned();
        }
        let labels = node.labelled_by().iter();
        let labels = labels.filter_map(|id| self.nodes.get(id));
        let named: Vec<String> = labels.map(|label| self.text(label)).collect();
        if !named.is_empty() {
            return named.join(" ");
        }
        if !kind.is_control() {
            return self.text(node);
        }
        // A list is known by what is chosen, a field by what it asks for.
        let said = match kind {
            Kind::ComboBox | Kind::Button | Kind::Link => node.value(),
            _ => None,
        };
        said.or(node.placeholder()).unwrap_or_default().to_owned()
    }

    fn read(&mut self, id: NodeId, within: Within) {
        let Some(&node) = self.nodes.get(&id) else {
            return;
        };
        if node.is_hidden() {
            return;
        }
        let mut inside = within;
        if let Some(element) = self.element(id, node, within) {
            if element.said.kind.holds_others() {
                inside = Within::Element(id);
            }
            self.elements.push(element);
        }
        for child in node.children() {
            self.read(*child, inside);
        }
    }

    /// `None` for what has nothing to say.
    fn element(&self, id: NodeId, node: &Node, within: Within) -> Option<Element> {
        let kind = Kind::of(node)?;
        let name = self.name(node, kind);
        if name.trim().is_empty() && !kind.is_control() && !node.is_modal() {
            return None;
        }
        let is_live = node.live().is_some_and(|live| live != Live::Off);
        let is_name = |text: &&str| *text == name;
        let value = match kind {
            Kind::ComboBox | Kind::Slider | Kind::SpinButton | Kind::Progress => {
                node.value().filter(|text| !is_name(text))
            }
            Kind::TextArea | Kind::TextField => Some(node.value().unwrap_or_default()),
            _ => None,
        };
        let bounds = node.bounds().unwrap_or_default();
        let whole = |points: f64| points.clamp(-1e6, 1e6).round() as i32;
        let [left, top] = [bounds.x0, bounds.y0].map(whole);
        Some(Element {
            id,
            within: if is_live && !kind.is_control() {
                Within::Live
            } else {
                within
            },
            place: [left, top, whole(bounds.x1) - left, whole(bounds.y1) - top],
            said: Said {
                kind,
                name: name.trim().to_owned(),
                description: node.description().map(str::to_owned),
                value: value.map(str::to_owned),
                number: node.numeric_value().map(|value| Number {
                    value,
                    min: node.min_numeric_value(),
                    max: node.max_numeric_value(),
                    step: node.numeric_value_step(),
                }),
                toggled: node.toggled().or(node.is_selected().map(Toggled::from)),
                expanded: node.is_expanded(),
                disabled: node.is_disabled(),
                modal: node.is_modal(),
                level: node.level(),
            },
        })
    }
}

/// What there is to meet in a tree, in reading order.
pub(crate) fn elements(update: &TreeUpdate) -> Vec<Element> {
    let mut reading = Reading {
        nodes: update.nodes.iter().map(|(id, node)| (*id, node)).collect(),
        elements: Vec::new(),
    };
    // The root is the page itself.
    if let Some(root) = update
        .tree
        .as_ref()
        .and_then(|tree| reading.nodes.get(&tree.root))
    {
        for child in root.children() {
            reading.read(*child, Within::Page);
        }
    }
    reading.elements
}

/// What the page shows already.
#[derive(Default)]
pub(crate) struct Mirror {
    scale: f64,
    elements: Vec<Element>,
    focus: Option<NodeId>,
}

impl Mirror {
    /// What the page must change to show this tree, which is whole; `None` where it shows it already.
    pub(crate) fn update(&mut self, update: &TreeUpdate) -> Option<String> {
        let root = update.tree.as_ref().map(|tree| tree.root);
        let root = update.nodes.iter().find(|(id, _)| Some(*id) == root);
        let scale = root.and_then(|(_, node)| node.transform());
        let scale = scale.map_or(1.0, |transform| transform.as_coeffs()[0]);
        let elements = elements(update);
        let focus = elements.iter().any(|element| element.id == update.focus);
        let next = Self {
            scale,
            focus: focus.then_some(update.focus),
            elements,
        };
        let change = next.since(self);
        *self = next;
        (!change.is_empty()).then(|| Value::Object(change).to_string())
    }

    fn since(&self, before: &Self) -> Map<String, Value> {
        let mut change = Map::new();
        if self.scale != before.scale {
            change.insert("scale".to_owned(), self.scale.into());
        }
        if self.elements != before.elements {
            self.elements_since(before, &mut change);
        }
        if self.focus != before.focus {
            change.insert("focus".to_owned(), json!(self.focus.map(id_text)));
        }
        change
    }

    fn elements_since(&self, before: &Self, change: &mut Map<String, Value>) {
        let known: HashMap<_, _> = before.elements.iter().map(|e| (e.id, e)).collect();
        let now: HashMap<_, _> = self.elements.iter().map(|e| (e.id, e)).collect();
        let gone = before.elements.iter().filter(|e| !now.contains_key(&e.id));
        let gone: Vec<Value> = gone.map(|e| id_text(e.id).into()).collect();
        let mut put = Vec::new();
        let mut places = Map::new();
        for element in &self.elements {
            match known.get(&element.id) {
                Some(old) if element.said == old.said => {
                    if old.place != element.place {
                        places.insert(id_text(element.id), json!(element.place));
                    }
                }
                _ => put.push(element.json()),
            }
        }
        let (order, order_before) = (self.order(), before.order());
        let order: Map<String, Value> = order
            .into_iter()
            .filter(|(within, ids)| order_before.get(within) != Some(ids))
            .map(|(within, ids)| {
                let ids: Vec<Value> = ids.into_iter().map(|id| id_text(id).into()).collect();
                (within.id(), ids.into())
            })
            .collect();
        let parts = [
            ("gone", Value::from(gone)),
            ("put", put.into()),
            ("places", places.into()),
            ("order", order.into()),
        ];
        for (key, part) in parts {
            let is_empty = match &part {
                Value::Array(list) => list.is_empty(),
                Value::Object(map) => map.is_empty(),
                _ => false,
            };
            if !is_empty {
                change.insert(key.to_owned(), part);
            }
        }
    }

    fn order(&self) -> BTreeMap<Within, Vec<NodeId>> {
        let mut order = BTreeMap::<_, Vec<NodeId>>::new();
        for element in &self.elements {
            order.entry(element.within).or_default().push(element.id);
        }
        order
    }
}

fn enable(mut contexts: EguiContexts) -> Result {
    contexts.ctx_mut()?.enable_accesskit();
    Ok(())
}

/// `show` gets each change, in its order.
pub(crate) fn plugin(app: &mut App, show: fn(&str)) {
    // A frame in which the panels stand leaves the output as it was.
    type Drawn = (With<PrimaryEguiContext>, Changed<EguiOutput>);
    let reflect = move |outputs: Query<&EguiOutput, Drawn>, mut mirror: Local<Mirror>| {
        for output in &outputs {
            let update = output.platform_output.accesskit_update.as_ref();
            if let Some(change) = update.and_then(|update| mirror.update(update)) {
                show(&change);
            }
        }
    };
    app.add_systems(EguiPrimaryContextPass, enable)
        .add_systems(Last, reflect);
}

#[cfg(test)]
mod tests;
