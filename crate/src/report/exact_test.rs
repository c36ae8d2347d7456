#![expect(clippy::unwrap_used, reason = "tests")]

use proptest::prelude::*;

use super::super::sample::{analysis, empty_analysis, english};
use super::*;
use crate::analysis::{RowPart, analyse};
use crate::notebook::Edit;
use crate::simulated::demo;
use crate::view::view;

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

/// Each cell of a column of numbers, read by another CSV reader and as Rust reads numbers.
fn numbers_of(table: &Table, name: &str) -> Vec<Option<f64>> {
    let text = table.to_csv().unwrap();
    let place = table.columns.iter().position(|column| column.name == name).unwrap();
    assert_eq!(table.columns[place].kind, Kind::Number);
    let mut reader = ::csv::Reader::from_reader(text.as_bytes());
    let cells = reader.records().map(|record| record.unwrap()[place].to_owned());
    cells.map(|cell| (!cell.is_empty()).then(|| cell.parse().unwrap())).collect()
}

#[test]
fn readings_have_numbers_for_programs() {
    let (notebook, _) = demo::typed_readings().unwrap();
    let analysis = analyse(&notebook);
    let table = readings_numbers(&analysis, &view(&notebook, &analysis), &english());
    let column = |read: fn(&RowReading) -> Option<f64>| analysis.rows.iter().map(read).collect::<Vec<_>>();
    assert_eq!(numbers_of(&table, "distance_m"), column(|row| row.distance.map(|distance| distance.value)));
    assert_eq!(numbers_of(&table, "u_distance_m"), column(|row| row.distance?.uncertainty));
    assert_eq!(numbers_of(&table, "delay_ns"), column(|row| row.delay.map(|delay| delay.value)));
    assert_eq!(numbers_of(&table, "u_delay_ns"), column(|row| row.delay?.uncertainty));
    assert_eq!(numbers_of(&table, "time_per_division_ns"), column(|row| row.time_per_division));
    let struck = analysis.rows.iter().position(|row| row.part == RowPart::Struck).unwrap();
    let residuals = numbers_of(&table, "normalized_residual");
    assert_eq!(residuals.iter().filter(|residual| residual.is_none()).count(), 1);
    assert_eq!(residuals[struck], None);
    assert_eq!(table.cells("state")[struck], "struck out");
    assert!(!table.cells("outside_because")[struck].is_empty());
}

#[test]
fn the_parts_of_the_budget_add_up_as_numbers() {
    let (notebook, _) = demo::typed_readings().unwrap();
    let analysis = analyse(&notebook);
    let table = budget_numbers(&analysis, &view(&notebook, &analysis), &english());
    // JCGM 100:2008, 5.1.2: u²(c) is the sum of the squared contributions. Sums of a dozen doubles.
    let contributions = numbers_of(&table, "contribution_m_per_s");
    let u = contributions.iter().flatten().map(|part| part * part).sum::<f64>().sqrt();
    let expected = analysis.speed.as_ref().unwrap().u_c();
    assert!((u / expected - 1.0).abs() < 1e-12, "{u} {expected}");
    let shares: f64 = numbers_of(&table, "share").into_iter().flatten().sum();
    assert!((shares - 1.0).abs() < 1e-12, "{shares}");
    // A contribution is a sensitivity coefficient times an uncertainty (JCGM 100:2008, 5.1.3). The table divides one by the
    // other, so this tells a column in another's place, not a wrong coefficient.
    let [sensitivities, stated] = ["sensitivity", "u"].map(|name| numbers_of(&table, name));
    for ((sensitivity, u), part) in sensitivities.iter().zip(&stated).zip(&contributions) {
        let (Some(sensitivity), Some(u), Some(part)) = (sensitivity, u, part) else { continue };
        assert!((sensitivity * u - part).abs() <= 1e-12 * part, "{sensitivity} {u} {part}");
    }
    assert!(sensitivities.iter().flatten().count() > 3);
}

#[test]
fn programs_find_words_by_plain_spaces() {
    let (notebook, _) = demo::typed_readings().unwrap();
    let analysis = analyse(&notebook);
    let shown = view(&notebook, &analysis);
    let holds_together = |text: &String| text.contains(['\u{a0}', '\u{202f}']);
    // For people, no line ends between a number and its unit.
    assert!(shown.budget.components.iter().any(|part| holds_together(&english().text(&part.name))));
    let table = budget_numbers(&analysis, &shown, &english());
    let words = table.rows.iter().flatten();
    assert_eq!(words.filter(|text| holds_together(text)).collect::<Vec<_>>(), [""; 0]);
    assert!(table.cells("component").contains(&"time base at 2.5 ns per division"));
}

#[test]
fn what_was_typed_keeps_its_spaces() {
    let (mut notebook, _) = demo::typed_readings().unwrap();
    let row = notebook.state().rows[0].id;
    let text = "seen\u{a0}twice".to_owned();
    notebook.apply(Edit::SetCell { row, cell: Cell::Remark, text: text.clone() }, "").unwrap();
    let analysis = analyse(&notebook);
    let table = readings_numbers(&analysis, &view(&notebook, &analysis), &english());
    assert_eq!(table.cells("remark")[0], text);
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
