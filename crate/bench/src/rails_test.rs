use super::*;

/// Two rails, the second laid the other way round, with nothing that errs.
fn exact() -> Rig<()> {
    let rail = |grows, mark, believed, joint| Rail {
        label: (),
        grows,
        span: (0.0, 2.0),
        u_reading: 0.0,
        u_scale: 0.0,
        mark,
        believed,
        joint,
    };
    let stop = |rail, aim| Stop { rail, aim, time_base: 2.0 };
    Rig {
        rails: vec![
            rail(true, 0.25, 0.0, Joint::AtSplitter(0.0)),
            rail(false, 2.0, 1.5, Joint::Meeting { gap: 0.25, u: 0.0 }),
        ],
        c: 299_792_458.0,
        group_index: 1.0,
        t0: 1.5,
        half_width: 0.0,
        step: None,
        u_time_base: 0.0,
        u_walk: 0.0,
        stops: vec![stop(0, 0.25), stop(0, 1.25), stop(1, 1.0)],
    }
}

/// The definition of the metre: light takes 1/299 792 458 s for one.
#[test]
fn a_bench_without_errors_shows_the_truth() {
    let Run { joints, rows, truth } = exact().run(1);
    assert_eq!(truth.distances, [0.0, 1.0, 2.5]);
    assert_eq!(truth.marks, [0.0, 1.5]);
    assert_eq!(joints, [ReadJoint::AtSplitter(0.0), ReadJoint::Meeting { before: 1.5, gap: 0.25, u: 0.0 }]);
    assert_eq!(rows.len(), 3);
    for (row, (distance, reading)) in rows.iter().zip([(0.0, 0.25), (1.0, 1.25), (2.5, 1.0)]) {
        assert!((row.reading - reading).abs() < 1e-12);
        let delay = (row.b - row.a) * row.time_base;
        assert!((delay - 1.5 - distance / 0.299_792_458).abs() < 1e-12, "{delay} ns over {distance} m");
    }
}

#[test]
fn an_overlap_is_read_at_the_same_places_of_both_rails() {
    let mut rig = exact();
    rig.rails[1].joint = Joint::Overlap(vec![2.0, 1.75]);
    assert_eq!(rig.run(1).joints[1], ReadJoint::Overlap(vec![(2.0, 1.75), (1.75, 2.0)]));
}

/// There is nothing to meet before the first rail.
#[test]
fn a_first_rail_that_should_meet_another_is_free() {
    let mut rig = exact();
    rig.rails[0].joint = Joint::Meeting { gap: 0.1, u: 0.001 };
    assert_eq!(rig.run(1).joints[0], ReadJoint::Free);
}

#[test]
fn errors_are_as_large_as_said_and_a_seed_gives_one_run() {
    let mut rig = exact();
    rig.rails[0].u_reading = 0.002;
    (rig.half_width, rig.stops) =
        (0.04, (0..2_000).map(|_| Stop { rail: 0, aim: 0.5, time_base: 2.0 }).collect());
    let run = rig.run(7);
    assert_eq!(run, rig.run(7));
    assert_ne!(run, rig.run(8));
    let rms = |values: &mut dyn Iterator<Item = f64>| {
        let squares: Vec<f64> = values.map(|value| value * value).collect();
        (squares.iter().sum::<f64>() / squares.len() as f64).sqrt()
    };
    // The standard error of a standard deviation from 2,000 normal numbers is 1/√4000 = 1.6 % of it: limits of four.
    let u = rms(&mut run.rows.iter().map(|row| row.reading - 0.5));
    assert!((u / 0.002 - 1.0).abs() < 0.064, "{u}");
    // The difference of two even errors of half-width 0.04 is triangular: 0.04·√(2/3).
    let expected = 1.5 + 0.25 / 0.299_792_458;
    let u = rms(&mut run.rows.iter().map(|row| row.b - row.a - expected / 2.0));
    assert!((u / (0.04 * (2.0_f64 / 3.0).sqrt()) - 1.0).abs() < 0.064, "{u}");
    assert!(run.rows.iter().all(|row| (row.b - row.a - expected / 2.0).abs() <= 0.08));
}
