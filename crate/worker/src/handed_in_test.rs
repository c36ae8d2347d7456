#![expect(clippy::panic, clippy::unwrap_used, reason = "a test stops where its data are wrong")]

use std::iter::once;

use super::*;
use slope_archive::pack;

fn entry(name: &str, text: &str) -> Entry {
    Entry { name: name.into(), bytes: text.as_bytes().to_vec() }
}

fn bundle() -> Vec<u8> {
    pack(&[entry(NOTEBOOK, "{}"), entry(LINE, "figure"), entry("pictures/1.jpg", "x")]).unwrap()
}

/// A zip as a person packs one: by our own container, with the name of the list turned into another.
fn by_hand(entries: &[Entry]) -> Vec<u8> {
    let (list, other) = (CONTENTS.as_bytes(), b"contents.txtt");
    let packed = pack(entries).unwrap();
    let mut turned = packed.clone();
    for at in (0..packed.len() - list.len()).filter(|at| packed[*at..].starts_with(list)) {
        turned[at..at + list.len()].copy_from_slice(other);
    }
    turned
}

#[test]
fn a_bundle_is_its_notebook_with_the_table_of_its_line() {
    let expected = HandedIn::Notebook { text: "{}".into(), line: Some("figure".into()) };
    assert_eq!(handed_in("anna.zip", &bundle()), Ok(expected.clone()));
    // Unpacked and packed again, without the list.
    let again = by_hand(&[entry(NOTEBOOK, "{}"), entry(LINE, "figure"), entry(".DS_Store", "x")]);
    assert_eq!(handed_in("anna.zip", &again), Ok(expected));
}

#[test]
fn a_notebook_is_taken_as_it_is() {
    let expected = HandedIn::Notebook { text: "{}".into(), line: None };
    assert_eq!(handed_in("anna.json", b"{}"), Ok(expected));
    let refused = handed_in("anna.json", &[b'{', 0xff]).unwrap_err();
    assert_eq!(refused, message!("bundle-damaged_entry", entry = "anna.json"));
}

#[test]
fn a_key_is_no_notebook() {
    let key = Key { title: "Week 3".into(), seed: String::new(), sets: Vec::new() };
    let text = key::write(&key);
    assert_eq!(handed_in("key.json", text.as_bytes()), Ok(HandedIn::Key(key)));
    let later = text.replace("\"format\": 1", "\"format\": 9");
    assert_eq!(handed_in("key.json", later.as_bytes()), Err(message!("key-later", name = "key.json")));
}

#[test]
fn what_a_teacher_says_is_no_notebook() {
    let text = format!(
        r#"{{"kind":"slope-of-light feedback","format":1,"feedback":{{"of":{{"entries":1,"digest":"{}","title":"","people":"","student_number":"","group":"","date":""}},"from":"","at":"","general":"Good.","mark":"","comments":[]}}}}"#,
        "0f".repeat(32)
    );
    let HandedIn::Feedback(read) = handed_in("anna.json", text.as_bytes()).unwrap() else { panic!("it is") };
    assert_eq!(read.general, "Good.");
    let damaged = text.replace("entries\":1", "entries\":0");
    assert_eq!(
        handed_in("anna.json", damaged.as_bytes()),
        Err(message!("feedback-damaged", name = "anna.json"))
    );
}

#[test]
fn a_zip_of_many_gives_what_may_hold_a_notebook() {
    let inner = Entry { name: "group 1/anna.ZIP".into(), bytes: bundle() };
    let others = [
        entry("group 1/ben/notebook.json", "{}"),
        entry("group 1/ben/contents.json", "{}"),
        entry("group 1/ben/csv-metadata.json", "{}"),
        entry("group 1/ben/line.csv", "x"),
        entry("__MACOSX/group 1/._anna.zip", "x"),
        entry("list.txt", "x"),
    ];
    let all: Vec<Entry> = once(inner).chain(others).collect();
    let HandedIn::Several(found) = handed_in("class.zip", &by_hand(&all)).unwrap() else { panic!("one") };
    let names: Vec<&str> = found.iter().map(|entry| entry.name.as_str()).collect();
    assert_eq!(names, ["group 1/anna.ZIP", "group 1/ben/notebook.json"]);
    assert_eq!(found[0].bytes, bundle());
}

/// Who was told that `notebook.json` alone can be opened hands that in, and the teacher packs it with what all others did.
#[test]
fn a_notebook_by_itself_hides_no_other_in_a_zip() {
    let zip = by_hand(&[
        entry(NOTEBOOK, "{}"),
        Entry { name: "anna.zip".into(), bytes: bundle() },
        entry("ben.json", "{}"),
    ]);
    let HandedIn::Several(found) = handed_in("class.zip", &zip).unwrap() else { panic!("one") };
    let names: Vec<&str> = found.iter().map(|entry| entry.name.as_str()).collect();
    assert_eq!(names, [NOTEBOOK, "anna.zip", "ben.json"]);
}

#[test]
fn a_zip_without_a_notebook_and_a_broken_one_say_so() {
    let none = by_hand(&[entry("list.txt", "x"), entry(LINE, "x")]);
    assert_eq!(handed_in("class.zip", &none), Err(message!("class-no_notebook")));
    let cut = &bundle()[..60];
    assert_eq!(handed_in("class.zip", cut), Err(message!("bundle-cut_short")));
    // A bit of the notebook turned: neither its checksum nor the list's hash is right.
    let mut changed = bundle();
    let at = changed.windows(13).position(|window| window == NOTEBOOK.as_bytes()).unwrap();
    changed[at + 13] ^= 1;
    assert!(handed_in("class.zip", &changed).is_err());
}
