//! Whether a picture is white about an edge: a lamp that the screen reflects, say, which hides what is under it.

use super::super::picture::Reduced;
use super::super::plane::Plane;
use super::edge::ScreenEdge;

/// A pixel whose red, green and blue all have this level, of 255, shows nothing but that it is too bright.
const WHITE: f32 = 253.0;

/// Where more than this share of what is about an edge is white, it hides where the edge is (common practice, no source).
const HIDES: f32 = 0.1;

/// From this share of a screen on white is its ground (chosen here, no source): a reflection so large leaves no grid to find.
const GROUND: f32 = 0.7;

/// How far to both sides of an edge it is looked, divisions: as far as an edge was misplaced by a reflection on drawn pictures.
const BESIDE: f64 = 0.8;

/// Places looked at from side to side, and from top to bottom.
const PLACES: u32 = 24;

/// Whether so much is white about an edge that it may be anywhere there. A screen whose ground is white, as a screen's copy may
/// have it to save ink, shows its edges in other colours: there white hides nothing.
pub fn is_hidden(copy: &Reduced, plane: &Plane, edge: &ScreenEdge) -> bool {
    let (columns, rows) = (plane.corners().iter().map(|c| c.column), plane.corners().iter().map(|c| c.row));
    let about = [edge.column - BESIDE, edge.column + BESIDE];
    white_share(copy, plane, about, [edge.base, edge.peak]) > HIDES
        && white_share(copy, plane, ends(columns), ends(rows)) < GROUND
}

/// Which share of a part of the screen is white, from a column to another and from a row to another.
fn white_share(copy: &Reduced, plane: &Plane, columns: [f64; 2], rows: [f64; 2]) -> f32 {
    let along =
        |place: u32, [from, to]: [f64; 2]| from + (to - from) * (f64::from(place) + 0.5) / f64::from(PLACES);
    let places = (0..PLACES).flat_map(|x| (0..PLACES).map(move |y| (x, y)));
    let is_white = |(x, y): &(u32, u32)| {
        let at = plane.pixel([along(*x, columns), along(*y, rows)]);
        copy.at(at.x, at.y).iter().all(|level| *level >= WHITE)
    };
    places.filter(is_white).count() as f32 / (PLACES * PLACES) as f32
}

/// The least and the greatest of some places.
fn ends(places: impl Iterator<Item = f64>) -> [f64; 2] {
    places
        .fold([f64::INFINITY, f64::NEG_INFINITY], |[least, most], place| [least.min(place), most.max(place)])
}

#[cfg(test)]
#[path = "white_test.rs"]
mod tests;
