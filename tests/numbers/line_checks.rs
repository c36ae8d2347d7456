//! Runs, doubtful rows and the side checks against published values. Each test names its source.
#![expect(clippy::unwrap_used, reason = "tests")]

use serde_json::Value;
use slope_of_light::line::{
    Data, Dense, FreeColumn, Noise, SharedColumn, Stated,
    checks::{self, theil_sen},
    diagnostics::{RunsTest, chauvenet, expected_beyond, peirce, peirce_limit, runs_probability},
    fit,
};

use crate::reference::{assert_close as close, numbers, read as reference, sole as number};

fn count(value: &Value) -> usize {
    usize::try_from(value.as_u64().unwrap()).unwrap()
}

/// A. Wald and J. Wolfowitz, Ann. Math. Stat. 11 (1940) 147; exact by enumeration.
#[test]
fn runs_of_signs() {
    let set = reference("runs-test-wald-wolfowitz.json");
    let tolerance = number(&set["tolerance"]["rel"]);
    for example in set["expected"]["examples"].as_array().unwrap() {
        let sequence = example["sequence"].as_str().unwrap();
        let values: Vec<f64> = sequence.chars().map(|sign| if sign == '+' { 0.3 } else { -2.0 }).collect();
        let runs = RunsTest::of(&values).unwrap();
        let value = |name: &str| number(&example[name]);
        let counts = [runs.plus, runs.minus, runs.runs];
        assert_eq!(counts, ["n_plus", "n_minus", "runs"].map(|name| count(&example[name])), "{sequence}");
        close(runs.expected, value("mean"), tolerance, "mean");
        close(runs.deviation, value("sd"), tolerance, "sd");
        close(runs.z(), value("z"), tolerance, "z");
        close(runs.p_few, value("p_exact_le"), tolerance, "p(≤)");
        close(runs.p_many, value("p_exact_ge"), tolerance, "p(≥)");
    }
    for table in set["expected"]["exact_distributions"].as_array().unwrap() {
        for (runs, probability) in table["pmf"].as_object().unwrap() {
            let (top, bottom) = probability.as_str().unwrap().split_once('/').unwrap();
            let want = top.parse::<f64>().unwrap() / bottom.parse::<f64>().unwrap();
            let got = runs_probability(count(&table["n1"]), count(&table["n2"]), runs.parse().unwrap());
            close(got, want, tolerance, runs);
        }
    }
}

/// Beyond forty values the normal approximation: z and p of 30 runs of two, by the formulas of Wald and Wolfowitz:
/// n₊ = n₋ = 30, mean 31, variance 1800·1740/(3600·59), z = −0.26040….
#[test]
fn runs_of_many_signs() {
    let values: Vec<f64> = (0..60).map(|i| if i / 2 % 2 == 0 { 1.0 } else { -1.0 }).collect();
    let runs = RunsTest::of(&values).unwrap();
    assert_eq!((runs.plus, runs.minus, runs.runs), (30, 30, 30));
    close(runs.z(), -1.0 / (1800.0_f64 * 1740.0 / (3600.0 * 59.0)).sqrt(), 1e-14, "z");
    close(runs.p_few + runs.p_many, 1.0, 1e-14, "both tails");
    assert!(runs.p_few < 0.5);
}

#[test]
fn runs_need_both_signs() {
    assert_eq!(RunsTest::of(&[1.0, 0.0, 2.0]), None);
    assert_eq!(RunsTest::of(&[]), None);
    assert!(RunsTest::of(&[1.0, -1.0]).is_some());
}

/// Chauvenet's criterion by its definition: so far out, half a value is expected. Two-decimal tables in J. R. Taylor, *An Introduction to Error Analysis*.
#[test]
fn limits_of_chauvenet() {
    let set = reference("chauvenet-criterion.json");
    for entry in set["expected"].as_array().unwrap() {
        let halved_within = |limit: f64, slack: f64| {
            let expected = |deviation| expected_beyond(count(&entry["N"]), deviation);
            assert!(expected(limit - slack) > 0.5 && expected(limit + slack) < 0.5, "{entry}");
        };
        let ratio = number(&entry["ratio"]);
        halved_within(ratio, ratio * number(&set["tolerance"]["computed_rel"]));
        // Some printed tables cut instead of rounding: up to one unit of their second decimal.
        halved_within(number(&entry["table"]), 0.01);
    }
}

/// Peirce's criterion, Gould's equations (Astron. J. 4 (1855) 81); three-decimal table of S. M. Ross,
/// J. Eng. Technol. 20 (2003) 38.
#[test]
fn limits_of_peirce() {
    let set = reference("peirce-criterion.json");
    for entry in set["expected"].as_array().unwrap() {
        let n = count(&entry["N"]);
        for (doubtful, want) in (1..).zip(numbers(&entry["R"])) {
            let limit = peirce_limit(n, doubtful, 1).unwrap();
            close(limit, want, number(&set["tolerance"]["computed_rel"]), format!("N {n}, k {doubtful}"));
        }
    }
}

/// One wild value among ten (limits 1.960 and 1.878 in both tables).
#[test]
fn doubtful_values_are_named() {
    let mut values = [0.3, -0.5, 0.9, -1.1, 0.2, 2.5, -0.4, 0.1, -0.8, 0.6];
    assert_eq!(chauvenet(&values), [5]);
    assert_eq!(peirce(&values, 1), [5]);
    values[5] = 1.9;
    assert!(chauvenet(&values).is_empty());
    assert_eq!(peirce(&values, 1), [5]);
    values[5] = 1.8;
    assert!(peirce(&values, 1).is_empty());
}

/// P. K. Sen, J. Am. Stat. Assoc. 63 (1968) 1379, his example as the tests of scipy 1.17 have it (`theilslopes`, slope 4).
#[test]
fn median_line_of_sen() {
    let set = reference("theil-sen.json");
    let case = &set["expected"]["sen1968"];
    let slope = theil_sen(&numbers(&case["x"]), &numbers(&case["y"])).unwrap();
    let tolerance = number(&set["tolerance"]["rel"]);
    close(slope, number(&case["slope"]), tolerance, "slope");
}

/// A line of 30 + 3.5 x with small alternating errors, exact in decimals.
fn bench() -> Data {
    let x: Vec<f64> = (0..12).map(f64::from).collect();
    let y = x.iter().map(|x| 30.0 + 3.5 * x + if x % 2.0 == 0.0 { 0.125 } else { -0.125 }).collect();
    let noise = Noise::Stated(Stated { ux: vec![0.01; 12], uy: vec![0.1; 12], ..Stated::default() });
    Data { x, y, noise, free: vec![] }
}

/// A step of 0.25 in x put in by hand is found again; so is a bend of 0.5 per x².
#[test]
fn planted_step_and_bend_are_found() {
    let exact = |bend: f64, step: f64| {
        let truth: Vec<f64> = (0..12).map(f64::from).collect();
        let y = truth.iter().map(|x| 30.0 + 3.5 * x + bend * x * x).collect();
        let x = truth.iter().map(|x| if *x > 5.0 { x + step } else { *x }).collect();
        Data { x, y, ..bench() }
    };
    let beyond: Vec<bool> = (0..12).map(|i| i > 5).collect();
    let step = checks::step(&exact(0.0, 0.25), &beyond).unwrap();
    close(step.value, 0.25, 1e-12, "step");
    assert!(step.u.unwrap() > 0.0);
    let line = fit(&Data {
        free: vec![FreeColumn::InX(beyond.iter().map(|b| f64::from(u8::from(*b))).collect())],
        ..exact(0.0, 0.25)
    })
    .unwrap();
    close(line.slope, 3.5, 1e-13, "slope beside the step");
    close(line.rows[11].true_x, 11.0, 1e-13, "true position beside the step");
    let exact_x = Noise::Stated(Stated { uy: vec![0.1; 12], ..Stated::default() });
    let bend = checks::quadratic_term(&Data { noise: exact_x, ..exact(0.5, 0.0) }).unwrap();
    close(bend.value, 0.5, 1e-13, "bend");
}

/// Regressing the other way round is the same line when uncertainties are stated, in every form of noise.
#[test]
fn stated_lines_are_the_same_both_ways() {
    let shared =
        vec![SharedColumn { x: (0..12).map(|i| if i > 5 { 0.02 } else { 0.0 }).collect(), y: vec![] }];
    let with_shared = Data {
        noise: Noise::Stated(Stated {
            ux: vec![0.01; 12],
            uy: vec![0.1; 12],
            cov_xy: vec![2e-4; 12],
            shared,
            ..Stated::default()
        }),
        ..bench()
    };
    for data in [bench(), with_shared] {
        let (there, back) = (fit(&data).unwrap(), checks::reversed(&data).unwrap());
        close(back.slope, there.slope, 1e-12, "slope");
        close(back.intercept, there.intercept, 1e-12, "intercept");
        // The two Gauss–Newton forms differ in the second order of the residuals only.
        close(back.u_slope.unwrap(), there.uncertainty.unwrap().slope, 1e-3, "u(slope)");
    }
}

/// Without stated uncertainties the two slopes differ by the squared correlation: b·b′ = r² (textbook identity).
#[test]
fn unstated_slopes_bracket_by_the_correlation() {
    let data = Data { noise: Noise::Unstated, ..bench() };
    let (there, back) = (fit(&data).unwrap(), checks::reversed(&data).unwrap());
    let mean = |list: &[f64]| list.iter().sum::<f64>() / list.len() as f64;
    let sum =
        |a: &[f64], b: &[f64]| -> f64 { a.iter().zip(b).map(|(p, q)| (p - mean(a)) * (q - mean(b))).sum() };
    let r_squared = sum(&data.x, &data.y).powi(2) / sum(&data.x, &data.x) / sum(&data.y, &data.y);
    close(there.slope / back.slope, r_squared, 1e-13, "r²");
}

/// Leaving a row out must agree with the closed form of R. D. Cook (Technometrics 19 (1977) 15): the distance is the
/// squared move of the line in units of its covariance, over 2.
#[test]
fn cooks_distance_is_the_move_of_the_line() {
    for shared in [
        vec![],
        vec![SharedColumn { x: vec![], y: (0..12).map(|i| if i > 5 { 0.2 } else { 0.0 }).collect() }],
    ] {
        let noise = Noise::Stated(Stated {
            uy: (1..13).map(|i| 0.05 * f64::from(i)).collect(),
            shared,
            ..Stated::default()
        });
        let data = Data { noise, ..bench() };
        let all = fit(&data).unwrap();
        let u = all.uncertainty.unwrap();
        for (row, pulling) in all.rows.iter().enumerate() {
            let others: Vec<usize> = (0..12).filter(|other| *other != row).collect();
            let without = checks::part(&data, &others).unwrap();
            let slope = (without.slope - all.slope) / u.slope;
            let level = (without.at(u.centre) - all.at_centre) / u.at_centre;
            let cook = pulling.cooks_distance(2).unwrap();
            close(cook, f64::midpoint(slope * slope, level * level), 1e-9, "Cook's distance");
        }
    }
}

/// The line through the origin in closed form where x is exact: Σwxy/Σwx², u = 1/√Σwx².
#[test]
fn through_zero_agrees_with_its_closed_form() {
    let noise =
        Noise::Stated(Stated { uy: (1..13).map(|i| 0.05 * f64::from(i)).collect(), ..Stated::default() });
    let data = Data { noise, ..bench() };
    let weight = |i: usize| 1.0 / (0.05 * (i as f64 + 1.0)).powi(2);
    let sum = |a: &[f64], b: &[f64]| -> f64 { (0..12).map(|i| weight(i) * a[i] * b[i]).sum() };
    let line = checks::through_zero(&data).unwrap();
    close(line.slope, sum(&data.x, &data.y) / sum(&data.x, &data.x), 1e-13, "slope");
    close(line.u_slope.unwrap(), 1.0 / sum(&data.x, &data.x).sqrt(), 1e-13, "u(slope)");
    assert_eq!(line.degrees_of_freedom, 11);
}

/// The same with a shared error and as a full matrix: the two forms of one covariance agree.
#[test]
fn through_zero_takes_shared_errors_once() {
    let effect: Vec<f64> = (0..12).map(|i| if i > 5 { 0.3 } else { 0.0 }).collect();
    let yy = (0..144)
        .map(|k| effect[k / 12] * effect[k % 12] + if k / 12 == k % 12 { 0.01 } else { 0.0 })
        .collect();
    let shared = vec![SharedColumn { x: vec![], y: effect }];
    let columns = Noise::Stated(Stated { uy: vec![0.1; 12], shared, ..Stated::default() });
    let [a, b] =
        [columns, Noise::Stated(Stated { dense: Dense { yy, ..Dense::default() }, ..Stated::default() })]
            .map(|noise| checks::through_zero(&Data { noise, ..bench() }).unwrap());
    close(a.slope, b.slope, 1e-12, "slope");
    close(a.u_slope.unwrap(), b.u_slope.unwrap(), 1e-12, "u(slope)");
    close(a.chi_square, b.chi_square, 1e-11, "chi-square");
}

/// A part of the rows gives the line those rows would give alone.
#[test]
fn a_part_is_fitted_alone() {
    let data = bench();
    let alone = Data {
        x: data.x[6..].to_vec(),
        y: data.y[6..].to_vec(),
        noise: Noise::Stated(Stated { ux: vec![0.01; 6], uy: vec![0.1; 6], ..Stated::default() }),
        free: vec![],
    };
    assert_eq!(checks::part(&data, &[6, 7, 8, 9, 10, 11]).unwrap(), fit(&alone).unwrap());
}
