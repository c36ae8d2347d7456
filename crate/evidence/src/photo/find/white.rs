//! Whether a picture is white about an edge: a lamp that the screen reflects, say, which hides what is under it.

use super::super::picture::Reduced;
use super::super::plane::Plane;
use super::edge::ScreenEdge;

/// A pixel whose red, green and blue all have this level, of 255, shows nothing but that it is too bright.
const WHITE: f32 = 253.0;

/// Where more than this share of what is about an edge is white, it hides where the edge is (common practice, no source).
const HIDES: f32 = 0.1;

/// How far to both sides of an edge it is looked, divisions: as far as an edge was misplaced by a reflection on drawn pictures.
const BESIDE: f64 = 0.8;

/// Places looked at from side to side, and from baseline to peak.
const PLACES: u32 = 24;

/// Whether so much is white about an edge that it may be anywhere there.
pub fn is_hidden(copy: &Reduced, plane: &Plane, edge: &ScreenEdge) -> bool {
    let along =
        |place: u32, from: f64, to: f64| from + (to - from) * (f64::from(place) + 0.5) / f64::from(PLACES);
    let places = (0..PLACES).flat_map(|x| (0..PLACES).map(move |y| (x, y)));
    let is_white = |(x, y): &(u32, u32)| {
        let column = along(*x, edge.column - BESIDE, edge.column + BESIDE);
        let at = plane.pixel([column, along(*y, edge.base, edge.peak)]);
        copy.at(at.x, at.y).iter().all(|level| *level >= WHITE)
    };
    let white = places.filter(is_white).count();
    white as f32 > HIDES * (PLACES * PLACES) as f32
}

#[cfg(test)]
#[path = "white_test.rs"]
mod tests;
