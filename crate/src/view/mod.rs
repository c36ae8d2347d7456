//! What the page shows: the notebook as typed, with everything computed from it already in words and digits.
//!
//! A [`View`] holds texts only, rounded and with their units: the page, the report and a printed copy put them
//! in place and compute nothing. It is the whole contract between the crate and the page.

// A formula as a tree; the cautions; what the page shows, in types; how its figures are made.
pub mod math;

pub mod cautions;

pub mod types;

pub mod figures;

// Fields as typed, and what a new row would begin with.
pub mod fields;

pub mod proposal;

mod handout;

// What was computed, a part each.
pub mod budget;
mod checks;
pub mod evidence;
pub mod fitted_line;
pub mod result;
pub mod row_work;
pub mod trials;

pub mod plan;

// All of it.
pub mod build;

// What of it is new; the list of notebooks; numbers typed beside them.
pub mod news;
pub mod shelf;
pub mod typed;

pub use build::{PreviousView, view, view_after};
pub use cautions::{CautionGroup, CautionsView, cautions_view};
pub use news::{News, Outputs, RowNews, row_news};
pub use plan::{PlaceView, PlanView, PositionView, ProposedView, TrackView};
pub use shelf::StoredNotebook;
pub use types::*;
