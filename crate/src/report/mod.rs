//! The report: what a notebook says, as tables and as one document to print or hand in.
//!
//! - [`Table`]: one table, built once, written as CSV (RFC 4180), LaTeX, Markdown or HTML.
//! - [`csv`]: the CSV form, safe to open in a spreadsheet, and its way back.
//! - [`shown`]: tables of what the page shows, as rounded texts.
//! - [`exact`]: tables of the numbers behind them, at full precision.
//! - [`document`]: the printable report.
//!
//! Nothing is computed here, and nothing from a notebook is ever taken for markup: it all goes through
//! [`escape`].

pub mod csv;
pub mod escape;
pub mod table;
mod labels;
pub mod shown;
pub mod document;
pub mod exact;

pub use csv::TableError;
pub use document::html;
pub use table::{Column, Kind, Table};

#[cfg(test)]
#[path = "sample_test.rs"]
pub(crate) mod sample;
