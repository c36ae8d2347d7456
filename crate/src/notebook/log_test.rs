//! The log: undo and redo, refusals that change nothing, the stored form, and pasted blocks.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::super::*;
use crate::words::in_english;

fn add(row: RowId, reading: &str) -> Edit {
    Edit::AddRow { row, after: None, cells: [(Cell::Reading, reading.to_owned())].into_iter().collect() }
}

fn notebook(edits: Vec<Edit>) -> Notebook {
    let mut notebook = Notebook::new();
    for edit in edits {
        notebook.apply(edit, "2026-01-01T10:00:00Z").unwrap();
    }
    notebook
}

#[test]
fn undo_and_redo_are_entries_that_lead_back_and_forth() {
    let mut notebook = notebook(vec![add(1, "10"), add(2, "20")]);
    let two_rows = notebook.state().clone();
    notebook.apply(Edit::Undo, "").unwrap();
    assert_eq!(notebook.state().rows.len(), 1);
    notebook.apply(Edit::Redo, "").unwrap();
    assert_eq!(notebook.state(), &two_rows);
    notebook.apply(Edit::Undo, "").unwrap();
    notebook.apply(Edit::SetTitle("other way".into()), "").unwrap();
    assert_eq!(notebook.apply(Edit::Redo, ""), Err(EditError::NothingToRedo));
    assert_eq!(notebook.log().len(), 6);
}

#[test]
fn nothing_is_left_to_undo_in_an_empty_notebook() {
    let mut notebook = Notebook::new();
    assert_eq!(notebook.apply(Edit::Undo, ""), Err(EditError::NothingToUndo));
    assert!(notebook.log().is_empty());
}

#[test]
fn a_refused_edit_changes_nothing() {
    let mut notebook = notebook(vec![add(1, "10")]);
    let before = notebook.clone();
    let cases = vec![
        (add(1, "11"), EditError::NumberTaken { id: 1 }),
        (Edit::SetCell { row: 7, cell: Cell::Delay, text: "1".into() }, EditError::NoRow { row: 7 }),
        (Edit::StrikeRow { row: 1, reason: "  ".into() }, EditError::NoReason { row: 1 }),
        (Edit::SetSense { rail: 3, sense: Sense::Falls }, EditError::NoRail { rail: 3 }),
        (Edit::RenameRail { rail: 3, name: "A".into() }, EditError::NoRail { rail: 3 }),
        (Edit::RemoveSetting(4), EditError::NoSetting { setting: 4 }),
        (Edit::RemoveShared(5), EditError::NoShared { shared: 5 }),
        (Edit::Together(vec![add(2, "20"), Edit::Undo]), EditError::NotInGroup),
        (Edit::Together(vec![add(2, "20"), Edit::RestoreRow(9)]), EditError::NoRow { row: 9 }),
    ];
    for (edit, error) in cases {
        assert_eq!(notebook.apply(edit, ""), Err(error));
        assert_eq!(notebook, before);
    }
}

#[test]
fn a_struck_row_keeps_its_texts_and_its_reason() {
    let notebook = notebook(vec![add(1, "10"), Edit::StrikeRow { row: 1, reason: "bumped".into() }]);
    assert_eq!(notebook.state().rows[0].text(Cell::Reading), "10");
    assert_eq!(notebook.state().rows[0].struck.as_deref(), Some("bumped"));
}

#[test]
fn what_is_written_reads_back_the_same_byte_for_byte() {
    let mut notebook =
        notebook(vec![add(1, "1,5 “x” \u{2212}3"), add(2, "20"), Edit::Undo, Edit::Redo, Edit::Undo]);
    notebook.apply(Edit::SetBench { field: BenchField::Aim, text: "two\nlines".into() }, "").unwrap();
    let text = write(&notebook);
    let back = read(&text).unwrap();
    assert_eq!(back, notebook);
    assert_eq!(write(&back), text);
}

#[test]
fn files_that_are_no_notebooks_say_why() {
    let whole = write(&notebook(vec![add(1, "10")]));
    for cut in 0..whole.len() - 2 {
        let error = read(&whole[..cut]).unwrap_err();
        assert!(matches!(error, FileError::NotJson { .. }), "cut at {cut}: {error}");
    }
    assert_eq!(read("{\"format\":1,\"log\":[]}"), Err(FileError::Foreign));
    assert_eq!(read("{\"kind\":\"shopping list\",\"format\":1}"), Err(FileError::Foreign));
    let amiss = whole.replacen("\"row\":1", "\"row\":\"one\"", 1);
    assert!(matches!(read(&amiss), Err(FileError::Form { .. })), "{:?}", read(&amiss));
    let no_row =
        "{\"kind\":\"slope-of-light notebook\",\"format\":1,\"log\":[{\"edit\":{\"restore_row\":4}}]}";
    assert_eq!(read(no_row), Err(FileError::BadEntry { entry: 1, reason: EditError::NoRow { row: 4 } }));
}

/// A later format, and an edit, a part of an edit or a choice that only a later version knows: none of them is a broken
/// file, nor a broken journal.
#[test]
fn what_a_later_version_made_is_called_so() {
    let whole = write(&notebook(vec![add(1, "10"), Edit::SetPath(Path::Mirror)]));
    let named = |name: &str| FileError::LaterName { name: name.into() };
    let cases = [
        ("\"format\":2", "\"format\":99", FileError::LaterFormat { format: 99 }),
        ("\"add_row\"", "\"fly\"", named("fly")),
        ("\"row\":1", "\"row\":1,\"colour\":2", named("colour")),
        ("\"mirror\"", "\"prism\"", named("prism")),
        ("\"log\"", "\"signed\":true,\"log\"", named("signed")),
    ];
    for (now, later, why) in cases {
        let text = whole.replacen(now, later, 1);
        assert_ne!(text, whole);
        let error = read(&text).unwrap_err();
        assert_eq!(error, why);
        assert!(error.is_later());
        let words = in_english(&error.message());
        assert!(
            words.contains("a later version of this page") && words.contains("left unchanged"),
            "{words}"
        );
        assert!(!words.contains("expected"), "no list of what is known: {words}");
    }
    let entry = r#"{"edit":{"fly":{"row":1}}}"#;
    assert_eq!(read_entry(entry), Err(named("fly")));
    assert_eq!(read_entry(r#"{"edit":"fly"}"#), Err(named("fly")));
    assert!(matches!(read_entry(r#"{"edit":{"restore_row":"x"}}"#), Err(FileError::Form { .. })));
    assert!(matches!(read_entry(r#"{"edit":{"restore"#), Err(FileError::NotJson { .. })));
}

#[test]
fn a_block_fills_rows_and_makes_new_ones() {
    let mut notebook = notebook(vec![Edit::AddRow {
        row: 4,
        after: None,
        cells: [(Cell::Rail, "near".to_owned()), (Cell::TimeBase, "5".to_owned())].into_iter().collect(),
    }]);
    let block = "12,5\t5\t1,20\t3,41\r\n\r\n14,5\t\t1,21\t3,52\tshaky\thand\r\n";
    let pasted = paste(notebook.state(), Some(4), Cell::Reading, block);
    assert!(pasted.turned && pasted.headings.is_empty());
    notebook.apply(pasted.edit, "").unwrap();
    let rows = &notebook.state().rows;
    assert_eq!(rows.len(), 2);
    assert_eq!(rows[0].text(Cell::Reading), "12.5", "the block has decimal commas, the notebook points");
    assert_eq!(rows[0].text(Cell::EdgeB), "3.41");
    assert_eq!(rows[1].id, 5);
    assert_eq!(rows[1].text(Cell::Rail), "near");
    assert_eq!(rows[1].text(Cell::TimeBase), "", "an empty cell of the block is kept empty");
    assert_eq!(rows[1].text(Cell::Remark), "shaky hand", "nothing pasted is lost");
    notebook.apply(Edit::Undo, "").unwrap();
    assert_eq!(notebook.state().rows.len(), 1, "a pasted block is one step back");
}

/// What is kept is what the cell's field shows, which is one line high.
#[test]
fn line_breaks_inside_a_pasted_cell_become_spaces() {
    let mut notebook = Notebook::new();
    let block = "near\t12.5\t5\t1.20\t3.41\t\"a draught\r\n  from the door\n\nsaid \"\"B\"\"\"\nnear\t14.5\t5\t1.2\t3.5\t\"x\ry\"";
    notebook.apply(paste(notebook.state(), None, Cell::Rail, block).edit, "").unwrap();
    let remarks: Vec<&str> = notebook.state().rows.iter().map(|row| row.text(Cell::Remark)).collect();
    assert_eq!(remarks, ["a draught from the door said \"B\"", "x y"]);
}

#[test]
fn a_block_of_direct_values_goes_into_the_direct_columns() {
    let mut notebook = Notebook::new();
    let block = "1\t0.1\t3.3\t0.2\n2\t0.1\t6.7\t0.2";
    notebook.apply(paste(notebook.state(), None, Cell::Distance, block).edit, "").unwrap();
    let row = &notebook.state().rows[1];
    let texts =
        [Cell::Distance, Cell::DistanceUncertainty, Cell::Delay, Cell::DelayUncertainty].map(|c| row.text(c));
    assert_eq!(texts, ["2", "0.1", "6.7", "0.2"]);
}

#[test]
fn only_what_shows_its_decimal_mark_beyond_doubt_is_turned() {
    let turned = |block: &str| paste(Notebook::new().state(), None, Cell::Reading, block).turned;
    assert!(turned("12,5\t5"));
    assert!(turned("1,234\t0,250"), "a nought before the mark parts no thousands");
    assert!(turned("1,234\t5\t1,20;1,21"), "one of two repeats tells it");
    assert!(turned("1234,567"));
    assert!(!turned("1,234\t2,345"), "these may be thousands");
    assert!(!turned("12,5\t2.5"), "both marks in one block: the cell says what is wrong");
    assert!(!turned("1,234,567\t5"));
    assert!(!turned("12\t5\t1\t2\t0,5 m behind the splice"), "a remark is no number");
}

#[test]
fn headings_are_left_out_and_told() {
    let pasted = |block: &str| paste(Notebook::new().state(), None, Cell::Reading, block);
    let headed = pasted("x / mm\tns per div\n1000\t5\n1200\t5");
    assert_eq!(headed.headings, "x / mm ns per div");
    assert!(matches!(&headed.edit, Edit::Together(edits) if edits.len() == 2), "{:?}", headed.edit);
    assert_eq!(pasted("1000x\t5\n1200\t5").headings, "", "a number mistyped is no heading");
    assert_eq!(pasted("a\tb").headings, "", "no numbers below");
}

/// A shared error or a row may still name a rail that was taken away: a new one with its number would be taken for it.
#[test]
fn a_number_once_given_is_not_given_again() {
    let mut notebook = Notebook::new();
    assert_eq!(notebook.state().new_number(), 1);
    let position = PlannedPosition { id: 40, ..PlannedPosition::default() };
    let all = [
        (Edit::AddRail(3), 4),
        (Edit::RemoveRail(3), 4),
        (Edit::AddRow { row: 7, after: None, cells: litemap::LiteMap::new() }, 8),
        (Edit::Together(vec![Edit::SetPosition(position), Edit::RemovePosition(40)]), 41),
        (Edit::AddRail(5), 41),
    ];
    for (edit, next) in all {
        notebook.apply(edit.clone(), "").unwrap();
        assert_eq!(notebook.state().new_number(), next, "after {edit:?}");
    }
}

/// A file that gave the highest number there is could take no further row.
#[test]
fn numbers_leave_room_for_those_to_come() {
    const MOST: u32 = 4_000_000_000;
    let row = |row| Edit::AddRow { row, after: None, cells: litemap::LiteMap::new() };
    let mut notebook = Notebook::new();
    for number in [MOST + 1, u32::MAX] {
        let grouped = Edit::Together(vec![row(1), Edit::AddRail(number)]);
        for edit in [row(number), Edit::AddRail(number), grouped] {
            assert_eq!(notebook.apply(edit, ""), Err(EditError::TooHigh { id: number }));
        }
        let file = format!(
            r#"{{"kind": "slope-of-light notebook", "format": 2, "log": [{{"edit": {{"add_row": {{"row": {number}}}}}}}]}}"#
        );
        let reason = EditError::TooHigh { id: number };
        assert_eq!(read(&file), Err(FileError::BadEntry { entry: 1, reason }));
    }
    notebook.apply(row(MOST), "").unwrap();
    for next in [MOST + 1, MOST + 2] {
        assert_eq!(notebook.state().new_number(), next);
        notebook.apply(row(next), "").unwrap();
    }
}
