//! How each thing that is heard sounds: samples made by rule, without a file and without a device.

use detent_simulation::machine::Sound;
use std::f32::consts::TAU;
use std::num::NonZeroU32;

/// What is heard: the machine, the meter's beep, or a shock.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Heard {
    /// A part of the machine.
    Machine(Sound),
    /// The meter's probes touch what conducts.
    Beep,
    /// Current through somebody.
    Shock,
}

impl Heard {
    /// Everything that can be heard.
    pub fn all() -> impl Iterator<Item = Heard> {
        let machine = Sound::ALL.iter().copied().map(Heard::Machine);
        machine.chain([Heard::Beep, Heard::Shock])
    }

    /// How it sounds on mains of this frequency, Hz. Iron in an alternating field is pulled twice a period, so that
    /// windings hum at twice the mains frequency (common practice, no source); the rest is our own choice.
    pub const fn voice(self, mains_hz: f32) -> Voice {
        let hum_hz = 2.0 * mains_hz;
        match self {
            Heard::Machine(Sound::MotorHum) => Voice::hum(hum_hz, [1.0, 0.35, 0.15], 0.30),
            Heard::Machine(Sound::SpinWhirr) => {
                Voice::hum(190.0, [1.0, 0.5, 0.2], 0.25).with_noise(0.45, 300.0, 2_500.0)
            }
            Heard::Machine(Sound::AgitatorSwish) => Voice::noise(150.0, 900.0, 0.20),
            Heard::Machine(Sound::MotorFree) => {
                Voice::hum(260.0, [1.0, 0.2, 0.0], 0.22).with_noise(0.15, 300.0, 2_500.0)
            }
            Heard::Machine(Sound::PumpHum) => {
                Voice::hum(hum_hz, [1.0, 0.3, 0.1], 0.20).with_noise(0.35, 400.0, 3_000.0)
            }
            // A rotor that is stuck: more of the overtones, no water in it.
            Heard::Machine(Sound::PumpBuzz) => Voice::hum(hum_hz, [1.0, 0.8, 0.6], 0.35),
            Heard::Machine(Sound::WaterRush) => Voice::noise(500.0, 5_000.0, 0.18),
            Heard::Machine(Sound::ValveBuzz) => Voice::hum(hum_hz, [0.6, 1.0, 0.6], 0.15),
            Heard::Machine(Sound::ClutchActuatorTick) => Voice::clicks(0.25, 900.0, 0.15),
            Heard::Machine(Sound::LockHeld) => Voice::hum(hum_hz, [1.0, 0.1, 0.0], 0.05),
            Heard::Machine(Sound::CabinetShake) => Voice::clicks(0.11, 70.0, 0.35),
            Heard::Machine(Sound::RelayClick) => Voice::clicks(30.0, 2_400.0, 0.30),
            Heard::Beep => Voice::hum(2_000.0, [1.0, 0.0, 0.0], 0.20),
            Heard::Shock => {
                Voice::hum(hum_hz, [1.0, 0.8, 0.6], 0.60).with_noise(0.70, 200.0, 6_000.0)
            }
        }
    }
}

/// A steady sound: a hum with its overtones, hiss within a band, and clicks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Voice {
    /// The lowest tone, Hz, and how strong it, its double and its triple are.
    hum_hz: f32,
    overtones: [f32; 3],
    /// How much of it is hiss, and between which frequencies, Hz.
    noise_share: f32,
    band_hz: [f32; 2],
    /// Time between two clicks, s, and the tone in which one rings, Hz; none: no clicks.
    clicks: Option<(f32, f32)>,
    /// Of one as the loudest.
    pub loudness: f32,
}

impl Voice {
    const fn hum(hum_hz: f32, overtones: [f32; 3], loudness: f32) -> Voice {
        Voice {
            hum_hz,
            overtones,
            noise_share: 0.0,
            band_hz: [0.0; 2],
            clicks: None,
            loudness,
        }
    }

    const fn noise(from_hz: f32, to_hz: f32, loudness: f32) -> Voice {
        Voice::hum(0.0, [0.0; 3], loudness).with_noise(1.0, from_hz, to_hz)
    }

    const fn clicks(every_s: f32, ring_hz: f32, loudness: f32) -> Voice {
        Voice {
            clicks: Some((every_s, ring_hz)),
            ..Voice::hum(0.0, [0.0; 3], loudness)
        }
    }

    const fn with_noise(self, noise_share: f32, from_hz: f32, to_hz: f32) -> Voice {
        Voice {
            noise_share,
            band_hz: [from_hz, to_hz],
            ..self
        }
    }

    /// Its samples, without end, so many a second. It had best be the device's own rate: what converts one to another needs
    /// some milliseconds to notice that it has to, and a click is over by then.
    pub fn samples(self, rate: NonZeroU32) -> Samples {
        Samples {
            voice: self,
            rate,
            nth: 0,
            noise: 1,
            low: [[0.0; 2]; 2],
        }
    }
}

/// How many periods a click rings until it has lost most of its strength.
const RING_PERIODS: f32 = 4.0;

/// The samples of a voice.
#[derive(Clone, Debug)]
pub struct Samples {
    voice: Voice,
    /// So many a second.
    pub rate: NonZeroU32,
    nth: u64,
    noise: u32,
    /// The noise below either edge of its band, once and twice smoothed.
    low: [[f32; 2]; 2],
}

impl Samples {
    fn hum(&self, at_s: f64) -> f32 {
        let all: f32 = self.voice.overtones.iter().sum();
        if all == 0.0 {
            return 0.0;
        }
        let parts = (1..).zip(self.voice.overtones).map(|(n, strength)| {
            // The phase in full precision: a long hum does not drift.
            let phase = (at_s * f64::from(self.voice.hum_hz) * f64::from(n)).fract() as f32;
            strength * (phase * TAU).sin()
        });
        parts.sum::<f32>() / all
    }

    fn hiss(&mut self) -> f32 {
        if self.voice.noise_share == 0.0 {
            return 0.0;
        }
        // A linear congruential generator is noise enough (multiplier suggested by Knuth, increment by Lewis, as in
        // Numerical Recipes; from memory).
        self.noise = self
            .noise
            .wrapping_mul(1_664_525)
            .wrapping_add(1_013_904_223);
        let white = self.noise as f32 / u32::MAX as f32 * 2.0 - 1.0;
        for (low, edge_hz) in self.low.iter_mut().zip(self.voice.band_hz) {
            let pass = 1.0 - (-TAU * edge_hz / self.rate.get() as f32).exp();
            low[0] += (white - low[0]) * pass;
            low[1] += (low[0] - low[1]) * pass;
        }
        // What the smoothing takes is given back in part; the more samples a second, the wider the band that it takes
        // from.
        let gain = 1.5 * (self.rate.get() as f32 / 22_050.0).sqrt();
        (gain * (self.low[1][1] - self.low[0][1])).clamp(-1.0, 1.0)
    }

    fn click(&self, at_s: f64) -> f32 {
        let Some((every_s, ring_hz)) = self.voice.clicks else {
            return 0.0;
        };
        let since_s = (at_s % f64::from(every_s)) as f32;
        let periods = since_s * ring_hz;
        (periods * TAU).sin() * (-periods / RING_PERIODS).exp()
    }
}

impl Iterator for Samples {
    type Item = f32;

    fn next(&mut self) -> Option<f32> {
        let at_s = self.nth as f64 / f64::from(self.rate.get());
        self.nth += 1;
        let share = self.voice.noise_share;
        let hiss = self.hiss();
        Some(self.hum(at_s) * (1.0 - share) + hiss * share + self.click(at_s))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use rustfft::FftPlanner;
    use rustfft::num_complex::Complex;

    const MAINS_HZ: [f32; 2] = [50.0, 60.0];

    /// Usual rates of devices, samples a second.
    const RATES: [NonZeroU32; 3] = [
        NonZeroU32::new(22_050).unwrap(),
        NonZeroU32::new(44_100).unwrap(),
        NonZeroU32::new(48_000).unwrap(),
    ];

    /// How strong each whole Hz is within a second of it, by an independent transform.
    fn spectrum(voice: Voice) -> Vec<f32> {
        spectrum_at(RATES[2], voice)
    }

    fn spectrum_at(of_device: NonZeroU32, voice: Voice) -> Vec<f32> {
        let rate = of_device.get() as usize;
        let mut samples: Vec<Complex<f32>> = voice
            .samples(of_device)
            .take(rate)
            .map(|sample| Complex::new(sample, 0.0))
            .collect();
        FftPlanner::new()
            .plan_fft_forward(rate)
            .process(&mut samples);
        samples[..rate / 2].iter().map(|c| c.norm()).collect()
    }

    fn strongest(spectrum: &[f32]) -> usize {
        let strength = |hz: &usize| spectrum[*hz];
        let all = 0..spectrum.len();
        all.max_by(|a, b| strength(a).total_cmp(&strength(b)))
            .expect("it is heard")
    }

    /// The share of a sound's power between these frequencies, Hz.
    fn share(spectrum: &[f32], from_hz: usize, to_hz: usize) -> f32 {
        let power = |part: &[f32]| part.iter().map(|strength| strength * strength).sum::<f32>();
        power(&spectrum[from_hz..to_hz]) / power(spectrum)
    }

    /// Iron is pulled twice a period: common practice, no source.
    #[test]
    fn windings_hum_at_twice_the_mains_frequency() {
        for mains_hz in MAINS_HZ {
            let hum_hz = (2.0 * mains_hz) as usize;
            for sound in [
                Sound::MotorHum,
                Sound::PumpHum,
                Sound::PumpBuzz,
                Sound::LockHeld,
            ] {
                let spectrum = spectrum(Heard::Machine(sound).voice(mains_hz));
                assert_eq!(strongest(&spectrum), hum_hz, "{sound}");
            }
            let valve = spectrum(Heard::Machine(Sound::ValveBuzz).voice(mains_hz));
            assert_eq!(
                strongest(&valve) % hum_hz,
                0,
                "a valve rattles in overtones"
            );
            assert!(valve[hum_hz] > valve[hum_hz + 20] * 10.0);
        }
    }

    /// A stuck pump is told from a turning one by ear: no water in it, and harsher.
    #[test]
    fn a_stuck_pump_buzzes_and_a_turning_one_carries_water() {
        for mains_hz in MAINS_HZ {
            let [turns, stuck] = [Sound::PumpHum, Sound::PumpBuzz]
                .map(|sound| spectrum(Heard::Machine(sound).voice(mains_hz)));
            let hum_hz = (2.0 * mains_hz) as usize;
            let overtones = |spectrum: &[f32]| spectrum[2 * hum_hz] / spectrum[hum_hz];
            assert!(overtones(&stuck) > 2.0 * overtones(&turns));
            assert!(share(&turns, 500, 5_000) > 50.0 * share(&stuck, 500, 5_000));
        }
    }

    #[test]
    fn water_rushes_over_a_wide_band_and_has_no_tone() {
        let water = spectrum(Heard::Machine(Sound::WaterRush).voice(60.0));
        assert!(share(&water, 300, 6_000) > 0.7);
        let mean = water[500..5_000].iter().sum::<f32>() / 4_500.0;
        let loudest = water[strongest(&water)];
        assert!(loudest < 6.0 * mean, "{loudest} against {mean}");
    }

    /// Whatever the device's rate is, and in the pitch that was chosen.
    #[test]
    fn a_relay_clicks_once_and_is_over_within_twenty_milliseconds() {
        let voice = Heard::Machine(Sound::RelayClick).voice(60.0);
        let loudest = |part: &[f32]| part.iter().fold(0.0_f32, |m, s| m.max(s.abs()));
        for of_device in RATES {
            let rate = of_device.get() as usize;
            let samples: Vec<f32> = voice.samples(of_device).take(rate).collect();
            assert!(loudest(&samples[..rate / 100]) > 0.5);
            assert!(loudest(&samples[rate / 50..]) < 1e-3);
            let click = spectrum_at(of_device, voice);
            assert!(share(&click, 1_000, 6_000) > 0.8, "high, as metal on metal");
            let pitch = strongest(&click);
            assert!(
                (2_300..=2_500).contains(&pitch),
                "{pitch} Hz at {of_device}"
            );
        }
    }

    #[test]
    fn no_sample_leaves_the_range_and_none_is_silent() {
        for heard in Heard::all() {
            for mains_hz in MAINS_HZ {
                for of_device in RATES {
                    let two_s = 2 * of_device.get() as usize;
                    let samples = heard.voice(mains_hz).samples(of_device).take(two_s);
                    let loudest = samples.fold(0.0_f32, |m, s| m.max(s.abs()));
                    assert!((0.2..=1.0).contains(&loudest), "{heard:?}: {loudest}");
                }
            }
        }
    }

    /// Alarms and beeps within what elderly ears hear well, and below what hurts: common practice, no source.
    #[test]
    fn the_meter_beeps_at_two_kilohertz() {
        let beep = spectrum(Heard::Beep.voice(50.0));
        assert_eq!(strongest(&beep), 2_000);
    }
}
