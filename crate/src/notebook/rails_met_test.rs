//! Rails turned into a partner's: rows stay with the rail that they were read on, and none is another's on the way.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::super::*;
use super::{RailNames, call_by, rails_turned, rails_written};

/// Rails by their numbers and names.
type Rails<'a> = &'a [(RailId, &'a str)];

/// A notebook with such rails, and with a row for each of `rows`, numbered from 100, that calls its rail so.
fn notebook(rails: Rails, rows: &[&str]) -> Notebook {
    let mut notebook = Notebook::new();
    for (rail, name) in rails {
        let name = Edit::SetRail { rail: *rail, field: RailField::Name, text: (*name).to_owned() };
        notebook.apply(Edit::Together(vec![Edit::AddRail(*rail), name]), "").unwrap();
    }
    for (row, rail) in (100..).zip(rows) {
        let cells = [(Cell::Rail, (*rail).to_owned())].into_iter().collect();
        notebook.apply(Edit::AddRow { row, after: None, cells }, "").unwrap();
    }
    notebook
}

fn page(rails: Rails, rows: &[&str]) -> NotebookState {
    notebook(rails, rows).state().clone()
}

/// What rows call their rails.
fn called(page: &NotebookState) -> Vec<&str> {
    page.rows.iter().map(|row| row.text(Cell::Rail)).collect()
}

/// What rows call their rails once those of one page are turned into those of another.
fn turned(before: Rails, rows: &[&str], after: Rails) -> Vec<String> {
    let (mut notebook, after) = (notebook(before, rows), page(after, &[]));
    notebook.apply(Edit::Together(rails_turned(notebook.state(), &after)), "").unwrap();
    let page = notebook.state();
    assert_eq!(rails_written(page), rails_written(&after));
    assert!(page.rails.iter().all(|rail| rail.called.is_none()), "rows wait for a name: {:?}", page.rails);
    called(page).into_iter().map(str::to_owned).collect()
}

#[test]
fn rows_follow_rails_with_other_names() {
    assert_eq!(turned(&[(1, "A"), (2, "B")], &["A", " b", "C"], &[(1, "X"), (2, "B")]), ["X", " b", "C"]);
    // By their numbers, and with names once more.
    assert_eq!(turned(&[(1, "A"), (2, "B")], &["A", "B"], &[(1, ""), (2, "")]), ["1", "2"]);
    assert_eq!(turned(&[(1, ""), (2, "")], &["1", "2"], &[(1, "2"), (2, "1")]), ["2", "1"]);
}

#[test]
fn rows_follow_rails_that_change_names_in_a_round() {
    assert_eq!(turned(&[(1, "A"), (2, "B")], &["A", "B"], &[(1, "B"), (2, "A")]), ["B", "A"]);
    let [before, after] = [[(1, "A"), (2, "B"), (3, "C")], [(1, "B"), (2, "C"), (3, "A")]];
    assert_eq!(turned(&before, &["A", "B", "C"], &after), ["B", "C", "A"]);
    assert_eq!(turned(&after, &["A", "B", "C"], &before), ["C", "A", "B"]);
}

/// A rail without a name is called by its number, which is another one when one before it is gone.
#[test]
fn rows_follow_rails_that_get_another_number() {
    let before = [(1, ""), (2, ""), (3, "")];
    assert_eq!(turned(&before, &["1", "2", "3"], &[(2, ""), (3, "")]), ["1", "1", "2"]);
    assert_eq!(turned(&before, &["1", "2", "3"], &[(1, ""), (4, ""), (3, "X")]), ["1", "2", "X"]);
    // Laid anew, since another one comes before it.
    assert_eq!(turned(&[(1, ""), (3, "")], &["1", "2"], &[(1, ""), (2, ""), (3, "")]), ["1", "3"]);
}

/// Rows that call two rails by one name are read on neither: which they would follow is not told. The others follow all the same.
#[test]
fn rows_that_may_be_of_either_rail_stay() {
    let after = [(1, "X"), (2, "Y"), (3, "A")];
    assert_eq!(turned(&[(1, "A"), (2, "A"), (3, "B")], &["A", "B"], &after), ["A", "A"]);
    // Two get one name.
    let [before, after] = [[(1, "A"), (2, "B"), (3, "C")], [(1, "C"), (2, "C"), (3, "A")]];
    assert_eq!(turned(&before, &["A", "B", "C"], &after), ["A", "B", "A"]);
}

#[test]
fn rows_call_a_rail_by_its_name_on_another_page() {
    let names = RailNames::on(&page(&[(1, "B"), (2, "A"), (4, "D"), (5, "D")], &[]));
    let mut there = page(&[(1, "A"), (2, "B"), (3, "C"), (4, "E")], &["a", "B ", "C", "E", "x", ""]);
    call_by(&mut there, &names);
    // One that is not there, or is called as another one, keeps its own.
    assert_eq!(called(&there), ["B", "A", "C", "E", "x", ""]);
}

#[test]
fn rows_that_may_be_read_on_another_rail_are_named() {
    let here = page(&[(1, "A"), (2, "B"), (3, "C")], &["A", "b", "C", "D"]);
    let none = Vec::<RowId>::new();
    let astray = |page: &NotebookState, other: &NotebookState| super::astray(page, other).rows;
    // Their rail is not there, and another one is called so; what is no rail here is one there as it was typed.
    assert_eq!(astray(&here, &page(&[(1, "B"), (4, "D")], &[])), [101]);
    assert_eq!(astray(&here, &page(&[(1, "A"), (2, "C")], &[])), [102]);
    assert_eq!(astray(&here, &here), none);
    // Two of that name are told where the row is read.
    assert_eq!(astray(&here, &page(&[(4, "B"), (5, "B")], &[])), none);
    // They can't follow a rail that gets another one's name.
    assert_eq!(astray(&here, &page(&[(1, "C"), (2, "C"), (3, "A")], &[])), [100]);
    // Of which of two they are is not told here.
    let two = page(&[(1, "A"), (2, "A")], &["A"]);
    assert_eq!(
        (astray(&two, &page(&[(1, "X"), (2, "Y"), (3, "A")], &[])), astray(&two, &two)),
        (vec![100], none)
    );
}
