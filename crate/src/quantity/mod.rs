//! Numbers as people write and read them: text to value and uncertainty, and back to text.
//!
//! - `unit`: the units that may be typed, and what they are in the crate's base units.
//! - `parse`: one cell of a table, or the repeats in one cell, to `Number`s.
//! - `decimal`: correct decimal rounding of doubles.
//! - `write`: values with their uncertainty, for people (± and short form) and for files.
//!
//! Nothing here scales a double by a power of ten: units and exponents shift the decimal exponent of the
//! text, and the text is rounded to a double once. So `12.5 cm` is the very double that `0.125` is.
//!
//! Sources: SI Brochure, 9th ed., 5.4 (writing of quantities); JCGM 100:2008 (GUM), 7.2 (rounding and the
//! four forms of stating a standard uncertainty).

mod nearest;
mod decimal;
mod unit;
mod error;
mod parse;
mod write;

pub use decimal::{Decimal, Rounded, rounded};
pub use error::NumberError;
pub use parse::{Number, parse, parse_list};
pub use unit::{Dimension, Unit};
pub use write::{exact, fixed, in_unit, plain, plus_minus, plus_minus_ascii, short_form, ten_to_the};

use serde::{Deserialize, Serialize};

/// The sign between whole and fraction, one for a whole notebook.
#[derive(Serialize, Deserialize, Clone, Copy, PartialEq, Eq, Debug, Default)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
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
