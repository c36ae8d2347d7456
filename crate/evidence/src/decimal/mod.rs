//! Doubles as decimal numbers, for people and for files: the one rule of rounding and of writing.
//!
//! - `rounding`: correct decimal rounding of doubles, and reading a decimal number back.
//! - `write`: values with their uncertainty, for people (± and short form) and for files.
//!
//! Sources: SI Brochure, 9th ed., 5.4 (writing of quantities); JCGM 100:2008 (GUM), 7.2 (rounding and the four forms of
//! stating a standard uncertainty).

mod nearest;
mod rounding;
mod write;

pub use nearest::nearest;
pub use rounding::{Decimal, Rounded, rounded};
pub use write::{
    as_typed, at_most, exact, fixed, number, p_equation, p_text, plain, plus_minus, short_form, ten_to_the,
};

use serde::{Deserialize, Serialize};

/// The sign between whole and fraction, one for a whole notebook.
#[derive(Serialize, Deserialize, Clone, Copy, PartialEq, Eq, Debug, Default)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum DecimalMark {
    /// `12.5`
    #[default]
    Point,
    /// `12,5`
    Comma,
}

impl DecimalMark {
    /// The sign itself.
    pub const fn char(self) -> char {
        match self {
            Self::Point => '.',
            Self::Comma => ',',
        }
    }

    /// The sign as a byte.
    pub const fn byte(self) -> u8 {
        match self {
            Self::Point => b'.',
            Self::Comma => b',',
        }
    }

    /// The other sign: never read as a decimal mark, nor as a separator of thousands.
    #[must_use]
    pub const fn other(self) -> Self {
        match self {
            Self::Point => Self::Comma,
            Self::Comma => Self::Point,
        }
    }

    /// What it is called in a sentence.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Point => "point",
            Self::Comma => "comma",
        }
    }
}
