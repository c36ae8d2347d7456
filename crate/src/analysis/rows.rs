//! Rows to distances and delays.
//!
//! A row says where the carriage stood (a reading on a rail, or a distance) and how late the second edge came
//! (two edges on a screen, or a delay). What is said twice, or not at all, keeps the row out of the line and
//! says so.

use super::cells::Cells;
use super::context::RowContext;
use super::delays::{Timing, delay, timing};
use super::point::{Point, full_uy};
use super::read::{BenchNumbers, Reader, ruler_unit};
use super::row_error::RowError;
use super::types::{MeasuredValue, RowPart, RowReading};
use crate::message;
use crate::notebook::{Cell, Row, RowId};
use crate::quantity::{Number, Unit};
use crate::rail::Source;
use crate::screen::{Scatter, pooled_scatter};

/// All rows, read.
#[derive(Clone, Debug, PartialEq)]
pub struct Rows {
    /// What each row says, in the order of the page.
    pub readings: Vec<RowReading>,
    /// The rows that can take part in the line, in the order of the page.
    pub points: Vec<Point>,
    /// The rows struck out that could otherwise take part.
    pub struck: Vec<Point>,
    /// Scatter of repeated screen readings, pooled.
    pub scatter: Option<Scatter>,
    /// What was typed for the notices to look at.
    pub typed: Vec<Typed>,
}

/// What a row says on the screen and on the ruler, as far as it can be read.
#[derive(Clone, Debug, PartialEq)]
pub struct Typed {
    /// The row.
    pub row: RowId,
    /// Place of the rail among the rails.
    pub rail: Option<usize>,
    /// The rail reading.
    pub reading: Option<Number>,
    /// The edges, divisions.
    pub edges: Vec<f64>,
}

/// A row half read: cells in numbers, edges not yet a delay (their scatter is pooled over all rows first).
struct Draft<'a> {
    row: &'a Row,
    rail: Option<usize>,
    reading: Option<Number>,
    position: Result<RowPosition, RowError>,
    timing: Result<Timing, RowError>,
    edges: Vec<f64>,
}

struct RowPosition {
    x: f64,
    ux: Option<f64>,
    effects: Vec<(Source, f64)>,
    free: Vec<usize>,
}

/// Reads all rows.
pub fn read(context: &RowContext, reader: &mut Reader) -> Rows {
    let drafts: Vec<Draft> = context.page.rows.iter().map(|row| draft(row, context, reader)).collect();
    let scatter =
        pooled_scatter(drafts.iter().filter(|d| d.row.struck.is_none()).filter_map(|d| match &d.timing {
            Ok(Timing::Screen { edges, .. }) => Some(edges),
            _ => None,
        }));
    let mut rows =
        Rows { readings: Vec::new(), points: Vec::new(), struck: Vec::new(), scatter, typed: Vec::new() };
    for (index, draft) in drafts.iter().enumerate() {
        let point = point(draft, &context.bench, scatter);
        rows.readings.push(reading(index, draft, &point, context));
        rows.typed.push(Typed {
            row: draft.row.id,
            rail: draft.rail,
            reading: draft.reading,
            edges: draft.edges.clone(),
        });
        match (point, &draft.row.struck) {
            (Ok(point), None) => rows.points.push(point),
            (Ok(point), Some(_)) => rows.struck.push(point),
            (Err(_), _) => {}
        }
    }
    rows
}

fn draft<'a>(row: &'a Row, context: &RowContext, reader: &mut Reader) -> Draft<'a> {
    let mut cells = Cells { row, reader };
    let (rail, reading, position) = position(&mut cells, context);
    let (edges, timing) = timing(&mut cells, context);
    Draft { row, rail, reading, position, timing, edges }
}

type RowPlace = (Option<usize>, Option<Number>, Result<RowPosition, RowError>);

fn position(cells: &mut Cells, context: &RowContext) -> RowPlace {
    if cells.has(Cell::Distance) {
        if cells.has(Cell::Reading) {
            cells.note(Cell::Distance, RowError::PlaceTwice.message());
            return (None, None, Err(RowError::PlaceTwice));
        }
        let position = cells
            .measured(Cell::Distance, Cell::DistanceUncertainty, Unit::METRE)
            .map(|(x, ux)| RowPosition { x, ux, effects: Vec::new(), free: Vec::new() })
            .ok_or(RowError::DistanceUnreadable);
        return (None, None, position);
    }
    let rail = rail_of(cells, context);
    let index = rail.as_ref().ok().copied();
    let unit = index.and_then(|i| context.page.rails.get(i)).map_or(Unit::CENTIMETRE, |r| ruler_unit(r.unit));
    if !cells.has(Cell::Reading) {
        return (index, None, Err(RowError::NoReading));
    }
    if cells.has(Cell::DistanceUncertainty) {
        cells.note(Cell::DistanceUncertainty, message!("row-distance_uncertainty_idle"));
    }
    let Some(reading) = cells.number(Cell::Reading, unit) else {
        return (index, None, Err(RowError::ReadingUnreadable));
    };
    let position = rail.and_then(|index| {
        let stand = context.stands.get(index).and_then(Option::as_ref);
        let stand = stand.ok_or(RowError::RailUnplaced)?;
        Ok(RowPosition {
            x: stand.distance(reading.value),
            ux: Some(reading.uncertainty.unwrap_or(stand.u_reading)),
            effects: stand.effects_at(reading.value),
            free: stand.free.clone(),
        })
    });
    (index, Some(reading), position)
}

/// The rail that a row names; the only one there is if it names none.
fn rail_of(cells: &mut Cells, context: &RowContext) -> Result<usize, RowError> {
    let name = cells.row.text(Cell::Rail).trim().to_owned();
    if name.is_empty() {
        return match context.page.rails.len() {
            1 => Ok(0),
            0 => Err(RowError::NoRail),
            _ => Err(RowError::RailUnnamed),
        };
    }
    let names: Vec<String> =
        context.page.rails.iter().enumerate().map(|(i, rail)| rail.name_or_number(i)).collect();
    let is_called = |index: usize, other: &str| {
        // On the way to another name, rows still call it by the one before.
        let before = context.page.rails.get(index).and_then(|rail| rail.called.as_deref());
        [Some(other), before].into_iter().flatten().any(|one| one.eq_ignore_ascii_case(&name))
    };
    let mut called = names.iter().enumerate().filter(|(index, other)| is_called(*index, other));
    let why = match (called.next(), called.next()) {
        (Some((index, _)), None) => return Ok(index),
        (Some(_), Some(_)) => RowError::RailAmbiguous { name },
        (None, _) => RowError::RailUnknown { name, names },
    };
    cells.note(Cell::Rail, why.message());
    Err(why)
}

fn point(draft: &Draft, bench: &BenchNumbers, scatter: Option<Scatter>) -> Result<Point, RowError> {
    let position = draft.position.as_ref().map_err(Clone::clone)?;
    let timing = draft.timing.as_ref().map_err(Clone::clone)?;
    let delay = delay(timing, bench, scatter);
    Ok(Point {
        row: draft.row.id,
        x: position.x,
        y: delay.y,
        ux: position.ux,
        uy: delay.uy,
        type_a: delay.type_a,
        effects: position.effects.clone(),
        rail: draft.rail,
        free: position.free.clone(),
        time_base: delay.time_base,
        delay_source: delay.delay_source,
        corners: delay.corners,
    })
}

fn reading(index: usize, draft: &Draft, point: &Result<Point, RowError>, context: &RowContext) -> RowReading {
    let part = if draft.row.struck.is_some() {
        RowPart::Struck
    } else if is_blank(draft.row) {
        RowPart::Empty
    } else {
        match point {
            Ok(_) => RowPart::Used,
            Err(lacks) => RowPart::Incomplete { lacks: lacks.clone() },
        }
    };
    let time_per_division = match &draft.timing {
        Ok(Timing::Screen { setting, .. } | Timing::Picture { setting, .. }) => {
            Some(setting.time_per_division)
        }
        _ => None,
    };
    RowReading {
        id: draft.row.id,
        number: index + 1,
        part,
        rail: draft.rail.and_then(|i| context.page.rails.get(i)).map(|rail| rail.id),
        reading: draft.reading.map(|number| number.value),
        time_per_division,
        distance: draft
            .position
            .as_ref()
            .ok()
            .map(|p| MeasuredValue { value: p.x, uncertainty: full_ux(p.ux, &p.effects) }),
        delay: delay_of(draft, &context.bench, point),
    }
}

/// A row is blank while nothing but what a new row begins with was typed.
fn is_blank(row: &Row) -> bool {
    let told = [Cell::EdgeA, Cell::EdgeB, Cell::Distance, Cell::Delay, Cell::Remark, Cell::Reading];
    row.evidence.is_none() && told.iter().all(|cell| row.text(*cell).trim().is_empty())
}

/// Standard uncertainty of a distance, shared parts included.
pub fn full_ux(ux: Option<f64>, effects: &[(Source, f64)]) -> Option<f64> {
    let shared: f64 = effects.iter().map(|(_, effect)| effect * effect).sum();
    match ux {
        None if effects.is_empty() => None,
        own => Some((own.unwrap_or(0.0) * own.unwrap_or(0.0) + shared).sqrt()),
    }
}

fn delay_of(draft: &Draft, bench: &BenchNumbers, point: &Result<Point, RowError>) -> Option<MeasuredValue> {
    let timing = draft.timing.as_ref().ok()?;
    if let Ok(point) = point {
        return Some(MeasuredValue { value: point.y, uncertainty: point.full_uy() });
    }
    let delay = delay(timing, bench, None);
    let uncertainty = full_uy(delay.y, delay.uy, delay.time_base, &delay.corners);
    Some(MeasuredValue { value: delay.y, uncertainty })
}
