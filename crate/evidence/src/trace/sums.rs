//! Sums over any stretch of a trace at once, and means over windows with ends between samples.
//!
//! Places are counted in samples. Between samples the trace is taken as straight, so that a mean over a window moves
//! smoothly as the window does.

use super::simd_sums::running;
use super::weights::Weights;
use super::whole;

/// Running sums of a trace counted from a level: all that a first look at it needs.
pub(super) struct RunningSums {
    /// The level from which the samples were counted first.
    level: f64,
    /// Sum of the samples before each, counted so.
    before: Vec<f64>,
    /// By how much higher the level is from which they are counted now.
    higher: f64,
    /// −1 where they are turned over, else 1.
    sign: f64,
}

/// A trace counted from its baseline and turned upright, with its running sums.
pub(super) struct Sums {
    pub samples: Vec<f64>,
    running: RunningSums,
}

impl RunningSums {
    /// Of a trace counted from a level.
    pub fn of(trace: &[f64], level: f64) -> Self {
        Self { level, before: running(trace, level), higher: 0.0, sign: 1.0 }
    }

    /// Sum of the samples before one.
    #[inline]
    fn up_to(&self, end: usize) -> f64 {
        self.sign * (self.before[end] - end as f64 * self.higher)
    }

    /// Whether all samples are finite, and their sum.
    pub fn is_finite(&self) -> bool {
        self.before.last().is_some_and(|sum| sum.is_finite())
    }

    /// Samples of the trace.
    pub fn len(&self) -> usize {
        self.before.len().saturating_sub(1)
    }

    /// Mean of the samples from `from` up to before `to`, cut to the trace.
    #[inline]
    pub fn mean(&self, from: usize, to: usize) -> f64 {
        let to = to.min(self.len());
        let from = from.min(to.saturating_sub(1));
        (self.up_to(to) - self.up_to(from)) / (to - from).max(1) as f64
    }

    /// Mean of `width` samples with their middle at a sample.
    #[inline]
    pub fn smooth(&self, at: usize, width: usize) -> f64 {
        let from = at.saturating_sub(width / 2);
        self.mean(from, at + width - width / 2)
    }

    /// The running sums before and after every stretch of `width` samples, as they were counted first: their difference is the
    /// stretch's sum.
    pub fn around(&self, width: usize) -> (&[f64], &[f64]) {
        let ends = self.before.get(width..).unwrap_or_default();
        (self.before.get(..ends.len()).unwrap_or_default(), ends)
    }
}

impl Sums {
    /// Of the trace whose sums are given, counted from a level higher by so much, and turned over where `sign` is −1.
    pub fn of(trace: &[f64], sums: RunningSums, higher: f64, sign: f64) -> Self {
        let counted = trace.iter().map(|sample| sign * ((sample - sums.level) - higher));
        Self { samples: counted.collect(), running: RunningSums { higher, sign, ..sums } }
    }

    pub fn len(&self) -> usize {
        self.samples.len()
    }

    /// As [`RunningSums::mean`].
    #[inline]
    pub fn mean(&self, from: usize, to: usize) -> f64 {
        self.running.mean(from, to)
    }

    /// As [`RunningSums::smooth`].
    #[inline]
    pub fn smooth(&self, at: usize, width: usize) -> f64 {
        self.running.smooth(at, width)
    }

    /// Integral up to a place.
    fn integral(&self, place: f64) -> f64 {
        let last = self.samples.len().saturating_sub(1);
        let place = place.clamp(0.0, last as f64);
        let at = whole(place).min(last);
        let part = place - at as f64;
        let (here, next) = (self.samples[at], self.samples[(at + 1).min(last)]);
        let up_to = self.running.up_to(at + 1) - 0.5 * (self.samples[0] + here);
        up_to + part * here + 0.5 * part * part * (next - here)
    }

    /// Mean over a window of half-width `reach` about a place.
    pub fn window(&self, middle: f64, reach: f64) -> f64 {
        (self.integral(middle + reach) - self.integral(middle - reach)) / (2.0 * reach)
    }

    /// Level at a place, from a window of half-width `reach` about it. Of a curve that bends, the mean over a window is off by
    /// a sixth of the bend times the square of the half-width, as its Taylor series shows; four thirds of the mean over half of
    /// the window less a third of that over all of it are not.
    pub fn level(&self, middle: f64, reach: f64) -> f64 {
        (4.0 * self.window(middle, 0.5 * reach) - self.window(middle, reach)) / 3.0
    }

    /// The weights that [`Self::level`] gives the samples.
    pub fn level_weights(&self, middle: f64, reach: f64) -> Weights {
        let mut weights = self.window_weights(middle, 0.5 * reach).scaled(4.0 / 3.0);
        weights.add(&self.window_weights(middle, reach), -1.0 / 3.0);
        weights
    }

    /// The weights that [`Self::window`] gives the samples.
    pub fn window_weights(&self, middle: f64, reach: f64) -> Weights {
        let last = self.samples.len().saturating_sub(1);
        let (low, high) = ((middle - reach).max(0.0), (middle + reach).min(last as f64));
        let (from, to) = (whole(low), (whole(high) + 1).min(last));
        let mut values = vec![0.0; to + 1 - from.min(to)];
        for at in from..to {
            let begin = (low - at as f64).max(0.0);
            let end = (high - at as f64).min(1.0);
            let second = 0.5 * (end * end - begin * begin) / (2.0 * reach);
            values[at - from] += (end - begin) / (2.0 * reach) - second;
            values[at - from + 1] += second;
        }
        Weights { from, values }
    }

    /// Where the level, each from a window of half-width `reach`, crosses one upwards, at or near a place: from there the place
    /// is widened to a bracket, then halved. Nothing if the trace ends first.
    pub fn crossing(&self, level: f64, near: f64, reach: f64, limit: f64) -> Option<f64> {
        let step = (0.25 * reach).clamp(0.25, limit);
        let (mut low, mut high) = (near, near);
        while self.level(low, reach) >= level {
            low -= step;
            if low < reach.min(1.0) || near - low > limit {
                return None;
            }
        }
        while self.level(high, reach) < level {
            high += step;
            if high > self.samples.len() as f64 - 1.0 || high - near > limit {
                return None;
            }
        }
        // The bracket's last step, where the crossing nearest to the start lies.
        if high > near {
            low = low.max(high - step);
        } else {
            high = high.min(low + step);
        }
        let (mut below, mut above) = (self.level(low, reach) - level, self.level(high, reach) - level);
        for _ in 0..60 {
            if high - low < 1e-12 * high.abs().max(1.0) {
                break;
            }
            // A straight guess kept off the ends, so that it never takes more steps than halving does.
            let share = (below / (below - above)).clamp(0.05, 0.95);
            let middle = low + share * (high - low);
            let value = self.level(middle, reach) - level;
            if value < 0.0 {
                (low, below) = (middle, value);
            } else {
                (high, above) = (middle, value);
            }
        }
        Some(f64::midpoint(low, high))
    }

    /// Slope, volts a sample, of the straight line through the samples from `from` to `to`, both counted in.
    pub fn slope(&self, from: usize, to: usize) -> f64 {
        let to = to.min(self.samples.len().saturating_sub(1));
        let from = from.min(to);
        let count = (to - from + 1) as f64;
        let half = (count - 1.0) / 2.0;
        let along =
            self.samples[from..=to].iter().enumerate().map(|(index, sample)| (index as f64 - half) * sample);
        along.sum::<f64>() / (count * (count * count - 1.0) / 12.0).max(f64::MIN_POSITIVE)
    }
}
