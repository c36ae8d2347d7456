//! Stated covariance matrices: what rows state of their uncertainties together.
//!
//! What such a matrix says of a row by itself, and of no other beside it, is that row's own uncertainty, and goes the way of
//! one that is typed in the row. What it says of rows together becomes one block of the fit's covariance, beside everything
//! else that is stated. So all that is stated goes one road.

use super::place::Place;
use super::point::{DelaySource, Point, full_uy};
use super::read::Reader;
use super::rows::{Rows, full_ux};
use super::types::Refusal;
use crate::line::Dense;
use crate::message;
use crate::notebook::{CovarianceOf, NotebookState, StatedCovariance};
use crate::quantity::{Unit, parse_alone};
use crate::words::Message;

/// Reads the matrices stated, and gives the rows what these say of each by itself. One whose rows state an uncertainty of
/// their own is left out, which the result says.
///
/// # Errors
/// When one can't be used: without it its rows would stand there with no uncertainty, or another than was stated.
pub fn read(page: &NotebookState, rows: &mut Rows, reader: &mut Reader) -> Result<Dense, Refusal> {
    if page.covariances.is_empty() {
        return Ok(Dense::default());
    }
    let mut blocks = Blocks::of(rows.points.len());
    let mut refusal = None;
    for stated in &page.covariances {
        let place = Place::Covariance { acts_on: stated.acts_on };
        if stated_in_rows(stated, &rows.points) {
            reader.note(place, message!("covariance-own_uncertainty"));
        } else if let Err(message) = blocks.take(stated, &rows.points, reader) {
            reader.note(place, message.clone());
            refusal.get_or_insert_with(|| Refusal::new("covariance", message).of_rows(stated.rows.clone()));
        }
    }
    if let Some(refusal) = refusal {
        return Err(refusal);
    }
    for place in 0..rows.points.len() {
        blocks.settle(place, rows);
    }
    Ok(blocks.dense())
}

/// Whether a row of the matrix states its own uncertainty, too.
fn stated_in_rows(stated: &StatedCovariance, points: &[Point]) -> bool {
    let own = |p: &Point| match stated.acts_on {
        CovarianceOf::Distances => p.ux.is_some(),
        CovarianceOf::Delays => p.uy.is_some(),
        CovarianceOf::Both => false,
    };
    points.iter().any(|p| own(p) && stated.rows.contains(&p.row))
}

/// The covariances of all points, block by block.
struct Blocks {
    n: usize,
    xx: Vec<f64>,
    yy: Vec<f64>,
    xy: Vec<f64>,
    /// The points whose distance, and whose delay, a matrix speaks of.
    known: [Vec<bool>; 2],
}

impl Blocks {
    fn of(n: usize) -> Self {
        let block = vec![0.0; n * n];
        let none = vec![false; n];
        Self { n, xx: block.clone(), yy: block.clone(), xy: block, known: [none.clone(), none] }
    }

    /// Takes a matrix in.
    fn take(&mut self, stated: &StatedCovariance, points: &[Point], reader: &Reader) -> Result<(), Message> {
        let n = stated.rows.len();
        if stated.matrix.len() != n || stated.matrix.iter().any(|row| row.len() != n) {
            return Err(message!("covariance-shape", n = n));
        }
        let mut named = stated.rows.clone();
        named.sort_unstable();
        named.dedup();
        if named.len() < n {
            return Err(message!("covariance-row_twice"));
        }
        let direct = |p: &Point| p.rail.is_none() && p.delay_source == DelaySource::Directly;
        if stated.acts_on == CovarianceOf::Both && points.iter().any(|p| !direct(p) && named.contains(&p.row))
        {
            return Err(message!("covariance-not_direct"));
        }
        let places: Vec<Option<usize>> =
            stated.rows.iter().map(|row| points.iter().position(|p| p.row == *row)).collect();
        let [of_distance, of_delay] = &mut self.known;
        let (block, known) = match stated.acts_on {
            CovarianceOf::Distances => (&mut self.xx, Some(of_distance)),
            CovarianceOf::Delays => (&mut self.yy, Some(of_delay)),
            CovarianceOf::Both => (&mut self.xy, None),
        };
        if let Some(known) = known {
            places.iter().flatten().for_each(|place| known[*place] = true);
        }
        for (row, texts) in places.iter().zip(&stated.matrix) {
            for (column, text) in places.iter().zip(texts) {
                let value = parse_alone(text, reader.mark(), Unit::ONE).map_err(|error| error.message())?;
                if let Some((i, j)) = row.zip(*column) {
                    block[i * self.n + j] = value;
                }
            }
        }
        Ok(())
    }

    /// Parts what is stated of the errors of a point: if they vary with no other error they become its own uncertainty,
    /// else what it states itself becomes part of the block.
    fn settle(&mut self, place: usize, rows: &mut Rows) {
        let (n, point) = (self.n, &mut rows.points[place]);
        let own = place * (n + 1);
        let others = || (0..n).filter(|other| *other != place);
        let joined =
            |block: &[f64]| others().any(|k| block[place * n + k] != 0.0 || block[k * n + place] != 0.0);
        let crossed =
            [(0..n).any(|k| self.xy[place * n + k] != 0.0), (0..n).any(|k| self.xy[k * n + place] != 0.0)];
        let both = [(&mut self.xx, &mut point.ux), (&mut self.yy, &mut point.uy)];
        let mut whole = [None; 2];
        for (k, (block, u)) in both.into_iter().enumerate() {
            if crossed[k] || joined(block) {
                block[own] += u.take().map_or(0.0, |u| u * u);
                whole[k] = Some(block[own].max(0.0).sqrt());
            } else if self.known[k][place] && block[own] >= 0.0 {
                *u = Some(block[own].sqrt());
                block[own] = 0.0;
            }
        }
        let [u_distance, u_delay] = [whole[0].or(point.ux), whole[1].or(point.uy)];
        let Some(reading) = rows.readings.iter_mut().find(|reading| reading.id == point.row) else { return };
        if let Some(distance) = &mut reading.distance {
            distance.uncertainty = full_ux(u_distance, &point.effects);
        }
        if let Some(delay) = &mut reading.delay {
            delay.uncertainty = full_uy(point.y, u_delay, point.time_base, &point.corners);
        }
    }

    /// Blocks in which nothing is stated are empty.
    fn dense(self) -> Dense {
        let some = |block: Vec<f64>| if block.iter().any(|v| *v != 0.0) { block } else { Vec::new() };
        Dense { xx: some(self.xx), yy: some(self.yy), xy: some(self.xy) }
    }
}
