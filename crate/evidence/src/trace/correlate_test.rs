//! Zero of a cubic, and a parabola's vertex. The lags themselves are held to references in the project's numbers.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;

#[test]
fn the_zero_of_a_cubic() {
    let cubic = |x: f64| x * x * x + 2.0 * x - 1.0;
    let zero = cubic_zero([cubic(-1.0), cubic(0.0), cubic(1.0), cubic(2.0)]).unwrap();
    assert!(cubic(zero).abs() < 1e-12);
    assert_eq!(cubic_zero([1.0, 1.0, 1.0, 1.0]), None);
    assert_eq!(cubic_zero([0.0, 0.5, 1.0, 2.0]), None);
}

#[test]
fn the_vertex_of_a_parabola() {
    let parabola = |lag: i64| Some(3.0 + 0.5 * (lag as f64 - 7.3) * (lag as f64 - 7.3));
    for lags in [1, 2, 5] {
        assert!((vertex(7, lags, parabola).unwrap() - 7.3).abs() < 1e-12);
    }
    assert_eq!(vertex(7, 1, |lag| Some(-parabola(lag).unwrap())), None);
    assert_eq!(vertex(7, 1, |lag| if lag < 8 { parabola(lag) } else { None }), None);
}
