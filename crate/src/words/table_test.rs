//! Tables of words, natively.

#![expect(clippy::unwrap_used, reason = "tests")]

use super::{WordTable, WordTableError};
use crate::message;
use crate::words::{Value, Words};

const FEW: &str =
    "few = { $n ->\n    [one] row { $rows }\n   *[other] rows { $rows }\n  }\nwhole = see { $part }\n";

#[test]
fn a_text_chooses_its_form_and_lists_what_it_is_given() {
    let table = WordTable::read("en", FEW).unwrap();
    let said = |rows: Vec<usize>| table.say(&message!("few", n = rows.len(), rows = rows));
    assert_eq!(said(vec![7]), "row 7");
    // Unicode CLDR 44 and later, en.xml, listPatterns: a comma before "and" in a list of three, none in one of two.
    assert_eq!(said(vec![7, 1200]), "rows 7 and 1200");
    assert_eq!(said(vec![1, 2, 3]), "rows 1, 2, and 3");
    assert_eq!(table.say(&message!("whole", part = message!("few", n = 1_usize, rows = "B"))), "see row B");
}

#[test]
fn each_language_has_its_own_rules() {
    let french =
        WordTable::read("fr", "n = { $n ->\n    [one] rangée\n   *[other] rangées\n  }\nall = { $all }\n")
            .unwrap();
    // CLDR, plurals.xml: "one" in French for 0 and 1. fr.xml, listPatterns: no comma before "et".
    assert_eq!(french.say(&message!("n", n = 0_usize)), "rangée");
    assert_eq!(french.say(&message!("n", n = 2_usize)), "rangées");
    assert_eq!(french.say(&message!("all", all = vec!["A", "B", "C"])), "A, B et C");
}

#[test]
fn a_slip_shows_as_the_identifier() {
    let table = WordTable::read("en", FEW).unwrap();
    assert_eq!(table.say(&message!("none")), "none");
    assert_eq!(table.say(&message!("whole")), "whole");
}

#[test]
fn faults_of_a_table_are_named() {
    assert!(matches!(WordTable::read("?", FEW), Err(WordTableError::Language(_))));
    assert!(matches!(WordTable::read("en", "a = { $"), Err(WordTableError::Text(_))));
    assert!(matches!(WordTable::read("en", "a = 1\na = 2\n"), Err(WordTableError::Text(_))));
}

#[test]
fn messages_have_a_plain_form() {
    let message = message!("few", n = 2_usize, rows = vec![Value::from("A"), Value::from(2_usize)]);
    let form = serde_json::to_value(&message).unwrap();
    assert_eq!(form, serde_json::json!({ "id": "few", "values": { "n": 2, "rows": { "all": ["A", 2] } } }));
}
