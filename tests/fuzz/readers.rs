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

/// Tries a reader with samples whose bytes are changed.
fn by_bytes(reader: &str, cases: u32, samples: &[Vec<u8>], read: impl Fn(&[u8])) {
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
        if let Ok(notebook) = notebook::read(&String::from_utf8_lossy(bytes)) {
            use_all(&notebook, &words);
        }
    });
}

#[test]
fn notebook_of_other_values() {
    let (words, samples) = (WordTable::english().unwrap(), samples::notebooks());
    let drawn = (0..samples.len(), turns());
    let text = |(which, turns): &(usize, Vec<_>)| turned(&samples[*which], turns).into_bytes();
    try_all("notebook_of_other_values", 1_500, &drawn, text, |bytes| {
        if let Ok(notebook) = notebook::read(&String::from_utf8_lossy(bytes)) {
            use_all(&notebook, &words);
        }
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
            let Ok(theirs) = notebook::read(&String::from_utf8_lossy(bytes)) else { return };
            for (ours, theirs) in [(&ours, &theirs), (&theirs, &ours)] {
                let Ok(Merge { log, kept, taken, clashes, .. }) = ours.merge(theirs) else { continue };
                let chosen = clashes.into_iter().flat_map(|clash| clash.theirs);
                let edits = kept.into_iter().chain(taken).chain(chosen).chain([Edit::Merged(log)]).collect();
                let mut merged = ours.clone();
                if merged.apply(Edit::Together(edits), "").is_ok() {
                    drop(merged.merge(theirs));
                    merged.apply(Edit::Undo, "").unwrap();
                    assert_eq!(merged.state(), ours.state());
                }
            }
        },
    );
}

#[test]
fn bundle_zip() {
    by_bytes("bundle_zip", 2_000, &samples::bundles(), |bytes| {
        drop(bundle::read(bytes));
        drop(handed_in("handed in.zip", bytes));
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
        if let Ok(zip) = bundle::pack(&[changed]) {
            drop(bundle::read(&zip));
            drop(handed_in("one.zip", &zip));
        }
    });
}

#[test]
fn key_to_data_sets() {
    let key = r#"{"kind":"slope-of-light key","format":1,"key":{"seed":"00","sets":[]}}"#;
    by_bytes("key_to_data_sets", 10_000, &[key.as_bytes().to_vec()], |bytes| {
        drop(key::read("key.json", &String::from_utf8_lossy(bytes)));
        drop(handed_in("key.json", bytes));
    });
}

#[test]
fn teachers_feedback() {
    let said = r#"{"kind":"slope-of-light feedback","format":1,"feedback":{"of":{"entries":9,"digest":"DIGEST","title":"","people":"Ada","student_number":"","group":"2","date":""},"from":"","at":"2031-05-06T10:00:00Z","general":"Good.","mark":"15","comments":[{"place":{"row":4},"text":"Which edge?"},{"place":{"section":"line"},"text":"x"}]}}"#;
    let said = said.replace("DIGEST", &"0f".repeat(32));
    by_bytes("teachers_feedback", 10_000, &[said.into_bytes()], |bytes| {
        if let Ok(Some(read)) = feedback::read("comments.json", &String::from_utf8_lossy(bytes)) {
            let written = feedback::write(&read).expect("what was read can be written");
            assert_eq!(feedback::read("again.json", &written), Ok(Some(read)));
        }
        drop(handed_in("comments.json", bytes));
    });
}

#[test]
fn trace_text() {
    by_bytes("trace_text", 6_000, &samples::traces(), |bytes| {
        let Ok(layout) = recognise("a.csv", bytes) else { return };
        drop(first_rows(bytes, &layout, 8));
        if let Ok(recording) = read("a.csv", bytes, &layout) {
            drop(measure(&recording, &recording, &Asked::default()));
        }
    });
}

#[test]
fn trace_names() {
    let samples = ["rail 1 at 250 mm A.csv", "rail-2_1,25m_B.txt", "r1x0010ch2"];
    let samples = samples.map(|name| name.as_bytes().to_vec());
    by_bytes("trace_names", 20_000, &samples, |bytes| {
        let name = String::from_utf8_lossy(bytes);
        drop(rail_reading(&name, &["rail 1", "rail 2", ""]));
        drop(pair(&[&name, "rail 1 at 250 mm B.csv", &name]));
    });
}

#[test]
fn picture_head() {
    by_bytes("picture_head", 50_000, &samples::pictures(), |bytes| {
        drop(size(bytes).map_err(|error| error.message("photo.jpg")));
        std::hint::black_box(is_whole(bytes));
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
        let Some((place, block)) = bytes.split_first() else { return };
        let mut notebook = if place % 2 == 0 { begun.clone() } else { Notebook::new() };
        let cell = cells[usize::from(place / 2) % cells.len()];
        let row = notebook.state().rows.first().map(|row| row.id);
        let pasted = paste(notebook.state(), row, cell, &String::from_utf8_lossy(block));
        notebook.apply(pasted.edit, "2031-05-06T10:00:00Z").expect("a block that was pasted fits");
        use_all(&notebook, &words);
    });
}
