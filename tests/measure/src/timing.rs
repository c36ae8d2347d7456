//! Times of many repeats: their median, and the least beside it, which a busy machine disturbs less.

use std::time::{Duration, Instant};

use crate::effort::Effort;

/// Times in one unit, sorted.
pub struct Times(Vec<f64>);

impl Times {
    /// From times in any order.
    pub fn of(mut times: Vec<f64>) -> Self {
        times.sort_by(f64::total_cmp);
        Times(times)
    }

    /// The middle one, or the mean of the two in the middle. NaN of none.
    pub fn median(&self) -> f64 {
        let n = self.0.len();
        let at = |place: usize| self.0.get(place).copied().unwrap_or(f64::NAN);
        f64::midpoint(at(n / 2), at(n.saturating_sub(1) / 2))
    }

    /// The least. NaN of none.
    pub fn least(&self) -> f64 {
        self.0.first().copied().unwrap_or(f64::NAN)
    }

    /// How many there are.
    pub fn count(&self) -> usize {
        self.0.len()
    }
}

/// Time of one of many, in µs: `work` does as many as it is told, and is asked 101 times for so many that they
/// last about a millisecond; once, where that is enough.
pub fn microseconds(effort: Effort, work: impl Fn(u32)) -> Times {
    const BATCH: Duration = Duration::from_millis(1);
    const REPEATS: usize = 101;
    let mut many = 1;
    while took(&work, many) < BATCH && many < u32::MAX / 2 {
        many *= 2;
    }
    let repeats = effort.of(REPEATS, 1);
    Times::of((0..repeats).map(|_| took(&work, many).as_secs_f64() * 1e6 / f64::from(many)).collect())
}

fn took(work: &impl Fn(u32), many: u32) -> Duration {
    let start = Instant::now();
    work(many);
    start.elapsed()
}
