//! Whether the top of a pulse is cut off at the largest level that its converter knows.
//!
//! Such a top shows as samples that are all the very same highest value. So does a flat top whose noise is far smaller than
//! a step of the converter: there the samples can't tell, and a person must look.

use slope_engine::distribution::{normal_quantile, normal_sf};

use super::Baseline;

/// So many samples above the limit would have to be there before their absence says something: of independent samples none
/// is missing so by chance more often than e⁻⁵, 0.7 %.
const MISSING: f64 = 5.0;
/// Share of the samples at the limit above which nothing but the limit shows.
const ALL: f64 = 0.95;

/// The highest value within a top, and where it stands.
pub(super) struct Limit<'a> {
    /// Counted from the baseline, upright, V.
    samples: &'a [f64],
    noise: &'a Baseline,
    /// V, counted as the samples.
    pub level: f64,
    /// Its first sample.
    pub first: usize,
    /// From the first to the last of those within the top.
    stretch: usize,
    /// How many there are within it.
    count: usize,
    /// How many follow one another from the first.
    run: usize,
    /// All samples of the top.
    top: usize,
}

impl<'a> Limit<'a> {
    /// Of the samples of a pulse, counted from its baseline and upright, whose top lies between the two given places.
    pub fn of(samples: &'a [f64], top: [f64; 2], noise: &'a Baseline) -> Self {
        let [from, to] = top.map(|place| super::whole(place.round()).min(samples.len() - 1));
        let top = &samples[from..=to];
        let level = top.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let at_limit = |sample: &f64| is_at(level, *sample);
        let begin = top.iter().position(at_limit).unwrap_or(0);
        let end = top.iter().rposition(at_limit).unwrap_or(begin);
        Self {
            samples,
            noise,
            level,
            first: from + begin,
            stretch: end + 1 - begin,
            count: top.iter().filter(|sample| at_limit(sample)).count(),
            run: samples[from + begin..].iter().take_while(|sample| at_limit(sample)).count(),
            top: top.len(),
        }
    }

    /// How many samples of the whole trace are there.
    pub fn samples(&self) -> usize {
        self.samples.iter().filter(|sample| is_at(self.level, **sample)).count()
    }

    /// The samples say that the pulse goes on beyond it.
    pub fn cuts(&self) -> bool {
        self.noise_stops() || self.flanks_point_beyond()
    }

    /// The top looks the same whether the pulse ends at it or goes on beyond.
    pub fn may_cut(&self) -> bool {
        let most = |part: usize, whole: usize, share: f64| part as f64 >= share * whole as f64;
        self.count >= 4 && most(self.count, self.stretch, ALL) && most(self.stretch, self.top, 0.5)
    }

    /// Noise would carry many samples beyond, and carries none.
    fn noise_stops(&self) -> bool {
        let Baseline { sigma, quantum, correlation, .. } = self.noise;
        // A level between two steps of the converter shows a variance of up to a quarter of a step squared by itself.
        let sigma = (sigma * sigma - 0.25 * quantum * quantum).max(0.0).sqrt();
        if self.count < 2 || 4 * self.count < self.top || sigma <= 1e-9 * self.level.abs() {
            return false;
        }
        // Without steps no two samples are alike by chance, and of steps far smaller than the noise hardly ever four.
        if *quantum <= 0.25 * sigma {
            return *quantum == 0.0 || self.count >= 4;
        }
        let stretch = self.stretch as f64;
        let share = (self.count as f64 / stretch).min(1.0 - 0.5 / stretch);
        let above = normal_sf(quantum / sigma - normal_quantile(share));
        // Samples that share their noise count for fewer.
        let shared = 1.0 + 2.0 * correlation.iter().sum::<f64>();
        above * stretch > MISSING * shared
    }

    /// How far the trace has fallen half a run before the limit and half a run behind it: of a rounded top that merely looks
    /// flat, as far as a parabola does that stays within a step of the converter for the run, and what noise adds; by far more
    /// where the flanks point beyond the limit.
    fn flanks_point_beyond(&self) -> bool {
        if self.run < 3 {
            return false;
        }
        let fallen = |at: usize| self.samples.get(at).map_or(0.0, |sample| self.level - sample);
        let (outward, behind) = (self.run.div_ceil(2), self.first + self.run + self.run / 2);
        let (before, after) = (fallen(self.first.saturating_sub(outward)), fallen(behind));
        let beyond = if before + after > 0.0 { 2.0 * before * after / (before + after) } else { 0.0 };
        let half = (self.run as f64 - 1.0) / 2.0;
        let parabola = 1.0 + outward as f64 / half;
        beyond > parabola * parabola * self.noise.quantum + 6.0 * self.noise.sigma
    }
}

fn is_at(level: f64, sample: f64) -> bool {
    (sample - level).abs() <= 1e-9 * level.abs()
}

#[cfg(test)]
#[path = "limit_test.rs"]
mod tests;
