//! Corner marks held against the grid of another picture.

use serde::{Deserialize, Serialize};

use super::find::lattice::Lines;
use super::picture::{Pixels, Reduced, Shrinking};
use super::plane::Plane;
use super::propose::{Hint, ProposeError, SEEN, check, corners, ready};

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
    let places = corners(hint);
    let marked = plane.on_copy(copy.scale).ok_or(no_grid)?;
    let both = Lines::of(copy);
    let near = both.iter().filter_map(|lines| lines.nearby(&marked, columns, rows));
    // Moved by a division or more, it is looked for anew.
    let found = near
        .max_by(|a, b| a.seen.total_cmp(&b.seen))
        .filter(|lattice| lattice.seen >= SEEN)
        .or_else(|| {
            let (_, lattice) = Lines::most_promising(&both, columns, rows)?;
            (lattice.seen >= SEEN).then_some(lattice)
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
