//! What the service sheet's meter checks measure: where, in what setting, in what state of the machine, and
//! what a sound one shows. The sheet says it in words; these are the same checks as data.

use crate::bench::MeterMode;
use crate::lesson::Library;
use detent_simulation::interface::{Component, Mains, Pin, Rating, Side, Terminal};
use detent_simulation::plant::heat::ntc_beta_ohms;
use detent_simulation::plant::{Param, Params};
use serde::{Deserialize, Serialize};

/// A winding's own tolerance, share of its value. Common practice, no source.
const WINDING_SHARE: f64 = 0.10;
/// What leads and joints may add to a winding, Ω.
const JOINTS_OHMS: f64 = 0.5;
/// Tolerance of a run capacitor, share of its value: one of those preferred by IEC 60252-1, from memory.
const CAPACITOR_SHARE: f64 = 0.10;
/// A wire or a fuse that is whole shows less than this, leads included, Ω. Common practice, no source.
const WHOLE_OHMS: f64 = 1.0;
/// Tolerance of a logic supply and of what is divided from it, share of it. Common practice, no source.
const RAIL_SHARE: f64 = 0.05;
/// Tolerance of a thermistor with that of the room's temperature, share of its value.
const THERMISTOR_SHARE: f64 = 0.10;
/// What the level signal may be off at no water, V.
const LEVEL_V: f64 = 0.1;
/// Bulk voltage under load may stand this share under or over the peak of the mains.
const BULK_SHARE: f64 = 0.10;
/// Running current of the pump may be this share off what the sheet says.
const PUMP_SHARE: f64 = 0.15;
/// Speed in the spin test and its tolerance: the pulses that the sheet names, Hz.
const PULSES_HZ: (f64, f64) = (76.0, 84.0);

/// In what state of the machine a check is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum State {
    /// Plugged in and at work.
    Live,
    /// Unplugged, nothing more.
    Unplugged,
    /// Unplugged, stored charge bled.
    Bled,
    /// Unplugged, stored charge bled, the plug of the load or sensor pulled off.
    Pulled,
}

impl State {
    /// All, as they are offered.
    pub const ALL: [State; 4] = [State::Live, State::Unplugged, State::Bled, State::Pulled];

    /// Short name, for text keys.
    pub fn key(self) -> &'static str {
        match self {
            State::Live => "live",
            State::Unplugged => "unplugged",
            State::Bled => "bled",
            State::Pulled => "pulled",
        }
    }
}

/// What is measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Kind {
    /// A winding's resistance.
    Winding(Param),
    /// The run capacitor.
    Capacitor,
    /// A wire of the harness, end to end.
    Wire,
    /// The line fuse.
    Fuse,
    /// A contact that must let nothing through.
    Open,
    /// A thermistor.
    Thermistor,
    /// The mains at the cord.
    Mains,
    /// A load's voltage while its test runs.
    Driven,
    /// The supply of a sensor.
    Rail,
    /// The bulk capacitor's voltage.
    Bulk,
    /// The level signal with no water.
    Level,
    /// The thermistor's input on the board.
    Input,
    /// The pump's current while it runs.
    Current,
    /// Pulses of the speed pickup in the spin test.
    Pulses,
}

impl Kind {
    /// Short name, for text keys.
    pub fn key(self) -> &'static str {
        match self {
            Kind::Winding(_) => "winding",
            Kind::Capacitor => "capacitor",
            Kind::Wire => "wire",
            Kind::Fuse => "fuse",
            Kind::Open => "open",
            Kind::Thermistor => "thermistor",
            Kind::Mains => "mains",
            Kind::Driven => "driven",
            Kind::Rail => "rail",
            Kind::Bulk => "bulk",
            Kind::Level => "level",
            Kind::Input => "input",
            Kind::Current => "current",
            Kind::Pulses => "pulses",
        }
    }
}

/// What a sound one shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Range {
    /// From, to: in the setting's unit.
    Between(f64, f64),
    /// Over range: no way through.
    Open,
}

/// One check with a meter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MeterCheck {
    /// The sheet's text that tells it.
    pub text_key: &'static str,
    /// What is measured.
    pub kind: Kind,
    /// Meter setting.
    pub mode: MeterMode,
    /// Pin under the red probe.
    pub red: Pin,
    /// Pin under the black probe.
    pub black: Pin,
    /// State of the machine.
    pub state: State,
    /// The component that it tells about.
    pub component: Component,
}

impl MeterCheck {
    /// What a sound one shows on this machine.
    pub fn sound(&self, library: &Library<'_>, mains: Mains) -> Range {
        let sound = library.sound;
        let share =
            |value: f64, share: f64| Range::Between(value * (1.0 - share), value * (1.0 + share));
        let thermistor = ntc_beta_ohms(
            sound.get(Param::ThermR25Ohms),
            library.board.thermistor.beta_k,
            sound.get(Param::AmbientC),
        );
        match self.kind {
            Kind::Winding(param) => {
                let ohms = sound.get(param);
                let (low, high) = (1.0 - WINDING_SHARE, 1.0 + WINDING_SHARE);
                Range::Between(ohms * low, ohms * high + JOINTS_OHMS)
            }
            Kind::Capacitor => share(1.0e6 * sound.get(Param::CapFarads), CAPACITOR_SHARE),
            Kind::Wire | Kind::Fuse => Range::Between(0.0, WHOLE_OHMS),
            Kind::Open => Range::Open,
            Kind::Thermistor => share(thermistor, THERMISTOR_SHARE),
            // ANSI C84.1, service range A; IEC 60038, 230 V and a tenth either way (both from memory).
            Kind::Mains | Kind::Driven => match mains {
                Mains::V120Hz60 => Range::Between(114.0, 126.0),
                Mains::V230Hz50 => Range::Between(207.0, 253.0),
            },
            Kind::Rail => share(sound.get(Param::RailV), RAIL_SHARE),
            Kind::Bulk => share(mains.rating().volts * core::f64::consts::SQRT_2, BULK_SHARE),
            Kind::Level => {
                let zero = sound.get(Param::PressureZeroV);
                Range::Between(zero - LEVEL_V, zero + LEVEL_V)
            }
            Kind::Input => {
                let pullup = sound.get(Param::ThermPullupOhms);
                let volts = sound.get(Param::RailV) * thermistor / (thermistor + pullup);
                share(volts, 2.0 * RAIL_SHARE)
            }
            Kind::Current => share(pump_a(sound, mains.rating()), PUMP_SHARE),
            Kind::Pulses => Range::Between(PULSES_HZ.0, PULSES_HZ.1),
        }
    }
}

/// What a sound pump draws that turns, to the tenth of an ampere that the service sheet prints, A rms. The voltage
/// over the impedance of a winding, √(R² + (2πfL)²).
pub fn pump_a(sound: &Params, rating: Rating) -> f64 {
    let reactance = core::f64::consts::TAU * rating.hz * sound.get(Param::PumpRunHenry);
    let impedance = libm::hypot(sound.get(Param::PumpCoilOhms), reactance);
    libm::round(10.0 * rating.volts / impedance) / 10.0
}

const fn load(terminal: Terminal) -> Pin {
    Pin::Wire(terminal, Side::Load)
}

const fn board(terminal: Terminal) -> Pin {
    Pin::Wire(terminal, Side::Board)
}

/// Every check that is asked for.
pub fn all() -> Vec<MeterCheck> {
    use Component as C;
    use Kind::{
        Capacitor, Current, Driven, Input, Level, Open, Pulses, Rail, Thermistor, Winding, Wire,
    };
    use MeterMode::{AmpsClamp, Hertz, Microfarads, Ohms, VoltsAc, VoltsDc};
    use Param as P;
    use State::{Bled, Live, Pulled};
    use Terminal as T;
    let meter_check = |text_key, kind, mode, red, black, state, component| MeterCheck {
        text_key,
        kind,
        mode,
        red,
        black,
        state,
        component,
    };
    let winding = |text_key, param, a, b, of| {
        meter_check(text_key, Winding(param), Ohms, load(a), load(b), Pulled, of)
    };
    let open = |text_key, a, b, of| meter_check(text_key, Open, Ohms, load(a), load(b), Pulled, of);
    let wire = |text_key, t| meter_check(text_key, Wire, Ohms, board(t), load(t), Bled, C::Harness);
    let driven =
        |text_key, a, b, of| meter_check(text_key, Driven, VoltsAc, load(a), load(b), Live, of);
    let rail =
        |text_key, a, b, of| meter_check(text_key, Rail, VoltsDc, load(a), load(b), Live, of);
    vec![
        winding(
            "check-inlet-coil-ohms",
            P::ColdCoilOhms,
            T::Cold1,
            T::Cold2,
            C::InletCold,
        ),
        winding(
            "check-inlet-coil-ohms",
            P::HotCoilOhms,
            T::Hot1,
            T::Hot2,
            C::InletHot,
        ),
        winding(
            "check-lock-coil-ohms",
            P::LockCoilOhms,
            T::LockCoil1,
            T::LockCoil2,
            C::LidLock,
        ),
        winding(
            "check-motor-winding-ohms",
            P::MotorAOhms,
            T::MotorA,
            T::MotorCommon,
            C::Motor,
        ),
        winding(
            "check-motor-winding-ohms",
            P::MotorBOhms,
            T::MotorB,
            T::MotorCommon,
            C::Motor,
        ),
        winding(
            "check-pump-coil-ohms",
            P::PumpCoilOhms,
            T::Pump1,
            T::Pump2,
            C::DrainPump,
        ),
        winding(
            "check-clutch-actuator-coil-ohms",
            P::ClutchCoilOhms,
            T::Clutch1,
            T::Clutch2,
            C::ClutchActuator,
        ),
        meter_check(
            "check-capacitor-microfarads",
            Capacitor,
            Microfarads,
            load(T::Cap1),
            load(T::Cap2),
            Pulled,
            C::RunCapacitor,
        ),
        open(
            "check-lock-contact-ohms",
            T::LockLineIn,
            T::LockLineOut,
            C::LidLock,
        ),
        meter_check(
            "check-thermistor-ohms",
            Thermistor,
            Ohms,
            load(T::Therm1),
            load(T::Therm2),
            Pulled,
            C::Thermistor,
        ),
        wire("check-cam-wires", T::Cam1),
        wire("check-motor-common", T::MotorCommon),
        wire("check-motor-wires", T::MotorA),
        wire("check-pickup-wires", T::PickupOut),
        wire("check-pressure-wires", T::PressureOut),
        wire("check-thermistor-wires", T::Therm1),
        meter_check(
            "check-cord-ohms",
            Kind::Fuse,
            Ohms,
            Pin::FuseIn,
            Pin::FuseOut,
            Bled,
            C::LineFuse,
        ),
        meter_check(
            "check-supply-volts",
            Kind::Mains,
            VoltsAc,
            load(T::CordLine),
            load(T::CordNeutral),
            Live,
            C::Supply,
        ),
        driven("check-inlet-volts", T::Cold1, T::Cold2, C::InletCold),
        driven("check-lock-volts", T::LockCoil1, T::LockCoil2, C::LidLock),
        driven("check-motor-volts", T::MotorA, T::MotorCommon, C::Motor),
        driven("check-pump-volts", T::Pump1, T::Pump2, C::DrainPump),
        driven(
            "check-clutch-actuator-volts",
            T::Clutch1,
            T::Clutch2,
            C::ClutchActuator,
        ),
        rail(
            "check-pickup-supply",
            T::PickupSupply,
            T::PickupGround,
            C::Pickup,
        ),
        rail(
            "check-pressure-supply",
            T::PressureSupply,
            T::PressureGround,
            C::PressureSensor,
        ),
        meter_check(
            "check-bulk-volts",
            Kind::Bulk,
            VoltsDc,
            Pin::BulkPlus,
            Pin::BulkMinus,
            Live,
            C::Board,
        ),
        meter_check(
            "check-pressure-output",
            Level,
            VoltsDc,
            load(T::PressureOut),
            load(T::PressureGround),
            Live,
            C::PressureSensor,
        ),
        meter_check(
            "check-thermistor-rail",
            Input,
            VoltsDc,
            board(T::Therm1),
            board(T::Therm2),
            Live,
            C::Board,
        ),
        meter_check(
            "check-pump-amps",
            Current,
            AmpsClamp,
            load(T::Pump1),
            load(T::Pump1),
            Live,
            C::DrainPump,
        ),
        meter_check(
            "check-pickup-output",
            Pulses,
            Hertz,
            load(T::PickupOut),
            load(T::PickupGround),
            Live,
            C::Pickup,
        ),
    ]
}
