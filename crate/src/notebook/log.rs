//! The log of edits, and the page that follows from it.

#[cfg(not(target_arch = "wasm32"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::edit::{Edit, EditError};
use super::state::NotebookState;

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
/// not taken back make of an empty page. Undo stops at a seal, laid or opened: what came before it stays done.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Notebook {
    log: Vec<LogEntry>,
    page: NotebookState,
    /// Places in the log of the edits that hold, in order.
    done: Vec<usize>,
    /// Places in the log of the edits taken back, the last one last.
    undone: Vec<usize>,
    /// How many of `done` can't be taken back any more.
    kept: usize,
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
        let mut notebook = Self::default();
        for (place, entry) in log.iter().enumerate() {
            let taken = match &entry.edit {
                Edit::Undo => notebook.last_done().map(|undone| notebook.undone.push(undone)),
                Edit::Redo => notebook.undone.pop().map(|redone| notebook.done.push(redone)),
                _ => {
                    notebook.did(place, &entry.edit);
                    Some(())
                }
            };
            taken.ok_or((place, nothing_to(&entry.edit)))?;
        }
        notebook.page = fold(&log, &notebook.done)?;
        notebook.log = log;
        Ok(notebook)
    }

    /// The page as it stands.
    pub fn state(&self) -> &NotebookState {
        &self.page
    }

    /// The page as its first entry left it.
    pub fn first_page(&self) -> NotebookState {
        let mut page = NotebookState::default();
        if let Some(first) = self.log.first()
            && first.edit.do_to(&mut page, &first.at).is_err()
        {
            return NotebookState::default();
        }
        page
    }

    /// The whole log.
    pub fn log(&self) -> &[LogEntry] {
        &self.log
    }

    /// Whether there is something to take back.
    pub fn can_undo(&self) -> bool {
        self.done.len() > self.kept
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
                let place = self.last_done().ok_or_else(|| nothing_to(&entry.edit))?;
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
                edit.do_to(&mut page, &entry.at)?;
                self.page = page;
                self.did(self.log.len(), edit);
            }
        }
        self.log.push(entry);
        Ok(())
    }

    /// Takes the last edit that can be taken back off the list of those that hold.
    fn last_done(&mut self) -> Option<usize> {
        if self.can_undo() { self.done.pop() } else { None }
    }

    /// Notes that an edit, at `place` in the log, holds.
    fn did(&mut self, place: usize, edit: &Edit) {
        self.done.push(place);
        self.undone.clear();
        if matches!(edit, Edit::Seal(_) | Edit::OpenSeal) {
            self.kept = self.done.len();
        }
    }
}

fn nothing_to(edit: &Edit) -> EditError {
    if matches!(edit, Edit::Undo) { EditError::NothingToUndo } else { EditError::NothingToRedo }
}

/// The page that the entries at the places `done` make of an empty one.
fn fold(log: &[LogEntry], done: &[usize]) -> Result<NotebookState, (usize, EditError)> {
    let mut page = NotebookState::default();
    for place in done {
        if let Some(entry) = log.get(*place) {
            entry.edit.do_to(&mut page, &entry.at).map_err(|error| (*place, error))?;
        }
    }
    Ok(page)
}

#[cfg(test)]
#[path = "log_test.rs"]
mod tests;
