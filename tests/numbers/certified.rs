//! Sets of NIST that are no straight lines, as a line with unknowns beside it: what Longley, Wampler1 and Wampler4 certify
//! of the first regressor is the slope, and of the others the free columns. Source: NIST Statistical Reference Datasets,
//! linear regression, 15 digits certified; read from the files in `reference/`.
//!
//! Pontius and Filip are not in `reference/`.
#![expect(clippy::unwrap_used, reason = "tests")]

use serde_json::Value;
use slope_of_light::line::{Data, Fit, FreeColumn, Noise, fit};

use crate::reference::{assert_close, number, numbers, read, rows, sole};

/// The line on the first column, the others free.
fn fitted(y: &Value, columns: &[Vec<f64>]) -> Fit {
    let (x, others) = columns.split_first().unwrap();
    let free = others.iter().cloned().map(FreeColumn::InY).collect();
    fit(&Data { x: x.clone(), y: numbers(y), noise: Noise::Unstated, free }).unwrap()
}

/// Estimates and their standard deviations, in the order of the file.
fn found(line: &Fit) -> Vec<[f64; 2]> {
    let u = line.uncertainty.unwrap();
    let free = line.free.iter().map(|free| [free.value, free.u.unwrap()]);
    [[line.intercept, u.intercept], [line.slope, u.slope]].into_iter().chain(free).collect()
}

/// Estimates to `relative`; what is known of their scatter to thirteen digits.
fn check(name: &str, line: &Fit, expected: &Value, relative: f64) {
    const OF_SCATTER: f64 = 1e-13;
    let certified = rows(&expected["certified_estimate"]).iter().zip(rows(&expected["certified_sd"]));
    let found = found(line);
    assert_eq!(found.len(), certified.len());
    for (k, ([value, u], (estimate, sd))) in found.into_iter().zip(certified).enumerate() {
        println!("{name} B{k} {:e} {:e}", value / sole(estimate) - 1.0, u / sole(sd) - 1.0);
        assert_close(value, sole(estimate), relative, format!("{name} B{k}"));
        assert_close(u, sole(sd), OF_SCATTER, format!("{name} s(B{k})"));
    }
    assert_close(line.scatter().unwrap(), number(expected, "residual_sd"), OF_SCATTER, "residual SD");
    assert_close(line.chi_square, number(expected, "rss"), OF_SCATTER, "RSS");
    assert_eq!(line.degrees_of_freedom as f64, number(expected, "dof"));
}

/// Six regressors that all grow with the years.
#[test]
fn longley() {
    let set = read("nist-linreg-longley.json");
    let table: Vec<Vec<f64>> = rows(&set["inputs"]["X"]).iter().map(numbers).collect();
    let columns: Vec<Vec<f64>> = (0..6).map(|k| table.iter().map(|row| row[k]).collect()).collect();
    check("Longley", &fitted(&set["inputs"]["y"], &columns), &set["expected"], 5e-14);
}

fn powers(x: &[f64]) -> Vec<Vec<f64>> {
    (1..=5).map(|power| x.iter().map(|x| x.powi(power)).collect()).collect()
}

/// A polynomial of the fifth degree that fits exactly: all coefficients are 1, all standard deviations 0.
#[test]
fn wampler_1() {
    let set = read("nist-linreg-wampler1.json");
    let line = fitted(&set["inputs"]["y"], &powers(&numbers(&set["inputs"]["x"])));
    for [value, u] in found(&line) {
        println!("{:e} {u:e}", value - 1.0);
        assert_close(value, 1.0, 1e-14, "coefficient");
        assert!(u < 1e-20, "standard deviation {u:e}");
    }
}

/// The same polynomial with such scatter that the coefficients, all 1, lie up to 2·10⁵ times below their standard
/// deviations: eight digits of them are 10⁻¹³ of a standard deviation.
#[test]
fn wampler_4() {
    let set = read("nist-linreg-wampler4.json");
    let line = fitted(&set["inputs"]["y"], &powers(&numbers(&set["inputs"]["x"])));
    check("Wampler4", &line, &set["expected"], 1e-8);
}
