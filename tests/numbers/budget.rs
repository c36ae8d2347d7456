//! Combination and propagation of uncertainties against the examples of the GUM (JCGM 100:2008). Each test names its
//! clause; the data lie in `reference/`, with how they were obtained.
#![expect(clippy::unwrap_used, reason = "tests")]

use nalgebra::DMatrix;
use proptest::prelude::*;
use serde_json::Value;
use slope_of_light::budget::{
    BudgetError, Combined, Component, combine, coverage_factor, propagate, sensitivities, summarise,
};
use slope_of_light::distribution::normal_upper_quantile;

use crate::reference::{assert_close, number, read, rows};

fn known(u: f64, sensitivity: f64) -> Component {
    Component { u, degrees_of_freedom: None, sensitivity }
}

fn repeated(u: f64, nu: f64) -> Component {
    Component { u, degrees_of_freedom: Some(nu), sensitivity: 1.0 }
}

#[track_caller]
fn near(found: f64, expected: f64, tolerance: f64, place: &str) {
    assert!((found - expected).abs() <= tolerance, "{place}: found {found:e}, expected {expected:e}");
}

/// The inputs of H.1, in the order in which the model takes them.
const GAUGE_BLOCK: [&str; 6] = ["ls", "d", "delta_alpha", "theta", "alpha", "delta_theta"];

/// The length of the end gauge, nm (H.1.2, eq. H.3).
fn gauge_block(x: &[f64]) -> Option<Vec<f64>> {
    let &[standard, difference, delta_alpha, theta, alpha, delta_theta] = x else { return None };
    Some(vec![standard + difference - standard * (delta_alpha * theta + alpha * delta_theta)])
}

fn check_gauge_block(combined: &Combined, expected: &Value, relative: f64, absolute: f64) {
    assert_close(combined.u, number(expected, "uc"), relative, "u_c");
    assert_close(combined.degrees_of_freedom.unwrap(), number(expected, "nu_eff"), relative, "ν_eff");
    for (name, found) in GAUGE_BLOCK.iter().zip(&combined.contributions) {
        near(*found, number(&expected["contributions"], name), absolute, name);
    }
}

/// GUM H.1: calibration of an end gauge, with Welch–Satterthwaite degrees of freedom and U at 99 %.
#[test]
fn end_gauge_of_the_gum() {
    let file = read("gum-h1-gauge-block.json");
    let (expected, published) = (&file["expected"], &file["published"]);
    let relative = number(&file["tolerance"], "expected_rel");
    let quantity = |name: &str| &file["inputs"]["quantities"][name];
    let x = GAUGE_BLOCK.map(|name| quantity(name)[0].as_f64().unwrap());
    let u = GAUGE_BLOCK.map(|name| quantity(name)[1].as_f64().unwrap());
    let nu = GAUGE_BLOCK.map(|name| quantity(name)[2].as_f64());
    assert_close(gauge_block(&x).unwrap()[0], number(expected, "y"), relative, "length");

    let budget = |c: &[f64]| {
        let components = (0..6).map(|i| Component { u: u[i], degrees_of_freedom: nu[i], sensitivity: c[i] });
        combine(&components.collect::<Vec<_>>())
    };
    // H.1.3, the derivatives written out.
    let combined = budget(&[1.0, 1.0, -x[0] * x[3], -x[0] * x[2], -x[0] * x[5], -x[0] * x[4]]);
    // The file gives contributions to nine decimals and more.
    check_gauge_block(&combined, expected, relative, 1e-9);
    near(combined.shares.iter().sum(), 1.0, 1e-15, "shares");
    assert_close(combined.shares[0], (25.0 / number(expected, "uc")).powi(2), 1e-12, "share of the standard");

    // By differencing: lengths of 5e7 nm are rounded to 7e-9, of differences of 5 nm and more.
    let found = sensitivities(gauge_block, &x, &u).unwrap();
    assert_eq!(found.shape(), (1, 6));
    check_gauge_block(&budget(found.as_slice()), expected, 1e-8, 1e-8);

    // The GUM cuts ν_eff to an integer; the real number gives a k between its neighbours in the table.
    let nu_eff = combined.degrees_of_freedom.unwrap();
    let k = coverage_factor(Some(nu_eff.floor()), 0.99).unwrap();
    assert_close(k, number(expected, "t_99"), relative, "t_99(16)");
    assert_close(k * combined.u, number(expected, "U_99"), relative, "U_99");
    let exact = coverage_factor(Some(nu_eff), 0.99).unwrap();
    assert!(exact < k && exact > coverage_factor(Some(17.0), 0.99).unwrap());

    // As printed, except the contribution of δθ: 16.6 is printed for 16.675.
    near(combined.u, number(published, "uc"), 0.5, "u_c as printed");
    near(nu_eff.floor(), number(published, "nu_eff"), 0.0, "ν_eff as printed");
    near(k, number(published, "t_99"), 0.005, "t_99 as printed");
    near(k * combined.u, number(published, "U_99"), 0.5, "U_99 as printed");
    near(combined.contributions[2], 2.9, 0.05, "δα as printed");
}

/// GUM H.1.3.2 and H.1.3.4: two inputs of the same example, themselves combined.
#[test]
fn parts_of_the_end_gauge() {
    let file = read("gum-h1-gauge-block.json");
    let expected = &file["expected"];
    let difference = combine(&[repeated(5.8, 24.0), repeated(3.9, 5.0), repeated(6.7, 8.0)]);
    assert_close(difference.u, number(expected, "u_d_from_components"), 1e-12, "u(d)");
    let nu = difference.degrees_of_freedom.unwrap();
    assert_close(nu, number(expected, "nu_d_from_components"), 1e-12, "ν(d)");
    near(difference.u, 9.7, 0.05, "u(d) as printed");
    // Printed 25.6, from the rounded 9.7.
    assert_close(9.7_f64.powi(4) / difference.u.powi(4) * nu, 25.6, 0.002, "ν(d) as printed");
    let temperature = combine(&[known(0.2, 1.0), known(0.35, 1.0)]);
    near(temperature.u, 0.41, 0.01, "u(θ) as printed: 0.403 rounded up");
    assert_eq!(temperature.degrees_of_freedom, None);
}

/// GUM G.4.1, example, from memory: y = b x₁x₂x₃, relative uncertainties of 0.25 %, 0.57 % and 0.82 % from 10, 5
/// and 15 readings. Printed: 1.03 %, ν_eff = 19.0 (unrounded a little less), t₉₅(19) = 2.09, U₉₅ = 2.2 %.
#[test]
fn product_of_the_gum() {
    let combined = combine(&[repeated(0.25, 9.0), repeated(0.57, 4.0), repeated(0.82, 14.0)]);
    near(combined.u, 1.03, 0.005, "u_c");
    near(combined.degrees_of_freedom.unwrap(), 19.0, 0.05, "ν_eff");
    let k = coverage_factor(combined.degrees_of_freedom.map(f64::round), 0.95).unwrap();
    near(k, 2.09, 0.005, "t_95");
    near(k * combined.u, 2.2, 0.05, "U_95");
}

/// What simultaneous readings of GUM H.2 give: V, I (in A) and φ of five sets.
fn impedance_readings() -> (Value, [Vec<f64>; 3]) {
    let file = read("gum-h2-impedance.json");
    let list = |name: &str| rows(&file["inputs"][name]).iter().map(|x| x.as_f64().unwrap()).collect();
    let readings = ["V", "I_A", "phi_rad"].map(list);
    (file, readings)
}

/// Resistance, reactance and impedance, Ω (H.2.2, eq. H.7).
fn impedance(x: &[f64]) -> Option<Vec<f64>> {
    let &[v, i, phi] = x else { return None };
    Some(vec![v / i * phi.cos(), v / i * phi.sin(), v / i])
}

/// Means of the readings, and the covariance matrix of the means (GUM 5.2.3, eq. 17).
fn means(readings: &[Vec<f64>; 3]) -> ([f64; 3], DMatrix<f64>) {
    let n = readings[0].len() as f64;
    let mean = [0, 1, 2].map(|i| readings[i].iter().sum::<f64>() / n);
    let covariance = DMatrix::from_fn(3, 3, |i, j| {
        let pairs = readings[i].iter().zip(&readings[j]);
        pairs.map(|(a, b)| (a - mean[i]) * (b - mean[j])).sum::<f64>() / (n * (n - 1.0))
    });
    (mean, covariance)
}

fn check_correlations(covariance: &DMatrix<f64>, names: [&str; 3], expected: &Value, relative: f64) {
    for (name, (i, j)) in names.iter().zip([(0, 1), (0, 2), (1, 2)]) {
        let r = covariance[(i, j)] / (covariance[(i, i)] * covariance[(j, j)]).sqrt();
        assert_close(r, number(expected, name), relative, name);
    }
}

/// GUM H.2, approach 1: three results from three correlated inputs.
#[test]
fn impedance_of_the_gum() {
    let (file, readings) = impedance_readings();
    let expected = &file["expected"];
    let relative = number(&file["tolerance"], "expected_rel");
    let (x, covariance) = means(&readings);
    let u = [0, 1, 2].map(|i| covariance[(i, i)].sqrt());
    check_correlations(&covariance, ["rVI", "rVphi", "rIphi"], expected, relative);

    let [v, i, phi] = x;
    let z = v / i;
    let (sin, cos) = phi.sin_cos();
    let written_out = DMatrix::from_row_slice(
        3,
        3,
        &[cos / i, -z * cos / i, -z * sin, sin / i, -z * sin / i, z * cos, 1.0 / i, -z / i, 0.0],
    );
    let differenced = sensitivities(impedance, &x, &u).unwrap();
    // The relative error of a central difference over ±u is u²f‴/6f′: below (u/x)² here, 6e-7.
    for (jacobian, relative) in [(&written_out, relative), (&differenced, 2e-6)] {
        let results = propagate(jacobian, &covariance).unwrap();
        for (index, name) in ["uR", "uX", "uZ"].iter().enumerate() {
            assert_close(results[(index, index)].sqrt(), number(expected, name), relative, name);
        }
        check_correlations(&results, ["rRX", "rRZ", "rXZ"], expected, relative);
        assert_eq!(results, results.transpose());
        near(results[(0, 0)].sqrt(), number(&file["published"], "uR"), 5e-4, "u(R) as printed");
        near(results[(2, 2)].sqrt(), number(&file["published"], "uZ"), 5e-4, "u(Z) as printed");
    }
    let values = impedance(&x).unwrap();
    for (name, value) in ["R", "X", "Z"].iter().zip(values) {
        assert_close(value, number(expected, name), relative, name);
        near(value, number(&file["published"], name), 5e-4, "as printed");
    }
}

/// GUM H.2.4, approach 2: the results of each set first, then their mean and its scatter.
#[test]
fn impedance_of_the_gum_set_by_set() {
    let (file, readings) = impedance_readings();
    let expected = &file["approach2"];
    let results: Vec<_> =
        (0..5).map(|set| impedance(&[0, 1, 2].map(|i: usize| readings[i][set])).unwrap()).collect();
    for (index, name) in ["R", "X", "Z"].iter().enumerate() {
        let mut values: Vec<f64> = results.iter().map(|result| result[index]).collect();
        let summary = summarise(&mut values, 0.5).unwrap();
        assert_close(summary.mean, number(expected, name), 1e-13, name);
        assert_close(summary.u / 5.0_f64.sqrt(), number(expected, &format!("u{name}")), 1e-11, name);
    }
}

/// GUM 5.2.2, example, from memory: ten resistors of 1 kΩ compared with one standard, u = 100 mΩ each. In series
/// their errors are one error, and u_c = 1 Ω; taken as independent they would give 0.32 Ω.
#[test]
fn ten_resistors_of_the_gum() {
    let sum = DMatrix::from_element(1, 10, 1.0);
    let common = propagate(&sum, &DMatrix::from_element(10, 10, 0.1 * 0.1)).unwrap();
    assert_close(common[(0, 0)].sqrt(), 1.0, 1e-14, "one error");
    let apart = propagate(&sum, &(DMatrix::identity(10, 10) * (0.1 * 0.1))).unwrap();
    near(apart[(0, 0)].sqrt(), 0.32, 0.005, "ten errors");
}

/// GUM table G.2, all its rows, and the row of ν = ∞ from memory: 1.000, 1.645, 1.960, 2.000, 2.576, 3.000.
#[test]
fn table_g2_of_the_gum() {
    let file = read("gum-table-g2.json");
    let relative = number(&file["tolerance"], "expected_rel");
    let p: Vec<f64> = rows(&file["inputs"]["p_numeric"]).iter().map(|p| p.as_f64().unwrap()).collect();
    assert_eq!(p.len(), 6);
    for row in rows(&file["expected"]["rows"]) {
        let nu = row[0].as_f64().unwrap();
        for (column, p) in p.iter().enumerate() {
            let k = coverage_factor(Some(nu), *p).unwrap();
            assert_close(k, row[column + 1].as_f64().unwrap(), relative, format!("ν = {nu}, p = {p}"));
        }
    }
    for (p, printed) in p.iter().zip([1.0, 1.645, 1.96, 2.0, 2.576, 3.0]) {
        let k = coverage_factor(None, *p).unwrap();
        near(k, printed, 5e-4, "ν = ∞ as printed");
        assert_close(k, normal_upper_quantile((1.0 - p) / 2.0), 1e-15, "ν = ∞");
        assert_close(coverage_factor(Some(f64::INFINITY), *p).unwrap(), k, 1e-15, "ν = ∞, said otherwise");
    }
}

#[test]
fn coverage_factors_that_are_refused() {
    for nu in [0.999, 0.0, -3.0] {
        assert_eq!(coverage_factor(Some(nu), 0.95), Err(BudgetError::DegreesOfFreedom { got: nu }));
    }
    assert!(matches!(coverage_factor(Some(f64::NAN), 0.95), Err(BudgetError::DegreesOfFreedom { .. })));
    for p in [0.0, 1.0, -0.5, 95.0] {
        assert_eq!(coverage_factor(None, p), Err(BudgetError::Probability { got: p }));
    }
    assert!(matches!(coverage_factor(None, f64::NAN), Err(BudgetError::Probability { .. })));
    // Tangent of 0.95 · 90°: t with one degree of freedom is Cauchy's distribution.
    let k = coverage_factor(Some(1.0), 0.95).unwrap();
    assert_close(k, (0.95 * std::f64::consts::FRAC_PI_2).tan(), 1e-12, "ν = 1");
}

#[test]
fn ends_of_combination() {
    let nothing = Combined { u: 0.0, degrees_of_freedom: None, contributions: vec![], shares: vec![] };
    assert_eq!(combine(&[]), nothing);
    let exact = combine(&[Component { u: 0.0, degrees_of_freedom: Some(3.0), sensitivity: 2.0 }]);
    assert_eq!((exact.u, exact.degrees_of_freedom), (0.0, None));
    assert_eq!((exact.contributions, exact.shares), (vec![0.0], vec![0.0]));
    // Squares out of the range of doubles.
    for scale in [1e200, 1e-200] {
        let combined = combine(&[repeated(3.0 * scale, 5.0), known(4.0, scale)]);
        assert_close(combined.u, 5.0 * scale, 1e-15, "3-4-5");
        assert_close(combined.degrees_of_freedom.unwrap(), 5.0 / 0.36_f64.powi(2), 1e-14, "ν_eff");
    }
    for nu in [0.0, -2.0, f64::NAN] {
        let refused = combine(&[repeated(1.0, nu), repeated(1.0, 9.0)]);
        assert_eq!(refused.degrees_of_freedom, Some(0.0), "ν = {nu}");
    }
    assert!(combine(&[known(f64::NAN, 1.0), known(1.0, 1.0)]).u.is_nan());
}

#[test]
fn sensitivities_that_are_refused() {
    let square = |x: &[f64]| Some(vec![x[0] * x[0]]);
    assert_eq!(sensitivities(square, &[3.0], &[0.5]), Some(DMatrix::from_element(1, 1, 6.0)));
    for step in [0.0, -0.1, 1e-17, f64::NAN, f64::INFINITY] {
        assert_eq!(sensitivities(square, &[3.0], &[step]), None, "step {step}");
    }
    assert_eq!(sensitivities(square, &[3.0], &[0.5, 0.5]), None);
    assert_eq!(sensitivities(square, &[], &[]), None);
    let root = |x: &[f64]| (x[0] >= 0.0).then(|| vec![x[0].sqrt()]);
    assert_eq!(sensitivities(root, &[1.0], &[2.0]), None);
    let pole = |x: &[f64]| Some(vec![1.0 / (x[0] - 1.0)]);
    assert_eq!(sensitivities(pole, &[2.0], &[1.0]), None);
    let ragged = |x: &[f64]| Some(vec![1.0; if x[0] > 3.0 { 2 } else { 1 }]);
    assert_eq!(sensitivities(ragged, &[3.0], &[1.0]), None);
    // A step of a few roundings of the input is measured as it came out.
    let itself = |x: &[f64]| Some(x.to_vec());
    assert_eq!(sensitivities(itself, &[1.0], &[1e-15]), Some(DMatrix::from_element(1, 1, 1.0)));
    let two = DMatrix::from_element(1, 2, 1.0);
    assert_eq!(propagate(&two, &DMatrix::identity(3, 3)), None);
    assert_eq!(propagate(&two, &DMatrix::from_element(2, 3, 1.0)), None);
}

fn components() -> impl Strategy<Value = Vec<(f64, f64, f64)>> {
    prop::collection::vec((0.01..10.0, 1.0..100.0, -5.0..5.0), 1..8)
}

proptest! {
    /// GUM G.4.1: ν_eff is at most the sum of all ν; nor is it below the least. One component keeps its own, and n
    /// alike have nν.
    #[test]
    fn limits_of_welch_and_satterthwaite(list in components()) {
        let parts: Vec<Component> = list
            .iter()
            .map(|&(u, nu, c)| Component { u, degrees_of_freedom: Some(nu), sensitivity: c })
            .collect();
        let nu = combine(&parts).degrees_of_freedom.unwrap();
        let least = list.iter().map(|part| part.1).fold(f64::INFINITY, f64::min);
        let sum: f64 = list.iter().map(|part| part.1).sum();
        prop_assert!(nu >= least * (1.0 - 1e-12) && nu <= sum * (1.0 + 1e-12), "{nu}: {least} to {sum}");

        let alone = combine(&parts[..1]).degrees_of_freedom.unwrap();
        prop_assert!((alone / list[0].1 - 1.0).abs() < 1e-14);
        let alike = combine(&vec![parts[0]; parts.len()]).degrees_of_freedom.unwrap();
        prop_assert!((alike / (list[0].1 * parts.len() as f64) - 1.0).abs() < 1e-12);
        // With ν proportional to the variances, the upper limit is met.
        let matched: Vec<Component> = parts
            .iter()
            .map(|part| repeated(part.u, part.u * part.u))
            .collect();
        let total: f64 = parts.iter().map(|part| part.u * part.u).sum();
        prop_assert!((combine(&matched).degrees_of_freedom.unwrap() / total - 1.0).abs() < 1e-12);
    }

    /// Without correlations the matrix says what the list says.
    #[test]
    fn a_diagonal_matrix_is_a_list(list in components()) {
        let parts: Vec<Component> = list.iter().map(|&(u, _, c)| known(u, c)).collect();
        let combined = combine(&parts);
        let c = DMatrix::from_row_iterator(1, parts.len(), parts.iter().map(|part| part.sensitivity));
        let v = DMatrix::from_fn(parts.len(), parts.len(), |i, j| if i == j { parts[i].u.powi(2) } else { 0.0 });
        let matrix = propagate(&c, &v).unwrap();
        prop_assert!((matrix[(0, 0)].sqrt() / combined.u - 1.0).abs() < 1e-13);
        let shares: f64 = combined.shares.iter().sum();
        prop_assert!((shares - 1.0).abs() < 1e-14);
        for (share, part) in combined.shares.iter().zip(&combined.contributions) {
            prop_assert!((share - (part / combined.u).powi(2)).abs() < 1e-14);
        }
    }

    /// A straight model has the same sensitivities over any step.
    #[test]
    fn a_straight_model_is_differenced_exactly(list in components()) {
        let model = |x: &[f64]| Some(vec![x.iter().zip(&list).map(|(x, part)| x * part.2).sum()]);
        let at = vec![0.0; list.len()];
        let steps: Vec<f64> = list.iter().map(|part| part.0).collect();
        let found = sensitivities(model, &at, &steps).unwrap();
        for (found, part) in found.iter().zip(&list) {
            prop_assert!((found - part.2).abs() <= 1e-15 * part.2.abs());
        }
    }
}
