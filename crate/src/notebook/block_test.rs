//! Blocks, beside what a general reader of RFC 4180 makes of them when it is told of tabs.

use proptest::prelude::*;

use super::*;

fn as_another_reads(block: &str) -> Vec<Vec<String>> {
    let mut reader = csv::ReaderBuilder::new()
        .delimiter(b'\t')
        .has_headers(false)
        .flexible(true)
        .from_reader(block.as_bytes());
    reader.records().map(|record| record.unwrap().iter().map(str::to_owned).collect()).collect()
}

#[test]
fn cells_are_told_apart() {
    assert_eq!(lines("1\t2\r\n\r\n3\t"), [vec!["1", "2"], vec!["3", ""]]);
    assert_eq!(lines("\"a\tb\nc\"\td"), [["a\tb\nc", "d"]]);
    assert_eq!(lines("\"5\"\" rail\"\t12\" rail"), [["5\" rail", "12\" rail"]], "an inch is no quote");
    assert_eq!(lines("\u{feff}1"), [["1"]]);
    assert_eq!(lines("\r\n"), Vec::<Vec<String>>::new());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2_000))]
    #[test]
    fn any_text_is_read_as_another_reads_it(block in "[aé7;\t\r\n\"\u{feff}]{0,24}") {
        prop_assert_eq!(lines(&block), as_another_reads(&block));
    }
}
