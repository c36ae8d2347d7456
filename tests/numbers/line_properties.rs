//! What must hold of every fitted line, with answers planted in the data or computed a second way.
//! Whole numbers and halves are chosen where the planted answer is to be exact in doubles.
#![expect(clippy::unwrap_used, clippy::panic, reason = "tests")]

use nalgebra::{DMatrix, DVector};
use proptest::prelude::*;
use slope_of_light::line::{
    Data, Dense, Fit, FreeColumn, LineError, Noise, Refit, SharedColumn, Stated, Uncertainty, fit,
};

fn close(got: f64, want: f64, relative: f64, what: &str) {
    assert!((got - want).abs() <= relative * want.abs(), "{what}: got {got:e}, want {want:e}");
}

/// Compares a value that may be near zero with another, in units of its uncertainty.
fn same(got: f64, want: f64, u: f64, share: f64, what: &str) {
    assert!((got - want).abs() <= share * u, "{what}: got {got:e}, want {want:e}, u {u:e}");
}

fn uncertainty(line: &Fit) -> Uncertainty {
    line.uncertainty.unwrap()
}

/// Readings of a bench: distinct positions, scatter, uncertainties in both variables, up to three splices.
fn bench() -> impl Strategy<Value = Data> {
    (3_usize..30, 0_usize..3)
        .prop_flat_map(|(n, n_shared)| {
            let row = (-0.4..0.4, -1.0..1.0, 0.5e-3..5e-3, 0.02..0.5, -0.9..0.9);
            let splice = (0..n, 1e-3..2e-2, -0.5..0.5);
            (prop::collection::vec(row, n), prop::collection::vec(splice, n_shared), -20.0..20.0, 2.0..4.0)
        })
        .prop_map(|(rows, splices, intercept, slope)| {
            let at = |i: usize| 0.3 * (i as f64 + rows[i].0);
            let x = (0..rows.len()).map(at).collect();
            let y =
                rows.iter().enumerate().map(|(i, row)| intercept + slope * at(i) + row.1 * row.3).collect();
            let (ux, uy) = rows.iter().map(|row| (row.2, row.3)).unzip();
            let cov_xy = rows.iter().map(|row| row.2 * row.3 * row.4).collect();
            let beyond =
                |first: usize, u: f64| (0..rows.len()).map(|i| if i >= first { u } else { 0.0 }).collect();
            let shared = splices
                .iter()
                .map(|(first, ux, uy)| SharedColumn { x: beyond(*first, *ux), y: beyond(0, *uy) })
                .collect();
            Data {
                x,
                y,
                noise: Noise::Stated(Stated { ux, uy, cov_xy, shared, ..Stated::default() }),
                free: vec![],
            }
        })
}

fn stated(data: &Data) -> &Stated {
    match &data.noise {
        Noise::Stated(stated) => stated,
        Noise::Unstated => panic!("no uncertainty is stated"),
    }
}

/// A full covariance matrix alone.
fn full(dense: Dense) -> Noise {
    Noise::Stated(Stated { dense, ..Stated::default() })
}

/// The full matrix of a stated covariance.
fn dense(data: &Data) -> Dense {
    let stated = stated(data);
    let n = data.x.len();
    let block =
        |diagonal: &dyn Fn(usize) -> f64, shared: &dyn Fn(&SharedColumn, usize, usize) -> f64| -> Vec<f64> {
            let entry = |i: usize, j: usize| {
                let own = if i == j { diagonal(i) } else { 0.0 };
                own + stated.shared.iter().map(|column| shared(column, i, j)).sum::<f64>()
            };
            (0..n * n).map(|place| entry(place / n, place % n)).collect()
        };
    Dense {
        xx: block(&|i| stated.ux[i].powi(2), &|c, i, j| c.x[i] * c.x[j]),
        yy: block(&|i| stated.uy[i].powi(2), &|c, i, j| c.y[i] * c.y[j]),
        xy: block(&|i| stated.cov_xy[i], &|c, i, j| c.x[i] * c.y[j]),
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// Readings that lie on a line give that line, whatever is stated; with whole numbers no rounding blurs them.
    #[test]
    fn exact_lines_are_recovered(data in bench(), intercept in -1000_i32..1000, slope in 1_i32..100) {
        let x: Vec<f64> = (0..data.x.len()).map(|i| (i * i) as f64).collect();
        let y: Vec<f64> = x.iter().map(|x| f64::from(intercept) + f64::from(slope) * x).collect();
        for noise in [data.noise.clone(), Noise::Unstated, full(dense(&data))] {
            let line = fit(&Data { x: x.clone(), y: y.clone(), noise, free: vec![] }).unwrap();
            close(line.slope, f64::from(slope), 1e-12, "slope");
            let size = x.last().unwrap() * f64::from(slope) + f64::from(intercept.abs());
            prop_assert!((line.intercept - f64::from(intercept)).abs() <= 1e-13 * size);
        }
    }

    /// Adding one number to every y moves the intercept by it; adding one to every x moves it by −slope times that.
    /// Nothing else moves. (1e-9: the shifted readings themselves are rounded, up to 1e-12 of an uncertainty each.)
    #[test]
    fn shifts_move_the_intercept_alone(data in bench(), dx in -100.0..100.0, dy in -1000.0..1000.0) {
        let moved = Data {
            x: data.x.iter().map(|x| x + dx).collect(),
            y: data.y.iter().map(|y| y + dy).collect(),
            ..data.clone()
        };
        let (before, after) = (fit(&data).unwrap(), fit(&moved).unwrap());
        let u = uncertainty(&after);
        same(after.slope, before.slope, u.slope, 1e-9, "slope");
        same(after.intercept, before.intercept + dy - before.slope * dx, u.intercept, 1e-9, "intercept");
        close(u.slope, uncertainty(&before).slope, 1e-9, "u(slope)");
        close(u.at_centre, uncertainty(&before).at_centre, 1e-9, "u at the centre");
        prop_assert!((after.chi_square - before.chi_square).abs() <= 1e-9 * (1.0 + before.chi_square));
    }

    /// Units are powers of two here, so the scaled results are the same to the last bit.
    #[test]
    fn units_scale_exactly(data in bench(), px in -60_i32..60, py in -60_i32..60) {
        let (sx, sy) = (2.0_f64.powi(px), 2.0_f64.powi(py));
        let times = |list: &[f64], factor: f64| -> Vec<f64> { list.iter().map(|value| value * factor).collect() };
        let Stated { ux, uy, cov_xy, shared, .. } = stated(&data);
        let noise = Noise::Stated(Stated {
            ux: times(ux, sx),
            uy: times(uy, sy),
            cov_xy: times(cov_xy, sx * sy),
            shared: shared.iter().map(|c| SharedColumn { x: times(&c.x, sx), y: times(&c.y, sy) }).collect(),
            ..Stated::default()
        });
        let scaled = fit(&Data { x: times(&data.x, sx), y: times(&data.y, sy), noise, free: vec![] }).unwrap();
        let line = fit(&data).unwrap();
        let bits = |values: [f64; 5]| values.map(f64::to_bits);
        let all = |fit: &Fit, slope: f64, y: f64| {
            let u = uncertainty(fit);
            bits([fit.slope * slope, fit.intercept * y, fit.chi_square, u.slope * slope, u.intercept * y])
        };
        prop_assert_eq!(all(&scaled, 1.0, 1.0), all(&line, sy / sx, sy));
    }

    /// An error shared by all rows alike moves only the uncertainty of the intercept, in quadrature.
    #[test]
    fn an_error_of_all_rows_moves_the_intercept_alone(data in bench(), u_common in 0.01..100.0) {
        let mut wider = stated(&data).clone();
        wider.shared.push(SharedColumn { x: vec![], y: vec![u_common; data.x.len()] });
        let (before, after) = (fit(&data).unwrap(), fit(&Data { noise: Noise::Stated(wider), ..data }).unwrap());
        let (u, u_wider) = (uncertainty(&before), uncertainty(&after));
        same(after.slope, before.slope, u.slope, 1e-9, "slope");
        same(after.intercept, before.intercept, u_wider.intercept, 1e-11, "intercept");
        close(u_wider.slope, u.slope, 1e-9, "u(slope)");
        close(u_wider.intercept, u.intercept.hypot(u_common), 1e-9, "u(intercept)");
    }

    /// Columns, the full matrix, and a matrix beside columns are three ways to write one covariance.
    #[test]
    fn columns_and_matrix_agree(data in bench(), beside in 0_usize..3) {
        let Stated { shared, .. } = stated(&data).clone();
        let (inside, outside) = shared.split_at(beside.min(shared.len()));
        let inside = Stated { shared: inside.to_vec(), ..stated(&data).clone() };
        let dense = dense(&Data { noise: Noise::Stated(inside), ..data.clone() });
        let noise = Noise::Stated(Stated { dense, shared: outside.to_vec(), ..Stated::default() });
        let whole = fit(&Data { noise, ..data.clone() }).unwrap();
        let line = fit(&data).unwrap();
        let u = uncertainty(&line);
        same(whole.slope, line.slope, u.slope, 1e-9, "slope");
        same(whole.intercept, line.intercept, u.intercept, 1e-9, "intercept");
        close(uncertainty(&whole).slope, u.slope, 1e-10, "u(slope)");
        close(uncertainty(&whole).intercept, u.intercept, 1e-10, "u(intercept)");
        for (a, b) in whole.rows.iter().zip(&line.rows) {
            same(a.leverage, b.leverage, 1.0, 1e-8, "leverage");
            same(a.true_x, b.true_x, 1.0, 1e-10, "true position");
            if let Some((a, b)) = a.normalised.zip(b.normalised) {
                same(a, b, 1.0, 1e-6, "normalised residual");
            }
        }
    }

    /// A refit of redrawn readings is a fit of them. Errors here are up to half the step between positions.
    #[test]
    fn refits_are_fits(data in bench(), errors in prop::collection::vec((-2.0..2.0, -2.0..2.0), 30)) {
        let Stated { ux, uy, .. } = stated(&data).clone();
        let mut again = data.clone();
        for (i, (error_x, error_y)) in errors.iter().take(ux.len()).enumerate() {
            again.x[i] += error_x * ux[i];
            again.y[i] += error_y * uy[i];
        }
        let slope = Refit::new(&data, &fit(&data).unwrap()).slope(&again.x, &again.y);
        let line = fit(&again).unwrap();
        same(slope, line.slope, uncertainty(&line).slope, 1e-7, "slope");
    }

    /// The order of rows is of no consequence.
    #[test]
    fn order_is_of_no_consequence(data in bench()) {
        let backwards: Vec<usize> = (0..data.x.len()).rev().collect();
        let (line, turned) = (fit(&data).unwrap(), fit(&data.only(&backwards)).unwrap());
        let u = uncertainty(&line);
        close(turned.slope, line.slope, 1e-12, "slope");
        same(turned.intercept, line.intercept, u.intercept, 1e-10, "intercept");
        close(uncertainty(&turned).slope, u.slope, 1e-12, "u(slope)");
    }

    /// No list at all stands for zeros.
    #[test]
    fn no_list_stands_for_zeros(data in bench()) {
        let Stated { ux, shared, .. } = stated(&data).clone();
        let in_x = |uy| Noise::Stated(Stated { ux: ux.clone(), uy, shared: shared.clone(), ..Stated::default() });
        let [none, zeros] = [vec![], vec![0.0; ux.len()]].map(|uy| fit(&Data { noise: in_x(uy), ..data.clone() }));
        prop_assert_eq!(none, zeros);
    }

    /// With exact x, shared errors are generalised least squares with the full matrix, here by explicit inverse.
    #[test]
    fn shared_errors_are_generalised_least_squares(data in bench()) {
        let Stated { uy, shared, .. } = stated(&data).clone();
        let shared: Vec<SharedColumn> = shared.into_iter().map(|c| SharedColumn { x: vec![], y: c.y }).collect();
        let n = data.x.len();
        let v = DMatrix::from_fn(n, n, |i, j| {
            let own = if i == j { uy[i] * uy[i] } else { 0.0 };
            own + shared.iter().map(|c| c.y[i] * c.y[j]).sum::<f64>()
        });
        let inverse = v.try_inverse().unwrap();
        let design = DMatrix::from_fn(n, 2, |i, j| if j == 0 { 1.0 } else { data.x[i] });
        let covariance = (design.transpose() * &inverse * &design).try_inverse().unwrap();
        let best = &covariance * design.transpose() * &inverse * DVector::from_column_slice(&data.y);
        let line = fit(&Data { noise: Noise::Stated(Stated { uy, shared, ..Stated::default() }), ..data }).unwrap();
        let u = uncertainty(&line);
        same(line.intercept, best[0], u.intercept, 1e-8, "intercept");
        same(line.slope, best[1], u.slope, 1e-8, "slope");
        close(u.intercept, covariance[(0, 0)].sqrt(), 1e-9, "u(intercept)");
        close(u.slope, covariance[(1, 1)].sqrt(), 1e-9, "u(slope)");
    }

    /// An unknown step is a shared error of boundless uncertainty.
    #[test]
    fn an_unknown_step_is_a_shared_error_without_bound(data in bench()) {
        let n = data.x.len();
        prop_assume!(n >= 6);
        let beyond = |u: f64| -> Vec<f64> { (0..n).map(|i| if i >= n / 2 { u } else { 0.0 }).collect() };
        let free = fit(&Data { free: vec![FreeColumn::InX(beyond(1.0))], ..data.clone() }).unwrap();
        let mut wide = stated(&data).clone();
        wide.shared.push(SharedColumn { x: beyond(1e6), y: vec![] });
        let wide = fit(&Data { noise: Noise::Stated(wide), ..data }).unwrap();
        let u = uncertainty(&free);
        same(wide.slope, free.slope, u.slope, 1e-6, "slope");
        close(uncertainty(&wide).slope, u.slope, 1e-6, "u(slope)");
        same(wide.shared.last().unwrap().value * 1e6, free.free[0].value, free.free[0].u.unwrap(), 1e-5, "step");
        close(wide.shared.last().unwrap().u.unwrap() * 1e6, free.free[0].u.unwrap(), 1e-5, "u(step)");
        let covariance = wide.shared.last().unwrap().covariance_with_slope.unwrap() * 1e6;
        let scale = u.slope * free.free[0].u.unwrap();
        same(covariance, free.free[0].covariance_with_slope.unwrap(), scale, 1e-5, "covariance");
    }

    /// Whatever the numbers, there is a finite line or a named error.
    #[test]
    fn nothing_panics(
        rows in prop::collection::vec([anything(), anything(), anything(), anything(), anything()], 0..8),
        columns in prop::collection::vec(prop::collection::vec(anything(), 0..9), 0..4),
        dense in prop::collection::vec(anything(), 64),
        form in 0..3,
    ) {
        let list = |k: usize| -> Vec<f64> { rows.iter().map(|row| row[k]).collect() };
        let n = rows.len();
        let shared = columns.iter().map(|c| SharedColumn { x: c.clone(), y: vec![] }).collect();
        let noise = match form {
            0 => Noise::Unstated,
            1 => Noise::Stated(Stated { ux: list(2), uy: list(3), cov_xy: list(4), shared, ..Stated::default() }),
            _ => full(Dense { yy: dense[..n * n].to_vec(), xx: dense[64 - n * n..].to_vec(), xy: vec![] }),
        };
        let free = columns.into_iter().map(FreeColumn::InX).take(1).collect();
        if let Ok(line) = fit(&Data { x: list(0), y: list(1), noise, free }) {
            prop_assert!(line.slope.is_finite() && line.intercept.is_finite() && line.chi_square >= 0.0);
        }
    }
}

fn anything() -> impl Strategy<Value = f64> {
    prop_oneof![
        4 => -3.0..3.0,
        2 => 0.0..1.0,
        1 => Just(0.0),
        1 => Just(1.0),
        1 => prop::num::f64::ANY,
        1 => prop::sample::select(vec![f64::NAN, f64::INFINITY, 1e300, -1e300, 1e-300, f64::MIN_POSITIVE, f64::MAX]),
    ]
}

fn plain(x: &[f64], y: &[f64]) -> Data {
    Data { x: x.to_vec(), y: y.to_vec(), noise: Noise::Unstated, free: vec![] }
}

fn with(ux: &[f64], uy: &[f64]) -> Data {
    let noise = Noise::Stated(Stated { ux: ux.to_vec(), uy: uy.to_vec(), ..Stated::default() });
    Data { noise, ..plain(&[1.0, 2.0, 4.0], &[1.0, 2.5, 4.0]) }
}

/// Each input that cannot give a line, and its error.
#[test]
fn degenerate_inputs_are_named() {
    let three = plain(&[1.0, 2.0, 4.0], &[1.0, 2.5, 4.0]);
    let dense =
        |yy: &[f64]| Data { noise: full(Dense { yy: yy.to_vec(), ..Dense::default() }), ..three.clone() };
    let correlated =
        Noise::Stated(Stated { cov_xy: vec![0.0, 0.02, 0.0], ..stated(&with(&[0.1; 3], &[0.1; 3])).clone() });
    let cases = [
        (plain(&[], &[]), LineError::TooFewRows { got: 0, needed: 2 }),
        (plain(&[1.0], &[1.0]), LineError::TooFewRows { got: 1, needed: 2 }),
        (
            Data { free: vec![FreeColumn::InY(vec![0.0, 1.0])], ..plain(&[1.0, 2.0], &[1.0, 2.0]) },
            LineError::TooFewRows { got: 2, needed: 3 },
        ),
        (plain(&[2.0; 4], &[1.0, 2.0, 3.0, 4.0]), LineError::AllPositionsEqual),
        (plain(&[1.0, f64::NAN], &[1.0, 2.0]), LineError::NotFinite { row: 1, which: "x" }),
        (plain(&[1.0, 2.0], &[f64::INFINITY, 2.0]), LineError::NotFinite { row: 0, which: "y" }),
        (plain(&[1.0, 2.0], &[2.0]), LineError::LengthMismatch { which: "y", got: 1, expected: 2 }),
        (with(&[0.1, -0.1, 0.1], &[0.1; 3]), LineError::NegativeUncertainty { row: 1 }),
        (with(&[0.0, 0.1, 0.0], &[0.0, 0.1, 0.0]), LineError::ZeroUncertainty { rows: vec![0, 2] }),
        (with(&[], &[]), LineError::ZeroUncertainty { rows: vec![0, 1, 2] }),
        (Data { noise: correlated, ..three.clone() }, LineError::Indefinite { rows: vec![1] }),
        (
            Data { free: vec![FreeColumn::InY(vec![1.0; 3])], ..three.clone() },
            LineError::UndeterminedColumn { column: 0 },
        ),
        (
            Data { free: vec![FreeColumn::InY(vec![1.0, 2.0, 4.0])], ..three.clone() },
            LineError::UndeterminedSlope,
        ),
        (
            Data { free: vec![FreeColumn::InX(vec![0.0; 3])], ..three.clone() },
            LineError::UndeterminedColumn { column: 0 },
        ),
        (dense(&[1.0, 2.0, 0.0, 2.0, 1.0, 0.0, 0.0, 0.0, 1.0]), LineError::Indefinite { rows: vec![0, 1] }),
        (
            dense(&[0.04, 0.06, 0.1, 0.06, 0.09, 0.15, 0.1, 0.15, 0.25]),
            LineError::Singular { rows: vec![0, 1] },
        ),
        (dense(&[1.0, 0.0, 1.0, 0.0, 1.0, 0.0, 1.0, 0.0, 1.0]), LineError::Singular { rows: vec![0, 2] }),
        (dense(&[1.0, 0.5, 0.0, 0.4, 1.0, 0.0, 0.0, 0.0, 1.0]), LineError::NotSymmetric { rows: (0, 1) }),
        (dense(&[1.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 1.0]), LineError::ZeroUncertainty { rows: vec![1] }),
        (dense(&[1.0; 4]), LineError::LengthMismatch { which: "cov(y, y)", got: 4, expected: 9 }),
        (plain(&[-1.7e308, 1.7e308], &[0.0, 1.0]), LineError::OutOfRange),
        (plain(&[0.0, 1e-300], &[0.0, 1e300]), LineError::OutOfRange),
    ];
    for (data, want) in cases {
        assert_eq!(fit(&data).unwrap_err(), want, "{data:?}");
        assert!(!want.to_string().is_empty());
    }
}

/// Two rows give the line through both, with nothing left to judge it by.
#[test]
fn two_rows_make_a_line() {
    let line = fit(&plain(&[1.0, 3.0], &[5.0, 9.0])).unwrap();
    assert_eq!((line.slope, line.intercept, line.chi_square), (2.0, 3.0, 0.0));
    assert_eq!((line.uncertainty, line.scatter(), line.degrees_of_freedom), (None, None, 0));
    let noise = Noise::Stated(Stated { ux: vec![0.3; 2], uy: vec![0.1; 2], ..Stated::default() });
    let line = fit(&Data { noise, ..plain(&[1.0, 3.0], &[5.0, 9.0]) }).unwrap();
    close(line.slope, 2.0, 1e-14, "slope");
    // Each end is known to √(0.1² + (2·0.3)²) across the line, over a span of 2.
    close(uncertainty(&line).slope, (2.0 * 0.37_f64).sqrt() / 2.0, 1e-13, "u(slope)");
    assert_eq!(line.rows[0].normalised, None);
}

/// Planted lines far from where doubles are comfortable: offsets of 10⁹, units from 10⁻¹⁵ to 10¹⁵, 3 to 5000 rows, errors
/// in x ten times the step between positions, positions that agree in eleven digits. Readings are whole multiples of a
/// power of two, so that the planted answer is exact and only our own arithmetic can blur it.
#[test]
fn hard_cases_keep_their_digits() {
    for rows in [3_u32, 10, 100, 5000] {
        for (offset, step) in [(0.0, 1.0), (1e9, 1.0), (1.0, 2.0_f64.powi(-38))] {
            for unit in [2.0_f64.powi(-50), 1.0, 2.0_f64.powi(50)] {
                for (ux, uy) in [(1e-3, 0.1), (10.0, 0.1), (10.0, 1e-6), (1e-12, 1e12), (1e-12, 1e-12)] {
                    let x: Vec<f64> = (0..rows).map(|i| (offset + step * f64::from(i)) * unit).collect();
                    let y: Vec<f64> = x.iter().map(|x| 3.0 * x).collect();
                    let [ux, uy] = [ux, uy].map(|u| vec![u * step * unit; x.len()]);
                    let noise = Noise::Stated(Stated { ux, uy, ..Stated::default() });
                    let what = format!("{rows} rows from {offset} by {step}, unit {unit}");
                    let line =
                        fit(&Data { x, y, noise, free: vec![] }).unwrap_or_else(|e| panic!("{what}: {e}"));
                    close(line.slope, 3.0, 1e-13, &what);
                }
            }
        }
    }
}

/// A free column that all but agrees with the line is refused; one that differs in its sixth digit is told apart, and the
/// planted bend is found to nine digits.
#[test]
fn columns_are_told_apart_or_refused() {
    let bent = |bend: f64| {
        let x: Vec<f64> = (0..8).map(f64::from).collect();
        let column: Vec<f64> = x.iter().map(|x| x + bend * x * x).collect();
        let y = x.iter().zip(&column).map(|(x, column)| 3.0 * x + 2.0 * column).collect();
        fit(&Data { x, y, noise: Noise::Unstated, free: vec![FreeColumn::InY(column)] })
    };
    let line = bent(2.0_f64.powi(-16)).unwrap();
    close(line.slope, 3.0, 1e-9, "slope");
    close(line.free[0].value, 2.0, 1e-9, "column");
    assert_eq!(bent(2.0_f64.powi(-36)).unwrap_err(), LineError::UndeterminedSlope);
}

/// Where errors in x are as large as the span of the rows, χ² has two valleys (one slope of each sign). Every slope is
/// tried here, with the profile of χ² written out by hand; the fit must end as low.
#[test]
fn the_lowest_valley_is_found() {
    let u = [1.0, 0.6, 1.5, 0.8, 0.2];
    // Numerical Recipes' quick generator: a cloud without order, the same on every run.
    let mut state = 1_u32;
    let mut place = || {
        state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        f64::from(state) / f64::from(u32::MAX) * 4.0
    };
    for k in 0..500 {
        let x: Vec<f64> = (0..5).map(|_| place()).collect();
        let y: Vec<f64> = (0..5).map(|_| place()).collect();
        let chi_square = |b: f64| {
            let weight: Vec<f64> = u.iter().map(|u| 1.0 / (u * u * (1.0 + b * b))).collect();
            let total: f64 = weight.iter().sum();
            let level: f64 = (0..5).map(|i| weight[i] * (y[i] - b * x[i])).sum::<f64>() / total;
            (0..5).map(|i| weight[i] * (y[i] - b * x[i] - level).powi(2)).sum::<f64>()
        };
        let lowest = (-1799..1800)
            .map(|tenth| chi_square((f64::from(tenth) * 0.05).to_radians().tan()))
            .fold(f64::INFINITY, f64::min);
        let noise = Noise::Stated(Stated { ux: u.to_vec(), uy: u.to_vec(), ..Stated::default() });
        match fit(&Data { noise, ..plain(&x, &y) }) {
            Ok(line) => {
                close(line.chi_square, chi_square(line.slope), 1e-10, "chi-square");
                assert!(line.chi_square <= lowest * (1.0 + 1e-9), "{k}: {} > {lowest}", line.chi_square);
            }
            Err(error) => panic!("{k}: {error}"),
        }
    }
}
