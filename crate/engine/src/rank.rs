//! The value of a rank, such as the median. The standard library's own choice, compiled for size, takes a time that grows
//! with the square of how often a value is repeated; the samples of a converter, and the pixels of a plain wall, repeat.

use std::cmp::Ordering;

/// Puts the value of a rank (from 0) in its place, no greater ones before it and no smaller ones behind it; it and those
/// before it. `None` where there are not so many values.
///
/// Quickselect, its parts made without a branch for each value (N. Lomuto's way, in J. Bentley, "Programming Pearls", from
/// memory), which a processor could only guess. Where none is less than the pivot, all that equal it are done with at once.
pub fn select<T: Copy>(
    values: &mut [T],
    rank: usize,
    order: impl Fn(&T, &T) -> Ordering,
) -> Option<(&[T], T)> {
    let (mut from, mut to) = (0, values.len());
    if rank >= to {
        return None;
    }
    while to - from > 1 {
        let pivot = *median_of_three(values, [from, from.midpoint(to), to - 1], &order)?;
        let smaller = from + first(values.get_mut(from..to)?, |value| order(value, &pivot).is_lt());
        if rank < smaller {
            to = smaller;
        } else if smaller > from {
            from = smaller;
        } else {
            // The pivot is the least.
            from += first(values.get_mut(from..to)?, |value| order(value, &pivot).is_le());
            if rank < from {
                break;
            }
        }
    }
    let (before, rest) = values.split_at(rank);
    Some((before, *rest.first()?))
}

/// Puts those values first that are such; gives how many there are.
#[inline]
fn first<T: Copy>(values: &mut [T], is: impl Fn(&T) -> bool) -> usize {
    let mut count = 0;
    for next in 0..values.len() {
        values.swap(next, count);
        count += usize::from(is(&values[count]));
    }
    count
}

fn median_of_three<'a, T>(
    values: &'a [T],
    places: [usize; 3],
    order: &impl Fn(&T, &T) -> Ordering,
) -> Option<&'a T> {
    let [a, b, c] = [values.get(places[0])?, values.get(places[1])?, values.get(places[2])?];
    let (low, high) = if order(a, b).is_le() { (a, b) } else { (b, a) };
    Some(if order(c, low).is_le() {
        low
    } else if order(c, high).is_ge() {
        high
    } else {
        c
    })
}

/// The median; of an even number the mean of the two in the middle. `None` of no values. They are put in another order: sorting
/// them all takes ten times as long.
pub fn median(values: &mut [f64]) -> Option<f64> {
    let half = values.len() / 2;
    let (_, upper) = select(values, half, f64::total_cmp)?;
    if values.len() % 2 == 1 {
        return Some(upper);
    }
    let (_, lower) = select(values, half - 1, f64::total_cmp)?;
    Some(lower + 0.5 * (upper - lower))
}

#[cfg(test)]
#[path = "rank_test.rs"]
mod tests;
