//! Files that were handed in, or belong to them: a notebook, a bundle, the key to data sets, what a teacher says of a notebook,
//! or a zip of many of them.
//!
//! Of a bundle only the notebook and the table of its line are unpacked, each held against the bundle's list. Any other zip
//! is looked through for zips and notebooks, whatever else lies beside them: also one with a `notebook.json` among others.

use slope_archive::{ArchiveError, CONTENTS, Entries, Entry, unpack_wanted};
use slope_evidence::message;
use slope_evidence::words::Message;

use crate::feedback::{self, Feedback};
use crate::key::{self, Key};
use crate::refusals::archive;

const NOTEBOOK: &str = "notebook.json";
const LINE: &str = "line.csv";
/// JSON of a bundle that is no notebook.
const NO_NOTEBOOKS: [&str; 2] = [CONTENTS, "csv-metadata.json"];

/// What a file turned out to be.
#[derive(Clone, Debug, PartialEq)]
pub enum HandedIn {
    /// A notebook.
    Notebook {
        /// The text of `notebook.json`.
        text: String,
        /// The table of its line, where one came with it.
        line: Option<String>,
    },
    /// The key to data sets.
    Key(Key),
    /// What a teacher says of a notebook.
    Feedback(Feedback),
    /// Other files, each to be looked at in its turn.
    Several(Vec<Entry>),
}

/// Looks at a file.
///
/// # Errors
/// Why nothing can be read of it, and what to do.
pub fn handed_in(name: &str, bytes: &[u8]) -> Result<HandedIn, Message> {
    if !bytes.starts_with(b"PK") {
        let text = text(name, bytes)?;
        if let Some(key) = key::read(name, &text)? {
            return Ok(HandedIn::Key(key));
        }
        return Ok(match feedback::read(name, &text)? {
            Some(feedback) => HandedIn::Feedback(feedback),
            None => HandedIn::Notebook { text, line: None },
        });
    }
    let entries = unpack_wanted(bytes, is_wanted).map_err(|error| archive(&error))?;
    let is_bundle = entries.iter().all(|entry| [NOTEBOOK, LINE].contains(&entry.name.as_str()));
    match entries.get(NOTEBOOK).filter(|_| is_bundle) {
        Some(notebook) => {
            let line = entries.get(LINE).map(|table| text(LINE, table)).transpose()?;
            Ok(HandedIn::Notebook { text: text(NOTEBOOK, notebook)?, line })
        }
        None => several(entries),
    }
}

fn several(entries: Entries) -> Result<HandedIn, Message> {
    let files: Vec<Entry> = entries.into_vec().into_iter().filter(|entry| entry.name != LINE).collect();
    if files.is_empty() { Err(message!("class-no_notebook")) } else { Ok(HandedIn::Several(files)) }
}

/// Whether a file in a zip, or in a folder, may hold a notebook by its name, or belongs to one at the top.
fn is_wanted(name: &str) -> bool {
    name == LINE || may_hold_notebook(name)
}

/// Whether a file may hold a notebook by its name. What some systems lay beside files is passed over: AppleDouble files
/// (RFC 1740, appendix B), whose names begin with "._".
pub fn may_hold_notebook(path: &str) -> bool {
    let name = path.rsplit('/').next().unwrap_or_default();
    let ends = |end: &str| {
        name.get(name.len().saturating_sub(end.len())..).is_some_and(|last| last.eq_ignore_ascii_case(end))
    };
    !name.starts_with("._") && !NO_NOTEBOOKS.contains(&name) && (ends(".zip") || ends(".json"))
}

fn text(name: &str, bytes: &[u8]) -> Result<String, Message> {
    let not_text = |_| archive(&ArchiveError::NotText { entry: name.to_owned() });
    std::str::from_utf8(bytes).map(str::to_owned).map_err(not_text)
}

#[cfg(test)]
#[path = "handed_in_test.rs"]
mod tests;
