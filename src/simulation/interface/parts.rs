//! The names of everything in the machine that can be touched: components, terminals, pins, connectors.

use crate::names;
use crate::units::{UnknownName, by_name};
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::{Deserialize, Deserializer, Serialize};
use std::borrow::Cow;
use std::fmt;
use std::str::FromStr;

names! {
    /// A thing that can fail and be replaced, or put right where it needs no part.
    #[derive(JsonSchema)]
    Component {
        /// The outlet and what feeds it.
        Supply = "supply",
        /// The power cord.
        Cord = "cord",
        /// The fuse in the line.
        LineFuse = "line-fuse",
        /// The line filter.
        Filter = "filter",
        /// The control board.
        Board = "board",
        /// The dial.
        Dial = "dial",
        /// The lid lock with its switches.
        LidLock = "lid-lock",
        /// The cold inlet valve.
        InletCold = "inlet-cold",
        /// The hot inlet valve.
        InletHot = "inlet-hot",
        /// The drain pump.
        DrainPump = "drain-pump",
        /// The motor.
        Motor = "motor",
        /// The motor's run capacitor.
        RunCapacitor = "run-capacitor",
        /// The clutch actuator.
        ClutchActuator = "clutch-actuator",
        /// The speed pickup.
        Pickup = "pickup",
        /// The pressure sensor.
        PressureSensor = "pressure-sensor",
        /// The hose from the tub to the pressure sensor.
        PressureHose = "pressure-hose",
        /// The water thermistor.
        Thermistor = "thermistor",
        /// The drive belt.
        Belt = "belt",
        /// The tub with its seal and bearings.
        Tub = "tub",
        /// The drain hose.
        DrainHose = "drain-hose",
        /// The wiring harness with its connectors.
        Harness = "harness",
        /// The load of laundry.
        Laundry = "laundry",
        /// The two taps on the wall.
        Taps = "taps",
        /// The two fill hoses.
        InletHoses = "inlet-hoses",
        /// The floor and the feet on it.
        Floor = "floor",
    }
}

names! {
    /// A terminal of a load or sensor that a harness wire reaches. The wire, and the board pin
    /// at its other end, are known by the same name.
    #[derive(JsonSchema)]
    Terminal {
        CordLine = "cord.1", CordNeutral = "cord.2",
        Cold1 = "inlet-cold.1", Cold2 = "inlet-cold.2", Hot1 = "inlet-hot.1", Hot2 = "inlet-hot.2",
        Pump1 = "drain-pump.1", Pump2 = "drain-pump.2",
        MotorA = "motor.1", MotorB = "motor.2", MotorCommon = "motor.3",
        Clutch1 = "clutch-actuator.1", Clutch2 = "clutch-actuator.2",
        LockCoil1 = "lid-lock.1", LockCoil2 = "lid-lock.2", LockLineIn = "lid-lock.3", LockLineOut = "lid-lock.4",
        Cap1 = "run-capacitor.1", Cap2 = "run-capacitor.2",
        LidSwitch1 = "lid-lock.5", LidSwitch2 = "lid-lock.6",
        Cam1 = "clutch-actuator.3", Cam2 = "clutch-actuator.4",
        PickupSupply = "pickup.1", PickupGround = "pickup.2", PickupOut = "pickup.3",
        PressureSupply = "pressure-sensor.1", PressureGround = "pressure-sensor.2", PressureOut = "pressure-sensor.3",
        Therm1 = "thermistor.1", Therm2 = "thermistor.2",
    }
}

names! {
    /// Which of the two water pipes at the washer's place, by the tap on it.
    #[derive(JsonSchema)]
    WaterPipe {
        /// Cold water.
        Cold = "cold",
        /// Hot water.
        Hot = "hot",
    }
}

names! {
    /// Where along a wire a probe touches: the board's pin, the harness end at the board's
    /// connector (the same metal while the connector is seated), or the load's own terminal.
    Side { Board = "board", Harness = "harness", Load = "load" }
}

impl Component {
    /// Its terminals.
    pub fn terminals(self) -> impl Iterator<Item = Terminal> {
        Terminal::ALL
            .iter()
            .copied()
            .filter(move |t| t.component() == self)
    }

    /// Hands can put it right without a part: open a tap, clear or lay a hose, level the feet, sort the load,
    /// do without an extension cord, clean a screen or an impeller, bend a bracket back, reseat a connector.
    pub const fn can_be_put_right(self) -> bool {
        matches!(
            self,
            Component::Supply
                | Component::Taps
                | Component::InletHoses
                | Component::InletCold
                | Component::InletHot
                | Component::DrainPump
                | Component::DrainHose
                | Component::PressureHose
                | Component::Pickup
                | Component::Harness
                | Component::Floor
                | Component::Laundry
        )
    }

    /// It lies behind the cabinet's panels.
    pub const fn is_inside(self) -> bool {
        !matches!(
            self,
            Component::Supply
                | Component::Cord
                | Component::Dial
                | Component::LidLock
                | Component::Tub
                | Component::DrainHose
                | Component::Laundry
                | Component::Taps
                | Component::InletHoses
                | Component::InletCold
                | Component::InletHot
                | Component::Floor
        )
    }
}

impl Terminal {
    /// The component this terminal belongs to.
    pub fn component(self) -> Component {
        let name = self.name();
        let stem = &name[..name.len() - 2];
        stem.parse().unwrap_or(Component::Harness)
    }

    /// True for terminals that carry mains voltage when their load is switched on.
    pub fn is_mains(self) -> bool {
        self.index() <= Terminal::Cap2.index()
    }
}

/// A point that meter probes can touch. Written `drain-pump.1` (load side),
/// `drain-pump.1@harness`, `drain-pump.1@board`, or one of the fixed names below.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(into = "String")]
pub enum Pin {
    /// Somewhere along a harness wire.
    Wire(Terminal, Side),
    /// `plug.line`: line blade of the plug.
    PlugLine,
    /// `plug.neutral`: neutral blade of the plug.
    PlugNeutral,
    /// `plug.earth`: earth pin of the plug, bonded to the cabinet.
    PlugEarth,
    /// `fuse.in`: supply side of the line fuse.
    FuseIn,
    /// `fuse.out`: machine side of the line fuse.
    FuseOut,
    /// `bulk.plus`: positive test point of the bulk capacitor.
    BulkPlus,
    /// `bulk.minus`: negative test point of the bulk capacitor.
    BulkMinus,
}

const FIXED_PINS: [(Pin, &str); 7] = [
    (Pin::PlugLine, "plug.line"),
    (Pin::PlugNeutral, "plug.neutral"),
    (Pin::PlugEarth, "plug.earth"),
    (Pin::FuseIn, "fuse.in"),
    (Pin::FuseOut, "fuse.out"),
    (Pin::BulkPlus, "bulk.plus"),
    (Pin::BulkMinus, "bulk.minus"),
];

impl Pin {
    /// Every point a probe can touch.
    pub fn all() -> impl Iterator<Item = Pin> {
        FIXED_PINS.iter().map(|(pin, _)| *pin).chain(
            Terminal::ALL
                .iter()
                .flat_map(|t| Side::ALL.iter().map(move |s| Pin::Wire(*t, *s))),
        )
    }
}

impl fmt::Display for Pin {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Pin::Wire(terminal, Side::Load) => f.write_str(terminal.name()),
            Pin::Wire(terminal, side) => write!(f, "{}@{}", terminal.name(), side.name()),
            fixed => {
                let name = FIXED_PINS
                    .iter()
                    .find(|(pin, _)| pin == fixed)
                    .map_or("", |(_, name)| name);
                f.write_str(name)
            }
        }
    }
}

impl FromStr for Pin {
    type Err = UnknownName;
    fn from_str(text: &str) -> Result<Pin, UnknownName> {
        if let Some((pin, _)) = FIXED_PINS.iter().find(|(_, name)| *name == text) {
            return Ok(*pin);
        }
        let unknown = || UnknownName {
            kind: "pin",
            text: text.to_owned(),
            names: &[],
        };
        let (terminal, side) = text.split_once('@').unwrap_or((text, "load"));
        Ok(Pin::Wire(
            terminal.parse().map_err(|_| unknown())?,
            side.parse().map_err(|_| unknown())?,
        ))
    }
}

impl<'de> Deserialize<'de> for Pin {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Pin, D::Error> {
        by_name::deserialize(from)
    }
}

impl JsonSchema for Pin {
    fn schema_name() -> Cow<'static, str> {
        "Pin".into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        let names: Vec<String> = Pin::all().map(String::from).collect();
        json_schema!({
            "description": "A point that meter probes can touch, as a text: `\"drain-pump.1\"` is the terminal at the \
                load, `\"drain-pump.1@harness\"` the end of its wire at the board's connector, \
                `\"drain-pump.1@board\"` the board's pin; besides, blades of the plug, both ends of the line fuse \
                and the two test points of the bulk capacitor.",
            "type": "string",
            "enum": names,
        })
    }
}

impl From<Pin> for String {
    fn from(pin: Pin) -> String {
        pin.to_string()
    }
}

/// A connector that can be pulled: one of the board's, by the label its board file gives it,
/// or the plug on a component.
#[derive(
    Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
)]
pub enum Connector {
    /// A connector on the board, such as `X2`.
    Board(String),
    /// The plug on a component.
    Load(Component),
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_pin_reads_back_from_its_name() {
        for pin in Pin::all() {
            assert_eq!(pin.to_string().parse::<Pin>(), Ok(pin));
        }
    }

    #[test]
    fn every_terminal_belongs_to_a_component_of_its_own_name() {
        for terminal in Terminal::ALL {
            assert!(
                terminal.name().starts_with(terminal.component().name()),
                "{terminal}"
            );
        }
    }
}
