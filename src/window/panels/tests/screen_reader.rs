//! A whole job by somebody who sees nothing: names, roles and lines of AccessKit's tree, and what reading software may
//! ask for, are all that is used.

use super::tree::{Tree, name};
use super::*;
use bevy::a11y::{AccessibilityRequested, ActionRequest};
use egui::accesskit::{self, Action as Asked, Live, NodeId, Toggled, TreeId};

/// Whoever works through the tree alone.
struct Listener {
    app: App,
    texts: Texts,
    tree: Tree,
    /// Lines that were read out by themselves, in order.
    heard: Vec<String>,
}

impl Listener {
    fn at(options: &AppOptions) -> Listener {
        let app = whole_window(options);
        app.world().resource::<AccessibilityRequested>().set(true);
        let mut listener = Listener {
            app,
            texts: Texts::load(options.language),
            tree: Tree::default(),
            heard: Vec::new(),
        };
        listener.wait_s(1.0);
        listener
    }

    fn wait_s(&mut self, s: f64) {
        for _ in 0..(s * 10.0).ceil() as u32 {
            self.app.update();
            self.take_tree();
        }
    }

    fn take_tree(&mut self) {
        let Some(before) = self.tree.take(&mut self.app) else {
            return;
        };
        let nodes = self.tree.in_order().into_iter();
        let live =
            nodes.filter(|(_, node)| matches!(node.live(), Some(Live::Polite | Live::Assertive)));
        for (id, node) in live {
            let line = name(node).to_owned();
            if before.get(&id).is_none_or(|old| name(old) != line) {
                self.heard.push(line);
            }
        }
    }

    fn say(&self, key: &str) -> String {
        self.texts.get(key)
    }

    /// The first that has this name and something to press, after whatever has the name of `beside`.
    fn find(&self, label: &str, beside: Option<&str>) -> Option<NodeId> {
        let order = self.tree.in_order();
        let from = match beside {
            Some(beside) => order.iter().position(|(_, node)| name(node) == beside)?,
            None => 0,
        };
        let mut pressable = order[from..].iter().filter(|(_, node)| {
            name(node) == label && node.supports_action(Asked::Click) && !node.is_disabled()
        });
        pressable.next().map(|(id, _)| *id)
    }

    fn ask(&mut self, target_node: NodeId, action: Asked) {
        let request = accesskit::ActionRequest {
            action,
            target_tree: TreeId::ROOT,
            target_node,
            data: None,
        };
        self.app.world_mut().write_message(ActionRequest(request));
        self.wait_s(0.1);
    }

    /// Presses what has this name, as soon as it is there.
    fn press_beside(&mut self, label: &str, beside: Option<&str>) {
        for _ in 0..100 {
            if let Some(id) = self.find(label, beside) {
                self.ask(id, Asked::Click);
                self.wait_s(0.5);
                return;
            }
            self.wait_s(0.1);
        }
        panic!(
            "nothing to press is called {label:?} beside {beside:?}: {:#?}",
            self.names()
        );
    }

    fn press(&mut self, key: &str) {
        let label = self.say(key);
        self.press_beside(&label, None);
    }

    fn press_for(&mut self, key: &str, beside: &str) {
        let (label, beside) = (self.say(key), self.say(beside));
        self.press_beside(&label, Some(&beside));
    }

    fn names(&self) -> Vec<&str> {
        let nodes = self.tree.in_order().into_iter();
        let names = nodes.map(|(_, node)| name(node));
        names.filter(|name| !name.is_empty()).collect()
    }

    fn until(&mut self, what: &str, s: f64, is: impl Fn(&Listener) -> bool) {
        for _ in 0..(s * 10.0) as u32 {
            if is(self) {
                return;
            }
            self.wait_s(0.1);
        }
        panic!("{what} never came: {:#?}", self.heard);
    }

    /// What is thought over on another thread comes at its own time.
    fn until_thought(&mut self, what: &str, is: impl Fn(&Listener) -> bool) {
        for _ in 0..3_000 {
            if is(self) {
                return;
            }
            std::thread::sleep(Duration::from_millis(20));
            self.wait_s(0.1);
        }
        panic!("{what} never came: {:#?}", self.heard);
    }

    fn knob(&self) -> (NodeId, u8) {
        let label = self.say("name-dial");
        let found = (self.tree.nodes.iter()).find(|(_, node)| name(node) == label);
        let (id, node) = found.expect("there is a dial");
        assert_eq!(node.role(), Role::Slider);
        (
            *id,
            node.numeric_value().expect("it stands somewhere") as u8,
        )
    }

    fn turn(&mut self, detents: i32) {
        let asked = match detents.signum() {
            -1 => Asked::Decrement,
            _ => Asked::Increment,
        };
        for _ in 0..detents.abs() {
            let (knob, _) = self.knob();
            self.ask(knob, asked);
            self.wait_s(0.1);
        }
    }

    fn point(&mut self, position: u8) {
        let (_, at) = self.knob();
        let right = (i32::from(position) - i32::from(at)).rem_euclid(24);
        self.turn(if right <= 12 { right } else { right - 24 });
        self.wait_s(0.5);
        assert_eq!(self.knob().1, position);
    }

    /// What the lamps show, as it is read out.
    fn lamps(&self) -> &str {
        let prefix = self.say("lamps-seen");
        let prefix = prefix.split('{').next().unwrap_or_default();
        let prefix = prefix.split(':').next().unwrap_or_default();
        let names = self.names();
        let line = names
            .into_iter()
            .find(|name| name.starts_with(&format!("{prefix}: ")));
        line.unwrap_or_default()
    }

    /// The number that the lit lamps of each group add up to.
    fn number(&self) -> Option<u8> {
        let mut digits = self.lamps().split(';').take(2).map(|group| {
            let weights = group.rsplit(':').next().unwrap_or_default();
            let lit = weights.split(',').map(|n| n.trim().parse::<u8>());
            lit.sum::<Result<u8, _>>().unwrap_or(0)
        });
        Some(digits.next()? * 10 + digits.next()?)
    }

    /// Service mode shows the tens and the units in turn.
    fn in_service(&self) -> bool {
        let lamps = self.lamps();
        lamps.matches("5, 4, 2, 1").count() == 2
    }

    /// Presses a button of the console for as long as reading software does.
    fn tap(&mut self, key: &str) {
        self.press(key);
    }

    /// Keeps a button down so long with the bench's own switch.
    fn hold(&mut self, key: &str, s: f64) {
        let (button, keep) = (self.say(key), self.say("keep-next"));
        let keep = self.find(&keep, None).expect("the switch is there");
        self.ask(keep, Asked::Click);
        let button = self.find(&button, None).expect("the button is there");
        self.ask(button, Asked::Click);
        self.wait_s(s - 0.1);
        let node = &self.tree.nodes[&button];
        assert_eq!(node.toggled(), Some(Toggled::True), "it stays down");
        self.ask(button, Asked::Click);
    }

    fn enter_service_mode(&mut self) {
        self.turn(-6);
        self.tap("name-stop");
        self.turn(-3);
        self.hold("name-start", 1.7);
        self.until("service mode", 8.0, Listener::in_service);
    }

    fn minute(&mut self) {
        self.press("wait-1-min");
        let waits =
            |listener: &Listener| listener.app.world().resource::<BenchRes>().wait_ticks > 0;
        self.until("the minute's end", 600.0, |listener| !waits(listener));
    }
}

/// The first job, from the start screen to the score. Names only; the pointer is nowhere, and the code is read from
/// the words for the lamps.
#[test]
fn a_job_is_done_by_what_is_read_out_alone() {
    for language in Language::ALL {
        let mut listener = Listener::at(&AppOptions {
            language,
            flat: Some(language == Language::Es),
            ..AppOptions::default()
        });
        do_first_job(&mut listener);
    }
}

fn do_first_job(listener: &mut Listener) {
    listener.press("start-guided");
    listener.until_thought("the bench", |listener| {
        screen(&listener.app) == Screen::Bench
    });
    listener.wait_s(2.0);
    listener.press("do-unplug");
    listener.minute();
    listener.press("do-plug");
    listener.wait_s(3.5);
    listener.enter_service_mode();
    listener.point(1);
    listener.tap("name-start");
    listener.until("a code", 10.0, |listener| {
        !listener.in_service() && listener.number().is_some_and(|number| number > 0)
    });
    assert_eq!(listener.number(), Some(56), "{}", listener.lamps());
    // Nobody has to go and look: it was read out as it came.
    assert!(listener.heard.iter().any(|line| line == listener.lamps()));
    listener.press("sheet-lamps");
    (0..5).for_each(|_| listener.press("note-tens-more"));
    (0..6).for_each(|_| listener.press("note-units-more"));
    listener.press("note-code-do");
    listener.tap("name-stop");
    listener.wait_s(1.5);
    listener.press("do-unplug");
    listener.minute();
    listener.press("do-open-cabinet");
    listener.press("tab-meter");
    listener.press("do-test-meter");
    listener.press("do-discharge");
    listener.press_beside("V DC", None);
    for key in [
        "meter-red",
        "pin-bulk-plus",
        "meter-black",
        "pin-bulk-minus",
        "do-measure",
    ] {
        listener.press(key);
    }
    listener.wait_s(10.0);
    listener.press("do-test-meter");
    listener.press("look");
    listener.press_for("do-inspect", "component-belt");
    listener.wait_s(2.0);
    listener.press("tab-parts");
    listener.press_for("quote-part", "part-belt");
    listener.press("do-quote");
    listener.wait_s(2.0);
    listener.press_for("do-order", "part-belt");
    listener.press_for("do-fit", "part-belt");
    listener.wait_s(2.0);
    listener.press("do-close-cabinet");
    listener.press("do-plug");
    listener.wait_s(3.5);
    listener.press("tab-meter");
    listener.press("do-open-lid");
    listener.press_for("do-unload-basket", "component-laundry");
    listener.press("do-close-lid");
    listener.wait_s(2.0);
    listener.enter_service_mode();
    listener.point(22);
    listener.tap("name-start");
    listener.wait_s(2.0);
    listener.press("wait-until");
    let waits = |listener: &Listener| listener.app.world().resource::<BenchRes>().wait_ticks > 0;
    listener.until("the end of recalibration", 3_600.0, |listener| {
        !waits(listener)
    });
    listener.press_beside("×1", None);
    for _ in 0..3 {
        listener.tap("name-stop");
        listener.wait_s(2.0);
    }
    listener.press("do-open-lid");
    listener.press_for("do-load-basket", "component-laundry");
    listener.press("do-close-lid");
    listener.point(10);
    listener.tap("name-start");
    listener.wait_s(4.0);
    listener.press("wait-until");
    listener.until("the end of the wash", 9_000.0, |listener| !waits(listener));
    listener.press("ask");
    listener.press("ask-demonstration");
    listener.wait_s(2.0);
    listener.press("tab-report");
    listener.press("mode-belt-broken");
    listener.press("report-hand-in");
    listener.wait_s(3.0);
    let bench = listener.app.world().resource::<BenchRes>();
    assert!(bench.view().finished);
    listener.until_thought("the score", |listener| {
        listener
            .app
            .world()
            .resource::<BenchRes>()
            .score()
            .is_some()
    });
    let score = listener.app.world().resource::<BenchRes>().score();
    let points = score.expect("it is there").total();
    assert!(points > 99.0, "{points}: {:#?}", listener.names());
}
