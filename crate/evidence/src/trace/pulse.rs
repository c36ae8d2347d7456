//! The pulse of a trace: which way it goes, its baseline, height and rise.
//!
//! A trace is smoothed just so much that the noise left is a few per cent of the height; on that curve the top is found, of
//! several pulses that of the first, then the edge before it, then the quiet part before the edge. The height comes from a parabola through the samples
//! about the top: from all of them, not from the highest, which noise would have raised.

use super::limit::Limit;
use super::noise::{baseline_of, quantum};
use super::stretch::Stretch;
use super::sums::{RunningSums, Sums};
use super::weights::Weights;
use super::{Baseline, Digits, Flag, TraceError, Waveform};

/// Samples that a trace must have.
const SAMPLES: usize = 32;
/// Samples that the quiet part must have.
const QUIET: usize = 12;
/// Samples that are looked at together.
const BLOCK: usize = 64;
/// Noise left by the smoothing, over the height.
const SMOOTH: f64 = 0.06;
/// Heights below so many standard deviations of the noise are flagged as noisy (common practice, no source).
const NOISY: f64 = 5.0;
/// Steps that differ by less, as a share of the mean one, are equal for all that an edge shows of it (common practice, no
/// source).
const UNEVEN: f64 = 0.01;
/// Where the top begins behind the middle of the edge, in rises.
const BEGIN: f64 = 0.65;
/// Where it begins at the latest, as a share of the way from three quarters of the height on the edge to where the trace falls
/// below these again. On simulated pulses that are all roundness (Lorentz, Gauss, hyperbolic secant) the fewest delays were off
/// by more than four standard uncertainties up to here; at 0 the uncertainties came out too large instead.
const LATEST: f64 = 0.1;
/// Below so many they are no pulse. The gap to the flag is wider than what the noise makes of a height, so that a run
/// just above the flag loses none of its traces, which would be those that noise made low.
const NO_PULSE: f64 = 4.0;

/// The pulse of a trace.
pub struct Pulse<'a> {
    /// The trace.
    pub wave: Waveform<'a>,
    /// Baseline and noise before the pulse.
    pub baseline: Baseline,
    /// The pulse goes down; all levels and heights are told as if it went up.
    pub inverted: bool,
    /// Height over the baseline, V.
    pub height: f64,
    /// Its standard uncertainty, V.
    pub height_uncertainty: f64,
    /// From 10 to 90 % of the height, in samples.
    pub rise: f64,
    /// Where the smoothed edge has half its height, in samples.
    pub middle: f64,
    /// Samples of the quiet part, from the first.
    pub quiet: usize,
    /// From and to of the samples from which the height was taken, counted in samples.
    pub top: [f64; 2],
    /// What is to be known of it.
    pub flags: Vec<Flag>,
    /// Counted from the baseline, upright.
    pub(super) sums: Sums,
    /// The height as a sum of weighted samples.
    pub(super) height_weights: Weights,
    /// Where the smoothed trace first comes near the top: behind it a flat top may dip in its noise.
    pub(super) peak: usize,
    /// Samples over which it was smoothed to be found.
    pub(super) width: usize,
}

impl<'a> Pulse<'a> {
    /// Finds the pulse of a trace.
    ///
    /// # Errors
    /// Too few samples, none finite, no pulse, a clipped one, one without a quiet part before it or without its top.
    pub fn find(wave: &Waveform<'a>) -> Result<Self, TraceError> {
        let samples = wave.samples;
        if samples.len() < SAMPLES {
            return Err(TraceError::FewSamples { samples: samples.len(), needed: SAMPLES });
        }
        if !wave.step.is_finite() || wave.step <= 0.0 {
            return Err(TraceError::Step { step: Digits::of(wave.step, 4) });
        }
        let few = TraceError::FewSamples { samples: samples.len(), needed: SAMPLES };
        let head = (samples.len() / 20).clamp(16, 512);
        let quantum = quantum(samples);
        let begin = baseline_of(&samples[..head], quantum).ok_or(few.clone())?;
        let sums = RunningSums::of(samples, begin.level);
        if !sums.is_finite()
            && let Some(sample) = samples.iter().position(|sample| !sample.is_finite())
        {
            return Err(TraceError::NotFinite { sample });
        }
        let rough = Rough::of(&sums, &begin)?;
        let quiet = rough
            .quiet_end()
            .filter(|end| *end >= QUIET)
            .ok_or(TraceError::NoBaseline { sample: rough.foot.unwrap_or(0) })?;
        let noise = baseline_of(&samples[..quiet], quantum).ok_or(few)?;

        let sign = if rough.inverted { -1.0 } else { 1.0 };
        let sums = Sums::of(samples, sums, noise.level - begin.level, sign);
        let mut pulse = Self {
            wave: *wave,
            baseline: noise,
            inverted: rough.inverted,
            height: rough.height,
            height_uncertainty: 0.0,
            rise: 1.0,
            middle: rough.half,
            quiet,
            top: [rough.peak as f64; 2],
            flags: Vec::new(),
            sums,
            height_weights: Weights::default(),
            peak: rough.peak,
            width: rough.width,
        };
        pulse.measure_top(rough.peak)?;
        let limit = Limit::of(&pulse.sums.samples, pulse.top, &pulse.baseline);
        let volts = || Digits::of(sign * limit.level + pulse.baseline.level, 4);
        if limit.cuts() {
            return Err(TraceError::Clipped {
                sample: limit.first,
                samples: limit.samples(),
                limit: volts(),
            });
        }
        let flat_top = limit.may_cut().then(|| Flag::FlatTop { volts: volts() });
        if pulse.height < NO_PULSE * pulse.baseline.sigma {
            return Err(TraceError::NoPulse {
                height: Digits::of(pulse.height, 4),
                noise: Digits::of(pulse.baseline.sigma, 4),
                sample: rough.peak,
            });
        }
        pulse.note_flags();
        pulse.flags.extend(flat_top);
        Ok(pulse)
    }

    /// Smoothed level at a sample.
    pub(super) fn smooth(&self, at: usize) -> f64 {
        self.sums.smooth(at, self.width)
    }

    /// The last sample before `from` at which the smoothed trace is below a level.
    fn last_below(&self, level: f64, from: usize) -> Option<usize> {
        (0..from).rev().find(|at| self.smooth(*at) < level)
    }

    /// Where the smoothed trace crosses a level on its way up to the top.
    pub(super) fn way_up(&self, level: f64, from: usize) -> Option<f64> {
        let below = self.last_below(level, from)?;
        let (low, high) = (self.smooth(below), self.smooth(below + 1));
        let even = self.width.is_multiple_of(2);
        let share = if high > low { (level - low) / (high - low) } else { 0.5 };
        // The middle of an even number of samples lies half a sample before.
        Some(below as f64 + share.clamp(0.0, 1.0) - if even { 0.5 } else { 0.0 })
    }

    /// Height, rise and middle of the edge, three times over, since each needs the other.
    fn measure_top(&mut self, peak: usize) -> Result<(), TraceError> {
        let last = self.sums.len() - 1;
        let mut found = Crossings::default();
        for round in 0..3 {
            // Once the rise is known, as much smoothing as it bears.
            if round > 0 {
                self.width = self.width.max(super::whole((0.3 * self.rise).round()));
            }
            let begin = super::whole(self.middle);
            let peak = (begin..peak).find(|at| self.smooth(*at) >= 0.9 * self.height).unwrap_or(peak);
            self.peak = peak;
            let at = |share: f64| {
                self.way_up(share * self.height, peak).ok_or(TraceError::NoBaseline { sample: 0 })
            };
            let mut crossings = Crossings([at(0.25)?, at(0.5)?, at(0.75)?, f64::INFINITY]);
            self.middle = crossings.0[1];
            self.rise = crossings.rise(self.width);
            crossings.0[3] = self.way_down(peak, crossings.top(self.width)[1]);
            self.top = crossings.top(self.width);
            if self.top[1] > last as f64 {
                return Err(TraceError::NoTop { last });
            }
            self.height_weights = self.height_by(&crossings);
            self.height = self.height_weights.of(&self.sums.samples);
            found = crossings;
        }
        self.height_weights = self.with_crossings(&found);
        self.height_uncertainty = self.height_weights.variance(&self.baseline).sqrt();
        Ok(())
    }

    /// Where the smoothed trace falls below three quarters of the height, if that is within a top that ends there at the latest.
    fn way_down(&self, peak: usize, latest: f64) -> f64 {
        let low = 0.75 * self.height;
        let begin = peak.max(super::whole(self.middle + BEGIN * self.rise));
        for at in begin..super::whole(latest).min(self.sums.len() - 1) {
            let (here, next) = (self.smooth(at), self.smooth(at + 1));
            if next < low {
                let share = if here > low { (here - low) / (here - next) } else { 0.0 };
                return at as f64 + share;
            }
        }
        f64::INFINITY
    }

    /// Level of a parabola through the samples of the top, 0.55 rises behind its begin (or in the middle of a shorter
    /// top). The place hangs on the edge, not on the samples of the top: their highest would be one that noise raised.
    fn height_by(&self, crossings: &Crossings) -> Weights {
        let [from, to] = crossings.top(self.width);
        let place = (from + 0.55 * crossings.rise(self.width)).min(f64::midpoint(from, to));
        Stretch::of(&self.sums.samples, from, to).parabola_at(place)
    }

    /// The weights of the height with what the crossings put in that say where it is taken: noise moves these, and where the
    /// top is not level the height goes along. A crossing of a share of the height moves by (share · dH − dy) over the slope
    /// there; with the height's own weights that is its whole differential, to which the law of propagation applies
    /// (JCGM 100:2008, 5.1.2 and note 2).
    fn with_crossings(&self, crossings: &Crossings) -> Weights {
        let step = 0.1 * self.rise.max(2.0);
        let mut weights = self.height_weights.clone();
        let mut own = 0.0;
        for (index, share) in [0.25, 0.5, 0.75, 0.75].into_iter().enumerate() {
            let place = crossings.0[index];
            if !place.is_finite() {
                continue;
            }
            let moved = |by: f64| {
                let mut moved = *crossings;
                moved.0[index] += by;
                self.height_by(&moved).of(&self.sums.samples)
            };
            let change = (moved(step) - moved(-step)) / (2.0 * step);
            let steepness = self.slope_at(place, 0.4 * self.rise).abs().max(self.least_slope());
            let slope = if index == 3 { -steepness } else { steepness };
            weights.add(&self.sums.window_weights(place, 0.5 * self.width as f64), -change / slope);
            own += change * share / slope;
        }
        // Each of the three rounds goes by the height of the one before. A larger share of its own than half is noise.
        let own = own.clamp(-0.5, 0.5);
        weights.scaled(1.0 + own + own * own)
    }

    /// Volts a sample about a place: from the window itself where the noise allows it, from more of the edge where not.
    pub(super) fn slope_at(&self, place: f64, reach: f64) -> f64 {
        let noise = self.baseline.sigma / self.height;
        // A line over nine tenths of the window: stated uncertainties are then those of simulated edges of many shapes.
        let reach = (0.9 * reach).max((0.15 + 1.5 * noise).min(0.45) * self.rise);
        // However small the window, there is a sample to either side.
        let (from, to) =
            ((place - reach).round().min(place.floor()), (place + reach).round().max(place.floor() + 1.0));
        self.sums.slope(super::whole(from.max(0.0)), super::whole(to))
    }

    /// Volts a sample that an edge has at least.
    pub(super) fn least_slope(&self) -> f64 {
        0.1 * self.height / self.rise
    }

    fn note_flags(&mut self) {
        let noise = &self.baseline;
        let mut flags = Vec::new();
        if self.inverted {
            flags.push(Flag::Inverted);
        }
        if self.height < NOISY * noise.sigma {
            flags.push(Flag::Noisy);
        }
        if self.wave.uneven > UNEVEN {
            flags.push(Flag::UnevenSteps { percent: Digits::of(100.0 * self.wave.uneven, 2) });
        }
        if !noise.correlation.is_empty() {
            flags.push(Flag::CorrelatedNoise { samples: noise.correlation.len() });
        }
        let left = noise.uncertainty * (self.quiet as f64 / self.width.min(self.quiet) as f64).sqrt();
        let left = left.min(noise.sigma);
        let quiet = (0..self.quiet.saturating_sub(self.width)).step_by(self.width.div_ceil(2));
        let loudest =
            quiet.map(|at| (self.smooth(at).abs(), at)).max_by(|one, other| one.0.total_cmp(&other.0));
        let loud = loudest.filter(|(level, _)| *level > 6.0 * left && *level > 2.0 * noise.quantum);
        if let Some(sample) = loud.map(|(_, sample)| sample).or_else(|| self.shoulder()) {
            flags.push(Flag::NotQuiet { sample });
        }
        let third = self.quiet / 3;
        let volts = self.sums.mean(self.quiet - third, self.quiet) - self.sums.mean(0, third);
        // The difference of two thirds has √6 times the uncertainty of the whole. Of white noise: a drift looks like noise
        // that neighbours share, and would hide itself. Noise that is truly shared has some twice as much.
        let white = noise.sigma / (self.quiet as f64).sqrt();
        if volts.abs() > (12.0 * 2.45 * white).max(0.005 * self.height) {
            flags.push(Flag::Drift { volts: Digits::of(volts, 3) });
        }
        if let Some(sample) = self.second_edge() {
            flags.push(Flag::DoubleEdge { sample });
        }
        self.flags = flags;
    }

    /// How far over the baseline the smoothed trace is something else than noise, as a share of the height: 4 standard
    /// deviations, and a tenth at least.
    fn margin(&self) -> f64 {
        (4.0 * self.baseline.sigma / (self.width as f64).sqrt() / self.height).clamp(0.1, 0.4)
    }

    /// Something that stands out between the quiet part and the edge, as where the pulse rises from what an earlier, smaller one
    /// left: the edge would be timed from a baseline that is not its own. How long the edge is is taken from where it is
    /// steepest, since its rise may hold the other one too. An edge by itself has less than a tenth of its height so long before
    /// its middle: a logistic one 0.4 %, a Gaussian pulse 0.2 %, an exponential one 3 %.
    fn shoulder(&self) -> Option<usize> {
        let length = self.height / self.steepest();
        let until = super::whole(self.middle - 1.4 * length - 0.5 * self.width as f64);
        let least = self.margin() * self.height;
        (self.quiet..until).find(|at| self.smooth(*at).abs() > least)
    }

    /// Volts a sample where the edge is steepest, of lines over an eighth of the rise.
    fn steepest(&self) -> f64 {
        let span = super::whole(self.rise / 8.0).max(2);
        let (from, to) = (self.middle - 0.5 * self.rise, self.middle + 0.5 * self.rise);
        let places = (super::whole(from.max(0.0))..super::whole(to)).step_by(span.div_ceil(2));
        places.map(|at| self.sums.slope(at, at + span)).fold(self.height / self.rise, f64::max)
    }

    /// Another edge that crosses half the height: before the one taken, or after it.
    fn second_edge(&self) -> Option<usize> {
        let (low, high) = ((0.5 - self.margin()) * self.height, 0.55 * self.height);
        let start = super::whole(self.middle - self.rise);
        let before = (self.quiet..start).find(|at| self.smooth(*at) > high);
        let mut fell = false;
        // A smoothed edge is not passed over in steps of half the smoothing.
        let steps = (super::whole(self.top[1])..self.sums.len()).step_by(self.width.div_ceil(2));
        let mut after = steps.skip_while(|at| {
            let level = self.smooth(*at);
            fell |= level < low;
            !(fell && level > high)
        });
        let after = after.next();
        before.or(after)
    }
}

/// Where the smoothed trace crosses a quarter, a half and three quarters of the height on its way up, and three quarters on its
/// way down, in samples; the last is infinite where the top ends before.
#[derive(Clone, Copy, Default)]
struct Crossings([f64; 4]);

impl Crossings {
    /// A normal edge has 1.9 times as long from 10 to 90 % as from 25 to 75 %; a straight one 1.6 times. A mean over w samples
    /// adds w²/12 to the variance of an edge.
    fn rise(&self, width: usize) -> f64 {
        let [quarter, _, high, _] = self.0;
        let (width, seen) = (width as f64, high - quarter);
        let smear = 1.349 * 1.349 * (width * width - 1.0) / 12.0;
        let between = (seen * seen - smear).max(0.25 * seen * seen).sqrt();
        (1.75 * between).max(1.0)
    }

    /// Where the top begins and ends: two rises behind its begin, or earlier where the smoothed trace falls. A top that falls
    /// soon begins near the edge: of less than its whole roundness a parabola would give a height that hangs on the samples.
    fn top(&self, width: usize) -> [f64; 2] {
        let [_, middle, high, fall] = self.0;
        let rise = self.rise(width);
        let from = (middle + BEGIN * rise).min(high + LATEST * (fall - high));
        let to = (from + (2.0 * rise).max(2.0)).min(fall);
        [from.min(to - 2.0), to]
    }
}

/// A first look, on the trace as it is.
struct Rough {
    inverted: bool,
    height: f64,
    width: usize,
    peak: usize,
    half: f64,
    /// The last sample before the edge that is near the baseline.
    foot: Option<usize>,
    middle: usize,
}

impl Rough {
    fn of(sums: &RunningSums, begin: &Baseline) -> Result<Self, TraceError> {
        let most = (sums.len() / 32).clamp(1, 128);
        let mut width = 1;
        let (mut height, mut peak) = extreme(sums, width);
        for _ in 0..3 {
            let noise = begin.sigma / (SMOOTH * height.abs()).max(f64::MIN_POSITIVE);
            let wanted = super::whole((noise * noise).ceil()).clamp(1, most);
            if wanted == width {
                break;
            }
            width = wanted;
            (height, peak) = extreme(sums, width);
        }
        let noise = begin.sigma / (width as f64).sqrt();
        if height == 0.0 || height.abs() < 5.5 * noise {
            return Err(TraceError::NoPulse {
                height: Digits::of(height.abs(), 4),
                noise: Digits::of(begin.sigma, 4),
                sample: peak,
            });
        }
        let sign = height.signum();
        let (height, peak) = first_top(sums, width, sign, height.abs(), peak)
            .map_or((height.abs(), peak), |first| (sign * sums.smooth(first, width), first));
        let below = |share: f64, from: usize| {
            (0..from).rev().find(|at| sign * sums.smooth(*at, width) < share * height)
        };
        let no_baseline = TraceError::NoBaseline { sample: 0 };
        let middle = below(0.5, peak).ok_or(no_baseline)?;
        Ok(Self {
            inverted: sign < 0.0,
            height,
            width,
            peak,
            half: middle as f64 + 0.5,
            foot: below(0.1, middle + 1),
            middle,
        })
    }

    /// Where the quiet part ends: as far before the foot of the edge as twice the way from foot to middle.
    fn quiet_end(&self) -> Option<usize> {
        let foot = self.foot?;
        foot.checked_sub(2 * (self.middle - foot) + self.width)
    }
}

/// The top of the pulse, where that is not the highest sample: of what rises beyond half of that the first that lasts an
/// eighth as long as the longest, or longer. What is shorter is a spike, however high; what comes later is an echo or the
/// next pulse.
fn first_top(sums: &RunningSums, width: usize, sign: f64, height: f64, highest: usize) -> Option<usize> {
    let (begins, ends) = sums.around(width);
    let level = |place: usize| sign * (ends[place] - begins[place]);
    let (half, low) = (0.5 * height * width as f64, 0.3 * height * width as f64);
    // Most blocks hold nothing beyond the half, which several sums at a time tell.
    let next = |from: usize| {
        let blocks = begins[from..].chunks(BLOCK).zip(ends[from..].chunks(BLOCK));
        let holds = |(begins, ends): (&[f64], &[f64])| {
            let sums = begins.iter().zip(ends).map(|(begin, end)| sign * (end - begin));
            sums.fold(false, |holds, sum| {
                let beyond = sum >= half;
                holds | beyond
            })
        };
        let first = from + BLOCK * blocks.map(holds).position(|holds| holds)?;
        (first..ends.len()).find(|place| level(*place) >= half)
    };
    let (mut stretches, mut at) = (Vec::new(), 0);
    while let Some(from) = next(at) {
        // Well below, so that noise about the half does not part one pulse into many.
        at = (from..ends.len()).find(|place| level(*place) < low).unwrap_or(ends.len());
        stretches.push(from..at);
        // Nothing in what is left could last so long that the first of all were a spike beside it.
        if stretches.first().is_some_and(|first| 8 * first.len() >= ends.len() - at) {
            break;
        }
    }
    let longest = stretches.iter().map(ExactSizeIterator::len).max()?;
    let pulse = stretches.into_iter().find(|stretch| 8 * stretch.len() >= longest)?;
    if (pulse.start + width / 2..pulse.end + width / 2).contains(&highest) {
        return None;
    }
    let top = pulse.rev().max_by(|one, other| level(*one).total_cmp(&level(*other)))?;
    Some(top + width / 2)
}

/// Level farthest from the baseline of the smoothed trace, and where it is first reached.
fn extreme(sums: &RunningSums, width: usize) -> (f64, usize) {
    let (mut level, mut place) = (0.0_f64, 0);
    let (begins, ends) = sums.around(width);
    for (block, (begins, ends)) in begins.chunks(BLOCK).zip(ends.chunks(BLOCK)).enumerate() {
        // Most blocks hold nothing farther, which several sums at a time tell.
        let over = || begins.iter().zip(ends).map(|(begin, end)| end - begin);
        let farther = over().fold(false, |farther, sum| farther | (sum.abs() > level.abs()));
        if farther {
            for (at, sum) in over().enumerate() {
                if sum.abs() > level.abs() {
                    (level, place) = (sum, block * BLOCK + at);
                }
            }
        }
    }
    (level / width as f64, place + width / 2)
}

#[cfg(test)]
#[path = "pulse_test.rs"]
mod tests;
