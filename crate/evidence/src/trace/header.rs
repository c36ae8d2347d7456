//! What stands above the samples, or in columns beside them: labels, units, settings.

use super::lines::shown;
use super::{ColumnUnit, FileSetting, number};

/// What may stand round a unit.
const BRACKETS: [char; 4] = ['(', ')', '[', ']'];

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

/// A unit alone, in brackets or not.
pub(super) fn bare_unit(field: &str) -> Option<ColumnUnit> {
    ColumnUnit::spelled(field.trim().trim_matches(BRACKETS))
}

/// What a column is called that counts the samples.
const COUNTS: [&str; 9] = ["index", "sample", "sequence", "number", "point", "no.", "#", "n", "i"];

/// Whether a label says that its column counts the samples.
pub(super) fn counts(label: &str) -> bool {
    let label = label.trim().to_lowercase();
    let is_called = |word: &&str| label == **word || (word.len() > 2 && label.starts_with(*word));
    COUNTS.iter().any(is_called) && !label.contains("time")
}

/// Whether a label says that its column holds times.
pub(super) fn says_time(label: &str) -> bool {
    let label = label.trim().to_lowercase();
    matches!(label.split(|char: char| !char.is_alphabetic()).next(), Some("t" | "time" | "times"))
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

/// The settings in rows above and beside the samples: a name and its value, or names side by side above their values.
pub(super) fn settings(rows: &[Vec<&[u8]>], decimal_comma: bool) -> Vec<FileSetting> {
    let mut settings = Vec::new();
    let mut rest = rows;
    while let [row, below @ ..] = rest {
        if let Some((found, taken)) = settings_below(row, below, decimal_comma) {
            settings.extend(found);
            rest = below.get(taken..).unwrap_or_default();
        } else {
            settings.extend(setting(row));
            rest = below;
        }
    }
    settings
}

/// The settings that a row names, each with its value below, or with its unit below and its value below that; and how many
/// rows these take.
fn settings_below(
    row: &[&[u8]],
    below: &[Vec<&[u8]>],
    decimal_comma: bool,
) -> Option<(Vec<FileSetting>, usize)> {
    let is_amount = |text: &String| amount(text, decimal_comma).is_some();
    let named: Vec<_> = row.iter().enumerate().filter(|(_, field)| !field.is_empty()).collect();
    let names: Vec<_> = named.iter().map(|(_, field)| shown(field)).collect();
    let is_name = |text: &String| {
        text.chars().any(char::is_alphabetic) && !text.contains([':', '=']) && !is_amount(text)
    };
    if names.is_empty() || !names.iter().all(is_name) {
        return None;
    }
    let under = |at: usize| -> Option<Vec<String>> {
        let row = below.get(at)?;
        named.iter().map(|(column, _)| row.get(*column).map(|field| shown(field))).collect()
    };
    let first = under(0)?;
    let has_units = first.iter().all(|text| bare_unit(text).is_some());
    let (values, units) = if has_units { (under(1)?, first) } else { (first, Vec::new()) };
    if !values.iter().all(is_amount) {
        return None;
    }
    let with_unit = |(at, value): (usize, String)| match units.get(at) {
        Some(unit) => format!("{value} {}", unit.trim_matches(BRACKETS)),
        None => value,
    };
    let values = values.into_iter().enumerate().map(with_unit);
    let settings = names.into_iter().zip(values).map(|(name, value)| FileSetting { name, value });
    Some((settings.collect(), 1 + usize::from(has_units)))
}

/// What a unit may be said to be of, where a setting gives it.
const AXES: [&str; 11] =
    ["x", "y", "t", "time", "horizontal", "vertical", "voltage", "amplitude", "axis", "of", "the"];

/// Whether a setting gives the unit of the times or of the levels, as `Horizontal units`, `Y unit` and `Unit (time)` do.
pub(super) fn is_unit(setting: &FileSetting) -> bool {
    let name = setting.name.to_lowercase();
    let Some((before, after)) = name.split_once("unit") else { return false };
    let between_words = |char: char| !char.is_alphanumeric();
    let rest = after.strip_prefix('s').unwrap_or(after);
    let mut words = before.split(between_words).chain(rest.split(between_words));
    words.all(|word| word.is_empty() || AXES.contains(&word))
}

/// The one unit of those wanted that the settings give to the samples; none where they give two.
pub(super) fn unit_given(
    settings: &[FileSetting],
    is_wanted: impl Fn(ColumnUnit) -> bool,
) -> Option<ColumnUnit> {
    let given = settings.iter().filter(|setting| is_unit(setting));
    let mut units = given
        .flat_map(|setting| setting.value.split([' ', ',', ';']).filter_map(bare_unit))
        .filter(|unit| is_wanted(*unit));
    let first = units.next()?;
    units.all(|unit| unit == first).then_some(first)
}

/// Whether a setting is of the levels: those have intervals and increments too.
fn is_of_levels(name: &str) -> bool {
    ["y", "vertical", "volt"].iter().any(|word| name.starts_with(word))
}

/// Time from sample to sample that the settings give, ns: as an interval or as a rate; and whether its unit was supposed, which
/// is the second.
pub(super) fn step(settings: &[FileSetting], decimal_comma: bool) -> Option<(f64, bool)> {
    settings.iter().find_map(|setting| {
        let name = setting.name.to_lowercase();
        let is_step =
            ["interval", "increment", "xinc", "x inc", "time step", "sampling period", "sample period"]
                .iter()
                .any(|word| name.contains(word))
                || matches!(name.split([' ', '(', '[', '/', '_']).next(), Some("dt" | "δt"));
        let (value, unit) = amount(&setting.value, decimal_comma).filter(|_| !is_of_levels(&name))?;
        // Pulses have a rate too, and screens.
        let is_of_samples = name.contains("sampl")
            || name.contains("acquisition")
            || unit.ends_with("S/s")
            || unit.ends_with("Sa/s");
        let is_rate = is_of_samples && (name.contains("rate") || name.contains("frequency"));
        let (step, is_supposed) = if is_step {
            let stated = ColumnUnit::spelled(unit).or_else(|| unit_in(&setting.name));
            let unit = stated.unwrap_or(ColumnUnit::Second);
            (unit.is_time().then(|| value * unit.factor())?, stated.is_none())
        } else if is_rate {
            let (factor, is_supposed) = rate_factor(if unit.is_empty() { &setting.name } else { unit })?;
            (1e9 / (value * factor), is_supposed)
        } else {
            return None;
        };
        (step.is_finite() && step > 0.0).then_some((step, is_supposed))
    })
}

/// What the time of the first sample is called beside an increment; without a unit it is in seconds, as that is.
const STARTS: [&str; 8] = ["start", "x start", "xstart", "x zero", "xzero", "x origin", "xorigin", "x0"];

/// Time of the first sample that the settings give, ns. What may also be a time of day or a number needs a unit.
pub(super) fn start(settings: &[FileSetting], decimal_comma: bool) -> Option<f64> {
    settings.iter().find_map(|setting| {
        let name = setting.name.to_lowercase();
        let bare = name.split(['(', '[', '/']).next().unwrap_or_default().trim();
        let supposed = STARTS.contains(&bare).then_some(ColumnUnit::Second);
        if supposed.is_none() && !name.contains("first sample") && !name.contains("start time") {
            return None;
        }
        let (value, unit) = amount(&setting.value, decimal_comma)?;
        let unit = ColumnUnit::spelled(unit).or_else(|| unit_in(&setting.name)).or(supposed)?;
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

/// Samples a second that one of the unit is, and whether that is supposed, since none is known of it.
fn rate_factor(unit: &str) -> Option<(f64, bool)> {
    let unit = unit.trim_end_matches([')', ']']).rsplit(['(', '[', ' ']).next()?;
    let prefix = ["Sa/s", "S/s", "Hz", "/s", "1/s"].iter().find_map(|ending| unit.strip_suffix(ending));
    match prefix {
        Some("k") => Some((1e3, false)),
        Some("M") => Some((1e6, false)),
        Some("G") => Some((1e9, false)),
        Some("") => Some((1.0, false)),
        None => Some((1.0, true)),
        Some(_) => None,
    }
}
