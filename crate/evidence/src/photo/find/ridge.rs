//! Thin lines: places brighter (or darker) than what is on *both* sides of them, so that steps don't count.

use super::super::picture::{Reduced, split};
use slope_engine::rank::select;

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

/// Lines of one family, brighter than their surroundings and darker than them, in any of the three colours, beside a
/// noise of standard deviation `noise`.
pub fn ridges(copy: &Reduced, family: Family, noise: f32) -> [Ridges; 2] {
    let (width, height) = (copy.width, copy.height);
    let [near, far] = SIDES;
    let mut strengths = [vec![0.0; width * height], vec![0.0; width * height]];
    if width > 2 * far && height > 2 * far {
        let (across, along) = match family {
            Family::Upright => (1, width),
            Family::Level => (width, 1),
        };
        // Sums of three along the line quiet the noise.
        let mut sums = copy.rgb.clone();
        let beside = copy.rgb.iter().zip(&copy.rgb[2 * along..]);
        for (sum, (a, b)) in sums[along..].iter_mut().zip(beside) {
            *sum = [sum[0] + a[0] + b[0], sum[1] + a[1] + b[1], sum[2] + a[2] + b[2]];
        }
        let half = (OF_NOISE * noise).max(LEAST);
        let square = |x: f32| x * x / (x * x + half * half);
        let [bright, dark] = &mut strengths;
        for y in far..height - far {
            for x in far..width - far {
                let at = y * width + x;
                let of = |at: usize| sums[at];
                let (a, b, c) = (of(at - across), of(at), of(at + across));
                let (d, e) = (of(at - near * across), of(at - far * across));
                let (f, g) = (of(at + near * across), of(at + far * across));
                let (mut above, mut below) = (0.0_f32, 0.0_f32);
                for i in 0..3 {
                    let middle = (a[i] + 2.0 * b[i] + c[i]) / 12.0;
                    let (left, right) = ((d[i] + e[i]) / 6.0, (f[i] + g[i]) / 6.0);
                    above = above.max(middle - left.max(right));
                    below = below.max(left.min(right) - middle);
                }
                (bright[at], dark[at]) = (square(above), square(below));
            }
        }
    }
    strengths.map(|strength| Ridges { width, height, strength })
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
    select(values, values.len() / 2, f32::total_cmp).map_or(0.0, |(_, value)| value)
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
