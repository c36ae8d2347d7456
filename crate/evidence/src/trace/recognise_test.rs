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

/// Of three channels those are A's and B's whose labels say so; what stands beside them, a trigger or a lamp's monitor, is none.
#[test]
fn labels_say_which_of_three_channels_are_the_two() {
    use Role::{ChannelA, ChannelB, Ignored, Time};
    for (head, expected) in [
        ("t (ns),Trigger,A,B", [Time, Ignored, ChannelA, ChannelB]),
        ("t (ns),B,Monitor,A", [Time, ChannelB, Ignored, ChannelA]),
        ("t (ns),Trigger,CH1,Monitor", [Time, Ignored, ChannelA, ChannelB]),
        ("t (ns),Monitor,Trigger,Stop", [Time, ChannelA, Ignored, ChannelB]),
        ("t (ns),B,Monitor,Trigger", [Time, ChannelB, ChannelA, Ignored]),
        ("t (ns),One,Another,Third", [Time, ChannelA, ChannelB, Ignored]),
    ] {
        let volts = |i: usize| [VOLTS[i % 7], VOLTS[i % 5], VOLTS[(i + 2) % 7]];
        let row = |i: usize| volts(i).iter().fold(i.to_string(), |row, volts| format!("{row},{volts}"));
        assert_eq!(roles(&layout_of(&format!("{head}\n{}", rows(30, row)))), expected, "{head}");
    }
    let alone = |label: &str| {
        let text = format!("t (ns),{label}\n{}", rows(30, |i| format!("{i},{}", VOLTS[i % 7])));
        roles(&layout_of(&text))
    };
    assert_eq!((alone("A"), alone("B")), (vec![Time, ChannelA], vec![Time, ChannelB]));
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
                gap != 0.0 && matches!(error.problem, ReadProblem::Unequal { line: 35, .. }),
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
    // B at half the rate, its times in picoseconds; A's own in another unit are the same times.
    let other = |unit: &str, factor: f64| {
        let row = |i: usize| {
            let (time, volts) = (0.2 * i as f64, [VOLTS[i % 7], VOLTS[(i + 3) % 7]]);
            format!("{time:.1},{},{:.3},{}", volts[0], factor * time, volts[1])
        };
        format!("t1 (ns),A (V),t2 ({unit}),B (V)\n{}", rows(60, row))
    };
    for (factor, is_same) in [(1e3, true), (2e3, false)] {
        let text = other("ps", factor);
        let layout = layout_of(&text);
        assert_eq!(roles(&layout), [Role::Time, Role::ChannelA, Role::Time, Role::ChannelB], "{layout:?}");
        let read = super::super::read("x", text.as_bytes(), &layout);
        assert_eq!(
            read.err().map(|error| error.problem),
            (!is_same).then_some(ReadProblem::OtherTimes { column: 3 })
        );
    }
}

/// Rows of a running number and two channels, each with what is put behind it.
fn counted(beside: impl Fn(usize) -> &'static str) -> String {
    rows(60, |i| {
        let volts = [VOLTS[i % 7], VOLTS[(i + 3) % 7]].map(|volts| f64::from(volts) * 0.01);
        format!("{i},{:+.3},{:+.3}{}", volts[0], volts[1], beside(i))
    })
}

/// Layouts as common practice has them, without a source: invented files, every one with a step of 0.2 ns.
#[test]
fn settings_give_the_times_beside_a_column_that_counts() {
    let first = |text: &'static str| move |i: usize| if i == 0 { text } else { ",," };
    let never = |_: usize| "";
    let titled = "X,CH1,CH2,Start,Increment\n";
    let cases = [
        (format!("{titled}Sequence,Volt,Volt,-1.0E-08,2.0E-10\n{}", counted(|_| ",,")), Some(-10.0)),
        (format!("{titled}Sequence,Volt,Volt,-1.0E-08,2.0E-10\n{}", counted(never)), Some(-10.0)),
        (format!("{titled},V,V,-1.0E-08,2.0E-10\n{}", counted(never)), Some(-10.0)),
        (format!("{titled}{}", counted(first(",-1.0E-08,2.0E-10"))), Some(-10.0)),
        (format!("{titled}-,V,V,ns,ns\n{}", counted(first(",-10,0.2"))), Some(-10.0)),
        (format!("Start,-1E-8\nIncrement,2E-10\nIndex,A,B\n{}", counted(never)), Some(-10.0)),
        (format!("x increment = 0.2 ns\nx origin = -10 ns\nn,A,B\n{}", counted(never)), Some(-10.0)),
        (format!("Y increment,0.004\nX increment,2E-10\n{}", counted(never)), None),
        (format!("Pulse rate,1000,Hz\nSampling rate,5,GS/s\n{}", counted(never)), None),
        (format!("Bits per sample,8\nSample interval,200,ps\n{}", counted(never)), None),
    ];
    for (text, start) in cases {
        let layout = layout_of(&text);
        assert_eq!(roles(&layout), [Role::Ignored, Role::ChannelA, Role::ChannelB], "{text:.80}\n{layout:?}");
        let near = |found: Option<f64>, wanted: Option<f64>| {
            found.is_some() == wanted.is_some()
                && found.zip(wanted).is_none_or(|(found, wanted)| (found - wanted).abs() < 1e-9)
        };
        assert!(near(layout.step, Some(0.2)) && near(layout.start, start), "{text:.80}\n{layout:?}");
        let recording = super::super::read("x", text.as_bytes(), &layout).unwrap();
        // A bare interval is in seconds as far as anybody knows.
        let is_bare = ["2.0E-10", "2E-10"].iter().any(|bare| text.contains(bare));
        assert_eq!((layout.is_step_supposed, recording.is_unit_supposed), (is_bare, is_bare), "{text:.80}");
        assert_eq!(recording.channels[0].samples.len(), 60, "{text:.80}");
        assert!((recording.channels[0].samples[0] - 0.03).abs() < 1e-12, "{text:.80}");
    }
}

#[test]
fn a_column_that_counts_is_no_time_unless_a_unit_of_time_is_stated_for_it() {
    let of = |head: &str| format!("{head}{}", counted(|_| ""));
    let with_noughts = rows(60, |i| format!("{i}.000,{}", VOLTS[i % 7]));
    for text in [of(""), of("X,CH1,CH2\n"), of("Time,A,B\n"), of("Horizontal units,s\nX,A,B\n"), with_noughts]
    {
        let layout = layout_of(&text);
        assert!(!roles(&layout).contains(&Role::Time) && layout.step.is_none(), "{text:.40} {layout:?}");
        let refused = super::super::read("x", text.as_bytes(), &layout).unwrap_err();
        assert_eq!(refused.problem, ReadProblem::NoTime);
    }
    for head in ["Time (us),A,B\n", "Time,A,B\nus,V,V\n", "Time unit,us\nTime,A,B\n"] {
        let layout = layout_of(&of(head));
        let TraceColumn { role, unit, unit_stated, .. } = layout.columns[0];
        assert_eq!((role, unit, unit_stated), (Role::Time, ColumnUnit::Microsecond, true), "{head}");
    }
}

/// Every second sample was left out, and its number kept: nothing tells whether the stated step is one of all samples or of
/// those that are there. Whole nanoseconds are times where the stated step is theirs.
#[test]
fn a_column_that_counts_every_second_sample_is_no_time() {
    let of = |interval: &str| {
        let row = |i: usize| format!("{},{:+.3}", 2 * i, f64::from(VOLTS[i % 7]) * 0.01);
        layout_of(&format!("Sample interval,{interval}\nX,A\n{}", rows(60, row)))
    };
    let counted = of("200,ps");
    assert_eq!((roles(&counted), counted.step), (vec![Role::Ignored, Role::ChannelA], None));
    let timed = of("2,ns");
    assert_eq!((roles(&timed), timed.step), (vec![Role::Time, Role::ChannelA], None));
    assert_eq!(timed.columns[0].unit, ColumnUnit::Nanosecond);
}

#[test]
fn a_unit_that_was_stated_is_not_supposed() {
    let samples = rows(60, |i| format!("{:.1},{:+.3}", 0.2 * i as f64, f64::from(VOLTS[i % 7]) * 0.01));
    let (time, volts) = (ColumnUnit::Nanosecond, ColumnUnit::Volt);
    for (head, expected) in [
        ("", [(time, false), (volts, false)]),
        ("Time,A\n", [(time, false), (volts, false)]),
        (
            "Horizontal units,ms\nVertical units,mV\n",
            [(ColumnUnit::Millisecond, true), (ColumnUnit::Millivolt, true)],
        ),
        (
            "Vertical units,mV\nHorizontal units,ms\n",
            [(ColumnUnit::Millisecond, true), (ColumnUnit::Millivolt, true)],
        ),
        ("Units,ps,mV\nTime,A\n", [(ColumnUnit::Picosecond, true), (ColumnUnit::Millivolt, true)]),
        // Only in one unit are the steps of the column those that are stated.
        ("Sample interval,0.2,us\nTime,A\n", [(ColumnUnit::Microsecond, true), (volts, false)]),
        ("Sampling rate,5,GS/s\nTime,A\n", [(time, true), (volts, false)]),
        // Bare, it has the number that the column has in whatever unit.
        ("Sample interval,0.2\nTime,A\n", [(time, false), (volts, false)]),
        // Of two units none is that of the times.
        ("Time unit,ms\nHorizontal unit,s\nTime,A\n", [(time, false), (volts, false)]),
    ] {
        let layout = layout_of(&format!("{head}{samples}"));
        assert_eq!(roles(&layout), [Role::Time, Role::ChannelA], "{head}");
        let units: Vec<_> = layout.columns.iter().map(|column| (column.unit, column.unit_stated)).collect();
        assert_eq!(units, expected, "{head}");
    }
}

#[test]
fn times_by_their_label_are_the_times_where_they_are_jittered() {
    let sample = |i: usize| {
        let time = 2e-10 * (i as f64 + 0.1 * f64::from(VOLTS[i % 7]).signum());
        format!("{time:.4e},{:+.3},{:+.3}", f64::from(VOLTS[i % 7]), f64::from(VOLTS[(i + 3) % 7]))
    };
    let text = format!("Time,A,B\n{}", rows(60, sample));
    let layout = layout_of(&text);
    assert_eq!(roles(&layout), [Role::Time, Role::ChannelA, Role::ChannelB], "{layout:?}");
    assert_eq!((layout.columns[0].unit, layout.columns[0].unit_stated), (ColumnUnit::Second, false));
}
