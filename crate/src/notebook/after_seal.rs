//! What was changed after a seal was opened.

use super::Notebook;
use super::edit::Edit;
use super::state::BenchField;

/// How many entries that a result may hang on follow the opening of a seal; none where no seal was opened.
pub fn changes_after_seal(notebook: &Notebook) -> Option<usize> {
    let log = notebook.log();
    let opened = log.iter().position(|entry| matches!(entry.edit, Edit::OpenSeal))?;
    Some(log.iter().skip(opened).filter(|entry| moves_result(&entry.edit)).count())
}

/// Whether an edit may move the result. Taking back and doing again may.
fn moves_result(edit: &Edit) -> bool {
    match edit {
        Edit::Together(edits) => edits.iter().any(moves_result),
        Edit::SetBench { field, .. } => {
            use BenchField::{Aim, Cables, Date, Discussion, EdgeFraction, EdgeReason, FixedArm, Group};
            use BenchField::{Instruments, LeastRows, LocalContact, LocalRules, Method, People, Place};
            use BenchField::{StudentNumber, Trigger};
            !matches!(
                field,
                People
                    | Place
                    | StudentNumber
                    | Group
                    | Date
                    | LeastRows
                    | LocalRules
                    | LocalContact
                    | EdgeReason
                    | Instruments
                    | Cables
                    | FixedArm
                    | Trigger
                    | EdgeFraction
                    | Aim
                    | Method
                    | Discussion
            )
        }
        Edit::SetTitle(_)
        | Edit::SetDecimalMark(_)
        | Edit::ReadCautions(_)
        | Edit::Copied(_)
        | Edit::Merged(_)
        | Edit::Answer(..)
        | Edit::SetPosition(_)
        | Edit::RemovePosition(_)
        | Edit::SetPhoto(_)
        | Edit::SetNote(_)
        | Edit::RemoveNote(_)
        | Edit::SetTrials(_)
        | Edit::Seal(_)
        | Edit::OpenSeal => false,
        _ => true,
    }
}

#[cfg(test)]
#[path = "after_seal_test.rs"]
mod tests;
