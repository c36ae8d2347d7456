//! Tables say what their drawings show.

#![expect(clippy::unwrap_used, reason = "tests")]

use crate::chart::{
    BenchPicture, BenchRail, Carriage, HistogramPicture, LinePicture, PlotTable, PlottedRow, TracePicture,
    TracesPicture, Upright, bench_table, traces_table, trials_table, walk_table,
};
use crate::quantity::DecimalMark;
use crate::words::{WordTable, Words};

/// The rows of a table, each as one text.
fn rows(table: &PlotTable) -> Vec<String> {
    let words = WordTable::english().unwrap();
    let row = |row: &Vec<_>| row.iter().map(|cell| words.text(cell)).collect::<Vec<String>>().join(" | ");
    assert!(table.rows.iter().all(|row| row.len() == table.columns.len()), "a cell in each column");
    table.rows.iter().map(row).collect()
}

#[test]
fn the_bench_has_a_row_for_each_rail() {
    let carriage = |distance, rail| Carriage { number: 1, distance, rail, struck: false };
    let picture = BenchPicture {
        rails: vec![BenchRail {
            name: "A".to_owned(),
            near: 0.2,
            far: 3.2,
            near_reading: "0 cm".to_owned(),
            far_reading: "300 cm".to_owned(),
            ..BenchRail::default()
        }],
        unplaced: vec!["B".to_owned()],
        carriages: vec![carriage(0.5, Some(0)), carriage(1.5, Some(0)), carriage(4.0, None)],
        decimal_mark: DecimalMark::Point,
    };
    assert_eq!(
        rows(&bench_table(&picture)),
        [
            "A | 0.200 | 3.200 | 0 cm | 300 cm | 0.500; 1.500",
            "B |  |  |  |  | ",
            "entered directly |  |  |  |  | 4.000",
        ]
    );
}

#[test]
fn bins_have_their_ends_and_shares() {
    let picture = HistogramPicture {
        from: 299.0,
        width: 0.1,
        densities: vec![1.0, 4.0],
        expected: vec![0.125, 0.5],
        ..HistogramPicture::default()
    };
    let told = rows(&trials_table(&picture));
    assert_eq!(told, ["299.00 | 299.10 | 10.00 | 12.50", "299.10 | 299.20 | 40.00 | 50.00"]);
}

#[test]
fn differences_stand_beside_their_rows() {
    let mark =
        PlottedRow { number: 3, distance: 1.5, delay: 0.123, u_delay: Some(0.021), ..PlottedRow::default() };
    let picture = LinePicture { marks: vec![mark], upright: Upright::Walk, ..LinePicture::default() };
    assert_eq!(rows(&walk_table(&picture)), ["3 | 1.500 | 0.123(21)"]);
}

#[test]
fn traces_have_their_levels_and_edges() {
    let traces = [&[0.0, 0.8, 0.4, 2.0, 0.05][..], &[][..]].map(|marks| TracePicture::of(&[], marks));
    let picture = TracesPicture { traces, ..TracesPicture::default() };
    assert_eq!(
        rows(&traces_table(&picture)),
        ["trace A | 0.00 | 0.800 | 0.400 | 2.000(50)", "trace B |  |  |  | "]
    );
}
