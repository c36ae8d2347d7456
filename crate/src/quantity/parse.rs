//! Reading one typed number, with its unit and its uncertainty if they were typed too.
//!
//! Accepted: either minus sign; the notebook's own decimal mark; groups of three digits parted by any kind
//! of space (SI Brochure, 9th ed., 5.4.4); powers of ten as `e8`, `× 10^8`, `·10⁸`; an uncertainty as
//! `12.5 ± 0.3`, `(12.5 ± 0.3)`, `12.5(3)` or `12.5(0.3)` (GUM 7.2.2, forms 2 to 4); one unit at the end.
//! Everything else is an error. The decimal exponent is shifted by the unit before the digits become a
//! double, so each number is rounded once.

use core::f64::consts::PI;

use slope_evidence::decimal::nearest;

use super::error::quoted;
use super::unit::Scale;
use super::{DecimalMark, NumberError, Unit};

/// More characters than any number needs; keeps exponents within an `i32`.
const LONGEST: usize = 256;
/// Powers of ten are cut off here, far beyond any double.
const LARGEST_EXPONENT: i32 = 1_000_000;

/// One number as read.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Number {
    /// The value in the base unit of its dimension.
    pub value: f64,
    /// The standard uncertainty if one was typed, in the base unit; never below zero.
    pub uncertainty: Option<f64>,
    /// The unit as typed, or the default.
    pub unit: Unit,
    /// Power of ten of the last typed digit, in the typed unit: `12.50 cm` gives −2.
    pub last_place: i32,
}

impl Number {
    /// One unit of the last typed digit, in the base unit: `12.50 cm` gives 0.0001 (m).
    pub fn step(&self) -> f64 {
        Numeral { negative: false, digits: "1".to_owned(), place: self.last_place }.in_base(self.unit)
    }

    /// The value, where no uncertainty may be written behind it; `text` is what was read.
    ///
    /// # Errors
    /// `Uncertain` where one was.
    pub fn alone(&self, text: &str) -> Result<f64, NumberError> {
        match self.uncertainty {
            None => Ok(self.value),
            Some(_) => Err(NumberError::Uncertain { found: quoted(text) }),
        }
    }
}

/// Reads one number where no uncertainty may be written behind it: the value in the base unit.
///
/// # Errors
/// A `NumberError` that quotes the part at fault.
pub fn parse_alone(text: &str, mark: DecimalMark, default: Unit) -> Result<f64, NumberError> {
    parse(text, mark, default)?.alone(text)
}

/// Reads one number; `default` is the unit when none is typed, and says which dimension is asked for.
///
/// # Errors
/// A `NumberError` that quotes the part at fault.
pub fn parse(text: &str, mark: DecimalMark, default: Unit) -> Result<Number, NumberError> {
    read(text, mark, default).map(|entry| entry.number)
}

/// Reads the repeats in one cell, parted by `;`. Either all of them carry a unit or none does.
///
/// # Errors
/// A `NumberError` for the first repeat at fault, or `MixedUnits`.
pub fn parse_list(text: &str, mark: DecimalMark, default: Unit) -> Result<Vec<Number>, NumberError> {
    if text.trim().is_empty() {
        return Err(NumberError::Empty);
    }
    let entries = text
        .split(';')
        .enumerate()
        .map(|(index, item)| match read(item, mark, default) {
            Err(NumberError::Empty) => Err(NumberError::EmptyRepeat { position: index + 1 }),
            entry => entry,
        })
        .collect::<Result<Vec<_>, _>>()?;
    let with_unit = entries.iter().filter(|entry| entry.unit_typed).count();
    if with_unit != 0 && with_unit != entries.len() {
        return Err(NumberError::MixedUnits);
    }
    Ok(entries.into_iter().map(|entry| entry.number).collect())
}

struct ReadNumber {
    number: Number,
    unit_typed: bool,
}

fn read(text: &str, mark: DecimalMark, default: Unit) -> Result<ReadNumber, NumberError> {
    let text = tidied(text)?;
    let mut scanner = Scanner { whole: &text, rest: &text, mark };
    let (value, uncertainty) = scanner.quantity()?;
    let typed_unit = scanner.unit(default)?;
    let unit = typed_unit.unwrap_or(default);
    let number = Number {
        value: value.in_range(unit, &text)?,
        uncertainty: uncertainty.map(|u| u.in_range(unit, &text)).transpose()?,
        unit,
        last_place: value.place,
    };
    Ok(ReadNumber { number, unit_typed: typed_unit.is_some() })
}

/// The text with one kind of space, of minus and of micro sign.
fn tidied(text: &str) -> Result<String, NumberError> {
    let text = text.trim();
    let length = text.chars().count();
    if length == 0 {
        return Err(NumberError::Empty);
    }
    if length > LONGEST {
        return Err(NumberError::TooLong { length, limit: LONGEST });
    }
    Ok(text
        .chars()
        .map(|c| match c {
            // Hyphens, en dash and minus sign.
            '\u{2010}' | '\u{2011}' | '\u{2013}' | '\u{2212}' => '-',
            // Greek mu.
            '\u{3bc}' => 'µ',
            c if c.is_whitespace() && !c.is_control() => ' ',
            c => c,
        })
        .collect())
}

/// digits × 10^place, as typed.
#[derive(Clone)]
struct Numeral {
    negative: bool,
    /// ASCII digits, at least one.
    digits: String,
    place: i32,
}

impl Numeral {
    /// The value in the base unit of `unit`, rounded once (twice for degrees).
    fn in_base(&self, unit: Unit) -> f64 {
        match unit.scale() {
            Scale::TenTo(exponent) => nearest(self.negative, &self.digits, self.place + exponent),
            Scale::Inch => nearest(self.negative, &times(&self.digits, 254), self.place - 4),
            Scale::Degree => nearest(self.negative, &self.digits, self.place) * (PI / 180.0),
        }
    }

    fn in_range(&self, unit: Unit, whole: &str) -> Result<f64, NumberError> {
        let value = self.in_base(unit);
        if !value.is_finite() {
            return Err(NumberError::TooLarge { found: quoted(whole) });
        }
        if value == 0.0 && self.digits.bytes().any(|digit| digit != b'0') {
            return Err(NumberError::TooSmall { found: quoted(whole) });
        }
        // Minus nought becomes nought.
        Ok(value + 0.0)
    }

    fn shift(&mut self, exponent: i32) {
        self.place += exponent;
    }
}

/// A decimal integer times a small factor, exactly.
fn times(digits: &str, factor: u32) -> String {
    let mut carry = 0;
    let mut reversed = Vec::new();
    for digit in digits.chars().rev().filter_map(|c| c.to_digit(10)) {
        carry += digit * factor;
        reversed.push(carry % 10);
        carry /= 10;
    }
    let tail: String = reversed.iter().rev().filter_map(|&digit| char::from_digit(digit, 10)).collect();
    format!("{carry}{tail}")
}

/// Reads from the front of `rest`.
struct Scanner<'a> {
    whole: &'a str,
    rest: &'a str,
    mark: DecimalMark,
}

impl<'a> Scanner<'a> {
    /// A value with or without an uncertainty, up to the unit.
    fn quantity(&mut self) -> Result<(Numeral, Option<Numeral>), NumberError> {
        if self.eat("(") { self.bracketed() } else { self.open() }
    }

    /// `12.5 ± 0.3) × 10⁸`, after its opening bracket.
    fn bracketed(&mut self) -> Result<(Numeral, Option<Numeral>), NumberError> {
        let mut value = self.signed()?;
        value.shift(self.exponent()?.map_or(0, |power| power.exponent));
        if !self.eat_plus_minus() {
            return Err(self.unexpected());
        }
        let mut uncertainty = self.unsigned()?;
        uncertainty.shift(self.exponent()?.map_or(0, |power| power.exponent));
        if !self.eat(")") {
            return Err(self.unexpected());
        }
        let exponent = self.exponent()?.map_or(0, |power| power.exponent);
        value.shift(exponent);
        uncertainty.shift(exponent);
        Ok((value, Some(uncertainty)))
    }

    /// `12.5`, `12.5 ± 0.3` or `12.5(3)`, each with its powers of ten.
    fn open(&mut self) -> Result<(Numeral, Option<Numeral>), NumberError> {
        let mut value = self.signed()?;
        let mut concise = self.concise(&value)?;
        let power = self.exponent()?;
        let exponent = power.as_ref().map_or(0, |power| power.exponent);
        value.shift(exponent);
        if let Some(uncertainty) = &mut concise {
            uncertainty.shift(exponent);
            return Ok((value, concise));
        }
        if !self.eat_plus_minus() {
            return Ok((value, None));
        }
        let mut uncertainty = self.unsigned()?;
        if let Some(own) = self.exponent()? {
            if power.is_none() && own.as_product {
                return Err(NumberError::SharedExponent { found: quoted(self.whole) });
            }
            uncertainty.shift(own.exponent);
        }
        Ok((value, Some(uncertainty)))
    }

    /// `(35)`: in units of the last digit of `value`; `(0.35)`, with a decimal mark: as it stands.
    fn concise(&mut self, value: &Numeral) -> Result<Option<Numeral>, NumberError> {
        if !self.eat("(") {
            return Ok(None);
        }
        let before = self.rest;
        let mut uncertainty = self.unsigned()?;
        let written = before.strip_suffix(self.rest).unwrap_or(before);
        if !written.contains(self.mark.char()) {
            uncertainty.place = value.place;
        }
        if !self.eat(")") {
            return Err(self.unexpected());
        }
        Ok(Some(uncertainty))
    }

    fn signed(&mut self) -> Result<Numeral, NumberError> {
        let negative = self.eat("-");
        if !negative {
            self.eat("+");
        }
        self.skip_spaces();
        Ok(Numeral { negative, ..self.digits()? })
    }

    fn unsigned(&mut self) -> Result<Numeral, NumberError> {
        self.skip_spaces();
        if self.rest.starts_with('-') {
            return Err(NumberError::NegativeUncertainty { found: quoted(self.rest) });
        }
        self.digits()
    }

    /// Digits with their mark and their grouping spaces.
    fn digits(&mut self) -> Result<Numeral, NumberError> {
        let is_part = |c: char| c.is_ascii_digit() || c == '.' || c == ',';
        let mut following = self.rest.chars().skip(1);
        let length = self
            .rest
            .chars()
            .take_while(|&c| {
                let next = following.next();
                is_part(c) || (c == ' ' && next.is_some_and(is_part))
            })
            .map(char::len_utf8)
            .sum();
        let (run, rest) = self.rest.split_at_checked(length).unwrap_or((self.rest, ""));
        if !run.contains(|c: char| c.is_ascii_digit()) {
            return Err(NumberError::not_a_number(self.rest_or_whole(), self.mark));
        }
        let numeral = numeral(run, self.mark)?;
        self.rest = rest;
        Ok(numeral)
    }

    /// A power of ten, if one follows.
    fn exponent(&mut self) -> Result<Option<Power>, NumberError> {
        let start = self.rest.trim_start();
        if let Some(after) = start.strip_prefix(['e', 'E']) {
            // Letters after the e make it a unit; the unit's own reading then says what is wrong with it.
            if after.starts_with(char::is_alphabetic) {
                return Ok(None);
            }
            return self.power(start, after, false, ascii_digit).map(Some);
        }
        let Some(after) = start.strip_prefix(['×', 'x', 'X', '*', '·', '⋅']) else { return Ok(None) };
        let unfinished = || NumberError::Exponent { found: quoted(start) };
        let after = after.trim_start().strip_prefix("10").ok_or_else(unfinished)?;
        match after.trim_start().strip_prefix('^') {
            Some(after) => self.power(start, after.trim_start(), true, ascii_digit).map(Some),
            None => self.power(start, after, true, superscript).map(Some),
        }
    }

    /// The sign and the digits of a power of ten; `digit` says which digits count.
    fn power(
        &mut self,
        start: &'a str,
        after: &'a str,
        as_product: bool,
        digit: fn(char) -> Option<i32>,
    ) -> Result<Power, NumberError> {
        let (sign, digits) = match after.chars().next() {
            Some(c @ ('-' | '⁻')) => (-1, after.get(c.len_utf8()..).unwrap_or("")),
            Some(c @ ('+' | '⁺')) => (1, after.get(c.len_utf8()..).unwrap_or("")),
            _ => (1, after),
        };
        let rest = digits.trim_start_matches(|c| digit(c).is_some());
        if rest.len() == digits.len() {
            return Err(NumberError::Exponent { found: quoted(start) });
        }
        let size = digits
            .chars()
            .map_while(digit)
            .fold(0_i32, |size, d| size.saturating_mul(10).saturating_add(d).min(LARGEST_EXPONENT));
        self.rest = rest;
        Ok(Power { exponent: sign * size, as_product })
    }

    /// The unit that ends the text, if there is one.
    fn unit(&mut self, default: Unit) -> Result<Option<Unit>, NumberError> {
        let spelling = self.rest.trim();
        let Some(first) = spelling.chars().next() else { return Ok(None) };
        if !(first.is_alphabetic() || "°%‰″\"℃".contains(first)) {
            return Err(self.unexpected());
        }
        match Unit::spelled(spelling, default.dimension()) {
            Some(unit) => Ok(Some(unit)),
            None => Err(NumberError::unit(spelling, default.dimension())),
        }
    }

    fn eat(&mut self, token: &str) -> bool {
        match self.rest.trim_start().strip_prefix(token) {
            Some(rest) => {
                self.rest = rest;
                true
            }
            None => false,
        }
    }

    fn eat_plus_minus(&mut self) -> bool {
        self.eat("±") || self.eat("+/-") || self.eat("+-")
    }

    fn skip_spaces(&mut self) {
        self.rest = self.rest.trim_start();
    }

    fn rest_or_whole(&self) -> &str {
        if self.rest.is_empty() { self.whole } else { self.rest }
    }

    fn unexpected(&self) -> NumberError {
        NumberError::Unexpected { found: quoted(self.rest_or_whole()) }
    }
}

struct Power {
    exponent: i32,
    /// Written as `× 10^8` rather than `e8`.
    as_product: bool,
}

fn ascii_digit(c: char) -> Option<i32> {
    c.to_digit(10).and_then(|digit| i32::try_from(digit).ok())
}

fn superscript(c: char) -> Option<i32> {
    "⁰¹²³⁴⁵⁶⁷⁸⁹".chars().zip(0..).find_map(|(superscript, digit)| (superscript == c).then_some(digit))
}

/// Checks marks and groups of one run of digits.
fn numeral(run: &str, mark: DecimalMark) -> Result<Numeral, NumberError> {
    if run.contains(mark.other().char()) {
        return Err(NumberError::OtherMark { found: quoted(run), expected: mark });
    }
    let (whole, fraction) = run.split_once(mark.char()).unwrap_or((run, ""));
    if fraction.contains(mark.char()) {
        return Err(NumberError::SeveralMarks { found: quoted(run) });
    }
    if !(groups_well(whole.rsplit(' ')) && groups_well(fraction.split(' '))) {
        return Err(NumberError::Grouping { found: quoted(run) });
    }
    let fraction_digits = fraction.bytes().filter(u8::is_ascii_digit);
    let place = fraction_digits.fold(0, |place, _| place - 1);
    let digits = run.chars().filter(char::is_ascii_digit).collect();
    Ok(Numeral { negative: false, digits, place })
}

/// Whether groups, taken from the mark outward, are three digits each, but for a shorter last one.
fn groups_well<'a>(groups: impl Iterator<Item = &'a str>) -> bool {
    let sizes: Vec<usize> = groups.map(str::len).collect();
    match sizes.split_last() {
        Some((_, [])) | None => true,
        Some((last, inner)) => (1..=3).contains(last) && inner.iter().all(|&size| size == 3),
    }
}

#[cfg(test)]
#[path = "parse_test.rs"]
mod tests;
