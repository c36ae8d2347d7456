//! Notebooks far larger than any bench: three hundred chained rails, a full matrix of six hundred rows, offsets beyond any
//! unit. Common practice, no source.
//!
//! An answer within a second is asked for of the program as it is packed. These tests run on whatever processor there is,
//! hardly optimised: a minute tells an answer from one that never comes, and each test prints what it took.

#![expect(clippy::unwrap_used, reason = "tests")]

use std::time::{Duration, Instant};

use slope_of_light::analysis::{Analysis, Place, analyse, analyse_line};
use slope_of_light::message;
use slope_of_light::notebook::{
    ActsOn, Cell, CovarianceOf, Edit, Effect, ErrorShape, Notebook, Scope, SharedError, Splice,
    StatedCovariance,
};

const LONGEST: Duration = Duration::from_mins(1);
/// ns, and ns per metre.
const LINE: (f64, f64) = (1.0, 3.336);
const ROWS: u32 = 600;

fn done(edits: Vec<Edit>) -> Notebook {
    let mut notebook = Notebook::new();
    notebook.apply(Edit::Together(edits), "").unwrap();
    notebook
}

fn row(row: u32, cells: [(Cell, String); 4]) -> Edit {
    let cells = cells.into_iter().filter(|(_, text)| !text.is_empty()).collect();
    Edit::AddRow { row, after: None, cells }
}

/// The delay of a distance on the line, as typed.
fn delay(distance: f64) -> String {
    format!("{:.9}", LINE.0 + LINE.1 * distance)
}

/// What the page shows after an edit, in time: all rows, on their line.
#[track_caller]
fn answered(notebook: &Notebook, what: &str) -> Analysis {
    let start = Instant::now();
    let analysis = analyse_line(notebook.state(), &analyse(&Notebook::new()));
    let took = start.elapsed();
    println!("{what}: {took:?}");
    assert!(took < LONGEST, "{what} took {took:?}");
    let line = analysis.line.as_ref().unwrap();
    assert_eq!(line.rows.len(), ROWS as usize);
    // The readings are exact to nine decimals.
    assert!((line.fit.slope - LINE.1).abs() < 1e-6, "{what}: {}", line.fit.slope);
    analysis
}

/// Each rail of 200 cm begins where the one before ends, known to 1 mm: three hundred errors that rows share, each by all
/// rows from there on.
#[test]
fn three_hundred_chained_rails_answer() {
    let rails = ROWS / 2;
    let mut edits = Vec::new();
    for rail in 1..=rails {
        let uncertainty = "0.1".to_owned();
        let splice = match rail {
            1 => Splice::AtSplitter { mark: "0".into(), uncertainty },
            _ => Splice::Joined { mark: "0".into(), mark_before: "200".into(), gap: "0".into(), uncertainty },
        };
        edits.extend([Edit::AddRail(rail), Edit::SetSplice { rail, splice }]);
    }
    for place in 0..ROWS {
        let (rail, reading) = (place / 2, if place % 2 == 0 { "50" } else { "150" });
        let distance = 2.0 * f64::from(rail) + if place % 2 == 0 { 0.5 } else { 1.5 };
        let cells = [
            (Cell::Rail, (rail + 1).to_string()),
            (Cell::Reading, reading.to_owned()),
            (Cell::Delay, delay(distance)),
            (Cell::DelayUncertainty, "0.1".to_owned()),
        ];
        edits.push(row(rails + 1 + place, cells));
    }
    let analysis = answered(&done(edits), "300 chained rails");
    assert_eq!(analysis.rails.len(), rails as usize);
}

/// Delays that vary together: 0.01 ns² by itself, 0.002 ns² with every other.
#[test]
fn a_full_matrix_of_six_hundred_rows_answers() {
    let rows: Vec<u32> = (1..=ROWS).collect();
    let mut edits: Vec<Edit> = (rows.iter())
        .map(|id| {
            let distance = 0.01 * f64::from(*id);
            let cells = [
                (Cell::Distance, format!("{distance:.2}")),
                (Cell::DistanceUncertainty, "0.001".to_owned()),
                (Cell::Delay, delay(distance)),
                (Cell::DelayUncertainty, String::new()),
            ];
            row(*id, cells)
        })
        .collect();
    let entry = |alone: bool| if alone { "0.01" } else { "0.002" };
    let line = |i: &u32| rows.iter().map(|j| entry(i == j).to_owned()).collect();
    let matrix = rows.iter().map(line).collect();
    edits.push(Edit::SetCovariance(StatedCovariance { acts_on: CovarianceOf::Delays, rows, matrix }));
    answered(&done(edits), "a matrix of 600 rows");
}

/// An offset of 10¹² m, or ns, is no small error of a bench: it is refused at its field, as too large, and the line stands
/// as if it were not there.
#[test]
fn offsets_beyond_any_bench_are_refused_as_such() {
    let rows = |id: u32| {
        let distance = f64::from(id);
        let cells = [
            (Cell::Distance, distance.to_string()),
            (Cell::DistanceUncertainty, "0.001".to_owned()),
            (Cell::Delay, delay(distance)),
            (Cell::DelayUncertainty, "0.1".to_owned()),
        ];
        row(id, cells)
    };
    let plain = done((1..=6).map(rows).collect());
    let before = analyse(&plain).line.unwrap().fit.clone();
    for acts_on in [ActsOn::Distances, ActsOn::Delays] {
        for size in ["1e12", "1000000000000", "2e15", "1e300"] {
            let mut notebook = plain.clone();
            let offset = SharedError {
                id: 90,
                name: "offset".into(),
                acts_on,
                effect: Effect::Offset,
                rows: Scope::All,
                uncertainty: size.into(),
                shape: ErrorShape::Normal,
                degrees_of_freedom: String::new(),
            };
            notebook.apply(Edit::SetShared(offset), "").unwrap();
            let analysis = analyse(&notebook);
            let told = analysis.problems.iter().find(|problem| matches!(problem.place, Place::Shared { .. }));
            let said = message!("number-too_large_offset", found = size);
            assert_eq!(told.map(|problem| &problem.message), Some(&said), "{size}");
            assert_eq!(analysis.line.unwrap().fit, before, "{size}");
        }
    }
}
