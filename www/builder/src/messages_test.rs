//! Messages found in a source.

#![expect(clippy::unwrap_used, reason = "tests")]

use super::{gather, tokens};

#[test]
fn messages_are_found_wherever_they_stand() {
    let source = r#"
        // message!("in-a-remark")
        fn a() -> Vec<Message> {
            vec![message!("plain"), message!("filled", n = list(&[1, 2]), whole = message!("inner", a = b == c)),]
        }
    "#;
    let mut said = Vec::new();
    gather(tokens(source).unwrap(), &mut said);
    let found: Vec<String> = said
        .into_iter()
        .map(|(id, values)| format!("{id} {}", values.into_iter().collect::<Vec<_>>().join(" ")))
        .collect();
    assert_eq!(found, ["plain ", "filled n whole", "inner a"]);
    assert!(tokens("fn a() {").is_err());
}
