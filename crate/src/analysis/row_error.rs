//! Why a row can't take part in the line.

use serde::{Serialize, Serializer};
use thiserror::Error;

use crate::notebook::{Remark, StoredFile, remark_words};
use crate::photo::{PlaneError, SeparationError};
use crate::quantity::DecimalMark;
use crate::screen::EdgesError;

/// What a row lacks to take part in the line, and what to do.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum RowError {
    /// A rail reading and a distance.
    #[error("the place is given twice")]
    PlaceTwice,
    /// No number in the cell of the distance.
    #[error("the distance can't be read")]
    DistanceUnreadable,
    /// Nothing says where the carriage stood.
    #[error("no rail reading yet")]
    NoReading,
    /// No number in the cell of the rail reading.
    #[error("the rail reading can't be read")]
    ReadingUnreadable,
    /// A rail whose place can't be told.
    #[error("its rail has no place yet: say under Apparatus where it stands")]
    RailUnplaced,
    /// A reading, and no rail at all.
    #[error("no rail has been laid: describe one under Apparatus, or give the distance itself")]
    NoRail,
    /// A reading on one of several rails.
    #[error("no rail named: write which rail the reading was taken on")]
    RailUnnamed,
    /// A name that no rail has.
    #[error("no rail is called “{name}”")]
    RailUnknown {
        /// As typed.
        name: String,
    },
    /// A name that several rails have.
    #[error("more than one rail is called “{name}”")]
    RailAmbiguous {
        /// As typed.
        name: String,
    },
    /// The delay stands in two places.
    #[error("the delay is given twice")]
    DelayTwice,
    /// No number in the cell of the delay.
    #[error("the delay can't be read")]
    DelayUnreadable,
    /// No number in the cell of an edge.
    #[error("an edge can't be read")]
    EdgeUnreadable,
    /// Nothing says how late the second edge came.
    #[error("no delay yet: read both edges on the screen")]
    NoDelay,
    /// Edges that are no pair.
    #[error(transparent)]
    Edges(#[from] EdgesError),
    /// No number in the cell of the time base.
    #[error("the time base can't be read")]
    TimeBaseUnreadable,
    /// Edges read at one of several settings, or at none.
    #[error("no time base: write the time per division that the screen was set to")]
    NoTimeBase,
    /// A picture that tells no delay.
    #[error(transparent)]
    Marks(#[from] MarksError),
    /// Traces that tell no delay.
    #[error(transparent)]
    Traces(#[from] TracesError),
}

impl Serialize for RowError {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

/// Why marked corners make no grid.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum GridError {
    /// No column or no row between them.
    #[error("the corners of the grid are no division apart: say how many divisions lie between them")]
    NoDivisions,
    /// No plane goes through them.
    #[error(transparent)]
    Plane(#[from] PlaneError),
}

/// Why the marks on a picture tell no delay.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum MarksError {
    /// The picture is read against a grid that the notebook does not have.
    #[error("its grid is not marked yet")]
    NoGrid,
    /// That grid is none.
    #[error("the grid on its picture: {0}")]
    Grid(#[from] GridError),
    /// The marks of the edges.
    #[error(transparent)]
    Separation(#[from] SeparationError),
}

/// Why traces tell no delay.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum TracesError {
    /// They were measured before the estimator was chosen.
    #[error("its traces were not measured by the estimator chosen: measure them again")]
    NotMeasured,
    /// The estimator found none.
    #[error("its traces give no delay: {}", remark_words(.remarks, .files, *.mark))]
    NoDelay {
        /// What was found instead.
        remarks: Vec<Remark>,
        /// The files of the traces, which the remarks are about.
        files: Vec<StoredFile>,
        /// How the notebook writes numbers.
        mark: DecimalMark,
    },
    /// The delay stored with them is no number.
    #[error("the delay measured on its traces can’t be read: measure them again")]
    Unreadable,
}
