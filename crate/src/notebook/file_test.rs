#![expect(clippy::unwrap_used, reason = "tests")]

use jsonschema::Validator;
use serde_json::{Value, json};

use super::super::{Edit, Evidence, Picture, StoredFile, hashes_in};
use super::*;

/// The schema as another program takes it: with its own reading of JSON Schema, draft 2020-12.
fn validator() -> Validator {
    let schema = serde_json::to_value(schema()).unwrap();
    assert_eq!(schema["$schema"], "https://json-schema.org/draft/2020-12/schema");
    jsonschema::draft202012::meta::validate(&schema).unwrap();
    jsonschema::validator_for(&schema).unwrap()
}

fn demo() -> Value {
    serde_json::from_str(include_str!("../../../demo/typed-readings.en.json")).unwrap()
}

#[test]
fn the_schema_takes_the_demo() {
    validator().validate(&demo()).unwrap();
}

/// Schema and reader agree on what they refuse.
#[test]
fn the_schema_refuses_what_is_no_notebook() {
    let validator = validator();
    let with_entry = |entry: Value| {
        let mut file = demo();
        file["log"].as_array_mut().unwrap().push(entry);
        file
    };
    let known = with_entry(json!({ "edit": { "set_title": "Another" } }));
    assert!(validator.is_valid(&known) && read(&known.to_string()).is_ok());
    let mut unknown_part = demo();
    unknown_part["colour"] = json!("blue");
    for refused in [
        with_entry(json!({ "edit": { "paint_rail": 1 } })),
        with_entry(json!({ "edit": "paint" })),
        with_entry(json!({ "edit": { "set_title": 1 } })),
        with_entry(json!({})),
        unknown_part,
    ] {
        assert!(!validator.is_valid(&refused), "{refused}");
        assert!(read(&refused.to_string()).is_err(), "{refused}");
    }
}

/// The notebook shown in DEVELOPERS.md is one.
#[test]
fn the_notebook_in_the_documents_is_one() {
    let text = include_str!("../../../DEVELOPERS.md");
    let (_, rest) = text.split_once("```json\n").unwrap();
    let (shown, _) = rest.split_once("```").unwrap();
    validator().validate(&serde_json::from_str(shown).unwrap()).unwrap();
    assert_eq!(read(shown).unwrap().state().rows.len(), 2);
}

/// Plans and rehearsals came without a new format: what lacks them opens as before, and what holds them is written and
/// read back byte for byte, as the schema has it.
#[test]
fn plans_were_part_of_format_1() {
    let file = json!({ "kind": KIND, "format": 1, "log": [
        { "edit": { "set_rehearsal": 7 } },
        { "edit": { "set_position": { "id": 1, "reading": "12.5", "repeats": "3" } } },
        { "edit": { "set_position": { "id": 2, "rail": "A", "reading": "x", "time_base": "2" } } },
        { "edit": { "remove_position": 1 } },
        { "edit": "undo" },
    ] });
    validator().validate(&file).unwrap();
    let notebook = read(&file.to_string()).unwrap();
    let page = notebook.state();
    assert_eq!((page.plan.len(), page.rehearsal), (2, Some(7)));
    assert_eq!(page.plan[0].repeats, "3");
    assert_eq!(write(&read(&write(&notebook)).unwrap()), write(&notebook));
    let missing = json!({ "kind": KIND, "format": 1, "log": [{ "edit": { "remove_position": 1 } }] });
    assert!(matches!(read(&missing.to_string()), Err(FileError::BadEntry { entry: 1, .. })));
    assert!(read(&demo().to_string()).unwrap().state().plan.is_empty());
}

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
        heights: None,
    };
    let take = |digit| Edit::SetEvidence { row: 1, evidence: Some(Evidence::Picture(picture(digit))) };
    let off = Edit::SetEvidence { row: 1, evidence: None };
    let row = Edit::AddRow { row: 1, after: None, cells: [].into_iter().collect() };
    let mut notebook = Notebook::new();
    for edit in [row, take("a"), take("b"), Edit::Undo, off] {
        notebook.apply(edit, "2026-01-01T10:00:00Z").unwrap();
    }
    let text = write(&notebook);
    let mut named: Vec<&str> = hashes_in(&text).collect();
    named.dedup();
    assert_eq!(named, ["a".repeat(64), "b".repeat(64)]);
    let entries = notebook.log().iter().map(|entry| serde_json::to_string(entry).unwrap());
    assert_eq!(entries.flat_map(|text| hashes_in(&text).map(str::to_owned).collect::<Vec<_>>()).count(), 2);
    // Longer and shorter runs are no hashes.
    assert_eq!(hashes_in(&format!("{} {} \"\"", "a".repeat(63), "0".repeat(65))).count(), 0);
}
