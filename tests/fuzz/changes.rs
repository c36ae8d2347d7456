//! How a sample is changed: bytes set, taken out, repeated, put in, cut off, or taken from another sample.

use proptest::prelude::*;

/// No input grows beyond it, bytes.
const LONGEST: usize = 1 << 20;
/// What readers may stumble over, put in whole.
const WORDS: [&str; 24] = [
    "1e999",
    "-1e-999",
    "NaN",
    "inf",
    "-0",
    "9007199254740993",
    "0x1p3",
    "١٢٣",
    "−",
    "\u{202e}",
    "\u{feff}",
    "\u{0}",
    "\r",
    "\"",
    "\\u0000",
    "\\ud800",
    "{{{{{{{{",
    "[[[[[[[[",
    "__proto__",
    "<script>",
    "../",
    "PK\u{1}\u{2}",
    "PK\u{5}\u{6}",
    ";;;;\t\t\t\t,,,,",
];

/// One change. Places are shares of the length, in 2⁻³².
#[derive(Clone, Debug)]
pub enum Change {
    Set { at: u32, byte: u8 },
    Remove { at: u32, length: u16 },
    Repeat { at: u32, length: u8, times: u8 },
    Insert { at: u32, word: usize },
    Cut { at: u32 },
    Take { other: usize, at: u32, from: u32, length: u16 },
}

/// Up to eight changes of one of so many samples: which, and what.
pub fn changes(samples: usize) -> impl Strategy<Value = (usize, Vec<Change>)> {
    (0..samples, prop::collection::vec(change(samples), 0..8))
}

fn change(samples: usize) -> impl Strategy<Value = Change> {
    let at = any::<u32>;
    prop_oneof![
        6 => (at(), any::<u8>()).prop_map(|(at, byte)| Change::Set { at, byte }),
        2 => (at(), 1_u16..200).prop_map(|(at, length)| Change::Remove { at, length }),
        2 => (at(), 1_u8.., 1_u8..64).prop_map(|(at, length, times)| Change::Repeat { at, length, times }),
        4 => (at(), 0..WORDS.len()).prop_map(|(at, word)| Change::Insert { at, word }),
        1 => at().prop_map(|at| Change::Cut { at }),
        2 => (0..samples, at(), at(), 1_u16..400)
            .prop_map(|(other, at, from, length)| Change::Take { other, at, from, length }),
    ]
}

/// A sample after its changes.
pub fn changed(samples: &[Vec<u8>], which: usize, changes: &[Change]) -> Vec<u8> {
    let mut bytes = samples[which].clone();
    for change in changes {
        apply(&mut bytes, samples, change);
        bytes.truncate(LONGEST);
    }
    bytes
}

fn apply(bytes: &mut Vec<u8>, samples: &[Vec<u8>], change: &Change) {
    match *change {
        Change::Set { at, byte } => {
            let at = place(at, bytes);
            if let Some(changed) = bytes.get_mut(at) {
                *changed = byte;
            }
        }
        Change::Remove { at, length } => {
            let at = place(at, bytes);
            bytes.drain(at..bytes.len().min(at + usize::from(length)));
        }
        Change::Repeat { at, length, times } => {
            let at = place(at, bytes);
            let part = bytes[at..bytes.len().min(at + usize::from(length))].repeat(usize::from(times));
            bytes.splice(at..at, part);
        }
        Change::Insert { at, word } => {
            let at = place(at, bytes);
            bytes.splice(at..at, WORDS[word].bytes());
        }
        Change::Cut { at } => {
            let at = place(at, bytes);
            bytes.truncate(at);
        }
        Change::Take { other, at, from, length } => {
            let (at, other) = (place(at, bytes), &samples[other]);
            let from = place(from, other);
            bytes.splice(at..at, other[from..other.len().min(from + usize::from(length))].iter().copied());
        }
    }
}

/// A share of the length as a place, the end included.
fn place(share: u32, bytes: &[u8]) -> usize {
    let scaled = (u64::from(share) * (bytes.len() as u64 + 1)) >> 32;
    usize::try_from(scaled).unwrap_or(bytes.len())
}
