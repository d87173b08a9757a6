//! An exercise from making to printing by a person's hands: moves of the pointer, clicks, turns of the wheel and keys,
//! on the whole window, in both languages. A picture of each step stays in `tmp/pictures/workshop` of the target
//! directory, or where `DETENT_PICTURES` points.

use super::tree::{Tree, name};
use super::*;
use crate::rest::tests::{send, send_key, window};
use crate::shots;
use crate::software::SoftwarePicture;
use crate::workshop::{OwnTextFolder, WorkshopRes};
use bevy::a11y::AccessibilityRequested;
use bevy::input::ButtonState;
use bevy::input::keyboard::Key;
use bevy::input::mouse::{MouseButtonInput, MouseScrollUnit, MouseWheel};
use bevy::input::touch::TouchPhase;
use bevy::prelude::{KeyCode, MouseButton, Vec2, Window, With};
use bevy::window::CursorMoved;
use bevy_egui::{EguiContext, PrimaryEguiContext};
use detent_content::{
    ContentLibrary, FileProof, KnownBoards, ScenarioSource, check_file_in_slices,
};
use detent_simulation::interface::Component;
use detent_simulation::units::Span;
use detent_training::lesson::technician::{Persona, work};
use detent_training::lesson::{Bilingual, Hidden, Mains, Scenario, set_up};
use egui::accesskit::{Action as Asked, Node, NodeId};
use std::path::{Path, PathBuf};

#[path = "../../../../tests/paper/poppler.rs"]
mod poppler;

/// A laptop's screen, points.
const SIZE: (u32, u32) = (1366, 768);
/// Real time that background work may take, in rests of 20 ms.
const RESTS: u32 = 1_500;
/// Where the wheel is turned: not every place scrolls what is meant, points from the top.
const WHEEL_AT: [f32; 5] = [400.0, 250.0, 560.0, 160.0, 620.0];

/// Somebody in front of the window.
struct Hand {
    app: App,
    texts: Texts,
    tree: Tree,
    pictures: PathBuf,
    taken: u32,
}

impl Hand {
    /// In front of the start screen, as it comes up, with an empty folder for jobs of one's own.
    fn at(folder: &Path) -> Hand {
        let options = AppOptions {
            software: true,
            size: SIZE,
            ..AppOptions::default()
        };
        let jobs = LibraryJobs::new(None, None).expect("the built-in jobs are sound");
        let jobs = jobs.with_own_jobs(Box::new(OwnTextFolder::new(folder.to_owned())));
        let app = whole_window_with(&options, jobs);
        app.world().resource::<AccessibilityRequested>().set(true);
        let mut hand = Hand {
            app,
            texts: Texts::load(options.language),
            tree: Tree::default(),
            pictures: pictures(),
            taken: 0,
        };
        hand.frames(3);
        hand
    }

    fn frames(&mut self, count: u32) {
        for _ in 0..count {
            self.app.update();
            self.tree.take(&mut self.app);
        }
    }

    /// Lets the window's time pass.
    fn wait_s(&mut self, s: u32) {
        self.frames(10 * s);
    }

    /// What is worked out on another thread comes at its own time.
    #[track_caller]
    fn until(&mut self, what: &str, is: impl Fn(&Hand) -> bool) {
        for _ in 0..RESTS {
            self.frames(1);
            if is(self) {
                self.frames(3);
                return;
            }
            std::thread::sleep(Duration::from_millis(20));
        }
        panic!("{what} never came: {:#?}", self.names());
    }

    fn say(&self, key: &str) -> String {
        self.texts.get(key)
    }

    fn names(&self) -> Vec<&str> {
        let nodes = self.tree.in_order().into_iter();
        let names = nodes.map(|(_, node)| name(node));
        names.filter(|name| !name.is_empty()).collect()
    }

    fn shows(&self, text: &str) -> bool {
        self.tree.nodes.values().any(|node| name(node) == text)
    }

    #[track_caller]
    fn must_show(&self, text: &str) {
        assert!(self.shows(text), "{text:?} is not in {:#?}", self.names());
    }

    /// Those that the hand can do something to, after whatever has the name of `beside`, that are so.
    fn all(&self, beside: Option<&str>, is: impl Fn(&Node) -> bool) -> Vec<NodeId> {
        let order = self.tree.in_order();
        let from = match beside {
            Some(beside) => order.iter().position(|(_, node)| name(node) == beside),
            None => Some(0),
        };
        let found = order[from.unwrap_or(order.len())..].iter();
        let found = found.filter(|(_, node)| {
            node.role() != Role::Label
                && !node.is_disabled()
                && [Asked::Click, Asked::Focus]
                    .iter()
                    .any(|action| node.supports_action(*action))
                && is(node)
        });
        found.map(|(id, _)| *id).collect()
    }

    #[track_caller]
    fn find(&self, label: &str, beside: Option<&str>) -> NodeId {
        let found = self.all(beside, |node| self.tree.called(node) == label);
        let none = || {
            panic!(
                "nothing for a hand is called {label:?} beside {beside:?}: {:#?}",
                self.names()
            )
        };
        *found.first().unwrap_or_else(none)
    }

    fn context(&mut self) -> egui::Context {
        let mut contexts = self
            .app
            .world_mut()
            .query_filtered::<&mut EguiContext, With<PrimaryEguiContext>>();
        let mut context = contexts
            .single_mut(self.app.world_mut())
            .expect("one context");
        context.get_mut().clone()
    }

    /// Where something lies, and the part of that which can be seen.
    fn places(&mut self, node: NodeId) -> (egui::Rect, egui::Rect) {
        self.context().viewport(|viewport| {
            let mut layers = viewport.this_pass.widgets.layers();
            let found = layers.find_map(|(_, widgets)| {
                let mut widgets = widgets.iter();
                widgets.find(|widget| widget.id.accesskit_id() == node)
            });
            let found = found.expect("it is laid out");
            (found.rect, found.interact_rect)
        })
    }

    fn move_to(&mut self, at: egui::Pos2) {
        let entity = window(&mut self.app);
        let at = Vec2::new(at.x, at.y);
        let mut seen = (self.app.world_mut())
            .get_mut::<Window>(entity)
            .expect("a window");
        seen.set_cursor_position(Some(at));
        let moved = CursorMoved {
            window: entity,
            position: at,
            delta: None,
        };
        send(&mut self.app, moved);
        self.frames(1);
    }

    /// Turns the wheel until something can be seen; where that is then.
    #[track_caller]
    fn bring_into_view(&mut self, node: NodeId) -> egui::Pos2 {
        let mut places = WHEEL_AT.iter().cycle();
        let mut at = *places.next().expect("some");
        for _ in 0..80 {
            let (rect, seen) = self.places(node);
            let needed = rect.height().min(24.0) - 1.0;
            if seen.is_positive() && seen.height() >= needed && seen.contains(seen.center()) {
                return seen.center();
            }
            let x = rect.center().x.clamp(20.0, SIZE.0 as f32 - 20.0);
            self.move_to(egui::pos2(x, at));
            let up = rect.center().y < SIZE.1 as f32 / 2.0;
            self.wheel(if up { 90.0 } else { -90.0 });
            if self.places(node).0 == rect {
                at = *places.next().expect("some");
            }
        }
        panic!("it never came into view: {:?}", self.places(node));
    }

    fn wheel(&mut self, y: f32) {
        let turned = MouseWheel {
            unit: MouseScrollUnit::Pixel,
            x: 0.0,
            y,
            window: window(&mut self.app),
            phase: TouchPhase::Moved,
        };
        send(&mut self.app, turned);
        self.frames(4);
    }

    #[track_caller]
    fn click_node(&mut self, node: NodeId) {
        let at = self.bring_into_view(node);
        self.move_to(at);
        for state in [ButtonState::Pressed, ButtonState::Released] {
            let input = MouseButtonInput {
                button: MouseButton::Left,
                state,
                window: window(&mut self.app),
            };
            send(&mut self.app, input);
            self.frames(1);
        }
        self.frames(2);
    }

    #[track_caller]
    fn click_text(&mut self, label: &str) {
        let node = self.find(label, None);
        self.click_node(node);
    }

    #[track_caller]
    fn click(&mut self, key: &str) {
        let label = self.say(key);
        self.click_text(&label);
    }

    fn key(&mut self, key_code: KeyCode, key: Key) {
        for state in [ButtonState::Pressed, ButtonState::Released] {
            send_key(&mut self.app, key_code, key.clone(), state);
        }
        self.frames(2);
    }

    fn type_text(&mut self, text: &str) {
        let unknown = || KeyCode::Unidentified(bevy::input::keyboard::NativeKeyCode::Unidentified);
        for letter in text.chars() {
            let key = match letter {
                ' ' => Key::Space,
                letter => Key::Character(letter.to_string().into()),
            };
            for state in [ButtonState::Pressed, ButtonState::Released] {
                send_key(&mut self.app, unknown(), key.clone(), state);
            }
        }
        self.frames(3);
    }

    /// Types into the field of this name, over what stands there.
    #[track_caller]
    fn write(&mut self, label: &str, beside: Option<&str>, text: &str) {
        let field = self.find(label, beside);
        self.click_node(field);
        let control = |hand: &mut Hand, state| {
            send_key(&mut hand.app, KeyCode::ControlLeft, Key::Control, state);
            hand.frames(1);
        };
        control(self, ButtonState::Pressed);
        self.key(KeyCode::KeyA, Key::Character("a".into()));
        control(self, ButtonState::Released);
        self.type_text(text);
    }

    /// A number is typed over the one that stands there.
    #[track_caller]
    fn number(&mut self, key: &str, number: &str) {
        let label = self.say(key);
        let field = self.find(&label, None);
        self.click_node(field);
        self.type_text(number);
        self.key(KeyCode::Enter, Key::Enter);
    }

    /// Takes a row of a list that drops down.
    #[track_caller]
    fn choose(&mut self, list: &str, row: &str) {
        let list = self.all(None, |node| self.tree.called(node).starts_with(list));
        self.click_node(list[0]);
        let row = *(self.all(None, |node| self.tree.called(node) == row).last())
            .unwrap_or_else(|| panic!("there is no {row:?} in {:#?}", self.names()));
        self.click_node(row);
    }

    /// A picture with the hand out of the way.
    fn picture(&mut self, step: &str) {
        self.move_to(egui::pos2(2.0, 2.0));
        self.frames(4);
        self.taken += 1;
        let name = format!(
            "{}-{:02}-{step}.png",
            self.texts.language().code(),
            self.taken
        );
        let drawn = self.app.world().resource::<SoftwarePicture>();
        shots::save(drawn, &self.pictures.join(name)).expect("it can be written");
    }

    fn bench(&self) -> &BenchRes {
        self.app.world().resource::<BenchRes>()
    }

    /// Time on the machine's clock, ticks.
    fn machine_ticks(&self) -> u64 {
        (self.bench().view().machine.time_s * 100.0).round() as u64
    }
}

/// Where the pictures go.
fn pictures() -> PathBuf {
    let chosen = std::env::var_os("DETENT_PICTURES").filter(|value| !value.is_empty());
    let folder = chosen.map(PathBuf::from).unwrap_or_else(|| {
        let program = std::env::current_exe().expect("this test has a file");
        let target = program.ancestors().nth(3).expect("it is built in a folder");
        target.join("tmp/pictures/workshop")
    });
    std::fs::create_dir_all(&folder).expect("the folder can be written");
    folder
}

/// An exercise that somebody has in mind.
struct Exercise {
    language: Language,
    /// The job that it is a copy of; none where it is begun anew.
    copy_of: Option<&'static str>,
    /// Title, complaint and goal, each in English and in Spanish.
    words: [[&'static str; 2]; 3],
    mains: Mains,
    component: Component,
    fault: &'static str,
    seed: &'static str,
    minutes: &'static str,
    budget: &'static str,
    file: &'static str,
    paper: &'static str,
}

/// Begun anew; the fault is there all the time.
const NEW: Exercise = Exercise {
    language: Language::En,
    copy_of: None,
    words: [
        ["Full after the last rinse", "Llena tras el último aclarado"],
        [
            "It hummed for a while, then it stopped with the towels under water, and a light keeps blinking.",
            "Estuvo un rato zumbando y se paró con las toallas bajo el agua; una luz no deja de parpadear.",
        ],
        [
            "Tell what is stuck from what gets no power, and from what is blocked.",
            "Distinguir lo que está agarrotado de lo que no recibe tensión y de lo que está obstruido.",
        ],
    ],
    mains: Mains::V120Hz60,
    component: Component::DrainPump,
    fault: "drain-pump.seized",
    seed: "42",
    minutes: "95",
    budget: "160",
    file: "full-after-the-rinse",
    paper: "workshop-paper-letter",
};

/// A copy; the fault comes and goes.
const COPY: Exercise = Exercise {
    language: Language::Es,
    copy_of: Some("drain-code"),
    words: [
        ["Only with a full load", "Solo con la carga completa"],
        [
            "With a few shirts it gets to the end. When I fill it up, it stops halfway and a light blinks, but not every time.",
            "Con cuatro camisas termina. Si la lleno, se para a medias y parpadea una luz, pero no siempre.",
        ],
        [
            "Find a fault that is there only while it is damp.",
            "Encontrar una avería que solo aparece con humedad.",
        ],
    ],
    mains: Mains::V230Hz50,
    component: Component::Harness,
    fault: "harness.thermistor-pin-damp",
    seed: "521",
    minutes: "100",
    budget: "110",
    file: "solo-con-carga-completa",
    paper: "workshop-paper-a4",
};

#[test]
fn an_exercise_is_begun_proved_done_and_printed_by_hand_in_english() {
    whole_exercise(&NEW);
}

#[test]
fn an_exercise_is_copied_proved_done_and_printed_by_hand_in_spanish() {
    whole_exercise(&COPY);
}

fn whole_exercise(exercise: &Exercise) {
    let folder = tempfile::tempdir().expect("a folder");
    let mut hand = Hand::at(folder.path());
    if exercise.language != Language::En {
        hand.click_text(exercise.language.own_name());
        hand.texts = Texts::load(exercise.language);
    }
    hand.picture("start");
    begin(&mut hand, exercise);
    write(&mut hand, exercise);
    undo_and_redo(&mut hand);
    let promised = prove(&mut hand);
    let file = keep_and_check(&mut hand, exercise, folder.path());
    print(&mut hand, exercise, folder.path());
    try_and_return(&mut hand, exercise);
    do_the_job(&mut hand, exercise, &file, promised);
}

/// From the start screen into the workshop, and a job onto its bench.
fn begin(hand: &mut Hand, exercise: &Exercise) {
    hand.click("start-workshop");
    hand.picture("chooser");
    match exercise.copy_of {
        None => hand.click("workshop-new"),
        Some(original) => {
            let jobs = LibraryJobs::new(None, None).expect("the built-in jobs are sound");
            let mut offers = jobs.offers().iter();
            let offer = offers.find(|offer| offer.course.file == original);
            let title = say(exercise.language, &offer.expect("built in").title);
            let list = hand.say("workshop-copy");
            hand.choose(&list, title);
            hand.click("workshop-copy-do");
        }
    }
    hand.picture("begun");
}

/// Words, machine, fault and limits.
fn write(hand: &mut Hand, exercise: &Exercise) {
    let sentences = ["title", "complaint", "goal"].map(|of| format!("workshop-sentence-{of}"));
    for (sentence, words) in sentences.iter().zip(exercise.words) {
        let heading = hand.say(sentence);
        for (language, text) in [Language::En, Language::Es].into_iter().zip(words) {
            hand.write(language.own_name(), Some(&heading), text);
        }
    }
    hand.picture("words");
    let rating = exercise.mains.rating();
    hand.click_text(&format!("{:.0} V, {:.0} Hz", rating.volts, rating.hz));
    hand.number("workshop-seed", exercise.seed);
    hand.picture("machine");
    let modes = builtin_modes();
    let count = modes
        .iter()
        .filter(|mode| mode.component == exercise.component)
        .count();
    let args = [
        (
            "part",
            Value::from(hand.texts.component(exercise.component)),
        ),
        ("count", count.into()),
    ];
    let component = hand.texts.with("workshop-cabinet-part", &args);
    hand.click_text(&component);
    hand.picture("component");
    let fault = hand.texts.mode(exercise.fault);
    let rows = hand.all(Some(&component), |node| name(node).starts_with(&fault));
    hand.click_node(rows[0]);
    hand.picture("fault");
    hand.number("workshop-minutes", exercise.minutes);
    hand.number("workshop-budget", exercise.budget);
    hand.click("workshop-hints");
    hand.picture("limits");
    let name = hand.say("workshop-name");
    hand.write(&name, None, exercise.file);
    let written = scenario(hand);
    let both = |[en, es]: [&str; 2]| Bilingual {
        en: en.to_owned(),
        es: es.to_owned(),
    };
    let [title, complaint, goal] = exercise.words.map(both);
    assert_eq!(
        (&written.title, &written.complaint, &written.goal),
        (&title, &complaint, &goal)
    );
    assert_eq!(written.fault, Hidden::Named(exercise.fault.to_owned()));
    assert_eq!(written.mains, exercise.mains);
    let figures = [written.seed as f64, written.par_minutes, written.budget];
    let typed = [exercise.seed, exercise.minutes, exercise.budget];
    assert_eq!(figures.map(|figure| figure.to_string()), typed);
}

fn builtin_modes() -> Vec<detent_simulation::plant::FailureMode> {
    let library = ContentLibrary::builtin().expect("the built-in content is sound");
    library.catalogue.modes
}

/// The job on the workshop's bench.
fn scenario(hand: &Hand) -> Scenario {
    let workshop = hand.app.world().resource::<WorkshopRes>();
    workshop.open.as_ref().expect("open").scenario().clone()
}

/// What was ticked by mistake goes, comes and goes again.
fn undo_and_redo(hand: &mut Hand) {
    hand.wait_s(3);
    let before = scenario(hand);
    hand.click("workshop-worn-lead");
    hand.wait_s(3);
    assert!(scenario(hand).worn_lead && !before.worn_lead);
    hand.click("workshop-undo");
    assert_eq!(scenario(hand), before);
    hand.picture("undone");
    hand.click("workshop-redo");
    assert!(scenario(hand).worn_lead);
    hand.click("workshop-undo");
    assert_eq!(scenario(hand), before);
}

/// Waits for the proof, has it expect the codes that came, and reads it; the share of the points that it promises.
fn prove(hand: &mut Hand) -> f64 {
    let told = [("told", Value::from(hand.say("workshop-proof-none")))];
    let proved = hand.texts.with("workshop-sound-proved", &told);
    hand.until("the proof", |hand| hand.shows(&proved));
    if scenario(hand).expected_codes.is_none() {
        hand.click("workshop-expects-codes");
        hand.until("the proof", |hand| hand.shows(&proved));
    }
    assert!(scenario(hand).expected_codes.is_some());
    let sound = hand.say("workshop-proof-sound");
    hand.must_show(&sound);
    let workshop = hand.app.world().resource::<WorkshopRes>();
    let open = workshop.open.as_ref().expect("open");
    let of_now = open.proof().of_now().and_then(|proved| proved.proof());
    let (scenario, proof) = of_now.expect("proved");
    let machine = &proof.machines[0];
    let needs = hand.texts.expert_needs(machine, scenario);
    let difficulty = machine.difficulty.as_ref().expect("it can be done");
    let share = difficulty.expert_share;
    hand.must_show(&needs);
    hand.picture("proof");
    let way = hand.say("review-best");
    let heading = hand.tree.in_order();
    let heading = heading.iter().find(|(_, node)| name(node) == way);
    let heading = heading.expect("the planner's way is told").0;
    hand.bring_into_view(heading);
    hand.picture("ways");
    hand.click("workshop-page-wash");
    hand.picture("wash");
    hand.click("workshop-page-job");
    share
}

/// The file, which `detent check` has nothing against.
fn keep_and_check(hand: &mut Hand, exercise: &Exercise, folder: &Path) -> ScenarioSource {
    hand.click("workshop-keep");
    let file = folder.join(format!("{}.ron", exercise.file));
    let place = file.display().to_string();
    let args = [("place", Value::from(place.as_str()))];
    let kept = hand.texts.with("workshop-kept", &args);
    hand.must_show(&kept);
    hand.picture("kept");
    let library = ContentLibrary::builtin().expect("the built-in content is sound");
    let source = library.scenario(&place).expect("it reads");
    let mut known = KnownBoards::default();
    known.learn(&library, &source.scenario.board, source.scenario.mains);
    let checked = check_file_in_slices(&library, &known, &place, source.text.as_bytes());
    let report = without_breaks(checked);
    assert_eq!(report.findings, []);
    assert!(matches!(report.proof, FileProof::Scenario(..)));
    source
}

/// Handout and key, whose text has what was typed.
fn print(hand: &mut Hand, exercise: &Exercise, folder: &Path) {
    hand.click("workshop-page-paper");
    hand.click(exercise.paper);
    hand.click("workshop-paper-do");
    let [handout, key] =
        ["handout", "key"].map(|what| folder.join(format!("{}-{what}.pdf", exercise.file)));
    let place = key.display().to_string();
    let args = [("place", Value::from(place.as_str()))];
    let printed = hand.texts.with("workshop-kept", &args);
    hand.until("the paper", |hand| hand.shows(&printed));
    hand.picture("paper");
    let [handout, key] = [handout, key].map(|file| std::fs::read(file).expect("printed"));
    let n = match exercise.language {
        Language::En => 0,
        Language::Es => 1,
    };
    let [title, complaint, _] = exercise.words.map(|both| both[n]);
    let fault = hand.texts.mode(exercise.fault);
    // A line may end anywhere between two words.
    let flowing = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
    let [for_learner, for_teacher] = [&handout, &key].map(|pdf| poppler::text(pdf, None));
    if let (Some(for_learner), Some(for_teacher)) = (for_learner, for_teacher) {
        let (for_learner, for_teacher) = (flowing(&for_learner), flowing(&for_teacher));
        for typed in [title, complaint] {
            assert!(for_learner.contains(typed), "{typed}: {for_learner}");
        }
        for typed in [title, &fault] {
            assert!(for_teacher.contains(typed), "{typed}: {for_teacher}");
        }
        assert!(!for_learner.contains(&fault), "{fault}: {for_learner}");
    }
    let code = exercise.language.code();
    for (what, pdf) in [("handout", handout), ("key", key)] {
        let pages = poppler::pictures(&pdf, 60).unwrap_or_default();
        for (n, page) in pages.iter().enumerate() {
            let head = format!("P5 {} {} 255\n", page.width, page.height);
            let bytes = [head.as_bytes(), &page.shades].concat();
            let name = format!("{code}-{what}-{}.pgm", n + 1);
            std::fs::write(hand.pictures.join(name), bytes).expect("it can be written");
        }
    }
}

/// The job is tried from the workshop, and the way back leads there.
fn try_and_return(hand: &mut Hand, exercise: &Exercise) {
    hand.click("workshop-page-job");
    hand.click("workshop-try");
    hand.until("the bench", |hand| screen(&hand.app) == Screen::Bench);
    hand.wait_s(1);
    let title = hand.bench().job().title.clone();
    assert_eq!([title.en.as_str(), title.es.as_str()], exercise.words[0]);
    hand.picture("tried");
    hand.click("leave-job");
    assert_eq!(screen(&hand.app), Screen::Workshop);
    hand.picture("back");
    hand.click("workshop-leave");
    hand.must_show(exercise.file);
    hand.picture("own-jobs");
    hand.click("practice-back");
    assert_eq!(screen(&hand.app), Screen::Start);
}

/// Begun on the start screen, done as the expert does it, the report written by hand: the score is the one promised.
fn do_the_job(hand: &mut Hand, exercise: &Exercise, source: &ScenarioSource, promised: f64) {
    let scenario = &source.scenario;
    let title = say(exercise.language, &scenario.title).to_owned();
    hand.click_text(&title);
    hand.picture("offered");
    hand.click("start-begin");
    hand.until("the bench", |hand| screen(&hand.app) == Screen::Bench);
    hand.click_text("||");
    hand.picture("job");
    let library = ContentLibrary::builtin().expect("the built-in content is sound");
    let of_job = library.library(scenario);
    // A clock goes on while it is on its way to be paused: the expert begins at the same moment.
    let mut begun = set_up(scenario, &of_job, scenario.seed).expect("sound");
    begun.wait(Span(hand.machine_ticks() - begun.now().0));
    let done = work(Persona::Expert, scenario, begun).expect("the expert can do it");
    let mut report = None;
    for (at, action) in done.history().iter() {
        for _ in hand.machine_ticks()..at.0 {
            hand.app.world_mut().resource_mut::<BenchRes>().tick();
        }
        match action {
            Action::Report(last) => report = Some(last.clone()),
            action => {
                let step = ScriptStep::Do(action.clone());
                let done = hand.app.world_mut().resource_mut::<BenchRes>().run(&step);
                done.unwrap_or_else(|error| panic!("{action:?}: {error}"));
            }
        }
    }
    hand.frames(3);
    hand.picture("done");
    hand_in(hand, &report.expect("the expert hands in a report"));
    hand.picture("score");
    hand.until("the review", |hand| !hand.bench().is_thinking());
    hand.picture("review");
    let score = hand.bench().score().expect("handed in");
    let share = score.total() / score.of();
    assert!(score.passed());
    assert!(
        (share - promised).abs() < 1e-9,
        "{share}, promised {promised}: {score:?}"
    );
}

/// Writes a report by hand: its causes, its proofs and its advice; the part that was fitted stands there by itself.
fn hand_in(hand: &mut Hand, report: &Report) {
    assert_eq!(report.verdict, Verdict::CausesNamed);
    hand.click("tab-report");
    for cause in &report.causes {
        let cause = hand.texts.mode(cause);
        let search = hand.say("search");
        hand.write(&search, None, &cause);
        hand.click_text(&cause);
    }
    hand.picture("cause");
    let readings = hand.bench().view().log.readings().len();
    let ticked = |hand: &Hand, n: usize| {
        let number = format!("{}   ", n + 1);
        hand.all(None, |node| {
            node.role() == Role::CheckBox && name(node).starts_with(&number)
        })
    };
    for reading in &report.proof {
        let box_of = ticked(hand, *reading)[0];
        hand.click_node(box_of);
    }
    for look in &report.looks {
        let behind = usize::from(*look < readings);
        let box_of = ticked(hand, *look)[behind];
        hand.click_node(box_of);
    }
    let shown = hand.say(&format!("advice-{}", report.advice));
    let list = hand.say("report-advice");
    let now = hand.app.world().resource::<UiState>().draft.advice;
    if now != report.advice {
        hand.choose(&list, &shown);
    }
    hand.picture("report");
    hand.click("report-hand-in");
    hand.wait_s(1);
}
