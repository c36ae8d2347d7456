//! The traces: what is on the screen beside its ground and its grid, followed from left to right.
//!
//! The picture is looked at from straight above, by the plane of its grid, in [`SAMPLES`] samples to a division. A
//! trace is the path through it that keeps on colour that neither ground nor grid explains (dynamic programming:
//! reward along the path, a price for each step up or down, higher where there is no stroke). The second is the best path beside the first; where the
//! two have different colours, both are followed again, each in its own.

use super::super::mark::PixelPoint;
use super::super::picture::Reduced;
use super::super::plane::Plane;
use super::ridge::median;

/// Samples in a division, either way.
pub const SAMPLES: usize = 40;

/// What a step of one sample up or down costs, in units of a sample on the path: along a stroke, and where there is
/// none, as between two traces.
const PRICES: [f32; 2] = [0.01, 0.1];

/// How far beside the first trace the second begins, samples.
const APART: usize = 5;

/// Colours over the ground are alike where the cosine between them is more than this.
const ALIKE: f32 = 0.9;

/// How near each other two traces of one colour meet, samples.
const MEET: usize = 3 * APART;

/// How near a grid line its colour explains what is there, divisions; and how near the ticked middle lines.
const LINE: f64 = 0.085;
const TICKS: f64 = 0.15;

/// The screen seen from straight above.
pub struct Flat {
    /// Samples along the time axis.
    pub width: usize,
    /// Samples downwards.
    pub height: usize,
    /// Colour over the ground.
    colour: Vec<[f32; 3]>,
    /// How much neither ground nor grid explains, 0 to 1.
    pub strange: Vec<f32>,
    /// How large what is strange is, in levels of colour.
    pub contrast: f32,
}

/// A trace followed over the screen.
#[derive(Clone, Debug)]
pub struct Curve {
    /// The sample row at each sample column.
    pub rows: Vec<usize>,
    /// Mean of what is strange along it, 0 to 1.
    pub seen: f32,
    /// Its own map, row by row of the flat screen: how much of its own colour there is.
    pub own: Vec<f32>,
    /// Width of the map.
    pub width: usize,
    /// Its colour over the ground, levels.
    pub colour: [f32; 3],
    /// Whether the other trace has the same colour and comes so near that either may have been followed into the other.
    pub meets: bool,
}

fn length([a, b, c]: [f32; 3]) -> f32 {
    (a * a + b * b + c * c).sqrt()
}

/// The product of two colours as vectors.
pub fn dot([a, b, c]: [f32; 3], [d, e, f]: [f32; 3]) -> f32 {
    a * d + b * e + c * f
}

/// One colour over another.
pub fn less(a: [f32; 3], b: [f32; 3]) -> [f32; 3] {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

/// Whether two colours over the ground are one.
pub fn alike(a: [f32; 3], b: [f32; 3]) -> bool {
    dot(a, b) > ALIKE * (length(a) * length(b)).max(1e-3)
}

/// Medians of each colour.
pub fn medians(of: &[[f32; 3]]) -> [f32; 3] {
    [0, 1, 2].map(|i| median(&mut of.iter().map(|c| c[i]).collect::<Vec<f32>>()))
}

/// Distance of a sample from the next line of the grid, divisions.
fn off_line(sample: usize) -> f64 {
    let q = (sample as f64 + 0.5) / SAMPLES as f64;
    (q - libm::round(q)).abs()
}

impl Flat {
    /// The screen of columns × rows divisions.
    pub fn of(copy: &Reduced, plane: &Plane, columns: u32, rows: u32) -> Self {
        let (columns, rows) = (columns as usize, rows as usize);
        let (width, height) = (columns * SAMPLES, rows * SAMPLES);
        let place = |sample: usize| (sample as f64 + 0.5) / SAMPLES as f64;
        let mut colour = Vec::with_capacity(width * height);
        for y in 0..height {
            for x in 0..width {
                let PixelPoint { x, y } = plane.pixel([place(x), place(y)]);
                colour.push(copy.at(x, y));
            }
        }
        let mut flat = Self { width, height, colour, strange: Vec::new(), contrast: 0.0 };
        flat.take_ground(columns, rows);
        flat.take_grid(columns, rows);
        flat
    }

    /// Takes off the ground: the median of each division's inside, smoothly from one to the next.
    fn take_ground(&mut self, columns: usize, rows: usize) {
        let inside =
            |cell: usize| (cell * SAMPLES + SAMPLES / 6..(cell + 1) * SAMPLES - SAMPLES / 6).step_by(2);
        let mut ground = Vec::with_capacity(columns * rows);
        let mut of = Vec::new();
        for row in 0..rows {
            for column in 0..columns {
                of.clear();
                for y in inside(row) {
                    of.extend(inside(column).map(|x| self.colour[y * self.width + x]));
                }
                ground.push(medians(&of));
            }
        }
        let ground = Reduced { width: columns, height: rows, scale: 1.0, rgb: ground };
        for (i, colour) in self.colour.iter_mut().enumerate() {
            let (x, y) = (i % self.width, i / self.width);
            let here = ground.at((x as f64 + 0.5) / SAMPLES as f64, (y as f64 + 0.5) / SAMPLES as f64);
            *colour = less(*colour, here);
        }
    }

    /// Tells what the grid's colour explains near its lines, and how strange the rest is.
    fn take_grid(&mut self, columns: usize, rows: usize) {
        let (width, height) = (self.width, self.height);
        let on_line = |x: usize, y: usize| off_line(x) < 0.02 && off_line(y) > 0.25;
        let near = |i: usize| (i % width, i / width);
        let lines = self.colour.iter().enumerate().filter(|(i, _)| {
            let (x, y) = near(*i);
            on_line(x, y) || on_line(y, x)
        });
        let grid = medians(&lines.map(|(_, colour)| *colour).collect::<Vec<_>>());
        let square = dot(grid, grid).max(1e-3);
        let ticked = |sample: usize, middle: usize| {
            ((sample as f64 + 0.5) / SAMPLES as f64 - middle as f64).abs() < TICKS
        };
        let size = |(i, colour): (usize, &[f32; 3])| {
            let (x, y) = near(i);
            let near_line = off_line(x).min(off_line(y)) < LINE;
            if near_line || ticked(x, columns / 2) || ticked(y, rows / 2) {
                let share = (dot(*colour, grid) / square).clamp(0.0, 1.3);
                length(less(*colour, grid.map(|g| g * share)))
            } else {
                length(*colour)
            }
        };
        let sizes: Vec<f32> = self.colour.iter().enumerate().map(size).collect();
        // Each column has a trace somewhere: the median of their largest is how strong a trace is.
        let largest = |x: usize| (0..height).map(|y| sizes[y * width + x]).fold(0.0, f32::max);
        self.contrast = median(&mut (0..width).map(largest).collect::<Vec<_>>());
        let half = (0.3 * self.contrast).max(4.0);
        self.strange = sizes.into_iter().map(|s| s * s / (s * s + half * half)).collect();
    }

    /// The two traces; none where there is nothing to follow.
    pub fn curves(&self) -> Option<[Curve; 2]> {
        let first = self.follow(self.strange.clone())?;
        let mut rest = self.strange.clone();
        self.blot(&first, &mut rest);
        let second = self.follow(rest)?;
        let colours = [&first, &second].map(|curve| self.colour_of(curve));
        if alike(colours[0], colours[1]) {
            let mut near = first.rows.iter().zip(&second.rows).map(|(a, b)| a.abs_diff(*b));
            let meets = near.any(|apart| apart <= MEET);
            return Some([(first, colours[0]), (second, colours[1])].map(|(curve, colour)| Curve {
                colour,
                meets,
                ..curve
            }));
        }
        // Each in its own colour: they may cross.
        let own = |which: usize| {
            let (mine, other) = (colours[which], colours[1 - which]);
            let (mine, other) = (mine.map(|c| c / length(mine)), other.map(|c| c / length(other)));
            let share = |(strange, colour): (&f32, &[f32; 3])| {
                if dot(*colour, mine) > dot(*colour, other) { *strange } else { 0.2 * strange }
            };
            let curve = self.follow(self.strange.iter().zip(&self.colour).map(share).collect())?;
            Some(Curve { colour: colours[which], ..curve })
        };
        Some([own(0)?, own(1)?])
    }

    /// Median colour over the ground along a path, where it is well seen.
    fn colour_of(&self, curve: &Curve) -> [f32; 3] {
        let places = curve.rows.iter().enumerate().map(|(x, y)| y * self.width + x);
        medians(&places.filter(|at| self.strange[*at] > 0.5).map(|at| self.colour[at]).collect::<Vec<_>>())
    }

    /// The path with the most reward.
    fn follow(&self, own: Vec<f32>) -> Option<Curve> {
        let (width, height) = (self.width, self.height);
        if width == 0 || height == 0 {
            return None;
        }
        let mut sums: Vec<f32> = (0..height).map(|y| own[y * width]).collect();
        // Where the best path to (x, y) was at x − 1.
        let mut from = vec![0_u16; width * height];
        for x in 1..width {
            let mut came: Vec<usize> = (0..height).collect();
            let [on, off] = PRICES;
            let price = |y: usize| off + (on - off) * own[y * width + x];
            for y in 1..height {
                let coming = sums[y - 1] - price(y);
                if coming > sums[y] {
                    (sums[y], came[y]) = (coming, came[y - 1]);
                }
            }
            for y in (0..height - 1).rev() {
                let coming = sums[y + 1] - price(y);
                if coming > sums[y] {
                    (sums[y], came[y]) = (coming, came[y + 1]);
                }
            }
            for y in 0..height {
                sums[y] += own[y * width + x];
                from[y * width + x] = u16::try_from(came[y]).unwrap_or(u16::MAX);
            }
        }
        let mut row = (0..height).max_by(|a, b| sums[*a].total_cmp(&sums[*b]))?;
        let mut rows = vec![0; width];
        for x in (0..width).rev() {
            rows[x] = row;
            row = usize::from(from[row * width + x]);
        }
        let seen = rows.iter().enumerate().map(|(x, y)| own[y * width + x]).sum::<f32>() / width as f32;
        Some(Curve { rows, seen, own, width, colour: [0.0; 3], meets: false })
    }

    /// Wipes out a path with what is next to it.
    fn blot(&self, curve: &Curve, map: &mut [f32]) {
        for (x, y) in curve.rows.iter().enumerate() {
            let next = curve.rows.get(x + 1).unwrap_or(y);
            let (top, bottom) =
                (y.min(next).saturating_sub(APART), (y.max(next) + APART).min(self.height - 1));
            for y in top..=bottom {
                let line = y * self.width;
                map[line + x.saturating_sub(APART)..=line + (x + APART).min(self.width - 1)].fill(0.0);
            }
        }
    }
}
