//! Whatever way a recording is written, what is recognised and read is what was written.
#![expect(clippy::unwrap_used, clippy::panic, reason = "tests")]

use slope_evidence::trace::{Role, read, recognise};

use super::super::Bench;
use super::*;
use crate::chance::Chance;

fn recording() -> Recording {
    let mut bench = Bench::default();
    bench.digitiser.samples = 300;
    bench.digitiser.start = -10.0;
    bench.record(6.0, 0.7, &mut Chance::seeded(3))
}

/// Writes both channels, recognises and reads them, and compares with what was written: to the digits of the style.
#[track_caller]
fn holds(style: &Style) {
    let written = recording();
    let text = both_as_text(&written, style);
    let layout =
        recognise("run.dat", text.as_bytes()).unwrap_or_else(|error| panic!("{error}\n{}", &text[..400]));
    assert_eq!(layout.delimiter, style.delimiter, "{style:?}");
    assert_eq!(layout.decimal, style.decimal, "{style:?}");
    let found =
        read("run.dat", text.as_bytes(), &layout).unwrap_or_else(|error| panic!("{error}\n{layout:?}"));
    assert_eq!(found.channels.len(), 2, "{style:?} {layout:?}");
    assert!((found.step - written.step).abs() < 1e-6, "{style:?}: step {} {layout:?}", found.step);
    if !style.timeless || style.settings == SettingsPlace::Behind {
        assert!((found.start - written.start).abs() < 2e-3, "{style:?}: start {}", found.start);
    }
    for (found, written) in found.channels.iter().zip(&written.channels) {
        assert_eq!(found.detector, written.detector, "{style:?}");
        assert_eq!(found.samples.len(), written.samples.len(), "{style:?}");
        for (found, written) in found.samples.iter().zip(&written.samples) {
            assert!((found - written).abs() < 1e-5, "{style:?}: {found} {written}");
        }
    }
    if matches!(style.settings, SettingsPlace::Above | SettingsPlace::Beside) {
        let setting = found.settings.iter().find(|setting| setting.name == "Coupling").unwrap();
        assert_eq!(setting.value, "direct", "{style:?}");
    }
}

#[test]
fn every_delimiter_with_every_decimal_mark() {
    for delimiter in Delimiter::ALL {
        for decimal in [DecimalMark::Point, DecimalMark::Comma] {
            if delimiter == Delimiter::Comma && decimal == DecimalMark::Comma {
                continue;
            }
            for (time, powers) in
                [(ColumnUnit::Second, 8), (ColumnUnit::Nanosecond, 0), (ColumnUnit::Microsecond, 0)]
            {
                holds(&Style { delimiter, decimal, time, powers, ..Style::default() });
                holds(&Style { delimiter, decimal, time, powers, padded: true, ..Style::default() });
            }
        }
    }
}

#[test]
fn every_line_end() {
    for line_end in ["\n", "\r\n", "\r"] {
        holds(&Style { line_end, ..Style::default() });
        holds(&Style {
            line_end,
            delimiter: Delimiter::Semicolon,
            settings: SettingsPlace::Beside,
            ..Style::default()
        });
    }
}

#[test]
fn settings_above_and_beside_with_and_without_labels() {
    for settings in [SettingsPlace::Above, SettingsPlace::Beside] {
        for labels in [true, false] {
            for delimiter in [Delimiter::Comma, Delimiter::Tab, Delimiter::Semicolon] {
                holds(&Style { delimiter, labels, settings, ..Style::default() });
            }
        }
    }
}

#[test]
fn units_in_labels_in_a_row_or_supposed() {
    for units in [Units::InLabels, Units::Row] {
        for time in [
            ColumnUnit::Second,
            ColumnUnit::Millisecond,
            ColumnUnit::Microsecond,
            ColumnUnit::Nanosecond,
            ColumnUnit::Picosecond,
        ] {
            let powers = 9;
            holds(&Style { units, time, volts: ColumnUnit::Millivolt, powers, ..Style::default() });
        }
    }
    holds(&Style { units: Units::None, ..Style::default() });
    holds(&Style { units: Units::None, labels: false, ..Style::default() });
}

#[test]
fn running_numbers_are_not_the_time() {
    for settings in [SettingsPlace::None, SettingsPlace::Above, SettingsPlace::Beside] {
        holds(&Style { numbered: true, settings, ..Style::default() });
    }
}

#[test]
fn a_setting_gives_the_step_where_no_column_gives_the_time() {
    for numbered in [true, false] {
        holds(&Style { timeless: true, numbered, settings: SettingsPlace::Above, ..Style::default() });
    }
}

#[test]
fn start_and_increment_behind_the_samples_give_the_times() {
    for (units, numbered) in
        [(Units::InLabels, true), (Units::Row, true), (Units::None, true), (Units::Row, false)]
    {
        for (delimiter, time) in [
            (Delimiter::Comma, ColumnUnit::Second),
            (Delimiter::Semicolon, ColumnUnit::Nanosecond),
            (Delimiter::Tab, ColumnUnit::Microsecond),
        ] {
            let settings = SettingsPlace::Behind;
            holds(&Style { timeless: true, numbered, units, settings, delimiter, time, ..Style::default() });
        }
    }
}

#[test]
fn a_channel_a_file() {
    let written = recording();
    let text = as_text(&written, 1, &Style { line_end: "\r\n", ..Style::default() });
    let layout = recognise("run B.csv", text.as_bytes()).unwrap();
    assert_eq!(layout.columns[1].role, Role::ChannelB);
    let found = read("run B.csv", text.as_bytes(), &layout).unwrap();
    assert_eq!(found.channels.len(), 1);
    assert_eq!(found.channels[0].label, "B (V)");
}
