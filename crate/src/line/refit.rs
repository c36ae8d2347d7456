//! The slope of a line whose readings are redrawn again and again, for Monte Carlo: the noise model stays, only the
//! readings change.

use super::{Data, Fit, fit};

/// A line to be fitted to many sets of readings under one noise model.
#[derive(Debug, Clone)]
pub struct Refit {
    data: Data,
}

impl Refit {
    /// Prepares for refits of `data`, whose line is `fit`.
    pub fn new(data: &Data, _fit: &Fit) -> Refit {
        Refit { data: data.clone() }
    }

    /// The slopes of `L` trials side by side: `x` and `y` hold for each row the readings of all of them. NaN where
    /// [`fit`] gives an error.
    pub fn slopes<const L: usize>(&mut self, x: &[[f64; L]], y: &[[f64; L]]) -> [f64; L] {
        std::array::from_fn(|lane| {
            let pick = |lanes: &[[f64; L]]| lanes.iter().filter_map(|row| row.get(lane).copied()).collect();
            self.data.x = pick(x);
            self.data.y = pick(y);
            fit(&self.data).map_or(f64::NAN, |line| line.slope)
        })
    }
}
