//! Pictures and traces to delays.
//!
//! Marks on a picture become divisions on the plane of its grid, and those a delay by the time base. Marking an edge is
//! an error of its row alone; marking a corner of the grid moves every row that is read against it, each by its own
//! amount, so each corner is a shared error in x and one in y ([`CornerShift`]).

use super::row_error::{GridError, MarksError, TracesError};
use crate::notebook::{
    EdgeHeight, EdgeHeights, Evidence, Grid, GridId, NotebookState, Picture, Row, Spot, TraceTime, Traces,
};
use crate::photo::{
    Check, Corner as GridCorner, LevelReading, MarkScatter, MarkedHeight, Marking, PixelPoint, Plane,
    Separation, scatter, separation,
};
use crate::quantity::{DecimalMark, Unit, parse};

/// Standard uncertainty of a mark where none is stated, pixels (common practice, no source).
pub const MARK_UNCERTAINTY: f64 = 1.0;

/// One coordinate of one corner of a grid: an error that all rows read against it share.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct CornerShift {
    /// The grid.
    pub grid: GridId,
    /// Which coordinate: x and y of the first corner, of the second…
    pub coordinate: usize,
}

/// A grid as a plane, or what is wrong with its marks.
pub struct Laid {
    /// The grid.
    pub id: GridId,
    /// Its plane.
    pub plane: Result<Plane, GridError>,
    /// The crossings held against it.
    pub checks: Vec<Check>,
}

/// Everything that marks are read against.
pub struct MarkContext {
    /// The grids, in the order of the page.
    pub grids: Vec<Laid>,
    /// Standard uncertainty of one mark: stated, or the scatter of repeats over all pictures.
    pub marking: Marking,
    /// Standard uncertainty of a mark as stated, pixels.
    pub u_mark: f64,
    /// The fraction of its height at which an edge is timed, where its ends are marked.
    pub fraction: f64,
}

/// What the marks of a row say, in divisions.
#[derive(Clone, Debug, PartialEq)]
pub struct Marked {
    /// q_B − q_A, with what its uncertainty is made of.
    pub separation: Separation,
    /// What one standard deviation of each corner's coordinates does to it, divisions.
    pub corners: Vec<(CornerShift, f64)>,
}

/// A place on a picture, pixels.
pub fn point(spot: Spot) -> PixelPoint {
    PixelPoint { x: f64::from(spot.0) / 100.0, y: f64::from(spot.1) / 100.0 }
}

/// The corners of a grid, in the order in which they were marked.
pub fn corners(grid: &Grid) -> [GridCorner; 4] {
    let (right, down) = (f64::from(grid.columns), f64::from(grid.rows));
    let [a, b, c, d] = grid.corners.map(point);
    let corner = |at, column, row| GridCorner { at, column, row };
    [corner(a, 0.0, 0.0), corner(b, right, 0.0), corner(c, right, down), corner(d, 0.0, down)]
}

fn laid(grid: &Grid, u_mark: f64) -> Laid {
    let plane = if grid.columns == 0 || grid.rows == 0 {
        Err(GridError::NoDivisions)
    } else {
        Plane::fit(&corners(grid), u_mark).map_err(GridError::Plane)
    };
    let half = |count: u32| f64::from(count) / 2.0;
    let checks = match &plane {
        Ok(plane) => grid
            .checks
            .iter()
            .map(|check| GridCorner {
                at: point(check.at),
                column: half(check.half_columns),
                row: half(check.half_rows),
            })
            .map(|mark| plane.check(&mark))
            .collect(),
        Err(_) => Vec::new(),
    };
    Laid { id: grid.id, plane, checks }
}

impl MarkContext {
    /// Lays the grids, and pools the scatter of repeated marks over all pictures that are not struck out.
    pub fn of(page: &NotebookState, u_mark: f64, fraction: f64) -> Self {
        let grids: Vec<Laid> = page.grids.iter().map(|grid| laid(grid, u_mark)).collect();
        let pictures = page.rows.iter().filter(|row| row.struck.is_none()).filter_map(picture);
        let scatters = pictures.filter_map(|picture| {
            let plane = grids.iter().find(|grid| grid.id == picture.grid)?.plane.as_ref().ok()?;
            scatter(plane, &places(&picture.a), &places(&picture.b)).ok().flatten()
        });
        let marking = MarkScatter::pool(scatters).map_or(Marking::Stated(u_mark), Marking::Pooled);
        Self { grids, marking, u_mark, fraction }
    }

    /// Degrees of freedom of the scatter of repeated marks; none where it was stated.
    pub fn degrees_of_freedom(&self) -> Option<f64> {
        match self.marking {
            Marking::Pooled(scatter) => Some(scatter.degrees_of_freedom as f64),
            _ => None,
        }
    }

    /// What the marks of a picture say.
    ///
    /// # Errors
    /// What is wrong with the marks, and what to do.
    pub fn read(&self, picture: &Picture) -> Result<Marked, MarksError> {
        let grid = self.grids.iter().find(|grid| grid.id == picture.grid).ok_or(MarksError::NoGrid)?;
        let plane = grid.plane.as_ref().map_err(|error| MarksError::Grid(error.clone()))?;
        let (a, b) = (places(&picture.a), places(&picture.b));
        let found = separation(plane, &a, &b, self.marking, &grid.checks)
            .and_then(|found| match &picture.heights {
                Some(heights) => found.at_levels(plane, ends(heights), self.reading(heights)),
                None => Ok(found),
            })
            .map_err(MarksError::Separation)?;
        let shifts = plane.shifts_between(found.a.at, found.b.at);
        let corners = shifts
            .into_iter()
            .enumerate()
            .map(|(coordinate, shift)| (CornerShift { grid: picture.grid, coordinate }, shift))
            .collect();
        Ok(Marked { separation: found, corners })
    }

    /// How the levels of the edges of a picture are read.
    fn reading(&self, heights: &EdgeHeights) -> LevelReading {
        LevelReading::new(self.fraction, self.u_mark, f64::from(heights.thickness))
    }
}

/// The ends of both edges of a picture, where they are on the screen.
pub fn ends(heights: &EdgeHeights) -> [Option<MarkedHeight>; 2] {
    let of = |height: &EdgeHeight| {
        let (baseline, top) = height.baseline.zip(height.top)?;
        Some(MarkedHeight { baseline: point(baseline), top: point(top) })
    };
    [of(&heights.a), of(&heights.b)]
}

impl Marked {
    /// Standard uncertainty that no other row shares, divisions: marking the edges and their levels, and the lens.
    pub fn own(&self) -> f64 {
        let Separation { marks, lens, levels, .. } = self.separation;
        libm::hypot(libm::hypot(marks, lens), levels)
    }
}

fn picture(row: &Row) -> Option<&Picture> {
    match &row.evidence {
        Some(Evidence::Picture(picture)) => Some(picture),
        _ => None,
    }
}

fn places(spots: &[Spot]) -> Vec<PixelPoint> {
    spots.iter().copied().map(point).collect()
}

/// The delay that traces give by the estimator of the page, with its standard uncertainty, ns.
///
/// # Errors
/// Why there is none, and what to do.
pub fn traced(page: &NotebookState, traces: &Traces) -> Result<(f64, f64), TracesError> {
    let found = traces.delays.iter().find(|delay| delay.estimator == page.estimator);
    let found = found.ok_or(TracesError::NotMeasured)?;
    let delay = found.delay.as_ref().ok_or_else(|| TracesError::NoDelay {
        remarks: found.remarks.clone(),
        files: traces.files.clone(),
        mark: page.decimal_mark,
    })?;
    time(delay).ok_or(TracesError::Unreadable)
}

/// A measured time and its standard uncertainty, ns; none if it can't be read.
pub fn time(time: &TraceTime) -> Option<(f64, f64)> {
    let number = |text: &str| Some(parse(text, DecimalMark::Point, Unit::NANOSECOND).ok()?.value);
    let (value, uncertainty) = (number(&time.value)?, number(&time.uncertainty)?);
    (uncertainty >= 0.0).then_some((value, uncertainty))
}

#[cfg(test)]
#[path = "evidence_test.rs"]
mod tests;
