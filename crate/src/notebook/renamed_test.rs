//! Rows follow their rail, whatever it is called, and no other.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::super::*;

/// Two rails, the second without a name yet, with a row and a planned position on each.
fn notebook() -> Notebook {
    let row = |row, rail: &str| Edit::AddRow {
        row,
        after: None,
        cells: [(Cell::Rail, rail.to_owned())].into_iter().collect(),
    };
    let position = |id, rail: &str| {
        Edit::SetPosition(PlannedPosition { id, rail: rail.to_owned(), ..PlannedPosition::default() })
    };
    let name = Edit::SetRail { rail: 1, field: RailField::Name, text: "A".to_owned() };
    let edits = [
        Edit::AddRail(1),
        name,
        Edit::AddRail(2),
        row(3, " a"),
        row(4, "2"),
        row(5, "elsewhere"),
        position(6, "A"),
        position(7, "2"),
    ];
    let mut notebook = Notebook::new();
    for edit in edits {
        notebook.apply(edit, "").unwrap();
    }
    notebook
}

fn rename(notebook: &mut Notebook, rail: RailId, name: &str) {
    notebook.apply(Edit::RenameRail { rail, name: name.to_owned() }, "").unwrap();
}

/// What rows and planned positions call their rails.
fn called(notebook: &Notebook) -> [&str; 5] {
    let page = notebook.state();
    let rows = page.rows.iter().map(|row| row.text(Cell::Rail));
    let all: Vec<&str> = rows.chain(page.plan.iter().map(|position| position.rail.as_str())).collect();
    all.try_into().unwrap()
}

#[test]
fn rows_and_planned_positions_follow_their_rail() {
    let mut notebook = notebook();
    rename(&mut notebook, 1, "North");
    assert_eq!(called(&notebook), ["North", "2", "elsewhere", "North", "2"]);
    rename(&mut notebook, 2, "South");
    assert_eq!(called(&notebook), ["North", "South", "elsewhere", "North", "South"]);
    // Without a name a rail is called by its number.
    rename(&mut notebook, 1, "");
    assert_eq!(called(&notebook), ["1", "South", "elsewhere", "1", "South"]);
    notebook.apply(Edit::Undo, "").unwrap();
    assert_eq!(called(&notebook), ["North", "South", "elsewhere", "North", "South"]);
}

/// A name is stored while it is typed: on its way to “AB” it is the other rail's “A”.
#[test]
fn a_name_may_be_another_rails_on_the_way() {
    let mut notebook = notebook();
    rename(&mut notebook, 2, "A");
    assert_eq!(called(&notebook), [" a", "2", "elsewhere", "A", "2"]);
    rename(&mut notebook, 2, "AB");
    assert_eq!(called(&notebook), [" a", "AB", "elsewhere", "A", "AB"]);
}

/// Two rails that are given each other's names: each keeps its rows, whichever is named first.
#[test]
fn rails_that_change_names_keep_their_rows() {
    let mut notebook = notebook();
    rename(&mut notebook, 2, "B");
    rename(&mut notebook, 1, "B");
    assert_eq!(called(&notebook), [" a", "B", "elsewhere", "A", "B"]);
    rename(&mut notebook, 2, "A");
    assert_eq!(called(&notebook), ["B", "A", "elsewhere", "B", "A"]);
    // As it is typed: the one before is taken away first.
    for (rail, name) in [(1, ""), (1, "A"), (2, ""), (2, "B")] {
        rename(&mut notebook, rail, name);
    }
    assert_eq!(called(&notebook), ["A", "B", "elsewhere", "A", "B"]);
}

/// Of three that change names in a round, no row is another rail's on the way.
#[test]
fn a_name_by_which_rows_call_another_rail_is_not_free_yet() {
    let mut notebook = notebook();
    rename(&mut notebook, 2, "B");
    let third = Edit::SetRail { rail: 8, field: RailField::Name, text: "C".to_owned() };
    for edit in [Edit::AddRail(8), third] {
        notebook.apply(edit, "").unwrap();
    }
    rename(&mut notebook, 2, "C");
    rename(&mut notebook, 1, "B");
    assert_eq!(called(&notebook), [" a", "B", "elsewhere", "A", "B"]);
    rename(&mut notebook, 8, "A");
    assert_eq!(called(&notebook), ["B", "C", "elsewhere", "B", "C"]);
}

/// Rows that call two rails by one name tell nothing: they stay as they are.
#[test]
fn rows_that_may_be_of_either_rail_stay() {
    let mut notebook = notebook();
    let same = Edit::SetRail { rail: 2, field: RailField::Name, text: "A".to_owned() };
    notebook.apply(same, "").unwrap();
    rename(&mut notebook, 1, "B");
    assert_eq!(called(&notebook), [" a", "2", "elsewhere", "A", "2"]);
}

/// The edit before had the same effect on the rail alone: logs that hold it give the same pages as ever.
#[test]
fn a_name_written_as_before_moves_no_row() {
    let mut notebook = notebook();
    notebook.apply(Edit::SetRail { rail: 1, field: RailField::Name, text: "B".to_owned() }, "").unwrap();
    assert_eq!(called(&notebook), [" a", "2", "elsewhere", "A", "2"]);
}
