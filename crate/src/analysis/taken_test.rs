//! Where traces and pictures go.

#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;
use crate::analysis::analyse;
use crate::notebook::{Notebook, Picture, RailField, RulerUnit, StoredFile, Traces};

fn traces(name: &str) -> Evidence {
    let file = StoredFile { sha256: name.into(), name: name.into(), bytes: 1 };
    Evidence::Traces(Traces { files: vec![file], delays: Vec::new(), layouts: Vec::new(), walk: None })
}

fn picture(name: &str) -> Evidence {
    let file = StoredFile { sha256: name.into(), name: name.into(), bytes: 1 };
    Evidence::Picture(Picture {
        file,
        width: 640,
        height: 480,
        grid: 0,
        a: Vec::new(),
        b: Vec::new(),
        heights: None,
    })
}

fn taken(rail: Option<&str>, reading: Option<&str>, name: &str) -> TakenEvidence {
    TakenEvidence {
        row: None,
        rail: rail.map(Into::into),
        reading: reading.map(Into::into),
        evidence: traces(name),
    }
}

fn bench(rows: &[(&str, &str, &str)]) -> Notebook {
    let mut notebook = Notebook::new();
    let mut edits = vec![
        Edit::AddRail(1),
        Edit::SetRail { rail: 1, field: RailField::Name, text: "A".into() },
        Edit::SetRulerUnit { rail: 1, unit: RulerUnit::Millimetre },
    ];
    for (number, (rail, reading, delay)) in (1..).zip(rows) {
        let texts = [(Cell::Rail, rail), (Cell::Reading, reading), (Cell::Delay, delay)];
        let cells =
            texts.into_iter().filter(|(_, text)| !text.is_empty()).map(|(cell, text)| (cell, (*text).into()));
        edits.push(Edit::AddRow { row: number, after: None, cells: cells.collect() });
    }
    for edit in edits {
        notebook.apply(edit, "").unwrap();
    }
    notebook
}

fn put(notebook: &mut Notebook, all: Vec<TakenEvidence>) {
    let edit = take(notebook.state(), &analyse(notebook).rows, all);
    notebook.apply(edit, "").unwrap();
}

fn rows(notebook: &Notebook) -> Vec<(String, String, String)> {
    let names = |evidence: &Option<Evidence>| match evidence {
        Some(evidence) => names(evidence),
        None => String::new(),
    };
    let texts = |cell, row: &crate::notebook::Row| row.text(cell).to_owned();
    let all = notebook.state().rows.iter();
    all.map(|row| (texts(Cell::Rail, row), texts(Cell::Reading, row), names(&row.evidence))).collect()
}

fn told(rail: &str, reading: &str, name: &str) -> (String, String, String) {
    (rail.into(), reading.into(), name.into())
}

#[test]
fn a_waiting_row_is_filled_and_the_rest_are_new() {
    // 45 cm is the 450 mm of the row that waits; the row at 500 mm has a delay already.
    let mut notebook = bench(&[("A", "450", ""), ("A", "500", "3.1")]);
    put(
        &mut notebook,
        vec![
            taken(Some("a"), Some("45 cm"), "one"),
            taken(None, Some("500 mm"), "two"),
            taken(Some("A"), Some("45 cm"), "again"),
            taken(None, None, "nameless.csv"),
        ],
    );
    assert_eq!(
        rows(&notebook),
        [
            told("A", "450", "one"),
            told("A", "500", ""),
            told("A", "500 mm", "two"),
            told("A", "45 cm", "again"),
            told("A", "", "nameless.csv")
        ]
    );
    assert_eq!(notebook.state().rows[4].text(Cell::Remark), "nameless.csv");
}

#[test]
fn the_same_files_do_not_make_another_row_and_undo_takes_all_back() {
    let mut notebook = bench(&[]);
    let all = || vec![taken(Some("A"), Some("1 m"), "one"), taken(Some("A"), Some("2 m"), "two")];
    put(&mut notebook, all());
    put(&mut notebook, all());
    assert_eq!(rows(&notebook).len(), 2);
    notebook.apply(Edit::Undo, "").unwrap();
    notebook.apply(Edit::Undo, "").unwrap();
    assert!(rows(&notebook).is_empty());
}

#[test]
fn a_picture_finds_its_row_by_the_reading_in_any_unit() {
    let mut notebook = bench(&[("A", "450", ""), ("A", "600", ""), ("A", "700", "")]);
    let named = |reading, name| TakenEvidence { evidence: picture(name), ..taken(Some("A"), reading, name) };
    let dropped = TakenEvidence { row: Some(3), ..named(Some("45 cm"), "dropped") };
    put(&mut notebook, vec![dropped, named(Some("45 cm"), "one"), named(None, "nameless.jpg")]);
    assert_eq!(
        rows(&notebook),
        [
            told("A", "450", "one"),
            told("A", "600", ""),
            told("A", "700", "dropped"),
            told("A", "", "nameless.jpg")
        ]
    );
    assert_eq!(notebook.state().rows[3].text(Cell::Remark), "nameless.jpg");
}

#[test]
fn a_reading_without_its_rail_finds_the_only_row_that_waits_there() {
    let mut notebook = bench(&[("A", "450", ""), ("B", "600", ""), ("A", "600", ""), ("B", "700", "")]);
    for edit in [
        Edit::AddRail(2),
        Edit::SetRail { rail: 2, field: RailField::Name, text: "B".into() },
        Edit::SetRulerUnit { rail: 2, unit: RulerUnit::Millimetre },
    ] {
        notebook.apply(edit, "").unwrap();
    }
    put(&mut notebook, vec![taken(None, Some("70 cm"), "one"), taken(None, Some("600 mm"), "either")]);
    assert_eq!(
        rows(&notebook),
        [
            told("A", "450", ""),
            told("B", "600", ""),
            told("A", "600", ""),
            told("B", "700", "one"),
            told("", "600 mm", "either")
        ]
    );
}
