//! Two measurements of the speed of light, as readings repeated at one place: mean, pooled scatter and doubtful values.
//!
//! S. Newcomb's third series of 1882, as S. M. Stigler prints it (Ann. Stat. 5 (1977) 1055, Table 5): deviations of the
//! passage time from 24.8 µs, in nanoseconds. A. A. Michelson's hundred values of 1879 (N. E. Dorsey 1944, Table 22),
//! with mean and standard deviation certified by NIST (`StRD`, univariate, Michelso).
#![expect(clippy::unwrap_used, reason = "tests")]

use slope_of_light::line::diagnostics::{chauvenet, peirce};
use slope_of_light::screen::{Edges, pooled_scatter};

use crate::reference::{assert_close, number, numbers, read};

/// Readings of one edge against a single one of the other.
fn repeated(values: &[f64]) -> Edges {
    Edges::pair(&[0.0], values).unwrap()
}

#[test]
fn newcomb_1882() {
    let file = read("newcomb-1882-light.json");
    let values = numbers(&file["inputs"]["y_order_stigler"]);
    let edges = repeated(&values);
    let scatter = pooled_scatter([&edges]).unwrap();
    let all = &file["expected"]["all"];
    assert_eq!(edges.repeats() as f64, number(all, "n"));
    assert_close(edges.mean(), number(all, "mean"), 1e-15, "mean");
    // The file gives these to 13 digits or more.
    assert_close(scatter.deviation, number(all, "sd"), 1e-13, "standard deviation");
    let delay = edges.delay(1.0, 0.0, Some(scatter));
    assert_close(delay.type_a, number(all, "sd_of_mean"), 1e-13, "of the mean");
    assert!((scatter.deviation - number(&file["published"], "sd")).abs() < 0.005, "as printed");

    let deviations: Vec<f64> =
        values.iter().map(|value| (value - edges.mean()) / scatter.deviation).collect();
    let named = |places: Vec<usize>| -> Vec<f64> { places.into_iter().map(|place| values[place]).collect() };
    assert_eq!(named(chauvenet(&deviations)), numbers(&file["expected"]["chauvenet_rejected_once"]));
    assert_eq!(named(peirce(&deviations, 1)), numbers(&file["expected"]["peirce_rejected"]));

    let others: Vec<f64> = values.into_iter().filter(|value| *value != -44.0 && *value != -2.0).collect();
    let without = &file["expected"]["without_minus44_and_minus2"];
    let edges = repeated(&others);
    assert_close(edges.mean(), number(without, "mean"), 1e-15, "mean of the others");
    let scatter = pooled_scatter([&edges]).unwrap();
    assert_close(scatter.deviation, number(without, "sd"), 1e-13, "standard deviation of the others");
}

#[test]
fn michelson_1879() {
    let file = read("nist-univariate-michelso.json");
    let edges = repeated(&numbers(&file["inputs"]["y"]));
    let scatter = pooled_scatter([&edges]).unwrap();
    // Certified of the decimals; of the doubles nearest to them there are these.
    let expected = &file["confirmed"]["if_inputs_rounded_to_binary64"];
    assert_close(edges.mean(), number(expected, "mean"), 1e-15, "mean");
    assert_close(scatter.deviation, number(expected, "sd"), 1e-14, "standard deviation");
    assert_close(
        scatter.deviation,
        number(&file["expected"], "sd"),
        2e-14,
        "standard deviation as certified",
    );
    assert_eq!(scatter.degrees_of_freedom, 99);
}
