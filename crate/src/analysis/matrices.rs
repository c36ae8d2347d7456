//! Stated covariance matrices, and everything else put into one with them.

use super::parts::{RowErrors, Shared, total};
use super::place::Place;
use super::point::Point;
use super::read::Reader;
use crate::line::{Dense, SharedColumn};
use crate::message;
use crate::notebook::{ActsOn, NotebookState, StatedCovariance};
use crate::quantity::Unit;

/// A stated covariance matrix, with the places of its rows among the points.
pub struct Matrix {
    acts_on: ActsOn,
    places: Vec<Option<usize>>,
    values: Vec<f64>,
}

impl Matrix {
    /// Whether it states the variance of a point's distance or delay.
    pub fn covers(&self, acts_on: ActsOn, point: usize) -> bool {
        self.acts_on == acts_on && self.places.contains(&Some(point))
    }
}

/// Reads the matrices stated; one that can't be used is left out, with a note at its place.
pub fn read(page: &NotebookState, points: &[Point], reader: &mut Reader) -> Vec<Matrix> {
    page.covariances.iter().filter_map(|stated| covariance(stated, points, reader)).collect()
}

fn covariance(stated: &StatedCovariance, points: &[Point], reader: &mut Reader) -> Option<Matrix> {
    let place = Place::Covariance { acts_on: stated.acts_on };
    let n = stated.rows.len();
    if stated.matrix.len() != n || stated.matrix.iter().any(|row| row.len() != n) {
        reader.note(place, message!("covariance-shape", n = n));
        return None;
    }
    let own = |p: &Point| match stated.acts_on {
        ActsOn::Distances => p.ux,
        ActsOn::Delays => p.uy,
    };
    if points.iter().any(|p| stated.rows.contains(&p.row) && own(p).is_some()) {
        reader.note(place, message!("covariance-own_uncertainty"));
        return None;
    }
    let texts = stated.matrix.iter().flatten();
    let values =
        texts.map(|text| reader.number(place.clone(), text, Unit::ONE)).collect::<Option<Vec<f64>>>()?;
    let places = stated.rows.iter().map(|row| points.iter().position(|p| p.row == *row)).collect();
    Some(Matrix { acts_on: stated.acts_on, places, values })
}

/// Everything in one dense covariance matrix: rows' own variances, shared columns, stated matrices.
pub fn dense(points: &[Point], noises: &[RowErrors], shared: &[Shared], matrices: &[Matrix]) -> Dense {
    let n = points.len();
    let block = |own: Vec<f64>, part: &dyn Fn(&SharedColumn) -> &Vec<f64>, acts_on: ActsOn| {
        let mut block = vec![0.0; n * n];
        let mut put = |i: usize, j: usize, value: f64| {
            if let Some(entry) = block.get_mut(i * n + j) {
                *entry += value;
            }
        };
        for (i, own) in own.iter().enumerate() {
            put(i, i, own * own);
        }
        for shared in shared {
            for (i, a) in part(&shared.column).iter().enumerate() {
                for (j, b) in part(&shared.column).iter().enumerate() {
                    put(i, j, a * b);
                }
            }
        }
        for matrix in matrices.iter().filter(|m| m.acts_on == acts_on) {
            let m = matrix.places.len();
            for (place, value) in matrix.values.iter().enumerate() {
                let at = |k: usize| matrix.places.get(k).copied().flatten();
                if let Some((i, j)) = at(place / m).zip(at(place % m)) {
                    put(i, j, *value);
                }
            }
        }
        block
    };
    Dense {
        xx: block(total(points, noises, ActsOn::Distances), &|c| &c.x, ActsOn::Distances),
        yy: block(total(points, noises, ActsOn::Delays), &|c| &c.y, ActsOn::Delays),
        xy: Vec::new(),
    }
}
