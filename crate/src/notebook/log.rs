//! The log of edits, and the page that follows from it.

#[cfg(not(target_arch = "wasm32"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::edit::{Edit, EditError};
use super::page::Page;

/// One line of the log.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct LogEntry {
    /// When it was done, as the page's clock said it (RFC 3339); empty if nobody said.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub at: String,
    /// What was done.
    pub edit: Edit,
}

/// A notebook: its log, and the page folded from it.
///
/// The log only ever grows. Undo and redo are entries like any other: the page is what the entries that are
/// not taken back make of an empty page.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Notebook {
    log: Vec<LogEntry>,
    page: Page,
    /// Places in the log of the edits that hold, in order.
    done: Vec<usize>,
    /// Places in the log of the edits taken back, the last one last.
    undone: Vec<usize>,
}

impl Notebook {
    /// An empty notebook.
    pub fn new() -> Self {
        Self::default()
    }

    /// Replays a log.
    ///
    /// # Errors
    /// The place of the first entry (from 0) that can't be applied, and why.
    pub fn from_log(log: Vec<LogEntry>) -> Result<Self, (usize, EditError)> {
        let mut notebook = Self { log, ..Self::default() };
        for (place, entry) in notebook.log.iter().enumerate() {
            let taken = match &entry.edit {
                Edit::Undo => notebook.done.pop().map(|undone| notebook.undone.push(undone)),
                Edit::Redo => notebook.undone.pop().map(|redone| notebook.done.push(redone)),
                _ => {
                    notebook.done.push(place);
                    notebook.undone.clear();
                    Some(())
                }
            };
            taken.ok_or((place, nothing_to(&entry.edit)))?;
        }
        notebook.page = fold(&notebook.log, &notebook.done)?;
        Ok(notebook)
    }

    /// The page as it stands.
    pub fn page(&self) -> &Page {
        &self.page
    }

    /// The whole log.
    pub fn log(&self) -> &[LogEntry] {
        &self.log
    }

    /// Whether there is something to take back.
    pub fn can_undo(&self) -> bool {
        !self.done.is_empty()
    }

    /// Whether there is something to do again.
    pub fn can_redo(&self) -> bool {
        !self.undone.is_empty()
    }

    /// Appends an edit made at the time `at` and applies it.
    ///
    /// # Errors
    /// Why the edit was refused; log and page are then as before.
    pub fn apply(&mut self, edit: Edit, at: &str) -> Result<(), EditError> {
        self.append(LogEntry { at: at.to_owned(), edit })
    }

    fn append(&mut self, entry: LogEntry) -> Result<(), EditError> {
        match &entry.edit {
            Edit::Undo => {
                let place = self.done.pop().ok_or_else(|| nothing_to(&entry.edit))?;
                self.undone.push(place);
                self.page = fold(&self.log, &self.done).map_err(|(_, error)| error)?;
            }
            Edit::Redo => {
                let place = self.undone.pop().ok_or_else(|| nothing_to(&entry.edit))?;
                self.done.push(place);
                self.page = fold(&self.log, &self.done).map_err(|(_, error)| error)?;
            }
            edit => {
                let mut page = self.page.clone();
                edit.do_to(&mut page)?;
                self.page = page;
                self.done.push(self.log.len());
                self.undone.clear();
            }
        }
        self.log.push(entry);
        Ok(())
    }
}

fn nothing_to(edit: &Edit) -> EditError {
    EditError::NothingTo { what: if matches!(edit, Edit::Undo) { "undo" } else { "redo" } }
}

/// The page that the entries at the places `done` make of an empty one.
fn fold(log: &[LogEntry], done: &[usize]) -> Result<Page, (usize, EditError)> {
    let mut page = Page::default();
    for place in done {
        if let Some(entry) = log.get(*place) {
            entry.edit.do_to(&mut page).map_err(|error| (*place, error))?;
        }
    }
    Ok(page)
}

#[cfg(test)]
#[path = "log_test.rs"]
mod tests;
