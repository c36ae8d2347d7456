//! Changes of a notebook that leave it JSON: a value for another, a field left out, an entry twice.

use proptest::prelude::*;
use serde_json::{Value, json};

/// One change of the value that is reached by these turns.
#[derive(Clone, Debug)]
pub struct Turned {
    way: Vec<u16>,
    what: Turn,
}

#[derive(Clone, Debug)]
enum Turn {
    Become(usize),
    Leave,
    Double,
}

/// Up to four changes.
pub fn turns() -> impl Strategy<Value = Vec<Turned>> {
    let what = prop_oneof![
        6 => (0..values().len()).prop_map(Turn::Become),
        1 => Just(Turn::Leave),
        1 => Just(Turn::Double),
    ];
    let one = (prop::collection::vec(any::<u16>(), 1..9), what).prop_map(|(way, what)| Turned { way, what });
    prop::collection::vec(one, 1..5)
}

/// A text of JSON after its changes.
pub fn turned(text: &[u8], turns: &[Turned]) -> String {
    let mut whole: Value = serde_json::from_slice(text).expect("a sample is JSON");
    for turn in turns {
        apply(&mut whole, &turn.way, &turn.what);
    }
    whole.to_string()
}

/// What a value may become.
fn values() -> Vec<Value> {
    let long = "9".repeat(400);
    let mut values = vec![json!(null), json!(true), json!([]), json!({}), json!({"__proto__": {"a": 1}})];
    values.extend([0.0, -1.0, 1e308, -1e-308, 0.1].map(|number| json!(number)));
    values.extend([0, 1, 2, -1, i64::MAX, 9_007_199_254_740_993].map(|number| json!(number)));
    let texts = [
        "",
        "0",
        "-0",
        "1e308",
        "-1e-320",
        "1e400",
        "NaN",
        "\u{221e}",
        "0.5; 0.6; x",
        "1;2;3;4;5",
        "3,5",
        "1 000 000",
        "\u{202e}1.5",
        "<img src=x>",
        "rail 1",
        "rail 2",
        "mm",
        "m",
        "a",
        "b",
        "fixed",
        &long,
    ];
    values.extend(texts.map(|text| json!(text)));
    values
}

fn apply(value: &mut Value, way: &[u16], what: &Turn) {
    let Some((turn, rest)) = way.split_first() else { return become_one(value, what) };
    let turn = usize::from(*turn);
    match value {
        Value::Array(list) if !list.is_empty() => {
            let at = turn % list.len();
            match (rest.is_empty(), what) {
                (true, Turn::Leave) => drop(list.remove(at)),
                (true, Turn::Double) => list.insert(at, list[at].clone()),
                _ => apply(&mut list[at], rest, what),
            }
        }
        Value::Object(fields) if !fields.is_empty() => {
            let name = fields.keys().nth(turn % fields.len()).cloned().expect("a field");
            match (rest.is_empty(), what) {
                (true, Turn::Leave) => drop(fields.remove(&name)),
                _ => apply(fields.get_mut(&name).expect("a field"), rest, what),
            }
        }
        _ => become_one(value, what),
    }
}

fn become_one(value: &mut Value, what: &Turn) {
    if let Turn::Become(which) = what {
        *value = values().swap_remove(*which);
    }
}
