//! The F distribution of Fisher and Snedecor, by the regularised incomplete beta function (DLMF 8.17).
//!
//! With a = ν₂/2, b = ν₁/2, x = ν₂/(ν₂ + ν₁F) and y = 1 − x, the upper tail is `I_x(a, b)`. Its leading factor
//! `x^a y^b / B(a, b)` is taken as a product of those of the gamma functions, each without cancellation (Loader 2000).

use super::chi_square::{chi_square_sf, has_meaning, leading_factor};
use super::student::beta_fraction;

/// From here on the variance below counts as known: ν₁F is χ² to ten digits and more.
const KNOWN: f64 = 1e12;

/// Probability above `f`, the ratio of a variance with `nu` degrees of freedom to one with `nu_below`, which may be infinite.
pub fn f_sf(f: f64, nu: f64, nu_below: f64) -> f64 {
    if f.is_nan() || !has_meaning(nu) || nu_below.is_nan() || nu_below <= 0.0 {
        f64::NAN
    } else if f <= 0.0 {
        1.0
    } else if nu_below >= KNOWN {
        chi_square_sf(nu * f, nu)
    } else {
        upper_tail(f, nu, nu_below)
    }
}

fn upper_tail(f: f64, nu: f64, nu_below: f64) -> f64 {
    let ratio = nu / nu_below * f;
    if ratio.is_infinite() {
        return 0.0;
    }
    let (a, b) = (0.5 * nu_below, 0.5 * nu);
    let (x, y) = (1.0 / (1.0 + ratio), ratio / (1.0 + ratio));
    let n = a + b;
    let factor = leading_factor(a, n * x) * leading_factor(b, n * y) / leading_factor(n, n) * (a * b / n);
    // Each fraction converges fast on its own side of the mean.
    let tail = if x * (n + 2.0) < a + 1.0 {
        factor * beta_fraction(a, b, x, y)
    } else {
        1.0 - factor * beta_fraction(b, a, y, x)
    };
    tail.clamp(0.0, 1.0)
}
