//! What can be wrong with marks on a picture. Messages count marks from 1 and name them by their place on the grid.

use serde::{Deserialize, Serialize};
use thiserror::Error;

use super::mark::Mark;

/// Why corner marks don't fix the plane of the screen.
#[derive(Clone, Debug, PartialEq, Error, Serialize, Deserialize)]
pub enum PlaneError {
    /// Fewer than four marks.
    #[error("{got} corner marks are too few: mark four grid crossings")]
    TooFew {
        /// Marks given.
        got: usize,
    },
    /// A coordinate is not a finite number.
    #[error("corner mark {mark} has a coordinate that is not a number; mark it again")]
    NotFinite {
        /// The mark.
        mark: Mark,
    },
    /// The uncertainty of marking is negative or no number.
    #[error("the uncertainty of a corner mark must be zero or more pixels")]
    Uncertainty,
    /// Two marks at one place of the picture.
    #[error(
        "corner marks {first} and {second} lie at one place of the picture; move one to its own crossing"
    )]
    SamePlace {
        /// The first of the two.
        first: Mark,
        /// The other.
        second: Mark,
    },
    /// Two marks for one crossing of the grid.
    #[error(
        "corner marks {first} and {second} are given for the same crossing; give one another column or row"
    )]
    SameCrossing {
        /// The first of the two.
        first: Mark,
        /// The other.
        second: Mark,
    },
    /// All marks but at most one lie on one line in the picture.
    #[error("corner marks {} lie on one line in the picture; move one so that the four span an area", listed(.marks))]
    OnOneLine {
        /// The marks on the line.
        marks: Vec<Mark>,
    },
    /// All marks but at most one are given crossings on one line of the grid.
    #[error("corner marks {} are given crossings on one line of the grid; use the corners of a rectangle", listed(.marks))]
    CrossingsOnOneLine {
        /// The marks on the line.
        marks: Vec<Mark>,
    },
    /// Two marks are exchanged: the outline crosses itself.
    #[error("the outline of the corner marks crosses itself; exchange marks {first} and {second}")]
    Crossed {
        /// The first of the two.
        first: Mark,
        /// The other.
        second: Mark,
    },
    /// One mark lies where its crossing can't be, whichever two are exchanged.
    #[error("corner mark {mark} can't lie where it is, seen from the others; move it to its crossing")]
    OutOfPlace {
        /// The mark.
        mark: Mark,
    },
    /// The marks run round the screen the other way than their crossings.
    #[error(
        "the corner marks run round the screen the wrong way, as in a mirror: columns count along the time axis and rows downwards; mark the corners in their order"
    )]
    Mirrored,
    /// The marks fix no plane to within the arithmetic.
    #[error("the corner marks fix no plane; move them farther apart")]
    Undetermined,
}

/// "1 (column 0, row 0), 2 (column 10, row 0) and 3 (…)".
fn listed(marks: &[Mark]) -> String {
    let mut text = String::new();
    for (place, mark) in marks.iter().enumerate() {
        if place > 0 {
            text.push_str(if place + 1 == marks.len() { " and " } else { ", " });
        }
        text.push_str(&mark.to_string());
    }
    text
}

/// Why edge marks don't give a difference.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Error, Serialize, Deserialize)]
pub enum SeparationError {
    /// An edge has no mark.
    #[error("edge {edge} is not marked; mark it at half the height of its own trace")]
    NoMark {
        /// "A" or "B".
        edge: char,
    },
    /// A mark lies outside of what the picture can show of the screen's plane.
    #[error("mark {} of edge {edge} lies off the plane of the screen; mark it again", .index + 1)]
    OffPlane {
        /// "A" or "B".
        edge: char,
        /// Its place in the list, from 0.
        index: usize,
    },
    /// Scatter asked of marks that are not repeated.
    #[error("one mark on each edge has no scatter: mark the edges again, or state an uncertainty in pixels")]
    NoRepeats,
    /// The uncertainty of marking is negative or no number.
    #[error("the uncertainty of a mark must be zero or more pixels")]
    Uncertainty,
}
