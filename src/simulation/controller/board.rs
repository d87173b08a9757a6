//! A board as its file describes it. Every number that shapes the firmware's behaviour is here.

use super::gesture::Gesture;
use super::memory::USUAL_CODES;
use super::mode::PhaseKind;
use super::monitor::{Monitor, Routine, Stage};
use super::signs::LampRules;
use crate::interface::{Button, Component, Mains, Rating, Terminal};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// One board: its panel, limits, programs, codes, service mode, pins and service sheet.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Board {
    /// Short name; the file carries the same.
    pub id: String,
    /// Text key of the board's name.
    pub name: String,
    /// Supplies that it is made for.
    pub mains: Vec<Mains>,
    /// What a hand finds on the console.
    pub panel: PanelRules,
    /// Time a contact must rest before it counts, ms.
    pub debounce_ms: u32,
    /// Longest press of Start that begins a program, ms.
    pub tap_ms: u32,
    /// Stop held this long ends a paused program, ms.
    pub cancel_ms: u32,
    /// Lamps.
    pub lamps: LampRules,
    /// Supply levels, for each of `mains`.
    pub supply: BTreeMap<Mains, SupplyRules>,
    /// Pressure input.
    pub pressure: PressureRules,
    /// Thermistor input.
    pub thermistor: ThermistorRules,
    /// Water limits.
    pub water: WaterRules,
    /// Motor and pickup.
    pub motor: MotorRules,
    /// Clutch actuator.
    pub clutch_actuator: ClutchActuatorRules,
    /// Lid lock.
    pub lock: LockRules,
    /// Delays and retries, one for each monitor.
    pub monitors: Vec<Rule>,
    /// Two-digit code of each monitor.
    pub codes: Vec<Code>,
    /// Programs by position.
    pub programs: Vec<Program>,
    /// How service mode is entered.
    pub gesture: Gesture,
    /// Routines of service mode by position.
    pub menu: Vec<MenuEntry>,
    /// Limits of service mode.
    pub service: ServiceRules,
    /// Stages and limits of recalibration.
    pub recalibration: Recalibration,
    /// How a fault hold is left.
    pub resets: Resets,
    /// Connectors and their pins.
    pub connectors: Vec<BoardConnector>,
    /// The service sheet: what may lie behind each code.
    pub sheet: Vec<SheetEntry>,
}

/// What a hand finds on the console.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PanelRules {
    /// How a position is chosen.
    pub selector: Selector,
    /// Buttons.
    pub buttons: Vec<Button>,
}

/// How a program or routine is chosen by its position.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Selector {
    /// A dial whose contacts report steps and, once a turn, the index; worn ones skip.
    Dial {
        /// Detents in one turn.
        detents: u8,
    },
    /// A rotary switch with a contact of its own for each position.
    Switch {
        /// Positions in one turn.
        positions: u8,
    },
    /// No knob: the buttons More and Less step through the list.
    Steps,
}

impl Selector {
    /// Positions in one turn of the knob; none without a knob.
    pub fn turn(self) -> Option<u8> {
        match self {
            Selector::Dial { detents } => Some(detents),
            Selector::Switch { positions } => Some(positions),
            Selector::Steps => None,
        }
    }
}

/// Levels of the bulk capacitor's voltage.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SupplyRules {
    /// The control forgets its volatile state below this, V.
    pub reset_v: f64,
    /// Too low while the motor is driven, V.
    pub sag_v: f64,
}

/// From the pressure input's voltage to a level.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PressureRules {
    /// Voltage at no water before calibration, V.
    pub zero_v: f64,
    /// Sensitivity, V/kPa.
    pub v_per_kpa: f64,
    /// Lowest valid voltage, V.
    pub min_v: f64,
    /// Highest valid voltage, V.
    pub max_v: f64,
}

/// From the thermistor divider's voltage to a temperature.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ThermistorRules {
    /// Supply of the divider, V.
    pub rail_v: f64,
    /// Pull-up, Ω.
    pub pullup_ohms: f64,
    /// Thermistor at 25 °C, Ω.
    pub r25_ohms: f64,
    /// Beta, K.
    pub beta_k: f64,
    /// Lowest valid voltage, V.
    pub min_v: f64,
    /// Highest valid voltage, V.
    pub max_v: f64,
}

/// What counts as empty, rising, falling, cold and hot.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WaterRules {
    /// The tub counts as drained at or below this, mm.
    pub drained_mm: f64,
    /// The pump runs on this long after that, s.
    pub pump_run_on_s: u32,
    /// In a fault hold the lid stays locked above this, mm.
    pub unlock_mm: f64,
    /// A rise smaller than this within the delay of `FillNone` is no rise, mm.
    pub rise_mm: f64,
    /// A rise larger than this with the valves shut is unexpected, mm.
    pub unexpected_mm: f64,
    /// A fall larger than this without draining is a loss, mm.
    pub lost_mm: f64,
    /// After the valves shut the level may settle this long, s.
    pub settle_s: u32,
    /// Temperature is judged from this level upwards, mm.
    pub judge_mm: f64,
}

/// Motor and pickup.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MotorRules {
    /// Pulses in one turn of the pulley.
    pub pulses_per_rev: u32,
    /// Rest before the other direction, ms.
    pub reverse_ms: u32,
    /// The drum stands after this long without a pulse, ms.
    pub standstill_ms: u32,
    /// After a spin the drum is never taken as standing earlier than this, ms.
    pub coast_ms: u32,
    /// Less than this is no current, A.
    pub min_a: f64,
    /// More than this is overload, A.
    pub overload_a: f64,
    /// In a spin, high current is overload only below this speed, rev/min.
    pub start_rpm: f64,
    /// Lowest mean speed of agitation, rev/min.
    pub agitate_min_rpm: f64,
    /// Current that vanishes after at least this much run time is overheating, s.
    pub warm_s: u32,
    /// A spin has reached its speed at this share of it.
    pub reached_share: f64,
    /// Unbalance is judged from this speed upwards, rev/min.
    pub ripple_rpm: f64,
    /// Swing of the speed, as a share of its mean, that is unbalance.
    pub ripple_share: f64,
    /// Spin limit without calibration, rev/min.
    pub uncalibrated_rpm: f64,
}

/// Clutch actuator: cam switch closed in the spin half of the turn, open in the agitate half.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ClutchActuatorRules {
    /// Time for one degree before calibration, ms.
    pub ms_per_deg: f64,
    /// How far to run on past the switch edge, °.
    pub run_on_deg: f64,
}

/// Lid lock.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LockRules {
    /// In a fault hold with water that does not go, the lid is let go after this long, s.
    pub hold_limit_s: u32,
}

/// How patient one monitor is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Rule {
    /// Which.
    pub monitor: Monitor,
    /// Time the condition must last, ms. Motor monitors count driven time only.
    pub delay_ms: u32,
    /// How many times the control rests and tries again before it gives up.
    #[serde(default)]
    pub retries: u8,
    /// Rest between tries with the loads off, ms.
    #[serde(default)]
    pub rest_ms: u32,
    /// The fault hold may pump the tub out.
    #[serde(default)]
    pub drain: bool,
}

/// A code and what it stands for.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Code {
    /// Two decimal digits, 1 to 99.
    pub code: u8,
    /// The monitor behind it.
    pub monitor: Monitor,
}

/// A washing program.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Program {
    /// Position: on a knob, detents clockwise from the index; else the number shown.
    pub position: u8,
    /// Text key of its name.
    pub name: String,
    /// What it does, in order.
    pub phases: Vec<Phase>,
}

/// One part of a program.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Phase {
    /// Let water in.
    Fill {
        /// Up to this level, mm.
        level_mm: f64,
        /// Through the cold valve.
        cold: bool,
        /// Through the hot valve.
        hot: bool,
        /// Not colder than this, °C.
        min_c: f64,
        /// Not hotter than this, °C.
        max_c: f64,
        /// Usual length, for the time display, s.
        typical_s: u32,
    },
    /// Stroke to and fro.
    Agitate {
        /// Length, min.
        minutes: f64,
        /// One stroke, ms.
        stroke_ms: u32,
        /// Rest between strokes, ms.
        pause_ms: u32,
    },
    /// Let the laundry stand in the water.
    Soak {
        /// Length, min.
        minutes: f64,
    },
    /// Pump the water out.
    Drain {
        /// Usual length, for the time display, s.
        typical_s: u32,
    },
    /// Spin.
    Spin {
        /// Basket speed, rev/min.
        rpm: f64,
        /// Length from the first drive, min.
        minutes: f64,
    },
    /// Do nothing, so that the drum can come to a stop.
    Rest {
        /// Length, s.
        seconds: u32,
    },
}

impl Phase {
    /// Usual length, s.
    pub fn typical_s(&self) -> u32 {
        match *self {
            Phase::Fill { typical_s, .. } | Phase::Drain { typical_s } => typical_s,
            Phase::Agitate { minutes, .. }
            | Phase::Soak { minutes }
            | Phase::Spin { minutes, .. } => (minutes * 60.0) as u32,
            Phase::Rest { seconds } => seconds,
        }
    }

    /// Which kind it is.
    pub fn kind(&self) -> PhaseKind {
        match self {
            Phase::Fill { .. } => PhaseKind::Fill,
            Phase::Agitate { .. } => PhaseKind::Agitate,
            Phase::Soak { .. } => PhaseKind::Soak,
            Phase::Drain { .. } => PhaseKind::Drain,
            Phase::Spin { .. } => PhaseKind::Spin,
            Phase::Rest { .. } => PhaseKind::Rest,
        }
    }
}

/// A routine and its position.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MenuEntry {
    /// Position, as in [`Program`].
    pub position: u8,
    /// What Start begins there.
    pub routine: Routine,
}

/// Limits of service mode.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ServiceRules {
    /// The button that turns the pages of the code list.
    pub page: Button,
    /// Service mode ends after this long without an input, s.
    pub timeout_s: u32,
    /// Start held this long clears the codes, ms.
    pub clear_hold_ms: u32,
    /// A load test ends by itself after this long, s.
    pub test_limit_s: u32,
    /// Spin speed of the spin test, rev/min.
    pub test_spin_rpm: f64,
    /// Stored codes kept, newest first; older ones fall off the end.
    #[serde(default = "usual_codes", skip_serializing_if = "are_usual_codes")]
    pub stored_codes: u8,
}

fn usual_codes() -> u8 {
    USUAL_CODES
}

fn are_usual_codes(codes: &u8) -> bool {
    *codes == USUAL_CODES
}

/// Recalibration.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Recalibration {
    /// The stages in order.
    pub stages: Vec<StageRule>,
    /// Lowest and highest voltage that can be an empty tub, V.
    pub zero_v: (f64, f64),
    /// Rise that proves a valve, mm.
    pub rise_mm: f64,
    /// Shortest and longest time for one degree of the cam, ms.
    pub cam_ms_per_deg: (f64, f64),
    /// The inertia figure is the time from the first to the second of these speeds, rev/min.
    pub spin_rpm: (f64, f64),
    /// Shortest and longest such time, ms.
    pub inertia_ms: (u32, u32),
}

/// One stage and its times.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StageRule {
    /// Which.
    pub stage: Stage,
    /// Shortest length, s.
    pub min_s: u32,
    /// After this long the stage has failed, s.
    pub limit_s: u32,
}

/// How a fault hold is left, besides a power-off that is long enough on boards that do not keep it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Resets {
    /// Holding a button, on boards that have it.
    pub hold: Option<ButtonHold>,
    /// Opening and closing the lid, on boards that have it.
    pub lid_cycle: Option<LidCycle>,
    /// Moving the lid so often in so long, on boards that have it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lid_moves: Option<LidMoves>,
    /// The board keeps its fault hold in the non-volatile memory: a power-off does not end it.
    #[serde(default)]
    pub kept: bool,
}

/// A reset by holding a button.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ButtonHold {
    /// Which.
    pub button: Button,
    /// How long, ms.
    pub ms: u32,
}

/// A reset by moving the lid.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LidCycle {
    /// How many times the lid closes.
    pub cycles: u8,
    /// From one closing to the next at most this long, ms.
    pub within_ms: u32,
}

/// A reset by moving the lid, each way counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LidMoves {
    /// How many times the lid moves, up or down.
    pub moves: u8,
    /// From the first of them to the last at most this long, ms.
    pub within_ms: u32,
}

impl Resets {
    /// Something other than the plug ends a fault hold.
    pub fn has_own_way(&self) -> bool {
        self.hold.is_some() || self.lid_cycle.is_some() || self.lid_moves.is_some()
    }
}

/// A connector on the board.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BoardConnector {
    /// Printed label, such as `X2`.
    pub label: String,
    /// Its pins.
    pub pins: Vec<BoardPin>,
}

/// One pin of a connector.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BoardPin {
    /// Number on the connector, from 1.
    pub pin: u8,
    /// The wire that leaves there, named by its far end.
    pub terminal: Terminal,
    /// Printed label.
    pub label: String,
}

/// One entry of the service sheet.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SheetEntry {
    /// The code's monitor.
    pub monitor: Monitor,
    /// Components that can be behind it.
    pub suspects: Vec<Component>,
    /// Text keys of the checks that tell them apart.
    pub checks: Vec<String>,
}

impl Board {
    /// Levels at this supply; at one that the board is not made for nothing is too low.
    pub fn supply_rules(&self, rating: Rating) -> SupplyRules {
        let mut supplies = self.supply.iter();
        let here = supplies.find(|(mains, _)| mains.rating() == rating);
        here.map_or_else(SupplyRules::default, |(_, rules)| *rules)
    }

    /// The code that stands for `monitor`.
    pub fn code_of(&self, monitor: Monitor) -> Option<u8> {
        self.codes
            .iter()
            .find(|c| c.monitor == monitor)
            .map(|c| c.code)
    }

    /// The monitor that `code` stands for.
    pub fn monitor_of(&self, code: u8) -> Option<Monitor> {
        self.codes
            .iter()
            .find(|c| c.code == code)
            .map(|c| c.monitor)
    }

    /// The program at a position.
    pub fn program_at(&self, position: u8) -> Option<usize> {
        self.programs.iter().position(|p| p.position == position)
    }

    /// The routine at a position.
    pub fn routine_at(&self, position: u8) -> Option<Routine> {
        self.menu
            .iter()
            .find(|m| m.position == position)
            .map(|m| m.routine)
    }

    /// Where a routine stands in the menu, if it does.
    pub fn position_of(&self, routine: Routine) -> Option<u8> {
        let mut menu = self.menu.iter();
        menu.find(|m| m.routine == routine).map(|m| m.position)
    }

    /// The rule of `monitor`; a monitor without a rule is switched off.
    pub fn rule_of(&self, monitor: Monitor) -> Option<&Rule> {
        self.monitors.iter().find(|r| r.monitor == monitor)
    }

    /// The board pin behind a terminal: connector label and pin.
    pub fn pin_of(&self, terminal: Terminal) -> Option<(&str, &BoardPin)> {
        self.connectors.iter().find_map(|c| {
            c.pins
                .iter()
                .find(|p| p.terminal == terminal)
                .map(|p| (c.label.as_str(), p))
        })
    }

    /// Every text key that this board needs, sorted, once each.
    pub fn text_keys(&self) -> Vec<String> {
        let mut keys = vec![self.name.clone()];
        keys.extend(self.programs.iter().map(|p| p.name.clone()));
        keys.extend(self.codes.iter().map(|c| format!("code-{}", c.monitor)));
        keys.extend(self.menu.iter().map(|m| format!("routine-{}", m.routine)));
        keys.extend(
            self.recalibration
                .stages
                .iter()
                .map(|s| format!("stage-{}", s.stage)),
        );
        keys.extend(self.sheet.iter().flat_map(|s| s.checks.iter().cloned()));
        keys.sort();
        keys.dedup();
        keys
    }
}
