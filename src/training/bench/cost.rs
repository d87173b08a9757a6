//! How long each action takes, and what work costs. Common practice, no source: the figures are a
//! practised person's, rounded.

use super::action::Action;
use detent_simulation::interface::Component;
use detent_simulation::names;
use detent_simulation::units::Span;

names! {
    /// What work by hand uses up. Its text is `consumable-{name}`, its price stands among the shop's.
    Consumable {
        /// For the lime on a screen.
        Descaler = "descaler",
        /// Between a hose and what it is screwed to: one that was squeezed once seals no second time.
        HoseWasher = "hose-washer",
        /// Under the cover of a pump.
        CoverSeal = "cover-seal",
        /// On the end of a hose.
        HoseClamp = "hose-clamp",
        /// Holds a hose where it belongs.
        CableTie = "cable-tie",
        /// For pins and sockets.
        ContactCleaner = "contact-cleaner",
    }
}

/// Time that an action takes; the machine runs on meanwhile.
pub fn span(action: &Action) -> Span {
    let seconds = match action {
        Action::Detent(_) | Action::Down(_) | Action::Up(_) => 0,
        Action::OpenLid | Action::CloseLid | Action::LiftProbes => 1,
        Action::NoteCode(_) | Action::StrikeCode(_) => 1,
        Action::HoldDisplay | Action::ReleaseDisplay => 1,
        Action::Plug | Action::Unplug | Action::ResetOutlet => 4,
        Action::OpenCabinet => 90,
        Action::CloseCabinet => 60,
        Action::Discharge => 30,
        Action::BailOut => 300,
        Action::BucketTest(_) => 180,
        Action::Pull(_) | Action::Seat(_) => 10,
        Action::Probe { .. } => 8,
        Action::TestMeter => 20,
        Action::ReplaceMeterFuse => 240,
        Action::Inspect(_) | Action::ReplaceLeads => 60,
        Action::UnloadBasket | Action::LoadBasket => 60,
        Action::ShutTaps | Action::Ask(_) => 20,
        Action::Quote(_) | Action::CheckForLeaks => 60,
        Action::PutRight(component) => return hand_work(*component),
        Action::Order(_) | Action::Return(_) => 120,
        Action::Fit(_) | Action::TakeHint(_) => 0,
        Action::Report(_) => REPORT_S,
    };
    Span::from_s(seconds)
}

/// Time to put a component right by hand. Taps, hoses and laundry are at hand; a screen is behind its hose, an
/// impeller behind its cover; every connector of the harness is pulled, looked into and seated again.
fn hand_work(component: Component) -> Span {
    let minutes = match component {
        Component::Floor | Component::DrainPump | Component::Harness => 10,
        Component::InletCold | Component::InletHot => 8,
        Component::PressureHose | Component::Pickup => 6,
        _ => 4,
    };
    Span::from_s(minutes * 60)
}

/// What putting a component right by hand uses up, whether or not that was what it wanted. Common practice, no source.
pub const fn consumables(component: Component) -> &'static [Consumable] {
    match component {
        Component::InletCold | Component::InletHot => {
            &[Consumable::Descaler, Consumable::HoseWasher]
        }
        Component::InletHoses => &[Consumable::HoseWasher],
        Component::DrainPump => &[Consumable::CoverSeal],
        Component::DrainHose => &[Consumable::CableTie],
        Component::PressureHose => &[Consumable::HoseClamp],
        Component::Harness => &[Consumable::ContactCleaner],
        Component::Supply
        | Component::Cord
        | Component::LineFuse
        | Component::Filter
        | Component::Board
        | Component::Dial
        | Component::LidLock
        | Component::Motor
        | Component::RunCapacitor
        | Component::ClutchActuator
        | Component::Pickup
        | Component::PressureSensor
        | Component::Thermistor
        | Component::Belt
        | Component::Tub
        | Component::Laundry
        | Component::Taps
        | Component::Floor => &[],
    }
}

/// Time to take a component out and put a new one in.
pub(super) fn fitting(component: Component) -> Span {
    let minutes = match component {
        Component::Motor => 35,
        Component::Board | Component::ClutchActuator | Component::Harness => 25,
        Component::DrainPump | Component::LidLock | Component::Tub => 20,
        Component::LineFuse
        | Component::RunCapacitor
        | Component::Pickup
        | Component::PressureHose => 8,
        _ => 12,
    };
    Span::from_s(minutes * 60)
}

/// The longest that a job's machine time may grow, the customer's last wash included; waits for parts
/// are counted apart. Two days and nights: our own choice, many times what any job takes.
pub const LONGEST_JOB: Span = Span::from_s(48 * 3600);

/// Time to write the report, s.
pub const REPORT_S: u64 = 180;
/// Price of a new meter fuse, whole units of money.
pub const METER_FUSE_PRICE: f64 = 9.0;
