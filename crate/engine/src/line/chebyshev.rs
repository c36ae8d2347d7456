//! Interpolation by polynomials through Chebyshev's places.

use std::f64::consts::PI;

/// cos for angles from 0 to π, by its series: the general one brings tables for angles without bound.
pub(super) fn cosine(angle: f64) -> f64 {
    let (mut term, mut sum) = (1.0, 1.0);
    for k in 1..=14 {
        let k = f64::from(2 * k);
        term *= -angle * angle / (k * (k - 1.0));
        sum += term;
    }
    sum
}

/// Chebyshev's places for interpolation in −1 … 1.
pub(super) fn places(count: usize) -> Vec<f64> {
    (0..count).map(|k| cosine(PI * (k as f64 + 0.5) / count as f64)).collect()
}

/// The coefficients in s of what is 1 at place `k`, 0 at the others, and of the least degree in z = s + κ s².
pub(super) fn lagrange(places: &[f64], k: usize, kappa: f64) -> Vec<f64> {
    let z = |s: f64| s + kappa * s * s;
    let others = (0..).zip(places).filter(|(j, _)| *j != k);
    others.fold(vec![1.0], |polynomial, (_, place)| {
        let per = 1.0 / (z(places[k]) - z(*place));
        let factor = [-z(*place) * per, per, kappa * per];
        times(&polynomial, &factor[..if kappa == 0.0 { 2 } else { 3 }])
    })
}

fn times(a: &[f64], b: &[f64]) -> Vec<f64> {
    let mut product = vec![0.0; a.len() + b.len() - 1];
    for (i, a) in a.iter().enumerate() {
        for (place, b) in product[i..].iter_mut().zip(b) {
            *place += a * b;
        }
    }
    product
}

/// A polynomial's value, from its coefficients.
pub(super) fn value(polynomial: &[f64], s: f64) -> f64 {
    polynomial.iter().rev().fold(0.0, |value, coefficient| value * s + coefficient)
}
