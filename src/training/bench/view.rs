//! What the person at the bench knows and holds, for screens and scripts.

use super::action::{Grip, MeterMode};
use super::display::Display;
use super::log::BenchLog;
use super::meter;
use detent_simulation::interface::{Button, Component, Connector, Pin};
use detent_simulation::machine::MachineView;
use detent_simulation::names;
use detent_simulation::units::Time;

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

/// Something that happened and matters for the score.
#[derive(Clone, Debug, PartialEq)]
pub struct Event {
    /// When it happened.
    pub at: Time,
    /// What happened.
    pub what: Incident,
}

names! {
    /// What can happen to a person at the bench.
    Incident {
        /// Cabinet opened with the plug in.
        CabinetOpenedLive = "cabinet-opened-live",
        /// Hands inside before the stored charge was gone.
        TouchedCharge = "touched-charge",
        /// Ohms measured on a live or charged circuit; the meter's fuse blew.
        OhmsOnLive = "ohms-on-live",
        /// Fingers on the probes of the insulation tester: its 500 V went through the body, at a current that hurts and
        /// does no more.
        TesterShock = "tester-shock",
        /// A connector or part touched with the plug in: electric shock.
        Shock = "shock",
        /// Live meter work in a job that does not allow it.
        LiveTestNotAllowed = "live-test-not-allowed",
        /// A water part opened with water in the tub: a flood.
        Flood = "flood",
        /// A part was fitted that does not cure the fault.
        WrongPart = "wrong-part",
        /// A part was replaced that only had to be cleaned, adjusted, reseated or repaired with a kit.
        OverRepaired = "over-repaired",
        /// An inlet valve or its hose was opened with the tap open: water under pressure on the floor.
        OpenedUnderPressure = "opened-under-pressure",
        /// The control board was replaced although it was sound.
        GoodBoardReplaced = "good-board-replaced",
        /// The lid was opened while the basket still turned.
        LidOpenedSpinning = "lid-opened-spinning",
        /// The bulk capacitor was discharged with the plug in: the resistor burnt.
        DischargedLive = "discharged-live",
        /// A hand in the basket or the drive while it turned.
        HandInDrive = "hand-in-drive",
        /// Hands in water that burns.
        Scald = "scald",
    }
}

/// A part on order or in the hand.
#[derive(Clone, Debug, PartialEq)]
pub struct PartInHand {
    /// Part number.
    pub number: String,
    /// Already fitted.
    pub fitted: bool,
    /// The fault that it brings with it, by its place in the catalogue. Not for the trainee's eyes.
    pub bad: Option<usize>,
}

/// The whole bench, as the person sees it. It borrows from the bench and costs next to nothing to ask for.
/// What the meter shows has to be worked out, so it is asked for apart ([`super::Bench::meter_shows`]).
#[derive(Clone, Copy, Debug)]
pub struct BenchView<'a> {
    /// The machine.
    pub machine: MachineView<'a>,
    /// Cabinet panels are off.
    pub cabinet_open: bool,
    /// The technician shut both taps off.
    pub taps_shut: bool,
    /// The laundry is out of the basket.
    pub basket_empty: bool,
    /// There is laundry in the basket to be seen.
    pub laundry_inside: bool,
    /// The outlet's residual current device has tripped.
    pub outlet_tripped: bool,
    /// Connectors that are pulled.
    pub pulled: &'a [Connector],
    /// Meter setting and probe places, when probes are on.
    pub probes: Option<(MeterMode, Pin, Pin)>,
    /// Setting at which the display is held.
    pub held: Option<MeterMode>,
    /// Everything that happened so far.
    pub log: &'a BenchLog,
    /// Parts bought.
    pub parts: &'a [PartInHand],
    /// Money spent on parts, in whole units.
    pub spent: f64,
    /// What the work so far costs, in whole units.
    pub labour: f64,
    /// What the work so far used up, in whole units.
    pub consumables: f64,
    /// What the job comes to so far, in whole units: parts, work and what the work used up.
    pub bill: f64,
    /// Work time, minutes, without waits for parts.
    pub minutes: f64,
    /// Time waited for parts, h.
    pub waited_hours: f64,
    /// The report was handed in.
    pub finished: bool,
}

names! {
    /// The usual caution before an action. Its text is `caution-{name}`. The window shows it and asks; the
    /// action itself stays possible.
    Caution {
        /// Panels off with the plug in.
        OpenLive = "open-live",
        /// The plug in with the panels off.
        PlugOpen = "plug-open",
        /// Hands where mains is, with the plug in.
        TouchLive = "touch-live",
        /// Hands where the bulk capacitor's charge is.
        StoredCharge = "stored-charge",
        /// The basket still turns.
        Moving = "moving",
        /// The inlet hoses are under pressure, and one is hot.
        HotWater = "hot-water",
        /// The machine is heavy.
        Heavy = "heavy",
        /// The meter's own current into a live circuit.
        OhmsLive = "ohms-live",
        /// A meter on the live machine.
        LiveTest = "live-test",
        /// Water above the part that is opened.
        Flood = "flood",
        /// Hands into water that burns.
        Scald = "scald",
        /// A resistor across a capacitor that the mains keeps charged.
        DischargeLive = "discharge-live",
        /// Hands inside before anyone measured that the charge is gone.
        NotProvedDead = "not-proved-dead",
        /// The insulation tester's 500 V on wires that the control is still connected to.
        InsulationOnControl = "insulation-on-control",
        /// Fingers on the insulation tester's probes.
        InsulationInHand = "insulation-in-hand",
    }
}

names! {
    /// Signal words by how bad it gets (ANSI Z535.4, from secondary sources): death or serious injury will, or
    /// could; minor or moderate injury could. Its text is `signal-{name}`.
    SignalWord { Danger = "danger", Warning = "warning", Caution = "caution" }
}

impl Caution {
    /// The signal word above it.
    pub fn signal_word(self) -> SignalWord {
        match self {
            Caution::OpenLive | Caution::PlugOpen | Caution::TouchLive | Caution::DischargeLive => {
                SignalWord::Danger
            }
            Caution::StoredCharge
            | Caution::Moving
            | Caution::HotWater
            | Caution::Heavy
            | Caution::OhmsLive
            | Caution::LiveTest
            | Caution::Scald
            | Caution::NotProvedDead => SignalWord::Warning,
            Caution::Flood | Caution::InsulationOnControl | Caution::InsulationInHand => {
                SignalWord::Caution
            }
        }
    }
}

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
    /// Nothing was looked at under this number.
    #[error("no look has the number {0}: cite looks by the numbers that they are listed with")]
    NoLook(usize),
    /// There is no reading to hold.
    #[error("the meter shows nothing to hold: put the probes on first")]
    NothingToHold,
    /// The plug's blades are in the outlet.
    #[error("pull the plug first: its blades are in the outlet")]
    PlugInOutlet,
    /// There is no such code in the notebook that was not struck out.
    #[error("code {0:02} is not in the notebook")]
    NotNoted(u8),
    /// The job is done without hints.
    #[error("this job gives no hints")]
    NoHints,
    /// Already so: plugged, open, pulled…
    #[error("it is so already: there is nothing to do")]
    AlreadySo,
}
