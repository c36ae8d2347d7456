//! A place in the notebook, and what is wrong with what was typed there.

use serde::Serialize;

use crate::notebook::{ActsOn, BenchField, Cell, RailField, RailId, RowId, SettingId, SharedId};

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
        /// "mark", "distance", "uncertainty", "mark_before", "gap", "pairs.0.here"…; "splice" for the whole.
        part: String,
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
        /// Which of its texts: "uncertainty" or "degrees_of_freedom".
        part: String,
    },
    /// A stated covariance matrix.
    Covariance {
        /// Of distances or of delays.
        acts_on: ActsOn,
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
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Problem {
    /// Where.
    pub place: Place,
    /// What was found, what was expected and what to do.
    pub message: String,
}
