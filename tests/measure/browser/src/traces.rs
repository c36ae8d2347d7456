//! The pairs of traces whose delays are timed. Levels in volts, times in nanoseconds.
//!
//! An invented bench: 10,000 samples 0.1 ns apart of a pulse that rises in 4 ns and decays in 40, the second one later
//! and half as high, with noise of 1 % of the first one's height.

use slope_bench::chance::Chance;
use slope_bench::record::{Bench, DetectorResponse, Digitiser};
use slope_evidence::trace::{DelayMethod, Recording, delay};

/// Samples of a trace.
pub const SAMPLES: usize = 10_000;
/// The light that falls on the second detector, over that on the first.
const LIGHT: f64 = 0.5;
/// Seed of the noise.
const SEED: u64 = 500;

/// The true delay of a pair, ns: from 20 ns on, another for each, and between two samples.
pub fn true_delay(pair: usize) -> f64 {
    20.0 + 40.0 * (pair as f64 * 0.618_034).fract()
}

/// The recording of a pair, both traces in it.
pub fn recording(pair: usize) -> Recording {
    let detector = DetectorResponse { decay: 40.0, ..DetectorResponse::default() };
    let digitiser = Digitiser { samples: SAMPLES, start: -300.0, ..Digitiser::default() };
    let bench = Bench { a: detector, b: detector, digitiser, fall_off: 0.0 };
    bench.record(true_delay(pair), LIGHT, &mut Chance::stream(SEED, pair as u64))
}

/// Pairs of traces in memory.
#[cfg_attr(target_arch = "wasm32", wasm_bindgen::prelude::wasm_bindgen)]
pub struct Traces(Vec<Recording>);

#[cfg_attr(target_arch = "wasm32", wasm_bindgen::prelude::wasm_bindgen)]
impl Traces {
    /// So many pairs.
    pub fn drawn(pairs: usize) -> Self {
        Self((0..pairs).map(recording).collect())
    }

    /// The delay of each pair by cross-correlation with its least squares, uncertainty worked out; NaN where it is
    /// refused.
    pub fn delays(&self) -> Vec<f64> {
        let method = DelayMethod::CrossCorrelation { refined: true };
        let of = |recording: &Recording| {
            let found = delay(&recording.waveform(0)?, &recording.waveform(1)?, method).ok()?;
            found.uncertainty.is_finite().then_some(found.delay)
        };
        self.0.iter().map(|recording| of(recording).unwrap_or(f64::NAN)).collect()
    }
}

impl Traces {
    /// All samples: of each pair the first trace and then the second.
    pub fn samples(&self) -> impl Iterator<Item = f64> {
        self.0
            .iter()
            .flat_map(|pair| pair.channels.iter().flat_map(|channel| channel.samples.iter().copied()))
    }
}
