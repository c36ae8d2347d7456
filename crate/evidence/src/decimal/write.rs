//! Numbers for people, and for files.
//!
//! For people: a true minus sign (U+2212), the notebook's decimal mark, and a power of ten in place of long
//! rows of noughts. The power is used when the larger of value and uncertainty, as rounded, is 10⁴ or more,
//! or below 10⁻³. So at most four digits stand before the mark, which need no grouping; behind it there is none,
//! since digits are compared place by place with those of an uncertainty (SI 5.4.4 leaves both open). What is not
//! finite is a sign that every language reads: ∞, −∞, and NaN as in IEEE 754-2019. Spaces in it are such that no
//! line ends there. For files: decimal point and ASCII only.
//!
//! Sources: GUM 7.2.2 (forms 2 and 4); SI Brochure, 9th ed., 5.4.3 to 5.4.5.

use super::DecimalMark;
use super::rounding::{Decimal, rounded};

/// Digits shown when no uncertainty says how many are meant.
const WITHOUT_UNCERTAINTY: usize = 6;
const MINUS: char = '−';
const PLUS_MINUS: &str = "\u{a0}±\u{a0}";
/// Keeps a number and its unit on one line.
const NO_BREAK: char = '\u{a0}';

/// `(2.987 ± 0.021) × 10⁸ m/s`, `3.336 ± 0.012 ns/m`.
///
/// Without `u`: at most six significant digits. With `u` zero: all digits of the double.
/// A `u` that is negative or not a number is shown as NaN.
pub fn plus_minus(value: f64, u: Option<f64>, unit_symbol: &str, mark: DecimalMark) -> String {
    styled(value, u, unit_symbol, mark, Form::PlusMinus)
}

/// `2.987(21) × 10⁸ m/s`: the bracket counts in units of the last digit. Other cases as `plus_minus`.
pub fn short_form(value: f64, u: Option<f64>, unit_symbol: &str, mark: DecimalMark) -> String {
    styled(value, u, unit_symbol, mark, Form::Short)
}

/// `value` to so many significant digits (at least 1), for figures without an uncertainty.
pub fn plain(value: f64, significant: usize, mark: DecimalMark) -> String {
    match Decimal::significant(value, significant) {
        Some(decimal) => number(&decimal, mark),
        None => sign(value).to_owned(),
    }
}

/// `value` with its last digit at 10^`place`, never with a power of ten: place −3 gives `0.125`.
pub fn fixed(value: f64, place: i32, mark: DecimalMark) -> String {
    match Decimal::at_place(value, place) {
        Some(decimal) => decimal.positional(MINUS, mark),
        None => sign(value).to_owned(),
    }
}

/// A p-value to three decimals; one that these would show as 0 by what it is below, "< 0.001" (common practice, no source).
pub fn p_text(p: f64, mark: DecimalMark) -> String {
    if p < 0.0005 { format!("< {}", fixed(0.001, -3, mark)) } else { fixed(p, -3, mark) }
}

/// A p-value as an equation: "p = 0.032", "p < 0.001".
pub fn p_equation(p: f64, mark: DecimalMark) -> String {
    match p_text(p, mark) {
        bound if bound.starts_with('<') => format!("p {bound}"),
        digits => format!("p = {digits}"),
    }
}

/// The fewest digits that read back to the same double, for files. Not finite: `NaN`, `INF`, `-INF`
/// (the words of XML Schema 1.1 part 2, 3.3.5, which tables on the web use too).
pub fn exact(value: f64) -> String {
    match Decimal::shortest(value) {
        Some(decimal) => shortest_text(&decimal, '-', DecimalMark::Point),
        None if value.is_nan() => "NaN".to_owned(),
        None if value > 0.0 => "INF".to_owned(),
        None => "-INF".to_owned(),
    }
}

/// `value` to at most so many significant digits, without noughts at the end.
pub fn at_most(value: f64, significant: usize, mark: DecimalMark) -> String {
    match Decimal::significant(value, significant) {
        Some(decimal) => number(&decimal.trimmed(), mark),
        None => sign(value).to_owned(),
    }
}

/// A number as it is, with a power of ten where the rule at the head of this file asks for it.
pub fn number(decimal: &Decimal, mark: DecimalMark) -> String {
    match power_of_ten(&[decimal]) {
        Some(power) => decimal.clone().shifted(-power).positional(MINUS, mark) + &times_ten_to(power),
        None => decimal.positional(MINUS, mark),
    }
}

/// All digits of a number and its unit, as one would type them: `12.5 cm`, with the space bar's space.
pub fn as_typed(decimal: &Decimal, unit_symbol: &str, mark: DecimalMark) -> String {
    with_unit(shortest_text(decimal, MINUS, mark), unit_symbol).replace(NO_BREAK, " ")
}

#[derive(Clone, Copy)]
enum Form {
    PlusMinus,
    Short,
}

fn styled(value: f64, u: Option<f64>, unit: &str, mark: DecimalMark, form: Form) -> String {
    let Some(shortest) = Decimal::shortest(value) else { return sign(value).to_owned() };
    let Some(u) = u else { return with_unit(few_digits(value, shortest, mark), unit) };
    if u == 0.0 {
        return with_unit(number(&shortest, mark), unit);
    }
    let Some(pair) = rounded(value, u) else {
        let u = if u > 0.0 { sign(u) } else { sign(f64::NAN) };
        return with_unit(format!("{}{}{u}", few_digits(value, shortest, mark), PLUS_MINUS), unit);
    };
    let power = power_of_ten(&[&pair.value, &pair.uncertainty]);
    let [value, uncertainty] = [pair.value, pair.uncertainty].map(|d| d.shifted(-power.unwrap_or(0)));
    let digits = |decimal: &Decimal| decimal.positional(MINUS, mark);
    let text = match form {
        Form::Short => {
            // Noughts up to the units place were printed, so the bracket counts from there.
            let noughts = "0".repeat(usize::try_from(value.place()).unwrap_or(0));
            format!("{}({}{noughts})", digits(&value), uncertainty.digits())
        }
        Form::PlusMinus if power.is_some() => {
            format!("({}{}{})", digits(&value), PLUS_MINUS, digits(&uncertainty))
        }
        Form::PlusMinus => {
            format!("{}{}{}", digits(&value), PLUS_MINUS, digits(&uncertainty))
        }
    };
    with_unit(text + &power.map(times_ten_to).unwrap_or_default(), unit)
}

/// At most six significant digits, and none that the double's shortest form does not have.
fn few_digits(value: f64, shortest: Decimal, mark: DecimalMark) -> String {
    let few = if shortest.digits().len() <= WITHOUT_UNCERTAINTY {
        shortest
    } else {
        Decimal::significant(value, WITHOUT_UNCERTAINTY).unwrap_or(shortest)
    };
    number(&few, mark)
}

/// The power of ten to write, by the rule at the head of this file.
fn power_of_ten(decimals: &[&Decimal]) -> Option<i32> {
    let largest = decimals.iter().filter(|d| !d.is_zero()).map(|d| d.leading()).max()?;
    (!(-3..4).contains(&largest)).then_some(largest)
}

/// All digits, with `e` where they would make a row of noughts.
fn shortest_text(decimal: &Decimal, minus: char, mark: DecimalMark) -> String {
    let leading = decimal.leading();
    if (-5..16).contains(&leading) || decimal.is_zero() {
        let decimal =
            if decimal.is_zero() { decimal.clone().shifted(-decimal.place()) } else { decimal.clone() };
        decimal.positional(minus, mark)
    } else {
        let power = if leading < 0 { format!("{minus}{}", -leading) } else { leading.to_string() };
        format!("{}e{power}", decimal.clone().shifted(-leading).positional(minus, mark))
    }
}

/// A space before the symbol, but none before the degree of angle (SI Brochure, 5.4.3).
fn with_unit(number: String, symbol: &str) -> String {
    match symbol {
        "" => number,
        "°" => number + symbol,
        _ => format!("{number}{NO_BREAK}{symbol}"),
    }
}

/// ` × 10⁸`
fn times_ten_to(exponent: i32) -> String {
    format!("\u{a0}×\u{a0}{}", ten_to_the(exponent))
}

/// A power of ten, as 10⁸.
pub fn ten_to_the(exponent: i32) -> String {
    let superscript = |c| match c {
        '-' => '⁻',
        '0' => '⁰',
        '1' => '¹',
        '2' => '²',
        '3' => '³',
        '4' => '⁴',
        '5' => '⁵',
        '6' => '⁶',
        '7' => '⁷',
        '8' => '⁸',
        _ => '⁹',
    };
    format!("10{}", exponent.to_string().chars().map(superscript).collect::<String>())
}

/// What is not finite.
fn sign(value: f64) -> &'static str {
    if value.is_nan() {
        "NaN"
    } else if value > 0.0 {
        "∞"
    } else {
        "−∞"
    }
}

#[cfg(test)]
#[path = "write_test.rs"]
mod tests;
