//! The figures that came with a notebook in its bundle (`line.csv`), held against those computed from its readings.

use serde::Deserialize;
use slope_evidence::decimal::Decimal;

/// By how much a figure may differ: another version may add up in another order.
const RELATIVE: f64 = 1e-9;

/// A figure with all its digits.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct GivenFigure {
    /// Identifier, as in `line.csv`.
    pub id: String,
    /// Its value.
    pub value: f64,
    /// Its standard uncertainty, if it has one.
    pub uncertainty: Option<f64>,
}

/// The identifiers of the figures whose value or uncertainty is another in the table than the one computed. A figure that the
/// table lacks is no difference: an earlier version may not have had it.
///
/// The first cell and the last three (value, uncertainty, unit) are never in quotes, so that no reader of CSV is needed.
pub(super) fn differing(table: &str, computed: &[GivenFigure]) -> Vec<String> {
    let differs = |record: &str| {
        let (id, rest) = record.split_once(',')?;
        let mut cells = rest.rsplit(',').skip(1);
        let (u, value) = (cells.next()?, cells.next()?);
        let figure = computed.iter().find(|figure| figure.id == id)?;
        (!agrees(figure, value, u)).then(|| id.to_owned())
    };
    table.lines().filter_map(differs).collect()
}

fn agrees(figure: &GivenFigure, value: &str, u: &str) -> bool {
    alike(value, Some(figure.value)) && alike(u, figure.uncertainty)
}

fn alike(text: &str, computed: Option<f64>) -> bool {
    match (Decimal::read(text).map(|decimal| decimal.to_f64()), computed) {
        (Some(stored), Some(computed)) => (stored - computed).abs() <= RELATIVE * computed.abs(),
        (None, None) => text.is_empty(),
        _ => false,
    }
}

#[cfg(test)]
#[path = "stored_test.rs"]
mod tests;
