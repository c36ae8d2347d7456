//! Why a row can't take part in the line.

use serde::{Serialize, Serializer};

use crate::message;
use crate::notebook::{Remark, StoredFile};
use crate::photo::{PlaneError, SeparationError};
use crate::quantity::DecimalMark;
use crate::screen::EdgesError;
use crate::words::{Message, Value};

/// What a row lacks to take part in the line, and what to do.
#[derive(Clone, Debug, PartialEq)]
pub enum RowError {
    /// A rail reading and a distance.
    PlaceTwice,
    /// No number in the cell of the distance.
    DistanceUnreadable,
    /// Nothing says where the carriage stood.
    NoReading,
    /// No number in the cell of the rail reading.
    ReadingUnreadable,
    /// A rail whose place can't be told.
    RailUnplaced,
    /// A reading, and no rail at all.
    NoRail,
    /// A reading on one of several rails.
    RailUnnamed,
    /// A name that no rail has.
    RailUnknown {
        /// As typed.
        name: String,
        /// The names that there are.
        names: Vec<String>,
    },
    /// A name that several rails have.
    RailAmbiguous {
        /// As typed.
        name: String,
    },
    /// The delay stands in two places.
    DelayTwice,
    /// No number in the cell of the delay.
    DelayUnreadable,
    /// No number in the cell of an edge.
    EdgeUnreadable,
    /// Nothing says how late the second edge came.
    NoDelay,
    /// Edges that are no pair.
    Edges(EdgesError),
    /// No number in the cell of the time base.
    TimeBaseUnreadable,
    /// Edges read at one of several settings, or at none.
    NoTimeBase,
    /// A picture that tells no delay.
    Marks(MarksError),
    /// Traces that tell no delay.
    Traces(TracesError),
}

impl RowError {
    /// What is missing, and what to do.
    pub fn message(&self) -> Message {
        match self {
            Self::PlaceTwice => message!("row-place_twice"),
            Self::DistanceUnreadable => message!("row-distance_unreadable"),
            Self::NoReading => message!("row-no_reading"),
            Self::ReadingUnreadable => message!("row-reading_unreadable"),
            Self::RailUnplaced => message!("row-rail_unplaced"),
            Self::NoRail => message!("row-no_rail"),
            Self::RailUnnamed => message!("row-rail_unnamed"),
            Self::RailUnknown { name, names } if names.is_empty() => {
                message!("row-rail_unknown_none", name = name.as_str())
            }
            Self::RailUnknown { name, names } => {
                message!("row-rail_unknown", name = name.as_str(), names = names.clone())
            }
            Self::RailAmbiguous { name } => message!("row-rail_ambiguous", name = name.as_str()),
            Self::DelayTwice => message!("row-delay_twice"),
            Self::DelayUnreadable => message!("row-delay_unreadable"),
            Self::EdgeUnreadable => message!("row-edge_unreadable"),
            Self::NoDelay => message!("row-no_delay"),
            Self::Edges(error) => error.message(),
            Self::TimeBaseUnreadable => message!("row-time_base_unreadable"),
            Self::NoTimeBase => message!("row-no_time_base"),
            Self::Marks(error) => error.message(),
            Self::Traces(error) => error.message(),
        }
    }
}

impl Serialize for RowError {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        self.message().serialize(serializer)
    }
}

/// Why marked corners make no grid.
#[derive(Clone, Debug, PartialEq)]
pub enum GridError {
    /// No column or no row between them.
    NoDivisions,
    /// No plane goes through them.
    Plane(PlaneError),
}

/// Why the marks on a picture tell no delay.
#[derive(Clone, Debug, PartialEq)]
pub enum MarksError {
    /// The picture is read against a grid that the notebook does not have.
    NoGrid,
    /// That grid is none.
    Grid(GridError),
    /// The marks of the edges.
    Separation(SeparationError),
}

/// Why traces tell no delay.
#[derive(Clone, Debug, PartialEq)]
pub enum TracesError {
    /// They were measured before the estimator was chosen.
    NotMeasured,
    /// The estimator found none.
    NoDelay {
        /// What was found instead.
        remarks: Vec<Remark>,
        /// The files of the traces, which the remarks are about.
        files: Vec<StoredFile>,
        /// How the notebook writes numbers.
        mark: DecimalMark,
    },
    /// The delay stored with them is no number.
    Unreadable,
}

impl GridError {
    /// What is wrong, and what to do.
    pub fn message(&self) -> Message {
        match self {
            Self::NoDivisions => message!("grid-no_divisions"),
            Self::Plane(error) => error.message(),
        }
    }
}

impl MarksError {
    /// What is missing, and what to do.
    pub fn message(&self) -> Message {
        match self {
            Self::NoGrid => message!("marks-no_grid"),
            Self::Grid(error) => error.message(),
            Self::Separation(error) => error.message(),
        }
    }
}

impl TracesError {
    /// What is missing, and what to do.
    pub fn message(&self) -> Message {
        match self {
            Self::NotMeasured => message!("traces-not_measured"),
            Self::NoDelay { remarks, files, mark } => {
                let said: Vec<Value> = remarks.iter().map(|remark| remark.said(files, *mark)).collect();
                message!("traces-no_delay", why = said)
            }
            Self::Unreadable => message!("traces-unreadable"),
        }
    }
}
