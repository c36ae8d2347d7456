//! Tail probabilities and quantiles of the normal, Student t and chi-square distributions, and the upper tail of F.
//!
//! | symbol | meaning |
//! | --- | --- |
//! | p, q | probability below and above a point: each is computed as itself, never as one minus a rounded other |
//! | ν | degrees of freedom, any real number above 0; for t and below in F also ∞, the normal and the chi-square distribution |
//!
//! `…_cdf` and `…_quantile` are of the lower tail, `…_sf` and `…_upper_quantile` of the upper.
//! An argument without meaning (ν ≤ 0, a probability outside 0 to 1, not a number) gives NaN; nothing panics.
//! A quantile at probability 0 or 1 is the end of the distribution, which may be infinite.
//!
//! A quantile beyond the largest double is the largest double. For chi-square ν is at most 10¹⁰: beyond that
//! the sums would take too long, and the answer is NaN.
//!
//! Accuracy, measured against 50-digit arithmetic at thousands of random points with ν from 0.1 to 10⁶:
//! 2 × 10⁻¹³ relative for probabilities from 1 down to 10⁻³⁰⁰, 1 × 10⁻¹³ for quantiles.
//!
//! Why not a crate of distributions: native code and WebAssembly must give the same bits, so exponentials,
//! logarithms and error functions come from `libm` alone, while the general crates call the platform's.
//!
//! Sources: NIST Digital Library of Mathematical Functions, chapters 7 and 8; C. Loader, "Fast and accurate
//! computation of binomial probabilities" (2000), for the leading factor without cancellation; JCGM 100:2008
//! (GUM), annex G, for the coverage factor.

mod solve;
mod chi_square;
mod normal;
mod student;
mod variance_ratio;

pub use chi_square::{chi_square_cdf, chi_square_quantile, chi_square_sf, chi_square_upper_quantile};
pub use normal::{normal_cdf, normal_density, normal_quantile, normal_sf, normal_upper_quantile};
pub use student::{
    student_t_cdf, student_t_density, student_t_quantile, student_t_sf, student_t_upper_quantile,
    t_coverage_factor,
};
pub use variance_ratio::f_sf;

#[cfg(test)]
#[path = "distribution_test.rs"]
mod tests;
