//! Delays out of the evidence itself: recorded traces and photographs of a screen.
//!
//! Plain bytes, samples and pixels, and what a notebook stores of them: but for the border, this package knows no
//! browsers. It stands by itself because most of it works in a worker beside the page, for which it is compiled for
//! speed. So it also holds what the worker's wasm and the page's have in common: how numbers are written, what is said,
//! drawings as tables, the border to the page.

// Lists of variants.
mod variants;

// Doubles as decimal numbers: the one rule of rounding and of writing.
pub mod decimal;

// What is said, as messages.
pub mod words;

// Drawings as tables.
pub mod plot_table;

// Recorded traces: reading files, baselines, edges, delays, walk.
pub mod trace;

// Photographs of a screen: marks to divisions, and marks proposed.
pub mod photo;

// What a notebook stores of both.
pub mod stored;

// What is really so at a row of a data set.
pub mod row_truth;

// The border to the page.
pub mod border;
