use super::*;

fn square(rows: &[&[f64]]) -> Triangle {
    Triangle::of(rows.concat(), rows.len())
}

#[test]
fn the_triangle_gives_the_matrix_back() {
    let rows: [&[f64]; 3] = [&[4.0, 2.0, -2.0], &[2.0, 10.0, 5.0], &[-2.0, 5.0, 6.0]];
    let triangle = square(&rows);
    let columns: Vec<&[f64]> = triangle.columns().collect();
    // By hand: rows 2 0 0, 1 3 0, −1 2 1.
    assert_eq!(columns, [&[2.0, 1.0, -1.0][..], &[0.0, 3.0, 2.0], &[0.0, 0.0, 1.0]]);
    assert_eq!((triangle.indefinite(), triangle.singular()), (None, None));
    let mut list = [2.0, 7.0, 8.0];
    triangle.whiten(&mut list);
    assert_eq!(list, [1.0, 2.0, 5.0]);
    let mut weighed = [0.0; 3];
    triangle.weigh(&list, &mut weighed);
    let back = rows.map(|row| row.iter().zip(&weighed).map(|(v, w)| v * w).sum::<f64>());
    assert!(back.iter().zip([2.0, 7.0, 8.0]).all(|(got, want)| (got - want).abs() < 1e-12), "{back:?}");
    let by_hand = [&[0.5][..], &[-0.5 / 3.0, 1.0 / 3.0], &[2.5 / 3.0, -2.0 / 3.0, 1.0]].concat();
    let inverse = triangle.inverse().concat();
    assert!(inverse.iter().zip(&by_hand).all(|(got, want)| (got - want).abs() < 1e-15), "{inverse:?}");
}

/// A mixture of other rows, a negative variance, and a covariance with what does not vary.
#[test]
fn matrices_without_a_triangle_name_their_rows() {
    let alike = square(&[&[1.0, 0.0, 2.0], &[0.0, 1.0, 0.0], &[2.0, 0.0, 4.0]]);
    assert_eq!((alike.indefinite(), alike.singular()), (None, Some(vec![0, 2])));
    let all_one = square(&[&[0.04, 0.06, 0.1], &[0.06, 0.09, 0.15], &[0.1, 0.15, 0.25]]);
    assert_eq!((all_one.indefinite(), all_one.singular()), (None, Some(vec![0, 1])));
    let negative = square(&[&[1.0, 0.0, 1.5], &[0.0, 1.0, 0.0], &[1.5, 0.0, 1.0]]);
    assert_eq!(negative.indefinite(), Some(vec![0, 2]));
    let fixed = square(&[&[0.0, 0.1], &[0.1, 1.0]]);
    assert_eq!(fixed.indefinite(), Some(vec![0]));
    let exact = square(&[&[0.0, 0.0], &[0.0, 1.0]]);
    assert_eq!((exact.indefinite(), exact.singular()), (None, Some(vec![0])));
    let below = square(&[&[-1.0, 0.0], &[0.0, 1.0]]);
    assert_eq!(below.indefinite(), Some(vec![0]));
}
