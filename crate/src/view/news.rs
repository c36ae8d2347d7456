//! What of a view is new since it was last handed over: one edit leaves most rows as they were.

use serde::Serialize;

use super::types::{RowView, View};

/// A view whose rows are told apart from it.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct News<'a> {
    /// The view without its rows.
    #[cfg_attr(not(target_arch = "wasm32"), ts(type = "Omit<View, 'rows'>"))]
    pub view: &'a View,
    /// What is new of each row; none where it is as it was.
    pub rows: Vec<Option<RowNews<'a>>>,
}

/// What is new of a row.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
#[serde(untagged)]
pub enum RowNews<'a> {
    /// All of it.
    Whole(&'a RowView),
    /// What follows from it, and nothing else: one edit moves the residuals of all rows, whose cells stay as they are.
    Outputs(Outputs<'a>),
}

/// What follows from a row.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Outputs<'a> {
    /// As [`RowView::distance`].
    pub distance: &'a str,
    /// As [`RowView::delay`].
    pub delay: &'a str,
    /// As [`RowView::residual`].
    pub residual: &'a str,
}

/// What is new of each row since they were told.
pub fn row_news<'a>(rows: &'a [RowView], told: &[RowView]) -> Vec<Option<RowNews<'a>>> {
    let each = rows.iter().enumerate().map(|(place, row)| match told.get(place) {
        Some(told) if has_same_inputs(row, told) => {
            let outputs = Outputs::of(row);
            (outputs != Outputs::of(told)).then_some(RowNews::Outputs(outputs))
        }
        _ => Some(RowNews::Whole(row)),
    });
    each.collect()
}

impl<'a> Outputs<'a> {
    fn of(row: &'a RowView) -> Self {
        Self { distance: &row.distance, delay: &row.delay, residual: &row.residual }
    }
}

/// Whether all but [`Outputs`] is the same. Every field is named, so that one more does not compile until it is said
/// whether it is an input.
fn has_same_inputs(row: &RowView, told: &RowView) -> bool {
    let RowView {
        id,
        number,
        state,
        cells,
        evidence,
        struck,
        lacks,
        notices,
        distance: _,
        delay: _,
        residual: _,
    } = row;
    *id == told.id
        && *number == told.number
        && *state == told.state
        && *cells == told.cells
        && *evidence == told.evidence
        && *struck == told.struck
        && *lacks == told.lacks
        && *notices == told.notices
}

#[cfg(test)]
#[path = "news_test.rs"]
mod tests;
