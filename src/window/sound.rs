//! What can be heard, as sound beside its caption (feature `audio`).

use super::rest::NextFrame;
use super::state::BenchRes;
use bevy::audio::{AddAudioSource, ChannelCount, Decodable, SampleRate, Source, Volume};
use bevy::prelude::*;
use detent_simulation::machine::Sound;
use detent_training::bench::meter;
use std::f32::consts::TAU;
use std::num::{NonZeroU16, NonZeroU32};
use std::time::Duration;

const RATE: NonZeroU32 = NonZeroU32::new(22_050).unwrap();
const ONE: NonZeroU16 = NonZeroU16::new(1).unwrap();

/// How long a shock is heard, s.
const SHOCK_S: f32 = 0.4;

/// What is heard: the machine, the meter's beep, or a shock.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Heard {
    Machine(Sound),
    Beep,
    Shock,
}

impl Heard {
    fn all() -> impl Iterator<Item = Heard> {
        let machine = Sound::ALL.iter().copied().map(Heard::Machine);
        machine.chain([Heard::Beep, Heard::Shock])
    }

    /// How it sounds: a tone in Hz, the share of noise in it, loudness. Windings hum at twice the mains'
    /// frequency; the rest is our own choice.
    const fn voice(self) -> Voice {
        match self {
            Heard::Machine(Sound::MotorHum) => Voice::new(120.0, 0.05, 0.30),
            Heard::Machine(Sound::SpinWhirr) => Voice::new(190.0, 0.45, 0.25),
            Heard::Machine(Sound::AgitatorSwish) => Voice::new(35.0, 0.85, 0.20),
            Heard::Machine(Sound::MotorFree) => Voice::new(260.0, 0.15, 0.22),
            Heard::Machine(Sound::PumpHum) => Voice::new(100.0, 0.35, 0.20),
            Heard::Machine(Sound::PumpBuzz) => Voice::new(120.0, 0.10, 0.35),
            Heard::Machine(Sound::WaterRush) => Voice::new(20.0, 1.0, 0.18),
            Heard::Machine(Sound::ValveBuzz) => Voice::new(240.0, 0.05, 0.15),
            Heard::Machine(Sound::ClutchActuatorTick) => Voice::new(12.0, 0.10, 0.15),
            Heard::Machine(Sound::LockHeld) => Voice::new(120.0, 0.02, 0.05),
            Heard::Machine(Sound::CabinetShake) => Voice::new(9.0, 0.50, 0.35),
            Heard::Machine(Sound::RelayClick) => Voice::new(2.0, 0.60, 0.12),
            Heard::Beep => Voice::new(2000.0, 0.0, 0.20),
            Heard::Shock => Voice::new(100.0, 0.70, 0.60),
        }
    }
}

/// A steady sound.
#[derive(Asset, Clone, Copy, Debug, TypePath)]
struct Voice {
    tone_hz: f32,
    noise_share: f32,
    loudness: f32,
}

impl Voice {
    const fn new(tone_hz: f32, noise_share: f32, loudness: f32) -> Voice {
        Voice {
            tone_hz,
            noise_share,
            loudness,
        }
    }
}

/// The samples of a voice, without end.
struct Samples {
    voice: Voice,
    phase: f32,
    noise: u32,
    soft: f32,
}

impl Iterator for Samples {
    type Item = f32;

    fn next(&mut self) -> Option<f32> {
        self.phase = (self.phase + self.voice.tone_hz / RATE.get() as f32).fract();
        // A linear congruential generator is noise enough (multiplier suggested by Knuth, increment by Lewis, as in
        // Numerical Recipes; from memory).
        self.noise = self
            .noise
            .wrapping_mul(1_664_525)
            .wrapping_add(1_013_904_223);
        let white = self.noise as f32 / u32::MAX as f32 * 2.0 - 1.0;
        self.soft += (white - self.soft) * 0.3;
        let tone = (self.phase * TAU).sin();
        Some(tone * (1.0 - self.voice.noise_share) + self.soft * self.voice.noise_share)
    }
}

impl Source for Samples {
    fn current_span_len(&self) -> Option<usize> {
        None
    }

    fn channels(&self) -> ChannelCount {
        ONE
    }

    fn sample_rate(&self) -> SampleRate {
        RATE
    }

    fn total_duration(&self) -> Option<Duration> {
        None
    }
}

impl Decodable for Voice {
    type Decoder = Samples;

    fn decoder(&self) -> Samples {
        Samples {
            voice: *self,
            phase: 0.0,
            noise: 1,
            soft: 0.0,
        }
    }
}

/// A voice that sounds.
#[derive(Component)]
struct Sounding(Heard);

/// Begins and ends voices as the captions do.
fn sound(
    mut commands: Commands,
    bench: Res<BenchRes>,
    mut voices: ResMut<Assets<Voice>>,
    sounding: Query<(Entity, &Sounding)>,
    time: Res<Time<Real>>,
    mut next: ResMut<NextFrame>,
    mut shock_began_s: Local<Option<f32>>,
) {
    let now_s = time.elapsed_secs();
    *shock_began_s =
        (bench.incident.filter(|what| what.is_a_shock())).map(|_| shock_began_s.unwrap_or(now_s));
    let shocks = shock_began_s.is_some_and(|began_s| now_s - began_s < SHOCK_S);
    if shocks {
        next.ask();
    }
    let view = bench.view();
    let beeps =
        (view.probes.zip(bench.meter())).is_some_and(|((mode, ..), at)| meter::beeps(mode, at));
    let is_heard = |heard: Heard| match heard {
        Heard::Machine(sound) => view.machine.sounds.has(sound),
        Heard::Beep => beeps,
        Heard::Shock => shocks,
    };
    for (entity, Sounding(heard)) in &sounding {
        if !is_heard(*heard) {
            commands.entity(entity).despawn();
        }
    }
    for heard in Heard::all() {
        if is_heard(heard) && !sounding.iter().any(|(_, Sounding(other))| *other == heard) {
            let voice = heard.voice();
            let settings = PlaybackSettings::ONCE.with_volume(Volume::Linear(voice.loudness));
            commands.spawn((AudioPlayer(voices.add(voice)), settings, Sounding(heard)));
        }
    }
}

/// Sound for the bench.
pub fn plugin(app: &mut App) {
    app.add_audio_source::<Voice>().add_systems(Update, sound);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_tone_has_its_frequency_and_no_sample_leaves_the_range() {
        let samples: Vec<f32> = Voice::new(100.0, 0.0, 1.0).decoder().take(22_050).collect();
        let rises = samples
            .windows(2)
            .filter(|w| w[0] < 0.0 && w[1] >= 0.0)
            .count();
        assert!((99..=101).contains(&rises), "{rises} periods in a second");
        for heard in Heard::all() {
            let loudest = heard
                .voice()
                .decoder()
                .take(22_050)
                .fold(0.0_f32, |m, s| m.max(s.abs()));
            assert!((0.2..=1.0).contains(&loudest), "{heard:?}: {loudest}");
        }
    }
}
