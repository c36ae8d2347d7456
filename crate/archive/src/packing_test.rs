//! A bundle that is packed entry by entry is one as any other, and nothing of it stays behind meanwhile.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::super::{pack, unpack};
use super::*;

fn entry(name: &str, bytes: impl Into<Vec<u8>>) -> Entry {
    Entry { name: name.into(), bytes: bytes.into() }
}

#[test]
fn what_comes_out_in_turn_is_a_bundle() {
    let large = vec![7_u8; LIMITS.free_bytes + 1];
    let entries =
        [entry("1_Ada Blue.zip", [1, 2, 3]), entry("2_Žoë.json", "{}"), entry("3", large), entry("4", "")];
    let mut packing = Packing::begin().unwrap();
    let mut all = Vec::new();
    for entry in &entries {
        let bytes = packing.add(entry).unwrap();
        // Headers of a zip are 30 bytes and the name, and what stands behind a content at most 24 (APPNOTE 4.3.7, 4.3.9);
        // deflate grows short contents by a few.
        assert!(
            bytes.len() < entry.bytes.len() + 2 * entry.name.len() + 100,
            "{}: {}",
            entry.name,
            bytes.len()
        );
        assert!(packing.outlet.taken().is_empty());
        all.extend(bytes);
    }
    all.extend(packing.end().unwrap());
    assert_eq!(unpack(&all).unwrap().into_vec(), entries);
    assert_eq!(unpack(&pack(&entries).unwrap()).unwrap().into_vec(), entries);
    let none = Packing::begin().unwrap().end().unwrap();
    assert_eq!(unpack(&none).unwrap().into_vec(), []);
}

#[test]
fn what_would_not_be_unpacked_is_refused() {
    let mut packing = Packing::begin().unwrap();
    packing.add(&entry("a", "1")).unwrap();
    assert!(matches!(packing.add(&entry("A", "2")), Err(ArchiveError::Duplicate { .. })));
    assert!(matches!(packing.add(&entry(CONTENTS, "{}")), Err(ArchiveError::Duplicate { .. })));
    assert!(matches!(packing.add(&entry("../b", "2")), Err(ArchiveError::BadName { .. })));
    let much = entry("much", vec![0_u8; LIMITS.entry_bytes + 1]);
    assert!(matches!(packing.add(&much), Err(ArchiveError::EntryTooLarge { .. })));
    let mut full = Packing::begin().unwrap();
    let added: Vec<bool> =
        (0..LIMITS.entries).map(|name| full.add(&entry(&name.to_string(), "")).is_ok()).collect();
    // One place is the list's.
    assert_eq!(added.iter().filter(|added| **added).count(), LIMITS.entries - 1);
}
