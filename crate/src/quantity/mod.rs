//! Numbers as people write and read them: text to value and uncertainty, and back to text.
//!
//! - `unit`: the units that may be typed, and what they are in the crate's base units.
//! - `parse`: one cell of a table, or the repeats in one cell, to `Number`s.
//! - [`slope_evidence::decimal`]: correct decimal rounding of doubles, and numbers written for people and for files.
//!
//! Nothing here scales a double by a power of ten: units and exponents shift the decimal exponent of the
//! text, and the text is rounded to a double once. So `12.5 cm` is the very double that `0.125` is.
//!
//! Sources: SI Brochure, 9th ed., 5.4 (writing of quantities); JCGM 100:2008 (GUM), 7.2 (rounding and the
//! four forms of stating a standard uncertainty).

mod unit;
mod error;
mod parse;

pub use error::NumberError;
pub use parse::{Number, parse, parse_alone, parse_list};
pub use slope_evidence::decimal::{
    Decimal, DecimalMark, Rounded, at_most, exact, fixed, p_equation, p_text, plain, plus_minus, rounded,
    short_form, ten_to_the,
};
pub use unit::{Dimension, Unit, in_unit};
