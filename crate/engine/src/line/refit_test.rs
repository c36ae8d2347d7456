#![expect(clippy::unwrap_used, clippy::panic, reason = "tests")]

use super::*;
use crate::budget::Random;
use crate::line::{Dense, FreeColumn, LineError, Stated, fit};

/// The engine itself is the reference: `fit` is checked against published values in `tests/numbers/line.rs`.
fn by_fit(data: &Data, x: &[f64], y: &[f64]) -> Option<Fit> {
    fit(&Data { x: x.to_vec(), y: y.to_vec(), ..data.clone() }).ok()
}

/// Asks that both give the same slope, to 10⁻¹¹ of it or 10⁻⁷ of its standard uncertainty, or neither any.
fn same(refit: &mut Refit, data: &Data, x: &[f64], y: &[f64], what: &str) {
    let got = refit.slope(x, y);
    let Some(want) = by_fit(data, x, y) else {
        assert!(got.is_nan(), "{what}: got {got}, but there is no line");
        return;
    };
    let u = want.uncertainty.map_or(0.0, |u| u.slope);
    let close = (1e-11 * want.slope.abs()).max(1e-7 * u);
    assert!((got - want.slope).abs() <= close, "{what}: got {got:e}, want {:e}, u {u:e}", want.slope);
}

/// What is stated of readings whose noise is stated.
fn stated(data: &Data) -> &Stated {
    match &data.noise {
        Noise::Stated(stated) => stated,
        Noise::Unstated => panic!("no uncertainty is stated"),
    }
}

/// A bench and what its true readings are.
struct Bench {
    data: Data,
    true_x: Vec<f64>,
    true_y: Vec<f64>,
}

fn pick(chance: &mut Random, count: usize) -> usize {
    (0..count).rev().find(|k| chance.unit() * (*k as f64 + 1.0) < 1.0).unwrap_or(0)
}

fn between(chance: &mut Random, low: f64, high: f64) -> f64 {
    low + (high - low) * chance.unit()
}

/// A size drawn evenly by its logarithm.
fn size(chance: &mut Random, low: f64, high: f64) -> f64 {
    libm::exp(between(chance, libm::log(low), libm::log(high)))
}

/// Standard uncertainties: none, all alike, or each its own, some zero.
fn spread_of(chance: &mut Random, n: usize, u: f64) -> Vec<f64> {
    match pick(chance, 4) {
        0 => vec![],
        1 => vec![u; n],
        2 => (0..n).map(|_| u * between(chance, 0.3, 3.0)).collect(),
        _ => (0..n).map(|i| if i % 3 == 0 { 0.0 } else { u * between(chance, 0.5, 2.0) }).collect(),
    }
}

impl Bench {
    /// A bench at random: every form of noise and columns in turn, errors up to `rough` of the span.
    fn drawn(chance: &mut Random, rough: f64) -> Bench {
        let n = [3, 4, 5, 8, 24, 60, 200][pick(chance, 7)];
        let slope = if chance.unit() < 0.5 { 3.3356 } else { -size(chance, 1e-3, 1e3) };
        let (x_origin, y_origin) = ([0.0, 1e3, 1e6][pick(chance, 3)], between(chance, -100.0, 100.0));
        let true_x: Vec<f64> = (0..n).map(|i| i as f64 + between(chance, -0.4, 0.4)).collect();
        let span = n as f64;
        let u_x = span * size(chance, 1e-5, rough);
        let u_y = span * slope.abs() * size(chance, 1e-5, rough);
        let stated = Bench::stated(chance, n, u_x, u_y);
        let noise = if pick(chance, 6) == 0 { Noise::Unstated } else { Noise::Stated(stated) };
        let free = Bench::free(chance, n);
        let true_y: Vec<f64> = true_x.iter().map(|x| y_origin + slope * x).collect();
        let true_x: Vec<f64> = true_x.iter().map(|x| x_origin + x).collect();
        let data = Data { x: true_x.clone(), y: true_y.clone(), noise, free };
        let mut bench = Bench { data, true_x, true_y };
        (bench.data.x, bench.data.y) = bench.readings(chance);
        bench
    }

    fn stated(chance: &mut Random, n: usize, u_x: f64, u_y: f64) -> Stated {
        let ux = spread_of(chance, n, u_x);
        let uy = match spread_of(chance, n, u_y) {
            uy if ux.contains(&0.0) || ux.is_empty() => vec![u_y; n.max(uy.len())],
            uy => uy,
        };
        let cov_xy = if ux.is_empty() || uy.is_empty() || chance.unit() < 0.6 {
            vec![]
        } else {
            ux.iter().zip(&uy).map(|(ux, uy)| ux * uy * between(chance, -0.95, 0.95)).collect()
        };
        let mut shared: Vec<SharedColumn> =
            (0..pick(chance, 5)).map(|_| Bench::shared(chance, n, u_x, u_y)).collect();
        if let Some(twin) = shared.first().filter(|_| chance.unit() < 0.3) {
            // A column all but the same as another, and much larger than the rows' own errors.
            let times = |list: &[f64], factor: f64| list.iter().map(|v| v * factor).collect();
            let twin = SharedColumn { x: times(&twin.x, 1.0 + 1e-9), y: times(&twin.y, 1.0 - 1e-9) };
            shared.push(twin);
        }
        Stated { ux, uy, cov_xy, shared, ..Stated::default() }
    }

    fn shared(chance: &mut Random, n: usize, u_x: f64, u_y: f64) -> SharedColumn {
        let first = pick(chance, n);
        let step = |u: f64| (0..n).map(|i| if i >= first { u } else { 0.0 }).collect::<Vec<_>>();
        let ramp = |u: f64| (0..n).map(|i| u * i as f64 / n as f64).collect::<Vec<_>>();
        let times = size(chance, 0.1, 30.0);
        match pick(chance, 4) {
            0 => SharedColumn { x: step(times * u_x), y: vec![] },
            1 => SharedColumn { x: vec![], y: step(times * u_y) },
            2 => SharedColumn { x: step(times * u_x), y: ramp(u_y) },
            _ => SharedColumn { x: ramp(u_x), y: vec![u_y * 100.0; n] },
        }
    }

    fn free(chance: &mut Random, n: usize) -> Vec<FreeColumn> {
        let count = if n < 8 { 0 } else { pick(chance, 3) };
        (0..count)
            .map(|k| {
                let first = n * (k + 1) / 4;
                let step = (0..n).map(|i| if i >= first { 1.0 } else { 0.0 }).collect();
                if chance.unit() < 0.5 { FreeColumn::InX(step) } else { FreeColumn::InY(step) }
            })
            .collect()
    }

    /// Readings with errors as they are stated; as large as 1 % of the span where nothing is.
    fn readings(&self, chance: &mut Random) -> (Vec<f64>, Vec<f64>) {
        let (mut x, mut y) = (self.true_x.clone(), self.true_y.clone());
        let n = x.len();
        let at = |list: &[f64], i: usize| list.get(i).copied().unwrap_or(0.0);
        let Noise::Stated(stated) = &self.data.noise else {
            let u = 0.01 * (y[n - 1] - y[0]);
            for y in &mut y {
                *y += u * chance.normal();
            }
            return (x, y);
        };
        for i in 0..n {
            let (ux, uy, cov) = (at(&stated.ux, i), at(&stated.uy, i), at(&stated.cov_xy, i));
            let (first, second) = (chance.normal(), (1.0 * chance.normal()));
            let along = if ux > 0.0 { cov / ux } else { 0.0 };
            x[i] += ux * first;
            y[i] += along * first + (uy * uy - along * along).max(0.0).sqrt() * second;
        }
        for column in &stated.shared {
            let size = chance.normal();
            (0..n).for_each(|i| x[i] += size * at(&column.x, i));
            (0..n).for_each(|i| y[i] += size * at(&column.y, i));
        }
        for (k, column) in self.data.free.iter().enumerate() {
            // Steps much larger than the line itself lead the engine's own search astray.
            let step = [0.3, -0.2][k % 2];
            let (list, step) = match column {
                FreeColumn::InX(_) => (&mut x, step * n as f64),
                FreeColumn::InY(_) => (&mut y, step * (self.true_y[n - 1] - self.true_y[0])),
            };
            list.iter_mut().zip(column.entries()).for_each(|(value, entry)| *value += step * entry);
        }
        (x, y)
    }
}

/// How many benches had a line, and how many of those a quick way.
fn sweep(seed: u64, rough: f64, benches: usize) -> (usize, usize) {
    let mut chance = Random::new(seed, 0);
    let (mut lines, mut quick) = (0, 0);
    for k in 0..benches {
        let bench = Bench::drawn(&mut chance, rough);
        let Ok(line) = fit(&bench.data) else { continue };
        let mut refit = Refit::new(&bench.data, &line);
        lines += 1;
        quick += usize::from(refit.quick.is_some());
        let what = format!("bench {k} of {rough}");
        same(&mut refit, &bench.data, &bench.data.x, &bench.data.y, &what);
        for _ in 0..12 {
            let (x, y) = bench.readings(&mut chance);
            same(&mut refit, &bench.data, &x, &y, &what);
        }
    }
    (lines, quick)
}

/// Every combination of noise and columns; errors from a hundred-thousandth of the span up to a share of it at which
/// hardly anything can be told. The quick way must be the rule.
#[test]
fn refits_are_fits() {
    for (seed, rough, share) in [(1, 1e-3, 0.9), (2, 1e-2, 0.9), (3, 5e-2, 0.8), (4, 0.3, 0.6)] {
        let (lines, quick) = sweep(seed, rough, 300);
        assert!(lines > 200, "{rough}: {lines} lines");
        assert!(quick as f64 > share * lines as f64, "{rough}: {quick} of {lines} lines have a quick way");
    }
}

/// 24 rows from 0.5 m to 12 m as a student has them, uncertainties in both variables different in every row.
fn rows_24(factor_x: f64) -> Data {
    let mut chance = Random::new(24, 0);
    let ux: Vec<f64> = (0..24).map(|_| 0.01 * factor_x * between(&mut chance, 0.5, 1.5)).collect();
    let uy: Vec<f64> = (0..24).map(|_| 0.15 * between(&mut chance, 0.5, 1.5)).collect();
    let true_x = (0..24).map(|i| 0.5 * f64::from(i + 1));
    let (x, y) = true_x
        .zip(ux.iter().zip(&uy))
        .map(|(x, (ux, uy))| (x + (*ux * chance.normal()), 12.0 + 3.3356 * x + (*uy * chance.normal())))
        .unzip();
    Data { x, y, noise: Noise::Stated(Stated { ux, uy, ..Stated::default() }), free: vec![] }
}

fn redrawn(data: &Data, chance: &mut Random) -> (Vec<f64>, Vec<f64>) {
    let bench = Bench { data: data.clone(), true_x: data.x.clone(), true_y: data.y.clone() };
    bench.readings(chance)
}

/// The quick way holds from u(d) far below u(t) to u(d) a fortieth of the bench, and each trial takes it.
#[test]
fn the_common_bench_is_quick() {
    let mut chance = Random::new(5, 0);
    for factor_x in [0.0, 0.1, 1.0, 10.0, 30.0] {
        let data = rows_24(factor_x);
        let line = fit(&data).unwrap();
        let refit = Refit::new(&data, &line);
        let quick = refit.quick.unwrap();
        for _ in 0..200 {
            let (x, y) = redrawn(&data, &mut chance);
            let mut rows = vec![[[0.0]; 2]; 24];
            let [slope] = quick.slopes::<1>(x.as_chunks().0, y.as_chunks().0, &mut rows);
            let want = by_fit(&data, &x, &y).unwrap().slope;
            let u = line.uncertainty.unwrap().slope;
            assert!((slope - want).abs() <= 1e-7 * u, "{factor_x}: got {slope}, want {want}, u {u}");
        }
    }
}

/// Readings that scatter three times as much as stated, and trials that scatter about them as much again: the quick way
/// is made for those too.
#[test]
fn more_scatter_than_stated_is_foreseen() {
    let mut chance = Random::new(9, 0);
    let wide = rows_24(3.0);
    let stated = stated(&wide);
    let thrice = |list: &[f64]| list.iter().map(|u| 3.0 * u).collect();
    let errors = Stated { ux: stated.ux.clone(), uy: thrice(&stated.uy), ..Stated::default() };
    let nominal = Data { noise: Noise::Stated(errors), ..wide.clone() };
    let (x, y) = redrawn(&nominal, &mut chance);
    let data = Data { x, y, noise: rows_24(1.0).noise, free: vec![] };
    let line = fit(&data).unwrap();
    assert!(line.scatter().unwrap() > 2.0);
    let quick = Refit::new(&data, &line).quick.unwrap();
    let mut engine = 0;
    for _ in 0..400 {
        let (x, y) = redrawn(&Data { noise: nominal.noise.clone(), ..data.clone() }, &mut chance);
        let mut rows = vec![[[0.0]; 2]; 24];
        let [slope] = quick.slopes::<1>(x.as_chunks().0, y.as_chunks().0, &mut rows);
        engine += usize::from(slope.is_nan());
        let want = by_fit(&data, &x, &y).unwrap().slope;
        let u = line.uncertainty.unwrap().times(line.scatter().unwrap()).slope;
        assert!(slope.is_nan() || (slope - want).abs() <= 1e-7 * u, "got {slope}, want {want}, u {u}");
    }
    assert!(engine < 4, "{engine} of 400 trials to the engine");
}

#[test]
fn nominal_readings_give_the_nominal_slope() {
    for data in [rows_24(1.0), Data { noise: Noise::Unstated, ..rows_24(0.0) }] {
        let line = fit(&data).unwrap();
        let slope = Refit::new(&data, &line).slope(&data.x, &data.y);
        assert!((slope - line.slope).abs() <= 1e-14 * line.slope, "got {slope}, want {}", line.slope);
    }
}

/// x and y of one trial.
type Trial = [Vec<f64>; 2];

/// Trials of one line side by side, `L` at a time.
fn side_by_side<const L: usize>(refit: &mut Refit, trials: &[Trial]) -> Vec<u64> {
    let lanes = |trials: &[Trial], which: usize| {
        let row = |i: usize| std::array::from_fn(|l| trials[l][which][i]);
        (0..trials[0][which].len()).map(row).collect::<Vec<[f64; L]>>()
    };
    let slopes = |trials: &[Trial]| refit.slopes(&lanes(trials, 0), &lanes(trials, 1));
    trials.chunks_exact(L).flat_map(slopes).map(f64::to_bits).collect()
}

/// Among the trials are ones for the engine, which must leave their neighbours alone.
#[test]
fn a_trial_has_the_same_bits_in_any_lane() {
    let mut chance = Random::new(6, 0);
    let plain = rows_24(1.0);
    let stated = stated(&plain).clone();
    let step = |at: usize, u: f64| (0..24).map(|i| if i < at { 0.0 } else { u }).collect::<Vec<f64>>();
    let shared =
        vec![SharedColumn { x: step(8, 0.012), y: vec![] }, SharedColumn { x: vec![], y: step(0, 0.3) }];
    let noise = Noise::Stated(Stated { shared, ..stated });
    let splices = Data { noise, free: vec![FreeColumn::InX(step(16, 1.0))], ..plain.clone() };
    for data in [plain, splices] {
        let mut refit = Refit::new(&data, &fit(&data).unwrap());
        assert!(refit.quick.is_some());
        let mut trials: Vec<Trial> = (0..120).map(|_| redrawn(&data, &mut chance).into()).collect();
        trials[13][1].iter_mut().zip(&data.x).for_each(|(y, x)| *y += 2.0 * x);
        trials[29][0].fill(1.0);
        trials[54][1][3] = f64::NAN;
        let one_by_one = side_by_side::<1>(&mut refit, &trials);
        assert_eq!(one_by_one.iter().filter(|bits| f64::from_bits(**bits).is_nan()).count(), 2);
        assert_eq!(side_by_side::<2>(&mut refit, &trials), one_by_one);
        assert_eq!(side_by_side::<3>(&mut refit, &trials), one_by_one);
        assert_eq!(side_by_side::<4>(&mut refit, &trials), one_by_one);
        assert_eq!(side_by_side::<6>(&mut refit, &trials), one_by_one);
        assert_eq!(side_by_side::<8>(&mut refit, &trials), one_by_one);
    }
}

/// Each degenerate draw gives NaN, and the next sound one its slope.
#[test]
fn where_there_is_no_line_there_is_nan() {
    for data in [rows_24(1.0), Data { noise: Noise::Unstated, ..rows_24(1.0) }] {
        let mut refit = Refit::new(&data, &fit(&data).unwrap());
        let with = |place: usize, value: f64| {
            let mut list = data.x.clone();
            list[place] = value;
            list
        };
        let cases = [
            ("all at one place", vec![2.0; 24], data.y.clone()),
            ("x not a number", with(3, f64::NAN), data.y.clone()),
            ("x infinite", with(0, f64::INFINITY), data.y.clone()),
            ("y not a number", data.x.clone(), with(23, f64::NAN)),
            ("y infinite", data.x.clone(), with(5, f64::NEG_INFINITY)),
            ("too few rows", data.x[..23].to_vec(), data.y[..23].to_vec()),
            ("too many rows", vec![1.0; 25], vec![1.0; 25]),
            ("y too short", data.x.clone(), data.y[..20].to_vec()),
            ("nothing", vec![], vec![]),
        ];
        for (what, x, y) in cases {
            let slope = refit.slope(&x, &y);
            let sound = x.len() == 24 && y.len() == 24 && by_fit(&data, &x, &y).is_some();
            assert!(slope.is_nan() && !sound, "{what}: {slope}");
            same(&mut refit, &data, &data.x, &data.y, what);
        }
    }
}

/// Readings the quick way does not foresee: far off, or all but at one place.
#[test]
fn the_engine_takes_what_is_not_foreseen() {
    let data = rows_24(1.0);
    let mut refit = Refit::new(&data, &fit(&data).unwrap());
    for off in [-20.0, -1.0, 0.05, 0.5, 3.0, 1e6] {
        let y: Vec<f64> = data.y.iter().zip(&data.x).map(|(y, x)| y + off * x).collect();
        same(&mut refit, &data, &data.x, &y, "far off");
        let near: Vec<f64> = data.x.iter().map(|x| 1.0 + 1e-4 * off * x).collect();
        same(&mut refit, &data, &near, &data.y, "near together");
    }
    for (x, y) in [(1e308, -1e308), (-1e200, 1.0), (1e160, 1e160), (1.0, -1e150)] {
        let with = |list: &[f64], value: f64| [&list[..23], &[value]].concat();
        same(&mut refit, &data, &with(&data.x, x), &with(&data.y, y), "one too large");
    }
}

/// Rows that vary together, beside errors of their own and shared ones: foreseen as rows by themselves are.
#[test]
fn rows_that_vary_together_are_refitted_quickly_too() {
    let data = rows_24(1.0);
    let fading = |size: f64| -> Vec<f64> {
        let entry = |place: usize| size * 0.7_f64.powf((place / 24).abs_diff(place % 24) as f64);
        (0..24 * 24).map(entry).collect()
    };
    let (xx, yy, xy) = (fading(4e-4), fading(0.02), fading(1e-3));
    let cases = [
        Dense { yy: yy.clone(), ..Dense::default() },
        Dense { xx: xx.clone(), ..Dense::default() },
        Dense { xx: xx.clone(), yy: yy.clone(), ..Dense::default() },
        Dense { xx, yy, xy },
    ];
    for (case, dense) in cases.into_iter().enumerate() {
        for alone in [false, true] {
            let beside =
                if alone && !dense.yy.is_empty() { Stated::default() } else { stated(&data).clone() };
            let noise = Noise::Stated(Stated { dense: dense.clone(), ..beside });
            let data = Data { noise, ..data.clone() };
            let mut refit = Refit::new(&data, &fit(&data).unwrap());
            assert!(refit.quick.is_some(), "case {case}: the engine is asked for every trial");
            for stream in 0..50 {
                let mut chance = Random::new(7, stream);
                let (mut x, mut y) = redrawn(&rows_24(1.0), &mut chance);
                for column in dense.columns(24) {
                    let size = chance.normal();
                    add(&mut x, &column.x, |effect| size * effect);
                    add(&mut y, &column.y, |effect| size * effect);
                }
                same(&mut refit, &data, &x, &y, &format!("case {case}, stream {stream}"));
            }
        }
    }
}

/// Units and origins of every size: powers of two, so that the readings are the same.
#[test]
fn units_and_origins_are_of_no_consequence() {
    let mut chance = Random::new(8, 0);
    let data = rows_24(1.0);
    let stated = stated(&data);
    let times = |list: &[f64], factor: f64| list.iter().map(|v| v * factor).collect::<Vec<_>>();
    for (unit_x, unit_y) in [(0, 0), (-50, 50), (150, 150), (-150, 20), (300, -250), (-400, -400)] {
        let (unit_x, unit_y) = (libm::ldexp(1.0, unit_x), libm::ldexp(1.0, unit_y));
        for origin in [0.0, 1e6, -1e9] {
            let moved = |x: &[f64], y: &[f64]| {
                let x: Vec<f64> = x.iter().map(|x| x + origin).collect();
                let y: Vec<f64> = y.iter().map(|y| y + 2.0 * origin).collect();
                (times(&x, unit_x), times(&y, unit_y))
            };
            let noise = Noise::Stated(Stated {
                ux: times(&stated.ux, unit_x),
                uy: times(&stated.uy, unit_y),
                ..Stated::default()
            });
            let (x, y) = moved(&data.x, &data.y);
            let there = Data { x, y, noise, free: vec![] };
            let mut refit = Refit::new(&there, &fit(&there).unwrap());
            let (x, y) = redrawn(&data, &mut chance);
            let (x, y) = moved(&x, &y);
            same(&mut refit, &there, &x, &y, &format!("units {unit_x:e} and {unit_y:e}, from {origin}"));
        }
    }
}

/// Ten rows with errors in both, one of which is off by eighty standard uncertainties.
fn with_an_outlier() -> Data {
    let x: Vec<f64> = (0..10).map(f64::from).collect();
    let mut y: Vec<f64> = x.iter().map(|x| 1.0 + 3.0 * x).collect();
    y[0] += 8.0;
    let noise = Stated { ux: vec![0.03; 10], uy: vec![0.1; 10], ..Stated::default() };
    Data { x, y, noise: Noise::Stated(noise), free: vec![] }
}

#[test]
fn beside_an_outlier_the_line_keeps_its_valley() {
    let data = with_an_outlier();
    let line = fit(&data).unwrap();
    let mut refit = Refit::new(&data, &line);
    assert_eq!(refit.search, Search::At(line.slope), "the line leads far before any other");
    let mut chance = Random::new(11, 0);
    for trial in 0..200 {
        let [x, y] = [(&data.x, 0.03), (&data.y, 0.1)]
            .map(|(list, u)| list.iter().map(|value| value + u * chance.normal()).collect::<Vec<_>>());
        same(&mut refit, &data, &x, &y, &format!("trial {trial} beside an outlier"));
    }
}

#[test]
fn where_another_valley_is_near_all_slopes_are_looked_at() {
    // Points on a circle: by its symmetry no slope fits better than another.
    let turn = |k: usize| core::f64::consts::TAU * k as f64 / 12.0;
    let (x, y) = (0..12).map(|k| (libm::cos(turn(k)), 1.01 * libm::sin(turn(k)))).unzip();
    let noise = Stated { ux: vec![0.1; 12], uy: vec![0.1; 12], ..Stated::default() };
    let data = Data { x, y, noise: Noise::Stated(noise), free: vec![] };
    assert_eq!(lead(&data), Err(LineError::NoConvergence));
    let data = Data { y: data.y.iter().zip(&data.x).map(|(y, x)| y + 0.2 * x).collect(), ..data };
    let lead = lead(&data).unwrap();
    assert!(lead < LEAD, "{lead}");
    assert_eq!(Refit::new(&data, &fit(&data).unwrap()).search, Search::Everywhere);
}
