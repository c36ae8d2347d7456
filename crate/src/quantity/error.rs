//! What can be wrong with a typed number. Each message says what was found, what was expected, and what to do.

use serde::Serialize;

use super::{DecimalMark, Dimension, Unit};

/// Why a text was not taken as a number. Nothing is ever guessed: a doubtful text is an error.
#[derive(thiserror::Error, Clone, PartialEq, Eq, Debug, Serialize)]
#[serde(rename_all = "snake_case", tag = "kind")]
pub enum NumberError {
    /// Nothing but space.
    #[error("Nothing is written here: type a number.")]
    Empty,
    /// A list with nothing between two separators; the first item has position 1.
    #[error("Repeat {position} is empty: type a number there, or take away the spare semicolon.")]
    EmptyRepeat {
        /// Position of the item, counted from 1.
        position: usize,
    },
    /// Words, or a number that is none (`nan`, `inf`, `∞`).
    #[error("“{found}” is not a number: type digits, for example {example}.")]
    NotANumber {
        /// The part that is no number.
        found: String,
        /// A number in the notebook's own style.
        example: String,
    },
    /// `1,234` where decimals have a point, or `1.234` where they have a comma.
    #[error(
        "“{found}” has a {}, but this notebook writes decimals with a {}: use that, and a space between \
         thousands.",
        expected.other().name(),
        expected.name()
    )]
    OtherMark {
        /// The digits with the mark.
        found: String,
        /// The notebook's mark.
        expected: DecimalMark,
    },
    /// `1.2.3`
    #[error("“{found}” has more than one decimal mark: keep one.")]
    SeveralMarks {
        /// The digits with the marks.
        found: String,
    },
    /// Spaces among the digits that do not make groups of three.
    #[error(
        "“{found}” has spaces that do not part groups of three digits: close them up, or use ; between repeats."
    )]
    Grouping {
        /// The digits with the spaces.
        found: String,
    },
    /// An exponent without its digits.
    #[error("“{found}” has an unfinished power of ten: write it as e8 or × 10^8.")]
    Exponent {
        /// The exponent as found.
        found: String,
    },
    /// `2.987 ± 0.021 × 10⁸`: does the power belong to both?
    #[error(
        "In “{found}” the power of ten may belong to both numbers or only to the second: put brackets round \
         the two, or write the power on each."
    )]
    SharedExponent {
        /// The whole text.
        found: String,
    },
    /// An uncertainty below zero.
    #[error("“{found}” is an uncertainty below zero: write it without a sign.")]
    NegativeUncertainty {
        /// The uncertainty as found.
        found: String,
    },
    /// Letters after the number that are no unit.
    #[error("“{found}” is not a unit known here: use {expected}, once, after the number.")]
    UnknownUnit {
        /// The letters.
        found: String,
        /// The units that would do.
        expected: String,
    },
    /// A unit of another kind of quantity.
    #[error("“{found}” is a unit of {}, but this is a {}: use {units}.", dimension.name(), expected.name())]
    WrongDimension {
        /// The unit's symbol as typed.
        found: String,
        /// What that unit measures.
        dimension: Dimension,
        /// What is asked for.
        expected: Dimension,
        /// The units that would do.
        units: String,
    },
    /// Something after the number, or in its middle.
    #[error("“{found}” was not expected after the number: write one number, as 12 or 12 ± 3 or 12(3).")]
    Unexpected {
        /// The rest of the text from the place where reading stopped.
        found: String,
    },
    /// Beyond the largest double, about 1.8 × 10³⁰⁸.
    #[error("“{found}” is too large to compute with: check the power of ten.")]
    TooLarge {
        /// The whole text.
        found: String,
    },
    /// Not zero, but nearer to zero than any double.
    #[error("“{found}” is too small to compute with: check the power of ten.")]
    TooSmall {
        /// The whole text.
        found: String,
    },
    /// Far more characters than a number needs.
    #[error("This entry has {length} characters, more than the {limit} that a number may have: shorten it.")]
    TooLong {
        /// Characters found.
        length: usize,
        /// Characters allowed.
        limit: usize,
    },
    /// Some repeats in one cell with a unit, some without.
    #[error("Some repeats carry a unit and some do not: write the unit on each of them, or on none.")]
    MixedUnits,
}

impl NumberError {
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

/// The symbols of a dimension's units: `m, cm, mm or in`.
fn offered(dimension: Dimension) -> String {
    let symbols: Vec<&str> =
        dimension.units().map(Unit::symbol).filter(|symbol| !symbol.is_empty()).collect();
    match symbols.split_last() {
        Some((last, [])) => (*last).to_owned(),
        Some((last, rest)) => format!("{} or {last}", rest.join(", ")),
        None => String::new(),
    }
}
