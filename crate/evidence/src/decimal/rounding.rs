//! Decimal rounding of doubles, on the decimal expansion itself.
//!
//! A double is a binary fraction, so its decimal expansion ends; rounding looks at all of it. Ties go to the
//! even digit, and a tie is one only if the double lies exactly half way: 0.125 to two decimals is 0.12,
//! while 0.15 to one is 0.1, because the double is a little below 0.15. No double is ever scaled by a power
//! of ten on the way.
//!
//! Sources: JCGM 100:2008 (GUM), 7.2.2 and 7.2.6: the uncertainty has two significant digits at most (two
//! here, common practice), and the value is rounded to the same place.

use core::fmt::Write as _;

use super::DecimalMark;
use super::nearest::nearest;

/// Places beyond these hold no digit of any double.
const PLACES: core::ops::RangeInclusive<i32> = -1100..=400;

/// A decimal number: digits × 10^place, with its sign.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Decimal {
    negative: bool,
    /// ASCII digits, at least one; no leading zero unless the number is zero.
    digits: String,
    /// Power of ten of the last digit.
    place: i32,
}

/// A value and its standard uncertainty, both rounded to one place.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Rounded {
    /// The value, its last digit at `place`.
    pub value: Decimal,
    /// The uncertainty: two significant digits, the last at `place`.
    pub uncertainty: Decimal,
    /// Power of ten of the last digit of both.
    pub place: i32,
}

/// The uncertainty `u` to two significant digits, and `value` to the same place (GUM 7.2.2, 7.2.6).
///
/// Nothing when either is not finite, or when `u` is not above zero: then no place follows from `u`.
pub fn rounded(value: f64, u: f64) -> Option<Rounded> {
    if u <= 0.0 {
        return None;
    }
    let uncertainty = Decimal::significant(u, 2)?;
    let place = uncertainty.place;
    Some(Rounded { value: Decimal::at_place(value, place)?, uncertainty, place })
}

impl Decimal {
    /// The fewest digits that read back to the same double. Nothing when `value` is not finite.
    pub fn shortest(value: f64) -> Option<Self> {
        value.is_finite().then(|| Self::from_scientific(&format!("{value:e}")))
    }

    /// `value` to so many significant digits (at least 1). Nothing when `value` is not finite.
    pub fn significant(value: f64, digits: usize) -> Option<Self> {
        value.is_finite().then(|| Self::from_scientific(&format!("{value:.*e}", digits.clamp(1, 800) - 1)))
    }

    /// The least number of so many significant digits (at least 1) that is not below `value`, which is nought or more.
    /// Nothing when `value` is not finite.
    pub fn significant_up(value: f64, digits: usize) -> Option<Self> {
        let nearest = Self::significant(value, digits)?;
        Some(if nearest.to_f64() < value { nearest.one_unit_more() } else { nearest })
    }

    /// One unit of the last digit farther from nought.
    fn one_unit_more(mut self) -> Self {
        let nines = self.digits.len() - self.digits.trim_end_matches('9').len();
        self.digits.truncate(self.digits.len() - nines);
        let last = self.digits.pop().and_then(|last| last.to_digit(10)).unwrap_or(0);
        self.digits.extend(char::from_digit(last + 1, 10));
        self.digits.extend((0..nines).map(|_| '0'));
        self
    }

    /// `value` to the last digit at 10^`place`. Nothing when `value` is not finite.
    pub fn at_place(value: f64, place: i32) -> Option<Self> {
        let place = place.clamp(*PLACES.start(), *PLACES.end());
        let leading = Self::shortest(value)?.leading();
        if value == 0.0 {
            return Some(Self { negative: false, digits: "0".to_owned(), place });
        }
        let Ok(after_first) = usize::try_from(leading - place) else {
            return Some(Self::below_place(value, place));
        };
        let mut decimal = Self::from_scientific(&format!("{value:.after_first$e}"));
        if decimal.place < place {
            // The shortest digits were those of the next power of ten, but the full expansion lies below it.
            decimal = Self::from_scientific(&format!("{value:.*e}", after_first.saturating_sub(1)));
        }
        if decimal.place > place {
            // Rounding carried into a new leading digit.
            decimal.digits.push('0');
            decimal.place = place;
        }
        Some(decimal)
    }

    /// `value` to a place above its leading digit: nought, or one unit of that place when above half of it.
    fn below_place(value: f64, place: i32) -> Self {
        // 766 digits after the first hold the whole expansion of any double.
        let whole = Self::from_scientific(&format!("{value:.766e}"));
        let digits = whole.digits.trim_end_matches('0');
        let more_than_half = whole.leading() == place - 1 && digits > "5";
        let digit = if more_than_half { "1" } else { "0" };
        Self { negative: more_than_half && value < 0.0, digits: digit.to_owned(), place }
    }

    /// Reads a number with a decimal point as files hold it, such as `-0.0125` or `1.25e-2`; its digits as they stand, but
    /// for noughts before them.
    pub fn read(text: &str) -> Option<Self> {
        let (negative, size) = text.strip_prefix('-').map_or((false, text), |size| (true, size));
        let (mantissa, exponent) = size.split_once('e').unwrap_or((size, "0"));
        let (whole, fraction) = mantissa.split_once('.').unwrap_or((mantissa, ""));
        let all = [whole, fraction].concat();
        if all.is_empty() || !all.bytes().all(|byte| byte.is_ascii_digit()) {
            return None;
        }
        let exponent: i32 = exponent.parse().ok()?;
        let place = exponent.checked_sub(i32::try_from(fraction.len()).ok()?)?;
        if !PLACES.contains(&place) {
            return None;
        }
        let digits = match all.trim_start_matches('0') {
            "" => "0",
            digits => digits,
        };
        Some(Self { negative: negative && digits != "0", digits: digits.to_owned(), place })
    }

    /// Without noughts at its end.
    #[must_use]
    pub fn trimmed(mut self) -> Self {
        while self.digits.len() > 1 && self.digits.ends_with('0') {
            self.digits.pop();
            self.place += 1;
        }
        self
    }

    /// Reads what `{:e}` writes: sign, digit, perhaps point and digits, `e`, exponent.
    fn from_scientific(text: &str) -> Self {
        let (mantissa, exponent) = text.split_once('e').unwrap_or((text, "0"));
        let digits: String = mantissa.chars().filter(char::is_ascii_digit).collect();
        let exponent: i32 = exponent.parse().unwrap_or(0);
        let place = exponent - i32::try_from(digits.len()).unwrap_or(i32::MAX) + 1;
        let negative = mantissa.starts_with('-') && digits.bytes().any(|digit| digit != b'0');
        Self { negative, digits, place }
    }

    /// Whether all digits are nought.
    pub fn is_zero(&self) -> bool {
        self.digits.bytes().all(|digit| digit == b'0')
    }

    /// Power of ten of the first digit.
    pub fn leading(&self) -> i32 {
        self.place + i32::try_from(self.digits.len()).unwrap_or(i32::MAX) - 1
    }

    /// Power of ten of the last digit.
    pub const fn place(&self) -> i32 {
        self.place
    }

    /// The digits without sign, mark or power of ten.
    pub fn digits(&self) -> &str {
        &self.digits
    }

    /// The same digits × 10^`exponent`.
    #[must_use]
    pub fn shifted(mut self, exponent: i32) -> Self {
        self.place = self.place.saturating_add(exponent);
        self
    }

    /// The nearest double.
    pub fn to_f64(&self) -> f64 {
        nearest(self.negative, &self.digits, self.place)
    }

    /// The number without a power of ten, with `minus` for the sign: `−0.0210`.
    pub fn positional(&self, minus: char, mark: DecimalMark) -> String {
        let mut text = String::new();
        if self.negative {
            text.push(minus);
        }
        let Ok(decimals @ 1..) = usize::try_from(-self.place) else {
            text.push_str(&self.digits);
            if !self.is_zero() {
                text.extend((0..self.place).map(|_| '0'));
            }
            return text;
        };
        let padded = format!("{:0>width$}", self.digits, width = decimals + 1);
        let (whole, fraction) = padded.split_at(padded.len() - decimals);
        // Writing to a String cannot fail.
        let _ = write!(text, "{whole}{}{fraction}", mark.char());
        text
    }
}

#[cfg(test)]
#[path = "rounding_test.rs"]
mod tests;
