//! What the log keeps of a partner's notebook that was merged.

#[cfg(not(target_arch = "wasm32"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A log that was merged: which it was, and which number here is whose there.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct MergedLog {
    /// The count of its entries.
    pub entries: u32,
    /// The chained SHA-256 of the last of them, in hexadecimal digits.
    pub digest: String,
    /// That of the first entry that it does not share with this one: by it the log is known again, however it goes on.
    pub own: String,
    /// Who measured, as it says.
    pub people: String,
    /// What came from it: the number of each there, and here.
    pub numbers: Vec<(u32, u32)>,
    /// Of each of its entries from `own` on the highest number given up to it, and the first 32 bits of its digest: by them
    /// another log is known that left it on the way. The first builds kept none.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(not(target_arch = "wasm32"), ts(optional, as = "Option<_>"))]
    pub trail: Vec<(u32, u32)>,
}
