//! The edge of a trace: where it crosses half of its own height, leaving its baseline.

use super::curve::{Curve, SAMPLES};

/// An edge on the flat screen.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScreenEdge {
    /// Column, divisions.
    pub column: f64,
    /// Row, divisions.
    pub row: f64,
    /// Row of the baseline, divisions.
    pub base: f64,
    /// Row of the peak, divisions.
    pub peak: f64,
    /// Columns where it leaves the baseline and where it reaches the peak, divisions.
    pub ends: [f64; 2],
    /// How sure, 0 to 1: how well the trace is seen, how much it rises, and how well the crossing lies on a line.
    pub confidence: f64,
    /// Whether the trace is level before it, as it is where time runs to the right.
    pub is_level: bool,
    /// Whether it is the whole of a pulse's edge: no pulse comes before it nor a higher one after it, where its peak is looked
    /// for, and it rises without a rest.
    pub is_alone: bool,
}

/// How far to both sides of a place it is looked whether a trace rises there, divisions.
const REACH: f64 = 0.3;

/// A place is an edge if it rises by this share of the largest rise.
const SHARE: f64 = 0.6;

/// A height below this is no pulse, divisions.
const LEAST: f64 = 0.3;

/// A trace is level where this share of it lies no farther from its baseline than this share of the pulse's height, over
/// a quarter of a division or more.
const LEVEL: f64 = 0.75;
const OF_HEIGHT: f64 = 0.2;
const LEAST_LEVEL: usize = SAMPLES / 4;

/// A trace that falls back by this share of the height shows another pulse, if the means of so many samples do: less is a
/// speck upon it.
const BACK: f64 = 0.3;
const SPECK: usize = SAMPLES / 5;

/// A pulse lower than this share of a later one is timed too high above its baseline.
const AS_HIGH: f64 = 0.8;

/// An edge rests where its trace goes on for so many samples between these shares of the height, and changes by less than
/// this share of it (chosen here, no source): a step with an echo, or a path that goes on to something else.
const REST: usize = SAMPLES / 3;
const BETWEEN: std::ops::RangeInclusive<f64> = 0.15..=0.85;
const EVEN: f64 = 0.04;

/// An edge ends where it is nearer to baseline or peak than this share of its height.
const END: f64 = 0.05;

/// The place of a sample, divisions.
pub fn division(sample: f64) -> f64 {
    (sample + 0.5) / SAMPLES as f64
}

/// The first steep edge of a trace.
pub fn edge(curve: &Curve) -> Option<ScreenEdge> {
    let rows: Vec<f64> = curve.rows.iter().map(|y| *y as f64).collect();
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few samples")]
    let reach = (REACH * SAMPLES as f64) as usize;
    let end = rows.len().checked_sub(reach)?;
    let rise = |x: usize| rows[x + reach] - rows[x - reach];
    let places = || reach..end;
    let largest = places().map(|x| rise(x).abs()).fold(0.0, f64::max);
    // The first place that rises nearly as much as any, and from there the steepest until the rise is over.
    let start = places().find(|x| rise(*x).abs() >= SHARE * largest)?;
    let steep =
        (start..end.min(start + 3 * reach)).max_by(|a, b| rise(*a).abs().total_cmp(&rise(*b).abs()))?;
    let up = rise(steep) < 0.0;
    let rises = steep.saturating_sub(reach);
    let before = &rows[..rises.max(1)];
    let base = middle(before);
    // The peak: the farthest from the baseline after the edge, a few samples in the mean.
    let towards = |y: f64| if up { base - y } else { y - base };
    let after = rows.get(steep..)?.windows(5).map(|near| near.iter().sum::<f64>() / 5.0);
    let until = after.clone().take(4 * SAMPLES);
    let (later, peak) = until.enumerate().max_by(|(_, a), (_, b)| towards(*a).total_cmp(&towards(*b)))?;
    let height = (peak - base).abs();
    if height < LEAST * SAMPLES as f64 {
        return None;
    }
    let near_base = before.iter().filter(|y| (**y - base).abs() <= OF_HEIGHT * height).count();
    let is_level = before.len() >= LEAST_LEVEL && near_base as f64 >= LEVEL * before.len() as f64;
    let half = f64::midpoint(base, peak);
    // Where the path crosses half height.
    let crosses =
        |x: &usize| (towards(rows[*x]) - height / 2.0) * (towards(rows[*x - 1]) - height / 2.0) <= 0.0;
    let crossing = (1..rows.len()).filter(crosses).min_by_key(|x| x.abs_diff(steep))?;
    let rough = crossing as f64 - 0.5;
    let near = (END * height).max(1.0);
    let begins = (0..crossing).rev().find(|x| towards(rows[*x]) <= near).unwrap_or(crossing);
    let ends = (crossing..rows.len()).find(|x| towards(rows[*x]) >= height - near).unwrap_or(crossing);
    let up_to_peak = rows.get(rises..=steep + later)?;
    let is_alone = falls_back(before, base, peak).is_none()
        && falls_back(up_to_peak, base, peak).is_none_or(|highest| highest >= AS_HIGH)
        && !rests(rows.get(begins..=ends)?, base, peak);
    let (column, spread) = line(curve, half, height, rough).unwrap_or((rough, 10.0));
    let confidence = f64::from(curve.seen).min(1.0)
        * (height / (height + 0.3 * SAMPLES as f64))
        * (1.0 / (1.0 + spread * spread / 16.0));
    Some(ScreenEdge {
        column: division(column),
        row: division(half),
        base: division(base),
        peak: division(peak),
        ends: [begins, ends].map(|x| division(x as f64)),
        confidence,
        is_level,
        is_alone,
    })
}

/// How high above its baseline a trace stood before it first falls back, in heights of the pulse; none where it never does.
fn falls_back(rows: &[f64], base: f64, peak: f64) -> Option<f64> {
    let mut highest = f64::NEG_INFINITY;
    let mut heights =
        rows.windows(SPECK).map(|near| (near.iter().sum::<f64>() / SPECK as f64 - base) / (peak - base));
    heights.find_map(|height| {
        highest = highest.max(height);
        (highest - height >= BACK).then_some(highest)
    })
}

/// Whether a trace rests between baseline and peak.
fn rests(rows: &[f64], base: f64, peak: f64) -> bool {
    let share = |row: f64| (row - base) / (peak - base);
    rows.windows(REST).any(|near| {
        let [from, .., to] = near else { return false };
        BETWEEN.contains(&share(*from)) && (share(*to) - share(*from)).abs() < EVEN
    })
}

/// The median.
pub fn middle(values: &[f64]) -> f64 {
    let mut sorted = values.to_vec();
    sorted.sort_by(f64::total_cmp);
    sorted.get(sorted.len() / 2).copied().unwrap_or(0.0)
}

/// The column where the stroke crosses a row: the middle of the stroke in each row near it, and a line through them.
/// With it, their scatter about the line, samples.
fn line(curve: &Curve, half: f64, height: f64, rough: f64) -> Option<(f64, f64)> {
    let near = (0.15 * height).max(2.0);
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped to the screen")]
    let (top, bottom) = ((half - near).max(0.0) as usize, (half + near).max(0.0) as usize);
    let mut points = Vec::new();
    for y in top..=bottom {
        let row = curve.own.get(y * curve.width..(y + 1) * curve.width)?;
        let (mut weight, mut moment) = (0.0, 0.0);
        // Twice: from the crossing, then from the middle found.
        let mut from = rough;
        for reach in [14.0, 8.0] {
            (weight, moment) = (0.0, 0.0);
            for (x, own) in row.iter().enumerate() {
                let off = x as f64 - from;
                if off.abs() <= reach {
                    let own = f64::from(own * own);
                    weight += own;
                    moment += own * off;
                }
            }
            if weight > 0.0 {
                from += moment / weight;
            }
        }
        if weight > 0.5 && moment.is_finite() {
            points.push((y as f64 - half, from));
        }
    }
    let count = points.len() as f64;
    if count < 3.0 {
        return None;
    }
    let mean = points.iter().fold((0.0, 0.0), |(y, x), p| (y + p.0 / count, x + p.1 / count));
    let (mut yy, mut xy) = (0.0, 0.0);
    for (y, x) in &points {
        yy += (y - mean.0) * (y - mean.0);
        xy += (y - mean.0) * (x - mean.1);
    }
    let slope = xy / yy;
    let at = mean.1 - slope * mean.0;
    let off = |(y, x): &(f64, f64)| (x - at - slope * y) * (x - at - slope * y);
    let spread = libm::sqrt(points.iter().map(off).sum::<f64>() / count);
    // Farther from the path than the stroke is wide, it is another line.
    ((at - rough).abs() <= 10.0).then_some((at, spread))
}

#[cfg(test)]
#[path = "edge_test.rs"]
mod tests;
