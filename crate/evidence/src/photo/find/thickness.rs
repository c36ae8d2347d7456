//! How thick a trace is, where it lies on its baseline before its edge.
//!
//! Across it, how much of its colour there is over the ground rises and falls again; its thickness is the full width at half
//! of the most. The ground is the median of what is seen across, of which a trace covers the smaller part. Through pixels
//! nothing is seen much thinner than one of them.

use super::super::picture::Reduced;
use super::super::plane::Plane;
use super::curve::{Curve, dot, less, medians};
use super::edge::{ScreenEdge, division, middle};

/// How far it is looked across a trace, either way, divisions; and the steps from end to end.
const ACROSS: f64 = 0.4;
const STEPS: usize = 160;

/// How far from its path a trace is strongest, at most, steps.
const NEAR: usize = STEPS / 8;

/// Farther from the baseline a trace does not lie on it; nearer to its edge it may rise already. Divisions.
const LEVEL: f64 = 0.1;

/// Where less than this share of a trace's colour is half of what is there, the trace is not.
const WEAK: f32 = 0.25;

/// Columns of samples in which the trace must be seen.
const LEAST: usize = 10;

/// The thickness of a trace, pixels of the copy: the median over the columns before its edge. None where too few show it.
pub fn thickness(copy: &Reduced, plane: &Plane, curve: &Curve, edge: &ScreenEdge) -> Option<f64> {
    let path = curve.rows.iter().enumerate().map(|(x, y)| [division(x as f64), division(*y as f64)]);
    let before = path.take_while(|[column, _]| *column < edge.ends[0] - LEVEL);
    let level = before.filter(|[_, row]| (row - edge.base).abs() <= LEVEL);
    let widths: Vec<f64> = level.filter_map(|place| width(copy, plane, curve.colour, place)).collect();
    (widths.len() >= LEAST).then(|| middle(&widths))
}

/// The full width at half of the most, pixels, of a trace of a colour over the ground, upright through a place on it.
fn width(copy: &Reduced, plane: &Plane, colour: [f32; 3], [column, row]: [f64; 2]) -> Option<f64> {
    let [top, bottom] = [-ACROSS, ACROSS].map(|off| plane.pixel([column, row + off]));
    let (right, down) = (bottom.x - top.x, bottom.y - top.y);
    let seen = |step: usize| {
        let share = step as f64 / STEPS as f64;
        copy.at(top.x + share * right, top.y + share * down)
    };
    let across: Vec<[f32; 3]> = (0..=STEPS).map(seen).collect();
    let ground = medians(&across);
    let own: Vec<f32> = across.iter().map(|seen| dot(less(*seen, ground), colour)).collect();
    let path = STEPS / 2;
    let peak = (path - NEAR..=path + NEAR).max_by(|a, b| own[*a].total_cmp(&own[*b]))?;
    let half = 0.5 * own[peak];
    if half < WEAK * dot(colour, colour) {
        return None;
    }
    let above = (0..peak).rev().find(|step| own[*step] < half)?;
    let below = (peak..=STEPS).find(|step| own[*step] < half)?;
    // Of the step in which it falls to the half, what lies beyond.
    let beyond =
        |outside: usize, inside: usize| f64::from((half - own[outside]) / (own[inside] - own[outside]));
    let steps = (below - above) as f64 - beyond(above, above + 1) - beyond(below, below - 1);
    Some(steps / STEPS as f64 * libm::hypot(right, down))
}

#[cfg(test)]
#[path = "thickness_test.rs"]
mod tests;
