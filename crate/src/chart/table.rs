//! Pictures as tables, for those who do not see the drawings: the same numbers, a text to a cell.

use slope_evidence::plot_table::{PlotColumn, PlotTable};

use super::labels::{self, Title};
use super::picture::{BenchPicture, HistogramPicture, LinePicture, PlottedRow, TracePicture, TracesPicture};
use crate::quantity::{Decimal, DecimalMark, fixed, plain, short_form};
use crate::words::{Message, Value};

/// Decimals of a distance, m: to the millimetre, as rulers have it.
const MILLIMETRE: i32 = -3;
/// Decimals of a share, %.
const HUNDREDTH: i32 = -2;

fn table(titles: &[Title], rows: impl Iterator<Item = Vec<Value>>) -> PlotTable {
    let column = |title: &Title| PlotColumn { name: title.name.clone(), unit: title.unit };
    PlotTable { columns: titles.iter().map(column).collect(), rows: rows.collect() }
}

/// The rails with the distances and readings of their ends, and where the carriage stood on each.
pub fn bench_table(picture: &BenchPicture) -> PlotTable {
    let metres = |distance: f64| fixed(distance, MILLIMETRE, picture.decimal_mark);
    let stood = |rail: Option<usize>| {
        let there = picture.carriages.iter().filter(|carriage| carriage.rail == rail);
        there.map(|carriage| metres(carriage.distance)).collect::<Vec<String>>()
    };
    let placed = picture.rails.iter().enumerate().map(|(place, rail)| {
        let readings = (rail.near_reading.clone(), rail.far_reading.clone());
        let ends = [metres(rail.near), metres(rail.far), readings.0, readings.1];
        bench_row(rail.name.as_str().into(), ends, &stood(Some(place)))
    });
    let unplaced = picture.unplaced.iter();
    let unplaced = unplaced.map(|name| bench_row(name.as_str().into(), <[String; 4]>::default(), &[]));
    let typed = Some(stood(None)).filter(|distances| !distances.is_empty());
    let typed = typed.map(|distances| bench_row(labels::TYPED.into(), <[String; 4]>::default(), &distances));
    table(&labels::BENCH_COLUMNS, placed.chain(unplaced).chain(typed))
}

/// The bins, with the shares of the trials and of what the budget expects in each.
pub fn trials_table(picture: &HistogramPicture) -> PlotTable {
    // Two digits of a bin's width tell its ends apart.
    let place = Decimal::significant(picture.width, 2).map_or(0, |width| width.place());
    let end = |bin: usize| {
        Value::from(fixed(picture.from + bin as f64 * picture.width, place, picture.decimal_mark))
    };
    let share = |share: f64| Value::from(fixed(100.0 * share, HUNDREDTH, picture.decimal_mark));
    let bins = picture.densities.iter().zip(&picture.expected).enumerate();
    let rows = bins.map(|(bin, (density, expected))| {
        vec![end(bin), end(bin + 1), share(density * picture.width), share(*expected)]
    });
    table(&labels::TRIALS_COLUMNS, rows)
}

/// The differences of two estimators, against the distance.
pub fn walk_table(picture: &LinePicture) -> PlotTable {
    let mark = picture.decimal_mark;
    let row = |row: &PlottedRow| {
        let distance = fixed(row.distance, MILLIMETRE, mark);
        let difference = short_form(row.delay, row.u_delay, "", mark);
        vec![Value::from(row.number), Value::from(distance), Value::from(difference)]
    };
    table(&labels::WALK_COLUMNS, picture.marks.iter().map(row))
}

/// The levels of two traces, and their edges.
pub fn traces_table(picture: &TracesPicture) -> PlotTable {
    let names = [labels::TRACE_A, labels::TRACE_B];
    let rows = names.into_iter().zip(&picture.traces);
    let rows = rows.map(|(name, trace)| trace_row(name, trace, picture.decimal_mark));
    table(&labels::TRACE_COLUMNS, rows)
}

/// A rail: its name, distance and reading of each end, distances of the carriage; these are parted as repeats in a cell are,
/// whatever the decimal mark.
fn bench_row(name: Value, ends: [String; 4], stood: &[String]) -> Vec<Value> {
    let texts = ends.into_iter().chain([stood.join("; ")]);
    std::iter::once(name).chain(texts.map(Value::from)).collect()
}

/// A trace: its name, levels of its pulse, level and time of its edge; empty what was not found.
fn trace_row(name: Message, trace: &TracePicture, mark: DecimalMark) -> Vec<Value> {
    let volts =
        |level: Option<f64>| Value::from(level.map(|level| plain(level, 3, mark)).unwrap_or_default());
    let edge = trace.pulse.and_then(|pulse| pulse.edge);
    let time = edge.map(|edge| short_form(edge.time, Some(edge.u).filter(|u| *u > 0.0), "", mark));
    vec![
        name.into(),
        volts(trace.pulse.map(|pulse| pulse.baseline)),
        volts(trace.pulse.map(|pulse| pulse.top)),
        volts(edge.map(|edge| edge.level)),
        Value::from(time.unwrap_or_default()),
    ]
}

#[cfg(test)]
#[path = "table_test.rs"]
mod tests;
