//! Layouts that are hard to tell; the bench's tests write and read many more.
#![expect(clippy::unwrap_used, clippy::panic, reason = "tests")]

use super::*;

/// Rows of a time that grows by 0.2 and of volts that don't, after what is put before each.
fn rows(count: usize, row: impl Fn(usize) -> String) -> String {
    (0..count).map(row).collect::<Vec<_>>().join("\n")
}

#[track_caller]
fn layout_of(text: &str) -> Layout {
    recognise("x", text.as_bytes()).unwrap()
}

fn roles(layout: &Layout) -> Vec<Role> {
    layout.columns.iter().map(|column| column.role).collect()
}

const VOLTS: [i32; 7] = [3, -1, 4, -1, 5, -9, 2];

#[test]
fn settings_beside_the_first_samples() {
    let text = rows(60, |i| {
        let beside = match i {
            0 => "Points,60,",
            1 => "Sample interval,2E-10,s",
            _ => ",,",
        };
        format!("{beside},{:.10},{:+.3},", i as f64 * 2e-10 - 1e-9, f64::from(VOLTS[i % 7]) * 0.01)
    });
    let layout = layout_of(&text);
    assert_eq!(layout.first_line, 1);
    assert_eq!(
        roles(&layout),
        [Role::Ignored, Role::Ignored, Role::Ignored, Role::Time, Role::ChannelA],
        "{layout:?}"
    );
    let [points, interval] = layout.settings.as_slice() else { panic!("{layout:?}") };
    assert_eq!((points.name.as_str(), points.value.as_str()), ("Points", "60"));
    assert_eq!((interval.name.as_str(), interval.value.as_str()), ("Sample interval", "2E-10 s"));
}

#[test]
fn a_single_column_with_decimal_commas() {
    let text = format!("Sampling rate: 5 GS/s\n{}", rows(50, |i| format!("0,0{}", VOLTS[i % 7].abs())));
    let layout = layout_of(&text);
    assert_eq!((layout.decimal, layout.first_line), (DecimalMark::Comma, 2));
    assert_eq!(roles(&layout), [Role::ChannelA]);
    assert_eq!(layout.step, Some(0.2));
}

#[test]
fn quoted_numbers_with_decimal_commas() {
    let text = format!(
        "\"t (ns)\",\"A (V)\"\n{}",
        rows(30, |i| format!("\"{},{}\",\"0,{}\"", i / 5, i % 5 * 2, VOLTS[i % 7].abs()))
    );
    let layout = layout_of(&text);
    assert_eq!((layout.delimiter, layout.decimal), (Delimiter::Comma, DecimalMark::Comma));
    let recording = super::super::read("x", text.as_bytes(), &layout).unwrap();
    assert!((recording.step - 0.2).abs() < 1e-12);
    assert_eq!(recording.channels[0].samples[..3], [0.3, 0.1, 0.4]);
}

#[test]
fn units_are_taken_from_labels_in_their_many_forms() {
    for (label, unit) in [
        ("t (s)", ColumnUnit::Second),
        ("Time [ns]", ColumnUnit::Nanosecond),
        ("Time/µs", ColumnUnit::Microsecond),
        ("t in ps", ColumnUnit::Picosecond),
        ("time_ms", ColumnUnit::Millisecond),
        ("ns", ColumnUnit::Nanosecond),
        ("t (\u{3bc}s)", ColumnUnit::Microsecond),
    ] {
        let text =
            format!("{label};A\n{}", rows(30, |i| format!("{}.{};{}", i / 5, i % 5 * 2, VOLTS[i % 7])));
        let layout = layout_of(&text);
        assert_eq!((layout.columns[0].role, layout.columns[0].unit), (Role::Time, unit), "{label}");
        assert!(layout.columns[0].unit_stated && !layout.columns[1].unit_stated);
    }
    // Latin-1, in which the micro sign is one byte.
    let mut bytes = b"t (\xb5s)\tA\n".to_vec();
    bytes.extend(rows(30, |i| format!("{i}.0\t{}", VOLTS[i % 7])).bytes());
    assert_eq!(recognise("x", &bytes).unwrap().columns[0].unit, ColumnUnit::Microsecond);
}

#[test]
fn labels_say_which_channel_is_which() {
    let text = format!("t (ns),CH2,CH1\n{}", rows(30, |i| format!("{i},{},{}", VOLTS[i % 7], VOLTS[i % 5])));
    assert_eq!(roles(&layout_of(&text)), [Role::Time, Role::ChannelB, Role::ChannelA]);
}

#[test]
fn utf_16_and_byte_order_marks() {
    let text = format!("t (ns);A (V)\r\n{}", rows(30, |i| format!("{i};{}", VOLTS[i % 7])));
    let mut marked = vec![0xef, 0xbb, 0xbf];
    marked.extend(text.bytes());
    let mut wide = vec![0xff, 0xfe];
    wide.extend(text.encode_utf16().flat_map(u16::to_le_bytes));
    let plain = layout_of(&text);
    for bytes in [marked, wide] {
        let layout = recognise("x", &bytes).unwrap();
        assert_eq!(layout, plain);
        assert_eq!(super::super::read("x", &bytes, &layout).unwrap().channels[0].samples.len(), 30);
    }
}

#[test]
fn what_is_refused() {
    let problem = |bytes: &[u8]| recognise("trace 7", bytes).unwrap_err().problem;
    assert_eq!(problem(b""), ReadProblem::Empty);
    assert_eq!(problem(b" \r\n\n \t"), ReadProblem::Empty);
    assert_eq!(problem(&[0x50, 0x4b, 3, 4, 0, 0]), ReadProblem::Binary { at: 3 });
    assert_eq!(problem(b"only words\nand more of them\nno numbers at all\n"), ReadProblem::NoColumns);
    let error = recognise("trace 7", &[0; 20]).unwrap_err();
    assert_eq!((error.file.as_str(), error.problem), ("trace 7", ReadProblem::Binary { at: 1 }));
}

#[test]
fn times_by_their_unit_are_the_times_where_their_steps_are_not_equal() {
    // The gap lies in the lines that are probed; the head has an interval that would stand in for the times.
    let head = "Sample interval,0.2,ns\nTime (ns),A (V),B (V)\n";
    let text = |gap: f64| {
        let sample = |i: usize| {
            let time = 0.2 * i as f64 + if i > 31 { gap } else { 0.0 };
            format!("{time:.1},{:+.3},{:+.3}", f64::from(VOLTS[i % 7]), f64::from(VOLTS[(i + 3) % 7]))
        };
        format!("{head}{}", rows(60, sample))
    };
    // A gap, a step back, the same time twice.
    for gap in [0.0, 1.4, -1.4, -0.2] {
        let layout = layout_of(&text(gap));
        assert_eq!(roles(&layout), [Role::Time, Role::ChannelA, Role::ChannelB], "{layout:?}");
        let read = super::super::read("x", text(gap).as_bytes(), &layout);
        match read {
            Ok(recording) => assert!(gap == 0.0 && (recording.step - 0.2).abs() < 1e-9),
            Err(error) => assert!(
                gap != 0.0 && matches!(error.problem, ReadProblem::Unequal { line: 33..=35, .. }),
                "{error:?}"
            ),
        }
    }
}

#[test]
fn a_channel_is_not_measured_by_the_times_of_the_other() {
    let text = |gap: f64| {
        let sample = |i: usize| {
            let time = 0.2 * i as f64;
            let first = time + if i > 31 { gap } else { 0.0 };
            format!(
                "{first:.1},{:+.3},{time:.1},{:+.3}",
                f64::from(VOLTS[i % 7]),
                f64::from(VOLTS[(i + 3) % 7])
            )
        };
        format!("t1 (ns),A (V),t2 (ns),B (V)\n{}", rows(60, sample))
    };
    for gap in [0.0, 1.4] {
        let layout = layout_of(&text(gap));
        assert_eq!(roles(&layout), [Role::Time, Role::ChannelA, Role::Time, Role::ChannelB], "{layout:?}");
        assert_eq!(super::super::read("x", text(gap).as_bytes(), &layout).is_ok(), gap == 0.0);
    }
}
