//! Samples out of a text file, once its layout is known.

use super::even_steps::at_even_steps;
use super::fast_decimal::{self, SampleNumber};
use super::lines::{self, shown};
use super::{Channel, Delimiter, Detector, Layout, ReadError, ReadProblem, Recording, Role};

/// Rows below which nothing can be told of a trace.
const ROWS: usize = 8;
/// From here on a number stands for "no value" (9.91e37) or overflow (9.9e37) in SCPI-1999, volume 1, 7.2.
const NO_VALUE: f64 = 9.8e37;
/// By what share of the mean step a step of jittered times may differ from it: with a row missing it is a whole one.
const JITTER: f64 = 0.5;
/// Share of a step that the last digit of jittered times may be: coarser ones do not tell when a sample was taken.
const FINE: f64 = 0.05;

/// Reads the samples of the file `name`, which is only quoted in errors.
///
/// The time advances by equal steps, to the digits that the file has of it; the step is the mean one. Samples at times that
/// are jittered, and told finely enough, are those that would have been taken at equal steps.
///
/// # Errors
/// A field that is missing or no number, a mark for overflow, a step that is not like the others: each with its line.
pub fn read(name: &str, bytes: &[u8], layout: &Layout) -> Result<Recording, ReadError> {
    recording(bytes, layout).map_err(|problem| ReadError { file: name.to_owned(), problem })
}

/// A column that is read, and what is read of it.
struct ReadColumn {
    column: usize,
    factor: f64,
    is_time: bool,
    samples: Vec<f64>,
    /// Greatest power of ten of a last digit.
    place: i32,
}

fn recording(bytes: &[u8], layout: &Layout) -> Result<Recording, ReadProblem> {
    let text = lines::text(bytes)?;
    let from = beginning(&text, layout.first_line);
    let row = lines::line_end(&text, from).1 - from;
    let rows_expected = (text.len() - from) / row.max(1) + 8;
    let mut taken = Vec::new();
    for (index, column) in layout.columns.iter().enumerate() {
        let is_time = column.role == Role::Time;
        if column.role != Role::Ignored {
            let samples = Vec::with_capacity(rows_expected);
            taken.push(ReadColumn {
                column: index,
                factor: column.unit.factor(),
                is_time,
                samples,
                place: i32::MIN,
            });
        }
    }
    if taken.iter().all(|column| column.is_time) {
        return Err(ReadProblem::NoChannel);
    }
    rows(&text, from, layout, &mut taken)?;

    let count = taken.first().map_or(0, |column| column.samples.len());
    if count < ROWS {
        return Err(ReadProblem::FewRows { rows: count, needed: ROWS });
    }
    let times = match (taken.iter().find(|column| column.is_time), layout.step) {
        (Some(time), _) => advancing(time, layout.first_line)?,
        (None, Some(step)) if step.is_finite() && step > 0.0 => {
            Times { start: layout.start, step, jittered: None }
        }
        _ => return Err(ReadProblem::NoTime),
    };
    // Other columns of times must be the same times.
    for other in taken.iter().filter(|column| column.is_time).skip(1) {
        if !times.are(&advancing(other, layout.first_line)?, count) {
            return Err(ReadProblem::OtherTimes { column: other.column + 1 });
        }
    }
    let is_unit_told = |time: &ReadColumn| layout.columns.get(time.column).is_some_and(|it| it.unit_stated);
    let mut timing = taken.iter().filter(|column| column.is_time).peekable();
    let is_unit_supposed = match timing.peek() {
        Some(_) => timing.any(|time| !is_unit_told(time)),
        None => layout.is_step_supposed,
    };
    let Times { start: told, step, jittered } = times;
    let uneven = jittered.as_deref().map_or(0.0, |times| unevenness(times, step));
    let channels = taken.into_iter().filter(|column| !column.is_time).filter_map(|column| {
        let described = layout.columns.get(column.column)?;
        let detector = match described.role {
            Role::ChannelA => Some(Detector::A),
            Role::ChannelB => Some(Detector::B),
            Role::Time | Role::Ignored => None,
        };
        let samples = match &jittered {
            Some(times) => at_even_steps(times, &column.samples),
            None => column.samples,
        };
        Some(Channel { detector, label: described.label.clone(), samples })
    });
    Ok(Recording {
        start: told.unwrap_or(0.0),
        is_start_told: told.is_some(),
        is_unit_supposed,
        step,
        uneven,
        channels: channels.collect(),
        settings: layout.settings.clone(),
    })
}

/// Where a line begins, counted from 1; the end of the text for one behind it, however far.
fn beginning(text: &[u8], line: usize) -> usize {
    let mut at = 0;
    for _ in 1..line {
        if at >= text.len() {
            break;
        }
        at = lines::line_end(text, at).1;
    }
    at
}

fn rows(text: &[u8], from: usize, layout: &Layout, taken: &mut [ReadColumn]) -> Result<(), ReadProblem> {
    let mark = layout.decimal.byte();
    let mut line = layout.first_line;
    let mut at = from;
    while at < text.len() {
        let begin = at;
        // Where the field of a column begins, or nothing if the line has ended.
        let (mut column, mut here) = (0, Some(at));
        for wanted in taken.iter_mut() {
            let next = here.filter(|_| wanted.column == column);
            let found = next
                .and_then(|here| plain(text, here, mark, layout.delimiter))
                .or_else(|| field(text, here?, wanted.column - column, mark, layout.delimiter));
            let Some((number, end)) = found else {
                if text
                    .get(begin..)
                    .unwrap_or_default()
                    .iter()
                    .all(|byte| byte.is_ascii_whitespace() || *byte == 26)
                {
                    return even(taken, line);
                }
                return Err(fault(text, begin, line, wanted.column, layout));
            };
            // A nought with a power of ten, 0.00E0, has a last digit that says nothing of the others'.
            if number.value != 0.0 {
                wanted.place = wanted.place.max(number.place);
            }
            wanted.samples.push(number.value * wanted.factor);
            at = end;
            column = wanted.column + 1;
            here = text.get(end).is_some_and(|byte| is_delimiter(*byte, layout.delimiter)).then_some(end + 1);
        }
        at = lines::line_end(text, at).1;
        line += 1;
    }
    Ok(())
}

/// The number that a field begins with, and where the field ends, where there is nothing else in it and it is plainly
/// written: nearly always.
#[inline]
fn plain(text: &[u8], at: usize, mark: u8, delimiter: Delimiter) -> Option<(SampleNumber, usize)> {
    let number = fast_decimal::plain(text, at, mark)?;
    let byte = *text.get(number.end)?;
    let ends = byte == b'\n' || byte == delimiter.byte();
    (ends && number.value.abs() < NO_VALUE).then_some((number, number.end))
}

/// The same of a field that stands some fields further on, however it is written.
#[inline(never)]
fn field(
    text: &[u8],
    from: usize,
    fields: usize,
    mark: u8,
    delimiter: Delimiter,
) -> Option<(SampleNumber, usize)> {
    let at = leap(text, from, fields, delimiter)?;
    let quoted = text.get(at) == Some(&b'"');
    let number = fast_decimal::prefix(text, at + usize::from(quoted), mark)?;
    let end = ends(text, number.end, quoted, delimiter)?;
    (number.value.abs() < NO_VALUE).then_some((number, end))
}

/// All columns have as many rows where the last line held nothing.
fn even(taken: &[ReadColumn], line: usize) -> Result<(), ReadProblem> {
    let rows = taken.first().map_or(0, |column| column.samples.len());
    match taken.iter().find(|column| column.samples.len() != rows) {
        None => Ok(()),
        Some(short) => Err(ReadProblem::MissingField { line, column: short.column + 1 }),
    }
}

/// Where the field begins that stands some fields further on in the same line.
#[inline]
fn leap(text: &[u8], from: usize, fields: usize, delimiter: Delimiter) -> Option<usize> {
    let mut at = from;
    for _ in 0..fields {
        at = skip_space(text, at, delimiter);
        let mut quoted = false;
        loop {
            let byte = *text.get(at)?;
            if byte == b'\n' || byte == b'\r' {
                return None;
            }
            if !quoted && is_delimiter(byte, delimiter) {
                break;
            }
            quoted ^= byte == b'"';
            at += 1;
        }
        at += 1;
    }
    Some(skip_space(text, at, delimiter))
}

#[inline]
fn is_delimiter(byte: u8, delimiter: Delimiter) -> bool {
    byte == delimiter.byte() || (delimiter == Delimiter::Space && byte == b'\t')
}

#[inline]
fn skip_space(text: &[u8], at: usize, delimiter: Delimiter) -> usize {
    let mut at = at;
    while text.get(at).is_some_and(|byte| *byte == b' ' || (*byte == b'\t' && delimiter == Delimiter::Space))
    {
        at += 1;
    }
    at
}

/// The delimiter or the line's end after a number; nothing if there is anything else.
#[inline]
fn ends(text: &[u8], after: usize, quoted: bool, delimiter: Delimiter) -> Option<usize> {
    let mut at = after;
    if quoted {
        at = skip_space(text, at, Delimiter::Semicolon);
        if text.get(at) != Some(&b'"') {
            return None;
        }
        at += 1;
    }
    if delimiter != Delimiter::Space {
        at = skip_space(text, at, delimiter);
    }
    match text.get(at) {
        None | Some(b'\n' | b'\r' | b' ') => Some(at),
        Some(byte) if is_delimiter(*byte, delimiter) => Some(at),
        // White space before the line's end, which is no delimiter here.
        Some(b'\t') => Some(at),
        Some(_) => None,
    }
}

/// What is wrong with the field that was not read.
#[cold]
fn fault(text: &[u8], begin: usize, line: usize, column: usize, layout: &Layout) -> ReadProblem {
    let (end, _) = lines::line_end(text, begin);
    let fields = lines::fields(text.get(begin..end).unwrap_or_default(), layout.delimiter);
    let Some(field) = fields.get(column) else {
        return ReadProblem::MissingField { line, column: column + 1 };
    };
    let (column, found) = (column + 1, shown(field));
    if field.is_empty() {
        return ReadProblem::MissingField { line, column };
    }
    let letters: String =
        found.chars().filter(|char| char.is_alphabetic()).flat_map(char::to_lowercase).collect();
    let none =
        ["nan", "inf", "infinity", "ol", "ovl", "over", "overflow", "ovf", "qnan", "snan", "ind", "nodata"];
    let dashes = found.chars().all(|char| "-–—*#?.".contains(char));
    let overflow = lines::value(field, layout.decimal).is_some_and(|value| value.abs() >= NO_VALUE);
    if none.contains(&letters.as_str()) || dashes || overflow {
        ReadProblem::NoValue { line, column, found }
    } else {
        ReadProblem::NotANumber { line, column, found }
    }
}

/// When samples were taken, ns.
struct Times {
    /// Of the first, where that is told.
    start: Option<f64>,
    /// The mean step.
    step: f64,
    /// The time of each where they do not lie at equal steps.
    jittered: Option<Vec<f64>>,
}

impl Times {
    /// Whether these are the same times, of so many samples, to a hundredth of a step.
    fn are(&self, other: &Self, count: usize) -> bool {
        let apart = match (&self.jittered, &other.jittered) {
            (Some(these), Some(those)) => {
                these.iter().zip(those).map(|(one, other)| (one - other).abs()).fold(0.0, f64::max)
            }
            (None, None) => {
                let apart = other.start.zip(self.start).map_or(0.0, |(other, own)| (other - own).abs());
                apart.max((other.step - self.step).abs() * count as f64)
            }
            _ => f64::INFINITY,
        };
        apart <= 0.01 * self.step
    }
}

/// The times of a column of them.
///
/// At equal steps each may lie off its place by the rounding of its last digit, and by that of the first and the last row.
fn advancing(time: &ReadColumn, first_line: usize) -> Result<Times, ReadProblem> {
    let times = &time.samples;
    let [start, .., last] = times.as_slice() else {
        return Err(ReadProblem::FewRows { rows: times.len(), needed: ROWS });
    };
    let (start, last) = (*start, *last);
    let step = (last - start) / (times.len() - 1) as f64;
    if step.is_nan() || step <= 0.0 {
        return Err(ReadProblem::NoAdvance { first: first_line, last: first_line + times.len() - 1 });
    }
    let digit = libm::exp10(f64::from(time.place.clamp(-300, 300))) * time.factor;
    let allowed = 1.01 * digit + 1e-12 * start.abs().max(last.abs());
    let is_off = |index: f64, found: f64| (found - (start + index * step)).abs() > allowed;
    // Looked through without stopping at the first, several at a time.
    let each = || times.iter().enumerate();
    let any = each().fold(false, |any, (index, found)| any | is_off(index as f64, *found));
    let wrong = if any { each().find(|(index, found)| is_off(*index as f64, **found)) } else { None };
    match wrong {
        None => Ok(Times { start: Some(start), step, jittered: None }),
        Some(_) if are_jittered(times, step, digit) => {
            Ok(Times { start: Some(start), step, jittered: Some(times.clone()) })
        }
        Some((index, _)) => {
            // Where the jump is, not where the mean step first runs away from the times.
            let (index, usual) = jump(times, step, digit).unwrap_or((index, step));
            let expected = times[index.saturating_sub(1)] + usual;
            Err(ReadProblem::Unequal { line: first_line + index, found: times[index], expected, step: usual })
        }
    }
}

/// Whether times that do not lie at equal steps can be measured by: all steps are like the mean one, and told finely enough.
fn are_jittered(times: &[f64], mean: f64, digit: f64) -> bool {
    digit <= FINE * mean && unevenness(times, mean) < JITTER
}

/// By what share of the mean step one of the steps differs from it at most.
fn unevenness(times: &[f64], mean: f64) -> f64 {
    times.windows(2).map(|pair| (pair[1] - pair[0] - mean).abs() / mean).fold(0.0, f64::max)
}

/// The time before which lies the step that is least like the mean one, the first of several, and the usual step; nothing
/// where rounding to that digit would make as much.
fn jump(times: &[f64], mean: f64, digit: f64) -> Option<(usize, f64)> {
    let mut steps: Vec<_> = times.windows(2).map(|pair| pair[1] - pair[0]).collect();
    let off = |step: &f64| (step - mean).abs();
    let most = steps.iter().map(off).fold(0.0, f64::max);
    let before = steps.iter().position(|step| off(step) >= 0.999 * most)?;
    steps.sort_unstable_by(f64::total_cmp);
    (most > 1.01 * digit).then(|| (before + 1, steps[steps.len() / 2]))
}

#[cfg(test)]
#[path = "read_test.rs"]
mod tests;
