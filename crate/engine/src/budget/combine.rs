//! One result from independent components: combined uncertainty, effective degrees of freedom, coverage factor.

use super::BudgetError;
use crate::distribution::t_coverage_factor;

/// A source of uncertainty, independent of the others.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Component {
    /// Standard uncertainty u(x), in the units of the input x.
    pub u: f64,
    /// Degrees of freedom ν of u, above 0 (GUM G.3, G.4.2); `None`: so many that u counts as known.
    pub degrees_of_freedom: Option<f64>,
    /// Sensitivity c = ∂y/∂x, in units of the result y over units of x (GUM 5.1.3).
    pub sensitivity: f64,
}

/// What the components give together. Lists are in the order of the components.
#[derive(Clone, Debug, PartialEq)]
pub struct Combined {
    /// Combined standard uncertainty u_c(y), in the units of y (GUM 5.1.2, eq. 10).
    pub u: f64,
    /// Effective degrees of freedom ν_eff (GUM G.4.1, eq. G.2b), a real number; `None`: many.
    pub degrees_of_freedom: Option<f64>,
    /// |c·u| of each component, in the units of y.
    pub contributions: Vec<f64>,
    /// Share of each in the variance u_c², 0 … 1; all nought when u_c is.
    pub shares: Vec<f64>,
}

/// Combines independent components: u_c² = Σ(c·u)² (GUM 5.1.2) and, after Welch and Satterthwaite,
/// ν_eff = u_c⁴ / Σ((c·u)⁴/ν) (GUM G.4.1).
///
/// ν_eff is not rounded. A ν that is not above 0 gives ν_eff = 0, which [`coverage_factor`] refuses. Inputs that are
/// not finite give results that are not numbers.
///
/// # Example
/// ```
/// use slope_engine::budget::{Component, combine, coverage_factor};
/// let readings = Component { u: 3.0, degrees_of_freedom: Some(8.0), sensitivity: 1.0 };
/// let ruler = Component { u: 2.0, degrees_of_freedom: None, sensitivity: -2.0 };
/// let combined = combine(&[readings, ruler]);
/// assert_eq!(combined.u, 5.0);
/// assert_eq!(combined.contributions, [3.0, 4.0]);
/// let k = coverage_factor(combined.degrees_of_freedom, 0.95)?;
/// assert!(k > 1.96 && k < 2.01);
/// # Ok::<(), slope_engine::budget::BudgetError>(())
/// ```
pub fn combine(components: &[Component]) -> Combined {
    let contributions: Vec<f64> = components.iter().map(|part| (part.sensitivity * part.u).abs()).collect();
    let largest = contributions.iter().copied().fold(0.0, f64::max);
    // In units of the largest, no square overflows or vanishes that matters.
    let unit = if largest > 0.0 { largest } else { 1.0 };
    let squares: Vec<f64> = contributions.iter().map(|part| (part / unit) * (part / unit)).collect();
    let total: f64 = squares.iter().sum();
    let shares: Vec<f64> =
        squares.iter().map(|square| if *square > 0.0 { square / total } else { *square }).collect();
    let reciprocal: f64 = components.iter().zip(&shares).map(|(part, share)| looseness(part, *share)).sum();
    Combined {
        u: unit * total.sqrt(),
        degrees_of_freedom: (reciprocal > 0.0).then(|| 1.0 / reciprocal),
        contributions,
        shares,
    }
}

/// What one component adds to 1/ν_eff: the square of its share, over its ν.
fn looseness(component: &Component, share: f64) -> f64 {
    match component.degrees_of_freedom {
        Some(nu) if share > 0.0 => share * share / nu.max(0.0),
        _ => 0.0,
    }
}

/// k such that ±k·u_c covers a share `probability` of the t distribution with ν_eff degrees of freedom, of the normal
/// distribution when they are `None` (GUM G.3.2, G.6.4).
///
/// GUM G.4.2 lets ν_eff be cut to the integer below, for use with a table, or the table be interpolated. Here t has
/// the real number ν_eff itself; cut it first where a table's k is to be matched.
///
/// # Errors
/// [`BudgetError::DegreesOfFreedom`] when ν_eff is below 1 or not a number, [`BudgetError::Probability`] when
/// `probability` is not inside 0 … 1.
pub fn coverage_factor(degrees_of_freedom: Option<f64>, probability: f64) -> Result<f64, BudgetError> {
    let nu = degrees_of_freedom.unwrap_or(f64::INFINITY);
    if nu.is_nan() || nu < 1.0 {
        return Err(BudgetError::DegreesOfFreedom { got: nu });
    }
    if !(probability > 0.0 && probability < 1.0) {
        return Err(BudgetError::Probability { got: probability });
    }
    Ok(t_coverage_factor(probability, nu))
}
