#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;

/// Small limits, so that a test need not make large content.
const SMALL: Limits = Limits { entries: 4, entry_bytes: 1000, total_bytes: 1500, ratio: 10, free_bytes: 100 };

fn entry(name: &str, bytes: impl Into<Vec<u8>>) -> Entry {
    Entry { name: name.into(), bytes: bytes.into() }
}

fn sample() -> Vec<Entry> {
    vec![
        entry("notebook.json", "{\"log\":[]}\n"),
        entry("pictures/screen 1.jpg", [0xff, 0xd8, 0, 1]),
        entry("empty", ""),
    ]
}

/// A zip of `entries` as they are, without a list and without a look at them.
fn bare_zip(entries: &[Entry]) -> Vec<u8> {
    write_zip(entries.iter()).unwrap()
}

/// A zip of `entries` with a true list.
fn listed_zip(entries: &[Entry]) -> Vec<u8> {
    let list = contents::list(entries);
    write_zip(std::iter::once(&list).chain(entries)).unwrap()
}

/// `bytes` with each `from` replaced by `to`, which has the same length, so that all offsets still hold.
fn patched(bytes: &[u8], from: &[u8], to: &[u8]) -> Vec<u8> {
    assert_eq!(from.len(), to.len());
    let mut out = bytes.to_vec();
    let mut hits = 0;
    for at in 0..=bytes.len() - from.len() {
        if &bytes[at..at + from.len()] == from {
            out[at..at + to.len()].copy_from_slice(to);
            hits += 1;
        }
    }
    assert!(hits > 0, "nothing was replaced");
    out
}

/// Sets `field` of every local header (at `local`) and every table header (at `central`), APPNOTE 4.3.7, 4.3.12.
fn with_header_field(bytes: &[u8], local: usize, central: usize, field: &[u8]) -> Vec<u8> {
    let mut out = bytes.to_vec();
    for at in 0..bytes.len() - 4 {
        let place = match &bytes[at..at + 4] {
            b"PK\x03\x04" => at + local,
            b"PK\x01\x02" => at + central,
            _ => continue,
        };
        out[place..place + field.len()].copy_from_slice(field);
    }
    out
}

fn noise(length: usize) -> Vec<u8> {
    let mut state = 1_u32;
    let mut next = || {
        // Marsaglia, "Xorshift RNGs" (2003): bytes that deflate can't shorten.
        state ^= state << 13;
        state ^= state >> 17;
        state ^= state << 5;
        state.to_le_bytes()[1]
    };
    (0..length).map(|_| next()).collect()
}

#[test]
fn what_is_packed_is_unpacked() {
    let packed = pack(&sample()).unwrap();
    let unpacked = unpack(&packed).unwrap();
    assert_eq!(unpacked.get("notebook.json"), Some(b"{\"log\":[]}\n".as_slice()));
    assert_eq!(unpacked.get("nothing"), None);
    assert_eq!(unpacked.into_vec(), sample());
}

#[test]
fn the_same_entries_give_the_same_bytes() {
    assert_eq!(pack(&sample()).unwrap(), pack(&sample()).unwrap());
    // The time stamp is the zip epoch, 1980-01-01 00:00 (APPNOTE 4.4.6), and the maker is Unix everywhere.
    let packed = pack(&sample()).unwrap();
    assert_eq!(packed[10..14], [0, 0, 0x21, 0]);
    let table = packed.windows(4).position(|window| window == b"PK\x01\x02").unwrap();
    assert_eq!(packed[table + 5], 3);
}

#[test]
fn a_large_entry_is_stored_as_it_is_and_read_back() {
    let large = vec![entry("blank.bin", vec![0; LIMITS.free_bytes + 1])];
    assert_eq!(unpack(&pack(&large).unwrap()).unwrap().into_vec(), large);
}

#[test]
fn something_else_is_no_zip() {
    for foreign in [&b""[..], b"P", b"hello, I am a notebook", b"\xff\xd8\xff\xe0 a picture", &[0; 4000]] {
        assert_eq!(unpack(foreign), Err(ArchiveError::NotZip));
    }
}

#[test]
fn a_zip_of_something_else_is_no_bundle() {
    assert!(matches!(unpack(&bare_zip(&sample())), Err(ArchiveError::NoContents { .. })));
    assert!(matches!(unpack(&bare_zip(&[])), Err(ArchiveError::NoContents { .. })));
}

#[test]
fn cut_short_at_any_length_it_is_refused() {
    let packed = pack(&sample()).unwrap();
    for length in 0..packed.len() {
        let error = unpack(&packed[..length]).unwrap_err();
        let expected = match length {
            0..4 => error == ArchiveError::NotZip,
            _ => matches!(error, ArchiveError::CutShort | ArchiveError::Damaged { .. }),
        };
        assert!(expected, "{length} bytes of {}: {error}", packed.len());
    }
}

#[test]
fn with_any_bit_turned_it_is_refused_or_still_whole() {
    let packed = pack(&sample()).unwrap();
    for at in 0..packed.len() {
        for bit in 0..8 {
            let mut turned = packed.clone();
            turned[at] ^= 1 << bit;
            if let Ok(entries) = unpack(&turned) {
                assert_eq!(entries.into_vec(), sample(), "byte {at}, bit {bit}");
            }
        }
    }
}

#[test]
fn names_that_climb_are_refused() {
    for hostile in [
        "../evil.txt",
        "a/../evil",
        "/etc/evil",
        "..\\evil.tx",
        "C:/evil.tx",
        "C:\\evil.tx",
        "\\\\host\\ev",
        "./evil.txt",
        "a//evil.tx",
        "..",
        "a/..",
        ".",
        "bell\u{7}.txt",
        "nul\0.txt",
        "",
    ] {
        let error = unpack(&listed_zip(&[entry(hostile, "x")])).unwrap_err();
        let shown = hostile.escape_debug().to_string();
        assert!(
            matches!(&error, ArchiveError::BadName { entry, .. } if *entry == shown),
            "{hostile}: {error}"
        );
        assert!(pack(&[entry(hostile, "x")]).is_err(), "{hostile}");
    }
    let long = "n".repeat(LONGEST_NAME + 1);
    for long in [long.clone(), format!("a/{long}/b"), "n/".repeat(LONGEST_PATH / 2) + "n"] {
        assert!(matches!(unpack(&listed_zip(&[entry(&long, "x")])), Err(ArchiveError::BadName { .. })));
    }
}

#[test]
fn a_name_in_another_script_is_marked_as_utf_8() {
    // General purpose bit 11 (APPNOTE 4.4.4), in the second byte of the flags at 6 (4.3.7).
    assert_eq!(bare_zip(&[entry("写真.jpg", "1")])[7] & 8, 8);
}

#[test]
fn names_that_are_not_utf_8_are_refused() {
    let packed = patched(&listed_zip(&[entry("\u{e9}ne.txt", "1")]), b"\xc3\xa9ne.txt", b"\xff\xffne.txt");
    assert!(matches!(unpack(&packed), Err(ArchiveError::BadName { .. })));
}

/// As some programs pack an é (IBM code pages 437 and 850, as Python’s codecs `cp437` and `cp850` have them).
#[test]
fn a_name_in_a_code_page_is_read_but_for_the_letters_that_nobody_can_tell() {
    let packed = patched(&bare_zip(&[entry("Zoe.json", "1")]), b"Zoe.json", b"Zo\x82.json");
    let read = unpack_wanted(&packed, |_| true).unwrap();
    assert_eq!(read.into_vec(), [entry("Zo\u{fffd}.json", "1")]);
}

/// Müller and Möller in code page 437, 表 in code page 932 (as Python's codecs `cp437` and `cp932` have them).
#[test]
fn names_in_a_code_page_may_be_marked_alike_and_hold_what_looks_like_a_backslash() {
    let two = patched(&bare_zip(&[entry("Muller", "1"), entry("Moller", "2")]), b"Muller", b"M\x81ller");
    let read = unpack_wanted(&patched(&two, b"Moller", b"M\x94ller"), |_| true).unwrap();
    assert_eq!(read.into_vec(), [entry("M\u{fffd}ller", "1"), entry("M\u{fffd}ller", "2")]);
    let table = patched(&bare_zip(&[entry("ab.json", "1")]), b"ab.json", b"\x95\\.json");
    let read = unpack_wanted(&table, |_| true).unwrap();
    assert_eq!(read.into_vec(), [entry("\u{fffd}\u{fffd}.json", "1")]);
}

#[test]
fn names_with_dots_and_other_scripts_are_fine() {
    let long = "n".repeat(LONGEST_NAME);
    let good = vec![
        entry("a..b", "1"),
        entry("...", "2"),
        entry("写真/スクリーン.jpg", "3"),
        entry(".hidden", "4"),
        entry(&format!("{long}/{long}/{long}"), "5"),
        // One letter, and a letter with its accent (Unicode, UAX #15): two names, since nothing is stored by them.
        entry("caf\u{e9}.txt", "6"),
        entry("cafe\u{301}.txt", "7"),
    ];
    assert_eq!(unpack(&pack(&good).unwrap()).unwrap().into_vec(), good);
}

#[test]
fn repeated_names_are_refused() {
    let two = listed_zip(&[entry("one.txt", "1"), entry("two.txt", "2")]);
    let twice = patched(&two, b"two.txt", b"one.txt");
    let expected = ArchiveError::Duplicate { entry: "one.txt".into(), other: "one.txt".into() };
    assert_eq!(unpack(&twice), Err(expected));

    let by_case = listed_zip(&[entry("Line.SVG", "1"), entry("line.svg", "2")]);
    let expected = ArchiveError::Duplicate { entry: "line.svg".into(), other: "Line.SVG".into() };
    assert_eq!(unpack(&by_case), Err(expected.clone()));
    assert_eq!(pack(&[entry("Line.SVG", "1"), entry("line.svg", "2")]), Err(expected));

    assert!(matches!(pack(&[entry("contents.json", "{}")]), Err(ArchiveError::Duplicate { .. })));
}

#[test]
fn encrypted_entries_are_refused() {
    // General purpose bit 0 (APPNOTE 4.4.4).
    let locked = with_header_field(&listed_zip(&sample()), 6, 8, &[1, 0]);
    assert_eq!(unpack(&locked), Err(ArchiveError::Encrypted { entry: "contents.json".into() }));
}

#[test]
fn other_methods_are_refused() {
    // Methods 12 (bzip2), 14 (LZMA) and one that does not exist (APPNOTE 4.4.5).
    for method in [12, 14, 77] {
        let packed = with_header_field(&listed_zip(&sample()), 8, 10, &[method, 0]);
        assert_eq!(unpack(&packed), Err(ArchiveError::Method { entry: "contents.json".into() }));
    }
}

#[test]
fn entries_that_share_their_bytes_are_refused() {
    // The table's second entry points to the first one's local header.
    let mut packed = bare_zip(&[entry("aaa", noise(50)), entry("bbb", noise(50))]);
    let last = packed.windows(4).rposition(|window| window == b"PK\x01\x02").unwrap();
    packed[last + 42..last + 46].copy_from_slice(&[0; 4]);
    assert!(matches!(unpack(&packed), Err(ArchiveError::Damaged { .. })));
}

#[test]
fn a_bomb_is_stopped_while_it_unpacks() {
    let bomb = entry("big.bin", vec![0; 40 << 20]);
    let mut writer = ZipArchiveWriter::new(Vec::new());
    write_entry(&mut writer, &bomb, CompressionMethod::DEFLATE).unwrap();
    let packed = writer.finish().unwrap();
    let expected = Err(ArchiveError::TooTight { entry: "big.bin".into(), ratio: 100 });
    assert_eq!(unpack(&packed), expected);
    // The same with a header that claims ten bytes: local field at 22, table field at 24 (APPNOTE 4.3.7, 4.3.12).
    let lying = with_header_field(&packed, 22, 24, &[10, 0, 0, 0]);
    let error = unpack(&lying).unwrap_err();
    let stopped = matches!(&error, ArchiveError::TooTight { entry, .. } | ArchiveError::DamagedEntry { entry, .. } if entry == "big.bin");
    assert!(stopped, "{error}");
    // The same with every place that tells the size claiming ten bytes.
    let (true_size, claimed) = ((40_u32 << 20).to_le_bytes(), 10_u32.to_le_bytes());
    assert_eq!(unpack(&patched(&packed, &true_size, &claimed)), expected);
}

#[test]
fn a_wrong_checksum_is_refused_by_name() {
    let mut packed = bare_zip(&sample());
    let crc = crc32(&sample()[1].bytes).to_le_bytes();
    packed = patched(&packed, &crc, &[1, 2, 3, 4]);
    let error = unpack(&packed).unwrap_err();
    let refused = matches!(&error, ArchiveError::DamagedEntry { entry, what } if entry == "pictures/screen 1.jpg" && what.contains("CRC-32"));
    assert!(refused, "{error}");
}

#[test]
fn what_stands_before_or_beside_the_entries_is_refused() {
    let packed = pack(&sample()).unwrap();
    let behind_something = [b"#!/bin/sh\n".as_slice(), &packed].concat();
    assert!(matches!(unpack(&behind_something), Err(ArchiveError::Damaged { .. })));
    // The last entry is taken out of the table and left in place.
    let mut fewer = packed.clone();
    let last = fewer.windows(4).rposition(|window| window == b"PK\x01\x02").unwrap();
    let end = fewer.windows(4).rposition(|window| window == b"PK\x05\x06").unwrap();
    let (count, size) = (3_u8, u32::try_from(last).unwrap());
    fewer.drain(last..end);
    // Counts of entries at 8 and 10 (APPNOTE 4.3.16).
    fewer[last + 8] = count;
    fewer[last + 10] = count;
    let start = u32::from_le_bytes(fewer[last + 16..last + 20].try_into().unwrap());
    fewer[last + 12..last + 16].copy_from_slice(&(size - start).to_le_bytes());
    let error = unpack(&fewer).unwrap_err();
    assert!(matches!(&error, ArchiveError::Damaged { what } if what.contains("not in its table")), "{error}");
}

#[test]
fn too_much_is_refused() {
    let within = |entries: &[Entry]| unpack_within(&listed_zip(entries), SMALL).unwrap_err();

    let many: Vec<Entry> = (0..4).map(|n| entry(&format!("{n}"), "")).collect();
    assert_eq!(within(&many), ArchiveError::TooManyEntries { found: 5, limit: 4 });

    let large = [entry("large", noise(1001))];
    assert_eq!(within(&large), ArchiveError::EntryTooLarge { entry: "large".into(), limit: 1000 });

    let together = [entry("one", noise(700)), entry("two", noise(700))];
    assert_eq!(within(&together), ArchiveError::BundleTooLarge { entry: "two".into(), limit: 1500 });

    let tight = [entry("tight", vec![7; 900])];
    assert_eq!(within(&tight), ArchiveError::TooTight { entry: "tight".into(), ratio: 10 });
}

#[test]
fn too_much_is_not_written() {
    let large = [entry("large", vec![0; LIMITS.entry_bytes + 1])];
    let expected = ArchiveError::EntryTooLarge { entry: "large".into(), limit: LIMITS.entry_bytes };
    assert_eq!(pack(&large), Err(expected));
    let many: Vec<Entry> = (0..LIMITS.entries).map(|n| entry(&format!("{n}"), "")).collect();
    assert!(matches!(pack(&many), Err(ArchiveError::TooManyEntries { .. })));
}

#[test]
fn folders_that_a_packing_program_added_do_no_harm() {
    let (list, picture) = (contents::list(&sample()[1..2]), &sample()[1]);
    let folder = entry("pictures/", "");
    let packed = bare_zip(&[folder, list, picture.clone()]);
    assert_eq!(unpack(&packed).unwrap().into_vec(), std::slice::from_ref(picture));
}

#[test]
fn a_changed_entry_is_refused_by_name() {
    let list = contents::list(&[entry("readings.csv", "1,2")]);
    let packed = bare_zip(&[list, entry("readings.csv", "1,3")]);
    assert_eq!(unpack(&packed), Err(ArchiveError::Changed { entry: "readings.csv".into(), what: "SHA-256" }));
}

#[test]
fn what_is_wanted_is_unpacked_and_nothing_else() {
    let packed = pack(&sample()).unwrap();
    let wanted = sample()[1].clone();
    let found = unpack_wanted(&packed, |name| name == wanted.name).unwrap();
    assert_eq!(found.into_vec(), [wanted]);
}

#[test]
fn what_is_wanted_is_held_against_the_list_where_there_is_one() {
    let mut changed = sample();
    changed[0].bytes.push(b' ');
    let listed = [contents::list(&sample()), changed[0].clone()];
    let name = sample()[0].name.clone();
    let found = unpack_wanted(&bare_zip(&listed), |one| one == name);
    assert_eq!(found, Err(ArchiveError::Changed { entry: name.clone(), what: "size" }));
    let unlisted = [contents::list(&[]), changed[0].clone()];
    let found = unpack_wanted(&bare_zip(&unlisted), |one| one == name);
    assert_eq!(found, Err(ArchiveError::Unlisted { entry: name.clone() }));
    let found = unpack_wanted(&bare_zip(&changed), |one| one == name).unwrap();
    assert_eq!(found.into_vec(), changed[..1]);
}
