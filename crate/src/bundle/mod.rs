//! The bundle: a whole notebook in one file, to keep, hand in and read back.
//!
//! A zip that holds
//!
//! | entry | what |
//! | --- | --- |
//! | `contents.json` | every other entry with its size and SHA-256 |
//! | `notebook.json` | the notebook, exactly as stored; the only part that is read back into one |
//! | `readings.csv`, `line.csv`, `residuals.csv`, `budget.csv` | the tables (RFC 4180) |
//! | `csv-metadata.json` | what each column of each table means (W3C, "Metadata Vocabulary for Tabular Data") |
//! | `line.svg`, `residuals.svg`, `bench.svg`, `budget.svg`, `trials.svg` | the charts; the last where trials were made |
//! | `report.html` | the printable report |
//! | `pictures/…` | pictures of the screen, as they are kept: `{SHA-256}.jpg` |
//!
//! [`container`] knows zips and nothing of notebooks; [`write()`] and [`read`] know what goes in.

mod checksum;
pub mod container;
mod contents;
mod error;
mod metadata;

pub use container::{Entries, Entry, LIMITS, Limits, pack, unpack};
pub use contents::{CONTENTS, FORMAT, sha256_hex};
pub use error::BundleError;
pub use metadata::METADATA;

use crate::analysis::Analysis;
use crate::notebook::{self, Notebook};
use crate::report::exact::{fit_figures, fit_table, residual_rows, residuals_table};
use crate::report::shown::{budget_table, readings_table};
use crate::report::{self, Charts, Table};
use crate::view::{TrialsView, View};

/// The entry that holds the notebook.
pub const NOTEBOOK: &str = "notebook.json";

/// The entry that holds the report.
pub const REPORT: &str = "report.html";

/// The folder of the pictures.
const PICTURES: &str = "pictures/";

/// A part of a bundle beside the notebook itself.
#[derive(Clone, Debug, PartialEq)]
pub enum Part {
    /// A table: `{name}.csv`, and its columns in the metadata.
    Table(Table),
    /// A chart: `{name}.svg`.
    Chart {
        /// Its name: "line", "residuals", "bench".
        name: &'static str,
        /// The drawing.
        svg: String,
    },
    /// The printable report.
    Report(String),
    /// A picture: `pictures/{name}`.
    Picture {
        /// Its name with its ending.
        name: String,
        /// The file as it was taken in.
        bytes: Vec<u8>,
    },
}

/// What is read back from a bundle. Tables, charts and report are not: they follow from the notebook.
#[derive(Clone, Debug, PartialEq)]
pub struct Contents {
    /// The text of `notebook.json`, byte for byte as it went in.
    pub notebook_text: String,
    /// The notebook that this text holds.
    pub notebook: Notebook,
    /// The pictures, each by its name without the folder.
    pub pictures: Vec<Entry>,
}

/// The bundle of `notebook`, with all that follows from it and with `pictures` (each by its name and its bytes).
///
/// `analysis`, `view` and `trials` are those of this notebook; a chart that is empty is left out.
///
/// # Errors
/// As [`write()`].
pub fn of(
    notebook: &Notebook,
    analysis: &Analysis,
    view: &View,
    charts: &Charts,
    trials: Option<&TrialsView>,
    pictures: Vec<Entry>,
) -> Result<Vec<u8>, BundleError> {
    let tables = [
        readings_table(view),
        fit_table(&fit_figures(analysis)),
        residuals_table(&residual_rows(analysis)),
        budget_table(view),
    ];
    let drawn = [
        ("line", &charts.line_svg),
        ("residuals", &charts.residuals_svg),
        ("bench", &charts.bench_svg),
        ("budget", &charts.budget_svg),
        ("trials", &charts.trials_svg),
    ];
    let drawn = drawn.into_iter().filter(|(_, svg)| !svg.is_empty());
    let pictures = pictures.into_iter().map(|Entry { name, bytes }| Part::Picture { name, bytes });
    let parts = tables
        .into_iter()
        .map(Part::Table)
        .chain(drawn.map(|(name, svg)| Part::Chart { name, svg: svg.clone() }))
        .chain(std::iter::once(Part::Report(report::html(view, charts, trials))))
        .chain(pictures);
    write(&notebook::write(notebook), parts.collect())
}

/// The bytes of a bundle with the notebook and `parts`, in that order.
///
/// # Errors
/// Parts that can't be stored: two of one name, a bad picture name, too much in all.
pub fn write(notebook_text: &str, parts: Vec<Part>) -> Result<Vec<u8>, BundleError> {
    let tables: Vec<&Table> = parts
        .iter()
        .filter_map(|part| if let Part::Table(table) = part { Some(table) } else { None })
        .collect();
    let mut entries = vec![text_entry(NOTEBOOK, notebook_text)];
    if !tables.is_empty() {
        entries.push(text_entry(METADATA, metadata::describe(&tables)));
    }
    for part in parts {
        entries.push(match part {
            Part::Table(table) => text_entry(metadata::file_name(&table), table.to_csv()?),
            Part::Chart { name, svg } => text_entry(format!("{name}.svg"), svg),
            Part::Report(html) => text_entry(REPORT, html),
            Part::Picture { name, bytes } => Entry { name: format!("{PICTURES}{name}"), bytes },
        });
    }
    pack(&entries)
}

/// Reads a bundle back.
///
/// # Errors
/// See [`BundleError`]; nothing is half read.
pub fn read(bytes: &[u8]) -> Result<Contents, BundleError> {
    let entries = unpack(bytes)?;
    let text = entries.get(NOTEBOOK).ok_or_else(|| BundleError::Missing { entry: NOTEBOOK.into() })?;
    let notebook_text =
        std::str::from_utf8(text).map_err(|_| BundleError::NotText { entry: NOTEBOOK.into() })?.to_owned();
    let notebook = notebook::read(&notebook_text)?;
    let mut pictures = Vec::new();
    for Entry { name, bytes } in entries.into_vec() {
        let Some(own) = name.strip_prefix(PICTURES) else { continue };
        if !is_named_truly(own, &bytes) {
            return Err(BundleError::Misnamed { entry: name });
        }
        pictures.push(Entry { name: own.to_owned(), bytes });
    }
    Ok(Contents { notebook_text, notebook, pictures })
}

/// Whether a picture is the one that the marks of a notebook were made on, where its name says which that is.
fn is_named_truly(name: &str, bytes: &[u8]) -> bool {
    let stem = name.split('.').next().unwrap_or_default();
    let is_hash = stem.len() == 64 && stem.bytes().all(|byte| byte.is_ascii_hexdigit());
    !is_hash || stem.eq_ignore_ascii_case(&sha256_hex(bytes))
}

fn text_entry(name: impl Into<String>, text: impl Into<String>) -> Entry {
    Entry { name: name.into(), bytes: text.into().into_bytes() }
}

#[cfg(test)]
#[path = "mod_test.rs"]
mod tests;

#[cfg(test)]
#[path = "unzip_test.rs"]
mod unzip_tests;
