//! A notebook that is larger than any bench, in a file of a megabyte: it opens within the time and the memory of any other
//! input. Whatever went with the square of its rows would not: the slopes of all their pairs alone fill 400 MB.

use slope_of_light::analysis::analyse;
use slope_of_light::notebook::{self, Cell, Edit, LogEntry, Notebook};
use slope_of_light::view::view;
use slope_of_light::words::Value;

use crate::trials::try_one;

const ROWS: u32 = 10_000;
/// ns, and ns per metre.
const LINE: (f64, f64) = (1.0, 3.336);

/// A row of its own entry, from 0.5 m to 5.5 m, on the line but for a hundredth of a nanosecond.
fn begun(row: u32) -> LogEntry {
    let distance = 0.5 + 0.0005 * f64::from(row);
    let delay = LINE.0 + LINE.1 * distance + if row.is_multiple_of(3) { 0.01 } else { -0.005 };
    let cells = [
        (Cell::Distance, format!("{distance:.4}")),
        (Cell::DistanceUncertainty, "0.001".to_owned()),
        (Cell::Delay, format!("{delay:.4}")),
        (Cell::DelayUncertainty, "0.01".to_owned()),
    ];
    LogEntry {
        at: String::new(),
        edit: Edit::AddRow { row, after: None, cells: cells.into_iter().collect() },
    }
}

/// What the page does when it opens: reads the log, computes everything, and puts it into words.
#[test]
fn ten_thousand_rows() {
    let written = Notebook::from_log((1..=ROWS).map(begun).collect()).unwrap();
    try_one("ten_thousand_rows", notebook::write(&written).as_bytes(), |bytes| {
        let notebook = notebook::read(&String::from_utf8_lossy(bytes)).unwrap();
        let analysis = analyse(&notebook);
        let line = analysis.line.as_ref().unwrap();
        assert_eq!(line.rows.len(), ROWS as usize);
        // Known to 0.01 ns / (√10,000 · 1.4 m).
        assert!((line.fit.slope - LINE.1).abs() < 1e-3, "{}", line.fit.slope);
        let view = view(&notebook, &analysis);
        assert_eq!(view.rows.len(), ROWS as usize);
        // Of so many pairs no median is taken, and that is said in its place.
        let median = view.line.checks.iter().find(|figure| figure.id == "theil_sen").unwrap();
        assert_eq!(median.value, Value::from("–"));
    });
}
