//! Thin lines: places brighter (or darker) than what is on *both* sides of them, so that steps don't count.

use super::super::picture::{Reduced, split};

/// Which lines.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Family {
    /// Nearly upright ones.
    Upright,
    /// Nearly level ones.
    Level,
}

/// How much of a line there is at every pixel, 0 to 1.
#[derive(Clone, Debug)]
pub struct Ridges {
    /// Pixels to the right.
    pub width: usize,
    /// Pixels downwards.
    pub height: usize,
    /// Row by row.
    pub strength: Vec<f32>,
}

/// How far to the sides of a line is looked, in pixels of the copy: from and to.
const SIDES: [usize; 2] = [3, 4];

/// Lines count fully where they stand out by more than this many standard deviations of the noise, and these levels.
const OF_NOISE: f32 = 4.0;
const LEAST: f32 = 2.5;

/// Lines of one family, brighter than their surroundings (or darker) in any of the three colours, beside a noise of
/// standard deviation `noise`.
pub fn ridges(copy: &Reduced, family: Family, bright: bool, noise: f32) -> Ridges {
    let (width, height) = (copy.width, copy.height);
    let mut strength = vec![0.0; width * height];
    let [near, far] = SIDES;
    if width <= 2 * far || height <= 2 * far {
        return Ridges { width, height, strength };
    }
    let (across, along) = match family {
        Family::Upright => (1, width),
        Family::Level => (width, 1),
    };
    let half = (OF_NOISE * noise).max(LEAST);
    let sign = if bright { 1.0 } else { -1.0 };
    for y in far..height - far {
        for x in far..width - far {
            let at = y * width + x;
            let mut most = 0.0_f32;
            for channel in 0..3 {
                let of = |at: usize| copy.rgb[at][channel];
                // The mean of three along the line quiets the noise.
                let mean = |at: usize| of(at - along) + of(at) + of(at + along);
                let middle = mean(at - across) + 2.0 * mean(at) + mean(at + across);
                let left = mean(at - near * across) + mean(at - far * across);
                let right = mean(at + near * across) + mean(at + far * across);
                let (left, right) = (sign * left / 6.0, sign * right / 6.0);
                most = most.max(sign * middle / 12.0 - left.max(right));
            }
            let square = most * most;
            strength[at] = square / (square + half * half);
        }
    }
    Ridges { width, height, strength }
}

/// Standard deviation of the noise of a pixel, by the median of differences of neighbours.
pub fn noise(copy: &Reduced) -> f32 {
    let pairs = copy.rgb.iter().zip(copy.rgb.iter().skip(1)).step_by(7);
    let mut steps: Vec<f32> = pairs.map(|(a, b)| (a[1] - b[1]).abs()).collect();
    // The median of |difference| of two normal numbers is 0.954 of their standard deviation.
    median(&mut steps) / 0.954
}

/// The median; 0 of nothing. The upper of the two middle ones of an even number.
pub fn median(values: &mut [f32]) -> f32 {
    if values.is_empty() {
        return 0.0;
    }
    let middle = values.len() / 2;
    *values.select_nth_unstable_by(middle, f32::total_cmp).1
}

impl Ridges {
    /// The strength at a place, between the four pixels next to it; 0 outside.
    pub fn at(&self, x: f64, y: f64) -> f32 {
        let (x, y) = (x - 0.5, y - 0.5);
        if !(x >= 0.0 && y >= 0.0 && x <= (self.width - 1) as f64 && y <= (self.height - 1) as f64) {
            return 0.0;
        }
        let (left, top, fx, fy) = split(x, y, self.width, self.height);
        let (right, below) = ((left + 1).min(self.width - 1), (top + 1).min(self.height - 1));
        let of = |x: usize, y: usize| self.strength[y * self.width + x];
        let above = of(left, top) * (1.0 - fx) + of(right, top) * fx;
        let under = of(left, below) * (1.0 - fx) + of(right, below) * fx;
        above * (1.0 - fy) + under * fy
    }
}
