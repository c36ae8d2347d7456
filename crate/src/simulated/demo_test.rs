//! That the demo states what a student could have read.

#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;

/// A small division, of which there are four, can be told into fifths by eye (common practice): so edges are read and
/// typed to 0.05 of a division, and their uncertainty is stated so.
#[test]
fn edges_are_typed_as_finely_as_they_are_read() {
    for notes in &ALL {
        let (notebook, _) = typed_readings_in(notes).unwrap();
        let page = notebook.state();
        let stated = |field, unit| parse_alone(page.text(field), notes.mark, unit).unwrap();
        let fifth = 1.0 / stated(BenchField::SmallDivisions, Unit::DIVISION) / 5.0;
        assert!((stated(BenchField::EdgeHalfWidth, Unit::DIVISION) - fifth).abs() < 1e-12);
        assert!(!page.text(BenchField::EdgeReason).is_empty());
        assert!(page.rows.len() > 20);
        for row in &page.rows {
            let typed = |cell, unit| parse_alone(row.text(cell), notes.mark, unit).unwrap();
            for cell in [Cell::EdgeA, Cell::EdgeB] {
                let steps = typed(cell, Unit::DIVISION) / fifth;
                assert!((steps - steps.round()).abs() < 1e-9, "row {:?}: {cell:?}", row.id);
            }
            let base = typed(Cell::TimeBase, Unit::NANOSECOND_PER_DIVISION);
            assert!([2.5, 5.0].contains(&base), "row {:?}: {base} ns/div", row.id);
        }
    }
}
