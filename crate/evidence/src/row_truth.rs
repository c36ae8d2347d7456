//! What is really so at a row of a data set, on its way from the core, which draws it, to the worker, which takes a picture or
//! traces of it.

use serde::{Deserialize, Serialize};

/// What is really so at a row of a data set: before this a camera or a recorder would stand. It goes into no file.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct RowTruth {
    /// The row.
    pub row: u32,
    /// Distance from the splitter, m.
    pub distance: f64,
    /// How late B's edge comes after A's, as the row's clock counts it, ns.
    pub delay: f64,
    /// Time per division of the screen, ns.
    pub time_base: f64,
    /// Divisions across the screen.
    pub screen_width: f64,
}
