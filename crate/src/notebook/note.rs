//! Free notes between the rows: what happened at the bench, and when.

#[cfg(not(target_arch = "wasm32"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Names a note for the life of the notebook.
pub type NoteId = u32;

/// A note.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Note {
    /// Names it for the life of the notebook.
    pub id: NoteId,
    /// The row behind which it stands, by its number; before all rows if absent.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub after: Option<u32>,
    /// What was typed.
    pub text: String,
    /// When it was written (RFC 3339). Empty in an edit that writes it: it is then of the time of its entry in the log.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub at: String,
}

impl Note {
    /// The same, of the time `at` where it has none of its own.
    #[must_use]
    pub(super) fn dated(&self, at: &str) -> Self {
        let mut note = self.clone();
        if note.at.is_empty() {
            at.clone_into(&mut note.at);
        }
        note
    }
}

#[cfg(test)]
#[path = "note_test.rs"]
mod tests;
