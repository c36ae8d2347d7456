//! What is computed over and over: tails of distributions, straight lines, uncertainty budgets, Monte Carlo trials.
//!
//! Plain numbers only: this package knows neither notebooks nor units. It stands by itself because optimisation is
//! chosen by package: it is compiled for speed where the rest of the page is compiled for size. The notebook's own
//! package shows its modules as its own.

// Normal, Student and chi-square distributions, with their tails.
pub mod distribution;

// The value of a rank, such as the median.
pub mod rank;

// The one engine for straight lines, its diagnostics and side checks.
pub mod line;

// Components and what they come to; Monte Carlo by redrawn lines.
pub mod budget;

// Results of several people, taken together.
pub mod consensus;
