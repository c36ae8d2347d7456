#![expect(clippy::unwrap_used, reason = "tests")]

use super::super::{Edit, Notebook, file};
use super::*;

/// A file is named by the notebook's text as long as something in its log can lead back to it.
#[test]
fn the_text_names_every_file_that_its_log_had() {
    let picture = |digit: &str| Picture {
        file: StoredFile { sha256: digit.repeat(64), name: format!("{digit}.jpg"), bytes: 1 },
        width: 4,
        height: 3,
        grid: 0,
        a: vec![],
        b: vec![],
    };
    let take = |digit| Edit::SetEvidence { row: 1, evidence: Some(Evidence::Picture(picture(digit))) };
    let off = Edit::SetEvidence { row: 1, evidence: None };
    let row = Edit::AddRow { row: 1, after: None, cells: [].into_iter().collect() };
    let mut notebook = Notebook::new();
    for edit in [row, take("a"), take("b"), Edit::Undo, off] {
        notebook.apply(edit, "2026-01-01T10:00:00Z").unwrap();
    }
    let text = file::write(&notebook);
    let mut named: Vec<&str> = hashes_in(&text).collect();
    named.dedup();
    assert_eq!(named, ["a".repeat(64), "b".repeat(64)]);
    let entries = notebook.log().iter().map(|entry| serde_json::to_string(entry).unwrap());
    assert_eq!(entries.flat_map(|text| hashes_in(&text).map(str::to_owned).collect::<Vec<_>>()).count(), 2);
    // Longer and shorter runs are no hashes.
    assert_eq!(hashes_in(&format!("{} {} \"\"", "a".repeat(63), "0".repeat(65))).count(), 0);
}

#[test]
fn an_estimator_is_called_as_the_format_has_it() {
    for estimator in Estimator::ALL {
        assert_eq!(serde_json::to_value(estimator).unwrap(), estimator.id());
    }
}
