//! Plays what is heard.

use super::samples::{Heard, RATE, Samples, Voice};
use crate::rest::NextFrame;
use crate::state::BenchRes;
use bevy::audio::{AddAudioSource, ChannelCount, Decodable, SampleRate, Source, Volume};
use bevy::prelude::*;
use detent_training::bench::meter;
use std::num::NonZeroU16;
use std::time::Duration;

const ONE: NonZeroU16 = NonZeroU16::new(1).unwrap();

/// How long a shock is heard, s.
const SHOCK_S: f32 = 0.4;

/// A voice as the audio system takes it.
#[derive(Asset, Clone, Copy, Debug, TypePath)]
struct VoiceSource(Voice);

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

impl Decodable for VoiceSource {
    type Decoder = Samples;

    fn decoder(&self) -> Samples {
        self.0.samples()
    }
}

/// A voice that sounds.
#[derive(Component)]
struct Sounding(Heard);

/// Begins and ends voices as the captions do.
fn sound(
    mut commands: Commands,
    bench: Res<BenchRes>,
    mut voices: ResMut<Assets<VoiceSource>>,
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
    let mains_hz = bench.job().mains_hz as f32;
    for heard in Heard::all() {
        if is_heard(heard) && !sounding.iter().any(|(_, Sounding(other))| *other == heard) {
            let voice = heard.voice(mains_hz);
            let settings = PlaybackSettings::ONCE.with_volume(Volume::Linear(voice.loudness));
            commands.spawn((
                AudioPlayer(voices.add(VoiceSource(voice))),
                settings,
                Sounding(heard),
            ));
        }
    }
}

/// Sound for the bench.
pub(super) fn plugin(app: &mut App) {
    app.add_audio_source::<VoiceSource>()
        .add_systems(Update, sound);
}
