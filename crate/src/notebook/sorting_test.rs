//! Three pages held against each other: what is not ours to do is not among what is taken.
#![expect(clippy::unwrap_used, clippy::panic, reason = "tests")]

use super::super::*;
use super::{sorted, write_out};

fn page(edits: Vec<Edit>) -> NotebookState {
    let mut notebook = Notebook::new();
    for edit in edits {
        notebook.apply(edit, "2026-01-01T10:00:00Z").unwrap();
    }
    notebook.state().clone()
}

/// Two prepare a hand-out, and one of them asks something.
#[test]
fn an_answer_to_what_is_not_asked_here_is_not_taken() {
    let title = Edit::SetTitle("Light".into());
    let aim = Edit::SetBench { field: BenchField::Aim, text: "c".into() };
    let asked = Edit::SetTask(1, Piece::Line, Asks::Words, "Why?".into());
    let base = page(vec![title.clone()]);
    let theirs = page(vec![title, asked, Edit::Answer(1, "So.".into()), aim.clone()]);
    assert_eq!(sorted((&base, None), &base, &theirs, 1), (vec![aim], vec![]));
}

/// Our only time base may be another than theirs: what they read by theirs stays read by it.
#[test]
fn what_a_row_is_read_by_is_written_out() {
    let setting = |time: &str| {
        Edit::SetSetting(Setting { id: 2, time_per_division: time.into(), uncertainty: String::new() })
    };
    let row =
        Edit::AddRow { row: 3, after: None, cells: [(Cell::EdgeA, "1".to_owned())].into_iter().collect() };
    let base = page(vec![Edit::AddRail(1), setting("10")]);
    let ours = page(vec![Edit::AddRail(1), setting("20")]);
    let mut theirs = page(vec![Edit::AddRail(1), setting("10"), row]);
    write_out(&mut theirs, 2);
    let (taken, clashes) = sorted((&base, None), &ours, &theirs, 3);
    assert_eq!(clashes, []);
    let [Edit::AddRow { cells, .. }] = taken.as_slice() else { panic!("{taken:?}") };
    assert_eq!((cells[&Cell::Rail].as_str(), cells[&Cell::TimeBase].as_str()), ("1", "10"));
}
