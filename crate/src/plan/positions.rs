//! The planned positions, read as rows are read.

use litemap::LiteMap;

use super::stop::{PlanContext, PlannedStop, first_row, with_rows};
use crate::analysis::{Place, prepare};
use crate::message;
use crate::notebook::{Cell, NotebookState, PlannedPosition, PositionId, Row};
use crate::quantity::{NumberError, Unit, parse_alone};
use crate::words::Message;

/// Rows that may be planned for one position.
const MOST: f64 = 50.0;

/// A planned position, read.
#[derive(Clone, Debug, PartialEq)]
pub struct Position {
    /// The position.
    pub id: PositionId,
    /// Place of the rail it names among the rails, if there is one of that name.
    pub rail: Option<usize>,
    /// Where it is; none while it can't be told.
    pub stop: Option<PlannedStop>,
    /// How many rows are to be read there.
    pub repeats: usize,
    /// What can't be read, with the cell of a row that it would stand in; the repeats stand under the remark.
    pub problems: Vec<(Cell, Message)>,
}

/// Reads the planned positions.
pub fn read(context: &PlanContext) -> Vec<Position> {
    let first = first_row(context.page);
    let mut rows = Vec::new();
    for (id, typed) in (first..).zip(&context.page.plan) {
        let texts = [(Cell::Rail, typed.rail.clone()), (Cell::Reading, typed.reading.clone())];
        rows.push(Row { id, cells: LiteMap::from_iter(texts), ..Row::default() });
    }
    let page = with_rows(context.page, rows, Vec::new());
    let prepared = prepare(&page, None);
    let mut positions = Vec::new();
    for (typed, reading) in context.page.plan.iter().zip(&prepared.rows.readings) {
        let mut problems = Vec::new();
        for problem in &prepared.problems {
            if let Place::Cell { row, cell } = problem.place
                && row == reading.id
            {
                problems.push((cell, problem.message.clone()));
            }
        }
        let rail = reading.rail.and_then(|rail| context.page.rail(rail)).map(|(place, _)| place);
        let stop = rail.zip(reading.distance).map(|(rail, distance)| PlannedStop {
            rail,
            reading: typed.reading.trim().to_owned(),
            distance: distance.value,
            time_base: time_base(context, typed, distance.value, &mut problems),
        });
        let repeats = repeats(context.page, typed).unwrap_or_else(|message| {
            problems.push((Cell::Remark, message));
            1
        });
        positions.push(Position { id: typed.id, rail, stop, repeats, problems });
    }
    positions
}

fn time_base(
    context: &PlanContext,
    typed: &PlannedPosition,
    distance: f64,
    problems: &mut Vec<(Cell, Message)>,
) -> String {
    let text = typed.time_base.trim();
    if context.time(text).is_some() {
        return text.to_owned();
    }
    if !text.is_empty() {
        problems.push((Cell::TimeBase, message!("plan-no_time_base", text = text)));
    }
    context.fastest(distance)
}

fn repeats(page: &NotebookState, typed: &PlannedPosition) -> Result<usize, Message> {
    let text = typed.repeats.trim();
    match parse_alone(text, page.decimal_mark, Unit::ONE) {
        Err(NumberError::Empty) => Ok(1),
        Ok(value) if value.fract() == 0.0 && (1.0..=MOST).contains(&value) =>
        {
            #[expect(
                clippy::cast_possible_truncation,
                clippy::cast_sign_loss,
                reason = "whole, from 1 to 50"
            )]
            Ok(value as usize)
        }
        _ => Err(message!("plan-no_repeats", text = text, most = MOST.to_string())),
    }
}

/// The places of the rows planned: each position as often as it is to be read.
pub fn stops(positions: &[Position]) -> Vec<PlannedStop> {
    let mut stops = Vec::new();
    for position in positions {
        for _ in 0..position.repeats {
            stops.extend(position.stop.clone());
        }
    }
    stops
}
