//! Faults as changes to component parameters. The physics never asks whether there is one.

use super::params::Param;
use crate::interface::Component;
use crate::names;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A path with at least this resistance, Ω, is open to the control and to an ohmmeter. Our own choice.
const OPEN_OHMS: f64 = 1.0e5;

/// How one parameter is changed.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub enum Op {
    /// Replace the value.
    Set(f64),
    /// Multiply the value.
    Scale(f64),
    /// Add to the value.
    Add(f64),
}

impl Op {
    /// The changed value.
    pub fn apply(self, value: f64) -> f64 {
        match self {
            Op::Set(new) => new,
            Op::Scale(factor) => value * factor,
            Op::Add(term) => value + term,
        }
    }

    /// The value changed by a share of the whole change, 0 (not at all) to 1 (wholly).
    pub fn apply_share(self, value: f64, share: f64) -> f64 {
        if share >= 1.0 {
            self.apply(value)
        } else {
            value + (self.apply(value) - value) * share
        }
    }
}

/// What brings out a fault that otherwise sleeps.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Stress {
    /// The motor's winding is warmer than this, °C.
    HotWinding {
        /// Bound, °C.
        above_c: f64,
    },
    /// The control board is warmer than this, °C.
    HotBoard {
        /// Bound, °C.
        above_c: f64,
    },
    /// The basket turns faster than this, rev/min.
    Spinning {
        /// Bound, rev/min.
        above_rpm: f64,
    },
    /// The water stands higher in the tub than this, mm.
    Wet {
        /// Bound, mm.
        above_mm: f64,
    },
}

/// When a fault is present: always, in spells drawn by its own random process, or more and more.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub enum Presence {
    /// There all the time.
    #[default]
    Steady,
    /// Comes and goes: mean length of a good and of a bad spell, seconds.
    Intermittent {
        /// Mean length of a spell in which the component works, s.
        good_s: f64,
        /// Mean length of a spell in which it does not, s.
        bad_s: f64,
        /// The spells come under this stress only; without one, at any time.
        #[serde(default)]
        under: Option<Stress>,
    },
    /// Grows from nothing with the time that the machine works.
    Drift {
        /// Working time until the change is whole, s.
        full_after_s: f64,
    },
}

names! {
    /// What kind of thing a fault is: the first in this order that one of its changes is. Its text is `fault-kind-{name}`.
    #[derive(JsonSchema)]
    FaultKind {
        /// Insulation lets current out to the cabinet.
        ToGround = "to-ground",
        /// Current flows where it should not: a short, turns that touch, a contact that stays closed.
        Short = "short",
        /// No current flows where it should: a broken wire or winding, a contact that stays open.
        Open = "open",
        /// Two things are mixed up.
        Crossed = "crossed",
        /// A resistance, a capacitance or a supply voltage is off.
        Value = "value",
        /// A sensor or an input reports what is not so.
        Signal = "signal",
        /// The control's own supply, memory or service mode.
        Control = "control",
        /// Something sticks, slips, is worn, broken, loose or badly loaded.
        Mechanical = "mechanical",
        /// Water, suds or air goes where it should not, or does not go where it should.
        Water = "water",
    }
}

names! {
    /// When a fault is there, without its figures. Its text is `fault-presence-{name}`.
    #[derive(JsonSchema)]
    PresenceKind {
        /// All the time.
        Steady = "steady",
        /// In spells.
        Intermittent = "intermittent",
        /// More and more.
        Drift = "drift",
    }
}

impl Presence {
    /// The same without its figures.
    pub const fn kind(self) -> PresenceKind {
        match self {
            Presence::Steady => PresenceKind::Steady,
            Presence::Intermittent { .. } => PresenceKind::Intermittent,
            Presence::Drift { .. } => PresenceKind::Drift,
        }
    }
}

/// One way in which one component fails.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FailureMode {
    /// Unique name, such as `drain-pump.open-winding`.
    pub id: String,
    /// The component that fails.
    pub component: Component,
    /// How often this happens beside the others (no unit; our own invention).
    pub weight: f64,
    /// The part that cures it; empty where no part does.
    #[serde(default)]
    pub cured_by: String,
    /// Hands put it right without a part: cleaning, reseating, bending back.
    #[serde(default)]
    pub by_hand: bool,
    /// What changes in the component.
    pub changes: Vec<(Param, Op)>,
    /// Steady, intermittent or growing.
    #[serde(default)]
    pub presence: Presence,
}

impl FailureMode {
    /// It is put right, or learned anew, without a part, though a new one might end it as well.
    pub fn needs_no_part(&self) -> bool {
        self.by_hand || self.cured_by.is_empty()
    }

    /// It lets current out of the circuit into the cabinet, and so to ground.
    pub fn leaks_to_ground(&self) -> bool {
        self.changes.iter().any(|(param, _)| param.is_insulation())
    }

    /// What kind of thing it is.
    pub fn kind(&self) -> FaultKind {
        let kinds = self.changes.iter().map(|(param, op)| kind(*param, *op));
        // The catalogue's reader refuses a mode that changes nothing.
        kinds.min().unwrap_or(FaultKind::Value)
    }

    /// The same fault, whole and all the time: how it looks at its worst.
    #[must_use]
    pub fn at_its_worst(&self) -> FailureMode {
        FailureMode {
            presence: Presence::Steady,
            ..self.clone()
        }
    }
}

/// What kind of thing one change is.
fn kind(param: Param, op: Op) -> FaultKind {
    use Param as P;
    match param {
        P::FilterInsulationOhms | P::PumpInsulationOhms | P::MotorInsulationOhms => {
            FaultKind::ToGround
        }
        // Fewer turns have less resistance.
        P::LockCoilOhms
        | P::ColdCoilOhms
        | P::HotCoilOhms
        | P::PumpCoilOhms
        | P::MotorAOhms
        | P::MotorBOhms
        | P::ClutchCoilOhms => match op {
            Op::Scale(factor) if factor < 1.0 => FaultKind::Short,
            Op::Set(_) | Op::Scale(_) | Op::Add(_) => kind_of_path(op),
        },
        P::SupplyOhms
        | P::ExtensionOhms
        | P::OutletGroundOhms
        | P::CordLineOhms
        | P::CordNeutralOhms
        | P::FuseOhms
        | P::FilterOhms
        | P::BulkBleederOhms
        | P::RectifierOhms
        | P::SensePullupOhms
        | P::ShuntOhms
        | P::StopButtonOhms
        | P::RelayColdClosedOhms
        | P::RelayHotClosedOhms
        | P::RelayPumpClosedOhms
        | P::RelayMotorAClosedOhms
        | P::RelayMotorBClosedOhms
        | P::RelayClutchClosedOhms
        | P::RelayLockClosedOhms
        | P::EncoderOhms
        | P::LockContactOhms
        | P::LidSwitchClosedOhms
        | P::MotorCommonOhms
        | P::CapEsrOhms
        | P::CamClosedOhms
        | P::PickupOutOhms
        | P::PressureOutOhms
        | P::ThermR25Ohms
        | P::ThermSeriesOhms
        | P::WireOhms(_)
        | P::ContactOhms(_) => kind_of_path(op),
        // Nothing, or next to nothing, flows here in a sound machine.
        P::FilterBleederOhms
        | P::RelayColdOpenOhms
        | P::RelayHotOpenOhms
        | P::RelayPumpOpenOhms
        | P::RelayMotorAOpenOhms
        | P::RelayMotorBOpenOhms
        | P::RelayClutchOpenOhms
        | P::RelayLockOpenOhms
        | P::LockContactOpenOhms
        | P::LidSwitchOpenOhms
        | P::CamOpenOhms
        | P::CapShuntOhms
        | P::ThermShuntOhms => match op {
            Op::Set(ohms) if ohms >= OPEN_OHMS => FaultKind::Open,
            Op::Set(_) | Op::Scale(_) | Op::Add(_) => FaultKind::Short,
        },
        P::PolarityReversed | P::HosesCrossed => FaultKind::Crossed,
        P::SupplyScale
        | P::ResidualTripA
        | P::AmbientC
        | P::FilterXFarads
        | P::BoardLoadW
        | P::BulkFarads
        | P::LockCoilHenry
        | P::ColdCoilHenry
        | P::HotCoilHenry
        | P::PumpLockedHenry
        | P::PumpRunHenry
        | P::MotorLeakOhms
        | P::MotorMagnetOhms
        | P::MotorRotorOhms
        | P::MotorRotorLeakOhms
        | P::MotorTripC
        | P::MotorCoolWK
        | P::CapFarads
        | P::ClutchCoilHenry => FaultKind::Value,
        P::ThermPullupOhms
        | P::MotorSenseGain
        | P::CamZeroDeg
        | P::PickupPulsesPerRev
        | P::PickupGap
        | P::PressureZeroV
        | P::PressureVPerKpa => FaultKind::Signal,
        P::SupplyStartV | P::SupplyStopV | P::RailV | P::MemoryLost | P::ServiceLost => {
            FaultKind::Control
        }
        P::DialWear
        | P::LockPullInA
        | P::LockTravelS
        | P::ColdPullInA
        | P::HotPullInA
        | P::PumpPullInA
        | P::PumpFree
        | P::MotorInertiaKgM2
        | P::MotorDragNm
        | P::ClutchPullInA
        | P::ClutchRpm
        | P::BeltGripNm
        | P::BasketDragNm
        | P::LoadKg
        | P::LoadOffsetKgM
        | P::FloorRockMm => FaultKind::Mechanical,
        P::ColdKv
        | P::ColdLeakKv
        | P::HotKv
        | P::HotLeakKv
        | P::PumpHeadM
        | P::PumpFlowLMin
        | P::HoseLeakS
        | P::HoseLagS
        | P::TubLeakKv
        | P::StandpipeM
        | P::HoseExcessM
        | P::HoseKink
        | P::DrainHoseKv
        | P::Suds
        | P::SupplyColdKpa
        | P::SupplyHotKpa
        | P::ColdPipeKv
        | P::HotPipeKv
        | P::ColdTapKv
        | P::HotTapKv
        | P::SupplyColdC
        | P::SupplyHotC => FaultKind::Water,
    }
}

/// What kind of thing it is that a path which carries current in a sound machine has another resistance.
fn kind_of_path(op: Op) -> FaultKind {
    match op {
        Op::Set(ohms) if ohms >= OPEN_OHMS => FaultKind::Open,
        Op::Set(_) | Op::Scale(_) | Op::Add(_) => FaultKind::Value,
    }
}
