//! Old forms: read as what they meant, wherever they lie; never written again.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::super::file::FORMAT;
use super::super::{Edit, read, read_entry, write};
use super::*;
use crate::analysis::analyse;

/// The demo set of typed readings as format 1 had it, byte for byte.
const FORMAT_1: &str = include_str!("samples/format-1.json");

#[test]
fn a_notebook_of_format_1_opens_with_the_same_digits() {
    let old = read(FORMAT_1).unwrap();
    let now = read(include_str!("samples/format-2.json")).unwrap();
    let digits = |notebook| serde_json::to_string(&analyse(notebook)).unwrap();
    assert_eq!(digits(&old), digits(&now));
    assert_eq!(old.state().rails[1].splice, now.state().rails[1].splice);
    let written = write(&old);
    assert!(written.contains(&format!("\"format\":{FORMAT}")));
    assert!(!written.contains("meeting") && !written.contains("stated"), "the old form is written no more");
    assert_eq!(read(&written).unwrap(), old);
}

fn splice_of(entry: &str) -> Splice {
    match read_entry(entry).unwrap().edit {
        Edit::SetSplice { splice, .. } => splice,
        Edit::Together(edits) => match edits.as_slice() {
            [Edit::SetSplice { splice, .. }] => splice.clone(),
            other => unreachable!("{other:?}"),
        },
        other => unreachable!("{other:?}"),
    }
}

/// Entries lie in a journal one by one, and in groups.
#[test]
fn bare_numbers_of_format_1_were_metres() {
    let stated =
        r#"{"set_splice":{"rail":1,"splice":{"stated":{"mark":"10","distance":"1,5(2)","uncertainty":""}}}}"#;
    let now =
        Splice::AtDistance { mark: "10".into(), distance: "1,5(2) m".into(), uncertainty: String::new() };
    assert_eq!(splice_of(&format!(r#"{{"edit":{stated}}}"#)), now);
    assert_eq!(splice_of(&format!(r#"{{"at":"x","edit":{{"together":[{stated}]}}}}"#)), now);
    let meeting = r#"{"edit":{"set_splice":{"rail":2,"splice":{"meeting":{"mark":"0","mark_before":"200","gap":"0.3","uncertainty":"5 mm"}}}}}"#;
    let now = Splice::Joined {
        mark: "0".into(),
        mark_before: "200".into(),
        gap: "0.3 m".into(),
        uncertainty: "5 mm".into(),
    };
    assert_eq!(splice_of(meeting), now);
    let new = serde_json::to_string(&now).unwrap();
    assert_eq!(
        serde_json::from_str::<Splice>(&new).unwrap(),
        now,
        "what is written now is read as it stands"
    );
}

/// Whatever was typed, in either notation: the same number, or none as before.
#[test]
fn a_text_says_the_same_as_it_said_in_metres() {
    let texts = [
        "",
        " ",
        "0",
        "0.3",
        "0,3",
        " 0.3 ",
        "-0.25",
        "\u{2212}0,25",
        "1 234.5",
        "1,234",
        "1.234",
        "1.234,5",
        "3e-2",
        "3E2",
        "3 × 10^-2",
        "3·10⁻²",
        "0.3(1)",
        "0.3(0.1)",
        "0,3(0,1)",
        "0.3 ± 0.1",
        "(0.3 ± 0.1)",
        "0.3 +/- 0.1",
        "(0.3 ± 0.1) × 10^-2",
        "0.3 m",
        "30 cm",
        "30cm",
        "(30 ± 1) mm",
        "12 in",
        "12\"",
        "0.3 ns",
        "0.3 k",
        "0.3 e",
        "3x",
        "about 3",
        "1..2",
        "1 2",
        "1e",
        "m",
        "±",
        "1e-400",
        "1e308",
        "1e309",
        "0.3;0.4",
        "٣",
    ];
    for text in texts {
        for mark in [DecimalMark::Point, DecimalMark::Comma] {
            let was = parse(text, mark, Unit::METRE);
            for ruler in [Unit::MILLIMETRE, Unit::CENTIMETRE, Unit::METRE, Unit::INCH] {
                let migrated = with_metres(text.to_owned());
                let is = parse(&migrated, mark, ruler);
                assert_eq!(is.as_ref().ok(), was.as_ref().ok(), "“{text}” became “{migrated}”, {mark:?}");
            }
        }
    }
}
