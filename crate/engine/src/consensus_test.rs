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

/// Where nothing is between, u²(d) = u² − u²(x̄) (Cox 2002).
#[test]
fn a_result_is_held_against_a_mean_that_it_is_part_of() {
    let all = results(&[(10.0, 1.0), (10.5, 2.0), (9.8, 1.0)]);
    let found = consensus(&all).unwrap();
    for (one, apart) in all.iter().zip(found.apart(&all)) {
        let u = (one.u.powi(2) - found.weighted.u.powi(2)).sqrt();
        assert!((apart - (one.value - found.weighted.value) / u).abs() < 1e-14, "{apart}");
    }
}
