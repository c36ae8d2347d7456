//! Which uncertainty a person claims.

#[cfg(not(target_arch = "wasm32"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Which uncertainty is claimed, and why.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Claim {
    /// From what the uncertainty comes.
    pub basis: Basis,
    /// The reason given for that choice.
    pub reason: String,
}

/// From what an uncertainty comes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Basis {
    /// From what was stated for rails, screen and rows.
    #[default]
    Stated,
    /// From the scatter of the points about the line.
    Scatter,
}
