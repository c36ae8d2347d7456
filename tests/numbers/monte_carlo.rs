//! Monte Carlo runs against JCGM 101:2008 (its examples, and its rules on small lists), and their mean and standard
//! deviation against the certified sets of NIST. The data lie in `reference/`.
//!
//! Seeds are fixed; limits of random figures are of four standard deviations.
#![expect(clippy::unwrap_used, reason = "tests")]

use serde_json::Value;
use slope_of_light::budget::{
    BudgetError, Component, Random, Shape, Summary, combine, coverage_factor, histogram, sensitivities,
    summarise, tolerance, validate,
};
use slope_of_light::distribution::normal_upper_quantile;

use crate::reference::{assert_close, number, read, rows};

const TRIALS: usize = 1_000_000;

#[track_caller]
fn near(found: f64, expected: f64, tolerance: f64, place: &str) {
    assert!(
        (found - expected).abs() <= tolerance,
        "{place}: found {found:e}, expected {expected:e} ± {tolerance:e}"
    );
}

fn run(stream: u64, mut trial: impl FnMut(&mut Random) -> f64) -> Summary {
    let mut random = Random::new(101, stream);
    let mut values: Vec<f64> = (0..TRIALS).map(|_| trial(&mut random)).collect();
    summarise(&mut values, 0.95).unwrap()
}

/// Standard deviation of a quantile of `TRIALS` values, where `p` lies beyond it and the density is `density`.
fn scatter_of_end(p: f64, density: f64) -> f64 {
    (p * (1.0 - p) / TRIALS as f64).sqrt() / density
}

fn ends(half: f64) -> (f64, f64) {
    (-half, half)
}

/// X₁ + X₂ + X₃ + X₄ of JCGM 101, 9.2: standard deviation 1 each, the last perhaps another.
fn additive(stream: u64, shape: Shape, last: f64) -> Summary {
    run(stream, |random| {
        let [a, b, c, d] = [(); 4].map(|()| shape.draw(random));
        a + b + c + last * d
    })
}

/// Compares with exact mean 0, `u` and half-width of the interval; `density` is that of the sum at its ends, and
/// `kurtosis` its fourth moment over u⁴.
fn check_additive(summary: &Summary, u: f64, half: f64, density: f64, kurtosis: f64) {
    let root = (TRIALS as f64).sqrt();
    assert_eq!(summary.trials, TRIALS);
    near(summary.mean, 0.0, 4.0 * u / root, "mean");
    near(summary.u, u, 4.0 * u * (kurtosis - 1.0).sqrt() / 2.0 / root, "u");
    let scatter = scatter_of_end(0.025, density);
    near(summary.symmetric.0, -half, 4.0 * scatter, "lower end");
    near(summary.symmetric.1, half, 4.0 * scatter, "upper end");
    // The exact shortest interval is the same. Its ends scatter more, its length about as much as one end's.
    let length = summary.shortest.1 - summary.shortest.0;
    near(length, 2.0 * half, 8.0 * scatter, "length of the shortest");
    assert!(length <= summary.symmetric.1 - summary.symmetric.0);
    near(summary.shortest.0, -half, 0.03 * half, "lower end of the shortest");
}

/// The interval of the budget: normal, k = 1.96.
fn budget_interval(components: &[Component]) -> (f64, f64) {
    let combined = combine(components);
    ends(coverage_factor(combined.degrees_of_freedom, 0.95).unwrap() * combined.u)
}

fn additive_budget(last: f64) -> (f64, f64) {
    let known = |sensitivity| Component { u: 1.0, degrees_of_freedom: None, sensitivity };
    budget_interval(&[known(1.0), known(1.0), known(1.0), known(last)])
}

/// JCGM 101, 9.2.2: four normal inputs. Table 2 validates the budget's interval with δ = 0.05 (from memory).
#[test]
fn four_normal_inputs() {
    let expected = &read("jcgm101-9-2-additive.json")["expected"]["normal"];
    let half = number(expected, "interval95_half");
    let summary = additive(0, Shape::Normal, 1.0);
    let z: f64 = normal_upper_quantile(0.025);
    let density = (-0.5 * z * z).exp() / (2.0 * std::f64::consts::PI).sqrt() / 2.0;
    check_additive(&summary, number(expected, "u"), half, density, 3.0);
    let budget = additive_budget(1.0);
    assert_close(budget.1, half, 1e-12, "U");
    let verdict = validate(budget, summary.symmetric, 2.0, 2);
    assert!(verdict.agrees && verdict.tolerance == 0.05, "{verdict:?}");
}

/// JCGM 101, 9.2.3: four rectangular inputs of the same width. The exact interval is 0.0405 narrower on either side:
/// within δ = 0.05, so Table 3 validates the budget (from memory). With one more digit it would not.
#[test]
fn four_rectangular_inputs() {
    let expected = &read("jcgm101-9-2-additive.json")["expected"]["rectangular"];
    let half = number(expected, "exact_interval95_half");
    let width = 2.0 * 3.0_f64.sqrt();
    // The tail of the sum is t⁴/24, t the distance from its largest value in widths.
    let tail = 0.6_f64.powf(0.25);
    assert_close(half, width * (2.0 - tail), 1e-12, "closed form");
    let summary = additive(1, Shape::Rectangular, 1.0);
    check_additive(&summary, number(expected, "u"), half, tail.powi(3) / 6.0 / width, 3.0 - 1.2 / 4.0);
    let budget = additive_budget(1.0);
    assert_close(budget.1, number(expected, "gum_interval95_half"), 1e-12, "U");
    // By the exact interval: at two digits a million trials leave too much to luck.
    let verdict = validate(budget, ends(half), 2.0, 2);
    assert!(verdict.agrees && verdict.tolerance == 0.05, "{verdict:?}");
    near(verdict.low, 0.040_521_2, 1e-6, "d_low");
    near(verdict.high, 0.040_521_2, 1e-6, "d_high");
    assert!(!validate(budget, ends(half), 2.0, 3).agrees);
    assert!(!validate(budget, summary.symmetric, 2.0, 3).agrees);
}

/// JCGM 101, 9.2.4: one rectangular input ten times as wide. Table 4 refuses the budget with δ = 0.5.
#[test]
fn one_dominant_rectangular_input() {
    let expected = &read("jcgm101-9-2-additive.json")["expected"]["rectangular_u4_10"];
    let (u, half) = (number(expected, "u"), number(expected, "exact_interval95_half"));
    let summary = additive(2, Shape::Rectangular, 10.0);
    // Near its end the sum has the wide input's density, times the chance that the others (density about 0.75 of
    // their width's inverse in the middle) reach over the edge.
    let width = 2.0 * 3.0_f64.sqrt();
    let density = (0.5 + 0.75 / width * (5.0 * width - half)) / (10.0 * width);
    // Excess of a rectangular input −1.2, in the share of its variance.
    check_additive(&summary, u, half, density, 3.0 - 1.2 * (3.0 + 1e4) / u.powi(4));
    let budget = additive_budget(10.0);
    assert_close(budget.1, number(expected, "gum_interval95_half"), 1e-12, "U");
    let verdict = validate(budget, summary.symmetric, u, 2);
    assert!(!verdict.agrees && verdict.tolerance == 0.5, "{verdict:?}");
    near(verdict.high, 2.9, 0.1, "d_high as printed: 19.9 against 17.0");
}

/// Conventional mass, mg (JCGM 101, 9.3.1.3).
fn mass(x: &[f64]) -> Option<Vec<f64>> {
    let &[reference, added, air, weight, standard] = x else { return None };
    Some(vec![(reference + added) * (1.0 + (air - 1.2) * (1.0 / weight - 1.0 / standard)) - 100_000.0])
}

/// JCGM 101, 9.3: calibration of a mass. First-order sensitivities to the densities vanish, so the budget's
/// uncertainty is a third too small; tables 5 and 6.
#[test]
fn calibration_of_a_mass() {
    let file = read("jcgm101-9-3-mass.json");
    let (expected, published) = (&file["expected"], &file["published"]);
    let mcm = &expected["mcm"];
    let at = [100_000.0, 1.234, 1.2, 8_000.0, 8_000.0];
    // Half-widths of the last three.
    let spread = [0.050, 0.020, 0.1, 1_000.0, 50.0];
    // 6.4.2: a/√3.
    let rectangular = (1.0_f64 / 3.0).sqrt();
    let u: Vec<f64> = (0..5).map(|input| spread[input] * if input < 2 { 1.0 } else { rectangular }).collect();
    let summary = run(3, |random| {
        let mut x = at;
        for (input, value) in x.iter_mut().enumerate() {
            let shape = if input < 2 { Shape::Normal } else { Shape::Rectangular };
            *value += u[input] * shape.draw(random);
        }
        mass(&x).unwrap()[0]
    });
    // The file: a million trials scatter by about 1e-4 in u, and by 2e-4 to 3e-4 in the ends.
    near(summary.mean, number(mcm, "mean"), 4.0 * 7.6e-5, "mean");
    near(summary.u, number(mcm, "u"), 2.5e-4, "u");
    for interval in ["equal_tail95", "shortest95"] {
        let (low, high) = (mcm[interval][0].as_f64().unwrap(), mcm[interval][1].as_f64().unwrap());
        near(summary.symmetric.0, low, 8e-4, interval);
        near(summary.symmetric.1, high, 8e-4, interval);
        near(summary.shortest.0, low, 4e-3, interval);
        near(summary.shortest.1 - summary.shortest.0, high - low, 1.6e-3, interval);
    }

    let c = sensitivities(mass, &at, &u).unwrap();
    assert_eq!((c[(0, 3)], c[(0, 4)]), (0.0, 0.0));
    let components: Vec<Component> = u
        .iter()
        .zip(c.iter())
        .map(|(u, c)| Component { u: *u, degrees_of_freedom: None, sensitivity: *c })
        .collect();
    let first = &expected["gum_first_order"];
    // The file has ten digits, and 1e5 mg are rounded to 1.5e-11 mg of differences of 0.1 mg.
    assert_close(combine(&components).u, number(first, "u"), 2e-9, "u of the budget");
    let half = budget_interval(&components).1;
    let budget = (1.234 - half, 1.234 + half);
    near(budget.0, first["interval95"][0].as_f64().unwrap(), 1e-6, "lower end of the budget");
    near(budget.1, published["gum_first_order"][3].as_f64().unwrap(), 5e-5, "upper end as printed");
    // Table 6 with δ = 0.005: first order not validated, higher order validated (from memory).
    let verdict = validate(budget, summary.symmetric, 0.0754, 1);
    assert!(!verdict.agrees && verdict.tolerance == 0.005, "{verdict:?}");
    near(verdict.low, 0.0451, 1.5e-3, "d_low as printed");
    near(verdict.high, 0.0430, 1.5e-3, "d_high as printed");
    let higher = &expected["gum_higher_order"];
    let interval = (higher["interval95"][0].as_f64().unwrap(), higher["interval95"][1].as_f64().unwrap());
    assert!(validate(interval, summary.symmetric, number(higher, "u"), 1).agrees);
}

/// JCGM 101, 9.4.2: comparison loss X₁² + X₂² in microwave power, both normal about 0 with u = 0.005. The result has
/// an exponential distribution of mean 2u² (closed form); table 7 prints mean 50, u 50 and the shortest 95 %
/// interval 0 to 150, in 10⁻⁶ (from memory).
#[test]
fn comparison_loss() {
    let summary = run(4, |random| {
        let [a, b] = [(); 2].map(|()| 0.005 * Shape::Normal.draw(random));
        (a * a + b * b) * 1e6
    });
    let scale = 50.0;
    let root = (TRIALS as f64).sqrt();
    near(summary.mean, scale, 4.0 * scale / root, "mean");
    // An exponential distribution has the kurtosis 9.
    near(summary.u, scale, 4.0 * scale * 2.0_f64.sqrt() / root, "u");
    let quantile = |above: f64| -scale * above.ln();
    let scatter = |above: f64| scatter_of_end(above, above / scale);
    near(summary.symmetric.0, quantile(0.975), 4.0 * scatter(0.975), "lower end");
    near(summary.symmetric.1, quantile(0.025), 4.0 * scatter(0.025), "upper end");
    near(summary.shortest.0, 0.0, 0.01, "lower end of the shortest");
    near(summary.shortest.1, quantile(0.05), 4.0 * scatter(0.05), "upper end of the shortest");
    near(summary.shortest.1, 150.0, 1.0, "as printed");
}

/// GUM H.1.7: the second-order terms of the end gauge, found by trials with normal inputs: 34 nm, not 32 nm.
#[test]
fn second_order_of_the_end_gauge() {
    let file = read("gum-h1-gauge-block.json");
    let quantity = |name: &str| {
        let row = rows(&file["inputs"]["quantities"][name]);
        (row[0].as_f64().unwrap(), row[1].as_f64().unwrap())
    };
    let inputs = ["ls", "d", "delta_alpha", "theta", "alpha", "delta_theta"].map(quantity);
    let summary = run(5, |random| {
        let [l, d, delta_alpha, theta, alpha, delta_theta] = inputs.map(|(x, u)| x + u * random.normal());
        l + d - l * (delta_alpha * theta + alpha * delta_theta)
    });
    let expected = number(&file["expected"], "uc_with_second_order");
    // The kurtosis of the result is near 3.
    near(summary.u, expected, 4.5 * expected / (2.0 * TRIALS as f64).sqrt(), "u");
    near(summary.mean, number(&file["expected"], "y"), 4.0 * expected / (TRIALS as f64).sqrt(), "mean");
    near(summary.u, number(&file["published"], "uc_with_second_order"), 0.5, "u as printed");
}

/// The values of a NIST set, and what doubles of them make of its certified figures.
fn nist(name: &str) -> (Vec<f64>, Value) {
    let file = read(&format!("nist-univariate-{name}.json"));
    let inputs = &file["inputs"];
    let values = if inputs["y"].is_array() {
        rows(&inputs["y"]).iter().map(|y| y.as_f64().unwrap()).collect()
    } else {
        let pair = rows(&inputs["pair"]).iter().map(|y| y.as_f64().unwrap()).collect::<Vec<_>>();
        let mut values = pair.repeat(500);
        values.insert(0, number(inputs, "first"));
        values
    };
    assert_eq!(values.len() as f64, number(inputs, "n"));
    (values, file["confirmed"]["if_inputs_rounded_to_binary64"].clone())
}

/// NIST Statistical Reference Datasets, univariate summary statistics: mean and standard deviation to all digits that
/// the doubles of the data hold. `NumAcc3` has a mean of ten million standard deviations: a sum of squares keeps
/// two digits of it.
#[test]
fn certified_sets_of_nist() {
    for name in ["lottery", "mavro", "michelso", "numacc1", "numacc3"] {
        let (mut values, expected) = nist(name);
        // NumAcc1 has three values, so the interval is not of 95 %.
        let summary = summarise(&mut values, 0.5).unwrap();
        assert_close(summary.mean, number(&expected, "mean"), 4.5e-16, name);
        assert_close(summary.u, number(&expected, "sd"), 1e-15, name);
    }
}

/// A mean between two neighbouring doubles: √2 by hand, where deviations from the rounded mean alone give 2.
#[test]
fn scatter_as_small_as_the_rounding_of_the_mean() {
    let summary = summarise(&mut [2.0_f64.powi(53), 2.0_f64.powi(53) + 2.0], 0.5).unwrap();
    assert_eq!(summary.u, 2.0_f64.sqrt());
}

/// The rules of JCGM 101, 7.7, on squares of 1 … M, counted by hand: q is pM, or the integer nearest to it; the
/// symmetric interval begins at (M − q)/2 rounded up, the shortest at the first value.
#[test]
fn ranks_of_the_intervals() {
    let cases = [
        // M, p, q, r
        (10, 0.5, 5, 3),
        (11, 0.5, 6, 3),
        (12, 0.5, 6, 3),
        (20, 0.9, 18, 1),
        (40, 0.95, 38, 1),
        (41, 0.95, 39, 1),
        (100, 0.95, 95, 3),
        (1000, 0.95, 950, 25),
    ];
    for (m, p, q, r) in cases {
        let square = |rank: u32| f64::from(rank * rank);
        let mut values: Vec<f64> = (1..=m).map(square).collect();
        values.reverse();
        let summary = summarise(&mut values, p).unwrap();
        assert_eq!(summary.symmetric, (square(r), square(r + q)), "M = {m}, p = {p}");
        assert_eq!(summary.shortest, (square(1), square(1 + q)), "M = {m}, p = {p}");
        assert!(values.is_sorted());
        let mut falling: Vec<f64> = (1..=m).map(|rank| -square(rank)).collect();
        let summary = summarise(&mut falling, p).unwrap();
        assert_eq!(summary.shortest, (-square(1 + q), -square(1)), "M = {m}, p = {p}, falling");
    }
}

#[test]
fn the_order_of_the_trials_does_not_matter() {
    let mut random = Random::new(8, 0);
    let mut values: Vec<f64> = (0..5_000).map(|_| 1e6 + random.normal()).collect();
    let mut turned = values.clone();
    turned.rotate_left(1_234);
    turned.reverse();
    assert_eq!(summarise(&mut values, 0.95), summarise(&mut turned, 0.95));
}

#[test]
fn lists_that_are_refused() {
    let probability = |got| Err(BudgetError::Probability { got });
    assert_eq!(summarise(&mut [1.0, 2.0, 3.0], 0.0), probability(0.0));
    assert_eq!(summarise(&mut [1.0, 2.0, 3.0], 1.0), probability(1.0));
    assert!(matches!(summarise(&mut [1.0, 2.0], f64::NAN), Err(BudgetError::Probability { .. })));
    let mut failed = [1.0, f64::NAN, 3.0, f64::INFINITY, f64::NEG_INFINITY];
    assert_eq!(summarise(&mut failed, 0.5), Err(BudgetError::NoValue { trials: 5, without: 3 }));
    let too_few = |got, needed| Err(BudgetError::TooFewTrials { got, needed });
    assert_eq!(summarise(&mut [], 0.95), too_few(0, 11));
    assert_eq!(summarise(&mut [1.0; 10], 0.95), too_few(10, 11));
    assert!(summarise(&mut [1.0; 11], 0.95).is_ok());
    assert_eq!(summarise(&mut [1.0; 9], 0.05), too_few(9, 10));
    assert!(summarise(&mut [1.0; 10], 0.05).is_ok());
    assert_eq!(summarise(&mut [1.0], 0.5), too_few(1, 2));
    assert!(summarise(&mut [1.0, 2.0], 0.5).is_ok());
    assert_eq!(summarise(&mut [1e308, 1e308, -1e308], 0.5), Err(BudgetError::OutOfRange));
    // All alike: no scatter, and no negative square under a root.
    let same = summarise(&mut [0.1; 100], 0.95).unwrap();
    assert_eq!((same.mean, same.u), (0.1, 0.0));
    assert_eq!((same.symmetric, same.shortest), ((0.1, 0.1), (0.1, 0.1)));
}

/// δ of JCGM 101, 7.9.2, examples 1 to 3 (from memory): 0.000 35 g with two digits and with one, 2 K with one; then
/// carries and ends.
#[test]
fn tolerances() {
    let cases = [
        (0.000_35, 2, 0.000_005),
        (0.000_35, 1, 0.000_05),
        (2.0, 1, 0.5),
        (0.0996, 2, 0.005),
        (0.0994, 2, 0.0005),
        (9.96, 2, 0.5),
        (9.94, 2, 0.05),
        (1.0, 2, 0.05),
        (999.0, 2, 50.0),
        (0.3, 3, 0.0005),
        (7.0, 0, 0.5),
        (0.0, 2, 0.0),
        (3e-300, 2, 5e-302),
    ];
    for (u, digits, expected) in cases {
        // Exact within the powers of ten that are doubles, rounded a few hundred times far outside.
        let allowed = if u > 1e-20 || u == 0.0 { 0.0 } else { 1e-13 };
        let found = tolerance(u, digits);
        assert!((found - expected).abs() <= allowed * expected, "u = {u}, {digits} digits: {found}");
    }
    assert!(tolerance(f64::NAN, 2).is_nan() && tolerance(f64::INFINITY, 2).is_nan());
    assert!(!validate((0.0, 1.0), (0.0, 1.0), f64::NAN, 2).agrees);
    // The smaller distance does not excuse the larger, on either side.
    assert!(validate((0.0, 1.0), (0.049, 1.049), 1.0, 2).agrees);
    assert!(!validate((0.0, 1.0), (0.0, 1.051), 1.0, 2).agrees);
    assert!(!validate((0.0, 1.0), (-0.051, 1.0), 1.0, 2).agrees);
}

#[test]
fn histograms() {
    let found = histogram(&[0.0, 0.5, 1.0, 1.5, 2.0, 2.5, 4.0], 4);
    assert_eq!((found.from, found.width), (0.0, 1.0));
    assert_eq!(found.counts, [2, 2, 2, 1]);
    let same = histogram(&[3.0; 5], 7);
    assert_eq!((same.from, same.width, same.counts), (3.0, 0.0, vec![5]));
    assert!(histogram(&[], 4).counts.is_empty());
    assert!(histogram(&[1.0, 2.0], 0).counts.is_empty());
    let mut random = Random::new(10, 0);
    let mut values: Vec<f64> = (0..20_000).map(|_| Shape::Triangular.draw(&mut random)).collect();
    values.sort_unstable_by(f64::total_cmp);
    let found = histogram(&values, 24);
    assert_eq!(found.counts.iter().sum::<usize>(), 20_000);
    for (bin, count) in found.counts.iter().enumerate() {
        let edge = |bin: usize| found.from + found.width * bin as f64;
        let between = values.iter().filter(|x| **x >= edge(bin) && **x < edge(bin + 1)).count();
        // An edge is rounded, and the largest value belongs to the last bin.
        assert!(count.abs_diff(between) <= 1, "bin {bin}: {count}, {between}");
    }
}
