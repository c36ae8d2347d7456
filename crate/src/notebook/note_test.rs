//! Notes have the time at which they were written, in their notebook and in a partner's that merges it.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::super::*;

const FIRST: &str = "2026-01-01T10:00:00Z";
const LATER: &str = "2026-01-01T11:30:00Z";

fn note(id: NoteId, after: Option<RowId>, text: &str) -> Edit {
    Edit::SetNote(Note { id, after, text: text.into(), at: String::new() })
}

fn row(row: RowId, reading: &str) -> Edit {
    Edit::AddRow { row, after: None, cells: [(Cell::Reading, reading.to_owned())].into_iter().collect() }
}

fn told(notebook: &Notebook) -> Vec<(NoteId, Option<RowId>, &str, &str)> {
    let notes = notebook.state().notes.iter();
    notes.map(|note| (note.id, note.after, note.text.as_str(), note.at.as_str())).collect()
}

#[test]
fn a_note_has_the_time_of_its_entry_and_is_undone_as_any_edit() {
    let mut notebook = Notebook::new();
    notebook.apply(row(1, "10"), FIRST).unwrap();
    notebook.apply(note(2, Some(1), "Lamp changed"), FIRST).unwrap();
    notebook.apply(note(3, None, "Door open"), FIRST).unwrap();
    notebook.apply(note(2, Some(1), "Lamp changed again"), LATER).unwrap();
    let all = [(2, Some(1), "Lamp changed again", LATER), (3, None, "Door open", FIRST)];
    assert_eq!(told(&notebook), all);
    // Read again from its file, nothing is another.
    assert_eq!(read(&write(&notebook)).unwrap().state(), notebook.state());
    notebook.apply(Edit::RemoveNote(3), LATER).unwrap();
    assert_eq!(told(&notebook), all[..1]);
    notebook.apply(Edit::Undo, LATER).unwrap();
    notebook.apply(Edit::Undo, LATER).unwrap();
    assert_eq!(told(&notebook), [(2, Some(1), "Lamp changed", FIRST), (3, None, "Door open", FIRST)]);
    assert_eq!(notebook.state().new_number(), 4, "its number is no other thing's");
}

#[test]
fn a_partners_note_keeps_its_time_and_stands_behind_the_partners_row() {
    let mut ours = Notebook::new();
    ours.apply(row(1, "10"), FIRST).unwrap();
    let mut theirs = ours.clone();
    ours.apply(row(2, "20"), FIRST).unwrap();
    theirs.apply(row(2, "30"), LATER).unwrap();
    theirs.apply(note(3, Some(2), "Lamp changed"), LATER).unwrap();
    theirs.apply(note(4, Some(1), "Before it"), LATER).unwrap();
    let Merge { log, taken, clashes, .. } = ours.merge(&theirs).unwrap();
    assert_eq!(clashes, vec![]);
    let all = taken.into_iter().chain([Edit::Merged(log)]).collect();
    ours.apply(Edit::Together(all), "2026-01-02T08:00:00Z").unwrap();
    let partners = ours.state().rows.iter().map(|row| row.id).max().unwrap();
    assert!(partners > 2, "a number of its own");
    let told: Vec<_> = told(&ours).into_iter().map(|(_, after, text, at)| (after, text, at)).collect();
    assert_eq!(told, [(Some(partners), "Lamp changed", LATER), (Some(1), "Before it", LATER)]);
}
