//! Marks proposed for a picture, for a person to accept or to move.

use serde::{Deserialize, Serialize};

use super::doubt::{self, Doubt};
use super::find::curve::Flat;
use super::find::edge::edge;
use super::find::lattice::{Lattice, Lines};
use super::find::thickness::thickness;
use super::find::white::is_hidden;
use super::mark::{Corner, PixelPoint};
use super::order::MarkedBefore;
use super::picture::{ENOUGH, PictureError, Pixels, Reduced, Shrinking};
use super::proposed::ProposedEdge;
use crate::words::Message;
use crate::{errors_as_data, message};

/// What is known of the screen before looking: its divisions.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Hint {
    /// Along the time axis.
    pub columns: u32,
    /// Downwards.
    pub rows: u32,
}

/// Divisions of a screen: fewer tell no grid, more are none that anyone reads.
const DIVISIONS: std::ops::RangeInclusive<u32> = 3..=24;

/// A picture smaller than this shows no grid, pixels.
const SMALLEST: usize = 64;

/// A grid with fewer of its stretches seen is not proposed.
pub(super) const SEEN: f64 = 0.45;

/// How far a crossing may lie off the plane of all crossings, divisions; farther it is something else.
const NEAR: f64 = 0.1;

/// Why no marks are proposed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub enum ProposeError {
    /// The bytes are no picture.
    Picture(PictureError),
    /// Divisions no screen has.
    Divisions {
        /// Columns stated.
        columns: u32,
        /// Rows stated.
        rows: u32,
    },
    /// No such grid is seen.
    NoGrid {
        /// Columns looked for.
        columns: u32,
        /// Rows looked for.
        rows: u32,
    },
}

errors_as_data!(ProposeError);

impl ProposeError {
    /// Why, and what to do.
    pub fn message(self) -> Message {
        match self {
            Self::Picture(error) => error.message(),
            Self::Divisions { columns, rows } => message!(
                "propose-divisions",
                columns = columns.to_string(),
                rows = rows.to_string(),
                least = DIVISIONS.start().to_string(),
                most = DIVISIONS.end().to_string()
            ),
            Self::NoGrid { columns, rows } => {
                message!("propose-no_grid", columns = columns.to_string(), rows = rows.to_string())
            }
        }
    }
}

impl From<PictureError> for ProposeError {
    fn from(error: PictureError) -> Self {
        Self::Picture(error)
    }
}

/// Marks proposed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Proposal {
    /// The grid's corners: from the top left along the time axis, and round.
    pub corners: [Corner; 4],
    /// The crossing in the grid's middle, or next to it, for a check of the lens.
    pub centre: Corner,
    /// Crossings in the middle of the left and of the right side, or next to it, where a lens shows more.
    pub sides: [Corner; 2],
    /// How sure the corners are, 0 to 1: the share of the grid's lines that was seen.
    pub confidence: f64,
    /// Whether corners and checks are to be looked at before they are taken.
    pub is_doubted: bool,
    /// The edges of A and of B, where a picture before tells them apart; else the earlier one first. None where no trace
    /// with an edge was found.
    pub edges: [Option<ProposedEdge>; 2],
    /// Why the grid or an edge is in doubt.
    pub doubts: Vec<Doubt>,
}

/// Whether the question makes sense.
pub(super) fn check(hint: Hint, size: [usize; 2]) -> Result<(), ProposeError> {
    let Hint { columns, rows } = hint;
    if !(DIVISIONS.contains(&columns) && DIVISIONS.contains(&rows)) {
        return Err(ProposeError::Divisions { columns, rows });
    }
    let [width, height] = size;
    if width < SMALLEST || height < SMALLEST {
        return Err(PictureError::TooSmall { width, height }.into());
    }
    Ok(())
}

/// The copy to look at, once the question makes sense.
pub(super) fn ready(picture: Pixels<'_>, hint: Hint) -> Result<Reduced, ProposeError> {
    check(hint, [picture.width, picture.height])?;
    Ok(picture.shrink(ENOUGH)?)
}

/// Looks for the grid, and for the traces with their edges. `before` tells A's edge from B's.
///
/// The time axis is taken to lie within some 30° of the picture's rows; where it does not, the proposal is in doubt.
///
/// # Errors
/// [`ProposeError`]: what is to be marked by hand.
pub fn propose(
    picture: Pixels<'_>,
    hint: Hint,
    before: Option<&MarkedBefore>,
) -> Result<Proposal, ProposeError> {
    propose_in(&ready(picture, hint)?, hint, before)
}

/// The same on a copy that was made before.
///
/// # Errors
/// As [`propose`].
pub fn propose_on(
    picture: &Shrinking,
    hint: Hint,
    before: Option<&MarkedBefore>,
) -> Result<Proposal, ProposeError> {
    let (copy, size) = picture.copy()?;
    check(hint, size)?;
    propose_in(copy, hint, before)
}

fn propose_in(copy: &Reduced, hint: Hint, before: Option<&MarkedBefore>) -> Result<Proposal, ProposeError> {
    let Hint { columns, rows } = hint;
    let FoundGrid { lattice, traces, mut doubts } =
        FoundGrid::of(copy, hint).ok_or(ProposeError::NoGrid { columns, rows })?;
    let is_doubted = !doubts.is_empty();
    let mut edges = traces.edges;
    doubts.extend(traces.doubts);
    if name(&mut edges, before) {
        doubts.push(Doubt::Order);
        edges.iter_mut().flatten().for_each(|edge| edge.is_doubted = true);
    }
    edges.iter_mut().flatten().for_each(|edge| edge.is_doubted |= is_doubted);
    let crossing = |place: [f64; 2]| {
        // Where it was seen, if near the plane; where the plane puts it otherwise.
        let at = lattice.seen_near(&lattice.plane, place, NEAR);
        let at = at.unwrap_or_else(|| lattice.plane.pixel(place));
        Corner { at: large(copy, at), column: place[0], row: place[1] }
    };
    let [centre, sides @ ..] = checked(hint);
    Ok(Proposal {
        corners: corners(hint).map(crossing),
        centre: crossing(centre),
        sides: sides.map(crossing),
        confidence: lattice.seen,
        is_doubted,
        edges,
        doubts,
    })
}

/// The corners of a grid: from the top left along the time axis, and round.
pub(super) fn corners(Hint { columns, rows }: Hint) -> [[f64; 2]; 4] {
    [[0, 0], [columns, 0], [columns, rows], [0, rows]].map(|place| place.map(f64::from))
}

/// The crossings by which the lens is checked: in the middle, and of the left and the right side.
pub(super) fn checked(Hint { columns, rows }: Hint) -> [[f64; 2]; 3] {
    [[columns / 2, rows / 2], [0, rows / 2], [columns, rows / 2]].map(|place| place.map(f64::from))
}

/// A place on a copy in the picture's pixels.
pub(super) fn large(copy: &Reduced, at: PixelPoint) -> PixelPoint {
    PixelPoint { x: at.x * copy.scale, y: at.y * copy.scale }
}

/// Whole pixels, at least one.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a part of a picture's height")]
fn pixels(length: f64) -> u32 {
    libm::round(length).max(1.0) as u32
}

/// Puts A's edge first, if it is told, or else the earlier one; gives whether that is in doubt.
fn name(edges: &mut [Option<ProposedEdge>; 2], before: Option<&MarkedBefore>) -> bool {
    let [Some(first), Some(second)] = &*edges else { return edges.iter().any(Option::is_some) };
    let order = before.and_then(|before| before.order(first, second));
    let is_first = order.map_or(first.divisions[0] <= second.divisions[0], |order| order.a_is_first);
    if !is_first {
        edges.swap(0, 1);
    }
    !order.is_some_and(|order| order.as_before)
}

/// A grid with the traces on it, and why the grid is in doubt.
struct FoundGrid {
    lattice: Lattice,
    traces: FoundEdges,
    doubts: Vec<Doubt>,
}

impl FoundGrid {
    fn of(copy: &Reduced, hint: Hint) -> Option<Self> {
        let Hint { columns, rows } = hint;
        let lines = Lines::of(copy);
        let level = level(&lines, hint);
        let is_clear = |(_, doubts): &(Lattice, Vec<Doubt>)| doubts.is_empty();
        let (lattice, mut doubts) = match level {
            Some(found) if is_clear(&found) => found,
            unclear => {
                let turned = self::level(&lines, Hint { columns: rows, rows: columns });
                match turned.filter(|found| columns != rows && is_clear(found)) {
                    Some((lattice, _)) => return Self::turned(copy, &lattice, hint),
                    None => unclear?,
                }
            }
        };
        let (width, height) = (copy.width as f64, copy.height as f64);
        let is_on = |at: PixelPoint| (0.0..=width).contains(&at.x) && (0.0..=height).contains(&at.y);
        if !corners(hint).iter().all(|place| is_on(lattice.plane.pixel(*place))) {
            doubts = vec![Doubt::Cut];
        }
        let traces = FoundEdges::on(copy, &lattice, hint);
        Some(Self { lattice, traces, doubts })
    }

    /// On a picture of a screen that lies on its side, to the side where the traces look more like ones.
    fn turned(copy: &Reduced, lattice: &Lattice, hint: Hint) -> Option<Self> {
        let [columns, rows] = [hint.columns, hint.rows].map(f64::from);
        let right = lattice.renamed(|[across, down]| [down, rows - across]);
        let left = lattice.renamed(|[across, down]| [columns - down, across]);
        let followed = [right, left].into_iter().flatten().map(|lattice| {
            let traces = FoundEdges::on(copy, &lattice, hint);
            Self { lattice, traces, doubts: vec![Doubt::Turned] }
        });
        followed.max_by(|a, b| a.traces.confidence().total_cmp(&b.traces.confidence()))
    }
}

/// A grid whose time axis lies along the picture's rows, and why it is in doubt.
fn level(lines: &[Lines; 2], Hint { columns, rows }: Hint) -> Option<(Lattice, Vec<Doubt>)> {
    let (lines, lattice) = Lines::most_promising(lines, columns, rows)?;
    let mut doubts = Vec::new();
    if lattice.seen < doubt::GRID {
        doubts.push(Doubt::Lines);
    }
    if !lines.ends(&lattice.plane, columns, rows) {
        doubts.push(Doubt::Border);
    }
    (lattice.seen >= SEEN).then_some((lattice, doubts))
}

/// The edges of both traces, and why any is in doubt.
#[derive(Default)]
struct FoundEdges {
    edges: [Option<ProposedEdge>; 2],
    doubts: Vec<Doubt>,
}

impl FoundEdges {
    fn on(copy: &Reduced, lattice: &Lattice, hint: Hint) -> Self {
        let Some(curves) = Flat::of(copy, &lattice.plane, hint.columns, hint.rows).curves() else {
            return Self::default();
        };
        let mut doubts = Vec::new();
        let edges = curves.map(|curve| {
            let edge = edge(&curve)?;
            let hidden = is_hidden(copy, &lattice.plane, &edge).then_some(Doubt::Edge);
            let doubt = doubt::of_edge(&edge, &curve).or(hidden);
            doubts.extend(doubt.filter(|doubt| !doubts.contains(doubt)));
            let divisions = [edge.column, edge.row];
            let pixel = |place| large(copy, lattice.plane.pixel(place));
            let [begins, ends] = edge.ends;
            Some(ProposedEdge {
                at: pixel(divisions),
                divisions,
                base: edge.base,
                peak: edge.peak,
                ends: [pixel([begins, edge.base]), pixel([ends, edge.peak])],
                thickness: thickness(copy, &lattice.plane, &curve, &edge).map(|it| pixels(it * copy.scale)),
                colour: curve.colour,
                confidence: edge.confidence,
                is_doubted: doubt.is_some(),
            })
        });
        Self { edges, doubts }
    }

    /// How sure both edges are, where both were found.
    fn confidence(&self) -> f64 {
        let clear = |edge: &ProposedEdge| if edge.is_doubted { 0.0 } else { edge.confidence };
        self.edges.iter().flatten().map(clear).sum()
    }
}

#[cfg(test)]
#[path = "propose_test.rs"]
mod tests;
