#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;
use crate::line::{Dense, FreeColumn, Stated, fit};
use crate::synth::chance::Chance;

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

/// A bench and what its true readings are.
struct Bench {
    data: Data,
    true_x: Vec<f64>,
    true_y: Vec<f64>,
}

fn pick(chance: &mut Chance, count: usize) -> usize {
    (0..count).rev().find(|k| chance.unit() * (*k as f64 + 1.0) < 1.0).unwrap_or(0)
}

fn between(chance: &mut Chance, low: f64, high: f64) -> f64 {
    low + (high - low) * chance.unit()
}

/// A size drawn evenly by its logarithm.
fn size(chance: &mut Chance, low: f64, high: f64) -> f64 {
    libm::exp(between(chance, libm::log(low), libm::log(high)))
}

/// Standard uncertainties: none, all alike, or each its own, some zero.
fn spread_of(chance: &mut Chance, n: usize, u: f64) -> Vec<f64> {
    match pick(chance, 4) {
        0 => vec![],
        1 => vec![u; n],
        2 => (0..n).map(|_| u * between(chance, 0.3, 3.0)).collect(),
        _ => (0..n).map(|i| if i % 3 == 0 { 0.0 } else { u * between(chance, 0.5, 2.0) }).collect(),
    }
}

impl Bench {
    /// A bench at random: every form of noise and columns in turn, errors up to `rough` of the span.
    fn drawn(chance: &mut Chance, rough: f64) -> Bench {
        let n = [3, 4, 5, 8, 24, 60, 200][pick(chance, 7)];
        let slope = if chance.unit() < 0.5 { 3.3356 } else { -size(chance, 1e-3, 1e3) };
        let (x_origin, y_origin) = ([0.0, 1e3, 1e6][pick(chance, 3)], chance.uniform(100.0));
        let true_x: Vec<f64> = (0..n).map(|i| i as f64 + chance.uniform(0.4)).collect();
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

    fn stated(chance: &mut Chance, n: usize, u_x: f64, u_y: f64) -> Stated {
        let ux = spread_of(chance, n, u_x);
        let uy = match spread_of(chance, n, u_y) {
            uy if ux.contains(&0.0) || ux.is_empty() => vec![u_y; n.max(uy.len())],
            uy => uy,
        };
        let cov_xy = if ux.is_empty() || uy.is_empty() || chance.unit() < 0.6 {
            vec![]
        } else {
            ux.iter().zip(&uy).map(|(ux, uy)| ux * uy * chance.uniform(0.95)).collect()
        };
        let mut shared: Vec<Column> =
            (0..pick(chance, 5)).map(|_| Bench::shared(chance, n, u_x, u_y)).collect();
        if let Some(twin) = shared.first().filter(|_| chance.unit() < 0.3) {
            // A column all but the same as another, and much larger than the rows' own errors.
            let times = |list: &[f64], factor: f64| list.iter().map(|v| v * factor).collect();
            let twin = Column { x: times(&twin.x, 1.0 + 1e-9), y: times(&twin.y, 1.0 - 1e-9) };
            shared.push(twin);
        }
        Stated { ux, uy, cov_xy, shared }
    }

    fn shared(chance: &mut Chance, n: usize, u_x: f64, u_y: f64) -> Column {
        let first = pick(chance, n);
        let step = |u: f64| (0..n).map(|i| if i >= first { u } else { 0.0 }).collect::<Vec<_>>();
        let ramp = |u: f64| (0..n).map(|i| u * i as f64 / n as f64).collect::<Vec<_>>();
        let times = size(chance, 0.1, 30.0);
        match pick(chance, 4) {
            0 => Column { x: step(times * u_x), y: vec![] },
            1 => Column { x: vec![], y: step(times * u_y) },
            2 => Column { x: step(times * u_x), y: ramp(u_y) },
            _ => Column { x: ramp(u_x), y: vec![u_y * 100.0; n] },
        }
    }

    fn free(chance: &mut Chance, n: usize) -> Vec<FreeColumn> {
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
    fn readings(&self, chance: &mut Chance) -> (Vec<f64>, Vec<f64>) {
        let (mut x, mut y) = (self.true_x.clone(), self.true_y.clone());
        let n = x.len();
        let at = |list: &[f64], i: usize| list.get(i).copied().unwrap_or(0.0);
        let Noise::Stated(stated) = &self.data.noise else {
            let u = 0.01 * (y[n - 1] - y[0]);
            y.iter_mut().for_each(|y| *y += chance.normal(u));
            return (x, y);
        };
        for i in 0..n {
            let (ux, uy, cov) = (at(&stated.ux, i), at(&stated.uy, i), at(&stated.cov_xy, i));
            let (first, second) = (chance.normal(1.0), chance.normal(1.0));
            let along = if ux > 0.0 { cov / ux } else { 0.0 };
            x[i] += ux * first;
            y[i] += along * first + (uy * uy - along * along).max(0.0).sqrt() * second;
        }
        for column in &stated.shared {
            let size = chance.normal(1.0);
            (0..n).for_each(|i| x[i] += size * at(&column.x, i));
            (0..n).for_each(|i| y[i] += size * at(&column.y, i));
        }
        for (k, column) in self.data.free.iter().enumerate() {
            let list = if matches!(column, FreeColumn::InX(_)) { &mut x } else { &mut y };
            let step = [40.0, -7.0, 0.3][k % 3];
            list.iter_mut().zip(column.entries()).for_each(|(value, entry)| *value += step * entry);
        }
        (x, y)
    }
}

/// How many of the benches had a line, and how many of those a quick way.
fn sweep(seed: u64, rough: f64, benches: usize) -> (usize, usize) {
    let mut chance = Chance::seeded(seed);
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

#[test]
fn refits_are_fits() {
    for (seed, rough) in [(1, 1e-3), (2, 1e-2), (3, 5e-2), (4, 0.3)] {
        let (lines, quick) = sweep(seed, rough, 300);
        println!("{rough}: {lines} lines, {quick} quick");
        assert!(lines > 200, "{rough}: {lines}");
    }
}
