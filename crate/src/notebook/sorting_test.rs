//! Three pages held against each other: what is not ours to do is not among what is taken.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::super::*;
use super::sorted;

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
