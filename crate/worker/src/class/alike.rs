//! Notebooks that share readings, digit for digit: pointed out with care, never judged.

use serde::Serialize;

use super::given::Given;

/// Fewer rows alike than this may well be chance.
const LEAST_ALIKE: usize = 3;

/// That readings are the same, digit for digit, in another notebook.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Alike {
    /// The place of the other.
    pub notebook: usize,
    /// How many rows are the same.
    pub rows: usize,
}

/// With which others each shares readings: at least [`LEAST_ALIKE`] rows, and at least half of the fewer of both.
pub(super) fn alike(all: &[Given]) -> Vec<Vec<Alike>> {
    let known = all.iter().flat_map(|one| &one.readings).max().map_or(0, |largest| largest + 1);
    let mut with: Vec<Vec<usize>> = vec![Vec::new(); known];
    for (place, one) in all.iter().enumerate() {
        for reading in &one.readings {
            if with[*reading].last() != Some(&place) {
                with[*reading].push(place);
            }
        }
    }
    let length = |place: usize| all.get(place).map_or(0, |one| one.readings.len());
    let enough = |one: usize, other: usize, rows: usize| {
        one != other && rows >= LEAST_ALIKE && 2 * rows >= length(one).min(length(other))
    };
    let of = |(one, given): (usize, &Given)| {
        let mut rows = vec![0_usize; all.len()];
        for other in given.readings.iter().flat_map(|reading| &with[*reading]) {
            rows[*other] += 1;
        }
        let each = rows.into_iter().enumerate().filter(|(other, rows)| enough(one, *other, *rows));
        each.map(|(notebook, rows)| Alike { notebook, rows }).collect()
    };
    all.iter().enumerate().map(of).collect()
}
