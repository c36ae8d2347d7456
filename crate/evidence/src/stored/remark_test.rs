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
    for (remark, point) in [
        (level, "Level: 0.213 V over the baselines, half of the smallest pulse of the run."),
        (Remark::Fraction { percent: Digits::of(33.333, 3) }, "Fraction: 33.3 %."),
        (drift, "Trace A: the baseline drifts by −0.0125 V before the pulse."),
        (
            refused,
            "b 1.csv, trace B: no pulse: the trace rises 0.01 V over its baseline, less than 4 times its noise of 0.008 V (largest at sample 7).",
        ),
    ] {
        assert_eq!(remark.words(&files(), Point), point);
        let comma = remark.words(&files(), Comma);
        assert_ne!(comma, point);
        let back = |text: &str| text.replace(',', ".").replace("b 1.csv", "").len();
        assert_eq!(back(&comma), back(point));
        assert!(comma.chars().filter(char::is_ascii_digit).eq(point.chars().filter(char::is_ascii_digit)));
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
