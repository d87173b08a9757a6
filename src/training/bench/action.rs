//! What a person can do to the machine, as data.

use super::appliance::Question;
use super::quote::Quote;
use super::report::Report;
use detent_simulation::interface::{Button, Component, Connector, Direction, Pin, WaterPipe};
use detent_simulation::names;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What the meter is set to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
pub enum MeterMode {
    /// Resistance, Ω.
    Ohms,
    /// Alternating voltage, V rms.
    VoltsAc,
    /// Direct voltage, V.
    VoltsDc,
    /// Alternating current by clamp around the wire of the red probe's pin, A rms.
    AmpsClamp,
    /// Frequency, Hz.
    Hertz,
    /// Resistance up to a few hundred ohms, with a beep where there is a way through, Ω.
    Continuity,
    /// Alternating voltage at a low input resistance, which no ghost survives, V rms.
    VoltsLowZ,
    /// Capacitance, µF.
    Microfarads,
    /// Insulation at 500 V direct, MΩ.
    Insulation,
}

impl MeterMode {
    /// Every setting, in the order above.
    pub fn all() -> impl Iterator<Item = MeterMode> {
        std::iter::successors(Some(MeterMode::Ohms), |mode| mode.next())
    }

    /// The setting after this one; matched, so that a new one must be seen here.
    const fn next(self) -> Option<MeterMode> {
        Some(match self {
            MeterMode::Ohms => MeterMode::VoltsAc,
            MeterMode::VoltsAc => MeterMode::VoltsDc,
            MeterMode::VoltsDc => MeterMode::AmpsClamp,
            MeterMode::AmpsClamp => MeterMode::Hertz,
            MeterMode::Hertz => MeterMode::Continuity,
            MeterMode::Continuity => MeterMode::VoltsLowZ,
            MeterMode::VoltsLowZ => MeterMode::Microfarads,
            MeterMode::Microfarads => MeterMode::Insulation,
            MeterMode::Insulation => return None,
        })
    }

    /// The unit in which readings of it are given.
    pub const fn unit(self) -> &'static str {
        match self {
            MeterMode::Ohms | MeterMode::Continuity => "Ω",
            MeterMode::VoltsAc | MeterMode::VoltsLowZ | MeterMode::VoltsDc => "V",
            MeterMode::AmpsClamp => "A",
            MeterMode::Hertz => "Hz",
            MeterMode::Microfarads => "µF",
            MeterMode::Insulation => "MΩ",
        }
    }

    /// The meter sends a current of its own, through its fuse: the circuit must be dead.
    pub fn sends_current(self) -> bool {
        matches!(
            self,
            MeterMode::Ohms
                | MeterMode::Continuity
                | MeterMode::Microfarads
                | MeterMode::Insulation
        )
    }
}

/// How the probes are kept on their pins.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
pub enum Grip {
    /// By insulated clips or handles: no skin touches metal.
    #[default]
    Clips,
    /// By the fingers of both hands on the metal: the body lies across the pins.
    Fingers,
}

names! {
    // Its text is `hint-rung-{name}`.
    /// How far a hint goes, from least to most.
    #[derive(JsonSchema)]
    HintRung {
        /// The part of the machine or of the work.
        WhereToLook = "where-to-look",
        /// The question that is open there.
        WhatToAsk = "what-to-ask",
        /// The next step and its reason.
        WhatToDo = "what-to-do",
    }
}

/// One thing done at one moment. An attempt is a list of these with their times.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub enum Action {
    /// Put the plug in the outlet.
    Plug,
    /// Pull the plug.
    Unplug,
    /// Lift the lid.
    OpenLid,
    /// Put the lid down.
    CloseLid,
    /// Turn the dial by one detent.
    Detent(Direction),
    /// Push a button down.
    Down(Button),
    /// Let a button go.
    Up(Button),
    /// Take the cabinet panels off.
    OpenCabinet,
    /// Put the cabinet panels back.
    CloseCabinet,
    /// Discharge the bulk capacitor through a resistor. That it is discharged is for the meter to say.
    Discharge,
    /// Bail the tub out by hand.
    BailOut,
    /// Pull a connector.
    Pull(Connector),
    /// Push a connector back on.
    Seat(Connector),
    /// Put the probes on two pins and leave them there; the reading settles and is noted.
    Probe {
        /// Meter setting.
        mode: MeterMode,
        /// Pin under the red probe (for the clamp: the wire clamped).
        red: Pin,
        /// Pin under the black probe (ignored by the clamp).
        black: Pin,
        /// How they are kept there.
        #[serde(default)]
        grip: Grip,
    },
    /// Take the probes off.
    LiftProbes,
    /// Hold the display at what it shows.
    HoldDisplay,
    /// Let the display follow the probes again.
    ReleaseDisplay,
    /// Try the meter on the proving source: does it show what is known to be there?
    TestMeter,
    /// Put a new fuse in the meter.
    ReplaceMeterFuse,
    /// Look at a component, feel it, turn it by hand; what is found is noted.
    Inspect(Component),
    /// Put right what needs no part: open a tap, clear or lay a hose, level the feet, sort the load, clean a screen
    /// or an impeller, bend a bracket back, reseat the connectors.
    PutRight(Component),
    /// Put the spare leads on the meter.
    ReplaceLeads,
    /// Buy a part at the counter, by its number.
    Order(String),
    /// Take an ordered part that was not fitted back to the counter, for a fee, by its number.
    Return(String),
    /// Fit an ordered part, by its number.
    Fit(String),
    /// Write down the two-digit code that the lamps show, as the trainee reads it.
    NoteCode(u8),
    /// Write the report and hand the machine back.
    Report(Report),
    /// Shut both taps off. To put the taps right opens them again.
    ShutTaps,
    /// Strike out a code that was written down, the last of that number.
    StrikeCode(u8),
    /// Take a hint. It costs points and no time.
    TakeHint(HintRung),
    /// Tell the customer what parts and labor will come to. The customer agrees if that is within the limit.
    Quote(Quote),
    /// Look under the machine and at its hoses with a lamp and a dry cloth: does anything leak? The floor is dry then.
    CheckForLeaks,
    /// Push the button of the outlet's residual current device back in.
    ResetOutlet,
    /// Ask the customer something.
    Ask(Question),
    /// Take the laundry out of the basket.
    UnloadBasket,
    /// Put the laundry back in as it was.
    LoadBasket,
    /// Unscrew the fill hose of a tap from the machine, open the tap into a bucket, see how fast the bucket fills, and
    /// screw the hose back on. Both taps are shut off before, and stay so after.
    BucketTest(WaterPipe),
}

impl Action {
    /// Something that an entry gesture can be made of.
    pub fn is_gesture(&self) -> bool {
        matches!(
            self,
            Action::Detent(_)
                | Action::Down(_)
                | Action::Up(_)
                | Action::OpenLid
                | Action::CloseLid
                | Action::Plug
        )
    }
}
