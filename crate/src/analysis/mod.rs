//! From a notebook to everything computed from it, once.
//!
//! [`analyse()`] is pure and total: the same notebook gives the same digits, natively and in a browser, and what
//! can't be computed is a value that says why. Lengths are in metres, times in nanoseconds.
//!
//! [`analyse_page`] is the whole way, step by step. A page is first read in one sequence ([`prepare()`]): texts become
//! numbers ([`read`]), rows distances and delays ([`rows`]), those what a line is fitted to ([`setup`](mod@setup)).
//! Then come the line ([`line_fit`]) seen from several sides ([`checks`](mod@checks)), its uncertainty taken
//! apart ([`parts`]), the speed ([`speed`](mod@speed)) with its [`budget`](mod@budget), and [`notices`](mod@notices)
//! about the whole. After an edit [`analyse_line`] gives line and speed at once; checks and notices follow.
//!
//! The modules stand in the order in which data flows; each uses those above it.

// A place in the notebook, and what is wrong there.
pub mod place;

// From where an error comes.
pub mod origin;

// What a notice is.
pub mod notice;

// A hidden factor on every v and c.
pub mod seal;

// Why a row can't take part in the line.
pub mod row_error;

// The shape of all that is computed.
pub mod types;

// What fields are called, and which of them are marked.
pub mod fields;

// Pictures and traces to delays.
pub mod evidence;

// Texts to numbers.
pub mod read;

// The state of the air.
pub mod air_state;

// The cells of one row, read.
mod cells;

// One row in the numbers that the line needs.
pub mod point;

// What rows are read against.
pub mod context;

// How late the second edge came.
mod delays;

// Rows to distances and delays.
pub mod rows;

// The errors that rows have, each for itself or shared, and what the slope's uncertainty is made of.
pub mod parts;

// What a fixed level on traces does.
pub mod walk;

// The errors of the apparatus that rows share.
mod apparatus;

// Stated covariance matrices.
mod matrices;

// What goes into the fit.
pub mod setup;

// A page read up to there.
pub mod prepare;

// Why there is no line.
mod refusal;

// Whether the rows fit what was stated.
mod goodness;

// The straight line.
pub mod line_fit;

// Other ways to look at the same rows.
pub mod checks;

// What the uncertainty of c is made of.
pub mod budget;

// From the slope to v and c.
pub mod speed;

// What a closed seal covers.
mod cover;

// What went wrong, where the readings tell it.
pub mod diagnosis;

// What the notebook notices by itself.
pub mod notices;

// The whole way, step by step.
pub mod analyse;

// Monte Carlo on the whole of it.
pub mod trials;

// Traces and pictures to the edits that put them into rows.
pub mod taken;

pub use analyse::{analyse, analyse_line, analyse_page};
pub use fields::{bench_field, rail_field};
pub use notice::{Notice, Section, Weight};
pub use origin::{Clock, Origin, Quantity};
pub use parts::WhatIf;
pub use place::{EntryProblem, Place};
pub use prepare::{PreparedPage, prepare};
pub use row_error::{GridError, MarksError, RowError, TracesError};
pub use seal::Shown;
pub use speed::C0;
pub use types::*;

#[cfg(test)]
#[path = "mod_test.rs"]
mod tests;
