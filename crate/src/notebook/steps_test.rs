#![expect(clippy::unwrap_used, reason = "a test stops where its data are wrong")]

use super::*;
use crate::notebook::Cell;
use crate::simulated::demo;

fn cell(row: RowId, cell: Cell, text: &str) -> Edit {
    Edit::SetCell { row, cell, text: text.into() }
}

fn row(row: RowId) -> Edit {
    Edit::AddRow { row, after: None, cells: litemap::LiteMap::new() }
}

fn field(field: BenchField) -> Edit {
    Edit::SetBench { field, text: "1".into() }
}

#[test]
fn what_follows_one_another_in_one_place_is_one_step() {
    let mut notebook = Notebook::new();
    let edits = [
        Edit::SetTitle("a".into()),
        Edit::SetTitle("ab".into()),
        row(1),
        cell(1, Cell::Reading, "5"),
        row(2),
        cell(1, Cell::Reading, "6"),
        field(BenchField::Temperature),
        field(BenchField::Pressure),
        Edit::Undo,
        Edit::Undo,
    ];
    for (minute, edit) in edits.into_iter().enumerate() {
        notebook.apply(edit, &format!("2026-01-01T10:0{minute}:00Z")).unwrap();
    }
    let told: Vec<(usize, bool)> = steps(&notebook).iter().map(|step| (step.end, step.begins_row)).collect();
    let expected =
        [(2, false), (4, true), (5, true), (6, false), (7, false), (8, false), (9, false), (10, false)];
    assert_eq!(told, expected);
    assert_eq!(steps(&notebook)[1].at, "2026-01-01T10:03:00Z", "a step ends with its last entry");
    for (count, rows) in [(0, 0), (1, 0), (2, 1), (3, 2), (99, 2)] {
        assert_eq!(after_steps(&notebook, count).unwrap().state().rows.len(), rows, "after {count}");
    }
    assert_eq!(after_steps(&notebook, 99).unwrap(), notebook);
}

/// While a seal is closed nothing of before it can be had, however many steps are asked for: with the seal taken off, the
/// result that it covers would be there to see.
#[test]
fn a_closed_seal_ends_what_is_played_back() {
    let mut notebook = demo::typed_readings().unwrap().0;
    notebook.apply(row(100), "").unwrap();
    let before = notebook.log().len();
    let all = steps(&notebook).len();
    assert!(all > 1);
    notebook.apply(Edit::Seal("a salt".into()), "").unwrap();
    notebook.apply(cell(100, Cell::Remark, "after"), "").unwrap();
    let ends: Vec<usize> = steps(&notebook).iter().map(|step| step.end).collect();
    assert_eq!(ends, [before + 1, before + 2]);
    assert_eq!(after_steps(&notebook, 0).unwrap(), Notebook::new());
    for count in 1..all {
        let shown = after_steps(&notebook, count).unwrap();
        assert!(shown.state().seal.as_ref().is_some_and(|seal| !seal.opened), "after {count}");
    }
    notebook.apply(Edit::OpenSeal, "").unwrap();
    assert_eq!(steps(&notebook).len(), all + 3, "an open one covers nothing");
}
