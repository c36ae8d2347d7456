//! Every refusal of the engine, in the notebook's own words.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::super::analyse;
use super::super::prepare;
use super::super::setup::Setup;
use super::*;
use crate::line::{Data, Noise};
use crate::notebook::{Cell, CovarianceOf, Edit, Notebook, RailField, Splice, StatedCovariance};
use crate::words::in_english;

/// Three rails, the second and third left to the line, and two rows: the first is struck, so that the rows of the
/// engine are not those of the page.
fn notebook() -> Notebook {
    let mut notebook = Notebook::new();
    let mut put = |edit| notebook.apply(edit, "").unwrap();
    for (rail, name) in [(1, "near"), (2, "middle"), (3, "far")] {
        put(Edit::AddRail(rail));
        for (field, text) in [(RailField::Name, name), (RailField::From, "0"), (RailField::To, "200")] {
            put(Edit::SetRail { rail, field, text: text.into() });
        }
        let splice = if rail == 1 {
            Splice::AtSplitter { mark: "0".into(), uncertainty: "1 mm".into() }
        } else {
            Splice::Free { mark: "0".into() }
        };
        put(Edit::SetSplice { rail, splice });
    }
    for (row, rail, reading, delay) in
        [(1, "near", "10", "1"), (2, "near", "20", "2"), (3, "middle", "30", "9")]
    {
        let cells = [
            (Cell::Rail, rail),
            (Cell::Reading, reading),
            (Cell::Delay, delay),
            (Cell::DelayUncertainty, "0.1"),
        ];
        put(Edit::AddRow {
            row,
            after: None,
            cells: cells.map(|(cell, text)| (cell, text.to_owned())).into_iter().collect(),
        });
    }
    put(Edit::StrikeRow { row: 1, reason: "test".into() });
    notebook
}

/// Each variant, with what its words must hold. The match without a wildcard in `refusal` holds the list complete.
fn every_variant() -> Vec<(LineError, &'static [&'static str])> {
    vec![
        (LineError::TooFewRows { got: 2, needed: 3 }, &["2 rows", "3 rows"]),
        (LineError::AllPositionsEqual, &["same distance"]),
        (LineError::NotFinite { row: 0, which: "x" }, &["Row 2 "]),
        (LineError::LengthMismatch { which: "ux", got: 1, expected: 2 }, &["fault of this page"]),
        (LineError::NegativeUncertainty { row: 1 }, &["Row 3 "]),
        (LineError::ZeroUncertainty { rows: vec![0, 1] }, &["Rows 2 and 3 "]),
        (LineError::UndeterminedColumn { column: 1 }, &["rail “far”"]),
        (LineError::UndeterminedSlope, &["rail “middle” and “far”"]),
        (LineError::Indefinite { rows: vec![1] }, &["Row 3 "]),
        (LineError::Singular { rows: vec![0, 1] }, &["rows 2 and 3 "]),
        (LineError::NotSymmetric { rows: (0, 1) }, &["Rows 2 and 3 "]),
        (LineError::OutOfRange, &["units"]),
        (LineError::NoConvergence, &["farther apart"]),
    ]
}

#[test]
fn every_refusal_of_the_engine_names_rails_and_rows_of_the_page() {
    let notebook = notebook();
    let points = prepare(notebook.state(), None).rows.points;
    let data = Data { x: vec![], y: vec![], noise: Noise::Unstated, free: vec![] };
    let setup = Setup { data, noises: vec![], shared: vec![], free: vec![1, 2] };
    for (error, parts) in every_variant() {
        let told = in_english(&refusal(&error, notebook.state(), &points, &setup).message);
        for part in parts {
            assert!(told.contains(part), "{error:?}: {told}");
        }
        assert!(!told.contains("unknown") && told != error.to_string(), "the engine's own words: {told}");
    }
}

/// The way a person meets it: two rails, one row on each, and a matrix that is not symmetric.
#[test]
fn what_a_person_can_cause_is_said_in_their_terms() {
    let mut notebook = notebook();
    let told = |notebook: &Notebook| analyse(notebook).line.unwrap_err();
    let few = told(&notebook);
    assert!(in_english(&few.message).contains("rows"), "{few:?}");
    let cells =
        [(Cell::Rail, "middle"), (Cell::Reading, "30"), (Cell::Delay, "9"), (Cell::DelayUncertainty, "0.1")];
    let cells: litemap::LiteMap<_, _> =
        cells.map(|(cell, text)| (cell, text.to_owned())).into_iter().collect();
    notebook.apply(Edit::AddRow { row: 4, after: None, cells: cells.clone() }, "").unwrap();
    notebook.apply(Edit::AddRow { row: 5, after: None, cells }, "").unwrap();
    let one_place_each = in_english(&told(&notebook).message);
    assert!(one_place_each.contains("“middle”") && !one_place_each.contains("unknown"), "{one_place_each}");

    let mut direct = Notebook::new();
    for (row, distance, delay) in [(1, "1", "3"), (2, "2", "6"), (3, "3", "9"), (4, "4", "12")] {
        let cells = [(Cell::Distance, distance), (Cell::Delay, delay)].map(|(c, t)| (c, t.to_owned()));
        direct.apply(Edit::AddRow { row, after: None, cells: cells.into_iter().collect() }, "").unwrap();
    }
    direct.apply(Edit::StrikeRow { row: 1, reason: "test".into() }, "").unwrap();
    let line = |texts: [&str; 3]| texts.map(str::to_owned).to_vec();
    let matrix = vec![line(["1", "0.5", "0"]), line(["0.4", "1", "0"]), line(["0", "0", "1"])];
    let stated = StatedCovariance { acts_on: CovarianceOf::Delays, rows: vec![2, 3, 4], matrix };
    direct.apply(Edit::SetCovariance(stated), "").unwrap();
    let askew = told(&direct);
    assert_eq!((askew.id, askew.rows.as_slice()), ("not_symmetric", &[2, 3][..]), "{askew:?}");
    assert!(in_english(&askew.message).contains("Rows 2 and 3 "), "{askew:?}");
}
