//! One open notebook, as the page holds it.

use wasm_bindgen::prelude::*;

use super::{thrown, to_js};
use crate::analysis::{Analysis, analyse};
use crate::notebook::{Cell, Edit, LogEntry, Notebook, file, paste, read};
use crate::view::view;

/// One open notebook: its log, and what was computed from it last.
#[wasm_bindgen]
pub struct Desk {
    notebook: Notebook,
    analysis: Analysis,
}

impl Desk {
    fn holding(notebook: Notebook) -> Self {
        let analysis = analyse(&notebook);
        Self { notebook, analysis }
    }

    fn do_edit(&mut self, edit: Edit, at: &str) -> Result<(), JsValue> {
        self.notebook.apply(edit, at).map_err(|error| thrown("edit", &error))?;
        self.analysis = analyse(&self.notebook);
        Ok(())
    }
}

#[wasm_bindgen]
impl Desk {
    /// A blank notebook.
    pub fn blank() -> Desk {
        Self::holding(Notebook::new())
    }

    /// Opens the text of a `notebook.json`.
    ///
    /// # Errors
    /// `{kind: "file", message}`.
    pub fn open(text: &str) -> Result<Desk, JsValue> {
        read(text).map(Self::holding).map_err(|error| thrown("file", &error))
    }

    /// Does an edit, given as an object, at the time `at` (RFC 3339).
    ///
    /// # Errors
    /// `{kind: "edit", message}`; the notebook is then as before.
    pub fn apply(&mut self, edit: JsValue, at: &str) -> Result<(), JsValue> {
        let edit: Edit = serde_wasm_bindgen::from_value(edit).map_err(|error| thrown("edit", &error))?;
        self.do_edit(edit, at)
    }

    /// Puts a block copied from a spreadsheet into the rows, from a cell on; into new rows if `row` is absent.
    ///
    /// # Errors
    /// `{kind: "edit", message}`; the notebook is then as before.
    pub fn paste(&mut self, row: Option<u32>, cell: &str, block: &str, at: &str) -> Result<(), JsValue> {
        let cell: Cell = serde_json::from_value(serde_json::Value::from(cell))
            .map_err(|error| thrown("edit", &error))?;
        let edit = paste(self.notebook.page(), row, cell, block);
        self.do_edit(edit, at)
    }

    /// Everything the page shows.
    pub fn view(&self) -> JsValue {
        to_js(&view(&self.notebook, &self.analysis))
    }

    /// The notebook as the text of a `notebook.json`.
    pub fn text(&self) -> String {
        file::write(&self.notebook)
    }

    /// The log entries from number `from` (from 0) on, each as JSON.
    pub fn entries(&self, from: usize) -> Vec<String> {
        let rest = self.notebook.log().get(from..).unwrap_or_default();
        // A log entry holds strings and choices only, which always have a JSON form.
        rest.iter().map(|entry| serde_json::to_string(entry).unwrap_or_default()).collect()
    }

    /// Appends log entries, each as JSON, such as a journal kept.
    ///
    /// # Errors
    /// `{kind: "edit", message}` at the first entry that can't be read or applied; those before it hold.
    pub fn replay(&mut self, entries: Vec<String>) -> Result<(), JsValue> {
        for text in entries {
            let entry: LogEntry = serde_json::from_str(&text).map_err(|error| thrown("edit", &error))?;
            self.notebook.apply(entry.edit, &entry.at).map_err(|error| thrown("edit", &error))?;
        }
        self.analysis = analyse(&self.notebook);
        Ok(())
    }
}
