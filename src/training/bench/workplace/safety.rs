//! What can hurt: the caution before an action, and what happens to whoever does it all the same.

use super::Bench;
use super::commands::{in_basket, needs_cabinet};
use crate::bench::action::{Action, Grip, MeterMode};
use crate::bench::cost;
use crate::bench::log::LogEntry;
use crate::bench::meter;
use crate::bench::proof::DeadProof;
use crate::bench::view::{Caution, Event, Incident};
use detent_simulation::interface::{Component, Connector, Pin, Side, Terminal};
use detent_simulation::plant::Probes;

/// Stored charge from this on can hurt, and a circuit that shows less is dead, V. 29 CFR 1910.303(g)(2)(i) guards
/// live parts from 50 V on, alternating or direct (OSHA's letter of interpretation of September 4, 2015). For
/// ripple-free direct voltage IEC 61140 allows more, 120 V (from memory).
pub const TOUCH_V: f64 = 50.0;
/// The plug's blades may carry this much one second after unplugging, V (IEC 60335-1, 22.5, from a secondary
/// source).
const BLADES_V: f64 = 34.0;
/// Water above this runs out when a part below the tub is opened, mm.
const FLOOD_MM: f64 = 20.0;
/// A basket faster than this can hurt, rev/min.
const TURNING_RPM: f64 = 30.0;

impl Bench {
    /// The usual caution before an action, where there is one.
    pub fn caution(&self, action: &Action) -> Option<Caution> {
        let plant = self.machine.plant();
        let charged = plant.supply().bulk_v > TOUCH_V;
        match action {
            Action::OpenCabinet if plant.plugged() => Some(Caution::OpenLive),
            Action::Plug if self.cabinet_open => Some(Caution::PlugOpen),
            Action::OpenCabinet if charged => Some(Caution::StoredCharge),
            Action::Discharge if plant.plugged() => Some(Caution::DischargeLive),
            action if plant.plugged() && touches_mains(action) => Some(Caution::TouchLive),
            action if charged && touches_charge(action) => Some(Caution::StoredCharge),
            action if self.turns() && reaches_drive(action) => Some(Caution::Moving),
            action if self.would_scald(action) => Some(Caution::Scald),
            action if self.would_flood(action) => Some(Caution::Flood),
            action if self.under_pressure(action) => Some(Caution::HotWater),
            Action::PutRight(Component::Floor) => Some(Caution::Heavy),
            Action::Probe { mode, red, .. }
                if mode.sends_current() && plant.plugged() && needs_cabinet(*red) =>
            {
                Some(Caution::OhmsLive)
            }
            Action::Probe { .. } if plant.plugged() => Some(Caution::LiveTest),
            action if self.tester_in_hand(action) => Some(Caution::InsulationInHand),
            Action::Probe {
                mode: MeterMode::Insulation,
                red,
                black,
                ..
            } if self.reaches_control(*red) || self.reaches_control(*black) => {
                Some(Caution::InsulationOnControl)
            }
            Action::OpenLid if self.turns() => Some(Caution::Moving),
            action if hands_inside(action) && self.dead_proof_now() != DeadProof::Complete => {
                Some(Caution::NotProvedDead)
            }
            _ => None,
        }
    }

    pub(super) fn judge_safety(&mut self, action: &Action) {
        let plant = self.machine.plant();
        let plugged = plant.plugged();
        let charged = plant.supply().bulk_v > TOUCH_V;
        let turning = plant.drive().pulley_rpm() > TURNING_RPM && plant.basket_coupled();
        let incident = match action {
            Action::OpenCabinet if plugged => Some(Incident::CabinetOpenedLive),
            Action::OpenLid if turning => Some(Incident::LidOpenedSpinning),
            Action::Discharge if plugged => Some(Incident::DischargedLive),
            action if plugged && touches_mains(action) => Some(Incident::Shock),
            action if charged && touches_charge(action) => Some(Incident::TouchedCharge),
            action if self.turns() && reaches_drive(action) => Some(Incident::HandInDrive),
            action if self.would_scald(action) => Some(Incident::Scald),
            action if !plugged && self.tester_in_hand(action) => Some(Incident::TesterShock),
            Action::Probe {
                mode, red, black, ..
            } if mode.sends_current() => {
                let at = plant.probed();
                let mut probes = Probes::on(*red, *black);
                // A ghost on an open wire has no strength to blow anything.
                let volts = if plugged {
                    probes.volts_ac(&at, meter::LOW_INPUT_OHMS)
                } else {
                    0.0
                };
                let left = probes.volts_dc(&at, meter::INPUT_OHMS).abs();
                let blades = matches!(red, Pin::PlugLine | Pin::PlugNeutral);
                // Five volts behind kilohms do not blow a fuse; they only spoil the reading.
                let strong = volts > meter::OHMS_FUSE_V
                    || left > if blades { BLADES_V } else { meter::OHMS_FUSE_V };
                (strong && !self.meter.fuse_blown).then_some(Incident::OhmsOnLive)
            }
            Action::Probe { .. } if plugged && !self.live_tests_allowed => {
                Some(Incident::LiveTestNotAllowed)
            }
            _ => None,
        };
        if let Some(what) = incident {
            self.happen(what);
        }
        if self.would_flood(action) {
            self.happen(Incident::Flood);
        }
        if self.under_pressure(action) {
            self.happen(Incident::OpenedUnderPressure);
        }
    }

    /// Whether fingers hold the insulation tester's probes while it works. An insulation tester gives no more than
    /// 15 mA (IEC 61557-2, from memory).
    fn tester_in_hand(&self, action: &Action) -> bool {
        let in_hand = matches!(
            action,
            Action::Probe {
                mode: MeterMode::Insulation,
                grip: Grip::Fingers,
                ..
            }
        );
        in_hand && self.meter.is_sound(MeterMode::Insulation)
    }

    /// What is taken off, opened or tilted.
    fn opened_by(&self, action: &Action) -> Option<Component> {
        match action {
            Action::Fit(number) => self.part(number).map(|part| part.component),
            Action::PutRight(component) => Some(*component),
            _ => None,
        }
    }

    /// Whether the tub's water would run out: below it something is opened, or the machine is tilted.
    fn would_flood(&self, action: &Action) -> bool {
        let holds_water = [
            Component::DrainPump,
            Component::DrainHose,
            Component::Tub,
            Component::PressureHose,
            Component::Floor,
        ];
        self.machine.plant().water().level_mm() > FLOOD_MM
            && (self.opened_by(action)).is_some_and(|c| holds_water.contains(&c))
    }

    /// Whether water under pressure would spray out: a hose comes off, and its tap is open.
    fn under_pressure(&self, action: &Action) -> bool {
        let plant = self.machine.plant();
        if let Action::BucketTest(pipe) = action {
            return !plant.taps_shut() && plant.tap_kpa(*pipe) > 0.0;
        }
        let [cold_kpa, hot_kpa] = plant.inlet_kpa();
        let behind_kpa = match self.opened_by(action) {
            Some(Component::InletCold) => cold_kpa,
            Some(Component::InletHot) => hot_kpa,
            Some(Component::InletHoses) => cold_kpa.max(hot_kpa),
            _ => 0.0,
        };
        behind_kpa > 0.0
    }

    /// Whether the control is still connected to what a probe touches. The plug's blades reach it too, but both
    /// conductors together; that is how a whole machine is tested (common practice, no source).
    fn reaches_control(&self, pin: Pin) -> bool {
        let pulled_at_board = |terminal| {
            let mut pulled = self.view().pulled.iter();
            pulled.any(|connector| match connector {
                Connector::Board(label) => (self.machine.connector_pins(label))
                    .is_some_and(|pins| pins.contains(&terminal)),
                Connector::Load(_) => false,
            })
        };
        let at_load = |terminal: Terminal| {
            let plug = Connector::Load(terminal.component());
            !pulled_at_board(terminal) && !self.view().pulled.contains(&plug)
        };
        match pin {
            Pin::PlugLine | Pin::PlugNeutral | Pin::PlugEarth => false,
            Pin::BulkPlus | Pin::BulkMinus | Pin::Wire(_, Side::Board) => true,
            Pin::Wire(terminal, Side::Harness) => !pulled_at_board(terminal),
            Pin::Wire(terminal, Side::Load) => at_load(terminal),
            // The filter stands between them and the cord's connector.
            Pin::FuseIn | Pin::FuseOut => at_load(Terminal::CordLine),
        }
    }

    /// How far the stored charge was proved gone since the plug came out.
    pub(crate) fn dead_proof_now(&self) -> DeadProof {
        let unplugged = (self.history().iter()).rfind(|(_, action)| **action == Action::Unplug);
        unplugged.map_or(DeadProof::Missing, |(at, _)| {
            self.dead_proof(at, self.now())
        })
    }

    /// Whether hands are in the tub's water for longer than skin bears it.
    fn would_scald(&self, action: &Action) -> bool {
        let into_water = match action {
            Action::BailOut | Action::UnloadBasket => true,
            Action::Inspect(component) | Action::PutRight(component) => in_basket(*component),
            _ => false,
        };
        let water = self.machine.plant().water();
        into_water
            && water.level_mm() > FLOOD_MM
            && cost::span(action).seconds() >= burns_after_s(water.water_c)
    }

    pub(super) fn happen(&mut self, what: Incident) {
        self.meter.fuse_blown |= what == Incident::OhmsOnLive;
        let at = self.machine.now();
        self.log.push(LogEntry::Event(Event { at, what }));
    }

    fn turns(&self) -> bool {
        self.machine.plant().drive().pulley_rpm() > TURNING_RPM
    }
}

/// Time in water of this temperature after which skin is burnt, s: 30 s at 130 °F and 300 s at 120 °F (U.S. Consumer
/// Product Safety Commission, times from a secondary source, publication 5098 from memory), on a logarithmic scale
/// between and beyond, which is our own.
fn burns_after_s(water_c: f64) -> f64 {
    let (hot_c, warm_c) = ((130.0 - 32.0) / 1.8, (120.0 - 32.0) / 1.8);
    30.0 * libm::pow(10.0, (hot_c - water_c) / (hot_c - warm_c))
}

/// True where a hand goes into the basket, or to the drive behind the panels.
fn reaches_drive(action: &Action) -> bool {
    match action {
        Action::Fit(_) | Action::UnloadBasket | Action::LoadBasket => true,
        Action::Inspect(component) | Action::PutRight(component) => {
            in_basket(*component) || component.is_inside()
        }
        _ => false,
    }
}

/// True where bare hands are on the machine's inside, or on a probe whose pin `reaches` what is meant.
fn hands_on(action: &Action, reaches: impl Fn(Pin) -> bool) -> bool {
    match action {
        Action::Pull(_) | Action::Seat(_) | Action::Fit(_) => true,
        Action::Inspect(component) | Action::PutRight(component) => component.is_inside(),
        Action::Probe {
            grip: Grip::Fingers,
            red,
            black,
            ..
        } => reaches(*red) || reaches(*black),
        _ => false,
    }
}

/// True where hands go behind the panels.
pub fn hands_inside(action: &Action) -> bool {
    hands_on(action, needs_cabinet)
}

/// True where a hand is on metal that carries mains while the plug is in.
fn touches_mains(action: &Action) -> bool {
    hands_on(action, bites)
}

/// True where a hand is on metal that can hold the bulk capacitor's charge; no connector that is pushed on is.
fn touches_charge(action: &Action) -> bool {
    !matches!(action, Action::Seat(_)) && hands_on(action, is_bulk)
}

/// True where mains voltage, or the charge that it leaves, can be under the probe.
fn bites(pin: Pin) -> bool {
    !matches!(pin, Pin::PlugEarth) && !matches!(pin, Pin::Wire(t, _) if !t.is_mains())
}

/// True for the bulk capacitor's test points.
fn is_bulk(pin: Pin) -> bool {
    matches!(pin, Pin::BulkPlus | Pin::BulkMinus)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// U.S. Consumer Product Safety Commission, publication 5098 (number from memory, times from a secondary source):
    /// third-degree burns after 5 min at 120 °F, 30 s at 130 °F, 6 s at 140 °F, 2 s at 150 °F. Beyond 130 °F ours is
    /// on the safe side.
    #[test]
    fn water_burns_as_soon_as_published() {
        let after_s = |fahrenheit: f64| burns_after_s((fahrenheit - 32.0) / 1.8);
        assert!((after_s(120.0) - 300.0).abs() < 1e-9);
        assert!((after_s(130.0) - 30.0).abs() < 1e-9);
        assert!(after_s(140.0) <= 6.0 && after_s(150.0) <= 2.0);
        // Water to bathe in.
        assert!(after_s(104.0) > 3600.0);
    }
}
