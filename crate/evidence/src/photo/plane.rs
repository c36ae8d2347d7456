//! The plane of the screen in the picture: the projective transform from divisions to pixels, and back.
//!
//! With X, Y the divisions and x, y the pixels, both counted from their centre in units of their spread,
//! x = (h₀X + h₁Y + h₂)/w, y = (h₃X + h₄Y + h₅)/w, w = h₆X + h₇Y + 1. The centre of the marked crossings lies in the
//! picture, so w is not 0 there and fixing its constant at 1 loses nothing.
//!
//! Marks are what is uncertain, crossings are exact: so the sum of squares is that of the distances in pixels.

use serde::{Deserialize, Serialize};

use super::dense::{Eight, Factor, Normal, dot};
use super::error::PlaneError;
use super::mark::{Corner, PixelPoint};
use super::shape;

/// How far a mark lies from where the plane puts its crossing: mark minus plane.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Residual {
    /// Column and row, divisions.
    pub divisions: [f64; 2],
    /// x and y, pixels.
    pub pixels: [f64; 2],
}

/// A mark that takes no part in the fit, held against the plane.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Check {
    /// How far it lies off.
    pub residual: Residual,
    /// Standard uncertainty of the residual's column and row from marking it and the corners, divisions.
    pub uncertainty: [f64; 2],
}

/// The plane of the screen, with what is known of it.
#[derive(Clone, Debug)]
pub struct Plane {
    /// h₀ … h₇.
    h: Eight,
    /// Of the pixels.
    pixels: Normalization,
    /// Of the divisions.
    grid: Normalization,
    /// Factor of the normal equations: the inverse of its square times `u`² is the covariance of h.
    factor: Factor,
    /// Standard uncertainty of a corner mark in x and in y, in units of the pixel frame.
    u: f64,
    /// The marks as given.
    corners: Vec<Corner>,
}

/// Centre and spread of points.
#[derive(Clone, Copy, Debug)]
struct Normalization {
    centre: [f64; 2],
    spread: f64,
}

impl Normalization {
    /// The frame in which the points have their mean at 0 and a mean square distance of 2 from it.
    fn of(points: impl Iterator<Item = [f64; 2]> + Clone) -> Self {
        let (mut count, mut centre, mut square) = (0.0, [0.0; 2], 0.0);
        for [x, y] in points.clone() {
            count += 1.0;
            centre = [centre[0] + x, centre[1] + y];
        }
        centre = centre.map(|sum| sum / count);
        for [x, y] in points {
            square += (x - centre[0]) * (x - centre[0]) + (y - centre[1]) * (y - centre[1]);
        }
        Self { centre, spread: libm::sqrt(square / count / 2.0) }
    }

    fn inside(&self, [x, y]: [f64; 2]) -> [f64; 2] {
        [(x - self.centre[0]) / self.spread, (y - self.centre[1]) / self.spread]
    }

    fn outside(&self, [x, y]: [f64; 2]) -> [f64; 2] {
        [x * self.spread + self.centre[0], y * self.spread + self.centre[1]]
    }
}

/// Where h puts (X, Y), in the frames, and w.
fn map(h: &Eight, [x, y]: [f64; 2]) -> ([f64; 2], f64) {
    let w = h[6] * x + h[7] * y + 1.0;
    ([(h[0] * x + h[1] * y + h[2]) / w, (h[3] * x + h[4] * y + h[5]) / w], w)
}

/// ∂x/∂h and ∂y/∂h at (X, Y).
fn by_parameters(h: &Eight, at: [f64; 2]) -> [Eight; 2] {
    let ([x, y], w) = map(h, at);
    let [a, b, c] = [at[0] / w, at[1] / w, 1.0 / w];
    [[a, b, c, 0.0, 0.0, 0.0, -x * a, -x * b], [0.0, 0.0, 0.0, a, b, c, -y * a, -y * b]]
}

/// ∂(x, y)/∂(X, Y) at (X, Y).
fn by_place(h: &Eight, at: [f64; 2]) -> [[f64; 2]; 2] {
    let ([x, y], w) = map(h, at);
    [[(h[0] - x * h[6]) / w, (h[1] - x * h[7]) / w], [(h[3] - y * h[6]) / w, (h[4] - y * h[7]) / w]]
}

fn inverse([[a, b], [c, d]]: [[f64; 2]; 2]) -> [[f64; 2]; 2] {
    let det = a * d - b * c;
    [[d / det, -b / det], [-c / det, a / det]]
}

impl Plane {
    /// The plane through four or more marks; with more than four, the one with the least sum of squared distances in
    /// pixels.
    ///
    /// `u_pixels` is the standard uncertainty of a mark, in x and in y alike.
    ///
    /// # Errors
    /// [`PlaneError`], naming the marks that don't fit together.
    pub fn fit(corners: &[Corner], u_pixels: f64) -> Result<Self, PlaneError> {
        if !(u_pixels.is_finite() && u_pixels >= 0.0) {
            return Err(PlaneError::Uncertainty);
        }
        shape::examine(corners)?;
        Self::through(corners, u_pixels).ok_or(PlaneError::Undetermined)
    }

    /// The plane through crossings that were found, not marked, and need no naming.
    pub(super) fn fit_found(corners: &[Corner]) -> Option<Self> {
        (corners.len() >= 4).then(|| Self::through(corners, 0.0))?
    }

    /// The same plane in the pixels of a copy, of which one stands for `scale` either way.
    pub(super) fn on_copy(&self, scale: f64) -> Option<Self> {
        let small = |c: &Corner| Corner { at: PixelPoint { x: c.at.x / scale, y: c.at.y / scale }, ..*c };
        Self::fit_found(&self.corners.iter().map(small).collect::<Vec<_>>())
    }

    fn through(corners: &[Corner], u_pixels: f64) -> Option<Self> {
        let pixels = Normalization::of(corners.iter().map(|c| [c.at.x, c.at.y]));
        let grid = Normalization::of(corners.iter().map(|c| [c.column, c.row]));
        let pairs: Vec<_> = corners
            .iter()
            .map(|c| (grid.inside([c.column, c.row]), pixels.inside([c.at.x, c.at.y])))
            .collect();
        let (h, factor) = refine(&pairs, direct(&pairs)?)?;
        if !h.iter().all(|h| h.is_finite()) || pairs.iter().any(|(at, _)| map(&h, *at).1 <= 0.0) {
            return None;
        }
        let u = u_pixels / pixels.spread;
        Some(Self { h, pixels, grid, factor, u, corners: corners.to_vec() })
    }

    /// The marks that it was fitted to.
    pub fn corners(&self) -> &[Corner] {
        &self.corners
    }

    /// Standard uncertainty of a corner mark in x and in y, pixels.
    pub fn u_pixels(&self) -> f64 {
        self.u * self.pixels.spread
    }

    /// Column and row at a place in the picture; not finite, or of no meaning, beyond the plane's horizon.
    pub fn divisions(&self, at: PixelPoint) -> [f64; 2] {
        self.grid.outside(self.back(self.pixels.inside([at.x, at.y])))
    }

    /// Where a place on the screen lies in the picture.
    pub fn pixel(&self, divisions: [f64; 2]) -> PixelPoint {
        let [x, y] = self.pixels.outside(map(&self.h, self.grid.inside(divisions)).0);
        PixelPoint { x, y }
    }

    /// Whether a place in the picture lies on this side of the plane's horizon.
    pub fn sees(&self, at: PixelPoint) -> bool {
        let place = self.back(self.pixels.inside([at.x, at.y]));
        place.iter().all(|x| x.is_finite()) && map(&self.h, place).1 > 0.0
    }

    /// Divisions from pixels within the frames: by the adjugate of the 3 × 3 matrix of h.
    fn back(&self, [x, y]: [f64; 2]) -> [f64; 2] {
        let [a, b, c, d, e, f, g, i] = self.h;
        let w = (d * i - e * g) * x + (b * g - a * i) * y + (a * e - b * d);
        [
            ((e - f * i) * x + (c * i - b) * y + (b * f - c * e)) / w,
            ((f * g - d) * x + (a - c * g) * y + (c * d - a * f)) / w,
        ]
    }

    /// Divisions per pixel at a place in the picture: ∂(column, row)/∂(x, y).
    pub fn by_pixel(&self, at: PixelPoint) -> [[f64; 2]; 2] {
        let place = self.back(self.pixels.inside([at.x, at.y]));
        let scale = self.grid.spread / self.pixels.spread;
        inverse(by_place(&self.h, place)).map(|row| row.map(|x| x * scale))
    }

    /// ∂(column, row)/∂h at a place in the picture that stays where it is, divisions.
    fn by_h(&self, at: PixelPoint) -> [Eight; 2] {
        // The pixel stays: 0 = ∂(x, y)/∂(X, Y)·d(X, Y) + ∂(x, y)/∂h·dh.
        let place = self.back(self.pixels.inside([at.x, at.y]));
        let [[a, b], [c, d]] = inverse(by_place(&self.h, place));
        let [x, y] = by_parameters(&self.h, place);
        let mix = |a: f64, b: f64| {
            let mut row = [0.0; 8];
            for (sum, (x, y)) in row.iter_mut().zip(x.iter().zip(&y)) {
                *sum = -(a * x + b * y) * self.grid.spread;
            }
            row
        };
        [mix(a, b), mix(c, d)]
    }

    /// How column and row at a place in the picture move with each corner mark: for each corner
    /// ∂(column, row)/∂(x, y), divisions per pixel.
    pub fn by_corners(&self, at: PixelPoint) -> Vec<[[f64; 2]; 2]> {
        let weights = self.by_h(at).map(|row| self.factor.solve(&row));
        let of = |corner: &Corner| {
            let [x, y] = by_parameters(&self.h, self.grid.inside([corner.column, corner.row]));
            weights.map(|w| [dot(&w, &x) / self.pixels.spread, dot(&w, &y) / self.pixels.spread])
        };
        self.corners.iter().map(of).collect()
    }

    /// Variance of the column at `b` minus the column at `a` from the corner marks alone, divisions².
    pub fn variance_between(&self, a: PixelPoint, b: PixelPoint) -> f64 {
        let ([mut row, _], [other, _]) = (self.by_h(b), self.by_h(a));
        for (row, other) in row.iter_mut().zip(other) {
            *row -= other;
        }
        self.variance_of(&row)
    }

    /// By how much one standard uncertainty of each corner mark moves the column at `b` minus the column at `a`: x and
    /// then y of each mark in turn, divisions.
    ///
    /// Their squares add up to [`Self::variance_between`]. Pictures that share their corner marks share these errors:
    /// each entry is an error of the whole series, with its own size and sign for each picture.
    pub fn shifts_between(&self, a: PixelPoint, b: PixelPoint) -> Vec<f64> {
        let u = self.u_pixels();
        let pairs = self.by_corners(a).into_iter().zip(self.by_corners(b));
        pairs.flat_map(|([a, _], [b, _])| [(b[0] - a[0]) * u, (b[1] - a[1]) * u]).collect()
    }

    fn variance_of(&self, row: &Eight) -> f64 {
        let half = self.factor.half(row);
        dot(&half, &half) * self.u * self.u
    }

    /// Covariance of h₀ … h₇ of the normalised transform, row by row.
    pub fn covariance(&self) -> [[f64; 8]; 8] {
        let mut covariance = [[0.0; 8]; 8];
        for (i, column) in covariance.iter_mut().enumerate() {
            let mut one = [0.0; 8];
            one[i] = self.u * self.u;
            *column = self.factor.solve(&one);
        }
        covariance
    }

    /// The 3 × 3 matrix from (column, row, 1) to pixels, its last element 1.
    pub fn matrix(&self) -> [[f64; 3]; 3] {
        let h = &self.h;
        let ([cx, cy], s) = (self.grid.centre, self.grid.spread);
        let from_grid = |[a, b, c]: [f64; 3]| [a / s, b / s, c - (a * cx + b * cy) / s];
        let rows = [[h[0], h[1], h[2]], [h[3], h[4], h[5]], [h[6], h[7], 1.0]].map(from_grid);
        let to_pixels = |row: [f64; 3], centre: f64| {
            let mut out = [0.0; 3];
            for (out, (a, w)) in out.iter_mut().zip(row.iter().zip(&rows[2])) {
                *out = (a * self.pixels.spread + centre * w) / rows[2][2];
            }
            out
        };
        let [px, py] = self.pixels.centre;
        [to_pixels(rows[0], px), to_pixels(rows[1], py), rows[2].map(|w| w / rows[2][2])]
    }

    /// How far each corner mark lies from the plane; zero, but for rounding, with four marks.
    pub fn residuals(&self) -> Vec<Residual> {
        self.corners.iter().map(|corner| self.residual(corner)).collect()
    }

    fn residual(&self, corner: &Corner) -> Residual {
        let (there, [column, row]) = (self.pixel([corner.column, corner.row]), self.divisions(corner.at));
        Residual {
            divisions: [column - corner.column, row - corner.row],
            pixels: [corner.at.x - there.x, corner.at.y - there.y],
        }
    }

    /// Holds a mark that is not among the corners against the plane. What exceeds its uncertainty is the lens.
    ///
    /// A lens bends along the radius. A mark at the centre of the grid sees that only as far as the picture's centre
    /// lies elsewhere; the middle of a side of the grid sees it always.
    pub fn check(&self, mark: &Corner) -> Check {
        let (by_pixel, by_h) = (self.by_pixel(mark.at), self.by_h(mark.at));
        let u = self.u_pixels();
        let of = |i: usize| libm::sqrt(dot(&by_pixel[i], &by_pixel[i]) * u * u + self.variance_of(&by_h[i]));
        Check { residual: self.residual(mark), uncertainty: [of(0), of(1)] }
    }

    /// The grid of columns × rows divisions, from column 0 and row 0, as it lies in the picture: the two ends of every
    /// line, columns first. Straight lines stay straight.
    pub fn grid(&self, columns: u32, rows: u32) -> Vec<[PixelPoint; 2]> {
        let (width, height) = (f64::from(columns), f64::from(rows));
        let line = |from, to| [self.pixel(from), self.pixel(to)];
        let upright = (0..=columns).map(|c| line([f64::from(c), 0.0], [f64::from(c), height]));
        let level = (0..=rows).map(|r| line([0.0, f64::from(r)], [width, f64::from(r)]));
        upright.chain(level).collect()
    }
}

/// The direct linear transform, the constant of w at 1: the start of the search.
fn direct(pairs: &[([f64; 2], [f64; 2])]) -> Option<Eight> {
    let mut normal = Normal::default();
    for ([a, b], [x, y]) in pairs {
        normal.add(&[*a, *b, 1.0, 0.0, 0.0, 0.0, -x * a, -x * b], *x);
        normal.add(&[0.0, 0.0, 0.0, *a, *b, 1.0, -y * a, -y * b], *y);
    }
    Some(normal.solve()?.0)
}

/// Gauss–Newton steps on the distances in pixels, each halved until the sum of squares does not grow.
fn refine(pairs: &[([f64; 2], [f64; 2])], mut h: Eight) -> Option<(Eight, Factor)> {
    const STEPS: usize = 100;
    let squares = |h: &Eight| -> f64 {
        let of = |(at, [x, y]): &([f64; 2], [f64; 2])| {
            let ([p, q], w) = map(h, *at);
            if w > 0.0 { (x - p) * (x - p) + (y - q) * (y - q) } else { f64::INFINITY }
        };
        pairs.iter().map(of).sum()
    };
    let mut least = squares(&h);
    for _ in 0..STEPS {
        let mut normal = Normal::default();
        for (at, [x, y]) in pairs {
            let ([p, q], _) = map(&h, *at);
            let [by_x, by_y] = by_parameters(&h, *at);
            normal.add(&by_x, x - p);
            normal.add(&by_y, y - q);
        }
        let (mut step, factor) = normal.solve()?;
        let mut next = sum(&h, &step);
        let mut halvings = 0;
        // The last steps are lost in rounding, which must not stop them.
        while halvings < 30 && squares(&next) > least * (1.0 + 1e-9) + 1e-24 {
            step = step.map(|x| x / 2.0);
            next = sum(&h, &step);
            halvings += 1;
        }
        (h, least) = (next, squares(&next));
        if dot(&step, &step) <= 1e-28 * dot(&h, &h) {
            return Some((h, factor));
        }
    }
    None
}

fn sum(h: &Eight, step: &Eight) -> Eight {
    let mut next = *h;
    for (h, step) in next.iter_mut().zip(step) {
        *h += step;
    }
    next
}

#[cfg(test)]
#[path = "plane_test.rs"]
mod tests;
