//! The entry gesture as data, and the timed automaton that it is compiled to.
//!
//! A gesture is flattened into edges, each with the one input that takes it and a guard on the time
//! since the edge before. Three clocks run: since the try began, since the step began, since the last
//! edge. Each input of a try leaves a line, so that a failed try can be explained.

use crate::interface::{Button, Direction};
use crate::names;
use crate::units::{Span, TICK_MS};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use std::collections::VecDeque;

/// How many tries are remembered.
pub(super) const TRIES_KEPT: usize = 24;

/// Detents past the count of a gesture's first turn that are still a miscount: whoever turns on further without a
/// rest chooses a program. Our own choice: who counts wrong or has a worn dial is one or two off, and who forgets what
/// comes between two turns of six and three is three off.
pub(super) const MOST_MISCOUNTED: usize = 3;

/// The way into service mode.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Gesture {
    /// Time without an input before a try can begin, ms.
    pub rest_ms: u32,
    /// From the first input to the end of the last at most so long, ms. Long enough for what the steps ask.
    pub within_ms: u32,
    /// Where the knob must stand before the first input; anywhere if not given.
    #[serde(default)]
    pub from: Option<u8>,
    /// What to do, in order; at least one step.
    #[schemars(length(min = 1))]
    pub steps: Vec<GestureStep>,
    /// The same steps in another order, which opens service mode as well; empty where there is only one order.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[schemars(extend("default" = []))]
    pub or_steps: Vec<GestureStep>,
    /// Shortest time from each input to the next detent, press or move of the lid, ms.
    #[serde(default, skip_serializing_if = "is_zero")]
    #[schemars(extend("default" = 0))]
    pub gap_ms: u32,
}

fn is_zero(value: &u32) -> bool {
    *value == 0
}

impl Gesture {
    /// Where the knob must stand, and how long, while there is no power.
    pub fn standing(&self) -> Option<Standing> {
        match self.steps.first() {
            Some(GestureStep::PowerUp { standing, .. }) => *standing,
            _ => None,
        }
    }
}

/// What a control that is given power asks of the time before it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Standing {
    /// Position of the switch.
    pub at: u8,
    /// It stood there for at least so long without power, until power came, ms.
    pub min_ms: u32,
}

/// Where the knob is at an input.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Knob {
    /// Position before the input.
    pub before: u8,
    /// Position now.
    pub at: u8,
    /// How long it has stood there without power, ms.
    pub dark_ms: u32,
}

/// One step of the way into service mode. Each `window_ms` is counted from the end of the step before; without one
/// only the time of the whole gesture counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub enum GestureStep {
    /// Turn the knob. Two turns in a row go opposite ways.
    Turn {
        /// Which way.
        to: Direction,
        /// How many detents.
        #[schemars(range(min = 1))]
        detents: u8,
        /// Own window, ms.
        #[serde(default)]
        window_ms: Option<u32>,
    },
    /// Press and let go.
    Press {
        /// Which button.
        button: Button,
        /// How many times.
        #[serde(default = "once")]
        #[schemars(range(min = 1))]
        times: u8,
        /// Each time not longer than this, ms. At least `debounce_ms`.
        max_ms: u32,
        /// Own window, ms.
        #[serde(default)]
        window_ms: Option<u32>,
    },
    /// Press, wait and let go.
    Hold {
        /// Which button.
        button: Button,
        /// Not shorter than this, ms.
        min_ms: u32,
        /// Not longer than this, ms. At least `min_ms` and `debounce_ms`.
        max_ms: u32,
        /// Own window, ms.
        #[serde(default)]
        window_ms: Option<u32>,
    },
    /// Press and keep pressed through the steps that follow.
    Push {
        /// Which button.
        button: Button,
        /// Own window, ms.
        #[serde(default)]
        window_ms: Option<u32>,
    },
    /// Let a pushed button go.
    Release {
        /// Which button.
        button: Button,
        /// Not sooner than this after the input before, ms.
        #[serde(default)]
        min_ms: u32,
        /// Own window, ms.
        #[serde(default)]
        window_ms: Option<u32>,
    },
    /// Move the lid.
    Lid {
        /// Which way.
        to: LidMove,
        /// Own window, ms.
        #[serde(default)]
        window_ms: Option<u32>,
    },
    /// Give the control power while it has none. Only as the first step.
    PowerUp {
        /// The one button that is held meanwhile, pushed until a later step lets it go.
        holding: Option<Button>,
        /// Where the switch stood before; anywhere if not given. Only a `Switch` shows it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = null))]
        standing: Option<Standing>,
    },
    /// Do nothing. Between two other steps.
    Pause {
        /// Not shorter than this, ms.
        min_ms: u32,
    },
    /// Press two buttons in the same moment, hold them and let both go.
    Together {
        /// The two buttons.
        buttons: (Button, Button),
        /// The second goes down at most so long after the first, ms.
        apart_ms: u32,
        /// Both are down for at least so long, ms.
        #[serde(default)]
        min_ms: u32,
        /// The first of them comes up after at most so long, ms. At least `min_ms` and `debounce_ms`.
        max_ms: u32,
        /// Own window, ms.
        #[serde(default)]
        window_ms: Option<u32>,
    },
}

fn once() -> u8 {
    1
}

/// A movement of the lid.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
pub enum LidMove {
    /// Lifted.
    Up,
    /// Put down.
    Down,
}

/// One input of a person, as the control saw it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum GestureInput {
    /// One detent.
    Detent(Direction),
    /// A button went down.
    Down(Button),
    /// A button came up.
    Up(Button),
    /// The lid moved.
    Lid(LidMove),
    /// Power came while this button alone was held, or none.
    PowerUp(Option<Button>),
}

/// The rule that ended a try. Steps are counted from 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum EntryError {
    /// The input came after its window.
    Late {
        /// Step.
        step: u8,
        /// By how much, ms.
        by_ms: u32,
    },
    /// Turned the other way.
    WrongWay {
        /// Step.
        step: u8,
    },
    /// Turned on past the last detent of the step.
    TooManyDetents {
        /// Step.
        step: u8,
    },
    /// Went on before the step's detents were all there.
    TooFewDetents {
        /// Step.
        step: u8,
        /// Detents seen.
        got: u8,
        /// Detents asked for.
        want: u8,
    },
    /// A press took too long.
    PressTooLong {
        /// Step.
        step: u8,
        /// By how much, ms.
        by_ms: u32,
    },
    /// A hold was let go too early.
    HoldTooShort {
        /// Step.
        step: u8,
        /// By how much, ms.
        by_ms: u32,
    },
    /// A hold was let go too late.
    HoldTooLong {
        /// Step.
        step: u8,
        /// By how much, ms.
        by_ms: u32,
    },
    /// Another input than the step asks for.
    OutOfOrder {
        /// Step.
        step: u8,
    },
    /// The whole window ended and nothing more came.
    WindowOver {
        /// Step that was open.
        step: u8,
    },
    /// The input came before the shortest wait was over.
    TooSoon {
        /// Step.
        step: u8,
        /// By how much, ms.
        by_ms: u32,
    },
    /// Power came before the switch had stood long enough where it has to stand.
    StoodTooShort {
        /// Step.
        step: u8,
        /// By how much, ms.
        by_ms: u32,
    },
}

names! {
    /// The rules of a try, without where and by how much they were broken. Their texts are `rule-{name}` and
    /// `broke-{name}`.
    EntryRule {
        Late = "late", WrongWay = "wrong-way", TooManyDetents = "too-many-detents",
        TooFewDetents = "too-few-detents", PressTooLong = "press-too-long",
        HoldTooShort = "hold-too-short", HoldTooLong = "hold-too-long",
        OutOfOrder = "out-of-order", WindowOver = "window-over", TooSoon = "too-soon",
        StoodTooShort = "stood-too-short",
    }
}

impl EntryError {
    /// Which rule it was.
    pub fn rule(self) -> EntryRule {
        match self {
            EntryError::Late { .. } => EntryRule::Late,
            EntryError::WrongWay { .. } => EntryRule::WrongWay,
            EntryError::TooManyDetents { .. } => EntryRule::TooManyDetents,
            EntryError::TooFewDetents { .. } => EntryRule::TooFewDetents,
            EntryError::PressTooLong { .. } => EntryRule::PressTooLong,
            EntryError::HoldTooShort { .. } => EntryRule::HoldTooShort,
            EntryError::HoldTooLong { .. } => EntryRule::HoldTooLong,
            EntryError::OutOfOrder { .. } => EntryRule::OutOfOrder,
            EntryError::WindowOver { .. } => EntryRule::WindowOver,
            EntryError::TooSoon { .. } => EntryRule::TooSoon,
            EntryError::StoodTooShort { .. } => EntryRule::StoodTooShort,
        }
    }
}

/// One input of a try against what was expected of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct TraceLine {
    /// Step that was open, from 0.
    pub step: u8,
    /// Time since the try began, ms.
    pub at_ms: u32,
    /// Earliest time at which the input would have been right, ms since the try began.
    pub from_ms: u32,
    /// Latest such time, ms since the try began.
    pub until_ms: u32,
    /// The input that was expected.
    pub expected: GestureInput,
    /// The input that came, or none when time ran out.
    pub got: Option<GestureInput>,
    /// The rule it broke.
    pub broke: Option<EntryError>,
}

/// How a try ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Outcome {
    /// Still going on.
    Open,
    /// Service mode was entered.
    Entered,
    /// A rule was broken.
    Broken(EntryError),
    /// Begun in a fault hold, in which the control takes no gesture, however well it is done.
    InHold,
}

/// One try at the gesture.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Try {
    /// Control time at which it began, s since the control was made.
    pub began_s: u32,
    /// Each input in order.
    pub lines: Vec<TraceLine>,
    /// How it ended.
    pub outcome: Outcome,
}

impl Try {
    /// The panel was used as always, and the gesture's first step only looked begun. A turn that goes on past its
    /// count, without a rest, by more than [`MOST_MISCOUNTED`] detents chooses a program; and so does a button that
    /// the step keeps pressed and that was let go again before anything else was used.
    pub(super) fn is_plain_use(&self) -> bool {
        let broken = |line: &TraceLine| line.broke.is_some();
        let Some(place) = self.lines.iter().position(broken) else {
            return false;
        };
        let (right, wrong) = self.lines.split_at(place);
        let goes_on = |line: &&TraceLine| line.broke == Some(TURNED_ON);
        wrong.iter().filter(goes_on).count() > MOST_MISCOUNTED
            || wrong.len() == 1 && only_pressed(right, &wrong[0])
    }
}

/// The first turn of a gesture went on past its last detent.
const TURNED_ON: EntryError = EntryError::TooManyDetents { step: 0 };

/// The button that went down first came up again next.
fn only_pressed(right: &[TraceLine], next: &TraceLine) -> bool {
    match (right, next.got) {
        ([first], Some(GestureInput::Up(button))) => first.got == Some(GestureInput::Down(button)),
        _ => false,
    }
}

impl GestureStep {
    /// The step's own window, ms.
    pub fn window_ms(&self) -> Option<u32> {
        match *self {
            GestureStep::Turn { window_ms, .. }
            | GestureStep::Press { window_ms, .. }
            | GestureStep::Hold { window_ms, .. }
            | GestureStep::Push { window_ms, .. }
            | GestureStep::Release { window_ms, .. }
            | GestureStep::Lid { window_ms, .. }
            | GestureStep::Together { window_ms, .. } => window_ms,
            GestureStep::PowerUp { .. } | GestureStep::Pause { .. } => None,
        }
    }

    /// Shortest time in which the control can see the whole step, ms: detents a tick apart, a
    /// contact resting `debounce_ms` in each state.
    pub fn shortest_ms(&self, debounce_ms: u32) -> u32 {
        match *self {
            GestureStep::Turn { detents, .. } => u32::from(detents) * TICK_MS as u32,
            GestureStep::Press { times, .. } => 2 * debounce_ms * u32::from(times),
            GestureStep::Hold { min_ms, .. } | GestureStep::Together { min_ms, .. } => {
                debounce_ms + min_ms.max(debounce_ms)
            }
            // The contact of what follows may come to rest meanwhile.
            GestureStep::Pause { min_ms } => min_ms.saturating_sub(debounce_ms),
            GestureStep::Release { min_ms, .. } => min_ms.max(debounce_ms),
            GestureStep::Push { .. } | GestureStep::Lid { .. } => debounce_ms,
            GestureStep::PowerUp { .. } => 0,
        }
    }

    /// How many inputs of a step wait for the shortest gap of the gesture.
    pub fn deeds(&self) -> u8 {
        match *self {
            GestureStep::Turn { detents, .. } => detents,
            GestureStep::Press { times, .. } => times,
            GestureStep::Hold { .. }
            | GestureStep::Push { .. }
            | GestureStep::Lid { .. }
            | GestureStep::Together { .. } => 1,
            GestureStep::Release { .. }
            | GestureStep::PowerUp { .. }
            | GestureStep::Pause { .. } => 0,
        }
    }
}

/// One edge of the automaton.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Edge {
    step: u8,
    input: GestureInput,
    /// Of two buttons at once, the other one. Every second edge of these takes what the one before it left.
    or: Option<GestureInput>,
    /// Where the switch has to have stood.
    standing: Option<Standing>,
    /// Guard on the time since the edge before, ms.
    min_ms: u32,
    max_ms: Option<u32>,
    /// True for a hold, whose guard breaks have names of their own.
    hold: bool,
    /// Latest time since the step before ended, ms.
    window_ms: Option<u32>,
    /// Place within the step, and the step's number of edges.
    nth: u8,
    of: u8,
}

/// The compiled gesture.
#[derive(Clone, Debug)]
pub(super) struct Automaton {
    /// The edges of each order that is taken; at least one.
    paths: Vec<Vec<Edge>>,
    rest_ticks: u32,
    within_ms: u32,
    from: Option<u8>,
}

impl Automaton {
    /// Flattens a gesture into edges.
    pub fn compile(gesture: &Gesture) -> Automaton {
        let other = Some(&gesture.or_steps).filter(|steps| !steps.is_empty());
        let orders = std::iter::once(&gesture.steps).chain(other);
        Automaton {
            paths: orders.map(|steps| edges(steps, gesture.gap_ms)).collect(),
            rest_ticks: gesture.rest_ms / TICK_MS as u32,
            within_ms: gesture.within_ms,
            from: gesture.from,
        }
    }

    /// The edges of one order.
    fn edges(&self, path: u8) -> &[Edge] {
        self.paths.get(usize::from(path)).map_or(&[], Vec::as_slice)
    }

    /// Whether `input` may begin a try.
    fn begins(&self, input: GestureInput, knob: Knob) -> bool {
        let power = |input| matches!(input, GestureInput::PowerUp(_));
        self.paths.iter().any(|edges| match edges.first() {
            // Power that comes in another way is no try at all, and neither is anything after it.
            Some(first) if power(first.input) || power(input) => first.input == input,
            Some(_) => {
                // A button coming up belongs to what was before.
                !matches!(input, GestureInput::Up(_))
                    && self.from.is_none_or(|from| from == knob.before)
            }
            None => false,
        })
    }
}

/// One order of a gesture, flattened.
fn edges(steps: &[GestureStep], gap_ms: u32) -> Vec<Edge> {
    let mut edges: Vec<Edge> = Vec::new();
    let mut pause_ms = 0;
    for (index, step) in steps.iter().enumerate() {
        let mut push = |input, min_ms: u32, max_ms, hold, nth, of| {
            let gap_ms = match input {
                GestureInput::Up(_) | GestureInput::PowerUp(_) => 0,
                GestureInput::Detent(_) | GestureInput::Down(_) | GestureInput::Lid(_) => gap_ms,
            };
            let wait_ms = std::mem::take(&mut pause_ms).max(gap_ms);
            // The first input has nothing to wait for.
            let wait_ms = if edges.is_empty() { 0 } else { wait_ms };
            edges.push(Edge {
                step: index as u8,
                input,
                or: None,
                standing: None,
                min_ms: min_ms.max(wait_ms),
                max_ms,
                hold,
                window_ms: step.window_ms(),
                nth,
                of,
            });
        };
        match *step {
            GestureStep::Turn { to, detents, .. } => {
                for nth in 0..detents {
                    push(GestureInput::Detent(to), 0, None, false, nth, detents);
                }
            }
            GestureStep::Press {
                button,
                times,
                max_ms,
                ..
            } => {
                for nth in 0..times {
                    let of = 2 * times;
                    push(GestureInput::Down(button), 0, None, false, 2 * nth, of);
                    let up = GestureInput::Up(button);
                    push(up, 0, Some(max_ms), false, 2 * nth + 1, of);
                }
            }
            GestureStep::Hold {
                button,
                min_ms,
                max_ms,
                ..
            } => {
                push(GestureInput::Down(button), 0, None, true, 0, 2);
                push(GestureInput::Up(button), min_ms, Some(max_ms), true, 1, 2);
            }
            GestureStep::Push { button, .. } => {
                push(GestureInput::Down(button), 0, None, true, 0, 1);
            }
            GestureStep::Release { button, min_ms, .. } => {
                push(GestureInput::Up(button), min_ms, None, true, 0, 1);
            }
            GestureStep::Lid { to, .. } => {
                push(GestureInput::Lid(to), 0, None, false, 0, 1);
            }
            GestureStep::PowerUp { holding, standing } => {
                push(GestureInput::PowerUp(holding), 0, None, false, 0, 1);
                if let Some(edge) = edges.last_mut() {
                    edge.standing = standing;
                }
            }
            GestureStep::Pause { min_ms } => pause_ms = pause_ms.max(min_ms),
            GestureStep::Together {
                buttons: (one, other),
                apart_ms,
                min_ms,
                max_ms,
                ..
            } => {
                let (down, up) = (GestureInput::Down, GestureInput::Up);
                push(down(one), 0, None, true, 0, 4);
                push(down(other), 0, Some(apart_ms), true, 1, 4);
                push(up(one), min_ms, Some(max_ms), true, 2, 4);
                push(up(other), 0, None, true, 3, 4);
                let first = edges.len() - 4;
                for (edge, or) in
                    edges[first..]
                        .iter_mut()
                        .zip([down(other), down(one), up(other), up(one)])
                {
                    edge.or = Some(or);
                }
                // They go down at once, whatever the gap.
                edges[first + 1].min_ms = 0;
            }
        }
    }
    edges
}

/// Where the automaton stands.
#[derive(Clone, Debug, Default, Serialize)]
pub(super) struct Entry {
    /// The edge that comes next; of a try that is over, the one that it was broken at, until a rest or another input.
    edge: u16,
    /// Ticks since the try began, the step began, the last edge, the last input.
    since_try: u32,
    since_step: u32,
    since_edge: u32,
    quiet: u32,
    running: bool,
    tries: VecDeque<Try>,
    /// Which order the try goes in.
    #[serde(skip_serializing_if = "is_first")]
    path: u8,
}

fn is_first(path: &u8) -> bool {
    *path == 0
}

fn ms(ticks: u32) -> u32 {
    ticks.saturating_mul(TICK_MS as u32)
}

impl Entry {
    /// Latest tries, oldest first.
    pub fn tries(&self) -> (&[Try], &[Try]) {
        self.tries.as_slices()
    }

    /// Forgets the open try but not the trace (the control lost power or changed its mode).
    pub fn restart(&mut self) {
        self.running = false;
        self.quiet = u32::MAX / 2;
    }

    /// One tick without an input. `pressed`: a button is down.
    pub fn tick(&mut self, automaton: &Automaton, pressed: bool) {
        self.quiet = self.quiet.saturating_add(1);
        if !self.running {
            // A rest ends what belongs to the try before it.
            if self.quiet >= automaton.rest_ticks {
                self.edge = 0;
            }
            if self.edge == 0 {
                return;
            }
        }
        self.since_try += 1;
        self.since_step += 1;
        self.since_edge += 1;
        if !self.running {
            return;
        }
        if ms(self.since_try) > automaton.within_ms
            && !pressed
            && self.quiet >= automaton.rest_ticks
        {
            let step = automaton.edges(self.path)[usize::from(self.edge)].step;
            self.note(automaton, None, Some(EntryError::WindowOver { step }));
        }
    }

    /// One input, with the knob as it is then. True when it completed a gesture that is heeded. `now_s`:
    /// control time, s. `begun_as`: how a try stands that begins with this input.
    pub fn input(
        &mut self,
        automaton: &Automaton,
        input: GestureInput,
        knob: Knob,
        now_s: u32,
        begun_as: Outcome,
    ) -> bool {
        let quiet = std::mem::take(&mut self.quiet);
        if !self.running {
            if quiet < automaton.rest_ticks {
                self.go_on(automaton, input);
                return false;
            }
            if !automaton.begins(input, knob) {
                return false;
            }
            self.begin(now_s, begun_as);
        }
        let mut broke = self.judge(automaton, self.path, input, knob);
        if broke.is_some()
            && let Some(path) = self.other_order(automaton, input, knob)
        {
            (self.path, broke) = (path, None);
        }
        self.note(automaton, Some(input), broke);
        if broke.is_some() {
            return false;
        }
        let edges = automaton.edges(self.path);
        let done = edges[usize::from(self.edge)];
        self.edge += 1;
        self.since_edge = 0;
        if done.nth + 1 == done.of {
            self.since_step = 0;
        }
        if usize::from(self.edge) == edges.len() {
            return self.settle(Outcome::Entered);
        }
        false
    }

    /// An input before the next rest after a broken try. It leaves a line where it tells a miscount from plain use:
    /// more of the first turn, or what follows the first button.
    fn go_on(&mut self, automaton: &Automaton, input: GestureInput) {
        let lines = (self.tries.back()).map_or(&[][..], |last| last.lines.as_slice());
        let broke = match lines {
            _ if self.edge == 0 => None,
            [.., last] if last.broke == Some(TURNED_ON) => {
                let more = lines.iter().filter(|line| line.broke == Some(TURNED_ON));
                let counts = last.got == Some(input) && more.count() <= MOST_MISCOUNTED;
                counts.then_some(TURNED_ON)
            }
            [first, last] if last.broke.is_some() && only_pressed(&lines[..1], last) => {
                let step = last.step;
                (first.got != Some(input)).then_some(EntryError::OutOfOrder { step })
            }
            _ => None,
        };
        if broke.is_some() {
            self.note(automaton, Some(input), broke);
            self.since_edge = 0;
        } else {
            self.edge = 0;
        }
    }

    /// Ends the present try; false where it could come to nothing from the start.
    fn settle(&mut self, outcome: Outcome) -> bool {
        self.running = false;
        let open = (self.tries.back_mut()).filter(|last| last.outcome == Outcome::Open);
        open.map(|last| last.outcome = outcome).is_some()
    }

    fn begin(&mut self, now_s: u32, outcome: Outcome) {
        if self.tries.len() == TRIES_KEPT {
            self.tries.pop_front();
        }
        self.tries.push_back(Try {
            began_s: now_s,
            lines: Vec::new(),
            outcome,
        });
        self.edge = 0;
        self.path = 0;
        self.since_try = 0;
        self.since_step = 0;
        self.since_edge = 0;
        self.running = true;
    }

    /// Another order that begins as this try did and takes the input.
    fn other_order(&self, automaton: &Automaton, input: GestureInput, knob: Knob) -> Option<u8> {
        let done = usize::from(self.edge);
        let so_far = &automaton.edges(self.path)[..done];
        (0..automaton.paths.len() as u8).find(|path| {
            let edges = automaton.edges(*path);
            edges.len() > done
                && edges[..done] == *so_far
                && self.judge(automaton, *path, input, knob).is_none()
        })
    }

    /// What an edge takes now: of two buttons at once either, and then the other.
    fn wanted(&self, edge: &Edge) -> (GestureInput, Option<GestureInput>) {
        let (Some(or), true) = (edge.or, edge.nth % 2 == 1) else {
            return (edge.input, edge.or);
        };
        let lines = self.tries.back().map(|last| last.lines.as_slice());
        let before = lines.and_then(|lines| lines.last()?.got);
        (
            if before == Some(edge.input) {
                or
            } else {
                edge.input
            },
            None,
        )
    }

    fn judge(
        &self,
        automaton: &Automaton,
        path: u8,
        input: GestureInput,
        knob: Knob,
    ) -> Option<EntryError> {
        let edges = automaton.edges(path);
        let edge = &edges[usize::from(self.edge)];
        let step = edge.step;
        let (wanted, or) = self.wanted(edge);
        if input != wanted && Some(input) != or {
            let previous = usize::from(self.edge)
                .checked_sub(1)
                .map(|index| &edges[index]);
            return Some(match (edge.input, input) {
                (GestureInput::Detent(_), GestureInput::Detent(_)) if edge.nth > 0 => {
                    EntryError::WrongWay { step }
                }
                // The dial goes on in the direction of the step just finished.
                (_, GestureInput::Detent(_)) if previous.is_some_and(|p| p.input == input) => {
                    let step = previous.map_or(step, |p| p.step);
                    EntryError::TooManyDetents { step }
                }
                (GestureInput::Detent(_), GestureInput::Detent(_)) => EntryError::WrongWay { step },
                (GestureInput::Detent(_), _) if edge.nth > 0 => EntryError::TooFewDetents {
                    step,
                    got: edge.nth,
                    want: edge.of,
                },
                _ => EntryError::OutOfOrder { step },
            });
        }
        if let Some(standing) = edge.standing {
            let stood_ms = if knob.at == standing.at {
                knob.dark_ms
            } else {
                0
            };
            if stood_ms < standing.min_ms {
                let by_ms = standing.min_ms - stood_ms;
                return Some(EntryError::StoodTooShort { step, by_ms });
            }
        }
        let over = |time_ms: u32, limit: Option<u32>| {
            limit
                .filter(|limit| time_ms > *limit)
                .map(|limit| time_ms - limit)
        };
        let since_edge = ms(self.since_edge);
        let lets_go = matches!(input, GestureInput::Up(_));
        if since_edge < edge.min_ms {
            let by_ms = edge.min_ms - since_edge;
            return Some(if lets_go {
                EntryError::HoldTooShort { step, by_ms }
            } else {
                EntryError::TooSoon { step, by_ms }
            });
        }
        if let Some(by_ms) = over(since_edge, edge.max_ms) {
            return Some(match (lets_go, edge.hold) {
                (true, true) => EntryError::HoldTooLong { step, by_ms },
                (true, false) => EntryError::PressTooLong { step, by_ms },
                (false, _) => EntryError::Late { step, by_ms },
            });
        }
        over(ms(self.since_step), edge.window_ms)
            .or_else(|| over(ms(self.since_try), Some(automaton.within_ms)))
            .map(|by_ms| EntryError::Late { step, by_ms })
    }

    /// Writes a line; a broken rule ends the try.
    fn note(
        &mut self,
        automaton: &Automaton,
        got: Option<GestureInput>,
        broke: Option<EntryError>,
    ) {
        let edge = &automaton.edges(self.path)[usize::from(self.edge)];
        let (wanted, or) = self.wanted(edge);
        let expected = got.filter(|got| or == Some(*got)).unwrap_or(wanted);
        let at_ms = ms(self.since_try);
        let edge_began = at_ms - ms(self.since_edge);
        let step_began = at_ms - ms(self.since_step);
        let until_ms = [
            Some(automaton.within_ms),
            edge.window_ms.map(|w| step_began + w),
            edge.max_ms.map(|m| edge_began + m),
        ]
        .into_iter()
        .flatten()
        .min()
        .unwrap_or(automaton.within_ms);
        if let Some(current) = self.tries.back_mut() {
            current.lines.push(TraceLine {
                step: edge.step,
                at_ms,
                from_ms: edge_began + edge.min_ms,
                until_ms,
                expected,
                got,
                broke,
            });
        }
        if let Some(rule) = broke {
            self.settle(Outcome::Broken(rule));
        }
    }
}

/// Makes one try at a gesture, out of rest and from the right position, without a machine: each input
/// with the time since the one before (of the first, which begins the try, it does not count). How the try
/// stands after the last of them.
pub fn rehearse(
    gesture: &Gesture,
    inputs: impl IntoIterator<Item = (Span, GestureInput)>,
) -> Outcome {
    let automaton = Automaton::compile(gesture);
    let mut entry = Entry::default();
    entry.restart();
    let standing = gesture.standing();
    let at = standing
        .map(|standing| standing.at)
        .or(gesture.from)
        .unwrap_or_default();
    let knob = Knob {
        before: at,
        at,
        dark_ms: u32::MAX,
    };
    let mut pressed = 0_i32;
    for (gap, input) in inputs {
        for _ in 0..gap.0 {
            entry.tick(&automaton, pressed > 0);
        }
        entry.input(&automaton, input, knob, 0, Outcome::Open);
        match input {
            GestureInput::Down(_) | GestureInput::PowerUp(Some(_)) => pressed += 1,
            GestureInput::Up(_) => pressed -= 1,
            GestureInput::Detent(_) | GestureInput::Lid(_) | GestureInput::PowerUp(None) => {}
        }
        match entry.tries.back().map(|attempt| attempt.outcome) {
            None | Some(Outcome::Open) => {}
            Some(over) => return over,
        }
    }
    Outcome::Open
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::controller::tries::Tries;
    use GestureInput::{Detent, Down, Up};

    fn gesture() -> Gesture {
        Gesture {
            rest_ms: 500,
            within_ms: 4000,
            from: None,
            steps: vec![
                GestureStep::Turn {
                    to: Direction::Left,
                    detents: 2,
                    window_ms: None,
                },
                GestureStep::Press {
                    button: Button::Stop,
                    times: 1,
                    max_ms: 400,
                    window_ms: Some(1500),
                },
                GestureStep::Hold {
                    button: Button::Start,
                    min_ms: 500,
                    max_ms: 1000,
                    window_ms: None,
                },
            ],
            ..Gesture::default()
        }
    }

    /// Plays inputs at their times (ms since the first) after a rest; answers the last outcome.
    #[track_caller]
    fn play(inputs: &[(u32, GestureInput)]) -> Outcome {
        let entry = played(&gesture(), inputs);
        entry.tries.back().map_or(Outcome::Open, |t| t.outcome)
    }

    #[track_caller]
    fn played(gesture: &Gesture, inputs: &[(u32, GestureInput)]) -> Entry {
        let automaton = Automaton::compile(gesture);
        let mut entry = Entry::default();
        for _ in 0..100 {
            entry.tick(&automaton, false);
        }
        let mut pressed = false;
        let mut next = inputs.iter().peekable();
        for tick in 0..1000 {
            while let Some((_, input)) = next.next_if(|(at, _)| *at == tick * 10) {
                pressed = matches!(input, Down(_));
                entry.input(&automaton, *input, Knob::default(), 0, Outcome::Open);
            }
            entry.tick(&automaton, pressed);
        }
        assert!(next.peek().is_none());
        entry
    }

    /// The outcomes of the tries that count as meant.
    #[track_caller]
    fn meant(gesture: &Gesture, inputs: &[(u32, GestureInput)]) -> Vec<Outcome> {
        let entry = played(gesture, inputs);
        let tries = Tries::of(&[], entry.tries()).meant_since(0.0);
        tries.iter().map(|one| one.outcome).collect()
    }

    const L: GestureInput = Detent(Direction::Left);
    const R: GestureInput = Detent(Direction::Right);

    #[test]
    fn the_right_inputs_in_time_enter() {
        assert_eq!(
            play(&[
                (0, L),
                (200, L),
                (600, Down(Button::Stop)),
                (750, Up(Button::Stop)),
                (1200, Down(Button::Start)),
                (1900, Up(Button::Start)),
            ]),
            Outcome::Entered
        );
    }

    #[test]
    fn each_slip_names_the_rule_it_broke() {
        let stop = [(600, Down(Button::Stop)), (750, Up(Button::Stop))];
        let check = |inputs: &[(u32, GestureInput)], broke| {
            assert_eq!(play(inputs), Outcome::Broken(broke), "{inputs:?}");
        };
        check(&[(0, R)], EntryError::WrongWay { step: 0 });
        check(&[(0, L), (200, R)], EntryError::WrongWay { step: 0 });
        check(
            &[(0, L), (200, L), (300, L)],
            EntryError::TooManyDetents { step: 0 },
        );
        check(
            &[(0, L), (600, Down(Button::Stop))],
            EntryError::TooFewDetents {
                step: 0,
                got: 1,
                want: 2,
            },
        );
        check(
            &[(0, L), (200, L), (400, Down(Button::Start))],
            EntryError::OutOfOrder { step: 1 },
        );
        check(
            &[
                (0, L),
                (200, L),
                (600, Down(Button::Stop)),
                (1100, Up(Button::Stop)),
            ],
            EntryError::PressTooLong {
                step: 1,
                by_ms: 100,
            },
        );
        check(
            &[(0, L), (200, L), (1900, Down(Button::Stop))],
            EntryError::Late {
                step: 1,
                by_ms: 200,
            },
        );
        let hold = |until| {
            [
                (0, L),
                (200, L),
                stop[0],
                stop[1],
                (1200, Down(Button::Start)),
                (until, Up(Button::Start)),
            ]
        };
        check(
            &hold(1600),
            EntryError::HoldTooShort {
                step: 2,
                by_ms: 100,
            },
        );
        check(
            &hold(2300),
            EntryError::HoldTooLong {
                step: 2,
                by_ms: 100,
            },
        );
        check(
            &[
                (0, L),
                (200, L),
                stop[0],
                stop[1],
                (3400, Down(Button::Start)),
                (4100, Up(Button::Start)),
            ],
            EntryError::Late {
                step: 2,
                by_ms: 100,
            },
        );
        check(&[(0, L), (200, L)], EntryError::WindowOver { step: 1 });
    }

    /// So many detents one way, `each_ms` apart from `from_ms` on.
    fn turn(
        input: GestureInput,
        from_ms: u32,
        detents: u32,
        each_ms: u32,
    ) -> Vec<(u32, GestureInput)> {
        let detent = |n| (from_ms + n * each_ms, input);
        (0..detents).map(detent).collect()
    }

    /// Two detents are asked for: up to five are a miscount, more without a rest choose a program.
    #[test]
    fn a_turn_far_past_its_count_is_no_try_and_a_miscount_is_one() {
        let gesture = gesture();
        let miscounted = [Outcome::Broken(TURNED_ON)];
        let counts = |detents| meant(&gesture, &turn(L, 0, detents, 150));
        assert_eq!(counts(1), []);
        let over = EntryError::WindowOver { step: 1 };
        assert_eq!(counts(2), [Outcome::Broken(over)]);
        for detents in 3..=5 {
            assert_eq!(counts(detents), miscounted, "{detents} detents");
            let trace = played(&gesture, &turn(L, 0, detents, 150)).tries;
            let lines = &trace.back().expect("a try").lines;
            assert_eq!(lines.len(), detents as usize, "each of them shows");
            assert_eq!(
                lines.last().map(|line| line.at_ms),
                Some(150 * (detents - 1))
            );
        }
        for detents in [6, 12, 40] {
            assert_eq!(counts(detents), [], "{detents} detents");
        }
        // Who goes on with the gesture after one too many has tried it, whatever the next turn counts.
        let mut goes_on = turn(L, 0, 3, 150);
        goes_on.extend([(500, Down(Button::Stop)), (600, Up(Button::Stop))]);
        goes_on.extend(turn(L, 700, 9, 150));
        assert_eq!(meant(&gesture, &goes_on), miscounted);
        // After a rest it is another turn.
        let rested = [turn(L, 0, 3, 150), turn(L, 1000, 3, 150)].concat();
        assert_eq!(meant(&gesture, &rested), [miscounted, miscounted].concat());
        // A program that is chosen hides no try made before.
        let then_chosen = [turn(L, 0, 3, 150), turn(L, 1000, 9, 150)].concat();
        assert_eq!(meant(&gesture, &then_chosen), miscounted);
    }

    /// A button that a gesture keeps down also steps through a list of programs.
    #[test]
    fn a_button_that_is_only_pressed_is_no_try() {
        let (kept, other) = (Button::More, Button::Less);
        let gesture = Gesture {
            steps: vec![
                GestureStep::Push {
                    button: kept,
                    window_ms: None,
                },
                GestureStep::Press {
                    button: other,
                    times: 2,
                    max_ms: 400,
                    window_ms: None,
                },
                GestureStep::Release {
                    button: kept,
                    min_ms: 0,
                    window_ms: None,
                },
            ],
            ..gesture()
        };
        let press = |button, at_ms| [(at_ms, Down(button)), (at_ms + 100, Up(button))];
        let stepping = [press(kept, 0), press(kept, 300), press(kept, 2000)].concat();
        assert_eq!(meant(&gesture, &stepping), []);
        // Who lets go too soon and goes on with the gesture has tried it.
        let too_soon = [press(kept, 0), press(other, 300), press(other, 600)].concat();
        let broke = EntryError::OutOfOrder { step: 1 };
        assert_eq!(meant(&gesture, &too_soon), [Outcome::Broken(broke)]);
    }

    /// What is done after a whole gesture in a fault hold belongs to no try.
    #[test]
    fn nothing_is_added_to_a_gesture_that_was_done() {
        let press = GestureStep::Press {
            button: Button::Stop,
            times: 1,
            max_ms: 400,
            window_ms: None,
        };
        let gesture = Gesture {
            steps: vec![press],
            ..gesture()
        };
        let automaton = Automaton::compile(&gesture);
        let mut entry = Entry::default();
        entry.restart();
        for input in [Down(Button::Stop), Up(Button::Stop), Down(Button::Start), L] {
            entry.input(&automaton, input, Knob::default(), 0, Outcome::InHold);
            entry.tick(&automaton, false);
        }
        assert_eq!(entry.tries.len(), 1);
        assert_eq!(entry.tries[0].lines.len(), 2);
    }
}
