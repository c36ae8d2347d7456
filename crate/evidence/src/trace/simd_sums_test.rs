//! Side by side, against one after the other.

use super::*;

/// Whole numbers, whose sums are exact in any order: a linear congruential sequence, whose constants are of no import.
fn numbers(count: usize) -> Vec<f64> {
    let mut state = 7_u32;
    let mut random = || {
        state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        f64::from(state >> 16) - 30_000.0
    };
    (0..count).map(|_| random()).collect()
}

#[test]
fn of_any_length_they_are_those_of_a_plain_loop() {
    for count in 0..40 {
        let (ones, others) = (numbers(count + 1), numbers(count).split_off(count / 3));
        let pairs = || ones.iter().zip(&others).map(|(one, other)| (*one, *other));
        let by_hand = pairs().fold([0.0; 2], |[sum, product], (a, b)| [sum + a, product + a * b]);
        assert_eq!(totals(&ones, &others, |a, b| [a, a * b]), by_hand);
        let lowest = pairs().map(|(a, b)| a - b).fold(f64::INFINITY, f64::min);
        let highest = pairs().map(|(a, b)| a - b).fold(f64::NEG_INFINITY, f64::max);
        assert_eq!(least(&ones, &others, |a, b| [a - b, b - a]), [lowest, -highest]);
        let sums = running(&ones, 3.0);
        assert_eq!(sums.len(), ones.len() + 1);
        for (index, sum) in sums.iter().enumerate() {
            assert_eq!(*sum, ones[..index].iter().map(|number| number - 3.0).sum::<f64>());
        }
    }
}

#[test]
fn what_is_no_number_is_never_the_least() {
    let mut numbers = numbers(20);
    numbers[3] = f64::NAN;
    assert!(least(&numbers, &numbers, |one, _| [one])[0].is_finite());
}
