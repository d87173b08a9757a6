//! What happened to the machine in the customer's last wash, as far as whoever stands beside it can notice.

use detent_simulation::controller::{ControlMode, PhaseKind};
use detent_simulation::machine::{Machine, MachineView, Sound};
use detent_simulation::units::Span;

/// Time from one look to the next.
pub(crate) const LOOK: Span = Span::from_ms(100);
/// An angle that grows by more than this from one look to the next is seen to move, revolutions.
const SEEN_REV: f64 = 0.01;
/// Water is felt from this level upwards, mm.
const FELT_MM: f64 = 80.0;

/// What could be seen and heard from the customer's press on Start until the technician came.
#[derive(Clone, Debug, PartialEq)]
pub struct LastWash {
    /// Time for which each sound was heard, s, by [`Sound::index`].
    heard_s: [f64; Sound::ALL.len()],
    /// Which phases the program came to, by [`PhaseKind::index`].
    phases: [bool; PhaseKind::ALL.len()],
    /// Time for which agitator or basket moved, s.
    pub moved_s: f64,
    /// Time for which water ran in while no program did, s.
    pub ran_in_at_rest_s: f64,
    /// Time for which it was heard to drain while the program let water in, s.
    pub drained_while_filling_s: f64,
    /// Highest level, mm.
    pub highest_mm: f64,
    /// Warmest water that could be felt, °C; none where there never was enough to feel.
    pub warmest_c: Option<f64>,
    /// Fastest speed of the basket, rev/min.
    pub fastest_rpm: f64,
    /// Times that the lid's bolt went home.
    pub bolted: u32,
    /// Agitator and basket at the last look, revolutions, and whether the bolt was out.
    last: Option<(f64, f64, bool)>,
}

impl Default for LastWash {
    fn default() -> LastWash {
        LastWash {
            heard_s: [0.0; Sound::ALL.len()],
            phases: [false; PhaseKind::ALL.len()],
            moved_s: 0.0,
            ran_in_at_rest_s: 0.0,
            drained_while_filling_s: 0.0,
            highest_mm: 0.0,
            warmest_c: None,
            fastest_rpm: 0.0,
            bolted: 0,
            last: None,
        }
    }
}

impl LastWash {
    /// Time for which a sound was heard, s.
    pub fn heard_s(&self, sound: Sound) -> f64 {
        self.heard_s[sound.index()]
    }

    /// Whether the program came to a phase of this kind.
    pub fn came_to(&self, phase: PhaseKind) -> bool {
        self.phases[phase.index()]
    }

    /// One look, [`LOOK`] after the last one.
    pub(super) fn look(&mut self, machine: &Machine) {
        let view: MachineView<'_> = machine.view();
        let look_s = LOOK.seconds();
        for sound in view.sounds.iter() {
            self.heard_s[sound.index()] += look_s;
        }
        let running = view.control.mode == ControlMode::Program;
        if let Some(phase) = view.control.phase
            && running
        {
            self.phases[phase.index()] = true;
        }
        if view.sounds.has(Sound::WaterRush) && !running {
            self.ran_in_at_rest_s += look_s;
        }
        let filling = running && view.control.phase == Some(PhaseKind::Fill);
        if filling && view.sounds.has(Sound::PumpHum) {
            self.drained_while_filling_s += look_s;
        }
        self.highest_mm = self.highest_mm.max(view.level_mm);
        if view.level_mm >= FELT_MM {
            let warmest = self.warmest_c.unwrap_or(view.water_c);
            self.warmest_c = Some(warmest.max(view.water_c));
        }
        self.fastest_rpm = self.fastest_rpm.max(view.basket_rpm.abs());
        if let Some((agitator, basket, bolted)) = self.last {
            let turned = (view.agitator_rev - agitator).abs() + (view.basket_rev - basket).abs();
            if turned > SEEN_REV {
                self.moved_s += look_s;
            }
            self.bolted += u32::from(view.lid_bolted && !bolted);
        }
        self.last = Some((view.agitator_rev, view.basket_rev, view.lid_bolted));
    }
}
