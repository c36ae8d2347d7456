//! The planned positions, read as rows are read.

use litemap::LiteMap;

use super::spot::{Ground, Spot, first_row, with_rows};
use crate::analysis::{Place, sight};
use crate::notebook::{Cell, Page, PlannedPosition, PositionId, RailId, Row, RowId};
use crate::quantity::{NumberError, Unit, parse};

/// Rows that may be planned for one position.
const MOST: f64 = 50.0;

/// A planned position, read.
#[derive(Clone, Debug, PartialEq)]
pub struct Position {
    /// The position.
    pub id: PositionId,
    /// The rail it names, if there is one of that name.
    pub rail: Option<RailId>,
    /// Where it is; none while it can't be told.
    pub spot: Option<Spot>,
    /// How many rows are to be read there.
    pub repeats: usize,
    /// What can't be read, with the cell of a row that it would stand in; the repeats stand under the remark.
    pub problems: Vec<(Cell, String)>,
}

/// Reads the planned positions.
pub fn read(ground: &Ground) -> Vec<Position> {
    let plan = &ground.page.plan;
    let rows = (first_row(ground.page)..).zip(plan).map(|(id, position)| unread(id, position)).collect();
    let seen = sight(&with_rows(ground.page, rows, Vec::new()));
    let readings = plan.iter().zip((first_row(ground.page)..).zip(&seen.rows.readings));
    readings
        .map(|(typed, (row, reading))| {
            let at_row = seen.problems.iter().filter_map(|problem| match problem.place {
                Place::Cell { row: at, cell } if at == row => Some((cell, problem.message.clone())),
                _ => None,
            });
            let mut problems: Vec<(Cell, String)> = at_row.collect();
            let distance = reading.distance.map(|distance| distance.value);
            let rail = ground.page.rails.iter().position(|rail| Some(rail.id) == reading.rail);
            let spot = rail.zip(distance).map(|(rail, distance)| Spot {
                rail,
                reading: typed.reading.trim().to_owned(),
                distance,
                time_base: time_base(ground, typed, distance, &mut problems),
            });
            let repeats = repeats(ground.page, typed).unwrap_or_else(|message| {
                problems.push((Cell::Remark, message));
                1
            });
            Position { id: typed.id, rail: reading.rail, spot, repeats, problems }
        })
        .collect()
}

fn unread(id: RowId, position: &PlannedPosition) -> Row {
    let cells = [(Cell::Rail, &position.rail), (Cell::Reading, &position.reading)];
    let cells = cells.into_iter().map(|(cell, text)| (cell, text.clone())).collect::<LiteMap<_, _>>();
    Row { id, cells, struck: None }
}

fn time_base(
    ground: &Ground,
    typed: &PlannedPosition,
    distance: f64,
    problems: &mut Vec<(Cell, String)>,
) -> String {
    let text = typed.time_base.trim();
    if ground.time(text).is_some() {
        return text.to_owned();
    }
    if !text.is_empty() {
        problems.push((
            Cell::TimeBase,
            format!("“{text}” is no time per division: write a number above zero, in ns"),
        ));
    }
    ground.fastest(distance)
}

fn repeats(page: &Page, typed: &PlannedPosition) -> Result<usize, String> {
    let text = typed.repeats.trim();
    match parse(text, page.decimal_mark, Unit::ONE).map(|number| number.value) {
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
        _ => Err(format!("“{text}”: a whole number of rows from 1 to {MOST} is needed")),
    }
}

/// The places of the rows planned: each position as often as it is to be read.
pub fn spots(positions: &[Position]) -> Vec<Spot> {
    let each = positions.iter().filter_map(|position| Some((position.spot.as_ref()?, position.repeats)));
    each.flat_map(|(spot, repeats)| std::iter::repeat_n(spot.clone(), repeats)).collect()
}
