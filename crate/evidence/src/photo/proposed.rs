//! An edge as it is proposed.

use serde::{Deserialize, Serialize};

use super::mark::PixelPoint;

/// An edge proposed.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct ProposedEdge {
    /// Where the trace crosses half of its own height, pixels.
    pub at: PixelPoint,
    /// The same in divisions: column and row.
    pub divisions: [f64; 2],
    /// Row of the trace's baseline, divisions.
    pub base: f64,
    /// Row of its peak, divisions.
    pub peak: f64,
    /// Where the edge leaves the baseline and where it reaches the peak, pixels.
    pub ends: [PixelPoint; 2],
    /// How thick the trace is before its edge, whole pixels; none where too little of it is seen there.
    pub thickness: Option<u32>,
    /// The trace's colour over the ground: red, green and blue.
    pub colour: [f32; 3],
    /// From 0, a guess, to 1.
    pub confidence: f64,
    /// Whether it is to be looked at before it is taken.
    pub is_doubted: bool,
}
