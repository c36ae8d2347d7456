//! A bundle as another program reads it: the module `zipfile` of Python's standard library, written by others from
//! the same specification (PKWARE APPNOTE). Where there is no Python, that is said and nothing is tested.
#![expect(clippy::unwrap_used, clippy::panic, reason = "tests")]

use std::io::{ErrorKind, Write};
use std::process::{Command, Stdio};

use super::*;
use crate::analysis::analyse;
use crate::drawings::{ChartForm, charts};
use crate::report::sample::english;
use crate::simulated::demo;
use crate::view::view;

/// Reads a zip from its input. Writes what `testzip` finds and each name with its size as one line of JSON, then all
/// contents one behind the other.
const UNZIP: &str = "
import io, json, sys, zipfile
archive = zipfile.ZipFile(io.BytesIO(sys.stdin.buffer.read()))
contents = [archive.read(entry) for entry in archive.infolist()]
names = [[entry.filename, len(content)] for entry, content in zip(archive.infolist(), contents)]
sys.stdout.buffer.write(json.dumps([archive.testzip(), names]).encode() + b'\\n' + b''.join(contents))
";

/// What Python reads in a zip: what `testzip` finds (nothing, where no entry is broken), and the entries. Nothing at
/// all where there is no Python.
fn unzipped(zip: &[u8]) -> Option<(Option<String>, Vec<Entry>)> {
    let started =
        Command::new("python3").args(["-c", UNZIP]).stdin(Stdio::piped()).stdout(Stdio::piped()).spawn();
    let mut python = match started {
        Ok(python) => python,
        Err(error) if error.kind() == ErrorKind::NotFound => {
            println!("skipped: no python3");
            return None;
        }
        Err(error) => panic!("python3 did not start: {error}"),
    };
    python.stdin.take().unwrap().write_all(zip).unwrap();
    let output = python.wait_with_output().unwrap();
    assert!(output.status.success(), "python3 ended with {}", output.status);
    let end = output.stdout.iter().position(|&byte| byte == b'\n').unwrap();
    let (head, mut rest) = (&output.stdout[..end], &output.stdout[end + 1..]);
    let (broken, names): (Option<String>, Vec<(String, usize)>) = serde_json::from_slice(head).unwrap();
    let mut entry = |(name, length)| {
        let bytes = rest.split_off(..length).unwrap().to_vec();
        Entry { name, bytes }
    };
    let entries = names.into_iter().map(&mut entry).collect();
    assert!(rest.is_empty());
    Some((broken, entries))
}

#[test]
fn another_program_reads_the_whole_bundle() {
    let (notebook, _) = demo::typed_readings().unwrap();
    let analysis = analyse(&notebook);
    let charts = charts(notebook.state(), &analysis, None, ChartForm::Svg, &english());
    let pictures = vec![
        Entry { name: "pictures/Schirm für Zeile 9 – 光.jpg".into(), bytes: vec![0xff, 0xd8, 0, 1] },
        // Large enough to be stored without deflating.
        Entry { name: "pictures/large.png".into(), bytes: vec![7; LIMITS.free_bytes + 1] },
    ];
    let bytes =
        of(&notebook, &analysis, &view(&notebook, &analysis), &charts, None, &english(), pictures.clone())
            .unwrap();
    let Some((broken, entries)) = unzipped(&bytes) else { return };
    assert_eq!(broken, None);
    let names: Vec<&str> = entries.iter().map(|entry| entry.name.as_str()).collect();
    let expected = [
        "contents.json",
        "notebook.json",
        "csv-metadata.json",
        "readings.csv",
        "line.csv",
        "residuals.csv",
        "budget.csv",
        "line.svg",
        "residuals.svg",
        "bench.svg",
        "budget.svg",
        "report.html",
        "pictures/Schirm für Zeile 9 – 光.jpg",
        "pictures/large.png",
    ];
    assert_eq!(names, expected);
    assert_eq!(entries[1].bytes, notebook::write(&notebook).into_bytes());
    assert!(entries[12].bytes == pictures[0].bytes && entries[13].bytes == pictures[1].bytes);
    // Our own reader gives every entry but the list, which it checks the others against.
    assert!(unpack(&bytes).unwrap().into_vec() == entries[1..]);
}
