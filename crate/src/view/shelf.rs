//! The list of the notebooks that a browser keeps.

use serde::{Deserialize, Serialize};

/// A notebook on the shelf.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct StoredNotebook {
    /// Names it among the notebooks of a browser.
    pub id: String,
    /// Its title as typed.
    pub title: String,
    /// When it was last changed (RFC 3339).
    pub changed: String,
    /// Deleted, but not for good yet.
    pub binned: bool,
}
