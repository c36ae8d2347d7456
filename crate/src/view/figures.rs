//! How a figure is made, and values in words: what every part of the view says in the same way.

use super::math::{Formula, bracket, op, row, symbol};
use super::types::Figure;
use crate::analysis::Measured;
use crate::quantity::{DecimalMark, Unit, fixed, in_unit, plain, plus_minus, short_form};

/// A figure without formula or source.
pub fn figure(id: &str, name: &str, symbol: &str, value: String, meaning: &str) -> Figure {
    Figure {
        id: id.to_owned(),
        name: name.to_owned(),
        symbol: symbol.to_owned(),
        value,
        meaning: meaning.to_owned(),
        formula: None,
        source: String::new(),
    }
}

impl Figure {
    /// The same with its formula.
    #[must_use]
    pub fn by(self, formula: Formula) -> Self {
        Self { formula: Some(formula), ..self }
    }

    /// The same with its source.
    #[must_use]
    pub fn from(self, source: &str) -> Self {
        Self { source: source.to_owned(), ..self }
    }
}

/// A measured value in short form, with its unit if one is named; empty if there is none.
pub fn measured(value: Option<&Measured>, unit: &str, mark: DecimalMark) -> String {
    value.map_or_else(String::new, |m| match m.uncertainty {
        Some(u) if u > 0.0 => short_form(m.value, Some(u), unit, mark),
        _ => format!("{} {unit}", plain(m.value, 6, mark)).trim_end().to_owned(),
    })
}

/// A value with its uncertainty where there is one.
pub fn with_u(value: f64, u: Option<f64>, unit: &str, mark: DecimalMark) -> String {
    match u {
        Some(u) => plus_minus(value, Some(u), unit, mark),
        None => format!("{} {unit}", plain(value, 6, mark)),
    }
}

/// A p-value in words and digits.
pub fn p_text(p: f64, mark: DecimalMark) -> String {
    if p < 0.0005 { format!("below {}", fixed(0.001, -3, mark)) } else { fixed(p, -3, mark) }
}

/// A probability in per cent, with the digits that it was typed with.
pub fn per_cent(probability: f64, mark: DecimalMark) -> String {
    in_unit(probability, Unit::PERCENT, mark)
}

/// Degrees of freedom: "∞" where they are infinite (GUM, G.6.4).
pub fn degrees_of_freedom(nu: Option<f64>, mark: DecimalMark) -> String {
    nu.map_or_else(|| "∞".to_owned(), |nu| plain(nu, 3, mark))
}

/// The probability of what is drawn at random being at least `least`.
pub fn probability(random: Vec<Formula>, least: Formula) -> Formula {
    row(vec![symbol("P"), bracket(row([random, vec![op("≥"), least]].concat()))])
}
