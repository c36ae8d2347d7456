//! The time of an edge, by a fixed level, a constant fraction, or a line drawn down to the baseline.
//!
//! A crossing is that of the mean over a window with the level, the window being about a quarter of the rise to each
//! side: a line fitted to the samples there has that mean at its middle, so where the middle lies on the level the slope
//! of the line does not matter, and its noise neither.

use serde::{Deserialize, Serialize};

use super::weights::Weights;
use super::{Baseline, Pulse, TraceError, Waveform, whole};

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

/// What is to be known of an edge beside its time. Samples count from 0.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", tag = "flag")]
#[non_exhaustive]
pub enum Flag {
    /// The pulse goes down; it was turned over.
    Inverted,
    /// The height is below 5 standard deviations of the noise, though not beyond doubt.
    Noisy,
    /// Another edge crosses half the height.
    DoubleEdge {
        /// Where.
        sample: usize,
    },
    /// Something stands out of the part before the pulse.
    NotQuiet {
        /// Where.
        sample: usize,
    },
    /// Neighbouring samples share their noise; the uncertainties take it into account.
    CorrelatedNoise {
        /// How far, in samples.
        samples: usize,
    },
    /// Fewer than 3 samples lie between 10 and 90 %: the crossing hangs on the straight line between two.
    FewOnEdge {
        /// About how many there are.
        samples: usize,
    },
    /// The uncertainty is over a tenth of the rise: how well it is known itself begins to suffer.
    Rough,
}

/// The time of an edge.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct Edge {
    /// ns.
    pub time: f64,
    /// Its standard uncertainty, from the noise of the trace alone, ns.
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
const REACH: f64 = 0.3;

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
                    return Err(TraceError::Fraction { fraction });
                }
                self.crossing(fraction * self.height, Some(fraction))
            }
            Method::EdgeLine => self.edge_line(),
        }
    }

    fn crossing(&self, level: f64, fraction: Option<f64>) -> Result<(Edge, Weights), TraceError> {
        let sums = &self.sums;
        let left = self.baseline.sigma / (0.6 * self.rise).max(1.0).sqrt();
        let (lowest, highest) =
            (3.0 * left.max(0.01 * self.height), self.height - 2.0 * left.max(0.02 * self.height));
        let off = TraceError::Level { level, lowest, highest };
        if level.is_nan() || (fraction.is_none() && !(lowest..=highest).contains(&level)) {
            return Err(off);
        }
        // No further than to where the edge has turned: a window over foot or top would see other things.
        let share = level / self.height;
        let reach = (REACH * self.rise * (4.0 * share * (1.0 - share)).max(0.4)).max(1.0);
        let near = self.way_up(level, self.top[1]).unwrap_or(self.middle);
        let place = sums.crossing(level, near, reach, 2.0 * self.rise + self.width as f64).ok_or(off)?;
        let slope = self.slope_at(place);
        let mut weights = sums.window_weights(place, reach).scaled(-1.0 / slope);
        if let Some(fraction) = fraction {
            weights.add(&self.height_weights, fraction / slope);
        }
        self.finish(place, slope, level, weights)
    }

    /// Volts a sample about a place, from as much of the edge as is nearly straight.
    fn slope_at(&self, place: f64) -> f64 {
        let reach = (0.45 * self.rise).max(1.0);
        let line = self.sums.line(whole((place - reach).max(0.0).round()), whole((place + reach).round()));
        let steepest = 0.8 * self.height / self.rise;
        if line.slope > 0.1 * steepest { line.slope } else { 0.1 * steepest }
    }

    fn edge_line(&self) -> Result<(Edge, Weights), TraceError> {
        let sums = &self.sums;
        let reach = (0.2 * self.rise).max(1.0);
        let limit = 2.0 * self.rise + self.width as f64;
        let at = |share: f64| {
            let level = share * self.height;
            let near = self.way_up(level, self.top[1]).unwrap_or(self.middle);
            sums.crossing(level, near, reach, limit).ok_or(TraceError::Level {
                level,
                lowest: 0.0,
                highest: self.height,
            })
        };
        let (low, high) = (at(0.1)?, at(0.9)?);
        let sample = whole(self.middle.round());
        let (from, to) = (whole(low.ceil()), whole(high.floor()));
        if to < from + 2 {
            return Err(TraceError::FewOnEdge { sample, samples: (to + 1).saturating_sub(from), needed: 3 });
        }
        let line = sums.line(from, to);
        if line.slope <= 0.0 {
            return Err(self.hidden(f64::INFINITY));
        }
        let of_slope: Weights = Weights {
            from: line.from,
            values: (line.from..=line.to).map(|at| (at as f64 - line.middle) / line.spread).collect(),
        };
        // 1/slope of a noisy slope is too large on average, by its relative variance.
        let relative = of_slope.variance(&self.baseline) / (line.slope * line.slope);
        let back = line.mean / line.slope;
        let place = line.middle - back * (1.0 - relative);
        let count = (line.to - line.from + 1) as f64;
        let mut weights =
            Weights { from: line.from, values: vec![-1.0 / (count * line.slope); line.to - line.from + 1] };
        weights.add(&of_slope, back / line.slope);
        self.finish(place, line.slope, 0.0, weights)
    }

    fn hidden(&self, samples: f64) -> TraceError {
        TraceError::Hidden {
            sample: whole(self.middle.round()),
            uncertainty: samples * self.wave.step,
            rise: self.rise * self.wave.step,
        }
    }

    fn finish(
        &self,
        place: f64,
        slope: f64,
        level: f64,
        weights: Weights,
    ) -> Result<(Edge, Weights), TraceError> {
        let step = self.wave.step;
        let uncertainty = weights.variance(&self.baseline).sqrt();
        if uncertainty.is_nan() || uncertainty > HIDDEN * self.rise.max(2.0) {
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

#[cfg(test)]
#[path = "edge_test.rs"]
mod tests;
