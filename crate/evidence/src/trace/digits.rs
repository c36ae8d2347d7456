//! A number as a message tells it.

use crate::decimal::{Decimal, DecimalMark, at_most, exact, number};
#[cfg(not(target_arch = "wasm32"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A number rounded to the digits that a message tells of it, as a text with a decimal point: so it is also stored, and
/// what is read back is told in the same words.
#[derive(Clone, PartialEq, Eq, Debug, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(transparent)]
pub struct Digits(String);

impl Digits {
    /// `value` to at most so many significant digits.
    pub fn of(value: f64, significant: usize) -> Self {
        let rounded = Decimal::significant(value, significant);
        Self(rounded.map_or_else(|| at_most(value, significant, DecimalMark::Point), |it| exact(it.to_f64())))
    }

    /// The number that a text spells with a decimal point; none where it spells none.
    pub fn spelled(text: &str) -> Option<Self> {
        Decimal::read(text).map(|_| Self(text.to_owned()))
    }

    /// What was stored, as it stands.
    pub fn stored(text: &str) -> Self {
        Self(text.to_owned())
    }

    /// As it is written for people; what spells no number as it stands.
    pub fn written(&self, mark: DecimalMark) -> String {
        Decimal::read(&self.0).map_or_else(|| self.0.clone(), |decimal| number(&decimal, mark))
    }
}
