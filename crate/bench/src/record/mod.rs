//! Pulses, detectors and a digitiser: what two recorded channels would show, and the files they would be kept in.
//!
//! A pulse of light falls on detector A, and after the true delay, weakened, on detector B. Each detector turns it into
//! volts with its own rise and its own decay. The digitiser adds noise and hum, counts time by its own time base, and
//! rounds to its bits.

// The files the samples would be kept in.
mod text;

pub use text::{SettingsPlace, Style, Units, as_text, both_as_text};

use slope_evidence::trace::{Channel, Detector, Recording};

use crate::chance::Chance;

/// What a detector makes of a flash at time 0: a voltage that rises and decays, of greatest level 1.
///
/// The rise is the integral of cos² over twice `rise`: it begins and ends at definite times and is smooth between. The decay
/// is exponential. Their convolution would be nearer to a circuit's answer; the product is simpler, and has a known top.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct DetectorResponse {
    /// From 10 to 90 %, ns.
    pub rise: f64,
    /// Decay time, ns; infinite for a step.
    pub decay: f64,
    /// Volts of the greatest level that the full light gives; below 0 for pulses that go down.
    pub gain: f64,
    /// Constant level beside the pulse, V.
    pub offset: f64,
}

impl Default for DetectorResponse {
    fn default() -> Self {
        Self { rise: 4.0, decay: 40.0, gain: 0.8, offset: 0.01 }
    }
}

impl DetectorResponse {
    /// Share of the height at a time after the half height of the rise, before decay.
    fn edge(&self, time: f64) -> f64 {
        // From 10 to 90 % of x − sin(2πx)/2π over 0 … 1 takes 0.482188 of the whole.
        let x = time / (self.rise / 0.482_188) + 0.5;
        if x <= 0.0 {
            0.0
        } else if x >= 1.0 {
            1.0
        } else {
            x - libm::sin(std::f64::consts::TAU * x) / std::f64::consts::TAU
        }
    }

    /// Volts at a time after the half height of the rise, without offset, under light weakened to `light`.
    pub fn level(&self, time: f64, light: f64) -> f64 {
        let decayed = if self.decay.is_finite() && time > 0.0 { libm::exp(-time / self.decay) } else { 1.0 };
        self.gain * light * self.edge(time) * decayed
    }
}

/// What turns volts into samples.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Digitiser {
    /// From sample to sample by its own count, ns.
    pub step: f64,
    /// Samples a record.
    pub samples: usize,
    /// Time of the first sample, ns, counted from where A's edge has half its height.
    pub start: f64,
    /// Bits; 0 for samples that are not rounded.
    pub bits: u32,
    /// Greatest level either way, V; beyond it the converter clips.
    pub full_scale: f64,
    /// Standard deviation of white noise, V.
    pub noise: f64,
    /// Share of each sample's noise that goes over into the next: 0 for white noise, below 1.
    pub memory: f64,
    /// Standard deviation of each sample's time, ns.
    pub jitter: f64,
    /// Relative error of the time base: its nanosecond is longer by this.
    pub time_base: f64,
    /// Amplitude of mains hum, V.
    pub hum: f64,
    /// Frequency of the hum, Hz.
    pub mains: f64,
}

impl Default for Digitiser {
    fn default() -> Self {
        Self {
            step: 0.1,
            samples: 2_000,
            start: -60.0,
            bits: 0,
            full_scale: 1.0,
            noise: 0.008,
            memory: 0.0,
            jitter: 0.0,
            time_base: 0.0,
            hum: 0.0,
            mains: 50.0,
        }
    }
}

/// A bench with two detectors and one digitiser.
#[derive(Clone, Copy, PartialEq, Debug, Default)]
pub struct Bench {
    /// The fixed detector.
    pub a: DetectorResponse,
    /// The far one.
    pub b: DetectorResponse,
    /// What records both.
    pub digitiser: Digitiser,
    /// Light falls off as 1/(1 + d/this)²: metres; 0 for light that does not.
    pub fall_off: f64,
}

impl Bench {
    /// How much of the light arrives at `distance` (m).
    pub fn light(&self, distance: f64) -> f64 {
        if self.fall_off > 0.0 {
            let far = 1.0 + distance / self.fall_off;
            1.0 / (far * far)
        } else {
            1.0
        }
    }

    /// The two channels of one pulse, B's behind A's by `delay` (ns) and weakened to `light`.
    ///
    /// The true delay is the one of the half heights before decay; detectors of one shape have it at every fraction.
    pub fn record(&self, delay: f64, light: f64, chance: &mut Chance) -> Recording {
        let digitiser = &self.digitiser;
        // The edges fall anywhere between two samples.
        let shift = chance.unit() * digitiser.step;
        let phase = chance.unit() * std::f64::consts::TAU;
        let channel = |which, detector: &DetectorResponse, late: f64, light: f64, chance: &mut Chance| {
            let mut noise = 0.0;
            let fresh = (1.0 - digitiser.memory * digitiser.memory).sqrt();
            let samples = (0..digitiser.samples).map(|index| {
                let counted = digitiser.start + index as f64 * digitiser.step;
                let mut time = counted * (1.0 + digitiser.time_base) + shift - late;
                if digitiser.jitter > 0.0 {
                    time += chance.normal(digitiser.jitter);
                }
                noise = digitiser.memory * noise + chance.normal(fresh * digitiser.noise);
                let turn = std::f64::consts::TAU * digitiser.mains * counted * 1e-9 + phase;
                let hum = if digitiser.hum > 0.0 { digitiser.hum * libm::sin(turn) } else { 0.0 };
                digitiser.rounded(detector.offset + detector.level(time, light) + noise + hum)
            });
            Channel { detector: Some(which), label: format!("{which:?}"), samples: samples.collect() }
        };
        let a = channel(Detector::A, &self.a, 0.0, 1.0, chance);
        let b = channel(Detector::B, &self.b, delay, light, chance);
        let (start, step) = (digitiser.start, digitiser.step);
        Recording {
            start,
            is_start_told: true,
            is_unit_supposed: false,
            step,
            uneven: 0.0,
            channels: vec![a, b],
            settings: Vec::new(),
        }
    }
}

impl Digitiser {
    fn rounded(&self, volts: f64) -> f64 {
        let cut = volts.clamp(-self.full_scale, self.full_scale);
        if self.bits == 0 {
            return cut;
        }
        let quantum = self.full_scale / f64::from(1_u32 << (self.bits.min(31) - 1));
        // The highest count is one below the full scale, as of a converter in two's complement.
        (cut / quantum).round_ties_even().min(self.full_scale / quantum - 1.0) * quantum
    }
}

#[cfg(test)]
#[path = "mod_test.rs"]
mod tests;
