//! Wires plant and controller together, steps them, and hands out a read-only view.

mod sound;
mod view;

pub use sound::{Sound, Sounds};
pub use view::MachineView;

use crate::controller::{
    Board, ControlView, Controller, Inputs, Memory, Outputs, Selector, Tries, Try,
};
use crate::interface::{Button, Component, Direction, Terminal};
use crate::plant::Plant;
use crate::units::Time;
use sha2::{Digest, Sha256};

/// How long the click of power-up stays in the ear, ticks: its caption has to be read.
const CLICK_TICKS: u8 = 60;

/// A plant with its control.
#[derive(Clone)]
pub struct Machine {
    plant: Plant,
    control: Controller,
    board: Board,
    outputs: Outputs,
    buttons: [bool; Button::ALL.len()],
    dial_steps: i8,
    dial_index: bool,
    awake: bool,
    /// Ticks for which the click of power-up is still in the ear.
    clicking: u8,
    /// Tries at the gesture on boards that were replaced since.
    past_tries: Vec<Try>,
}

impl Machine {
    /// Puts `board` with `memory` into `plant`. The plug is out.
    pub fn new(mut plant: Plant, board: &Board, memory: Memory) -> Machine {
        if let Some(turn) = board.panel.selector.turn() {
            plant.set_detents(turn);
        }
        Machine {
            control: Controller::new(board, plant.rating(), memory),
            plant,
            board: board.clone(),
            outputs: Outputs::default(),
            buttons: [false; Button::ALL.len()],
            dial_steps: 0,
            dial_index: false,
            awake: false,
            clicking: 0,
            past_tries: Vec::new(),
        }
    }

    /// One tick: the plant under the outputs of the last tick, then the control on what its pins
    /// carry now. A real board, too, answers after it has seen.
    pub fn step(&mut self) {
        let pins = self.plant.step(self.outputs.relays);
        self.clicking = self.clicking.saturating_sub(1);
        if pins.supplied && !self.awake {
            // At power-up the control reads the dial's absolute contacts once.
            self.control.set_dial(self.plant.dial_position());
            self.clicking = CLICK_TICKS;
        }
        self.awake = pins.supplied;
        let mut buttons = self.buttons;
        buttons[Button::Stop.index()] &= self.plant.stop_button_reads();
        let inputs = Inputs {
            bulk_v: pins.bulk_v,
            supplied: pins.supplied,
            dial_steps: std::mem::take(&mut self.dial_steps),
            dial_index: std::mem::take(&mut self.dial_index),
            switch_at: matches!(self.board.panel.selector, Selector::Switch { .. })
                .then(|| self.plant.dial_position()),
            buttons,
            lid_closed: pins.lid_closed,
            locked_line: pins.locked_line,
            cam: pins.cam,
            pickup_pulses: pins.pickup_pulses,
            pressure_v: pins.pressure_v,
            thermistor_v: pins.thermistor_v,
            motor_a: pins.motor_a,
        };
        self.outputs = self.control.step(&inputs);
    }

    /// Turns the dial by one detent.
    pub fn detent(&mut self, way: Direction) {
        let report = self.plant.detent(way);
        self.dial_steps = self.dial_steps.saturating_add(report.steps);
        self.dial_index |= report.index;
    }

    /// Pushes a button down or lets it go.
    pub fn press(&mut self, button: Button, down: bool) {
        self.buttons[button.index()] = down;
    }

    /// Replaces a component by a sound one. A new board knows no codes and is not calibrated.
    pub fn replace(&mut self, component: Component) {
        self.plant.replace(component);
        if component == Component::Board {
            self.past_tries = self.tries().iter().cloned().collect();
            let (rating, memory) = (self.plant.rating(), Memory::default());
            self.control = Controller::new(&self.board, rating, memory).counting_from(self.now().0);
            self.outputs = Outputs::default();
            self.awake = false;
        }
    }

    /// The plant, to look at.
    pub fn plant(&self) -> &Plant {
        &self.plant
    }

    /// The plant, to work on.
    pub fn plant_mut(&mut self) -> &mut Plant {
        &mut self.plant
    }

    /// The control, to look at.
    pub fn control(&self) -> &Controller {
        &self.control
    }

    /// Tries at the entry gesture, oldest first, those on replaced boards included.
    pub fn tries(&self) -> Tries<'_> {
        self.control.tries_after(&self.past_tries)
    }

    /// The board's description.
    pub fn board(&self) -> &Board {
        &self.board
    }

    /// What the control drives now.
    pub fn outputs(&self) -> Outputs {
        self.outputs
    }

    /// Ticks since the beginning.
    pub fn now(&self) -> Time {
        self.plant.now()
    }

    /// Terminals on the board connector with this label.
    pub fn connector_pins(&self, label: &str) -> Option<Vec<Terminal>> {
        let connector = self.board.connectors.iter().find(|c| c.label == label)?;
        Some(connector.pins.iter().map(|pin| pin.terminal).collect())
    }

    /// SHA-256 over all state that the rest of a run depends on, as hexadecimal text.
    pub fn state_hash(&self) -> String {
        let mut hash = Sha256::new();
        hash.update(self.plant.state_bytes());
        hash.update(self.control.state_bytes());
        let rest = (
            self.outputs,
            self.buttons,
            self.dial_steps,
            self.dial_index,
            self.awake,
            self.clicking,
        );
        hash.update(
            postcard::to_allocvec(&rest).expect("plain state always serialises into memory"),
        );
        hash.finalize()
            .iter()
            .map(|byte| format!("{byte:02x}"))
            .collect()
    }

    /// What can be seen, heard or felt now.
    pub fn view(&self) -> MachineView<'_> {
        let plant = &self.plant;
        let (water, drive) = (plant.water(), plant.drive());
        let basket_rpm = if plant.basket_coupled() {
            drive.pulley_rpm()
        } else {
            0.0
        };
        let mut view = MachineView {
            time_s: plant.now().seconds(),
            plugged: plant.plugged(),
            lid_open: plant.lid_open(),
            lid_bolted: plant.bolted(),
            lamps: self.outputs.lamps,
            dial_position: plant.dial_position(),
            level_mm: water.level_mm(),
            water_c: water.water_c,
            hot_l_min: water.flows_l_min[1],
            cold_l_min: water.flows_l_min[0],
            drain_l_min: water.flows_l_min[2],
            floor_l: water.floor_l,
            agitator_rev: drive.agitator_rev,
            basket_rev: drive.basket_rev,
            basket_rpm,
            motor_rpm: drive.motor_rad_s * 30.0 / std::f64::consts::PI,
            shake_mm: drive.shake_mm,
            sounds: Sounds::default(),
            control: ControlView {
                tries: self.tries(),
                ..self.control.view()
            },
        };
        view.sounds = sounds(&view, plant, self.clicking > 0);
        view
    }
}

fn sounds(view: &MachineView<'_>, plant: &Plant, clicking: bool) -> Sounds {
    let amps = plant.amps();
    let turning = view.motor_rpm.abs() > 30.0;
    let is_heard = |sound: &Sound| match sound {
        Sound::MotorHum => amps.motor > 0.1 && !turning,
        Sound::SpinWhirr => turning && plant.basket_coupled() && view.basket_rpm > 20.0,
        Sound::AgitatorSwish => turning && !plant.basket_coupled(),
        Sound::MotorFree => turning && plant.drive().pulley_rad_s.abs() < 0.1,
        Sound::PumpHum => amps.pump > 0.05 && plant.pump_turning(),
        Sound::PumpBuzz => amps.pump > 0.05 && !plant.pump_turning(),
        Sound::WaterRush => view.cold_l_min + view.hot_l_min > 0.5,
        Sound::ValveBuzz => amps.cold > 0.01 && view.cold_l_min < 0.5,
        Sound::ClutchActuatorTick => amps.clutch > 0.005,
        Sound::LockHeld => view.lid_bolted,
        Sound::RelayClick => clicking,
        Sound::CabinetShake => view.shake_mm > 4.0,
    };
    Sound::ALL.iter().copied().filter(is_heard).collect()
}
