//! Stated covariance matrices through the whole analysis: they are to be treated as everything else is.
//!
//! The bench: distances typed, edges read several times on a screen (degrees of freedom), errors in proportion on both.
//! What a matrix says can be said otherwise in two cases, and then must come to the same: a diagonal one as an uncertainty
//! in each row, to the last bit; one of a common offset as a component of the user's own.
#![expect(clippy::unwrap_used, clippy::panic, reason = "tests")]

use serde_json::{Value, json};
use slope_of_light::analysis::trials::{Verdict, outcome};
use slope_of_light::analysis::{Analysis, C0, Origin, analyse};
use slope_of_light::budget::Random;
use slope_of_light::notebook::{
    ActsOn, Basis, BenchField, Cell, Claim, CovarianceOf, Edit, Effect, ErrorShape, Notebook, Scope, Setting,
    SharedError, StatedCovariance, TrialPlan,
};

use crate::reference::{assert_close, number, numbers, read as reference, rows};

const DISTANCES: [f64; 8] = [0.5, 0.9, 1.4, 1.8, 2.3, 2.9, 3.4, 4.0];

/// Eight rows, their delays off the line by a few tenths of a nanosecond; `u` in the cell of the distance.
fn bench(u: &str) -> Notebook {
    let mut notebook = Notebook::new();
    let mut apply = |edit| notebook.apply(edit, "").unwrap();
    let setting = Setting { id: 1, time_per_division: "2".into(), uncertainty: "3 %".into() };
    apply(Edit::SetSetting(setting));
    apply(Edit::SetBench { field: BenchField::EdgeHalfWidth, text: "0.02".into() });
    let off = [0.11, -0.07, 0.05, -0.13, 0.02, 0.12, -0.08, -0.04];
    for ((row, distance), off) in (1..).zip(DISTANCES).zip(off) {
        let edge = 1.0 + 1.7 * distance + off;
        let repeats =
            if row < 4 { format!("{:.3}; {:.3}", edge - 0.03, edge + 0.05) } else { format!("{edge:.3}") };
        let cells = [
            (Cell::Distance, distance.to_string()),
            (Cell::DistanceUncertainty, u.to_owned()),
            (Cell::EdgeA, "0".to_owned()),
            (Cell::EdgeB, repeats),
        ];
        let cells = cells.into_iter().filter(|(_, text)| !text.is_empty()).collect();
        apply(Edit::AddRow { row, after: None, cells });
    }
    notebook
}

fn shared(id: u32, effect: Effect, uncertainty: &str, rows: Scope) -> Edit {
    Edit::SetShared(SharedError {
        id,
        name: "stated".into(),
        acts_on: ActsOn::Distances,
        effect,
        rows,
        uncertainty: uncertainty.into(),
        shape: ErrorShape::Normal,
        degrees_of_freedom: String::new(),
    })
}

/// A matrix of the distances of all eight rows.
fn of_distances(entry: impl Fn(usize, usize) -> f64) -> Edit {
    let matrix = (0..8).map(|i| (0..8).map(|j| entry(i, j).to_string()).collect()).collect();
    Edit::SetCovariance(StatedCovariance {
        acts_on: CovarianceOf::Distances,
        rows: (1..=8).collect(),
        matrix,
    })
}

fn with(mut notebook: Notebook, edits: impl IntoIterator<Item = Edit>) -> Notebook {
    for edit in edits {
        notebook.apply(edit, "").unwrap();
    }
    notebook
}

fn claimed_by_scatter() -> Edit {
    Edit::SetClaim(Claim { basis: Basis::Scatter, reason: "test".into() })
}

fn as_json(analysis: &Analysis) -> Value {
    serde_json::to_value(analysis).unwrap()
}

/// Rows typed with u, and the same u in the diagonal of a matrix: one road, so every figure is the same to the last bit,
/// parts of the budget, degrees of freedom, checks, diagnosis and notices among them, and so are trials.
#[test]
fn a_diagonal_matrix_is_what_the_rows_state() {
    let u = 0.04;
    let diagonal = of_distances(|i, j| if i == j { u * u } else { 0.0 });
    let also: [&[Edit]; 3] = [
        &[],
        &[shared(7, Effect::Scale, "2 %", Scope::All)],
        &[shared(7, Effect::Scale, "2 %", Scope::All), claimed_by_scatter()],
    ];
    for also in also {
        let by_rows = with(bench("0.04"), also.iter().cloned());
        let by_matrix = with(with(bench(""), [diagonal.clone()]), also.iter().cloned());
        assert_eq!(as_json(&analyse(&by_rows)), as_json(&analyse(&by_matrix)));
        let trials = |notebook: &Notebook| {
            let plan = Edit::SetTrials(TrialPlan { seed: "1".into(), wanted: "1000".into() });
            outcome(with(notebook.clone(), [plan]).state()).unwrap().summary
        };
        assert_eq!(trials(&by_rows), trials(&by_matrix));
    }
}

/// An offset that the last four rows share, as a component and as a matrix: the same line, speed, degrees of freedom and
/// coverage factor. The parts differ in name alone.
#[test]
fn a_matrix_of_a_common_offset_is_a_shared_component() {
    let (u, common) = (0.01, 0.05);
    let matrix = of_distances(|i, j| {
        f64::from(u8::from(i == j)) * u * u + f64::from(u8::from(i >= 4 && j >= 4)) * common * common
    });
    let offset = shared(9, Effect::Offset, "0.05", Scope::Rows((5..=8).collect()));
    let scale = shared(7, Effect::Scale, "2 %", Scope::All);
    let one = analyse(&with(bench("0.01"), [scale.clone(), offset]));
    let other = analyse(&with(bench(""), [scale, matrix]));
    let (a, b) = (one.line.as_ref().unwrap(), other.line.as_ref().unwrap());
    assert_close(b.fit.slope, a.fit.slope, 1e-12, "slope");
    assert_close(b.fit.intercept, a.fit.intercept, 1e-12, "intercept");
    assert_close(b.fit.chi_square, a.fit.chi_square, 1e-12, "χ²");
    for (mine, theirs) in b.fit.rows.iter().zip(&a.fit.rows) {
        assert_close(mine.normalised.unwrap(), theirs.normalised.unwrap(), 1e-10, "normalised");
    }
    for (mine, theirs) in b.u_distance.iter().zip(&a.u_distance) {
        assert_close(*mine, *theirs, 1e-12, "u(d)");
    }
    let (a, b) = (one.speed.as_ref().unwrap(), other.speed.as_ref().unwrap());
    assert_close(b.c, a.c, 1e-12, "c");
    assert_close(b.relative, a.relative, 1e-12, "u(c)/c");
    assert_close(b.expanded().unwrap(), a.expanded().unwrap(), 1e-10, "U");
    assert_close(b.budget.degrees_of_freedom.unwrap(), a.budget.degrees_of_freedom.unwrap(), 1e-10, "ν_eff");
    let part = |analysis: &Analysis, origin: &Origin| {
        let speed = analysis.speed.as_ref().unwrap();
        speed.budget.components.iter().find(|part| part.origin == *origin).map(|part| part.relative)
    };
    // The first four rows are told of by themselves, so that their part is the one that they would have without a matrix.
    let theirs = [Origin::Distances, Origin::Stated { shared: 9 }].map(|origin| part(&one, &origin).unwrap());
    let mine = [Origin::Distances, Origin::Matrices].map(|origin| part(&other, &origin).unwrap());
    assert_close(mine[0].hypot(mine[1]), theirs[0].hypot(theirs[1]), 1e-11, "the matrix's part");
    for origin in [Origin::Stated { shared: 7 }, Origin::ScreenScatter, Origin::ScreenLimit] {
        assert_close(
            part(&other, &origin).unwrap(),
            part(&one, &origin).unwrap(),
            1e-11,
            format!("{origin:?}"),
        );
    }
}

/// What was stated for several rows stays as stated, whatever the rows scatter: as without a matrix.
#[test]
fn a_claim_from_the_scatter_leaves_shared_components_as_stated() {
    let correlated = of_distances(|i, j| 1e-4 * 0.5_f64.powi(i32::try_from(i.abs_diff(j)).unwrap()));
    let scale = shared(7, Effect::Scale, "2 %", Scope::All);
    let analysis = analyse(&with(bench(""), [correlated, scale, claimed_by_scatter()]));
    let speed = analysis.speed.as_ref().unwrap();
    let part = speed.budget.components.iter().find(|part| part.origin == Origin::Stated { shared: 7 });
    assert!((part.unwrap().relative / 0.02 - 1.0).abs() < 0.02, "{:?}", speed.budget.components);
}

/// Each leaves some combination of rows without any uncertainty; by luck of rounding they gave u(b) = 1.4e-56 and 1.3e-9.
#[test]
fn singular_matrices_are_refused_with_their_rows() {
    let delays = |entry: &dyn Fn(usize, usize) -> f64| {
        let mut notebook = Notebook::new();
        for (row, distance) in (1..).zip(DISTANCES) {
            let cells =
                [(Cell::Distance, distance.to_string()), (Cell::Delay, (3.3 * distance + 2.1).to_string())];
            notebook
                .apply(Edit::AddRow { row, after: None, cells: cells.into_iter().collect() }, "")
                .unwrap();
        }
        let matrix = (0..8).map(|i| (0..8).map(|j| entry(i, j).to_string()).collect()).collect();
        let stated = StatedCovariance { acts_on: CovarianceOf::Delays, rows: (1..=8).collect(), matrix };
        with(notebook, [Edit::SetCovariance(stated)])
    };
    let rank_one = |i: usize, j: usize| (0.1 + 0.03 * i as f64) * (0.1 + 0.03 * j as f64);
    let two_alike = |i: usize, j: usize| match (i, j) {
        (2, 5) | (5, 2) => 0.01,
        _ if i == j => 0.01,
        _ => 0.0,
    };
    let all_of_a_scale = |i: usize, j: usize| 1e-4 * DISTANCES[i] * DISTANCES[j];
    let cases =
        [(delays(&rank_one), [1, 2]), (delays(&two_alike), [3, 6]), (delays(&all_of_a_scale), [1, 2])];
    for (notebook, rows) in cases {
        let refusal = analyse(&notebook).line.unwrap_err();
        assert_eq!((refusal.id, refusal.rows.as_slice()), ("singular", &rows[..]), "{refusal:?}");
    }
}

/// Without the matrix the rows would stand without an uncertainty, or with a smaller one.
#[test]
fn a_matrix_that_cannot_be_used_stops_the_line() {
    for entry in ["O.01", "", "0.01 ± 0.001"] {
        for uy in ["", "0.1"] {
            let mut notebook = Notebook::new();
            for (row, distance) in (1..).zip(DISTANCES) {
                let cells = [
                    (Cell::Distance, distance.to_string()),
                    (Cell::Delay, format!("{:.1}", 3.3 * distance + 2.1)),
                    (Cell::DelayUncertainty, uy.to_owned()),
                ];
                let cells = cells.into_iter().filter(|(_, text)| !text.is_empty()).collect();
                notebook.apply(Edit::AddRow { row, after: None, cells }, "").unwrap();
            }
            let Edit::SetCovariance(mut stated) = of_distances(|i, j| if i == j { 1e-4 } else { 0.0 }) else {
                unreachable!()
            };
            stated.matrix[1][1] = entry.into();
            let analysis = analyse(&with(notebook, [Edit::SetCovariance(stated)]));
            assert!(analysis.line.is_err(), "“{entry}” beside “{uy}” lets the line stand");
            assert!(
                as_json(&analysis)["problems"][0]["place"]
                    == json!({"at": "covariance", "acts_on": "distances"})
            );
        }
    }
}

/// Rows that state their own uncertainty beside a matrix keep it, and the result says that the matrix is left out.
#[test]
fn a_matrix_beside_the_rows_own_uncertainties_is_left_out_aloud() {
    let matrix = of_distances(|i, j| if i == j { 1e-3 } else { 5e-4 });
    let (without, beside) = (analyse(&bench("0.01")), analyse(&with(bench("0.01"), [matrix.clone()])));
    assert_eq!(as_json(&without)["speed"], as_json(&beside)["speed"]);
    let said = |analysis: &Analysis| analysis.notices.iter().any(|notice| notice.id == "entry_replaced");
    assert_eq!((said(&without), said(&beside)), (false, true));
    // A row that leaves it to the matrix would stand there without one.
    let forgotten = Edit::SetCell { row: 3, cell: Cell::DistanceUncertainty, text: String::new() };
    let refusal = analyse(&with(bench("0.01"), [matrix, forgotten])).line.unwrap_err();
    assert_eq!((refusal.id, refusal.rows), ("some_unstated", vec![3]));
}

/// The notebook of a reference case: what the case states goes into cells, matrices and shared components.
fn typed(case: &Value) -> Notebook {
    let mut notebook = Notebook::new();
    let text = |name: &str, place: usize| case[name].get(place).map(ToString::to_string).unwrap_or_default();
    let n = numbers(&case["x"]).len();
    for (place, row) in (0..n).zip(1..) {
        let cells = [
            (Cell::Distance, "x"),
            (Cell::DistanceUncertainty, "ux"),
            (Cell::Delay, "y"),
            (Cell::DelayUncertainty, "uy"),
        ];
        let cells = cells.map(|(cell, name)| (cell, text(name, place)));
        let cells = cells.into_iter().filter(|(_, text)| !text.is_empty()).collect();
        notebook.apply(Edit::AddRow { row, after: None, cells }, "").unwrap();
    }
    let all: Vec<u32> = (1..).take(n).collect();
    let matrices = [
        ("Vx", CovarianceOf::Distances),
        ("Vy", CovarianceOf::Delays),
        ("Vxy", CovarianceOf::Both),
        ("cov", CovarianceOf::Both),
    ];
    for (name, acts_on) in matrices.into_iter().filter(|(name, _)| case.get(name).is_some()) {
        let entry = |i: usize, j: usize| match &case[name][i] {
            Value::Array(row) => row[j].to_string(),
            // The covariance of distance and delay in each row.
            own => {
                if i == j {
                    own.to_string()
                } else {
                    "0".into()
                }
            }
        };
        let matrix = (0..n).map(|i| (0..n).map(|j| entry(i, j)).collect()).collect();
        let stated = StatedCovariance { acts_on, rows: all.clone(), matrix };
        notebook.apply(Edit::SetCovariance(stated), "").unwrap();
    }
    for (id, offset) in (1..).zip(case["offsets"].as_array().into_iter().flatten()) {
        let rows = numbers(&offset["rows"]);
        let rows = all.iter().filter(|row| rows.contains(&f64::from(**row - 1))).copied().collect();
        let Edit::SetShared(mut of) = shared(id, Effect::Offset, &offset["u"].to_string(), Scope::Rows(rows))
        else {
            unreachable!()
        };
        of.acts_on = if offset["of"] == "x" { ActsOn::Distances } else { ActsOn::Delays };
        notebook.apply(Edit::SetShared(of), "").unwrap();
    }
    notebook
}

/// Twelve digits of the line, and of every part of its uncertainty.
#[test]
fn lines_under_stated_matrices() {
    let file = reference("matrices.json");
    for case in rows(&file["cases"]) {
        let analysis = analyse(&typed(case));
        assert_eq!(analysis.problems, vec![], "{}", case["name"]);
        let line = analysis.line.as_ref().unwrap_or_else(|why| panic!("{}: {why:?}", case["name"]));
        let (u, expected) = (line.fit.uncertainty.unwrap(), &case["expected"]);
        let found = [
            ("slope", line.fit.slope),
            ("intercept", line.fit.intercept),
            ("u_slope", u.slope),
            ("u_intercept", u.intercept),
            ("chi2", line.fit.chi_square),
        ];
        for (name, value) in found {
            assert_close(value, number(expected, name), 1e-12, format!("{}: {name}", case["name"]));
        }
        for (name, slope) in expected["parts"].as_object().into_iter().flatten() {
            let origin = match name.as_str() {
                "matrices" => Origin::Matrices,
                "delays" => Origin::Delays,
                offset => Origin::Stated { shared: offset["offset ".len()..].parse::<u32>().unwrap() + 1 },
            };
            let part = line.parts.iter().find(|part| part.origin == origin).unwrap();
            assert_close(part.slope, slope.as_f64().unwrap(), 1e-12, format!("{}: {name}", case["name"]));
        }
    }
}

/// Trials draw what the budget lists, the matrices among it. Uncertainties a tenth of those of the cases keep the curvature
/// of 1/b out of the comparison. A claim from the scatter draws the matrix as the scatter has it, and gives Student's t.
#[test]
fn trials_know_stated_matrices() {
    let file = reference("matrices.json");
    let smaller =
        |value: &Value, by: f64| -> Value { value.as_f64().map_or(Value::Null, |value| json!(value * by)) };
    for case in &rows(&file["cases"])[1..] {
        let mut case = case.clone();
        for (name, by) in [("Vx", 0.01), ("Vy", 0.01), ("Vxy", 0.01), ("uy", 0.1)] {
            for entry in case.get_mut(name).and_then(Value::as_array_mut).into_iter().flatten() {
                *entry = match entry.as_array() {
                    Some(row) => row.iter().map(|value| smaller(value, by)).collect(),
                    None => smaller(entry, by),
                };
            }
        }
        // And so much nearer to the line, lest they scatter more than they may.
        let (slope, intercept) = (number(&case["expected"], "slope"), number(&case["expected"], "intercept"));
        let (x, y) = (numbers(&case["x"]), numbers(&case["y"]));
        let nearer = |(x, y): (&f64, &f64)| {
            let on_line = intercept + slope * x;
            on_line + 0.1 * (y - on_line)
        };
        case["y"] = x.iter().zip(&y).map(nearer).collect();
        for offset in case.get_mut("offsets").and_then(Value::as_array_mut).into_iter().flatten() {
            offset["u"] = smaller(&offset["u"], 0.1);
        }
        let drawn = |notebook: Notebook| {
            let plan = Edit::SetTrials(TrialPlan { seed: "1".into(), wanted: "100000".into() });
            outcome(with(notebook, [plan]).state()).unwrap()
        };
        let (notebook, name) = (typed(&case), &case["name"]);
        let (speed, trials) = (analyse(&notebook).speed.unwrap(), drawn(notebook.clone()));
        let (mean, u) = (trials.summary.mean, speed.u_c());
        assert!((mean - speed.c).abs() < 0.02 * u, "{name}: mean {mean} beside {}", speed.c);
        // Four standard deviations of the standard deviation of 100,000 trials: 4/√(2·100,000).
        assert_close(trials.summary.u, u, 0.009, format!("{name}: u(c)"));
        assert_eq!(trials.verdict(), Some(Verdict::Holds), "{name}: {:?}", trials.validation);
        if name == "delays" {
            // Six degrees of freedom: the variance of t is 6/4; 10 % for its tails, and the curvature of 1/b.
            let notebook = with(notebook, [claimed_by_scatter()]);
            let u = analyse(&notebook).speed.unwrap().u_c();
            assert_close(drawn(notebook).summary.u, u * 1.5_f64.sqrt(), 0.1, "u(c) of Student's t");
        }
    }
}

/// A row that is off by far is named beside a matrix as it is beside the same errors stated one by one.
#[test]
fn the_diagnosis_works_beside_a_matrix() {
    let slipped = |mut notebook: Notebook| {
        let text = format!("{:.3}", 1.0 + 1.7 * DISTANCES[5] + 1.7);
        notebook.apply(Edit::SetCell { row: 6, cell: Cell::EdgeB, text }, "").unwrap();
        notebook
    };
    let matrix = of_distances(|i, j| f64::from(u8::from(i == j)) * 1e-4 + 0.02 * 0.02);
    let offset = shared(9, Effect::Offset, "0.02", Scope::All);
    let named = |notebook: Notebook| {
        let notices = analyse(&notebook).notices;
        notices.iter().map(|notice| (notice.id, notice.rows.clone())).collect::<Vec<_>>()
    };
    let by_matrix = named(slipped(with(bench(""), [matrix])));
    assert_eq!(by_matrix, named(slipped(with(bench("0.01"), [offset]))));
    assert_eq!(by_matrix[0].1, [6], "{by_matrix:?}");
}

/// A covariance of distance and delay is stated beside the uncertainties of both, which must be the row's own.
#[test]
fn covariances_of_distance_and_delay_are_refused_where_they_cannot_be() {
    let file = reference("matrices.json");
    let york = &rows(&file["cases"])[0];
    let of_both = |entry: &str| {
        let texts = vec![vec!["0".to_owned(), "0".into()], vec!["0".into(), entry.into()]];
        Edit::SetCovariance(StatedCovariance { acts_on: CovarianceOf::Both, rows: vec![1, 4], matrix: texts })
    };
    let refused = |notebook: Notebook| analyse(&notebook).line.unwrap_err();
    let larger_than_both = refused(with(typed(york), [of_both("0.0123")]));
    assert_eq!((larger_than_both.id, larger_than_both.rows), ("indefinite", vec![4]));
    assert!(analyse(&with(typed(york), [of_both("0.0122")])).line.is_ok());
    let on_screen = refused(with(bench("0.01"), [of_both("0.0001")]));
    assert_eq!((on_screen.id, on_screen.rows), ("covariance", vec![1, 4]));
    let Edit::SetCovariance(mut twice) = of_both("0.0001") else { unreachable!() };
    twice.rows = vec![4, 4];
    assert_eq!(refused(with(typed(york), [Edit::SetCovariance(twice)])).id, "covariance");
}

/// Distances known together, edges read twice in six rows and once in the others. With 2,000 runs and a true coverage of
/// 95 % the share has a standard deviation of 0.49 %; effective degrees of freedom are an approximation, for which half a
/// per cent more is allowed; rows without a matrix cover as much.
#[test]
fn the_interval_covers_beside_a_matrix() {
    const RUNS: u64 = 2_000;
    const T0: f64 = 3.0;
    let fading = |i: usize, j: usize| 1e-4 * 0.8_f64.powi(i32::try_from(i.abs_diff(j)).unwrap());
    // The triangle of a fading covariance (an autoregression of the first order): each from the one before.
    let drawn = |chance: &mut Random| {
        let mut before = chance.normal();
        DISTANCES.map(|distance| {
            let off = 0.01 * before;
            before = 0.8 * before + 0.6 * chance.normal();
            distance + off
        })
    };
    let covered = |seed: &u64| {
        let mut chance = Random::new(*seed, 7);
        let mut notebook = Notebook::new();
        let setting = Setting { id: 1, time_per_division: "2".into(), uncertainty: "0".into() };
        notebook.apply(Edit::SetSetting(setting), "").unwrap();
        let half_width = Edit::SetBench { field: BenchField::EdgeHalfWidth, text: "0.0001".into() };
        notebook.apply(half_width, "").unwrap();
        let read = drawn(&mut chance);
        for ((row, read), distance) in (1..).zip(read).zip(DISTANCES) {
            let mut edge = |at: f64| {
                let times = if row <= 6 { 2 } else { 1 };
                let texts: Vec<String> =
                    (0..times).map(|_| format!("{:.4}", at + 0.05 * chance.normal())).collect();
                texts.join("; ")
            };
            let delay = T0 + 1.000_278_628_6 / C0 * 1e9 * distance;
            let cells = [
                (Cell::Distance, format!("{read:.6}")),
                (Cell::EdgeA, edge(0.3)),
                (Cell::EdgeB, edge(0.3 + delay / 2.0)),
            ];
            notebook
                .apply(Edit::AddRow { row, after: None, cells: cells.into_iter().collect() }, "")
                .unwrap();
        }
        let speed = analyse(&with(notebook, [of_distances(fading)])).speed.unwrap();
        (speed.c - C0).abs() <= speed.expanded().unwrap()
    };
    let share = (0..RUNS).filter(covered).count() as f64 / RUNS as f64;
    assert!((0.93..=0.97).contains(&share), "coverage {share}");
}
