//! A family of lines that meet in one point far off, and their even spacing on the screen.
//!
//! From the picture's middle, an upright line is x = c + m·y and a level one y = c + m·x. Lines through one point have
//! m = α + β·c: a straight line among all (c, m). So votes for (c, m) (the Hough transform, in slopes) are summed along
//! straight lines, and the best one is where the sums stand in the sharpest peaks.
//!
//! The two points where the families meet span the horizon of the screen's plane. It tells how spacings shrink across
//! the picture: with g from the horizon, u = c/(1 + g·c) is even. (Hartley and Zisserman 2004, 2.7: the line at
//! infinity gives the plane up to an affine map.)

use super::ridge::{Family, Ridges};

/// Largest slope against the axis of the picture.
const SLOPES: f64 = 0.66;
/// Step between slopes.
const STEP: f64 = 0.008;
/// Slopes counted.
const COUNT: usize = 166;
/// How far slopes may run apart across half of the picture, in steps of two slopes.
const SPREAD: i32 = 17;
/// Ridges weaker than this don't vote.
const WEAK: f32 = 0.25;

/// A family of lines, and how strongly each is seen.
#[derive(Clone, Debug)]
pub struct Pencil {
    /// Slope of the line through the middle.
    pub alpha: f64,
    /// How the slope grows with c, per pixel.
    pub beta: f64,
    /// Where c begins: the first of `profile` is c = `first`, and each next is a pixel on.
    first: f64,
    /// Strength of the line through c.
    profile: Vec<f32>,
}

/// Where even lines stand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Comb {
    /// u of the first line.
    pub first: f64,
    /// From line to line in u.
    pub period: f64,
    /// g of u = c/(1 + g·c).
    pub g: f64,
    /// How much stronger lines are than what lies between them.
    pub score: f64,
}

impl Comb {
    /// c of a line, counted from the first.
    pub fn line(&self, index: f64) -> f64 {
        let u = self.first + index * self.period;
        u / (1.0 - self.g * u)
    }
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "not negative, and of a picture's size"
)]
fn whole(x: f64) -> usize {
    x as usize
}

/// The strongest family; none in a picture without lines.
pub fn pencil(ridges: &Ridges, family: Family) -> Option<Pencil> {
    let (width, height) = (ridges.width as f64, ridges.height as f64);
    let (wide, long) = if family == Family::Upright { (width, height) } else { (height, width) };
    // c reaches a quarter of the picture beyond its sides.
    let (first, bins) = (-0.75 * wide, whole(1.5 * wide) + 1);
    let mut votes = vec![0.0_f32; COUNT * bins];
    let mut lines = 0.0;
    for y in 0..ridges.height {
        for x in 0..ridges.width {
            // Every second pixel along the lines is enough.
            let along = if family == Family::Upright { y } else { x };
            let strength = ridges.strength[y * ridges.width + x];
            if along % 2 == 1 || strength < WEAK {
                continue;
            }
            lines += strength;
            let (x, y) = (x as f64 + 0.5 - width / 2.0, y as f64 + 0.5 - height / 2.0);
            let (c, t) = if family == Family::Upright { (x, y) } else { (y, x) };
            let mut place = c + SLOPES * t - first;
            for row in votes.chunks_exact_mut(bins) {
                if place >= 0.0 && place < bins as f64 {
                    row[whole(place)] += strength;
                }
                place -= STEP * t;
            }
        }
    }
    if lines <= 0.0 {
        return None;
    }
    // Two bins to one for the search.
    let half = bins / 2;
    let pairs = |row: &[f32]| -> Vec<f32> { row.chunks_exact(2).map(|pair| pair[0] + pair[1]).collect() };
    let coarse: Vec<Vec<f32>> = votes.chunks_exact(bins).map(pairs).collect();
    let mut best = (0.0_f32, 0, 0);
    for spread in -SPREAD..=SPREAD {
        for middle in 0..COUNT {
            let mut squares = 0.0;
            for bin in 0..half {
                let slope = slope_at(middle, spread, (2 * bin) as f64 + 1.0 + first, wide);
                if let Some(row) = coarse.get(slope) {
                    squares += row[bin] * row[bin];
                }
            }
            if squares > best.0 {
                best = (squares, middle, spread);
            }
        }
    }
    let (_, middle, spread) = best;
    // A line along the whole picture has a strength of some 1.
    #[expect(clippy::cast_possible_truncation, reason = "digits are not needed")]
    let share = (2.0 / long) as f32;
    let at = |bin: usize| {
        let slope = slope_at(middle, spread, bin as f64 + 0.5 + first, wide);
        votes.get(slope * bins + bin).copied().unwrap_or(0.0) * share
    };
    let profile: Vec<f32> = (0..bins).map(at).collect();
    let alpha = middle as f64 * STEP - SLOPES;
    let beta = f64::from(spread) * 2.0 * STEP / (wide / 2.0);
    Some(Pencil { alpha, beta, first, profile })
}

/// The index of the slope at c, beyond [`COUNT`] where there is none.
fn slope_at(middle: usize, spread: i32, c: f64, wide: f64) -> usize {
    let slope = middle as f64 + f64::from(spread) * 2.0 * c / (wide / 2.0) + 0.5;
    if slope < 0.0 { usize::MAX / 2 } else { whole(slope).min(COUNT) }
}

impl Pencil {
    /// Strength at c, with one pixel to either side.
    fn strength(&self, c: f64) -> f32 {
        let place = c - self.first;
        if !(place >= 1.0 && place + 1.0 < self.profile.len() as f64) {
            return 0.0;
        }
        let place = whole(place);
        self.profile.get(place - 1..=place + 1).map_or(0.0, |near| near.iter().fold(0.0, |a, b| a.max(*b)))
    }

    /// The best `lines` even lines in this family, the horizon told by the other.
    pub fn comb(&self, g: f64, lines: u32) -> Option<Comb> {
        let wide = self.profile.len() as f64 / 1.5;
        let spaces = f64::from(lines.checked_sub(1)?);
        if spaces < 1.0 {
            return None;
        }
        // Strength by u, in steps of a pixel; what stands beyond the horizon is not there.
        let reach = 0.6 * wide;
        let at = |i: usize| {
            let u = i as f64 - reach;
            let c = u / (1.0 - g * u);
            if 1.0 - g * u > 0.2 && c.abs() <= 0.56 * wide { self.strength(c) } else { 0.0 }
        };
        let mut even: Vec<f32> = (0..whole(2.0 * reach)).map(at).collect();
        // A trace may lie along a line: no line counts for more than a good one does.
        let mut sorted = even.clone();
        sorted.sort_by(f32::total_cmp);
        let cap = sorted.get(sorted.len().saturating_sub(1 + 2 * whole(spaces))).copied()?.max(1e-6);
        for x in &mut even {
            *x = x.min(cap);
        }
        let (mut best, mut found) = (0.0, None);
        let mut period = (0.15 * wide / spaces).max(6.0);
        while period * spaces < 1.15 * wide {
            for start in 0..whole((2.0 * reach - period * spaces).max(0.0)) {
                let mut sum = 0.0;
                for line in 0..lines {
                    let place = start as f64 + f64::from(line) * period;
                    sum += even.get(whole(place)).copied().unwrap_or(0.0);
                    if line > 0 {
                        sum -= even.get(whole(place - period / 2.0)).copied().unwrap_or(0.0);
                    }
                }
                if sum > best {
                    best = sum;
                    found = Some((start as f64 + 0.5 - reach, period));
                }
            }
            period += 0.2;
        }
        let (first, period) = found?;
        Some(Comb { first, period, g, score: f64::from(best) / f64::from(lines) })
    }
}

/// g of the upright and of the level family, from where both meet.
pub fn horizon(upright: &Pencil, level: &Pencil) -> Option<[f64; 2]> {
    // The points (α, 1, −β) and (1, α′, −β′); the horizon is the line through both.
    let (a, b, c, d) = (upright.alpha, upright.beta, level.alpha, level.beta);
    let last = a * c - 1.0;
    (last < -0.2).then(|| [(-d + b * c) / last, (-b + a * d) / last])
}
