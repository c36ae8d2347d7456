//! Values without a JSON form.

use std::collections::BTreeMap;

use super::*;

#[test]
#[should_panic(expected = "no JSON form")]
fn no_text_passes_for_a_value_that_has_none() {
    to_json(&BTreeMap::from([((1, 2), "keys are texts (RFC 8259, 4)")]));
}

#[test]
#[should_panic(expected = "no JSON form")]
fn nor_one_of_several_lines() {
    to_json_lines(&BTreeMap::from([((1, 2), "keys are texts (RFC 8259, 4)")]));
}
