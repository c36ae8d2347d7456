//! Screen readings against JCGM 100:2008: 4.3.7 (rectangular distribution), 4.2.2 to 4.2.4 (repeats, pooling).
//! Tolerances of 1e-15 relative allow for the few roundings of the formulas.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;

fn close(got: f64, expected: f64) {
    assert!((got - expected).abs() <= 1e-15 * expected.abs(), "{got} instead of {expected}");
}

#[test]
fn two_edges_read_to_half_a_small_division() {
    let edges = Edges::pair(&[1.0], &[3.5]).unwrap();
    let delay = edges.delay(4.0, 0.1, None);
    close(delay.value, 10.0);
    // 0.1/√3 each (4.3.7), in quadrature, times 4 ns: 0.1·√(2/3)·4.
    close(delay.uncertainty(), 0.326_598_632_371_090_4);
    close(delay.type_a, 0.0);
}

#[test]
fn repeats_pair_in_order_or_with_a_single_reading() {
    assert_eq!(Edges::pair(&[1.0, 2.0], &[2.0, 4.0]).unwrap().mean(), 1.5);
    assert_eq!(Edges::pair(&[1.0], &[2.0, 4.0]).unwrap().mean(), 2.0);
    assert_eq!(Edges::pair(&[1.0, 3.0], &[4.0]).unwrap().mean(), 2.0);
    assert_eq!(Edges::pair(&[1.0, 2.0], &[1.0, 2.0, 3.0]), Err(EdgesError::Unpaired { a: 2, b: 3 }));
    assert_eq!(Edges::pair(&[], &[1.0]), Err(EdgesError::Missing));
    assert_eq!(Edges::pair(&[1.0], &[]), Err(EdgesError::Missing));
}

#[test]
fn scatter_is_pooled_with_its_degrees_of_freedom() {
    // Squares about the means: 2·0.25² = 0.125 with 1 degree, 0.5² + 0.5² = 0.5 with 2; single readings add none.
    let positions = [
        Edges::pair(&[0.0], &[1.0, 1.5]).unwrap(),
        Edges::pair(&[0.0], &[2.0, 2.5, 3.0]).unwrap(),
        Edges::pair(&[0.0], &[7.0]).unwrap(),
    ];
    let scatter = pooled_scatter(&positions).unwrap();
    assert_eq!(scatter.degrees_of_freedom, 3);
    close(scatter.deviation, (0.625_f64 / 3.0).sqrt());
    let delay = positions[1].delay(2.0, 0.0, Some(scatter));
    close(delay.type_a, 2.0 * (0.625_f64 / 9.0).sqrt());
    assert_eq!(pooled_scatter(&positions[2..]), None);
}
