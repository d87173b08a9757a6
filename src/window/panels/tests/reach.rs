//! Every screen by keys alone: the focus is walked through it, and what can be pressed is reached, named, large enough
//! and in sight.

use super::film::film_of;
use super::*;
use crate::board_workshop::{BoardPage, BoardWorkshop};
use crate::class::JoinMistake;
use crate::class::shown::ShownClass;
use crate::drill::Shown;
use crate::film::ShownFilm;
use crate::film::tests::CLASSIC_MISTAKES;
use crate::panels::tutorial::Tutorial;
use crate::rest::tests::{paused, send_key};
use crate::workshop::{Workshop, WorkshopPage, WorkshopRes};
use bevy::input::ButtonState;
use bevy::input::keyboard::{Key, KeyCode};
use bevy::prelude::With;
use bevy_egui::egui::accesskit::{Action as Ask, Node};
use bevy_egui::{EguiContext, EguiInput, EguiOutput, EguiRenderOutput, PrimaryEguiContext};
use detent_class_protocol::ClassKind;
use detent_content::{Preferences, ScenarioDraft};
use detent_training::practice::simulated::invented;
use egui::{Id, Rect as Area};
use std::collections::BTreeMap;

/// A screen to be walked through.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Place {
    Start,
    FirstStart,
    Variants,
    Bench(Tab, Page),
    Guided,
    Finished,
    Caution,
    Help,
    Practice {
        progress: bool,
    },
    Examination,
    /// The way into a class, with something typed that is no code.
    Join,
    /// A class on the start screen, with its seat about to be left or not.
    Class(ClassKind, bool),
    /// A finished attempt as a film, paused before the first lost point.
    Film,
    /// A job of a class at the bench, and a word from the teacher.
    ClassAtBench,
    Workshop {
        open: bool,
    },
    /// A sound job in the workshop, proved.
    Proved(WorkshopPage),
    Board(BoardPage),
    Tutorial,
    Drill(&'static str),
}

/// Drills, asked, answered and over.
const DRILLS: [&str; 12] = [
    "drill-entry",
    "drill-lamps",
    "drill-lamps-answered",
    "drill-meter",
    "drill-look-up",
    "drill-next-test",
    "drill-next-test-answered",
    "drill-part",
    "drill-safe-work",
    "drill-hazard",
    "drill-proof",
    "drill-lamps-over",
];

/// Every screen. Those of the bench come one after the other, since what they show stays on it.
fn places() -> Vec<Place> {
    let mut places = vec![
        Place::Start,
        Place::FirstStart,
        Place::Variants,
        Place::Practice { progress: false },
        Place::Practice { progress: true },
        Place::Examination,
        Place::Join,
        Place::Class(ClassKind::Practice, false),
        Place::Class(ClassKind::Examination, true),
        Place::Workshop { open: false },
        Place::Workshop { open: true },
        Place::Proved(WorkshopPage::Proof),
        Place::Proved(WorkshopPage::Wash),
        Place::Proved(WorkshopPage::Paper),
        Place::Tutorial,
    ];
    places.extend(BoardPage::ALL.map(Place::Board));
    places.extend(DRILLS.map(Place::Drill));
    places.extend((Page::ALL.iter()).map(|page| Place::Bench(Tab::Sheet, *page)));
    let tabs = [Tab::Meter, Tab::Parts, Tab::Report, Tab::Score];
    places.extend(tabs.map(|tab| Place::Bench(tab, Page::Entry)));
    places.extend([
        Place::ClassAtBench,
        Place::Guided,
        Place::Caution,
        Place::Help,
        Place::Finished,
        // Last: it takes the bench's place.
        Place::Film,
    ]);
    places
}

/// Whether the eye finds its way there by something else than by places: by numbers, or past a text that is higher than
/// the window.
fn has_own_order(place: Place) -> bool {
    [Place::Drill("drill-hazard"), Place::Board(BoardPage::Text)].contains(&place)
}

/// What can have the keys or be pressed.
#[derive(Clone, Debug)]
struct Stop {
    id: Id,
    name: String,
    clickable: bool,
    focusable: bool,
    /// Whole, and the part that is in sight.
    rect: Area,
    seen: Area,
}

/// What can be read or pressed.
#[derive(Clone, Debug)]
struct Item {
    id: Id,
    layer: egui::LayerId,
    words: String,
    rect: Area,
    seen: Area,
}

impl Item {
    /// Less of it is in sight than could be.
    fn is_hidden(&self) -> bool {
        self.seen.height() < self.rect.height().min(60.0) - 2.0
    }
}

/// A window in which the screens are shown one after the other.
pub(super) struct Walker {
    app: App,
    left_handed: bool,
}

impl Walker {
    fn new(language: Language, size: (u32, u32), zoom: f32) -> Walker {
        let mut app = paused(&AppOptions {
            language,
            size,
            start: Some((0, 101)),
            ..AppOptions::default()
        });
        app.update();
        crate::rest::tests::set_zoom(&mut app, zoom);
        (0..3).for_each(|_| app.update());
        let mut walker = Walker {
            app,
            left_handed: false,
        };
        walker.context().enable_accesskit();
        walker
    }

    fn context(&mut self) -> egui::Context {
        let world = self.app.world_mut();
        let mut contexts = world.query_filtered::<&mut EguiContext, With<PrimaryEguiContext>>();
        let mut context = contexts.single_mut(world).expect("one context");
        context.get_mut().clone()
    }

    fn frames(&mut self, frames: usize) {
        (0..frames).for_each(|_| self.app.update());
    }

    /// Shows it, from its top and with nothing focused.
    fn show(&mut self, place: Place) {
        let world = self.app.world_mut();
        let mut ui_state = world.resource_mut::<UiState>();
        ui_state.keys = place == Place::Help;
        ui_state.variants = None;
        ui_state.everything = place != Place::FirstStart;
        ui_state.guidance = Guidance::Nothing;
        ui_state.class_job = (place == Place::ClassAtBench).then(|| "drain-code".to_owned());
        let screen = match place {
            Place::Start | Place::FirstStart | Place::Class(..) => Screen::Start,
            Place::Join => Screen::Join,
            Place::Variants => {
                ui_state.variants = Some(VariantList::new(0, 101, 1));
                Screen::Start
            }
            Place::Bench(tab, page) => {
                (ui_state.tab, ui_state.page) = (tab, page);
                Screen::Bench
            }
            Place::Guided => {
                ui_state.guidance = Guidance::EveryStep;
                Screen::Bench
            }
            Place::Finished => {
                ui_state.tab = Tab::Score;
                Screen::Bench
            }
            Place::Film => {
                ui_state.tab = Tab::Score;
                Screen::Bench
            }
            Place::Caution | Place::Help | Place::ClassAtBench => Screen::Bench,
            Place::Practice { .. } => Screen::Practice,
            Place::Examination => Screen::Examination,
            Place::Workshop { .. } | Place::Proved(_) | Place::Board(_) | Place::Tutorial => {
                Screen::Workshop
            }
            Place::Drill(_) => Screen::Drill,
        };
        let mut class = match place {
            Place::Join => ClassRes::shown(ShownClass::Join),
            Place::Class(kind, _) => ClassRes::shown(ShownClass::Seat(kind)),
            Place::ClassAtBench => ClassRes::shown(ShownClass::Seat(ClassKind::Practice)),
            _ => ClassRes::default(),
        };
        if place == Place::Join {
            class.desk.has_word = true;
            class.desk.mistake = Some(JoinMistake::Code);
        }
        class.desk.leaving = matches!(place, Place::Class(_, true));
        world.insert_resource(class);
        let folder = tempfile::tempdir().expect("a folder");
        let store = ProfileFolder::new(folder.path().to_owned());
        let mut learner = match place {
            Place::FirstStart => LearnerRes::kept_in(Box::new(store), None),
            Place::Practice { .. } => LearnerRes::guest(invented(7, 5, now())),
            _ => LearnerRes::default(),
        };
        learner.ui_state.progress = place == Place::Practice { progress: true };
        learner.prefer(Preferences {
            left_handed: self.left_handed,
            ..Preferences::default()
        });
        world.insert_resource(learner);
        // What is proved for one page is shown on the next.
        let before = world.resource_mut::<WorkshopRes>().open.take();
        let library = world.resource::<DrillRes>().content();
        let open = match place {
            Place::Workshop { open: true } => {
                let draft = ScenarioDraft::new("own-job", Language::En);
                let mut open = Workshop::begin(draft, &library).expect("readable");
                open.wait_for_proof(&library);
                Some(open)
            }
            Place::Proved(page) => {
                let proved = before.filter(|open| open.checked().is_ok());
                let mut open = proved.unwrap_or_else(|| {
                    let source = library.scenario("drain-code").expect("built in");
                    let mut open = Workshop::copy_of(&source, &library).expect("readable");
                    open.wait_for_proof(&library);
                    open
                });
                open.view.page = page;
                Some(open)
            }
            _ => None,
        };
        let board = match place {
            Place::Board(page) => BoardWorkshop::shown(page, &Texts::load(Language::En), &library),
            _ => None,
        };
        let mut workshop = world.resource_mut::<WorkshopRes>();
        (workshop.open, workshop.board) = (open, board);
        let tutorial = (place == Place::Tutorial).then(|| Tutorial::in_language(Language::En));
        workshop.tutorial = tutorial;
        if let Place::Drill(name) = place {
            let shown = Shown::named(name).expect("a drill's name");
            world.resource_mut::<DrillRes>().show(shown, 7);
        }
        if place == Place::Film {
            let mut bench = film_of(CLASSIC_MISTAKES, usize::MAX);
            let film = bench.film_mut().expect("a film");
            film.show(ShownFilm::FirstLoss);
            film.wait();
            bench.refresh();
            bench.wait_for_review();
            world.insert_resource(bench);
        }
        let mut bench = world.resource_mut::<BenchRes>();
        if bench.asked.is_some() {
            bench.step_back();
        }
        if place == Place::Caution {
            for action in [Action::OpenCabinet, Action::Inspect(Part::Motor)] {
                bench.push(action);
                bench.tick();
            }
            assert!(bench.asked.is_some(), "a caution");
        }
        if place == Place::Finished {
            let given_up = ScriptStep::Do(Action::Report(Report::given_up()));
            bench.run(&given_up).expect("a job can be given up");
            bench.refresh();
            bench.wait_for_review();
        }
        world.resource_mut::<NextState<Screen>>().set(screen);
        self.frames(4);
        let context = self.context();
        context.memory_mut(|memory| {
            if let Some(id) = memory.focused() {
                memory.surrender_focus(id);
            }
        });
        self.frames(3);
    }

    fn press(&mut self, key_code: KeyCode, logical_key: Key, state: ButtonState) {
        send_key(&mut self.app, key_code, logical_key, state);
    }

    /// Tab, or Shift and Tab; until the page has followed.
    fn tab(&mut self, back: bool) {
        let shift = |walker: &mut Walker, state| {
            if back {
                walker.press(KeyCode::ShiftLeft, Key::Shift, state);
            }
        };
        shift(self, ButtonState::Pressed);
        for state in [ButtonState::Pressed, ButtonState::Released] {
            self.press(KeyCode::Tab, Key::Tab, state);
        }
        self.frames(1);
        shift(self, ButtonState::Released);
        self.frames(3);
    }

    fn focused(&mut self) -> Option<Id> {
        self.context().memory(egui::Memory::focused)
    }

    /// What reading software is told, by number.
    fn nodes(&mut self) -> BTreeMap<u64, Node> {
        let world = self.app.world_mut();
        let mut outputs = world.query_filtered::<&EguiOutput, With<PrimaryEguiContext>>();
        let output = outputs.single(world).expect("one output");
        let update = output.platform_output.accesskit_update.as_ref();
        (update.expect("a tree").nodes.iter())
            .map(|(id, node)| (id.0, node.clone()))
            .collect()
    }

    /// Everything that is laid out and not shut off by a question, in its order.
    fn widgets(&mut self) -> Vec<egui::WidgetRect> {
        let context = self.context();
        let widgets: Vec<egui::WidgetRect> = context.viewport(|viewport| {
            let layers = viewport.prev_pass.widgets.layers();
            layers.flat_map(|(_, widgets)| widgets.to_vec()).collect()
        });
        let open = |widget: &egui::WidgetRect| {
            context.memory(|memory| memory.allows_interaction(widget.layer_id))
        };
        widgets.into_iter().filter(open).collect()
    }

    /// All that can be pressed or have the keys now, in the order in which it is laid out.
    fn stops(&mut self) -> Vec<Stop> {
        let nodes = self.nodes();
        let widgets = self.widgets().into_iter().filter(|widget| widget.enabled);
        widgets
            .filter_map(|widget| {
                let node = nodes.get(&widget.id.accesskit_id().0);
                let clicks = node.is_some_and(|node| {
                    node.supports_action(Ask::Click) && node.role() != Role::Label
                });
                let focusable = widget.sense.is_focusable();
                let name = node.and_then(|node| {
                    let mut by = node.labelled_by().iter();
                    let by = by.find_map(|id| {
                        let named_by = nodes.get(&id.0)?;
                        Some(named_by.label().or(named_by.value())?.to_owned())
                    });
                    node.label().map(str::to_owned).or(by)
                });
                // The bar of a page that scrolls; the page follows the keys.
                let thinner = widget.rect.width().min(widget.rect.height());
                let bar = name.is_none() && !focusable && thinner < 8.0;
                ((clicks && !bar) || focusable).then(|| Stop {
                    id: widget.id,
                    name: name.unwrap_or_default(),
                    clickable: clicks,
                    focusable,
                    rect: widget.rect,
                    seen: widget.interact_rect,
                })
            })
            .collect()
    }

    /// Everything that can be read or pressed now: its words, whether it lies on others' ground, its place and the part
    /// of it that is in sight.
    fn items(&mut self) -> Vec<Item> {
        let nodes = self.nodes();
        let mut items = Vec::new();
        for widget in self.widgets() {
            let Some(node) = nodes.get(&widget.id.accesskit_id().0) else {
                continue;
            };
            let words = node.label().or(node.value()).unwrap_or_default();
            if !words.trim().is_empty() {
                items.push(Item {
                    id: widget.id,
                    layer: widget.layer_id,
                    words: words.to_owned(),
                    rect: widget.rect,
                    seen: widget.interact_rect,
                });
            }
        }
        items
    }

    /// Scrolls to it as reading software would: what is in sight of it then.
    fn scroll_to(&mut self, id: Id) -> Option<Item> {
        use bevy_egui::egui::accesskit::{ActionRequest, TreeId};
        for _ in 0..2 {
            let request = ActionRequest {
                action: Ask::ScrollIntoView,
                target_tree: TreeId::ROOT,
                target_node: id.accesskit_id(),
                data: None,
            };
            let world = self.app.world_mut();
            let mut inputs = world.query_filtered::<&mut EguiInput, With<PrimaryEguiContext>>();
            let mut input = inputs.single_mut(world).expect("one input");
            (input.events).push(egui::Event::AccessKitActionRequest(request));
            self.frames(2);
        }
        // The keys move the page that a list lies on: to its top, and from there down.
        let (up, down) = (
            (KeyCode::PageUp, Key::PageUp),
            (KeyCode::PageDown, Key::PageDown),
        );
        for (key_code, logical_key) in [up, down].into_iter().flat_map(|key| vec![key; 16]) {
            let now = self.items().into_iter().find(|item| item.id == id);
            if now.as_ref().is_none_or(|now| !now.is_hidden()) {
                return now;
            }
            for state in [ButtonState::Pressed, ButtonState::Released] {
                self.press(key_code, logical_key.clone(), state);
            }
            // It glides.
            self.frames(8);
        }
        self.items().into_iter().find(|item| item.id == id)
    }

    /// What is outside the window, cut off or under something else, one line for each.
    fn misplaced(&mut self) -> Vec<String> {
        const SLACK: f32 = 2.0;
        let window = self.context().content_rect();
        let items = self.items();
        let mut wrong = Vec::new();
        for item in &items {
            let (rect, seen) = (item.rect, item.seen);
            let outside =
                rect.left() < window.left() - SLACK || rect.right() > window.right() + SLACK;
            let cut = seen.height() > 4.0 && seen.width() < rect.width() - SLACK;
            if outside || cut {
                wrong.push(format!("cut off: {} {rect:?}, {seen:?}", item.words));
            }
        }
        for (n, item) in items.iter().enumerate() {
            for other in &items[n + 1..] {
                let shared = item.seen.intersect(other.seen);
                let overlap = shared.width() > SLACK && shared.height() > SLACK;
                let within = |a: Area, b: Area| b.expand(SLACK).contains_rect(a);
                let nested = within(item.rect, other.rect) || within(other.rect, item.rect);
                if overlap && !nested && item.layer == other.layer {
                    let (one, two) = (&item.words, &other.words);
                    wrong.push(format!(
                        "over each other: {one} {:?}, {two} {:?}",
                        item.rect, other.rect
                    ));
                }
            }
        }
        // What is lowest in each column can be scrolled to, and so can all above it.
        let mut lowest: BTreeMap<i32, &Item> = BTreeMap::new();
        for item in items.iter().filter(|item| item.is_hidden()) {
            let column = (item.rect.center().x / 150.0) as i32;
            let low = lowest.entry(column).or_insert(item);
            if item.rect.bottom() > low.rect.bottom() {
                *low = item;
            }
        }
        for item in lowest.into_values() {
            if self.scroll_to(item.id).is_none_or(|now| now.is_hidden()) {
                wrong.push(format!("out of reach: {} {:?}", item.words, item.rect));
            }
        }
        wrong
    }

    /// Whether a ring is drawn round this place.
    fn has_ring(&mut self, around: Area) -> bool {
        let world = self.app.world_mut();
        let mut outputs = world.query_filtered::<&EguiRenderOutput, With<PrimaryEguiContext>>();
        let output = outputs.single(world).expect("one output");
        let drawn: Vec<egui::Pos2> = (output.paint_jobs.iter())
            .filter_map(|job| match &job.primitive {
                egui::epaint::Primitive::Mesh(mesh) => Some(&mesh.vertices),
                egui::epaint::Primitive::Callback(_) => None,
            })
            .flatten()
            .filter(|vertex| vertex.color == tokens::SKY)
            .map(|vertex| vertex.pos)
            .collect();
        let sides = [
            around.left_center(),
            around.right_center(),
            around.center_top(),
            around.center_bottom(),
        ];
        let straight = |side: &egui::Pos2, at: &egui::Pos2| {
            (side.x - at.x).abs().min((side.y - at.y).abs()) < 6.0
        };
        let band = around.expand(6.0);
        (sides.iter()).all(|side| {
            drawn
                .iter()
                .any(|at| band.contains(*at) && straight(side, at))
        })
    }

    /// Walks the focus through what is shown, there and back: what is wrong, one line for each.
    ///
    /// What is `numbered` is gone through by its numbers.
    fn walk(&mut self, numbered: bool) -> Vec<String> {
        const MOST: usize = 600;
        let mut wrong = Vec::new();
        let mut order: Vec<Id> = Vec::new();
        // A question has its safe answer focused from the start; the rest is gone through from the first.
        let first = self.stops().into_iter().find(|stop| stop.focusable);
        if let (Some(_), Some(first)) = (self.focused(), first) {
            self.context()
                .memory_mut(|memory| memory.request_focus(first.id));
            self.frames(2);
            self.tab(true);
        }
        let mut before: Option<(Stop, Vec<Stop>)> = None;
        loop {
            self.tab(false);
            let stops = self.stops();
            let Some(id) = self.focused() else {
                wrong.push(format!(
                    "after {:?} nothing has the focus",
                    before.map(|b| b.0.name)
                ));
                break;
            };
            if order.first() == Some(&id) {
                break;
            }
            if order.contains(&id) || order.len() > MOST {
                wrong.push(format!(
                    "trap: {:?}",
                    stops.iter().find(|stop| stop.id == id)
                ));
                break;
            }
            order.push(id);
            let Some(stop) = stops.iter().find(|stop| stop.id == id).cloned() else {
                wrong.push(format!("{id:?} is nowhere"));
                break;
            };
            if stop.name.trim().is_empty() {
                wrong.push(format!("without a name: {stop:?}"));
            }
            let in_sight = stop.seen.width() >= stop.rect.width().min(24.0) - 1.0
                && stop.seen.height() >= stop.rect.height().min(24.0) - 1.0;
            if !in_sight {
                wrong.push(format!("out of sight: {stop:?}"));
            } else if !self.has_ring(stop.seen) {
                wrong.push(format!("without a ring: {stop:?}"));
            }
            if let Some((last, stops)) = &before {
                // Where both stood before the page followed.
                let next = stops.iter().find(|other| other.id == id);
                if let Some(next) = next
                    && !follows(last.rect, next.rect)
                    && !numbered
                {
                    wrong.push(format!(
                        "jumps: {} {:?} to {} {:?}",
                        last.name, last.rect, next.name, next.rect
                    ));
                }
            }
            before = Some((stop, stops));
        }
        for stop in self.stops() {
            if stop.clickable && !order.contains(&stop.id) {
                wrong.push(format!("not reached: {stop:?}"));
            }
        }
        // Back again, from the first to the last and on.
        let mut back = order.clone();
        back.reverse();
        for expected in back {
            self.tab(true);
            let id = self.focused();
            if id != Some(expected) {
                wrong.push(format!("back: {id:?}, not {expected:?}"));
                break;
            }
        }
        wrong
    }
}

/// The eye goes on from one place to the next: along a line, down, or to a panel further right.
fn follows(from: Area, to: Area) -> bool {
    const SLACK: f32 = 3.0;
    let shared = from.bottom().min(to.bottom()) - from.top().max(to.top());
    let one_line = shared > 0.5 * from.height().min(to.height());
    if one_line {
        return to.center().x > from.center().x;
    }
    to.top() >= from.top() - SLACK || to.left() >= from.right() - SLACK
}

fn report(found: &BTreeMap<String, Vec<String>>) {
    let wrong: usize = found.values().map(Vec::len).sum();
    let lines: Vec<String> = (found.iter())
        .flat_map(|(place, wrong)| wrong.iter().map(move |line| format!("{place}: {line}")))
        .collect();
    assert_eq!(wrong, 0, "\n{}", lines.join("\n"));
}

/// WCAG 2.2: 2.1.1, 2.1.2, 2.4.3, 2.4.7, 2.4.11 and 4.1.2.
#[test]
fn the_focus_goes_through_every_screen_and_back() {
    let mut found = BTreeMap::new();
    for language in Language::ALL {
        let mut walker = Walker::new(language, (1366, 768), 1.0);
        for place in places() {
            walker.show(place);
            let wrong = walker.walk(has_own_order(place));
            if !wrong.is_empty() {
                found.insert(format!("{language:?} {place:?}"), wrong);
            }
        }
    }
    report(&found);
}

/// WCAG 2.2, 2.5.8: 24 points each way, or a circle of 24 points about it that touches no other target and no such
/// circle of another small one.
#[test]
fn what_is_pressed_is_large_enough() {
    const LEAST: f32 = 24.0;
    let mut found = BTreeMap::new();
    for (language, size) in [
        (Language::En, (1366, 768)),
        (Language::Es, (1366, 768)),
        (Language::Es, (390, 844)),
    ] {
        let mut walker = Walker::new(language, size, 1.0);
        for place in places() {
            walker.show(place);
            let stops: Vec<Stop> = (walker.stops().into_iter())
                .filter(|stop| stop.clickable)
                .collect();
            let is_small =
                |stop: &Stop| stop.rect.width() < LEAST - 0.5 || stop.rect.height() < LEAST - 0.5;
            let crowded = |small: &Stop, other: &Stop| {
                let middle = small.rect.center();
                let circle = LEAST / 2.0;
                small.id != other.id
                    && (other.rect.distance_to_pos(middle) < circle
                        || (is_small(other) && other.rect.center().distance(middle) < 2.0 * circle))
            };
            let wrong: Vec<String> = (stops.iter())
                .filter(|stop| is_small(stop))
                .filter(|stop| stops.iter().any(|other| crowded(stop, other)))
                .map(|stop| format!("small: {stop:?}"))
                .collect();
            if !wrong.is_empty() {
                found.insert(format!("{language:?} {size:?} {place:?}"), wrong);
            }
        }
    }
    report(&found);
}

/// Windows in which everything is shown or scrolled to: their sizes in pixels, and how many of those a point is. The
/// last two are text at 200 % (WCAG 2.2, 1.4.4).
const SIZES: [((u32, u32), f32); 7] = [
    ((1024, 600), 1.0),
    ((1280, 720), 1.0),
    ((768, 1024), 1.0),
    ((820, 1180), 1.0),
    ((390, 844), 1.0),
    ((1366, 768), 2.0),
    ((1280, 720), 2.0),
];

#[test]
fn nothing_is_cut_off_on_a_small_screen_or_with_large_text() {
    let mut found = BTreeMap::new();
    for language in Language::ALL {
        for (size, zoom) in SIZES {
            let mut walker = Walker::new(language, size, zoom);
            for place in places() {
                walker.show(place);
                let wrong = walker.misplaced();
                if !wrong.is_empty() {
                    found.insert(format!("{language:?} {size:?}×{zoom} {place:?}"), wrong);
                }
            }
        }
    }
    report(&found);
}

/// Ticket and tabs change sides, at every size at which they stand side by side; the keys go from left to right still.
#[test]
fn for_the_left_hand_the_panels_change_sides() {
    let mut found = BTreeMap::new();
    for size in [(1366, 768), (768, 1024)] {
        let mut sides = Vec::new();
        for left_handed in [false, true] {
            let mut walker = Walker::new(Language::En, size, 1.0);
            walker.left_handed = left_handed;
            let place = Place::Bench(Tab::Sheet, Page::Codes);
            walker.show(place);
            let at = |walker: &mut Walker, key: &str| {
                let label = Texts::load(Language::En).get(key);
                let items = walker.items().into_iter();
                let mut items = items.filter(|item| item.words == label);
                items.next().expect("it is shown").rect.center().x
            };
            let (ticket, tab) = (at(&mut walker, "ticket-work"), at(&mut walker, "tab-parts"));
            sides.push(ticket < tab);
            let mut wrong = walker.walk(false);
            wrong.extend(walker.misplaced());
            if !wrong.is_empty() {
                found.insert(format!("{size:?}, left-handed: {left_handed}"), wrong);
            }
        }
        assert_eq!(sides, [true, false], "{size:?}");
    }
    report(&found);
}

/// With text at 200 % the keys get everywhere too.
#[test]
fn the_focus_goes_through_every_screen_with_large_text() {
    let mut found = BTreeMap::new();
    let mut walker = Walker::new(Language::Es, (1280, 720), 2.0);
    for place in places() {
        walker.show(place);
        let wrong = walker.walk(has_own_order(place));
        if !wrong.is_empty() {
            found.insert(format!("{place:?}"), wrong);
        }
    }
    report(&found);
}
