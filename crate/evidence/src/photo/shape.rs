//! Whether marks can be corners of a plane at all: looked at before any fit, so that a bad mark has a name.

use super::error::PlaneError;
use super::mark::{Corner, Mark};

/// Two marks nearer than this share of the marks' extent are one place; three within it of a line are on the line.
const NEAR: f64 = 5e-3;

/// Names the marks that don't fit together.
pub fn examine(corners: &[Corner]) -> Result<(), PlaneError> {
    if corners.len() < 4 {
        return Err(PlaneError::TooFew { got: corners.len() });
    }
    let mark = |index| Mark::of(corners, index);
    let finite = |c: &Corner| [c.at.x, c.at.y, c.column, c.row].iter().all(|x| x.abs() < 1e9);
    if let Some(index) = corners.iter().position(|c| !finite(c)) {
        return Err(PlaneError::NotFinite { mark: mark(index) });
    }
    let seen: Vec<[f64; 2]> = corners.iter().map(|c| [c.at.x, c.at.y]).collect();
    let meant: Vec<[f64; 2]> = corners.iter().map(|c| [c.column, c.row]).collect();
    if let Some((i, j)) = coincident(&meant) {
        return Err(PlaneError::SameCrossing { first: mark(i), second: mark(j) });
    }
    if let Some((i, j)) = coincident(&seen) {
        return Err(PlaneError::SamePlace { first: mark(i), second: mark(j) });
    }
    if let Some(line) = in_line(&meant) {
        return Err(PlaneError::CrossingsOnOneLine { marks: line.into_iter().map(mark).collect() });
    }
    if let Some(line) = in_line(&seen) {
        return Err(PlaneError::OnOneLine { marks: line.into_iter().map(mark).collect() });
    }
    let whole = turning(&seen, &meant);
    if whole.kept == 0 && whole.turned > 0 {
        return Err(PlaneError::Mirrored);
    }
    if whole.turned > 0 {
        return Err(crossed(corners, seen, &meant));
    }
    Ok(())
}

/// How many triangles of marks keep the sense of turning of their crossings, and how many turn the other way. Seen
/// from before the screen all keep it: every mark lies on this side of the plane's horizon.
#[derive(Default)]
struct Turning {
    kept: usize,
    turned: usize,
}

fn turning(seen: &[[f64; 2]], meant: &[[f64; 2]]) -> Turning {
    let mut count = Turning::default();
    let (flat_seen, flat_meant) = (NEAR * extent(seen), NEAR * extent(meant));
    for (i, j, k) in triples(seen.len()) {
        let (a, b) = (height(seen, i, j, k), height(meant, i, j, k));
        // Flat triangles of crossings tell nothing; flat triangles of marks may be roundings.
        if a.abs() > flat_seen && b.abs() > flat_meant {
            if (a > 0.0) == (b > 0.0) {
                count.kept += 1;
            } else {
                count.turned += 1;
            }
        }
    }
    count
}

/// Which two marks to exchange, or which one is out of its place.
fn crossed(corners: &[Corner], mut seen: Vec<[f64; 2]>, meant: &[[f64; 2]]) -> PlaneError {
    let mark = |index| Mark::of(corners, index);
    for j in 1..seen.len() {
        for i in 0..j {
            seen.swap(i, j);
            let turning = turning(&seen, meant);
            seen.swap(i, j);
            if turning.turned == 0 {
                return PlaneError::Crossed { first: mark(i), second: mark(j) };
            }
        }
    }
    // The mark without which most of the rest agrees.
    let without = |out: usize| {
        let rest = |list: &[[f64; 2]]| -> Vec<_> {
            list.iter().enumerate().filter(|(i, _)| *i != out).map(|(_, at)| *at).collect()
        };
        turning(&rest(&seen), &rest(meant)).turned
    };
    // With four marks several will do; then it is the one amid the others.
    let amid = |out: usize| seen.iter().map(|at| distance(*at, seen[out])).sum::<f64>();
    let better = |i: &usize, j: &usize| without(*i).cmp(&without(*j)).then(amid(*i).total_cmp(&amid(*j)));
    PlaneError::OutOfPlace { mark: mark((0..seen.len()).min_by(better).unwrap_or(0)) }
}

fn triples(count: usize) -> impl Iterator<Item = (usize, usize, usize)> {
    (0..count).flat_map(move |k| (0..k).flat_map(move |j| (0..j).map(move |i| (i, j, k))))
}

fn distance(a: [f64; 2], b: [f64; 2]) -> f64 {
    libm::hypot(a[0] - b[0], a[1] - b[1])
}

/// The largest distance of a point from the first: a measure of the whole.
fn extent(points: &[[f64; 2]]) -> f64 {
    points.iter().map(|at| distance(*at, points[0])).fold(0.0, f64::max)
}

/// Signed distance of point k from the line through i and j.
fn height(points: &[[f64; 2]], i: usize, j: usize, k: usize) -> f64 {
    let ([ax, ay], [bx, by], [cx, cy]) = (points[i], points[j], points[k]);
    ((bx - ax) * (cy - ay) - (by - ay) * (cx - ax)) / distance(points[i], points[j]).max(f64::MIN_POSITIVE)
}

fn coincident(points: &[[f64; 2]]) -> Option<(usize, usize)> {
    let near = NEAR * extent(points);
    let pairs = (1..points.len()).flat_map(|j| (0..j).map(move |i| (i, j)));
    pairs.into_iter().find(|(i, j)| distance(points[*i], points[*j]) <= near)
}

/// The points on a line that holds all but at most one of them.
fn in_line(points: &[[f64; 2]]) -> Option<Vec<usize>> {
    let near = NEAR * extent(points);
    // Such a line goes through two of the first three.
    for (i, j) in [(0, 1), (0, 2), (1, 2)] {
        let on: Vec<usize> = (0..points.len())
            .filter(|k| *k == i || *k == j || height(points, i, j, *k).abs() <= near)
            .collect();
        if on.len() + 1 >= points.len() {
            return Some(on);
        }
    }
    None
}
