//! A place in the notebook, and what is wrong with what was typed there.

use std::fmt;

use serde::{Serialize, Serializer};

use crate::notebook::{BenchField, Cell, CovarianceOf, RailField, RailId, RowId, SettingId, SharedId};
use crate::words::Message;

/// A place in the notebook that something typed stands at.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "at", rename_all = "snake_case")]
pub enum Place {
    /// A text of the bench.
    Bench {
        /// Which.
        field: BenchField,
    },
    /// A text of a rail.
    Rail {
        /// Which rail.
        rail: RailId,
        /// Which text.
        field: RailField,
    },
    /// A part of a rail's splice.
    Splice {
        /// Which rail.
        rail: RailId,
        /// Which part.
        part: SplicePart,
    },
    /// A time base setting.
    Setting {
        /// Which setting.
        setting: SettingId,
        /// Its uncertainty, or its time per division.
        uncertainty: bool,
    },
    /// A shared error.
    Shared {
        /// Which one.
        shared: SharedId,
        /// Which of its texts.
        part: SharedPart,
    },
    /// A stated covariance matrix.
    Covariance {
        /// Of what.
        acts_on: CovarianceOf,
    },
    /// A cell of a row.
    Cell {
        /// Which row.
        row: RowId,
        /// Which cell.
        cell: Cell,
    },
}

/// Something typed that can't be used as it stands.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct EntryProblem {
    /// Where.
    pub place: Place,
    /// What was found, what was expected and what to do.
    pub message: Message,
}

/// A part of a splice. Written by its name: "mark", "pairs.0.here".
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SplicePart {
    /// All of it.
    Whole,
    /// The mark whose place is told.
    Mark,
    /// The distance of that mark from the splitter.
    Distance,
    /// The uncertainty of that.
    Uncertainty,
    /// The mark of the rail before at which this one begins.
    MarkBefore,
    /// The gap between the two.
    Gap,
    /// The reading on this rail of one overlap pair, counted from 0.
    PairHere(usize),
    /// The reading on the rail before of that pair.
    PairBefore(usize),
}

impl fmt::Display for SplicePart {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Whole => f.write_str("splice"),
            Self::Mark => f.write_str("mark"),
            Self::Distance => f.write_str("distance"),
            Self::Uncertainty => f.write_str("uncertainty"),
            Self::MarkBefore => f.write_str("mark_before"),
            Self::Gap => f.write_str("gap"),
            Self::PairHere(pair) => write!(f, "pairs.{pair}.here"),
            Self::PairBefore(pair) => write!(f, "pairs.{pair}.before"),
        }
    }
}

impl Serialize for SplicePart {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

/// A text of a shared error.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum SharedPart {
    /// Its standard uncertainty.
    Uncertainty,
    /// The degrees of freedom of that.
    DegreesOfFreedom,
}
