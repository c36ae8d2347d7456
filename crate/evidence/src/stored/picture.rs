//! Marks on a picture of the screen.

#[cfg(not(target_arch = "wasm32"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::StoredFile;

/// Names a marked grid for the life of the notebook.
pub type GridId = u32;

/// A place on a picture, x to the right and y downwards, in whole hundredths of a pixel; the middle of the first pixel
/// is at (50, 50).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
pub struct Spot(pub i32, pub i32);

/// The marks of a row on its picture.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Picture {
    /// The picture, as scaled down.
    pub file: StoredFile,
    /// Its width, pixels.
    pub width: u32,
    /// Its height, pixels.
    pub height: u32,
    /// The grid that its marks are read against.
    pub grid: GridId,
    /// Edge A, marked once or more.
    pub a: Vec<Spot>,
    /// Edge B, marked once or more.
    pub b: Vec<Spot>,
    /// Between which ends the edges rise, where that was marked.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(not(target_arch = "wasm32"), ts(optional))]
    pub heights: Option<EdgeHeights>,
}

/// The heights of both edges of a picture.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct EdgeHeights {
    /// Of edge A.
    pub a: EdgeHeight,
    /// Of edge B.
    pub b: EdgeHeight,
    /// How thick the trace is, whole pixels.
    pub thickness: u32,
}

/// The ends of an edge; nothing for one that is off the screen.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct EdgeHeight {
    /// Where the trace leaves its baseline.
    pub baseline: Option<Spot>,
    /// Where it reaches its top.
    pub top: Option<Spot>,
}

impl EdgeHeight {
    /// Whether baseline or top is off the screen, so that no fraction of the height is known.
    pub fn is_unknown(&self) -> bool {
        self.baseline.is_none() || self.top.is_none()
    }
}

/// The grid of a screen as marked on a picture. One may serve all pictures that a camera took from one place.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Grid {
    /// Names the grid for the life of the notebook.
    pub id: GridId,
    /// Divisions from the left corners to the right ones, along the time axis.
    pub columns: u32,
    /// Divisions from the upper corners to the lower ones.
    pub rows: u32,
    /// Upper left, upper right, lower right, lower left.
    pub corners: [Spot; 4],
    /// Crossings marked to see whether the lens bends the grid.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub checks: Vec<GridCheck>,
}

/// A crossing held against the grid.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct GridCheck {
    /// Half divisions to the right of the upper left corner.
    pub half_columns: u32,
    /// Half divisions below it.
    pub half_rows: u32,
    /// Where it was marked.
    pub at: Spot,
}
