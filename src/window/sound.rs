//! What can be heard, as sound beside its caption (feature `audio`).

use super::state::BenchRes;
use bevy::audio::{AddAudioSource, ChannelCount, Decodable, SampleRate, Source, Volume};
use bevy::prelude::*;
use detent_training::bench::meter;
use std::f32::consts::TAU;
use std::num::{NonZeroU16, NonZeroU32};
use std::time::Duration;

const RATE: NonZeroU32 = NonZeroU32::new(22_050).unwrap();
const ONE: NonZeroU16 = NonZeroU16::new(1).unwrap();

/// How each caption sounds: its key, a tone in Hz, the share of noise in it, loudness. Windings hum at
/// twice the mains' frequency; the rest is our own choice.
const VOICES: [(&str, Voice); 12] = [
    ("motor-hum", Voice::new(120.0, 0.05, 0.30)),
    ("spin-whirr", Voice::new(190.0, 0.45, 0.25)),
    ("agitator-swish", Voice::new(35.0, 0.85, 0.20)),
    ("motor-free", Voice::new(260.0, 0.15, 0.22)),
    ("pump-hum", Voice::new(100.0, 0.35, 0.20)),
    ("pump-buzz", Voice::new(120.0, 0.10, 0.35)),
    ("water-rush", Voice::new(20.0, 1.0, 0.18)),
    ("valve-buzz", Voice::new(240.0, 0.05, 0.15)),
    ("shifter-tick", Voice::new(12.0, 0.10, 0.15)),
    ("lock-held", Voice::new(120.0, 0.02, 0.05)),
    ("cabinet-shake", Voice::new(9.0, 0.50, 0.35)),
    (BEEP, Voice::new(2000.0, 0.0, 0.20)),
];
/// The meter's own sound.
const BEEP: &str = "meter-beep";

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
        // A linear congruential generator (Knuth's constants, from memory) is noise enough.
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
struct Sounding(&'static str);

/// Begins and ends voices as the captions do.
fn sound(
    mut commands: Commands,
    bench: Res<BenchRes>,
    mut voices: ResMut<Assets<Voice>>,
    sounding: Query<(Entity, &Sounding)>,
) {
    let view = bench.view();
    let beeps =
        (view.probes.zip(view.meter)).is_some_and(|((mode, ..), at)| meter::beeps(mode, at));
    let heard = |key: &str| view.machine.sounds.contains(&key) || (key == BEEP && beeps);
    for (entity, Sounding(key)) in &sounding {
        if !heard(key) {
            commands.entity(entity).despawn();
        }
    }
    for (key, voice) in VOICES {
        if heard(key) && !sounding.iter().any(|(_, Sounding(k))| *k == key) {
            let settings = PlaybackSettings::ONCE.with_volume(Volume::Linear(voice.loudness));
            commands.spawn((AudioPlayer(voices.add(voice)), settings, Sounding(key)));
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
        for (key, voice) in VOICES {
            let loudest = voice
                .decoder()
                .take(22_050)
                .fold(0.0_f32, |m, s| m.max(s.abs()));
            assert!((0.2..=1.0).contains(&loudest), "{key}: {loudest}");
        }
    }
}
