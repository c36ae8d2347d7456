#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;
use crate::analysis::analyse;
use crate::notebook::{Cell, Edit};
use crate::simulated::demo;
use crate::view::view;

/// An edit of one row moves what follows from the others; only their outputs have to be told again.
#[test]
fn an_edit_leaves_other_rows_but_for_their_outputs() {
    let (mut notebook, _) = demo::typed_readings().unwrap();
    let before = view(&notebook, &analyse(&notebook)).rows;
    let edited = before[3].id;
    notebook.apply(Edit::SetCell { row: edited, cell: Cell::EdgeB, text: "2.60".into() }, "").unwrap();
    let after = view(&notebook, &analyse(&notebook)).rows;
    let news = row_news(&after, &before);
    for ((told, row), new) in before.iter().zip(&after).zip(news) {
        match new {
            Some(RowNews::Outputs(Outputs { distance, delay, residual })) => {
                assert_ne!(row.id, edited);
                let (distance, delay, residual) = (distance.into(), delay.into(), residual.into());
                assert_eq!(RowView { distance, delay, residual, ..told.clone() }, *row);
            }
            Some(RowNews::Whole(whole)) => assert_eq!((whole, row.id), (row, edited)),
            None => assert_eq!(told, row),
        }
    }
}

#[test]
fn another_row_in_a_place_is_told_whole() {
    let (notebook, _) = demo::typed_readings().unwrap();
    let rows = view(&notebook, &analyse(&notebook)).rows;
    let news = row_news(&rows[1..3], &rows[..1]);
    assert_eq!(news, [Some(RowNews::Whole(&rows[1])), Some(RowNews::Whole(&rows[2]))]);
    assert_eq!(row_news(&rows, &rows), vec![None; rows.len()]);
}

/// A row shows the notices that name it: one whose notice came, changed or went is told whole.
#[test]
fn a_row_whose_notice_is_new_is_told_whole() {
    let (mut notebook, _) = demo::typed_readings().unwrap();
    let before = view(&notebook, &analyse(&notebook)).rows;
    // 1.5 divisions are far more than any scatter of the demo.
    let row = before[3].id;
    let text = |edge| before[3].cells.get(&edge).unwrap().text.parse::<f64>().unwrap();
    let far = format!("{:.2}", text(Cell::EdgeB) + 1.5);
    notebook.apply(Edit::SetCell { row, cell: Cell::EdgeB, text: far }, "").unwrap();
    let after = view(&notebook, &analyse(&notebook)).rows;
    assert_ne!(before[3].notices, after[3].notices);
    let mut told = 0;
    for ((before, after), new) in before.iter().zip(&after).zip(row_news(&after, &before)) {
        if before.notices != after.notices {
            assert_eq!(new, Some(RowNews::Whole(after)));
            told += 1;
        }
    }
    assert!(told >= 1, "{told}");
}
