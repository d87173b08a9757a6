//! What can be heard of a machine.

use crate::names;

names! {
    /// A sound, most telling first.
    Sound {
        /// The motor carries current and stands.
        MotorHum = "motor-hum",
        /// The basket spins.
        SpinWhirr = "spin-whirr",
        /// The agitator works.
        AgitatorSwish = "agitator-swish",
        /// The motor turns and drives nothing.
        MotorFree = "motor-free",
        /// The drain pump turns.
        PumpHum = "pump-hum",
        /// The drain pump carries current and stands.
        PumpBuzz = "pump-buzz",
        /// Water comes in.
        WaterRush = "water-rush",
        /// The cold valve carries current and lets nothing through.
        ValveBuzz = "valve-buzz",
        /// The clutch actuator turns.
        ClutchActuatorTick = "clutch-actuator-tick",
        /// The bolt of the lid lock is held.
        LockHeld = "lock-held",
        /// The cabinet shakes.
        CabinetShake = "cabinet-shake",
        /// A relay of the control clicks as its supply comes up.
        RelayClick = "relay-click",
    }
}

/// The sounds of one moment, a bit each. Bit number is [`Sound::index`].
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Sounds(u16);

impl Sounds {
    /// Whether `sound` can be heard.
    pub const fn has(self, sound: Sound) -> bool {
        self.0 & (1 << sound.index()) != 0
    }

    /// Each that can be heard, most telling first.
    pub fn iter(self) -> impl Iterator<Item = Sound> {
        let all = Sound::ALL.iter().copied();
        all.filter(move |sound| self.has(*sound))
    }
}

impl FromIterator<Sound> for Sounds {
    fn from_iter<I: IntoIterator<Item = Sound>>(sounds: I) -> Sounds {
        let bits = sounds.into_iter().map(|sound| 1 << sound.index());
        Sounds(bits.fold(0, |all, bit| all | bit))
    }
}
