//! What is changed: files of the demo and of the tests, all made by our own simulator.

use std::fs;
use std::path::PathBuf;

use slope_of_light::bundle::unpack;
use slope_of_light::notebook::{Cell, Edit, Notebook};

/// A file of the repository, by its path from the root.
pub fn file(path: &str) -> Vec<u8> {
    fs::read(root().join(path)).expect("a file of the repository")
}

/// Where the repository begins.
pub fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("..")
}

/// Notebooks as they are stored: of both formats, with typed readings, traces and photographs.
pub fn notebooks() -> Vec<Vec<u8>> {
    let kept = ["crate/src/notebook/samples/format-1.json", "crate/src/notebook/samples/format-2.json"];
    let mut texts: Vec<Vec<u8>> = kept.into_iter().map(file).collect();
    texts.push(file("demo/typed-readings.en.json"));
    texts.extend(bundles().iter().map(|bundle| entry(bundle, "notebook.json")));
    texts
}

/// Two notebooks that began as one; the second has merged the first.
pub fn partners() -> [Notebook; 2] {
    let with = |notebook: &Notebook, edits: &[Edit]| {
        let mut notebook = notebook.clone();
        for edit in edits {
            notebook.apply(edit.clone(), "").expect("an edit");
        }
        notebook
    };
    let add = |row| Edit::AddRow {
        row,
        after: None,
        cells: [(Cell::Reading, row.to_string())].into_iter().collect(),
    };
    let begun = with(&Notebook::new(), &[Edit::AddRail(1), add(2), Edit::HandOut]);
    let ours = with(&begun, &[add(3), Edit::AddRail(4)]);
    let mut theirs = with(&begun, &[add(3), add(4), Edit::StrikeRow { row: 2, reason: "bumped".into() }]);
    let merge = theirs.merge(&ours).expect("something new");
    let edits = merge.kept.into_iter().chain(merge.taken).chain([Edit::Merged(merge.log)]);
    theirs.apply(Edit::Together(edits.collect()), "").expect("a merge");
    [ours, with(&theirs, &[add(9), Edit::RemoveRail(1)])]
}

/// Whole bundles of the demo.
pub fn bundles() -> Vec<Vec<u8>> {
    ["demo/traces.en.zip", "demo/photographs.fr.zip"].into_iter().map(file).collect()
}

/// Files of traces, as bundles keep them and as others write them.
pub fn traces() -> Vec<Vec<u8>> {
    let kept = unpack(&file("demo/traces.en.zip")).expect("a bundle");
    let mut files: Vec<Vec<u8>> = kept
        .iter()
        .filter(|entry| entry.name.starts_with("traces/"))
        .take(3)
        .map(|entry| first_lines(&entry.bytes, 400))
        .collect();
    let ways = [
        "Time (ns);Volt (V)\r\n0,0;0,001\r\n0,5;0,002\r\n1,0;0,5\r\n1,5;0,25\r\n",
        "# step 0.25 ns\n0.1\n0.2\n0.9\n1.0\n0.4\n",
        "\u{feff}\"t\",\"A\",\"B\"\n\"s\",\"V\",\"V\"\n1e-9,0,0\n2e-9,1,0\n3e-9,0.5,1\n",
        "Start,Increment\n-1e-8,2.5e-10\nX,CH\n0,0.1\n1,0.2\n2,0.3\n",
    ];
    files.extend(ways.into_iter().map(|text| text.repeat(8).into_bytes()));
    files
}

/// Heads of pictures of every kind that is known, the sizes of which stand in them.
pub fn pictures() -> Vec<Vec<u8>> {
    let photo = unpack(&file("demo/photographs.en.zip")).expect("a bundle");
    let jpeg = photo.iter().find(|entry| entry.name.starts_with("pictures/")).expect("a photo");
    let png = b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR\0\0\x04\0\0\0\x03\0\x08\x02\0\0\0";
    let webp = b"RIFF\x24\0\0\0WEBPVP8X\x0a\0\0\0\0\0\0\0\xff\x03\0\xff\x02\0";
    let lossy = b"RIFF\x24\0\0\0WEBPVP8 \x18\0\0\0\x30\x01\0\x9d\x01\x2a\x40\x01\xf0\0";
    let lossless = b"RIFF\x24\0\0\0WEBPVP8L\x18\0\0\0\x2f\x3f\xc1\x3b\0";
    let gif = b"GIF89a\x40\x01\xf0\0\x80\0\0\0\0\0\xff\xff\xff\x2c\0\0\0\0\x40\x01\xf0\0\0";
    let mut heads = vec![jpeg.bytes.iter().take(3_000).copied().collect::<Vec<u8>>()];
    heads.extend([&png[..], &webp[..], &lossy[..], &lossless[..], &gif[..]].map(<[u8]>::to_vec));
    heads
}

/// Blocks as a spreadsheet hands them over.
pub fn blocks() -> Vec<Vec<u8>> {
    let texts = [
        "rail 1\t100\t5\t1.2\t3.4\twell\nrail 1\t200\t5\t1,2\t4,1\t\n",
        "Rail\tReading\tTime base\tA\tB\nrail 2\t1 250,5 mm\t2.5 ns\t0.5; 0.6; 0.55\t2.25\n",
        "1.5\t0.01\t5.0\t0.1\n2.5\t0.01\t8.3\t0.1\n\"3.5\"\t\"0.01\"\t\"11.7\"\t\"0.1\"\n",
        "\"a \"\"quoted\"\" cell\nwith a break\"\t1e3\t\u{2212}2\t\u{a0}3\n\n\t\t\t\n",
    ];
    texts.into_iter().map(|text| text.as_bytes().to_vec()).collect()
}

/// One file of a zip.
pub fn entry(zip: &[u8], name: &str) -> Vec<u8> {
    unpack(zip).expect("a bundle").get(name).expect("an entry").to_vec()
}

fn first_lines(bytes: &[u8], most: usize) -> Vec<u8> {
    bytes.split_inclusive(|byte| *byte == b'\n').take(most).flatten().copied().collect()
}
