//! Results of several people taken together, beside a general library of statistics: `reference/consensus.json`, made by
//! `reference/make_consensus.py` with statsmodels from the data that it names.
#![expect(clippy::panic, reason = "a test stops where its data are wrong")]

use serde_json::Value;
use slope_of_light::consensus::{Allowing, Estimate, consensus};

use crate::reference::{assert_close, number, numbers, read, rows};

/// As far as the library's sums, and its steps towards the variance between, are done.
const RELATIVE: f64 = 1e-9;

fn check_mean(found: Estimate, expected: &Value, place: &str) {
    assert_close(found.value, number(expected, "value"), RELATIVE, format!("{place}: mean"));
    assert_close(found.u, number(expected, "u"), RELATIVE, format!("{place}: its u"));
}

fn check_allowing(found: Allowing, expected: &Value, place: &str) {
    let variance = number(expected, "variance_between");
    assert_close(found.between.powi(2), variance, RELATIVE, format!("{place}: variance between"));
    check_mean(found.mean, expected, place);
}

#[test]
fn as_a_general_library_has_them() {
    let file = read("consensus.json");
    for case in rows(&file["cases"]) {
        let name = case["name"].as_str().unwrap_or_default();
        let pairs = numbers(&case["values"]).into_iter().zip(numbers(&case["u"]));
        let results: Vec<Estimate> = pairs.map(|(value, u)| Estimate { value, u }).collect();
        let found = consensus(&results).unwrap_or_else(|error| panic!("{name}: {error}"));
        assert_close(found.consistency.chi_square, number(case, "chi_square"), RELATIVE, name);
        assert_close(found.consistency.p_value, number(case, "p_value"), RELATIVE, name);
        check_mean(found.weighted, &case["weighted"], name);
        check_allowing(found.dersimonian_laird, &case["dersimonian_laird"], &format!("{name}, moments"));
        check_allowing(found.mandel_paule, &case["mandel_paule"], &format!("{name}, Paule and Mandel"));
        assert_close(found.median.value, number(case, "median"), RELATIVE, format!("{name}: median"));
        // The factor is Müller's (J. Res. NIST 105 (2000) 551, from memory).
        let u = 1.858 * number(case, "median_deviation") / found.consistency.degrees_of_freedom.sqrt();
        assert_close(found.median.u, u, RELATIVE, format!("{name}: u of the median"));
    }
}

/// What the documentation of metafor gives for its example, to the digits printed there (recalled from memory).
#[test]
fn the_published_variances_of_the_vaccine_trials() {
    let file = read("consensus.json");
    let case = rows(&file["cases"]).iter().find(|case| case["name"] == "bcg");
    let case = case.unwrap_or_else(|| panic!("no such set"));
    let pairs = numbers(&case["values"]).into_iter().zip(numbers(&case["u"]));
    let results: Vec<Estimate> = pairs.map(|(value, u)| Estimate { value, u }).collect();
    let found = consensus(&results).unwrap_or_else(|error| panic!("{error}"));
    let four = |value: f64| format!("{value:.4}");
    assert_eq!(four(found.dersimonian_laird.between.powi(2)), "0.3088");
    assert_eq!(four(found.dersimonian_laird.mean.value), "-0.7141");
    assert_eq!(four(found.mandel_paule.between.powi(2)), "0.3181");
}
