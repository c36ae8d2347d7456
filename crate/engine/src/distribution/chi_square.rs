//! The chi-square distribution, by the regularised incomplete gamma functions P and Q (DLMF 8.2, 8.9, 8.11).
//!
//! With a = ν/2 and z = x/2 the lower tail is P(a, z) and the upper one Q(a, z). Both have the leading factor
//! z^a e^−z / Γ(a + 1).

use core::f64::consts::PI;

use super::solve::{Tail, TailSide, point};

/// Probability below `x` with `nu` degrees of freedom.
pub fn chi_square_cdf(x: f64, nu: f64) -> f64 {
    tail(x, nu, TailSide::Lower)
}

/// Probability above `x` with `nu` degrees of freedom: the p-value of a fit.
pub fn chi_square_sf(x: f64, nu: f64) -> f64 {
    tail(x, nu, TailSide::Upper)
}

/// The point with probability `p` below it.
pub fn chi_square_quantile(p: f64, nu: f64) -> f64 {
    quantile(p, nu, TailSide::Lower)
}

/// The point with probability `q` above it.
pub fn chi_square_upper_quantile(q: f64, nu: f64) -> f64 {
    quantile(q, nu, TailSide::Upper)
}

fn tail(x: f64, nu: f64, side: TailSide) -> f64 {
    if x.is_nan() || !has_meaning(nu) {
        return f64::NAN;
    }
    match side {
        TailSide::Lower if x <= 0.0 => 0.0,
        TailSide::Upper if x <= 0.0 => 1.0,
        TailSide::Lower if x.is_infinite() => 1.0,
        TailSide::Upper if x.is_infinite() => 0.0,
        _ => incomplete_gamma(0.5 * nu, 0.5 * x, side).probability,
    }
}

fn quantile(probability: f64, nu: f64, side: TailSide) -> f64 {
    if !(0.0..=1.0).contains(&probability) || !has_meaning(nu) {
        return f64::NAN;
    }
    let at_zero = match side {
        TailSide::Lower => probability <= 0.0,
        TailSide::Upper => probability >= 1.0,
    };
    let at_infinity = match side {
        TailSide::Lower => probability >= 1.0,
        TailSide::Upper => probability <= 0.0,
    };
    if at_zero {
        0.0
    } else if at_infinity {
        f64::INFINITY
    } else {
        let a = 0.5 * nu;
        2.0 * point(probability, a, side, |z| incomplete_gamma(a, z, side))
    }
}

pub(super) fn has_meaning(nu: f64) -> bool {
    nu > 0.0 && nu <= LARGEST_NU
}

/// P or Q with its density, for a > 0 and z > 0.
fn incomplete_gamma(a: f64, z: f64, side: TailSide) -> Tail {
    let factor = leading_factor(a, z);
    let (computed, of_side) = if z < a + 1.0 {
        (factor * lower_series(a, z), TailSide::Lower)
    } else {
        (factor * a * upper_fraction(a, z), TailSide::Upper)
    };
    // For a near zero the product may round to just above 1.
    let computed = computed.min(1.0);
    // The other tail is then the larger one, so that the difference keeps its digits.
    let probability = if side == of_side { computed } else { 1.0 - computed };
    Tail { probability, density: factor * a / z }
}

/// z^a e^−z / Γ(a + 1), without the cancellation of large logarithms (Loader 2000).
pub(super) fn leading_factor(a: f64, z: f64) -> f64 {
    if a < STIRLING_FROM {
        libm::exp(a * libm::log(z) - z - libm::lgamma(a + 1.0))
    } else {
        libm::exp(-stirling_remainder(a) - deviance(a, z)) / (2.0 * PI * a).sqrt()
    }
}

const STIRLING_FROM: f64 = 20.0;

/// ln Γ(a + 1) − ln(√(2πa) (a/e)^a) for a ≥ 20 (DLMF 5.11.1).
fn stirling_remainder(a: f64) -> f64 {
    let r = 1.0 / (a * a);
    (1.0 / 12.0 - r * (1.0 / 360.0 - r * (1.0 / 1260.0 - r * (1.0 / 1680.0 - r / 1188.0)))) / a
}

/// a ln(a/z) + z − a, which is not negative.
fn deviance(a: f64, z: f64) -> f64 {
    let difference = z - a;
    if difference.abs() > 0.1 * (z + a) {
        return a * libm::log(a / z) + difference;
    }
    // With v = (z − a)/(z + a): ln(z/a) = 2 (v + v³/3 + …), and a = (z + a)(1 − v)/2.
    let v = difference / (z + a);
    let mut sum = difference * v;
    let mut power = 2.0 * a * v;
    for odd in (3..100).step_by(2).map(f64::from) {
        power *= v * v;
        let next = sum - power / odd;
        if (next - sum).abs() <= 0.0 {
            break;
        }
        sum = next;
    }
    sum
}

/// 1 + z/(a+1) + z²/((a+1)(a+2)) + … (DLMF 8.11.4).
fn lower_series(a: f64, z: f64) -> f64 {
    let mut term = 1.0;
    let mut sum = 1.0;
    for n in (1..ITERATIONS).map(f64::from) {
        term *= z / (a + n);
        sum += term;
        if term < sum * f64::EPSILON / 8.0 {
            break;
        }
    }
    sum
}

/// The continued fraction of Γ(a, z) e^z z^−a (DLMF 8.9.2, contracted), by Lentz's method.
fn upper_fraction(a: f64, z: f64) -> f64 {
    let mut b = z + 1.0 - a;
    let mut c = 1.0 / f64::MIN_POSITIVE;
    let mut d = 1.0 / b;
    let mut value = d;
    for n in (1..ITERATIONS).map(f64::from) {
        let numerator = n * (a - n);
        b += 2.0;
        d = 1.0 / nonzero(numerator * d + b);
        c = nonzero(b + numerator / c);
        let change = c * d;
        value *= change;
        if (change - 1.0).abs() < f64::EPSILON {
            break;
        }
    }
    value
}

/// About 9 √a steps are needed near the mean, so this suffices up to `LARGEST_NU`.
const ITERATIONS: u32 = 1_000_000;
const LARGEST_NU: f64 = 1e10;

/// What may be divided by: Lentz's method puts the least double in the place of nought.
pub(super) fn nonzero(x: f64) -> f64 {
    if x.abs() < f64::MIN_POSITIVE { f64::MIN_POSITIVE } else { x }
}
