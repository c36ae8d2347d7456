//! Decimal numbers as the files of recorders hold them, fast.
//!
//! A number of up to 19 digits whose digits fit 53 bits and whose power of ten is at most 22 takes one exact product or
//! quotient, so it is the nearest double (W. D. Clinger, "How to read floating point numbers accurately", PLDI 1990).
//! All others go through a product of two pairs of doubles, good to 100 bits: the nearest double but for cases within
//! 2⁻⁴⁰ of a step from a midpoint, where it may be the neighbour; of more than 19 digits the first 19 are taken, which is
//! within 2⁻⁹ of a step. No sample of a converter needs more.

/// A number, and how it was written.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(super) struct SampleNumber {
    /// Its value.
    pub value: f64,
    /// Power of ten of its last digit.
    pub place: i32,
    /// Index of the byte after it.
    pub end: usize,
}

const EXACT: [f64; 23] = [
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18,
    1e19, 1e20, 1e21, 1e22,
];

const TENS: [u64; 9] = [1, 10, 100, 1_000, 10_000, 100_000, 1_000_000, 10_000_000, 100_000_000];
/// Eight of the digit nought.
const ZEROS: u64 = 0x3030_3030_3030_3030;

/// The whole of `text` as a number with that decimal mark. Space around it, a plus sign, a sign apart from its digits, a
/// typographic minus, leading zeros and a bare point at either end are taken; words such as `nan` are not.
pub fn number(text: &[u8], decimal_comma: bool) -> Option<f64> {
    let text = text.trim_ascii();
    let mark = if decimal_comma { b',' } else { b'.' };
    let found = prefix(text, 0, mark)?;
    (found.end == text.len()).then_some(found.value)
}

/// The number that begins at `at`, after spaces.
#[inline]
pub(super) fn prefix(text: &[u8], at: usize, mark: u8) -> Option<SampleNumber> {
    let mut at = at;
    while text.get(at) == Some(&b' ') {
        at += 1;
    }
    let mut negative = false;
    match text.get(at)? {
        b'-' => {
            negative = true;
            at += 1;
        }
        b'+' => at += 1,
        0xe2 if text.get(at + 1..at + 3) == Some(&[0x88, 0x92]) => {
            negative = true;
            at += 3;
        }
        _ => {}
    }
    while text.get(at) == Some(&b' ') {
        at += 1;
    }
    let first = at;
    // Before the mark there are few digits, behind it many.
    let mut digits = 0_u64;
    while let Some(digit) = digit(text, at) {
        digits = digits.wrapping_mul(10).wrapping_add(digit);
        at += 1;
    }
    let mut count = at - first;
    let mut place = 0_i32;
    if text.get(at) == Some(&mark) {
        let after = at + 1;
        (digits, at) = run(text, after, digits);
        count += at - after;
        place = -i32::try_from(at - after).ok()?;
    }
    if count == 0 {
        return None;
    }
    if count > 19 {
        let kept;
        (digits, kept) = leading(text.get(first..at)?, mark);
        place = place.saturating_add(kept);
    }
    let mut last = place;
    if matches!(text.get(at), Some(b'e' | b'E')) {
        let mut end = at + 1;
        let down = text.get(end) == Some(&b'-');
        if down || text.get(end) == Some(&b'+') {
            end += 1;
        }
        if digit(text, end).is_some() {
            let mut exponent = 0_i32;
            while let Some(digit) = digit(text, end) {
                exponent =
                    exponent.saturating_mul(10).saturating_add(i32::try_from(digit).ok()?).min(100_000);
                end += 1;
            }
            let exponent = if down { -exponent } else { exponent };
            place = place.saturating_add(exponent);
            last = last.saturating_add(exponent);
            at = end;
        }
    }
    let size = scaled(digits, place);
    Some(SampleNumber { value: if negative { -size } else { size }, place: last, end: at })
}

/// The number that begins at `at` just as [`prefix`] finds it, if it is written as most are: a minus or nothing, digits,
/// perhaps the mark with 1 to 15 digits, perhaps a power of ten of few digits, and then something else; all of it exact in
/// one step. Nothing for any other, which is left to [`prefix`].
#[inline]
pub(super) fn plain(text: &[u8], at: usize, mark: u8) -> Option<SampleNumber> {
    // Whether noise is above or below nought can't be guessed: nothing branches on it.
    let negative = *text.get(at)? == b'-';
    let first = at + usize::from(negative);
    let mut at = first;
    let mut digits = 0_u64;
    while let Some(digit) = digit(text, at) {
        digits = digits.wrapping_mul(10).wrapping_add(digit);
        at += 1;
    }
    let mut count = at - first;
    if count == 0 {
        return None;
    }
    let mut place = 0_i32;
    if text.get(at) == Some(&mark) {
        let after = at + 1;
        let (more, mut length) = up_to_eight(text, after)?;
        digits = digits.wrapping_mul(*TENS.get(length)?).wrapping_add(more);
        if length == 8 && digit(text, after + 8).is_some() {
            let (more, rest) = up_to_eight(text, after + 8)?;
            digits = digits.wrapping_mul(*TENS.get(rest)?).wrapping_add(more);
            length += rest;
        }
        // A bare mark, or more digits than were looked at.
        if length == 0 || length == 16 {
            return None;
        }
        count += length;
        at = after + length;
        place = -i32::try_from(length).ok()?;
    }
    if count > 19 {
        return None;
    }
    if matches!(text.get(at), Some(b'e' | b'E')) {
        let sign = *text.get(at + 1)?;
        at += 1 + usize::from(sign == b'-' || sign == b'+');
        let mut exponent = i32::try_from(digit(text, at)?).ok()?;
        at += 1;
        if let Some(digit) = digit(text, at) {
            exponent = 10 * exponent + i32::try_from(digit).ok()?;
            at += 1;
        }
        if digit(text, at).is_some() {
            return None;
        }
        place += if sign == b'-' { -exponent } else { exponent };
    }
    let size = exact(digits, place)?;
    let value = f64::from_bits(size.to_bits() | u64::from(negative) << 63);
    Some(SampleNumber { value, place, end: at })
}

/// The digits from a byte on among the next eight bytes, and how many they are.
#[inline]
fn up_to_eight(text: &[u8], at: usize) -> Option<(u64, usize)> {
    let bytes = u64::from_le_bytes(*text.get(at..)?.first_chunk()?) ^ ZEROS;
    // The highest bit of the first byte above 9 is set; what the sum carries only reaches bytes behind it.
    let others = (bytes.wrapping_add(0x7676_7676_7676_7676) | bytes) & 0x8080_8080_8080_8080;
    let bits = others.trailing_zeros() & !7;
    // Noughts before the digits take the places of what is not one.
    let digits = bytes.checked_shl(64 - bits).unwrap_or(0);
    Some((joined(digits), usize::try_from(bits / 8).ok()?))
}

/// The digits from a byte on, put behind others, and where they end.
#[inline]
fn run(text: &[u8], from: usize, before: u64) -> (u64, usize) {
    let (mut digits, mut at) = (before, from);
    while let Some(eight) = eight(text, at) {
        digits = digits.wrapping_mul(100_000_000).wrapping_add(eight);
        at += 8;
    }
    while let Some(digit) = digit(text, at) {
        digits = digits.wrapping_mul(10).wrapping_add(digit);
        at += 1;
    }
    (digits, at)
}

/// Eight digits at once, as one word.
#[inline]
fn eight(text: &[u8], at: usize) -> Option<u64> {
    let word = u64::from_le_bytes(*text.get(at..)?.first_chunk()?);
    let high = 0xf0f0_f0f0_f0f0_f0f0;
    if word & high != ZEROS || word.wrapping_add(0x0606_0606_0606_0606) & high != ZEROS {
        return None;
    }
    Some(joined(word - ZEROS))
}

/// Eight digits, a byte each, as one number: pairs, then fours, then all are put together by a product each.
#[inline]
fn joined(ones: u64) -> u64 {
    let pairs = ones * 10 + (ones >> 8);
    let low = (pairs & 0xff_0000_00ff).wrapping_mul(100 + (1_000_000 << 32));
    let up = ((pairs >> 16) & 0xff_0000_00ff).wrapping_mul(1 + (10_000 << 32));
    low.wrapping_add(up) >> 32
}

#[inline]
fn digit(text: &[u8], at: usize) -> Option<u64> {
    let digit = text.get(at)?.wrapping_sub(b'0');
    (digit < 10).then_some(u64::from(digit))
}

/// The first 19 digits that count, and how many places were left off.
#[cold]
fn leading(text: &[u8], mark: u8) -> (u64, i32) {
    let (mut digits, mut count, mut left) = (0_u64, 0, 0);
    for byte in text.iter().filter(|byte| **byte != mark) {
        if count == 19 {
            left += 1;
        } else {
            digits = digits * 10 + u64::from(byte - b'0');
            count += i32::from(digits > 0);
        }
    }
    (digits, left)
}

#[inline]
fn scaled(digits: u64, place: i32) -> f64 {
    exact(digits, place).unwrap_or_else(|| roundabout(digits, place))
}

/// By one product or quotient of two exact numbers, where there are such.
#[inline]
fn exact(digits: u64, place: i32) -> Option<f64> {
    let power = *EXACT.get(usize::try_from(place.unsigned_abs()).ok()?)?;
    if digits >= 1 << 53 {
        return None;
    }
    // A processor turns signed numbers into doubles by one instruction.
    let digits = digits.cast_signed() as f64;
    Some(if place < 0 { digits / power } else { digits * power })
}

#[cold]
fn roundabout(digits: u64, place: i32) -> f64 {
    if digits == 0 {
        return 0.0;
    }
    let upper = (digits >> 32 << 32) as f64;
    let lower = (digits & 0xffff_ffff) as f64;
    let mut number = quick(upper, lower);
    let mut left = place.clamp(-400, 400);
    while left != 0 {
        let part = left.clamp(-22, 22);
        let power = EXACT[usize::try_from(part.unsigned_abs()).unwrap_or(0).min(22)];
        number = if part < 0 { over(number, power) } else { times(number, power) };
        left -= part;
    }
    number.0 + number.1
}

/// Sum of two doubles and its rounding error, the first being the larger.
fn quick(large: f64, small: f64) -> (f64, f64) {
    let sum = large + small;
    (sum, small - (sum - large))
}

/// Product of two doubles and its rounding error (T. J. Dekker, Numer. Math. 18 (1971) 224).
fn product(a: f64, b: f64) -> (f64, f64) {
    let split = |x: f64| {
        let high = x * 134_217_729.0;
        let high = high - (high - x);
        (high, x - high)
    };
    let whole = a * b;
    let ((a1, a2), (b1, b2)) = (split(a), split(b));
    (whole, ((a1 * b1 - whole) + a1 * b2 + a2 * b1) + a2 * b2)
}

fn times((high, low): (f64, f64), factor: f64) -> (f64, f64) {
    let (whole, error) = product(high, factor);
    if !whole.is_finite() || !error.is_finite() {
        return (high * factor, 0.0);
    }
    quick(whole, error + low * factor)
}

fn over((high, low): (f64, f64), divisor: f64) -> (f64, f64) {
    let first = high / divisor;
    let (whole, error) = product(first, divisor);
    quick(first, ((high - whole) - error + low) / divisor)
}

#[cfg(test)]
#[path = "fast_decimal_test.rs"]
mod tests;
