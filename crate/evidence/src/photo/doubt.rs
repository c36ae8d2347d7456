//! What of a proposal is not to be taken without being looked at, and why.

use serde::{Deserialize, Serialize};

use super::find::curve::Curve;
use super::find::edge::ScreenEdge;

/// A grid of whose stretches of line a smaller share is seen is in doubt. On simulated photographs grids that were right
/// had at least 0.837, and but one in twelve of those that were wrong had more than 0.787.
pub const GRID: f64 = 0.82;

/// An edge that is less sure than this is in doubt: those that were right had at least 0.51, misplaced ones at most 0.11.
pub const EDGE: f64 = 0.5;

/// Why a proposal is to be looked at before it is taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Doubt {
    /// Too few of the grid's lines are seen.
    Lines,
    /// One of the grid's outer lines is not seen, or another line is seen beyond them.
    Border,
    /// The grid goes beyond the picture.
    Cut,
    /// The time axis is upright in the picture.
    Turned,
    /// An edge is not clear, or rests on its way, or its trace is not level before it or shows another pulse, or a reflection
    /// hides it.
    Edge,
    /// Both traces have one colour and meet, so that either may have been followed into the other.
    Meet,
    /// Nothing tells which edge is A's, or it is the later one where it was the earlier one on a picture before.
    Order,
}

/// Why an edge is in doubt by itself.
pub fn of_edge(edge: &ScreenEdge, curve: &Curve) -> Option<Doubt> {
    if curve.meets {
        Some(Doubt::Meet)
    } else {
        (edge.confidence < EDGE || !edge.is_level || !edge.is_alone).then_some(Doubt::Edge)
    }
}
