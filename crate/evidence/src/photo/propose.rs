//! Marks proposed for a picture, for a person to accept or to move.

use serde::{Deserialize, Serialize};

use super::find::curve::Flat;
use super::find::edge::edge;
use super::find::lattice::{Lattice, Lines};
use super::mark::{Corner, PixelPoint};
use super::picture::{ENOUGH, PictureError, Pixels, Reduced, Shrinking};
use super::plane::Plane;
use crate::words::Message;
use crate::{errors_as_data, message};

/// What is known of the screen before looking: its divisions.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Hint {
    /// Along the time axis.
    pub columns: u32,
    /// Downwards.
    pub rows: u32,
}

/// Divisions of a screen: fewer tell no grid, more are none that anyone reads.
const DIVISIONS: std::ops::RangeInclusive<u32> = 3..=24;

/// A picture smaller than this shows no grid, pixels.
const SMALLEST: usize = 64;

/// A grid with fewer of its stretches seen is not proposed.
const SEEN: f64 = 0.45;

/// Why no marks are proposed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub enum ProposeError {
    /// The bytes are no picture.
    Picture(PictureError),
    /// Divisions no screen has.
    Divisions {
        /// Columns stated.
        columns: u32,
        /// Rows stated.
        rows: u32,
    },
    /// No such grid is seen.
    NoGrid {
        /// Columns looked for.
        columns: u32,
        /// Rows looked for.
        rows: u32,
    },
}

errors_as_data!(ProposeError);

impl ProposeError {
    /// Why, and what to do.
    pub fn message(self) -> Message {
        match self {
            Self::Picture(error) => error.message(),
            Self::Divisions { columns, rows } => message!(
                "propose-divisions",
                columns = columns.to_string(),
                rows = rows.to_string(),
                least = DIVISIONS.start().to_string(),
                most = DIVISIONS.end().to_string()
            ),
            Self::NoGrid { columns, rows } => {
                message!("propose-no_grid", columns = columns.to_string(), rows = rows.to_string())
            }
        }
    }
}

impl From<PictureError> for ProposeError {
    fn from(error: PictureError) -> Self {
        Self::Picture(error)
    }
}

/// An edge proposed.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct ProposedEdge {
    /// Where the trace crosses half of its own height, pixels.
    pub at: PixelPoint,
    /// The same in divisions: column and row.
    pub divisions: [f64; 2],
    /// Row of the trace's baseline, divisions.
    pub base: f64,
    /// Row of its peak, divisions.
    pub peak: f64,
    /// From 0, a guess, to 1.
    pub confidence: f64,
}

/// Marks proposed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Proposal {
    /// The grid's corners: from the top left along the time axis, and round.
    pub corners: [Corner; 4],
    /// The crossing in the grid's middle, or next to it, for a check of the lens.
    pub centre: Corner,
    /// Crossings in the middle of the left and of the right side, or next to it, where a lens shows more.
    pub sides: [Corner; 2],
    /// How sure the corners are, 0 to 1: the share of the grid's lines that was seen.
    pub confidence: f64,
    /// The edges, the earlier one first: A's, where light reaches A first. None where no trace with an edge was found.
    pub edges: [Option<ProposedEdge>; 2],
}

/// Whether the question makes sense.
fn check(hint: Hint, size: [usize; 2]) -> Result<(), ProposeError> {
    let Hint { columns, rows } = hint;
    if !(DIVISIONS.contains(&columns) && DIVISIONS.contains(&rows)) {
        return Err(ProposeError::Divisions { columns, rows });
    }
    let [width, height] = size;
    if width < SMALLEST || height < SMALLEST {
        return Err(PictureError::TooSmall { width, height }.into());
    }
    Ok(())
}

/// The copy to look at, once the question makes sense.
fn ready(picture: Pixels<'_>, hint: Hint) -> Result<Reduced, ProposeError> {
    check(hint, [picture.width, picture.height])?;
    Ok(picture.shrink(ENOUGH)?)
}

/// Looks for the grid, and for the traces with their edges.
///
/// The time axis is taken to lie within some 30° of the picture's rows.
///
/// # Errors
/// [`ProposeError`]: what is to be marked by hand.
pub fn propose(picture: Pixels<'_>, hint: Hint) -> Result<Proposal, ProposeError> {
    propose_in(&ready(picture, hint)?, hint)
}

/// The same on a copy that was made before.
///
/// # Errors
/// As [`propose`].
pub fn propose_on(picture: &Shrinking, hint: Hint) -> Result<Proposal, ProposeError> {
    let (copy, size) = picture.copy()?;
    check(hint, size)?;
    propose_in(copy, hint)
}

fn propose_in(copy: &Reduced, hint: Hint) -> Result<Proposal, ProposeError> {
    let Hint { columns, rows } = hint;
    let no_grid = ProposeError::NoGrid { columns, rows };
    let lattice = Lines::most_promising(copy, columns, rows)
        .and_then(|(lines, first)| lines.lattice(&first, columns, rows))
        .filter(|lattice| lattice.seen >= SEEN)
        .ok_or(no_grid)?;
    let large = |at: PixelPoint| PixelPoint { x: at.x * copy.scale, y: at.y * copy.scale };
    let crossing = |column: u32, row: u32| {
        let (column, row) = (f64::from(column), f64::from(row));
        Corner { at: large(seen_at(&lattice, column, row)), column, row }
    };
    let (middle, centre) = (columns / 2, rows / 2);
    let curves = Flat::of(copy, &lattice.plane, columns, rows).into_curves();
    let mut edges = curves.map(|curve| {
        let edge = edge(&curve?)?;
        let divisions = [edge.column, edge.row];
        let at = large(lattice.plane.pixel(divisions));
        Some(ProposedEdge { at, divisions, base: edge.base, peak: edge.peak, confidence: edge.confidence })
    });
    if let [Some(first), Some(second)] = &edges
        && second.divisions[0] < first.divisions[0]
    {
        edges.swap(0, 1);
    }
    Ok(Proposal {
        corners: [crossing(0, 0), crossing(columns, 0), crossing(columns, rows), crossing(0, rows)],
        centre: crossing(middle, centre),
        sides: [crossing(0, centre), crossing(columns, centre)],
        confidence: lattice.seen,
        edges,
    })
}

/// Where a crossing was seen, if near the plane; where the plane puts it otherwise.
fn seen_at(lattice: &Lattice, column: f64, row: f64) -> PixelPoint {
    let by_plane = lattice.plane.pixel([column, row]);
    let near = |c: &&Corner| {
        let [q, r] = lattice.plane.divisions(c.at);
        c.column == column && c.row == row && libm::hypot(q - column, r - row) < 0.1
    };
    lattice.crossings.iter().find(near).map_or(by_plane, |c| c.at)
}

/// How a picture's grid lies beside corner marks made on another picture.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Standing {
    /// Mean shift of the four corners, pixels in x and in y.
    pub shift: [f64; 2],
    /// The largest shift of a corner, pixels.
    pub largest: f64,
    /// The same in divisions of the marked grid.
    pub divisions: f64,
    /// Share of the grid's lines that was seen, 0 to 1.
    pub seen: f64,
}

impl Standing {
    /// Whether the corner marks serve this picture too: no corner moved by more than three standard uncertainties of
    /// a mark, or than a twentieth of a division, which is within what the lines can be found to on a poor picture.
    pub fn holds(&self, u_pixels: f64) -> bool {
        self.largest <= 3.0 * u_pixels || self.divisions <= 0.05
    }
}

/// Holds the grid of another picture, taken by a camera that should not have moved, against corner marks.
///
/// # Errors
/// [`ProposeError`] where no grid is seen.
pub fn check_series(plane: &Plane, picture: Pixels<'_>, hint: Hint) -> Result<Standing, ProposeError> {
    check_series_in(plane, &ready(picture, hint)?, hint)
}

/// The same on a copy that was made before.
///
/// # Errors
/// As [`check_series`].
pub fn check_series_on(plane: &Plane, picture: &Shrinking, hint: Hint) -> Result<Standing, ProposeError> {
    let (copy, size) = picture.copy()?;
    check(hint, size)?;
    check_series_in(plane, copy, hint)
}

fn check_series_in(plane: &Plane, copy: &Reduced, hint: Hint) -> Result<Standing, ProposeError> {
    let Hint { columns, rows } = hint;
    let no_grid = ProposeError::NoGrid { columns, rows };
    let small = |q: [f64; 2]| {
        let at = plane.pixel(q);
        PixelPoint { x: at.x / copy.scale, y: at.y / copy.scale }
    };
    let places = [[0, 0], [columns, 0], [columns, rows], [0, rows]].map(|place| place.map(f64::from));
    let marked = places.map(|q| Corner { at: small(q), column: q[0], row: q[1] });
    let marked = Plane::fit_found(&marked).ok_or(no_grid)?;
    let near = Lines::of(copy).into_iter().filter_map(|lines| lines.nearby(&marked, columns, rows));
    // Moved by a division or more, it is looked for anew.
    let found = near
        .max_by(|a, b| a.seen.total_cmp(&b.seen))
        .filter(|lattice| lattice.seen >= SEEN)
        .or_else(|| {
            let (lines, first) = Lines::most_promising(copy, columns, rows)?;
            lines.lattice(&first, columns, rows).filter(|lattice| lattice.seen >= SEEN)
        })
        .ok_or(no_grid)?;
    let (mut shift, mut largest, mut divisions) = ([0.0; 2], 0.0_f64, 0.0_f64);
    for q in places {
        let (now, then) = (found.plane.pixel(q), marked.pixel(q));
        let (x, y) = ((now.x - then.x) * copy.scale, (now.y - then.y) * copy.scale);
        shift = [shift[0] + x / 4.0, shift[1] + y / 4.0];
        largest = largest.max(libm::hypot(x, y));
        let [column, row] = marked.divisions(now);
        divisions = divisions.max(libm::hypot(column - q[0], row - q[1]));
    }
    Ok(Standing { shift, largest, divisions, seen: found.seen })
}

#[cfg(test)]
#[path = "propose_test.rs"]
mod tests;
