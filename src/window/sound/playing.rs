//! Plays what is heard.

use super::samples::{Heard, Samples};
use crate::rest::NextFrame;
use crate::state::{BenchRes, Screen, UiState};
use bevy::prelude::*;
use detent_content::SoundVolume;
use detent_training::bench::meter;
use rodio::cpal::StreamError;
use rodio::{ChannelCount, DeviceSinkBuilder, MixerDeviceSink, Player, SampleRate, Source};
use std::num::NonZeroU16;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::Duration;

const ONE: NonZeroU16 = NonZeroU16::new(1).unwrap();

/// How long a shock is heard, s.
const SHOCK_S: f32 = 0.4;

/// Time after which a device that was not there is looked for again, s.
const LOOK_AGAIN_S: f32 = 5.0;

impl Source for Samples {
    fn current_span_len(&self) -> Option<usize> {
        None
    }

    fn channels(&self) -> ChannelCount {
        ONE
    }

    fn sample_rate(&self) -> SampleRate {
        self.rate
    }

    fn total_duration(&self) -> Option<Duration> {
        None
    }
}

/// The system's sound device, as long as it is there, and what it plays. It is opened for the first sound: a
/// browser allows none before somebody has pressed something.
#[derive(Default)]
struct SoundOutput {
    device: Option<MixerDeviceSink>,
    /// Set by the device's own thread, which would go on trying for ever.
    lost: Arc<AtomicBool>,
    /// When a device was last looked for, s.
    looked_s: Option<f32>,
    playing: Vec<(Heard, Player)>,
}

impl SoundOutput {
    /// Lets go of a device that was taken away.
    fn drop_what_is_lost(&mut self) {
        if self.lost.load(Ordering::Relaxed) {
            warn!("The sound device is gone; what can be heard is still written out.");
            self.playing.clear();
            self.device = None;
            // The old one may be set once more until its thread has ended.
            self.lost = Arc::default();
        }
    }

    /// The device; none where there is none, which is looked for again now and then.
    fn device(&mut self, now_s: f32) -> Option<&MixerDeviceSink> {
        let is_due = (self.looked_s).is_none_or(|looked_s| now_s - looked_s > LOOK_AGAIN_S);
        if self.device.is_none() && is_due {
            self.looked_s = Some(now_s);
            let lost = Arc::clone(&self.lost);
            let opened = DeviceSinkBuilder::from_default_device().and_then(|builder| {
                (builder.with_error_callback(move |error| match error {
                    StreamError::BufferUnderrun => {}
                    StreamError::DeviceNotAvailable
                    | StreamError::StreamInvalidated
                    | StreamError::BackendSpecific { .. } => lost.store(true, Ordering::Relaxed),
                }))
                .open_sink_or_fallback()
            });
            match opened {
                Ok(mut device) => {
                    device.log_on_drop(false);
                    self.device = Some(device);
                }
                Err(error) => warn!("No sound device: {error}"),
            }
        }
        self.device.as_ref()
    }

    /// Ends what is no longer heard and begins what is heard now.
    fn play(&mut self, heard: &[Heard], volume: SoundVolume, mains_hz: f32, now_s: f32) {
        self.playing.retain(|(playing, _)| heard.contains(playing));
        for heard in heard {
            let voice = heard.voice(mains_hz);
            let loudness = voice.loudness * volume.amplitude();
            if let Some((_, player)) = self.playing.iter().find(|(playing, _)| playing == heard) {
                player.set_volume(loudness);
            } else if let Some(device) = self.device(now_s) {
                let player = Player::connect_new(device.mixer());
                player.set_volume(loudness);
                player.append(voice.samples(device.config().sample_rate()));
                self.playing.push((*heard, player));
            }
        }
    }
}

/// Begins and ends voices as the captions do.
fn sound(
    (bench, screen): (Res<BenchRes>, Res<State<Screen>>),
    ui_state: Res<UiState>,
    time: Res<Time<Real>>,
    mut output: NonSendMut<SoundOutput>,
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
    let volume = ui_state.preferences.sound;
    // A bench stands behind the other screens, and one whose clock stands makes no noise; under the settings it goes on, so
    // that they can be chosen by ear.
    let at_bench = *screen.get() == Screen::Bench;
    let runs = at_bench && (bench.runs(ui_state.speed) || ui_state.keys);
    let heard: Vec<Heard> = Heard::all()
        .filter(|heard| match heard {
            Heard::Machine(sound) => runs && view.machine.sounds.has(*sound),
            Heard::Beep => beeps,
            Heard::Shock => shocks,
        })
        .filter(|_| volume != SoundVolume::Off)
        .collect();
    output.drop_what_is_lost();
    output.play(&heard, volume, bench.job().mains_hz as f32, now_s);
}

/// Sound for the bench.
pub(super) fn plugin(app: &mut App) {
    app.init_non_send::<SoundOutput>()
        .add_systems(Update, sound);
}
