//! A board as its file describes it. Every number that shapes the firmware's behaviour is here.

use super::gesture::Gesture;
use super::memory::USUAL_CODES;
use super::mode::PhaseKind;
use super::monitor::{Monitor, Routine, Stage};
use super::signs::LampRules;
use crate::interface::{Button, Component, Mains, Rating, Terminal};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// One board: its panel, limits, programs, codes, service mode, pins and service sheet.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Board {
    /// Name of the board as jobs write it: that of the file without its ending.
    pub id: String,
    /// Name for people, at most 80 characters: the words themselves, or a key of the texts.
    pub name: String,
    /// Supplies that it is made for, at least one; each has its levels in `supply`.
    #[schemars(length(min = 1))]
    pub mains: Vec<Mains>,
    /// What a hand finds on the console.
    pub panel: PanelRules,
    /// Time that a contact must rest before it counts, ms.
    #[schemars(range(min = 10, max = 500))]
    pub debounce_ms: u32,
    /// Longest press of Start that begins a program, ms.
    pub tap_ms: u32,
    /// Stop held for this long ends a paused program, ms.
    pub cancel_ms: u32,
    /// What the lamps show, and when.
    pub lamps: LampRules,
    /// Levels of its own supply, for each of `mains` and for no other.
    #[schemars(extend("propertyNames" = { "$ref": "#/$defs/Mains" }))]
    pub supply: BTreeMap<Mains, SupplyRules>,
    /// From the pressure sensor's voltage to a water level.
    pub pressure: PressureRules,
    /// From the thermistor's voltage to a temperature.
    pub thermistor: ThermistorRules,
    /// What counts as empty, rising, falling, cold and hot.
    pub water: WaterRules,
    /// How motor and speed pickup are judged.
    pub motor: MotorRules,
    /// How the clutch actuator is driven.
    pub clutch_actuator: ClutchActuatorRules,
    /// When the lid is let go.
    pub lock: LockRules,
    /// How patient each monitor is: one rule for every monitor.
    pub monitors: Vec<Rule>,
    /// The code of each monitor: one for every monitor, no two alike.
    pub codes: Vec<Code>,
    /// Programs, each at a position of its own.
    pub programs: Vec<Program>,
    /// How service mode is entered.
    pub gesture: Gesture,
    /// Routines of service mode, each at a position of its own. `Recall` and `Recalibrate` must be among them, since
    /// every job needs them.
    pub menu: Vec<MenuEntry>,
    /// Limits of service mode.
    pub service: ServiceRules,
    /// Stages and limits of recalibration.
    pub recalibration: Recalibration,
    /// How a fault hold is left.
    pub resets: Resets,
    /// Connectors and their pins. Every terminal of the machine is wired to exactly one pin.
    pub connectors: Vec<BoardConnector>,
    /// The service sheet: what may lie behind each code, one entry for every monitor.
    pub sheet: Vec<SheetEntry>,
}

/// What a hand finds on the console.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PanelRules {
    /// How a position is chosen.
    pub selector: Selector,
    /// Buttons. `Start` and `Stop` are always needed, `More` and `Less` where the selector is `Steps`, and every
    /// button that the rest of the file names.
    pub buttons: Vec<Button>,
}

/// How a program or routine is chosen by its position.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub enum Selector {
    /// A dial whose contacts report steps and, once a turn, the index; worn ones skip.
    Dial {
        /// Detents in one turn.
        #[schemars(range(min = 2, max = 100))]
        detents: u8,
    },
    /// A rotary switch with a contact of its own for each position.
    Switch {
        /// Positions in one turn.
        #[schemars(range(min = 2, max = 100))]
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

/// Levels of the control's own supply, by the voltage of its bulk capacitor.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SupplyRules {
    /// Below this the control forgets what it does not keep for good, V.
    #[schemars(extend("exclusiveMinimum" = 0.0))]
    pub reset_v: f64,
    /// Below this the supply is too low while the motor is driven, V. Above `reset_v`.
    #[schemars(extend("exclusiveMinimum" = 0.0))]
    pub sag_v: f64,
}

/// From the pressure input's voltage to a level.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PressureRules {
    /// Voltage without water before the first calibration, V. Between `min_v` and `max_v`.
    pub zero_v: f64,
    /// Sensitivity, V/kPa.
    #[schemars(extend("exclusiveMinimum" = 0.0))]
    pub v_per_kpa: f64,
    /// Lowest valid voltage, V.
    pub min_v: f64,
    /// Highest valid voltage, V.
    pub max_v: f64,
}

/// From the thermistor divider's voltage to a temperature.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ThermistorRules {
    /// Supply of the divider, V.
    #[schemars(extend("exclusiveMinimum" = 0.0))]
    pub rail_v: f64,
    /// Resistor between supply and thermistor, Ω.
    #[schemars(extend("exclusiveMinimum" = 0.0))]
    pub pullup_ohms: f64,
    /// Thermistor at 25 °C, Ω.
    #[schemars(extend("exclusiveMinimum" = 0.0))]
    pub r25_ohms: f64,
    /// How steeply the thermistor falls with temperature (its beta), K.
    #[schemars(extend("exclusiveMinimum" = 0.0))]
    pub beta_k: f64,
    /// Lowest valid voltage, V. Below `max_v`.
    #[schemars(extend("exclusiveMinimum" = 0.0))]
    pub min_v: f64,
    /// Highest valid voltage, V. Between `min_v` and `rail_v`.
    #[schemars(extend("exclusiveMinimum" = 0.0))]
    pub max_v: f64,
}

/// What counts as empty, rising, falling, cold and hot.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WaterRules {
    /// At this level or below the tub counts as drained, mm.
    #[schemars(extend("exclusiveMinimum" = 0.0))]
    pub drained_mm: f64,
    /// The pump runs on for so long after that, s.
    pub pump_run_on_s: u32,
    /// In a fault hold the lid stays locked above this level, mm.
    pub unlock_mm: f64,
    /// A rise of less than this within the delay of the monitor `FillNone` is no rise, mm.
    pub rise_mm: f64,
    /// A rise of more than this with the valves shut is unexpected, mm.
    pub unexpected_mm: f64,
    /// A fall of more than this without draining is a loss, mm.
    pub lost_mm: f64,
    /// The level may settle for so long after the valves have shut, s.
    pub settle_s: u32,
    /// The temperature is judged from this level upwards, mm.
    pub judge_mm: f64,
}

/// How motor and speed pickup are judged.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct MotorRules {
    /// Pulses of the pickup in one turn of the pulley.
    #[schemars(range(min = 1))]
    pub pulses_per_rev: u32,
    /// Rest before the motor turns the other way, ms.
    #[schemars(range(min = 50))]
    pub reverse_ms: u32,
    /// The drum counts as standing after so long without a pulse, ms.
    pub standstill_ms: u32,
    /// After a spin the drum never counts as standing earlier than this, ms.
    pub coast_ms: u32,
    /// Less than this is no current, A. Below `overload_a`.
    #[schemars(extend("exclusiveMinimum" = 0.0))]
    pub min_a: f64,
    /// More than this is overload, A. Above `min_a`.
    pub overload_a: f64,
    /// In a spin, a high current is overload only below this speed, rev/min.
    pub start_rpm: f64,
    /// Lowest mean speed of agitation, rev/min.
    pub agitate_min_rpm: f64,
    /// A current that vanishes after at least this much running is overheating, s.
    pub warm_s: u32,
    /// A spin has reached its speed at this share of it.
    #[schemars(extend("exclusiveMinimum" = 0.0, "exclusiveMaximum" = 1.0))]
    pub reached_share: f64,
    /// Unbalance is judged from this speed upwards, rev/min.
    pub ripple_rpm: f64,
    /// A swing of the speed by this share of its mean is unbalance.
    pub ripple_share: f64,
    /// Fastest spin without calibration, rev/min.
    pub uncalibrated_rpm: f64,
}

/// How the clutch actuator is driven. Its cam switch is closed in the half of the turn that spins, open in the half
/// that agitates.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ClutchActuatorRules {
    /// Time for one degree before the first calibration, ms.
    #[schemars(extend("exclusiveMinimum" = 0.0))]
    pub ms_per_deg: f64,
    /// How far to run on past the edge of the switch, °.
    #[schemars(extend("exclusiveMinimum" = -1.0, "exclusiveMaximum" = 90.0))]
    pub run_on_deg: f64,
}

/// When the lid is let go.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LockRules {
    /// In a fault hold with water that does not go, the lid is let go after so long, s.
    pub hold_limit_s: u32,
}

/// How patient one monitor is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Rule {
    /// The monitor.
    pub monitor: Monitor,
    /// Time that its condition must last, ms. Monitors of the motor count driven time only.
    pub delay_ms: u32,
    /// How many times the control rests and tries again before it gives up.
    #[serde(default)]
    pub retries: u8,
    /// Rest between two tries with the loads off, ms.
    #[serde(default)]
    pub rest_ms: u32,
    /// Whether the fault hold may pump the tub out.
    #[serde(default)]
    pub drain: bool,
}

/// A code and what it stands for.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Code {
    /// Two decimal digits.
    #[schemars(range(min = 1, max = 99))]
    pub code: u8,
    /// The monitor behind it.
    pub monitor: Monitor,
}

/// A washing program.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Program {
    /// Position: on a knob the detents clockwise from the index, in a list the number that the lamps show.
    #[schemars(range(max = 99))]
    pub position: u8,
    /// Name for people, at most 80 characters: the words themselves, or a key of the texts.
    pub name: String,
    /// What it does, in order; at least one phase.
    #[schemars(length(min = 1))]
    pub phases: Vec<Phase>,
}

/// One part of a program.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub enum Phase {
    /// Let water in.
    Fill {
        /// Up to this level, mm. Above `water.drained_mm`, and within what the pressure input can show.
        #[schemars(extend("exclusiveMinimum" = 0.0))]
        level_mm: f64,
        /// Through the cold valve. At least one of the two must open.
        cold: bool,
        /// Through the hot valve.
        hot: bool,
        /// Colder than this is too cold, °C. Below `max_c`.
        #[schemars(extend("exclusiveMinimum" = -1.0))]
        min_c: f64,
        /// Hotter than this is too hot, °C.
        max_c: f64,
        /// Usual length, for the time display, s.
        typical_s: u32,
    },
    /// Stroke to and fro.
    Agitate {
        /// Length, min.
        #[schemars(extend("exclusiveMinimum" = 0.0, "exclusiveMaximum" = 120.0))]
        minutes: f64,
        /// One stroke, ms.
        #[schemars(range(min = 100, max = 10_000))]
        stroke_ms: u32,
        /// Rest between two strokes, ms. Not shorter than `motor.reverse_ms`.
        #[schemars(range(min = 50, max = 10_000))]
        pause_ms: u32,
    },
    /// Let the laundry stand in the water.
    Soak {
        /// Length, min.
        #[schemars(extend("exclusiveMinimum" = 0.0, "exclusiveMaximum" = 240.0))]
        minutes: f64,
    },
    /// Pump the water out.
    Drain {
        /// Usual length, for the time display, s.
        typical_s: u32,
    },
    /// Spin.
    Spin {
        /// Speed of the basket, rev/min.
        #[schemars(extend("exclusiveMinimum" = 0.0, "exclusiveMaximum" = 2000.0))]
        rpm: f64,
        /// Length from the first drive, min.
        #[schemars(extend("exclusiveMinimum" = 0.0, "exclusiveMaximum" = 30.0))]
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
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct MenuEntry {
    /// Position, as in a program.
    #[schemars(range(max = 99))]
    pub position: u8,
    /// What Start begins there.
    pub routine: Routine,
}

/// Limits of service mode.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ServiceRules {
    /// Button that turns the pages of the list of codes.
    pub page: Button,
    /// Service mode ends after so long without an input, s.
    pub timeout_s: u32,
    /// Start held for this long clears the codes, ms.
    pub clear_hold_ms: u32,
    /// A test of a load ends by itself after so long, s.
    pub test_limit_s: u32,
    /// Spin speed of the spin test, rev/min.
    pub test_spin_rpm: f64,
    /// Stored codes that are kept, newest first; older ones fall off the end.
    #[serde(default = "usual_codes", skip_serializing_if = "are_usual_codes")]
    #[schemars(range(min = 1, max = 20), extend("default" = USUAL_CODES))]
    pub stored_codes: u8,
}

fn usual_codes() -> u8 {
    USUAL_CODES
}

fn are_usual_codes(codes: &u8) -> bool {
    *codes == USUAL_CODES
}

/// What recalibration does, and what it may learn.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Recalibration {
    /// The stages in order, each exactly once.
    pub stages: Vec<StageRule>,
    /// Lowest and highest voltage that can be an empty tub, V. The second above the first.
    pub zero_v: (f64, f64),
    /// Rise that proves a valve, mm.
    pub rise_mm: f64,
    /// Shortest and longest time for one degree of the cam, ms. The second above the first.
    pub cam_ms_per_deg: (f64, f64),
    /// The figure for inertia is the time from the first to the second of these speeds, rev/min. The second above the
    /// first.
    pub spin_rpm: (f64, f64),
    /// Shortest and longest such time, ms.
    pub inertia_ms: (u32, u32),
}

/// One stage and its times.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct StageRule {
    /// The stage.
    pub stage: Stage,
    /// Shortest length, s.
    pub min_s: u32,
    /// After so long the stage has failed, s. Above `min_s`.
    #[schemars(range(min = 1, max = 600))]
    pub limit_s: u32,
}

/// How a fault hold is left. On boards that do not keep it, a long enough time without power ends it as well.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Resets {
    /// Holding a button, on boards that have it.
    pub hold: Option<ButtonHold>,
    /// Opening and closing the lid, on boards that have it.
    pub lid_cycle: Option<LidCycle>,
    /// Moving the lid so often in so long, on boards that have it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lid_moves: Option<LidMoves>,
    /// Whether the board keeps its fault hold without power. It then needs one of the ways above.
    #[serde(default)]
    pub kept: bool,
}

/// A reset by holding a button.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ButtonHold {
    /// The button.
    pub button: Button,
    /// How long it is held, ms.
    pub ms: u32,
}

/// A reset by moving the lid.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LidCycle {
    /// How many times the lid closes.
    pub cycles: u8,
    /// From one closing to the next at most so long, ms.
    pub within_ms: u32,
}

/// A reset by moving the lid, each way counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LidMoves {
    /// How many times the lid moves, up or down.
    #[schemars(range(min = 1))]
    pub moves: u8,
    /// From the first of them to the last at most so long, ms.
    pub within_ms: u32,
}

impl Resets {
    /// Something other than the plug ends a fault hold.
    pub fn has_own_way(&self) -> bool {
        self.hold.is_some() || self.lid_cycle.is_some() || self.lid_moves.is_some()
    }
}

/// A connector on the board.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct BoardConnector {
    /// Printed label, such as `X2`; no two alike.
    pub label: String,
    /// Its pins.
    pub pins: Vec<BoardPin>,
}

/// One pin of a connector.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct BoardPin {
    /// Number on the connector, from 1; no two alike.
    pub pin: u8,
    /// The wire that leaves there, named by its far end.
    pub terminal: Terminal,
    /// Printed label.
    pub label: String,
}

/// One entry of the service sheet.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SheetEntry {
    /// The monitor of the code.
    pub monitor: Monitor,
    /// Components that can be behind it; at least one.
    #[schemars(length(min = 1))]
    pub suspects: Vec<Component>,
    /// Keys of the texts with the checks that tell them apart: lower-case words joined by hyphens.
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
