//! From the slope to v and c.
//!
//! v = f/b and c = n_g·v, with f the path factor, b the slope and n_g the group index of the air. Relative
//! uncertainties of v and b are the same (JCGM 100:2008, 5.1.6); the second-order term of 1/b is (u(b)/b)²
//! (JCGM 100:2008, 5.1.2, note).

use super::types::{AirReading, LineAnalysis, Refusal, Speed};
use crate::distribution::{normal_quantile, student_t_quantile};
use crate::line::bias_of_reciprocal;
use crate::notebook::{Basis, Page};

/// Speed of light in vacuum, m/s, exact (SI Brochure, 9th edition, 2.2).
pub const C0: f64 = 299_792_458.0;

/// One metre per nanosecond, in metres per second.
const METRE_PER_NANOSECOND: f64 = 1e9;

/// Probability of the expanded uncertainty, both tails together.
const COVERAGE: f64 = 0.95;

/// The speed from the line.
///
/// # Errors
/// Why the line gives no speed, or one without an uncertainty.
pub fn speed(page: &Page, line: &LineAnalysis, air: &AirReading) -> Result<Speed, Refusal> {
    let refuse = |id: &str, message: String| Refusal { id: id.into(), rows: Vec::new(), message };
    let slope = line.fit.slope;
    if slope <= 0.0 {
        let message = "the delay does not grow with the distance, so there is no speed: look at the sense of the rulers and at which channel is edge A";
        return Err(refuse("slope_not_positive", message.into()));
    }
    let group_index = air.group_index.clone().map_err(|message| refuse("no_air_index", message))?;
    let relative_stated = line.fit.uncertainty.filter(|_| line.stated).map(|u| u.slope / slope);
    let relative_scatter = line.fit.scaled_by_scatter().map(|u| u.slope / slope);
    let (basis, relative) = match (page.claim.basis, relative_stated, relative_scatter) {
        (Basis::Stated, Some(u), _) | (Basis::Scatter, Some(u), None) => (Basis::Stated, u),
        (_, _, Some(u)) => (Basis::Scatter, u),
        (_, None, None) => {
            let message = "two rows give a slope, but nothing to judge its uncertainty by: take more rows, or state the uncertainty of each";
            return Err(refuse("no_uncertainty", message.into()));
        }
    };
    let degrees_of_freedom = match basis {
        Basis::Stated => None,
        Basis::Scatter => Some(line.fit.degrees_of_freedom),
    };
    let tail = 0.5 + COVERAGE / 2.0;
    let coverage_factor =
        degrees_of_freedom.map_or_else(|| normal_quantile(tail), |nu| student_t_quantile(tail, nu as f64));
    let v = page.path.factor() / slope * METRE_PER_NANOSECOND;
    let c = group_index * v;
    let difference = c - C0;
    Ok(Speed {
        v,
        c,
        group_index,
        basis,
        relative,
        relative_stated,
        relative_scatter,
        degrees_of_freedom,
        coverage_factor,
        z: difference / (c * relative),
        e_n: difference / (c * relative * coverage_factor),
        relative_difference: difference / C0,
        second_order: bias_of_reciprocal(1.0, slope, slope * relative),
    })
}
