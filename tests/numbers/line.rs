//! The straight line against published fits. Each test names its source; the data lie in `reference/`.
//! The NIST sets that are no straight lines are in `certified.rs`.
#![expect(clippy::unwrap_used, clippy::panic, reason = "tests")]

use serde_json::Value;
use slope_of_light::distribution::chi_square_quantile;
use slope_of_light::line::{Data, Dense, Fit, Noise, SharedColumn, Stated, Uncertainty, checks, fit};

use crate::reference::{assert_close as close, numbers, read as reference, sole as number};

/// Double precision: rounding of the decimals of the data alone shifts these results by up to 3e-14. The files' own
/// tolerances are wider.
const DOUBLE: f64 = 5e-14;

/// One number stands for all rows.
fn for_each_row(value: &Value, n: usize) -> Vec<f64> {
    if value.is_array() { numbers(value) } else { vec![number(value); n] }
}

fn near(got: f64, want: f64, tolerance: f64, what: &str) {
    assert!((got - want).abs() <= tolerance, "{what}: got {got:e}, want {want:e}, tolerance {tolerance:e}");
}

fn stated(x: Vec<f64>, y: Vec<f64>, ux: Vec<f64>, uy: Vec<f64>) -> Data {
    Data { x, y, noise: Noise::Stated(Stated { ux, uy, ..Stated::default() }), free: vec![] }
}

fn unstated(x: Vec<f64>, y: Vec<f64>) -> Data {
    Data { x, y, noise: Noise::Unstated, free: vec![] }
}

fn uncertainty(fit: &Fit) -> Uncertainty {
    fit.uncertainty.unwrap()
}

/// Compares with an `expected` block of the ISO/TS 28037 form.
fn check_iso(fit: &Fit, expected: &Value, relative: f64) {
    let u = uncertainty(fit);
    close(fit.intercept, number(&expected["intercept"]), relative, "intercept");
    close(fit.slope, number(&expected["slope"]), relative, "slope");
    close(u.intercept, number(&expected["u_intercept"]), relative, "u(intercept)");
    close(u.slope, number(&expected["u_slope"]), relative, "u(slope)");
    close(u.covariance, number(&expected["cov"]), relative, "covariance");
    close(fit.chi_square, number(&expected["chi2"]), relative, "chi-square");
    assert_eq!(fit.degrees_of_freedom as u64, expected["dof"].as_u64().unwrap());
    let limit = chi_square_quantile(0.95, fit.degrees_of_freedom as f64);
    if let Some(want) = expected["chi2_95_percent_quantile"].as_f64() {
        close(limit, want, relative, "95 % quantile of chi-square");
        assert!(fit.chi_square < limit, "the standard accepts its examples");
    }
}

/// Compares with a `published` block: so many decimals of the line, three of χ².
fn check_printed(fit: &Fit, published: &Value, decimals: i32) {
    let half = |decimals: i32| 0.5 * 10_f64.powi(-decimals) + 1e-12;
    let u = uncertainty(fit);
    let printed = |name: &str| number(&published[name]);
    near(fit.intercept, printed("intercept"), half(decimals), "intercept as printed");
    near(fit.slope, printed("slope"), half(decimals), "slope as printed");
    near(u.intercept, printed("u_intercept"), half(decimals), "u(intercept) as printed");
    near(u.slope, printed("u_slope"), half(decimals), "u(slope) as printed");
    near(u.covariance, printed("cov"), half(decimals), "covariance as printed");
    near(fit.chi_square, printed("chi2"), half(3), "chi-square as printed");
    near(chi_square_quantile(0.95, 4.0), printed("chi2_95"), half(3), "its 95 % quantile as printed");
}

/// The reference data sets of NIST (`StRD`), linear regression, data set Norris: all certified digits that doubles allow,
/// which are 13 of the intercept (it lies 2000 times below the readings) and 14 of all else.
#[test]
fn norris_of_nist() {
    let set = reference("nist-linreg-norris.json");
    let line = fit(&unstated(numbers(&set["inputs"]["x"]), numbers(&set["inputs"]["y"]))).unwrap();
    let expected = &set["expected"];
    close(line.intercept, number(&expected["certified_estimate"][0]), 4.0 * DOUBLE, "B0");
    close(line.slope, number(&expected["certified_estimate"][1]), DOUBLE, "B1");
    close(uncertainty(&line).intercept, number(&expected["certified_sd"][0]), DOUBLE, "s(B0)");
    close(uncertainty(&line).slope, number(&expected["certified_sd"][1]), DOUBLE, "s(B1)");
    close(line.scatter().unwrap(), number(&expected["residual_sd"]), DOUBLE, "residual SD");
    close(line.chi_square, number(&expected["rss"]), DOUBLE, "RSS");
    assert_eq!(line.degrees_of_freedom, 34);
}

/// JCGM 100:2008 (GUM), H.3: a thermometer's calibration line, and the correction predicted at 30 °C.
#[test]
fn thermometer_of_the_gum() {
    let set = reference("gum-h3-thermometer.json");
    let t = numbers(&set["inputs"]["t"]);
    let b = numbers(&set["inputs"]["b"]);
    let expected = &set["expected"];
    let tolerance = number(&set["tolerance"]["expected_rel"]);
    let line = fit(&unstated(t.iter().map(|t| t - 20.0).collect(), b.clone())).unwrap();
    let u = uncertainty(&line);
    close(line.intercept, number(&expected["y1"]), tolerance, "y1");
    close(line.slope, number(&expected["y2"]), tolerance, "y2");
    close(u.intercept, number(&expected["s_y1"]), tolerance, "s(y1)");
    close(u.slope, number(&expected["s_y2"]), tolerance, "s(y2)");
    close(u.covariance / (u.intercept * u.slope), number(&expected["r"]), tolerance, "r");
    close(line.scatter().unwrap(), number(&expected["s"]), tolerance, "s");
    close(line.at(10.0), number(&expected["b30"]), tolerance, "b(30)");
    close(line.band(10.0).unwrap(), number(&expected["u_b30"]), tolerance, "u(b(30))");
    for (t, want) in t.iter().zip(numbers(&expected["predicted_b_at_each_t"])) {
        // Printed to ten decimal places.
        near(line.at(t - 20.0), want, 5.1e-11, "b(t)");
    }
    let published = &set["published"];
    near(line.intercept, number(&published["y1"]), 5e-5, "y1 as printed");
    near(u.at(10.0), number(&published["u_b30"]), 5e-5, "u(b(30)) as printed");
    // H.3.5: near the mean of t the two are uncorrelated.
    let line = fit(&unstated(t.iter().map(|t| t - 24.0085).collect(), b)).unwrap();
    let shifted = &expected["with_t0_24.0085"];
    close(line.intercept, number(&shifted["y1"]), tolerance, "y1, shifted");
    close(uncertainty(&line).intercept, number(&shifted["s_y1"]), tolerance, "s(y1), shifted");
    // What is left of the correlation is the rounding of 24.0085 against the mean, 24.0085 − 4.5e-5: of it, the
    // doubles t − 24.0085 keep about ten digits.
    close(uncertainty(&line).covariance, number(&shifted["covariance"]), 1e-9, "covariance, shifted");
}

/// ISO/TS 28037:2010, clause 6: weighted least squares.
#[test]
fn iso_28037_clause_6() {
    let set = reference("iso28037-c6-equal.json");
    let inputs = &set["inputs"];
    let line =
        fit(&stated(numbers(&inputs["x"]), numbers(&inputs["y"]), vec![], numbers(&inputs["uy"]))).unwrap();
    check_iso(&line, &set["expected"], DOUBLE);
    check_printed(&line, &set["published"], 3);
    // 11.1: x of a y; and 11.2: y of an x, each with an uncertainty of its own.
    let prediction = &set["expected"]["prediction_x_for_y"];
    let x = (number(&prediction["y"]) - line.intercept) / line.slope;
    close(x, number(&prediction["x"]), DOUBLE, "x of y");
    let u_x = line.band(x).unwrap().hypot(number(&prediction["u_y"])) / line.slope;
    close(u_x, number(&prediction["u_x"]), DOUBLE, "u(x) of y");
    let forward = &set["expected"]["forward_y_for_x"];
    let x = number(&forward["x"]);
    close(line.at(x), number(&forward["y"]), DOUBLE, "y of x");
    let u_y = line.band(x).unwrap().hypot(line.slope * number(&forward["u_x"]));
    close(u_y, number(&forward["u_y"]), DOUBLE, "u(y) of x");
}

/// ISO/TS 28037:2010, clause 7: errors in both variables.
#[test]
fn iso_28037_clause_7() {
    let set = reference("iso28037-c7-gdr.json");
    let inputs = &set["inputs"];
    let [x, y, ux, uy] = ["x", "y", "ux", "uy"].map(|name| numbers(&inputs[name]));
    let line = fit(&stated(x, y, ux, uy)).unwrap();
    check_iso(&line, &set["expected"], DOUBLE);
    check_printed(&line, &set["published"], 4);
}

/// ISO/TS 28037:2010, clause 9: correlated y, once as a full matrix and once as two shared errors.
#[test]
fn iso_28037_clause_9() {
    let set = reference("iso28037-c9-gmr.json");
    let inputs = &set["inputs"];
    let [x, y] = ["x", "y"].map(|name| numbers(&inputs[name]));
    let yy = inputs["Vy"].as_array().unwrap().iter().flat_map(numbers).collect();
    let noise = Noise::Stated(Stated { dense: Dense { yy, ..Dense::default() }, ..Stated::default() });
    let line = fit(&Data { x: x.clone(), y: y.clone(), noise, free: vec![] }).unwrap();
    check_iso(&line, &set["expected"], DOUBLE);
    let half = |u: f64, first: bool| SharedColumn {
        x: vec![],
        y: (0..10).map(|i| if (i < 5) == first { u } else { 0.0 }).collect(),
    };
    let shared = vec![half(1.0, true), half(2.0, false)];
    let noise = Noise::Stated(Stated { uy: vec![1.0; 10], shared, ..Stated::default() });
    check_iso(&fit(&Data { x, y, noise, free: vec![] }).unwrap(), &set["expected"], DOUBLE);
}

/// ISO/TS 28037:2010, annex E: uncertainties known up to a factor, which the scatter supplies.
#[test]
fn iso_28037_annex_e() {
    let set = reference("iso28037-annexE-unknown.json");
    let inputs = &set["inputs"];
    let line =
        fit(&stated(numbers(&inputs["x"]), numbers(&inputs["y"]), vec![], numbers(&inputs["uy"]))).unwrap();
    check_iso(&line, &set["expected"], DOUBLE);
    let posterior = &set["expected"]["posterior_n_minus_2"];
    let scaled = uncertainty(&line).times(line.scatter().unwrap());
    close(line.scatter().unwrap(), number(&posterior["sigma"]), DOUBLE, "sigma");
    close(scaled.intercept, number(&posterior["u_intercept"]), DOUBLE, "u(intercept)");
    close(scaled.slope, number(&posterior["u_slope"]), DOUBLE, "u(slope)");
    close(scaled.covariance, number(&posterior["cov"]), DOUBLE, "covariance");
    // The annex's better estimate divides χ² by two less than the degrees of freedom (a Bayesian mean).
    let better = &set["expected"]["better_posterior_n_minus_4"];
    let sigma = (line.chi_square / (line.degrees_of_freedom - 2) as f64).sqrt();
    close(sigma, number(&better["sigma"]), DOUBLE, "better sigma");
    let wider = uncertainty(&line).times(sigma);
    close(wider.intercept, number(&better["u_intercept"]), DOUBLE, "better u(intercept)");
    close(wider.slope, number(&better["u_slope"]), DOUBLE, "better u(slope)");
    close(wider.covariance, number(&better["cov"]), DOUBLE, "better covariance");
}

/// K. Pearson's data (Phil. Mag. 2 (1901) 559) with the weights of D. York (Can. J. Phys. 44 (1966) 1079); the standard
/// errors are those of D. York et al., Am. J. Phys. 72 (2004) 367.
#[test]
fn pearson_data_with_york_weights() {
    let set = reference("york-pearson.json");
    let inputs = &set["inputs"];
    let u = |name: &str| numbers(&inputs[name]).iter().map(|weight| 1.0 / weight.sqrt()).collect();
    let line =
        fit(&stated(numbers(&inputs["x"]), numbers(&inputs["y"]), u("weight_x"), u("weight_y"))).unwrap();
    check_iso(&line, &set["expected"], DOUBLE);
    let scaled = uncertainty(&line).times(line.scatter().unwrap());
    let expected = &set["expected"]["scaled_se_adjusted"];
    close(scaled.intercept, number(&expected[0]), DOUBLE, "scaled u(intercept)");
    close(scaled.slope, number(&expected[1]), DOUBLE, "scaled u(slope)");
    // As York et al. print them.
    near(line.slope, -0.480_533_407, 5e-10, "slope as printed");
    near(line.intercept, 5.479_910_22, 5e-9, "intercept as printed");
}

/// A hundred generated problems with answers of 50 digits; the file tells how they were made.
#[test]
fn a_hundred_problems_with_errors_in_both() {
    let set = reference("line-differential.json");
    let problems = set["problems"].as_array().unwrap();
    assert_eq!(problems.len(), 100);
    for problem in problems {
        let data = differential(problem);
        let id = problem["id"].as_str().unwrap();
        let line = fit(&data).unwrap_or_else(|error| panic!("{id}: {error}"));
        let (u, want, tol) = (uncertainty(&line), &problem["expected"], &problem["tol"]);
        let value = |name: &str| number(&want[name]);
        near(line.slope, value("slope"), number(&tol["slope"]), &format!("{id} slope"));
        near(line.intercept, value("intercept"), number(&tol["intercept"]), &format!("{id} intercept"));
        near(line.chi_square, value("chi2"), number(&tol["chi2"]), &format!("{id} chi-square"));
        close(u.slope, value("u_slope"), number(&tol["u_slope_rel"]), format!("{id} u(slope)"));
        close(
            u.intercept,
            value("u_intercept"),
            number(&tol["u_intercept_rel"]),
            format!("{id} u(intercept)"),
        );
        close(u.covariance, value("cov"), number(&tol["cov_rel"]), format!("{id} covariance"));
        assert_eq!(line.degrees_of_freedom as u64, want["dof"].as_u64().unwrap(), "{id}");
    }
}

fn differential(problem: &Value) -> Data {
    let [x, y] = ["x", "y"].map(|name| numbers(&problem[name]));
    let n = x.len();
    let shared =
        problem["shared"].as_array().map_or(vec![], |list| list.iter().map(|s| block(s, n)).collect());
    let cov_xy = problem.get("cov_xy").map_or(vec![], |cov| for_each_row(cov, n));
    let [ux, uy] = ["ux", "uy"].map(|name| for_each_row(&problem[name], n));
    Data { x, y, noise: Noise::Stated(Stated { ux, uy, cov_xy, shared, ..Stated::default() }), free: vec![] }
}

/// A common error of standard uncertainty u on rows first … last.
fn block(shared: &Value, n: usize) -> SharedColumn {
    let place = |name: &str| usize::try_from(shared[name].as_u64().unwrap()).unwrap();
    let (first, last, u) = (place("first"), place("last"), number(&shared["u"]));
    let effect = (0..n).map(|i| if (first..=last).contains(&i) { u } else { 0.0 }).collect();
    match shared["var"].as_str().unwrap() {
        "x" => SharedColumn { x: effect, y: vec![] },
        _ => SharedColumn { x: vec![], y: effect },
    }
}

/// The reference data sets of NIST (`StRD`), linear regression, data set `NoInt1`: a line through the origin.
#[test]
fn no_intercept_1_of_nist() {
    let set = reference("nist-linreg-noint1.json");
    let line =
        checks::through_zero(&unstated(numbers(&set["inputs"]["x"]), numbers(&set["inputs"]["y"]))).unwrap();
    let expected = &set["expected"];
    close(line.slope, number(&expected["certified_estimate"][0]), 1e-13, "B1");
    close(line.u_slope.unwrap(), number(&expected["certified_sd"][0]), 1e-13, "s(B1)");
    close(line.chi_square, number(&expected["rss"]), 1e-13, "RSS");
    assert_eq!(line.degrees_of_freedom, 10);
}

/// The reference data sets of NIST (`StRD`), linear regression, data set `NoInt2` (x = 4, 5, 6; y = 3, 4, 4), recalled from memory:
/// B1 = 0.727272727272727 (8/11), s(B1) = 0.420827318078432e-01, residual SD = 0.369274472937998, 2 degrees of freedom.
#[test]
fn no_intercept_2_of_nist() {
    let line = checks::through_zero(&unstated(vec![4.0, 5.0, 6.0], vec![3.0, 4.0, 4.0])).unwrap();
    close(line.slope, 0.727_272_727_272_727, 1e-14, "B1");
    close(line.u_slope.unwrap(), 0.420_827_318_078_432e-1, 1e-13, "s(B1)");
    close((line.chi_square / 2.0).sqrt(), 0.369_274_472_937_998, 1e-13, "residual SD");
    assert_eq!(line.degrees_of_freedom, 2);
}
