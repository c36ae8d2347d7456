//! The normal distribution with mean 0 and standard deviation 1.

use core::f64::consts::{FRAC_1_SQRT_2, PI};

use super::solve::{Tail, TailSide, point};

/// Probability below `z`.
pub fn normal_cdf(z: f64) -> f64 {
    normal_sf(-z)
}

/// Probability above `z`.
pub fn normal_sf(z: f64) -> f64 {
    0.5 * libm::erfc(z * FRAC_1_SQRT_2)
}

/// The point with probability `p` below it.
pub fn normal_quantile(p: f64) -> f64 {
    -normal_upper_quantile(p)
}

/// The point with probability `q` above it.
pub fn normal_upper_quantile(q: f64) -> f64 {
    symmetric(q, |q| {
        let tail = |z| Tail { probability: normal_sf(z), density: normal_density(z) };
        point(q, 1.0, TailSide::Upper, tail)
    })
}

/// Density at `z`.
pub fn normal_density(z: f64) -> f64 {
    libm::exp(-0.5 * z * z) / (2.0 * PI).sqrt()
}

/// The upper quantile of a distribution that is symmetric about 0, from its quantile for 0 < q < ½.
pub(super) fn symmetric(q: f64, positive: impl Fn(f64) -> f64) -> f64 {
    if !(0.0..=1.0).contains(&q) {
        f64::NAN
    } else if q > 0.5 {
        // 1 − q is exact here.
        -symmetric(1.0 - q, positive)
    } else if q >= 0.5 {
        0.0
    } else if q > 0.0 {
        positive(q)
    } else {
        f64::INFINITY
    }
}
