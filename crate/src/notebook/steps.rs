//! The log step by step, as a run is played back. What a closed seal covers is in no step.

use std::mem::{Discriminant, discriminant};

use serde::Serialize;

use super::edit::Edit;
use super::edit_error::EditError;
use super::log::Notebook;
use super::state::{BenchField, RailId, RowId};

/// What followed one another in one row, rail or field.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct LogStep {
    /// How many entries the log had after it.
    pub end: usize,
    /// When it was done (RFC 3339); empty if nobody said.
    pub at: String,
    /// Whether a row was begun.
    pub begins_row: bool,
}

/// Where an edit was made, so far as one step is told from the next by it.
#[derive(PartialEq)]
enum Where {
    Row(RowId),
    Rail(RailId),
    Field(BenchField),
    Elsewhere(Discriminant<Edit>),
}

impl Where {
    /// None for what is a step by itself, whatever it follows on.
    fn of(edit: &Edit) -> Option<Self> {
        Some(match edit {
            Edit::AddRow { row, .. }
            | Edit::SetCell { row, .. }
            | Edit::StrikeRow { row, .. }
            | Edit::SetEvidence { row, .. } => Self::Row(*row),
            Edit::SetRail { rail, .. }
            | Edit::RenameRail { rail, .. }
            | Edit::SetRulerUnit { rail, .. }
            | Edit::SetSense { rail, .. }
            | Edit::SetSplice { rail, .. } => Self::Rail(*rail),
            Edit::SetBench { field, .. } => Self::Field(*field),
            Edit::Undo | Edit::Redo | Edit::OpenSeal | Edit::HandOut => return None,
            _ => Self::Elsewhere(discriminant(edit)),
        })
    }
}

/// The steps of a notebook's log. Under a closed seal the first is the one that closed it: what was before it would tell the
/// result.
pub fn steps(notebook: &Notebook) -> Vec<LogStep> {
    let log = notebook.log();
    let closed = notebook.state().seal.as_ref().is_some_and(|seal| !seal.opened);
    let seal = log.iter().rposition(|entry| closed && matches!(entry.edit, Edit::Seal(_))).unwrap_or(0);
    let mut steps = Vec::new();
    let mut begins_row = false;
    for (place, entry) in log.iter().enumerate() {
        begins_row |= matches!(entry.edit, Edit::AddRow { .. });
        let here = Where::of(&entry.edit);
        if here.is_some() && log.get(place + 1).is_some_and(|next| Where::of(&next.edit) == here) {
            continue;
        }
        if place >= seal {
            steps.push(LogStep { end: place + 1, at: entry.at.clone(), begins_row });
        }
        begins_row = false;
    }
    steps
}

/// The notebook as it was after so many of its [`steps`]; an empty one after none.
///
/// # Errors
/// When its log does not replay that far.
pub fn after_steps(notebook: &Notebook, count: usize) -> Result<Notebook, EditError> {
    let last = steps(notebook).into_iter().take(count).next_back();
    let entries = notebook.log().iter().take(last.map_or(0, |step| step.end));
    Notebook::from_log(entries.cloned().collect()).map_err(|(_, error)| error)
}

#[cfg(test)]
#[path = "steps_test.rs"]
mod tests;
