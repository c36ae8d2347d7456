//! Closed forms, ends, and arguments without meaning. Tables of values are in `tests/numbers/distribution.rs`.

use core::f64::consts::{LN_2, PI};

use super::*;

#[track_caller]
fn assert_close(found: f64, expected: f64, relative: f64) {
    assert!((found - expected).abs() <= relative * expected.abs(), "found {found:e}, expected {expected:e}");
}

/// Where the distributions are elementary: t with 1 and 2 degrees of freedom, chi-square with 2 (handbooks
/// of statistics; each follows by integrating the density).
#[test]
fn elementary_cases() {
    for t in [0.01, 0.5, 1.0, 3.0, 40.0] {
        // atan(1/t)/π has no cancellation in the tail.
        assert_close(student_t_sf(t, 1.0), libm::atan(1.0 / t) / PI, 1e-14);
        let root = (2.0 + t * t).sqrt();
        assert_close(student_t_sf(t, 2.0), 1.0 / (root * (root + t)), 1e-14);
    }
    for x in [1e-9, 0.3, 2.0, 50.0, 1000.0] {
        assert_close(chi_square_sf(x, 2.0), libm::exp(-0.5 * x), 1e-13);
        assert_close(chi_square_cdf(x, 2.0), -libm::expm1(-0.5 * x), 1e-13);
    }
    assert_close(chi_square_quantile(0.5, 2.0), 2.0 * LN_2, 1e-15);
    assert_close(student_t_upper_quantile(1e-200, 1.0), 1e200 / PI, 1e-13);
}

/// F with 2 degrees of freedom above or below is elementary; with 1 above it is t², with ∞ below χ²/ν (handbooks of
/// statistics; the first two follow by integrating the density).
#[test]
fn ratios_of_variances() {
    for f in [1e-6, 0.4, 1.0, 3.5, 80.0] {
        for nu in [1.0, 2.0, 3.5, 9.0, 40.0, 700.0] {
            assert_close(f_sf(f, 2.0, nu), libm::pow(1.0 + 2.0 * f / nu, -0.5 * nu), 1e-12);
            let below = nu * f / (2.0 + nu * f);
            assert_close(f_sf(f, nu, 2.0), 1.0 - libm::pow(below, 0.5 * nu), 1e-11);
            assert_close(f_sf(f, 1.0, nu), 2.0 * student_t_sf(f.sqrt(), nu), 1e-12);
            assert_close(f_sf(f, nu, f64::INFINITY), chi_square_sf(nu * f, nu), 0.0);
        }
    }
    // Where the variance below begins to count as known, both ways of reckoning agree.
    assert_close(f_sf(1.4, 10.0, 0.999e12), f_sf(1.4, 10.0, 1e12), 1e-10);
}

/// At the mean, P(a, a) = ½ + 1/(3√(2πa)) and terms of a^−3/2 (DLMF 8.11.12).
#[test]
fn many_degrees_of_freedom() {
    let nu = 1e10;
    assert_close(chi_square_cdf(nu, nu), 0.5 + 1.0 / (3.0 * (PI * nu).sqrt()), 1e-11);
    // The first correction of t to the normal tail is (t³ + t) φ(t)/(4ν).
    let (t, nu) = (10.0_f64, 1e12);
    let density = libm::exp(-0.5 * t * t) / (2.0 * PI).sqrt();
    assert_close(student_t_sf(t, nu), normal_sf(t) + (t * t * t + t) * density / (4.0 * nu), 1e-13);
    assert_close(student_t_sf(t, f64::INFINITY), normal_sf(t), 0.0);
}

#[test]
#[expect(clippy::float_cmp, reason = "the ends are exact")]
fn ends() {
    let infinity = f64::INFINITY;
    let cases = [
        (normal_sf(infinity), 0.0),
        (normal_cdf(infinity), 1.0),
        (normal_quantile(0.0), -infinity),
        (normal_upper_quantile(0.0), infinity),
        (normal_quantile(0.5), 0.0),
        (student_t_sf(infinity, 3.0), 0.0),
        (student_t_cdf(infinity, 3.0), 1.0),
        (student_t_sf(0.0, 3.0), 0.5),
        (student_t_quantile(1.0, 3.0), infinity),
        (student_t_quantile(0.5, 3.0), 0.0),
        (chi_square_sf(0.0, 3.0), 1.0),
        (chi_square_sf(-1.0, 3.0), 1.0),
        (chi_square_cdf(-1.0, 3.0), 0.0),
        (chi_square_sf(infinity, 3.0), 0.0),
        (f_sf(0.0, 3.0, 4.0), 1.0),
        (f_sf(infinity, 3.0, 4.0), 0.0),
        (f_sf(infinity, 3.0, infinity), 0.0),
        (chi_square_quantile(0.0, 3.0), 0.0),
        (chi_square_quantile(1.0, 3.0), infinity),
        (chi_square_upper_quantile(1.0, 3.0), 0.0),
        (chi_square_upper_quantile(0.0, 3.0), infinity),
    ];
    for (index, (found, expected)) in cases.into_iter().enumerate() {
        assert!(found == expected, "case {index}: {found}");
    }
}

#[test]
fn arguments_without_meaning_give_nan() {
    let nan = f64::NAN;
    let cases = [
        normal_sf(nan),
        normal_quantile(-0.1),
        normal_quantile(1.1),
        normal_upper_quantile(nan),
        student_t_sf(nan, 3.0),
        student_t_sf(1.0, 0.0),
        student_t_sf(1.0, -1.0),
        student_t_sf(1.0, nan),
        student_t_quantile(0.9, 0.0),
        student_t_quantile(2.0, 3.0),
        chi_square_sf(nan, 3.0),
        chi_square_sf(1.0, 0.0),
        chi_square_sf(1.0, f64::INFINITY),
        chi_square_cdf(1.0, nan),
        chi_square_quantile(0.5, -1.0),
        chi_square_upper_quantile(nan, 3.0),
        f_sf(nan, 3.0, 3.0),
        f_sf(1.0, 0.0, 3.0),
        f_sf(1.0, 3.0, 0.0),
        f_sf(1.0, 3.0, nan),
        t_coverage_factor(1.5, 3.0),
        t_coverage_factor(0.95, nan),
    ];
    for (index, found) in cases.into_iter().enumerate() {
        assert!(found.is_nan(), "case {index}: {found}");
    }
}

/// Found by the properties below: with hardly any degrees of freedom the lower tail rounded to 1 + 2⁻⁵².
#[test]
fn tails_end_at_one() {
    assert_eq!(chi_square_cdf(6.617_784_270_161_22e-7, 1.035_397_118_487_299e-308), 1.0);
}

#[cfg(not(target_arch = "wasm32"))]
mod properties {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// The tail at its own quantile, off by what one rounding of the quantile can do (below 10⁻¹⁰ here).
        #[test]
        fn quantiles_invert_tails(log_q in -200.0..-0.5_f64, nu in 0.5..300.0_f64) {
            let q = libm::exp(log_q);
            for back in [
                normal_sf(normal_upper_quantile(q)),
                student_t_sf(student_t_upper_quantile(q, nu), nu),
                chi_square_sf(chi_square_upper_quantile(q, nu), nu),
                chi_square_cdf(chi_square_quantile(q, nu), nu),
            ] {
                prop_assert!((back - q).abs() <= 1e-10 * q, "{back:e} for {q:e}");
            }
        }

        #[test]
        fn never_panics_or_hangs(x in prop::num::f64::ANY, nu in prop::num::f64::ANY, p in prop::num::f64::ANY) {
            for probability in [
                normal_cdf(x), student_t_cdf(x, nu), student_t_sf(x, nu), chi_square_cdf(x, nu), chi_square_sf(x, nu),
                f_sf(x, nu, 3.0), f_sf(x, 3.0, nu),
            ] {
                prop_assert!(probability.is_nan() || (0.0..=1.0).contains(&probability), "{probability}");
            }
            for p in [p, p - p.floor()] {
                normal_quantile(p);
                student_t_quantile(p, nu);
                chi_square_quantile(p, nu);
            }
        }
    }
}
