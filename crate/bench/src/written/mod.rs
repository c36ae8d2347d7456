//! What a person writes of a run on a bench with rails, in plain numbers, and the mistakes that are made in it.
//!
//! A [`Sheet`] is a notebook without a notebook's form: who makes one of it prints the numbers. Sound sheets come from
//! [`drawn`] benches, whose stated uncertainties are true; [`slips`] puts one mistake into a sheet.

// Benches over wide ranges, and the sheet of a run on one.
pub mod drawn;

// Mistakes, one at a time.
pub mod slips;

use crate::rails::ReadJoint;

/// What a person writes of a run. Lengths are metres, times nanoseconds, unless it is said otherwise.
#[derive(Clone, Debug, PartialEq)]
pub struct Sheet {
    /// The rails, from the splitter outwards.
    pub rails: Vec<SheetRail>,
    /// The rows, in the order in which they were taken.
    pub rows: Vec<SheetRow>,
    /// Whether a mirror is said to ride on the carriage.
    pub mirror: bool,
    /// Small divisions in a division.
    pub small: f64,
    /// Half-width within which an edge is said to be read, divisions.
    pub half_width: f64,
    /// Divisions across the screen.
    pub screen_width: f64,
    /// From one pulse to the next.
    pub period: f64,
    /// Relative standard uncertainty of the time base.
    pub u_time_base: f64,
    /// A relative standard uncertainty stated of all delays beside it.
    pub u_clock: Option<f64>,
    /// Whether uncertainties are written down at all.
    pub stated: bool,
}

/// A rail as it is written down.
#[derive(Clone, Debug, PartialEq)]
pub struct SheetRail {
    /// Metres in one unit of its ruler.
    pub unit: f64,
    /// The same as it is written down: another one where the unit is wrong.
    pub unit_written: f64,
    /// Whether readings are said to grow away from the splitter.
    pub grows: bool,
    /// First and last mark.
    pub span: (f64, f64),
    /// Standard uncertainty of one reading.
    pub u_reading: f64,
    /// Relative standard uncertainty of its scale.
    pub u_scale: f64,
    /// The mark whose place is known.
    pub mark: f64,
    /// How it is known.
    pub joint: ReadJoint,
}

/// A row as it is written down.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SheetRow {
    /// The rail, from 0.
    pub rail: usize,
    /// The reading, in the ruler's own unit.
    pub reading: f64,
    /// Decimals it is written with.
    pub reading_decimals: usize,
    /// Time per division.
    pub time_base: f64,
    /// Edge A, divisions.
    pub a: f64,
    /// Edge B, divisions.
    pub b: f64,
    /// Decimals the edges are written with.
    pub edge_decimals: usize,
    /// Where the carriage really stood.
    pub distance: f64,
}

impl SheetRow {
    /// The delay as it is written down.
    pub fn delay(&self) -> f64 {
        (self.b - self.a) * self.time_base
    }

    /// Makes the second edge come later by so much.
    pub fn later(&mut self, by: f64) {
        self.b += by / self.time_base;
    }
}

impl Sheet {
    /// Standard uncertainty of a row's delay with that of its place, as written down: about.
    pub fn u_delay(&self, row: &SheetRow) -> f64 {
        let edges = self.half_width * (2.0_f64 / 3.0).sqrt() * row.time_base;
        let place = self.rails.get(row.rail).map_or(0.0, |rail| rail.u_reading) * self.per_metre();
        libm::hypot(edges, place)
    }

    /// Nanoseconds of light for a metre of rail.
    pub fn per_metre(&self) -> f64 {
        if self.mirror { 6.671 } else { 3.336 }
    }
}
