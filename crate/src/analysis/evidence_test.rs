//! Rows whose delays come from pictures and traces, against planted lines.
#![expect(clippy::unwrap_used, clippy::panic, reason = "a test stops where its data are wrong")]

use super::*;
use crate::analysis::{Analysis, Origin, RowError, RowPart, analyse};
use crate::notebook::{
    BenchField, Cell, Edit, Estimator, Notebook, RailField, Remark, RowId, Splice, StoredFile, TraceDelay,
    Traces,
};
use crate::words::in_english;

/// Slope, ns/m, and intercept, ns, of the planted line.
const LINE: (f64, f64) = (3.4, 6.0);
const TIME_BASE: f64 = 5.0;
const PLACES: [f64; 5] = [0.5, 1.5, 2.5, 4.0, 5.0];

fn kept() -> StoredFile {
    StoredFile { sha256: "0".repeat(64), name: "screen.jpg".into(), bytes: 1000 }
}

/// A screen of 10 × 8 divisions seen from the side.
fn grid() -> Grid {
    let corners =
        [Spot(21_050, 18_310), Spot(138_800, 25_140), Spot(133_990, 101_720), Spot(18_440, 110_260)];
    Grid { id: 1, columns: 10, rows: 8, corners, checks: Vec::new() }
}

fn spot(plane: &Plane, column: f64, row: f64) -> Spot {
    let at = plane.pixel([column, row]);
    #[expect(clippy::cast_possible_truncation, reason = "a place on the picture")]
    let hundredths = |value: f64| (value * 100.0).round() as i32;
    Spot(hundredths(at.x), hundredths(at.y))
}

fn of_pictures(grid: &Grid, marks: usize) -> Notebook {
    let truth = Plane::fit(&corners(&self::grid()), 1.0).unwrap();
    let mut edits = bench();
    edits.push(Edit::SetGrid(grid.clone()));
    for (row, d) in (1..).zip(PLACES) {
        let q = (LINE.1 + LINE.0 * d) / TIME_BASE;
        let at = |column, row| vec![spot(&truth, column, row); marks];
        let picture = Picture {
            file: kept(),
            width: 1600,
            height: 1200,
            grid: 1,
            a: at(1.3, 4.0),
            b: at(1.3 + q, 4.2),
            heights: None,
        };
        edits.push(add(row, d, &format!("{TIME_BASE}")));
        edits.push(Edit::SetEvidence { row, evidence: Some(Evidence::Picture(picture)) });
    }
    notebook(edits)
}

fn bench() -> Vec<Edit> {
    let splice = Splice::AtSplitter { mark: "0".into(), uncertainty: "0".into() };
    vec![
        Edit::AddRail(1),
        Edit::SetRail { rail: 1, field: RailField::ReadingUncertainty, text: "0.001".into() },
        Edit::SetSplice { rail: 1, splice },
    ]
}

fn add(row: RowId, d: f64, time_base: &str) -> Edit {
    let cells = [(Cell::Reading, format!("{}", d * 100.0)), (Cell::TimeBase, time_base.to_owned())];
    Edit::AddRow { row, after: None, cells: cells.into_iter().collect() }
}

fn notebook(edits: Vec<Edit>) -> Notebook {
    let mut notebook = Notebook::new();
    for edit in edits {
        notebook.apply(edit, "2026-01-01T00:00:00Z").unwrap();
    }
    notebook
}

fn part(analysis: &Analysis, origin: &Origin) -> f64 {
    let line = analysis.line.as_ref().unwrap();
    line.parts.iter().find(|part| part.origin == *origin).map_or(0.0, |part| part.slope)
}

#[test]
fn marks_on_a_tilted_picture_give_the_planted_line() {
    let analysis = analyse(&of_pictures(&grid(), 1));
    let fit = &analysis.line.as_ref().unwrap().fit;
    // Marks are kept to a hundredth of a pixel, about 1e-4 divisions.
    assert!((fit.slope / LINE.0 - 1.0).abs() < 3e-4, "{}", fit.slope);
    assert!((fit.intercept - LINE.1).abs() < 3e-3, "{}", fit.intercept);
    assert!(part(&analysis, &Origin::PictureMarks) > 0.0);
}

/// The law of propagation over the eight coordinates of the corners (JCGM 100:2008, 5.1.2), by moving each and doing
/// the whole analysis again.
#[test]
fn corners_count_as_errors_that_rows_share() {
    let analysis = analyse(&of_pictures(&grid(), 1));
    let slope = |grid: &Grid| analyse(&of_pictures(grid, 1)).line.unwrap().fit.slope;
    let mut variance = 0.0;
    for coordinate in 0..8 {
        let moved = |by: i32| {
            let mut grid = grid();
            let corner = grid.corners.get_mut(coordinate / 2).unwrap();
            *(if coordinate % 2 == 0 { &mut corner.0 } else { &mut corner.1 }) += by;
            slope(&grid)
        };
        // A pixel, the standard uncertainty of a mark, either way.
        variance += ((moved(100) - moved(-100)) / 2.0).powi(2);
    }
    let found = part(&analysis, &Origin::Grid { grid: 1 });
    // The weights move with the corners a little, and the plane is bent: a per cent.
    assert!((found / variance.sqrt() - 1.0).abs() < 0.01, "{found} beside {}", variance.sqrt());
    let line = analysis.line.as_ref().unwrap();
    let all: f64 = line.parts.iter().map(|part| part.slope * part.slope).sum();
    let whole = line.fit.uncertainty.unwrap().slope;
    assert!((all.sqrt() / whole - 1.0).abs() < 1e-9, "the parts are {} of {whole}", all.sqrt());
}

#[test]
fn repeated_marks_bring_their_scatter() {
    let mut notebook = of_pictures(&grid(), 2);
    let mut picture = super::picture(notebook.state().rows.first().unwrap()).unwrap().clone();
    picture.b.first_mut().unwrap().0 += 300;
    notebook
        .apply(
            Edit::SetEvidence { row: 1, evidence: Some(Evidence::Picture(picture)) },
            "2026-01-01T00:00:00Z",
        )
        .unwrap();
    let analysis = analyse(&notebook);
    let line = analysis.line.as_ref().unwrap();
    let marks = line.parts.iter().find(|part| part.origin == Origin::PictureMarks).unwrap();
    // Two marks of each edge on five pictures: 5 × 2 degrees of freedom.
    assert_eq!(marks.degrees_of_freedom, Some(10.0));
}

/// A's straight edge of 0.4 divisions from row 6 up to row 2 is marked at its half height on every row, B's ends are off the
/// screen. At a fifth of its height A's edge is a row and a fifth farther down, and crosses 0.4·(1.2/4)/2 = 0.06 divisions
/// earlier, as far as is known of its slope (`photo`): every delay is longer by that.
#[test]
fn the_level_of_an_edge_follows_the_fraction_and_its_uncertainty_counts() {
    let plane = Plane::fit(&corners(&grid()), 1.0).unwrap();
    let mut notebook = of_pictures(&grid(), 1);
    let bare = analyse(&notebook);
    let (baseline, top) = (Some(spot(&plane, 1.1, 6.0)), Some(spot(&plane, 1.5, 2.0)));
    let (a, b) = (EdgeHeight { baseline, top }, EdgeHeight::default());
    let mut apply = |edit| {
        notebook.apply(edit, "2026-01-01T00:00:00Z").unwrap();
        analyse(&notebook)
    };
    for row in 1..=5 {
        let heights = Some(EdgeHeights { a, b, thickness: 3 });
        let picture = Picture { heights, ..picture_of(&of_pictures(&grid(), 1), row) };
        apply(Edit::SetEvidence { row, evidence: Some(Evidence::Picture(picture)) });
    }
    let fraction = |text: &str| Edit::SetBench { field: BenchField::TraceFraction, text: text.into() };
    let (half, fifth) = (apply(fraction("50")), apply(fraction("20")));
    let intercept = |analysis: &Analysis| analysis.line.as_ref().unwrap().fit.intercept;
    assert!((intercept(&half) - intercept(&bare)).abs() < 3e-3);
    assert!((intercept(&fifth) - intercept(&bare) - 0.06 * TIME_BASE).abs() < 5e-3, "{}", intercept(&fifth));
    let marks = |analysis: &Analysis| part(analysis, &Origin::PictureMarks);
    assert!(marks(&bare) < marks(&half) && marks(&half) < marks(&fifth));
}

fn picture_of(notebook: &Notebook, row: RowId) -> Picture {
    let row = notebook.state().rows.iter().find(|each| each.id == row).unwrap();
    super::picture(row).unwrap().clone()
}

#[test]
fn a_picture_waits_for_its_marks() {
    let mut notebook = of_pictures(&grid(), 1);
    let waiting = Picture {
        file: kept(),
        width: 1600,
        height: 1200,
        grid: 0,
        a: Vec::new(),
        b: Vec::new(),
        heights: None,
    };
    let of =
        |picture: &Picture| Edit::SetEvidence { row: 1, evidence: Some(Evidence::Picture(picture.clone())) };
    notebook.apply(of(&waiting), "2026-01-01T00:00:00Z").unwrap();
    let analysis = analyse(&notebook);
    assert_eq!(analysis.line.as_ref().unwrap().rows.len(), PLACES.len() - 1);
    let marked = Picture { a: vec![Spot(50, 50)], ..waiting };
    assert!(notebook.apply(of(&marked), "2026-01-01T00:00:00Z").is_err(), "marked on no grid");
}

#[test]
fn what_is_wrong_with_marks_is_said_in_the_row() {
    let crossed = {
        let mut grid = grid();
        grid.corners.swap(0, 1);
        grid
    };
    let on_a_line = Grid { corners: [Spot(0, 0), Spot(100, 100), Spot(200, 200), Spot(0, 900)], ..grid() };
    let no_divisions = Grid { columns: 0, ..grid() };
    for grid in [crossed, on_a_line, no_divisions] {
        let analysis = analyse(&of_pictures(&grid, 1));
        let row = analysis.rows.first().unwrap();
        assert!(
            matches!(&row.part, RowPart::Incomplete { lacks: RowError::Marks(MarksError::Grid(_)) }),
            "{:?}",
            row.part
        );
        assert!(analysis.line.is_err());
    }
}

#[test]
fn a_delay_given_twice_is_named() {
    let mut notebook = of_pictures(&grid(), 1);
    let typed = Edit::SetCell { row: 2, cell: Cell::Delay, text: "9".into() };
    notebook.apply(typed, "2026-01-01T00:00:00Z").unwrap();
    let analysis = analyse(&notebook);
    assert!(analysis.problems.iter().any(|problem| in_english(&problem.message).contains("entered twice")));
    assert!(matches!(&analysis.rows.get(1).unwrap().part, RowPart::Incomplete { .. }));
}

#[test]
fn traces_give_the_delay_of_the_estimator_chosen() {
    let mut edits = bench();
    for (row, d) in (1..).zip(PLACES) {
        let time = |value: f64| Some(TraceTime { value: format!("{value}"), uncertainty: "0.02".into() });
        let delay = LINE.1 + LINE.0 * d;
        let delays = vec![
            TraceDelay {
                estimator: Estimator::FixedLevel,
                delay: time(delay + 0.125 * d),
                remarks: Vec::new(),
            },
            TraceDelay { estimator: Estimator::ConstantFraction, delay: time(delay), remarks: Vec::new() },
            TraceDelay {
                estimator: Estimator::EdgeLine,
                delay: None,
                remarks: vec![Remark::Words("no pulse on A".into())],
            },
        ];
        let traces = Traces { files: vec![kept()], delays, walk: time(0.125 * d), layouts: vec![] };
        edits.push(add(row, d, ""));
        edits.push(Edit::SetEvidence { row, evidence: Some(Evidence::Traces(traces)) });
    }
    let notebook = notebook(edits.clone());
    let analysis = analyse(&notebook);
    let slope = |analysis: &Analysis| analysis.line.as_ref().unwrap().fit.slope;
    assert!((slope(&analysis) - LINE.0).abs() < 1e-9, "{}", slope(&analysis));
    assert!(part(&analysis, &Origin::Traces) > 0.0);
    let walk = analysis.walk.as_ref().unwrap();
    assert!((walk.line.slope - 0.125).abs() < 1e-9);
    // v = 1/b, and the fixed level adds its walk to b.
    assert!((walk.shift.0 - (LINE.0 / (LINE.0 + 0.125) - 1.0)).abs() < 1e-9);

    edits.push(Edit::SetEstimator(Estimator::FixedLevel));
    let fixed = analyse(&self::notebook(edits.clone()));
    assert!((slope(&fixed) - LINE.0 - 0.125).abs() < 1e-9);
    assert!(
        (fixed.walk.as_ref().unwrap().shift.0 - walk.shift.0).abs() < 1e-9,
        "the walk hangs on what was chosen"
    );
    assert!(fixed.notices.iter().any(|notice| notice.id == "walk"));
    assert!(!analysis.notices.iter().any(|notice| notice.id == "walk"));
    // Nothing corrects for it: the budget holds all of it, and how well it is known.
    let middle = PLACES.iter().sum::<f64>() / PLACES.len() as f64;
    let u_walk = 0.02 / PLACES.iter().map(|d| (d - middle) * (d - middle)).sum::<f64>().sqrt();
    let in_slope = part(&fixed, &Origin::Walk);
    assert!((in_slope - libm::hypot(0.125, u_walk)).abs() < 1e-6, "{in_slope}");
    assert!(analysis.line.as_ref().unwrap().parts.iter().all(|part| part.origin != Origin::Walk));
    // Under a closed seal it is what the traces tell of it: both together would tell the factor otherwise.
    let sealed = analyse(&self::notebook([edits.clone(), vec![Edit::Seal("5f1c".into())]].concat()));
    assert!(sealed.sealed && (slope(&sealed) / slope(&fixed) - 1.0).abs() > 0.01);
    assert!((part(&sealed, &Origin::Walk) - in_slope).abs() < 1e-6);
    let walk_again = sealed.walk.as_ref().unwrap().line.slope;
    assert!((walk_again - 0.125).abs() < 1e-9, "told by the traces, whatever is sealed");

    edits.push(Edit::SetEstimator(Estimator::EdgeLine));
    let refused = analyse(&self::notebook(edits));
    let row = refused.rows.first().unwrap();
    let RowPart::Incomplete { lacks: lacks @ RowError::Traces(TracesError::NoDelay { .. }) } = &row.part
    else {
        panic!("{:?}", row.part);
    };
    let lacks = in_english(&lacks.message());
    assert!(lacks.contains("no pulse on A"), "{lacks}");
}
