//! Where a class lost its uncertainty: the components of all budgets side by side.

use std::collections::BTreeMap;

use serde::Serialize;
use slope_engine::rank::median;
use slope_evidence::decimal::{Decimal, fixed};
use slope_evidence::trace::DecimalMark;

use super::given::{Given, GivenPart};

/// A component that is neither the largest of a notebook nor, in the middle, so many percent of u²(c) is not told.
const LEAST: f64 = 0.05;

/// A component over all budgets of a class.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Lost {
    /// Which, as given.
    pub component: usize,
    /// The median of its share of u²(c), percent; of a budget that does not have it, 0.
    pub share: f64,
    /// The same as written.
    pub text: String,
    /// In how many budgets it is the largest.
    pub largest: usize,
}

/// Numbers the components of all budgets anew, so that those whose names differ by a decimal mark alone are one, the first of
/// them. `names` holds each name as it crosses, by its number.
pub fn same_with_either_mark(all: &mut [Given], names: &[String]) {
    let mut known = BTreeMap::new();
    let first: Vec<usize> = names
        .iter()
        .enumerate()
        .map(|(place, name)| *known.entry(with_points(name)).or_insert(place))
        .collect();
    for part in all.iter_mut().flat_map(|one| &mut one.parts) {
        if let Some(first) = first.get(part.component) {
            part.component = *first;
        }
    }
}

/// A name whose numbers have decimal points.
fn with_points(name: &str) -> String {
    let mut text = String::with_capacity(name.len());
    let mut letters = name.chars().peekable();
    let mut before = ' ';
    while let Some(letter) = letters.next() {
        let is_mark =
            letter == ',' && before.is_ascii_digit() && letters.peek().is_some_and(char::is_ascii_digit);
        text.push(if is_mark { '.' } else { letter });
        before = letter;
    }
    text
}

/// The components of all budgets, the one with the largest share in the middle first; and how many budgets there are.
pub(super) fn lost(all: &[Given], mark: DecimalMark) -> (Vec<Lost>, usize) {
    let budgets: Vec<Vec<(usize, f64)>> =
        all.iter().map(|one| one.parts.iter().filter_map(GivenPart::read).collect()).collect();
    let budgets: Vec<Vec<(usize, f64)>> = budgets.into_iter().filter(|parts| !parts.is_empty()).collect();
    let components = budgets.iter().flatten().map(|(component, _)| component + 1).max().unwrap_or(0);
    let mut found: Vec<Lost> =
        (0..components).filter_map(|component| of(component, &budgets, mark)).collect();
    found.sort_by(|one, other| other.share.total_cmp(&one.share).then(other.largest.cmp(&one.largest)));
    (found, budgets.len())
}

impl GivenPart {
    fn read(&self) -> Option<(usize, f64)> {
        Some((self.component, Decimal::read(self.share.strip_suffix('%')?)?.to_f64()))
    }
}

fn of(component: usize, budgets: &[Vec<(usize, f64)>], mark: DecimalMark) -> Option<Lost> {
    let share_in = |parts: &[(usize, f64)]| {
        parts.iter().filter(|part| part.0 == component).map(|part| part.1).sum::<f64>()
    };
    let largest = |parts: &&Vec<(usize, f64)>| {
        parts
            .iter()
            .fold(None, |most: Option<&(usize, f64)>, part| {
                most.filter(|most| most.1 >= part.1).or(Some(part))
            })
            .is_some_and(|most| most.0 == component)
    };
    let mut shares: Vec<f64> = budgets.iter().map(|parts| share_in(parts)).collect();
    let share = median(&mut shares)?;
    let largest = budgets.iter().filter(largest).count();
    (share >= LEAST || largest > 0).then(|| Lost {
        component,
        share,
        text: format!("{}\u{a0}%", fixed(share, -1, mark)),
        largest,
    })
}

#[cfg(test)]
#[path = "budgets_test.rs"]
mod tests;
