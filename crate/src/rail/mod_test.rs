//! Rails: each joint, senses, and the covariance that joints give. The arithmetic follows from the definition
//! d = o + s·(r − m); the combination of uncertainties from JCGM 100:2008, 5.1.2 and 5.2.2.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::{lay as lay_all, *};

/// Lays rails that can all be read.
fn lay(rails: &[Rail]) -> Vec<Result<Stand, JointError>> {
    lay_all(&rails.iter().map(Some).collect::<Vec<_>>()).into_iter().flatten().collect()
}

/// Powers of two throughout: every expected figure is exact.
fn rail(sign: f64, joint: Joint) -> Rail {
    Rail { span: Some((0.0, 2.0)), sign, u_reading: 0.25, u_scale: 0.0, joint }
}

fn at(mark: f64, distance: f64, uncertainty: f64) -> Joint {
    Joint::At { mark, distance, uncertainty }
}

#[test]
fn a_falling_ruler_counts_towards_the_splitter() {
    let stands = lay(&[rail(-1.0, at(2.0, 0.5, 0.0))]);
    let stand = stands[0].as_ref().unwrap();
    assert_eq!(stand.distance(2.0), 0.5);
    assert_eq!(stand.distance(0.0), 2.5);
    assert_eq!(stand.reading(2.5), 0.0);
}

#[test]
fn meeting_marks_chain_places_and_errors() {
    let rails = [
        rail(1.0, at(0.5, 0.0, 0.5)),
        rail(-1.0, Joint::Meeting { mark: 2.0, mark_before: 2.0, gap: 0.125, uncertainty: 0.25 }),
        rail(1.0, Joint::Meeting { mark: 0.0, mark_before: 0.0, gap: 0.0, uncertainty: 0.125 }),
    ];
    let stands = lay(&rails);
    let third = stands[2].as_ref().unwrap();
    assert_eq!(third.distance(0.0), 1.5 + 0.125 + 2.0);
    assert_eq!(
        third.effects_at(1.0),
        vec![(Source::Splice(0), 0.5), (Source::Splice(1), 0.25), (Source::Splice(2), 0.125)]
    );
}

#[test]
fn a_stated_distance_does_not_inherit() {
    let stands = lay(&[rail(1.0, at(0.0, 0.0, 0.5)), rail(1.0, at(0.0, 3.0, 0.25))]);
    assert_eq!(stands[1].as_ref().unwrap().effects_at(1.0), vec![(Source::Splice(1), 0.25)]);
}

#[test]
fn a_scale_error_grows_along_its_rail_and_is_handed_on() {
    let mut first = rail(1.0, at(0.0, 0.0, 0.0));
    first.u_scale = 0.125;
    let second = rail(1.0, Joint::Meeting { mark: 0.0, mark_before: 2.0, gap: 0.0, uncertainty: 0.0 });
    let stands = lay(&[first, second]);
    let effect = |rail: usize, r: f64| {
        let effects = stands[rail].as_ref().unwrap().effects_at(r);
        effects.iter().find(|(s, _)| *s == Source::Scale(0)).unwrap().1
    };
    assert_eq!(effect(0, 1.0), 0.125);
    assert_eq!(effect(1, 0.0), 0.25);
    assert_eq!(effect(1, 2.0), 0.25);
}

#[test]
fn overlap_takes_the_mean_and_its_standard_error() {
    // Offsets 1.0 and 1.5: mean 1.25, standard deviation 0.5/√2, standard error 0.25.
    let rails =
        [rail(1.0, at(0.0, 0.0, 0.0)), rail(1.0, Joint::Overlap { pairs: vec![(0.5, 1.5), (0.25, 1.75)] })];
    let stands = lay(&rails);
    let second = stands[1].as_ref().unwrap();
    assert_eq!(second.distance(0.0), 1.25);
    let u = second.effects_at(0.0).iter().find(|(s, _)| *s == Source::Splice(1)).unwrap().1;
    let expected: f64 = 0.25 * 0.25 + 2.0 * 0.25 * 0.25;
    assert!((u - expected.sqrt()).abs() <= 1e-15, "two roundings at most: {u}");
}

#[test]
fn one_overlap_pair_has_the_reading_uncertainty_alone() {
    let rails = [rail(1.0, at(0.0, 0.0, 0.0)), rail(-1.0, Joint::Overlap { pairs: vec![(1.5, 1.0)] })];
    let stands = lay(&rails);
    let second = stands[1].as_ref().unwrap();
    assert_eq!(second.distance(1.5), 1.0);
    assert_eq!(second.distance(1.0), 1.5);
    assert!((second.u_offset() - (2.0_f64 * 0.0625).sqrt()).abs() <= 1e-16);
}

#[test]
fn a_free_step_marks_every_rail_joined_behind_it() {
    let rails = [
        rail(1.0, at(0.0, 0.0, 0.0)),
        rail(1.0, Joint::Free { mark: 0.5 }),
        rail(1.0, Joint::Meeting { mark: 0.0, mark_before: 2.0, gap: 0.0, uncertainty: 0.0 }),
        rail(1.0, at(0.0, 9.0, 0.0)),
    ];
    let stands = lay(&rails);
    assert_eq!(stands[1].as_ref().unwrap().distance(0.5), 2.0);
    assert_eq!(stands[1].as_ref().unwrap().free, vec![1]);
    assert_eq!(stands[2].as_ref().unwrap().free, vec![1]);
    assert!(stands[3].as_ref().unwrap().free.is_empty());
}

#[test]
fn what_cannot_be_placed_says_why() {
    let meeting = Joint::Meeting { mark: 0.0, mark_before: 0.0, gap: 0.0, uncertainty: 0.0 };
    let mut spanless = rail(1.0, at(0.0, 0.0, 0.0));
    spanless.span = None;
    let cases = vec![
        (vec![rail(1.0, meeting.clone())], JointError::NoRailBefore),
        (vec![rail(1.0, meeting.clone()), rail(1.0, meeting)], JointError::RailBeforeUnplaced),
        (vec![spanless, rail(1.0, Joint::Free { mark: 0.0 })], JointError::NoSpanBefore),
        (
            vec![rail(1.0, at(0.0, 0.0, 0.0)), rail(1.0, Joint::Overlap { pairs: vec![] })],
            JointError::NoPairs,
        ),
    ];
    for (rails, expected) in cases {
        assert_eq!(lay(&rails).last().unwrap(), &Err(expected));
    }
}
