//! Which cautions stand first, and who is said to have read them.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;
use crate::notebook::{Edit, EditError, Notebook, read, write};

const AT: &str = "2026-01-31T10:15:42.123Z";

fn with(edits: &[Edit]) -> Notebook {
    let mut notebook = Notebook::new();
    for edit in edits {
        notebook.apply(edit.clone(), AT).unwrap();
    }
    notebook
}

fn wavelength(text: &str) -> Edit {
    Edit::SetBench { field: BenchField::Wavelength, text: text.into() }
}

/// IEC 60825-1:2014: visible is 400 nm to 700 nm. A nitrogen laser emits at 337 nm, a neodymium laser at 1064 nm, its
/// second harmonic at 532 nm, a helium-neon laser at 633 nm (from memory).
#[test]
fn the_words_on_invisible_beams_come_first() {
    let first = |text: &str| cautions_view(with(&[wavelength(text)]).state()).groups[0].clone();
    for (text, shown) in [
        ("337", "337 nm"),
        ("399.9", "399.9 nm"),
        ("700.1 nm", "700.1 nm"),
        ("1064", "1064 nm"),
        ("1.064 µm", "1064 nm"),
    ] {
        let group = first(text);
        assert_eq!(group.title.id, "cautions-group-invisible", "{text}");
        assert_eq!(group.cautions[0], message!("cautions-invisible", wavelength = shown), "{text}");
    }
    for text in ["", "400", "532", "633", "700", "red"] {
        assert_eq!(first(text).title.id, "cautions-group-beam", "{text}");
    }
}

#[test]
fn none_of_the_standing_cautions_goes_where_the_beam_is_invisible() {
    let groups = |text: &str| cautions_view(with(&[wavelength(text)]).state()).groups;
    assert_eq!(groups("337")[1..], groups("")[..]);
}

/// The log alone tells it: so it lies in files and bundles, and an undo takes it back.
#[test]
fn who_read_them_stands_in_the_notebook() {
    let mut notebook = with(&[Edit::ReadCautions("Ada".into()), Edit::ReadCautions("Émilie".into())]);
    let by = |name: &str| message!("cautions-read-by", name = name, date = "2026-01-31", time = "10:15");
    assert_eq!(cautions_view(notebook.state()).read, [by("Ada"), by("Émilie")]);
    let kept = read(&write(&notebook)).unwrap();
    assert_eq!(cautions_view(kept.state()), cautions_view(notebook.state()));
    notebook.apply(Edit::Undo, AT).unwrap();
    assert_eq!(cautions_view(notebook.state()).read, [by("Ada")]);
    assert_eq!(cautions_view(Notebook::new().state()).read, []);
}

#[test]
fn a_copy_is_read_anew() {
    let mut notebook = with(&[Edit::ReadCautions("Ada".into())]);
    notebook.apply(Edit::Copied("Copy of the first run".into()), AT).unwrap();
    assert_eq!(notebook.state().title, "Copy of the first run");
    assert_eq!(cautions_view(notebook.state()).read, []);
    assert_eq!(notebook.apply(Edit::Undo, AT), Err(EditError::UndoStops), "it would be read again");
}

#[test]
fn a_reader_has_a_name() {
    let mut notebook = Notebook::new();
    for name in ["", "  "] {
        assert_eq!(notebook.apply(Edit::ReadCautions(name.into()), AT), Err(EditError::NoName));
    }
    assert!(notebook.log().is_empty());
}

#[test]
fn a_time_that_is_none_is_left_out() {
    for at in ["", "yesterday", "2026-01-31", "2026-01-31TZ", "2026-01-31T10:1Z", "2026-01-31T10:15:00+02:00"]
    {
        let mut notebook = Notebook::new();
        notebook.apply(Edit::ReadCautions("Ada".into()), at).unwrap();
        let read = cautions_view(notebook.state()).read;
        assert_eq!(read, [message!("cautions-read-by-undated", name = "Ada")], "{at}");
    }
}
