//! The scale on which the results of a class stand beside one another, as percentages of its width.

use serde::Serialize;
use slope_evidence::decimal::fixed;
use slope_evidence::trace::DecimalMark;

/// Beyond so many widths of the middle half, to either side of it, a result no longer stretches the scale: J. W. Tukey,
/// Exploratory Data Analysis (1977), outer fences.
const FENCE: f64 = 3.0;
/// Nor does an uncertainty beyond so many times that in the middle.
const WIDEST: f64 = 3.0;
/// At least so many marks: one alone would not tell how far apart results are.
const LEAST_MARKS: f64 = 2.0;
/// Marks are told in 10⁶ m/s.
const MEGA: f64 = 1e6;

/// The scale. Speeds in m/s.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct ResultScale {
    from: f64,
    to: f64,
}

/// A result with its expanded uncertainty, in percent of the scale; where it reaches beyond, it is cut off.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Bar {
    /// Its lower end.
    pub from: f64,
    /// The result.
    pub at: f64,
    /// Its upper end.
    pub to: f64,
    /// Whether the result itself lies beyond the scale.
    pub beyond: bool,
}

/// A mark of a scale.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Tick {
    /// Where it stands, in percent of the scale.
    pub at: f64,
    /// Its number; of the scale of results, 10⁶ m/s.
    pub text: String,
}

impl ResultScale {
    /// A scale for results, each with so much to either side; none for none.
    pub(super) fn of(results: &[(f64, f64)]) -> Option<Self> {
        let (speeds, reaches) = (sorted(results, |one| one.0), sorted(results, |one| one.1));
        let (low, high) = (quartile(&speeds, 1)?, quartile(&speeds, 3)?);
        let fence = if high > low { FENCE * (high - low) } else { f64::INFINITY };
        let widest = WIDEST * quartile(&reaches, 2)?;
        let inside = |one: &&(f64, f64)| (low - fence..=high + fence).contains(&one.0);
        let ends = results.iter().filter(inside).flat_map(|(speed, reach)| {
            let reach = reach.min(widest);
            [speed - reach, speed + reach]
        });
        let (from, to) = ends.fold((low, high), |(from, to), end| (from.min(end), to.max(end)));
        // Results that are all alike, with no uncertainty to speak of, have a scale all the same.
        let margin = if to > from { 0.0 } else { 1e-3 * to.abs() };
        Some(Self { from: from - margin, to: to + margin })
    }

    fn percent(self, speed: f64) -> f64 {
        (100.0 * (speed - self.from) / (self.to - self.from)).clamp(0.0, 100.0)
    }

    /// A result with so much to either side.
    pub(super) fn bar(self, speed: f64, reach: f64) -> Bar {
        Bar {
            from: self.percent(speed - reach),
            at: self.percent(speed),
            to: self.percent(speed + reach),
            beyond: !(self.from..=self.to).contains(&speed),
        }
    }

    /// Its marks, at round numbers.
    pub(super) fn ticks(self, mark: DecimalMark) -> Vec<Tick> {
        let each = round_marks(self.from / MEGA, self.to / MEGA, mark);
        each.into_iter().map(|(at, text)| Tick { at: self.percent(at * MEGA), text }).collect()
    }
}

/// Round numbers from one to another, as numbers and as texts: at least two of them, and not many more.
pub(super) fn round_marks(from: f64, to: f64, mark: DecimalMark) -> Vec<(f64, String)> {
    let widest = (to - from) / LEAST_MARKS;
    let power = (-12..=12).rev().find(|power| 10_f64.powi(*power) <= widest).unwrap_or(-12);
    let ten = 10_f64.powi(power);
    let step = [5.0, 2.0].into_iter().map(|part| part * ten).find(|step| *step <= widest).unwrap_or(ten);
    let first = (from / step).ceil();
    let each = (0_u32..).map(|place| (first + f64::from(place)) * step).take_while(|at| *at <= to);
    each.take(10).map(|at| (at, fixed(at, power.min(0), mark))).collect()
}

fn sorted(results: &[(f64, f64)], which: impl Fn(&(f64, f64)) -> f64) -> Vec<f64> {
    let mut sorted: Vec<f64> = results.iter().map(which).collect();
    sorted.sort_by(f64::total_cmp);
    sorted
}

/// What stands so many quarters up a sorted list: two for its middle.
fn quartile(sorted: &[f64], quarters: usize) -> Option<f64> {
    let last = sorted.len().checked_sub(1)?;
    sorted.get((quarters * last + 2) / 4).copied()
}

#[cfg(test)]
#[path = "scale_test.rs"]
mod tests;
