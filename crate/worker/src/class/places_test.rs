#![expect(clippy::panic, clippy::unwrap_used, reason = "a test stops where its data are wrong")]

use super::*;
use slope_bench::chance::Chance;

const PLACES: usize = 12;
const U: f64 = 0.05;

fn place(index: usize) -> BenchPlace {
    BenchPlace { rail: Some(0), centimetre: i64::try_from(10 * index).unwrap() }
}

/// Residuals over their standard uncertainties by the hat matrix, for rows of one uncertainty.
fn by_hat_matrix(x: &[f64], y: &[f64], u: f64) -> Vec<f64> {
    let n = x.len() as f64;
    let mean = x.iter().sum::<f64>() / n;
    let square: f64 = x.iter().map(|x| (x - mean).powi(2)).sum();
    let hat = |i: usize, j: usize| 1.0 / n + (x[i] - mean) * (x[j] - mean) / square;
    (0..x.len())
        .map(|i| {
            let fitted: f64 = (0..x.len()).map(|j| hat(i, j) * y[j]).sum();
            (y[i] - fitted) / (u * (1.0 - hat(i, i)).sqrt())
        })
        .collect()
}

/// A notebook whose readings scatter by `scatter`, and are moved by so much at some places, ns; its u is stated as [`U`].
fn notebook(chance: &mut Chance, scatter: f64, moved: &[(usize, f64)]) -> Vec<LineRow> {
    let x: Vec<f64> = (0..PLACES).map(|index| 0.5 + 0.1 * index as f64).collect();
    let mut y: Vec<f64> = x.iter().map(|x| 1.5 + 3.34 * x + chance.normal(scatter)).collect();
    for (index, by) in moved {
        y[*index] += by;
    }
    let each = by_hat_matrix(&x, &y, U).into_iter().enumerate();
    each.map(|(index, normalized)| LineRow {
        place: place(index),
        mark: 10.0 * index as f64,
        unit: "cm",
        distance: x[index],
        delay: y[index],
        u: U,
        normalized,
        residual: Some(normalized * U),
    })
    .collect()
}

/// 0.95^0.1 = e^(−0.0051293…).
#[test]
fn the_rate_of_all_is_shared_out() {
    assert!((share_of_each(0.05, 10) - 0.005_116_197).abs() < 1e-9);
    assert!((share_of_each(0.01, 1) - 0.01).abs() < 1e-15);
}

#[test]
fn a_line_laid_anew_is_that_of_the_rows_left() {
    let rows = notebook(&mut Chance::seeded(1), U, &[(4, 30.0 * U)]);
    let rest: Vec<&LineRow> = rows.iter().filter(|row| row.place != place(4)).collect();
    let (x, y): (Vec<f64>, Vec<f64>) = rest.iter().map(|row| (row.distance, row.delay)).unzip();
    let expected = by_hat_matrix(&x, &y, U);
    let found = left(&rows, &[place(4)]);
    assert_eq!(found.len(), PLACES - 1);
    for (found, expected) in found.iter().zip(expected) {
        assert!((found.normalized - expected).abs() < 1e-9, "{} {expected}", found.normalized);
    }
    let bare: Vec<LineRow> = rows.iter().map(|row| LineRow { u: 0.0, ..*row }).collect();
    let squares: f64 = left(&bare, &[place(4)]).iter().map(|row| row.residual.unwrap().powi(2)).sum();
    let s = (squares / (PLACES - 3) as f64).sqrt();
    for (bare, stated) in left(&bare, &[place(4)]).iter().zip(&found) {
        assert!((bare.normalized * s - stated.normalized * U).abs() < 1e-9);
    }
    assert!(left(&rows, &(0..PLACES - 2).map(place).collect::<Vec<_>>()).is_empty());
}

#[test]
fn a_mark_that_all_misread_is_named_and_no_other() {
    for (times, seed) in [(3.0, 1), (10.0, 2), (100.0, 3)] {
        let mut chance = Chance::seeded(seed);
        let class: Vec<Vec<LineRow>> =
            (0..12).map(|_| notebook(&mut chance, U, &[(4, -times * U)])).collect();
        let found = off(&class).unwrap();
        let [one] = found.as_slice() else { panic!("{times}: {found:?}") };
        assert_eq!((one.place, one.notebooks), (place(4), 12));
        assert!(one.together >= 11 && one.normalized < 0.0 && one.residual.unwrap() < 0.0, "{one:?}");
    }
}

#[test]
fn of_two_marks_both_are_named() {
    let mut chance = Chance::seeded(5);
    let class: Vec<Vec<LineRow>> =
        (0..12).map(|_| notebook(&mut chance, U, &[(2, 40.0 * U), (9, -5.0 * U)])).collect();
    let found: Vec<(BenchPlace, bool)> =
        off(&class).unwrap().iter().map(|off| (off.place, off.normalized > 0.0)).collect();
    assert_eq!(found, [(place(2), true), (place(9), false)]);
}

/// A slip of one is said in that notebook.
#[test]
fn a_blunder_of_one_is_not_the_class() {
    let mut chance = Chance::seeded(7);
    let mut class: Vec<Vec<LineRow>> = (0..11).map(|_| notebook(&mut chance, U, &[])).collect();
    class.push(notebook(&mut chance, U, &[(4, 400.0 * U)]));
    assert_eq!(off(&class), Some(Vec::new()));
    assert_eq!(off(&class[..1]), None);
    assert_eq!(off(&[]), None);
}

/// Of 1,000 classes without a fault about 10 may have a place named: 22 or more have a probability below 0.1 %. So too where
/// all state a third of their scatter.
#[test]
fn false_alarms_are_as_rare_as_stated() {
    for scatter in [U, 3.0 * U] {
        let mut chance = Chance::seeded(11);
        let mut class =
            || -> Vec<Vec<LineRow>> { (0..8).map(|_| notebook(&mut chance, scatter, &[])).collect() };
        let alarms = (0..1000).filter(|_| off(&class()).is_some_and(|found| !found.is_empty())).count();
        assert!(alarms < 22, "{alarms}");
    }
}
