//! ½ dχ²/db of redrawn readings as a polynomial in the slope b.
//!
//! With intercept, free columns and shared errors at their best, χ²(b) = r(b)ᵀ P(b) r(b), where r = y − b x. The matrix
//! P = W⁻¹ − (what those unknowns take up) hangs on the noise, the columns and b, but on no reading, and it varies
//! slowly with b. So it is worked out once, at a few slopes about the nominal one: the *nodes*. The readings enter
//! through three sums at each node alone, yᵀPy, xᵀPy and xᵀPx: rows of multiplications and additions.
//!
//! In between, ω^m P is interpolated through m Chebyshev nodes by a polynomial in z. Errors in x enter W by b², hence
//! z = s + κ s², which is b² less its nominal value; s = (b − nominal)/reach. ω = 1 + g z is the growth of a mean
//! variance. (Take 1/W for P: what m nodes leave out is the remainder of ω^m on division by W, which goes with the
//! m-th power of how differently the rows' variances grow. Where they grow alike, one node is exact.)
//!
//! P maps the constant and the free columns to zero at every node, and so does any mixture of nodes: no step and no
//! offset in the readings costs accuracy in between. How good the interpolation is, [`refit`](super::refit) tries out.

use std::array::from_fn;

use super::{
    basis::{OrthonormalBasis, dot},
    chebyshev::{self, lagrange, value},
    noise::NoiseForm,
    problem::Problem,
};

/// The most coefficients of the gradient.
pub(super) const MOST_COEFFICIENTS: usize = 14;
/// Lanes whose sums stay in registers together.
const BLOCK: usize = 4;

/// One row of several trials, each in a lane of its own: x less its anchor, and y less the nominal line.
pub(super) type RowLanes<const L: usize> = [[f64; L]; 2];

/// P at some slopes about the nominal one.
#[derive(Debug, Clone)]
pub(super) struct Nodes {
    /// The slope at s = 0.
    pub nominal: f64,
    /// Change of slope for s = 1.
    pub reach: f64,
    coefficients: usize,
    all: Vec<Node>,
}

/// How finely P and the gradient are interpolated.
#[derive(Debug, Clone, Copy)]
pub(super) struct Resolution {
    pub nodes: usize,
    /// Coefficients of the gradient: from 4 to [`MOST_COEFFICIENTS`].
    pub coefficients: usize,
}

/// ω^m P at one slope, and what becomes of its sums.
#[derive(Debug, Clone)]
struct Node {
    matrix: Matrix,
    /// What yᵀPy, xᵀPy and xᵀPx add to each coefficient of the gradient.
    to_gradient: Vec<[f64; 3]>,
    /// What xᵀPx adds to the information and to its change per s.
    to_information: [f64; 2],
}

/// ω^m P at one slope: a diagonal, or where rows vary together squares of directions, less a few directions.
#[derive(Debug, Clone)]
struct Matrix {
    /// The diagonal part, row by row; empty where rows vary together.
    weights: Vec<f64>,
    /// 1/Σ weights: the constant's part. 0 where rows vary together.
    per_total: f64,
    /// Where rows vary together: the directions whose squares are what noise alone leaves, each up to its last entry that
    /// is not zero.
    whole: Vec<Vec<f64>>,
    /// What free columns and shared errors take up beside the constant: directions. Where rows vary together, the
    /// constant's is one of them.
    directions: Vec<Vec<f64>>,
    /// P x at the anchors, so that nearly all of x that the other unknowns take up is never summed. Empty where the
    /// anchors are one place, whose P x is zero.
    px_at_anchors: Vec<f64>,
    /// xᵀPx at the anchors.
    xpx_at_anchors: f64,
}

/// ½ dχ²/ds as a polynomial in s, of several trials.
#[derive(Debug, Clone, Copy)]
pub(super) struct Gradient<const L: usize> {
    coefficients: [[f64; L]; MOST_COEFFICIENTS],
    len: usize,
    /// xᵀPx in units of s, and its change per s.
    information: [[f64; L]; 2],
}

/// The least χ² of several trials.
#[derive(Debug, Clone, Copy)]
pub(super) struct LeastOfEach<const L: usize> {
    /// Where.
    pub s: [f64; L],
    /// The last step there.
    pub step: [f64; L],
    /// ½ d²χ²/ds².
    pub curvature: [f64; L],
    /// xᵀPx in units of s: what the curvature would be with P held still (the Gauss–Newton information).
    pub information: [f64; L],
}

impl Nodes {
    /// Works P out at slopes within `reach` of the nominal one. `anchors` are the positions, from the origin of
    /// `problem`, from which x will be counted; without columns none, and x is counted from the origin. `None` where
    /// the noise allows no weights.
    pub fn new(
        problem: &Problem,
        noise: &dyn NoiseForm,
        (nominal, reach): (f64, f64),
        resolution: Resolution,
        anchors: Option<&[f64]>,
    ) -> Option<Self> {
        /// Beyond this z does not rise with s everywhere.
        const RISING: f64 = 0.25;
        let mut noise = noise.boxed();
        let kappa = Some(0.5 * reach / nominal).filter(|kappa| kappa.abs() < RISING).unwrap_or(0.0);
        let growth = growth(noise.as_mut(), nominal, reach)?;
        let places = chebyshev::places(resolution.nodes);
        let node = |k: usize| {
            let factor = |s: f64| {
                let omega = 1.0 + growth * s * (1.0 + kappa * s);
                (0..resolution.nodes).fold(1.0, |power, _| power * omega)
            };
            let part = lagrange(&places, k, kappa);
            let slant = part.get(1).unwrap_or(&0.0) - part[0] * growth * resolution.nodes as f64;
            let slope = nominal + reach * places[k];
            Some(Node {
                matrix: Matrix::new(problem, noise.as_mut(), slope, factor(places[k]), anchors)?,
                to_gradient: to_gradient(|s| value(&part, s) / factor(s), reach, resolution.coefficients),
                to_information: [part[0], slant].map(|share| reach * reach * share),
            })
        };
        let all = (0..resolution.nodes).map(node).collect::<Option<_>>()?;
        Some(Nodes { nominal, reach, coefficients: resolution.coefficients, all })
    }

    /// The gradient in the trials whose rows these are.
    pub fn gradient<const L: usize>(&self, rows: &[RowLanes<L>]) -> Gradient<L> {
        let mut coefficients = [[0.0; L]; MOST_COEFFICIENTS];
        let mut information = [[0.0; L]; 2];
        for node in &self.all {
            let [yy, xy, xx] = node.matrix.sums(rows);
            for (coefficient, [by_yy, by_xy, by_xx]) in coefficients.iter_mut().zip(&node.to_gradient) {
                for l in 0..L {
                    coefficient[l] += by_yy * yy[l] + by_xy * xy[l] + by_xx * xx[l];
                }
            }
            for (information, by_xx) in information.iter_mut().zip(node.to_information) {
                for l in 0..L {
                    information[l] += by_xx * xx[l];
                }
            }
        }
        Gradient { coefficients, len: self.coefficients, information }
    }

    /// ½ dχ²/db at `s` in one trial.
    pub fn gradient_at(&self, s: f64, rows: &[RowLanes<1>]) -> f64 {
        let [[value], _] = self.gradient(rows).at([s]);
        value / self.reach
    }
}

impl Matrix {
    fn new(
        problem: &Problem,
        noise: &mut dyn NoiseForm,
        slope: f64,
        factor: f64,
        anchors: Option<&[f64]>,
    ) -> Option<Self> {
        noise.at_slope(slope).ok()?;
        let n = problem.x.len();
        let columns = 1 + problem.free.len() + problem.shared.len();
        let mut basis = OrthonormalBasis::new(n + problem.shared.len(), 0, columns);
        basis.add(|column| {
            column[..n].fill(1.0);
            noise.whiten(&mut column[..n]);
        });
        for free in &problem.free {
            basis.add(|column| {
                column[..n].copy_from_slice(&free.effect);
                noise.whiten(&mut column[..n]);
            });
        }
        for (k, shared) in problem.shared.iter().enumerate() {
            basis.add(|column| {
                shared.write_effect(slope, &mut column[..n]);
                noise.whiten(&mut column[..n]);
                column[n + k] = 1.0;
            });
        }
        let back = |column: &[f64], factor: f64| -> Vec<f64> {
            let mut weighed = vec![0.0; n];
            noise.weigh(&column[..n], &mut weighed);
            for value in &mut weighed {
                *value *= factor;
            }
            weighed
        };
        let roots = noise.root_weights();
        let diagonal = !roots.is_empty();
        let weights: Vec<f64> = if diagonal { back(roots, factor) } else { vec![] };
        let mut whole = noise.inverse_root();
        whole.iter_mut().flatten().for_each(|entry| *entry *= factor.sqrt());
        let beside = basis.columns().skip(usize::from(diagonal));
        let directions = beside.map(|column| back(column, factor.sqrt())).collect();
        let (px_at_anchors, xpx_at_anchors) = anchors.map_or((vec![], 0.0), |anchors| {
            let mut left = vec![0.0; n + problem.shared.len()];
            left[..n].copy_from_slice(anchors);
            noise.whiten(&mut left[..n]);
            let projected = basis.project(&mut left, &mut vec![0.0; columns]);
            (back(&left, factor), projected.left * factor)
        });
        let per_total = if diagonal { 1.0 / weights.iter().sum::<f64>() } else { 0.0 };
        Some(Self { weights, per_total, whole, directions, px_at_anchors, xpx_at_anchors })
    }

    /// yᵀPy, xᵀPy and xᵀPx.
    fn sums<const L: usize>(&self, rows: &[RowLanes<L>]) -> [[f64; L]; 3] {
        let [x, y, mut yy, mut xy, mut xx] = moments(&self.weights, rows);
        for l in 0..L {
            let (x_part, y_part) = (x[l] * self.per_total, y[l] * self.per_total);
            yy[l] -= y[l] * y_part;
            xy[l] -= x[l] * y_part;
            xx[l] -= x[l] * x_part;
        }
        for direction in &self.whole {
            let [x, y] = along(direction, rows);
            for l in 0..L {
                yy[l] += y[l] * y[l];
                xy[l] += x[l] * y[l];
                xx[l] += x[l] * x[l];
            }
        }
        for direction in &self.directions {
            let [x, y] = along(direction, rows);
            for l in 0..L {
                yy[l] -= y[l] * y[l];
                xy[l] -= x[l] * y[l];
                xx[l] -= x[l] * x[l];
            }
        }
        if !self.px_at_anchors.is_empty() {
            let [x, y] = along(&self.px_at_anchors, rows);
            for l in 0..L {
                xy[l] += y[l];
                xx[l] += 2.0 * x[l] + self.xpx_at_anchors;
            }
        }
        [yy, xy, xx]
    }
}

/// Σ w x, Σ w y, Σ w y², Σ w x y and Σ w x².
fn moments<const L: usize>(weights: &[f64], rows: &[RowLanes<L>]) -> [[f64; L]; 5] {
    let mut all = [[0.0; L]; 5];
    for first in (0..L).step_by(BLOCK) {
        let lanes = first..L.min(first + BLOCK);
        let mut sums = [[0.0; BLOCK]; 5];
        for (weight, [x, y]) in weights.iter().zip(rows) {
            for (l, (x, y)) in x[lanes.clone()].iter().zip(&y[lanes.clone()]).enumerate() {
                let (wx, wy) = (weight * x, weight * y);
                sums[0][l] += wx;
                sums[1][l] += wy;
                sums[2][l] += wy * y;
                sums[3][l] += wx * y;
                sums[4][l] += wx * x;
            }
        }
        for (all, sums) in all.iter_mut().zip(&sums) {
            all[lanes.clone()].copy_from_slice(&sums[..lanes.len()]);
        }
    }
    all
}

/// Sums of a direction's products with x and y.
fn along<const L: usize>(direction: &[f64], rows: &[RowLanes<L>]) -> [[f64; L]; 2] {
    let mut sums = [[0.0; L]; 2];
    for (entry, [x, y]) in direction.iter().zip(rows) {
        for l in 0..L {
            sums[0][l] += entry * x[l];
            sums[1][l] += entry * y[l];
        }
    }
    sums
}

impl<const L: usize> Gradient<L> {
    /// Where it is zero: the series of the root to its third term, then Newton's method. Every trial takes the same
    /// number of steps, so that none hangs on its neighbours.
    pub fn zero(&self) -> LeastOfEach<L> {
        const STEPS: usize = 2;
        let [constant, linear, square, cube] = [0, 1, 2, 3].map(|k| self.coefficients[k]);
        let mut s: [f64; L] = from_fn(|l| {
            let per = 1.0 / linear[l];
            let first = -constant[l] * per;
            let (bend, twist) = (square[l] * per, cube[l] * per);
            first * (1.0 - first * (bend - first * (2.0 * bend * bend - twist)))
        });
        let [mut step, mut curvature] = [[0.0; L]; 2];
        for _ in 0..STEPS {
            let [value, first] = self.at(s);
            for l in 0..L {
                step[l] = -value[l] / first[l];
                s[l] += step[l];
            }
            curvature = first;
        }
        let information = from_fn(|l| self.information[0][l] + s[l] * self.information[1][l]);
        LeastOfEach { s, step, curvature, information }
    }

    /// The polynomial and its derivative.
    fn at(&self, s: [f64; L]) -> [[f64; L]; 2] {
        let [mut value, mut first] = [[0.0; L]; 2];
        for coefficient in self.coefficients[..self.len].iter().rev() {
            for l in 0..L {
                first[l] = first[l] * s[l] + value[l];
                value[l] = value[l] * s[l] + coefficient[l];
            }
        }
        [value, first]
    }
}

/// g: the mean of the rows' relative growth of variance, per s.
fn growth(noise: &mut dyn NoiseForm, slope: f64, reach: f64) -> Option<f64> {
    noise.at_slope(slope).ok()?;
    let weights = noise.weights();
    let [in_x, cross] = noise
        .in_x()
        .map(|list| if list.is_empty() { 0.0 } else { dot(&weights, &list) / weights.len() as f64 });
    Some(2.0 * reach * (slope * in_x - cross))
}

/// What yᵀPy, xᵀPy and xᵀPx at a node add to the coefficients of ½ d/ds of `part` (yᵀPy − 2 δ xᵀPy + δ² xᵀPx), with
/// δ = `reach` · s: each of the three functions of s as a polynomial through Chebyshev's places.
fn to_gradient(part: impl Fn(f64) -> f64, reach: f64, coefficients: usize) -> Vec<[f64; 3]> {
    let places = chebyshev::places(coefficients + 1);
    let mut parts = vec![[0.0; 3]; coefficients];
    for (k, s) in places.iter().enumerate() {
        let delta = reach * s;
        let here = [1.0, -2.0 * delta, delta * delta].map(|by| by * part(*s));
        let polynomial = lagrange(&places, k, 0.0);
        for (power, (parts, coefficient)) in (1..).zip(parts.iter_mut().zip(&polynomial[1..])) {
            for (part, here) in parts.iter_mut().zip(here) {
                *part += 0.5 * f64::from(power) * coefficient * here;
            }
        }
    }
    parts
}
