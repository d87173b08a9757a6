use super::*;
use crate::AppOptions;
use crate::access::request;
use crate::drill::Shown;
use crate::port::JobSource;
use crate::practice::DrillRes;
use crate::rest::tests::paused;
use crate::state::{BenchRes, Page, Screen, Tab, UiState, ViewKind};
use crate::workbench::LibraryJobs;
use bevy_egui::egui::accesskit::{Affine, Rect, Tree, TreeId};
use bevy_egui::{EguiContext, EguiOutput, PrimaryEguiContext, egui};
use detent_content::Language;
use detent_training::bench::{Action, Incident};
use std::cell::RefCell;
use std::collections::BTreeSet;

/// A screen by its name, and the tree that egui made of it.
pub(super) struct Pictured {
    pub(super) name: String,
    pub(super) update: TreeUpdate,
}

/// The window while it goes from screen to screen.
struct Tour {
    app: App,
    met: Vec<Pictured>,
}

impl Tour {
    fn open(options: AppOptions) -> Self {
        let mut app = paused(&options);
        app.update();
        let world = app.world_mut();
        let mut contexts = world.query_filtered::<&mut EguiContext, With<PrimaryEguiContext>>();
        let mut context = contexts.single_mut(world).expect("one window");
        context.get_mut().enable_accesskit();
        Self {
            app,
            met: Vec::new(),
        }
    }

    /// Keeps what stands there once it has settled.
    fn meet(&mut self, name: &str) {
        (0..4).for_each(|_| self.app.update());
        let world = self.app.world_mut();
        let mut outputs = world.query_filtered::<&EguiOutput, With<PrimaryEguiContext>>();
        let output = outputs.single(world).expect("one window");
        let update = output.platform_output.accesskit_update.clone();
        self.met.push(Pictured {
            name: name.to_owned(),
            update: update.expect("it was asked for"),
        });
    }

    fn ui_state(&mut self) -> Mut<'_, UiState> {
        self.app.world_mut().resource_mut()
    }

    fn bench(&mut self) -> Mut<'_, BenchRes> {
        self.app.world_mut().resource_mut()
    }
}

/// Every screen there is, one after the other.
pub(super) fn screens(language: Language) -> Vec<Pictured> {
    let options = || AppOptions {
        language,
        size: (1366, 768),
        ..AppOptions::default()
    };
    let mut all = Vec::new();

    let mut start = Tour::open(options());
    start.meet("start-first");
    start.ui_state().everything = true;
    start.meet("start");
    start.ui_state().keys = true;
    start.meet("keys");
    all.append(&mut start.met);

    let jobs = LibraryJobs::new(None, None).expect("the built-in jobs are sound");
    let guided = jobs.offers().iter().position(|offer| offer.guided);
    let mut bench = Tour::open(AppOptions {
        start: guided.map(|guided| (guided, 101)),
        view: ViewKind::Panel,
        ..options()
    });
    for page in Page::ALL {
        bench.ui_state().page = *page;
        bench.meet(&format!("bench-sheet-{page:?}"));
    }
    for tab in [Tab::Meter, Tab::Parts, Tab::Report, Tab::Score] {
        bench.ui_state().tab = tab;
        bench.meet(&format!("bench-{tab:?}"));
    }
    bench.bench().push(Action::OpenCabinet);
    bench.meet("caution");
    assert!(bench.bench().asked.is_some());
    bench.bench().go_on();
    bench.meet("bench-open");
    bench.bench().incident = Some(Incident::Shock);
    bench.meet("incident");
    all.append(&mut bench.met);

    for (name, options) in [
        (
            "practice",
            AppOptions {
                practice: Some(false),
                ..options()
            },
        ),
        (
            "progress",
            AppOptions {
                practice: Some(true),
                ..options()
            },
        ),
        (
            "examination",
            AppOptions {
                examination: true,
                ..options()
            },
        ),
    ] {
        let mut screen = Tour::open(options);
        screen.meet(name);
        all.append(&mut screen.met);
    }

    let mut drills = Tour::open(options());
    for drill in [
        "entry",
        "lamps",
        "meter",
        "look-up",
        "next-test",
        "part",
        "safe-work",
        "hazard",
        "proof",
    ] {
        for stage in ["", "-answered", "-over"] {
            let name = format!("drill-{drill}{stage}");
            let shown = Shown::named(&name).expect("there is such a drill");
            let world = drills.app.world_mut();
            world.resource_mut::<DrillRes>().show(shown, 7);
            world.resource_mut::<NextState<Screen>>().set(Screen::Drill);
            drills.meet(&name);
        }
    }
    all.append(&mut drills.met);
    all
}

/// What the page has made of the changes so far: elements by id, ids by what they stand in, the focus.
#[derive(Default, PartialEq, Debug)]
struct PageModel {
    elements: BTreeMap<String, Map<String, Value>>,
    order: BTreeMap<String, Value>,
    focus: Value,
    scale: Value,
}

impl PageModel {
    fn apply(&mut self, change: &str) {
        let change: Value = serde_json::from_str(change).expect("JSON");
        let list = |key: &str| change[key].as_array().cloned().unwrap_or_default();
        let object = |key: &str| change[key].as_object().cloned().unwrap_or_default();
        for id in list("gone") {
            let gone = self.elements.remove(id.as_str().expect("an id"));
            assert!(gone.is_some(), "{id} was never there");
        }
        for element in list("put") {
            let element = element.as_object().expect("an object").clone();
            let id = element["id"].as_str().expect("an id").to_owned();
            self.elements.insert(id, element);
        }
        for (id, place) in object("places") {
            let element = self.elements.get_mut(&id).expect("it is there");
            element.insert("place".to_owned(), place);
        }
        self.order.extend(object("order"));
        // What stands in nothing that is left has gone with it.
        let elements = &self.elements;
        self.order.retain(|within, ids| {
            let ids = ids.as_array().expect("ids");
            let all_there = || {
                ids.iter()
                    .all(|id| elements.contains_key(id.as_str().expect("an id")))
            };
            (within.is_empty() || within == "live" || elements.contains_key(within)) && all_there()
        });
        for (key, kept) in [("focus", &mut self.focus), ("scale", &mut self.scale)] {
            if let Some(value) = change.get(key) {
                *kept = value.clone();
            }
        }
    }
}

/// On every screen in both languages, in one window after the other: the changes lead to what the whole tree shows; what
/// can be worked has a name; nothing is said twice at one place.
#[test]
fn every_screen_is_mirrored_with_names_and_change_by_change() {
    for language in Language::ALL {
        let mut mirror = Mirror::default();
        let mut page = PageModel::default();
        let mut kinds = BTreeSet::new();
        let mut wrong = Vec::new();
        let mut spent = [std::time::Duration::ZERO; 2];
        let screens = screens(language);
        let count = u32::try_from(screens.len()).expect("a few");
        for Pictured { name, update } in screens {
            let began = std::time::Instant::now();
            let told = mirror.update(&update);
            spent[0] += began.elapsed();
            if let Some(change) = told {
                page.apply(&change);
            }
            let mut whole = PageModel::default();
            let all = Mirror::default()
                .update(&update)
                .expect("there is something");
            whole.apply(&all);
            assert_eq!(page, whole, "{name}");
            let began = std::time::Instant::now();
            assert_eq!(mirror.update(&update), None, "{name}: nothing has changed");
            spent[1] += began.elapsed();

            let shown = elements(&update);
            assert!(shown.len() > 5, "{name}: {shown:?}");
            let mut places = BTreeSet::new();
            for element in &shown {
                kinds.insert(element.said.kind.name());
                if element.said.name.is_empty() {
                    wrong.push(format!("{language:?} {name}: no name: {element:?}"));
                }
                if !places.insert((
                    element.place,
                    element.said.kind.name(),
                    element.said.name.clone(),
                )) {
                    wrong.push(format!("{language:?} {name}: said twice: {element:?}"));
                }
            }
            // What can be pressed is met, whatever its role. Keys scroll without the bars.
            let ids: BTreeSet<NodeId> = shown.iter().map(|element| element.id).collect();
            for (id, node) in &update.nodes {
                let is_bar = node.role() == Role::ScrollBar;
                if !is_bar
                    && node.supports_action(egui::accesskit::Action::Click)
                    && !ids.contains(id)
                {
                    wrong.push(format!("{language:?} {name}: left out: {node:?}"));
                }
            }
        }
        assert!(wrong.is_empty(), "{}", wrong.join("\n"));
        // Figures to compare, no bound: a whole screen that is new, and one that is as it was.
        let each = spent.map(|spent| spent / count);
        println!("{language:?}: on the mean a new screen and an old one took {each:?}");
        for kind in [
            "button", "combobox", "dialog", "field", "heading", "radio", "text",
        ] {
            assert!(kinds.contains(kind), "{kind}: {kinds:?}");
        }
    }
}

thread_local! {
    /// What a window in this thread has told the page.
    static TOLD: RefCell<Vec<String>> = const { RefCell::new(Vec::new()) };
}

/// A window and what the page has made of what it told.
struct Opened {
    app: App,
    page: PageModel,
}

impl Opened {
    fn new(options: &AppOptions) -> Self {
        let mut app = paused(options);
        plugin(&mut app, |change| {
            TOLD.with_borrow_mut(|told| told.push(change.to_owned()));
        });
        request::plugin(&mut app);
        let page = PageModel::default();
        let mut opened = Self { app, page };
        opened.frames(6);
        opened
    }

    /// Changes told in so many frames.
    fn frames(&mut self, count: usize) -> usize {
        (0..count).for_each(|_| self.app.update());
        let told = TOLD.take();
        told.iter().for_each(|change| self.page.apply(change));
        told.len()
    }

    fn id(&self, kind: &str, name: &str) -> String {
        let mut all = self.page.elements.iter();
        let found = all.find(|(_, element)| element["kind"] == kind && element["name"] == name);
        found
            .unwrap_or_else(|| panic!("no {kind} {name}"))
            .0
            .clone()
    }

    fn ask(&mut self, id: &str, what: &str, value: &str) {
        assert!(request::ask(id, what, value), "{what}");
        self.frames(6);
    }
}

/// A window that stands still tells the page nothing; what is asked of an element is done, and told.
#[test]
fn what_the_page_asks_for_is_done_and_told_and_then_nothing_is_told() {
    let mut window = Opened::new(&AppOptions::default());
    assert_eq!(window.frames(10), 0, "nothing moves");

    let practice = window.id("button", "Practice");
    window.ask(&practice, "focus", "");
    assert_eq!(window.page.focus, practice.as_str());
    let seed = window.id("field", "Seed");
    window.ask(&seed, "text", "2024");
    assert_eq!(window.page.elements[&seed]["value"], "2024");
    assert_eq!(window.app.world().resource::<UiState>().seed, "2024");
    assert_eq!(window.page.focus, seed.as_str());

    assert!(!request::ask(&seed, "press", "") && !request::ask("bench", "click", ""));
    assert_eq!(window.frames(10), 0, "what there is not does nothing");
    window.ask(&practice, "click", "");
    let screen = window.app.world().resource::<State<Screen>>();
    assert_eq!(*screen.get(), Screen::Practice);
    assert!(
        !window.page.elements.contains_key(&seed),
        "it has gone with its screen"
    );
}

/// The first guided job up to where hands go in, through the elements alone: the plug, the tabs, a caution that is a
/// dialog, and back.
#[test]
fn a_bench_is_worked_through_the_elements() {
    let mut window = Opened::new(&AppOptions {
        start: Some((0, 101)),
        ..AppOptions::default()
    });
    let press = |window: &mut Opened, name: &str| {
        let button = window.id("button", name);
        window.ask(&button, "click", "");
    };
    let view = |window: &Opened| {
        let view = window.app.world().resource::<BenchRes>().view();
        (view.machine.plugged, view.cabinet_open)
    };
    assert_eq!(view(&window), (true, false));
    press(&mut window, "Remove the panels (C)");
    let dialog = window.id("dialog", "DANGER");
    assert_eq!(window.page.elements[&dialog]["modal"], true);
    let back = window.id("button", "Step back");
    let inside = window.page.order[&dialog].as_array().expect("ids");
    assert!(inside.contains(&Value::from(back.clone())), "{inside:?}");
    assert_eq!(window.page.focus, back.as_str(), "it has the keys");
    window.ask(&back, "click", "");
    assert!(!window.page.elements.contains_key(&dialog));
    press(&mut window, "Unplug (P)");
    press(&mut window, "Remove the panels (C)");
    window.id("dialog", "WARNING");
    press(&mut window, "Continue");
    assert_eq!(view(&window), (false, true));
    press(&mut window, "Meter");
    let tab = window.id("button", "Meter");
    assert_eq!(window.page.elements[&tab]["checked"], "true");
    window.id("button", "Measure and record");
}

/// A tree of these nodes below its root, which is node 0: parent, id, node.
fn tree(nodes: &[(u64, u64, Node)], focus: u64) -> TreeUpdate {
    let mut all: BTreeMap<u64, Node> = BTreeMap::new();
    let mut root = Node::new(Role::Window);
    root.set_transform(Affine::scale(2.0));
    all.insert(0, root);
    for (parent, id, node) in nodes {
        all.insert(*id, node.clone());
        let parent = all.get_mut(parent).expect("parents come first");
        parent.push_child(NodeId(*id));
    }
    TreeUpdate {
        nodes: all
            .into_iter()
            .map(|(id, node)| (NodeId(id), node))
            .collect(),
        tree: Some(Tree::new(NodeId(0))),
        tree_id: TreeId::ROOT,
        focus: NodeId(focus),
    }
}

fn node(role: Role, text: &str) -> Node {
    let mut node = Node::new(role);
    if role == Role::Label {
        node.set_value(text);
    } else {
        node.set_label(text);
    }
    node.set_bounds(Rect::new(10.2, 20.0, 40.4, 35.5));
    node
}

fn change(mirror: &mut Mirror, update: &TreeUpdate) -> Value {
    let change = mirror.update(update);
    change.map_or(Value::Null, |text| {
        serde_json::from_str(&text).expect("JSON")
    })
}

/// What only holds others is skipped, what it holds is not; a dialog keeps what stands in it; lines of a label are one
/// text; a field is named by its label.
#[test]
fn a_tree_becomes_a_list_of_what_has_something_to_say() {
    let mut wrapped = Node::new(Role::Label);
    wrapped.set_bounds(Rect::new(0.0, 0.0, 5.0, 5.0));
    let mut field = Node::new(Role::TextInput);
    field.push_labelled_by(NodeId(2));
    field.set_value("belt");
    let mut hidden = node(Role::Button, "Nobody");
    hidden.set_hidden();
    let update = tree(
        &[
            (0, 1, Node::new(Role::GenericContainer)),
            (1, 2, wrapped),
            (2, 3, node(Role::TextRun, "")),
            (1, 4, field),
            (0, 5, node(Role::Dialog, "Danger")),
            (5, 6, Node::new(Role::GenericContainer)),
            (6, 7, node(Role::Button, "Step back")),
            (0, 8, hidden),
            (0, 9, node(Role::ScrollBar, "")),
        ],
        7,
    );
    let mut update = update;
    for (id, node) in &mut update.nodes {
        if *id == NodeId(3) {
            node.set_value("Search");
        }
    }
    let all = change(&mut Mirror::default(), &update);
    assert_eq!(
        all,
        json!({
            "scale": 2.0,
            "put": [
                { "id": "2", "kind": "text", "name": "Search", "place": [0, 0, 5, 5] },
                { "id": "4", "kind": "field", "name": "Search", "value": "belt", "place": [0, 0, 0, 0] },
                { "id": "5", "kind": "dialog", "name": "Danger", "place": [10, 20, 30, 16] },
                { "id": "7", "kind": "button", "name": "Step back", "place": [10, 20, 30, 16] },
            ],
            "order": { "": ["2", "4", "5"], "5": ["7"] },
            "focus": "7",
        })
    );
}

/// Only what is different is told: a state, a place, the order, the focus, or nothing.
#[test]
fn only_what_is_different_is_told() {
    let mut mirror = Mirror::default();
    let nodes = [
        (0, 1, node(Role::Button, "One")),
        (0, 2, node(Role::Button, "Two")),
        (0, 3, node(Role::CheckBox, "Three")),
    ];
    change(&mut mirror, &tree(&nodes, 0));
    assert_eq!(change(&mut mirror, &tree(&nodes, 0)), Value::Null);
    assert_eq!(
        change(&mut mirror, &tree(&nodes, 2)),
        json!({ "focus": "2" })
    );

    let mut checked = nodes.clone();
    checked[2].2.set_toggled(Toggled::True);
    assert_eq!(
        change(&mut mirror, &tree(&checked, 2)),
        json!({ "put": [{ "id": "3", "kind": "checkbox", "name": "Three", "checked": "true",
            "place": [10, 20, 30, 16] }] })
    );

    let mut moved = checked.clone();
    // Less than half a point is nothing to see.
    moved[0].2.set_bounds(Rect::new(10.4, 20.0, 40.4, 35.5));
    moved[1].2.set_bounds(Rect::new(10.2, 120.0, 40.4, 135.5));
    assert_eq!(
        change(&mut mirror, &tree(&moved, 2)),
        json!({ "places": { "2": [10, 120, 30, 16] } })
    );

    let swapped = [moved[2].clone(), moved[0].clone()];
    assert_eq!(
        change(&mut mirror, &tree(&swapped, 2)),
        json!({ "gone": ["2"], "order": { "": ["3", "1"] }, "focus": null })
    );
}

/// What is read out when it changes stands by itself, and only its text changes.
#[test]
fn what_is_read_out_stands_apart() {
    let said = |text: &str| {
        let mut said = node(Role::Label, text);
        said.set_live(Live::Polite);
        [(0, 1, node(Role::Button, "One")), (0, 2, said)]
    };
    let mut mirror = Mirror::default();
    let first = change(&mut mirror, &tree(&said("Lamp 1 is lit."), 0));
    assert_eq!(first["order"], json!({ "": ["1"], "live": ["2"] }));
    assert_eq!(
        change(&mut mirror, &tree(&said("Lamp 1 is dark."), 0)),
        json!({ "put": [{ "id": "2", "kind": "text", "name": "Lamp 1 is dark.", "place": [10, 20, 30, 16] }] })
    );
}

#[test]
fn ids_come_back_from_the_page_as_they_went() {
    for id in [0, 1, u64::MAX, 1 << 60] {
        assert_eq!(node_id(&id_text(NodeId(id))), Some(NodeId(id)));
    }
    assert_eq!(node_id("bench"), None);
}

/// The whole of every screen, in the page without the bench: no rule for web content is broken, and what is read is what
/// stands there, from the first to the last; and both ways on a page of a few elements.
///
/// ```sh
/// DETENT_PLAYWRIGHT=…/node_modules/playwright-core cargo test -p detent-window --lib -- mirror --ignored
/// ```
#[test]
#[ignore = "needs Node.js, a browser and the packages of tests/browser"]
fn reading_software_finds_no_fault_with_any_screen() {
    let mut changes = Vec::new();
    for language in Language::ALL {
        for Pictured { name, update } in screens(language) {
            let change = Mirror::default()
                .update(&update)
                .expect("there is something");
            let change: Value = serde_json::from_str(&change).expect("JSON");
            changes.push(json!({ "language": language.code(), "name": name, "change": change }));
        }
    }
    // A button without a name, so that it is seen that faults are found.
    let nameless = tree(&[(0, 1, node(Role::Button, ""))], 0);
    let nameless = change(&mut Mirror::default(), &nameless);
    changes.push(json!({ "language": "en", "name": "nameless", "change": nameless }));
    let file = tempfile::NamedTempFile::new().expect("a folder for what passes");
    std::fs::write(file.path(), Value::from(changes.clone()).to_string())
        .expect("it can be written");
    let playwright = std::env::var("DETENT_PLAYWRIGHT").expect("the folder of playwright-core");
    let modules = std::path::Path::new(&playwright)
        .parent()
        .expect("among others");
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let done = std::process::Command::new("node")
        .arg(root.join("tests/browser/mirror.mjs"))
        .args([modules, file.path()])
        .stderr(std::process::Stdio::inherit())
        .output()
        .expect("node starts");
    assert!(done.status.success(), "its reason is above");
    let found: Value = serde_json::from_slice(&done.stdout).expect("a line of JSON");
    assert_eq!(found["troubles"], json!([]));
    let screens = found["screens"].as_object().expect("screens");
    assert_eq!(screens.len(), changes.len());
    for (name, screen) in screens {
        if name == "en nameless" {
            let found = screen["violations"].to_string();
            assert!(found.contains("button-name"), "{found}");
            continue;
        }
        assert_eq!(screen["violations"], json!([]), "{name}");
        let passed = screen["passed"].as_u64().expect("a number");
        assert!(passed > 20, "{name}: {passed} rules were held against it");
        let elements = screen["elements"].as_u64().expect("a number");
        assert!(elements > 5, "{name}: {elements} elements");
    }
    for (name, phrases) in READ {
        let said = screens[name]["said"].as_array().expect("phrases");
        let mut said = said.iter().map(|phrase| phrase.as_str().expect("a phrase"));
        for phrase in phrases {
            let found = said.any(|other| other == *phrase);
            assert!(
                found,
                "{name}: {phrase:?} in its turn: {:?}",
                screens[name]["said"]
            );
        }
    }
    assert_eq!(found["ways"], both_ways());
}

/// Some of what is read on a screen, in its order.
const READ: [(&str, &[&str]); 5] = [
    (
        "en start-first",
        &[
            "main",
            "application, Detent",
            "heading, Detent, level 1",
            "button, English, pressed",
            "button, Begin: a first job with a guide",
            "button, Practice",
            "heading, Service-mode entry, level 2",
            "radio, An arc of lamps, not checked",
            "textbox, Seed, 101",
            "button, Begin the job",
        ],
    ),
    (
        "es start-first",
        &[
            "button, Español, pressed",
            "button, Empezar: un primer trabajo con guía",
            "heading, Entrada al modo de servicio, level 2",
            "radio, Un arco de luces, not checked",
            "textbox, Semilla, 101",
            "button, Empezar el trabajo",
        ],
    ),
    (
        "en bench-sheet-Entry",
        &[
            "button, 1 Console, pressed",
            "heading, An arc of lamps, level 2",
            "Time on job",
            "button, Unplug (P)",
            "button, Discharge capacitor (D), disabled",
            "button, Sheet, pressed",
            "button, Entry, pressed",
            "heading, Arc-dial board, level 2",
            "2. Press Stop",
        ],
    ),
    (
        "es bench-sheet-Entry",
        &[
            "button, 1 Consola, pressed",
            "heading, Un arco de luces, level 2",
            "button, Desenchufar (P)",
            "button, Descargar condensador (D), disabled",
            "button, Hoja, pressed",
            "2. Pulse Parada",
        ],
    ),
    (
        "en caution",
        &[
            "dialog, DANGER, modal",
            "DANGER",
            "Line voltage inside. Contact can kill. Unplug the machine and keep the plug in sight before you remove the \
             panels.",
            "button, Step back, pressed",
            "button, Continue, not pressed",
        ],
    ),
];

/// What tests/browser/mirror.mjs does on its page of a few elements, and what must come of it.
fn both_ways() -> Value {
    let focused = |id: &str| json!([[id, "focus", ""], [id, "show", ""]]);
    let then = |id: &str, what: &str, value: &str| {
        let mut asked = focused(id);
        let list = asked.as_array_mut().expect("a list");
        list.push(json!([id, what, value]));
        asked
    };
    json!({
        // egui's focus is the page's: nothing is asked for, and the canvas still has the keys for the window.
        "followed": ["1", [], ["focus"]],
        "keys": [["keydown Tab", "keyup Tab", "keydown Enter", "keyup Enter"], []],
        // What is disabled is not pressed, and egui says what is checked.
        "clicks": [["1", "click", ""], ["2", "click", ""]],
        "checked": false,
        "filled": then("3", "text", "belt"),
        "typed": [["keydown x", "keyup x"], "belt", []],
        "slid": then("4", "number", "80"),
        "left": "bench",
        "tab_stops": -1,
        "others": ["other", 0],
        "kept": [true, 5, 6, ["3", "1", "2", "5", "7", "8", "6"]],
        "out": "list",
        "page": {
            "first": "bench",
            "followed": "1",
            "inside": "1",
            "age_known": true,
            "clicked": ["bench", "2"],
            "outside": "none",
            "stopped": true,
        },
    })
}
