#![expect(clippy::unwrap_used, reason = "a test stops where its data are wrong")]

use super::*;
use crate::notebook::Cell;
use crate::simulated::demo;

fn set(notebook: &mut Notebook, field: BenchField, text: &str) {
    notebook.apply(Edit::SetBench { field, text: text.into() }, "").unwrap();
}

/// Words are no change of what the result rests on; a reading is, and so is a step back from one.
#[test]
fn changes_after_a_seal_was_opened_are_counted() {
    let second_reading = Edit::SetCell { row: 2, cell: Cell::EdgeB, text: "3.21".into() };
    let mut notebook = demo::typed_readings().unwrap().0;
    notebook.apply(Edit::Seal("a salt".into()), "").unwrap();
    notebook.apply(second_reading.clone(), "").unwrap();
    assert_eq!(changes_after_seal(&notebook), None);
    notebook.apply(Edit::OpenSeal, "").unwrap();
    set(&mut notebook, BenchField::Discussion, "It agrees.");
    set(&mut notebook, BenchField::Group, "4");
    set(&mut notebook, BenchField::Date, "2026-01-31");
    notebook.apply(Edit::SetTitle("Ours".into()), "").unwrap();
    assert_eq!(changes_after_seal(&notebook), Some(0));
    set(&mut notebook, BenchField::EdgeHalfWidth, "0.2");
    notebook.apply(Edit::Together(vec![second_reading]), "").unwrap();
    notebook.apply(Edit::Undo, "").unwrap();
    assert_eq!(changes_after_seal(&notebook), Some(3));
}
