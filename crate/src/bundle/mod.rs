//! The bundle: a whole notebook in one file, to keep, hand in and read back.
//!
//! A zip that holds
//!
//! | entry | what |
//! | --- | --- |
//! | `contents.json` | every other entry with its size and SHA-256 |
//! | `notebook.json` | the notebook, exactly as stored; the only part that is read back into one |
//! | `readings.csv`, `line.csv`, `residuals.csv`, `budget.csv` | the tables (RFC 4180), in UTF-8 with its mark |
//! | `csv-metadata.json` | what each column of each table means (W3C, "Metadata Vocabulary for Tabular Data") |
//! | `line.svg`, `residuals.svg`, `bench.svg`, `budget.svg`, `trials.svg` | the charts; the last where trials were made |
//! | `report.html` | the printable report |
//! | `pictures/…` | pictures of the screen, as they are kept: `{SHA-256}.jpg` |
//! | `traces/…` | trace files, as they came: `{SHA-256}.txt` |
//!
//! [`slope_archive`] knows zips and nothing of notebooks; here is what goes in. In the page the two meet in
//! JavaScript: texts come from here, pictures and traces from where they are kept, and the worker packs them.

mod error;
mod metadata;

pub use error::{BundleError, notebook_refused};
pub use metadata::METADATA;

pub use slope_archive::{ArchiveError, CONTENTS, Entry, LIMITS, pack, sha256_hex, unpack};

use litemap::LiteMap;

use crate::analysis::Analysis;
use crate::drawings::Charts;
use crate::notebook::{self, Evidence, Imprint, Notebook, NotebookState, StoredFile};
use crate::report::csv::UTF8_MARK;
use crate::report::exact::{
    budget_numbers, fit_figures, fit_table, readings_numbers, residual_rows, residuals_table,
};
use crate::report::{Document, Table, TableError};
use crate::view::{TrialsView, View};
use crate::words::Words;

/// The entry that holds the notebook.
pub const NOTEBOOK: &str = "notebook.json";

/// The entry that holds the report.
pub const REPORT: &str = "report.html";

/// The folders of the files that the notebook rests on.
const FOLDERS: [&str; 2] = ["pictures/", "traces/"];

/// What is read back from a bundle. Tables, charts and report are not: they follow from the notebook.
#[derive(Clone, Debug, PartialEq)]
pub struct ReadBack {
    /// The text of `notebook.json`, byte for byte as it went in.
    pub notebook_text: String,
    /// The notebook that this text holds.
    pub notebook: Notebook,
    /// The files that the notebook rests on.
    pub kept: Vec<Entry>,
}

/// What the bundle of `notebook` holds beside pictures: the notebook, with all that follows from it.
///
/// `analysis`, `view` and `trials` are those of this notebook, `charts` its charts as SVG; one that is empty is left out. The report is in the
/// words of a table.
///
/// # Errors
/// A table that can't be written.
pub fn texts(
    notebook: &Notebook,
    analysis: &Analysis,
    view: &View,
    charts: &Charts,
    trials: Option<&TrialsView>,
    words: &dyn Words,
) -> Result<Vec<Entry>, TableError> {
    let tables = [
        readings_numbers(analysis, view, words),
        fit_table(&fit_figures(analysis), words),
        residuals_table(&residual_rows(analysis), words),
        budget_numbers(analysis, view, words),
    ];
    let mut entries = vec![
        text_entry(NOTEBOOK, notebook::write(notebook)),
        text_entry(METADATA, metadata::describe(&tables, words)),
    ];
    for table in &tables {
        entries.push(table_entry(table)?);
    }
    entries.extend(charts.named().map(|(name, svg)| text_entry(format!("{name}.svg"), svg)));
    let report = Document::of(view, charts, trials, &Imprint::of(notebook), words);
    entries.push(text_entry(REPORT, report.html()));
    Ok(entries)
}

/// The bundle of `notebook`, with all that follows from it and with the files it rests on: see [`texts`].
///
/// # Errors
/// Parts that can't be stored: two of one name, a bad name, too much in all.
pub fn of(
    notebook: &Notebook,
    analysis: &Analysis,
    view: &View,
    charts: &Charts,
    trials: Option<&TrialsView>,
    words: &dyn Words,
    kept: Vec<Entry>,
) -> Result<Vec<u8>, BundleError> {
    let mut entries = texts(notebook, analysis, view, charts, trials, words)?;
    entries.extend(kept);
    Ok(pack(&entries)?)
}

/// The files that a notebook holds or its rows rest on, each with its name in a bundle; the same file once.
pub fn kept(page: &NotebookState) -> LiteMap<String, &StoredFile> {
    let each = page.rows.iter().filter_map(|row| row.evidence.as_ref());
    let named = each.flat_map(|evidence| match evidence {
        Evidence::Picture(picture) => vec![(picture_name(&picture.file), &picture.file)],
        Evidence::Traces(traces) => {
            traces.files.iter().map(|file| (format!("traces/{}.txt", file.sha256), file)).collect()
        }
    });
    named.chain(page.photo.iter().map(|photo| (picture_name(photo), photo))).collect()
}

/// The name of a picture in a bundle.
fn picture_name(picture: &StoredFile) -> String {
    format!("pictures/{}.jpg", picture.sha256)
}

/// A table as a file for spreadsheets.
///
/// # Errors
/// A table that can't be written.
fn table_entry(table: &Table) -> Result<Entry, TableError> {
    Ok(text_entry(metadata::file_name(table), format!("{UTF8_MARK}{}", table.to_csv()?)))
}

/// The bytes of a bundle with the notebook, and with entries beside it, in that order.
///
/// # Errors
/// Entries that can't be stored: two of one name, a bad name, too much in all.
pub fn write(notebook_text: &str, beside: Vec<Entry>) -> Result<Vec<u8>, BundleError> {
    let mut entries = vec![text_entry(NOTEBOOK, notebook_text)];
    entries.extend(beside);
    Ok(pack(&entries)?)
}

/// Reads a bundle back.
///
/// # Errors
/// See [`BundleError`]; nothing is half read.
pub fn read(bytes: &[u8]) -> Result<ReadBack, BundleError> {
    let entries = unpack(bytes)?;
    let missing = || ArchiveError::Missing { entry: NOTEBOOK.into() };
    let text = entries.get(NOTEBOOK).ok_or_else(missing)?;
    let not_text = |_| ArchiveError::NotText { entry: NOTEBOOK.into() };
    let notebook_text = std::str::from_utf8(text).map_err(not_text)?.to_owned();
    let notebook = notebook::read(&notebook_text)?;
    let kept =
        entries.into_vec().into_iter().filter(|entry| FOLDERS.iter().any(|f| entry.name.starts_with(f)));
    Ok(ReadBack { notebook_text, notebook, kept: kept.collect() })
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

#[cfg(test)]
#[path = "sealed_test.rs"]
mod sealed;

#[cfg(test)]
#[path = "round_trip_test.rs"]
mod round_trip;
