#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;
use crate::analysis::analyse;
use crate::notebook::{ActsOn, Cell, Edit, Effect, ErrorShape, Notebook, Scope, SharedError};

/// Six rows near a line, each with these uncertainties.
fn rows(u_distance: &str, u_delay: &str) -> Notebook {
    let mut notebook = Notebook::new();
    for (row, delay) in (1_u32..).zip(["3.4", "6.7", "9.9", "13.4", "16.6", "20.1"]) {
        let cells = [
            (Cell::Distance, row.to_string()),
            (Cell::DistanceUncertainty, u_distance.to_owned()),
            (Cell::Delay, delay.to_owned()),
            (Cell::DelayUncertainty, u_delay.to_owned()),
        ];
        notebook.apply(Edit::AddRow { row, after: None, cells: cells.into_iter().collect() }, "").unwrap();
    }
    notebook
}

/// The line is said to take the uncertainties that there are, and no other; the clauses are those of ISO/TS 28037:2010.
#[test]
fn the_method_names_the_uncertainties_that_there_are() {
    let method = |notebook: &Notebook| line_view(notebook.state(), &analyse(notebook)).method.unwrap();
    let how = |how| message!("line-method", how = how);
    let cases = [
        ("", "", message!("line-method-ordinary")),
        ("0", "0.1", message!("line-method-weighted")),
        ("0.01", "0", message!("line-method-distances")),
        ("0.01", "0.1", message!("line-method-both")),
    ];
    for (u_distance, u_delay, said) in cases {
        assert_eq!(method(&rows(u_distance, u_delay)), how(said), "{u_distance}, {u_delay}");
    }
    let mut shared = rows("0", "0.1");
    let clock = SharedError {
        id: 900,
        name: "clock".into(),
        acts_on: ActsOn::Delays,
        effect: Effect::Scale,
        rows: Scope::All,
        uncertainty: "1 %".into(),
        shape: ErrorShape::Normal,
        degrees_of_freedom: String::new(),
    };
    shared.apply(Edit::SetShared(clock), "").unwrap();
    assert_eq!(method(&shared), how(message!("line-method-shared")));
}
