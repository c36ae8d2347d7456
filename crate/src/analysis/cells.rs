//! The cells of one row, read.

use super::place::Place;
use super::read::Reader;
use crate::message;
use crate::notebook::{Cell, Row, UncertaintyKind};
use crate::quantity::{Number, Unit};
use crate::words::Message;

/// The cells of one row.
pub struct Cells<'a, 'r> {
    /// The row.
    pub row: &'a Row,
    /// What reads its texts.
    pub reader: &'r mut Reader,
}

impl Cells<'_, '_> {
    /// Whether something stands in a cell.
    pub fn has(&self, cell: Cell) -> bool {
        !self.row.text(cell).trim().is_empty()
    }

    /// The cell, as a place in the notebook.
    pub fn place(&self, cell: Cell) -> Place {
        Place::Cell { row: self.row.id, cell }
    }

    /// The number in a cell, in the base unit, with the uncertainty that may be written behind it.
    pub fn number(&mut self, cell: Cell, unit: Unit) -> Option<Number> {
        self.reader.measured(self.place(cell), self.row.text(cell), unit)
    }

    /// A value with the standard uncertainty written behind it, or in a cell of its own, where it may be a limit.
    pub fn measured(&mut self, value: Cell, uncertainty: Cell, unit: Unit) -> Option<(f64, Option<f64>)> {
        let number = self.number(value, unit)?;
        let own = if self.has(uncertainty) {
            let (kind, number) = UncertaintyKind::written(self.row.text(uncertainty));
            Some(self.reader.uncertainty(self.place(uncertainty), number, unit, kind)?)
        } else {
            None
        };
        if own.is_some() && number.uncertainty.is_some() {
            self.note(uncertainty, message!("row-uncertainty_twice"));
            return None;
        }
        Some((number.value, own.or(number.uncertainty)))
    }

    /// Notes a problem at a cell.
    pub fn note(&mut self, cell: Cell, message: Message) {
        let place = self.place(cell);
        self.reader.note(place, message);
    }
}
