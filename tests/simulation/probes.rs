//! Probes that stay on their pins read what new probes would, bit for bit, whatever the machine did meanwhile.

use crate::stage::{MAINS, Stage, drive};
use detent_simulation::interface::{Component, Connector, Pin, Relay};
use detent_simulation::plant::{Probed, Probes};
use detent_simulation::units::Span;
use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::collections::BTreeSet;

/// Every kind of reading, as bits; none where nothing can be told.
fn readings(probes: &mut Probes, at: &Probed) -> [Option<u64>; 7] {
    [
        Some(probes.ohms(at)),
        Some(probes.volts_ac(at, 10e6)),
        Some(probes.volts_ac(at, 10e3)),
        Some(probes.volts_dc(at, 10e6)),
        probes.farads(at),
        probes.amps(at),
        Some(probes.hertz(at, 10e6)),
    ]
    .map(|value| value.map(f64::to_bits))
}

#[test]
fn probes_that_stay_read_what_new_ones_would() {
    let stage = Stage::new();
    let pins: Vec<Pin> = Pin::all().collect();
    let mut rng = ChaCha8Rng::seed_from_u64(29);
    let mut below = |n: usize| rng.next_u32() as usize % n;
    for mains in MAINS {
        let mut plant = stage.plant(mains);
        let modes = stage.library(mains).modes;
        let mut kept: Vec<Probes> = (0..24)
            .map(|_| Probes::on(pins[below(pins.len())], pins[below(pins.len())]))
            .collect();
        let mut seen = BTreeSet::new();
        for _ in 0..60 {
            match below(6) {
                0 => plant.set_plugged(below(3) > 0),
                1 => plant.inject_fault(&modes[below(modes.len())]),
                2 => plant.mend(|_| true),
                3 | 4 => {
                    let load = Component::ALL[below(Component::ALL.len())];
                    plant.set_connector(&Connector::Load(load), &[], below(2) == 0);
                }
                _ => plant.discharge(),
            }
            let driven: Vec<Relay> = Relay::ALL
                .iter()
                .copied()
                .filter(|_| below(3) == 0)
                .collect();
            drive(&mut plant, &driven, Span(1 + below(120) as u64));
            let as_if = &modes[below(modes.len())];
            for at in [plant.probed(), plant.probed_if(&as_if.changes)] {
                for probes in &mut kept {
                    let (red, black) = probes.pins();
                    let new = readings(&mut Probes::on(red, black), &at);
                    assert_eq!(readings(probes, &at), new, "{mains:?}: {red}, {black}");
                    seen.extend(new.into_iter().flatten());
                }
            }
            let moved = below(kept.len());
            kept[moved] = Probes::on(pins[below(pins.len())], pins[below(pins.len())]);
        }
        assert!(seen.len() > 1000, "{} different readings", seen.len());
    }
}
