//! The time of an edge, by a fixed level, a constant fraction, or a line drawn down to the baseline.
//!
//! A crossing is taken from the samples of a window, some two fifths of the rise to each side, less for traces of little noise: where
//! the level at its middle is the one looked for. The slope does not matter there, and its noise neither; nor does the bend, of
//! which two traces with other noise, so with other windows, would each have another share.

use serde::{Deserialize, Serialize};

use super::stretch::Stretch;
use super::weights::Weights;
use super::{Baseline, Digits, Flag, Pulse, TraceError, Waveform, whole};

/// How the time of an edge is taken.
#[derive(Clone, Copy, PartialEq, Debug, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", tag = "method")]
pub enum Method {
    /// Where it crosses a level.
    FixedLevel {
        /// Over the trace's own baseline, V; above 0, also for a pulse that goes down.
        volts: f64,
    },
    /// Where it crosses a fraction of its own height.
    ConstantFraction {
        /// From 0.1 to 0.9.
        fraction: f64,
    },
    /// Where a line through 10 to 90 % of it meets the baseline.
    EdgeLine,
}

impl Default for Method {
    fn default() -> Self {
        Self::ConstantFraction { fraction: 0.5 }
    }
}

/// The time of an edge.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Edge {
    /// ns.
    pub time: f64,
    /// Its standard uncertainty, from the noise of the trace and from what lies between its samples, ns.
    pub uncertainty: f64,
    /// dV/dt at the crossing of the upright pulse, V/ns.
    pub slope: f64,
    /// Noise of one sample over that slope, ns: the jitter of a single crossing (common practice in nuclear timing).
    pub jitter: f64,
    /// Level crossed, V, as on the trace.
    pub level: f64,
    /// Baseline, V.
    pub baseline: f64,
    /// Standard deviation of the noise, V.
    pub sigma: f64,
    /// Height over the baseline, V.
    pub height: f64,
    /// Its standard uncertainty, V.
    pub height_uncertainty: f64,
    /// From 10 to 90 %, ns.
    pub rise: f64,
    /// The sample nearest to the crossing.
    pub sample: usize,
    /// What else is to be known.
    pub flags: Vec<Flag>,
}

/// Uncertainties above this share of the rise are refused: the edge is not straight over them.
const HIDDEN: f64 = 0.25;
/// Half-width of the window of a crossing, over the rise.
const REACH: f64 = 0.38;
/// Noise over height from which on the whole window is taken.
const AVERAGED: f64 = 0.01;

/// The time of the edge of a trace.
///
/// # Errors
/// What [`Pulse::find`] and [`Pulse::edge`] refuse.
pub fn edge(wave: &Waveform<'_>, method: &Method) -> Result<Edge, TraceError> {
    Pulse::find(wave)?.edge(method)
}

impl Pulse<'_> {
    /// The time of the edge.
    ///
    /// # Errors
    /// Levels that are not on the edge, edges that the noise hides, too few samples for a line.
    pub fn edge(&self, method: &Method) -> Result<Edge, TraceError> {
        self.timed(method).map(|(edge, _)| edge)
    }

    /// The edge, and its time in samples as a sum of weighted samples.
    pub(super) fn timed(&self, method: &Method) -> Result<(Edge, Weights), TraceError> {
        match *method {
            Method::FixedLevel { volts } => self.crossing(volts, None),
            Method::ConstantFraction { fraction } => {
                if !(0.1..=0.9).contains(&fraction) {
                    return Err(TraceError::Fraction { fraction: Digits::of(fraction, 4) });
                }
                self.crossing(fraction * self.height, Some(fraction))
            }
            Method::EdgeLine => self.edge_line(),
        }
    }

    fn crossing(&self, level: f64, fraction: Option<f64>) -> Result<(Edge, Weights), TraceError> {
        let left = self.baseline.sigma / (0.6 * self.rise).max(1.0).sqrt();
        let (lowest, highest) =
            (3.0 * left.max(0.01 * self.height), self.height - 2.0 * left.max(0.02 * self.height));
        let off = || level_off(level, lowest, highest);
        if level.is_nan() || (fraction.is_none() && !(lowest..=highest).contains(&level)) {
            return Err(off());
        }
        let crossed = self.crossed(level, fraction).ok_or_else(off)?;
        self.finish(crossed.place, crossed.slope, level, crossed.weights)
    }

    /// Where the edge crosses a level; with a fraction of the height, the uncertainty of the height goes into it.
    fn crossed(&self, level: f64, fraction: Option<f64>) -> Option<Crossed> {
        // Less far near foot and top, where a window would see other things than the edge.
        let share = level / self.height;
        // Nor farther than the noise asks for: without any, the crossing is that of the straight line between two samples.
        let noisy = (self.baseline.sigma / self.height / AVERAGED).clamp(0.1, 1.0);
        let reach = (REACH * noisy * self.rise * (4.0 * share * (1.0 - share)).max(0.4)).max(noisy);
        let near = self.way_up(level, self.peak).unwrap_or(self.middle);
        let place = self.sums.crossing(level, near, reach, 2.0 * self.rise + self.width as f64)?;
        let slope = self.slope_at(place, reach).max(self.least_slope());
        let mut weights = self.sums.level_weights(place, reach).scaled(-1.0 / slope);
        if let Some(fraction) = fraction {
            weights.add(&self.height_weights, fraction / slope);
        }
        Some(Crossed { place, slope, weights })
    }

    fn edge_line(&self) -> Result<(Edge, Weights), TraceError> {
        let at = |share: f64| {
            let level = share * self.height;
            self.crossed(level, Some(share)).ok_or_else(|| level_off(level, 0.0, self.height))
        };
        let (low, high) = (at(0.1)?, at(0.9)?);
        let sample = whole(self.middle.round());
        if high.place - low.place < 2.0 {
            let samples = whole((high.place - low.place).max(0.0).round());
            return Err(TraceError::FewOnEdge { sample, samples, needed: 2 });
        }
        let line = Stretch::of(&self.sums.samples, low.place, high.place);
        if line.slope <= 0.0 {
            return Err(self.hidden(self.rise));
        }
        let of_slope = line.slope_weights();
        // 1/slope of a noisy slope is too large on average, by its relative variance.
        let relative = of_slope.variance(&self.baseline) / (line.slope * line.slope);
        let back = line.mean / line.slope;
        let place = line.middle - back * (1.0 - relative);
        let mut weights = line.mean_weights().scaled(-1.0 / line.slope);
        weights.add(&of_slope, back / line.slope);
        // The line also hangs on where the edge begins and ends, as far as the ends lie off it.
        for (end, share, sign) in [(&low, 0.1, -1.0), (&high, 0.9, 1.0)] {
            let far = end.place - line.middle;
            let counts = (back * far / line.spread - 1.0 / line.total) / line.slope;
            let off = share * self.height - line.mean - line.slope * far;
            weights.add(&end.weights, sign * counts * off);
        }
        self.finish(place, line.slope, 0.0, weights)
    }

    /// Refuses an edge whose place is as uncertain as so many samples.
    fn hidden(&self, samples: f64) -> TraceError {
        TraceError::Hidden {
            sample: whole(self.middle.round()),
            uncertainty: Digits::of(samples * self.wave.step, 4),
            rise: Digits::of(self.rise * self.wave.step, 4),
        }
    }

    /// By how much an edge may lie elsewhere than its samples tell, since nothing is known between them: a standard
    /// uncertainty, in samples. Between two samples the edge is taken as straight, which is off by its bend over their
    /// distance, so by the inverse square of the rise. On simulated edges of 1.1 to 7 samples with noise of a thousandth the
    /// estimators were off by up to 0.2 over that square, more only at a fifth of the height and for the line through the
    /// edge from a rise of three samples on: up to 0.4, a fiftieth of a sample or so.
    ///
    /// Of samples that were carried to equal steps the widest step counts: each was carried along a straight line too, over
    /// half of such a step at most.
    pub(super) fn between_samples(&self) -> f64 {
        let widest = 1.0 + self.wave.uneven;
        0.2 * widest * widest / (self.rise * self.rise)
    }

    fn finish(
        &self,
        place: f64,
        slope: f64,
        level: f64,
        weights: Weights,
    ) -> Result<(Edge, Weights), TraceError> {
        let step = self.wave.step;
        let between = self.between_samples();
        let uncertainty = (weights.variance(&self.baseline) + between * between).sqrt();
        if !uncertainty.is_finite() {
            return Err(self.hidden(self.rise));
        }
        if uncertainty > HIDDEN * self.rise.max(2.0) {
            return Err(self.hidden(uncertainty));
        }
        let mut flags = self.flags.clone();
        if self.rise < 3.0 {
            flags.push(Flag::FewOnEdge { samples: whole(self.rise.round()) });
        }
        if uncertainty > 0.1 * self.rise {
            flags.push(Flag::Rough);
        }
        let Baseline { level: baseline, sigma, .. } = self.baseline;
        let sign = if self.inverted { -1.0 } else { 1.0 };
        let edge = Edge {
            time: self.wave.time(place),
            uncertainty: uncertainty * step,
            slope: slope / step,
            jitter: sigma / slope * step,
            level: baseline + sign * level,
            baseline,
            sigma,
            height: self.height,
            height_uncertainty: self.height_uncertainty,
            rise: self.rise * step,
            sample: whole(place.max(0.0).round()),
            flags,
        };
        Ok((edge, weights))
    }
}

/// Refuses a level that is not on the edge, all in V over the baseline.
fn level_off(level: f64, lowest: f64, highest: f64) -> TraceError {
    let [level, lowest, highest] = [level, lowest, highest].map(|volts| Digits::of(volts, 4));
    TraceError::Level { level, lowest, highest }
}

/// A crossing in samples: its place, volts a sample there, and the place as a sum of weighted samples.
struct Crossed {
    place: f64,
    slope: f64,
    weights: Weights,
}

#[cfg(test)]
#[path = "edge_test.rs"]
mod tests;
