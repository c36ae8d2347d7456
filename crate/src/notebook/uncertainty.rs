//! As what the number in a field of an uncertainty is meant: as a limit, or as a standard uncertainty.
//!
//! It is stored beside the text, never in it, and only where it was chosen: a field whose kind nobody chose is meant as
//! it was before there was a choice ([`UncertaintyOf::usual`]), so that a notebook of that time keeps its digits.

#[cfg(not(target_arch = "wasm32"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A field that holds an uncertainty and leaves its kind to choose.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum UncertaintyOf {
    /// Of an edge read on the screen.
    Edge,
    /// Of the time base.
    TimeBase,
    /// Of a mark on a picture.
    Mark,
    /// Of the time base at one setting, by its number.
    Setting(u32),
    /// Of a reading of the ruler of a rail, by its number.
    RulerReading(u32),
    /// Of the scale of the ruler of a rail, by its number.
    RulerScale(u32),
    /// Of the place of a rail, by its number.
    Splice(u32),
}

/// As what an uncertainty is typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum UncertaintyKind {
    /// The limit a of ±a, within which every value is as likely as any other.
    Limit,
    /// The standard uncertainty u.
    Standard,
}

impl UncertaintyOf {
    /// The kind where none was chosen.
    pub fn usual(self) -> UncertaintyKind {
        match self {
            Self::Edge => UncertaintyKind::Limit,
            _ => UncertaintyKind::Standard,
        }
    }
}

impl UncertaintyKind {
    /// The standard uncertainty, where `typed` is of this kind: u = a/√3 (JCGM 100:2008, 4.3.7).
    pub fn standard(self, typed: f64) -> f64 {
        match self {
            Self::Limit => typed / 3.0_f64.sqrt(),
            Self::Standard => typed,
        }
    }

    /// The limit, where `typed` is of this kind: a = u·√3.
    pub fn limit(self, typed: f64) -> f64 {
        match self {
            Self::Limit => typed,
            Self::Standard => typed * 3.0_f64.sqrt(),
        }
    }
}

#[cfg(test)]
#[path = "uncertainty_test.rs"]
mod tests;
