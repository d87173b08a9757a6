//! The meter: ranges, resolution, noise, fuse. An invented instrument of the usual 6000-count class.

use super::action::{Grip, MeterMode};
use super::display::Display;
use detent_simulation::interface::Pin;
use detent_simulation::plant::{Plant, Probed, Probes};
use detent_simulation::units::Time;

/// Input resistance on the voltage ranges, Ω (common practice for digital multimeters, no source).
pub const INPUT_OHMS: f64 = 10e6;
/// Input resistance on the low-resistance voltage range, Ω (our instrument's own).
pub const LOW_INPUT_OHMS: f64 = 10e3;
/// Resistance from hand to hand of a person who holds both probes' tips, Ω. Common practice, no source:
/// dry fingers show some hundred kilohms to a megohm on an ohmmeter.
pub const BODY_OHMS: f64 = 470e3;
/// Below this the continuity range beeps, Ω.
pub const BEEP_OHMS: f64 = 30.0;
/// Counts of the display.
const COUNTS: f64 = 6000.0;
/// Resistance of the two leads, Ω.
const LEADS_OHMS: f64 = 0.2;
/// Highest resistance shown, Ω.
const OVER_OHMS: f64 = 40e6;
/// Highest resistance shown on the continuity range, Ω.
const OVER_CONTINUITY_OHMS: f64 = 600.0;
/// Highest capacitance shown, µF.
const OVER_MICROFARADS: f64 = 6000.0;
/// Highest insulation shown, MΩ.
const OVER_MEGOHMS: f64 = 600.0;
/// What the proving source holds ready: alternating and direct voltage, V, and a resistance, Ω. Ours.
const KNOWN_V: f64 = 50.0;
const KNOWN_OHMS: f64 = 100.0;
/// Voltage at which an ohmmeter's fuse blows, V.
pub const OHMS_FUSE_V: f64 = 10.0;

/// What a sound instrument would show with no noise.
pub fn ideal(at: &Probed, mode: MeterMode, probes: &mut Probes, grip: Grip) -> Display {
    let beside_body = |ohms: f64| match grip {
        Grip::Clips => ohms,
        Grip::Fingers => 1.0 / (1.0 / ohms + 1.0 / BODY_OHMS),
    };
    let input = beside_body(INPUT_OHMS);
    let (value, most) = match mode {
        MeterMode::Ohms => (beside_body(probes.ohms(at)) + LEADS_OHMS, OVER_OHMS),
        MeterMode::Continuity => (
            beside_body(probes.ohms(at)) + LEADS_OHMS,
            OVER_CONTINUITY_OHMS,
        ),
        MeterMode::Microfarads => (
            probes.farads(at).map_or(f64::INFINITY, |f| f * 1e6),
            OVER_MICROFARADS,
        ),
        MeterMode::Insulation => (beside_body(probes.insulation_ohms(at)) / 1e6, OVER_MEGOHMS),
        MeterMode::VoltsAc => (probes.volts_ac(at, input), f64::INFINITY),
        MeterMode::VoltsLowZ => (
            probes.volts_ac(at, beside_body(LOW_INPUT_OHMS)),
            f64::INFINITY,
        ),
        MeterMode::VoltsDc => (probes.volts_dc(at, input), f64::INFINITY),
        MeterMode::AmpsClamp => (probes.amps(at).unwrap_or(0.0), f64::INFINITY),
        MeterMode::Hertz => (probes.hertz(at, input), f64::INFINITY),
    };
    if value > most {
        return Display::OverRange;
    }
    Display::Value(rounded(mode, value))
}

/// Probes that stay on their pins while a meter's display follows what is there.
#[derive(Clone, Default)]
pub struct Follower {
    probes: Option<Probes>,
    /// What was read last, and of what.
    last: Option<(MeterMode, Grip, Probed, Display)>,
}

impl Follower {
    /// What a sound instrument shows with no noise, to the bit what [`ideal`] gives with new probes. Networks are
    /// laid out again only when a pin changes, and solved only when something in the machine did.
    pub fn shows(
        &mut self,
        plant: &Plant,
        (mode, red, black): (MeterMode, Pin, Pin),
        grip: Grip,
    ) -> Display {
        let at = plant.probed();
        let probes = match &mut self.probes {
            Some(probes) if probes.pins() == (red, black) => probes,
            moved => {
                self.last = None;
                moved.insert(Probes::on(red, black))
            }
        };
        if let Some((of, held, before, shown)) = &self.last
            && (*of, *held) == (mode, grip)
            && *before == at
        {
            return *shown;
        }
        let shown = ideal(&at, mode, probes, grip);
        self.last = Some((mode, grip, at, shown));
        shown
    }
}

/// Whether the meter beeps with this on its display.
pub fn beeps(mode: MeterMode, shown: Display) -> bool {
    mode == MeterMode::Continuity && matches!(shown, Display::Value(ohms) if ohms < BEEP_OHMS)
}

/// What is the matter with the instrument, and what its display is held at.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Meter {
    /// The fuse in the path of its own current has blown.
    pub fuse_blown: bool,
    /// A lead is broken inside its insulation.
    pub lead_open: bool,
    /// The setting and the value at which the display is held.
    pub held: Option<(MeterMode, Display)>,
}

impl Meter {
    /// What it shows where a sound meter would show `sound`.
    pub fn shows(&self, mode: MeterMode, sound: Display) -> Display {
        match self.held {
            Some((held, display)) if held == mode => display,
            _ => self.follows(mode, sound),
        }
    }

    /// Whether its display follows what is there, in this setting.
    pub fn is_sound(&self, mode: MeterMode) -> bool {
        let marks = [Display::Value(1.0), Display::Value(2.0)];
        marks.iter().all(|mark| self.shows(mode, *mark) == *mark)
    }

    fn follows(&self, mode: MeterMode, sound: Display) -> Display {
        match mode {
            mode if self.fuse_blown && mode.sends_current() => Display::Dead,
            // The clamp needs no leads.
            MeterMode::AmpsClamp => sound,
            MeterMode::Ohms | MeterMode::Continuity | MeterMode::Insulation if self.lead_open => {
                Display::OverRange
            }
            _ if self.lead_open => Display::Value(0.0),
            _ => sound,
        }
    }

    /// Tries it on the proving source. Turning the knob through its settings lets a held display go.
    pub fn tested(&mut self, at: Time) -> MeterTest {
        self.held = None;
        let show = |mode, known| self.follows(mode, Display::Value(known));
        MeterTest {
            at,
            volts_ac: show(MeterMode::VoltsAc, KNOWN_V),
            volts_dc: show(MeterMode::VoltsDc, KNOWN_V),
            ohms: show(MeterMode::Ohms, KNOWN_OHMS + LEADS_OHMS),
        }
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

impl MeterTest {
    /// It showed what was known to be there.
    pub fn is_good(&self) -> bool {
        let near = |mode, shown: Display, known: f64| matches!(shown, Display::Value(v) if (v - known).abs() <= accuracy(mode, known) + LEADS_OHMS);
        near(MeterMode::VoltsAc, self.volts_ac, KNOWN_V)
            && near(MeterMode::VoltsDc, self.volts_dc, KNOWN_V)
            && near(MeterMode::Ohms, self.ohms, KNOWN_OHMS)
    }
}

/// The same with one draw of noise, −1 to 1, at the size of [`accuracy`].
pub fn noisy(shown: Display, mode: MeterMode, draw: f64) -> Display {
    match shown {
        Display::Value(value) => {
            Display::Value(rounded(mode, value + 0.5 * draw * accuracy(mode, value)))
        }
        other => other,
    }
}

/// Widest error of a reading, in the mode's unit: a share of it and a few counts.
pub fn accuracy(mode: MeterMode, value: f64) -> f64 {
    let (share, counts) = match mode {
        MeterMode::Ohms | MeterMode::Continuity => (0.009, 3.0),
        MeterMode::VoltsAc | MeterMode::VoltsLowZ => (0.010, 4.0),
        MeterMode::VoltsDc => (0.005, 2.0),
        MeterMode::AmpsClamp | MeterMode::Microfarads => (0.020, 5.0),
        MeterMode::Hertz => (0.001, 2.0),
        MeterMode::Insulation => (0.050, 5.0),
    };
    share * value.abs() + counts * resolution(mode, value)
}

/// True when two readings differ by more than both their errors.
pub fn differ(mode: MeterMode, a: Display, b: Display) -> bool {
    match (a, b) {
        (Display::Value(a), Display::Value(b)) => {
            // A part's own tolerance is wider than the meter's error.
            (a - b).abs() > accuracy(mode, a) + accuracy(mode, b) + 0.05 * a.abs().max(b.abs())
        }
        (a, b) => a != b,
    }
}

/// Smallest step shown for a value.
pub fn resolution(mode: MeterMode, value: f64) -> f64 {
    let mut full = match mode {
        MeterMode::Ohms | MeterMode::Continuity => 600.0,
        MeterMode::VoltsAc | MeterMode::VoltsLowZ | MeterMode::VoltsDc | MeterMode::Insulation => {
            6.0
        }
        MeterMode::Microfarads => 60.0,
        MeterMode::AmpsClamp => return 0.01,
        MeterMode::Hertz => return 0.1,
    };
    while value.abs() >= full && full < 6e7 {
        full *= 10.0;
    }
    full / COUNTS
}

fn rounded(mode: MeterMode, value: f64) -> f64 {
    let step = resolution(mode, value);
    let counts = libm::round(value / step);
    // Dividing by the whole number 1/step gives the decimal that the display shows.
    let shown = if step < 1.0 {
        counts / libm::round(1.0 / step)
    } else {
        counts * step
    };
    // A display shows no minus before nothing.
    shown + 0.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_display_has_six_thousand_counts() {
        assert_eq!(resolution(MeterMode::Ohms, 120.0), 0.1);
        assert_eq!(resolution(MeterMode::Ohms, 780.0), 1.0);
        assert_eq!(resolution(MeterMode::VoltsAc, 121.3), 0.1);
        assert_eq!(rounded(MeterMode::VoltsDc, 3.4447), 3.445);
    }

    #[test]
    fn the_proving_source_catches_whatever_is_wrong_with_the_meter() {
        let sound = Meter::default();
        assert!(sound.clone().tested(Time::ZERO).is_good());
        let blown = Meter {
            fuse_blown: true,
            ..sound
        };
        let lead = Meter {
            lead_open: true,
            ..sound
        };
        assert!(!blown.clone().tested(Time::ZERO).is_good());
        assert!(!lead.clone().tested(Time::ZERO).is_good());
        // A blown fuse leaves the voltage ranges alone; an open lead leaves only the clamp.
        assert!(blown.is_sound(MeterMode::VoltsAc) && !blown.is_sound(MeterMode::Continuity));
        assert!(!lead.is_sound(MeterMode::VoltsAc) && lead.is_sound(MeterMode::AmpsClamp));
    }

    #[test]
    fn a_held_display_stays_until_the_knob_is_turned() {
        let held = (MeterMode::VoltsDc, Display::Value(0.3));
        let mut meter = Meter {
            held: Some(held),
            ..Meter::default()
        };
        assert_eq!(
            meter.shows(MeterMode::VoltsDc, Display::Value(168.0)),
            Display::Value(0.3)
        );
        assert!(!meter.is_sound(MeterMode::VoltsDc) && meter.is_sound(MeterMode::VoltsAc));
        assert!(meter.tested(Time::ZERO).is_good() && meter.held.is_none());
    }

    #[test]
    fn it_beeps_below_thirty_ohms_and_in_the_continuity_range_alone() {
        let ohms = Display::Value(29.9);
        assert!(beeps(MeterMode::Continuity, ohms) && !beeps(MeterMode::Ohms, ohms));
        assert!(!beeps(MeterMode::Continuity, Display::Value(30.0)));
        assert!(!beeps(MeterMode::Continuity, Display::OverRange));
    }

    #[test]
    fn noise_stays_within_the_stated_accuracy() {
        for draw in [-1.0, -0.3, 0.7, 1.0] {
            let Display::Value(v) = noisy(Display::Value(780.0), MeterMode::Ohms, draw) else {
                panic!("a value stays a value")
            };
            assert!((v - 780.0).abs() <= accuracy(MeterMode::Ohms, 780.0) + 0.5);
        }
    }
}
