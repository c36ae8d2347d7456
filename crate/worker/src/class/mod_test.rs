#![expect(clippy::panic, clippy::unwrap_used, reason = "a test stops where its data are wrong")]

use super::*;
use crate::key::KeyTruth;

fn given(c: f64, u: f64, readings: &[usize]) -> Given {
    let figure = |id: &str, value, uncertainty| GivenFigure { id: id.into(), value, uncertainty };
    Given {
        figures: vec![
            figure("chi_square", 18.25, None),
            figure("degrees_of_freedom", 21.0, None),
            figure("p_value", 0.0001, None),
            figure("c", c, Some(u)),
            figure("expanded", 2.0 * u, None),
            figure("z", (c - 299_792_458.0) / u, None),
        ],
        readings: readings.to_vec(),
        ..Given::default()
    }
}

#[test]
fn each_stands_beside_the_others_in_digits() {
    let all = [given(2.99e8, 1e6, &[]), Given::default(), given(3.01e8, 1e6, &[])];
    let found = class(&all, &[], DecimalMark::Comma);
    let [one, none, other] = found.notebooks.as_slice() else { panic!("three") };
    assert_eq!(one.c, "2,990(10)\u{a0}×\u{a0}10⁸\u{a0}m/s");
    assert_eq!(one.result, all[0].result());
    let (bar, beside) = (one.bar.unwrap(), other.bar.unwrap());
    assert!(bar.at < beside.at && bar.to - bar.from > 0.0, "{bar:?} {beside:?}");
    assert_eq!((one.chi_square.as_str(), one.p_value.as_str()), ("18,2/21", "< 0,001"));
    assert_eq!((one.z.as_str(), other.z.as_str()), ("−0,8", "1,2"));
    // 1e6 from the mean, whose u is 1e6/√2: √2 of the difference's standard uncertainty.
    assert_eq!((one.apart.as_str(), other.apart.as_str()), ("−1,4", "1,4"));
    assert_eq!(*none, Compared::default());
}

#[test]
fn the_class_comes_to_a_mean() {
    let all = [given(3.01e8, 1e6, &[]), given(2.99e8, 1e6, &[])];
    let found = class(&all, &[], DecimalMark::Point);
    let ids: Vec<&str> = found.figures.iter().map(|figure| figure.id).collect();
    assert_eq!(
        ids,
        ["weighted", "class_chi_square", "class_birge_ratio", "mandel_paule", "dersimonian_laird"]
    );
    assert_eq!(found.figures[0].value, Value::from("3.0000(71)\u{a0}×\u{a0}10⁸\u{a0}m/s"));
    assert_eq!(found.figures[2].value, Value::from("1.41"));
    assert_eq!(found.refusal, None);
    // τ² = s² − u² = 1e12, u(x̄) = √(2e12/2).
    let mean = found.mean.unwrap();
    // Its U is 2e6, as is that of each, which lie 1e6 to either side: the scale is 6e6 wide.
    assert!((mean.at - 50.0).abs() < 1e-9 && (mean.to - mean.from - 200.0 / 3.0).abs() < 1e-9, "{mean:?}");
}

#[test]
fn too_few_results_are_no_class() {
    let found = class(&[given(3e8, 1e6, &[]), Given::default()], &[], DecimalMark::Point);
    assert_eq!(found.refusal, Some(message!("class-too_few", n = 1_usize)));
    assert!(found.figures.is_empty() && found.mean.is_none());
}

/// Two that share three of four rows; one that shares two with them, and one that shares three of eight.
#[test]
fn readings_alike_digit_for_digit_are_pointed_out() {
    let all = [
        given(3e8, 1e6, &[0, 1, 2, 3]),
        given(3e8, 1e6, &[20, 2, 1, 0]),
        given(3e8, 1e6, &[0, 1, 21, 22]),
        given(3e8, 1e6, &[0, 1, 2, 11, 12, 13, 14, 15]),
        given(3e8, 1e6, &[11, 12, 13, 16, 17, 18, 19, 10]),
    ];
    let alike = class(&all, &[], DecimalMark::Point).notebooks.into_iter().map(|one| one.alike);
    let with = |notebook| Alike { notebook, rows: 3 };
    assert_eq!(
        alike.collect::<Vec<_>>(),
        [vec![with(1), with(3)], vec![with(0), with(3)], vec![], vec![with(0), with(1)], vec![],]
    );
}

#[test]
fn a_sealed_result_is_not_told_and_stays_out_of_the_mean() {
    let sealed = Given { sealed: true, ..given(2.5e8, 1e6, &[]) };
    let found = class(&[given(3e8, 1e6, &[]), sealed, given(3e8, 1e6, &[])], &[], DecimalMark::Point);
    let hidden = &found.notebooks[1];
    assert_eq!((hidden.result, hidden.bar, hidden.c.as_str(), hidden.z.as_str()), (None, None, "", ""));
    assert!(hidden.fit.is_some());
    assert_eq!(found.figures[0].value, Value::from("3.0000(71)\u{a0}×\u{a0}10⁸\u{a0}m/s"));
}

#[test]
fn figures_that_came_with_a_notebook_are_compared() {
    let stored = Some("c,speed,299792458,,m/s".to_owned());
    let found = class(&[Given { stored, ..given(3e8, 1e6, &[]) }], &[], DecimalMark::Point);
    assert_eq!(found.notebooks[0].differs, ["c"]);
}

/// By the digest of the teacher's layer; another layer, or none, is in no key, and a sealed result is not told.
#[test]
fn intervals_are_held_against_the_key() {
    let truth = KeyTruth { t0: "1.500\u{a0}ns".into(), errors: Vec::new() };
    let set =
        KeySet { number: 1, name: "Ada".into(), file: "1.json".into(), digest: sha256_hex(b"layer"), truth };
    let key = Key { title: "Week 3".into(), seed: String::new(), sets: vec![set] };
    let line = |c, t0| {
        let mut one = Given { layer: "layer".into(), ..given(c, 1e6, &[]) };
        let figure = |id: &str, value, uncertainty| GivenFigure { id: id.into(), value, uncertainty };
        one.figures.extend([figure("intercept", t0, Some(0.1)), figure("coverage_factor", 2.5, None)]);
        one
    };
    // U is 2e6 m/s, and 2.5 · 0.1 ns about t₀.
    let all = [
        line(2.98e8, 1.74),
        line(2.97e8, 1.26),
        line(2.99e8, 1.76),
        Given { sealed: true, ..line(3e8, 1.5) },
        Given { layer: "another".into(), ..line(3e8, 1.5) },
        Given { layer: String::new(), ..line(3e8, 1.5) },
        Given { layer: "layer".into(), ..Given::default() },
    ];
    let found = class(&all, std::slice::from_ref(&key), DecimalMark::Point).notebooks;
    let told: Vec<_> = found.iter().map(|one| one.key.map(|held| (held.c, held.t0))).collect();
    let (yes, no) = (Some(true), Some(false));
    assert_eq!(
        told,
        [
            Some((yes, yes)),
            Some((no, yes)),
            Some((yes, no)),
            Some((None, None)),
            None,
            None,
            Some((None, None))
        ]
    );
    assert!(class(&all, &[], DecimalMark::Point).notebooks.iter().all(|one| one.key.is_none()));
}
