#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;
use crate::analysis::analyse;
use crate::notebook::{Edit, FileError};
use crate::report::sample::{analysis, empty_analysis, english, view_of};
use crate::words::in_english;

fn notebook_text() -> String {
    notebook::write(&Notebook::new())
}

fn parts() -> Vec<Entry> {
    vec![
        text_entry(METADATA, "{}"),
        table_entry(&residuals_table(&[], &english())).unwrap(),
        table_entry(&fit_table(&[], &english())).unwrap(),
        text_entry("line.svg", "<svg/>"),
        text_entry(REPORT, "<!DOCTYPE html>"),
        Entry { name: "pictures/screen 1.jpg".into(), bytes: vec![0xff, 0xd8, 0xff] },
    ]
}

#[test]
fn the_notebook_comes_back_byte_for_byte() {
    // Spaces, line ends and escapes that no writer of ours makes.
    let text = notebook_text().replace('\n', "\r\n").replace(":1", " : 1 ") + "\n\n";
    let contents = read(&write(&text, parts()).unwrap()).unwrap();
    assert_eq!(contents.notebook_text, text);
    assert_eq!(contents.notebook, Notebook::new());
    assert_eq!(
        contents.kept,
        [Entry { name: "pictures/screen 1.jpg".into(), bytes: vec![0xff, 0xd8, 0xff] }]
    );
}

#[test]
fn the_entries_have_their_names() {
    let entries = unpack(&write(&notebook_text(), parts()).unwrap()).unwrap();
    let names: Vec<&str> = entries.iter().map(|entry| entry.name.as_str()).collect();
    let expected = [
        "notebook.json",
        "csv-metadata.json",
        "residuals.csv",
        "line.csv",
        "line.svg",
        "report.html",
        "pictures/screen 1.jpg",
    ];
    assert_eq!(names, expected);
}

#[test]
fn a_photo_of_the_set_up_goes_along_until_it_is_taken_away() {
    let photo = StoredFile { sha256: "ab".repeat(32), name: "bench.jpg".into(), bytes: 3 };
    let mut notebook = Notebook::new();
    notebook.apply(Edit::SetPhoto(Some(photo.clone())), "").unwrap();
    let read_again = notebook::read(&notebook::write(&notebook)).unwrap();
    let named: Vec<(String, &StoredFile)> = kept(read_again.state()).into_iter().collect();
    assert_eq!(named, [(format!("pictures/{}.jpg", "ab".repeat(32)), &photo)]);
    notebook.apply(Edit::SetPhoto(None), "").unwrap();
    assert!(kept(notebook.state()).is_empty());
    assert_eq!(notebook::read(&notebook::write(&notebook)), Ok(notebook), "an undo leads back to it");
}

#[test]
fn the_same_notebook_gives_the_same_bytes() {
    assert_eq!(write(&notebook_text(), parts()), write(&notebook_text(), parts()));
}

/// The demo set of traces as it was packed while format 1 was written, byte for byte.
const FORMAT_1: &[u8] = include_bytes!("samples/format-1-traces.zip");

#[test]
fn a_bundle_of_format_1_opens_with_the_digits_of_its_own_table() {
    let opened = read(FORMAT_1).unwrap();
    assert_eq!(opened.kept.len(), 16);
    let figures = fit_figures(&analyse(&opened.notebook));
    let entries = unpack(FORMAT_1).unwrap();
    let mut table = csv::Reader::from_reader(entries.get("line.csv").unwrap());
    let told: Vec<_> = table.records().map(Result::unwrap).collect();
    assert_eq!(told.len(), 16);
    for record in told {
        let id = &record[0];
        let figure = figures.iter().find(|figure| figure.id == id).unwrap();
        let number = |at: usize| record[at].parse::<f64>().ok();
        assert_eq!((Some(figure.value), figure.uncertainty), (number(2), number(3)), "{id}");
    }
}

#[test]
fn a_bundle_from_a_later_version_says_so() {
    let later = notebook_text().replace("\"format\":2", "\"format\":3");
    let error = read(&write(&later, vec![]).unwrap()).unwrap_err();
    assert_eq!(error, BundleError::Notebook { reason: FileError::LaterFormat { format: 3 } });
    let told = in_english(&notebook_refused(&FileError::LaterFormat { format: 3 }));
    assert!(told.starts_with("“notebook.json” in this bundle") && told.contains("format 3"), "{told}");
}

#[test]
fn a_bundle_without_a_notebook_in_it_is_refused() {
    let other = pack(&[text_entry("readme.txt", "hello")]).unwrap();
    assert_eq!(read(&other), Err(ArchiveError::Missing { entry: NOTEBOOK.into() }.into()));
    let bytes = pack(&[Entry { name: NOTEBOOK.into(), bytes: vec![0xff] }]).unwrap();
    assert_eq!(read(&bytes), Err(ArchiveError::NotText { entry: NOTEBOOK.into() }.into()));
    let foreign = write("{\"kind\":\"shopping list\"}", vec![]).unwrap();
    assert_eq!(read(&foreign), Err(BundleError::Notebook { reason: FileError::Foreign }));
    let cut = write("{\"kind\":", vec![]).unwrap();
    assert!(matches!(read(&cut), Err(BundleError::Notebook { reason: FileError::NotJson { .. } })));
}

#[test]
fn two_parts_of_one_name_are_refused() {
    let twice = vec![text_entry(REPORT, "1"), text_entry(REPORT, "2")];
    assert!(matches!(
        write(&notebook_text(), twice),
        Err(BundleError::Archive(ArchiveError::Duplicate { .. }))
    ));
    let climbing = vec![Entry { name: "../x".into(), bytes: vec![] }];
    assert!(matches!(
        write(&notebook_text(), climbing),
        Err(BundleError::Archive(ArchiveError::BadName { .. }))
    ));
}

#[test]
fn a_picture_comes_back_under_its_hash_or_not_at_all() {
    // SHA-256 of "abc": NIST FIPS 180-4, example in "SHA-256" of the Cryptographic Standards and Guidelines examples.
    let name = "pictures/ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad.jpg";
    let picture = |bytes: &[u8]| Entry { name: name.into(), bytes: bytes.to_vec() };
    let bundle = write(&notebook_text(), vec![picture(b"abc")]).unwrap();
    assert_eq!(read(&bundle).unwrap().kept, [Entry { name: name.into(), bytes: b"abc".to_vec() }]);
    let other = write(&notebook_text(), vec![picture(b"abd")]).unwrap();
    let error = read(&other).unwrap_err();
    assert_eq!(error, ArchiveError::Misnamed { entry: name.into() }.into());
    assert!(error.to_string().contains(name));
}

#[test]
fn a_whole_notebook_is_bundled_and_comes_back() {
    let notebook = Notebook::new();
    let svg = || "<svg/>".to_owned();
    let charts = Charts { line: svg(), residuals: svg(), bench: svg(), budget: svg(), trials: svg() };
    let picture = Entry { name: "pictures/screen.jpg".into(), bytes: vec![1, 2, 3] };
    let pack = || {
        of(&notebook, &analysis(true), &view_of("=1+1"), &charts, None, &english(), vec![picture.clone()])
            .unwrap()
    };
    let bytes = pack();
    assert_eq!(bytes, pack());

    let contents = read(&bytes).unwrap();
    assert_eq!(contents.notebook, notebook);
    assert_eq!(contents.notebook_text, notebook_text());
    assert_eq!(contents.kept, [picture]);

    let entries = unpack(&bytes).unwrap();
    let names: Vec<&str> = entries.iter().map(|entry| entry.name.as_str()).collect();
    let expected = [
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
        "trials.svg",
        "report.html",
        "pictures/screen.jpg",
    ];
    assert_eq!(names, expected);
}

#[test]
fn an_empty_notebook_has_a_bundle_too() {
    let bytes =
        of(&Notebook::new(), &empty_analysis(), &view_of(""), &Charts::default(), None, &english(), vec![])
            .unwrap();
    assert_eq!(read(&bytes).unwrap().notebook, Notebook::new());
    assert!(unpack(&bytes).unwrap().get("line.svg").is_none());
}
