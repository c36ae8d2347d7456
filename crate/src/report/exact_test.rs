#![expect(clippy::unwrap_used, reason = "tests")]

use proptest::prelude::*;

use super::super::sample::{analysis, empty_analysis, english};
use super::*;

#[test]
fn numbers_have_the_fewest_digits_that_read_back() {
    // IEEE 754-2019, 5.12.2: shortest text that converts back. The forms are those of XML Schema Part 2, 3.2.5.
    let cases = [
        (0.0, "0"),
        (0.1, "0.1"),
        (1.0 / 3.0, "0.3333333333333333"),
        (-2.5, "-2.5"),
        (299_792_458.0, "299792458"),
        (5e-324, "5e-324"),
        (f64::MAX, "1.7976931348623157e308"),
        (f64::NAN, "NaN"),
        (f64::NEG_INFINITY, "-INF"),
    ];
    for (value, expected) in cases {
        assert_eq!(number(value), expected);
    }
}

#[test]
fn a_residual_row_fills_its_columns() {
    let row = ResidualRow {
        number: 3,
        distance_m: 1.25,
        u_distance_m: Some(0.001),
        delay_ns: 4.5,
        u_delay_ns: None,
        residual_ns: Some(-0.125),
        normalised: None,
    };
    let table = residuals_table(&[row], &english());
    let csv = table.to_csv().unwrap();
    assert_eq!(csv.lines().nth(1), Some("3,1.25,0.001,4.5,,-0.125,"));
}

#[test]
fn a_figure_keeps_its_unit_beside_it() {
    let slope = FitFigure {
        id: "slope",
        name: message!("figures-slope"),
        value: 3.34,
        uncertainty: Some(0.02),
        unit: "ns/m",
    };
    let csv = fit_table(&[slope], &english()).to_csv().unwrap();
    assert_eq!(csv, "identifier,name,value,standard uncertainty,unit\r\nslope,slope,3.34,0.02,ns/m\r\n");
}

#[test]
fn each_row_of_the_line_has_its_number_on_the_page() {
    let table = residuals_table(&residual_rows(&analysis(true)), &english());
    assert_eq!(table.rows[2], ["4", "4", "0.125", "14.25", "0.25", "0.5", "2"]);
    assert_eq!(table.cells("row"), ["1", "2", "4"]);
}

#[test]
fn where_nothing_was_stated_no_uncertainty_is_claimed_for_a_row() {
    let table = residuals_table(&residual_rows(&analysis(false)), &english());
    assert_eq!(table.rows[2], ["4", "4", "", "14.25", "", "0.5", "2"]);
}

#[test]
fn the_figures_of_the_line_are_those_of_the_fit() {
    let stated = fit_table(&fit_figures(&analysis(true)), &english());
    let expected = [
        "slope",
        "intercept",
        "covariance",
        "degrees_of_freedom",
        "chi_square",
        "p_value",
        "birge_ratio",
        "v",
        "group_index",
        "c",
        "coverage",
        "coverage_factor",
        "expanded",
        "z",
        "e_n",
        "relative_difference",
    ];
    assert_eq!(stated.cells("figure"), expected);
    assert_eq!(stated.rows[0], ["slope", "slope", "3.5", "0.0625", "ns/m"]);
    // 3e8 m/s × 2⁻⁵, exactly.
    assert_eq!(stated.rows[9], ["c", "speed of light in vacuum", "300000000", "9375000", "m/s"]);
    let scatter = fit_table(&fit_figures(&analysis(false)), &english());
    assert_eq!(scatter.cells("figure")[4..6], ["squares", "scatter"]);
}

#[test]
fn without_a_line_the_tables_have_heads_only() {
    let none = empty_analysis();
    assert!(residual_rows(&none).is_empty());
    assert!(fit_figures(&none).is_empty());
    let heads = residuals_table(&[], &english()).to_csv().unwrap();
    assert_eq!(heads.lines().count(), 1);
}

proptest! {
    #[test]
    fn every_number_reads_back_the_same(bits in any::<u64>()) {
        let value = f64::from_bits(bits);
        prop_assume!(value.is_finite());
        prop_assert_eq!(number(value).parse::<f64>().unwrap().to_bits(), bits);
    }

    #[test]
    fn no_number_looks_like_a_formula(value in any::<f64>()) {
        let text = number(value);
        prop_assert_eq!(crate::report::csv::neutral(&text), text);
    }
}
