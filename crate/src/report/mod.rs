//! The report: what a notebook says, as tables and as one document to print, hand in or go on writing.
//!
//! - [`Table`]: one table, built once.
//! - [`csv`]: the CSV form (RFC 4180), safe to open in a spreadsheet, and its way back.
//! - [`shown`]: tables of what the page shows, as rounded texts.
//! - [`exact`]: tables of the numbers behind them, at full precision.
//! - [`Document`]: the report, section by section, not yet written.
//! - [`html`], [`latex`], [`markdown`]: tables and reports written.
//!
//! Nothing is computed here, and nothing from a notebook is ever taken for markup: it all goes through
//! [`crate::escape`].

pub mod csv;
pub mod table;
mod labels;
pub mod shown;
mod block;
pub mod document;
pub mod html;
pub mod latex;
pub mod markdown;
pub mod exact;

pub use csv::TableError;
pub use document::Document;
pub use table::{Column, Kind, Table};

#[cfg(test)]
#[path = "sample_test.rs"]
pub(crate) mod sample;
