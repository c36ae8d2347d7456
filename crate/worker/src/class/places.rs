//! Places at which the notebooks of a class lie off their lines together: a mark that everybody misreads is within the
//! uncertainty of each, and shows only over all of them.
//!
//! | symbol | meaning |
//! | --- | --- |
//! | w | normalized residual of a row (W. Baarda, A Testing Procedure for Use in Geodetic Networks, 1968) |
//! | s | of a notebook, 1.4826 times the median of its \|w\|, at least 1: where stated uncertainties are too small, its rows scatter more |
//! | ψ | Σ w/(s·√k) over the k rows of a notebook at the place, cut off at ±3, so that one blunder is not the class (P. J. Huber, Ann. Math. Statist. 35 (1964) 73) |
//! | z | Σ ψ/√n over the n notebooks that were read at the place |
//!
//! - Without a common fault each w is normal about 0 with the standard deviation 1, and so is z, or less spread: the cut and s
//!   make it smaller. That holds for readings of their own: of notebooks that share readings one is looked at, since the same
//!   scatter twice would pass for a fault.
//! - A place stands out where \|z\| is beyond the quantile that m places together pass in one class of a hundred: each at
//!   1 − (1 − 0.01)^(1/m), which holds for correlated normal numbers too (Z. Šidák, J. Am. Stat. Assoc. 62 (1967) 626).
//! - A fault at one place turns every line and moves all others. So the place that stands out most is named, each line laid
//!   anew without its rows there, and looked again. Such a line is weighted by 1/u² with the uncertainties that the page shows:
//!   what rows share is in them, so w is then rather too small.
//!
//! Papers and formulas from memory.

use slope_engine::distribution::normal_upper_quantile;
use slope_engine::rank::median;

use super::rows::{BenchPlace, LineRow};

/// In how many classes without a common fault a place may stand out all the same.
const FALSE_ALARMS: f64 = 0.01;
/// Where ψ is cut off.
const CUT: f64 = 3.0;
/// From the median of |w| to the standard deviation of a normal w.
const NORMAL: f64 = 1.4826;
/// More are not named: then it is not marks that are misread.
const MOST: usize = 5;
/// Rows that a line needs to have residuals.
const LEAST_ROWS: usize = 3;

/// A place at which the class lies off its lines.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Off {
    pub place: BenchPlace,
    /// The notebooks that were read there.
    pub notebooks: usize,
    /// Those that lie on the side on which the class lies.
    pub together: usize,
    /// The median of their normalized residuals.
    pub normalized: f64,
    /// The median of their residuals, ns; none where seals cover all.
    pub residual: Option<f64>,
}

/// How far a row lies off a line.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Left {
    place: BenchPlace,
    normalized: f64,
    residual: Option<f64>,
}

/// What a notebook says of a place.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Said {
    place: BenchPlace,
    psi: f64,
    normalized: f64,
    residual: Option<f64>,
}

/// Every place at which the class lies off its lines, the one that stands out most first; none where no two notebooks were
/// read at one place.
pub(super) fn off(notebooks: &[Vec<LineRow>]) -> Option<Vec<Off>> {
    let mut said = all_said(notebooks, &[]);
    let tested = by_place(&said).filter(|some| some.len() >= 2).count();
    if tested == 0 {
        return None;
    }
    let limit = normal_upper_quantile(share_of_each(FALSE_ALARMS, tested) / 2.0);
    let mut found: Vec<Off> = Vec::new();
    let mut named: Vec<BenchPlace> = Vec::new();
    while found.len() < MOST {
        let Some(most) = by_place(&said)
            .filter(|some| some.len() >= 2)
            .max_by(|one, other| z(one).abs().total_cmp(&z(other).abs()))
        else {
            break;
        };
        if z(most).abs() <= limit {
            break;
        }
        found.extend(told(most));
        named.extend(most.first().map(|one| one.place));
        said = all_said(notebooks, &named);
    }
    Some(found)
}

/// The rate of each of so many that together have a rate.
fn share_of_each(rate: f64, count: usize) -> f64 {
    -libm::expm1(libm::log1p(-rate) / count as f64)
}

fn z(said: &[Said]) -> f64 {
    said.iter().map(|one| one.psi).sum::<f64>() / (said.len() as f64).sqrt()
}

fn told(said: &[Said]) -> Option<Off> {
    let side = z(said).signum();
    let mut normalized: Vec<f64> = said.iter().map(|one| one.normalized).collect();
    let mut residuals: Vec<f64> = said.iter().filter_map(|one| one.residual).collect();
    Some(Off {
        place: said.first()?.place,
        notebooks: said.len(),
        together: said.iter().filter(|one| one.psi * side > 0.0).count(),
        normalized: median(&mut normalized)?,
        residual: median(&mut residuals),
    })
}

/// What all notebooks say of each place but those named, place by place.
fn all_said(notebooks: &[Vec<LineRow>], named: &[BenchPlace]) -> Vec<Said> {
    let mut all: Vec<Said> = notebooks.iter().flat_map(|rows| said(left(rows, named))).collect();
    all.sort_by_key(|one| one.place);
    all
}

fn by_place(said: &[Said]) -> impl Iterator<Item = &[Said]> {
    said.chunk_by(|one, other| one.place == other.place)
}

/// What a notebook says of each place.
fn said(mut left: Vec<Left>) -> Vec<Said> {
    let mut sizes: Vec<f64> = left.iter().map(|row| row.normalized.abs()).collect();
    let s = median(&mut sizes).map_or(1.0, |size| (NORMAL * size).max(1.0));
    left.sort_by_key(|row| row.place);
    let each = left.chunk_by(|one, other| one.place == other.place);
    each.filter_map(|rows| {
        let k = rows.len() as f64;
        let sum: f64 = rows.iter().map(|row| row.normalized).sum();
        let residuals: Option<f64> = rows.iter().map(|row| row.residual).sum();
        Some(Said {
            place: rows.first()?.place,
            psi: (sum / (s * k.sqrt())).clamp(-CUT, CUT),
            normalized: sum / k,
            residual: residuals.map(|sum| sum / k),
        })
    })
    .collect()
}

/// The rows but for those at places named, off a line laid without these; off the notebook's own where none is named.
fn left(rows: &[LineRow], named: &[BenchPlace]) -> Vec<Left> {
    let some: Vec<&LineRow> = rows.iter().filter(|row| !named.contains(&row.place)).collect();
    if some.len() == rows.len() {
        let own =
            |row: &&LineRow| Left { place: row.place, normalized: row.normalized, residual: row.residual };
        return some.iter().map(own).collect();
    }
    laid_anew(&some)
}

/// Residuals off the weighted straight line; nothing for too few rows, or rows at one distance.
fn laid_anew(rows: &[&LineRow]) -> Vec<Left> {
    let stated = rows.iter().all(|row| row.u > 0.0);
    let weight = |row: &LineRow| if stated { row.u.powi(-2) } else { 1.0 };
    let sum = |of: &dyn Fn(&LineRow) -> f64| rows.iter().map(|row| weight(row) * of(row)).sum::<f64>();
    let all = sum(&|_| 1.0);
    let (x, y) = (sum(&|row| row.distance) / all, sum(&|row| row.delay) / all);
    let square = sum(&|row| (row.distance - x).powi(2));
    if rows.len() < LEAST_ROWS || square <= 0.0 {
        return Vec::new();
    }
    let slope = sum(&|row| (row.distance - x) * (row.delay - y)) / square;
    let residual = |row: &LineRow| row.delay - y - slope * (row.distance - x);
    let scatter =
        if stated { 1.0 } else { (sum(&|row| residual(row).powi(2)) / (rows.len() - 2) as f64).sqrt() };
    rows.iter()
        .filter_map(|row| {
            let free = 1.0 - weight(row) * (1.0 / all + (row.distance - x).powi(2) / square);
            let normalized = residual(row) * (weight(row) / free).sqrt() / scatter;
            let told = row.residual.map(|_| residual(row));
            normalized.is_finite().then_some(Left { place: row.place, normalized, residual: told })
        })
        .collect()
}

#[cfg(test)]
#[path = "places_test.rs"]
mod tests;
