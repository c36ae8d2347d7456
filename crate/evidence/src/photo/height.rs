//! Where an edge crosses a fraction of its own height, from marks on its baseline and on its top.
//!
//! Marked are where the trace leaves its baseline (q₀, r₀) and where it reaches its top (q₁, r₁), and between them the edge
//! itself (q, r), in columns and rows of the screen. The level lies at the row r_f = r₀ + f (r₁ − r₀). An edge marked δ = r_f − r
//! rows beside it crosses the level s·δ columns later, where s, columns to a row, lies between 0, a jump, and that of the
//! straight line from end to end, S = (q₁ − q₀)/(r₁ − r₀). (A rise of the shape ∫cos² has half of S at its middle, and at a
//! tenth of its height 1.06 of it.) Nothing else is known of s (JCGM 100:2008, 4.3.7), so that
//!
//! - the crossing is S δ/2 later, u² = S² δ²/12, and
//! - an uncertainty u(δ) moves it by u² = S² u(δ)²/3, the mean of s² being S²/3;
//!   u(δ)² = (1 − f)² u(r₀)² + f² u(r₁)² + u(r)²/n.
//!
//! A mark across the trace is as uncertain as one along it and, as the trace is so thick, by thickness/√12 more.

use super::error::SeparationError;
use super::mark::PixelPoint;
use super::plane::Plane;
use super::separation::{MarkedEdge, Separation};

/// The ends of an edge, as marked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MarkedHeight {
    /// Where the trace leaves its baseline.
    pub baseline: PixelPoint,
    /// Where it reaches its top.
    pub top: PixelPoint,
}

/// How levels are read.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LevelReading {
    /// The fraction of its height at which an edge is timed, 0.1 to 0.9.
    pub fraction: f64,
    /// Standard uncertainty of a mark across the trace, pixels.
    pub u_pixels: f64,
}

impl LevelReading {
    /// Of a mark that is as uncertain as that along the trace, which is so thick, all in pixels.
    pub fn new(fraction: f64, u_mark: f64, thickness: f64) -> Self {
        Self { fraction, u_pixels: libm::hypot(u_mark, thickness / libm::sqrt(12.0)) }
    }
}

impl MarkedHeight {
    /// The level at a fraction of the height, as it lies in the picture from column 0 to `columns`; nothing where no plane is
    /// seen.
    pub fn level(&self, plane: &Plane, fraction: f64, columns: f64) -> Option<[PixelPoint; 2]> {
        let ([_, foot], [_, top]) = self.places(plane)?;
        let row = foot + fraction * (top - foot);
        Some([plane.pixel([0.0, row]), plane.pixel([columns, row])])
    }

    /// Columns and rows of baseline and top.
    fn places(&self, plane: &Plane) -> Option<([f64; 2], [f64; 2])> {
        let seen = plane.sees(self.baseline) && plane.sees(self.top);
        seen.then(|| (plane.divisions(self.baseline), plane.divisions(self.top)))
    }

    /// How many columns later than its mark the edge crosses its level, and how uncertain that is; nothing where the edge is
    /// not marked between its ends, as far as marks can tell.
    fn shift(&self, plane: &Plane, edge: &MarkedEdge, reading: LevelReading) -> Option<(f64, f64)> {
        let LevelReading { fraction, u_pixels } = reading;
        let ([begins, foot], [ends, top]) = self.places(plane)?;
        let u_row = |at| {
            let [x, y] = plane.by_pixel(at)[1];
            u_pixels * libm::hypot(x, y)
        };
        let (u_foot, u_top) = (u_row(self.baseline), u_row(self.top));
        let within = 3.0 * u_pixels * edge.scale;
        let is_between = (begins - within..=ends + within).contains(&edge.column);
        let rises = (top - foot).abs() > 3.0 * libm::hypot(u_foot, u_top);
        if !(is_between && rises) {
            return None;
        }
        // The ends of a jump may be marked in either order.
        let straight = (ends - begins).max(0.0) / (top - foot);
        let beside = foot + fraction * (top - foot) - edge.row;
        let squares = |parts: [f64; 2]| parts.iter().map(|part| part * part).sum::<f64>();
        let u_edge = u_row(edge.at);
        let u_level = squares([(1.0 - fraction) * u_foot, fraction * u_top]);
        let variance = beside * beside / 12.0 + (u_level + u_edge * u_edge / edge.marks as f64) / 3.0;
        Some((straight * beside / 2.0, straight.abs() * libm::sqrt(variance)))
    }
}

impl Separation {
    /// The same between the levels of those edges, A and B, whose ends are marked.
    ///
    /// # Errors
    /// An edge that is not marked between its ends.
    pub fn at_levels(
        self,
        plane: &Plane,
        heights: [Option<MarkedHeight>; 2],
        reading: LevelReading,
    ) -> Result<Self, SeparationError> {
        let shifted = |edge: MarkedEdge, height: Option<MarkedHeight>, name| match height {
            None => Ok((edge, 0.0)),
            Some(height) => height
                .shift(plane, &edge, reading)
                .map(|(columns, u)| (MarkedEdge { column: edge.column + columns, ..edge }, u))
                .ok_or(SeparationError::NotBetween { edge: name }),
        };
        let ((a, of_a), (b, of_b)) = (shifted(self.a, heights[0], 'A')?, shifted(self.b, heights[1], 'B')?);
        let levels = libm::hypot(of_a, of_b);
        let uncertainty = libm::hypot(self.uncertainty, levels);
        Ok(Self { value: b.column - a.column, uncertainty, levels, a, b, ..self })
    }
}

#[cfg(test)]
#[path = "height_test.rs"]
mod tests;
