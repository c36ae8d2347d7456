#![expect(clippy::unwrap_used, reason = "tests")]

use super::super::sample::{english, view_of};
use super::*;
use crate::analysis::analyse;
use crate::simulated::demo;
use crate::view::{Field, view};

#[test]
fn every_row_that_holds_something_is_there() {
    let table = readings_table(&view_of("7"), &english());
    assert_eq!(table.cells("row"), ["1", "2"]);
    assert_eq!(table.cells("ruler_unit"), ["cm", "cm"]);
    assert_eq!(table.cells("outside_because"), ["", "struck out: 7"]);
    assert!(table.rows.iter().all(|row| row.len() == table.columns.len()));
}

#[test]
fn what_is_taken_stands_in_for_an_empty_cell() {
    let mut view = view_of("7");
    let field = Field { default: "5 ns".into(), ..Field::default() };
    view.rows[0].cells.insert(Cell::TimeBase, field);
    assert_eq!(readings_table(&view, &english()).cells("time_per_division"), ["5 ns", "7"]);
}

#[test]
fn a_unit_stands_in_the_head_only() {
    let (notebook, _) = demo::typed_readings().unwrap();
    let table = readings_table(&view(&notebook, &analyse(&notebook)), &english());
    for column in ["distance_m", "delay_ns"] {
        let cells = table.cells(column);
        assert_eq!(cells.len(), 24);
        assert!(cells.iter().all(|cell| cell.ends_with(')')), "{cells:?}");
    }
}

#[test]
fn an_incomplete_row_says_what_it_lacks() {
    let mut view = view_of("7");
    view.rows[0].state = RowState::Incomplete;
    view.rows[0].lacks = Some(crate::message!("row-no_delay"));
    assert_eq!(
        readings_table(&view, &english()).cells("outside_because"),
        ["incomplete: The delay is missing. Read both edges on the screen.", "struck out: 7"]
    );
}

#[test]
fn a_hostile_text_is_neutral_in_the_csv_and_comes_back() {
    let hostile = "=HYPERLINK(\"x\")";
    let table = readings_table(&view_of(hostile), &english()).to_csv().unwrap();
    assert!(table.contains("\"'=HYPERLINK(\"\"x\"\")\""));
    assert!(!table.contains(",\"=") && !table.contains(",="));
    let mut reader = csv::Reader::from_reader(table.as_bytes());
    assert_eq!(reader.records().next().unwrap().unwrap()[11], format!("'{hostile}"));
}

/// What is said of a figure in this notebook alone stands behind its source; without a source all that is said does.
#[test]
fn what_is_to_be_known_of_a_figure_stands_behind_its_source() {
    let mut view = view_of("7");
    let told = |view: &View| result_table(view, &english()).rows[0][3].clone();
    view.result.figures[0].meaning = vec!["in any notebook".into(), "Extrapolated here.".into()];
    assert_eq!(told(&view), "7. Extrapolated here.");
    view.result.figures[0].source = None;
    assert_eq!(told(&view), "in any notebook Extrapolated here.");
}

#[test]
fn figures_stand_in_tables_of_their_own() {
    let view = view_of("7");
    let trials = TrialsView { figures: view.result.figures.clone(), ..TrialsView::default() };
    let trials = trials_table(&trials, &english());
    let all =
        [line_table(&view, &english()), checks_table(&view, &english()), result_table(&view, &english())];
    for table in all {
        assert_eq!(table.rows, [["7", "7", "7", "7"]]);
        assert_eq!(table.columns[3].title, "method or source");
    }
    assert_eq!((trials.columns[3].title.as_str(), trials.rows[0][3].as_str()), ("meaning", "7"));
    assert_eq!(budget_table(&view, &english()).rows, [["7", "7", "7", "7", "7", "7", "7", "1"]]);
    assert_eq!(budget_notes(&view, &english()), ["7"]);
}
