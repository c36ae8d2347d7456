#![expect(clippy::unwrap_used, reason = "tests")]

use super::super::{Edit, Notebook, RowId, paste};
use super::*;

/// Rows of rail and time base, each a pair of texts.
fn notebook(rows: &[[&str; 2]]) -> Notebook {
    let mut notebook = Notebook::new();
    for (row, [rail, time_base]) in (1..).zip(rows) {
        let cells =
            [(Cell::Rail, *rail), (Cell::TimeBase, *time_base)].map(|(cell, text)| (cell, text.to_owned()));
        notebook.apply(Edit::AddRow { row, after: None, cells: cells.into_iter().collect() }, "").unwrap();
    }
    notebook
}

fn found(notebook: &Notebook, before: usize) -> Vec<(Cell, &str)> {
    habits(&notebook.state().rows[..before]).collect()
}

#[test]
fn the_nearest_row_that_states_one_counts() {
    let notebook = notebook(&[["near", "1"], ["far", ""], ["", " "]]);
    assert_eq!(found(&notebook, 0), []);
    assert_eq!(found(&notebook, 1), [(Cell::Rail, "near"), (Cell::TimeBase, "1")]);
    assert_eq!(found(&notebook, 3), [(Cell::Rail, "far"), (Cell::TimeBase, "1")]);
}

#[test]
fn a_row_that_is_struck_out_does_not() {
    let mut notebook = notebook(&[["near", "1"], ["far", "2"]]);
    notebook.apply(Edit::StrikeRow { row: 2, reason: "moved".into() }, "").unwrap();
    assert_eq!(found(&notebook, 2), [(Cell::Rail, "near"), (Cell::TimeBase, "1")]);
}

/// Pasted rows and the next row that is proposed go on alike.
#[test]
fn pasted_rows_and_the_next_row_go_on_alike() {
    let mut notebook = notebook(&[["near", "1"], ["far", ""]]);
    notebook.apply(paste(notebook.state(), None, Cell::Reading, "12").edit, "").unwrap();
    let row = notebook.state().rows.last().unwrap();
    let next = |cell| {
        let analysis = crate::analysis::analyse(&notebook);
        let cells = crate::view::view(&notebook, &analysis).proposal.cells;
        cells.get(&cell).cloned().unwrap_or_default()
    };
    let id: RowId = 3;
    assert_eq!(row.id, id);
    for (cell, text) in [(Cell::Rail, "far"), (Cell::TimeBase, "1")] {
        assert_eq!((row.text(cell), next(cell).as_str()), (text, text));
    }
}
