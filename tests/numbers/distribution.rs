//! Tail probabilities and quantiles against 60-digit arithmetic, and the factors of GUM table G.2.
//! Each file in `reference/` names its source.
#![expect(clippy::unwrap_used, reason = "tests")]

use slope_of_light::distribution::{
    chi_square_cdf, chi_square_quantile, chi_square_sf, chi_square_upper_quantile, normal_cdf,
    normal_quantile, normal_sf, normal_upper_quantile, student_t_cdf, student_t_quantile, student_t_sf,
    student_t_upper_quantile, t_coverage_factor,
};

use crate::reference::{assert_close, read, rows};

/// Below this a double loses digits one by one: the tables then only ask for as little.
const LEAST: f64 = f64::MIN_POSITIVE;

/// The tolerance of probabilities: rounding of the exponent, which grows with its size (at most 700), and of
/// some hundred operations.
const PROBABILITY: f64 = 1e-12;

/// The tolerance of quantiles; their inputs are decimals, rounded to doubles.
const QUANTILE: f64 = 1e-13;

fn table(name: &str) -> Vec<Vec<serde_json::Value>> {
    let file = read("dist-quantiles-p-values.json");
    rows(&file["expected"][name]["rows"]).iter().map(|row| rows(row).to_vec()).collect()
}

fn numbers<const N: usize>(row: &[serde_json::Value]) -> [f64; N] {
    std::array::from_fn(|column| row[column].as_f64().unwrap())
}

#[track_caller]
fn assert_probability(found: f64, expected: f64, place: &str) {
    if expected < LEAST {
        assert!(found <= LEAST, "{place}: found {found:e}, expected {expected:e}");
    } else {
        assert_close(found, expected, PROBABILITY, place);
    }
}

#[test]
fn normal() {
    for row in table("normal") {
        let [z, lower, upper, two_sided, _] = numbers(&row);
        let place = format!("z = {z}");
        assert_probability(normal_cdf(z), lower, &place);
        assert_probability(normal_sf(z), upper, &place);
        assert_probability(normal_cdf(-z), upper, &place);
        assert_probability(2.0 * normal_sf(z), two_sided, &place);
    }
    for row in table("normal_quantile") {
        let [q, z] = numbers(&row);
        assert_close(normal_upper_quantile(q), z, QUANTILE, format!("q = {q}"));
        assert_close(normal_quantile(q), -z, QUANTILE, format!("p = {q}"));
    }
}

#[test]
fn student_t() {
    for row in table("student_t") {
        let [nu, t, upper, two_sided] = numbers(&row);
        let place = format!("nu = {nu}, t = {t}");
        assert_probability(student_t_sf(t, nu), upper, &place);
        assert_probability(student_t_cdf(-t, nu), upper, &place);
        assert_probability(2.0 * student_t_sf(t, nu), two_sided, &place);
    }
    for row in table("student_t_quantile") {
        let [nu, q, t] = numbers(&row);
        let place = format!("nu = {nu}, q = {q}");
        assert_close(student_t_upper_quantile(q, nu), t, QUANTILE, &place);
        assert_close(student_t_quantile(q, nu), -t, QUANTILE, &place);
    }
}

#[test]
fn chi_square() {
    for row in table("chi2") {
        let [nu, x, lower, upper] = numbers(&row);
        let place = format!("nu = {nu}, x = {x}");
        assert_probability(chi_square_cdf(x, nu), lower, &place);
        assert_probability(chi_square_sf(x, nu), upper, &place);
    }
    for row in table("chi2_quantile") {
        let ([nu, probability], x) = (numbers(&row), row[3].as_f64().unwrap());
        let found = match row[2].as_str() {
            Some("lower") => chi_square_quantile(probability, nu),
            _ => chi_square_upper_quantile(probability, nu),
        };
        assert_close(found, x, QUANTILE, format!("nu = {nu}, {} {probability}", row[2]));
    }
}

/// JCGM 100:2008 (GUM), table G.2. The file gives 12 digits; the printed table two decimals (three in the row
/// of 100), recalled from memory. Its entry for 35 degrees of freedom and 90 % is recalled as 1,70 where the
/// exact value is 1,6896, and is left out.
#[test]
fn gum_table_g2() {
    let file = read("gum-table-g2.json");
    let coverage: [f64; 6] = numbers(rows(&file["inputs"]["p_numeric"]));
    for row in rows(&file["expected"]["rows"]) {
        let [nu, expected @ ..]: [f64; 7] = numbers(rows(row));
        for (p, k) in coverage.into_iter().zip(expected) {
            assert_close(t_coverage_factor(p, nu), k, 1e-11, format!("nu = {nu}, p = {p}"));
        }
    }
    for (p, k) in coverage.into_iter().zip(numbers::<6>(rows(&file["expected"]["nu_infinite"]))) {
        assert_close(t_coverage_factor(p, f64::INFINITY), k, 1e-14, format!("p = {p}"));
    }
    for row in rows(&file["published"]["rows_recalled"]) {
        let [nu, printed @ ..]: [f64; 7] = numbers(rows(row));
        let half_digit = if nu >= 100.0 { 0.000_5 } else { 0.005 };
        for (p, k) in coverage.into_iter().zip(printed) {
            let left_out = (34.0..36.0).contains(&nu) && (p - 0.9).abs() < 1e-9;
            let found = t_coverage_factor(p, nu);
            assert!(left_out || (found - k).abs() <= half_digit, "nu = {nu}, p = {p}: {found}, printed {k}");
        }
    }
}
