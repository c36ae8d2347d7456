//! Marks on a picture.

use serde::{Deserialize, Serialize};

/// A place in the picture, pixels: x to the right, y downwards.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct PixelPoint {
    /// To the right.
    pub x: f64,
    /// Downwards.
    pub y: f64,
}

/// A marked grid crossing.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Corner {
    /// Where it was marked.
    pub at: PixelPoint,
    /// Its column: divisions along the time axis.
    pub column: f64,
    /// Its row: divisions downwards.
    pub row: f64,
}

/// A corner mark, as a message names it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Mark {
    /// Its place in the list, from 0.
    pub index: usize,
    /// Its column, divisions.
    pub column: f64,
    /// Its row, divisions.
    pub row: f64,
}

impl Mark {
    /// The mark at `index` of a list.
    pub fn of(corners: &[Corner], index: usize) -> Self {
        let (column, row) = corners.get(index).map_or((f64::NAN, f64::NAN), |c| (c.column, c.row));
        Self { index, column, row }
    }
}
