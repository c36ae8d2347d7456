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

/// A pixel that votes: the line through it with slope m has c − m·t.
struct Vote {
    c: f32,
    t: f32,
    strength: f32,
}

/// The strongest family; none in a picture without lines.
pub fn pencil(ridges: &Ridges, family: Family) -> Option<Pencil> {
    let (width, height) = (ridges.width as f64, ridges.height as f64);
    let (wide, long) = if family == Family::Upright { (width, height) } else { (height, width) };
    // c reaches a quarter of the picture beyond its sides; two bins to one for the search.
    let (first, half) = (-0.75 * wide, whole(0.75 * wide) + 1);
    let bins = 2 * half;
    let voters = voters(ridges, family, first);
    if voters.is_empty() {
        return None;
    }
    let mut votes = vec![0.0_f32; COUNT * bins];
    for (slope, row) in votes.chunks_exact_mut(bins).enumerate() {
        let m = single(slope as f64 * STEP - SLOPES);
        for vote in &voters {
            let place = vote.c - m * vote.t;
            // Below zero the cast gives bin 0, which no line of the grid comes near.
            #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "saturates")]
            if let Some(bin) = row.get_mut(place as usize) {
                *bin += vote.strength;
            }
        }
    }
    // Squares by bin, then by slope.
    let mut squares = vec![0.0_f32; half * COUNT];
    for (slope, row) in votes.chunks_exact(bins).enumerate() {
        for (bin, pair) in row.chunks_exact(2).enumerate().skip(1) {
            squares[bin * COUNT + slope] = (pair[0] + pair[1]) * (pair[0] + pair[1]);
        }
    }
    let shift = |spread: i32, c: f64| {
        #[expect(clippy::cast_possible_truncation, reason = "a few tens")]
        let shift = libm::round(f64::from(spread) * 4.0 * c / wide) as isize;
        shift
    };
    let mut best = (0.0_f32, 0, 0);
    for spread in -SPREAD..=SPREAD {
        let mut sums = [0.0_f32; COUNT];
        for (bin, squares) in squares.chunks_exact(COUNT).enumerate() {
            let shift = shift(spread, (2 * bin) as f64 + 1.0 + first);
            let (to, from) = (shift.min(0).unsigned_abs().min(COUNT), shift.max(0).unsigned_abs().min(COUNT));
            for (sum, square) in sums[to..].iter_mut().zip(&squares[from..]) {
                *sum += square;
            }
        }
        for (middle, sum) in sums.into_iter().enumerate() {
            if sum > best.0 {
                best = (sum, middle, spread);
            }
        }
    }
    let (_, middle, spread) = best;
    // A line along the whole picture has a strength of some 1.
    let share = single(2.0 / long);
    let at = |bin: usize| {
        let slope = middle.checked_add_signed(shift(spread, bin as f64 + 0.5 + first));
        let slope = slope.filter(|slope| *slope < COUNT && bin > 1);
        slope.map_or(0.0, |slope| votes[slope * bins + bin] * share)
    };
    let profile: Vec<f32> = (0..bins).map(at).collect();
    let alpha = middle as f64 * STEP - SLOPES;
    let beta = f64::from(spread) * 4.0 * STEP / wide;
    Some(Pencil { alpha, beta, first, profile })
}

#[expect(clippy::cast_possible_truncation, reason = "votes need few digits")]
fn single(x: f64) -> f32 {
    x as f32
}

/// The pixels that vote. Every second one along the lines is enough.
fn voters(ridges: &Ridges, family: Family, first: f64) -> Vec<Vote> {
    let middle = [ridges.width as f64 / 2.0 - 0.5, ridges.height as f64 / 2.0 - 0.5];
    let mut voters = Vec::new();
    for (y, row) in ridges.strength.chunks_exact(ridges.width.max(1)).enumerate() {
        for (x, strength) in row.iter().enumerate() {
            let along = if family == Family::Upright { y } else { x };
            if along % 2 == 0 && *strength >= WEAK {
                let (x, y) = (x as f64 - middle[0], y as f64 - middle[1]);
                let (c, t) = if family == Family::Upright { (x, y) } else { (y, x) };
                voters.push(Vote { c: single(c - first), t: single(t), strength: *strength });
            }
        }
    }
    voters
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
            // Lines are three pixels wide here, so every second start will do.
            for start in (0..whole((2.0 * reach - period * spaces).max(0.0))).step_by(2) {
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
            period += 3.0 / spaces;
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
