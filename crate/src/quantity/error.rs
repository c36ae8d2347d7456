//! What can be wrong with a typed number. Each message says what was found, what was expected, and what to do.

use serde::Serialize;

use super::{DecimalMark, Dimension, Unit};
use crate::message;
use crate::words::Message;

/// Why a text was not taken as a number. Nothing is ever guessed: a doubtful text is an error.
#[derive(Clone, PartialEq, Eq, Debug, Serialize)]
#[serde(rename_all = "snake_case", tag = "kind")]
pub enum NumberError {
    /// Nothing but space.
    Empty,
    /// A list with nothing between two separators; the first item has position 1.
    EmptyRepeat {
        /// Position of the item, counted from 1.
        position: usize,
    },
    /// Words, or a number that is none (`nan`, `inf`, `∞`).
    NotANumber {
        /// The part that is no number.
        found: String,
        /// A number in the notebook's own style.
        example: String,
    },
    /// `1,234` where decimals have a point, or `1.234` where they have a comma.
    OtherMark {
        /// The digits with the mark.
        found: String,
        /// The notebook's mark.
        expected: DecimalMark,
    },
    /// `1.2.3`
    SeveralMarks {
        /// The digits with the marks.
        found: String,
    },
    /// Spaces among the digits that do not make groups of three.
    Grouping {
        /// The digits with the spaces.
        found: String,
    },
    /// An exponent without its digits.
    Exponent {
        /// The exponent as found.
        found: String,
    },
    /// `2.987 ± 0.021 × 10⁸`: does the power belong to both?
    SharedExponent {
        /// The whole text.
        found: String,
    },
    /// An uncertainty below zero.
    NegativeUncertainty {
        /// The uncertainty as found.
        found: String,
    },
    /// Letters after the number that are no unit.
    UnknownUnit {
        /// The letters.
        found: String,
        /// The units that would do.
        expected: Vec<&'static str>,
    },
    /// A unit of another kind of quantity.
    WrongDimension {
        /// The unit's symbol as typed.
        found: String,
        /// What that unit measures.
        dimension: Dimension,
        /// What is asked for.
        expected: Dimension,
        /// The units that would do.
        units: Vec<&'static str>,
    },
    /// Something after the number, or in its middle.
    Unexpected {
        /// The rest of the text from the place where reading stopped.
        found: String,
    },
    /// Beyond the largest double, about 1.8 × 10³⁰⁸.
    TooLarge {
        /// The whole text.
        found: String,
    },
    /// Not zero, but nearer to zero than any double.
    TooSmall {
        /// The whole text.
        found: String,
    },
    /// Far more characters than a number needs.
    TooLong {
        /// Characters found.
        length: usize,
        /// Characters allowed.
        limit: usize,
    },
    /// Some repeats in one cell with a unit, some without.
    MixedUnits,
    /// `5 ± 2` or `3.990(9)` where a number stands alone: the uncertainty would have no effect.
    Uncertain {
        /// The whole text.
        found: String,
    },
}

impl NumberError {
    /// What was found, what was expected, and what to do.
    pub fn message(&self) -> Message {
        match self {
            Self::Empty => message!("number-empty"),
            Self::EmptyRepeat { position } => message!("number-empty_repeat", position = *position),
            Self::NotANumber { found, example } => {
                message!("number-none", found = found.as_str(), example = example.as_str())
            }
            Self::OtherMark { found, expected: DecimalMark::Point } => {
                message!("number-comma", found = found.as_str())
            }
            Self::OtherMark { found, expected: DecimalMark::Comma } => {
                message!("number-point", found = found.as_str())
            }
            Self::SeveralMarks { found } => message!("number-several_marks", found = found.as_str()),
            Self::Grouping { found } => message!("number-grouping", found = found.as_str()),
            Self::Exponent { found } => message!("number-exponent", found = found.as_str()),
            Self::SharedExponent { found } => message!("number-shared_exponent", found = found.as_str()),
            Self::NegativeUncertainty { found } => {
                message!("number-negative_uncertainty", found = found.as_str())
            }
            Self::UnknownUnit { found, expected } => {
                message!("number-unknown_unit", found = found.as_str(), units = expected.clone())
            }
            Self::WrongDimension { found, dimension, expected, units } => message!(
                "number-wrong_unit",
                found = found.as_str(),
                dimension = dimension.message(),
                expected = expected.message(),
                units = units.clone()
            ),
            Self::Unexpected { found } => message!("number-unexpected", found = found.as_str()),
            Self::TooLarge { found } => message!("number-too_large", found = found.as_str()),
            Self::TooSmall { found } => message!("number-too_small", found = found.as_str()),
            Self::TooLong { length, limit } => message!("number-too_long", length = *length, limit = *limit),
            Self::MixedUnits => message!("number-mixed_units"),
            Self::Uncertain { found } => message!("number-uncertain", found = found.as_str()),
        }
    }

    pub(super) fn not_a_number(found: &str, mark: DecimalMark) -> Self {
        Self::NotANumber { found: quoted(found), example: format!("12{}5", mark.char()) }
    }

    pub(super) fn unit(found: &str, expected: Dimension) -> Self {
        let units = offered(expected);
        match Unit::spelled_anywhere(found) {
            Some(unit) => {
                Self::WrongDimension { found: quoted(found), dimension: unit.dimension(), expected, units }
            }
            None => Self::UnknownUnit { found: quoted(found), expected: units },
        }
    }
}

/// The found part as shown in a message: its first forty characters.
pub(super) fn quoted(found: &str) -> String {
    const SHOWN: usize = 40;
    let found = found.trim();
    match found.char_indices().nth(SHOWN) {
        Some((end, _)) => format!("{}…", found.get(..end).unwrap_or(found)),
        None => found.to_owned(),
    }
}

/// The symbols of a dimension's units.
fn offered(dimension: Dimension) -> Vec<&'static str> {
    dimension.units().map(Unit::symbol).filter(|symbol| !symbol.is_empty()).collect()
}
