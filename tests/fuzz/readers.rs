//! What reads files and texts from elsewhere, each with its samples.

use proptest::prelude::*;
use slope_of_light::bundle;
use slope_of_light::notebook::{self, Cell, Edit, Merge, Notebook, paste};
use slope_of_light::trace::{Asked, first_rows, measure, pair, rail_reading, read, recognise};
use slope_of_light::words::WordTable;
use slope_worker::feedback;
use slope_worker::handed_in::handed_in;
use slope_worker::key;
use slope_worker::size::{is_whole, size};

use crate::changes::{changed, changes};
use crate::json::{turned, turns};
use crate::samples;
use crate::trials::try_all;
use crate::use_all::use_all;

/// Tries a reader with samples whose bytes are changed; `read` says whether it took them.
fn by_bytes(reader: &str, cases: u32, samples: &[Vec<u8>], read: impl Fn(&[u8]) -> bool) {
    try_all(
        reader,
        cases,
        &changes(samples.len()),
        |(which, changes)| changed(samples, *which, changes),
        read,
    );
}

#[test]
fn notebook() {
    let words = WordTable::english().unwrap();
    by_bytes("notebook", 3_000, &samples::notebooks(), |bytes| {
        let notebook = notebook::read(&String::from_utf8_lossy(bytes));
        notebook.map(|notebook| use_all(&notebook, &words)).is_ok()
    });
}

#[test]
fn notebook_of_other_values() {
    let (words, samples) = (WordTable::english().unwrap(), samples::notebooks());
    let drawn = (0..samples.len(), turns());
    let text = |(which, turns): &(usize, Vec<_>)| turned(&samples[*which], turns).into_bytes();
    try_all("notebook_of_other_values", 1_500, &drawn, text, |bytes| {
        let notebook = notebook::read(&String::from_utf8_lossy(bytes));
        notebook.map(|notebook| use_all(&notebook, &words)).is_ok()
    });
}

/// Whatever a partner's notebook holds, what it brings is taken whole and taken back by one undo, or refused.
#[test]
fn partners_notebook() {
    let [ours, theirs] = samples::partners();
    let text = notebook::write(&theirs).into_bytes();
    try_all(
        "partners_notebook",
        3_000,
        &turns(),
        |turns| turned(&text, turns).into_bytes(),
        |bytes| {
            let Ok(theirs) = notebook::read(&String::from_utf8_lossy(bytes)) else { return false };
            let mut is_any_merged = false;
            for (ours, theirs) in [(&ours, &theirs), (&theirs, &ours)] {
                let Ok(Merge { log, kept, taken, clashes, .. }) = ours.merge(theirs) else { continue };
                let chosen = clashes.into_iter().flat_map(|clash| clash.theirs);
                let edits = kept.into_iter().chain(taken).chain(chosen).chain([Edit::Merged(log)]).collect();
                let mut merged = ours.clone();
                if merged.apply(Edit::Together(edits), "").is_ok() {
                    drop(merged.merge(theirs));
                    merged.apply(Edit::Undo, "").unwrap();
                    assert_eq!(merged.state(), ours.state());
                    is_any_merged = true;
                }
            }
            is_any_merged
        },
    );
}

#[test]
fn bundle_zip() {
    by_bytes("bundle_zip", 2_000, &samples::bundles(), |bytes| {
        drop(handed_in("handed in.zip", bytes));
        bundle::read(bytes).is_ok()
    });
}

/// Entries whose list is right, whatever they hold.
#[test]
fn bundle_entries() {
    let entries = bundle::unpack(&samples::bundles()[0]).unwrap().into_vec();
    let small: Vec<_> = entries.into_iter().filter(|entry| entry.bytes.len() < 20_000).collect();
    let samples: Vec<Vec<u8>> = small.iter().map(|entry| entry.bytes.clone()).collect();
    by_bytes("bundle_entries", 1_000, &samples, |bytes| {
        let name = small.iter().find(|entry| entry.bytes.starts_with(&bytes[..bytes.len().min(9)]));
        let name = name.map_or("notebook.json", |entry| entry.name.as_str()).to_owned();
        let changed = bundle::Entry { name, bytes: bytes.to_vec() };
        let Ok(zip) = bundle::pack(&[changed]) else { return false };
        drop(bundle::read(&zip));
        handed_in("one.zip", &zip).is_ok()
    });
}

#[test]
fn key_to_data_sets() {
    let key = r#"{"kind":"slope-of-light key","format":1,"c":299792458,"key":{"title":"Light","seed":"00","sets":[{"number":1,"name":"Ada","file":"light-1.json","digest":"DIGEST","truth":{"t0":"1.234 ns","errors":["time base + 1 %"]}}]}}"#;
    let key = key.replace("DIGEST", &"0f".repeat(32));
    by_bytes("key_to_data_sets", 10_000, &[key.into_bytes()], |bytes| {
        drop(handed_in("key.json", bytes));
        let Ok(Some(read)) = key::read("key.json", &String::from_utf8_lossy(bytes)) else { return false };
        assert_eq!(key::read("again.json", &key::write(&read)), Ok(Some(read)));
        true
    });
}

#[test]
fn teachers_feedback() {
    let said = r#"{"kind":"slope-of-light feedback","format":1,"feedback":{"of":{"entries":9,"digest":"DIGEST","title":"","people":"Ada","student_number":"","group":"2","date":""},"from":"","at":"2031-05-06T10:00:00Z","general":"Good.","mark":"15","comments":[{"place":{"row":4},"text":"Which edge?"},{"place":{"section":"line"},"text":"x"}]}}"#;
    let said = said.replace("DIGEST", &"0f".repeat(32));
    by_bytes("teachers_feedback", 10_000, &[said.into_bytes()], |bytes| {
        drop(handed_in("comments.json", bytes));
        let read = feedback::read("comments.json", &String::from_utf8_lossy(bytes));
        let Ok(Some(read)) = read else { return false };
        let written = feedback::write(&read).expect("what was read can be written");
        assert_eq!(feedback::read("again.json", &written), Ok(Some(read)));
        true
    });
}

#[test]
fn trace_text() {
    by_bytes("trace_text", 6_000, &samples::traces(), |bytes| {
        let Ok(layout) = recognise("a.csv", bytes) else { return false };
        drop(first_rows(bytes, &layout, 8));
        let recording = read("a.csv", bytes, &layout);
        recording.map(|recording| drop(measure(&recording, &recording, &Asked::default()))).is_ok()
    });
}

#[test]
fn trace_names() {
    let samples = ["rail 1 at 250 mm A.csv", "rail-2_1,25m_B.txt", "r1x0010ch2"];
    let samples = samples.map(|name| name.as_bytes().to_vec());
    by_bytes("trace_names", 20_000, &samples, |bytes| {
        let name = String::from_utf8_lossy(bytes);
        drop(pair(&[&name, "rail 1 at 250 mm B.csv", &name]));
        rail_reading(&name, &["rail 1", "rail 2", ""]).reading.is_some()
    });
}

#[test]
fn picture_head() {
    by_bytes("picture_head", 50_000, &samples::pictures(), |bytes| {
        std::hint::black_box(is_whole(bytes));
        size(bytes).map_err(|error| error.message("photo.jpg")).is_ok()
    });
}

#[test]
fn pasted_block() {
    let (words, blocks) = (WordTable::english().unwrap(), samples::blocks());
    let begun = notebook::read(&String::from_utf8(samples::notebooks()[1].clone()).unwrap()).unwrap();
    let cells =
        [Cell::Rail, Cell::Reading, Cell::EdgeA, Cell::Distance, Cell::DelayUncertainty, Cell::Remark];
    let drawn = (changes(blocks.len()), 0..cells.len(), any::<bool>());
    // Where it is put goes before the block, so that a kept input is whole.
    let bytes = |((which, changes), cell, blank): &((usize, Vec<_>), usize, bool)| {
        let place = u8::try_from(2 * cell).unwrap() + u8::from(*blank);
        [vec![place], changed(&blocks, *which, changes)].concat()
    };
    try_all("pasted_block", 2_000, &drawn, bytes, |bytes| {
        let Some((place, block)) = bytes.split_first() else { return false };
        let mut notebook = if place % 2 == 0 { begun.clone() } else { Notebook::new() };
        let cell = cells[usize::from(place / 2) % cells.len()];
        let row = notebook.state().rows.first().map(|row| row.id);
        let pasted = paste(notebook.state(), row, cell, &String::from_utf8_lossy(block));
        notebook.apply(pasted.edit, "2031-05-06T10:00:00Z").expect("a block that was pasted fits");
        use_all(&notebook, &words);
        true
    });
}
