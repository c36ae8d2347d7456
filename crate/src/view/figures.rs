//! How a figure is made, and values in words: what every part of the view says in the same way.

use super::math::Formula;
use super::types::Figure;
use crate::analysis::MeasuredValue;
use crate::quantity::{DecimalMark, Unit, in_unit, plain, short_form};
use crate::words::Value;

/// A figure that says nothing of itself yet.
pub fn figure(id: &str, name: impl Into<Value>, symbol: &str, value: impl Into<Value>) -> Figure {
    named(id, name.into(), symbol, value.into())
}

// This and what is added below are not inlined: figures are large, and copies of one at each step cost the core more than
// calls.
#[inline(never)]
fn named(id: &str, name: Value, symbol: &str, value: Value) -> Figure {
    Figure {
        id: id.to_owned(),
        name,
        symbol: symbol.to_owned(),
        value,
        meaning: Vec::new(),
        formula: None,
        source: None,
    }
}

impl Figure {
    /// The same with what it means, after what was said of it before.
    #[must_use]
    pub fn means(self, meaning: impl Into<Value>) -> Self {
        self.told(meaning.into())
    }

    #[inline(never)]
    fn told(mut self, meaning: Value) -> Self {
        self.meaning.push(meaning);
        self
    }

    /// The same with its formula.
    #[must_use]
    #[inline(never)]
    pub fn by(mut self, formula: Formula) -> Self {
        self.formula = Some(formula);
        self
    }

    /// The same with its source: a citation, or where it has words, a message.
    #[must_use]
    pub fn from(self, source: impl Into<Value>) -> Self {
        self.cited(source.into())
    }

    #[inline(never)]
    fn cited(mut self, source: Value) -> Self {
        self.source = Some(source);
        self
    }
}

/// A measured value in short form, with its unit if one is named; empty if there is none.
pub fn measured(value: Option<&MeasuredValue>, unit: &str, mark: DecimalMark) -> String {
    value.map_or_else(String::new, |m| short_form(m.value, m.uncertainty.filter(|u| *u > 0.0), unit, mark))
}

/// A value with its standard uncertainty in brackets, where there is one: ± is kept for expanded ones (JCGM 100:2008,
/// 7.2.2).
pub fn with_u(value: f64, u: Option<f64>, unit: &str, mark: DecimalMark) -> String {
    match u {
        Some(u) => short_form(value, Some(u), unit, mark),
        None => format!("{}\u{a0}{unit}", plain(value, 6, mark)),
    }
}

/// A probability in per cent, with the digits that it was typed with.
pub fn per_cent(probability: f64, mark: DecimalMark) -> String {
    undivided(probability, Unit::PERCENT, mark)
}

/// A value as [`in_unit`] writes it, with no line end between number and unit.
pub fn undivided(value: f64, unit: Unit, mark: DecimalMark) -> String {
    in_unit(value, unit, mark).replace(' ', "\u{a0}")
}

/// Degrees of freedom: "∞" where they are infinite (GUM, G.6.4).
pub fn degrees_of_freedom(nu: Option<f64>, mark: DecimalMark) -> String {
    nu.map_or_else(|| "∞".to_owned(), |nu| plain(nu, 3, mark))
}
