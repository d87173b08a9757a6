//! What the person at the bench knows and holds, for screens and scripts.

use super::action::{Grip, MeterMode};
use super::inspect::Found;
use super::meter;
use detent_simulation::machine::MachineView;
use detent_simulation::plant::{Button, Component, Connector, Pin};
use detent_simulation::units::Time;
use serde::{Deserialize, Serialize};

/// What a meter shows.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub enum Display {
    /// A value in the unit of the mode.
    Value(f64),
    /// Over range or open: the meter shows `OL`.
    OverRange,
    /// The meter's fuse has blown; it shows nothing until replaced.
    Dead,
}

/// One reading in the notebook.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// When it was taken.
    pub at: Time,
    /// Meter setting.
    pub mode: MeterMode,
    /// Pin under the red probe.
    pub red: Pin,
    /// Pin under the black probe.
    pub black: Pin,
    /// How the probes were kept there.
    pub grip: Grip,
    /// What it showed.
    pub shown: Display,
    /// The meter showed what was there. For the score, not for the trainee's eyes.
    pub meter_sound: bool,
    /// The plug was in the outlet at the time.
    pub live: bool,
    /// Failure modes, by their place in the catalogue, that would have shown something else.
    /// For the score, not for the trainee's eyes.
    pub rules_out: Vec<bool>,
}

impl Reading {
    /// Whether the meter beeped.
    pub fn beeped(&self) -> bool {
        meter::beeps(self.mode, self.shown)
    }
}

/// What the meter showed on the proving source.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MeterTest {
    /// When it was tried.
    pub at: Time,
    /// On the alternating voltage.
    pub volts_ac: Display,
    /// On the direct voltage.
    pub volts_dc: Display,
    /// On the resistance.
    pub ohms: Display,
}

/// Something that happened and matters for the score.
#[derive(Clone, Debug, PartialEq)]
pub struct Event {
    /// When it happened.
    pub at: Time,
    /// What happened.
    pub what: Happening,
}

/// What can happen to a person at the bench.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Happening {
    /// Cabinet opened with the plug in.
    CabinetOpenedLive,
    /// Hands inside before the stored charge was gone.
    TouchedCharge,
    /// Ohms measured on a live or charged circuit; the meter's fuse blew.
    OhmsOnLive,
    /// A connector or part touched with the plug in: electric shock.
    Shock,
    /// Live meter work in a job that does not allow it.
    LiveTestNotAllowed,
    /// A water part opened with water in the tub: a flood.
    Flood,
    /// A part was fitted that does not cure the fault.
    WrongPart,
    /// The control board was replaced although it was sound.
    GoodBoardReplaced,
    /// The lid was opened while the basket still turned.
    LidOpenedSpinning,
}

/// A part on order or in the hand.
#[derive(Clone, Debug, PartialEq)]
pub struct PartInHand {
    /// Part number.
    pub number: String,
    /// Already fitted.
    pub fitted: bool,
}

/// The whole bench, as the person sees it.
#[derive(Clone, Debug, Default)]
pub struct BenchView {
    /// The machine.
    pub machine: MachineView,
    /// Cabinet panels are off.
    pub cabinet_open: bool,
    /// Connectors that are pulled.
    pub pulled: Vec<Connector>,
    /// Meter setting and probe places, when probes are on.
    pub probes: Option<(MeterMode, Pin, Pin)>,
    /// What the meter shows now.
    pub meter: Option<Display>,
    /// Setting at which the display is held.
    pub held: Option<MeterMode>,
    /// Tries of the meter on the proving source.
    pub meter_tests: Vec<MeterTest>,
    /// Every reading noted so far.
    pub notebook: Vec<Reading>,
    /// What was found by looking, feeling and turning so far.
    pub found: Vec<Found>,
    /// Codes noted so far, as the trainee read them.
    pub noted_codes: Vec<(Time, u8)>,
    /// Parts bought.
    pub parts: Vec<PartInHand>,
    /// Money spent on parts, in whole units.
    pub spent: f64,
    /// What the work so far costs, in whole units.
    pub labour: f64,
    /// Work time, minutes, without waits for parts.
    pub minutes: f64,
    /// Time waited for parts, h.
    pub waited_hours: f64,
    /// Unsafe or mistaken things that happened so far.
    pub events: Vec<Event>,
    /// The report was handed in.
    pub finished: bool,
}

/// The usual caution before an action, as a text key, where there is one.
/// The app shows it and asks; the action itself stays possible.
pub type Caution = &'static str;

/// Why the bench refuses an action outright (it is not physically possible).
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum Refusal {
    /// The action needs the cabinet open.
    #[error("take the cabinet panels off first")]
    CabinetClosed,
    /// The action needs the lid up.
    #[error("lift the lid first")]
    LidClosed,
    /// It takes a part, or somebody else.
    #[error("hands alone cannot put the {0} right: it takes a part, or a licensed person")]
    NeedsPart(Component),
    /// The lock holds the lid.
    #[error("the lid is locked")]
    LidLocked,
    /// There is no such connector on this machine.
    #[error("this machine has no connector {0:?}")]
    NoConnector(Connector),
    /// The panel has no such button.
    #[error("this panel has no button {0:?}: `detent sheet` shows what it has")]
    NoButton(Button),
    /// The counter does not sell this.
    #[error("the parts counter has no part \"{0}\"")]
    NoPart(String),
    /// The part is made for another machine.
    #[error("part \"{0}\" does not fit this machine: read the service sheet's part list again")]
    DoesNotFit(String),
    /// The part was not ordered.
    #[error("part \"{0}\" is not in your hands: order it first")]
    NotInHand(String),
    /// The report was already handed in.
    #[error("the job is finished: the report was handed in")]
    Finished,
    /// The catalogue knows no such cause.
    #[error("the catalogue has no cause \"{0}\": `detent faults` lists them all")]
    NoCause(String),
    /// The notebook has no such reading.
    #[error(
        "the notebook has no reading {0}: cite readings by the numbers that they are listed with"
    )]
    NoReading(usize),
    /// There is no reading to hold.
    #[error("the meter shows nothing to hold: put the probes on first")]
    NothingToHold,
    /// The plug's blades are in the outlet.
    #[error("pull the plug first: its blades are in the outlet")]
    PlugInOutlet,
    /// Already so: plugged, open, pulled…
    #[error("it is so already: there is nothing to do")]
    AlreadySo,
}
