//! Recorded traces: files to samples, samples to edges, edges to a delay.
//!
//! ```text
//! bytes ──recognise──► Layout ──read──► Recording ──Pulse::find──► Pulse ──edge──► Edge ─┐
//!                                                                  Pulse ──edge──► Edge ─┴─► Delay
//! ```
//!
//! Times are in nanoseconds, levels in volts, rail distances in metres. Every estimate of a time is a linear function
//! of the samples near its solution, and its uncertainty follows from those weights and the noise of the quiet part: so
//! what two estimates share is counted once, and the uncertainty of their difference is right as well. An uncertainty is
//! of the noise of the traces alone; time base, channel skew and the like belong to the budget.
//!
//! Each stage refuses with the place: a [`ReadError`] names the file and the line, a [`TraceError`] the sample.

// Decimal numbers as files hold them.
mod fast_decimal;
// A number as a message tells it.
mod digits;
// What is stored of a flag or a refusal.
mod parts;
// Why a file or a trace is refused.
mod error;

// What samples show of their converter and of its noise.
mod simd_sums;
mod noise;

// How the numbers of a file are set out.
mod layout;
mod lines;
mod header;
mod even_steps;
mod read;
mod recognise;

// What a file's name tells.
mod name;

// From samples to times.
mod flag;
mod weights;
mod sums;
mod stretch;
mod limit;
mod pulse;
mod edge;
mod correlate;
mod echo;
mod delay;
mod walk;

// What the page asks of a pair of traces, and what it draws.
mod envelope;
mod measure;

pub use crate::decimal::DecimalMark;
pub use delay::{Delay, DelayMethod, TraceRefusal, delay, difference};
pub use digits::Digits;
pub use edge::{Edge, Method, edge};
pub use envelope::{Envelope, envelope};
pub use error::{ReadError, ReadProblem, TraceError};
pub use fast_decimal::number;
pub use flag::Flag;
pub use layout::{ColumnUnit, Delimiter, FileSetting, Layout, Role, TraceColumn};
pub use measure::{Asked, Drawn, Measured, Outcome, Side, measure};
pub use name::{Named, Pair, pair, rail_reading};
pub use noise::{Baseline, baseline};
pub use parts::{Parts, PartsError};
pub use pulse::Pulse;
pub use read::read;
pub use recognise::{first_rows, recognise, recognise_by};
pub use walk::{Walk, compare_walk};

use serde::{Deserialize, Serialize};

/// The samples of one file.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Recording {
    /// Time of the first sample, ns; 0 where nothing tells it.
    pub start: f64,
    /// Whether the file tells that time.
    pub is_start_told: bool,
    /// Whether the unit of its times stands nowhere, and was supposed.
    pub is_unit_supposed: bool,
    /// From one sample to the next, ns; above 0.
    pub step: f64,
    /// By what share of `step` a step of the times in the file differs from it at most, where the samples were carried to
    /// equal steps; 0 where they were taken at such.
    pub uneven: f64,
    /// The channels, in the order of the file's columns.
    pub channels: Vec<Channel>,
    /// What the file says beside the samples.
    pub settings: Vec<FileSetting>,
}

/// One channel of a recording.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Channel {
    /// Which detector the layout takes it for.
    pub detector: Option<Detector>,
    /// As the file's header has it; may be empty.
    pub label: String,
    /// Volts.
    pub samples: Vec<f64>,
}

/// One of the two detectors.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema, ts_rs::TS))]
pub enum Detector {
    /// The fixed one, the start.
    A,
    /// The one at the end of the path, the stop.
    B,
}

impl Recording {
    /// A channel as a waveform.
    pub fn waveform(&self, channel: usize) -> Option<Waveform<'_>> {
        let samples = &self.channels.get(channel)?.samples;
        Some(Waveform { start: self.start, step: self.step, uneven: self.uneven, samples })
    }

    /// The channel of a detector.
    pub fn detector(&self, detector: Detector) -> Option<Waveform<'_>> {
        let index = self.channels.iter().position(|channel| channel.detector == Some(detector))?;
        self.waveform(index)
    }
}

/// Equally spaced samples of one voltage.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Waveform<'a> {
    /// Time of the first sample, ns.
    pub start: f64,
    /// From one sample to the next, ns; above 0.
    pub step: f64,
    /// As [`Recording::uneven`].
    pub uneven: f64,
    /// Volts.
    pub samples: &'a [f64],
}

impl Waveform<'_> {
    /// The time of a place counted in samples, ns.
    pub fn time(&self, place: f64) -> f64 {
        self.start + place * self.step
    }
}

/// A place that is not below 0, counted in samples, rounded down.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "the cast saturates, as is meant"
)]
fn whole(place: f64) -> usize {
    place as usize
}
