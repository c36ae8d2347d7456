//! What can be wrong with marks on a picture. Messages count marks from 1 and name them by their place on the grid.

use crate::decimal::{DecimalMark, at_most};
use serde::{Deserialize, Serialize};

use super::mark::Mark;
use crate::words::{Message, Value};
use crate::{errors_as_data, message};

/// Why corner marks don't fix the plane of the screen.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum PlaneError {
    /// Fewer than four marks.
    TooFew {
        /// Marks given.
        got: usize,
    },
    /// A coordinate is not a finite number.
    NotFinite {
        /// The mark.
        mark: Mark,
    },
    /// The uncertainty of marking is negative or no number.
    Uncertainty,
    /// Two marks at one place of the picture.
    SamePlace {
        /// The first of the two.
        first: Mark,
        /// The other.
        second: Mark,
    },
    /// Two marks for one crossing of the grid.
    SameCrossing {
        /// The first of the two.
        first: Mark,
        /// The other.
        second: Mark,
    },
    /// All marks but at most one lie on one line in the picture.
    OnOneLine {
        /// The marks on the line.
        marks: Vec<Mark>,
    },
    /// All marks but at most one are given crossings on one line of the grid.
    CrossingsOnOneLine {
        /// The marks on the line.
        marks: Vec<Mark>,
    },
    /// Two marks are exchanged: the outline crosses itself.
    Crossed {
        /// The first of the two.
        first: Mark,
        /// The other.
        second: Mark,
    },
    /// One mark lies where its crossing can't be, whichever two are exchanged.
    OutOfPlace {
        /// The mark.
        mark: Mark,
    },
    /// The marks run round the screen the other way than their crossings.
    Mirrored,
    /// The marks fix no plane to within the arithmetic.
    Undetermined,
}

errors_as_data!(PlaneError, SeparationError);

impl PlaneError {
    /// What is wrong, and what to do. Marks are counted from 1, and named by their place on the grid too.
    pub fn message(&self) -> Message {
        match self {
            Self::TooFew { got } => message!("plane-too_few", got = *got),
            Self::NotFinite { mark } => message!("plane-not_finite", mark = corner(mark)),
            Self::Uncertainty => message!("plane-uncertainty"),
            Self::SamePlace { first, second } => {
                message!("plane-same_place", first = corner(first), second = corner(second))
            }
            Self::SameCrossing { first, second } => {
                message!("plane-same_crossing", first = corner(first), second = corner(second))
            }
            Self::OnOneLine { marks } => message!("plane-on_one_line", marks = corners(marks)),
            Self::CrossingsOnOneLine { marks } => {
                message!("plane-crossings_on_one_line", marks = corners(marks))
            }
            Self::Crossed { first, second } => {
                message!("plane-crossed", first = corner(first), second = corner(second))
            }
            Self::OutOfPlace { mark } => message!("plane-out_of_place", mark = corner(mark)),
            Self::Mirrored => message!("plane-mirrored"),
            Self::Undetermined => message!("plane-undetermined"),
        }
    }
}

fn corner(mark: &Mark) -> Message {
    let whole = |value| at_most(value, 3, DecimalMark::Point);
    message!("plane-mark", n = mark.index + 1, column = whole(mark.column), row = whole(mark.row))
}

fn corners(marks: &[Mark]) -> Vec<Value> {
    marks.iter().map(|mark| corner(mark).into()).collect()
}

/// Why edge marks don't give a difference.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum SeparationError {
    /// An edge has no mark.
    NoMark {
        /// "A" or "B".
        edge: char,
    },
    /// A mark lies outside of what the picture can show of the screen's plane.
    OffPlane {
        /// "A" or "B".
        edge: char,
        /// Its place in the list, from 0.
        index: usize,
    },
    /// Scatter asked of marks that are not repeated.
    NoRepeats,
    /// The uncertainty of marking is negative or no number.
    Uncertainty,
    /// An edge is not marked between its baseline and its top.
    NotBetween {
        /// "A" or "B".
        edge: char,
    },
}

impl SeparationError {
    /// What is missing, and what to do.
    pub fn message(self) -> Message {
        match self {
            Self::NoMark { edge } => message!("edges-no_mark", edge = edge.to_string()),
            Self::OffPlane { edge, index } => {
                message!("edges-off_plane", n = index + 1, edge = edge.to_string())
            }
            Self::NoRepeats => message!("edges-no_repeats"),
            Self::Uncertainty => message!("edges-uncertainty"),
            Self::NotBetween { edge } => message!("edges-not_between", edge = edge.to_string()),
        }
    }
}
