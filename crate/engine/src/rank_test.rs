#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;

#[test]
fn every_rank_is_that_of_the_sorted_values() {
    // A linear congruential sequence, whose constants are of no import, cut to few values so that many repeat.
    let mut state = 1_u32;
    let mut random = move || {
        state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        state >> 16
    };
    for (length, kinds) in [(1, 1), (2, 5), (7, 3), (40, 4), (101, 1000), (300, 2)] {
        let values: Vec<u32> = (0..length).map(|_| random() % kinds).collect();
        let mut sorted = values.clone();
        sorted.sort_unstable();
        for rank in 0..values.len() {
            let mut values = values.clone();
            let (before, value) = select(&mut values, rank, u32::cmp).unwrap();
            assert_eq!(Some(&value), sorted.get(rank));
            assert!(before.len() == rank && before.iter().all(|v| *v <= value));
            assert!(values.iter().skip(rank).all(|v| *v >= value));
        }
        assert!(select(&mut values.clone(), values.len(), u32::cmp).is_none());
    }
}

#[test]
fn a_million_equal_values_are_looked_at_twice() {
    let mut compared = std::cell::Cell::new(0_u32);
    let count = &compared;
    let order = |a: &u8, b: &u8| {
        count.set(count.get() + 1);
        a.cmp(b)
    };
    assert_eq!(select(&mut vec![7_u8; 1_000_000], 500_000, order).unwrap().1, 7);
    assert!(*compared.get_mut() < 2_000_010);
}
