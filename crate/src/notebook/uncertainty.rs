//! As what the number in a field of an uncertainty is meant: as a limit, or as a standard uncertainty.
//!
//! It is stored beside the text, never in it, and only where it was chosen: a field whose kind nobody chose is meant as
//! it was before there was a choice ([`UncertaintyOf::usual`]), so that a notebook of that time keeps its digits. In a
//! cell of the readings, which has no room for a choice, a limit is written as one ([`UncertaintyKind::written`]).

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
    /// Of an error of the user's own, by its number.
    Shared(u32),
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
    /// The kind of what stands in a cell, and the number in it: `±0.5` is a limit, `0.5` a standard uncertainty.
    pub fn written(text: &str) -> (Self, &str) {
        let text = text.trim();
        let limit = ["±", "+/-", "+-"].iter().find_map(|sign| text.strip_prefix(sign));
        // A sign alone is no limit yet, and is refused as any other text.
        limit
            .filter(|number| !number.trim().is_empty())
            .map_or((Self::Standard, text), |number| (Self::Limit, number))
    }

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

/// How an error is distributed (JCGM 101:2008, table 1).
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum ErrorShape {
    /// Normal.
    #[default]
    Normal,
    /// Rectangular.
    Rectangular,
    /// Triangular.
    Triangular,
    /// Arcsine (U-shaped).
    Arcsine,
    /// Student's t with the degrees of freedom stated.
    Student,
}

impl ErrorShape {
    /// The shape of an error that was stated as `kind`: what is normal or Student's t has no limits, so that a limit of
    /// such an error is that of a rectangular one (JCGM 100:2008, 4.3.7).
    #[must_use]
    pub fn stated_as(self, kind: UncertaintyKind) -> Self {
        match (kind, self) {
            (UncertaintyKind::Limit, Self::Normal | Self::Student) => Self::Rectangular,
            _ => self,
        }
    }

    /// What stands under the root where a limit a becomes a standard uncertainty, u = a/√3, a/√6 or a/√2 (JCGM 101:2008,
    /// table 1).
    pub fn under_root(self) -> u8 {
        match self {
            Self::Triangular => 6,
            Self::Arcsine => 2,
            Self::Normal | Self::Rectangular | Self::Student => 3,
        }
    }
}

impl From<UncertaintyKind> for ErrorShape {
    /// How an error is distributed of which a limit or a standard uncertainty is known.
    fn from(kind: UncertaintyKind) -> Self {
        match kind {
            UncertaintyKind::Limit => Self::Rectangular,
            UncertaintyKind::Standard => Self::Normal,
        }
    }
}

#[cfg(test)]
#[path = "uncertainty_test.rs"]
mod tests;
