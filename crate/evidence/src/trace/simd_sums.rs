//! Sums and least values of many numbers, taken side by side: a processor adds several at once, where one sum after the
//! other would wait for each. The lanes are fixed, so that all targets find the same to the last bit.

/// Numbers that are compared side by side.
const COMPARED: usize = 8;
/// Numbers that are added side by side.
const ADDED: usize = 4;

/// The lesser of two numbers, as a processor has it for several at once.
#[inline]
pub(super) fn lesser(one: f64, other: f64) -> f64 {
    if one < other { one } else { other }
}

/// The least of all that is made of each number of one list and the one in its place in the other.
#[inline]
pub(super) fn least<const KINDS: usize>(
    ones: &[f64],
    others: &[f64],
    of: impl Fn(f64, f64) -> [f64; KINDS],
) -> [f64; KINDS] {
    let mut lanes = [[f64::INFINITY; COMPARED]; KINDS];
    let (ones, others) = alike_long(ones, others);
    let ((ones, last), (others, rest)) = (ones.as_chunks::<COMPARED>(), others.as_chunks::<COMPARED>());
    for (ones, others) in ones.iter().zip(others) {
        for lane in 0..COMPARED {
            for (least, value) in lanes.iter_mut().zip(of(ones[lane], others[lane])) {
                least[lane] = lesser(value, least[lane]);
            }
        }
    }
    let mut found =
        lanes.map(|lanes| lanes.into_iter().fold(f64::INFINITY, |least, value| lesser(value, least)));
    for (one, other) in last.iter().zip(rest) {
        for (least, value) in found.iter_mut().zip(of(*one, *other)) {
            *least = lesser(value, *least);
        }
    }
    found
}

/// Sums of what is made of each number of one list and the one in its place in the other.
#[inline]
pub(super) fn totals<const SUMS: usize>(
    ones: &[f64],
    others: &[f64],
    of: impl Fn(f64, f64) -> [f64; SUMS],
) -> [f64; SUMS] {
    let mut lanes = [[0.0; ADDED]; SUMS];
    let (ones, others) = alike_long(ones, others);
    let ((ones, last), (others, rest)) = (ones.as_chunks::<ADDED>(), others.as_chunks::<ADDED>());
    for (ones, others) in ones.iter().zip(others) {
        for lane in 0..ADDED {
            for (sum, value) in lanes.iter_mut().zip(of(ones[lane], others[lane])) {
                sum[lane] += value;
            }
        }
    }
    let mut sums = lanes.map(|[a, b, c, d]| (a + b) + (c + d));
    for (one, other) in last.iter().zip(rest) {
        for (sum, value) in sums.iter_mut().zip(of(*one, *other)) {
            *sum += value;
        }
    }
    sums
}

/// Both cut to the length of the shorter, so that they end in the same lane.
fn alike_long<'a>(ones: &'a [f64], others: &'a [f64]) -> (&'a [f64], &'a [f64]) {
    let count = ones.len().min(others.len());
    (&ones[..count], &others[..count])
}

/// The sum of the numbers before each, and that of all, counted from a level.
pub(super) fn running(numbers: &[f64], level: f64) -> Vec<f64> {
    let mut sums = vec![0.0; numbers.len() + 1];
    let mut sum = 0.0;
    let (fours, last) = numbers.as_chunks::<ADDED>();
    let (before, rest) = sums[1..].as_chunks_mut();
    for (sums, four) in before.iter_mut().zip(fours) {
        let [a, b, c, d] = four.map(|number| number - level);
        // What is added up of four does not wait for the sum before them.
        let (two, other) = (a + b, c + d);
        *sums = [sum + a, sum + two, sum + (two + c), sum + (two + other)];
        sum = sums[3];
    }
    for (place, number) in rest.iter_mut().zip(last) {
        sum += number - level;
        *place = sum;
    }
    sums
}

#[cfg(test)]
#[path = "simd_sums_test.rs"]
mod tests;
