//! `contents.json`: the list of a bundle's entries, each with its size in bytes and its SHA-256 (FIPS 180-4).
//!
//! It finds what was damaged or changed by accident. It is no seal: who changes an entry can change the list.

use std::fmt::Write as _;

use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use slope_evidence::border::{from_json, to_json_lines};

use super::entry::Entry;
use super::error::ArchiveError;

/// The name of the list inside a bundle.
pub const CONTENTS: &str = "contents.json";

/// The version of the bundle's layout written by this program.
pub const FORMAT: u32 = 1;

/// The word by which a bundle is known.
const KIND: &str = "slope-of-light bundle";

/// The list.
#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Contents {
    kind: String,
    format: u32,
    entries: Vec<Listed>,
}

/// What every version of the list has at its top.
#[derive(Deserialize)]
struct ListHead {
    kind: Option<String>,
    format: Option<u64>,
}

/// One entry in the list.
#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Listed {
    name: String,
    bytes: usize,
    sha256: String,
}

/// The list of `entries` as the entry that holds it.
pub fn list(entries: &[Entry]) -> Entry {
    list_of(entries.iter().map(Listed::of).collect())
}

/// The same, of what was noted of each.
pub fn list_of(entries: Vec<Listed>) -> Entry {
    let contents = Contents { kind: KIND.into(), format: FORMAT, entries };
    let text = to_json_lines(&contents) + "\n";
    Entry { name: CONTENTS.into(), bytes: text.into_bytes() }
}

/// Checks `entries` against the list among them, and gives them back without it, in the order of the list.
pub fn check(mut entries: Vec<Entry>) -> Result<Vec<Entry>, ArchiveError> {
    let contents = take(&mut entries, CONTENTS)
        .ok_or_else(|| ArchiveError::NoContents { what: "there is none".into() })
        .and_then(|entry| read(&entry.bytes))?;
    let mut checked = Vec::with_capacity(entries.len());
    for listed in contents.entries {
        let entry = take(&mut entries, &listed.name)
            .ok_or_else(|| ArchiveError::Missing { entry: listed.name.clone() })?;
        checked.push(listed.checked(entry)?);
    }
    all_listed(entries)?;
    Ok(checked)
}

/// Checks some of a zip's entries against the list, where that is among them; gives them back without it.
pub fn check_some(mut entries: Vec<Entry>) -> Result<Vec<Entry>, ArchiveError> {
    let Some(list) = take(&mut entries, CONTENTS) else { return Ok(entries) };
    let mut checked = Vec::with_capacity(entries.len());
    for listed in read(&list.bytes)?.entries {
        if let Some(entry) = take(&mut entries, &listed.name) {
            checked.push(listed.checked(entry)?);
        }
    }
    all_listed(entries)?;
    Ok(checked)
}

/// What is left of the entries once those listed are taken is listed nowhere.
fn all_listed(rest: Vec<Entry>) -> Result<(), ArchiveError> {
    match rest.into_iter().next() {
        Some(unlisted) => Err(ArchiveError::Unlisted { entry: unlisted.name }),
        None => Ok(()),
    }
}

impl Listed {
    /// What is noted of an entry.
    pub fn of(entry: &Entry) -> Self {
        Self { name: entry.name.clone(), bytes: entry.bytes.len(), sha256: sha256_hex(&entry.bytes) }
    }

    /// The entry of this name, if it is what is listed.
    fn checked(&self, entry: Entry) -> Result<Entry, ArchiveError> {
        let changed = |what| ArchiveError::Changed { entry: self.name.clone(), what };
        if entry.bytes.len() != self.bytes {
            return Err(changed("size"));
        }
        if sha256_hex(&entry.bytes) != self.sha256 {
            return Err(changed("SHA-256"));
        }
        if !named_truly(&entry.name, &self.sha256) {
            return Err(ArchiveError::Misnamed { entry: entry.name });
        }
        Ok(entry)
    }
}

/// Whether a file whose name says its SHA-256 is that file.
fn named_truly(name: &str, sha256: &str) -> bool {
    let file = name.rsplit('/').next().unwrap_or_default();
    let stem = file.split('.').next().unwrap_or_default();
    let is_hash = stem.len() == 64 && stem.bytes().all(|byte| byte.is_ascii_hexdigit());
    !is_hash || stem.eq_ignore_ascii_case(sha256)
}

fn read(bytes: &[u8]) -> Result<Contents, ArchiveError> {
    let unreadable = |e: serde_json::Error| ArchiveError::NoContents { what: e.to_string() };
    let foreign = || ArchiveError::NoContents { what: format!("it lacks \"kind\": \"{KIND}\"") };
    let text = std::str::from_utf8(bytes).map_err(|e| ArchiveError::NoContents { what: e.to_string() })?;
    let head: ListHead = from_json(text).map_err(unreadable)?;
    if head.kind.as_deref() != Some(KIND) {
        return Err(foreign());
    }
    match head.format {
        Some(found) if found > u64::from(FORMAT) => Err(ArchiveError::Later { found, known: FORMAT }),
        Some(found) if found == u64::from(FORMAT) => from_json(text).map_err(unreadable),
        _ => Err(foreign()),
    }
}

fn take(entries: &mut Vec<Entry>, name: &str) -> Option<Entry> {
    entries.iter().position(|entry| entry.name == name).map(|place| entries.remove(place))
}

/// SHA-256 of `bytes` (FIPS 180-4).
pub fn sha256(bytes: &[u8]) -> [u8; 32] {
    Sha256::digest(bytes).into()
}

/// The same in lower-case hexadecimal.
pub fn sha256_hex(bytes: &[u8]) -> String {
    sha256(bytes).iter().fold(String::with_capacity(64), |mut text, byte| {
        // Writing to a string can't fail.
        let _ = write!(text, "{byte:02x}");
        text
    })
}

#[cfg(test)]
#[path = "contents_test.rs"]
mod tests;
