//! From a notebook to everything computed from it, once.
//!
//! [`analyse`] is pure and total: the same notebook gives the same digits, natively and in a browser, and what
//! can't be computed is a value that says why. Lengths are in metres, times in nanoseconds.
//!
//! The readings become distances and delays ([`rows`]), those a line ([`line`](mod@line)), that a speed
//! ([`speed`]); [`notices`] looks over the whole.

pub mod types;

pub use types::*;
