//! The log of edits, and the page that follows from it.

#[cfg(not(target_arch = "wasm32"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::edit::Edit;
use super::edit_error::EditError;
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
/// not taken back make of an empty page. Undo stops at a seal, laid or opened, and at a hand-out: what came before it
/// stays done.
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
            taken.ok_or_else(|| (place, notebook.nothing_to(&entry.edit)))?;
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
                let place = self.last_done().ok_or_else(|| self.nothing_to(&entry.edit))?;
                self.undone.push(place);
                self.page = fold(&self.log, &self.done).map_err(|(_, error)| error)?;
            }
            Edit::Redo => {
                let place = self.undone.pop().ok_or_else(|| self.nothing_to(&entry.edit))?;
                self.done.push(place);
                self.page = fold(&self.log, &self.done).map_err(|(_, error)| error)?;
            }
            edit => {
                let mut page = self.page.clone();
                edit.may_reach(&page)?;
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
        if matches!(edit, Edit::Seal(_) | Edit::OpenSeal | Edit::HandOut | Edit::Copied(_)) {
            self.kept = self.done.len();
        }
    }

    fn nothing_to(&self, edit: &Edit) -> EditError {
        match edit {
            Edit::Undo if self.kept > 0 => EditError::UndoStops,
            Edit::Undo => EditError::NothingToUndo,
            _ => EditError::NothingToRedo,
        }
    }

    /// How many entries of the log are the teacher's layer; none where the notebook was not handed out.
    pub fn handed_out(&self) -> usize {
        self.log.iter().position(|entry| matches!(entry.edit, Edit::HandOut)).map_or(0, |place| place + 1)
    }

    /// This notebook to be handed out: what holds in it, without what was taken back, what was worded otherwise before and what
    /// is of no use to others; under a seal of its own where there is a `salt`. It counts as handed out when it was last
    /// changed, so that the same preparation gives the same hand-out whenever it is asked for.
    ///
    /// # Errors
    /// When it was itself handed out.
    pub fn hand_out(self, salt: &str) -> Result<Self, EditError> {
        let Self { log, page, done, .. } = self;
        let held = log.into_iter().enumerate().filter(|(place, _)| done.binary_search(place).is_ok());
        let held = held
            .filter_map(|(_, LogEntry { at, edit })| edit.handed_on(&page).map(|edit| LogEntry { at, edit }));
        let mut handed = Self::from_log(held.collect()).map_err(|(_, error)| error)?;
        let at = handed.log.last().map_or_else(String::new, |entry| entry.at.clone());
        if !salt.is_empty() {
            handed.apply(Edit::Seal(salt.to_owned()), &at)?;
        }
        handed.apply(Edit::HandOut, &at)?;
        Ok(handed)
    }
}

/// The page that the entries at the places `done` make of an empty one.
fn fold(log: &[LogEntry], done: &[usize]) -> Result<NotebookState, (usize, EditError)> {
    let mut page = NotebookState::default();
    for place in done {
        if let Some(entry) = log.get(*place) {
            let done = entry.edit.may_reach(&page).and_then(|()| entry.edit.do_to(&mut page, &entry.at));
            done.map_err(|error| (*place, error))?;
        }
    }
    Ok(page)
}

#[cfg(test)]
#[path = "log_test.rs"]
mod tests;
