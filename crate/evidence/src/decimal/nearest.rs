//! The double nearest to a decimal number.
//!
//! The library's own reader gives the same doubles, and is quicker on long numbers; but its table of powers is a
//! tenth of a megabit that nothing compresses, 10 KB of the page. Here short numbers take one exact multiplication
//! or division (W. D. Clinger, "How to read floating point numbers accurately", PLDI 1990), all others whole-number
//! arithmetic to the last digit. Tests hold it to the library's reader.

/// Powers of ten up to this are doubles.
const EXACT_POWER: u32 = 22;
/// As many digits make a whole number that is a double.
const EXACT_DIGITS: usize = 15;
/// More digits than any double or midpoint between two has: those beyond only say "a little more".
const DIGITS: usize = 800;
/// Exponent of the last bit of the smallest doubles.
const LAST_BIT: i64 = -1074;
/// Bits of a double's significand.
const BITS: i64 = 53;

/// The double nearest to digits × 10^place, the even one of two that are as near. `digits` are ASCII digits. Too
/// large is infinite, too small nought.
pub fn nearest(negative: bool, digits: &str, place: i32) -> f64 {
    let digits = digits.trim_start_matches('0');
    let size = magnitude(digits, place);
    if negative { -size } else { size }
}

fn magnitude(digits: &str, place: i32) -> f64 {
    let length = i64::try_from(digits.len()).unwrap_or(i64::MAX);
    let leading = length.saturating_add(i64::from(place));
    if digits.is_empty() || leading < -330 {
        return 0.0;
    }
    if leading > 310 {
        return f64::INFINITY;
    }
    if digits.len() <= EXACT_DIGITS && place.unsigned_abs() <= EXACT_POWER {
        let whole = digits.bytes().fold(0_u64, |number, digit| number * 10 + u64::from(digit - b'0')) as f64;
        let power = (0..place.unsigned_abs()).fold(1.0, |power, _| power * 10.0);
        return if place < 0 { whole / power } else { whole * power };
    }
    exactly(digits, place)
}

fn exactly(digits: &str, place: i32) -> f64 {
    let (kept, rest) = digits.split_at(digits.len().min(DIGITS));
    let place = i64::from(place) + i64::try_from(rest.len()).unwrap_or(i64::MAX);
    let mut number = Whole::default();
    for digit in kept.bytes() {
        number.multiply_add(10, u32::from(digit - b'0'));
    }
    let mut more = rest.bytes().any(|digit| digit != b'0');
    let mut exponent = 0;
    for _ in 0..place {
        number.multiply_add(10, 0);
    }
    if place < 0 {
        // So far up that the quotient keeps a word more than a double has bits; ten has less than 10/3 bits.
        let words = (-place * 10 / 3 + BITS + 64 - number.bits()).max(0) / 32 + 1;
        number.shift_up(words);
        exponent = -32 * words;
        for _ in 0..-place {
            more |= number.divide(10) > 0;
        }
    }
    number.rounded(exponent, more)
}

/// A whole number, least word first.
#[derive(Default)]
struct Whole(Vec<u32>);

impl Whole {
    fn multiply_add(&mut self, factor: u32, add: u32) {
        let mut carry = u64::from(add);
        for word in &mut self.0 {
            let product = u64::from(*word) * u64::from(factor) + carry;
            (*word, carry) = (low(product), product >> 32);
        }
        if carry > 0 {
            self.0.push(low(carry));
        }
    }

    /// Divides; gives the remainder.
    fn divide(&mut self, divisor: u32) -> u32 {
        let mut remainder = 0_u64;
        for word in self.0.iter_mut().rev() {
            let dividend = (remainder << 32) | u64::from(*word);
            (*word, remainder) = (low(dividend / u64::from(divisor)), dividend % u64::from(divisor));
        }
        while self.0.last() == Some(&0) {
            self.0.pop();
        }
        low(remainder)
    }

    fn shift_up(&mut self, words: i64) {
        self.0.splice(0..0, (0..words).map(|_| 0));
    }

    fn bits(&self) -> i64 {
        let words = i64::try_from(self.0.len()).unwrap_or(i64::MAX / 64);
        words * 32 - self.0.last().map_or(0, |word| i64::from(word.leading_zeros()))
    }

    fn bit(&self, place: i64) -> bool {
        let word = usize::try_from(place / 32).ok().and_then(|word| self.0.get(word));
        place >= 0 && word.is_some_and(|word| (word >> (place % 32)) & 1 == 1)
    }

    /// The double nearest to this × 2^exponent, and a little more if said so.
    fn rounded(&self, exponent: i64, more: bool) -> f64 {
        let last = (self.bits() + exponent - BITS).max(LAST_BIT);
        let cut = last - exponent;
        let significand = (cut..cut + BITS)
            .rev()
            .fold(0_u64, |significand, place| (significand << 1) | u64::from(self.bit(place)));
        let half = self.bit(cut - 1);
        let beyond = more || (0..cut - 1).any(|place| self.bit(place));
        let up = half && (beyond || significand & 1 == 1);
        let rounded = (significand + u64::from(up)) as f64;
        // In two steps, each exact: the smallest powers are no doubles to multiply with beside a large one.
        let halfway = last / 2;
        rounded * power_of_two(halfway) * power_of_two(last - halfway)
    }
}

#[expect(clippy::cast_possible_truncation, reason = "the low word is meant")]
const fn low(word: u64) -> u32 {
    word as u32
}

/// 2^exponent for exponents from −1022 to 1023; nought or infinite beyond.
fn power_of_two(exponent: i64) -> f64 {
    let biased = (exponent + 1023).clamp(0, 2047);
    f64::from_bits(biased.cast_unsigned() << 52)
}

#[cfg(test)]
#[path = "nearest_test.rs"]
mod tests;
