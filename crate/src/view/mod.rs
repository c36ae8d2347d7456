//! What the page shows: the notebook as typed, with everything computed from it already in words and digits.
//!
//! A [`View`] holds texts only, rounded and with their units: the page, the report and a printed copy put them
//! in place and compute nothing. It is the whole contract between the crate and the page.

pub mod budget;
pub mod build;
mod checks;
pub mod evidence;
pub mod fields;
pub mod figures;
pub mod math;
pub mod plan;
pub mod proposal;
pub mod result;
pub mod row_work;
pub mod trials;
pub mod types;

pub use build::{Told, view, view_after};
pub use types::*;
