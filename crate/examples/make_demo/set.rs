//! What the sets have in common: files, bundles, and notebooks with nothing read on the screen.

use std::error::Error;

use slope_of_light::analysis::analyse;
use slope_of_light::bundle::{self, Entry};
use slope_of_light::notebook::{BenchField, Cell, Edit, EditError, Notebook};
use slope_of_light::pictures::charts;
use slope_of_light::view::view;
use slope_of_light::words::Table;

/// A file: its name, and its bytes.
pub type Made = (String, Vec<u8>);

/// The bundle of a notebook with its files.
pub fn bundled(notebook: &Notebook, files: Vec<Entry>) -> Result<Vec<u8>, Box<dyn Error>> {
    let analysis = analyse(notebook);
    let charts = charts(notebook.state(), &analysis, None);
    let words = Table::english()?;
    Ok(bundle::of(notebook, &analysis, &view(notebook, &analysis), &charts, None, &words, files)?)
}

/// The same notebook, with nothing read on the screen.
pub fn without_edges(typed: &Notebook) -> Result<Notebook, EditError> {
    let mut notebook = Notebook::new();
    for entry in typed.log() {
        let edit = match entry.edit.clone() {
            Edit::AddRow { row, after, mut cells } => {
                cells.remove(&Cell::EdgeA);
                cells.remove(&Cell::EdgeB);
                Edit::AddRow { row, after, cells }
            }
            // What is read on a screen by eye has no place here.
            Edit::SetBench { field: BenchField::EdgeHalfWidth, .. } => continue,
            other => other,
        };
        notebook.apply(edit, "")?;
    }
    Ok(notebook)
}
