//! What a table holds, and what of it is used.

#![expect(clippy::expect_used, reason = "tests")]

use super::{Table, read, unused};

fn of(text: &str) -> Table {
    read(text).expect("the table is well-formed")
}

#[test]
fn a_text_asks_for_what_any_of_its_forms_holds() {
    let table = of(
        "none = Words alone\nsome = { $name } has { $count ->\n    [one] a row\n   *[other] { $count } rows of { $all }\n}\n",
    );
    assert!(table["none"].is_empty());
    assert_eq!(table["some"].iter().collect::<Vec<_>>(), ["all", "count", "name"]);
}

#[test]
fn what_is_no_table_is_refused_with_its_line() {
    let error = read("a = Good\nb = { $\n").expect_err("a value has no name");
    assert!(error.to_string().starts_with("line 2"), "{error}");
    let error = read("a = One\na = Two\n").expect_err("it stands there twice");
    assert!(error.to_string().contains("twice"), "{error}");
}

#[test]
fn a_text_is_used_by_its_name_or_by_a_template() {
    let table = of("row-new = a\nrow-old = b\nrow-old-hint = c\nlost = d\nrow = e\n");
    let source = "say('row-new'); say(`row-${age}`); <p data-words=\"row\">";
    assert_eq!(unused(&table, source), ["lost"]);
    assert_eq!(unused(&table, "say(`row-${age}-hint`)"), ["lost", "row", "row-new", "row-old"]);
}
