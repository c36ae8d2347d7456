#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;
use crate::analysis::analyse;
use crate::notebook::Edit;
use crate::synth::demo;
use crate::view::view;

/// An edit of one row moves what follows from the others; only their outputs have to be told again.
#[test]
fn an_edit_leaves_other_rows_but_for_their_outputs() {
    let (mut notebook, _) = demo::typed_readings().unwrap();
    let before = view(&notebook, &analyse(&notebook)).rows;
    let edited = before[3].id;
    notebook.apply(Edit::SetCell { row: edited, cell: Cell::EdgeB, text: "5.5".into() }, "").unwrap();
    let after = view(&notebook, &analyse(&notebook)).rows;
    for (told, row) in before.iter().zip(&after) {
        match row.outputs_since(told) {
            Some(outputs) => {
                assert_ne!(row.id, edited);
                assert_eq!(outputs.residual, row.residual);
                let rebuilt = RowView {
                    distance: outputs.distance.into(),
                    delay: outputs.delay.into(),
                    residual: outputs.residual.into(),
                    ..told.clone()
                };
                assert_eq!(rebuilt, *row);
            }
            None => assert_eq!(row.id, edited),
        }
    }
    assert!(after[4].outputs_since(&before[5]).is_none(), "another row is told whole");
}
