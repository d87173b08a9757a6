//! The control itself: supply levels, the panel, the modes and their changes.

use super::board::Board;
use super::debounce::Debounce;
use super::drive::{Demand, Drive};
use super::gesture::{Automaton, Entry, GestureInput, LidMove, Rotation};
use super::glance::Glance;
use super::io::{Inputs, Lamps, Outputs};
use super::lamps::{Governor, blink};
use super::memory::Memory;
use super::monitor::{Monitor, Routine};
use super::program::{Progress, Run, Scene};
use super::sense::{Sense, mm_per_volt};
use super::service::{Picture, Request, Service, Touch};
use super::view::ControlView;
use super::watch::{Aim, Limits, Watch};
use crate::plant::{Button, Relay};
use crate::units::{TICK_MS, TICK_S, TICKS_PER_S};
use serde::Serialize;
use std::sync::Arc;

/// A board made ready to run: looked up once instead of each tick.
#[derive(Debug)]
struct Firm {
    board: Board,
    limits: Limits,
    entry: Automaton,
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
    /// Short key.
    fn key(&self) -> &'static str {
        match self {
            Mode::Idle => "idle",
            Mode::Program(_) => "program",
            Mode::Hold(_) => "hold",
            Mode::Service(_) => "service",
        }
    }
}

/// A fault hold.
#[derive(Clone, Debug, Serialize)]
struct Hold {
    monitor: Monitor,
    ticks: u32,
    /// Stop went down within the hold.
    armed: bool,
    lid_closings: u8,
    since_closing: u32,
}

/// Buttons and lid.
#[derive(Clone, Debug, Default, Serialize)]
struct Panel {
    start: Debounce,
    stop: Debounce,
    lid: Debounce,
    /// Ticks since each button went down; kept through the tick in which it comes up.
    start_ticks: u32,
    stop_ticks: u32,
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
    dial: u8,
    sense: Sense,
    drive: Drive,
    watch: Watch,
    entry: Entry,
    mode: Mode,
    memory: Memory,
    governor: Governor,
    finished: u32,
    calibrations: u32,
}

impl Controller {
    /// A board without power. The board should have passed [`Board::check`].
    pub fn new(board: &Board, memory: Memory) -> Controller {
        Controller {
            firm: Arc::new(Firm {
                board: board.clone(),
                limits: Limits::compile(board),
                entry: Automaton::compile(&board.gesture),
                mm_per_v: mm_per_volt(board.pressure.v_per_kpa),
                debounce_ticks: (board.debounce_ms / TICK_MS as u32).max(1) as u16,
            }),
            ticks: 0,
            mode_ticks: 0,
            power: Power::Off,
            panel: Panel::default(),
            dial: 0,
            sense: Sense::new(),
            drive: Drive::new(),
            watch: Watch::default(),
            entry: Entry::default(),
            mode: Mode::Idle,
            memory,
            governor: Governor::default(),
            finished: 0,
            calibrations: 0,
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

    /// Tells the control where the dial points, in detents clockwise from the index. The dial's
    /// contacts only report steps, so whoever wires the board calls this when power comes (a
    /// board reads the coded ring of its dial once, at power-up). Later steps are counted, and
    /// the index contact sets the count to zero.
    pub fn set_dial(&mut self, position: u8) {
        self.dial = position % self.firm.board.dial_detents.max(1);
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
        if !self.supplied(board, inputs) {
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
        let raised = self
            .watch
            .step(board, &firm.limits, &aim, &demand, &self.sense, &self.drive);
        if let Some(monitor) = raised {
            self.raise(board, monitor);
        }
        Outputs {
            relays,
            lamps: self.governor.step(self.lamps(board)),
        }
    }

    /// The few things that whoever follows the control looks at in every tick.
    pub fn glance(&self) -> Glance {
        let mut glance = Glance {
            mode: "off",
            stored: self.memory.codes.len() as u8,
            finished: self.finished,
            calibrations: self.calibrations,
            ..Glance::default()
        };
        if self.power != Power::On {
            return glance;
        }
        glance.mode = self.mode.key();
        match &self.mode {
            Mode::Idle | Mode::Program(_) => {}
            Mode::Hold(hold) => glance.hold = Some(hold.monitor),
            Mode::Service(service) => {
                glance.routine = service.routine;
                glance.aborted = service.aborted;
                glance.calibrating = service.routine == Some(Routine::Recalibrate);
                if service.routine == Some(Routine::Recall) {
                    let stored = self.memory.codes.get(usize::from(service.page));
                    glance.code_shown = stored.map(|c| c.code);
                }
            }
        }
        glance
    }

    /// Everything that the rest of a run depends on, as bytes for hashing.
    pub fn state_bytes(&self) -> Vec<u8> {
        postcard::to_allocvec(self).expect("plain state always serialises into memory")
    }

    /// What the control is doing.
    pub fn view(&self) -> ControlView {
        let board = &self.firm.board;
        let on = self.power == Power::On;
        let mut view = ControlView {
            mode: "off",
            dial: self.dial,
            stored: self.memory.codes.clone(),
            calibrated: self.memory.calibration.is_some(),
            tries: self.entry.tries().cloned().collect(),
            in_mode_s: f64::from(self.mode_ticks) * TICK_S,
            level_mm: self.sense.level_mm,
            water_c: self.sense.water_c,
            rpm: self.sense.rpm,
            ..ControlView::default()
        };
        if !on {
            return view;
        }
        if let Picture::Number(number) = self.picture(board) {
            view.digits = Some(number);
        }
        view.mode = match &self.mode {
            Mode::Idle => "idle",
            Mode::Program(run) => {
                view.phase = run.phase(board).map(|p| p.key());
                view.program = board
                    .programs
                    .get(usize::from(run.program))
                    .map(|p| p.position);
                view.paused = run.paused || !self.panel.lid.closed();
                "program"
            }
            Mode::Hold(hold) => {
                view.hold = Some(hold.monitor);
                "hold"
            }
            Mode::Service(service) => {
                view.routine = service.routine;
                view.aborted = service.aborted;
                match service.routine {
                    Some(Routine::Recalibrate) => {
                        view.stage = service.recal.stage(&board.recalibration.stages);
                    }
                    Some(Routine::Recall | Routine::Ages) => view.page = Some(service.page),
                    _ => {}
                }
                "service"
            }
        };
        view
    }

    /// Follows the bulk voltage; true when the control can work.
    fn supplied(&mut self, board: &Board, inputs: &Inputs) -> bool {
        let supply = &board.supply;
        if inputs.bulk_v >= supply.run_v {
            if self.power == Power::Off {
                self.panel.lid = Debounce::resting(inputs.lid_closed);
                self.panel.start = Debounce::resting(inputs.start);
                self.panel.stop = Debounce::resting(inputs.stop);
                self.mode_ticks = 0;
            }
            self.power = Power::On;
            return true;
        }
        self.drive.drop_out();
        if inputs.bulk_v >= supply.reset_v {
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

    /// Dial, buttons and lid; in idle mode they also feed the entry gesture.
    fn read_panel(&mut self, firm: &Firm, inputs: &Inputs) -> Touch {
        let panel = &mut self.panel;
        if panel.start.closed() {
            panel.start_ticks = panel.start_ticks.saturating_add(1);
        }
        if panel.stop.closed() {
            panel.stop_ticks = panel.stop_ticks.saturating_add(1);
        }
        let start = panel.start.step(inputs.start, firm.debounce_ticks);
        let stop = panel.stop.step(inputs.stop, firm.debounce_ticks);
        let lid = panel.lid.step(inputs.lid_closed, firm.debounce_ticks);
        if start == Some(true) {
            panel.start_ticks = 0;
        }
        if stop == Some(true) {
            panel.stop_ticks = 0;
        }
        let detents = i16::from(firm.board.dial_detents.max(1));
        let turned = i16::from(self.dial) + i16::from(inputs.dial_steps);
        self.dial = if inputs.dial_index {
            0
        } else {
            turned.rem_euclid(detents) as u8
        };
        self.feed_gesture(firm, inputs.dial_steps, start, stop, lid);
        Touch {
            start_down: start == Some(true),
            start_up: start == Some(false),
            stop_down: stop == Some(true),
            turned: inputs.dial_steps != 0,
            lid: lid.is_some(),
        }
    }

    fn feed_gesture(
        &mut self,
        firm: &Firm,
        steps: i8,
        start: Option<bool>,
        stop: Option<bool>,
        lid: Option<bool>,
    ) {
        if !matches!(self.mode, Mode::Idle) {
            return;
        }
        // A button that comes up in this tick has been pressed until now.
        let pressed = self.panel.start.closed()
            || self.panel.stop.closed()
            || start.is_some()
            || stop.is_some();
        self.entry.tick(&firm.entry, pressed);
        let rotation = if steps < 0 {
            Rotation::Left
        } else {
            Rotation::Right
        };
        let press = |button, down: bool| {
            if down {
                GestureInput::Down(button)
            } else {
                GestureInput::Up(button)
            }
        };
        let lid_move =
            |closed: bool| GestureInput::Lid(if closed { LidMove::Down } else { LidMove::Up });
        let events = [
            stop.map(|down| press(Button::Stop, down)),
            start.map(|down| press(Button::Start, down)),
            lid.map(lid_move),
        ];
        let turns = (0..steps.unsigned_abs()).map(|_| GestureInput::Detent(rotation));
        let now_s = (self.ticks / TICKS_PER_S) as u32;
        let mut entered = false;
        for event in turns.chain(events.into_iter().flatten()) {
            entered |= self.entry.input(&firm.entry, event, now_s);
        }
        if entered {
            self.enter(Mode::Service(Service::default()));
        }
    }

    fn step_mode(&mut self, firm: &Firm, touch: Touch) -> (Demand, Aim) {
        let board = &firm.board;
        let watched = Aim {
            water: true,
            ..Aim::default()
        };
        let stop_held = self.panel.stop.closed()
            && self.panel.stop_ticks >= board.resets.stop_hold_ms / TICK_MS as u32;
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
                let tapped =
                    touch.start_up && self.panel.start_ticks <= board.tap_ms / TICK_MS as u32;
                if let Some(program) = board.program_at(self.dial).filter(|_| tapped) {
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
                if run.paused && stop_held {
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
                hold.armed |= touch.stop_down;
                hold.since_closing = hold.since_closing.saturating_add(1);
                let closed = touch.lid && self.panel.lid.closed();
                let lid_reset = closed
                    && board.resets.lid_cycle.as_ref().is_some_and(|rule| {
                        let soon = hold.since_closing <= rule.within_ms / TICK_MS as u32;
                        hold.lid_closings = if soon { hold.lid_closings + 1 } else { 1 };
                        hold.since_closing = 0;
                        hold.lid_closings >= rule.cycles
                    });
                if lid_reset || (hold.armed && stop_held) {
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
                let (demand, aim, request) = service.step(&scene, touch, self.dial, firm.mm_per_v);
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

    fn begin(&mut self, board: &Board, program: u8) {
        self.memory.begin_cycle();
        if self.memory.calibration.is_none()
            && let Some(code) = board.code_of(Monitor::CalibrationMissing)
        {
            self.memory.store(code);
        }
        self.enter(Mode::Program(Run::new(board, program)));
    }

    fn enter(&mut self, mode: Mode) {
        self.mode = mode;
        self.mode_ticks = 0;
        self.watch.clear();
        self.entry.restart();
    }

    /// Stores the fault and stops: recalibration falls back to the menu, all else to the hold.
    fn raise(&mut self, board: &Board, monitor: Monitor) {
        if let Some(code) = board.code_of(monitor) {
            self.memory.store(code);
        }
        if let Mode::Service(service) = &mut self.mode {
            *service = Service::after_abort(monitor);
            self.watch.clear();
            return;
        }
        self.enter(Mode::Hold(Hold {
            monitor,
            ticks: 0,
            armed: false,
            lid_closings: 0,
            since_closing: 0,
        }));
    }

    fn picture(&self, board: &Board) -> Picture {
        match &self.mode {
            Mode::Idle => board
                .program_at(self.dial)
                .map_or(Picture::Pattern(0), |index| {
                    number(Run::new(board, index as u8).minutes_left(board))
                }),
            Mode::Program(run) => number(run.minutes_left(board)),
            Mode::Hold(_) => Picture::Pattern(0),
            Mode::Service(service) => service.picture(board, &self.memory),
        }
    }

    fn lamps(&self, board: &Board) -> Lamps {
        let blinks = match &self.mode {
            Mode::Hold(_) => true,
            Mode::Service(service) => service.aborted.is_some(),
            _ => false,
        };
        let test = matches!(
            &self.mode,
            Mode::Service(service) if service.routine == Some(Routine::LampTest)
        );
        Lamps {
            arc: self.picture(board).arc(),
            lock: if blinks {
                blink(self.mode_ticks, board.lamps.blink_ms)
            } else {
                test || (self.drive.relays.has(Relay::Lock) && self.sense.locked.closed())
            },
        }
    }
}

fn number(value: u32) -> Picture {
    Picture::Number(value.min(99) as u8)
}
