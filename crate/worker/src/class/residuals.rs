//! The residuals of all notebooks of a class against the position on the bench: two drawings of the same rows, and in words
//! the places at which the class lies off its lines together.

use std::fmt::Write as _;

use serde::Serialize;
use slope_engine::rank::median;
use slope_evidence::decimal::{at_most, fixed, plain};
use slope_evidence::message;
use slope_evidence::plot_table::{PlotColumn, PlotTable};
use slope_evidence::trace::DecimalMark;
use slope_evidence::words::{Message, Value};

use super::alike::Alike;
use super::given::Given;
use super::places::{Off, off};
use super::rows::{BenchPlace, LineRow, NotebookLine, ShownRow};
use super::scale::{Tick, round_marks};

/// A drawing is laid out in whole parts of a box so wide and so high, y downwards.
const BOX: f64 = 1000.0;
/// A scale reaches so many times as far as the typical residual, and as the place that lies farthest off.
const TYPICAL: f64 = 6.0;
const FARTHEST: f64 = 1.25;
/// Free at both ends of the bench, in parts of its length.
const MARGIN: f64 = 0.03;
/// Half the length of a bar that stands for a place.
const HALF_BAR: f64 = 8.0;

/// Places of a distance, m: to the millimetre, as rulers have it; and of a normalized residual, as rows show it.
const MILLIMETRE: i32 = -3;
/// See [`MILLIMETRE`].
const TENTH: i32 = -1;

/// The residuals of a class.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Residuals {
    /// How many rows of how many notebooks are drawn, and what is left out.
    pub drawn: Vec<Message>,
    /// What is to be said of the places together.
    pub told: Message,
    /// Where the class lies off its lines beyond chance, the place that stands out most first.
    pub places: Vec<NamedPlace>,
    /// Marks of the distance from the splitter, m.
    pub ticks: Vec<Tick>,
    /// The rails where they lie.
    pub rails: Vec<RailSpan>,
    /// In standard uncertainties.
    pub normalized: DotPlot,
    /// In nanoseconds; none where seals cover all lines.
    pub nanoseconds: Option<DotPlot>,
    /// Both as a table, a row for each place.
    pub table: PlotTable,
}

/// A place where the class lies off its lines.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct NamedPlace {
    /// Where it stands, in percent of the width.
    pub at: f64,
    /// What is to be said of it.
    pub text: Message,
}

/// A rail where it lies.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct RailSpan {
    /// What it is called, or its number.
    pub name: String,
    /// Where rows on it begin, in percent of the width.
    pub from: f64,
    /// Where they end.
    pub to: f64,
}

/// A drawing, as paths of SVG in a box of 1000 by 1000.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct DotPlot {
    /// A dot for each row.
    pub dots: String,
    /// A bar for each place with several rows, at their median.
    pub bars: String,
    /// Marks of its scale, in percent from above.
    pub ticks: Vec<Tick>,
    /// That rows lie beyond the scale, and stand at its end.
    pub beyond: Option<Message>,
}

/// A place with the rows that were read there.
struct RowsAtPlace<'a> {
    place: BenchPlace,
    rows: Vec<&'a LineRow>,
    /// The median of their distances, m.
    distance: f64,
}

/// What the residuals of a class show; none where no notebook has any. Of each is told with which it shares readings.
pub(super) fn residuals(all: &[Given], alike: &[Vec<Alike>], mark: DecimalMark) -> Option<Residuals> {
    let notebooks: Vec<Vec<LineRow>> = all.iter().map(rows_of).collect();
    let mut rows: Vec<&LineRow> = notebooks.iter().flatten().collect();
    rows.sort_by_key(|row| row.place);
    let spots: Vec<RowsAtPlace<'_>> =
        rows.chunk_by(|one, other| one.place == other.place).filter_map(spot).collect();
    let across = Across::of(&spots)?;
    let names = Names { all, mark };
    let (own, shared) = own_readings(&notebooks, alike);
    let found = off(&own);
    let named = |off: &Off| {
        let spot = spots.iter().find(|spot| spot.place == off.place)?;
        Some(NamedPlace { at: across.percent(spot.distance), text: names.said(off, spot) })
    };
    Some(Residuals {
        drawn: drawn(all, &notebooks, rows.len(), shared),
        told: match &found {
            None => message!("class-places-none-shared"),
            Some(found) if found.is_empty() => message!("class-places-none"),
            Some(found) => message!("class-places-some", n = found.len()),
        },
        places: found.iter().flatten().filter_map(named).collect(),
        ticks: across.ticks(mark),
        rails: spans(&spots, across, &names),
        normalized: drawing(&spots, across, mark, |row| Some(row.normalized))?,
        nanoseconds: drawing(&spots, across, mark, |row| row.residual),
        table: table(&spots, &names),
    })
}

/// The rows of a notebook that can be read back.
fn rows_of(one: &Given) -> Vec<LineRow> {
    let (Some(slope), Some(intercept)) = (one.value("slope"), one.value("intercept")) else {
        return Vec::new();
    };
    let line = NotebookLine { slope, intercept, sealed: one.sealed };
    one.rows.lines().filter_map(|row| ShownRow::of(row)?.read(line)).collect()
}

/// The rows of those that share no readings with one before them, since the same readings say nothing twice; and how many
/// others have rows.
fn own_readings(notebooks: &[Vec<LineRow>], alike: &[Vec<Alike>]) -> (Vec<Vec<LineRow>>, usize) {
    let has_rows = |place: usize| notebooks.get(place).is_some_and(|rows| !rows.is_empty());
    let is_own = |place: usize| {
        let others = alike.get(place).into_iter().flatten();
        !others.map(|other| other.notebook).any(|other| other < place && has_rows(other))
    };
    let with = || notebooks.iter().enumerate().filter(|(_, rows)| !rows.is_empty());
    let own: Vec<Vec<LineRow>> =
        with().filter(|(place, _)| is_own(*place)).map(|(_, rows)| rows.clone()).collect();
    let shared = with().count() - own.len();
    (own, shared)
}

fn drawn(all: &[Given], notebooks: &[Vec<LineRow>], rows: usize, shared: usize) -> Vec<Message> {
    let count = |those: &dyn Fn(&Given) -> bool| all.iter().filter(|one| those(one)).count();
    let with = notebooks.iter().filter(|rows| !rows.is_empty()).count();
    let without = count(&|one| one.value("slope").is_none());
    let sealed = count(&|one| one.sealed && one.value("slope").is_some());
    let lined = all.iter().filter(|one| one.value("slope").is_some());
    let unread = lined.map(|one| one.rows.lines().count()).sum::<usize>() - rows;
    let mut drawn = vec![message!("class-residuals-drawn", rows = rows, n = with)];
    drawn.extend((shared > 0).then(|| message!("class-residuals-shared", n = shared)));
    drawn.extend((without > 0).then(|| message!("class-residuals-without", n = without)));
    drawn.extend((unread > 0).then(|| message!("class-residuals-unread", n = unread)));
    drawn.extend((sealed > 0).then(|| message!("class-residuals-sealed", n = sealed)));
    drawn
}

fn spot<'a>(rows: &[&'a LineRow]) -> Option<RowsAtPlace<'a>> {
    let mut distances: Vec<f64> = rows.iter().map(|row| row.distance).collect();
    Some(RowsAtPlace { place: rows.first()?.place, rows: rows.to_vec(), distance: median(&mut distances)? })
}

/// The distance from the splitter across the drawing.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Across {
    from: f64,
    to: f64,
}

impl Across {
    /// From the nearest place to the farthest, of those that several rows share if there are any.
    fn of(spots: &[RowsAtPlace<'_>]) -> Option<Self> {
        let shared = |spot: &&RowsAtPlace<'_>| spot.rows.len() > 1;
        let any = spots.iter().any(|spot| shared(&spot));
        let ends = spots.iter().filter(|spot| !any || shared(spot)).map(|spot| spot.distance);
        let (from, to) =
            ends.fold((f64::INFINITY, f64::NEG_INFINITY), |(from, to), at| (from.min(at), to.max(at)));
        let margin = if to > from { MARGIN * (to - from) } else { 0.5 };
        from.is_finite().then_some(Self { from: from - margin, to: to + margin })
    }

    fn share(self, distance: f64) -> f64 {
        ((distance - self.from) / (self.to - self.from)).clamp(0.0, 1.0)
    }

    fn percent(self, distance: f64) -> f64 {
        100.0 * self.share(distance)
    }

    fn ticks(self, mark: DecimalMark) -> Vec<Tick> {
        let each = round_marks(self.from, self.to, mark);
        each.into_iter().map(|(at, text)| Tick { at: self.percent(at), text }).collect()
    }
}

fn drawing(
    spots: &[RowsAtPlace<'_>],
    across: Across,
    mark: DecimalMark,
    residual: impl Fn(&LineRow) -> Option<f64>,
) -> Option<DotPlot> {
    let median_of =
        |rows: &[&LineRow]| median(&mut rows.iter().filter_map(|row| residual(row)).collect::<Vec<_>>());
    let mut sizes: Vec<f64> =
        spots.iter().flat_map(|spot| &spot.rows).filter_map(|row| residual(row)).map(f64::abs).collect();
    let typical = median(&mut sizes)?;
    let shared = || spots.iter().filter(|spot| spot.rows.len() > 1);
    let medians: Vec<(f64, f64)> =
        shared().filter_map(|spot| Some((spot.distance, median_of(&spot.rows)?))).collect();
    let farthest = medians.iter().map(|(_, middle)| middle.abs()).fold(0.0, f64::max);
    let reach =
        Some((TYPICAL * typical).max(FARTHEST * farthest)).filter(|reach| *reach > 0.0).unwrap_or(1.0);
    let x = |distance: f64| (BOX * across.share(distance)).round();
    let y = |value: f64| (BOX * (0.5 - 0.5 * (value / reach).clamp(-1.0, 1.0))).round();
    let each =
        spots.iter().flat_map(|spot| &spot.rows).filter_map(|row| Some((row.distance, residual(row)?)));
    let beyond = sizes.iter().filter(|size| **size > reach).count();
    Some(DotPlot {
        dots: path(each.map(|(distance, value)| (x(distance), y(value), 0.0))),
        bars: path(
            medians.iter().map(|(distance, middle)| (x(*distance) - HALF_BAR, y(*middle), 2.0 * HALF_BAR)),
        ),
        ticks: round_marks(-reach, reach, mark)
            .into_iter()
            .map(|(at, text)| Tick { at: y(at) / BOX * 100.0, text })
            .collect(),
        beyond: (beyond > 0).then(|| message!("class-residuals-beyond", n = beyond)),
    })
}

/// Strokes to the right, each from a point on, so long.
fn path(strokes: impl Iterator<Item = (f64, f64, f64)>) -> String {
    let mut path = String::new();
    for (x, y, length) in strokes {
        // Writing to a text can't fail.
        let _ = write!(path, "M{x} {y}h{length}");
    }
    path
}

/// How the residuals lie at each place: how many, from the smallest to the largest, and in the middle.
fn table(spots: &[RowsAtPlace<'_>], names: &Names<'_>) -> PlotTable {
    let columns = [
        (message!("class-residuals-position"), ""),
        (message!("chart-distance"), "m"),
        (message!("class-residuals-rows"), ""),
        (message!("class-residuals-smallest"), ""),
        (message!("class-residuals-median"), ""),
        (message!("class-residuals-largest"), ""),
        (message!("class-residuals-median-time"), "ns"),
    ];
    PlotTable {
        columns: columns.into_iter().map(|(name, unit)| PlotColumn { name, unit }).collect(),
        rows: spots.iter().filter_map(|spot| names.row(spot)).collect(),
    }
}

fn spans(spots: &[RowsAtPlace<'_>], across: Across, names: &Names<'_>) -> Vec<RailSpan> {
    let each = spots.chunk_by(|one, other| one.place.rail == other.place.rail);
    each.filter_map(|some| {
        let rail = some.first()?.place.rail?;
        let at = || some.iter().map(|spot| across.percent(spot.distance));
        let (from, to) = (at().fold(100.0, f64::min), at().fold(0.0, f64::max));
        Some(RailSpan { name: names.rail(rail), from, to })
    })
    .collect()
}

/// What rails and places are called.
struct Names<'a> {
    all: &'a [Given],
    mark: DecimalMark,
}

impl Names<'_> {
    /// The name in the first notebook that has so many rails; its number where that has none.
    fn rail(&self, rail: usize) -> String {
        let mut names = self.all.iter().filter_map(|one| one.rails.get(rail));
        names.find(|name| !name.is_empty()).cloned().unwrap_or_else(|| (rail + 1).to_string())
    }

    fn place(&self, spot: &RowsAtPlace<'_>) -> Message {
        let mark = self.reading(&spot.rows);
        match spot.place.rail {
            Some(rail) => message!("class-places-rail", rail = self.rail(rail), mark = mark),
            None => message!("class-places-distance", mark = mark),
        }
    }

    /// The row of a place in the table; none for a place without rows.
    fn row(&self, spot: &RowsAtPlace<'_>) -> Option<Vec<Value>> {
        let mut normalized: Vec<f64> = spot.rows.iter().map(|row| row.normalized).collect();
        let middle = median(&mut normalized)?;
        let (smallest, largest) = (*normalized.first()?, *normalized.last()?);
        let time = median(&mut spot.rows.iter().filter_map(|row| row.residual).collect::<Vec<_>>());
        let [smallest, middle, largest] = [smallest, middle, largest].map(|w| fixed(w, TENTH, self.mark));
        Some(vec![
            self.place(spot).into(),
            fixed(spot.distance, MILLIMETRE, self.mark).into(),
            spot.rows.len().into(),
            smallest.into(),
            middle.into(),
            largest.into(),
            time.map_or_else(String::new, |time| plain(time, 2, self.mark)).into(),
        ])
    }

    fn said(&self, off: &Off, spot: &RowsAtPlace<'_>) -> Message {
        let size = |value: f64| plain(value.abs(), 2, self.mark);
        let by = off.residual.map_or_else(
            || message!("class-places-u", u = size(off.normalized)),
            |ns| message!("class-places-ns", ns = size(ns), u = size(off.normalized)),
        );
        let (place, by) = (Value::from(self.place(spot)), Value::from(by));
        let (together, n) = (off.together, off.notebooks);
        if off.normalized > 0.0 {
            message!("class-places-above", place = place, together = together, n = n, by = by)
        } else {
            message!("class-places-below", place = place, together = together, n = n, by = by)
        }
    }

    /// The readings at a place, from the smallest to the largest, in the unit in which most were made.
    fn reading(&self, rows: &[&LineRow]) -> String {
        let unit = rows.first().map_or("", |row| row.unit);
        let marks = || rows.iter().filter(|row| row.unit == unit).map(|row| row.mark);
        let (from, to) = (marks().fold(f64::INFINITY, f64::min), marks().fold(f64::NEG_INFINITY, f64::max));
        let text = |value: f64| at_most(value, 6, self.mark);
        let range = if from < to { format!("{}–{}", text(from), text(to)) } else { text(from) };
        format!("{range}\u{a0}{unit}")
    }
}

#[cfg(test)]
#[path = "residuals_test.rs"]
mod tests;
