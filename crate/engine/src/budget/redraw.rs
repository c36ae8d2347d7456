//! Monte Carlo on a line: readings drawn anew, the line fitted again, a quantity k/b taken from its slope b.

use super::{Random, Shape};
use crate::line::{Data, Fit, Refit, SharedColumn};

/// Trials fitted side by side. Part of what a seed means: another number would draw in another order.
const LANES: usize = 8;

/// Errors that rows have for themselves.
#[derive(Clone, Debug, PartialEq)]
pub struct OwnErrors {
    /// Standard uncertainty of each x; empty for zeros.
    pub x: Vec<f64>,
    /// Standard uncertainty of each y; empty for zeros.
    pub y: Vec<f64>,
    /// Errors of several rows together, each of one standard deviation: what a covariance matrix comes to.
    pub columns: Vec<SharedColumn>,
    /// How they are distributed.
    pub shape: Shape,
    /// Degrees of freedom of their size, which is drawn once for all rows of a trial as √(ν/χ²_ν): normal errors then
    /// give Student's t (JCGM 101, 6.4.9.2). `None`: the size is known.
    pub degrees_of_freedom: Option<f64>,
}

/// An error drawn once for all rows that share it.
#[derive(Clone, Debug, PartialEq)]
pub struct CommonError {
    /// What one standard uncertainty of it does to each row.
    pub column: SharedColumn,
    /// How it is distributed.
    pub shape: Shape,
}

/// The quantity k/b that a trial gives, with the errors of k.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Quotient {
    /// k.
    pub k: f64,
    /// Relative standard uncertainty of k, normal.
    pub relative: f64,
    /// Largest share by which k may be larger, or smaller where it is negative; any share up to it is as likely.
    pub lengthening: f64,
}

/// Everything that trials need.
#[derive(Clone, Debug)]
pub struct Redraw {
    refit: Refit,
    x: Vec<f64>,
    y: Vec<f64>,
    own: Vec<OwnErrors>,
    common: Vec<CommonError>,
    quotient: Quotient,
    drawn_x: Vec<[f64; LANES]>,
    drawn_y: Vec<[f64; LANES]>,
}

impl Redraw {
    /// Prepares trials about the readings in `data`, whose line is `fit`.
    pub fn new(
        data: Data,
        fit: &Fit,
        own: Vec<OwnErrors>,
        common: Vec<CommonError>,
        quotient: Quotient,
    ) -> Self {
        Self {
            refit: Refit::new(&data, fit),
            drawn_x: vec![[0.0; LANES]; data.x.len()],
            drawn_y: vec![[0.0; LANES]; data.y.len()],
            x: data.x,
            y: data.y,
            own,
            common,
            quotient,
        }
    }

    /// The results of so many trials, in their order; NaN where the readings drawn gave no line.
    pub fn run(&mut self, random: &mut Random, trials: usize) -> Vec<f64> {
        let mut results = Vec::with_capacity(trials + LANES);
        while results.len() < trials {
            reset(&mut self.drawn_x, &self.x);
            reset(&mut self.drawn_y, &self.y);
            for own in &self.own {
                own.draw(random, &mut self.drawn_x, &mut self.drawn_y);
            }
            for common in &self.common {
                common.draw(random, &mut self.drawn_x, &mut self.drawn_y);
            }
            let slopes = self.refit.slopes(&self.drawn_x, &self.drawn_y);
            results.extend(slopes.map(|slope| self.quotient.draw(random) / slope));
        }
        results.truncate(trials);
        results
    }
}

fn reset(lanes: &mut [[f64; LANES]], values: &[f64]) {
    for (lanes, value) in lanes.iter_mut().zip(values) {
        *lanes = [*value; LANES];
    }
}

impl OwnErrors {
    fn draw(&self, random: &mut Random, x: &mut [[f64; LANES]], y: &mut [[f64; LANES]]) {
        let size = self
            .degrees_of_freedom
            .map_or([1.0; LANES], |nu| std::array::from_fn(|_| (nu / random.chi_square(nu)).sqrt()));
        for column in &self.columns {
            let z: [f64; LANES] = std::array::from_fn(|lane| size[lane] * self.shape.draw(random));
            spread(column, z, x, y);
        }
        for (list, lanes) in [(&self.x, x), (&self.y, y)] {
            // Told apart here, once, rather than at each number.
            match self.shape {
                Shape::Normal => scatter(list, lanes, size, || random.normal()),
                shape => scatter(list, lanes, size, || shape.draw(random)),
            }
        }
    }
}

fn scatter(list: &[f64], lanes: &mut [[f64; LANES]], size: [f64; LANES], mut draw: impl FnMut() -> f64) {
    for (u, lanes) in list.iter().zip(lanes) {
        if *u > 0.0 {
            for (lane, size) in lanes.iter_mut().zip(size) {
                *lane += u * size * draw();
            }
        }
    }
}

impl CommonError {
    fn draw(&self, random: &mut Random, x: &mut [[f64; LANES]], y: &mut [[f64; LANES]]) {
        spread(&self.column, std::array::from_fn(|_| self.shape.draw(random)), x, y);
    }
}

/// Moves each row by its share of an error.
fn spread(column: &SharedColumn, z: [f64; LANES], x: &mut [[f64; LANES]], y: &mut [[f64; LANES]]) {
    for (effects, lanes) in [(&column.x, x), (&column.y, y)] {
        for (effect, lanes) in effects.iter().zip(lanes) {
            for (lane, z) in lanes.iter_mut().zip(z) {
                *lane += effect * z;
            }
        }
    }
}

impl Quotient {
    fn draw(&self, random: &mut Random) -> f64 {
        let relative = if self.relative > 0.0 { 1.0 + self.relative * random.normal() } else { 1.0 };
        let longer = if self.lengthening == 0.0 { 1.0 } else { 1.0 + self.lengthening * random.unit() };
        self.k * relative * longer
    }
}
