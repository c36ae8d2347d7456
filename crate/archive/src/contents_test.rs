#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;

fn entry(name: &str, text: &str) -> Entry {
    Entry { name: name.into(), bytes: text.as_bytes().to_vec() }
}

fn with_list(text: &str) -> Vec<Entry> {
    vec![entry(CONTENTS, text), entry("a.txt", "abc")]
}

#[test]
fn the_hash_is_sha_256() {
    // FIPS 180-4, as the sha256sum of GNU coreutils computes it of “abc”.
    let expected = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
    let list = list(&[entry("a.txt", "abc")]);
    assert!(String::from_utf8(list.bytes).unwrap().contains(expected));
}

#[test]
fn a_true_list_is_taken_away_and_gives_its_order() {
    let (a, b) = (entry("a", "1"), entry("b", "2"));
    let list = list(&[a.clone(), b.clone()]);
    assert_eq!(check(vec![b.clone(), list, a.clone()]), Ok(vec![a, b]));
}

#[test]
fn a_changed_entry_is_named() {
    let list = list(&[entry("a", "1"), entry("b", "2")]);
    let changed = |what| Err(ArchiveError::Changed { entry: "b".into(), what });
    assert_eq!(check(vec![list.clone(), entry("a", "1"), entry("b", "3")]), changed("SHA-256"));
    assert_eq!(check(vec![list, entry("a", "1"), entry("b", "22")]), changed("size"));
}

#[test]
fn entries_too_few_and_too_many_are_named() {
    let list = list(&[entry("a", "1"), entry("b", "2")]);
    let missing = check(vec![list.clone(), entry("a", "1")]);
    assert_eq!(missing, Err(ArchiveError::Missing { entry: "b".into() }));
    let unlisted = check(vec![list, entry("a", "1"), entry("b", "2"), entry("c", "3")]);
    assert_eq!(unlisted, Err(ArchiveError::Unlisted { entry: "c".into() }));
}

#[test]
fn a_list_that_is_none_is_refused() {
    assert!(matches!(check(vec![entry("a", "1")]), Err(ArchiveError::NoContents { .. })));
    for text in ["", "{", "[]", "{}", "{\"kind\":\"other\",\"format\":1,\"entries\":[]}"] {
        assert!(matches!(check(with_list(text)), Err(ArchiveError::NoContents { .. })), "{text}");
    }
}

/// As the table of RFC 8259 has it, an object has names; no list of values stands for one.
#[test]
fn a_record_of_the_list_is_an_object() {
    let hash = sha256_hex(b"abc");
    let with = |text: &str| check(with_list(text));
    let object = format!(
        r#"{{"kind": "{KIND}", "format": 1, "entries": [{{"name": "a.txt", "bytes": 3, "sha256": "{hash}"}}]}}"#
    );
    assert_eq!(with(&object), Ok(vec![entry("a.txt", "abc")]));
    let inner = format!(r#"{{"kind": "{KIND}", "format": 1, "entries": [["a.txt", 3, "{hash}"]]}}"#);
    let outer = format!(r#"["{KIND}", 1, [{{"name": "a.txt", "bytes": 3, "sha256": "{hash}"}}]]"#);
    for text in [inner, outer] {
        assert!(matches!(with(&text), Err(ArchiveError::NoContents { .. })), "{text}");
    }
}

#[test]
fn a_list_of_a_later_version_is_refused_as_such() {
    let later = format!("{{\"kind\":\"{KIND}\",\"format\":2,\"parts\":[]}}");
    assert_eq!(check(with_list(&later)), Err(ArchiveError::Later { found: 2, known: 1 }));
}
