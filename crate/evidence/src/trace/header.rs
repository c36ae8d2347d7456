//! What stands above the samples, or in columns beside them: labels, units, settings.

use super::lines::shown;
use super::{ColumnUnit, FileSetting, number};

/// The unit that a column's label ends with: `t (s)`, `Time [ns]`, `U/mV`, `t in ns`, `time_ns`, or nothing but `V`.
pub(super) fn unit_in(label: &str) -> Option<ColumnUnit> {
    let label = label.trim();
    let bracketed = [('(', ')'), ('[', ']'), ('{', '}')].iter().find_map(|(open, close)| {
        let inside = label.strip_suffix(*close)?.rsplit_once(*open)?.1;
        ColumnUnit::spelled(inside)
    });
    let last = || label.rsplit(['/', ' ', '_', '\t', ':']).next().and_then(ColumnUnit::spelled);
    bracketed.or_else(last)
}

/// The detector that a label names: its last word is A or B, or ends with the number 1 or 2 of a channel.
pub(super) fn is_second(label: &str) -> Option<bool> {
    let bare = label.split(['(', '[', '/']).next()?.trim().to_lowercase();
    let last = bare.rsplit([' ', '_', '-']).next()?;
    match last {
        "a" | "1" | "start" => Some(false),
        "b" | "2" | "stop" => Some(true),
        _ if last.starts_with("ch") && last.ends_with('1') => Some(false),
        _ if last.starts_with("ch") && last.ends_with('2') => Some(true),
        _ => None,
    }
}

/// A row of settings: name and value in fields, or in one field with a colon or an equals sign.
pub(super) fn setting(fields: &[&[u8]]) -> Option<FileSetting> {
    let mut texts = fields.iter().map(|field| shown(field)).filter(|text| !text.is_empty());
    let first = texts.next()?;
    let first = first.trim_start_matches(['#', '%', ';', '*']).trim();
    let mut name = first.trim_end_matches([':', '=']).trim();
    let mut value = texts.collect::<Vec<_>>().join(" ");
    if value.is_empty() {
        let (before, after) = first.split_once([':', '='])?;
        name = before.trim();
        after.trim().clone_into(&mut value);
    }
    (name.chars().any(char::is_alphabetic) && !value.is_empty())
        .then(|| FileSetting { name: name.to_owned(), value })
}

/// Time from sample to sample that the settings give, ns: as an interval or as a rate.
pub(super) fn step(settings: &[FileSetting], decimal_comma: bool) -> Option<f64> {
    settings.iter().find_map(|setting| {
        let name = setting.name.to_lowercase();
        let is_step = ["interval", "increment", "time step", "sampling period", "sample period"]
            .iter()
            .any(|word| name.contains(word))
            || name.split([' ', '(', '[', '/', '_']).next() == Some("dt");
        let is_rate = name.contains("rate") || name.contains("sampling frequency");
        let (value, unit) = amount(&setting.value, decimal_comma)?;
        let step = if is_step {
            let unit =
                ColumnUnit::spelled(unit).or_else(|| unit_in(&setting.name)).unwrap_or(ColumnUnit::Second);
            unit.is_time().then(|| value * unit.factor())?
        } else if is_rate {
            1e9 / (value * rate_factor(if unit.is_empty() { &setting.name } else { unit })?)
        } else {
            return None;
        };
        (step.is_finite() && step > 0.0).then_some(step)
    })
}

/// Time of the first sample that the settings give with a unit, ns.
pub(super) fn start(settings: &[FileSetting], decimal_comma: bool) -> Option<f64> {
    settings.iter().find_map(|setting| {
        let name = setting.name.to_lowercase();
        if !name.contains("first sample") && !name.contains("start time") {
            return None;
        }
        let (value, unit) = amount(&setting.value, decimal_comma)?;
        let unit = ColumnUnit::spelled(unit).or_else(|| unit_in(&setting.name))?;
        unit.is_time().then(|| value * unit.factor())
    })
}

/// A number and the word after it.
fn amount(text: &str, decimal_comma: bool) -> Option<(f64, &str)> {
    let text = text.trim();
    let is_of_unit = |char: char| char.is_alphabetic() && char != 'e' && char != 'E';
    let (digits, unit) = text.split_at(text.find(is_of_unit).unwrap_or(text.len()));
    Some((number(digits.as_bytes(), decimal_comma)?, unit.trim()))
}

/// Samples a second that one of the unit is.
fn rate_factor(unit: &str) -> Option<f64> {
    let unit = unit.trim_end_matches([')', ']']).rsplit(['(', '[', ' ']).next()?;
    let prefix = ["Sa/s", "S/s", "Hz", "/s", "1/s"].iter().find_map(|ending| unit.strip_suffix(ending));
    match prefix {
        Some("k") => Some(1e3),
        Some("M") => Some(1e6),
        Some("G") => Some(1e9),
        Some("") | None => Some(1.0),
        Some(_) => None,
    }
}
