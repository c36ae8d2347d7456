#![expect(clippy::unwrap_used, reason = "a test stops where its data are wrong")]

use super::*;

#[test]
fn results_stand_in_their_order_within_the_scale() {
    let scale = ResultScale::of(&[(2.98e8, 1e6), (3.00e8, 1e6), (3.02e8, 1e6)]).unwrap();
    let bars: Vec<Bar> = [2.98e8, 3.00e8, 3.02e8].map(|c| scale.bar(c, 1e6)).into();
    assert!((bars[1].at - 50.0).abs() < 1e-9 && bars[0].at < 25.0 && bars[2].at > 75.0, "{bars:?}");
    assert!(bars.iter().all(|bar| !bar.beyond && bar.from < bar.at && bar.at < bar.to));
    let ticks = scale.ticks(DecimalMark::Comma);
    let ends = (bars[0].from, bars[2].to);
    assert!(ends.0.abs() < 1e-9 && (ends.1 - 100.0).abs() < 1e-9, "{ends:?}");
    let texts: Vec<&str> = ticks.iter().map(|tick| tick.text.as_str()).collect();
    assert_eq!(texts, ["298", "300", "302"]);
    assert!(ticks.iter().zip(&bars).all(|(tick, bar)| (tick.at - bar.at).abs() < 1e-9));
}

#[test]
fn a_scale_of_any_width_has_at_least_two_marks() {
    for width in (1..=400).map(|n| 0.037e6 * f64::from(n)) {
        let scale = ResultScale::of(&[(2.9979e8 - width, 1e3), (2.9979e8 + width, 1e3)]).unwrap();
        let ticks = scale.ticks(DecimalMark::Point);
        assert!((2..=6).contains(&ticks.len()), "{width}: {ticks:?}");
        assert!(ticks.windows(2).all(|two| two[0].text != two[1].text), "{ticks:?}");
    }
}

/// A wrong unit, say, must not make all others one line.
#[test]
fn one_far_away_does_not_stretch_the_scale() {
    let scale =
        ResultScale::of(&[2.99e8, 2.995e8, 3.00e8, 3.005e8, 3.01e8, 3.02e11].map(|c| (c, 1e6))).unwrap();
    assert!(scale.bar(3.01e8, 1e6).at - scale.bar(2.99e8, 1e6).at > 20.0);
    let far = scale.bar(3.02e11, 1e6);
    assert_eq!((far.at, far.beyond), (100.0, true));
}

#[test]
fn one_result_or_several_alike_have_a_scale() {
    for results in [&[(3e8, 0.0)][..], &[(3e8, 1e5); 3]] {
        let scale = ResultScale::of(results).unwrap();
        assert!((scale.bar(3e8, 1e5).at - 50.0).abs() < 1e-9);
        let ticks = scale.ticks(DecimalMark::Point);
        assert!(
            (2..=10).contains(&ticks.len()) && ticks.iter().any(|tick| tick.text.starts_with("300")),
            "{ticks:?}"
        );
    }
    assert_eq!(ResultScale::of(&[]), None);
}
