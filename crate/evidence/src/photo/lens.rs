//! Crossings for a check of the lens beside corners that a person has put: they go with the corners.

use serde::{Deserialize, Serialize};

use super::doubt;
use super::find::lattice::{Lattice, Lines};
use super::mark::{Corner, PixelPoint};
use super::picture::{Reduced, Shrinking};
use super::plane::Plane;
use super::propose::{Hint, ProposeError, SEEN, check, checked, large};

/// How far off the plane of the corners a crossing is looked for, divisions: less than half of one, so that it is the
/// crossing meant, and more than a lens bends.
const REACH: f64 = 0.2;

/// Crossings seen near the plane of corners that a person has put.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct LensChecks {
    /// Those of the middle, the left and the right side that are seen.
    pub seen: Vec<Corner>,
    /// Whether they are to be looked at before they are taken: too few of the grid's lines are seen there, or they go on
    /// beyond it.
    pub is_doubted: bool,
}

/// Looks for the crossings near the plane of corners that a person has put; none where no grid is seen there.
///
/// # Errors
/// [`ProposeError`] where the question makes no sense.
pub fn lens_checks(plane: &Plane, picture: &Shrinking, hint: Hint) -> Result<LensChecks, ProposeError> {
    let (copy, size) = picture.copy()?;
    check(hint, size)?;
    Ok(Near::of(copy, &Lines::of(copy), plane, hint).map_or_else(LensChecks::default, |near| LensChecks {
        seen: checked(hint).into_iter().filter_map(|place| near.crossing(place)).collect(),
        is_doubted: near.is_doubted,
    }))
}

/// What becomes of the checks of a grid whose corners were moved from one plane to another: one that stands where its
/// crossing was seen before goes with the corners, or is left out where no grid is surely seen there. Any other was set by
/// a person, and stays.
///
/// # Errors
/// [`ProposeError`] where the question makes no sense.
pub fn follow(
    checks: &[Corner],
    from: &Plane,
    to: &Plane,
    picture: &Shrinking,
    hint: Hint,
) -> Result<Vec<Corner>, ProposeError> {
    let (copy, size) = picture.copy()?;
    check(hint, size)?;
    let lines = Lines::of(copy);
    let (then, now) = (Near::of(copy, &lines, from, hint), Near::of(copy, &lines, to, hint));
    let goes_on = |set: &Corner| {
        let place = [set.column, set.row];
        let was = then.as_ref().and_then(|near| near.crossing(place));
        // Within a pixel of the copy in which it was looked for.
        let is_there = |was: &Corner| libm::hypot(was.at.x - set.at.x, was.at.y - set.at.y) <= copy.scale;
        match was.filter(is_there) {
            Some(_) => now.as_ref().filter(|near| !near.is_doubted).and_then(|near| near.crossing(place)),
            None => Some(*set),
        }
    };
    Ok(checks.iter().filter_map(goes_on).collect())
}

/// The grid near a plane, all in the pixels of a copy.
struct Near<'a> {
    copy: &'a Reduced,
    plane: Plane,
    lattice: Lattice,
    is_doubted: bool,
}

impl<'a> Near<'a> {
    fn of(copy: &'a Reduced, both: &[Lines; 2], plane: &Plane, hint: Hint) -> Option<Self> {
        let Hint { columns, rows } = hint;
        let plane = plane.on_copy(copy.scale)?;
        let found =
            both.iter().filter_map(|lines| Some((lines, lines.fitted(&plane, columns, rows, REACH)?)));
        let (lines, lattice) = found.max_by(|a, b| a.1.seen.total_cmp(&b.1.seen))?;
        let is_doubted = lattice.seen < doubt::GRID || !lines.ends(&lattice.plane, columns, rows);
        (lattice.seen >= SEEN).then_some(Self { copy, plane, lattice, is_doubted })
    }

    /// Where a crossing is seen, in the picture's pixels.
    fn crossing(&self, [column, row]: [f64; 2]) -> Option<Corner> {
        let at: PixelPoint = self.lattice.seen_near(&self.plane, [column, row], REACH)?;
        Some(Corner { at: large(self.copy, at), column, row })
    }
}

#[cfg(test)]
#[path = "lens_test.rs"]
mod tests;
