//! From a notebook to everything computed from it, once.
//!
//! [`analyse`] is pure and total: the same notebook gives the same digits, natively and in a browser, and what
//! can't be computed is a value that says why. Lengths are in metres, times in nanoseconds.
//!
//! Texts become numbers ([`read`]), rows distances and delays ([`rows`]), those a line ([`line`](mod@line)) seen
//! from several sides ([`checks`]) and its uncertainty taken apart ([`parts`]), that a speed ([`speed`]) with its
//! [`budget`]; [`notices`] looks over the whole.

pub mod budget;
mod cells;
pub mod checks;
pub mod delays;
pub mod evidence;
pub mod line;
pub mod notices;
pub mod parts;
pub mod read;
pub mod rows;
pub mod seal;
pub mod speed;
pub mod taken;
pub mod trials;
pub mod types;

pub use notices::{Notice, Section, Weight};
pub use parts::WhatIf;
pub use speed::C0;
pub use types::*;

use crate::air;
use crate::notebook::{Notebook, Page, RowId};
use crate::rail;
use crate::rail::Stand;

/// Computes everything from a notebook.
pub fn analyse(notebook: &Notebook) -> Analysis {
    analyse_page(notebook.page(), None)
}

/// Computes everything from a page, with one source of uncertainty made larger or smaller if asked.
pub fn analyse_page(page: &Page, what_if: Option<&WhatIf>) -> Analysis {
    let mut reader = read::Reader::new(page.decimal_mark);
    let bench = read::bench(page, &mut reader);
    let numbers = read_numbers(page, &mut reader);
    let ground = numbers.ground(page, &bench);
    let rows = rows::read(&ground, &mut reader);
    let air = air_reading(page, &bench, &reader);
    let line = line::fit(&ground, &rows, what_if, &mut reader);
    let probability = read::coverage(page, &mut reader);
    let beam_angle = read::beam_angle(page, &mut reader);
    read::trace_wishes(page, &mut reader);
    let beside = budget::Beside { u_air: air.u_group_index, beam_angle, probability, what_if };
    let speed = match &line {
        Ok(line) => speed::speed(page, line, &air, &beside),
        Err(refusal) => Err(refusal.clone()),
    };
    let walk = evidence::walk(page, &rows.points, line.as_ref().ok().map(|line| line.fit.slope));
    let seen = notices::Seen {
        ground: &ground,
        rows: &rows,
        line: line.as_ref().ok(),
        speed: speed.as_ref().ok(),
        walk: walk.as_ref(),
    };
    let notices = notices::notices(&seen);
    let mut analysis = Analysis {
        problems: reader.problems,
        rails: rail_stands(page, &numbers.rails, &numbers.stands),
        rows: rows.readings,
        air,
        line,
        speed,
        walk,
        notices,
        hidden: None,
    };
    if let Some(factor) = seal::factor(page.seal.as_ref()) {
        seal::cover(&mut analysis, factor);
    }
    analysis
}

/// A page read up to what its line starts from, without fit, checks and notices: for trials, and for plans, which
/// ask often.
pub struct Sight {
    /// The bench.
    pub bench: read::Bench,
    /// The rails; each is `page.rails` at the same place.
    pub rails: Vec<read::RailNumbers>,
    /// Where the rails stand.
    pub stands: Vec<Option<Stand>>,
    /// The rows.
    pub rows: rows::Rows,
    /// What goes into the fit, or why nothing does.
    pub setup: Result<line::Setup, Refusal>,
    /// Largest angle between beam and rails, rad.
    pub beam_angle: f64,
    /// What can't be read.
    pub problems: Vec<Problem>,
}

/// Reads a page up to what its line starts from.
pub fn sight(page: &Page) -> Sight {
    let mut reader = read::Reader::new(page.decimal_mark);
    let bench = read::bench(page, &mut reader);
    let numbers = read_numbers(page, &mut reader);
    let ground = numbers.ground(page, &bench);
    let rows = rows::read(&ground, &mut reader);
    let setup = line::setup(&ground, &rows, None, &mut reader);
    let beam_angle = read::beam_angle(page, &mut reader);
    let Numbers { rails, stands, .. } = numbers;
    Sight { bench, rails, stands, rows, setup, beam_angle, problems: reader.problems }
}

/// What rows are read against, beside the bench.
struct Numbers {
    rails: Vec<read::RailNumbers>,
    settings: Vec<read::SettingNumbers>,
    stands: Vec<Option<Stand>>,
    marks: evidence::Marks,
}

fn read_numbers(page: &Page, reader: &mut read::Reader) -> Numbers {
    let rails = read::rails(page, reader);
    let settings = read::settings(page, reader);
    let stands = rows::stands(page, &rails, &mut reader.problems);
    let marks = evidence::Marks::of(page, read::mark_uncertainty(page, reader));
    Numbers { rails, settings, stands, marks }
}

impl Numbers {
    fn ground<'a>(&'a self, page: &'a Page, bench: &'a read::Bench) -> rows::Ground<'a> {
        rows::Ground {
            page,
            bench,
            rails: &self.rails,
            stands: &self.stands,
            settings: &self.settings,
            marks: &self.marks,
        }
    }
}

fn air_reading(page: &Page, bench: &read::Bench, reader: &read::Reader) -> AirReading {
    let group_index = air::group_index(&bench.air, bench.wavelength_nm).map_err(|error| error.to_string());
    AirReading {
        temperature_c: bench.air.temperature_c,
        pressure_pa: bench.air.pressure_pa,
        humidity_percent: bench.air.humidity_percent,
        co2_ppm: bench.air.co2_ppm,
        wavelength_nm: bench.wavelength_nm,
        u_group_index: group_index
            .is_ok()
            .then(|| budget::u_air(bench, &read::air_limits(page, reader)))
            .flatten(),
        group_index,
    }
}

fn rail_stands(page: &Page, rails: &[read::RailNumbers], stands: &[Option<Stand>]) -> Vec<RailStand> {
    let each = page.rails.iter().zip(rails).zip(stands).enumerate();
    each.map(|(index, ((typed, numbers), stand))| {
        let placed = numbers.rail.as_ref().zip(stand.as_ref());
        RailStand {
            id: typed.id,
            name: typed.name_or_number(index),
            near: placed.and_then(|(rail, stand)| rail::near_end(rail, stand)),
            far: placed.and_then(|(rail, stand)| rail::far_end(rail, stand)),
            mark: stand.as_ref().map(|stand| {
                (stand.mark, Measured { value: stand.offset, uncertainty: Some(stand.u_offset()) })
            }),
            free: stand.as_ref().is_some_and(|stand| stand.free.contains(&index)),
        }
    })
    .collect()
}

/// The numbers on the page, from 1, of the rows named.
pub fn row_numbers(page: &Page, rows: &[RowId]) -> Vec<usize> {
    rows.iter().filter_map(|id| page.rows.iter().position(|row| row.id == *id)).map(|i| i + 1).collect()
}

/// "1", "1 and 2", "1, 2 and 3".
pub fn listed(numbers: &[usize]) -> String {
    let texts: Vec<String> = numbers.iter().map(ToString::to_string).collect();
    match texts.split_last() {
        None => String::new(),
        Some((last, [])) => last.clone(),
        Some((last, rest)) => format!("{} and {last}", rest.join(", ")),
    }
}

#[cfg(test)]
#[path = "mod_test.rs"]
mod tests;
