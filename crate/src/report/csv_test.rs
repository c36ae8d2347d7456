#![expect(clippy::unwrap_used, reason = "tests")]

use proptest::prelude::*;

use super::*;

fn records(rows: &[&[&str]]) -> Vec<Vec<String>> {
    rows.iter().map(|row| row.iter().map(|cell| (*cell).to_owned()).collect()).collect()
}

/// The records of a table as the csv crate reads them, the heads among them, each cell as it was before export.
fn read_csv(bytes: &[u8]) -> Result<Vec<Vec<String>>, ::csv::Error> {
    let mut reader = ::csv::ReaderBuilder::new().has_headers(false).from_reader(bytes);
    reader.records().map(|record| Ok(record?.iter().map(restored).collect())).collect()
}

/// A cell as it was before [`neutral`].
fn restored(cell: &str) -> String {
    cell.split_inclusive(BREAKS).map(|piece| piece.strip_prefix('\'').unwrap_or(piece)).collect()
}

fn written(records: &[Vec<String>]) -> Result<String, TableError> {
    write_csv(&records.iter().map(Vec::as_slice).collect::<Vec<_>>())
}

#[test]
fn it_is_written_as_rfc_4180_has_it() {
    // RFC 4180, 2.1 to 2.7, with the RFC's own cells: CRLF, quotes only where needed, quotes doubled.
    let cases: &[(&[&str], &str)] = &[
        (&["aaa", "bbb", "ccc"], "aaa,bbb,ccc\r\n"),
        (&["aaa", "b\r\nbb", "ccc"], "aaa,\"b\r\nbb\",ccc\r\n"),
        (&["aaa", "b\"bb", "ccc"], "aaa,\"b\"\"bb\",ccc\r\n"),
        (&["a,b", "", " c "], "\"a,b\",, c \r\n"),
    ];
    for (cells, expected) in cases {
        let written = written(&records(&[cells])).unwrap();
        assert_eq!(written, *expected);
        assert_eq!(read_csv(written.as_bytes()).unwrap(), records(&[cells]));
    }
}

#[test]
fn what_a_spreadsheet_would_run_is_made_neutral() {
    // OWASP, "CSV Injection": the starts =, +, -, @, tab, CR and LF, full-width forms, and cells that begin
    // after a separator or a quote inside the cell.
    let cases = [
        ("=1+1", "'=1+1"),
        ("+1+1", "'+1+1"),
        ("-1+1", "'-1+1"),
        ("@SUM(A1)", "'@SUM(A1)"),
        ("\t=1", "'\t'=1"),
        ("\r=1", "'\r'=1"),
        ("＝1", "'＝1"),
        ("good;=1+1", "good;'=1+1"),
        ("good\n=1+1", "good\n'=1+1"),
        ("\"=1+1", "'\"=1+1"),
        ("\u{feff}=1", "'\u{feff}=1"),
        ("-", "'-"),
        ("-2.5(3)", "'-2.5(3)"),
        ("'quoted'", "''quoted'"),
        ("'=1", "''=1"),
        ("=cmd|' /C calc'!A0", "'=cmd|' /C calc'!A0"),
    ];
    for (typed, expected) in cases {
        assert_eq!(neutral(typed), expected);
        assert_eq!(restored(expected), typed);
    }
}

#[test]
fn numbers_and_plain_text_stay_as_they_are() {
    let cells = [
        "",
        "0",
        "-1.5",
        "+2",
        "-1,5",
        "-.5",
        "-5.",
        "+2.99e8",
        "-1E-300",
        "2.31;-2.33",
        "1.2000(10)",
        "rail 2 = long",
        "c − 3",
        "−1.5",
        "don't",
        "a - b",
        "µ",
    ];
    for cell in cells {
        assert_eq!(neutral(cell), cell);
        assert_eq!(restored(cell), cell);
    }
}

#[test]
fn a_ragged_table_is_refused_with_its_place() {
    let ragged = TableError { record: 2, found: 1, expected: 2 };
    assert_eq!(written(&records(&[&["a", "b"], &["c"]])), Err(ragged));
}

/// Texts thick with the characters that matter here.
fn hostile() -> impl Strategy<Value = String> {
    let letter = prop_oneof![
        proptest::sample::select("=+-@'\";,\t\r\n＝ 1.e|".chars().collect::<Vec<_>>()),
        any::<char>(),
    ];
    proptest::collection::vec(letter, 0..12).prop_map(String::from_iter)
}

proptest! {
    #[test]
    fn every_text_comes_back(text in hostile()) {
        prop_assert_eq!(restored(&neutral(&text)), text);
    }

    #[test]
    fn no_start_is_left_that_looks_like_a_formula(text in hostile()) {
        for start in neutral(&text).split([';', '\t', '\r', '\n']) {
            let number = start.replace(',', ".").parse::<f64>().is_ok();
            prop_assert!(!start.starts_with(['=', '+', '-', '@', '＝']) || number, "{:?}", start);
        }
    }

    #[test]
    fn every_table_comes_back(rows in proptest::collection::vec(proptest::collection::vec(hostile(), 3), 1..5)) {
        let written = written(&rows).unwrap();
        prop_assert_eq!(read_csv(written.as_bytes()).unwrap(), rows);
    }

    #[test]
    fn every_one_column_table_comes_back(rows in proptest::collection::vec(proptest::collection::vec(hostile(), 1), 1..5)) {
        let written = written(&rows).unwrap();
        prop_assert_eq!(read_csv(written.as_bytes()).unwrap(), rows);
    }
}
