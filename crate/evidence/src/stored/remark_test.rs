use super::*;
use DecimalMark::{Comma, Point};

fn files() -> Vec<StoredFile> {
    ["a 1.csv", "b 1.csv"].map(|name| StoredFile { name: name.into(), ..StoredFile::default() }).into()
}

#[test]
fn numbers_have_the_notebooks_decimal_mark() {
    let level = Remark::Level { volts: Digits::of(0.213_456, 3), of: LevelOf::Run };
    let refused = Remark::Refused {
        trace: Detector::B,
        problem: TraceError::NoPulse { height: Digits::of(0.01, 4), noise: Digits::of(0.008, 4), sample: 7 },
    };
    let drift = Remark::Edge { trace: Detector::A, flag: Flag::Drift { volts: Digits::of(-0.0125, 3) } };
    let no_pulse = |height: &str, noise: &str| {
        let why = message!("trace-no_pulse", height = height, noise = noise, sample = "7");
        message!("trace-refused", file = "b 1.csv", trace = "B", why = why)
    };
    for (remark, point, comma) in [
        (
            level,
            message!("remarks-level-run", volts = "0.213"),
            message!("remarks-level-run", volts = "0,213"),
        ),
        (
            Remark::Fraction { percent: Digits::of(33.333, 3) },
            message!("remarks-fraction", percent = "33.3"),
            message!("remarks-fraction", percent = "33,3"),
        ),
        (
            drift,
            message!("remarks-drift", trace = "A", volts = "−0.0125"),
            message!("remarks-drift", trace = "A", volts = "−0,0125"),
        ),
        (refused, no_pulse("0.01", "0.008"), no_pulse("0,01", "0,008")),
    ] {
        assert_eq!(remark.said(&files(), Point), point.into());
        assert_eq!(remark.said(&files(), Comma), comma.into());
    }
}

/// As `notebook.json` holds them: what a remark is, and its numbers.
#[test]
fn what_is_stored_is_no_sentence() -> Result<(), serde_json::Error> {
    let remarks = vec![
        Remark::Level { volts: Digits::of(0.2, 3), of: LevelOf::Stated },
        Remark::Edge { trace: Detector::A, flag: Flag::DoubleEdge { sample: 812 } },
        Remark::Refused { trace: Detector::B, problem: TraceError::NoTop { last: 399 } },
    ];
    let text = serde_json::to_string(&remarks)?;
    assert_eq!(
        text,
        r#"[{"level":{"volts":"0.2","of":"stated"}},{"edge":{"trace":"A","flag":{"flag":"double_edge","sample":812}}},{"refused":{"trace":"B","problem":{"kind":"no_top","last":399}}}]"#
    );
    assert_eq!(serde_json::from_str::<Vec<Remark>>(&text)?, remarks);
    Ok(())
}
