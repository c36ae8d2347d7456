//! Three pages held against each other: what is not ours to do is not among what is taken.
#![expect(clippy::unwrap_used, clippy::panic, reason = "tests")]

use super::super::written_out::{kept, write_out};
use super::super::*;
use super::{Pages, Sorted, sorted};

fn page(edits: Vec<Edit>) -> NotebookState {
    let mut notebook = Notebook::new();
    for edit in edits {
        notebook.apply(edit, "2026-01-01T10:00:00Z").unwrap();
    }
    notebook.state().clone()
}

/// What is found of `theirs` by ours, where nobody merged the other before.
fn found(base: &NotebookState, ours: &NotebookState, theirs: &NotebookState, highest: u32) -> Sorted {
    let [base, ours, theirs] = [base, ours, theirs].map(NotebookState::clone);
    sorted(Pages { base, crossed: None, ours, theirs, unstated: vec![] }, highest)
}

fn taken(edits: Vec<Edit>) -> Sorted {
    Sorted { taken: edits, clashes: vec![], astray: Astray::default() }
}

/// Two prepare a hand-out, and one of them asks something.
#[test]
fn an_answer_to_what_is_not_asked_here_is_not_taken() {
    let title = Edit::SetTitle("Light".into());
    let aim = Edit::SetBench { field: BenchField::Aim, text: "c".into() };
    let asked = Edit::SetTask(1, Piece::Line, Asks::Words, "Why?".into());
    let base = page(vec![title.clone()]);
    let theirs = page(vec![title, asked, Edit::Answer(1, "So.".into()), aim.clone()]);
    assert_eq!(found(&base, &base, &theirs, 1), taken(vec![aim]));
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
    write_out(&mut theirs, &base);
    let Sorted { taken, clashes, .. } = found(&base, &ours, &theirs, 3);
    assert_eq!(clashes, []);
    let [Edit::AddRow { cells, .. }] = taken.as_slice() else { panic!("{taken:?}") };
    assert_eq!((cells[&Cell::Rail].as_str(), cells[&Cell::TimeBase].as_str()), ("1", "10"));
}

/// Rows that name no time base are read by the only one: where there is another one after the merge, they name it.
#[test]
fn rows_stay_read_by_what_was_the_only_time_base() {
    let setting = |id: SettingId, time: &str| {
        Edit::SetSetting(Setting { id, time_per_division: time.into(), uncertainty: String::new() })
    };
    let edge = |row: RowId| Edit::SetCell { row, cell: Cell::EdgeA, text: "1".into() };
    let cells = || [(Cell::Remark, "x".to_owned())].into_iter().collect();
    let add = |row: RowId| Edit::AddRow { row, after: None, cells: cells() };
    let named = |row: RowId| Edit::SetCell { row, cell: Cell::TimeBase, text: "10".into() };
    let begun = || vec![setting(1, "10"), add(2), add(3)];
    let with = |edits: Vec<Edit>| page([begun(), edits].concat());
    let began = page(begun());
    let ours = with(vec![edge(2), add(4), named(4)]);
    assert_eq!(kept(&ours, &with(vec![edge(3)]), &began), []);
    let two = with(vec![setting(5, "5")]);
    assert_eq!(kept(&ours, &two, &began), [named(2), named(3)]);
    // One that is changed is changed for what both were given, not for what was read by the other.
    assert_eq!(kept(&ours, &with(vec![setting(1, "20")]), &began), [named(2)]);
    assert_eq!(kept(&two, &ours, &began), [], "these name none of two already");
    // What is fixed stays as it is.
    let fixed = [Edit::SetPiece(Piece::TimeBases, Rule::Fixed), Edit::HandOut];
    let fixed = page([begun(), fixed.to_vec()].concat());
    assert_eq!(kept(&fixed, &two, &fixed), []);
}

/// What was written in a row that was handed out is read by the partner's time base, also where ours is another one.
#[test]
fn a_row_that_was_given_names_by_what_it_was_read_once_it_is_changed() {
    let setting = |time: &str| {
        Edit::SetSetting(Setting { id: 1, time_per_division: time.into(), uncertainty: String::new() })
    };
    let cells = || [(Cell::Remark, "x".to_owned())].into_iter().collect();
    let add = |row: RowId| Edit::AddRow { row, after: None, cells: cells() };
    let begun = || vec![setting("10"), add(2), add(3)];
    let edge = Edit::SetCell { row: 2, cell: Cell::EdgeA, text: "1".into() };
    let (base, mut theirs) = (page(begun()), page([begun(), vec![edge.clone()]].concat()));
    let ours = page([begun(), vec![setting("20")]].concat());
    write_out(&mut theirs, &base);
    let named = Edit::SetCell { row: 2, cell: Cell::TimeBase, text: "10".into() };
    assert_eq!(found(&base, &ours, &theirs, 3), taken(vec![named, edge]));
}
