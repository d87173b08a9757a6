//! What is measured and found, and which failure modes it rules out.

use super::Bench;
use crate::bench::action::MeterMode;
use crate::bench::bucket_test::{BucketTest, SupplyStrength};
use crate::bench::display::Display;
use crate::bench::inspect::{Found, visible_findings};
use crate::bench::log::LogEntry;
use crate::bench::meter;
use crate::bench::view::Reading;
use detent_simulation::interface::{Component, Pin, WaterPipe};
use detent_simulation::plant::{FailureMode, Op, Param, Presence, Probed, Probes};
use detent_simulation::units::uniform;

impl Bench {
    pub(super) fn note_finding(&mut self, component: Component) {
        let plant = self.machine.plant();
        let findings = visible_findings(plant, plant.params(), component);
        let alike = |changes: &[_]| {
            visible_findings(plant, &plant.params_if(changes), component) == findings
        };
        let rules_out = self.modes.iter().map(|m| !could_be(m, alike)).collect();
        self.log.push(LogEntry::Found(Found {
            at: self.machine.now(),
            component,
            findings,
            rules_out,
        }));
    }

    pub(super) fn note_bucket(&mut self, pipe: WaterPipe) {
        let plant = self.machine.plant();
        let (flow_l_min, water_c) = plant.into_bucket(pipe);
        let strength = SupplyStrength::of(flow_l_min);
        let alike =
            |changes: &[_]| SupplyStrength::of(plant.into_bucket_if(pipe, changes).0) == strength;
        let rules_out = self.modes.iter().map(|m| !could_be(m, alike)).collect();
        self.log.push(LogEntry::BucketTested(BucketTest {
            at: self.machine.now(),
            pipe,
            flow_l_min,
            water_c: (strength != SupplyStrength::Nothing).then_some(water_c),
            rules_out,
        }));
    }

    pub(super) fn note_reading(&mut self, mode: MeterMode, red: Pin, black: Pin) {
        let plant = self.machine.plant();
        let grip = self.grip;
        let mut probes = Probes::on(red, black);
        let mut would_show = |at: &Probed| meter::ideal(at, mode, &mut probes, grip);
        let ideal = would_show(&plant.probed());
        let mut alike =
            |changes: &[_]| !meter::differ(mode, ideal, would_show(&plant.probed_if(changes)));
        // A meter that shows something of its own tells nothing about the machine.
        let meter_sound = self.meter.is_sound(mode);
        let rules_out = self.modes.iter();
        let rules_out = rules_out
            .map(|m| meter_sound && !could_be(m, &mut alike))
            .collect();
        let live = plant.plugged();
        self.meter_error = 2.0 * uniform(&mut self.rng) - 1.0;
        let shown = self.reads(mode, ideal);
        let at = self.machine.now();
        self.log.push(LogEntry::Reading(Reading {
            at,
            mode,
            red,
            black,
            grip,
            shown,
            meter_sound,
            live,
            rules_out,
        }));
    }

    /// What the meter shows now, if it shows anything. Nothing changes by asking but what was worked out before.
    pub fn meter_shows(&mut self) -> Option<Display> {
        if let Some((_, display)) = self.meter.held {
            return Some(display);
        }
        let on = self.probes?;
        let ideal = self.follower.shows(self.machine.plant(), on, self.grip);
        Some(self.reads(on.0, ideal))
    }

    /// What stands on the display, and is written down, where a sound meter with no error would show `ideal`.
    fn reads(&self, mode: MeterMode, ideal: Display) -> Display {
        let noisy = meter::noisy(ideal, mode, self.meter_error);
        self.meter.shows(mode, noisy)
    }
}

/// Whether the machine with this fault could be as it was seen. `alike` compares it with the
/// machine that has some changes; a fault that is not always there may have been away.
fn could_be(mode: &FailureMode, mut alike: impl FnMut(&[(Param, Op)]) -> bool) -> bool {
    alike(&mode.changes) || mode.presence != Presence::Steady && alike(&[])
}
