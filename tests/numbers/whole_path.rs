//! Published lines typed into a notebook as a person would type them, and taken through the whole analysis: reading of
//! texts, rows, covariance, fit. Distances stand for x, delays for y. Sources stand in the files named.
//!
//! Tolerances are relative with no floor: 1e-13, of the twelve digits or more that the files promise; 2e-13 for Norris,
//! whose certified intercept lies 2000 times below its readings (NIST StRD states 15 digits for inputs in decimal).
#![expect(clippy::unwrap_used, reason = "tests")]

use serde_json::Value;
use slope_of_light::analysis::{LineAnalysis, analyse};
use slope_of_light::notebook::{
    ActsOn, Cell, CovarianceOf, Edit, Effect, ErrorShape, Notebook, Scope, SharedError, StatedCovariance,
    read, write,
};

use crate::reference::{assert_close, number, read as reference, rows};

/// The numbers of a list as their own digits, or one number for all rows.
fn texts(value: &Value, n: usize) -> Vec<String> {
    match value.as_array() {
        Some(list) => list.iter().map(ToString::to_string).collect(),
        None if value.is_null() => vec![String::new(); n],
        None => vec![value.to_string(); n],
    }
}

/// A notebook with one row a point; `ux` and `uy` may be absent.
fn typed(inputs: &Value) -> Notebook {
    let (x, y) = (texts(&inputs["x"], 0), texts(&inputs["y"], 0));
    let (ux, uy) = (texts(&inputs["ux"], x.len()), texts(&inputs["uy"], x.len()));
    let mut notebook = Notebook::new();
    for (place, row) in (0..x.len()).zip(1..) {
        let cells = [
            (Cell::Distance, x[place].clone()),
            (Cell::DistanceUncertainty, ux[place].clone()),
            (Cell::Delay, y[place].clone()),
            (Cell::DelayUncertainty, uy[place].clone()),
        ];
        notebook.apply(Edit::AddRow { row, after: None, cells: cells.into_iter().collect() }, "").unwrap();
    }
    notebook
}

/// The line of a notebook that has been stored and read back.
fn line(notebook: &Notebook) -> LineAnalysis {
    let analysis = analyse(&read(&write(notebook)).unwrap());
    assert_eq!(analysis.problems, vec![]);
    (*analysis.line.unwrap()).clone()
}

fn check(line: &LineAnalysis, expected: &Value, relative: f64) {
    let u = line.fit.uncertainty.unwrap();
    let found = [
        ("slope", line.fit.slope),
        ("intercept", line.fit.intercept),
        ("u_slope", u.slope),
        ("u_intercept", u.intercept),
        ("cov", u.covariance),
        ("chi2", line.fit.chi_square),
        ("dof", line.fit.degrees_of_freedom as f64),
    ];
    for (name, value) in found {
        assert_close(value, number(expected, name), relative, name);
    }
}

#[test]
fn iso_28037_with_uncertain_delays_and_with_both() {
    for name in ["iso28037-c6-equal.json", "iso28037-c7-gdr.json"] {
        let case = reference(name);
        check(&line(&typed(&case["inputs"])), &case["expected"], 1e-13);
    }
}

#[test]
fn iso_28037_with_a_full_covariance_matrix() {
    let case = reference("iso28037-c9-gmr.json");
    let mut notebook = typed(&case["inputs"]);
    let matrix: Vec<Vec<String>> = rows(&case["inputs"]["Vy"]).iter().map(|row| texts(row, 0)).collect();
    let rows = (1..=10).collect();
    let covariance = StatedCovariance { acts_on: CovarianceOf::Delays, rows, matrix };
    notebook.apply(Edit::SetCovariance(covariance), "").unwrap();
    check(&line(&notebook), &case["expected"], 1e-13);
}

#[test]
fn iso_28037_with_the_same_matrix_as_shared_errors() {
    let case = reference("iso28037-c9-gmr.json");
    let mut inputs = case["inputs"].clone();
    // The matrix is 1 on the diagonal, plus 1 within rows 1 to 5, plus 4 within rows 6 to 10.
    inputs["uy"] = Value::from(1);
    let mut notebook = typed(&inputs);
    for (id, rows, u) in [(1, 1..=5, "1"), (2, 6..=10, "2")] {
        let shared = SharedError {
            shape: ErrorShape::Normal,
            degrees_of_freedom: String::new(),
            id,
            name: "block".into(),
            acts_on: ActsOn::Delays,
            effect: Effect::Offset,
            rows: Scope::Rows(rows.collect()),
            uncertainty: u.into(),
        };
        notebook.apply(Edit::SetShared(shared), "").unwrap();
    }
    check(&line(&notebook), &case["expected"], 1e-13);
}

#[test]
fn norris_of_nist_by_scatter() {
    let case = reference("nist-linreg-norris.json");
    let line = line(&typed(&case["inputs"]));
    let (b, sd) = (&case["expected"]["certified_estimate"], &case["expected"]["certified_sd"]);
    let u = line.fit.uncertainty.unwrap();
    let found = [
        (line.fit.intercept, &b[0]),
        (line.fit.slope, &b[1]),
        (u.intercept, &sd[0]),
        (u.slope, &sd[1]),
        (line.fit.scatter().unwrap(), &case["expected"]["residual_sd"]),
    ];
    for (value, expected) in found {
        assert_close(value, expected.as_f64().unwrap(), 2e-13, "Norris");
    }
}

#[test]
fn steps_shared_by_the_rows_behind_them() {
    let file = reference("line-differential.json");
    let problems = rows(&file["problems"]).iter().filter(|p| p["kind"] == "shared-step");
    let mut seen = 0;
    for problem in problems {
        let mut notebook = typed(problem);
        for (id, shared) in (1..).zip(rows(&problem["shared"])) {
            let place = |name: &str| u32::try_from(shared[name].as_u64().unwrap()).unwrap() + 1;
            let acts_on = if shared["var"] == "x" { ActsOn::Distances } else { ActsOn::Delays };
            let shared = SharedError {
                shape: ErrorShape::Normal,
                degrees_of_freedom: String::new(),
                id,
                name: "step".into(),
                acts_on,
                effect: Effect::Offset,
                rows: Scope::Rows((place("first")..=place("last")).collect()),
                uncertainty: shared["u"].to_string(),
            };
            notebook.apply(Edit::SetShared(shared), "").unwrap();
        }
        // A millionth of a standard uncertainty: the file's own tolerances lie between 1e-8 and 1e-6 of one.
        let (line, expected) = (line(&notebook), &problem["expected"]);
        let off = (line.fit.slope - number(expected, "slope")).abs() / number(expected, "u_slope");
        assert!(off < 1e-6, "{}: off by {off:e} standard uncertainties", problem["id"]);
        assert_close(line.fit.uncertainty.unwrap().slope, number(expected, "u_slope"), 1e-7, &problem["id"]);
        seen += 1;
    }
    assert!(seen >= 20, "the file should hold problems of this kind");
}
