//! JSON in its one form, beside what `serde_json` reads by itself.

#![expect(clippy::unwrap_used, reason = "tests")]

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};
use serde_json::value::RawValue;

use super::from_json;

#[derive(Debug, Default, Deserialize, PartialEq, Serialize)]
#[serde(deny_unknown_fields)]
struct Record {
    name: String,
    #[serde(default)]
    pair: (f64, u8),
    #[serde(default)]
    held: Option<Box<Record>>,
    #[serde(default)]
    choices: Vec<Choice>,
    #[serde(default)]
    kept: BTreeMap<String, i64>,
}

#[derive(Debug, Deserialize, PartialEq, Serialize)]
enum Choice {
    Bare,
    Holding(bool),
    Two(u32, char),
    Named { length: f64, of: Option<u8> },
    Whole(Record),
}

fn all_kinds() -> Record {
    let choices = || {
        let whole = Record { name: "inner".into(), ..Record::default() };
        vec![
            Choice::Bare,
            Choice::Holding(true),
            Choice::Two(7, 'é'),
            Choice::Named { length: -1.5e-3, of: Some(3) },
            Choice::Whole(whole),
        ]
    };
    let held = Record { name: "ce\u{202f}\"\\".into(), choices: choices(), ..Record::default() };
    Record {
        name: "outer".into(),
        pair: (0.1, 255),
        held: Some(Box::new(held)),
        choices: choices(),
        kept: BTreeMap::from([("low".into(), i64::MIN), ("high".into(), i64::MAX)]),
    }
}

#[test]
fn what_is_written_is_read() {
    let text = serde_json::to_string(&all_kinds()).unwrap();
    assert_eq!(from_json::<Record>(&text).unwrap(), all_kinds());
    let indented = serde_json::to_string_pretty(&all_kinds()).unwrap();
    assert_eq!(from_json::<Record>(&indented).unwrap(), all_kinds());
}

#[test]
fn a_list_is_no_record() {
    for text in [r#"["a", [0, 1], null, [], {}]"#, r#"{"name": "a", "held": ["a", [0, 1], null, [], {}]}"#] {
        assert!(serde_json::from_str::<Record>(text).is_ok(), "serde takes it");
        assert!(from_json::<Record>(text).unwrap_err().is_data(), "{text}");
    }
    for choice in [r#"{"Named": [1.5, 2]}"#, r#"{"Whole": ["a"]}"#] {
        assert!(from_json::<Choice>(choice).unwrap_err().is_data(), "{choice}");
    }
    assert_eq!(from_json::<(f64, u8)>("[1.5, 2]").unwrap(), (1.5, 2), "a pair is a list");
}

#[test]
fn a_text_that_holds_json_is_read_as_it_stands() {
    let texts: Vec<Box<RawValue>> = from_json(r#"[{"a": [1, 2]}, "b"]"#).unwrap();
    assert_eq!(texts.iter().map(|text| text.get()).collect::<Vec<_>>(), [r#"{"a": [1, 2]}"#, "\"b\""]);
}

/// The cases are of RFC 8259: what follows the value (2), a number with a leading zero (6), an unknown escape (7).
#[test]
fn faults_are_told_as_the_library_tells_them() {
    let faults = [
        r#"{"name": "a"} b"#,
        r#"{"name": "a", "pair": [01, 2]}"#,
        r#"{"name": "\x"}"#,
        "{\"name\": \"a\",\n \"pair\": [1, 256]}",
        "{\"name\": \"a\",\n \"other\": 1}",
        "{}",
        "",
    ];
    for text in faults {
        let (ours, theirs) =
            (from_json::<Record>(text).unwrap_err(), serde_json::from_str::<Record>(text).unwrap_err());
        assert_eq!(ours.to_string(), theirs.to_string(), "{text}");
        assert_eq!(ours.classify(), theirs.classify(), "{text}");
    }
}
