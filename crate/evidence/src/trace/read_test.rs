//! Files that can't be read name the line; those that are read give what they say.
#![expect(clippy::unwrap_used, clippy::panic, reason = "tests")]

use std::fmt::Write as _;

use super::super::{DecimalMark, recognise};
use super::*;
use crate::message;

/// 40 rows of a sound file, one of which is another.
fn file(replaced: usize, row: &str) -> String {
    let mut text = String::from("t (ns),A (V)\n");
    for index in 0..40 {
        if index + 2 == replaced {
            text.push_str(row);
        } else {
            writeln!(text, "{:.3},{:.3}", index as f64 * 0.2, ((index * 7) % 5) as f64 * 0.01).unwrap();
        }
    }
    text
}

fn layout() -> Layout {
    recognise("x", file(0, "").as_bytes()).unwrap()
}

fn problem(text: &str) -> ReadProblem {
    read("far.csv", text.as_bytes(), &layout()).unwrap_err().problem
}

#[test]
fn a_sound_file() {
    let recording = read("x", file(0, "").as_bytes(), &layout()).unwrap();
    assert_eq!((recording.start, recording.channels[0].samples.len()), (0.0, 40));
    assert!((recording.step - 0.2).abs() < 1e-15);
    assert_eq!(recording.channels[0].samples[..4], [0.0, 0.02, 0.04, 0.01]);
    assert_eq!(recording.channels[0].detector, Some(Detector::A));
    // Blank lines and an old end-of-file mark at the end do no harm.
    for end in ["\n\n", " \r\n", "\u{1a}"] {
        assert_eq!(read("x", (file(0, "") + end).as_bytes(), &layout()).unwrap(), recording);
    }
}

/// A layout comes with a notebook, too, whoever wrote it: lines that are not there are not counted.
#[test]
fn a_first_line_far_behind_the_end_is_found_at_once() {
    let layout = Layout { first_line: usize::MAX, ..layout() };
    let problem = read("far.csv", file(0, "").as_bytes(), &layout).unwrap_err().problem;
    assert_eq!(problem, ReadProblem::FewRows { rows: 0, needed: 8 });
}

#[test]
fn samples_without_a_value_name_their_line() {
    for mark in ["NaN", "nan", "inf", "-Inf", "OL", "----", "1.#QNAN", "9.91E37", "-9.9e37", "1e400"] {
        let found = problem(&file(20, &format!("3.6,{mark}\n")));
        let expected = ReadProblem::NoValue { line: 20, column: 2, found: mark.to_owned() };
        assert_eq!(found, expected, "{mark}");
    }
}

#[test]
fn rows_that_are_cut_off_or_hold_words_name_their_line() {
    assert_eq!(problem(&file(20, "3.6\n")), ReadProblem::MissingField { line: 20, column: 2 });
    assert_eq!(problem(&file(20, "3.6,\n")), ReadProblem::MissingField { line: 20, column: 2 });
    assert_eq!(problem(&file(20, "\n")), ReadProblem::MissingField { line: 20, column: 1 });
    let words = ReadProblem::NotANumber { line: 20, column: 2, found: "volts".to_owned() };
    assert_eq!(problem(&file(20, "3.6,volts\n")), words);
    assert_eq!(
        problem(&file(20, "3.6,0.0.1\n")),
        ReadProblem::NotANumber { line: 20, column: 2, found: "0.0.1".into() }
    );
    // The last line of a file that was cut off in the middle of a row.
    let cut = file(0, "");
    let cut = cut.trim_end().rsplit_once(',').unwrap().0;
    assert_eq!(problem(cut), ReadProblem::MissingField { line: 41, column: 2 });
}

#[test]
fn unequal_sampling_names_the_jump() {
    // One row is missing, so that the next comes too late by a step.
    let found = problem(&file(20, ""));
    let ReadProblem::Unequal { line, found, expected, step } = found else { panic!("{found:?}") };
    assert_eq!(line, 20);
    assert!((found - 3.8).abs() < 1e-9 && (expected - 3.6).abs() < 1e-9 && (step - 0.2).abs() < 1e-9);
    // A time that falls back.
    assert!(matches!(problem(&file(20, "1.0,0.1\n")), ReadProblem::Unequal { line: 20, .. }));
    let still = "5.0,0.1\n".repeat(20);
    assert_eq!(problem(&format!("t (ns),A (V)\n{still}")), ReadProblem::NoAdvance { first: 2, last: 21 });
}

#[test]
fn rounded_times_are_equal_steps_to_their_digits() {
    let mut text = String::from("t (ns),A (V)\n");
    for index in 0..2_000 {
        writeln!(text, "{:.2},0.{}", f64::from(index) / 3.0, (index * 7) % 5).unwrap();
    }
    let recording = read("x", text.as_bytes(), &layout()).unwrap();
    assert!((recording.step - 1.0 / 3.0).abs() < 1e-5, "{}", recording.step);
}

#[test]
fn what_a_layout_may_lack() {
    assert_eq!(problem("t (ns),A (V)\n0,1\n1,2\n2,3\n"), ReadProblem::FewRows { rows: 3, needed: 8 });
    let mut without = layout();
    without.columns[0].role = Role::Ignored;
    let refused = |layout: &Layout| read("x", file(0, "").as_bytes(), layout).unwrap_err().problem;
    assert_eq!(refused(&without), ReadProblem::NoTime);
    without.step = Some(0.5);
    let untimed = read("x", file(0, "").as_bytes(), &without).unwrap();
    assert_eq!((untimed.step, untimed.start, untimed.is_start_told), (0.5, 0.0, false));
    without.start = Some(-3.0);
    let begun = read("x", file(0, "").as_bytes(), &without).unwrap();
    assert_eq!((begun.start, begun.is_start_told), (-3.0, true));
    without.columns[1].role = Role::Ignored;
    assert_eq!(refused(&without), ReadProblem::NoChannel);
    assert_eq!(read("x", b"", &layout()).unwrap_err().problem, ReadProblem::Empty);
    assert_eq!(read("x", b"\0\0\0\0", &layout()).unwrap_err().problem, ReadProblem::Binary { at: 1 });
    // A first line behind the last.
    let mut late = layout();
    late.first_line = 100;
    assert_eq!(refused(&late), ReadProblem::FewRows { rows: 0, needed: 8 });
}

#[test]
fn a_message_names_file_line_and_column() {
    let error = read("far.csv", file(20, "3.6,NaN\n").as_bytes(), &layout()).unwrap_err();
    let why = message!("read-no_value", line = "20", column = "2", found = "NaN");
    assert_eq!(error.message(DecimalMark::Point), message!("read-file", file = "far.csv", why = why));
}

/// Whatever bytes come, there is an answer or a refusal: sound files with bytes changed, cut and put in.
#[test]
fn no_bytes_whatever_stop_it() {
    let mut state = 5_u64;
    let mut next = |below: usize| {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        usize::try_from(state >> 33).unwrap() % below
    };
    let sound = file(0, "");
    let kinds = b"\r\n\t;,| .-+eE09\"#(\x00\xff\xb5aV";
    let (mut read_too, mut refused) = (0, 0);
    for _ in 0..3_000 {
        let mut bytes = sound.clone().into_bytes();
        if next(3) == 0 {
            let other =
                sound.replace('.', [",", "."][next(2)]).replace(',', [";", "\t", " ", "|", ",,"][next(5)]);
            bytes = other.into_bytes();
        }
        for _ in 0..next(12) {
            let at = next(bytes.len().max(1));
            bytes.resize(bytes.len().max(1), b' ');
            match next(12) {
                0..4 => bytes[at] = kinds[next(kinds.len())],
                4..8 => bytes.insert(at, kinds[next(kinds.len())]),
                8..11 => drop(bytes.remove(at)),
                _ => bytes.truncate(at.max(1)),
            }
        }
        let outcome = recognise("x", &bytes).and_then(|layout| read("x", &bytes, &layout));
        let known = read("x", &bytes, &layout());
        for outcome in [outcome, known] {
            match outcome {
                Ok(recording) => {
                    read_too += 1;
                    let samples = recording.channels.iter().flat_map(|channel| &channel.samples);
                    assert!(recording.step > 0.0 && samples.clone().count() >= 8);
                    assert!(samples.clone().all(|sample| sample.is_finite()));
                }
                Err(_) => refused += 1,
            }
        }
    }
    assert!(read_too > 300 && refused > 300, "{read_too} {refused}");
}

#[test]
fn channels_with_their_own_times_must_share_them() {
    let rows = |late: f64| -> String {
        let row = |at: usize| {
            let time = at as f64 * 0.2;
            format!("{time:.3},{},{:.3},{}\n", (at * 7) % 5, time + late, (at * 5) % 7)
        };
        (0..40).map(row).collect()
    };
    let together = rows(0.0);
    let layout = recognise("x", together.as_bytes()).unwrap();
    let recording = read("x", together.as_bytes(), &layout).unwrap();
    assert_eq!(recording.channels.len(), 2);
    assert_eq!(recording.channels[1].samples[..3], [0.0, 5.0, 3.0]);
    let found = read("x", rows(0.1).as_bytes(), &layout).unwrap_err().problem;
    assert_eq!(found, ReadProblem::OtherTimes { column: 3 });
}

/// 60 samples at times that are told to so many digits, and run away from steps of 0.2 ns by up to so much, ns, on either
/// side by turns.
fn jittered(digits: usize, by: f64) -> String {
    let mut text = String::from("t (ns),A (V),t (ns),B (V)\n");
    for index in 0..60 {
        let time = f64::from(index) * 0.2 + if index % 2 == 0 { by } else { -by };
        writeln!(text, "{time:.digits$},{},{time:.digits$},{}", index % 5, index % 7).unwrap();
    }
    text
}

#[test]
fn jittered_times_are_read_where_they_are_told_finely_enough() {
    let layout = recognise("x", jittered(4, 0.0).as_bytes()).unwrap();
    let read_in = |text: &str| read("x", text.as_bytes(), &layout);
    for by in [0.001, 0.02, 0.04] {
        let recording = read_in(&jittered(4, by)).unwrap();
        assert!((recording.step - (0.2 - 2.0 * by / 59.0)).abs() < 1e-9, "{}", recording.step);
        assert!((recording.start - by).abs() < 1e-12);
        assert_eq!(recording.channels.iter().map(|channel| channel.samples.len()).sum::<usize>(), 120);
    }
    // Steps of 0.3 ns and of 0.1 ns by turns differ by as much as with a row missing, and digits of 0.01 ns tell too little.
    for text in [jittered(4, 0.06), jittered(2, 0.04)] {
        let found = read_in(&text).unwrap_err().problem;
        assert!(matches!(found, ReadProblem::Unequal { .. }), "{found:?}");
    }
    // B's samples at other times than A's: at equal steps, or jittered the other way.
    for other in [jittered(4, 0.0), jittered(4, -0.02)] {
        let mixed: String = jittered(4, 0.02)
            .lines()
            .zip(other.lines())
            .map(|(one, other)| {
                let (ours, theirs) = (one.split(',').take(2), other.split(',').skip(2));
                ours.chain(theirs).collect::<Vec<_>>().join(",") + "\n"
            })
            .collect();
        assert_eq!(read_in(&mixed).unwrap_err().problem, ReadProblem::OtherTimes { column: 3 });
    }
}

#[test]
fn a_nought_with_a_power_of_ten_hides_no_gap() {
    let text = |gap: usize| {
        let mut text = String::from("t (s),A (V)\n");
        for index in 0..60 {
            let time = (index as f64 - 20.0 + if index >= gap { 3.0 } else { 0.0 }) * 1e-10;
            writeln!(text, "{time:.8E},{:.3}", ((index * 7) % 5) as f64 * 0.01).unwrap();
        }
        text
    };
    let read_in = |text: &str| read("x", text.as_bytes(), &recognise("x", text.as_bytes()).unwrap());
    assert!((read_in(&text(60)).unwrap().step - 0.1).abs() < 1e-9);
    let refused = read_in(&text(25)).unwrap_err().problem;
    assert!(matches!(refused, ReadProblem::Unequal { line: 27, .. }), "{refused:?}");
}

#[test]
fn a_time_that_is_repeated_is_named_at_its_own_line() {
    // Common practice, no source: the digits of the time are hardly finer than a step, as recorders write them.
    for (step, digits) in [(0.2, 1), (0.25, 2), (0.4, 1), (1.0 / 3.0, 2)] {
        for repeated in [1, 7, 22, 38] {
            let mut text = String::from("t (ns),A (V)\n");
            for index in 0..40 {
                let kept = if index >= repeated { index - 1 } else { index };
                writeln!(text, "{:.digits$},{:.3}", f64::from(kept) * step, f64::from(index * 7 % 5) * 0.01)
                    .unwrap();
            }
            let found = problem(&text);
            let ReadProblem::Unequal { line, step: told, .. } = found else { panic!("{found:?}") };
            assert_eq!(line, usize::try_from(repeated).unwrap() + 2, "{step} ns");
            assert!((told - step).abs() < 0.01, "{told} ns for {step}");
        }
    }
}
