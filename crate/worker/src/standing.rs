//! How a picture's grid lies beside marks made on another picture, and whether those marks serve it too.

use serde::Serialize;
use slope_evidence::photo;

/// As [`photo::Standing`], with the verdict.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
#[expect(missing_docs, reason = "documented there")]
pub struct Standing {
    pub shift: [f64; 2],
    pub largest: f64,
    pub divisions: f64,
    pub seen: f64,
    /// The marks serve this picture too.
    pub holds: bool,
}

impl Standing {
    /// With the verdict at an uncertainty of one mark, pixels.
    pub fn of(standing: &photo::Standing, u_pixels: f64) -> Self {
        let photo::Standing { shift, largest, divisions, seen } = *standing;
        Self { shift, largest, divisions, seen, holds: standing.holds(u_pixels) }
    }
}
