//! From the slope to v and c.
//!
//! v = κ·f/b and c = n_g·v, with f the path factor, b the slope, n_g the group index of the air and κ the correction
//! for the beam's angle ([`BeyondFit::correction`]). Relative
//! uncertainties of v and b are the same (JCGM 100:2008, 5.1.6); the second-order term of 1/b is (u(b)/b)²
//! (JCGM 100:2008, 5.1.2, note).

use super::budget::{BeyondFit, budget};
use super::types::{AirReading, Budget, Comparison, LineAnalysis, Refusal, Speed};
use crate::line::bias_of_reciprocal;
use crate::message;
use crate::notebook::{Basis, NotebookState};

/// Speed of light in vacuum, m/s, exact (SI Brochure, 9th edition, 2.2).
pub const C0: f64 = 299_792_458.0;

/// A relative uncertainty from the scatter below this is none.
const NO_SCATTER: f64 = 1e-12;

/// One metre per nanosecond, in metres per second.
const METRE_PER_NANOSECOND: f64 = 1e9;

/// The speed from the line.
///
/// # Errors
/// Why the line gives no speed, or one without an uncertainty.
pub fn speed(
    page: &NotebookState,
    line: &LineAnalysis,
    air: &AirReading,
    beyond: &BeyondFit,
) -> Result<Speed, Refusal> {
    let slope = line.fit.slope;
    if slope <= 0.0 {
        return Err(Refusal::new("slope_not_positive", message!("refusal-slope_not_positive")));
    }
    let group_index = air
        .group_index
        .clone()
        .map_err(|_| Refusal::new("no_air_index", message!("refusal-no_air_index")))?;
    let of = |basis| budget(line, group_index, basis, beyond);
    let stated = if line.stated { of(Basis::Stated) } else { None };
    let scatter = of(Basis::Scatter);
    let relative = |budget: &Option<Budget>| budget.as_ref().map(Budget::relative);
    let (relative_stated, relative_scatter) = (relative(&stated), relative(&scatter));
    let (basis, budget) = claimed(page.claim.basis, stated, scatter)?;
    // Rows typed to so many digits scatter by their last one; less than this is rounding of the arithmetic.
    if !line.stated && budget.relative_v() < NO_SCATTER {
        return Err(Refusal::new("no_scatter", message!("refusal-no_scatter")));
    }
    let v = beyond.correction() * page.path.factor() / slope * METRE_PER_NANOSECOND;
    let c = group_index * v;
    let relative = budget.relative();
    if !(c * relative).is_finite() {
        return Err(Refusal::new("out_of_range", message!("refusal-out_of_range")));
    }
    let z = (c - C0) / (c * relative);
    Ok(Speed {
        v,
        c,
        group_index,
        basis,
        relative,
        relative_v: budget.relative_v(),
        relative_stated,
        relative_scatter,
        comparison: Some(Comparison {
            z,
            e_n: budget.factor_at_95().map(|k| z / k),
            relative_difference: (c - C0) / C0,
        }),
        second_order: bias_of_reciprocal(1.0, slope, slope * relative),
        sealed: false,
        budget,
    })
}

/// The budget of the basis that is claimed, or of the other one where that has none.
fn claimed(
    claim: Basis,
    stated: Option<Budget>,
    scatter: Option<Budget>,
) -> Result<(Basis, Budget), Refusal> {
    match (claim, stated, scatter) {
        (Basis::Stated, Some(budget), _) | (Basis::Scatter, Some(budget), None) => {
            Ok((Basis::Stated, budget))
        }
        (_, _, Some(budget)) => Ok((Basis::Scatter, budget)),
        (_, None, None) => Err(Refusal::new("no_uncertainty", message!("refusal-no_uncertainty"))),
    }
}
