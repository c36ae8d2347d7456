//! The value of a rank, such as the median. The standard library's own choice, compiled for size, takes a time that grows
//! with the square of how often a value is repeated; the samples of a converter, and the pixels of a plain wall, repeat.

use std::cmp::Ordering;

/// Puts the value of a rank (from 0) in its place, no greater ones before it and no smaller ones behind it; it and those
/// before it. `None` where there are not so many values.
///
/// Quickselect with three parts (E. W. Dijkstra's Dutch national flag), so that repeated values are done with at once.
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
        let (mut smaller, mut next, mut greater) = (from, from, to);
        while next < greater {
            match order(values.get(next)?, &pivot) {
                Ordering::Less => {
                    values.swap(smaller, next);
                    smaller += 1;
                    next += 1;
                }
                Ordering::Equal => next += 1,
                Ordering::Greater => {
                    greater -= 1;
                    values.swap(next, greater);
                }
            }
        }
        if rank < smaller {
            to = smaller;
        } else if rank >= greater {
            from = greater;
        } else {
            break;
        }
    }
    let (before, rest) = values.split_at(rank);
    Some((before, *rest.first()?))
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

#[cfg(test)]
#[path = "rank_test.rs"]
mod tests;
