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

// Shares of the picture's width.
/// How far from the middle lines are counted: a quarter of the picture beyond its sides.
const COUNTED: f64 = 0.75;
/// How far from it even lines are looked for.
const REACH: f64 = 0.6;
/// How far from it they are seen: what lies farther is no part of the picture.
const SEEN: f64 = 0.56;
/// What the least and the widest grid of a screen take up.
const GRID: [f64; 2] = [0.15, 1.15];

/// Least spacing of lines, pixels.
const LEAST_PERIOD: f64 = 6.0;
/// From spacing to spacing that is tried, pixels over the whole grid.
const PERIOD_STEP: f64 = 3.0;
/// Spacings that shrink to less than this share of those in the middle are beyond the horizon, or too near it.
const HORIZON: f64 = 0.2;
/// What 1 less the product of both families' slopes has to come to: nearly parallel ones tell no horizon.
const CROSSING: f64 = 0.2;

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

/// Where lines are counted across the picture: c in bins of a pixel.
struct Bins {
    /// Width of the picture across the family.
    wide: f64,
    /// c of the first.
    first: f64,
    /// Two of them are one in the search.
    half: usize,
}

impl Bins {
    fn across(wide: f64) -> Self {
        Self { wide, first: -COUNTED * wide, half: whole(COUNTED * wide) + 1 }
    }

    fn count(&self) -> usize {
        2 * self.half
    }

    /// By how many steps the slope at c differs from that in the middle.
    #[expect(clippy::cast_possible_truncation, reason = "a few tens")]
    fn shift(&self, spread: i32, c: f64) -> isize {
        libm::round(f64::from(spread) * 4.0 * c / self.wide) as isize
    }
}

/// The strongest family; none in a picture without lines.
pub fn pencil(ridges: &Ridges, family: Family) -> Option<Pencil> {
    let (width, height) = (ridges.width as f64, ridges.height as f64);
    let (wide, long) = if family == Family::Upright { (width, height) } else { (height, width) };
    let bins = Bins::across(wide);
    let voters = voters(ridges, family, bins.first);
    if voters.is_empty() {
        return None;
    }
    let votes = votes(&voters, bins.count());
    let (middle, spread) = sharpest(&votes, &bins);
    // A line along the whole picture has a strength of some 1.
    let share = single(2.0 / long);
    let at = |bin: usize| {
        let slope = middle.checked_add_signed(bins.shift(spread, bin as f64 + 0.5 + bins.first));
        let slope = slope.filter(|slope| *slope < COUNT && bin > 1);
        slope.map_or(0.0, |slope| votes[slope * bins.count() + bin] * share)
    };
    let profile: Vec<f32> = (0..bins.count()).map(at).collect();
    let alpha = middle as f64 * STEP - SLOPES;
    let beta = f64::from(spread) * 4.0 * STEP / wide;
    Some(Pencil { alpha, beta, first: bins.first, profile })
}

/// How strongly each line is voted for: by slope, then by c.
fn votes(voters: &[Vote], bins: usize) -> Vec<f32> {
    let mut votes = vec![0.0_f32; COUNT * bins];
    for (slope, row) in votes.chunks_exact_mut(bins).enumerate() {
        let m = single(slope as f64 * STEP - SLOPES);
        for vote in voters {
            let place = vote.c - m * vote.t;
            // Below zero the cast gives bin 0, which no line of the grid comes near.
            #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "saturates")]
            if let Some(bin) = row.get_mut(place as usize) {
                *bin += vote.strength;
            }
        }
    }
    votes
}

/// Squares of the votes for two bins at once: by c, then by slope.
fn squares(votes: &[f32], bins: &Bins) -> Vec<f32> {
    let mut squares = vec![0.0_f32; bins.half * COUNT];
    for (slope, row) in votes.chunks_exact(bins.count()).enumerate() {
        for (bin, pair) in row.chunks_exact(2).enumerate().skip(1) {
            squares[bin * COUNT + slope] = (pair[0] + pair[1]) * (pair[0] + pair[1]);
        }
    }
    squares
}

/// The family whose lines stand out most: the place of the slope in its middle, and by how much slopes run apart.
fn sharpest(votes: &[f32], bins: &Bins) -> (usize, i32) {
    let squares = squares(votes, bins);
    let mut best = (0.0_f32, 0, 0);
    for spread in -SPREAD..=SPREAD {
        let mut sums = [0.0_f32; COUNT];
        for (bin, squares) in squares.chunks_exact(COUNT).enumerate() {
            let shift = bins.shift(spread, (2 * bin) as f64 + 1.0 + bins.first);
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
    (middle, spread)
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

    /// Width of the picture across the family, pixels.
    fn wide(&self) -> f64 {
        self.profile.len() as f64 / (2.0 * COUNTED)
    }

    /// Strength by u, in steps of a pixel from −[`REACH`] on; what stands beyond the horizon is not there. A trace may lie
    /// along a line: no line counts for more than a good one of as many does.
    fn even(&self, g: f64, spaces: f64) -> Option<Vec<f32>> {
        let wide = self.wide();
        let reach = REACH * wide;
        let at = |i: usize| {
            let u = i as f64 - reach;
            let c = u / (1.0 - g * u);
            if 1.0 - g * u > HORIZON && c.abs() <= SEEN * wide { self.strength(c) } else { 0.0 }
        };
        let mut even: Vec<f32> = (0..whole(2.0 * reach)).map(at).collect();
        let mut sorted = even.clone();
        sorted.sort_by(f32::total_cmp);
        let cap = sorted.get(sorted.len().saturating_sub(1 + 2 * whole(spaces))).copied()?.max(1e-6);
        for x in &mut even {
            *x = x.min(cap);
        }
        Some(even)
    }

    /// The best `lines` even lines in this family, the horizon told by the other.
    pub fn comb(&self, g: f64, lines: u32) -> Option<Comb> {
        let wide = self.wide();
        let spaces = f64::from(lines.checked_sub(1)?);
        if spaces < 1.0 {
            return None;
        }
        let reach = REACH * wide;
        let even = self.even(g, spaces)?;
        let [least, widest] = GRID;
        let (mut best, mut found) = (0.0, None);
        let mut period = (least * wide / spaces).max(LEAST_PERIOD);
        while period * spaces < widest * wide {
            // Lines are three pixels wide here, so every second start will do.
            for start in (0..whole((2.0 * reach - period * spaces).max(0.0))).step_by(2) {
                let sum = standing_out(&even, start as f64, period, lines);
                if sum > best {
                    best = sum;
                    found = Some((start as f64 + 0.5 - reach, period));
                }
            }
            period += PERIOD_STEP / spaces;
        }
        let (first, period) = found?;
        Some(Comb { first, period, g, score: f64::from(best) / f64::from(lines) })
    }
}

/// How much stronger even lines are than what lies halfway between them.
fn standing_out(even: &[f32], start: f64, period: f64, lines: u32) -> f32 {
    let at = |place: f64| even.get(whole(place)).copied().unwrap_or(0.0);
    let mut sum = 0.0;
    for line in 0..lines {
        let place = start + f64::from(line) * period;
        sum += at(place);
        if line > 0 {
            sum -= at(place - period / 2.0);
        }
    }
    sum
}

/// g of the upright and of the level family, from where both meet.
pub fn horizon(upright: &Pencil, level: &Pencil) -> Option<[f64; 2]> {
    // The points (α, 1, −β) and (1, α′, −β′); the horizon is the line through both.
    let (a, b, c, d) = (upright.alpha, upright.beta, level.alpha, level.beta);
    let last = a * c - 1.0;
    (last < -CROSSING).then(|| [(-d + b * c) / last, (-b + a * d) / last])
}
