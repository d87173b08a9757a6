//! Whether the stored charge was proved gone before hands went in: measured on that very circuit, after any
//! discharging, with a meter that was checked before and after.

use super::action::{Action, MeterMode};
use super::display::Display;
use super::view::Reading;
use super::workplace::{Bench, TOUCH_V};
use detent_simulation::interface::Pin;
use detent_simulation::units::Time;

/// What the bench saw of the proof.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DeadProof {
    /// It is complete.
    Complete,
    /// Measured, with a meter that was not checked on a known source both before and after.
    MeterNotChecked,
    /// Discharged, and not measured since.
    DischargedUnmeasured,
    /// Neither measured nor discharged.
    Missing,
}

impl Bench {
    /// What was proved between two moments, the plug being out meanwhile.
    pub fn dead_proof(&self, from: Time, until: Time) -> DeadProof {
        let within = |at: Time| from <= at && at <= until;
        let discharges = self.history().iter();
        let discharged = discharges
            .filter(|(at, action)| within(*at) && **action == Action::Discharge)
            .map(|(at, _)| at)
            .next_back();
        let mut measured = (self.notebook().iter())
            .filter(|r| within(r.at) && discharged.is_none_or(|at| r.at > at) && shows_dead(r))
            .map(|r| r.at)
            .peekable();
        if measured.peek().is_none() {
            return match discharged {
                Some(_) => DeadProof::DischargedUnmeasured,
                None => DeadProof::Missing,
            };
        }
        if measured.any(|at| self.meter_checked_around(at, until)) {
            DeadProof::Complete
        } else {
            DeadProof::MeterNotChecked
        }
    }

    /// The meter showed what it should on the proving source, both before the circuit was tested and after, before
    /// hands went in. NFPA 70E (2021; renumbered 2024) 120.5(7) asks for it at any voltage (number from memory); 29 CFR
    /// 1910.333(b)(2)(iv)(B) above 600 V (text from a secondary source, paragraph from memory).
    fn meter_checked_around(&self, tested: Time, touched: Time) -> bool {
        let good = |from: Time, until: Time| {
            let tests = self.meter_tests().iter();
            tests
                .filter(|t| t.is_good())
                .any(|t| from < t.at && t.at <= until)
        };
        good(self.began(), tested) && good(tested, touched)
    }
}

/// A meter that works showed next to nothing across the bulk capacitor.
fn shows_dead(reading: &Reading) -> bool {
    let across = matches!(
        (reading.red, reading.black),
        (Pin::BulkPlus, Pin::BulkMinus) | (Pin::BulkMinus, Pin::BulkPlus)
    );
    across
        && !reading.live
        && reading.meter_sound
        && reading.mode == MeterMode::VoltsDc
        && matches!(reading.shown, Display::Value(volts) if volts.abs() < TOUCH_V)
}
