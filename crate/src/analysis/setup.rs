//! What goes into the fit: the readings, and the error model over them.

use super::apparatus;
use super::context::RowContext;
use super::origin::{Origin, Quantity};
use super::parts::{self, Base, RowErrors, Shared, WhatIf, factor, noises, total};
use super::point::Point;
use super::read::Reader;
use super::rows::Rows;
use super::types::Refusal;
use crate::line::{self, Data, Dense, FreeColumn, Noise, SharedColumn, Stated};
use crate::message;
use crate::notebook::{ActsOn, NotebookState, RowId};

/// The line's input, and what is in it.
pub struct Setup {
    /// What goes into the engine.
    pub data: Data,
    /// Errors that each row has for itself, source by source; their sum is in `data`.
    pub noises: Vec<RowErrors>,
    /// Errors that rows share, in the order of the columns in `data`.
    pub shared: Vec<Shared>,
    /// The rails (by place) with a free column.
    pub free: Vec<usize>,
}

impl Setup {
    /// The covariances of rows that were stated to vary together.
    pub fn joint(&self) -> Option<&Dense> {
        match &self.data.noise {
            Noise::Stated(stated) => Some(&stated.dense).filter(|dense| !dense.is_empty()),
            Noise::Unstated => None,
        }
    }
}

/// What goes into the fit, with the covariances stated of rows together.
///
/// An error in proportion moves each row by a share of what it would have read without error. Taken of the readings
/// themselves it would favour small ones, and pull the slope down the more the more rows there are (G. D'Agostini,
/// Nucl. Instrum. Meth. A 346 (1994) 306). So it is taken of the line, fitted without such errors first.
///
/// # Errors
/// When some rows state an uncertainty and others don't, or there is a matrix that can't be used.
pub fn setup(
    context: &RowContext,
    rows: &Rows,
    joint: Result<Dense, Refusal>,
    what_if: Option<&WhatIf>,
    reader: &mut Reader,
) -> Result<Setup, Refusal> {
    let points = rows.points.as_slice();
    let (mut joint, unusable) = joint.map_or_else(|why| (Dense::default(), Some(why)), |joint| (joint, None));
    let larger = factor(what_if, &Origin::Matrices);
    joint.scale(larger * larger);
    let read = Base { x: points.iter().map(|p| p.x).collect(), y: points.iter().map(|p| p.y).collect() };
    let first = setup_on(context, rows, &joint, what_if, &read, reader);
    let first = unusable.map_or(first, Err)?;
    match first.base() {
        // What is wrong was noted the first time.
        Some(base) => {
            setup_on(context, rows, &joint, what_if, &base, &mut Reader::new(context.page.decimal_mark))
        }
        None => Ok(first),
    }
}

impl Setup {
    /// The rows on the line fitted without errors in proportion; none where there are no such errors, or no line.
    fn base(&self) -> Option<Base> {
        let Noise::Stated(stated) = &self.data.noise else { return None };
        let columns = self.shared.iter().zip(&stated.shared);
        let kept: Vec<SharedColumn> = columns
            .filter(|(shared, _)| shared.quantity != Quantity::Ratio)
            .map(|(_, column)| column.clone())
            .collect();
        if kept.len() == stated.shared.len() {
            return None;
        }
        let noise = Noise::Stated(Stated { shared: kept, ..stated.clone() });
        let fit = line::fit(&Data { noise, ..self.data.clone() }).ok()?;
        let x: Vec<f64> = fit.rows.iter().map(|row| row.true_x).collect();
        let y = x.iter().map(|x| fit.at(*x)).collect();
        Some(Base { x, y })
    }
}

fn setup_on(
    context: &RowContext,
    rows: &Rows,
    joint: &Dense,
    what_if: Option<&WhatIf>,
    base: &Base,
    reader: &mut Reader,
) -> Result<Setup, Refusal> {
    let (page, points) = (context.page, rows.points.as_slice());
    let x = points.iter().map(|p| p.x).collect();
    let y = points.iter().map(|p| p.y).collect();
    let free = free_rails(points);
    let columns = free.iter().map(|rail| free_column(points, |p| p.free.contains(rail))).collect();
    let stated = parts::stated(page, points, reader);
    let mut noises = noises(points, rows, context, &stated, base);
    let mut shared = apparatus::shared_errors(context, points, base);
    shared.extend(stated.iter().filter_map(|stated| stated.shared(base)));
    shared.retain(|shared| shared.column.x.iter().chain(&shared.column.y).any(|effect| *effect != 0.0));
    for noise in &mut noises {
        let factor = factor(what_if, &noise.origin);
        noise.u.iter_mut().for_each(|u| *u *= factor);
    }
    for shared in &mut shared {
        let factor = factor(what_if, &shared.origin);
        shared.u *= factor;
        shared.column.x.iter_mut().chain(&mut shared.column.y).for_each(|effect| *effect *= factor);
    }
    let noise = match without_uncertainty(points, &noises, joint).as_slice() {
        [] => Noise::Stated(Stated {
            ux: total(points, &noises, ActsOn::Distances),
            uy: total(points, &noises, ActsOn::Delays),
            cov_xy: Vec::new(),
            shared: shared.iter().map(|shared| shared.column.clone()).collect(),
            dense: joint.clone(),
        }),
        bare if bare.len() == points.len() && shared.is_empty() => Noise::Unstated,
        bare => return Err(some_unstated(page, bare)),
    };
    Ok(Setup { data: Data { x, y, noise, free: columns }, noises, shared, free })
}

/// A step of the rows that `behind` picks: the unknown is how much farther out they stand than read, m.
pub fn free_column(points: &[Point], behind: impl Fn(&Point) -> bool) -> FreeColumn {
    FreeColumn::InX(points.iter().map(|p| if behind(p) { -1.0 } else { 0.0 }).collect())
}

/// The free rails that any row stands behind, in order.
fn free_rails(points: &[Point]) -> Vec<usize> {
    let mut rails: Vec<usize> = points.iter().flat_map(|p| p.free.iter().copied()).collect();
    rails.sort_unstable();
    rails.dedup();
    rails
}

/// The rows that lack an uncertainty: those that state none at all, and those that state none of the distance (or of the
/// delay) where another row does. Left so, they would be treated as exact, and pull the line to themselves.
fn without_uncertainty(points: &[Point], noises: &[RowErrors], joint: &Dense) -> Vec<RowId> {
    let varies =
        |block: &[f64], i: usize| block.get(i * (points.len() + 1)).is_some_and(|variance| *variance != 0.0);
    let own = |(i, p): (usize, &Point), acts_on| match acts_on {
        ActsOn::Distances => p.ux.is_some() || varies(&joint.xx, i),
        ActsOn::Delays => p.uy.is_some() || varies(&joint.yy, i),
    };
    let known = |(i, p): (usize, &Point), acts_on| {
        own((i, p), acts_on)
            || noises.iter().any(|noise| noise.acts_on == acts_on && noise.u.get(i).is_some_and(|u| *u > 0.0))
    };
    let both = [ActsOn::Distances, ActsOn::Delays];
    let asked = both.map(|acts_on| points.iter().enumerate().any(|at| own(at, acts_on)));
    let lacks = |at: (usize, &Point)| {
        let known = both.map(|acts_on| known(at, acts_on));
        known == [false; 2] || known.iter().zip(asked).any(|(known, asked)| asked && !known)
    };
    points.iter().enumerate().filter(|at| lacks(*at)).map(|(_, p)| p.row).collect()
}

fn some_unstated(page: &NotebookState, bare: &[RowId]) -> Refusal {
    let rows = page.row_numbers(bare);
    let message = message!("refusal-some_unstated", n = rows.len(), rows = rows);
    Refusal::new("some_unstated", message).of_rows(bare.to_vec())
}
