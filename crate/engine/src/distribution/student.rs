//! Student's t distribution, by the regularised incomplete beta function (DLMF 8.17).
//!
//! With a = ν/2, x = ν/(ν + t²) and y = 1 − x, the upper tail is `I_x(a, ½)`/2.

use core::f64::consts::PI;

use super::chi_square::nonzero;
use super::normal::{normal_density, normal_sf, normal_upper_quantile, symmetric};
use super::solve::{Tail, TailSide, point};

/// Probability below `t` with `nu` degrees of freedom.
pub fn student_t_cdf(t: f64, nu: f64) -> f64 {
    student_t_sf(-t, nu)
}

/// Probability above `t` with `nu` degrees of freedom.
pub fn student_t_sf(t: f64, nu: f64) -> f64 {
    if t.is_nan() || nu.is_nan() || nu <= 0.0 {
        f64::NAN
    } else if nu.is_infinite() {
        normal_sf(t)
    } else if t < 0.0 {
        1.0 - positive_tail(-t, nu)
    } else {
        positive_tail(t, nu)
    }
}

/// Density at `t` with `nu` degrees of freedom.
pub fn student_t_density(t: f64, nu: f64) -> f64 {
    if t.is_nan() || nu.is_nan() || nu <= 0.0 {
        f64::NAN
    } else if nu.is_infinite() {
        normal_density(t)
    } else {
        density(t.abs(), nu)
    }
}

/// The point with probability `p` below it.
pub fn student_t_quantile(p: f64, nu: f64) -> f64 {
    -student_t_upper_quantile(p, nu)
}

/// The point with probability `q` above it.
pub fn student_t_upper_quantile(q: f64, nu: f64) -> f64 {
    if nu.is_nan() || nu <= 0.0 {
        f64::NAN
    } else if nu.is_infinite() {
        normal_upper_quantile(q)
    } else {
        symmetric(q, |q| {
            let tail = |t| Tail { probability: positive_tail(t, nu), density: density(t, nu) };
            point(q, 1.0, TailSide::Upper, tail)
        })
    }
}

/// k for a coverage probability `p` (0.95, say) with `nu` effective degrees of freedom (GUM G.3).
pub fn t_coverage_factor(p: f64, nu: f64) -> f64 {
    student_t_upper_quantile((1.0 - p) / 2.0, nu)
}

/// The upper tail for t ≥ 0.
fn positive_tail(t: f64, nu: f64) -> f64 {
    let a = 0.5 * nu;
    let point = BetaArgument::new(t, nu);
    // x^a √y / B(a, ½)
    let factor = libm::exp(a * point.log_x) * point.y.sqrt() * gamma_ratio(a) / PI.sqrt();
    // Each fraction converges fast on its own side of the mean.
    if point.x * (a + 2.5) < a + 1.0 {
        0.5 * factor * beta_fraction(a, 0.5, point.x, point.y)
    } else {
        0.5 - 0.5 * factor * beta_fraction(0.5, a, point.y, point.x)
    }
}

fn density(t: f64, nu: f64) -> f64 {
    let log_x = BetaArgument::new(t, nu).log_x;
    libm::exp(0.5 * (nu + 1.0) * log_x) * gamma_ratio(0.5 * nu) / (PI * nu).sqrt()
}

/// x = ν/(ν + t²), its logarithm, and y = 1 − x.
struct BetaArgument {
    x: f64,
    y: f64,
    log_x: f64,
}

impl BetaArgument {
    fn new(t: f64, nu: f64) -> Self {
        let ratio = t / nu * t;
        if ratio < 1e16 {
            Self { x: 1.0 / (1.0 + ratio), y: ratio / (1.0 + ratio), log_x: -libm::log1p(ratio) }
        } else {
            // 1 + ratio is ratio; taken apart, so that t² cannot overflow.
            Self { x: nu / t / t, y: 1.0, log_x: libm::log(nu) - 2.0 * libm::log(t) }
        }
    }
}

/// Γ(a + ½)/Γ(a), without the cancellation of two logarithms of Γ.
///
/// Raised to a ≥ 30 by the recurrence, then the asymptotic series of its logarithm (from DLMF 5.11.8), whose
/// first term left out is below 10⁻¹⁶ there.
fn gamma_ratio(a: f64) -> f64 {
    let mut a = a;
    let mut factor = 1.0;
    while a < 30.0 {
        factor *= a / (a + 0.5);
        a += 1.0;
    }
    let r = 1.0 / (a * a);
    let series = (-1.0 / 8.0 + r * (1.0 / 192.0 + r * (-1.0 / 640.0 + r * 17.0 / 14336.0))) / a;
    factor * a.sqrt() * libm::exp(series)
}

/// `I_x(a, b)` over `x^a y^b / B(a, b)`: the even part of the continued fraction DLMF 8.17.22, by Lentz's
/// method, in the form of A. R. `DiDonato` and A. H. Morris, ACM Trans. Math. Softw. 18 (1992) 360. It takes
/// x and y = 1 − x both, and so keeps its digits where ν is large and x close to 1.
pub(super) fn beta_fraction(a: f64, b: f64, x: f64, y: f64) -> f64 {
    let partial = |m: f64| {
        let (before, after) = (a + 2.0 * m - 1.0, a + 2.0 * m + 1.0);
        m + m * (b - m) * x / before + (a + m) / after * (a * y - b * x + 1.0 + m * (1.0 + y))
    };
    let mut value = nonzero(a / (a + 1.0) * (a * y - b * x + 1.0));
    let mut c = value;
    let mut d = 0.0;
    for m in (1..ITERATIONS).map(f64::from) {
        let before = a + 2.0 * m - 1.0;
        let numerator = (a + m - 1.0) / before * ((a + b + m - 1.0) * x / before) * m * ((b - m) * x);
        d = 1.0 / nonzero(partial(m) + numerator * d);
        c = nonzero(partial(m) + numerator / c);
        let change = c * d;
        value *= change;
        if (change - 1.0).abs() < f64::EPSILON {
            break;
        }
    }
    1.0 / value
}

/// Far more steps than are ever needed.
const ITERATIONS: u32 = 10_000;
