//! Recognising how a file is set out, from its numbers alone: neither its ending nor its maker is asked.
//!
//! Some rows from the middle of the file, where there is nothing but samples, are read with every delimiter and decimal
//! mark; the pair that makes most columns of numbers and fewest of anything else is taken. The first line of samples is
//! the first from which rows go on like those. The column that grows by equal steps is the time, or one whose unit or label
//! says so; one that merely counts is not, unless a unit of time is stated for it: without a time column the settings give
//! the step.

use super::lines::{fields, line_end, lines, shown, text, value};
use super::{
    ColumnUnit, DecimalMark, Delimiter, FileSetting, Layout, ReadError, ReadProblem, Role, TraceColumn,
    fast_decimal, header,
};

/// Rows looked at in the middle.
const PROBED: usize = 40;
/// Rows that must go on like those in the middle for a first line of samples.
const FOLLOWING: usize = 8;
/// By what fraction steps may differ that are the same.
const SAME_STEP: f64 = 0.01;
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
    let split = SplitRows::of(&probed, delimiter, decimal);
    let numeric = &split.numeric;
    let first = first_row(&text, delimiter, decimal, numeric).ok_or(ReadProblem::NoColumns)?;

    let last = numeric.iter().rposition(|is| *is).map_or(0, |last| last + 1);
    let above = Above::of(&text, first, delimiter, decimal, &split);
    let comma = decimal == DecimalMark::Comma;
    let (told, start) = (header::step(&above.settings, comma), header::start(&above.settings, comma));
    let signs = ColumnSigns::of(&probed, delimiter, decimal, numeric, &above, told.map(|(step, _)| step));
    let mut columns = signs.columns();
    columns.truncate(last);
    let timed = columns.iter().any(|column| column.role == Role::Time);
    let told = told.filter(|_| !timed && !(0..last).any(|column| signs.leaps(column)));
    Ok(Layout {
        delimiter,
        decimal,
        first_line: first + 1,
        columns,
        step: told.map(|(step, _)| step),
        is_step_supposed: told.is_some_and(|(_, is_supposed)| is_supposed),
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
    /// For each column, whether any row has anything there.
    held: Vec<bool>,
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
        let held: Vec<_> = (0..width).map(|c| !holds(c, &|field| field.is_empty())).collect();
        let texts = (0..width).filter(|c| !numeric[*c] && held[*c]).count();
        let numbers = numeric.iter().filter(|is| **is).count();
        let even = rows.iter().all(|row| row.len() == width);
        let score = i32::try_from(numbers).unwrap_or(0) - i32::try_from(texts).unwrap_or(0);
        // `0,0123` down a file: no column of whole numbers begins with noughts, decimals do.
        let cut = delimiter == Delimiter::Comma
            && rows.iter().flatten().all(|field| field.iter().all(|byte| b"+-0123456789 ".contains(byte)))
            && rows.iter().flatten().any(|field| field.len() > 1 && field.first() == Some(&b'0'));
        Self { numeric, held, score: if even && numbers > 0 && !cut { score } else { -1 } }
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
    fn of(text: &[u8], first: usize, delimiter: Delimiter, decimal: DecimalMark, split: &SplitRows) -> Self {
        let SplitRows { numeric, held, .. } = split;
        let labels = vec![String::new(); numeric.len()];
        let mut above = Self { labels, units: vec![None; numeric.len()], settings: Vec::new() };
        // Beside the samples are the columns before the first of numbers, and those that hold nothing further down.
        let before = numeric.iter().position(|is| *is).unwrap_or(0);
        let is_beside = |column: usize| column < before || !held.get(column).is_some_and(|is| *is);
        let begin = lines(text).nth(first).map(|line| fields(line, delimiter)).unwrap_or_default();
        let goes_on = before > 0
            || begin.iter().enumerate().any(|(column, field)| is_beside(column) && !field.is_empty());
        let looked_at = if goes_on { first + SETTINGS } else { first };
        let mut rows: Vec<_> = lines(text).take(looked_at).map(|line| fields(line, delimiter)).collect();
        for field in rows.iter_mut().take(first).filter_map(|row| row.first_mut()) {
            *field = field.strip_prefix(b"#").unwrap_or(field).trim_ascii();
        }
        for title in above.take_titles(&rows[..first.min(rows.len())], decimal, numeric) {
            keep(&mut rows[title], is_beside);
        }
        for row in rows.iter_mut().skip(first) {
            keep(row, is_beside);
        }
        above.settings = header::settings(&rows, decimal == DecimalMark::Comma);
        above
    }

    /// Takes units and labels from the rows above the samples: upwards from these a row of units, and a row of labels.
    /// Gives the places of both, of those that are there.
    fn take_titles(&mut self, rows: &[Vec<&[u8]>], decimal: DecimalMark, numeric: &[bool]) -> Vec<usize> {
        let mut taken = Vec::new();
        let mut below = rows.len();
        for units_looked_for in [true, false] {
            let is_full = |row: &Vec<&[u8]>| row.iter().any(|field| !field.is_empty());
            let Some(index) = rows.iter().take(below).rposition(is_full) else { break };
            let row = &rows[index];
            let Some(over) = over_numbers(row, numeric) else { continue };
            let are_units = units_looked_for && are_units(&over);
            if are_units {
                for (unit, field) in self.units.iter_mut().zip(row) {
                    *unit = header::bare_unit(&shown(field));
                }
            } else if are_labels(row, &over, decimal) {
                for (label, field) in self.labels.iter_mut().zip(row) {
                    *label = shown(field);
                }
            } else {
                continue;
            }
            taken.push(index);
            below = index;
            // Above the labels nothing is a unit.
            if !are_units {
                break;
            }
        }
        taken
    }
}

/// Empties the fields of a row but those of the columns that are kept.
fn keep(row: &mut [&[u8]], is_kept: impl Fn(usize) -> bool) {
    for (column, field) in row.iter_mut().enumerate() {
        if !is_kept(column) {
            *field = b"";
        }
    }
}

/// What a row has over the columns of numbers; none where it ends before the last of them.
fn over_numbers<'a>(row: &[&'a [u8]], numeric: &[bool]) -> Option<Vec<&'a [u8]>> {
    let over: Vec<_> = row.iter().zip(numeric).filter(|(_, is)| **is).map(|(field, _)| *field).collect();
    (over.len() == numeric.iter().filter(|is| **is).count()).then_some(over)
}

/// Whether these are titles of columns, not the last of the settings.
fn are_labels(row: &[&[u8]], over: &[&[u8]], decimal: DecimalMark) -> bool {
    let is_title = |field: &&[u8]| !field.is_empty() && value(field, decimal).is_none();
    let is_setting = header::setting(row).is_some_and(|setting| row.len() == 1 || header::is_unit(&setting));
    !is_setting && over.iter().all(is_title)
}

/// Whether these are units of columns. A column that counts has none: a dash, nothing, or a word for what it counts.
fn are_units(over: &[&[u8]]) -> bool {
    let is_unit = |field: &&[u8]| *field == b"-" || header::bare_unit(&shown(field)).is_some();
    let is_none = |field: &&[u8]| field.is_empty() || header::counts(&shown(field));
    over.iter().any(is_unit) && over.iter().all(|field| is_unit(field) || is_none(field))
}

/// What tells of each column what it is.
struct ColumnSigns<'a> {
    numeric: &'a [bool],
    above: &'a Above,
    /// Time from sample to sample as the settings have it, ns.
    stated_step: Option<f64>,
    /// How it grows, where it does by equal steps.
    progress: Vec<Option<Progress>>,
    /// The mean step, where its unit or its label says that it holds times.
    mean_steps: Vec<Option<f64>>,
}

impl<'a> ColumnSigns<'a> {
    fn of(
        rows: &[&[u8]],
        delimiter: Delimiter,
        decimal: DecimalMark,
        numeric: &'a [bool],
        above: &'a Above,
        stated_step: Option<f64>,
    ) -> Self {
        let rows: Vec<_> = rows.iter().map(|row| fields(row, delimiter)).collect();
        let mut signs = Self { numeric, above, stated_step, progress: Vec::new(), mean_steps: Vec::new() };
        for (column, is_numeric) in numeric.iter().enumerate() {
            let progress = if *is_numeric { Progress::of(&rows, column, decimal) } else { None };
            // A number tells apart channels that are called T1 and T2.
            let label = &above.labels[column];
            let is_labelled = header::says_time(label) && !label.contains(|char: char| char.is_ascii_digit());
            let says_time = signs.is_stated_time(column) || is_labelled;
            let mean_step = mean_step(&rows, column, decimal).filter(|_| says_time);
            signs.progress.push(progress);
            signs.mean_steps.push(mean_step);
        }
        signs
    }

    /// The unit that stands above a column, or that the settings give to the times where its label says that it is these.
    fn stated(&self, column: usize) -> Option<ColumnUnit> {
        let label = &self.above.labels[column];
        self.above.units[column]
            .or_else(|| header::unit_in(label))
            .or_else(|| self.given_to_times().filter(|_| header::says_time(label)))
    }

    fn given_to_times(&self) -> Option<ColumnUnit> {
        header::unit_given(&self.above.settings, ColumnUnit::is_time)
    }

    fn given_to_levels(&self) -> Option<ColumnUnit> {
        header::unit_given(&self.above.settings, |unit| !unit.is_time())
    }

    fn is_stated_time(&self, column: usize) -> bool {
        self.stated(column).is_some_and(ColumnUnit::is_time)
    }

    fn is_even(&self, column: usize) -> bool {
        self.progress[column].is_some()
    }

    /// Whether a column counts the samples: by its numbers, or by its label if it grows evenly.
    fn counts(&self, column: usize) -> bool {
        let progress = self.progress[column].as_ref();
        let by_numbers = progress.is_some_and(|progress| progress.whole && progress.step == 1.0);
        let by_label = self.is_even(column) && header::counts(&self.above.labels[column]);
        (by_numbers || by_label) && !self.is_stated_time(column) || self.leaps(column)
    }

    /// Whether a column holds whole numbers that grow by more than one, and the stated step is theirs in no unit: it counts
    /// samples of which some were left out, and that step may be one of all of them as well as one of those that are there.
    fn leaps(&self, column: usize) -> bool {
        let Some((progress, stated)) = self.progress[column].as_ref().zip(self.stated_step) else {
            return false;
        };
        let is_stated =
            |unit: &ColumnUnit| (progress.step * unit.factor() - stated).abs() <= SAME_STEP * stated;
        let leaps = progress.whole && progress.step != 1.0 && !self.is_stated_time(column);
        leaps && !ColumnUnit::TIMES.iter().any(is_stated)
    }

    /// The column of the times: one that grows evenly and has a unit of time; else one that has such a unit or is labelled as
    /// the time, even or not (reading then says which step is not like the others); else one that grows evenly. One that
    /// merely counts is not.
    fn time(&self) -> Option<usize> {
        let first = |is: &dyn Fn(usize) -> bool| (0..self.numeric.len()).find(|column| is(*column));
        first(&|column| self.is_even(column) && self.is_stated_time(column))
            .or_else(|| first(&|column| self.mean_steps[column].is_some() && !self.counts(column)))
            .or_else(|| first(&|column| self.is_even(column) && !self.counts(column)))
    }

    /// The unit of a column of times, if it is stated: with the column, among the settings, or by the step that these have.
    fn stated_of_time(&self, column: usize) -> Option<ColumnUnit> {
        let by_step = || {
            let (step, stated) = (self.progress[column].as_ref()?.step, self.stated_step?);
            let is_stated = |unit: &ColumnUnit| (step * unit.factor() - stated).abs() <= SAME_STEP * stated;
            // A bare interval is taken to be in seconds; where the times have the same number, that tells nothing of them.
            let tells = |unit: &ColumnUnit| {
                *unit != ColumnUnit::Second || self.supposed_of_time(column) == ColumnUnit::Second
            };
            ColumnUnit::TIMES.into_iter().find(is_stated).filter(tells)
        };
        let own = self.stated(column).filter(|unit| unit.is_time());
        own.or_else(|| self.given_to_times()).or_else(by_step)
    }

    /// What such steps are likely told in.
    fn supposed_of_time(&self, time: usize) -> ColumnUnit {
        let even = self.progress[time].as_ref().map(|progress| progress.step);
        let step = even.or(self.mean_steps[time]).unwrap_or(1.0);
        if step <= 1e-6 { ColumnUnit::Second } else { ColumnUnit::Nanosecond }
    }

    /// Whether a column is that of the times, or another channel's own: with the same step, or of a like one from which
    /// some steps are off, or with a unit of time, so that reading says where it is not the same.
    fn is_time(&self, column: usize, time: usize) -> bool {
        let even =
            !self.counts(column) && same_step(self.progress[time].as_ref(), self.progress[column].as_ref());
        let steps = self.mean_steps[time].zip(self.mean_steps[column]);
        let like = steps.is_some_and(|(one, other)| (0.1..10.0).contains(&(other / one)));
        let stated = self.is_even(column) && self.is_stated_time(column);
        column == time || even || stated || (self.progress[column].is_none() && like)
    }

    /// Whether a column that is no time holds samples.
    fn is_channel(&self, column: usize) -> bool {
        self.numeric[column] && !self.is_stated_time(column) && !self.counts(column)
    }

    /// Every column with its role and unit.
    fn columns(&self) -> Vec<TraceColumn> {
        let time = self.time();
        let of_levels = self.given_to_levels();
        let mut channels = Vec::new();
        let mut columns = Vec::new();
        for column in 0..self.numeric.len() {
            let (role, stated, supposed) = match time {
                Some(time) if self.is_time(column, time) => {
                    let stated = self.stated_of_time(column).or_else(|| self.stated_of_time(time));
                    (Role::Time, stated, self.supposed_of_time(time))
                }
                _ if self.is_channel(column) => {
                    channels.push(column);
                    (Role::Ignored, self.stated(column).or(of_levels), ColumnUnit::Volt)
                }
                _ => (Role::Ignored, None, ColumnUnit::One),
            };
            let label = self.above.labels[column].clone();
            let (unit, unit_stated) = (stated.unwrap_or(supposed), stated.is_some());
            columns.push(TraceColumn { role, unit, unit_stated, label });
        }
        for (column, role) in self.of_detectors(&channels).into_iter().zip([Role::ChannelA, Role::ChannelB]) {
            if let Some(column) = column {
                columns[column].role = role;
            }
        }
        columns
    }

    /// The channels of A and of B: each the one that its label names, else in the order of the columns.
    fn of_detectors(&self, channels: &[usize]) -> [Option<usize>; 2] {
        let channels = || channels.iter().copied();
        let named = |second: bool| {
            let is_named = |column: &usize| header::is_second(&self.above.labels[*column]) == Some(second);
            let mut named = channels().filter(is_named);
            named.next().filter(|_| named.next().is_none())
        };
        let b = named(true);
        let a = named(false).or_else(|| channels().find(|column| Some(*column) != b));
        let after = || channels().find(|column| Some(*column) > a);
        let b = b.or_else(after).or_else(|| channels().find(|column| Some(*column) != a));
        [a, b]
    }
}

/// A column that grows by equal steps.
struct Progress {
    step: f64,
    /// Whether they are whole numbers, however many noughts stand behind the mark.
    whole: bool,
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
        let whole = numbers.iter().all(|number| number.value.fract() == 0.0);
        (even && grows).then_some(Self { step, whole })
    }
}

fn same_step(one: Option<&Progress>, other: Option<&Progress>) -> bool {
    let both = one.zip(other);
    both.is_some_and(|(one, other)| (one.step - other.step).abs() <= SAME_STEP * one.step)
}

/// The mean step of a column of numbers from its first row to its last; nothing where they are the same.
fn mean_step(rows: &[Vec<&[u8]>], column: usize, decimal: DecimalMark) -> Option<f64> {
    let number = |row: &Vec<&[u8]>| value(row.get(column)?, decimal);
    let step = (number(rows.last()?)? - number(rows.first()?)?) / (rows.len() - 1) as f64;
    (step.is_finite() && step != 0.0).then_some(step)
}

#[cfg(test)]
#[path = "recognise_test.rs"]
mod tests;
