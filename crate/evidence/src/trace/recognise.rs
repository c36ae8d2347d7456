//! Recognising how a file is set out, from its numbers alone: neither its ending nor its maker is asked.
//!
//! Some rows from the middle of the file, where there is nothing but samples, are read with every delimiter and decimal
//! mark; the pair that makes most columns of numbers and fewest of anything else is taken. The first line of samples is
//! the first from which rows go on like those. The column that grows by equal steps is the time.

use super::lines::{fields, line_end, lines, shown, text, value};
use super::{
    ColumnUnit, DecimalMark, Delimiter, FileSetting, Layout, ReadError, ReadProblem, Role, TraceColumn,
    fast_decimal, header,
};

/// Rows looked at in the middle.
const PROBED: usize = 40;
/// Rows that must go on like those in the middle for a first line of samples.
const FOLLOWING: usize = 8;
/// Lines above or beside the samples that are looked through for settings.
const SETTINGS: usize = 400;

/// How the numbers of the file `name` are set out. The name is only quoted in errors.
///
/// # Errors
/// Empty and binary files, and texts without columns of numbers.
///
/// # Example
/// ```
/// use slope_evidence::trace::{recognise, ColumnUnit, Delimiter, Role};
/// let file = b"t (ns);A/mV\r\n0,0;1,5\r\n0,2;1,75\r\n0,4;2,5\r\n0,6;2,25\r\n";
/// let layout = recognise("run 1.txt", file)?;
/// assert_eq!((layout.delimiter, layout.first_line), (Delimiter::Semicolon, 2));
/// assert_eq!((layout.columns[0].role, layout.columns[0].unit), (Role::Time, ColumnUnit::Nanosecond));
/// assert_eq!((layout.columns[1].role, layout.columns[1].unit), (Role::ChannelA, ColumnUnit::Millivolt));
/// # Ok::<(), slope_evidence::trace::ReadError>(())
/// ```
pub fn recognise(name: &str, bytes: &[u8]) -> Result<Layout, ReadError> {
    recognise_by(name, bytes, None, None)
}

/// How the numbers of a file are set out where a person knows the delimiter, or the decimal mark, or both.
///
/// # Errors
/// As [`recognise`], and where there are no columns by them.
pub fn recognise_by(
    name: &str,
    bytes: &[u8],
    delimiter: Option<Delimiter>,
    decimal: Option<DecimalMark>,
) -> Result<Layout, ReadError> {
    layout(bytes, delimiter, decimal).map_err(|problem| ReadError { file: name.to_owned(), problem })
}

/// The fields of the first rows of samples, so many at most, as they stand in the file.
pub fn first_rows(bytes: &[u8], layout: &Layout, most: usize) -> Vec<Vec<String>> {
    let Ok(text) = text(bytes) else { return Vec::new() };
    let rows = lines(&text).skip(layout.first_line.saturating_sub(1)).take(most);
    rows.map(|row| fields(row, layout.delimiter).into_iter().map(shown).collect()).collect()
}

fn layout(
    bytes: &[u8],
    delimiter: Option<Delimiter>,
    decimal: Option<DecimalMark>,
) -> Result<Layout, ReadProblem> {
    let text = text(bytes)?;
    let probed = middle(&text);
    let (delimiter, decimal) = fitting(&probed, delimiter, decimal).ok_or(ReadProblem::NoColumns)?;
    let numeric = SplitRows::of(&probed, delimiter, decimal).numeric;
    let first = first_row(&text, delimiter, decimal, &numeric).ok_or(ReadProblem::NoColumns)?;

    let last = numeric.iter().rposition(|is| *is).map_or(0, |last| last + 1);
    let above = Above::of(&text, first, delimiter, decimal, &numeric);
    let (mut columns, counts) = columns(&probed, delimiter, decimal, &numeric, &above);
    columns.truncate(last);
    let comma = decimal == DecimalMark::Comma;
    let (step, start) = (header::step(&above.settings, comma), header::start(&above.settings, comma));
    drop_running_number(&mut columns, step.is_some() && counts);
    let timed = columns.iter().any(|column| column.role == Role::Time);
    Ok(Layout {
        delimiter,
        decimal,
        first_line: first + 1,
        columns,
        step: if timed { None } else { step },
        start: if timed { None } else { start },
        settings: above.settings,
    })
}

/// Consecutive lines from the middle, or from the end of a short file.
fn middle(text: &[u8]) -> Vec<&[u8]> {
    let text = text.trim_ascii_end();
    let mut from = text.len() / 2;
    if text.len() > 4_000 {
        from = line_end(text, from).1;
    } else {
        let count = lines(text).count();
        return lines(text)
            .skip(if count > 6 { count / 2 } else { count.saturating_sub(3) })
            .take(PROBED)
            .collect();
    }
    lines(text.get(from..).unwrap_or_default()).take(PROBED).collect()
}

/// What some rows hold under one delimiter and decimal mark.
struct SplitRows {
    /// For each column, whether every row has a number there.
    numeric: Vec<bool>,
    /// Columns of numbers less columns of anything else; nothing where rows differ in length.
    score: i32,
}

impl SplitRows {
    fn of(rows: &[&[u8]], delimiter: Delimiter, decimal: DecimalMark) -> Self {
        let rows: Vec<_> = rows.iter().map(|row| fields(row, delimiter)).collect();
        let width = rows.iter().map(Vec::len).min().unwrap_or(0);
        let holds = |column: usize, test: &dyn Fn(&[u8]) -> bool| {
            rows.iter().all(|row| row.get(column).is_some_and(|field| test(field)))
        };
        let numeric: Vec<_> =
            (0..width).map(|c| holds(c, &|field| value(field, decimal).is_some())).collect();
        let empty = |column: usize| holds(column, &|field| field.is_empty());
        let texts = (0..width).filter(|c| !numeric[*c] && !empty(*c)).count();
        let numbers = numeric.iter().filter(|is| **is).count();
        let even = rows.iter().all(|row| row.len() == width);
        let score = i32::try_from(numbers).unwrap_or(0) - i32::try_from(texts).unwrap_or(0);
        // `0,0123` down a file: no column of whole numbers begins with noughts, decimals do.
        let cut = delimiter == Delimiter::Comma
            && rows.iter().flatten().all(|field| field.iter().all(|byte| b"+-0123456789 ".contains(byte)))
            && rows.iter().flatten().any(|field| field.len() > 1 && field.first() == Some(&b'0'));
        Self { numeric, score: if even && numbers > 0 && !cut { score } else { -1 } }
    }
}

/// The delimiter and the decimal mark that fit best, of those that are not known.
fn fitting(
    rows: &[&[u8]],
    delimiter: Option<Delimiter>,
    decimal: Option<DecimalMark>,
) -> Option<(Delimiter, DecimalMark)> {
    let pairs = [DecimalMark::Point, DecimalMark::Comma]
        .into_iter()
        .flat_map(|decimal| Delimiter::ALL.into_iter().map(move |delimiter| (delimiter, decimal)))
        .filter(|pair| {
            delimiter.is_none_or(|known| known == pair.0) && decimal.is_none_or(|known| known == pair.1)
        });
    let mut best = None;
    for pair in pairs {
        let score = SplitRows::of(rows, pair.0, pair.1).score;
        if score > best.map_or(0, |(score, _)| score) {
            best = Some((score, pair));
        }
    }
    best.map(|(_, pair)| pair)
}

/// The first line, counted from 0, from which rows go on as in the middle.
fn first_row(text: &[u8], delimiter: Delimiter, decimal: DecimalMark, numeric: &[bool]) -> Option<usize> {
    let mut run = 0;
    let mut count = 0;
    for line in lines(text) {
        let row = fields(line, delimiter);
        let goes_on = numeric
            .iter()
            .enumerate()
            .all(|(column, is)| !is || row.get(column).is_some_and(|field| value(field, decimal).is_some()));
        run = if goes_on { run + 1 } else { 0 };
        count += 1;
        if run > FOLLOWING {
            break;
        }
    }
    (run > 0).then(|| count - run)
}

/// What stands above and beside the samples.
struct Above {
    labels: Vec<String>,
    units: Vec<Option<ColumnUnit>>,
    settings: Vec<FileSetting>,
}

impl Above {
    fn of(text: &[u8], first: usize, delimiter: Delimiter, decimal: DecimalMark, numeric: &[bool]) -> Self {
        let mut labels = vec![String::new(); numeric.len()];
        let mut units = vec![None; numeric.len()];
        let mut settings = Vec::new();
        // Columns before the first of numbers are beside the samples.
        let beside = numeric.iter().position(|is| *is).unwrap_or(0);
        let looked_at = if beside > 0 { first + SETTINGS } else { first };
        let mut rows: Vec<_> = lines(text).take(looked_at).map(|line| fields(line, delimiter)).collect();
        for field in rows.iter_mut().take(first).filter_map(|row| row.first_mut()) {
            *field = field.strip_prefix(b"#").unwrap_or(field).trim_ascii();
        }
        // Upwards from the samples: a row of units, and a row of labels.
        let mut below = first;
        for units_looked_for in [true, false] {
            let Some(index) =
                rows.iter().take(below).rposition(|row| row.iter().any(|field| !field.is_empty()))
            else {
                break;
            };
            let row = &rows[index];
            let titles: Vec<_> =
                row.iter().zip(numeric).filter(|(_, is)| **is).map(|(field, _)| *field).collect();
            let is_setting = row.len() == 1 && header::setting(row).is_some();
            let fits = !is_setting
                && titles.len() == numeric.iter().filter(|is| **is).count()
                && titles.iter().all(|field| !field.is_empty() && value(field, decimal).is_none());
            let of_unit: Vec<_> =
                row.iter().take(numeric.len()).map(|field| bare_unit(&shown(field))).collect();
            let all_units = titles.iter().all(|field| is_unit_or_none(field));
            if units_looked_for && fits && all_units {
                units[..of_unit.len()].copy_from_slice(&of_unit);
            } else if fits {
                for (label, field) in labels.iter_mut().zip(row) {
                    *label = shown(field);
                }
            } else {
                continue;
            }
            below = index;
            rows[index].truncate(beside);
            if !units_looked_for || labels.iter().any(|label| !label.is_empty()) {
                break;
            }
        }
        for (index, mut row) in rows.into_iter().enumerate() {
            if index >= first {
                row.truncate(beside);
            }
            settings.extend(header::setting(&row));
        }
        Self { labels, units, settings }
    }
}

/// A unit alone, in brackets or not.
fn bare_unit(field: &str) -> Option<ColumnUnit> {
    ColumnUnit::spelled(field.trim().trim_matches(['(', ')', '[', ']']))
}

/// A unit, or a dash for none.
fn is_unit_or_none(field: &[u8]) -> bool {
    field == b"-" || bare_unit(&shown(field)).is_some()
}

/// The columns, and whether that of the time merely counts.
fn columns(
    rows: &[&[u8]],
    delimiter: Delimiter,
    decimal: DecimalMark,
    numeric: &[bool],
    above: &Above,
) -> (Vec<TraceColumn>, bool) {
    let rows: Vec<_> = rows.iter().map(|row| fields(row, delimiter)).collect();
    let stated = |column: usize| above.units[column].or_else(|| header::unit_in(&above.labels[column]));
    let steps: Vec<_> = numeric
        .iter()
        .enumerate()
        .map(|(column, is)| if *is { Progress::of(&rows, column, decimal) } else { None })
        .collect();
    let is_stated_time = |column: usize| stated(column).is_some_and(ColumnUnit::is_time);
    // Times by their unit are the times, even or not: reading then says which step is not like the others.
    let mean_steps: Vec<_> = (0..numeric.len())
        .map(|column| mean_step(&rows, column, decimal).filter(|_| is_stated_time(column)))
        .collect();
    let uneven = || mean_steps.iter().position(Option::is_some);
    let time = even_time(&steps, is_stated_time).or_else(uneven).or_else(|| any_even(&steps));
    let time_unit = time.map_or(ColumnUnit::One, |time| {
        let step = steps[time].as_ref().map_or(1.0, |progress| progress.step);
        let supposed = if step <= 1e-6 { ColumnUnit::Second } else { ColumnUnit::Nanosecond };
        stated(time).filter(|unit| unit.is_time()).unwrap_or(supposed)
    });
    let is_time_too = |index: usize| {
        let counts = is_running(steps[index].as_ref()) && !stated(index).is_some_and(ColumnUnit::is_time);
        !counts && same_step(time.and_then(|time| steps[time].as_ref()), steps[index].as_ref())
    };
    // A time of its own, of which some steps are not like the others.
    let is_uneven_time = |index: usize| {
        let both = time.and_then(|time| mean_steps[time]).zip(mean_steps[index]);
        steps[index].is_none() && both.is_some_and(|(one, other)| (0.1..10.0).contains(&(other / one)))
    };
    let mut channels = Vec::new();
    let mut columns: Vec<_> = (0..numeric.len())
        .map(|index| {
            let unit = stated(index);
            let label = above.labels[index].clone();
            let mut column = TraceColumn {
                role: Role::Ignored,
                unit: ColumnUnit::One,
                unit_stated: unit.is_some(),
                label,
            };
            if Some(index) == time {
                column.role = Role::Time;
                column.unit = time_unit;
            } else if is_time_too(index) || is_uneven_time(index) {
                // Each channel with its own times.
                column.role = Role::Time;
                column.unit = unit.filter(|unit| unit.is_time()).unwrap_or(time_unit);
            } else if numeric[index]
                && !unit.is_some_and(ColumnUnit::is_time)
                && !is_running(steps[index].as_ref())
            {
                channels.push(index);
                column.unit = unit.unwrap_or(ColumnUnit::Volt);
            }
            column
        })
        .collect();
    let mut order = [Role::ChannelA, Role::ChannelB];
    let second =
        |place: usize| channels.get(place).and_then(|index| header::is_second(&above.labels[*index]));
    if second(0) == Some(true) && second(1) != Some(true) {
        order.reverse();
    }
    for (index, role) in channels.into_iter().zip(order) {
        columns[index].role = role;
    }
    let counts = time.is_some_and(|index| is_running(steps[index].as_ref()));
    (columns, counts)
}

/// A column that grows by equal steps.
struct Progress {
    step: f64,
    /// Whole numbers that grow by one.
    counts: bool,
}

impl Progress {
    fn of(rows: &[Vec<&[u8]>], column: usize, decimal: DecimalMark) -> Option<Self> {
        let numbers: Vec<_> = rows
            .iter()
            .map(|row| fast_decimal::prefix(row.get(column)?, 0, decimal.byte()))
            .collect::<Option<_>>()?;
        let [first, .., last] = numbers.as_slice() else { return None };
        // A nought with a power of ten, 0.00E0, has a last digit that says nothing of the others'.
        let place = numbers.iter().filter(|number| number.value != 0.0).map(|number| number.place).max()?;
        let digit = libm::exp10(f64::from(place.clamp(-300, 300)));
        let step = (last.value - first.value) / (numbers.len() - 1) as f64;
        let even = numbers.iter().enumerate().all(|(index, number)| {
            let off = number.value - first.value - index as f64 * step;
            off.abs() <= 1.01 * digit + 1e-12 * number.value.abs()
        });
        let grows = step > 0.0 && last.value - first.value > 4.0 * digit.min(step * 0.3);
        (even && grows).then_some(Self { step, counts: place >= 0 && step == 1.0 })
    }
}

fn same_step(one: Option<&Progress>, other: Option<&Progress>) -> bool {
    let both = one.zip(other);
    both.is_some_and(|(one, other)| (one.step - other.step).abs() <= 0.01 * one.step)
}

fn is_running(progress: Option<&Progress>) -> bool {
    progress.is_some_and(|progress| progress.counts)
}

/// The column that grows evenly and has a unit of time.
fn even_time(steps: &[Option<Progress>], has_unit: impl Fn(usize) -> bool) -> Option<usize> {
    (0..steps.len()).find(|column| steps[*column].is_some() && has_unit(*column))
}

/// Of the columns that grow evenly: one that does not merely count, else the first.
fn any_even(steps: &[Option<Progress>]) -> Option<usize> {
    let even = || steps.iter().enumerate().filter_map(|(column, step)| Some((column, step.as_ref()?)));
    even().find(|(_, step)| !step.counts).or_else(|| even().next()).map(|(column, _)| column)
}

/// The mean step of a column of numbers from its first row to its last; nothing where they are the same.
fn mean_step(rows: &[Vec<&[u8]>], column: usize, decimal: DecimalMark) -> Option<f64> {
    let number = |row: &Vec<&[u8]>| value(row.get(column)?, decimal);
    let step = (number(rows.last()?)? - number(rows.first()?)?) / (rows.len() - 1) as f64;
    (step.is_finite() && step != 0.0).then_some(step)
}

/// A column that merely counts is not the time if its label says so, or if a setting gives the step.
fn drop_running_number(columns: &mut [TraceColumn], counts_beside_step: bool) {
    let Some(time) = columns.iter_mut().find(|column| column.role == Role::Time) else { return };
    let label = time.label.to_lowercase();
    let counts = ["index", "sample", "no.", "number", "#", "point", "n", "i"]
        .iter()
        .any(|word| label == *word || (word.len() > 2 && label.starts_with(word)));
    if !time.unit_stated && (counts || counts_beside_step) {
        time.role = Role::Ignored;
        time.unit = ColumnUnit::One;
    }
}

#[cfg(test)]
#[path = "recognise_test.rs"]
mod tests;
