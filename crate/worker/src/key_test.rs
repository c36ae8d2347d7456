#![expect(clippy::unwrap_used, reason = "a test stops where its data are wrong")]

use super::*;

fn key() -> Key {
    let truth = KeyTruth { t0: "1,234\u{a0}ns".into(), errors: vec!["splice 2: −3.4 mm".into()] };
    let set =
        KeySet { number: 1, name: "Ada".into(), file: "1_Ada.json".into(), digest: "5f".repeat(32), truth };
    Key { title: "Week 3".into(), seed: "00".repeat(32), sets: vec![set] }
}

#[test]
fn a_key_reads_back() {
    assert_eq!(read("key.json", &write(&key())), Ok(Some(key())));
    assert_eq!(key().sets[0].truth.t0(), Some(1.234));
}

/// By `hashlib` of Python 3.
#[test]
fn a_secret_is_a_digest_of_seed_and_number() {
    let seed = format!("{}1", "0".repeat(63));
    assert_eq!(secret(&seed, 7), "6b927a6875bb4d69800fc2e9a9300f2366e2a16bfc0edcaf71b5059e58c5224a");
    assert_ne!(secret(&seed, 8), secret(&seed, 7));
}

#[test]
fn what_is_no_key_is_left_to_others_and_a_broken_one_says_so() {
    let notebook = format!(
        r#"{{"kind":"slope-of-light notebook","format":2,"log":[{{"edit":{{"set_title":"{KIND}"}}}}]}}"#
    );
    for text in ["", "{}", "[", notebook.as_str()] {
        assert_eq!(read("anna.json", text), Ok(None), "{text}");
    }
    let text = write(&key());
    let later = text.replace("\"format\": 1", "\"format\": 2");
    assert_eq!(read("key.json", &later), Err(message!("key-later", name = "key.json")));
    let cut_off = &text[..text.len() / 2];
    assert_eq!(read("key.json", cut_off), Err(message!("key-damaged", name = "key.json")));
    for (from, to) in [("1,234", "about 1"), ("\"digest\"", "\"digits\""), ("\"format\": 1", "\"format\": 0")]
    {
        let broken = text.replace(from, to);
        assert_ne!(broken, text);
        assert_eq!(
            read("key.json", &broken).unwrap_err(),
            message!("key-damaged", name = "key.json"),
            "{to}"
        );
    }
}
