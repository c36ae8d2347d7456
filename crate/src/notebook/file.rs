//! The stored form of a notebook: `notebook.json`, format version 2.
//!
//! The file names what it is and its version first, so that a file from a later version can be refused with
//! that reason before anything else of it is read.

#[cfg(not(target_arch = "wasm32"))]
use schemars::JsonSchema;
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};
use slope_evidence::border::{from_json, to_json};

use super::edit_error::EditError;
use super::first_edits;
use super::log::{LogEntry, Notebook};
use crate::words::Message;
use crate::{errors_as_data, message};

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
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FileError {
    /// Not JSON, or cut short.
    NotJson {
        /// What the reader met.
        what: String,
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
    },
    /// JSON, but of something else.
    Foreign,
    /// Written by a later version, in a later format.
    LaterFormat {
        /// The format.
        format: u64,
    },
    /// Written by a later version, which knows a name that is not known here.
    LaterName {
        /// The name.
        name: String,
    },
    /// A whole file, in which something has another form than the format gives it.
    Form {
        /// What the reader met, and where.
        what: String,
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
    },
    /// The log does not replay.
    BadEntry {
        /// Which entry, from 1.
        entry: usize,
        /// Why.
        reason: EditError,
    },
}

errors_as_data!(FileError);

impl FileError {
    /// Why, and what to do.
    pub fn message(&self) -> Message {
        let number = |number: usize| number.to_string();
        match self {
            Self::NotJson { line, column, .. } => {
                message!("file-not_json", line = number(*line), column = number(*column))
            }
            Self::Foreign => message!("file-foreign"),
            Self::LaterFormat { format } => message!("file-later_format", format = format.to_string()),
            Self::LaterName { name } => message!("file-later_name", name = name.as_str()),
            Self::Form { line, column, .. } => {
                message!("file-form", line = number(*line), column = number(*column))
            }
            Self::BadEntry { entry, reason } => {
                message!("file-bad_entry", n = number(*entry), why = reason.message())
            }
        }
    }

    /// Whether a later version of the page made it.
    pub fn is_later(&self) -> bool {
        matches!(self, Self::LaterFormat { .. } | Self::LaterName { .. })
    }
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
    let head: Head = from_json(text).map_err(|e| refused(&e))?;
    if head.kind.as_deref() != Some(KIND) {
        return Err(FileError::Foreign);
    }
    match head.format {
        Some(format) if format > u64::from(FORMAT) => return Err(FileError::LaterFormat { format }),
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
    let error = match from_json(text) {
        Ok(read) => return Ok(read),
        Err(error) => error,
    };
    let text = if error.is_data() { now(text) } else { None };
    let mut read = from_json(&text.ok_or_else(|| refused(&error))?).map_err(|error| refused(&error))?;
    settle(&mut read);
    Ok(read)
}

/// The text of `notebook.json`, one log entry a line so that two files can be compared by eye.
pub fn write(notebook: &Notebook) -> String {
    let mut text = format!("{{\"kind\":\"{KIND}\",\"format\":{FORMAT},\"log\":[");
    for (place, entry) in notebook.log().iter().enumerate() {
        text.push_str(if place == 0 { "\n" } else { ",\n" });
        text.push_str(&to_json(entry));
    }
    text.push_str("\n]}\n");
    text
}

fn refused(error: &serde_json::Error) -> FileError {
    let (what, line, column) = (error.to_string(), error.line(), error.column());
    if !error.is_data() {
        return FileError::NotJson { what, line, column };
    }
    match unknown_name(&what) {
        Some(name) => FileError::LaterName { name: name.to_owned() },
        None => FileError::Form { what, line, column },
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
