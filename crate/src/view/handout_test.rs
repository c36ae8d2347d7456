//! What a hand-out still lacks.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;
use crate::analysis::analyse;
use crate::notebook::{Cell, Edit};

fn row(row: u32, distance: &str, delay: &str) -> Edit {
    let cells = [
        (Cell::Distance, distance),
        (Cell::DistanceUncertainty, "0.01"),
        (Cell::Delay, delay),
        (Cell::DelayUncertainty, "0.1"),
    ];
    Edit::AddRow {
        row,
        after: None,
        cells: cells.map(|(cell, text)| (cell, text.to_owned())).into_iter().collect(),
    }
}

fn task(id: u32, asks: Asks) -> Edit {
    Edit::SetTask(id, Piece::Line, asks, "What?".into())
}

#[test]
fn each_missing_thing_is_named_until_it_is_there() {
    let mut notebook = Notebook::new();
    let needed =
        [Piece::Cautions, Piece::Readings, Piece::Result, Piece::Discussion, Piece::Group, Piece::Answers];
    for piece in needed {
        notebook.apply(Edit::SetPiece(piece, Rule::Needed), "").unwrap();
    }
    notebook.apply(Edit::SetBench { field: BenchField::LeastRows, text: "2".into() }, "").unwrap();
    for edit in [task(1, Asks::Words), task(2, Asks::Number), task(3, Asks::Nothing)] {
        notebook.apply(edit, "").unwrap();
    }
    let mut notebook = notebook.hand_out("").unwrap();
    let missing = |notebook: &Notebook| handout_view(notebook, &analyse(notebook)).missing;
    assert_eq!(missing(&notebook), needed);
    let bench = |field, text: &str| Edit::SetBench { field, text: text.into() };
    let answer = |task, text: &str| Edit::Answer(task, text.into());
    // What is done, and how many of the things asked for are missing then.
    let steps = [
        (Edit::ReadCautions("B. Student".into()), 5),
        (row(11, "0.5", "3.6"), 5),
        (row(12, "1.5", "7.0"), 3),
        (bench(BenchField::Discussion, "   "), 3),
        (bench(BenchField::Discussion, "Fine."), 2),
        (bench(BenchField::Group, "B2"), 1),
        (answer(1, "Because."), 1),
        (answer(2, "about three"), 1),
        (answer(2, "3.1"), 0),
    ];
    for (edit, left) in steps {
        notebook.apply(edit.clone(), "").unwrap();
        assert_eq!(missing(&notebook).len(), left, "after {edit:?}: {:?}", missing(&notebook));
    }
}

#[test]
fn an_answer_that_is_no_number_says_so() {
    let mut notebook = Notebook::new();
    for edit in [task(1, Asks::Number), Edit::Answer(1, "three".into())] {
        notebook.apply(edit, "").unwrap();
    }
    let shown = handout_view(&notebook, &analyse(&notebook));
    assert!(shown.tasks[0].answer.problem.is_some());
    assert_eq!(shown.entries, 0, "not handed out");
    notebook.apply(Edit::Answer(1, "3.0 ± 0.2".into()), "").unwrap();
    assert_eq!(handout_view(&notebook, &analyse(&notebook)).tasks[0].answer.problem, None);
}
