//! Every parameter of the plant that can differ between a sound and a faulty machine.

use crate::interface::{Component, Terminal};
use serde::{Deserialize, Serialize};

/// Makes the flat list of parameters with their owners.
macro_rules! params {
    ($($component:ident { $($(#[$meta:meta])* $param:ident),+ $(,)? })+) => {
        /// A number in the physical model.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
        pub enum Param {
            $($($(#[$meta])* $param,)+)+
            /// Resistance of a harness wire, Ω.
            WireOhms(Terminal),
            /// Resistance of the contact where that wire meets the board, Ω.
            ContactOhms(Terminal),
        }

        const PLAIN: &[(Param, Component)] = &[$($((Param::$param, Component::$component),)+)+];

        /// The parameters without data, numbered by the compiler.
        enum Place { $($($param,)+)+ }

        impl Param {
            /// Position in [`Param::all`]. Read at every step of the physics, so it costs nothing.
            #[inline]
            pub const fn index(self) -> usize {
                match self {
                    $($(Param::$param => Place::$param as usize,)+)+
                    Param::WireOhms(terminal) => PLAIN.len() + terminal.index(),
                    Param::ContactOhms(terminal) => PLAIN.len() + WIRES + terminal.index(),
                }
            }
        }
    };
}

params! {
    Supply {
        /// Ratio of rated mains voltage.
        SupplyScale,
        /// Source resistance of the outlet, Ω.
        SupplyOhms,
        /// Both conductors of an extension cord between outlet and plug, Ω; 0 without one.
        ExtensionOhms,
        /// 1 = line and neutral are reversed in the outlet, 0 = they are not.
        PolarityReversed,
        /// From the outlet's ground contact to ground, Ω.
        OutletGroundOhms,
        /// Residual current at which the outlet's protective device trips, A.
        ResidualTripA,
        /// Room, °C.
        AmbientC,
    }
    Cord {
        /// Line conductor, Ω.
        CordLineOhms,
        /// Neutral conductor, Ω.
        CordNeutralOhms,
    }
    LineFuse {
        /// Line fuse, Ω.
        FuseOhms,
    }
    Filter {
        /// Choke in line, Ω.
        FilterOhms,
        /// Capacitor across the mains, F.
        FilterXFarads,
        /// Bleeder across that capacitor, Ω.
        FilterBleederOhms,
        /// Insulation of its line side from the cabinet, Ω, at working voltage.
        FilterInsulationOhms,
    }
    Board {
        /// Control's own draw, W.
        BoardLoadW,
        /// Bulk capacitor, F.
        BulkFarads,
        /// Bleeder across it, Ω.
        BulkBleederOhms,
        /// Bulk voltage above which the switching supply starts, V (very large = it never does).
        SupplyStartV,
        /// Bulk voltage below which it locks out, V.
        SupplyStopV,
        /// Rectifier path, Ω.
        RectifierOhms,
        /// Low-voltage rail, V.
        RailV,
        /// Pull-up at the thermistor input, Ω.
        ThermPullupOhms,
        /// Pull-up at each contact input, Ω.
        SensePullupOhms,
        /// Motor current shunt, Ω.
        ShuntOhms,
        /// 1 = what the board had learned of this machine is lost, 0 = kept.
        MemoryLost,
        /// 1 = service mode never answers the gesture, 0 = it does.
        ServiceLost,
        /// Contact of the Stop button, closed, Ω.
        StopButtonOhms,
        /// Scale of the motor current input: boards for higher mains have a larger shunt amplifier
        /// gain, so that the firmware's limits are the same. No unit.
        MotorSenseGain,
        /// Cold valve relay contact closed, Ω.
        RelayColdClosedOhms,
        /// Cold valve relay contact open, Ω.
        RelayColdOpenOhms,
        /// Hot valve relay contact closed, Ω.
        RelayHotClosedOhms,
        /// Hot valve relay contact open, Ω.
        RelayHotOpenOhms,
        /// Pump relay contact closed, Ω.
        RelayPumpClosedOhms,
        /// Pump relay contact open, Ω.
        RelayPumpOpenOhms,
        /// Motor direction A relay contact closed, Ω.
        RelayMotorAClosedOhms,
        /// Motor direction A relay contact open, Ω.
        RelayMotorAOpenOhms,
        /// Motor direction B relay contact closed, Ω.
        RelayMotorBClosedOhms,
        /// Motor direction B relay contact open, Ω.
        RelayMotorBOpenOhms,
        /// Clutch actuator relay contact closed, Ω.
        RelayClutchClosedOhms,
        /// Clutch actuator relay contact open, Ω.
        RelayClutchOpenOhms,
        /// Lid lock relay contact closed, Ω.
        RelayLockClosedOhms,
        /// Lid lock relay contact open, Ω.
        RelayLockOpenOhms,
    }
    Dial {
        /// Wear of the detents, 0 new to 1 worn out.
        DialWear,
        /// Line from its contacts to the board, Ω.
        EncoderOhms,
    }
    LidLock {
        /// Actuator winding at 20 °C, Ω.
        LockCoilOhms,
        /// Actuator winding, H.
        LockCoilHenry,
        /// Current that draws the bolt, A.
        LockPullInA,
        /// Time the bolt needs, s (larger than any try = jammed).
        LockTravelS,
        /// Line contact when bolted, Ω.
        LockContactOhms,
        /// Line contact when not bolted, Ω.
        LockContactOpenOhms,
        /// Lid switch, lid down, Ω.
        LidSwitchClosedOhms,
        /// Lid switch, lid up, Ω.
        LidSwitchOpenOhms,
    }
    InletCold {
        /// Coil at 20 °C, Ω.
        ColdCoilOhms,
        /// Coil, H.
        ColdCoilHenry,
        /// Current that lifts the armature, A.
        ColdPullInA,
        /// Flow coefficient open, m³/h at 1 bar.
        ColdKv,
        /// Flow coefficient when shut, m³/h at 1 bar.
        ColdLeakKv,
    }
    InletHot {
        /// Coil at 20 °C, Ω.
        HotCoilOhms,
        /// Coil, H.
        HotCoilHenry,
        /// Current that lifts the armature, A.
        HotPullInA,
        /// Flow coefficient open, m³/h at 1 bar.
        HotKv,
        /// Flow coefficient when shut, m³/h at 1 bar.
        HotLeakKv,
    }
    DrainPump {
        /// Winding at 20 °C, Ω.
        PumpCoilOhms,
        /// Inductance with the rotor held, H.
        PumpLockedHenry,
        /// Inductance with the rotor turning, H.
        PumpRunHenry,
        /// Current that turns the rotor, A.
        PumpPullInA,
        /// 1 = rotor turns, 0 = seized.
        PumpFree,
        /// Head at no flow, m.
        PumpHeadM,
        /// Flow at no head, L/min.
        PumpFlowLMin,
        /// Insulation of the winding from the cabinet, Ω, at working voltage.
        PumpInsulationOhms,
    }
    Motor {
        /// Winding A at 20 °C, Ω.
        MotorAOhms,
        /// Winding B at 20 °C, Ω.
        MotorBOhms,
        /// Leakage reactance of a winding at 60 Hz, Ω.
        MotorLeakOhms,
        /// Magnetising reactance at 60 Hz, Ω.
        MotorMagnetOhms,
        /// Rotor resistance as seen from the stator, Ω.
        MotorRotorOhms,
        /// Rotor leakage reactance at 60 Hz, Ω.
        MotorRotorLeakOhms,
        /// Common lead and protector, Ω.
        MotorCommonOhms,
        /// Fixed part of the reflected inertia: rotor, pulley, gearcase, kg·m² at the motor.
        MotorInertiaKgM2,
        /// Bearing drag, N·m.
        MotorDragNm,
        /// Protector opens at, °C.
        MotorTripC,
        /// Heat carried away, W/K.
        MotorCoolWK,
        /// Insulation of the windings from the cabinet, Ω, at working voltage.
        MotorInsulationOhms,
    }
    RunCapacitor {
        /// Capacitance, F.
        CapFarads,
        /// Series resistance, Ω.
        CapEsrOhms,
        /// Leakage resistance, Ω.
        CapShuntOhms,
    }
    ClutchActuator {
        /// Winding at 20 °C, Ω.
        ClutchCoilOhms,
        /// Winding, H.
        ClutchCoilHenry,
        /// Current that turns the cam, A.
        ClutchPullInA,
        /// Cam speed when driven, rev/min.
        ClutchRpm,
        /// Cam switch closed, Ω.
        CamClosedOhms,
        /// Cam switch open, Ω.
        CamOpenOhms,
        /// Where on the cam the switch edge lies, °.
        CamZeroDeg,
    }
    Pickup {
        /// Pulses per pulley revolution.
        PickupPulsesPerRev,
        /// Output stage, Ω.
        PickupOutOhms,
        /// 1 = right air gap, 0 = too wide to sense.
        PickupGap,
    }
    PressureSensor {
        /// Output at no pressure, V.
        PressureZeroV,
        /// Sensitivity, V/kPa.
        PressureVPerKpa,
        /// Output stage, Ω.
        PressureOutOhms,
    }
    PressureHose {
        /// Time constant of air loss, s (large = tight).
        HoseLeakS,
        /// Time constant of response, s.
        HoseLagS,
    }
    Thermistor {
        /// Resistance at 25 °C, Ω.
        ThermR25Ohms,
        /// Lead and joint in series, Ω.
        ThermSeriesOhms,
        /// Damp or damage across it, Ω.
        ThermShuntOhms,
    }
    Belt {
        /// Torque at which it slips, N·m (0 = broken).
        BeltGripNm,
    }
    Tub {
        /// Leak at the bottom, flow coefficient, m³/h at 1 bar.
        TubLeakKv,
        /// Drag of the basket's bearings and seal, N·m at the pulley.
        BasketDragNm,
    }
    DrainHose {
        /// Height of the standpipe's mouth, where the hose bends, above the tub floor, m.
        StandpipeM,
        /// How much deeper than it should the hose's end reaches into the standpipe, m.
        HoseExcessM,
        /// Share of the hose's section that a kink closes, 0 to 1.
        HoseKink,
        /// Flow coefficient, m³/h at 1 bar.
        DrainHoseKv,
    }
    Laundry {
        /// Dry laundry, kg.
        LoadKg,
        /// Unbalance, kg·m.
        LoadOffsetKgM,
        /// Suds, 0 none to 1 foam to the rim.
        Suds,
    }
    Taps {
        /// Pressure of the house's cold water, nothing flowing, kPa.
        SupplyColdKpa,
        /// Pressure of the house's hot water, nothing flowing, kPa.
        SupplyHotKpa,
        /// Flow coefficient of the cold pipe in the house, m³/h at 1 bar. What a sound pipe and an open tap lose is
        /// counted with the valve: very large.
        ColdPipeKv,
        /// The same of the hot pipe.
        HotPipeKv,
        /// Flow coefficient of the cold tap as it stands open, m³/h at 1 bar.
        ColdTapKv,
        /// The same of the hot tap.
        HotTapKv,
        /// Cold water, °C.
        SupplyColdC,
        /// Hot water, °C.
        SupplyHotC,
    }
    InletHoses {
        /// 1 = the hot hose is on the cold valve and the cold hose on the hot one, 0 = as marked.
        HosesCrossed,
    }
    Floor {
        /// How far the machine rocks on its feet, mm.
        FloorRockMm,
    }
}

const WIRES: usize = Terminal::ALL.len();

impl Param {
    /// Number of parameters.
    pub const COUNT: usize = PLAIN.len() + 2 * WIRES;

    /// Every parameter.
    pub fn all() -> impl Iterator<Item = Param> {
        PLAIN
            .iter()
            .map(|(param, _)| *param)
            .chain(Terminal::ALL.iter().map(|t| Param::WireOhms(*t)))
            .chain(Terminal::ALL.iter().map(|t| Param::ContactOhms(*t)))
    }

    /// Insulation that keeps a live part from the cabinet.
    pub const fn is_insulation(self) -> bool {
        matches!(
            self,
            Param::FilterInsulationOhms | Param::PumpInsulationOhms | Param::MotorInsulationOhms
        )
    }

    /// The component that a new part must replace to put this right.
    pub fn component(self) -> Component {
        match self {
            Param::WireOhms(_) | Param::ContactOhms(_) => Component::Harness,
            plain => PLAIN[plain.index()].1,
        }
    }
}

/// A value for every parameter.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Params(Vec<f64>);

impl Params {
    /// All zero; the content room fills every entry and refuses a file that leaves one out.
    pub fn zeroed() -> Params {
        Params(vec![0.0; Param::COUNT])
    }

    /// The value of `param`.
    #[inline]
    pub fn get(&self, param: Param) -> f64 {
        self.0[param.index()]
    }

    /// Replace the value of `param`.
    pub fn set(&mut self, param: Param, value: f64) {
        self.0[param.index()] = value;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_parameter_has_the_place_that_the_list_gives_it() {
        for (place, param) in Param::all().enumerate() {
            assert_eq!(param.index(), place, "{param:?}");
        }
        assert_eq!(Param::all().count(), Param::COUNT);
    }
}
