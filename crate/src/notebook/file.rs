//! The stored form of a notebook: `notebook.json`, format version 2.
//!
//! The file names what it is and its version first, so that a file from a later version can be refused with
//! that reason before anything else of it is read.

#[cfg(not(target_arch = "wasm32"))]
use schemars::JsonSchema;
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};
use thiserror::Error;

use super::edit::EditError;
use super::first_edits;
use super::log::{LogEntry, Notebook};

/// The version written by this program.
pub const FORMAT: u32 = 2;

/// The word by which a notebook file is known.
pub const KIND: &str = "slope-of-light notebook";

/// The content of `notebook.json`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct NotebookFile {
    /// Always "slope-of-light notebook".
    pub kind: String,
    /// Version of the format: 2. Format 1 is read too.
    pub format: u32,
    /// Everything done in the notebook, in order.
    pub log: Vec<LogEntry>,
}

/// The JSON Schema (draft 2020-12) of `notebook.json`, made from the types.
#[cfg(not(target_arch = "wasm32"))]
pub fn schema() -> schemars::Schema {
    schemars::schema_for!(NotebookFile)
}

/// Why a text is not a notebook that can be opened.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum FileError {
    /// Not JSON, or cut short.
    #[error(
        "this is not a whole notebook file: {what} (line {line}, column {column}). Download the file again"
    )]
    NotJson {
        /// What the reader met.
        what: String,
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
    },
    /// JSON, but of something else.
    #[error("this file is not a notebook of this program: it lacks \"kind\": \"{KIND}\"")]
    Foreign,
    /// Written by a later version.
    #[error(
        "this notebook was made by a later version of this page, which knows {what}. Open it with that version; it was left untouched"
    )]
    Later {
        /// What is not known here: "format 9", or a name in quotation marks.
        what: String,
    },
    /// A whole file, in which something has another form than the format gives it.
    #[error("something in this notebook file is not as its format has it: {what}")]
    Form {
        /// What the reader met, and where.
        what: String,
    },
    /// The log does not replay.
    #[error("entry {entry} of the notebook's log can't be applied: {reason}")]
    BadEntry {
        /// Which entry, from 1.
        entry: usize,
        /// Why.
        reason: EditError,
    },
}

/// What every version of the file has at its top.
#[derive(Deserialize)]
struct Head {
    kind: Option<String>,
    format: Option<u64>,
}

/// Reads a notebook from the text of `notebook.json`.
///
/// # Errors
/// See [`FileError`]; nothing is half read.
pub fn read(text: &str) -> Result<Notebook, FileError> {
    // Some editors put a byte order mark first (Unicode 16.0, 23.8).
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let head: Head = serde_json::from_str(text).map_err(|e| refused(&e))?;
    if head.kind.as_deref() != Some(KIND) {
        return Err(FileError::Foreign);
    }
    match head.format {
        Some(found) if found > u64::from(FORMAT) => {
            return Err(FileError::Later { what: format!("format {found}") });
        }
        Some(1..) => {}
        _ => return Err(FileError::Foreign),
    }
    let file = read_any(text, first_edits::file_now, |file: &mut NotebookFile| {
        file.log.iter_mut().for_each(first_edits::in_metres);
    })?;
    Notebook::from_log(file.log).map_err(|(place, reason)| FileError::BadEntry { entry: place + 1, reason })
}

/// Reads one entry of a log, such as a journal keeps.
///
/// # Errors
/// See [`FileError`].
pub fn read_entry(text: &str) -> Result<LogEntry, FileError> {
    read_any(text, first_edits::entry_now, first_edits::in_metres)
}

/// Reads a text as it is; or else, where it is one of the first builds, as `now` and then `settle` make it one of today.
fn read_any<T: DeserializeOwned>(
    text: &str,
    now: fn(&str) -> Option<String>,
    settle: fn(&mut T),
) -> Result<T, FileError> {
    let error = match serde_json::from_str(text) {
        Ok(read) => return Ok(read),
        Err(error) => error,
    };
    let text = if error.is_data() { now(text) } else { None };
    let mut read =
        serde_json::from_str(&text.ok_or_else(|| refused(&error))?).map_err(|error| refused(&error))?;
    settle(&mut read);
    Ok(read)
}

/// The text of `notebook.json`, one log entry a line so that two files can be compared by eye.
pub fn write(notebook: &Notebook) -> String {
    let mut text = format!("{{\"kind\":\"{KIND}\",\"format\":{FORMAT},\"log\":[");
    for (place, entry) in notebook.log().iter().enumerate() {
        text.push_str(if place == 0 { "\n" } else { ",\n" });
        // A log entry holds strings and choices only, which always have a JSON form.
        text.push_str(&serde_json::to_string(entry).unwrap_or_default());
    }
    text.push_str("\n]}\n");
    text
}

fn refused(error: &serde_json::Error) -> FileError {
    let what = error.to_string();
    if !error.is_data() {
        return FileError::NotJson { what, line: error.line(), column: error.column() };
    }
    match unknown_name(&what) {
        Some(name) => FileError::Later { what: format!("“{name}”") },
        None => FileError::Form { what },
    }
}

/// The name that a reader of JSON refuses because it knows none like it. Serde tells in words alone that it was a name.
fn unknown_name(message: &str) -> Option<&str> {
    let named =
        message.strip_prefix("unknown variant `").or_else(|| message.strip_prefix("unknown field `"))?;
    named.split_once('`').map(|(name, _)| name)
}

#[cfg(test)]
#[path = "file_test.rs"]
mod tests;
