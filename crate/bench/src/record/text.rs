//! Recordings as text files, in several ways that a recorder might write them. The formats are invented.

use std::fmt::Write as _;

use slope_evidence::trace::{Channel, ColumnUnit, DecimalMark, Delimiter, Recording};

/// How a file is written.
#[derive(Clone, Copy, PartialEq, Debug)]
#[expect(clippy::struct_excessive_bools, reason = "each is a habit of its own")]
pub struct Style {
    /// What stands between two fields.
    pub delimiter: Delimiter,
    /// How decimals are marked.
    pub decimal: DecimalMark,
    /// A row of labels above the samples.
    pub labels: bool,
    /// Units in the labels, in a row of their own, or nowhere (seconds and volts then).
    pub units: Units,
    /// Settings above the samples, in columns before or behind them, or nowhere.
    pub settings: SettingsPlace,
    /// The unit of time.
    pub time: ColumnUnit,
    /// The unit of voltage.
    pub volts: ColumnUnit,
    /// Digits after the mark of the mantissa, in powers of ten; 0 for plain decimals of six digits.
    pub powers: usize,
    /// Every number has a sign and is padded with spaces.
    pub padded: bool,
    /// A running number before the time.
    pub numbered: bool,
    /// No time column; the settings give the step.
    pub timeless: bool,
    /// What ends a line.
    pub line_end: &'static str,
}

/// Where units stand.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Units {
    /// Nowhere.
    None,
    /// In the labels.
    InLabels,
    /// In a row below them.
    Row,
}

/// Where settings stand.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum SettingsPlace {
    /// Nowhere.
    None,
    /// Above the samples.
    Above,
    /// In three columns before the samples.
    Beside,
    /// Behind the samples: named in the row of labels, their values in the row below that.
    Behind,
}

impl Default for Style {
    fn default() -> Self {
        Self {
            delimiter: Delimiter::Comma,
            decimal: DecimalMark::Point,
            labels: true,
            units: Units::InLabels,
            settings: SettingsPlace::None,
            time: ColumnUnit::Second,
            volts: ColumnUnit::Volt,
            powers: 8,
            padded: false,
            numbered: false,
            timeless: false,
            line_end: "\n",
        }
    }
}

/// A file with one channel of a recording.
pub fn as_text(recording: &Recording, channel: usize, style: &Style) -> String {
    write(recording, channel..channel + 1, style)
}

/// A file with all channels.
pub fn both_as_text(recording: &Recording, style: &Style) -> String {
    write(recording, 0..recording.channels.len(), style)
}

fn write(recording: &Recording, channels: std::ops::Range<usize>, style: &Style) -> String {
    let channels = recording.channels.get(channels).unwrap_or_default();
    let rows = channels.first().map_or(0, |channel| channel.samples.len());
    let settings = settings(recording, rows, style);
    let mut text = String::new();
    let mut line = |fields: &[String]| {
        text.push_str(&fields.join(between(style.delimiter)));
        text.push_str(style.line_end);
    };
    if style.settings == SettingsPlace::Above {
        for setting in &settings {
            line(setting);
        }
    }
    let mut behind = behind(recording, style).into_iter();
    let mut and_behind = |mut fields: Vec<String>| {
        fields.extend(behind.next().into_iter().flatten());
        fields
    };
    if style.labels {
        line(&and_behind(titles(channels, style, true)));
    }
    if style.units == Units::Row {
        line(&and_behind(titles(channels, style, false)));
    }
    for row in 0..rows {
        let mut fields = beside(style, settings.get(row));
        if style.numbered {
            fields.push(row.to_string());
        }
        if !style.timeless {
            fields.push(number((recording.start + row as f64 * recording.step) / style.time.factor(), style));
        }
        fields.extend(
            channels.iter().map(|channel| number(channel.samples[row] / style.volts.factor(), style)),
        );
        line(&and_behind(fields));
    }
    text
}

fn between(delimiter: Delimiter) -> &'static str {
    match delimiter {
        Delimiter::Tab => "\t",
        Delimiter::Semicolon => ";",
        Delimiter::Comma => ",",
        Delimiter::Bar => "|",
        Delimiter::Space => " ",
    }
}

/// A setting of the recorder: its name, its value and the unit of that.
type Setting = [String; 3];

fn settings(recording: &Recording, rows: usize, style: &Style) -> [Setting; 3] {
    let setting = |name: &str, value: String, unit: &str| [name.to_owned(), value, unit.to_owned()];
    [
        setting("Samples", rows.to_string(), ""),
        setting("Sample interval", number(recording.step / style.time.factor(), style), unit(style.time)),
        setting("Coupling", "direct".to_owned(), ""),
    ]
}

/// What stands before the fields of a row where settings do: one of them, or as much of nothing.
fn beside(style: &Style, setting: Option<&Setting>) -> Vec<String> {
    match style.settings {
        SettingsPlace::Beside => Vec::from(setting.cloned().unwrap_or_default()),
        SettingsPlace::None | SettingsPlace::Above | SettingsPlace::Behind => Vec::new(),
    }
}

/// What stands behind the fields of the first two rows where settings do: names with their unit, and values.
fn behind(recording: &Recording, style: &Style) -> Vec<[String; 2]> {
    if style.settings != SettingsPlace::Behind {
        return Vec::new();
    }
    let name = |name: &str| format!("{name} ({})", unit(style.time));
    let value = |time: f64| number(time / style.time.factor(), style);
    vec![["Start", "Increment"].map(name), [recording.start, recording.step].map(value)]
}

/// The row of labels, or that of units.
fn titles(channels: &[Channel], style: &Style, label: bool) -> Vec<String> {
    let mut fields = beside(style, None);
    if style.numbered {
        fields.push(if label { "No.".into() } else { "-".into() });
    }
    let title = |name: &str, of: ColumnUnit| match (label, style.units) {
        (true, Units::InLabels) => format!("{name} ({})", unit(of))
            .replace(' ', if style.delimiter == Delimiter::Space { "_" } else { " " }),
        (true, _) => name.to_owned(),
        (false, _) => unit(of).to_owned(),
    };
    if !style.timeless {
        fields.push(title("Time", style.time));
    }
    fields.extend(channels.iter().map(|channel| title(&channel.label, style.volts)));
    fields
}

fn unit(unit: ColumnUnit) -> &'static str {
    match unit {
        ColumnUnit::Second => "s",
        ColumnUnit::Millisecond => "ms",
        ColumnUnit::Microsecond => "µs",
        ColumnUnit::Nanosecond => "ns",
        ColumnUnit::Picosecond => "ps",
        ColumnUnit::Volt => "V",
        ColumnUnit::Millivolt => "mV",
        ColumnUnit::One => "",
    }
}

fn number(value: f64, style: &Style) -> String {
    let mut text = String::new();
    let done = match (style.powers, style.padded) {
        (0, false) => write!(text, "{value:.6}"),
        (0, true) => write!(text, "{value:+14.6}"),
        (digits, false) => write!(text, "{value:.digits$E}"),
        (digits, true) => write!(text, "{:>20}", format!("{value:+.digits$E}")),
    };
    debug_assert!(done.is_ok(), "writing to a text does not fail");
    match style.decimal {
        DecimalMark::Point => text,
        DecimalMark::Comma => text.replace('.', ","),
    }
}

#[cfg(test)]
#[path = "text_test.rs"]
mod tests;
