//! The adaptive procedure of JCGM 101:2008, 7.9.4, on planted blocks and on drawn ones. Seeds are fixed.
#![expect(clippy::unwrap_used, reason = "tests")]

use slope_of_light::budget::{Adaptive, Random, Shape, Step, Summary, summarise, tolerance};

#[track_caller]
fn near(found: f64, expected: f64, tolerance: f64, place: &str) {
    assert!(
        (found - expected).abs() <= tolerance,
        "{place}: found {found}, expected {expected} ± {tolerance}"
    );
}

/// JCGM 101, 7.9.4 b: max(J, 10⁴) with J the least integer not below 100/(1 − p).
#[test]
fn blocks() {
    let most = 10_000_000;
    for (p, expected) in [(0.95, 10_000), (0.5, 10_000), (0.99, 10_000), (0.995, 20_000), (0.9973, 37_038)] {
        assert_eq!(Adaptive::new(p, 2, most).block_size(), expected, "p = {p}");
    }
    assert_eq!(Adaptive::new(0.999, 2, most).block_size(), 100_000);
    assert_eq!(Adaptive::new(0.9999, 2, most).block_size(), 1_000_000);
    assert_eq!(Adaptive::new(0.95, 2, 3_000).block_size(), 3_000);
    assert_eq!(Adaptive::new(1.0, 2, most).block_size(), most);
}

/// A block whose figures are 0, 2 and ±3.92, each moved a little.
fn block([mean, u, low, high]: [f64; 4]) -> Summary {
    let symmetric = (low - 3.92, high + 3.92);
    Summary { trials: 10_000, covered: 9_500, mean, u: u + 2.0, symmetric, shortest: symmetric }
}

/// Two blocks that differ by d in one figure leave its average with the standard deviation d/2, and twice that is
/// compared with δ = 0.05, for each of the four figures (JCGM 101, 7.9.4 g to k).
#[test]
fn every_figure_must_be_steady() {
    for figure in 0..4 {
        let second = |difference: f64| {
            let mut moved = [0.0; 4];
            moved[figure] = difference;
            block(moved)
        };
        let steps = |difference: f64, adaptive: Adaptive| {
            let mut adaptive = adaptive;
            assert_eq!(adaptive.take(&block([0.0; 4])), Step::More, "one block shows no scatter");
            adaptive.take(&second(difference))
        };
        let new = || Adaptive::new(0.95, 2, 1_000_000);
        assert_eq!(steps(0.049, new()), Step::Stable, "figure {figure}");
        assert_eq!(steps(-0.049, new()), Step::Stable, "figure {figure}");
        assert_eq!(steps(0.051, new()), Step::More, "figure {figure}");
        assert_eq!(steps(-0.051, new()), Step::More, "figure {figure}");
        // Three alike and one d off: squares of ¾d and three of ¼d, 3d²/4 over 4·3, so 2s = d/2.
        let mut adaptive = new();
        adaptive.take(&second(0.102));
        adaptive.take(&block([0.0; 4]));
        adaptive.take(&block([0.0; 4]));
        assert_eq!(adaptive.take(&block([0.0; 4])), Step::More, "figure {figure}");
        let mut adaptive = new();
        adaptive.take(&second(0.098));
        adaptive.take(&block([0.0; 4]));
        adaptive.take(&block([0.0; 4]));
        assert_eq!(adaptive.take(&block([0.0; 4])), Step::Stable, "figure {figure}");
    }
}

/// δ follows from the standard deviation of all trials together (7.9.4 j), not from any block's own.
#[test]
fn the_tolerance_is_that_of_all_trials() {
    // Each block has u = 0.98; means of ±0.3 make 1.03 of all, and so δ = 0.05 instead of 0.005.
    let mut adaptive = Adaptive::new(0.95, 2, 10_000_000);
    let one = |sign: f64| block([0.3 * sign, -1.02, 0.0, 0.0]);
    let mut n_blocks = 0;
    let step = loop {
        let step = adaptive.take(&one(if n_blocks % 2 == 0 { 1.0 } else { -1.0 }));
        n_blocks += 1;
        if step != Step::More {
            break step;
        }
    };
    // 2·0.3/√h ≤ 0.05 from h = 144; with the h − 1 of the standard deviation, 146 or (unevenly many) 145.
    assert_eq!(step, Step::Stable);
    assert!((144..=147).contains(&n_blocks), "{n_blocks} blocks");
    assert_eq!(adaptive.trials(), n_blocks * 10_000);
}

/// Whatever is drawn, and however many trials are allowed: it ends, never with more than those, and not before the
/// figures are as steady as they are said to be.
#[test]
fn adaptive_runs_end() {
    let shapes =
        [Shape::Normal, Shape::Rectangular, Shape::Arcsine, Shape::Student(3.0), Shape::Student(1.0)];
    for (stream, shape) in (0..).zip(shapes) {
        for (digits, most) in [(1, 200_000), (2, 200_000), (2, 25_000), (2, 10_000), (2, 500), (4, 100_000)] {
            let mut adaptive = Adaptive::new(0.95, digits, most);
            let mut random = Random::new(9, stream);
            let mut all = vec![];
            let step = loop {
                let size = adaptive.block_size();
                assert!(all.len() + size <= most, "{shape:?}: more than {most} trials");
                let mut values: Vec<f64> = (0..size).map(|_| shape.draw(&mut random)).collect();
                let step = adaptive.take(&summarise(&mut values, 0.95).unwrap());
                all.append(&mut values);
                if step != Step::More {
                    break step;
                }
            };
            assert_eq!(adaptive.trials(), all.len());
            let place = format!("{shape:?}, {digits} digits of {most}");
            match (shape, digits, most) {
                // Not steady with one block, nor to a fourth digit in 10⁵; Cauchy's distribution has no u to be steady.
                (Shape::Student(1.0), ..) | (_, _, 500 | 10_000) | (_, 4, _) => {
                    assert_eq!(step, Step::OutOfTrials, "{place}");
                    assert!(all.len() + adaptive.block_size() > most, "{place}");
                }
                (Shape::Normal | Shape::Rectangular | Shape::Arcsine, 1 | 2, 200_000) => {
                    assert_eq!(step, Step::Stable, "{place}");
                    let summary = summarise(&mut all, 0.95).unwrap();
                    // Twice the standard deviation is within δ: four of them are within 2δ.
                    let allowed = 2.0 * tolerance(1.0, digits);
                    near(summary.mean, 0.0, allowed, &place);
                    near(summary.u, 1.0, allowed, &place);
                }
                _ => {}
            }
        }
    }
}
