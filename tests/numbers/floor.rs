//! The engine's floor: lines that are hard on doubles, against answers of 50 digits, and the inputs that no digits can
//! be got from, which must be refused by name.
//!
//! `reference/floor.json` says of each case how it is hard, the condition number of its columns (1, x) and how many
//! digits its doubles would leave if they were roundings of something else; `reference/make_floor.py` tells how the
//! answers were found. Taken as the very numbers they are, the doubles leave more, and nine digits are asked for
//! throughout: of an uncertainty, χ², slope or intercept by itself; of what may be near zero beside its uncertainty.
#![expect(clippy::unwrap_used, clippy::panic, reason = "tests")]

use serde_json::Value;
use slope_of_light::line::{Data, Fit, FittedValue, FreeColumn, LineError, Noise, SharedColumn, Stated, fit};

use crate::reference::{number, read, rows};

/// Knuth's 64-bit congruential generator (MMIX); the upper 53 bits as a double in 0 … 1.
struct Chance(u64);

impl Chance {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 * 2.0_f64.powi(-53)
    }
}

fn whole(object: &Value, name: &str) -> usize {
    usize::try_from(object[name].as_u64().unwrap_or_else(|| panic!("no {name} in {object}"))).unwrap()
}

/// The readings of a case, as `readings` of make_floor.py makes them, operation for operation.
fn data(case: &Value) -> Data {
    let mut chance = Chance(case["seed"].as_u64().unwrap());
    let (px, py, ratio) = (&case["x"], &case["y"], number(case, "ratio"));
    let [mut x, mut y, mut ux, mut uy] = [const { Vec::new() }; 4];
    let group = whole(px, "group");
    for i in 0..whole(case, "rows") {
        let [jitter, of_x, of_y, wide_x, wide_y] = std::array::from_fn(|_| chance.next());
        let place = number(px, "from")
            + number(px, "step") * (i / group) as f64
            + number(px, "gap") * (i % group) as f64;
        let place = place + number(px, "jitter") * (jitter - 0.5);
        x.push((place + number(px, "scatter") * (of_x - 0.5)) * number(px, "unit"));
        let on_line = number(py, "intercept") + number(py, "slope") * place;
        y.push((on_line + number(py, "scatter") * (of_y - 0.5)) * number(py, "unit"));
        let wider = |by: f64| 1.0 + (ratio - 1.0) * (by * by * by);
        ux.push(number(px, "u") * wider(wide_x) * number(px, "unit"));
        uy.push(number(py, "u") * wider(wide_y) * number(py, "unit"));
    }
    let list = |name: &str| case[name].as_array().unwrap().iter();
    let shared: Vec<SharedColumn> = list("shared").map(|column| shared(column, case, &x, &y)).collect();
    let free: Vec<FreeColumn> = list("free").map(|column| free(column, &x)).collect();
    let readings = [&x, &y, &ux, &uy].into_iter();
    let columns = shared.iter().flat_map(|column| [&column.x, &column.y]);
    let all = readings.chain(columns).map(Vec::as_slice).chain(free.iter().map(FreeColumn::entries));
    assert_eq!(fingerprint(all.flatten()), case["fingerprint"].as_str().unwrap(), "{}: readings", case["id"]);
    let noise = match case["form"].as_str().unwrap() {
        "ordinary" => Noise::Unstated,
        _ => Noise::Stated(Stated { ux, uy, shared, ..Stated::default() }),
    };
    Data { x, y, noise, free }
}

fn shared(column: &Value, case: &Value, x: &[f64], y: &[f64]) -> SharedColumn {
    let in_x = column["in"] == "x";
    let (readings, unit) =
        if in_x { (x, number(&case["x"], "unit")) } else { (y, number(&case["y"], "unit")) };
    let (size, first) = (number(column, "size"), whole(column, "from"));
    let effect: Vec<f64> = if column["kind"] == "scale" {
        readings.iter().map(|value| size * value).collect()
    } else {
        (0..x.len()).map(|i| if i >= first { size * unit } else { 0.0 }).collect()
    };
    if in_x { SharedColumn { x: effect, y: vec![] } } else { SharedColumn { x: vec![], y: effect } }
}

fn free(column: &Value, x: &[f64]) -> FreeColumn {
    let entries = if column["kind"] == "step" {
        (0..x.len()).map(|i| f64::from(u8::from(i >= whole(column, "from")))).collect()
    } else {
        let origin = number(column, "origin");
        x.iter().map(|value| (value - origin) * (value - origin)).collect()
    };
    if column["in"] == "x" { FreeColumn::InX(entries) } else { FreeColumn::InY(entries) }
}

/// Tells whether two programs made the same doubles (after G. Fowler, L. C. Noll and K.-P. Vo).
fn fingerprint<'a>(values: impl Iterator<Item = &'a f64>) -> String {
    let state = values.fold(0_u64, |state, value| (state ^ value.to_bits()).wrapping_mul(1_099_511_628_211));
    format!("{state:016x}")
}

/// What is compared, by the names in the file, each with what its error is measured by.
fn compared(line: &Fit, want: &dyn Fn(&str) -> f64) -> Vec<(String, f64, f64)> {
    let u = line.uncertainty.unwrap();
    let mut found: Vec<(String, f64, f64)> = [
        ("slope", line.slope),
        ("intercept", line.intercept),
        ("u_slope", u.slope),
        ("u_intercept", u.intercept),
        ("chi_square", line.chi_square),
    ]
    .map(|(name, value)| (name.to_owned(), value, want(name).abs()))
    .into();
    found.push(("covariance".into(), u.covariance, want("u_slope") * want("u_intercept")));
    let beside: [(&str, &[FittedValue]); 2] = [("shared", &line.shared), ("free", &line.free)];
    for (kind, estimates) in beside {
        for (k, estimate) in estimates.iter().enumerate() {
            let (name, of_u) = (format!("{kind}_{k}"), format!("u_{kind}_{k}"));
            let u = want(&of_u);
            found.push((name.clone(), estimate.value, want(&name).abs().max(u)));
            found.push((of_u, estimate.u.unwrap(), u));
        }
    }
    found
}

#[test]
fn nine_digits_of_every_hard_line() {
    let file = read("floor.json");
    let tolerance = number(&file["tolerance"], "relative");
    let cases = rows(&file["cases"]);
    for case in cases {
        let line = fit(&data(case)).unwrap_or_else(|error| panic!("{}: {error}", case["id"]));
        let want = |name: &str| -> f64 { case["expected"][name].as_str().unwrap().parse().unwrap() };
        let found = compared(&line, &want);
        assert_eq!(found.len(), case["expected"].as_object().unwrap().len(), "{}: all compared", case["id"]);
        let mut fewest = (16.0, String::new());
        for (name, value, measure) in found {
            let off = (value - want(&name)).abs() / measure;
            let left = number(&case["digits_left"], &name);
            assert!(
                off <= tolerance,
                "{} ({}): {name} is off by {off:e}; its rounding leaves {left} digits",
                case["id"],
                case["says"]
            );
            let digits = -off.max(1e-16).log10();
            if digits < fewest.0 {
                fewest = (digits, format!("{name}, of which rounding leaves {left:.1}"));
            }
        }
        println!("{}: {:.1} digits of {}", case["id"], fewest.0, fewest.1);
    }
}

/// The cases are as hard as they were meant to be.
#[test]
fn the_hard_lines_reach_the_corners() {
    let file = read("floor.json");
    let cases = rows(&file["cases"]);
    let of_form = |form: &str| cases.iter().filter(|case| case["form"] == form).count();
    for form in ["ordinary", "weighted", "both", "shared", "free"] {
        assert!(of_form(form) >= 6, "{form}");
    }
    let most = |value: &dyn Fn(&Value) -> f64| cases.iter().map(value).fold(f64::NEG_INFINITY, f64::max);
    assert!(most(&|case| number(case, "condition")) >= 1e12);
    assert!(most(&|case| number(&case["x"], "from")) >= 1e9);
    assert!(most(&|case| number(case, "rows")) >= 5000.0 && most(&|case| -number(case, "rows")) <= -3.0);
    for axis in ["x", "y"] {
        assert!(most(&|case| number(&case[axis], "unit")) >= 1e15);
        assert!(most(&|case| -number(&case[axis], "unit")) >= -1e-15);
    }
    assert!(most(&|case| number(&case["x"], "u") / number(&case["x"], "step")) >= 10.0);
}

/// Where the readings tell no nine digits of the slope, whatever the arithmetic, the fit says why instead. (Lists of the
/// wrong kind are refused in `line_properties.rs`.)
#[test]
fn what_has_no_digits_is_refused_by_name() {
    let twelve: Vec<f64> = (0..12).map(f64::from).collect();
    let plain = |x: &[f64], free: Vec<FreeColumn>| {
        let wave = x.iter().enumerate().map(|(i, x)| 2.5 + 3.0 * x + if i % 2 == 0 { 0.125 } else { -0.125 });
        Data { x: x.to_vec(), y: wave.collect(), noise: Noise::Unstated, free }
    };
    let squares = |x: &[f64]| vec![FreeColumn::InY(x.iter().map(|x| x * x).collect())];
    let far: Vec<f64> = twelve.iter().map(|x| 1e9 + x).collect();
    let step = |first: usize| -> Vec<f64> { (0..12).map(|i| if i >= first { 1.0 } else { 0.0 }).collect() };
    let upright = Stated { ux: vec![1.0; 4], uy: vec![0.1; 4], ..Stated::default() };
    let tenths: Vec<f64> = twelve.iter().map(|i| 0.1 + i * 1e-17).collect();
    let cases = [
        (
            "positions 0.1 + 0.2 and 0.3",
            plain(&[0.1 + 0.2, 0.3, 0.1 + 0.2], vec![]),
            LineError::AllPositionsEqual,
        ),
        ("one place, far away", plain(&[1e9, 1e9 + 1e-6, 1e9], vec![]), LineError::AllPositionsEqual),
        (
            "a column that is the same in all rows but for its rounding",
            plain(&twelve, vec![FreeColumn::InY(tenths)]),
            LineError::UndeterminedColumn { column: 0 },
        ),
        (
            "squares at 10⁹, whose doubles keep nothing of the bend",
            plain(&far, squares(&far)),
            LineError::UndeterminedColumn { column: 0 },
        ),
        (
            "a column that is x again",
            plain(&twelve, vec![FreeColumn::InY(twelve.clone())]),
            LineError::UndeterminedSlope,
        ),
        (
            "the same unknown twice",
            plain(&twelve, vec![FreeColumn::InX(step(5)), FreeColumn::InY(step(5))]),
            LineError::UndeterminedColumn { column: 1 },
        ),
        (
            "three steps where only two are left beside the constant",
            plain(
                &twelve,
                vec![
                    FreeColumn::InY(step(5)),
                    FreeColumn::InY(step(8)),
                    FreeColumn::InY(step(5).iter().zip(step(8)).map(|(a, b)| a + b).collect()),
                ],
            ),
            LineError::UndeterminedColumn { column: 2 },
        ),
        (
            "a step in x along a level line",
            Data { y: vec![4.0; 12], ..plain(&twelve, vec![FreeColumn::InX(step(5))]) },
            LineError::UndeterminedColumn { column: 0 },
        ),
        (
            "rows that could stand at one place: the best line is upright",
            Data {
                x: vec![1e-3, 2e-3, 1e-3, 2e-3],
                y: vec![5.0, 5.0, 8.0, 8.0],
                noise: Noise::Stated(upright),
                free: vec![],
            },
            LineError::NoConvergence,
        ),
        (
            "a span beyond the range of doubles",
            Data { y: vec![1.0, 2.0, 4.0], ..plain(&[-1.7e308, 0.0, 1.7e308], vec![]) },
            LineError::OutOfRange,
        ),
    ];
    for (what, data, want) in cases {
        assert_eq!(fit(&data).unwrap_err(), want, "{what}");
    }
}
