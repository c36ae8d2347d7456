//! Files that are kept beside the notebook, by their SHA-256.

#[cfg(not(target_arch = "wasm32"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A file kept beside the notebook.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct StoredFile {
    /// SHA-256 of its bytes, 64 hexadecimal digits.
    pub sha256: String,
    /// What it was called.
    pub name: String,
    /// Its length, bytes.
    pub bytes: u32,
}

/// The hash of every file that a text names: all runs of just 64 hexadecimal digits. The text of a notebook, or of
/// entries of its log, names the files that it refers to, and those to which an undo leads back.
pub fn hashes_in(text: &str) -> impl Iterator<Item = &str> {
    text.split(|letter: char| !letter.is_ascii_hexdigit()).filter(|run| run.len() == 64)
}
