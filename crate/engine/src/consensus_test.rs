#![expect(clippy::unwrap_used, reason = "a test stops where its data are wrong")]

use super::*;

fn results(pairs: &[(f64, f64)]) -> Vec<Estimate> {
    pairs.iter().map(|&(value, u)| Estimate { value, u }).collect()
}

#[test]
fn what_is_no_result_is_named() {
    let sound = (1.0, 0.1);
    let cases = [
        (vec![], ConsensusError::TooFew { got: 0 }),
        (vec![sound], ConsensusError::TooFew { got: 1 }),
        (vec![sound, (f64::NAN, 0.1)], ConsensusError::NotPositive { place: 1 }),
        (vec![(1.0, 0.0), sound], ConsensusError::NotPositive { place: 0 }),
        (vec![sound, sound, (1.0, f64::INFINITY)], ConsensusError::NotPositive { place: 2 }),
        (vec![sound, (1.0, -0.1)], ConsensusError::NotPositive { place: 1 }),
        (vec![sound, (1.0, 1e-200)], ConsensusError::OutOfRange),
        (vec![(1e300, 1.0), (-1e300, 1.0)], ConsensusError::OutOfRange),
    ];
    for (pairs, expected) in cases {
        assert_eq!(consensus(&results(&pairs)), Err(expected), "{pairs:?}");
    }
}

/// With equal uncertainties u both τ² are s² − u², s² the variance of the values: by either paper's formula.
#[test]
fn with_equal_uncertainties_the_variance_between_is_what_is_left() {
    let found = consensus(&results(&[(1.0, 1.0), (5.0, 1.0), (9.0, 1.0)])).unwrap();
    assert_eq!(found.weighted, Estimate { value: 5.0, u: 1.0 / 3.0_f64.sqrt() });
    assert_eq!((found.consistency.chi_square, found.consistency.birge_ratio), (32.0, 4.0));
    for allowing in [found.dersimonian_laird, found.mandel_paule] {
        assert!((allowing.between.powi(2) - 15.0).abs() < 1e-12, "{allowing:?}");
        assert_eq!(allowing.mean.value, 5.0);
        // s/√n.
        assert!((allowing.mean.u - 4.0 / 3.0_f64.sqrt()).abs() < 1e-14, "{allowing:?}");
    }
}

#[test]
fn results_that_agree_too_well_leave_nothing_between() {
    let found = consensus(&results(&[(10.0, 1.0), (10.5, 2.0), (9.8, 1.0)])).unwrap();
    assert_eq!((found.dersimonian_laird.between, found.mandel_paule.between), (0.0, 0.0));
    assert_eq!(found.mandel_paule.mean, found.weighted);
    assert!(found.consistency.p_value > 0.5);
}

#[test]
fn equal_values_agree() {
    let found = consensus(&results(&[(3e8, 1e5); 4])).unwrap();
    assert_eq!((found.weighted.value, found.consistency.chi_square), (3e8, 0.0));
    assert_eq!(found.apart(&results(&[(3e8, 1e5); 4])), [0.0; 4]);
}

/// χ² with the τ found is ν, which is how Paule and Mandel define it; also where the uncertainties differ by 10⁶.
#[test]
fn the_variance_between_makes_chi_square_what_is_expected() {
    let far = results(&[(1.0, 1e-6), (2.0, 1.0), (4.0, 1e-3), (8.0, 1e-5)]);
    let found = consensus(&far).unwrap();
    let squares = WeightedSums::with(&far, found.mandel_paule.between.powi(2)).squares;
    assert!((squares - 3.0).abs() < 1e-12, "{squares}");
}

/// Three that are wrong by ten of their uncertainties move neither the median nor what is said of the seven others; the means
/// they do.
#[test]
fn a_few_far_off_leave_the_others_where_they_are() {
    let sound = [-0.9, -0.5, -0.2, 0.0, 0.2, 0.5, 0.9].map(|value| (value, 1.0));
    let all = results(&[&sound[..], &[(10.0, 1.0), (11.0, 1.0), (12.0, 1.0)]].concat());
    let found = consensus(&all).unwrap();
    assert!(found.mandel_paule.mean.value > 3.0, "{found:?}");
    assert_eq!(found.median.value, 0.35);
    let apart = found.apart(&all);
    assert!(apart[..7].iter().all(|z| z.abs() < 1.5) && apart[7..].iter().all(|z| *z > 9.0), "{apart:?}");
}

/// MAD by hand: the deviations from 3 are 2, 1, 0, 1 and 6.
#[test]
fn the_median_has_its_uncertainty_from_the_deviations() {
    let found = consensus(&results(&[(1.0, 1.0), (2.0, 1.0), (3.0, 1.0), (4.0, 1.0), (9.0, 1.0)])).unwrap();
    assert_eq!(found.median, Estimate { value: 3.0, u: 1.858 / 2.0 });
    let two = consensus(&results(&[(1.0, 1.0), (3.0, 1.0)])).unwrap();
    assert_eq!(two.median, Estimate { value: 2.0, u: 1.858 });
}
