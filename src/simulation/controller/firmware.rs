//! The control itself: supply levels, the panel, the modes and their changes.

use super::board::{Board, LidMoves, Phase, Selector};
use super::control_status::ControlStatus;
use super::debounce::Debounce;
use super::drive::{Demand, Drive};
use super::gesture::{Automaton, Entry, GestureInput, Knob, LidMove, Outcome, Try};
use super::io::{Inputs, Lamps, Outputs};
use super::lamps::{Governor, blink};
use super::memory::Memory;
use super::mode::ControlMode;
use super::monitor::{Monitor, Routine};
use super::program::{Progress, Run, Scene};
use super::sense::{Sense, mm_per_volt};
use super::service::{Request, Service, Touch};
use super::signs::Picture;
use super::tries::Tries;
use super::view::ControlView;
use super::watch::{Aim, Limits, Watch};
use crate::interface::{Button, Direction, Rating, Relay};
use crate::units::{Span, TICK_MS, TICK_S, TICKS_PER_S};
use serde::Serialize;
use std::sync::Arc;

/// A board made ready to run: looked up once instead of each tick.
#[derive(Debug)]
struct Firm {
    board: Board,
    limits: Limits,
    entry: Automaton,
    /// The gesture asks where the switch stood without power.
    asks_standing: bool,
    mm_per_v: f64,
    debounce_ticks: u16,
}

/// Whether the control has supply.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
enum Power {
    /// Below the reset level: nothing volatile is left.
    Off,
    /// Between reset and run level: it remembers but does nothing.
    Starved,
    /// At work.
    On,
}

#[derive(Clone, Debug, Serialize)]
enum Mode {
    Idle,
    Program(Run),
    Hold(Hold),
    Service(Service),
}

impl Mode {
    fn kind(&self) -> ControlMode {
        match self {
            Mode::Idle => ControlMode::Idle,
            Mode::Program(_) => ControlMode::Program,
            Mode::Hold(_) => ControlMode::Hold,
            Mode::Service(_) => ControlMode::Service,
        }
    }
}

/// A fault hold.
#[derive(Clone, Debug, Serialize)]
struct Hold {
    monitor: Monitor,
    ticks: u32,
    lid_closings: u8,
    since_closing: u32,
    /// When the lid moved, in ticks of the hold; kept only by a board that is reset by it.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    lid_moves: Vec<u32>,
}

impl Hold {
    /// As it begins.
    fn of(monitor: Monitor) -> Hold {
        Hold {
            monitor,
            ticks: 0,
            lid_closings: 0,
            since_closing: 0,
            lid_moves: Vec::new(),
        }
    }

    /// The lid moved; true when that was often enough.
    fn lid_moved(&mut self, rule: LidMoves) -> bool {
        let (now, within) = (self.ticks, rule.within_ms / TICK_MS as u32);
        self.lid_moves.retain(|at| now - at <= within);
        self.lid_moves.push(now);
        self.lid_moves.len() >= usize::from(rule.moves)
    }
}

/// Buttons and lid.
#[derive(Clone, Debug, Default, Serialize)]
struct Panel {
    buttons: [Debounce; Button::ALL.len()],
    lid: Debounce,
    /// Ticks since each button went down; kept through the tick in which it comes up.
    held: [u32; Button::ALL.len()],
}

impl Panel {
    /// The button has been down for so long.
    fn held_for(&self, button: Button, ms: u32) -> bool {
        let index = button.index();
        self.buttons[index].closed() && self.held[index] >= ms / TICK_MS as u32
    }
}

/// A control board with its firmware. One call of [`Controller::step`] is one tick of
/// [`TICK_MS`] milliseconds.
#[derive(Clone, Debug, Serialize)]
pub struct Controller {
    #[serde(skip)]
    firm: Arc<Firm>,
    ticks: u64,
    mode_ticks: u32,
    power: Power,
    panel: Panel,
    /// Position chosen.
    at: u8,
    sense: Sense,
    drive: Drive,
    watch: Watch,
    entry: Entry,
    mode: Mode,
    memory: Memory,
    /// What the lamps show, and since how many ticks.
    shown: Picture,
    shown_ticks: u32,
    governor: Governor,
    finished: u32,
    calibrations: u32,
    /// Where the switch stands without power, and for how many ticks; of boards whose gesture asks for it.
    #[serde(skip_serializing_if = "Option::is_none")]
    stood: Option<(u8, u32)>,
}

impl Controller {
    /// A board for this supply, without power. The board should have passed [`Board::check`].
    pub fn new(board: &Board, rating: Rating, memory: Memory) -> Controller {
        Controller {
            firm: Arc::new(Firm {
                board: board.clone(),
                limits: Limits::compile(board, rating),
                entry: Automaton::compile(&board.gesture),
                asks_standing: board.gesture.standing().is_some(),
                mm_per_v: mm_per_volt(board.pressure.v_per_kpa),
                debounce_ticks: (board.debounce_ms / TICK_MS as u32).max(1) as u16,
            }),
            ticks: 0,
            mode_ticks: 0,
            power: Power::Off,
            panel: Panel::default(),
            at: 0,
            sense: Sense::new(),
            drive: Drive::new(),
            watch: Watch::default(),
            entry: Entry::default(),
            mode: Mode::Idle,
            memory,
            shown: Picture::Dark,
            shown_ticks: 0,
            governor: Governor::default(),
            finished: 0,
            calibrations: 0,
            stood: None,
        }
    }

    /// The board that this control runs.
    pub fn board(&self) -> &Board {
        &self.firm.board
    }

    /// What survives without power.
    pub fn memory(&self) -> &Memory {
        &self.memory
    }

    /// The same control with another non-volatile memory.
    #[must_use]
    pub fn with_memory(mut self, memory: Memory) -> Controller {
        self.memory = memory;
        self
    }

    /// The same control with its tick count begun elsewhere: a board that replaces another goes on
    /// counting where that one stopped, so that the times of tries agree with the machine's.
    #[must_use]
    pub fn counting_from(mut self, ticks: u64) -> Controller {
        self.ticks = ticks;
        self
    }

    /// Tells the control where the dial points, in detents clockwise from the index. The dial's
    /// contacts only report steps, so whoever wires the board calls this when power comes (a
    /// board reads the coded ring of its dial once, at power-up). Later steps are counted, and
    /// the index contact sets the count to zero.
    pub fn set_dial(&mut self, position: u8) {
        if let Some(turn) = self.firm.board.panel.selector.turn() {
            self.at = position % turn.max(1);
        }
    }

    /// The position that the control takes to be chosen.
    pub fn position(&self) -> u8 {
        self.at
    }

    /// True while the control has enough supply to work.
    pub fn powered(&self) -> bool {
        self.power == Power::On
    }

    /// One tick.
    pub fn step(&mut self, inputs: &Inputs) -> Outputs {
        let firm = Arc::clone(&self.firm);
        let board = &firm.board;
        self.ticks += 1;
        if !self.supplied(&firm, inputs) {
            self.shown = Picture::Dark;
            return Outputs {
                lamps: self.governor.step(Lamps::default()),
                ..Outputs::default()
            };
        }
        self.mode_ticks = self.mode_ticks.saturating_add(1);
        let touch = self.read_panel(&firm, inputs);
        self.sense.step(
            board,
            firm.mm_per_v,
            firm.debounce_ticks,
            self.memory.calibration.as_ref(),
            inputs,
        );
        let (mut demand, aim) = self.step_mode(&firm, touch);
        self.watch.rest(&mut demand);
        let relays = self.drive.step(
            board,
            self.memory.calibration.as_ref(),
            &demand,
            &self.sense,
        );
        self.note_new_actuator(board);
        let raised = self
            .watch
            .step(board, &firm.limits, &aim, &demand, &self.sense, &self.drive);
        if let Some(monitor) = raised {
            self.raise(board, monitor);
        }
        Outputs {
            relays,
            lamps: self.show(board),
        }
    }

    /// The few things that whoever follows the control looks at in every tick.
    pub fn control_status(&self) -> ControlStatus {
        let mut control_status = ControlStatus {
            mode: match self.power {
                Power::Off => ControlMode::Off,
                Power::Starved => ControlMode::Starved,
                Power::On => self.mode.kind(),
            },
            hold: None,
            routine: None,
            calibrating: false,
            aborted: None,
            code_shown: None,
            stored: self.memory.codes.len() as u8,
            program: None,
            finished: self.finished,
            calibrations: self.calibrations,
        };
        if self.power != Power::On {
            return control_status;
        }
        match &self.mode {
            Mode::Idle => {}
            Mode::Program(run) => control_status.program = Some(run.program),
            Mode::Hold(hold) => control_status.hold = Some(hold.monitor),
            Mode::Service(service) => {
                control_status.routine = service.routine;
                control_status.aborted = service.aborted;
                control_status.calibrating = service.routine == Some(Routine::Recalibrate);
                if service.routine == Some(Routine::Recall) {
                    let stored = self.memory.codes.get(usize::from(service.page));
                    control_status.code_shown = stored.map(|c| c.code);
                }
                if let Some(monitor) = service.refused {
                    control_status.code_shown = self.firm.board.code_of(monitor);
                }
            }
        }
        control_status
    }

    /// Everything that the rest of a run depends on, as bytes for hashing.
    pub fn state_bytes(&self) -> Vec<u8> {
        postcard::to_allocvec(self).expect("plain state always serialises into memory")
    }

    /// Latest tries at the entry gesture, after those on boards that this one replaced.
    pub fn tries_after<'a>(&'a self, replaced: &'a [Try]) -> Tries<'a> {
        Tries::of(replaced, self.entry.tries())
    }

    /// What the control is doing.
    pub fn view(&self) -> ControlView<'_> {
        let board = &self.firm.board;
        let on = self.power == Power::On;
        let mut view = ControlView {
            position: self.at,
            stored: &self.memory.codes,
            calibrated: self.memory.calibration.is_some(),
            tries: self.tries_after(&[]),
            in_mode_s: f64::from(self.mode_ticks) * TICK_S,
            level_mm: self.sense.level_mm,
            water_c: self.sense.water_c,
            rpm: self.sense.rpm,
            ..ControlView::default()
        };
        if !on {
            return view;
        }
        if let Picture::Number(number) | Picture::NumberAnd(number, _) = self.shown {
            view.digits = Some(number);
        }
        view.mode = self.mode.kind();
        match &self.mode {
            Mode::Idle => {}
            Mode::Program(run) => {
                view.phase = run.phase(board).map(Phase::kind);
                view.program = board
                    .programs
                    .get(usize::from(run.program))
                    .map(|p| p.position);
                view.paused = run.paused || !self.panel.lid.closed();
            }
            Mode::Hold(hold) => view.hold = Some(hold.monitor),
            Mode::Service(service) => {
                view.routine = service.routine;
                view.aborted = service.aborted;
                if service.routine == Some(Routine::Recalibrate) {
                    view.stage = service.recal.stage(&board.recalibration.stages);
                }
                if let Some(Routine::Recall | Routine::Ages) = service.routine {
                    view.page = Some(service.page);
                }
            }
        }
        view
    }

    /// Follows the supply; true when the control can work. Without it the control sleeps on what the bulk
    /// capacitor still lets through, and remembers until that is used up.
    fn supplied(&mut self, firm: &Firm, inputs: &Inputs) -> bool {
        let board = &firm.board;
        if inputs.supplied {
            if self.power == Power::Off {
                self.panel.lid = Debounce::resting(inputs.lid_closed);
                self.panel.buttons = inputs.buttons.map(Debounce::resting);
                self.mode_ticks = 0;
                self.choose_first(&board.programs, |program| program.position);
                if let Some(monitor) = self.memory.hold {
                    self.mode = Mode::Hold(Hold::of(monitor));
                }
                let mut held = Button::ALL.iter().filter(|b| inputs.buttons[b.index()]);
                let one = held.next().copied().filter(|_| held.next().is_none());
                let knob = self.stood.map_or(Knob::default(), |(at, ticks)| Knob {
                    before: at,
                    at,
                    dark_ms: ticks.saturating_mul(TICK_MS as u32),
                });
                self.feed(firm, GestureInput::PowerUp(one), knob);
            }
            self.power = Power::On;
            self.stood = None;
            return true;
        }
        if firm.asks_standing {
            self.stood = inputs.switch_at.map(|at| match self.stood {
                Some((before, ticks)) if before == at => (at, ticks.saturating_add(1)),
                _ => (at, 1),
            });
        }
        self.drive.drop_out();
        if inputs.bulk_v >= firm.limits.reset_v() {
            if self.power == Power::On {
                self.power = Power::Starved;
            }
        } else if self.power != Power::Off {
            self.power = Power::Off;
            self.panel = Panel::default();
            self.sense = Sense::new();
            self.drive = Drive::new();
            self.watch.clear();
            self.entry.restart();
            self.mode = Mode::Idle;
            self.mode_ticks = 0;
        }
        false
    }

    /// Knob, buttons and lid; in idle mode and in a fault hold they also feed the entry gesture.
    fn read_panel(&mut self, firm: &Firm, inputs: &Inputs) -> Touch {
        let board = &firm.board;
        let panel = &mut self.panel;
        let mut moves = [None; Button::ALL.len()];
        for button in Button::ALL {
            let index = button.index();
            if panel.buttons[index].closed() {
                panel.held[index] = panel.held[index].saturating_add(1);
            }
            moves[index] = panel.buttons[index].step(inputs.buttons[index], firm.debounce_ticks);
            if moves[index] == Some(true) {
                panel.held[index] = 0;
            }
        }
        let lid = panel.lid.step(inputs.lid_closed, firm.debounce_ticks);
        let steps = self.turned(board.panel.selector, inputs);
        self.feed_gesture(firm, steps, &moves, lid);
        let went = |button: Button, down| moves[button.index()] == Some(down);
        let pages = board.service.page;
        let mut touch = Touch {
            start_down: went(Button::Start, true),
            start_up: went(Button::Start, false),
            stop_down: went(Button::Stop, true),
            page_down: went(pages, true),
            moved: steps != 0 || lid.is_some(),
            lid: lid.is_some(),
        };
        if board.panel.selector == Selector::Steps {
            let (more, less) = (went(Button::More, true), went(Button::Less, true));
            touch.moved |= more || less;
            if more || less {
                self.step_list(board, more);
            }
        }
        touch
    }

    /// Detents since the last tick; the position follows.
    fn turned(&mut self, selector: Selector, inputs: &Inputs) -> i8 {
        let Some(turn) = selector.turn() else {
            return 0;
        };
        let (turn, before) = (i16::from(turn.max(1)), i16::from(self.at));
        if let Some(at) = inputs.switch_at {
            self.at = at;
            let right = (i16::from(at) - before).rem_euclid(turn);
            return (if 2 * right > turn {
                right - turn
            } else {
                right
            }) as i8;
        }
        self.at = if inputs.dial_index {
            0
        } else {
            (before + i16::from(inputs.dial_steps)).rem_euclid(turn) as u8
        };
        inputs.dial_steps
    }

    /// One on or back in the list that the present mode chooses from.
    fn step_list(&mut self, board: &Board, on: bool) {
        let list: Vec<u8> = match &self.mode {
            Mode::Idle => board.programs.iter().map(|p| p.position).collect(),
            Mode::Service(service) if service.routine.is_none() => {
                board.menu.iter().map(|m| m.position).collect()
            }
            Mode::Program(_) | Mode::Hold(_) | Mode::Service(_) => return,
        };
        let Some(here) = list.iter().position(|p| *p == self.at) else {
            return;
        };
        let step = if on { 1 } else { list.len() - 1 };
        self.at = list[(here + step) % list.len()];
    }

    /// Without a knob a list begins at its first entry.
    fn choose_first<T>(&mut self, list: &[T], position: impl Fn(&T) -> u8) {
        if self.firm.board.panel.selector == Selector::Steps {
            self.at = list.first().map_or(0, position);
        }
    }

    fn feed_gesture(
        &mut self,
        firm: &Firm,
        steps: i8,
        moves: &[Option<bool>; Button::ALL.len()],
        lid: Option<bool>,
    ) {
        match self.mode {
            Mode::Idle | Mode::Hold(_) if !self.memory.service_lost => {}
            Mode::Idle | Mode::Hold(_) | Mode::Program(_) | Mode::Service(_) => return,
        }
        // A button that comes up in this tick has been pressed until now.
        let pressed =
            self.panel.buttons.iter().any(Debounce::closed) || moves.iter().any(Option::is_some);
        self.entry.tick(&firm.entry, pressed);
        let knob = Knob {
            before: self.at,
            at: self.at,
            dark_ms: 0,
        };
        if let Some(way) = Direction::of_steps(steps) {
            let turn = i16::from(firm.board.panel.selector.turn().unwrap_or(1).max(1));
            let back = |left: u8| {
                let detents = i16::from(way.sign()) * i16::from(left);
                (i16::from(self.at) - detents).rem_euclid(turn) as u8
            };
            let knobs: Vec<Knob> = (0..steps.unsigned_abs())
                .rev()
                .map(|left| Knob {
                    before: back(left + 1),
                    at: back(left),
                    dark_ms: 0,
                })
                .collect();
            for knob in knobs {
                self.feed(firm, GestureInput::Detent(way), knob);
            }
        }
        // Stop before Start, as the panel is scanned.
        for button in [Button::Stop, Button::Start, Button::More, Button::Less] {
            match moves[button.index()] {
                Some(true) => self.feed(firm, GestureInput::Down(button), knob),
                Some(false) => self.feed(firm, GestureInput::Up(button), knob),
                None => {}
            }
        }
        if let Some(closed) = lid {
            let to = if closed { LidMove::Down } else { LidMove::Up };
            self.feed(firm, GestureInput::Lid(to), knob);
        }
    }

    /// One input of the entry gesture; service mode when it was the last. A try in a fault hold leaves its
    /// trace and opens nothing.
    fn feed(&mut self, firm: &Firm, input: GestureInput, knob: Knob) {
        let now_s = (self.ticks / TICKS_PER_S) as u32;
        let begun_as = match self.mode {
            Mode::Hold(_) => Outcome::InHold,
            Mode::Idle | Mode::Program(_) | Mode::Service(_) => Outcome::Open,
        };
        if (self.entry).input(&firm.entry, input, knob, now_s, begun_as) {
            self.enter(Mode::Service(Service::default()));
        }
    }

    fn step_mode(&mut self, firm: &Firm, touch: Touch) -> (Demand, Aim) {
        let board = &firm.board;
        let watched = Aim {
            water: true,
            ..Aim::default()
        };
        let cancelled = self.panel.held_for(Button::Stop, board.cancel_ms);
        let reset = board
            .resets
            .hold
            .filter(|hold| self.panel.held_for(hold.button, hold.ms));
        let scene = Scene {
            board,
            memory: &self.memory,
            sense: &self.sense,
            drive: &self.drive,
            lid_closed: self.panel.lid.closed(),
            resting: self.watch.resting(),
        };
        match &mut self.mode {
            Mode::Idle => {
                let held = self.panel.held[Button::Start.index()];
                let tapped = touch.start_up && held <= board.tap_ms / TICK_MS as u32;
                if let Some(program) = board.program_at(self.at).filter(|_| tapped) {
                    self.begin(board, program as u8);
                }
                (Demand::default(), watched)
            }
            Mode::Program(run) => {
                if touch.stop_down {
                    run.paused = true;
                } else if touch.start_down {
                    run.paused = false;
                }
                if run.paused && cancelled {
                    self.enter(Mode::Idle);
                    return (Demand::default(), watched);
                }
                let (demand, aim, progress) = run.step(&scene);
                match progress {
                    Progress::Same => {}
                    Progress::NextPhase => self.watch.new_phase(),
                    Progress::Finished => {
                        self.finished += 1;
                        self.enter(Mode::Idle);
                    }
                }
                (demand, aim)
            }
            Mode::Hold(hold) => {
                hold.ticks = hold.ticks.saturating_add(1);
                hold.since_closing = hold.since_closing.saturating_add(1);
                let closed = touch.lid && self.panel.lid.closed();
                let lid_reset = closed
                    && board.resets.lid_cycle.as_ref().is_some_and(|rule| {
                        let soon = hold.since_closing <= rule.within_ms / TICK_MS as u32;
                        hold.lid_closings = if soon { hold.lid_closings + 1 } else { 1 };
                        hold.since_closing = 0;
                        hold.lid_closings >= rule.cycles
                    });
                let moved = board.resets.lid_moves.filter(|_| touch.lid);
                let lid_moved = moved.is_some_and(|rule| hold.lid_moved(rule));
                // The button must have gone down within the hold.
                let held =
                    reset.is_some_and(|rule| self.panel.held[rule.button.index()] < hold.ticks);
                if lid_reset || lid_moved || held {
                    self.enter(Mode::Idle);
                    return (Demand::default(), watched);
                }
                let deadline = board.lock.hold_limit_s * TICKS_PER_S as u32;
                let wet = scene.sense.level_mm > board.water.unlock_mm;
                let drain = board.rule_of(hold.monitor).is_some_and(|r| r.drain);
                let demand = Demand {
                    pump: drain
                        && hold.ticks < deadline
                        && scene.sense.level_mm > board.water.drained_mm,
                    lock: wet && hold.ticks < deadline && scene.drive.locked(scene.sense),
                    ..Demand::default()
                };
                (demand, Aim::default())
            }
            Mode::Service(service) => {
                let (demand, aim, request) = service.step(&scene, touch, self.at, firm.mm_per_v);
                match request {
                    Request::None => {}
                    Request::NewPhase => self.watch.new_phase(),
                    Request::Leave => self.enter(Mode::Idle),
                    Request::ClearCodes => self.memory.codes.clear(),
                    Request::Calibrate(learned) => {
                        self.memory.calibration = Some(learned);
                        self.calibrations += 1;
                        self.watch.clear();
                    }
                    Request::Abort(monitor) => self.raise(board, monitor),
                }
                (demand, aim)
            }
        }
    }

    /// In a program a clutch actuator that is not the one the control has learned is stored once, as a control is that has
    /// learned nothing; the program goes on.
    fn note_new_actuator(&mut self, board: &Board) {
        if !std::mem::take(&mut self.drive.cam_differs) || !matches!(self.mode, Mode::Program(_)) {
            return;
        }
        if let Some(code) = board.code_of(Monitor::CalibrationMissing)
            && !(self.memory.codes.iter()).any(|c| c.code == code && c.cycles_ago == 0)
        {
            self.memory.store(code, board.service.stored_codes);
        }
    }

    fn begin(&mut self, board: &Board, program: u8) {
        self.memory.begin_cycle();
        if self.memory.calibration.is_none()
            && let Some(code) = board.code_of(Monitor::CalibrationMissing)
        {
            self.memory.store(code, board.service.stored_codes);
        }
        self.enter(Mode::Program(Run::new(board, program)));
    }

    fn enter(&mut self, mode: Mode) {
        let firm = Arc::clone(&self.firm);
        match (&self.mode, &mode) {
            (_, Mode::Service(_)) => self.choose_first(&firm.board.menu, |entry| entry.position),
            (Mode::Service(_), _) => self.choose_first(&firm.board.programs, |p| p.position),
            (Mode::Idle | Mode::Program(_) | Mode::Hold(_), _) => {}
        }
        self.mode = mode;
        self.mode_ticks = 0;
        self.memory.hold = None;
        self.watch.clear();
        self.entry.restart();
    }

    /// Stores the fault and stops: recalibration falls back to the menu, all else to the hold.
    fn raise(&mut self, board: &Board, monitor: Monitor) {
        if let Some(code) = board.code_of(monitor) {
            self.memory.store(code, board.service.stored_codes);
        }
        if let Mode::Service(service) = &mut self.mode {
            *service = Service::after_abort(monitor);
            self.watch.clear();
            return;
        }
        self.enter(Mode::Hold(Hold::of(monitor)));
        self.memory.hold = board.resets.kept.then_some(monitor);
    }

    /// What the lamps are to show.
    fn picture(&self, board: &Board) -> Picture {
        let rules = &board.lamps;
        match &self.mode {
            Mode::Idle => board.program_at(self.at).map_or(Picture::Dark, |index| {
                let minutes = Run::new(board, index as u8).minutes_left(board);
                rules.idle.of(minutes, 99, &rules.signs)
            }),
            Mode::Program(run) => rules.program.of(run.minutes_left(board), 99, &rules.signs),
            Mode::Hold(_) => rules.hold.of(0, 99, &rules.signs),
            Mode::Service(service) => service.picture(board, &self.memory, self.at),
        }
    }

    /// One of two pictures that are shown in turn.
    fn in_turn(&self, first: u16, second: u16) -> u16 {
        let length = (self.firm.board.lamps.turns_ms / TICK_MS as u32).max(1);
        if (self.shown_ticks / length).is_multiple_of(2) {
            first
        } else {
            second
        }
    }

    /// One tick of the lamps.
    fn show(&mut self, board: &Board) -> Lamps {
        let rules = &board.lamps;
        let picture = self.picture(board);
        if picture == self.shown {
            self.shown_ticks = self.shown_ticks.saturating_add(1);
        } else {
            self.shown = picture;
            self.shown_ticks = 0;
        }
        let blinks = match &self.mode {
            Mode::Hold(_) => true,
            Mode::Service(service) => service.aborted.is_some() || service.refused.is_some(),
            Mode::Idle | Mode::Program(_) => false,
        };
        let test = matches!(
            &self.mode,
            Mode::Service(service) if service.routine == Some(Routine::LampTest)
        );
        let lock = if blinks {
            blink(self.mode_ticks, rules.blink_ms)
        } else {
            test || (self.drive.relays.has(Relay::Lock) && self.sense.locked.closed())
        };
        let code = match picture {
            Picture::Dark => 0,
            Picture::All => rules.signs.all(),
            Picture::Blink if blink(self.shown_ticks, rules.blink_ms) => rules.signs.all(),
            Picture::Blink => 0,
            Picture::Number(number) => {
                let at = Span(u64::from(self.shown_ticks));
                rules.signs.lit(number, at)
            }
            Picture::NumberAnd(number, picture) => {
                self.in_turn(rules.signs.lit(number, Span::ZERO), picture)
            }
            Picture::Turns(first, second) => self.in_turn(first, second),
        };
        self.governor.step(Lamps {
            code,
            lock: lock && rules.lock_lamp,
        })
    }
}
